package extract

import (
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

var sieveStage = stage{"sieve.bin", &sieveWeights, sieveRows, fitSieve, tallyItems,
	"of %d warnings %d struck, %d of these rightly; of %d questions %d struck, %d of these rightly"}

// A judgedItem is an item of a list with its hints, 1 where a careful reader has none such.
type judgedItem struct {
	judgedRow
	list  sifted
	taken bool // whether the sieve struck it
}

// judgeItems follows each judged talk of a part, all for -1. Of the warnings the lines "sift" of NAME.judged hold the token at which one
// stands, and W where a careful reader struck it out; the questions are paired with those that
// a careful reader found to be open: first those of one kind.
func judgeItems(t *testing.T, lex *lexicon.Lexicon, fold int) []judgedItem {
	var out []judgedItem
	talks := judgedTalks(t, "sift", func(j *judgedTalk, tok int, what string) {
		j.want[tok] = append(j.want[tok], strings.Fields(what))
	})
	for k, j := range talks {
		if fold >= 0 && k%folds != fold {
			continue
		}
		extract(j.talk, lex, &Record{}, func(r *reading) {
			r.siftTold = func(it *item, row []hint, struck bool) bool {
				if w := j.want[it.at]; it.list == siftCautions && len(w) > 0 {
					out = append(out, judgedItem{judgedRow{slices.Clone(row), bit(w[0][0] == "W")}, it.list, struck})
				}
				return struck
			}
		})
	}
	for k, j := range judgedTalks(t, "open", func(*judgedTalk, int, string) {}) {
		if fold >= 0 && k%folds != fold {
			continue
		}
		from := len(out)
		var asked []item
		var r *reading
		extract(j.talk, lex, &Record{}, func(x *reading) {
			r = x
			r.siftTold = func(it *item, row []hint, struck bool) bool {
				if it.list == siftOpen {
					asked = append(asked, *it)
					out = append(out, judgedItem{judgedRow{slices.Clone(row), 1}, it.list, struck})
				}
				return struck
			}
		})
		want := judgedList(t, j.name, "open")
		about := func(i, w int) bool {
			return want[w].goesBy(asked[i].name+" "+asked[i].text) && slices.ContainsFunc(want[w].toks, func(tok int) bool { return r.near(asked[i].at, tok) })
		}
		of := func(kind string) string {
			if kind == LockMissing {
				return NotRefitted
			}
			return kind
		}
		same := paired(len(asked), len(want), func(i, w int) bool {
			return slices.ContainsFunc(want[w].kinds, func(kind string) bool { return of(kind) == of(asked[i].kind) }) && about(i, w)
		})
		taken := map[int]bool{}
		for _, w := range same {
			taken[w] = true
		}
		other := paired(len(asked), len(want), func(i, w int) bool { return same[i] < 0 && !taken[w] && about(i, w) })
		for i := range asked {
			if same[i] >= 0 || other[i] >= 0 {
				out[from+i].is = 0
			}
		}
	}
	return out
}

// near tells whether a token stands within 15 seconds of the sentence that begins at another.
func (r *reading) near(at, tok int) bool {
	ci := int(r.toks[tok].cl)
	last := ci
	for last+1 < len(r.clauses) && r.clauses[last+1].sentence == r.clauses[ci].sentence {
		last++
	}
	return r.at(at) > r.at(tok)-15 && r.at(at) < r.at(r.clauses[last].hi-1)+15
}

// sieveRows gives the judged items of a part of the talk. Those in the ways of saying a thing
// belong where they are.
func sieveRows(t *testing.T, lex *lexicon.Lexicon, fold int) (out []judgedRow) {
	if fold == ofWays {
		eachWay(t, func(talk *transcript.Talk) {
			extract(talk, lex, &Record{}, func(r *reading) {
				r.siftTold = func(_ *item, row []hint, _ bool) bool {
					out = append(out, judgedRow{slices.Clone(row), 0})
					return false
				}
			})
		})
		return out
	}
	for _, c := range judgeItems(t, lex, fold) {
		out = append(out, c.judgedRow)
	}
	return out
}

func fitSieve(rows []judgedRow) string {
	return fitRows(rows, 2, sieveClues, 12, 0.03, 0.01, func(h hint, _ int) clue { return h.sift() }).packed(sieveScale)
}

// tallyItems counts of the warnings, and then of the questions, how many there are, how many the
// sieve struck, and how many of these rightly.
func tallyItems(t *testing.T, lex *lexicon.Lexicon, fold int) (to sums) {
	for _, c := range judgeItems(t, lex, fold) {
		n := sums{1, bit(c.taken), bit(c.taken) * c.is}
		if c.list == siftOpen {
			n = sums{0, 0, 0, 1, bit(c.taken), bit(c.taken) * c.is}
		}
		to = to.plus(n)
	}
	return to
}

// TestSieve judges what is left out of the lists of the judged talk.
func TestSieve(t *testing.T) {
	got := tallyItems(t, lexicon.Default(), -1)
	t.Logf(sieveStage.told, got.of(6)...)
	if got[2]*3 < got[1]*2 || got[5]*3 < got[4]*2 {
		t.Errorf(sieveStage.told+": want two in three on what the weights are fitted on", got.of(6)...)
	}
}
