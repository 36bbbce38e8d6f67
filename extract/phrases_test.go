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
		{"and another", []string{"Wipe the spool, and the washer.", "Check the pulley nut again, and the strut bolts.", "Push the door to, and the cat goes out."}, []string{"Wipe the spool and the washer.", "Check the pulley nut and the strut bolts."}, []string{"cat"}},
		{"all of them", []string{"The lid has six bolts.", "Crack them all, and leave them in.", "Undo them all, six of them."}, nil, []string{"bolts all", "six of"}},
		{"the next thing", []string{"Undo the gate screw.", "Clean the seat, new gasket, and lid on."}, []string{"Clean the seat."}, []string{"seat, new"}},
		{"as it was", []string{"Undo the gate screw.", "Take the collar off.", "Clean the shaft.", "Slide the new collar on the way the old one was, hook on the inside."}, []string{"Slide the new collar on the way the old one was."}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			checkSteps(t, c.talk, c.want, c.not)
		})
	}
}

// TestStepsAreWhole: what names something is no act, a step says on what and how much, and
// what cannot be told is left out. In trades of our own; common practice, no source.
func TestStepsAreWhole(t *testing.T) {
	for _, c := range []struct {
		name string
		talk []string
		want []string
		not  []string
	}{
		{"names of things", []string{"Undo the gate screw.", "The file goes in the drawer.", "A shim would do it.", "It's eight pitch, it cost me plenty.", "Three nuts, cap up, spacers.", "At turn four it jammed.", "The clip comes like shoe polish out of a tin.", "I've put on clean ones."}, nil, []string{"File", "Shim", "Pitch", "Cap", "Turn", "Polish", "Clean ones"}},
		{"but verbs", []string{"Undo the gate screw.", "File the burr off the shaft.", "Shim the motor up.", "Clip the hose on.", "Cap the pipe."}, []string{"File the burr off the shaft.", "Shim the motor up.", "Clip the hose on.", "Cap the pipe."}, nil},
		{"what comes of it", []string{"Undo the gate screw.", "Push the lever and it opens.", "The belt goes slack.", "You lot who run it dry, you just blew the seal out."}, []string{"Push the lever."}, []string{"Open", "Slack", "Blow"}},
		{"never", []string{"Undo the gate screw.", "You don't ever spin a bearing with the air line.", "Never put your hand in, even with the motor off."}, nil, []string{"Spin", "Switch off"}},
		{"met tight", []string{"Undo the gate bolt.", "It's tight.", "There she goes."}, nil, []string{"Tighten"}},
		{"asked", []string{"Undo the gate screw.", "\"Tighten the cap?\" No."}, nil, []string{"Tighten"}},
		{"on what was worked on", []string{"Take the impeller off.", "Clean the shaft.", "Smear of grease on it.", "Undo the two nuts.", "Put a drop of locker on those."}, []string{"Put a smear of grease on the shaft."}, []string{"Apply"}},
		{"how much of what", []string{"Take the impeller off.", "Little bit of oil on the shaft.", "A drop of the blue on each."}, []string{"Put a little bit of oil on the shaft.", "Put a drop of thread locker on each."}, nil},
		{"where and not what", []string{"Undo the gate screw.", "The old one gets rolled on the bench.", "They slide off of the shaft.", "Pulling up and taking in."}, nil, []string{"Put on the bench", "Slide off", "Pull up"}},
		{"both and all", []string{"The lid has two clips.", "Slack the pair of them.", "Do the bolts tight."}, []string{"Slack both the clips.", "Tighten the lid bolts."}, nil},
		{"written down", []string{"Undo the gate screw.", "Measure the shaft.", "Write that down."}, []string{"Write it down."}, nil},
		{"as you do it", []string{"Undo the gate screw.", "Turn the rotor clockwise as you push it down.", "Spin the axle doing this."}, []string{"Turn the rotor clockwise as you push it down."}, []string{"doing"}},
		{"which way round", []string{"Undo the gate bolt.", "Take the pad off.", "Clean the face.", "New pad, flat side to the drum. Screw back in, four newton metres."}, []string{"Fit the pad, flat side to the drum."}, []string{"Tighten the gate bolt"}},
		{"what goes on it is told after it", []string{"undo the gate bolt", "take the axle out", "and run the axle through a little bit of grease on that any kind will do", "wet the hose with a drop of soap"}, []string{"Run the axle through.", "Wet the hose with a drop of soap."}, nil},
		{"a tool put on", []string{"Take the cover off.", "Puller on, two legs behind the boss."}, []string{"Put the puller on."}, []string{"Pull the two legs"}},
		{"what is tied, nobody said", []string{"Take the cover off.", "String through the main jet."}, []string{"Put string through the main jet."}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			checkSteps(t, c.talk, c.want, c.not)
		})
	}
}
