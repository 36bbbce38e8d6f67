package extract

import (
	_ "embed"
	"math"
	"strings"

	"wrenchword/extract/lexicon"
)

// Whose a fastener is that is told by its word alone ("two bolts", "that nut") is weighed:
// each answer that the talk leaves open has its clues, each clue its weight, and the heaviest
// is taken. The weights are fitted on talk that careful readers judged (owners_test.go).

// A claim is one answer: a fastener spoken of before, the fastener of a part spoken of before
// or right after, or, with neither, nobody's.
type claim struct {
	t      *thing
	ahead  int // mention of a part that is named right after, -1 where it is none
	weight int
	clues  []clue // only where they are to be kept
}

// contest keeps the heaviest of the claims put to it, and the one after that.
type contest struct{ best, next claim }

func newContest() contest {
	none := claim{ahead: -1, weight: math.MinInt}
	return contest{none, none}
}

func (x *contest) put(c claim) {
	switch {
	case c.weight > x.best.weight:
		x.best, x.next = c, x.best
	case c.weight > x.next.weight:
		x.next = c
	}
}

// close gives what the claim after the heaviest is of, where that weighs so little less.
func (x *contest) close(within int) *thing {
	if x.next.weight > x.best.weight-within {
		return x.next.t
	}
	return nil
}

// fastener tells whether the claim is one spoken of before.
func (c *claim) fastener() bool { return c.t != nil && c.t.fastener && alike.has(c.t.head) }

// A clue is something heard that speaks for or against a claim: the place of its weight.
type clue uint32

//go:embed owners.bin
var ownerWeights string

// ownerClues is how many weights there are.
const ownerClues = 1 << 15

// clueOf gives the place of the weight that a sign has where it has a value.
func clueOf(s sign, value int) clue {
	return clue((uint32(s)<<12 + uint32(value)) * 2654435761 >> 17)
}

// weighing adds up the clues of one claim.
type weighing struct {
	in   string // the weights
	sum  int
	keep bool
	kept []clue
}

func (w *weighing) add(s sign, value int) {
	k := clueOf(s, value)
	w.sum += int(int8(w.in[k]))
	if w.keep {
		w.kept = append(w.kept, k)
	}
}

// A sign is a kind of clue. Their order is that of the weights: a new one comes last, and the
// weights are to be fitted again.
type sign uint16

const (
	isFastener sign = iota
	isPart
	isAhead
	isNobodys
	isWhich        // by which word it is told from others: the other, the last, the big one
	gapIs          // for how long there was talk since the thing was spoken of
	clausesIs      // the same in clauses
	rankIs         // how many others of its kind were spoken of since
	rankDoing      // the same, and whether things come off or go on
	rankPointed    // the same, and how the mention points
	doingPointed   // how the mention points: the, this, two, a
	wordIs         // called by the same word before
	countIs        // as many as before
	ownerIs        // whose it is: how lately that part was spoken of
	ownerDone      // what became of that part
	ownerInClause  // its part is named in the clause
	partBetween    // another part is named in the clause
	partsSince     // how many other parts were named since
	fastenersSince // a fastener was named since, the part's or another's
	stateIs        // how it was left, and what is done now
	stateFresh     // how it was left, where a new one is spoken of
	placeIs        // a word of place tells it
	turnedSince    // the talk turned to another part since
	opensWith      // the clause opens with it
	prepIs         // the preposition before it
	saidTimes      // how often it was spoken of
	isFresh        // it was first spoken of just now
	headIs         // which part it is
	topicIs        // the talk turned to it
	headingIs      // a clause did nothing but name it
	ownsNoneIs     // no bolt is named after such a part
	wholeIs        // it is the whole machine
	passingIs      // it was named in passing
	clausePreps    // both prepositions, in one clause
	unrealIs       // it was named in a warning, a case, a story
	pluralIs       // they are several
	definiteIs     // the, this
	doneIs         // what was done to it last
	toolIs         // it may be a tool
	sentenceIs     // how many sentences ago
	turnWord       // right, next, now since
	hasIs          // it has fasteners of that word already
	holdsIt        // said to hold it
	saidNext       // it is named again right after
	namedSo        // a fastener is named after it somewhere in the talk
	besideIs       // the same breath gives the fastener to it
	besideNot      // the same breath gives it to another
	seatIs         // another part was put on it
	meanwhileIs    // it was only held, or tells how another lies
)

// unnamed is a mention of a fastener by its word alone, with what all clues about it share.
type unnamed struct {
	ci, mi   int
	m        *mention
	c        *clause
	doing    int
	pointing int
	which    int
	opens    int
	topic    *thing
	beside   int // mention of the part that the same breath gives it to, -1 where none is, and how
	besideBy int
	latest   [4]*thing // the parts spoken of last, the latest first
}

// onlyParts asks for no fastener spoken of before: the fastener is known not to be one.
const (
	anyClaim  = false
	onlyParts = true
)

// nearlyAsLikely is how near the next answer has to be for either to be right, in 24ths of the
// logarithm of the odds.
const nearlyAsLikely = 24

// whose gives the heaviest answer to whose the fastener of a mention is, and what else it may as
// well mean or be of.
func (s *tracker) whose(ci, mi int, partsOnly bool) (best claim, or *thing) {
	r := s.r
	m := &r.mentions[mi]
	q := unnamed{ci: ci, mi: mi, m: m, c: &r.clauses[ci], doing: doingOf(r.actOn(ci, mi)), pointing: pointing(r, m), which: whichOf(r, m), topic: s.onTopic(m.lo)}
	if q.doing == 0 && s.fitting(m.lo) {
		q.doing = 4
	} else if q.doing == 0 && s.apart(m.lo) {
		q.doing = 5
	}
	if r.opens(q.c, m) {
		q.opens = 1
	}
	q.beside, q.besideBy = r.givenTo(ci, mi)
	n := 0
	for i := len(s.hand) - 1; i >= 0 && n < len(q.latest); i-- {
		if o := s.hand[i]; !o.fastener && !o.ownsNone() {
			q.latest[n] = o
			n++
		}
	}
	top := newContest()
	var all []claim
	put := func(t *thing, ahead int, w *weighing) {
		c := claim{t, ahead, w.sum, w.kept}
		top.put(c)
		if w.keep {
			all = append(all, c)
		}
	}
	keep := r.claimed != nil && !partsOnly
	parts, fasteners := 0, 0
	topicSeen := false
	for i := len(s.hand) - 1; i >= 0; i-- {
		t := s.hand[i]
		gap := r.since(t.last, m.lo)
		if gap > 240 {
			break
		}
		w := weighing{in: ownerWeights, keep: keep}
		switch {
		case t.fastener && alike.has(t.head):
			if !partsOnly && s.mayMean(t, m) {
				s.weighFastener(&w, &q, t, i, fasteners)
				fasteners++
				put(t, -1, &w)
			}
		case (!t.fastener || heldByBolts.has(t.head) && !partsOnly) && gap < 120 && (!t.ownsNone() || ownEnds.has(t.head)):
			s.weighPart(&w, &q, t, parts)
			topicSeen = topicSeen || t == q.topic
			parts++
			put(t, -1, &w)
		}
	}
	if q.topic != nil && !topicSeen {
		w := weighing{in: ownerWeights, keep: keep}
		s.weighPart(&w, &q, q.topic, parts)
		put(q.topic, -1, &w)
	}
	for k := mi + 1; k < min(len(r.mentions), mi+6); k++ {
		o := &r.mentions[k]
		if o.cl > ci+2 || r.since(m.lo, o.lo) > 10 {
			break
		}
		if o.kind&lexicon.Part == 0 || o.kind&lexicon.Fastener != 0 && !heldByBolts.has(o.head) || o.head == unsaid || o.ownsNone() && !ownEnds.has(o.head) || s.inHand(o) || r.clauses[o.cl].sentence != q.c.sentence && s.doneTo(k) != comesOff {
			continue
		}
		w := weighing{in: ownerWeights, keep: keep}
		s.weighAhead(&w, &q, k)
		put(nil, k, &w)
	}
	w := weighing{in: ownerWeights, keep: keep}
	w.add(isNobodys, min(parts, 3))
	w.add(isNobodys, 8+q.doing)
	w.add(isNobodys, 16+q.pointing)
	put(nil, -1, &w)
	if keep {
		r.claimed(mi, all, top.best)
	}
	if t := s.soManyBefore(&q); t != nil && t != top.best.t && !partsOnly {
		return claim{t: t, ahead: -1, weight: top.best.weight}, top.best.t
	}
	return top.best, top.close(nearlyAsLikely)
}

// soManyBefore gives the only fasteners spoken of before that go by the same word and are as many
// as "the six bolts", where nothing beside gives them to a part; nil where none or several are.
func (s *tracker) soManyBefore(q *unnamed) *thing {
	if m := q.m; !m.definite || m.count < 3 || q.beside >= 0 || q.which != 0 {
		return nil
	}
	var found *thing
	for _, t := range s.hand[max(0, len(s.hand)-60):] {
		if !t.fastener || t.head != q.m.head || s.r.countAgrees(t, q.m) != 0 {
			continue
		}
		if found != nil && found != t || !s.mayMean(t, q.m) {
			return nil
		}
		found = t
	}
	return found
}

// heldByBolts are fastenings with bolts, nuts or screws of their own.
var heldByBolts = wordsOf("have bolts of their own")

// givenTo gives the mention of the part that the clause of a fastener, or the next one, gives
// it to, and by what: 1 by a preposition after it, 2 by saying that it holds it, 3 by naming the
// part right before it, 4 earlier in the clause; -1 where nothing does.
func (r *reading) givenTo(ci, mi int) (part, by int) {
	m := &r.mentions[mi]
	c := &r.clauses[ci]
	before := -1
	for _, k := range c.mentions {
		o := &r.mentions[k]
		if (o.kind&lexicon.Part == 0 || o.kind&lexicon.Fastener != 0) && !heldByBolts.has(o.head) || k == mi {
			continue
		}
		switch {
		case o.hi <= m.from:
			switch o.prep {
			case "from", "with", "behind", "off", "under", "over":
				continue
			}
			if before < 0 || o.prep == "" && !r.holdsBetween(r.mentions[before].hi, o.from) {
				before = k // "this bracket that holds the hose": the bracket, not the hose
			}
		case o.from < m.hi || o.from-m.hi > 6:
		case r.holdsBetween(m.hi, o.from):
			return k, 2
		case o.prep == "on" || o.prep == "of" || o.prep == "for" || o.prep == "in" && !containers.has(o.head) || o.prep == "through" || o.prep == "at":
			return k, 1
		}
	}
	if n := ci + 1; n < len(r.clauses) && r.clauses[n].sentence == c.sentence && c.hi-m.hi <= 3 {
		n := &r.clauses[n]
		if w := r.toks[n.lo].s; w == "which" || w == "that" || w == "holding" {
			for _, k := range n.mentions {
				if o := &r.mentions[k]; o.kind&lexicon.Part != 0 && o.kind&lexicon.Fastener == 0 && r.holdsBetween(n.lo, o.from) {
					return k, 2
				}
			}
		}
	}
	switch {
	case before < 0:
		return -1, 0
	case m.from-r.mentions[before].hi <= 3:
		return before, 3
	}
	return before, 4
}

// ownEnds are the parts that hold nothing and may be held by a nut or a bolt of their own.
var ownEnds = wordsOf("may have a nut of their own")

// inHand tells whether a part of that name is in hand already.
func (s *tracker) inHand(o *mention) bool {
	for i := len(s.hand) - 1; i >= 0 && s.r.since(s.hand[i].last, o.lo) < 120; i-- {
		if t := s.hand[i]; !t.fastener && t.head == o.head && !placesClash(o.mods, t.mods) {
			return true
		}
	}
	return false
}

// mayMean tells whether a bare mention may mean a fastener spoken of before at all.
func (s *tracker) mayMean(t *thing, m *mention) bool {
	r := s.r
	if placesClash(m.mods, t.mods) || nutAndBolt(t.head, m.head) || t.of != nil && m.place == "" && (m.plural || m.count > 1) {
		return false
	}
	if t.head != m.head && (s.handHas(m) || r.namedElse(t, m)) {
		return false // "two bolts and two nuts"
	}
	if m.count > 1 && !m.definite && !t.many() && t.of == nil && t.owner == nil && contentCount(t.mods) > 0 {
		return false // "one cap screw at the end. The half nut, two screws"
	}
	return !tooMany(t, m) && !r.toldApart(t, m)
}

// weighFastener weighs that a mention means a fastener spoken of before, the rank-th latest of
// those, and the one at that place in hand.
func (s *tracker) weighFastener(w *weighing, q *unnamed, t *thing, at, rank int) {
	r := s.r
	m := q.m
	since := 0
	for _, o := range s.hand[at+1:] {
		if !o.fastener && o != t.owner && !owns(o, t) && !o.ownsNone() {
			since++
		}
	}
	st, _ := t.state()
	if st == Removed && r.onlyHeaded(t) {
		st = Loosened // so far it was only named
	}
	state := stateOf(st)
	gap := gapOf(r.since(t.last, m.lo))
	w.add(isFastener, 0)
	if q.beside >= 0 {
		if o := r.mentions[q.beside].entry; o != nil && (t.owner == o || owns(o, t)) {
			w.add(besideIs, q.besideBy)
		} else {
			w.add(besideNot, q.besideBy)
		}
	}
	w.add(doingPointed, q.pointing)
	w.add(gapIs, gap)
	w.add(clausesIs, clausesOf(q.ci-int(r.toks[t.last].cl)))
	w.add(rankIs, min(rank, 4))
	w.add(partsSince, min(since, 4)*8+q.pointing)
	w.add(partsSince, 64+min(since, 4)*8+q.doing)
	w.add(stateIs, q.doing*8+state)
	w.add(stateIs, 64+q.pointing*8+state)
	w.add(saidTimes, min(len(t.mentions), 4))
	w.add(isWhich, q.which)
	w.add(prepIs, prepOf(m.prep))
	if int(r.toks[t.first].cl) >= q.ci-2 {
		w.add(isFresh, q.pointing)
	}
	w.add(opensWith, q.opens*8+q.doing)
	switch {
	case t.head == m.head:
		w.add(wordIs, 0)
	case t.head == "fastener":
		w.add(wordIs, 1)
	default:
		w.add(wordIs, 2)
	}
	w.add(countIs, r.countAgrees(t, m))
	owner := 5
	for k, o := range q.latest {
		if o != nil && (t.owner == o || owns(o, t)) {
			owner = k
			break
		}
	}
	if owner == 5 && t.owner == nil && contentCount(t.mods) == 0 {
		owner = 6
	}
	w.add(ownerIs, owner*8+q.doing)
	w.add(ownerIs, 64+owner*8+q.pointing)
	w.add(ownerIs, 128+owner*64+q.doing*8+state)
	if o := t.owner; o != nil {
		ost, _ := o.state()
		w.add(ownerDone, q.doing*64+stateOf(ost)*8+min(3, clausesOf(q.ci-int(r.toks[o.last].cl))))
		w.add(namedSo, r.namedSo(o.head, m.head))
	}
	for _, k := range q.c.mentions {
		o := &r.mentions[k]
		if k == q.mi || o.entry == nil || o.entry.fastener {
			continue
		}
		if t.owner == o.entry || owns(o.entry, t) {
			w.add(ownerInClause, 0)
		} else if o.hi <= m.from && !o.ownsNone() {
			w.add(partBetween, 0)
		}
	}
	if m.isNew {
		w.add(stateFresh, state)
	}
	if q.topic != nil && t.last < s.topicAt && t.owner != q.topic && !owns(q.topic, t) {
		w.add(turnedSince, q.doing)
	}
	if m.place != "" {
		if t.place != "" {
			w.add(placeIs, 0)
		} else {
			w.add(placeIs, 1)
		}
	}
}

// countAgrees tells how the counts of a fastener spoken of and of a mention agree.
func (r *reading) countAgrees(t *thing, m *mention) int {
	switch {
	case m.count > 1 && t.count > 1 && r.sameCount(t, m):
		return 0
	case m.count > 1 && t.count > m.count:
		return 1
	case m.count > 1 && t.count > 1:
		return 2
	case m.count > 1 && !t.many():
		return 3
	case m.count > 1:
		return 4
	case m.plural && !t.many():
		return 5
	case m.plural:
		return 6
	case t.many():
		return 7
	}
	return 8
}

// weighPart weighs that a mention means a fastener of a part not spoken of before, the part
// being the rank-th latest of those spoken of.
func (s *tracker) weighPart(w *weighing, q *unnamed, t *thing, rank int) {
	r := s.r
	m := q.m
	w.add(isPart, 0)
	if q.beside >= 0 {
		if r.mentions[q.beside].entry == t {
			w.add(besideIs, 8+q.besideBy)
		} else {
			w.add(besideNot, 8+q.besideBy)
		}
	}
	w.add(headIs, hashOf(t.head))
	w.add(namedSo, 8+r.namedSo(t.head, m.head)*8+q.doing)
	if m.count > 1 {
		w.add(countIs, 16)
	} else {
		w.add(countIs, 17+q.doing)
	}
	rank = min(rank, 4)
	w.add(gapIs, 8+gapOf(r.since(t.last, m.lo)))
	w.add(clausesIs, 8+clausesOf(q.ci-int(r.toks[t.last].cl)))
	w.add(rankIs, 8+rank)
	w.add(rankPointed, rank*8+q.pointing)
	w.add(rankDoing, rank*8+q.doing)
	w.add(isWhich, 16+q.which)
	w.add(opensWith, 16+(rank*2+q.opens)*8+q.doing)
	w.add(prepIs, 16+prepOf(m.prep))
	w.add(doingPointed, 8+q.pointing)
	w.add(saidTimes, 8+min(len(t.mentions), 4))
	for j := len(s.hand) - 1; j >= 0 && s.hand[j] != t; j-- {
		if o := s.hand[j]; o.fastener && o.last > t.last {
			x := 1
			if o.owner == t || owns(t, o) {
				x = 2
			}
			w.add(fastenersSince, x*8+q.pointing)
			break
		}
	}
	if t == q.topic {
		w.add(topicIs, clausesOf(q.ci-int(r.toks[s.topicAt].cl)))
	}
	if t == s.heading && r.since(s.headingAt, m.lo) < 30 {
		w.add(headingIs, clausesOf(q.ci-int(r.toks[s.headingAt].cl)))
	}
	st, _ := t.state()
	w.add(stateIs, 128+q.doing*8+stateOf(st))
	if t.ownsNone() {
		w.add(ownsNoneIs, 0)
	}
	if wholes.has(t.head) {
		w.add(wholeIs, 0)
	}
	if int(r.toks[t.first].cl) >= q.ci-2 {
		w.add(isFresh, 8)
	}
	if t.worked < t.last {
		w.add(passingIs, 0)
	}
	if n := len(t.mentions); n > 0 {
		k := t.mentions[n-1]
		o := &r.mentions[k]
		p := &r.clauses[o.cl]
		same := 0
		if o.cl == q.ci {
			same = 1
			side := 0
			if o.hi <= m.from {
				side = 1
				if r.holdsBetween(o.hi, m.from) {
					w.add(holdsIt, prepOf(o.prep))
				}
			} else if r.holdsBetween(m.hi, o.from) {
				w.add(holdsIt, 16+prepOf(o.prep))
			}
			w.add(clausePreps, side*256+prepOf(m.prep)*16+prepOf(o.prep))
		}
		w.add(prepIs, 32+same*16+prepOf(o.prep))
		w.add(sentenceIs, min(q.c.sentence-p.sentence, 6)*8+min(rank, 3))
		if p.mood&(warned|other|hypothetical|conditional|aside|negated|storied|announced|asked) != 0 {
			w.add(unrealIs, 0)
		}
		if (o.prep == "on" || o.prep == "in" || o.prep == "over" || r.backOnto(o)) && r.carries(p, o) {
			w.add(seatIs, same*8+rank)
		}
		if r.doneMeanwhile(k) || how.has(r.word(o.hi)) {
			w.add(meanwhileIs, same)
		}
		if r.opens(p, o) {
			w.add(opensWith, 128+same*64+rank*8+q.doing)
		}
		if o.plural {
			w.add(pluralIs, 0)
		}
		if o.definite {
			w.add(definiteIs, 0)
		}
		done := 7
		if a := r.actOn(o.cl, k); a != "" {
			done = doingOf(a)*2 + same
		}
		w.add(doneIs, q.doing*8+done)
		if o.kind&lexicon.Tool != 0 {
			w.add(toolIs, 0)
		}
		if o.cl < q.ci-1 {
			for j := max(o.cl+1, q.ci-6); j <= q.ci; j++ {
				if r.beginsWith(&r.clauses[j], "right", "next", "now", "okay", "so") {
					w.add(turnWord, 0)
					break
				}
			}
		}
	}
	has := 0
	for _, f := range r.like(m.head, true) {
		if f.owner == t || owns(t, f) {
			has = 1
			if st, _ := f.state(); st != "" {
				has = 2
			}
		}
	}
	w.add(hasIs, has*8+q.doing)
	// named again right after
	for k := q.mi + 1; k < min(len(r.mentions), q.mi+6); k++ {
		o := &r.mentions[k]
		if o.cl > q.ci+2 || r.since(m.lo, o.lo) > 10 {
			break
		}
		if o.kind&lexicon.Part != 0 && o.kind&lexicon.Fastener == 0 && o.head == t.head && !placesClash(o.mods, t.mods) {
			near := s.nearness(q, o)
			w.add(saidNext, near*16+prepOf(o.prep))
			w.add(saidNext, 128+near*16+s.doneTo(k))
			if o.cl == q.ci && r.holdsBetween(m.hi, o.from) {
				w.add(holdsIt, 32+prepOf(o.prep))
			}
			break
		}
	}
}

// nearness tells how soon after the asked mention another comes: 0 in its clause, 1 and 2 in
// its sentence, 3 and 4 in the next ones.
func (s *tracker) nearness(q *unnamed, o *mention) int {
	if o.cl == q.ci {
		return 0
	}
	near := min(o.cl-q.ci, 2)
	if s.r.clauses[o.cl].sentence != q.c.sentence {
		near += 2
	}
	return near
}

// doneTo gives what is done to a mention, as doingOf tells; 8 where nothing is.
func (s *tracker) doneTo(mi int) int {
	if a := s.r.actOn(s.r.mentions[mi].cl, mi); a != "" {
		return doingOf(a)
	}
	return 8
}

// weighAhead weighs that a mention means a fastener of a part that is named only right after:
// "two bolts, and the bracket drops".
func (s *tracker) weighAhead(w *weighing, q *unnamed, k int) {
	r := s.r
	o := &r.mentions[k]
	near := s.nearness(q, o)
	w.add(isAhead, near)
	if q.beside >= 0 {
		if q.beside == k {
			w.add(besideIs, 16+q.besideBy)
		} else {
			w.add(besideNot, 16+q.besideBy)
		}
	}
	w.add(isAhead, 64+(q.doing*8+near)*16+s.doneTo(k))
	w.add(isAhead, 1024+near*16+prepOf(o.prep))
	w.add(isAhead, 2048+min(o.from-q.m.hi, 10))
	w.add(headIs, hashOf(o.head))
	w.add(namedSo, 64+r.namedSo(o.head, q.m.head)*8+q.doing)
	w.add(countIs, 32+min(q.m.count, 2))
	if o.ownsNone() {
		w.add(ownsNoneIs, 1)
	}
	if o.definite {
		w.add(definiteIs, 1)
	}
	if o.cl == q.ci && r.holdsBetween(q.m.hi, o.from) {
		w.add(holdsIt, 64)
	}
	if wholes.has(o.head) {
		w.add(wholeIs, 1)
	}
}

// gapOf puts seconds into eight classes.
func gapOf(s float64) int {
	for i, x := range []float64{2, 4, 8, 15, 30, 60, 120} {
		if s < x {
			return i
		}
	}
	return 7
}

// clausesOf puts a distance in clauses into eight classes.
func clausesOf(n int) int {
	switch {
	case n < 4:
		return max(n, 0)
	case n < 7:
		return 4
	case n < 12:
		return 5
	case n < 25:
		return 6
	}
	return 7
}

// brkClass puts what ends between two tokens into classes.
func brkClass(b uint8) int {
	switch {
	case b == brkNone:
		return 0
	case b < brkComma:
		return 1
	case b < brkSentence:
		return 2
	}
	return 3
}

// farMentions is how many mentions after one are looked at: beyond, all that is asked of them
// is known.
const farMentions = 400

// actsBefore gives the acts that were done to something before a token, the latest first: at
// most so many, in the clause ci and so many before it.
func (r *reading) actsBefore(ci, at, clauses, most int) []*act {
	var out []*act
	for k := ci; k >= max(0, ci-clauses) && len(out) < most; k-- {
		for j := len(r.clauses[k].acts) - 1; j >= 0 && len(out) < most; j-- {
			if a := &r.acts[r.clauses[k].acts[j]]; a.lo < at && len(a.things) > 0 {
				out = append(out, a)
			}
		}
	}
	return out
}

// namedAround gives the mentions of a thing last before a token and first after it in the
// clause ci, -1 where there is none.
func (r *reading) namedAround(t *thing, ci, at int) (before, after int) {
	after = -1
	for i := len(t.mentions) - 1; i >= 0; i-- {
		switch m := &r.mentions[t.mentions[i]]; {
		case m.lo < at:
			return t.mentions[i], after
		case m.cl == ci:
			after = t.mentions[i]
		}
	}
	return -1, after
}

// comesOff is what doingOf gives for the acts by which things come off.
const comesOff = 1

// doingOf puts acts into classes: 0 none, 1 things come off, 2 they go on or are tightened, 3 another.
// Where there is no act, the walk tells 4 for going on and 5 for coming off.
func doingOf(act string) int {
	switch act {
	case "remove", "slacken", "disconnect", "discard":
		return comesOff
	case "fit", "start by hand", "tighten", "torque", "replace":
		return 2
	case "":
		return 0
	}
	return 3
}

// stateOf numbers the ways a thing is left, 0 where nothing was done to it.
func stateOf(st string) int {
	switch st {
	case "":
		return 0
	case Removed:
		return 1
	case Loosened:
		return 2
	case Refitted:
		return 3
	case HandTight:
		return 4
	case Tightened:
		return 5
	case Torqued:
		return 6
	}
	return 7
}

// prepOf numbers the prepositions, 0 where there is none.
func prepOf(p string) int {
	switch p {
	case "":
		return 0
	case "on", "onto":
		return 1
	case "of", "for":
		return 2
	case "in", "into":
		return 3
	case "from", "off":
		return 4
	case "with":
		return 5
	case "to":
		return 6
	case "through":
		return 7
	}
	return 8
}

// pointing tells how a mention points at its thing.
func pointing(r *reading, m *mention) int {
	w := ""
	if m.from < m.lo {
		w = r.toks[m.from].s
	}
	switch {
	case w == "this" || w == "these":
		return 0
	case w == "that" || w == "those":
		return 1
	case m.definite && m.count > 0:
		return 2
	case m.definite:
		return 3
	case m.count > 1:
		return 4
	case w == "a" || w == "an" || m.count == 1:
		return 5
	case m.plural:
		return 6
	}
	return 7
}

// hashOf numbers words, two now and then alike.
func hashOf(w string) int {
	h := uint32(2166136261)
	for i := range len(w) {
		h = (h ^ uint32(w[i])) * 16777619
	}
	return int(h % 4096)
}

// backOnto tells whether a mention is of what something goes back on or in: "motor back on the plate".
func (r *reading) backOnto(m *mention) bool {
	w := r.prev(m.from)
	return m.from > 1 && m.from < m.lo && m.prep == "" && (w == "on" || w == "in") && r.word(m.from-2) == "back"
}

// carries tells whether a clause has another part go on a mention: "sprocket on the carrier".
func (r *reading) carries(c *clause, m *mention) bool {
	for _, k := range c.mentions {
		if o := &r.mentions[k]; o.hi <= m.from && o.prep == "" && o.kind&lexicon.Part != 0 && o.kind&lexicon.Fastener == 0 && !o.ownsNone() && o.entry != m.entry {
			return true
		}
	}
	return false
}

// whichOf tells by which word a mention is told from others of its word.
func whichOf(r *reading, m *mention) int {
	for i := m.from; i < m.hi; i++ {
		switch r.toks[i].s {
		case "other":
			return 1
		case "another":
			return 2
		case "last", "next", "second", "third", "first":
			return 3
		case "new":
			return 4
		case "old":
			return 5
		case "little", "small", "wee":
			return 6
		case "big", "long":
			return 7
		case "all", "both":
			return 8
		}
	}
	return 0
}

// namedSo tells whether somewhere in the talk a fastener is named after a part: "keeper bolt",
// "the two screws on the keeper"; 2 where it is one of that word, 1 of another.
func (r *reading) namedSo(part, word string) int {
	if r.namesOf == nil {
		r.namesOf = map[string]map[string]bool{}
		put := func(p, w string) {
			if r.namesOf[p] == nil {
				r.namesOf[p] = map[string]bool{}
			}
			r.namesOf[p][w] = true
		}
		for i := range r.mentions {
			m := &r.mentions[i]
			if m.kind&lexicon.Fastener == 0 || !alike.has(m.head) {
				continue
			}
			if n := len(m.mods); n > 0 {
				put(lexicon.Singular(m.mods[n-1]), m.head)
			}
			if i+1 < len(r.mentions) {
				if o := &r.mentions[i+1]; o.cl == m.cl && o.from-m.hi <= 2 && (o.prep == "on" || o.prep == "of" || o.prep == "for" || o.prep == "in") && o.kind&lexicon.Part != 0 {
					put(o.head, m.head)
				}
			}
		}
	}
	l := part[strings.LastIndexByte(part, ' ')+1:]
	switch f := r.namesOf[l]; {
	case f == nil:
		return 0
	case f[word]:
		return 2
	}
	return 1
}
