package extract

import (
	"slices"
	"strings"

	"wrenchword/normalize"
)

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
	return r.ofOtherThings(f) || r.boltClass(f, next) || r.ratio(f) || r.wideAndLong(f) || r.lengthAgain(f)
}

// wideAndLong tells of the length in "eight by about sixty".
func (r *reading) wideAndLong(f *bareNumber) bool {
	i := f.lo - 1
	if w := r.word(i); w == "about" || w == "roughly" || w == "around" {
		i--
	}
	return r.word(i) == "by" && r.aNumber(i-1)
}

// widest is the widest spanner that is usual, in millimetres.
const widest = 46

// lengthAgain tells whether a number stands in a row that comes to a length which was told with its
// unit before, or is that length right after: "ninety-two mil long", and then "wind it in, ninety-six,
// ninety-four, ninety-two. That's it, ninety-two."
func (r *reading) lengthAgain(f *bareNumber) bool {
	end := f.hi
	for end < min(len(r.toks), f.hi+longestRow) && r.toks[end-1].brk < brkSentence && r.aNumber(end) {
		end++
	}
	row := r.numbersOf(f.lo, end)
	if n := len(r.bare); n > 0 && r.bare[n-1].is == neither && f.lo-r.bare[n-1].hi < 6 {
		if last := &r.bare[n-1]; last.Low.Cmp(f.Low) != 0 && last.hi != f.lo {
			return false
		}
	} else if len(row) < 3 {
		return false
	}
	return slices.ContainsFunc(row, func(n normalize.Number) bool {
		return n.Low != nil && compare(n.Low, widest) > 0 && r.lengthBefore(n.Low.RatString(), f.lo)
	})
}

// longestRow is how many words of a row of numbers are looked at.
const longestRow = 12

// lengthBefore tells whether so many millimetres were told before a token.
func (r *reading) lengthBefore(mm string, tok int) bool {
	if r.lengths == nil {
		r.lengths = map[string]int{}
		for i := range r.qtys {
			if q := &r.qtys[i]; q.Kind == normalize.Length && q.Unit == "mm" && q.Low != nil {
				if _, ok := r.lengths[q.Low.RatString()]; !ok {
					r.lengths[q.Low.RatString()] = q.lo
				}
			}
		}
	}
	first, ok := r.lengths[mm]
	return ok && first < tok
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
