package extract

import "wrenchword/extract/lexicon"

// What a thing that is in or on lacks, told with what it lacks: "the pin's in but there's no clip
// on it", "there's no cap on it either, I'll find one somewhere", "there was a shim and I can't
// see it".

// lacksOne tells whether a clause says, up to the end of a mention, that there is none of it on
// what is in place, and that there ought to be.
func (r *reading) lacksOne(c *clause, m *mention) bool {
	if m.hi+1 >= c.hi {
		return false
	}
	switch r.toks[m.hi].s {
	case "on", "under", "over", "round", "around", "through", "behind":
	default:
		return false
	}
	if n := &r.toks[m.hi+1]; !pronounsObj.has(n.s) && n.s != "there" && !determiner.has(n.s) && n.men < 0 {
		return false
	}
	ci := int(r.toks[c.lo].cl)
	return r.inBut(ci) || r.wantsOne(ci)
}

// inBut tells of "the pin's in but": right before a clause something is told to be in its place.
func (r *reading) inBut(ci int) bool {
	if ci == 0 || !r.beginsWith(&r.clauses[ci], "but", "only") {
		return false
	}
	p := &r.clauses[ci-1]
	if r.since(p.lo, r.clauses[ci].lo) > 8 || p.mood&(negated|asked|other|conditional|hypothetical) != 0 || r.saidIn(p, "was") || r.saidIn(p, "were") {
		return false
	}
	for i := p.lo; i < p.hi; i++ {
		if w := r.toks[i].s; (w == "in" || w == "on" || w == "back" || w == "through") && (i+1 >= p.hi || r.toks[i].brk >= brkComma || r.toks[i+1].s == "now" || r.toks[i+1].s == "there") {
			return true
		}
	}
	return false
}

// ofPin tells whether a pin is spoken of right before a clause: the clip on it keeps it in.
func (r *reading) ofPin(ci int) bool {
	for k := max(0, ci-2); k < ci; k++ {
		for _, mi := range r.clauses[k].mentions {
			if lexicon.Singular(r.mentions[mi].head) == "pin" {
				return true
			}
		}
	}
	return false
}

// getsOne are the verbs of one who will see to what is missing: "I'll find one someplace".
var getsOne = set("find get steal rob nick pinch borrow order make buy fetch bring scrounge dig pick need needs want wants cut print turn take takes lack lacks")

// wantsOne tells whether the talk from a clause on says that one is wanted, will be found, or did
// not come with the rest.
func (r *reading) wantsOne(ci int) bool {
	_, hi := r.nearBy(ci, 0, 3, 14)
	for k := ci; k <= hi; k++ {
		c := &r.clauses[k]
		if c.mood&(asked|conditional|other) != 0 {
			continue
		}
		for i := c.lo; i < c.hi; i++ {
			switch w, n := r.toks[i].s, r.next(i); {
			case getsOne.has(w) && (n == "one" || n == "a" && r.word(i+2) == "new" || n == "another"),
				(w == "come" || w == "came" || w == "comes") && (n == "without" || n == "with" && r.saidIn(c, "didn't")),
				w == "gotta" && n == "have", w == "to" && n == "have" && (r.prev(i) == "has" || r.prev(i) == "got" || r.prev(i) == "have" || r.prev(i) == "ought") && (r.word(i+2) == "one" || r.word(i+2) == "the" || r.word(i+2) == "a"):
				if w == "take" && n == "one" && r.word(i+2) == "off" {
					continue
				}
				return true
			}
		}
	}
	return false
}

// notSeen gives the tokens of "there was a spacer and I don't see the spacer": what was there is
// not to be found; -1 where a clause has none.
func (r *reading) notSeen(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	for i := c.lo; i+1 < c.hi; i++ {
		if r.toks[i].s != "see" || i < c.lo+2 || !(r.toks[i-1].s == "don't" || r.toks[i-1].s == "can't" || r.toks[i-1].s == "not") || !r.ofMe(max(c.lo, i-3), i) {
			continue
		}
		at, name := i+1, -1
		for at < c.hi && (determiner.has(r.toks[at].s) || r.toks[at].s == "my") && r.toks[at].men < 0 {
			at++
		}
		switch mi := int(r.toks[min(at, c.hi-1)].men); {
		case mi >= 0 && r.mentions[mi].prep == "" && r.mentions[mi].kind&(lexicon.Part|lexicon.Fastener) != 0:
			name = mi
		case pronounsObj.has(r.toks[i+1].s):
		default:
			continue
		}
		if lo, ok := r.wasOne(ci, name); ok {
			return lo, i + 1
		}
	}
	return -1, -1
}

// wasOne tells whether the clause before says that there was one of a mention, of any part where
// that is -1: "there was a spacer", "I had a bush for that".
func (r *reading) wasOne(ci, name int) (int, bool) {
	for k := ci; k >= max(0, ci-2) && r.since(r.clauses[k].lo, r.clauses[ci].lo) < 10; k-- {
		c := &r.clauses[k]
		for _, mi := range c.mentions {
			m := &r.mentions[mi]
			if m.kind&(lexicon.Part|lexicon.Fastener) == 0 || m.prep != "" || name >= 0 && (m.head != r.mentions[name].head || mi == name) {
				continue
			}
			for i := max(c.lo, m.from-3); i < m.lo; i++ {
				if w := r.toks[i].s; w == "was" || w == "were" || w == "had" {
					return i, true
				}
			}
		}
	}
	return 0, false
}
