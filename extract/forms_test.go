package extract

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

// TestFormsOfPuttingBack: whatever the verb and whoever does it, in whatever voice and
// tense, and however long nobody spoke: what came off is back.
func TestFormsOfPuttingBack(t *testing.T) {
	verbs := []struct{ plain, ing, past, done string }{
		{"put", "putting", "put", "put"}, {"push", "pushing", "pushed", "pushed"}, {"slide", "sliding", "slid", "slid"},
		{"screw", "screwing", "screwed", "screwed"}, {"thread", "threading", "threaded", "threaded"}, {"wind", "winding", "wound", "wound"},
		{"run", "running", "ran", "run"}, {"spin", "spinning", "spun", "spun"}, {"knock", "knocking", "knocked", "knocked"},
		{"tap", "tapping", "tapped", "tapped"}, {"press", "pressing", "pressed", "pressed"}, {"drop", "dropping", "dropped", "dropped"},
		{"pop", "popping", "popped", "popped"}, {"slip", "slipping", "slipped", "slipped"}, {"drive", "driving", "drove", "driven"},
		{"shove", "shoving", "shoved", "shoved"}, {"ease", "easing", "eased", "eased"}, {"poke", "poking", "poked", "poked"},
	}
	frames := []string{
		"%[1]s it back in.", "%[1]s the plug back in.", "I %[1]s it back in.", "I'm %[2]s it back in.", "I %[3]s it back in.",
		"I've %[4]s it back in.", "I've just %[4]s it back in.", "It's %[4]s back in.", "That's %[4]s back in now.",
		"The plug gets %[4]s back in.", "You %[1]s it back in.", "We'll %[1]s that back in.", "Let's %[1]s it back in.",
		"I'm going to %[1]s it back in.", "Then %[1]s it back in.", "Now you want to %[1]s it back in.", "Just %[1]s it back in.",
	}
	for _, v := range verbs {
		for _, f := range frames {
			said := fmt.Sprintf(f, v.plain, v.ing, v.past, v.done)
			said = strings.ToUpper(said[:1]) + said[1:]
			checkLeftIn(t, []string{"Take the drain plug out.", "Wipe it with the rag.", said}, "plug", Refitted, HandTight, Tightened)
		}
	}
}

// TestFormsOfTakingOut is the same of what comes off.
func TestFormsOfTakingOut(t *testing.T) {
	frames := []string{
		"%s it out.", "%s the pin out.", "I %s it out.", "Let's %s it out.", "So I %s that out.", "We'll %s this out.",
		"I'm going to %s it out.", "Then %s the pin out.", "You %s it straight out.", "And %s that out.",
	}
	for verb := range strings.FieldsSeq("pull take slide wind screw knock tap pop get draw drive whip prise lever lift hook push spin twist press yank ease wiggle") {
		for _, f := range frames {
			said := fmt.Sprintf(f, verb)
			said = strings.ToUpper(said[:1]) + said[1:]
			checkLeftIn(t, []string{"Undo the clamp bolt on the arm.", "Now the pivot pin.", "Look at the state of it.", said}, "pin", Removed)
		}
	}
}

// TestFormsOfByHand: fasteners that are on by hand are so in whatever words.
func TestFormsOfByHand(t *testing.T) {
	for _, how := range []string{"finger tight", "by hand", "with my fingers", "hand tight", "just by hand", "fingers only", "just with my fingers"} {
		for _, f := range []string{"Bolts in, %s.", "Bolts back in %s.", "I've put the bolts in %s.", "They're in %s.", "All four back in, %s.", "Bolts, %s.", "Put the bolts in %s."} {
			checkLeftIn(t, []string{"Take the cover bolts off.", "Cover back on.", fmt.Sprintf(f, how)}, "bolt", HandTight)
		}
	}
}

// TestFormsOfRows: three things told in a row share what becomes of them, in whatever form
// the row comes, and things that are only named share nothing.
func TestFormsOfRows(t *testing.T) {
	rows := [][3]string{{"nut", "washer", "pulley"}, {"nut", "spacer", "sprocket"}, {"circlip", "shim", "gear"}, {"cap", "spring", "piston"}, {"cover", "gasket", "impeller"}}
	say := func(f string, row [3]string) string {
		for i, n := range row {
			up := strings.ToUpper(n[:1]) + n[1:]
			f = strings.NewReplacer("{"+string("abc"[i])+"}", n, "{"+string("ABC"[i])+"}", up).Replace(f)
		}
		return f
	}
	for _, row := range rows {
		for _, f := range []string{
			"{C} on, {b}, {a}.", "So {c} goes on, then the {b}, and the {a}.", "Put the {c} on, the {b} and the {a}.", "{C}, then {b}, then {a}.",
			"{C}, then the {b}, then the {a}.", "{C} first, {b} next, {a} last.", "On goes the {c}, then the {b}, and the {a}.", "That's the {c}, the {b} and the {a} back on.",
			"Same as it came off: {c}, {b}, {a}.", "Putting it back: {c}, {b}, {a}.", "{C} back on, then the {b}, followed by the {a}.", "First the {c}, then the {b}, then the {a}.",
			"{C} slides on, {b} behind it, {a} on the end.", "{C} back on and the {b} and the {a}.", "So we've got the {c} on, then the {b}, and the {a}.", "Right, {c}. {B}. And the {a}.",
		} {
			talk := []string{say("{A} off, {b} off, {c} off.", row), "Clean the shaft.", say(f, row)}
			for _, n := range row {
				checkLeftIn(t, talk, n, Refitted, HandTight, Tightened)
			}
		}
		for _, f := range []string{
			"{A}, {b}, {c}, all off.", "{A} off, then the {b}, then the {c}.", "Off with the {a}, {b} and {c}.", "{A}. {B}. {C}. All off.", "So that's the {a}, the {b} and the {c} off.",
			"I've had the {a}, the {b} and the {c} off.", "Off comes the {a}, then the {b}, and the {c}.", "The {a}, the {b} and the {c} are off.", "The {a} and the {b} come off, then the {c}.",
			"Got the {a} off and the {b} and the {c}.", "{A} off, {b}, {c}.",
		} {
			for _, n := range row {
				checkLeftIn(t, []string{"Now the fan end.", say(f, row)}, n, Removed)
			}
		}
		for _, f := range []string{
			"Here's the {c}, the {b} and the {a}.", "There's the {c}, then the {b}, then the {a}.", "{C}, {b}, {a}, all cleaned up.", "The {c} isn't on yet, nor the {b}, nor the {a}.",
			"Next week the {c} goes on, then the {b}, then the {a}.", "Usually the {c} goes on, then the {b}, and the {a}.", "Give the {c} a wipe, then the {b}, then the {a}.",
			"It came off {a}, {b}, {c}.", "{C}, {b}, {a}. All on the bench.", "The {c} and the {b} and the {a} are on the bench.",
		} {
			for _, n := range row {
				checkLeftIn(t, []string{say("{A} off, {b} off, {c} off.", row), "Clean the shaft.", say(f, row)}, n, Removed)
			}
		}
	}
}

// TestFormsOfHowTight: how fasteners that went on were left, told of all of them, of one
// side, for later, or for now.
func TestFormsOfHowTight(t *testing.T) {
	for _, n := range []string{"bolt", "screw", "nut"} {
		on := []string{"Take the four cover " + n + "s out.", "Cover off.", "Clean it up.", "Cover back on, " + n + "s in."}
		for _, f := range []string{"All four nipped up.", "All four tight.", "That's all four done up.", "That's them all tight.", "They're all tight.", "Lock them up.", "Swing them up tight.",
			"Give them all a nip.", "Tight. Tight. Tight.", "They've all been nipped up.", "Pull them up tight."} {
			checkLeftIn(t, append(on[:4:4], f), n, Tightened)
		}
		for _, when := range []string{"later", "in a minute", "afterwards", "once the wheel's on", "when it's all together", "after the chain's on"} {
			for _, f := range []string{"I'll tighten them ", "We'll do them up ", "They'll get tightened ", "They get tightened ", "I'm going to tighten those ", "We can tighten them "} {
				checkLeftIn(t, append(on[:4:4], f+when+"."), n, Refitted, HandTight)
			}
		}
		for _, f := range []string{"All three back in.", "That's all three in.", "Three back in.", "That's them in.", "In they go.", "In they go, all three.", "Wind all three in.", "Pop the three of them back in."} {
			checkLeftIn(t, []string{"Take the three cover " + n + "s out.", "Cover off.", "Clean it up.", "Cover back on.", f}, n, Refitted, HandTight)
		}
		sides := []string{"Left cover " + n + " out, right cover " + n + " out.", "Cover off.", "Clean it up.", "Cover back on."}
		for _, f := range []string{"Left %s's tight. The right one's just in by hand.", "Left %s tight, right one by hand.", "The left %s is tight. The right one's only finger tight.", "Right one by hand. Left %s tight."} {
			f = strings.ReplaceAll(f, "%s", n)
			checkLeftIn(t, append(sides[:4:4], f), "left "+n, Tightened)
			checkLeftIn(t, append(sides[:4:4], f), "right "+n, HandTight)
		}
		for _, f := range []string{"Undo it but don't take it out.", "Loosen it but leave it in.", "I've cracked it but it's still in.", "It's cracked off.", "Give it half a turn, that's all."} {
			checkLeftIn(t, []string{"Undo the cover clips.", "There's a clamp " + n + " on the lever.", f}, n, Loosened)
		}
	}
}

// TestFormsOfComingOff: what came off and where it went, told afterwards and in few words.
func TestFormsOfComingOff(t *testing.T) {
	for _, n := range []string{"seal", "belt", "bearing", "hose"} {
		for _, f := range []string{"Straight in the bin.", "In the bin with that.", "Bin.", "Not having that back in.", "I'm not putting that back.", "That's not going back in.", "In the scrap bucket."} {
			checkLeftIn(t, []string{"Undo the clamp bolt.", "Pull the old " + n + " out.", f}, n, Discarded)
		}
		checkLeftIn(t, []string{"Undo the clamp bolt.", "Pull the old " + n + " out.", "That's not going back in until it's clean."}, n, Removed)
	}
	for _, n := range []string{"pulley", "bracket", "sleeve", "spring"} {
		for _, f := range []string{"I've had that off already.", "I had that off before we started.", "That's him off.", "And away it comes.", "That's it away.", "It's pulled off now.", "The " + n + " I've already had off."} {
			checkLeftIn(t, []string{"Undo the clamp bolt.", "Now, the " + n + ".", f}, n, Removed)
		}
	}
	for _, f := range []string{"Two bolts and it drops down.", "Two bolts, and off it comes.", "Undo the two bolts and hang it over there.", "Two bolts out and it comes away."} {
		for _, n := range []string{"bracket", "bolt"} {
			checkLeftIn(t, []string{"Next job.", "Now the bracket.", f}, n, Removed)
		}
	}
	// the bolts of a cover come out of it, and the cover stays
	for _, f := range []string{"Take the cover bolts out.", "Get the three cover bolts out.", "I've got the cover bolts out.", "Pull the cover bolts out."} {
		rec := Extract(talkOf(t, lines("Right, first job.", f)), lexicon.Default(), Job{})
		for _, e := range rec.Ledger {
			if e.Item == "cover" {
				t.Errorf("%s: the cover is %s", f, e.State)
			}
		}
	}
}

// checkLeftIn tells whether the one thing of a name was left in one of some states, with
// long silences between what is said.
func checkLeftIn(t *testing.T, talk []string, name string, states ...string) {
	t.Helper()
	var b strings.Builder
	for i, s := range talk {
		fmt.Fprintf(&b, "[%d:%02d] %s\n", i*20/60, i*20%60, s)
	}
	fmt.Fprintf(&b, "[%d:%02d] Okay.\n", len(talk)*20/60, len(talk)*20%60)
	for _, s := range leftAs(Extract(talkOf(t, b.String()), lexicon.Default(), Job{}), name) {
		for _, want := range states {
			if s == want {
				return
			}
		}
	}
	t.Errorf("%s: not left %s", strings.Join(talk, " "), strings.Join(states, " or "))
}

// stepsOf gives the steps of a talk, a sentence every twenty seconds, after the first n lines.
func stepsOf(t *testing.T, talk []string, n int) []string {
	t.Helper()
	var b strings.Builder
	for i, s := range append(talk, "Okay.") {
		fmt.Fprintf(&b, "[%d:%02d] %s\n", i*20/60, i*20%60, s)
	}
	out := []string{}
	for _, s := range Extract(talkOf(t, b.String()), lexicon.Default(), Job{}).Steps {
		if s.At >= float64(n*20) {
			out = append(out, s.Text)
		}
	}
	return out
}

// TestFormsOfSteps: whoever does it and in whatever tense, the step is the plain instruction,
// with its particle and its thing, and with what it is done with.
func TestFormsOfSteps(t *testing.T) {
	verbs := []struct{ plain, ing, past, tail string }{
		{"pull", "pulling", "pulled", " out"}, {"slide", "sliding", "slid", " off"}, {"knock", "knocking", "knocked", " out with the drift"},
		{"press", "pressing", "pressed", " in from the left"}, {"clean", "cleaning", "cleaned", ""}, {"grease", "greasing", "greased", ""},
		{"wire brush", "wire brushing", "", ""}, {"centre punch", "", "", ""}, {"double check", "", "", ""}, {"cable tie", "", "", " up"},
		{"cut through", "cutting through", "", ""}, {"push down on", "pushing down on", "", ""}, {"put some heat on", "putting some heat on", "", ""},
		{"draw", "drawing", "drew", " off"},
	}
	frames := []string{
		"%[1]s the sleeve%[4]s.", "I %[1]s the sleeve%[4]s.", "I'm going to %[1]s the sleeve%[4]s.", "Now %[1]s that sleeve%[4]s.",
		"I need to %[1]s this sleeve%[4]s.", "What we do is %[1]s the sleeve%[4]s.", "You've got to %[1]s the sleeve%[4]s.", "Then I'm %[2]s the sleeve%[4]s.", "So I %[3]s the sleeve%[4]s.",
	}
	for _, v := range verbs {
		for _, f := range frames {
			if v.ing == "" && strings.Contains(f, "[2]") || v.past == "" && strings.Contains(f, "[3]") || strings.HasPrefix(v.plain, "wire") && strings.Contains(f, "[2]") {
				continue
			}
			said := fmt.Sprintf(f[:strings.IndexByte(f, '.')+1]+"%.0[1]s%.0[2]s%.0[3]s%.0[4]s", v.plain, v.ing, v.past, v.tail)
			said = strings.ToUpper(said[:1]) + said[1:]
			want := strings.ToUpper(v.plain[:1]) + v.plain[1:] + " the sleeve" + v.tail + "."
			if got := stepsOf(t, []string{"Undo the two cover bolts.", "Lift the cover off.", said}, 2); len(got) != 1 || got[0] != want {
				t.Errorf("%q: steps %q, want %q", said, got, want)
			}
		}
	}
}

// TestFormsOfWhichWay: which way round a thing goes belongs to its step.
func TestFormsOfWhichWay(t *testing.T) {
	for said, want := range map[string]string{
		"Seal in, lip facing out.":                     "Fit the seal, lip facing out.",
		"Washer on, chamfer towards the box.":          "Fit the washer, chamfer towards the box.",
		"So the spacer's on, step to the bearing.":     "Fit the spacer, step to the bearing.",
		"Spring in with the open end down.":            "Fit the spring with the open end down.",
		"Push the circlip in with the sharp edge out.": "Push the circlip in with the sharp edge out.",
	} {
		if got := stepsOf(t, []string{"Undo the two cover bolts.", "Lift the cover off.", said}, 2); len(got) != 1 || got[0] != want {
			t.Errorf("%q: steps %q, want %q", said, got, want)
		}
	}
}

// TestFormsOfNoStep: nothing that a mechanic could pin up is done here.
func TestFormsOfNoStep(t *testing.T) {
	for _, said := range []string{
		"Lean on the long bar.", "Try the fifteen on.", "Try the fifteen on that.", "Put the screwdriver on.", "Move your feet.",
		"The lever goes back by itself.", "Sit on the floor.",
		"Go over the screws with the wrench again in a couple of hundred miles.",
	} {
		if got := stepsOf(t, []string{"Undo the two cover bolts.", "Lift the cover off.", said}, 2); len(got) != 0 {
			t.Errorf("%q: steps %q, want none", said, got)
		}
	}
}

// TestFormsOfToolLists: what is laid out is a tool, though a machine may have a part of that
// name, and nothing comes of it in the ledger.
func TestFormsOfToolLists(t *testing.T) {
	for name, said := range map[string]string{"mirror": "a mirror", "caliper": "a caliper", "cutter": "a cutter", "hose clamp": "a hose clamp", "milk crate": "a milk crate", "bit of oak": "a bit of oak", "strap": "a strap"} {
		for _, f := range []string{"What do you need? Two seventeens. %s, and a ten mil socket.", "You'll need a ratchet, a ten mil socket, %s and a screwdriver.", "Tools. A ten mil socket, %s, and a screwdriver."} {
			rec := Extract(talkOf(t, "[0:00] "+fmt.Sprintf(f, said)+"\n[0:20] Right, take the drain plug out.\n[0:40] Put the drain plug back in.\n"), lexicon.Default(), Job{})
			if !slices.ContainsFunc(rec.Tools, func(x Tool) bool { return x.Name == name }) {
				t.Errorf(f+": no %s among the tools", said, name)
			}
			if len(rec.Ledger) != 1 {
				t.Errorf(f+": %d things in the ledger, want the plug", said, len(rec.Ledger))
			}
		}
	}
}

// TestFormsOfSizes: a size is heard however it is said of the bolts in hand.
func TestFormsOfSizes(t *testing.T) {
	for size, forms := range map[string][]string{
		"10 mm":  {"They're tens.", "Ten on these.", "That's a ten as well.", "I've got a ten on it.", "With the ten, both out."},
		"6 mm":   {"They're M8, six mil key.", "They are M8, allen of six.", "M8, brugola of six."},
		"1/2 in": {"They're half inch.", "Half inch on those."},
	} {
		for _, f := range forms {
			var b strings.Builder
			for i, s := range []string{"Two bolts on the caliper.", f, "Both out."} {
				fmt.Fprintf(&b, "[0:%02d] %s\n", i*12, s)
			}
			rec := Extract(talkOf(t, b.String()), lexicon.Default(), Job{})
			if !slices.ContainsFunc(rec.Sizes, func(s Size) bool { return s.Of == "caliper bolts" && slices.Contains(s.Candidates, size) }) {
				t.Errorf("%q: sizes %v, want %s of the caliper bolts", f, rec.Sizes, size)
			}
		}
	}
}

// asksOf tells whether, at the end of some talk with long silences in it, one of some kinds
// of question (any, where none is given) stands open about a thing.
func asksOf(t *testing.T, talk []string, name string, kinds ...string) bool {
	t.Helper()
	var b strings.Builder
	for i, s := range talk {
		fmt.Fprintf(&b, "[%d:%02d] %s\n", i*20/60, i*20%60, strings.ToUpper(s[:1])+s[1:])
	}
	for _, o := range Extract(talkOf(t, b.String()), lexicon.Default(), Job{}).Open {
		question, _, _ := strings.Cut(o.Question, "“")
		if (len(kinds) == 0 || slices.Contains(kinds, o.Kind)) && strings.Contains(strings.ToLower(o.About+" "+question), name) {
			return true
		}
	}
	return false
}

// works are things with what is left to do on them, by its verb, participle and gerund.
var works = []struct{ thing, verb, done, ing string }{
	{"chain", "adjust", "adjusted", "adjusting"}, {"brake", "bleed", "bled", "bleeding"}, {"belt", "tension", "tensioned", "tensioning"}, {"valve", "set", "set", "setting"},
}

// leftToDo are the ways of saying that, whoever will do it and when.
var leftToDo = []string{
	"The %[1]s's still to %[2]s.", "The %[1]s still needs %[4]s.", "I still need to %[2]s the %[1]s.", "I haven't %[3]s the %[1]s yet.", "I'll come back and %[2]s the %[1]s.", "I'll come back to the %[1]s.",
	"All that's left is to %[2]s the %[1]s.", "The only thing left is the %[1]s.", "That just leaves the %[1]s.", "That leaves the %[1]s to %[2]s.", "So it's just the %[1]s left.", "Just the %[1]s left to %[2]s.", "There's just the %[1]s to %[2]s.",
	"I'll do the %[1]s when the light's better.", "The %[1]s, I'll do that later.", "The %[1]s can wait.", "I've left the %[1]s for now.", "Still to do: the %[1]s.", "The %[1]s's not %[3]s yet.", "All done, just the %[1]s to go.", "Everything's done bar the %[1]s.",
	"That's it apart from the %[1]s.", "I forgot the %[1]s.", "Need to %[2]s the %[1]s before riding.", "%[1]s later.", "The %[1]s still has to be %[3]s.", "No time for the %[1]s today.", "Somebody needs to %[2]s the %[1]s.",
}

// anotherDay are ways that put it off beyond the recording.
var anotherDay = []string{
	"%[1]s tomorrow.", "The %[1]s next week.", "And the %[1]s is for tomorrow.", "The %[1]s's for another day.", "I'm leaving the %[1]s for tomorrow.", "The %[1]s gets %[3]s tomorrow.", "My mate's going to %[2]s the %[1]s tomorrow.", "She'll %[2]s the %[1]s tonight.", "Tomorrow's job is the %[1]s.", "That's tomorrow's job, the %[1]s.",
}

// TestFormsOfLeftToDo: what is left is asked after, at the end of the talk and where other
// work follows, and no more once it is done.
func TestFormsOfLeftToDo(t *testing.T) {
	before := []string{"Undo the two cover screws and lift the cover off.", "Clean the inside out with a rag.", "Cover back on. Two screws back in, tight."}
	after := []string{"Now the guard.", "Four screws hold the guard on.", "In they go, tight.", "Okay."}
	for _, w := range works {
		say := func(form string) string { return fmt.Sprintf(form, w.thing, w.verb, w.done, w.ing) }
		for _, f := range append(leftToDo, anotherDay...) {
			for _, rest := range [][]string{{"Okay."}, after} {
				if talk := slices.Concat(before, []string{say(f)}, rest); !asksOf(t, talk, w.thing) {
					t.Errorf("%s: nothing asked", strings.Join(talk, " "))
				}
			}
		}
		for _, f := range leftToDo {
			for _, did := range []string{"Right, %[2]s the %[1]s.", "I've %[3]s the %[1]s.", "That's the %[1]s done.", "And the %[1]s is %[3]s now.", "Now I'm going to %[2]s the %[1]s."} {
				if talk := slices.Concat(before, []string{say(f), "Sweep the floor.", say(did)}, after); asksOf(t, talk, w.thing, Unfinished) {
					t.Errorf("%s: asked though it is done", strings.Join(talk, " "))
				}
			}
		}
	}
}

// TestFormsOfLooseEnds has the ways of leaving open what is no work: a value, a doubt, a
// figure that cannot be, a piece that is short.
func TestFormsOfLooseEnds(t *testing.T) {
	for _, tt := range []struct {
		before []string
		things []string
		forms  []string
		kinds  []string
	}{
		{[]string{"Now the %[1]s."}, []string{"axle nut", "head bolts", "drain plug"}, []string{
			"I'll look up the torque for the %[1]s tonight.", "Whatever it says in the manual for the %[1]s.", "Torque on the %[1]s, look it up.", "He'll tell me the torque on the %[1]s tomorrow.", "I want to know what the %[1]s should be.", "That's supposed to be some number.", "I forget what the %[1]s are.",
		}, []string{LookUp}},
		{[]string{"Now the %[1]s."}, []string{"axle nut", "head bolts", "drain plug"}, []string{
			"The sheet's got 90 for that and it's an M6, that can't be right.", "The %[1]s at 90 seems far too much.", "290, which seems an awful lot.", "Somebody's written 90 for the %[1]s, that must be wrong.", "90 for those, that's way too much.",
		}, []string{Suspect}},
		{[]string{"Now the %[1]s."}, []string{"axle nut", "head bolts", "drain plug"}, []string{
			"The sheet says 70 and the page says 60, I'm going to 60.", "It's 70 in one book and 60 in the other for the %[1]s.", "70 in the manual, 60 on the website.", "They say 70 newton metres, I've always done 60.", "Two different numbers for the %[1]s, 70 and 60.",
		}, []string{Conflict}},
		{[]string{"%[1]s in, 40 newton metres."}, []string{"axle nut", "head bolts", "drain plug"}, []string{
			"I want to go over those again in a couple of hundred k's.", "Check the %[1]s again in fifty miles.", "After the first run I'll check the %[1]s again.",
		}, []string{Unfinished}},
		{[]string{"Take the four %[1]ss out and lift the panel off.", "Panel back on."}, []string{"screw", "bolt", "clip"}, []string{
			"I'm one %[1]s short.", "There's a %[1]s missing.", "One %[1]s's missing out of that, I'll have to find one.", "Where's the other %[1]s? Never mind, it'll sit there like that for today.", "No %[1]s in that corner.", "I dropped one %[1]s and it's gone.",
		}, []string{NotRefitted}},
		{[]string{"Take the %[1]s out.", "%[1]s back in."}, []string{"washer", "spring", "shim"}, []string{
			"I hope the %[1]s's the right way round.", "I think that %[1]s was on the other side.", "The %[1]s could go either way.", "I don't remember if the %[1]s was above or below.",
		}, []string{Unsure}},
		{[]string{"Take the seat off.", "Guard off, two screws."}, []string{"seat", "guard"}, []string{
			"It can run without the %[1]s for today.", "You'll have to put the %[1]s back yourself.", "The %[1]s's got to go back on, and I'll do that once I've been around the block.",
		}, []string{NotRefitted, Unfinished}},
	} {
		for _, thing := range tt.things {
			for _, f := range tt.forms {
				talk := []string{"Undo the two cover screws and lift the cover off."}
				for _, s := range append(tt.before, f) {
					if strings.Contains(s, "%") {
						s = fmt.Sprintf(s, thing)
					}
					talk = append(talk, s)
				}
				talk = append(talk, "Give it all a wipe.", "Okay.")
				name := thing[strings.LastIndexByte(thing, ' ')+1:]
				if !strings.Contains(f, "%") {
					name = "" // what is meant was named before, and may be only a perhaps
				}
				if !asksOf(t, talk, name, tt.kinds...) {
					t.Errorf("%s: no question of kind %v", strings.Join(talk, " "), tt.kinds)
				}
			}
		}
	}
}

// TestFormsOfIt: what "it" is, where no part is meant by it: the puller, or the machine.
func TestFormsOfIt(t *testing.T) {
	for said, want := range map[string]string{
		"I put the puller on, wind it down.": "Wind the puller down.",
		"Filter out. Tip it on its back.":    "Tip the machine on its back.",
		"Wheel on. Let it down.":             "Let the machine down.",
	} {
		if got := stepsOf(t, []string{"Undo the two cover bolts.", "Lift the cover off.", said}, 2); len(got) == 0 || got[len(got)-1] != want {
			t.Errorf("%q: steps %q, want %q at the end", said, got, want)
		}
	}
}

// TestMustStill has what is left to do in one clause with "still": a clause cut there loses it.
func TestMustStill(t *testing.T) {
	for _, said := range []string{"I must still grease the shaft before I ride it.", "I'll still grease the shaft before I ride it.", "We must still grease the shaft before anybody rides it."} {
		rec := record(t, "Undo the cover bolt.", "Clean the shaft with a rag.", said)
		if !slices.ContainsFunc(rec.Open, func(o Open) bool { return o.Kind == Unfinished && strings.Contains(o.Question, "shaft") }) {
			t.Errorf("%s leaves no work on the shaft open", said)
		}
	}
}
