package extract

// doubtedAhead is how heavy it must be that a sentence leaves something open, in parts of a logit
// as the weights have them, to be told where no question asks after it: in talk kept from the
// fitting three in ten such sentences do, and a quarter of what nobody asked is among them.
const doubtedAhead = -20

// mayBeOpen gives the sentences that may leave something open, and that no question is near: also
// those of which one was struck by weight, or taken for settled. Where work is done in a sentence,
// or has not begun, it seldom is so.
func (r *reading) mayBeOpen(asked []Open) []Doubt {
	out := []Doubt{}
	all := r.sentences()
	if len(all) < weighableTalk {
		return out // too little to weigh
	}
	near := r.askedNear(asked)
	for k, s := range all {
		c := &r.clauses[s.first]
		if near[k] || k*8 < len(all) || c.chatter || c.mood&(greeting|aside) != 0 || r.clauses[s.last].hi-c.lo < 3 || r.weigh(k).open <= doubtedAhead || r.worksIn(s) {
			continue
		}
		near.around(k)
		out = append(out, Doubt{r.placeAround(c.lo, r.clauses[s.last].hi, c.lo).by("weighed: may be left open")})
	}
	return out
}

// worksIn tells whether something comes off, goes on or is tightened in a sentence.
func (r *reading) worksIn(s sentence) bool {
	for ci := s.first; ci <= s.last; ci++ {
		for _, ai := range r.clauses[ci].acts {
			if a := &r.acts[ai]; a.happened() && ledgerActs[a.action.Name] != "" {
				return true
			}
		}
	}
	return false
}

// askedNear marks the sentences by which something is asked.
func (r *reading) askedNear(asked []Open) marks {
	near := make(marks, len(r.sentences()))
	for i := range asked {
		p := asked[i].Place
		near.around(r.sentenceAt(p))
		for _, p.At = range asked[i].AlsoAt {
			near.around(r.sentenceAt(p))
		}
	}
	return near
}
