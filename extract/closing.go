package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
)

// What is told when the work is over and the machine runs, or the light goes: what was
// noticed on the way, what is for another day, what must be bought. It comes in fragments
// that no phrase marks; but where nothing is done any more, a fault that is named is one
// that stays, and what somebody will do is not done.

// closing gives what the last minute of a clip leaves open, sentence by sentence, where
// none of the ends that were heard has it.
func (r *reading) closing(ends []*looseEnd) []*looseEnd {
	var out []*looseEnd
	var asked map[int]bool // sentences that are asked after
	list := 0              // sentences for which what is left is still being told off
	for ci := 0; ci < len(r.clauses); {
		hi := ci + 1
		for hi < len(r.clauses) && r.clauses[hi].sentence == r.clauses[ci].sentence {
			hi++
		}
		if !r.atTheEnd(ci) {
			if list--; r.heardIn(ci, hi-1, "recap") {
				list = 3
			}
			ci = hi
			continue
		}
		if asked == nil {
			asked = r.askedSentences(ends)
		}
		opens := r.opensList(ci, hi)
		if opens {
			list = 3
		}
		if r.endsList(ci, hi) {
			list = 0
		} else if asked[r.clauses[ci].sentence] {
			list = min(3, 3*list)
		} else if e := r.leftAtEnd(ci, hi, list > 0, opens); e != nil && !r.askedOf(e, ends) {
			if e.topic >= 0 || e.hi-e.lo > 1 || ci == 0 || !asked[r.clauses[ci-1].sentence] {
				out = append(out, e)
			} // else it is said of what the sentence before has: "I'll do that when it's back"
			asked[r.clauses[ci].sentence] = true
			list = min(3, 3*list)
		} else {
			list--
		}
		ci = hi
	}
	return out
}

// askedSentences gives the sentences in which ends were heard.
func (r *reading) askedSentences(ends []*looseEnd) map[int]bool {
	asked := map[int]bool{}
	for _, e := range ends {
		if e.kind == "" || e.signal == "due" {
			continue
		}
		for _, at := range append([]int{e.lo, e.hi - 1}, e.also...) {
			asked[r.clauses[r.toks[at].cl].sentence] = true
		}
	}
	return asked
}

// opensList tells of "What's left.", "To do now is the belt", "So for when we're home.":
// what begins to tell what is left.
func (r *reading) opensList(lo, hi int) bool {
	return r.heardIn(lo, hi-1, "recap", "to-do") || r.planFor(lo)
}

// onlyLists tells of "One split pin, one lock nut. The cover.": what is left is named, and nothing
// said of it.
func (r *reading) onlyLists(e *looseEnd) bool {
	for i := r.clauses[r.toks[e.lo].cl].lo; i < r.clauses[r.toks[e.hi-1].cl].hi; i++ {
		if t := &r.toks[i]; t.men < 0 && t.s != "and" && t.s != "then" && t.s != "the" && !openers.has(t.s) && !determiner.has(t.s) && countOf[t.s] == 0 {
			return false
		}
	}
	return true
}

// endsList tells of a sentence that is of no work: a goodbye, a question, an aside.
func (r *reading) endsList(lo, hi int) bool {
	for k := lo; k < hi; k++ {
		c := &r.clauses[k]
		if c.mood&(greeting|aside|asked) != 0 && !r.heardIn(k, k, "recap", "to-do") || r.heardIn(k, k, "promise") {
			return true
		}
	}
	for i := r.clauses[lo].lo; i < r.clauses[hi-1].hi; i++ {
		if leaving.has(r.toks[i].s) {
			return true
		}
	}
	return r.clauses[lo].mood&conditional != 0
}

// leaving are the words of a goodbye, and of what people need for themselves.
var leaving = set("cheers thanks thank watching goodbye bye goodnight ta tea coffee lunch dinner supper bath bed shower kettle beer breakfast camera phone cat mum dad sofa")

// leftAtEnd gives what a sentence at the end of the work leaves open; nil where it leaves
// nothing.
func (r *reading) leftAtEnd(lo, hi int, list, opens bool) *looseEnd {
	from, to := r.clauses[lo].lo, r.clauses[hi-1].hi
	topic := r.topicIn(lo, hi)
	switch r.toks[from].s {
	case "she", "he", "they", "you":
		return nil
	}
	e := &looseEnd{kind: Unfinished, before: BeforeUse, first: lo, last: hi - 1, lo: from, hi: to, topic: topic, noun: -1, sure: topic >= 0, signal: "closing"}
	at := -1
	will := false
	for k := lo; k < hi && at < 0; k++ {
		at, will = r.leftSign(k, hi, topic)
	}
	switch n := r.workAfter(hi); {
	case n > 2, n > 0 && will && r.nowWords(at) && !r.heardIn(lo, hi-1, "later", "left:time", "again"):
		return nil
	case at >= 0:
		e.lo, e.hi = at, at+1
		r.aimAtEnd(e, will)
	case list && !(opens && to-from <= 4) && to-from <= 26 && (topic >= 0 || r.commands(lo)) && !r.tellsDone(lo, hi):
	default:
		return nil
	}
	if r.farOff(from, to) || strings.HasPrefix(e.due(r), "after") {
		e.before = BeforeLater
	}
	return e
}

// nowWords tells of "I'll", "I'm going to", which may be of the work in hand.
func (r *reading) nowWords(i int) bool {
	switch r.toks[i].s {
	case "'ll", "will", "gonna", "going":
		return true
	}
	return false
}

// workAfter counts the things that go on or off after a sentence.
func (r *reading) workAfter(hi int) int {
	n := 0
	for k := hi; k < len(r.clauses) && r.atTheEnd(k); k++ {
		for _, ai := range r.clauses[k].acts {
			if a := &r.acts[ai]; a.happened() && ledgerActs[a.action.Name] != "" && len(a.things) > 0 {
				n++
			}
		}
	}
	return n
}

// aimAtEnd finds what the sign of an end is said of: a thing of its own clause; for what
// somebody will do, the one after it, or the one put first.
func (r *reading) aimAtEnd(e *looseEnd, will bool) {
	c := &r.clauses[r.toks[e.lo].cl]
	before, after := -1, -1
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if !r.topical(m) {
			continue
		}
		if m.lo < e.lo && (before < 0 || direct(m) || !direct(&r.mentions[before])) {
			before = mi
		} else if after < 0 && direct(m) {
			after = mi
		}
	}
	switch {
	case will && after >= 0:
		e.topic = after
	case before >= 0:
		e.topic = before
	case will && !r.pronounIn(e.lo+1, c.hi):
		e.sure = false // "I'll check that tension again because new tyres squash"
	}
}

// topicIn gives the thing that a sentence is about, -1 where it names none.
func (r *reading) topicIn(lo, hi int) int {
	best := -1
	for k := lo; k < hi; k++ {
		for _, mi := range r.clauses[k].mentions {
			m := &r.mentions[mi]
			if !r.topical(m) {
				continue
			}
			if direct(m) {
				return mi
			}
			if best < 0 {
				best = mi
			}
		}
	}
	return best
}

// commands tells of "Touch up the scratch.", "And find a crow foot.": a clause that begins
// with a verb.
func (r *reading) commands(ci int) bool {
	c := &r.clauses[ci]
	i := r.skipped(c)
	return i+1 < c.hi && r.plainVerb(r.toks[i].s) && !saysOnly.has(r.toks[i].s) && !idleVerbs.has(r.toks[i].s) && !r.saidIn(c, "you") && r.toks[i].s != "look"
}

// tellsDone tells of a sentence that says how it was, or what was done.
func (r *reading) tellsDone(lo, hi int) bool {
	for k := lo; k < hi; k++ {
		if r.pastTold(&r.clauses[k]) {
			return true
		}
	}
	c := &r.clauses[lo]
	for i := c.lo; i < c.hi; i++ {
		if w := r.toks[i].s; w == "is" || w == "are" || w == "'s" || w == "'re" || w == "you" || w == "she" || w == "he" {
			return !r.opensList(lo, hi)
		}
		if r.toks[i].brk >= brkComma {
			break
		}
	}
	return r.toks[r.clauses[hi-1].hi-1].s == "done" || saysOnly.has(r.toks[r.skipped(c)].s)
}

// leftSign gives the token at which a clause leaves something open, -1 where it does not:
// what a thing wants, what somebody will do, a fault, a day, what is to be bought.
func (r *reading) leftSign(ci, hi, topic int) (at int, will bool) {
	c := &r.clauses[ci]
	if c.mood&(conditional|hypothetical) != 0 || r.pastTold(c) && !r.saidIn(c, "'ve") {
		return -1, false
	}
	putOff := r.heardIn(ci, ci, "later", "left:time")
	if c.mood&negated != 0 && !putOff && !r.heardIn(ci, ci, "fault", "damage") {
		return -1, false
	}
	for i := c.lo; i < c.hi; i++ {
		switch w := r.toks[i].s; w {
		case "wants", "needs", "want", "need":
			_, named := r.subjectOf(c, i)
			if (topic >= 0 || named && i > c.lo && strings.HasSuffix(w, "s")) && i > c.lo && i+1 < c.hi && c.mood&negated == 0 && r.toks[i+1].s != "to" && r.ofThings(c, i) && !r.often(c) && !r.saidIn(c, "only") && !r.saidIn(c, "you") {
				return i, false // "the rinse arm wants its jets poking out"
			}
			if topic >= 0 && w == "need" && r.ofMe(max(c.lo, i-2), i) && c.mood&negated == 0 && i+1 < c.hi && (r.toks[i+1].is(wDeterminer|wCounts) || r.toks[i+1].s == "new") {
				return i, true // "clips, I need one white one"
			}
			if w == "need" || w == "want" {
				if r.willDoAt(ci, hi, i, topic) {
					return i, true
				}
			}
		case "'ll", "gonna", "gotta", "going", "must", "have", "'ve", "got", "like", "will", "order", "buy":
			if c.mood&negated == 0 && !r.saidIn(c, "gone") && r.willDoAt(ci, hi, i, topic) {
				return i, true
			}
		}
	}
	if topic < 0 {
		return -1, false
	}
	switch r.toks[c.lo].s {
	case "when", "once", "till", "until":
		// "the right side's spring, when the junkyard gets another"
		for i := c.lo; i < c.hi && ci > 0 && r.clauses[ci-1].sentence == c.sentence && len(r.clauses[ci-1].acts) == 0 && !r.toks[c.lo-1].is(wLinking); i++ {
			switch r.toks[i].s {
			case "gets", "get", "finds", "find", "comes", "come", "arrives":
				return c.lo, false
			}
		}
	}
	for _, o := range c.opens {
		switch o.signal {
		case "fault", "damage":
			if o.hi == o.lo+1 && o.lo > c.lo && r.toks[o.lo-1].is(wDeterminer) {
				continue // "wipe off the drips"
			}
			if c.mood&other == 0 && !r.saidIn(c, "you") && !r.mendedNext(ci, hi, topic) {
				return o.lo, false
			}
		case "later", "again", "ordered":
			if c.mood&other == 0 && c.hi-c.lo <= 14 && !r.saidIn(c, "you") && r.toks[o.lo].s != "on" && !(r.when(o) && r.prevKind(o.lo).is(wLinking)) && (o.signal != "later" || r.toks[o.lo].s != "next" && !r.noPutOff(ci, o)) && !r.mendedNext(ci, hi, topic) {
				return o.lo, false // "and the right seals on Monday"
			}
		}
	}
	return -1, false
}

// willDoAt tells whether at a token it is said what somebody will do to the machine, or
// buy for it, and what: "I gotta order those", "I've the cover to put on".
func (r *reading) willDoAt(ci, hi, i, topic int) bool {
	c := &r.clauses[ci]
	v := -1
	switch w, n := r.toks[i].s, r.next(i); w {
	case "'ll", "gonna", "gotta", "must", "will":
		if w != "gonna" && w != "gotta" || r.ofMe(max(c.lo, i-3), i) {
			v = i + 1
		}
	case "going", "like", "need", "want":
		if n == "to" {
			v = i + 2
		}
	case "have", "'ve", "got":
		if n == "to" {
			v = i + 2
		} else {
			// "I've the cover to put on, and the two spacers to replace"
			for k := i + 1; k+1 < min(c.hi, i+7); k++ {
				if r.toks[k].s == "to" && r.toks[k-1].men >= 0 && (r.plainVerb(r.toks[k+1].s) || fetchVerbs.has(r.toks[k+1].s)) {
					v = k + 1
				}
			}
		}
	case "order", "buy":
		if p := r.prev(i); p == "to" || p == "'ll" || p == "gotta" || p == "gonna" || i == r.skipped(c) {
			return topic >= 0 || r.pronounIn(i+1, min(c.hi, i+4))
		}
		return false
	}
	if v < 0 || v >= c.hi || !r.ofMe(max(c.lo, i-4), i+1) {
		return false
	}
	for v < c.hi-1 && loosely.has(r.toks[v].s) {
		v++
	}
	w := r.toks[v].s
	if n := r.next(v); w == "take" && (n == "it" || n == "that") || w == "wash" && n == "my" {
		return false // "I'll take that": it will do
	}
	if saysOnly.has(w) || idleVerbs.has(w) || !r.presentVerb(w) && !fetchVerbs.has(w) {
		return false
	}
	for k := v + 1; k < r.clauses[hi-1].hi; k++ {
		if r.toks[k].s == "underneath" {
			return false // where viewers find it
		}
	}
	if topic < 0 && !r.pronounIn(v+1, min(c.hi, v+4)) {
		return false
	}
	return !r.saidAgain(w, hi)
}

// fetchVerbs are of what is got for a machine, idleVerbs of what is no work on one.
var (
	fetchVerbs = set("order buy get find ask fetch ring phone sort swill look renew redo fix mend repair true trim paint sharpen")
	idleVerbs  = set("go be call say tell show see leave let stop wait stand sit eat sleep drink have keep listen hang photograph film")
)

// saidAgain tells whether a verb is said again after a clause: the talk comes to it.
func (r *reading) saidAgain(verb string, from int) bool {
	for k := from; k < len(r.clauses); k++ {
		for i := r.clauses[k].lo; i < r.clauses[k].hi; i++ {
			if r.toks[i].is(wForm|wVerb) && (r.toks[i].s == verb || r.lemma1(r.toks[i].s) == verb) {
				return true
			}
		}
	}
	return false
}

// mendedNext tells whether something is done right after a sentence: what was told there
// is put right.
func (r *reading) mendedNext(ci, hi, topic int) bool {
	for k := hi; k < len(r.clauses) && k < hi+6 && r.since(r.clauses[hi-1].hi-1, r.clauses[k].lo) < 9; k++ {
		if c := &r.clauses[k]; !r.heardIn(k, k, "later", "ordered", "fault", "damage") {
			for _, ai := range c.acts {
				if a := &r.acts[ai]; a.happened() && r.mends(a, topic) {
					return true
				}
			}
		}
	}
	for k := ci; k < hi; k++ {
		for _, ai := range r.clauses[k].acts {
			if a := &r.acts[ai]; a.happened() && (a.action.Name == "adjust" || a.action.Name == "tighten" || a.action.Name == "fit") && k > ci {
				return true // "the dial's loose, so I nip it"
			}
		}
	}
	return false
}

// mends tells whether an act may put right what was told of a thing: it is done to it, or to
// what has no name.
func (r *reading) mends(a *act, topic int) bool {
	switch a.action.Name {
	case "inspect", "measure", "test", "set aside":
		return false
	}
	if len(a.things) == 0 && len(a.objects) == 0 {
		return true
	}
	t := r.mentions[topic].entry
	for _, x := range a.things {
		if x == t {
			return true
		}
	}
	return a.action.Name == "tighten" || a.action.Name == "adjust" || a.action.Name == "loosen"
}

// farOff tells of a time that is after the next use.
func (r *reading) farOff(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		switch w := r.toks[i].s; {
		case farTimes.has(w):
			return true
		case w == "again" && (r.next(i) == "after" || r.next(i) == "in"), w == "another" && (r.next(i) == "day" || r.next(i) == "time"), w == "wet" && r.next(i) == "day", w == "first" && lexicon.Singular(r.next(i)) == "load":
			return true
		}
	}
	return false
}

var farTimes = wordsOf("far times")
