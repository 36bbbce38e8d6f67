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
