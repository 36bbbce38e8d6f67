package workdoc

import (
	"fmt"
	"html"
	"strconv"
	"strings"

	"wrenchword/extract"
	"wrenchword/normalize/pattern"
)

// MaxSize bounds a document that is read back, in bytes.
const MaxSize = 64 << 20

// Titles of sections whose lines mean something to Read.
const (
	titleDue    = "## due later"
	titleClaims = "## what readers say"
)

// Labels of the lines under an open question.
const (
	labelAnswer = "answer"
	labelSource = "source"
	labelAgain  = "joint tightened again after the swap"
)

// Read reads a working document back, whatever a person did to it. It fails with
// ErrNotDocument, ErrSeal or ErrReference, wrapped with the line and what to do.
func Read(src []byte) (*Document, error) {
	if len(src) > MaxSize {
		return nil, fmt.Errorf("%w: it is larger than %d MB", ErrNotDocument, MaxSize>>20)
	}
	visible, k, err := unseal(src)
	if err != nil {
		return nil, err
	}
	own := parseLines(k.Text)
	keyOwn(own)
	body := parseLines(visible)
	if err := keyMine(body, own); err != nil {
		return nil, err
	}
	d := &Document{
		Record: k.Record, Refs: RefsOf(k.Record), Job: k.Record.Job, Revisions: k.Revisions,
		Rows: map[string]Row{}, Answers: map[string]Answer{}, Ticks: map[string]bool{},
		Notes: map[string][]string{}, Edited: map[string]string{},
	}
	r := &reader{d: d, own: index(own), body: body}
	r.read()
	here := index(body)
	for _, n := range own {
		if a := n.anchor(); a != "" && here[n.key] == nil {
			d.Removed = append(d.Removed, a)
		}
	}
	return d, nil
}

type reader struct {
	d    *Document
	own  map[string]*node
	body []*node

	ref, section string
	end          int // of the item at ref
	head         []string
}

func (r *reader) warn(line int, format string, a ...any) {
	r.d.Warnings = append(r.d.Warnings, Warning{line, fmt.Sprintf(format, a...)})
}

// badBox are boxes that people write and Markdown does not know.
var badBox = pattern.Of(`^\s*[-*+]?\s*\[(\]|[^\[\]xX ]\]|\s*[xX]\s+\]|\s+[xX]\s*\])`)

func (r *reader) read() {
	for i := 0; i < len(r.body); i++ {
		n := r.body[i]
		if i >= r.end {
			r.ref = ""
		}
		switch {
		case n.blank():
		case !n.row && strings.HasPrefix(n.text, "#"):
			r.section = strings.ToLower(n.canonical())
			switch n.key {
			case "":
				r.note(n)
			case "document":
				r.item(n)
			}
		case n.row:
			r.row(n)
		case n.key != "" && n.anchor() == "" && strings.Contains(n.key, "/") && !strings.HasPrefix(n.key, "text:"):
			i = r.label(i)
		case n.key != "" && !strings.HasPrefix(n.key, "text:"):
			r.ref, r.end = n.key, extent(r.body, i)
			r.item(n)
		case n.key == "":
			r.person(n)
		}
	}
}

// item reads one of the tool's items: its box and whether its text was changed.
func (r *reader) item(n *node) {
	p := partLine(n.text)
	was := partLine(r.own[n.key].text)
	if p.box == "x" {
		r.d.Ticks[n.key] = true
	} else if was.box != "" && p.box == "" && badBox().MatchString(p.indent+p.marker+" "+p.body) {
		r.warn(n.line, "the tick is not understood; write it [x]")
	}
	if n.key == "document" {
		if title := plain(strings.TrimLeft(p.body, "# ")); r.d.Record.Job.Title != "" || title != plain(strings.TrimLeft(was.body, "# ")) {
			r.d.Job.Title = title // "Procedure" stands there where no title was given
		}
	}
	if field, ok := strings.CutPrefix(n.key, "job-"); ok {
		r.job(field, p.body)
	}
	if foldWords(strings.Fields(p.body)) != foldWords(strings.Fields(was.body)) {
		r.d.Edited[n.key] = plain(p.body)
	}
}

func (r *reader) job(field, body string) {
	_, value, _ := strings.Cut(body, ":")
	value = plain(value)
	switch field {
	case "machine":
		r.d.Job.Machine = value
	case "year":
		r.d.Job.Year = value
	case "reading":
		r.d.Job.Reading = value
	case "date":
		r.d.Job.Date = value
	}
}

// label reads the line with a label at i and what carries it on, and gives the last line it read.
func (r *reader) label(i int) int {
	n := r.body[i]
	_, value, _ := strings.Cut(partLine(n.text).body, ":")
	depth := n.indent()
	last := i
	for j := i + 1; j < len(r.body) && j < r.end; j++ {
		c := r.body[j]
		// An answer may stand below its label as well as behind it, as a point of its own, too.
		begun := strings.TrimSpace(value) != ""
		if c.key != "" || c.blank() || begun && c.indent() <= depth && c.startsBlock() {
			break
		}
		p := partLine(c.text)
		if p.box != "" && !begun {
			break // a box of the person's own is no answer
		}
		value = strings.TrimSpace(value + "\n" + p.body)
		last = j
	}
	ref, name, _ := strings.Cut(n.key, "/")
	value = plain(value)
	a := r.d.Answers[ref]
	switch name {
	case labelAnswer:
		a.Text = value
	case labelSource:
		a.Source = value
	case labelAgain:
		a.Again = isTick(value)
	default:
		if n.canonical() != r.own[n.key].canonical() {
			r.d.Edited[n.key] = value
		}
		return last
	}
	a.Line = n.line
	r.d.Answers[ref] = a
	return last
}

// row reads a line of a table. What a person put into the round is theirs.
func (r *reader) row(n *node) {
	if rulePattern().MatchString(n.text) {
		return
	}
	list := cells(stripRefs(n.text))
	if strings.HasPrefix(n.key, "table:") {
		r.head = list
		return
	}
	round := strings.HasPrefix(n.head, "table:fastener|")
	if n.head == "" {
		r.note(n)
		return
	}
	if len(list) > len(r.head) {
		r.warn(n.line, `the row has %d cells under %d columns; write a pipe that belongs to the text as \|`, len(list), len(r.head))
	}
	cell := byColumn(r.head, list)
	tick := cell["tightened"] + cell["seen to"]
	row := Row{
		Confirmed: plain(cell["confirmed"]), Source: plain(cell["source"]),
		Tightened: isTick(tick), When: tickRemark(tick), Line: n.line,
	}
	switch {
	case n.key != "" && round:
		r.d.Rows[n.key] = row
		if row.Tightened {
			r.d.Ticks[n.key] = true
		}
	case n.key != "":
		if row.Tightened {
			r.d.Ticks[n.key] = true
		}
	case round && len(list) > 0:
		r.d.Own = append(r.d.Own, OwnRow{Name: plain(list[0]), Row: row})
		return
	default:
		r.note(n)
		return
	}
	// Words in the tool's own cells, or in columns of the person's, are notes.
	o := r.own[n.key]
	was := byColumn(headOf(r.own, o), cells(stripRefs(o.text)))
	for i, h := range r.head {
		h = strings.ToLower(h)
		w, known := was[h]
		if h == "confirmed" || h == "source" || h == "tightened" || h == "seen to" || i >= len(list) {
			continue
		}
		if list[i] != "" && (!known || canonical(w) != canonical(list[i])) {
			r.d.Notes[n.key] = append(r.d.Notes[n.key], plain(r.head[i])+": "+plain(list[i]))
		}
	}
}

// isTick says whether a cell or an answer says done.
func isTick(s string) bool {
	s = strings.ToLower(strings.TrimSpace(s))
	if s == "" || strings.HasPrefix(s, "[ ]") || strings.HasPrefix(s, "[]") {
		return false
	}
	first := strings.Trim(strings.Fields(s)[0], "[],.;:")
	switch first {
	case "x", "✓", "✔", "☑", "yes", "y", "done", "ok", "tightened":
		return true
	}
	return datePattern().MatchString(first)
}

var datePattern = pattern.Of(`^\d{4}-\d{2}-\d{2}$|^\d{1,2}[./]\d{1,2}[./]\d{2,4}$`)

func tickRemark(s string) string {
	s = strings.TrimSpace(s)
	for _, p := range []string{"[ ]", "[x]", "[X]", "x ", "X "} {
		if rest, ok := strings.CutPrefix(s, p); ok {
			return plain(rest)
		}
	}
	if isTick(s) && len(s) > 3 {
		return plain(s)
	}
	return ""
}

// person reads a line of the person's.
func (r *reader) person(n *node) {
	p := partLine(n.text)
	if r.ref == "" && !n.opaque && p.marker != "" {
		switch r.section {
		case titleDue:
			text, when, _ := strings.Cut(p.body, ", due:")
			if when == "" {
				text, when, _ = strings.Cut(p.body, "due:")
			}
			r.d.Dues = append(r.d.Dues, Due{Text: plain(strings.TrimRight(text, " ,;")), When: plain(when), Done: p.box == "x", Line: n.line})
			return
		case titleClaims:
			if c, ok := claim(plain(p.body)); ok {
				c.Line = n.line
				r.d.Claims = append(r.d.Claims, c)
				return
			}
		}
	}
	r.note(n)
}

func (r *reader) note(n *node) {
	text := plain(stripRefs(strings.Join(n.raw, " ")))
	if r.section == strings.ToLower(KeptHeading) {
		if !strings.HasPrefix(n.text, "#") {
			r.d.Kept = append(r.d.Kept, text)
		}
		return
	}
	r.d.Notes[r.ref] = append(r.d.Notes[r.ref], text)
}

// claim reads "claim: …; by: …; date: …; source: …; status: …".
func claim(s string) (Claim, bool) {
	rest, ok := strings.CutPrefix(strings.TrimSpace(s), "claim:")
	if !ok {
		return Claim{}, false
	}
	c := Claim{Status: "open"}
	for i, part := range strings.Split(rest, ";") {
		name, value, labelled := strings.Cut(part, ":")
		value = strings.TrimSpace(value)
		switch name = strings.ToLower(strings.TrimSpace(name)); {
		case i > 0 && labelled && name == "by":
			c.Who = value
		case i > 0 && labelled && name == "date":
			c.When = value
		case i > 0 && labelled && name == "status":
			c.Status = value
		default:
			c.Text = strings.TrimSpace(c.Text + "; " + strings.TrimSpace(part))
		}
	}
	c.Text = strings.TrimPrefix(c.Text, "; ")
	return c, true
}

var escapePattern = pattern.Of("\\\\[!-/:-@\\[-`{-~]|&(?:#\\d{1,7}|#[xX][0-9a-fA-F]{1,6}|[A-Za-z][A-Za-z0-9]{1,31});")

// plain undoes Markdown's escapes in one pass over the source, and nothing
// else: what a person typed with asterisks keeps them.
func plain(s string) string {
	s = escapePattern().ReplaceAllStringFunc(s, func(m string) string {
		if m[0] == '\\' {
			return m[1:]
		}
		return html.UnescapeString(m)
	})
	return strings.TrimSpace(s)
}

// ClipNames are the names of the recordings a document was made from.
func ClipNames(rec *extract.Record) []string {
	var out []string
	for _, s := range rec.Source {
		out = append(out, strconv.Quote(s.Name))
	}
	return out
}
