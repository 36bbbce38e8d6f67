package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
)

// mooted tells of an act that is spoken of and is not done here and now, by what
// stands round its clause: what is planned, put off, told of others or of other
// machines, and what only sounds like work.
func (r *reading) mooted(ci int, a *act) mood {
	c := &r.clauses[ci]
	switch {
	case r.putForLater(ci, a), r.putOff(ci, a), r.deferred(a), r.planned(ci, a), r.theJob(ci, a), r.onlyMeant(c, a), r.theReason(ci, a), r.theReasonFor(ci, a), r.thePlan(ci, a), r.nextSeason(c, a):
		return announced
	case r.ofOthers(ci, a):
		return other
	case r.ofOtherMachine(ci, a), r.judged(ci, a):
		return conditional
	case r.forbiddenToo(ci, a):
		return negated
	case r.describes(c, a), r.foundSo(a), r.ofMedia(ci, a), r.takenBack(ci, a), r.begunInVain(a), r.alsoByThen(ci, a), r.heldOnly(c, a), r.keptIn(c, a), r.hasOnThem(c, a), r.raisesMoney(c, a), r.fromSomebody(c, a):
		return framed
	}
	return 0
}

// foundSo reads "the exhaust was tight", "the left one was loose": how a thing was found.
func (r *reading) foundSo(a *act) bool {
	if !a.subject || a.verb < 0 || a.action.Name != "tighten" && a.action.Name != "slacken" {
		return false
	}
	w := r.toks[a.verb].s
	return (w == "was" || w == "were") && (r.next(a.verb) == "tight" || r.next(a.verb) == "loose")
}

// theReason reads "loose, because I want to set it on the flat | and then tighten them":
// what is wanted yet is why it is so now.
func (r *reading) theReason(ci int, a *act) bool {
	if a.verb < 0 || a.subject || !r.plainVerb(r.toks[a.verb].s) {
		return false
	}
	c := &r.clauses[ci]
	for k := ci; k >= 0 && k >= ci-1 && r.clauses[k].sentence == c.sentence; k-- {
		p := &r.clauses[k]
		if k < ci && !r.beginsWith(c, "and", "then") {
			return false
		}
		switch r.toks[p.lo].s {
		case "because", "cause", "cos", "'cause", "since":
		default:
			continue
		}
		for i := p.lo + 1; i < p.hi && i < a.verb; i++ {
			switch w := r.toks[i].s; {
			case w == "wanna", w == "gonna", (w == "want" || w == "need" || w == "have" || w == "got") && r.next(i) == "to":
				return i > p.lo && r.ofMe(p.lo, i)
			}
		}
	}
	return false
}

// onlyMeant reads "I was going to fit the old seal again": what was meant, and came
// otherwise.
func (r *reading) onlyMeant(c *clause, a *act) bool {
	for i := max(c.lo+1, a.lo-6); i+1 < a.hi && i < a.lo+2; i++ {
		if w, n := r.toks[i].s, r.toks[i+1].s; (w == "was" || w == "were") && n == "gonna" && r.toks[i-1].s == "i" && i < max(a.verb, a.lo) {
			return true
		}
	}
	return false
}

// arrives are the words for what is not there yet coming; ordered for what was sent for.
var arrives = set("come comes arrive arrives get gets have 've got turn turns land lands bring brings ready back here there free")
var ordered = set("order ordered ordering")

// putForLater reads "I'll swap them when the others arrive", "when the parcel
// comes I change all three", "I'm ordering a longer one and I'll change it".
func (r *reading) putForLater(ci int, a *act) bool {
	c := &r.clauses[ci]
	if a.subject || a.verb < 0 {
		return false
	}
	// who does it: in the clause, or in the one that it goes on from
	first := ci
	if (r.toks[c.lo].s == "and" || a.verb == c.lo) && ci > 0 && r.clauses[ci-1].sentence == c.sentence {
		first = ci - 1
	}
	wills := r.wills(first) || r.wills(ci)
	mine := wills || r.toks[c.lo].s == "i"
	if !mine {
		return false
	}
	for k := ci + 1; k < len(r.clauses) && k <= ci+2 && r.clauses[k].sentence == c.sentence; k++ {
		if r.toks[r.clauses[k].lo].s == "when" && (wills || r.presentVerb(r.toks[a.verb].s)) && !r.felt(k) {
			return true
		}
	}
	if k := ci - 1; k >= 0 && r.clauses[k].sentence == c.sentence && r.toks[r.clauses[k].lo].s == "when" {
		p := &r.clauses[k]
		for i := p.lo + 1; i < p.hi; i++ {
			if arrives.has(r.toks[i].s) && (wills || r.presentVerb(r.toks[a.verb].s)) {
				return true
			}
		}
	}
	if !wills && !r.presentVerb(r.toks[a.verb].s) {
		return false
	}
	switch a.action.Name {
	case "replace", "fit", "remove", "adjust", "tighten", "torque":
	default:
		return false
	}
	for k := ci; k >= 0 && k >= ci-3 && r.clauses[k].sentence == c.sentence; k-- {
		for i := r.clauses[k].lo; i < r.clauses[k].hi && i < a.lo; i++ {
			if ordered.has(r.toks[i].s) {
				return true
			}
		}
	}
	return false
}

// putOff reads "I'll tighten them later", "they get torqued once the wheel's on", "we'll do
// that in a minute": not now, by the words that say when.
func (r *reading) putOff(ci int, a *act) bool {
	c := &r.clauses[ci]
	if a.verb < 0 || ledgerActs[a.action.Name] == "" || r.lemma1(r.toks[a.verb].s) == "fish" {
		return false // what is fished out later is lost by now
	}
	will := false // of what is to come: "I'll", "going to", "they'll get"
	for i := a.verb - 1; i >= c.lo && i >= a.verb-6 && !will; i-- {
		switch r.toks[i].s {
		case "'ll", "will", "i'll", "we'll", "they'll", "it'll", "gonna", "shall", "can":
			will = true
		case "going":
			will = r.toks[i+1].s == "to"
		case "gets", "get":
			will = a.subject || strings.HasSuffix(r.toks[a.verb].s, "ed")
		}
	}
	w := r.toks[a.verb].s
	will = will || a.subject && (w == "get" || w == "gets")
	if !will && !(!a.subject && r.presentVerb(w)) {
		return false
	}
	k := a.hi
	if r.toks[k-1].s == "in" {
		k-- // "I'll get that in a minute"
	}
	for ; k < c.hi && k < a.hi+9; k++ {
		switch w := r.toks[k].s; w {
		case "later", "afterwards", "afterward":
			if k == a.hi || !ofTime.has(r.toks[k-1].s) {
				return true // not "two minutes later"
			}
		case "in":
			if n := r.next(k); (n == "a" || n == "just") && shortly.has(r.word(k+2)) {
				return true
			}
		case "and", "but", "then", "or", "so":
			return false
		case "once", "when", "after":
			return will && k+1 < c.hi && r.thenReady(k+1, c.hi)
		}
	}
	if !will && r.toks[c.lo].s != "i" || ci+1 >= len(r.clauses) || r.clauses[ci+1].sentence != c.sentence || k < c.hi {
		return false
	}
	n := &r.clauses[ci+1]
	switch r.toks[n.lo].s {
	case "once", "when", "after":
		return r.thenReady(n.lo+1, n.hi) && !r.felt(ci+1)
	}
	return false
}

// deferred tells whether an act is put off by what is said of its time right beside it.
func (r *reading) deferred(a *act) bool { return r.notNow(a) || r.goesLast(a) || r.noneAtHand(a) }

// noneAtHand reads "I'll put an r clip in. Haven't got one that size.": what was to go on is not at hand.
func (r *reading) noneAtHand(a *act) bool {
	if a.verb < 0 || a.action.Name != "fit" || len(a.objects) == 0 {
		return false
	}
	lo := a.verb
	for lo > 0 && lo > a.verb-12 && r.toks[lo-1].brk < brkSentence {
		lo--
	}
	if !slices.ContainsFunc(r.toks[lo:a.verb], func(t tok) bool { return t.s == "'ll" || t.s == "will" || t.s == "gonna" }) {
		return false
	}
	for i := a.hi; i+2 < len(r.toks) && i < a.hi+14 && r.since(a.verb, i) < 14; i++ {
		switch r.toks[i].s {
		case "haven't", "ain't", "don't", "not":
		default:
			continue
		}
		k := i + 1
		if w := r.word(k); w == "got" || w == "have" {
			k++
		} else if w != "any" {
			continue
		}
		if w := r.word(k); (w == "one" || w == "any") && !r.nextKind(k).is(wOff|wOn|wOpener) && r.next(k) != "for" {
			return true
		}
	}
	return false
}

// notNow reads "I need to put the blade back on, and that's not now": what is denied its time in
// the same breath.
func (r *reading) notNow(a *act) bool {
	if a.verb < 0 || ledgerActs[a.action.Name] == "" {
		return false
	}
	for i := a.hi; i+1 < len(r.toks) && i < a.hi+9; i++ {
		if r.toks[i].s != "not" {
			continue
		}
		k := i + 1
		if w := r.word(k); w == "for" || w == "happening" || w == "going" {
			k++
		}
		switch r.word(k) {
		case "now", "today", "tonight", "yet":
		default:
			return false
		}
		switch w := r.next(k); {
		case k+1 >= len(r.toks), r.toks[k].brk >= brkComma, w == "because", w == "'cause", w == "cause", w == "cos", w == "so", w == "and", w == "but":
		default:
			return false // "not yet tight"
		}
		is := i - 1
		if linking.has(r.word(is)) {
			is--
		}
		w := r.word(is)
		return w == "that" || w == "that's" || w == "it" || w == "it's" || w == "which" || w == "and" || w == "but" || r.toks[i-1].brk >= brkComma
	}
	return false
}

// goesLast reads "the kick plate's off too so that goes on last": what is off goes on when all
// else is.
func (r *reading) goesLast(a *act) bool {
	if a.verb < 0 || a.action.Name != "fit" || !a.subject || r.toks[a.verb].s != "goes" {
		return false
	}
	switch r.word(a.hi) {
	case "last", "later", "afterwards", "after":
	default:
		return false
	}
	for i := a.verb - 1; i > max(0, a.verb-8) && r.toks[i-1].brk < brkSentence; i-- {
		if r.toks[i].s == "off" || r.toks[i].s == "out" {
			return linking.has(r.prev(i)) || r.prev(i) == "still"
		}
	}
	return false
}

// ofTime are the words for times before "later", shortly those after "in a".
var (
	ofTime  = wordsOf("of a time")
	shortly = wordsOf("shortly")
)

// thenReady tells whether words after "once" tell of what else will be done by then, "the
// wheel's on", "I've got the other side in", "it's lined up", and not of what is felt.
func (r *reading) thenReady(lo, hi int) bool {
	is := false
	for i := lo; i < min(hi, lo+9); i++ {
		switch w := r.toks[i].s; {
		case w == "'s" || w == "is" || w == "are" || w == "'re" || w == "'ve" || w == "have" || w == "has" || w == "it's" || w == "they're":
			is = true
		case is && (r.toks[i].is(wOn|wOff|wReturning) || w == "together" || w == "back" || w == "square" || w == "straight" || w == "lined" || w == "done" || w == "set" || w == "ready" || w == "got" || w == "there" || w == "cold" || w == "warm" || w == "dry"):
			return true
		}
	}
	return false
}

// forbiddenToo reads "don't leave it there and | chuck it in the shed": what goes on
// from a "don't" is not to be done either.
func (r *reading) forbiddenToo(ci int, a *act) bool {
	c := &r.clauses[ci]
	if ci == 0 || a.verb < 0 || a.subject || a.verb != c.lo+1 || r.toks[c.lo].s != "and" && r.toks[c.lo].s != "or" || !r.plainVerb(r.toks[a.verb].s) {
		return false
	}
	p := &r.clauses[ci-1]
	if p.sentence != c.sentence || r.toks[p.hi-1].brk >= brkComma {
		return false
	}
	for i := p.lo; i < min(p.hi, p.lo+2); i++ {
		if w := r.toks[i].s; w == "don't" || w == "never" {
			return true
		}
	}
	return false
}

// felt tells whether a clause with "when" tells how the end of the work is known:
// "stop when it clicks", "when you feel it touch".
func (r *reading) felt(ci int) bool {
	c := &r.clauses[ci]
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "feel", "hear", "see", "clicks", "touches", "stops", "bottoms", "seats", "starts", "you":
			return true
		}
	}
	return false
}

// planned reads what the job will be, told before any of it is done: "we're gonna
// take the pump out, put a new seal in and put it back".
func (r *reading) planned(ci int, a *act) bool {
	c := &r.clauses[ci]
	for _, p := range r.acts {
		if r.clauses[p.cl].sentence != c.sentence && p.happened() && p.verb >= 0 && ledgerActs[p.action.Name] != "" {
			return false
		}
		if len(r.acts) > 40 {
			return false
		}
	}
	lo, hi := ci, ci
	for lo > 0 && r.clauses[lo-1].sentence == c.sentence {
		lo--
	}
	for hi+1 < len(r.clauses) && r.clauses[hi+1].sentence == c.sentence {
		hi++
	}
	if hi-lo > 8 {
		return false
	}
	wills, off, back := false, false, false
	for i := r.clauses[lo].lo; i < r.clauses[hi].hi; i++ {
		switch r.toks[i].s {
		case "gonna", "going", "'ll", "will":
			wills = wills || !off
		case "off", "out", "apart":
			off = true
		case "back":
			back = back || off
		case "first":
			return false
		}
	}
	return wills && off && back
}

// theJob reads what the job is, told before any of it is done: "we're going to clean
// the carb", "I'm just changing the wheel on the grinder".
func (r *reading) theJob(ci int, a *act) bool {
	c := &r.clauses[ci]
	if a.verb < 0 || a.subject || a.mood&offCamera != 0 || r.since(0, a.lo) > 15 || len(a.objects) == 0 {
		return false
	}
	switch a.action.Name {
	case "replace", "clean", "adjust", "bleed", "lubricate", "measure", "test":
	default:
		return false
	}
	for i := range r.acts {
		if p := &r.acts[i]; p.happened() {
			return false
		}
	}
	will := strings.HasSuffix(r.toks[a.verb].s, "ing")
	for i := c.lo; i < a.verb; i++ {
		switch r.toks[i].s {
		case "gonna", "going", "'ll", "will", "today":
			will = true
		case "first", "start", "starting", "let":
			return false
		}
	}
	return will
}

// judged reads "dull thud, bin it", "any play, replace it": what is found, and what
// is done then, with no "if".
func (r *reading) judged(ci int, a *act) bool {
	c := &r.clauses[ci]
	if a.action.Name != "discard" && a.action.Name != "replace" || a.pronoun != "it" && a.pronoun != "them" || a.verb != c.lo || ci == 0 || !r.plainVerb(r.toks[a.verb].s) {
		return false
	}
	p := &r.clauses[ci-1]
	return p.sentence == c.sentence && p.hi-p.lo <= 4 && len(p.acts) == 0 && len(p.mentions) == 0 && r.toks[p.hi-1].brk == brkComma && !r.kind(p.lo).is(wOpener|wDrop|wSubject)
}

// ofOthers reads what others do or say where the clause of its own does not say
// so: "you'll see lads online | who cut the cable off | and solder the plugs",
// "some people will tell you | just cut it".
func (r *reading) ofOthers(ci int, a *act) bool {
	c := &r.clauses[ci]
	if ci == 0 || a.verb < 0 {
		return false
	}
	p := &r.clauses[ci-1]
	if p.sentence != c.sentence {
		return false
	}
	head := c.lo
	for head < c.hi-1 && (r.toks[head].s == "and" || r.toks[head].s == "or" || r.toks[head].s == "then" || dropWords.has(r.toks[head].s)) {
		head++
	}
	switch w := r.toks[head].s; {
	case w == "who":
		return p.mood&other != 0 || len(p.mentions) == 0
	case w == "i", r.beginsWith(c, "so", "but"):
		return false
	case subjects.has(w) && !(w == "you" && r.asksWhy(ci-1)):
		return false
	}
	if r.asksWhy(ci - 1) {
		return true
	}
	if p.mood&other != 0 && (a.verb == head || p.mood&negated == 0 && r.saysSo(p)) {
		return r.saysSo(p) || r.beginsWith(c, "and") && slices.ContainsFunc(p.acts, func(ai int) bool { return r.acts[ai].mood&other != 0 })
	}
	return r.beginsWith(c, "and") && a.verb == head && slices.ContainsFunc(p.acts, func(ai int) bool { return r.acts[ai].mood&other != 0 })
}

// saysSo tells whether a clause ends on somebody's saying what to do.
func (r *reading) saysSo(c *clause) bool {
	for i := max(c.lo, c.hi-4); i < c.hi; i++ {
		switch r.toks[i].s {
		case "say", "says", "said", "tell", "tells", "told", "go", "goes", "reckon", "reckons", "recommend", "recommends", "think":
			return true
		}
	}
	return false
}

// asksWhy tells of "people go, why don't | you pour it in the top".
func (r *reading) asksWhy(ci int) bool {
	if ci < 0 {
		return false
	}
	c := &r.clauses[ci]
	return r.toks[c.lo].s == "why" && c.hi-c.lo <= 3 && (r.next(c.lo) == "don't" || r.next(c.lo) == "not" || r.next(c.lo) == "didn't")
}

// ofOtherMachine reads "if yours is the big one … you've got a plug instead, and
// you undo it and lift it out": it holds while nobody speaks of the machine at hand.
func (r *reading) ofOtherMachine(ci int, a *act) bool {
	if a.mood&conditional != 0 {
		return false
	}
	you := false
	for k := ci; k >= 0 && k >= ci-5 && r.since(r.clauses[k].lo, a.lo) < 14; k-- {
		c := &r.clauses[k]
		if k < ci && c.mood&conditional != 0 {
			for i := c.lo; i+1 < c.hi; i++ {
				if n := r.toks[i+1].s; r.toks[i].s == "if" && (n == "yours" || n == "your" || n == "it" && r.word(i+2) == "'s" && r.word(i+3) == "a") || r.toks[i].s == "if" && n == "you" && (r.word(i+2) == "'ve" || r.word(i+2) == "have" || r.word(i+2) == "got") && r.says1(c, i, "one") {
					return you
				}
			}
		}
		if k < ci && k >= ci-2 && c.sentence == r.clauses[ci].sentence && c.mood&conditional != 0 && r.toks[c.lo].s != "if" && slices.ContainsFunc(c.cues, func(q cue) bool { return q.mood&conditional != 0 && q.hi-q.lo > 1 }) {
			return you // "there's some with a big snap ring, and you push it in first"
		}
		hi := c.hi
		if k == ci {
			hi = a.lo
		}
		for i := c.lo; i < hi; i++ {
			switch r.toks[i].s {
			case "you":
				you = true
			case "i", "my", "mine", "here", "so", "now", "this", "me":
				return false
			}
		}
	}
	return false
}

// says1 tells whether a word stands in a clause after token i.
func (r *reading) says1(c *clause, i int, w string) bool {
	for ; i < c.hi; i++ {
		if r.toks[i].s == w {
			return true
		}
	}
	return false
}

// describes reads what a thing is like or does: "here is a wire going to the
// switch", "that's what was holding it", and words of work that are names.
func (r *reading) describes(c *clause, a *act) bool {
	if a.verb < 0 {
		return false
	}
	w, p, pp := r.toks[a.verb].s, "", ""
	if a.verb > c.lo {
		p = r.toks[a.verb-1].s
	}
	if a.verb-1 > c.lo {
		pp = r.toks[a.verb-2].s
	}
	if r.runsThere(c, a) {
		if !r.goingOn() {
			return true
		}
		a.ifOff = true
	}
	ing := strings.HasSuffix(w, "ing")
	if a.subject && ing && !passiveBe.has(p) && p != "just" && r.word(a.hi-1) != "off" && r.word(a.hi-1) != "out" {
		for i := c.lo; i < a.verb; i++ {
			if s := r.toks[i].s; s == "there" || s == "here" || s == "got" || s == "have" || s == "see" || s == "with" {
				return true
			}
		}
	}
	if a.subject && a.action.Name == "remove" && (p == "that" || p == "which") && (w == "came" || w == "comes") && r.next(a.verb) == "with" && a.verb-1 > c.lo {
		return true // "the leaflet that came with it says nine"
	}
	if a.subject && a.action.Name == "fit" && !passiveBe.has(w) && (p == "that" || p == "which") && r.nounAt(a.verb-2) && r.toks[a.verb-2].brk <= brkPause {
		return true // "undo the bolts that go through the rail"
	}
	if ing && p == "from" {
		return true // "nothing to keep it from falling out"
	}
	if ing && passiveBe.has(p) && pp == "what" {
		return true
	}
	if ing && (p == "was" || p == "were") && !a.subject && !r.personBefore(c, a.verb) {
		return true
	}
	if p == "what" && !a.subject {
		return true
	}
	if w == "held" && p != "i" && p != "you" && p != "and" && p != "then" && p != "just" {
		return true // "held with one screw"
	}
	if !a.subject && p == "'d" && pp == "i" && r.plainVerb(w) && !samePast.has(w) {
		return true // "had it been two, I'd take out shims"
	}
	if w == "got" && a.unknown && len(a.objects) == 0 && a.action.Name == "fit" && !r.putSomewhere(c, a.verb) {
		return true // "we've got one more life in it"
	}
	if (w == "hold" || w == "keep") && !a.subject && a.verb == c.lo && c.lo > 0 && r.clauses[r.toks[c.lo-1].cl].sentence == c.sentence {
		k := c.lo - 1
		for k > 0 && (r.toks[k].qty >= 0 || r.toks[k].men >= 0 && r.mentions[r.toks[k].men].kind == lexicon.Tool) {
			k-- // "three bolts, T40, hold the hinge"
		}
		if m := int(r.toks[k].men); k < c.lo-1 && m >= 0 && r.mentions[m].plural && r.mentions[m].kind&lexicon.Fastener != 0 && r.mentions[m].prep == "" {
			return true
		}
	}
	if (w == "hold" || w == "keep" || w == "carry") && !a.subject && a.verb > c.lo && r.toks[a.verb-1].brk <= brkPause {
		// "two long bolts hold it to the bracket", "three of them hold it in"
		if m := r.toks[a.verb-1].men; m >= 0 && r.mentions[m].plural && r.mentions[m].prep == "" || p == "them" || p == "those" || p == "ones" || p == "both" || p == "all" {
			return true
		}
	}
	if !a.subject && (p == "it" || p == "them" || p == "that") && (pp == "had" || pp == "has") && !ing && !r.plainVerb(w) {
		return true // "he had it routed round the front"
	}
	if !a.subject && p == "you" && !ing && !r.plainVerb(w) && !strings.HasSuffix(w, "s") {
		return true // "you wound the window with pliers": long ago
	}
	if !a.subject && (p == "will" || p == "'ll" || p == "would" || p == "can") && pp != "i" && pp != "you" && pp != "who" && a.verb-2 >= c.lo && !stopWords.has(pp) && !openers.has(pp) && !dropWords.has(pp) {
		return true // "some of those will put eighty through it": what things do
	}
	if ing && (p == "go" || p == "goes") && (pp == "you" || pp == "people" || pp == "they") {
		return true // "you go squeezing on that barrel and it's junk"
	}
	if ing && !a.subject && (p == "it" || p == "them") && pp != "keep" && pp != "leave" && pp != "get" && pp != "got" {
		return true // "a chain that stops it spinning"
	}
	if (p == "can" || p == "could") && (a.action.Name == "inspect" || a.action.Name == "measure") {
		return true // "I can count the cracks"
	}
	if strings.HasSuffix(w, "ed") && !a.subject && a.verb > c.lo && r.toks[a.verb-1].men >= 0 && r.toks[a.verb-1].brk == brkNone {
		for i := c.lo; i < a.verb; i++ {
			if s := r.toks[i].s; s == "there" || s == "with" {
				return true // "there's a plate riveted on the guard"
			}
		}
	}
	for i := a.verb - 1; i > c.lo && i > a.verb-4; i-- {
		if s := r.toks[i].s; (s == "when" || s == "before" || s == "until" || s == "till" || s == "while" || s == "where" || s == "like") && i+1 < a.verb && r.toks[i+1].men < 0 && subjects.has(r.toks[i+1].s) {
			return true // "you want to do that before you fit it"
		}
	}
	if alsoNames.has(w) && !a.subject && a.hi == a.verb+1 && a.verb > c.lo && (r.toks[a.verb].brk >= brkComma || a.verb+1 >= c.hi || prepositions.has(r.next(a.verb)) || linking.has(r.next(a.verb))) {
		if r.toks[a.verb-1].men >= 0 && r.toks[a.verb-1].brk <= brkPause || countOf[p] > 0 || dropAdj.has(p) || p == "second" || p == "third" || p == "paint" || p == "timing" || p == "match" || p == "witness" {
			return true
		}
	}
	return false
}

// samePast are the verbs whose past is as their plain form.
var samePast = set("put set cut let shut hit split fit quit")

// putSomewhere tells whether a clause says from token i on that something was put so as to hold.
func (r *reading) putSomewhere(c *clause, i int) bool {
	for ; i < c.hi; i++ {
		switch r.toks[i].s {
		case "through", "under", "behind", "against", "round", "around", "over", "across", "between", "onto", "into":
			return true
		}
	}
	return false
}

// alsoNames are words of work that name things as often.
var alsoNames = set("mark drain cut drop tap plug seal block wedge gauge clip hook tie stop spring lever pump")

var media = wordsOf("what viewers are shown")

// ofMedia reads "there's a picture of it, I'll stick that on there as well".
func (r *reading) ofMedia(ci int, a *act) bool {
	if a.subject || a.verb < 0 || a.pronoun != "that" && a.pronoun != "it" && a.pronoun != "them" && a.pronoun != "those" {
		return false
	}
	if r.lemma1(r.toks[a.verb].s) == "dig" && a.verb > 0 {
		switch r.toks[a.verb-1].s {
		case "will", "'ll", "to", "and", "gonna":
			return !strings.Contains(" with from of ", " "+r.word(a.hi)+" ") // "I'll dig it out": the paper that has it
		}
	}
	if ci == 0 || r.clauses[ci-1].sentence != r.clauses[ci].sentence || !r.wills(ci) {
		return false
	}
	p := &r.clauses[ci-1]
	for i := p.lo; i < p.hi; i++ {
		if media.has(r.toks[i].s) {
			return true
		}
	}
	return false
}

// takenBack reads "flip it over, no, actually don't flip it over".
func (r *reading) takenBack(ci int, a *act) bool {
	if a.verb < 0 || ci+1 >= len(r.clauses) || a.mood&negated != 0 || r.word(r.clauses[ci].hi-1) != "no" && r.word(r.clauses[ci].hi-2) != "no" && r.word(r.clauses[ci+1].lo) != "no" {
		return false
	}
	for k := ci + 1; k < len(r.clauses) && k <= ci+2; k++ {
		n := &r.clauses[k]
		for i := n.lo; i+1 < n.hi; i++ {
			if r.toks[i].s == "don't" && r.lemma1(r.toks[i+1].s) == r.lemma1(r.toks[a.verb].s) {
				return true
			}
		}
	}
	return false
}

// people are those from whom a thing is got or bought.
var people = wordsOf("who may tell")

// relatives are never what is worked on.
var relatives = wordsOf("relatives")

// fromSomebody reads "I got the spanner off the neighbour".
func (r *reading) fromSomebody(c *clause, a *act) bool {
	if a.verb < 0 || a.action.Name != "remove" || r.word(a.hi-1) != "off" {
		return false
	}
	switch r.lemma1(r.toks[a.verb].s) {
	case "get", "have", "take", "pull":
	default:
		return false
	}
	for i := a.hi; i < min(c.hi, a.hi+3); i++ {
		if people.has(r.toks[i].s) || r.toks[i].s == "ask" {
			return true
		}
	}
	return false
}

// ownBody tells whether an act is of somebody's hand or foot: "put your foot on the other arm".
func (r *reading) ownBody(a *act) bool {
	if a.verb < 0 || a.subject || a.action.Name != "fit" && a.action.Name != "place" && a.action.Name != "support" && a.action.Name != "remove" {
		return false
	}
	i := a.verb + 1
	if r.word(i) == "on" && (r.toks[a.verb].s == "lay" || r.toks[a.verb].s == "lie" || r.toks[a.verb].s == "get") {
		i++ // "lay on your back"
	}
	for i < len(r.toks)-1 && (determiner.has(r.toks[i].s) || r.toks[i].s == "a" || r.toks[i].s == "free") {
		i++
	}
	if i >= len(r.toks) || !bodily.has(r.toks[i].s) || i == a.verb+1 {
		return false
	}
	p := r.toks[i-1].s
	return p == "your" || p == "my" || p == "other" || p == "one" || p == "a" || p == "free"
}
