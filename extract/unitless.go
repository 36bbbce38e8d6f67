package extract

import (
	"cmp"
	"math/big"

	"wrenchword/normalize"
)

// unitless gives the numbers that tell how tight something is and were said without their
// unit the unit that was heard near them: "those two were a hundred and seven", "it's fifty
// two. … Newton metre, yes." They say so. Where the talk has no unit, they stay bare.
func (r *reading) unitless() {
	late := r.unitsAlone()
	var list quantity   // the unit said for all values of a list, with an empty unit where none was
	var said []quantity // the torque values so far
	next := 0
	var found []quantity
	for i := range r.bare {
		f := &r.bare[i]
		if f.is != howTight {
			continue
		}
		for ; next < len(r.qtys) && r.qtys[next].lo < f.lo; next++ {
			if q := r.qtys[next]; q.Kind == normalize.Torque && q.Low != nil {
				q.unitFrom = Heard(q.Canonical) + " heard near it"
				said = append(said, q)
			}
		}
		for len(late) > 0 && late[0].lo < f.lo {
			if r.ofWholeList(&r.clauses[late[0].cl], late[0]) {
				list = late[0]
			}
			late = late[1:]
		}
		if of := r.unitOf(f, said, late, list); of.Unit != "" {
			q := f.In(normalize.Torque, of.Unit)
			base := int(r.toks[r.clauses[f.cl].lo].lo)
			q.Start, q.End = base+f.Start, base+f.End
			found = append(found, quantity{Quantity: q, lo: f.lo, hi: f.hi, cl: f.cl, unitFrom: of.unitFrom})
			if of.unitFrom != list.unitFrom {
				said = append(said, found[len(found)-1]) // a list has another column as well: its unit lends none
			}
		}
	}
	for _, q := range found {
		n := len(r.qtys)
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
	}
}

// unitOf gives the quantity or the unit by itself whose unit a bare number is in: the one
// said right after it, the other one where it is a value told again, the last one said, the
// list's, or else the first one to come.
func (r *reading) unitOf(f *bareNumber, said, late []quantity, list quantity) quantity {
	soon := len(late) > 0 && r.since(f.lo, late[0].lo) < 25
	if soon && late[0].lo-f.hi <= 8 && len(r.numbersOf(f.hi, late[0].lo)) == 0 {
		return late[0] // "a hundred and seven on those. Newton metres."
	}
	if of := r.sameInAnother(f.cl, f.Number, f.lo, said); of.Unit != "" {
		return of
	}
	switch {
	case len(said) > 0:
		return r.unitAt(said)
	case list.Unit != "":
		return list
	case soon:
		return late[0]
	}
	for i := range r.qtys {
		if q := r.qtys[i]; q.lo > f.lo && q.Kind == normalize.Torque && q.Low != nil {
			q.unitFrom = Heard(q.Canonical) + " heard later"
			return q
		}
	}
	return quantity{}
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

var (
	torqueWords = set("torque torqued torques torquing click clicks clicked clicking newton newtons")
	giving      = set("says say gives give calls wants reckons quotes lists shows")
)

// aNumber tells whether the word at token i says a number, or ends one.
func (r *reading) aNumber(i int) bool {
	w := r.word(i)
	return numberWord.has(w) || countOf[w] > 0 || w != "" && w[0] >= '0' && w[0] <= '9'
}

// wrenchEnds are the words for where the scale of a torque wrench begins or ends.
var wrenchEnds = set("starts start begins begin bottoms tops stops stop ends goes down up out reads maxes runs")

// counted are what is counted in a job and is no tightness.
var counted = set("clicks notches turns flats teeth threads miles hours minutes seconds weeks months years times degrees thou percent horses revs spokes links holes marks lines litres liters pints stone kilo kilos kg tonne tonnes ton tons quid people volts amps watts")

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

// inPassing are words that stand between "they are" and their value.
var inPassing = set("also only just about around all both gonna going be still only well like roughly")
