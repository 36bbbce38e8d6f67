package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// What must stand around a cue of open.txt for it to leave something open, and what shows that it does
// not.

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
