package workdoc_test

import (
	"flag"
	"os"
	"testing"

	"github.com/google/go-cmp/cmp"
	"wrenchword/render"
	"wrenchword/render/workdoc"
)

var update = flag.Bool("update", false, "write the golden files again")

// TestGoldenDocument: a whole document, with every section, as it is written.
// The block at its end is packed by the standard library and not compared.
func TestGoldenDocument(t *testing.T) {
	doc, err := render.Markdown(trike(), []workdoc.Revision{{N: 1, What: "first written"}, {N: 2, Date: "2026-05-01", What: "read again: 1 line new, 0 lines gone"}})
	if err != nil {
		t.Fatal(err)
	}
	const name = "testdata/trike.golden.md"
	got := string(workdoc.Visible(doc))
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(string(want), got); d != "" {
		t.Errorf("the document changed; look at it and run with -update if it is right:\n%s", d)
	}
}
