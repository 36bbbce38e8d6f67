package workdoc

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"go.yaml.in/yaml/v3"
)

// Sheet is a list of values that a person trusts.
type Sheet struct {
	File                          string
	Title, Edition, Machine, Year string
	Scope                         string // "general" where its values are by size only
	Lines                         []SheetLine
}

// SheetLine is one value of a sheet.
type SheetLine struct {
	Line                                int
	Fastener, Size, Value, Source, Note string
	value                               Value
}

// From says where a line's value comes from, as the document's Source column has it.
func (s Sheet) From(l SheetLine) string {
	// The title and the edition go before the page, unless the line names them itself.
	from := l.Source
	for _, part := range []string{s.Edition, s.Title} {
		if part != "" && !strings.Contains(strings.ToLower(l.Source), strings.ToLower(part)) {
			from = strings.TrimSuffix(part+", "+from, ", ")
		}
	}
	if s.Machine != "" {
		from += ", for " + strings.TrimSpace(s.Machine+" "+s.Year)
	}
	if s.Scope == "general" {
		from += " (general value)"
	}
	return strings.TrimPrefix(from, ", ")
}

// SheetTemplate is the sheet to fill for a document's rows, as CSV.
func SheetTemplate(d *Document) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "# title: \n# edition: \n# machine: %s\n# year: %s\n", oneLine(d.Job.Machine), oneLine(d.Job.Year))
	w := csv.NewWriter(&b)
	_ = w.Write([]string{"fastener", "size", "value", "source", "note"})
	for _, r := range Round(d.Record, d.Refs) {
		_ = w.Write([]string{r.Name, "", "", "", ""})
	}
	w.Flush()
	return b.Bytes()
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// ReadSheet reads a sheet in CSV, YAML or a Markdown table, told from its name
// and its content. All its faults are reported at once, each with file and line.
func ReadSheet(name string, src []byte) (Sheet, error) {
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	var s Sheet
	var err error
	switch ext := strings.ToLower(filepath.Ext(name)); {
	case ext == ".yaml" || ext == ".yml":
		s, err = readYAML(name, src)
	case ext == ".md" || ext == ".markdown" || ext != ".csv" && bytes.Contains(src, []byte("| --")):
		s, err = readTable(name, src)
	default:
		s, err = readCSV(name, src)
	}
	if err != nil {
		return Sheet{}, err
	}
	s.File = name
	return s, s.check()
}

func (s *Sheet) check() error {
	var faults []error
	seen := map[string]int{}
	lines := s.Lines[:0]
	for _, l := range s.Lines {
		if l.Value == "" {
			continue // a line of the template that was not filled
		}
		fault := func(format string, a ...any) {
			faults = append(faults, fmt.Errorf("%s:%d: %s", s.File, l.Line, fmt.Sprintf(format, a...)))
		}
		if l.Fastener == "" {
			fault("value %q has no fastener", l.Value)
			continue
		}
		v, err := ParseValue(l.Value)
		if err != nil {
			fault("%v", err)
			continue
		}
		key := strings.Join(nameWords(l.Fastener+" "+l.Size), " ")
		if first, twice := seen[key]; twice {
			fault("%q stands on line %d already; keep one", l.Fastener, first)
			continue
		}
		if l.Source == "" && s.Title == "" {
			fault("%q has no source, and the sheet has no title; give one", l.Fastener)
			continue
		}
		seen[key] = l.Line
		l.value = v
		lines = append(lines, l)
	}
	s.Lines = lines
	if len(faults) == 0 && len(lines) == 0 {
		return fmt.Errorf("%s: no value in it yet; fill the column value, with units", s.File)
	}
	return errors.Join(faults...)
}

// field puts one named field where it belongs; it says whether it knows it.
func (l *SheetLine) field(name, value string) bool {
	value = strings.TrimSpace(value)
	switch strings.ToLower(strings.TrimSpace(name)) {
	case "fastener", "item", "what":
		l.Fastener = value
	case "size", "thread":
		l.Size = value
	case "value", "torque":
		l.Value = strings.TrimSpace(value + " " + l.Value)
	case "unit":
		l.Value = strings.TrimSpace(l.Value + " " + value)
	case "source", "page":
		l.Source = strings.TrimPrefix(l.Source+", "+value, ", ")
	case "note":
		l.Note = value
	default:
		return false
	}
	return true
}

func (s *Sheet) field(name, value string) bool {
	value = strings.TrimSpace(value)
	switch strings.ToLower(strings.TrimSpace(name)) {
	case "title":
		s.Title = value
	case "edition":
		s.Edition = value
	case "machine":
		s.Machine = value
	case "year":
		s.Year = value
	case "scope":
		s.Scope = strings.ToLower(value)
	default:
		return false
	}
	return true
}

func (s *Sheet) head(line string) {
	if name, value, ok := strings.Cut(strings.TrimLeft(line, "#-* "), ":"); ok {
		s.field(name, value)
	}
}

func readCSV(name string, src []byte) (Sheet, error) {
	var s Sheet
	for _, l := range splitLines(string(src)) {
		if strings.HasPrefix(l, "#") {
			s.head(l)
		}
	}
	r := csv.NewReader(bytes.NewReader(src))
	r.Comment = '#'
	r.FieldsPerRecord = -1
	r.TrimLeadingSpace = true
	// A sheet that a spreadsheet wrote where the comma marks decimals parts its
	// fields with semicolons.
	for _, l := range splitLines(string(src)) {
		if l != "" && !strings.HasPrefix(l, "#") {
			if strings.Count(l, ";") > strings.Count(l, ",") {
				r.Comma = ';'
			}
			break
		}
	}
	var head []string
	for {
		rec, err := r.Read()
		if err == io.EOF {
			return s, nil
		}
		if err != nil {
			return s, fmt.Errorf("%s: read the sheet: %w", name, err)
		}
		line, _ := r.FieldPos(0)
		if head == nil {
			head = rec
			if err := checkHead(name, line, head); err != nil {
				return s, err
			}
			continue
		}
		if len(rec) > len(head) {
			return s, fmt.Errorf("%s:%d: %d fields under %d columns; put a value with a comma in quotes", name, line, len(rec), len(head))
		}
		s.add(line, head, rec)
	}
}

func (s *Sheet) add(line int, head, rec []string) {
	l := SheetLine{Line: line}
	for i, f := range rec {
		l.field(head[i], f)
	}
	s.Lines = append(s.Lines, l)
}

func checkHead(name string, line int, head []string) error {
	var l SheetLine
	fastener, value := false, false
	for _, h := range head {
		h = strings.ToLower(strings.TrimSpace(h))
		if !l.field(h, "") && h != "" {
			return fmt.Errorf("%s:%d: column %q is not known; use fastener, size, value, unit, source, note", name, line, h)
		}
		fastener = fastener || h == "fastener" || h == "item" || h == "what"
		value = value || h == "value" || h == "torque"
	}
	if !fastener || !value {
		return fmt.Errorf("%s:%d: a sheet needs the columns fastener and value", name, line)
	}
	return nil
}

func readTable(name string, src []byte) (Sheet, error) {
	var s Sheet
	var head []string
	for i, l := range splitLines(string(src)) {
		t := strings.TrimSpace(l)
		switch {
		case !strings.HasPrefix(t, "|"):
			head = nil
			if title, ok := strings.CutPrefix(t, "# "); ok && s.Title == "" && !strings.Contains(title, ":") {
				s.Title = title
			}
			s.head(t)
		case rulePattern().MatchString(t):
		case head == nil:
			head = cells(t)
			if err := checkHead(name, i+1, head); err != nil {
				return s, err
			}
		default:
			row := cells(t)
			if len(row) > len(head) {
				return s, fmt.Errorf(`%s:%d: %d cells under %d columns; write a pipe that belongs to the text as \|`, name, i+1, len(row), len(head))
			}
			for j := range row {
				row[j] = plain(row[j])
			}
			s.add(i+1, head, row)
		}
	}
	return s, nil
}

func readYAML(name string, src []byte) (Sheet, error) {
	var s Sheet
	var root yaml.Node
	if err := yaml.Unmarshal(src, &root); err != nil {
		return s, fmt.Errorf("%s: read the sheet: %w", name, err)
	}
	if len(root.Content) == 0 || root.Content[0].Kind != yaml.MappingNode {
		return s, fmt.Errorf("%s:1: a sheet is a mapping with title and values", name)
	}
	top := root.Content[0].Content
	for i := 0; i+1 < len(top); i += 2 {
		k, v := top[i], top[i+1]
		if k.Value != "values" {
			if !s.field(k.Value, v.Value) {
				return s, fmt.Errorf("%s:%d: %q is not known; use title, edition, machine, year, scope, values", name, k.Line, k.Value)
			}
			continue
		}
		for _, item := range v.Content {
			l := SheetLine{Line: item.Line}
			for j := 0; j+1 < len(item.Content); j += 2 {
				if !l.field(item.Content[j].Value, item.Content[j+1].Value) {
					return s, fmt.Errorf("%s:%d: %q is not known; use fastener, size, value, unit, source, note", name, item.Content[j].Line, item.Content[j].Value)
				}
			}
			s.Lines = append(s.Lines, l)
		}
	}
	return s, nil
}
