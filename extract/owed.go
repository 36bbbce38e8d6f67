package extract

import _ "embed"

// What the ledger shows to be off, slack or by hand at the end may be a loose end, or was put
// right in words that nobody understood. So each such entry is weighed, with what the rules make
// of it as one sign among others: whether it is to be asked after. The weights are fitted on
// lists of what careful readers found to be open (owed_test.go).

//go:embed owed.bin
var owedWeights string

// owedClues is how many weights there are.
const owedClues = 1 << 16

// How heavy it must be that an entry is open, in parts of a logit as the weights have them:
// where the rules ask nothing, one in four that is asked after is open; where they ask, one in
// seven of those left out is. A value that nobody gave is asked in the tightening round, too.
const (
	owedScale   = 16
	owedAhead   = -18
	owedRuled   = -40
	owedNoValue = -30
	owedOfPart  = 0 // a part that is back on is asked after by its fasteners
)

// The signs of an entry that is open, beside those of how a thing was left. Their order is that
// of the weights: a new one comes last, and the weights are to be fitted again.
const (
	oweRuled  sign = iota + standSigns // what the rules ask, or why they ask nothing
	oweState                           // how sure it is how the thing was left
	oweRaised                          // how much the sentences that speak of it leave open
	oweAsked                           // what is asked of its like by the talk itself
)

func (h hint) owed() clue {
	return clue((uint32(h.sign)<<12 + uint32(h.value)) * 2654435761 >> 16)
}

// owes tells whether an entry that was left in a way that may be open is to be asked after;
// why is what the rules have against it, "" where they ask.
func (r *reading) owes(e *Entry, t *thing, kind, why string, said []Open, s *standingTalk, entries int) bool {
	always := why == "" && (isLock(t) || e.State == HandTight || e.State == Loosened) // no lock that is gone and no nut that may be loose goes by weight
	if always && r.owedTold == nil {
		return true
	}
	last := t.events[len(t.events)-1].lo
	here, later, most := r.opensAt(last), -1<<30, -1<<30
	for i := len(t.mentions) - 1; i >= max(0, len(t.mentions)-8); i-- {
		lo := r.mentions[t.mentions[i]].lo
		open := r.opensAt(lo)
		if most = max(most, open); lo > last {
			later = max(later, open)
		}
	}
	row := r.standingHints(r.hintRow[:0], e, t, s, entries)
	sure := r.surelyLeft(row, e.State)
	add := func(s sign, value int) { row = append(row, hint{s, value}, hint{s, value + wordClue(kind)}) }
	add(oweRuled, wordClue(why))
	add(oweRuled, wordClue(why)*31+wordClue(e.State))
	add(oweState, min(max(sure/8, -8), 8))
	add(oweRaised, min(max(here/8, -8), 8))
	add(oweRaised, 32+min(max(most/8, -8), 8))
	add(oweRaised, 64+min(max(later/8, -9), 8))
	for i := range said {
		if o := &said[i]; o.LedgerID == e.ID {
			add(oweAsked, wordClue(o.Kind))
		} else if lastOf(o.About) == t.head {
			add(oweAsked, 1+wordClue(o.Kind))
		}
	}
	r.hintRow = row
	sum := 0
	for _, h := range row {
		sum += int(int8(owedWeights[h.owed()]))
	}
	asks := sum > owedAhead
	switch {
	case why != "":
		if kind == NotTorqued && e.State == Refitted && !t.fastener {
			asks = sum > owedOfPart
		}
	case always:
		asks = true
	case e.State == Tightened:
		asks = sum > owedNoValue
	default:
		asks = sum > owedRuled
	}
	if r.owedTold != nil {
		return r.owedTold(e, t, said, row, why == "", asks)
	}
	return asks
}

// opensAt gives how heavy it is that the sentence of a token leaves something open.
func (r *reading) opensAt(tok int) int { return r.weigh(r.sentenceOf(int(r.toks[tok].cl))).open }
