package extract

import "strings"

// What is told off for another day in one breath: "Saturday I'll get the lead back on, run it ten
// minutes, and then go round the fittings". Its day and its "I'll" stand once and count for all
// that is told in the row, of which none is done, and each of which is asked after.

// rowOfDay is such a row: the acts that it puts off.
type rowOfDay struct {
	lo, hi int // tokens
	acts   []int
}

// otherDays finds the rows, and takes their acts for put off. A row ends with its sentence; where
// the stops are put back by weight, one that a day opens at the end of the talk goes on over them.
func (r *reading) otherDays() {
	will, day := -1, false // where a row begins, and whether it has its day
	dayAhead := false      // a day was named that no "I'll" has followed yet
	opened := false        // the day came first
	end := func(k int) {
		if will >= 0 && day {
			row := rowOfDay{lo: will, hi: r.clauses[k-1].hi}
			for k := int(r.toks[will].cl); k < len(r.clauses) && r.clauses[k].lo < row.hi; k++ {
				for _, ai := range r.clauses[k].acts {
					if a := &r.acts[ai]; a.verb >= will && !a.subject && a.mood&(negated|conditional|hypothetical|other|asked) == 0 && r.plainVerb(r.toks[a.verb].s) {
						a.mood |= announced
						row.acts = append(row.acts, ai)
					}
				}
			}
			if len(row.acts) > 0 {
				r.dayRows = append(r.dayRows, row)
			}
		}
		will, day, opened = -1, false, false
	}
	s := sentenceOf{r: r, hi: len(r.toks)}
	for k := range r.clauses {
		c := &r.clauses[k]
		if k > 0 && c.sentence != r.clauses[k-1].sentence && (will >= 0 || dayAhead) && !((opened || dayAhead) && r.atTheEnd(k) && !r.stopHeard(k)) {
			end(k)
			dayAhead = false
		}
		if c.mood&(storied|greeting) != 0 || r.opensTalk(k) {
			continue
		}
		first := min(r.skipped(c), c.hi-1)
		at, sure := s.dayToCome(c)
		waits := false
		for i := c.lo; i < min(c.hi, c.lo+4) && !waits; i++ {
			waits = s.comesThen(i, c.hi)
		}
		w := r.willAt(c, first, at >= 0 && sure || dayAhead)
		if at > first+1 && at < w {
			at = -1 // "so they're out next year I'll run them at 45"
		}
		switch {
		case r.beginsWith(c, "so", "but") && at < 0 && !waits, c.mood&(conditional|asked|other|hypothetical) != 0 && !waits, r.saidIn(c, "you"), r.saidIn(c, "today"), r.saidIn(c, "now"):
			end(k)
			dayAhead = false
		case waits:
			end(k)
			if will = r.willAt(c, first, true); will >= 0 {
				day, opened = true, true // "when the seals come in I'll fill her up"
			}
			dayAhead = will < 0
		case w >= 0:
			if will < 0 || dayAhead {
				end(k)
				will = w
			}
			day, opened = day || dayAhead || at >= 0, opened || dayAhead || at >= 0 && at < w
			dayAhead = false
		case will >= 0 && r.goesOnSameDay(first, c.hi):
			if !day && at >= 0 {
				will, day = first, true // "I'll tie it back overnight and bleed it tomorrow"
			}
		default:
			end(k)
			dayAhead = at >= 0 && at <= first+1
		}
	}
	end(len(r.clauses))
}

// stopHeard tells whether what is heard before a clause ends in a stop of its own.
func (r *reading) stopHeard(k int) bool {
	return strings.ContainsAny(r.text(r.clauses[k].lo-1, r.clauses[k].lo+1), ".!?")
}

// dayToCome gives the token of a day to come in a clause, and whether it cannot be one that is past
// ("on Friday I do the clip" is, where "Friday I put it back" may be); -1 where there is none.
func (s sentenceOf) dayToCome(c *clause) (at int, sure bool) {
	for i := c.lo; i < c.hi; i++ {
		switch w := s.r.toks[i].s; {
		case w == "later", w == "this", w == "the", w == "next" && s.r.next(i) == "day", !days.has(w) && w != "next" && w != "at" && w != "in" && w != "on":
			continue
		default:
			if n := s.later(i); n > 0 && s.r.toks[i+n-1].s != "later" && i+n <= c.hi+2 && !s.r.saidIn(c, "last") {
				return i, w == "tomorrow" || w == "on"
			}
		}
	}
	return -1, false
}

// comesThen tells of "when the seals come in", "once my brother's here": what is not here yet.
func (s sentenceOf) comesThen(lo, hi int) bool {
	switch s.r.toks[lo].s {
	case "when", "once":
	default:
		return false
	}
	if w := s.r.next(lo); w == "it" || w == "you" || w == "she" {
		return false // "when it comes free"
	}
	for i := lo + 1; i < hi; i++ {
		switch w, n := s.r.toks[i].s, s.r.next(i); w {
		case "arrive", "arrives", "delivered", "open", "opens":
			return true
		case "come", "comes", "turn", "turns":
			return i+1 >= hi || n == "in" || n == "up" && w[0] == 't' || n == "on" && days.has(s.r.word(i+2)) || days.has(n)
		}
	}
	return false
}

// willAt gives the token of "I" or "we" in "I'll", "we're going to", from a token on; where the
// day is told, of any that is followed by a verb: "on Friday I do the clip". -1 where none is.
func (r *reading) willAt(c *clause, from int, day bool) int {
	for i := from; i+1 < c.hi; i++ {
		if w := r.toks[i].s; w != "i" {
			continue
		}
		n, m := r.next(i), r.word(i+2)
		switch {
		case n == "'ll", n == "will", n == "shall", n == "must", n == "gonna",
			(n == "have" || n == "need" || n == "want") && m == "to",
			(n == "'m" || n == "am" || n == "'re" || n == "are") && m == "gonna",
			n == "'ve" && m == "got" && r.word(i+3) == "to":
			return i
		case day && r.presentVerb(n) && !alikeInPast.has(n):
			return i
		}
	}
	return -1
}

// alikeInPast are verbs that are the same of yesterday and of tomorrow.
var alikeInPast = set("put set cut let shut hit split spread bust run come")

// goesOnSameDay tells whether a clause goes on with a row: "and then go round it", "bleed it".
func (r *reading) goesOnSameDay(i, hi int) bool {
	for i < hi && (r.toks[i].s == "and" || r.toks[i].s == "then" || r.toks[i].s == "also") {
		i++
	}
	return i < hi && r.plainVerb(r.toks[i].s) && !(r.toks[i].men >= 0 && r.toks[i].is(wDeterminer))
}

// restOfDay asks after each thing of a row that nothing else asks after.
func (r *reading) restOfDay(ends []*looseEnd) []*looseEnd {
	var out []*looseEnd
	for _, row := range r.dayRows {
		s := sentenceOf{r: r, lo: row.lo, hi: row.hi}
		if s.nextTalk(row.lo, row.hi) {
			continue
		}
		for _, ai := range row.acts {
			a := &r.acts[ai]
			for _, mi := range a.objects {
				if m := &r.mentions[mi]; r.topical(m) {
					d := due{verb: a.verb, kind: "unfinished", time: true, things: []int{mi}, hi: max(a.hi, m.hi)}
					out = append(out, r.dueEnds(a.cl, a.lo, &d, ends, out)...)
					break
				}
			}
		}
	}
	return out
}
