package extract

import (
	"slices"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

var fatedStage = stage{"fated.bin", &fatedWeights, fatedRows, fitFates, tallyFates,
	"of %d parts %d are as they were told, %d as weighed: %d better, %d worse"}

// judgeFates follows each judged talk of a part, all for -1, and pairs its parts with those of
// the reader: first those that are alike, then those that only go by its name.
func judgeFates(t *testing.T, lex *lexicon.Lexicon, fold int) []judgedClass {
	var out []judgedClass
	for k, j := range judgedTalks(t, "part", func(*judgedTalk, int, string) {}) {
		if fold >= 0 && k%folds != fold {
			continue
		}
		want := judgedList(t, j.name, "part")
		from := len(out)
		var names []string
		extract(j.talk, lex, &Record{}, func(r *reading) {
			r.fatedTold = func(p *Part, row []hint, was, best int) int {
				names = append(names, p.Name)
				out = append(out, judgedClass{judgedRow{slices.Clone(row), 0}, was, best, nil})
				return best
			}
		})
		settleClasses(out[from:], names, fateKinds[:], want)
	}
	return out
}

// fatedRows gives the judged parts of a part of the talk. What becomes of one in the ways of
// saying so is as it is told.
func fatedRows(t *testing.T, lex *lexicon.Lexicon, fold int) (out []judgedRow) {
	if fold == ofWays {
		eachWay(t, func(talk *transcript.Talk) {
			extract(talk, lex, &Record{}, func(r *reading) {
				r.fatedTold = func(_ *Part, row []hint, was, _ int) int {
					out = append(out, judgedRow{slices.Clone(row), was})
					return was
				}
			})
		})
		return out
	}
	return rowsOf(judgeFates(t, lex, fold))
}

func fitFates(rows []judgedRow) string {
	return fitRows(rows, len(fateKinds), fatedClues, 10, 0.03, 0.01, hint.fate).packed(fatedScale)
}

func tallyFates(t *testing.T, lex *lexicon.Lexicon, fold int) sums {
	return tallyClasses(judgeFates(t, lex, fold))
}

// TestFates judges what becomes of each part in the judged talk.
func TestFates(t *testing.T) {
	got := tallyFates(t, lexicon.Default(), -1)
	t.Logf(fatedStage.told, got.of(5)...)
	if got[3] < got[4]*4 {
		t.Errorf(fatedStage.told+": want four better for one worse on what the weights are fitted on", got.of(5)...)
	}
}
