package extract

import (
	"slices"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

var warnedStage = stage{"warned.bin", &warnedWeights, warnedRows, fitWarning, tallyWarned,
	"%d sentences are taken to warn where the rules hear no warning, %d of these rightly"}

// A judgedWarning is a sentence, 1 where careful readers found that it warns.
type judgedWarning struct {
	judgedRow
	taken    bool // it is taken to warn where the rules hear no warning
	optional bool // a reader may leave it out
}

// judgeWarned follows each judged talk of a part, all for -1: the lines "caut" of NAME.judged hold the warnings that
// a careful reader found.
func judgeWarned(t *testing.T, lex *lexicon.Lexicon, fold int) []judgedWarning {
	var out []judgedWarning
	for k, j := range judgedTalks(t, "caut", func(j *judgedTalk, tok int, what string) {
		j.want[tok] = [][]string{{what[:1]}}
	}) {
		if fold >= 0 && k%folds != fold {
			continue
		}
		extract(j.talk, lex, &Record{}, func(r *reading) {
			var warns map[int]string
			r.warnedTold = func(s sentence, row []hint, taken bool) {
				if warns == nil {
					warns = map[int]string{}
					for tok, w := range j.want {
						warns[r.clauses[r.toks[tok].cl].sentence] = w[0][0]
					}
				}
				n := r.clauses[s.first].sentence
				out = append(out, judgedWarning{judgedRow{slices.Clone(row), bit(warns[n] != "")}, taken, warns[n] == "?"})
			}
		})
	}
	return out
}

// warnedRows gives the judged sentences of a part of the talk. In the ways of saying a thing
// the rules know what warns.
func warnedRows(t *testing.T, lex *lexicon.Lexicon, fold int) (out []judgedRow) {
	if fold == ofWays {
		eachWay(t, func(talk *transcript.Talk) {
			extract(talk, lex, &Record{}, func(r *reading) {
				r.warnedTold = func(_ sentence, row []hint, _ bool) {
					out = append(out, judgedRow{slices.Clone(row), 0})
				}
			})
		})
		return out
	}
	for _, c := range judgeWarned(t, lex, fold) {
		if !c.optional {
			out = append(out, c.judgedRow)
		}
	}
	return out
}

func fitWarning(rows []judgedRow) string {
	return fitRows(rows, 2, raisedClues, 8, 0.05, 0.003, func(h hint, _ int) clue { return h.sentence() }).packed(raisedScale)
}

// tallyWarned counts the sentences that are taken to warn where the rules hear no warning, and
// how many of these do.
func tallyWarned(t *testing.T, lex *lexicon.Lexicon, fold int) (to sums) {
	for _, c := range judgeWarned(t, lex, fold) {
		to = to.plus(sums{bit(c.taken), bit(c.taken) * c.is})
	}
	return to
}

// TestWarned judges which sentences warn, of those in which the rules hear no warning.
func TestWarned(t *testing.T) {
	got := tallyWarned(t, lexicon.Default(), -1)
	t.Logf(warnedStage.told, got.of(2)...)
	if got[0] < 100 || got[1]*3 < got[0]*2 {
		t.Errorf(warnedStage.told+": want many, and two in three of them, on what the weights are fitted on", got.of(2)...)
	}
}
