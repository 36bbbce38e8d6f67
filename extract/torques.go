package extract

import (
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
	for i := max(c.lo, q.lo-wordsAround); i < q.lo; i++ {
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
			if h.source.Title == "" && h.source.Who == "" && o.source.Scope != scopeOther {
				h.source = o.source
			}
			o.dropped = true // said first, then set: told where it was set
			continue
		}
		if h.applied == "done" {
			o.applied = "done" // said short, then in full
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
