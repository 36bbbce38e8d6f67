package extract

import (
	"cmp"
	_ "embed"
	"slices"
	"sort"
	"strings"

	"wrenchword/extract/lexicon"
)

// What the rules take for a warning or an open question, and a careful reader would not (a
// story, another machine, what was settled since), is weighed once more with all that stands
// around it, and left out where that is likely; a note tells what was. The weights are fitted
// on lists of careful readers (sieve_test.go).

//go:embed sieve.bin
var sieveWeights string

// sieveClues is how many weights there are.
const sieveClues = 1 << 16

// The lists of which something may be left out: the ledger by how its things were left, the
// parts by what becomes of them, the others by the sieve.
type sifted uint8

const (
	siftLedger sifted = iota
	siftCautions
	siftOpen
	siftParts
	siftLists
)

// leftOutOf tells in a note from which list something was left out, and why.
var leftOutOf = [siftLists]string{siftLedger: "what came off and went on as likely no part of this job", siftCautions: "the warnings as likely no part of this job", siftOpen: "the open questions as likely settled or no part of this job", siftParts: "the parts as likely not told of this job"}

// askedAhead is how heavy it must be that a question is none, in parts of a logit as the weights
// have them: somebody may be hurt by one that is left out, so of thirteen like it twelve are none.
const askedAhead = 120

// warnedAwry is the same of a warning: of those struck by a hair every other one was right.
const warnedAwry = 24

// neverStruck is more than all weights together.
const neverStruck = 1 << 20

const sieveScale = 48

// The signs of an item that does not belong in its list. Their order is that of the weights:
// a new one comes last, and the weights are to be fitted again.
const (
	sifKind      sign = iota // the state it is left in
	sifRule                  // the rule that took it
	sifRuleKind              // both
	sifName                  // the last word of the name of its thing
	sifNameKind              // the same, and the kind
	sifNameLong              // how many words the name has
	sifText                  // a word of its text
	sifTextKind              // the same, and the kind
	sifFirst                 // the first word of its text
	sifEnds                  // the last word of its text
	sifLong                  // how long its text is
	sifIn                    // a word of the talk it stands on
	sifMood                  // how its clause speaks, and those beside it
	sifAct                   // what its clause does
	sifActBefore             // what was done before
	sifActAfter              // what is done after
	sifWhere                 // how far the talk is
	sifClose                 // how many of its list stand close to it
	sifLater                 // how often its thing is named later
	sifEarlier               // how often its thing was named before
	sifOpens                 // the first word of its clause
	sifClause                // how long its clause is
	sifEvents                // what happened to it, the first and the last, and how often
	sifEventRule             // by which rule its last event was taken
	sifNamed                 // how much is known of what it is
	sifStateHead             // how it is left, and the name
	sifSigns
)

// item is one item of a list that is sifted.
type item struct {
	list   sifted
	at     int // token
	kind   string
	rule   string
	name   string
	text   string
	called string // in a note, where that is not its text
	quote  string
	events []Event
	known  int    // what is known of it, in bits
	more   []hint // the signs of its list
	ahead  int    // how heavy it must be that it does not belong in its list
}

// tokenOf gives the token at which a place begins.
func (r *reading) tokenOf(p Place) int {
	w := sort.Search(len(r.talk.Words), func(i int) bool {
		x := &r.talk.Words[i]
		return int(x.Clip) > p.Clip || int(x.Clip) == p.Clip && round3(x.At) >= p.At
	})
	return min(sort.Search(len(r.toks), func(i int) bool { return int(r.toks[i].w) >= w }), len(r.toks)-1)
}

// sift gives the place of the weight that a hint has for an item that does not belong in a list.
func (h hint) sift() clue {
	return clue((uint32(h.sign)<<12 + uint32(h.value)) * 2654435761 >> 16)
}

// struck tells whether an item does not belong in its list. all are the tokens at which the
// items of its list stand, in order.
func (r *reading) struck(it *item, all []int) bool {
	r.hintRow = append(r.siftHints(r.hintRow[:0], it, all), it.more...)
	sum := -it.ahead
	for i := range r.hintRow {
		h := &r.hintRow[i]
		h.sign += sign(it.list) * listSigns // each list has weights of its own
		sum += int(int8(sieveWeights[h.sift()]))
	}
	struck := sum > 0
	if r.siftTold != nil {
		return r.siftTold(it, r.hintRow, struck)
	}
	return struck
}

// siftHints gives all signs of an item.
func (r *reading) siftHints(row []hint, it *item, all []int) []hint {
	add := func(s sign, value int) { row = append(row, hint{s, value}) }
	kind := wordClue(it.kind)
	add(sifKind, kind)
	add(sifRule, wordClue(it.rule))
	add(sifRuleKind, wordClue(it.rule)+kind)
	name := strings.Fields(strings.ToLower(it.name))
	add(sifNameLong, min(len(name), 5))
	add(sifNameLong, 8+min(len(name), 5)+kind)
	if n := len(name); n > 0 {
		head := wordClue(lexicon.Singular(name[n-1]))
		add(sifName, head)
		add(sifNameKind, head+kind)
	}
	add(sifNamed, it.known)
	add(sifNamed, 64+it.known+kind)
	text := strings.Fields(strings.ToLower(it.text))
	for i, w := range text {
		w = strings.Trim(w, ".,?!;:()“”\"")
		text[i] = w
		if i < 30 {
			add(sifText, wordClue(w))
			add(sifTextKind, wordClue(w)+kind)
		}
	}
	if n := len(text); n > 0 {
		add(sifFirst, wordClue(text[0]))
		add(sifEnds, wordClue(text[n-1]))
	}
	add(sifLong, min(len(text), 20))
	lo := it.at
	hi := min(len(r.toks), lo+max(1, len(strings.Fields(it.quote))))
	for i := lo; i < hi; i++ {
		add(sifIn, r.wordClueAt(i))
	}
	ci := int(r.toks[lo].cl)
	c := &r.clauses[ci]
	for k := max(0, ci-1); k <= min(len(r.clauses)-1, ci+1); k++ {
		for b := range 20 {
			if r.clauses[k].mood>>b&1 != 0 {
				add(sifMood, (k-ci+1)*32+b)
				if k == ci {
					add(sifMood, 128+b+kind)
				}
			}
		}
	}
	add(sifOpens, r.wordClueAt(c.lo))
	add(sifClause, min(c.hi-c.lo, 20))
	if len(c.acts) == 0 {
		add(sifAct, 0)
	}
	for _, ai := range c.acts {
		a := &r.acts[ai]
		add(sifAct, wordClue(a.action.Name))
		if a.verb < 0 {
			add(sifAct, 1)
		}
		if !a.happened() {
			add(sifAct, 2)
		}
	}
	for k := ci - 1; k >= max(0, ci-3); k-- {
		for _, ai := range r.clauses[k].acts {
			add(sifActBefore, wordClue(r.acts[ai].action.Name))
		}
	}
	for k := ci + 1; k <= min(len(r.clauses)-1, ci+3); k++ {
		for _, ai := range r.clauses[k].acts {
			add(sifActAfter, wordClue(r.acts[ai].action.Name))
		}
	}
	add(sifWhere, lo*10/len(r.toks))
	add(sifWhere, 16+lo*10/len(r.toks)+kind)
	i, _ := slices.BinarySearch(all, lo-25)
	j, _ := slices.BinarySearch(all, lo+25)
	add(sifClose, min(j-i, 8))
	if n := len(name); n > 0 {
		head := lexicon.Singular(name[n-1])
		all := r.namedAt(head)
		before := sort.Search(len(all), func(i int) bool { return r.mentions[all[i]].lo >= lo-4 })
		later := all[sort.Search(len(all), func(i int) bool { return r.mentions[all[i]].lo > hi }):]
		after := len(later)
		add(sifLater, min(after, 5))
		add(sifLater, 8+min(after, 5)+kind)
		add(sifEarlier, min(before, 5))
		add(sifEarlier, 8+min(before, 5)+kind)
		if after > 0 {
			m := &r.mentions[later[0]]
			add(sifLater, 64+gapOf(r.since(lo, m.lo)))
			add(sifLater, wordClue(r.actOn(m.cl, later[0]))+kind)
		}
	}
	if n := len(it.events); n > 0 {
		add(sifEvents, min(n, 5))
		first, last := wordClue(it.events[0].Act), wordClue(it.events[n-1].Act)
		add(sifEvents, first)
		add(sifEvents, 1<<28+last)
		add(sifEvents, first*31+last+min(n, 4))
		add(sifEventRule, wordClue(it.events[n-1].Rule))
		add(sifEventRule, 1<<28+wordClue(it.events[0].Rule))
		add(sifStateHead, wordClue(it.events[0].Rule)+kind)
	}
	return row
}

// namedAt gives the mentions with a head, in order.
func (r *reading) namedAt(head string) []int {
	if r.heads == nil {
		r.heads = map[string][]int{}
		for mi := range r.mentions {
			h := r.mentions[mi].head
			r.heads[h] = append(r.heads[h], mi)
		}
	}
	return r.heads[head]
}

// siftCautions leaves out the warnings that are none.
func (r *reading) siftCautions(rec *Record) {
	rec.Cautions = siftList(r, rec.Cautions, func(c *Caution) (item, Place) {
		return item{list: siftCautions, ahead: warnedAwry, rule: c.Rule, text: c.Text, quote: c.Quote}, c.Place
	})
}

// The signs of a question that is none, beside those of any item.
const (
	askMany   sign = iota + sifSigns // how many of its kind are asked
	askEnd                           // for how long the talk goes on
	askWhere                         // how far the talk is
	askFits                          // how much was fitted before and is after
	askGate                          // what it stands before, and when it is due
	askAgain                         // how often it was raised
	askEntry                         // the entry it is of
	askLast                          // what happened to that last
	askLater                         // how often that is named later
	askOwner                         // how what it holds was left
	askHead                          // the word for it
	askRaised                        // how much its sentence leaves open, or one beside it
	askRule                          // a word of the rule that asks
	listSigns
)

// siftOpen leaves out the questions that are none.
func (r *reading) siftOpen(rec *Record) {
	many := map[string]int{}
	for i := range rec.Open {
		many[rec.Open[i].Kind]++
	}
	entries := map[string]*Entry{}
	for i := range rec.Ledger {
		entries[rec.Ledger[i].ID] = &rec.Ledger[i]
	}
	things := map[string]*thing{}
	for _, t := range r.things {
		things[t.id] = t
	}
	before := map[string]int{}
	rec.Open = siftList(r, rec.Open, func(o *Open) (item, Place) {
		it := item{list: siftOpen, kind: o.Kind, name: o.About, text: o.Question, ahead: askedAhead, called: strings.TrimSpace(o.About + " " + o.Kind), quote: o.Quote}
		if head := lexicon.Singular(lastOf(o.About)); o.Kind == LockMissing || o.Kind == ReplaceLater && (lockHeads.has(head) || head == "nyloc") {
			it.ahead = neverStruck // no lock that is gone or to be renewed goes by weight
		}
		if o.Rule == noUnit {
			it.ahead = neverStruck // a value whose unit nobody knows tightens nothing
		}
		it.rule, _, _ = strings.Cut(o.Rule, ":")
		kind := wordClue(o.Kind)
		add := func(s sign, value int) { it.more = append(it.more, hint{s, value}, hint{s, value + kind}) }
		at := r.tokenOf(o.Place)
		add(askMany, min(many[o.Kind], 12))
		add(askMany, 16+min(before[o.Kind], 6))
		before[o.Kind]++
		add(askEnd, gapOf(r.since(at, len(r.toks)-1)))
		add(askWhere, at*10/len(r.toks))
		fits := r.fitsBefore(at)
		add(askFits, min(fits, 12))
		add(askFits, 16+min(r.fitsBefore(len(r.toks))-fits, 12))
		add(askGate, wordClue(o.Before))
		add(askGate, 1+wordClue(o.Due))
		add(askAgain, min(len(o.AlsoAt), 4))
		k := r.sentenceAt(o.Place)
		open := r.weigh(k).open
		add(askRaised, min(max(open/8, -8), 8))
		if k > 0 {
			open = max(open, r.weigh(k-1).open)
		}
		if k+1 < len(r.sentences()) {
			open = max(open, r.weigh(k+1).open)
		}
		add(askRaised, 32+min(max(open/8, -8), 8))
		for w := range strings.FieldsSeq(o.Rule) {
			add(askRule, wordClue(w))
		}
		e, t := entries[o.LedgerID], things[o.LedgerID]
		if o.LedgerID == "" || e == nil || t == nil || len(t.events) == 0 {
			return it, o.Place
		}
		it.events = e.Events
		it.known = 1 + 2*bitsOf(e.Kind == "fastener", e.NamedAfter != "", e.Unnamed, e.Count > 0)
		add(askEntry, wordClue(e.State))
		add(askEntry, 1+wordClue(e.Kind)+min(len(e.Events), 6)*2)
		add(askEntry, 2+wordClue(e.Locker))
		add(askEntry, 3+min(e.Count, 6)*4)
		add(askEntry, 1<<28+bitsOf(takesTorque(t), t.wasOff(), isLock(t), t.owner != nil, t.plural, e.Inferred != ""))
		last := &t.events[len(t.events)-1]
		add(askLast, wordClue(last.action))
		later := func(all []int) int {
			return min(4, len(all)-sort.Search(len(all), func(i int) bool { return r.mentions[all[i]].lo >= last.hi }))
		}
		add(askLater, later(t.mentions))
		add(askLater, 8+later(r.namedAt(t.head)))
		if t.owner != nil {
			st, _ := t.owner.state()
			add(askOwner, stateOf(st))
		}
		add(askHead, wordClue(t.head))
		return it, o.Place
	})
}

// siftList gives what is left of a list.
func siftList[T any](r *reading, list []T, of func(*T) (item, Place)) []T {
	if len(list) < 4 {
		return list // too few to tell what belongs together
	}
	items := make([]item, len(list))
	at := make([]int, len(list))
	for i := range list {
		it, place := of(&list[i])
		it.at = r.tokenOf(place)
		items[i], at[i] = it, it.at
	}
	slices.Sort(at)
	out := list[:0]
	for i := range list {
		it := &items[i]
		if !r.struck(it, at) {
			out = append(out, list[i])
			continue
		}
		if it.rule != "weighed" { // what no rule heard was never there
			r.leave(it.list, cmp.Or(it.called, it.text), r.at(it.at))
		}
	}
	return out
}

// leave keeps in mind what is left out of a list.
func (r *reading) leave(list sifted, what string, at float64) {
	r.leftOut[list] = append(r.leftOut[list], "“"+what+"” ("+clock(at)+")")
}
