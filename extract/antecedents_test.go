package extract

import (
	"flag"
	"os"
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

var fitAntecedents = flag.Bool("fit-antecedents", false, "fit the weights of which thing is meant where none is named on testdata/judged and write them to antecedents.bin")

// antecedentsJudged gives the talk of which it was judged what is meant where something is
// done to a thing that is not named: the names it may have, by the first token of the act.
func antecedentsJudged(t *testing.T) []judgedTalk {
	return judgedTalks(t, "ant", func(j *judgedTalk, tok int, names string) {
		j.want[tok] = [][]string{}
		if names != "-" {
			j.want[tok] = namesOf(names)
		}
	})
}

// judgeAntecedents follows each judged talk and gives what was to be told in it.
func judgeAntecedents(t *testing.T, lex *lexicon.Lexicon) []judgedClaim {
	var out []judgedClaim
	for k, j := range antecedentsJudged(t) {
		r := read(j.talk, lex)
		seen := map[int]bool{}
		r.antecedents = func(a *act, _ *thing, all []claim, best claim) {
			want, ok := j.want[a.lo]
			if !ok || seen[a.lo] || !a.happened() {
				return
			}
			seen[a.lo] = true
			c := judgedClaim{fold: k % folds, right: make([]bool, len(all)), told: make([]int, len(all)), none: len(want) == 0}
			most := 0
			for i, x := range all {
				c.clues = append(c.clues, x.clues)
				if x.t == best.t {
					c.taken = i
				}
				if x.t != nil {
					c.told[i] = likeness(x.t, want)
					most = max(most, c.told[i])
				}
			}
			for i := range all {
				c.right[i] = most > 0 && c.told[i] == most
			}
			if most == 0 {
				c.right[len(all)-1] = true // nothing's
			}
			out = append(out, c)
		}
		r.refer()
	}
	// what the rules take in the ways of saying a thing is what the tests of these want
	for _, file := range []string{"comes-off.txt", "followed.txt", "goes-on.txt", "left-open.txt", "steps.txt"} {
		for _, w := range ways(t, file) {
			r := read(talkOf(t, string(spokenAt(w[1]))), lex)
			r.antecedents = func(a *act, ruled *thing, all []claim, best claim) {
				c := judgedClaim{fold: ofWays, right: make([]bool, len(all)), told: make([]int, len(all))}
				for i, x := range all {
					c.clues = append(c.clues, x.clues)
					c.right[i] = x.t == ruled
				}
				out = append(out, c)
			}
			r.refer()
		}
	}
	return out
}

// likeness tells how well a thing goes by one of the names that it may have: 0 not at all, 3
// where its name has the same last word and another one.
func likeness(t *thing, want [][]string) int {
	words := strings.Fields(strings.ToLower(strings.ReplaceAll(t.name, "-", " ")))
	if t.fastener && t.owner != nil {
		words = append(strings.Fields(strings.ToLower(t.owner.name)), words...)
	}
	if len(words) == 0 {
		words = []string{t.head}
	}
	for i, w := range words {
		words[i] = lexicon.Singular(w)
	}
	last := words[len(words)-1]
	words = words[:len(words)-1]
	best := 0
	for _, name := range want {
		name = strings.Fields(strings.ReplaceAll(strings.Join(name, " "), "-", " "))
		head := name[len(name)-1]
		if head != last && !(alike.has(head) && alike.has(last)) {
			continue
		}
		same := slices.ContainsFunc(name[:len(name)-1], func(w string) bool { return slices.Contains(words, w) })
		switch {
		case same:
			best = 3
		case len(words) == 0 || len(name) == 1:
			best = max(best, 2)
		}
	}
	return best
}

// tallyAntecedents counts the acts that are given what is meant, another thing, nothing where
// something is meant, and nothing rightly.
func tallyAntecedents(all []judgedClaim, fold int, to [4]int) [4]int {
	for _, c := range all {
		if c.fold == ofWays || fold >= 0 && c.fold != fold {
			continue
		}
		to[c.cameTo(c.taken)]++
	}
	return to
}

// cameTo gives the place in such a count of a choice: what is meant, another thing, nothing where
// something is meant, nothing rightly.
func (c *judgedClaim) cameTo(choice int) int {
	switch nothing := choice == len(c.right)-1; {
	case nothing && c.none:
		return 3
	case nothing:
		return 2
	case c.told[choice] > 0:
		return 0
	}
	return 1
}

// TestAntecedents judges what is meant where something is done to a thing that is not named.
//
//	go test ./extract -run TestAntecedents -fit-antecedents -v
//
// fits the weights again: they are used on the talk, and fitted on what that gives. First it
// keeps each eighth of the talk from the fitting in turn and tells what the weights are worth
// on that; the weights written are fitted on all.
func TestAntecedents(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	const told = "%d to what is meant, %d to another thing, %d to nothing, %d rightly to nothing"
	if *fitAntecedents {
		defer func(w string) { antecedentWeights = w }(antecedentWeights)
		fit := func(fold int, base []judgedClaim) {
			some := withWays(base, fold, func(c judgedClaim) int { return c.fold })
			antecedentWeights = fitClaims(some, 12, 0.05, 0.01)
		}
		// what was done before tells what is meant: each talk as it is read by weights that do not know it
		base := judgeAntecedents(t, lex)
		for range 2 {
			var next []judgedClaim
			var kept [4]int
			for fold := range folds {
				fit(fold, base)
				all := judgeAntecedents(t, lex)
				kept = tallyAntecedents(all, fold, kept)
				for _, c := range all {
					if c.fold == fold || c.fold == ofWays && fold == 0 {
						next = append(next, c)
					}
				}
			}
			t.Logf("kept from the fitting: "+told, kept[0], kept[1], kept[2], kept[3])
			base = next
		}
		fit(-1, base)
		if err := os.WriteFile("antecedents.bin", []byte(antecedentWeights), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got := tallyAntecedents(judgeAntecedents(t, lex), -1, [4]int{})
	t.Logf(told, got[0], got[1], got[2], got[3])
	if got[0] < got[1]*2 {
		t.Errorf("%d acts are given what is meant and %d another thing: want two in three", got[0], got[1])
	}
}

// TestPerhaps: a step whose thing is only guessed says so, and guesses what was spoken of.
func TestPerhaps(t *testing.T) {
	lex, guessed := lexicon.Default(), 0
	for _, j := range antecedentsJudged(t) {
		said := strings.ToLower(strings.ReplaceAll(j.talk.Text, "-", " "))
		for _, m := range read(j.talk, lex).mentions {
			if m.misheard {
				said += " " + m.name
			}
		}
		for _, s := range Extract(j.talk, lex, Job{}).Steps {
			_, name, ok := strings.Cut(strings.TrimSuffix(s.Text, doubted+"."), " (the ")
			if !ok || !strings.HasSuffix(s.Text, doubted+".") {
				continue
			}
			guessed++
			for w := range strings.FieldsSeq(strings.ReplaceAll(name, "-", " ")) {
				if w = lexicon.Singular(strings.ToLower(w)); w != "fastener" && !strings.Contains(said, w[:min(len(w), 4)]) {
					t.Errorf("%s: %q: nobody spoke of a %s", j.name, s.Text, w)
				}
			}
		}
	}
	if guessed < 20 {
		t.Errorf("%d steps guess: want some", guessed)
	}
}
