package extract

import (
	"slices"
	"strings"
	"testing"
)

// TestWarningsAreWhole proves that a warning is told as a whole: with its
// condition and what comes of it, once, and not where nobody is warned.
func TestWarningsAreWhole(t *testing.T) {
	for _, c := range []struct {
		name string
		talk []string
		want []string
	}{
		{"condition and consequence", []string{"Lift the belt off the pulley.", "If you put it on the wrong way round, you'll strip the teeth."},
			[]string{"Lift the belt off the pulley. If you put it on the wrong way round, you'll strip the teeth."}}, // it is the belt
		{"consequence in a sentence of its own", []string{"Take the cover off.", "Do not run the saw with that cover off. It'll spit the chain at you."},
			[]string{"Do not run the saw with that cover off. It'll spit the chain at you."}},
		{"the end of the sentence", []string{"You do not open that cap when the engine's hot, it'll come up your arm."},
			[]string{"You do not open that cap when the engine's hot, it'll come up your arm."}},
		{"there is", []string{"Pull the bolt out.", "There's a spring behind it, so don't lose that."},
			[]string{"There's a spring behind it, so don't lose that."}},
		{"right side", []string{"Tighten the left screw.", "Right side screw has a left thread, so don't force it."},
			[]string{"Right side screw has a left thread, so don't force it."}},
		{"no warning", []string{"Undo the sump plug.", "The oil runs away from the clutch side.", "Like the video or don't, I'm not your dad.", "There's too much sugar in this tea."}, nil},
		{"all of the sentence before", []string{"Drain the oil.", "And a block under the engine so the wheel is in the air. Rock it. Do not get under that."},
			[]string{"A block under the engine so the wheel is in the air. Rock it. Do not get under that."}},
		{"no more than the warning", []string{"New seal, lip goes to the water side, bit of grease on it, and I'm easing it down with a bit of pipe."},
			[]string{"New seal, lip goes to the water side, bit of grease on it."}},
		{"what nobody can", []string{"The gearbox is dry. Don't turn it till it's filled. Isolator's off, so nobody can."},
			[]string{"The gearbox is dry. Don't turn it till it's filled. Isolator's off, so nobody can."}},
		{"what comes next", []string{"Undo the two cover screws.", "Careful with the next bit. There's a spring in the drum and it'll have your eye out."},
			[]string{"Careful with the next bit. There's a spring in the drum and it'll have your eye out."}},
		{"said twice", []string{"Keep the bleed screw shut, otherwise air gets in and the lever sticks. A very dangerous thing."},
			[]string{"Keep the bleed screw shut, otherwise air gets in and the lever sticks. A very dangerous thing."}},
	} {
		var got []string
		for _, x := range record(t, c.talk...).Cautions {
			got = append(got, x.Text)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
}

// TestNamesArePlain proves that a thing is called by the trade's plain word.
func TestNamesArePlain(t *testing.T) {
	for _, c := range []struct{ talk, want string }{
		{"I took off the two-piece crankset.", "crankset"},
		{"I removed the three speed hub.", "hub"},
		{"I removed the two worn bushes.", "bushes"},
		{"I removed the rusty old seized drain plug.", "drain plug"},
		{"I took the single chainring bolt out.", "chainring bolt"},
		{"The bar end weights. There's one screw in each, and that screw comes out.", "bar end weight screw"},
		{"Right side grip comes off.", "grip"},
		{"I'll put it in the description hose bracket comes off.", "hose bracket"},
	} {
		var got []string
		for _, e := range record(t, c.talk).Ledger {
			got = append(got, e.Item)
		}
		if !slices.Contains(got, c.want) {
			t.Errorf("%q: ledger has %q, want %q", c.talk, got, c.want)
		}
	}
	var tools []string
	for _, x := range record(t, "what you need is a soft hammer trolley jack and a g clamp flat blade screwdriver", "Undo the drain plug. The drain plug comes out.").Tools {
		tools = append(tools, x.Name)
	}
	for _, want := range []string{"soft hammer", "trolley jack", "g clamp", "flat blade screwdriver"} {
		if !slices.Contains(tools, want) {
			t.Errorf("tools %q lack %q", tools, want)
		}
	}
}

// TestUsualChecksFitTheJob proves that a usual check comes only from what was
// worked on. Common practice, no source.
func TestUsualChecksFitTheJob(t *testing.T) {
	has := func(rec *Record, words string) bool {
		return slices.ContainsFunc(rec.Usual, func(u Usual) bool { return strings.Contains(u.Text, words) })
	}
	for _, c := range []struct {
		talk  string
		words string
		want  bool
	}{
		{"Undo the caliper bracket bolts. The caliper comes off.", "Pump the brake", true},
		{"The chain brake comes off. Undo the two nuts of the cover.", "Pump the brake", false},
		{"Prise it out with a flat blade screwdriver. The seal comes out.", "what turns or cuts", false},
		{"Undo the blade nut. The blade comes off.", "what turns or cuts", true},
		{"Undo the caliper bolts. Fit the old brake pads again.", "Bed in", false},
		{"Undo the caliper bolts. Fit the new brake pads.", "Bed in", true},
		{"The little chain comes off the guard. Undo the bolt of the yoke.", "chain slack", false},
		{"The chain comes off. Undo the bolts of the sprocket.", "chain slack", true},
		{"Undo the hose. Drain the hydraulic oil. Take the bucket cylinder off.", "goes through skin", true},
		{"A drop of oil on the axle. Tighten the axle nut.", "Look for leaks", false},
	} {
		if got := has(record(t, strings.SplitAfter(c.talk, ". ")...), c.words); got != c.want {
			t.Errorf("%q: check %q there: %v, want %v", c.talk, c.words, got, c.want)
		}
	}
}

// TestLedgerDetails proves that what belongs to a thing is kept where it was
// said of that thing, and stays empty where it was not.
func TestLedgerDetails(t *testing.T) {
	entry := func(item string, talk ...string) Entry {
		t.Helper()
		var have []string
		for _, e := range record(t, talk...).Ledger {
			if e.Item == item {
				return e
			}
			have = append(have, e.Item)
		}
		t.Fatalf("%q: no entry %q among %q", talk, item, have)
		return Entry{}
	}
	for _, c := range []struct {
		what, item, want string
		get              func(Entry) string
		talk             []string
	}{
		{"put down", "cover screws", "jam lid", func(e Entry) string { return e.StoredAt }, []string{"The cover screws come out.", "Those go in a jam lid."}},
		{"put down", "drain plug", "my pocket", func(e Entry) string { return e.StoredAt }, []string{"I took the drain plug out and it's in my pocket."}},
		{"a bin is no store", "drive belt", "", func(e Entry) string { return e.StoredAt }, []string{"The drive belt comes off.", "The old one's in the bin."}},
		{"another thing's store", "drive belt", "", func(e Entry) string { return e.StoredAt }, []string{"The drive belt comes off.", "The cover is over there on the bench."}},
		{"way round", "spacer", "step to the bearing", func(e Entry) string { return e.Orientation }, []string{"The spacer comes off.", "Spacer goes back on, step to the bearing."}},
		{"way round, next sentence", "washer", "hollow side to the engine", func(e Entry) string { return e.Orientation }, []string{"The washer goes on. Hollow side to the engine."}},
		{"another thing's way round", "bar", "", func(e Entry) string { return e.Orientation }, []string{"The bar goes in, the clamps with the dot to the front."}},
		{"where, not which way", "spring", "", func(e Entry) string { return e.Orientation }, []string{"The spring goes in and the lip goes on the left."}},
		{"which are long", "cover bolts", "long ones at the top, short ones at the bottom", func(e Entry) string { return e.Position }, []string{"The cover bolts come out.", "Long ones at the top, short ones at the bottom."}},
		{"only a warning", "cover bolts", "", func(e Entry) string { return e.Position }, []string{"The cover bolts come out.", "If you put a long one in front, you'll crack it."}},
		{"no locker", "rotor bolts", "no", func(e Entry) string { return e.Locker }, []string{"The rotor bolts go in.", "There is no thread locker on these."}},
		{"locker", "rotor bolts", "yes", func(e Entry) string { return e.Locker }, []string{"A drop of thread locker on the rotor bolts. The rotor bolts go in."}},
		{"waits", "shackle bolt", "the weight is on it", func(e Entry) string { return e.WaitsOn }, []string{"The shackle bolt goes in, finger tight, until the weight is on it."}},
		{"where the name says it", "front clamp bolts", "", func(e Entry) string { return e.Place_ }, []string{"Undo the front clamp bolts."}},
		{"not said", "cover", inferences["implied by its fastener"], func(e Entry) string { return e.Inferred }, []string{"The cover comes off.", "Clean the face of it.", "Cover bolts in, and tighten the cover bolts."}},
		{"said", "cover", "", func(e Entry) string { return e.Inferred }, []string{"The cover comes off.", "Clean the face of it.", "The cover goes back on. Tighten the cover bolts."}},
	} {
		if got := c.get(entry(c.item, c.talk...)); got != c.want {
			t.Errorf("%s, %s of %q: got %q, want %q", c.what, c.item, c.talk, got, c.want)
		}
	}
}

func toolNames(rec *Record) []string {
	var out []string
	for _, x := range rec.Tools {
		out = append(out, strings.TrimSpace(x.Size+" "+x.Name))
	}
	return out
}

// TestToolsOnce proves that a tool is told once by its fullest name, and that
// what is only likened, or not needed after all, is no tool.
func TestToolsOnce(t *testing.T) {
	for _, c := range []struct {
		talk      []string
		has, hasn []string
	}{
		{[]string{"Undo the drain plug with a 14 mil ring spanner.", "Now the other plug, same 14 mil spanner."}, []string{"14 mm ring spanner"}, []string{"14 mm spanner"}},
		{[]string{"Undo the axle nut. It clicks like a bag of spoons."}, nil, []string{"spoon"}},
		{[]string{"Undo the axle nut. I saw that the hose saws into the frame. The cutters of the chain look forward."}, nil, []string{"saw", "cutters"}},
		{[]string{"Undo the hose clip. Snip the cable with the side cutters."}, []string{"side cutters"}, nil},
		{[]string{"Pull the drum off. If you need a puller, something else is wrong."}, nil, []string{"puller"}},
		{[]string{"What you need is a cross head screwdriver, a hammer and a pick.", "Undo the lid screws, cross head, with the cross head."}, []string{"cross head screwdriver"}, []string{"cross head"}},
		{[]string{"Undo the axle nut. It makes 45 newton, well, meters of torque."}, nil, []string{"meter"}},
		{[]string{"Undo the shear bolt. Hacksaw the head off it. File the edge of the bracket."}, []string{"hacksaw", "file"}, nil},
		{[]string{"Undo the shear bolt. I'll file the edge of the bracket when the new one comes."}, nil, []string{"file"}},
		{[]string{"Undo the deck bolts. Blade off, wash the deck. Blade back on."}, nil, []string{"blade"}},
		{[]string{"Undo the cup with the bottom bracket tool."}, []string{"bottom bracket tool"}, nil},
		{[]string{"Undo the cap. Line it up with the punch mark. The square taper is clean."}, nil, []string{"punch", "square"}},
		{[]string{"Undo the crank bolt. And now the puller so you thread it in."}, []string{"puller"}, nil},
		{[]string{"The bike's in the stand. Undo the seat bolt."}, []string{"stand"}, nil},
		{[]string{"Undo the clutch. I've seen it done with a hammer."}, nil, []string{"hammer"}},
	} {
		got := toolNames(record(t, c.talk...))
		wantTools(t, strings.Join(c.talk, " "), got, c.has, c.hasn)
	}
	// a listed socket is used where a fastener of its size is undone
	rec := record(t, "What you need is a 13 mil socket, a 17 mil socket, a torque wrench and a hammer.", "Right, off we go.", "Some talk of the weather, nothing else.",
		"The weather again, for a while.", "Undo the two bolts of the cover, 13 mil heads.", "The cover comes off.", "Tighten the cover bolts to 20 newton metres.")
	for _, n := range rec.Notes {
		if n.Kind == "tool-not-used" && (strings.Contains(n.Text, "13 mm") || strings.Contains(n.Text, "torque wrench")) {
			t.Errorf("said not to be used: %q", n.Text)
		}
	}
}

// wantTools tells of tools that a talk should give and does not, and the other way round.
func wantTools(t *testing.T, talk string, got, has, hasn []string) {
	t.Helper()
	for _, w := range has {
		if !slices.Contains(got, w) {
			t.Errorf("%q: tools %q lack %q", talk, got, w)
		}
	}
	for _, w := range hasn {
		if slices.Contains(got, w) {
			t.Errorf("%q: tools %q have %q", talk, got, w)
		}
	}
}

// TestPartsAndStuff proves what counts as new, as a stand-in and as used up.
func TestPartsAndStuff(t *testing.T) {
	for _, c := range []struct {
		talk string
		want []string
	}{
		{"The ring of the bowl has swollen. I have a new one here.", []string{"new ring", "discarded ring"}},
		{"Pull the roller out of the bracket. The track is dirty. In with the new one.", []string{"new roller"}},
		{"Pull the pump off the engine. The clip's one of them spring ones. It's snapped, so that's in the bin.", []string{"discarded clip"}},
		{"The worm you pull from the shaft. We use it again.", []string{"reused worm"}},
		{"Undo the hinge. When it's worn it's for the bin anyway.", nil},
		{"Chain comes off over the sheave. It's gone three percent, so it's not going back.", []string{"discarded chain"}},
		{"I've lost the clip so I put a bent nail through there for now.", []string{"temporary bent nail"}},
		{"The bearing comes off. The shaft's a bit worn but it'll clean up. Set the new one in.", []string{"reused shaft", "new bearing"}},
		{"Undo the drive shaft, it's worn where the seal runs, so I've got a new one.", []string{"new drive shaft", "discarded drive shaft"}},
		{"The seat is the old one. Fit the seat.", []string{"reused seat"}},
		{"Undo the spring. The spring's broken, so that's bin.", []string{"discarded spring"}},
		{"Pull the fuel line off. It was like cheese so I've cut a new piece.", []string{"new fuel line"}},
		{"Undo the cover. The seal kit has the wiper and two rings.", []string{"new wiper", "new ring"}},
		{"Pull the split pin out, never again.", []string{"discarded split pin"}},
		{"Undo the check spring. The check spring is bent, but I've straightened it and it's going back on.", []string{"reused check spring"}},
		{"The old coil comes off. The replacement coil goes on.", []string{"new coil"}},
		{"Undo the filter. I've changed the filter.", []string{"new filter"}},
		{"Undo the cover. We're changing the pump.", nil},
		{"Undo the wiper. We don't need that any more.", []string{"discarded wiper"}},
		{"Take the bracket off. We're done with that bracket.", []string{"discarded bracket"}},
		{"Take the cover off. The cover cleaned up nice so back it goes.", []string{"reused cover"}},
		{"Undo the cap. I'll stick with the old cap.", []string{"reused cap"}},
		{"I marked the flange so it goes back the way it was. Undo the flange bolts.", nil},
		{"The pin snapped so there's a screwdriver through the hole for the moment.", []string{"temporary screwdriver"}},
		{"Out with the old filter and in with the new.", []string{"discarded filter", "new filter"}},
		{"Plug back in with the same washer.", []string{"reused washer"}},
		{"Same with the battery. Undo the seat.", nil},
		{"Undo the shoes. Swap the lever over to the new shoe.", []string{"new shoe", "reused lever"}},
		{"Undo the bolt. He's going back in.", []string{"reused bolt"}},
		{"Fit the radiator out of a breaker's yard.", []string{"new radiator"}},
		{"Unplug it. New gasket, new head, four screws.", []string{"new gasket", "new head"}},
		{"Undo the seal. The seal is torn, it gets a new one.", []string{"new seal", "discarded seal"}},
		{"The circlip comes off. A new one I don't have.", nil},
		{"The washer comes off. New washers would be nice.", nil},
		{"The cover goes on. Nip the cover bolts up for the moment.", nil},
		{"Undo the hose clip. There's a cable tie on it for now.", []string{"temporary cable tie"}},
		{"Undo the two bracket bolts. Bracket off. Same bolts back in the same holes.", []string{"reused bracket bolt"}},
		{"Spacer out. Keep that.", []string{"reused spacer"}},
		{"Spacer out. Keep that beside you.", nil},
		{"The float kit comes with a needle and two gaskets.", []string{"new needle", "new gasket"}},
		{"The hinge comes with me. Needle out.", nil},
		{"Undo the seals. They're both for the scrap man.", []string{"discarded seal"}},
		{"Drop the anode off. Snap ring off and a washer. Keep both of those.", []string{"reused snap ring", "reused washer"}},
		{"Undo the drum. The drum is scrap and so's the shoe.", []string{"discarded shoe", "discarded drum"}},
		{"Undo the hopper. The belt I'm keeping because it's nearly new.", []string{"reused belt"}},
		{"The flap comes off. The flap, give it a wash, it's grand.", []string{"reused flap"}},
		{"Undo the hub. That hole is toast.", nil},
		{"Undo the cap. Go back and forth with it.", nil},
		{"Undo the seal. You don't use the old seal twice.", nil},
		{"One of the pins has rotted through. So I've cut a nail down and bent it over, it's only till the shop opens.", []string{"temporary nail"}},
		{"Undo the cover. There's no split pin in the bag, so a bit of fencing wire through it till I get to town.", []string{"temporary fencing wire"}},
		{"The clip broke on the hose. Cable tie on there today.", []string{"temporary cable tie"}},
		{"Undo the bolts. They have crush washers. I had a go with the old gasket and it wept, so there's a fresh one on there now.", []string{"new gasket"}},
		{"Undo the gasket. We'll need a new one of them.", nil},
		{"Here's what I bought a belt, an idler and a spring. Undo the deck.", []string{"new belt", "new idler", "new spring"}},
		{"Undo the impeller. Don't throw the old one away.", []string{"reused impeller"}},
		{"I'm changing the tyre. Take the tyre off. Put the tyre on.", []string{"new tyre"}},
		{"The cover comes off. There's a service kit, diaphragm and valves. Undo the head.", []string{"new diaphragm", "new valve"}},
		{"Undo the lid. Same length, better cover.", nil},
		{"The bulb was gone. I've borrowed the one out of the fridge. Undo the lid.", []string{"temporary bulb"}},
		{"Take the filter out. Rinse the filter. The filter goes back in.", []string{"reused filter"}},
		{"Take the wheel off. The wheel goes back on the hub.", nil},
		{"The stud's thread is gone so I've put a longer bolt through with two washers until I get a proper stud.", []string{"temporary bolt"}},
		{"Undo the strut. These are empty, they'll go to the tip.", []string{"discarded strut"}},
		{"The valve at the end, that was just dirt. I'd bought one so it's gone on. Undo the impeller.", []string{"new valve"}},
		{"The pump's got four nuts and one connector. It comes out through the hole. New one goes in the same way.", []string{"new pump"}},
	} {
		var got []string
		for _, p := range record(t, strings.SplitAfter(c.talk, ". ")...).Parts {
			got = append(got, p.Disposition+" "+p.Name)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: parts %q, want %q", c.talk, got, c.want)
		}
	}
	for _, c := range []struct {
		talk string
		want []string
	}{
		{"Undo the drain plug. There's water in there. The paint is gone off the tank.", nil},
		{"Fit the hoses. It's a silicone kit. Put a paint mark on the nut.", nil},
		{"Fit the shaft. Red rubber grease on the lips.", []string{"red rubber grease on lips"}},
		{"The pivot bolt gets one drop of thread locker. Fit the pivot bolt.", []string{"thread locker on pivot bolt"}},
		{"Undo the drain plug. Drain the gear oil. The oil is milky.", []string{"gear oil on "}},
		{"Fit the nut with a little dab of any seas on the threads.", []string{"anti seize on threads"}},
	} {
		var got []string
		for _, k := range record(t, strings.SplitAfter(c.talk, ". ")...).Consumables {
			got = append(got, k.Name+" on "+k.UsedOn)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: used up %q, want %q", c.talk, got, c.want)
		}
	}
}

// TestTorqueTableHoldsValuesOnly proves that the table has each value once, for
// the fastener it was said of, and nothing that only sounds like one.
func TestTorqueTableHoldsValuesOnly(t *testing.T) {
	for _, c := range []struct {
		talk []string
		want []string
	}{
		{[]string{"Tighten the caliper bolts.", "Ninety. Ninety inch pounds, click."}, []string{"caliper bolts 90 lbf.in"}},
		{[]string{"Tighten the shackle bolts to forty five foot pounds.", "Forty five, that's both of them."}, []string{"shackle bolts 45 lbf.ft"}},
		{[]string{"Tighten the piston nut to four hundred foot pounds.", "I've got a multiplier, it's four to one."}, []string{"piston nut 400 lbf.ft"}},
		{[]string{"Tighten the blade nut to fifty foot pounds.", "My knees got about 2 foot pounds left in them."}, []string{"blade nut 50 lbf.ft"}},
		{[]string{"The preload cap screws into the end of the axle.", "It's half a newton metre."}, []string{"preload cap 0.5 N.m"}},
		{[]string{"The air box nuts, the book says nine newton metres.", "The paper on the wall says twelve newton metres, for the same engine."}, []string{"air box nuts 9 N.m", "air box nuts 12 N.m"}},
	} {
		var got []string
		for _, x := range record(t, c.talk...).Torques {
			got = append(got, x.Fastener+" "+figure(x.Said.Low)+" "+x.Said.Unit)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: torques %q, want %q", c.talk, got, c.want)
		}
	}
	// a plug that was only pulled may be the one in the wall
	for _, e := range record(t, "Pull the plug out of the wall.", "Undo the cover bolts.").Ledger {
		if e.Item == "plug" && e.Kind == "fastener" {
			t.Error("the plug in the wall is to be tightened")
		}
	}
	for _, e := range record(t, "Pull the spark plug out.", "Undo the cover bolts.").Ledger {
		if e.Item == "spark plug" && e.Kind != "fastener" {
			t.Error("the spark plug is not to be tightened")
		}
	}
	if rec := record(t, "The rope's cut, pull out the knot.", "New rope, tie the knot.", "Undo the cover bolts."); slices.ContainsFunc(rec.Ledger, func(e Entry) bool { return strings.Contains(e.Item, "nut") }) {
		t.Errorf("a knot in a rope is a nut: %+v", rec.Ledger)
	}
}

// TestTakenBackIsNoInstruction proves that a value the speaker took back stands
// neither in a step nor in the table.
func TestTakenBackIsNoInstruction(t *testing.T) {
	for _, talk := range [][]string{
		{"Tighten the pulley bolts to eight newton metres.", "Radiator on, both radiator bolts.", "And they're twelve, no, sorry, I'm reading the line below.", "Nine newton metres for the radiator bolts."},
		{"Tighten the radiator bolts to twelve newton metres, no, sorry, nine newton metres."},
		{"The radiator bolts go in.", "Twelve newton metres. No, hang on. Nine newton metres."},
	} {
		rec := record(t, talk...)
		for _, s := range rec.Steps {
			if strings.Contains(s.Text, "12 N·m") {
				t.Errorf("%q: step %q", talk, s.Text)
			}
		}
		nine := false
		for _, x := range rec.Torques {
			nine = nine || x.Said.Low == 9
			if x.Said.Low == 12 {
				t.Errorf("%q: torque 12 is in the table", talk)
			}
		}
		if !nine {
			t.Errorf("%q: torque 9 is not in the table", talk)
		}
	}
}

// TestOtherTimes proves that one moment is given once.
func TestOtherTimes(t *testing.T) {
	if got := otherTimes(623, []float64{631.2, 631, 631.4, 622.5, 640}); !slices.Equal(got, []float64{631, 640}) {
		t.Errorf("got %v", got)
	}
}
