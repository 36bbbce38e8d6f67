package extract

import (
	"flag"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

var fitDeeds = flag.Bool("fit-deeds", false, "fit the weights of which acts are work done on testdata/judged and write them to deeds.bin")

// A judgedDeed is an act with its hints, and whether a careful reader found it to be work done.
type judgedDeed struct {
	fold  int
	hints []hint
	done  bool
	ruled bool // the rules take it to be
	sum   int
}

// judgeDeeds follows each talk whose acts were judged: NAME.deed holds the token at which an
// act begins, what is done, and y, t (told again) or w (another act) where it is work done.
func judgeDeeds(t *testing.T, lex *lexicon.Lexicon, told bool) []judgedDeed {
	var out []judgedDeed
	talks := judgedTalks(t, ".deed", func(j *judgedTalk, tok int, what string) {
		j.want[tok] = append(j.want[tok], strings.Fields(what))
	})
	for k, j := range talks {
		readWith(j.talk, lex, func(r *reading) {
			r.deedTold = func(a *act, row []hint, sum int) bool {
				for _, w := range j.want[a.lo] {
					if w[0] == strings.ReplaceAll(a.action.Name, " ", "_") {
						d := judgedDeed{k % folds, slices.Clone(row), w[1] == "y" || w[1] == "t" || w[1] == "w", a.happened(), sum}
						out = append(out, d)
						if told && len(out)%2 == 0 {
							return d.done
						}
						break
					}
				}
				return sum > 0
			}
		})
	}
	// what the rules take in the ways of saying a thing is what the tests of these want
	files, err := filepath.Glob(filepath.Join("..", "testdata", "ways", "*.txt"))
	if err != nil || len(files) == 0 {
		t.Fatal("no ways of saying a thing")
	}
	for _, file := range files {
		for _, w := range ways(t, filepath.Base(file)) {
			readWith(talkOf(t, string(spokenAt(w[1]))), lex, func(r *reading) {
				r.deedTold = func(a *act, row []hint, _ int) bool {
					out = append(out, judgedDeed{fold: ofWays, hints: slices.Clone(row), done: a.happened(), ruled: a.happened()})
					return a.happened()
				}
			})
		}
	}
	return out
}

// fitDoing gives the weights by which what is work done weighs most: a logit.
func fitDoing(all []judgedDeed) string {
	const epochs = 12
	l := newLearner(deedClues, 0.03, 0.01)
	random := rand.New(rand.NewPCG(7, 7))
	for range epochs {
		random.Shuffle(len(all), func(a, b int) { all[a], all[b] = all[b], all[a] })
		for _, c := range all {
			sum := 0.0
			for _, h := range c.hints {
				sum += l.weight[h.deed()]
			}
			g := 1 / (1 + math.Exp(-sum))
			if c.done {
				g--
			}
			for _, h := range c.hints {
				l.learn(h.deed(), g)
			}
		}
		l.endEpoch(epochs)
	}
	return l.packed(24)
}

// tallyDeeds counts the acts that the rules take for work done, how many of these are, how
// many are left by the weights, and how many of these are.
func tallyDeeds(all []judgedDeed, fold int, to [4]int) [4]int {
	for _, c := range all {
		if c.fold == ofWays || fold >= 0 && c.fold != fold || !c.ruled {
			continue
		}
		left := c.sum+ruledDone >= 0
		to[0]++
		to[1] += bit(c.done)
		to[2] += bit(left)
		to[3] += bit(left && c.done)
	}
	return to
}

// TestDeeds judges which acts are work done.
//
//	go test ./extract -run TestDeeds -fit-deeds -v
//
// fits the weights again. First it keeps each eighth of the talk from the fitting in turn and
// tells what the weights are worth on that; the weights written are fitted on all.
func TestDeeds(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	const told = "of %d acts that the rules take for work done %d are; of %d left, %d"
	if *fitDeeds {
		defer func(w string) { deedWeights = w }(deedWeights)
		base := judgeDeeds(t, lex, true)
		var kept [4]int
		for fold := range folds {
			deedWeights = fitDoing(slices.DeleteFunc(slices.Clone(base), func(c judgedDeed) bool { return c.fold == fold }))
			kept = tallyDeeds(judgeDeeds(t, lex, false), fold, kept)
		}
		t.Logf("kept from the fitting: "+told, kept[0], kept[1], kept[2], kept[3])
		deedWeights = fitDoing(base)
		if err := os.WriteFile("deeds.bin", []byte(deedWeights), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got := tallyDeeds(judgeDeeds(t, lex, false), -1, [4]int{})
	t.Logf(told, got[0], got[1], got[2], got[3])
	if none := got[0] - got[1]; (got[2]-got[3])*2 > none || got[3]*20 < got[1]*19 {
		t.Errorf(told+": want half of what is none gone, and no more than one in twenty of the others", got[0], got[1], got[2], got[3])
	}
}
