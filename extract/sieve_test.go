package extract

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

var fitSieve = flag.Bool("fit-sieve", false, "fit the weights of what does not belong in a list on testdata/judged and write them to sieve.bin")

// A judgedItem is an item of a list with its hints, and whether a careful reader struck it out.
type judgedItem struct {
	list   sifted
	fold   int
	hints  []hint
	struck bool
	taken  bool // whether the sieve struck it
}

// judgeItems follows each talk whose lists were judged: NAME.sift holds the token at which an
// item stands, what it is, and W where a careful reader struck it out.
func judgeItems(t *testing.T, lex *lexicon.Lexicon) []judgedItem {
	var out []judgedItem
	talks := judgedTalks(t, ".sift", func(j *judgedTalk, tok int, what string) {
		j.want[tok] = append(j.want[tok], strings.Fields(what))
	})
	for k, j := range talks {
		extract(j.talk, lex, &Record{}, func(r *reading) {
			r.siftTold = func(it *item, row []hint, struck bool) bool {
				for _, w := range j.want[it.at] {
					if w[0] == it.key() {
						out = append(out, judgedItem{it.list, k % folds, slices.Clone(row), w[1] == "W", struck})
						break
					}
				}
				return struck
			}
		})
	}
	return out
}

// fitItems gives the weights of a list by which what was struck out weighs most: a logit.
func fitItems(all []judgedItem, list sifted) string {
	const epochs = 12
	l := newLearner(sieveClues, 0.02, 0.01)
	random := rand.New(rand.NewPCG(7, 7))
	for range epochs {
		random.Shuffle(len(all), func(a, b int) { all[a], all[b] = all[b], all[a] })
		for _, c := range all {
			if c.list != list {
				continue
			}
			sum := 0.0
			for _, h := range c.hints {
				sum += l.weight[clueOf(h.sign, h.value)]
			}
			g := 1 / (1 + math.Exp(-sum))
			if c.struck {
				g--
			}
			for _, h := range c.hints {
				l.learn(clueOf(h.sign, h.value), g)
			}
		}
		l.endEpoch(epochs)
	}
	return l.packed(48)
}

// tallyItems tells of a list how many items the sieve struck, how many of those rightly, and
// how many it should have.
func tallyItems(all []judgedItem, list sifted, fold int) (struck, rightly, should, items int) {
	for _, c := range all {
		if c.list != list || fold >= 0 && c.fold != fold {
			continue
		}
		items++
		if c.struck {
			should++
		}
		if c.taken {
			struck++
			if c.struck {
				rightly++
			}
		}
	}
	return
}

// TestSieve judges what is left out of the lists of the judged talk.
//
//	go test ./extract -run TestSieve -fit-sieve -v
//
// fits the weights again. First it keeps each eighth of the talk from the fitting in turn and
// tells what the weights are worth on that; the weights written are fitted on all.
func TestSieve(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	tell := func(when string, sums [siftLists][4]int) {
		for list, name := range []string{siftLedger: "ledger", siftCautions: "cautions"} {
			s := sums[list]
			t.Log(when + fmt.Sprintf("%s: %d of %d struck, %d of these rightly, of %d that do not belong there", name, s[0], s[3], s[1], s[2]))
		}
	}
	if *fitSieve {
		defer func(w string) { sieveWeights = w }(sieveWeights)
		base := judgeItems(t, lex)
		fit := func(fold int) {
			some := slices.DeleteFunc(slices.Clone(base), func(c judgedItem) bool { return c.fold == fold })
			sieveWeights = ""
			for list := range siftLists {
				sieveWeights += fitItems(some, list)
			}
		}
		var sums [siftLists][4]int
		for fold := range folds {
			fit(fold)
			all := judgeItems(t, lex)
			for list := range siftLists {
				a, b, c, d := tallyItems(all, list, fold)
				sums[list] = [4]int{sums[list][0] + a, sums[list][1] + b, sums[list][2] + c, sums[list][3] + d}
			}
		}
		tell("kept from the fitting: ", sums)
		fit(-1)
		if err := os.WriteFile("sieve.bin", []byte(sieveWeights), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	all := judgeItems(t, lex)
	var sums [siftLists][4]int
	for list := range siftLists {
		a, b, c, d := tallyItems(all, list, -1)
		sums[list] = [4]int{a, b, c, d}
		if b*3 < a*2 {
			t.Errorf("list %d: of %d struck only %d do not belong there: want two in three", list, a, b)
		}
	}
	tell("", sums)
}
