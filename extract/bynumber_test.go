package extract

import (
	"slices"
	"strings"
	"testing"
)

// TestToldByNumber has fasteners told by how many they are and where, which are followed like any
// others, and counts of what is none.
func TestToldByNumber(t *testing.T) {
	for _, x := range []struct{ talk, left, step string }{
		{"So the stem's here. The two at the back, just loosen those, five mil.", "back stem fasteners: loosened", "Loosen the back stem fasteners (five mil)."},
		{"Now the cover. The three at the front are thirteen. Take those out. Cover's off. Put the cover back on. Those three go in, snug.", "front cover fasteners: hand-tight", "Take the front cover fasteners out."},
		{"The lid. Two at the bottom, just nip those up.", "bottom lid fasteners: hand-tight", "Start the bottom lid fasteners by hand."},
		{"the bracket comes off next then the two on the back fifteen sixteenths those are they come off and she'll drop", "back bracket fasteners: removed", "Undo the two back bracket fasteners."},
		{"There's four holding the motor. Undo those. Motor comes away.", "motor fasteners: removed", "Undo the motor fasteners."},
		{"The motor's held by four. The top two are thirteens. Undo those.", "top motor fasteners: removed", "Undo the top motor fasteners."},
		{"There's one bolt through the bracket. That's out. Bracket is four, and I'm only taking the top two out.", "top bracket fasteners: removed", "Take the top bracket fasteners out."},
		{"First job is these two. They hold the caliper on. I'm just going to crack them off while there's weight on it.", "caliper fasteners: loosened", "Crack the caliper fasteners off."},
		{"These four hold the cover on. Undo those.", "cover fasteners: removed", "Undo the cover fasteners."},
		{"Prop's off. So there's five holding it. Undo those. Seal in. Grease on the splines. Start all five by hand, and then forty foot pound.", "five holding it: torqued", "Tighten the five holding it to 40 lbf·ft."},
		// how it stands is no part
		{"Prop's off. Put it in gear. Forward on this one.", "prop: removed", "Put the machine in gear."},
		// several things that just went on, not the bolts undone before
		{"The valve's held by four bolts. I'll undo those. Hoses back on the valve. Top one's tight. Bottom one I've only got on by hand.", "top hose: tightened, bottom hose: hand-tight", "Tighten the top hose."},
		// people, and what is known by name
		{"Cover off. The two at the front are my nephews. The one at the back is tight with money.", "cover: removed", "Remove the cover."},
		{"Wheels on. The two at the back are new.", "wheels: refitted", "Fit the wheels."},
	} {
		rec := record(t, sentences(x.talk)...)
		var left, steps []string
		for _, e := range rec.Ledger {
			left = append(left, strings.TrimSpace(e.Side+" "+e.Item)+": "+e.State)
		}
		for _, s := range rec.Steps {
			steps = append(steps, s.Text)
		}
		for _, w := range strings.Split(x.left, ", ") {
			if !slices.Contains(left, w) {
				t.Errorf("%s\n\tleft %q, want %q", x.talk, left, w)
			}
		}
		if x.step != "" && !slices.Contains(steps, x.step) {
			t.Errorf("%s\n\tsteps %q, want %q", x.talk, steps, x.step)
		}
		if strings.Contains(x.talk, "nephews") && len(left) > 1 {
			t.Errorf("%s\n\tleft %q", x.talk, left)
		}
	}
}
