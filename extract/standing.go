package extract

import (
	_ "embed"
	"slices"
	"sort"
	"strconv"
)

// How a thing was left is told by the last of its events. But talk names things loosely, and
// an event may be another thing's, unheard, or no part of this job. So an entry is weighed once
// more with all that is told of it and around it: that it was left as its events tell,
// otherwise, or that it is no entry at all. The weights are fitted on lists that careful
// readers made of what was handled and how it was left (standing_test.go).

//go:embed standing.bin
var standingWeights string

// standingClues is how many weights there are.
const standingClues = 1 << 17

// standings are the ways in which a thing can be left, none first: no entry. Their order is
// that of the weights.
var standings = [...]string{"", Removed, Refitted, HandTight, Tightened, Torqued, Loosened, Discarded}

// The signs of how a thing was left, beside those of any item of a list. Their order is that
// of the weights: a new one comes last, and the weights are to be fitted again.
const (
	standEnd       sign = iota + sifSigns // for how long the talk goes on after its last event
	standWhere                            // how far the talk is then
	standFits                             // how much was fitted before and is after
	standThing                            // what is known of the thing
	standLast                             // what happened to it last
	standHead                             // the word for it
	standOwner                            // how what it holds was left
	standCount                            // how many it is
	standOff                              // how much is off at the end
	standEntries                          // how many entries there are
	standActLater                         // what is done later where its word is said
	standWordLater                        // a word of the talk there
	standMoodLater                        // how the talk speaks there
	standLater                            // how often its word is said later, and how soon
	standWords                            // a word of the clause of its last event
	standNext                             // a word of the talk after that
	standActNext                          // what is done then
	standLike                             // how others of its word were left, those named alike and those named more fully
	standNamed                            // how it is named
	standSigns
)

// standing gives the place of the weight that a hint has for a way of being left.
func (h hint) standing(of int) clue {
	return clue((uint32(h.sign+sign(of)*standSigns)<<12 + uint32(h.value)) * 2654435761 >> 15)
}

// How many times likelier than what its events tell another way of being left must be, in
// parts of a logit as the weights have them: more where a question would be lost by it.
const (
	standingScale = 16
	leftOtherwise = 18 // three times
	leftSettled   = 26 // five times
)

// weighStandings weighs how each entry of the ledger was left.
func (r *reading) weighStandings(rec *Record) {
	if len(rec.Ledger) < weighable {
		return
	}
	things := map[string]*thing{}
	for _, t := range r.things {
		if t.id != "" && things[t.id] == nil {
			things[t.id] = t
		}
	}
	s := r.standingTalk(rec)
	kept := rec.Ledger[:0]
	for _, e := range rec.Ledger {
		left := e.State
		if t := things[e.ID]; t != nil && len(t.events) > 0 && !isLock(t) && !r.surelyOff(t) { // what a lock is told to be is kept: much hangs on it
			left = r.standing(&e, t, &s, len(rec.Ledger))
		}
		switch left {
		case e.State:
		case "":
			r.leave(siftLedger, e.Item, e.At)
			continue
		default:
			e.Inferred = "heard last as " + e.State + "; what else is told makes " + left + " likelier"
			e.State, e.ValueSaid = left, false
		}
		kept = append(kept, e)
	}
	rec.Ledger = kept
	r.renumber(rec)
}

// weighable is from how many entries on they tell what belongs together.
const weighable = 6

// standingTalk gives what all entries of a talk share.
func (r *reading) standingTalk(rec *Record) standingTalk {
	s := standingTalk{at: make([]int, len(rec.Ledger))}
	for i := range rec.Ledger {
		s.at[i] = r.tokenOf(rec.Ledger[i].Place)
		s.off += bit(rec.Ledger[i].State == Removed)
	}
	slices.Sort(s.at)
	return s
}

// standingTalk is what all entries of a talk share.
type standingTalk struct {
	at  []int // the tokens at which they stand, in order
	off int   // how many are off
}

// standing gives how an entry was most likely left, "" where it is none.
func (r *reading) standing(e *Entry, t *thing, s *standingTalk, entries int) string {
	r.hintRow = r.standingHints(r.hintRow[:0], e, t, s, entries)
	was := max(0, slices.Index(standings[:], e.State))
	ahead, loose := leftOtherwise, e.State == Removed || e.State == Loosened || e.State == HandTight
	if loose {
		ahead = leftSettled
	}
	best := likeliestClass(r.hintRow, standingWeights, len(standings), was, ahead, hint.standing)
	switch st := standings[best]; {
	case best == was:
	case st == "" && t.fastener && (loose || e.State == Refitted && takesTorque(t)):
		best = was // no nut that may be loose is overlooked by weight, nor one that nobody said is tight
	case (st == HandTight || st == Tightened || st == Torqued) && !slices.ContainsFunc(t.events, func(e event) bool { return ledgerActs[e.action] == st }):
		best = was // how tight a thing is has to be heard
	}
	if r.standingTold != nil {
		best = r.standingTold(e, r.hintRow, was, best)
	}
	return standings[best]
}

// surelyLeft gives how much heavier signs weigh for a way of being left than for any other.
func (r *reading) surelyLeft(row []hint, state string) int {
	told, most := 0, 0
	for of, st := range standings {
		sum := 0
		if of > 0 {
			for _, h := range row {
				sum += int(int8(standingWeights[h.standing(of)]))
			}
		}
		if st == state {
			told = sum
		} else {
			most = max(most, sum)
		}
	}
	return told - most
}

// standingHints gives all signs of how a thing was left.
func (r *reading) standingHints(row []hint, e *Entry, t *thing, s *standingTalk, entries int) []hint {
	it := item{kind: e.State, rule: e.Rule, name: e.Item, text: e.Item, quote: e.Quote, events: e.Events, at: r.tokenOf(e.Place),
		known: bitsOf(e.Kind == "fastener", e.NamedAfter != "", e.Unnamed, e.Count > 0, e.Lock.Method != "")}
	row = r.siftHints(row, &it, s.at)
	state := wordClue(e.State)
	add := func(s sign, value int) { row = append(row, hint{s, value}) }
	both := func(s sign, value int) { row = append(row, hint{s, value}, hint{s, value + state}) }
	last := &t.events[len(t.events)-1]
	both(standEnd, gapOf(r.since(last.lo, len(r.toks)-1)))
	both(standWhere, last.lo*10/len(r.toks))
	fits := r.fitsBefore(last.lo)
	both(standFits, min(fits, 12))
	both(standFits, 16+min(r.fitsBefore(len(r.toks))-fits, 12))
	both(standThing, bitsOf(takesTorque(t), t.wasOff(), isLock(t), t.owner != nil, t.plural))
	both(standLast, wordClue(last.action))
	both(standHead, wordClue(t.head))
	if t.owner != nil {
		st, _ := t.owner.state()
		both(standOwner, 1+stateOf(st))
	}
	both(standCount, min(e.Count, 6))
	both(standOff, min(s.off, 12))
	both(standEntries, min(entries/4, 12))
	like, fuller := 0, 0
	for _, o := range r.like(t.head, t.fastener) {
		if o == t || len(o.events) == 0 {
			continue
		}
		st, _ := o.state()
		both(standLike, stateOf(st)*2+bit(o.events[0].lo > t.events[0].lo))
		both(standLike, 64+stateOf(st)*2+bit(o.events[len(o.events)-1].lo > last.lo))
		if like++; contentCount(o.mods) > contentCount(t.mods) {
			fuller++
		}
		if like > 4 {
			break
		}
	}
	both(standLike, 128+min(like, 4)*4+min(fuller, 3))
	both(standNamed, bitsOf(t.name == "", t.side != "", t.owner != nil, contentCount(t.mods) > 0, t.plural)*8+min(len(t.mentions), 7))
	both(standNamed, 512+min(len(t.events), 6))
	later := 0
	named := r.namedAt(t.head)
	for _, mi := range named[sort.Search(len(named), func(i int) bool { return r.mentions[named[i]].lo >= last.hi }):] {
		m := &r.mentions[mi]
		if later++; later == 1 {
			both(standLater, 16+gapOf(r.since(last.lo, m.lo)))
		}
		if later > 12 {
			break
		}
		same := bit(m.entry == t)
		c := &r.clauses[m.cl]
		for _, ai := range c.acts {
			a := &r.acts[ai]
			both(standActLater, wordClue(a.action.Name)+same*2+bit(a.happened()))
		}
		for i := c.lo; i < min(c.hi, c.lo+40); i++ {
			add(standWordLater, r.wordClueAt(i)+same)
		}
		for b := range moods {
			if c.mood>>b&1 != 0 {
				add(standMoodLater, b*2+same)
			}
		}
	}
	both(standLater, min(later, 6))
	ci := int(r.toks[last.lo].cl)
	for i := r.clauses[ci].lo; i < min(r.clauses[ci].hi, r.clauses[ci].lo+40); i++ {
		add(standWords, r.wordClueAt(i))
	}
	for k := ci + 1; k < min(len(r.clauses), ci+4); k++ {
		c := &r.clauses[k]
		for i := c.lo; i < min(c.hi, c.lo+8); i++ {
			add(standNext, r.wordClueAt(i))
		}
		for _, ai := range c.acts {
			a := &r.acts[ai]
			both(standActNext, wordClue(a.action.Name)+bit(len(a.things) == 0))
		}
	}
	return row
}

// renumber numbers the entries anew.
func (r *reading) renumber(rec *Record) {
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
