package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// findActs reads what is done in each clause.
func (r *reading) findActs() {
	for ci := range r.clauses {
		c := &r.clauses[ci]
		for i := c.lo; i < c.hi; {
			if a, ok := r.pulls(ci, i); ok {
				r.addAct(ci, a)
				i++
				continue
			}
			if !r.toks[i].is(wForm) {
				i++
				continue
			}
			a, end := r.actAt(ci, i)
			if end == 0 {
				i++
				continue
			}
			if a.action.Name != "none" {
				r.addAct(ci, a)
			} else {
				for _, mi := range a.objects {
					r.idle[[2]int{ci, mi}] = true
				}
			}
			i = end
		}
		r.pulledAlone(ci)
		r.allOfRow(ci)
		r.verbless(ci)
		r.offAndBack(ci)
		r.thenOut(ci)
		r.outOfTheWay(ci)
		r.goes(ci)
		r.raised(ci)
		r.tipped(ci)
		r.goesAlone(ci)
		r.left(ci)
		r.inUse(ci)
		r.toolAlone(ci)
		r.photo(ci)
		r.bathed(ci)
		r.heated(ci)
		r.spreads(ci)
		r.renewed(ci)
		r.laid(ci)
		r.stowed(ci)
		r.liesAway(ci)
		r.laidBeside(ci)
		r.stood(ci)
		r.row(ci)
		r.fingerTight(ci)
		r.inOneRow(ci)
		r.oneLaid(ci)
		r.thenPlace(ci)
		r.turned(ci)
		r.gets(ci)
		r.blows(ci)
		r.machineOff(ci)
		r.mannered(ci)
		r.likewise(ci)
		r.singledOut(ci)
		r.countedAndAway(ci)
		r.countedHold(ci)
		r.onlyPointed(ci)
		r.endsOff(ci)
		r.backAlone(ci)
		r.byFingers(ci)
		r.tightAlone(ci)
		r.doneAlone(ci)
		r.thenTurn(ci)
		r.outAlone(ci)
		r.asTightAs(ci)
		r.leftTight(ci)
		r.sitsThere(ci)
		r.binAlone(ci)
		r.notGoingBack(ci)
		slices.SortStableFunc(c.acts, func(a, b int) int { return r.acts[a].lo - r.acts[b].lo })
	}
}

// goesAlone reads "End plate. Comes off with a tap.": a thing that is only named, and
// then a verb by itself of how it moves.
func (r *reading) goesAlone(ci int) {
	c := &r.clauses[ci]
	if c.mood&notWork != 0 || !r.movesItself(c.lo) {
		return
	}
	mi := r.namedAlone(ci)
	if mi < 0 {
		return
	}
	name, end := "", 0
	for i := c.lo + 1; i < min(c.hi, c.lo+4) && name == "" && r.toks[i-1].brk < brkComma; i++ {
		switch w := r.toks[i].s; {
		case offWords.has(w) || w == "away" || w == "apart":
			name, end = "remove", i+1
		case onWords.has(w) || w == "back" || w == "home":
			name, end = "fit", i+1
		case w != "straight" && w != "right" && w != "just" && w != "nicely" && w != "easy":
			return
		}
	}
	if name == "" || len(c.acts) > 1 {
		return
	}
	x := act2(r.lex.Action(name), c.lo, end, mi)
	x.verb, x.rule = c.lo, "thing and then how it moves"
	if len(c.acts) == 1 {
		a := &r.acts[c.acts[0]]
		if a.verb != c.lo || len(a.objects) > 0 {
			return
		}
		x.cl, x.qty, x.mood = a.cl, a.qty, a.mood&^framed
		*a = x
		return
	}
	r.addAct(ci, x)
}

// namedAlone gives the part or fastener that the clause before does nothing but name,
// or -1.
func (r *reading) namedAlone(ci int) int {
	if ci == 0 {
		return -1
	}
	p := &r.clauses[ci-1]
	if len(p.acts) > 0 || len(p.mentions) != 1 || p.hi-p.lo > 6 || p.mood&notWork != 0 || r.since(p.lo, r.clauses[ci].lo) > 15 {
		return -1
	}
	m := &r.mentions[p.mentions[0]]
	if m.kind&(lexicon.Part|lexicon.Fastener) == 0 || m.prep != "" || m.hi != p.hi || !r.opens(p, m) && r.toks[p.lo].s != "next" {
		return -1
	}
	return p.mentions[0]
}

// pulls reads "squeeze that and pull", "press the tab in and pull": what is pulled
// is what was squeezed, or what that is the catch of.
func (r *reading) pulls(ci, i int) (act, bool) {
	c := &r.clauses[ci]
	if w := r.toks[i].s; w != "pull" && w != "pulled" || i+1 < c.hi && r.toks[i].brk < brkComma || i == 0 || r.toks[i-1].s != "and" {
		return act{}, false
	}
	if len(r.acts) == 0 {
		return act{}, false
	}
	p := &r.acts[len(r.acts)-1]
	if r.since(p.lo, i) >= 8 || r.clauses[p.cl].sentence != c.sentence || p.verb < 0 {
		return act{}, false
	}
	switch r.lemma1(r.toks[p.verb].s) {
	case "squeeze", "press", "push", "pinch", "twist", "depress", "lift", "slide", "wiggle", "turn", "rock", "unclip":
	default:
		return act{}, false
	}
	a := act{action: r.lex.Action("remove"), lo: i, hi: i + 1, verb: -1, pronoun: p.pronoun, objects: slices.Clone(p.objects), subject: true, rule: "squeeze and pull"}
	if len(a.objects) == 0 || catches.has(r.mentions[a.objects[0]].head) {
		// the catch stays: what it holds is named first in the sentence, or right before it
		for n := p.cl; n >= 0 && n >= p.cl-2 && r.since(r.clauses[n].lo, i) < 10; n-- {
			for _, mi := range r.clauses[n].mentions {
				if m := &r.mentions[mi]; m.lo < i && m.kind&(lexicon.Fastener|lexicon.Part) != 0 && !catches.has(m.head) && m.prep == "" {
					a.objects, a.pronoun = []int{mi}, ""
					if !pulledOff.has(m.head) {
						a.action, a.rule = r.lex.Action("disconnect"), unplugged
					}
					return a, true
				}
			}
		}
	}
	return a, len(a.objects) > 0 || a.pronoun != ""
}

// unplugged is the rule of a thing whose plug is pulled: the thing itself stays.
const unplugged = "squeeze and pull its plug"

// pulledOff are what comes off its place when it is squeezed and pulled.
var pulledOff = wordsOf("what is pulled off")

// catches are what is pressed or squeezed to let a thing go.
var catches = wordsOf("catches")

// presses are the verbs by which a catch lets go.
var presses = set("press push squeeze pinch")

// pulledAlone reads "so I pull this hose", "pull the fuse", where no particle says that it comes off.
func (r *reading) pulledAlone(ci int) {
	c := &r.clauses[ci]
	for _, ai := range c.acts {
		a := &r.acts[ai]
		if a.verb < 0 || a.action.Name != "lift" || len(a.objects) != 1 || r.lemma1(r.toks[a.verb].s) != "pull" {
			continue
		}
		m := &r.mentions[a.objects[0]]
		ends := m.hi == c.hi || r.toks[m.hi-1].brk >= brkComma || r.toks[m.hi].s == "and" || r.toks[m.hi].s == "first" || r.toks[m.hi].s == "from"
		if m.lo < a.verb || !pulledOff.has(m.head) && !(m.kind&lexicon.Fastener != 0 && (m.plural || m.definite && alike.has(m.head))) {
			continue
		}
		if ends {
			a.action, a.rule = r.lex.Action("remove"), "verb pull"
		}
	}
}

// takesNothingOff tells whether words for what comes off or is locked tell something else:
// by how much a thing is off, what it keeps away, what is seen to come out of it, what
// another time will mean, or that the machine is cut off from its current.
func (r *reading) takesNothingOff(ci int, a *act) bool {
	c := &r.clauses[ci]
	last, next := r.word(a.hi-1), r.word(a.hi)
	if a.action.Name == "tighten" {
		return a.verb >= 0 && last == "off" && a.pronoun == "" && r.lemma1(r.toks[a.verb].s) == "lock" && !slices.ContainsFunc(a.objects, func(mi int) bool { return r.mentions[mi].kind&lexicon.Fastener != 0 }) // "locked off at the panel"
	}
	if a.action.Name != "remove" || last != "off" && last != "out" {
		return false
	}
	if len(a.objects) == 1 && r.padlock(&r.mentions[a.objects[0]]) {
		return true
	}
	if last == "out" && next == "and" && r.outAndBack(a.hi+1) {
		return true
	}
	if !a.subject {
		return false
	}
	is := a.verb < 0 || r.toks[a.verb].is(wLinking)
	if is && (next == "by" || next == "about" || next == "around" || next == "roughly" || next == "nearly") {
		if w := r.next(a.hi); r.nextKind(a.hi).is(wNumber|wCountOf) || w == "a" || w == "about" || w == "half" || a.hi+1 < len(r.toks) && r.toks[a.hi+1].qty >= 0 {
			return true // "the rim's out by a couple of mil", "it's out about eight thou"
		}
	}
	for i := a.lo - 1; i >= c.lo && i > a.lo-4; i-- {
		switch r.toks[i].s {
		case "keep", "keeps", "kept", "keeping":
			return a.verb < 0 // "it only kept the spiders out"
		case "means", "mean":
			return a.verb < 0 // "next time it's the seal, which means the prop off"
		case "see", "seen", "watch", "watched", "watching":
			return last == "out" && a.pronoun == "it" && i >= a.lo-2 // "you'll see it come out the front"
		}
	}
	return false
}

// outAndBack tells whether the "back" at a token ends a stroke: "run it out and back a few
// times", but not "take it out and back in" nor "and back the bolt off".
func (r *reading) outAndBack(i int) bool {
	if r.word(i) != "back" {
		return false
	}
	switch w := r.next(i); w {
	case "", "again", "twice", "once", "till", "until", "to", "slowly", "few", "by":
		return true
	case "a":
		return r.word(i+2) == "few" || r.word(i+2) == "couple"
	}
	return r.toks[i].brk >= brkComma || r.nextKind(i).is(wNumber) && (r.word(i+2) == "times" || r.word(i+2) == "or")
}

// padlock tells whether a mention is of the lock that keeps a machine switched off: "Lock
// off. Power on.", "I take my lock off, heat on".
func (r *reading) padlock(m *mention) bool {
	if m.head != "lock" || len(m.mods) > 0 {
		return false
	}
	for i := max(0, m.lo-12); i < min(len(r.toks), m.hi+12); i++ {
		switch r.toks[i].s {
		case "power", "panel", "isolator", "mains", "breaker", "run", "heat", "tag":
			return true
		}
	}
	return r.prev(m.lo) == "my"
}

func (r *reading) addAct(ci int, a act) {
	a.cl = ci
	if r.takesNothingOff(ci, &a) {
		return
	}
	if a.action.Name == "fit" && a.verb >= 0 && !a.subject && len(a.objects) == 1 && catches.has(r.mentions[a.objects[0]].head) && presses.has(r.lemma1(r.toks[a.verb].s)) {
		a.action = r.lex.Action("press") // "push the tab in": to let go of what it holds
	}
	if a.action.Name == "start by hand" && a.verb >= 0 && !a.subject && r.lemma1(r.toks[a.verb].s) == "start" && a.hi <= a.verb+1 && !r.startsFasteners(&a) {
		return
	}
	if a.action.Name == "remove" && a.verb >= 0 && !a.subject && undoes.has(r.lemma1(r.toks[a.verb].s)) && r.notRightOut(ci, a.hi) {
		a.action = r.lex.Action("slacken") // "undo it but don't take it out"
	}
	if a.action.Name == "open" && a.verb >= 0 && !a.subject && len(a.objects) == 1 && alike.has(r.mentions[a.objects[0]].head) && r.mentions[a.objects[0]].kind == lexicon.Fastener && r.mentions[a.objects[0]].plural {
		a.action = r.lex.Action("remove") // "we open these four bolts"
	}
	if a.action.Name == "fit" && a.verb >= 0 && !a.subject && len(a.objects) == 1 && supplies.has(r.mentions[a.objects[0]].head) {
		switch r.lemma1(r.toks[a.verb].s) {
		case "close", "shut":
			a.action = r.lex.Action("switch off")
		}
	}
	if a.action.Name == "discard" && a.verb >= 0 && len(a.objects) == 0 && a.pronoun == "" && !a.unknown && r.toks[a.verb].s == "bin" && r.saidAlone(&r.clauses[ci], a.verb) && !r.kind(r.clauses[ci].hi).is(wDeterminer) {
		a.pronoun, a.subject = "that", true // "Bin."
	}
	if a.action.Name == "lift" && a.verb >= 0 && !a.subject && !a.unknown && len(a.objects) == 0 && a.pronoun == "" && r.saidAlone(&r.clauses[ci], a.verb) {
		a.pronoun = "it" // "And lift."
	}
	if a.action.Name == "clean" && a.verb > 0 && len(a.objects) == 1 && r.toks[a.verb-1].s == "wire" && r.mentions[a.objects[0]].hi == a.verb {
		wire := a.objects[0]
		a.objects, a.pronoun, a.lo = nil, "it", a.verb-1 // "wire brushed"
		for _, mi := range r.clauses[ci].mentions {
			if m := &r.mentions[mi]; mi != wire && m.hi <= a.lo && m.kind&(lexicon.Fastener|lexicon.Part) != 0 && m.prep == "" {
				a.objects, a.pronoun = []int{mi}, "" // "old bolts, wire brushed"
			}
		}
	}
	if a.action.Name == "remove" && a.subject && len(a.objects) == 1 && r.switchedOff(&r.mentions[a.objects[0]]) && a.hi > a.lo && r.toks[a.hi-1].s == "off" && (a.verb < 0 || r.lemma1(r.toks[a.verb].s) == "be" || r.toks[a.verb].s == "'s") {
		a.action = r.lex.Action("switch off") // not of a pump that slides off
	}
	if a.action.Name == "fit" && a.subject && a.verb >= 0 && len(a.objects) == 1 {
		if m := &r.mentions[a.objects[0]]; m.kind == lexicon.Consumable && m.hi <= a.verb {
			// "one drop of oil goes on the hook race"
			a.action, a.rule = r.lex.Action("apply"), stuffAndPlace
			for a.lo = m.from; a.lo > r.clauses[ci].lo && (measured.has(r.toks[a.lo-1].s) || r.toks[a.lo-1].is(wDeterminer) || r.toks[a.lo-1].s == "of"); {
				a.lo--
			}
			if r.toks[a.hi-1].is(wPreposition) {
				a.hi--
			}
		}
	}
	if a.action.Name == "fit" && a.subject && a.verb >= 0 && r.word(a.hi) == "and" && a.hi+1 < r.clauses[ci].hi && (r.toks[a.hi+1].is(wOff) || r.toks[a.hi+1].s == "away") && r.toks[a.hi-1].is(wReturning) {
		a.action, a.hi = r.lex.Action("remove"), a.hi+2 // "then the panel slides down and out"
	}
	if a.action.Name == "fit" && a.subject && r.byItself(ci, a.hi) {
		return // "the lever goes back by itself"
	}
	if a.action.Name == "fit" && a.subject && a.verb >= 0 {
		switch r.lemma1(r.toks[a.verb].s) {
		case "pop", "drop", "roll", "slide", "bounce":
			c := &r.clauses[ci]
			if w := r.toks[a.hi-1].s; (w == "into" || w == "in" || w == "onto" || w == "on" || w == "under") && a.hi < c.hi && r.toks[a.hi].is(wDeterminer) && r.nameWithin(c, a.hi, 4) < 0 && a.hi+1 < c.hi && !r.toks[a.hi+1].is(wPlace) && !takesThings.has(r.toks[a.hi+1].s) {
				return // "it pops into the snow"
			}
		}
		for i := a.hi; i < min(r.clauses[ci].hi, a.hi+3); i++ {
			if w := r.toks[i].s; w == "hand" || w == "hands" || w == "lap" || w == "palm" {
				if p := r.toks[i-1].s; p == "my" || p == "your" {
					a.action = r.lex.Action("remove") // "drops into my hand"
				}
			}
			if r.toks[i].s == "order" {
				a.action = r.lex.Action("store") // "go on the zip tie in order"
			}
		}
	}
	if a.action.Name == "fit" && a.verb >= 0 && !a.subject && len(a.objects) == 1 && r.lemma1(r.toks[a.verb].s) == "pull" && r.mentions[a.objects[0]].kind&lexicon.Fastener != 0 && r.mentions[a.objects[0]].plural {
		a.action = r.lex.Action("remove") // "pull the two screws on the cover"
	}
	if a.action.Name == "fit" && a.verb >= 0 && !a.subject {
		for i := max(a.hi-1, a.verb+1); i+2 < r.clauses[ci].hi && i < a.hi+2; i++ {
			if (r.toks[i].s == "on" || r.toks[i].s == "over") && (r.toks[i+1].s == "your" || r.toks[i+1].s == "my") && bodily.has(r.toks[i+2].s) {
				if l := r.lemma1(r.toks[a.verb].s); l == "drop" || l == "fall" {
					return // "I dropped a drum on my foot"
				}
				a.action = r.lex.Action("support") // "hang it on your finger"
				break
			}
		}
	}
	if a.action.Name == "discard" && a.subject && r.toks[a.hi-1].s == "shot" && flewTo.has(r.word(a.hi)) {
		return // "it's shot across the garage"
	}
	if a.action.Name == "discard" && a.verb >= 0 && !a.subject {
		k := a.hi
		if pronounsObj.has(r.word(k)) {
			k++
		}
		if r.intoContainer(ci, k) == "store" {
			a.action = r.lex.Action("store") // "toss it on the bench"
		}
	}
	if a.action.Name == "fit" && a.verb >= 0 && r.intoHolder(ci, a.hi) {
		if a.action = r.lex.Action("place"); a.subject && r.toks[a.hi-1].is(wPreposition) && a.hi-1 > a.verb {
			a.hi-- // "the rod goes in the vise"
		}
	}
	if a.action.Name == "fit" {
		name := r.intoContainer(ci, a.hi)
		if name == "" && r.intoCup(&a) {
			name = "store"
		}
		switch name {
		case "":
		case "none":
			return
		default:
			a.action = r.lex.Action(name)
		}
	}
	if a.action.Name == "leave off" && a.verb >= 0 && !a.subject {
		r.frontedLeft(ci, &a)
	}
	if a.action.Name == "start by hand" && a.verb >= 0 && len(a.objects) == 0 && a.pronoun == "" {
		r.leftSnug(ci, &a)
	}
	a.qty = -1
	a.mood = r.moodOf(ci, &a)
	// "put it in | wheel on": the particle of the verb is no preposition of what follows
	if a.hi > a.lo && a.hi < len(r.toks) {
		if m := r.toks[a.hi].men; m >= 0 && r.mentions[m].from == a.hi && len(a.objects)+len(a.pronoun) > 0 && r.mentions[m].prep == r.toks[a.hi-1].s && !a.subject {
			r.mentions[m].prep = ""
		}
	}
	c := r.clauses[ci].own()
	c.acts = append(c.acts, len(r.acts))
	r.acts = append(roomFor(r.acts, a.lo, len(r.toks)), a)
}

// undoes are the verbs of turning a fastener out, which may stop short of that.
var undoes = set("undo unscrew unthread unbolt unwind wind back screw loosen")

// notRightOut tells whether the words from token i on say that what was undone stays in:
// "but don't take it out", "it doesn't have to come out", "and leave it in".
func (r *reading) notRightOut(ci, i int) bool {
	not, leave := false, false
	for k := i; k < min(len(r.toks), i+13) && r.since(i-1, k) < 8; k++ {
		if n := int(r.toks[k].cl); n > ci+1 && r.clauses[n].sentence != r.clauses[ci].sentence && !not && !leave {
			return false
		}
		switch r.toks[k].s {
		case "don't", "not", "without", "doesn't", "needn't", "never", "no":
			not = true
		case "leave", "leaving", "keep":
			leave = true
		case "out", "off":
			if not {
				return true
			}
		case "in", "on", "there":
		case "lose", "drop", "let":
			return false // "don't let it drop out"
		}
	}
	return false
}

// byItself tells whether the words from token i on say that something moves of its own accord.
func (r *reading) byItself(ci, i int) bool {
	c := &r.clauses[ci]
	for k := i; k < min(c.hi, i+3); k++ {
		if n := r.next(k); r.toks[k].s == "by" && (n == "itself" || n == "themselves") {
			return true
		}
	}
	return false
}

// startsFasteners tells whether what is started is fasteners, and no engine.
func (r *reading) startsFasteners(a *act) bool {
	if len(a.objects) > 0 {
		return r.mentions[a.objects[0]].kind&lexicon.Fastener != 0 && r.mentions[a.objects[0]].kind&lexicon.Tool == 0
	}
	return a.pronoun != "" && r.many(a) && a.pronoun != "all" && a.pronoun != "they"
}

// intoHolder tells whether the words where an act ends put its thing in a vice.
func (r *reading) intoHolder(ci, hi int) bool {
	c := &r.clauses[ci]
	for i := hi - 1; i < min(hi+4, c.hi-1); i++ {
		if w := r.toks[i].s; w != "in" && w != "into" && w != "between" {
			continue
		}
		for k := i + 1; k < min(i+4, c.hi); k++ {
			if w := r.toks[k].s; w == "vice" || w == "vise" {
				return true
			}
		}
	}
	return false
}

// takesThings are the words for where things go that are no part by themselves.
var takesThings = set("hole holes slot slots groove grooves recess bore socket pocket keyway notch channel end ends other same dropout dropouts spline splines thread threads place seat guide guides")

// flewTo are the words that tell of "shot" that something flew.
var flewTo = set("across off out over past under through into up down away behind")

var containers = wordsOf("containers")

// writings are where words and pictures are put, not things.
var writings = wordsOf("what is written for viewers")

var bins = wordsOf("bins")

// intoCup tells whether an act puts fasteners in what is called a cup and no more: no
// bearing's cup.
func (r *reading) intoCup(a *act) bool {
	if a.subject || a.verb < 0 || a.hi+1 >= len(r.toks) || !r.toks[a.hi].is(wDeterminer) {
		return false
	}
	m := int(r.toks[a.hi+1].men)
	if m < 0 || r.mentions[m].head != "cup" || r.mentions[m].lo != a.hi+1 || len(r.mentions[m].mods) > 0 {
		return false
	}
	for _, mi := range a.objects {
		if o := &r.mentions[mi]; o.kind&lexicon.Fastener == 0 && o.head != "washer" {
			return false
		}
	}
	return len(a.objects) > 0 || a.pronoun == "them" || a.pronoun == "those" || a.pronoun == "these"
}

// intoContainer tells of "goes in the jam jar lid" that it is put aside, of "in
// the bin" that it is thrown away, and of "in the notes" that it is "none" of the
// work; "" where a thing goes where it belongs.
func (r *reading) intoContainer(ci, k int) string {
	c := &r.clauses[ci]
	if k < c.hi && !r.toks[k].is(wDeterminer) && !r.toks[k].is(wPreposition) && !containers.has(r.toks[k].s) && !bins.has(r.toks[k].s) {
		return "" // "back in, fold it flat, plate, lid"
	}
	for i := k; i < c.hi && i < k+6; i++ {
		w := r.toks[i].s
		if w == "from" {
			return "" // "the screws go back from my cardboard"
		}
		if i > k+1 && (w == "and" || w == "with" || w == "so") || w == "came" || w == "comes" || w == "out" && r.next(i) == "of" {
			return "" // "new circlip in that came in the box"
		}
		if writings.has(w) {
			return "none"
		}
		if m := r.toks[i].men; m >= 0 && r.mentions[m].kind&lexicon.Fastener != 0 {
			return "" // a bearing's cup
		}
		if containers.has(w) && !(w == "can" && r.toks[i-1].is(wSubject)) && r.next(i) != "side" {
			return "store"
		}
		if bins.has(w) {
			return "discard"
		}
	}
	return ""
}

// actAt matches the ways of saying an action at the verb at token i.
func (r *reading) actAt(ci, i int) (act, int) {
	c := &r.clauses[ci]
	t := &r.toks[i]
	if t.men >= 0 || t.qty >= 0 {
		return act{}, 0
	}
	var best act
	bestEnd, bestScore := 0, 0
	third := strings.HasSuffix(t.s, "s") && !t.is(wVerb)
	after := r.ids[i+1 : c.hi]
	var among uint64 // a bit for each word after it, shared by few
	for _, w := range after {
		among |= 1 << (w % 64)
	}
	lemmas := r.lex.LemmasOf(r.ids[i])
	longer := lexicon.ID(0) // scraped is of scrape, and not of scrap
	if strings.HasSuffix(t.s, "ed") && len(lemmas) > 1 {
		if longer = r.lex.ID(t.s[:len(t.s)-1]); !slices.Contains(lemmas, longer) {
			longer = 0
		}
	}
	for _, v := range lemmas {
		if longer != 0 && v != longer {
			continue
		}
		patterns := r.lex.PatternsOf(v)
		for k, last := range r.lex.LastsOf(v) {
			if last.Word != 0 && (among>>(last.Word%64)&1 == 0 || !slices.Contains(after[:min(int(last.Reach), len(after))], last.Word)) {
				continue
			}
			p := patterns[k]
			if 2*len(p.Words)+1 < bestScore {
				break // longest first
			}
			a, end, ok := r.match(c, i, p)
			if !ok {
				continue
			}
			score := 2 * len(p.Words)
			if p.Action.Name == "none" || third && p.Subject || p.Subject && r.theyBefore(c, i) {
				score++ // "the cable pulls down", "they just drop out"
			}
			if p.Gap == len(p.Words) && p.Gap > 1 && !third && len(a.objects) > 0 && r.mentions[a.objects[0]].from == a.hi && r.toks[a.hi-1].brk < brkComma {
				score++ // "swap over the bulb"
			}
			if score > bestScore {
				best, bestEnd, bestScore = a, end, score
			}
		}
	}
	if bestEnd == 0 || !r.verbHere(c, i, &best) {
		return act{}, 0
	}
	best.rule = "verb " + best.action.Name
	return best, bestEnd
}

// asAdj are the verbs that also say what a thing is like.
var asAdj = set("wet dry clean oily warm cool level square empty open flush")

// fits are the words for how a thing fits.
var fits = set("slip press push tight loose snug interference close sliding friction exact perfect easy better")

// theyBefore tells whether "they", "it" or the like is what the verb is said of.
func (r *reading) theyBefore(c *clause, i int) bool {
	for k := i - 1; k >= c.lo && k > i-4; k-- {
		switch r.toks[k].s {
		case "just", "all", "both", "then", "right", "now", "will", "'ll", "should":
		case "they", "it", "these", "those", "ones":
			return true
		default:
			// "both hoses pull off", "the halves pull apart"
			m := r.toks[k].men
			return m >= 0 && r.toks[k].brk < brkComma && r.mentions[m].plural && (r.mentions[m].from == c.lo || r.toks[r.mentions[m].from-1].is(wOpener) || r.toks[r.mentions[m].from-1].s == "and" || r.toks[r.mentions[m].from-1].brk >= brkComma)
		}
	}
	return false
}

// verbHere declines words that only look like the verb: "the torque is", "a clean rag", "to spec".
func (r *reading) verbHere(c *clause, i int, a *act) bool {
	if r.next(i) == "of" && a.action.Name != "none" {
		return false // "a drop of", "wipe of oil", "hold of"
	}
	if r.toks[i].s == "click" && r.toks[i].brk >= brkComma && a.verb >= 0 && !a.subject {
		return false // "click, and eleven on the front"
	}
	if n := r.next(i); a.verb >= 0 && !a.subject && r.toks[i].brk < brkComma && (n == "is" || n == "are" || n == "'re" || n == "'s" || n == "was" || n == "were") {
		return false // "the mark is up"
	}
	for k := i + 1; a.subject && k < min(a.hi, c.hi-2); k++ {
		if r.toks[k].s == "off" && papers.has(r.toks[k+2].s) {
			return false // "that's right off the sheet"
		}
	}
	if a.verb >= 0 && !a.subject && r.namesNow(c, i, a) {
		return false
	}
	if k := a.hi; k == i+2 && a.action.Name == "fit" && (a.pronoun == "it" || a.pronoun == "them") && r.word(k) == a.pronoun && (r.toks[k-1].s == "on" || r.toks[k-1].s == "in") {
		return false // "put on it" says where, and "put it on" what
	}
	if i > c.lo && a.verb >= 0 && !a.subject && strings.HasSuffix(r.toks[i].s, "ed") && countOf[r.toks[i-1].s] > 1 && a.hi == i+1 && i+1 < c.hi && r.toks[i].brk < brkComma {
		return false // "two threaded holes"
	}
	if a.action.Name == "tighten" && strings.HasPrefix(r.toks[i].s, "lock") && a.hi > i+1 && r.toks[a.hi-1].s == "up" && a.pronoun == "" && !slices.ContainsFunc(a.objects, func(mi int) bool { return r.mentions[mi].kind&lexicon.Fastener != 0 }) {
		return false // "it locked up in a creek"
	}
	if i > c.lo && r.toks[i].s == "loaded" && r.toks[i-1].s == "spring" {
		return false // what a plunger is like
	}
	if r.toks[i].s == "flush" && r.next(i) == "with" && a.verb >= 0 && (i == c.lo || !r.toks[i-1].is(wLeadsVerb|wSubject)) {
		m := r.nameWithin(c, i+2, 4)
		if m < 0 || r.mentions[m].kind&lexicon.Consumable == 0 {
			return false // "the seal, flush with the edge"
		}
	}
	if r.toks[i].s == "tension" && len(a.objects) > 0 && r.mentions[a.objects[0]].from == i+1 && !r.mentions[a.objects[0]].definite && !r.mentions[a.objects[0]].plural {
		return false // "tension pin in the small hole"
	}
	if w := r.toks[i].s; w == "dry" && i > 0 && (r.lemma1(r.toks[i-1].s) == "run" || r.toks[i-1].s == "goes" || r.toks[i-1].s == "go" || r.toks[i-1].s == "keep" || r.toks[i-1].s == "stay") {
		return false // "so it don't run dry the first mile"
	}
	if w := r.toks[i].s; w == "dry" && a.verb >= 0 && !a.subject && len(a.objects) == 0 && (r.toks[i].brk >= brkComma || r.next(i) == "at" || r.next(i) == "for") {
		return false // "head gasket, dry, the word top up", "sat there dry at the moment"
	}
	if asAdj.has(r.toks[i].s) && a.verb >= 0 && !a.subject && len(a.objects) > 0 {
		// "wet rag over the tank", "both faces clean, new gasket"
		m := &r.mentions[a.objects[0]]
		if m.from == i+1 && m.lo == i+1 && m.kind&(lexicon.Fastener|lexicon.Part) == 0 || r.toks[i].brk >= brkComma {
			return false
		}
	}
	if i+1 < c.hi && features.has(r.toks[i].s) && r.toks[i].brk == brkNone && turned.has(r.toks[i+1].s) && r.toks[i+1].s != "in" && a.pronoun == "" && a.verb >= 0 && (len(a.objects) == 0 || r.mentions[a.objects[0]].prep != "") {
		return false // "chamfer towards the box"
	}
	if w := r.toks[i].s; w == "cover" && len(a.objects) > 0 && a.verb >= 0 && r.mentions[a.objects[0]].kind&lexicon.Fastener != 0 {
		return false // "cover, three nuts"
	}
	if k := c.lo; i > k+2 && r.toks[k].s == "there" && (r.toks[k+1].s == "'s" || r.toks[k+1].s == "is") && articles.has(r.toks[k+2].s) && r.plainVerb(r.toks[i].s) && (r.toks[i-1].men >= 0 || !stopWords.has(r.toks[i-1].s)) && r.toks[i-1].brk < brkComma && i < k+6 {
		return false // "there's a plastic rivet each end"
	}
	if i > 1 && articles.has(r.toks[i-2].s) && r.toks[i-1].brk < brkComma && r.toks[i-1].men < 0 && a.verb >= 0 && !a.subject && r.plainVerb(r.toks[i].s) {
		switch r.toks[i-1].s {
		case "first", "last", "second", "third", "next", "same", "new", "old":
			return false // "back to the first slot"
		}
	}
	if r.toks[i].s == "torque" && r.toks[i].brk >= brkComma && (i == c.lo || !r.toks[i-1].is(wLeadsVerb)) {
		return false // "spindle nut, torque, look that up"
	}
	if a.verb >= 0 && !a.subject && r.onlyLike(c, i, a) {
		return false
	}
	if i == c.lo && r.toks[i].s == "left" && !r.nextKind(i).is(wDeterminer|wPronoun|wCountOf) {
		return false // "left wing mirror off"
	}
	if i == c.lo && r.nameOverLine(i) {
		return false
	}
	if r.toks[i].s == "knocked" && a.action.Name == "hammer" && i > 0 && (r.toks[i-1].s == "'ve" || r.toks[i-1].s == "have") && len(a.objects) > 0 {
		if next := r.mentions[a.objects[len(a.objects)-1]].hi; !r.kind(next).is(wParticle|wPlace) && r.word(next) != "with" {
			return false // "I've knocked the contact" was an accident
		}
	}
	if a.subject && a.action.Name == "fit" && len(a.objects) > 0 && r.mentions[a.objects[0]].head == "brake" && passiveBe.has(r.toks[i].s) && r.next(i) == "on" {
		return false // "truck's in park, brake's on"
	}
	if a.subject && a.action.Name == "fit" && r.wornOut(i, a.hi) {
		return false
	}
	if a.verb == i && !a.subject && left[a.action.Name] != "" && len(a.objects) > 0 && r.plainVerb(r.toks[i].s) {
		if m := &r.mentions[a.objects[0]]; m.kind == lexicon.Tool && m.from == i+1 && m.lo == i+1 && !m.plural && r.toks[i].brk == brkNone {
			return false // "line nut, flare wrench": the name of a tool
		}
	}
	if i == c.lo {
		n := r.next(i)
		return !(r.toks[i].s == "stuff" && i > 0 && r.toks[i-1].brk < brkComma && !r.prevKind(i).is(wLeadsVerb|wSubject|wOpener) || r.toks[i].s == "stuck" || (r.toks[i].s == "knock" || r.toks[i].s == "stuff") && n == "at")
	}
	p := r.toks[i-1].s
	if r.toks[i].s == "back" && r.toks[i-1].brk < brkComma && (r.toks[i-1].men >= 0 || p == "it" || p == "them" || p == "that") {
		return false // "swing the motor back out"
	}
	if r.toks[i].s == "torque" && (r.toks[i-1].men >= 0 || p == "much" || p == "for" || p == "with" || r.next(i) == "is" || r.next(i) == "'s" || r.next(i) == "for" || r.next(i) == "by" || r.next(i) == "at" || r.next(i) == "figure" || r.next(i) == "spec" || r.next(i) == "value" || r.next(i) == "setting") {
		return false
	}
	if l := r.lex.Lemmas(r.toks[i].s); len(l) > 0 && l[0] == "kill" && a.action.Name == "switch off" {
		return len(a.objects) > 0 && switched.has(r.mentions[a.objects[0]].head)
	}
	switch w, n := r.toks[i].s, r.next(i); {
	case w == "left" && r.toks[i-1].brk >= brkComma && !r.nextKind(i).is(wDeterminer|wPronoun|wCountOf), // "left cap out, left brush out"
		w == "thread" && (p == "regular" || p == "normal" || p == "standard" || p == "fine" || p == "coarse" || p == "hand" || p == "left" || p == "right" || p == "handed" || p == "same" || p == "ordinary"), // "it's regular thread on this one"
		w == "fit" && fits.has(p), // "it's a nice slip fit"
		w == "stuff" && (prepositions.has(n) && n != "in" || !leadsVerb.has(p) && !subjects.has(p) && !openers.has(p)), // "the high heat stuff"
		w == "open" && (p == "held" || p == "left" || p == "propped" || p == "wedged" || p == "stays"),
		w == "set" && (p == "same" || p == "whole" || p == "full" || p == "complete"),
		w == "set" && (p == "have" || p == "has") && (len(a.objects) == 0 || r.mentions[a.objects[0]].hi < i) && r.word(i-2) != "i" && r.word(i-2) != "you", // "the shoes have set"
		w == "heat" && (p == "high" || p == "low" || p == "more"),
		w == "smear" && (p == "thin" || p == "light" || p == "small" || p == "little" || p == "tiny" || p == "thick"),
		w == "stuck" && !subjects.has(p) && p != "'ve" && p != "and" && p != "then" && p != "just":
		return false
	}
	if r.toks[i].s == "saw" && a.verb >= 0 && (subjects.has(p) || p == "never" || p == "ever") {
		return false // of seeing
	}
	if a.verb >= 0 && !a.subject && r.toks[i-1].brk <= brkPause && notVerbAfter.has(p) && r.plainVerb(r.toks[i].s) {
		return false // "the old bash it with a hammer kind", "a tiny knock in it", "more sand than grease"
	}
	if n := r.next(i); i-2 >= c.lo && a.verb >= 0 && !a.subject && (articles.has(r.toks[i-2].s) || r.toks[i-2].s == "this") && r.toks[i-1].brk == brkNone && r.toks[i].brk == brkNone && !subjects.has(p) && !openers.has(p) && !strings.HasSuffix(p, "s") && n != "" && i+1 < c.hi && !determiner.has(n) && !pronounsObj.has(n) && !prepositions.has(n) && !stopWords.has(n) && r.toks[i+1].men < 0 && len(a.objects) == 0 {
		return false // "this rubber heat mat": what it is for
	}
	if (p == "that" || p == "this") && i-2 >= c.lo && r.toks[i-2].is(wVerb) && r.plainVerb(r.toks[i-2].s) && r.toks[i-2].brk < brkPause && r.toks[i-1].brk < brkPause && a.verb >= 0 && !a.subject && a.pronoun == "" && a.hi > i+1 && r.plainVerb(r.toks[i].s) {
		return false // "knock that stake up with a punch"
	}
	if p == "the" || p == "a" || p == "an" || p == "no" && a.verb >= 0 || p == "my" || p == "your" || (p == "its" || p == "their") && a.action.Name != "torque" || p == "nice" || p == "good" || p == "of" || p == "some" || p == "any" {
		return false
	}
	return true
}

// wornOut tells whether "gone on" up to token hi tells that a thing has had it, and not that it
// has gone back: "the bearing's gone on this one", "… on the left side", "… on me".
func (r *reading) wornOut(i, hi int) bool {
	if r.word(hi-1) != "on" || r.word(hi-2) != "gone" || r.toks[hi-1].brk >= brkComma {
		return false
	}
	switch w, n := r.word(hi), r.next(hi); w {
	case "me", "him", "her":
		return true
	case "this", "that", "both", "one", "each":
		return n == "side" || n == "end" || n == "one" || n == "corner" || n == "wheel" || hi < len(r.toks) && r.toks[hi].brk >= brkComma
	case "the":
		return sideOf[n] != "" || r.nextKind(hi).is(wPlace) || strings.HasSuffix(n, "side")
	}
	return false
}

// nameOverLine tells whether a word that begins a line is what the line before was about to name:
// "don't blow that | dust out".
func (r *reading) nameOverLine(i int) bool {
	if i < 2 || i+1 >= len(r.toks) || r.toks[i-1].brk >= brkComma || r.toks[i-2].brk >= brkComma {
		return false
	}
	switch before := r.toks[i-2].s; r.toks[i-1].s {
	case "the", "a", "an", "my", "your":
		return true
	case "rubber", "little", "plastic", "metal", "small", "big":
		// "cap it with this little rubber | vacuum cap"
		opens := func(w string) bool { return articles.has(w) || w == "this" || w == "that" }
		m := r.toks[i+1].men
		return m >= 0 && r.mentions[m].from == i+1 && !r.mentions[m].definite && (opens(before) || opens(r.word(i-3)))
	case "that", "this":
		return before != "do" && before != "did" && !stopWords.has(before) && i > 2 && (r.kind(i-3).is(wLeadsVerb) || strings.HasSuffix(r.toks[i-3].s, "n't") || r.toks[i-3].s == "never")
	}
	return false
}

// onlyLike tells whether a word of work says what a thing is like or how far, or only stops the
// talk: "slotted on the old ones", "fibre, soaking", "rusted plumb through", "wait, the other plug".
func (r *reading) onlyLike(c *clause, i int, a *act) bool {
	t, next := &r.toks[i], r.nextKind(i)
	switch {
	case t.s == "slotted":
		return r.next(i) == "on" || i+1 < c.hi && t.brk >= brkComma
	case t.s == "empty":
		return len(a.objects) == 0 && a.pronoun == "" && (next.is(wNumber|wCountOf) || next.is(wPreposition)) // "run it empty five minutes"
	case i > c.lo && r.toks[i-1].s == "keeps":
		return true // "the burner keeps locking out"
	case (t.s == "waiting" || t.s == "wait") && r.waitsFor(c, i):
		return true
	case t.s == "wait":
		return t.brk >= brkComma && r.next(i) != "until"
	case t.s == "plumb":
		return i > c.lo && t.brk < brkComma && !next.is(wDeterminer|wPronoun) && strings.HasSuffix(r.toks[i-1].s, "ed")
	case strings.HasSuffix(t.s, "ing"):
		return t.brk >= brkComma && a.pronoun == "" && !a.unknown && a.hi == i+1 && len(a.objects) == 1 && r.mentions[a.objects[0]].hi <= i && (i == c.lo || r.toks[i-1].brk >= brkComma)
	}
	return false
}

// waitsFor tells of "I'm waiting on the shim": for what is to come, and no step. "Wait for the
// housing to cool" is one.
func (r *reading) waitsFor(c *clause, i int) bool {
	if w := r.next(i); i+1 >= c.hi || w != "on" && w != "for" {
		return false
	}
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.from >= i+2 && m.lo <= i+5 {
			return m.kind&(lexicon.Part|lexicon.Fastener) != 0 && (m.hi >= c.hi || r.toks[m.hi].s != "to" || r.next(m.hi) == "come" || r.next(m.hi) == "arrive")
		}
	}
	return false
}

// namesNow tells whether a word of work names something where it stands: another verb is said
// of it, it stands in a list of parts, or where what is named stands.
func (r *reading) namesNow(c *clause, i int, a *act) bool {
	t, next := &r.toks[i], r.next(i)
	if i+1 >= c.hi {
		next = ""
	}
	if t.brk < brkComma && (tellsOf.has(next) || r.movesItself(i+1) && thirdForms.has(next)) {
		return true // "the file goes in the drawer", "heat would do it", "the one we filed goes in"
	}
	if k := a.hi; a.pronoun == "" && len(a.objects) == 0 && a.hi > i+1 && r.toks[k-1].brk < brkComma && k < c.hi && (r.toks[k].s == "'s" || r.toks[k].s == "is") {
		return true // "the shut off's closed"
	}
	if t.s == "clean" && (next == "off" || next == "through" || next == "out") && i > c.lo && r.toks[i-1].men >= 0 && r.toks[i-1].brk == brkNone && (i-2 < c.lo || !r.toks[i-1].is(wOff|wOn)) {
		return true // "you'd twist the head clean off it"
	}
	if t.s == "flat" && t.brk < brkComma && next != "" && r.toks[i+1].men < 0 && !r.toks[i+1].is(wDeterminer|wPronoun) {
		return true // "flat side to the drum", "flat on the ground"
	}
	if len(a.objects) > 0 {
		for k := a.hi - 1; k < min(r.mentions[a.objects[0]].from, c.hi); k++ {
			if r.toks[k].s == "is" || r.toks[k].s == "'s" || r.toks[k].s == "was" {
				return true // "what you're looking for is the bore"
			}
		}
	}
	if (next == "one" || next == "ones") && t.brk < brkComma && (asAdj.has(t.s) || i > c.lo+1 && r.toks[i-1].is(wDropAdj) && r.toks[i-2].is(wDeterminer) && r.toks[i-1].brk < brkComma) {
		return true // "clean ones", "the big pinch one"
	}
	if !r.plainVerb(t.s) {
		return false
	}
	switch {
	case next == "and" && t.brk >= brkComma && a.pronoun == "" && len(a.objects) > 0 && r.mentions[a.objects[0]].from == i+2 && r.mentions[a.objects[0]].hi < c.hi && r.movesItself(r.mentions[a.objects[0]].hi):
		return true // "the motor slides forward, push, and the belt goes slack"
	case i > c.lo && r.toks[i-1].brk < brkComma && becomes.has(r.toks[i-1].s):
		return true // "the belt goes slack"
	case (next == "it" || next == "they" || next == "that") && t.brk >= brkComma:
		return r.movesItself(i+2) || wentBy.has(r.word(i+2)) // "ten pitch, it cost me"
	case (next == "it" || next == "they") && wentBy.has(r.word(i+2)) && r.toks[i+1].brk < brkComma:
		return true // "the grease it came with"
	case i > c.lo && r.toks[i-1].brk < brkComma && (r.toks[i-1].s == "at" || r.toks[i-1].s == "per" || r.toks[i-1].s == "from"):
		return true // "at turn four"
	case i > c.lo+1 && r.toks[i-1].brk < brkComma && r.toks[i-2].s == "like" && !stopWords.has(r.toks[i-1].s) && !openers.has(r.toks[i-1].s) && !dropWords.has(r.toks[i-1].s):
		return true // "like shoe polish"
	}
	if a.pronoun != "" || next == t.s || r.nameAt(i) == 0 || len(a.objects) > 0 && r.mentions[a.objects[0]].definite {
		return false
	}
	k := i + 1
	if particle.has(next) && t.brk < brkComma {
		k++ // "two nuts, cap up, shims"
	}
	return r.toks[k-1].brk >= brkComma && (i == c.lo || r.toks[i-1].brk >= brkComma || r.toks[i-1].s == "and" && i > 1 && r.toks[i-2].men >= 0) && (k > i+1 || len(a.objects) > 0)
}

var (
	tellsOf    = set("would will 'll could should must might can has was were")
	thirdForms = set("goes comes stays sits runs slides drops falls lifts pops lives moves sticks hangs fits flies")
	becomes    = set("goes gone stays stayed feels looks runs")
	wentBy     = set("came cost went had was is 's comes goes costs")
)

// notVerbAfter are the words after which a word of work is a name.
var notVerbAfter = set("old quick little proper bloody new whole tiny slight faint loud dull sharp nasty with than more enough such per")

// match matches one pattern with its verb at i. The thing may stand in the gap, at most eight words long.
func (r *reading) match(c *clause, i int, p *lexicon.Pattern) (act, int, bool) {
	a := act{action: p.Action, lo: i, hi: i + 1, verb: i, subject: p.Subject}
	if p.Words[0] == "get" && !p.Subject && i+1 < c.hi && strings.HasSuffix(r.toks[i+1].s, "ed") && r.toks[i+1].men < 0 && r.isVerbForm(r.toks[i+1].s) {
		return a, 0, false // "they're getting pressed out"
	}
	if p.Words[0] == "have" && p.Action.Name == "remove" && (r.toks[i].s != "had" && r.toks[i].s != "have" && r.toks[i].s != "having" || i+1 < c.hi && r.toks[i+1].men < 0 && (r.toks[i+1].is(wBetween) || r.isVerbForm(r.toks[i+1].s))) {
		return a, 0, false // "I've slackened both off": of another verb
	}
	if p.Words[0] == "do" && i+1 < c.hi && r.isVerbForm(r.toks[i+1].s) && r.toks[i+1].men < 0 {
		return a, 0, false // "I did look this one up"
	}
	k := i + 1
	gapMentions := 0
	for wi := 1; wi < len(p.Words); wi++ {
		want := p.Words[wi]
		limit := k
		if p.Gap == wi {
			limit = k + lexicon.GapWords
		} else if p.Subject || p.Gap < 0 {
			limit = k + lexicon.Between // "comes right out", "goes back on": one word between is fine
		}
		if p.Words[wi-1] == "a" && !p.Subject && limit == k && k < c.hi && gently.has(r.toks[k].s) {
			limit = k + 1 // "give it a light rub"
		}
		found := -1
		for j := k; j <= limit && j < c.hi; j++ {
			if r.toks[j].s == want || wi < len(p.Words)-1 && r.toks[j].is(wForm) && want == r.lemma1(r.toks[j].s) {
				if m := r.toks[j].men; m >= 0 && !(p.Words[0] == "give" && wi == len(p.Words)-1 && r.mentions[m].lo == j && r.mentions[m].hi == j+1) && !(p.Gap > 0 && p.Gap != wi && (r.mentions[m].kind&(lexicon.Part|lexicon.Fastener) == 0 || p.Words[wi-1] == "with")) {
					continue
				}
				found = j
				break
			}
			if p.Gap == wi {
				if j > k && (r.toks[j].s == "that" || r.toks[j].s == "which") && j+1 < c.hi && r.isVerbForm(r.toks[j+1].s) {
					break // "got this pipe that fits over it"
				}
				if j+2 < c.hi && r.toks[j+1].s == "and" && r.toks[j+2].s == want && (r.toks[j].is(wReturning) || r.toks[j].s == "back" || r.toks[j].s == "out") {
					continue // "knock both pins up and out"
				}
				if j == k && r.toks[j].men < 0 && leadsToPlace.has(r.toks[j].s) {
					break // "let it hang over the top tube on a strap"
				}
				if j > k && r.toks[j].men < 0 && (subordinate.has(r.toks[j].s) || r.isFiniteVerb(j) || r.toks[j].is(wPreposition) && r.toks[j].s != "of") {
					break
				}
				if r.toks[j].brk >= brkComma && !r.nameFollows(c, j+1) {
					break // "got two, one clicks in …"
				}
			} else if w := &r.toks[j]; limit == k+1 && j == k && gently.has(w.s) {
				continue
			} else if w.men >= 0 || w.is(wPreposition) || !w.is(wBetween) && !strings.HasSuffix(w.s, "ly") {
				break
			}
		}
		if found < 0 {
			return a, 0, false
		}
		if w := r.toks[found-1].s; p.Gap == wi && found-1 > k && (p.Words[0] == "get" || p.Words[0] == "have") && r.toks[found-1].men < 0 && irregular.has(w) {
			return a, 0, false // "I've got the deck flipped over"
		}
		if p.Gap == wi {
			if j := found - 1; j == k && r.toks[j].men < 0 && (r.toks[j].s == "that" || r.toks[j].s == "this" || r.toks[j].s == "these" || r.toks[j].s == "those") {
				a.pronoun = r.standsFor(j) // "pull that apart"
			}
			for j := k; j < found; j++ {
				if m := int(r.toks[j].men); m >= 0 && a.pronoun != "it" && a.pronoun != "them" && a.pronoun != "her" && (len(a.objects) == 0 || a.objects[len(a.objects)-1] != m) {
					a.objects = append(a.objects, m)
					gapMentions++
				} else if r.pronounAt(c, j) && a.pronoun == "" {
					a.pronoun = r.standsFor(j)
				} else if w := r.toks[j].s; !stopWords.has(w) && !dropWords.has(w) && !dropAdj.has(w) && !r.toks[j].is(wBetween) && r.toks[j].qty < 0 && countOf[w] == 0 {
					a.unknown = true // "get all the sludge out", and not "screw it back in"
				}
			}
		}
		if p.Gap == wi && len(a.objects) == 0 && a.pronoun == "" {
			for j := k; j < found; j++ {
				a.unknown = a.unknown || !r.toks[j].is(wBetween) // "get a bit more out of it"
			}
		}
		k = found + 1
	}
	a.hi = k
	if p.Words[0] == "have" && p.Action.Name == "remove" && (k-i > 6 || a.unknown || r.next(i) == "a" || r.next(i) == "one" && k > i+3 || k < c.hi && (r.toks[k].s == "of" || r.toks[k].s == "your" || r.toks[k].s == "my")) {
		return a, 0, false // "you'll have the skin off your knuckles", "I had a dog lead out of one of these"
	}
	if m := r.toks[k-1].men; m >= 0 && p.Words[0] == "give" {
		r.mentions[m].kind = 0 // "give the pedal a few pumps": no pumps
	}
	if p.Action.Name == "fit" && r.toks[i].s == "got" && k < c.hi && r.toks[k-1].brk == brkNone && (r.toks[k].is(wDeterminer) || r.toks[k].men >= 0) {
		return a, 0, false // "they've each got a nut on the back": had, not put
	}
	n := len(p.Words)
	if n > 1 && p.Words[n-1] == "over" && p.Action.Name == "fit" && (r.word(k) == "there" || r.word(k) == "here" || r.word(k) == "by") {
		return a, 0, false // put away, not on
	}
	if p.Subject {
		if p.Words[0] == "be" && k < c.hi && r.toks[k-1].brk <= brkPause && p.Action.Name != "none" && !(p.Words[n-1] == "off" && i > c.lo && r.toks[i-1].men >= 0 && k+1 < c.hi && r.toks[k+1].men >= 0) {
			// "it's in the tank" tells a place, "it's in" that it was fitted
			if w := r.toks[k].s; determiner.has(w) && w != "one" && !(countOf[w] > 1 && offWords.has(p.Words[n-1])) || w == "me" || r.toks[k].men >= 0 && r.mentions[r.toks[k].men].count < 2 {
				return a, 0, false
			}
		}
		if p.Action.Name == "none" {
			return a, k, true
		}
		if w := r.word(k); p.Words[0] == "be" && p.Action.Name == "fit" && r.toks[k-1].s == "on" && countOf[w] > 0 && r.toks[k-1].brk < brkComma && k < c.hi {
			if mi := r.nameWithin(c, k, 4); mi >= 0 && r.mentions[mi].kind&lexicon.Fastener != 0 && r.mentions[mi].from <= k {
				return a, 0, false // "the idler's on one bolt": what holds it
			}
		}
		if p.Words[0] == "be" && p.Action.Name == "fit" && r.word(k) == "with" && (r.next(k) == "a" || r.next(k) == "just" || countOf[r.next(k)] > 0) {
			if mi := r.nameWithin(c, k+1, 4); mi >= 0 && r.mentions[mi].kind&lexicon.Fastener != 0 {
				return a, 0, false // "the lever is on with a pinch bolt": what holds it
			}
		}
		return r.withSubject(c, a, k)
	}
	if p.Action.Name == "none" {
		return a, k, true
	}
	if len(a.objects) > 0 {
		a.pronoun = ""
	}
	if len(a.objects) == 0 && a.pronoun == "" {
		if m := r.doneToIt(c, i, k); m >= 0 {
			a.objects = []int{m} // "cable unhooked, arms wide open"
			return a, max(k, i+1), true
		}
		if m := r.frontedHere(c, i, k); m >= 0 {
			a.objects = []int{m} // "cable I pull away, small hose …"
			return a, max(k, i+1), true
		}
		r.objectsAfter(c, &a, k, p.Gap == len(p.Words))
	}
	if len(a.objects) == 0 && a.pronoun == "" && !a.unknown {
		if i > c.lo+1 && k >= c.hi && r.plainVerb(r.toks[i].s) && r.toks[i-1].men < 0 && (r.toks[i-1].is(wDropAdj) || colours.has(r.toks[i-1].s)) {
			return a, 0, false // "the blue stuff"
		}
		r.objectBefore(c, &a)
	}
	if len(a.objects) == 0 && a.pronoun == "" && r.toks[i].s == "fit" && i > c.lo && (r.toks[i-1].s == "will" || r.toks[i-1].s == "'ll" || r.toks[i-1].s == "doesn't" || r.toks[i-1].s == "to") {
		return a, 0, false // "fifteen sixteenths will fit"
	}
	return a, max(k, i+1), true
}

// irregular are the participles without "-ed" of what somebody has or gets done.
var irregular = set("spun wound run hung slid bent driven drawn cut")

// gently are the words for how hard or how long something is done.
var gently = set("light good quick gentle little proper decent wee nice sharp final fine fair thorough big hard soft firm last bit")

// leadsToPlace are the words after which a place is told and no thing.
var leadsToPlace = set("over under through from into onto at behind between against with by")

// nameFollows tells whether a name begins at j, its determiners included.
func (r *reading) nameFollows(c *clause, j int) bool {
	return j < c.hi && (r.toks[j].men >= 0 || r.toks[j].s == "and" || r.leadsMention(c, j))
}

// standsFor gives the pronoun at token j, "all" where it is said of all that there
// is: "get all that out", "clean all of it".
func (r *reading) standsFor(j int) string {
	w := r.toks[j].s
	if p := r.prev(j); w == "one" && (p == "every" || p == "each") {
		return "them" // "crack every one before you take any out"
	}
	if p := r.prev(j); (w == "that" || w == "this" || w == "it") && j > 0 && (p == "all" || p == "of" && r.word(j-2) == "all") {
		return "all"
	}
	return w
}

var colours = wordsOf("colours")

// pronounAt tells whether the word at j stands for a thing by itself.
func (r *reading) pronounAt(c *clause, j int) bool {
	w := r.toks[j].s
	if r.toks[j].men >= 0 {
		return false
	}
	next := ""
	if j+1 < c.hi && r.toks[j].brk <= brkPause {
		next = r.toks[j+1].s
	}
	if r.toks[j].is(wCountOf) && countOf[w] > 1 && r.toks[j].qty < 0 {
		// "loosen all four", "take the two out"
		return (next == "" || next == "of" || stopWords.has(next) && countOf[next] == 0 || prepositions.has(next)) && !r.leadsMention(c, j)
	}
	if w == "her" || w == "him" {
		return next == "" || stopWords.has(next) && !dropAdj.has(next) || prepositions.has(next) || particle.has(next)
	}
	if !r.toks[j].is(wPronoun) {
		return false
	}
	switch w {
	case "one", "ones":
		return j > c.lo && (r.toks[j-1].s == "every" || r.toks[j-1].s == "each" || definiteWord.has(r.toks[j-1].s) || r.toks[j-1].is(wPlace|wDropAdj) || r.toks[j-1].s == "first" || r.toks[j-1].s == "last" || r.toks[j-1].s == "second")
	case "that", "this", "these", "those":
		if next == "way" {
			return false // "pushing that way"
		}
		if particle.has(next) && w != "this" && !r.leadsMention(c, j) {
			return true // "flip those back"
		}
		if countOf[next] > 1 && (w == "those" || w == "these") && j+2 <= c.hi && !r.leadsMention(c, j) {
			return true // "take those two out"
		}
		// "that rust" is no pronoun
		return next == "" || stopWords.has(next) || prepositions.has(next) || dropWords.has(next) || next == "till" || next == "until" || strings.HasSuffix(next, "ly") || next == "one"
	}
	return true
}

// between are the words that may stand inside a phrase: "comes right off".
var between = set("right straight back all just already now then still both also again out of")

func (r *reading) lemma1(w string) string {
	if l := r.lex.Lemmas(w); len(l) > 0 {
		return l[0]
	}
	return w
}

// isFiniteVerb tells whether a verb of its own clause stands at j, so that no object gap runs across it.
func (r *reading) isFiniteVerb(j int) bool {
	s := r.toks[j].s
	return s == "is" || s == "are" || s == "'re" || s == "'s" || s == "was" || s == "and" && (r.pastForm(r.next(j)) && r.toks[j+1].men < 0 || r.movesItself(j+1) || r.nextKind(j).is(wSubject) && !r.nextKind(j).is(wPronoun) || r.next(j) == "it" || r.next(j) == "they")
}

// movesItself tells whether the word at j says that a thing moves: "tips forward and lifts out".
func (r *reading) movesItself(j int) bool {
	w := r.word(j)
	return j < len(r.toks) && r.toks[j].men < 0 && strings.HasSuffix(w, "s") && r.lemma1(w) != w && r.isVerbForm(w)
}

// objectsAfter takes the things named right after the verb, with what is joined to them by "and"
// or a comma. Where the thing ends the phrase, its last word may be a preposition: "cut through ~".
func (r *reading) objectsAfter(c *clause, a *act, k int, ends bool) {
	steps := 0
	determined := false // "scrape the crud off" is of a thing, "stone cold" of none
	for j := k; j < c.hi && steps < 7; j++ {
		m := int(r.toks[j].men)
		if j == k && r.toks[j].s == "and" && a.action.Name == "discard" {
			return // "out it comes, bin, and the bracket": what went before
		}
		if m < 0 {
			if len(a.objects) == 0 && r.pronounAt(c, j) && !r.leadsMention(c, j) {
				a.pronoun = r.standsFor(j)
				return
			}
			if w := r.toks[j].s; len(a.objects) == 0 && !stopWords.has(w) && !dropWords.has(w) && !dropAdj.has(w) && !placeWords.has(w) && countOf[w] == 0 && r.toks[j].qty < 0 && !r.leadsMention(c, j) && !strings.HasSuffix(w, "ly") && !whichWay.has(w) && !fractionWord.has(w) {
				a.unknown = true // a thing that no list knows
				a.bare = !determined && w != "everything" && k == a.lo+1
				return
			}
			determined = determined || r.toks[j].is(wDeterminer) || r.toks[j].qty >= 0
			if w := r.toks[j].s; w == "with" || w == "using" || w == "until" || w == "from" || len(a.objects) == 0 && leadsPlace.has(w) && a.action.Name == "fit" {
				break
			}
			if len(a.objects) > 0 && r.toks[j].s != "and" && !r.toks[j].is(wDeterminer) && r.toks[j].brk <= brkPause && !r.leadsMention(c, j) {
				break
			}
			steps++
			continue
		}
		mm := &r.mentions[m]
		if mm.prep == "of" && len(a.objects) == 0 && !r.partitive(c, mm) && !(ends && mm.from == k) {
			a.unknown = true // "the sizes of all them bolts"
			return
		}
		if mm.prep != "" && !(len(a.objects) == 0 && (mm.prep == "off" || mm.prep == "out" || mm.prep == "up" || mm.prep == "down" || mm.prep == "in" && a.verb == mm.from-2 || mm.prep == "on" && a.verb == mm.from-2 || mm.prep == "of" || mm.prep == "for" && a.action.Name == "inspect" || mm.prep == "at" || ends && mm.from == k && k > a.lo+1)) {
			if len(a.objects) > 0 {
				break
			}
			// "tuck behind the spring": no object, but for verbs of care the place is the thing
			if mm.prep != "with" && mm.prep != "using" && (a.action.Name == "clean" || a.action.Name == "inspect" || a.action.Name == "lubricate") {
				a.objects = append(a.objects, m)
			}
			return
		}
		if len(a.objects) > 0 && mm.hi < c.hi && r.toks[mm.hi-1].brk < brkComma && (r.movesOff(mm.hi) || r.toks[mm.from-1].brk >= brkComma && (r.toks[mm.hi].is(wReturning) || placing.has(r.toks[mm.hi].s) && r.toks[mm.hi].s != "to")) {
			break // "pull the last bolt and the gearbox slid back", "line up the spacers, axle through"
		}
		if len(a.objects) > 0 && mm.kind == lexicon.Consumable && r.mentions[a.objects[0]].kind&lexicon.Consumable == 0 {
			break // "clean the pivot, grease on it"
		}
		a.objects = append(a.objects, m)
		j = mm.hi - 1
		steps = 4
		if r.toks[j].brk == brkSentence {
			break
		}
	}
}

// movesOff tells whether the word at token i says that what stands before it moved: "slid",
// "comes", "dropped".
func (r *reading) movesOff(i int) bool {
	switch r.toks[i].s {
	case "slid", "came", "fell", "went", "popped", "dropped", "swung", "broke", "comes", "slides", "falls", "drops", "pops", "goes", "lifts", "swings", "pulls", "will", "'ll", "just", "should", "is", "'s", "was":
		return r.toks[i].men < 0
	}
	return false
}

// leadsPlace are the words after which a place is named and not what is put there.
var leadsPlace = set("under underneath behind between beneath")

// partitive tells whether what stands before "of" counts or measures the thing: "all of the bolts", "the pair of clips".
func (r *reading) partitive(c *clause, m *mention) bool {
	if m.from-2 < c.lo {
		return true
	}
	w := r.toks[m.from-2].s
	return countOf[w] > 0 || r.toks[m.from-2].qty >= 0 || r.toks[m.from-2].men >= 0 || pronounsObj.has(w) || partWords.has(w) || offWords.has(w) || onWords.has(w)
}

var partWords = set("all rest pair set couple lot each most half end ends bunch handful row either some top bottom back front off piece bit")

var whichWay = set("clockwise anticlockwise counterclockwise straight square flush home upright sideways forward forwards backwards backward crosswise diagonally gently")

// leadsMention tells whether the token belongs to the determiners of a mention that follows.
func (r *reading) leadsMention(c *clause, j int) bool {
	for k := j + 1; k < c.hi && k < j+6; k++ {
		if m := r.toks[k].men; m >= 0 {
			return r.mentions[m].from <= j
		}
	}
	return false
}

// objectBefore finds a fronted object: "that bolt you just undo".
func (r *reading) objectBefore(c *clause, a *act) {
	doer := false
	for i := a.lo - 1; i >= c.lo && i > a.lo-5 && !doer; i-- {
		switch r.toks[i].s {
		case "to":
			w := r.prev(i)
			doer = w != "has" && w != "needs" && w != "wants" && w != "had"
		case "i", "you", "they", "'ll", "gonna", "just", "then", "and":
			doer = true
		}
	}
	passive := a.lo > c.lo && getsDone.has(r.toks[a.lo-1].s)
	had := !passive && r.hadDone(c, a)
	shut := a.verb > c.lo && r.toks[a.verb].s == "shut" && r.toks[a.verb-1].men >= 0 && (a.hi == c.hi || r.toks[a.verb].brk >= brkComma) // "drain cock shut"
	if !shut && !doer && !passive && !had && a.lo > c.lo && !strings.HasSuffix(r.toks[a.verb].s, "ed") && !strings.HasSuffix(r.toks[a.verb].s, "ing") && a.hi == a.lo+1 {
		return // "it was stuck shut": nobody does it
	}
	best := -1
	for _, m := range c.mentions {
		mm := &r.mentions[m]
		if mm.hi == a.lo && mm.prep == "with" && mm.kind&(lexicon.Fastener|lexicon.Part) != 0 && !doer {
			a.objects = []int{m} // "hold the shaft with the bolt put back in"
			return
		}
		if mm.hi <= a.lo && mm.prep == "" && mm.kind&(lexicon.Fastener|lexicon.Part) != 0 {
			best = m
		}
	}
	if best >= 0 {
		a.objects = []int{best}
		return
	}
	if m := r.frontedBefore(c, a); m >= 0 {
		a.objects = []int{m}
		return
	}
	for j := a.lo - 1; j >= c.lo && j > a.lo-6; j-- {
		s := r.toks[j].s
		if had && j == a.lo-1 && r.toks[j].men < 0 && r.toks[j].is(wPronoun) {
			a.pronoun = s // "I've got them spun on"
			return
		}
		if passive && j == a.lo-2 && (s == "it" || s == "they" || s == "which") && r.toks[j].men < 0 {
			if a.pronoun = "it"; s == "they" {
				a.pronoun = "them"
			}
			return
		}
		after := (s == "it" || s == "them") && j >= 2 && r.toks[j-1].s == "'s" && j == a.lo-1 // "that's it done up"
		if (s == "that" || s == "these" || s == "those" || s == "this" || after) && r.toks[j].men < 0 {
			a.pronoun = s
			return
		}
	}
}

// hadDone tells whether the verb of an act says what somebody has or gets done to a thing
// named or meant right before it: "I've got those spun on", "get the nut wound down".
func (r *reading) hadDone(c *clause, a *act) bool {
	if a.verb-2 < c.lo || r.plainVerb(r.toks[a.verb].s) && r.lemma1(r.toks[a.verb].s) == r.toks[a.verb].s {
		return false
	}
	if t := &r.toks[a.verb-1]; t.men < 0 && !t.is(wPronoun) || t.brk >= brkComma {
		return false
	}
	for i := a.verb - 2; i >= c.lo && i > a.verb-7; i-- {
		switch r.toks[i].s {
		case "got", "get", "had", "getting":
			return true
		}
	}
	return false
}

// getsDone are the words before a participle by which a thing has it done to it.
var getsDone = set("gets get getting got is are 's 're was were been being be")

// doneToIt gives the thing right before a verb in its past form that ends a
// phrase, where the thing begins it: "cable unhooked, arms wide open"; or -1.
func (r *reading) doneToIt(c *clause, i, k int) int {
	if i == c.lo || !strings.HasSuffix(r.toks[i].s, "ed") || k < c.hi && r.toks[k-1].brk < brkComma {
		return -1
	}
	mi := int(r.toks[i-1].men)
	if mi < 0 || r.toks[i-1].brk >= brkComma {
		return -1
	}
	m := &r.mentions[mi]
	if m.prep != "" || m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.from > c.lo && !r.toks[m.from-1].is(wOpener) && r.toks[m.from-1].s != "and" && r.toks[m.from-1].brk < brkComma {
		return -1
	}
	return mi
}

// frontedHere gives the thing that the clause begins with, where who does it and
// the verb at i follow at once, and nothing with an article comes after; or -1.
func (r *reading) frontedHere(c *clause, i, k int) int {
	for n := i; i > c.lo && i > n-3; i-- {
		if w := r.toks[i-1].s; w != "'d" && w != "'ve" && w != "had" && w != "have" && w != "already" && w != "just" {
			break // "the cable I'd undone to get at it"
		}
	}
	if i-2 < c.lo || r.toks[i-1].s != "i" || k < c.hi && r.toks[k].is(wDeterminer) && r.toks[k-1].brk < brkComma {
		return -1
	}
	mi := int(r.toks[i-2].men)
	if mi < 0 {
		return -1
	}
	m := &r.mentions[mi]
	if m.prep != "" || m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.from > c.lo && !r.toks[m.from-1].is(wOpener) && r.toks[m.from-1].s != "and" && r.toks[m.from-1].brk < brkComma {
		return -1
	}
	return mi
}

// frontedBefore gives the thing that the clause before ends on and does nothing
// with, where this one begins with who does it: "the water | I have closed",
// "new valve | I put in"; or -1.
func (r *reading) frontedBefore(c *clause, a *act) int {
	ci := int(r.toks[c.lo].cl)
	if ci == 0 || a.lo-c.lo > 4 || r.toks[c.lo].s != "i" && r.toks[c.lo].s != "you" {
		return -1
	}
	p := &r.clauses[ci-1]
	if p.sentence != c.sentence || r.toks[p.hi-1].brk >= brkSentence || len(p.mentions) == 0 || p.mood&(negated|asked|other|conditional|warned) != 0 {
		return -1
	}
	mi := p.mentions[len(p.mentions)-1]
	m := &r.mentions[mi]
	if m.hi != p.hi || m.prep != "" || r.inAct(ci-1, mi) || m.kind&(lexicon.Fastener|lexicon.Part|lexicon.Consumable) == 0 {
		return -1
	}
	if i := m.from - 1; i >= p.lo && !r.toks[i].is(wOpener) && !r.toks[i].is(wDrop) && r.toks[i].s != "and" && r.toks[i].brk < brkComma {
		return -1
	}
	return mi
}

// withSubject finds the thing that moves by itself, before the verb.
func (r *reading) withSubject(c *clause, a act, k int) (act, int, bool) {
	v := a.verb
	best := -1
	for _, m := range c.mentions {
		mm := &r.mentions[m]
		if mm.hi <= v && (mm.prep == "" || mm.prep == "of" && mm.of < 0) && (mm.kind&(lexicon.Fastener|lexicon.Part|lexicon.Consumable) != 0 || a.action.Name == "place") {
			best = m
		}
	}
	if best >= 0 && v-r.mentions[best].hi > 5 && !(r.toks[v-1].s == "and" && r.opens(c, &r.mentions[best])) {
		best = -1
	}
	for _, m := range c.mentions {
		if mm := &r.mentions[m]; best >= 0 && mm.kind == lexicon.Tool && mm.prep == "" && mm.hi == v && mm.from > r.mentions[best].hi {
			best = -1 // "the gear walks off the shaft and the key comes with it": not the shaft
		}
	}
	if best >= 0 && v-1 > r.mentions[best].hi && (r.toks[v-1].s == "it" || r.toks[v-1].s == "she") && r.toks[v-2].s == "and" {
		best = -1 // "two bolts out and it lifts off": not the bolts
	}
	if best >= 0 {
		a.objects = append(a.objects, best)
		// "seal, washer and bushing all come out": all that is joined before it
		for i := len(c.mentions) - 1; i >= 0; i-- {
			m := c.mentions[i]
			if m >= best || len(a.objects) == 0 {
				continue
			}
			next := a.objects[len(a.objects)-1]
			lo := r.mentions[m].hi
			hi := r.mentions[next].from
			if k := &r.mentions[m]; hi >= lo && k.kind != lexicon.Tool && (k.prep == "" || k.prep == "of" && k.of < 0) && (hi-lo == 1 && r.toks[lo].s == "and" || hi == lo && r.toks[lo-1].brk == brkComma) {
				a.objects = append(a.objects, m)
			} else {
				break
			}
		}
		return a, k, true
	}
	if ci := r.toks[c.lo].cl; ci > 0 && r.toks[c.lo].s == "and" && v == c.lo+1 && strings.HasSuffix(r.toks[v].s, "s") && r.clauses[ci-1].sentence == c.sentence {
		// "the new one gets a smear of grease | and goes in with a twist"
		if p := &r.clauses[ci-1]; len(p.mentions) > 0 {
			if m := &r.mentions[p.mentions[0]]; m.prep == "" && m.kind&(lexicon.Fastener|lexicon.Part) != 0 && r.opens(p, m) {
				a.objects = []int{p.mentions[0]}
				return a, k, true
			}
		}
	}
	if lo := r.unlisted(c, v, k); lo >= 0 {
		a.lo, a.unknown = lo, true // "the front goes back on": in no list
		return a, k, true
	}
	for j := v - 1; j >= c.lo && j >= v-4; j-- {
		s := r.toks[j].s
		if s == "he" && j == v-1 && strings.HasSuffix(r.toks[v].s, "s") && a.action.Name == "remove" && (k >= c.hi || r.toks[k-1].brk >= brkPause || r.toks[k].s == "and") && r.toks[k-1].is(wOff) {
			a.pronoun = "it" // "and he pops off": the cap
			return a, k, true
		}
		if s == "i" || s == "you" || s == "he" {
			return a, 0, false
		}
		if pronounsObj.has(s) || s == "they" || s == "she" {
			a.pronoun = s
			if n := r.next(v); s == "that" && v+1 < k && (n == "both" || n == "all") {
				a.pronoun = "them" // "that's both out"
			}
			return a, k, true
		}
	}
	if r.toks[v].s == "goes" || r.toks[v].s == "comes" || r.toks[v].s == "slides" {
		// "in goes the new seal": the thing after the verb
		for j := k; j < c.hi && j < k+4; j++ {
			if m := int(r.toks[j].men); m >= 0 && r.mentions[m].prep == "" {
				a.objects = []int{m}
				return a, k, true
			}
		}
	}
	return a, 0, false
}

// unlisted gives where a thing that no list knows is named right before a verb at v
// that says it comes off or goes back, the particle before k: "the front goes back
// on", "the whole top comes off"; or -1.
func (r *reading) unlisted(c *clause, v, k int) int {
	switch r.lemma1(r.toks[v].s) {
	case "come", "go", "slide", "lift", "pull", "slip", "pop", "drop", "push", "click", "clip", "snap", "screw":
	default:
		return -1
	}
	last := r.toks[k-1].s
	back := r.toks[k-2].s == "back"
	if k < v+2 || !offWords.has(last) && !onWords.has(last) && last != "away" && last != "apart" || r.toks[v].s == "goes" && offWords.has(last) || k < c.hi && (r.toks[k].is(wDeterminer) || r.toks[k].s == "of") {
		return -1
	}
	i := v
	for i > c.lo && (r.toks[i-1].s == "just" || r.toks[i-1].s == "then" || r.toks[i-1].s == "now") {
		i--
	}
	nouns := 0
	for i > c.lo && nouns < 2 && r.toks[i-1].men < 0 && r.toks[i-1].qty < 0 && r.toks[i-1].brk <= brkPause {
		w := r.toks[i-1].s
		if noThing.has(w) || len(w) < 3 || r.toks[i-1].is(wPronoun|wDeterminer|wSubject|wLinking|wPreposition|wOpener|wDrop) || stopWords.has(w) && !frontOrTop.has(w) || strings.HasSuffix(w, "ly") || strings.HasSuffix(w, "ing") || r.isVerbForm(w) && !frontOrTop.has(w) && !(i-2 >= c.lo && articles.has(r.toks[i-2].s)) {
			break
		}
		nouns++
		i--
	}
	if nouns == 0 {
		return -1
	}
	for i > c.lo && (r.toks[i-1].s == "whole" || r.toks[i-1].s == "entire") {
		i--
	}
	if i > c.lo && definiteWord.has(r.toks[i-1].s) && r.toks[i-1].brk <= brkPause {
		i--
	} else if !back || !frontOrTop.has(r.toks[i].s) && nouns < 2 {
		return -1
	}
	for j := c.lo; j < i; j++ {
		if w := r.toks[j].s; !openers.has(w) && !dropWords.has(w) && w != "and" && w != "all" {
			return -1
		}
	}
	return i
}

// frontOrTop are the words for a place that also name the piece that is there.
var frontOrTop = set("front top bottom back side end middle")

// noThing are the words for what comes and goes by itself and is no piece of a machine.
var noThing = wordsOf("what is no piece of a machine")

// inAct tells whether something is said of what a clause does with a mention, be
// it that nothing is done: "I'm leaving the cover on".
func (r *reading) inAct(ci, mi int) bool {
	if r.idle[[2]int{ci, mi}] {
		return true
	}
	for _, ai := range r.clauses[ci].acts {
		for _, o := range r.acts[ai].objects {
			if o == mi {
				return true
			}
		}
	}
	return false
}

func (r *reading) partAmong(objects []int) bool {
	for _, mi := range objects {
		if r.mentions[mi].kind&(lexicon.Part|lexicon.Fastener) != 0 {
			return true
		}
	}
	return false
}

// chatter marks the clauses that are greeting, advertisement or aside: no step comes from them.
func (r *reading) chatter() {
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if c.mood&(aside|greeting) != 0 {
			for k := max(0, ci-2); k <= min(ci+2, len(r.clauses)-1); k++ {
				if !r.workIn(k) {
					r.clauses[k].chatter = true
				}
			}
			c.chatter = true
		}
	}
}

func (r *reading) workIn(ci int) bool {
	c := &r.clauses[ci]
	for _, ai := range c.acts {
		if len(r.acts[ai].objects) > 0 {
			return true
		}
	}
	for _, q := range c.qtys {
		if r.qtys[q].Kind == normalize.Torque {
			return true
		}
	}
	return false
}
