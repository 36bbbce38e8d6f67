package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

// TestVocabularyTopic holds the topic against the program: its example is one that
// can be laid over the built-in words, and it tells of every section there is.
func TestVocabularyTopic(t *testing.T) {
	_, example, ok := strings.Cut(topicVocabulary, "An example")
	if !ok {
		t.Fatal("the topic has no example")
	}
	_, example, _ = strings.Cut(example, "\n")
	path := filepath.Join(t.TempDir(), "mine.txt")
	if err := os.WriteFile(path, []byte(example), 0o600); err != nil {
		t.Fatal(err)
	}
	lex, err := lexicon.Load(path)
	if err != nil {
		t.Fatalf("the example is refused: %v", err)
	}
	for _, name := range []string{"rim jack", "rim stretcher", "truss rod", "bridle strap"} {
		if !knows(lex, name) {
			t.Errorf("%q of the example is not known", name)
		}
	}
	if err := os.WriteFile(path, []byte("[nowhere]\nx\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	_, err = lexicon.Load(path)
	if err == nil {
		t.Fatal("a section that there is none of was taken")
	}
	_, sections, ok := strings.Cut(err.Error(), "use one of ")
	if !ok {
		t.Fatalf("the error does not name the sections: %v", err)
	}
	for s := range strings.SplitSeq(sections, ", ") {
		if !strings.Contains(topicVocabulary, "["+s+"]") {
			t.Errorf("the topic does not tell of [%s]", s)
		}
	}
}

// knows tells whether a name is one of the vocabulary.
func knows(lex *lexicon.Lexicon, name string) bool {
	for _, t := range lex.Terms() {
		if t.Said == name {
			return true
		}
	}
	return false
}
