package extract

import (
	"wrenchword/extract/lexicon"
)

// What waits for something: the tool that is elsewhere, a time that is not yet, a
// state of the machine, a question that nobody answers.

// waits gives the signals of a clause that are told by what its work waits for.
func (r *reading) waits(ci int, out []openCue) []openCue {
	c := &r.clauses[ci]
	if lo, hi := r.elsewhere(ci); lo >= 0 {
		out = append(out, openCue{lo, hi, "elsewhere"})
	}
	if r.whenLater(ci) && !r.heardIn(ci, ci, "later") {
		out = append(out, openCue{c.lo, min(c.hi, c.lo+3), "later"})
	}
	if lo, hi := r.withoutLocker(ci); lo >= 0 {
		out = append(out, openCue{lo, hi, "no-locker"})
	}
	if r.noMore(ci) && !r.heardIn(ci, ci, "half-tight") {
		out = append(out, openCue{c.lo, c.hi, "half-tight"})
	}
	return out
}

// openAsked tells of "was there a washer on this side, or did I make that up?", "towards
// the clay? Away from the clay?": two ways that the speaker asks of the machine, with no
// answer after.
func (r *reading) openAsked(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&asked == 0 || c.mood&(other|conditional|aside|greeting|hypothetical|storied) != 0 {
		return false
	}
	from := ci
	for from > 0 && r.clauses[from-1].sentence == c.sentence {
		from--
	}
	or := false
	for k := from; k <= ci; k++ {
		n := &r.clauses[k]
		or = or || r.saidIn(n, "or")
	}
	if !or || c.hi-r.clauses[from].lo < 6 || !r.namesNear(ci) && !r.namesNear(from) {
		return false
	}
	_, hi := r.nearBy(ci, 0, 4, 12)
	for k := ci + 1; k <= hi; k++ {
		n := &r.clauses[k]
		switch r.toks[n.lo].s {
		case "yes", "yeah", "yep", "no", "nope", "nah", "ah", "right", "left", "neither", "both", "aha", "oh", "got":
			return false
		case "it", "that", "they", "there", "here", "the", "these", "those", "it's", "that's":
			if n.mood&(negated|asked) == 0 && n.hi-n.lo >= 2 && (r.toks[n.lo+1].is(wLinking) || r.toks[n.lo+1].s == "'s") {
				return false // "it's the left one"
			}
		}
	}
	return true
}

// saysWay tells whether a clause has a word for which way round a thing goes.
func (r *reading) saysWay(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		if turnedWay.has(r.toks[i].s) || r.toks[i].s == "arrow" {
			return true
		}
	}
	return false
}

// away are the places where a tool is no use to who works here.
var away = wordsOf("where a tool is no use")

// elsewhere finds "because the hammer's in the van", "the socket I need is at my
// brother's": a tool that is not here is only spoken of for what is not done without it.
func (r *reading) elsewhere(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&lexicon.Tool == 0 || m.kind&(lexicon.Part|lexicon.Fastener) != 0 || m.prep != "" {
			continue
		}
		k := m.hi
		for k < min(c.hi, m.hi+5) && !r.toks[k].is(wLinking) && r.toks[k].s != "'s" {
			switch r.toks[k].s {
			case "i", "need", "want", "for", "that", "it", "this", "these", "those", "them", "wanted", "needed", "lives", "went":
			default:
				k = c.hi
			}
			k++
		}
		if k >= c.hi || !r.isAway(c, k+1) || r.fetches(ci) {
			continue
		}
		from, _ := r.nearBy(ci, 1, 0, 8)
		for j := from; j <= ci; j++ {
			n := &r.clauses[j]
			if j < ci && n.mood&(other|hypothetical|conditional|asked|greeting) != 0 || n.mood&(hypothetical|conditional|asked|greeting) != 0 {
				continue
			}
			if n.mood&negated != 0 || len(n.acts) > 0 {
				return m.from, min(c.hi, k+2)
			}
		}
	}
	return -1, -1
}

// isAway tells whether a place off the machine follows: "in the van", "at my brother's",
// "on loan", "back home".
func (r *reading) isAway(c *clause, i int) bool {
	lead := false
	for ; i < min(c.hi, len(r.toks)); i++ {
		switch w := r.toks[i].s; {
		case away.has(w):
			return lead || w == "upstairs" || w == "indoors" || w == "home"
		case w == "in" || w == "at" || w == "on" || w == "up" || w == "over" || w == "out" || w == "back" || w == "down" || w == "round" || w == "still":
			lead = true
		case w == "'s":
			return lead && (i+1 >= c.hi || r.toks[i].brk >= brkComma)
		case w == "next" && r.next(i) == "door":
			return true
		case lead && (determiner.has(w) || ofWhom.has(w) || w == "other" || w == "bloody" || w == "blasted"):
		case lead && i+1 < c.hi && r.toks[i+1].s == "'s": // "at dave's"
		default:
			return false
		}
	}
	return false
}

// fetches tells whether what is elsewhere is gone for, or done without, at once.
func (r *reading) fetches(ci int) bool {
	_, hi := r.nearBy(ci, 0, 2, 8)
	for k := ci; k <= hi; k++ {
		c := &r.clauses[k]
		for i := c.lo; i < c.hi; i++ {
			switch w := r.toks[i].s; {
			case w == "fetch", w == "get" && (r.next(i) == "it" || r.next(i) == "that" || r.next(i) == "them"), w == "grab", w == "instead":
				return true
			case w == "so" && k > ci && i == c.lo && len(c.acts) > 0 && c.mood&(negated|announced) == 0:
				return true // "so I used the other one"
			}
		}
	}
	return false
}

// saysOnly are verbs of what is done to viewers, not to the machine.
var saysOnly = set("show see tell say know explain stop start come talk find hear think believe hold try worry")

// whenLater finds "I'll centre that | when the wheel's straight", "those get tightened |
// once it's down": work with a time to it, which the talk may never come to.
func (r *reading) whenLater(ci int) bool {
	c := &r.clauses[ci]
	if ci == 0 || c.mood&(other|asked) != 0 {
		return false
	}
	switch r.toks[c.lo].s {
	case "when", "once", "after":
	default:
		return false
	}
	p := &r.clauses[ci-1]
	if p.sentence != c.sentence || p.mood&(leavesNothing|asked|negated|hypothetical) != 0 || r.saidIn(p, "you") || r.saidIn(c, "you") || c.hi-c.lo < 3 || r.saidIn(p, "again") {
		return false
	}
	if !r.wills(ci-1) && !r.willBe(p) {
		return false
	}
	if len(p.acts) == 0 && !r.saidIn(p, "pull") && !r.saidIn(p, "do") && !r.saidIn(p, "sort") && !r.saidIn(p, "finish") {
		return false
	}
	return !r.actLater(ci)
}

// willBe tells of "that'll get torqued", "those'll want doing": what is yet to happen to a thing.
func (r *reading) willBe(c *clause) bool {
	for i := c.lo + 1; i+1 < c.hi; i++ {
		if w := r.toks[i].s; (w == "'ll" || w == "will") && (pronounsObj.has(r.toks[i-1].s) || r.toks[i-1].men >= 0) {
			switch r.toks[i+1].s {
			case "get", "be", "want", "need", "have":
				return true
			}
		}
		if w := r.toks[i].s; (w == "get" || w == "gets") && (pronounsObj.has(r.toks[i-1].s) || r.toks[i-1].s == "they" || r.toks[i-1].men >= 0) {
			return true // "they get a second pull | once it's gone off"
		}
	}
	return false
}

// actLater tells whether what a clause before puts off happens later in the talk: the
// same work, on the same thing or on one that is not named.
func (r *reading) actLater(ci int) bool {
	p := &r.clauses[ci-1]
	if len(p.acts) == 0 {
		return false
	}
	a := &r.acts[p.acts[len(p.acts)-1]]
	for i := p.acts[len(p.acts)-1] + 1; i < len(r.acts); i++ {
		b := &r.acts[i]
		if b.lo < r.clauses[ci].hi || b.action.Name != a.action.Name && !(a.action.Name == "tighten" && b.action.Name == "torque") || !b.happened() {
			continue
		}
		if len(a.things) == 0 || len(b.things) == 0 {
			return true
		}
		for _, t := range a.things {
			for _, u := range b.things {
				if t == u {
					return true
				}
			}
		}
	}
	return false
}

// noMore finds "run down and that's all", "in, and no further", "Not done. In.": a
// fastener that went in, and nothing more.
func (r *reading) noMore(ci int) bool {
	c := &r.clauses[ci]
	if ci == 0 || c.mood&(other|conditional|asked|hypothetical|aside|greeting|listing) != 0 || c.hi-c.lo > 5 || len(c.mentions) > 0 || len(c.acts) > 0 {
		return false
	}
	i := r.skipped(c)
	if i >= c.hi {
		return false
	}
	ok := false
	switch w, n, m := r.toks[i].s, r.next(i), r.word(i+2); {
	case w == "that" && n == "'s" && (m == "all" || m == "it"), w == "that's" && (n == "all" || n == "it"):
		ok = c.hi == i+3-b2i(w == "that's") && ci > 0 && r.clauses[ci-1].sentence == c.sentence
	case w == "no" && (n == "more" || n == "further" || n == "tighter"), w == "nothing" && (n == "more" || n == "else"):
		ok = c.hi == i+2
	case w == "not" && (n == "done" || n == "tight" || n == "nipped" || n == "torqued" || n == "tightened"):
		ok = c.hi <= i+3
	}
	if !ok {
		return false
	}
	for k := ci - 1; k >= max(0, ci-2) && r.since(r.clauses[k].lo, c.lo) < 8; k-- {
		for _, ai := range r.clauses[k].acts {
			a := &r.acts[ai]
			if n := a.action.Name; (n == "fit" || n == "start by hand" || n == "tighten") && a.happened() && (len(a.things) == 0 && a.pronoun != "" || len(a.things) > 0 && a.things[0].fastener && takesTorque(a.things[0])) {
				return true
			}
		}
	}
	return false
}

// keptFrom gives the kind of what is not done for want of a tool, by what was spoken of.
func (r *reading) keptFrom(ci int) string {
	lo, _ := r.nearBy(ci, 2, 0, 9)
	for k := ci; k >= lo; k-- {
		c := &r.clauses[k]
		for _, ai := range c.acts {
			switch r.acts[ai].action.Name {
			case "tighten", "torque", "start by hand":
				return NotTorqued
			case "lock":
				return LockMissing
			}
		}
		if r.heardIn(k, k, "half-tight") || r.ofTightness(c.lo, c.hi) || r.handTightNear(k) {
			return NotTorqued
		}
	}
	return Unfinished
}
