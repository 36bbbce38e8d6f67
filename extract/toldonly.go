package extract

import (
	"strings"

	"wrenchword/normalize"
)

// What the rules take to have been done with a value: set, to be set, or only told of; what they take is
// weighed in applied.go.

// appliedIn tells whether a value was set, is to be set, or is a document's word.
func (s *tracker) appliedIn(ci int, q *quantity, h *heard) string {
	r := s.r
	c := &r.clauses[ci]
	says, future, inBook, doc := false, false, false, ""
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		switch {
		case saying.has(w), w == "told" && r.next(i) == "me":
			says = true
		case documents.has(w):
			doc = w
			says = says || i+1 < c.hi && ofDocument.has(r.toks[i+1].s)
			inBook = inBook || i-2 == q.hi && (r.toks[i-2].s == "in" || r.toks[i-2].s == "on") && r.toks[i-1].is(wDeterminer)
		case w == "will" || w == "'ll" || w == "supposed" || w == "should" || (w == "meant" || w == "ought") && r.next(i) == "to":
			future = true
		}
	}
	if doc != "" {
		h.source.Title = doc
	}
	theirs := s.othersFigure(c, q)
	if says && doc == "" && ci > 0 && !theirs {
		p := &r.clauses[ci-1]
		for i := p.lo; i < p.hi; i++ {
			if documents.has(r.toks[i].s) {
				h.source.Title = r.toks[i].s
			}
		}
	}
	switch {
	case theirs, r.rowOfValues(c), c.mood&(other) != 0 && says, r.misprinted(q), r.notedDown(c, q):
		return "quoted" // somebody's word, or one that nobody believes
	case r.warnedOff(q), r.tooMuch(q):
		return "quoted" // "don't you go leaving that at twenty", "thirty foot pounds is a lot in brass"
	case says && doc != "" || says && h.source.Title != "":
		return "quoted"
	case (inBook || s.saysIt(c, q)) && !s.actDone(c) && !s.setSoon(ci, q):
		return "quoted" // "it says twelve newton metres", and nobody has tightened it
	case r.heardIn(ci, r.lastOn(ci), "other-machine") && !s.actDone(c) && !s.setSoon(ci, q):
		return "quoted" // "fifty, but that's a different engine"
	case r.givenToOther(q) && !s.actDone(c) && !s.setSoon(ci, q):
		h.source.Scope = scopeOther
		return "quoted" // "my old truck takes a hundred and thirty"
	case r.vague(q):
		return "quoted" // nobody sets "thirty something"
	case future || framing(c, q)&(announced|negated|conditional|hypothetical|asked) != 0 && !s.actDone(c):
		return "intended"
	case h.of != nil && h.hedged && s.lastState(h.of) == Removed, s.guessed(c, q):
		return "intended"
	}
	if n := ci + 2; n < len(r.clauses) && q.hi == c.hi && r.toks[c.hi].s == "if" && r.clauses[n].mood&negated != 0 && r.toks[r.clauses[n].lo].s == "i" && r.clauses[n].hi-r.clauses[n].lo < 6 {
		return "intended" // "fourteen newton metres if you have the crow foot, I don't have"
	}
	if s.putOffNext(ci) || r.putOffBefore(ci, q) || s.noWrenchFor(ci, q) || !s.actDone(c) && (s.leftLight(ci, q, h.of) || s.onceThen(ci, q)) {
		return "intended"
	}
	// "when she's down": still to do
	for i := c.lo; i < min(c.hi+10, len(r.toks)) && r.toks[max(i-1, 0)].brk < brkSentence; i++ {
		if r.toks[i].s == "when" && i > q.hi-1 {
			return "intended"
		}
	}
	return "done"
}

// lastOn gives the last clause in which a value may be told to be another machine's: the next one,
// but where that is a sentence with a value of its own ("Forty. It was forty on the other one").
func (r *reading) lastOn(ci int) int {
	n := ci + 1
	if n >= len(r.clauses) || r.clauses[n].sentence != r.clauses[ci].sentence && len(r.clauses[n].qtys) > 0 {
		return ci
	}
	return n
}

// muchness are the words by which somebody says what they think of a value.
var muchness = set("lot much too nothing plenty loads way silly daft mad crazy insane huge massive")

// tooMuch tells whether a value is only said to be much or little: "thirty foot pounds is a lot in brass".
func (r *reading) tooMuch(q *quantity) bool {
	i := q.hi // not "which is nothing", which is said of a value that is set
	if w := r.word(i); w != "is" && w != "'s" && w != "sounds" && w != "seems" && w != "feels" {
		return false
	}
	for i++; r.word(i) == "a" || r.word(i) == "like" || r.word(i) == "not" || r.word(i) == "an" || r.word(i) == "awful" || r.word(i) == "quite"; i++ {
	}
	return muchness.has(r.word(i))
}

// warnedOff tells whether a value is said to be one not to go to or to leave a thing at: "never go
// past thirty foot pounds".
func (r *reading) warnedOff(q *quantity) bool {
	c := &r.clauses[q.cl]
	i := c.lo
	for i < q.lo && (r.toks[i].is(wOpener) || r.toks[i].s == "you" || r.toks[i].s == "please") {
		i++
	}
	switch r.toks[i].s {
	case "don't", "never":
	case "do":
		if i++; r.word(i) != "not" {
			return false
		}
	default:
		return false
	}
	for i++; i < q.lo && (r.toks[i].s == "you" || r.toks[i].s == "ever" || r.toks[i].s == "just" || r.toks[i].s == "go" && strings.HasSuffix(r.next(i), "ing")); i++ {
	}
	if i >= q.lo || !r.toks[i].is(wVerb|wForm) || notForbidden.has(r.toks[i].s) {
		return false
	}
	for ; i < q.lo; i++ {
		switch r.toks[i].s {
		case "till", "until", "before", "if", "unless", "without", "because":
			return false
		}
		if r.toks[i].brk >= brkComma {
			return false
		}
	}
	return true
}

// notForbidden are the verbs that forbid nothing after "don't".
var notForbidden = set("need have know think want worry forget remember like trust mind believe get care see say ask quote hold")

// notedDown tells whether a value was only written down: "I wrote it down, eighty seven".
func (r *reading) notedDown(c *clause, q *quantity) bool {
	for i := q.lo - 1; i > 0 && i > q.lo-8 && r.clauses[r.toks[i].cl].sentence == c.sentence; i-- {
		if r.toks[i].s == "down" {
			switch w := r.toks[i-1].s; {
			case writes.has(w) || w == "noted" || w == "jotted":
				return true
			case (w == "it" || w == "that" || w == "them") && i > 1:
				return writes.has(r.toks[i-2].s) || r.toks[i-2].s == "noted" || r.toks[i-2].s == "jotted"
			}
		}
	}
	return false
}

// misprinted tells whether the talk right after a value, up to the next one, says that it cannot
// be so: "180 newton metres. The axle doesn't even get that. … You'd shear it off".
func (r *reading) misprinted(q *quantity) bool {
	_, last := r.clausesAround(q, 0, 6, func(*quantity) bool { return true })
	return r.heardIn(q.cl+1, last, "misprint")
}

// putOffBefore tells whether what stands before a value puts it off: "when it's on the ground
// tomorrow they get eighty", "that leaves for Thursday the nut, forty".
func (r *reading) putOffBefore(ci int, q *quantity) bool {
	c := &r.clauses[ci]
	from := c.lo
	if ci > 0 && r.clauses[ci-1].sentence == c.sentence {
		from = r.clauses[ci-1].lo
	}
	later := false
	for i := from; i < q.lo; i++ {
		switch w := r.toks[i].s; w {
		case "did", "done", "was", "were", "had", "last", "ago", "already", "yesterday":
			return false
		default:
			later = later || w == "later" || days.has(w)
		}
	}
	return later
}

// wrenchWords are the tools by which a value is set.
var wrenchWords = set("wrench clicker clicky driver torque")

// noWrenchFor tells whether the next words say that there is no wrench to set a value with,
// or none that gets there, and nothing is set right after: "eight newton metres. I haven't
// got a wrench that small, so it's two fingers."
func (s *tracker) noWrenchFor(ci int, q *quantity) bool {
	r := s.r
	for k := ci; k < min(len(r.clauses), ci+4) && r.since(q.hi-1, r.clauses[k].lo) < 9; k++ {
		n := &r.clauses[k]
		from, not, wrench := n.lo, false, false
		if k == ci {
			from = q.hi
		}
		for i := from; i < n.hi; i++ {
			w := r.toks[i].s
			switch {
			case w == "click" || w == "clicked" || w == "clicks":
				return false
			case r.toks[i].qty >= 0 && r.qtys[r.toks[i].qty].Kind == normalize.Torque:
				return false
			case w == "one" || w == "ones" || w == "two":
				if i > from && r.toks[i-1].is(wPlace) || r.prev(i) == "last" || r.prev(i) == "other" {
					return false // "I can't get on the last one with it"
				}
				wrench = wrench || w == "one" && r.next(i) == "that" && (r.word(i+2) == "small" || r.word(i+2) == "low" || r.word(i+2) == "big")
			case wrenchWords.has(w):
				wrench = true
				not = not || r.awayAt(i+1) || r.lentBefore(i)
			case w == "n't" || w == "not" || w == "never" || w == "no" || strings.HasSuffix(w, "n't"):
				not = true
			}
		}
		if not && wrench {
			return !r.setAfter(k)
		}
	}
	return false
}

// notHere are where a wrench is that is not at hand.
var notHere = wordsOf("where a torque wrench is not at hand")

// awayAt tells whether a wrench is said at token i to be somewhere else: "is at the other yard", "is
// out on a job"; not "is at ninety" or "is in my hand".
func (r *reading) awayAt(i int) bool {
	if !linking.has(r.word(i)) {
		return false
	}
	switch w := r.next(i); w {
	case "gone", "away", "home":
		return true
	case "at", "in", "out", "over", "back", "with":
		for k := i + 2; k < min(len(r.toks), i+6) && r.toks[k-1].brk < brkComma; k++ {
			if notHere.has(r.toks[k].s) || persons.has(r.toks[k].s) {
				return true
			}
		}
	}
	return false
}

// lentBefore tells whether somebody has the wrench that is named at token i: "the lad's got my torque
// wrench".
func (r *reading) lentBefore(i int) bool {
	for k := i - 1; k > max(0, i-5) && r.toks[k].brk < brkComma; k-- {
		if w := r.toks[k].s; w == "got" || w == "has" {
			return persons.has(r.prev(k)) || persons.has(r.word(k-2))
		}
	}
	return false
}

// setAfter tells whether a value is set, or another told, in the clauses right after one.
func (r *reading) setAfter(ci int) bool {
	c := &r.clauses[ci]
	for k := ci + 1; k < min(len(r.clauses), ci+5) && r.since(c.hi-1, r.clauses[k].lo) < 12; k++ {
		n := &r.clauses[k]
		if r.saidIn(n, "click") || r.saidIn(n, "clicked") || r.valueBetween(n, n.lo, n.hi) {
			return true
		}
	}
	return false
}

// putOffNext tells whether the next breath puts off what a value is for: "I'll do that when
// I find my wrench", "Not now though, when it's gone off."
func (s *tracker) putOffNext(ci int) bool {
	r := s.r
	if ci+1 >= len(r.clauses) || r.since(r.clauses[ci].hi-1, r.clauses[ci+1].lo) > 6 {
		return false
	}
	n := &r.clauses[ci+1]
	i := r.skipped(n)
	for i < n.hi && (r.toks[i].s == "but" || r.toks[i].s == "so") {
		i++
	}
	switch w, next := r.word(i), r.next(i); {
	case w == "not" && (next == "now" || next == "today" || next == "tonight" || next == "yet" || next == "till" || next == "until"):
		return true
	case w == "later" || w == "tomorrow" || w == "only" && (next == "when" || next == "once"):
		return n.hi-i <= 6 || w == "only"
	case w == "i" && (next == "'ll" || next == "will") && (r.word(i+2) == "do" || r.word(i+2) == "get" || r.word(i+2) == "give" || r.word(i+2) == "torque") && pronounsObj.has(r.word(i+3)):
		if r.saidIn(n, "again") {
			return false // "and I'll do those again after a bit of driving"
		}
		if r.saidIn(n, "later") || r.saidIn(n, "tomorrow") || r.saidIn(n, "when") || r.saidIn(n, "once") || r.dayIn(n) {
			return true
		}
		if k := ci + 2; k < len(r.clauses) && r.clauses[k].sentence == n.sentence {
			switch r.toks[r.clauses[k].lo].s {
			case "when", "once", "after", "as", "if":
				return true
			}
		}
	}
	return false
}

// saysIt tells whether a value stands behind words by which something else gives it: "it
// says on the end of it, twelve newton metres", "they said eight". "I'd say" is no such.
func (s *tracker) saysIt(c *clause, q *quantity) bool {
	from := c.lo
	if n := int(s.r.toks[c.lo].cl); n > 0 && s.r.clauses[n-1].sentence == c.sentence && q.lo-s.r.clauses[n-1].lo < 12 {
		from = s.r.clauses[n-1].lo
	}
	for i := from + 1; i < q.lo; i++ {
		if w := s.r.toks[i].s; w != "says" && w != "said" && w != "reckons" && w != "reads" {
			continue
		}
		switch s.r.toks[i-1].s {
		case "it", "they", "he", "she", "that", "which", "helpfully", "tag", "cap", "collar", "end", "side", "lever":
			return true
		}
		if s.r.toks[i-1].men >= 0 {
			return true
		}
	}
	w := s.r.toks[c.lo].s
	return w == "says" || w == "reads"
}

// setSoon tells whether something is tightened right after a value, or said to be done.
func (s *tracker) setSoon(ci int, q *quantity) bool {
	r := s.r
	for k := ci; k < min(len(r.clauses), ci+5) && r.since(q.hi-1, r.clauses[k].lo) < 14; k++ {
		n := &r.clauses[k]
		if k == ci {
			continue
		}
		if r.valueBetween(n, n.lo, n.hi) {
			return false // "it says eighty. … So I'm doing them at eight"
		}
		if s.actDone(n) || n.hi-n.lo <= 4 && len(n.mentions) == 0 && n.mood == 0 && (r.saidIn(n, "done") || r.toks[n.lo].s == "there" || r.toks[n.hi-1].s == "there") {
			return true
		}
	}
	return false
}

// framing gives the moods that frame a value: those told not far from it. In talk
// without punctuation a clause can run on.
func framing(c *clause, q *quantity) mood {
	m := c.mood & asked
	for _, k := range c.cues {
		if k.hi <= q.lo && q.lo-k.hi <= 10 || k.lo >= q.hi && k.lo-q.hi <= 4 {
			m |= k.mood
		}
	}
	return m
}

func (s *tracker) actDone(c *clause) bool {
	for _, ai := range c.acts {
		a := &s.r.acts[ai]
		if a.happened() && (a.action.Name == "torque" || a.action.Name == "tighten") {
			return true
		}
	}
	return false
}

// guessed tells whether the speaker says that a value is a guess.
func (s *tracker) guessed(c *clause, q *quantity) bool {
	lo, hi := c.lo, min(c.hi+8, len(s.r.toks))
	for _, qi := range c.qtys {
		// "28 on both, bleeder somewhere between 6 and 8": what stands by another value is of that
		if o := &s.r.qtys[qi]; o.Kind == normalize.Torque && o.lo >= q.hi {
			hi = min(hi, o.lo-3)
		} else if o.Kind == normalize.Torque && o.hi <= q.lo {
			lo = max(lo, o.hi)
		}
	}
	for i := lo; i < hi; i++ {
		switch s.r.toks[i].s {
		case "guess", "guessing", "guessed", "reckon", "somewhere":
			return true
		case "thought":
			return i > 0 && s.r.toks[i-1].s == "have"
		}
	}
	return s.r.notByHeart(q)
}

// notByHeart tells whether right before a value its speaker says not to know it: "the torque I
// don't know for this fork. Thirty, forty, something like that".
func (r *reading) notByHeart(q *quantity) bool {
	for i := q.lo - 1; i >= max(1, q.lo-14); i-- {
		switch t := &r.toks[i]; {
		case t.qty >= 0 && r.toks[i].s != "to" && int(t.qty) < len(r.qtys) && r.qtys[t.qty].hi < q.lo-2:
			return false
		case t.s == "know" || t.s == "remember":
			if w := r.toks[i-1].s; w == "not" || strings.HasSuffix(w, "n't") {
				return r.since(i, q.lo) < 12 && !r.weSpeak(i+1, q.lo) && r.next(i) != "which" && r.next(i) != "who" && r.next(i) != "if"
			}
		}
	}
	return false
}

func (s *tracker) lastState(t *thing) string {
	st, _ := t.state()
	return st
}
