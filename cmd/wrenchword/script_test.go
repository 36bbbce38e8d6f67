package main

import (
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	if os.Getenv(writerEnv) != "" {
		writeForever(os.Getenv(writerEnv)) // the kill test's child
		return
	}
	if os.Getenv(fullEnv) != "" {
		writeWithoutRoom(os.Getenv(fullEnv)) // the child of the test of a full disk
		return
	}
	testscript.Main(m, map[string]func(){"wrenchword": func() { os.Exit(run()) }})
}

// TestScripts runs the scripts, one topic a file. Commands of ours in them:
//
//	exits N PROGRAM ARGS…   run and want exactly that exit code
//	fillin FILE [PART…]     what a person would type: rows, ticks, answers (all if no part is named)
//	swap FILE OLD NEW       replace the first OLD by NEW, both as in a Go string; OLD must be there
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("SOURCE_DATE_EPOCH", "1777593600") // 2026-05-01
			e.Setenv("XDG_CACHE_HOME", e.WorkDir+"/.cache")
			e.Setenv("HOME", e.WorkDir)
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits":  exits,
			"fillin": fillIn,
			"swap":   swap,
		},
	})
}

func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits N PROGRAM ARGS")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec(args[1], args[2:]...)
	got := 0
	if ee, ok := err.(*exec.ExitError); ok {
		got = ee.ExitCode()
	} else if err != nil {
		ts.Fatalf("run %s: %v", args[1], err)
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

var emptyRow = regexp.MustCompile(`(?m)^(\| .*)\|  \|  \| \[ \] \|$`)

func fillIn(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 1 {
		ts.Fatalf("usage: fillin FILE [rows|ticks|answers]")
	}
	name := ts.MkAbs(args[0])
	s := ts.ReadFile(name)
	does := func(part string) bool {
		for _, a := range args[1:] {
			if a == part {
				return true
			}
		}
		return len(args) == 1
	}
	if does("rows") {
		s = emptyRow.ReplaceAllString(s, "$1| 50 N·m | the maker's manual, 2nd edition, page 7 | [x] |")
	}
	if does("ticks") {
		s = strings.ReplaceAll(s, "- [ ] ", "- [x] ")
		s = strings.ReplaceAll(s, "after the swap:\n", "after the swap: yes\n")
	}
	if does("answers") {
		s = strings.ReplaceAll(s, "  - Answer:\n  - Source:\n", "  - Answer: 50 N·m\n  - Source: the maker's manual, 2nd edition\n")
	}
	ts.Check(os.WriteFile(name, []byte(s), 0o644))
}

func swap(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: swap FILE OLD NEW")
	}
	unquote := func(s string) string {
		u, err := strconv.Unquote(`"` + s + `"`)
		ts.Check(err)
		return u
	}
	name := ts.MkAbs(args[0])
	s, old := ts.ReadFile(name), unquote(args[1])
	if !strings.Contains(s, old) {
		ts.Fatalf("%s has no %q", args[0], old)
	}
	ts.Check(os.WriteFile(name, []byte(strings.Replace(s, old, unquote(args[2]), 1)), 0o644))
}
