package extract

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

var standingStage = stage{"standing.bin", &standingWeights, standingRows, fitStanding, tallyStandings,
	"of %d entries %d are as their events tell, %d as weighed: %d better, %d worse"}

// judgeStandings follows each judged talk of a part, all for -1, and pairs the entries of its ledger with those of
// the reader: first those that were left alike, then those that only go by its name.
func judgeStandings(t *testing.T, lex *lexicon.Lexicon, fold int) []judgedClass {
	var out []judgedClass
	talks := judgedTalks(t, "led", func(*judgedTalk, int, string) {})
	for k, j := range talks {
		if fold >= 0 && k%folds != fold {
			continue
		}
		want := judgedList(t, j.name, "led")
		from := len(out)
		var names []string
		extract(j.talk, lex, &Record{}, func(r *reading) {
			r.standingTold = func(e *Entry, row []hint, was, best int) int {
				names = append(names, strings.Join([]string{e.Side, e.Item, e.Place_}, " "))
				out = append(out, judgedClass{judgedRow{slices.Clone(row), 0}, was, best, nil})
				return best
			}
		})
		settleClasses(out[from:], names, standings[:], want)
	}
	return out
}

// standingRows gives the judged entries of a part of the talk. How a thing was left in the ways
// of saying so is told by its events.
func standingRows(t *testing.T, lex *lexicon.Lexicon, fold int) (out []judgedRow) {
	if fold == ofWays {
		eachWay(t, func(talk *transcript.Talk) {
			extract(talk, lex, &Record{}, func(r *reading) {
				r.standingTold = func(_ *Entry, row []hint, was, _ int) int {
					out = append(out, judgedRow{slices.Clone(row), was})
					return was
				}
			})
		})
		return out
	}
	return rowsOf(judgeStandings(t, lex, fold))
}

func fitStanding(rows []judgedRow) string {
	return fitRows(rows, len(standings), standingClues, 10, 0.03, 0.01, hint.standing).packed(standingScale)
}

// tallyStandings counts the entries that are right as their events tell, those that are right
// as weighed, and of those that are weighed otherwise how many are better and worse for it.
func tallyStandings(t *testing.T, lex *lexicon.Lexicon, fold int) sums {
	return tallyClasses(judgeStandings(t, lex, fold))
}

// TestStanding judges how each thing in the judged talk was left.
func TestStanding(t *testing.T) {
	got := tallyStandings(t, lexicon.Default(), -1)
	t.Logf(standingStage.told, got.of(5)...)
	if got[3] < got[4]*4 {
		t.Errorf(standingStage.told+": want four better for one worse on what the weights are fitted on", got.of(5)...)
	}
}

// TestStandingTold: what is weighed otherwise says so, what is left out is told in a note, and
// all that speaks of an entry speaks of one that is there.
func TestStandingTold(t *testing.T) {
	for _, j := range judgedTalks(t, "led", func(*judgedTalk, int, string) {})[:40] {
		var gone, changed string
		n := 0
		rec := extract(j.talk, lexicon.Default(), &Record{}, func(r *reading) {
			r.standingTold = func(e *Entry, _ []hint, was, _ int) int {
				switch n++; {
				case n == 2:
					gone = e.Item
					return 0
				case n == 4 && e.State != Loosened:
					changed = e.Item
					return slices.Index(standings[:], Loosened)
				}
				return was
			}
		})
		ids := map[string]bool{"": true}
		inferred := false
		for i, e := range rec.Ledger {
			if ids[e.ID] = true; e.ID != fmt.Sprintf("L%d", i+1) {
				t.Errorf("%s: entry %d is called %s", j.name, i+1, e.ID)
			}
			inferred = inferred || e.Item == changed && e.State == Loosened && strings.Contains(e.Inferred, Loosened+" likelier")
		}
		for _, o := range rec.Open {
			if !ids[o.LedgerID] {
				t.Errorf("%s: a question is of %s, which is not there", j.name, o.LedgerID)
			}
		}
		for _, q := range rec.Torques {
			if !ids[q.LedgerID] {
				t.Errorf("%s: a torque is of %s, which is not there", j.name, q.LedgerID)
			}
		}
		for _, s := range rec.Steps {
			for _, id := range s.LedgerIDs {
				if !ids[id] {
					t.Errorf("%s: a step is of %s, which is not there", j.name, id)
				}
			}
		}
		told := slices.ContainsFunc(rec.Notes, func(n Note) bool { return n.Kind == "left-out" && strings.Contains(n.Text, "“"+gone+"”") })
		if gone != "" && !told || changed != "" && !inferred {
			t.Errorf("%s: %q left out, told %v; %q left otherwise, told %v", j.name, gone, told, changed, inferred)
		}
	}
}

// TestStandingHeard: whatever is likely, how tight a thing is was heard.
func TestStandingHeard(t *testing.T) {
	changed := 0
	for _, j := range judgedTalks(t, "led", func(*judgedTalk, int, string) {}) {
		for _, e := range Extract(j.talk, lexicon.Default(), Job{}).Ledger {
			if !strings.HasSuffix(e.Inferred, " likelier") {
				continue
			}
			changed++
			tight := e.State == HandTight || e.State == Tightened || e.State == Torqued
			if tight && !slices.ContainsFunc(e.Events, func(v Event) bool { return ledgerActs[v.Act] == e.State }) {
				t.Errorf("%s: %s is taken to be %s, which nobody said", j.name, e.Item, e.State)
			}
		}
	}
	if changed < 20 {
		t.Errorf("%d entries were weighed otherwise: want some", changed)
	}
}
