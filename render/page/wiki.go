package page

import (
	"fmt"
	"strings"
	"unicode"

	"go.yaml.in/yaml/v3"

	"wrenchword/normalize/pattern"
	"wrenchword/render"
)

// dialect is a kind of wiki text. Its functions take plain text and give markup.
type dialect struct {
	text    func(string) string // plain text, safe anywhere on a line
	heading func(level int, plain string) string
	strong  func(markup string) string
	link    func(plain, href string) string // href is never empty
	box     func(ticked bool) string
	table   func(head []string, rows [][]string) string // cells are markup
	item    string                                      // before an item of a list
	indent  string                                      // before an item of the second level
}

// Markdown writes the page as CommonMark with GFM tables under a YAML front matter.
func (p *Page) Markdown() ([]byte, error) {
	front := &yaml.Node{Kind: yaml.MappingNode}
	put := func(key, value string) {
		front.Content = append(front.Content,
			&yaml.Node{Kind: yaml.ScalarNode, Value: key},
			&yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: clean(value), Style: yaml.DoubleQuotedStyle})
	}
	put("title", p.Title)
	for _, f := range p.Facts {
		put(strings.ToLower(f.Label), f.Value)
	}
	put("verdict", p.Verdict)
	put("seal", sealBlank)
	head, err := yaml.Marshal(front)
	if err != nil {
		return nil, fmt.Errorf("write the front matter: %w", err)
	}
	esc := render.EscapeMarkdown
	body := p.wiki(dialect{
		text:    esc,
		heading: func(level int, s string) string { return strings.Repeat("#", level) + " " + esc(s) },
		strong:  func(s string) string { return "**" + s + "**" },
		link: func(s, href string) string {
			return "[" + esc(s) + "](<" + strings.NewReplacer("<", "%3C", ">", "%3E", `\`, "%5C", "|", "%7C", "\n", "", "\r", "", "&", "&amp;").Replace(href) + ">)"
		},
		box: func(ticked bool) string {
			if ticked {
				return "[x] "
			}
			return "[ ] "
		},
		table: func(head []string, rows [][]string) string {
			var b strings.Builder
			line := func(cells []string) { fmt.Fprintf(&b, "| %s |\n", strings.Join(cells, " | ")) }
			line(head)
			line(strings.Split(strings.TrimSuffix(strings.Repeat("---,", len(head)), ","), ","))
			for _, r := range rows {
				line(r)
			}
			return b.String()
		},
		item: "- ", indent: "  - ",
	})
	return sealed([]byte("---\n" + string(head) + "---\n\n" + body)), nil
}

// MediaWiki writes the page in MediaWiki's markup.
func (p *Page) MediaWiki() ([]byte, error) {
	body := p.wiki(dialect{
		text: escapeMediaWiki,
		heading: func(level int, s string) string {
			marks := strings.Repeat("=", level)
			return marks + " " + escapeMediaWiki(s) + " " + marks
		},
		strong: func(s string) string { return "'''" + s + "'''" },
		link: func(s, href string) string {
			// Only the web can be linked to from there.
			if !webAddress().MatchString(href) {
				return escapeMediaWiki(s)
			}
			return "[" + linkMarks.Replace(href) + " " + escapeMediaWiki(s) + "]"
		},
		box: func(ticked bool) string {
			if ticked {
				return "☑ "
			}
			return "☐ "
		},
		table: func(head []string, rows [][]string) string {
			var b strings.Builder
			b.WriteString("{| class=\"wikitable\"\n")
			for _, h := range head {
				b.WriteString("! " + h + "\n")
			}
			for _, r := range rows {
				b.WriteString("|-\n")
				for _, c := range r {
					b.WriteString("| " + c + "\n")
				}
			}
			return b.String() + "|}\n"
		},
		item: "* ", indent: "** ",
	})
	return sealed([]byte(body + "\n<!-- " + sealBlank + " -->\n")), nil
}

var linkMarks = strings.NewReplacer(" ", "%20", `"`, "%22", "<", "%3C", ">", "%3E", "[", "%5B", "]", "%5D", "{", "%7B", "}", "%7D", "|", "%7C", "''", "%27%27", "\n", "", "\r", "", "\t", "")

// clean folds white space and drops control characters and direction marks.
func clean(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r) || r == '\u2028' || r == '\u2029':
			return ' '
		case unicode.IsControl(r), r >= '\u202a' && r <= '\u202e', r >= '\u2066' && r <= '\u2069', r == '\ufeff':
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, "\ufffd"))
	return strings.Join(strings.Fields(s), " ")
}

var (
	scheme    = pattern.Of(`\pL:[^\s]`)
	magicWord = pattern.Of(`\b(ISBN|RFC|PMID) `)
)

// escapeMediaWiki makes s plain text anywhere on a line of MediaWiki's markup,
// at its start, its end and in a cell included. What could be markup becomes a
// character reference, which that markup never reads as markup.
func escapeMediaWiki(s string) string {
	r := []rune(clean(s))
	colon := map[int]bool{}
	for i := 1; i+1 < len(r); i++ {
		if scheme().MatchString(string(r[i-1 : i+2])) {
			colon[i] = true
		}
	}
	var b strings.Builder
	for i, c := range r {
		edge := i == 0 || i == len(r)-1
		twin := i > 0 && r[i-1] == c || i+1 < len(r) && r[i+1] == c
		ref := false
		switch c {
		case '&', '<', '>', '[', ']', '{', '}', '|', '~', '_', '=':
			ref = true
		case '\'', '-', '!':
			ref = edge || twin
		case '#', '*', ';', '+':
			ref = i == 0
		case ':':
			ref = edge || colon[i]
		}
		if ref {
			fmt.Fprintf(&b, "&#%d;", c)
		} else {
			b.WriteRune(c)
		}
	}
	return magicWord().ReplaceAllString(b.String(), "$1&#32;")
}

// wiki writes the page in the order of the working document.
func (p *Page) wiki(d dialect) string {
	var b strings.Builder
	t, item := d.text, d.item
	line := func(s string) { b.WriteString(s + "\n") }
	para := func(s string) { b.WriteString("\n" + s + "\n") }
	head := func(level int, s string) { b.WriteString("\n" + d.heading(level, s) + "\n\n") }
	sub := func(label, s string) {
		if s != "" {
			line(d.indent + t(label) + " " + s)
		}
	}
	at := func(list []Moment) string {
		var out []string
		for _, m := range list {
			if m.Href != "" {
				out = append(out, d.link(m.Text, string(m.Href)))
			} else {
				out = append(out, t(m.Text))
			}
		}
		if len(out) == 0 {
			return ""
		}
		return " (" + strings.Join(out, ", ") + ")"
	}
	quoted := func(s string) string {
		if s == "" {
			return ""
		}
		return "“" + t(s) + "”"
	}
	ask := func(a Ask) {
		s := t(a.Text) + at(a.At)
		if a.Why != "" {
			s += ": " + d.strong("open") + ", " + t(a.Why)
		}
		line(item + s)
		sub("Kind:", t(a.Kind))
		sub("Due:", t(a.Due))
		sub("Heard:", quoted(a.Quote))
		for _, c := range a.Checks {
			sub("Check:", t(c))
		}
		for _, n := range a.Notes {
			sub("Note:", t(n))
		}
		sub("Answer:", t(a.Answer.Text))
		if a.Answer.Text != "" {
			sub("Source:", t(orElse(a.Source.Text, "none given")))
		}
	}
	items := func(list []Item) {
		for _, i := range list {
			s := item
			if i.Box {
				s += d.box(i.Ticked)
			}
			s += t(i.Text)
			if i.Remark != "" {
				s += ", " + t(i.Remark)
			}
			line(s + at(i.At))
		}
	}

	line(d.heading(1, p.Title))
	line("")
	for _, f := range p.Facts {
		line(item + t(f.Label) + ": " + t(f.Value))
	}
	para(d.strong(t(p.Verdict)))
	if p.SettledOnly {
		para(t("Values that nobody confirmed were left out of this page. Left out does not mean not needed."))
	}
	head(2, "Before you rely on this")
	for _, n := range p.Notice {
		line(t(n))
		line("")
	}
	for _, c := range p.Cautions {
		s := item + d.strong(t(c.Signal)) + " " + t(c.Text)
		if c.From != "" {
			s += " (" + t(c.From) + ")"
		}
		line(s + at(c.At))
	}
	head(2, "Not settled")
	for _, a := range p.Open {
		ask(a)
	}
	if len(p.Open) == 0 {
		line(t("Nothing that was heard is left open before use. That is no inspection."))
	}
	if len(p.Doubts) > 0 {
		b.WriteString("\n")
		line(t("Words that may leave something open, and that no question asks after; many leave nothing so:"))
		b.WriteString("\n")
		for _, x := range p.Doubts {
			line(item + t("“"+x.Text+"”") + at(x.At))
		}
	}
	head(2, "Tightening round")
	for _, place := range p.Round {
		b.WriteString("\n" + d.heading(3, place.Name) + "\n\n")
		var rows [][]string
		for _, r := range place.Rows {
			name := t(r.Name)
			if r.Count != "" {
				name = t(r.Count) + " × " + name
			}
			first := true
			add := func(state string, v *Value) {
				cells := []string{name, state, t(v.Words), figureCell(t, v.NM, v.Then, v.NMComputed),
					figureCell(t, v.LbfFt, v.Then, v.LbfFtComputed), figureCell(t, v.LbfIn, v.Then, v.LbfInComputed)}
				if v.At.Text != "" {
					cells[2] += at([]Moment{v.At})
				}
				// What is said of the row as a whole stands in its first line.
				if first {
					cells = append(cells, strings.Join(tAll(t, r.Checks), " "), t(r.Source.Text), d.box(r.Ticked))
				} else {
					cells = append(cells, "", "", "")
				}
				first = false
				rows = append(rows, cells)
			}
			if r.Confirmed != nil {
				add(d.strong(t(r.Words)), r.Confirmed)
			}
			for i := range r.Heard {
				state := heardOnly
				if r.State == "confirmed" {
					state = "was heard"
				}
				add(t(state), &r.Heard[i])
			}
			if r.Confirmed == nil && len(r.Heard) == 0 {
				add(t(r.Words), &Value{})
			}
		}
		b.WriteString(d.table([]string{"Fastener", "What this value is", "As said or written", "N·m", "lbf·ft", "lbf·in", "Check", "Source", "Tightened"}, rows))
	}
	if len(p.Round) == 0 {
		line(t("No fastener and no tightening value was heard."))
	}
	head(2, "The work")
	for _, ph := range p.Phases {
		b.WriteString("\n" + d.heading(3, ph.Title) + "\n\n")
		for _, s := range ph.Steps {
			off := ""
			if s.OffCamera {
				off = " (off camera)"
			}
			line(fmt.Sprintf("%s%s%s%s%s", item, d.box(s.Ticked), t(fmt.Sprintf("%d. %s", s.N, s.Text)), off, at([]Moment{s.At})))
			for _, n := range s.Notes {
				sub("Note:", t(n))
			}
		}
	}
	head(2, "What is needed")
	for _, l := range p.Needed {
		b.WriteString("\n" + d.heading(3, l.Title) + "\n\n")
		items(l.Items)
		if len(l.Items) == 0 {
			line(t(l.None))
		}
	}
	head(2, "What came off and how it was left")
	for _, l := range p.Left {
		s := t(l.Name)
		if l.Count != "" {
			s = t(l.Count) + " × " + s
		}
		if l.Where != "" {
			s += ", " + t(l.Where)
		}
		line(item + d.strong(s) + ": " + t(l.State) + at([]Moment{l.At}))
		sub("More:", t(l.More))
	}
	for _, part := range []struct {
		title string
		asks  []Ask
	}{{"Asked and answered", p.Answered}, {"Open before publishing", p.Publishing}, {"Due later", p.Later}} {
		if len(part.asks) > 0 {
			head(3, part.title)
			for _, a := range part.asks {
				ask(a)
			}
		}
	}
	if len(p.Usual) > 0 {
		head(3, "Usual checks that were not heard")
		items(p.Usual)
	}
	if len(p.Worked) > 0 {
		head(3, "Worked out from what was heard")
		items(p.Worked)
	}
	if len(p.Added) > 0 {
		head(3, "Added by hand")
		for _, s := range p.Added {
			line(item + t(s))
		}
	}
	if len(p.Claims) > 0 {
		head(3, "What readers say")
		line(t("A claim settles nothing by itself."))
		line("")
		for _, c := range p.Claims {
			line(item + t("Claim, "+c.Status+": ") + t(c.Text.Text) + " (" + t(joined(c.Who, c.When)) + ")")
		}
	}
	head(2, "How this was made")
	line(t("Every line was read by rules from the recording named here and carries the time where it was said; ≈ before a time says that it was worked out inside a longer cue. What is computed says so. Nothing was looked up."))
	line("")
	if p.TakenOut > 0 {
		line(t(fmt.Sprintf("Lines that were heard and that the person took out: %d.", p.TakenOut)))
		line("")
	}
	for _, s := range p.Sources {
		line(item + t(s.Name) + ", " + t(s.Length) + ", " + t(s.About))
	}
	for _, n := range p.Notes {
		line(item + t(n))
	}
	head(3, "Revisions")
	for _, r := range p.Revisions {
		line(item + t(strings.TrimSuffix(fmt.Sprintf("%d, %s", r.N, r.Date), ", ")) + ": " + t(r.What))
	}
	return b.String()
}

func figureCell(t func(string) string, s, then string, computed bool) string {
	if s == "" {
		return ""
	}
	if computed {
		then += ", computed"
	}
	return t(s + then)
}

func tAll(t func(string) string, list []string) []string {
	out := make([]string, len(list))
	for i, s := range list {
		out[i] = t(s)
	}
	return out
}
