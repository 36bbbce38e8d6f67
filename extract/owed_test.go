package extract

import (
	"slices"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

var owedStage = stage{"owed.bin", &owedWeights, owedRows, fitOwed, tallyOwed,
	"of %d entries that may be open %d are, the rules ask after %d, %d of these rightly, as weighed %d are asked after, %d of these rightly"}

// A judgedOwed is an entry that may be open, 1 where a careful reader found it to be.
type judgedOwed struct {
	judgedRow
	ruled, asks, optional bool
}

// judgeOwed follows each judged talk of a part, all for -1. An entry is open where a reader's
// list has it, by its name and near one of the times at which it was spoken of.
func judgeOwed(t *testing.T, lex *lexicon.Lexicon, fold int) []judgedOwed {
	var out []judgedOwed
	for k, j := range judgedTalks(t, "open", func(*judgedTalk, int, string) {}) {
		if fold >= 0 && k%folds != fold {
			continue
		}
		want := judgedList(t, j.name, "open")
		extract(j.talk, lex, &Record{}, func(r *reading) {
			var asked []bool // of each of the list, whether the talk itself asks it
			r.owedTold = func(e *Entry, x *thing, said []Open, row []hint, ruled, asks bool) bool {
				if asked == nil {
					asked = make([]bool, len(want))
					for _, w := range paired(len(said), len(want), func(i, w int) bool {
						at := r.tokenOf(said[i].Place)
						return want[w].goesBy(said[i].About+" "+said[i].Question) && slices.ContainsFunc(want[w].toks, func(tok int) bool { return r.near(at, tok) })
					}) {
						if w >= 0 {
							asked[w] = true
						}
					}
				}
				c := judgedOwed{judgedRow: judgedRow{slices.Clone(row), 0}, ruled: ruled, asks: asks}
				for w := range want {
					if asked[w] || !want[w].goesBy(e.Side+" "+torqueName(x)) {
						continue
					}
					near := func(at int) bool {
						return slices.ContainsFunc(want[w].toks, func(tok int) bool { return r.near(at, tok) })
					}
					if slices.ContainsFunc(x.events, func(v event) bool { return near(v.lo) }) || slices.ContainsFunc(x.mentions, func(m int) bool { return near(r.mentions[m].lo) }) {
						c.is, c.optional = 1, want[w].optional
					}
				}
				out = append(out, c)
				return asks
			}
		})
	}
	return out
}

// owedRows gives the judged entries of a part of the talk. In the ways of saying a thing what
// is open is what the rules ask.
func owedRows(t *testing.T, lex *lexicon.Lexicon, fold int) (out []judgedRow) {
	if fold == ofWays {
		eachWay(t, func(talk *transcript.Talk) {
			extract(talk, lex, &Record{}, func(r *reading) {
				r.owedTold = func(_ *Entry, _ *thing, _ []Open, row []hint, ruled, _ bool) bool {
					out = append(out, judgedRow{slices.Clone(row), bit(ruled)})
					return ruled
				}
			})
		})
		return out
	}
	for _, c := range judgeOwed(t, lex, fold) {
		if !c.optional {
			out = append(out, c.judgedRow)
		}
	}
	return out
}

func fitOwed(rows []judgedRow) string {
	return fitRows(rows, 2, owedClues, 10, 0.03, 0.01, func(h hint, _ int) clue { return h.owed() }).packed(owedScale)
}

// tallyOwed counts the entries that may be open, those that are, those that the rules ask
// after, how many of these are, and the same as weighed.
func tallyOwed(t *testing.T, lex *lexicon.Lexicon, fold int) (to sums) {
	for _, c := range judgeOwed(t, lex, fold) {
		if c.optional {
			continue
		}
		to = to.plus(sums{1, c.is, bit(c.ruled), bit(c.ruled) * c.is, bit(c.asks), bit(c.asks) * c.is})
	}
	return to
}

// TestOwed judges what is asked of what the ledger shows to be off, slack or by hand.
func TestOwed(t *testing.T) {
	got := tallyOwed(t, lexicon.Default(), -1)
	t.Logf(owedStage.told, got.of(6)...)
	if got[5]*5 < got[3]*6 || got[5]*got[2] < got[3]*got[4] {
		t.Errorf(owedStage.told+": want a fifth more rightly, and no smaller share, on what the weights are fitted on", got.of(6)...)
	}
}

// TestOwedAlways: whatever is likely, what the rules ask of a lock and of what is slack or by
// hand is asked.
func TestOwedAlways(t *testing.T) {
	n := 0
	for _, j := range judgedTalks(t, "open", func(*judgedTalk, int, string) {}) {
		extract(j.talk, lexicon.Default(), &Record{}, func(r *reading) {
			r.owedTold = func(e *Entry, x *thing, _ []Open, _ []hint, ruled, asks bool) bool {
				if ruled && (isLock(x) || e.State == HandTight || e.State == Loosened) {
					if n++; !asks {
						t.Errorf("%s: %s, left %s, is not asked after", j.name, e.Item, e.State)
					}
				}
				return asks
			}
		})
	}
	if n < 50 {
		t.Errorf("%d such entries: want some", n)
	}
}
