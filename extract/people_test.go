package extract

import (
	"strings"
	"testing"
)

// TestOthersDoings has what other people did, of which no step is told, and work that goes on
// beside them.
func TestOthersDoings(t *testing.T) {
	for _, x := range []struct{ talk, steps string }{
		{"Chain off. Had a lady in last month, she'd ridden on one so bent the spoke went through, took eleven out, and I had to true the whole thing.", "Remove the chain."},
		{"Pin out. Neighbour of mine did this without the jack, on a bigger one, and that axle came down and rolled on his boot. Broke two toes. Bush in.", "Remove the pin. Fit the bush."},
		{"Valve plate off. Buddy of mine didn't look. Put a hole through a piston the size of a dime. New plate on.", "Remove the valve plate. Fit the plate."},
		{"Set screw out. I knew a shop that just cranked that thing down until it stopped moving, and they snapped it. Cap off.", "Remove the set screw. Remove the cap."},
		{"Wheel off. I had a garage door in the way, so I pulled the hub out here. Cap off.", "Remove the wheel. Pull the hub out. Remove the cap."},
		{"My mate put the bearing in the wrong way round. Bearing out.", "Remove the bearing."},
		{"One lad pulled the hose off with the pump running. Hose off.", "Remove the hose."},
		{"Wheel off. I have replaced so many of these covers. Cover off.", "Remove the wheel. Remove the cover."},
		{"It freewheels, you put a lad on it and he goes over the side. Cap off.", "Remove the cap."},
		{"Leg down. I went to a place where some bloke had done it up with a rattle gun and the bar wouldn't swing. Leg up.", "Lower the leg. Lift the leg."},
		{"Gasket off. People think it's packaging and they pull it out and get a fire. Gasket on.", "Remove the gasket. Fit the gasket."},
		{"Pin out. Grease in. I'll put an r clip in. Haven't got one that size. Cap on.", "Remove the pin. Fit the cap."},
		{"Cover off. Herself hit it with the jeep. Cap off.", "Remove the cover. Remove the cap."},
		// who helps, and what is only called so
		{"My lad's holding the other end. Cover off.", "Remove the cover."},
		{"Cap off. A lad held the other end and I pulled the shaft out. Seal out.", "Remove the cap. Pull the shaft out. Remove the seal."},
		{"This guy on the shaft comes off next. Cover off.", "Remove the cover."},
		// a name that is as often a verb
		{"There's a cover on top, it just clips off. Nut off.", "Remove the cover nut."},
		// something else begins
		{"You take the racks out these just lift. Cover off.", "Take the racks out. Lift the racks. Remove the cover."},
		{"Put a flat blade in the slot or the whole thing spins at you. Screw out.", "Put a flat blade in the slot. Remove the screw."},
	} {
		var steps []string
		for _, s := range record(t, sentences(x.talk)...).Steps {
			steps = append(steps, s.Text)
		}
		if got := strings.Join(steps, " "); got != x.steps {
			t.Errorf("%s\n\tgot  %q\n\twant %q", x.talk, got, x.steps)
		}
	}
}
