package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Licences that go with any use of the program, by words that only they hold.
var licences = []struct {
	name  string
	words []string
}{
	{"Apache-2.0", []string{"Apache License", "Version 2.0"}},
	{"MIT", []string{"Permission is hereby granted, free of charge", "without restriction"}},
	{"BSD-3-Clause", []string{"Redistribution and use in source and binary forms", "endorse or promote"}},
	{"BSD-2-Clause", []string{"Redistribution and use in source and binary forms"}},
}

// licenceOf names the licences that a text holds, "" where it is none of those.
func licenceOf(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	var out []string
	for _, l := range licences {
		all := true
		for _, w := range l.words {
			all = all && strings.Contains(text, w)
		}
		if all && !(l.name == "BSD-2-Clause" && slices.Contains(out, "BSD-3-Clause")) {
			out = append(out, l.name)
		}
	}
	return strings.Join(out, " and ")
}

// TestLicences: every library in the program has a licence that goes with any use
// of it, and "help licences" lists just those. A change to it is read like code.
func TestLicences(t *testing.T) {
	if licenceOf("All rights reserved.") != "" {
		t.Error("no licence is taken for one")
	}
	var lines []string
	for _, system := range []string{"linux", "darwin", "windows"} {
		list := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}\t{{.Version}}\t{{.Dir}}{{end}}{{end}}", ".")
		list.Env = append(os.Environ(), "GOOS="+system, "CGO_ENABLED=0")
		out, err := list.Output()
		if err != nil {
			t.Fatalf("list the libraries: %v", err)
		}
		lines = append(lines, strings.Split(strings.TrimSpace(string(out)), "\n")...)
	}
	var b strings.Builder
	b.WriteString("Libraries in this program, each under the licence named. Their full texts come\nwith the libraries' sources.\n\n")
	slices.Sort(lines)
	for _, l := range slices.Compact(lines) {
		f := strings.Split(l, "\t")
		if len(f) != 3 {
			continue
		}
		files, _ := filepath.Glob(filepath.Join(f[2], "LICEN[CS]E*"))
		text := ""
		for _, name := range files {
			data, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			text += string(data) + "\n"
		}
		name := licenceOf(text)
		if name == "" {
			t.Errorf("%s %s: its licence is none that is known here; read it, and add it to the test or take the library out", f[0], f[1])
		}
		fmt.Fprintf(&b, "  %-34s %-9s %s\n", f[0], f[1], name)
	}
	fmt.Fprintf(&b, "  %-34s %-9s %s\n", "the Go standard library", "", "BSD-3-Clause")
	const file = "topics/licences.txt"
	if *update {
		if err := os.WriteFile(file, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if topicLicences != b.String() {
		t.Errorf("%s is not what the program holds; write it with -update and read the change:\n%s", file, b.String())
	}
}
