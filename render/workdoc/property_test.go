package workdoc_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"
	"wrenchword/extract"
	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
	"wrenchword/render/workdoc"
)

// sharedDir finds the folder of outside data: WRENCHWORD_SHARED, or one named
// "shared" beside the project. It is "" where there is none.
func sharedDir() string {
	if dir := os.Getenv("WRENCHWORD_SHARED"); dir != "" {
		return dir
	}
	dir, err := os.Getwd()
	for err == nil {
		if _, err := os.Stat(filepath.Join(dir, "shared", "CONTRACT.md")); err == nil {
			return filepath.Join(dir, "shared")
		}
		if filepath.Dir(dir) == dir {
			break
		}
		dir = filepath.Dir(dir)
	}
	return ""
}

// clips reads the demo transcripts, and those of the shared corpus where it is at hand.
var clips = sync.OnceValues(func() ([]*transcript.Clip, error) {
	names, err := filepath.Glob("../../testdata/*.*t")
	if err != nil {
		return nil, err
	}
	if dir := sharedDir(); dir != "" {
		more, err := filepath.Glob(filepath.Join(dir, "corpus", "*"))
		if err != nil {
			return nil, err
		}
		names = append(names, slices.DeleteFunc(more, func(n string) bool { return strings.HasSuffix(n, ".gold.json") })...)
	}
	var out []*transcript.Clip
	for _, n := range names {
		data, err := os.ReadFile(n)
		if err != nil {
			return nil, err
		}
		c, err := transcript.Read(filepath.Base(n), data, transcript.Options{})
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
})

func recordOf(cues []transcript.Cue, of *transcript.Clip) *extract.Record {
	c := *of
	c.Cues = cues
	return extract.Extract(transcript.Join(&c), lexicon.Default(), extract.Job{Title: "A job"})
}

// drawn keeps the documents of whole and cut transcripts, which many cases share.
var drawn = map[string][]byte{}

func documentOf(t *rapid.T, cues []transcript.Cue, of *transcript.Clip) []byte {
	if &cues[0] != &of.Cues[0] { // corrected: of this case only
		return draw(t, recordOf(cues, of))
	}
	key := fmt.Sprintf("%s %d", of.Name, len(cues))
	if drawn[key] == nil {
		drawn[key] = draw(t, recordOf(cues, of))
	}
	return drawn[key]
}

var refPattern = regexp.MustCompile(`<!-- @(\S+) -->`)

// span of one item in a text, as plainly as can be told: its line and the
// indented lines that follow, up to the next reference.
func itemAt(lines []string, i int) (end int) {
	if strings.HasPrefix(lines[i], "|") {
		return i + 1
	}
	end = i + 1
	for j := i + 1; j < len(lines); j++ {
		l := lines[j]
		if refPattern.MatchString(l) || strings.TrimSpace(l) != "" && !strings.HasPrefix(l, " ") {
			break
		}
		if strings.TrimSpace(l) != "" {
			end = j + 1
		}
	}
	return end
}

// editor makes a person's edits to a document.
type editor struct {
	t     *rapid.T
	lines []string
	below string // what is typed after the end block
	seal  []string
	n     int
	log   []string
}

func (e *editor) pick(name string, n int) int { return rapid.IntRange(0, n-1).Draw(e.t, name) }

func (e *editor) word() string {
	e.n++
	return fmt.Sprintf("mine%03dx", e.n)
}

// items gives the lines of items of the work, not those of the head and the frame.
func (e *editor) items(ok func(line, ref string) bool) []int {
	var out []int
	for i, l := range e.lines {
		if m := refPattern.FindStringSubmatch(l); m != nil && ok(l, m[1]) {
			out = append(out, i)
		}
	}
	return out
}

func isItem(line, ref string) bool {
	return strings.HasPrefix(line, "- ") || strings.HasPrefix(line, "|")
}
func isBox(line, ref string) bool  { return strings.HasPrefix(line, "- [ ]") }
func isList(line, ref string) bool { return strings.HasPrefix(line, "- ") }
func isRow(line, ref string) bool {
	return strings.HasPrefix(line, "|") && (strings.HasPrefix(ref, "torque-") || strings.HasPrefix(ref, "round-"))
}

func (e *editor) insert(at int, lines ...string) { e.lines = slices.Insert(e.lines, at, lines...) }

// edits are the kinds of edit a person makes, one function each.
var edits = []struct {
	name string
	do   func(e *editor)
}{
	{"tick a box", func(e *editor) {
		if at := e.items(isBox); len(at) > 0 {
			i := at[e.pick("line", len(at))]
			e.lines[i] = strings.Replace(e.lines[i], "- [ ]", rapid.SampledFrom([]string{"- [x]", "- [X]"}).Draw(e.t, "tick"), 1)
		}
	}},
	{"fill a row", func(e *editor) {
		if at := e.items(isRow); len(at) > 0 {
			i := at[e.pick("line", len(at))]
			what := rapid.SampledFrom([]string{"50 N·m " + e.word(), "40-45 lbf·ft " + e.word(), "n/a, replaced by " + e.word(), e.word() + ` a\|b`}).Draw(e.t, "cell")
			e.lines[i] = strings.Replace(e.lines[i], "|  |  | [ ] |", "| "+what+" | manual "+e.word()+" | [x] "+e.word()+" |", 1)
		}
	}},
	{"answer", func(e *editor) {
		var at []int
		for i, l := range e.lines {
			if l == "  - Answer:" || l == "  - Source:" {
				at = append(at, i)
			}
		}
		if len(at) > 0 {
			i := at[e.pick("line", len(at))]
			e.lines[i] += " " + e.word() + " it is"
			if rapid.Bool().Draw(e.t, "more") {
				e.insert(i+1, "    and "+e.word())
			}
		}
	}},
	{"note under an item", func(e *editor) {
		if at := e.items(isList); len(at) > 0 {
			i := at[e.pick("line", len(at))]
			end := i + 1
			if rapid.Bool().Draw(e.t, "below") {
				end = itemAt(e.lines, i)
			}
			e.insert(end, rapid.SampledFrom([]string{"  - ", "  ", "  - [x] ", "  1. ", "  > "}).Draw(e.t, "form")+"note "+e.word())
		}
	}},
	{"add to an item's line", func(e *editor) {
		if at := e.items(isList); len(at) > 0 {
			i := at[e.pick("line", len(at))]
			e.lines[i] = strings.Replace(e.lines[i], " <!--", " also "+e.word()+" <!--", 1)
		}
	}},
	{"change a word of an item's line", func(e *editor) {
		if at := e.items(isList); len(at) > 0 {
			i := at[e.pick("line", len(at))]
			w := strings.Fields(e.lines[i])
			if len(w) > 6 {
				w[4] = e.word()
				e.lines[i] = strings.Join(w, " ")
			}
		}
	}},
	{"change a cell of the tool's", func(e *editor) {
		if at := e.items(func(l, _ string) bool { return strings.HasPrefix(l, "|") }); len(at) > 0 {
			i := at[e.pick("line", len(at))]
			e.lines[i] = strings.Replace(e.lines[i], " <!--", " "+e.word()+" <!--", 1)
		}
	}},
	{"fill the head", func(e *editor) {
		if at := e.items(func(_, ref string) bool { return strings.HasPrefix(ref, "job-") }); len(at) > 0 {
			i := at[e.pick("line", len(at))]
			e.lines[i] = strings.Replace(e.lines[i], " <!--", " "+e.word()+" <!--", 1)
		}
	}},
	{"a section of one's own", func(e *editor) {
		var at []int
		for i, l := range e.lines {
			if strings.HasPrefix(l, "## ") {
				at = append(at, i)
			}
		}
		e.insert(at[e.pick("line", len(at))], "## About "+e.word(), "", "Text "+e.word()+" here.", "", "- [x] "+e.word(), "")
	}},
	{"a paragraph anywhere", func(e *editor) {
		var at []int
		for i, l := range e.lines {
			if l == "" {
				at = append(at, i)
			}
		}
		e.insert(at[e.pick("line", len(at))], "", "Remark "+e.word()+".", "")
	}},
	{"a code block", func(e *editor) {
		var at []int
		for i, l := range e.lines {
			if l == "" {
				at = append(at, i)
			}
		}
		e.insert(at[e.pick("line", len(at))], "", "```", "# "+e.word(), "- [ ] 1. "+e.word(), "| a | "+e.word()+" |", "```", "")
	}},
	{"a row of one's own", func(e *editor) {
		if at := e.items(isRow); len(at) > 0 {
			e.insert(at[e.pick("line", len(at))]+1, "| "+e.word()+" | 2 |  |  |  |  |  |  | "+e.word()+" | mine | x |")
		}
	}},
	{"a column of one's own", func(e *editor) {
		for i, l := range e.lines {
			switch {
			case !strings.HasPrefix(l, "| ") || strings.Contains(l, "mine00") && !refPattern.MatchString(l):
			case strings.HasPrefix(l, "| Fastener"):
				e.lines[i] += " By " + e.word() + " |"
			case strings.HasPrefix(l, "| ---") && strings.HasPrefix(e.lines[i-1], "| Fastener"):
				e.lines[i] += " --- |"
			case isRow(l, append(refPattern.FindStringSubmatch(l), "", "")[1]):
				e.lines[i] += " " + e.word() + " |"
			}
		}
	}},
	{"an item of one's own", func(e *editor) {
		if at := e.items(isBox); len(at) > 0 {
			i := at[e.pick("line", len(at))]
			e.insert(itemAt(e.lines, i), "- [x] own "+e.word())
		}
	}},
	{"two items change places", func(e *editor) {
		if at := e.items(isBox); len(at) > 1 {
			k := e.pick("line", len(at)-1)
			i, j := at[k], at[k+1]
			ie, je := itemAt(e.lines, i), itemAt(e.lines, j)
			if ie == j {
				moved := append(slices.Clone(e.lines[j:je]), e.lines[i:ie]...)
				copy(e.lines[i:je], moved)
			}
		}
	}},
	{"an item is taken out", func(e *editor) {
		if at := e.items(isItem); len(at) > 0 {
			i := at[e.pick("line", len(at))]
			e.lines = slices.Delete(e.lines, i, itemAt(e.lines, i))
		}
	}},
	{"a due and a claim", func(e *editor) {
		for i, l := range e.lines {
			if strings.HasPrefix(l, "## Usual checks") {
				e.insert(i, "- [ ] look at "+e.word()+", due: 2026-05-01", "- claim: "+e.word()+"; by: a reader", "")
				return
			}
		}
	}},
	{"a reference is lost", func(e *editor) {
		if at := e.items(isBox); len(at) > 0 {
			i := at[e.pick("line", len(at))]
			e.lines[i] = refPattern.ReplaceAllString(e.lines[i], "")
		}
	}},
	{"a heading is taken out", func(e *editor) {
		var at []int
		for i, l := range e.lines {
			if strings.HasPrefix(l, "#") && i > 0 {
				at = append(at, i)
			}
		}
		i := at[e.pick("line", len(at))]
		e.lines = slices.Delete(e.lines, i, i+1)
	}},
	{"a heading is changed", func(e *editor) {
		var at []int
		for i, l := range e.lines {
			if strings.HasPrefix(l, "#") {
				at = append(at, i)
			}
		}
		i := at[e.pick("line", len(at))]
		e.lines[i] = strings.Replace(e.lines[i], " ", " "+e.word()+" ", 1)
	}},
	{"a table's head is taken out", func(e *editor) {
		for i, l := range e.lines {
			if strings.HasPrefix(l, "| Item") {
				e.lines = slices.Delete(e.lines, i, i+2)
				return
			}
		}
	}},
	{"a pipe too many", func(e *editor) {
		if at := e.items(isRow); len(at) > 0 {
			i := at[e.pick("line", len(at))]
			e.lines[i] = strings.Replace(e.lines[i], " |  |", " | "+e.word()+" | "+e.word()+" |", 1)
		}
	}},
	{"a tick nobody knows", func(e *editor) {
		if at := e.items(isBox); len(at) > 0 {
			i := at[e.pick("line", len(at))]
			e.lines[i] = strings.Replace(e.lines[i], "- [ ]", "- [✓] "+e.word(), 1)
		}
	}},
	{"a section is moved", func(e *editor) {
		var at []int
		for i, l := range e.lines {
			if strings.HasPrefix(l, "## ") {
				at = append(at, i)
			}
		}
		if len(at) > 2 {
			k := e.pick("line", len(at)-2)
			moved := append(slices.Clone(e.lines[at[k+1]:at[k+2]]), e.lines[at[k]:at[k+1]]...)
			copy(e.lines[at[k]:at[k+2]], moved)
		}
	}},
	{"a code block that is not closed", func(e *editor) {
		if e.pick("rare", 4) == 0 {
			var at []int
			for i, l := range e.lines {
				if l == "" {
					at = append(at, i)
				}
			}
			e.insert(at[e.pick("line", len(at))], "", "```", e.word())
		}
	}},
	{"words inside the end block", func(e *editor) {
		at := 1 + e.pick("line", len(e.seal)-1)
		e.seal = slices.Insert(slices.Clone(e.seal), at, rapid.SampledFrom([]string{"%s", "see %s", "# %s!", "%s="}).Draw(e.t, "form"))
		e.seal[at] = fmt.Sprintf(e.seal[at], e.word())
	}},
	{"words below the end block", func(e *editor) { e.below += "The end " + e.word() + ".\n" }},
}

// habits are what an editor program does to a whole file.
var habits = []struct {
	name string
	do   func(lines []string) []string
}{
	{"line ends of two bytes", func(l []string) []string {
		for i := range l {
			l[i] += "\r"
		}
		return l
	}},
	{"blanks at line ends", func(l []string) []string {
		for i := range l {
			if i%3 == 0 {
				l[i] += "  "
			}
		}
		return l
	}},
	{"other bullets", func(l []string) []string {
		for i := range l {
			if strings.HasPrefix(l[i], "- ") {
				l[i] = "*" + l[i][1:]
			}
		}
		return l
	}},
	{"padded tables", func(l []string) []string {
		for i := range l {
			if strings.HasPrefix(l[i], "| ") {
				l[i] = strings.ReplaceAll(l[i], " | ", "    |  ")
			}
		}
		return l
	}},
	{"other quotes", func(l []string) []string {
		r := strings.NewReplacer("“", `"`, "”", `"`, "'", "’")
		for i := range l {
			l[i] = r.Replace(l[i])
		}
		return l
	}},
	{"wrapped lines", func(l []string) []string {
		var out []string
		for _, s := range l {
			if strings.HasPrefix(s, "- ") && len(s) > 80 {
				if cut := strings.LastIndexByte(s[:80], ' '); cut > 10 {
					out = append(out, s[:cut], "  "+s[cut+1:])
					continue
				}
			}
			out = append(out, s)
		}
		return out
	}},
}

func visibleLines(doc []byte) []string {
	return strings.Split(string(workdoc.Visible(doc)), "\n")
}

var wordPattern = regexp.MustCompile(`mine\d{3}x`)

// owners tells on which item each word of the person's and each tick stands.
func owners(lines []string) (word map[string]string, ticked map[string]bool) {
	word, ticked = map[string]string{}, map[string]bool{}
	claim := func(text, ref string) {
		for _, w := range wordPattern.FindAllString(text, -1) {
			if word[w] == "" {
				word[w] = ref
			}
		}
	}
	for i, l := range lines {
		m := refPattern.FindStringSubmatch(l)
		if m == nil {
			continue
		}
		end := itemAt(lines, i)
		if !isList(l, "") && !strings.HasPrefix(l, "|") {
			claim(l, m[1])
			continue
		}
		claim(strings.Join(lines[i:end], "\n"), m[1])
		if strings.HasPrefix(l, "- [x]") || strings.HasPrefix(l, "- [X]") || strings.HasPrefix(l, "* [x]") || strings.HasPrefix(l, "* [X]") {
			ticked[m[1]] = true
		}
	}
	return word, ticked
}

// TestNothingTypedIsLost: whatever a person did to a document, in whatever
// editor, and however the transcript changed since: every word they typed and
// every tick is in the file afterwards, on the item it was put on, or in the
// section for what has none any more.
func TestNothingTypedIsLost(t *testing.T) {
	list, err := clips()
	if err != nil {
		t.Fatal(err)
	}
	if len(list) < 2 {
		t.Fatal("no transcripts to try")
	}
	rapid.Check(t, func(t *rapid.T) {
		clip := list[rapid.IntRange(0, len(list)-1).Draw(t, "transcript")]
		cues := clip.Cues
		change := rapid.SampledFrom([]string{"same", "corrected", "longer", "shorter"}).Draw(t, "change")
		before, after := cues, cues
		switch change {
		case "longer":
			before = cues[:max(1, len(cues)*2/3)]
		case "shorter":
			after = cues[:max(1, len(cues)*2/3)]
		case "corrected":
			after = slices.Clone(cues)
			for k := rapid.IntRange(1, 8).Draw(t, "corrections"); k > 0; k-- {
				i := rapid.IntRange(0, len(after)-1).Draw(t, "cue")
				if rapid.Bool().Draw(t, "drop") && len(after) > 10 {
					after = slices.Delete(slices.Clone(after), i, i+1)
				} else {
					// A word of the same length, so that word times stay right.
					after[i].Text = strings.NewReplacer("nut", "pin", "bolt", "stud", "left", "back", "off", "out", "the", "one").Replace(after[i].Text)
				}
			}
		}
		old := documentOf(t, before, clip)
		oldRefs := map[string]bool{}
		for _, m := range refPattern.FindAllStringSubmatch(string(old), -1) {
			oldRefs[m[1]] = true
		}
		fresh := documentOf(t, after, clip)
		seal := string(old)[len(workdoc.Visible(old)):]
		e := &editor{t: t, lines: visibleLines(old), seal: strings.Split(strings.Trim(seal, "\n"), "\n")}
		for k := rapid.IntRange(1, 12).Draw(t, "edits"); k > 0; k-- {
			edit := edits[rapid.IntRange(0, len(edits)-1).Draw(t, "edit")]
			e.log = append(e.log, edit.name)
			edit.do(e)
		}
		word, ticked := owners(e.lines)
		text := strings.Join(e.lines, "\n")
		lines := strings.Split(text+"\n"+strings.Join(e.seal, "\n")+"\n"+e.below, "\n")
		text = strings.Join(lines, "\n")
		for _, h := range habits {
			if rapid.IntRange(0, 4).Draw(t, h.name) == 0 {
				e.log = append(e.log, h.name)
				lines = h.do(lines)
			}
		}
		mine := strings.Join(lines, "\n")
		out, _, err := workdoc.Merge([]byte(mine), fresh)
		fail := func(format string, a ...any) {
			t.Helper()
			t.Fatalf("%s\n%s, %s, edits %q\n--- as the person left it\n%s\n--- merged\n%s", fmt.Sprintf(format, a...),
				clip.Name, change, e.log, workdoc.Visible([]byte(mine)), workdoc.Visible(out))
		}
		if err != nil {
			fail("refused: %v", err)
		}
		if change == "same" && string(out) != mine {
			fail("nothing changed and the file did")
		}
		again, _, err := workdoc.Merge(out, fresh)
		if err != nil || !bytes.Equal(again, out) {
			fail("a second merge is not the first: %v", err)
		}
		doc, err := workdoc.Read(out)
		if err != nil {
			fail("not read back: %v", err)
		}
		now := strings.ReplaceAll(string(workdoc.Visible(out)), "\r", "")
		nowLines := strings.Split(now, "\n")
		for i, l := range nowLines { // what an editor did with bullets is no matter here
			if strings.HasPrefix(l, "* ") {
				nowLines[i] = "-" + l[1:]
			}
		}
		nowLines = unwrap(nowLines)
		nowWord, _ := owners(nowLines)
		keptAt := slices.IndexFunc(nowLines, func(l string) bool { return strings.HasPrefix(l, workdoc.KeptHeading) })
		kept := ""
		if keptAt >= 0 {
			kept = strings.Join(nowLines[keptAt:], "\n")
		}
		newRefs := map[string]bool{}
		for _, m := range refPattern.FindAllStringSubmatch(string(fresh), -1) {
			newRefs[m[1]] = true
		}
		for _, w := range wordPattern.FindAllString(text, -1) {
			if !strings.Contains(now, w) {
				fail("%s is lost", w)
			}
			ref := word[w]
			if ref == "" || isFrame(ref) {
				continue // on no item: it only has to be there
			}
			switch at := nowWord[w]; {
			case newRefs[ref] && at != ref:
				fail("%s was put on %s and stands on %q", w, ref, at)
			case !newRefs[ref] && !strings.Contains(kept, w) && (at == "" || oldRefs[at]):
				fail("%s was put on %s, which is gone, and stands on %q", w, ref, at)
			}
		}
		for ref := range ticked {
			switch {
			case newRefs[ref] && !doc.Ticks[ref]:
				fail("the tick of %s is lost", ref)
			case !newRefs[ref] && !strings.Contains(kept, "[x]") && !strings.Contains(kept, "[X]") && !anyNewTick(doc, oldRefs):
				fail("the tick of %s, which is gone, is lost", ref)
			}
		}
	})
}

// isFrame: lines of the frame of the document that are paragraphs; words put on
// them may stand below them.
func isFrame(ref string) bool {
	for _, p := range []string{"document", "count-", "none-", "job-", "revision-", "made-", "note-"} {
		if strings.HasPrefix(ref, p) {
			return true
		}
	}
	return false
}

func anyNewTick(d *workdoc.Document, old map[string]bool) bool {
	for ref := range d.Ticks {
		if !old[ref] {
			return true
		}
	}
	return false
}

// unwrap joins an item's line that was wrapped before its reference.
func unwrap(lines []string) []string {
	var out []string
	for i := 0; i < len(lines); i++ {
		l := lines[i]
		if strings.HasPrefix(l, "- ") && !refPattern.MatchString(l) && i+1 < len(lines) &&
			refPattern.MatchString(l+" "+strings.TrimSpace(lines[i+1])) && strings.HasPrefix(lines[i+1], "  ") {
			l += " " + strings.TrimSpace(lines[i+1])
			i++
		}
		out = append(out, l)
	}
	return out
}
