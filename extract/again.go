package extract

// sameAgain is the rule of what was done to a thing in so few words.
const sameAgain = "the same again on the other side"

// otherOf has the side across from each that is told by a word.
var otherOf = map[string]string{"left": "right", "right": "left", "near side": "off side", "off side": "near side", "port": "starboard", "starboard": "port"}

// again follows "same again on the other side", "did the other one just the same":
// what was done last to the things of one side was done to those of the other. A thing
// of which no side is known has it told once more. No value is taken over.
func (s *tracker) again(ai int) {
	r := s.r
	a := &r.acts[ai]
	to, ok := r.repeatedOn(a)
	if !ok {
		return
	}
	done, from := s.doneLast(ai, to)
	for _, t := range done {
		x, from := t, from
		if side := otherOf[t.side]; side != "" {
			x = s.sided(t, &mention{lo: a.lo, side: side}, side)
		}
		if n := len(x.events); n > 0 && x != t {
			from = max(from, x.events[n-1].lo) // what it had had done to it by then
		}
		said := ""
		for i, e := range t.events {
			if e.lo < from || e.rule == sameAgain || ledgerActs[e.action] == "" || e.action == said || x == t && i < len(t.events)-1 {
				continue
			}
			said = e.action
			x.events = append(x.events, event{action: e.action, act: ai, rule: sameAgain, lo: a.lo, hi: a.hi, off: e.off || a.mood&offCamera != 0})
		}
		x.last = max(x.last, a.lo)
		s.touch(x)
	}
}

// likewise reads a clause that says no more than of which side the same holds: "then the
// right leg, same again", "other side the same".
func (r *reading) likewise(ci int) {
	c := &r.clauses[ci]
	if len(c.acts) > 0 || c.hi-c.lo > 12 || len(c.qtys) > 0 || c.mood&(negated|conditional|hypothetical|other|asked|announced|aside) != 0 {
		return
	}
	if r.sameThere(c) {
		r.addAct(ci, act{action: r.lex.Action("repeat"), lo: c.lo, hi: c.hi, verb: -1, subject: true, rule: sameAgain})
		return
	}
	if c.hi-c.lo > 9 {
		return
	}
	end := c.hi
	if w := r.toks[end-1].s; w == "again" || w == "way" || w == "then" || w == "too" {
		end--
	}
	if w := r.word(end - 1); end == c.lo || w != "same" && w != "likewise" && w != "ditto" {
		return
	}
	side := -1
	lo := c.lo
	if p := ci - 1; p >= 0 && end-1-lo <= 1 && r.clauses[p].sentence == c.sentence && len(r.clauses[p].acts) == 0 && r.clauses[p].hi-r.clauses[p].lo <= 6 {
		lo = r.clauses[p].lo // "then the right leg, | same again"
	}
	for i := lo; i < end; i++ {
		switch w := r.toks[i].s; {
		case w == "left" || w == "right" && i+1 < end || w == "other" || w == "opposite" || w == "starboard" || w == "nearside" || w == "offside":
			side = i
		case r.toks[i].is(wLinking) || r.toks[i].is(wPronoun) && w != "that":
			return // "the other side's the same": so it is, and not done
		}
	}
	if side < 0 {
		return
	}
	r.addAct(ci, act{action: r.lex.Action("repeat"), lo: lo, hi: c.hi, verb: -1, subject: true, rule: sameAgain})
}

// sameThere tells whether a clause says no more than that the same goes for a side: "and
// then exactly the same thing on the right side", "ditto the other leg".
func (r *reading) sameThere(c *clause) bool {
	i := c.lo
	for i < c.hi && (r.toks[i].is(wOpener|wDrop) || r.toks[i].s == "and" || r.toks[i].s == "exactly" || r.toks[i].s == "the" || r.toks[i].s == "do" || r.toks[i].s == "it's" || r.toks[i].s == "be" || r.toks[i].s == "'s" && r.toks[max(i-1, 0)].s == "it") {
		i++
	}
	switch r.word(i) {
	case "same", "ditto", "likewise", "repeat":
	default:
		return false
	}
	for i++; i < c.hi; i++ {
		switch r.toks[i].s {
		case "thing", "again", "way", "story", "deal", "job", "procedure", "lot", "that", "all":
			continue
		case "on", "for", "at", "with", "round", "over", "to", "the", "and", "this":
			continue
		case "left", "right", "other", "opposite", "nearside", "offside", "port", "starboard":
			return i+1 == c.hi || c.hi-i <= 4
		}
		return false
	}
	return false
}

// repeatedOn tells which side an act of doing the same again is for, "" for the other
// one; ok is false where it does not say.
func (r *reading) repeatedOn(a *act) (side string, ok bool) {
	for i := a.lo; i < min(r.clauses[a.cl].hi, a.hi+3); i++ {
		switch w := r.toks[i].s; w {
		case "left", "right", "nearside", "offside", "port", "starboard":
			return sideOf[w], true
		case "other", "opposite", "others":
			ok = true
		}
	}
	return "", ok
}

// doneLast gives the things that were worked on last before an act of doing the same
// again for a side, and the token from which on: those of the one side it leaves, and
// those of no side in the last half minute.
func (s *tracker) doneLast(ai int, to string) (things []*thing, from int) {
	r := s.r
	at := r.acts[ai].lo
	from = at
	side := otherOf[to]
	seen := map[*thing]bool{}
	defer func() {
		// what was tightened with no word but its value
		for i := len(s.hand) - 1; i >= 0 && r.since(s.hand[i].last, at) < 30; i-- {
			t := s.hand[i]
			n := len(t.events) - 1
			if seen[t] || n < 0 || t.events[n].act >= 0 || t.events[n].lo >= at || r.since(t.events[n].lo, at) > 30 || otherOf[t.side] != "" && side != "" && t.side != side {
				continue
			}
			from = min(from, t.events[n].lo)
			things = append(things, t)
		}
	}()
	for i := ai - 1; i >= 0 && r.since(r.acts[i].lo, at) < 180; i-- {
		a := &r.acts[i]
		if a.action.Name == "repeat" && a.happened() {
			break
		}
		if !a.happened() || ledgerActs[a.action.Name] == "" {
			continue
		}
		for _, t := range a.things {
			switch across := otherOf[t.side]; {
			case across == "" && r.since(a.lo, at) > 30:
				continue
			case across != "" && side == "":
				side = t.side
			case across != "" && t.side != side:
				return things, from // the one side had its turn
			}
			from = a.lo
			if !seen[t] {
				seen[t] = true
				things = append(things, t)
			}
		}
	}
	return things, from
}
