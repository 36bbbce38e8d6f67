package extract

import "wrenchword/extract/lexicon"

// What is wanting is stood in for by the next best thing, and often nobody says that it is
// only for now: "I haven't got a pin that thin. So that's a twist of wire through there."

// followsWant tells whether a clause goes on from what is wanting with what is put there instead.
func (r *reading) followsWant(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&(negated|conditional|hypothetical|other|asked|announced|aside) != 0 || !r.followsSo(c) {
		return false
	}
	for _, mi := range c.mentions {
		if r.mentions[mi].kind&(lexicon.Tool|lexicon.Part|lexicon.Fastener|lexicon.Consumable) == lexicon.Tool {
			return false // "so I've used a bit of pipe on the spanner"
		}
	}
	for k := ci - 1; k >= max(0, ci-4) && r.since(r.clauses[k].lo, c.lo) < 12; k-- {
		if r.noneToBeHad(k) {
			return true
		}
	}
	return false
}

// followsSo tells whether a clause begins with "so".
func (r *reading) followsSo(c *clause) bool {
	if r.ledBy(c.lo, "so") {
		return true
	}
	for i := c.lo; i < min(c.hi, c.lo+3); i++ {
		if r.toks[i].s == "so" {
			return true
		}
		if !r.toks[i].is(wOpener) {
			return false
		}
	}
	return false
}

// noneToBeHad tells whether a clause says that a part is not to be had: "I ain't got one that
// small", "I've no clip for it", "the cap hasn't come", "the shop had none".
func (r *reading) noneToBeHad(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&(conditional|hypothetical|asked) != 0 {
		return false
	}
	for i := c.lo; i < c.hi; i++ {
		none, next := false, r.next(i)
		if next == "even" || next == "yet" {
			next = r.word(i + 2)
		}
		switch r.toks[i].s {
		case "none":
			none = next != "of"
		case "missing", "lost", "fell", "fallen":
			none = true
		case "no":
			p := r.prev(i)
			mi := r.nameWithin(c, i, 4)
			if mi < 0 || i == c.lo || r.mentions[mi].kind&(lexicon.Part|lexicon.Fastener|lexicon.Consumable) == 0 {
				continue
			}
			w := r.word(r.mentions[mi].hi)
			none = p == "got" || p == "have" || p == "'ve" || p == "had" ||
				p == "'s" && r.word(i-2) == "there" && (w == "in" || w == "left" || w == "for" || w == "so")
		case "out":
			// "I'd run out of the fat ones", "I'm out of crimps"
			switch r.prev(i) {
			case "ran", "run", "'m", "'re", "clean", "fresh", "all":
				none = next == "of"
			}
		case "haven't", "ain't", "not", "hasn't", "hadn't":
			none = next == "got" || next == "come" || next == "arrived"
		case "don't", "didn't", "doesn't", "isn't":
			none = next == "have" && r.word(i+2) != "to" || next == "here"
		}
		if none && r.noToolNamed(c, i) {
			return true
		}
	}
	return false
}

// noToolNamed tells whether no tool is named after a token.
func (r *reading) noToolNamed(c *clause, tok int) bool {
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&lexicon.Tool != 0 && m.kind&(lexicon.Part|lexicon.Fastener) == 0 && m.hi > tok {
			return false
		}
	}
	return true
}

// nextBest tells whether what a clause tells to be there can be what takes the place of what
// is wanting: one of many, or the old one again.
func (r *reading) nextBest(s standIn) bool {
	if s.mention < 0 {
		for i := s.lo; i < min(s.hi, len(r.toks)); i++ {
			if w := r.toks[i].s; w == "a" || w == "an" || w == "some" || w == "of" {
				return true
			}
		}
		return false
	}
	m := &r.mentions[s.mention]
	if m.isNew || m.kind&(lexicon.Part|lexicon.Fastener|lexicon.Consumable) == 0 || lubricants.has(m.head) || m.head == "hole" || m.head == "gap" {
		return false
	}
	if m.isOld {
		return true
	}
	switch w := r.word(m.from); w {
	case "a", "an", "some", "one":
		return true
	}
	return r.prev(m.from) == "of" && pieces.has(lexicon.Singular(r.word(m.from-2))) || r.prev(m.from) == "a"
}

// untilNew tells whether what a clause tells to go back or to stay does so only till another
// comes: it says so, or one that goes before or after it says that there is none, or that one
// is ordered.
func (r *reading) untilNew(ci int) bool {
	if r.onlyForNow(ci) || r.followsWant(ci) {
		return true
	}
	for k := max(0, ci-1); k <= min(ci+1, len(r.clauses)-1); k++ {
		if c := &r.clauses[k]; (k == ci || len(c.mentions) == 0 && r.since(min(c.lo, r.clauses[ci].lo), max(c.lo, r.clauses[ci].lo)) < 8) && r.heardIn(k, k, "ordered") {
			return true
		}
	}
	return false
}
