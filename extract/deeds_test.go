package extract

import (
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

var deedStage = stage{"deeds.bin", &deedWeights, deedRows, fitDoing, tallyDeeds,
	"of %d acts that the rules take for work done %d are; of %d left, %d"}

// A judgedDeed is an act with its hints, 1 where a careful reader found it to be work done.
type judgedDeed struct {
	judgedRow
	ruled bool // the rules take it to be
	sum   int
}

// deedsJudged gives the talk of which the acts were judged.
func deedsJudged(t *testing.T) []judgedTalk {
	return judgedTalks(t, "deed", func(j *judgedTalk, tok int, what string) {
		j.want[tok] = append(j.want[tok], strings.Fields(what))
	})
}

// judgeDeeds follows each talk of a part, all for -1, whose acts were judged: the lines "deed" of NAME.judged hold
// the token at which an act begins, what is done, and y, t (told again) or w (another act)
// where it is work done. Where told, every other act before one is what it was judged to be.
func judgeDeeds(t *testing.T, lex *lexicon.Lexicon, fold int, told bool) []judgedDeed {
	var out []judgedDeed
	for k, j := range deedsJudged(t) {
		if fold >= 0 && k%folds != fold {
			continue
		}
		readWith(j.talk, lex, func(r *reading) {
			r.deedTold = func(a *act, row []hint, sum int) bool {
				for _, w := range j.want[a.lo] {
					if w[0] == strings.ReplaceAll(a.action.Name, " ", "_") {
						done := strings.Contains("ytw", w[1])
						out = append(out, judgedDeed{judgedRow{slices.Clone(row), bit(done)}, a.happened(), sum})
						if told && len(out)%2 == 0 {
							return done
						}
						break
					}
				}
				return sum > 0
			}
		})
	}
	return out
}

// deedRows gives the judged acts of a part of the talk. What the rules take in the ways of
// saying a thing is what the tests of these want.
func deedRows(t *testing.T, lex *lexicon.Lexicon, fold int) []judgedRow {
	var out []judgedRow
	if fold < ofWays {
		for _, d := range judgeDeeds(t, lex, fold, true) {
			out = append(out, d.judgedRow)
		}
		return out
	}
	eachWay(t, func(talk *transcript.Talk) {
		readWith(talk, lex, func(r *reading) {
			r.deedTold = func(a *act, row []hint, _ int) bool {
				out = append(out, judgedRow{slices.Clone(row), bit(a.happened())})
				return a.happened()
			}
		})
	})
	return out
}

func fitDoing(rows []judgedRow) string {
	return fitRows(rows, 2, deedClues, 12, 0.03, 0.01, func(h hint, _ int) clue { return h.deed() }).packed(24)
}

// tallyDeeds counts the acts that the rules take for work done, how many of these are, how
// many are left by the weights, and how many of these are.
func tallyDeeds(t *testing.T, lex *lexicon.Lexicon, fold int) (to sums) {
	for _, c := range judgeDeeds(t, lex, fold, false) {
		if !c.ruled {
			continue
		}
		left := c.sum+ruledDone >= 0
		to = to.plus(sums{1, c.is, bit(left), bit(left) * c.is})
	}
	return to
}

// TestDeeds judges which acts are work done.
func TestDeeds(t *testing.T) {
	got := tallyDeeds(t, lexicon.Default(), -1)
	t.Logf(deedStage.told, got.of(4)...)
	if none := got[0] - got[1]; (got[2]-got[3])*2 > none || got[3]*20 < got[1]*19 {
		t.Errorf(deedStage.told+": want half of what is none gone, and no more than one in twenty of the others", got.of(4)...)
	}
}
