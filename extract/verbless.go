package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// numberByHand is the rule of fasteners that are only counted where they are started by hand.
const numberByHand = "number and by hand"

// fingerTight reads "two nuts on the studs, only finger tight" and "the two bolts
// at the back by hand", where no verb takes them.
func (r *reading) fingerTight(ci int) {
	c := &r.clauses[ci]
	if c.mood&notWork != 0 {
		return
	}
	if len(c.mentions) == 0 && len(c.acts) == 0 && c.hi-c.lo <= 9 {
		// "Both of them started, finger tight", "All just started"
		i := c.lo
		for i < c.hi && (openers.has(r.toks[i].s) || r.toks[i].s == "and" || r.toks[i].s == "again" || r.toks[i].s == "that" || r.toks[i].s == "'s") {
			i++
		}
		w := r.word(i)
		if i >= c.hi || w != "both" && w != "all" && w != "them" && w != "those" && countOf[w] < 2 {
			return
		}
		for k := i + 1; k < c.hi; k++ {
			if r.toks[k].s == "started" || handAt(r, k, c.hi) {
				r.addAct(ci, act{action: r.lex.Action("start by hand"), lo: i, hi: k + 1, verb: -1, pronoun: "them", subject: true, rule: numberByHand})
				return
			}
			if w := r.toks[k].s; linking.has(w) || w != "back" && r.isVerbForm(w) {
				return
			}
		}
		return
	}
	for k, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&lexicon.Fastener == 0 || m.prep != "" || r.inAct(ci, mi) {
			continue
		}
		hi := c.hi
		for _, o := range c.mentions[k+1:] {
			if r.mentions[o].prep == "" {
				hi = r.mentions[o].from
				break
			}
		}
		i := m.hi
		if w := r.word(i); i < hi && (w == "'s" || w == "is" || w == "are" || w == "'re") {
			i++ // "the bolts are just by hand"
		}
		for ; i < hi && !linking.has(r.toks[i].s) && !r.isVerbForm(r.toks[i].s); i++ {
			if handAt(r, i, hi) {
				x := act2(r.lex.Action("start by hand"), m.from, m.hi, mi)
				x.rule = "thing and by hand"
				r.addAct(ci, x)
				break
			}
		}
	}
}

// oneLaid reads "the old top one into the upper cup": where a thing goes that is
// named by no more than its place.
func (r *reading) oneLaid(ci int) {
	c := &r.clauses[ci]
	for i := c.lo; c.mood&notWork == 0 && i+2 < c.hi; i++ {
		// "new one in from the back", "belt off, new one on"
		w, n := r.toks[i+1].s, r.toks[i+2].s
		if r.toks[i].s != "new" || w != "one" && w != "ones" || !onWords.has(n) || !r.beginsNew(c, i) || i+3 < c.hi && r.toks[i+2].brk < brkComma && r.word(i+3) != "from" && r.word(i+3) != "and" {
			continue
		}
		r.addAct(ci, act{action: r.lex.Action("fit"), lo: i, hi: i + 3, verb: -1, pronoun: w, subject: true, rule: "one and place"})
		return
	}
	if c.mood&notWork != 0 || r.newOneAlone(ci) {
		return
	}
	first := c.hi
	for _, ai := range c.acts {
		first = min(first, r.acts[ai].lo)
	}
	for i := c.lo; i < min(c.hi, first); i++ {
		w, next, after := r.toks[i].s, r.next(i), r.word(i+2)
		if w == "one" || w == "ones" || w == "guy" || w == "fella" {
			if i > c.lo && i+1 < c.hi && r.toks[i].brk < brkComma && onWords.has(next) && (i+2 >= c.hi || r.toks[i+1].brk >= brkComma || handAt(r, i+2, c.hi) || after == "and" || leadsIn.has(after) || after == "from" || freshOne.has(r.toks[i-1].s) && i+2 < c.hi && !determiner.has(after) && !containers.has(after) && after != "order" && after != "stock" && after != "its" && after != "there" && after != "here" && after != "my") && r.toks[i-1].s != "this" && r.toks[i-1].s != "that" {
				x := act{action: r.lex.Action("fit"), lo: c.lo, hi: i + 2, verb: -1, pronoun: w, subject: true, rule: "one and particle"}
				if w != "one" && w != "ones" {
					x.pronoun = "one"
				}
				r.addAct(ci, x) // "new one in by hand"
				return
			}
			if i == c.lo || i+2 >= c.hi || r.toks[i].brk >= brkComma || !placing.has(next) || next == "to" || !determiner.has(after) && r.toks[i+2].men < 0 || !r.pronounAt(c, i) && w != "guy" && w != "fella" {
				return
			}
			for k := i + 2; k < min(c.hi, i+5); k++ {
				if aSpot.has(r.toks[k].s) {
					return // which one it is
				}
			}
			r.addAct(ci, act{action: r.lex.Action("fit"), lo: c.lo, hi: i + 1, verb: -1, pronoun: "one", subject: true, rule: "one and place"})
			return
		}
		if !r.toks[i].is(wOpener|wDrop|wDropAdj|wPlace) && !definiteWord.has(w) && w != "and" && w != "other" && w != "last" && w != "first" && w != "second" && w != "third" {
			return
		}
	}
}

// newOneAlone reads "Old one out. New one, arrow forward.": another of what just came
// off or was thrown away, and no more than that it is there.
func (r *reading) newOneAlone(ci int) bool {
	c := &r.clauses[ci]
	if len(c.acts) > 0 || len(r.acts) == 0 {
		return false
	}
	i := c.lo
	for i < c.hi && (r.toks[i].is(wOpener|wDrop|wDeterminer) || r.toks[i].s == "and") && r.toks[i].s != "new" && r.toks[i].s != "fresh" {
		i++
	}
	if w := r.word(i); i+1 >= c.hi || w != "new" && w != "fresh" || r.toks[i+1].s != "one" && r.toks[i+1].s != "ones" || i+2 < c.hi && r.toks[i+1].brk < brkComma {
		return false
	}
	if p := &r.acts[len(r.acts)-1]; !p.happened() || p.action.Name != "remove" && p.action.Name != "discard" && p.action.Name != "disconnect" && p.action.Name != "clean" || r.since(p.lo, c.lo) > 20 || r.notHad(ci) || r.owed(c) {
		return false
	}
	for k := i + 2; k < c.hi; k++ {
		if r.toks[k].qty >= 0 || r.toks[k].is(wSubject|wLinking) || r.toks[k].s == "quid" || r.toks[k].s == "order" {
			return false
		}
	}
	r.addAct(ci, act{action: r.lex.Action("fit"), lo: i, hi: i + 2, verb: -1, pronoun: r.toks[i+1].s, subject: true, rule: "one and place"})
	return true
}

// beginsNew tells whether "new one" at i begins what is said of it: at the start, after
// a comma or "and", or told as there.
func (r *reading) beginsNew(c *clause, i int) bool {
	if i == c.lo || r.toks[i-1].brk >= brkComma || openers.has(r.toks[i-1].s) {
		return true
	}
	switch r.toks[i-1].s {
	case "and", "the":
		return true
	case "a":
		return i-2 >= c.lo && (r.toks[i-2].s == "there's" || r.toks[i-2].s == "'s" || r.toks[i-2].s == "with")
	}
	return false
}

// freshOne are the words by which another of the same is told.
var freshOne = set("new fresh good spare proper")

// aSpot are the words for where a thing is found.
var aSpot = set("side end middle centre center corner top bottom back front left right picture photo")

// thenPlace reads "Caliper. Over the disc.": a thing that is only named, and then
// nothing but where it goes, or "Cable nut. On by hand.", that it goes on or comes off.
func (r *reading) thenPlace(ci int) {
	c := &r.clauses[ci]
	if ci == 0 || len(c.acts) > 0 || c.hi-c.lo > 9 || c.mood&notWork != 0 {
		return
	}
	i := c.lo
	for i < c.hi && (openers.has(r.toks[i].s) || r.toks[i].s == "back" || r.toks[i].s == "up" || r.toks[i].s == "down" || r.toks[i].s == "straight") {
		i++
	}
	if i >= c.hi || r.toks[i].men >= 0 {
		return
	}
	x := act{action: r.lex.Action("fit"), lo: c.lo, hi: i, verb: -1, subject: true, rule: "thing and place"}
	switch w := r.toks[i].s; {
	case ci+1 < len(r.clauses) && r.clauses[ci+1].sentence == c.sentence && r.toks[r.clauses[ci+1].lo].s == "there":
		return // "in each hub there's two screws"
	case i+1 < c.hi && placing.has(w) && w != "to" && (determiner.has(r.toks[i+1].s) || r.toks[i+1].men >= 0):
		x.ifOff = true
	case (onWords.has(w) || offWords.has(w)) && (i+1 == c.hi || r.toks[i].brk >= brkComma || handAt(r, i+1, c.hi)):
		x.hi, x.rule = i+1, "thing, then particle"
		if offWords.has(w) {
			x.action = r.lex.Action("remove")
		} else if i+1 < c.hi && handAt(r, i+1, c.hi) {
			x.action = r.lex.Action("start by hand")
		}
	default:
		return
	}
	for k := i; x.ifOff && k < c.hi; k++ {
		if w := r.toks[k].s; r.toks[k].men < 0 && (linking.has(w) || subjects.has(w) && !determiner.has(w) || r.isVerbForm(w) && !placeWords.has(w)) {
			return
		}
	}
	p := &r.clauses[ci-1]
	if len(p.acts) > 0 || len(p.mentions) != 1 || p.mood&notWork != 0 || r.since(p.lo, c.lo) > 10 {
		return
	}
	m := &r.mentions[p.mentions[0]]
	if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.prep != "" || m.hi != p.hi {
		return
	}
	for k := p.lo; k < m.from; k++ {
		if w := r.toks[k].s; !openers.has(w) && !dropWords.has(w) && w != "and" && w != "new" {
			return
		}
	}
	x.objects, x.ifOff = []int{p.mentions[0]}, x.ifOff && !m.isNew
	r.addAct(ci, x)
}

// turned reads "quarter of a turn on the cap": how far a thing is turned, with no verb.
func (r *reading) turned(ci int) {
	c := &r.clauses[ci]
	if len(c.acts) > 0 || c.mood&notWork != 0 {
		return
	}
	for i := c.lo; i+1 < c.hi; i++ {
		w := r.toks[i].s
		if (w == "turn" || w == "turns") && i > c.lo && r.toks[i+1].s == "on" {
			for _, mi := range c.mentions {
				if m := &r.mentions[mi]; m.from == i+2 && m.kind&(lexicon.Fastener|lexicon.Part) != 0 {
					r.addAct(ci, act{action: r.lex.Action("adjust"), lo: c.lo, hi: i + 1, verb: -1, objects: []int{mi}, subject: true, rule: "turn and thing"})
				}
			}
			return
		}
		if !fractionWord.has(w) && !openers.has(w) && !dropWords.has(w) && countOf[w] == 0 && w != "another" && w != "a" && w != "of" && w != "and" && w != "full" && w != "couple" && w != "whole" {
			return
		}
	}
}

// gets reads "the bolt gets some grease under the head", "the shaft wants a drop
// of oil": what is put on a thing, told of the thing.
func (r *reading) gets(ci int) {
	c := &r.clauses[ci]
	if len(c.mentions) < 2 || c.mood&(conditional|hypothetical|other|asked|aside|greeting|listing) != 0 || ci < r.toolList[1] {
		return
	}
	for k, mi := range c.mentions[:len(c.mentions)-1] {
		m, o := &r.mentions[mi], &r.mentions[c.mentions[k+1]]
		if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.prep != "" || o.kind&lexicon.Consumable == 0 || o.kind&lexicon.Part != 0 || m.hi >= c.hi || r.inAct(ci, mi) {
			continue
		}
		i := m.hi
		for i < c.hi && (r.toks[i].s == "just" || r.toks[i].s == "both" || r.toks[i].s == "all" || r.toks[i].s == "each" || r.toks[i].s == "there" || r.toks[i].s == "only") {
			i++
		}
		switch r.toks[min(i, c.hi-1)].s {
		case "gets", "get", "wants", "want", "takes", "needs", "likes", "has":
		default:
			continue
		}
		if r.deniedBefore(c, o.from) {
			continue
		}
		for i++; i < o.lo && (measured.has(r.toks[i].s) || r.toks[i].s == "of" || determiner.has(r.toks[i].s) || dropAdj.has(r.toks[i].s) || r.toks[i].s == "just" || r.toks[i].qty >= 0); i++ {
		}
		if i < o.lo {
			continue
		}
		name := "apply"
		if greases.has(o.head) {
			name = "lubricate"
		}
		r.addAct(ci, act{action: r.lex.Action(name), lo: m.from, hi: o.hi, verb: -1, objects: []int{mi, c.mentions[k+1]}, subject: true, rule: "thing gets"})
	}
}

// blow are the words for hitting as a thing.
var blow = wordsOf("blows")

// blows reads "a few taps with the soft hammer": hitting, with no verb.
func (r *reading) blows(ci int) {
	c := &r.clauses[ci]
	if len(c.mentions) == 0 || c.mood&notWork != 0 || ci < r.toolList[1] {
		return
	}
	for i := c.lo; i < c.hi; i++ {
		if m := r.toks[i].men; !r.toks[i].is(wSeldom) || !blow.has(r.toks[i].s) || m >= 0 && (r.mentions[m].head != "tap" || r.next(i) != "with") || r.next(i) == "it" || r.next(i) == "them" {
			continue
		}
		lo := i
		for lo > c.lo && r.toks[lo-1].brk <= brkPause && (measured.has(r.toks[lo-1].s) || determiner.has(r.toks[lo-1].s) || r.toks[lo-1].s == "a" || r.toks[lo-1].s == "few" || r.toks[lo-1].s == "sharp" || r.toks[lo-1].s == "gentle" || r.toks[lo-1].s == "of" || r.toks[lo-1].s == "hard" || r.toks[lo-1].s == "short") {
			lo--
		}
		if lo == i || lo > c.lo && r.toks[lo-1].men < 0 && r.toks[lo-1].brk <= brkPause && !openers.has(r.toks[lo-1].s) && r.toks[lo-1].s != "and" {
			return
		}
		tool, on := -1, -1
		for _, mi := range c.mentions {
			m := &r.mentions[mi]
			if m.lo > i && m.kind&lexicon.Tool != 0 && (m.prep == "with" || m.prep == "of" || m.prep == "from") {
				tool = mi
			}
		}
		if tool < 0 {
			return
		}
		a := act{action: r.lex.Action("hammer"), lo: lo, hi: i + 1, verb: -1, objects: []int{tool}, subject: true, rule: "blow"}
		if on >= 0 {
			a.objects = []int{on, tool}
		}
		r.addAct(ci, a)
		return
	}
}

// greases are what things are lubricated with.
var greases = wordsOf("what makes slide")

// laid reads a clause with no verb at all that says where a thing goes: "bar on
// the studs", "needle bearing, new", "new chain".
func (r *reading) laid(ci int) {
	c := &r.clauses[ci]
	if len(c.acts) > 0 || len(c.mentions) == 0 || c.mood&notWork != 0 {
		return
	}
	mi := c.mentions[0]
	m := &r.mentions[mi]
	if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.prep != "" {
		return
	}
	for i := c.lo; i < c.hi && r.toks[i].s != "with"; i++ {
		s := r.toks[i].s
		if s == "'s" || r.toks[i].men < 0 && (linking.has(s) || i < m.hi+3 && r.isVerbForm(s) && s != "set" && !placeWords.has(s) && !features.has(s)) {
			return
		}
	}
	for i := c.lo; i < m.from; i++ {
		if w := r.toks[i].s; !openers.has(w) && w != "and" && !dropWords.has(w) {
			return
		}
	}
	k := m.hi
	with := []int{} // "the disc and the cover over the dowels"
	for _, oi := range c.mentions[1:] {
		o := &r.mentions[oi]
		if k >= c.hi || r.toks[k].s != "and" && r.toks[k-1].brk != brkComma || o.from != k && o.from != k+1 || o.kind&(lexicon.Fastener|lexicon.Part) == 0 || o.prep != "" || o.kind&lexicon.Tool != 0 && !o.definite {
			break
		}
		with, k = append(with, oi), o.hi
	}
	if len(with) > 0 && (k >= c.hi || !placing.has(r.toks[k].s)) {
		with, k = nil, m.hi
	}
	if k+1 < c.hi && (r.toks[k].s == "back" || r.toks[k].s == "straight" || r.toks[k].s == "down" || r.toks[k].s == "up") && placing.has(r.toks[k+1].s) {
		k++
	}
	next, after := "", ""
	if k < c.hi {
		next = r.toks[k].s
	}
	if k+1 < c.hi {
		after = r.toks[k+1].s
	}
	sided := false // where it is, not where it goes, unless it had come off
	for i := k; i < min(c.hi, k+4); i++ {
		w := r.toks[i].s
		sided = sided || w == "side" || w == "end" || w == "left" || w == "right" || w == "corner"
	}
	for i := k; i < min(c.hi, k+5); i++ {
		// "old grip to the dustbin", "bolts and washers in the scrap tin"
		if bins.has(r.toks[i].s) && (next == "to" || next == "in" || next == "into" || next == "for") {
			for _, oi := range c.mentions {
				if o := &r.mentions[oi]; o.hi <= k && o.kind&(lexicon.Fastener|lexicon.Part) != 0 {
					x := act2(r.lex.Action("discard"), m.from, i+1, oi)
					x.rule = "thing and bin"
					r.addAct(ci, x)
				}
			}
			return
		}
	}
	goes := placing.has(next) && (determiner.has(after) || after == "both" || after == "top" || after == "there" || after == "it" || after == "them" || after == "to" && (next == "on" || next == "in" || next == "up") || k+1 < c.hi && r.toks[k+1].men >= 0) && (m.count == 0 || k > m.hi)
	isNew := (m.isNew && (c.hi-c.lo <= 5 || next == "from" || next == "through" || next == "each" || k < c.hi && r.namesFeature(k, c.hi)) || next == "new" && m.hi+1 == c.hi) && !r.notHad(ci) && !r.ofKit(ci)
	if !goes && !isNew || r.putOffNext(ci) || r.speaks(m.hi, c.hi) {
		return
	}
	if r.comesNext(ci) {
		return // "two screws up under the worktop, those come out": where they are
	}
	x := act2(r.lex.Action("fit"), m.from, min(c.hi, m.hi+4), mi)
	x.rule, x.ifOff = "thing and place", !isNew && !m.isNew
	if sided {
		x.rule, x.ifOff = "thing and side", true
	}
	if m.definite && k == m.hi && !m.isNew {
		x.rule, x.ifOff = whereItIs, true // "this cover on the end": which one it is
	}
	if goes && len(with) > 0 {
		if r.intoContainer(ci, k) != "" {
			return // "bolt and bracket into the coffee can": kept, which is told elsewhere
		}
		x.objects, x.hi = append(x.objects, with...), k
	}
	r.addAct(ci, x)
}

// comesNext tells whether what a clause names is said to come off in the same breath.
func (r *reading) comesNext(ci int) bool {
	if ci+1 >= len(r.clauses) || r.clauses[ci+1].sentence != r.clauses[ci].sentence {
		return false
	}
	n := &r.clauses[ci+1]
	i := n.lo
	for i < n.hi && (r.toks[i].is(wOpener|wDrop) || r.toks[i].s == "and") {
		i++
	}
	w, v := r.word(i), r.next(i)
	if w != "those" && w != "they" && w != "these" && w != "them" && w != "that" && w != "it" || v != "come" && v != "comes" && v != "want" && v != "wants" && v != "are" && v != "'re" && v != "'s" && v != "need" {
		return false
	}
	for i += 2; i < n.hi; i++ {
		if r.toks[i].is(wOff) {
			return true
		}
	}
	return false
}

// laidBeside reads what goes to its place beside what goes on in the same clause: "hose
// onto its spigot, clip over it", "chain round the sprocket and the joining link in".
func (r *reading) laidBeside(ci int) {
	c := &r.clauses[ci]
	if len(c.acts) == 0 || len(c.mentions) < 2 || c.mood&notWork != 0 || ci < r.toolList[1] {
		return
	}
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.verb >= 0 || a.action.Name != "fit" && a.action.Name != "start by hand" || a.rule == whereItIs {
			return
		}
	}
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.prep != "" || m.count > 1 || r.inAct(ci, mi) || !r.beginsPiece(c, m) {
			continue
		}
		k := m.hi
		if k+1 < c.hi && (r.toks[k].s == "back" || r.toks[k].s == "straight" || r.toks[k].s == "down" || r.toks[k].s == "up") {
			k++
		}
		if after := r.next(k); k+1 >= c.hi || r.toks[k-1].brk >= brkComma || !placing.has(r.toks[k].s) || r.toks[k].s == "to" || !determiner.has(after) && after != "it" && after != "them" && after != "its" && r.toks[k+1].men < 0 {
			continue
		}
		spoken := false
		for i := k + 1; i < c.hi && !spoken && r.toks[i-1].brk < brkComma && r.toks[i].s != "and"; i++ {
			w := r.toks[i].s
			spoken = linking.has(w) || papers.has(w) || r.toks[i].men < 0 && r.isVerbForm(w)
		}
		if spoken {
			continue
		}
		x := act2(r.lex.Action("fit"), m.from, min(c.hi, m.hi+4), mi)
		x.rule, x.ifOff = "thing and place", !m.isNew
		r.addAct(ci, x)
	}
}

// beginsPiece tells whether a mention opens its clause, or what stands in it after a
// comma or "and".
func (r *reading) beginsPiece(c *clause, m *mention) bool {
	if r.opens(c, m) {
		return true
	}
	w := r.prev(m.from)
	return m.from > c.lo && (r.toks[m.from-1].brk >= brkComma || w == "and" || w == "then")
}

// renewed reads a row of things of which one is new: "New gasket, new head, four bolts."
func (r *reading) renewed(ci int) {
	c := &r.clauses[ci]
	if len(c.acts) > 0 || len(c.mentions) < 2 || c.mood&notWork != 0 || ci < r.toolList[1] || r.notHad(ci) {
		return
	}
	m := &r.mentions[c.mentions[0]]
	if !m.isNew || m.prep != "" || r.ofKit(ci) {
		return
	}
	for i := c.lo; i < c.hi; i++ {
		if s := r.toks[i].s; r.toks[i].men < 0 && linking.has(s) {
			return
		}
	}
	for _, mi := range c.mentions {
		if k := &r.mentions[mi]; (r.bareElement(c, mi) || mi == c.mentions[0] && placing.has(r.word(k.hi)) && k.hi < c.hi) && k.kind&(lexicon.Fastener|lexicon.Part) != 0 {
			x := act2(r.lex.Action("fit"), k.from, k.hi, mi)
			x.rule, x.ifOff = toldInARow, !k.isNew
			r.addAct(ci, x)
		}
	}
}

// whereItIs is the rule of a thing told by where it is: back there only where it had come off.
const whereItIs = "thing told by its place"

// ofKit tells whether the talk just before says what is in a kit: "the kit was
// thirty quid, new piston, new cups".
func (r *reading) ofKit(ci int) bool {
	for k := ci; k >= 0 && k >= ci-2; k-- {
		c := &r.clauses[k]
		kit, is := false, false
		for i := c.lo; i < c.hi; i++ {
			switch r.toks[i].s {
			case "kit", "kits", "set", "packet", "box":
				kit = true
			case "is", "was", "'s", "comes", "come", "got", "has", "includes", "gives":
				is = is || kit
			}
		}
		if kit && is {
			return true
		}
	}
	return false
}

// notHad tells whether the talk goes on to say that there is none: "A new split
// pin. I thought I had one. I don't."
func (r *reading) notHad(ci int) bool {
	for k := ci; k < min(len(r.clauses), ci+4) && r.since(r.clauses[ci].lo, r.clauses[k].lo) < 8; k++ {
		c := &r.clauses[k]
		for i := c.lo; i < c.hi; i++ {
			switch r.toks[i].s {
			case "don't", "haven't", "hasn't":
				if i+1 >= c.hi || r.toks[i].brk >= brkComma || r.next(i) == "have" || r.next(i) == "got" || r.next(i) == "a" {
					return true
				}
			case "thought":
				if r.word(i+2) == "had" {
					return true
				}
			}
		}
	}
	return false
}

// placing are the words that lead to where a thing goes.
var placing = set("on into onto over through in to up against round around between")

// placedElement tells whether a mention stands between commas with no more than where
// it goes: "filter in, cover over the stud, wing nut".
func (r *reading) placedElement(c *clause, mi int) bool {
	m := &r.mentions[mi]
	if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.prep != "" || m.from <= c.lo || r.toks[m.from-1].brk < brkComma || m.hi+1 >= c.hi || !leadsIn.has(r.toks[m.hi].s) || r.toks[m.hi-1].brk >= brkComma || r.toks[m.hi].s == "against" {
		return false
	}
	for i := m.hi + 1; i < c.hi; i++ {
		ends := r.toks[i].brk >= brkComma
		if ends {
			break
		}
	}
	for _, ai := range c.acts {
		if a := &r.acts[ai]; (a.verb < 0 || a.subject) && a.action.Name == "fit" && a.hi <= m.from && a.mood&framed == 0 {
			return true
		}
	}
	return false
}

// countedAfter tells whether fasteners are counted right after what they hold is said
// to go on, with no comma heard: "guard on four clips that's that".
func (r *reading) countedAfter(c *clause, mi int) bool {
	m := &r.mentions[mi]
	if m.kind&lexicon.Fastener == 0 || m.count < 2 || m.from <= c.lo || m.definite || m.hi < c.hi && r.toks[m.hi-1].brk < brkComma && (linking.has(r.toks[m.hi].s) || r.isVerbForm(r.toks[m.hi].s) && r.toks[m.hi].s != "done" || r.toks[m.hi].s == "in" || r.toks[m.hi].s == "on") {
		return false
	}
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.verb < 0 && a.hi == m.from && a.action.Name == "fit" && (onWords.has(r.toks[a.hi-1].s) || returning.has(r.toks[a.hi-1].s)) {
			return true
		}
	}
	return false
}

// bareElement tells whether a mention stands by itself between commas.
func (r *reading) bareElement(c *clause, mi int) bool {
	m := &r.mentions[mi]
	if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.prep != "" {
		return false
	}
	if m.hi < c.hi && r.toks[m.hi-1].brk < brkComma && r.toks[m.hi].s != "and" {
		return false
	}
	i := m.from - 1
	for i >= c.lo && (r.toks[i].s == "and" || r.toks[i].s == "then" || r.toks[i].s == "the") && r.toks[i].brk < brkComma {
		i--
	}
	if i >= c.lo && i == m.from-1 && r.toks[i].brk == brkNone && r.tellsApart(i) {
		for i--; i >= c.lo && (r.toks[i].s == "and" || r.toks[i].s == "then" || r.toks[i].s == "the") && r.toks[i].brk < brkComma; i-- {
		}
		return i >= c.lo && r.toks[i].brk >= brkComma // in a row: nobody fits a garden hose
	}
	return i < c.lo || r.toks[i].brk >= brkComma
}

// tellsApart tells whether a word of no list may tell apart what is named right after it: "tang
// washer", "slinger ring".
func (r *reading) tellsApart(i int) bool {
	t := &r.toks[i]
	return t.men < 0 && t.qty < 0 && len(t.s) > 2 && !t.is(wStop|wPronoun|wDeterminer|wSubject|wLinking|wPreposition|wOpener|wDrop|wVerb|wOff|wOn|wNumber|wForm) && !stopWords.has(t.s) && !r.isVerbForm(t.s) && !strings.HasSuffix(t.s, "ly") && !strings.HasSuffix(t.s, "ing")
}

// verblessActOn gives the act without a verb that takes a mention off or puts it on, or -1.
func (r *reading) verblessActOn(c *clause, mi int) int {
	for _, ai := range c.acts {
		a := &r.acts[ai]
		if a.verb >= 0 || a.mood&framed != 0 || a.action.Name != "fit" && a.action.Name != "remove" && a.action.Name != "start by hand" {
			continue
		}
		for _, o := range a.objects {
			if o == mi {
				return ai
			}
		}
	}
	return -1
}

// The rules of a thing that is taken to come off since it was named with what turns it.
const (
	namedWithTool = "named with what turns it"
	inARow        = "named in a row"
	toolThenName  = "what turns it and then its name"
)

// singledOut reads a clause that names what the work turns to and no more than how
// many there are or what drives them: "Axle nuts, eighteen mil spanner.", "next is
// the air cleaner". What is done to it, the state of the thing tells (refer).
func (r *reading) singledOut(ci int) {
	c := &r.clauses[ci]
	hi := c.hi
	if len(c.acts) > 0 {
		if hi = r.beforeMoves(c); hi < 0 {
			return
		}
	}
	if len(c.mentions) == 0 || ci < r.toolList[1] || c.mood&(negated|conditional|hypothetical|other|asked|aside|greeting|listing|announced|warned) != 0 {
		return
	}
	m := &r.mentions[c.mentions[0]]
	if hi < c.hi && (m.hi >= hi || m.kind&lexicon.Fastener == 0) {
		return
	}
	if r.spannerOn(ci) {
		return
	}
	if _, tight := r.tightTold(c, c.hi-1); tight {
		return // "union, nineteen spanner, tight"
	}
	if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.prep != "" || m.isNew {
		return
	}
	turns := false
	for i := c.lo; i < m.from; i++ {
		switch w := r.toks[i].s; {
		case w == "next" || w == "first" || w == "then" || w == "job" || w == "last":
			turns = turns || w != "then"
		case openers.has(w) || dropWords.has(w) || w == "and" || w == "is" || w == "'s" || w == "up" || w == "thing" || w == "one" || w == "it" || w == "off" || w == "the":
		default:
			return
		}
	}
	objects := []int{c.mentions[0]}
	end := m.hi
	for _, mi := range c.mentions[1:] {
		if r.mentions[mi].from >= hi {
			break
		}
		// "spacer, washer, and the nut"
		if o := &r.mentions[mi]; o.kind&(lexicon.Fastener|lexicon.Part) != 0 && (o.kind&lexicon.Tool == 0 || o.definite) && o.prep == "" && (o.from == end || o.from == end+1 && (r.toks[end].s == "and" || r.toks[end].s == "then")) {
			objects, end = append(objects, mi), o.hi
			continue
		}
		break
	}
	driven, counted := false, -1
	for i := end; i < hi; i++ {
		w := r.toks[i].s
		if t := int(r.toks[i].men); t >= 0 {
			o := &r.mentions[t]
			if o.kind&lexicon.Tool == 0 && o.kind&lexicon.Fastener == 0 {
				if m.kind&lexicon.Fastener != 0 && where.has(o.prep) && r.toks[o.from-1].s == o.prep {
					i = o.hi - 1 // "two bolts on the mount, seventeen": where they are
					continue
				}
				return
			}
			driven = driven || o.kind&lexicon.Tool != 0
			if o.kind&lexicon.Fastener != 0 && o.count > 0 && counted < 0 {
				counted = t // "the regulator's got four nuts"
			}
			continue
		}
		if q := r.toks[i].qty; q >= 0 {
			if k := r.qtys[q].Kind; k != normalize.Size && k != normalize.Drive && k != normalize.Driver && k != normalize.Thread && k != normalize.Length {
				return
			}
			driven = true
			continue
		}
		if w == "next" || w == "first" {
			turns = true
			continue
		}
		if fractionWord.has(w) || pluralSize[w] != 0 {
			driven = true
			continue
		}
		if (numberWord.has(w) || countOf[w] >= 8) && m.kind&lexicon.Fastener != 0 && r.toks[i-1].brk >= brkComma && (i+1 == hi || r.toks[i].brk >= brkComma) {
			driven = true // "cover bolts, thirteen"
			continue
		}
		if countOf[w] == 0 && !numberWord.has(w) && !determiner.has(w) && !placeWords.has(w) && w != "done" && w != "with" && w != "of" && w != "then" && w != "now" && w != "and" && w != "on" && w != "at" && w != "each" && w != "side" && w != "both" && w != "sides" && w != "pieces" && !(spots.has(w) && m.kind&lexicon.Fastener != 0) && !holding.has(w) {
			return
		}
	}
	if counted >= 0 && !alike.has(m.head) {
		objects, driven = []int{counted}, true
	}
	if !turns && !driven {
		driven = r.drivenNext(ci)
	}
	if !turns && !driven && m.kind&lexicon.Fastener == 0 && len(c.mentions) == 1 {
		turns = r.heldNext(ci) || r.onlyTool(ci+1) && drawers.has(r.mentions[r.clauses[ci+1].mentions[0]].head) // "Buckets. Magnet."
	}
	if !turns && !driven && len(objects) < 2 {
		return
	}
	if driven && !turns && m.kind&lexicon.Fastener == 0 && len(objects) == 1 {
		fast := false
		for _, mi := range c.mentions {
			fast = fast || r.mentions[mi].kind&lexicon.Fastener != 0
		}
		if !fast && !tightens.has(m.head) {
			return
		}
	}
	if turns && !driven && len(objects) == 1 && m.kind&lexicon.Fastener == 0 && r.describedNext(ci, m) {
		return // "belt next. It runs on two pulleys"
	}
	if !m.definite && hi == c.hi && r.willFetch(ci+1) {
		return // "a clip of two mil I'll bring tomorrow"
	}
	if !driven && r.handledNext(ci) {
		return // "First the return cable adjuster. Turn it out": what it is about
	}
	a := act{action: r.lex.Action("remove"), lo: m.from, hi: hi, verb: -1, objects: objects, subject: true, heads: true, rule: namedWithTool}
	if !turns && !driven {
		a.rule = inARow
	}
	if m.kind&lexicon.Fastener != 0 && len(objects) == 1 && r.onlyLoosened(c) {
		a.action, a.heads = r.lex.Action("slacken"), false
	}
	r.addAct(ci, a)
}

// beforeMoves gives the token before which a clause only names what holds a thing that then
// moves by itself, "two screws at the back, cross head, | and it slides out", or -1.
func (r *reading) beforeMoves(c *clause) int {
	if len(c.acts) != 1 {
		return -1
	}
	a := &r.acts[c.acts[0]]
	if !a.subject || a.verb < 0 || a.action.Name != "remove" || len(a.objects) > 0 || a.pronoun == "" {
		return -1
	}
	for k := a.verb - 1; k > c.lo && k > a.verb-4; k-- {
		if r.toks[k].s == "and" && r.toks[k-1].brk >= brkComma {
			return k
		}
	}
	return -1
}

// countedAndAway reads "two bolts and it drops down", "couple of bolts, and off it comes": what
// held a thing that comes away at once is out by then.
func (r *reading) countedAndAway(ci int) {
	c := &r.clauses[ci]
	if len(c.acts) != 1 || len(c.mentions) != 1 || c.mood&notWork != 0 || ci < r.toolList[1] {
		return
	}
	m, a := &r.mentions[c.mentions[0]], &r.acts[c.acts[0]]
	if m.kind&lexicon.Fastener == 0 || m.count == 0 && !m.plural || !r.opens(c, m) || a.action.Name != "remove" || !a.subject || !a.happened() || len(a.objects) > 0 || a.pronoun != "it" && a.pronoun != "she" || m.hi >= a.lo+1 || r.word(m.hi) != "and" || a.lo > m.hi+3 {
		return
	}
	x := act2(r.lex.Action("remove"), m.from, m.hi, c.mentions[0])
	x.rule, x.heads = namedWithTool, true
	r.addAct(ci, x)
}

// onlyLoosened tells whether the words right after a clause say that what it names is only
// loosened: "Two bolts, seventeen. Loosen, don't remove."
func (r *reading) onlyLoosened(c *clause) bool {
	dont, loose, out := false, false, false
	for i := c.hi; i < min(len(r.toks), c.hi+20) && r.since(c.lo, i) < 12; i++ {
		switch r.toks[i].s {
		case "don't", "not", "never":
			dont = true
		case "loosen", "slacken", "slack", "crack":
			loose = true
		case "remove", "out", "off":
			out = out || dont
		}
		if dont && loose && out {
			return true
		}
	}
	return false
}

// where are the words that lead to where fasteners sit.
var where = set("on in at under through round around behind from inside along of")

// spots are the words for where fasteners sit: "three screws along the back".
var spots = set("along across round around inside under underneath behind either corner corners edge edges per")

// spannerOn reads "eighteen spanner on the axle nut": what turns a fastener, and
// then the fastener, with no verb.
func (r *reading) spannerOn(ci int) bool {
	c := &r.clauses[ci]
	if r.spannerOnIt(ci) {
		return true
	}
	for k, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.prep != "on" || m.kind&lexicon.Fastener == 0 || m.kind&lexicon.Tool != 0 || m.count > 2 {
			continue
		}
		driven := false
		for i := c.lo; i < m.from-1; i++ {
			switch w := r.toks[i].s; {
			case r.toks[i].qty >= 0:
				kind := r.qtys[r.toks[i].qty].Kind
				if kind != normalize.Size && kind != normalize.Drive && kind != normalize.Driver && kind != normalize.Thread && kind != normalize.Length {
					return false
				}
				driven = true
			case r.toks[i].men >= 0:
				o := &r.mentions[r.toks[i].men]
				if o.kind&lexicon.Tool == 0 || sizeTool[o.head] == "" {
					return false
				}
				driven = true
			case openers.has(w) || dropWords.has(w) || numberWord.has(w) || countOf[w] > 0 || fractionWord.has(w) || determiner.has(w) || w == "and" || w == "mil" || w == "mm" || w == "inch" || w == "big" || w == "long" || w == "again" || w == "back":
			default:
				return false
			}
		}
		if !driven || m.hi < c.hi && r.toks[m.hi-1].brk < brkComma && r.toks[m.hi].s != "and" {
			return false
		}
		if k+1 < len(c.mentions) && r.mentions[c.mentions[k+1]].kind&lexicon.Tool == 0 {
			return false
		}
		r.addAct(ci, act{action: r.lex.Action("remove"), lo: c.lo, hi: m.hi, verb: -1, objects: []int{mi}, subject: true, heads: true, rule: toolThenName})
		return true
	}
	return false
}

// spannerOnIt reads "so ten mil socket on that": what turns a fastener, and the fastener
// as no more than "that".
func (r *reading) spannerOnIt(ci int) bool {
	c := &r.clauses[ci]
	driven := false
	for i := c.lo; i+1 < c.hi; i++ {
		w := r.toks[i].s
		switch {
		case w == "on" && driven:
			n := r.toks[i+1].s
			if !pronounsObj.has(n) && n != "each" && n != "all" || r.toks[i+1].men >= 0 || i+2 < c.hi && r.toks[i+1].brk < brkComma && r.word(i+2) != "and" && r.word(i+2) != "of" {
				return false
			}
			if n == "each" || n == "all" {
				n = "them"
			}
			r.addAct(ci, act{action: r.lex.Action("remove"), lo: c.lo, hi: i + 2, verb: -1, pronoun: n, subject: true, heads: true, rule: toolThenName})
			return true
		case r.toks[i].qty >= 0:
			switch r.qtys[r.toks[i].qty].Kind {
			case normalize.Size, normalize.Drive, normalize.Driver, normalize.Thread, normalize.Length:
				driven = true
			default:
				return false
			}
		case r.toks[i].men >= 0:
			o := &r.mentions[r.toks[i].men]
			if o.kind&lexicon.Tool == 0 || sizeTool[o.head] == "" && !grippers.has(o.head) || o.prep != "" {
				return false
			}
			driven = true
		case r.toks[i].is(wOpener|wDrop|wNumber|wDeterminer) || w == "and" || w == "mil" || w == "mm" || w == "inch" || w == "big" || w == "long" || w == "again":
		default:
			return false
		}
	}
	return false
}

// grippers are the tools by which clips, pins and springs come off and go on.
var grippers = wordsOf("tools that grip")

// drawers are the tools with which a thing that is only named comes off.
var drawers = wordsOf("tools that draw")

// onlyPointed reads "So these two. Phillips.", "It's this one, five sixteenths.": fasteners
// that are only pointed at, and what turns them.
func (r *reading) onlyPointed(ci int) {
	c := &r.clauses[ci]
	if len(c.acts) > 0 || c.hi-c.lo > 9 || ci < r.toolList[1] || c.mood&notWork != 0 {
		return
	}
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.kind != 0 && (m.kind&lexicon.Tool == 0 || sizeTool[m.head] == "") {
			return
		}
	}
	i := c.lo
	for i < c.hi && (r.toks[i].is(wOpener|wDrop) || r.toks[i].s == "and" || r.toks[i].s == "it" || r.toks[i].s == "'s" || r.toks[i].s == "all" || r.toks[i].s == "both" || r.toks[i].s == "of") {
		i++
	}
	w := r.word(i)
	pron := ""
	switch n := r.next(i); {
	case i >= c.hi || r.toks[i].men >= 0:
		return
	case w == "these" || w == "those" || w == "them":
		if pron = "them"; i+1 < c.hi && countOf[n] > 1 {
			i++
		}
	case (w == "this" || w == "that") && n == "one" && i+1 < c.hi:
		pron = "one"
		i++
	default:
		return
	}
	driven := false
	if i++; i < c.hi && r.toks[i-1].brk < brkComma {
		return
	}
	for ; i < c.hi; i++ {
		t := &r.toks[i]
		if q := t.qty; q >= 0 {
			switch r.qtys[q].Kind {
			case normalize.Size, normalize.Drive, normalize.Driver, normalize.Thread, normalize.Length:
				driven = true
			default:
				return
			}
		} else if t.men >= 0 || fractionWord.has(t.s) || pluralSize[t.s] != 0 {
			driven = true
		} else if !t.is(wOpener|wDrop|wNumber|wDeterminer) && countOf[t.s] == 0 {
			return
		}
	}
	if !driven && !r.turnedBy(ci) {
		return
	}
	r.addAct(ci, act{action: r.lex.Action("remove"), lo: c.lo, hi: c.hi, verb: -1, pronoun: pron, subject: true, heads: true, rule: namedWithTool})
}

// turnedBy tells whether the clause after one says nothing but what turns a fastener.
func (r *reading) turnedBy(ci int) bool {
	if ci+1 >= len(r.clauses) {
		return false
	}
	n := &r.clauses[ci+1]
	if len(n.acts) > 0 || n.hi-n.lo > 6 || r.since(r.clauses[ci].lo, n.lo) > 12 || n.mood&notWork != 0 {
		return false
	}
	driven := false
	for i := n.lo; i < n.hi; i++ {
		t := &r.toks[i]
		switch {
		case t.qty >= 0:
			switch r.qtys[t.qty].Kind {
			case normalize.Size, normalize.Drive, normalize.Driver, normalize.Thread:
				driven = true
			default:
				return false
			}
		case t.men >= 0:
			if m := &r.mentions[t.men]; m.kind&lexicon.Tool == 0 || sizeTool[m.head] == "" {
				return false
			}
			driven = true
		case t.is(wOpener|wDrop|wNumber|wDeterminer) || t.s == "and":
		default:
			return false
		}
	}
	return driven
}

// handledNext tells whether the clause after one does something to "it".
func (r *reading) handledNext(ci int) bool {
	if ci+1 >= len(r.clauses) || r.since(r.clauses[ci].lo, r.clauses[ci+1].lo) > 8 {
		return false
	}
	n := &r.clauses[ci+1]
	for i := n.lo; i < n.hi && i < n.lo+5; i++ {
		if r.plainVerb(r.toks[i].s) || n.sentence == r.clauses[ci].sentence && strings.HasSuffix(r.toks[i].s, "ed") && r.isVerbForm(r.toks[i].s) {
			for k := i + 1; k < n.hi && k < i+3; k++ {
				if w := r.toks[k].s; w == "it" || w == "that" || w == "them" || w == "both" || w == "those" {
					return true
				}
			}
		}
	}
	return false
}

// holding are the words that lead from a part to what holds it: "the cover's got
// six screws", "the hood is five Phillips", "held by two bolts".
var holding = set("is 's are 're has have got held holds by it they just only another all ones these those them them's sits uses takes itself")

// drivenNext tells whether the clause after one says nothing but the size or the
// tool: "Mirrors. 14 spanner."
func (r *reading) drivenNext(ci int) bool {
	if ci+1 >= len(r.clauses) {
		return false
	}
	c, n := &r.clauses[ci], &r.clauses[ci+1]
	if len(n.acts) > 0 || n.hi-n.lo > 9 || r.since(c.lo, n.lo) > 8 || n.mood&(negated|conditional|hypothetical|other|asked) != 0 {
		return false
	}
	if _, tight := r.tightTold(n, n.hi-1); tight {
		return false // "line nut, crow's foot, good and tight"
	}
	for _, q := range n.qtys {
		switch r.qtys[q].Kind {
		case normalize.Torque:
			return false // "it says nine newton metres, for an M6 stud"
		case normalize.Size, normalize.Drive, normalize.Driver, normalize.Thread:
			return true
		}
	}
	for _, mi := range n.mentions {
		if m := &r.mentions[mi]; m.kind&lexicon.Tool != 0 && sizeTool[m.head] != "" {
			return true
		}
	}
	// "Deck screws. There's fourteen": how many
	w := r.toks[n.lo].s
	return r.mentions[c.mentions[0]].kind&lexicon.Fastener != 0 && (w == "there" || countOf[w] > 1) && len(n.mentions) == 0 && n.hi-n.lo <= 6
}

// heldNext tells whether the clause after one says no more than what holds the
// thing that it named: "Kick strip at the bottom, that's just clips."
func (r *reading) heldNext(ci int) bool {
	if ci+1 >= len(r.clauses) {
		return false
	}
	c, n := &r.clauses[ci], &r.clauses[ci+1]
	if len(n.acts) > 0 || len(n.mentions) == 0 || n.hi-n.lo > 8 || r.since(c.lo, n.lo) > 6 || n.mood&(negated|conditional|hypothetical|other|asked) != 0 {
		return false
	}
	w, is := r.toks[n.lo].s, r.next(n.lo)
	m := &r.mentions[n.mentions[0]]
	return (w == "that" || w == "it" || w == "there" || w == "they") && (is == "'s" || is == "is" || is == "are" || is == "'re") && m.kind&lexicon.Fastener != 0 && m.prep == "" && m.hi >= n.hi-3
}

// machineUnplugged is the rule of a machine that is said to be unplugged.
const machineUnplugged = "machine unplugged"

// machineOff reads "the sewing machine's unplugged", whatever the machine is called.
func (r *reading) machineOff(ci int) {
	c := &r.clauses[ci]
	if c.mood&notWork != 0 || slices.ContainsFunc(c.acts, func(ai int) bool { return r.acts[ai].happened() }) {
		return
	}
	for i := c.lo + 2; i < c.hi; i++ {
		if w := r.toks[i].s; (w == "unplugged" || w == "isolated") && passiveBe.has(r.toks[i-1].s) && r.toks[i-1].s != "be" {
			r.addAct(ci, act{action: r.lex.Action("switch off"), lo: c.lo, hi: i + 1, verb: -1, subject: true, rule: machineUnplugged})
			return
		}
	}
}

// manners are ways of going round fasteners to tighten them.
var manners = [][]string{{"little", "by", "little"}, {"bit", "by", "bit"}, {"corner", "to", "corner"}, {"crosswise"}, {"criss", "cross"}, {"in", "a", "star"}, {"star", "pattern"}, {"cross", "pattern"}, {"evenly"}, {"back", "and", "forth"}, {"across", "and", "across"}, {"diagonally"}, {"a", "bit", "at", "a", "time"}, {"opposite", "corners"}}

// mannered reads "bolts, little by little": how fasteners are gone round, with no
// verb. What is done to them, their state tells (refer).
func (r *reading) mannered(ci int) {
	c := &r.clauses[ci]
	if len(c.acts) > 0 || c.hi-c.lo > 12 || c.mood&notWork != 0 {
		return
	}
	at := -1
	for i := c.lo; i < c.hi && at < 0; i++ {
		for _, p := range manners {
			if r.says(i, c.hi, p) {
				at = i
			}
		}
		if linking.has(r.toks[i].s) {
			return
		}
	}
	if at < 0 {
		return
	}
	for k := ci; k >= 0 && k >= ci-1 && r.since(r.clauses[k].lo, c.lo) < 6; k-- {
		p := &r.clauses[k]
		if k < ci && len(p.acts) > 0 {
			return
		}
		for _, mi := range p.mentions {
			if m := &r.mentions[mi]; m.kind&lexicon.Fastener != 0 && m.prep == "" && m.lo < at {
				a := act{action: r.lex.Action("remove"), lo: max(c.lo, min(m.from, at)), hi: c.hi, verb: -1, objects: []int{mi}, subject: true, heads: true, rule: "how it is gone round"}
				for i := c.lo; i < at; i++ {
					if r.toks[i].qty >= 0 || numberWord.has(r.toks[i].s) && countOf[r.toks[i].s] == 0 {
						a.action, a.heads = r.lex.Action("tighten"), false // "one twenty, in a star"
					}
				}
				r.addAct(ci, a)
				return
			}
		}
	}
}

// rests are the tools that are put somewhere and stay there, drapes what is laid
// over or round something.
var rests = wordsOf("what things rest on")
var drapes = wordsOf("what is laid over things")

// stood reads "axle stand under the seam", "block of wood between the blade and
// the deck", "rag over the tank": where a tool is put, with no verb.
func (r *reading) stood(ci int) {
	c := &r.clauses[ci]
	if c.mood&notWork != 0 || ci < r.toolList[1] {
		return
	}
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		rag := drapes.has(m.head) && m.kind&(lexicon.Consumable|lexicon.Tool) != 0
		puller := m.kind == lexicon.Tool && pullers.has(m.head)
		if !rag && !puller && (m.kind&lexicon.Tool == 0 || !rests.has(m.head)) || m.prep != "" && m.prep != "of" || r.inAct(ci, mi) || r.inUseBy(c, m) || r.toks[m.hi-1].brk > brkPause {
			continue
		}
		if !r.saidBare(c, m.from) {
			continue
		}
		for i := m.hi; i < c.hi && i < m.hi+3; i++ {
			w := r.toks[i].s
			if (m.head == "chock" || m.head == "wedge" || m.head == "brick") && (w == "both" || w == "in" || w == "at" || w == "front" || w == "either") || w == "under" || w == "behind" || w == "underneath" || w == "beneath" || w == "below" || (w == "between" || w == "against" || w == "across") && i+1 < c.hi || (rag && (w == "over" || w == "round" || w == "around" || w == "down" || w == "into" || w == "in" && (r.next(i) == "each" || r.next(i) == "both" || r.next(i) == "every")) || puller && (w == "on" || w == "onto" || w == "over")) && i+1 < c.hi {
				r.addAct(ci, act{action: r.lex.Action("place"), lo: m.from, hi: m.hi, verb: -1, objects: []int{mi}, subject: true, rule: "tool and place"})
				break
			}
			if r.toks[i].men >= 0 || linking.has(w) || r.toks[i].brk > brkPause {
				break
			}
		}
	}
}

// saidBare tells whether nothing stands before token i in its clause that could
// say something of what is named there: no verb, nobody, no preposition.
func (r *reading) saidBare(c *clause, i int) bool {
	for k := i - 1; k >= c.lo && r.toks[k].brk <= brkPause; k-- {
		w := r.toks[k].s
		if r.toks[k].men >= 0 || offWords.has(w) || onWords.has(w) {
			return true
		}
		if linking.has(w) || subjects.has(w) || prepositions.has(w) || w == "no" || w == "not" || r.isVerbForm(w) && !placeWords.has(w) && !dropAdj.has(w) && w != "wet" && w != "dry" {
			return false
		}
	}
	return true
}

// stuffAndPlace is the rule by which spreads reads.
const stuffAndPlace = "consumable and place"

// spreads reads "smear of copper grease on the shank", "brake cleaner both sides":
// something used up, and where it goes, with no verb of its own.
func (r *reading) spreads(ci int) {
	c := &r.clauses[ci]
	if c.mood&(conditional|hypothetical|other|asked|aside|greeting|listing) != 0 || ci < r.toolList[1] {
		return
	}
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&lexicon.Consumable == 0 || m.kind&(lexicon.Tool|lexicon.Part|lexicon.Fastener) != 0 || m.prep != "" && m.prep != "of" || r.deniedBefore(c, m.from) || r.inAct(ci, mi) || r.inUseBy(c, m) {
			continue
		}
		if m.head == "water" || m.head == "grit" || m.head == "dirt" {
			continue // it is in there, and nobody put it there
		}
		lo := m.from
		for lo > c.lo && r.toks[lo-1].men < 0 && r.toks[lo-1].brk <= brkPause && lo > m.from-5 && !(articles.has(r.toks[lo].s) && r.plainVerb(r.toks[lo-1].s)) && (measured.has(r.toks[lo-1].s) || r.toks[lo-1].s == "of" || determiner.has(r.toks[lo-1].s) || dropAdj.has(r.toks[lo-1].s)) {
			lo--
		}
		dosed := lo < m.from
		if lo > c.lo {
			switch p := r.toks[lo-1].s; {
			case p == "haven't" || p == "hasn't" || p == "didn't" || p == "not" || p == "never" || p == "without":
				continue // "I haven't used any thread lock on those"
			case r.toks[lo-1].brk >= brkPause || r.toks[lo-1].men >= 0 || openers.has(p) || p == "and" || p == "with" || p == "then" || p == "on" || p == "off" || p == "in" || dropWords.has(p):
			case p == "want" && dosed && (r.word(lo-2) == "i" || r.word(lo-2) == "you"):
			case linking.has(p) || r.isVerbForm(p):
				continue
			case lo-1 == c.lo && !r.toks[lo-1].is(wSubject|wPreposition|wPronoun|wForm|wCountOf) && len(p) > 3 && p != "that's" && p != "there":
				lo-- // "slick grease round the lip": of which kind
			default:
				if !dosed {
					continue
				}
			}
		}
		if lo > c.lo && r.toks[lo-1].s == "with" {
			continue // said with its verb
		}
		w, after, end := r.word(m.hi), r.next(m.hi), m.hi
		if w == "just" || w == "only" || w == "right" || w == "all" && after != "over" && after != "round" {
			w, after, end = after, r.word(m.hi+2), end+1 // "sealant just on the half moons"
		}
		goes := cleaners.has(m.head) && (w == "through" || w == "down" || w == "up") || w == "on" || w == "over" || w == "in" || w == "round" || w == "around" || w == "inside" || w == "onto" || w == "along" || w == "across" || w == "under" || w == "behind" || w == "all" && (after == "over" || after == "round") || w == "both" && (after == "sides" || after == "faces" || after == "ends")
		if dosed && !goes && (lo == c.lo || r.takenUp(c, m)) && (m.hi >= c.hi || r.toks[m.hi-1].brk >= brkComma) {
			goes = r.dealtOut(lo, m.from)
		} else if m.hi+1 >= c.hi || after == "it's" || r.toks[m.hi-1].brk > brkPause {
			continue
		}
		if !goes || !dosed && r.doesSo(m.hi+1, c.hi) {
			continue
		}
		name := "apply"
		if cleaners.has(m.head) && !drapes.has(r.headAfter(c, m.hi)) {
			name = "clean" // "brake cleaner both sides of the disc"
		}
		if lo == c.lo && r.othersLeadTo(ci) {
			continue
		}
		r.addAct(ci, act{action: r.lex.Action(name), lo: lo, hi: end, verb: -1, objects: []int{mi}, subject: true, rule: stuffAndPlace})
	}
}

// doesSo tells whether the words from token i on say what comes of something: "grease in a lock
// just makes a paste", "oil on the pads is how we got here".
func (r *reading) doesSo(i, hi int) bool {
	for ; i < hi && r.toks[i].brk < brkComma; i++ {
		switch w := r.toks[i].s; {
		case r.toks[i].men >= 0:
		case comesOfIt.has(w), strings.HasSuffix(w, "s") && soiling.has(w):
			return true
		case w == "is", w == "'s", w == "was":
			if n := r.next(i); n == "how" || n == "why" || n == "a" || n == "no" {
				return true
			}
		}
	}
	return false
}

// comesOfIt are the verbs for what something does where it should not be.
var comesOfIt = set("makes does gets causes turns attracts collects draws means will 'll would 'd")

// others are those of whom it is told that they do something.
var others = wordsOf("others who do")

// othersLeadTo tells whether what stands right before a clause is somebody else and what they do
// to it, in a verb that no list has: "they drip | oil on the disc".
func (r *reading) othersLeadTo(ci int) bool {
	if ci == 0 {
		return false
	}
	p := &r.clauses[ci-1]
	if n := p.hi - p.lo; n < 2 || n > 6 || len(p.acts)+len(p.mentions) > 0 || r.since(p.hi-1, r.clauses[ci].lo) > 3 {
		return false
	}
	for i := p.lo; i < p.hi-1; i++ {
		if others.has(r.toks[i].s) {
			return !passiveBe.has(r.next(i)) && !r.toks[p.hi-1].is(wLinking|wOpener|wSubject) && !stopWords.has(r.toks[p.hi-1].s)
		}
	}
	return false
}

// dealtOut tells whether the words between two tokens say how much of something is put on.
func (r *reading) dealtOut(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if doses.has(r.toks[i].s) {
			return true
		}
	}
	return false
}

// doses are the words for as much as is put on at once: never what one has of it.
var doses = wordsOf("doses")

// cleaners are what things are cleaned with that is used up.
var cleaners = wordsOf("solvents")

// headAfter gives the head of the first thing named from token i on.
func (r *reading) headAfter(c *clause, i int) string {
	for ; i < c.hi; i++ {
		if m := r.toks[i].men; m >= 0 {
			return r.mentions[m].head
		}
	}
	return ""
}

// measured are the words by which stuff is dealt out.
var measured = set("bit dab drop smear squirt coat coats touch blob wipe lick spot little bead film wrap wraps turn turns layer dash drops shot pump pumps plenty lot tiny small light good thin two three couple some more fresh")

// row reads things and particles in turn, the last word a particle: "new shoes on
// springs on hold downs in". Each particle belongs to the name before it.
func (r *reading) row(ci int) {
	c := &r.clauses[ci]
	if len(c.mentions) < 2 || c.mood&notWork != 0 {
		return
	}
	// the longest tail of the clause that is names and particles in turn
	type pair struct{ m, at int }
	var pairs []pair
	i := c.hi - 1
	for i > c.lo {
		if w := r.toks[i].s; !onWords.has(w) && !offWords.has(w) && w != "through" || r.toks[i].men >= 0 {
			break
		}
		k := i - 1
		for k >= c.lo && r.toks[k].s == "back" {
			k--
		}
		if k < c.lo || r.toks[k].men < 0 {
			break
		}
		mi := int(r.toks[k].men)
		if m := &r.mentions[mi]; m.hi != k+1 || m.kind&(lexicon.Part|lexicon.Fastener) == 0 || r.toks[k].brk >= brkComma {
			break
		}
		pairs = append(pairs, pair{mi, i})
		i = r.mentions[mi].from - 1
		for i > c.lo && (r.toks[i].s == "and" || r.toks[i].s == "then" || r.toks[i].s == "the" || r.toks[i].s == "new") {
			i--
		}
	}
	if len(pairs) < 2 {
		return
	}
	for k := len(pairs) - 1; k >= 0; k-- {
		p := pairs[k]
		m := &r.mentions[p.m]
		m.prep = ""
		if r.inAct(ci, p.m) {
			continue
		}
		name := "fit"
		if offWords.has(r.toks[p.at].s) {
			name = "remove"
		}
		x := act2(r.lex.Action(name), m.from, p.at+1, p.m)
		x.rule = "things and particles in turn"
		r.addAct(ci, x)
	}
}

// nextOne tells whether the next thing that comes off or goes on is told at token
// i, "shims in | pads in", or the fasteners of the one before, "wheel on | five nuts".
func (r *reading) nextOne(c *clause, i int) bool {
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.from != i {
			continue
		}
		if m.count > 1 && m.kind&lexicon.Fastener != 0 || r.toks[i].s == "new" {
			return true // "new needle in | new o ring in the groove"
		}
		if m.hi >= c.hi || m.from != m.lo && determiner.has(r.toks[m.from].s) {
			return false
		}
		w := r.toks[m.hi].s
		return (onWords.has(w) || offWords.has(w) || returning.has(w)) && (m.hi+1 >= c.hi || !determiner.has(r.toks[m.hi+1].s) || r.toks[m.hi+1].s == "new")
	}
	return false
}

// stretch counts the words round token i between commas.
func (r *reading) stretch(c *clause, i int) int {
	lo := i
	for lo > c.lo && r.toks[lo-1].brk < brkComma {
		lo--
	}
	return min(c.hi, i+int(r.toks[i].run)) - lo
}

// offOrBack tells whether a particle ends a phrase even where another thing follows at once.
func offOrBack(w string, back bool) bool { return w == "off" || w == "out" || back }

// switchedOff tells whether "off" is said of it as of a switch, or a brake that holds.
func (r *reading) switchedOff(m *mention) bool {
	if h := m.head; h == "brake" || h == "brakes" || h == "handbrake" {
		for _, w := range m.mods {
			if w == "chain" || w == "hand" || w == "front" || w == "rear" || w == "back" || w == "park" || w == "parking" || w == "foot" || w == "blade" || w == "flywheel" {
				return true
			}
		}
		return m.head == "handbrake" || m.plural && len(m.mods) == 0 && m.from == m.lo && !m.isNew // "bed's unplugged, brakes on"
	}
	return isSwitched(m) || m.head == "key" && len(m.mods) == 0 && !m.isNew && m.from == m.lo
}

// isSwitched tells whether "off" switches a thing off: "key switch off", but not "pressure switch off".
func isSwitched(m *mention) bool {
	return switched.has(m.head) || m.head == "switch" && slices.ContainsFunc(m.mods, cutsPower.has)
}

// cutsPower are the words before the switches that are thrown before work begins.
var cutsPower = wordsOf("words before what cuts power")

// switched are the things that "off" switches off.
var switched = wordsOf("what is switched")

// supplies are what is switched that is no part of a machine.
var supplies = wordsOf("supplies")

// returning are the particles of a thing that goes back where it was.
var returning = set("up down through round around home over inside")

// fromThere are the words by which an "off" or "on" begins what is told next: "cover on, off we go".
var fromThere = set("with to it they she you i comes come goes go the")

var offWords = set("off out")
var onWords = set("on in")

// shafts are fasteners that go up to their place as parts do: "spindle up".
var shafts = wordsOf("shafts like parts")

// verbless reads "wheel off", "fender back on", "bolts out", "nuts on by hand", "those two out".
func (r *reading) verbless(ci int) {
	c := &r.clauses[ci]
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&(lexicon.Fastener|lexicon.Part) == 0 && !supplies.has(m.head) || m.prep != "" && m.prep != "up" {
			continue
		}
		if r.inAct(ci, mi) || r.toks[m.hi-1].brk > brkPause {
			continue
		}
		j := m.hi
		for j < c.hi && (r.toks[j].s == "straight" || r.toks[j].s == "right" || r.toks[j].s == "all" || r.toks[j].s == "then" || r.toks[j].s == "just" || r.toks[j].s == "is" || r.toks[j].s == "back" && j+1 < c.hi && (onWords.has(r.toks[j+1].s) || returning.has(r.toks[j+1].s) || placing.has(r.toks[j+1].s) || r.toks[j+1].s == "together" || (r.toks[j+1].s == "up" || r.toks[j+1].s == "down") && onWords.has(r.word(j+2))) || (r.toks[j].s == "up" || r.toks[j].s == "down") && r.toks[j-1].s == "back" && onWords.has(r.next(j))) {
			j++
		}
		if j >= c.hi {
			continue
		}
		if r.toks[j-1].s == "is" && onWords.has(r.toks[j].s) && r.next(j) == "with" {
			if o := r.nameWithin(c, j+2, 4); o >= 0 && r.mentions[o].kind&lexicon.Fastener != 0 {
				continue // "the lever is on with a pinch bolt": what holds it
			}
		}
		if m.from-2 >= c.lo && r.toks[m.from-1].s == "'s" && r.toks[m.from-2].s == "there" && r.toks[j].s != "off" {
			continue // "there's a nut back in here"
		}
		w := r.toks[j].s
		if r.shownOff(c, m, j) {
			continue
		}
		if n := r.word(j + 2); r.next(j) == "and" && r.toks[j].brk == brkNone && (w == "in" && n == "out" || w == "up" && n == "down" || w == "on" && n == "off" || w == "off" && n == "on" || w == "out" && n == "back" && !onWords.has(r.word(j+3))) {
			continue // "the arm in and out": how it runs
		}
		if n := r.next(j); r.toks[j].brk < brkSentence && (w == "on" && n == "off" || w == "off" && n == "on") && !fromThere.has(r.word(j+2)) {
			continue // "brake on, off, on, off": how it is tried
		}
		if w == "in" && r.next(j) == "back" && r.word(j+2) == "of" {
			continue // "that's the seal in back of the hub"
		}
		if n := r.next(j); (w == "up" || w == "down") && (n == "top" || n == "front" || n == "below" || n == "bottom") {
			continue // "the two screws up top": where they are
		}
		if onWords.has(w) && (r.lackedThere(j+1) || r.heldBySoMany(m, j)) {
			continue // "the clip on it's gone", "six bolts in that, they're in the tub"
		}
		back := r.toks[j-1].s == "back"
		last := j+1 >= c.hi || r.toks[j].brk != brkNone || r.toks[j+1].men >= 0 && offOrBack(w, back) || r.nextOne(c, j+1)
		var next string
		if !last {
			next = r.toks[j+1].s
		}
		ok := last || next == "and" || next == "first" || next == "by" || next == "then" || next == "now" || next == "again" || next == "here" && (back || w != "in") || next == "with" || next == "in" && (r.word(j+2) == "one" || r.word(j+2) == "two") || next == "the" && offWords.has(w) || next == "to" && back || next == "from" || next == "of" && w == "out" && r.outOf(c, j+1) || next == "loosely" || next == "finger" || next == "hand" || next == "as" || r.imperativeAt(j+1) || afterParticle.has(next) || !last && (r.toks[j+1].qty >= 0 || pluralSize[next] != 0) || strings.HasSuffix(next, "ing") && r.isVerbForm(next) || next == "i" || next == "you" || next == "that" && relates.has(r.word(j+2)) || leadsIn.has(next) && onWords.has(w) || (next == "one" || next == "each" || next == "both") && (r.word(j+2) == "side" || r.word(j+2) == "sides" || r.word(j+2) == "end" || r.word(j+2) == "ends") || next == "it" && j+2 < c.hi && (linking.has(r.toks[j+2].s) || between.has(r.toks[j+2].s) || r.toks[j+2].s == "only" || r.isVerbForm(r.toks[j+2].s) && !r.plainVerb(r.toks[j+2].s))
		name := ""
		switch {
		case offWords.has(w) && ok:
			name = "remove"
		case w == "back" && (last || next == "as" || next == "where" || next == "with" || next == "same" || next == "like" || next == "flat" || next == "square" || next == "straight") && m.kind&^lexicon.Part&lexicon.Tool == 0 && r.stretch(c, j) <= 8:
			name = "fit" // "centre cap back"
		case w == "inside" && last && m.isNew:
			name = "fit" // "new brushes inside"
		case onWords.has(w) && (ok || back) || back && (returning.has(w) || placing.has(w) || w == "together"):
			name = "fit"
		case m.kind&lexicon.Fastener != 0 && (w == "tight" || w == "up" && !shafts.has(m.head)) && (last || next == "with" || next == "tight" || next == "evenly" || next == "hand" || next == "finger" || w == "tight" && (next == "again" || next == "now" || next == "too")) && r.toks[j-1].s != "back" && !tightAsFound(r, c, j):
			name = "tighten" // "nuts up with the eighteen", "bolt tight"
		case returning.has(w) && (last || ok && (w == "down" || w == "through") || next == "just" || next == "till" || next == "until" || next == "into" || next == "onto" || next == "between" || next == "through" || next == "under" || next == "from") && r.stretch(c, j) <= 8:
			name = "fit" // "radiator up", "hairpin through": only where it had come off
		}
		returns := returning.has(w)
		if ended := last || ok; name == "" && ended && r.toks[j-1].s != "is" && !tightAsFound(r, c, j) {
			switch w {
			case "away":
				name = "remove" // "prop away"
			case "loose", "slack", "undone":
				name = "slacken" // "bottom clamp loose"
			case "open":
				name = "open"
			}
		}
		if name == "" {
			continue
		}
		if name == "remove" && m.kind&lexicon.Fastener != 0 && !last && r.turnsAt(j+1, c.hi) {
			name = "slacken" // "back screw off half a turn"
		}
		if name == "remove" && (w == "off" || supplies.has(m.head)) && isSwitched(m) {
			name = "switch off"
		}
		if name == "fit" && w == "on" && r.switchedOff(m) && !isSwitched(m) && !(back && m.plural) {
			if name = "apply"; m.head == "key" { // a handbrake
				name = "switch on"
			}
		}
		if name == "fit" && supplies.has(m.head) {
			if w != "on" {
				continue // "water in it"
			}
			name = "switch on"
		}
		hi := j + 1
		if name == "fit" && (next == "by" || next == "finger" || next == "hand" || next == "loosely") && m.kind&lexicon.Fastener != 0 {
			name = "start by hand"
		}
		act := r.lex.Action(name)
		if act == nil {
			continue
		}
		x := act2(act, m.from, hi, mi)
		x.ifOff = (returns || w == "on" && (next == "top" || m.count > 1 && (next == "each" || next == "both"))) && !back && !m.isNew // "two covers on top here": where they are
		r.addAct(ci, x)
		// what follows is no longer "on the nuts" but "nuts"
		for _, ki := range c.mentions {
			if k := &r.mentions[ki]; k.from == hi && k.prep == w && !(offWords.has(w) && articles.has(r.toks[k.from].s)) {
				k.prep = ""
			}
		}
	}
}

// shownOff tells of "this is the ram off the log splitter", "here's the pump out of the
// barge": whose a thing is that lies on the bench, and no step.
func (r *reading) shownOff(c *clause, m *mention, j int) bool {
	if w := r.next(j); !offWords.has(r.toks[j].s) || j != m.hi || w != "the" && w != "a" && w != "an" && w != "my" && w != "his" && w != "her" && w != "their" && !(w == "of" && r.word(j+2) != "the") {
		return false
	}
	for i := m.from - 1; i > c.lo && i >= m.from-3; i-- {
		if w := r.toks[i].s; w == "'s" || w == "is" || w == "are" || w == "'re" {
			p := r.toks[i-1].s
			return p == "this" || p == "these" || p == "here" && (i-1 == c.lo || r.toks[i-2].s != "that") || p == "got" || p == "today"
		}
	}
	return false
}

// lackedThere tells whether the words from token i on point to where a thing is and say that it
// is not there or not sound: "(the clip on) it's gone", "(the bulb in) that one has blown", "(the
// nipple on) the end is missing".
func (r *reading) lackedThere(i int) bool {
	switch r.word(i) {
	case "it", "this", "that", "there", "here", "these", "those", "them", "the":
	default:
		return false
	}
	for i++; r.word(i) == "one" || r.word(i) == "side" || r.word(i) == "end" || r.kind(i).is(wPlace); i++ {
	}
	if !passiveBe.has(r.word(i)) && r.word(i) != "has" && r.word(i) != "looks" {
		return false
	}
	for k := i; k < min(i+3, len(r.toks)-1) && r.toks[k].brk < brkComma; k++ {
		if w := r.toks[k+1].s; damage.has(w) || w == "gone" || w == "missing" || w == "lost" || w == "loose" {
			return true
		}
	}
	return false
}

// heldBySoMany tells whether so many fasteners "in that" or "on it" are told of, and not put there:
// what comes next says where they are kept or that they come out.
func (r *reading) heldBySoMany(m *mention, j int) bool {
	if m.kind&lexicon.Fastener == 0 || m.count < 2 || j != m.hi {
		return false
	}
	switch r.next(j) {
	case "that", "this", "it", "there", "those", "these":
	default:
		return false
	}
	i := j + 2
	if r.word(i) == "one" {
		i++
	}
	for r.word(i) == "and" || r.word(i) == "all" {
		i++
	}
	if n := r.next(i); r.word(i) == "i" && (n == "had" || n == "'d" || n == "'ve") {
		return true // "two bolts on that, I had those off already"
	}
	if w := r.word(i); w != "they" && w != "they're" && w != "those" {
		return false
	}
	for i++; r.word(i) == "'re" || r.word(i) == "are" || r.word(i) == "all" || r.word(i) == "go" || r.word(i) == "went" || r.word(i) == "sat" || r.word(i) == "sitting"; i++ {
	}
	switch w := r.word(i); w {
	case "in", "on", "over", "out", "off", "come", "came":
		return true
	}
	return false
}

// turnsAt tells whether a number of turns stands at token i: "half a turn", "two turns".
func (r *reading) turnsAt(i, hi int) bool {
	for k := i; k < min(hi, i+4); k++ {
		if w := r.toks[k].s; w == "turn" || w == "turns" {
			return true
		} else if !fractionWord.has(w) && countOf[w] == 0 && !numberWord.has(w) && !articles.has(w) && w != "of" && w != "couple" && w != "about" {
			return false
		}
	}
	return false
}

// thenOut reads "one screw in the back panel, out", "single bolt, off": how a thing is told
// apart or where it is, and after a comma that it comes off or goes on.
func (r *reading) thenOut(ci int) {
	c := &r.clauses[ci]
	if len(c.mentions) == 0 || len(c.mentions) > 3 || c.mood&notWork != 0 || ci < r.toolList[1] || c.hi-c.lo < 3 || c.hi-c.lo > 14 {
		return
	}
	i := c.hi - 1
	if !r.toks[i].is(wOff|wOn) || r.toks[i-1].brk < brkComma && r.toks[i-1].s != "both" && r.toks[i-1].s != "all" {
		return
	}
	at := i
	for r.toks[at-1].brk < brkComma && at > c.lo+1 {
		at--
	}
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&lexicon.Fastener == 0 || m.prep != "" || r.inAct(ci, mi) || m.hi > at || !r.beginsPiece(c, m) {
			continue
		}
		for k := m.hi; k < at; k++ {
			if r.toks[k].is(wLinking) || r.toks[k].brk >= brkComma && k < at-1 {
				return
			}
		}
		name := "fit"
		if r.toks[i].is(wOff) {
			name = "remove"
		}
		x := act2(r.lex.Action(name), m.from, m.hi, mi)
		x.rule = "thing, then particle"
		r.addAct(ci, x)
		return
	}
}

// outOf tells whether "of" at token i leads to the part that a thing is out of and the
// clause says no more of it: "eight bolts out of the cover and off it comes".
func (r *reading) outOf(c *clause, i int) bool {
	mi := r.nameWithin(c, i+1, 3)
	if mi < 0 {
		return false
	}
	m := &r.mentions[mi]
	if m.hi >= c.hi || r.toks[m.hi-1].brk >= brkComma {
		return true
	}
	return !r.toks[m.hi].is(wLinking) && !r.isVerbForm(r.toks[m.hi].s)
}

// left reads "that's them tight", "that's it off", "that's those nipped up": how a
// thing now is, told after it.
func (r *reading) left(ci int) {
	c := &r.clauses[ci]
	i := c.lo
	for i < c.hi && (r.toks[i].is(wOpener|wDrop) || r.toks[i].s == "and") {
		i++
	}
	if i+3 >= c.hi+1 || len(c.acts) > 0 || c.mood&(negated|conditional|hypothetical|other|asked) != 0 || r.word(i) != "that" && r.word(i) != "there" || r.next(i) != "'s" {
		return
	}
	i += 2
	var objects []int
	pron := ""
	switch m := r.toks[min(i, len(r.toks)-1)].men; {
	case i < c.hi && len(c.mentions) > 0 && r.mentions[c.mentions[0]].from == i:
		if r.mentions[c.mentions[0]].kind&(lexicon.Fastener|lexicon.Part) == 0 {
			return // "that's air gun tight"
		}
		objects, i = c.mentions[:1:1], r.mentions[c.mentions[0]].hi
	case i < c.hi && m < 0 && (pronounsObj.has(r.toks[i].s) || r.toks[i].s == "him" || r.toks[i].s == "her"):
		if pron = r.toks[i].s; pron == "him" || pron == "her" {
			pron = "it"
		}
		i++
	default:
		// "that's the four of them out", "that's both out", "that's the lot tight"
		k := i
		for k < c.hi && k < i+3 && (r.toks[k].s == "the" || r.toks[k].s == "all") {
			k++
		}
		if w := r.word(k); k >= c.hi || countOf[w] < 2 && w != "lot" || r.toks[k].qty >= 0 || r.toks[k].men >= 0 {
			return
		}
		pron = "them"
		if k++; r.word(k) == "of" && k+1 < c.hi && pronounsObj.has(r.toks[k+1].s) {
			k += 2
		}
		i = k
	}
	for i < c.hi && (r.toks[i].s == "all" || r.toks[i].s == "back" || r.toks[i].s == "nice" || r.toks[i].s == "and" || r.toks[i].s == "now" || r.toks[i].s == "both") {
		i++
	}
	if i >= c.hi || i > c.lo+9 {
		return
	}
	name := ""
	switch w := r.toks[i].s; {
	case (offWords.has(w) || w == "away") && i+1 == c.hi:
		name = "remove"
	case onWords.has(w) && i+1 == c.hi:
		name = "fit"
	case w == "tight":
		name = "tighten"
	default:
		return
	}
	x := act{action: r.lex.Action(name), lo: c.lo, hi: i + 1, verb: -1, objects: objects, pronoun: pron, subject: true, rule: "that is how it is"}
	r.addAct(ci, x)
}

// itMoves are the words by which what comes off or goes on is told after the particle:
// "off she comes", "in those go".
var itMoves = set("it she he they that this those these")

// countedMove gives the pronoun of what comes off or goes on by a particle at the end of what is told
// beside something else, "lid over, and the eight back in": "them", or "" where it does not.
func (r *reading) countedMove(c *clause, i int) string {
	if c.mood&(negated|conditional|hypothetical|other|asked) != 0 || i+1 < c.hi && r.toks[i].brk < brkPause {
		return ""
	}
	k := i - 1
	for k > c.lo && (r.toks[k].s == "back" || r.toks[k].s == "straight" || r.toks[k].s == "go" || r.toks[k].s == "come") {
		k--
	}
	if k-2 < c.lo || countOf[r.toks[k].s] < 3 || r.toks[k].men >= 0 || r.toks[k].qty >= 0 {
		return ""
	}
	if w := r.toks[k-1].s; w != "the" && w != "all" && w != "them" && w != "those" {
		return ""
	}
	if b := k - 2; r.toks[b].s != "and" && r.toks[b].s != "then" && r.toks[b].brk < brkComma {
		return ""
	}
	return "them"
}

// goes reads "on she goes", "out it comes", "out that comes".
func (r *reading) goes(ci int) {
	c := &r.clauses[ci]
	if n := c.hi - 1; n-c.lo >= 1 && n-c.lo <= 3 && (r.toks[n].s == "comes" || r.toks[n].s == "come") && (r.toks[n-1].s == "it" || r.toks[n-1].s == "she" || r.toks[n-1].s == "he" || r.toks[n-1].s == "they") &&
		ci > 0 && r.clauses[ci-1].sentence == c.sentence && len(r.clauses[ci-1].acts) > 0 && len(c.acts) == 0 && c.mood&(negated|conditional|hypothetical|other|asked) == 0 {
		// "push that down and she comes", "twist the hose and it comes"
		r.addAct(ci, act{action: r.lex.Action("remove"), lo: n - 1, hi: n + 1, verb: -1, pronoun: r.toks[n-1].s, subject: true, rule: "it comes"})
		return
	}
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		if !r.toks[i].is(wOff|wOn|wReturning) && w != "away" && w != "apart" {
			continue
		}
		p, v := r.next(i), r.word(i+2)
		if w == "on" && p == "with" && v == "it" {
			continue // "right, on with it"
		}
		if m := int(r.toks[max(i-1, 0)].men); i > c.lo && m >= 0 && r.toks[i-1].brk < brkComma && r.mentions[m].prep == "with" {
			continue // "a wire with a spring in it goes round the lip"
		}
		if returning.has(w) && (p == "she" || p == "it" || p == "he" || p == "they") && (v == "goes" || v == "go") {
			r.addAct(ci, act{action: r.lex.Action("fit"), lo: i, hi: i + 1, verb: -1, pronoun: p, subject: true, ifOff: true, rule: "particle and pronoun"})
			continue
		}
		if (w == "up" || w == "away" || w == "apart") && (p == "it" || p == "she" || p == "he" || p == "they") && (v == "comes" || v == "come") {
			pron := "it"
			if p == "they" {
				pron = "them"
			}
			r.addAct(ci, act{action: r.lex.Action("remove"), lo: i, hi: i + 1, verb: -1, pronoun: pron, subject: true, rule: "particle and pronoun"})
			continue
		}
		if !offWords.has(w) && !onWords.has(w) {
			continue
		}
		if pron := r.countedMove(c, i); pron != "" {
			name := "remove"
			if onWords.has(w) {
				name = "fit"
			}
			r.addAct(ci, act{action: r.lex.Action(name), lo: i - 1, hi: i + 1, verb: -1, pronoun: pron, subject: true, rule: "number and particle"})
			continue
		}
		// "all three out", "the bottom one's out", "both off"
		if i > c.lo && c.hi-c.lo <= 6 && i == c.hi-1 && len(c.mentions) == 0 && len(c.acts) == 0 && c.mood&(negated|conditional|other|asked) == 0 {
			q := r.toks[i-1].s
			if q == "'s" || q == "are" || q == "'re" || q == "is" || q == "come" || q == "back" || q == "straight" || q == "came" {
				q = r.word(i - 2)
			}
			if p := r.prev(i); i == c.lo+1 && (p == "those" || p == "them" || p == "these" || p == "'em" || p == "that") {
				q = "both"
				if p == "that" {
					q = "one"
				}
			} else if i > c.lo+2 && r.toks[i-2].s == "of" && (p == "those" || p == "them" || p == "these" || p == "'em") {
				if q = r.toks[i-3].s; q == "all" {
					q = "both" // "all of those out", "both of these off"
				}
			}
			if countOf[q] > 0 || q == "both" || q == "one" || q == "second" || q == "third" || q == "last" {
				name, pron := "remove", "them"
				if onWords.has(w) {
					name = "fit"
				}
				if q == "one" || q == "second" || q == "third" || q == "last" {
					pron = "one"
				}
				lo := c.lo
				for k := c.lo; k+1 < i; k++ {
					if r.toks[k].brk >= brkComma {
						lo = k + 1
					}
				}
				if k := lo - 1; k >= c.lo+2 && r.toks[k].is(wOff) && (r.toks[k-1].s == "one" || r.toks[k-1].s == "ones") && r.toks[k-2].s == "old" && w != r.toks[k].s {
					// "old one out, new one in"
					r.addAct(ci, act{action: r.lex.Action("remove"), lo: k - 2, hi: k + 1, verb: -1, pronoun: r.toks[k-1].s, subject: true, rule: "number and particle"})
				}
				r.addAct(ci, act{action: r.lex.Action(name), lo: lo, hi: i + 1, verb: -1, pronoun: pron, subject: true, rule: "number and particle"})
				return
			}
		}
		// "out with the bolt", "on with the cover"
		if p == "with" && (i == c.lo || r.toks[i-1].brk >= brkPause && r.toks[i-1].men < 0 || openers.has(r.toks[i-1].s) || r.toks[i-1].s == "and" || r.toks[i-1].s == "back") && c.mood&(negated|conditional|other|asked) == 0 {
			for _, mi := range c.mentions {
				if m := &r.mentions[mi]; m.from == i+2 && m.kind&(lexicon.Fastener|lexicon.Part) != 0 && !r.inAct(ci, mi) {
					name := "fit"
					if offWords.has(w) {
						name = "remove"
					}
					r.addAct(ci, act{action: r.lex.Action(name), lo: i, hi: m.hi, verb: -1, objects: []int{mi}, subject: true, rule: "particle and thing"})
				}
			}
			if onWords.has(w) && v == "the" && r.word(i+3) == "new" && (r.word(i+4) == "one" || r.word(i+4) == "ones") {
				r.addAct(ci, act{action: r.lex.Action("fit"), lo: i, hi: i + 5, verb: -1, pronoun: r.word(i + 4), subject: true, rule: "particle and pronoun"})
				continue // "in with the new one"
			}
			if v == "it" || v == "them" {
				name := "fit"
				if offWords.has(w) {
					name = "remove"
				}
				r.addAct(ci, act{action: r.lex.Action(name), lo: i, hi: i + 3, verb: -1, pronoun: v, subject: true, rule: "particle and pronoun"})
				continue
			}
		}
		if p == "with" && (v == "it" || v == "them" || v == "that" || v == "him" || v == "her") && (i+3 >= c.hi || r.toks[i+2].brk >= brkPause || r.isVerbForm(r.word(i+3)) || stopWords.has(r.word(i+3))) && (i == c.lo || r.toks[i-1].brk >= brkPause || openers.has(r.toks[i-1].s) || r.toks[i-1].s == "and") && c.mood&(negated|conditional|other|asked) == 0 {
			name, pron := "fit", v
			if offWords.has(w) {
				name = "remove"
			}
			if v == "him" || v == "her" {
				pron = "it"
			}
			r.addAct(ci, act{action: r.lex.Action(name), lo: i, hi: i + 3, verb: -1, pronoun: pron, subject: true, rule: "particle and pronoun"})
			continue
		}
		if p == "goes" || p == "go" || p == "comes" || p == "come" {
			if k := i + 3; onWords.has(w) && (p == "goes" || p == "go") && (v == "the" || v == "a" || v == "my") && (freshOne.has(r.word(k)) || r.word(k) == "other") && (r.next(k) == "one" || r.next(k) == "ones") && k+1 < c.hi {
				r.addAct(ci, act{action: r.lex.Action("fit"), lo: i, hi: k + 2, verb: -1, pronoun: r.next(k), subject: true, rule: "particle and pronoun"})
				continue // "in goes the new one"
			}
			// "in go the new pads"
			if m := r.nameWithin(c, i+2, 4); m >= 0 && r.mentions[m].from == i+2 && !r.inAct(ci, m) && r.mentions[m].kind&(lexicon.Fastener|lexicon.Part) != 0 {
				name := "fit"
				if offWords.has(w) {
					name = "remove"
				}
				x := act2(r.lex.Action(name), i, r.mentions[m].hi, m)
				x.rule = "particle and thing"
				r.addAct(ci, x)
			}
			continue
		}
		if !itMoves.has(p) || v != "goes" && v != "go" && v != "comes" && v != "come" || r.toks[i].brk >= brkComma || r.toks[i+1].brk >= brkComma {
			continue // not "there's varnish on it. Comes off with a rag"
		}
		if (p[0] == 't' && p != "they") && i+3 < c.hi && r.toks[i+2].brk < brkComma && !r.toks[i+3].is(wOpener|wDrop) {
			continue // "on that goes the washer"
		}
		name := "fit"
		if offWords.has(w) {
			name = "remove"
		}
		pron := "it"
		if p == "they" || p == "those" || p == "these" {
			pron = "them"
		}
		r.addAct(ci, act{action: r.lex.Action(name), lo: i, hi: i + 1, verb: -1, pronoun: pron, subject: true, rule: "particle and pronoun"})
	}
}

// withOff is the rule of a thing that is said to be off beside what is done then.
const withOff = "with it off"

// outOfTheWay reads "with the lid off you can see it", "cover out of the way": what
// is off by now, where nobody said that it came off.
func (r *reading) outOfTheWay(ci int) {
	c := &r.clauses[ci]
	if len(c.mentions) == 0 || c.mood&(negated|conditional|other|asked|aside|greeting|listing|announced) != 0 {
		return
	}
	m := &r.mentions[c.mentions[0]]
	if m.prep != "with" || m.kind&(lexicon.Part|lexicon.Fastener) == 0 || r.inAct(ci, c.mentions[0]) || m.from > c.lo+3 || r.word(m.from-2) == "even" {
		return
	}
	switch w := r.word(m.hi); {
	case m.hi >= c.hi || r.toks[m.hi-1].brk >= brkComma:
	case w == "off" || w == "removed" || w == "gone" || w == "away", w == "out" && r.next(m.hi) == "of" && r.word(m.hi+2) == "the" && r.word(m.hi+3) == "way":
		x := act2(r.lex.Action("remove"), m.from, m.hi+1, c.mentions[0])
		x.rule = withOff
		r.addAct(ci, x)
	}
}

// leadsIn are the words that lead from "on" or "in" to where exactly: "bar on over the studs".
var leadsIn = set("over through round around onto into under behind between against past")

// relates are the words by which "that" tells more of a thing: "new clip in that came in the box".
var relates = set("came comes was were i he she they i've we've")

// afterParticle are the words that begin something of their own after "wires on", "propane off".
var afterParticle = set("at per sideways completely altogether too already like facing last tight loose square flush straight nice easy so until till before after once because while for arrow lip")

// tightAsFound tells whether "tight" tells how a thing was met: "that bolt is tight".
func tightAsFound(r *reading, c *clause, j int) bool {
	for i := c.lo; i < j; i++ {
		if w := r.toks[i].s; linking.has(w) || w == "not" || w == "too" || w == "that" || w == "very" || w == "so" {
			return true
		}
	}
	return false
}

func act2(action *lexicon.Action, lo, hi, m int) act {
	return act{action: action, lo: lo, hi: hi, verb: -1, objects: []int{m}, subject: true, rule: "thing and particle"}
}
