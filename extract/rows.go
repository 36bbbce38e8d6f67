package extract

import (
	"slices"

	"wrenchword/extract/lexicon"
)

// Rows: things that are only named share the lot of what comes off or goes on beside
// them: "pulley on, then the washer, and the nut", "nut, washer, pulley, all off".

// toldInARow is the rule of a thing that shares the lot of another.
const toldInARow = "told in a row"

// rowTails are the words that may follow a thing in a row and add nothing to what becomes
// of it.
var rowTails = set("too also next last first after that it them with well as behind beside under over on top the end and then back now there of in front")

// shares are the acts that what is told in a row shares.
var shares = map[string]bool{"fit": true, "remove": true, "start by hand": true, "disconnect": true}

// inOneRow lets what a clause only names share the lot of what it tells before it in the
// row, else of what it tells after it. What stands before a clause that goes on with "then"
// or "and" counts as told before it.
func (r *reading) inOneRow(ci int) {
	c := &r.clauses[ci]
	if len(c.mentions) == 0 || c.mood&notWork != 0 || ci < r.toolList[1] {
		return
	}
	if len(c.acts) == 0 {
		if !r.lotAtEnd(ci) {
			r.rowGoesOn(ci)
		}
		return
	}
	n := len(c.mentions)
	for i := 0; i < n; i++ {
		mi := c.mentions[i]
		m := &r.mentions[mi]
		if r.inAct(ci, mi) || r.prev(m.from) == "no" || r.word(m.from) == "no" {
			continue
		}
		at := -1
		switch {
		case r.rowElement(c, i):
			at = r.lotBefore(c, i)
			if at < 0 {
				at = r.lotAfter(c, i)
			}
		case r.countedAfter(c, mi) || r.placedElement(c, mi):
			at = r.lotBefore(c, i)
		}
		if at >= 0 {
			r.share(ci, at, mi)
		}
	}
	r.rowBefore(ci)
}

// rowBefore lets a clause that does nothing but begin the row share the lot of what the row
// is told to at its end: "that's the nut, | the washer and the pulley off".
func (r *reading) rowBefore(ci int) {
	c := &r.clauses[ci]
	if ci == 0 || r.clauses[ci-1].sentence != c.sentence || !r.inRowLed(c, r.mentions[c.mentions[0]].from) {
		return
	}
	at := -1
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.rowAct() && (a.verb < 0 || a.subject) && !r.offKeeper(a) && slices.Contains(a.objects, c.mentions[0]) {
			at = ai
			break
		}
	}
	if at < 0 {
		return
	}
	for k := ci - 1; k >= 0 && k >= ci-2 && r.clauses[k].sentence == c.sentence; k-- {
		p := &r.clauses[k]
		ms := r.bareRow(p)
		if len(ms) == 0 || r.mentions[ms[len(ms)-1]].hi != p.hi || slices.ContainsFunc(p.acts, func(ai int) bool { return !r.acts[ai].heads }) {
			return
		}
		for _, mi := range ms {
			r.share(ci, at, mi)
		}
	}
}

// inRowLed tells whether nothing but "and", "then" and articles stands in a clause before a token.
func (r *reading) inRowLed(c *clause, at int) bool {
	for i := c.lo; i < at; i++ {
		if w := r.toks[i].s; w != "and" && w != "then" && !r.toks[i].is(wDeterminer) {
			return false
		}
	}
	return true
}

// share lets a mention share the lot of what an act is done to.
func (r *reading) share(ci, ai, mi int) {
	name, m := r.acts[ai].action.Name, &r.mentions[mi]
	if name == "start by hand" && m.kind&lexicon.Fastener == 0 || name == "remove" && m.isNew {
		name = "fit" // "belt off, new belt"
	}
	x := act2(r.lex.Action(name), m.from, m.hi, mi)
	x.rule = toldInARow
	r.addAct(ci, x)
}

// rowElement tells whether the i-th mention of a clause stands in a row by itself: between
// commas, "and" or "then", with no more after it than where in the row it comes.
func (r *reading) rowElement(c *clause, i int) bool {
	m := &r.mentions[c.mentions[i]]
	if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.prep != "" && m.prep != "by" || m.kind&lexicon.Tool != 0 && !m.definite || r.besidePlace(c, i) || m.head == unsaid && (r.word(m.hi) == "first" || m.counted && r.toks[m.hi-1].brk < brkSentence) {
		return false
	}
	k, joined := m.from-1, false
	for k >= c.lo && r.toks[k].brk < brkComma && r.toks[k].men < 0 {
		w := r.toks[k].s
		if w == "and" || w == "then" || w == "plus" || w == "by" && r.prev(k) == "followed" {
			joined = true
		} else if !r.toks[k].is(wDeterminer|wOpener) && w != "followed" {
			break
		}
		k--
	}
	if k >= c.lo && (r.toks[k].s == "this" || r.toks[k].s == "that" || r.toks[k].s == "these" || r.toks[k].s == "those") {
		return false // "it's bolted to this, the rod end"
	}
	if !joined && k >= c.lo && r.toks[k].brk < brkComma && !(rowLed.has(r.toks[k].s) && (r.toks[k].s != "'s" || r.prev(k) == "that") && !r.indefinite(m)) {
		return false
	}
	if m.hi >= c.hi || r.toks[m.hi-1].brk >= brkComma {
		return true
	}
	if w := r.toks[m.hi].s; w == "and" || w == "then" || w == "plus" || w == "followed" {
		if m.hi+1 < c.hi && r.toks[m.hi-1].brk < brkComma && i+1 < len(c.mentions) {
			o := c.mentions[i+1] // "and the washer and spacer are worn"
			return r.inAct(int(r.toks[c.lo].cl), o) || r.mentions[o].from > m.hi+3 || r.rowElement(c, i+1)
		}
		return i+1 < len(c.mentions)
	}
	for j := m.hi; j < c.hi; j++ {
		if t := &r.toks[j]; t.men >= 0 || !rowTails.has(t.s) {
			return false
		} else if t.brk >= brkComma {
			break
		}
	}
	return true
}

// besidePlace tells whether a mention is joined to one that only tells where another goes or
// what comes with it: "between the gear and the casing", "with the spring, a washer and an o ring".
func (r *reading) besidePlace(c *clause, i int) bool {
	for comma := false; i > 0; i-- {
		m, o := &r.mentions[c.mentions[i]], &r.mentions[c.mentions[i-1]]
		for k := o.hi - 1; k < m.from; k++ {
			comma = comma || r.toks[k].brk >= brkComma
			if k >= o.hi && r.toks[k].s != "and" {
				return false
			}
		}
		if o.prep != "" && !r.inAct(o.cl, c.mentions[i-1]) {
			return o.prep == "with" && o.kind&lexicon.Fastener == 0 || !comma
		}
	}
	return false
}

// indefinite tells whether a mention is brought up with "a": "the old one had a male union".
func (r *reading) indefinite(m *mention) bool {
	w := r.toks[m.from].s
	return w == "a" || w == "an"
}

// rowLed are the words that lead in the first of a row: "I've had the nut, the washer and
// the pulley off", "that's the nut and the washer on".
var rowLed = set("'s had have got get getting having with")

// rowAct tells whether what an act is done to may be followed by more of the same.
func (a *act) rowAct() bool {
	return shares[a.action.Name] && a.happened() && !a.heads && len(a.objects)+len(a.pronoun) > 0
}

// lotBefore gives the act whose lot the i-th mention of a clause shares, as what is told
// before it in its row; -1 where there is none. What is done with a verb is shared only by
// what the clause goes on to do no more than name.
func (r *reading) lotBefore(c *clause, i int) int {
	m := &r.mentions[c.mentions[i]]
	at := -1
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.lo < m.from && (at < 0 || a.lo >= r.acts[at].lo) && a.rule != whereItIs && !readies[a.action.Name] {
			at = ai
		}
	}
	if at < 0 {
		return -1
	}
	a := &r.acts[at]
	if !a.rowAct() {
		return -1
	}
	for k := i - 1; k >= 0; k-- {
		o := &r.mentions[c.mentions[k]]
		if o.from < a.hi {
			break
		}
		if o.prep == "" && !r.inAct(m.cl, c.mentions[k]) && !r.rowElement(c, k) && !r.placedElement(c, c.mentions[k]) && !(k > 0 && determiner.has(r.toks[o.from].s) && onWords.has(r.prev(o.from))) {
			return -1
		}
	}
	if a.verb < 0 {
		return at
	}
	if m.kind&lexicon.Fastener != 0 && m.count > 0 && !m.definite && a.subject && a.hi == m.from {
		return at // "the cover comes off, four bolts"
	}
	if m.isNew && a.action.Name == "remove" || len(a.objects) == 0 || r.word(m.hi) != "with" && !r.followsOn(c, m, a) {
		return -1
	}
	for k := i; k < len(c.mentions); k++ {
		if o := &r.mentions[c.mentions[k]]; !r.rowElement(c, k) && !r.inAct(o.cl, c.mentions[k]) && !r.placedElement(c, c.mentions[k]) && o.prep == "" {
			return -1
		}
	}
	return at
}

// followsOn tells whether a mention follows an act in its row with nothing between but other
// things of the row and where they go.
func (r *reading) followsOn(c *clause, m *mention, a *act) bool {
	for k := a.hi; k < m.from; k++ {
		if t := &r.toks[k]; t.qty >= 0 || t.is(wNumber|wCountOf) && r.toks[k+1].men < 0 || t.men < 0 && !t.is(wDeterminer|wOpener|wDrop|wPreposition|wPlace|wDropAdj) && !rowTails.has(t.s) && t.s != "plus" && t.s != "followed" {
			return false
		}
	}
	return true
}

// lotAfter gives the act without a verb whose lot the i-th mention of a clause shares, as
// what is told after it with nothing but row between; -1 where there is none.
func (r *reading) lotAfter(c *clause, i int) int {
	for k := i + 1; k < len(c.mentions); k++ {
		if at := r.verblessActOn(c, c.mentions[k]); at >= 0 {
			return at
		}
		if !r.rowElement(c, k) {
			break
		}
	}
	return -1
}

// offKeeper tells whether a thing is said to come off what it may have been kept on: "and
// then the spacers off the zip tie".
func (r *reading) offKeeper(a *act) bool {
	return a.verb < 0 && a.action.Name == "remove" && keptIn.has(r.word(a.hi))
}

// lotAtEnd reads a row whose lot is told of all of it at the end: "nut, washer, pulley, all
// off", "that's the nut, the washer and the pulley back on".
func (r *reading) lotAtEnd(ci int) bool {
	c := &r.clauses[ci]
	last := c.mentions[len(c.mentions)-1]
	i := r.mentions[last].hi
	all := false
	for ; i < c.hi; i++ {
		w := r.toks[i].s
		if w == "all" || w == "both" {
			all = true
		} else if w != "now" && w != "are" && w != "'re" && w != "back" && w != "they" && w != "then" {
			break
		}
	}
	if i >= c.hi || !r.toks[i].is(wOff|wOn) || i+1 < c.hi && r.toks[i].brk < brkComma && r.next(i) != "now" && r.next(i) != "again" && r.next(i) != "and" {
		return false
	}
	row := r.bareRow(c)
	if len(row) < 2 && !(all && len(row) > 0 && (r.mentions[last].plural || r.mentions[last].count > 1)) {
		return false
	}
	name := "fit"
	if r.toks[i].is(wOff) {
		name = "remove"
	}
	for _, mi := range row {
		m := &r.mentions[mi]
		x := act2(r.lex.Action(name), m.from, m.hi, mi)
		x.rule, x.ifOff = toldInARow, name == "fit" && !m.isNew
		r.addAct(ci, x)
	}
	return true
}

// allOfRow reads what becomes of all that was named in the row before: "Nut, washer, pulley.
// All off.", "cup, cone, balls: they all go back in".
func (r *reading) allOfRow(ci int) {
	c := &r.clauses[ci]
	if ci == 0 || len(c.mentions) > 0 || len(c.acts) > 1 || c.hi-c.lo > 8 || c.mood&(notWork|announced) != 0 {
		return
	}
	all, at := false, -1
	for i := c.lo; i < c.hi; i++ {
		switch w := r.toks[i].s; {
		case w == "all" || w == "both" || w == "lot" || w == "they":
			all = true
		case r.toks[i].is(wOff | wOn):
			at = i
		case r.toks[i].is(wOpener|wDrop|wBetween|wLinking) || w == "back" || w == "that" || w == "the" || w == "those" || w == "and":
		default:
			return
		}
	}
	if !all || at < 0 {
		return
	}
	var row []int
	for k := ci - 1; k >= 0 && k >= ci-5 && r.since(r.clauses[k].lo, c.lo) < 12; k-- {
		p := &r.clauses[k]
		if len(p.mentions) == 0 || p.mood&notWork != 0 || slices.ContainsFunc(p.acts, func(ai int) bool { return !r.acts[ai].heads }) {
			break
		}
		ms := r.bareRow(p)
		if ms == nil || r.mentions[ms[len(ms)-1]].hi != p.hi {
			break
		}
		row = append(ms[:len(ms):len(ms)], row...)
	}
	if len(row) < 2 {
		return
	}
	name := "fit"
	if r.toks[at].is(wOff) {
		name = "remove"
	}
	x := act{action: r.lex.Action(name), lo: c.lo, hi: at + 1, verb: -1, objects: row, subject: true, ifOff: name == "fit", rule: toldInARow}
	if len(c.acts) == 1 {
		a := &r.acts[c.acts[0]]
		if len(a.objects) > 0 || !a.subject {
			return
		}
		a.objects, a.pronoun = row, ""
		return
	}
	r.addAct(ci, x)
}

// bareRow gives the mentions of a clause that is nothing but a row of things up to the end
// of the last; nil where it is more.
func (r *reading) bareRow(c *clause) []int {
	k := c.lo
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.prep != "" {
			return nil
		}
		for ; k < m.from; k++ {
			switch w := r.toks[k].s; {
			case w == "and" || w == "then" || w == "that" || w == "plus" || w == "both" || rowLed.has(w) && (w != "'s" || r.prev(k) == "that"):
			case k+1 < m.from && w == "i": // "I've had the nut"
			case w == "'ve" && rowLed.has(r.next(k)):
			case r.toks[k].is(wOpener):
			default:
				return nil
			}
		}
		k = m.hi
	}
	return c.mentions
}

// rowGoesOn lets a clause that does nothing but name go on with the row of the clause before:
// "new diaphragm on, | then the spring, then the cover", "Nut off. Washer. Pulley."
func (r *reading) rowGoesOn(ci int) {
	c := &r.clauses[ci]
	if ci == 0 || r.since(r.clauses[ci-1].lo, c.lo) > 8 || r.handledNext(ci) {
		return
	}
	p := &r.clauses[ci-1]
	if len(p.acts) == 0 {
		return
	}
	at := p.acts[len(p.acts)-1]
	a := &r.acts[at]
	if !a.rowAct() {
		return
	}
	for k := range c.mentions {
		if !r.rowElement(c, k) {
			return
		}
	}
	m := &r.mentions[c.mentions[0]]
	led := r.beginsWith(c, "then", "and", "followed")
	for i := c.lo; i < m.from; i++ {
		switch w := r.toks[i].s; w {
		case "and", "then", "followed", "by", "next":
		default:
			if !r.toks[i].is(wDeterminer) {
				return
			}
		}
	}
	if p.sentence != c.sentence && !led && r.bareNext(ci, a) {
		r.share(ci, at, c.mentions[0])
		return
	}
	if p.sentence != c.sentence && (!led || ci+1 < len(r.clauses) && r.clauses[ci+1].sentence == c.sentence) {
		return
	}
	for _, mi := range c.mentions {
		r.share(ci, at, mi)
		if x := &r.acts[len(r.acts)-1]; p.sentence != c.sentence {
			x.ifOff = x.action.Name == "fit" && !r.mentions[mi].isNew
		}
	}
}

// bareNext tells whether a sentence that is no more than a name goes on with a row of what
// comes off one by one, each told with no verb: "Nut off. Washer. Pulley."
func (r *reading) bareNext(ci int, a *act) bool {
	c := &r.clauses[ci]
	m := &r.mentions[c.mentions[0]]
	if a.verb >= 0 || a.action.Name != "remove" || len(c.mentions) > 1 || c.hi-c.lo > 3 || m.hi != c.hi || m.isNew || c.hi < len(r.toks) && r.toks[c.hi-1].brk < brkSentence {
		return false
	}
	if a.rule != toldInARow && m.kind&lexicon.Fastener == 0 && !small.has(m.head) && !(ci > 1 && len(r.clauses[ci-2].acts) > 0 && r.acts[r.clauses[ci-2].acts[0]].verb < 0 && r.acts[r.clauses[ci-2].acts[0]].action.Name == "remove" && r.since(r.clauses[ci-2].lo, c.lo) < 10) {
		return false
	}
	if ci+1 == len(r.clauses) {
		return true
	}
	// what it turns to is told by what holds it or what drives that
	n := &r.clauses[ci+1]
	switch r.toks[n.lo].s {
	case "that", "it", "they", "there", "this", "these", "those", "held", "them":
		return false
	}
	return len(n.qtys) == 0 && !slices.ContainsFunc(n.mentions, func(mi int) bool {
		o := &r.mentions[mi]
		return o.kind&lexicon.Tool != 0 || o.kind&lexicon.Fastener != 0 && o.count > 0
	})
}

// offAt gives the token at which a thing came off last, or -1.
func (t *thing) offAt() int {
	for i := len(t.events) - 1; i >= 0; i-- {
		if e := &t.events[i]; e.action == "remove" {
			return e.lo
		}
	}
	return -1
}

// reversed gives what a row names that ends in a clause, where it names things in the reverse
// of the order they came off in and says nothing else of them: "pulley, then washer, then
// nut". So they go back on, be it the first that does; nil where it is no such row.
func (s *tracker) reversed(c *clause) []int {
	r := s.r
	ci := int(r.toks[c.lo].cl)
	if c.mood&(notWork|announced) != 0 || r.laysOut(ci+1) {
		return nil
	}
	if row := s.asItCameOff(c); row != nil || len(c.acts) > 0 {
		return row
	}
	var row []int
	then := false
	for k := ci; k >= 0 && k >= ci-4 && r.since(r.clauses[k].lo, c.lo) < 10; k-- {
		p := &r.clauses[k]
		if k < ci && slices.ContainsFunc(p.acts, func(ai int) bool { return !r.acts[ai].heads || r.acts[ai].mood&framed == 0 }) {
			break
		}
		ms := r.bareRow(p)
		if len(ms) == 0 {
			break
		}
		tail := true
		for i := r.mentions[ms[len(ms)-1]].hi; i < p.hi; i++ {
			tail = tail && rowTails.has(r.toks[i].s)
		}
		if !tail {
			break
		}
		for i := p.lo; i < p.hi; i++ {
			then = then || r.toks[i].s == "then" || r.toks[i].s == "next" || r.toks[i].s == "last"
		}
		row = append(ms[:len(ms):len(ms)], row...)
	}
	if len(row) < 2 || len(row) == 2 && !then {
		return nil
	}
	if first := r.mentions[row[0]].cl; first > 0 && r.clauses[first-1].sentence == r.clauses[first].sentence {
		return nil // "next week the pulley goes on, | then the washer, then the nut"
	}
	last := -1
	for k := len(row) - 1; k >= 0; k-- {
		t := r.mentions[row[k]].entry
		if t == nil || r.lastState(t) != Removed {
			return nil
		}
		off := t.offAt()
		if off <= last || r.since(off, c.lo) < 12 {
			return nil
		}
		last = off
	}
	return row
}

// asItCameOff gives the things that are off of a row that is said to be in the order in which
// things go back: "same as it came off: pulley, washer, nut", "in reverse, hub, cone, nut".
func (s *tracker) asItCameOff(c *clause) []int {
	r := s.r
	lo, hi := -1, -1
	for i := c.lo; i+1 < c.hi && lo < 0; i++ {
		switch w, n := r.toks[i].s, r.toks[i+1].s; {
		case w == "as" && (n == "it" || n == "they") && r.word(i+2) == "came" && i > c.lo && i+3 < c.hi:
			lo, hi = i, i+4
		case w == "in" && n == "reverse", w == "back" && n == "together":
			lo, hi = i, i+2
		case (w == "putting" || w == "goes" || w == "going") && (n == "it" || n == "back") && (n == "back" || r.word(i+2) == "back"):
			if lo, hi = i, i+2; n == "it" {
				hi++
			}
		}
	}
	if lo < 0 {
		return nil
	}
	for lo > c.lo && (r.toks[lo-1].s == "same" || r.toks[lo-1].s == "way" || r.toks[lo-1].s == "order" || r.toks[lo-1].s == "just" || r.toks[lo-1].s == "exactly") {
		lo--
	}
	for hi < c.hi && (r.toks[hi].s == "together" || r.toks[hi].s == "in" || r.toks[hi].s == "reverse" || r.toks[hi].s == "order") {
		hi++
	}
	for _, ai := range c.acts {
		if a := &r.acts[ai]; !a.heads && (a.lo < lo || a.lo >= hi) {
			return nil
		}
	}
	row := *c
	if m := &r.mentions[c.mentions[0]]; m.from >= hi {
		for k := c.lo; k < lo; k++ {
			if !r.toks[k].is(wOpener) && r.toks[k].s != "it" && r.toks[k].s != "all" && r.toks[k].s != "and" {
				return nil
			}
		}
		row.lo = hi
	} else {
		row.hi = lo
		for row.lo < m.from && (r.toks[row.lo].is(wOpener) || r.toks[row.lo].s == "it" || r.toks[row.lo].s == "'s") {
			row.lo++
		}
	}
	var out []int
	for _, mi := range r.bareRow(&row) {
		if m := &r.mentions[mi]; m.entry != nil && m.from >= row.lo && m.hi <= row.hi && r.lastState(m.entry) == Removed {
			out = append(out, mi)
		}
	}
	if len(out) < 2 && !(len(out) == 1 && r.toks[lo].s == "same") {
		return nil
	}
	return out
}

// laysOut tells whether a clause says of what was named before it where it lies, or that it
// was cleaned.
func (r *reading) laysOut(ci int) bool {
	if ci >= len(r.clauses) {
		return false
	}
	c := &r.clauses[ci]
	for i := c.lo; i < c.hi && i < c.lo+8; i++ {
		if w := r.toks[i].s; containers.has(w) || w == "cleaned" || w == "washed" || w == "clean" || w == "wash" || w == "off" || w == "out" || w == "worn" || w == "soak" || w == "came" {
			return true
		}
	}
	return false
}
