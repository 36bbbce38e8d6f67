package extract

import (
	_ "embed"
	"math"
	"strings"
	"sync"

	"wrenchword/extract/lexicon"
)

// What is done to a thing that is not named where it is done ("pull it off", "back in",
// "that's out") is weighed as whose an unnamed fastener is (owners.go): each thing spoken of
// before, or none. The weights are fitted on talk that careful readers judged
// (antecedents_test.go).

//go:embed antecedents.bin
var antecedentWeights string

// The signs of the thing that is meant. Their order is that of the weights: a new one comes
// last, and the weights are to be fitted again.
const (
	antFastener  sign = iota
	antPart           // a part
	antNone           // nothing that was spoken of
	antRule           // the rules take it, by pronoun and act
	antWhere          // where it was named last, seen from the act
	antWherePro       // the same, and the pronoun
	antWhereAct       // the same, and what is done
	antPrep           // the preposition before it, where it was named last
	antAhead          // it is named right after, in the same clause
	antGap            // for how long there was talk since it was spoken of
	antRank           // how many others were spoken of since
	antRankPro        // the same, and the pronoun
	antRankAct        // the same, and what is done
	antFasteners      // how many other fasteners were spoken of since
	antParts          // how many other parts were spoken of since
	antState          // how it was left, and what is done
	antStateRank      // the same, and how many others were spoken of since
	antActs           // how many acts ago something was done to it
	antActsWas        // the same, what that was and what is done
	antMany           // the pronoun, and how many it is
	antHead           // the word for it
	antHeadAct        // the same, and what is done
	antHeadVerb       // the same, and the verb
	antKindVerb       // fastener or part, and the verb
	antTopic          // the talk turned to it
	antHeading        // a clause did nothing but name it
	antOpens          // its mention opens its clause
	antPassing        // it was named in passing
	antTimes          // how often it was spoken of
	antNew            // first named just now
	antOwner          // its part was worked on last
	antOwns           // its fastener was worked on last
	antHasOwner       // a fastener whose part is known
	antLastNamed      // it is what was named last, and how far off
	antLastDone       // it is what was last done something to
	antSide           // it is on the side that the talk is on
	antNew2           // said to be new
	antBreak          // what ends between its mention and the act
	antNames          // how many other things were named since
	antSort           // what sort of part it is, and what is done
	antSortVerb       // the same, and the verb
	antSortPro        // the same, and the pronoun
	antSortRank       // the same, and how many others were spoken of since
	antSortState      // the same, how it was left and what is done
	antSigns
)

// ruledAhead is by how much the thing that the rules take is given more weight than its clues
// tell: plain talk is what they are made for.
const ruledAhead = 6

// likelySo is how far the thing that is meant must be ahead of any other to be told as what is
// meant. In talk kept from the fitting, nearer ones were more often wrong than right.
const likelySo = 16

// settledAhead is the same where the words right around the act settle what it is.
const settledAhead = 60

// ownPlace gives what an act says its thing comes off or goes to, which is never the thing itself:
// "drop it on the hub", "slide that off the spoke"; nil where it says no such place.
func (r *reading) ownPlace(c *clause, a *act) *thing {
	if a.verb < 0 || a.subject || a.pronoun == "" {
		return nil
	}
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.lo > a.verb {
			if m.prep == "" || m.from > a.hi+1 || r.toks[m.from-1].brk >= brkComma {
				return nil
			}
			return m.entry
		}
	}
	return nil
}

// neverSo tells whether a thing is never done what an act does to "it": what has no plug is not
// unplugged, which is said of the machine, and no nut is closed.
func (r *reading) neverSo(a *act, t *thing) bool {
	if r.cutOff(a) {
		return !wired.has(t.head)
	}
	if a.verb < 0 || a.subject || t.head != "nut" && t.head != "bolt" {
		return false
	}
	l := r.lemma1(r.toks[a.verb].s)
	return l == "close" || l == "shut"
}

// antecedent gives the thing that is meant by an act that names none, nil where it is none.
func (s *tracker) antecedent(ci int, a *act) *thing {
	r := s.r
	ruled, spot := s.pronoun(a), r.ownPlace(&r.clauses[ci], a)
	if ruled == spot {
		ruled = nil
	}
	never := func(t *thing) bool { return t != nil && r.neverSo(a, t) }
	if never(ruled) {
		ruled = nil
	}
	if len(s.hand) < 4 && r.antecedents == nil {
		if a.action.Name == "discard" {
			return r.thrownBy(a, ruled)
		}
		return ruled // there is little to choose from
	}
	c := &r.clauses[ci]
	do := wordClue(a.action.Name)
	pro := wordClue(a.pronoun)
	if a.subject {
		pro++
	}
	verb := 0
	if a.verb >= 0 {
		verb = wordClue(r.lemma1(r.toks[a.verb].s))
	}
	past := r.actsBefore(ci, a.lo, 12, 6)
	keep, many := r.antecedents != nil, r.many(a)
	best, likely := claim{ahead: -1, weight: math.MinInt}, claim{ahead: -1, weight: math.MinInt}
	next := math.MinInt
	var all []claim
	put := func(t *thing, w *weighing) {
		switch {
		case t != ruled:
		case s.settled:
			w.sum += settledAhead
		default:
			w.sum += ruledAhead
		}
		x := claim{t, -1, w.sum, w.kept}
		switch {
		case t != nil && t == spot:
			next = max(next, x.weight) // never meant, and no help to be sure of another
			return
		case x.weight > best.weight:
			best, next = x, max(next, best.weight)
		case x.weight > next:
			next = x.weight
		}
		if t != nil && x.weight > likely.weight && (t.many() || !many) && !never(t) {
			likely = x
		}
		if keep {
			all = append(all, x)
		}
	}
	rank, fasteners, parts := 0, 0, 0
	seen := ruled == nil
	weigh := func(t *thing) {
		w := weighing{in: antecedentWeights, keep: keep}
		s.weighAntecedent(&w, a, c, t, ruled == t, do, pro, verb, past, min(rank, 7), min(fasteners, 4), min(parts, 4))
		put(t, &w)
		seen = seen || t == ruled
		rank++
		if t.fastener {
			fasteners++
		} else {
			parts++
		}
	}
	for i := len(s.hand) - 1; i >= 0; i-- {
		t := s.hand[i]
		if r.since(t.last, a.lo) > 120 {
			break
		}
		if !t.apart || t == ruled {
			weigh(t)
		}
	}
	if !seen {
		weigh(ruled)
	}
	w := weighing{in: antecedentWeights, keep: keep}
	w.add(antNone, 0)
	w.add(antNone, pro)
	w.add(antNone, 1<<28+do)
	w.add(antNone, 1<<27+verb)
	w.add(antNone, 1<<26+min(rank, 3))
	if a.lo > c.lo {
		w.add(antNone, 1<<25+r.wordClueAt(a.lo-1))
	}
	if a.hi < c.hi {
		w.add(antNone, 1<<24+r.wordClueAt(a.hi))
	}
	if ruled == nil {
		w.add(antRule, 0)
		w.add(antRule, pro)
		w.add(antRule, 1<<28+do)
	}
	for k := len(c.mentions) - 1; k >= 0; k-- {
		if m := &r.mentions[c.mentions[k]]; m.lo < a.lo {
			w.add(antNone, 1<<23+r.kindClass(m)*8+min(a.lo-m.hi, 7))
			break
		}
	}
	put(nil, &w)
	if keep {
		r.antecedents(a, ruled, all, best)
	}
	if a.action.Name == "discard" {
		best.t = r.thrownBy(a, best.t)
	}
	if best.t == nil {
		a.maybe = likely.t
	}
	if never(best.t) {
		best.t = nil
	}
	a.unsure = best.t != nil && next > best.weight-likelySo
	return best.t
}

// weighAntecedent weighs that an act is done to a thing.
func (s *tracker) weighAntecedent(w *weighing, a *act, c *clause, t *thing, ruled bool, do, pro, verb int, past []*act, rank, fasteners, parts int) {
	r := s.r
	ci := a.cl
	part := 1
	if t.fastener {
		part = 0
	}
	w.add(antFastener+sign(part), 0)
	w.add(antFastener+sign(part), do)
	w.add(antFastener+sign(part), 1<<28+pro)
	if ruled {
		w.add(antRule, 1)
		w.add(antRule, 2+pro)
		w.add(antRule, 1<<28+2+do)
	}
	before, after := r.namedAround(t, ci, a.lo)
	where := 0
	if before >= 0 {
		m := &r.mentions[before]
		switch d := a.lo - m.hi; {
		case m.cl == ci:
			where = 1 + min(max(d, 0), 5)
		case r.clauses[m.cl].sentence == c.sentence:
			where = 7 + min(ci-m.cl, 3)
		case r.clauses[m.cl].sentence == c.sentence-1:
			where = 11 + min(ci-m.cl, 3)
		default:
			where = 15 + clausesOf(ci-m.cl)
		}
		w.add(antPrep, prepOf(m.prep)*32+where)
		w.add(antPrep, 1<<12+prepOf(m.prep)*2+part)
		if r.opens(&r.clauses[m.cl], m) {
			w.add(antOpens, where)
		}
		if s.inPassing(m.cl, before) {
			w.add(antPassing, part)
		}
		if m.isNew {
			w.add(antNew2, do)
		}
		w.add(antBreak, brkClass(r.toks[m.hi-1].brk)*32+where)
		names := 0
		for k := before + 1; k < min(len(r.mentions), before+farMentions) && r.mentions[k].lo < a.lo; k++ {
			if o := &r.mentions[k]; o.kind&(lexicon.Fastener|lexicon.Part) != 0 && o.entry != t {
				if names++; names > 4 {
					break
				}
			}
		}
		w.add(antNames, names*2+part)
		if names == 0 {
			w.add(antLastNamed, where)
			w.add(antLastNamed, 64+pro)
		}
	}
	if after >= 0 {
		w.add(antAhead, min(r.mentions[after].from-a.hi, 8))
		w.add(antAhead, 16+prepOf(r.mentions[after].prep))
	}
	w.add(antWhere, where*2+part)
	w.add(antWherePro, where+pro)
	w.add(antWhereAct, where+do)
	w.add(antGap, gapOf(r.since(min(t.last, a.lo), a.lo))*2+part)
	w.add(antRank, rank*2+part)
	w.add(antRankPro, rank+pro)
	w.add(antRankAct, rank*2+part+do)
	w.add(antFasteners, fasteners*2+part)
	w.add(antParts, parts*2+part)
	st, _ := t.state()
	state := stateOf(st)
	w.add(antState, state*2+part+do)
	w.add(antState, 1<<28+state+pro)
	w.add(antStateRank, (state*8+rank)*2+part)
	ago := 7
	for i, o := range past {
		for _, x := range o.things {
			if x == t && ago == 7 {
				ago = i
				w.add(antActsWas, i+wordClue(o.action.Name)*31+do)
				w.add(antActsWas, 1<<28+wordClue(o.action.Name)+pro)
			}
			if i == 0 && t.owner != nil && x == t.owner {
				w.add(antOwner, do)
			}
			if i == 0 && x.owner == t {
				w.add(antOwns, do)
			}
		}
	}
	w.add(antActs, ago*2+part)
	w.add(antActs, 1<<12+ago+pro)
	w.add(antActs, 1<<28+ago+do)
	if ago == 0 {
		w.add(antLastDone, do)
		w.add(antLastDone, 1<<28+pro)
	}
	n := 0
	if t.many() {
		n = 1
		if t.count > 1 {
			n = 1 + min(t.count, 5)
		}
	}
	w.add(antMany, pro*8+n)
	w.add(antMany, 1<<28+do*8+n)
	head := wordClue(t.head)
	w.add(antHead, head)
	w.add(antHeadAct, head*31+do)
	w.add(antHeadVerb, head*31+verb)
	w.add(antKindVerb, verb+part)
	sort := sortOfPart(t.head)
	w.add(antSort, sort*64+do)
	w.add(antSortVerb, sort*64+verb)
	w.add(antSortPro, sort*64+pro)
	w.add(antSortRank, sort*64+min(rank, 4))
	w.add(antSortState, sort*64+do*8191+state)
	if s.onTopic(a.lo) == t {
		w.add(antTopic, gapOf(r.since(s.topicAt, a.lo)))
		w.add(antTopic, 64+do)
	}
	if s.heading == t {
		w.add(antHeading, gapOf(r.since(s.headingAt, a.lo)))
	}
	w.add(antTimes, min(len(t.mentions), 5)*2+part)
	if t.first >= c.lo {
		w.add(antNew, part)
	}
	if t.fastener && t.owner != nil {
		w.add(antHasOwner, do)
	}
	if s.side != "" && t.side != "" {
		if s.side == t.side {
			w.add(antSide, 1)
		} else {
			w.add(antSide, 2)
		}
	}
}

// partSorts are the families of parts by what they are. Their order is that of the weights.
var partSorts = [...]string{
	"bolts and screws",
	"nuts",
	"washers and spacers",
	"clips and cotters",
	"pins and keys",
	"seals and rings",
	"springs",
	"bearings and bushes",
	"shafts and rods",
	"belts chains and cables",
	"hoses and pipes",
	"leads and plugs",
	"wheels and gears",
	"covers and doors",
	"housings and castings",
	"motors and switches",
	"levers and handles",
	"brackets and frames",
	"vessels of machines",
	"blades and cutters",
	"pads and shoes",
	"valves and fittings",
	"adjusters and catches",
}

// sortOfPart numbers what sort of part a name is of by its last word, 0 where it is of none.
func sortOfPart(head string) int {
	of := sortsOfParts()
	if n, ok := of[head]; ok {
		return n
	}
	return of[lastOf(head)]
}

var sortsOfParts = sync.OnceValue(func() map[string]int {
	of := map[string]int{}
	for i, name := range partSorts {
		for w := range strings.FieldsSeq(lexicon.Family("kind of part, " + name)) {
			of[w] = i + 1
		}
	}
	return of
})
