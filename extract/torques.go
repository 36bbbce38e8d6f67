package extract

import (
	"cmp"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
	"wrenchword/normalize"
)

// heard is a torque value with what it belongs to, found while the talk is followed.
type heard struct {
	qty     int
	of      *thing
	orOf    *thing // another that it may be for
	applied string
	hedged  bool
	angle   *big.Rat
	angleHi int  // token after the angle's last
	dropped bool // corrected later
	noun    int  // where it has no thing: one past the word that names it, which no list has; 0 where none does
	stage   int  // which go of a tightening in more than one, 0 where it is in one
	rule    string
	spoken  bool // only what was spoken of tells what it is for, or the value before
	source  SourceSaid
}

// inAnotherUnit is the rule of a value that only says the one before it again.
const inAnotherUnit = "the same value in another unit"

// ofDocument are the words after a document by which its figure is told: "the number on the sheet was two hundred".
var ofDocument = set("is 's was has 's had wants asks calls shows needs gives would")

// noneTold is the rule of a value that the talk gives to nothing.
const noneTold = "no fastener told"

// saying are the words with which a figure is told as a document's or somebody else's.
var saying = set("says say said gives reckons stands written wrote printed stamped reads lists quotes")

var documents = set(documentWords + " notes")

const documentWords = "manual book handbook leaflet sticker sheet spec chart instructions website internet page card paper papers diagram label decal forum photocopy printout scan pdf packet booklet pamphlet brochure poster drawing tag guide app listing"

// values links each torque value of a clause to the thing it belongs to.
func (s *tracker) values(ci int) {
	r := s.r
	c := &r.clauses[ci]
	var prev *heard
	read := c.lo
	for _, qi := range c.qtys {
		q := &r.qtys[qi]
		s.exchange(read, q.lo)
		read = q.hi
		if q.Kind == normalize.Angle || q.Kind == normalize.Turn {
			if q.Low == nil {
				continue
			}
			by := new(big.Rat).Set(q.Low)
			if q.Kind == normalize.Turn || q.Unit == "turn" {
				by.Mul(by, big.NewRat(360, 1))
			}
			if n := len(r.heard); n > 0 && q.lo-r.qtys[r.heard[n-1].qty].hi <= 9 && q.cl-r.qtys[r.heard[n-1].qty].cl <= 1 && r.heard[n-1].angle == nil && s.further(c, q) {
				r.heard[n-1].angle, r.heard[n-1].angleHi = by, q.hi
			} else if t := s.turnedOn(ci, q); t != nil && by.Cmp(big.NewRat(360, 1)) <= 0 {
				h := heard{qty: qi, of: t, rule: "turned on by so much", angle: by, angleHi: q.hi, hedged: q.Hedged || s.hedgedNear(ci, q), source: SourceSaid{Scope: scopeUnsaid}}
				h.applied = s.appliedIn(ci, q, &h)
				r.heard = append(r.heard, h)
				s.torqued(&r.heard[len(r.heard)-1], q.lo, q.hi)
			} else if b := s.angleTold(ci, q); b != nil && by.Cmp(big.NewRat(360, 1)) <= 0 {
				r.heard = append(r.heard, heard{qty: qi, of: b.of, spoken: b.spoken, stage: max(b.stage, 1) + 1, rule: "angle told for what the value before was for", angle: by, angleHi: q.hi, applied: "quoted", hedged: q.Hedged || s.hedgedNear(ci, q), source: SourceSaid{Scope: "unsaid"}})
			}
			continue
		}
		if q.Kind != normalize.Torque {
			continue
		}
		if c.mood&(aside|greeting) != 0 || s.notTightening(c, q) {
			continue
		}
		of := s.readOff(q)
		back := s.correct(q)
		h := heard{qty: qi, hedged: q.Hedged || s.hedgedNear(ci, q) || r.vague(q), source: SourceSaid{Scope: scopeUnsaid}}
		if h.of, h.rule = of, "said again after one read off for another"; of == nil {
			if b := r.goneWith(c, q); b != nil {
				h.of, h.rule, h.spoken = b.of, "one of the values told before", b.spoken
			} else {
				h.of, h.rule, h.orOf = s.valueFor(ci, q)
				h.spoken = spokenOfOnly[h.rule]
			}
		}
		rule := h.rule
		if b := s.ofExchanged(q); b != nil {
			h.of, h.rule, h.hedged, back = b.of, exchanged, true, nil
		}
		if back != nil && !toldWith[h.rule] {
			h.of, h.rule, h.spoken = back.of, "said in place of one taken back", back.spoken
		}
		if n := len(r.heard); n > 0 && !r.heard[n-1].dropped && r.heard[n-1].of != nil {
			b := &r.heard[n-1]
			if p := &r.qtys[b.qty]; r.since(p.hi, q.lo) < 60 && !r.namesSince(c, p.hi, q.lo) && less(p, q) && r.nextStage(c, p, q.lo) {
				h.of, h.rule, h.spoken, h.stage = b.of, "next stage of the value before", b.spoken, max(b.stage, 1)+1
			}
		}
		if n := len(r.heard); n > 0 && guesses[h.rule] && r.heard[n-1].of == nil && r.heard[n-1].noun == 0 && !r.heard[n-1].dropped && r.saidOver(&r.qtys[r.heard[n-1].qty], q) {
			h.of, h.rule, h.orOf, h.spoken = nil, r.heard[n-1].rule, nil, false
		}
		if prev != nil && (h.of == nil || r.qtys[prev.qty].Unit != q.Unit && s.pairOf(r.qtys[prev.qty].hi, q.lo)) {
			h.of, h.rule, h.spoken = prev.of, inAnotherUnit, prev.spoken
		}
		same := prev
		if n := len(r.heard); same == nil && n > 0 && r.sameOver(&r.qtys[r.heard[n-1].qty], q) {
			same = &r.heard[n-1]
			h.of, h.rule, h.spoken = same.of, inAnotherUnit, same.spoken
		}
		if h.of == nil {
			h.noun = r.unlistedOwner(ci, q)
		} else if guesses[h.rule] {
			if h.noun = r.unlistedBefore(q); h.noun > 0 {
				h.of = nil
			}
		}
		if h.noun > 0 {
			h.rule = "named by a word that no list has"
		}
		if n := r.goTold(c, q.lo); n > 0 {
			h.stage = n
		}
		s.nearerOne(ci, q, &h)
		if h.rule != rule {
			h.orOf = nil
		}
		if h.applied = s.weighApplied(ci, q, &h, s.appliedIn(ci, q, &h)); h.rule == inAnotherUnit && same != nil {
			h.applied = same.applied
		}
		if h.applied == "done" && r.valueTakenBack(q) {
			h.applied = "quoted"
		}
		r.heard = append(r.heard, h)
		prev = &r.heard[len(r.heard)-1]
		s.torqued(&r.heard[len(r.heard)-1], q.lo, q.hi)
	}
	s.exchange(read, c.hi)
	s.namedLate(c)
	// "click", "i'm going with the sticker": a value that was only quoted was set
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		if w == "click" || w == "clicked" || w == "clicks" || w == "tick" || w == "taking" || (w == "so" || (w == "do" || w == "doing") && !negating(r.prev(i))) && i+1 < c.hi && (numberWord.has(r.toks[i+1].s) || r.toks[i+1].s[0] >= '0' && r.toks[i+1].s[0] <= '9') || (w == "going" || w == "gone") && r.next(i) == "with" {
			if h := s.chosen(c, i); h != nil && h.applied != "done" {
				h.applied = "done"
				s.torqued(h, i, i+1)
			}
			break
		}
	}
}

// angleTold gives the value before, where an angle is told over against it by what says it: "and
// after that it's an angle. The book says ninety degrees"; nil where it is for nothing.
func (s *tracker) angleTold(ci int, q *quantity) *heard {
	r := s.r
	c := &r.clauses[ci]
	n := len(r.heard)
	if n == 0 || r.heard[n-1].of == nil || q.Unit == "turn" || c.mood&(notWork|other) != 0 || r.since(r.qtys[r.heard[n-1].qty].hi, q.lo) > 90 {
		return nil
	}
	h := &r.heard[n-1]
	angle := h.angle != nil
	for i := q.lo - 1; i >= max(r.qtys[h.qty].hi, q.lo-40) && !angle; i-- {
		angle = r.toks[i].s == "angle" || r.toks[i].s == "angles"
	}
	for i := c.lo; i < q.lo && angle; i++ {
		if m := r.toks[i].men; m >= 0 && r.mentions[m].kind&lexicon.Fastener != 0 {
			return nil
		}
		if giving.has(r.toks[i].s) {
			return h
		}
	}
	return nil
}

// handStart are words for how far a thing goes in by hand, or before it is tight.
var handStart = set("hand fingers finger fingertight touches touch touching seats seated contacts contact snug snugs bites stops")

// turnedOn gives what a turn tightens that is told with no value at all, from where the hand
// leaves it: "Plug. In by hand, then half a turn with the spanner"; nil where it tightens nothing.
func (s *tracker) turnedOn(ci int, q *quantity) *thing {
	r := s.r
	c := &r.clauses[ci]
	if c.mood&(notWork|other) != 0 {
		return nil
	}
	from := c.lo
	for k := ci - 1; k >= max(0, ci-2) && r.since(r.clauses[k].lo, q.lo) < 8 && r.clauses[k].sentence >= c.sentence-1; k-- {
		if r.clauses[k].sentence == c.sentence || len(r.clauses[k].mentions) == 0 || from == c.lo {
			from = r.clauses[k].lo
		}
	}
	started, on := false, false
	for i := from; i < min(c.hi, q.hi+6); i++ {
		switch w := r.toks[i].s; {
		case i >= q.lo && i < q.hi:
		case w == "back" || w == "off" || w == "out" || w == "undo" || w == "return" || w == "loosen" || w == "slacken" || w == "crack" || w == "open" || w == "each" || w == "time":
			return nil
		case handStart.has(w):
			started = true
		case i < q.lo && (w == "then" || w == "and" || w == "plus") && q.lo-i <= 4, i >= q.hi && (w == "past" || w == "after" || w == "from"):
			on = true
		}
	}
	if !started || !on {
		return nil
	}
	told, _ := s.ownerOfValue(ci, q)
	if topic := s.onTopic(q.lo); topic != nil && (takesTorque(topic) || screwedIn.has(topic.head)) {
		told = topic
	}
	for _, a := range r.actsBefore(ci, q.lo, 3, 3) {
		if t := a.things[len(a.things)-1]; r.since(a.lo, q.lo) < 15 && takesValue(t) && (told == nil || takesTorque(t) || screwedIn.has(t.head) || !takesTorque(told)) {
			return t
		}
	}
	if told == nil || !takesValue(told) {
		return nil
	}
	return told
}

// screwClip tells whether a thing is a clip that is tightened by its own screw.
func screwClip(t *thing) bool {
	return (t.head == "clip" || t.head == "clamp") && (t.mods["hose"] || t.mods["worm"] || t.mods["jubilee"] || t.mods["band"])
}

// namesSince tells whether a clause names a thing between two tokens.
func (r *reading) namesSince(c *clause, lo, hi int) bool {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.lo >= lo && m.lo < hi && m.kind&(lexicon.Fastener|lexicon.Part) != 0 {
			return true
		}
	}
	return false
}

// goTold gives the number of the go that a value before token lo is said to be of in its
// clause: "step two, thirty"; 0 where none is said.
func (r *reading) goTold(c *clause, lo int) int {
	for i := c.lo; i+1 < lo; i++ {
		if w := r.toks[i].s; w == "step" || w == "stage" || w == "pass" {
			if n := countOf[r.toks[i+1].s]; n > 0 && n < 6 {
				return n
			}
		}
	}
	return 0
}

// less tells whether one value is lower than another, as that of an earlier go is.
func less(p, q *quantity) bool {
	if p.Low == nil || q.Low == nil {
		return p.Low != nil // an angle is turned on after a torque
	}
	a, ok := normalize.ToNM(p.High, p.Unit)
	b, ok2 := normalize.ToNM(q.Low, q.Unit)
	return ok && ok2 && a.Cmp(b) < 0
}

// torqued lets a value that was set happen to its thing, where that is a thing
// that is tightened: a housing is not, its bolts are.
func (s *tracker) torqued(h *heard, lo, hi int) {
	if h.of != nil && h.rule == namedBeforeIt && h.applied == "quoted" {
		return // a list gives it to the part by its name
	}
	if h.of != nil && h.of.onlyLocks() {
		h.of = nil // nobody tightens a split pin
		return
	}
	if h.of != nil && !takesTorque(h.of) && !(h.of.fastener && !isLock(h.of)) && h.of.head != "pin" && !tightens.has(h.of.head) && !screwClip(h.of) && !screwedOn.has(h.of.head) {
		h.of = s.unnamedOf(h.of, lo, 0)
	}
	t := h.of
	if t == nil || h.applied != "done" {
		return
	}
	e := event{action: "torque", act: -1, rule: "value set", lo: lo, hi: hi, value: true}
	if s.r.qtys[h.qty].Kind != normalize.Torque {
		e = event{action: "tighten", act: -1, rule: h.rule, lo: lo, hi: hi} // by so much of a turn alone
	}
	for _, t := range t.each() {
		t.events = append(t.events, e)
		t.last = max(t.last, lo)
		s.touch(t)
	}
}

// namedLate gives a value whose fastener was not told to the one that is named
// when it is done: "And then it's ten newton metres. … That's the housing bolts done."
func (s *tracker) namedLate(c *clause) {
	r := s.r
	if len(r.heard) == 0 || len(c.mentions) == 0 || len(c.mentions) > 1 && (r.heard[len(r.heard)-1].of != nil || !r.aPhrase(c)) || c.mood&(negated|conditional|hypothetical|announced|asked) != 0 {
		return
	}
	h := &r.heard[len(r.heard)-1]
	q := &r.qtys[h.qty]
	t := r.mentions[c.mentions[0]].entry
	if t == nil || h.dropped || q.cl == int(r.toks[c.lo].cl) || r.since(q.hi, c.lo) > 20 || !takesTorque(t) && h.of != nil || h.of != nil && takesTorque(h.of) && h.of.head != "fastener" {
		return
	}
	part := h.of // the part whose fasteners they are
	if part != nil && part.head == "fastener" {
		part = part.owner
	}
	if part != nil && !owns(part, t) && t.owner != part {
		return
	}
	if m := &r.mentions[c.mentions[0]]; h.of == nil && h.noun == 0 && r.since(q.hi, c.lo) < 14 && m.prep == "" && r.pointedAt(c, m) {
		h.of, h.rule = t, "named after it"
		s.torqued(h, q.lo, q.hi)
		return
	}
	for i := r.mentions[c.mentions[0]].hi; i < c.hi; i++ {
		switch r.toks[i].s {
		case "done", "torqued", "tight", "set", "up":
			if was := h.of; was != nil && was != t && was.head == "fastener" {
				t.events, was.events, was.left = append(t.events, was.events...), nil, outcome{}
				h.of, h.rule = t, "fastener named when it was done"
				return
			}
			h.of, h.rule = t, "fastener named when it was done"
			s.torqued(h, q.lo, q.hi)
			return
		}
	}
}

// pointedAt tells whether a clause does no more than point at what it names: "and that's
// the tank bolts", "The four bolts on the coil bracket."
func (r *reading) pointedAt(c *clause, m *mention) bool {
	if len(c.acts) > 0 || len(c.qtys) > 0 || m.kind&(lexicon.Fastener|lexicon.Part) == 0 || documents.has(m.head) {
		return false
	}
	for i := r.skipped(c); i < m.from; i++ {
		switch w := r.toks[i].s; w {
		case "that", "that's", "those", "these", "this", "is", "'s", "are", "'re", "for", "on", "it", "it's", "both", "all", "and", "the":
		default:
			if !r.toks[i].is(wCounts) {
				return false
			}
		}
	}
	return true
}

// aPhrase tells whether a clause has no more than a thing and where it is: "the four
// bolts on the coil bracket".
func (r *reading) aPhrase(c *clause) bool {
	for _, mi := range c.mentions[1:] {
		if r.mentions[mi].prep == "" {
			return false
		}
	}
	return true
}

// chosen gives the value heard that a click or a choice at token i is of: the one
// whose number or document is named there, else the last one.
func (s *tracker) chosen(c *clause, i int) *heard {
	r := s.r
	var last *heard
	ci := int(r.toks[c.lo].cl)
	for n := len(r.heard) - 1; n >= 0; n-- {
		h := &r.heard[n]
		q := &r.qtys[h.qty]
		if r.since(q.lo, i) > 30 {
			break
		}
		if h.dropped || q.Low == nil {
			continue
		}
		if last == nil && h.rule != inAnotherUnit {
			last = h
			if h.rule != exchanged && h.applied == "quoted" && s.fastenedSince(h, i) {
				last = nil // a list of values, then "bracket up, four bolts. Click, click."
			}
		}
		for k := max(0, ci-1); k <= ci; k++ {
			p := &r.clauses[k]
			if k < ci && q.cl == k {
				continue
			}
			for _, num := range r.numbers(p) {
				if num == q.Low.RatString() {
					return h
				}
			}
			for j := p.lo; j < p.hi; j++ {
				if h.source.Title != "" && r.toks[j].s == h.source.Title && k == ci {
					return h
				}
			}
		}
	}
	return last
}

var money = wordsOf("words of cost")
var makesWords = set("give make produce develop deliver put")
var engineWords = wordsOf("words of engine power")

// notTightening tells whether a value is a price, or what an engine makes.
func (s *tracker) notTightening(c *clause, q *quantity) bool {
	r := s.r
	if r.word(q.hi) == "of" && r.next(q.hi) == "torque" || r.word(q.hi) == "left" && r.next(q.hi) == "in" {
		return true
	}
	if q.lo > c.lo {
		switch r.toks[q.lo-1].s {
		case "not", "isn't":
			return true // "that's not eighteen newton metres"
		case "what":
			if w := r.word(q.hi); w == "does" || w == "do" || w == "looks" || w == "feels" || w == "is" || w == "'s" {
				return true // "I'll show you what fifty foot pounds does to it"
			}
		case "under", "below", "above", "than":
			return true // what a wrench can be trusted with
		case "at", "from", "to", "until", "till":
			before := r.word(q.lo - 2)
			if before == "up" {
				before = r.word(q.lo - 3)
			}
			if wrenchEnds.has(before) && r.ofWrench(q.cl) && !r.setsWrench(c, q) {
				return true // "my big clicker doesn't go that low, it starts at forty foot pounds"
			}
		case "goes", "does", "covers", "runs":
			if q.Low != nil && q.High.Cmp(q.Low) != 0 && r.ofWrench(q.cl) {
				return true // "the little wrench, it goes two to twenty newton metres"
			}
		}
	}
	last := r.toks[q.hi-1].s
	fastener, tool := false, false
	for _, mi := range c.mentions {
		fastener = fastener || r.mentions[mi].kind&lexicon.Fastener != 0
		tool = tool || r.mentions[mi].kind&lexicon.Tool != 0 && r.mentions[mi].hi <= q.lo
	}
	if tool && !fastener && q.Low != nil && (q.Low.Cmp(q.High) != 0 || r.prev(q.lo) == "to" && r.word(q.lo-2) == "up") {
		for i := c.lo; i < q.lo; i++ {
			switch r.toks[i].s {
			case "does", "do", "goes", "covers", "runs", "reads", "range", "good", "works", "spans":
				return true // "my clicker does two to twenty newton metres"
			}
		}
	}
	for i := c.lo; i+1 < q.lo && !fastener; i++ {
		if w, n := r.toks[i].s, r.toks[i+1].s; (w == "put" || w == "puts" || w == "putting" || w == "kick" || w == "kicks" || w == "push" || w == "pushes") && n == "out" || w == "rated" && n == "at" && r.saidIn(c, "motor") {
			return true // "these put out about three fifty newton metres"
		}
	}
	for ci := q.cl - 1; ci >= max(0, q.cl-2) && !fastener && r.since(r.clauses[ci].lo, q.lo) < 30; ci-- {
		if r.makesPower(&r.clauses[ci]) {
			return true // "what sort of torque this engine makes. It's three hundred and forty …"
		}
		if r.clauses[ci].hi-r.clauses[ci].lo > 3 {
			break
		}
	}
	k := q.lo - 1
	for k > c.lo && (inPassing.has(r.toks[k].s) || r.toks[k].s == "a" || r.toks[k].s == "some" || r.toks[k].s == "nearly") {
		k--
	}
	if w := r.word(k); !fastener && k >= c.lo && strong(q) && (w == "got" || w == "has" || w == "makes" || w == "develops" || w == "puts") && k > c.lo && (r.prev(k) == "'s" || r.prev(k) == "it" || r.prev(k) == "that" || r.toks[k-1].men >= 0) {
		return true // "it's got like four hundred newton metres"
	}
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		if unit := r.word(q.hi - 2); (last == "pound" || last == "pounds") && unit != "foot" && unit != "feet" && unit != "inch" && money.has(w) {
			return true
		}
		if m := r.toks[i].men; m >= 0 && !wholes.has(r.mentions[m].head) {
			continue // "engine mounts thirty four newton metres"
		}
		if engineWords.has(w) && !fastener && i > q.hi && i-q.hi <= 4 && (makesWords.has(r.lemma1(r.next(i))) || linking.has(r.next(i)) && makesWords.has(r.lemma1(r.word(i+2)))) {
			return true // "thirty newton metres the engine is giving"
		}
		if p := r.prev(i); engineWords.has(w) && !fastener && p != "to" && p != "on" && (w == "makes" || w == "horsepower" || w == "hp" || w == "watts" || r.word(q.hi) == "at" || i < q.lo && q.lo-i <= 4) {
			return true
		}
	}
	return false
}

// strong tells whether a value is one that a machine may put out: small ones are of bolts.
func strong(q *quantity) bool {
	if q.Low == nil {
		return false
	}
	nm, ok := normalize.ToNM(q.Low, q.Unit)
	return ok && nm.Cmp(big.NewRat(60, 1)) >= 0
}

// ofWrench tells whether a clause or the ones right before it speak of a torque wrench.
func (r *reading) ofWrench(ci int) bool {
	for k := ci; k >= 0 && (k >= ci-1 || k >= ci-3 && r.clauses[k].sentence == r.clauses[ci].sentence); k-- {
		for _, mi := range r.clauses[k].mentions {
			if m := &r.mentions[mi]; m.kind&lexicon.Tool != 0 && (m.head == "clicker" || m.head == "wrench" || m.head == "driver") {
				return true
			}
		}
	}
	return false
}

// makesPower tells whether a clause speaks of the torque or power that a machine makes.
func (r *reading) makesPower(c *clause) bool {
	power, makes := false, false
	for i := c.lo; i < c.hi; i++ {
		if m := r.toks[i].men; m >= 0 && r.mentions[m].kind&lexicon.Tool != 0 {
			continue // "I've got the small torque wrench for this, that's three newton metres"
		}
		switch r.toks[i].s {
		case "torque", "power", "horsepower", "oomph", "grunt":
			power = true
		case "makes", "make", "produces", "develops", "puts", "got":
			makes = true
		case "has", "have":
			makes = makes || wholes.has(r.word(i+2)) || wholes.has(r.prev(i)) // "how much torque has the motor"
		}
	}
	return power && makes
}

// readOff gives the value before to the fastener that it is said to have been read
// off for, and returns the one that a value said now is for in its place: "Forty
// newton metres. No, wrong card, that's the lockring. Forty-five."
func (s *tracker) readOff(q *quantity) *thing {
	r := s.r
	if len(r.heard) == 0 {
		return nil
	}
	h := &r.heard[len(r.heard)-1]
	p := &r.qtys[h.qty]
	if h.of == nil || r.since(p.lo, q.lo) > 30 {
		return nil
	}
	for _, mi := range r.clauses[q.cl].mentions {
		if m := &r.mentions[mi]; m.lo >= p.hi && m.entry != h.of {
			return nil
		}
	}
	back := false
	for i := p.hi; i < q.lo; i++ {
		w := r.toks[i].s
		back = back || w == "no" || w == "wrong" || w == "sorry"
		m := r.toks[i].men
		if !back || m < 0 || r.mentions[m].entry == nil || r.mentions[m].entry == h.of {
			continue
		}
		if b := r.word(r.mentions[m].from - 1); b != "that's" && b != "'s" && b != "is" && b != "was" && b != "for" {
			return nil
		}
		was := h.of
		was.forget(p.lo)
		h.of, h.applied, h.rule = r.mentions[m].entry, "quoted", "what it was read off for by mistake"
		if !takesTorque(h.of) {
			h.of = s.unnamedOf(h.of, p.lo, 0)
		}
		return was
	}
	return nil
}

// forget takes back a value that was said of a thing at a token.
func (t *thing) forget(at int) {
	t.events = slices.DeleteFunc(slices.Clone(t.events), func(e event) bool { return e.value && e.lo == at })
	t.left = outcome{}
}

// toldWith are the rules by which a value goes to a fastener that is named with it.
var toldWith = map[string]bool{"fastener named before the value": true, "fastener named after the value": true, "fastener named right after": true, "named right after": true,
	toldForIt: true, namedBeforeIt: true, "fastener that the sentence begins with": true, "fastener in the heading before": true, "said again after one read off for another": true, inAnotherUnit: true}

// correct drops the value before, where the speaker takes it back, and returns it; nil where it
// was for nothing.
func (s *tracker) correct(q *quantity) *heard {
	r := s.r
	if len(r.heard) == 0 {
		return nil
	}
	h := &r.heard[len(r.heard)-1]
	p := &r.qtys[h.qty]
	if r.since(p.lo, q.lo) > 16 || h.rule == exchanged {
		return nil
	}
	for i := p.hi; i < q.lo; i++ {
		if giving.has(r.toks[i].s) {
			return nil // "sorry, I said 40; the sheet says 35": two values, and no telling which is right
		}
	}
	for i := p.hi; i < q.lo; i++ {
		if m := r.toks[i].men; m >= 0 && r.mentions[m].entry != nil && r.mentions[m].entry != h.of && takesTorque(r.mentions[m].entry) && r.mentions[m].prep == "" {
			return nil // "caliper bracket bolts … sorry, caliper bolts": what is taken back is a name
		}
		if r.takesBack(i, q.lo) || i == p.hi && r.ofAnother(i) {
			h.dropped = true
			if h.of == nil {
				return nil
			}
			h.of.forget(p.lo)
			return h
		}
	}
	return nil
}

// takesBack tells whether with a token somebody takes back what they just said, before another
// token.
func (r *reading) takesBack(i, before int) bool {
	next := r.word(i + 1) // in a sentence of its own as well: "No. Wait."
	switch r.toks[i].s {
	case "sorry", "apologise", "apologize", "nope":
		return true
	case "no":
		switch next {
		case "more":
			return false
		case "sorry", "hang", "wait", "no", "it", "that", "i":
			return true
		}
		return r.toks[i].brk != brkNone || i+1 == before
	}
	return r.toks[i].s == "one" && next == "second"
}

// saidOver tells whether a value is the one before, by itself and right after: "this is twenty-four,
// it's written on the guard. Twenty-four."
func (r *reading) saidOver(p, q *quantity) bool {
	c := &r.clauses[q.cl]
	return p.sameValue(q) && r.since(p.hi-1, q.lo) < 8 && q.lo == c.lo && q.hi == c.hi && c.lo > 0 && r.toks[c.lo-1].brk >= brkSentence
}

// ofAnother tells whether what follows a value at token i says that it was another thing's: "thirty
// was the other machine".
func (r *reading) ofAnother(i int) bool {
	if w := r.word(i); w != "was" && w != "were" {
		return false
	}
	switch r.next(i) {
	case "for", "on":
		return !definiteWord.has(r.word(i+2)) || r.word(i+2) == "the" && r.word(i+3) == "other" || r.word(i+3) == "last"
	case "the":
		return r.word(i+2) == "other" || r.word(i+2) == "last" || r.word(i+2) == "old"
	case "last", "another":
		return true
	}
	return false
}

// vague tells whether a value is only told about: "it's thirty something".
func (r *reading) vague(q *quantity) bool {
	for i := q.lo + 1; i <= q.hi; i++ {
		if w := r.word(i); (w == "something" || w == "odd") && r.toks[i-1].brk < brkPause && r.next(i) != "like" {
			return true
		}
	}
	return false
}

// goneWith gives the value told before that is chosen of several by naming it: "the book says
// 26, the paper says 35, I've gone with the 26"; nil where none is.
func (r *reading) goneWith(c *clause, q *quantity) *heard {
	at := q.lo - 1
	for at > c.lo && (articles.has(r.toks[at].s) || r.toks[at].s == "that") {
		at--
	}
	if at <= c.lo || r.toks[at].s != "with" || q.Low == nil || r.namesSince(c, c.lo, c.hi) {
		return nil
	}
	switch r.toks[at-1].s {
	case "going", "gone", "go", "went", "stick", "sticking", "stuck", "staying":
	default:
		return nil
	}
	for n := len(r.heard) - 1; n >= 0; n-- {
		h := &r.heard[n]
		p := &r.qtys[h.qty]
		if r.since(p.hi, q.lo) > 40 {
			return nil
		}
		if !h.dropped && h.of != nil && p.Unit == q.Unit && p.Low != nil && p.Low.Cmp(q.Low) == 0 {
			return h
		}
	}
	return nil
}

// sameOver tells whether a value only says the one right before it in another unit, be it in
// a sentence of its own: "sixty two. That's about forty six foot pounds".
func (r *reading) sameOver(p, q *quantity) bool {
	if p.Low == nil || q.Low == nil || p.Unit == q.Unit || q.lo-p.hi > 16 || r.since(p.hi, q.lo) > 12 || r.handledIn(p.hi, q.lo) && !r.thatIs(q.lo) {
		return false
	}
	a, ok := normalize.ToNM(p.Low, p.Unit)
	b, ok2 := normalize.ToNM(q.Low, q.Unit)
	if ok && ok2 && (near(a, b, 3) || q.lo-p.hi <= 9 && near(a, b, 8)) {
		return true
	}
	// worked out wrongly, and yet of the same: "fifty newton metres. That's three hundred and seventy foot pound"
	return (r.prev(q.lo) == "'s" || r.prev(q.lo) == "is") && (r.word(q.lo-2) == "that" || r.word(q.lo-2) == "which") && q.lo-p.hi == 2
}

// thatIs tells whether "that's about", "which is" stands right before a token.
func (r *reading) thatIs(i int) bool {
	for i--; i > 0 && (r.toks[i].is(wDrop) || r.toks[i].s == "about" || r.toks[i].s == "roughly" || r.toks[i].s == "nearly" || r.toks[i].s == "almost" || r.toks[i].s == "around"); i-- {
	}
	if i < 1 || r.toks[i].s != "'s" && r.toks[i].s != "is" && r.toks[i].s != "makes" {
		return false
	}
	return r.toks[i-1].s == "that" || r.toks[i-1].s == "which"
}

// further tells whether an angle is one to turn on after a torque.
func (s *tracker) further(c *clause, q *quantity) bool {
	for i := c.lo; i < c.hi; i++ {
		switch s.r.toks[i].s {
		case "further", "plus", "then", "more", "another", "and", "past":
			return true
		}
	}
	return false
}

// pairOf tells whether the words between two values make them one value in two units.
func (s *tracker) pairOf(lo, hi int) bool {
	if hi-lo > 5 {
		return false
	}
	for i := lo; i < hi; i++ {
		switch s.r.toks[i].s {
		case "says", "no", "sorry":
			return false
		case "which", "that", "or", "about", "is", "'s", "so", "in", "i", "make", "call", "it", "equals":
		default:
			if s.r.toks[i].men >= 0 {
				return false
			}
		}
	}
	return true
}

func (s *tracker) hedgedNear(ci int, q *quantity) bool {
	r := s.r
	c := &r.clauses[ci]
	for _, k := range c.cues {
		// where there is more than one value, a doubt is of the one it stands by
		if k.mood&hedged != 0 && (len(c.qtys) < 2 || k.hi <= q.lo && q.lo-k.hi <= 8 && !r.valueBetween(c, k.hi, q.lo) || k.lo >= q.hi && k.lo-q.hi <= 4 && !r.valueAfter(c, k.hi)) {
			return true
		}
	}
	for _, k := range []int{ci - 1, ci + 1} {
		if k >= 0 && k < len(r.clauses) {
			n := &r.clauses[k]
			if n.mood&hedged != 0 && n.hi-n.lo <= 8 && len(n.acts) == 0 && len(n.qtys) == 0 && r.doubts(n) {
				return true
			}
		}
	}
	return false
}

// doubts tells whether a clause doubts more than the very words after it: "went around all six" does not.
func (r *reading) doubts(c *clause) bool {
	return slices.ContainsFunc(c.cues, func(k cue) bool {
		w := r.toks[k.lo].s
		return k.mood&hedged != 0 && !(k.hi-k.lo == 1 && (w == "around" || w == "about" || w == "roughly"))
	})
}

// valueBetween tells whether a value of a clause stands in the tokens lo to hi.
func (r *reading) valueBetween(c *clause, lo, hi int) bool {
	for _, qi := range c.qtys {
		if q := &r.qtys[qi]; q.Kind == normalize.Torque && q.lo >= lo && q.hi <= hi {
			return true
		}
	}
	return false
}

// valueAfter tells whether a value of a clause follows right after token i.
func (r *reading) valueAfter(c *clause, i int) bool {
	return r.valueBetween(c, i, min(c.hi, i+6))
}

// wholes are machines, of which a value is given for something in them.
var wholes = wordsOf("whole machines")

// ownerOfValue tells what a value is for: a fastener in the clause, the thing of
// the clause's act, the fastener in hand, or one named right after; or nil.
func (s *tracker) ownerOfValue(ci int, q *quantity) (*thing, string) {
	r := s.r
	c := &r.clauses[ci]
	var before, after, part *thing
	prev, next := c.lo, c.hi // the values beside it in the clause
	for _, k := range c.qtys {
		if o := &r.qtys[k]; o.Kind == normalize.Torque && o.hi <= q.lo && !s.pairOf(o.hi, q.lo) {
			prev = o.hi
		} else if o.Kind == normalize.Torque && o.lo >= q.hi && next == c.hi {
			next = o.lo
		}
	}
	written, untold := r.writtenIn(c), false
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		t := m.entry
		if t == nil && m.byPlace {
			untold = true
		}
		if t == nil || t.head == "" || documents.has(t.head) || wholes.has(m.head) && (m.prep == "for" || m.prep == "of") {
			continue // "says twelve, for the same engine"
		}
		if m.lo < q.lo && (r.besides(c, m) || r.onlyMinded(m)) {
			continue // in talk without stops a clause holds what is told beside the work
		}
		if r.ofSource(m) {
			continue
		}
		if !takesTorque(t) {
			if m.lo >= q.hi && (m.prep == "" && !m.definite || m.prep != "" && m.prep != "on" && m.prep != "for" && m.prep != "of" && m.prep != "to" && m.from-q.hi > 2) {
				continue // "twelve newton metres, it's an alloy head"
			}
			if (written || m.from >= 2 && documents.has(r.toks[m.from-2].s)) && m.prep != "" {
				continue // "the sticker on the swingarm says", "somebody wrote nineteen foot pounds on the inside of the shroud"
			}
			if m.prep == "with" && m.kind&lexicon.Tool != 0 {
				continue // "with the adapter on"
			}
			if t.ownsNone() && !tightens.has(t.head) {
				continue // "cover on, dowels in", "hold the ball joint with the hex"
			}
			if m.prep == "" || m.prep == "on" || m.prep == "for" || part == nil {
				part = t
			}
			continue
		}
		switch {
		case m.lo < q.lo:
			if before == nil || m.lo >= prev {
				before = t
			}
		case after == nil && m.from-q.hi <= 10 && !r.underLoad(q.hi, m.from) && !(m.prep == "" && r.toks[m.from-1].s == "and" && r.toks[m.from-2].brk >= brkComma) && (next == c.hi || m.lo > next || m.prep == "for" || m.prep == "on" && determiner.has(r.toks[m.from].s)) && m.lo < next:
			after = t
		}
	}
	if t := s.toldFor(c, q); t != nil {
		return t, toldForIt
	}
	if t := s.subjectOf(c, q); t != nil {
		return t, namedBeforeIt
	}
	if before != nil {
		return before, "fastener named before the value"
	}
	if after != nil && s.subjectBefore(c, q) {
		// "they're 28 on both, bleeder somewhere between 6 and 8"
		for i := len(s.hand) - 1; i >= 0 && r.since(s.hand[i].last, q.lo) < 30; i-- {
			if t := s.hand[i]; takesTorque(t) && t.last < c.lo {
				return t, "fastener spoken of before"
			}
		}
	}
	if after != nil {
		return after, "fastener named after the value"
	}
	if untold {
		return nil, noneTold // "the bottom ones, forty seven": of which part, nobody said
	}
	for _, ai := range c.acts {
		if r.acts[ai].lo-q.hi > 4 {
			continue // in talk without stops a clause may run on to other work
		}
		for _, t := range r.acts[ai].things {
			if takesTorque(t) {
				return t, "what the clause does something to"
			}
		}
	}
	if part != nil {
		if t := s.fastenerOf(part); t != nil {
			return t, "fastener of the part named"
		}
		return part, "part named in the clause"
	}
	// named right after: "… newton metres on the hub nut"
	if c.hi < len(r.toks) && r.toks[c.hi-1].brk < brkSentence {
		n := &r.clauses[r.toks[c.hi].cl]
		for _, mi := range n.mentions {
			m := &r.mentions[mi]
			if (m.prep == "for" || m.prep == "on") && m.from-q.hi <= 4 && m.kind&lexicon.Fastener != 0 && !r.nameIn(q.hi, m.from) {
				if m.entry == nil {
					m.entry = s.resolve(int(r.toks[c.hi].cl), mi)
				}
				return m.entry, "fastener named right after"
			}
		}
	}
	// "that's the belt cover" right after
	if c.hi < len(r.toks) && q.hi >= c.hi-1 {
		n := &r.clauses[r.toks[c.hi].cl]
		if w := r.toks[n.lo].s; (w == "that" || w == "those" || w == "these" || w == "it") && len(n.mentions) > 0 && len(n.acts) == 0 && len(n.qtys) == 0 && n.mood&negated == 0 {
			if m := &r.mentions[n.mentions[0]]; linking.has(r.next(n.lo)) && m.from == n.lo+2 && (m.definite || m.plural || m.from == m.lo) && m.kind&(lexicon.Fastener|lexicon.Part) != 0 && m.prep == "" {
				if m.entry == nil {
					m.entry = s.resolve(int(r.toks[n.lo].cl), n.mentions[0])
				}
				return m.entry, "named right after"
			}
		}
	}
	// "Pad pin, and I'm reading it to you, 180 newton metres"
	if len(c.mentions) == 0 {
		for k := ci - 1; k >= max(0, ci-3) && r.clauses[k].sentence == c.sentence && r.since(r.clauses[k].lo, q.lo) < 10; k-- {
			p := &r.clauses[k]
			if len(p.mentions) != 1 || p.mood&(negated|conditional|hypothetical) != 0 {
				continue
			}
			if m := &r.mentions[p.mentions[0]]; m.entry != nil && (m.kind&lexicon.Fastener != 0 || m.head == "pin") && r.opens(p, m) {
				return m.entry, "fastener that the sentence begins with"
			}
		}
	}
	// a heading: "Calipers. Thirty newton metres."
	for k := ci - 1; k >= 0 && k >= ci-2 && r.since(r.clauses[k].lo, q.lo) < 10; k-- {
		p := &r.clauses[k]
		if s.headingOf(p) == nil {
			if slices.ContainsFunc(p.mentions, func(mi int) bool {
				e := r.mentions[mi].entry
				return e != nil && takesTorque(e) && r.mentions[mi].prep == ""
			}) {
				break // "Battery. The red cable goes on, and that nut, eight."
			}
			continue
		}
		if m := &r.mentions[p.mentions[0]]; m.entry != nil && m.prep == "" && !s.inPassing(k, p.mentions[0]) && !documents.has(m.head) && (!m.ownsNone() || tightens.has(m.head) || r.word(m.hi) == "torque") {
			if takesTorque(m.entry) {
				return m.entry, "fastener in the heading before"
			}
			if f := s.fastenerOf(m.entry); f != nil {
				return f, "fastener of the part in the heading before"
			}
			return m.entry, "part in the heading before"
		}
	}
	// "The preload cap screws into the end of the axle. It's half a newton metre."
	first := c.lo
	for first < q.lo && (r.toks[first].is(wOpener) || r.toks[first].s == "and" || r.toks[first].s == "anyway") {
		first++
	}
	if w := r.toks[first].s; (w == "it" || w == "that" || w == "they" || w == "those") && len(c.mentions) == 0 {
		for k := ci - 1; k >= max(0, ci-2) && r.since(r.clauses[k].lo, q.lo) < 12; k-- {
			for _, mi := range r.clauses[k].mentions {
				m := &r.mentions[mi]
				if m.prep != "" || m.entry == nil {
					continue
				}
				switch opens := r.opens(&r.clauses[k], m); {
				case opens && takesTorque(m.entry):
					return m.entry, "what the sentence before was about"
				case opens && k == ci-1 && r.clauses[k].sentence == c.sentence && !m.ownsNone():
					// "Caliper to bracket, that's eighteen"
					if f := s.fastenerOf(m.entry); f != nil {
						return f, "fastener of the part that the sentence begins with"
					}
					return m.entry, "part that the sentence begins with"
				}
				break
			}
		}
	}
	if t := s.otherSource(c, q); t != nil {
		return t, "what the value before was for, from another source"
	}
	hand := s.inView(c, q)
	if t := s.waitsAlone(c, q); t != nil {
		return t, "the one started by hand before"
	}
	n, many := r.toldForHowMany(c, q)
	single := func(t *thing) bool { return n > 2 && t.fastener && !t.many() } // "thirty-eight on the four": not of one
	if many && n > 1 {
		// "thirty newton metres, both of them"
		for i := len(hand) - 1; i >= 0; i-- {
			t := hand[i]
			if st, _ := t.state(); takesTorque(t) && t.count == n && st != Torqued && st != Removed && t.last < q.lo && r.since(t.last, q.lo) < 30 {
				return t, "as many as the value is told for"
			}
		}
	}
	for i := len(hand) - 1; i >= 0; i-- {
		t := hand[i]
		if r.since(t.last, q.lo) > 30 || single(t) {
			continue
		}
		if t.last >= q.hi && int(r.toks[t.last].cl) == ci && (next < c.hi || written) {
			continue // named for the value that follows, or what the value is written on
		}
		if topic := s.onTopic(q.lo); topic != nil && topic == t && screwedIn.has(t.head) {
			return t, "what the talk turned to"
		}
		if topic := s.onTopic(q.lo); topic != nil && t.worked <= s.topicAt {
			if f := s.fastenerOf(topic); f != nil && !single(f) {
				return f, "fastener of the part that the talk turned to"
			}
			return topic, "part that the talk turned to"
		}
		if takesTorque(t) {
			return t, "fastener in hand"
		}
		if st, _ := t.state(); screwClip(t) && st != Removed && st != Discarded {
			return t, "clamp or fitting in hand"
		} else if t == s.heading && r.since(s.headingAt, q.lo) < 25 && screwedIn.has(t.head) {
			return t, "what the talk turned to"
		} else if tightens.has(t.head) && (st == Loosened || st == HandTight || st == Tightened || (st == Refitted || st == Torqued) && screwedIn.has(t.head) && r.since(t.last, q.lo) < 12) {
			return t, "clamp or fitting in hand"
		}
		if f := s.fastenerOf(t); f != nil && !single(f) {
			return f, "fastener of the part in hand"
		}
		if n := len(t.mentions); !t.fastener && !t.ownsNone() && !wholes.has(t.head) && t.worked > 0 && n > 0 && r.allCounted(t.worked, q.lo) {
			if m := &r.mentions[t.mentions[n-1]]; r.opens(&r.clauses[m.cl], m) {
				return t, "part whose fasteners were counted"
			}
		}
	}
	// what was started by hand waits for its value
	for i := len(s.hand) - 1; i >= 0 && r.since(s.hand[i].last, q.lo) < 90; i-- {
		if st, _ := s.hand[i].state(); st == HandTight && takesTorque(s.hand[i]) && !single(s.hand[i]) {
			return s.hand[i], "started by hand before"
		}
	}
	// nothing that is tightened: the fasteners of the part spoken of
	for i := len(hand) - 1; i >= 0; i-- {
		t := hand[i]
		if r.since(t.last, q.lo) > 20 || t.first >= q.hi {
			continue
		}
		if st, _ := t.state(); !t.fastener && (!t.ownsNone() || screwedOn.has(t.head)) && st != Removed && st != Discarded {
			return t, "part in hand"
		}
	}
	return nil, noneTold
}

// toldForIt is the rule of a value that is told to be for a thing, in so many words.
const toldForIt = "told to be for it"

// namedBeforeIt is the rule of a value that the part named right before it is given.
const namedBeforeIt = "part named right before the value"

// toldFor gives the thing that a value is told to be for by the words right after it: "a hundred
// and fifty newton metres for the lower bolt", "forty-five on the injectors"; nil where none is.
func (s *tracker) toldFor(c *clause, q *quantity) *thing {
	r := s.r
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.from < q.hi {
			continue
		}
		if m.from != q.hi+1 || m.prep != "for" && m.prep != "on" || !m.definite && !m.plural || r.toks[q.hi-1].brk >= brkComma || m.entry == nil {
			return nil
		}
		t := m.entry
		switch {
		case m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.kind&lexicon.Tool != 0 || documents.has(m.head) || wholes.has(m.head) || wrenchScale.has(m.head) || m.prep == "on" && r.writtenIn(c) && !r.saidBetween(c.lo, q.lo, "on"):
			return nil // "somebody wrote nineteen foot pounds on the shroud", but "it's wrote on the ticket, forty-five on the injectors"
		case r.toks[m.from].s == "this" && r.next(m.from) == "one", r.next(m.from) == "old":
			return nil // "sixty on this one new belt", "eleven for the old frame"
		case takesValue(t):
			return t
		}
		if f := s.fastenerOf(t); f != nil {
			return f
		}
		return t
	}
	return nil
}

// subjectOf gives the thing that a value is told of by a name right before it, where that is a
// part and other fasteners were named before it: "pivot bolt is forty-five and the adjuster is
// twenty", "pinch bolt thirty-eight, motor bracket twenty-five"; nil where none is.
func (s *tracker) subjectOf(c *clause, q *quantity) *thing {
	r := s.r
	i := q.lo - 1
	for i > c.lo && (linking.has(r.toks[i].s) || getting.has(r.toks[i].s)) {
		i--
	}
	if i < c.lo || r.toks[i].men < 0 {
		return nil
	}
	m := &r.mentions[r.toks[i].men]
	t := m.entry
	if t == nil || m.hi != i+1 || m.prep != "" || m.kind&lexicon.Part == 0 || m.kind&(lexicon.Fastener|lexicon.Tool) != 0 || documents.has(m.head) || wholes.has(m.head) || wrenchScale.has(m.head) || takesTorque(t) || t.ownsNone() && !takesValue(t) && m.head != "adjuster" {
		return nil
	}
	if i == q.lo-1 && r.pairsIn(c) < 2 && m.from > c.lo && r.toks[m.from-1].brk < brkComma {
		return nil // "so with that bracket fifty": only a row gives each its own so
	}
	if f := s.fastenerOf(t); f != nil && f.first < c.lo && !takesValue(t) {
		return f
	}
	return t
}

// saidBetween tells whether a word stands in the tokens lo to hi.
func (r *reading) saidBetween(lo, hi int, word string) bool {
	for i := lo; i < hi; i++ {
		if r.toks[i].s == word {
			return true
		}
	}
	return false
}

// wrenchScale are the parts of a torque wrench that a value is read on.
var wrenchScale = wordsOf("what a torque wrench shows it on")

// writtenIn tells whether a clause tells what a value is written on.
func (r *reading) writtenIn(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		if writes.has(r.toks[i].s) {
			return true
		}
	}
	return false
}

// ofSource tells of a thing that only tells whose a document is or where: "the sheet from the
// axle people", "the sticker on the fender says".
func (r *reading) ofSource(m *mention) bool {
	if m.prep == "from" && m.from >= 2 && documents.has(r.toks[m.from-2].s) || m.from > 1 && m.lo > m.from && r.prev(m.from) == "says" && r.toks[m.from-2].qty >= 0 { // "seven newton metres, says the disc box"
		return true
	}
	if !saying.has(r.word(m.hi)) {
		return false
	}
	for i := min(m.from, m.lo) - 1; i >= max(0, m.from-6); i-- {
		switch w := r.toks[i].s; {
		case documents.has(w):
			return true
		case !liesOn.has(w):
			return false
		}
	}
	return false
}

// liesOn are the words that tell where a document is.
var liesOn = set("on off inside under behind from the my a this")

// unlistedOwner gives the token after the word that a value is for, where no list has it:
// "I do the flibbits up to twenty", "Trunnions next. Thirty newton metres each."; 0 where
// there is none.
func (r *reading) unlistedOwner(ci int, q *quantity) int {
	c := &r.clauses[ci]
	if len(c.mentions) > 0 || c.mood&notWork != 0 {
		return 0
	}
	for i := c.lo + 1; i < q.lo; i++ {
		if determiner.has(r.toks[i-1].s) && r.toks[i-1].s != "that" && r.toks[i-1].s != "this" && r.nameless(i) {
			for i+1 < q.lo && r.nameless(i+1) {
				i++
			}
			return i + 1
		}
	}
	return 0
}

// unlistedBefore gives the same where the word stands right before the value, "then the front eye,
// one hundred and ten": whatever is in hand, it is not for that.
func (r *reading) unlistedBefore(q *quantity) int {
	i := q.lo - 1
	for i > 0 && q.lo-i <= 3 && (r.toks[i].is(wLinking) || r.toks[i].s == "'s" || r.toks[i].s == "at" || r.toks[i].s == "gets" || r.toks[i].s == "takes") && r.toks[i].brk < brkSentence {
		i--
	}
	end := i + 1
	for i > 0 && (i+1 == end || r.toks[i].brk == brkNone) && (r.nameless(i) || r.toks[i].s == "eye") && !stageWords.has(r.toks[i].s) {
		i--
	}
	if i+1 == end || end-i > 3 || r.toks[end-1].brk >= brkSentence || q.Low != nil && q.Low.Cmp(big.NewRat(1, 1)) == 0 {
		return 0 // "the small one"
	}
	for i > 0 && r.toks[i].is(wPlace) && r.toks[i].brk == brkNone {
		i--
	}
	switch r.toks[i].s {
	case "the", "this", "each", "both", "my":
		if i == 0 || r.toks[i-1].brk >= brkComma || r.toks[i-1].is(wOpener) {
			return end // not "it's on the wall, twelve"
		}
	}
	return 0
}

// stageWords are nouns before a value that name a stage of tightening, or nothing at all.
var stageWords = set("pass passes go goes turn turns lot side sides end ends corner corners pair pairs way first last second third final next day morning minute number numbers figure figures money price cost bottom score reading gauge dial clock bill total rest")

// underLoad tells of "with the load on the axle": how the machine stands, not what is tightened.
func (r *reading) underLoad(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		switch r.toks[i].s {
		case "with", "weight", "load":
			return true
		}
	}
	return false
}

// nameless tells whether a word may name a thing that no list has: it is none of the
// words that only hold a sentence together, no verb, number or place.
func (r *reading) nameless(i int) bool {
	t := &r.toks[i]
	return len(t.s) > 3 && t.men < 0 && t.qty < 0 && !t.is(wOpener|wSubject|wPronoun|wLinking|wDeterminer|wPreposition|wPlace|wInterjection|wParticle|wStop|wDrop|wNumber|wCounts|wForm|wVerb|wInUse) && !strings.HasSuffix(t.s, "ly") && !torqueWords.has(t.s) && !figures.has(t.s) && !documents.has(t.s) && !valueIdle.has(t.s)
}

// valueIdle are words about a value or the talk that name nothing it could be for.
var valueIdle = set("tight torque setting value star cross pattern order stage round time wrench click book spec maximum minimum whole same rest others thing stuff question answer video comment guess maybe about roughly exactly nearly thirty again another sure okay alright lovely good great nice perfect beautiful done ready")

// otherSource gives what the value before is for, where a value that something else says
// follows right after: "the book says 220, and there's a paper in the box that says 250".
func (s *tracker) otherSource(c *clause, q *quantity) *thing {
	r := s.r
	if len(r.heard) == 0 || q.lo-2 < c.lo || !saying.has(r.toks[q.lo-1].s) {
		return nil
	}
	h := &r.heard[len(r.heard)-1]
	p := &r.qtys[h.qty]
	if h.of == nil || h.dropped || r.since(p.hi, q.lo) > 12 {
		return nil
	}
	for i := p.hi; i < q.lo; i++ {
		if m := r.toks[i].men; m >= 0 && r.mentions[m].prep == "" && (r.mentions[m].kind&lexicon.Fastener != 0 || r.mentions[m].kind&lexicon.Part != 0 && r.toks[i].brk >= brkComma) {
			return nil
		}
	}
	return h.of
}

// waitsAlone gives the single fastener that was started by hand and waits, where a value
// is told of one and those spoken of last are several: "wheel on, the four bolts in. Now
// the big one. The book says 220 newton metres for this".
func (s *tracker) waitsAlone(c *clause, q *quantity) *thing {
	r := s.r
	if _, many := r.toldForHowMany(c, q); many || !r.ofOne(c, q) {
		return nil
	}
	for i := len(s.hand) - 1; i >= 0 && r.since(s.hand[i].last, q.lo) < 300; i-- {
		t := s.hand[i]
		if !takesTorque(t) || t.many() {
			continue
		}
		if st, _ := t.state(); st == HandTight {
			return t
		}
		if r.since(t.last, q.lo) < 30 {
			return nil
		}
	}
	return nil
}

// ofOne tells whether a value is told of one thing: "for this", "this one gets", "now the big one".
func (r *reading) ofOne(c *clause, q *quantity) bool {
	ci := int(r.toks[c.lo].cl)
	lo := c.lo
	if ci > 0 && r.since(r.clauses[ci-1].lo, q.lo) < 6 {
		lo = r.clauses[ci-1].lo
	}
	for i := lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "this":
			if next := r.next(i); prepositions.has(r.prev(i)) && (i+1 >= c.hi || r.toks[i].brk >= brkPause || !isNoun(r, i+1)) || next == "one" {
				return true
			}
		case "one", "un":
			if w := r.prev(i); w == "big" || w == "last" || w == "other" || w == "main" {
				return r.next(i) != "of"
			}
		}
	}
	return false
}

// nameIn tells whether anything is named in the tokens lo to hi.
func (r *reading) nameIn(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if r.toks[i].men >= 0 {
			return true
		}
	}
	return false
}

// handledIn tells whether the tokens lo to hi name what may be worked on: no document, and not where it lies.
func (r *reading) handledIn(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if mi := r.toks[i].men; mi >= 0 && !documents.has(r.mentions[mi].head) && r.mentions[mi].prep != "in" {
			return true
		}
	}
	return false
}

// inView gives the things in hand in the order in which a value said now may be
// theirs, the likeliest last: what was spoken of for itself comes after what was
// only named in passing, and a fastener that is not as many as the value is told
// for before all else.
func (s *tracker) inView(c *clause, q *quantity) []*thing {
	hand := slices.Clone(s.hand)
	n, many := s.r.toldForHowMany(c, q)
	rank := func(t *thing) int {
		if many && takesTorque(t) && (!t.many() || n > 1 && t.count > 1 && t.count != n) {
			return 0
		}
		return 1
	}
	slices.SortStableFunc(hand, func(a, b *thing) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(a.worked, b.worked))
	})
	return hand
}

// toldForHowMany tells whether a value is told for more than one fastener, and for
// how many where that is said: "twenty on both", "each of the four", "in a star".
func (r *reading) toldForHowMany(c *clause, q *quantity) (n int, many bool) {
	for i := c.lo; i < min(len(r.toks), c.hi+6); i++ {
		w := r.toks[i].s
		next := r.next(i)
		if i >= c.hi && r.toks[i-1].brk >= brkSentence && w != "both" && w != "all" && w != "each" && w != "click" {
			break
		}
		if i >= q.lo && i < q.hi || r.toks[i].men >= 0 {
			continue
		}
		switch w {
		case "both":
			if next != "sides" && next != "ends" && next != "legs" {
				return 2, true
			}
			many = true
		case "each", "apiece", "they", "them", "these", "star", "crosswise", "diagonally", "cross":
			many = true
		case "all", "those", "the", "on":
			if k := countOf[next]; k > 1 && r.toks[i+1].qty < 0 && (i+2 >= c.hi || r.toks[i+1].brk >= brkPause || r.toks[i+2].is(wPreposition|wLinking|wPronoun|wSubject|wOpener)) {
				return k, true // but "the seven speed one"
			}
			many = many || w == "those" || w == "all" && (next == "of" || next == "round" || next == "around")
		}
	}
	return n, many
}

// guesses are the rules by which a value goes to what was spoken of last.
var guesses = map[string]bool{
	weighed:            true,
	"fastener in hand": true, "clamp or fitting in hand": true, "part in hand": true, "part that the talk turned to": true, "fastener of the part that the talk turned to": true,
}

// spokenOfOnly are the rules by which a value goes to a fastener that is not named with
// it: of those made by what was spoken of last, one in seven is another's.
var spokenOfOnly = map[string]bool{
	weighed:            true,
	"fastener in hand": true, "clamp or fitting in hand": true, "fastener of the part in hand": true, "part in hand": true,
	"part that the talk turned to": true, "fastener of the part that the talk turned to": true, "what the talk turned to": true,
	"started by hand before": true, "the one started by hand before": true, "what the value before was for, from another source": true, "fastener spoken of before": true, "part whose fasteners were counted": true,
}

// allCounted tells whether things were counted between two tokens: "all six", "three of them".
func (r *reading) allCounted(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if r.toks[i].is(wCountOf) && countOf[r.toks[i].s] > 1 && (r.prev(i) == "all" || r.next(i) == "of" && (r.word(i+2) == "them" || r.word(i+2) == "those")) {
			return true
		}
	}
	return false
}

// writes are the words of a value that is written on something, not for it.
var writes = set("wrote written printed stamped marked scribbled pencilled penciled scratched marker pen chalked")

// heldStill tells whether a mention is what a clause says to hold while something else is turned.
func (r *reading) heldStill(ci, mi int) bool {
	for _, ai := range r.clauses[ci].acts {
		if a := &r.acts[ai]; a.action.Name == "support" && slices.Contains(a.objects, mi) {
			return true
		}
	}
	return false
}

// screwedIn are the parts that are tightened as they are fitted.
var screwedIn = wordsOf("screwed in as they are fitted")

// subjectBefore tells whether "they're", "these are" or "it's" stands before a
// value: what is named after it is then another thing.
func (s *tracker) subjectBefore(c *clause, q *quantity) bool {
	for i := c.lo; i+1 < q.lo && i < c.lo+5; i++ {
		switch s.r.toks[i].s {
		case "they", "these", "those":
			return linking.has(s.r.toks[i+1].s)
		}
	}
	return false
}

// fastenerOf finds the fastener that holds a part, the latest spoken of first.
func (s *tracker) fastenerOf(part *thing) *thing {
	for i := len(s.hand) - 1; i >= 0; i-- {
		t := s.hand[i]
		if t.fastener && takesTorque(t) && (t.owner == part || owns(part, t)) {
			return t
		}
	}
	return nil
}

// appliedIn tells whether a value was set, is to be set, or is a document's word.
func (s *tracker) appliedIn(ci int, q *quantity, h *heard) string {
	r := s.r
	c := &r.clauses[ci]
	says, future, inBook, doc := false, false, false, ""
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		switch {
		case saying.has(w), w == "told" && r.next(i) == "me":
			says = true
		case documents.has(w):
			doc = w
			says = says || i+1 < c.hi && ofDocument.has(r.toks[i+1].s)
			inBook = inBook || i-2 == q.hi && (r.toks[i-2].s == "in" || r.toks[i-2].s == "on") && r.toks[i-1].is(wDeterminer)
		case w == "will" || w == "'ll" || w == "supposed" || w == "should" || (w == "meant" || w == "ought") && r.next(i) == "to":
			future = true
		}
	}
	if doc != "" {
		h.source.Title = doc
	}
	theirs := s.othersFigure(c, q)
	if says && doc == "" && ci > 0 && !theirs {
		p := &r.clauses[ci-1]
		for i := p.lo; i < p.hi; i++ {
			if documents.has(r.toks[i].s) {
				h.source.Title = r.toks[i].s
			}
		}
	}
	switch {
	case theirs, r.rowOfValues(c), c.mood&(other) != 0 && says, r.misprinted(q), r.notedDown(c, q):
		return "quoted" // somebody's word, or one that nobody believes
	case r.warnedOff(q), r.tooMuch(q):
		return "quoted" // "don't you go leaving that at twenty", "thirty foot pounds is a lot in brass"
	case says && doc != "" || says && h.source.Title != "":
		return "quoted"
	case (inBook || s.saysIt(c, q)) && !s.actDone(c) && !s.setSoon(ci, q):
		return "quoted" // "it says twelve newton metres", and nobody has tightened it
	case r.heardIn(ci, r.lastOn(ci), "other-machine") && !s.actDone(c) && !s.setSoon(ci, q):
		return "quoted" // "fifty, but that's a different engine"
	case r.givenToOther(q) && !s.actDone(c) && !s.setSoon(ci, q):
		h.source.Scope = scopeOther
		return "quoted" // "my old truck takes a hundred and thirty"
	case r.vague(q):
		return "quoted" // nobody sets "thirty something"
	case future || framing(c, q)&(announced|negated|conditional|hypothetical|asked) != 0 && !s.actDone(c):
		return "intended"
	case h.of != nil && h.hedged && s.lastState(h.of) == Removed, s.guessed(c, q):
		return "intended"
	}
	if n := ci + 2; n < len(r.clauses) && q.hi == c.hi && r.toks[c.hi].s == "if" && r.clauses[n].mood&negated != 0 && r.toks[r.clauses[n].lo].s == "i" && r.clauses[n].hi-r.clauses[n].lo < 6 {
		return "intended" // "fourteen newton metres if you have the crow foot, I don't have"
	}
	if s.putOffNext(ci) || r.putOffBefore(ci, q) || s.noWrenchFor(ci, q) || !s.actDone(c) && (s.leftLight(ci, q, h.of) || s.onceThen(ci, q)) {
		return "intended"
	}
	// "when she's down": still to do
	for i := c.lo; i < min(c.hi+10, len(r.toks)) && r.toks[max(i-1, 0)].brk < brkSentence; i++ {
		if r.toks[i].s == "when" && i > q.hi-1 {
			return "intended"
		}
	}
	return "done"
}

// lastOn gives the last clause in which a value may be told to be another machine's: the next one,
// but where that is a sentence with a value of its own ("Forty. It was forty on the other one").
func (r *reading) lastOn(ci int) int {
	n := ci + 1
	if n >= len(r.clauses) || r.clauses[n].sentence != r.clauses[ci].sentence && len(r.clauses[n].qtys) > 0 {
		return ci
	}
	return n
}

// muchness are the words by which somebody says what they think of a value.
var muchness = set("lot much too nothing plenty loads way silly daft mad crazy insane huge massive")

// tooMuch tells whether a value is only said to be much or little: "thirty foot pounds is a lot in brass".
func (r *reading) tooMuch(q *quantity) bool {
	i := q.hi // not "which is nothing", which is said of a value that is set
	if w := r.word(i); w != "is" && w != "'s" && w != "sounds" && w != "seems" && w != "feels" {
		return false
	}
	for i++; r.word(i) == "a" || r.word(i) == "like" || r.word(i) == "not" || r.word(i) == "an" || r.word(i) == "awful" || r.word(i) == "quite"; i++ {
	}
	return muchness.has(r.word(i))
}

// warnedOff tells whether a value is said to be one not to go to or to leave a thing at: "never go
// past thirty foot pounds".
func (r *reading) warnedOff(q *quantity) bool {
	c := &r.clauses[q.cl]
	i := c.lo
	for i < q.lo && (r.toks[i].is(wOpener) || r.toks[i].s == "you" || r.toks[i].s == "please") {
		i++
	}
	switch r.toks[i].s {
	case "don't", "never":
	case "do":
		if i++; r.word(i) != "not" {
			return false
		}
	default:
		return false
	}
	for i++; i < q.lo && (r.toks[i].s == "you" || r.toks[i].s == "ever" || r.toks[i].s == "just" || r.toks[i].s == "go" && strings.HasSuffix(r.next(i), "ing")); i++ {
	}
	if i >= q.lo || !r.toks[i].is(wVerb|wForm) || notForbidden.has(r.toks[i].s) {
		return false
	}
	for ; i < q.lo; i++ {
		switch r.toks[i].s {
		case "till", "until", "before", "if", "unless", "without", "because":
			return false
		}
		if r.toks[i].brk >= brkComma {
			return false
		}
	}
	return true
}

// notForbidden are the verbs that forbid nothing after "don't".
var notForbidden = set("need have know think want worry forget remember like trust mind believe get care see say ask quote hold")

// notedDown tells whether a value was only written down: "I wrote it down, eighty seven".
func (r *reading) notedDown(c *clause, q *quantity) bool {
	for i := q.lo - 1; i > 0 && i > q.lo-8 && r.clauses[r.toks[i].cl].sentence == c.sentence; i-- {
		if r.toks[i].s == "down" {
			switch w := r.toks[i-1].s; {
			case writes.has(w) || w == "noted" || w == "jotted":
				return true
			case (w == "it" || w == "that" || w == "them") && i > 1:
				return writes.has(r.toks[i-2].s) || r.toks[i-2].s == "noted" || r.toks[i-2].s == "jotted"
			}
		}
	}
	return false
}

// misprinted tells whether the talk right after a value, up to the next one, says that it cannot
// be so: "180 newton metres. The axle doesn't even get that. … You'd shear it off".
func (r *reading) misprinted(q *quantity) bool {
	_, last := r.clausesAround(q, 0, 6, func(*quantity) bool { return true })
	return r.heardIn(q.cl+1, last, "misprint")
}

// putOffBefore tells whether what stands before a value puts it off: "when it's on the ground
// tomorrow they get eighty", "that leaves for Thursday the nut, forty".
func (r *reading) putOffBefore(ci int, q *quantity) bool {
	c := &r.clauses[ci]
	from := c.lo
	if ci > 0 && r.clauses[ci-1].sentence == c.sentence {
		from = r.clauses[ci-1].lo
	}
	later := false
	for i := from; i < q.lo; i++ {
		switch w := r.toks[i].s; w {
		case "did", "done", "was", "were", "had", "last", "ago", "already", "yesterday":
			return false
		default:
			later = later || w == "later" || days.has(w)
		}
	}
	return later
}

// wrenchWords are the tools by which a value is set.
var wrenchWords = set("wrench clicker clicky driver torque")

// noWrenchFor tells whether the next words say that there is no wrench to set a value with,
// or none that gets there, and nothing is set right after: "eight newton metres. I haven't
// got a wrench that small, so it's two fingers."
func (s *tracker) noWrenchFor(ci int, q *quantity) bool {
	r := s.r
	for k := ci; k < min(len(r.clauses), ci+4) && r.since(q.hi-1, r.clauses[k].lo) < 9; k++ {
		n := &r.clauses[k]
		from, not, wrench := n.lo, false, false
		if k == ci {
			from = q.hi
		}
		for i := from; i < n.hi; i++ {
			w := r.toks[i].s
			switch {
			case w == "click" || w == "clicked" || w == "clicks":
				return false
			case r.toks[i].qty >= 0 && r.qtys[r.toks[i].qty].Kind == normalize.Torque:
				return false
			case w == "one" || w == "ones" || w == "two":
				if i > from && r.toks[i-1].is(wPlace) || r.prev(i) == "last" || r.prev(i) == "other" {
					return false // "I can't get on the last one with it"
				}
				wrench = wrench || w == "one" && r.next(i) == "that" && (r.word(i+2) == "small" || r.word(i+2) == "low" || r.word(i+2) == "big")
			case wrenchWords.has(w):
				wrench = true
				not = not || r.awayAt(i+1) || r.lentBefore(i)
			case w == "n't" || w == "not" || w == "never" || w == "no" || strings.HasSuffix(w, "n't"):
				not = true
			}
		}
		if not && wrench {
			return !r.setAfter(k)
		}
	}
	return false
}

// notHere are where a wrench is that is not at hand.
var notHere = wordsOf("where a torque wrench is not at hand")

// awayAt tells whether a wrench is said at token i to be somewhere else: "is at the other yard", "is
// out on a job"; not "is at ninety" or "is in my hand".
func (r *reading) awayAt(i int) bool {
	if !linking.has(r.word(i)) {
		return false
	}
	switch w := r.next(i); w {
	case "gone", "away", "home":
		return true
	case "at", "in", "out", "over", "back", "with":
		for k := i + 2; k < min(len(r.toks), i+6) && r.toks[k-1].brk < brkComma; k++ {
			if notHere.has(r.toks[k].s) || persons.has(r.toks[k].s) {
				return true
			}
		}
	}
	return false
}

// lentBefore tells whether somebody has the wrench that is named at token i: "the lad's got my torque
// wrench".
func (r *reading) lentBefore(i int) bool {
	for k := i - 1; k > max(0, i-5) && r.toks[k].brk < brkComma; k-- {
		if w := r.toks[k].s; w == "got" || w == "has" {
			return persons.has(r.prev(k)) || persons.has(r.word(k-2))
		}
	}
	return false
}

// setAfter tells whether a value is set, or another told, in the clauses right after one.
func (r *reading) setAfter(ci int) bool {
	c := &r.clauses[ci]
	for k := ci + 1; k < min(len(r.clauses), ci+5) && r.since(c.hi-1, r.clauses[k].lo) < 12; k++ {
		n := &r.clauses[k]
		if r.saidIn(n, "click") || r.saidIn(n, "clicked") || r.valueBetween(n, n.lo, n.hi) {
			return true
		}
	}
	return false
}

// putOffNext tells whether the next breath puts off what a value is for: "I'll do that when
// I find my wrench", "Not now though, when it's gone off."
func (s *tracker) putOffNext(ci int) bool {
	r := s.r
	if ci+1 >= len(r.clauses) || r.since(r.clauses[ci].hi-1, r.clauses[ci+1].lo) > 6 {
		return false
	}
	n := &r.clauses[ci+1]
	i := r.skipped(n)
	for i < n.hi && (r.toks[i].s == "but" || r.toks[i].s == "so") {
		i++
	}
	switch w, next := r.word(i), r.next(i); {
	case w == "not" && (next == "now" || next == "today" || next == "tonight" || next == "yet" || next == "till" || next == "until"):
		return true
	case w == "later" || w == "tomorrow" || w == "only" && (next == "when" || next == "once"):
		return n.hi-i <= 6 || w == "only"
	case w == "i" && (next == "'ll" || next == "will") && (r.word(i+2) == "do" || r.word(i+2) == "get" || r.word(i+2) == "give" || r.word(i+2) == "torque") && pronounsObj.has(r.word(i+3)):
		if r.saidIn(n, "again") {
			return false // "and I'll do those again after a bit of driving"
		}
		if r.saidIn(n, "later") || r.saidIn(n, "tomorrow") || r.saidIn(n, "when") || r.saidIn(n, "once") || r.dayIn(n) {
			return true
		}
		if k := ci + 2; k < len(r.clauses) && r.clauses[k].sentence == n.sentence {
			switch r.toks[r.clauses[k].lo].s {
			case "when", "once", "after", "as", "if":
				return true
			}
		}
	}
	return false
}

// saysIt tells whether a value stands behind words by which something else gives it: "it
// says on the end of it, twelve newton metres", "they said eight". "I'd say" is no such.
func (s *tracker) saysIt(c *clause, q *quantity) bool {
	from := c.lo
	if n := int(s.r.toks[c.lo].cl); n > 0 && s.r.clauses[n-1].sentence == c.sentence && q.lo-s.r.clauses[n-1].lo < 12 {
		from = s.r.clauses[n-1].lo
	}
	for i := from + 1; i < q.lo; i++ {
		if w := s.r.toks[i].s; w != "says" && w != "said" && w != "reckons" && w != "reads" {
			continue
		}
		switch s.r.toks[i-1].s {
		case "it", "they", "he", "she", "that", "which", "helpfully", "tag", "cap", "collar", "end", "side", "lever":
			return true
		}
		if s.r.toks[i-1].men >= 0 {
			return true
		}
	}
	w := s.r.toks[c.lo].s
	return w == "says" || w == "reads"
}

// setSoon tells whether something is tightened right after a value, or said to be done.
func (s *tracker) setSoon(ci int, q *quantity) bool {
	r := s.r
	for k := ci; k < min(len(r.clauses), ci+5) && r.since(q.hi-1, r.clauses[k].lo) < 14; k++ {
		n := &r.clauses[k]
		if k == ci {
			continue
		}
		if r.valueBetween(n, n.lo, n.hi) {
			return false // "it says eighty. … So I'm doing them at eight"
		}
		if s.actDone(n) || n.hi-n.lo <= 4 && len(n.mentions) == 0 && n.mood == 0 && (r.saidIn(n, "done") || r.toks[n.lo].s == "there" || r.toks[n.hi-1].s == "there") {
			return true
		}
	}
	return false
}

// framing gives the moods that frame a value: those told not far from it. In talk
// without punctuation a clause can run on.
func framing(c *clause, q *quantity) mood {
	m := c.mood & asked
	for _, k := range c.cues {
		if k.hi <= q.lo && q.lo-k.hi <= 10 || k.lo >= q.hi && k.lo-q.hi <= 4 {
			m |= k.mood
		}
	}
	return m
}

func (s *tracker) actDone(c *clause) bool {
	for _, ai := range c.acts {
		a := &s.r.acts[ai]
		if a.happened() && (a.action.Name == "torque" || a.action.Name == "tighten") {
			return true
		}
	}
	return false
}

// guessed tells whether the speaker says that a value is a guess.
func (s *tracker) guessed(c *clause, q *quantity) bool {
	lo, hi := c.lo, min(c.hi+8, len(s.r.toks))
	for _, qi := range c.qtys {
		// "28 on both, bleeder somewhere between 6 and 8": what stands by another value is of that
		if o := &s.r.qtys[qi]; o.Kind == normalize.Torque && o.lo >= q.hi {
			hi = min(hi, o.lo-3)
		} else if o.Kind == normalize.Torque && o.hi <= q.lo {
			lo = max(lo, o.hi)
		}
	}
	for i := lo; i < hi; i++ {
		switch s.r.toks[i].s {
		case "guess", "guessing", "guessed", "reckon", "somewhere":
			return true
		case "thought":
			return i > 0 && s.r.toks[i-1].s == "have"
		}
	}
	return s.r.notByHeart(q)
}

// notByHeart tells whether right before a value its speaker says not to know it: "the torque I
// don't know for this fork. Thirty, forty, something like that".
func (r *reading) notByHeart(q *quantity) bool {
	for i := q.lo - 1; i >= max(1, q.lo-14); i-- {
		switch t := &r.toks[i]; {
		case t.qty >= 0 && r.toks[i].s != "to" && int(t.qty) < len(r.qtys) && r.qtys[t.qty].hi < q.lo-2:
			return false
		case t.s == "know" || t.s == "remember":
			if w := r.toks[i-1].s; w == "not" || strings.HasSuffix(w, "n't") {
				return r.since(i, q.lo) < 12 && !r.weSpeak(i+1, q.lo) && r.next(i) != "which" && r.next(i) != "who" && r.next(i) != "if"
			}
		}
	}
	return false
}

func (s *tracker) lastState(t *thing) string {
	st, _ := t.state()
	return st
}

// torques gives each value heard.
func (r *reading) torques(led []Entry) []Torque {
	out := []Torque{}
	for i := range r.heard {
		if !r.heard[i].dropped && r.toldTwice(i) {
			r.heard[i].dropped = true
		}
	}
	for i := range r.heard {
		if r.heard[i].dropped {
			continue
		}
		r.heard[i].source = r.sourceOf(&r.heard[i])
		h := r.heard[i]
		q := &r.qtys[h.qty]
		h.hedged = h.hedged || r.doubtedNext(q)
		low, high := q.Low, q.High
		if or, at := r.mayBeInstead(q); or != nil {
			low, high, h.hedged = minRat(low, or), maxRat(high, or), true
			if i+1 < len(r.heard) && r.heard[i+1].qty == at && r.heard[i+1].of == h.of {
				r.heard[i+1].dropped = true
			}
		}
		t := Torque{Applied: h.applied, Hedged: h.hedged, Stage: max(h.stage, 1), SourceSaid: h.source, NM: []float64{}}
		t.ID = "T" + strconv.Itoa(len(out)+1)
		if h.of != nil {
			t.Fastener, t.LedgerID, t.MaybeOf = torqueName(h.of), h.of.id, h.maybeOf()
			t.Unnamed = t.MaybeOf == "" && h.spoken
		}
		if h.of == nil && h.noun > 0 {
			t.Fastener = shortName(strings.ToLower(r.text(r.phraseFrom(h.noun-1), h.noun)))
		}
		if q.Kind == normalize.Torque {
			t.Said.Unit = q.Unit
		}
		if q.Kind == normalize.Torque && q.Low != nil {
			t.Said.Low, t.Said.High = ratFloat(low), ratFloat(high)
			a, ok := normalize.ToNM(low, q.Unit)
			b, ok2 := normalize.ToNM(high, q.Unit)
			if ok && ok2 {
				t.NM = []float64{nmRound(a), nmRound(b)}
			}
		}
		if h.angle != nil {
			f := ratFloat(h.angle)
			t.AngleDeg = &f
		}
		t.UnitFrom, t.UnitOr = q.unitFrom, q.unitOr
		c := &r.clauses[q.cl]
		t.Order, t.Condition = r.orderOf(q), r.conditionOf(q)
		if r.warnedOff(q) {
			t.Condition = NotToSet
		}
		lo := q.lo
		for lo > c.lo && q.lo-lo < 8 {
			lo--
		}
		t.Place = r.placeAround(lo, max(h.angleHi, q.hi, min(c.hi, q.hi+4)), q.lo).by(h.rule)
		out = append(out, t)
	}
	return out
}

// mayBeInstead gives the other number that a value may be, where the words right after it say so,
// and the value as which it was heard itself, -1 where it was not: "seven newton metres I think,
// could be eight", "two newton metres, I think, two or three"; nil where none is told.
func (r *reading) mayBeInstead(q *quantity) (or *big.Rat, heard int) {
	if q.Kind != normalize.Torque || q.Low == nil || q.Low.Cmp(q.High) != 0 {
		return nil, -1
	}
	at := q.hi // past what only doubts it
	for at < min(len(r.toks), q.hi+4) && (r.toks[at].s == "i" || r.toks[at].s == "think" || r.toks[at].s == "reckon" || r.toks[at].s == "about") {
		at++
	}
	hi := min(len(r.toks), at+7)
	if at >= hi || r.since(q.hi-1, at) > 4 {
		return nil, -1
	}
	base := int(r.toks[at].lo)
	next := r.numbersOf(at, hi)
	if len(next) == 0 {
		return nil, -1
	}
	n := &next[0]
	lo := r.tokenAt(base + n.Start)
	end := r.tokenAt(base+n.End-1) + 1
	heard = int(r.toks[lo].qty)
	switch {
	case n.Low == nil || !r.nothingMore(&r.clauses[r.toks[lo].cl], end) || heard >= 0 && (r.qtys[heard].Kind != normalize.Torque || r.qtys[heard].unitFrom == ""):
	case n.Alt && lo == at && n.Low.Cmp(q.Low) == 0 && within(n.High, q.Low, 60):
		return n.High, heard // "two or three" of "two newton metres"
	case n.Low.Cmp(n.High) == 0 && within(n.Low, q.Low, 60) && r.mayBeSo(at, lo):
		return n.Low, heard
	}
	return nil, -1
}

// mayBeSo tells whether the tokens lo to hi say no more than that something may be so.
func (r *reading) mayBeSo(lo, hi int) bool {
	may := false
	for i := lo; i < hi; i++ {
		switch r.toks[i].s {
		case "could", "might", "may", "maybe", "possibly", "perhaps":
			may = true
		case "it", "be", "or", "even":
		default:
			return false
		}
	}
	return may
}

// within tells whether a value is no more than so many percent off another, and not the same.
func within(a, b *big.Rat, percent int64) bool {
	return a.Cmp(b) != 0 && near(a, b, percent)
}

func minRat(a, b *big.Rat) *big.Rat {
	if b != nil && a != nil && b.Cmp(a) < 0 {
		return b
	}
	return a
}

func maxRat(a, b *big.Rat) *big.Rat {
	if b != nil && a != nil && b.Cmp(a) > 0 {
		return b
	}
	return a
}

// doubtedNext tells whether the words right after a value doubt it: "ten newton metres.
// Hang on, is it?"
func (r *reading) doubtedNext(q *quantity) bool {
	if r.valueTakenBack(q) {
		return true
	}
	if q.hi+1 >= len(r.toks) || r.toks[q.hi-1].brk < brkComma || r.since(q.hi-1, q.hi) > 6 {
		return false
	}
	switch w, next := r.toks[q.hi].s, r.next(q.hi); w {
	case "hang", "hold":
		return next == "on" && !r.otherValueSoon(q)
	case "or":
		return next == "is" && r.word(q.hi+2) == "it"
	case "is", "'s":
		return next == "it" && r.toks[q.hi+1].brk >= brkComma
	}
	return false
}

// valueTakenBack tells whether the words right after a value take it back and tell no other in
// its place: "forty-five. No. Wait. It was forty-five on the old one."
func (r *reading) valueTakenBack(q *quantity) bool {
	if q.hi >= len(r.toks) || r.toks[q.hi-1].brk < brkComma || r.since(q.hi-1, q.hi) > 6 || r.otherValueSoon(q) {
		return false
	}
	switch next := r.word(q.hi + 1); r.toks[q.hi].s {
	case "no", "nope":
		return next == "wait" || next == "hang" || next == "that's" && (r.word(q.hi+2) == "wrong" || r.word(q.hi+2) == "not")
	case "wait":
		return next == "no"
	}
	return false
}

// setsWrench tells of "I've wound the wrench down to fifty-five newton metres", which is no end of
// what it shows.
func (r *reading) setsWrench(c *clause, q *quantity) bool {
	for i := c.lo; i < q.lo; i++ {
		if setsScale.has(r.toks[i].s) {
			return true
		}
	}
	return false
}

// otherValueSoon tells whether another torque is told in the next words after one.
func (r *reading) otherValueSoon(q *quantity) bool {
	for k := q.hi; k < min(len(r.toks), q.hi+8); k++ {
		if qi := r.toks[k].qty; qi >= 0 {
			if o := &r.qtys[qi]; o.Kind == normalize.Torque && (o.Low == nil || q.Low == nil || o.Low.Cmp(q.Low) != 0) {
				return true
			}
		}
	}
	return false
}

// toldTwice tells whether a value is only said again, or is said in full right
// after: "Eighty. Eighty inch pounds." It is then one value.
func (r *reading) toldTwice(i int) bool {
	h := &r.heard[i]
	q := &r.qtys[h.qty]
	if q.Low == nil {
		return false
	}
	for k := max(0, i-3); k < min(len(r.heard), i+2); k++ {
		o := &r.heard[k]
		p := &r.qtys[o.qty]
		if k == i || o.dropped || o.of != h.of || p.Unit != q.Unit || !p.sameValue(q) || h.angle != nil {
			continue
		}
		if r.sameAgain(min(p.hi, q.hi), max(p.lo, q.lo)) {
			continue // "that's that side. The other, same again, twelve"
		}
		if apart := r.since(min(p.lo, q.lo), max(p.lo, q.lo)); apart > 15 || k > i && (q.unitFrom == "" || p.unitFrom != "") {
			continue
		}
		if h.applied == "done" && o.applied != "done" && k < i {
			if h.source.Title == "" && h.source.Who == "" {
				h.source = o.source
			}
			o.dropped = true // said first, then set: told where it was set
			continue
		}
		return true
	}
	return false
}

// maybeOf names another fastener that a value may as well be for: another thing than that it is
// taken for, or the fastener of another part; "" where none is as likely or has a name of its own.
func (h *heard) maybeOf() string {
	or := h.orOf
	if or == nil && h.spoken {
		or = h.of.or
	}
	if or == nil || or.name == "" || or == h.of.owner || or.owner == h.of {
		return ""
	}
	name := torqueName(or)
	if or != h.orOf && !or.fastener {
		name = shortName(lexicon.Modifier(or.name) + " " + h.of.name[strings.LastIndexByte(h.of.name, ' ')+1:])
	}
	told, other := strings.Fields(torqueName(h.of)), strings.Fields(name)
	within := func(a, b []string) bool { // "head bolts" beside "outside head bolts" tells nothing apart
		return !slices.ContainsFunc(a, func(w string) bool { return !slices.Contains(b, w) })
	}
	if within(told, other) || within(other, told) {
		return ""
	}
	return name
}

// torqueName names the fastener with its side, as the talk tells it.
func torqueName(t *thing) string {
	n := t.called()
	if !t.fastener && !takesTorque(t) && !strings.Contains(n, "bolt") {
		return shortName(n)
	}
	if t.side != "" && !strings.Contains(n, t.side) {
		n = t.side + " " + n
	}
	return shortName(n)
}

// placeAround is the place of the tokens lo to hi with the time of token at.
func (r *reading) placeAround(lo, hi, at int) Place {
	p := r.place(lo, hi)
	w := r.talk.Words[r.toks[at].w]
	if int(w.Clip) == p.Clip {
		p.At, p.AtExact, p.CueAt = round3(w.At), w.Is(transcript.Exact), r.cueAt(w)
	}
	return p
}

func ratFloat(x *big.Rat) float64 { f, _ := x.Float64(); return f }

func nmRound(x *big.Rat) float64 {
	f, _ := x.Float64()
	v, _ := strconv.ParseFloat(strconv.FormatFloat(f, 'f', 3, 64), 64)
	return v
}

// setsScale are the verbs by which a torque wrench is set to a value.
var setsScale = wordsOf("what sets a torque wrench")
