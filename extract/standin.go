package extract

import "wrenchword/extract/lexicon"

// What stands in for now stands in for something: the proper part is not to be had, is broken or
// still to come. "For now" said of how a thing is set, turned or laid aside is no such thing.

// aimStandIn aims at what stands in for now, or at what it is in the place of: what the clause
// tells to be there, else the part that a pronoun stands for. What is smeared on is neither.
func (r *reading) aimStandIn(e *looseEnd, ci int, oc openCue) bool {
	if e.kind != ReplaceLater {
		return false
	}
	c := &r.clauses[ci]
	if n := ci + 1; oc.signal == "stand-in" && c.hi-c.lo <= oc.hi-oc.lo+1 && (ci == 0 || r.clauses[ci-1].sentence != c.sentence || r.followsSo(c)) && n < len(r.clauses) && r.clauses[n].sentence == c.sentence {
		if lo := r.clauses[n].lo; r.aimStandIn(e, n, openCue{lo, lo, oc.signal}) {
			e.last = max(e.last, n) // "For now | there's a nail through the hole"
			return true
		}
	}
	if oc.signal == "lack" {
		return r.aimForLack(e, ci, oc)
	}
	may := func(m *mention) bool {
		return r.topical(m) && !smeared.has(m.head) && !lubricants.has(m.head)
	}
	// "there's a bit of wire through it for now", "the old gasket's back on": told outright
	if s, ok := r.putThere(c, max(oc.lo, c.lo)); ok && s.mention >= 0 && may(&r.mentions[s.mention]) {
		e.topic, e.sure = s.mention, true
		return true
	}
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; may(m) && direct(m) && m.kind&(lexicon.Part|lexicon.Fastener) != 0 && !(m.lo >= oc.hi && r.pronounIn(c.lo, oc.hi)) {
			e.topic, e.sure = mi, true
			return true
		}
	}
	// "that's on there for now", "the old one's gone back in": of the part spoken of before
	for k := ci; k >= max(0, ci-8) && r.since(r.clauses[k].lo, c.lo) < 20; k-- {
		p := &r.clauses[k]
		if p.mood&(aside|greeting) != 0 {
			continue
		}
		best := -1
		for _, mi := range p.mentions {
			m := &r.mentions[mi]
			if m.lo >= oc.lo || !may(m) || m.kind&(lexicon.Part|lexicon.Fastener) == 0 || m.entry != nil && r.lastState(m.entry) == Removed {
				continue // what is still off stands in for nothing, and is asked after as such
			}
			if best < 0 || direct(m) && !direct(&r.mentions[best]) {
				best = mi
			}
		}
		if best >= 0 {
			e.topic, e.first = best, min(e.first, k)
			return true
		}
	}
	return false
}

// aimForLack aims at what is put in the place of what is wanting: "I'd run out of the fat pins, so
// there's a nail through it"; where that has no name, at what is wanting, of which it is no more
// than asked whether it has been put right.
func (r *reading) aimForLack(e *looseEnd, ci int, oc openCue) bool {
	for k := ci; k < min(len(r.clauses), ci+4) && r.since(oc.hi-1, r.clauses[k].lo) < 12; k++ {
		c := &r.clauses[k]
		if k == ci && !r.saidBetween(oc.hi, c.hi, "so") || k > ci && !r.followsSo(c) {
			continue
		}
		if s, ok := r.putThere(c, c.hi); ok && s.mention >= 0 && s.lo > oc.hi && r.nextBest(s) {
			e.topic, e.sure, e.last = s.mention, true, max(e.last, k)
			return true
		}
	}
	return false
}

// inPlaceOf tells whether, where a clause says "for now", something is told to be in the place
// of what belongs there: another one, an old one, a made one, for want of the proper one.
func (r *reading) inPlaceOf(ci int, oc openCue) bool {
	lo, hi := r.nearBy(ci, 4, 4, 14)
	if w := r.prev(oc.lo); w == "do" || w == "hold" || w == "holding" || w == "holds" || w == "last" || w == "serve" {
		return true
	}
	if r.heardIn(lo, hi, "lack", "makeshift", "old-back", "ordered", "none", "lost", "for-want", "damage") {
		return true
	}
	value := r.heardIn(lo, hi, "unknown", "find", "ask") // "I don't have the page" is of no part
	for i := r.clauses[lo].lo; i < r.clauses[hi].hi; i++ {
		switch w, n := r.toks[i].s, r.next(i); {
		case value && (w == "don't" || w == "didn't" || w == "haven't" || w == "ain't" || w == "'ve"):
		case (w == "don't" || w == "didn't") && n == "have", (w == "haven't" || w == "hadn't" || w == "ain't") && (n == "got" || n == "any" || n == "one"), w == "'ve" && (n == "no" || n == "none"):
			return true
		case substitutes.has(w) && !figures.has(n), damage.has(w), makeshifts.has(w), scraps.has(w), makes.has(w) && n == "one", lent.has(w) && (r.next(i) == "from" || r.next(i) == "off" || r.next(i) == "a" || r.next(i) == "one"):
			return true
		}
	}
	return false
}

// substitutes are the words for what is in the place of another, and for what it is in the place of.
var substitutes = set("old used second-hand instead another other odd plain proper correct original new spare replacement order ordered post parcel replace replaced replacing swap swapped swapping renew renewed renewing buy bought shop store dealer lack lacking none without missing lost short shorter longer bigger smaller thicker thinner wrong temporary bodge bodged bodging hotwired bypassed bridged jumpered gaffer silicone glue glued epoxy taped tied")

// partToCome tells whether what is still to do is no more than to fit what is not here yet: "a
// real cotter pin", "the flap, when it comes", "and the boot, he's ordering that".
func (r *reading) partToCome(e *looseEnd) bool {
	if e.topic < 0 || r.mentions[e.topic].kind&(lexicon.Part|lexicon.Fastener) == 0 {
		return false
	}
	m := &r.mentions[e.topic]
	first := int(r.toks[min(e.lo, m.lo)].cl)
	last := max(int(r.toks[e.hi-1].cl), m.cl)
	for k := last + 1; k < len(r.clauses) && r.clauses[k].sentence == r.clauses[last].sentence && k <= last+1; k++ {
		last = k
	}
	if r.clauses[last].hi-r.clauses[first].lo > 24 {
		return false
	}
	for i := max(m.from-2, r.clauses[m.cl].lo); i < m.hi; i++ {
		if w := r.toks[i].s; (w == "real" || w == "proper" || w == "right") && i > 0 && (r.toks[i-1].s == "a" || w == "right" && r.toks[i-1].s == "the" && m.side == "") {
			return true
		}
	}
	for i := r.clauses[first].lo; i < r.clauses[last].hi; i++ {
		switch w, n := r.toks[i].s, r.next(i); w {
		case "when", "once":
			if n != "i" && n != "you" && n != "he" && n != "she" {
				for k := i + 2; k < min(i+5, r.clauses[last].hi); k++ {
					switch r.toks[k].s {
					case "comes", "come", "arrives", "arrive", "lands":
						return !wayIt.has(r.next(k))
					}
				}
			}
		case "ordering", "ordered":
			return true
		case "order":
			return r.prev(i) == "on" || r.prev(i) == "'ll" || r.prev(i) == "to" || r.prev(i) == "must"
		}
	}
	return false
}

// standsForLost leaves out what is told to be lost or missing where, in the sentence, something
// stands in for it: "there's a bit of wire through it for now because I can't find the pin" is one
// matter, and is asked after once.
func (r *reading) standsForLost(ends []*looseEnd) {
	for _, p := range ends {
		if p.kind != ReplaceLater || p.signal != "stand-in" && p.signal != "makeshift" || p.topic < 0 {
			continue
		}
		for _, e := range ends {
			if e.kind == NotRefitted && (e.signal == "short" || e.signal == "lost" || e.signal == "due") && e.lo > p.lo && e.lo-p.lo < 16 && r.clauses[r.toks[e.lo].cl].sentence == r.clauses[r.toks[p.lo].cl].sentence {
				e.kind = ""
			}
		}
	}
}
