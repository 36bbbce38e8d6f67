package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
)

// toolInUse is the rule of a tool that is named in use, with no verb.
const toolInUse = "tool in use"

// inUse reads "wire brush round where the housing sits", "micrometer on it", "rubber
// mallet, both sides": a tool, or what is used up, and where it is used, with no verb.
// What is done with it, the list of uses tells.
func (r *reading) inUse(ci int) {
	c := &r.clauses[ci]
	if len(c.mentions) == 0 || c.mood&notWork&^negated != 0 || ci < r.toolList[1] {
		return
	}
	for k, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&(lexicon.Tool|lexicon.Consumable) == 0 || m.kind&lexicon.Fastener != 0 || m.prep != "" && m.prep != "of" || r.inAct(ci, mi) {
			continue
		}
		use := r.lex.Use(m.name)
		if use.Action == nil || !r.takenUp(c, m) || r.deniedBefore(c, m.from) {
			continue
		}
		if f := &r.mentions[c.mentions[0]]; k > 0 && m.hi == c.hi && m.from > c.lo && r.toks[m.from-1].brk == brkComma && use.Action.Name == "clean" && f.kind&(lexicon.Part|lexicon.Fastener) != 0 && r.opens(c, f) && len(c.acts) == 0 {
			// "the threads on the screw, toothbrush"
			r.addAct(ci, act{action: use.Action, lo: m.from, hi: c.hi, verb: -1, objects: []int{c.mentions[0]}, subject: true, rule: toolInUse})
			return
		}
		if o := r.readOff(ci, m, use); o >= 0 {
			r.addAct(ci, act{action: use.Action, lo: m.from, hi: c.hi, verb: -1, objects: []int{o}, subject: true, rule: toolInUse})
			return
		}
		i := m.hi
		for i < c.hi && (r.toks[i].s == "all" || r.toks[i].s == "right" || r.toks[i].s == "just" || r.toks[i].s == "straight" || r.toks[i].s == "now") {
			i++
		}
		if i+1 >= c.hi || !appliedTo.has(r.toks[i].s) {
			if i+1 >= c.hi || r.toks[i].s != "both" && r.toks[i].s != "each" && r.toks[i].s != "either" || r.toks[i+1].s != "side" && r.toks[i+1].s != "sides" && r.toks[i+1].s != "end" && r.toks[i+1].s != "ends" && r.toks[i+1].s != "face" && r.toks[i+1].s != "faces" {
				continue
			}
			r.addAct(ci, act{action: use.Action, lo: m.from, hi: i, verb: -1, pronoun: "it", subject: true, rule: toolInUse})
			return
		}
		x := act{action: use.Action, lo: m.from, hi: i + 1, verb: -1, subject: true, rule: toolInUse}
		where := r.toks[i+1].s
		if where == "the" || where == "my" || where == "your" {
			where = r.word(i + 2)
		}
		if keptAt.has(where) {
			continue
		}
		for _, oi := range c.mentions[k+1:] {
			if o := &r.mentions[oi]; o.kind&(lexicon.Part|lexicon.Fastener) != 0 && o.from <= i+6 && !r.inAct(ci, oi) {
				x.objects = []int{oi}
				break
			}
		}
		switch w := r.toks[i+1].s; {
		case len(x.objects) > 0 && r.mentions[x.objects[0]].from == i+1:
		case (pronounsObj.has(w) || w == "each" || w == "all" || w == "there" || w == "here") && (i+2 >= c.hi || r.toks[i+1].men < 0):
			if len(x.objects) == 0 {
				x.pronoun = "it"
				if w == "them" || w == "those" || w == "these" || w == "each" || w == "both" || w == "all" {
					x.pronoun = "them"
				}
			}
		case len(x.objects) > 0:
		case r.toks[i].s == "on" || r.toks[i].s == "in" || r.toks[i].s == "at" || r.toks[i].s == "to":
			continue // "torch in the van", "hammer on the hook"
		case determiner.has(w) || w == "where":
			x.pronoun = "it"
		default:
			continue
		}
		r.addAct(ci, x)
		return
	}
}

// readOff gives the thing that is measured where a gauge is named and then what it reads,
// or -1: "Ring gaps. Feeler gauge, top one's point three."
func (r *reading) readOff(ci int, m *mention, use lexicon.Use) int {
	c := &r.clauses[ci]
	if use.Action.Name != "measure" || m.hi < c.hi && r.toks[m.hi-1].brk < brkComma && !(r.toks[m.hi].s == "on" && ranges.has(r.next(m.hi))) {
		return -1
	}
	valued := false
	for k := ci; k < min(len(r.clauses), ci+2) && !valued && r.since(c.lo, r.clauses[k].lo) < 12; k++ {
		for i := max(m.hi, r.clauses[k].lo); i < r.clauses[k].hi; i++ {
			valued = valued || r.toks[i].qty >= 0 || r.toks[i].is(wNumber) && r.toks[i].s != "one"
		}
	}
	if !valued {
		return -1
	}
	return r.beingWorked(ci)
}

// ranges are what a meter is set to.
var ranges = wordsOf("electrical ranges")

// beingWorked gives the part or fastener that the talk named last, in the few clauses before
// one, or -1.
func (r *reading) beingWorked(ci int) int {
	for k := ci - 1; k >= 0 && k > ci-4 && r.since(r.clauses[k].lo, r.clauses[ci].lo) < 12; k-- {
		ms := r.clauses[k].mentions
		if len(ms) == 0 {
			continue
		}
		if o := &r.mentions[ms[0]]; r.clauses[k].mood&(other|hypothetical|asked|aside|storied) == 0 && o.kind&(lexicon.Part|lexicon.Fastener) != 0 && o.prep == "" {
			return ms[0]
		}
		break
	}
	return -1
}

// appliedTo are the words that lead from a tool to where it is used.
var appliedTo = set("on over round around along across down up in into inside through under underneath behind between against onto to at")

// keptAt are the words for where a tool lies when it is not in use.
var keptAt = wordsOf("where a tool lies unused")

// itIs tells whether no more than "it's" leads to the article at token i, at the start of
// a clause: "and it's a zip tie round the leg".
func (r *reading) itIs(c *clause, i int) bool {
	if i-2 < c.lo || r.toks[i-1].s != "'s" && r.toks[i-1].s != "is" || r.toks[i-2].s != "it" {
		return false
	}
	for k := c.lo; k < i-2; k++ {
		if w := r.toks[k].s; !r.toks[k].is(wOpener|wDrop) && w != "and" {
			return false
		}
	}
	return true
}

// takenUp tells whether a tool is named as taken up: nothing before it in its clause says
// anything of it but how much or which.
func (r *reading) takenUp(c *clause, m *mention) bool {
	for i := m.from - 1; i >= c.lo && r.toks[i].brk < brkComma; i-- {
		w := r.toks[i].s
		if r.toks[i].men >= 0 || offWords.has(w) || onWords.has(w) {
			return r.toks[i].men < 0 || r.mentions[r.toks[i].men].kind&lexicon.Tool == 0
		}
		if w == "of" || w == "strip" || w == "and" || w == "then" || r.toks[i].is(wOpener|wDrop|wDropAdj|wDeterminer|wPlace) || measured.has(w) || w == "bit" || w == "piece" || w == "size" || w == "with" && i == c.lo {
			continue
		}
		if (w == "'s" || w == "is") && r.itIs(c, i+1) {
			return true
		}
		return false
	}
	return true
}

// usedText words a tool in use as an instruction: "Brush round the flange with the wire brush."
func (r *reading) usedText(c *clause, a *act, hi int, names string) string {
	var m *mention
	for _, mi := range c.mentions {
		if o := &r.mentions[mi]; o.from == a.lo {
			m = o
		}
	}
	if m == nil {
		return ""
	}
	verb, tool := r.lex.Use(m.name).Verb, m.name
	if m.kind&lexicon.Tool != 0 {
		tool = "the " + tool
	}
	lead := r.toks[a.hi-1].s
	s := verb
	switch {
	case r.toks[a.hi-1].brk >= brkComma && (lead == "on" || lead == "in") && a.hi < c.hi:
		return trimStep("Put "+tool+" "+lead) + "." // "puller on, two legs behind the boss"
	case len(a.objects) > 0 && a.hi == c.hi:
		s += " the " + names
	case len(a.objects) > 0 && (lead == "on" || lead == "to" || lead == "onto" || lead == "at"):
		s += " the " + names + strings.TrimRight(r.tail(c, r.mentions[a.objects[0]].hi, hi), ",")
	case verb == "Tie" && r.tail(c, a.hi-1, hi) != "":
		if m.head == "tie" && !m.plural {
			tool = "a " + tool
		}
		return trimStep("Put "+tool+r.tail(c, a.hi-1, hi)) + "." // "string through the jet": what is tied, nobody said
	case len(a.objects) > 0 || !pronounsObj.has(r.word(a.hi)) && (determiner.has(r.word(a.hi)) || r.word(a.hi) == "where"):
		s += r.tail(c, a.hi-1, hi)
	case names != "":
		s += " the " + names
	default:
		s += " this"
		return trimStep(s+" with "+tool) + perhaps(a) + "."
	}
	if s == verb && len(a.objects) == 0 {
		return "" // "clamp over the lot": what is pressed, nobody said
	}
	if s == verb || slices.Contains(strings.Fields(s), "with") {
		return trimStep(s) + "."
	}
	return trimStep(s+" with "+tool) + "."
}

// inUseBy tells whether a tool, or what is used up, is what an act of its clause is done with.
func (r *reading) inUseBy(c *clause, m *mention) bool {
	return slices.ContainsFunc(c.acts, func(ai int) bool { return r.acts[ai].rule == toolInUse && r.acts[ai].lo == m.from })
}

// heated reads "bit of heat on the nut", "torch on it till it smokes": heat, and what it is
// put on, with no verb.
func (r *reading) heated(ci int) {
	c := &r.clauses[ci]
	if c.mood&notWork&^negated != 0 || ci < r.toolList[1] {
		return
	}
	for i := c.lo; i+2 < c.hi; i++ {
		w := r.toks[i].s
		if w != "heat" && w != "torch" || r.toks[i+1].s != "on" && r.toks[i+1].s != "in" && r.toks[i+1].s != "into" && r.toks[i+1].s != "round" && r.toks[i+1].s != "around" {
			continue
		}
		for _, ai := range c.acts {
			if a := &r.acts[ai]; a.verb == i && len(a.objects) == 0 {
				a.mood |= framed // "heat on it": no verb
			}
		}
		lo := i
		for lo > c.lo && r.toks[lo-1].brk < brkComma && (measured.has(r.toks[lo-1].s) || r.toks[lo-1].is(wOpener|wDrop|wDropAdj|wDeterminer) || r.toks[lo-1].s == "of" || r.toks[lo-1].s == "and" || r.toks[lo-1].s == "then") {
			lo--
		}
		if lo > c.lo && r.toks[lo-1].brk < brkComma || w == "torch" && !r.hotNear(ci) || r.deniedBefore(c, i) {
			return
		}
		x := act{action: r.lex.Action("heat"), lo: lo, hi: i + 2, verb: -1, subject: true, rule: "heat and place"}
		if n := r.toks[i+2].s; pronounsObj.has(n) || n == "there" {
			x.pronoun = "it"
			for k := ci - 1; k >= 0 && k > ci-4 && r.since(r.clauses[k].lo, i) < 15; k-- {
				if ms := r.clauses[k].mentions; len(ms) == 1 && r.mentions[ms[0]].kind&(lexicon.Part|lexicon.Fastener) != 0 {
					x.objects, x.pronoun = ms[:1:1], "" // "the nut won't shift. Heat on it"
				} else if len(ms) == 0 {
					continue
				}
				break
			}
		} else if mi := r.nameWithin(c, i+2, 4); mi >= 0 && r.mentions[mi].kind&(lexicon.Part|lexicon.Fastener) != 0 {
			x.objects = []int{mi}
		} else {
			return
		}
		r.addAct(ci, x)
		return
	}
}

// hotNear tells whether the talk round a clause is of something made hot or stuck fast.
func (r *reading) hotNear(ci int) bool {
	for k := max(0, ci-3); k < min(len(r.clauses), ci+4); k++ {
		if r.clauses[k].sentence < r.clauses[ci].sentence-2 || r.clauses[k].sentence > r.clauses[ci].sentence+1 {
			continue
		}
		for i := r.clauses[k].lo; i < r.clauses[k].hi; i++ {
			if r.toks[i].s != "" && hot.has(r.toks[i].s) {
				return true
			}
		}
	}
	return false
}

// hot are the words of what is made hot, and of what wants it.
var hot = wordsOf("heat and what it does")

// endsOff reads the particle on which a sentence ends after how it is done: "Dust cap:
// soft hammer, round the edge, on.", "a bump with the palm, and out".
func (r *reading) endsOff(ci int) {
	c := &r.clauses[ci]
	n := c.hi - 1
	if !r.toks[n].is(wOff|wOn) || r.toks[n].brk < brkSentence || c.mood&notWork != 0 || ci < r.toolList[1] {
		return
	}
	first := ci
	for first > 0 && r.clauses[first-1].sentence == c.sentence && first > ci-4 {
		first--
	}
	if n == r.clauses[first].lo {
		return // nothing stands before it: thenPlace has it
	}
	if p := r.toks[n-1].s; r.toks[n-1].brk < brkComma && (p != "and" || n-2 < r.clauses[first].lo || r.toks[n-2].is(wOn|wOff) || r.toks[n-2].s == "so") {
		return
	}
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.hi > n || left[a.action.Name] != "" && a.hi >= n-1 {
			return
		}
	}
	name := "remove"
	if r.toks[n].is(wOn) {
		name = "fit"
	}
	x := act{action: r.lex.Action(name), lo: n, hi: n + 1, verb: -1, pronoun: "it", subject: true, rule: "particle at last"}
	f := &r.clauses[first]
	for _, mi := range f.mentions {
		if m := &r.mentions[mi]; m.kind&(lexicon.Part|lexicon.Fastener) != 0 && m.prep == "" && m.lo < n {
			if r.opens(f, m) {
				x.objects, x.pronoun = []int{mi}, ""
			}
			break
		}
	}
	if len(x.objects) == 0 {
		x.ifOff = name == "fit"
	}
	r.addAct(ci, x)
}

// saidAlone tells whether a verb is all that its clause says: "And lift."
func (r *reading) saidAlone(c *clause, verb int) bool {
	if !r.plainVerb(r.toks[verb].s) || r.toks[c.hi-1].brk < brkComma {
		return false
	}
	for i := c.lo; i < c.hi; i++ {
		if w := r.toks[i].s; i != verb && w != "and" && w != "up" && w != "hard" && w != "straight" && w != "together" && w != "slowly" && w != "gently" && !r.toks[i].is(wOpener|wDrop) && !r.plainVerb(w) {
			return false
		}
	}
	return true
}

// toolAlone reads "Base gasket's welded on. Scraper. Plastic one.": a tool that is only
// named, after what it is for.
func (r *reading) toolAlone(ci int) {
	c := &r.clauses[ci]
	if len(c.acts) > 0 || !r.onlyTool(ci) || c.mood&notWork != 0 || ci < r.toolList[1] || r.onlyTool(ci-1) || r.onlyTool(ci+1) {
		return
	}
	m := &r.mentions[c.mentions[0]]
	use := r.lex.Use(m.name)
	switch {
	case use.Action == nil:
		return
	case use.Action.Name != "clean" && use.Action.Name != "measure" && use.Action.Name != "heat" && use.Action.Name != "cut":
		return
	}
	if o := r.beingWorked(ci); o >= 0 {
		r.addAct(ci, act{action: use.Action, lo: m.from, hi: c.hi, verb: -1, objects: []int{o}, subject: true, rule: toolInUse})
	}
}

// onlyTool tells whether a clause does nothing but name one tool, a sentence of its own.
func (r *reading) onlyTool(ci int) bool {
	if ci < 0 || ci >= len(r.clauses) {
		return false
	}
	c := &r.clauses[ci]
	if len(c.mentions) != 1 || c.hi-c.lo > 5 || r.toks[c.hi-1].brk < brkSentence || c.lo > 0 && r.toks[c.lo-1].brk < brkSentence {
		return false
	}
	m := &r.mentions[c.mentions[0]]
	if m.kind&(lexicon.Tool|lexicon.Consumable) == 0 || m.prep != "" && m.prep != "of" || m.hi != c.hi {
		return false
	}
	for i := c.lo; i < m.lo; i++ {
		if w := r.toks[i].s; firstPerson[w] != "" || !r.toks[i].is(wOpener|wDrop|wDropAdj|wDeterminer) && w != "and" && w != "bit" && w != "of" {
			return false
		}
	}
	return true
}

// pictures are the words for a picture taken.
var pictures = wordsOf("pictures taken")

// photo reads "Photo.", "quick picture of the linkage": one that is taken, with no verb.
func (r *reading) photo(ci int) {
	c := &r.clauses[ci]
	if len(c.acts) > 0 || c.hi-c.lo > 9 || c.mood&notWork != 0 {
		return
	}
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		if pictures.has(w) {
			if w == "snap" && (i == c.lo || !r.toks[i-1].is(wDeterminer) && r.toks[i-1].s != "a" && r.toks[i-1].s != "quick") {
				return // the noise of a clip
			}
			if n := r.next(i); i+1 < c.hi && r.toks[i].brk < brkComma && n != "of" && n != "before" && n != "first" && n != "there" && n != "here" && n != "now" {
				return
			}
			x := act{action: r.lex.Action("mark"), lo: i, hi: i + 1, verb: -1, subject: true, rule: "picture"}
			if mi := r.nameWithin(c, i+2, 3); mi >= 0 && r.next(i) == "of" {
				x.objects = []int{mi}
			}
			r.addAct(ci, x)
			return
		}
		if !r.toks[i].is(wOpener|wDrop|wDeterminer) && w != "and" && w != "quick" && w != "so" {
			return
		}
	}
}

// The rules of the whole machine that goes up or down with no verb.
const (
	machineUp   = "machine goes up"
	machineDown = "machine comes down"
	onItsSide   = "on its side"
)

// raised reads "trolley jack under the sill, up she goes", "jack down, down she comes": the
// machine goes up or down where a jack or a hoist was named right before.
func (r *reading) raised(ci int) {
	c := &r.clauses[ci]
	if c.mood&notWork != 0 {
		return
	}
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		if w != "up" && w != "down" {
			continue
		}
		if p, v := r.next(i), r.word(i+2); p != "she" && p != "he" && p != "it" || v != "goes" && v != "comes" || !r.liftedBy(ci) {
			continue
		}
		x := act{action: r.lex.Action("support"), lo: i, hi: i + 1, verb: -1, subject: true, rule: machineUp}
		if w == "down" {
			x.action, x.rule = r.lex.Action("lower"), machineDown
		}
		for _, ai := range c.acts {
			if a := &r.acts[ai]; a.lo == i && a.verb < 0 {
				x.cl, x.qty, x.mood = a.cl, a.qty, a.mood
				*a = x
				return
			}
		}
		r.addAct(ci, x)
		return
	}
}

// lifters are the tools that raise a machine.
var lifters = wordsOf("lifting gear")

// propsUnder are what a machine that was raised is let down on.
var propsUnder = wordsOf("what a raised machine is let down on")

// liftedBy tells whether the sentence of a clause, or the one before, names what lifts, or the
// next one what is put under what was lifted.
func (r *reading) liftedBy(ci int) bool {
	for k := ci; k >= 0 && k > ci-4 && r.clauses[k].sentence >= r.clauses[ci].sentence-1; k-- {
		for i := r.clauses[k].lo; i < r.clauses[k].hi; i++ {
			if lifters.has(r.toks[i].s) {
				return true
			}
		}
	}
	for k := ci + 1; k < min(len(r.clauses), ci+3) && r.clauses[k].sentence <= r.clauses[ci].sentence+1; k++ {
		for i := r.clauses[k].lo; i < r.clauses[k].hi; i++ {
			if propsUnder.has(r.toks[i].s) {
				return true
			}
		}
	}
	return false
}

// lies are the sides that a machine is laid on.
var lies = set("side back end nose face edge rear tail top front handlebars bars")

// tipped reads "mower over on its side": how a thing is laid, with no verb.
func (r *reading) tipped(ci int) {
	c := &r.clauses[ci]
	if c.mood&notWork != 0 || ci < r.toolList[1] {
		return
	}
	for i := c.lo + 1; i+2 < c.hi && !slices.ContainsFunc(c.acts, func(ai int) bool { return r.acts[ai].lo < i+2 }); i++ {
		if n := r.toks[i+1].s; r.toks[i].s != "on" && r.toks[i].s != "onto" || n != "its" && n != "her" && n != "his" || !lies.has(r.toks[i+2].s) {
			continue
		}
		hi := i
		for hi > c.lo && (r.toks[hi-1].s == "over" || r.toks[hi-1].s == "up" || r.toks[hi-1].s == "down" || r.toks[hi-1].s == "back" || r.toks[hi-1].s == "right" || r.toks[hi-1].s == "flat") {
			hi--
		}
		lo := c.lo
		for lo < hi && (r.toks[lo].is(wOpener|wDrop|wDeterminer) || r.toks[lo].s == "and") {
			lo++
		}
		if hi-lo < 1 || hi-lo > 3 {
			return
		}
		for k := lo; k < hi; k++ {
			if r.toks[k].is(wSubject|wLinking|wPreposition|wPronoun) || r.toks[k].brk >= brkComma {
				return
			}
		}
		r.addAct(ci, act{action: r.lex.Action("place"), lo: lo, hi: i + 3, verb: -1, subject: true, rule: onItsSide})
		return
	}
}

// baths are what things are put in to be cleaned.
var baths = wordsOf("what is soaked in")

// bathed reads "everything into the paraffin": what is put in to be cleaned.
func (r *reading) bathed(ci int) {
	c := &r.clauses[ci]
	goes := len(c.acts) == 1 && r.acts[c.acts[0]].subject && r.acts[c.acts[0]].action.Name == "fit" && r.lemma1(r.toks[max(r.acts[c.acts[0]].verb, 0)].s) == "go"
	if len(c.acts) > 0 && !goes || c.mood&notWork != 0 || ci < r.toolList[1] {
		return
	}
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&(lexicon.Consumable|lexicon.Tool) == 0 || !baths.has(m.head) || m.prep != "in" && m.prep != "into" {
			continue
		}
		if goes {
			a := &r.acts[c.acts[0]] // "they go in the paraffin"
			if m.from-1 < a.hi || m.from <= a.hi+1 {
				a.action, a.hi, a.verb, a.rule, a.mood = r.lex.Action("clean"), m.hi, -1, inTheBath, a.mood&^framed
			}
			return
		}
		x := act{action: r.lex.Action("clean"), lo: c.lo, hi: m.hi, verb: -1, subject: true, rule: inTheBath}
		if m.from-1 <= c.lo+1 && r.toks[c.lo].is(wPreposition|wOpener) && (m.hi == c.hi || r.toks[m.hi-1].brk >= brkComma) {
			x.pronoun = "it" // "In the descaler, an hour."
		}
		for i := c.lo; i < m.from-1; i++ {
			w := r.toks[i].s
			if o := int(r.toks[i].men); o >= 0 {
				if r.mentions[o].kind&(lexicon.Part|lexicon.Fastener) == 0 {
					return
				}
				if len(x.objects) == 0 || x.objects[len(x.objects)-1] != o {
					x.objects = append(x.objects, o)
				}
			} else if w == "everything" || w == "lot" || w == "parts" || w == "bits" {
				x.pronoun = "all"
			} else if !r.toks[i].is(wOpener|wDrop|wDeterminer) && w != "and" && w != "goes" && w != "go" && w != "straight" && w != "all" && w != "of" {
				return
			}
		}
		if len(x.objects) > 0 || x.pronoun != "" {
			r.addAct(ci, x)
		}
		return
	}
}

// inTheBath is the rule of what is put in something to be cleaned.
const inTheBath = "in the bath"
