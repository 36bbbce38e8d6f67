package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"wrenchword/render/workdoc"
)

var update = flag.Bool("update", false, "write the golden files again")

// demos are the transcripts of testdata with what the person says of each job.
var demos = map[string][]string{
	"bench-drill.vtt": {"--title", "Bench drill: belt and spindle pulley", "--machine", "bench drill"},
	"cargo-trike.srt": {"--title", "Cargo trike: front wheel bearings", "--machine", "cargo trike"},
}

// TestDemoProcedures: the demo's documents in testdata are what the tool writes.
// The packed block at a document's end may differ from one Go version to the next and is not compared.
func TestDemoProcedures(t *testing.T) {
	for name, flags := range demos {
		t.Run(name, func(t *testing.T) {
			in := filepath.Join("..", "..", "testdata", name)
			out := strings.TrimSuffix(in, filepath.Ext(in)) + ".md"
			root := newRootCmd()
			var got, talk bytes.Buffer
			root.SetOut(&got)
			root.SetErr(&talk)
			root.SetArgs(append([]string{"procedure", in}, flags...))
			if err := root.Execute(); err != nil {
				t.Fatal(err)
			}
			if talk.Len() > 0 {
				t.Errorf("the demo is not read without a word: %s", talk.String())
			}
			if *update {
				if err := os.WriteFile(out, got.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(out)
			if err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(string(workdoc.Visible(want)), string(workdoc.Visible(got.Bytes()))); d != "" {
				t.Errorf("%s is not what is written now; look at the change and run with -update if it is right:\n%s", out, d)
			}
			if _, err := workdoc.Read(want); err != nil {
				t.Errorf("%s is not read back: %v", out, err)
			}
		})
	}
}
