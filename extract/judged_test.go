package extract

import (
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

// A judgedEntry is what a careful reader found to be handled in a talk, or left open at its
// end: the first tokens of the sentences that tell it, how it was left or of which kind it is,
// the first being the best, and the names that it may have.
type judgedEntry struct {
	toks     []int
	kinds    []string
	names    []string
	optional bool // a careful reader may leave it out
}

// judgedList reads a list that a careful reader made of a talk: NAME.led, what was handled and
// how it was left, or NAME.open, what is open at the end, with the gate it stands before.
func judgedList(t *testing.T, name, ending string) []judgedEntry {
	b, err := os.ReadFile(filepath.Join("testdata", "judged", name+ending))
	if err != nil {
		t.Fatal(err)
	}
	var out []judgedEntry
	for l := range strings.Lines(string(b)) {
		at, rest, _ := strings.Cut(strings.TrimSpace(l), " ")
		kinds, rest, _ := strings.Cut(rest, " ")
		if kinds == "settled" || kinds == "none" || kinds == "" {
			continue // it only sounds open
		}
		if ending == ".open" {
			_, rest, _ = strings.Cut(rest, " ")
		}
		e := judgedEntry{kinds: strings.Split(kinds, "/")}
		for x := range strings.SplitSeq(at, ",") {
			tok, err := strconv.Atoi(x)
			if err != nil {
				t.Fatalf("%s%s: %q begins with no token", name, ending, l)
			}
			e.toks = append(e.toks, tok)
		}
		rest, e.optional = strings.CutPrefix(rest, "?")
		for n := range strings.SplitSeq(rest, "|") {
			if f := nameWords(n); len(f) > 0 {
				e.names = append(e.names, strings.Join(f, " "), f[len(f)-1])
			}
		}
		out = append(out, e)
	}
	return out
}

// nameWords gives the words of a name in the singular.
func nameWords(name string) []string {
	f := strings.FieldsFunc(strings.ToLower(name), func(c rune) bool {
		return !(c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c == '.')
	})
	for i, w := range f {
		f[i] = lexicon.Singular(w)
	}
	return f
}

// goesBy tells whether a text has all the words of one of the names.
func (e *judgedEntry) goesBy(text string) bool {
	have := nameWords(text)
	return slices.ContainsFunc(e.names, func(n string) bool {
		for w := range strings.FieldsSeq(n) {
			if !slices.Contains(have, w) {
				return false
			}
		}
		return true
	})
}

// paired pairs as many as can be of two lists, one to one: for each of the first, the place of
// its fellow in the second, -1 where it has none.
func paired(of, with int, fits func(i, j int) bool) []int {
	fellow, owner := make([]int, of), make([]int, with)
	for j := range owner {
		owner[j] = -1
	}
	var seek func(i int, seen []bool) bool
	seek = func(i int, seen []bool) bool {
		for j := range with {
			if seen[j] || !fits(i, j) {
				continue
			}
			seen[j] = true
			if owner[j] < 0 || seek(owner[j], seen) {
				owner[j] = i
				return true
			}
		}
		return false
	}
	for i := range of {
		seek(i, make([]bool, with))
		fellow[i] = -1
	}
	for j, i := range owner {
		if i >= 0 {
			fellow[i] = j
		}
	}
	return fellow
}
