package extract

import (
	_ "embed"
	"slices"
	"sort"

	"wrenchword/normalize"
)

// Whether a value was set in this job, is to be set, or is only told of (a document's, somebody's,
// another machine's, one that is too much) decides whether it may be passed on. What the rules
// take (appliedIn) is weighed with all that stands around the value. The weights are fitted on
// pieces of talk that careful readers judged (applied_test.go).

//go:embed applied.bin
var appliedWeights string

// appliedClues is how many weights there are.
const appliedClues = 1 << 17

// applications are what can be done with a value. Their order is that of the weights.
var applications = [...]string{"done", "intended", "quoted"}

// appliedScale is what a weight of one is written as. One that the rules take for set stays so where
// that much more speaks for it than for anything else, since a value wrongly taken for set is passed
// on; what the rules take for something else is set only where surelySet more does.
const (
	appliedScale = 16
	likelySet    = 16
	surelySet    = 48
)

// The signs of what was done with a value. Their order is that of the weights: a new one comes
// last, and the weights are to be fitted again.
const (
	appRuled sign = iota // what the rules take
	appWhy               // by which rule it is for its fastener
	appAt                // a word, by how far it is from the value
	appPair              // two words right before or after it
	appIn                // a word of its clause, before or after it
	appNear              // a word of its sentence, of the one before or after
	appLater             // a word of the sentence after that
	appOpens             // with which words its clause begins, and the next
	appKin               // a family of words, and where one of it is said
	appClick             // how soon something clicks
	appAct               // what is done in the clause, before and next
	appMood              // in which mood its clause, and those around it, are spoken
	appTense             // when they take place
	appAgain             // the same number was said before, or is said again, and what was done with it
	appOther             // another number follows, or came before, and how soon
	appRow               // how many numbers stand in its sentence
	appOf                // what it is for, and how that was left before
	appUnit              // whether its unit was said
	appEnd               // how much is said after it
	appSigns
)

// applied gives the place of the weight that a hint has for an application.
func (h hint) applied(of int) clue {
	return clue((uint32(h.sign+sign(of)*appSigns)<<12 + uint32(h.value)) * 2654435761 >> 15)
}

// kin are the families of words that tell whose a value is.
var kin = [...]*wordSet{persons, wholes, documents, saying, firms, days, damage}

// wordsApart is how far from a value a word tells by its place, wordsAround how far one is looked at
// and actsLooked at how many acts of its clause: talk without stops can be one sentence.
const (
	wordsApart  = 6
	wordsAround = 60
	actsLooked  = 16
)

// weighApplied weighs what was done with a value; ruled is what the rules take.
func (s *tracker) weighApplied(ci int, q *quantity, h *heard, ruled string) string {
	r := s.r
	r.hintRow = s.appliedHints(r.hintRow[:0], ci, q, h, ruled)
	was := max(0, slices.Index(applications[:], ruled))
	var sum [len(applications)]int
	for of := 1; of < len(applications); of++ {
		for _, h := range r.hintRow {
			sum[of] += int(int8(appliedWeights[h.applied(of)]))
		}
	}
	not := 1 // what it is where it was not set
	if sum[2] > sum[1] {
		not = 2
	}
	best := was
	switch {
	case was == 0 && sum[not] > -likelySet:
		best = not
	case was != 0 && sum[not] < -surelySet:
		best = 0
	}
	if r.appliedTold != nil {
		best = r.appliedTold(q, r.hintRow, was, best)
	}
	return applications[best]
}

// appliedHints gives all signs of what was done with a value.
func (s *tracker) appliedHints(row []hint, ci int, q *quantity, h *heard, ruled string) []hint {
	r := s.r
	c := &r.clauses[ci]
	add := func(s sign, value int) { row = append(row, hint{s, value}) }
	rule := wordClue(ruled)
	add(appRuled, rule)
	add(appWhy, wordClue(h.rule))
	add(appWhy, wordClue(h.rule)+rule)
	first, last := ci, ci // of the sentence, or so much of it as is looked at
	for first > 0 && r.clauses[first-1].sentence == c.sentence && q.lo-r.clauses[first-1].lo < wordsAround {
		first--
	}
	for last+1 < len(r.clauses) && r.clauses[last+1].sentence == c.sentence && r.clauses[last+1].hi-q.hi < wordsAround {
		last++
	}
	lo, hi := max(r.clauses[first].lo, q.lo-wordsAround), min(r.clauses[last].hi, q.hi+wordsAround)
	for i := max(lo, q.lo-wordsApart); i < q.lo; i++ {
		add(appAt, r.wordClueAt(i)*16+q.lo-i)
		if i+1 < q.lo {
			add(appPair, r.wordClueAt(i)*31+r.wordClueAt(i+1))
		}
	}
	for i := q.hi; i < min(hi, q.hi+wordsApart); i++ {
		add(appAt, r.wordClueAt(i)*16+8+i-q.hi)
		if i+1 < hi {
			add(appPair, r.wordClueAt(i)*37+r.wordClueAt(i+1))
		}
	}
	for i := max(c.lo, lo); i < min(c.hi, hi); i++ {
		if i < q.lo || i >= q.hi {
			add(appIn, r.wordClueAt(i)*2+bit(i < q.lo))
		}
	}
	around := func(s sign, lo, hi, where int) {
		for i := lo; i < hi; i++ {
			if i < q.lo || i >= q.hi {
				add(s, r.wordClueAt(i)*8+where)
			}
		}
	}
	around(appNear, lo, q.lo, 0)
	around(appNear, q.hi, hi, 1)
	before, after := r.sentenceBefore(first), r.sentenceAfter(last)
	around(appNear, before.lo, before.hi, 2)
	around(appNear, after.lo, after.hi, 3)
	later := r.sentenceAfter(int(r.toks[max(after.hi-1, q.hi-1)].cl))
	around(appLater, later.lo, later.hi, 0)
	opens := func(k, where int) {
		if k < 0 || k >= len(r.clauses) {
			return
		}
		c := &r.clauses[k]
		add(appOpens, r.wordClueAt(c.lo)*8+where)
		if c.lo+1 < c.hi {
			add(appOpens, (r.wordClueAt(c.lo)*31+r.wordClueAt(c.lo+1))*8+where)
		}
		for b := range 17 {
			if c.mood>>b&1 != 0 {
				add(appMood, b*8+where)
			}
		}
		if c.hi-c.lo < 4*wordsAround {
			add(appTense, r.tense(c)*8+where)
		}
	}
	for where, k := range []int{ci, ci - 1, ci + 1, ci + 2} {
		opens(k, where)
	}
	for k, set := range kin {
		for where, p := range [...]passage{{lo, q.lo}, {q.hi, hi}, before, after} {
			for i := p.lo; i < p.hi; i++ {
				if !set.has(r.toks[i].s) {
					continue
				}
				at := k*8 + where
				add(appKin, at)
				if i > 0 {
					add(appKin, 1<<10+r.wordClueAt(i-1)*64+at)
				}
				break
			}
		}
	}
	for i := q.hi; i < min(len(r.toks), q.hi+40); i++ {
		if w := r.toks[i].s; w == "click" || w == "clicks" || w == "clicked" || w == "tick" || w == "beep" || w == "beeps" || w == "beeped" {
			add(appClick, min((i-q.hi)/6, 6))
			break
		}
	}
	for _, ai := range c.acts[:min(len(c.acts), actsLooked)] {
		a := &r.acts[ai]
		add(appAct, wordClue(a.action.Name)*4+bit(a.happened()))
		if a.verb >= 0 {
			add(appAct, 1<<20+r.wordClueAt(a.verb)*4+bit(a.happened()))
		}
	}
	if past := r.actsBefore(ci, q.lo, 6, 1); len(past) > 0 && past[0].cl != ci {
		add(appAct, wordClue(past[0].action.Name)*4+2)
	}
	for k := ci + 1; k < min(len(r.clauses), ci+5); k++ {
		if acts := r.clauses[k].acts; len(acts) > 0 {
			add(appAct, wordClue(r.acts[acts[0]].action.Name)*4+3)
			break
		}
	}
	for i := len(r.heard) - 1; i >= max(0, len(r.heard)-8); i-- {
		o := &r.heard[i]
		p := &r.qtys[o.qty]
		same := p.Low != nil && q.Low != nil && p.Low.Cmp(q.Low) == 0
		if same {
			add(appAgain, wordClue(o.applied)+bit(o.of == h.of))
		}
		if i == len(r.heard)-1 {
			add(appOther, (gapOf(r.since(p.hi, q.lo))*2+bit(same))*2+bit(o.of == h.of))
			add(appOther, 1<<10+wordClue(o.applied)*2+bit(same))
		}
	}
	values := 0
	for k := first; k <= last && values < 5; k++ {
		for _, qi := range r.clauses[k].qtys {
			if r.qtys[qi].Kind == normalize.Torque {
				if values++; values == 5 {
					break
				}
			}
		}
	}
	add(appRow, values)
	for k := ci; k < min(len(r.clauses), ci+8); k++ {
		qtys := r.clauses[k].qtys
		next := sort.Search(len(qtys), func(i int) bool { return r.qtys[qtys[i]].lo > q.lo })
		for _, qi := range qtys[next:] {
			p := &r.qtys[qi]
			if p.Kind != normalize.Torque {
				continue
			}
			at := gapOf(r.since(q.hi, p.lo))
			if p.sameValue(q) {
				add(appAgain, 1<<10+at)
			} else {
				add(appOther, 1<<11+at)
				if p.lo > 0 {
					add(appOther, 1<<12+r.wordClueAt(p.lo-1))
				}
			}
			k = len(r.clauses)
			break
		}
	}
	of := 0
	if h.of != nil {
		st, _ := h.of.state()
		of = 1 + stateOf(st)
	}
	add(appOf, of*2+bit(h.hedged))
	add(appOf, 64+wordClue(ruled)*16+of)
	add(appUnit, bit(q.unitFrom != "")*2+bit(q.Unit == ""))
	add(appEnd, clausesOf(len(r.clauses)-1-ci))
	return row
}

// A passage is some words of the talk.
type passage struct{ lo, hi int }

// sentenceBefore and sentenceAfter give the tokens of the sentence before and after a clause, none
// where it is the first or the last.
func (r *reading) sentenceBefore(ci int) passage {
	k := ci - 1
	if k < 0 {
		return passage{}
	}
	at := passage{r.clauses[k].lo, r.clauses[k].hi}
	for k > 0 && r.clauses[k-1].sentence == r.clauses[k].sentence && at.hi-r.clauses[k-1].lo < wordsAround {
		k--
		at.lo = r.clauses[k].lo
	}
	at.lo = max(at.lo, at.hi-wordsAround)
	return at
}

func (r *reading) sentenceAfter(ci int) passage {
	k := ci + 1
	if k >= len(r.clauses) {
		return passage{}
	}
	at := passage{r.clauses[k].lo, r.clauses[k].hi}
	for k+1 < len(r.clauses) && r.clauses[k+1].sentence == r.clauses[k].sentence && r.clauses[k+1].hi-at.lo < wordsAround {
		k++
		at.hi = r.clauses[k].hi
	}
	at.hi = min(at.hi, at.lo+wordsAround)
	return at
}

// givenToOther tells whether the sentence of a value gives it to another machine than the one in
// hand, by what that is called: "on the big loader that bolt gets a hundred and twenty", "my old
// truck takes a hundred and thirty on those", "the neighbour's van gets ninety". What the talk calls
// this machine is none ("this is the little loader").
func (r *reading) givenToOther(q *quantity) bool {
	c := &r.clauses[q.cl]
	lo, hi := max(c.lo, q.lo-wordsAround), min(c.hi, q.hi+wordsAround)
	for k := q.cl - 1; k >= 0 && r.clauses[k].sentence == c.sentence && len(r.clauses[k].qtys) == 0 && q.lo-r.clauses[k].lo < wordsAround; k-- {
		lo = r.clauses[k].lo
	}
	for i := lo; i < hi; i++ {
		if i >= q.lo && i < q.hi {
			continue
		}
		from := r.othersMachine(lo, i)
		if from < 0 {
			continue
		}
		prep := r.word(from - 2)
		if i < q.lo && (r.toks[i].brk < brkComma || r.clauses[r.toks[i].cl].hi == i+1) || i >= q.hi && (prep == "on" || prep == "for" || prep == "of") {
			return true
		}
	}
	return false
}

// othersMachine gives where the name of another machine begins that ends at token i: "my old truck",
// "the big loader", "a mate's van"; -1 where there is none. It looks back to token lo.
func (r *reading) othersMachine(lo, i int) int {
	mi := r.toks[i].men
	if next := r.next(i); !wholes.has(r.toks[i].s) || next == "bolt" || next == "bolts" || mi >= 0 && r.mentions[mi].hi > i+1 {
		return -1
	}
	from := i
	for from > lo && r.toks[from-1].brk == brkNone && (unlike.has(r.toks[from-1].s) || mi >= 0 && r.toks[from-1].men == mi && !r.toks[from-1].is(wDeterminer)) {
		from--
	}
	det := r.prev(from)
	theirs := det == "'s" && from >= 2 && persons.has(r.word(from-2)) || theirOwn.has(det) && (det != "my" || from < i)
	apart := from < i && unlike.has(r.toks[from].s) && (det == "the" || det == "a" || det == "an" || theirOwn.has(det))
	if !theirs && !apart || r.callsThisSo(from, i) {
		return -1
	}
	return from
}

// openingWords is within how many words of a talk its machine is called by its name, if at all.
const openingWords = 1500

// callsThisSo tells whether the talk calls the machine in hand by the words from token lo to hi: "this
// little loader", "this is the little loader".
func (r *reading) callsThisSo(lo, hi int) bool {
	n := hi - lo + 1
	for i := 1; i+n <= min(len(r.toks), openingWords); i++ {
		if i == lo || r.toks[i].s != r.toks[lo].s {
			continue
		}
		same := true
		for k := 1; k < n && same; k++ {
			same = r.toks[i+k].s == r.toks[lo+k].s
		}
		if w := r.prev(i); same && (w == "this" || (w == "the" || w == "a" || w == "my") && (r.word(i-2) == "is" || r.word(i-2) == "'s" || r.word(i-2) == "got") && (r.word(i-3) == "this" || r.word(i-3) == "it" || r.word(i-3) == "have" || r.word(i-3) == "'ve" || r.word(i-3) == "i")) {
			return true
		}
	}
	return false
}

// unlike are the words by which another machine is told from the one in hand, theirOwn those that
// tell whose it is.
var (
	unlike   = wordsOf("how another machine is told apart")
	theirOwn = wordsOf("whose another machine is")
)
