package extract

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

// TestPiecesOfTalk puts pieces of real talk together that begin and end anywhere. Whatever comes of
// it, there is a record, and its quotes are in the talk. More is tried with -rapid.checks.
func TestPiecesOfTalk(t *testing.T) {
	var talks [][]string
	for _, dir := range []string{"talk", "judged"} {
		files, err := filepath.Glob(filepath.Join("testdata", dir, "*.txt"))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range files {
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			var words []string
			for _, line := range strings.Split(string(data), "\n") {
				if _, said, ok := strings.Cut(line, "] "); ok {
					line = said
				}
				words = append(words, strings.Fields(line)...)
			}
			if len(words) > 60 {
				talks = append(talks, words)
			}
		}
	}
	if len(talks) < 100 {
		t.Fatalf("only %d talks in testdata", len(talks))
	}
	lex := lexicon.Default()
	rapid.Check(t, func(t *rapid.T) {
		var said []string
		for range rapid.IntRange(1, 4).Draw(t, "pieces") {
			words := rapid.SampledFrom(talks).Draw(t, "talk")
			at := rapid.IntRange(0, len(words)-40).Draw(t, "at")
			said = append(said, words[at:at+rapid.IntRange(1, 40).Draw(t, "words")]...)
		}
		text := strings.Join(said, " ")
		if rapid.Bool().Draw(t, "without stops") {
			text = strings.ToLower(strings.NewReplacer(".", "", ",", "", "?", "", "!", "", ";", "", ":", "").Replace(text))
		}
		clip, err := transcript.Read("pieces.txt", []byte("[0:01] "+text), transcript.Options{})
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		talk := transcript.Join(clip)
		rec := Extract(talk, lex, Job{})
		if rec.Open == nil || rec.Ledger == nil || rec.Steps == nil || rec.Torques == nil || rec.Sizes == nil || rec.Tools == nil || rec.Parts == nil || rec.Consumables == nil || rec.Cautions == nil || rec.Facts == nil {
			t.Errorf("%q: a list of the record is null where it is to be empty", text)
		}
		rec.Each(func(field, _ string, p Place) {
			if !strings.Contains(talk.Text, p.Quote) {
				t.Errorf("%q: %s: quote %q is not in the talk", text, field, p.Quote)
			}
		})
	})
}

// TestOncePanicked has talk that ends where the reading once looked past its end, or where an act
// had lost a thing by the time it was worded.
func TestOncePanicked(t *testing.T) {
	for _, talk := range []string{
		"four nuts ten mil, bottom two",
		"right one has grease shields.",
		"nine newton metres nine cap metres. Nine.",
		"Elbow straight, mind you don't",
		"Washer, left hand nut, tighten it the",
	} {
		record(t, talk)
	}
}
