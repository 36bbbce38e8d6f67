package extract

import (
	"flag"
	"os"
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

var fitFateOf = flag.Bool("fit-fate-of", false, "fit the weights of which thing a fate is told of on testdata/judged and write them to fateof.bin")

// A judgedFate is a fate told of something, with what it may be told of and what the rules take.
type judgedFate struct {
	judgedClaim
	was int
}

// judgeFateOf follows each judged talk of a part, all for -1, and gives what is told in it of
// parts that are not named there. Right is what a careful reader lists with that fate, told
// there where one is.
func judgeFateOf(t *testing.T, lex *lexicon.Lexicon, fold int) []judgedFate {
	var out []judgedFate
	for k, j := range judgedTalks(t, "part", func(*judgedTalk, int, string) {}) {
		if fold >= 0 && k%folds != fold {
			continue
		}
		want := judgedList(t, j.name, "part")
		extract(j.talk, lex, &Record{}, func(r *reading) {
			r.fateMeant = func(q *fateTold, all []fateClaim, was, best int) {
				c := judgedFate{judgedClaim{fold: k % folds, right: make([]bool, len(all)), taken: best}, was}
				level := make([]int, len(all))
				most := 0
				for i, x := range all {
					c.clues = append(c.clues, x.clues)
					of := x.t
					if of == nil && x.m != nil {
						of = &thing{name: x.m.name, head: x.m.head}
					}
					for k := range want {
						e := &want[k]
						if of == nil || !e.hasFate(q.disposition) {
							continue
						}
						if n := e.likeness(of); n > 0 {
							level[i] = max(level[i], n)
							for _, tok := range e.toks {
								if q.lo-tok < 45 && tok-q.hi < 25 {
									level[i] = max(level[i], 4+n)
								}
							}
						}
					}
					most = max(most, level[i])
				}
				for i := range all {
					c.right[i] = most > 0 && level[i] == most
				}
				c.told = level
				if c.none = most == 0; c.none {
					c.right[len(all)-1] = true
				}
				out = append(out, c)
			}
		})
	}
	return out
}

// fateOfWays gives what is told so in the ways of saying things: of what the rules take.
func fateOfWays(t *testing.T) (out []judgedFate) {
	eachWay(t, func(talk *transcript.Talk) {
		extract(talk, lexicon.Default(), &Record{}, func(r *reading) {
			r.fateMeant = func(q *fateTold, all []fateClaim, was, _ int) {
				c := judgedFate{judgedClaim{fold: ofWays, right: make([]bool, len(all))}, was}
				for _, x := range all {
					c.clues = append(c.clues, x.clues)
				}
				c.right[was], c.taken = true, was
				out = append(out, c)
			}
		})
	})
	return out
}

// hasFate tells whether a reader lists it with what becomes of it.
func (e *judgedEntry) hasFate(disposition string) bool {
	return slices.ContainsFunc(e.kinds, func(k string) bool { return fateClass(k) == fateClass(disposition) })
}

// likeness tells how well a thing goes by the names of what a reader lists.
func (e *judgedEntry) likeness(of *thing) int {
	var names [][]string
	for i := 0; i < len(e.names); i += 2 {
		names = append(names, strings.Fields(e.names[i]))
	}
	return likeness(of, names)
}

// tallyFateOf counts what is told of what is meant, of another thing, of nothing though
// something is meant, and rightly of nothing.
func tallyFateOf(all []judgedFate, of func(*judgedFate) int) (n sums) {
	for i := range all {
		c := &all[i]
		n[c.cameTo(of(c))]++
	}
	return n
}

// TestFateOf judges what is meant where a fate is told of what is not named.
//
//	go test ./extract -run TestFateOf -fit-fate-of -v
//
// fits the weights again. First it keeps each eighth of the talk from the fitting in turn and
// tells what the weights are worth on that; the weights written are fitted on all.
func TestFateOf(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	const told = "%d of what is meant, %d of another thing, %d of nothing, %d rightly of nothing"
	if *fitFateOf {
		defer func(w string) { fateOfWeights = w }(fateOfWeights)
		base := append(judgeFateOf(t, lex, -1), fateOfWays(t)...)
		fit := func(fold int) {
			var some []judgedClaim
			for _, c := range withWays(base, fold, func(c judgedFate) int { return c.fold }) {
				some = append(some, c.judgedClaim)
			}
			fateOfWeights = fitClaims(some, 12, 0.05, 0.003)
		}
		var kept sums
		for fold := range folds {
			fit(fold)
			kept = kept.plus(tallyFateOf(judgeFateOf(t, lex, fold), func(c *judgedFate) int { return c.taken }))
		}
		t.Logf("kept from the fitting: "+told, kept.of(4)...)
		fit(-1)
		if err := os.WriteFile("fateof.bin", []byte(fateOfWeights), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	all := judgeFateOf(t, lex, -1)
	ruled := tallyFateOf(all, func(c *judgedFate) int { return c.was })
	t.Logf("by rule: "+told, ruled.of(4)...)
	got := tallyFateOf(all, func(c *judgedFate) int { return c.taken })
	t.Logf(told, got.of(4)...)
	if got[0]*2 < got[1]*9 || got[1] > ruled[1] {
		t.Errorf(told+": want nine of what is meant for two of another, on what the weights are fitted on", got.of(4)...)
	}
}

// TestFateOfWhatIsMeant: a new one, and what is scrap, is what is spoken of, be it not what was
// named or taken off last; and what a sheet that came with it says makes nothing new.
func TestFateOfWhatIsMeant(t *testing.T) {
	for _, c := range []struct{ talk, is, not string }{
		{"Lift the lid. Pull the plug lead. Unscrew the plug with the long socket. Black as your hat. I've a new one here, gapped already. In by hand first.", "plug new", "plug lead new"},
		{"Lid off, two screws. Impeller off the shaft. One vane's cracked but it'll pump. Back on with it. The new one comes on Friday. Lid on, two screws.", "", "impeller new"},
		{"Lid off, two screws. Impeller off the shaft. One vane's cracked. The new one's on its way. Lid on, two screws.", "", "impeller new"},
		{"Take the guard off, four bolts. The belt's off the pulleys. That same sheet from the supplier says 30 newton metres for the guard bolts.", "", "bolt new"},
	} {
		got := map[string]bool{}
		for _, p := range Extract(talkOf(t, string(spokenAt(c.talk))), lexicon.Default(), Job{}).Parts {
			got[p.Name+" "+p.Disposition] = true
		}
		if c.is != "" && !got[c.is] || got[c.not] {
			t.Errorf("%q: %v, want %q and not %q", c.talk, got, c.is, c.not)
		}
	}
}
