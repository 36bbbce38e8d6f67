package extract

import (
	"flag"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

var (
	fitStages = flag.Bool("fit-stages", false, "fit the weights of the stages that follow one another on testdata/judged and write them")
	fitOnly   = flag.String("fit-only", "", "with -fit-stages: the file of the only stage to fit; those before it stay as they are")
)

// folds is in how many parts the judged talk is, each kept from a fitting in turn; ofWays tells
// of what is in none of them, the ways of saying a thing.
const (
	folds     = 8
	ofWays    = folds
	waysCount = 3 // how often each way of saying a thing counts in a fitting: plain talk has to be read
)

// withWays gives what a fitting goes by: what is not of one part of the talk, -1 for none, and
// the ways of saying a thing as often as they count.
func withWays[T any](all []T, but int, foldOf func(T) int) (some []T) {
	for _, c := range all {
		switch fold := foldOf(c); fold {
		case but:
		case ofWays:
			some = append(some, slices.Repeat([]T{c}, waysCount)...)
		default:
			some = append(some, c)
		}
	}
	return some
}

// A learner holds the weights of clues while they are fitted by stochastic gradient descent,
// with a step of its own for each weight, and their mean over the epochs.
type learner struct {
	weight, square, mean []float64
	step, shrink         float64
}

func newLearner(weights int, step, shrink float64) *learner {
	return &learner{make([]float64, weights), make([]float64, weights), make([]float64, weights), step, shrink}
}

// learn moves the weight of a clue against its gradient.
func (l *learner) learn(k clue, g float64) {
	g += l.shrink * l.weight[k]
	l.square[k] += g * g
	l.weight[k] -= l.step * g / (1e-3 + math.Sqrt(l.square[k]))
}

// endEpoch ends one of so many epochs.
func (l *learner) endEpoch(epochs int) {
	for k, w := range l.weight {
		l.mean[k] += w / float64(epochs)
	}
}

// packed gives the means as signed bytes, so many to one.
func (l *learner) packed(scale float64) string {
	b := make([]byte, len(l.mean))
	for i, w := range l.mean {
		b[i] = byte(int8(max(-127, min(127, math.Round(w*scale)))))
	}
	return string(b)
}

// A judgedRow is something weighed: its hints, and which of some classes it was judged to be.
type judgedRow struct {
	hints []hint
	is    int
}

// fitRows gives weights by which the right classes are the heaviest: a logit. Class 0 has no
// weights; clue gives the place of the weight of a hint for any other.
func fitRows(all []judgedRow, classes, clues, epochs int, step, shrink float64, clue func(h hint, of int) clue) *learner {
	l := newLearner(clues, step, shrink)
	random := rand.New(rand.NewPCG(7, 7))
	p := make([]float64, classes)
	for range epochs {
		random.Shuffle(len(all), func(a, b int) { all[a], all[b] = all[b], all[a] })
		for i := range all {
			c := &all[i]
			sum := 0.0
			for of := range p {
				p[of] = 0
				if of > 0 {
					for _, h := range c.hints {
						p[of] += l.weight[clue(h, of)]
					}
				}
				p[of] = math.Exp(p[of])
				sum += p[of]
			}
			for of := 1; of < classes; of++ {
				g := p[of] / sum
				if of == c.is {
					g--
				}
				if math.Abs(g) < 0.002 {
					continue // it is as it should be
				}
				for _, h := range c.hints {
					l.learn(clue(h, of), g)
				}
			}
		}
		l.endEpoch(epochs)
	}
	return l
}

// A stage of the reading weighs what the stages before it give: so it is fitted on talk as that
// is read by weights that do not know it.
type stage struct {
	file    string
	weights *string
	rows    func(t *testing.T, lex *lexicon.Lexicon, fold int) []judgedRow // of one part of the talk, as it is read now
	fit     func(rows []judgedRow) string
	tally   func(t *testing.T, lex *lexicon.Lexicon, fold int) sums // what the weights make of one part, or of all for -1
	told    string                                                  // what the tally says
}

// sums are the counts of what a stage makes of the talk.
type sums [6]int

func (a sums) plus(b sums) sums {
	for i := range a {
		a[i] += b[i]
	}
	return a
}

// of gives the counts that a text has room for.
func (a sums) of(n int) []any {
	out := make([]any, n)
	for i := range out {
		out[i] = a[i]
	}
	return out
}

var fitted = []stage{deedStage, toldStage, fatedStage, standingStage, warnedStage, raisedStage, owedStage, sieveStage}

// TestFitStages fits the weights of the stages again, one after the other:
//
//	go test ./extract -run TestFitStages -fit-stages -v
//
// For each it tells what the weights are worth on the part of the talk that is kept from the
// fitting, each eighth in turn; the weights written are fitted on all.
func TestFitStages(t *testing.T) {
	if !*fitStages {
		t.Skip("fits only with -fit-stages")
	}
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	without := make([][folds]string, len(fitted)) // the weights of each stage that do not know a part
	all := make([]string, len(fitted))
	set := func(n, fold int) {
		for k := range n {
			if *fitted[k].weights = all[k]; fold < folds {
				*fitted[k].weights = without[k][fold]
			}
		}
	}
	for k, s := range fitted {
		if *fitOnly != "" && s.file != *fitOnly {
			all[k] = *s.weights
			for fold := range folds {
				without[k][fold] = all[k]
			}
			continue
		}
		defer func(w string) { *s.weights = w }(*s.weights)
		var rows [folds + 1][]judgedRow // the last are the ways of saying a thing
		for fold := range rows {
			set(k, fold)
			rows[fold] = s.rows(t, lex, fold)
		}
		fit := func(but int) string {
			var some []judgedRow
			for fold, r := range rows {
				if fold != but {
					some = append(some, r...)
				}
			}
			return s.fit(some)
		}
		for fold := range folds {
			without[k][fold] = fit(fold)
		}
		all[k] = fit(-1)
		var kept sums
		for fold := range folds {
			set(k+1, fold)
			kept = kept.plus(s.tally(t, lex, fold))
		}
		t.Logf(s.file+", kept from the fitting: "+s.told, kept.of(strings.Count(s.told, "%d"))...)
		if err := os.WriteFile(s.file, []byte(all[k]), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
