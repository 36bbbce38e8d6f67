package extract

import (
	_ "embed"
	"math"
	"slices"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// Which fastener a value is for is weighed as whose an unnamed fastener is (owners.go): a
// thing spoken of before or in the same breath, one that is named right after, or none. The
// weights are fitted on talk that careful readers judged (values_test.go).

//go:embed values.bin
var valueWeights string

// The signs of what a value is for. Their order is that of the weights: a new one comes
// last, and the weights are to be fitted again.
const (
	valThing      sign = iota // a fastener, or a part that is tightened itself
	valPart                   // a part whose fasteners it is for
	valAhead                  // named right after
	valNone                   // nothing told
	valWhere                  // where it was named last, seen from the value
	valWherePrep              // the same, and the preposition before it
	valWord                   // the same, and the word before the value
	valWordAfter              // named after the value in the clause, and the word after the value
	valAfter                  // named in the clause after the value, how far off
	valAfterPrep              // the same, and the preposition
	valGap                    // for how long there was talk since it was spoken of
	valRank                   // how many others were spoken of since
	valBetween                // how many values were told since it was named
	valBetweenAt              // the same, and where it was named last
	valNames                  // how many other things were named since
	valState                  // how it was left
	valStateRank              // the same, and how many others were spoken of since
	valHad                    // it had a value, and how lately
	valLast                   // the last value was for it
	valLastSame               // the same, and how the two values compare
	valDone                   // the clause does something to it
	valDoneLast               // it is what was last done something to
	valMany                   // for how many the value is told, and how many it is
	valOpens                  // its mention opens the clause
	valTopic                  // the talk turned to it
	valHeading                // a clause did nothing but name it
	valHead                   // the word for it
	valWorth                  // the word for it, and the value
	_                         // free
	valOwner                  // where its part was named last
	valOwnerTopic             // the talk turned to its part
	_                         // free
	valBare                   // the value has no unit, and where it was named last
	valDoc                    // a document or somebody gives the value, and where it was named last
	valPointed                // this one, these, it before the value
	valPassing                // it was named in passing
	valEvents                 // how often something was done to it
	valNew                    // first named just now
	valHand                   // started by hand and waits
	valOwns                   // a part that no bolt is named after
	valRule                   // the rules take it, and by which
	valRun                    // the last value was for it, or not, and what was named since
	valSigns
)

// valued is a value, with what all clues about it share.
type valued struct {
	ci      int
	c       *clause
	q       *quantity
	worth   int
	word    int // the word before it
	after   int // the word after it
	many    int // for how many it is told
	pointed int
	doc     int
	bare    int
	topic   *thing
	last    *heard
	done    map[*thing]bool // what the clause does something to
	lately  *thing          // what was last done something to
	ruled   *thing          // what the rules take
	rule    int
	run     int // how many fasteners and parts were named since the last value
}

// takesValue tells whether a value may be for a thing itself.
func takesValue(t *thing) bool {
	return takesTorque(t) || t.fastener && !isLock(t) || tightens.has(t.head) || screwClip(t) || screwedIn.has(t.head) || screwedOn.has(t.head) || t.head == "pin"
}

// pushedThrough tells whether a thing is a pin that has neither thread nor head to turn.
func pushedThrough(t *thing) bool {
	if t.head != "pin" {
		return false
	}
	for _, w := range []string{"split", "cotter", "roll", "linch", "lynch", "hitch", "r", "dowel", "shear", "taper"} {
		if t.mods[w] {
			return true
		}
	}
	return false
}

// inDoubt is how near another answer may be, in 24ths of the logarithm of the odds, for a value
// to be of either: of values so near half go to what they are for, of the others four in five.
const inDoubt = 36

// valueFor gives what a value is for, and by what: nil where nothing is heavier; and another
// thing that it may as well be for.
func (s *tracker) valueFor(ci int, q *quantity) (of *thing, rule string, or *thing) {
	r := s.r
	ruled, rule := s.ownerOfValue(ci, q)
	keep := r.valueClaimed != nil
	if (len(s.hand) < 4 || rule == toldForIt || rule == namedBeforeIt) && !keep {
		return ruled, rule, nil // there is little to choose from, or nothing
	}
	c := &r.clauses[ci]
	v := valued{ci: ci, c: c, q: q, topic: s.onTopic(q.lo), done: map[*thing]bool{}, ruled: ruled, rule: wordClue(rule)}
	if nm, ok := normalize.ToNM(q.Low, q.Unit); ok {
		f, _ := nm.Float64()
		v.worth = 1 + int(math.Log2(max(f, 0.5))*2)
	}
	if q.unitFrom != "" {
		v.bare = 1
	}
	if q.lo > c.lo {
		v.word = r.wordClueAt(q.lo - 1)
	}
	if q.hi < c.hi {
		v.after = r.wordClueAt(q.hi)
	}
	if n, many := r.toldForHowMany(c, q); many {
		v.many = 1 + min(n, 5)
	}
	for i := c.lo; i < q.lo; i++ {
		switch w := r.toks[i].s; w {
		case "this", "that":
			v.pointed = 1
		case "these", "those", "they", "them":
			v.pointed = 2
		case "it":
			v.pointed = 3
		default:
			if saying.has(w) || documents.has(w) {
				v.doc = 1
			}
		}
	}
	if n := len(r.heard); n > 0 && !r.heard[n-1].dropped {
		v.last = &r.heard[n-1]
	}
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.lo-q.hi <= 4 {
			for _, t := range a.things {
				v.done[t] = true
			}
		}
	}
	for _, a := range r.actsBefore(ci, q.lo, 6, 1) {
		v.lately = a.things[len(a.things)-1]
	}
	if v.last != nil {
		fasteners, parts := r.namedSince(&r.qtys[v.last.qty], ci, q.lo)
		v.run = min(fasteners, 2)*3 + min(parts, 2)
	}
	top := newContest()
	var all []claim
	put := func(t *thing, ahead int, w *weighing) {
		if ahead < 0 && t == v.ruled || ahead >= 0 && v.ruled != nil && r.mentions[ahead].entry == v.ruled {
			w.add(valRule, 1)
			w.add(valRule, 2+v.rule)
			w.sum += ruledAhead
		}
		x := claim{t, ahead, w.sum, w.kept}
		top.put(x)
		if keep {
			all = append(all, x)
		}
	}
	fasteners, parts := 0, 0
	consider := func(t *thing) {
		w := weighing{in: valueWeights, keep: keep}
		if takesValue(t) {
			s.weighValue(&w, &v, t, fasteners, valThing)
			fasteners++
		} else if f := s.fastenerOf(t); !t.fastener && f == nil && !wholes.has(t.head) {
			s.weighValue(&w, &v, t, parts, valPart)
			parts++
		} else {
			return
		}
		if !pushedThrough(t) {
			put(t, -1, &w)
		}
	}
	for i := len(s.hand) - 1; i >= 0; i-- {
		t := s.hand[i]
		if r.since(t.last, q.lo) > 300 {
			break
		}
		if n := len(t.mentions); t.name == "" && t.owner == nil && !t.fastener || documents.has(t.head) || n > 0 && r.ofSource(&r.mentions[t.mentions[n-1]]) {
			continue
		}
		consider(t)
	}
	if ruled != nil && !slices.Contains(s.hand, ruled) {
		consider(ruled) // first named in this very clause
	}
	// named right after: "… newton metres on the hub nut", "That's the belt cover."
	for k := ci + 1; k <= min(ci+2, len(r.clauses)-1); k++ {
		n := &r.clauses[k]
		if r.since(q.hi-1, n.lo) > 8 {
			break
		}
		for j, mi := range n.mentions {
			m := &r.mentions[mi]
			if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.from-q.hi > 14 || j > 1 {
				continue
			}
			w := weighing{in: valueWeights, keep: keep}
			w.add(valAhead, 0)
			w.add(valAhead, 8+min(m.from-q.hi, 7))
			w.add(valAhead, 32+(k-ci)*4+j)
			w.add(valAhead, 64+prepOf(m.prep)*8+min(m.from-q.hi, 7))
			w.add(valAhead, 256+r.wordClueAt(n.lo))
			w.add(valAhead, 1<<29+r.wordClueAt(m.from)*4+k-ci)
			w.add(valAhead, 1<<28+min(m.from-n.lo, 5)*8+min(n.hi-m.hi, 7))
			w.add(valAhead, 1<<27+len(n.acts)*4+len(n.qtys))
			w.add(valAhead, 1<<26+brkClass(r.toks[n.lo-1].brk)*4+k-ci)
			if m.kind&lexicon.Fastener != 0 {
				w.add(valAhead, 1<<25)
			}
			w.add(valAhead, 1<<24+s.nearestBefore(&v))
			put(nil, mi, &w)
		}
	}
	w := weighing{in: valueWeights, keep: keep}
	w.add(valNone, min(fasteners, 3))
	w.add(valNone, 8+min(parts, 3))
	w.add(valNone, 16+v.bare*2+v.doc)
	w.add(valNone, 32+s.nearestBefore(&v))
	w.add(valNone, 1<<20+v.word)
	put(nil, -1, &w)
	if keep {
		r.valueClaimed(q, v.ruled, all, top.best)
	}
	t := top.best.t
	if top.best.ahead >= 0 {
		m := &r.mentions[top.best.ahead]
		if m.entry == nil {
			m.entry = s.resolve(m.cl, top.best.ahead)
		}
		t = m.entry
	}
	or = s.fastened(top.close(inDoubt))
	switch {
	case t == v.ruled:
		return t, rule, or
	case t == nil:
		return nil, noneTold, or
	}
	return s.fastened(t), weighed, or
}

// namedSince counts what was named between a value and a token in the clause ci, no more than a
// minute back.
func (r *reading) namedSince(p *quantity, ci, at int) (fasteners, parts int) {
	for k := ci; k >= p.cl && r.since(r.clauses[k].hi-1, at) < 60; k-- {
		for _, mi := range r.clauses[k].mentions {
			switch m := &r.mentions[mi]; {
			case m.lo < p.hi || m.lo >= at || documents.has(m.head):
			case m.kind&lexicon.Fastener != 0:
				fasteners++
			case m.kind&lexicon.Part != 0:
				parts++
			}
		}
	}
	return fasteners, parts
}

// weighed is the rule of a value that the clues give to another thing than the rules do.
const weighed = "likeliest of what was spoken of"

// fastened gives the fastener that holds a part, where it was spoken of.
func (s *tracker) fastened(t *thing) *thing {
	if t == nil || takesValue(t) {
		return t
	}
	if f := s.fastenerOf(t); f != nil {
		return f
	}
	return t
}

// nearestBefore tells how far before a value in its clause something is named, 7 where nothing is.
func (s *tracker) nearestBefore(v *valued) int {
	for k := len(v.c.mentions) - 1; k >= 0; k-- {
		if m := &s.r.mentions[v.c.mentions[k]]; m.hi <= v.q.lo && m.kind&(lexicon.Fastener|lexicon.Part) != 0 {
			return min(v.q.lo-m.hi, 6)
		}
	}
	return 7
}

// whereNamed puts the place of a mention before a value into classes.
func (r *reading) whereNamed(mi int, v *valued) int {
	if mi < 0 {
		return 0
	}
	m := &r.mentions[mi]
	switch d := v.q.lo - m.hi; {
	case m.cl == v.ci:
		return 1 + min(d, 7)
	case r.clauses[m.cl].sentence == v.c.sentence:
		return 9 + min(v.ci-m.cl, 4)
	case r.clauses[m.cl].sentence == v.c.sentence-1:
		return 14 + min(v.ci-m.cl, 4)
	}
	return 19 + clausesOf(v.ci-m.cl)
}

// weighValue weighs that a value is for a thing, the rank-th latest of its kind.
func (s *tracker) weighValue(w *weighing, v *valued, t *thing, rank int, as sign) {
	r := s.r
	q := v.q
	before, after := r.namedAround(t, v.ci, q.lo)
	where := r.whereNamed(before, v)
	gap := gapOf(r.since(min(t.last, q.lo), q.lo))
	st, had := t.state()
	state := stateOf(st)
	part := 0
	if as == valPart {
		part = 1
	}
	w.add(as, 0)
	w.add(as, 1+where)
	w.add(valWhere, where*2+part)
	w.add(valWord, v.word+where*2+part)
	w.add(valBare, (where*2+part)*2+v.bare)
	w.add(valDoc, (where*2+part)*2+v.doc)
	w.add(valPointed, (where*4+v.pointed)*2+part)
	w.add(valGap, gap*2+part)
	w.add(valRank, min(rank, 5)*2+part)
	w.add(valState, state*2+part)
	w.add(valStateRank, (state*8+min(rank, 5))*2+part)
	if before >= 0 {
		m := &r.mentions[before]
		w.add(valWherePrep, (where*16+prepOf(m.prep))*2+part)
		values, names := 0, 0
		for i := len(r.heard) - 1; i >= 0 && values < 3 && r.qtys[r.heard[i].qty].lo >= m.hi; i-- {
			values++
		}
		for k := before + 1; k < min(len(r.mentions), before+farMentions) && r.mentions[k].lo < q.lo; k++ {
			if o := &r.mentions[k]; o.kind&(lexicon.Fastener|lexicon.Part) != 0 && o.entry != t && o.entry != nil {
				if names++; names > 5 {
					break
				}
			}
		}
		w.add(valBetween, values*2+part)
		w.add(valBetweenAt, (where*4+values)*2+part)
		w.add(valNames, (min(names, 5)*4+values)*2+part)
		if r.opens(&r.clauses[m.cl], m) {
			w.add(valOpens, where*2+part)
		}
		if s.inPassing(m.cl, before) {
			w.add(valPassing, part)
		}
	}
	if after >= 0 {
		m := &r.mentions[after]
		w.add(valAfter, min(m.from-q.hi, 9)*2+part)
		w.add(valAfterPrep, (prepOf(m.prep)*16+min(m.from-q.hi, 9))*2+part)
		w.add(valWordAfter, v.after+part)
		w.add(valAfter, 64+s.nearestBefore(v)*2+part)
	}
	if had {
		w.add(valHad, gap)
	}
	if v.last != nil {
		p := &r.qtys[v.last.qty]
		since := gapOf(r.since(p.hi, q.lo))
		run := (v.run*2+v.doc)*8 + since
		switch of := v.last.of; {
		case of == t || of != nil && of.owner == t:
			w.add(valRun, run)
			w.add(valLast, since)
			w.add(valLast, 8+where)
			same := 0
			if p.Low != nil && p.Low.Cmp(q.Low) == 0 {
				same = 1
			}
			w.add(valLastSame, (same*2+v.doc)*8+since)
		default:
			w.add(valRun, 1<<10+run)
			w.add(valLast, 64+since)
		}
	}
	if v.done[t] || t.owner != nil && v.done[t.owner] {
		w.add(valDone, part)
	}
	if v.lately == t || t.owner != nil && v.lately == t.owner {
		w.add(valDoneLast, part)
		w.add(valDoneLast, 2+rank)
	}
	n := 1
	if t.many() {
		n = 2
		if t.count > 1 {
			n = 2 + min(t.count, 6)
		}
	}
	w.add(valMany, (v.many*16+n)*2+part)
	w.add(valMany, 1<<12+(v.pointed*16+n)*2+part)
	if v.topic == t {
		w.add(valTopic, gapOf(r.since(s.topicAt, q.lo))*2+part)
	}
	if s.heading == t {
		w.add(valHeading, gapOf(r.since(s.headingAt, q.lo))*2+part)
	}
	w.add(valHead, wordClue(t.head)+part)
	w.add(valWorth, wordClue(t.head)+part+2*v.worth)
	if t.owner != nil {
		b, a := r.namedAround(t.owner, v.ci, q.lo)
		w.add(valOwner, r.whereNamed(b, v))
		if a >= 0 {
			w.add(valOwner, 64)
		}
		if v.topic == t.owner {
			w.add(valOwnerTopic, 0)
		}
		w.add(valWorth, 1<<29+wordClue(t.owner.head)+2*v.worth)
	}
	w.add(valEvents, min(len(t.events), 4)*2+part)
	if t.first >= v.c.lo {
		w.add(valNew, part)
	}
	if st == HandTight {
		w.add(valHand, gap)
	}
	if t.ownsNone() {
		w.add(valOwns, part)
	}
}
