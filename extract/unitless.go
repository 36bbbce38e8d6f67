package extract

import (
	"cmp"
	"math/big"
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// unitless reads the torque values said without their unit, where a value with
// one was heard before, or the unit by itself right after: "those two were a
// hundred and seven", "I've got it set to ninety", "it's fifty two. … Newton
// metre, yes." They take that unit, and say so.
func (r *reading) unitless() {
	n := len(r.qtys)
	var found []quantity
	late := r.unitsAlone()
	var said []quantity // the torque values so far, unitFrom telling what one more like them takes its unit from
	for ci := range r.clauses {
		c := &r.clauses[ci]
		for _, u := range late {
			if u.cl == ci && r.ofWholeList(c, u) {
				r.listUnit = u
			}
			if u.cl > ci {
				break
			}
		}
		if c.mood&(aside|greeting) == 0 {
			for len(late) > 0 && late[0].lo < c.lo {
				late = late[1:]
			}
			more := r.unitlessIn(ci, said, late)
			found = append(found, more...)
			for _, q := range more {
				if q.unitFrom != r.listUnit.unitFrom {
					said = append(said, q) // a list has another column as well: its unit lends none
				}
			}
		}
		for _, qi := range c.qtys {
			if q := r.qtys[qi]; q.Kind == normalize.Torque && q.Low != nil {
				q.unitFrom = Heard(q.Canonical) + " heard near it"
				said = append(said, q)
			}
		}
	}
	for _, q := range found {
		for i := q.lo; i < q.hi; i++ {
			r.toks[i].qty = int32(n)
		}
		c := &r.clauses[q.cl]
		k := len(c.qtys)
		for k > 0 && r.qtys[c.qtys[k-1]].lo > q.lo {
			k--
		}
		c.own().qtys = append(c.qtys[:k:k], append([]int{n}, c.qtys[k:]...)...)
		r.qtys = append(r.qtys, q)
		n++
	}
}

// ofWholeList tells whether a unit said by itself is said to be that of all values to
// come: "all the numbers are newton metres".
func (r *reading) ofWholeList(c *clause, u quantity) bool {
	all := false
	for i := c.lo; i < u.lo; i++ {
		switch r.toks[i].s {
		case "all", "every", "everything":
			all = true
		case "not", "n't", "aren't", "isn't":
			return false
		}
	}
	return all
}

// readOffList tells whether a bare number is read off a list whose unit was said for
// all of it and then set: "link to frame, blue glue, fifteen. … Click."
func (r *reading) readOffList(ci, lo, hi int) bool {
	c := &r.clauses[ci]
	if r.word(hi) == "and" {
		for i := hi; i < min(len(r.toks), hi+6); i++ {
			if w := r.toks[i].s; w == "line" || w == "lines" || w == "marks" || w == "notches" {
				return false // how far the wrench is wound: "ten, and two little lines"
			}
		}
	}
	prev := r.word(lo - 1)
	switch {
	case hi < c.hi && r.toks[hi-1].brk < brkComma:
		return false
	case lo > c.lo && r.toks[lo-1].brk < brkComma && prev != "'s" && prev != "and" && prev != "to" && prev != "now":
		return false
	}
	for i := hi; i < min(len(r.toks), hi+25); i++ {
		if w := r.toks[i].s; w == "click" || w == "clicked" || w == "clicks" && countOf[r.toks[i-1].s] == 0 && !numberWord.has(r.toks[i-1].s) {
			return true // but "the dial is three clicks from the end"
		}
	}
	return false
}

// leadsUnit are the first words of the units of torque.
var leadsUnit = set("newton newtons foot feet inch pound pounds kilo kilogram")

// unitsAlone gives the units of torque that are said without a number, in order.
func (r *reading) unitsAlone() []quantity {
	var out []quantity
	for i := 0; i < len(r.toks); i++ {
		if !r.toks[i].is(wSeldom) || !leadsUnit.has(r.toks[i].s) || r.toks[i].qty >= 0 || i > 0 && r.toks[i-1].brk < brkSentence && r.aNumber(i-1) {
			continue // one with its number is of that: "forty four foot pounds of torque", of an engine
		}
		for hi := min(i+3, len(r.toks)); hi > i+1; hi-- {
			said := r.talk.Text[r.toks[i].lo:r.toks[hi-1].hi]
			if q := normalize.Quantities("1 " + said); len(q) == 1 && q[0].Kind == normalize.Torque && q[0].End == len(said)+2 {
				out = append(out, quantity{Quantity: q[0], lo: i, hi: hi, cl: int(r.toks[i].cl), unitFrom: "“" + said + "” heard near it"})
				i = hi - 1
				break
			}
		}
	}
	return out
}

// unitAt gives the value whose unit a value said now is in: the last one, or the
// one before it where that was the same value told in a second unit.
func (r *reading) unitAt(said []quantity) quantity {
	last := said[len(said)-1]
	if len(said) > 1 {
		if p := said[len(said)-2]; p.Unit != last.Unit && r.since(p.hi, last.lo) < 6 {
			return p
		}
	}
	return last
}

// toldAgain tells whether a number is that of a value said lately. Of a range said,
// one end is a choice.
func (r *reading) toldAgain(n normalize.Number, said []quantity, lo int) bool {
	for i := len(said) - 1; i >= 0 && r.since(said[i].hi, lo) < 60; i-- {
		if q := &said[i]; n.Low.Cmp(q.Low) == 0 && n.High.Cmp(q.High) == 0 {
			return true
		}
	}
	return false
}

var (
	torqueWords = set("torque torqued torques torquing click clicks clicked clicking newton newtons")
	giving      = set("says say gives give calls wants reckons quotes lists shows")
	getting     = set("is are was were 's 're get gets got take takes took want wants need needs do does did go goes went have has had at to")
	ofThat      = set("those these they them that it each both all same")
	sayingMine  = set("do did go going give gave use used take taking took set put run pull pulled")
	afterValue  = set("first on for there each again and then too as both all that that's is so click with plus or to now which because but the those these i you we it same apiece please ok okay yeah right there's")
	countBefore = set("row line all these those both a an the this that my your number step page size another first last only one part point about's chapter channel of top bottom next")
)

// unitlessIn gives the torque values said without a unit in a clause: those told
// as the values said before them were, and those whose unit is said by itself
// right after, late being the units to come.
func (r *reading) unitlessIn(ci int, said, late []quantity) []quantity {
	c := &r.clauses[ci]
	soon := len(late) > 0 && r.since(c.lo, late[0].lo) < 25
	if len(said) == 0 && !soon && r.listUnit.Unit == "" {
		return nil
	}
	base := int(r.toks[c.lo].lo)
	var out []quantity
	for _, n := range r.numbersOf(c.lo, c.hi) {
		if n.Low == nil || compare(n.Low, 2) < 0 || compare(n.High, 700) > 0 || !n.Low.IsInt() && compare(n.Low, 30) > 0 {
			continue
		}
		lo, hi := r.tokenAt(base+n.Start), r.tokenAt(base+n.End-1)+1
		if lo < c.lo || hi > c.hi || lo >= hi || !r.standsBare(c, lo, hi) || r.tellsElse(ci, lo) {
			continue
		}
		var of quantity
		if compare(n.Low, 3) < 0 {
			if len(said) == 0 || !r.readInRow(lo, hi, &said[len(said)-1]) {
				continue
			}
			of = r.unitAt(said) // "brake lever clamp, four newton metres. Shifter, two."
		} else if len(said) > 0 {
			again := slices.ContainsFunc(said, func(q quantity) bool { return n.Low.Cmp(q.Low) == 0 && n.High.Cmp(q.High) == 0 })
			tight, another := r.meantTight(ci, lo, hi, &said[len(said)-1], compare(n.High, 9) < 0, compare(n.Low, 36) > 0, again)
			if tight && (another || !r.toldAgain(n, said, lo)) {
				of = r.unitAt(said)
				if soon && r.unitByItself(late[0]) && late[0].lo >= hi && late[0].lo-hi <= 8 && len(r.numbersOf(hi, late[0].lo)) == 0 {
					of = late[0] // "the pinch bolts, twenty, like the other ones. Newton metres."
				}
			}
		}
		if of.Unit == "" && soon && compare(n.High, 9) > 0 && late[0].lo >= hi && r.onlyValuesSince(hi, late[0].lo) && r.toldBare(ci, lo, hi) && (len(said) == 0 || !r.toldAgain(n, said, lo)) {
			of = late[0]
		}
		if of.Unit == "" && soon && r.unitByItself(late[0]) && late[0].lo >= hi && late[0].lo-hi <= 5 && r.onlyValuesSince(hi, late[0].lo) && len(r.numbersOf(hi, late[0].lo)) == 0 {
			of = late[0] // "a hundred and seven on those. Newton metres."
		}
		if of.Unit == "" && len(said) > 0 && (r.readInRow(lo, hi, &said[len(said)-1]) || r.answers(ci, lo, hi) && r.since(said[len(said)-1].hi, lo) < 300) {
			of = r.unitAt(said)
		}
		if of.Unit == "" {
			of = r.sameInAnother(ci, n, lo, said)
		}
		if of.Unit != "" && soon && late[0].lo >= hi && late[0].lo-hi <= 8 && r.unitByItself(late[0]) && r.onlyValuesSince(hi, late[0].lo) && len(r.numbersOf(hi, late[0].lo)) == 0 {
			of = late[0] // "the pinch bolts, twenty, like the other ones. Newton metres?": not as before
		}
		if u := r.listUnit; of.Unit == "" && u.Unit != "" && u.hi <= lo && r.readOffList(ci, lo, hi) {
			of = u
		}
		if of.Unit == "" || len(said) > 0 && r.powerSince(said[len(said)-1].hi, lo) {
			continue
		}
		q := n.In(normalize.Torque, of.Unit)
		q.Start, q.End = base+n.Start, base+n.End
		out = append(out, quantity{Quantity: q, lo: lo, hi: hi, cl: ci, unitFrom: of.unitFrom})
	}
	return out
}

// tellsElse tells whether the bare number at token lo is told of a person, of what the
// wrench can do, of what was counted just before, or only as what it may have been.
func (r *reading) tellsElse(ci, lo int) bool {
	c := &r.clauses[ci]
	if lo-1 < c.lo {
		return false
	}
	switch w, b := r.toks[lo-1].s, r.word(lo-2); {
	case w == "am" || w == "'m" || w == "i'm":
		return true
	case (w == "was" || w == "were") && (b == "i" || b == "he" || b == "she" || b == "we" || b == "mine" || b == "yours" || b == "ours" || b == "theirs") && lo-2 >= c.lo:
		return true // "I'd no torque wrench till I was fifty", "mine was fifty five"
	case (w == "was" || w == "were") && supposed.has(r.word(lo-3)):
		return true // "there were only two in the box. I thought it was three"
	case (w == "at" || w == "to" || w == "from") && wrenchEnds.has(b) && r.ofWrench(ci):
		return true // "my torque driver stops at six"
	case r.toks[c.lo].s == "or" && lo-c.lo <= 3 && (w == "is" || w == "was" || w == "were" || w == "'s" || w == "be"):
		return true // "it were ten, or it were twelve"
	}
	for i := lo - 1; i >= max(0, lo-16) && r.toks[i].qty < 0 && r.toks[i].brk < brkSentence; i-- {
		if counted.has(r.toks[i].s) && r.aNumber(i-1) {
			return true // "the printout says three to five clicks and the book says five to seven"
		}
	}
	return false
}

// supposed are the words of what turned out otherwise.
var supposed = set("thought think figured reckoned believed assumed supposed guessed hoped swore")

// powerSince tells whether a value that is no tightening was told between two tokens: "it's
// 310 newton metres at two thousand revs, and uphill you'd swear it was nine".
func (r *reading) powerSince(lo, hi int) bool {
	for i := max(lo+1, hi-60); i < hi; i++ {
		if r.toks[i].is(wSeldom) && leadsUnit.has(r.toks[i].s) && r.toks[i].qty < 0 && r.aNumber(i-1) {
			return true
		}
	}
	return false
}

// aNumber tells whether the word at token i says a number, or ends one.
func (r *reading) aNumber(i int) bool {
	w := r.word(i)
	return numberWord.has(w) || countOf[w] > 0 || w != "" && w[0] >= '0' && w[0] <= '9'
}

// wrenchEnds are the words for where the scale of a torque wrench begins or ends.
var wrenchEnds = set("starts start begins begin bottoms tops stops stop ends goes down up out reads maxes runs")

// counted are what is counted in a job and is no tightness.
var counted = set("clicks notches turns flats teeth threads miles hours minutes seconds weeks months years times degrees thou percent horses revs spokes links holes marks lines litres liters pints")

// unitByItself tells whether a unit said without a number is all that its sentence says.
func (r *reading) unitByItself(u quantity) bool {
	return u.lo > 0 && r.toks[u.lo-1].brk >= brkComma && r.toks[u.hi-1].brk >= brkComma
}

// readInRow tells whether a number is the next of values that are read off one after the
// other, each told right after the name of what it is for: "caliper bolts, eighteen
// newton metres. Hub nut, forty eight. Tie rod, thirty."
func (r *reading) readInRow(lo, hi int, last *quantity) bool {
	if lo-last.hi > 10 || r.toks[hi-1].brk < brkComma || !r.rightAfterName(lo) || !r.rightAfterName(last.lo) || !r.onlyValuesSince(last.hi, lo) {
		return false
	}
	for i := last.lo; i >= max(0, last.lo-60); i-- {
		if w := r.toks[i].s; documents.has(w) || readsOff.has(w) || torqueWords.has(w) {
			return true
		}
	}
	return false
}

// readsOff are the words by which values are read off or gone through in a row.
var readsOff = set("reading list lid written wrote numbers figures values round rounds row torque torques")

// rightAfterName tells whether token i stands right after a name that begins its sentence.
func (r *reading) rightAfterName(i int) bool {
	k := i - 1
	for k > 0 && i-k <= 3 && (linking.has(r.toks[k].s) || getting.has(r.toks[k].s) || r.toks[k].s == "only" || r.toks[k].s == "just") {
		k--
	}
	if k < 0 || r.toks[k].men < 0 || r.toks[k].brk >= brkSentence {
		return false
	}
	m := &r.mentions[r.toks[k].men]
	if m.kind&(lexicon.Fastener|lexicon.Part) == 0 {
		return false
	}
	k = m.from
	for k > 0 && m.from-k <= 2 && r.toks[k-1].brk < brkSentence && openers.has(r.toks[k-1].s) {
		k--
	}
	return k == 0 || r.toks[k-1].brk >= brkComma
}

// answers tells whether a number is all of an answer to what a document or somebody
// says: "Sheet says? Six to eight."
func (r *reading) answers(ci, lo, hi int) bool {
	c := &r.clauses[ci]
	if ci == 0 || lo != c.lo || hi != c.hi {
		return false
	}
	p := &r.clauses[ci-1]
	if p.mood&asked == 0 || r.since(p.lo, lo) > 8 {
		return false
	}
	doc := false
	for i := p.lo; i < p.hi; i++ {
		w := r.toks[i].s
		doc = doc || documents.has(w) || w == "torque" || w == "tight"
	}
	return doc
}

// sameInAnother gives the unit in which a number comes to the value said right
// before it: "fifty inch pounds, which is five and a half or so".
func (r *reading) sameInAnother(ci int, n normalize.Number, lo int, said []quantity) quantity {
	var last *quantity
	for _, qi := range r.clauses[ci].qtys {
		if q := &r.qtys[qi]; q.Kind == normalize.Torque && q.Low != nil && q.hi <= lo {
			last = q
		}
	}
	if last == nil && len(said) > 0 {
		last = &said[len(said)-1]
	}
	if last == nil || lo-last.hi > 7 || r.since(last.hi, lo) > 5 {
		return quantity{}
	}
	same := false
	for i := last.hi; i < lo; i++ {
		switch r.toks[i].s {
		case "which", "that's", "about", "or", "call", "makes", "equals", "roughly", "is":
			same = true
		}
	}
	if !same {
		return quantity{}
	}
	for _, unit := range []string{"N.m", "lbf.ft", "lbf.in"} {
		if unit == last.Unit {
			continue
		}
		if v, ok := normalize.Convert(last.Low, last.Unit, unit); ok && near(v, n.Low, 6) {
			return quantity{Quantity: normalize.Quantity{Unit: unit}, unitFrom: Heard(last.Canonical) + ", which comes to it in " + Heard(unit)}
		}
	}
	return quantity{}
}

// compare is a.Cmp of a whole number, which costs next to nothing where a is whole too.
func compare(a *big.Rat, n int64) int {
	if a.IsInt() && a.Num().IsInt64() {
		return cmp.Compare(a.Num().Int64(), n)
	}
	return a.Cmp(big.NewRat(n, 1))
}

// near tells whether two values differ by no more than percent of the second.
func near(a, b *big.Rat, percent int64) bool {
	d := new(big.Rat).Sub(a, b)
	return d.Abs(d).Cmp(new(big.Rat).Mul(b, big.NewRat(percent, 100))) <= 0
}

// toldBare tells whether a number is told of something as its value is: "it's
// fifty two", "this guy here, forty".
func (r *reading) toldBare(ci, lo, hi int) bool {
	c := &r.clauses[ci]
	if hi < c.hi && r.toks[hi-1].brk < brkComma && !afterValue.has(r.toks[hi].s) {
		return false
	}
	if lo == c.lo {
		return hi == c.hi && r.headed(ci, lo)
	}
	w := r.toks[lo-1].s // "check it at fifteen" may be of thousands of miles
	return (getting.has(w) && w != "at" && w != "to" || giving.has(w) || r.toks[lo-1].brk >= brkComma) && (r.saidOf(c, lo, lexicon.Fastener|lexicon.Part) || pointsAt(r, c, lo) || r.torqueWrench(c, lo) || giving.has(w) && pointsAt(r, &clause{lo: hi, hi: c.hi, found: &nothing}, c.hi))
}

// torqueWrench tells whether a clause names the torque wrench before token i:
// "then the torque wrench, forty".
func (r *reading) torqueWrench(c *clause, i int) bool {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.hi <= i && m.kind&lexicon.Tool != 0 && strings.Contains(m.name, "torque") {
			return true
		}
	}
	return false
}

// pointsAt tells whether a clause points at something before token i: "this guy here".
func pointsAt(r *reading, c *clause, i int) bool {
	for k := c.lo; k < i; k++ {
		switch r.toks[k].s {
		case "guy", "one", "this", "that", "these", "those", "here":
			return true
		}
	}
	return false
}

// standsBare tells whether the number at the tokens lo to hi counts nothing and is no size.
func (r *reading) standsBare(c *clause, lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if r.toks[i].qty >= 0 || r.toks[i].men >= 0 {
			return false
		}
	}
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.from < hi && m.hi > lo {
			return false
		}
	}
	if lo > c.lo && countBefore.has(r.toks[lo-1].s) && !(r.toks[lo].s == "hundred" || r.toks[lo-1].s == "a" && r.word(lo) == "hundred") && !(r.toks[lo-1].s == "one" && lo-2 >= c.lo) && !(r.toks[lo-1].s == "only" && getting.has(r.word(lo-2))) {
		return false
	}
	switch w, next := r.word(hi), r.word(hi+1); {
	case w == "to" && (next == "one" || next == "1"):
		return false // "a multiplier, four to one"
	case (w == "by" || w == "with") && (next == "hand" || next == "fingers") || w == "finger" && next == "tight" || w == "fingers":
		return false // "and the nuts, eighteen, by hand"
	}
	if hi < c.hi {
		if r.toks[hi].qty >= 0 || r.toks[hi].men >= 0 || r.toks[hi-1].brk == brkNone && !afterValue.has(r.toks[hi].s) {
			return false
		}
	}
	return true
}

// meantTight tells whether the talk around a bare number is of how tight
// something is, and whether it says that this is another thing than before. few
// tells that the number is one to count with, noSize that no spanner is that wide, again
// that it was a value before.
func (r *reading) meantTight(ci, lo, hi int, last *quantity, few, noSize, again bool) (tight, another bool) {
	c := &r.clauses[ci]
	prev := func(k int) string {
		if lo-k < c.lo {
			return ""
		}
		return r.toks[lo-k].s
	}
	// "torque them to ninety", "the wrench is set to ninety"
	cue, wrench, doc := false, false, false
	for k := max(0, ci-1); k <= ci; k++ {
		b := &r.clauses[k]
		if k < ci && (b.sentence != c.sentence || r.since(b.lo, lo) > 8) {
			continue
		}
		for i := b.lo; i < b.hi; i++ {
			w := r.toks[i].s
			m := r.toks[i].men
			tool := m >= 0 && r.mentions[m].kind&lexicon.Tool != 0
			wrench = wrench || tool
			cue = cue || torqueWords.has(w) && (i < lo || i >= hi && !tool)
			doc = doc || documents.has(w)
		}
	}
	to := prev(1) == "to" || prev(1) == "at" || prev(1) == "for" || prev(1) == "on"
	switch {
	case cue && (to || prev(1) == "" || getting.has(prev(1)) || giving.has(prev(1)) || ofThat.has(prev(1))), prev(1) == "to" && prev(2) == "set", prev(1) == "at" && prev(2) == "set":
		return true, false
	}
	near := r.since(last.hi, lo)
	if near < 60 && !few && r.endsStage(c, hi) && r.nextStage(c, last, lo) {
		return true, true // "fifteen newton metres first time round. Then thirty two."
	}
	if w := r.word(hi); near < 60 && (w == "on" || w == "for") && hi+1 < c.hi && r.namedAt(c, hi+1, lexicon.Fastener) && giving.has(prev(1)) {
		return true, true // "on the stem it says 6 on the steerer bolts"
	}
	if w := prev(1); near < 240 && (w == "get" || w == "gets" || w == "want" || w == "takes" || w == "take") && (prev(2) == "they" || prev(2) == "these" || prev(2) == "those" || prev(2) == "all") && (hi == c.hi || r.toks[hi-1].brk >= brkComma) && r.runDown(ci, lo) {
		return true, true // "the nine screws go back, first all with the fingers. And then they get ten."
	}
	if near < 90 && r.oneAfterAnother(ci, lo, hi, few) {
		return true, true // "Three bolts. Ten."
	}
	if r.word(hi) == "again" && !again || near > 40 || r.ofSomethingElse(last.cl, ci) || r.measuredSince(last.hi, lo) || r.ofMoney(ci) {
		return false, false
	}
	if doc && (giving.has(prev(1)) || prev(1) == "for" && giving.has(prev(2)) || prev(1) == "sticker" || prev(1) == "'s" || prev(1) == "is" || prev(1) == "got") {
		return true, true
	}
	if prev(1) == "says" && near < 15 && (prev(2) == "it" || prev(2) == "that" || prev(2) == "this" || prev(2) == "mine" || prev(2) == "yours") {
		return true, true // "fifty five newton metres, I read it … It says forty"
	}
	if wrench {
		return false, false
	}
	next := func(k int) string {
		if hi+k >= c.hi {
			return ""
		}
		return r.toks[hi+k].s
	}
	toThing := func() bool {
		w := next(1)
		return ofThat.has(w) || w == "the" && (placeWords.has(next(2)) || next(2) == "rest" || next(2) == "others") || hi+1 < c.hi && r.namedAt(c, hi+1, lexicon.Fastener|lexicon.Part)
	}
	switch {
	case (next(0) == "on" || next(0) == "for") && toThing(), next(0) == "each", next(0) == "apiece", next(0) == "again", prev(1) == "again" && prev(2) == "same":
		return true, true
	case near < 40 && r.aPattern(hi) && !r.aSizeBefore(lo):
		return true, true // "wheel on. Ninety five, in a star"
	case noSize && (hi == c.hi || r.toks[hi-1].brk >= brkComma) && (prev(1) == "one" || prev(1) == "ones" || prev(1) == "rest" || prev(1) == "others") && lo-c.lo <= 4:
		return true, true // "the big one forty two"
	case next(0) == "there" && (hi+1 == c.hi || r.toks[hi].brk > brkNone || next(1) == "and"):
		return true, false
	case sayingMine.has(prev(1)) && !(few && next(0) == "first") && (prev(2) == "i" || prev(2) == "'m" || prev(2) == "'ve" || prev(2) == "we" || prev(2) == "'re" || prev(2) == "i'm" || prev(2) == "'ll" || prev(2) == "will" || prev(2) == "gonna"):
		return true, false
	case noSize && prev(1) == "make" && prev(2) == "i" && (hi == c.hi || r.toks[hi-1].brk >= brkComma || afterValue.has(next(0))):
		return true, false // "mine goes to a hundred, so I make one hundred now"
	}
	if prev(1) == "same" && near < 60 || c.hi-c.lo == hi-lo && near < 20 && r.headed(ci, lo) {
		return true, true // "that's the same nineteen", "Now the pivot. Sixty five."
	}
	k := lo - 1
	for k > c.lo && inPassing.has(r.toks[k].s) {
		k--
	}
	switch {
	case k >= c.lo && getting.has(r.toks[k].s) && lo-c.lo <= 9 && r.saidOf(c, lo, lexicon.Fastener):
		counting := r.toks[k].s == "'s" && k > c.lo && (r.toks[k-1].s == "that" || r.toks[k-1].s == "there") && few
		return !counting, false // "they are also ten", "that's gonna be sixty five"; not "that's three"
	case lo > 0 && r.toks[lo-1].brk >= brkComma && r.toks[hi-1].brk >= brkComma && near < 20 && r.endsInFastener(c, lo):
		return !r.valueNext(ci), true // "this is the plug, twenty"; not "that nut, thirteen, that's only fifteen"
	case (hi == c.hi || next(0) == "and" || next(0) == "plus") && r.didThose(c, lo):
		return true, false // "flywheel bolts, i did those last night, fifty four"
	}
	ends := hi == c.hi || r.toks[hi-1].brk >= brkComma || afterValue.has(next(0)) || countOf[next(0)] > 0 && next(1) == "of" || next(0) == "in" && (next(1) == "whatever" || next(1) == "a" || next(1) == "any")
	if noSize && ends && k >= c.lo && r.toks[k].men >= 0 && r.toks[k].brk < brkComma && r.mentions[r.toks[k].men].kind&lexicon.Fastener != 0 {
		return true, true // "wheel nuts a hundred and ten, and then round in a star"
	}
	if near < 25 && !few && ends && r.onlyValuesSince(last.hi, lo) {
		if k >= c.lo && getting.has(r.toks[k].s) && lo-c.lo <= 9 && r.saidOf(c, k, lexicon.Fastener|lexicon.Part) {
			return true, false // "compressor to bracket that's eighteen", "and it's thirty two"
		}
		if k >= c.lo && r.toks[k].men >= 0 && r.toks[k].brk < brkComma && r.mentions[r.toks[k].men].kind&(lexicon.Fastener|lexicon.Part) != 0 {
			return true, false // "bracket to block thirty three"
		}
	}
	// taken back, or told again: "Twelve. It is twelve newton metre", "No. Nine."
	if hi-lo >= c.hi-c.lo-2 && near < 30 {
		for i := last.hi; i < lo; i++ {
			switch r.toks[i].s {
			case "sorry", "no", "nope", "apologise", "apologize", "lie", "wait", "correction":
				return true, false
			}
		}
	}
	return false, false
}

// stages are the words of tightening that is done in more than one go.
var stages = set("goes passes stages rounds steps bites times round time pass go stage step sweep sweeps")

// goNumber are the words that tell one go from another, 0 where they give no number.
var goNumber = map[string]int{"first": 1, "second": 2, "third": 3, "fourth": 4, "next": 0, "then": 0, "last": 0, "final": 0, "finally": 0}

// besideStage are the words that stand beside those in front of a stage's value.
var besideStage = set("and the up to time round go pass stage step one it 's is around on at we i take you goes that")

// nextStage tells whether what stands before a number at token lo in its clause, after
// the value before where that is there too, only says that it is the next go of that
// tightening: "Step two, thirty", "then forty, then eighty", or, where as many goes
// were announced, nothing at all.
func (r *reading) nextStage(c *clause, last *quantity, lo int) bool {
	next, then, told := false, false, false
	for i := max(c.lo, last.hi); i < lo; i++ {
		w := r.toks[i].s
		n, ordinal := goNumber[w]
		switch {
		case ordinal && n != 1:
			next = true
		case i > c.lo && stages.has(r.toks[i-1].s) && (countOf[w] > 1 || w == "2" || w == "3" || w == "4"):
			next = true // "step two"
		case besideStage.has(w):
		default:
			return false
		}
		then, told = w == "then", true
	}
	if then && lo-last.hi <= 3 && r.toks[last.hi-1].brk < brkSentence {
		return true // "twenty newton metres, then forty"
	}
	if told && !next {
		return false
	}
	if told && r.word(last.hi) == "first" {
		return true // "fifty inch pounds first. … Then a hundred"
	}
	for i := max(1, last.lo-25); i < lo; i++ {
		if !stages.has(r.toks[i].s) && !(r.toks[i].s == "one" && r.toks[i-1].s == "first") {
			continue
		}
		p, n := r.toks[i-1].s, r.word(i+1)
		switch {
		case countOf[p] > 1 && (told || i < last.lo && lo-last.hi <= 6):
			return true // "in three goes"
		case told && (p == "first" || p == "in" || n == "one" || n == "1"):
			return true
		}
	}
	return false
}

// oneAfterAnother tells whether a number that is all of its sentence is how tight the
// fasteners just named are: "And the two sixes. Ten. All three, ten.", "Three bolts. Ten."
func (r *reading) oneAfterAnother(ci, lo, hi int, few bool) bool {
	c := &r.clauses[ci]
	if lo != c.lo || hi != c.hi || ci == 0 || r.toks[hi-1].brk < brkSentence || r.toks[lo-1].brk < brkComma {
		return false
	}
	p := &r.clauses[ci-1]
	if r.since(p.lo, lo) > 11 || p.mood&(asked|other|conditional|negated) != 0 {
		return false
	}
	counted := false
	for k := ci - 1; k >= max(0, ci-5) && r.since(r.clauses[k].lo, lo) < 24; k-- {
		b := &r.clauses[k]
		for i := b.lo; i < b.hi && k == ci-1; i++ {
			if _, ok := pluralSize[r.toks[i].s]; ok {
				counted = true // "and the two sixes"
			}
		}
		for _, mi := range b.mentions {
			m := &r.mentions[mi]
			counted = counted || m.kind&lexicon.Fastener != 0 && m.kind&lexicon.Tool == 0 && (k == ci-1 || m.prep == "")
			if m.kind&lexicon.Tool != 0 && m.kind&(lexicon.Part|lexicon.Fastener) == 0 {
				return false // what turns it has a size
			}
		}
		for _, ai := range b.acts {
			switch ledgerActs[r.acts[ai].action.Name] {
			case Removed, Loosened:
				if r.acts[ai].verb >= 0 || r.saidIn(b, "off") || r.saidIn(b, "out") {
					return false
				}
			}
		}
	}
	if !counted {
		return false
	}
	// told again, or done, right after; else it has to be what goes on
	for i := hi; i < min(len(r.toks), hi+14) && r.since(hi-1, i) < 8; i++ {
		if w := r.toks[i].s; w == "click" || w == "clicks" || w == r.toks[lo].s && hi-lo == 1 {
			return true
		}
	}
	if few {
		return false
	}
	for k := ci - 1; k >= max(0, ci-4) && r.since(r.clauses[k].lo, lo) < 24; k-- {
		for _, ai := range r.clauses[k].acts {
			if n := r.acts[ai].action.Name; n == "fit" || n == "start by hand" || n == "tighten" || n == "torque" {
				return true
			}
		}
		if b := &r.clauses[k]; r.toks[b.hi-1].s == "on" || r.toks[b.hi-1].s == "in" || r.saidIn(b, "back") {
			return true // "valve cover on"
		}
	}
	return false
}

// endsStage tells whether nothing more is said of a number before token hi than which
// go it is of.
func (r *reading) endsStage(c *clause, hi int) bool {
	if hi >= c.hi || r.toks[hi-1].brk >= brkComma {
		return true
	}
	if r.toks[hi].s == "on" || r.toks[hi].s == "for" {
		hi++
	}
	if r.word(hi) == "the" {
		hi++
	}
	_, ok := goNumber[r.word(hi)]
	return ok
}

// aPattern tells whether the words from token i on tell the order of tightening.
func (r *reading) aPattern(i int) bool {
	for k := i; k < min(len(r.toks), i+4) && (k == i || r.toks[k-1].brk < brkSentence); k++ {
		switch r.toks[k].s {
		case "in", "a", "and", "all":
		case "star", "cross", "crosswise", "diagonally", "crisscross", "evenly":
			return true
		default:
			return false
		}
	}
	return false
}

// valueNext tells whether the clause after one, in its sentence, gives "that" a number of its own.
func (r *reading) valueNext(ci int) bool {
	if ci+1 >= len(r.clauses) || r.clauses[ci+1].sentence != r.clauses[ci].sentence {
		return false
	}
	n := &r.clauses[ci+1]
	return ofThat.has(r.toks[n.lo].s) && linking.has(r.word(n.lo+1)) && len(r.numbersOf(n.lo, n.hi)) == 1
}

// runDown tells whether fasteners were put in or run down by hand in the clauses right before one.
func (r *reading) runDown(ci, at int) bool {
	for k := ci; k >= max(0, ci-3) && r.since(r.clauses[k].lo, at) < 15; k-- {
		for _, mi := range r.clauses[k].mentions {
			if m := &r.mentions[mi]; m.lo < at && m.kind&lexicon.Fastener != 0 && (m.plural || m.count > 1) {
				return true
			}
		}
	}
	return false
}

// aSizeBefore tells whether the number at token i was said before as a size: "lock
// nuts on the adjusters, thirteen again".
func (r *reading) aSizeBefore(i int) bool {
	if r.sizeWords == nil {
		r.sizeWords = map[string]int{}
		for j := range r.toks {
			if m := r.toks[j].men; !(m >= 0 && r.mentions[m].kind&lexicon.Tool != 0) && r.toks[j].s != "mil" && r.toks[j].s != "mm" {
				continue
			}
			for k := max(0, j-2); k < j; k++ {
				if _, ok := r.sizeWords[r.toks[k].s]; !ok {
					r.sizeWords[r.toks[k].s] = j
				}
			}
		}
	}
	at, ok := r.sizeWords[r.toks[i].s]
	return ok && at < i
}

// measuredSince tells whether something else than tightness was last told with its
// unit between two tokens: "it's out about eight thousandths. … It was three."
func (r *reading) measuredSince(lo, hi int) bool {
	for i := hi - 1; i >= lo; i-- {
		q := r.toks[i].qty
		if q < 0 {
			continue
		}
		switch r.qtys[q].Kind {
		case normalize.Length, normalize.Pressure, normalize.Volume, normalize.Mass, normalize.Temperature, normalize.Speed, normalize.Distance:
			return true
		}
		return false
	}
	return false
}

// ofMoney tells whether a clause or the one before speaks of what something costs.
func (r *reading) ofMoney(ci int) bool {
	for k := max(0, ci-1); k <= ci; k++ {
		c := &r.clauses[k]
		for i := c.lo; i < c.hi; i++ {
			if w := r.toks[i].s; money.has(w) && w != "come" && w != "comes" && w != "came" && w != "charge" && w != "charged" || coins.has(w) {
				return true
			}
		}
	}
	return false
}

var coins = set("rupees rupee quid euros euro dollars dollar bucks buck cents pence naira rand shillings kroner francs yen pesos")

// onlyValuesSince tells whether no size and no tool was named between two tokens:
// a number there is more likely to be of how tight than of how large.
func (r *reading) onlyValuesSince(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if q := r.toks[i].qty; q >= 0 && r.qtys[q].Kind != normalize.Torque {
			return false
		}
		if m := r.toks[i].men; m >= 0 && r.mentions[m].kind&lexicon.Tool != 0 && r.mentions[m].kind&(lexicon.Part|lexicon.Fastener) == 0 {
			return false
		}
	}
	return true
}

var notTightness = set("oil air pressure level gap play clearance fluid coolant volume psi sag slack height distance depth")

// ofSomethingElse tells whether the clauses from lo to hi, those that are near hi, speak
// of an amount that is no tightness.
func (r *reading) ofSomethingElse(lo, hi int) bool {
	for ci := hi; ci >= lo && r.since(r.clauses[ci].lo, r.clauses[hi].lo) < 15; ci-- {
		c := &r.clauses[ci]
		for i := c.lo; i < c.hi; i++ {
			if notTightness.has(r.toks[i].s) && r.toks[i].men < 0 {
				return true // but "pressure line" names a part, "a smear of oil" what goes on it
			}
		}
	}
	return false
}

// headed tells whether the clause before does nothing but name a thing.
func (r *reading) headed(ci, at int) bool {
	if ci == 0 {
		return false
	}
	p := &r.clauses[ci-1]
	return len(p.mentions) == 1 && len(p.acts) == 0 && p.hi-p.lo <= 5 && p.mood == 0 && r.since(p.lo, at) < 6 && r.mentions[p.mentions[0]].kind&(lexicon.Fastener|lexicon.Part) != 0
}

// inPassing are words that stand between "they are" and their value.
var inPassing = set("also only just about around all both gonna going be still only well like roughly")

// endsInFastener tells whether the talk before token i, in its sentence, ends in the name of something that is tightened.
func (r *reading) endsInFastener(c *clause, i int) bool {
	m := r.toks[i-1].men
	return m >= 0 && r.clauses[r.mentions[m].cl].sentence == c.sentence && r.mentions[m].kind&lexicon.Fastener != 0
}

// didThose tells whether the clause says before token i that fasteners were done: "i did those last night".
func (r *reading) didThose(c *clause, i int) bool {
	did := false
	for k := c.lo; k < i; k++ {
		w := r.toks[k].s
		if w == "did" || w == "done" || w == "doing" || w == "do" {
			did = true
		} else if did && (ofThat.has(w) || w == "them") {
			return true
		}
	}
	return false
}

// namedAt tells whether a thing of the kind is named from token i on.
func (r *reading) namedAt(c *clause, i int, kind lexicon.Kind) bool {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.from <= i && i < m.hi {
			return m.kind&kind != 0
		}
	}
	return false
}

// saidOf tells whether what stands before token i in its clause is a thing of the kind, or a word that may stand for one.
func (r *reading) saidOf(c *clause, i int, kind lexicon.Kind) bool {
	for k := i - 1; k >= c.lo; k-- {
		if m := r.toks[k].men; m >= 0 {
			return r.mentions[m].kind&kind != 0
		}
		if w := r.toks[k].s; ofThat.has(w) || w == "ones" || w == "one" || w == "two" {
			return true
		}
	}
	return false
}
