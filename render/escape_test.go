package render

import (
	"bytes"
	"html"
	"regexp"
	"strings"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/text"
	"pgregory.net/rapid"
)

var gfm = goldmark.New(goldmark.WithExtensions(extension.Table, extension.TaskList, extension.Linkify))

// plainText renders src and gives the text a reader sees.
func plainText(t interface{ Fatal(...any) }, src string) string {
	var out bytes.Buffer
	if err := gfm.Convert([]byte(src), &out); err != nil {
		t.Fatal(err)
	}
	page := out.String()
	if strings.Contains(page, "<a ") || strings.Contains(page, "<img") {
		t.Fatal("heard text became a link or a picture: " + src)
	}
	page = tag.ReplaceAllString(page, "")
	return strings.Join(strings.Fields(html.UnescapeString(page)), " ")
}

var tag = regexp.MustCompile(`<[^>]*>`)

// TestEscapeMarkdown: what is escaped comes back as the same text, as a
// paragraph, in a list item, behind a box and in a cell.
func TestEscapeMarkdown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching("[ -~\\t\\né·½”]{0,30}").Draw(t, "heard")
		want := strings.Join(strings.Fields(s), " ")
		e := escapeMarkdown(s)
		if strings.ContainsAny(e, "\n\r") {
			t.Fatalf("%q keeps a line break", e)
		}
		for _, frame := range []string{"%", "- %", "- [ ] %", "| a | b |\n| - | - |\n| % | c |"} {
			got := plainText(t, strings.Replace(frame, "%", e, 1))
			if strings.HasPrefix(frame, "|") {
				got = strings.TrimPrefix(strings.TrimSuffix(got, " c"), "a b ")
			}
			if want == "" {
				continue
			}
			if got != want {
				t.Fatalf("in %q: %q came back as %q", frame, want, got)
			}
		}
	})
}

func TestEscapeKeepsOrdinaryTalk(t *testing.T) {
	for _, s := range []string{
		"take the nut off, it's a 17 mm", "half-inch drive (the long one)", "45 N·m + 90 degrees",
	} {
		if got := escapeMarkdown(s); got != s {
			t.Errorf("%q was written as %q", s, got)
		}
	}
}

func TestEscapeStructure(t *testing.T) {
	for _, s := range []string{"# title", "- item", "1. one", "> said", "| a | b |", "<!-- x -->", "[a](http://b)", "```", "==="} {
		doc := gfm.Parser().Parse(text.NewReader([]byte(escapeMarkdown(s))))
		if p := doc.FirstChild(); p == nil || p.Kind() != ast.KindParagraph || p.NextSibling() != nil {
			t.Errorf("%q became a %v", s, p.Kind())
		}
	}
}
