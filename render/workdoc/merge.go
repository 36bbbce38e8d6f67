package workdoc

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"wrenchword/normalize/pattern"
)

// KeptHeading is the section that takes in what a person wrote on items that
// the record no longer has.
const KeptHeading = "## Kept from an earlier reading"

// MergeReport says what a merge did.
type MergeReport struct {
	Changed bool     // the tool's own text is not what it was
	Added   int      // items that are new
	Gone    int      // items that the record no longer has
	Moved   []string // lines of the person's that went to KeptHeading
	Both    []string // lines that both the person and the tool had changed
}

// Merge puts what changed in the tool's own text, from the one that mine was
// last written with to that of fresh, into mine. Every other byte of mine stays:
// what a person typed, ticked, added, moved or took out. With nothing changed
// the result is mine itself.
//
// A damaged end block does not stop it: then whose words are whose is judged
// line by line against fresh, and what differs is kept as the person's.
func Merge(mine, fresh []byte) ([]byte, MergeReport, error) {
	newText, newKept, err := unseal(fresh)
	if err != nil {
		return nil, MergeReport{}, fmt.Errorf("read the new text: %w", err)
	}
	text, old, err := unseal(mine)
	damaged := errors.Is(err, ErrSeal)
	if err != nil && !damaged {
		return nil, MergeReport{}, err
	}
	if !damaged && old.Text == newKept.Text {
		return mine, MergeReport{}, nil
	}
	own := parseLines(newText)
	keyOwn(own)
	body := parseLines(text)
	var was []*node
	if damaged {
		was = guessOwn(body, own)
	} else {
		was = parseLines(old.Text)
		keyOwn(was)
	}
	if err := keyMine(body, was); err != nil {
		return nil, MergeReport{}, err
	}
	m := &merger{body: body, was: index(was), own: index(own), columns: map[string][]string{}, moved: map[string][]string{}}
	m.report.Changed = true
	m.align(was, own)
	m.update()
	m.insert(own)
	m.keep()
	out, err := seal(joinLines(m.body), newKept)
	if err != nil {
		return nil, MergeReport{}, err
	}
	if strings.Count(string(mine), "\r\n") > strings.Count(string(mine), "\n")/2 {
		out = []byte(strings.ReplaceAll(string(out), "\n", "\r\n"))
	}
	return out, m.report, nil
}

// guessOwn stands in for a lost end block: the items of mine that own has, with
// own's words. What mine says otherwise is then the person's.
func guessOwn(mine, own []*node) []*node {
	here := map[string]bool{}
	for _, n := range mine {
		if a := n.anchor(); a != "" {
			here[a] = true
		}
	}
	var out []*node
	ref := ""
	for _, n := range own {
		if a := n.anchor(); a != "" {
			ref = a
		}
		if item := strings.SplitN(n.key, "/", 2)[0]; n.anchor() == "" && item == ref && !n.row && !here[ref] {
			continue
		}
		if n.anchor() == "" || here[n.anchor()] {
			out = append(out, n)
		}
	}
	for _, n := range mine {
		if a := n.anchor(); a != "" && !slices.ContainsFunc(out, func(o *node) bool { return o.key == a }) {
			out = append(out, &node{raw: n.raw, text: "<!-- @" + a + " -->", key: a, row: n.row})
		}
	}
	return out
}

func index(nodes []*node) map[string]*node {
	out := map[string]*node{}
	for _, n := range nodes {
		if n.key != "" {
			out[n.key] = n
		}
	}
	return out
}

func joinLines(nodes []*node) string {
	var b strings.Builder
	for _, n := range nodes {
		for _, l := range n.raw {
			b.WriteString(l)
			b.WriteByte('\n')
		}
	}
	return b.String()
}

type merger struct {
	body     []*node // the person's text, being changed
	was, own map[string]*node
	columns  map[string][]string // of mine's tables, by header key
	moved    map[string][]string // items that update took out, as they are to be put in again
	lost     []string            // for KeptHeading
	report   MergeReport
}

// items are the kinds of reference that may follow a corrected word.
var items = []string{refTool, refPart, refConsumable, refSize, refTorque, refLedger, refStep, refOpen, refCaution, "round"}

// align lets an item keep its line when a corrected word changed its reference:
// an item of the same kind was said at the same time, in nearly the same words.
// A word that tells one thing from another (a side, a number) must be the same,
// or a tick would come to stand on what was never ticked.
func (m *merger) align(was, own []*node) {
	kind := func(key string) string { k, _, _ := strings.Cut(key, "-"); return k }
	free := map[string]*node{}
	said := map[string][]*node{} // the free ones by when they were said
	for _, n := range own {
		if n.anchor() != "" && m.was[n.key] == nil && slices.Contains(items, kind(n.key)) {
			free[n.key] = n
			if at := clockPattern().FindString(n.text); at != "" {
				said[at] = append(said[at], n)
			}
		}
	}
	rename := map[string]string{}
	for _, o := range was {
		if o.anchor() == "" || m.own[o.key] != nil {
			continue
		}
		best, bestShare := "", 0.0
		for _, n := range said[clockPattern().FindString(o.text)] {
			if free[n.key] == nil || kind(n.key) != kind(o.key) || n.row != o.row {
				continue
			}
			a, b := partLine(o.text).body, partLine(n.text).body
			if s := max(shared(a, b), shared(b, a)); s > bestShare && !tellsApart(a, b) {
				best, bestShare = n.key, s
			}
		}
		if bestShare >= 0.6 {
			rename[o.key] = best
			delete(free, best)
		}
	}
	if len(rename) == 0 {
		return
	}
	to := func(key string) string {
		ref, rest, cut := strings.Cut(key, "/")
		if r, ok := rename[ref]; ok && cut {
			return r + "/" + rest
		} else if ok {
			return r
		}
		return key
	}
	for _, n := range append(slices.Clone(was), m.body...) {
		n.key = to(n.key)
	}
	m.was = index(was)
}

var clockPattern = pattern.Of(`(?:clip \d+, )?≈?\d+(?::\d\d)+`)

// distinguishing are words that make two like-named things different ones.
var distinguishing = strings.Fields("left right front rear back upper lower top bottom inner outer inside outside first second third other big small long short")

// tellsApart says whether a distinguishing word or a figure is in one text only.
func tellsApart(a, b string) bool {
	in := func(s string) map[string]bool {
		out := map[string]bool{}
		for i, w := range strings.Fields(strings.ToLower(s)) {
			w = strings.Trim(w, ".,;:()[]")
			number := i == 0 && strings.Trim(w, "0123456789") == "" // a step's own
			if !number && (slices.Contains(distinguishing, w) || strings.ContainsAny(w, "0123456789")) {
				out[w] = true
			}
		}
		return out
	}
	x, y := in(a), in(b)
	for w := range x {
		if !y[w] {
			return true
		}
	}
	for w := range y {
		if !x[w] {
			return true
		}
	}
	return false
}

// update writes the tool's changes into the lines that are there, and takes out
// those of items that are gone.
func (m *merger) update() {
	for _, n := range m.body {
		if strings.HasPrefix(n.key, "table:") && !strings.HasSuffix(n.key, "/rule") {
			m.columns[n.key] = cells(n.text)
		}
	}
	shifted := m.movedItems()
	var out []*node
	for i := 0; i < len(m.body); {
		n := m.body[i]
		end := m.extent(i)
		o, b := m.own[n.key], m.was[n.key]
		switch {
		case n.key == "":
			out = append(out, n)
			i++
		case o == nil && strings.Contains(n.key, "/") && !n.row && n.canonical() != b.canonical():
			// The tool no longer writes this line, but its item stands: so do the words in it.
			out = append(out, &node{raw: n.raw, text: n.text})
			i++
		case o == nil && strings.Contains(n.key, "/") && !n.row:
			i++
		case o == nil:
			m.report.Gone++
			m.drop(m.body[i:end])
			out = closeGap(out, m.body, end)
			i = end
		case shifted[n.key]:
			// It is put in again where it now belongs, with what hangs on it.
			lines := m.changed(b, n, o)
			for _, sub := range m.body[i+1 : end] {
				switch so, sb := m.own[sub.key], m.was[sub.key]; {
				case sub.key == "":
					lines = append(lines, sub.raw...)
				case so != nil:
					lines = append(lines, m.changed(sb, sub, so)...)
				case sub.canonical() != sb.canonical():
					lines = append(lines, sub.raw...)
				}
			}
			m.moved[n.key] = lines
			out = closeGap(out, m.body, end)
			i = end
		default:
			lines := m.changed(b, n, o)
			out = append(out, &node{raw: lines, text: n.text, key: n.key, row: n.row, head: n.head})
			i++
		}
	}
	m.body = out
}

// closeGap drops one of two blank lines that come together when a line between is taken out.
func closeGap(out, rest []*node, end int) []*node {
	if len(out) > 0 && out[len(out)-1].blank() && (end >= len(rest) || rest[end].blank()) {
		return out[:len(out)-1]
	}
	return out
}

// extent gives the end of what hangs on the line at i: the lines under a list
// item, or a paragraph carried on. Fixed lines and rows stand alone.
func (m *merger) extent(i int) int { return extent(m.body, i) }

func extent(nodes []*node, i int) int {
	n := nodes[i]
	if n.row || n.key == "" || strings.HasPrefix(n.key, "text:") || !markerPattern().MatchString(n.text) {
		return i + 1
	}
	end := i + 1
	depth := n.indent()
	blank := false
	for j := i + 1; j < len(nodes); j++ {
		c := nodes[j]
		if c.blank() && !c.opaque {
			blank = true
			continue
		}
		// A label of the same item is never the start of another.
		nested := c.indent() > depth || !blank && !c.startsBlock()
		if !nested || strings.Contains(n.key, "/") && c.key != "" || c.anchor() != "" {
			break
		}
		end, blank = j+1, false
	}
	return end
}

// movedItems are the items that the tool itself put in another order.
func (m *merger) movedItems() map[string]bool {
	at := map[string]int{}
	k := 0
	for _, key := range orderOf(m.was) {
		if m.own[key] != nil {
			at[key] = k
			k++
		}
	}
	var seq []int
	var keys []string
	for _, key := range orderOf(m.own) {
		if p, ok := at[key]; ok {
			seq, keys = append(seq, p), append(keys, key)
		}
	}
	stay := longestRising(seq)
	moved := map[string]bool{}
	for i, key := range keys {
		if !stay[i] && m.own[key].anchor() != "" {
			moved[key] = true
		}
	}
	return moved
}

func orderOf(nodes map[string]*node) []string {
	keys := make([]string, 0, len(nodes))
	for k, n := range nodes {
		if n.anchor() != "" {
			keys = append(keys, k)
		}
	}
	slices.SortFunc(keys, func(a, b string) int { return nodes[a].line - nodes[b].line })
	return keys
}

// longestRising marks the members of a longest rising run of seq.
func longestRising(seq []int) []bool {
	prev := make([]int, len(seq))
	var tails []int
	for i, v := range seq {
		j, _ := slices.BinarySearchFunc(tails, v, func(t, v int) int { return seq[t] - v })
		prev[i] = -1
		if j > 0 {
			prev[i] = tails[j-1]
		}
		if j == len(tails) {
			tails = append(tails, i)
		} else {
			tails[j] = i
		}
	}
	stay := make([]bool, len(seq))
	if len(tails) > 0 {
		for i := tails[len(tails)-1]; i >= 0; i = prev[i] {
			stay[i] = true
		}
	}
	return stay
}

// changed gives the lines for one line of mine: b as the tool wrote it, n as it
// stands, o as the tool writes it now.
func (m *merger) changed(b, n, o *node) []string {
	if n.row && b.row && o.row {
		return m.changedRow(b, n, o)
	}
	was, is, now := b.canonical(), n.canonical(), o.canonical()
	switch {
	case was == now && b.anchor() == o.anchor():
		return n.raw
	case was == is:
		return []string{o.text}
	}
	wb, ib, ob := partLine(b.text), partLine(n.text), partLine(o.text)
	if ib.box != wb.box && ob.box != "" {
		ob.box = ib.box
	}
	wt, it := strings.Fields(wb.body), strings.Fields(ib.body)
	switch {
	case foldWords(wt) == foldWords(it):
	case foldWords(wt) == foldWords(strings.Fields(ob.body)):
		ob.body = ib.body
	case len(it) > len(wt) && foldWords(it[:len(wt)]) == foldWords(wt):
		ob.body += " " + strings.Join(it[len(wt):], " ")
	case len(it) > len(wt) && foldWords(it[len(it)-len(wt):]) == foldWords(wt) && !strings.HasPrefix(o.text, "#"):
		ob.body = strings.Join(it[:len(it)-len(wt)], " ") + " " + ob.body
	default:
		m.report.Both = append(m.report.Both, fmt.Sprintf("line %d: %s", n.line, strings.TrimSpace(ib.body)))
		yours := strings.TrimSpace(ib.body)
		if markerPattern().MatchString(o.text) {
			return []string{ob.String(), ob.indent + "  - Your words: " + yours}
		}
		return []string{ob.String(), "", "Your words: " + strings.TrimLeft(yours, "#> ")}
	}
	if ib.box != "" && ib.box != wb.box && ob.box == "" {
		return []string{ob.String(), ob.indent + "  - Ticked by you: [" + ib.box + "]"}
	}
	return []string{ob.String()}
}

func foldWords(words []string) string { return foldQuotes.Replace(strings.Join(words, " ")) }

// parts of an item line.
type parts struct {
	indent, marker string
	box            string // " ", "x", or "" where there is none
	body           string
	anchor         string
}

func partLine(s string) parts {
	var p parts
	if m := anchorPattern().FindStringSubmatch(s); m != nil {
		p.anchor = m[1]
		s = anchorPattern().ReplaceAllString(s, " ")
	}
	p.indent = s[:len(s)-len(strings.TrimLeft(s, " \t"))]
	if m := markerPattern().FindStringSubmatchIndex(s); m != nil {
		p.marker = s[m[4]:m[5]]
		s = s[m[1]:]
	}
	s = strings.TrimSpace(s)
	if m := boxPattern().FindStringSubmatch(s); m != nil {
		p.box = strings.ToLower(m[1])
		s = s[len(m[0]):]
	}
	p.body = strings.TrimSpace(s)
	return p
}

func (p parts) String() string {
	s := p.indent
	if p.marker != "" {
		s += p.marker + " "
	}
	if p.box != "" {
		s += "[" + p.box + "] "
	}
	s += p.body
	if p.anchor != "" {
		s += " <!-- @" + p.anchor + " -->"
	}
	return s
}

// changedRow is changed for a table's line, cell by cell under mine's columns.
func (m *merger) changedRow(b, n, o *node) []string {
	if b.canonical() == o.canonical() && b.anchor() == o.anchor() {
		return n.raw
	}
	if strings.HasPrefix(n.key, "table:") {
		return n.raw // a column of the tool's stays as the person has it
	}
	wasHead, nowHead := headOf(m.was, b), headOf(m.own, o)
	cols := m.columns[n.head]
	if cols == nil {
		cols = wasHead
	}
	was, now := byColumn(wasHead, cells(stripRefs(b.text))), byColumn(nowHead, cells(stripRefs(o.text)))
	is := cells(stripRefs(n.text))
	var out []string
	for i := 0; i < max(len(cols), len(is)); i++ {
		cell := ""
		if i < len(is) {
			cell = is[i]
		}
		if i < len(cols) {
			w, known := was[strings.ToLower(cols[i])]
			v, still := now[strings.ToLower(cols[i])]
			if known && still {
				cell = m.changedCell(w, cell, v, n.line)
			}
		}
		out = append(out, cell)
	}
	return []string{writeRow(out, refColumn(cols, nowHead), o.anchor())}
}

// headOf gives the columns of the table that one of the tool's own rows is in.
func headOf(nodes map[string]*node, row *node) []string {
	if h := nodes[row.head]; h != nil {
		return cells(h.text)
	}
	return nil
}

func (m *merger) changedCell(was, is, now string, line int) string {
	fw, fi, fn := foldWords(strings.Fields(was)), foldWords(strings.Fields(is)), foldWords(strings.Fields(now))
	switch {
	case fw == fi:
		return now
	case fw == fn:
		return is
	case fw != "" && strings.HasPrefix(fi, fw+" "):
		return now + " " + strings.Join(strings.Fields(is)[len(strings.Fields(was)):], " ")
	}
	if fi == "" {
		return now
	}
	m.report.Both = append(m.report.Both, fmt.Sprintf("line %d: %s", line, is))
	return strings.TrimSpace(now + " (your words: " + is + ")")
}

func byColumn(head, row []string) map[string]string {
	out := map[string]string{}
	for i, h := range head {
		out[strings.ToLower(h)] = ""
		if i < len(row) {
			out[strings.ToLower(h)] = row[i]
		}
	}
	return out
}

// refColumn is where a row's reference stands: in the tool's first column,
// wherever the person has moved it.
func refColumn(cols, own []string) int {
	for i, c := range cols {
		if len(own) > 0 && strings.EqualFold(c, own[0]) {
			return i
		}
	}
	return 0
}

func writeRow(row []string, refAt int, ref string) string {
	var b strings.Builder
	for i, c := range row {
		if i == refAt && ref != "" {
			c = strings.TrimSpace(c + " <!-- @" + ref + " -->")
		}
		b.WriteString("| " + c + " ")
	}
	return b.String() + "|"
}

func stripRefs(s string) string { return anchorPattern().ReplaceAllString(s, "") }

func strip(raw []string) []string {
	out := make([]string, len(raw))
	for i, l := range raw {
		out[i] = stripRefs(l)
	}
	return out
}

// drop takes an item out that the record no longer has. What the person did to
// it, and what they wrote under it, is kept.
func (m *merger) drop(nodes []*node) {
	n := nodes[0]
	b := m.was[n.key]
	touched := b.canonical() != n.canonical() && !strings.HasSuffix(n.key, "/rule")
	for _, sub := range nodes[1:] {
		if sub.blank() {
			continue
		}
		touched = touched || sub.key == "" || m.was[sub.key] == nil || sub.canonical() != m.was[sub.key].canonical()
	}
	if !touched {
		return
	}
	first := stripRefs(strings.Join(n.raw, " "))
	if n.row {
		cols := m.columns[n.head]
		var said []string
		for i, c := range cells(first) {
			if c == "" || c == "[ ]" {
				continue
			}
			if i < len(cols) {
				c = cols[i] + ": " + c
			}
			said = append(said, c)
		}
		first = strings.Join(said, "; ")
	} else {
		p := partLine(first)
		first = p.body
		if p.box != "" {
			first = "[" + p.box + "] " + first
		}
	}
	m.lost = append(m.lost, "- "+first)
	m.report.Moved = append(m.report.Moved, fmt.Sprintf("line %d: %s", n.line, first))
	for _, sub := range nodes[1:] {
		for _, l := range strip(sub.raw) {
			if strings.TrimSpace(l) != "" && !strings.HasPrefix(l, " ") && !strings.HasPrefix(l, "\t") {
				l = "  " + l
			}
			m.lost = append(m.lost, l)
		}
	}
}

// insert puts the tool's new lines after those that come before them in its own text.
func (m *merger) insert(own []*node) {
	at := map[string]int{} // where a key stands in body
	reindex := func(from int) {
		for i, n := range m.body[from:] {
			if n.key != "" {
				at[n.key] = from + i
			}
		}
	}
	reindex(0)
	put := func(i int) {
		o := own[i]
		gap := i > 0 && own[i-1].blank()
		pos := 0
		for p := i - 1; p >= 0; p-- {
			k, ok := at[own[p].key]
			if own[p].key == "" || !ok {
				continue
			}
			item, _, isLabel := strings.Cut(own[p].key, "/")
			top, here := at[item]
			switch {
			case strings.HasPrefix(o.key, own[p].key+"/"):
				pos = k + 1 // a label right under its own item
			case isLabel && here && !own[p].row && !strings.HasPrefix(o.key, item+"/"):
				pos = max(extent(m.body, top), extent(m.body, k)) // after all that hangs on the item before
			default:
				pos = extent(m.body, k)
			}
			break
		}
		n := &node{raw: o.raw, text: o.text, key: o.key, row: o.row, head: o.head}
		if lines, ok := m.moved[o.key]; ok {
			n.raw = lines
		} else if o.row && o.anchor() != "" {
			n.raw = []string{m.rowFor(o)}
		}
		add := []*node{n}
		if gap && pos < len(m.body) && m.body[pos].blank() {
			pos++
		} else if pos > 0 && !m.body[pos-1].blank() && (gap || !sameBlock(m.body[pos-1], n)) {
			add = []*node{{raw: []string{""}}, n}
		}
		if pos < len(m.body) && !m.body[pos].blank() && !sameBlock(n, m.body[pos]) {
			add = append(add, &node{raw: []string{""}})
		}
		m.body = slices.Insert(m.body, pos, add...)
		reindex(pos)
	}
	for i, o := range own {
		if _, here := at[o.key]; here || o.key == "" {
			continue
		}
		if _, shifted := m.moved[o.key]; m.was[o.key] != nil && !shifted {
			continue // the person took it out
		}
		if m.was[o.key] == nil && o.anchor() != "" {
			m.report.Added++
		}
		m.ensureAbove(own, i, at, put)
		put(i)
	}
}

// ensureAbove brings back a heading or a table's head that the person took out,
// where a new line would otherwise stand under the wrong one.
func (m *merger) ensureAbove(own []*node, i int, at map[string]int, put func(int)) {
	for p := i - 1; p >= 0; p-- {
		if _, here := at[own[p].key]; here && own[p].key != "" && own[p].row == own[i].row {
			return // a neighbour is there: it stands where it belongs
		}
		if strings.HasPrefix(own[p].text, "## ") {
			break
		}
	}
	section := -1
	for p := i - 1; p >= 0 && section < 0; p-- {
		if strings.HasPrefix(own[p].text, "## ") {
			section = p
		}
	}
	for p := max(section, 0); p < i; p++ {
		_, here := at[own[p].key]
		above := p == section || own[i].row && (own[p].key == own[i].head || own[p].key == own[i].head+"/rule")
		if above && !here && own[p].key != "" {
			put(p)
		}
	}
}

// sameBlock says whether b may follow a with no blank line between: rows of one
// table, items of one list, lines of one quotation or paragraph.
func sameBlock(a, b *node) bool {
	if a.row || b.row {
		return a.row && b.row
	}
	item := func(n *node) bool { return markerPattern().MatchString(n.text) || n.indent() > 0 }
	quote := func(n *node) bool { return strings.HasPrefix(n.text, ">") }
	heading := func(n *node) bool { return strings.HasPrefix(n.text, "#") }
	return !heading(a) && !heading(b) && item(a) == item(b) && quote(a) == quote(b)
}

// rowFor writes a new row under the columns that the person's table has.
func (m *merger) rowFor(o *node) string {
	cols := m.columns[o.head]
	if cols == nil {
		return o.raw[0]
	}
	now := byColumn(headOf(m.own, o), cells(stripRefs(o.text)))
	row := make([]string, len(cols))
	for i, c := range cols {
		row[i] = now[strings.ToLower(c)]
	}
	return writeRow(row, refColumn(cols, headOf(m.own, o)), o.anchor())
}

// keep writes what could not be placed under its own heading.
func (m *merger) keep() {
	if len(m.lost) == 0 {
		return
	}
	var lines []*node
	for _, l := range m.lost {
		lines = append(lines, &node{raw: []string{l}, text: l})
	}
	for i, n := range m.body {
		if n.canonical() == canonical(KeptHeading) {
			end := i + 1
			for end < len(m.body) && !strings.HasPrefix(m.body[end].text, "#") {
				end++
			}
			for end > i+1 && m.body[end-1].blank() {
				end--
			}
			if end == i+1 {
				lines = append([]*node{{raw: []string{""}}}, lines...)
			}
			m.body = slices.Insert(m.body, end, lines...)
			return
		}
	}
	pos := len(m.body)
	for i, n := range m.body {
		if n.key == "text:## Revisions" {
			pos = i
		}
	}
	section := []*node{{raw: []string{KeptHeading}, text: KeptHeading}, {raw: []string{""}}}
	if pos > 0 && !m.body[pos-1].blank() {
		section = append([]*node{{raw: []string{""}}}, section...)
	}
	section = append(append(section, lines...), &node{raw: []string{""}})
	m.body = slices.Insert(m.body, pos, section...)
}
