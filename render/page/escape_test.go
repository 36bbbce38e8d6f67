package page_test

import (
	"encoding/json"
	"html"
	"math/rand/v2"
	"os/exec"
	"strings"
	"testing"
	"time"

	"wrenchword/render/page"
)

// Whatever is said comes back from a MediaWiki parser as it was said: as an item
// of a list and as a cell.
func TestMediaWikiEscapesAnything(t *testing.T) {
	dir := modules(t, "wtf_wikipedia")
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("node is not installed: no check of the MediaWiki markup by a parser")
	}
	bits := []string{"nut", "8 mm", "'", "''", "'''", "[", "[[", "]]", "{{", "}}", "{|", "|}", "|", "||", "|-", "!", "!!", "=", "==", "*", "#", ":", ";", "-", "----",
		"<", ">", "<b>", "</b>", "<nowiki>", "<!--", "-->", "<ref>", "&", "&amp;", "&#91;", "~~~~", "__TOC__", "http://x.example", "https:", "mailto:a@x.example", "ISBN 0306406152", "RFC 2616", "\n", "\t", " ", "é", "\u202e", "#REDIRECT", "[[File:x.png]]", "{{{1}}}"}
	rng := rand.New(rand.NewPCG(1, 2))
	var b strings.Builder
	var want []string
	for range 300 {
		s := ""
		for range 1 + rng.IntN(7) {
			s += bits[rng.IntN(len(bits))]
		}
		if page.Clean(s) == "" {
			continue
		}
		want = append(want, page.Clean(s))
		b.WriteString("* " + page.EscapeMediaWiki(s) + "\n")
	}
	b.WriteString("\n{| class=\"wikitable\"\n! A\n! B\n")
	for _, s := range want {
		b.WriteString("|-\n| " + page.EscapeMediaWiki(s) + "\n| end\n")
	}
	b.WriteString("|}\n")
	cmd := exec.Command(node, "-e", `const wtf = require(process.argv[1] + "/wtf_wikipedia"); const read = wtf.default || wtf;
let s = ""; process.stdin.on("data", d => s += d).on("end", () => { const d = read(s);
  console.log(JSON.stringify({items: d.lists().flatMap(l => l.lines().map(x => x.text())), cells: d.tables().flatMap(x => x.json()).map(r => [r.A && r.A.text || "", r.B && r.B.text || ""]),
    other: d.templates().length + d.images().length + d.links().length + d.references().length})); });`, dir)
	cmd.Stdin = strings.NewReader(b.String())
	data, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, data)
	}
	var got struct {
		Items []string
		Cells [][2]string
		Other int
	}
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatalf("%v: %s", err, data)
	}
	if got.Other != 0 || len(got.Items) != len(want) || len(got.Cells) != len(want) {
		t.Fatalf("%d things act, %d items and %d rows of %d", got.Other, len(got.Items), len(got.Cells), len(want))
	}
	// The parser leaves character references to the browser.
	same := func(s string) string { return strings.Join(strings.Fields(html.UnescapeString(s)), " ") }
	for i, w := range want {
		if same(got.Items[i]) != w {
			t.Errorf("item %q comes back as %q", w, same(got.Items[i]))
		}
		if same(got.Cells[i][0]) != w || got.Cells[i][1] != "end" {
			t.Errorf("cell %q comes back as %q", w, got.Cells[i])
		}
	}
}

// TestLongAnswer: an answer of any length is drawn in bounded time, and as text
// where it is longer than any answer.
func TestLongAnswer(t *testing.T) {
	for _, piece := range []string{"[a](", "*a_ ", "`", "![", "<"} {
		start := time.Now()
		out := page.RichHTML(strings.Repeat(piece, 1<<20/len(piece)))
		if took := time.Since(start); took > 10*time.Second {
			t.Errorf("%q over and over took %v", piece, took)
		}
		if strings.Contains(out, "<a") || piece == "<" && !strings.HasPrefix(out, "&lt;") {
			t.Errorf("%q over and over is drawn as %.60s", piece, out)
		}
	}
	if out := page.RichHTML("see [page 7](https://example.org/) *twice*"); !strings.Contains(out, "<a ") || !strings.Contains(out, "<em>") {
		t.Errorf("a short answer lost its marks: %s", out)
	}
}
