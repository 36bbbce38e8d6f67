package extract

import "testing"

// TestWhatBelongsToAStep: what stands after a comma is more of the step, or what turns it,
// or talk of its own. In trades of our own; common practice, no source.
func TestWhatBelongsToAStep(t *testing.T) {
	for _, c := range []struct {
		name string
		talk []string
		want []string
		not  []string
	}{
		{"words alone", []string{"Undo the gate screw.", "Hold the sprocket, ash, wedge."}, []string{"Hold the sprocket."}, []string{"ash", "wedge"}},
		{"done", []string{"Undo the gate screw.", "Lift the tray out, done.", "Pull the boot off, whatever you like."}, []string{"Lift the tray out.", "Pull the boot off."}, nil},
		{"what turns it", []string{"Loosen the clamp bolt, ten mil spanner.", "I slacken the stay bolt there, three eighths, and leave it."}, []string{"Loosen the clamp bolt (ten mil spanner).", "Slacken the stay bolt (three eighths)."}, nil},
		{"how far", []string{"Undo the gate screw.", "Turn the adjuster clockwise, three turns.", "Crack the union, a quarter of a turn."}, []string{"Turn the adjuster clockwise, three turns.", "Crack the union, a quarter of a turn."}, nil},
		{"how", []string{"Undo the gate screw.", "Tap the bush through, gently, with the mallet."}, []string{"Tap the bush through, gently, with the mallet."}, nil},
		{"with what", []string{"Undo the gate screw.", "Draw the pin out, with the pliers.", "Wipe the face, with a clean rag."}, []string{"Draw the pin out, with the pliers.", "Wipe the face with a clean rag."}, nil},
		{"what it must not have", []string{"Undo the gate screw.", "Wipe the face with a clean rag, no oil."}, []string{"Wipe the face with a clean rag, no oil."}, nil},
		{"and another", []string{"Wipe the spool, and the washer.", "Push the door to, and the cat goes out."}, []string{"Wipe the spool, and the washer."}, []string{"cat"}},
		{"all of them", []string{"The lid has six bolts.", "Crack them all, and leave them in.", "Undo them all, six of them."}, nil, []string{"bolts all", "six of"}},
		{"the next thing", []string{"Undo the gate screw.", "Clean the seat, new gasket, and lid on."}, []string{"Clean the seat."}, []string{"seat, new"}},
		{"as it was", []string{"Undo the gate screw.", "Take the collar off.", "Clean the shaft.", "Slide the new collar on the way the old one was, hook on the inside."}, []string{"Slide the new collar on the way the old one was."}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			checkSteps(t, c.talk, c.want, c.not)
		})
	}
}
