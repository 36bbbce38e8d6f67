package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
)

// Words of work that are told of how a thing is, what for, or which way round it is not: "the
// cable, it goes to the lever", "so that it goes back the same way", "no, the other way round".

// wayBack are the last words of what a mark is made for: "so it goes back the same way".
var wayBack = set("way place spot position side order was were came")

// marking are the words by which a mark is made, or a picture.
var marking = wordsOf("marks")

// theReasonFor tells of "so that the mast comes back in the same place", and of "so the pulley
// goes back the same way" where a mark was just made: what something is done for.
func (r *reading) theReasonFor(ci int, a *act) bool {
	c := &r.clauses[ci]
	if !a.subject || a.verb < c.lo+2 || r.toks[c.lo].s != "so" || c.lo == 0 || r.toks[c.lo-1].brk >= brkSentence {
		return false
	}
	if r.toks[c.lo+1].s == "that" && !r.toks[c.lo+2].is(wDeterminer) && !pronounsObj.has(r.toks[c.lo+2].s) && r.toks[c.lo+2].s != "they" || a.action.Name != "fit" {
		return false
	}
	if r.lastWordOf(ci-1, marking) == "" && !r.says1(c, a.verb, "same") {
		return false
	}
	for i := a.verb + 1; i < c.hi; i++ {
		if wayBack.has(r.toks[i].s) {
			return true
		}
	}
	return false
}

// lastWordOf gives the last word of a clause that is one of a set, or "".
func (r *reading) lastWordOf(ci int, of *wordSet) string {
	if ci < 0 {
		return ""
	}
	c := &r.clauses[ci]
	for i := c.hi - 1; i >= c.lo; i-- {
		if of.has(r.toks[i].s) {
			return r.toks[i].s
		}
	}
	return ""
}

// courses are the words for which way something long runs.
var courses = set("to round around along across from past")

// runsThere tells of "there's a band goes right round the housing" and "the gear cable, it goes
// to the lever": where something long runs, which is how it is put only where it had come off.
func (r *reading) runsThere(c *clause, a *act) bool {
	if !a.subject || a.verb < 0 || a.action.Name != "fit" {
		return false
	}
	switch r.toks[a.verb].s {
	case "goes", "go", "runs", "run", "comes":
	default:
		return false
	}
	i := a.verb + 1
	for i < c.hi && (r.toks[i].s == "all" || r.toks[i].s == "the" || r.toks[i].s == "way" || r.toks[i].s == "right" || r.toks[i].s == "straight" || r.toks[i].s == "just" || r.toks[i].s == "up" || r.toks[i].s == "down") {
		i++
	}
	if i >= c.hi || !courses.has(r.toks[i].s) {
		return false
	}
	for k := c.lo; k+1 < a.verb; k++ {
		if w, n := r.toks[k].s, r.toks[k+1].s; (w == "there" || w == "here") && (n == "'s" || n == "is" || n == "are" || n == "'re") {
			return true
		}
	}
	return r.toks[i].s == "to" && (a.pronoun == "it" || a.pronoun == "that") && r.namedRightBefore(c, a)
}

// goingOn tells whether more of what was done last put something on than took something off.
func (r *reading) goingOn() bool {
	on := 0
	for i, seen := len(r.acts)-1, 0; i >= 0 && seen < 3; i-- {
		a := &r.acts[i]
		if !a.happened() || ledgerActs[a.action.Name] == "" {
			continue
		}
		if seen++; a.action.Name == "fit" {
			on++
		} else {
			on--
		}
	}
	return on > 0
}

// seasons are the words for when, "in the spring we replace it".
var seasons = wordsOf("when works are due")

// nextSeason tells of "and in the spring | we replace it".
func (r *reading) nextSeason(c *clause, a *act) bool {
	i := a.verb - 1
	if i < 3 || a.subject || !firstPersonOf(r.toks[i].s) || !r.presentVerb(r.toks[a.verb].s) || !seasons.has(r.toks[i-1].s) {
		return false
	}
	if n := r.toks[i-2].s; n != "the" && n != "next" {
		return false
	}
	w := r.toks[i-3].s
	return w == "in" || w == "at" || w == "the" && r.word(i-4) == "at"
}

// namedRightBefore tells whether the thing is named right before "it" or "that" moves: "the cable, it
// goes to the lever".
func (r *reading) namedRightBefore(c *clause, a *act) bool {
	i := a.verb - 1
	return i > 0 && r.toks[i].s == a.pronoun && r.toks[i-1].men >= 0 && (i == c.lo || i > c.lo && r.toks[i-1].brk < brkSentence)
}

// begunInVain tells of "I hold the brake, no, there's no brake now": what was begun and can't be.
func (r *reading) begunInVain(a *act) bool {
	for i := a.hi; i+2 < len(r.toks) && i < a.hi+4; i++ {
		if r.toks[i].brk >= brkClip {
			return false
		}
		if r.toks[i].s != "no" || r.toks[i-1].brk < brkComma {
			continue
		}
		if w := r.next(i); w != "there" && w != "there's" {
			return false
		}
		for k := i + 2; k < i+5; k++ {
			if w := r.word(k); w == "no" || w == "not" || w == "isn't" || w == "aren't" {
				return a.verb >= 0 && !a.subject
			}
		}
	}
	return false
}

// namedAndIf tells whether a clause only names a thing before its "if": "the transit bolts, if you
// move it".
func (r *reading) namedAndIf(c *clause) bool {
	named := false
	for i := c.lo; i < c.hi; i++ {
		switch t := &r.toks[i]; {
		case t.s == "if":
			return named && i+2 < c.hi
		case t.men >= 0:
			named = true
		case !t.is(wOpener|wDrop|wDeterminer|wInterjection) && !determiner.has(t.s):
			return false
		}
	}
	return false
}

// fetching are what somebody will do to have a thing that is not there.
var fetching = set("bring order buy get fetch make find print turn borrow")

// willFetch tells whether a clause says that what was named before it is still to be had.
func (r *reading) willFetch(ci int) bool {
	if ci >= len(r.clauses) || r.clauses[ci-1].sentence != r.clauses[ci].sentence {
		return false
	}
	c := &r.clauses[ci]
	return c.hi-c.lo > 2 && firstPersonOf(r.toks[c.lo].s) && (r.toks[c.lo+1].s == "'ll" || r.toks[c.lo+1].s == "will") && fetching.has(r.toks[c.lo+2].s)
}

// firstPersonOf tells whether a word is who speaks.
func firstPersonOf(w string) bool { return w == "i" }

// keptIn tells of "I keep the axle in", "kept the old seal on": what stays as it is.
func (r *reading) keptIn(c *clause, a *act) bool {
	if a.verb >= 0 || !a.subject || a.action.Name != "fit" || len(a.objects) == 0 {
		return false
	}
	m := &r.mentions[a.objects[0]]
	return m.from > c.lo && r.lemma1(r.toks[m.from-1].s) == "keep"
}

// carried are the words for where somebody has what is not in its place: "I've got the plug in my pocket".
var carried = set("pocket pockets hand hands bag van car shed")

// hasOnThem tells of "I've got the plug in my pocket".
func (r *reading) hasOnThem(c *clause, a *act) bool {
	if a.verb <= c.lo || a.subject || r.toks[a.verb].s != "got" || a.action.Name != "fit" {
		return false
	}
	for i := a.verb + 1; i+1 < c.hi; i++ {
		if w := r.toks[i].s; (w == "in" || w == "on") && (carried.has(r.toks[i+1].s) || i+2 < c.hi && carried.has(r.toks[i+2].s)) {
			return true
		}
	}
	return false
}

// raisesMoney tells of "we raised six hundred quid".
func (r *reading) raisesMoney(c *clause, a *act) bool {
	if a.verb < 0 || a.subject || r.lemma1(r.toks[a.verb].s) != "raise" {
		return false
	}
	for i := a.verb + 1; i < min(c.hi, a.verb+8); i++ {
		if w := r.toks[i].s; coins.has(w) || w == "money" || w == "pounds" || w == "funds" {
			return true
		}
	}
	return false
}

// describedNext tells whether what is named in a clause is only described right after, and does
// not come off: "belt next. It runs on two pulleys", "clamp next, the clamp rides on two pillars".
func (r *reading) describedNext(ci int, m *mention) bool {
	if ci+1 >= len(r.clauses) || r.since(r.clauses[ci].hi-1, r.clauses[ci+1].lo) > 6 {
		return false
	}
	n := &r.clauses[ci+1]
	i := r.skipped(n)
	for i < n.hi && r.toks[i].is(wDeterminer) && r.toks[i].men >= 0 && r.toks[i].s != m.head {
		i++
	}
	if r.word(i) == "the" {
		i++
	}
	if w := r.word(i); w != "it" && w != "they" && w != m.head {
		return false
	}
	w := r.next(i)
	if r.toks[i].brk >= brkComma || !strings.HasSuffix(w, "s") || linking.has(w) || comesAway.has(w) {
		return false
	}
	for k := i; k < len(r.toks) && r.since(n.lo, k) < 14; k++ {
		if t := &r.toks[k]; t.is(wOff) || comesAway.has(t.s) || k < n.hi && t.qty >= 0 || t.s == "undo" || t.s == "remove" {
			return false
		}
	}
	return true
}

// byThen are the words that begin what has to be first, before something else is done or stops.
var byThen = set("until till til once when after before")

// alsoByThen tells of "… stays out until the nut's on | and I've checked the exhaust": what goes on
// from "until" is not done yet either.
func (r *reading) alsoByThen(ci int, a *act) bool {
	c := &r.clauses[ci]
	if ci == 0 || a.verb < c.lo+2 || r.toks[c.lo].s != "and" || r.clauses[ci-1].sentence != c.sentence {
		return false
	}
	switch w, n := r.toks[c.lo+1].s, r.toks[c.lo+2].s; {
	case (firstPersonOf(w) || w == "you") && (n == "'ve" || n == "have"):
	case a.subject && passiveBe.has(r.toks[a.verb].s):
	default:
		return false
	}
	p := &r.clauses[ci-1]
	if !byThen.has(r.toks[p.lo].s) {
		return false
	}
	if r.toks[c.lo-1].brk < brkComma {
		return true
	}
	if ci < 2 || r.clauses[ci-2].sentence != c.sentence {
		return byThen.has(r.toks[p.lo].s) && r.toks[p.lo].s != "until" && r.toks[p.lo].s != "till"
	}
	b := &r.clauses[ci-2]
	if b.mood&negated != 0 {
		return true
	}
	for i := b.lo; i < b.hi; i++ {
		switch r.toks[i].s {
		case "stays", "stay", "leave", "wait", "waits", "waiting":
			return true
		}
	}
	return false
}

// heldOnly tells of "they're on jubilee clips", "the heater's on three studs": how things are held.
func (r *reading) heldOnly(c *clause, a *act) bool {
	if !a.subject || a.verb < 0 || a.action.Name != "fit" || !passiveBe.has(r.toks[a.verb].s) || r.next(a.verb) != "on" || r.toks[a.verb+1].brk >= brkComma {
		return false
	}
	i := a.verb + 2
	for i < c.hi && r.toks[i].men < 0 && (r.toks[i].is(wCountOf|wNumber|wDropAdj|wDrop) || countOf[r.toks[i].s] > 0) {
		i++
	}
	if i >= c.hi || r.toks[i].men < 0 {
		return false
	}
	m := &r.mentions[r.toks[i].men]
	return m.kind&lexicon.Fastener != 0 && m.plural && !m.definite
}

// thePlan tells of what the job will be, told before any of it is done: "what I'm gonna do is take
// it out, clean the filter, put a new seal in".
func (r *reading) thePlan(ci int, a *act) bool {
	if a.subject && a.verb >= 0 || len(r.acts) > 20 || r.since(0, a.lo) > 60 {
		return false
	}
	for k := ci; k >= max(0, ci-6); k-- {
		c := &r.clauses[k]
		hi := c.hi
		if k == ci {
			hi = a.lo
		}
		for i := c.lo; i+4 < hi+3 && i < hi; i++ {
			if r.toks[i].s == "what" && r.toks[i+1].s == "i" && r.willDoIs(i+2, hi) {
				return r.noneDone()
			}
		}
		if first := &r.toks[c.lo]; k < ci && first.s == "and" {
			continue
		}
		// only orders that go on from it: "clean the filter, put a new seal in"
		if i := c.lo; k <= ci && !(r.toks[i].is(wVerb) && r.plainVerb(r.toks[i].s) && (r.nextKind(i).is(wDeterminer|wPronoun) || r.next(i) == "new")) && r.toks[i].s != "and" {
			return false
		}
	}
	return false
}

// willDoIs tells whether "'m gonna do today is" stands from a token on.
func (r *reading) willDoIs(i, hi int) bool {
	will := false
	for ; i < hi; i++ {
		switch r.toks[i].s {
		case "gonna", "going", "'ll", "will":
			will = true
		case "is", "'s":
			return will
		case "'m", "'re", "are", "am", "to", "do", "today", "tonight", "here", "be", "doing":
		default:
			return false
		}
	}
	return false
}

// noneDone tells whether nothing was taken off, undone or put on so far.
func (r *reading) noneDone() bool {
	for i := range r.acts {
		if p := &r.acts[i]; p.happened() && p.verb >= 0 && ledgerActs[p.action.Name] != "" {
			return false
		}
	}
	return true
}

// takesBack are the words by which what was just said is taken back.
var takesBack = set("no nope wait sorry actually oops whoops")

// otherWayAfter gives the token after "no, the other way round", said right after an act, or 0.
func (r *reading) otherWayAfter(from int) int {
	for i := from; i+1 < len(r.toks) && i < from+16; i++ {
		if r.toks[i].brk >= brkClip {
			break
		}
		if r.toks[i].s != "other" || r.toks[i+1].s != "way" {
			continue
		}
		for k := i - 1; k >= max(from-1, i-4, 0); k-- {
			switch w := r.toks[k].s; {
			case w == "not" || w == "or" || w == "if" || strings.HasSuffix(w, "n't"):
				return 0 // "lip facing out, not the other way round"
			case takesBack.has(w), w == "on" && r.prev(k) == "hang":
				i += 2
				if w := r.word(i); w == "round" || w == "around" || w == "about" || w == "up" {
					i++
				}
				for k := i; k < i+4; k++ {
					if r.word(k) == "i" && r.next(k) == "was" && r.word(k+2) == "right" {
						return 0
					}
				}
				return i
			}
		}
		return 0
	}
	return 0
}

// turnedRound words a step without the way that was taken back in the words after it, with the
// other one where it is told: "goes in with the lip facing out, no, the other way, lip facing in".
func (r *reading) turnedRound(text string, c *clause, a *act) string {
	if text == "" || a.action.Name == "inspect" || !r.toldWay(a, c.hi) {
		return text
	}
	after := r.otherWayAfter(a.hi)
	if after == 0 {
		return text
	}
	names := r.objectNames(a)
	if names == "" {
		names = "this"
	} else {
		names = "the " + names
	}
	text = firstWord(text) + " " + names
	if after < len(r.toks) && len(a.things) == 1 {
		if o := strings.ToLower(r.orientation(a.cl, a.things[0])); tellsTurned(o) {
			text += ", " + o
		}
	}
	return trimStep(text) + "."
}

// toldWay tells whether an act says which way something goes.
func (r *reading) toldWay(a *act, hi int) bool {
	for i := a.lo; i < hi; i++ {
		if w := r.toks[i].s; turned.has(w) || features.has(w) || whichThread.has(w) || w == "first" || r.toks[i].is(wPlace) {
			return true
		}
	}
	return false
}
