package workdoc

import (
	"fmt"
	"math/big"
	"slices"
	"sort"
	"strings"

	"github.com/sahilm/fuzzy"
)

// Match is what one sheet has for one row of the round.
type Match struct {
	Sheet int // index into the sheets
	Line  SheetLine
	Score float64 // 1 is the same name
}

// Sure says in a word how sure a match is.
func (m Match) Sure() string {
	switch {
	case m.Score >= 0.95:
		return "same name"
	case m.Score >= sureEnough:
		return "likely"
	}
	return "unsure"
}

// Fitting is one row of the round with what the sheets have for it.
type Fitting struct {
	Row     RoundRow
	Matches []Match // of each sheet the one to take; empty where none is sure enough
	Doubt   []Match // candidates that are too unsure or too alike to choose from
	Differ  bool    // the sheets disagree
	Held    bool    // a confirmed value stands already and is kept
}

// sureEnough is the score from which a match is taken, and clearLead how far the
// next one must be behind. Both are settings of ours, tried on the tests' names.
const (
	sureEnough = 0.72
	clearLead  = 0.12
)

// Fit sets several sheets side by side against the rows of a document. Rows with
// a confirmed value are held unless replace is set. left lists the lines that no row took.
func Fit(d *Document, sheets []Sheet, replace bool) (fits []Fitting, left []Match) {
	taken := map[[2]int]bool{}
	for _, row := range Round(d.Record, d.Refs) {
		f := Fitting{Row: row, Held: d.Rows[row.Ref].Confirmed != "" && !replace}
		for si, s := range sheets {
			var list []Match
			for _, l := range s.Lines {
				if score := nameScore(row.Name, l.Fastener); score >= 0.45 {
					score += sizeEvidence(d, row, l)
					list = append(list, Match{Sheet: si, Line: l, Score: min(score, 1)})
				}
			}
			sort.SliceStable(list, func(i, j int) bool { return list[i].Score > list[j].Score })
			switch {
			case len(list) == 0:
			case list[0].Score >= sureEnough && (len(list) == 1 || list[0].Score-list[1].Score >= clearLead):
				f.Matches = append(f.Matches, list[0])
				taken[[2]int{si, list[0].Line.Line}] = true
			default:
				f.Doubt = append(f.Doubt, list...)
			}
		}
		f.Differ = differ(f.Matches)
		fits = append(fits, f)
	}
	for si, s := range sheets {
		for _, l := range s.Lines {
			if !taken[[2]int{si, l.Line}] {
				left = append(left, Match{Sheet: si, Line: l})
			}
		}
	}
	return fits, left
}

// differ says whether two values are not the same within what unit tables round away (2 %).
func differ(list []Match) bool {
	same := func(a, b *big.Rat) bool {
		if a == nil || b == nil {
			return a == b
		}
		x, _ := a.Float64()
		y, _ := b.Float64()
		return x <= y*1.02 && y <= x*1.02
	}
	for _, m := range list[min(1, len(list)):] {
		a, b := list[0].Line.value, m.Line.value
		if !same(a.Low, b.Low) || !same(a.High, b.High) || !same(a.AngleDeg, b.AngleDeg) {
			return true
		}
	}
	return false
}

var emptyWords = []string{"the", "a", "an", "of", "on", "for", "in", "to", "and"}

// nameWords folds a name to its telling words, in the singular.
func nameWords(s string) []string {
	var out []string
	for _, w := range strings.Split(slug(s), "-") {
		if len(w) > 3 {
			w = strings.TrimSuffix(w, "s")
		}
		if !slices.Contains(emptyWords, w) {
			out = append(out, w)
		}
	}
	return out
}

// nameScore says how alike two names of a fastener are, 0 to 1. A side or a
// place that only one of them has tells them apart.
func nameScore(a, b string) float64 {
	x, y := nameWords(a), nameWords(b)
	if len(x) == 0 || len(y) == 0 {
		return 0
	}
	for _, w := range append(slices.Clone(x), y...) {
		if slices.Contains(distinguishing, w) && slices.Contains(x, w) != slices.Contains(y, w) &&
			hasDistinguishing(x) && hasDistinguishing(y) {
			return 0
		}
	}
	n := 0.0
	rest := slices.Clone(y)
	for _, w := range x {
		if i := slices.Index(rest, w); i >= 0 {
			n++
			rest = slices.Delete(rest, i, i+1)
			continue
		}
		// What people shorten when they type ("clmp", "brkt") is a run of the
		// word's own letters that begins as it does.
		best := -1
		for i, v := range rest {
			short, long := w, v
			if len(short) > len(long) {
				short, long = long, short
			}
			if len(short) >= 3 && short[0] == long[0] && len(long) <= 2*len(short) && len(fuzzy.Find(short, []string{long})) > 0 {
				best = i
				break
			}
		}
		if best >= 0 {
			n += 0.8
			rest = slices.Delete(rest, best, best+1)
		}
	}
	return 2 * n / float64(len(x)+len(y))
}

func hasDistinguishing(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(distinguishing, w) })
}

// sizeEvidence adds to a match whose size was heard of that fastener, and takes
// from one whose size was heard otherwise.
func sizeEvidence(d *Document, row RoundRow, l SheetLine) float64 {
	if l.Size == "" {
		return 0
	}
	heard := false
	for _, s := range d.Record.Sizes {
		if s.Dimension != "thread" || nameScore(s.Of, row.Name) < sureEnough {
			continue
		}
		heard = true
		for _, c := range s.Candidates {
			if strings.EqualFold(c, l.Size) || strings.HasPrefix(strings.ToLower(l.Size), strings.ToLower(c)+"x") {
				return 0.15
			}
		}
	}
	if heard {
		return -0.3
	}
	return 0
}

// Set is what is to be written into one row, or one open question, of a document.
type Set struct {
	Ref            string
	Value, Source  string
	NotWhereFilled bool // leave a row or an answer that has something already
}

// Apply writes values into a document's own places for them and changes nothing
// else. It gives the references it wrote to.
func Apply(src []byte, sets []Set) (out []byte, wrote []string, err error) {
	text, k, err := unseal(src)
	if err != nil {
		return nil, nil, err
	}
	own := parseLines(k.Text)
	keyOwn(own)
	body := parseLines(text)
	if err := keyMine(body, own); err != nil {
		return nil, nil, err
	}
	at := index(body)
	heads := map[string][]string{}
	for _, n := range body {
		if strings.HasPrefix(n.key, "table:") {
			heads[n.key] = cells(n.text)
		}
	}
	for _, s := range sets {
		n := at[s.Ref]
		switch {
		case n == nil:
		case n.row:
			cols, row := heads[n.head], cells(n.text)
			for i, c := range cols {
				for len(row) <= i {
					row = append(row, "")
				}
				switch strings.ToLower(c) {
				case "confirmed":
					if row[i] != "" && s.NotWhereFilled {
						continue
					}
					row[i] = cellText(s.Value)
				case "source":
					row[i] = cellText(s.Source)
				}
			}
			n.raw = []string{writeRow(row, 0, "")}
			wrote = append(wrote, s.Ref)
		default:
			a, b := at[s.Ref+"/"+labelAnswer], at[s.Ref+"/"+labelSource]
			if a == nil || b == nil {
				continue
			}
			if s.NotWhereFilled && !strings.HasSuffix(strings.TrimSpace(a.text), ":") {
				continue
			}
			a.raw = []string{labelled(a.text) + " " + cellText(s.Value)}
			b.raw = []string{labelled(b.text) + " " + cellText(s.Source)}
			wrote = append(wrote, s.Ref)
		}
	}
	if len(wrote) == 0 {
		return src, nil, nil
	}
	out, err = seal(joinLines(body), k)
	return out, wrote, err
}

func labelled(line string) string {
	head, _, _ := strings.Cut(line, ":")
	return head + ":"
}

var cellMarks = strings.NewReplacer(`\`, `\\`, "|", `\|`, "<", `\<`, "&", `\&`, "[", `\[`, "]", `\]`, "\n", " ", "\r", " ")

func cellText(s string) string { return strings.Join(strings.Fields(cellMarks.Replace(s)), " ") }

// Describe says in one line what the sheets have for a row.
func (f Fitting) Describe(sheets []Sheet) string {
	var parts []string
	have := map[int]bool{}
	for _, m := range f.Matches {
		have[m.Sheet] = true
		parts = append(parts, fmt.Sprintf("%s (%q, %s; %s)", m.Line.Value, m.Line.Fastener, m.Sure(), sheets[m.Sheet].From(m.Line)))
	}
	for i, s := range sheets {
		if !have[i] && len(sheets) > 1 {
			parts = append(parts, "absent from "+orElse(s.Title, s.File))
		}
	}
	return strings.Join(parts, "; ")
}
