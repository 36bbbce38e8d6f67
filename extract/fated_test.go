package extract

import (
	"slices"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

var fatedStage = stage{"fated.bin", &fatedWeights, fatedRows, fitFates, tallyFates,
	"of %d parts %d are as they were told, %d as weighed: %d better, %d worse"}

// A judgedFate is a part with what was told and is weighed to become of it, and what careful
// readers found: any of some, none where it is not told.
type judgedFate struct {
	judgedRow
	was, best int
	right     []int
}

// judgeFates follows each judged talk of a part, all for -1, and pairs its parts with those of
// the reader: first those that are alike, then those that only go by its name.
func judgeFates(t *testing.T, lex *lexicon.Lexicon, fold int) []judgedFate {
	var out []judgedFate
	for k, j := range judgedTalks(t, ".part", func(*judgedTalk, int, string) {}) {
		if fold >= 0 && k%folds != fold {
			continue
		}
		want := judgedList(t, j.name, ".part")
		from := len(out)
		var names []string
		extract(j.talk, lex, &Record{}, func(r *reading) {
			r.fatedTold = func(p *Part, row []hint, was, best int) int {
				names = append(names, p.Name)
				out = append(out, judgedFate{judgedRow{slices.Clone(row), 0}, was, best, nil})
				return best
			}
		})
		here := out[from:]
		fellows := paired(len(here), len(want), func(i, j int) bool {
			return slices.Contains(want[j].kinds, fateKinds[here[i].was]) && want[j].goesBy(names[i])
		})
		taken := map[int]bool{}
		for _, f := range fellows {
			taken[f] = true
		}
		byName := paired(len(here), len(want), func(i, j int) bool { return fellows[i] < 0 && !taken[j] && want[j].goesBy(names[i]) })
		for i := range here {
			s := &here[i]
			f := max(fellows[i], byName[i])
			if f < 0 {
				s.right = []int{0}
				continue
			}
			for _, kind := range want[f].kinds {
				s.right = append(s.right, slices.Index(fateKinds[:], kind))
			}
			if want[f].optional {
				s.right = append(s.right, 0)
			}
			if s.is = s.right[0]; fellows[i] >= 0 {
				s.is = s.was
			}
		}
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
	for _, s := range judgeFates(t, lex, fold) {
		out = append(out, s.judgedRow)
	}
	return out
}

func fitFates(rows []judgedRow) string {
	return fitRows(rows, len(fateKinds), fatedClues, 10, 0.03, 0.01, hint.fate).packed(fatedScale)
}

func tallyFates(t *testing.T, lex *lexicon.Lexicon, fold int) (to sums) {
	for _, s := range judgeFates(t, lex, fold) {
		was, is := slices.Contains(s.right, s.was), slices.Contains(s.right, s.best)
		to = to.plus(sums{1, bit(was), bit(is), bit(is && !was), bit(was && !is)})
	}
	return to
}

// TestFates judges what becomes of each part in the judged talk.
func TestFates(t *testing.T) {
	got := tallyFates(t, lexicon.Default(), -1)
	t.Logf(fatedStage.told, got.of(5)...)
	if got[3] < got[4]*4 {
		t.Errorf(fatedStage.told+": want four better for one worse on what the weights are fitted on", got.of(5)...)
	}
}
