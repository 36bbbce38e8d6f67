package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
)

// oneWords stand for a name that is not said again: "the top one",
// "the back two", and how many they are, 0 where that is open.
var oneWords = map[string]int{"one": 1, "ones": 0, "guy": 1, "guys": 0, "fella": 1, "fellas": 0, "two": 2, "three": 3, "four": 4, "pair": 2}

// placesOf are the words of places that stand for what is there.
var placesOf = map[string]string{"fronts": "front", "backs": "back", "rears": "rear", "tops": "top", "bottoms": "bottom", "uppers": "upper", "lowers": "lower", "inners": "inner", "outers": "outer", "longs": "long", "shorts": "short"}

// unsaid is the head of a mention that tells its thing by place alone, until it is
// known which thing that is: "the top one", "the front two".
const unsaid = "one"

// onlyPlaced reads at token i what tells a thing by its place and leaves its name
// unsaid: "the top one", "back two", "Bottom long ones". end is 0 where none begins.
func (r *reading) onlyPlaced(ci, i int) (m mention, end int) {
	c := &r.clauses[ci]
	w := r.toks[i].s
	if p := placesOf[w]; p != "" && r.toks[i].qty < 0 && r.toks[i].brk <= brkPause && i+1 < c.hi && (r.toks[i+1].is(wLinking|wOff|wOn) || r.toks[i+1].s == "back") && (i == c.lo || r.toks[i-1].is(wDeterminer|wOpener) || r.toks[i-1].s == "and" || r.toks[i-1].brk >= brkComma) && r.toks[max(i-1, 0)].s != "a" {
		m = mention{lo: i, hi: i + 1, cl: ci, kind: lexicon.Fastener | lexicon.Part, of: -1, head: unsaid, name: w, mods: []string{p}, plural: true, byPlace: true}
		return m, i + 1 // "fronts are out", "the backs in"
	}
	if i == c.lo || r.toks[i].qty >= 0 || !r.toks[i-1].is(wPlace) && !r.toldFrom(c, i) || r.toks[i-1].brk >= brkComma || r.toks[i-1].men >= 0 {
		return m, 0
	}
	n, ok := oneWords[w]
	if !ok {
		return m, 0
	}
	where := r.toks[i-1].s
	next := ""
	if i+1 < c.hi && r.toks[i].brk <= brkPause {
		next = r.toks[i+1].s
		if r.toks[i+1].qty >= 0 || next == "of" || next == "point" {
			return m, 0
		}
		if n > 1 && isNoun(r, i+1) && lexicon.Singular(next) != next {
			return m, 0 // "the top two bolts"
		}
		if n > 1 && !stopWords.has(next) && !prepositions.has(next) && !particle.has(next) && !r.isVerbForm(next) {
			return m, 0 // "the back two pins", "the front two cylinders"
		}
	}
	before := r.word(i - 2)
	if i-2 < c.lo {
		before = ""
	}
	if sideOf[where] != "" && (before == "a" || before == "no" || before == "wrong" || before == "not") {
		return m, 0
	}
	if where == "right" && (before != "" && before != "the" && before != "that" && before != "and" && before != "on" && !openers.has(before) || r.lookedFor(c, i-2)) {
		return m, 0 // "till I get the right one"
	}
	m = mention{lo: i, hi: i + 1, cl: ci, kind: lexicon.Fastener | lexicon.Part, of: -1, head: unsaid, name: w, plural: n != 1, byPlace: true}
	if n > 1 {
		m.count = n
	}
	return m, i + 1
}

// toldFrom tells whether "one" at a token is told from others by a word that a thing was called by
// before: "a hollow bolt … the hollow one".
func (r *reading) toldFrom(c *clause, i int) bool {
	if i-2 < c.lo || r.toks[i].s != "one" || r.toks[i-2].s != "the" || r.toks[i-1].brk >= brkComma || r.toks[i-1].is(wDrop|wDeterminer) || numberWord.has(r.toks[i-1].s) {
		return false
	}
	called := r.toks[i-1].s
	for k := len(r.mentions) - 1; k >= 0; k-- {
		if m := &r.mentions[k]; m.kind&(lexicon.Fastener|lexicon.Part) != 0 && !m.byPlace && slices.Contains(m.mods, called) {
			return true
		}
	}
	return false
}

// lookedFor tells whether something is looked for or said to be the one or not before token i.
func (r *reading) lookedFor(c *clause, i int) bool {
	for k := i; k >= c.lo && k > i-5; k-- {
		switch r.toks[k].s {
		case "get", "got", "find", "found", "buy", "bought", "order", "not", "isn't", "ain't", "aren't", "use", "is", "'s", "it's", "pick":
			return true
		}
	}
	return false
}

// toldByPlace tells which thing a mention stands for that tells it by place alone:
// one that is known by that place, the other of one known by the opposite place,
// or one of several spoken of as one until now; or nil.
func (s *tracker) toldByPlace(ci, mi int) *thing {
	r := s.r
	m := &r.mentions[mi]
	// "the front one's the long one"
	for _, k := range r.clauses[ci].mentions {
		if o := &r.mentions[k]; o.entry != nil && o.hi < m.from && o.prep == "" && m.prep == "" && m.from-o.hi <= 2 && linking.has(r.toks[o.hi].s) && o.entry.place != "" && len(m.mods) > 0 {
			for _, w := range m.mods {
				o.entry.mods[w] = true
			}
			return o.entry
		}
	}
	// "the jockey wheel, the top one"
	for _, k := range r.clauses[ci].mentions {
		if o := &r.mentions[k]; o.entry != nil && o.hi == m.from && m.definite && !m.plural && r.toks[o.hi-1].brk >= brkComma && !o.entry.many() && o.entry.place == "" && len(m.mods) > 0 {
			o.entry.place = m.mods[0]
			o.entry.mods[m.mods[0]] = true
			return o.entry
		}
	}
	if m.side != "" {
		return s.toldBySide(m)
	}
	if len(m.mods) == 0 {
		return nil
	}
	ws := m.mods
	called := !slices.ContainsFunc(m.mods, placeWords.has) // "the hollow one": by what it was called, no place
	knows := func(t *thing) bool {
		for _, w := range ws {
			if !t.mods[w] && !t.mods[canonPlace(w)] && (called || !r.saidOfIt(t, w)) {
				return false
			}
		}
		return true
	}
	if r.clauses[ci].mood&(negated|conditional|hypothetical|asked|other) != 0 {
		return nil // "if you put a long one anywhere else"
	}
	w := ws[0]
	length := w == "long" || w == "short" // bolts differ by it, not covers
	if topic := s.onTopic(m.lo); topic != nil {
		var all *thing
		for i := len(r.things) - 1; i >= max(0, len(r.things)-lookBack); i-- {
			t := r.things[i]
			if !t.fastener || t.owner != topic && !owns(topic, t) {
				continue
			}
			if knows(t) {
				return t
			}
			if length && all == nil && t.many() && t.of == nil {
				all = t
			}
		}
		if all != nil {
			return all
		}
	}
	var best *thing
	least := 60.0
	valued := r.valueBetween(&r.clauses[ci], r.clauses[ci].lo, r.clauses[ci].hi)
	for i := len(s.hand) - 1; i >= 0; i-- {
		t := s.hand[i]
		gap := r.since(t.last, m.lo)
		if gap > 120 {
			break
		}
		if valued && !t.fastener && !tightens.has(t.head) {
			continue // "forty newton metres on the middle one": of what is tightened
		}
		if length && !alike.has(t.head) || !t.fastener && len(t.events) == 0 && r.onlyThreatened(t) {
			continue // of what was only said to suffer none is the top one
		}
		just := !t.fastener && !r.actBeforeIn(&r.clauses[ci], m.lo) && s.justDone(t, m.lo)
		clash := placesClash(ws, t.mods)
		if !t.fastener && !just && !(clash && t.of != nil && gap < 15) {
			gap += 10
		}
		switch {
		case knows(t):
			gap /= 2
		case just: // "Hoses back on. Top one's tight."
		case clash: // the other of the two
			gap += 5
		case t.many() && (t.place == "" || t.place == "long" || t.place == "short"): // one of them
			gap += 10
		default:
			continue
		}
		if gap < least {
			best, least = t, gap
		}
	}
	if topic := s.onTopic(m.lo); best == nil && topic != nil && r.valueBetween(&r.clauses[ci], m.hi, r.clauses[ci].hi) {
		best = s.unnamedOf(topic, m.lo, m.count) // "Alternator in. The bottom ones are forty seven newton metres."
	}
	if best == nil || length || knows(best) {
		return best // that some are longer only tells where each goes
	}
	if called {
		return nil
	}
	return s.placed(best, w, m.plural, m.lo)
}

// actBeforeIn tells whether a clause has a verb of work before a token: "pull the top one", not
// "top one's tight".
func (r *reading) actBeforeIn(c *clause, tok int) bool {
	return slices.ContainsFunc(c.acts, func(ai int) bool { return r.acts[ai].verb >= 0 && r.acts[ai].verb < tok })
}

// justDone tells whether the last that was done shortly before a token was done to a thing
// spoken of as several, and no other several were spoken of since.
func (s *tracker) justDone(t *thing, tok int) bool {
	last := t.lastBefore(tok)
	if last == nil || t.place != "" || !t.many() || s.r.since(min(last.hi, tok), tok) > 8 {
		return false
	}
	for _, o := range s.hand {
		if o == t || o.last < last.lo {
			continue
		}
		if e := o.lastBefore(tok); o.many() || e != nil && e.lo >= last.lo {
			return false
		}
	}
	return true
}

// saidOfIt tells whether a single thing was told by a word of place of late, that is no
// part of its name: "middle bolt by hand".
func (r *reading) saidOfIt(t *thing, w string) bool {
	for k := len(t.mentions) - 1; k >= max(0, len(t.mentions)-4) && !t.many(); k-- {
		if slices.Contains(r.mentions[t.mentions[k]].mods, w) {
			return true
		}
	}
	return false
}

// onlyThreatened tells whether a thing was named only in a warning or for a case: "or it'll
// be chewing its tires".
func (r *reading) onlyThreatened(t *thing) bool {
	for _, mi := range t.mentions {
		if r.clauses[r.mentions[mi].cl].mood&(conditional|hypothetical|warned) == 0 {
			return false
		}
	}
	return len(t.mentions) > 0
}

// toldBySide is toldByPlace for left and right.
func (s *tracker) toldBySide(m *mention) *thing {
	r := s.r
	if t := s.acrossFrom(m.cl, m.side); t != nil && t.side != m.side {
		if t.side == "" {
			t.side = otherOf[m.side]
		}
		return s.sided(t, m, m.side)
	}
	for i := len(s.hand) - 1; i >= 0 && r.since(s.hand[i].last, m.lo) < 90; i-- {
		t := s.hand[i]
		if t.side != "" || t.many() {
			return s.sided(t, m, m.side)
		}
	}
	return nil
}

// lendName gives a mention that left its thing's name unsaid the name of the thing, and
// makes it the name of nothing where t is nil.
func (m *mention) lendName(t *thing) {
	if t == nil {
		m.kind = 0
		return
	}
	m.kind = lexicon.Part
	if t.fastener {
		m.kind = lexicon.Fastener
	}
	m.head, m.name = t.head, t.called()
}

// placed gives those of several things that a word of place tells apart, spoken of
// as one thing until now, or the other of one told apart by the opposite place.
func (s *tracker) placed(of *thing, w string, plural bool, at int) *thing {
	for _, t := range of.split {
		if t.mods[w] || t.mods[canonPlace(w)] {
			return t
		}
	}
	c := *of
	c.mods = map[string]bool{w: true, canonPlace(w): true}
	name := of.called()
	for k := range of.mods {
		if !clashes(w, map[string]bool{k: true}) {
			c.mods[k] = true
		}
	}
	var keep []string
	for _, k := range strings.Fields(name) {
		if !clashes(w, map[string]bool{k: true}) {
			keep = append(keep, k)
		}
	}
	other := len(keep) < len(strings.Fields(name))
	c.name, c.place, c.plural, c.count = w+" "+strings.Join(keep, " "), w, plural, 0
	if !plural {
		c.name = lexicon.Singular(c.name)
	}
	c.events, c.mentions, c.twin, c.first, c.last = append([]event{}, of.events...), nil, nil, at, at
	if other {
		c.events, c.left, c.side = nil, outcome{}, of.side
	}
	c.split, c.of, c.apart = nil, nil, false
	s.r.addThing(&c)
	s.touch(&c)
	if other {
		of = of.of
	}
	if of != nil {
		of.tellApart(&c)
	}
	return &c
}

// tellApart keeps one more of several things as one of its own. Once those of two
// opposite places are told apart nothing is left of the whole.
func (t *thing) tellApart(one *thing) {
	for _, o := range t.split {
		t.apart = t.apart || clashes(one.place, o.mods)
	}
	t.split, one.of = append(t.split, one), t
	if t.apart {
		t.events, t.left = nil, outcome{}
	}
}

// many tells whether a thing is spoken of as more than one.
func (t *thing) many() bool { return t.plural || t.count > 1 }

// each gives what an act on a thing is done to: the thing, and those told apart from it.
func (t *thing) each() []*thing {
	if t.apart {
		return t.split
	}
	return append([]*thing{t}, t.split...)
}
