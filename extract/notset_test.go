package extract

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

// toldValues gives each value of a talk with its fastener and whether it was set.
func toldValues(t *testing.T, talk string) string {
	rec := Extract(talkOf(t, string(spokenAt(talk))), lexicon.Default(), Job{})
	var out []string
	for _, v := range rec.Torques {
		s := v.Fastener + " " + strconv.FormatFloat(v.Said.Low, 'f', -1, 64) + " " + v.Applied
		if v.Hedged {
			s += "?"
		}
		out = append(out, s)
	}
	return strings.Join(out, "; ")
}

// What others say, what is only on by the fingers yet, and what was told the wrong way round.
func TestValuesNotSet(t *testing.T) {
	for _, c := range [][2]string{
		// what others do or say
		{"Rack back up, four bolts. Some people go to eighty newton metres on these. I won't.", "rack bolts 80 quoted"},
		{"Bar clamp on, two bolts. My uncle does his to twelve newton metres. I've never liked that, so they're at nine newton metres.", "bar clamp bolts 12 quoted; bar clamp bolts 9 done"},
		{"Hub on, washer, castle nut. The old boy who had it told me to do it up to a hundred foot pounds. So I gave it thirty.", "castle nut 100 quoted; castle nut 30 done"},
		{"Stem on, two bolts. Nine newton metres, according to the shop. I've done five.", "stem bolts 9 quoted"},
		{"Fan on, four nuts. I used to do these at fifteen newton metres and they'd strip. So eight now.", "fan nuts 15 quoted; fan nuts 8 done"},
		{"Flange bolts, all four back in. I did those at thirty five newton metres last time and they came loose. Forty five this time.", "flange bolts 35 quoted; flange bolts 45 done"},
		{"Filter cap on. Twenty five newton metres, same as last time.", "filter cap 25 done"},
		{"My mate says forty five newton metres on the pivot bolt, so forty five it is. Click.", "pivot bolt 45 done"},
		{"Somebody's holding the wheel for me while I torque these to ninety newton metres. Axle nut. Click.", "axle nut 90 done"},
		{"People always forget these. Bracket bolts, twenty newton metres. Click.", "bracket bolts 20 done"},
		{"Clamp on, two bolts, five newton metres. In the kit of the other club they use ninety kgf cm for the clamp, and that is nearly nine newton metres, but it is another machine.", "clamp bolts 5 done; clamp bolts 90 quoted; clamp bolts 9 quoted?"},
		// another machine's
		{"Keeper bolt in, run it up. At work, on the big loader, that bolt gets a hundred and twenty foot pounds. There's nothing in the book for this one.", "keeper bolt 120 quoted"},
		{"Bracket up, both bolts. It's eighty foot pounds, click, click. My old truck takes a hundred and thirty foot pounds on its bracket bolts.", "bracket bolts 80 done; bracket bolts 130 quoted"},
		{"Hub nuts on by hand. My mate's van gets a hundred and ten newton metres. These are fifty five newton metres. Click, click.", "hub nuts 110 quoted; hub nuts 55 done"},
		{"This is the little loader. Keeper bolt in. On the little loader it gets forty newton metres. Click. That's it.", "keeper bolt 40 done"},
		{"Clamp bolts in. I've wound the wrench down to twelve newton metres. Click, click.", "clamp bolts 12 done"},
		// a figure that cannot be so
		{"Lever pivot bolt, and I'm reading this off the card, ninety newton metres. The head bolts don't get that. It's no thicker than a pencil. You'd snap it. Somebody lost a dot.", "lever pivot bolt 90 quoted"},
		{"Hub bolt, ninety newton metres. Click. Nice. Lever on. Mind the small one, you'd snap it.", "hub bolt 90 done"},
		// not tight yet
		{"Tensioner on, pivot bolt is forty five newton metres. I've just pinched it up for now.", "pivot bolt 45 intended"},
		{"Lug nuts on, ninety foot pounds. They're just snug for the moment, it's on the jack.", "lug nuts 90 intended"},
		{"Hanger bolt, eight newton metres. It's in by a couple of threads, that's all.", "hanger bolt 8 intended"},
		{"Stub axle nut. Eighty newton metres. I've not done that one yet, need the other socket.", "stub axle nut 80 intended"},
		{"Castle nut, thirty newton metres while you turn it. Back it off. Then it's just finger tight.", "castle nut 30 done"},
		{"Caliper bolts, thirty newton metres. The bleed nipple is just nipped.", "caliper bolts 30 done"},
		{"Caliper bolts, thirty newton metres, click, click. The hose clip's still loose.", "caliper bolts 30 done"},
		// what its speaker does not know, and what was set of two
		{"Pivot nut is the same. What it takes I don't know by heart. Forty newton metres, fifty, something like that. It's up tight with the ring spanner.", "pivot nut 40 intended?; pivot nut 50 intended?"},
		{"The page says ten newton metres and I don't know who's right. I've done eight newton metres on the pivot nut.", " 10 quoted; pivot nut 8 done"},
		// one not to go to, and what is thought of one
		{"Hub nut gets twenty foot pounds. Don't leave that at forty foot pounds, it'll strip.", "hub nut 20 done; hub nut 40 quoted"},
		{"Hub nut, twenty foot pounds. Never go past thirty foot pounds on these.", "hub nut 20 done; hub nut 30 quoted"},
		{"Hub nut. Don't let go until it clicks, twenty foot pounds.", "hub nut 20 done"},
		{"Hub nut, I'm gonna ring and ask, because thirty foot pounds is a lot in brass.", "hub nut 30 quoted"},
		{"Hub nut on. It's half a newton metre, which is nothing.", "hub nut 0.5 done"},
		// the wrench is elsewhere
		{"Outer nut, that one is two fifty foot pounds but my big wrench is at the other yard, so it's just done up with the bar for now.", "outer nut 250 intended"},
		{"Hub nut, ninety foot pounds, and the lad's got my torque wrench.", "hub nut 90 intended"},
		{"Hub nut ninety foot pounds, my wrench is at the other yard, I borrowed one. Click.", "hub nut 90 done"},
		{"Wheel nuts ninety foot pounds. The wrench is at ninety. Click.", "wheel nuts 90 done"},
		// the wrong way round
		{"Inner nut is twenty newton metres, outer nut is fifty. Sorry, other way round.", "outer nut 20 done?; inner nut 50 done?"},
		{"Drain plug thirty five newton metres and level plug forty. Or is it the other way about? I'd have to look.", "drain plug 35 quoted?; level plug 40 quoted?"},
		{"Top bolt forty newton metres and bottom bolt fifty. The spring goes in the other way round on this side.", "top bolt 40 done; bottom bolt 50 done"},
		{"Flange bolts at thirty newton metres and the nuts at fifty. Mixed some thread lock and put it on.", "flange bolts 30 done; nuts 50 done"},
		// a row of them, and one unit for all
		{"These are all inch pounds by the way. Cover screws get forty. Bracket bolts get eighty.", "cover screws 40 done; bracket bolts 80 done"},
		{"Tensioner pivot bolt is forty five newton metres and the adjuster is twenty.", "tensioner pivot bolt 45 done; adjuster 20 done"},
	} {
		if got := toldValues(t, c[0]); got != c[1] {
			t.Errorf("%s\n\tgot  %q\n\twant %q", c[0], got, c[1])
		}
	}
}

// Where two values were told the wrong way round the document asks which way it is.
func TestExchangedValuesAsk(t *testing.T) {
	rec := Extract(talkOf(t, string(spokenAt("Upper bolt thirty newton metres, lower bolt eighty newton metres. I've said that backwards. Upper is eighty."))), lexicon.Default(), Job{})
	if !slices.ContainsFunc(rec.Open, func(o Open) bool {
		return o.Kind == Conflict && strings.Contains(o.Question, "80 N·m for the upper bolt and 30 N·m for the lower bolt")
	}) {
		t.Errorf("nothing asks which way round: %v", rec.Open)
	}
}
