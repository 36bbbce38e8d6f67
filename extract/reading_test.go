package extract

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// TestNumbersBegin: talk in which no word counts has no numbers, so that it need
// not be read for them. Tried with all words that numbers and units are made of.
func TestNumbersBegin(t *testing.T) {
	var words []string
	for _, name := range []string{"words.txt", "units.csv"} {
		data, err := os.ReadFile("../normalize/data/" + name)
		if err != nil {
			t.Fatal(err)
		}
		words = append(words, regexp.MustCompile(`[\pL'°]+`).FindAllString(string(data), -1)...)
	}
	joins := []string{" ", " ", " ", "-", ", ", "'", "/", ""}
	without := 0
	rapid.Check(t, func(t *rapid.T) {
		var text strings.Builder
		for range rapid.IntRange(1, 4).Draw(t, "words") {
			text.WriteString(rapid.SampledFrom(words).Draw(t, "word") + rapid.SampledFrom(joins).Draw(t, "join"))
		}
		s := text.String()
		if slices.ContainsFunc(lexicon.Words(s), normalize.Counts) || !isASCII(s) {
			return
		}
		without++
		if n := normalize.Numbers(s); len(n) > 0 {
			t.Fatalf("%q: no word counts, and it has the number %v", s, n[0])
		}
		if q := normalize.Quantities(s); len(q) > 0 {
			t.Fatalf("%q: no word counts, and it has the quantity %v", s, q[0])
		}
	})
	if without == 0 {
		t.Error("every text had a word that counts: nothing was tried")
	}
}
