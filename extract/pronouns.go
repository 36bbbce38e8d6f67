package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
)

// pronoun tells which thing "it", "them" or "that one" stands for, or nil. "They"
// are all of those that were told apart by their places.
func (s *tracker) pronoun(a *act) *thing {
	t := s.meant(a)
	if t != nil && t.of != nil && s.r.many(a) && !t.many() {
		return t.of
	}
	return t
}

// countedOut tells whether an act is done to more than two fasteners, and a thing is one
// by name: "wheel on, and get all five in by hand" is not of the strap's bolt.
func countedOut(a *act, t *thing) bool {
	return countOf[a.pronoun] > 2 && fastens[a.action.Name] && t.fastener && !t.many() && contentCount(t.mods) > 0
}

// sought is what a pronoun asks for: how many, and of which kind.
type sought struct {
	*tracker
	a       *act
	one     bool // "it", "she": a single thing
	many    bool // "them", "all four"
	several bool // "those two": more than one by name
	turned  bool // what is turned tight or loose
}

// looking is how narrowly it is looked for.
type looking int

const (
	narrowly looking = iota // what the act can follow, and as many as it says
	pairs                   // and parts named as more than one, as "it"
	widely                  // whatever was spoken of last
)

func (s *tracker) meant(a *act) *thing {
	r := s.r
	q := sought{tracker: s, a: a, many: r.many(a), one: a.pronoun == "it" || a.pronoun == "she" || a.pronoun == "he" || a.pronoun == "that" && a.subject}
	switch a.action.Name {
	case "torque", "tighten", "start by hand", "slacken":
		q.turned = true
	}
	s.settled = false
	if t, settled := q.told(); settled && !(t != nil && q.cutsOff(t)) {
		s.settled = true
		return t
	}
	if a.action.Name == "remove" && a.verb >= 0 && !a.subject && spins.has(r.lemma1(r.toks[a.verb].s)) {
		q.turned = true
		if t := q.lookBack(narrowly); t != nil {
			return t // "hold the shaft and zip that off": the nut
		}
		q.turned = false
	}
	if t := q.offAtLast(); t != nil {
		return t
	}
	ways := []looking{narrowly, pairs, widely}
	switch {
	case a.pronoun == "all":
		if a.action.Name != "clean" && a.action.Name != "lubricate" && a.action.Name != "apply" || offWords.has(r.word(a.hi-1)) {
			return nil // "get all that out": what is in there
		}
		q.many, ways = false, ways[2:]
	case (a.pronoun == "one" || a.pronoun == "ones") && s.saidNew(a) >= 0:
		ways = ways[2:] // "the old seal …, new one goes on": what was just spoken of
	}
	if a.pronoun == "those" || a.pronoun == "these" || a.pronoun == "them" {
		q.several = countOf[r.word(a.verb+2)] > 1 && a.verb >= 0 || countOf[r.word(a.hi)] > 1
	}
	if a.pronoun == "it" || a.pronoun == "that" || a.pronoun == "them" {
		if p := r.actBefore(a); p != nil && !p.subject && r.unlistedName(p) != "" {
			return nil // "lift the whole assembly out and put it on the bench"
		}
		if a.verb >= 0 && pressesIn.has(r.lemma1(r.toks[a.verb].s)) && r.greasedBefore(a) {
			return nil // "Pack the bearing. Push it through till it comes out the top": the grease
		}
		if t := s.fittedBefore(a, q.many); t != nil {
			return t
		}
	}
	for _, how := range ways {
		if how == pairs {
			if t := q.holdFitted(); t != nil {
				return t
			}
		}
		if t := q.lookBack(how); t != nil && !q.cutsOff(t) {
			if how == widely && q.oneOfMany(t) {
				if p := q.heldPart(t); p != nil {
					return p
				}
			}
			return t
		}
	}
	return nil
}

// holdFitted gives the fasteners that came off before the part that just went back on,
// where several things are said to go in: "cover back on. All three back in."
func (q *sought) holdFitted() *thing {
	if !q.many || !putsBack[q.a.action.Name] && q.a.action.Name != "torque" {
		return nil
	}
	part := q.justFitted(q.a.lo)
	if part == nil || part.many() && countOf[q.a.pronoun] < 2 {
		return nil
	}
	var one *thing
	for _, f := range q.r.like("bolt", true) {
		if !f.many() || f.owner != part && !owns(part, f) || f.side != part.side && part.side != "" && f.side != "" || !isOff(q.r, f) {
			continue
		}
		if one != nil {
			return nil
		}
		one = f
	}
	return one
}

// justOff gives what came off last, or was named since and nothing more: what "Bin." and
// "straight in the bin" are said of.
func (s *tracker) justOff(a *act) *thing {
	r := s.r
	if t := r.ruined(a.cl, a.lo); t != nil {
		return t
	}
	for k := a.cl; k >= 0 && k >= a.cl-6 && r.since(r.clauses[k].lo, a.lo) < 25; k-- {
		c := &r.clauses[k]
		var t *thing
		at := -1
		for _, ai := range c.acts {
			if o := &r.acts[ai]; o.lo < a.lo && o.lo > at && len(o.things) > 0 && o.happened() && (o.action.Name == "remove" || o.action.Name == "disconnect" || o.action.Name == "fit") {
				if t, at = o.things[len(o.things)-1], o.lo; o.action.Name == "fit" {
					return nil // what went on is not thrown away
				}
			}
		}
		for _, mi := range c.mentions {
			if m := &r.mentions[mi]; m.entry != nil && m.lo < a.lo && m.lo > at && m.prep == "" && m.kind&lexicon.Tool == 0 && !r.inAct(k, mi) {
				t, at = m.entry, m.lo
			}
		}
		if t != nil {
			return t
		}
	}
	return nil
}

// oneOfMany tells whether a single thing is sought, not to be turned, and fasteners were found.
func (q *sought) oneOfMany(t *thing) bool {
	return !q.turned && !q.many && t.fastener && t.many() && q.a.pronoun != "this" && (q.a.action.Name == "remove" || q.a.action.Name == "lift")
}

// heldPart gives the part that fasteners hold, as their name tells it, where it is not off
// yet: "undo the cover bolts and lift that clear".
func (q *sought) heldPart(t *thing) *thing {
	if t.owner != nil {
		if q.fits(t.owner, narrowly) {
			return t.owner
		}
		return nil
	}
	words := strings.Fields(t.name)
	if len(words) < 2 || !q.r.namesPart(words[len(words)-2]) || ownsNone(words[len(words)-2]) {
		return nil
	}
	words = words[:len(words)-1]
	head := words[len(words)-1]
	for _, o := range q.r.like(head, false) {
		if o.head == head && q.r.since(o.last, q.a.lo) < 900 {
			if q.fits(o, narrowly) {
				return o
			}
			return nil
		}
	}
	p := &thing{name: strings.Join(words, " "), head: head, mods: among(words[:len(words)-1]), first: q.a.lo, last: q.a.lo}
	q.r.addThing(p)
	q.touch(p)
	return p
}

// greasedBefore tells whether the act right before one was to grease something.
func (r *reading) greasedBefore(a *act) bool {
	for k := a.cl; k >= 0 && k >= a.cl-3 && r.since(r.clauses[k].lo, a.lo) < 8; k-- {
		for i := len(r.clauses[k].acts) - 1; i >= 0; i-- {
			if o := &r.acts[r.clauses[k].acts[i]]; o.lo < a.lo {
				return o.action.Name == "lubricate" && o.happened()
			}
		}
	}
	return false
}

// pressesIn are the verbs of working grease into what it is for.
var pressesIn = set("push work squeeze force squash smear press rub spread squirt")

// cutsOff tells whether it is the machine that is unplugged, and not the thing, which
// has no plug: "we'll have the bearing out. Unplug it".
func (q *sought) cutsOff(t *thing) bool {
	return q.r.cutOff(q.a) && !wired.has(t.head)
}

// cutOff tells whether an act is to unplug something, or tells that it is.
func (r *reading) cutOff(a *act) bool {
	return a.verb >= 0 && (r.lemma1(r.toks[a.verb].s) == "unplug" || r.toks[a.hi-1].s == "unplugged")
}

// offAtLast gives the part that the talk last turned to, where it is not off yet and
// what was named since is only a washer or the fasteners that held it: "Caliper. Two
// bolts, a wavy washer on each. It's off."
func (q *sought) offAtLast() *thing {
	s, r, a := q.tracker, q.r, q.a
	if !a.subject || a.pronoun != "it" && a.pronoun != "she" || a.action.Name != "remove" {
		return nil
	}
	t := s.onTopic(a.lo)
	if t == nil || t.fastener || t.many() || !q.fits(t, narrowly) {
		return nil
	}
	moves := a.verb >= 0 && partly.has(r.lemma1(r.toks[a.verb].s))
	washers := 0
	for k := a.cl; k >= 0 && r.clauses[k].hi > s.topicAt; k-- {
		for _, mi := range r.clauses[k].mentions {
			m := &r.mentions[mi]
			if m.lo >= a.lo || m.entry == nil || m.entry == t || m.lo < s.topicAt {
				continue
			}
			switch {
			case m.head == "washer" || m.head == "shim" || m.head == "spacer":
				washers++
			case m.entry.fastener && (moves || m.entry.many()) && (m.entry.owner == nil || m.entry.owner == t):
			case m.prep == "" && (!m.entry.fastener || r.inAct(m.cl, mi)):
				return nil
			}
		}
	}
	if washers == 0 && !moves {
		return nil
	}
	return t
}

// partly are the verbs by which parts come off, and no fastener.
var partly = set("slide lift drop pull swing fall")

// spins are the verbs by which fasteners come off.
var spins = set("zip spin rattle buzz unscrew unthread unwind")

// fits tells whether a thing may be what is sought.
func (q *sought) fits(t *thing, how looking) bool {
	if t == nil {
		return false
	}
	r, a := q.r, q.a
	if q.several && !t.many() || a.pronoun == "it" && t.fastener && t.plural && t.count > 1 {
		return false
	}
	if countedOut(a, t) {
		return false
	}
	if q.turned && pressed.has(t.head) && !takesTorque(t) && !t.turned {
		return false // "plate on the dowels. All six in by hand": not the dowels
	}
	if n := len(t.mentions); t.fastener && (q.turned || q.many) && n > 0 && t.worked <= t.last && r.since(t.last, a.lo) < 15 && (how != widely || r.besides(&r.clauses[r.mentions[t.mentions[n-1]].cl], &r.mentions[t.mentions[n-1]])) {
		return false // "the cover screws are in the tub, by the way. Get them all in."
	}
	if n := len(t.mentions); q.turned && !t.fastener && n > 0 && r.doneMeanwhile(t.mentions[n-1]) {
		return false // "squeeze the lever and hold it, now nip them up"
	}
	if how == widely && a.pronoun == "they" && !t.many() && !t.fastener && r.saidOne(t) {
		return false // "the pin's fine. And they fall out": not the pin
	}
	if how == widely {
		return !q.turned || t.fastener || t.turned || takesTorque(t) || tightens.has(t.head)
	}
	if (t.fastener || small.has(t.head)) && a.verb >= 0 && !a.subject && swings.has(r.lemma1(r.toks[a.verb].s)) {
		return false // "rudder back on, clip in, swing it side to side"
	}
	if a.subject && a.action.Name == "remove" && catches.has(t.head) {
		return false // "push the tab, and out she comes"
	}
	st, _ := t.state()
	switch a.action.Name {
	case "fit", "start by hand":
		if st != Removed && st != Loosened && st != Discarded && !(st == Refitted && a.action.Name == "start by hand") && !(st == "" && a.cl-int(r.toks[t.last].cl) <= 1) {
			return false
		}
	case "remove", "disconnect":
		if (st == Removed || st == Discarded) && !r.onlyHeaded(t) && !r.onlyUnplugged(t, a) {
			return false
		}
	}
	if q.one && r.saidMany(t) && !q.turned && (t.fastener || how != pairs) {
		return false // "two nuts on the carb. And it pulls off": not the nuts
	}
	return (!q.turned || t.fastener || t.turned || takesTorque(t)) && (!q.many || t.many())
}

// told gives the thing where the words around the pronoun settle it: a heading right
// before, a puller, what is said of what is ruined. The thing is nil where they settle
// that it is none.
func (q *sought) told() (t *thing, settled bool) {
	s, r, a := q.tracker, q.r, q.a
	if a.pronoun == "one" || a.pronoun == "ones" {
		if t := s.acrossFrom(a.cl, s.clauseSide(&r.clauses[a.cl])); t != nil {
			return t, true
		}
		if t := s.heading; t != nil && a.action.Name == "fit" && r.since(s.headingAt, a.lo) < 20 && q.fits(t, widely) && s.untouchedSince(a) {
			return t, true // "now the shear bolt. … Proper one in"
		}
		if i := s.saidNew(a); i >= 0 {
			if t := r.oneFor(a.cl, i); t != nil && q.fits(t, widely) {
				return t, true
			}
		}
	}
	if a.action.Name == "discard" && a.rule != notBack && (a.verb < 0 || r.toks[a.verb].s == "bin" && len(a.objects) == 0) && a.pronoun == "that" && a.subject {
		return s.justOff(a), true
	}
	single := a.pronoun == "it" || a.pronoun == "that"
	if a.subject && single && s.toolBefore(a) {
		return nil, true
	}
	if a.action.Name == "discard" && a.pronoun != "" {
		if a.subject && a.verb >= 0 && r.unknownBefore(&r.clauses[a.cl], a.verb) {
			return nil, true
		}
		if t := r.ruined(a.cl, a.lo); t != nil {
			return t, true
		}
		if told := r.toldOfWhat(a.cl, a.lo, a.hi); len(told) > 0 && told[0].thing != nil {
			return told[0].thing, true
		}
	}
	if t := s.keptOff(a); t != nil {
		return t, true
	}
	finders := []func(*act) *thing{s.retoldOff, s.onceUndone, s.comesWith, s.justNamed}
	if a.action.Name == "remove" && single {
		finders = []func(*act) *thing{s.onPuller, s.introducedUnknown, s.retoldOff, s.onceUndone, s.comesWith, s.justNamed}
	}
	for _, find := range finders {
		if t := find(a); t != nil {
			return t, true
		}
	}
	if t := s.helped(a); t != nil && q.fits(t, narrowly) {
		return t, true
	}
	if topic := s.onTopic(a.lo); q.many && topic != nil && topic.plural && r.since(s.topicAt, a.lo) < 12 && s.hand[len(s.hand)-1] == topic {
		return topic, true // "Weights. They have got to be tight."
	}
	return nil, false
}

// acrossFrom gives what was said right before to be the one of a side, where the one of the other
// side is spoken of: "bolt in. That's the right one. I had the left one off as well".
func (s *tracker) acrossFrom(ci int, side string) *thing {
	r := s.r
	if otherOf[side] == "" {
		return nil
	}
	for k := ci - 1; k >= max(0, ci-2); k-- {
		c := &r.clauses[k]
		if c.hi-c.lo > 6 || len(c.acts) > 0 || s.clauseSide(c) != otherOf[side] || !r.saidIn(c, "one") || r.toks[c.lo].s != "that" && r.toks[c.lo].s != "that's" && r.toks[c.lo].s != "this" {
			continue
		}
		for i := len(r.acts) - 1; i >= 0; i-- {
			if b := &r.acts[i]; b.lo < c.lo && b.happened() && len(b.things) > 0 {
				if r.since(b.lo, c.lo) > 20 {
					return nil
				}
				return b.things[len(b.things)-1]
			}
		}
	}
	return nil
}

// keptOff gives what was said right before to be left off, where it is said again that it is off:
// "the guard I'm leaving off till I've set the belt. That's off with its screws"; nil where nothing was.
func (s *tracker) keptOff(a *act) *thing {
	r := s.r
	if a.action.Name != "remove" || !a.subject || a.pronoun != "that" && a.pronoun != "it" || a.verb >= 0 && r.lemma1(r.toks[a.verb].s) != "be" {
		return nil
	}
	for k := a.cl - 1; k >= max(0, a.cl-8) && r.clauses[k].sentence >= r.clauses[a.cl].sentence-1 && r.since(r.clauses[k].lo, a.lo) < 15; k-- {
		for _, ai := range r.clauses[k].acts {
			if b := &r.acts[ai]; b.action.Name == "leave off" && len(b.things) == 1 && r.lastState(b.things[0]) == Removed {
				a.mood |= framed // it came off long before
				return b.things[0]
			}
		}
	}
	return nil
}

// lookBack gives the latest thing that fits, of what was worked on or spoken of in
// the clauses before.
func (q *sought) lookBack(how looking) *thing {
	r, a := q.r, q.a
	strict := how != widely
	limit := 20.0
	if a.pronoun == "" || q.one && a.subject && a.action.Name == "remove" && how == widely {
		limit = 8 // farther back, another thing comes off as often as not
	} else if q.one && a.subject && a.action.Name == "remove" {
		limit = 14
	}
	for k := a.cl; k >= 0 && r.since(r.clauses[k].lo, a.lo) <= limit; k-- {
		c := &r.clauses[k]
		if k < a.cl && (c.mood&(aside|greeting) != 0 || subordinate.has(r.toks[c.lo].s) && strict) {
			continue
		}
		from := 0 // nothing named before what has no name is meant
		if q.one || a.pronoun == "that" || a.pronoun == "this" {
			from = r.namelessOne(c, a.lo)
		}
		if q.many && strict && q.sized != nil && q.sizedAt == k && q.fits(q.sized, how) {
			return q.sized // "it's on four tens. Out with them"
		}
		// what was worked on there, the latest first
		for i := len(c.acts) - 1; i >= 0; i-- {
			o := &r.acts[c.acts[i]]
			if o == a || o.lo >= a.lo || o.lo < from || o.mood&(framed|negated|hypothetical|other) != 0 {
				continue
			}
			for j := len(o.things) - 1; j >= 0; j-- {
				if q.fits(o.things[j], how) {
					return o.things[j]
				}
			}
		}
		// then what was spoken of there as its subject
		for _, mi := range c.mentions {
			m := &r.mentions[mi]
			if m.lo < from {
				continue
			}
			if (q.one || a.pronoun == "that") && strict && r.heldBy(c, mi) || (q.many || !a.subject) && r.onlyMinded(m) {
				continue // "that one holds the stop. Out it comes": not the stop
			}
			if m.lo < a.lo && (m.prep == "" || q.many && m.kind&lexicon.Fastener != 0 && (m.prep == "by" || m.prep == "with" || m.prep == "at" && q.turned) || q.many && m.plural && m.prep == "of" && k >= a.cl-1) && q.fits(m.entry, how) {
				return m.entry
			}
		}
		if q.one && strict {
			// "two nuts on the carb. And it pulls off"
			for i, mi := range c.mentions {
				m := &r.mentions[mi]
				if i > 0 && m.lo < a.lo && m.lo >= from && (m.prep == "on" || m.prep == "in" || m.prep == "of" || m.prep == "for") && r.mentions[c.mentions[i-1]].kind&(lexicon.Fastener|lexicon.Tool) != 0 && len(c.acts) == 0 && q.fits(m.entry, how) {
					return m.entry
				}
			}
		}
		if !strict {
			for _, mi := range c.mentions {
				if m := &r.mentions[mi]; m.lo < a.lo && m.lo >= from && m.prep != "by" && m.prep != "beside" && !(a.pronoun == "that" && r.heldBy(c, mi)) && !((q.many || !a.subject) && r.onlyMinded(m)) && q.fits(m.entry, widely) && !(q.many && m.prep != "" && !m.plural) && !(a.action.Name == "remove" && a.pronoun == "that" && (m.prep == "in" || m.prep == "inside" || m.prep == "behind") && len(c.acts) == 0) {
					return m.entry
				}
			}
		}
		if from > 0 {
			return nil
		}
	}
	return nil
}

// namelessOne gives the token before a limit where a clause begins with a thing that
// has no name in it, 0 where it does not: "the thin one", "that whole thing".
func (r *reading) namelessOne(c *clause, limit int) int {
	i := c.lo
	for i < c.hi && r.toks[i].is(wOpener|wDrop) && !articles.has(r.toks[i].s) && r.toks[i].s != "that" && r.toks[i].s != "this" || r.word(i) == "and" {
		i++
	}
	if w := r.word(i); i+2 >= min(c.hi, limit) || !articles.has(w) && w != "this" && w != "that" || i > 0 && r.toks[i-1].men >= 0 && r.toks[i-1].brk < brkSentence {
		return 0 // "the bumper, the plastic one": which bumper
	}
	w := &r.toks[i+1]
	if w.men >= 0 || w.qty >= 0 || sameKind.has(w.s) || w.is(wPlace|wNumber|wStop|wPreposition) && w.s != "little" {
		return 0
	}
	for k := i + 2; k < min(c.hi, limit, i+4) && r.toks[k].men < 0; k++ {
		switch r.toks[k].s {
		case "one":
			return i + 1
		case "thing", "lot":
			if w.s == "whole" {
				return i + 1
			}
		}
	}
	return 0
}

// sameKind are the words before "one" by which it is another of what was spoken of.
var sameKind = set("new old other first second third fourth next last same right wrong proper good bad existing original single only")

// untouchedSince tells whether nothing came off or went on between the last heading and an act.
func (s *tracker) untouchedSince(a *act) bool {
	for k := a.cl; k >= int(s.r.toks[s.headingAt].cl); k-- {
		for _, ai := range s.r.clauses[k].acts {
			if o := &s.r.acts[ai]; o != a && o.lo < a.lo && len(o.things) > 0 && left[o.action.Name] != "" && o.happened() {
				return false
			}
		}
	}
	return true
}

// onlyHeaded tells whether a thing is taken to be off since it was named with what
// turns it, where nobody has said yet that it came off.
func (r *reading) onlyHeaded(t *thing) bool {
	n := len(t.events) - 1
	return n >= 0 && t.events[n].act >= 0 && r.acts[t.events[n].act].heads
}

// onlyUnplugged tells whether all that is known of a thing that comes off is that it
// was disconnected: "unplug it, three screws, and it lifts out".
func (r *reading) onlyUnplugged(t *thing, a *act) bool {
	n := len(t.events) - 1
	if n < 0 || a.action.Name != "remove" || unplugs.has(t.head) || t.events[n].act < 0 {
		return false
	}
	if v := r.acts[t.events[n].act].verb; v >= 0 {
		switch r.lemma1(r.toks[v].s) {
		case "unplug", "disconnect", "unhook", "unclip":
			return true
		}
	}
	return false
}

// unplugs are the parts that are off once they are disconnected.
var unplugs = wordsOf("off once disconnected")

// pressed are the fastenings that are never turned, tight or loose.
var pressed = wordsOf("never turned")

// saidOne tells whether a thing was last named as a single one.
func (r *reading) saidOne(t *thing) bool {
	return len(t.mentions) > 0 && !r.saidMany(t)
}

// saidMany tells whether a thing was last named as more than one.
func (r *reading) saidMany(t *thing) bool {
	if n := len(t.mentions); n > 0 {
		m := &r.mentions[t.mentions[n-1]]
		return m.plural || m.count > 1
	}
	return t.many()
}

// heldBy tells whether a clause says of a mention that something holds it.
func (r *reading) heldBy(c *clause, mi int) bool {
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.action.Name == "support" && a.mood&framed != 0 && !a.subject && len(a.objects) > 0 && a.objects[0] == mi && r.mentions[mi].lo > a.lo {
			return !r.manyBefore(c, a.lo) // "three screws hold the pump, and it comes out": the pump
		}
	}
	return false
}

// manyBefore tells whether the clause names more than one fastener before a token.
func (r *reading) manyBefore(c *clause, at int) bool {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.lo < at && m.kind&lexicon.Fastener != 0 && (m.plural || m.count > 1) {
			return true
		}
	}
	return false
}

// swings are the verbs of moving a part by which small things are not moved.
var swings = set("swing rock bounce cycle ride wiggle")

// comesWith gives the new thing that the clause before ends on: "the new fan comes
// with a new gasket, so put that on the spigot first".
func (s *tracker) comesWith(a *act) *thing {
	r := s.r
	if a.cl == 0 || a.subject || a.pronoun != "that" || a.action.Name != "fit" {
		return nil
	}
	p := &r.clauses[a.cl-1]
	if len(p.acts) > 0 || len(p.mentions) < 2 || p.sentence != r.clauses[a.cl].sentence {
		return nil
	}
	m := &r.mentions[p.mentions[len(p.mentions)-1]]
	if m.hi != p.hi || !m.isNew || m.prep != "with" {
		return nil
	}
	return m.entry
}

// actBefore gives the act right before one in the same breath, or nil.
func (r *reading) actBefore(a *act) *act {
	for k := a.cl; k >= 0 && k >= a.cl-2 && r.clauses[k].sentence == r.clauses[a.cl].sentence; k-- {
		for i := len(r.clauses[k].acts) - 1; i >= 0; i-- {
			if o := &r.acts[r.clauses[k].acts[i]]; o != a && o.lo < a.lo {
				if r.since(o.lo, a.lo) > 6 || !o.happened() {
					return nil
				}
				return o
			}
		}
	}
	return nil
}

// fittedBefore gives the thing that went on right before it is driven home: "sliding
// the new bearing on and tapping it home".
func (s *tracker) fittedBefore(a *act, many bool) *thing {
	p := s.r.actBefore(a)
	if p == nil || a.subject || p.action.Name != "fit" || len(p.things) != 1 {
		return nil
	}
	t := p.things[0]
	if many && !t.many() {
		return nil
	}
	switch a.action.Name {
	case "fit", "hammer", "press", "start by hand":
		return t
	case "tighten":
		if tightens.has(t.head) && a.pronoun == "it" {
			return t // "the fill hose on, nip it up"
		}
	}
	return nil
}

// retoldOff gives the part that the clause right before says came off, where nothing
// else is named since: "cover off, filter out. Tap it out, it'll do."
func (s *tracker) retoldOff(a *act) *thing {
	r := s.r
	told := a.verb >= 0 && a.pronoun == "that" && (r.toks[a.verb].s == "had" || r.toks[a.verb].s == "took") // "Lid's off, I had that off before I started"
	if a.subject || a.action.Name != "remove" || a.pronoun != "it" && !told || a.cl == 0 {
		return nil
	}
	p := &r.clauses[a.cl-1]
	if len(p.acts) == 0 || len(p.mentions) == 0 || r.since(p.lo, a.lo) > 8 {
		return nil
	}
	o := &r.acts[p.acts[len(p.acts)-1]]
	last := p.mentions[len(p.mentions)-1]
	if o.action.Name != "remove" || o.verb >= 0 && !(told && o.subject) || o.heads || !o.happened() || len(o.things) != 1 || o.things[0].fastener || !slices.Contains(o.objects, last) {
		return nil
	}
	return o.things[0]
}

// onceUndone gives the part that its sentence says is taken off, where only its fastenings
// are told between that and its coming away: "take the guard off, two screws, and it
// drops down".
func (s *tracker) onceUndone(a *act) *thing {
	r := s.r
	if !a.subject || a.pronoun != "it" && a.pronoun != "she" || a.action.Name != "remove" {
		return nil
	}
	c := &r.clauses[a.cl]
	fast := false
	for k := a.cl; k >= 0 && r.clauses[k].sentence == c.sentence && r.since(r.clauses[k].lo, a.lo) < 10; k-- {
		ms := r.clauses[k].mentions
		for i := len(ms) - 1; i >= 0; i-- {
			m := &r.mentions[ms[i]]
			if m.lo >= a.lo || m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.prep != "" {
				continue
			}
			if m.entry != nil && m.entry.fastener && (m.plural || m.count > 0) && !m.definite {
				fast = true
				continue
			}
			if fast && m.entry != nil && !m.entry.many() && r.lastState(m.entry) == Removed && r.done(&r.clauses[k], ms[i]) {
				return m.entry
			}
			return nil
		}
	}
	return nil
}

// justNamed gives the thing that the clause right before an act does nothing but
// name: "and then the collar, and just spin that on by hand".
func (s *tracker) justNamed(a *act) *thing {
	r := s.r
	if a.cl == 0 || a.subject || a.pronoun != "it" && a.pronoun != "that" && a.pronoun != "them" && a.pronoun != "those" {
		return nil
	}
	p := &r.clauses[a.cl-1]
	if len(p.acts) > 0 || p.sentence != r.clauses[a.cl].sentence || r.since(p.lo, a.lo) > 6 {
		return nil
	}
	return s.headingOf(p)
}

// helped gives the thing that the talk has just turned to, where another is only
// held or pushed out of its way: "Now the belt. Push the motor over and roll it off."
func (s *tracker) helped(a *act) *thing {
	r := s.r
	if a.subject || a.pronoun != "it" || a.action.Name != "remove" && a.action.Name != "fit" || s.heading == nil || a.cl == 0 {
		return nil
	}
	p := &r.clauses[a.cl-1]
	if p.sentence != r.clauses[a.cl].sentence || len(p.acts) == 0 || a.cl-int(r.toks[s.headingAt].cl) > 3 || r.since(s.headingAt, a.lo) > 20 {
		return nil
	}
	for _, ai := range p.acts {
		switch r.acts[ai].action.Name {
		case "press", "support", "adjust", "rotate", "move":
		default:
			return nil
		}
	}
	return s.heading
}

// toolBefore tells whether a tool is what the clause before, or the act's own,
// names right before "it": "then the spanner wrench, it goes in the holes".
func (s *tracker) toolBefore(a *act) bool {
	r := s.r
	for k := a.cl; k >= 0 && k >= a.cl-1; k-- {
		c := &r.clauses[k]
		if k < a.cl && (len(c.acts) > 0 || c.sentence != r.clauses[a.cl].sentence) {
			return false
		}
		for i := len(c.mentions) - 1; i >= 0; i-- {
			if m := &r.mentions[c.mentions[i]]; m.lo < a.lo && m.prep == "" {
				if m.entry != nil || m.kind&(lexicon.Tool|lexicon.Fastener|lexicon.Part) != lexicon.Tool {
					return false
				}
				if i > 0 && k == a.cl && r.mentions[c.mentions[i-1]].entry != nil && r.mentions[c.mentions[i-1]].prep == "" {
					return false // "it's the one bolt, a five mil allen key, that comes out"
				}
				return true
			}
		}
	}
	return false
}

// toolNamed gives the tool that the clause before an act does nothing but name, where
// the act is done to "it" or "this" and is one that is done to tools; or -1.
func (s *tracker) toolNamed(a *act) int {
	r := s.r
	if a.cl == 0 || a.subject || len(a.objects) > 0 || a.pronoun != "it" && a.pronoun != "this" && a.pronoun != "that" {
		return -1
	}
	switch a.action.Name {
	case "fit", "start by hand", "adjust", "place", "support", "press", "hammer", "tighten":
	default:
		return -1
	}
	if o := r.actBefore(a); o != nil && o.verb >= 0 && !o.subject && len(o.objects) == 1 && (o.action.Name == "fit" || o.action.Name == "place" || o.action.Name == "support") {
		if m := &r.mentions[o.objects[0]]; m.kind == lexicon.Tool && pullers.has(m.head) {
			return o.objects[0] // "I put the puller on, wind it down"
		}
	}
	p := &r.clauses[a.cl-1]
	used := len(p.acts) == 1 && r.acts[p.acts[0]].rule == toolInUse && a.action.Name == "fit" // "puller on the impeller and wind it in"
	if !used && (len(p.acts) > 0 || len(p.mentions) != 1) || len(p.mentions) == 0 || r.since(p.lo, a.lo) > 6 || p.mood&(negated|asked|other|conditional|listing) != 0 {
		return -1
	}
	m := &r.mentions[p.mentions[0]]
	if m.kind != lexicon.Tool || m.prep != "" || a.action.Name == "tighten" && !pullers.has(m.head) {
		return -1
	}
	if used && !pullers.has(m.head) {
		return -1
	}
	if m.hi != p.hi && !(onWords.has(r.toks[m.hi].s) && (used || m.hi+1 == p.hi)) {
		return -1 // "puller on, and wind it up"
	}
	for i := p.lo; i < m.from; i++ {
		if w := r.toks[i].s; !openers.has(w) && !dropWords.has(w) && w != "and" {
			return -1
		}
	}
	return p.mentions[0]
}

// pullers are the tools that draw or drive a part off, not a fastener.
var pullers = wordsOf("pullers")

// onPuller gives the part that comes off where a puller was put on right before:
// "puller on and wind it up and it's off".
func (s *tracker) onPuller(a *act) *thing {
	r := s.r
	pulled := false
	for k := a.cl; k >= max(0, a.cl-2) && !pulled && r.clauses[k].sentence == r.clauses[a.cl].sentence; k-- {
		for _, mi := range r.clauses[k].mentions {
			m := &r.mentions[mi]
			if m.entry != nil && m.lo < a.lo {
				return nil // a thing is named that it can be
			}
			pulled = pulled || m.kind&lexicon.Tool != 0 && pullers.has(m.head)
		}
	}
	if !pulled {
		return nil
	}
	for i := len(s.hand) - 1; i >= 0 && r.since(s.hand[i].last, a.lo) < 40; i-- {
		if t := s.hand[i]; !t.fastener {
			if st, _ := t.state(); (st != Removed || r.onlyHeaded(t)) && st != Discarded && !isLock(t) && !t.ownsNone() {
				return t
			}
		}
	}
	return nil
}

// many tells whether the pronoun of an act stands for more than one.
func (r *reading) many(a *act) bool {
	switch a.pronoun {
	case "them", "'em", "em", "these", "those", "both", "they", "ones", "all":
		return true
	}
	return countOf[a.pronoun] > 1
}

// saidNew gives the token of "new" where the pronoun of an act is "a new one", else -1.
func (s *tracker) saidNew(a *act) int {
	for i := max(s.r.clauses[a.cl].lo+1, a.lo-8); i < a.hi; i++ {
		if s.r.toks[i].s == a.pronoun && s.r.toks[i-1].s == "new" {
			return i - 1
		}
	}
	return -1
}

// ofNew tells whether an object of the act is a new one.
func (r *reading) ofNew(a *act) bool {
	for _, mi := range a.objects {
		if r.mentions[mi].isNew {
			return true
		}
	}
	return a.pronoun == "one" || a.pronoun == "ones"
}

// introducedUnknown gives a thing that no list knows, in the words it was introduced
// with right before it comes off: "there's this rubber heat mat over the whole top,
// so unhook that". It is made a part of the machine here.
func (s *tracker) introducedUnknown(a *act) *thing {
	r := s.r
	for k := a.cl - 1; k >= max(0, a.cl-2) && r.since(r.clauses[k].lo, a.lo) < 10; k-- {
		c := &r.clauses[k]
		if c.mood&(notWork|announced) != 0 {
			return nil
		}
		for i := c.lo; i+3 < c.hi; i++ {
			if r.toks[i].s != "there" || r.toks[i+1].s != "'s" {
				continue
			}
			j := i + 2
			for j < c.hi && (r.toks[j].s == "also" || r.toks[j].s == "just" || r.toks[j].s == "then") {
				j++
			}
			if w := r.word(j); w != "this" && w != "a" && w != "an" && w != "another" {
				return nil
			}
			var words []string
			for j++; j < c.hi && r.toks[j].men < 0 && r.toks[j].qty < 0 && (r.toks[j].is(wDropAdj) || !r.toks[j].is(wStop|wPreposition)); j++ {
				if w := r.toks[j].s; !dropAdj.has(w) {
					words = append(words, w)
				}
				if r.toks[j].brk >= brkComma {
					j++
					break
				}
			}
			n := len(words)
			if n == 0 || n > 3 || len(words[n-1]) < 3 || noThing.has(words[n-1]) {
				return nil
			}
			t := &thing{name: strings.Join(words, " "), head: words[n-1], mods: among(words[:n-1]), first: i, last: j - 1}
			r.addThing(t)
			s.touch(t)
			return t
		}
		for _, mi := range c.mentions {
			if r.mentions[mi].prep == "" && r.mentions[mi].entry != nil {
				return nil
			}
		}
	}
	return nil
}

// onlyMinded tells whether a mention is of what the talk says to look out for, not of
// what is worked on: "over the disc, mind the pads, and those two in".
func (r *reading) onlyMinded(m *mention) bool {
	w := r.prev(m.from)
	return w == "mind" || w == "mindful" || w == "watch" || w == "way"
}
