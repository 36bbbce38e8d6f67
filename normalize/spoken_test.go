package normalize

import (
	"math/big"
	"strings"
	"testing"
)

// TestSpokenQuantities: ways of saying things that the outside lists do not
// have. How they are said is common practice, no source; the values are by
// definition. "" means that nothing is to be found.
func TestSpokenQuantities(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		// Corrections: only the last stands.
		{"forty, no, sorry, fifty five newton metres", "55 N.m"},
		{"it's forty newton metres no sorry forty five newton metres", "45 N.m"},
		{"torque them to twenty, I mean twenty five foot pounds", "25 lbf.ft"},
		{"30 Nm, correction, 25 Nm", "25 N.m"},
		{"thirty newton metres, no, make that twenty five", "25 N.m"},
		{"thirty or rather twenty five newton metres", "25 N.m"},
		{"eight mil no ten mil socket", "10 mm"},
		{"M8, no, M10 bolts", "M10"},
		{"twenty newton metres, no washers on these two", "20 N.m"},
		// Ranges and candidates.
		{"fourteen to sixteen foot pounds", "14-16 lbf.ft"},
		{"11, 12 newton metres", "11-12 N.m"},
		{"eleven twelve newton metres", "11-12 N.m"},
		{"twenty twenty five newton metres", "20-25 N.m"},
		{"between 20 Nm and 25 Nm", "20-25 N.m"},
		{"twelve or thirteen mil", "12 mm | 13 mm"},
		{"that's a twelve mil or maybe a thirteen", "12 mm | 13 mm"},
		{"an M6 or an M8", "M6 | M8"},
		{"step 3, 25 Nm", "25 N.m"},
		{"5Nm-7Nm", "5-7 N.m"}, {"5±1 Nm", "4-6 N.m"}, {"twenty newton meters plus or minus two", "18-22 N.m"}, {"thirty-ish newton metres", "30 N.m"},
		{"not twenty, twenty five newton metres", "25 N.m"},
		{"stage one forty newton metres stage two eighty newton metres stage three ninety degrees", "40 N.m; 80 N.m; 90 deg"},
		{"all five twenty-three foot pounds", "23 lbf.ft"},
		{"those two twenty two newton metres", "22 N.m"},
		{"the other three forty newton metres", "40 N.m"},
		{"five twenty newton metres", "520 N.m"},
		{"eighteen, nineteen mil", "18 mm | 19 mm"}, {"a couple of hundred newton metres", ""}, {"a 450 cc engine", ""},
		// Said short.
		{"two thirty newton metres", "230 N.m"}, {"one oh five foot pounds", "105 lbf.ft"}, {"one forty seven millimeters down", "147 mm"},
		{"you turn on the outer one sixteen newton metres", "16 N.m"}, {"that one forty five newton metres", "45 N.m"}, {"no one twenty newton metres", "120 N.m"}, {"forty-seven. Newton metres, that is", "47 N.m"},
		{"two ten millimeter bolts", "10 mm"}, {"two 14 mm bolts", "14 mm"}, {"nought point four newton metres", "0.4 N.m"},
		// Fractions, heard well and badly.
		{"three ate inch drive", "3/8 in"}, {"three eight inch drive", "3/8 in"}, {"the three ace ratchet", "3/8 in"}, {"an inch and a quarter socket", "1-1/4 in"},
		{"inch and a half pipe", "1 1/2 in"}, {"a turn and a half", "1.5 turn"}, {"thirteen thirty seconds socket", "13/32 in"}, {"1.2 inch breaker bar", "1.2 in"},
		{"3 8 inch drive", "3/8 in"}, {"M8 1.25 thread", "M8x1.25"}, {"a 25 torx bit", "T25"}, {"45 ft.-lbs.", "45 lbf.ft"}, {"45 new ton meters", "45 N.m"},
		{"3 / 8 inch socket", "3/8 in"}, {"1-1/4\" socket", "1-1/4 in"}, {"½ inch drive", "1/2 in"}, {"a third of a turn", "1/3 turn"},
		// Torques in other units and in context.
		{"six kilogram metres", "6 kgf.m"}, {"two comma five kilopond metres", "2.5 kgf.m"}, {"20 ozf·in", "20 ozf.in"}, {"90 kgf centimetre", "90 kgf.cm"},
		{"torque it to eighty pounds", "80 lbf.ft"}, {"tighten the nut to six kilos", "6 kgf.m"}, {"the box weighs six kilos", "6 kg"}, {"about ninety newtons, then torque the next", "90 N.m"},
		{"the one on the gearbox takes sixty eight newts", "68 N.m"}, {"the supplement for the estate reads fifty five newton", "55 N.m"}, {"seventy kilo centimetre on the dial", "70 kgf.cm"},
		{"the spring pulls with forty newtons", ""}, {"spoke tension is a thousand newtons", ""},
		{"twenty newton metres plus ninety degrees", "20 N.m; 90 deg"}, {"ten newton metres and a quarter turn", "10 N.m; 0.25 turn"},
		{"twenty two foot pounds which is thirty newton meters", "22 lbf.ft; 30 N.m"}, {"22ft-lb (30 N·m)", "22 lbf.ft; 30 N.m"},
		// Threads.
		{"an M ten by one point two five", "M10x1.25"}, {"M twelve by one seventy five", "M12x1.75"}, {"m8x1.25x30", "M8x1.25 x 30 mm"}, {"six by thirty bolts", "M6 x 30 mm"},
		{"the thread is ten by one two five", "M10x1.25"}, {"quarter twenty", "1/4-20"}, {"five sixteenths eighteen", "5/16-18"}, {"a ten thirty two screw", "#10-32"}, {"#10-32", "#10-32"},
		{"M16 by one and a half", "M16x1.5"}, {"M8 by 30 or 35", "M8 x 30 mm | M8 x 35 mm"}, {"a three quarter AF", "3/4 in"}, {"half inch AF", "1/2 in"}, {"45 newtown meters", "45 N.m"},
		{"an M10 by 60, or is it 70", "M10 x 60 mm | M10 x 70 mm"}, {"M5 by sixteen, could be eighteen mil", "M5 x 16 mm | M5 x 18 mm"}, {"M8 by 40, or four of the M6", "M8 x 40 mm; M6"},
		{"by an inch and a half, or maybe two inches", "1 1/2 in | 2 in"}, {"a turn and a half, or two", "1.5-2 turn"},
		{"half inch Whitworth", "1/2 in"}, {"quarter Whitworth", "1/4 in"}, {"a three eighths Whitworth spanner", "3/8 in"}, {"seven sixteenth spanner", "7/16 in"}, {"it's 7/16 UNF", "7/16 in"},
		{"eight of 'em two a side", ""}, {"line 'em six at a time and the bolts after", ""}, {"an em ten bolt", "M10"}, {"em twelves and em eight bolts", "M8"},
		// Drivers.
		{"T twenty five", "T25"}, {"an E10 socket", "E10"}, {"it's a T28 at the front", "T28"}, {"number two pozi", "PZ2"}, {"JIS number two", "JIS2"}, {"#2 Phillips", "PH2"},
		// Fluids, sprockets, chains, tyres.
		{"ten mil of fork oil", "10 mL"}, {"the drain plug is a seventeen mil and the oil is hot", "17 mm"}, {"fifteen tooth sprocket", "15 teeth"}, {"a 520 chain", "520"},
		{"thirty two pounds in the front tyre", "32 psi"}, {"four bolts, ten mil", "10 mm"}, {"minus five degrees Celsius", "-5 degC"},
		// What only looks like one.
		{"the engine makes ninety newton metres at six thousand rpm", ""}, {"it's got 250 newton metres of torque", ""}, {"it cost me twenty pounds", ""},
		{"a 2015 model with 30,000 miles on the clock", ""}, {"at 12:35 in the video", ""}, {"two thousand subscribers", ""}, {"25 dollars", ""}, {"$25", ""},
		{"there's a third bolt hiding", ""}, {"give it a second", ""}, {"at this point two of them", ""}, {"the M4 motorway", ""}, {"A4 paper", ""}, {"page 42", ""}, {"one in ten", ""},
		{"step three", ""}, {"fifty fifty", ""}, {"it's gone to three eighths in the waist", ""}, {"the second gear", ""}, {"24703L202", ""}, {"three point turn", ""},
	} {
		for _, text := range []string{c.text, strings.ToUpper(c.text) + "."} {
			var got []string
			for _, q := range Quantities(text) {
				got = append(got, q.Canonical)
			}
			if g := strings.Join(got, "; "); g != c.want {
				t.Errorf("%q: got %q, want %q", text, g, c.want)
			}
		}
	}
}

func TestSpokenNumbers(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"a twelve and a ten", "12 10"}, {"a 13, might be a 12", "12..13?"}, {"twelve or thirteen", "12..13?"}, {"thirty to thirty five", "30..35"}, {"fifteen sixteenths", "15/16"},
		{"thirty-eight's about twenty-eight", "38 28h"}, {"thirty eight's right", "38"}, {"a hundred and ten's what they get", "110"}, {"twenty-five’s enough", "25"}, {"a seventeen and one's gone", "17"},
		{"forty, no, sorry, fifty five", "55"}, {"about twenty five", "25h"}, {"one oh five", "105"}, {"nineteen eighty four", "1984"}, {"a dozen", "12"},
		{"this one and that one and the left one", ""}, {"one of the two", "2"}, {"another one", ""}, {"one bolt", "1"}, {"the first bolt and the second nut", ""}, {"a second", ""},
		{"M8 and T25 and PH2", ""}, {"an em eight", ""}, {"half of them", ""}, {"four point five", "9/2"}, {"at this point two bolts", "2"}, {"3:45", ""}, {"twenty percent", "20"},
	} {
		var got []string
		for _, n := range Numbers(c.text) {
			s := n.Low.RatString()
			if n.High.Cmp(n.Low) != 0 {
				s += ".." + n.High.RatString()
			}
			if n.Alt {
				s += "?"
			} else if n.Hedged {
				s += "h"
			}
			got = append(got, s)
		}
		if g := strings.Join(got, " "); g != c.want {
			t.Errorf("%q: got %q, want %q", c.text, g, c.want)
		}
	}
}

// TestRounded: no more figures than were said.
func TestRounded(t *testing.T) {
	for _, c := range []struct{ said, from, to, want string }{
		{"22", "lbf.ft", "N.m", "30 N.m"}, {"10", "lbf.ft", "N.m", "14 N.m"}, {"400", "lbf.ft", "N.m", "542 N.m"}, {"22.5", "lbf.in", "N.m", "2.54 N.m"},
		{"50", "N.m", "lbf.ft", "37 lbf.ft"}, {"4.5", "N.m", "lbf.in", "40 lbf.in"}, {"45", "N.m", "N.m", "45 N.m"}, {"1/2", "in", "mm", "13 mm"}, {"1", "m", "N.m", ""},
	} {
		v, _ := new(big.Rat).SetString(c.said)
		if got := Rounded(v, c.from, c.to); got != c.want {
			t.Errorf("%s %s: got %q, want %q", c.said, c.from, got, c.want)
		}
	}
	if got := RoundedRange(big.NewRat(70, 1), big.NewRat(75, 1), "lbf.in", "N.m"); got != "7.9-8.5 N.m" {
		t.Errorf("range: %q", got)
	}
}

// TestLexiconFaults: a fault in the word or unit file is told with its line.
func TestLexiconFaults(t *testing.T) {
	for _, c := range []struct{ words, want string }{
		{"unit: one=1\nnoclass: x", "words.txt:2"}, {"unit one", "words.txt:1"}, {"unit: one=x", "words.txt:1"}, {"unit: ten=10\nteen: ten=10", "words.txt:2"},
	} {
		l := &lexicon{}
		if err := l.readWords(c.words); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, want %s", c.words, err, c.want)
		}
	}
	l := &lexicon{}
	if err := l.readUnits("phrase,unit,kind,flags,source\nmm,mm,length,odd,SI\n"); err == nil || !strings.Contains(err.Error(), "units.csv:2") {
		t.Errorf("%v", err)
	}
}

// TestTraitNames: the names of data/words.txt stand in the order of the bits.
func TestTraitNames(t *testing.T) {
	if got := trait(1) << (len(traitNames) - 1); got != tCounted || traitNames[len(traitNames)-1] != "counted" {
		t.Errorf("%d names for the bits up to %b", len(traitNames), tCounted)
	}
	for name, bit := range map[string]trait{"misheard": tMisheard, "tighten": tTighten, "vague": tVague, "jis": tJIS, "opener": tOpener} {
		if traitNames[indexOf(bit)] != name {
			t.Errorf("bit of %s is named %s", name, traitNames[indexOf(bit)])
		}
	}
}

func indexOf(x trait) int {
	n := 0
	for ; x > 1; x >>= 1 {
		n++
	}
	return n
}
