package extract

import (
	"flag"
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

var fitBare = flag.Bool("fit-bare", false, "fit the weights of what a bare number is on testdata/judged and write them to bare.bin")

// bareJudged gives the talk of which it was judged what its bare numbers are: T how tight
// something is, S the size of what turns something, - anything else.
func bareJudged(t *testing.T) []judgedTalk {
	return judgedTalks(t, "num", func(j *judgedTalk, tok int, what string) {
		j.meant[tok] = map[string]meaning{"T": howTight, "S": turnedBy}[what]
	})
}

// bareWays gives the talk of the ways of saying a value or a size: a number that is wanted
// there is one, another is none.
func bareWays(t *testing.T) []judgedTalk {
	var out []judgedTalk
	for _, file := range []string{"values.txt", "gathered.txt"} {
		for _, w := range ways(t, file) {
			kind, of := howTight, w[0]
			if file == "gathered.txt" {
				kind = turnedBy
				k, _, _ := strings.Cut(of, ":")
				if k != "size" && k != "tool" && of != "none: size" {
					continue
				}
			}
			out = append(out, judgedTalk{name: "ways", talk: talkOf(t, string(spokenAt(w[1]))), wanted: wantedNumbers(of), kind: kind})
		}
	}
	return out
}

// barePieces gives the pieces of talk of which each value was judged, and talk that is no work at
// all: another number is none.
func barePieces(t *testing.T) []judgedTalk {
	var out []judgedTalk
	files, err := filepath.Glob(filepath.Join("..", "testdata", "notwork", "*.txt"))
	if err != nil || len(files) == 0 {
		t.Fatal("no talk in testdata/notwork")
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, judgedTalk{name: "piece", talk: talkOf(t, string(text)), wanted: map[string]bool{}, kind: howTight})
	}
	for _, p := range piecesOfTalk(t) {
		j := judgedTalk{name: "piece", talk: p.talk, wanted: map[string]bool{}, kind: howTight}
		for _, v := range p.Values {
			for _, f := range []float64{v.V, v.Hi} {
				j.wanted[new(big.Rat).SetFloat64(f).FloatString(1)] = true
			}
		}
		out = append(out, j)
	}
	return out
}

// otherWays gives the talk of the ways of saying anything else, each number in it as it is taken for
// now: the tests of these want no more of a number than that it stays what it is.
func otherWays(t *testing.T, lex *lexicon.Lexicon) []judgedTalk {
	var out []judgedTalk
	for _, file := range []string{"comes-off.txt", "followed.txt", "goes-on.txt", "left-open.txt", "steps.txt"} {
		for _, w := range ways(t, file) {
			j := judgedTalk{name: "ways", talk: talkOf(t, string(spokenAt(w[1]))), meant: map[int]meaning{}}
			readWith(j.talk, lex, func(r *reading) {
				r.weighed = func(f *bareNumber, _ []hint) meaning {
					j.meant[f.lo] = f.is
					return f.is
				}
			})
			out = append(out, j)
		}
	}
	return out
}

// wantedNumbers are the numbers of what is wanted of a way.
func wantedNumbers(want string) map[string]bool {
	of := map[string]bool{}
	for w := range strings.FieldsSeq(strings.NewReplacer(";", " ", ",", " ").Replace(want)) {
		if w = strings.TrimLeft(w, "TE"); w != "" && w[0] >= '0' && w[0] <= '9' {
			of[w] = true
		}
	}
	return of
}

// A judgedNumber is a bare number with its hints, what it is, and what it was taken for.
type judgedNumber struct {
	fold  int // the part of the talk that it is kept with, ofWays for one in a way of saying something
	hints []hint
	is    meaning
	taken meaning
}

// judgeBare follows each judged talk and gives its bare numbers. Where told, every other
// number before one is what it was judged to be, not what it was taken for.
func judgeBare(t *testing.T, lex *lexicon.Lexicon, told bool, more ...judgedTalk) []judgedNumber {
	var out []judgedNumber
	for k, j := range slices.Concat(bareJudged(t), barePieces(t), bareWays(t), more) {
		fold := k % folds
		if j.name == "ways" {
			fold = ofWays
		}
		readWith(j.talk, lex, func(r *reading) {
			r.weighed = func(f *bareNumber, row []hint) meaning {
				is, ok := j.meant[f.lo]
				if j.wanted != nil {
					if ok = true; j.wanted[f.Low.FloatString(1)] || j.wanted[f.Low.RatString()] || j.wanted[f.High.RatString()] {
						is = j.kind
					} else if j.name == "piece" && f.is == turnedBy {
						ok = false // only values were judged
					}
				}
				if !ok {
					return f.is
				}
				out = append(out, judgedNumber{fold, slices.Clone(row), is, f.is})
				if told && len(out)%2 == 0 {
					return is
				}
				return f.is
			}
		})
	}
	return out
}

// fitNumbers gives weights by which the right meanings are the heaviest: a logit.
func fitNumbers(all []judgedNumber) string {
	const epochs = 10
	l := newLearner(bareClues, 0.1, 0.005)
	random := rand.New(rand.NewPCG(7, 7))
	for range epochs {
		random.Shuffle(len(all), func(a, b int) { all[a], all[b] = all[b], all[a] })
		for _, c := range all {
			var p [meanings]float64
			sum := 0.0
			for of := range meanings {
				if of > 0 {
					for _, h := range c.hints {
						p[of] += l.weight[h.clue(of)]
					}
				}
				p[of] = math.Exp(p[of])
				sum += p[of]
			}
			for of := howTight; of < meanings; of++ {
				g := p[of] / sum
				if of == c.is {
					g--
				}
				for _, h := range c.hints {
					l.learn(h.clue(of), g)
				}
			}
		}
		l.endEpoch(epochs)
	}
	return l.packed(24)
}

// counts are how many numbers were taken for a meaning rightly and wrongly, and how many
// of that meaning were not.
type counts struct{ right, wrong, missed int }

func (c counts) String() string {
	return fmt.Sprintf("%d right, %d wrong, %d missed", c.right, c.wrong, c.missed)
}

// tallyBare adds the judged numbers of one part of the talk, of all of it for -1.
func tallyBare(all []judgedNumber, fold int, to [meanings]counts) [meanings]counts {
	for _, c := range all {
		switch {
		case c.fold == ofWays || fold >= 0 && c.fold != fold:
		case c.is == c.taken:
			to[c.is].right++
		default:
			to[c.taken].wrong++
			to[c.is].missed++
		}
	}
	return to
}

// TestBare judges what the bare numbers in the judged talk are.
//
//	go test ./extract -run TestBare -fit-bare -v
//
// fits the weights again. First it keeps each eighth of the talk from the fitting in turn and
// tells what the weights are worth on that; the weights written are fitted on all.
func TestBare(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	if *fitBare {
		defer func(w string) { bareWeights = w }(bareWeights)
		var kept [meanings]counts
		more := otherWays(t, lex)
		for fold := range folds {
			fitBareWithout(t, lex, fold, more)
			kept = tallyBare(judgeBare(t, lex, false), fold, kept)
		}
		t.Logf("kept from the fitting: how tight %v; sizes %v", kept[howTight], kept[turnedBy])
		fitBareWithout(t, lex, -1, more)
		if err := os.WriteFile("bare.bin", []byte(bareWeights), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got := tallyBare(judgeBare(t, lex, false), -1, [meanings]counts{})
	t.Logf("how tight %v; sizes %v", got[howTight], got[turnedBy])
	for of := howTight; of < meanings; of++ {
		if c := got[of]; c.wrong*36 > c.right || c.missed*36 > c.right {
			t.Errorf("meaning %d: %v: want at most one in 36 wrong or missed on what the weights are fitted on", of, c)
		}
	}
}

// fitBareWithout fits the weights on all talk but one part of it, all of it for -1: twice,
// since what a number is taken for tells of the next one.
func fitBareWithout(t *testing.T, lex *lexicon.Lexicon, fold int, more []judgedTalk) {
	for range 2 {
		all := judgeBare(t, lex, true, more...)
		bareWeights = fitNumbers(withWays(all, fold, func(c judgedNumber) int { return c.fold }))
	}
}
