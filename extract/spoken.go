package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
)

// loose is a loose end heard in the talk: what kind, on what, from which words.
type looseEnd struct {
	kind, before string
	first, last  int // clauses, the cue's own among them
	lo, hi       int // tokens of the cue
	topic        int // mention that it is about, or -1
	noun         int // the word that names what it is about where no list has it, or -1
	sure         bool
	byTwo        bool  // two who give different figures
	fronted      bool  // the thing stands before the one who does it
	also         []int // tokens of the later times it was raised
	signal       string
}

// spokenOpen reads what people say when they leave something open. Each signal
// of open.txt that stands where it means something begins a loose end or adds to
// the one being spoken of; what later talk settles is dropped.
func (r *reading) spokenOpen(rec *Record) []Open {
	var ends []*looseEnd
	r.odds = r.disagreements()
	for ci := range r.clauses {
		for _, oc := range r.cuesIn(ci) {
			if oc.signal == "recap" || oc.signal == "plan" {
				for _, e := range r.recap(ci, oc) {
					if !r.joins(ends, e) {
						ends = append(ends, e)
					}
				}
				continue
			}
			e := r.endAt(ci, oc, rec)
			if e == nil {
				continue
			}
			at := ci
			if oc.signal == "next" {
				at = e.last
			}
			if oc.signal == "later" && r.putsOff(ci, oc) {
				at, e.first = ci-1, ci-1
			}
			if e.kind != Conflict || !r.aimFrom(e) {
				r.aim(e, at, oc)
			}
			if !r.joins(ends, e) {
				ends = append(ends, e)
			}
		}
	}
	ends = append(ends, r.outstanding(ends, rec)...)
	ends = append(ends, r.hinted(ends, rec)...)
	ends = append(ends, r.closing(ends)...)
	ends = append(ends, r.restOfDay(ends)...)
	ends = r.usedFirst(ends)
	r.standsForLost(ends)
	var out []Open
	for _, e := range ends {
		if e.kind == "" || r.settled(e, rec) {
			r.laidToRest = append(r.laidToRest, e.lo)
			continue
		}
		if e.kind == NotRefitted && e.topic >= 0 && isolates.has(r.mentions[e.topic].head) && len(content(r.mentions[e.topic].mods)) == 0 && !r.without(e) {
			continue // the plug stays out for safety's sake
		}
		if e.kind == NotTorqued && e.topic < 0 && e.noun < 0 && !r.tightSaid(e) {
			continue // "the dog's in the way, like always"
		}
		o := r.askOf(e, rec)
		if e.signal == "none" {
			o.Kind = LockMissing
			o.Question = "Is there a " + lexicon.Singular(o.About) + " in now? The recording says that there is none."
		} else if e.kind == NotRefitted && e.signal != "short" {
			if t := r.leftOff(e, rec); t != nil && !r.withoutOne(openCue{e.lo, e.hi, e.signal}) && (e.signal != "lost" && r.toks[e.lo].s != "left" || e.topic < 0) {
				o.About, o.LedgerID = torqueName(t), t.id
				if isLock(t) {
					o.Kind = LockMissing
				}
				o.Question = question(o)
			} else if e.signal == "lying" && !r.heardIn(e.first, e.last, "remember") || e.signal == "still-off" && r.hasWord(openCue{e.lo, e.hi, e.signal}, "where") && !(e.sure && r.ownTopic(e) && r.toks[e.hi-1].s == "where") {
				continue // nothing of the machine is known to be off
			}
		}
		out = append(out, o)
	}
	return out
}

// without tells of "with no plug in it": a hole that is open, no current cut off.
func (r *reading) without(e *looseEnd) bool {
	for i := e.lo; i < e.hi; i++ {
		if r.toks[i].s == "no" {
			return true
		}
	}
	return false
}

// isolates are what keeps a machine dead while it is worked on.
var isolates = set("plug key cord switch charger")

// leftOff gives what is still off by the ledger, of the things spoken of right
// before "it's still off".
func (r *reading) leftOff(e *looseEnd, rec *Record) *thing {
	off := map[string]bool{}
	for _, l := range rec.Ledger {
		off[l.ID] = l.State == Removed || l.State == Discarded
	}
	if e.fronted {
		if e.topic >= 0 && r.mentions[e.topic].entry != nil && off[r.mentions[e.topic].entry.id] {
			return r.mentions[e.topic].entry
		}
		return nil
	}
	if e.signal == "lacking" {
		if m := &r.mentions[e.topic]; m.entry != nil && off[m.entry.id] && m.entry.name == m.name {
			return m.entry
		}
		return nil
	}
	for k := e.last; k >= 0 && k >= e.last-8 && r.since(r.clauses[k].lo, e.lo) < 14; k-- {
		if e.topic >= 0 && k < r.mentions[e.topic].cl && (r.ownTopic(e) || direct(&r.mentions[e.topic]) && r.mentions[e.topic].cl >= int(r.toks[e.lo].cl)-2 && r.since(r.mentions[e.topic].lo, e.lo) < 6) {
			break // what is off was named right there
		}
		ms := r.clauses[k].mentions
		for i := len(ms) - 1; i >= 0; i-- {
			m := &r.mentions[ms[i]]
			if t := m.entry; t != nil && off[t.id] {
				return t
			}
			for _, fastener := range []bool{true, false} {
				for _, t := range r.like(m.head, fastener) {
					if off[t.id] && t.first < e.lo && r.mayName(m, t) {
						return t
					}
				}
			}
		}
	}
	return nil
}

// cuesIn gives the signals of a clause, and where it gives one value or another
// without saying which ("five millimetre, or six").
func (r *reading) cuesIn(ci int) []openCue {
	c := &r.clauses[ci]
	cues := c.opens
	for _, qi := range c.qtys {
		q := &r.qtys[qi]
		if q.Alt && ours(q.Kind) && c.mood&(listing|asked|conditional) == 0 {
			cues = append(cues[:len(cues):len(cues)], openCue{q.lo, q.hi, "doubt"})
		}
	}
	if _, ok := r.notSo(ci); ok {
		// told by what is denied
	} else if i := r.notDone(c); i >= 0 && !r.heardIn(ci, ci, "undone", "unrun", "half-tight", "still-off") {
		cues = append(cues[:len(cues):len(cues)], openCue{i, i + 2, "undone"})
	}
	if i := r.makeshift(c); i >= 0 {
		cues = append(cues[:len(cues):len(cues)], openCue{i, i + 1, "makeshift"})
	}
	if r.planFor(ci) {
		cues = append(cues[:len(cues):len(cues)], openCue{c.lo, c.hi, "plan"})
	}
	if l := r.leaves(ci); len(l) > 0 {
		cues = append(cues[:len(cues):len(cues)], l...)
	}
	if _, ok := r.odds[ci]; ok || r.belied(ci) >= 0 || r.selfOdds(ci) || r.denied(ci) || r.otherWay(ci) {
		cues = append(cues[:len(cues):len(cues)], openCue{c.lo, c.hi, "odds"})
	}
	return cues
}

// wantsNew tells of "it wants replacing": what is on is to be replaced.
func (r *reading) wantsNew(oc openCue) bool {
	switch r.toks[oc.lo].s {
	case "wants", "needs", "ought", "should":
		return true
	case "new", "proper", "right":
		return r.toks[oc.hi-1].s == "coming" // "new one's coming"
	}
	return false
}

// spoilt tells whether something is told, right before a clause or in it, to be
// broken, worn or lost.
func (r *reading) spoilt(ci int) bool {
	lo, _ := r.nearBy(ci, 3, 0, 12)
	for i := r.clauses[lo].lo; i < r.clauses[ci].hi; i++ {
		switch r.toks[i].s {
		case "nick", "nicked", "broken", "broke", "split", "snapped", "lost", "gone", "cracked", "stripped", "sheared", "rounded", "missing", "perished", "chewed", "torn", "rusted":
			return true
		}
	}
	return false
}

// notDone gives the token of "haven't" where what has not been done is told by any
// verb: "the lance, I haven't opened it"; -1 where there is none.
func (r *reading) notDone(c *clause) int {
	if c.mood&(other|conditional|asked|hypothetical|aside) != 0 {
		return -1
	}
	for i := c.lo; i+1 < c.hi; i++ {
		w := r.toks[i].s
		if w != "haven't" && w != "ain't" && !(w == "not" && (r.prev(i) == "have" || r.prev(i) == "'ve")) || !r.ofMe(max(c.lo, i-3), i) && w != "ain't" {
			continue
		}
		next := r.toks[i+1].s
		for k := i + 1; loosely.has(next) && k+1 < c.hi; k++ {
			next = r.toks[k+1].s
		}
		if len(r.lex.Lemmas(next)) > 0 && !leavesNone.has(next) && !strings.HasSuffix(next, "ing") {
			return i
		}
	}
	return -1
}

var loosely = set("even really yet actually quite fully properly")

// leavesNone are verbs that leave no work undone: "I haven't used one", "I've not seen it".
var leavesNone = set("got had seen been heard found met used said gone lost made bought broken forgotten shown measured looked come touched moved disturbed changed altered")

// makeshift gives the token of what holds for want of something better: a tie, a
// nail, "a bit of wire"; -1 where there is none.
func (r *reading) makeshift(c *clause) int {
	if c.mood&(negated|conditional|other|asked|listing|aside) != 0 {
		return -1
	}
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		if !r.toks[i].is(wSeldom) || !makeshifts.has(w) {
			continue
		}
		if n := r.next(i); n == "varnish" || n == "polish" || n == "file" || w == "nail" && r.word(i-2) == "on" {
			continue // "balanced on a nail"
		}
		if r.reachedWith(c, i) {
			continue
		}
		for k := i - 1; k >= max(c.lo, i-4); k-- {
			p := r.toks[k].s
			if p == "of" || !bareHold.has(w) && (p == "a" || p == "an" || p == "one" || p == "bent" || countOf[p] > 1 || p == "couple" || p == "some") {
				return i
			}
			if p == "new" || p == "the" {
				break
			}
		}
	}
	return -1
}

// reachedWith tells whether what may be a makeshift at a token is what something is reached or
// cleaned with: "I got two out with a bit of wire".
func (r *reading) reachedWith(c *clause, at int) bool {
	i := at - 1
	for i > c.lo && i > at-5 && r.toks[i].s != "with" {
		i--
	}
	if i < c.lo || r.toks[i].s != "with" {
		return false
	}
	for i--; i >= c.lo; i-- {
		if fishing.has(r.lemma1(r.toks[i].s)) {
			return true
		}
	}
	return false
}

// fishing are the verbs of getting at what hands do not reach.
var fishing = set("get fish hook pull poke prod clean clear scrape pick push feel rod")

// makeshifts hold what has lost its own fastener.
var makeshifts = wordsOf("what stands in for a fastener")

// bareHold are those that are as often a part or a tool: "a bit of wire" holds, "the plug wire" does not.
var bareHold = wordsOf("what may be a part as well")

// heardIn tells whether a signal was given in the clauses from lo to hi.
func (r *reading) heardIn(lo, hi int, signals ...string) bool {
	for k := max(lo, 0); k <= min(hi, len(r.clauses)-1); k++ {
		for _, o := range r.clauses[k].opens {
			for _, s := range signals {
				if o.signal == s {
					return true
				}
			}
		}
	}
	return false
}

// near gives the clauses within so many clauses and seconds of a clause.
func (r *reading) nearBy(ci, back, ahead int, seconds float64) (lo, hi int) {
	lo, hi = ci, ci
	for lo > 0 && ci-lo < back && r.since(r.clauses[lo-1].lo, r.clauses[ci].lo) <= seconds {
		lo--
	}
	for hi+1 < len(r.clauses) && hi-ci < ahead && r.since(r.clauses[ci].lo, r.clauses[hi+1].lo) <= seconds {
		hi++
	}
	return lo, hi
}

// endAt tells what loose end a signal is, or nil where it leaves nothing open.
func (r *reading) endAt(ci int, oc openCue, rec *Record) *looseEnd {
	c := &r.clauses[ci]
	if c.mood&aside != 0 {
		return nil
	}
	if c.mood&greeting != 0 && oc.signal != "promise" && oc.signal != "next" {
		return nil
	}
	e := &looseEnd{before: BeforeUse, first: ci, last: ci, lo: oc.lo, hi: oc.hi, topic: -1, noun: -1, signal: oc.signal}
	if r.usedTo(c) {
		return nil // "I used to leave these loose"
	}
	lo, hi := r.nearBy(ci, 2, 2, 12)
	said := c.mood
	told := said&(other|hypothetical|conditional) == 0
	switch oc.signal {
	case "unknown":
		if r.toks[oc.hi-1].s == "gap" && (r.word(oc.hi) == "now" || r.word(oc.hi) == "between" || r.word(oc.hi) == "there") || r.toks[oc.hi-1].s == "number" && r.kind(oc.hi).is(wCounts) || r.heardIn(ci, min(ci+1, len(r.clauses)-1), "promise") && r.hasWord(oc, "number") {
			return nil // "there's a gap between", "it's got a number three bit in it", a number that viewers will get
		}
		switch r.toks[oc.hi-1].s {
		case "gap", "gaps", "angle", "clearance", "tension", "pressure", "play":
			if w := r.toks[oc.lo].s; w == "there" || w == "there's" || w == "'s" || w == "should" || w == "must" {
				return nil // "there's a gap I could post a letter through"
			}
		case "torque":
			if r.ofTool(oc.hi - 1) {
				return nil // "there's a torque arm on it"
			}
		case "on":
			if r.hasWord(oc, "number") && r.partAfter(c, oc.hi) >= 0 {
				return nil // "the number's on the seal"
			}
		}
		if r.noneGiven(ci, oc) || r.givenNow(ci, oc) || r.toolIn(oc) {
			return nil
		}
		e.kind = LookUp
		if (r.saidIn(c, "read") || r.saidIn(c, "see")) && r.candidatesIn(ci) {
			e.kind = Unsure // "it's a ninety two or a ninety five, I can't read it"
		}
	case "ask":
		_, hi := r.nearBy(ci, 0, 7, 16)
		if said&other != 0 || !r.heardIn(ci, hi, "unknown", "undecided", "find") && !r.heardIn(ci, ci+1, "doubt") {
			return nil
		}
		if r.hasWord(oc, "many") && !r.heardIn(ci, ci+1, "unknown", "undecided", "find") {
			return nil // "how many's a few?"
		}
		e.kind = LookUp
		if r.heardIn(ci, ci+1, "doubt") && !r.heardIn(ci, min(ci+2, len(r.clauses)-1), "unknown", "find") && ci+1 < len(r.clauses) && len(r.numbers(&r.clauses[ci+1])) > 0 {
			e.kind = Unsure // "How tight? I think it's five."
		}
	case "find":
		if said&conditional != 0 || r.hasWord(oc, "had") {
			return nil
		}
		if r.toks[oc.hi-1].s == "asking" && !r.ofMe(max(c.lo, oc.lo-1), oc.hi) || r.word(oc.hi) == "why" || r.prev(oc.lo) == "that" && r.word(oc.lo-2) == "so" {
			return nil // "she's asking fifty", "and find out why", "so that I find it again"
		}
		switch w := r.toks[oc.lo].s; {
		case w == "'ve" || w == "have" || w == "i" && r.next(oc.lo) == "'ve":
			e.kind = "" // "I've written to them": of what was said before
		case r.heardIn(lo, hi, "unknown", "ask", "doubt", "undecided") || !r.measuring(oc) && (r.valueIn(lo, hi) || r.asksWhat(c) || r.asksNext(ci)) || r.looksUp(oc):
			e.kind = LookUp
			if r.measuring(oc) {
				e.kind = Unsure
			}
		case r.measuring(oc) && (r.hasWord(oc, "got") || r.hasWord(oc, "need") || r.hasWord(oc, "have") || r.hasWord(oc, "must")) && r.since(0, c.lo) > 0.8*r.since(0, len(r.toks)-1) && said&(other|conditional) == 0:
			e.kind = Unfinished // "and I've got to check the volts", at the end
		default:
			e.kind = "" // joins what it is said of
		}
	case "doubt":
		if r.word(oc.hi) == "i" && (r.next(oc.hi) == "'ve" || r.next(oc.hi) == "have") && r.word(oc.hi+2) == "got" {
			return nil // "I think I've got a thirteen in here"
		}
		switch r.toks[oc.lo].s {
		case "or":
			// "string or something", "every fifth or so"
			if r.hasWord(oc, "so") || r.hasWord(oc, "something") {
				if p := r.kind(oc.lo - 1); !p.is(wCounts) && r.toks[max(oc.lo-1, 0)].qty < 0 && !r.kind(oc.lo-2).is(wCounts) || r.word(oc.lo-2) == "every" {
					return nil
				}
			}
		case "ought":
			if p := r.prev(oc.lo); (p == "there" || p == "it") && r.word(oc.lo-2) == "as" {
				return nil // "two at each end, as there ought to be"
			}
		}
		if !told && said&other != 0 || !r.doubtful(ci, oc, rec) && !r.placedInDoubt(e, oc) {
			return nil
		}
		e.kind = Unsure
	case "either", "queried":
		if said&other != 0 || c.mood&asked != 0 && oc.signal != "queried" || r.putRight(ci, oc) {
			return nil
		}
		if oc.signal == "queried" && !r.namesNear(ci) && !r.openAsked(ci) && !(r.toks[oc.hi-1].s == "about" && pronounsObj.has(r.word(oc.hi))) {
			return nil
		}
		e.kind = Unsure
	case "unfitting":
		if !told || c.mood&asked != 0 || r.pastTold(c) || !r.namesNear(ci) || r.saidIn(c, "you") || r.saidIn(c, "back") {
			return nil
		}
		e.kind = Suspect
	case "two-left", "two-doubts", "two-poor":
		if !told && !r.saidIn(c, "nobody") && !(oc.signal == "two-left" && (r.saidIn(c, "somebody") || r.saidIn(c, "someone"))) || c.mood&asked != 0 && oc.signal != "two-doubts" || r.pastTold(c) || r.saidIn(c, "you") || !r.namesNear(ci) || r.setAbout(ci) || r.putRight(ci, oc) {
			return nil
		}
		switch oc.signal {
		case "two-left":
			if r.saidIn(c, "hours") || r.saidIn(c, "minutes") {
				return nil // "that wants a few hours before it sees rain"
			}
			e.kind = Unfinished
		case "two-doubts":
			e.kind = Unsure
		default:
			e.kind, e.before = ReplaceLater, BeforeLater
		}
	case "out-of-reach":
		e.kind = NotTorqued
	case "no-locker":
		if r.lockedLater(oc.lo) {
			return nil
		}
		e.kind = LockMissing
	case "two-light":
		if r.reachedIn(ci, oc.lo) || !told || c.mood&asked != 0 || r.pastTold(c) && !r.saidIn(c, "'ve") || r.saidIn(c, "you") || r.saidIn(c, "your") || r.saidIn(c, "whether") || !r.tightensNear(ci) && !r.frontedFastener(ci) || r.undoes(c) {
			return nil
		}
		e.kind = NotTorqued
	case "misfit":
		e.kind = Suspect
		e.first = int(r.toks[oc.lo].cl)
	case "for-want":
		if said&other != 0 {
			return nil
		}
		e.kind, e.before = ReplaceLater, BeforeLater
	case "unlikely", "to-check":
		q := r.valueDoubted(ci, oc)
		if q == nil && oc.signal == "to-check" && r.headedBy(ci) >= 0 && c.mood&(asked|other|conditional|hypothetical) == 0 {
			e.kind = Unfinished // "The brake fluid. It came over the top, want to check that."
			break
		}
		if q == nil {
			return nil
		}
		e.kind = Suspect
		if oc.signal == "to-check" {
			if next := r.word(oc.hi); next == "after" || next == "again" || next == "in" || next == "once" || next == "when" || r.heardIn(q.cl, ci, "unlikely", "misprint") {
				return nil // gone over again after use, or asked already
			}
			e.kind = Unsure
		}
		e.first, e.lo, e.hi = q.cl, q.lo, q.hi
	case "misprint":
		// of the value read out before: "180 newton metres … somebody lost a dot"
		for k := len(r.heard) - 1; k >= 0; k-- {
			q := &r.qtys[r.heard[k].qty]
			if q.lo < oc.lo && r.since(q.hi, oc.lo) < 25 && !(r.hasWord(oc, "think") && (r.since(q.hi, oc.lo) > 6 || r.clauses[max(ci-1, 0)].mood&asked != 0)) {
				e.kind, e.first, e.lo, e.hi = Suspect, q.cl, q.lo, q.hi
				break
			}
		}
		if e.kind == "" {
			return nil
		}
	case "misgiving":
		if !told || c.mood&asked != 0 || !r.workNear(ci) || r.saidIn(c, "you") {
			return nil
		}
		e.kind = Unsure
	case "gainsaid":
		lo, _ := r.nearBy(ci, 3, 0, 12)
		for k := ci; k >= lo; k-- {
			if st, ok := r.statementIn(k); ok && st.source {
				e.kind, e.first, e.lo, e.hi = Conflict, k, r.clauses[k].lo, r.clauses[k].hi
				break
			}
		}
		if e.kind == "" {
			return nil
		}
	case "undecided":
		if oc.lo > c.lo && r.toks[oc.lo-1].s == "you" {
			return nil // "after you don't know"
		}
		if next := r.word(oc.hi); r.saidIn(c, "why") || next == "who" || next == "how" && !howMuch.has(r.next(oc.hi)) {
			return nil // "I don't know how they get in there with a ten"
		}
		if !r.valueIn(max(ci-1, 0), min(ci+1, len(r.clauses)-1)) {
			if !r.twoGuesses(ci) {
				if said&other != 0 || r.toks[oc.lo].s == "one" || !r.placedInDoubt(e, oc) && !r.whether(ci) && !r.eitherOf(ci, oc) {
					return nil
				}
				e.kind = Unsure
				break
			}
			for k := ci; k >= max(0, ci-5) && r.since(r.clauses[k].lo, c.lo) < 16; k-- {
				if r.heardIn(k, k, "doubt") { // where the guesses are
					e.first, e.last, e.lo, e.hi = k, k, r.clauses[k].lo, r.clauses[k].hi
				}
			}
		} else if (r.figureSaid(c) || ci > 0 && r.figureSaid(&r.clauses[ci-1]) && !r.figureSaid(&r.clauses[min(ci+1, len(r.clauses)-1)])) && !r.figureNear(ci) {
			e.kind = LookUp // "they get a torque and I've not got a clue"
			break
		}
		e.kind = Unsure
		if r.hasWord(oc, "right") && r.hasWord(oc, "can't") && r.figureNear(ci) {
			e.kind = Suspect // "90 for an M6, that can't be right"
		}
	case "half-tight":
		if r.reachedIn(ci, oc.lo) {
			return nil // told by what is not reached
		}
		if p := r.prev(oc.lo); p == "was" || p == "were" || r.foundIn(ci) || r.hasWord(oc, "yet") && (r.doneAlready(ci) || r.amiss(ci, "tighten", "torque")) {
			return nil // "it was only hand tight": how it was found
		}
		if w := r.next(oc.hi); r.word(oc.hi) == "and" && (r.nextKind(oc.hi).is(wCounts) || w == "a" || w == "another" || w == "then") && (ofTurn.has(r.word(oc.hi+2)) || ofTurn.has(r.word(oc.hi+3))) {
			return nil // "hand tight and three quarters": that is all it gets
		}
		if r.hasWord(oc, "torque") && (r.saidIn(c, "'d") || r.saidIn(c, "had")) {
			return nil // "I'd no torque wrench till I was fifty"
		}
		if (r.hasWord(oc, "loose") || r.hasWord(oc, "all")) && (r.word(oc.hi) == "off" || r.word(oc.hi) == "out" || r.comesAway(ci)) {
			return nil // "not all the way off", "and the shaft's loose, so it slides out"
		}
		if r.hasWord(oc, "stripped") && r.saidIn(c, "old") {
			return nil // "that's stripped, in the old housing"
		}
		if w := r.next(oc.lo); (w == "so" || w == "to") && (r.toks[oc.lo].s == "just" || r.toks[oc.lo].s == "only") && !r.tightensNear(ci) {
			return nil // "a rag in there just so it doesn't drip"
		}
		if w := r.toks[oc.hi-1].s; (w == "feel" || strings.HasPrefix(w, "click")) && !r.tightensNear(ci) {
			return nil // "you can't see it, it's all by feel"; a gear that is not clicking
		}
		if (r.toks[oc.hi-1].s == "spins" || r.toks[oc.hi-1].s == "spinning") && !r.turnedHere(c, c.hi) && (ci == 0 || !r.turnedHere(&r.clauses[ci-1], c.hi)) && !r.saidIn(&r.clauses[min(ci+1, len(r.clauses)-1)], "thread") {
			return nil // "I turn the impeller, and it just spins"
		}
		if !told || c.mood&negated != 0 && !r.heardIn(ci, ci, "undone") && !denies.has(r.toks[oc.lo].s) || r.forASecond(oc) || r.youDo(c, oc) {
			return nil
		}
		e.kind = NotTorqued
	case "odds":
		e.kind = Conflict
		if e.first = r.belied(ci); e.first < 0 {
			e.first = ci // both in one breath
			if k, ok := r.odds[ci]; ok {
				e.first, e.byTwo = min(k, ci), true
			} else if !r.selfOdds(ci) {
				e.first = max(0, ci-1) // what is denied
			}
		}
		e.lo, e.hi = r.clauses[e.first].lo, r.clauses[e.first].hi
	case "wrong":
		switch r.word(oc.hi) {
		case "night", "day", "time", "evening", "week", "video", "weekend":
			return nil // "that's for another night"
		}
		if !r.disagrees(oc) && len(r.statements(ci-7, ci, 40)) == 0 {
			return nil // "a different model", and no two who say different things
		}
		e.kind = Conflict
		// the first of the two sources is where the matter begins
		for _, st := range r.statements(ci-7, ci, 40) {
			if r.since(r.clauses[st.ci].lo, c.lo) < 25 {
				e.first, e.lo, e.hi = st.ci, r.clauses[st.ci].lo, r.clauses[st.ci].hi
				break
			}
		}
	case "undone":
		if lo, _ := r.withoutLocker(ci); lo >= 0 && oc.lo >= lo-2 {
			return nil // asked as a lock
		}
		if r.ofFluid(oc) && (r.goesIn(ci) || r.hasWord(oc, "was") || r.saidIn(c, "ever") || r.often(c)) {
			return nil // "there's no oil in it, so in goes two litres"; "there was no oil in it"
		}
		if d, ok := r.notSo(ci); ok && d.signal != "un-done" && (r.hasWord(oc, "haven't") || r.hasWord(oc, "isn't") || r.hasWord(oc, "aren't") || r.hasWord(oc, "not")) {
			return nil // told by what is denied
		}
		if w := r.word(oc.hi); (r.hasWord(oc, "never") || r.hasWord(oc, "didn't")) && (w == "find" || w == "know" || w == "understand" || w == "like" || w == "hear") {
			return nil // "I never did find out"
		}
		if m := r.namedLast(ci, oc.lo); r.toks[oc.hi-1].s == "flat" && (m == nil && r.prev(oc.lo) == "it" || m != nil && !goesFlat.has(m.head) || r.saysOneOf(c.lo, oc.lo, "when", "if", "once")) {
			return nil // "do it till the washer's flat", "for when the battery's flat"
		}
		if r.saidIn(c, "since") || oc.lo > c.lo && subjects.has(r.toks[oc.lo-1].s) && r.ofMe(oc.lo-1, oc.lo) && (r.toks[oc.hi-1].s == "low" || r.toks[oc.hi-1].s == "flat") {
			return nil // "that hasn't gone since", "while we're low down"
		}
		if !told && !(said&conditional == 0 && r.hasWord(oc, "be") && (r.toks[oc.lo].s == "still" || r.toks[oc.lo].s == "yet")) && !(r.wants(oc) && (said&(hypothetical|conditional) == 0 || r.toks[oc.lo].s == "could" && said&conditional == 0)) || r.heardIn(ci, ci, "unrun") || c.mood&asked != 0 || ci > 0 && r.clauses[ci-1].sentence == c.sentence && r.clauses[ci-1].mood&conditional != 0 {
			return nil
		}
		if w := r.toks[oc.hi-1].s; (w == "doing" || w == "starting" || w == "do") && !(r.wants(oc) && (oc.hi-oc.lo == 4 || r.dayIn(c))) && (r.toks[oc.lo].s != "still" || oc.lo == c.lo && (ci == 0 || r.stopHeard(ci))) && !r.today(c) && len(c.mentions) == 0 && !r.hasWord(oc, "more") {
			return nil // "some people belt it, I'm not doing that"
		}
		if r.stateOnly(oc) && !r.standsSo(ci) {
			return nil // "it's flat here, look": as it was found
		}
		e.kind = Unfinished
		if k := r.denies(ci, oc); k != "" {
			e.kind = k
		} else if r.wants(oc) {
			e.kind = r.wantedKind(oc)
		} else if r.hasWord(oc, "put") && (r.hasWord(oc, "back") || r.word(oc.hi) == "back") {
			e.kind = NotRefitted // "I've not put the battery lead back yet"
		}
	case "un-tight", "un-on", "un-locked", "un-done":
		switch oc.signal {
		case "un-tight":
			if r.amiss(ci, "tighten", "torque") || r.heardIn(ci, ci, "half-tight") {
				return nil
			}
			e.kind = NotTorqued
		case "un-on":
			if r.amiss(ci, "fit") || r.heardIn(ci, ci, "still-off") {
				return nil
			}
			e.kind = NotRefitted
		case "un-locked":
			if r.amiss(ci, "lock", "fit") {
				return nil
			}
			e.kind = LockMissing
		default:
			if r.amiss(ci, "adjust", "bleed", "fit") || r.heardIn(ci, ci, "undone") || foundSo.has(r.toks[oc.hi-1].s) && !r.standsSo(ci) {
				return nil // "the shaft's not level", "it hasn't moved"
			}
			e.kind = Unfinished
		}
	case "elsewhere":
		e.kind = r.keptFrom(ci)
	case "unrun":
		if r.word(oc.hi) == "for" || r.word(oc.hi) == "since" {
			return nil // "it hasn't run for a year": how it came
		}
		if said&(other|conditional) != 0 {
			return nil
		}
		e.kind = Unfinished
	case "watch":
		w := r.talk.Words[r.toks[c.lo].w]
		if !told || w.At < 0.6*r.talk.Clips[w.Clip].Duration || !r.wills(ci) && !r.wills(max(ci-1, 0)) {
			return nil
		}
		e.kind = Unfinished
	case "remember":
		e.kind = Unfinished
		if ci > 0 && r.since(r.clauses[ci-1].lo, c.lo) < 8 {
			e.first = ci - 1
		}
	case "later":
		if r.noPutOff(ci, oc) {
			return nil
		}
		switch r.prev(oc.lo) {
		case "about", "from", "since", "last":
			return nil // "she'll want to know about Thursday"
		case "it":
			if r.toks[oc.lo].s == "'s" && len(c.mentions) == 0 {
				return nil // "it's Saturday"
			}
		case "'s":
			if r.word(oc.lo-2) == "it" && len(c.mentions) == 0 {
				return nil
			}
		}
		if r.heardIn(ci, ci, "still-off") {
			return nil // told there; "you'd pull the lid off … that's another day"
		}
		if r.when(oc) && r.ofFlow(oc) {
			return nil // "until the fluid comes"
		}
		if next := r.word(oc.hi); next == "there" || r.prev(oc.lo) == "at" || r.heardIn(ci, ci, "find") || oc.lo == c.lo && (r.heardIn(ci-1, ci-1, "find") || ci+1 < len(r.clauses) && r.clauses[ci+1].sentence == c.sentence && r.heardIn(ci+1, ci+1, "promise")) {
			return nil // "when we get there", "all at once", "I'll look it up tonight"
		}
		if said&(conditional|asked) != 0 || said&other != 0 && !r.putsOff(ci, oc) || r.heardIn(ci, ci, "promise", "next") || oc.lo == c.lo && r.heardIn(ci-1, ci-1, "promise") || !r.intends(ci, oc) && !r.putsOff(ci, oc) {
			return nil
		}
		e.kind = Unfinished
	case "back-to":
		if !told || r.saidIn(c, "always") {
			return nil
		}
		e.kind = Unfinished
	case "unfit":
		if !told || c.mood&asked != 0 {
			return nil
		}
		e.kind = Unfinished
	case "again":
		due := e.due(r)
		if r.doneAlready(ci) {
			return nil
		}
		if due == "" && !r.afterUse(ci) {
			return nil
		}
		e.kind = Unfinished
		if due == "" || strings.HasPrefix(due, "after") {
			e.before = BeforeLater
		}
	case "damage":
		_, hi := r.nearBy(ci, 0, 5, 20)
		late := r.toks[oc.lo].s == "still" && r.clauses[ci].mood&(negated|asked) == 0
		if !told || r.hasWord(oc, "cracked") && r.tightensNear(ci) || r.pastTold(c) || !r.heardIn(ci, hi, "accept", "ordered", "later") && !late || r.puttingRight(ci, hi) {
			return nil
		}
		e.kind = Unfinished
		if r.heardIn(ci, hi, "ordered") {
			e.kind, e.before = ReplaceLater, BeforeLater
		}
	case "stand-in":
		if r.hasWord(oc, "have") && r.hasWord(oc, "new") && oc.lo >= c.lo && !r.hasWord(oc, "until") && !r.hasWord(oc, "till") {
			return nil // "I have a new one here"
		}
		if r.saidIn(c, "live") || r.saidIn(c, "lives") || r.saidIn(c, "stay") || r.saidIn(c, "stays") || oc.lo > c.lo && (r.toks[oc.lo-1].s == "ta" || r.toks[oc.lo-1].s == "bye" || r.toks[oc.lo-1].s == "off") || r.hasWord(oc, "do") && r.word(oc.hi) == "is" || r.word(oc.hi) == "'s" || r.toks[oc.lo].s == "for" && oc.lo > c.lo && r.kind(oc.lo-1).is(wCounts) {
			return nil // "that can live on the bench for now"; "what I'll have to do is drill it"; "they're ten for now"
		}
		if r.tightForNow(ci, oc) {
			e.kind = NotTorqued
			break
		}
		if r.heardIn(ci, ci, "light:how") && r.tightensNear(ci) && told && !r.forASecond(oc) && r.toks[oc.lo].s == "for" {
			e.kind = NotTorqued // "that's spun on for now"
			break
		}
		if _, off := r.absent(ci); off || said&other != 0 || !r.laying(c) || r.setAt(c) || r.flows(oc) || r.youCould(c) || done.has(r.prev(oc.lo)) || r.toks[oc.lo].s == "for" && !r.inPlaceOf(ci, oc) {
			return nil
		}
		e.kind, e.before = ReplaceLater, BeforeLater
	case "lack":
		if said&(other|asked) != 0 || !r.madeDo(ci) {
			return nil
		}
		e.kind, e.before = ReplaceLater, BeforeLater
	case "makeshift":
		if c.mood&negated != 0 || r.youCould(c) {
			return nil
		}
		if w, p := r.toks[oc.lo].s, r.prev(oc.lo); makeshifts.has(w) && (p == "with" || r.word(oc.lo-2) == "with" || r.word(oc.lo-3) == "with" || p == "thumb" || r.word(oc.lo-2) == "like" || r.word(oc.lo-3) == "like") && !r.spoilt(ci) {
			return nil // "push it out with a nail", "it's like a rusty nail"
		}
		lo, hi := r.nearBy(ci, 2, 7, 18)
		if !r.spoilt(ci) && !r.heardIn(ci, hi, "ordered", "stand-in", "before-use") && !r.heardIn(ci, min(hi, ci+5), "later") && !r.heardIn(lo, ci, "lack", "lost", "none", "ordered") && !r.saidIn(c, "instead") && !r.forWantOf(lo, hi) && !(ci > lo && r.heardIn(lo, ci, "undone")) {
			return nil
		}
		e.kind, e.before = ReplaceLater, BeforeLater
	case "old-back":
		if !told || r.saidIn(c, "was") || r.saidIn(c, "were") || !r.heardIn(lo, hi+2, "ordered", "later", "stand-in", "damage", "lack", "find") {
			return nil
		}
		e.kind, e.before = ReplaceLater, BeforeLater
	case "before-use":
		if !r.duty(ci) || r.toks[oc.lo].s != "before" {
			return nil
		}
		e.kind, e.signal = Unfinished, "duty"
	case "ordered":
		if r.toks[oc.lo].s == "a" && oc.lo > c.lo && r.toks[oc.lo-1].s == "got" && r.toks[oc.hi-1].s == "one" {
			return nil // "the other end's got a proper one"
		}
		if r.toks[oc.lo].s == "should" && oc.lo > c.lo && (r.toks[oc.lo-1].s == "i" || r.toks[oc.lo-1].s == "you") {
			return nil // "I should have been a dentist"
		}
		if last := r.toks[oc.hi-1].s; r.hasWord(oc, "waiting") && (last == "the" || last == "a") && !r.waitedFor(c, oc.hi) {
			return nil // "waiting for the kettle"
		}
		if said&(other|conditional) != 0 || r.toks[oc.lo].s == "there" && r.amiss(ci, "fit") {
			return nil // "there's a new one. New seal in."
		}
		e.before = BeforeLater
		if r.heardIn(lo, hi+2, "stand-in", "old-back") || r.wantsNew(oc) || r.spoilt(ci) && r.duty(ci) {
			e.kind = ReplaceLater
		}
	case "still-off":
		if !told || r.toks[oc.lo].s != "left" && oc.hi < c.hi && inPlace(r.toks[oc.hi-1].s) && r.negatedIn(oc) {
			return nil // "it's not in the way"
		}
		if r.hasWord(oc, "waiting") {
			for i := oc.hi; i < min(c.hi, oc.hi+4); i++ {
				if r.toks[i].s == "to" {
					e.kind, e.signal = r.keptFrom(ci), "elsewhere"
					return e // "that's waiting for the wheels to be down"
				}
			}
		}
		if r.toks[oc.lo].s == "left" && r.toks[oc.hi-1].s == "over" && r.toks[oc.lo].brk >= brkComma {
			return nil // "tiller over left, over right"
		}
		if w := r.toks[oc.lo].s; (w == "stays" || w == "staying") && r.ofTools(c) {
			return nil // "the impact wrench stays in the drawer"
		}
		if r.word(oc.hi) == "between" || r.toks[oc.lo].s == "back" && !r.hasWord(oc, "on") && !r.hasWord(oc, "in") && (r.saidIn(c, "get") || r.saidIn(c, "have") || r.ofMe(c.lo, oc.lo) && r.prev(oc.lo) == "be") {
			return nil // "nothing in between the pads", "I'll get the puller back tomorrow"
		}
		if r.hasWord(oc, "going") && r.negatedIn(oc) && r.newFor(ci, oc.hi) {
			return nil // "that nut's not going back on, we'll have a new one"
		}
		if len(c.mentions) == 0 && r.hasWord(oc, "going") && !r.hasWord(oc, "back") && r.toks[oc.hi-1].s == "in" && r.negatedIn(oc) && !r.laterIn(c, oc.hi) && !r.saidIn(c, "till") && !r.saidIn(c, "until") && !r.saidIn(c, "yet") {
			return nil // "hang on, that's not going in", "my brother's is still in the box"
		}
		if r.toks[oc.hi-1].s == "find" && r.word(oc.hi) == "out" || r.toks[oc.hi-1].s == "drawer" {
			return nil // "I never did find out"
		}
		if (r.hasWord(oc, "no") || r.toks[oc.lo].s == "nothing" && r.prev(oc.lo) != "got") && (r.hasWord(oc, "it") || r.hasWord(oc, "there") || inPlace(r.toks[oc.hi-1].s)) && (!r.standsSo(ci) || r.often(c) || r.saidIn(c, "ever") || r.saidIn(c, "until") || r.saidIn(c, "till") || r.saidIn(c, "must") || r.noHarm(oc)) {
			return nil // "there's no grease in it, ever", "till there's no slack left in it", "no grit in it"
		}
		if r.hasWord(oc, "without") && (strings.HasSuffix(r.word(oc.hi), "ing") || idly.has(r.word(oc.hi))) {
			return nil // "it goes in without forcing"
		}
		if r.toks[oc.lo].s == "nothing" && r.prev(oc.lo) == "with" && r.intends(ci, oc) {
			return nil // "I'll run it with nothing in it"
		}
		e.kind = NotRefitted
		if r.ofFluid(oc) {
			if r.goesIn(ci) {
				return nil // "there's no oil in it, so in goes two litres"
			}
			e.kind = Unfinished // "there's no oil in it yet": nothing came off
		}
	case "none", "lacking":
		e.kind = NotRefitted
	case "absent":
		if r.heardIn(ci, ci, "thrown") && !r.laterIn(c, oc.lo) && !r.saidIn(c, "till") && !r.saidIn(c, "until") {
			return nil // "I drilled it out and I'm not putting it back"
		}
		if !told && c.mood&conditional != 0 || r.foundAgain(ci) || r.negatedIn(oc) && r.oldOnes(ci) || r.amiss(ci, "fit") && !r.saidIn(c, "no") {
			return nil
		}
		e.kind = NotRefitted
	case "lost":
		if r.hasWord(oc, "find") && r.wrenchAt(oc.hi, min(c.hi, oc.hi+4)) {
			e.kind, e.signal = r.keptFrom(ci), "elsewhere"
			break // "because I can't find the other wrench"
		}
		if r.hasWord(oc, "find") && (r.valueNamed(ci) || ci > 0 && r.clauses[ci-1].sentence == c.sentence && r.valueNamed(ci-1)) {
			e.kind, e.signal = LookUp, "unknown"
			break // "I looked for that number, and I can't find it"
		}
		if r.word(oc.hi) == "out" || r.word(oc.hi) == "to" && r.toks[oc.hi-1].s == "gone" || r.hasWord(oc, "wants") && (r.kind(oc.hi).is(wCounts) || r.toks[oc.lo].qty >= 0) || !told || r.prev(oc.lo) == "how" || r.foundAgain(ci) {
			return nil
		}
		if r.hasWord(oc, "see") && r.toks[oc.lo].s == "i" && !r.wasThere(ci) {
			return nil // "I can't see the timing mark from here"
		}
		e.kind = NotRefitted
	case "lying":
		if r.saidIn(c, "while") || r.prev(oc.lo) == "i" || r.saidIn(c, "nothing") || r.hasWord(oc, "unplugged") && !r.standsSo(ci) {
			return nil // "hook them on while they're on the bench"
		}
		if !told || r.foundAgain(ci) || r.madeDead(oc.lo) {
			return nil
		}
		e.kind = NotRefitted
	case "promise":
		if w := r.toks[oc.lo].s; (w == "link" || w == "links") && r.willDo(ci) && len(c.opens) > 1 {
			return nil // told by what says where it will be
		}
		for k := ci; k <= min(int(r.toks[oc.hi-1].cl), len(r.clauses)-1); k++ {
			for _, o := range r.clauses[k].opens {
				if p := (&looseEnd{lo: o.lo}); o.signal == "promise" && o.lo > oc.lo && o.hi >= oc.hi && p.byMe(r) && !e.byMe(r) {
					return nil // "the number for it I'll put in the notes": told by the second
				}
			}
		}
		if !r.willDo(ci) && !(r.linked(oc) && r.atTheEnd(ci)) || !e.byMe(r) && r.toks[c.lo].s == "if" || ci > 0 && r.clauses[ci-1].sentence == c.sentence && r.clauses[ci-1].mood&conditional != 0 && r.toks[oc.lo].s == "put" {
			return nil
		}
		if r.physical(ci, oc) || r.belowPart(oc) || r.word(oc.hi) == "itself" {
			return nil // "I put a block below the wheel", "it'll draw itself in"
		}
		if e.byMe(r) && !r.onScreen(oc) && !r.atTheEnd(ci) {
			return nil
		}
		e.kind, e.before = Promise, BeforePublishing
	case "next":
		if c.hi == oc.hi && oc.lo-c.lo <= 1 && ci+1 < len(r.clauses) && r.since(c.lo, r.clauses[ci+1].lo) < 6 {
			ci++ // "Next week | it's the fork seals"
			e.last = ci
		}
		if !r.atTheEnd(ci) || c.mood&asked != 0 || !r.aboutRecording(ci) || r.putFirst(c) {
			return nil
		}
		e.kind, e.before = Promise, BeforePublishing
	default:
		return nil
	}
	if e.kind == Unsure && oc.signal != "misgiving" && r.diagnoses(ci) {
		return nil
	}
	if e.kind == Unfinished && e.before == BeforeUse && (oc.signal == "later" || oc.signal == "back-to") && (r.tightens(c, oc) || oc.lo == c.lo && ci > 0 && r.saidIn(&r.clauses[ci-1], "pull")) {
		e.kind = NotTorqued // "I'll nip those up tomorrow"
	}
	return e
}
