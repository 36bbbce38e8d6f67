package extract

import (
	_ "embed"

	"wrenchword/extract/lexicon"
)

// What "a new one" is one of, and what "that's scrap" and "in the bin" are said of, is weighed
// as what an act is done to is (antecedents.go): each part named around it, or none. What the
// rules take is taken unless another weighs much more. What is used again is left to the rules,
// which do better. The weights are fitted on the lists of careful readers (fateof_test.go).

//go:embed fateof.bin
var fateOfWeights string

// The signs of the thing that a fate is told of. Their order is that of the weights: a new one
// comes last, and the weights are to be fitted again.
const (
	fofNone    sign = iota // nothing that was named
	fofRule                // the rules take it, by what tells the fate
	fofNoRule              // the rules take nothing
	fofFinder              // one of the ways to find it gives it
	fofWhere               // where it was named last, seen from what tells the fate
	fofAhead               // how soon it is named after
	fofGap                 // for how long there was talk since
	fofRank                // how many others were named since
	fofBetween             // the same, of mentions
	fofHead                // the word for it
	fofKind                // fastener, part or tool
	fofState               // how it was left
	fofDone                // what was done to it last, and how many acts ago
	fofNext                // what is done to it next
	fofHurt                // it is said to be damaged
	fofOld                 // its mention says old or new
	fofMany                // one or several, and the pronoun
	fofPrep                // the preposition before it
	fofPlace               // it is only a place, a kind, or what another has
	fofOpens               // its mention opens its clause, or is all of it
	fofAfter               // the word after its mention
	fofBefore              // the word before its mention
	fofClass               // a cover, a seat, what wears
	fofTimes               // how often it was named before
	fofBreak               // what ends after its mention
	fofIsNew               // it is known to be new
	fofMood                // the clause that names it
	fofAgain               // it is named again right after
)

// What tells a fate, beside the signals of fates.txt.
const (
	tellsNewOne = "new-one" // "a new one"
	tellsAct    = "act"     // an act by which something is thrown away
	tellsBin    = "bin"     // "Dustbin."
)

// A fateTold is where something is told to become of what is not named there.
type fateTold struct {
	ci, lo, hi  int
	by          string // what tells it
	disposition string
	many, one   bool
}

// A fateClaim is a thing or a mention that a fate may be told of; with neither, it is of none.
type fateClaim struct {
	t      *thing
	m      *mention
	weight int
	clues  []clue
}

// is tells whether the claim is of a thing, or of a mention of that name where it is none.
func (x *fateClaim) is(t *thing, m *mention) bool {
	return x.t == t && (t != nil || x.m != nil && m != nil && x.m.name == m.name)
}

// fateAhead is how much heavier than what the rules take another thing, or none, must be.
const fateAhead = 24

// fateOf gives what a fate is told of: what the rules take, or what weighs so much more.
func (r *reading) fateOf(q fateTold, ruled []told) []told {
	c := &r.clauses[q.ci]
	if r.unknownBefore(c, q.lo) || len(ruled) == 0 && q.by != tellsNewOne && q.by != tellsAct && q.by != tellsBin {
		return ruled // "the leaflet that came with it", "that same sheet from the supplier"
	}
	for i := max(c.lo, q.lo-6); i < min(q.hi+1, len(r.toks)); i++ {
		switch r.toks[i].s {
		case "all", "lot", "everything", "they", "them", "those", "these", "both", "'em", "em", "ones":
			q.many = true
		case "it", "that", "this", "he", "she", "him", "one":
			q.one = true
		}
	}
	keep := r.fateMeant != nil
	var first told
	if len(ruled) > 0 {
		first = ruled[0]
	}
	all := r.fateCandidates(&q, first)
	by := r.finders(&q)
	best, was := -1, -1
	for i := range all {
		x := &all[i]
		w := weighing{in: fateOfWeights, keep: keep}
		isRuled := len(ruled) > 0 && x.is(first.thing, first.mention)
		if isRuled {
			was = i
		}
		r.weighFate(&w, &q, x, i, isRuled, first.here, len(ruled), by)
		x.weight, x.clues = w.sum, w.kept
		if best < 0 || x.weight > all[best].weight {
			best = i
		}
	}
	w := weighing{in: fateOfWeights, keep: keep}
	r.weighNoFate(&w, &q, len(all), len(ruled) == 0)
	none := fateClaim{weight: w.sum, clues: w.kept}
	all = append(all, none)
	n := len(all) - 1
	if was < 0 {
		was = n
	}
	if best < 0 || none.weight > all[best].weight {
		best = n
	}
	if all[best].weight-all[was].weight < fateAhead {
		best = was
	}
	if keep {
		r.fateMeant(&q, all, was, best)
	}
	switch {
	case best == was:
		return ruled
	case best == n:
		return nil
	}
	x := &all[best]
	return []told{{thing: x.t, mention: x.m, lo: q.lo, hi: q.hi}}
}

// fateCandidates gives what is named before what tells a fate and right after, the nearest first.
func (r *reading) fateCandidates(q *fateTold, ruled told) []fateClaim {
	var all []fateClaim
	put := func(t *thing, m *mention) {
		if t == nil && q.by == tellsAct {
			return
		}
		for i := range all {
			if all[i].is(t, m) {
				return
			}
		}
		all = append(all, fateClaim{t: t, m: m})
	}
	for k := q.ci; k >= max(0, q.ci-14) && len(all) < 12 && r.since(r.clauses[k].lo, q.lo) < 60; k-- {
		c := &r.clauses[k]
		for i := len(c.mentions) - 1; i >= 0; i-- {
			if m := &r.mentions[c.mentions[i]]; m.lo < q.hi && m.kind&(lexicon.Part|lexicon.Fastener) != 0 {
				put(m.entry, m)
			}
		}
		for i := len(c.acts) - 1; i >= 0; i-- {
			if a := &r.acts[c.acts[i]]; a.lo < q.lo {
				for _, t := range a.things {
					put(t, nil)
				}
			}
		}
	}
	if ruled.thing != nil || ruled.mention != nil {
		put(ruled.thing, ruled.mention)
	}
	for k := q.ci; k < min(len(r.clauses), q.ci+2); k++ {
		for _, mi := range r.clauses[k].mentions {
			if m := &r.mentions[mi]; m.lo >= q.hi && m.lo < q.hi+12 && m.entry != nil && m.kind&(lexicon.Part|lexicon.Fastener) != 0 {
				put(m.entry, m)
			}
		}
	}
	return all
}

// fateFinders are what the ways of the rules to look for what a fate is told of give, each by
// itself: what is damaged, was thrown away, came off last, was brought up, is spoken of.
type fateFinders struct {
	ruined, thrown, off, heading *thing
	said                         told
}

// finders looks in each of these ways.
func (r *reading) finders(q *fateTold) *fateFinders {
	by := &fateFinders{ruined: r.ruined(q.ci, q.lo)}
	if q.by == tellsNewOne {
		by.thrown = r.thrownNear(q.ci, q.lo)
	}
	if s := r.toldOfWhat(q.ci, q.lo, q.hi); len(s) > 0 {
		by.said = s[0]
	}
	for k := q.ci; k >= max(0, q.ci-8) && by.off == nil && r.since(r.clauses[k].lo, q.lo) < 45; k-- {
		for i := len(r.clauses[k].acts) - 1; i >= 0 && by.off == nil; i-- {
			if a := &r.acts[r.clauses[k].acts[i]]; a.lo < q.lo && a.action.Name == "remove" && a.happened() && len(a.things) > 0 {
				by.off = a.things[0]
			}
		}
	}
	for k := q.ci; k >= max(0, q.ci-3) && by.heading == nil; k-- {
		if m := r.broughtUp(k); m != nil && m.hi <= q.lo {
			by.heading = m.entry
		}
	}
	return by
}

// fateClass numbers what may become of a part.
func fateClass(disposition string) int {
	switch disposition {
	case "new":
		return 1
	case "discarded":
		return 2
	}
	return 3
}

// weighNoFate weighs that a fate is told of nothing that was named.
func (r *reading) weighNoFate(w *weighing, q *fateTold, n int, noRule bool) {
	c := &r.clauses[q.ci]
	d, by := fateClass(q.disposition), wordClue(q.by)
	w.add(fofNone, 0)
	w.add(fofNone, 1+d)
	w.add(fofNone, by)
	w.add(fofNone, 8+min(n, 4)*4+d)
	if noRule {
		w.add(fofNoRule, 0)
		w.add(fofNoRule, 1+d)
		w.add(fofNoRule, by)
	}
	if q.lo > c.lo {
		w.add(fofNone, 1<<25+r.wordClueAt(q.lo-1))
	}
	if q.hi < c.hi {
		w.add(fofNone, 1<<24+r.wordClueAt(q.hi))
	}
	if q.hi+1 < c.hi {
		w.add(fofNone, 1<<21+r.wordClueAt(q.hi+1))
	}
	if q.lo > c.lo+1 {
		w.add(fofNone, 1<<20+r.wordClueAt(q.lo-2))
	}
	w.add(fofNone, 256+brkClass(r.toks[q.hi-1].brk)*4+d)
	w.add(fofNone, 512+bit(q.lo == c.lo)*4+d)
	w.add(fofNone, 1<<23+r.wordClueAt(c.lo))
	w.add(fofNone, 128+bitsOf(q.many, q.one)*4+d)
	for i := q.lo; i < q.hi; i++ {
		w.add(fofNone, 1<<22+r.wordClueAt(i))
	}
}

// weighFate weighs that a fate is told of a thing, the rank-th of those named around it.
func (r *reading) weighFate(w *weighing, q *fateTold, x *fateClaim, rank int, ruled, here bool, several int, by *fateFinders) {
	c := &r.clauses[q.ci]
	d, how := fateClass(q.disposition), wordClue(q.by)
	t := x.t
	if ruled {
		w.add(fofRule, 1)
		w.add(fofRule, 2+d)
		w.add(fofRule, 8+bit(here)*4+d)
		w.add(fofRule, how+bit(here))
		w.add(fofRule, 32+min(several, 3))
	}
	found := func(n int, so bool) {
		if so {
			w.add(fofFinder, n*4+d)
			w.add(fofFinder, 1<<12+n+how)
			w.add(fofFinder, 64+n*2+bit(ruled))
		}
	}
	found(0, t != nil && t == by.ruined)
	found(1, t != nil && t == by.thrown)
	found(2, t != nil && t == by.off)
	found(3, t != nil && t == by.heading)
	found(4, t != nil && t == by.said.thing)
	found(5, t != nil && t == by.said.thing && by.said.here)
	found(6, by.ruined != nil && t != by.ruined)
	// the mention before, and the one after
	before, after := x.m, (*mention)(nil)
	if t != nil {
		before = nil
		for i := len(t.mentions) - 1; i >= 0; i-- {
			m := &r.mentions[t.mentions[i]]
			if m.lo < q.hi {
				before = m
				break
			}
			if m.cl <= q.ci+2 {
				after = m
			}
		}
	} else if before != nil && before.lo >= q.hi {
		before, after = nil, before
	}
	kind := 0
	switch {
	case t != nil && t.fastener || before != nil && before.kind&lexicon.Fastener != 0:
		kind = 1
	case before != nil && before.kind&lexicon.Part == 0 && before.kind&lexicon.Tool != 0:
		kind = 2
	case before != nil && before.kind&lexicon.Tool != 0:
		kind = 3
	}
	kind = kind*2 + bit(t == nil)
	w.add(fofKind, kind*4+d)
	w.add(fofKind, 64+how+kind)
	where := 0
	if before != nil {
		m := before
		switch dist := q.lo - m.hi; {
		case m.cl == q.ci:
			where = 1 + min(max(dist, 0), 5)
		case r.clauses[m.cl].sentence == c.sentence:
			where = 7 + min(q.ci-m.cl, 3)
		case r.clauses[m.cl].sentence == c.sentence-1:
			where = 11 + min(q.ci-m.cl, 3)
		default:
			where = 15 + clausesOf(q.ci-m.cl)
		}
		near := 0
		switch {
		case m.cl == q.ci:
		case where <= 10:
			near = 1
		case where <= 14:
			near = 2
		default:
			near = 3
		}
		w.add(fofGap, gapOf(r.since(m.lo, q.lo))*4+d)
		w.add(fofPrep, prepOf(m.prep)*16+near*4+d)
		w.add(fofPlace, bitsOf(r.onlyPlace(m), r.onlyKind(m), r.inHave(m))*16+near*4+d)
		w.add(fofPlace, 256+bit(r.subjectLike(m))*4+d)
		w.add(fofOpens, bitsOf(r.opens(&r.clauses[m.cl], m), m.hi == r.clauses[m.cl].hi)*16+near*4+d)
		if m.hi < len(r.toks) {
			w.add(fofAfter, r.wordClueAt(m.hi)+d)
		}
		if m.from > 0 {
			w.add(fofBefore, r.wordClueAt(m.from-1)+d)
		}
		if m.from < m.lo {
			w.add(fofBefore, 1<<28+r.wordClueAt(m.from)+d)
		}
		w.add(fofBreak, brkClass(r.toks[m.hi-1].brk)*128+where*4+d)
		w.add(fofOld, bitsOf(m.isOld, m.isNew)*4+d)
		w.add(fofOld, 64+bitsOf(m.isOld, m.isNew)+how)
		p := &r.clauses[m.cl]
		w.add(fofMood, bitsOf(p.mood&(negated) != 0, p.mood&(conditional|hypothetical|asked) != 0, p.mood&(other|aside) != 0)*4+d)
		hurt, names, at := 0, 0, m.hi
		for k := m.cl; k <= q.ci && k < m.cl+4; k++ {
			for i := max(r.clauses[k].lo, m.lo); i < min(r.clauses[k].hi, q.lo+8); i++ {
				if o := r.toks[i].men; o >= 0 && i >= m.hi && r.mentions[o].lo == i && r.mentions[o].entry != t {
					names++
				}
				if i != at && r.toks[i].is(wSeldom) && damage.has(r.toks[i].s) && r.toks[i].men < 0 && names == 0 {
					hurt = 1 + bit(k > m.cl)
				}
			}
		}
		w.add(fofHurt, hurt*4+d)
		w.add(fofBetween, min(names, 5)*4+d)
		w.add(fofBetween, 64+min(names, 5)+how)
		if names == 0 {
			w.add(fofBetween, 1<<12+where*4+d)
		}
	}
	w.add(fofWhere, where*4+d)
	w.add(fofWhere, 1<<12+where+how)
	w.add(fofRank, min(rank, 6)*4+d)
	w.add(fofRank, 64+min(rank, 6)+how)
	if after != nil {
		w.add(fofAhead, min(max(after.from-q.hi, 0), 8)*4+d)
		w.add(fofAhead, 64+bitsOf(after.isNew, after.isOld, before == nil)*4+d)
		w.add(fofAgain, d)
	}
	head := ""
	plural := false
	if t != nil {
		head, plural = t.head, t.many() || t.plural
	} else if x.m != nil {
		head, plural = x.m.head, x.m.plural
	}
	if before != nil {
		plural = plural || before.plural || before.count > 1
	}
	w.add(fofMany, bitsOf(plural, q.many, q.one)*4+d)
	w.add(fofMany, 64+bitsOf(plural, q.many, q.one)+how)
	h := wordClue(head)
	w.add(fofHead, h)
	w.add(fofHead, h*31+d)
	w.add(fofClass, bitsOf(covers.has(head), seatsOfNew.has(head), soft.has(head), wears.has(head))*4+d)
	w.add(fofClass, 128+bitsOf(containers.has(head), wholes.has(head), makeshifts.has(head))*4+d)
	if t == nil {
		return
	}
	st := 0
	var last, next *event
	for i := range t.events {
		e := &t.events[i]
		if e.lo < q.lo {
			last = e
			if s := ledgerActs[e.action]; s != "" {
				st = stateOf(s)
			}
		} else if next == nil && e.lo >= q.hi {
			next = e
		}
	}
	w.add(fofState, st*4+d)
	w.add(fofState, 64+st+how)
	w.add(fofState, 256+(st*8+kind)*4+d)
	if last != nil {
		g := gapOf(r.since(last.lo, q.lo))
		w.add(fofDone, wordClue(last.action)+d)
		w.add(fofDone, g*4+d)
		w.add(fofDone, 64+(g*8+st)*4+d)
	}
	if next != nil && q.by != tellsAct && r.since(q.lo, next.lo) < 60 {
		w.add(fofNext, wordClue(next.action)+d)
		w.add(fofNext, gapOf(r.since(q.lo, next.lo))*4+d)
	}
	n := 0
	for _, k := range t.mentions {
		if r.mentions[k].lo < q.lo {
			n++
		}
	}
	w.add(fofTimes, min(n, 5)*4+d)
	if q.by != tellsAct {
		w.add(fofIsNew, bit(t.isNew)*4+d)
		isNew, isOld := false, false
		for _, k := range t.mentions {
			isNew = isNew || r.mentions[k].isNew
			isOld = isOld || r.mentions[k].isOld
		}
		w.add(fofIsNew, 64+bitsOf(isNew, isOld, st == 1, next != nil && fastens[next.action])*4+d)
	}
}

// toldOf gives what the rules take, nothing where they take nothing.
func toldOf(t *thing, lo, hi int) []told {
	if t == nil {
		return nil
	}
	return []told{{thing: t, lo: lo, hi: hi}}
}

// thrownBy gives what an act that names nothing throws away.
func (r *reading) thrownBy(a *act, ruled *thing) *thing {
	if len(a.objects) > 0 || !a.happened() {
		return ruled
	}
	if s := r.fateOf(fateTold{ci: a.cl, lo: a.lo, hi: a.hi, by: tellsAct, disposition: "discarded"}, toldOf(ruled, a.lo, a.hi)); len(s) > 0 {
		if s[0].thing == nil {
			return ruled
		}
		return s[0].thing
	}
	return nil
}
