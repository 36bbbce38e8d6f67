package page

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"html/template"
	"strings"
	"sync"
	"unicode"
)

var (
	//go:embed assets/head.html
	headHTML string
	//go:embed assets/page.html
	pageHTML string
	//go:embed assets/page.css
	pageCSS string
	//go:embed assets/page.js
	pageJS string
)

// Template is the template of a kind of page, read when it is first drawn. It
// begins with the head that all pages share: {{template "head" .}}.
func Template(text string, funcs template.FuncMap) func() *template.Template {
	return sync.OnceValue(func() *template.Template {
		return template.Must(template.Must(template.New("page").Funcs(funcs).Parse(headHTML)).Parse(text))
	})
}

var pageTemplate = Template(pageHTML, template.FuncMap{
	"sub": func(a, b float64) float64 { return a - b },
	"add": func(a, b float64) float64 { return a + b },
	"inc": func(i int) int { return i + 1 },
})

// HTML draws the page as one file that asks for nothing when it is opened.
func (p *Page) HTML() ([]byte, error) {
	return Draw(pageTemplate(), "", pageJS, len(p.Players) > 0, p)
}

// Draw executes a page template with script, and style after the look that all
// pages share, inlined, under a content policy that lets no other style or script
// in and nothing be asked for but media, and seals the result. The template reads .Style, .Script, .Policy, .Seal and .Page.
func Draw(t *template.Template, style, script string, media bool, data any) ([]byte, error) {
	style = pageCSS + style
	policy := "default-src 'none'; img-src data:; style-src " + hashOf(style) + "; script-src " + hashOf(script) +
		"; base-uri 'none'; form-action 'none'"
	if media {
		policy += "; media-src 'self' file: http: https:"
	}
	var b bytes.Buffer
	err := t.Execute(&b, map[string]any{
		"Style": template.CSS(style), "Script": template.JS(script), "Policy": policy, "Seal": sealBlank, "Page": data,
	})
	if err != nil {
		return nil, err
	}
	// Direction marks could make a line read otherwise than it is written, and
	// control characters are no text.
	return sealed(bytes.Map(func(r rune) rune {
		if r != '\n' && r != '\t' && unicode.IsControl(r) || r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069' {
			return -1
		}
		return r
	}, b.Bytes())), nil
}

func hashOf(s string) string {
	// A browser hashes the text after it has folded line ends.
	h := sha256.Sum256([]byte(strings.ReplaceAll(s, "\r\n", "\n")))
	return "'sha256-" + base64.StdEncoding.EncodeToString(h[:]) + "'"
}
