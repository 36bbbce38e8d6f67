package extract

import (
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

var toldStage = stage{"told.bin", &toldWeights, toldRows, fitTold, tallyTold,
	"of %d acts with words for a step the rules tell %d, %d of these rightly, as weighed %d are told, %d of these rightly; %d ought to be"}

// A judgedTold is an act with words for a step: 1 where it is work done that was not told before.
type judgedTold struct {
	judgedRow
	ruled, tells bool
}

// judgeTold follows each judged talk of a part, all for -1: the lines "deed" of NAME.judged tell which acts are work
// done (y), told again (t) or another act than it seems (w).
func judgeTold(t *testing.T, lex *lexicon.Lexicon, fold int) []judgedTold {
	var out []judgedTold
	for k, j := range deedsJudged(t) {
		if fold >= 0 && k%folds != fold {
			continue
		}
		extract(j.talk, lex, &Record{}, func(r *reading) {
			r.toldTold = func(a *act, row []hint, ruled, tells bool) {
				for _, w := range j.want[a.lo] {
					if w[0] == strings.ReplaceAll(a.action.Name, " ", "_") {
						done := w[1] == "y" || w[1] == "w" && a.verb >= 0 && !a.subject // its step says it by the verb that was heard
						out = append(out, judgedTold{judgedRow{slices.Clone(row), bit(done)}, ruled, tells})
						break
					}
				}
			}
		})
	}
	return out
}

// toldRows gives the judged acts of a part of the talk. What the rules tell in the ways of
// saying a thing is what the tests of these want.
func toldRows(t *testing.T, lex *lexicon.Lexicon, fold int) (out []judgedRow) {
	if fold < ofWays {
		for _, d := range judgeTold(t, lex, fold) {
			out = append(out, d.judgedRow)
		}
		return out
	}
	eachWay(t, func(talk *transcript.Talk) {
		extract(talk, lex, &Record{}, func(r *reading) {
			r.toldTold = func(_ *act, row []hint, ruled, _ bool) {
				out = append(out, judgedRow{slices.Clone(row), bit(ruled)})
			}
		})
	})
	return out
}

func fitTold(rows []judgedRow) string {
	return fitRows(rows, 2, deedClues, 12, 0.03, 0.01, func(h hint, _ int) clue { return h.deed() }).packed(24)
}

// tallyTold counts the acts with words for a step, those that the rules make one of and those
// that are weighed to make one, each with how many of them do.
func tallyTold(t *testing.T, lex *lexicon.Lexicon, fold int) (to sums) {
	for _, c := range judgeTold(t, lex, fold) {
		to = to.plus(sums{1, bit(c.ruled), bit(c.ruled) * c.is, bit(c.tells), bit(c.tells) * c.is, c.is})
	}
	return to
}

// TestStepsTold judges which acts are told as steps.
func TestStepsTold(t *testing.T) {
	got := tallyTold(t, lexicon.Default(), -1)
	t.Logf(toldStage.told, got.of(6)...)
	if got[4]*10 < got[3]*8 || got[4]*10 < got[5]*9 {
		t.Errorf(toldStage.told+": want eight in ten of those told rightly so, and nine in ten told, on what the weights are fitted on", got.of(6)...)
	}
}

// TestToldAgain: what is told again at once is told once; later it is another act.
func TestToldAgain(t *testing.T) {
	wait := []string{"I had a cup of tea meanwhile.", "It rained all morning here.", "My knees are not what they were.", "The dog sends his regards.", "That's the radio you hear."}
	for _, c := range []struct {
		talk []string
		want int
	}{
		{[]string{"Cover off.", "So that's the cover off."}, 1},
		{append(append([]string{"Chain back on the sprocket."}, wait...), "Chain back on."), 2},
	} {
		n := 0
		for _, s := range record(t, c.talk...).Steps {
			if text := strings.ToLower(s.Text); strings.Contains(text, "chain") || strings.Contains(text, "cover") {
				n++
			}
		}
		if n != c.want {
			t.Errorf("%q: told %d times, want %d", c.talk, n, c.want)
		}
	}
}
