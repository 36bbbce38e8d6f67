package extract

import (
	_ "embed"
	"strings"
)

// Which of the acts that happened make an instruction is weighed: the rules (noStep, wordsFor)
// know what is none and what they can put into words, but leave out much that is done with a
// thing which is not named, and take some for work that is none. What a step would say is
// weighed with all that stands around its act. The weights are fitted on acts that careful
// readers judged (told_test.go).

//go:embed told.bin
var toldWeights string

// How heavy an act must weigh to make a step, in 24ths of the logarithm of the odds: where the
// rules make one of it, and where they make none.
const (
	toldRuled = -24
	toldAhead = 48
)

// The signs of an act that makes a step, beside those of work done. Their order is that of the
// weights: a new one comes last, and the weights are to be fitted again.
const (
	tellRuled sign = iota + deedSigns // whether the rules make a step of it, and of what it is done to
	tellLong                          // how long its text is
	tellFirst                         // the first word of its text
	tellEnds                          // the last word of its text
	tellWord                          // a word of its text
	tellThing                         // how its thing was left before
	tellSame                          // what was done to its thing last, and how long ago
)

// tells tells whether the act k, of which a step would say a text, makes one.
func (r *reading) tells(k int, text string, ruled bool) bool {
	if text == "" {
		return false
	}
	a := &r.acts[k]
	for n := len(r.deedDone); n < len(r.acts); n++ {
		r.deedDone = append(r.deedDone, r.acts[n].happened()) // found since: done again on the other side
	}
	row := r.deedHints(r.hintRow[:0], k, r.deedDone)
	add := func(s sign, value int) { row = append(row, hint{s, value}) }
	kind := wordClue(a.action.Name)
	perhaps := a.unsure || len(a.things) == 0 && !a.unknown || strings.Contains(text, ", perhaps)") || strings.Contains(text, "not named")
	how := bitsOf(ruled, perhaps, len(a.things) > 0, len(a.objects) > 0, a.unknown, a.bare, a.subject, a.pronoun != "")
	add(tellRuled, how)
	add(tellRuled, 512+how+kind)
	words := strings.Fields(strings.ToLower(strings.Trim(text, ".")))
	add(tellLong, min(len(words), 16)*2+bit(ruled))
	add(tellFirst, wordClue(words[0])*2+bit(ruled))
	add(tellEnds, wordClue(words[len(words)-1])*2+bit(ruled))
	for i, w := range words[1:] {
		if i < 12 {
			add(tellWord, wordClue(strings.Trim(w, ",()“”"))+kind)
		}
	}
	if len(a.things) > 0 {
		t := a.things[0]
		last, st := t.lastBefore(a.lo), ""
		if last != nil {
			st = last.action
			gap := gapOf(r.since(last.lo, a.lo))
			add(tellSame, gap)
			add(tellSame, 64+gap*2+bit(st == a.action.Name))
		}
		add(tellThing, wordClue(st)+kind)
		add(tellThing, bitsOf(t.fastener, t.plural, t.owner != nil, last != nil))
	}
	sum := deedWeight(row, toldWeights)
	r.hintRow = row
	tells := sum > toldAhead && !perhaps && !bodily.has(words[len(words)-1]) // what nobody named is told only where the rules know how
	if ruled {
		tells = sum > toldRuled
	}
	if r.toldTold != nil {
		r.toldTold(a, row, ruled, tells)
	}
	return tells
}
