package main

import (
	"os/exec"
	"strings"
	"testing"
)

// TestArrows fails if a package imports what stands above it:
// cmd -> render -> extract -> normalize, never back.
func TestArrows(t *testing.T) {
	layer := []string{"wrenchword/normalize", "wrenchword/extract", "wrenchword/render", "wrenchword/cmd"}
	of := func(pkg string) int {
		for i, l := range layer {
			if pkg == l || strings.HasPrefix(pkg, l+"/") {
				return i
			}
		}
		return -1
	}
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Deps " "}}`, "wrenchword/...").CombinedOutput()
	if err != nil {
		t.Fatalf("list the packages: %v\n%s", err, out)
	}
	lines := strings.Split(strings.TrimSpace(string(out)), "\n")
	if len(lines) < len(layer) {
		t.Fatalf("only %d packages found", len(lines))
	}
	for _, line := range lines {
		f := strings.Fields(line)
		if of(f[0]) < 0 {
			t.Errorf("%s is in none of the four folders", f[0])
		}
		for _, dep := range f[1:] {
			if of(dep) > of(f[0]) {
				t.Errorf("%s imports %s, which stands above it", f[0], dep)
			}
		}
	}
	// The layers that read talk must stay apart from each other, too.
	for _, apart := range [][2]string{
		{"wrenchword/extract/transcript", "wrenchword/extract/lexicon"},
		{"wrenchword/render/workdoc", "wrenchword/render"},
	} {
		out, err := exec.Command("go", "list", "-f", `{{join .Deps "\n"}}`, apart[0]).CombinedOutput()
		if err != nil {
			t.Fatalf("list %s: %v\n%s", apart[0], err, out)
		}
		for _, dep := range strings.Fields(string(out)) {
			if dep == apart[1] {
				t.Errorf("%s imports %s", apart[0], dep)
			}
		}
	}
}
