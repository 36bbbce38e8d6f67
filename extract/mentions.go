package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

var determiner = set("the a an this that these those my your his her its their both all each every some any no another other them one two three four five six seven eight nine ten eleven twelve couple pair new old")
var definiteWord = set("the this that these those my your his its their both all them other")
var prepositions = set("in into on onto off from through under over behind with by to at of for around round between against inside outside past near across along above below beside without using out up down")

// stop words end a noun phrase on its left.
var stopWords = set(`a an the this that these those and or but so then now i you we he she it they them me him us my your our his her its their is are was were be been being am 's 'm 're 've 'll 'd
 have has had do does did don't doesn't didn't will would can could should may might must not no yes if when while until because as than of in into on onto off from through under over behind with by to at for around round
 between against out up down just only really very quite too also again there here what which who whose where why how all both each every some any other another more most less much many few little bit lot got get gets getting go goes going gone come comes
 came coming put puts take takes took want wants need needs gonna like well right okay ok still even ever never always maybe probably actually basically gets let's lets see look make sure first next last same such own way thing things one ones
 said say says call called know think guess mean about before after once since though about still let us ain't isn't aren't wasn't won't can't cannot couldn't uh um er erm yeah yes ah oh where'd whatever half turn
 stick grab hold keep give gave given use using used leave left show tell told turned goes went done being every nice good easy tight loose tight-ish says spec two-ish dirty clean clear
 says see watch try trying i'd you'd they'd new's wee ye yous ya 'em em bunch couple pair anyway thanks basically sort kind lots ago day days today tomorrow
 comment comments description video videos channel link links website page internet film`)

// adjectives may stand in a name without belonging to it.
// what state it is in, or how the speaker likes it, never tells which one it is.
var dropAdj = set("replacement reconditioned recon rebuilt refurbished remanufactured aftermarket uprated upgraded new old existing original same little wee small tiny big large great fresh used second-hand brand nice good cheap clean rusty dirty damn bloody stupid next final whole actual very proper genuine fancy spare special horrible poor longer shorter bigger smaller larger wider thicker thinner single lovely beautiful ugly awful particular certain worn rusty seized greasy oily sloppy missing remaining heavy silly daft flipping flaming blasted fiddly awkward manky scabby crusty knackered shiny wonky naked spent ancient different opposite famous so-called wrong correct proper real decent matching")

var placeWords = set("upper lower top bottom front rear back inner outer inside outside middle centre center long short left right nearside offside forward rearward outboard inboard far near starboard")
var sideOf = map[string]string{"left": "left", "right": "right", "nearside": "near side", "offside": "off side", "port": "port", "starboard": "starboard"}

var countOf = map[string]int{"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
	"both": 2, "pair": 2, "1": 1, "2": 2, "3": 3, "4": 4, "5": 5, "6": 6, "7": 7, "8": 8, "9": 9, "10": 10, "11": 11, "12": 12, "fourteen": 14, "sixteen": 16}

// verbLike names that are things only after a word that makes them so.
var verbLike = set("lever levers ring clip screw bolt pin plug cap lock key clamp seal grease oil paint tape press hammer punch drill file saw chain shim shaft strap wire block support mount bridge cover guard rag drain level square rule scale lift stand tap die bit pick hook magnet light mark gear head line lead valve race light panel screen switch spring spray glue patch wax cup case nose trim catch track ram fit fitting fan handle guide bush bearing grip brush brushes patches water sleeve tongs jet header plate bar bars ramp float rack scoop wipe wipes mask string jaws trailer seat stub display fence motor pump boot coil choke starter chuck recoil cage arm leg pad float shoe table inlet outlet boom tub bucket jug phone camera")

// findMentions finds the phrases that name things, longest name first.
func (r *reading) findMentions() {
	for ci := range r.clauses {
		c := &r.clauses[ci]
		verb := -1 // what looks like a name and is a verb
		for i := c.lo; i < c.hi; {
			var m mention
			end := 0
			if r.mayBegin(i) && i != verb {
				m, end = r.mentionAt(ci, i)
			}
			if end == 0 {
				m, end = r.onlyPlaced(ci, i)
			}
			if end == 0 && r.toks[i].is(wCountOf) {
				m, end = r.countedWhere(ci, i)
			}
			if end == 0 {
				i++
				continue
			}
			// a head further right in the same noun phrase takes it over:
			// "brake lever holder bolt" is one thing
			for m.head != unsaid && end < c.hi && r.toks[end-1].brk <= brkPause && r.mayBegin(end) {
				m2, end2 := r.mentionAt(ci, end)
				if end2 == 0 || r.toks[end-1].s == "'s" || m2.kind&(lexicon.Fastener|lexicon.Part) == 0 && m2.kind&m.kind == 0 {
					break
				}
				if m.plural && m.kind&lexicon.Tool == 0 || r.toks[end].is(wDropAdj|wPlace) || r.toks[end-1].s == r.toks[end].s {
					break // "pin, pin, clip and pin", with no comma heard
				}
				if m.kind == lexicon.Tool && m2.kind == lexicon.Tool && len(m.mods)+len(m2.mods) > 0 {
					break // "a soft hammer trolley jack and a tray": two tools in a row
				}
				if m.kind == lexicon.Consumable && m2.kind&lexicon.Consumable == 0 && !holdsFluid.has(m2.head) {
					break // "… fresh grease axle back through", "new circlip belt guard on": a list
				}
				if w := r.toks[end].s; strings.HasSuffix(w, "s") && len(r.lex.Lemmas(w)) > 0 && end2 == end+1 && end2 < c.hi && r.toks[end].brk == brkNone {
					switch next := r.toks[end2].s; next {
					case "in", "into", "on", "onto", "to", "through", "over", "down", "off", "out", "back", "straight":
						if m.kind&(lexicon.Part|lexicon.Fastener) != 0 && (next == "into" || next == "onto" || next == "to" || next == "straight" || r.movesSo(&m, w)) && !r.takenBefore(c, m.lo) {
							m2.kind, verb = 0, end // "the cap screws into the end": what it does
						}
					}
				}
				if m.kind == lexicon.Tool && r.toks[end].s == "stops" && prepositions.has(r.next(end)) {
					break // "my torque driver stops at six"
				}
				if m2.kind == 0 {
					break
				}
				m2.lo = m.lo
				m2.mods = append(append([]string{}, m.mods...), append(strings.Fields(m.head), m2.mods...)...)
				if m2.kind&(lexicon.Fastener|lexicon.Part) != 0 {
					m2.kind &^= lexicon.Tool
				}
				if m.misheard && m.kind == lexicon.Consumable && m2.kind == lexicon.Consumable {
					m2.mods = m2.mods[:0] // "a drop of the blue thread lock": twice the same
				} else {
					m2.name = m.name + " " + m2.name
				}
				m2.misheard = m2.misheard || m.misheard
				m, end = m2, end2
			}
			m.hi = end
			r.complete(ci, &m)
			k := len(r.mentions)
			for j := m.lo; j < m.hi; j++ {
				r.toks[j].men = int32(k)
			}
			r.mentions = append(roomFor(r.mentions, m.lo, len(r.toks)), m)
			c.own().mentions = append(c.mentions, k)
			i = end
		}
	}
}

// drinks are what a workshop stops for.
var drinks = wordsOf("hot drinks")

// holdsFluid are the parts that are named after what is in them.
var holdsFluid = wordsOf("what is named after its fluid")

// whereWords tell where; no tool is called by them.
var whereWords = set("back front top bottom rear inside outside inner outer upper lower middle left right far near")

// mayBegin tells cheaply whether a name, known or misheard, may begin at token i.
func (r *reading) mayBegin(i int) bool {
	t := &r.toks[i]
	return t.is(wName) || len(t.s) >= 4 && !t.is(wStop|wDropAdj|wPlace|wNumber)
}

// mentionAt reads the name that begins exactly at token i; end is 0 where none does.
func (r *reading) mentionAt(ci, i int) (m mention, end int) {
	c := &r.clauses[ci]
	if q := r.toks[i].qty; q >= 0 && r.qtys[q].Kind != normalize.Driver {
		return m, 0
	}
	if !r.toks[i].is(wName) {
		return r.repaired(ci, i)
	}
	terms, n := r.lex.Things(r.from(i, c.hi))
	if n == 0 {
		return r.repaired(ci, i)
	}
	w := r.toks[i].s
	if n > 2 && r.nameAt(i+n-1) > 1 {
		return m, 0 // "a drop of blue | thread locker"
	}
	if n > 1 && r.toks[i+n-1].s == "stays" && (i+n >= c.hi || r.toks[i+n-1].brk >= brkComma || r.toks[i+n].s == "in" || r.toks[i+n].s == "on" || r.toks[i+n].s == "put" || r.toks[i+n].s == "as") && !(i > 1 && r.toks[i-1].s == "the" && r.toks[i-2].brk == brkNone && prepositions.has(r.toks[i-2].s)) {
		terms, n = r.lex.Things(r.from(i, i+n-1)) // "the chain stays, there's nothing wrong with it"
		if n == 0 {
			return m, 0
		}
	}
	if w := r.toks[i+n-1].s; moves.has(w) && w != "just" && r.slidesAway(c, i+n-1) {
		if terms, n = r.lex.Things(r.from(i, i+n-1)); n == 0 {
			return m, 0
		}
	}
	if n > 1 && r.toks[i+n-1].s == "set" && (r.word(i+n) == "at" || r.word(i+n) == "to") {
		terms, n = r.lex.Things(r.from(i, i+n-1)) // "the driver set at two"
		if n == 0 {
			return m, 0
		}
	}
	if n == 1 && w == "gear" && i > c.lo && (r.toks[i-1].s == "in" || r.toks[i-1].s == "into") && r.toks[i-1].brk == brkNone {
		return m, 0 // "put it in gear": how it stands
	}
	if n == 1 && (verbLike.has(w) || r.plainVerb(w) || r.saysHow(c, i) || r.itDoes(c, i)) && r.usedAsVerb(c, i) && !(i > c.lo && !strings.HasSuffix(w, "s") && (r.toks[i-1].s == "what" || r.toks[i-1].s == "which")) {
		return m, 0
	}
	if n == 1 && i > 0 && i+1 < c.hi && strings.HasSuffix(w, "s") && r.toks[i].brk == brkNone && r.toks[i-1].brk <= brkPause && (r.toks[i-1].s == "it" || r.toks[i-1].s == "she") && (r.toks[i+1].is(wOff|wOn|wReturning) || r.toks[i+1].s == "back") {
		return m, 0 // "and it hinges off"
	}
	if n == 1 && i > c.lo && i+1 < c.hi && r.movesItself(i) && r.toks[i].brk == brkNone && (r.toks[i+1].s == "it" || r.toks[i+1].s == "them") && (r.toks[i-1].is(wSubject) || r.toks[i-1].men >= 0) {
		return m, 0 // "and that locks it"
	}
	if n == 1 && i > c.lo && r.toks[i-1].s == "it" && r.toks[i-1].brk == brkNone && r.movesItself(i) && lexicon.Singular(w) != w {
		return m, 0 // "till it locks"
	}
	if w == "pumps" && n == 1 && i > c.lo && (countOf[r.toks[i-1].s] > 1 || r.toks[i-1].s == "few" || r.toks[i-1].s == "couple") && r.strokes(c, i) {
		return m, 0 // "two pumps of grease"
	}
	if n == 1 && i > c.lo+1 && strings.HasSuffix(w, "s") && r.toks[i-1].s == "that" && r.toks[i-1].brk == brkNone && r.toks[i-2].brk == brkNone && r.toks[i-2].men >= 0 && lexicon.Singular(w) != w && !r.mentions[r.toks[i-2].men].plural {
		return m, 0 // "a long sleeve that floats"
	}
	if w == "stops" && n == 1 && i > c.lo && r.toks[i-1].brk == brkNone && r.toks[i-1].men >= 0 && prepositions.has(r.next(i)) {
		return m, 0 // "my torque driver stops at six"
	}
	if w == "fitting" && n == 1 && i > c.lo && (r.toks[i-1].s == "is" || r.toks[i-1].s == "'s" || r.toks[i-1].s == "not") {
		return m, 0 // "the ten is fitting"
	}
	if w == "felt" && n == 1 && i > c.lo && (r.toks[i-1].is(wSubject) || r.toks[i-1].s == "it" || r.toks[i-1].s == "always" || r.toks[i-1].s == "never") {
		return m, 0 // "it felt sloppy"
	}
	if w == "hex" && n == 1 && (r.next(i) == "head" || r.next(i) == "heads") {
		return m, 0 // what a spanner turns
	}
	if n == 1 && bodily.has(w) && i > 0 && (r.toks[i-1].s == "my" || r.toks[i-1].s == "your") {
		return m, 0
	}
	if (w == "cup" || w == "mug" || w == "pot") && n == 1 && r.next(i) == "of" && drinks.has(r.word(i+2)) {
		return m, 0
	}
	if w == "square" && n == 1 && (i == c.lo || !r.toks[i-1].is(wDeterminer)) && r.next(i) != "edge" {
		return m, 0 // "press it in square"
	}
	if w == "lock" && n == 1 && r.next(i) == "to" && r.word(i+2) == "lock" {
		return m, 0 // how far the steering goes
	}
	if next := r.next(i); w == "wire" && n == 1 && (next == "brushed" || next == "brushing") {
		return m, 0 // what is done with a wire brush
	}
	if next := r.word(i + n); r.toks[i+n-1].brk == brkNone && (next == "hole" || next == "holes") && terms[0].Kind&lexicon.Fastener != 0 {
		return m, 0 // "bolt holes": where they go
	}
	if w == "brackets" && n == 1 && i > c.lo && r.toks[i-1].s == "in" {
		return m, 0 // punctuation
	}
	if n == 2 && r.verbOfTwo(c, i) || n == 1 && i > c.lo && r.toks[i-1].is(wVerb) && r.verbOfTwo(c, i-1) {
		return m, 0
	}
	if n == 1 && (w == "foot" || w == "feet") && (i == c.lo || !definiteWord.has(r.toks[i-1].s) || r.toks[i-1].s == "all" || r.next(i) == "of") {
		return m, 0 // "about a foot overnight", "four foot of pipe"
	}
	if n == 1 && (w == "foot" || w == "feet") && (r.toks[i-1].s == "your" || r.toks[i-1].s == "my") {
		return m, 0 // "use your foot"
	}
	if n == 1 && ofBody.has(w) && r.ofPerson(c, i) {
		return m, 0 // "it's on my other arm"
	}
	if n == 1 && (w == "bit" || w == "bits") && (i == c.lo || r.toks[i-1].qty < 0) {
		return m, 0 // "a bit of"
	}
	var t *lexicon.Term
	var soft lexicon.Kind
	for _, x := range terms {
		if x.Soft {
			if n == 1 && r.softHere(c, i) {
				if r.namedSoft == nil {
					r.namedSoft = map[string]bool{}
				}
				r.namedSoft[lexicon.Singular(w)] = true
				soft = x.Kind
				if t == nil {
					t = x
				}
			}
			continue
		}
		if x.Weak && w == "wash" {
			continue // "give it a wash": only washes are washers
		}
		if x.Weak && (w == "knot" || w == "knots") && r.tied(i) {
			continue // "tie the knot, the rope must hold": no nut
		}
		if x.Weak && i > c.lo && ofWhom.has(r.toks[i-1].s) {
			continue // "like my uncle at Christmas"
		}
		if x.Weak && !r.toldWeak[w] {
			if !r.sureBeside(c, i, n) {
				continue
			}
			if w != "not" {
				if r.toldWeak == nil {
					r.toldWeak = map[string]bool{}
				}
				r.toldWeak[w] = true // and from now on: the recogniser hears it so each time
			}
		}
		if t == nil || t.Soft {
			t = x
		}
	}
	if t == nil {
		return m, 0
	}
	if n > 1 && t.Kind&lexicon.Part != 0 {
		r.tellSoft(r.toks[i+n-1].s)
	}
	if (w == "key" || w == "keys") && n == 1 && i > 0 && (r.toks[i-1].qty >= 0 || w == "key" && r.numbered(i) || r.toks[i-1].s == "same" && !r.toldSoft["key"] || r.hexKeys && !r.toldSoft["key"] && (r.toks[i-1].s == "the" && i-2 >= 0 && (r.toks[i-2].s == "with" || r.toks[i-2].s == "use") || r.toks[i-1].s == "long" || r.toks[i-1].s == "little")) {
		r.hexKeys = true
		// "the four millimetre key": the tool
		m = mention{lo: i, hi: i + 1, cl: ci, kind: lexicon.Tool, of: -1, head: "key", mods: []string{"hex"}, name: "hex key", plural: w == "keys"}
		return m, i + 1
	}
	m = mention{lo: i, hi: i + n, cl: ci, kind: t.Kind | soft, of: -1, misheard: t.Misheard}
	last := r.toks[i+n-1].s
	var f []string
	if t.Misheard {
		f = lexicon.Words(t.Name)
		m.plural = strings.HasSuffix(last, "s")
	} else {
		for k := i; k < i+n; k++ {
			f = append(f, r.toks[k].s)
		}
		m.plural = lexicon.Singular(last) != last
	}
	m.name = strings.Join(f, " ")
	if t.Misheard && m.plural {
		m.name = lexicon.Plural(m.name)
	}
	f[len(f)-1] = lexicon.Singular(f[len(f)-1])
	m.head = f[len(f)-1]
	m.mods = f[:len(f)-1]
	if m.head == "ring" && len(f) > 1 || m.head == "joint" || m.head == "arm" || m.head == "tube" || m.head == "rod" || m.head == "end" {
		m.head = strings.Join(f[max(0, len(f)-2):], " ")
		m.mods = f[:max(0, len(f)-2)]
	}
	return m, i + n
}

// numbered tells whether a number of more than one stands right before a name in the singular:
// "the six key" is no count.
func (r *reading) numbered(i int) bool {
	w := r.toks[i-1].s
	return r.toks[i-1].brk == brkNone && (countOf[w] > 1 && w != "both" && w != "pair" || numberWord.has(w) && w != "quarter" || len(w) < 3 && w > "1" && w[0] <= '9')
}

// tellsLeft tells whether the talk speaks of the left of anything.
func (r *reading) tellsLeft() bool {
	if r.leftTold == 0 {
		r.leftTold = 1
		for i := range r.toks {
			if w := r.toks[i].s; w == "left" && r.next(i) != "hand" && i > 0 && (r.toks[i-1].is(wDeterminer) || r.next(i) == "side" || r.toks[i-1].s == "on" || r.toks[i-1].brk >= brkSentence && isNoun(r, i+1) && lexicon.Singular(r.next(i)) == r.next(i)) {
				r.leftTold = 2
				break
			}
		}
	}
	return r.leftTold == 2
}

// saysHow tells whether a name in the plural may be what the thing named before it
// does: "the thermostat plugs back on", and not "cover bolts in by hand".
func (r *reading) saysHow(c *clause, i int) bool {
	if i == c.lo || !r.movesItself(i) {
		return false
	}
	k := i - 1
	for k > c.lo && (r.toks[k].s == "just" || r.toks[k].s == "simply" || r.toks[k].s == "only" || r.toks[k].s == "then" || r.toks[k].s == "now") && r.toks[k].brk == brkNone {
		k-- // "the connector just plugs back in"
	}
	if r.toks[k].brk != brkNone || r.toks[k].men < 0 {
		return false
	}
	return r.movesSo(&r.mentions[r.toks[k].men], r.toks[i].s)
}

// movesSo tells whether a word in the plural may be what a single thing named right before
// it does: a cap screws on, a cover has screws.
func (r *reading) movesSo(m *mention, w string) bool {
	switch w {
	case "screws":
		return !m.plural && (screwedOn.has(m.head) || tightens.has(m.head) || m.head == "housing" || m.head == "bowl")
	case "plugs", "clips", "hooks", "slots", "threads", "snaps", "locks", "seats", "presses", "levers", "sticks":
		return !m.plural
	}
	return false
}

// takenBefore tells whether a verb right before a name at token i takes it: "take the cover | bolts out".
func (r *reading) takenBefore(c *clause, i int) bool {
	for i--; i >= c.lo && r.toks[i].brk < brkComma; i-- {
		if t := &r.toks[i]; t.men >= 0 {
			return false
		} else if w := t.s; !t.is(wDeterminer | wDropAdj | wPlace | wNumber | wCountOf) {
			return r.isVerbForm(w) || w == "have" || w == "had" || w == "got"
		}
	}
	return false
}

// softHere tells whether the name of much else at token i is a part here: it was
// one before, the words before it say which, or something is done with it.
func (r *reading) softHere(c *clause, i int) bool {
	w := lexicon.Singular(r.toks[i].s)
	prev, next := "", ""
	if i > c.lo && r.toks[i-1].brk <= brkPause {
		prev = r.toks[i-1].s
	}
	if r.toldSoft[w] && (prev == "" || dropAdj.has(prev) || placeWords.has(prev) || countOf[prev] > 1 || determiner.has(prev) && prev != "a" && prev != "an" && !(w == "case" && (prev == "that" || prev == "any"))) {
		return true
	}
	if i+1 < c.hi && r.toks[i].brk <= brkPause {
		next = r.toks[i+1].s
	}
	if prev == "" && r.namedSoft[w] && (i == c.lo || r.toks[i-1].brk >= brkComma) && !placeWords.has(w) && !interjected.has(w) && (next == "" || placing.has(next) && next != "to" || returning.has(next)) {
		return true // "Lid off. … Lid. Head down."
	}
	moved := offWords.has(next) || next == "back" || (next == "'s" || next == "is") && i+2 < c.hi && (damage.has(r.toks[i+2].s) || r.toks[i+2].is(wOff) || r.toks[i+2].s == "had") || onWords.has(next) && (i+2 >= c.hi || r.toks[i+1].brk >= brkPause)
	if moves.has(next) && r.toks[i].brk == brkNone {
		for k := i + 2; k < min(c.hi, i+5); k++ {
			moved = moved || r.toks[k].is(wOff) || r.toks[k].s == "back" || r.toks[k].s == "away" || r.toks[k].s == "down" && k == i+2 // "the post just comes out"
		}
	}
	moved = moved || next == "away" && (i+2 >= c.hi || r.toks[i+1].brk >= brkComma)
	if placeWords.has(w) {
		// "the front comes off", "take the top off": the panel that is there
		switch {
		case r.toks[i].s != w || i > c.lo && prev == "the" && i-2 >= c.lo && r.toks[i-2].is(wPreposition):
			return false
		case !moves.has(next) && !(prev == "the" && offWords.has(next) && (i+2 >= c.hi || r.toks[i+1].brk >= brkComma || r.word(i+2) == "and" || r.word(i+2) == "of")):
			return false
		}
		return (prev == "the" || prev == "" && w != "back") && moved && next != "just"
	}
	switch {
	case i > c.lo && r.toks[i-1].qty >= 0 || numberWord.has(prev):
		return false
	case prev == "" && (i == c.lo || r.toks[i-1].brk >= brkSentence) && r.toks[i].brk == brkComma && i+2 < c.hi && countOf[r.toks[i+1].s] > 1 && isNoun(r, i+2):
		return true // "Wheel, four nuts."
	case prev == "" && moved && (i == c.lo || r.toks[i-1].brk >= brkComma):
		return true
	case prev == "":
		return (i == c.lo || r.toks[i-1].brk >= brkComma) && (offWords.has(next) || next == "back" || next == "next" || next == "down" && (r.word(i+2) == "over" || r.word(i+2) == "on" || r.word(i+2) == "onto") ||
			next == "on" && (i+2 == c.hi || r.word(i+2) == "top" || r.word(i+2) == "dry") || next == "'s" && (r.word(i+2) == "on" || r.word(i+2) == "back" || r.word(i+2) == "off" || r.word(i+2) == "down"))
	case prev == "new" || prev == "old" || prev == "spare":
		return true
	case prev == "with" && w != r.toks[i].s:
		return true // "they come with rubbers and washers"
	case prev == "the" && w == "head" && r.toks[i].brk >= brkComma && i+2 < c.hi && countOf[r.toks[i+1].s] > 1 && isNoun(r, i+2):
		return true // "then the head, four bolts"
	case determiner.has(prev) && w == "head" && (r.holding(i-2) || moved && (moves.has(next) && next != "comes" && next != "pops" || r.lemma1(r.word(i-2)) == "lift" || r.lemma1(r.word(i-2)) == "put")):
		r.tellSoft(w)
		return true // "eight bolts hold the head on", "lift the head off"; any bolt's comes off
	case prev == "the" && r.word(i-2) == "with" && i-3 >= c.lo && (onWords.has(r.toks[i-3].s) || offWords.has(r.toks[i-3].s)) && (i+1 >= c.hi || r.toks[i].brk >= brkComma || next == "and"):
		r.tellSoft(w)
		return true // "and on with the head"
	case definiteWord.has(prev) && w != "head" && r.hasFasteners(c, i+1):
		r.tellSoft(w)
		return true // "the lid has four clips", "this door's on three hinges"
	case prev == "the" && r.toks[i].s == "head" && (r.word(i-2) == "through" || r.word(i-2) == "into"):
		r.tellSoft(w)
		return true // "four bolts through the head"
	case prev == "the" && w != "line" && w != "sheet" && r.toks[i].brk >= brkSentence && r.onlyOpens(i-1):
		return true // "Then the lid."
	case determiner.has(prev) && (w == "head" || w == "line" || w == "sheet"), containers.has(prev):
		return false // the bolt's, one that is drawn, one that is read; a jar lid
	case determiner.has(prev):
		if prev == "the" && (moved || (w == "negative" || w == "positive") && (next == "from" || next == "first" || next == "lead" || next == "")) {
			return true
		}
		if r.holding(i - 2) {
			return true // "four screws hold the lid"
		}
		if i-2 < c.lo || r.toks[i-2].brk > brkPause {
			return false
		}
		for _, v := range r.lex.Lemmas(r.toks[i-2].s) {
			for _, p := range r.lex.Patterns(v) {
				if ledgerActs[p.Action.Name] != "" && (len(p.Words) == 1 || p.Words[1] == next && p.Gap == 1) {
					return true
				}
			}
		}
		return false
	case stopWords.has(prev) || dropAdj.has(prev) || placeWords.has(prev) || prepositions.has(prev) || numberWord.has(prev) || countOf[prev] > 0 || pronounsObj.has(prev):
		return false
	}
	// "the burner head": what stands before it says which
	ts, n := r.lex.Things(r.from(i-1, i))
	switch {
	case n == 1 && ts[0].Kind&lexicon.Part == 0:
		return false // a bolt head, a socket set
	case n == 0 && (len(prev) < 3 || i-2 < c.lo || !articles.has(r.toks[i-2].s) && r.toks[i-2].s != "this" || !r.namingVerb(prev) && r.isVerbForm(prev)):
		return false
	}
	r.tellSoft(w)
	return true
}

// interjected are names of much else that people call out.
var interjected = set("stop step light line box clock target")

// onlyOpens tells whether nothing but words that open a sentence stand before token i in it.
func (r *reading) onlyOpens(i int) bool {
	for k := i - 1; k >= 0 && r.toks[k].brk < brkSentence; k-- {
		if !r.toks[k].is(wOpener) && r.toks[k].s != "then" && r.toks[k].s != "now" && r.toks[k].s != "and" {
			return false
		}
	}
	return true
}

// hasFasteners tells whether the words from token i on say which fasteners a thing has or
// is held by: "has four clips", "'s got a nut on the back", "is held on with screws".
func (r *reading) hasFasteners(c *clause, i int) bool {
	for k := i; k < min(c.hi, i+7); k++ {
		switch w := r.toks[k].s; w {
		case "has", "'s", "is", "got", "held", "on", "by", "with", "in", "down", "fixed", "just", "only", "a", "an", "one", "the", "these", "those", "little", "big", "small", "of", "all", "comes", "uses", "sits":
			continue
		default:
			if countOf[w] > 0 {
				continue
			}
			if k == i || r.nameAt(k) == 0 {
				return false
			}
			terms, _ := r.lex.Things(r.from(k, c.hi))
			for _, t := range terms {
				if t.Kind&lexicon.Fastener != 0 {
					return true
				}
			}
			return false
		}
	}
	return false
}

// holding tells whether the word at token i says that something holds what follows.
func (r *reading) holding(i int) bool {
	l := r.lemma1(r.word(i))
	return l == "hold" || l == "secure" || l == "retain"
}

// moves are the verbs of a thing that moves by itself.
var moves = set("comes lifts slides pops pulls drops falls goes swings unclips unscrews unbolts slips just")

// tellSoft keeps that a word was the head of a part's name in this talk.
func (r *reading) tellSoft(w string) {
	if r.toldSoft == nil {
		r.toldSoft = map[string]bool{}
	}
	r.toldSoft[lexicon.Singular(w)] = true
}

// verbOfTwo tells whether the two words at i are a verb here: "zip tie that up".
func (r *reading) verbOfTwo(c *clause, i int) bool {
	if next := r.word(i + 2); i+2 >= c.hi || r.toks[i+1].brk > brkNone || !pronounsObj.has(next) && !definiteWord.has(next) || next == "one" || next == "ones" {
		return false
	}
	if i > c.lo && !r.toks[i-1].is(wLeadsVerb|wSubject|wOpener) && !(r.toks[i-1].is(wLinking) && r.word(i-2) == "do") { // "what we do is cable tie it up"
		return false
	}
	return r.twoWordVerb(i)
}

// twoWordVerb tells whether the words at i and after it are one verb: "double check",
// "centre punch", "wire brush".
func (r *reading) twoWordVerb(i int) bool {
	next := r.next(i)
	for _, v := range r.lex.LemmasOf(r.ids[i]) {
		for _, p := range r.lex.PatternsOf(v) {
			if len(p.Words) > 1 && p.Words[1] == next && p.Gap == 2 {
				return true
			}
		}
	}
	return false
}

// repaired reads a misheard name at token i: the gate of the lexicon decides.
func (r *reading) repaired(ci, i int) (m mention, end int) {
	c := &r.clauses[ci]
	w := r.toks[i].s
	if len(w) < 4 || r.toks[i].is(wStop|wDropAdj|wPlace|wNumber) || r.toks[i].qty >= 0 || w[0] >= '0' && w[0] <= '9' {
		return m, 0
	}
	if r.named != nil && r.named[lexicon.Singular(w)] {
		return r.toldName(ci, i)
	}
	n := 1
	var t *lexicon.Term
	if i+1 < c.hi && r.toks[i].brk <= brkPause && !r.toks[i].is(wForm) && !(r.toks[i+1].s == "can" && i+2 < c.hi && r.toks[i+2].is(wVerb|wForm|wStop)) { // "so the next fool can get it apart"
		if t = r.lex.RepairBeside(w, lexicon.Singular(r.toks[i+1].s)); t != nil {
			n = 2
		}
	}
	if t == nil && !r.toks[i].is(wForm) {
		t = r.lex.Repair(w)
	}
	if t == nil {
		return m, 0
	}
	f := strings.Fields(strings.Join(lexicon.Words(lexicon.Singular(t.Name)), " "))
	last := r.toks[i+n-1].s
	m = mention{lo: i, hi: i + n, cl: ci, kind: t.Kind, of: -1, misheard: true, plural: lexicon.Singular(last) != last}
	m.head, m.mods = f[len(f)-1], f[:len(f)-1]
	m.name = strings.Join(f, " ")
	if m.plural {
		m.name = lexicon.Plural(m.name)
	}
	return m, i + n
}

var ofWhom = set("my your his her their")

// ofBody are the names of parts that are also parts of whoever speaks.
var ofBody = wordsOf("parts of the body")

// ofPerson tells whether the word at token i is said of a person's body.
func (r *reading) ofPerson(c *clause, i int) bool {
	for k := i - 1; k >= c.lo && k >= i-2; k-- {
		switch r.toks[k].s {
		case "my", "his", "her", "own":
			return true
		case "your":
			switch r.prev(k) {
			case "get", "stick", "use", "mind", "watch", "keep", "trap":
				return true // "get your arm in there"
			}
			return false
		case "other", "left", "right", "bad", "good", "poor":
		default:
			return false
		}
	}
	return false
}

// itDoes tells whether a name that is as often a verb is what "it" does: "it just clips off".
func (r *reading) itDoes(c *clause, i int) bool {
	if i == c.lo || !verbLike.has(lexicon.Singular(r.toks[i].s)) || lexicon.Singular(r.toks[i].s) == r.toks[i].s {
		return false
	}
	p := r.toks[i-1].s
	return p == "it" || p == "which" || p == "just" && i-2 >= c.lo && r.toks[i-2].s == "it"
}

// usedAsVerb tells whether a word that can be a thing is the verb here: "clip it on", "you grease the".
func (r *reading) usedAsVerb(c *clause, i int) bool {
	prev, next := "", ""
	if i+1 < len(r.toks) && r.toks[i].brk <= brkComma {
		next = r.toks[i+1].s
	}
	if i > c.lo {
		prev = r.toks[i-1].s
	}
	if determiner.has(prev) && prev != "that" && prev != "this" && prev != "them" && prev != "all" && prev != "both" {
		return false
	}
	if i > c.lo && (prev == "that" || prev == "it" || prev == "which" || prev == "they" || prev == "just" || r.toks[i-1].men >= 0) && (next == "in" || next == "on" || next == "into" || next == "onto" || next == "off" || next == "out" || next == "back" || next == "straight" || next == "up" || next == "down") && len(r.lex.Lemmas(r.toks[i].s)) > 0 && (strings.HasSuffix(r.toks[i].s, "s") || prev == "just" || r.toks[i-1].men >= 0 && r.toks[i-1].brk == brkNone && r.mentions[r.toks[i-1].men].plural && (next != "back" || onWords.has(r.word(i+2)))) {
		return true // "the pump screws into the hole", "old seals hook out"
	}
	isForm := false
	for _, v := range r.lex.Lemmas(r.toks[i].s) {
		if len(r.lex.Patterns(v)) > 0 {
			isForm = true
		}
	}
	if !isForm {
		return false
	}
	if prev == "to" || prev == "i" || prev == "you" || prev == "just" || prev == "'ll" || prev == "gonna" || prev == "and" && (determiner.has(next) || pronounsObj.has(next)) || prev == "then" && (determiner.has(next) || pronounsObj.has(next)) || prev == "don't" || prev == "never" || prev == "can" {
		return true
	}
	if strings.HasSuffix(r.toks[i].s, "ing") && determiner.has(next) && (passiveBe.has(prev) || prev == "'m" || prev == "just" || prev == "start") {
		return true // "all I'm doing is lining the holes up"
	}
	if r.toks[i].s == "plug" && next == "in" && r.kind(i+2).is(wDeterminer) && (i == c.lo || r.toks[i-1].brk >= brkComma || openers.has(prev) || prev == "and") {
		for k := i + 3; k < min(c.hi, i+7); k++ {
			if wired.has(lexicon.Singular(r.toks[k].s)) {
				return true // "plug in the sensor"
			}
		}
	}
	plain := r.plainVerb(r.toks[i].s)
	if plain && (determiner.has(next) && next != "one" && next != "no" || next == "it" || next == "them" || next == "'em") && !determiner.has(prev) && !prepositions.has(prev) && !placeWords.has(prev) && !dropAdj.has(prev) && r.toks[i].brk <= brkPause && (i == c.lo || r.toks[i-1].qty < 0) {
		return true
	}
	if i == c.lo || r.toks[i-1].brk > brkPause || openers.has(prev) {
		if next == "up" || next == "down" {
			w := r.word(i + 2) // "now wheel up into the dropouts"
			return determiner.has(w) || pronounsObj.has(w) || isNoun(r, i+2)
		}
		return (determiner.has(next) && next != "one" || pronounsObj.has(next)) && (r.toks[i].brk < brkComma || countOf[next] == 0) // "Wheel, four nuts."
	}
	return false
}

// tied tells whether the talk around a token is of what is tied with a knot.
func (r *reading) tied(i int) bool {
	for k := max(0, i-20); k < min(len(r.toks), i+12); k++ {
		switch r.toks[k].s {
		case "tie", "tied", "ties", "tying", "rope", "cord", "string", "twine", "untie", "starter":
			return true
		}
	}
	return false
}

// sureBeside tells whether another sure hit stands in the clause, beside the n tokens at i.
func (r *reading) sureBeside(c *clause, i, n int) bool {
	switch w := r.toks[i].s; {
	case w == "not" && i > c.lo && !determiner.has(r.toks[i-1].s) && !isThingWord(r, i-1) && r.nameAt(i+n) > 0:
		return false // "grease on each pawl not bearing grease"
	case w == "not" && (notAfter.has(r.word(i+n)) || strings.HasSuffix(r.word(i+n), "ing") || strings.HasSuffix(r.word(i+n), "ed")):
		return false // "not too tight", "the disc not locked"
	case i > c.lo && r.toks[i-1].s == "no":
		return false // "no tick, no knot"
	}
	lo, hi := max(c.lo-6, 0), min(c.hi+6, len(r.toks))
	for k := lo; k < hi; k++ {
		if k >= i && k < i+n {
			continue
		}
		ts, m := r.lex.Things(r.from(k, len(r.toks)))
		if m == 0 {
			if r.toks[k].qty >= 0 && r.qtys[r.toks[k].qty].Kind != normalize.Duration {
				return determinerBefore(r, i)
			}
			continue
		}
		for _, t := range ts {
			if !t.Misheard && !verbLike.has(r.toks[k].s) {
				return determinerBefore(r, i)
			}
		}
	}
	return false
}

// notAfter are the words after which "not" is no nut misheard.
var notAfter = set("to too more the a so very only even quite yet really just sure that going gonna right in on for be been as enough until till before with by at it me you a")

func determinerBefore(r *reading, i int) bool {
	if i == 0 || r.toks[i-1].brk > brkPause {
		return false
	}
	p := r.toks[i-1].s
	return determiner.has(p) && countOf[p] == 0 || p == "one" || placeWords.has(p) || dropAdj.has(p)
}

func isThingWord(r *reading, i int) bool {
	if !r.toks[i].is(wName) {
		return false
	}
	_, n := r.lex.Things(r.from(i, i+1))
	return n > 0
}

// complete reads what stands left of a name: modifiers, count, side, determiner, preposition.
func (r *reading) complete(ci int, m *mention) {
	c := &r.clauses[ci]
	i := m.lo
	mods := m.mods
	unknown := 0
	for i > c.lo && r.toks[i-1].brk <= brkPause && r.toks[i-1].men < 0 {
		p, pk := r.toks[i-1].s, r.toks[i-1].class
		if r.toks[i-1].qty >= 0 {
			break
		}
		if m.isNew && !pk.is(wDropAdj|wPlace) {
			break // nothing of a name stands before "new"
		}
		if pk.is(wDropAdj) {
			m.isNew = m.isNew || newly.has(p)
			m.isOld = m.isOld || p == "old" || p == "existing" || p == "original"
			i--
			continue
		}
		if ordinal.has(p) && i-2 >= c.lo && definiteWord.has(r.toks[i-2].s) && r.toks[i-2].brk <= brkPause {
			i-- // "the last bolt"
			continue
		}
		if p == "back" && i-2 >= c.lo && r.toks[i-2].men >= 0 {
			break // "wheel back on"
		}
		if pk.is(wPlace) && !(p == "back" && i-2 >= c.lo && (r.toks[i-2].s == "put" || r.toks[i-2].s == "go" || r.toks[i-2].s == "goes")) {
			if m.kind == lexicon.Tool && whereWords.has(p) {
				break // "two screws at the back phillips number two"
			}
			if p == "right" && i-1 == c.lo && m.side == "" && !r.tellsLeft() && !(len(mods) > 0 && (mods[0] == "side" || mods[0] == "hand")) {
				break // "right drain plug back in", where nothing is on the left
			}
			if p == "right" && (i-2 < c.lo || !definiteWord.has(r.toks[i-2].s) && !r.toks[i-2].is(wPlace)) && m.kind&lexicon.Tool != 0 && !(len(mods) > 0 && (mods[0] == "side" || mods[0] == "hand")) {
				break
			}
			mods = append([]string{p}, mods...)
			i--
			continue
		}
		if p == "hand" || p == "side" {
			if i-2 >= c.lo && (sideOf[r.toks[i-2].s] != "" || r.toks[i-2].s == "near" || r.toks[i-2].s == "off") {
				mods = append([]string{p}, mods...)
				i--
				continue
			}
			break
		}
		if pk.is(wStop|wDeterminer|wPronoun|wNumber) || countOf[p] > 0 || papers.has(p) || fractionWord.has(p) || strings.Contains(p, "/") || openings.has(p) && m.kind&lexicon.Tool == 0 {
			break
		}
		if p == "piece" && i-2 >= c.lo && (countOf[r.toks[i-2].s] > 0 || r.toks[i-2].qty >= 0) {
			i -= 2 // "a one piece crank"
			continue
		}
		if n, ok := r.compound(c, i-1, m); ok {
			i = n // "two-piece crankset": how it is built, not how many there are
			continue
		}
		// "the feed screw", "a locking lever": no verb stands between an article and a name
		if j := i - 2; unknown < 2 && m.kind&(lexicon.Fastener|lexicon.Part) != 0 && j >= c.lo && articles.has(r.toks[j].s) && r.toks[j].brk == brkNone && r.toks[i-1].brk == brkNone && r.namingVerb(p) && !r.toks[i].is(wPlace) && !bins.has(p) {
			mods = append([]string{p}, mods...)
			unknown++
			i--
			continue
		}
		if k := i - 2; m.kind == lexicon.Fastener && m.plural && unknown == 0 && len(mods) == 0 && r.toks[i-1].brk == brkNone && len(p) > 3 && !r.isVerbForm(p) && !strings.HasSuffix(p, "ly") && !strings.HasSuffix(p, "ing") && (k < c.lo || r.toks[k].brk >= brkComma || r.toks[k].s == "and" || r.toks[k].is(wOpener)) && !pk.is(wOpener|wDrop|wLinking|wPreposition|wOff|wOn|wInterjection) {
			mods = append([]string{p}, mods...) // "Roller bolts back in"
			unknown++
			i--
			continue
		}
		// an unknown word belongs to the name where a determiner stands not far before it
		if unknown < 2 && m.kind&(lexicon.Fastener|lexicon.Part) != 0 && !r.isVerbForm(p) {
			j := i - 2
			for j >= c.lo && j > i-5 && r.toks[j].s != "new" && (!r.toks[j].is(wStop|wDeterminer) || r.toks[j].is(wDropAdj)) && r.toks[j].men < 0 && r.toks[j].brk <= brkPause {
				j--
			}
			if lead := i-1 == c.lo || r.toks[i-2].brk >= brkComma || r.toks[i-2].s == "and" || r.toks[i-2].is(wOpener); lead && r.calledSo[[2]string{p, m.head}] {
				mods = append([]string{p}, mods...) // "fat cable on the stud", since "the fat cable" came off
				unknown++
				i--
				continue
			}
			if j >= c.lo && (definiteWord.has(r.toks[j].s) || r.toks[j].s == "a" || r.toks[j].s == "an" || countOf[r.toks[j].s] > 0 || r.toks[j].s == "new" && j == i-2 && len(p) > 2) && r.toks[j].brk <= brkPause {
				mods = append([]string{p}, mods...)
				if r.calledSo == nil {
					r.calledSo = map[[2]string]bool{}
				}
				r.calledSo[[2]string{p, m.head}] = true
				unknown++
				i--
				continue
			}
		}
		break
	}
	m.mods = mods
	m.lo = i
	// take the name again from what it now spans, without the words that are no part of it
	var keep []string
	for _, w := range mods {
		if !dropAdj.has(w) {
			keep = append(keep, w)
		}
	}
	m.mods = keep
	if len(keep) > strings.Count(m.name, " ")-strings.Count(m.head, " ") { // both have single blanks
		tail := m.head
		if m.plural {
			tail = lexicon.Plural(m.head)
		}
		m.name = strings.Join(append(append([]string{}, keep...), tail), " ")
	}
	for _, w := range keep {
		switch {
		case sideOf[w] != "":
			m.side = sideOf[w]
		case placeWords.has(w):
			if m.place == "" {
				m.place = w
			} else {
				m.place += " " + w
			}
		}
	}
	// determiners and counts
	for i > c.lo && r.toks[i-1].brk <= brkPause {
		p := r.toks[i-1].s
		if n := countOf[p]; n > 0 && r.toks[i-1].qty < 0 && p != "one" {
			if p == "both" && !m.plural {
				break // "twenty eight on both, bleeder eight"
			}
			m.count = n
		} else if p == "one" {
			m.count = 1
		} else if definiteWord.has(p) {
			m.definite = true
		} else if p == "a" || p == "an" {
			m.count = 1
		} else if (p == "each" || p == "every") && m.kind&lexicon.Fastener != 0 {
			m.plural = true // "on each bolt": there are several
		} else if p == "of" && i-2 >= c.lo && (countOf[r.toks[i-2].s] > 0 || r.toks[i-2].s == "couple" || r.toks[i-2].s == "pair" || r.toks[i-2].s == "set") {
			i--
			continue
		} else if p == "new" || p == "old" || r.toks[i].s == "set" && newly.has(p) {
			m.isNew = m.isNew || p != "old"
			m.isOld = m.isOld || p == "old"
		} else if !(determiner.has(p) && p != "no") && p != "couple" && p != "pair" && !((p == "set" || p == "lot") && r.toks[i].s == "of") && !(p == "whole" || p == "brand" || p == "matched") {
			break
		}
		i--
	}
	m.from = i
	// "new quarter inch balls"
	for k := i - 1; k >= c.lo && i-k < 6; k-- {
		if r.toks[k].qty >= 0 || r.toks[k].s == "inch" || r.toks[k].is(wNumber) {
			continue
		}
		m.isNew = m.isNew || r.toks[k].s == "new" && k < i-1
		break
	}
	for k := i; k < m.lo; k++ {
		r.toks[k].men = -1
	}
	if i > c.lo && r.toks[i-1].is(wPreposition) && r.toks[i-1].brk <= brkPause {
		m.prep = r.toks[i-1].s
	}
	if m.prep == "of" && i-2 >= c.lo && (r.toks[i-2].s == "left" || r.toks[i-2].s == "rest" || r.toks[i-2].s == "remains") {
		m.prep = "" // "what's left of the bolt"
	}
	if m.prep == "of" && len(c.mentions) > 0 {
		m.of = c.mentions[len(c.mentions)-1]
	}
	m.cl = ci
}

// ordinal are the words that count things one by one.
var ordinal = set("last first second third fourth fifth sixth")

// strokes tells whether counted "pumps" at a token are strokes of a grease gun or the like.
func (r *reading) strokes(c *clause, i int) bool {
	if r.next(i) == "of" {
		return true
	}
	for k := i - 1; k >= 0 && k > i-20 && int(r.toks[k].cl) >= int(r.toks[i].cl)-1; k-- {
		switch r.toks[k].s {
		case "grease", "gun", "lever", "pedal", "oil", "handle":
			return true
		}
	}
	return false
}

// slidesAway tells whether the "slides" at a token is what one thing does, and no name: "the drum
// slides off", where "both caliper slides out" are two things.
func (r *reading) slidesAway(c *clause, i int) bool {
	if i == c.lo || i+1 >= c.hi || r.toks[i].brk >= brkComma || !r.toks[i+1].is(wOff|wOn|wReturning) && r.toks[i+1].s != "back" && r.toks[i+1].s != "straight" && r.toks[i+1].s != "right" {
		return false
	}
	for k := i - 1; k >= c.lo && k > i-6; k-- {
		switch w := r.toks[k].s; {
		case w == "the" || w == "this" || w == "that" || w == "your" || w == "my" || w == "whole":
			return true
		case w == "these" || w == "those" || countOf[w] > 1 || r.toks[k].brk >= brkComma:
			return false
		}
	}
	return false
}

// compound tells whether the word at i and a number before it say how a thing is
// built: "a two-piece crankset", "the three speed hub". A count would make the
// thing plural. Gives the token where such words begin.
func (r *reading) compound(c *clause, i int, m *mention) (int, bool) {
	k := i - 1
	if m.plural || k < c.lo || r.toks[k].brk > brkPause || r.toks[k].men >= 0 {
		return i, false
	}
	q := r.toks[k].s
	if countOf[q] < 2 || q == "both" || q == "pair" || lexicon.Singular(r.toks[i].s) != r.toks[i].s || isThingWord(r, i) {
		return i, false
	}
	return k, true
}

// openings are where things go in; nothing is named after them: "through the hole | wheel bolts then".
var openings = wordsOf("holes")

// papers are what is read; nothing is named after them: "off the sheet | battery in".
var papers = wordsOf("papers")

// newly are the adjectives of what was not on the machine before.
var newly = set("new fresh brand genuine unused replacement reconditioned recon rebuilt refurbished remanufactured aftermarket uprated upgraded")

// articles are the words between which and a name no verb can stand.
var articles = set("the a an my your his its their another")

// namingVerb tells whether a word is a verb in the form that names things: "feed
// screw", "locking lever".
func (r *reading) namingVerb(w string) bool {
	for _, v := range r.lex.Lemmas(w) {
		if v == w || strings.HasSuffix(w, "ing") {
			return true
		}
	}
	return false
}

func (r *reading) isVerbForm(w string) bool {
	for _, v := range r.lex.Lemmas(w) {
		if len(r.lex.Patterns(v)) > 0 || v != w {
			return true
		}
	}
	return false
}
