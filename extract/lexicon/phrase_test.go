package lexicon

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// made is what phrases are made of, and which words are loose.
type made struct {
	grammar
	loose []bool
}

// The plain way of matching, which tries every way on: what Signals must agree
// with. It calls found with every end of a phrase that begins at word i.
func (g *made) tries(p phrase, i int, words []ID, found func(end int)) {
	if len(p) == 0 {
		found(i)
		return
	}
	at := func(i int) ID {
		if i < len(words) {
			return words[i]
		}
		return 0
	}
	e, rest := p[0], p[1:]
	next := func(end int) { g.tries(rest, end, words, found) }
	if e.optional {
		next(i)
	}
	if e.gap > 0 {
		for k := 0; k <= int(e.gap); k++ {
			next(i + k)
			if at(i+k) == 0 && i+k >= len(words) {
				return
			}
		}
		return
	}
	for k := 0; k <= 2; k++ {
		if e.set > 0 {
			for _, q := range g.sets[e.set].phrases {
				g.tries(q, i+k, words, next)
			}
		} else if at(i+k) == e.word {
			next(i + k + 1)
		}
		if i+k == 0 || !g.loose[at(i+k)] {
			break
		}
	}
}

// wordsOf says a phrase in one of the ways it may be said.
func (g *made) wordsOf(t *rapid.T, p phrase) (out []ID) {
	for _, e := range p {
		switch {
		case e.optional && rapid.Bool().Draw(t, "left out"):
		case e.gap > 0:
			for range rapid.IntRange(0, 3).Draw(t, "gap") {
				out = append(out, ID(rapid.IntRange(0, len(g.loose)-1).Draw(t, "word")))
			}
		case e.set > 0:
			out = append(out, g.wordsOf(t, rapid.SampledFrom(g.sets[e.set].phrases).Draw(t, "way"))...)
		default:
			out = append(out, e.word)
		}
	}
	return out
}

// TestSignals: signals are found just where the plain way of matching finds
// them, in what people say, with small words thrown in, and in any words.
func TestSignals(t *testing.T) {
	c, err := compile(nil)
	if err != nil {
		t.Fatal(err)
	}
	l, g := Default(), &made{c.grammar, c.said.loose}
	var small []ID
	for w := range strings.FieldsSeq(loose) {
		small = append(small, l.ID(w))
	}
	slices.Sort(small)
	rapid.Check(t, func(t *rapid.T) {
		var words []ID
		for range rapid.IntRange(1, 3).Draw(t, "phrases") {
			s := rapid.SampledFrom(g.signals).Draw(t, "signal")
			for _, w := range g.wordsOf(t, s.phrase) {
				words = append(words, w)
				if rapid.IntRange(0, 5).Draw(t, "small") == 0 {
					words = append(words, rapid.SampledFrom(small).Draw(t, "word"))
				}
			}
		}
		words = words[:min(len(words), 25)] // the plain way tries every way on
		for i := range words {
			var want []Signal
			for _, s := range g.signals {
				best := 0
				g.tries(s.phrase, 0, words[i:], func(end int) { best = max(best, end) })
				if best == 0 {
					continue
				}
				if k := slices.IndexFunc(want, func(w Signal) bool { return w.Name == g.names[s.name] }); k >= 0 {
					want[k].Len = max(want[k].Len, best)
				} else {
					want = append(want, Signal{g.names[s.name], best})
				}
			}
			if got := l.Signals(words[i:]); !slices.Equal(got, want) {
				t.Fatalf("words %v: got %v, want %v", words[i:], got, want)
			}
		}
	})
}

// TestSaid: what is said is found as a person would expect it.
func TestSaid(t *testing.T) {
	l := Default()
	for said, want := range map[string]string{
		"I'll just look it up later":      "find",
		"i reckon":                        "doubt",
		"we will put a link in the notes": "promise",
		"for now":                         "stand-in",
		"the axle nut is tight":           "",
	} {
		var words []ID
		for _, w := range Words(said) {
			words = append(words, l.ID(w))
		}
		got := ""
		for _, s := range l.Signals(words) {
			got += s.Name + " "
		}
		if strings.TrimSpace(got) != want && !(want != "" && strings.Contains(got, want)) {
			t.Errorf("%q says %q, want %q", said, got, want)
		}
	}
}
