package extract

import (
	"slices"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// beside are the prepositions of a thing that only tells where another is.
var beside = set("by near beside towards toward opposite against past above below across along")

// refer walks the talk and tells which thing each phrase stands for, and what
// happened to it.
func (r *reading) refer() {
	st := &tracker{r: r}
	for ci := range r.clauses {
		st.clause(ci)
	}
	r.things = append(r.things, st.odds...)
	r.implied()
}

// implied lets a part be back where its own fastener was fitted after it came
// off: bolts are not torqued into thin air.
func (r *reading) implied() {
	byOwner := map[*thing][]*thing{}
	byWord := map[string][]*thing{}
	for _, f := range r.things {
		if !f.fastener {
			continue
		}
		if f.owner != nil {
			byOwner[f.owner] = append(byOwner[f.owner], f)
		}
		for w := range f.mods {
			byWord[w] = append(byWord[w], f)
		}
	}
	for _, t := range r.things {
		if t.fastener || len(t.events) == 0 {
			continue
		}
		if st, _ := t.state(); st != Removed {
			continue
		}
		off := t.events[len(t.events)-1].lo
		for _, f := range append(byOwner[t], byWord[t.head]...) {
			if f.owner != t && !(owns(t, f) && (t.side == "" || f.side == "" || t.side == f.side)) {
				continue
			}
			for _, e := range f.events {
				switch e.action {
				case "fit", "start by hand", "tighten", "torque":
					if e.lo > off {
						t.events = append(t.events, event{action: "fit", act: -1, rule: "implied by its fastener", lo: e.lo, hi: e.hi})
						off = 1 << 30
					}
				}
			}
		}
	}
}

// tracker is what a listener has in mind at one moment of the talk.
type tracker struct {
	r           *reading
	hand        []*thing // things spoken of, the latest last
	topic       *thing   // the part that a clause of its own announced: "Master cylinder.", "Fender back on."
	topicAt     int      // token of the clause that announced it
	heading     *thing   // what a clause last did nothing but name, be it one that holds no bolts
	headingAt   int
	sized       *thing // fasteners last told by how many of what size, and the clause that tells them
	sizedAt     int
	side        string // which side the talk is on, "" where not said
	sideAt      int
	exchangedAt int             // token of the words by which two values were last told the wrong way round, 0 before any
	fitted      int             // token of the last thing that went on, 0 before any
	back        int             // the same of what is known to have come off before
	turns       []turn          // how things came off and went on of late, the latest last
	lent        map[string]bool // names of what lent a hand as a tool
	odd         oddOne          // one of several that was told apart last by how it fared
	nth         string          // which of several was told apart last by its number, and where
	nthAt       int
	odds        []*thing // all of those: nothing else is said of them
	settled     bool     // the words around the last pronoun settle what it is
}

// anyOfThem tells whether a mention is of any such thing and of none of this job: "that's how you
// stretch a stud".
func (r *reading) anyOfThem(c *clause, m *mention) bool {
	if m.plural || r.toks[m.from].s != "a" && r.prev(m.from) != "a" {
		return false
	}
	for i := c.lo + 1; i < m.from; i++ {
		if w := r.toks[i].s; (w == "how" || w == "what") && r.toks[i-1].is(wLinking) && r.toks[i+1].s == "you" {
			return true
		}
	}
	return false
}

// toldBySize gives the fastener named last that a mention only tells the thread of: "back plate
// nuts. Forty five foot pounds, for a seven sixteenths stud".
func (s *tracker) toldBySize(m *mention) *thing {
	r := s.r
	i := m.lo - 1
	for i > 0 && i > m.lo-5 && (r.toks[i].qty >= 0 || countOf[r.toks[i].s] > 0 || numberWord.has(r.toks[i].s) || fractionWord.has(r.toks[i].s)) {
		i--
	}
	if m.plural || i == m.lo-1 || i < 3 || r.toks[i].s != "a" && r.toks[i].s != "an" || r.toks[i-1].s != "for" {
		return nil
	}
	if q := r.toks[i-2].qty; q < 0 || r.qtys[q].Kind != normalize.Torque {
		return nil
	}
	for i := len(s.hand) - 1; i >= 0 && r.since(s.hand[i].last, m.lo) < 20; i-- {
		if t := s.hand[i]; t.fastener && takesTorque(t) && !isLock(t) && (t.head == m.head || m.head == "stud") {
			return t
		}
	}
	return nil
}

func (s *tracker) clause(ci int) {
	r := s.r
	c := &r.clauses[ci]
	if sd := s.clauseSide(c); sd != "" {
		s.side, s.sideAt = sd, c.lo
	} else if r.since(s.sideAt, c.lo) > 25 {
		s.side = ""
	}
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.kind&lexicon.Tool != 0 && m.kind&(lexicon.Fastener) == 0 && (m.prep == "with" || m.prep == "using") {
			continue
		}
		if m.kind == lexicon.Tool|lexicon.Part && (!r.inAct(ci, mi) || r.actOn(ci, mi) == "place") {
			continue
		}
		if w := r.next(m.hi); m.head == "driver" && r.word(m.hi) == "set" && (w == "at" || w == "to") {
			continue // "I've got the driver set at two": what it is done with
		}
		if s.lends(m) || s.pulledOn(m) || r.anyOfThem(c, m) {
			continue
		}
		t := s.resolve(ci, mi)
		if t == nil {
			continue
		}
		m.entry = t
		t.mentions = append(t.mentions, mi)
		t.last = m.lo
		worked := t.worked
		if (!beside.has(m.prep) || r.inAct(ci, mi)) && !r.heldStill(ci, mi) && !r.onlyMinded(m) || t.fastener {
			s.touch(t)
		}
		if s.inPassing(ci, mi) {
			t.worked = worked
		} else {
			t.worked = m.lo + 1
		}
		if t.fastener && alike.has(t.head) {
			for _, k := range c.mentions {
				if o := r.mentions[k].entry; o != nil && o != t && o.fastener && alike.has(o.head) && o.head != t.head {
					o.mate, t.mate = true, true
				}
			}
		}
	}
	if c.together && c.mood&(negated|conditional|hypothetical|announced|asked|aside) == 0 && len(c.mentions) == 0 {
		s.fitted = c.lo
		s.turns = append(s.turns, turn{c.lo, false}, turn{c.lo, false}, turn{c.lo, false})
	}
	s.turn(ci)
	s.bySize(c)
	s.theyHold(c)
	s.oddOne(ci)
	heard := len(c.acts)
	for k := 0; k < len(c.acts) || k == heard; k++ {
		if k == heard {
			s.inTurn(c) // what the acts that were heard leave aside
		}
		if k == len(c.acts) {
			break
		}
		ai := c.acts[k]
		there, sure := s.whereTo(&r.acts[ai])
		s.apply(ci, ai, &r.acts[ai])
		if a := &r.acts[ai]; there != nil && !slices.Contains(a.things, there) {
			a.there, a.thereSure = there, sure
		}
	}
	s.values(ci)
}

// whereTo gives the thing that "it" or "them" stands for where a clause tells with it where
// something is done, "put a cloth in it", "dab of oil on it": what the last act was done to,
// where nothing else was spoken of since, and then it is sure, else what was in hand last.
func (s *tracker) whereTo(a *act) (there *thing, sure bool) {
	r := s.r
	from := a.verb + 1
	if a.rule == stuffAndPlace {
		from = a.lo
	} else if a.verb < 0 || a.subject {
		return nil, false
	}
	many, found, lead := false, false, ""
	for i := from; i < min(r.clauses[a.cl].hi, from+11) && !found; i++ {
		if w := r.toks[i].s; i > from && r.endsOnPronoun(i, r.clauses[a.cl].hi) {
			switch r.toks[i-1].s {
			case "of", "on", "off", "in", "into", "onto", "over", "round", "around", "under", "through", "inside", "behind":
				many, found, lead = w == "them" || w == "those" || w == "these", i-1 > a.verb, r.toks[i-1].s
			}
		}
	}
	if !found {
		return nil, false
	}
	for k := len(s.hand) - 1; k >= 0 && there == nil; k-- {
		t := s.hand[k]
		if t.last > a.lo {
			continue // what is named in the same breath is what goes there
		}
		if r.since(t.last, a.lo) > 12 {
			break
		}
		if t.many() == many && t.name != "" && !(t.fastener && lead != "of" && lead != "on" && lead != "onto" && lead != "off") {
			there = t
		}
	}
	if there == nil {
		return nil, false
	}
	if sure = there.worked > there.last && r.lastWorked(a) == there; !sure && (lead == "off" || lead == "of") {
		return nil, false // what else something comes off
	}
	return there, sure
}

// endsOnPronoun tells whether a word at i stands for a thing that is named elsewhere, and
// names none with the next: "on it", "on those", not "on those bolts".
func (r *reading) endsOnPronoun(i, hi int) bool {
	switch r.toks[i].s {
	case "it", "them":
		return r.toks[i].men < 0
	case "this", "that", "these", "those":
		return r.toks[i].men < 0 && (i+1 >= hi || r.toks[i].brk >= brkComma)
	}
	return false
}

// lastWorked gives the one thing that the last act shortly before one was done to, or nil.
func (r *reading) lastWorked(a *act) *thing {
	for k := a.cl; k >= 0 && k >= a.cl-2 && r.since(r.clauses[k].lo, a.lo) < 8; k-- {
		for i := len(r.clauses[k].acts) - 1; i >= 0; i-- {
			o := &r.acts[r.clauses[k].acts[i]]
			if o.lo >= a.lo || !o.happened() || len(o.things) == 0 && len(o.objects) > 0 {
				continue // of a tool, or what is used up
			}
			if len(o.things) == 1 {
				return o.things[0]
			}
			return nil
		}
	}
	return nil
}

// slackens are the parts that are let slack for the work.
var slackens = wordsOf("let slack for the work")

// draws are the verbs by which a part is drawn along, and a fastener tight.
var draws = set("pull draw wind run haul squeeze")

// pulledOn tells whether a mention is of a brake that is pulled on to hold things
// still: "brake on hard, it's in gear". One that came off before goes on.
func (s *tracker) pulledOn(m *mention) bool {
	r := s.r
	i := m.hi
	if w := r.word(i); w == "'s" || w == "is" {
		i++
	}
	if m.head != "brake" && m.head != "handbrake" || r.word(i) != "on" {
		return false
	}
	if w := r.next(i); r.toks[i].brk < brkComma && i+1 < len(r.toks) && r.toks[i+1].qty < 0 && w != "hard" && w != "full" && w != "so" && w != "and" && w != "to" {
		return false
	}
	for _, t := range r.like(m.head, false) {
		if t.head == m.head && len(t.events) > 0 {
			return false
		}
	}
	return true
}

// lenders are parts by name that as often lengthen a lever or take a weight.
var lenders = wordsOf("what lengthens a lever")

// leverage are the words of what is done with them.
var leverage = set("lean leaning leaned leant heave heaved heaving swing swung leverage weight winch hoist jump bounce stand standing stood lift lifting lifts haul hauling crank cranking")

// lends tells whether a mention is of what only lends a hand: "stick a pipe on the
// end of it and lean on it", "chain on, swing it up", and the same pipe later on.
func (s *tracker) lends(m *mention) bool {
	r := s.r
	if (limbs.has(m.head) || forcing.has(m.head) && !m.plural) && r.limbOf(m) {
		return true
	}
	if !lenders.has(m.head) || m.isNew || m.plural || len(content(m.mods)) > 0 {
		return false
	}
	if s.lent[m.head] {
		return true
	}
	for _, t := range r.like(m.head, false) {
		if t.head == m.head && len(t.events) > 0 {
			return false
		}
	}
	lends := r.lentAs(m) || r.toolNear(m)
	if !lends {
		for i := m.hi; i < min(len(r.toks), m.hi+10) && r.since(m.hi-1, i) < 6; i++ {
			if r.toks[i].is(wSeldom) && leverage.has(r.toks[i].s) {
				lends = true
			}
			if o := int(r.toks[i].men); o >= 0 && r.mentions[o].kind&lexicon.Part != 0 && r.mentions[o].kind&lexicon.Tool == 0 && r.mentions[o].head != m.head {
				break // told of another thing
			}
		}
	}
	if lends {
		if s.lent == nil {
			s.lent = map[string]bool{}
		}
		s.lent[m.head] = true
	}
	return lends
}

// limbs are the words for what a puller grips with and a split pin is bent over by.
var limbs = set("leg jaw arm tail tang")

// forcing are the words for what a puller is wound up by.
var forcing = set("bolt screw")

// limbOf tells whether a mention is of a limb of the puller or the split pin named shortly before.
func (r *reading) limbOf(m *mention) bool {
	for k := int(r.toks[m.lo].men) - 1; k >= 0 && k >= int(r.toks[m.lo].men)-3 && r.since(r.mentions[k].lo, m.lo) < 10; k-- {
		o := &r.mentions[k]
		if forcing.has(m.head) {
			if o.kind&lexicon.Tool != 0 && pullers.has(o.head) && o.prep != "for" {
				for _, w := range m.mods {
					if w == "centre" || w == "center" || w == "middle" || w == "forcing" || w == "jacking" || w == "pressure" || w == "main" || w == o.head {
						return true // "puller on, wind the centre bolt in"
					}
				}
			}
			continue
		}
		if o.kind&lexicon.Tool != 0 && pullers.has(o.head) && m.head != "tail" || o.entry != nil && (o.head == "pin" || o.head == "cotter") && isLock(o.entry) && (m.head == "leg" || m.head == "tail") {
			return len(content(m.mods)) == 0
		}
	}
	return false
}

// toolNear tells whether a tool was named shortly before of which a mention says a
// word again: the bar after a breaker bar, the chain after a chain hoist.
func (r *reading) toolNear(m *mention) bool {
	for k := int(r.toks[m.lo].men) - 1; k >= 0 && r.since(r.mentions[k].lo, m.lo) < 25; k-- {
		if o := &r.mentions[k]; o.kind == lexicon.Tool && o.hi-o.lo > 1 && r.toks[o.hi-1].s == m.head {
			return true
		}
	}
	return false
}

// lentAs tells whether a mention stands where a lever is made longer: "on the end of it",
// "on the spanner".
func (r *reading) lentAs(m *mention) bool {
	i := m.hi
	if w := r.word(i); w == "back" {
		i++
	}
	if w := r.word(i); w != "on" && w != "over" {
		return false
	}
	for k := i + 1; k < min(len(r.toks), i+4); k++ {
		if o := int(r.toks[k].men); o >= 0 {
			return r.mentions[o].kind == lexicon.Tool
		}
	}
	return false
}

// inPassing tells whether a thing is named beside the work in hand: put off, done
// before, kept somewhere, only to be minded, or where another thing goes.
func (s *tracker) inPassing(ci, mi int) bool {
	r := s.r
	c := &r.clauses[ci]
	m := &r.mentions[mi]
	if c.mood&negated != 0 && r.leftAlone(c) && !r.done(c, mi) {
		return true // "I've not touched the hinge bolts"
	}
	if r.besides(c, m) || r.onlyMinded(m) || how.has(r.word(m.hi)) || r.clips(m) || r.toldForAfter(m) || r.ofSource(m) {
		return true
	}
	return s.beside(ci, mi) && !r.valueSoon(m) && !r.valueBetween(c, c.lo, m.lo)
}

// beside tells whether a thing is only held, left alone, no work of this job, or where
// another goes, as far as its clause tells.
func (s *tracker) beside(ci, mi int) bool {
	r := s.r
	c := &r.clauses[ci]
	m := &r.mentions[mi]
	if r.heldStill(ci, mi) {
		return true
	}
	if n := ci + 1; n < len(r.clauses) && r.clauses[n].sentence == c.sentence && len(r.clauses[n].mentions) == 0 && (r.clauses[n].passing || r.clauses[n].mood&negated != 0 && r.leftAlone(&r.clauses[n])) {
		return true // "I've got the filter here, I'll do that next", "it's got a nut too but I haven't had that off"
	}
	if c.mood&(negated|warned|other|hypothetical|conditional|aside|storied) != 0 && !r.done(c, mi) {
		return true
	}
	if m.prep == "" || r.inAct(ci, mi) && len(c.mentions) == 1 {
		return false
	}
	if r.holdsIt(c, m) {
		return false
	}
	if m.prep != "on" && m.prep != "for" && m.prep != "of" && m.prep != "to" {
		return true
	}
	for _, k := range c.mentions {
		if o := &r.mentions[k]; o.prep == "" && o.kind&(lexicon.Fastener|lexicon.Part) != 0 {
			return true // "spring on the saddle"
		}
	}
	return false
}

// holdsIt tells whether a clause brings up fasteners as what holds a thing: "it's held on
// by three screws", "fixed with a pinch bolt".
func (r *reading) holdsIt(c *clause, m *mention) bool {
	if m.kind&lexicon.Fastener == 0 || m.definite || m.prep != "by" && m.prep != "with" && m.prep != "on" {
		return false
	}
	for i := m.from - 1; i >= c.lo && i > m.from-6; i-- {
		if r.toks[i].men >= 0 {
			return false
		}
		switch r.toks[i].s {
		case "held", "fixed", "secured", "bolted", "screwed", "fastened", "mounted", "attached", "kept", "retained", "clamped", "located", "holds", "sits":
			return true
		}
	}
	return false
}

// toldForAfter tells whether a thing is said to be done after: "the coil gap I set after".
func (r *reading) toldForAfter(m *mention) bool {
	switch r.word(m.hi) {
	case "i", "i'll", "we'll":
	default:
		return false
	}
	for i := m.hi; i < min(len(r.toks), m.hi+7) && r.toks[i].men < 0 && r.toks[i].qty < 0; i++ {
		if r.toks[i].brk >= brkComma {
			w := r.toks[i].s
			return w == "after" || w == "afterwards" || w == "last"
		}
	}
	return false
}

// clips tells whether a part is said to go on without anything to tighten: "the return
// pipe just clips on".
func (r *reading) clips(m *mention) bool {
	i := m.hi
	if w := r.word(i); w == "just" || w == "only" || w == "then" {
		i++
	}
	switch r.word(i) {
	case "clips", "clicks", "snaps", "hooks", "slots", "pushes", "presses", "plugs":
		return true
	}
	return false
}

// besides tells whether a clause says of a mention, right before or after it, that it
// is told beside the work in hand.
func (r *reading) besides(c *clause, m *mention) bool {
	if !c.passing {
		return false
	}
	for _, k := range c.cues {
		if k.mood&passing != 0 && (k.lo >= m.hi && k.lo-m.hi < 10 || k.hi <= m.from && m.from-k.hi < 2) {
			return true
		}
	}
	return false
}

// leftAlone tells whether a negated clause says that nothing was done with a thing: "I haven't touched it".
func (r *reading) leftAlone(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "touched", "touch", "touching", "had", "undone", "moved", "disturbed":
			return true
		}
	}
	return false
}

// valueSoon tells whether a tightening value follows soon on a mention, with no other fastener named between.
func (r *reading) valueSoon(m *mention) bool {
	pointed := false
	for i := m.hi; i < min(len(r.toks), m.hi+12); i++ {
		if k := r.toks[i].men; k >= 0 && r.mentions[k].kind&lexicon.Fastener != 0 {
			return false
		}
		if k := r.toks[i].qty; k >= 0 && r.qtys[k].Kind == normalize.Torque {
			return pointed || i-m.hi < 4 && m.prep == "" || r.toks[i].cl == r.toks[m.lo].cl
		}
		w := r.toks[i].s
		pointed = pointed || w == "those" || w == "they" || w == "these"
		if r.toks[i].cl-r.toks[m.lo].cl > 2 {
			return false
		}
	}
	return false
}

// headingOf gives the thing that a clause does nothing but name: "Now the
// fender.", "Master cylinder.", "Drain bolt next."
func (s *tracker) headingOf(c *clause) *thing {
	r := s.r
	if m := s.trailing(c); m != nil {
		return m.entry
	}
	if len(c.acts) > 0 || len(c.mentions) != 1 || c.mood&(aside|greeting|listing|negated|asked) != 0 {
		return nil
	}
	m := &r.mentions[c.mentions[0]]
	if m.entry == nil || m.prep != "" && m.prep != "for" {
		return nil
	}
	unknown := 0
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		if r.toks[i].men >= 0 || i >= m.from && i < m.hi || openers.has(w) || dropWords.has(w) || placeWords.has(w) || w == "side" || w == "and" || w == "next" || w == "first" || w == "for" || w == "torque" && i == m.hi {
			continue
		}
		// "right, different subject, the thermostat housing"
		if unknown++; unknown > 2 || i > m.from || linking.has(w) || subjects.has(w) || r.isVerbForm(w) || prepositions.has(w) || m.count > 0 {
			return nil
		}
	}
	return m.entry
}

// trailing gives what a clause that tells when something else is done ends on:
// "Before I tighten anything, the bracket."
func (s *tracker) trailing(c *clause) *mention {
	r := s.r
	if len(c.mentions) == 0 || c.mood&(aside|greeting|listing|negated|asked) != 0 || !tellsWhen.has(r.toks[c.lo].s) && !tellsWhen.has(r.next(c.lo)) {
		return nil
	}
	m := &r.mentions[c.mentions[len(c.mentions)-1]]
	if m.hi != c.hi || m.entry == nil || m.prep != "" || m.from == c.lo || r.toks[m.from-1].brk < brkComma || m.hi < len(r.toks) && r.toks[m.hi-1].brk < brkSentence {
		return nil
	}
	return m
}

// tellsWhen are the words that begin with when the rest is done.
var tellsWhen = set("before after while once when until till now")

// turn follows the talk to the part that it turns to: the one that a clause does
// nothing but name, says is off or back on, or names before all else.
func (s *tracker) turn(ci int) {
	r := s.r
	c := &r.clauses[ci]
	t := s.headingOf(c)
	if t != nil {
		s.heading, s.headingAt = t, c.lo
	}
	if t == nil && len(c.mentions) == 1 && len(c.acts) == 1 && r.acts[c.acts[0]].verb < 0 && r.acts[c.acts[0]].happened() {
		t = r.mentions[c.mentions[0]].entry
		if o := r.acts[c.acts[0]].objects; len(o) > 0 {
			t = r.mentions[o[0]].entry // "Caliper. Over the disc.": not the disc
		}
	}
	if t == nil {
		t = s.fronted(c)
	}
	if t == nil {
		t = s.ledTo(c)
	}
	if t == nil && s.topic != nil {
		t = s.turnedTo(c)
	}
	if t != nil && t.fastener {
		if t.owner == nil {
			t, s.topic = nil, nil
		} else {
			t = t.owner
		}
	}
	if t != nil && t.ownsNone() {
		return // "Chain.": what bolts come next are not the chain's
	}
	if t != nil && len(c.mentions) > 0 && s.inPassing(ci, c.mentions[0]) {
		return // "The coupler I'll grease later"
	}
	if t != nil {
		s.topic, s.topicAt = t, c.lo
	}
}

// turnedTo gives the part that a clause says came off or went back on, where that is
// another than the one the talk last turned to: "I've done the coil. Tank goes back on."
func (s *tracker) turnedTo(c *clause) *thing {
	r := s.r
	for _, ai := range c.acts {
		a := &r.acts[ai]
		if !a.happened() || len(a.objects) != 1 || !a.subject {
			continue
		}
		m := &r.mentions[a.objects[0]]
		if w := left[a.action.Name]; (w == "off" || w == "on") && m.entry != nil && !m.entry.fastener && m.entry != s.topic && r.opens(c, m) {
			return m.entry
		}
	}
	return nil
}

// fronted gives the thing that a clause names before all else: "Cam chain
// tensioner, two bolts", "thermostat housing i had that off as well".
func (s *tracker) fronted(c *clause) *thing {
	r := s.r
	if len(c.mentions) == 0 || c.mood&(aside|greeting|listing|negated|asked|conditional|hypothetical) != 0 {
		return nil
	}
	m := &r.mentions[c.mentions[0]]
	if m.entry == nil || m.ownsNone() || m.hi >= c.hi || !r.opens(c, m) {
		return nil
	}
	switch w := r.toks[m.hi].s; {
	case r.toks[m.hi-1].brk >= brkComma, w == "i" || w == "now":
		return m.entry
	}
	// "the pump's held by two bolts", "the door is on four screws"
	if k := c.mentions[len(c.mentions)-1]; k != c.mentions[0] && r.mentions[k].kind&lexicon.Fastener != 0 && m.kind&lexicon.Fastener == 0 {
		for i := m.hi; i < r.mentions[k].from; i++ {
			if r.toks[i].men >= 0 || !holding.has(r.toks[i].s) && r.toks[i].s != "on" && r.toks[i].s != "with" && r.toks[i].s != "in" && r.toks[i].s != "down" && r.toks[i].s != "together" && r.toks[i].s != "bolted" && r.toks[i].s != "screwed" && r.toks[i].s != "fixed" && r.toks[i].s != "secured" && r.toks[i].s != "fastened" && r.toks[i].s != "comes" {
				break
			}
			if i+1 == r.mentions[k].from {
				return m.entry
			}
		}
	}
	// "This plate on the post, that it was hanging off": where it is, then more of it
	if w := r.toks[m.hi].s; prepositions.has(w) && r.next(m.hi) == "the" && !r.done(c, c.mentions[0]) {
		for i := m.hi + 2; i < min(c.hi, m.hi+5); i++ {
			if r.toks[i].brk >= brkComma {
				return m.entry
			}
		}
	}
	return nil
}

// done tells whether a clause has work done to a mention.
func (r *reading) done(c *clause, mi int) bool {
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.happened() && slices.Contains(a.objects, mi) {
			return true
		}
	}
	return false
}

// ledTo gives the thing that a clause says the work goes on to: "I'll do the dog
// bone then", "on to the back wheel", "let's start with the cover".
func (s *tracker) ledTo(c *clause) *thing {
	r := s.r
	if len(c.mentions) != 1 || c.mood&(aside|greeting|listing|negated|asked|conditional|hypothetical) != 0 {
		return nil
	}
	m := &r.mentions[c.mentions[0]]
	if m.entry == nil || m.count > 0 {
		return nil
	}
	if p := r.word(m.from - 2); (m.prep == "on" || m.prep == "in" || m.prep == "of") && m.hi == c.hi && (p == "these" || p == "those" || p == "ones" || countOf[p] > 1) && len(c.acts) == 0 {
		return m.entry // "these on the sprocket"
	}
	goes := false
	for i := c.lo; i < m.from; i++ {
		w := r.toks[i].s
		goes = goes || movesOn.has(w)
		if !movesOn.has(w) && !leadsOn.has(w) && !openers.has(w) && !dropWords.has(w) {
			return nil
		}
	}
	for i := m.hi; i < c.hi; i++ {
		if w := r.toks[i].s; !dropWords.has(w) && !openers.has(w) && w != "next" && w != "first" && w != "here" {
			return nil
		}
	}
	if !goes {
		return nil
	}
	return m.entry
}

// movesOn are the words by which talk goes on to another thing, leadsOn those that stand beside them.
var (
	movesOn = set("do doing start starting begin move moving onto tackle tackling turn attack attacking sits lives reach")
	leadsOn = set("i i'll 'll i'm 'm 're let's let gonna going go to will can with on over get getting back have a next is 's for then now it time the and crack here there this you")
)

// inTurn lets things that had come off be back where a clause with no verb names
// them in their turn, while other things go back on: "Spacer, washer, and the nut."
// A lock is back only where that is said.
func (s *tracker) inTurn(c *clause) {
	r := s.r
	if len(c.mentions) == 0 || c.mood&^negated != 0 || r.sharesLot(c) || r.listsWhatIsLeft(c) || r.comesLater(c) || r.headsTrouble(c) {
		return
	}
	if row := s.reversed(c); row != nil {
		for _, mi := range row {
			m := &r.mentions[mi]
			x := act2(r.lex.Action("fit"), m.from, m.hi, mi)
			x.rule = inItsTurn
			r.addAct(int(r.toks[c.lo].cl), x)
		}
		return
	}
	headed := false
	for _, ai := range c.acts {
		a := &r.acts[ai]
		if a.heads && a.mood&framed != 0 {
			continue // named with what turns it, and neither came off nor went on by that
		}
		m := &r.mentions[c.mentions[0]]
		if a.lo < m.hi || r.toks[m.hi-1].brk < brkComma || slices.Contains(a.objects, c.mentions[0]) || a.pronoun != "" || !readies[a.action.Name] || !s.fitting(c.lo) {
			return
		}
		headed = true // "Cranks, clean the square, a dab of grease on the threads"
	}
	hi := c.hi
	if headed {
		hi = r.mentions[c.mentions[0]].hi
	}
	for i := c.lo + 1; i < hi; i++ {
		if w := r.toks[i].s; (w == "no" || w == "not") && r.toks[i-1].brk == brkComma {
			hi = i // "Gasket, dry, no sealer"
		}
	}
	if c.mood&negated != 0 && hi == c.hi {
		return
	}
	lo := r.nextNamed(c)
	for i := lo; i < hi; i++ {
		if t := r.toks[i]; t.men < 0 && (linking.has(t.s) || subjects.has(t.s) && t.s != "that" || offWords.has(t.s) || t.s == "'s" || t.s == "not" || t.s == "no" || t.s == "later" || t.s == "tomorrow") {
			return
		}
	}
	if len(c.mentions) == 1 && r.tendedNext(c) {
		return // "Hose. Cut it square"
	}
	back := func(m *mention, mi int) {
		x := act2(r.lex.Action("fit"), m.from, m.hi, mi)
		x.rule = inItsTurn
		r.addAct(m.cl, x)
	}
	lies, lay := false, false
	for k, mi := range c.mentions {
		m := &r.mentions[mi]
		t := m.entry
		if t == nil || m.lo >= hi || !(r.bareElement(c, mi) || k == 0 && (r.opens(c, m) || lo > c.lo && m.from == lo && r.toks[m.hi-1].brk >= brkComma)) || r.leadsIn(m) || !r.restOfName(c, m) || r.goneWhenNamed(c, m) {
			continue
		}
		if len(t.events) == 0 {
			if s.fitting(m.lo) && (r.bareElement(c, mi) || r.kind(m.hi).is(wPreposition) || r.word(m.hi) == "next" && t.ownsNone()) && !wholes.has(t.head) && !neverLoose.has(t.head) && !isLock(t) && (r.since(t.first, m.lo) > 60 || onlyFitted.has(t.head) || s.goesWith(c, mi)) && !r.turnsWork(c.lo, m.from) {
				back(m, mi)
			}
			continue
		}
		off := t.events[len(t.events)-1].lo
		if st, _ := t.state(); st != Removed && st != Discarded {
			continue
		}
		if !lay {
			lies, lay = r.toldHowItLies(c), true
		}
		switch gone := r.since(off, m.lo); {
		case isLock(t):
			if s.fitted <= off || r.since(s.fitted, m.lo) > 12 || r.turnsWork(c.lo, m.from) {
				continue
			}
		case lies && gone >= 5:
		case s.fitted <= off || gone < 15 && !s.cameOffWith(c, off):
			continue
		}
		back(m, mi)
	}
}

// comesLater tells whether the clause after one puts off what that one names: "then the belt, that
// comes tomorrow".
func (r *reading) comesLater(c *clause) bool {
	n := int(r.toks[c.lo].cl) + 1
	if n >= len(r.clauses) || r.clauses[n].sentence != r.clauses[n-1].sentence || r.clauses[n].mood&announced == 0 {
		return false
	}
	switch r.toks[r.clauses[n].lo].s {
	case "that", "which", "those", "these", "they", "it":
		return true
	}
	return false
}

// headsTrouble tells whether a clause that only names a thing heads what is wrong with it: "Belt.
// It's ripped."
func (r *reading) headsTrouble(c *clause) bool {
	ci := int(r.toks[c.lo].cl) + 1
	if len(c.mentions) != 1 || ci >= len(r.clauses) || r.toks[c.hi-1].brk < brkSentence || r.since(c.hi-1, r.clauses[ci].lo) > 6 {
		return false
	}
	n := &r.clauses[ci]
	i := r.skipped(n)
	switch r.word(i) {
	case "it", "it's", "they", "that", "that's", "this":
	default:
		return false
	}
	for k := i + 1; k < min(n.hi, i+5); k++ {
		if r.toks[k].is(wSeldom) && damage.has(r.toks[k].s) {
			return true
		}
	}
	return false
}

// nextNamed gives the token from which a clause names what comes next in a row: "then it's the
// washer", "after that comes the nut"; its first where no such words lead in.
func (r *reading) nextNamed(c *clause) int {
	i, then := c.lo, r.ledBy(c.lo, "then", "now")
	for ; i < c.hi; i++ {
		switch w := r.toks[i].s; {
		case w == "then" || w == "next" || w == "now" || w == "after" && r.next(i) == "that":
			then = true
		case w == "and" || w == "so" || then && (w == "that" || w == "it" || w == "'s" || w == "comes" || w == "come" || w == "is" || w == "goes"):
		default:
			if then && i > c.lo {
				return i
			}
			return c.lo
		}
	}
	return c.lo
}

// onlyFitted are what nobody names while things go on but to say that it goes on too.
var onlyFitted = wordsOf("only named as they go on")

// goesWith tells whether something else that a clause names between commas had come off, or
// goes on in it: "Cover, two screws, plug."
func (s *tracker) goesWith(c *clause, of int) bool {
	r := s.r
	return slices.ContainsFunc(c.mentions, func(mi int) bool {
		t := r.mentions[mi].entry
		if mi == of || t == nil || !r.bareElement(c, mi) && r.verblessActOn(c, mi) < 0 {
			return false
		}
		st := r.lastState(t)
		return st == Removed || st == Refitted && t.events[len(t.events)-1].lo >= c.lo
	})
}

// returnsUnseen tells whether a part that nobody said came off goes back by no more than the
// way it moves, while things go on: "Float inside.", "Drum down.", where it was lifted.
func (s *tracker) returnsUnseen(t *thing, a *act) bool {
	r := s.r
	if a.rule != "thing and particle" || t.fastener || r.since(t.first, a.lo) <= 60 {
		return false
	}
	switch r.word(a.hi - 1) {
	case "up":
		return false
	case "down":
		return slices.ContainsFunc(r.acts, func(o act) bool {
			return o.lo < a.lo && o.happened() && o.action.Name == "lift" && slices.Contains(o.things, t)
		})
	}
	return true
}

// cameOffWith tells whether what the clause before put back is what came off together
// with something that came off at a token: "Cover off, four screws. […] Cover on. Four screws."
func (s *tracker) cameOffWith(c *clause, off int) bool {
	r := s.r
	ci := int(r.toks[c.lo].cl)
	if ci == 0 || r.toks[off].cl >= int32(ci-1) {
		return false
	}
	for _, ai := range r.clauses[ci-1].acts {
		if a := &r.acts[ai]; a.action.Name == "fit" {
			for _, t := range a.things {
				for i := range t.events {
					if e := &t.events[i]; e.lo < off && (e.action == "remove" || e.action == "disconnect") && r.since(e.lo, off) < 8 {
						return true
					}
				}
			}
		}
	}
	return false
}

// readies are the acts by which a thing is made ready to go on.
var readies = map[string]bool{"clean": true, "lubricate": true, "apply": true}

// toldHowItLies tells whether the sentence of a clause says, from it on, which way round
// things go or that they are on by hand, as nobody says of what lies on the bench:
// "then the washer, cut side down, and the nut, finger tight".
func (r *reading) toldHowItLies(c *clause) bool {
	for i := c.lo; i < len(r.toks) && i < c.lo+24 && r.clauses[r.toks[i].cl].sentence == c.sentence; i++ {
		if handAt(r, i, len(r.toks)) || r.toks[i].s == "facing" {
			return true
		}
		if n := r.next(i); features.has(r.toks[i].s) && turned.has(n) && n != "on" && n != "is" && n != "'s" && n != "goes" && n != "sits" && r.toks[i].brk < brkComma {
			if w := r.word(i + 2); r.toks[i+1].brk >= brkComma || w == "and" || w == "the" || n != "in" && n != "out" && n != "up" && n != "down" && n != "to" {
				return true
			}
		}
	}
	return false
}

// listsWhatIsLeft tells whether the clause before leads in a list of what is still to do:
// "So, to go through my list. Cap, wire, fifth nut.", "What's left? The seat, the panels."
func (r *reading) listsWhatIsLeft(c *clause) bool {
	ci := int(r.toks[c.lo].cl)
	for k := ci - 1; k >= max(0, ci-2) && r.since(r.clauses[k].lo, c.lo) < 8; k-- {
		for i := r.clauses[k].lo; i < r.clauses[k].hi; i++ {
			switch r.toks[i].s {
			case "list", "remains", "remaining", "outstanding":
				return true
			case "left":
				if w := r.prev(i); w == "'s" || w == "is" || w == "what's" || w == "got" {
					return true
				}
			}
		}
	}
	return false
}

// sharesLot tells whether a clause adds to what was put off right before: "Belt I'll do
// when it's back on the machine. And the guard, obviously."
func (r *reading) sharesLot(c *clause) bool {
	ci := int(r.toks[c.lo].cl)
	if ci == 0 || !r.beginsWith(c, "and") || r.clauses[ci-1].sentence == c.sentence {
		return false
	}
	for k := ci - 1; k >= 0 && r.clauses[k].sentence == r.clauses[ci-1].sentence; k-- {
		if r.leavesOpen(&r.clauses[k]) {
			return true
		}
	}
	return false
}

// tendedNext tells whether the first work told after a clause is done to it with no name:
// "Cups. Clean them out."
func (r *reading) tendedNext(c *clause) bool {
	ci := int(r.toks[c.lo].cl)
	for k := ci + 1; k < len(r.clauses) && k <= ci+3 && r.since(c.lo, r.clauses[k].lo) < 10; k++ {
		n := &r.clauses[k]
		for _, ai := range n.acts {
			switch a := &r.acts[ai]; a.action.Name {
			case "clean", "cut", "measure", "lubricate":
				return len(a.objects) == 0 && (a.pronoun == "it" || a.pronoun == "them")
			default:
				return false
			}
		}
		if len(n.mentions) > 0 && r.topical(&r.mentions[n.mentions[0]]) && r.opens(n, &r.mentions[n.mentions[0]]) {
			return false
		}
	}
	return false
}

// leadsIn tells whether a mention only leads in what is said of it: "Cable: I had
// slackened the adjuster", "the cable, I haven't touched".
func (r *reading) leadsIn(m *mention) bool {
	if end := int(r.toks[m.hi-1].hi); end < len(r.talk.Text) && r.talk.Text[end] == ':' {
		return true
	}
	if m.hi >= len(r.toks) || r.toks[m.hi-1].brk == brkSentence {
		return false
	}
	if w := r.toks[m.hi].s; w != "i" {
		return false
	}
	for i := m.hi + 1; i < m.hi+4; i++ {
		switch r.word(i) {
		case "haven't", "had", "'d", "didn't", "not", "never", "left", "leave", "leaving", "won't", "can't", "couldn't":
			return true
		}
	}
	return r.putOffNext(m.cl)
}

// putOffNext tells whether what a clause names is what the next one puts off: "the new cover |
// I'll fit tomorrow".
func (r *reading) putOffNext(ci int) bool {
	n := ci + 1
	return n < len(r.clauses) && r.toks[r.clauses[ci].hi-1].brk < brkComma && r.clauses[n].sentence == r.clauses[ci].sentence && (r.clauses[n].mood&announced != 0 || r.heardIn(n, n, "later"))
}

// turnsWork tells whether words turn to another piece of work: "Now the carburettor."
func (r *reading) turnsWork(lo, hi int) bool {
	if r.ledBy(lo, "now") {
		return true
	}
	for i := lo; i < hi; i++ {
		if w := r.toks[i].s; w == "now" || w == "next" || w == "first" {
			return true
		}
	}
	return false
}

// inItsTurn is the rule of a thing that is back since it was named in its turn.
const inItsTurn = "named in its turn while things go back on"

// opens tells whether a mention stands before all else in its clause.
func (r *reading) opens(c *clause, m *mention) bool {
	if m.prep != "" {
		return false
	}
	for i := c.lo; i < m.from; i++ {
		if w := r.toks[i].s; !openers.has(w) && !dropWords.has(w) && w != "and" && w != "next" {
			return false
		}
	}
	return true
}

// onTopic gives the part that the talk last turned to, while it may still be about it.
func (s *tracker) onTopic(at int) *thing {
	if s.topic == nil || s.r.since(s.topicAt, at) > 45 {
		return nil
	}
	return s.topic
}

// clauseSide gives the side that a clause speaks of, where it names just one.
func (s *tracker) clauseSide(c *clause) string {
	r := s.r
	side := ""
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		if w != "left" && w != "right" && w != "nearside" && w != "offside" && !(w == "near" || w == "off") {
			continue
		}
		next := r.next(i)
		prev := ""
		if i > c.lo {
			prev = r.toks[i-1].s
		}
		if (w == "near" || w == "off") && next != "side" {
			continue
		}
		if w == "right" || w == "left" {
			ok := next == "one" || next == "side" || next == "hand" && r.word(i+2) != "thread" && r.word(i+2) != "threaded" || next == "ones" || (prev == "the" || prev == "on") && (r.toks[i].brk > brkPause || next == "and" || next == "") || r.toks[i].men >= 0
			if !ok || next == "way" {
				continue
			}
		}
		v := sideOf[w]
		if v == "" {
			v = w + " side"
		}
		if side != "" && side != v {
			return ""
		}
		side = v
	}
	return side
}

func (s *tracker) touch(t *thing) {
	t.worked = max(t.worked, t.last+1)
	if t.of != nil {
		t.of.last = max(t.of.last, t.last)
		s.touch(t.of)
	}
	for i, h := range s.hand {
		if h == t {
			copy(s.hand[i:], s.hand[i+1:])
			s.hand[len(s.hand)-1] = t
			return
		}
	}
	s.hand = append(s.hand, t)
	if len(s.hand) > 40 {
		s.hand = s.hand[1:]
	}
}

// offAcross tells whether an act takes off the one of the other side of what has gone back on, which
// is then the one of this side: "that's the right one back. I had the left one off as well".
func (s *tracker) offAcross(a *act, t *thing, side string) bool {
	if a.action.Name != "remove" || otherOf[side] == "" || t.side != "" && t.side != otherOf[side] {
		return false
	}
	if !onAgain(s.r.lastState(t)) {
		return false
	}
	for i := a.lo; i+1 < a.hi; i++ {
		if sideOf[s.r.toks[i].s] == side && s.r.toks[i+1].s == "one" {
			t.side = otherOf[side]
			return true
		}
	}
	return false
}

// pluggedIn puts what was unplugged back with its plug: "the opener's unplugged … plug back in".
func (s *tracker) pluggedIn(ai int, a *act) {
	for _, t := range s.hand {
		n := len(t.events) - 1
		if n < 0 || unplugs.has(t.head) || t.head == "plug" || t.events[n].act < 0 || t.events[n].action != "remove" && t.events[n].action != "disconnect" {
			continue
		}
		if s.r.cutOff(&s.r.acts[t.events[n].act]) {
			t.events = append(t.events, event{action: "fit", act: ai, rule: "its plug is back in", lo: a.lo, hi: a.hi})
		}
	}
}

// apply lets an act happen to its things.
func (s *tracker) apply(ci, ai int, a *act) {
	r := s.r
	c := &r.clauses[ci]
	var ts []*thing
	if n := len(a.objects); n > 0 {
		a.objects = slices.DeleteFunc(a.objects, func(mi int) bool { return r.mentions[mi].kind == 0 })
		if len(a.objects) == 0 {
			a.pronoun = unsaid
		}
	}
	for _, mi := range a.objects {
		if t := r.mentions[mi].entry; t != nil {
			ts = append(ts, s.together(t, &r.mentions[mi], a.action.Name)...)
		}
	}
	if mi := s.toolNamed(a); mi >= 0 {
		a.objects = []int{mi} // "and now the puller, so you thread this in"
	}
	if len(ts) == 0 && len(a.objects) == 0 && !a.unknown && (a.pronoun != "her" || left[a.action.Name] != "") {
		if a.pronoun != "" || ledgerActs[a.action.Name] != "" && !s.objectless(ci, a) {
			if t := s.antecedent(ci, a); t != nil {
				if sd := s.clauseSide(c); sd != "" && (s.offAcross(a, t, sd) || a.pronoun == "one" || a.pronoun == "that") {
					t = s.sided(t, &mention{lo: a.lo, side: sd}, sd)
				}
				ts = append(ts, t)
			}
		}
	}
	if len(ts) == 0 && len(a.objects) == 0 && a.subject && (a.pronoun == "it" || a.pronoun == "she") && r.cutOff(a) {
		a.action, a.rule = r.lex.Action("switch off"), machineUnplugged // "it's unplugged"
		return
	}
	if o := s.odd.t; o != nil && s.odd.sentence == c.sentence && len(ts) == 1 && ts[0] == o.of && a.lo > o.first && !r.many(a) {
		ts[0] = o
	}
	if len(ts) == 0 && (a.rule == numberByHand || countOf[a.pronoun] > 2 && fastens[a.action.Name]) {
		if part := s.justFitted(a.lo); part != nil {
			ts = append(ts, s.unnamedOf(part, a.lo, 0)) // "On with the cover. All four with the fingers."
		}
	}
	past := false
	a.byHand, past = byHand(r, c, a)
	if len(a.objects) == 0 && (fastens[a.action.Name] || a.byHand && a.action.Name == "fit" && r.many(a)) {
		for k, t := range ts {
			switch topic := s.onTopic(a.lo); {
			case !t.fastener && !t.ownsNone() && (!tightens.has(t.head) || !t.plural && r.many(a)):
				ts[k] = s.unnamedOf(t, a.lo, 0) // "all four of them just started"
			case a.rule == numberByHand && topic != nil && !t.many() && t.owner != topic:
				ts[k] = s.unnamedOf(topic, a.lo, 0)
			}
		}
	}
	if len(ts) == 1 && ts[0].of != nil && ts[0].fastener && len(a.objects) == 0 && r.allOfThem(c, a, ts[0].count) {
		ts[0] = ts[0].of // "the outer ones first. […] Start all fourteen by hand"
	}
	for k := len(ts) - 1; k >= 0; k-- {
		if all := ts[k]; len(all.split) > 0 {
			ts = slices.Replace(ts, k, k+1, all.each()...)
			defer s.touch(all) // spoken of last, after those told apart from it
		}
	}
	a.things = ts
	if a.rule == unplugged {
		return
	}
	name := a.action.Name
	switch {
	case name == "repeat" && a.happened():
		s.again(ai)
		return
	case s.leftOff(c, a):
		name = "leave off"
	case !a.happened():
		if name == "fit" && r.deferred(a) {
			for _, t := range ts {
				t.deferred = a.lo
			}
			return
		}
		if !s.comesTrue(a) {
			return
		}
	}
	if a.heads {
		if !s.settle(a) {
			a.mood |= framed
			return
		}
		name, ts = a.action.Name, a.things
	}
	wasFitting := s.fitting(a.lo)
	takingApart := !wasFitting && len(s.turns) > 0 && s.turns[len(s.turns)-1].off
	switch left[name] {
	case "off", "loose":
		s.turns = append(s.turns, turn{a.lo, true})
	case "on", "by hand", "tight":
		if a.verb >= 0 && shuts.has(r.lemma1(r.toks[a.verb].s)) {
			break
		}
		s.turns = append(s.turns, turn{a.lo, false})
	}
	if name == "lift" && len(ts) > 0 && (isLock(ts[0]) || ts[0].head == "pin" || ts[0].head == "clip") && len(a.objects) > 0 {
		name = "remove" // "pull the split pin"
	}
	if name == "remove" && len(ts) > 0 && a.verb >= 0 && r.drivenThrough(a) && (r.lastState(ts[0]) == Removed || wasFitting && r.lastState(ts[0]) == "") {
		name = "fit" // "the pin, push it through from the left"
		a.action = r.lex.Action(name)
	}
	if name == "tighten" && a.verb >= 0 && !wasFitting && len(ts) > 0 && ts[0].fastener && r.lastState(ts[0]) == "" && r.lemma1(r.toks[a.verb].s) == "give" && r.toks[a.hi-1].s == "turn" {
		name = "slacken" // "give it half a turn", of what nobody put on
		a.action = r.lex.Action(name)
	}
	if a.rule == soMuchTurn {
		st := ""
		if len(ts) > 0 && takesTorque(ts[0]) {
			st = r.lastState(ts[0])
		} else {
			a.mood |= framed
			return
		}
		switch {
		case st == HandTight || st == Refitted:
		case (st == "" || st == Loosened) && !wasFitting && ts[0].fastener:
			name = "slacken" // "wheel nuts, half a turn on each while she's down"
			a.action = r.lex.Action(name)
		default:
			a.mood |= framed
			return
		}
	}
	if name == "lift" && len(ts) == 1 && len(a.objects) == 1 && s.letGo(c, a, ts[0]) {
		name = "remove"
		a.action = r.lex.Action(name)
		s.turns = append(s.turns, turn{a.lo, true})
	}
	kept := name == "store" && r.keptOff(a)
	if kept {
		name = "remove"
	}
	if name == "adjust" && a.verb >= 0 && !a.subject && r.lemma1(r.toks[a.verb].s) == "back" {
		for _, t := range ts {
			if t.fastener && len(t.events) > 0 {
				t.events = append(t.events, event{action: backedOff, act: ai, rule: a.rule, lo: a.lo, hi: a.hi})
			}
		}
	}
	if name == "test" && a.byHand && len(ts) > 0 && ts[0].fastener && !isLock(ts[0]) && takesTorque(ts[0]) && r.lemma1(r.word(a.verb)) == "spin" && r.word(a.hi-1) == "up" {
		name = "start by hand" // "I've just spun it up with my fingers"
		a.action = r.lex.Action(name)
	}
	if ledgerActs[name] == "" || name == "remove" && !a.subject && r.getsNew(a) {
		return
	}
	if (name == "fit" || name == "start by hand") && len(ts) > 0 && ts[0].fastener && r.parked(a) {
		a.action = r.lex.Action("store") // it is still off
		return
	}
	if name == "start by hand" && !a.byHand && a.verb >= 0 && r.snugHard(a.verb) {
		name = "tighten"
		a.action = r.lex.Action(name)
	}
	if a.byHand && (name == "fit" || name == "tighten" || name == "start by hand") {
		name = "start by hand"
	}
	if name == "start by hand" && len(ts) == 1 && isLock(ts[0]) {
		name = "fit" // a circlip or a split pin is in or out
	}
	if past && (name == "fit" || name == "start by hand") && len(ts) > 0 && ts[0].fastener {
		name = "tighten"
	}
	if name == "fit" && s.tightInClause(c, a) && len(ts) > 0 && (ts[0].fastener || takesTorque(ts[0]) || tightens.has(ts[0].head)) {
		name = "tighten"
	}
	idle := len(ts) > 0
	for k, t := range ts {
		if kept && (t.isNew || len(t.events) > 0) {
			continue
		}
		n := name
		t.turned = t.turned || fastens[name] && len(a.objects) == 0
		st, _ := t.state()
		if (name == "remove" || name == "disconnect") && (st == Removed || st == Discarded) && isLock(t) && len(a.objects) > 0 && r.since(t.events[len(t.events)-1].lo, a.lo) > 40 {
			// no split pin comes out twice: another of the same name
			t = s.another(t, a)
			ts[k], a.things[k], st = t, t, ""
		}
		if name == "discard" && k < len(a.objects) && r.mentions[a.objects[k]].isOld && r.renewedLast(t) {
			continue // "new ring on. Old ring's garbage": the one that came off
		}
		if a.pronoun == "one" && t.many() && (left[n] == "on" || left[n] == "tight" || left[n] == "by hand") && r.notTheOther(c, a) {
			a.mood |= framed
			continue // how all of them are is not told by that
		}
		if name == "leave off" && st == Discarded {
			continue
		}
		if n == "fit" && catches.has(t.head) && len(a.objects) == 0 && a.verb >= 0 && !a.subject && presses.has(r.lemma1(r.toks[a.verb].s)) && (r.word(a.hi-1) == "down" || r.word(a.hi-1) == "in") {
			a.action = r.lex.Action("press") // "there's a tab, push that down": to let go of what it holds
			continue
		}
		if n == "tighten" && st == Loosened && !wasFitting && a.verb >= 0 && r.lemma1(r.toks[a.verb].s) == "go" {
			continue // "half a turn each, go round, another half": undone by and by
		}
		if n == "fit" && slidBack.has(t.head) && (st == Loosened || st == "") && a.verb >= 0 && r.lemma1(r.toks[a.verb].s) == "slide" && r.word(a.hi-1) == "back" {
			continue // "slacken the clip, slide it back": out of the way
		}
		if name == "slacken" && a.subject && st == "" && !t.fastener && !takesTorque(t) && !tightens.has(t.head) && !slackens.has(t.head) && len(a.objects) > 0 && a.verb >= 0 && r.toks[a.verb].is(wLinking) {
			continue // "the pulley's loose on the shaft": how it was found
		}
		if n := len(t.events); name == "remove" && a.verb < 0 && a.pronoun != "" && n > 0 && left[t.events[n-1].action] == "on" && r.since(min(t.events[n-1].hi, a.lo), a.lo) < 4 {
			continue // "Plug in. Off she goes.": it runs
		}
		if a.rule == withOff && st != "" {
			continue
		}
		if a.rule == toldByHand && heldBy.has(t.head) {
			continue // "the handle hits it, leave it with the fingers"
		}
		if a.rule == thereAgain && !wasFitting {
			a.mood |= framed
			continue // where it was found
		}
		if n == "remove" && a.verb < 0 && st == Removed && keptIn.has(r.word(a.hi)) && s.fitting(a.lo) {
			n = "fit" // "spacers off the zip tie": from where they were kept
			a.action = r.lex.Action(n)
		}
		if n == "tighten" && a.subject && a.verb >= 0 && r.toks[a.verb].s != "get" && a.hi == a.verb+2 && r.toks[a.hi-1].s == "tight" && s.foundTight(t, a) {
			a.mood |= framed
			continue
		}
		if a.ifOff && n == "tighten" {
			if st != Refitted && st != HandTight && st != Removed {
				continue
			}
		} else if a.ifOff && st != Removed && st != Loosened && !(a.byHand && t.fastener && r.withMine(c, a.hi)) && !(r.word(a.hi) == "top" && wasFitting) && !(st == "" && wasFitting && s.returnsUnseen(t, a)) && !(st == "" && (a.rule == "thing and place" || a.rule == "thing and particle" && r.word(a.hi-1) == "through") && s.fitted > 0 && r.since(s.fitted, a.lo) < 90) {
			continue
		}
		if n == "fit" && a.verb >= 0 && !a.subject && r.word(a.hi-1) == "through" && r.lemma1(r.toks[a.verb].s) == "push" && st != Removed && !s.fitting(a.lo) && !r.ofNew(a) && !r.fitsNext(ai) {
			n = "remove" // "undo the nut and push the axle through"
			a.action = r.lex.Action(n)
		}
		if n == "fit" && a.verb >= 0 && !t.fastener && st == "" && (!s.fitting(a.lo) && !r.fitsBack(c) || !wasFitting && r.movedAside(a)) && !r.fitsNext(ai) && !r.ofNew(a) {
			continue // "stuck a bar through the eye", while things come off: handled, not fitted
		}
		if n == "fit" && a.subject && a.verb >= 0 && st == "" && takingApart && r.lies(c, a) && !r.fitsBack(c) && !r.fitsNext(ai) && !r.ofNew(a) {
			continue // "the pin, it goes through the arm", while things come off: how it sits
		}
		if n == "fit" && (st == Removed || st == "") && a.verb >= 0 && s.laidAside(c, a, t) {
			a.action = r.lex.Action("store")
			if n := len(s.turns) - 1; n >= 0 && s.turns[n].at == a.lo {
				s.turns = s.turns[:n]
			}
			idle = false
			continue // it is still off
		}
		if n == "fit" && t.fastener && st == Loosened && a.verb >= 0 && !a.subject && r.lemma1(r.toks[a.verb].s) == "slide" {
			continue // "slide the nut up the hose": out of the way
		}
		if n == "fit" && st != Removed && r.bearsOn(a) && !r.ofNew(a) {
			continue // "push on the outer ring": where it is pushed
		}
		if n == "tighten" && !t.fastener && !takesTorque(t) && !tightens.has(t.head) && !screwedOn.has(t.head) && !t.turned {
			if st == Removed {
				n = "fit" // "seat on and tight"
			} else if len(a.objects) == 0 || a.verb >= 0 && draws.has(r.lemma1(r.toks[a.verb].s)) {
				continue // "wind the table down", "pull the arm up"
			}
		}
		if (n == "tighten" || n == "torque") && t.onlyLocks() {
			continue // what it locks is tightened
		}
		if name == "tighten" && !t.fastener && a.verb >= 0 && r.lemma1(r.toks[a.verb].s) == "go" {
			continue // round a bore with a scuff pad
		}
		if name == "start by hand" && a.subject && st == "" && r.foundByHand(c, a) || n == "fit" && a.verb < 0 && r.lacksIt(c, a, t) {
			a.mood |= framed
			continue
		}
		if name == "start by hand" && a.subject && (a.verb >= 0 || a.rule == toldByHand) && st == "" && !s.fitting(a.lo) && s.apart(a.lo) && !r.fitsBack(c) && !r.withMine(c, a.hi) {
			continue // "the hose on the back, that's just hand tight"
		}
		if name == "tighten" && a.subject && !past && !r.fitsBack(c) && !r.wasDoneUp(c, a) && !(a.verb < 0 && st == Loosened && r.says1(c, a.lo, "again")) && !wasFitting && (st == "" || st == Removed && s.fitted < t.events[len(t.events)-1].lo || st == Loosened) {
			continue // how tight it was found, not how it was left
		}
		if !t.fastener {
			if n == "start by hand" && !tightens.has(t.head) && !(screwedOn.has(t.head) && a.byHand) {
				n = "fit" // a wheel put on by hand is on
			}
		}
		if n == "fit" || n == "start by hand" {
			s.fitted = a.lo
			if st == Removed {
				s.back = a.lo
			}
		}
		idle = false
		t.events = append(t.events, event{action: n, act: ai, rule: a.rule, lo: a.lo, hi: a.hi, off: a.mood&offCamera != 0 && a.mood&announced == 0})
		t.last = max(t.last, a.lo)
		s.touch(t)
		if n == "fit" {
			switch t.name { // no drain plug, and no spark plug
			case "plug", "mains plug", "wall plug", "power plug", "motor plug":
				s.pluggedIn(ai, a)
			}
		}
	}
	if w := r.toks[a.hi-1].s; idle && a.ifOff && a.rule == "thing and particle" && name == "fit" && (w == "up" || w == "down") && !ts[0].fastener && !small.has(ts[0].head) && (a.hi == c.hi || r.toks[a.hi].s != "through") {
		// no more than the way it moves: "Engine down."; or how it lies: "in the vice, keel down"
		switch p := a.lo - 1; {
		case !wasFitting && p >= 0 && r.clauses[r.toks[p].cl].sentence == c.sentence && r.toks[p].brk < brkSentence && !r.toks[p].is(wOpener|wDrop):
			a.mood |= framed
		case w == "up":
			a.action = r.lex.Action("lift")
		default:
			a.action = r.lex.Action("lower")
		}
		if n := len(s.turns) - 1; n >= 0 && s.turns[n].at == a.lo {
			s.turns = s.turns[:n]
		}
	} else if idle && name == "fit" && takingApart && (a.subject && a.verb >= 0 && r.lies(c, a) || a.ifOff && a.rule == "thing and particle" && (w == "up" || w == "down")) {
		a.mood |= framed // it tells where a thing goes
		if n := len(s.turns) - 1; n >= 0 && s.turns[n].at == a.lo {
			s.turns = s.turns[:n]
		}
	}
	if (idle || len(ts) == 0) && a.ifOff && a.verb >= 0 && !a.subject {
		a.mood |= framed // "the lead's clipped in at the back": how it is held
	}
	if idle && a.subject && (a.ifOff && (s.fitted == 0 && a.rule != "thing and particle" || a.rule == whereItIs) || name == "start by hand" || name == "tighten" && a.verb >= 0 && !s.fitting(a.lo)) {
		a.mood |= framed // it tells where a thing is or how it was found
	}
}

// allOfThem tells whether an act is of all there are, of which so many were told apart: "all
// fourteen", "they're scrap, every one".
func (r *reading) allOfThem(c *clause, a *act, apart int) bool {
	if n := countOf[a.pronoun]; n > 2 && n != apart {
		for i := a.lo; i+1 < min(a.hi+1, c.hi); i++ {
			if r.toks[i].s == "all" && r.toks[i+1].s == a.pronoun {
				return true
			}
		}
	}
	for i := a.hi; i+1 < c.hi; i++ {
		if w := r.toks[i+1].s; r.toks[i].s == "every" && (w == "one" || w == "last" || w == "single") {
			return true
		}
	}
	return false
}

// foundByHand tells of "loose! that's only finger tight", "it was no more than finger tight":
// how a fastener was found, and not how it was left.
func (r *reading) foundByHand(c *clause, a *act) bool {
	if r.fitsBack(c) || !r.saidIn(c, "tight") {
		return false
	}
	for i := c.lo; i < a.hi; i++ {
		if w := r.toks[i].s; w == "i" || w == "leave" || w == "left" {
			return false
		} else if (w == "was" || w == "were") && (r.next(i) == "only" || r.next(i) == "no" || r.next(i) == "barely") {
			return true
		}
	}
	at := int(r.toks[a.lo].cl)
	lo, hi := r.nearBy(at, 1, 1, 6)
	for i := r.clauses[lo].lo; i < r.clauses[hi].hi; i++ {
		if w := r.toks[i].s; w == "loose" && r.toks[i].men < 0 && r.prev(i) != "leave" && r.prev(i) != "it" || w == "wonder" && r.prev(i) == "no" {
			return true
		}
	}
	return false
}

// lacksIt tells of "pin in, clip... I've no clip the right size": that a thing is named in its
// turn and not there.
func (r *reading) lacksIt(c *clause, a *act, t *thing) bool {
	_, last := r.nearBy(int(r.toks[a.lo].cl), 0, 2, 5)
	for i := a.hi; i < r.clauses[last].hi; i++ {
		mi := r.toks[i].men
		if mi < 0 || r.mentions[mi].head != t.head || r.mentions[mi].lo < a.hi {
			continue
		}
		m := &r.mentions[mi]
		if slices.Contains(m.mods, "spare") || slices.Contains(m.mods, "other") {
			return false
		}
		switch r.prev(m.lo) {
		case "no":
			w := r.word(m.lo - 2)
			return w == "'ve" || w == "have" || w == "got" || w == "'s" || w == "there's"
		case "a", "any", "the", "another":
			w := r.word(m.lo - 2)
			return w == "have" && negates.has(r.word(m.lo-3)) || w == "got" && negates.has(r.word(m.lo-3)) || w == "haven't" || w == "find" && negates.has(r.word(m.lo-3))
		}
		return false
	}
	return false
}

var negates = set("don't haven't can't not didn't never")

// comesTrue tells whether an act that only frames another is done when that one is: "once
// those bolts are out the cover lifts off".
func (s *tracker) comesTrue(a *act) bool {
	r := s.r
	c := &r.clauses[a.cl]
	if w := r.toks[c.lo].s; w != "once" && !(w == "after" || (w == "so" || w == "and" || w == "now" || w == "then") && r.next(c.lo) == "once") {
		return false
	}
	if a.mood&^framed&^(offCamera|prior|hedged) != 0 || !a.subject || left[a.action.Name] != "off" || len(a.objects) == 0 {
		return false
	}
	for k := a.cl; k < len(r.clauses) && k <= a.cl+1 && r.clauses[k].sentence == c.sentence; k++ {
		for _, ai := range r.clauses[k].acts {
			if o := &r.acts[ai]; o.lo > a.lo && o.happened() {
				return true
			}
		}
	}
	return false
}

// parked tells whether the words after an act say that its fasteners are only put where
// they will not get lost: "thread them back in the holes so I don't lose them".
func (r *reading) parked(a *act) bool {
	sentence := r.clauses[a.cl].sentence
	for i := a.hi; i < min(len(r.toks), a.hi+16) && r.clauses[r.toks[i].cl].sentence == sentence; i++ {
		switch w := r.toks[i].s; w {
		case "lose", "lost", "losing", "missing", "walkabout", "astray", "muddled", "mixed":
			for k := i - 1; k > a.hi && k > i-5; k-- {
				switch r.toks[k].s {
				case "don't", "not", "never", "won't", "can't", "doesn't", "avoid", "stop", "without":
					return true
				}
			}
		case "safekeeping":
			return true
		case "keeping":
			if r.toks[i-1].s == "safe" {
				return true
			}
		case "safe":
			if p := r.word(i - 2); p == "keep" || p == "keeps" || p == "kept" || r.toks[i-1].s == "stay" {
				return true
			}
		case "where":
			if r.toks[i-1].s == "know" && i-2 > a.hi && r.word(i-2) == "i" {
				return true
			}
		case "track":
			if p := r.toks[i-1].s; p == "keep" || p == "lose" {
				return true
			}
		}
	}
	return false
}

// withMine tells whether a clause says from token i on that the speaker's own hand did it:
// "that's on with my fingers" tells no state in which a thing was found.
func (r *reading) withMine(c *clause, i int) bool {
	for ; i+2 < c.hi; i++ {
		if r.toks[i].s == "with" && r.toks[i+1].s == "my" {
			return true
		}
	}
	return false
}

// justFitted gives the part that went back on last, shortly before a token.
func (s *tracker) justFitted(at int) *thing {
	for i := len(s.hand) - 1; i >= 0 && s.r.since(s.hand[i].last, at) < 30; i-- {
		if t := s.hand[i]; !t.fastener && !t.ownsNone() {
			if st, _ := t.state(); st == Refitted {
				return t
			}
		}
	}
	return nil
}

// fitsNext tells whether the next thing that comes off or goes on after an act goes on.
func (r *reading) fitsNext(ai int) bool {
	for i := ai + 1; i < len(r.acts) && r.since(r.acts[ai].lo, r.acts[i].lo) < 60; i++ {
		if a := &r.acts[i]; a.happened() && !r.liesThere(a) {
			switch left[a.action.Name] {
			case "on", "by hand":
				return true
			case "off", "loose":
				return false
			}
		}
	}
	return false
}

// keptIn are the words that lead from "off" or "out" to where a thing was kept.
var keptIn = set("the my of that this a")

// fitsBack tells whether a clause says that something is back: "the cap is back tight".
func (r *reading) fitsBack(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		if r.toks[i].s == "back" && (i == 0 || r.toks[i-1].s != "the") {
			return true
		}
	}
	return false
}

// drivenThrough tells whether a thing is pushed or knocked through, which takes it out or in.
func (r *reading) drivenThrough(a *act) bool {
	switch r.lemma1(r.toks[a.verb].s) {
	case "push", "tap", "knock", "drive", "slide", "poke", "punch":
	default:
		return false
	}
	for i := a.verb + 1; i < min(len(r.toks), a.hi+1); i++ {
		if r.toks[i].s == "through" {
			return true
		}
	}
	return false
}

// letGo tells whether a part that is lifted or pulled comes off by that: what held it has
// just come off, and no more is said of it.
func (s *tracker) letGo(c *clause, a *act, t *thing) bool {
	r := s.r
	if t.fastener || a.verb < 0 || a.subject {
		return false
	}
	if l := r.lemma1(r.toks[a.verb].s); l != "pull" && l != "lift" {
		return false
	}
	if m := &r.mentions[a.objects[0]]; m.lo < a.verb || m.hi < c.hi && r.toks[m.hi-1].brk < brkComma && r.toks[m.hi].s != "and" {
		return false
	}
	if st := r.lastState(t); st == Removed || st == Discarded {
		return false
	}
	for i := len(s.hand) - 1; i >= 0 && r.since(s.hand[i].last, a.lo) < 60; i-- {
		if f := s.hand[i]; f.fastener && (f.owner == t || owns(t, f)) && r.lastState(f) == Removed {
			return true
		}
	}
	return false
}

// wasDoneUp tells whether a thing is said to have been tightened, and not how tight it is:
// "the bolts are done up tight", "that's nipped up".
func (r *reading) wasDoneUp(c *clause, a *act) bool {
	if a.verb < 0 || r.toks[a.verb].s == "was" || r.toks[a.verb].s == "were" {
		return false
	}
	for i := a.verb; i < min(c.hi, a.hi+1); i++ {
		switch r.toks[i].s {
		case "too", "so", "really", "way", "only":
			return false
		case "done", "tightened", "nipped", "pulled", "torqued", "cranked", "pinched":
			return i > a.verb
		}
	}
	return false
}

// getsNew tells whether an act is of getting a new one from where it was kept: "I got a
// new one out of the assortment".
func (r *reading) getsNew(a *act) bool {
	for i := a.lo; i < min(a.hi, len(r.toks)); i++ {
		if r.toks[i].s == "new" && (a.pronoun == "one" || a.pronoun == "ones" || len(a.objects) > 0 && r.mentions[a.objects[0]].isNew) {
			return r.word(a.hi) == "of" || r.word(a.hi-1) == "of"
		}
	}
	return false
}

// renewedLast tells whether a new one of a thing went in last.
func (r *reading) renewedLast(t *thing) bool {
	n := len(t.events) - 1
	return n >= 0 && t.events[n].action == "fit" && t.events[n].act >= 0 && r.ofNew(&r.acts[t.events[n].act])
}

// bearsOn tells whether an act says where something is pushed or struck: "push on the
// rim", "tap on the ear of it".
func (r *reading) bearsOn(a *act) bool {
	if a.subject || a.verb < 0 || len(a.objects) == 0 || r.next(a.verb) != "on" || r.mentions[a.objects[0]].from != a.verb+2 || !r.mentions[a.objects[0]].definite {
		return false
	}
	switch r.lemma1(r.toks[a.verb].s) {
	case "push", "press", "tap", "knock", "pull", "lean", "hit":
		return true
	}
	return false
}

// liesThere tells whether an act is told the way people tell how a thing lies: "the
// bolt goes through the shank", "a cable runs round it".
func (r *reading) liesThere(a *act) bool {
	if !a.subject || a.verb < 0 || r.fitsBack(&r.clauses[a.cl]) {
		return false
	}
	switch r.lemma1(r.toks[a.verb].s) {
	case "run", "pass", "sit":
		return true
	case "go", "screw", "thread", "bolt":
		for i := a.verb + 1; i < min(a.verb+4, len(r.toks)); i++ {
			if w := r.toks[i].s; w == "through" || w == "into" {
				return true
			}
		}
	}
	return false
}

// lies tells whether an act may tell how a thing sits, and not that it was put there: not
// "they're in.", "it went down".
func (r *reading) lies(c *clause, a *act) bool {
	switch w := r.toks[a.verb].s; {
	case w == "went":
		return false
	case passiveBe.has(w):
		return a.hi < c.hi && r.toks[a.hi-1].brk < brkComma
	}
	return true
}

// movedAside tells whether an act only moves its thing back out of the way: "slide the
// cover back", which nobody says of what goes back on.
func (r *reading) movedAside(a *act) bool {
	back := r.word(a.hi-1) == "back" || r.word(a.hi) == "back"
	for _, mi := range a.objects {
		back = back || r.word(r.mentions[mi].hi) == "back"
	}
	if a.verb < 0 || a.subject || !back {
		return false
	}
	switch r.lemma1(r.toks[a.verb].s) {
	case "slide", "slip", "pull", "push", "fold", "peel", "roll", "tip", "swing", "flip", "bend", "tuck", "hinge":
		return true
	}
	return false
}

// leftOff tells whether an act says that its thing stays off: "I'm leaving that
// out", "I've not put them back in yet", "the belt's not going on till tomorrow".
func (s *tracker) leftOff(c *clause, a *act) bool {
	if a.mood&(conditional|hypothetical|other|asked|aside|greeting|notNeeded) != 0 {
		return false
	}
	switch a.action.Name {
	case "leave off":
		return a.mood&negated == 0 && a.pronoun != "she" && a.pronoun != "he" && s.r.toks[c.lo].s != "while" && s.r.prev(a.lo) != "while" // "she's on the bench": all of it
	case "fit", "start by hand":
		if a.mood&negated == 0 || s.r.bearsOn(a) || s.r.saysHowWell(a) {
			return false
		}
	default:
		return false
	}
	// not what will not go on, but what was not put on
	for i := a.lo - 1; i >= c.lo && i > a.lo-6; i-- {
		switch s.r.toks[i].s {
		case "not", "never":
			switch p := s.r.prev(i); p {
			case "do", "does", "did", "can", "will", "'ll", "would", "could":
				return false
			}
			return true
		case "haven't", "hasn't", "isn't", "aren't", "ain't":
			return true
		}
	}
	return false
}

// saysHowWell tells whether what is not put on is only not there, or does not go on well: "I
// haven't got a hose in here", "the bolt's not going in properly".
func (r *reading) saysHowWell(a *act) bool {
	if a.verb >= 0 {
		switch r.lemma1(r.toks[a.verb].s) {
		case "get", "run":
			return true
		}
	}
	switch r.word(a.hi) {
	case "properly", "right", "straight", "square", "far", "easily", "nicely", "fully", "quite", "as", "well", "enough":
		return true
	}
	return false
}

// shuts are the verbs by which nothing goes back on.
var shuts = set("close shut engage latch lock")

// turn is something coming off or going on.
type turn struct {
	at  int
	off bool
}

// fitting tells whether the talk puts things together rather than takes them apart.
func (s *tracker) fitting(tok int) bool {
	on, off := 0, 0
	for i := len(s.turns) - 1; i >= 0 && i >= len(s.turns)-4 && s.r.since(s.turns[i].at, tok) < 120; i-- {
		if s.turns[i].off {
			off++
		} else if on++; on == 2 && off == 0 {
			return true // whatever came off before
		}
	}
	return on > off
}

// foundTight tells whether that a thing is tight says how it was met: nothing was done to it,
// or it was just being undone, while things come off.
func (s *tracker) foundTight(t *thing, a *act) bool {
	switch s.r.word(a.hi) {
	case "in", "under", "behind", "round", "around", "down":
		return true // "it's tight in there": no room
	}
	if k := len(t.events) - 1; k >= 0 && (left[t.events[k].action] != "off" && left[t.events[k].action] != "loose" || s.r.since(min(t.events[k].hi, a.lo), a.lo) > 20) {
		return false
	}
	turns := s.turns
	if k := len(turns) - 1; k >= 0 && turns[k].at == a.lo {
		s.turns = turns[:k]
	}
	defer func() { s.turns = turns }()
	return !s.fitting(a.lo)
}

// lastOn tells whether what was done last put back what had come off, shortly before.
func (s *tracker) lastOn(tok int) bool {
	n := len(s.turns)
	return n > 0 && s.back > 0 && s.back >= s.turns[n-1].at && s.r.since(s.back, tok) < 40
}

// apart tells whether things have been coming off of late, or nothing was done yet.
func (s *tracker) apart(tok int) bool {
	if len(s.turns) == 0 {
		return true
	}
	last := s.turns[len(s.turns)-1]
	return s.r.since(last.at, tok) < 120
}

// settle tells what is done to a thing that is only named: it comes off while
// things come off, and goes on or is tightened while they go on. False where
// nothing follows.
func (s *tracker) settle(a *act) bool {
	name := ""
	fitting := s.fitting(a.lo)
	for _, t := range a.things {
		if len(a.objects) == 0 && !t.fastener && !takesTorque(t) {
			return false // "socket on it, mallet": on the bearing
		}
	}
	if a.rule == inARow && (len(s.turns) == 0 || s.r.says1(&s.r.clauses[a.cl], s.r.clauses[a.cl].lo, "there")) {
		return false // "rack and pinion", before anything came off; "there's a strip and two screws" in the tray
	}
	if fitting && len(a.things) > 1 && len(a.things) == len(a.objects) {
		// "handle, screw, cap": of a row, what is known to be off
		var ts []*thing
		var os []int
		for k, t := range a.things {
			if st, _ := t.state(); st != "" || k > 0 && t.fastener {
				ts, os = append(ts, t), append(os, a.objects[k])
			}
		}
		if len(ts) > 0 {
			a.things, a.objects = ts, os
		}
	}
	for k, t := range a.things {
		st, _ := t.state()
		n := ""
		switch {
		case (fitting || s.lastOn(a.lo)) && (st == Removed || st == Discarded):
			n = "fit"
		case fitting && (st == Refitted || st == HandTight || st == Loosened) && takesTorque(t):
			n = "tighten"
		case !fitting && !s.lastOn(a.lo) && s.apart(a.lo) && (st == "" || st == Loosened):
			n = "remove"
		case fitting && st == "" && k > 0 && name == "fit" && t.fastener:
			n = "fit" // "flange, nut": the nut goes the way of the flange
		}
		if n == "" || name != "" && n != name || n == "fit" && k < len(a.objects) && s.r.goneWhenNamed(&s.r.clauses[a.cl], &s.r.mentions[a.objects[k]]) {
			return false
		}
		name = n
	}
	if name == "" {
		return false
	}
	a.action = s.r.lex.Action(name)
	return true
}

// objectless tells whether an act with neither thing nor pronoun leaves its thing untold on purpose.
func (s *tracker) objectless(ci int, a *act) bool {
	c := &s.r.clauses[ci]
	if a.verb < 0 || c.hi-c.lo > 9 {
		return true
	}
	// "put in the community page": something else is spoken of
	for i := a.hi; i < c.hi; i++ {
		if prepositions.has(s.r.toks[i].s) && s.r.toks[i].s != "with" && s.r.toks[i].s != "by" {
			return true
		}
	}
	return false
}

// tightInClause tells whether the clause of an act says that its thing is in and tight.
func (s *tracker) tightInClause(c *clause, a *act) bool {
	r := s.r
	hi := c.hi
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.from >= a.hi && m.from < hi && m.kind&(lexicon.Fastener|lexicon.Part) != 0 && m.prep == "" && !slices.Contains(a.objects, mi) && r.toks[m.from-1].brk >= brkComma {
			hi = m.from // "bolt through, nut on, done up tight": the nut; "clamp on, belt good and tight": the belt
		}
	}
	for i := c.lo; i+1 < hi; i++ {
		if r.toks[i+1].s != "tight" || r.word(i+2) == "as" {
			continue
		}
		switch r.toks[i].s {
		case "and", "good", "in", "on", "up", "down", "nice":
			return true // "in and tight", "back in tight"
		}
	}
	return false
}

var handPhrases = [][]string{{"by", "hand"}, {"finger", "tight"}, {"hand", "tight"}, {"with", "fingers"}, {"my", "fingers"}, {"your", "fingers"}, {"the", "fingers"}, {"two", "fingers"}, {"just", "fingers"}, {"only", "fingers"}, {"fingers", "only"}, {"loosely"}, {"loose", "for", "now"}, {"snug"}, {"snugged"}, {"just", "nipped"}, {"only", "nipped"}, {"just", "nip"}, {"only", "nip"}, {"finger", "tighten"}, {"just", "started"}, {"with", "hand"}, {"with", "the", "hand"}, {"hand", "only"}, {"finger", "and", "thumb"}, {"fingers", "and", "thumb"}, {"thumb", "tight"}, {"a", "few", "threads"}, {"couple", "of", "threads"}, {"two", "threads"}, {"three", "threads"}, {"thread", "or", "two"}, {"not", "tight"}, {"nothing", "tight"}, {"on", "loose"}, {"in", "loose"}, {"in", "slack"}, {"on", "slack"}, {"by", "fingers"}, {"by", "a", "thread"}, {"just", "caught"}, {"only", "caught"}}

// byHand tells whether the clause (or the fragment after it) says that the tightening was by hand only.
func byHand(r *reading, c *clause, a *act) (by, past bool) {
	hi := c.hi
	if hi < len(r.toks) {
		n := &r.clauses[r.toks[hi].cl]
		verb := slices.ContainsFunc(n.acts, func(ai int) bool { return r.acts[ai].verb >= 0 && r.acts[ai].pronoun != "" })
		if n.hi-n.lo <= 5 && len(n.mentions) == 0 && !verb && r.since(c.lo, n.lo) < 8 {
			hi = n.hi
		}
	}
	for _, q := range c.qtys {
		if k := r.qtys[q].Kind; k == normalize.Turn || k == normalize.Angle {
			return false, r.turnedPast(a, &r.qtys[q]) // "snug and a quarter turn"
		}
	}
	for _, ai := range c.acts {
		if o := &r.acts[ai]; o.verb < 0 && o.lo >= a.hi && o.lo < hi && len(a.objects) > 0 && len(o.objects) > 0 && !slices.Contains(a.objects, o.objects[0]) {
			hi = o.lo // "wheel on and the nuts on with the fingers"
		} else if o.verb >= a.hi && o.verb < hi && len(a.objects)+len(a.pronoun) > 0 && !slices.ContainsFunc(o.objects, func(mi int) bool { return slices.Contains(a.objects, mi) }) && o.pronoun+a.pronoun != "" {
			hi = o.verb // "link back on and pull it tight by hand"
		}
	}
	if r.fewTurns(a, hi) {
		return true, false
	}
	lo := a.lo
	if lo > c.lo && (r.toks[lo-1].s == "just" || r.toks[lo-1].s == "only") {
		lo-- // "just nipped up for now"
	}
	for i := lo; i < hi; i++ {
		if m := int(r.toks[i].men); m >= 0 && i >= a.hi && r.mentions[m].kind&lexicon.Fastener != 0 && !slices.Contains(a.objects, m) && len(a.objects) > 0 && r.afterAnd(m) {
			break // "link back on and all the bolts just nipped up"
		}
		if w := r.word(i + 2); i >= a.hi && r.toks[i].s == "and" && (w == "it" || w == "them") && r.toks[i+1].men < 0 && !prepositions.has(r.toks[i+1].s) {
			break // "chain back on and pedal it by hand"
		}
		if m := int(r.toks[i].men); m >= 0 && i >= a.hi && r.begins(r.mentions[m].from) && r.mentions[m].kind&lexicon.Fastener != 0 && len(a.objects) > 0 && !slices.Contains(a.objects, m) {
			break // "plate back on, thumbscrews finger tight"
		}
		if handAt(r, i, hi) {
			past = r.beyondHand(i, len(r.toks))
			return !past, past
		}
	}
	return false, false
}

// fewTurns tells whether a thing is only caught on its thread: "wind them in a few turns".
func (r *reading) fewTurns(a *act, hi int) bool {
	if a.verb < 0 || a.subject {
		return false
	}
	switch r.lemma1(r.toks[a.verb].s) {
	case "thread", "wind", "spin", "screw", "start":
	default:
		return false
	}
	for i := a.hi; i < min(hi, a.hi+5); i++ {
		if w := r.toks[i].s; (w == "turns" || w == "threads") && (r.toks[i-1].s == "few" || r.toks[i-1].s == "couple" || r.toks[i-1].s == "of") {
			return true
		}
	}
	return false
}

// turnedPast tells whether an act leaves a thing tight by hand and goes on to how far it is
// turned past that: "snug, and then an eighth of a turn".
func (r *reading) turnedPast(a *act, q *quantity) bool {
	for i := a.lo; i < q.lo && q.lo-a.lo < 14; i++ {
		if !handAt(r, i, q.lo) && !(i == a.verb && r.lemma1(r.toks[i].s) == "snug") {
			continue
		}
		for k := i; k < q.lo; k++ {
			switch r.toks[k].s {
			case "and", "then", "plus", "past", "after", "another":
				return true
			}
		}
		return r.toks[i].s == "snug"
	}
	return false
}

// beyondHand tells whether words for "by hand" at token i go on to say how far it is
// turned past that: "finger tight and an eighth", "hand and a half turn".
func (r *reading) beyondHand(i, hi int) bool {
	for k := i + 1; k < min(hi-2, i+4) && r.toks[k-1].brk < brkSentence; k++ {
		if w := r.toks[k+1].s; (r.toks[k].s == "and" || r.toks[k].s == "then") && (w == "a" || w == "an" || w == "half") {
			n := r.toks[k+2].s
			return fractionWord.has(n) || w == "half" || n == "bit" || n == "touch" || n == "nip" || n == "tweak" || n == "smidge" || n == "fraction" || n == "tad"
		}
	}
	return false
}

// begins tells whether something of its own begins at token i: after a comma, or "and".
func (r *reading) begins(i int) bool {
	return i == 0 || r.toks[i-1].brk >= brkComma || r.toks[i-1].s == "and" && (i == 1 || r.toks[i-2].brk >= brkComma)
}

// afterAnd tells whether "and" leads to a mention.
func (r *reading) afterAnd(mi int) bool {
	i := r.mentions[mi].from - 1
	for i > 0 && (r.toks[i].s == "all" || r.toks[i].s == "both") {
		i--
	}
	return i >= 0 && r.toks[i].s == "and"
}

var handBy = byFirst(handPhrases)

// handAt tells whether words for "by hand only" stand at token i.
func handAt(r *reading, i, hi int) bool {
	if !r.toks[i].is(wSeldom) {
		return false
	}
	for _, p := range handBy[r.toks[i].s] {
		if r.says(i, hi, p) {
			return !r.snugHard(i)
		}
	}
	return false
}
