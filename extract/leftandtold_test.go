package extract

import (
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

// TestToldAndLeft has talk in which a value, a thing put aside or somebody else's deed was once
// taken for work done, or what was left off for what is back: steps that must be among those
// told, words that no step may hold, and words that the questions must hold, "!" those they may not.
func TestToldAndLeft(t *testing.T) {
	for _, c := range []struct {
		name, talk       string
		steps, not, asks []string
	}{
		{"worked out wrongly", "The rotor nut goes on. Sheet says sixty newton metres. That's four hundred and forty foot pounds in old money. And the card in the box says forty newton metres. I'm going sixty. Click.",
			[]string{"Tighten the rotor nut to 60 N·m."}, []string{"440"}, []string{"Can the value heard for the rotor nut be right", "the rotor nut"}},
		{"set by the click after it", "Gland nuts back on. The sheet says forty newton metres. That's about thirty foot pounds. Click. Done.",
			[]string{"Tighten the gland nuts to 40 N·m."}, []string{"30 lbf"}, nil},
		{"kept in a tub", "The skid plate is off. Six bolts in that, they're in the biscuit tub. Drain plug out.",
			nil, []string{"Fit the six"}, []string{"skid plate"}},
		{"the machine goes up", "The skid plate is off. Six bolts in that, they're in the biscuit tub. Up she comes. Stand under the frame each side, and let it down on to them.",
			[]string{"Raise the machine.", "Let the machine down on to them."}, []string{"Remove these"}, nil},
		{"others drip it", "Undo the hub nut. Some people do these with the disc on and they drip oil on the disc. Oil on the shoes is how we got here.",
			nil, []string{"oil"}, nil},
		{"there so", "Cap off. The cap screw's in there like finger tight. Wheel on.", []string{"Start the cap screw by hand."}, nil, []string{"cap screw"}},
		{"not seen", "Guard back on. There was a sleeve under it and I don't see it. Belt on.", nil, nil, []string{"I don't see it"}},
		{"seen from here", "Pulley off. I can't see the timing mark from here. Pulley on.", nil, nil, []string{"!timing mark"}},
		{"ran out", "Drum nut's torqued to fifty newton metres, but I'd run out of the fat pins, so there's a nail through it. Wheel on.", nil, nil, []string{"there's a nail through it"}},
		{"left off", "Skid plate off. Hose on. Skid plate I'm leaving off till it's bled, because I need to get at the rack clamp. That's off with its screws.",
			nil, []string{"rack clamp with"}, []string{"skid plate", "!Has the rack clamp"}},
		{"of one side", "Mirror back on. That's the right one. I had the left one off as well. Seat on.",
			[]string{"Take the left mirror off."}, []string{"the left one"}, []string{"Has the left mirror been put back"}},
		{"slack, and another bolt", "Slacken the motor bolt. Belt off. Belt on. Cover on. Two bolts on the cover, both tight.", nil, nil, []string{"Has the motor bolt been tightened again? The recording slackens it and never says so."}},
		{"of another machine", "Rocker nut on, forty newton metres that one. Well, it was forty on the other tractor, same makers.", nil, nil, []string{"What does the maker give for the rocker nut of this machine?"}},
		{"a pin takes none", "Castle nut on, fifty newton metres. Click. New split pin in. The other side, I've torqued that to fifty as well.", nil, []string{"Tighten the split pin"}, nil},
		{"on when", "Take the guard off, and the clip. Chain on. The clip is on. Guard goes back on when the chain's tight. That's it.",
			nil, []string{"Fit the guard"}, []string{"Has the guard been put back"}},
		{"tomorrow we", "Handle off. Belt on. Cover on. The handle is in my pocket. Tomorrow morning we build up the air, and then soap on all the joints.",
			nil, nil, []string{"Tomorrow morning we build up the air", "!the handle finished"}},
		{"missing where it was", "Lid off. The grease nipple on the end is missing altogether, somebody's put a bolt in the hole. Lid on.",
			nil, []string{"grease nipple"}, nil},
		{"a torque arm", "Guard off. There's a torque arm on it, one bolt, M12, with a tab washer. Guard back on.",
			nil, nil, []string{"!There's a torque arm"}},
		{"at night", "It's ten past two in the morning and I've been up since noon. Guard off. Belt on. Guard back on.",
			nil, nil, []string{"!ten past two"}},
		{"for when it's flat", "Guard off. Hand pump handle, for when the battery's flat.",
			nil, nil, []string{"!flat"}},
		{"a clip locks", "Clip off, belt off. New belt on. The clip goes back on by hand.",
			nil, nil, []string{"Is the clip home in its place?", "!What holds the clip"}},
		{"you might", "Lead off. I tuck it behind the bracket. You turn that rotor by hand with the lead on, it can start. Rotor off.",
			nil, []string{"by hand with the lead"}, nil},
		{"not now", "Blade's off. Belt back on. So I need to put the blade back on and track it and that's not now because the blade's at the grinder's till Friday.",
			nil, []string{"blade back on", "Fit the blade"}, []string{"Has the blade been put back"}},
		{"not yet tight", "Cover off. Put the nut on, not yet tight. Cover on.", nil, nil, []string{"nut"}},
		{"goes on last", "Belt back on. The kick plate's off too so that goes on last. That's me.",
			nil, []string{"Fit the kick plate"}, []string{"Has the kick plate been put back"}},
		{"as it says", "Hinge bolts, four newton metres. Spindle nut's done up, fifteen it says on it, so I've done it to fifteen. Lid on.",
			[]string{"Tighten the spindle nut to 15 N·m."}, nil, []string{"!Which"}},
		{"within what it says", "Pulley on, pulley bolts. I do those to ten newton metres. The sheet says eight to twelve newton metres. Lid on.",
			[]string{"Tighten the pulley bolts to 10 N·m."}, nil, []string{"!Which"}},
		{"no fitting", "Caliper's up here on a wire, two bolts on that, I had those off already. Cover on. So the two screws up top, I'm leaving those out till tomorrow.",
			nil, []string{"Fit the two"}, []string{"screws"}},
		{"a name after is", "Basket out, and that's thread in there. I've got a picture. Now I hold my breath. You got one plug on it. Basket in.",
			[]string{"Fit the basket."}, []string{"Thread", "picture", "breath", "plug"}, nil},
		{"flush with the wood", "Seal in with a block of wood, flush, and a little grease on the lip. Then without it you squash the bearings when you do it up. Cover on.",
			nil, []string{"Drain", "Squash"}, nil},
		{"the machine is unplugged", "Plate off. There's a new needle in it. It's unplugged. Plate on.",
			[]string{"Unplug the machine."}, nil, []string{"!needle"}},
		{"plugged in again", "The opener's unplugged. I pulled the plug. Roller out. Roller in. Plug back in.",
			[]string{"Unplug the opener.", "Fit the plug."}, nil, []string{"!opener"}},
		{"signed first", "Cover off. Cover on. It has to be loaded with the weights, and the inspector has to sign it. So until then the tag stays on.",
			nil, nil, []string{"has to sign it"}},
		{"before it is called good", "Cover off. Cover on. She has to have a go in it before I call it good.", nil, nil, []string{"before I call it good"}},
		{"on the list", "Cover off. I'd normally fit a new nut. So that goes on the list for next visit. Cover on.", nil, nil, []string{"goes on the list"}},
		{"not found", "Cover off. It's lost three of its legs. I got two out the top with a bit of wire. The third I've not found. And there's a key, don't lose that. There it is on my finger. Cover on.",
			nil, nil, []string{"The third I've not found", "!stands in"}},
		{"found", "Cover off. The third screw I've lost. Hang on. There it is. Cover on.", nil, nil, []string{"!third"}},
		{"said anew", "Cover off. I tuck the lead behind the, behind this bracket. Belt on. Cover on.", []string{"Tuck the lead behind the bracket."}, nil, nil},
		{"a size taken back", "Then the top cap comes out. Five mil. No, it's a four. Four. Belt on.", nil, []string{"five"}, nil},
		{"no nut is closed", "Cover off. Brass nut back on by hand. Water on slowly, no drip. Close it, no drip. Cover on.", nil, []string{"Close the brass nut"}, nil},
		{"another plug", "Unplug the sensor. Drain plug out. Let it drain. Drain plug back in. Lid on.",
			nil, nil, []string{"Has the sensor been put back"}},
		{"a value without any unit", "Bracket off. Bracket on. The bracket bolts, they're at a hundred and ten, that's the sheet from the maker. Click, click. Wheel on. I torqued the wheel nuts to ninety. Cap on.",
			nil, nil, []string{"In which unit are the values that the recording gives without one, and which source gives it: 110 of the bracket bolts; 90 of the wheel nuts?"}},
		{"no value", "Cover off. Bolts out, there's ten. Click the lid shut. Clamp bolt back in. It's a ten. Ratchet, click, click. Cover on.", nil, nil, []string{"!In which unit"}},
		{"must still", "Foot bolts in and tight. I have the union nut on with the hand. So that one must still be pulled tight. The lid on.",
			nil, nil, []string{"So that one must still be pulled tight"}},
	} {
		rec := Extract(talkOf(t, string(spokenAt(c.talk))), lexicon.Default(), Job{})
		var steps, asked []string
		for _, s := range rec.Steps {
			steps = append(steps, s.Text)
		}
		for _, o := range rec.Open {
			asked = append(asked, o.Question)
		}
		for _, w := range c.steps {
			if !slices.Contains(steps, w) {
				t.Errorf("%s: no step %q in %q", c.name, w, steps)
			}
		}
		for _, w := range c.not {
			if strings.Contains(strings.Join(steps, "\n"), w) {
				t.Errorf("%s: %q in the steps %q", c.name, w, steps)
			}
		}
		for _, w := range c.asks {
			plain := strings.TrimPrefix(w, "!")
			if strings.Contains(strings.Join(asked, "\n"), plain) != (plain == w) {
				t.Errorf("%s: %q among the questions %q", c.name, w, asked)
			}
		}
	}
}

// TestAcrossCues holds that a cue that ends within "when you tighten it" makes no order of it.
func TestAcrossCues(t *testing.T) {
	rec := Extract(talkOf(t, "1\n00:00:01,000 --> 00:00:03,000\nStud out of the arm.\n\n2\n00:00:03,100 --> 00:00:06,000\nNo oil on the cone, else\n\n3\n00:00:06,100 --> 00:00:08,500\nit'll go round and round when you\n\n4\n00:00:08,510 --> 00:00:11,000\ntighten it. And crown nut on.\n"), lexicon.Default(), Job{})
	for _, s := range rec.Steps {
		if strings.HasPrefix(s.Text, "Tighten") {
			t.Errorf("step %q", s.Text)
		}
	}
}

// TestEitherOr holds that "either 5 or like 10" is two figures.
func TestEitherOr(t *testing.T) {
	rec := Extract(talkOf(t, string(spokenAt("The banjo bolt goes in. It's either 5 or like 10 newton metres, I don't have the number."))), lexicon.Default(), Job{})
	if len(rec.Torques) != 1 || rec.Torques[0].Said.Low != 5 || rec.Torques[0].Said.High != 10 {
		t.Errorf("torques %+v", rec.Torques)
	}
}
