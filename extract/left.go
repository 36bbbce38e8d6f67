package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// What is left open, told by how the talk is built rather than by a phrase: a value
// that is asked for and not at hand, a thing that is somewhere else, a count that
// falls short, work by any verb that is not done, something borrowed or made do with.

// amounts name a value where no list of figures does.
var amounts = set("amount length quantity sequence slack depth height spacing")

// norms are words of what a thing ought to be set to.
var norms = set("should supposed meant ought torqued tightened takes allowed")

// askedOf are the other words that asksValue looks at.
var askedOf = wordsOf("what a manual is asked")

// asksValue gives the token where a clause names a value or asks what one should
// be: "what these are meant to be", "how slack it's allowed to be", "the torque"; -1
// where it does not.
func (r *reading) asksValue(c *clause) int {
	for i := c.lo; i < c.hi; i++ {
		if !r.toks[i].is(wSeldom) {
			continue // every word that a case below begins with is marked in classes.go
		}
		w := r.toks[i].s
		switch {
		case adjusted.has(w) && i <= c.lo+2 && (i+1 == c.hi || r.next(i) == "i") && r.toks[i].men < 0:
			return i // "the gap, I haven't the gauge here"
		case (figures.has(w) || askedOf.has(w) && w != "what" && w != "how") && !r.ofTool(i) && !countless.has(r.prev(i)) && (!r.nextKind(i).is(wCounts) || r.nextKind(i).is(wPreposition)) && r.next(i) != "plate" && r.next(i) != "one" && !(w == "torque" && (pronounsObj.has(r.next(i)) || r.next(i) == "the")):
			return i
		case amounts.has(w) && (r.prev(i) == "the" || r.toks[max(i-1, 0)].men >= 0) && !r.toks[i].is(wPlace) && r.toks[i].men < 0:
			return i
		case w == "what" && i > c.lo && (r.toks[i-1].s == "not" || r.toks[i-1].s == "'s" || r.toks[i-1].s == "is" || r.toks[i-1].s == "than" || r.toks[i-1].s == "exactly"):
		case w == "what" || w == "how" && howMuch.has(r.next(i)):
			for k := i + 1; k < min(c.hi, i+9); k++ {
				n := r.toks[k].s
				if norms.has(n) || n == "go" && r.next(k) == "to" || (n == "are" || n == "'re") && r.next(k) == "in" {
					return i
				}
				if n == "i" || n == "you" && w == "what" {
					break
				}
			}
		}
	}
	return -1
}

// countless are words before "number" that make it no value.
var countless = set("part phone serial frame engine wrong odd good fair telephone house model any fault")

// torqued are what is named after the torque that it takes up: "a torque arm".
var torqued = wordsOf("torque arms and the like")

// ofTool tells whether a word is part of the name of something else: "torque wrench", "torque arm".
func (r *reading) ofTool(i int) bool {
	k := r.toks[i].men
	return r.toks[i].s == "torque" && torqued.has(r.next(i)) || k >= 0 && (r.mentions[k].kind&lexicon.Tool != 0 || r.mentions[k].head != r.toks[i].s && r.mentions[k].head != lexicon.Singular(r.toks[i].s))
}

// seeks are verbs of looking for what one does not know.
var seeks = wordsOf("ways of finding out")

// knows are verbs that, denied, leave a value open.
var knows = set("got get have know remember find found write wrote written lay guess guessing read see seen say said bought have made")

// notAtHand tells whether a clause says that something is to be sought, is not
// known, or stands in a paper that is elsewhere.
func (r *reading) notAtHand(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		switch {
		case seeks.has(w) && i > c.lo && r.willBefore(c, i) && !(w == "ask" && (r.saidIn(c, "me") || r.saidIn(c, "somebody") || r.saidIn(c, "someone"))):
			return true
		case knows.has(w) && r.notBefore(c, i) && !r.saidIn(c, "you") && r.next(i) != "of":
			return true
		case w == "escapes" || w == "homework" || w == "somewhere" && (r.saidIn(c, "upstairs") || r.saidIn(c, "house") || r.saidIn(c, "shed") || r.saidIn(c, "home")):
			return true
		case w == "not" && (r.next(i) == "in" || r.next(i) == "on"):
			for k := i + 2; k < min(c.hi, i+5); k++ {
				if printed.has(r.toks[k].s) {
					return true
				}
			}
		}
	}
	return false
}

// willBefore tells whether a verb is said to be still to come, by the speaker or
// somebody asked: "I'd have to ask", "need to know", "somebody look".
func (r *reading) willBefore(c *clause, i int) bool {
	for k := i - 1; k >= max(c.lo, i-4); k-- {
		switch w := r.toks[k].s; w {
		case "you", "they", "he", "she", "people", "don't", "not", "never", "didn't", "had", "did", "wouldn't":
			return false
		case "'ll", "will", "shall", "must", "gonna", "somebody", "someone", "anybody", "'d", "gotta":
			return true
		case "to":
			switch r.prev(k) {
			case "have", "need", "got", "want", "going", "me", "try", "'ve", "something", "need's":
				return r.word(k-2) != "you" && r.word(k-2) != "they" && r.prev(k) != "me" || r.word(k-2) == "remind"
			}
			return false
		}
	}
	return false
}

// notBefore tells whether a verb is denied: "I never did find out", "haven't got".
func (r *reading) notBefore(c *clause, i int) bool {
	for k := i - 1; k >= max(c.lo, i-4); k-- {
		switch r.toks[k].s {
		case "not", "never", "haven't", "don't", "didn't", "can't", "couldn't", "ain't":
			return k == c.lo || !subjects.has(r.toks[k-1].s) || r.ofMe(k-1, k)
		}
	}
	return false
}

// givenIn tells whether a figure of the machine stands in the clauses from lo to hi.
func (r *reading) givenIn(lo, hi int) bool {
	for k := max(lo, 0); k <= min(hi, len(r.clauses)-1); k++ {
		for _, q := range r.clauses[k].qtys {
			switch r.qtys[q].Kind {
			case normalize.Torque, normalize.Pressure, normalize.Volume, normalize.Angle:
				return true
			}
		}
	}
	return false
}

// valueMissing finds a value that is named or asked for and not at hand, in one
// breath or the next: "there's a proper value but it's on the service sheet".
func (r *reading) valueMissing(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	if c.mood&leavesNothing != 0 {
		return -1, -1
	}
	at := r.asksValue(c)
	if at < 0 {
		return -1, -1
	}
	from, to := r.nearBy(ci, 0, 4, 12)
	if r.givenIn(from, to) || r.pastTold(c) && !r.saidIn(c, "never") {
		return -1, -1
	}
	for k := from; k <= to; k++ {
		n := &r.clauses[k]
		if r.dayIn(n) && !r.notAtHand(n) {
			break // "Timing I'm doing tomorrow": the work, not its value
		}
		if n.mood&leavesNothing != 0 {
			continue
		}
		if k > ci && len(n.acts) > 0 && r.acts[n.acts[0]].happened() && ledgerActs[r.acts[n.acts[0]].action.Name] != "" {
			break // the work goes on
		}
		if r.notAtHand(n) && (k == ci || r.goesOnWith(n)) {
			return at, at + 1
		}
	}
	return -1, -1
}

// leavesNothing are the moods in which nothing is left open.
const leavesNothing = other | conditional | aside | greeting | listing

// goesOnWith tells whether a clause goes on with what was said: it names no other
// thing of the machine, or speaks of a paper.
func (r *reading) goesOnWith(c *clause) bool {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; r.topical(m) && direct(m) && m.kind&lexicon.Fastener != 0 {
			return false
		}
	}
	return true
}

// What is not so: by what is denied of a thing it is told what is missing.
var (
	notTight  = set("tight tightened torqued nipped snug done pulled clamped pinched squeezed")
	notOn     = set("fitted connected plugged hooked clipped bolted screwed attached installed coupled refitted reconnected mounted")
	notLocked = set("staked wired wirelocked lockwired pinned peened locked cottered")
	// between a denial and what is denied
	shortOf = set("been even really actually quite fully properly all the way yet anything like nearly near any too as such have had got to be")
)

// notSo finds "none of them's tight", "they're not wired", "the strap I haven't hooked
// up": a state or a work that is denied of what is on the machine, with the signal of
// what is missing for it.
func (r *reading) notSo(ci int) (oc openCue, ok bool) {
	c := &r.clauses[ci]
	if c.mood&(other|conditional|asked|hypothetical|aside|greeting|listing) != 0 {
		return oc, false
	}
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		state, act := false, false
		switch w {
		case "isn't", "aren't", "ain't":
			state = true
		case "not":
			p := r.prev(i)
			state = i > c.lo && (p == "'s" || p == "is" || p == "are" || p == "'re")
			act = p == "'ve" || p == "have" || i > c.lo && (p == "and" || p == "but") && (r.saidIn(c, "'ve") || r.saidIn(c, "have") || ci > 0 && r.clauses[ci-1].sentence == c.sentence && r.saidIn(&r.clauses[ci-1], "'ve"))
		case "hasn't":
			state = true
		case "haven't", "never":
			act = i > c.lo && (r.ofMe(max(c.lo, i-2), i) || r.toks[i-1].s == "but") || i == c.lo
			state = w == "haven't" && r.next(i) == "been"
		case "none", "neither", "nothing":
			state = r.next(i) == "of" || w == "nothing"
		}
		if !state && !act {
			continue
		}
		k := i + 1
		for k < c.hi && (shortOf.has(r.toks[k].s) || w == "none" && (r.toks[k].s == "of" || pronounsObj.has(r.toks[k].s) || r.toks[k].s == "'s" || r.toks[k].s == "is" || r.toks[k].s == "are" || r.toks[k].s == "'re") || w == "neither" && r.toks[k].men < 0 && (stopWords.has(r.toks[k].s) || pronounsObj.has(r.toks[k].s))) {
			k++
		}
		if k >= c.hi {
			continue
		}
		p := r.toks[k].s
		switch {
		case act && p == "done" || state && p == "done":
			switch {
			case r.saidIn(c, "up"):
				return openCue{i, k + 1, "un-tight"}, true
			}
			return oc, false // another rule's
		case notTight.has(p) && p != "done" && !r.saidIn(c, "enough") && (state && (k+1 >= c.hi || r.toks[k].brk >= brkComma || stateEnds.has(r.next(k)) || p != "tight" && (r.next(k) == "up" || r.next(k) == "down")) || act && w != "never"):
			return openCue{i, k + 1, "un-tight"}, true
		case notOn.has(p):
			return openCue{i, k + 1, "un-on"}, true
		case notLocked.has(p) && !(p == "wired" && (r.next(k) == "to" || r.next(k) == "up" || r.next(k) == "in")):
			return openCue{i, k + 1, "un-locked"}, true
		case p == "wired":
			return openCue{i, k + 1, "un-done"}, true
		case (w == "none" || w == "neither" || w == "hasn't" || w == "haven't" && state) && r.prev(k) == "been" && r.toks[k].is(wForm) && !leavesNone.has(p), w == "never" && i > c.lo && r.toks[i-1].s == "but" && r.toks[k].is(wForm) && !leavesNone.has(p):
			return openCue{i, k + 1, "un-done"}, true
		case (r.prev(k) == "had" || r.word(k-2) == "had") && k > i+1 && r.toks[k].men >= 0 && r.mentions[r.toks[k].men].kind&lexicon.Consumable != 0 && w != "never":
			return openCue{i, k + 1, "un-done"}, true // "neither's had grease yet"
		case p == "bent" && (r.saidIn(c, "over") || r.saidIn(c, "back") || r.saidIn(c, "down")):
			return openCue{i, k + 1, "un-locked"}, true
		case (p == "lined" || p == "set" || p == "squared" || p == "trued" || p == "aligned" || p == "adjusted" || p == "evened" || p == "levelled" || p == "parked" || p == "bled" || p == "greased" || p == "primed") && act && w == "never":
			return openCue{i, k + 1, "un-done"}, true
		case state && w != "nothing" && !r.saidIn(c, "you") && strings.HasSuffix(p, "ed") && (k+1 >= c.hi || r.toks[k].brk >= brkComma || stateEnds.has(r.next(k)) || (r.next(k) == "up" || r.next(k) == "in") && (k+2 >= c.hi || stateEnds.has(r.word(k+2)))) && r.leftUndone(p) != "":
			return openCue{i, k + 1, r.leftUndone(p)}, true // "the chain's not tensioned yet"
		case state && w != "nothing" && (p == "lined" || p == "squared" || p == "evened" || p == "level" || p == "parallel" || p == "square" && k+1 >= c.hi || p == "central" || p == "centred"):
			return openCue{i, k + 1, "un-done"}, true
		}
	}
	return oc, false
}

// leftUndone gives the signal of a work that is denied by its participle, "" where the
// word tells no work that a machine waits for.
func (r *reading) leftUndone(participle string) string {
	for _, l := range r.lex.Lemmas(participle) {
		ps := r.lex.Patterns(l)
		if len(ps) == 0 {
			continue
		}
		switch ps[0].Action.Name {
		case "adjust", "bleed", "lubricate", "fill":
			return "un-done"
		case "tighten", "torque":
			return "un-tight"
		case "lock":
			return "un-locked"
		}
	}
	return ""
}

// unlisted are works that only their participles tell.
var unlisted = set("synced synchronised synchronized balanced calibrated indexed timed primed paired coded")

// stateEnds are what may follow a state at the end of what is said of it.
var stateEnds = set("yet at for because so until till by now as in on and just though either")

// amiss tells whether a state that is denied is put right in the next breaths: by an
// act that brings it about.
func (r *reading) amiss(ci int, actions ...string) bool {
	_, hi := r.nearBy(ci, 0, 4, 12)
	own := r.clauses[ci].mentions
	if len(own) == 0 && ci > 0 {
		own = r.clauses[ci-1].mentions // "it's not level"
	}
	for k := ci; k <= hi; k++ {
		if k > ci && actions[0] == "tighten" && r.tightNow(&r.clauses[k]) {
			return true
		}
		for _, ai := range r.clauses[k].acts {
			a := &r.acts[ai]
			if !a.happened() || a.mood&(announced|negated) != 0 || k == ci && a.lo <= r.clauses[ci].lo {
				continue
			}
			for _, n := range actions {
				if a.action.Name == n && k > ci && !r.onOthers(a, own) {
					return true
				}
			}
		}
	}
	return false
}

// tightNow tells of "now it's tight", "that's tight": what was not is.
func (r *reading) tightNow(c *clause) bool {
	if c.mood&notWork != 0 || len(c.mentions) > 0 {
		return false
	}
	for i := c.lo + 1; i < c.hi; i++ {
		if r.toks[i].s == "tight" {
			switch r.toks[i-1].s {
			case "'s", "is", "are", "'re", "that's", "they're", "it's", "nice":
				return true
			}
		}
	}
	return false
}

// onOthers tells whether an act names its things, and none of them is among what was
// spoken of: "it's not level … lid on".
func (r *reading) onOthers(a *act, spoken []int) bool {
	if len(a.objects) == 0 || len(spoken) == 0 {
		return false
	}
	for _, mi := range a.objects {
		for _, k := range spoken {
			if r.sameTopic(mi, k) {
				return false
			}
		}
	}
	return true
}

// denies gives the kind of what is told not to be done, where that is a tightening or
// a lock: "I haven't nipped the lock nut up".
func (r *reading) denies(ci int, oc openCue) string {
	c := &r.clauses[ci]
	if w := r.toks[oc.lo].s; w != "haven't" && w != "not" && w != "never" && w != "ain't" {
		return ""
	}
	for i := oc.lo; i < min(c.hi, oc.hi+3); i++ {
		switch w := r.toks[i].s; {
		case w == "tightened" || w == "torqued" || w == "nipped" || w == "pinched", w == "tight" && i < oc.hi:
			return NotTorqued
		case notLocked.has(w), bends.has(w) && (r.saidIn(c, "tab") || r.saidIn(c, "tabs") || r.saidIn(c, "ears") || r.saidIn(c, "legs")):
			return LockMissing
		case (w == "replaced" || w == "renewed") && r.spoilt(ci):
			return NotRefitted
		}
	}
	return ""
}

// wantedKind gives the kind of what a thing is said to want: "wants doing up" is to be
// tightened, "wants wiring" to be locked, "needs putting back" is off.
func (r *reading) wantedKind(oc openCue) string {
	last := r.toks[oc.hi-1].s
	for i := oc.lo; i < min(oc.hi+2, len(r.toks)); i++ {
		if m := r.toks[i].men; m >= 0 && i < oc.hi && r.mentions[m].kind&lexicon.Tool != 0 && r.mentions[m].kind&(lexicon.Part|lexicon.Fastener) == 0 {
			return NotTorqued
		}
		if m := r.toks[i].men; m >= 0 && i < oc.hi && i > oc.lo && r.lockWanted(&r.clauses[r.toks[i].cl], i) > 0 {
			return LockMissing
		}
		switch w, next := r.toks[i].s, r.next(i); {
		case w == "tightening", w == "torquing", w == "nipping", w == "doing" && next == "up", w == "pulling" && (next == "up" || next == "down"), w == "pinching", w == "cranking", w == "snugging":
			return NotTorqued
		case w == "staking", w == "cottering", w == "pinning", w == "lockwiring", w == "wirelocking":
			return LockMissing
		case (w == "putting" || w == "fitting" || w == "going") && (next == "back" || next == "on") && strings.HasSuffix(last, "ing"), w == "refitting", w == "reconnecting":
			return NotRefitted
		}
	}
	return Unfinished
}

// bends are forms of verbs by which a tab or a pin is made to hold.
var bends = set("knocked bent folded tapped hammered turned peened flattened")

// toBe finds "it's to be painted", "got to be bled, but not like this": work that is to
// be done to a thing, where nothing says that it is done now.
func (r *reading) toBe(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	if c.mood&(leavesNothing|asked|hypothetical) != 0 {
		return -1, -1
	}
	for i := c.lo + 1; i+2 < c.hi; i++ {
		if r.toks[i].s != "to" || r.toks[i+1].s != "be" || !r.toks[i+2].is(wForm) || r.often(c) || strings.HasSuffix(r.toks[i+2].s, "ing") || r.toks[i+2].s == "used" {
			continue
		}
		p := r.toks[i-1].s
		plain := p == "'s" || p == "is" || p == "are" || p == "'re" || p == "still" || p == "yet"
		must := (p == "got" || p == "has" || p == "have" || p == "need" || p == "needs") && r.obstacle(ci, i+3)
		if (plain || must) && !r.saidIn(c, "you") && !r.setAbout(ci) {
			return i - 1, i + 3
		}
	}
	return -1, -1
}

// obstacle tells whether something is said to be in the way of what has to be done:
// "but not with it on its side", "and I can't find my meter".
func (r *reading) obstacle(ci, from int) bool {
	_, hi := r.nearBy(ci, 0, 2, 9)
	for k := ci; k <= hi; k++ {
		n := &r.clauses[k]
		lo := n.lo
		if k == ci {
			lo = from
		}
		for i := lo; i < n.hi; i++ {
			w, next := r.toks[i].s, r.next(i)
			switch {
			case w == "not" && (i == n.lo || r.toks[i-1].s == "but" || r.toks[i-1].s == "and") || w == "but" && next == "not",
				w == "can't" && i > n.lo && r.ofMe(i-1, i), w == "haven't" && i > n.lo && r.ofMe(i-1, i), w == "too" && (next == "hot" || next == "dark" || next == "late" || next == "cold" || next == "wet"),
				w == "ran" && next == "out", w == "run" && next == "out" && n.lo < i && r.toks[i-1].s == "'ve", days.has(w):
				return true
			}
		}
	}
	return false
}

// absent finds what is told not to be on the machine: "the guard's still to go on",
// "I've a washer over", "there isn't one in now",
// "five bolts, and I've put back four".
func (r *reading) absent(ci int) (oc openCue, ok bool) {
	c := &r.clauses[ci]
	if c.mood&(other&^asked|conditional|aside|greeting|listing) != 0 {
		return oc, false
	}
	cue := func(lo, hi int) (openCue, bool) { return openCue{lo, min(hi, c.hi), "absent"}, true }
	for i := c.lo; i < c.hi; i++ {
		w, n1, n2 := r.toks[i].s, r.next(i), r.word(i+2)
		switch w {
		case "to":
			// "'s still to go on", "to go back in yet"
			if (n1 == "go" || n1 == "come") && (inPlace(n2) || n2 == "back") && i > c.lo && (r.stillBefore(c, i) || r.word(c.hi-1) == "yet") {
				return cue(i, i+3)
			}
		case "over", "left", "spare":
			// "I've a washer over", "one spring left in the box"
			if k := r.toks[i-1+b2i(i == c.lo)].men; i > c.lo && k >= 0 && r.mentions[k].hi == i && r.topical(&r.mentions[k]) && c.mood&negated == 0 &&
				(w != "left" || i+1 >= c.hi && r.leftOver(c, &r.mentions[k]) || n1 == "over" || n1 == "in" || n1 == "here" || n1 == "on") && (w != "over" || i+1 >= c.hi || r.toks[i].brk >= brkComma || n1 == "which" || n1 == "and") && r.hasOne(c, &r.mentions[k]) {
				return cue(r.mentions[k].from, i+1)
			}
		case "putting", "refitting", "put", "refit":
			// "no point putting it on until", "I'll not put the tray back in"
			if i > c.lo && r.prev(i) == "not" && w == "putting" && r.ofMe(max(c.lo, i-3), i) && r.toks[c.lo].men >= 0 && r.mentions[r.toks[c.lo].men].kind&lexicon.Part != 0 {
				return cue(c.lo, i+1) // "seat I am not putting"
			}
			if !r.backOn(c, i) || i == c.lo {
				continue
			}
			p := r.prev(i)
			if p == "not" && r.ofMe(max(c.lo, i-3), i) {
				return cue(i-1, i+1)
			}
		case "isn't", "not", "ain't":
			// "there isn't one in", "there's not one on it now"
			if w == "not" && r.prev(i) != "'s" || n1 != "one" {
				continue
			}
			if p := r.word(i - 1 - b2i(w == "not")); p == "there" && !r.valueNamed(ci) && (ci == 0 || !r.valueNamed(ci-1) && r.asksValue(&r.clauses[ci-1]) < 0) && (n2 == "now" || n2 == "in" || n2 == "there" || i+2 >= c.hi) {
				return cue(i-1, i+3)
			}
		case "no":
			// "no pin in it", "no cotter yet"
			k := r.toks[min(i+1, c.hi-1)].men
			if k < 0 && i+2 < c.hi && !r.toks[i+1].is(wStop|wPreposition|wCounts|wSubject) {
				k = r.toks[i+2].men // "no rubber cap"
			}
			if k < 0 || r.mentions[k].lo > i+2 || !r.topical(&r.mentions[k]) || r.mentions[k].kind&(lexicon.Part|lexicon.Fastener) == 0 || r.mentions[k].kind&lexicon.Consumable != 0 {
				continue
			}
			m := &r.mentions[k]
			if !r.locks(m) && r.lacksOne(c, m) {
				if lexicon.Singular(m.head) == "clip" && r.ofPin(ci) {
					return openCue{i, m.hi, "none"}, true
				}
				return openCue{i, m.hi, "lacking"}, true
			}
			if m.lo != i+1 {
				continue
			}
			end, after := r.word(m.hi), r.next(m.hi)
			if m.hi >= c.hi {
				end = ""
			}
			if p := r.prev(i); i > c.lo && (p == "needs" || p == "need" || p == "takes" || p == "has" || p == "with") {
				continue
			}
			if (end == "in" && (m.hi+1 >= c.hi || after == "it" || after == "there" || after == "them" || after == "at") || end == "yet" || end == "through") && !r.says(m.hi, c.hi, []string{"on", "this"}) {
				return cue(i, m.hi+1)
			}
		case "find":
			// "the clip I've yet to find"
			if r.prev(i) == "to" && (r.word(i-2) == "yet" || r.word(i-2) == "still") {
				return cue(i-2, i+1)
			}
		case "comes", "come", "coming":
			// "it comes back on Saturday"
			if n1 == "back" && r.laterIn(c, i+2) && c.mood&negated == 0 && !r.saidIn(c, "i") {
				return cue(i, i+2)
			}
		case "can", "could":
			// "it can go on at the end of the week", "the seat can stay indoors"
			if i == c.lo || r.toks[i-1].men < 0 && !pronounsObj.has(r.toks[i-1].s) || c.mood&asked != 0 {
				continue
			}
		}
	}
	// "the pin's through and the hairpin's not", "but the little keeper isn't"
	if n := c.hi - 1; n > c.lo && ci > 0 && c.hi-c.lo <= 7 && (r.toks[n].s == "isn't" || r.toks[n].s == "aren't" || r.toks[n].s == "not" && (r.toks[n-1].s == "'s" || r.toks[n-1].s == "is" || r.toks[n-1].s == "are" || r.toks[n-1].s == "'re")) {
		k := n - 1
		if r.toks[n].s == "not" {
			k--
		}
		if k >= c.lo && r.toks[k].men >= 0 && r.topical(&r.mentions[r.toks[k].men]) && r.since(r.clauses[ci-1].lo, c.lo) < 8 {
			for i := r.clauses[ci-1].lo; i < r.clauses[ci-1].hi; i++ {
				if w := r.toks[i].s; (w == "in" || w == "on" || w == "through" || w == "back") && r.clauses[ci-1].mood&negated == 0 {
					return openCue{r.mentions[r.toks[k].men].from, c.hi, "absent"}, true
				}
			}
		}
	}
	if lo, hi := r.short(ci); lo >= 0 {
		return openCue{lo, hi, "absent"}, true
	}
	return oc, false
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// days are what things are put off to.
var days = wordsOf("days")

// stillBefore tells of "still", "yet", "got" right before a token, the verb with it.
func (r *reading) stillBefore(c *clause, i int) bool {
	for k := i - 1; k >= max(c.lo, i-3); k-- {
		if w := r.toks[k].s; w == "still" || w == "yet" {
			return true
		}
	}
	return false
}

// backOn tells whether a verb of putting has "on", "in" or "back" after it, and no
// tool or paste is what is put.
func (r *reading) backOn(c *clause, i int) bool {
	for k := i + 1; k < min(c.hi, i+7); k++ {
		if m := r.toks[k].men; m >= 0 && r.mentions[m].kind&(lexicon.Part|lexicon.Fastener) == 0 {
			return false
		}
		if w := r.toks[k].s; inPlace(w) || w == "back" {
			return true
		}
	}
	return false
}

// laterIn tells whether a clause says, from a token on, that something is for later.
func (r *reading) laterIn(c *clause, from int) bool {
	for _, o := range c.opens {
		if o.signal == "later" && o.lo >= from-1 {
			return true
		}
	}
	for i := from; i < c.hi; i++ {
		if days.has(r.toks[i].s) {
			return true
		}
		switch r.toks[i].s {
		case "when", "once", "later", "tomorrow", "end", "after", "last":
			return true
		}
	}
	return false
}

// leftOver tells of "I've one spring left": a piece that a person has, not "no cage left" or
// "two legs left" on a thing.
func (r *reading) leftOver(c *clause, m *mention) bool {
	return r.ofMe(c.lo, m.from) && m.kind&lexicon.Consumable == 0
}

// hasOne tells whether a clause says that somebody has a thing: "I've a", "there's one".
func (r *reading) hasOne(c *clause, m *mention) bool {
	for k := m.from - 1; k >= max(c.lo, m.from-4); k-- {
		switch r.toks[k].s {
		case "have", "'ve", "got", "there's", "'s", "with", "have'nt", "is":
			return true
		}
	}
	return false
}

// short finds a count that falls short of what came off: "three out of the four went
// back on", "that was five bolts and I've put back four".
func (r *reading) short(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	counts := false
	for i := c.lo; i < c.hi && !counts; i++ {
		counts = r.toks[i].is(wCountOf)
	}
	if !counts || c.mood&negated != 0 || !(r.saidIn(c, "back") || r.saidIn(c, "in") || r.saidIn(c, "on") || r.saidIn(c, "holes")) {
		return -1, -1
	}
	for i := c.lo; i < c.hi; i++ {
		if !r.toks[i].is(wCountOf) {
			continue
		}
		a := countOf[r.toks[i].s]
		if w := r.word(i + 2); r.next(i) == "of" && (w == "the" || w == "my") && countOf[r.word(i+3)] > a && (r.word(i+4) == "are" || r.word(i+4) == "'re") && (inPlace(r.word(i+5)) || r.word(i+5) == "back") {
			return i, i + 6 // "seven of the eight are in"
		}
		if r.next(i) == "out" && r.word(i+2) == "of" || r.next(i) == "of" && r.toks[max(i-1, 0)].s == "only" {
			for k := i + 2; k < min(c.hi, i+6); k++ {
				if b := countOf[r.toks[k].s]; b > a {
					return i, k + 1
				}
			}
		}
		if m := r.toks[min(i+1, c.hi-1)].men; m >= 0 && (r.word(r.mentions[m].hi) == "and" || r.word(r.mentions[m].hi) == "for") && r.word(r.mentions[m].hi+2) == "holes" && countOf[r.word(r.mentions[m].hi+1)] > a {
			return i, r.mentions[m].hi + 3 // "eight screws and nine holes"
		}
		if r.prev(i) == "back" && (r.word(i-2) == "put" || r.word(i-2) == "going" || r.word(i-2) == "gone") {
			for k := i - 3; k >= max(0, i-12); k-- {
				if b := countOf[r.toks[k].s]; b > a && r.toks[k].qty < 0 {
					return k, i + 1
				}
			}
		}
	}
	return -1, -1
}

// either finds a statement that gives two of something and cannot say which: "a ninety
// two or a ninety five", "in the top hole. Or the one below."
func (r *reading) either(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	if r.orCount(ci) {
		return c.lo, c.hi
	}
	if c.mood&(leavesNothing|asked) != 0 || !r.saidIn(c, "or") || r.saidIn(c, "you") || r.saidIn(c, "whatever") || r.saidIn(c, "do") || r.saidIn(c, "either") || r.ofTools(c) {
		return -1, -1
	}
	for i := c.lo + 1; i+1 < c.hi; i++ {
		if r.toks[i].s != "or" {
			continue
		}
		a, b := i-1, i+1
		for b < c.hi-1 && (r.toks[b].s == "a" || r.toks[b].s == "an" || r.toks[b].s == "is" || r.toks[b].s == "it" || r.toks[b].s == "'s" || r.toks[b].s == "maybe" || len(r.toks[b].s) == 1 && !r.toks[b].is(wCounts)) {
			b++
		}
		if b == i+1 && r.toks[i-1].qty < 0 || !r.toks[b].is(wCounts) || !r.toks[a].is(wCounts) && r.toks[a].men < 0 || r.toks[a].qty >= 0 && r.toks[a].qty == r.toks[b].qty || r.toks[b].s == "so" {
			continue
		}
		said := false
		for k := a; k >= max(c.lo, a-7); k-- {
			said = said || r.toks[k].is(wCounts)
		}
		if !said {
			continue
		}
		for k := i - 1; k >= c.lo; k-- {
			switch r.toks[k].s {
			case "it's", "'s", "is", "are", "'re", "was", "takes", "reads":
				return i, b + 1
			}
		}
	}
	return -1, -1
}

// orCount tells of "that's an eleven | or it's a ten": a second figure for the same
// thing in a clause of its own.
func (r *reading) orCount(ci int) bool {
	c := &r.clauses[ci]
	if ci == 0 || r.toks[c.lo].s != "or" || c.hi-c.lo > 9 || r.clauses[ci-1].sentence != c.sentence || (c.mood|r.clauses[ci-1].mood)&(leavesNothing|asked|hypothetical) != 0 || r.saidIn(c, "you") || r.saidIn(&r.clauses[ci-1], "you") || r.ofTools(c) || r.ofTools(&r.clauses[ci-1]) {
		return false
	}
	return r.oneCounted(c) && r.oneCounted(&r.clauses[ci-1])
}

// oneCounted tells whether a clause has "a five", "it's a seven and a half": a figure by
// its article.
func (r *reading) oneCounted(c *clause) bool {
	for i := c.lo + 1; i < c.hi; i++ {
		if r.toks[i].is(wCounts) && r.toks[i].s != "one" && articles.has(r.toks[i-1].s) && r.toks[i-1].s != "the" && r.ofMachine(c) {
			return true
		}
	}
	return false
}

// wanted are what says which size there ought to be.
var wanted = set("wants takes needs calls should supposed meant stamped minimum rated asks must ought")

// misfit finds what is told to be of another size than it should be: "the pin's a
// three, it wants a four", "a plain one where there should be a ten nine".
func (r *reading) misfit(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	if c.mood&(leavesNothing|asked) != 0 {
		return -1, -1
	}
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		if !r.toks[i].is(wSeldom) || !wanted.has(w) || i > c.lo && (r.toks[i-1].s == "you" || r.toks[i-1].s == "i" || r.toks[i-1].s == "book") || w == "should" && r.next(i) != "be" && r.next(i) != "have" {
			continue
		}
		k := i + 1
		for k < c.hi && (r.toks[k].s == "a" || r.toks[k].s == "an" || r.toks[k].s == "be" || r.toks[k].s == "to" || r.toks[k].s == "for" || r.toks[k].s == "at" || r.toks[k].s == "least" || r.toks[k].s == "have" || r.toks[k].s == "been" || r.toks[k].s == "minimum") {
			k++
		}
		if k >= c.hi || !r.toks[k].is(wCounts) || r.toks[k].s == "one" || r.toks[k].qty >= 0 && !ours(r.qtys[r.toks[k].qty].Kind) {
			continue
		}
		// the size that it has, said before
		from, _ := r.nearBy(ci, 2, 0, 7)
		for j := i - 1; j >= r.clauses[from].lo; j-- {
			for j > r.clauses[from].lo && r.toks[j].is(wCounts) && (r.toks[j-1].is(wCounts) || r.toks[j-1].s == "point") {
				j--
			}
			if r.toks[j].s == "no" || r.clauses[r.toks[j].cl].sentence != c.sentence && int(r.toks[j].cl) < ci-1 {
				break
			}
			if !r.toks[j].is(wCounts) || r.toks[j].s == "one" || r.toks[j].s == "two" && r.toks[j].qty < 0 && r.toks[min(j+1, i)].men >= 0 {
				continue
			}
			p := r.prev(j)
			if p == "a" || p == "an" {
				p = r.word(j - 2)
			}
			if (p == "'s" || p == "is" || p == "it's" || p == "are" || p == "'re" || p == "to" || p == "got" || p == "just" || p == "only") && r.toks[j].s != r.toks[k].s && !r.saysIn(r.clauses[r.toks[j].cl].lo, j) {
				return j, k + 1
			}
			break
		}
	}
	return -1, -1
}

// saysIn tells whether somebody or something is said to say, between two tokens.
func (r *reading) saysIn(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if states.has(r.toks[i].s) || printed.has(r.toks[i].s) {
			return true
		}
	}
	return false
}

// lent are verbs of taking from elsewhere what is not there to stay.
var lent = set("robbed borrowed nicked scrounged stolen pinched lent loaned cannibalised cannibalized")

// leadsWant are the other words that forWant looks at.
var leadsWant = set("instead place where")

// scraps are what is no material for a part to stay.
var scraps = wordsOf("what is no material")

// wasThere tells whether the clauses right before one say that a part was there: "but there was a
// spacer | and I don't see the spacer".
func (r *reading) wasThere(ci int) bool {
	for k := ci; k >= max(0, ci-2) && r.since(r.clauses[k].lo, r.clauses[ci].lo) < 10; k-- {
		c := &r.clauses[k]
		for i := c.lo; i+2 < c.hi; i++ {
			if w := r.toks[i+1].s; r.toks[i].s == "there" && (w == "was" || w == "were" || w == "should" || w == "'d") {
				if mi := r.nameWithin(c, i+2, 5); mi >= 0 && r.mentions[mi].kind&(lexicon.Part|lexicon.Fastener) != 0 {
					return true
				}
			}
		}
	}
	return false
}

// forWant finds what is told to be in a thing's place for want of it: borrowed, cut
// from scrap, held with tape, of another kind and in the place of it.
func (r *reading) forWant(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	if c.mood&(leavesNothing|asked|negated) != 0 {
		return -1, -1
	}
	if lo, hi = r.wantSaid(ci); lo >= 0 && r.youCould(c) {
		return -1, -1
	}
	return lo, hi
}

// wantSaid is forWant for what is said, whoever would do it.
func (r *reading) wantSaid(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	if i := r.skipped(c); i+1 < c.hi && r.toks[i].s == "no" {
		// "No gasket, so that's silicone on its own"
		if k := r.toks[i+1].men; k >= 0 && r.mentions[k].lo == i+1 && r.mentions[k].kind&(lexicon.Part|lexicon.Fastener) != 0 && r.madeDo(ci) {
			return i, r.mentions[k].hi
		}
	}
	for i := c.lo; i < c.hi; i++ {
		if !r.toks[i].is(wSeldom) {
			continue // every word that a case below begins with is marked in classes.go
		}
		w, n1 := r.toks[i].s, r.next(i)
		switch {
		case lent.has(w) && i > c.lo && (r.ofMe(max(c.lo, i-3), i) || r.prev(i) == "'s" || r.prev(i) == "is" || r.prev(i) == "been"):
			from := false
			for k := i + 1; k < c.hi; k++ {
				from = from || r.toks[k].s == "off" || r.toks[k].s == "from" || r.toks[k].s == "out"
			}
			if from && !r.ofTools(c) && !r.saysIn(r.clauses[max(ci-1, 0)].lo, c.hi) {
				return i, i + 1
			}
		case (w == "from" || w == "off") && i > c.lo && (n1 == "a" || n1 == "an" || n1 == "my" || n1 == "his" || n1 == "her") && r.toks[i-1].men >= 0 && r.mentions[r.toks[i-1].men].kind&(lexicon.Part|lexicon.Fastener) != 0 && (donors.has(r.word(i+2)) || donors.has(r.word(i+3)) && i+3 < c.hi):
			if (r.saidIn(c, "put") || r.saidIn(c, "used") || r.saidIn(c, "fitted") || r.saidIn(c, "it's") || r.saidIn(c, "'s")) && !r.pastTold(c) || r.saidIn(c, "'ve") || r.saidIn(c, "have") {
				return i, i + 2 // "I've put a bolt from a bicycle"
			}
		case scraps.has(w) && i > c.lo:
			// "I've cut a washer out of a milk bottle"
			out := -1
			for k := max(c.lo, i-5); k < i; k++ {
				if s := r.toks[k].s; (s == "out" || s == "from") && out < 0 {
					out = k
				}
			}
			for k := out - 1; out > 0 && k >= max(c.lo, out-6); k-- {
				if m := r.toks[k].men; makes.has(r.toks[k].s) && r.partAfter(c, k+1) >= 0 && r.mentions[r.partAfter(c, k+1)].hi <= out || m >= 0 && k == c.lo && r.mentions[m].kind&lexicon.Part != 0 {
					return i, i + 1
				}
			}
		case makeshifts.has(w) && (r.prev(i) == "with" || r.prev(i) == "by" || r.word(i-2) == "with" || r.word(i-2) == "by") && i-2 >= c.lo:
			for k := max(c.lo, i-6); k < i; k++ {
				if s := r.toks[k].s; (s == "held" || s == "tied" || s == "strapped" || s == "taped") && (r.prev(k) == "'s" || r.prev(k) == "is" || r.prev(k) == "are" || r.prev(k) == "'re" || r.toks[max(k-1, 0)].men >= 0) && !r.saidIn(c, "years") && !r.saidIn(c, "was") && !r.saidIn(c, "been") {
					return i, i + 1
				}
			}
		}
	}
	return -1, -1
}

// donors are other things that a part may be taken from to stand in.
var donors = wordsOf("what other things a part is taken from")

// makes are verbs of making a part.
var makes = set("cut made turned filed fashioned whittled bent folded carved rolled")

// partAfter gives the mention of a part that begins soon after a token.
func (r *reading) partAfter(c *clause, i int) int {
	for k := i; k < min(c.hi, i+4); k++ {
		if m := r.toks[k].men; m >= 0 && r.mentions[m].kind&(lexicon.Part|lexicon.Fastener) != 0 {
			return int(m)
		}
	}
	return -1
}

// begun are forms of verbs that tell of a fastening not brought to its end.
var begun = set("run spun wound started caught nipped pinched held snugged")

// partial finds a fastening that is told not to be at its end: "just run in", "in and
// loose so it can settle", "my torque wrench is at work".
func (r *reading) partial(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	if c.mood&(leavesNothing|asked|hypothetical) != 0 {
		return -1, -1
	}
	for i := c.lo; i < c.hi; i++ {
		w, n1, n2 := r.toks[i].s, r.next(i), r.word(i+2)
		p := ""
		if i > c.lo {
			p = r.toks[i-1].s
		}
		switch {
		case (w == "just" || w == "only" || w == "barely") && begun.has(n1) && n1 != "held" && n2 != "it" && n2 != "them" && n2 != "the" && n2 != "that":
			if p == "'s" || p == "is" || p == "are" || p == "'re" || p == "both" || p == "all" || p == "'ve" && n1 != "run" && n1 != "started" || i > c.lo && r.toks[i-1].men >= 0 {
				return i, i + 2
			}
		case (w == "loose" || w == "loosely") && i > c.lo && c.mood&negated == 0:
			if p == "come" || p == "comes" || p == "came" || p == "break" || p == "broke" || p == "work" || p == "works" || p == "crack" || p == "knock" || p == "get" || p == "gets" || p == "too" || p == "was" || p == "this" || p == "a" || p == "the" || p == "it" || p == "them" || r.saidIn(c, "slacken") || len(c.acts) > 0 && r.acts[c.acts[0]].action.Name == "slacken" {
				continue
			}
			if (i+1 == c.hi || r.toks[i].brk >= brkComma) && r.putsOn(c) {
				return i, i + 1 // "I'm putting the flange up loose"
			}
			if p != "and" && p != "in" && p != "on" && p != "'s" && p != "is" && p != "are" && p != "'re" && p != "left" && p != "both" && p != "all" && p != "dry" {
				continue
			}
			for k := i + 1; k < min(len(r.toks), i+5); k++ {
				switch r.toks[k].s {
				case "so", "until", "till", "because", "cause", "cos", "while", "for", "i'll", "since":
					return i, i + 1
				case "i":
					if r.next(k) == "'ll" {
						return i, i + 1
					}
				}
			}
		case (w == "can't" || w == "couldn't" || w == "won't") && (n1 == "get" || n1 == "fit") && r.wrenchAt(i+2, min(c.hi, i+6)) && (r.ofMe(c.lo, i) || ci+1 < len(r.clauses) && r.ofMe(r.clauses[ci+1].lo, r.clauses[ci+1].hi)):
			return i, i + 2
		case w == "just" && n1 == "in" && (n2 == "there" || n2 == "") && i > c.lo && (p == "'s" || p == "'re" || p == "is" || p == "are") && r.screwed(c):
			return i, min(c.hi, i+3)
		case w == "wrench" && p == "torque" && (n1 == "'s" || n1 == "is") && (n2 == "at" || n2 == "in" || n2 == "out" || n2 == "being" || n2 == "gone" || n2 == "flat" || n2 == "broken" || n2 == "bust" || n2 == "up" || n2 == "on") && r.word(i+3) != "the" || w == "torque" && p == "my" && n2 == "at":
			if k := r.word(i + 3); k == "foot" || k == "inch" || k == "newton" || r.kind(i+3).is(wCounts) {
				continue // set at so many
			}
			return i, i + 3
		}
	}
	return -1, -1
}

// putsOn tells whether something is told to go on or up in a clause, and nothing to come off.
func (r *reading) putsOn(c *clause) bool {
	on := false
	for _, ai := range c.acts {
		switch r.acts[ai].action.Name {
		case "fit", "start by hand":
			on = true
		default:
			return false
		}
	}
	return on
}

// wrenchAt tells whether what tightens is named between two tokens.
func (r *reading) wrenchAt(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		switch r.toks[i].s {
		case "wrench", "spanner", "socket", "ratchet", "bar", "key", "clicker":
			return true
		}
	}
	return false
}

// screwed tells whether a clause names what is tightened, and nothing else of the machine.
func (r *reading) screwed(c *clause) bool {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; r.topical(m) && direct(m) {
			return r.tightenable(m) || screwedOn.has(m.head)
		}
	}
	return false
}

// twoSigns finds what is left open by two weak signs in one breath or two: "it wants
// bar oil" and "before anybody starts it". The families are those of open.txt.
func (r *reading) twoSigns(ci int) []openCue {
	c := &r.clauses[ci]
	if c.mood&(aside|greeting|listing) != 0 || len(c.opens) == 0 && c.mood&asked == 0 {
		return nil
	}
	if c.mood&asked == 0 && !slices.ContainsFunc(c.opens, func(o openCue) bool { return strings.IndexByte(o.signal, ':') > 0 }) {
		return nil // no weak sign begins here
	}
	var out []openCue
	_, hi := r.nearBy(ci, 0, 2, 8)
	for k := ci; k <= hi; k++ {
		if r.clauses[k].mood&(conditional|aside|greeting) != 0 {
			hi = k - 1
		}
	}
	if hi < ci {
		return nil
	}
	for i := range families {
		f := &families[i]
		if !(f.name == "doubt" && c.mood&asked != 0) && !slices.ContainsFunc(c.opens, f.has) {
			continue
		}
		signs, at := 0, openCue{}
		for k := ci; k <= hi; k++ {
			if k > ci && f.name == "left" && r.saidIn(&r.clauses[k], "you") && !r.heardIn(k, k, "left:use") {
				break // "there's a plug you've got to undo, I don't have that"
			}
			for _, o := range r.clauses[k].opens {
				fam, sign, ok := strings.Cut(o.signal, ":")
				if !ok || fam != f.name {
					continue
				}
				if o.lo < at.hi {
					continue // within the first
				}
				if at.hi == 0 {
					if k > ci {
						break
					}
					at = o
				}
				signs |= f.sign[sign]
			}
			if f.name == "doubt" && k == ci && c.mood&asked != 0 && !r.saidIn(c, "you") && len(c.mentions) > 0 && at.hi == 0 && c.hi-c.lo >= 4 {
				at, signs = openCue{c.lo, c.hi, "doubt"}, signs|sAsk
			}
		}
		if at.hi == 0 || !f.enough(signs) {
			continue
		}
		out = append(out, openCue{at.lo, at.hi, f.signal})
	}
	return out
}

// family is a family of weak signs, and what two of them are a signal of.
type family struct {
	name, signal string
	sign         map[string]int
	pairs        []int // which signs together are enough
}

// has tells whether a cue is a sign of the family.
func (f *family) has(o openCue) bool {
	n := len(f.name)
	return len(o.signal) > n && o.signal[n] == ':' && o.signal[:n] == f.name
}

func (f *family) enough(signs int) bool {
	for _, p := range f.pairs {
		if signs&p == p {
			return true
		}
	}
	return false
}

const (
	sNot = 1 << iota
	sYet
	sTime
	sWant
	sUse
	sStuck
	sAsk
)

var families = []family{
	{"left", "two-left", map[string]int{"not": sNot, "yet": sYet, "time": sTime, "want": sWant, "use": sUse, "stuck": sStuck},
		[]int{sNot | sYet, sNot | sUse, sWant | sUse, sWant | sStuck, sYet | sUse, sYet | sTime, sYet | sStuck, sNot | sStuck, sWant | sTime}},
	{"doubt", "two-doubts", map[string]int{"mind": 1, "may": 2, "or": 4, "dim": 8}, []int{1 | 2, 1 | 4, 1 | 8, 2 | 4, 2 | 8, 4 | 8, sAsk | 1, sAsk | 2, sAsk | 4, sAsk | 8}},
	{"poor", "two-poor", map[string]int{"from": 1, "brief": 2, "renew": 4, "odd": 8, "excuse": 16},
		[]int{1 | 2, 1 | 4, 1 | 16, 2 | 4, 2 | 8, 2 | 16, 4 | 16, 8 | 16, 4 | 8, 1 | 8}},
	{"light", "two-light", map[string]int{"how": 1, "limit": 2, "later": 4, "not": 8}, []int{1 | 2, 1 | 4, 1 | 8, 4 | 8}},
}
