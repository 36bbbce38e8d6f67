package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// TestStart: what our packages make before main is paid by every run, --help too.
func TestStart(t *testing.T) {
	most := 500 // things made by one package
	if testing.CoverMode() != "" {
		most = 1000 // counting lines makes some of its own
	}
	cmd := exec.Command(os.Args[0], "-test.run", "NONE")
	cmd.Env = append(os.Environ(), "GODEBUG=inittrace=1")
	var trace bytes.Buffer
	cmd.Stderr = &trace
	if err := cmd.Run(); err != nil {
		t.Fatal(err)
	}
	seen := 0
	for line := range strings.Lines(trace.String()) {
		var pkg string
		var at, took float64
		var size, made int
		if n, _ := fmt.Sscanf(line, "init %s @%f ms, %f ms clock, %d bytes, %d allocs", &pkg, &at, &took, &size, &made); n < 5 || !strings.HasPrefix(pkg, "wrenchword/") {
			continue
		}
		if seen++; made > most {
			t.Errorf("%s makes %d things (%d bytes) before main; what few runs need is made when it is first asked: sync.OnceValue, pattern.Of, set", pkg, made, size)
		}
	}
	if seen < 5 {
		t.Errorf("only %d of our packages are in the trace:\n%s", seen, trace.String())
	}
}
