package extract

import (
	"slices"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

var raisedStage = stage{"raised.bin", &raisedWeights, raisedRows, fitRaising, tallyRaised,
	"%d sentences are taken to leave something open, %d of these rightly"}

// A judgedSentence is one with the kind of what careful readers found it to leave open, and of
// what it is taken to where the rules ask nothing near, 0 where that is nothing.
type judgedSentence struct {
	judgedRow
	taken    int
	optional bool // a reader may leave it out
	near     bool // the sentence beside it leaves something open
}

// judgeRaised follows each judged talk of a part, all for -1.
func judgeRaised(t *testing.T, lex *lexicon.Lexicon, fold int) []judgedSentence {
	var out []judgedSentence
	for k, j := range judgedTalks(t, "open", func(*judgedTalk, int, string) {}) {
		if fold >= 0 && k%folds != fold {
			continue
		}
		want := judgedList(t, j.name, "open")
		extract(j.talk, lex, &Record{}, func(r *reading) {
			var open map[int]*judgedEntry
			r.raisedTold = func(s sentence, row []hint, kind int) {
				if open == nil {
					open = map[int]*judgedEntry{}
					for i := range want {
						for _, tok := range want[i].toks {
							open[r.clauses[r.toks[tok].cl].sentence] = &want[i]
						}
					}
				}
				n := r.clauses[s.first].sentence
				c := judgedSentence{judgedRow: judgedRow{slices.Clone(row), 0}, taken: kind, near: open[n-1] != nil || open[n+1] != nil}
				if w := open[n]; w != nil {
					of := w.kinds[0]
					if of == LockMissing {
						of = NotRefitted
					}
					c.is, c.optional = slices.Index(raisedKinds[:], of), w.optional
				}
				out = append(out, c)
			}
		})
	}
	return out
}

// raisedRows gives the judged sentences of a part of the talk. In the ways of saying a thing
// the rules know what is left open.
func raisedRows(t *testing.T, lex *lexicon.Lexicon, fold int) (out []judgedRow) {
	if fold == ofWays {
		eachWay(t, func(talk *transcript.Talk) {
			extract(talk, lex, &Record{}, func(r *reading) {
				r.raisedTold = func(_ sentence, row []hint, _ int) {
					out = append(out, judgedRow{slices.Clone(row), 0})
				}
			})
		})
		return out
	}
	for _, c := range judgeRaised(t, lex, fold) {
		if !c.optional {
			out = append(out, c.judgedRow)
		}
	}
	return out
}

// fitRaising fits first whether something is open, then of what kind.
func fitRaising(rows []judgedRow) string {
	var any, open []judgedRow
	for _, c := range rows {
		if c.is > 0 {
			open = append(open, c)
		}
		c.is = bit(c.is > 0)
		any = append(any, c)
	}
	return fitRows(any, 2, raisedClues, 8, 0.05, 0.003, func(h hint, _ int) clue { return h.sentence() }).packed(raisedScale) +
		fitRows(open, len(raisedKinds), raisedClues+raisedKindClues, 8, 0.05, 0.003, hint.kindRaised).packed(raisedScale)[raisedClues:]
}

// tallyRaised counts the sentences that are taken to leave something open where the rules ask
// nothing, and how many of these do, they or the one beside them.
func tallyRaised(t *testing.T, lex *lexicon.Lexicon, fold int) (to sums) {
	for _, c := range judgeRaised(t, lex, fold) {
		to = to.plus(sums{bit(c.taken > 0), bit(c.taken > 0 && (c.is > 0 || c.near))})
	}
	return to
}

// TestRaised judges which sentences leave something open, of those near which the rules ask nothing.
func TestRaised(t *testing.T) {
	got := tallyRaised(t, lexicon.Default(), -1)
	t.Logf(raisedStage.told, got.of(2)...)
	if got[0] < 100 || got[1]*3 < got[0]*2 {
		t.Errorf(raisedStage.told+": want many, and two in three of them, on what the weights are fitted on", got.of(2)...)
	}
}
