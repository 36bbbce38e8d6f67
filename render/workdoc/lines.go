package workdoc

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"sync"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"wrenchword/normalize/pattern"
)

// A document is worked on line by line. A line of the tool's own has a key by
// which it is found again: its reference, its item's reference and a label
// ("ask-look-up-axle-nut/answer"), or, for a line that never changes, its text.
// A line with no key is the person's.

var (
	anchorPattern = pattern.Of(`\s*<!--\s*@([\pL\pN.-]+)\s*-->`)
	markerPattern = pattern.Of(`^(\s*)([-*+]|\d{1,9}[.)])(\s+|$)`)
	boxPattern    = pattern.Of(`^\[([ xX])\](\s|$)`)
	labelPattern  = pattern.Of(`^\s*[-*+]\s+([A-Z][A-Za-z ]{2,50}):(?:\s|$)`)
	rulePattern   = pattern.Of(`^\s*\|?\s*:?-+:?\s*(\|\s*:?-+:?\s*)*\|?\s*$`)
)

// node is one line of a document, or an item line with the lines its text was
// wrapped onto.
type node struct {
	raw    []string // the lines as they stand
	text   string   // the same as one line
	key    string   // "" for a line of the person's
	row    bool     // a table's line
	head   string   // for a row: the key of its table's header
	opaque bool     // inside a code block: never the tool's
	folded string   // text as canonical folds it, once asked for
	line   int      // of its first line in the file, from 1
}

func (n *node) canonical() string {
	if n.folded == "" {
		n.folded = canonical(n.text)
	}
	return n.folded
}

func (n *node) blank() bool { return strings.TrimSpace(n.text) == "" }

func (n *node) indent() int { return len(n.text) - len(strings.TrimLeft(n.text, " \t")) }

func (n *node) anchor() string {
	if m := anchorPattern().FindStringSubmatch(n.text); m != nil && !n.opaque {
		return m[1]
	}
	return ""
}

// startsBlock says whether the line begins something of its own, so that it
// does not carry on the paragraph above it.
func (n *node) startsBlock() bool {
	t := strings.TrimSpace(n.text)
	return t == "" || n.row || markerPattern().MatchString(n.text) || strings.HasPrefix(t, "#") ||
		strings.HasPrefix(t, ">") || strings.HasPrefix(t, "```") || strings.HasPrefix(t, "~~~") || n.opaque
}

// blocks finds the blocks of a document and nothing else: what stands inside a
// line is not looked at, which would cost the square of some lines' length.
var blocks = sync.OnceValue(func() parser.Parser {
	return parser.NewParser(parser.WithBlockParsers(parser.DefaultBlockParsers()...))
})

// deepest is how much of the marks of quotes and lists at the start of a line is
// looked at. The parser takes the square of it, and no person nests so deep.
const deepest = 200

// shallow cuts the marks at the start of each line to deepest.
func shallow(lines []string) string {
	var b strings.Builder
	for i, l := range lines {
		if i > 0 {
			b.WriteByte('\n')
		}
		if n := len(l) - len(strings.TrimLeft(l, " \t>-+*.)0123456789")); n > deepest {
			l = l[n-deepest:]
		}
		b.WriteString(l)
	}
	return b.String()
}

// opaqueLines says which lines are a person's code block.
func opaqueLines(lines []string) map[int]bool {
	out := map[int]bool{}
	src := []byte(shallow(lines))
	// The number of the line that holds each offset, found by walking on.
	lineAt, at := 0, 0
	number := func(offset int) int {
		if offset < at {
			lineAt, at = 0, 0
		}
		lineAt += bytes.Count(src[at:offset], []byte{'\n'})
		at = offset
		return lineAt
	}
	_ = ast.Walk(blocks().Parse(text.NewReader(src)), func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering || n.Kind() != ast.KindFencedCodeBlock {
			return ast.WalkContinue, nil
		}
		// A fence that was never closed, or closed far below, swallows lines of
		// the tool's. They are read all the same: nobody meant them as code.
		if n.Lines().Len() == 0 || anchorPattern().Match(src[n.Lines().At(0).Start:n.Lines().At(n.Lines().Len()-1).Stop]) {
			return ast.WalkSkipChildren, nil
		}
		for i := 0; i < n.Lines().Len(); i++ {
			out[number(n.Lines().At(i).Start)] = true
		}
		return ast.WalkSkipChildren, nil
	})
	return out
}

// parseLines cuts a visible text into nodes, without keys.
func parseLines(visible string) []*node {
	lines := strings.Split(strings.TrimRight(strings.Join(splitLines(visible), "\n"), "\n"), "\n")
	opaque := opaqueLines(lines)
	var nodes []*node
	inTable := false
	for i, l := range lines {
		n := &node{raw: []string{l}, text: l, line: i + 1, opaque: opaque[i]}
		n.row = !n.opaque && (strings.HasPrefix(strings.TrimSpace(l), "|") ||
			inTable && strings.Contains(l, "|") && !markerPattern().MatchString(l))
		inTable = n.row
		nodes = append(nodes, n)
	}
	return joinWrapped(nodes)
}

// joinWrapped puts an item line that an editor wrapped back into one node: the
// reference then stands on a line that carries on a paragraph.
func joinWrapped(nodes []*node) []*node {
	var out []*node
	for i := 0; i < len(nodes); i++ {
		n := nodes[i]
		if n.row || n.opaque || !markerPattern().MatchString(n.text) || n.anchor() != "" {
			out = append(out, n)
			continue
		}
		end := i
		joined := n.text
		for j := i + 1; j < len(nodes) && !nodes[j].startsBlock(); j++ {
			joined += " " + strings.TrimSpace(nodes[j].text)
			if anchorPattern().MatchString(joined) {
				end = j
				break
			}
		}
		if end > i {
			w := &node{line: n.line, text: joined}
			for j := i; j <= end; j++ {
				w.raw = append(w.raw, nodes[j].raw...)
			}
			out = append(out, w)
			i = end
			continue
		}
		out = append(out, n)
	}
	return out
}

// canonical folds what an editor may change without meaning anything: blanks,
// bullets, quotes, the case of a tick, a table's padding, the reference.
func canonical(s string) string {
	s = anchorPattern().ReplaceAllString(s, "")
	if m := markerPattern().FindStringSubmatchIndex(s); m != nil {
		s = "- " + s[m[1]:]
	}
	s = foldQuotes.Replace(s)
	s = strings.Join(strings.Fields(s), " ")
	if rest, ok := strings.CutPrefix(s, "- [X]"); ok {
		s = "- [x]" + rest
	}
	if strings.HasPrefix(s, "|") {
		s = "|" + strings.Join(cells(s), "|") + "|"
	}
	return s
}

var foldQuotes = strings.NewReplacer("“", `"`, "”", `"`, "‘", "'", "’", "'", "\u00a0", " ", "–", "-", "—", "-")

// cells cuts a table's line at its unescaped pipes. Its edges are trimmed off.
func cells(row string) []string {
	row = strings.TrimSpace(row)
	row = strings.TrimPrefix(row, "|")
	var out []string
	start := 0
	for i := 0; i < len(row); i++ {
		switch row[i] {
		case '\\':
			i++
		case '|':
			out = append(out, strings.TrimSpace(row[start:i]))
			start = i + 1
		}
	}
	if rest := strings.TrimSpace(row[min(start, len(row)):]); rest != "" {
		out = append(out, rest)
	}
	return out
}

func headerKey(row string) string { return "table:" + strings.ToLower(strings.Join(cells(row), "|")) }

// keyOwn gives every line of a text the tool wrote its key. The keys are distinct.
func keyOwn(nodes []*node) {
	seen := map[string]int{}
	ref, head := "", ""
	for i, n := range nodes {
		if n.blank() {
			continue
		}
		if !n.row {
			head = ""
		}
		switch a := n.anchor(); {
		case a != "":
			ref, n.key, n.head = a, a, head
		case n.row && head == "":
			head = headerKey(n.text)
			n.key = head
		case n.row && rulePattern().MatchString(n.text):
			n.key = head + "/rule"
		case n.indent() > 0 && ref != "" && labelPattern().MatchString(n.text):
			n.key = ref + "/" + label(n.text)
		default:
			n.key = "text:" + n.canonical()
			if strings.HasPrefix(n.text, "#") {
				ref = ""
			}
		}
		seen[n.key]++
		if c := seen[n.key]; c > 1 {
			n.key += "#" + strconv.Itoa(c)
		}
		nodes[i] = n
	}
}

func label(line string) string {
	m := labelPattern().FindStringSubmatch(line)
	if m == nil {
		return ""
	}
	return strings.ToLower(m[1])
}

// keyMine finds the tool's lines again in a text that a person edited. own is
// the text as the tool wrote it. A reference that own does not have, or that
// stands twice, is an error: whose words are whose could not be told.
func keyMine(mine, own []*node) error {
	known := map[string]*node{}
	for _, n := range own {
		if n.key != "" {
			known[n.key] = n
		}
	}
	used := map[string]*node{}
	var faults []error
	take := func(n *node, key string) bool {
		if known[key] == nil || used[key] != nil {
			return false
		}
		used[key], n.key = n, key
		// A line that only looks like a row, or was one, is read as plain text.
		n.row = n.row && known[key].row
		return true
	}
	for _, n := range mine {
		a := n.anchor()
		if a == "" {
			continue
		}
		if prev := used[a]; prev != nil {
			faults = append(faults, fmt.Errorf("line %d: %w: %q stands on line %d too; "+
				"take the comment <!-- @%s --> out of the line that is your own", n.line, ErrReference, a, prev.line, a))
		} else if !take(n, a) {
			faults = append(faults, fmt.Errorf("line %d: %w: there is no item %q; put the comment back as it was, or take it out if the line is your own", n.line, ErrReference, a))
		}
	}
	if len(faults) > 0 {
		return errors.Join(faults...)
	}
	// Lines with a label, under their item.
	ref, depth := "", 0
	for _, n := range mine {
		switch {
		case n.blank() || n.opaque:
		case n.key != "":
			ref, depth = n.key, n.indent()
			if n.row {
				ref = ""
			}
		case strings.HasPrefix(n.text, "#"):
			ref = ""
		case ref != "" && n.indent() > depth && labelPattern().MatchString(n.text):
			take(n, ref+"/"+label(n.text))
		}
	}
	// Lines that never change, in order: by their text, the n-th by its number.
	for _, n := range mine {
		if n.key != "" || n.blank() || n.opaque || n.row {
			continue
		}
		key := "text:" + n.canonical()
		for c := 1; !take(n, numbered(key, c)); c++ {
			if known[numbered(key, c)] == nil {
				break
			}
		}
	}
	keyTables(mine, own, take)
	findLost(mine, own, used, take)
	return nil
}

func numbered(key string, c int) string {
	if c == 1 {
		return key
	}
	return key + "#" + strconv.Itoa(c)
}

// keyTables finds the headers of the tool's tables by the columns they share,
// and tells each row which table it is in.
func keyTables(mine, own []*node, take func(*node, string) bool) {
	for i, n := range mine {
		if !n.row || n.key != "" || i+1 >= len(mine) || !mine[i+1].row || !rulePattern().MatchString(mine[i+1].text) {
			continue
		}
		for _, o := range own {
			if strings.HasPrefix(o.key, "table:") && !strings.HasSuffix(o.key, "/rule") && alike(cells(o.text), cells(n.text)) {
				if take(n, o.key) {
					take(mine[i+1], o.key+"/rule")
					break
				}
			}
		}
	}
	head := ""
	for _, n := range mine {
		switch {
		case !n.row:
			head = ""
		case strings.HasPrefix(n.key, "table:"):
			head = strings.TrimSuffix(n.key, "/rule")
		default:
			n.head = head
		}
	}
}

// alike says whether most of a's cells are among b's.
func alike(a, b []string) bool {
	n := 0
	for _, x := range a {
		for _, y := range b {
			if strings.EqualFold(x, y) {
				n++
				break
			}
		}
	}
	return len(a) > 0 && 3*n >= 2*len(a)
}

// findLost gives an item line whose reference was lost back to its item, where
// its words leave no doubt: three in four of them, and no other item so near.
func findLost(mine, own []*node, used map[string]*node, take func(*node, string) bool) {
	for _, o := range own {
		if o.anchor() == "" || used[o.key] != nil {
			continue
		}
		var best *node
		bestShare, second := 0.0, 0.0
		for _, n := range mine {
			if n.key != "" || n.blank() || n.opaque || n.row != o.row {
				continue
			}
			if s := shared(o.canonical(), n.canonical()); s > bestShare {
				best, bestShare, second = n, s, bestShare
			} else if s > second {
				second = s
			}
		}
		if best != nil && bestShare >= 0.75 && second < bestShare {
			take(best, o.key)
			if o.row {
				best.head = o.head
			}
		}
	}
}

// shared is the part of a's words that b has too.
func shared(a, b string) float64 {
	have := map[string]int{}
	for _, w := range strings.Fields(b) {
		have[w]++
	}
	words := strings.Fields(a)
	if len(words) < 3 {
		return 0
	}
	n := 0
	for _, w := range words {
		if have[w] > 0 {
			have[w]--
			n++
		}
	}
	return float64(n) / float64(len(words))
}
