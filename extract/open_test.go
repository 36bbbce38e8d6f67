package extract

import (
	"fmt"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

// TestLooseEnds: what people say when they leave something open, in trades and
// voices of our own. What is wanted is common practice, no source: each is what a
// careful reader would ask after.
func TestLooseEnds(t *testing.T) {
	tests := []struct {
		name   string
		talk   []string
		kind   string
		before string
		in     string // words that the question or its thing must hold; "" where nothing of the kind may be asked
	}{
		{"a value not at hand", []string{"Head bolts next.", "The figure for those is on my phone, and my phone's in the harbour."}, LookUp, BeforeUse, "head bolts"},
		{"to be asked", []string{"Bolts back in the knotter frame.", "The torque on the frame bolts I don't know, I'll call the dealer in the morning."}, LookUp, BeforeUse, "frame bolts"},
		{"a question with its answer", []string{"How tight do the blade nuts go? They get fifty newton metres."}, LookUp, "", ""},
		{"found later", []string{"I haven't got a figure for the axle nut.", "Wheel on.", "Here it is, the axle nut gets ninety newton metres."}, LookUp, "", ""},
		{"a size in doubt", []string{"The counterweight screws are thirteen mil, I think, could be a half inch."}, Unsure, BeforeUse, "counterweight screws"},
		{"put right at once", []string{"The drum nut is a seventeen, I think. No. It's a nineteen."}, Unsure, "", ""},
		{"somebody else's machine", []string{"The wheel nuts on yours might be a 21."}, Unsure, "", ""},
		{"two documents", []string{"The decal says one eighth of an inch for the needles.", "The manual says a sixteenth."}, Conflict, BeforeUse, "needles"},
		{"a document and the machine", []string{"The drawing shows two screws in the pump.", "This one has three."}, Conflict, BeforeUse, "pump"},
		{"one value in two units", []string{"The leaflet says forty newton metres for the cups, or thirty foot pounds."}, Conflict, "", ""},
		{"two documents, one of them wrong besides", []string{"Castle nut on. Book says sixty newton metres. That's four hundred and forty foot pound to my father.", "And the leaflet in the box says forty newton metres."}, Conflict, BeforeUse, "castle nut"},
		{"put off", []string{"The chain tension I'll do that tomorrow."}, Unfinished, BeforeUse, "chain"},
		{"not done, by any verb", []string{"The lance, I haven't opened it."}, Unfinished, BeforeUse, "lance"},
		{"not tried", []string{"Belt on.", "I haven't run it yet."}, Unfinished, BeforeUse, "run it"},
		{"done after all", []string{"The guard screws, I'll come back to those.", "Now the belt.", "And the guard screws go back in."}, Unfinished, "", ""},
		{"again after some use", []string{"After the first fifty kilometres check the wheel nuts again."}, Unfinished, BeforeLater, "wheel nuts"},
		{"stands in", []string{"The old clip is back on for now, the right one is on order."}, ReplaceLater, BeforeLater, "clip"},
		{"not to be used till then", []string{"There's a bit of twine through the axle for now.", "It's not to be ridden until the pin is in."}, ReplaceLater, BeforeUse, "twine"},
		{"as it stands, no stand-in", []string{"There's maybe a quarter turn too much on the spring, and that's fine for now."}, ReplaceLater, "", ""},
		{"pinched for now", []string{"Frame bolts in. So for now I've just pinched them up."}, ReplaceLater, "", ""},
		{"the thing that a pronoun stands for", []string{"The bush in the lever is worn oval.", "A smear of grease and that's going back for the minute, there's none on the shelf."}, ReplaceLater, BeforeLater, "bush"},
		{"not what is smeared on it", []string{"I haven't got a stiff nut, I've a plain one.", "So that's on there for now with a drop of thread lock."}, ReplaceLater, BeforeLater, "nut"},
		{"one of the old ones for want", []string{"Gasket on the pump end. I had two this morning and I've one.", "So the other end gets one of the old ones back, for now."}, ReplaceLater, BeforeLater, "gasket"},
		{"not here for the whole job", []string{"That means a seal, and I don't have the seal. For now it goes back as it was."}, ReplaceLater, BeforeLater, "seal"},
		{"ordered", []string{"The wiper felts are like cardboard. I've ordered new felts."}, ReplaceLater, BeforeLater, "felts"},
		{"ordered, and come", []string{"I ordered a pin for the hinge and this is it. Pin in, tap it home."}, ReplaceLater, "", ""},
		{"only till then", []string{"I ran a length of fencing wire through the eye and twisted it. That's just till tomorrow."}, ReplaceLater, BeforeLater, "wire"},
		{"again, of what was tightened", []string{"Drawbar bolts, forty five newton metres, click and click.", "And you go round those again after fifty miles."}, Unfinished, BeforeLater, "drawbar bolts"},
		{"again, of what it names", []string{"Drawbar bolts at forty five newton metres.", "Change the oil again after twenty hours."}, Unfinished, BeforeLater, "oil"},
		{"tight with fingers, as it is made to be", []string{"Hopper lid back on, and the wing nuts hand tight."}, NotTorqued, "", ""},
		{"of the fastener that has the values", []string{"The auger on the shaft, and the flange nuts. The tag says forty newton metres and the booklet says fifty two. So one of them's wrong."}, Conflict, BeforeUse, "flange nuts"},
		{"a setting, no stand-in", []string{"I've left the idle at three for now."}, ReplaceLater, "", ""},
		{"tight for now", []string{"The frame bolts are only hand tight for now."}, NotTorqued, BeforeUse, "frame bolts"},
		{"still off", []string{"Take the kick panel off.", "The kick panel's still off so I can see."}, NotRefitted, BeforeUse, "kick panel"},
		{"off, and spoken of as on", []string{"Take the belt cover off.", "New belt on.", "Spin it.", "The belt cover wants to sit flush all round."}, NotRefitted, "", ""},
		{"off, and for the bin", []string{"Take the old gasket off, that's for the bin."}, NotRefitted, "", ""},
		{"promised", []string{"I'll stick the wire colours and the part number for the motor in the description."}, Promise, BeforePublishing, "wire colours"},
		{"lost in the yard", []string{"Six clips round the hatch.", "And one clip has pinged across the yard."}, NotRefitted, BeforeUse, "clip"},
		{"lost and found", []string{"The cotter's rolled under the bench.", "Got it. Cotter in."}, NotRefitted, "", ""},
		{"one over", []string{"Fairing's on, and there's a screw left in the dish."}, NotRefitted, BeforeUse, "screw"},
		{"left off till another day", []string{"The belly pan comes off.", "I'm leaving the belly pan off until Sunday."}, NotRefitted, BeforeUse, "belly pan"},
		{"in nobody's way", []string{"Side panel off.", "It's not in the way of the hose.", "Side panel on, three screws."}, NotRefitted, "", ""},
		{"dead while worked on", []string{"New brushes in the mixer.", "It's unplugged, it's cold."}, NotRefitted, "", ""},
		{"tied for want of the part", []string{"The hose clip snapped.", "So that hose is cable tied till the right one comes."}, ReplaceLater, BeforeLater, "hose"},
		{"on with old ones", []string{"I'm out of lock nuts.", "So the last blade is on with the old nuts, they'll be swapped for new next week."}, ReplaceLater, BeforeLater, "blade"},
		{"until it bleeds", []string{"The bleed screw stays open until the fluid comes.", "There, closed."}, ReplaceLater, "", ""},
		{"only up by hand", []string{"The sump plug's in hand tight because it comes out again."}, NotTorqued, BeforeUse, "sump plug"},
		{"after the break", []string{"The tensioner wants another half, and I'll be doing that after break."}, Unfinished, BeforeUse, "tensioner"},
		{"left as it was", []string{"The governor spring I haven't touched."}, Unfinished, "", ""},
		{"a figure that cannot be", []string{"It says ninety newton metres for the clamp screw. That can't be right."}, Suspect, BeforeUse, "clamp screw"},
		{"put back for now, its figure unknown", []string{"The glow plug.", "I don't remember the number for this one, I'll look it up.", "For now I just put it back by hand so no dirt gets in."}, NotTorqued, BeforeUse, "glow plug"},
		{"standing without", []string{"Level plug out.", "So it's still standing there with no plug in it."}, NotRefitted, BeforeUse, "plug"},
		{"owed", []string{"I still owe you the part number for the seal, it'll be in the comments."}, Promise, BeforePublishing, "part number"},
		{"wanted of the thing", []string{"Idler back on its pin.", "It could do with a drop of oil, I've none out here."}, Unfinished, BeforeUse, "idler"},
		{"wanted of what no list has", []string{"Tail stock's back on. The alignment needs looking at by somebody who knows."}, Unfinished, BeforeUse, "alignment"},
		{"wanted, and set about", []string{"The shell wants cleaning.", "So wipe the shell out with a rag."}, Unfinished, "", ""},
		{"wanted of any such machine", []string{"The chain always needs oiling on these."}, Unfinished, "", ""},
		{"left to do by any verb", []string{"I've still the inner cable to trim."}, Unfinished, BeforeUse, "cable"},
		{"no lock to be had", []string{"Castle nut back on the hub, sixty newton metres.", "I've no split pin, the shop was shut."}, LockMissing, BeforeUse, "split pin"},
		{"never had one", []string{"There's no split pin on this one, it's a stiff nut."}, LockMissing, "", ""},
		{"which way round", []string{"The lip seal goes in with the lip facing out, I think."}, Unsure, BeforeUse, "lip seal"},
		{"whether it was there", []string{"Was there a shim under this bearing or not? I can't remember."}, Unsure, BeforeUse, "shim"},
		{"not trusted", []string{"Screw the gland nut in. It went in funny."}, Unsure, BeforeUse, "gland nut"},
		{"two sources in one breath", []string{"The dipstick says ten w thirty and the booklet says ten w forty for the oil."}, Conflict, BeforeUse, "oil"},
		{"denied by the machine", []string{"It says on the sticker the impeller turns clockwise. Well it doesn't."}, Conflict, BeforeUse, "impeller"},
		{"only the one of them", []string{"The diagram's got a shim each side of the lever.", "Mine came apart with only the one."}, Conflict, BeforeUse, "shim"},
		{"damage put up with", []string{"The drive boot is split. I'll live with it for now, it's on the list."}, Unfinished, BeforeUse, "boot"},
		{"damage put right", []string{"The drive boot is split. So that's off, and a new drive boot on."}, Unfinished, "", ""},
		{"in no state to be used", []string{"There's no brake on the trolley at the minute, don't ride it like that."}, Unfinished, BeforeUse, "brake"},
		{"not to be had", []string{"No gasket in the kit, so I've cut one out of card."}, ReplaceLater, BeforeLater, "gasket"},
		{"could be used", []string{"You could use a bit of wire for now. I've a new pin, and in it goes."}, ReplaceLater, "", ""},
		{"no figure at all", []string{"Tighten the gland nut. There's no figure for that, you go till it stops weeping."}, LookUp, "", ""},
		{"none in the book", []string{"There's no figure for the clamp bolt in my book."}, LookUp, BeforeUse, "clamp bolt"},
		{"as tight as fingers go", []string{"The crank bolt is just as tight as my fingers go."}, NotTorqued, BeforeUse, "crank bolt"},
		{"nipped up another day", []string{"Mast bolts in. I'll nip those up on Sunday."}, NotTorqued, BeforeUse, "mast bolts"},
		{"for a second", []string{"The end bolts are just in loosely for a second."}, NotTorqued, "", ""},
		{"two left off side by side", []string{"Undertray off. Battery lead off.", "The undertray's not on, and the battery lead I'm leaving off tonight."}, NotRefitted, BeforeUse, "battery lead"},
		{"the bin of another", []string{"The cowl comes away. Old filter in the bin, new filter in."}, NotRefitted, BeforeUse, "cowl"},
		{"once more after use", []string{"Head bolts at twenty newton metres. And they want doing again after it's been warm."}, Unfinished, BeforeLater, "head bolts"},
		{"said, and done", []string{"You want to check the sight glass again after a ride. I have."}, Unfinished, "", ""},
		{"no promise", []string{"Then I'll do the left side up."}, Promise, "", ""},
		{"asked of viewers", []string{"If you know the figure for the hanger bolt, put it in the comments."}, Promise, "", ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rec := record(t, append([]string{"Right, the pump bolts are out and the wheel is off."}, tt.talk...)...)
			for _, o := range rec.Open {
				if o.Kind != tt.kind || tt.in == "" && strings.HasPrefix(o.Rule, "ledger") && tt.kind != NotRefitted {
					continue
				}
				if tt.in == "" {
					if w := o.About; w != "pump bolts" && w != "wheel" {
						t.Errorf("asked %q", o.Question)
					}
					continue
				}
				if o.Before == tt.before && strings.Contains(strings.ToLower(o.About+" "+o.Question), tt.in) {
					return
				}
			}
			if tt.in != "" {
				for _, o := range rec.Open {
					t.Logf("%s %s: %s", o.Kind, o.Before, o.Question)
				}
				t.Errorf("no %s before %s about %q", tt.kind, tt.before, tt.in)
			}
		})
	}
}

// TestOneMatterOneQuestion: what is told in several breaths is asked once.
func TestOneMatterOneQuestion(t *testing.T) {
	for name, talk := range map[string][]string{
		LookUp:       {"Hose bracket bolt. There's a number for that. I don't know what it is, I'll have to dig it up."},
		ReplaceLater: {"The new springs are on order. So the old springs go back in for the time being. I'll swap them when the others arrive."},
		Conflict:     {"The sticker says eighty for the wheel nuts and the handbook says a hundred and ten. So one of them's wrong. I'll ask on the owners' page."},
	} {
		rec := record(t, append([]string{"Take the pump cover off."}, talk...)...)
		n := 0
		for _, o := range rec.Open {
			switch o.Kind {
			case LookUp, ReplaceLater, Conflict, Unsure, Unfinished:
				n++
				if o.Kind != name {
					t.Errorf("%s: also %s: %s", name, o.Kind, o.Question)
				}
			}
		}
		if n != 1 {
			t.Errorf("%s: %d questions", name, n)
		}
	}
}

// TestRecap: what people name when they say what is left is asked after, once.
func TestRecap(t *testing.T) {
	rec := record(t, "Battery out, it's on the bench. Crank arm off, and the guard off.", "New crank arm on, the bolt is only finger tight for now.", "Chain on. Wheel in.",
		"So what's left.", "The crank bolt, obviously, and I've got to set the motor sensor.", "Thanks for watching, see you.")
	sensor := 0
	for i, o := range rec.Open {
		if strings.Contains(o.About, "sensor") {
			sensor++
		}
		for _, p := range rec.Open[:i] {
			if p.About == o.About && p.Kind == o.Kind {
				t.Errorf("asked twice: %s", o.Question)
			}
		}
	}
	if sensor != 1 {
		t.Errorf("asked %d times after the sensor: %+v", sensor, rec.Open)
	}
}

// TestRecapEnds: what is told once the list of what is left is over is none of it, where no stops are written.
func TestRecapEnds(t *testing.T) {
	lines := []string{"take the deck off and the belt", "new belt on and the deck bolts in by hand", "blades on and the keeper back and the guard",
		"lower it down and roll it out of the shed", "so what's left i gotta torque the deck bolts", "and then the blade brake", "so a guy named nobody", "asked me can it pull stumps with it nope"}
	var b strings.Builder
	for i, l := range lines {
		fmt.Fprintf(&b, "%d\n00:00:%02d,000 --> 00:00:%02d,900\n%s\n\n", i+1, i*4, i*4+3, l)
	}
	for _, o := range Extract(talkOf(t, b.String()), lexicon.Default(), Job{}).Open {
		if strings.Contains(o.Question, "nope”") || strings.Contains(o.Question, "the guy") || strings.Contains(o.Question, "the nobody") {
			t.Errorf("asked: %s", o.Question)
		}
	}
}

// TestGrubScrews: a grub screw takes a smaller key than a cap screw of its thread, 3 mm for M6 where that
// has 5 mm (ISO 4026 and ISO 4762, as in normalize/data/keys.csv), and a bit hammered into a rounded
// one tells of no thread.
func TestGrubScrews(t *testing.T) {
	for value, want := range map[string]bool{"seven": false, "seventy": true} {
		rec := record(t, "Three grub screws. Three mil allen key, and one is rounded, so you get a T20 bit and hammer it in.",
			"New grub screws in.", "The grub screws are "+value+" newton metres.")
		got := false
		for _, o := range rec.Open {
			got = got || o.Kind == Suspect && strings.Contains(o.Question, "M6")
		}
		if got != want {
			t.Errorf("%s N·m: suspect is %t; %+v", value, got, rec.Open)
		}
	}
}

// TestSameWords: what reads the same is asked once.
func TestSameWords(t *testing.T) {
	rec := record(t, "Take the pump cover off.", "Cover back on.", "I'll do a drawing of that, with sizes, and I'll put it up on the club page.")
	asked := map[string]bool{}
	for _, o := range rec.Open {
		if asked[o.Question] {
			t.Errorf("asked twice: %s", o.Question)
		}
		asked[o.Question] = true
	}
	if len(asked) == 0 {
		t.Error("nothing is asked")
	}
}

// TestWarnings: ways of warning that need no "don't" (common practice, no source).
func TestWarnings(t *testing.T) {
	for talk, in := range map[string]string{
		"Take the radiator cap off hot and it'll have the skin off your hand.": "skin",
		"This one is a left-hand thread, so it undoes clockwise.":              "left-hand",
		"Do it outside, the fumes of the petrol are bad.":                      "outside",
		"If the pin jumps out it rounds off the splines.":                      "splines",
		"Before you go anywhere pump the brake pedal.":                         "pump",
		"Rubber grease on the seal, no sealant.":                               "sealant",
		"Keep a thumb over the circlip.":                                       "thumb",
		"Unplug it, the element stays live.":                                   "unplug",
		"Plug lead off, and key in your pocket.":                               "pocket",
		"Pull the trigger and let the pressure out.":                           "pressure",
		"Keep everybody out from under the bucket.":                            "bucket",
		"That arm's on a spring and it'll have your fingertip.":                "fingertip",
		"Nobody should touch this cord until there's oil in it.":               "cord",
		"Hold it square so you don't bend the fins.":                           "fins",
		"Tighten the lid screws, not hard, it's only plastic.":                 "plastic",
		"Overfill it and it blows the seals.":                                  "overfill",
		"Thumb over the circlip, or it'll fly across the shed.":                "circlip",
		"People take a screwdriver to it and it scores the groove.":            "screwdriver",
		"The other stuff rots the rubber.":                                     "rubber",
		"And nobody squeezes that lever.":                                      "lever",
		"The gate will fall, so somebody holds it.":                            "gate",
		"The spring in there is under a lot of load.":                          "spring",
		"The dished side goes towards the motor.":                              "dished",
		"Circlip in the piston, gap facing down.":                              "gap",
		"That banjo washer is single use.":                                     "single use",
	} {
		rec := record(t, "Take the wheel off.", talk)
		found := false
		for _, c := range rec.Cautions {
			found = found || strings.Contains(strings.ToLower(c.Text), in)
		}
		if !found {
			t.Errorf("%q warns of nothing: %+v", talk, rec.Cautions)
		}
	}
	for _, talk := range []string{
		"I don't know why people like this tool.",
		"You'll lose about half a litre of oil.",
		"Wear plate on the shredder.",
		"There's a wire to the solenoid, so you have to unplug it.",
		"The spring cracked last year and I replaced it.",
		"I make sure they're in the right order.",
		"The reed lies flat and there's no crack in it.",
		"Somebody told me the old one was plastic.",
		"The belt jumps on when you turn the pulley by hand.",
		"Put a paint mark on the nut and swing it round a quarter.",
		"That's not oil on the shaft, it's jam.",
	} {
		if rec := record(t, "Take the wheel off.", talk); len(rec.Cautions) > 0 {
			t.Errorf("%q warns: %q", talk, rec.Cautions[0].Text)
		}
	}
}

// TestSoon: the machine is not used before what is to be done tomorrow.
func TestSoon(t *testing.T) {
	for talk, want := range map[string]string{
		"Gear cover off. The gear cover also tomorrow.":            BeforeUse,
		"It'll need the gears indexed, I'm doing that tomorrow.":   BeforeUse,
		"After fifty miles I'll go round the wheel nuts again.":    BeforeLater,
		"Tomorrow we do the slope test, with sandbags in the seat": BeforeUse,
	} {
		found := false
		for _, o := range record(t, sentences(talk)...).Open {
			if o.Kind == Unfinished {
				found = true
				if o.Before != want {
					t.Errorf("%s\n\tbefore %s, want %s", talk, o.Before, want)
				}
			}
		}
		if !found {
			t.Errorf("%s: nothing is asked", talk)
		}
	}
}
