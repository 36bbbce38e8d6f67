package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// unnamed tells which fastener a mention by its word alone stands for, or makes a new one.
func (s *tracker) unnamed(ci, mi int) *thing {
	r := s.r
	m := &r.mentions[mi]
	best, or := s.whose(ci, mi, anyClaim)
	side := m.side
	if best.fastener() {
		t := best.t
		if side == "" && t.owner != nil {
			side = t.owner.side
		}
		if side == "" && s.side != "" && r.since(s.sideAt, m.lo) < 8 {
			side = s.side
		}
		t.christen(m)
		if w := whereOf(m); w != "" && t.count > 1 && (m.count == 0 || m.count < t.count) && t.name != "" && !t.mods[w] && !t.mods[canonPlace(w)] {
			return s.placed(t, w, m.plural, m.lo)
		}
		return s.sided(t, m, side)
	}
	owner := best.t
	if k := best.ahead; k >= 0 {
		if o := &r.mentions[k]; o.entry == nil {
			o.entry = s.resolve(o.cl, k)
		}
		owner = r.mentions[k].entry
	}
	if t := r.itsOwn(owner, m); t != nil {
		return s.sided(t, m, m.side)
	}
	if side == "" && owner != nil {
		side = owner.side
	}
	if side == "" && s.side != "" && r.since(s.sideAt, m.lo) < 8 {
		side = s.side
	}
	t := &thing{head: m.head, mods: map[string]bool{}, fastener: true, plural: m.plural, count: m.count, first: m.lo, side: side, or: or}
	var name []string
	for _, w := range m.mods {
		if placeWords.has(w) && sideOf[w] == "" {
			name = append(name, w)
			t.mods[w] = true
		}
	}
	t.place = strings.Join(name, " ")
	if owner != nil {
		t.owner = owner
		t.takeWords(owner)
		name = append(name, lexicon.Modifier(owner.name))
	}
	if len(name) > 0 {
		t.name = strings.Join(append(name, headName(m)), " ")
	}
	r.addThing(t)
	return t
}

// itsOwn gives the fastener of a part that was spoken of before by the mention's word; nil
// where there is none that it can be.
func (r *reading) itsOwn(part *thing, m *mention) *thing {
	if part == nil {
		return nil
	}
	like := r.like(m.head, true)
	for i := len(like) - 1; i >= 0; i-- {
		t := like[i]
		if t.head == m.head && (t.owner == part || owns(part, t)) && !placesClash(m.mods, t.mods) && !tooMany(t, m) && !r.toldApart(t, m) && !(t.count > 2 && !m.plural && m.count < 2) {
			return t
		}
	}
	return nil
}

// resolve tells which thing a mention stands for, or makes a new one.
func (s *tracker) resolve(ci, mi int) *thing {
	r := s.r
	m := &r.mentions[mi]
	if m.head == unsaid {
		t := s.toldByPlace(ci, mi)
		if t == nil && m.counted {
			t = s.countedThing(ci, mi)
		}
		m.lendName(t)
		return t
	}
	fastener := m.kind&lexicon.Fastener != 0
	cont := content(m.mods)
	side := m.side
	bare := len(cont) == 0
	if fastener && bare && alike.has(m.head) {
		if t := s.toldBySize(m); t != nil {
			return t
		}
		if t := s.moving(m); t != nil {
			m.kind = lexicon.Part
			return t
		}
		return s.unnamed(ci, mi)
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
		if m.head == "wheel" && extra+missing > 0 && t.mods != nil && otherWheel(cont, t) {
			continue // the steering wheel is none of the wheels
		}
		if t.head != m.head && (extra+missing > 0) {
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
		if by, _ := s.whose(ci, mi, onlyParts); by.t != nil && !strings.Contains(t.name, by.t.head) && r.since(by.t.last, m.lo) < 12 {
			t.owner = by.t
			t.name = lexicon.Modifier(by.t.name) + " " + t.name
			t.takeWords(by.t)
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
var wheelKinds = wordsOf("wheels that nothing runs on")

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

// unnamedOf gives the fasteners of a part, n where they are counted, that the talk speaks of
// without their name, "those", "all four", as one thing of its own.
func (s *tracker) unnamedOf(part *thing, at, n int) *thing {
	like := s.r.like("bolt", true)
	for i := len(like) - 1; i >= 0; i-- {
		if f := like[i]; takesTorque(f) && (f.owner == part || owns(part, f)) {
			if n > 1 && f.count == 1 && !f.plural {
				continue // the keeper bolt of a bracket that is held by four
			}
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
		if size := pluralSize[r.toks[i].s]; ones == 0 && (size == 0 || size == 4 || size == 5) {
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
		part, counted := s.heldThere(c, i), n
		if part == nil {
			part = s.partSpokenOf(c)
			if !r.saidToBe(c, i) {
				counted = 0
			}
		}
		var f *thing
		switch {
		case r.holdsNext(i+1) && r.word(i+2) == "it" && (part == nil || isOff(r, part) && r.since(part.last, c.lo) > 6):
			// what they hold is not named: "five holding it"
			f = &thing{name: strings.ToLower(r.text(i, i+3)), head: "fastener", mods: map[string]bool{}, fastener: true, plural: true, first: i, last: i}
			r.addThing(f)
		case part == nil:
			return
		default:
			f = s.unnamedOf(part, i, counted)
		}
		if f.count == 0 && n > 1 {
			f.count = n
		}
		f.last = max(f.last, i)
		s.touch(f)
		s.sized, s.sizedAt = f, int(r.toks[i].cl)
		return
	}
}

// heldThere gives the part that a clause says to be held by what it counts at token i: "there's four
// holding the motor", "the motor's held by four"; nil where it does not.
func (s *tracker) heldThere(c *clause, i int) *thing {
	r := s.r
	after := r.holdsNext(i + 1)
	if !after && !(i-2 >= c.lo && heldOn.has(r.toks[i-2].s)) {
		return nil
	}
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.lo > i == after && m.entry != nil && !m.entry.fastener && m.prep == "" {
			return m.entry
		}
	}
	return nil
}

// holdsNext tells whether it is told at token i what something holds: "holding the motor", "that
// hold the hanger".
func (r *reading) holdsNext(i int) bool {
	return retaining.has(r.word(i)) || r.word(i) == "that" && (r.next(i) == "hold" || r.next(i) == "holds")
}

// retaining are the words that lead from fasteners to what they hold.
var retaining = set("holding securing clamping pinching retaining")

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
	case (w == "these" || w == "those") && r.toks[k].s == "of" && k > c.lo && r.toks[i].men < 0 && r.toks[i].brk >= brkComma && r.turnedBeside(i, i+1):
		k--
	case countOf[w] > 1 && r.toks[i].qty < 0 && (r.countedThere(c, i) || r.saidToBe(c, i)):
		return countOf[w]
	default:
		return 0
	}
	n := countOf[r.toks[k].s]
	if n < 2 || k == c.lo {
		return 0
	}
	switch r.toks[k-1].s {
	case "'s", "is", "are", "'re", "has", "got", "by", "just":
		return n
	}
	return 0
}

// heldOn are the words after which it is told by what a part is held.
var heldOn = set("held fixed secured fastened bolted on")

// countedThere tells whether the clause does no more than count, at token i, what a part
// has, and say where: "there's two on the back of it", "it's got four round the edge".
func (r *reading) countedThere(c *clause, i int) bool {
	if w := r.prev(i); (w == "by" || w == "with") && i-2 >= c.lo && heldOn.has(r.toks[i-2].s) {
		return i+1 >= c.hi || r.toks[i].brk >= brkPause // "the motor's held by four"
	}
	if i+1 >= c.hi || r.toks[i].brk >= brkComma || r.toks[i+1].men >= 0 {
		return false
	}
	switch r.toks[i+1].s {
	case "on", "at", "in", "up", "down", "round", "around", "along", "across", "underneath", "under", "behind", "through", "holding", "securing", "here", "either", "each", "inside", "from":
	default:
		return false
	}
	if n := int(r.toks[c.lo].cl) + 1; n < len(r.clauses) && r.clauses[n].sentence == c.sentence && slices.ContainsFunc(r.clauses[n].mentions, func(mi int) bool { return r.mentions[mi].kind&lexicon.Fastener != 0 }) {
		return false // "there's eight round the outside, and they've each got a nut"
	}
	switch w := r.prev(i); w {
	case "got", "by", "has":
		return i-2 >= c.lo
	case "'s", "is", "are", "was", "'re":
		return i-2 >= c.lo && (r.toks[i-2].s == "there" || w == "is" || w == "'s")
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
				w := r.next(o.hi)
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
	if len(more) > 0 {
		t.or = nil
	}
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

// how are the words that go on to tell how a thing lies: "the hose stub pointing down".
var how = set("pointing facing sticking hanging dangling sitting looking")

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

var subordinate = set("while because cause if when before until till otherwise unless whereas")

var holds = set("hold holds holding held secure secures securing retain retains retaining for goes going fasten fastens that")

func (r *reading) holdsBetween(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if holds.has(r.toks[i].s) && !(r.toks[i].s == "hold" && i > 0 && r.toks[i-1].brk >= brkComma) {
			return true // but "two nuts, hold the pushrod": what is done meanwhile
		}
	}
	return false
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
