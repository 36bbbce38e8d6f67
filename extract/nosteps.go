package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
)

// Which acts the rules know to make no step, and for which they have words; which of them are told is
// weighed in told.go.

// isStep tells whether an act is worth an instruction.
func (r *reading) isStep(c *clause, a *act) bool { return !r.noStep(c, a) && r.wordsFor(c, a) }

// noStep tells whether an act is plainly none that a step would tell.
func (r *reading) noStep(c *clause, a *act) bool {
	if !a.happened() {
		return true
	}
	if a.action.Name == "discard" && a.subject && !r.intoBin(a) || a.action.Name == "leave off" {
		return true // "that's scrap" judges it, "the guard's still off" tells what is to do
	}
	if a.rule == inItsTurn && len(c.mentions) == 1 && (r.handledNext(a.cl) || r.mentions[a.objects[0]].definite && !r.beginsWith(c, "and", "then")) {
		return true // "The collar.": what is done to it comes next
	}
	if a.heads && a.rule == namedWithTool && r.headingOnly(c, a) {
		return true // "Wheel first.": how it comes off is told next
	}
	if a.action.Name == "remove" && a.unknown && len(a.objects) == 0 && a.verb >= 0 && !a.subject && r.lemma1(r.toks[a.verb].s) == "get" && r.says1(c, a.verb, "more") {
		return true // "you always get a bit more out of it"
	}
	if a.action.Name == "fit" && a.subject && a.verb >= 0 && len(a.objects) == 0 && r.lemma1(r.toks[a.verb].s) == "be" && !r.says1(c, a.verb, "back") && r.putJustBefore(a) {
		return true // "it's home": told of what was just put there
	}
	if a.verb >= 0 && !a.subject && (r.next(a.verb) == "anything" || r.next(a.verb) == "nothing") {
		return true // "before you take anything off it"
	}
	if a.verb >= 0 && !a.subject && (a.verb == c.lo || openers.has(r.toks[a.verb-1].s)) && firstPersonOf(r.next(a.verb)) {
		return true // "Strip I'm leaving off": a thing, no verb
	}
	if a.verb >= 0 && !a.subject && (r.someOf(a.verb+1) || r.somebodyAt(a.verb+1)) {
		return true // "I have replaced so many of these", "you put a lad on it"
	}
	if at, _ := r.holdAt(c); at >= 0 && at == a.verb {
		return true // "these four hold the cover on"
	}
	if a.action.Name == "open" && a.subject {
		return true // "it opens": what comes of what is done
	}
	if r.onlyTools(c, a) || r.afterWhile(c) && a.verb >= 0 && !a.subject {
		return true
	}
	if r.offStage(a) || a.verb >= 0 && !a.subject && describing.has(r.toks[a.verb].s) && r.nounAlone(a.verb+1) && (a.verb == c.lo || r.toks[a.verb-1].is(wOpener|wDrop|wDeterminer)) {
		return true // "sliding door rollers": which they are
	}
	if a.action.Name == "store" && a.verb >= 0 && r.toks[a.verb].s == "left" && len(a.things) == 0 {
		return true // "I left the feeler gauge on the bench"
	}
	if a.subject && a.verb >= 0 && (r.toks[a.verb].s == "fell" || r.toks[a.verb].s == "fallen" || r.toks[a.verb].s == "rolled") {
		return true // nobody took it off
	}
	if a.action.Name == "slacken" && a.subject && a.verb >= 0 && r.lemma1(r.toks[a.verb].s) == "be" && len(a.things) > 0 && !a.things[0].fastener && (r.toks[a.hi-1].s == "loose" || r.toks[a.hi-1].s == "slack") {
		return true // "and now the belt's loose": what came of what was done
	}
	if r.asFound(a) || r.toldFor(c, a) {
		return true
	}
	if n := r.kind(a.verb + 2); a.verb >= 0 && !a.subject && r.next(a.verb) == "you" && a.verb+2 < c.hi && n.is(wPreposition) && len(a.objects) == 0 {
		return true // "it'll knock you on your tail"
	}
	if a.action.Name == "measure" && a.verb > c.lo && r.toks[a.verb].s == "measured" && !r.toks[a.verb-1].is(wSubject|wOpener) && r.toks[a.verb-1].s != "'ve" && r.toks[a.verb-1].s != "and" && (r.nextKind(a.verb).is(wNumber|wCountOf) || a.verb+1 < c.hi && r.toks[a.verb+1].qty >= 0) {
		return true // "the old one measured eight"
	}
	if a.action.Name == "cut" || a.action.Name == "drill" {
		for i := a.hi; i < min(c.hi, a.hi+5); i++ {
			if w := r.toks[i].s; bodily.has(w) && (r.toks[i-1].s == "your" || r.toks[i-1].s == "my") {
				return true // "you're cutting a slot in your arm"
			}
		}
	}
	if a.action.Name == "remove" && a.verb >= 0 && !a.subject && r.word(a.hi-1) == "down" {
		for i := a.hi; i < min(c.hi, a.hi+4); i++ {
			switch r.toks[i].s {
			case "shop", "shops", "store", "merchants", "dealer", "dealers", "tip":
				return true // "I took the old one down the hose shop"
			}
		}
	}
	if a.action.Name == "mark" && a.verb > c.lo && r.toks[a.verb].s == "written" {
		return true // "I want to see that written down"
	}
	if r.knownWork(c, a) {
		return false
	}
	// a hand, or somebody: "get up under it"
	return r.ownBody(a) || a.verb >= 0 && !a.subject && a.pronoun != "" && len(a.objects) == 0 && r.lemma1(r.toks[a.verb].s) == "get" && particle.has(r.next(a.verb)) && !particle.has(r.toks[a.hi-1].s)
}

// knownWork tells whether an act is one that is work whatever it is done to.
func (r *reading) knownWork(c *clause, a *act) bool {
	return a.rule == machineUnplugged || a.rule == toolInUse || a.rule == "heat and place" || a.rule == "picture" || a.rule == machineUp || a.rule == inTheBath || a.rule == machineDown || a.rule == onItsSide || r.toMachine(c, a)
}

// wordsFor tells whether an act can be told as a step in so many words: its thing is named, or
// its pronoun stands for one.
func (r *reading) wordsFor(c *clause, a *act) bool {
	if r.knownWork(c, a) {
		return true
	}
	if len(a.objects) > 0 {
		return true
	}
	if a.unknown && a.subject && a.verb > a.lo {
		return r.workAround(c)
	}
	if a.unknown && !a.bare && a.verb >= 0 && !a.subject {
		if w, whose := r.firstUnknown(a, c); relatives.has(w) || bodily.has(w) && (whose == "your" || whose == "my" || whose == "other" || whose == "free" || strings.HasSuffix(w, "s") && w != "arms" && w != "ears") || a.action.Name == "inspect" && !signs.has(w) && !signs.has(lexicon.Singular(w)) {
			return false
		}
		if r.onlyWhere(a, c) {
			return false // "lift up out of the hole": what, nobody said
		}
		return r.workAround(c) // a thing that no list knows, in the person's own words
	}
	if a.pronoun != "" && ledgerActs[a.action.Name] != "" && !a.subject {
		return true
	}
	if a.verb >= 0 && a.pronoun != "" && len(a.objects) == 0 && r.lemma1(r.toks[a.verb].s) == "lean" && r.next(a.verb) == "on" {
		return false // "use a proper bit and lean on it"
	}
	if a.action.Name == "mark" && a.pronoun != "" && a.verb >= 0 && !a.subject && noting.has(r.toks[a.verb].s) {
		return true // "measure it, and write it down"
	}
	if a.pronoun == "all" && a.action.Name == "clean" && !a.subject {
		return true
	}
	if a.verb >= 0 && !a.subject && a.pronoun == "" && r.next(a.verb) == "and" && len(a.objects) == 0 && handling.has(r.toks[a.verb].s) {
		return false // "squeeze and": what, the picture shows
	}
	if a.action.Name == "lift" && a.verb >= 0 && !a.subject && len(a.objects) == 0 && a.hi == a.verb+1 && r.word(a.hi) != a.pronoun && !r.sameAsBefore(a) {
		return false // "Pull.": what, only the picture shows
	}
	if a.pronoun == "her" || a.pronoun == "him" {
		return a.verb >= 0 && !a.subject && a.hi > a.lo+1
	}
	if a.action.Name == "switch off" && a.pronoun != "" && a.verb >= 0 && !a.subject {
		return true // "isolate it at the wall"
	}
	if a.action.Name == "fill" && a.pronoun != "" && a.verb >= 0 && len(a.things) == 0 {
		for _, mi := range c.mentions {
			if m := &r.mentions[mi]; m.kind&lexicon.Consumable != 0 && m.from >= a.hi {
				return true // "fill it with premixed coolant"
			}
		}
	}
	if p := r.actBefore(a); p != nil && a.pronoun == "it" && len(a.things) == 0 && a.verb >= 0 && !a.subject && r.unlistedName(p) != "" {
		return true // "lift the whole assembly out and put it on the bench"
	}
	if len(a.things) > 0 && a.pronoun != "" && a.verb >= 0 && !a.subject && c.hi-a.verb >= 3 && (a.action.Name == "lock" || a.action.Name == "support" || a.action.Name == "place" || a.action.Name == "adjust" || a.action.Name == "drill" || a.action.Name == "fill" || a.action.Name == "hammer" || a.action.Name == "press" || a.action.Name == "heat" || a.action.Name == "cut" || !a.things[0].fastener && r.actedOn(a) && (a.action.Name == "test" || a.action.Name == "apply" || a.action.Name == "cover" && r.toks[a.verb].s != "stuff")) {
		return true
	}
	if len(a.things) == 1 && a.pronoun != "" && a.verb >= 0 && !a.subject && (a.action.Name == "heat" || a.action.Name == "cool" || a.action.Name == "measure" || a.action.Name == "drill") && r.namedInSentence(a) {
		return true // "the piston nut's got thread lock on it, so heat it"
	}
	if len(a.things) > 0 {
		return a.pronoun != "" && (ledgerActs[a.action.Name] != "" || a.action.Name == "clean" || a.action.Name == "lubricate") || !weakActs.has(a.action.Name) && a.pronoun != ""
	}
	if a.action.Name == "switch off" && a.verb >= 0 && r.toks[a.verb].s == "power" {
		return true
	}
	return (a.action.Name == "mark" || a.action.Name == "test") && a.hi-a.lo >= 2 && !a.subject || a.action.Name == "repeat" && a.hi-a.lo > 2
}

// asFound tells whether an act says how a lock was met: "a plate under each with the ears bent
// up", "the nut's staked". Only what went on before is locked again.
func (r *reading) asFound(a *act) bool {
	if a.action.Name != "lock" || a.verb < 0 || !a.subject && (r.toks[a.verb].s != "bent" && r.toks[a.verb].s != "folded" || r.toks[max(a.verb-1, 0)].is(wSubject|wOpener) || r.toks[max(a.verb-1, 0)].s == "'ve" || r.toks[max(a.verb-1, 0)].s == "and") {
		return false
	}
	if r.putJustBefore(a) {
		return false
	}
	for _, t := range a.things {
		for _, e := range t.events {
			if w := left[e.action]; e.lo < a.lo && (w == "on" || w == "tight" || w == "by hand") {
				return false
			}
		}
	}
	return true
}

// toldFor tells whether an act only says what else would happen, or what is left for another
// day: "you put a burr on the pulley and it eats the belt", "I'll measure the others later".
func (r *reading) toldFor(c *clause, a *act) bool {
	if a.verb < 0 || a.subject {
		return false
	}
	if l := c.hi - 1; l > a.verb && r.toks[l].s == "later" && l-1 >= a.hi-1 && c.lo < a.verb && (r.says1(c, c.lo, "'ll") || r.says1(c, c.lo, "will") || r.says1(c, c.lo, "can") || r.says1(c, c.lo, "gonna") || r.says1(c, c.lo, "going")) {
		return true
	}
	w, _ := r.firstUnknown(a, c)
	return a.action.Name == "fit" && hurts.has(w) && (r.toks[a.verb].s == "put" || r.toks[a.verb].s == "get")
}

// hurts are the words for what nobody puts on a thing on purpose.
var hurts = wordsOf("what nobody puts on a thing on purpose")

// handling are the verbs of taking hold of what is in hand.
var handling = set("push squeeze press pull twist turn wiggle lift")

// onlyTools tells whether nothing is done but that somebody takes hold of a tool, tries a size
// or sits down: "lean on the long bar", "try the fifteen on", "put the screwdriver on".
func (r *reading) onlyTools(c *clause, a *act) bool {
	if a.verb < 0 || a.subject {
		return false
	}
	l := r.lemma1(r.toks[a.verb].s)
	if l == "sit" && len(a.objects) == 0 && (a.pronoun == "" || a.unknown) {
		return true
	}
	if len(a.objects) == 0 {
		if !a.unknown || a.pronoun != "" || l != "try" && l != "put" && l != "get" && l != "stick" && l != "use" && l != "give" {
			return false
		}
		for i := a.verb + 1; i < min(c.hi, a.verb+5); i++ {
			t := &r.toks[i]
			switch {
			case t.qty >= 0 || t.is(wNumber) || t.s[0] >= '0' && t.s[0] <= '9':
				n := r.next(i)
				return i+1 >= c.hi || particle.has(n) || prepositions.has(n) || t.brk >= brkPause || r.toks[i+1].qty == t.qty && t.qty >= 0 // a size, and no more
			case !articles.has(t.s) && !pronounsObj.has(t.s):
				return false
			}
		}
		return false
	}
	for _, mi := range a.objects {
		if m := &r.mentions[mi]; m.kind&lexicon.Tool == 0 && !(m.head == "bar" && len(m.mods) > 0 && m.mods[len(m.mods)-1] == "long") || m.kind&lexicon.Consumable != 0 {
			return false
		}
	}
	switch l {
	case "lean", "reef", "swing", "heave", "stand", "jump", "bounce":
		return true
	}
	m := &r.mentions[a.objects[0]]
	return a.action.Name == "fit" && turns.has(m.head) && r.toks[a.hi-1].s == "on" && !strings.Contains(m.name, "puller") && (a.hi >= c.hi || r.toks[max(a.hi, m.hi)-1].brk >= brkComma)
}

// turns are the tools that are put on only to turn something or to strike it.
var turns = wordsOf("what turns fasteners")

// afterWhile tells whether a clause says what is to be done after so many miles, days or
// weeks of use.
func (r *reading) afterWhile(c *clause) bool {
	for i := c.lo + 1; i < c.hi; i++ {
		if w := r.toks[i].s; w != "in" && w != "after" {
			continue
		}
		for k := i + 1; k < min(c.hi, i+7); k++ {
			if r.toks[k].men >= 0 {
				break
			}
			if used.has(r.toks[k].s) || r.toks[k].s == "hundred" && k+1 == c.hi {
				return true
			}
		}
	}
	return false
}

// used are what use of a machine is measured by.
var used = wordsOf("use so far")

// headingOnly tells whether a clause that only says what comes next is told in full later on:
// its one part comes off in so many words within two minutes.
func (r *reading) headingOnly(c *clause, a *act) bool {
	if a.action.Name != "remove" || len(a.things) != 1 || a.things[0].fastener {
		return false
	}
	for i := c.lo; i < c.hi; i++ {
		if r.toks[i].qty >= 0 || r.toks[i].men >= 0 && r.mentions[r.toks[i].men].kind&lexicon.Tool != 0 {
			return false // with what it comes off
		}
	}
	for _, e := range a.things[0].events {
		if e.lo > a.lo && r.since(a.lo, e.lo) < 120 && left[e.action] == "off" && e.act >= 0 {
			if b := &r.acts[e.act]; !b.heads && slices.Contains(b.things, a.things[0]) {
				return r.isStep(&r.clauses[b.cl], b)
			}
		}
	}
	return false
}

// offStage tells whether an act is done to what is no part of the work: the camera and its
// light, one's reading glasses, the door of the garage.
func (r *reading) offStage(a *act) bool {
	if a.verb < 0 || a.subject {
		return false
	}
	doors := false
	if l := r.lemma1(r.toks[a.verb].s); l == "shut" || l == "close" {
		for i := a.verb + 1; i < min(a.hi+3, len(r.toks)) && r.toks[i-1].brk < brkComma; i++ {
			doors = doors || r.toks[i].s == "door" || r.toks[i].s == "doors" || r.toks[i].s == "gate" || r.toks[i].s == "window" || r.toks[i].s == "curtains"
		}
	}
	if doors {
		return !slices.ContainsFunc(a.things, func(t *thing) bool { return len(t.events) > 1 })
	}
	if len(a.objects) == 0 {
		if a.unknown {
			w, _ := r.firstUnknown(a, &r.clauses[a.cl])
			return ownThings.has(w)
		}
		return false
	}
	for _, mi := range a.objects {
		m := &r.mentions[mi]
		if t := m.entry; t != nil && len(t.events) > 1 || !ownThings.has(m.head) && !(m.head == "glasses" && r.word(m.hi-2) == "reading") || slices.Contains(m.mods, "safety") {
			return false
		}
	}
	return true
}

// describing are the words of work that tell of a thing what it does.
var describing = set("sliding running turning swinging locking rocking folding floating rolling moving spinning mating mounting retaining clamping sealing driving holding")

// nounAlone tells whether a name with no article begins at token i.
func (r *reading) nounAlone(i int) bool {
	if i >= len(r.toks) || r.toks[i-1].brk >= brkComma {
		return false
	}
	m := int(r.toks[i].men)
	return m >= 0 && r.mentions[m].from == i && r.mentions[m].lo == i && r.mentions[m].kind&(lexicon.Part|lexicon.Fastener) != 0
}

// ownThings are what whoever works or films has by them.
var ownThings = wordsOf("what whoever works has by them")

// bodily are the words for what everybody has with them: a hand put somewhere is no step.
var bodily = wordsOf("hands and what is held in them")

// signs are what one looks for.
var signs = wordsOf("what one looks for")

// firstUnknown gives the first word of what an act is done to that no list knows,
// and the word before it.
func (r *reading) firstUnknown(a *act, c *clause) (word, before string) {
	for i := a.verb + 1; i < c.hi; i++ {
		w := r.toks[i].s
		if r.toks[i].men < 0 && !stopWords.has(w) && !dropWords.has(w) && !dropAdj.has(w) && !determiner.has(w) && !prepositions.has(w) && !particle.has(w) && r.toks[i].qty < 0 {
			return w, r.toks[i-1].s
		}
	}
	return "", ""
}

// onlyWhere tells whether the words after a verb say where something goes and not what.
func (r *reading) onlyWhere(a *act, c *clause) bool {
	if ledgerActs[a.action.Name] == "" && a.action.Name != "lower" && a.action.Name != "place" && a.action.Name != "support" {
		return false
	}
	for i := a.verb + 1; i+2 < c.hi; i++ {
		switch w := r.toks[i].s; {
		case (w == "of" || w == "from" || w == "under" || w == "into" || w == "onto" || w == "between") && determiner.has(r.toks[i+1].s):
			return true
		case !particle.has(w) && !prepositions.has(w):
			return false
		}
	}
	return false
}

// putJustBefore tells whether the act before one put something where it belongs.
func (r *reading) putJustBefore(a *act) bool {
	for k := a.cl; k >= 0 && k >= a.cl-6 && r.since(r.clauses[k].lo, a.lo) < 15; k-- {
		for i := len(r.clauses[k].acts) - 1; i >= 0; i-- {
			o := &r.acts[r.clauses[k].acts[i]]
			if o == a || o.lo >= a.lo || !o.happened() {
				continue
			}
			switch o.action.Name {
			case "fit", "press", "hammer", "start by hand", "tighten":
				return true
			}
			return false
		}
	}
	return false
}

// namedInSentence tells whether the clause before an act in its sentence names its one thing
// and no other.
func (r *reading) namedInSentence(a *act) bool {
	if a.cl == 0 || r.clauses[a.cl-1].sentence != r.clauses[a.cl].sentence || r.clauses[a.cl-1].mood&notWork != 0 {
		return false
	}
	named := false
	for _, mi := range r.clauses[a.cl-1].mentions {
		if m := &r.mentions[mi]; m.kind&(lexicon.Part|lexicon.Fastener) != 0 {
			if m.entry != a.things[0] || m.prep != "" {
				return false
			}
			named = true
		}
	}
	return named
}

// actedOn tells whether the act right before one was done to its thing.
func (r *reading) actedOn(a *act) bool {
	for k := a.cl; k >= 0 && k >= a.cl-3 && r.since(r.clauses[k].lo, a.lo) < 12; k-- {
		for i := len(r.clauses[k].acts) - 1; i >= 0; i-- {
			if o := &r.acts[r.clauses[k].acts[i]]; o != a && o.lo < a.lo && o.happened() && len(o.things) > 0 {
				return o.things[len(o.things)-1] == a.things[0]
			}
		}
	}
	return false
}

// sameAsBefore tells whether what one does to no more than "it" is done to what the act
// right before it in its sentence was done to, or what the clause before is of.
func (r *reading) sameAsBefore(a *act) bool {
	if len(a.things) == 0 {
		return false
	}
	if p := r.actBefore(a); p != nil && r.clauses[p.cl].sentence == r.clauses[a.cl].sentence {
		return len(p.things) > 0 && p.things[len(p.things)-1] == a.things[0]
	}
	if a.cl == 0 || r.toks[r.clauses[a.cl].lo].s != "and" {
		return false
	}
	p := &r.clauses[a.cl-1]
	return len(p.mentions) > 0 && r.mentions[p.mentions[0]].prep == "" && r.mentions[p.mentions[0]].entry == a.things[0]
}

// intoBin tells whether the words of an act say where what is thrown away goes.
func (r *reading) intoBin(a *act) bool {
	for i := a.lo; i < a.hi; i++ {
		if bins.has(r.toks[i].s) {
			return true
		}
	}
	return a.verb < 0
}

// workAround tells whether the talk around a clause is of work.
func (r *reading) workAround(c *clause) bool {
	ci := int(r.toks[c.lo].cl)
	for k := max(0, ci-4); k <= min(ci+4, len(r.clauses)-1); k++ {
		if abs(int(r.since(c.lo, r.clauses[k].lo))) > 15 {
			continue
		}
		for _, mi := range r.clauses[k].mentions {
			if r.mentions[mi].kind&(lexicon.Fastener|lexicon.Part|lexicon.Tool) != 0 {
				return true
			}
		}
	}
	return false
}
