package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
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

// farTime tells of "that'll do till after harvest", "they'll want doing before winter": what is
// open may wait for a season, or for work that is far off.
func (r *reading) farTime(e *looseEnd) bool {
	for i := e.lo; i < len(r.toks) && i < e.hi+20 && r.since(e.hi-1, i) < 9; i++ {
		switch w := r.toks[i].s; {
		case (w == "till" || w == "until") && r.saysOneOf(max(e.lo, i-4), i, "do", "last", "hold", "wait", "keep", "go"):
			if r.saysOneOf(i+1, min(len(r.toks), i+4), "after", "winter", "summer", "spring", "autumn", "season", "service", "year") {
				return true
			}
		case w == "before" && r.saysOneOf(i+1, min(len(r.toks), i+3), "winter", "summer", "autumn"):
			return true
		}
	}
	return false
}

// forWantOf tells whether the talk from one clause to another says that the right thing has run
// out, or that there are proper ones elsewhere.
func (r *reading) forWantOf(lo, hi int) bool {
	for k := lo; k <= hi; k++ {
		c := &r.clauses[k]
		if c.mood&(asked|conditional|other) != 0 {
			continue
		}
		for i := c.lo; i+1 < c.hi; i++ {
			if w, n := r.toks[i].s, r.toks[i+1].s; (w == "run" || w == "ran") && n == "out" && r.word(i+2) == "of" || (w == "proper" || w == "right") && (r.toks[i+1].men >= 0 || n == "one" || n == "ones") {
				return true
			}
		}
	}
	return false
}

// putFirst tells of "the gears, that I do next week": what is put off stands first.
func (r *reading) putFirst(c *clause) bool {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.prep == "" && r.word(m.hi) == "that" && (r.next(m.hi) == "i") {
			return true
		}
	}
	return false
}

// diagnoses tells of a guess at what is wrong, while the fault is looked for: "so that's either
// the hub or the bearings". What it was the work shows.
func (r *reading) diagnoses(ci int) bool {
	c := &r.clauses[ci]
	w := r.talk.Words[r.toks[c.lo].w]
	d := r.talk.Clips[w.Clip].Duration
	if r.atTheEnd(ci) {
		return false
	}
	lo, hi := r.nearBy(ci, 1, 1, 8)
	fault := w.At < 0.1*d && d > 240
	for k := lo; k <= hi; k++ {
		n := &r.clauses[k]
		if len(n.qtys) > 0 || len(r.numbers(n)) > 0 || r.saysWay(n) || r.saidIn(n, "away") || r.saidIn(n, "towards") || r.saidIn(n, "facing") {
			return false
		}
		for i := n.lo; i < n.hi; i++ {
			fault = fault || faultWords.has(r.toks[i].s)
		}
	}
	return fault && !r.orients(ci)
}

// faultWords are what is looked for when something is wrong.
var faultWords = wordsOf("what is wrong with a machine")

// stateOnly tells of a cue that gives no more than how a thing is: low, flat, empty.
func (r *reading) stateOnly(oc openCue) bool {
	switch last := r.toks[oc.hi-1].s; last {
	case "low", "flat", "dry", "empty", "full", "level", "line", "mark":
		return true
	case "air", "in", "oil":
		return r.hasWord(oc, "air") && !r.hasWord(oc, "needs") && !r.hasWord(oc, "wants")
	}
	return false
}

// foundSo are states that a thing is as often found in as left in.
var foundSo = set("level parallel square central centred centered moved shifted")

// standsSo tells whether how a thing is told to be is how it is left: it is said near the
// end of the work, or what puts it off, or keeps from mending it, is said beside it.
func (r *reading) standsSo(ci int) bool {
	c := &r.clauses[ci]
	w := r.talk.Words[r.toks[c.lo].w]
	if w.At > 0.75*r.talk.Clips[w.Clip].Duration {
		return true
	}
	lo, hi := r.nearBy(ci, 2, 3, 12)
	return r.heardIn(lo, hi, "later", "find", "ordered", "unknown", "before-use", "remember", "elsewhere", "left:stuck", "left:use") || r.saidIn(c, "yet") || r.saidIn(c, "whatsoever")
}

// valueDoubted gives the torque right before a cue that doubts it: "eighty, hang on, that's not
// right". Nil where another thing came up since, or another value takes its place at once.
func (r *reading) valueDoubted(ci int, oc openCue) *quantity {
	for k := len(r.heard) - 1; k >= 0; k-- {
		q := &r.qtys[r.heard[k].qty]
		if q.lo > oc.lo {
			continue
		}
		if r.since(q.hi, oc.lo) > 8 {
			return nil
		}
		for i := q.hi; i < oc.lo; i++ {
			if m := r.toks[i].men; m >= 0 && r.mentions[m].kind&lexicon.Tool == 0 && r.mentions[m].prep == "" {
				return nil // "nine newton metres. Wheel in, that doesn't sound right"
			}
		}
		if n := k + 1; n < len(r.heard) {
			if next := &r.qtys[r.heard[n].qty]; r.since(oc.hi, next.lo) < 8 && !next.sameValue(q) {
				return nil // "ninety. No, that's not right, seventy"
			}
		}
		return q
	}
	return nil
}

// noHarm tells of a cue that says what a thing is well without: "no grit in it".
func (r *reading) noHarm(oc openCue) bool {
	for i := oc.lo; i < oc.hi; i++ {
		if wellWithout.has(r.toks[i].s) {
			return true
		}
	}
	return false
}

// wellWithout are what no machine misses.
var wellWithout = wordsOf("what no machine misses")

// goesBy are the words after "till it comes" where what comes is what flows or turns, and
// no part that is waited for.
var goesBy = set("out through clean clear up round around down off over past away loose free level flush together against to tight home square straight")

// noPutOff tells of a time that puts nothing off: "it's a Sunday", "till it comes out", "not
// tomorrow", "I loosened those this morning", "since they came at Easter".
func (r *reading) noPutOff(ci int, oc openCue) bool {
	c := &r.clauses[ci]
	if r.when(oc) && r.prev(oc.lo) == "see" && (r.word(oc.lo-2) == "'ll" || r.word(oc.lo-2) == "will") {
		return true // "we'll see when we get in there"
	}
	last, next, prev := r.toks[oc.hi-1].s, r.word(oc.hi), ""
	if oc.lo > c.lo {
		prev = r.toks[oc.lo-1].s
	}
	if r.when(oc) && (strings.HasPrefix(last, "come") || last == "gets" || last == "get") && oc.hi < c.hi && goesBy.has(next) {
		return true
	}
	if !r.onADay(&looseEnd{lo: oc.lo, hi: oc.hi}) && last != "morning" && last != "evening" && last != "night" && last != "later" && last != "on" && last != "easter" && last != "christmas" && last != "another" {
		return false
	}
	if next == "gone" || next == "wasted" || next == "ruined" {
		return true // "and that's your whole Sunday gone"
	}
	if at := prev; at == "in" || r.toks[oc.lo].s == "in" {
		if at == "in" {
			at = r.word(oc.lo - 2)
		}
		if countOf[at] > 0 || at == "clock" || at == "o'clock" || at == "am" {
			return true // "it's ten past two in the morning"
		}
	}
	switch prev {
	case "whole":
		return true
	case "not":
		return last == "tomorrow" // "today, not tomorrow"; but "not tonight" puts it off
	case "a", "an", "last", "every", "most", "till", "until":
		return next != "job" && next != "thing" && prev != "till" && prev != "until"
	}
	if last == "tonight" || last == "evening" {
		w := r.talk.Words[r.toks[c.lo].w]
		if w.At < min(60, 0.1*r.talk.Clips[w.Clip].Duration) {
			return true // "tonight we check the valves": the job itself
		}
	}
	past := false
	for i := c.lo; i < oc.lo; i++ {
		switch w := r.toks[i].s; w {
		case "was", "were", "came", "went", "since", "got", "did", "bought", "started", "promised", "now", "said":
			past = true
		case "have", "'ve", "has", "had":
			past = past || r.next(i) != "to" && r.next(i) != "got" && r.word(i+2) != "to"
		case "'ll", "will", "gonna", "going", "must", "gotta", "to", "need", "needs", "want", "wants", "shall", "that's", "be":
			return false
		case "'s":
		case "matter", "matters":
			return true // "which will matter later on"
		}
	}
	return past
}

// comesAway tells whether, in the sentence of a clause, what is loose comes off or out.
func (r *reading) comesAway(ci int) bool {
	for k := ci; k < min(ci+3, len(r.clauses)) && r.clauses[k].sentence == r.clauses[ci].sentence; k++ {
		if n := &r.clauses[k]; k > ci && r.undoes(n) {
			return true
		}
	}
	return false
}

// usedTo tells of "I used to leave these loose": how it was once done.
func (r *reading) usedTo(c *clause) bool {
	for i := c.lo; i+1 < c.hi; i++ {
		if r.toks[i].s == "used" && r.toks[i+1].s == "to" && i > c.lo && (subjects.has(r.toks[i-1].s) || r.toks[i-1].s == "always") {
			return true
		}
	}
	return false
}

// tightens tells whether it is tightening that a cue puts off: not what is waited
// for, as in "when the axle's tight".
func (r *reading) tightens(c *clause, oc openCue) bool {
	for _, ai := range c.acts {
		a := &r.acts[ai]
		if n := a.action.Name; (n == "tighten" || n == "torque") && a.mood&framed == 0 && (a.lo < oc.lo && a.verb < oc.lo || oc.lo == c.lo && !r.when(oc) && a.lo >= oc.hi) {
			return true
		}
	}
	return false
}

// flows tells of "until the fluid comes", "until it comes": what comes is no part.
func (r *reading) flows(oc openCue) bool {
	for i := oc.lo; i < oc.hi; i++ {
		if r.toks[i].s == "it" {
			return true
		}
	}
	return r.ofFlow(oc)
}

// ofFlow tells whether a cue names what flows.
func (r *reading) ofFlow(oc openCue) bool {
	for i := oc.lo; i < oc.hi; i++ {
		switch r.toks[i].s {
		case "fluid", "oil", "water", "air", "bubbles", "fuel", "petrol", "gas", "coolant", "grease", "light", "smoke":
			return true
		}
	}
	return false
}

// ofFluid tells whether a cue says that a fluid is not in: "no oil in it".
func (r *reading) ofFluid(oc openCue) bool {
	for i := oc.lo; i < oc.hi; i++ {
		if k := r.toks[i].men; k >= 0 && r.mentions[k].kind&lexicon.Consumable != 0 && r.mentions[k].kind&(lexicon.Part|lexicon.Fastener) == 0 {
			return true
		}
		switch r.toks[i].s {
		case "air", "pressure", "charge", "power", "play", "slack":
			return r.toks[i].men < 0
		}
	}
	return false
}

// inPlace are the words that end "it's not on", "it isn't in".
func inPlace(w string) bool { return w == "on" || w == "in" }

// negatedIn tells whether a cue says "not", or "isn't".
func (r *reading) negatedIn(oc openCue) bool {
	for i := oc.lo; i < oc.hi; i++ {
		switch r.toks[i].s {
		case "not", "isn't", "aren't":
			return true
		}
	}
	return false
}

// foundAgain tells whether what was lost turns up soon: "there it is", "got it".
func (r *reading) foundAgain(ci int) bool {
	_, hi := r.nearBy(ci, 0, 8, 40)
	for k := ci; k <= hi; k++ {
		n := &r.clauses[k]
		for i := n.lo; i+1 < n.hi; i++ {
			next := r.toks[i+1].s
			switch w := r.toks[i].s; {
			case k > ci && w == "there" && next == "'s" && (r.word(i+2) == "a" || r.word(i+2) == "an") && r.nameWithin(n, i+2, 4) >= 0:
				return false // "and there's a key, don't lose that. There it is"
			case w == "found" && (next == "it" || next == "him" || next == "her" || next == "that" || next == "one"),
				w == "got" && (next == "it" || next == "him" || next == "you") && n.mood&negated == 0,
				w == "there" && (next == "it" || next == "she" || next == "he") && r.word(i+2) == "is":
				return true
			}
		}
	}
	return false
}

// due gives when the end falls due.
func (e *looseEnd) due(r *reading) string { return r.dueOf(e.first) }

// today tells whether a clause puts a "not" at a time: not now, not today.
func (r *reading) today(c *clause) bool {
	return r.saidIn(c, "today") || r.saidIn(c, "now") || r.saidIn(c, "tonight") || r.saidIn(c, "yet")
}

// asksWhat tells of "find out what goes in there", "see how much it takes".
func (r *reading) asksWhat(c *clause) bool {
	for i := c.lo; i+1 < c.hi; i++ {
		switch r.toks[i].s {
		case "what":
			switch r.toks[i+1].s {
			case "goes", "it", "they", "that", "this", "'s", "those":
				return true
			}
			if valueWord.has(r.toks[i+1].s) {
				return true // "check what pressure they want in those"
			}
		case "how":
			return r.toks[i+1].s != "to"
		}
	}
	return false
}

// asksNext tells whether what is to be found out is asked in the clause after: "I'll
// need to find out | what oil it takes".
func (r *reading) asksNext(ci int) bool {
	if ci+1 >= len(r.clauses) || r.clauses[ci+1].sentence != r.clauses[ci].sentence {
		return false
	}
	n := &r.clauses[ci+1]
	switch r.toks[n.lo].s {
	case "what", "which":
		return valueWord.has(r.next(n.lo)) || r.saidIn(n, "takes") || r.saidIn(n, "wants") || r.saidIn(n, "gets") || r.saidIn(n, "should") || r.saidIn(n, "goes") || r.saidIn(n, "needs") || r.saidIn(n, "is") || r.saidIn(n, "it")
	case "how":
		return howMuch.has(r.next(n.lo))
	}
	return false
}

// looksUp tells of "I'd have to look that up": in a book there is nothing but values.
func (r *reading) looksUp(oc openCue) bool {
	for i := oc.lo; i < oc.hi; i++ {
		if r.toks[i].s == "look" {
			for k := i + 1; k < oc.hi; k++ {
				if r.toks[k].s == "up" || documents.has(r.toks[k].s) {
					return true
				}
			}
			return false
		}
	}
	return false
}

// measuring tells whether what is to be looked up is looked up on the machine, not in a book.
func (r *reading) measuring(oc openCue) bool {
	for i := oc.lo; i < oc.hi; i++ {
		switch r.toks[i].s {
		case "measure", "check", "look":
			last := r.toks[oc.hi-1].s
			return last != "up" && last != "out" && !r.looksUp(oc)
		}
	}
	return false
}

// ours are the kinds of quantity that belong to a machine, not to the talk about it.
func ours(k normalize.Kind) bool {
	switch k {
	case normalize.Torque, normalize.Length, normalize.Size, normalize.Thread, normalize.Driver, normalize.Angle, normalize.Pressure, normalize.Volume, normalize.Turn, normalize.Teeth, normalize.Chain:
		return true
	}
	return false
}

var valueWord = wordsOf("what a figure is of")

// figures are words for what stands in a book.
var figures = wordsOf("figures")

// valueIn tells whether a value, or the word for one, stands in the clauses from lo to hi.
func (r *reading) valueIn(lo, hi int) bool {
	for k := max(lo, 0); k <= min(hi, len(r.clauses)-1); k++ {
		c := &r.clauses[k]
		for _, q := range c.qtys {
			if ours(r.qtys[q].Kind) && !r.unheard(q) {
				return true
			}
		}
		for i := c.lo; i < c.hi; i++ {
			if valueWord.has(r.toks[i].s) && r.toks[i].men < 0 && !(r.toks[i].s == "number" && r.prev(i) == "part") {
				return true
			}
		}
		if len(r.numbers(c)) > 0 && len(c.qtys) == 0 && r.ofMachine(c) && len(c.mentions) > 0 {
			return true
		}
	}
	return false
}

// valueNamed tells whether the word for a value stands in a clause.
func (r *reading) valueNamed(ci int) bool {
	c := &r.clauses[ci]
	for i := c.lo; i < c.hi; i++ {
		if valueWord.has(r.toks[i].s) && r.toks[i].men < 0 {
			return true
		}
	}
	return false
}

// unheard tells whether a torque is none of this job: what an engine makes.
func (r *reading) unheard(q int) bool {
	c := &r.clauses[r.qtys[q].cl]
	if r.qtys[q].Kind != normalize.Torque {
		return false
	}
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "make", "makes", "made", "power", "horse", "horsepower", "engine", "motor", "diesel", "knees":
			return true
		}
	}
	return false
}

// ofMachine tells whether a number of a clause may be one of the machine's: not an
// age, a price or a time.
func (r *reading) ofMachine(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "year", "years", "season", "seasons", "old", "buck", "bucks", "dollars", "euro", "quid", "minute", "minutes", "hour", "hours", "times", "people", "video", "week", "weeks", "month", "months", "miles", "knots":
			return false
		}
	}
	for _, q := range c.qtys {
		if !ours(r.qtys[q].Kind) {
			return false
		}
	}
	return true
}

// doubtful tells whether a doubt is of a value or a size of this job that nothing
// said right after settles.
func (r *reading) doubtful(ci int, oc openCue, rec *Record) bool {
	c := &r.clauses[ci]
	at := r.at(oc.lo)
	clip := int(r.talk.Words[r.toks[oc.lo].w].Clip)
	own := false
	for k := max(0, ci-1); k <= min(ci+1, len(r.clauses)-1); k++ {
		n := &r.clauses[k]
		if k != ci && r.since(min(n.lo, c.lo), max(n.lo, c.lo)) > 5 {
			continue
		}
		for _, q := range n.qtys {
			if ours(r.qtys[q].Kind) {
				own = true
			}
		}
	}
	if !own && len(r.numbers(c)) > 0 && r.ofMachine(c) && c.mood&other == 0 {
		own = true
	}
	if r.saidIn(c, "yours") {
		return false
	}
	for _, q := range c.qtys {
		if r.qtys[q].Kind == normalize.Torque && r.unheard(q) {
			return false
		}
	}
	if !own {
		return false
	}
	if r.putRight(ci, oc) {
		return false
	}
	for _, t := range rec.Torques {
		if t.Clip == clip && t.At > at && len(r.numbers(c)) > 0 && r.toks[c.hi-1].brk >= brkSentence && r.at(c.hi-1) < t.At {
			continue // "I think it's seven. Seven newton metres.": the doubt has its own
		}
		if t.Clip == clip && (t.At <= at && at-t.At < 8 || t.At > at && t.At-at < 3) {
			return t.Hedged || oc.signal == "doubt" && t.At <= at
		}
	}
	if p := r.prev(oc.lo); p == "or" || p == "it" && r.word(oc.lo-2) == "or" {
		return true // "… or it could be a pozi"
	}
	size := 0
	for _, s := range rec.Sizes {
		if s.Clip != clip || abs(int(s.At-at)) >= 7 {
			continue
		}
		if !s.Sure {
			return true
		}
		size++
	}
	return size == 0
}

// putRight tells whether what was doubted is put right in the next breath: "No.
// It's a twenty two."
func (r *reading) putRight(ci int, oc openCue) bool {
	for k := ci; k < min(ci+6, len(r.clauses)) && r.since(r.clauses[ci].lo, r.clauses[k].lo) < 12; k++ {
		n := &r.clauses[k]
		if n.lo >= oc.hi {
			switch r.toks[n.lo].s {
			case "nah", "nope", "sorry", "yeah", "yes":
				return true
			case "no":
				if x := r.word(n.lo + 1); r.toks[n.lo].brk >= brkComma || n.hi == n.lo+1 || subjects.has(x) || x == "no" || x == "wait" || x == "hang" || x == "sorry" || x == "not" {
					return true // but "no drips" puts nothing right
				}
			}
		}
		for i := max(n.lo, oc.hi); i+1 < n.hi; i++ {
			next := r.toks[i+1].s
			switch w := r.toks[i].s; {
			case w == "hang" && next == "on", w == "nah", w == "no" && (next == "wait" || next == "i" || next == "it" || next == "that" || next == "hang" || next == "sorry"):
				return true
			}
		}
	}
	return false
}

// saidIn tells whether a word stands in a clause.
func (r *reading) saidIn(c *clause, w string) bool {
	for i := c.lo; i < c.hi; i++ {
		if r.toks[i].s == w {
			return true
		}
	}
	return false
}

// twoGuesses tells of "that may be the seal, or it may be what ran down".
func (r *reading) twoGuesses(ci int) bool {
	n := 0
	lo, hi := r.nearBy(ci, 5, 1, 16)
	for k := lo; k <= hi; k++ {
		for _, o := range r.clauses[k].opens {
			if o.signal == "doubt" {
				n++
			}
		}
	}
	return n >= 2
}

var willWords = set("'ll will shall gonna going must need have got want gotta should ought fixing promised said i'd 'd i")

// willDo tells whether somebody will do what the clause says.
func (r *reading) willDo(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&negated != 0 {
		for i := c.lo; i < c.hi; i++ {
			if r.toks[i].s == "don't" || r.toks[i].s == "never" || r.toks[i].s == "not" {
				return false
			}
		}
	}
	for k := max(ci-1, 0); k <= min(ci+1, len(r.clauses)-1); k++ {
		n := &r.clauses[k]
		if k != ci && r.since(min(n.lo, c.lo), max(n.lo, c.lo)) > 6 {
			continue
		}
		for i := n.lo; i < n.hi; i++ {
			w := r.toks[i].s
			if willWords.has(w) {
				return true
			}
			if w == "come" || w == "comes" || w == "coming" {
				return true
			}
		}
	}
	return false
}

// onScreen tells whether a promise says where viewers will find it, or that it is yet to come.
func (r *reading) onScreen(oc openCue) bool {
	for i := oc.lo; i < oc.hi; i++ {
		switch r.toks[i].s {
		case "screen", "description", "comments", "notes", "page", "site", "below", "underneath", "under", "channel", "video", "film", "'ll", "will", "gonna", "going":
			return true
		}
	}
	return false
}

// physical tells of what is put on the machine, or sent to a shop, not to viewers: "I've put
// a bit of cling film under it", "I'll get the welder up", "I'll put them on the list".
func (r *reading) physical(ci int, oc openCue) bool {
	c := &r.clauses[ci]
	will, place := false, false
	for i := oc.lo; i < oc.hi; i++ {
		switch w := r.toks[i].s; w {
		case "'ll", "will", "gonna", "going", "gotta", "to", "shall", "'d":
			will = true
		case "description", "comments", "comment", "notes", "page", "site", "website", "channel", "video", "link", "links", "below", "underneath", "screen", "draw", "sketch", "upload", "post", "photograph":
			place = true
		case "film", "clip", "card", "plate":
			if m := r.toks[i].men; m >= 0 && (r.mentions[m].hi-r.mentions[m].lo > 1 || r.prev(i) == "that") {
				return true // cling film, the hose clip
			}
		}
	}
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.verb >= oc.lo && a.verb < oc.hi && len(a.objects) > 0 && r.lemma1(r.toks[a.verb].s) == "draw" && left[a.action.Name] != "" {
			if m := &r.mentions[a.objects[0]]; m.kind&(lexicon.Part|lexicon.Fastener) != 0 && m.head != "link" {
				return true // "I'm going to draw the bearing off"
			}
		}
	}
	for i := oc.hi; i+1 < min(c.hi, oc.hi+7); i++ {
		switch r.toks[i].s {
		case "shop", "dealer", "supplier", "agent", "him", "them":
			if p := r.prev(i); p == "to" || r.word(i-2) == "to" {
				return true // "I'll send a photo to the shop"
			}
		}
	}
	if r.toks[oc.hi-1].s == "list" && (r.word(oc.hi-2) == "the" || r.word(oc.hi-2) == "my") && r.word(oc.hi-3) == "on" {
		return true
	}
	return r.ofMe(oc.lo, oc.hi) && !place && (!will || r.toks[oc.hi-1].s == "up" || r.toks[oc.hi-1].s == "in") && !r.ofRecord(ci)
}

// namedLast gives the last thing of the machine named before a token in its clause or
// the one before, nil where there is none.
func (r *reading) namedLast(ci, at int) *mention {
	for k := ci; k >= max(0, ci-1); k-- {
		ms := r.clauses[k].mentions
		for i := len(ms) - 1; i >= 0; i-- {
			if m := &r.mentions[ms[i]]; m.hi <= at && r.topical(m) {
				return m
			}
		}
	}
	return nil
}

// goesFlat are what is to be pumped up or charged again when it is flat.
var goesFlat = wordsOf("goes flat")

// newFor tells whether a new one is told to take the place of what does not go back.
func (r *reading) newFor(ci, from int) bool {
	_, hi := r.nearBy(ci, 0, 1, 6)
	for i := from; i+1 < r.clauses[hi].hi; i++ {
		if r.toks[i].s == "new" && (r.toks[i+1].s == "one" || r.toks[i+1].s == "ones") {
			return !r.heardIn(ci, hi, "ordered", "later")
		}
	}
	return false
}

// recorded are what viewers may be given.
var recorded = wordsOf("what is written down or drawn")

// ofRecord tells whether something that viewers may be given is spoken of in a clause or
// right before it.
func (r *reading) ofRecord(ci int) bool {
	for k := max(0, ci-2); k <= ci; k++ {
		if c := &r.clauses[k]; c.sentence == r.clauses[ci].sentence {
			for i := c.lo; i < c.hi; i++ {
				if recorded.has(r.toks[i].s) {
					return true
				}
			}
		}
	}
	return false
}

// belowPart tells whether what a promise is put below is a part of the machine.
func (r *reading) belowPart(oc openCue) bool {
	switch r.toks[oc.hi-1].s {
	case "below", "under", "underneath":
		if r.hasWord(oc, "link") || r.hasWord(oc, "links") || r.hasWord(oc, "list") || !determiner.has(r.word(oc.hi)) {
			return false
		}
		for k := oc.hi; k < min(oc.hi+3, len(r.toks)); k++ {
			if m := r.toks[k].men; m >= 0 && r.toks[k-1].brk < brkComma && r.topical(&r.mentions[m]) && r.mentions[m].lo >= oc.hi {
				return true
			}
		}
	}
	return false
}

// linked tells of "the link for the grease": to be given, though nobody says that they will.
func (r *reading) linked(oc openCue) bool {
	switch r.toks[oc.lo].s {
	case "link", "links", "where", "that", "i", "still", "owe", "number", "numbers", "sizes", "list", "drawing":
		return true
	}
	return false
}

// intends tells whether a clause says what somebody means to do, the cue's own words
// aside: a will and something done.
func (r *reading) intends(ci int, oc openCue) bool {
	c := &r.clauses[ci]
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "last", "yesterday":
			if n := r.next(i); n == "night" || n == "week" || n == "weekend" || r.toks[i].s == "yesterday" {
				return false
			}
		}
	}
	lo := ci
	if ci > 0 && c.hi-c.lo <= 6 && r.since(r.clauses[ci-1].lo, c.lo) < 8 {
		lo = ci - 1
	}
	for k := lo; k <= ci; k++ {
		n := &r.clauses[k]
		for i := n.lo; i < n.hi; i++ {
			if i >= oc.lo && i < oc.hi && r.when(oc) {
				continue
			}
			switch w := r.toks[i].s; w {
			case "have", "has", "got", "need", "needs":
				if p := r.prev(i); r.next(i) == "to" && k == ci && i > n.lo && p != "you" && p != "they" && p != "don't" && p != "i" && r.dayIn(n) {
					return true // "those have to come off tomorrow"
				}
			case "'ll", "will", "shall", "gonna", "must", "gotta", "job", "going":
				if p := r.prev(i); i == n.lo || p != "you" && p != "they" && p != "he" && p != "she" {
					return true
				}
			case "i":
				if k == ci && i == oc.hi && r.opensDay(n, oc) {
					return true
				}
				if next := r.next(i); next != "" && r.presentVerb(next) && !((next == "have" || next == "need") && r.word(i+2) != "to") {
					return true // but not "I have loosened those"
				}
			case "that's", "'s":
				if i > n.lo && (r.toks[i-1].s == "that" || r.toks[i-1].s == "it") {
					return true
				}
			}
		}
	}
	return false
}

// opensDay tells of "tomorrow morning we build up the air": what is put off begins with its day.
func (r *reading) opensDay(c *clause, oc openCue) bool {
	next := r.word(oc.hi)
	return oc.lo == c.lo && oc.hi < c.hi && r.toks[oc.lo].s == "tomorrow" && (next == "i")
}

// waitedFor tells whether what is waited for is of the machine, or the new or right one.
func (r *reading) waitedFor(c *clause, i int) bool {
	for k := i; k < min(c.hi, i+4); k++ {
		if r.toks[k].men >= 0 {
			return true
		}
		switch r.toks[k].s {
		case "new", "right", "proper", "post", "parts", "delivery", "other", "replacement", "kit", "order":
			return true
		}
	}
	return false
}

// hinted gives what two weak signs leave open where nothing is said outright.
func (r *reading) hinted(ends []*looseEnd, rec *Record) []*looseEnd {
	asked := make(map[int]bool, 4*len(ends))
	tight := map[int]bool{} // where nothing more is asked of how tight something is
	for _, e := range ends {
		own := []int{int(r.toks[e.lo].cl), int(r.toks[e.hi-1].cl)}
		for _, k := range own {
			tight[k] = true
			if e.kind == NotTorqued || e.kind == Unfinished {
				tight[k-1] = true
			}
		}
		asked[int(r.toks[e.lo].cl)], asked[int(r.toks[e.hi-1].cl)] = true, true
		if e.kind == Unfinished || e.kind == Unsure || e.kind == ReplaceLater {
			for k := e.first - 1; k <= e.last+1; k++ {
				asked[k] = true
			}
		}
		for _, at := range e.also {
			asked[int(r.toks[at].cl)] = true
		}
	}
	var out []*looseEnd
	for ci := range r.clauses {
		for _, oc := range r.twoSigns(ci) {
			if oc.signal == "two-light" && (tight[ci] || r.foundIn(ci) || r.leftLight(rec, oc.lo)) || (asked[ci] || asked[ci+1]) && !(oc.signal == "two-light" && r.frontedFastener(ci)) {
				continue
			}
			e := r.endAt(ci, oc, rec)
			if e == nil {
				continue
			}
			r.aim(e, ci, oc)
			out = append(out, e)
			asked[ci], asked[ci+1], asked[ci+2] = true, true, true
			tight[ci], tight[ci+1] = true, true
		}
	}
	return out
}

// leftLight tells whether the ledger leaves something by hand at about token i: it asks by itself.
func (r *reading) leftLight(rec *Record, i int) bool {
	at, clip := r.at(i), int(r.talk.Words[r.toks[i].w].Clip)
	for k := range rec.Ledger {
		if e := &rec.Ledger[k]; e.State == HandTight && e.Clip == clip && e.LastAt > at-12 && e.LastAt < at+12 {
			return true
		}
	}
	return false
}

// tightForNow tells of "for now I just put it back with hand", "so for now it's as tight
// as I can get it": how tight it is for now, and nothing that stands in.
func (r *reading) tightForNow(ci int, oc openCue) bool {
	if w := r.toks[oc.lo].s; w != "for" {
		return false
	}
	c := &r.clauses[ci]
	lo, hi := c.lo, c.hi
	if n := ci + 1; oc.hi >= c.hi-1 && n < len(r.clauses) && (r.clauses[n].sentence == c.sentence || oc.lo <= c.lo+1) {
		hi = min(r.clauses[n].hi, hi+8)
	}
	for _, ai := range c.acts {
		if n := r.acts[ai].action.Name; (n == "tighten" || n == "torque") && r.acts[ai].happened() {
			return true
		}
	}
	for i := lo; i < hi; i++ {
		switch w := r.toks[i].s; {
		case w == "tight" && r.prev(i) != "too", w == "tighten", w == "snug", w == "nipped", w == "pinched", w == "fingers", w == "finger",
			(w == "hand" || w == "hands") && (r.prev(i) == "with" || r.prev(i) == "by"),
			(w == "wind" || w == "wound" || w == "run" || w == "spin" || w == "spun") && (r.next(i) == "it" || r.next(i) == "them" || r.next(i) == "him") && (r.word(i+2) == "up" || r.word(i+2) == "in" || r.word(i+2) == "on" || r.word(i+2) == "down"):
			return true
		}
	}
	return false
}

// tightensNear tells whether something is tightened, or a fastener is spoken of, in a
// clause or the one before it.
func (r *reading) tightensNear(ci int) bool {
	lo, hi := r.nearBy(ci, 1, 1, 8)
	for k := lo; k <= hi; k++ {
		for _, ai := range r.clauses[k].acts {
			if n := r.acts[ai].action.Name; n == "tighten" || n == "torque" || n == "start by hand" {
				return true
			}
		}
		if k <= ci && r.ofTightness(r.clauses[k].lo, r.clauses[k].hi) {
			return true
		}
		for _, mi := range r.clauses[k].mentions {
			if m := &r.mentions[mi]; k == ci && m.kind&lexicon.Fastener != 0 && r.tightenable(m) {
				return true
			}
		}
	}
	return false
}

// ofTurn are parts of a turn.
var ofTurn = set("quarter quarters half turn turns eighth third flat")

// namesNear tells whether something of the machine is named in a clause or right before it.
func (r *reading) namesNear(ci int) bool {
	lo, _ := r.nearBy(ci, 1, 0, 8)
	for k := lo; k <= ci; k++ {
		for _, mi := range r.clauses[k].mentions {
			if r.topical(&r.mentions[mi]) {
				return true
			}
		}
	}
	return false
}

// candidatesIn tells whether figures of which one is right stand in a clause or right
// before it.
func (r *reading) candidatesIn(ci int) bool {
	lo, hi := r.nearBy(ci, 1, 1, 8)
	for k := lo; k <= hi; k++ {
		n := 0
		for _, x := range r.numbersOf(r.clauses[k].lo, r.clauses[k].hi) {
			n++
			if x.Alt {
				n++
			}
		}
		if n >= 2 && (r.saidIn(&r.clauses[k], "or") || r.heardIn(k, k, "doubt")) {
			return true
		}
	}
	return false
}

// dayIn tells whether a clause names another day.
func (r *reading) dayIn(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		if days.has(r.toks[i].s) {
			return true
		}
	}
	return false
}

// when tells of a cue that is a clause of its own: "once it's in", "when they come".
func (r *reading) when(oc openCue) bool {
	switch r.toks[oc.lo].s {
	case "when", "once", "as", "whenever", "after", "till", "until", "til":
		return true
	}
	return false
}

// putsOff tells of a clause that says when the clause before it will be done:
// "I'll put the cover on | when I've done the nut".
func (r *reading) putsOff(ci int, oc openCue) bool {
	c := &r.clauses[ci]
	return oc.lo == c.lo && ci > 0 && r.clauses[ci-1].sentence == c.sentence && (r.wills(ci-1) || r.iDo(ci-1) || r.when(oc) && r.willBe(&r.clauses[ci-1])) && !r.heardIn(ci-1, ci-1, "promise")
}

// iDo tells of "this I do", "the chain I tension": a thing put first, and then who does it.
func (r *reading) iDo(ci int) bool {
	c := &r.clauses[ci]
	for i := c.lo + 1; i+1 < c.hi; i++ {
		if r.toks[i].s == "i" && (r.toks[i-1].s == "this" || r.toks[i-1].s == "that" || r.toks[i-1].men >= 0) && r.presentVerb(r.toks[i+1].s) {
			return true
		}
	}
	return false
}

// wills tells whether a clause says what the speaker will do.
func (r *reading) wills(ci int) bool {
	c := &r.clauses[ci]
	for i := c.lo; i < c.hi; i++ {
		if w := r.toks[i].s; (w == "'ll" || w == "will" || w == "shall") && i > c.lo && (r.toks[i-1].s == "i") {
			return true
		}
	}
	return false
}

// presentVerb tells whether w is a verb of the workshop in its plain form, or one that stands for it.
func (r *reading) presentVerb(w string) bool {
	if w == "do" || w == "make" || w == "have" || w == "need" {
		return true
	}
	return r.plainVerb(w)
}

// handTightNear tells of "only by hand for now": how tight it is, not what stands in.
func (r *reading) handTightNear(ci int) bool {
	c := &r.clauses[ci]
	for _, ai := range c.acts {
		if r.acts[ai].byHand {
			return true
		}
	}
	for i := c.lo; i < c.hi; i++ {
		if handAt(r, i, c.hi) {
			return true
		}
		switch r.toks[i].s {
		case "nip", "nipped", "finger", "fingers", "tighten", "tightened":
			return true
		}
	}
	return false
}

// setAt tells of "I've left it at three for now": a setting, not a part.
func (r *reading) setAt(c *clause) bool {
	for i := c.lo; i+1 < c.hi; i++ {
		if w := r.toks[i].s; (w == "at" || w == "with" || w == "to") && (countOf[r.toks[i+1].s] > 0 || r.toks[i+1].qty >= 0) {
			return true
		}
		switch r.toks[i].s {
		case "set", "leave", "left":
			if r.next(i) != "in" {
				return true
			}
		}
	}
	return false
}

// atTheEnd tells whether a clause stands in the last part of its clip, where
// people say what comes next.
func (r *reading) atTheEnd(ci int) bool {
	w := r.talk.Words[r.toks[r.clauses[ci].lo].w]
	d := r.talk.Clips[w.Clip].Duration
	return w.At > d-75 && w.At > d*0.8
}

// aboutRecording tells whether what comes "next" is said to viewers: "next time
// we do the brake", "next week, mudguards".
func (r *reading) aboutRecording(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&(negated|conditional) != 0 && c.mood&greeting == 0 {
		return false
	}
	verb, mine := false, false
	for i := c.lo; i < c.hi; i++ {
		switch w := r.toks[i].s; w {
		case "see", "until", "thanks", "when", "tell":
			return false
		case "it", "they", "that":
			if r.prev(i) == "time" && r.next(i) != "'s" && r.next(i) != "is" && r.next(i) != "'ll" && r.next(i) != "will" {
				return false // "so next time it falls off in your lap"
			}
			mine = mine || w == "it"
		case "i", "'ll":
			mine = true
		case "the", "i'm", "she", "he", "you":
		case "get", "bring", "buy", "order", "fit", "swap", "change", "replace", "put":
			return false // work on this machine
		default:
			verb = verb || linking.has(w) || len(r.lex.Lemmas(w)) > 0 && r.toks[i].men < 0
		}
	}
	return mine || !verb
}

// aimFrom finds the thing that the sources of a conflict speak of, the first first.
func (r *reading) aimFrom(e *looseEnd) bool {
	best := 0
	for k := e.first; k <= e.last; k++ {
		for _, mi := range r.clauses[k].mentions {
			m := &r.mentions[mi]
			if !r.topical(m) {
				continue
			}
			rank := 1 // where it stands written, perhaps
			switch {
			case direct(m):
				rank = 3
			case m.prep == "for" || m.prep == "of":
				rank = 2
			}
			if rank > best {
				best, e.topic, e.sure = rank, mi, true
			}
		}
		if best > 1 {
			break
		}
	}
	if c := &r.clauses[e.last]; best == 0 && (r.saidIn(c, "poured") || r.saidIn(c, "filled") || r.saidIn(c, "bottle") || r.saidIn(&r.clauses[e.first], "poured")) {
		for k := e.first - 1; k >= 0 && k > e.first-40 && r.since(r.clauses[k].lo, r.clauses[e.first].lo) < 90; k-- {
			for _, mi := range r.clauses[k].mentions {
				if fluids.has(r.mentions[mi].head) {
					e.topic, e.sure = mi, true
					return true
				}
			}
		}
	}
	return best > 0
}

// headingBefore gives the one word of a sentence that does no more than say what comes
// next, and that no list of parts has: "So, indexing."; -1 where there is none.
func (r *reading) headingBefore(ci int) int {
	if ci == 0 {
		return -1
	}
	p := &r.clauses[ci-1]
	if p.sentence == r.clauses[ci].sentence || p.hi-p.lo > 3 || len(p.mentions) > 0 || len(p.acts) > 1 || r.since(p.lo, r.clauses[ci].lo) > 6 || p.mood&(asked|other|greeting) != 0 {
		return -1
	}
	at := -1
	for i := p.lo; i < p.hi; i++ {
		if w := r.toks[i].s; !openers.has(w) && !stopWords.has(w) && !interjections.has(w) && !dropWords.has(w) {
			if at >= 0 {
				return -1
			}
			at = i
		} else if subjects.has(w) || linking.has(w) {
			return -1
		}
	}
	if at < 0 || !strings.HasSuffix(r.toks[at].s, "ing") && !strings.HasSuffix(r.toks[at].s, "s") || len(r.toks[at].s) < 4 {
		return -1
	}
	return at
}

// aim finds the thing that an end is about: one of its own clause, else the one
// spoken of just before.
func (r *reading) aim(e *looseEnd, ci int, oc openCue) {
	c := &r.clauses[ci]
	if n := r.toks[oc.hi-1]; n.s == "with" && oc.hi < c.hi && e.kind == NotRefitted {
		for _, mi := range c.mentions {
			if m := &r.mentions[mi]; m.lo >= oc.hi && m.from <= oc.hi+1 && m.kind&(lexicon.Part|lexicon.Fastener) != 0 {
				e.topic, e.sure = mi, true // "not bothering with the tray"
				return
			}
		}
	}
	if e.signal == "unfit" && (r.hasWord(oc, "tag") || r.hasWord(oc, "padlock") || r.hasWord(oc, "stays")) {
		return // "so the padlock stays on": the whole job
	}
	if e.signal == "none" || e.signal == "lacking" {
		for _, mi := range c.mentions {
			if r.mentions[mi].hi == oc.hi {
				e.topic, e.sure = mi, true // what is lacking itself
				return
			}
		}
	}
	if n := oc.hi - 2; e.signal == "undone" && r.wants(oc) && n == oc.lo+2 && (determiner.has(r.toks[n-1].s) || ofWhom.has(r.toks[n-1].s)) && r.gerund(oc.hi-1) && r.toks[n].men < 0 {
		e.noun, e.sure = n, true // "she'll want her tracking doing"
		return
	}
	toDo := e.signal == "undone" && r.toks[oc.lo].s == "still" && r.toks[oc.hi-1].s == "do" && !(oc.lo == c.lo && (ci == 0 || r.stopHeard(ci)))
	if e.signal == "undone" && (r.wants(oc) || toDo && oc.lo > c.lo) {
		switch mi, named := r.subjectOf(c, oc.lo); {
		case mi >= 0 && r.topical(&r.mentions[mi]):
			e.topic, e.sure = mi, true
			return
		case named:
			e.noun = r.nounBefore(c, oc.lo)
			return // "the tracking needs doing": of what no list has
		}
	}
	if e.signal == "no-locker" {
		r.aimUnlocked(e, ci)
		return
	}
	if r.aimFronted(e, ci) || e.signal == "out-of-reach" && r.aimReach(e, ci) || r.aimAhead(e, ci, oc) || r.aimMade(e, ci) || r.aimFigure(e, ci) || r.aimStandIn(e, ci, oc) || r.aimAgain(e, ci) || r.aimOtherSide(e, ci) || r.aimHeading(e, ci) {
		return
	}
	if e.kind == Promise {
		for _, mi := range c.mentions {
			if m := &r.mentions[mi]; m.kind&lexicon.Tool != 0 && (m.prep == "" || m.prep == "for" || m.prep == "of") {
				e.topic, e.sure = mi, true // "where I got the puller from"
				return
			}
		}
	}
	if r.opensDay(c, oc) {
		if last := r.sentenceAround(ci).last; !r.pronounIn(oc.hi+1, r.clauses[last].hi) {
			e.topic = r.topicIn(ci, last+1) // of what it says itself, and not of what was spoken of before
			e.sure = e.topic >= 0
			return
		}
	}
	if k := r.headingBefore(ci); k >= 0 && e.kind == Unfinished && len(c.mentions) == 0 {
		e.noun, e.first = k, ci-1 // "So, indexing. Tomorrow as well."
		return
	}
	// what is asked of tightness is asked of something that is tightened
	lo, hi := r.nearBy(ci, 3, 1, 10)
	tight := e.kind == NotTorqued || e.kind == LookUp && !r.ofFilling(c, oc) && r.ofTightness(r.clauses[lo].lo, r.clauses[hi].hi)
	best, score := -1, -1<<30
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if (e.signal == "still-off" && m.hi == oc.lo || e.signal == "absent") && containers.has(m.head) && m.prep == "" {
			e.topic, e.sure = mi, true // "the tray's not on"
			return
		}
		if !r.topical(m) && !(tight && m.prep == "with" && r.tightenable(m)) || m.lo >= oc.hi && (e.signal == "later" && r.pronounIn(c.lo, oc.lo+1) || e.signal == "elsewhere" || e.signal == "find" && r.pronounIn(oc.lo, oc.hi) || e.signal == "unfit" || e.signal == "undone" && (toDo || r.wants(oc) || r.hasWord(oc, "those") || r.hasWord(oc, "them") || r.pronounIn(oc.lo, oc.hi) && r.saysOneOf(oc.hi, m.lo, "and", "so"))) {
			continue
		}
		if tight && !r.tightenable(m) || e.kind == LookUp && smeared.has(m.head) {
			continue
		}
		s := 0
		if m.kind&(lexicon.Fastener|lexicon.Part) != 0 {
			s += 6
		}
		if m.kind&lexicon.Fastener != 0 && (e.kind == LookUp || e.kind == Unsure) {
			s += 4
		}
		if direct(m) || m.prep == "for" || m.prep == "of" {
			s += 8
		} else if m.prep == "on" || m.prep == "in" {
			s += 3
		}
		if m.lo >= oc.hi {
			s -= (m.lo - oc.hi) / 2
		} else if m.hi <= oc.lo {
			s -= (oc.lo - m.hi) / 2
		}
		if e.kind == ReplaceLater && m.prep == "" {
			s += 4 + (c.hi-m.lo)/3 // what stands in comes first; what it holds comes after
		}
		if s > score {
			best, score = mi, s
		}
	}
	// "The oil level | you check once it's been run": the thing put first
	if h := ci - 1; h >= 0 && (best < 0 || !direct(&r.mentions[best])) && r.fronted(h, ci) {
		if mi := r.clauses[h].mentions[0]; r.topical(&r.mentions[mi]) && (!tight || r.tightenable(&r.mentions[mi])) {
			e.topic, e.sure, e.first = mi, true, min(e.first, h)
			return
		}
	}
	if best >= 0 && !(e.kind == LookUp && r.mentions[best].kind&lexicon.Fastener == 0 && r.pronounBefore(c, oc)) {
		m := &r.mentions[best]
		e.topic, e.sure = best, direct(m) || m.prep == "for" || m.prep == "of" || m.prep == "on" && m.lo >= oc.hi
		return
	}
	if e.signal == "unrun" || e.signal == "next" {
		return
	}
	if w := r.toks[oc.hi-1]; w.brk < brkSentence && oc.hi == c.hi && ci+1 < len(r.clauses) && e.kind == Unfinished && !(toDo && oc.lo > c.lo) {
		if n := &r.clauses[ci+1]; n.sentence == c.sentence {
			for _, mi := range n.mentions {
				if r.topical(&r.mentions[mi]) && r.mentions[mi].prep == "" {
					e.topic, e.sure, e.last = mi, true, ci+1
					return
				}
			}
		}
	}
	for k := ci - 1; k >= 0 && k >= ci-14 && r.since(r.clauses[k].lo, c.lo) < 25; k-- {
		p := &r.clauses[k]
		if p.mood&(aside|greeting) != 0 {
			continue
		}
		n, score := 0, -1
		value := e.kind == LookUp || e.kind == Unsure
		for _, mi := range p.mentions {
			if m := &r.mentions[mi]; value && !tight && r.topical(m) && m.kind&lexicon.Fastener != 0 {
				n++
			}
		}
		fasteners := n
		for _, mi := range p.mentions {
			m := &r.mentions[mi]
			if !r.topical(m) || tight && !r.tightenable(m) || e.kind == LookUp && smeared.has(m.head) {
				continue
			}
			if fasteners == 0 {
				n++
			}
			s := 0
			if m.prep == "" {
				s = 2
			}
			if value && m.kind&lexicon.Fastener != 0 {
				s += 3
			}
			if s > score {
				best, score = mi, s
			}
		}
		if best >= 0 {
			if h := k - 1; h >= 0 && !direct(&r.mentions[best]) && r.fronted(h, k) && r.topical(&r.mentions[r.clauses[h].mentions[0]]) {
				best, k = r.clauses[h].mentions[0], h
			}
			e.topic = best
			if e.kind != Conflict && e.kind != Promise {
				e.first = min(e.first, k)
			}
			e.sure = e.kind != NotRefitted && !(e.signal == "later" && r.pronounIn(c.lo, oc.lo+1)) && n == 1 && ci-k <= 2 && r.since(p.lo, c.lo) < 8 && !(e.kind == LookUp && !tight && r.inIt(c))
			return
		}
	}
	if tight { // nothing that is tightened was named: the part it holds, perhaps
		for k := ci - 1; k >= 0 && k >= ci-7 && r.since(r.clauses[k].lo, c.lo) < 13; k-- {
			for _, mi := range r.clauses[k].mentions {
				if r.topical(&r.mentions[mi]) {
					e.topic, e.first = mi, min(e.first, k)
					return
				}
			}
		}
	}
}

// aimAhead aims at what a question asked right after the cue names: "I'll need to find
// out | what oil it takes".
func (r *reading) aimAhead(e *looseEnd, ci int, oc openCue) bool {
	c := &r.clauses[ci]
	if e.kind != LookUp || oc.hi < c.hi || ci+1 >= len(r.clauses) || r.clauses[ci+1].sentence != c.sentence {
		return false
	}
	n := &r.clauses[ci+1]
	if w := r.toks[n.lo].s; w != "what" && w != "which" && w != "how" {
		return false
	}
	for _, mi := range n.mentions {
		if m := &r.mentions[mi]; r.topical(m) && (m.prep == "" || m.prep == "for" || m.prep == "of") {
			e.topic, e.sure, e.last = mi, true, ci+1
			return true
		}
	}
	return false
}

// aimMade aims at what was made or put in place of what is missing: "the gasket was
// torn, so I've cut one out of card" is of the gasket, not of the card.
func (r *reading) aimMade(e *looseEnd, ci int) bool {
	if e.kind != ReplaceLater {
		return false
	}
	at := -1
	for k := ci; at < 0 && k >= max(0, ci-3) && r.since(r.clauses[k].lo, r.clauses[ci].lo) < 10; k-- {
		at = r.madeOf(k)
	}
	if at < 0 {
		return false
	}
	cl := int(r.toks[at].cl)
	for k := cl; k >= 0 && k >= cl-4 && r.since(r.clauses[k].lo, at) < 16; k-- {
		ms := r.clauses[k].mentions
		for j := len(ms) - 1; j >= 0; j-- {
			if m := &r.mentions[ms[j]]; m.hi <= at && r.topical(m) && direct(m) && m.kind&(lexicon.Part|lexicon.Fastener) != 0 {
				e.topic, e.sure, e.first = ms[j], true, min(e.first, k)
				return true
			}
		}
	}
	return false
}

// madeOf gives the token of "one" in "I've cut one out of card", -1 where there is none.
func (r *reading) madeOf(ci int) int {
	c := &r.clauses[ci]
	for i := c.lo + 1; i+2 < c.hi; i++ {
		if r.toks[i].s == "one" && makes.has(r.toks[i-1].s) && (r.toks[i+1].s == "out" && r.toks[i+2].s == "of" || r.toks[i+1].s == "from") {
			return i
		}
	}
	return -1
}

// adjusted are what is set to a value and is no part: "the gap", "the toe".
var adjusted = wordsOf("what is set to a figure")

// aimFigure aims at what is set, where a value of it is asked for and no fastener is
// named: "the gap, I haven't the gauge here".
func (r *reading) aimFigure(e *looseEnd, ci int) bool {
	if e.kind != LookUp && e.kind != Unsure {
		return false
	}
	lo := ci
	if ci > 0 && r.clauses[ci-1].sentence == r.clauses[ci].sentence && r.clauses[ci-1].hi-r.clauses[ci-1].lo <= 4 {
		lo = ci - 1
	}
	if p := max(ci-1, 0); lo == ci && p < ci && r.clauses[p].sentence == r.clauses[ci].sentence && r.saidIn(&r.clauses[p], "what") {
		lo = p // "what the sag should be, I don't know, I'll look in the book"
	}
	at := -1
	for k := lo; k <= ci; k++ {
		c := &r.clauses[k]
		for _, mi := range c.mentions {
			if r.mentions[mi].kind&lexicon.Fastener != 0 && direct(&r.mentions[mi]) {
				return false
			}
		}
		for i := c.lo; i < c.hi && at < 0; i++ {
			if adjusted.has(r.toks[i].s) && r.toks[i].men < 0 && (i > c.lo && (determiner.has(r.toks[i-1].s) || r.toks[i-1].men >= 0) || i == c.lo) {
				at = i
			}
		}
	}
	if at < 0 {
		return false
	}
	e.noun, e.first = at, min(e.first, int(r.toks[at].cl))
	return true
}

// smeared are what goes on a thread or a face: no figure is looked up for them.
var smeared = wordsOf("what is put on thick")

// tightenable tells whether a mention is of something that is tightened.
func (r *reading) tightenable(m *mention) bool {
	switch m.head {
	case "washer", "gasket", "ring", "shim", "collar", "spacer", "pin", "circlip":
		return false
	case "cap":
		return true
	}
	if tightens.has(m.head) {
		return true
	}
	if t := m.entry; t != nil && t.fastener {
		return takesTorque(t)
	}
	return m.kind&lexicon.Fastener != 0
}

// ofFilling tells of what is measured in litres, bars or gaps: no torque answers that.
func (r *reading) ofFilling(c *clause, oc openCue) bool {
	for i := max(c.lo, oc.lo-6); i < min(c.hi, oc.hi+6); i++ {
		if k := r.toks[i].men; k >= 0 && r.mentions[k].head != r.toks[i].s {
			continue // "grease valve cap"
		}
		switch r.toks[i].s {
		case "oil", "fluid", "coolant", "water", "grease", "gas", "refrigerant", "pressure", "gap", "preload", "capacity", "clearance", "level", "backlash":
			return true
		}
	}
	return false
}

// ofTightness tells whether torque or tightness is spoken of between two tokens.
func (r *reading) ofTightness(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		switch r.toks[i].s {
		case "torque", "tight", "newton", "newtons", "tightness", "nipped", "tighten", "tightened":
			return true
		}
	}
	return false
}

// pronounIn tells whether "it", "that" or "them" stands between two tokens.
func (r *reading) pronounIn(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if pronounsObj.has(r.toks[i].s) && r.toks[i].men < 0 && r.toks[i].s != "one" {
			return true
		}
	}
	return false
}

// inIt tells of "what goes in it": a question of what holds it, not of what was named last.
func (r *reading) inIt(c *clause) bool {
	for i := c.lo + 1; i < c.hi; i++ {
		if r.toks[i].s == "it" && (r.toks[i-1].s == "in" || r.toks[i-1].s == "into") {
			return true
		}
	}
	return false
}

// direct tells whether a mention stands as what is done or spoken of, not as a
// place; "look up the torque" has only the particle of its verb before it.
func direct(m *mention) bool {
	return m.prep == "" || m.prep == "up" || m.prep == "out" || m.prep == "down" || m.prep == "off"
}

// fronted tells whether clause h does no more than name what clause ci is about.
func (r *reading) fronted(h, ci int) bool {
	p := &r.clauses[h]
	if p.sentence != r.clauses[ci].sentence || p.hi-p.lo > 5 || len(p.mentions) != 1 {
		return false
	}
	m := &r.mentions[p.mentions[0]]
	if m.hi < p.hi-1 || m.prep != "" {
		return false
	}
	for i := p.lo; i < m.lo; i++ {
		if w := r.toks[i].s; !determiner.has(w) && !openers.has(w) && w != "and" && !placeWords.has(w) {
			return false
		}
	}
	return true
}

// pronounBefore is for "the torque for that": what is asked of is not what stands beside it.
func (r *reading) pronounBefore(c *clause, oc openCue) bool {
	for i := oc.lo; i < oc.hi; i++ {
		if r.toks[i].s == "for" && pronounsObj.has(r.next(i)) {
			return true
		}
	}
	return false
}

// topical tells whether a mention may be what a question is about.
func (r *reading) topical(m *mention) bool {
	if m.prep != "" && m.from >= 2 && documents.has(r.toks[m.from-2].s) {
		return false // "the sticker on the swingarm says"
	}
	if m.hi-m.lo == 1 && m.hi < len(r.toks) && r.toks[m.hi-1].brk == brkNone && (r.toks[m.hi].s == "you" || r.toks[m.hi].s == "me") && m.from == m.lo && r.isVerbForm(m.head) {
		return false // "I'll not bore you"
	}
	if m.head == "barrel" && m.entry != nil && (m.entry.mods["burn"] || m.entry.mods["trash"]) {
		return false // where it is thrown
	}
	if m.head == "fence" && m.prep == "on" && r.word(m.hi) == "about" || m.head == "shade" && strings.HasSuffix(r.word(m.hi), "er") {
		return false // "I'm on the fence about it", "a shade longer"
	}
	if m.head == "foot" && strings.HasPrefix(r.word(m.hi), "pound") {
		return false
	}
	if strings.TrimSuffix(m.head, "s") == "minute" || documents.has(m.head) && !(m.head == "plate" && m.kind&lexicon.Part != 0 && m.mods != nil && !writtenPlate.has(m.mods[0])) || containers.has(m.head) || bins.has(m.head) || m.kind&(lexicon.Part|lexicon.Fastener|lexicon.Consumable) == 0 {
		return false
	}
	if m.from > 0 && r.toks[m.from-1].s == "per" {
		return false
	}
	return m.prep != "with" && m.prep != "using" && m.prep != "by"
}

// writtenPlate are the plates that say something: any other with a name of its own is a part.
var writtenPlate = set("name rating data type number maker's makers spec serial")

// joins adds an end to one already being spoken of, where they are one matter.
func (r *reading) joins(ends []*looseEnd, e *looseEnd) bool {
	for k := len(ends) - 1; k >= 0 && k >= len(ends)-6; k-- {
		p := ends[k]
		last := max(p.hi, r.clauses[p.last].hi) - 1
		if p.kind != Conflict {
			last = p.hi - 1
		}
		if len(p.also) > 0 {
			last = max(last, p.also[len(p.also)-1])
		}
		gap := r.since(last, e.lo)
		if gap > 25 {
			break
		}
		same := !e.sure || !e.fronted && (!p.sure || p.fronted) || r.sameTopic(e.topic, p.topic)
		if !r.oneMatter(p, e, gap, same) {
			continue
		}
		p.last = max(p.last, e.last)
		p.first = min(p.first, e.first)
		p.byTwo = p.byTwo || e.byTwo
		if e.lo > last {
			p.also = append(p.also, e.lo)
		}
		if !p.sure && e.sure && e.kind == p.kind || p.signal == "ordered" && e.signal == "stand-in" {
			p.topic, p.sure, p.signal = e.topic, e.sure, e.signal
		}
		return true
	}
	return false
}

// ownTopic tells whether an end names its thing in its own clause.
func (r *reading) ownTopic(e *looseEnd) bool {
	return e.topic >= 0 && r.mentions[e.topic].cl == int(r.toks[e.lo].cl)
}

// oneMatter tells whether e, heard so many seconds after p, belongs to it; where
// it says more of the same matter, p takes the kind that asks for more.
func (r *reading) oneMatter(p, e *looseEnd, gap float64, same bool) bool {
	if (p.kind == Promise) != (e.kind == Promise) || e.signal == "unrun" && p.signal != "unrun" {
		return false
	}
	if e.signal == "unfit" {
		if gap < 25 && p.before == BeforeLater {
			p.before = BeforeUse
		}
		return gap < 25 && p.kind != Promise
	}
	if (e.signal == "watch") != (p.signal == "watch") && p.signal != "unrun" && e.signal != "unrun" {
		return false // a trial is a matter of its own
	}
	if e.signal == "duty" && gap < 12 && p.kind != Promise {
		return true
	}
	if e.signal == "elsewhere" && gap < 9 && p.kind != Promise && (same || r.clauses[r.toks[e.lo].cl].sentence == r.clauses[r.toks[p.lo].cl].sentence) {
		if p.kind == Unfinished {
			p.kind = e.kind
		}
		return true // why it is not done
	}
	if p.signal == "damage" && gap < 12 && (e.signal == "stand-in" || e.signal == "makeshift" || e.signal == "ordered" || e.signal == "later" || e.signal == "undone" && !e.sure) {
		if c := &r.clauses[r.toks[e.lo].cl]; e.kind == ReplaceLater && !r.saidIn(c, "live") && !r.saidIn(c, "leave") && !r.saidIn(c, "leaving") {
			p.kind, p.before = ReplaceLater, BeforeLater // something holds it for now
		}
		return true // how it is put up with
	}
	if p.signal == "unrun" && e.signal != "unrun" {
		return e.kind == Unfinished && !e.sure && gap < 12 // "that's tomorrow's job"
	}
	if p.kind == LookUp && gap < 8 && (e.kind == LookUp && r.toks[e.lo].cl == r.toks[p.lo].cl || e.signal == "later" && !e.sure && len(r.clauses[r.toks[e.lo].cl].acts) == 0 && e.lo-p.hi < 24 && !r.tightens(&r.clauses[r.toks[e.lo].cl], openCue{e.lo, e.hi, e.signal})) {
		return true // where, and when, it will be looked up
	}
	switch {
	case p.kind == Promise:
		return e.lo < p.hi && !(e.byMe(r) && e.lo > p.lo+1) || gap < 7 && (r.toks[e.lo].s == "it" || gap < 3 && !e.byMe(r)) && e.signal != "next" && !r.saidIn(&r.clauses[r.toks[e.lo].cl], "and")
	case p.signal == "later" && p.kind == Unfinished && e.kind == ReplaceLater && r.toks[p.lo].cl == r.toks[e.lo].cl:
		p.kind, p.before, p.topic, p.sure = ReplaceLater, e.before, e.topic, e.sure
		return true
	case p.kind == ReplaceLater && e.kind == ReplaceLater && gap < 9, p.kind == ReplaceLater && e.signal == "later" && gap < 14,
		p.kind == ReplaceLater && e.signal == "ordered", p.signal == "ordered" && e.signal == "stand-in":
		return gap < 25
	case p.kind == Conflict && (e.kind == Conflict && gap < 12 || e.signal == "find" && gap < 20 && !r.valueNamed(int(r.toks[e.lo].cl))):
		return true
	case !same:
		return p.kind == Unsure && e.kind == Unsure && gap < 6
	case p.kind == Conflict:
		ec := int(r.toks[e.lo].cl)
		switch {
		case e.signal == "unknown":
			return false // "I need to look up the torque for this year": which value, not which source
		case e.kind == Unsure && (e.signal == "doubt" || len(r.numbers(&r.clauses[ec])) > 0):
			return false // a doubt of its own
		}
		return gap < 20 && (e.kind == Unsure || e.kind == LookUp || e.kind == "" || e.kind == Conflict || e.signal == "stand-in" || e.signal == "later" || e.signal == "back-to")
	case e.kind == "":
		return gap < 14
	case e.kind == Conflict && (p.kind == Unsure || p.kind == LookUp) && gap < 10:
		p.kind = Conflict
		if e.lo < p.lo { // it begins with the first of the two sources
			p.lo, p.hi, p.topic, p.sure = e.lo, e.hi, e.topic, e.sure
		}
		return true
	case p.kind == Unsure && e.kind == LookUp && gap < 12:
		p.kind = LookUp
		return true
	case p.kind == LookUp && e.kind == Unsure, p.kind == LookUp && e.kind == NotTorqued && !e.sure && r.toks[e.lo].s != "put" && !r.saidIn(&r.clauses[r.toks[e.lo].cl], "one") && !r.saidIn(&r.clauses[r.toks[e.lo].cl], "other"):
		return gap < 12
	case p.kind == e.kind:
		if p.kind == ReplaceLater || p.kind == Unfinished && (e.signal == "remember" || e.signal == "later" && !e.sure) {
			return gap < 20
		}
		return gap < 12
	case p.kind == ReplaceLater && e.kind == Unfinished:
		return gap < 14 && (e.signal == "later" || e.signal == "undone" && !r.wants(openCue{e.lo, e.hi, e.signal}))
	case p.kind == NotTorqued && e.signal == "stand-in" && gap < 5:
		return true // "only pinched up for now"
	case p.kind == NotTorqued && e.kind == Unfinished:
		return gap < 3 && r.clauses[r.toks[e.lo].cl].sentence == r.clauses[r.toks[p.lo].cl].sentence && !e.sure || gap < 12 && (e.signal == "later" || r.toks[e.lo].s == "on" || r.saidIn(&r.clauses[r.toks[e.lo].cl], "back"))
	case p.kind == NotRefitted && e.kind == Unfinished:
		return p.before == e.before && gap < 10 && (e.signal != "undone" || e.sure) || p.sure && e.sure && r.sameTopic(e.topic, p.topic)
	case p.signal == "lost" && e.kind == ReplaceLater && gap < 6:
		p.kind, p.before = ReplaceLater, e.before // short of one, and something stands in for it
		return true
	case p.kind == Unfinished && e.kind == NotRefitted && e.signal != "lying" && (!p.sure || e.sure && e.topic >= 0 && r.mentions[e.topic].kind&lexicon.Consumable == 0) && p.before == e.before && gap < 10:
		p.kind = NotRefitted
		return true
	}
	return false
}

// byMe tells whether the cue of an end names who will do it: "I'll put a link".
// fluids are what a machine is filled with.
var fluids = wordsOf("fuels and coolants")

func (e *looseEnd) byMe(r *reading) bool {
	w := r.toks[e.lo].s
	return w == "i" || w == "'ll"
}

// sameTopic tells whether two mentions stand for one thing, or have one name.
func (r *reading) sameTopic(a, b int) bool {
	if a < 0 || b < 0 {
		return false
	}
	x, y := &r.mentions[a], &r.mentions[b]
	return a == b || x.entry != nil && x.entry == y.entry || lexicon.Singular(x.name) == lexicon.Singular(y.name) || x.head == y.head
}

// settled tells whether later talk answers what an end leaves open.
func (r *reading) settled(e *looseEnd, rec *Record) bool {
	if r.doneAtOnce(e) || r.foundSince(e) || r.wouldBe(e) {
		return true
	}
	switch e.kind {
	case ReplaceLater:
		return (e.signal == "makeshift" || e.signal == "for-want") && makeshifts.has(r.toks[e.hi-1].s) && r.takenOffAgain(e)
	case NotTorqued:
		if e.signal == "out-of-reach" {
			return r.reachedAfter(e)
		}
		return e.topic >= 0 && (r.doneLater(e) || r.valueLater(e, rec)) || e.signal == "two-light" && r.tightenedNext(e)
	case Unsure:
		return r.torqueIn(e) && r.valueLater(e, rec)
	case LookUp:
		return e.signal != "find" && r.valueLater(e, rec)
	case Unfinished:
		switch e.signal {
		case "unrun", "again":
			return false
		case "back-to":
			// no promise to come back is kept or broken that names nothing
			return !e.sure || r.mentions[e.topic].entry == nil || r.againAfter(r.mentions[e.topic].entry, r.clauses[e.last].hi, 8)
		}
		if e.signal == "due" {
			return false // looked after where it was found
		}
		if e.sure && (e.topic >= 0 || e.noun >= 0) && r.comesUp(e, r.dueVerb(e), r.onADay(e) || e.signal != "later" && e.signal != "remember" && !(e.signal == "undone" && r.hasWord(openCue{e.lo, e.hi, e.signal}, "to"))) {
			return true
		}
		if e.signal == "later" && r.onADay(e) || e.signal == "undone" && r.saidIn(&r.clauses[r.toks[e.lo].cl], "today") {
			return false // another day is not in this recording
		}
		return e.topic >= 0 && r.doneLater(e)
	}
	return false
}

// takenOffAgain tells whether what held something up for the work comes off later on: "strap off",
// "cut the twine off now".
func (r *reading) takenOffAgain(e *looseEnd) bool {
	for k := int(r.toks[e.hi-1].cl) + 1; k < len(r.clauses); k++ {
		c := &r.clauses[k]
		if c.mood&(negated|asked|conditional|hypothetical) != 0 || r.saidIn(c, "till") || r.saidIn(c, "until") || r.dayIn(c) {
			continue
		}
		for i := c.lo; i < c.hi; i++ {
			if r.toks[i].s == r.toks[e.hi-1].s && r.saysOneOf(i+1, min(c.hi, i+5), "off", "out", "away") || (r.toks[i].s == "off" || r.toks[i].s == "undo" || r.toks[i].s == "cut") && r.saysOneOf(i+1, min(c.hi, i+3), r.toks[e.hi-1].s) {
				return true
			}
		}
	}
	return false
}

// frontedFastener tells whether the clause before, in the sentence, ends in what is
// tightened: "that lock nut | I've just spun it up with my fingers".
func (r *reading) frontedFastener(ci int) bool {
	if ci == 0 || r.since(r.clauses[ci-1].lo, r.clauses[ci].lo) > 8 {
		return false
	}
	p := &r.clauses[ci-1]
	for _, mi := range p.mentions {
		if m := &r.mentions[mi]; m.hi == p.hi && m.kind&lexicon.Fastener != 0 && r.tightenable(m) {
			return true
		}
	}
	return false
}

// undoes tells whether a clause is of what comes loose or off, and of nothing that goes on.
func (r *reading) undoes(c *clause) bool {
	off := false
	for _, ai := range c.acts {
		switch ledgerActs[r.acts[ai].action.Name] {
		case Removed, Loosened:
			off = true
		case "":
		default:
			return false
		}
	}
	return off
}

// tightenedNext tells whether what was left light is tightened, or comes off again, within
// the next minute: by a value or an act of what has no name, or may well be the same.
func (r *reading) tightenedNext(e *looseEnd) bool {
	may := func(t *thing, at int) bool {
		if t == nil || e.topic < 0 || r.mentions[e.topic].entry == nil {
			return true
		}
		m := &r.mentions[e.topic]
		return t == m.entry || r.sameFastener(e, m, m.entry, t, at)
	}
	for i := range r.heard {
		if h := &r.heard[i]; !h.dropped && h.applied == "done" && r.qtys[h.qty].lo > e.hi && r.since(e.hi, r.qtys[h.qty].lo) < 75 && may(h.of, r.qtys[h.qty].lo) {
			return true
		}
	}
	for i := range r.acts {
		a := &r.acts[i]
		if a.lo <= e.hi || a.action.Name != "tighten" && a.action.Name != "torque" && ledgerActs[a.action.Name] != Removed || !a.happened() || r.since(e.hi, a.lo) > 75 {
			continue
		}
		if len(a.things) == 0 {
			return true
		}
		for _, t := range a.things {
			if may(t, a.lo) {
				return true
			}
		}
	}
	return false
}

// onADay tells whether an end is put off to another day.
func (r *reading) onADay(e *looseEnd) bool {
	for i := e.lo; i < e.hi; i++ {
		switch w := r.toks[i].s; w {
		case "tomorrow", "tonight", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "weekend", "week", "morrow":
			return true
		}
	}
	return false
}

// torqueIn tells whether an end is about a torque.
func (r *reading) torqueIn(e *looseEnd) bool {
	for k := e.first; k <= e.last; k++ {
		for _, q := range r.clauses[k].qtys {
			if r.qtys[q].Kind == normalize.Torque {
				return true
			}
		}
	}
	return false
}

// valueLater tells whether the thing of an end gets a value, said without doubt, later on.
func (r *reading) valueLater(e *looseEnd, rec *Record) bool {
	if e.topic < 0 {
		return false
	}
	t := r.mentions[e.topic].entry
	if t == nil {
		return false
	}
	for i := e.lo; i < e.hi; i++ {
		switch r.toks[i].s {
		case "long", "size", "big", "thick", "deep", "far", "high":
			return false // no torque answers that
		}
	}
	m := &r.mentions[e.topic]
	for i := range r.heard {
		h := &r.heard[i]
		q := &r.qtys[h.qty]
		if h.dropped || h.of == nil || q.lo <= e.hi || h.source.Scope == scopeOther || h.of != t && (e.kind != NotTorqued || !r.sameFastener(e, m, t, h.of, q.lo)) {
			continue
		}
		if e.kind == NotTorqued {
			if h.applied == "done" {
				return true
			}
			continue
		}
		if h.hedged || r.doubtedNear(q.cl) || e.kind == Unsure && r.sameFigure(e, q) && h.source.Title == "" && !r.confirmed(q.cl) {
			continue
		}
		return true
	}
	return false
}

// sameFigure tells whether a torque is one of those in doubt: to set what one was not sure of
// makes it no surer.
func (r *reading) sameFigure(e *looseEnd, q *quantity) bool {
	for i := range r.heard {
		if o := &r.qtys[r.heard[i].qty]; o.cl >= e.first && o.cl <= e.last && o.sameValue(q) {
			return true
		}
	}
	return false
}

// confirmed tells whether a clause, or the one before it, says that a figure was found to be so.
func (r *reading) confirmed(ci int) bool {
	for k := max(ci-1, 0); k <= ci; k++ {
		for i := r.clauses[k].lo; i < r.clauses[k].hi; i++ {
			if confirming.has(r.toks[i].s) {
				return true
			}
		}
	}
	return false
}

// confirming are the words by which a figure in doubt is found to be so: "it is forty five".
var confirming = set("is was says said checked confirmed correct yes yep found looked sure certain")

// doubtedNear tells whether the talk around a clause doubts what it says.
func (r *reading) doubtedNear(ci int) bool {
	_, hi := r.nearBy(ci, 0, 3, 12)
	return r.heardIn(ci-1, hi, "doubt", "undecided", "unknown")
}

// sameFastener tells whether a later thing is what was spoken of by another name:
// one that has a word in common with it, or, where it had no name of its own, with
// what was named beside it.
func (r *reading) sameFastener(e *looseEnd, m *mention, t, later *thing, at int) bool {
	has := func(w string) bool { return later.mods[w] || strings.TrimSuffix(later.head, "s") == w }
	if own := content(m.mods); len(own) > 0 {
		for _, w := range own {
			if has(w) {
				return !placesClash(m.mods, later.mods)
			}
		}
		return false
	}
	for w := range t.mods {
		if !placeWords.has(w) && has(w) && headKey(later.head, later.fastener) == headKey(t.head, t.fastener) {
			return !placesClash(m.mods, later.mods)
		}
	}
	if r.since(m.lo, at) < 60 && headKey(later.head, later.fastener) == headKey(t.head, t.fastener) || has(strings.TrimSuffix(m.head, "s")) && !alike.has(m.head) {
		return true
	}
	for k := e.first; k <= e.last && r.since(m.lo, at) < 150; k++ {
		for _, mi := range r.clauses[k].mentions {
			if o := &r.mentions[mi]; mi != e.topic && o.kind&(lexicon.Part|lexicon.Fastener) != 0 && !alike.has(o.head) && has(strings.TrimSuffix(o.head, "s")) {
				return true
			}
		}
	}
	return false
}

// doneLater tells whether what was to be done was done later on.
func (r *reading) doneLater(e *looseEnd) bool {
	t := r.mentions[e.topic].entry
	if t == nil {
		return false
	}
	after := r.clauses[e.last].hi
	for _, ev := range t.events {
		if ev.lo > after && ledgerActs[ev.action] != Removed && ledgerActs[ev.action] != Loosened && ev.action != "heat" && ev.action != "wait" && (e.kind != NotTorqued || ev.action == "tighten" || ev.action == "torque") {
			return true
		}
	}
	return false
}

// askOf makes the question of an end.
func (r *reading) askOf(e *looseEnd, rec *Record) Open {
	if e.kind == Unfinished && r.partToCome(e) {
		e.kind, e.before = ReplaceLater, BeforeLater
	}
	if e.kind == Unfinished && e.before == BeforeUse && r.farTime(e) {
		e.before = BeforeLater
	}
	o := Open{Kind: e.kind, Before: e.before, byTwo: e.byTwo}
	if e.kind != Promise || e.signal == "next" {
		o.Due = r.dueOf(int(r.toks[e.lo].cl))
	}
	if e.kind == Unfinished && (o.Due == "tomorrow" || o.Due == "in the morning") {
		o.Before = BeforeUse // the machine is not used before
	}
	for k := e.first; k <= e.last && o.Before == BeforeLater; k++ {
		if r.heardIn(k, k+1, "before-use") {
			o.Before = BeforeUse
		}
	}
	if e.kind == Unsure && !(e.sure && e.topic >= 0) || e.signal == "misprint" || e.signal == "unlikely" || e.signal == "to-check" {
		if name, id := r.valueOf(e, rec); name != "" {
			o.About, o.LedgerID, e.sure = shortName(name), id, true
		}
	}
	if e.kind == Conflict && !(e.sure && e.topic >= 0 && r.tightenable(&r.mentions[e.topic])) {
		if name, id := r.tornBetween(e, rec); name != "" {
			o.About, o.LedgerID, e.sure = shortName(name), id, true
		}
	}
	lo, hi := r.clauses[e.first].lo, r.clauses[e.last].hi
	for k := e.first; hi-lo > 38 && lo < e.lo && k < int(r.toks[e.lo].cl); k++ {
		lo = r.clauses[k+1].lo
	}
	if e.topic >= 0 {
		m := &r.mentions[e.topic]
		if m.lo < lo && e.lo-m.lo <= 26 {
			lo = r.clauses[m.cl].lo
		}
		if e.signal == "short" {
			o.About = shortName(m.name) // no one of those that came off can be told to be it
		} else if e.signal == "lacking" {
			o.About = shortName(strings.ToLower(r.text(e.lo+1, e.hi))) // as it is called where it is lacking
		} else if e.sure && o.About == "" {
			o.About = shortName(r.nameOf(m))
			if m.entry != nil {
				o.LedgerID = m.entry.id
			}
		}
	}
	if e.noun >= 0 && namesNoMatter.has(lexicon.Singular(r.toks[e.noun].s)) {
		e.noun = -1
	}
	if e.noun >= 0 {
		from := r.phraseFrom(e.noun)
		if r.prev(e.noun) == "other" {
			from = min(from, e.noun-1) // "the other side"
		}
		o.About, e.sure = strings.ToLower(r.text(from, e.noun+1)), true
		lo = from
	}
	if e.kind == Promise {
		// "the routing photo also | I'll put in the community page"
		for k := r.toks[lo].cl - 1; k >= 0 && r.clauses[k].sentence == r.clauses[e.first].sentence && hi-r.clauses[k].lo <= 24 && len(r.clauses[e.first].mentions) == 0 && !r.promises(int(k)); k-- {
			lo = r.clauses[k].lo
		}
	}
	if !e.sure && e.last+1 < len(r.clauses) && hi-lo < 20 && e.signal != "unrun" && e.signal != "closing" && e.signal != "weighed" && (e.kind == LookUp || e.kind == Unsure || e.kind == Unfinished) {
		if n := &r.clauses[e.last+1]; n.hi-lo <= 34 && r.since(r.clauses[e.last].lo, n.lo) < 8 {
			hi = n.hi
		}
	}
	for k := r.toks[lo].cl - 1; !e.sure && e.kind != Promise && k >= 0 && e.signal != "unrun" && e.signal != "closing" && e.signal != "weighed" && hi-r.clauses[k].lo <= 36 && r.since(r.clauses[k].lo, e.lo) < 12 && r.clauses[k].mood&(aside|greeting) == 0; k-- {
		if r.clauses[k].sentence != r.clauses[k+1].sentence && e.lo-lo >= 16 {
			break // enough to tell what it is of
		}
		lo = r.clauses[k].lo
	}
	if hi-lo > 38 {
		lo, hi = max(lo, e.lo-16), min(hi, e.hi+18)
	}
	lo, hi = r.wholeSentences(lo, hi, e)
	from := lo
	lo, hi = r.briefly(lo, hi, e)
	if o.About == "" && e.topic >= 0 {
		o.About = shortName(r.nameOf(&r.mentions[e.topic]))
	}
	if o.About == "" {
		o.About = r.saidWords(e)
	}
	for _, k := range e.also {
		o.AlsoAt = append(o.AlsoAt, round3(r.at(k)))
	}
	r.wordEnd(&o, e, from, lo, hi)
	if a, b := r.inItsSentence(lo, hi, e); a != lo || b != hi {
		shown := o
		r.wordEnd(&shown, e, from, a, b)
		o.shown = &shownAs{shown.Quote, o.Question, shown.Question}
	}
	return o
}

// wordEnd words the question of an end, with the words from lo to hi quoted of it.
func (r *reading) wordEnd(o *Open, e *looseEnd, from, lo, hi int) {
	o.Place = r.placeAround(lo, hi, e.lo).by("said: " + r.text(e.lo, e.hi))
	o.listed = e.signal == "recap" || e.signal == "closing" && r.onlyLists(e)
	if e.signal == "recap" {
		o.Rule = "recap: " + r.text(e.lo, e.hi)
	}
	o.Question = spokenQuestion(*o, e.sure && o.About != "" && (e.topic >= 0 || e.noun >= 0 || o.LedgerID != "" || e.kind == Unsure), r.perhapsOf(from, lo, hi, e))
	if e.signal == "lack" && e.topic >= 0 && r.mentions[e.topic].lo >= e.hi-1 && r.mentions[e.topic].from-e.hi < 4 {
		o.Question = spokenQuestion(*o, false, "") // "I'd no pins left, so …": it is not the pins that stand in
	}
	if e.signal == "recap" && e.noun >= 0 && len(r.lex.Lemmas(r.toks[e.noun].s)) > 0 {
		o.Question = spokenQuestion(*o, false, "") // "bleed it": what is to be done, of no thing
	}
	if e.signal == "again" && o.Before == BeforeLater && o.Due != "" {
		of := ""
		if o.About != "" && (e.topic >= 0 || e.noun >= 0) {
			of = " (the " + o.About + ")"
		}
		o.Question = "Has this been done" + of + ", " + o.Due + ": “" + o.Quote + "”?"
	}
	if e.signal == "no-locker" {
		of := "it"
		if o.About != "" {
			of = "the " + o.About
		}
		o.Question = "Has thread locker been put on " + of + " since: “" + o.Quote + "”?"
	}
	if e.signal == "out-of-reach" && o.About != "" {
		o.About = r.theOneNotReached(e, o.About)
		o.Question = "Is the one tight that the wrench did not reach (the " + o.About + "): “" + o.Quote + "”?"
	}
	if e.signal == "misfit" || e.signal == "unfitting" {
		what := "what is fitted"
		if e.sure && o.About != "" {
			what = "the " + o.About
		}
		o.Question = "Is " + what + " the right size and kind for this machine: “" + o.Quote + "”?"
	}
}

// perhapsOf names what an end that names no thing may be of, where the words quoted no
// longer do: what was taken for it, and what else was named right before.
func (r *reading) perhapsOf(from, lo, hi int, e *looseEnd) string {
	if e.sure || e.kind == Promise {
		return ""
	}
	var names, heads []string
	add := func(m *mention) {
		if len(names) == 2 || m.lo >= lo && m.lo < hi {
			return
		}
		for _, h := range heads {
			if h == m.head {
				return
			}
		}
		names, heads = append(names, shortName(r.nameOf(m))), append(heads, m.head)
	}
	if e.topic >= 0 {
		add(&r.mentions[e.topic])
	}
	for k := int(r.toks[lo].cl) - 1; k >= 0 && r.clauses[k].lo >= from; k-- {
		for _, mi := range slices.Backward(r.clauses[k].mentions) {
			if m := &r.mentions[mi]; r.topical(m) {
				add(m)
			}
		}
	}
	return strings.Join(names, ", or the ")
}

// briefly draws the words that are quoted of an end in, where they are many, to the clauses
// that leave it open: those of the cue and of the thing, what they hang on and what hangs
// on them, and as much of the talk before them as there is room for where no thing is sure.
func (r *reading) briefly(lo, hi int, e *looseEnd) (int, int) {
	plenty := 24
	if !e.sure {
		plenty = 30 // what no name is quoted for wants the talk around it
	}
	if hi-lo <= plenty {
		return lo, hi
	}
	from, to := int(r.toks[e.lo].cl), int(r.toks[e.hi-1].cl)
	if e.kind == Conflict {
		from, to = min(from, e.first), max(to, e.last)
	}
	for _, at := range e.also {
		if k := int(r.toks[at].cl); k > to && r.clauses[k].hi <= hi && r.clauses[k].hi-r.clauses[from].lo <= plenty {
			to = k
		}
	}
	if e.topic >= 0 {
		if k := r.mentions[e.topic].cl; k < from && r.clauses[k].lo >= lo && r.clauses[to].hi-r.clauses[k].lo <= plenty+6 {
			from = k
		} else if k > to && r.clauses[k].hi <= hi {
			to = k
		}
	}
	if e.noun >= 0 {
		from = min(from, int(r.toks[e.noun].cl))
	}
	one := func(a, b int) bool { return r.clauses[a].sentence == r.clauses[b].sentence }
	size := func() int { return r.clauses[to].hi - r.clauses[from].lo }
	if r.toks[r.clauses[from].lo].s == "what" && !e.sure { // "What I've not done. The earth test."
		for to+1 < len(r.clauses) && r.clauses[to+1].hi <= hi && r.clauses[to+1].hi-r.clauses[from].lo <= plenty {
			to++
		}
	}
	for from > 0 && one(from-1, from) && r.clauses[from-1].lo >= lo && (r.dependent(from) || !e.sure || size() < 6) && r.clauses[to].hi-r.clauses[from-1].lo <= min(plenty+6, 32) {
		from--
	}
	for to+1 < len(r.clauses) && one(to, to+1) && r.clauses[to+1].hi <= hi && (r.dependent(to+1) || len(r.clauses[to+1].opens) > 0) && r.clauses[to+1].hi-r.clauses[from].lo <= plenty+8 {
		to++
	}
	for to+1 < len(r.clauses) && one(to, to+1) && r.clauses[to+1].hi <= hi && r.clauses[to+1].hi-r.clauses[from].lo <= plenty {
		to++
	}
	if !e.sure || size() < 6 { // whole sentences before it, as many as there is room for
		for k := from - 1; k >= 0 && r.clauses[k].lo >= lo && r.clauses[to].hi-r.clauses[k].lo <= plenty; k-- {
			if k == 0 || !one(k-1, k) {
				from = k
			}
		}
	}
	for to+1 < len(r.clauses) && r.clauses[to+1].hi-r.clauses[from].lo <= plenty+8 && dangling.has(r.toks[r.clauses[to].hi-1].s) {
		to++ // a stop was put where none is
	}
	if size() >= hi-lo || size() < 3 {
		return lo, hi
	}
	return r.clauses[from].lo, r.clauses[to].hi
}

// dangling are words that end nothing.
var dangling = set("what how to the a an my of for and or but because which whether if when")

// dependent tells whether a clause says nothing without the one before it, or that one
// nothing without it: "when it's back in the hole", "I want to see it | run first".
func (r *reading) dependent(ci int) bool {
	first := &r.toks[r.clauses[ci].lo]
	switch first.s {
	case "when", "once", "before", "until", "till", "if", "because", "cause", "which", "that", "to", "who", "where", "after", "than", "or", "unless", "while", "as", "how", "what", "whether":
		return true
	}
	if ci == 0 {
		return false
	}
	last := &r.toks[r.clauses[ci].lo-1]
	return last.brk < brkComma && (first.is(wForm|wVerb|wParticle|wPreposition|wLinking) || last.is(wDeterminer|wPreposition|wLinking) || last.s == "what" || last.s == "how" || last.s == "to" || last.s == "and")
}

// valueOf gives what the value is of that an end doubts: the fastener of a torque
// or the thing of a size that was said there.
func (r *reading) valueOf(e *looseEnd, rec *Record) (name, id string) {
	at := r.at(e.lo)
	clip := int(r.talk.Words[r.toks[e.lo].w].Clip)
	for _, t := range rec.Torques {
		if t.Clip == clip && t.At > at-6 && t.At < at+4 {
			return t.Fastener, t.LedgerID
		}
	}
	for _, s := range rec.Sizes {
		if s.Clip == clip && s.At > at-6 && s.At < at+4 && !s.Sure {
			return s.Of, ""
		}
	}
	return "", ""
}

// tornBetween gives the fastener of which the sources of a conflict give values.
func (r *reading) tornBetween(e *looseEnd, rec *Record) (name, id string) {
	lo, hi := r.at(r.clauses[e.first].lo), r.at(max(e.hi, r.clauses[e.last].hi)-1)
	clip := int(r.talk.Words[r.toks[e.lo].w].Clip)
	for _, t := range rec.Torques {
		if t.Clip == clip && t.At >= lo-1 && t.At <= hi+1 && t.Fastener != "" {
			return t.Fastener, t.LedgerID
		}
	}
	return "", ""
}

// nameOf gives the fullest name of what a mention stands for.
func (r *reading) nameOf(m *mention) string {
	name := m.name
	if t := m.entry; t != nil && t.name != "" && (t.fastener || len(t.name) > len(name)) {
		name = t.name
		if t.side != "" && m.side != "" {
			name = t.side + " " + name
		}
	}
	return name
}

// namesNoMatter are words that stand where a matter does in talk of what is to be done, and name
// none: when it is done, and how good it is.
var namesNoMatter = set("second minute hour day night morning evening afternoon week weekend month year while time mile kilometre kilometer whenever wherever whatever yet soon later today tomorrow then now again enough grand fine good great okay lovely nice well hard easy same done")

// saidWords names an end by the speaker's own words where no thing is certain.
func (r *reading) saidWords(e *looseEnd) string {
	var words []string
	c := &r.clauses[r.toks[e.lo].cl]
	for i := c.lo; i < c.hi && len(words) < 6; i++ {
		if w := r.toks[i].s; !stopWords.has(w) && !dropWords.has(w) && !pronounsObj.has(w) && (i < e.lo || i >= e.hi) {
			words = append(words, w)
		}
	}
	if len(words) == 0 && e.topic >= 0 {
		return shortName(r.nameOf(&r.mentions[e.topic]))
	}
	return strings.Join(words, " ")
}

// unworked are the names of what is looked at, called or bought, and no work is done on.
var unworked = wordsOf("what nobody works on")

// spokenQuestion words what was left open in the talk: with the thing where it is
// certain or, as a perhaps, where it was named some way before; and always in the
// speaker's own words.
func spokenQuestion(o Open, sure bool, perhaps string) string {
	said := "“" + o.Quote + "”"
	of := ""
	if sure {
		of = " for the " + o.About
	}
	maybe := ""
	if perhaps != "" {
		maybe = " (the " + perhaps + ", perhaps)"
	}
	switch o.Kind {
	case LookUp:
		if sure {
			return "What is the value for the " + o.About + ", and which source gives it: " + said + "?"
		}
		return "Which value is meant here" + maybe + ", and which source gives it: " + said + "?"
	case Unfinished:
		if sure && !unworked.has(o.About[strings.LastIndexByte(o.About, ' ')+1:]) {
			return "Is the work on the " + o.About + " finished: " + said + "?"
		}
		return "Is this done since" + maybe + ": " + said + "?"
	case Unsure:
		return "What is right" + of + maybe + "? The recording is not sure: " + said + "."
	case Suspect:
		if sure {
			return "Can the value heard for the " + o.About + " be right: " + said + "?"
		}
		return "Can the value heard here be right" + maybe + ": " + said + "?"
	case Conflict:
		if sure {
			return "Which is right for the " + o.About + " of this machine: " + said + "?"
		}
		return "Which is right for this machine" + maybe + ": " + said + "?"
	case ReplaceLater:
		if sure {
			return "Has what stands in for now (the " + o.About + ") been replaced by the proper part: " + said + "?"
		}
		return "Has this been put right since" + maybe + ": " + said + "?"
	case NotTorqued:
		if sure {
			have := "Has"
			if isMany(o.About) {
				have = "Have"
			}
			return have + " the " + o.About + " been tightened for good since: " + said + "?"
		}
		return "Has this been tightened for good since" + maybe + ": " + said + "?"
	case NotRefitted, LockMissing:
		if sure {
			is := "Is"
			if isMany(o.About) {
				is = "Are"
			}
			return is + " the " + o.About + " in place now: " + said + "?"
		}
		return "Is it back on" + maybe + ": " + said + "?"
	case Promise:
		return "Is what was promised to viewers ready: " + said + "?"
	}
	return question(o)
}
