package extract

import (
	_ "embed"
	"math"
	"slices"
	"sort"

	"wrenchword/extract/lexicon"
)

// Of what is left open much is said in words that no rule knows. So each sentence near which
// nothing is asked is weighed: whether it leaves something open at the end of the talk, and of
// which kind. The weights are fitted on lists of what careful readers found to be open
// (raised_test.go).

//go:embed raised.bin
var raisedWeights string

// raisedClues is how many weights tell whether something is open, and raisedKindClues how many
// after them tell the kind.
const (
	raisedClues     = 1 << 18
	raisedKindClues = 1 << 16
)

// raisedKinds are the kinds of what is open, none first. Their order is that of the weights.
var raisedKinds = [...]string{"", Unfinished, LookUp, Unsure, Conflict, ReplaceLater, Promise, NotRefitted, NotTorqued, Suspect}

// raisedAhead is how heavy it must be that a sentence leaves something open, in parts of a
// logit as the weights have them: it is asked where one in two like it does.
const (
	raisedScale = 16
	raisedAhead = 0
)

// weighableTalk is of how many sentences a talk must be for one to be weighed.
const weighableTalk = 7

// The signs of a sentence that leaves something open. Their order is that of the weights: a
// new one comes last, and the weights are to be fitted again.
const (
	raiseWord    sign = iota // a word of it
	raisePair                // two of its words
	raiseThree               // three of them
	raiseEnds                // its first and its last words
	raiseBefore              // a word of the sentence before
	raiseAfter               // a word of the sentence after
	raiseMood                // how it speaks, and those around it
	raiseCue                 // what a rule heard in it, and took for nothing
	raiseCueNear             // the same around it
	_                        // free
	raiseWhere               // how far the talk is
	raiseEnd                 // for how long it goes on
	raiseLong                // how long it is
	raiseTense               // when what it tells takes place
	raiseThing               // what it names
	raiseState               // how that was left
	raiseLater               // what is said and done of that later
	raiseAct                 // what is done in it
	raiseSigns
)

// sentence gives the place of the weight that a hint has for a sentence that leaves something
// open, and kindRaised of that for a kind.
func (h hint) sentence() clue {
	return clue((uint32(h.sign)<<12 + uint32(h.value)) * 2654435761 >> 14)
}

func (h hint) kindRaised(of int) clue {
	return raisedClues + clue((uint32(h.sign+sign(of)*raiseSigns)<<12+uint32(h.value))*2654435761>>16)
}

// sentence is a run of clauses: the first and the last of them, and how heavy it is, once it is
// weighed, that it leaves something open and that it warns.
type sentence struct {
	first, last int
	weighed     bool
	open, warns int
}

// sentences gives the sentences of the talk.
func (r *reading) sentences() []sentence {
	if r.spans == nil {
		for ci := range r.clauses {
			if n := len(r.spans) - 1; n >= 0 && r.clauses[ci].sentence == r.clauses[r.spans[n].first].sentence {
				r.spans[n].last = ci
				continue
			}
			r.spans = append(r.spans, sentence{first: ci, last: ci})
		}
	}
	return r.spans
}

// sentenceAt gives which sentence a place is in, sentenceOf that of a clause, and sentenceAround the
// sentence itself.
func (r *reading) sentenceAt(p Place) int { return r.sentenceOf(int(r.toks[r.tokenOf(p)].cl)) }

func (r *reading) sentenceOf(ci int) int {
	all := r.sentences()
	return sort.Search(len(all), func(k int) bool { return all[k].last >= ci })
}

func (r *reading) sentenceAround(ci int) sentence { return r.sentences()[r.sentenceOf(ci)] }

// marks tell of each sentence whether something is known of it or of one beside it.
type marks []bool

func (m marks) around(k int) {
	for d := max(0, k-1); d <= min(k+1, len(m)-1); d++ {
		m[d] = true
	}
}

// onlyWritten tells whether what a sentence puts off is to be written or shown: "so I can write
// it up tonight".
func (r *reading) onlyWritten(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		switch w := r.toks[i].s; w {
		case "write", "type", "edit", "upload", "film":
			return r.prev(i) != "don't" && r.prev(i) != "not"
		}
	}
	return false
}

// raisedOpen asks what sentences leave open near which nothing is asked.
func (r *reading) raisedOpen(rec *Record, asked []Open) []Open {
	var out []Open
	all := r.sentences()
	if len(all) < weighableTalk {
		return nil // too little to weigh
	}
	near := r.askedNear(asked)
	for _, i := range r.laidToRest {
		near.around(r.sentenceOf(int(r.toks[i].cl))) // it was asked, and settled since
	}
	for k, s := range all {
		if near[k] && r.raisedTold == nil || r.clauses[s.first].chatter {
			continue
		}
		kind := 0
		if r.weigh(k).open > raisedAhead && !near[k] {
			kind = r.kindRaised(k)
		}
		switch raisedKinds[kind] {
		case Unfinished, Unsure, Conflict, Promise:
		default:
			kind = 0 // seldom right
		}
		if r.raisedTold != nil {
			r.raisedTold(s, r.hintRow, kind)
		}
		if kind == 0 || raisedKinds[kind] == Conflict && !r.hasSource(k) {
			continue
		}
		lo, hi := r.clauses[s.first].lo, r.clauses[s.last].hi
		if raisedKinds[kind] == Unfinished && r.onlyWritten(lo, hi) {
			continue
		}
		near.around(k)
		e := &looseEnd{kind: raisedKinds[kind], before: BeforeUse, first: s.first, last: s.last, lo: lo, hi: hi, topic: -1, noun: -1, signal: "weighed"}
		if e.kind == Promise {
			e.before = BeforePublishing
		}
		r.aim(e, s.first, openCue{lo, hi, e.signal})
		if r.settled(e, rec) || e.kind == Unfinished && (e.topic >= 0 || e.noun >= 0) && r.comesUp(e, -1, r.onADay(e)) {
			continue
		}
		o := r.askOf(e, rec)
		if slices.ContainsFunc(asked, func(p Open) bool {
			return p.Clip == o.Clip && math.Abs(p.At-o.At) < 40 && (p.About == o.About || p.LedgerID == o.LedgerID && o.LedgerID != "")
		}) {
			continue // it is asked after already
		}
		o.Rule = "weighed: likely left open"
		out = append(out, o)
	}
	return out
}

// hasSource tells whether a sentence, or one beside it, speaks of a document or of what somebody
// says: without one nothing disagrees.
func (r *reading) hasSource(k int) bool {
	all := r.sentences()
	for i := r.clauses[all[max(0, k-1)].first].lo; i < r.clauses[all[min(len(all)-1, k+1)].last].hi; i++ {
		if w := r.toks[i].s; documents.has(w) || printed.has(w) || saying.has(w) {
			return true
		}
	}
	return false
}

// weigh weighs a sentence, once: where weights are fitted its hints are wanted each time.
func (r *reading) weigh(k int) *sentence {
	s := &r.sentences()[k]
	if s.weighed && r.raisedTold == nil && r.warnedTold == nil {
		return s
	}
	r.hintRow = r.sentenceHints(r.hintRow[:0], k)
	s.weighed, s.open, s.warns = true, 0, 0
	for _, h := range r.hintRow {
		i := h.sentence()
		s.open += int(int8(raisedWeights[i]))
		s.warns += int(int8(warnedWeights[i]))
	}
	return s
}

// kindRaised gives the likeliest kind of what a sentence leaves open.
func (r *reading) kindRaised(k int) int {
	r.hintRow = r.sentenceHints(r.hintRow[:0], k)
	best, most := 1, -1<<30
	for of := 1; of < len(raisedKinds); of++ {
		sum := 0
		for _, h := range r.hintRow {
			sum += int(int8(raisedWeights[h.kindRaised(of)]))
		}
		if sum > most {
			best, most = of, sum
		}
	}
	return best
}

// longSentence is how many clauses of a sentence are looked at: talk without stops can be one.
const longSentence = 40

// sentenceHints gives all signs of a sentence.
func (r *reading) sentenceHints(row []hint, k int) []hint {
	add := func(s sign, value int) { row = append(row, hint{s, value}) }
	all := r.sentences()
	s := &all[k]
	lo, hi := r.clauses[s.first].lo, r.clauses[s.last].hi
	word := r.wordClueAt
	add(raiseWord, 0)
	a, b := 0, 0 // the words before
	for i := lo; i < min(hi, lo+60); i++ {
		w := word(i)
		add(raiseWord, w)
		if i > lo {
			add(raisePair, b*31+w)
		}
		if i > lo+1 {
			add(raisePair, 1<<28+a*31+w)
			add(raiseThree, (a*31+b)*31+w)
		}
		a, b = b, w
	}
	add(raiseEnds, word(lo))
	add(raiseEnds, 1<<28+word(hi-1))
	if lo+1 < hi {
		add(raiseEnds, word(lo)*31+word(lo+1))
		add(raiseEnds, 1<<28+word(hi-1)*31+word(hi-2))
	}
	if k > 0 {
		from := r.clauses[all[k-1].first].lo
		for i := max(from, lo-14); i < lo; i++ {
			add(raiseBefore, word(i))
		}
		add(raiseBefore, 1<<28+word(from))
	}
	if k+1 < len(all) {
		for i := hi; i < min(r.clauses[all[k+1].last].hi, hi+12); i++ {
			add(raiseAfter, word(i))
		}
	}
	for d := max(0, k-2); d <= min(len(all)-1, k+2); d++ {
		for ci := all[d].first; ci <= min(all[d].last, all[d].first+longSentence); ci++ {
			c := &r.clauses[ci]
			for m := range moods {
				if c.mood>>m&1 != 0 {
					add(raiseMood, (d-k+2)*32+m)
				}
			}
			if d != k {
				for _, oc := range c.opens {
					add(raiseCueNear, wordClue(oc.signal)+d-k+2)
				}
				continue
			}
			add(raiseTense, r.tense(c))
			for _, oc := range c.opens {
				add(raiseCue, wordClue(oc.signal))
			}
			for _, ai := range c.acts {
				a := &r.acts[ai]
				add(raiseAct, wordClue(a.action.Name)+bit(a.happened()))
				for m := range moods {
					if a.mood>>m&1 != 0 {
						add(raiseAct, 64+m)
					}
				}
			}
		}
	}
	add(raiseWhere, lo*12/len(r.toks))
	add(raiseEnd, gapOf(r.since(lo, len(r.toks)-1)))
	add(raiseLong, min(hi-lo, 30)/2)
	n := 0
	for ci := s.first; ci <= min(s.last, s.first+longSentence) && n < 4; ci++ {
		for _, mi := range r.clauses[ci].mentions {
			m := &r.mentions[mi]
			if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || n >= 4 {
				continue
			}
			n++
			add(raiseThing, wordClue(m.head))
			add(raiseThing, bit(m.kind&lexicon.Fastener != 0))
			if m.entry == nil {
				add(raiseState, 0)
				continue
			}
			st, _ := m.entry.state()
			add(raiseState, 1+stateOf(st))
			same := r.namedAt(m.head)
			add(raiseLater, min(4, len(same)-sort.Search(len(same), func(i int) bool { return r.mentions[same[i]].lo >= hi })))
			later := 0
			for i := len(m.entry.events) - 1; i >= 0 && m.entry.events[i].lo >= hi && later < 3; i-- {
				later++
				add(raiseLater, 1<<20+wordClue(m.entry.events[i].action))
			}
			add(raiseLater, 64+later)
			add(raiseLater, 128+later*8+stateOf(st))
		}
	}
	return row
}
