package extract

import (
	"fmt"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

// tellTorques tells each torque of a talk: its fastener, its values, its unit or its angle, a "?"
// where it is hedged and a "~" where only what was spoken of tells what it is for.
func tellTorques(t *testing.T, talk string) string {
	t.Helper()
	var out []string
	for _, x := range Extract(talkOf(t, string(spokenAt(talk))), lexicon.Default(), Job{}).Torques {
		s := fmt.Sprintf("%s %g", x.Fastener, x.Said.Low)
		if x.Said.Low != x.Said.High {
			s += fmt.Sprintf("-%g", x.Said.High)
		}
		switch {
		case x.AngleDeg != nil && x.Said.Unit == "":
			s = fmt.Sprintf("%s %g deg", x.Fastener, *x.AngleDeg)
		case x.AngleDeg != nil:
			s += fmt.Sprintf(" %s %g deg", x.Said.Unit, *x.AngleDeg)
		default:
			s += " " + x.Said.Unit
		}
		if x.Hedged {
			s += "?"
		}
		if x.Unnamed {
			s += "~"
		}
		out = append(out, s)
	}
	return strings.Join(out, ", ")
}

func TestWhatIsTight(t *testing.T) {
	for _, x := range []struct{ talk, want string }{
		// the tool in hand is no power of an engine
		{"Sprocket cover on, one screw. I've got the small torque driver for this, so that's four newton metres. Click.", "sprocket cover screw 4 N.m~"},
		{"Now the loom motor. What sort of torque has it got? It's three hundred newton metres.", ""},
		// the ends of a wrench
		{"Torque wrenches, I own two, the little one, it goes from 4 to 25 newton metres. The yoke bolt, that gets twenty newton metres.", "yoke bolt 20 N.m"},
		{"The yoke bolt is ninety newton metres. My torque wrench only goes up to sixty newton metres.", "yoke bolt 90 N.m"},
		// told to be for it
		{"Tiller on, four screws. Rudder nut on. Rudder pin in. Cleat on, two screws. The card says sixty newton metres for the rudder nut.", "rudder nut 60 N.m"},
		// what it is tightened to
		{"Drum nut on. Last time it got forty newton metres. The shop tightened it to sixty.", "drum nut 40 N.m~, drum nut 60 N.m"},
		{"Gearbox bolts in, six of them. Thirty newton metres. Pump bolts, four of them. The torque wrench is set at eighteen. Click.", "gearbox bolts 30 N.m~, pump bolts 18 N.m~"},
		{"Pump bolts in. Thirty newton metres. The fence is moved to sixty.", "pump bolts 30 N.m~"},
		{"Hinge bolts, four newton metres. Spindle's done up, fifteen it says on it, so I've done it to fifteen.", "hinge bolts 4 N.m, spindle 15 N.m"},
		{"Hinge bolts, four newton metres. Now the stem bolts. It says on there seven to nine, so eight. Click.", "hinge bolts 4 N.m, stem bolts 7-9 N.m, stem bolts 8 N.m"},
		// in the place of one that is taken back
		{"Drum nuts in a cross. I go seventy foot pounds, no sorry, that's the other one, this one's fifty two. Fifty two all the way round.", "drum nuts 52 lbf.ft~"},
		{"drum bolts thirty foot pounds that's done drum nuts in a cross and i go seventy no sorry that's the other one this one's fifty two fifty two all the way round", "drum bolts 30 lbf.ft, drum nuts 52 lbf.ft~"},
		{"Drum nuts, seventy foot pounds, no sorry, this one's got five studs.", "drum nuts 70 lbf.ft"},
		// told by what it was called
		{"There's a hollow bolt on the pump. Hollow bolt in. The lock nut I leave by hand. The hollow one gets thirty newton metres.", "hollow bolt 30 N.m"},
		// a range that a document gives, and what is taken of it
		{"The lid bolts, twenty newton metres. Now the base nuts, the chart says from 30 to 36, so I go for 34.", "lid bolts 20 N.m, base nuts 30-36 N.m, base nuts 34 N.m"},
		// the same again
		{"Left clamp on, its two bolts. Nine newton metres. Click, click. Left is done. The right clamp, same again, nine.", "left clamp bolts 9 N.m~, right clamp 9 N.m"},
		// only counted
		{"Drum cover on with sixteen bolts. Twelve newton metres. I went around all sixteen.", "drum cover bolts 12 N.m~"},
		{"Drum cover on. Start all sixteen bolts by hand. Twelve newton metres. And that's sixteen.", "drum cover bolts 12 N.m~"},
		// the other that it may be
		{"Bowl bolt in. Six newton metres I think, might be seven.", "bowl bolt 6-7 N.m?~"},
		{"Bowl bolt in. Just three newton metres I think, three or four, it's soft.", "bowl bolt 3-4 N.m?~"},
		{"Bowl bolt in. Six newton metres. Hinge bolt, could be seven.", "bowl bolt 6 N.m~, hinge bolt 7 N.m?"},
		// an angle over against an angle
		{"Head on, ten bolts, by hand. First forty newton metres. After that it's an angle. The manual says ninety degrees, and the leaflet in the kit says sixty.", "head bolts 40 N.m~, head bolts 90 deg~, head bolts 60 deg~"},
		{"Hub nut on. The book says two hundred newton metres and then sixty degrees. Caliper back on. Caliper bolts, the book says eighty.", "hub nut 200 N.m 60 deg~, caliper bolts 80 N.m"},
		// what is chosen of two
		{"Rail bolts in. Foot bolts in. The book says twelve newton metres for the rail bolts. The sheet says fifteen newton metres. I'm going with twelve.", "rail bolts 15 N.m~, rail bolts 12 N.m"},
		// no unit in the whole talk: by the wrench, the click, what is printed, never a size or a gauge
		{"Blanket bar on its hook, two bar bolts in. Torque wrench on those, thirty. Pawl in.", "bar bolts 30 "},
		{"Wheel bolts in. I set the wrench, forty-five. Click.", "wheel bolts 45 ~"},
		{"Piston nut back on, red on the thread, and that wants two fifty. So two fifty, and there it clicked.", "piston nut 250 "},
		{"The lock ring goes on by hand, a few turns. It says forty on the face of it, so forty.", "lock ring 40 "},
		{"Pinch bolt in, by hand only. Eight to ten in the book, and I'll get the torque key when he's back.", "pinch bolt 8-10 ~"},
		{"Castor in, it comes with its own bolt. Twenty-five on that. It's in the book.", "castor bolt 25 ~"},
		{"Mast bolts, there's four. Just checked them, forty-five, all four clicked and none of them moved.", "mast bolts 45 "},
		{"Cap bolt in. Torque wrench with a thirteen on it. Click.", ""},
		{"Cap bolts in by hand. The gauge says forty, so I let some air out.", ""},
		{"Cap bolts in by hand. The book says twelve screws, and I have eleven.", ""},
		// done at, on those, in rounds
		{"Cover bolts in, sixty newton metres. Plug back with a new washer, and that I've done at eighty. Hose off.", "cover bolts 60 N.m, plug 80 N.m"},
		{"Spindle in, sixty-five newton metres. Caliper on, two bolts, and forty on those. Pump it.", "spindle 65 N.m, caliper bolts 40 N.m"},
		{"Beam bolts in, ninety newton metres. Six knife bolts in. From the middle out, the first time thirty, the second time sixty.", "beam bolts 90 N.m, knife bolts 30 N.m~, knife bolts 60 N.m~"},
		{"The cover's got eight of them, nineteens. All eight out, cover off. Cover over, and the eight back in. I've done them at sixty newton metres.", "cover fasteners 60 N.m~"},
		// of another machine, or only vaguely told
		{"Bar bolts in. Thirty newton metres. No. Thirty was the other machine, this is twenty-four.", "bar bolts 24 N.m~"},
		{"Coupling bolts in, nipped up. They take thirty something newton metres. I'll ring them.", "coupling bolts 30 N.m?"},
		// doubt goes on to the same value in another unit
		{"Gate on. Hinge nut on, tape off, rags away. Forty newton metres. That's about thirty foot pounds.", "hinge nut 40 N.m~, hinge nut 30 lbf.ft?~"},
	} {
		if got := tellTorques(t, x.talk); got != x.want {
			t.Errorf("%s\n got %s\nwant %s", x.talk, got, x.want)
		}
	}
}
