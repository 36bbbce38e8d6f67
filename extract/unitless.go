package extract

import (
	"cmp"
	"math"
	"math/big"
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// unitless gives the numbers that tell how tight something is and were said without their
// unit the likeliest of the units that the talk has: "those two were a hundred and seven",
// "it's fifty two. … Newton metre, yes." They say so. Where the talk has no unit, they have
// none, and it is asked after.
func (r *reading) unitless() {
	u := r.unitsHeard()
	var found []quantity
	as := func(f *bareNumber, q normalize.Quantity) quantity {
		base := int(r.toks[r.clauses[f.cl].lo].lo)
		q.Start, q.End = base+f.Start, base+f.End
		return quantity{Quantity: q, lo: f.lo, hi: f.hi, cl: f.cl}
	}
	for i := range r.bare {
		f := &r.bare[i]
		if f.is != howTight {
			continue
		}
		if len(u.units) == 0 {
			g := as(f, f.In(normalize.Torque, ""))
			g.Canonical = strings.TrimSpace(g.Canonical)
			found = append(found, g)
			continue
		}
		u.before(f.lo)
		if a := r.angleOver(f, found, u); a != nil {
			found = append(found, as(f, f.In(normalize.Angle, a.Unit)))
			continue
		}
		best, other := u.weigh(f)
		g := as(f, f.In(normalize.Torque, best.unit))
		g.unitFrom = best.from
		if best.weight-other.weight < sureOfUnit {
			g.unitOr = other.unit
		}
		found = append(found, g)
		u.tell(g)
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
		for _, ai := range c.acts {
			if a := &r.acts[ai]; a.rule == namedWithTool && a.lo <= q.lo && q.lo < a.hi {
				a.mood |= framed // "caliper bolts, thirty" is how tight they go, not what turns them
			}
		}
	}
}

// angleOver gives the angle that was told last, where a number is told over against it and so is
// one too: "the book says ninety degrees, and the sheet in the box says seventy-five"; nil where
// it is none.
func (r *reading) angleOver(f *bareNumber, found []quantity, u *heardUnits) *quantity {
	if compare(f.Low, 30) < 0 || compare(f.High, 180) > 0 {
		return nil
	}
	says := false
	for i := f.lo - 1; i >= max(0, f.lo-8) && !says; i-- {
		says = giving.has(r.toks[i].s)
	}
	if !says {
		return nil
	}
	var a *quantity
	for i := u.qtys - 1; i >= 0; i-- {
		if q := &r.qtys[i]; q.Kind == normalize.Angle || q.Kind == normalize.Torque {
			a = q
			break
		}
	}
	if n := len(found); n > 0 && (a == nil || found[n-1].lo > a.lo) {
		a = &found[n-1]
	}
	if a == nil || a.Kind != normalize.Angle || r.since(a.hi, f.lo) > 75 || r.saidBetween(max(0, a.lo-4), a.lo, "back") {
		return nil
	}
	for i := range u.said {
		if u.said[i].Low.Cmp(f.Low) == 0 {
			return nil
		}
	}
	for i := a.hi; i < f.lo; i++ {
		if m := r.toks[i].men; m >= 0 && r.mentions[m].kind&lexicon.Fastener != 0 && r.opens(&r.clauses[r.toks[i].cl], &r.mentions[m]) {
			return nil // the talk went on to another
		}
	}
	return a
}

// The signs of a unit. What each is worth is in unitWorth.
type unitSign int

const (
	unitAfter    unitSign = iota // it is said by itself right after: "forty. Newton metres."
	unitAheadNow                 // it was said by itself right before
	unitAhead                    // the same, longer ago, and no value since
	unitOfList                   // it was said of all values of a list
	numberLately                 // that number was said in it a minute ago or less
	numberBefore                 // the same, longer ago
	numberGiven                  // that number was taken to be in it
	numberSoon                   // that number is said in it right after
	numberLater                  // the same, later
	comesTo                      // in it the number comes to a value right before, and the talk says so
	comesNear                    // in it the number comes to a value of the last minute
	comesAfter                   // in it the number comes to a value told right after
	lastUnit                     // the last value is in it
	lastSaid                     // the last value that had its unit had it
	pairFirst                    // the last value was told in two units, in it first
	nextUnit                     // the next value, in the same breath, is in it
	neverSaid                    // nobody says it
	farOff                       // in it the value is as many doublings off what was told lately
	farNow                       // the same, off what was told right before
	absurd                       // in it the value is for no fastener
	notThread                    // in it the value is too much or too little for the thread or head named by it
	unitSigns
)

// unitWorth is how much each sign speaks for a unit. Fitted on talk of which it was judged which
// units its values are in (unitless_test.go), and rounded.
var unitWorth = [unitSigns]float64{
	unitAfter: 4, unitAheadNow: 3.5, unitAhead: 0.5, unitOfList: 1,
	numberLately: 3.5, numberBefore: 2, numberGiven: 1, numberSoon: 4.5, numberLater: 2,
	comesTo: 4.5, comesNear: 0.8, comesAfter: 3,
	lastUnit: 1.5, lastSaid: 1, pairFirst: 3, nextUnit: 1,
	neverSaid: -2, farOff: -0.3, farNow: -0.3, absurd: -2, notThread: -1.5,
}

// sureOfUnit is how much more must speak for a unit than for another, so that none asks which.
const sureOfUnit = 0.7

// unitClaim is what speaks for one unit of a number.
type unitClaim struct {
	unit   string
	weight float64
	from   string // what it is taken from, and how much that says
	most   float64
}

func (c *unitClaim) add(s unitSign, n float64) {
	c.weight += n * unitWorth[s]
}

// tell is add of a sign that the talk gives by some words or value.
func (c *unitClaim) tell(s unitSign, from string) {
	c.add(s, 1)
	if w := unitWorth[s]; w > c.most {
		c.from, c.most = from, w
	}
}

// heardUnits is what is known of the units of torque while the talk is followed.
type heardUnits struct {
	r      *reading
	units  []string        // that are said, and those that people use without saying so
	spoken map[string]bool // those that are said
	said   []quantity      // the values so far, with their unit or with the one they were given
	qtys   int             // the quantities so far
	first  int             // the first value with its unit, -1 where there is none
	alone  []quantity      // the units said by themselves that are still to come
	ahead  quantity        // one that was said since the last value
	list   quantity        // one said for all values of a list
	of     map[int64][]int // where each number is said with its unit
	given  map[int64]int   // where among those each number was last given one
	claims []unitClaim
}

// unitsHeard gives what is known before any value.
func (r *reading) unitsHeard() *heardUnits {
	u := &heardUnits{r: r, first: -1, alone: r.unitsAlone(), spoken: map[string]bool{}, of: map[int64][]int{}, given: map[int64]int{}}
	for i := range r.qtys {
		if q := &r.qtys[i]; q.Kind == normalize.Torque && q.Low != nil {
			if u.first < 0 {
				u.first = i
			}
			u.spoken[q.Unit] = true
			u.of[keyOf(q.Low)] = append(u.of[keyOf(q.Low)], i)
		}
	}
	for i := range u.alone {
		u.spoken[u.alone[i].Unit] = true
	}
	if len(u.spoken) == 0 {
		return u
	}
	u.units = []string{"N.m", "lbf.ft", "lbf.in"}
	for _, other := range []string{"kgf.m", "kgf.cm", "ozf.in", "cN.m", "kN.m"} {
		if u.spoken[other] {
			u.units = append(u.units, other)
		}
	}
	return u
}

// before goes on to a token.
func (u *heardUnits) before(lo int) {
	r := u.r
	for ; u.qtys < len(r.qtys) && r.qtys[u.qtys].lo < lo; u.qtys++ {
		if q := r.qtys[u.qtys]; q.Kind == normalize.Torque && q.Low != nil {
			u.said = append(u.said, q)
		}
	}
	for len(u.alone) > 0 && u.alone[0].lo < lo {
		if u.ahead = u.alone[0]; r.ofWholeList(&r.clauses[u.ahead.cl], u.ahead) {
			u.list = u.ahead
		}
		u.alone = u.alone[1:]
	}
	if n := len(u.said); n > 0 && u.said[n-1].lo > u.ahead.lo {
		u.ahead = quantity{}
	}
}

// tell adds a value with the unit that it was given.
func (u *heardUnits) tell(q quantity) {
	u.given[keyOf(q.Low)] = len(u.said)
	u.said = append(u.said, q)
}

// mayBe tells whether a unit is said, or goes without saying: who reads kilograms out of an old
// book has a newer wrench.
func (u *heardUnits) mayBe(unit string) bool {
	return u.spoken[unit] || unit == "N.m" && (u.spoken["kgf.m"] || u.spoken["kgf.cm"])
}

// kilograms are the units of old books, which nobody takes for ten times as much.
var kilograms = map[string]bool{"kgf.m": true, "kgf.cm": true}

// comes are words by which a value is told again in another unit, comesSurely those that say
// little else: "which is", "call it".
var (
	comes       = set("which 's that about or call makes equals roughly is same times")
	comesSurely = set("which about call makes equals roughly")
)

// weigh gives the unit for which most speaks, and the next.
func (u *heardUnits) weigh(f *bareNumber) (best, other *unitClaim) {
	r := u.r
	u.claims = u.claims[:0]
	for _, unit := range u.units {
		u.claims = append(u.claims, unitClaim{unit: unit})
	}
	of := func(unit string) *unitClaim {
		for i := range u.claims {
			if u.claims[i].unit == unit {
				return &u.claims[i]
			}
		}
		return &unitClaim{} // one that cannot be turned into another
	}
	// what is said by itself
	if len(u.alone) > 0 && u.alone[0].lo-f.hi <= 8 && r.since(f.lo, u.alone[0].lo) < 25 && u.noOther(f, u.alone[0].lo) {
		of(u.alone[0].Unit).tell(unitAfter, u.alone[0].unitFrom)
	}
	if q := &u.ahead; q.Unit != "" {
		if c := of(q.Unit); f.lo-q.hi <= 12 {
			c.tell(unitAheadNow, q.unitFrom)
		} else {
			c.tell(unitAhead, q.unitFrom)
		}
	}
	if q := &u.list; q.Unit != "" {
		of(q.Unit).tell(unitOfList, q.unitFrom)
	}
	// that number, with its unit
	key := keyOf(f.Low)
	where := u.of[key]
	k, _ := slices.BinarySearchFunc(where, f.lo, func(i, lo int) int { return cmp.Compare(r.qtys[i].lo, lo) })
	if k > 0 {
		q := &r.qtys[where[k-1]]
		if c := of(q.Unit); r.since(q.hi, f.lo) < 60 {
			c.tell(numberLately, Heard(q.Canonical)+" heard near it")
		} else {
			c.tell(numberBefore, Heard(q.Canonical)+" heard before")
		}
	}
	if k < len(where) && !r.tooMuch(&r.qtys[where[k]]) {
		q := &r.qtys[where[k]]
		if c := of(q.Unit); r.since(f.hi-1, q.lo) < 15 {
			c.tell(numberSoon, Heard(q.Canonical)+" heard near it")
		} else {
			c.tell(numberLater, Heard(q.Canonical)+" heard later")
		}
	}
	if i, ok := u.given[key]; ok {
		of(u.said[i].Unit).tell(numberGiven, u.said[i].unitFrom)
	}
	// the values told before and after
	u.weighBefore(f, of)
	u.weighAfter(f, of)
	for i := range u.claims {
		c := &u.claims[i]
		switch {
		case u.spoken[c.unit]:
		case u.mayBe(c.unit):
			c.add(neverSaid, 0.5)
		default:
			c.add(neverSaid, 1)
		}
		nm, ok := normalize.ToNM(f.Low, c.unit)
		if !ok {
			continue
		}
		v, _ := nm.Float64()
		if u.ahead.Unit == "" { // else the talk turned to other things, another tool
			lately, now := u.off(f, v, 4, 90), u.off(f, v, 1, 15)
			if kilograms[c.unit] && lately > 2 {
				lately, now = 2*lately, 2*now // as like as not it is said in the unit of the wrench
			}
			c.add(farOff, lately)
			c.add(farNow, now)
		}
		if u.notFor(f, nm) {
			c.add(notThread, 1)
		}
		switch {
		case v < 0.3 || v > 900:
			c.add(absurd, 2)
		case v < 1 || v > 350:
			c.add(absurd, 1)
		}
	}
	best, other = &unitClaim{weight: math.Inf(-1)}, &unitClaim{weight: math.Inf(-1)}
	for i := range u.claims {
		switch c := &u.claims[i]; {
		case c.weight > best.weight:
			best, other = c, best
		case c.weight > other.weight:
			other = c
		}
	}
	return best, other
}

// noOther tells whether no other number than that one is said between it and token hi.
func (u *heardUnits) noOther(f *bareNumber, hi int) bool {
	for _, n := range u.r.numbersOf(f.hi, hi) {
		if n.Low == nil || n.Low.Cmp(f.Low) != 0 {
			return false
		}
	}
	return true
}

// weighBefore weighs the units of the values told before a number.
func (u *heardUnits) weighBefore(f *bareNumber, of func(string) *unitClaim) {
	r := u.r
	n := len(u.said)
	if n == 0 {
		return
	}
	last := &u.said[n-1]
	heard := Heard(last.Canonical) + " heard near it"
	if last.unitFrom != "" {
		heard = last.unitFrom
	}
	of(last.Unit).tell(lastUnit, heard)
	for i := n - 1; i >= 0; i-- {
		q := &u.said[i]
		if q.unitFrom != "" {
			continue
		}
		of(q.Unit).tell(lastSaid, Heard(q.Canonical)+" heard near it")
		if i == n-1 && i > 0 {
			if p := &u.said[i-1]; p.Unit != q.Unit && p.Low.Cmp(q.Low) != 0 && r.since(p.hi, q.lo) < 6 {
				of(p.Unit).tell(pairFirst, Heard(p.Canonical)+" heard near it")
			}
		}
		break
	}
	for i := n - 1; i >= max(0, n-4) && r.since(u.said[i].hi, f.lo) < 60; i-- {
		q := &u.said[i]
		again, surely := false, false
		if i == n-1 && f.lo-q.hi <= 16 && !r.nameIn(q.hi, f.lo) {
			for k := q.hi; k < f.lo; k++ {
				again = again || comes.has(r.toks[k].s)
				surely = surely || comesSurely.has(r.toks[k].s) && f.lo-q.hi <= 7
			}
		}
		for j := range u.claims {
			c := &u.claims[j]
			if c.unit == q.Unit {
				continue
			}
			v, ok := normalize.Convert(q.Low, q.Unit, c.unit)
			switch {
			case !ok:
			case (again && u.mayBe(c.unit) || surely || c.unit == "N.m" && kilograms[q.Unit]) && near(v, f.Low, 6):
				c.tell(comesTo, Heard(q.Canonical)+", which comes to it in "+Heard(c.unit))
			case u.mayBe(c.unit) && near(v, f.Low, 3):
				c.tell(comesNear, Heard(q.Canonical)+", which comes to it in "+Heard(c.unit))
			}
		}
	}
}

// weighAfter weighs the units of the values told after a number.
func (u *heardUnits) weighAfter(f *bareNumber, of func(string) *unitClaim) {
	r := u.r
	if len(u.said) == 0 && u.first >= 0 {
		q := &r.qtys[u.first]
		of(q.Unit).tell(lastUnit, Heard(q.Canonical)+" heard later")
	}
	for i := u.qtys; i < len(r.qtys) && r.qtys[i].lo-f.hi <= 8; i++ {
		q := &r.qtys[i]
		if q.Kind != normalize.Torque || q.Low == nil || r.tooMuch(q) {
			continue
		}
		if r.since(f.hi-1, q.lo) > 8 {
			return
		}
		if r.clauses[q.cl].sentence == r.clauses[f.cl].sentence {
			of(q.Unit).tell(nextUnit, Heard(q.Canonical)+" heard near it")
		}
		for j := range u.claims {
			c := &u.claims[j]
			if v, ok := normalize.Convert(q.Low, q.Unit, c.unit); ok && c.unit != q.Unit && near(v, f.Low, 4) {
				c.tell(comesAfter, Heard(q.Canonical)+", which comes to it in "+Heard(c.unit))
			}
		}
		return
	}
}

// off gives by how many doublings a number of newton metres is off the nearest of the last
// values, as many as that, told no more than so many seconds before.
func (u *heardUnits) off(f *bareNumber, nm float64, last int, seconds float64) float64 {
	least := 4.0
	for i := len(u.said) - 1; i >= max(0, len(u.said)-last) && u.r.since(u.said[i].hi, f.lo) < seconds; i-- {
		q := &u.said[i]
		if v, ok := normalize.ToNM(q.Low, q.Unit); ok {
			x, _ := v.Float64()
			least = min(least, math.Abs(math.Log2(nm/max(x, 1e-6))))
		}
	}
	return least
}

// notFor tells whether so many newton metres are too many or too few for the thread or the
// head that is named by a number.
func (u *heardUnits) notFor(f *bareNumber, nm *big.Rat) bool {
	r := u.r
	for i := f.lo - 1; i >= max(0, f.lo-25); i-- {
		if r.toks[i].qty < 0 {
			continue
		}
		q := &r.qtys[r.toks[i].qty]
		var of normalize.TorqueContext
		switch q.Kind {
		case normalize.Thread:
			of.Thread, _, _ = strings.Cut(q.Canonical, "x")
		case normalize.Size:
			if q.Unit != "mm" || q.Low == nil || compare(q.Low, 8) < 0 {
				continue // as like as not a key's
			}
			of.AcrossFlats = q.Canonical
		default:
			continue
		}
		return slices.ContainsFunc(normalize.CheckTorque(nm, nm, of), func(x normalize.Finding) bool { return x.What == "too-much" || x.What == "too-little" })
	}
	return false
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
			said := r.text(i, hi)
			if q := normalize.Quantities("1 " + said); len(q) == 1 && q[0].Kind == normalize.Torque && q[0].End == len(said)+2 {
				out = append(out, quantity{Quantity: q[0], lo: i, hi: hi, cl: int(r.toks[i].cl), unitFrom: "“" + said + "” heard near it"})
				i = hi - 1
				break
			}
		}
	}
	return out
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
var counted = set("clicks notches turns flats teeth threads miles hours minutes seconds weeks months years times degrees thou percent horses revs spokes links holes marks lines wraps litres liters pints stone kilo kilos kg tonne tonnes ton tons quid people volts amps watts")

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
var besideStage = set("and the up to time round go pass stage step one it 's is around on at i take you goes that")

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
		p, n := r.toks[i-1].s, r.next(i)
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

var coins = wordsOf("currencies")

// inPassing are words that stand between "they are" and their value.
var inPassing = set("also only just about around all both gonna going be still only well like roughly")
