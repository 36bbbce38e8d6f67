package extract

import (
	"math/big"
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// A fraction of an inch is a size that people hardly ever say the unit of: "nine sixteenths",
// "a three eighths bolt", "no, that's a 1/2".

// inInches tells whether a number without its unit is the size of a fastener in inches: a
// fraction as only inches are told in, of what is named right after it or said by itself
// where fasteners are spoken of.
func (r *reading) inInches(f *bareNumber) bool {
	if !inchFraction(f.Low) || !inchFraction(f.High) || !r.saidAsFraction(f.lo, f.hi) {
		return false
	}
	c := &r.clauses[f.cl]
	if r.measured(c, f.lo, f.hi) || r.ofTurn(c, f.lo) {
		return false
	}
	if r.sizedThing(f.lo, f.hi) {
		return true
	}
	written := strings.ContainsAny(r.toks[f.lo].s, "/½¼¾")
	if f.Low.Denom().Int64() < 8 && !written && !(r.word(f.hi) == "on" && r.sizeBefore(c, f.lo)) || compare(f.Low, 2) > 0 || f.Low.Num().Int64() == 1 && !written {
		return false // "and then a quarter", "it's an eighth", but "nineteen on one side and three quarter on the other"
	}
	if r.prev(f.lo) == "and" && r.sizeBefore(c, f.lo) {
		return r.nothingMore(c, f.hi)
	}
	return r.alone(c, f.lo, f.hi) && !r.measuredBefore(f.cl, f.lo) && r.fastenersNear(f.cl, f.lo)
}

// measuredBefore tells whether the sentence up to a token is of how far or how much:
// "the front's to be lower, and it's a quarter, or it's three eighths".
func (r *reading) measuredBefore(ci, tok int) bool {
	for i := tok - 1; i >= max(0, tok-16) && r.clauses[r.toks[i].cl].sentence == r.clauses[ci].sentence; i-- {
		if w := r.toks[i].s; r.toks[i].men < 0 && (measuring.has(w) || measures.has(w) && !besideMeasure.has(w)) {
			return true
		}
	}
	return false
}

// sizeBefore tells whether a clause has a size before a token.
func (r *reading) sizeBefore(c *clause, tok int) bool {
	for i := tok; i > c.lo+1; i-- {
		if r.sizeEnds(i) {
			return true
		}
	}
	return false
}

// measuring are more words of how far or how wide.
var measuring = set("lower higher slap sag droop deflection hole holes drilled bored toe ball balls wide")

// inchFraction tells whether a number is one that a rule in inches has a line for.
func inchFraction(v *big.Rat) bool {
	return v != nil && !v.IsInt() && isPow2(v.Denom()) && compare(v, 3) < 0 && v.Sign() > 0
}

// saidAsFraction tells whether a number was said in parts, and not as a decimal.
func (r *reading) saidAsFraction(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if w := r.toks[i].s; fractionWord.has(w) || strings.ContainsAny(w, "/½¼¾⅛⅜⅝⅞") || strings.HasSuffix(w, "ths") || strings.HasSuffix(w, "16th") {
			return true
		}
	}
	return false
}

// sizedThing tells whether what a size in inches is of is named right after it: "a five
// sixteenths bolt", "these little 5/16 lock nuts", "three eighths coarse".
func (r *reading) sizedThing(lo, hi int) bool {
	if hi >= len(r.toks) || r.toks[hi-1].brk >= brkComma {
		return false
	}
	if threadWords.has(r.toks[hi].s) || r.toks[hi].s == "by" && hi+1 < len(r.toks) && (r.toks[hi+1].qty >= 0 || r.nextKind(hi).is(wNumber)) {
		return true // "three eighths by four"
	}
	mi := r.toks[hi].men
	if mi < 0 {
		return false
	}
	m := &r.mentions[mi]
	return m.from <= hi && (m.kind&lexicon.Fastener != 0 || m.head == "plug") && !(lo > 0 && r.toks[lo-1].s == "of")
}

// threadWords are what a size right before them is the thread of.
var threadWords = set("thread threads coarse fine stud studs tapping")

// alone tells whether a size says all that there is between two stops, but for what points
// at it: "nine sixteenths, there it is", "no, that's a 1/2".
func (r *reading) alone(c *clause, lo, hi int) bool {
	for i := lo - 1; i >= c.lo && r.toks[i].brk < brkPause; i-- {
		if w := r.toks[i].s; !besideSize.has(w) && !dropWords.has(w) && !openers.has(w) && !placeWords.has(w) && w != "'d" && w != "be" {
			return false
		}
	}
	return r.nothingMore(c, hi)
}

// nothingMore tells whether what ends at a token is all that a stretch says, but for what
// points at it.
func (r *reading) nothingMore(c *clause, hi int) bool {
	if hi == c.hi || r.toks[hi-1].brk >= brkPause {
		return true
	}
	return afterSize.has(r.toks[hi].s)
}

// afterSize are the words that go on after a size has been told: "nine sixteenths, there it is".
var afterSize = set("there again too and or but so as both each all on with no wait sorry cause because if then now i maybe probably yeah yep to head heads")

// anInch tells whether a length is told as one: "half an inch", "an eighth of an inch".
func (r *reading) anInch(lo, hi int) bool {
	for i := lo + 1; i < hi; i++ {
		if r.toks[i].s == "an" && r.next(i) == "inch" || r.toks[i].s == "of" {
			return true
		}
	}
	return false
}

// partOfIt tells whether a fraction that may be a size is by how much something is turned, or
// how far something goes.
func (r *reading) partOfIt(f *bareNumber) bool {
	c := &r.clauses[f.cl]
	switch r.prev(f.lo) {
	case "off", "out", "back", "down", "up", "about":
		return r.toks[f.lo-1].brk < brkPause // "back the nut off an eighth"
	}
	return f.Low.Denom().Int64() < 8 && r.prev(f.lo) != "the" && !r.toolAt(f.hi) && (r.ofTurn(c, f.lo) || r.measured(c, f.lo, f.hi))
}

// ofTurn tells whether a part before a token is one of a turn: "give it another quarter".
func (r *reading) ofTurn(c *clause, lo int) bool {
	for i := lo - 1; i >= c.lo && i > lo-6 && r.toks[i].brk < brkComma; i-- {
		switch r.toks[i].s {
		case "turn", "turns", "turned", "give", "gave", "back", "another", "more", "crack", "moved", "over":
			return true
		}
	}
	return false
}

// fastenersNear tells whether fasteners are named, or only counted, in a clause or in those
// right before it; what is tightened itself counts with them where something is undone or done up.
func (r *reading) fastenersNear(ci, tok int) bool {
	counted := false
	for k := ci; k >= 0 && k >= ci-3 && r.since(r.clauses[k].lo, tok) < 12; k-- {
		c := &r.clauses[k]
		counted = counted || r.countedIn(c, min(tok, c.hi))
		for j := len(c.mentions) - 1; j >= 0; j-- {
			switch m := &r.mentions[c.mentions[j]]; {
			case m.lo >= tok:
			case m.kind&lexicon.Fastener != 0 || m.kind&lexicon.Part != 0 && tightens.has(m.head) && r.doneUpNear(ci):
				return true
			case counted && inert(m):
				return false // "belts on, there's two, a half inch and a three eighths"
			}
		}
	}
	return counted
}

// threadOf gives the thread that a size is said to be, "" where it is none or may be none: that
// of a stud or of a thread itself, and in inches, in which bolts go by their thread, that of a
// bolt: "a six mil stud", "a three eighths bolt".
func (r *reading) threadOf(s *sized, canon string) string {
	if s.hi >= len(r.toks) || r.toks[s.hi-1].brk >= brkComma {
		return ""
	}
	w := r.toks[s.hi].s
	n, mm := strings.CutSuffix(canon, " mm")
	switch told := threadWords.has(w) || (w == "screw" || w == "screws") && r.headless(s); {
	case mm && told && len(normalize.CheckSize("M"+n, normalize.Thread)) == 0:
		return "M" + n
	case !mm && strings.HasSuffix(canon, " in") && (told || r.boltAt(s.hi) && !alsoHeads[canon]) && len(normalize.Threads(canon)) > 0:
		return canon
	}
	return ""
}

// headless tells whether the screw named right after a size has a head that nothing grips by
// its sides: its size is that of its thread.
func (r *reading) headless(s *sized) bool {
	for i := max(s.lo-3, 0); i < min(s.hi+6, len(r.toks)); i++ {
		if r.toks[i].s == "countersunk" {
			return r.clauses[r.toks[i].cl].sentence == r.clauses[s.cl].sentence
		}
	}
	return false
}

// boltAt tells whether a bolt or a screw is named right at a token.
func (r *reading) boltAt(i int) bool {
	if i >= len(r.toks) || r.toks[i].men < 0 {
		return false
	}
	m := &r.mentions[r.toks[i].men]
	return m.from <= i && (m.head == "bolt" || m.head == "screw" || m.head == "stud") && !slices.Contains(m.mods, "hex")
}

// alsoHeads are the threads in inches that are the widths of common heads as well (ASME B18.2.1:
// of quarter, five sixteenths, three eighths and half inch bolts).
var alsoHeads = map[string]bool{"7/16 in": true, "1/2 in": true, "9/16 in": true, "3/4 in": true}

// eitherWay tells whether a size in inches may be that of the thread as well as of the flats:
// "the 5/16 lock nuts", "a half inch bolt".
func (r *reading) eitherWay(s *sized) bool {
	if s.hi >= len(r.toks) || r.toks[s.hi-1].brk >= brkComma || !strings.HasSuffix(s.canon[0], " in") || r.toks[s.hi].men < 0 {
		return false
	}
	m := &r.mentions[r.toks[s.hi].men]
	return m.from <= s.hi && (m.head == "nut" || m.head == "locknut") || r.boltAt(s.hi) && alsoHeads[s.canon[0]]
}
