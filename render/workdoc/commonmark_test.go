package workdoc_test

import (
	"strings"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/text"

	"wrenchword/render/workdoc"
)

// TestDocumentsAreCommonMark: an independent parser sees in each document the
// boxes, rows and cells that were meant, no link where no address was given, and
// no HTML but the references.
func TestDocumentsAreCommonMark(t *testing.T) {
	list, err := clips()
	if err != nil {
		t.Fatal(err)
	}
	gfm := goldmark.New(goldmark.WithExtensions(extension.Table, extension.TaskList, extension.Linkify, extension.Strikethrough))
	for _, clip := range list {
		rec := recordOf(clip.Cues, clip)
		src := workdoc.Visible(draw(t, rec))
		boxes, rows, links, html := 0, 0, 0, 0
		_ = ast.Walk(gfm.Parser().Parse(text.NewReader(src)), func(n ast.Node, entering bool) (ast.WalkStatus, error) {
			if !entering {
				return ast.WalkContinue, nil
			}
			switch n := n.(type) {
			case *east.TaskCheckBox:
				boxes++
			case *east.TableRow:
				rows++
				filled := 0
				for c := n.FirstChild(); c != nil; c = c.NextSibling() {
					filled++
				}
				if want := len(n.Parent().(*east.Table).Alignments); filled != want {
					t.Errorf("%s: a row of %d cells in a table of %d", clip.Name, filled, want)
				}
			case *ast.Link, *ast.AutoLink, *ast.Image, *east.Strikethrough:
				links++
			case *ast.RawHTML:
				for i := 0; i < n.Segments.Len(); i++ {
					s := n.Segments.At(i)
					if !strings.HasPrefix(string(s.Value(src)), "<!-- @") {
						html++
					}
				}
			case *ast.HTMLBlock:
				html++
			}
			return ast.WalkContinue, nil
		})
		checks := 0
		for _, u := range rec.Usual {
			if u.Kind == "check" {
				checks++
			}
		}
		used := 0
		for _, c := range rec.Consumables {
			if !workdoc.StandsIn(rec, c) {
				used++
			}
		}
		want := len(rec.Open) + len(rec.Doubts) + len(rec.Steps) + len(rec.Tools) + len(rec.Parts) + used + checks
		if boxes != want {
			t.Errorf("%s: %d boxes, want %d", clip.Name, boxes, want)
		}
		if want := len(workdoc.Round(rec, workdoc.RefsOf(rec))) + len(rec.Ledger); rows != want {
			t.Errorf("%s: %d rows, want %d", clip.Name, rows, want)
		}
		if links+html > 0 {
			t.Errorf("%s: %d links or the like, %d pieces of HTML", clip.Name, links, html)
		}
	}
}
