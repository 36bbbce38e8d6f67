package extract

import (
	"cmp"
	"math/big"
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// Which fastener the rules take a value for, from how it is told and what was spoken of; what they take
// is weighed in values.go.

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
