package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// resolve tells which thing a mention stands for, or makes a new one.
func (s *tracker) resolve(ci, mi int) *thing {
	r := s.r
	m := &r.mentions[mi]
	if m.head == unsaid {
		t := s.toldByPlace(ci, mi)
		m.lendName(t)
		return t
	}
	fastener := m.kind&lexicon.Fastener != 0
	cont := content(m.mods)
	side := m.side
	bare := len(cont) == 0
	var owner *thing
	if fastener && bare && alike.has(m.head) {
		owner = s.ownerOf(ci, mi)
		if owner != nil && owner.side != "" && side == "" {
			side = owner.side
		}
	}
	if side == "" && s.side != "" && r.since(s.sideAt, m.lo) < 8 && bare && fastener {
		side = s.side
	}
	if t := s.moving(m); fastener && bare && t != nil {
		m.kind = lexicon.Part
		return t
	}
	// a bare fastener in hand
	if fastener && bare && alike.has(m.head) {
		if t := s.inHandFastener(mi, owner, side); t != nil {
			t.christen(m)
			if w := whereOf(m); w != "" && t.count > 1 && (m.count == 0 || m.count < t.count) && t.name != "" && !t.mods[w] && !t.mods[canonPlace(w)] {
				return s.placed(t, w, m.plural, m.lo)
			}
			return s.sided(t, m, side)
		}
		name := ""
		t := &thing{head: m.head, mods: map[string]bool{}, fastener: true, plural: m.plural, count: m.count, first: m.lo}
		if owner != nil {
			t.owner = owner
			t.takeWords(owner)
			name = lexicon.Modifier(owner.name) + " "
		}
		var pl []string
		for _, w := range m.mods {
			if placeWords.has(w) && sideOf[w] == "" {
				pl = append(pl, w)
				t.mods[w] = true
			}
		}
		t.place = strings.Join(pl, " ")
		if owner != nil || len(pl) > 0 {
			t.name = strings.TrimSpace(strings.Join(pl, " ") + " " + name + headName(m))
		}
		t.side = side
		r.addThing(t)
		return t
	}
	// a named thing
	if t := r.saidFuller(mi); t != nil {
		s.enrich(t, m)
		return t
	}
	if t := r.shortened(m, fastener); t != nil && !placesClash(m.mods, t.mods) {
		s.enrich(t, m)
		return s.sided(t, m, m.side)
	}
	var best *thing
	bestScore := -5
	only := r.onlyOne(m, fastener)
	if only == nil {
		only = r.onlyLeft(m, fastener, r.actOn(ci, mi))
	}
	like := r.like(m.head, fastener)
	var lone *thing // the only one by that word so far
	for _, t := range like {
		if t.head == m.head {
			if lone != nil {
				lone = nil
				break
			}
			lone = t
		}
	}
	for i := len(like) - 1; i >= 0; i-- {
		t := like[i]
		if t.fastener != fastener && !(t.head == m.head) {
			continue
		}
		if !(t.head == m.head || fastener && alike.has(t.head) && alike.has(m.head)) {
			// "the caliper" and "the brake caliper bracket" are not one thing
			continue
		}
		if placesClash(m.mods, t.mods) || nutAndBolt(t.head, m.head) || t.of != nil && m.place == "" && (m.plural || m.count > 1) {
			continue
		}
		if m.side != "" && t.side != "" && m.side != t.side {
			continue
		}
		if fastener && m.place != "" && t.place == "" && len(t.events) > 0 && r.since(t.last, m.lo) > 20 {
			continue // "the upper pinch bolts" are not the pinch bolt of before
		}
		common, extra := 0, 0
		for _, w := range cont {
			if t.mods[w] {
				common++
			} else {
				extra++
			}
		}
		tc := contentCount(t.mods)
		missing := tc - common
		if extra > 0 && missing > 0 {
			continue
		}
		if fastener && len(cont) > 0 && extra+missing > 0 && tc > 0 && r.ofAnotherPart(t, cont[len(cont)-1]) {
			continue // the wheel nuts are not the wheel cylinder's
		}
		if m.head == "wheel" && extra+missing > 0 && (t.mods != nil) && otherWheel(cont, t) {
			continue // the steering wheel is none of the wheels
		}
		if fastener && (common == 0 && (len(cont) > 0 && tc > 0)) {
			continue
		}
		if t.head != m.head && (extra+missing > 0 || fastener && t.many() != (m.plural || m.count > 1)) {
			continue // the hub nut is not one of the hub bolts
		}
		// "a little plug underneath. … Drain plug back in" is one
		named := fastener && !alike.has(m.head) && t == lone && tc == 0 && len(cont) > 0 && !t.many() && !m.plural && isOff(r, t) && r.actOn(ci, mi) == "fit"
		if fastener && len(cont) > 0 && tc == 0 && t.name != "" && !named {
			continue
		}
		if common == 0 && (len(cont) > 0 || tc > 0) && t != only && !named && !(tc == 0 && r.lastState(t) == Removed && m.isNew && isLockName(m)) {
			// a bare "seal" is the dust seal only while that is being talked of
			if r.since(t.last, m.lo) > 45 || len(cont) == 0 && !m.definite && r.since(t.last, m.lo) > 15 {
				continue
			}
		}
		score := common*4 - extra*2 - missing*2
		if m.place != "" {
			for _, w := range m.mods {
				if placeWords.has(w) && (t.mods[w] || t.mods[canonPlace(w)]) {
					score += 3
				}
			}
		}
		if r.since(t.last, m.lo) < 60 {
			score += 2
		}
		if side != "" && t.side == side {
			score += 3
		}
		if t.head == m.head {
			score++
		}
		if score > bestScore {
			best, bestScore = t, score
		}
	}
	if best != nil && len(cont) == 0 && contentCount(best.mods) > 0 && r.introduced(m) {
		best = nil // "and there's a little white plug there": not the one of before
	}
	if best != nil && len(best.split) > 0 && m.place != "" {
		best = s.placed(best, whereOf(m), m.plural, m.lo)
	}
	if best != nil && !(best.name == "") {
		s.enrich(best, m)
		side := m.side
		if side == "" && best.side != "" && s.side != "" && !m.plural && (s.sideAt == r.clauses[ci].lo || s.side != best.side && s.sideAt > best.last && r.since(s.sideAt, m.lo) < 12) {
			side = s.side // "new shoe on the left", "over to the right, … and the panel off"
		}
		return s.sided(best, m, side)
	}
	t := &thing{head: m.head, mods: map[string]bool{}, fastener: fastener, plural: m.plural, count: m.count, first: m.lo, name: thingName(m), side: m.side, place: m.place}
	if fastener && alike.has(m.head) && len(cont) > 0 && generic.has(cont[len(cont)-1]) {
		// "the pinch bolt for the axle": which pinch bolt it is, the part tells
		if o := s.ownerOf(ci, mi); o != nil && !strings.Contains(t.name, o.head) && r.since(o.last, m.lo) < 12 {
			t.owner = o
			t.name = lexicon.Modifier(o.name) + " " + t.name
			t.takeWords(o)
		}
	}
	for _, w := range m.mods {
		t.mods[w] = true
		t.mods[canonPlace(w)] = true
	}
	t.twin = s.otherSide(t)
	r.addThing(t)
	return t
}

// ofAnotherPart tells whether a fastener is named after another part than the one that
// word names: each one's name ends on a part of its own.
func (r *reading) ofAnotherPart(t *thing, word string) bool {
	i := strings.LastIndexByte(t.name, ' ')
	if i < 0 {
		return false
	}
	own := lexicon.Singular(t.name[strings.LastIndexByte(t.name[:i], ' ')+1 : i])
	word = lexicon.Singular(word)
	return own != word && r.namesPart(own) && r.namesPart(word)
}

// namesPart tells whether a word names a part by itself, and no fastening.
func (r *reading) namesPart(word string) bool {
	terms, _ := r.lex.Things([]lexicon.ID{r.lex.ID(word)})
	for _, t := range terms {
		if t.Kind&lexicon.Part != 0 && t.Kind&(lexicon.Fastener|lexicon.Tool) == 0 && !t.Soft && !t.Misheard {
			return true
		}
	}
	return false
}

// wheelKinds are the words of wheels that nothing runs on.
var wheelKinds = set("steering star jockey idler hand thumb worm grinding buffing flap wire depth gauge guide gear cog sprocket chain spur bevel balance pulley fan")

// otherWheel tells whether a wheel is of another kind than one with the words of cont.
func otherWheel(cont []string, t *thing) bool {
	for _, w := range cont {
		if wheelKinds.has(w) && !t.mods[w] {
			return true
		}
	}
	for w := range t.mods {
		if wheelKinds.has(w) && !slices.Contains(cont, w) {
			return true
		}
	}
	return false
}

// isLockName tells whether a mention names a lock more fully than by its head: "split pin".
func isLockName(m *mention) bool {
	t := thing{head: m.head, mods: map[string]bool{}}
	for _, w := range m.mods {
		t.mods[w] = true
	}
	return len(m.mods) > 0 && isLock(&t)
}

// lastState gives how a thing was left so far, "" for no way.
func (r *reading) lastState(t *thing) string {
	st, _ := t.state()
	return st
}

// introduced tells whether a mention is of a thing that the talk comes to for the
// first time: "there's a plug", "you've got another clip".
func (r *reading) introduced(m *mention) bool {
	if m.from < 2 || m.plural || m.count > 1 {
		return false
	}
	article := false
	for i := m.from; i < m.lo; i++ {
		w := r.toks[i].s
		article = article || w == "a" || w == "an" || w == "another"
	}
	if !article {
		return false
	}
	switch r.toks[m.from-1].s {
	case "'s", "is", "got", "have", "find", "see":
		return true
	}
	return false
}

// unnamedOf gives the fasteners of a part that the talk speaks of without their
// name, "those", "all four", as one thing of its own.
func (s *tracker) unnamedOf(part *thing, at int) *thing {
	like := s.r.like("bolt", true)
	for i := len(like) - 1; i >= 0; i-- {
		if f := like[i]; takesTorque(f) && (f.owner == part || owns(part, f)) {
			if f.of != nil {
				return f.of
			}
			return f
		}
	}
	t := &thing{name: lexicon.Modifier(part.name) + " fasteners", head: "fastener", mods: map[string]bool{}, owner: part, fastener: true, plural: true, side: part.side, first: at, last: at}
	t.takeWords(part)
	s.r.addThing(t)
	s.touch(t)
	return t
}

// bySize makes a thing of the fasteners that a clause names by their size alone:
// "so the two thirteens".
func (s *tracker) bySize(c *clause) {
	r := s.r
	for i := c.lo + 1; i < c.hi; i++ {
		if !r.toks[i].is(wSeldom|wCountOf) || r.toks[i].men >= 0 {
			continue
		}
		ones := r.onesCounted(c, i)
		if ones == 0 {
			ones = s.countedForValue(c, i)
		}
		if size := pluralSize[r.toks[i].s]; ones == 0 && (size == "" || size == "4 mm" || size == "5 mm") {
			continue // "ten and two fives" may be spacers
		}
		p := r.toks[i-1].s
		n := countOf[p]
		if ones > 0 {
			n = ones
		}
		if n == 0 && p != "the" && p != "those" && p != "these" {
			continue
		}
		for _, mi := range c.mentions {
			if m := &r.mentions[mi]; m.kind&lexicon.Fastener != 0 {
				return // "bolts, two thirteens": their size
			}
		}
		part := s.partSpokenOf(c)
		if part == nil {
			return
		}
		f := s.unnamedOf(part, i)
		if f.count == 0 && n > 1 {
			f.count = n
		}
		f.last = max(f.last, i)
		s.touch(f)
		s.sized, s.sizedAt = f, int(r.toks[i].cl)
		return
	}
}

// theOnes are the words that may stand for fasteners told by their number.
var theOnes = set("ones them 'em em")

// onesCounted gives how many there are where the clause says at token i that a part
// has so many of which nobody says the word: "carrier's two big ones", "it's got four
// of them"; 0 where it does not.
func (r *reading) onesCounted(c *clause, i int) int {
	k := i - 1
	switch w := r.toks[i].s; {
	case w == "ones":
		for k > c.lo && (lengths.has(r.toks[k].s) || r.toks[k].s == "big" || r.toks[k].s == "little" || r.toks[k].s == "small" || r.toks[k].s == "fat" || r.toks[k].s == "tiny") {
			k--
		}
		if k == i-1 {
			return 0
		}
	case (w == "them" || w == "'em" || w == "em") && r.toks[k].s == "of" && k > c.lo:
		k--
	case countOf[w] > 1 && r.toks[i].qty < 0 && r.countedThere(c, i):
		return countOf[w]
	default:
		return 0
	}
	n := countOf[r.toks[k].s]
	if n < 2 || k == c.lo {
		return 0
	}
	switch r.toks[k-1].s {
	case "'s", "is", "are", "has", "got", "by", "just":
		return n
	}
	return 0
}

// countedThere tells whether the clause does no more than count, at token i, what a part
// has, and say where: "there's two on the back of it", "it's got four round the edge".
func (r *reading) countedThere(c *clause, i int) bool {
	if i+1 >= c.hi || r.toks[i].brk >= brkComma || r.toks[i+1].men >= 0 {
		return false
	}
	switch r.toks[i+1].s {
	case "on", "at", "in", "up", "down", "round", "around", "along", "across", "underneath", "under", "behind", "through", "holding", "here", "either", "each", "inside", "from":
	default:
		return false
	}
	if n := int(r.toks[c.lo].cl) + 1; n < len(r.clauses) && r.clauses[n].sentence == c.sentence && slices.ContainsFunc(r.clauses[n].mentions, func(mi int) bool { return r.mentions[mi].kind&lexicon.Fastener != 0 }) {
		return false // "there's eight round the outside, and they've each got a nut"
	}
	switch w := r.word(i - 1); w {
	case "got", "by", "has":
		return i-2 >= c.lo
	case "'s", "is", "are", "was", "'re":
		return i-2 >= c.lo && (r.toks[i-2].s == "there" || w == "is")
	}
	return false
}

// countedForValue gives how many there are where the clause tells fasteners at token i
// by no more than their number and where they are, and how tight they go soon after:
// "the two on the side pinching the steerer, five on those"; 0 where it does not.
func (s *tracker) countedForValue(c *clause, i int) int {
	r := s.r
	n := countOf[r.toks[i].s]
	if n < 2 || r.toks[i].qty >= 0 || i+1 >= c.hi || !articles.has(r.toks[i-1].s) && r.toks[i-1].s != "those" && r.toks[i-1].s != "these" || r.toks[i-1].s == "a" {
		return 0
	}
	switch r.toks[i+1].s {
	case "on", "at", "in", "up", "down", "round", "around", "along", "across", "underneath", "that", "which", "pinching", "holding", "clamping", "securing":
	default:
		return 0
	}
	for k := i + 1; k < min(len(r.toks), i+15); k++ {
		if q := r.toks[k].qty; q >= 0 && r.qtys[q].Kind == normalize.Torque {
			return n
		}
		if m := r.toks[k].men; m >= 0 && r.mentions[m].kind&lexicon.Fastener != 0 {
			return 0
		}
	}
	return 0
}

// partSpokenOf gives the part that a clause may speak of the fasteners of: the one
// it names, else the topic, else the one spoken of last.
func (s *tracker) partSpokenOf(c *clause) *thing {
	r := s.r
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.entry != nil && !m.entry.fastener && !m.ownsNone() && !wholes.has(m.head) {
			return m.entry
		}
	}
	var part *thing
	for i := len(s.hand) - 1; i >= 0 && r.since(s.hand[i].last, c.lo) < 15; i-- {
		if t := s.hand[i]; !t.fastener && !t.ownsNone() && !wholes.has(t.head) && (part == nil || t.worked > part.worked) {
			part = t
		}
	}
	if part != nil {
		return part
	}
	return s.onTopic(c.lo)
}

// shortened gives the one thing that a bare head is the last word of: "the arm" is
// the crank arm, where no other arm is spoken of.
func (r *reading) shortened(m *mention, fastener bool) *thing {
	if len(content(m.mods)) > 0 {
		return nil
	}
	var one *thing
	for _, t := range r.like(m.head, fastener) {
		switch {
		case t.head == m.head:
			return nil
		case t.fastener != fastener || t.twin != nil || !strings.HasSuffix(t.head, " "+m.head):
		case one != nil:
			return nil
		default:
			one = t
		}
	}
	return one
}

// onlyOne gives the one thing spoken of with the mention's head, where there is
// just one and the mention says no more than the head.
func (r *reading) onlyOne(m *mention, fastener bool) *thing {
	if len(content(m.mods)) > 0 {
		return nil
	}
	var one *thing
	for _, t := range r.like(m.head, fastener) {
		if t.head == m.head && t.twin == nil && t.of == nil {
			if one != nil {
				return nil
			}
			one = t
		}
	}
	return one
}

// onlyLeft gives the one thing of several with the mention's head that is off when
// one of them is said to go on: "Cover on.", where the other cover is on already.
func (r *reading) onlyLeft(m *mention, fastener bool, act string) *thing {
	if len(content(m.mods)) > 0 || act != "fit" || m.isNew || m.plural {
		return nil
	}
	var one *thing
	for _, t := range r.like(m.head, fastener) {
		if t.head != m.head || t.fastener != fastener {
			continue
		}
		if st, _ := t.state(); st == Removed {
			if one != nil {
				return nil
			}
			one = t
		}
	}
	return one
}

// saidFuller gives the thing that was only just named and is named again with more
// words, as nobody does of another: "watch the key, the little square key".
func (r *reading) saidFuller(mi int) *thing {
	if mi == 0 {
		return nil
	}
	m, o := &r.mentions[mi], &r.mentions[mi-1]
	if o.entry == nil || o.head != m.head || len(o.mods) > 0 || len(m.mods) == 0 || o.count > 1 || !m.definite || !o.definite || m.plural != o.plural ||
		o.prep != m.prep && m.prep != "" || o.hi != m.from || !r.toks[m.from].is(wDeterminer) || r.toks[m.from].s == "that" || contentCount(o.entry.mods) > 0 {
		return nil
	}
	return o.entry
}

// sameCount tells whether so many are spoken of as before: "three bolts a side" are six.
func (r *reading) sameCount(t *thing, m *mention) bool {
	if m.count != 2*t.count {
		return m.count == t.count
	}
	for _, mi := range t.mentions {
		if o := &r.mentions[mi]; o.count == t.count && o.hi+1 < len(r.toks) && r.toks[o.hi-1].brk < brkComma {
			switch r.toks[o.hi].s {
			case "a", "per", "each", "either", "every":
				return r.toks[o.hi+1].s == "side" || r.toks[o.hi+1].s == "end"
			case "on", "at":
				w := r.word(o.hi + 1)
				return w == "each" || w == "either" || w == "both"
			}
		}
	}
	return false
}

// enrich lets a later, fuller name or a count add to what is known.
func (s *tracker) enrich(t *thing, m *mention) {
	if t.count == 0 && m.count > 1 {
		t.count = m.count
	}
	t.christen(m)
	more := content(m.mods)
	if len(more) > contentCount(t.mods) && t.owner == nil && (t.fastener || len(t.events) == 0) {
		t.name = thingName(m)
	}
	for _, w := range more {
		t.mods[w] = true
	}
	t.plural = t.plural || m.plural && (t.fastener || !s.onlyOneOf(t))
	if t.place == "" && m.place != "" {
		t.place = m.place
		for _, w := range m.mods {
			if placeWords.has(w) {
				t.mods[w] = true
				t.mods[canonPlace(w)] = true
			}
		}
		if t.fastener && t.owner == nil && !strings.Contains(t.name, m.place) {
			t.name = strings.TrimSpace(m.place + " " + t.name)
		}
	}
}

// onlyOneOf tells whether a part was told as a single one beside another of its head:
// "hoses" is not the top hose alone.
func (s *tracker) onlyOneOf(t *thing) bool {
	if t.plural || t.count > 1 || contentCount(t.mods) == 0 && t.place == "" {
		return false
	}
	for _, o := range s.r.like(t.head, t.fastener) {
		if o != t && o.head == t.head && !o.plural && len(o.events) > 0 {
			return true
		}
	}
	return false
}

// otherSide gives the thing that a new one is the left or right of, told by its name alone.
func (s *tracker) otherSide(t *thing) *thing {
	if t.side == "" {
		return nil
	}
	for _, o := range s.r.like(t.head, t.fastener) {
		if o.head == t.head && o.side != "" && o.side != t.side && o.place == t.place && contentCount(o.mods) == contentCount(t.mods) {
			return o.root()
		}
	}
	return nil
}

// together gives what a plural stands for: the left and the right of it, where it has
// no side, and with no more than the word all that came off one by one: "hoses back on".
func (s *tracker) together(t *thing, m *mention, act string) []*thing {
	out := []*thing{t}
	if m.side == "" && t.side != "" && putsBack[act] && s.r.lastState(t) == Removed {
		for _, o := range s.r.like(t.head, t.fastener) {
			if o == t || o.side == "" || o.root() != t.root() || s.r.lastState(o) != Removed {
				continue
			}
			for _, e := range []event{t.events[len(t.events)-1], o.events[len(o.events)-1]} {
				if e.rule == sameAgain && (s.side == "" || s.sideAt < e.hi) {
					return append(out, o) // told once for both when they came off, and no side since
				}
			}
		}
	}
	if !m.plural && m.count < 2 || m.side != "" {
		return out
	}
	bare := len(m.mods) == 0 && m.count != 1 && !t.fastener && !t.plural && putsBack[act]
	for _, o := range s.r.like(t.head, t.fastener) {
		switch {
		case o == t:
		case t.side != "" && o.side != "" && o.root() == t.root():
			out = append(out, o)
		case t.side != "" && o.head == t.head && o.side == otherOf[t.side] && putsBack[act] && s.r.lastState(o) == Removed && s.r.lastState(t) == Removed:
			out = append(out, o)
		case bare && o.head == t.head && !o.plural && o.count < 2 && s.r.lastState(o) == Removed && s.r.since(o.last, m.lo) < 900:
			out = append(out, o)
		}
	}
	if m.count > 1 && len(out) > m.count && t.side == "" {
		return out[:1] // "two hoses", and more than two came off
	}
	return out
}

// putsBack are the acts by which things go back on.
var putsBack = map[string]bool{"fit": true, "start by hand": true, "tighten": true}

// sided keeps left and right apart: a thing spoken of with another side than its own is its twin.
func (s *tracker) sided(t *thing, m *mention, side string) *thing {
	if side == "" || t.side == side {
		return t
	}
	for _, o := range s.r.like(t.head, t.fastener) {
		if o.twin == t && o.side == side || t.twin != nil && (o.twin == t.twin || o == t.twin) && o.side == side {
			return o
		}
	}
	if t.side == "" {
		if len(t.events) == 0 || m.side == "" {
			if len(t.events) == 0 && m.side != "" {
				t.side = side
			}
			return t
		}
	}
	c := *t
	c.mods = map[string]bool{}
	for k := range t.mods {
		if sideOf[k] == "" {
			c.mods[k] = true
		}
	}
	c.side = side
	c.twin = t
	c.first = m.lo
	c.mentions = nil
	if t.side != "" {
		c.events, c.left = nil, outcome{}
	} else {
		c.events = append([]event{}, t.events...)
	}
	s.r.addThing(&c)
	return &c
}

// ownerOf tells which part an unnamed fastener holds: one named beside it, or what the talk is about.
func (s *tracker) ownerOf(ci, mi int) *thing {
	r := s.r
	m := &r.mentions[mi]
	c := &r.clauses[ci]
	var before, after *mention
	for _, k := range c.mentions {
		o := &r.mentions[k]
		if (o.kind&lexicon.Part == 0 || o.kind&lexicon.Fastener != 0) && !heldByBolts.has(o.head) || k == mi || o.ownsNone() && !(ownsIfSaid.has(o.head) && o.from == m.hi+1 && (o.prep == "on" || o.prep == "of" || o.prep == "for")) && !(m.count > 0 && o.hi < m.from && m.from-o.hi <= 3 && r.toks[m.from-1].brk >= brkComma && r.done(c, k)) {
			continue // "positive cable off, one nut": the cable's
		}
		if o.hi <= m.from {
			if o.prep == "from" || o.prep == "with" || o.prep == "behind" || o.prep == "off" || o.prep == "under" || o.prep == "over" {
				continue
			}
			// "this bracket that holds the hose": the bracket, not the hose
			if before == nil || o.prep == "" && !r.holdsBetween(before.hi, o.from) || before.prep != "" && o.prep == "" {
				before = o
			}
		} else if after == nil && o.from >= m.hi && (o.prep != "" && o.prep != "with" && o.prep != "from" && o.prep != "behind" && !(s.topic != nil && under.has(o.prep) && s.onTopic(m.lo) != nil) && !(o.prep == "in" && containers.has(o.head)) || r.word(o.from-1) == "off" || r.holdsBetween(m.hi, o.from)) {
			after = o
		}
	}
	if after == nil && c.hi < len(r.toks) {
		// "two nuts | which are holding the risers"
		n := &r.clauses[r.toks[c.hi].cl]
		if w := r.toks[n.lo].s; (w == "which" || w == "that" || w == "holding") && n.sentence == c.sentence && c.hi-m.hi <= 3 {
			for _, k := range n.mentions {
				if o := &r.mentions[k]; o.kind&lexicon.Part != 0 && o.kind&lexicon.Fastener == 0 && r.holdsBetween(n.lo, o.from) {
					if o.entry == nil {
						o.entry = s.resolve(int(r.toks[n.lo].cl), k)
					}
					return o.entry
				}
			}
		}
	}
	if after != nil && after.from-m.hi <= 6 && !r.anotherBetween(m.hi, after.from) {
		if after.entry == nil {
			k := int(r.toks[after.lo].men)
			if t := s.resolve(ci, k); t != nil {
				r.mentions[k].entry = t
			}
		}
		return r.mentions[r.toks[after.lo].men].entry
	}
	if before != nil && before.entry != nil {
		return before.entry
	}
	if t := s.letsGo(ci, mi); t != nil {
		return t
	}
	if t := s.ownEnd(ci, mi); t != nil {
		return t
	}
	if t := s.onTopic(m.lo); t != nil {
		if o := s.justWorkedOn(ci); o != nil && o != t && r.opens(c, m) {
			return o // "she's moved the latch plate up. Two bolts."
		}
		return t
	}
	// what the talk is about: the latest part that a clause of its own was about
	for pass := 0; pass < 2; pass++ {
		for k := ci - 1; k >= max(0, ci-60) && r.since(r.clauses[k].lo, m.lo) < 40; k-- {
			p := &r.clauses[k]
			if pass == 0 && (subordinate.has(r.toks[p.lo].s) || p.mood&(warned|other|hypothetical|conditional|aside|greeting|negated) != 0) {
				continue
			}
			for _, ai := range p.acts {
				// "back up it goes": what was last spoken of
				if a := &r.acts[ai]; pass == 0 && a.happened() && len(a.objects) == 0 && len(a.things) == 1 && left[a.action.Name] != "" && !a.things[0].fastener && !ownsNone(a.things[0].head) {
					return a.things[0]
				}
			}
			for i := len(p.mentions) - 1; i >= 0; i-- {
				o := &r.mentions[p.mentions[i]]
				if o.entry == nil || (o.entry.fastener || o.kind&lexicon.Part == 0) && !(o.head == "clamp" && k == ci-1 && m.count > 1) || o.ownsNone() || r.onlyMinded(o) {
					continue
				}
				if pass == 1 && (o.prep == "over" || o.prep == "without" || o.prep == "past") {
					continue // "slide that over the disc": not the disc's
				}
				if pass == 0 && o.prep != "" && o.prep != "on" && o.prep != "of" && o.prep != "for" {
					continue
				}
				if (o.prep == "on" || r.backOnto(o)) && r.carries(p, o) || r.doneMeanwhile(p.mentions[i]) || pass == 0 && r.besides(p, o) || how.has(r.word(o.hi)) {
					continue // "sprocket on the carrier": the sprocket
				}
				if i > 0 && o.prep == "" && keeps.has(r.word(o.from-1)) {
					continue // "a bracket that holds the hose": the bracket
				}
				return o.entry
			}
		}
	}
	return nil
}

// ownEnds are the parts that hold nothing and are held by a nut or a bolt of their own.
var ownEnds = set("hose lead cable tube wire cord pipe piston boot pushrod connector")

// ownEnd gives the part with a nut or bolt of its own that went on or came off right before
// a mention: "the fat wire goes back on, and that nut", "then the piston. Then the nut."
func (s *tracker) ownEnd(ci, mi int) *thing {
	r := s.r
	m := &r.mentions[mi]
	for k := mi - 1; m.count <= 2 && len(content(m.mods)) == 0 && k >= 0 && r.mentions[k].cl >= ci-2 && r.since(r.mentions[k].lo, m.lo) < 8; k-- {
		o := &r.mentions[k]
		if o.entry == nil || o.kind&lexicon.Part == 0 || o.kind&lexicon.Fastener != 0 || rides.has(o.head) {
			continue
		}
		if ownEnds.has(o.head) && o.prep == "" && r.done(&r.clauses[o.cl], k) {
			return o.entry
		}
		return nil
	}
	return nil
}

// rides are the parts that go on with a fastener and are named on the way to it.
var rides = set("washer spacer shim seal gasket o-ring ring bush bushing sleeve")

// under are the words by which a part only tells where another one's bolt is.
var under = set("under underneath below beneath above near beside past")

// ownsIfSaid are the parts that a fastener is named after only where one breath says
// that it is theirs: "the nut on the cable".
var ownsIfSaid = set("cable hose lead tube wire belt pad shoe boot sleeve connector tube piston pushrod roller spacer")

// anotherBetween tells whether another of them is spoken of between two tokens: "five
// bolts and the one under the tab".
func (r *reading) anotherBetween(lo, hi int) bool {
	and := false
	for i := lo; i < hi; i++ {
		w := r.toks[i].s
		and = and || w == "and" || w == "plus"
		if and && (w == "one" || w == "other" || w == "another") {
			return true
		}
	}
	return false
}

// how are the words that go on to tell how a thing lies: "the hose stub pointing down".
var how = set("pointing facing sticking hanging dangling sitting looking")

// backOnto tells whether a mention is of what something goes back on or in: "motor back on the plate".
func (r *reading) backOnto(m *mention) bool {
	w := r.word(m.from - 1)
	return m.from > 1 && m.from < m.lo && m.prep == "" && (w == "on" || w == "in") && r.word(m.from-2) == "back"
}

// carries tells whether a clause has another part go on a mention: "sprocket on the carrier".
func (r *reading) carries(c *clause, m *mention) bool {
	for _, k := range c.mentions {
		if o := &r.mentions[k]; o.hi <= m.from && o.prep == "" && o.kind&lexicon.Part != 0 && o.kind&lexicon.Fastener == 0 && !o.ownsNone() && o.entry != m.entry {
			return true
		}
	}
	return false
}

// doneMeanwhile tells whether a mention is of what is only held or turned while
// something else is done: "down it goes, turning the shaft".
func (r *reading) doneMeanwhile(mi int) bool {
	m := &r.mentions[mi]
	if r.heldStill(m.cl, mi) {
		return true
	}
	for _, ai := range r.clauses[m.cl].acts {
		a := &r.acts[ai]
		if a.verb < 0 || a.subject || !slices.Contains(a.objects, mi) || ledgerActs[a.action.Name] != "" {
			continue
		}
		if w := r.toks[a.verb].s; strings.HasSuffix(w, "ing") && (a.verb == 0 || r.toks[a.verb-1].brk == brkComma || r.toks[a.verb-1].s == "while") {
			return true
		}
		switch r.lemma1(r.toks[a.verb].s) {
		case "squeeze", "hold", "jam", "steady", "wedge":
			return true
		}
	}
	return false
}

// letsGo gives the part that comes off as soon as the fasteners that a mention counts
// are out: "six screws across the back, and the panel lifts out".
func (s *tracker) letsGo(ci, mi int) *thing {
	r := s.r
	m := &r.mentions[mi]
	if m.count < 1 || m.prep != "" || m.definite || !r.opens(&r.clauses[ci], m) {
		return nil
	}
	for k := ci; k < min(len(r.clauses), ci+2) && r.clauses[k].sentence == r.clauses[ci].sentence; k++ {
		for _, ai := range r.clauses[k].acts {
			a := &r.acts[ai]
			if a.lo < m.hi || a.action.Name != "remove" || !a.happened() {
				continue
			}
			if len(a.objects) == 0 || a.objects[0] == mi {
				return nil
			}
			o := &r.mentions[a.objects[0]]
			if !a.subject || o.kind&lexicon.Part == 0 || o.kind&lexicon.Fastener != 0 || o.ownsNone() {
				return nil
			}
			if o.entry == nil {
				o.entry = s.resolve(k, a.objects[0])
			}
			return o.entry
		}
	}
	return nil
}

// justWorkedOn gives the part that the clause before does something to that leaves
// it where it was, where the talk did not turn to another since.
func (s *tracker) justWorkedOn(ci int) *thing {
	r := s.r
	if ci == 0 || s.topicAt >= r.clauses[ci-1].lo || r.since(r.clauses[ci-1].lo, r.clauses[ci].lo) > 12 {
		return nil
	}
	p := &r.clauses[ci-1]
	if p.mood&(warned|other|hypothetical|conditional|aside|greeting|negated) != 0 {
		return nil
	}
	for _, ai := range p.acts {
		for _, mi := range r.acts[ai].objects {
			if o := &r.mentions[mi]; o.entry != nil && o.kind&lexicon.Part != 0 && o.kind&lexicon.Fastener == 0 && !o.ownsNone() && ledgerActs[r.acts[ai].action.Name] == "" {
				return o.entry
			}
		}
	}
	return nil
}

var subordinate = set("while because cause if when before until till otherwise unless whereas")

var keeps = set("hold holds holding held secures securing retains retaining")

var holds = set("hold holds holding held secure secures securing retain retains retaining for goes going fasten fastens that")

func (r *reading) holdsBetween(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if holds.has(r.toks[i].s) && !(r.toks[i].s == "hold" && i > 0 && r.toks[i-1].brk >= brkComma) {
			return true // but "two nuts, hold the pushrod": what is done meanwhile
		}
	}
	return false
}

// inHandFastener finds the fastener that a bare "the bolts", "two bolts" or
// "that nut" stands for: the likeliest of those spoken of, weighed by how lately
// it was spoken of, whose it is, and whether what is done to it now can follow
// what was done to it last.
func (s *tracker) inHandFastener(mi int, owner *thing, side string) *thing {
	r := s.r
	m := &r.mentions[mi]
	act := r.actOn(m.cl, mi)
	topic := s.onTopic(m.lo)
	same := s.handHas(m)
	where := whereOf(m)
	var best *thing
	bestScore := 0
	for i := len(s.hand) - 1; i >= 0; i-- {
		t := s.hand[i]
		if !t.fastener || !alike.has(t.head) || placesClash(m.mods, t.mods) || nutAndBolt(t.head, m.head) || t.of != nil && m.place == "" && (m.plural || m.count > 1) {
			continue
		}
		gap := r.since(t.last, m.lo)
		if t.head != m.head && (same || r.namedElse(t, m)) {
			continue // "two bolts and two nuts"
		}
		if tooMany(t, m) || r.toldApart(t, m) {
			continue
		}
		if t.head != m.head && t.head != "fastener" && (t.count > 1 && m.count == 1 || t.count > 1 && !m.plural && m.count == 0 && (t.count > 2 || m.definite) || (m.plural || m.count > 1) && !t.many()) {
			continue // "the one bolt" is none of five screws
		}
		if t.head != m.head && t.head != "fastener" && (gap > 30 || t.owner == nil && contentCount(t.mods) > 0 && t.mods[m.head]) {
			continue
		}
		if m.count > 1 && t.count > 1 && !r.sameCount(t, m) && !m.definite {
			continue // "three screws" are not the two of before
		}
		score := 0
		switch {
		case gap < 12:
			score += 4
		case gap < 30:
			score += 3
		case gap < 60:
			score += 2
		case gap < 240:
			score++
		}
		if t.head == m.head {
			score++
		}
		single := t.head == m.head && m.plural && !t.many() && (contentCount(t.mods) > 0 || t.owner != nil && t.owner != owner)
		if single {
			score -= 3 // "Castle nut's snug. … Wheel on. Nuts, all by hand."
		}
		if owner != nil {
			if t.owner == owner || owns(owner, t) {
				score += 4
			} else if t.owner != nil && int(r.toks[owner.last].cl) != m.cl && t.owner.last > owner.last-20 && r.since(t.owner.last, m.lo) < 20 && r.lastState(t.owner) == Refitted && isOff(r, t) {
				score += 4 // "valves in their holes, and the head goes back on. Bolts": what held the head
			} else if t.head == m.head && m.definite && r.since(t.first, m.lo) < 15 && t.mentions != nil && r.lastState(t) != Torqued {
				score++ // "There's one Phillips screw. … The screw comes out"
			} else if t.owner != nil || contentCount(t.mods) > 0 {
				if st, _ := t.state(); st == Torqued && owner.last > t.last && act != "slacken" && act != "remove" {
					score -= 2 // it has its value: the next part's is another
				}
				if score -= 2; owner.last > t.last {
					score--
				} else if t.head == m.head && !single && s.onlyHeard(t, m.lo) {
					score += 3 // "Now bar studs. … So it gets a longer stud."
				}
				if oc := int(r.toks[owner.last].cl); oc == m.cl || owner.last > t.last && r.clauses[oc].sentence == r.clauses[m.cl].sentence {
					score -= 3 // another part is named in the same breath
				}
			} else if int(r.toks[owner.last].cl) == m.cl && t.last < owner.first {
				score -= 3 // "Caliper, two bolts.": not the nuts spoken of before it
			}
		}
		if topic != nil && t.last < s.topicAt && t.owner != topic && !owns(topic, t) {
			score -= 2 // the talk has turned to another part since
			if st, _ := t.state(); st == Torqued && m.count > 1 && !m.definite && act != "slacken" && act != "remove" {
				continue // "Ten newton metres. Then the lid. Three bolts": those of before have their value
			}
		}
		st, _ := t.state()
		if st == Removed && r.onlyHeaded(t) {
			st = Loosened // so far it was only named: now it comes off
		}
		if st == Discarded && act != "" {
			score -= 3
		}
		switch act {
		case "fit", "start by hand", "tighten", "torque":
			switch st {
			case Removed, Loosened:
				score += 2
			case HandTight, Refitted:
				score++
			case Torqued:
				score--
			}
		case "remove":
			switch st {
			case Loosened:
				score += 4
			case Removed:
				score -= 2
			}
		case "slacken":
			if st == Removed {
				score--
			}
		}
		if m.count > 1 && t.count > 1 {
			if r.sameCount(t, m) {
				if score += 2; st == Removed && s.fitting(m.lo) && t.head == m.head && act != "remove" {
					score += 2 // "new ring, three bolts": the three that came off
				}
				if m.definite && (st == HandTight || st == Loosened || st == Refitted) && t.head == m.head {
					score += 2 // "those two bolts": the two that wait
				}
			} else {
				score -= 3
			}
		}
		if m.definite || m.count == 0 {
			score++
		} else if gap > 60 && st == "" {
			score--
		}
		if side != "" && t.side != "" && side != t.side {
			score -= 2
		}
		if where != "" && t.place != "" {
			if t.mods[where] || t.mods[canonPlace(where)] {
				score += 3
			} else {
				score -= 3 // the front bolt is not the top bolt of before
			}
		}
		if score > bestScore {
			best, bestScore = t, score
		}
	}
	if bestScore >= 5 {
		return best
	}
	if t := s.onlyOpen(mi, owner); t != nil {
		return t
	}
	if owner != nil {
		like := r.like(m.head, true)
		for i := len(like) - 1; i >= 0; i-- {
			t := like[i]
			if t.fastener && t.head == m.head && (t.owner == owner || owns(owner, t)) && !placesClash(m.mods, t.mods) && !tooMany(t, m) && !r.toldApart(t, m) && !(t.count > 2 && !m.plural && m.count < 2) {
				return t
			}
		}
	}
	return nil
}

// toldApart tells whether a single fastener was last told by another place than a mention's:
// "Middle bolt by hand. Top bolt by hand."
func (r *reading) toldApart(t *thing, m *mention) bool {
	if m.place == "" || t.many() || len(t.mentions) == 0 {
		return false
	}
	o := &r.mentions[t.mentions[len(t.mentions)-1]]
	return o.place != "" && canonPlace(o.place) != canonPlace(m.place)
}

// tooMany tells whether a mention counts more than a thing that was told as one by
// its name can be: "There's a pinch bolt. … The two clamps. Four bolts."
func tooMany(t *thing, m *mention) bool {
	return m.count > 2 && t.count <= 1 && !t.plural && t.of == nil && contentCount(t.mods) > 0
}

// isOff tells whether a thing came off, or was let go, and is not back on.
func isOff(r *reading, t *thing) bool {
	st := r.lastState(t)
	return st == Removed || st == Loosened
}

// moving gives the moving part of the machine that "the screw" or "the nut" is, where one
// was named and no fastener was called by that word since: a lathe's lead screw.
func (s *tracker) moving(m *mention) *thing {
	if m.plural || m.count > 0 || m.head != "screw" && m.head != "nut" {
		return nil
	}
	var last *thing
	for _, t := range s.r.like(m.head, false) {
		if t.works() && (last == nil || t.last > last.last) {
			last = t
		}
	}
	if last == nil || s.r.since(last.last, m.lo) > 240 {
		return nil
	}
	for _, t := range s.r.like(m.head, true) {
		if t.head == m.head && t.last > last.last && !t.many() {
			return nil
		}
	}
	return last
}

// onlyOpen gives the one bolt or nut that is off or not tight yet, where things go
// back on in a row and one ends it that is named by no more than its word: "hub on,
// outer bearing, washer, nut". What goes on is what came off.
func (s *tracker) onlyOpen(mi int, owner *thing) *thing {
	r := s.r
	m := &r.mentions[mi]
	c := &r.clauses[m.cl]
	row := 0
	for _, k := range c.mentions {
		if k != mi && r.mentions[k].lo < m.lo && r.mentions[k].prep == "" {
			row++
		}
	}
	if owner != nil && (row == 0 || !r.bareElement(c, mi)) {
		return s.setFree(m, owner, r.actOn(m.cl, mi))
	}
	if m.plural || m.count > 0 || len(m.mods) > 0 || m.prep != "" || m.isNew || !s.fitting(m.lo) && !r.toldHowItLies(c) {
		return nil
	}
	var one *thing
	for _, t := range r.like(m.head, true) {
		if t.head != m.head || t.many() || len(t.events) == 0 {
			continue
		}
		switch st, _ := t.state(); st {
		case Tightened, Torqued, Discarded:
			continue
		}
		if one != nil {
			return nil
		}
		one = t
	}
	if one != nil && r.since(one.last, m.lo) > 900 {
		return nil
	}
	return one
}

// setFree gives the fastener that goes back on where a part does that it was taken out to let
// go: "Undo the nut. Tap the bolt out. The drum lifts away. … Drum back in. Bolt through."
func (s *tracker) setFree(m *mention, owner *thing, act string) *thing {
	r := s.r
	if m.isNew || !putsBack[act] {
		return nil
	}
	off := -1
	for i := range owner.events {
		if e := &owner.events[i]; e.action == "remove" {
			off = e.lo
		}
	}
	if off < 0 {
		return nil
	}
	var one *thing
	for _, t := range r.like(m.head, true) {
		n := len(t.events)
		if t.head != m.head || n == 0 || r.lastState(t) != Removed || t.many() != (m.plural || m.count > 1) || m.count > 1 && t.count > 1 && !r.sameCount(t, m) {
			continue
		}
		if e := &t.events[n-1]; e.lo <= off && r.since(e.lo, off) < 25 {
			if one != nil {
				return nil
			}
			one = t
		}
	}
	return one
}

// handHas tells whether a fastener of the mention's own word was spoken of lately,
// told apart there from one of another word: a bolt with its nut.
func (s *tracker) handHas(m *mention) bool {
	for i := len(s.hand) - 1; i >= 0; i-- {
		t := s.hand[i]
		if s.r.since(t.last, m.lo) > 90 {
			return false
		}
		if t.fastener && t.head == m.head && t.mate {
			return true
		}
	}
	return false
}

// onlyHeard tells whether no other fastener in hand was called by the same word within
// a minute: wing nuts are not the nut.
func (s *tracker) onlyHeard(t *thing, at int) bool {
	for i := len(s.hand) - 1; i >= 0; i-- {
		o := s.hand[i]
		if s.r.since(o.last, at) > 60 {
			break
		}
		if o != t && o.fastener && o.head == t.head && o.many() == t.many() && o != t.of && (o.of == nil || o.of != t.of && o.of != t) {
			return false
		}
	}
	return true
}

// namedElse tells whether a thing was called by another word than the mention's in the same clause.
func (r *reading) namedElse(t *thing, m *mention) bool {
	for k := len(t.mentions) - 1; k >= 0; k-- {
		o := &r.mentions[t.mentions[k]]
		if o.cl != m.cl {
			return false
		}
		if o.head != m.head {
			return true
		}
	}
	return false
}

// actOn gives the name of the first act that has the mention as its object.
func (r *reading) actOn(ci, mi int) string {
	for _, ai := range r.clauses[ci].acts {
		for _, o := range r.acts[ai].objects {
			if o == mi {
				return r.acts[ai].action.Name
			}
		}
	}
	return ""
}

// whereOf gives the word of place that tells a mention apart, "" where none does:
// the long ones and the left ones are told otherwise.
func whereOf(m *mention) string {
	for _, w := range m.mods {
		if opposite[canonPlace(w)] != "" && sideOf[w] == "" && w != "long" && w != "short" {
			return w
		}
	}
	return ""
}

// another makes a second thing of the same name, and lets the act's mention stand for it.
func (s *tracker) another(t *thing, a *act) *thing {
	c := *t
	c.mods = map[string]bool{}
	for w := range t.mods {
		c.mods[w] = true
	}
	c.events, c.left, c.mentions, c.isNew, c.twin = nil, outcome{}, nil, false, nil
	c.first = a.lo
	s.r.addThing(&c)
	for _, mi := range a.objects {
		if m := &s.r.mentions[mi]; m.entry == t {
			m.entry = &c
			c.mentions = append(c.mentions, mi)
		}
	}
	return &c
}
