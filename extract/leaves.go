package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// The ways of leaving something open that no list of phrases holds, because any
// verb of the workshop or the name of any part may stand in them.

// leaves gives the signals of a clause that are told by its build: work that a
// thing is said to want, work told as left, a lock that nobody has.
func (r *reading) leaves(ci int) []openCue {
	c := &r.clauses[ci]
	if c.mood&(conditional|asked|other|aside|greeting|listing) == asked && !r.saidIn(c, "you") {
		if lo, hi := r.valueMissing(ci); lo >= 0 && !r.heardIn(ci, ci+1, "unknown", "find") {
			return []openCue{{lo, hi, "unknown"}} // "Number for that nut? There is one. Somewhere upstairs."
		}
	}
	if c.mood&(conditional|asked|aside|greeting|listing) != 0 {
		if r.openAsked(ci) && !r.heardIn(ci, ci+1, "doubt", "undecided", "queried", "unknown") {
			return []openCue{{c.lo, c.hi, "queried"}}
		}
		return nil
	}
	var out []openCue
	if lo, hi := r.wanting(ci); lo >= 0 {
		out = append(out, openCue{lo, hi, "undone"})
	}
	if c.mood&other != 0 {
		if lo, hi := r.elsewhere(ci); lo >= 0 {
			out = append(out, openCue{lo, hi, "elsewhere"}) // "the key's in the wife's car"
		}
		return out
	}
	if lo, hi := r.valueMissing(ci); lo >= 0 && !r.heardIn(ci, ci+1, "unknown", "find") {
		out = append(out, openCue{lo, hi, "unknown"})
	}
	if oc, ok := r.notSo(ci); ok {
		out = append(out, oc)
	}
	if lo, hi := r.notSeen(ci); lo >= 0 && !r.heardIn(ci, ci, "lost") {
		out = append(out, openCue{lo, hi, "lost"})
	}
	if oc, ok := r.absent(ci); ok && !r.heardIn(ci, ci, "still-off", "lost") {
		out = append(out, oc)
	}
	if lo, hi := r.toBe(ci); lo >= 0 && !r.heardIn(ci, ci, "undone", "unrun", "later", "ordered") {
		out = append(out, openCue{lo, hi, "undone"})
	}
	if lo, hi := r.either(ci); lo >= 0 && !r.heardIn(ci, ci+1, "undecided", "doubt") {
		out = append(out, openCue{lo, hi, "either"})
	}
	if lo, hi := r.misfit(ci); lo >= 0 && !r.heardIn(ci, ci, "doubt") {
		out = append(out, openCue{lo, hi, "misfit"})
	}
	if lo, hi := r.forWant(ci); lo >= 0 && !r.heardIn(ci, ci, "stand-in", "makeshift") {
		out = append(out, openCue{lo, hi, "for-want"})
	}
	if lo, hi := r.partial(ci); lo >= 0 && !r.heardIn(ci, ci, "half-tight") {
		out = append(out, openCue{lo, hi, "half-tight"})
	}
	if lo, hi := r.outOfReach(ci); lo >= 0 {
		out = append(out, openCue{lo, hi, "out-of-reach"})
	}
	if lo, hi := r.dryYet(ci); lo >= 0 && !r.heardIn(ci, ci, "undone", "still-off", "before-use") {
		out = append(out, openCue{lo, hi, "undone"})
	}
	if lo, hi := r.notYetDoing(ci); lo >= 0 && !r.heardIn(ci, ci, "undone", "still-off", "half-tight", "later") {
		out = append(out, openCue{lo, hi, "undone"})
	}
	if lo, hi := r.leftToDo(c); lo >= 0 {
		out = append(out, openCue{lo, hi, "undone"})
	}
	if lo, hi := r.noneOf(c); lo >= 0 {
		out = append(out, openCue{lo, hi, "none"})
	}
	return r.waits(ci, out)
}

// chores are works that have a name of their own: "it wants a clean".
var chores = wordsOf("chores")

// often tells of work that is due again and again, on any such machine.
func (r *reading) often(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "every", "always", "usually", "often", "normally", "generally", "regular", "regularly", "occasionally", "sometimes", "never":
			return true
		}
	}
	return false
}

// wanting finds "wants bleeding", "it'll need greasing", "could do with a clean":
// work that the thing is said to want. What is set about in the next breath is not left.
func (r *reading) wanting(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	end := c.hi
	for _, q := range c.cues {
		if q.mood&other != 0 {
			end = min(end, q.lo) // but "needs balancing by somebody" is said of the thing
		}
	}
	for i := c.lo; i+1 < end; i++ {
		k := i + 1
		switch w := r.toks[i].s; {
		case w == "needs" || w == "wants":
		case (w == "need" || w == "want") && (i > c.lo):
		case w == "could" && r.next(i) == "do" && r.word(i+2) == "with":
			k = i + 3
		default:
			continue
		}
		if r.often(c) || r.pastTold(c) {
			return -1, -1
		}
		if !r.ofThings(c, i) && !r.sheWants(c, i) {
			continue // "she wants priming" is said of the machine
		}
		for k < c.hi && (loosely.has(r.toks[k].s) || wantingly.has(r.toks[k].s)) {
			k++
		}
		if k >= c.hi {
			continue
		}
		w := r.toks[k].s
		if hi := r.lockWanted(c, k); hi > 0 && !r.setAbout(ci) && !r.amiss(ci, "lock", "fit") {
			return i, hi // "that wants a pin in it"
		}
		if (w == "a" || w == "an" || w == "some" || w == "another" || w == "its") && k+1 < c.hi {
			n := r.toks[k+1].s
			if n == "good" || n == "proper" || n == "bit" || n == "quick" || n == "little" {
				k++
				if n = r.next(k); n == "of" {
					k += 2
					n = r.next(k)
				}
			}
			if k+1 < c.hi && chores.has(n) && !r.setAbout(ci) {
				return i, k + 2
			}
			continue
		}
		if r.gerund(k) && !r.setAbout(ci) {
			return i, k + 1
		}
		if j := k + 2; (determiner.has(w) || ofWhom.has(w)) && j < c.hi && r.gerund(j) && !r.setAbout(ci) && (j+1 >= c.hi || r.toks[j].brk >= brkComma || r.gerund(j+1) || !r.nextKind(j).is(wPreposition|wDeterminer)) {
			return i, j + 1 // "she'll want her tracking doing"
		}
	}
	return -1, -1
}

// sheWants tells of "she wants priming", "she'll want her tracking doing": of the machine.
func (r *reading) sheWants(c *clause, i int) bool {
	k := i - 1
	if k > c.lo && (r.toks[k].s == "'ll" || r.toks[k].s == "will") {
		k--
	}
	if k < c.lo || r.toks[k].s != "she" && r.toks[k].s != "he" {
		return false
	}
	return i+3 < c.hi && ofWhom.has(r.toks[i+1].s) && (r.gerund(i+3) || i+4 < c.hi && r.gerund(i+4))
}

// lockWanted gives the end of "a split pin in it", "lockwire through": a lock that a
// thing is said to want; 0 where there is none.
func (r *reading) lockWanted(c *clause, k int) int {
	for i := k; i < min(c.hi, k+4); i++ {
		m := r.toks[i].men
		if m < 0 {
			continue
		}
		n := &r.mentions[m]
		t := &thing{head: lexicon.Singular(n.head), mods: map[string]bool{}}
		for _, w := range n.mods {
			t.mods[w] = true
		}
		if w := r.word(n.hi); (lockHeads.has(t.head) || isLock(t) || t.head == "pin" || t.head == "clip") && n.hi < c.hi && (w == "in" || w == "through" || w == "on") {
			return n.hi + 1
		}
		return 0
	}
	return 0
}

// filledSoon tells whether something is filled, greased or wiped on in the next breaths.
func (r *reading) filledSoon(ci int) bool { return r.amiss(ci, "fill", "apply", "lubricate") }

// gerund tells whether the word after "needs" is what is to be done: nothing else
// that ends so stands there bare, but for parts by such a name.
func (r *reading) gerund(k int) bool {
	w := r.toks[k].s
	if !strings.HasSuffix(w, "ing") || len(w) < 5 || strings.HasSuffix(w, "thing") || w == "spring" || w == "string" {
		return false
	}
	if r.toks[k].men < 0 {
		return true
	}
	switch r.next(k) {
	case "with", "to", "up", "in", "out", "on", "off", "down":
		return len(r.lex.Lemmas(w)) > 0 || w == "packing"
	}
	return len(r.lex.Lemmas(w)) > 0 && r.mentions[r.toks[k].men].head != w
}

var wantingly = set("then still only all both bit also really definitely badly mind")

// wants tells whether a cue is of what a thing is said to want.
func (r *reading) wants(oc openCue) bool {
	switch r.toks[oc.lo].s {
	case "needs", "wants", "need", "want", "could", "due":
		return true
	}
	return false
}

// subjectOf gives the mention that stands before a verb, or tells that a word does
// which names something all the same: neither where it is a pronoun.
func (r *reading) subjectOf(c *clause, verb int) (mention int, named bool) {
	for i := verb - 1; i >= c.lo; i-- {
		w := r.toks[i].s
		switch {
		case r.toks[i].men >= 0:
			return int(r.toks[i].men), true
		case w == "'ll" || w == "will" || w == "gonna" || w == "going" || w == "'s" || w == "is" || w == "to" || loosely.has(w) || wantingly.has(w) || strings.HasSuffix(w, "ly"):
		default:
			return -1, !stopWords.has(w) && !pronounsObj.has(w) && !subjects.has(w)
		}
	}
	return -1, false
}

// nounBefore gives the word that stands as the subject before a verb.
func (r *reading) nounBefore(c *clause, verb int) int {
	for i := verb - 1; i >= c.lo; i-- {
		if w := r.toks[i].s; !stopWords.has(w) && !loosely.has(w) && !wantingly.has(w) && w != "will" && w != "'ll" && w != "gonna" && w != "going" {
			return i
		}
	}
	return -1
}

// phraseFrom gives where the phrase begins that ends in a word: as far back as two
// words that are no more than names, up to its determiner.
func (r *reading) phraseFrom(i int) int {
	c := &r.clauses[r.toks[i].cl]
	for k := i - 1; k >= max(c.lo, i-2); k-- {
		w := r.toks[k].s
		if determiner.has(w) || stopWords.has(w) || openers.has(w) || linking.has(w) || r.toks[k].brk >= brkComma {
			return k + 1
		}
		if k == i-2 {
			break
		}
	}
	return i
}

// ofThings tells whether the subject of the verb at i is the machine, not a person.
func (r *reading) ofThings(c *clause, i int) bool {
	for k := i - 1; k >= max(c.lo-2, i-4, 0); k-- {
		switch r.toks[k].s {
		case "you", "i", "who", "people", "nobody", "doesn't", "don't", "didn't", "not", "won't", "never", "no", "to", "he", "she", "if", "might", "may", "did", "does", "do":
			return false
		}
		if r.toks[k].men >= 0 {
			return true
		}
	}
	return true
}

// setAbout tells whether what is wanted is set about at once: "the shell wants
// cleaning, so a bit of cloth round here".
func (r *reading) setAbout(ci int) bool {
	for k := ci + 1; k < min(ci+3, len(r.clauses)) && r.since(r.clauses[ci].lo, r.clauses[k].lo) < 12; k++ {
		n := &r.clauses[k]
		if r.heardIn(k, k, "later", "undone", "find", "stand-in", "ordered") {
			return false
		}
		if r.beginsWith(n, "so", "right", "and") && len(n.acts) > 0 && n.mood&(negated|announced|conditional) == 0 {
			return true
		}
	}
	return false
}

// notYetDoing finds "I'm not filling it till the morning": work that is put off by its verb.
func (r *reading) notYetDoing(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	if c.mood&negated == 0 || c.mood&(leavesNothing|asked|hypothetical) != 0 {
		return -1, -1
	}
	for i := c.lo + 1; i+1 < c.hi; i++ {
		if r.toks[i].s != "not" || r.toks[i-1].s != "'m" && r.toks[i-1].s != "am" && r.toks[i-1].s != "'re" || !r.ofMe(max(c.lo, i-2), i) || !strings.HasSuffix(r.toks[i+1].s, "ing") || !r.toks[i+1].is(wForm) {
			continue
		}
		switch v := r.lemma1(r.toks[i+1].s); {
		case v == "put" || v == "refit" || v == "use" || v == "take" || v == "show" || v == "go" || v == "say" || v == "touch":
			continue // told by what stays off, or no work that is left
		}
		if r.saidIn(c, "tonight") || r.saidIn(c, "today") || r.saidIn(c, "till") || r.saidIn(c, "until") || r.saidIn(c, "yet") {
			return i - 1, i + 2
		}
		if k := ci + 1; k < len(r.clauses) && r.clauses[k].sentence == c.sentence {
			switch r.toks[r.clauses[k].lo].s {
			case "till", "until", "tonight", "today":
				return i - 1, i + 2
			}
		}
	}
	return -1, -1
}

// leftToDo finds "I've still the outer to trim", "there's the chain to do yet".
func (r *reading) leftToDo(c *clause) (lo, hi int) {
	still, from := false, -1
	for i := c.lo; i < c.hi; i++ {
		switch w := r.toks[i].s; w {
		case "still", "yet", "left":
			still = true
		case "'ve", "have", "got", "there's", "'s", "leaves":
			if from < 0 {
				from = i
			}
		}
	}
	if from < 0 || !still {
		return -1, -1
	}
	if from == c.lo+1 && r.toks[c.lo].s == "still" {
		from = c.lo
	}
	for i := from + 2; i+1 < c.hi; i++ {
		if p := r.toks[i-1]; r.toks[i].s != "to" || p.men < 0 && p.s != "bits" && !((p.s == "still" || p.s == "yet") && i-2 >= c.lo && r.toks[i-2].men >= 0) {
			continue
		}
		if v := r.toks[i+1].s; r.toks[c.lo].s == "still" && !stopWords.has(v) && r.toks[i+1].men < 0 || v == "do" || v == "go" || v == "sort" || v == "finish" || r.plainVerb(v) {
			return from, i + 2
		}
	}
	return -1, -1
}

// lockHeads are what locks a nut or a pin; a bare "pin" or "clip" may be anything.
var lockHeads = wordsOf("lockers by name")

// noneOf finds "I've no split pin", "haven't got a new tab washer": the lock that
// nobody has is not in.
func (r *reading) noneOf(c *clause) (lo, hi int) {
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		for k := m.lo - 1; k >= max(c.lo, m.lo-5); k-- {
			switch w := r.toks[k].s; w {
			case "no", "haven't", "without", "of", "ain't":
				if !r.locks(m) {
					continue
				}
				p := r.prev(k)
				if w == "no" && (p == "there's" || p == "'s" && r.word(k-2) == "there") && (r.namedBefore(m, 12) || nowhere.has(r.word(m.hi)) || m.hi >= c.hi || r.toks[m.hi-1].brk >= brkComma || r.word(m.hi) == "for" && r.next(m.hi) == "it" || r.lacksOne(c, m)) {
					return k, m.hi // "there's an R clip goes in the end, and there's no R clip"
				}
				if w == "no" && (p == "'ve" || p == "have" || p == "got" || p == "had" || p == "with") || w == "haven't" || w == "of" && p == "out" {
					return k, m.hi
				}
			}
		}
	}
	return -1, -1
}

// locks tells whether a mention is of a lock: a split pin, a tab washer, lock wire.
func (r *reading) locks(m *mention) bool {
	t := &thing{head: lexicon.Singular(m.head), mods: map[string]bool{}}
	for _, w := range m.mods {
		t.mods[w] = true
	}
	return lockHeads.has(t.head) || isLock(t)
}

// nowhere are what follows what is not to be had: "no wire in the house".
var nowhere = set("in left anywhere here about to")

// namedBefore tells whether a name was said a few seconds before a mention.
func (r *reading) namedBefore(m *mention, seconds float64) bool {
	for k := m.cl; k >= 0 && r.since(r.clauses[k].lo, m.lo) < seconds; k-- {
		for _, mi := range r.clauses[k].mentions {
			if o := &r.mentions[mi]; o.hi <= m.lo-1 && o.head == m.head {
				return true
			}
		}
		for i := r.clauses[k].lo; i < min(r.clauses[k].hi, m.lo-1); i++ {
			if r.toks[i].s == m.head && r.toks[i].men < 0 {
				return true // "drilled for wire"
			}
		}
	}
	return false
}

// turnedWay are words for which way round a thing sits, and in which order.
var turnedWay = set("round facing faces face outwards inwards outward inward upside backwards forwards order sequence lip over under behind lefthand righthand")

// placedAt are verbs of where a thing sits.
var placedAt = set("goes went go going sat sits sit fits hooks hooked was were is 's faces faced facing points pointed in on behind put")

// led are words that lead to a place: "on the inside", "goes in top".
var led = set("the on at to in into its my his her facing faces towards from goes is")

// orients tells whether a clause says where or which way round a thing goes: a
// doubt of that is a doubt of the job.
func (r *reading) orients(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&(other|conditional|aside|greeting) != 0 {
		return false
	}
	way, verb := false, false
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		way = way || turnedWay.has(w) || placeWords.has(w) && r.toks[i].men < 0 && led.has(r.prev(i)) || w == "way" && r.next(i) != "to"
		verb = verb || placedAt.has(w)
	}
	return way && verb
}

// whether tells of "was there a washer under this or not?", "does this go behind
// the arm?": what the speaker asks of the machine and cannot say.
func (r *reading) whether(ci int) bool {
	lo, hi := r.nearBy(ci, 2, 1, 10)
	for k := lo; k <= hi; k++ {
		c := &r.clauses[k]
		if first := r.toks[c.lo].s; k > ci && first != "if" && first != "whether" || k <= ci && c.mood&asked == 0 && first != "whether" && !r.saidIn(c, "whether") {
			continue
		}
		from := k
		if from > 0 && r.pronounIn(c.lo, c.hi) {
			from-- // "it had a twenty amp fuse. Whether that's right I couldn't say"
		}
		for j := from; j <= k; j++ {
			for _, mi := range r.clauses[j].mentions {
				if r.topical(&r.mentions[mi]) {
					return true
				}
			}
		}
	}
	return false
}

// placedInDoubt tells whether a doubt is of where or which way round a thing goes,
// in its own clause or, where it stands alone, in the one before; the end then
// takes that clause along.
func (r *reading) placedInDoubt(e *looseEnd, oc openCue) bool {
	ci := e.first
	c := &r.clauses[ci]
	if r.putRight(ci, oc) {
		return false
	}
	if r.orients(ci) {
		return true
	}
	if k := ci + 1; k < len(r.clauses) && oc.hi >= c.hi-1 && r.clauses[k].sentence == c.sentence && r.since(c.lo, r.clauses[k].lo) < 6 && r.orients(k) {
		e.last = k
		return true
	}
	if k := ci - 1; k >= 0 && c.hi-c.lo <= 7 && r.since(r.clauses[k].lo, c.lo) < 8 && r.orients(k) {
		e.first = k
		return true
	}
	return false
}

// madeDo tells whether, where a part was not to be had, it is told right after what
// went on instead: "no gasket in the kit, so I've cut one out of card".
func (r *reading) madeDo(ci int) bool {
	c := &r.clauses[ci]
	named := false
	for _, mi := range c.mentions {
		named = named || r.mentions[mi].kind&(lexicon.Part|lexicon.Fastener) != 0
	}
	if !named && !r.hasSize(c) {
		return false
	}
	_, hi := r.nearBy(ci, 0, 2, 12)
	for k := ci; k <= hi; k++ {
		n := &r.clauses[k]
		if n.mood&(conditional|asked) != 0 {
			continue
		}
		for i := max(n.lo, c.lo); i < n.hi; i++ {
			switch r.toks[i].s {
			case "so", "instead":
				for j := i + 1; j < min(n.hi, i+8); j++ {
					switch r.toks[j].s {
					case "in", "on", "used", "using", "cut", "made", "put", "fitted", "it's", "they're", "'s", "'ve", "have":
						return true
					}
				}
			}
		}
	}
	return false
}

// hasSize tells whether a size stands in a clause: "no M8 in stainless".
func (r *reading) hasSize(c *clause) bool {
	for _, q := range c.qtys {
		if ours(r.qtys[q].Kind) {
			return true
		}
	}
	return false
}

// afterUse tells of "and again after it's been warm", "once more when it's cold":
// a check that waits for the first use, in the clause after.
func (r *reading) afterUse(ci int) bool {
	lo, hi := r.nearBy(ci, 0, 2, 8)
	for k := lo; k <= hi; k++ {
		n := &r.clauses[k]
		if n.sentence != r.clauses[ci].sentence {
			break
		}
		switch r.toks[n.lo].s {
		case "after", "once", "when":
			for i := n.lo; i < n.hi; i++ {
				switch r.toks[i].s {
				case "run", "running", "warm", "hot", "cold", "cycle", "cycles", "used", "ridden", "driven", "bedded", "settled", "mile", "miles", "hour", "hours", "day", "days", "ride", "drive", "trip":
					return true
				}
			}
		}
	}
	return false
}

// puttingRight tells whether what is damaged is dealt with there and then.
func (r *reading) puttingRight(from, to int) bool {
	for k := from; k <= to; k++ {
		for _, ai := range r.clauses[k].acts {
			a := &r.acts[ai]
			switch a.action.Name {
			case "replace", "remove", "discard":
				if a.happened() {
					return true
				}
			}
		}
	}
	return false
}

// recap reads the list of what is left that people give at the end of the work:
// "So what's left. The left arm, and I've got to tell the app." Each thing named
// there is asked after, until the talk turns to something else.
func (r *reading) recap(ci int, oc openCue) []*looseEnd {
	c := &r.clauses[ci]
	w := r.talk.Words[r.toks[c.lo].w]
	if c.mood&(aside|other|conditional) != 0 || w.At < r.talk.Clips[w.Clip].Duration*0.5 {
		return nil
	}
	plan := oc.signal == "plan"
	none, last := 0, c.sentence // sentences that name no matter, and the last of which that is known
	var out []*looseEnd
	for k := ci; k < min(ci+16, len(r.clauses)) && r.since(c.lo, r.clauses[k].lo) < 45; k++ {
		n := &r.clauses[k]
		if n.mood&(aside|greeting) != 0 || r.heardIn(k, k, "promise", "next") {
			break
		}
		stop := false
		for _, ai := range n.acts {
			a := &r.acts[ai]
			stop = stop || k > ci && !plan && a.happened() && ledgerActs[a.action.Name] != "" && !r.mustIn(n)
		}
		if stop {
			break
		}
		if len(n.opens) > 0 && k > ci && r.heardIn(k, k, "undone", "unrun", "still-off", "later", "half-tight", "find", "stand-in", "ordered", "unknown", "remember", "lost") || n.mood&(conditional|asked|framed) != 0 && k > ci {
			continue
		}
		lo := n.lo
		if k == ci {
			lo = oc.hi
		}
		named := lo
		for _, mi := range n.mentions {
			m := &r.mentions[mi]
			if m.lo < lo || !r.topical(m) || !direct(m) || n.hi-lo > 7 && !r.mustIn(n) && n.mood&negated == 0 && !plan {
				continue
			}
			if named > lo && r.toks[m.from-1].brk < brkComma && r.toks[m.from-1].s != "and" {
				continue // "the clip on the hose" is one matter
			}
			named, last = m.hi, n.sentence
			out = append(out, &looseEnd{kind: Unfinished, before: BeforeUse, first: k, last: k, lo: m.lo, hi: m.hi, topic: mi, noun: -1, sure: true, signal: "recap"})
		}
		if named > lo || k == ci {
			continue
		}
		if i := r.itemIn(n, plan); i >= 0 {
			out = append(out, &looseEnd{kind: Unfinished, before: BeforeUse, first: k, last: k, lo: i, hi: i + 1, topic: -1, noun: i, sure: true, signal: "recap"})
		} else if from := r.clauses[r.sentenceAround(k).first].lo; !r.endsAsWritten(from - 1) {
			break // it talks of something else by now
		} else if n.sentence != last {
			if none++; none > 2 {
				break
			}
			last = n.sentence
		}
	}
	return out
}

// itemIn gives the word that stands for a matter in a list of what is left where no list
// has it: "bleed it", "and the indexing"; -1 where none does.
func (r *reading) itemIn(c *clause, plan bool) int {
	i := r.skipped(c)
	if i < c.hi && plan && len(c.acts) > 0 && r.acts[c.acts[0]].verb == i {
		return i
	}
	if c.hi-i > 3 || i >= c.hi || i+1 < c.hi && !determiner.has(r.toks[i].s) && r.toks[i].s != "and" {
		return -1
	}
	n := c.hi - 1
	if r.saysOneOf(i, c.hi, "named", "called", "nope", "yeah", "cheers", "thanks") {
		return -1
	}
	if w := r.toks[n].s; len(w) < 4 || stopWords.has(w) || pronounsObj.has(w) || subjects.has(w) || openers.has(w) || linking.has(w) || len(c.qtys) > 0 || r.kind(n).is(wCounts|wPlace|wParticle|wOn|wOff) || r.toks[n].men >= 0 {
		return -1
	}
	return n
}

// planFor tells of "So tomorrow.", "Right, Saturday then.": what comes next is a list of
// what will be done that day.
func (r *reading) planFor(ci int) bool {
	c := &r.clauses[ci]
	if c.hi-c.lo > 4 || !r.atTheEnd(ci) || c.mood&(aside|greeting|asked|conditional) != 0 || r.toks[c.hi-1].brk < brkSentence || len(c.acts) > 0 || len(c.mentions) > 0 || !r.dayIn(c) {
		return false
	}
	for i := r.skipped(c); i < c.hi; i++ {
		if w := r.toks[i].s; w != "for" && w != "on" && w != "then" && w != "next" && w != "this" && w != "the" && w != "morning" && w != "evening" && w != "so" && !days.has(w) {
			return false
		}
	}
	return true
}

// mustIn tells whether a clause says that something has to be done.
func (r *reading) mustIn(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "gotta", "must", "need", "needs", "to":
			return true
		}
	}
	return false
}

// foldRecap takes out what is no more than named in a list of what is left and is asked after
// anyway, and adds its time there.
func foldRecap(in []Open) []Open {
	var out []Open
	for i, o := range in {
		if !o.listed {
			out = append(out, o)
			continue
		}
		k := -1
		for j := range in {
			p := &in[j]
			if j != i && !p.listed && p.Before == o.Before && p.Clip == o.Clip && (p.LedgerID != "" && p.LedgerID == o.LedgerID || o.About != "" && (p.About == o.About || namesAll(p.About, o.About))) {
				k = j
			}
		}
		if k < 0 {
			out = append(out, o)
			continue
		}
		for j := range out {
			if out[j].Kind == in[k].Kind && out[j].About == in[k].About {
				out[j].AlsoAt = append(out[j].AlsoAt, o.At)
			}
		}
	}
	return out
}

// namesAll tells whether a name has every word of another: "grease cap", of "cap".
func namesAll(name, other string) bool {
	for w := range strings.FieldsSeq(other) {
		found := false
		for v := range strings.FieldsSeq(name) {
			found = found || lexicon.Singular(v) == lexicon.Singular(w)
		}
		if !found {
			return false
		}
	}
	last := func(s string) string { return lexicon.Singular(s[strings.LastIndexByte(s, ' ')+1:]) }
	return other != "" && last(name) == last(other)
}

// ofTools tells whether a clause names tools and no part.
func (r *reading) ofTools(c *clause) bool {
	tool := false
	for _, mi := range c.mentions {
		if r.topical(&r.mentions[mi]) {
			return false
		}
		tool = tool || r.mentions[mi].kind&lexicon.Tool != 0
	}
	return tool
}

// done are the words of "that's me for tonight", "that's it for now": who stops, not
// what stands in.
var done = set("me it enough done all")

// youCould tells of "you could use a bit of wire": nobody did.
func (r *reading) youCould(c *clause) bool {
	for i := c.lo; i+1 < c.hi; i++ {
		if w := r.toks[i+1].s; r.toks[i].s == "you" && (w == "could" || w == "can" || w == "might") {
			return true
		}
	}
	return false
}

// oldOnes tells whether what is spoken of is said to be old or there to be shown.
func (r *reading) oldOnes(ci int) bool {
	lo, _ := r.nearBy(ci, 1, 0, 8)
	for k := lo; k <= ci; k++ {
		for i := r.clauses[k].lo; i < r.clauses[k].hi; i++ {
			switch r.toks[i].s {
			case "old", "scrap", "showing", "knackered":
				return true
			}
		}
	}
	return false
}

// noneGiven tells of "there's no figure for that, there never was": that nobody
// gives a value is an answer, where no book is named and none is to be looked in.
func (r *reading) noneGiven(ci int, oc openCue) bool {
	c := &r.clauses[ci]
	no := false
	for i := oc.lo; i+1 < oc.hi; i++ {
		no = no || r.toks[i].s == "no" && figures.has(r.toks[i+1].s)
	}
	if !no || r.ofMe(c.lo, oc.hi) {
		return false
	}
	for i := c.lo; i < c.hi; i++ {
		if documents.has(r.toks[i].s) && !r.saysInstead(ci) {
			return false
		}
	}
	_, hi := r.nearBy(ci, 0, 3, 12)
	return !r.heardIn(ci, hi, "find", "later", "undecided", "back-to")
}

// saysInstead tells of "no figure in the book, it just says tighten firmly": what stands
// there in place of a value.
func (r *reading) saysInstead(ci int) bool {
	_, hi := r.nearBy(ci, 0, 2, 8)
	for k := ci; k <= hi; k++ {
		n := &r.clauses[k]
		for i := n.lo; i+1 < n.hi; i++ {
			if w := r.toks[i].s; (w == "just" || w == "only") && (r.toks[i+1].s == "says" || r.toks[i+1].s == "say") || w == "says" && (strings.HasPrefix(r.toks[i+1].s, "tight") || r.toks[i+1].s == "hand" || r.toks[i+1].s == "snug" || r.toks[i+1].s == "nip") {
				return true
			}
		}
	}
	return false
}

// denies are the words that begin what is not tight: "won't come tight".
var denies = set("not won't doesn't can't couldn't isn't aren't neither none no wouldn't don't haven't never without")

// forASecond tells of "just loosely in for a second".
func (r *reading) forASecond(oc openCue) bool {
	for i := oc.hi; i < min(oc.hi+5, len(r.toks)); i++ {
		if w := r.toks[i].s; (w == "second" || w == "sec" || w == "tick") && r.prev(i) == "a" {
			return true
		}
	}
	return false
}

// doneAlready tells of "you want to check the oil again. I have.": said, and done.
func (r *reading) doneAlready(ci int) bool {
	_, hi := r.nearBy(ci, 0, 3, 8)
	for k := ci + 1; k <= hi; k++ {
		n := &r.clauses[k]
		if n.hi-n.lo > 5 {
			continue
		}
		if r.toks[n.lo].s == "i" || r.toks[n.lo].s == "and" && r.next(n.lo) == "i" {
			if w := r.toks[n.hi-1].s; (w == "have" || w == "did" || w == "done" || w == "am" || w == "'m") && n.mood&negated == 0 {
				return true
			}
		}
	}
	return false
}

// toolIn tells whether a cue's word for a value is part of a tool's name: "torque wrench".
func (r *reading) toolIn(oc openCue) bool {
	for i := oc.lo; i < oc.hi; i++ {
		if k := r.toks[i].men; k >= 0 && figures.has(r.toks[i].s) && r.mentions[k].kind&lexicon.Tool != 0 {
			return true
		}
	}
	return false
}

// workNear tells whether something of the machine is named, and work is done, in a
// clause or right before it.
func (r *reading) workNear(ci int) bool {
	lo, _ := r.nearBy(ci, 3, 0, 10)
	named, work := false, false
	for k := lo; k <= ci; k++ {
		work = work || len(r.clauses[k].acts) > 0
		for _, mi := range r.clauses[k].mentions {
			named = named || r.topical(&r.mentions[mi])
		}
	}
	return named && work
}

// wholeSentences draws the words that are quoted of an end in or out to where
// sentences begin and end, as far as what it is about stays among them.
func (r *reading) wholeSentences(lo, hi int, e *looseEnd) (int, int) {
	const most = 38
	begins := func(k int) bool { return k == 0 || r.clauses[k-1].sentence != r.clauses[k].sentence }
	ends := func(k int) bool { return k+1 == len(r.clauses) || begins(k+1) }
	last := int(r.toks[hi-1].cl)
	end := last
	for !ends(end) {
		end++
	}
	if to := r.clauses[end].hi; to-lo <= most && r.since(hi-1, to-1) < 12 {
		hi = to
	} else {
		for k := last; k >= int(r.toks[e.hi-1].cl); k-- {
			if r.clauses[k].hi <= hi && ends(k) {
				hi = r.clauses[k].hi
				break
			}
		}
	}
	first := int(r.toks[e.lo].cl)
	if e.topic >= 0 {
		if m := &r.mentions[e.topic]; m.lo >= lo && m.cl < first {
			first = m.cl
		}
	}
	start := int(r.toks[lo].cl)
	for !begins(start) {
		start--
	}
	if from := r.clauses[start].lo; hi-from <= most && r.since(from, e.lo) < 15 {
		return from, hi
	}
	for k := int(r.toks[lo].cl); k <= first; k++ {
		if r.clauses[k].lo >= lo && begins(k) {
			return r.clauses[k].lo, hi
		}
	}
	return lo, hi
}

// youDo tells of "you've gotta do it by feel": advice, not what was done.
func (r *reading) youDo(c *clause, oc openCue) bool {
	for i := max(c.lo, oc.lo-6); i < oc.lo; i++ {
		if r.toks[i].s == "you" && !r.ofMe(i, oc.lo) {
			return true
		}
	}
	return false
}

// tightSaid tells whether an end without a thing speaks of tightness, or points.
func (r *reading) tightSaid(e *looseEnd) bool {
	lo, hi := r.clauses[e.first].lo, r.clauses[e.last].hi
	if r.ofTightness(lo, hi) || r.pronounIn(lo, hi) {
		return true
	}
	for i := lo; i < hi; i++ {
		switch r.toks[i].s {
		case "one", "ones", "two", "three", "four", "finger", "fingers", "hand", "snug", "loose", "torqued", "thread", "spinning":
			return true
		}
	}
	return false
}

// withoutOne tells of "on without one": what is lacking was named before.
func (r *reading) withoutOne(oc openCue) bool {
	for i := oc.lo; i < oc.hi; i++ {
		if r.toks[i].s == "without" {
			switch r.word(oc.hi) {
			case "one", "it", "them":
				return true
			}
			return r.toks[oc.hi-1].s == "one" || oc.hi == r.clauses[r.toks[oc.lo].cl].hi
		}
	}
	return false
}

// eitherOf tells of "I think that's the relay. It's either that or the one beside it".
func (r *reading) eitherOf(ci int, oc openCue) bool {
	if r.toks[oc.lo].s != "either" {
		return false
	}
	lo, _ := r.nearBy(ci, 2, 0, 10)
	for k := lo; k <= ci; k++ {
		if !r.heardIn(k, k, "doubt") {
			continue
		}
		for _, mi := range r.clauses[k].mentions {
			if r.topical(&r.mentions[mi]) {
				return true
			}
		}
	}
	return false
}

// hasWord tells whether a cue holds a word.
func (r *reading) hasWord(oc openCue, w string) bool {
	return r.saysOneOf(oc.lo, oc.hi, w)
}

// givenNow tells of "there's a figure for it, seventy eight newton metres": the
// value follows in the same breath.
func (r *reading) givenNow(ci int, oc openCue) bool {
	if r.toks[oc.lo].s != "there" && r.toks[oc.lo].s != "it" {
		return false
	}
	_, hi := r.nearBy(ci, 0, 1, 5)
	for k := ci; k <= hi; k++ {
		if r.heardIn(k, k, "doubt", "undecided", "find", "source") || r.clauses[k].mood&other != 0 || r.said(&r.clauses[k]) || r.saidIn(&r.clauses[k], "reckon") || r.saidIn(&r.clauses[k], "book") {
			return false // somebody's figure, or another machine's
		}
		for _, qi := range r.clauses[k].qtys {
			if q := &r.qtys[qi]; q.lo >= oc.hi && q.Kind == normalize.Torque {
				return true
			}
		}
	}
	return false
}

// duty tells whether a clause, or the one it hangs on, says what has to be done:
// "I need to put a meter across that before anyone plugs it in".
func (r *reading) duty(ci int) bool {
	lo := ci
	if ci > 0 && r.clauses[ci-1].sentence == r.clauses[ci].sentence {
		lo = ci - 1
	}
	for k := lo; k <= ci; k++ {
		c := &r.clauses[k]
		if c.mood&(other|conditional|asked|negated) != 0 {
			continue
		}
		for i := c.lo; i+1 < c.hi; i++ {
			w, next := r.toks[i].s, r.toks[i+1].s
			if i > c.lo && (r.toks[i-1].s == "you" || r.toks[i-1].s == "they") {
				continue
			}
			switch {
			case w == "must", w == "gotta", (w == "need" || w == "have" || w == "got" || w == "want" || w == "needs" || w == "has") && next == "to" && i > c.lo:
				return true
			}
		}
	}
	return false
}

// figureNear tells whether a figure stands in a clause or beside it; what follows may
// be of other work.
func (r *reading) figureNear(ci int) bool {
	for k := max(0, ci-1); k <= min(ci+1, len(r.clauses)-1); k++ {
		c := &r.clauses[k]
		if k > ci && len(c.acts) > 0 && r.acts[c.acts[0]].happened() {
			continue
		}
		if len(c.qtys) > 0 || len(r.numbers(c)) > 0 {
			return true
		}
	}
	return false
}

// figureSaid tells whether a word for what stands in a book stands in a clause.
func (r *reading) figureSaid(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		if figures.has(r.toks[i].s) && r.toks[i].men < 0 {
			return true
		}
	}
	return false
}

// howMuch are the words that make of "how" a question of a value.
var howMuch = set("much many tight long far deep high thick hard strong big wide loose")

// idly are what follows "without" where nothing is lacking: "without any fuss".
var idly = set("any a much too even so doubt fail question")

// disagrees tells whether a cue says itself that two do not agree.
func (r *reading) disagrees(oc openCue) bool {
	for i := oc.lo; i < oc.hi; i++ {
		switch r.toks[i].s {
		case "disagree", "disagrees", "match", "agree", "contradict", "contradicts", "tally", "odds", "believe", "lying", "right", "argument", "opinion":
			return true
		}
	}
	return false
}
