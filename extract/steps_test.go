package extract

import (
	"slices"
	"strings"
	"testing"
)

// TestStepsAreInstructions: ways of telling work with and without a verb, in
// trades of our own, and the instruction each is. Common practice, no source.
func TestStepsAreInstructions(t *testing.T) {
	for _, c := range []struct {
		name string
		talk []string
		want []string // steps that must be among those told
		not  []string // words that none may hold
	}{
		{"how it is left", []string{"Undo the hinge pin.", "Bottom clamp loose.", "Tray out."}, []string{"Loosen the bottom clamp."}, nil},
		{"met loose", []string{"Undo the hinge pin.", "The clamp is very loose."}, nil, []string{"Loosen"}},
		{"away", []string{"Undo the strut bolt.", "Strut away."}, []string{"Remove the strut."}, nil},
		{"new ones go where nothing came off", []string{"Undo the hub nut.", "New split pin through."}, []string{"Fit the split pin."}, nil},
		{"only the picture shows it", []string{"Right then.", "Tuck it in there."}, nil, []string{"this part"}},
		{"that one is the thing", []string{"There's a spring on the lever.", "Unhook that one."}, []string{"Unhook the spring."}, nil},
		{"one of several", []string{"Two springs hold the lid.", "Unhook that one."}, nil, []string{"springs one"}},
		{"verbs of many trades", []string{"Undo the lever pin.", "Nudge the lever over.", "Descale the element.", "Burnish the pads.", "Knock her into reverse."}, []string{"Nudge the lever over.", "Descale the element.", "Burnish the pads.", "Knock the machine into reverse."}, nil},
		{"where and not what", []string{"Undo the hub nut.", "It should lift up out of the well."}, nil, []string{"Lift"}},
		{"a hand put in", []string{"Undo the hub nut.", "Get your other hand in there."}, nil, []string{"hand"}},
		{"written elsewhere", []string{"Undo the hub nut.", "That's the number I wrote down for you."}, nil, []string{"Write"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, s := range record(t, c.talk...).Steps {
				got = append(got, s.Text)
			}
			for _, w := range c.want {
				if !slices.Contains(got, w) {
					t.Errorf("steps %q lack %q", got, w)
				}
			}
			for _, w := range c.not {
				if strings.Contains(strings.Join(got, "\n"), w) {
					t.Errorf("steps %q have %q", got, w)
				}
			}
		})
	}
}
