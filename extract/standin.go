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
			if m.lo >= oc.lo || !may(m) || m.kind&(lexicon.Part|lexicon.Fastener) == 0 {
				continue
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

// inPlaceOf tells whether, where a clause says "for now", something is told to be in the place
// of what belongs there: another one, an old one, a made one, for want of the proper one.
func (r *reading) inPlaceOf(ci int, oc openCue) bool {
	lo, hi := r.nearBy(ci, 4, 4, 14)
	if w := r.word(oc.lo - 1); w == "do" || w == "hold" || w == "holding" || w == "holds" || w == "last" || w == "serve" {
		return true
	}
	if r.heardIn(lo, hi, "lack", "makeshift", "old-back", "ordered", "none", "lost", "for-want", "damage") {
		return true
	}
	value := r.heardIn(lo, hi, "unknown", "find", "ask") // "I don't have the page" is of no part
	for i := r.clauses[lo].lo; i < r.clauses[hi].hi; i++ {
		switch w, n := r.toks[i].s, r.word(i+1); {
		case value && (w == "don't" || w == "didn't" || w == "haven't" || w == "ain't" || w == "'ve"):
		case (w == "don't" || w == "didn't") && n == "have", (w == "haven't" || w == "hadn't" || w == "ain't") && (n == "got" || n == "any" || n == "one"), w == "'ve" && (n == "no" || n == "none"):
			return true
		case substitutes.has(w) && !figures.has(n), damage.has(w), makeshifts.has(w), scraps.has(w), makes.has(w) && n == "one", lent.has(w) && (r.word(i+1) == "from" || r.word(i+1) == "off" || r.word(i+1) == "a" || r.word(i+1) == "one"):
			return true
		}
	}
	return false
}

// substitutes are the words for what is in the place of another, and for what it is in the place of.
var substitutes = set("old used second-hand instead another other odd plain proper correct original new spare replacement order ordered post parcel replace replaced replacing swap swapped swapping renew renewed renewing buy bought shop store dealer lack lacking none without missing lost short shorter longer bigger smaller thicker thinner wrong temporary bodge bodged bodging gaffer silicone glue glued epoxy taped tied")
