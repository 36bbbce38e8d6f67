package extract

import "strings"

// Bare numbers that plainly measure something else: "twenty-five microfarads", the class of a
// bolt, a ratio of gears, how many others there are.

// boltClasses are the property classes of bolts and screws (ISO 898-1), as they are spoken.
var boltClasses = map[[2]string]bool{
	{"4", "6"}: true, {"4", "8"}: true, {"5", "6"}: true, {"5", "8"}: true, {"6", "8"}: true, {"8", "8"}: true, {"9", "8"}: true, {"10", "9"}: true, {"12", "9"}: true,
}

// seemsVerbs are verbs that end as the name of a unit does.
var seemsVerbs = set("sounds feels seems looks does goes comes needs gets makes says works wants gives takes holds clicks turns moves stays sits fits was is has this always plus as less across perhaps times ones twos unless yes thanks guys besides")

// otherMeasure tells whether a number plainly measures or counts something else than how tight a
// fastener is.
func (r *reading) otherMeasure(f *bareNumber, next *bareNumber) bool {
	return r.ofOtherThings(f) || r.boltClass(f, next) || r.ratio(f) || r.wideAndLong(f)
}

// wideAndLong tells of the length in "eight by about sixty".
func (r *reading) wideAndLong(f *bareNumber) bool {
	i := f.lo - 1
	if w := r.word(i); w == "about" || w == "roughly" || w == "around" {
		i--
	}
	return r.word(i) == "by" && r.aNumber(i-1)
}

// ofOtherThings tells of "twenty-five microfarads" and "the other seven". "The other nineteen" may
// be a spanner.
func (r *reading) ofOtherThings(f *bareNumber) bool {
	if r.prev(f.lo) == "other" && f.is == howTight && mayCount(f) {
		return true
	}
	if f.hi >= len(r.toks) || r.toks[f.hi-1].brk > brkNone {
		return false
	}
	t := &r.toks[f.hi]
	return len(t.s) > 5 && strings.HasSuffix(t.s, "s") && !strings.HasSuffix(t.s, "ss") && t.men < 0 && t.qty < 0 && !t.is(wVerb|wLinking|wPronoun|wPreposition|wSubject) && !seemsVerbs.has(t.s) && r.ids[f.hi] == 0
}

// mayCount tells whether a number may be a count of fasteners.
func mayCount(f *bareNumber) bool {
	n, exact := f.Low.Float64()
	return exact && n >= 1 && n <= 24 && f.Low.Cmp(f.High) == 0
}

// boltClass tells whether two numbers in one breath are a property class: "M8 ten-nine".
func (r *reading) boltClass(f, next *bareNumber) bool {
	pair := func(a, b *bareNumber) bool {
		return a != nil && b != nil && a.hi == b.lo && r.toks[a.hi-1].brk == brkNone && boltClasses[[2]string{a.Low.RatString(), b.Low.RatString()}]
	}
	var last *bareNumber
	if n := len(r.bare); n > 0 {
		last = &r.bare[n-1]
	}
	return pair(f, next) || pair(last, f)
}

// ratio tells whether a number is one of two of which the talk gives the ratio.
func (r *reading) ratio(f *bareNumber) bool {
	for i := f.lo - 1; i >= max(0, f.lo-5) && r.toks[i].brk < brkSentence; i-- {
		if w := r.toks[i].s; w == "ratio" || w == "geared" || w == "gearing" {
			return true
		}
	}
	return false
}
