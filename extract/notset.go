package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// Values that are told and were not set: somebody else's, those that the speaker will not
// have, and those of things that are said right after to be only light so far.

// othersFigure tells whether a value is what others do or say, and nobody says in the same
// breath that it was done: "my uncle does his to twelve", "the old boy told me to do it up to a
// hundred", "I used to do these at fifteen", "nine newton metres, says the one online".
func (s *tracker) othersFigure(c *clause, q *quantity) bool {
	r := s.r
	for _, k := range c.cues {
		if k.mood&other != 0 && k.hi <= q.lo && q.lo-k.hi <= 14 && !r.valueBetween(c, k.hi, q.lo) && !r.weSpeak(k.hi, q.lo) {
			return true
		}
	}
	for i := max(c.lo, q.lo-14); i+1 < q.lo; i++ {
		switch next := r.toks[i+1].s; r.toks[i].s {
		case "told", "tells", "tell":
			if (next == "me" || next == "you") && !r.valueBetween(c, i, q.lo) && !r.weSpeak(i+2, q.lo) {
				return true
			}
		case "used":
			if next == "to" && i > 0 && r.toks[i-1].s == "i" && !r.valueBetween(c, i, q.lo) && !r.weSpeak(i+2, q.lo) {
				return true
			}
		}
	}
	for i := max(c.lo, q.lo-10); i+1 < min(c.hi, q.hi+4); i++ {
		if r.toks[i].s == "last" && (i < q.lo || i >= q.hi) && r.prev(i) != "as" && r.prev(i) != "like" {
			switch r.toks[i+1].s {
			case "time", "year", "season", "summer", "winter":
				return true // "I did those at thirty-five last time and they came loose"
			}
		}
	}
	i := q.hi
	if i+1 >= len(r.toks) || r.toks[i-1].brk >= brkSentence || s.actDone(c) {
		return false
	}
	switch next := r.toks[i+1].s; r.toks[i].s {
	case "says", "said", "say", "reckons":
		return next != "i" && next != "you" && (r.toks[i+1].is(wDeterminer) || r.toks[i+1].is(wPronoun))
	case "according":
		return next == "to"
	}
	return false
}

// setInstead tells whether of a value told with doubt the speaker says right after which one was
// set: "about five newton metres, the nut, might be four, but I did five".
func (r *reading) setInstead(i int) bool {
	h := &r.heard[i]
	if !h.hedged || h.of == nil {
		return false
	}
	for k := i + 1; k < min(len(r.heard), i+3); k++ {
		o := &r.heard[k]
		q := &r.qtys[o.qty]
		if o.of != h.of || o.dropped || o.applied != "done" || r.since(r.qtys[h.qty].hi, q.lo) > 12 {
			return false
		}
		if c := &r.clauses[q.cl]; q.cl > r.qtys[h.qty].cl && r.weSpeak(c.lo, q.lo) {
			return true
		}
	}
	return false
}

// weSpeak tells whether the speaker is who acts in the tokens lo to hi.
func (r *reading) weSpeak(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if w := r.toks[i].s; w == "i" || w == "i've" || w == "i'm" {
			return true
		}
	}
	return false
}

// lightly are the words for a fastener that is on and not tight.
var lightly = set("pinched nipped snug snugged finger fingers hand loose slack threads")

// tillThen are the words by which it is so only until later.
var tillThen = set("now moment minute far yet till until today tonight still just only")

// leftLight tells whether what a value is for is said right after to be only light, or not
// done, so far: "forty five. I've just pinched it up for now", "eight. It's in by a couple of
// threads, that's all", "fifty-five. Haven't done that yet".
func (s *tracker) leftLight(ci int, q *quantity, of *thing) bool {
	r := s.r
	ofMany := false
	for k := ci; k < min(len(r.clauses), ci+4) && r.since(q.hi-1, r.clauses[k].lo) < 9; k++ {
		n := &r.clauses[k]
		from := n.lo
		if k == ci {
			from = q.hi
		}
		light, then, not, yet, many := false, false, false, false, false
		for i := from; i < n.hi; i++ {
			t := &r.toks[i]
			switch w := t.s; {
			case w == "click" || w == "clicked" || w == "clicks" || w == "then" || w == "back" || w == "other" || w == "others" || w == "one" && k > ci && r.prev(i) != "that" && r.prev(i) != "this" || w == "rest":
				return false // "thirty, then back it off, it's only finger tight", "the last one is just nipped"
			case t.qty >= 0 && r.qtys[t.qty].Kind == normalize.Torque:
				if k > ci {
					return false
				}
				ofMany, light = true, false // another's in the same breath: what follows must be of both
			case w == "them" || w == "those" || w == "they" || w == "both" || w == "all":
				many = true
			case t.men >= 0 && k > ci && s.namesAnother(int(t.men), of) && !lightly.has(w):
				return false // told of another
			case lightly.has(w):
				light = light || w != "hand" || r.next(i) == "tight"
			case w == "yet":
				yet, then = true, true
			case tillThen.has(w):
				then = true
			case w == "n't" || w == "not" || w == "never" || w == "haven't":
				not = true
			}
		}
		next := ""
		if k+1 < len(r.clauses) {
			next = r.toks[r.clauses[k+1].lo].s
		}
		switch {
		case ofMany && !many:
		case light && !not && (then || next == "till" || next == "until" || next == "right" || next == "for" || next == "that's" && r.saidIn(&r.clauses[k+1], "all") || next == "that" && r.saidIn(&r.clauses[k+1], "all")):
			return true
		case not && yet && r.saidIn(n, "done") && n.hi-from < 8:
			return true
		}
	}
	return false
}

// onceThen tells of "only snug, not tight, the slot has to be lined up. When that's done they get
// thirty-five": what was just left light gets its value after something that is still to be done.
func (s *tracker) onceThen(ci int, q *quantity) bool {
	r := s.r
	lo := r.clauses[r.sentenceAround(ci).first].lo
	if w := r.toks[lo].s; w == "and" || w == "then" || w == "so" {
		lo++
	}
	if w := r.word(lo); w != "when" && w != "once" || r.since(lo, q.lo) > 6 {
		return false
	}
	for i := q.hi; i < len(r.toks) && r.since(q.hi-1, i) < 9; i++ {
		if w := r.toks[i].s; strings.HasPrefix(w, "click") {
			return false
		}
	}
	if w, n := r.next(lo), r.word(lo+2); (w == "that" || w == "it" || w == "this") && (n == "'s" || n == "is") {
		return true // of something else: "when that's lined up they get fifty"
	}
	light := false
	for i := lo - 1; i >= 0 && r.since(i, lo) < 22; i-- {
		w := r.toks[i].s
		light = light || w == "tight" && negating(r.prev(i)) || (w == "snug" || w == "fingers" || w == "finger" || w == "loose") && tillThen.has(r.prev(i))
		if light && r.heardIn(int(r.toks[i].cl), int(r.toks[lo].cl), "left:want", "undone", "later") {
			return true
		}
	}
	return false
}

// negating tells whether a word says that it is not so.
func negating(w string) bool {
	return w == "not" || w == "n't" || w == "never" || w == "wouldn't" || w == "won't" || w == "don't"
}

// namesAnother tells whether a mention, which may not have been followed yet, names a thing that
// is done for itself, other than one and what that holds.
func (s *tracker) namesAnother(mi int, of *thing) bool {
	m := &s.r.mentions[mi]
	if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.prep != "" {
		return false
	}
	return of == nil || m.head != of.head && (of.owner == nil || m.head != of.owner.head)
}

// rowOfValues tells whether a clause only lists values for several things, which nobody is
// turning yet, or any more: "motor bracket twenty-five, pinch bolt thirty-eight, track screws six".
func (r *reading) rowOfValues(c *clause) bool {
	if len(c.qtys) < 3 || len(c.acts) > 0 {
		return false
	}
	n := 0
	for _, qi := range c.qtys {
		if q := &r.qtys[qi]; q.Kind == normalize.Torque && q.lo > c.lo && r.toks[q.lo-1].men >= 0 && r.mentions[r.toks[q.lo-1].men].kind&(lexicon.Fastener|lexicon.Part) != 0 {
			n++
		}
	}
	return n > 2
}

// fastenedSince tells whether another fastener was named between a value and a token, so that
// what is done there is done to that.
func (s *tracker) fastenedSince(h *heard, at int) bool {
	r := s.r
	q := &r.qtys[h.qty]
	for ci := q.cl; ci <= int(r.toks[at].cl); ci++ {
		for _, mi := range r.clauses[ci].mentions {
			if m := &r.mentions[mi]; m.lo >= q.hi && m.lo < at && m.kind&lexicon.Fastener != 0 && m.entry != nil && m.entry != h.of {
				return true
			}
		}
	}
	return false
}
