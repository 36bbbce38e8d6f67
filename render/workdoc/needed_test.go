package workdoc

import (
	"testing"

	"wrenchword/extract"
)

func TestSizeLines(t *testing.T) {
	size := func(of, dim, canon string, sure bool) extract.Size {
		return extract.Size{Of: of, Dimension: dim, Candidates: []string{canon}, Sure: sure}
	}
	rec := &extract.Record{Sizes: []extract.Size{
		size("mast clamp screw", "across-flats", "6 mm", false),
		size("keel bolt", "across-flats", "24 mm", true),
		size("mast clamp screw", "key", "6 mm", true),
		size("keel bolt", "thread", "M16", true),
		size("keel bolt", "across-flats", "22 mm", true),
		size("", "unsaid", "6 mm", true),
		size("", "unsaid", "6 mm", true),
	}}
	got := SizeLines(rec, Refs{Sizes: []string{"a", "b", "c", "d", "e", "f", "g"}})
	want := []string{"a key", "b across-flats", "d thread", "e across-flats", "f unsaid", "g unsaid"}
	if len(got) != len(want) {
		t.Fatalf("%d lines, want %d: %v", len(got), len(want), got)
	}
	for i, l := range got {
		if s := l.Ref + " " + l.Dimension; s != want[i] {
			t.Errorf("line %d: %s, want %s", i, s, want[i])
		}
	}
	if !got[0].Sure || len(got[0].Also) != 1 {
		t.Errorf("said twice, sure once: %+v", got[0])
	}
}
