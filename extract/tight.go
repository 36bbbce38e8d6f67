package extract

import (
	"math/big"
	"slices"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// What a bare number is is weighed (bare.go), but how it is put tells some of them for certain:
// those that tell how tight, and those that only count.

// toldTight tells whether a number is plainly how tight something is by how it is put, in talk
// that has a unit of torque: "he tightened it to a hundred and ten", "the table says from 40 to
// 44, so I put 42", "same again, twelve and then twenty-five".
func (r *reading) toldTight(f *bareNumber, heard *soFar) bool {
	if len(heard.forAll) > 0 && r.ofListInUnit(f, heard) {
		return true
	}
	if !heard.anyUnit {
		return f.Low.IsInt() && compare(f.Low, 4) >= 0 && !r.countsNext(f) && (r.tightenedTo(f) && r.nothingMore(&r.clauses[f.cl], f.hi) || r.standsAtClick(f) || r.atWrench(f) || r.inPrint(f) || r.correctsLast(f, heard) || r.doneAt(f) || r.onThose(f))
	}
	if r.iSet(f, heard) || r.correctsLast(f, heard) || r.doneAt(f) || r.onThose(f) || r.inRounds(f) {
		return true
	}
	if !f.Low.IsInt() {
		return r.withinLast(f, heard)
	}
	if !r.nothingMore(&r.clauses[f.cl], f.hi) || compare(f.Low, 2) < 0 {
		return false
	}
	return r.tightenedTo(f) || r.givenAsRange(f) || r.withinLast(f, heard) || heard.tights[keyOf(f.Low)] && r.sameAgain(f.lo-5, f.lo)
}

// standsAtClick tells whether a number is what fasteners are said to be at or to get where a torque
// wrench clicks right after: "the bracket bolts, they're at a hundred and ten. Click, click."
func (r *reading) standsAtClick(f *bareNumber) bool {
	p := r.prev(f.lo)
	alone := p == "so" || f.lo > 0 && r.toks[f.lo-1].brk >= brkPause
	if !getting.has(p) && !linking.has(p) && !(alone && r.standsAlone(f)) || r.word(f.lo-2) == "there" || p == "there's" {
		return false
	}
	s := r.sentenceAround(f.cl)
	if !r.fastenersNear(f.cl, f.lo) && !r.fastenersNear(s.first, r.clauses[s.first].lo) && !(p == "so" && r.standsAlone(f)) {
		return false
	}
	for i := f.hi; i < min(len(r.toks), f.hi+25) && r.since(f.hi-1, i) < 12; i++ {
		switch r.toks[i].s {
		case "click", "clicks", "clicked":
			return r.toks[i].men < 0 && !r.nextKind(i).is(wDeterminer|wPronoun)
		}
	}
	return false
}

// atWrench tells whether a number by itself is said in one sentence with a torque wrench, or one
// that is set: "I go with the torque key on this, thirty", "I set the wrench, forty-five".
func (r *reading) atWrench(f *bareNumber) bool {
	c := &r.clauses[f.cl]
	if !r.standsAlone(f) || c.mood&(negated|conditional|asked|other) != 0 {
		return false
	}
	for i := f.lo - 1; i >= max(0, f.lo-14) && r.clauses[r.toks[i].cl].sentence == c.sentence; i-- {
		if r.torqueWrenchAt(i) {
			return true
		}
		if r.toks[i].s == "set" && r.toks[i].men < 0 && i+2 < f.lo && r.toks[i+1].is(wDeterminer) && r.toks[i+2].men >= 0 && r.mentions[r.toks[i+2].men].head == "wrench" {
			return true
		}
	}
	return false
}

// torqueWrenchAt tells whether a token is of the name of a tool that shows how tight it turns.
func (r *reading) torqueWrenchAt(i int) bool {
	m := r.toks[i].men
	return m >= 0 && r.kindClass(&r.mentions[m]) == torqueWrench
}

// standsAlone tells whether a number is said with nothing that it counts: ", thirty.", "this is
// twenty-four, it's written on it".
func (r *reading) standsAlone(f *bareNumber) bool {
	c := &r.clauses[f.cl]
	before := r.prev(f.lo)
	return r.nothingMore(c, f.hi) && (f.lo == c.lo || r.toks[f.lo-1].brk >= brkPause || linking.has(before) || before == "to" || before == "at" || before == "so")
}

// gauges are the things that show another figure than how tight something is.
var gauges = wordsOf("what measures")

// inPrint tells whether a number is what a document or the thing itself says of what is being done
// up: "it says forty on the face of it", "eight to ten in the book".
func (r *reading) inPrint(f *bareNumber) bool {
	c := &r.clauses[f.cl]
	i := f.lo - 1
	if w := r.word(i); w == "from" || w == "about" {
		i--
	}
	said := i >= c.lo && giving.has(r.toks[i].s)
	k := f.hi
	if w := r.word(k); (w == "in" || w == "on") && k+2 < len(r.toks) && r.toks[k+1].is(wDeterminer) && r.toks[k-1].brk < brkComma {
		k += 2
		if documents.has(r.toks[k].s) && (i < c.lo || r.toks[i].men < 0) {
			said = true
		} else if !said {
			return false
		}
	} else if !said || !r.nothingMore(c, f.hi) {
		return false
	}
	if !said || r.measuredBefore(f.cl, f.lo) {
		return false
	}
	for j := f.lo - 1; j >= max(0, f.lo-30) && r.since(j, f.lo) < 12; j-- {
		if gauges.has(r.toks[j].s) {
			return false
		}
	}
	return r.doneUpLately(f)
}

// doneUpLately tells whether something was being done up shortly before a number: a fastener is
// spoken of, a torque wrench, or what went on by hand.
func (r *reading) doneUpLately(f *bareNumber) bool {
	if r.fastenersNear(f.cl, f.lo) {
		return true
	}
	for k := f.cl; k >= 0 && r.since(r.clauses[k].lo, f.lo) < 15; k-- {
		c := &r.clauses[k]
		for i := c.lo; i < min(c.hi, f.lo); i++ {
			if handAt(r, i, c.hi) {
				return true
			}
		}
		for _, mi := range c.mentions {
			if m := &r.mentions[mi]; m.lo < f.lo && r.kindClass(m) == torqueWrench {
				return true
			}
		}
		for _, ai := range c.acts {
			switch a := &r.acts[ai]; a.action.Name {
			case "tighten", "torque", "start by hand":
				return true
			case "fit":
				if a.byHand {
					return true
				}
			}
		}
	}
	return false
}

// countsNext tells whether what follows a number is what it counts or measures.
func (r *reading) countsNext(f *bareNumber) bool {
	if f.hi >= len(r.toks) || r.toks[f.hi-1].brk >= brkSentence {
		return false
	}
	t := &r.toks[f.hi]
	return t.men >= 0 || t.qty >= 0 || counted.has(t.s) || timeWords.has(t.s)
}

// correctsLast tells whether a number is said in the place of a value that is taken back: "a hundred
// foot pounds, no sorry, that's the big truck, this one's eighty eight".
func (r *reading) correctsLast(f *bareNumber, heard *soFar) bool {
	last, was := -1, (*big.Rat)(nil)
	if n := len(r.bare); n > 0 && r.bare[n-1].is == howTight {
		last, was = r.bare[n-1].hi, r.bare[n-1].Low
	}
	if q := heard.tight; q >= 0 && r.qtys[q].hi > last && r.qtys[q].Low != nil {
		last, was = r.qtys[q].hi, r.qtys[q].Low
	}
	if was == nil || f.lo-last > 16 || r.since(last, f.lo) > 12 || !linking.has(r.prev(f.lo)) || r.countsNext(f) {
		return false
	}
	if five := big.NewRat(5, 1); new(big.Rat).Mul(was, five).Cmp(f.Low) < 0 || new(big.Rat).Mul(f.Low, five).Cmp(was) < 0 {
		return false
	}
	for i := last; i < f.lo; i++ {
		if r.takesBack(i, f.lo) || i == last && r.ofAnother(i) {
			return true
		}
	}
	return false
}

// setting are the verbs by which somebody says which value they set: "so I do nine", "I've gone
// forty", "I gave it twelve".
var setting = set("do did done go going gone went give gave set put pull pulled")

// iSet tells whether a number is what the speaker says to have set, of the values told before or
// with the torque wrench: "I do five now", "so I do one and a half, with the small torque driver".
func (r *reading) iSet(f *bareNumber, heard *soFar) bool {
	c := &r.clauses[f.cl]
	i := f.lo - 1
	for i > c.lo && (pronounsObj.has(r.toks[i].s) || r.toks[i].s == "for" || r.toks[i].s == "to" || r.toks[i].s == "with" || r.toks[i].s == "at") {
		i--
	}
	if i <= c.lo || !setting.has(r.toks[i].s) || c.mood&(negated|conditional|hypothetical|asked) != 0 {
		return false
	}
	for i--; i > c.lo && (r.toks[i].is(wDrop) || r.toks[i].s == "'ve" || r.toks[i].s == "'m" || r.toks[i].s == "'ll" || r.toks[i].s == "have"); i-- {
	}
	if !firstPersonOf(r.toks[i].s) {
		return false
	}
	if heard.tights[keyOf(f.Low)] && (r.nothingMore(c, f.hi) || r.toks[f.hi].s == "because") {
		return true
	}
	for k := f.hi; k < min(len(r.toks), f.hi+8) && r.clauses[r.toks[k].cl].sentence == c.sentence; k++ {
		if r.torqueWrenchAt(k) {
			return true
		}
	}
	return false
}

// plainValue tells whether a number may be how tight something is by its size and by what follows it,
// which it does not count.
func (r *reading) plainValue(f *bareNumber) bool {
	if !f.Low.IsInt() || compare(f.Low, 4) < 0 || f.hi < len(r.toks) && r.toks[f.hi-1].brk < brkSentence && r.toks[f.hi].men >= 0 && r.mentions[r.toks[f.hi].men].plural {
		return false
	}
	return f.hi >= len(r.toks) || r.toks[f.hi].qty < 0 && !counted.has(r.toks[f.hi].s) && !timeWords.has(r.toks[f.hi].s)
}

// doneAt tells whether a number is what somebody says to have done fasteners at: "that I've done at
// eighty", "I've done them at sixty".
func (r *reading) doneAt(f *bareNumber) bool {
	if to := r.prev(f.lo); to != "at" && to != "to" || !r.plainValue(f) {
		return false
	}
	i := f.lo - 2
	if pronounsObj.has(r.word(i)) || r.word(i) == "all" || r.word(i) == "both" {
		i--
	}
	if w := r.word(i); w != "done" && w != "did" && w != "torqued" && w != "tightened" || i < r.clauses[f.cl].lo {
		return false
	}
	return r.clauses[f.cl].mood&(negated|conditional|hypothetical|asked) == 0
}

// onThose tells whether a number that is the width of no spanner is what fasteners are given: "and
// forty on those".
func (r *reading) onThose(f *bareNumber) bool {
	if r.word(f.hi) != "on" || !r.plainValue(f) || spannerSize(f.Low) {
		return false
	}
	if w := r.next(f.hi); w != "those" && w != "these" && w != "them" && w != "that" || r.toks[f.hi+1].brk < brkComma && f.hi+2 < r.clauses[f.cl].hi && r.toks[f.hi+2].men >= 0 {
		return false
	}
	p := r.prev(f.lo)
	return (f.lo == r.clauses[f.cl].lo || r.toks[f.lo-1].brk >= brkPause || p == "and" || p == "so" || linking.has(p)) && r.fastenersNear(f.cl, f.lo)
}

// inRounds tells whether a number is the value of one round of several: "the first time thirty, the
// second time sixty".
func (r *reading) inRounds(f *bareNumber) bool {
	if w := r.prev(f.lo); w != "time" && w != "round" && w != "pass" && w != "stage" || !r.plainValue(f) || !r.nothingMore(&r.clauses[f.cl], f.hi) {
		return false
	}
	return ordinal.has(r.word(f.lo - 2))
}

// tightenedTo tells whether a number is what something is tightened to: "torqued them to
// eighty", "the wrench is set at sixteen".
func (r *reading) tightenedTo(f *bareNumber) bool {
	to := r.prev(f.lo)
	if to != "to" && to != "at" && to != "on" {
		return false
	}
	wrench := false
	for i := f.lo - 2; i >= max(0, f.lo-7) && int(r.toks[i].cl) == f.cl; i-- {
		switch w := r.lemma1(r.toks[i].s); w {
		case "torque", "tighten":
			return to == "to" && (w == "tighten" || r.toks[i].men < 0)
		case "do":
			return to == "to" && i == f.lo-3 && pronounsObj.has(r.toks[i+1].s) // "so I've done it to twelve"
		case "set", "put":
			if wrench {
				return true
			}
			for j := r.clauses[f.cl].lo; j < i; j++ {
				if r.torqueWrenchAt(j) {
					return true
				}
			}
			return false
		}
		wrench = wrench || r.torqueWrenchAt(i)
	}
	return false
}

// givenAsRange tells whether a range is what a document says: "the chart says from 40 to 44".
func (r *reading) givenAsRange(f *bareNumber) bool {
	if f.Alt || f.Low.Cmp(f.High) >= 0 || compare(f.Low, 4) < 0 {
		return false
	}
	for i := f.lo - 1; i >= max(0, f.lo-20); i-- {
		if w := r.toks[i].s; counted.has(w) || timeWords.has(w) {
			return false // "three to five clicks, and the handbook says five to seven"
		}
	}
	i := f.lo - 1
	if r.word(i) == "from" {
		i--
	}
	if w := r.word(i); (w == "there" || w == "it" || w == "here") && r.prev(i) == "on" {
		i -= 2 // "it says on there five to six"
	}
	return giving.has(r.word(i)) && r.word(i) != "call"
}

// withinLast tells whether a number lies within a range of torque that was told shortly before,
// or is the number, not whole, that was.
func (r *reading) withinLast(f *bareNumber, heard *soFar) bool {
	within := func(low, high *big.Rat, gap float64) bool {
		if low.Cmp(f.Low) > 0 || high.Cmp(f.High) < 0 {
			return false
		}
		if f.Low.IsInt() {
			return low.Cmp(high) < 0 && gap < 10
		}
		return low.Cmp(f.Low) == 0 || gap < 10
	}
	if n := len(r.bare); n > 0 && r.bare[n-1].is == howTight && within(r.bare[n-1].Low, r.bare[n-1].High, r.since(r.bare[n-1].hi, f.lo)) {
		return true
	}
	for i := heard.tight; i >= 0; i-- {
		q := &r.qtys[i]
		gap := r.since(q.hi, f.lo)
		if gap > 30 {
			break
		}
		if q.Kind == normalize.Torque && q.Low != nil && within(q.Low, q.High, gap) {
			return true
		}
	}
	return false
}

// ofListInUnit tells whether a number is a value where one unit is said to be of all of them:
// "bracket twenty-five, pinch bolt thirty-eight. All newton metres.", "everything in here is foot
// pounds. … These get twelve. Twelve, twelve."
func (r *reading) ofListInUnit(f *bareNumber, heard *soFar) bool {
	c := &r.clauses[f.cl]
	if !f.Low.IsInt() || compare(f.Low, 2) < 0 || f.hi < c.hi && r.toks[f.hi-1].brk < brkComma && !afterSize.has(r.toks[f.hi].s) && r.toks[f.hi].men < 0 {
		return false
	}
	said := slices.ContainsFunc(heard.forAll, func(at int) bool {
		return at < f.lo || r.since(f.hi-1, at) < 15 && int(r.toks[at].cl)-f.cl <= 2
	})
	if !said {
		return false
	}
	at, gets := f.lo-1, false
	for at > c.lo && (linking.has(r.toks[at].s) || getting.has(r.toks[at].s)) {
		gets = gets || getting.has(r.toks[at].s)
		at--
	}
	w := r.word(at)
	named := at >= c.lo && r.toks[at].men >= 0 && r.mentions[r.toks[at].men].kind&(lexicon.Fastener|lexicon.Part) != 0
	switch {
	case gets && (named || w == "these" || w == "those" || w == "they" || w == "it" || w == "one" || w == "that" || w == "this"):
		return true
	case named && r.pairsIn(c) > 1:
		return true
	}
	if !heard.tights[keyOf(f.Low)] || compare(f.Low, 6) < 0 || !r.nothingMore(c, f.hi) {
		return false
	}
	return f.lo == c.lo || r.toks[f.lo-1].brk >= brkComma || w == "one" && linking.has(r.prev(f.lo)) || gets && r.toks[at].is(wInUse|wVerb|wParticle) || r.tightenedTo(f)
}

// getting are the words by which a fastener is given its value.
var getting = set("gets get takes take wants want needs need at to")

// pairsIn counts the names of a clause that a number follows.
func (r *reading) pairsIn(c *clause) int {
	n := 0
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.hi < c.hi && m.kind&(lexicon.Fastener|lexicon.Part) != 0 && r.aNumber(m.hi) {
			n++
		}
	}
	return n
}

// sameAgain tells whether what was told before is said to be told again in the tokens lo to hi.
func (r *reading) sameAgain(lo, hi int) bool {
	for i := max(lo, 1); i < hi; i++ {
		if r.toks[i].s == "again" && r.toks[i-1].s == "same" {
			return true
		}
	}
	return false
}

// countsThem tells whether a number that might tell how tight only counts things: "went around
// all eight", "and that's fourteen" where there are fourteen of them.
func (r *reading) countsThem(f *bareNumber, heard *soFar) bool {
	if f.hi-f.lo != 1 || !f.Low.IsInt() || !r.nothingMore(&r.clauses[f.cl], f.hi) && r.word(f.hi) != "of" {
		return false
	}
	if r.stillCounting(f) || r.ofOtherUnit(f, heard) {
		return true
	}
	switch w := r.prev(f.lo); {
	case w == "all":
		return !linking.has(r.word(f.lo - 2))
	case w == "that's", w == "there's", w == "'s" && (r.word(f.lo-2) == "that" || r.word(f.lo-2) == "there"):
		return !heard.tights[keyOf(f.Low)] && r.thereAre(f.Low)
	}
	return false
}

// clicked are what an adjuster is turned by, a few at a time.
var clicked = set("clicks notches turns flats pumps strokes")

// stillCounting tells whether a number goes on with what was just counted, nothing that is
// tightened having been named since: "ten clicks? Some say eight. I did ten".
func (r *reading) stillCounting(f *bareNumber) bool {
	if compare(f.Low, 40) > 0 {
		return false
	}
	for i := f.lo - 1; i > max(0, f.lo-24) && r.since(i, f.lo) < 12; i-- {
		t := &r.toks[i]
		switch w := t.s; {
		case clicked.has(w) && t.men < 0:
			n := r.toks[i-1].s
			return r.toks[i-1].brk < brkComma && (countOf[n] > 0 || numberWord.has(n) || n[0] >= '0' && n[0] <= '9')
		case t.qty >= 0, w == "torque", w == "tight", w == "tighten", w == "these", w == "those", w == "give", w == "gets", t.men >= 0 && (r.mentions[t.men].kind&(lexicon.Fastener|lexicon.Tool) != 0 || tightens.has(r.mentions[t.men].head)):
			return false
		}
	}
	return false
}

// otherUnits are those of what is no torque: "the gauge says fifty newton".
var otherUnits = wordsOf("units that are no torque")

// ofOtherUnit tells whether a number by itself says over what was said with a unit of another
// kind within a minute, and never as a torque: "fifty newton on the gauge. … Fifty. Good."
func (r *reading) ofOtherUnit(f *bareNumber, heard *soFar) bool {
	c := &r.clauses[f.cl]
	if f.lo != c.lo || f.hi < c.hi || heard.tights[keyOf(f.Low)] {
		return false
	}
	for i := f.lo - 1; i > max(0, f.lo-200) && r.since(i, f.lo) < 60; i-- {
		if r.toks[i].s == r.toks[f.lo].s && i+1 < f.lo && r.toks[i].brk < brkComma && otherUnits.has(r.toks[i+1].s) {
			w := r.toks[i+2].s
			return w != "metre" && w != "metres" && w != "meter" && w != "meters" && r.toks[i].qty < 0
		}
	}
	return false
}

// thereAre tells whether so many fasteners are spoken of in the talk: "all fourteen", "fourteen bolts".
func (r *reading) thereAre(v *big.Rat) bool {
	if r.counts == nil {
		r.counts = map[int64]bool{}
		for i := range r.mentions {
			if m := &r.mentions[i]; m.kind&lexicon.Fastener != 0 {
				r.counts[int64(m.count)] = true
			}
		}
		for i := 1; i < len(r.toks); i++ {
			if r.toks[i-1].s == "all" {
				r.counts[int64(countOf[r.toks[i].s])] = true
			}
		}
	}
	return r.counts[v.Num().Int64()]
}
