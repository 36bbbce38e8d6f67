package extract

import (
	_ "embed"
	"slices"
	"sort"
	"strconv"
	"strings"

	"wrenchword/extract/lexicon"
)

// What the rules take for an entry of the ledger or a caution, and a careful reader
// would strike out (a story, another machine, a thing only pointed at), is weighed once more
// with all that stands around it, and left out where that is likely; a note tells what was.
// The weights are fitted on lists in which careful readers struck out what does not belong
// there (sieve_test.go). Questions are not sifted: to lose one can be dangerous.

//go:embed sieve.bin
var sieveWeights string

// sieveClues is how many weights there are for each list; those of the lists follow one another.
const sieveClues = 1 << 15

// The lists that are sifted.
type sifted uint8

const (
	siftLedger sifted = iota
	siftCautions
	siftLists
)

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
	quote  string
	events []Event
	known  int  // what is known of it, in bits
	keep   bool // it stays, whatever its weight
}

// tokenOf gives the token at which a place begins.
func (r *reading) tokenOf(p Place) int {
	w := sort.Search(len(r.talk.Words), func(i int) bool {
		x := &r.talk.Words[i]
		return int(x.Clip) > p.Clip || int(x.Clip) == p.Clip && round3(x.At) >= p.At
	})
	return min(sort.Search(len(r.toks), func(i int) bool { return int(r.toks[i].w) >= w }), len(r.toks)-1)
}

// struck tells whether an item does not belong in its list. all are the tokens at which the
// items of its list stand, in order.
func (r *reading) struck(it *item, all []int) bool {
	r.hintRow = r.siftHints(r.hintRow[:0], it, all)
	sum := 0
	for _, h := range r.hintRow {
		sum += int(int8(sieveWeights[int(it.list)*sieveClues+int(clueOf(h.sign, h.value))]))
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
		add(sifIn, wordClue(r.toks[i].s))
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
	add(sifOpens, wordClue(r.toks[c.lo].s))
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

// siftLedger leaves out of the ledger what was never handled, and numbers the entries anew.
// Only what is said to be back on goes, and no part whose fate is told: nothing has to be done
// about it, be it there or not.
func (r *reading) siftLedger(rec *Record) {
	fated := map[string]bool{}
	for i := range rec.Parts {
		fated[rec.Parts[i].Name] = true
	}
	rec.Ledger = siftList(r, rec.Ledger, func(e *Entry) (item, Place) {
		it := item{list: siftLedger, kind: e.State, rule: e.Rule, name: e.Item, text: e.Item, quote: e.Quote, events: e.Events, keep: e.State != Refitted || e.Lock.State != "" || fated[e.Item]}
		for i, known := range []bool{e.Kind == "fastener", e.NamedAfter != "", e.Unnamed, e.Count > 0, e.Lock.State != ""} {
			if known {
				it.known |= 1 << i
			}
		}
		return it, e.Place
	})
	id := map[string]string{}
	for i := range rec.Ledger {
		e := &rec.Ledger[i]
		was := e.ID
		e.ID = "L" + strconv.Itoa(i+1)
		id[was] = e.ID
	}
	for _, t := range r.things {
		t.id = id[t.id]
	}
	for i := range rec.Torques {
		rec.Torques[i].LedgerID = id[rec.Torques[i].LedgerID]
	}
}

// siftCautions leaves out the warnings that are none.
func (r *reading) siftCautions(rec *Record) {
	rec.Cautions = siftList(r, rec.Cautions, func(c *Caution) (item, Place) {
		return item{list: siftCautions, rule: c.Rule, text: c.Text, quote: c.Quote}, c.Place
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
		if it.keep || !r.struck(it, at) {
			out = append(out, list[i])
			continue
		}
		r.struckOut = append(r.struckOut, leftOut{"“" + it.text + "” (" + clock(r.at(it.at)) + ")", it.list})
	}
	return out
}

// leftOut is what was struck, and from which list.
type leftOut struct {
	what string
	list sifted
}

// leftOutOf tells what was struck from a list, "" where nothing was.
func (r *reading) leftOutOf(list sifted) string {
	var out []string
	for _, l := range r.struckOut {
		if l.list == list {
			out = append(out, l.what)
		}
	}
	return strings.Join(out, "; ")
}

// key tells items of a list at one place from each other.
func (it *item) key() string {
	if it.list == siftLedger {
		return "entry-" + it.kind
	}
	return "caution"
}
