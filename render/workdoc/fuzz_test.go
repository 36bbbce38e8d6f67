package workdoc_test

import (
	"bytes"
	"os"
	"testing"

	"wrenchword/render/workdoc"
)

// FuzzRead: any bytes are a document or an error; what is read can be merged,
// and a merge is read back and stays as it is.
func FuzzRead(f *testing.F) {
	fresh := draw(f, trike())
	other := trike()
	other.Steps = other.Steps[1:]
	next := draw(f, other)
	f.Add(fresh)
	f.Add(workdoc.Visible(fresh))
	f.Add([]byte("# x " + workdoc.Mark + "\n\n| a |\n| - |\n```\n<!-- @"))
	f.Add(bytes.ReplaceAll(fresh, []byte("\n"), []byte("\r")))
	f.Add(bytes.ReplaceAll(fresh, []byte("- "), []byte("1) ")))
	if golden, err := os.ReadFile("../../testdata/cargo-trike.md"); err == nil {
		f.Add(golden)
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		_, _ = workdoc.Read(src)
		out, _, err := workdoc.Merge(src, next)
		if err != nil {
			return
		}
		again, _, err := workdoc.Merge(out, next)
		if err != nil {
			t.Fatalf("a merged document is refused: %v", err)
		}
		if !bytes.Equal(again, out) {
			t.Fatal("a second merge is not the first")
		}
		if _, err := workdoc.Read(out); err != nil {
			t.Fatalf("a merged document is not read back: %v", err)
		}
	})
}

// FuzzReadSheet: any bytes are a sheet or an error that names the file.
func FuzzReadSheet(f *testing.F) {
	f.Add("a.csv", []byte("# title: x\nfastener,value\nnut,5 N·m\n"))
	f.Add("a.yaml", []byte("title: x\nvalues:\n  - fastener: nut\n    value: 5 N·m\n"))
	f.Add("a.md", []byte("# x\n\n| fastener | value |\n| --- | --- |\n| nut | 5 N·m |\n"))
	f.Fuzz(func(t *testing.T, name string, src []byte) {
		s, err := workdoc.ReadSheet(name, src)
		if err == nil && len(s.Lines) == 0 {
			t.Fatal("a sheet with nothing in it is no error")
		}
	})
}
