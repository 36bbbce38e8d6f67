package page

import (
	"bytes"
	"html/template"
	"strings"
	"sync"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"wrenchword/normalize/pattern"
)

// Rich is text that a person wrote, with its emphasis, code and links drawn.
type Rich struct {
	Text string
	HTML template.HTML
}

// Answers are lines, not documents: a parser that knows paragraphs and inline
// marks only lets no heading, list or raw markup into the page.
var (
	inlineParser = sync.OnceValue(func() parser.Parser {
		return parser.NewParser(
			parser.WithBlockParsers(util.Prioritized(parser.NewParagraphParser(), 1000)),
			parser.WithInlineParsers(
				util.Prioritized(parser.NewCodeSpanParser(), 100),
				util.Prioritized(parser.NewLinkParser(), 200),
				util.Prioritized(parser.NewAutoLinkParser(), 300),
				util.Prioritized(parser.NewEmphasisParser(), 500)),
		)
	})
	inlineRenderer = sync.OnceValue(func() renderer.Renderer {
		return renderer.NewRenderer(renderer.WithNodeRenderers(
			util.Prioritized(links{}, 100), util.Prioritized(html.NewRenderer(), 1000)))
	})
	// 5*6*7 is a sum, not emphasis.
	innerMark = pattern.Of(`([\pL\pN])([*_]+)([\pL\pN])`)
)

// richMost is the longest text whose marks are drawn, in bytes. The cost of some
// marks grows with the square of the text, and no answer to a question is longer.
const richMost = 8 << 10

func rich(s string) Rich {
	switch {
	case s == "":
		return Rich{}
	case len(s) > richMost:
		return Rich{s, template.HTML(template.HTMLEscapeString(s))}
	}
	src := s
	for range 2 { // matches overlap: the end of one is the start of the next
		src = innerMark().ReplaceAllStringFunc(src, func(m string) string {
			return strings.NewReplacer("*", `\*`, "_", `\_`).Replace(m)
		})
	}
	var b bytes.Buffer
	source := []byte(src)
	if err := inlineRenderer().Render(&b, source, inlineParser().Parse(text.NewReader(source))); err != nil {
		return Rich{s, template.HTML(template.HTMLEscapeString(s))}
	}
	out := strings.TrimSpace(b.String())
	if strings.Count(out, "<p>") == 1 {
		out = strings.TrimSuffix(strings.TrimPrefix(out, "<p>"), "</p>")
	} else {
		out = strings.NewReplacer("<p>", "", "</p>", "<br>").Replace(out)
	}
	return Rich{s, template.HTML(out)}
}

// links draws links to the web only, and pictures as their words: a page asks
// for nothing by itself.
type links struct{}

func (links) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(ast.KindLink, func(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
		return anchor(w, n.(*ast.Link).Destination, entering), nil
	})
	r.Register(ast.KindAutoLink, func(w util.BufWriter, src []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering {
			a := n.(*ast.AutoLink)
			s := anchor(w, a.URL(src), true)
			_, _ = w.Write(util.EscapeHTML(a.Label(src)))
			anchor(w, a.URL(src), false)
			return s, nil
		}
		return ast.WalkContinue, nil
	})
	r.Register(ast.KindImage, func(util.BufWriter, []byte, ast.Node, bool) (ast.WalkStatus, error) {
		return ast.WalkContinue, nil
	})
}

var webAddress = pattern.Of(`(?i)^(https?://|mailto:)`)

func anchor(w util.BufWriter, to []byte, entering bool) ast.WalkStatus {
	if !webAddress().Match(to) {
		return ast.WalkContinue
	}
	if !entering {
		_, _ = w.WriteString("</a>")
		return ast.WalkContinue
	}
	_, _ = w.WriteString(`<a rel="noreferrer noopener" href="`)
	_, _ = w.Write(util.EscapeHTML(util.URLEscape(to, true)))
	_, _ = w.WriteString(`">`)
	return ast.WalkContinue
}
