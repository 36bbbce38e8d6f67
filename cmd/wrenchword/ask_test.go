//go:build unix

package main

import (
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/creack/pty"
)

// TestAskedOnATerminal: a match that is not sure is asked on a terminal, and what
// is answered there is what is written.
func TestAskedOnATerminal(t *testing.T) {
	sheet := "# title: shop sheet, 1st edition\nfastener,value\ncaliper bracket bolts,30 N·m\ncaliper cover bolts,5 N·m\n"
	for _, tt := range []struct{ name, types, want string }{
		{"the first", "1\n", "| 30 N·m | shop sheet, 1st edition"},
		{"the second", "2\n", "| 5 N·m | shop sheet, 1st edition"},
		{"none", "\n", ""},
		{"no such line", "7\n", ""},
		{"no number", "the first\n", ""},
		{"the end of the input", "\x04", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			o := newOutside(t)
			o.mine("job.md")
			if err := os.WriteFile(filepath.Join(o.dir, "sheet.csv"), []byte(sheet), 0o644); err != nil {
				t.Fatal(err)
			}
			before := o.read("job.md")
			cmd := o.command("settle", "job.md", "--from", "sheet.csv")
			tty, err := pty.Start(cmd)
			if err != nil {
				t.Skipf("no terminal to be had here: %v", err)
			}
			defer tty.Close()
			if _, err := io.WriteString(tty, tt.types); err != nil {
				t.Fatal(err)
			}
			said, _ := io.ReadAll(tty) // ends with an error where the other side is shut
			_ = cmd.Wait()
			o.wants(string(said), `which line is for "caliper bolts"?`, "1  caliper bracket bolts, 30 N·m (shop sheet", "2  caliper cover bolts, 5 N·m")
			after := o.read("job.md")
			if tt.want == "" {
				if after != before {
					t.Errorf("something was written that nobody chose:\n%s", said)
				}
				return
			}
			row := ""
			for l := range strings.Lines(after) {
				if strings.HasPrefix(l, "| caliper bolts") {
					row = l
					break
				}
			}
			o.wants(row, tt.want)
			o.wants(after, "My own note.")
		})
	}
}
