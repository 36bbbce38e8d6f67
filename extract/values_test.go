package extract

import (
	"flag"
	"os"
	"slices"
	"testing"

	"wrenchword/extract/lexicon"
)

var fitValues = flag.Bool("fit-values", false, "fit the weights of which fastener a value is for on testdata/judged and write them to values.bin")

// valuesJudged gives the talk of which it was judged which fasteners its values are for:
// the lines "val" of NAME.judged hold the first token of each value and the names that its fastener may have, "-"
// where it is for none.
func valuesJudged(t *testing.T) []judgedTalk {
	return judgedTalks(t, "val", func(j *judgedTalk, tok int, names string) {
		j.want[tok] = [][]string{}
		if names != "-" {
			j.want[tok] = namesOf(names)
		}
	})
}

// calledFor tells whether a thing of that name and head may be what a value is for.
func calledFor(name, head string, want [][]string) bool {
	told := namedAs(name, want)
	return told == 1 || told == 0 && slices.ContainsFunc(want, func(n []string) bool { return n[len(n)-1] == head })
}

// judgeValues follows each judged talk and gives what was to be told of its values, and how
// many go to what they are for, to another thing, and to nothing, by the part of the talk.
func judgeValues(t *testing.T, lex *lexicon.Lexicon) (claims []judgedClaim, told [folds][3]int) {
	for k, j := range valuesJudged(t) {
		r := read(j.talk, lex)
		r.valueClaimed = func(q *quantity, _ *thing, all []claim, best claim) {
			want, ok := j.want[q.lo]
			if !ok {
				return
			}
			c := judgedClaim{fold: k % folds, right: make([]bool, len(all))}
			any := false
			for i, x := range all {
				c.clues = append(c.clues, x.clues)
				switch {
				case x.ahead >= 0:
					m := &r.mentions[x.ahead]
					c.right[i] = calledFor(thingName(m), m.head, want)
				case x.t != nil:
					c.right[i] = calledFor(x.t.name, x.t.head, want)
				}
				any = any || c.right[i]
			}
			if !any {
				c.right[len(all)-1] = true // nothing's
			}
			claims = append(claims, c)
		}
		r.refer()
		for i := range r.heard {
			h := &r.heard[i]
			want, ok := j.want[r.qtys[h.qty].lo]
			switch n := &told[k%folds]; {
			case !ok:
			case h.of == nil && len(want) > 0:
				n[2]++
			case h.of == nil || calledFor(h.of.name, h.of.head, want):
				n[0]++
			default:
				n[1]++
			}
		}
	}
	// what the rules take in the ways of saying a value is what the test of these wants
	for _, w := range ways(t, "values.txt") {
		r := read(talkOf(t, string(spokenAt(w[1]))), lex)
		r.valueClaimed = func(q *quantity, ruled *thing, all []claim, best claim) {
			c := judgedClaim{fold: ofWays, right: make([]bool, len(all))}
			any := false
			for i, x := range all {
				c.clues = append(c.clues, x.clues)
				c.right[i] = x.ahead < 0 && x.t == ruled || x.ahead >= 0 && ruled != nil && r.mentions[x.ahead].entry == ruled
				any = any || c.right[i]
			}
			if any {
				claims = append(claims, c)
			}
		}
		r.refer()
	}
	return claims, told
}

// TestWhoseValue judges which fasteners the values in the judged talk go to.
//
//	go test ./extract -run TestWhoseValue -fit-values -v
//
// fits the weights again: they are used on the talk, and fitted on what that gives. First it
// keeps each eighth of the talk from the fitting in turn and tells what the weights are worth
// on that; the weights written are fitted on all.
func TestWhoseValue(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	const say = "%d to what they are for, %d to another, %d to nothing"
	if *fitValues {
		defer func(w string) { valueWeights = w }(valueWeights)
		fit := func(fold int, base []judgedClaim) {
			some := withWays(base, fold, func(c judgedClaim) int { return c.fold })
			valueWeights = fitClaims(some, 12, 0.05, 0.01)
		}
		// what a value before went to tells of the next: each talk as it is read by weights that do not know it
		base, _ := judgeValues(t, lex)
		for range 2 {
			var next []judgedClaim
			var kept [3]int
			for fold := range folds {
				fit(fold, base)
				all, told := judgeValues(t, lex)
				for i, n := range told[fold] {
					kept[i] += n
				}
				for _, c := range all {
					if c.fold == fold || c.fold == ofWays && fold == 0 {
						next = append(next, c)
					}
				}
			}
			t.Logf("kept from the fitting: "+say, kept[0], kept[1], kept[2])
			base = next
		}
		fit(-1, base)
		if err := os.WriteFile("values.bin", []byte(valueWeights), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	_, told := judgeValues(t, lex)
	var n [3]int
	for _, x := range told {
		for i := range n {
			n[i] += x[i]
		}
	}
	t.Logf(say, n[0], n[1], n[2])
	if all := n[0] + n[1] + n[2]; n[0]*100 < all*66 {
		t.Errorf("of %d values %d go to what they are for: want 66 in 100", all, n[0])
	}
}
