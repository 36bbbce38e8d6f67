package extract

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

// A judgedEntry is what a careful reader found to be handled in a talk, or left open at its
// end: the first tokens of the sentences that tell it, how it was left or of which kind it is,
// the first being the best, and the names that it may have.
type judgedEntry struct {
	toks     []int
	kinds    []string
	names    []string
	optional bool // a careful reader may leave it out
}

// A judgedTalk is an invented talk of which a careful reader judged, by reading alone, whose
// each unnamed fastener is: the accepted names by the last token of the phrase, the first being
// the same wherever the same fasteners are meant; or what each bare number is, by its first token.
type judgedTalk struct {
	name   string
	talk   *transcript.Talk
	want   map[int][][]string
	meant  map[int]meaning
	wanted map[string]bool // of a way of saying something: the numbers that are of a kind
	kind   meaning
}

// judgedLines gives what a careful reader judged of one kind in a talk, a line each. The tokens
// that a line begins with are numbered as the words of the talk are folded; it gives the numbers
// they have once what only opens a sentence is left out.
func judgedLines(t *testing.T, name, kind string) (lines []string) {
	if p := leftOpenPieces(t)[name]; p != nil {
		return p.lines(t)
	}
	b, err := os.ReadFile(filepath.Join("testdata", "judged", name+".judged"))
	if err != nil {
		t.Fatal(err)
	}
	numbers := sync.OnceValue(func() []int { return numbersIn(t, name) })
	for l := range strings.Lines(string(b)) {
		l, ok := strings.CutPrefix(strings.TrimSpace(l), kind+" ")
		if !ok {
			continue
		}
		at, rest, _ := strings.Cut(l, " ")
		if numbers() == nil {
			return nil // the talk is not at hand
		}
		var now []string
		for x := range strings.SplitSeq(at, ",") {
			tok, err := strconv.Atoi(x)
			if err != nil || tok >= len(numbers()) {
				t.Fatalf("%s: %q begins with no token", name, l)
			}
			now = append(now, strconv.Itoa(numbers()[tok]))
		}
		lines = append(lines, strings.Join(now, ",")+" "+rest)
	}
	return lines
}

// openedNumbers gives the number that each token of a talk has once what only opens a sentence is left
// out: such a word has that of the next.
func openedNumbers(talk *transcript.Talk) (numbers []int) {
	r := &reading{talk: talk, lex: lexicon.Default()}
	r.tokens()
	all := slices.Clone(r.toks)
	r.stops(stopTable(stopWeights))
	r.openings()
	n := 0
	for i := range all {
		for r.toks[n].hi <= all[i].lo {
			n++
		}
		numbers = append(numbers, n)
	}
	return append(numbers, n+1) // past the end
}

// numbersIn gives the same of a talk by its name, nil where it is not at hand.
func numbersIn(t *testing.T, name string) []int {
	if n, ok := numbersByName.Load(name); ok {
		return n.([]int)
	}
	var numbers []int
	if talk := talkOfName(t, name); talk != nil {
		numbers = openedNumbers(talk)
	}
	numbersByName.Store(name, numbers)
	return numbers
}

var numbersByName sync.Map

// talkOfName gives a talk that was judged: NAME.txt, .srt, .vtt or .json in testdata/judged, or
// NAME.txt in testdata/talk; shared-NAME is in the shared corpus, nil where that is not at hand.
func talkOfName(t *testing.T, name string) *transcript.Talk {
	if p := leftOpenPieces(t)[name]; p != nil {
		return p.talk
	}
	path := ""
	if shared, ok := strings.CutPrefix(name, "shared-"); ok {
		found, _ := filepath.Glob(filepath.Join("..", "..", "shared", "corpus", shared+".[jstv]*"))
		if found = slices.DeleteFunc(found, func(p string) bool { return strings.HasSuffix(p, ".gold.json") }); len(found) == 0 {
			return nil
		}
		path = found[0]
	}
	for _, p := range []string{"judged/NAME.txt", "judged/NAME.srt", "judged/NAME.vtt", "judged/NAME.json", "talk/NAME.txt"} {
		if p = filepath.Join("testdata", filepath.FromSlash(strings.Replace(p, "NAME", name, 1))); path == "" {
			if _, err := os.Stat(p); err == nil {
				path = p
			}
		}
	}
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if filepath.Base(filepath.Dir(path)) == "talk" {
		text = spokenAt(string(text))
	}
	clip, err := transcript.Read(filepath.Base(path), text, transcript.Options{})
	if err != nil {
		t.Fatal(path, err)
	}
	return transcript.Join(clip)
}

// A leftOpenPiece is a short piece of talk with what is open at its end, as a careful reader judged
// it: testdata/open has one a line. All of it is invented talk.
type leftOpenPiece struct {
	Talk string
	Open []struct {
		Kind, About []string
		Before      string
		Words       string // of the sentence that shows it
		Optional    bool
	}
	talk *transcript.Talk
}

var leftOpen = sync.OnceValues(func() (map[string]*leftOpenPiece, error) {
	files, err := filepath.Glob(filepath.Join("testdata", "open", "*.jsonl"))
	if err == nil && len(files) == 0 {
		err = errors.New("no pieces of talk in testdata/open")
	}
	out := map[string]*leftOpenPiece{}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			return nil, err
		}
		n := 0
		for line := range strings.Lines(string(text)) {
			p := &leftOpenPiece{}
			if err := json.Unmarshal([]byte(line), p); err != nil {
				return nil, fmt.Errorf("%s: %w", f, err)
			}
			clip, err := transcript.Read("piece.srt", captions(p.Talk), transcript.Options{})
			if err != nil {
				return nil, err
			}
			p.talk = transcript.Join(clip)
			n++
			out[fmt.Sprintf("piece-%s-%03d", strings.TrimSuffix(filepath.Base(f), ".jsonl"), n)] = p
		}
	}
	return out, err
})

// leftOpenPieces gives those pieces by their names.
func leftOpenPieces(t *testing.T) map[string]*leftOpenPiece {
	pieces, err := leftOpen()
	if err != nil {
		t.Fatal(err)
	}
	return pieces
}

// captions gives talk the times at which it would be said, in captions of ten words at most.
func captions(text string) []byte {
	var b strings.Builder
	stamp := func(s float64) string {
		return fmt.Sprintf("00:%02d:%02d,%03d", int(s)/60, int(s)%60, int(s*1000)%1000)
	}
	n, at := 0, 1.0
	var line []string
	words := strings.Fields(text)
	for i, w := range words {
		line = append(line, w)
		ends := strings.ContainsAny(w[len(w)-1:], ".?!")
		if !ends && len(line) < 10 && i+1 < len(words) {
			continue
		}
		n++
		until := at + float64(len(line))/2.7
		fmt.Fprintf(&b, "%d\n%s --> %s\n%s\n\n", n, stamp(at), stamp(until), strings.Join(line, " "))
		line = line[:0]
		if at = until + 0.02; ends {
			at += 0.6
		}
	}
	return []byte(b.String())
}

// lines gives what is open as judgedLines does: by the first token of the sentence that shows it.
func (p *leftOpenPiece) lines(t *testing.T) (lines []string) {
	r := read(p.talk, lexicon.Default())
	for _, o := range p.Open {
		at := strings.Index(strings.Join(strings.Fields(p.talk.Text), " "), strings.Join(strings.Fields(o.Words), " "))
		if at < 0 {
			t.Fatalf("%q is not in %q", o.Words, p.talk.Text)
		}
		tok := 0
		for tok+1 < len(r.toks) && int(r.toks[tok].lo) < at {
			tok++
		}
		for tok > 0 && r.toks[tok-1].brk < brkSentence {
			tok--
		}
		about := strings.Join(o.About, " | ")
		if o.Optional {
			about = "?" + about
		}
		lines = append(lines, fmt.Sprintf("%d %s %s %s", tok, strings.Join(o.Kind, "/"), o.Before, about))
	}
	if len(lines) == 0 {
		lines = []string{"0 none use -"} // nothing is open
	}
	return lines
}

// judgedTalks gives the talk of which something of one kind was judged, and tells line of each
// token and what was judged of it.
func judgedTalks(t *testing.T, kind string, line func(j *judgedTalk, tok int, judged string)) []judgedTalk {
	files, err := filepath.Glob("testdata/judged/*.judged")
	if err != nil || len(files) == 0 {
		t.Fatal("no judged talk in testdata/judged")
	}
	if kind == "open" {
		files = append(files, slices.Sorted(maps.Keys(leftOpenPieces(t)))...)
	}
	var out []judgedTalk
	for _, f := range files {
		j := judgedTalk{name: strings.TrimSuffix(filepath.Base(f), ".judged"), want: map[int][][]string{}, meant: map[int]meaning{}}
		lines := judgedLines(t, j.name, kind)
		if len(lines) == 0 {
			continue
		}
		if j.talk = talkOfName(t, j.name); j.talk == nil {
			continue
		}
		for _, l := range lines {
			at, what, ok := strings.Cut(l, " ")
			for x := range strings.SplitSeq(at, ",") {
				tok, err := strconv.Atoi(x)
				if !ok || err != nil {
					t.Fatalf("%s: %q is no line of a token and what it is", f, l)
				}
				line(&j, tok, what)
			}
		}
		out = append(out, j)
	}
	return out
}

// judgedList reads a list that a careful reader made of a talk: led, what was handled and how it
// was left, or open, what is open at the end, with the gate it stands before.
func judgedList(t *testing.T, name, kind string) []judgedEntry {
	var out []judgedEntry
	for _, l := range judgedLines(t, name, kind) {
		at, rest, _ := strings.Cut(l, " ")
		kinds, rest, _ := strings.Cut(rest, " ")
		if kinds == "settled" || kinds == "none" || kinds == "" {
			continue // it only sounds open
		}
		if kind == "open" {
			_, rest, _ = strings.Cut(rest, " ")
		}
		e := judgedEntry{kinds: strings.Split(kinds, "/")}
		for x := range strings.SplitSeq(at, ",") {
			tok, err := strconv.Atoi(x)
			if err != nil {
				t.Fatalf("%s: %q begins with no token", name, l)
			}
			e.toks = append(e.toks, tok)
		}
		rest, e.optional = strings.CutPrefix(rest, "?")
		for n := range strings.SplitSeq(rest, "|") {
			if f := nameWords(n); len(f) > 0 {
				e.names = append(e.names, strings.Join(f, " "), f[len(f)-1])
			}
		}
		out = append(out, e)
	}
	return out
}

// A judgedClass is something that is told to be of a class, and weighed to be of one, and what
// careful readers found it to be: any of some, 0 where it is not there.
type judgedClass struct {
	judgedRow
	was, best int
	right     []int
}

// settleClasses tells what each is by a reader's list, paired first with what is there of the
// class and the name that were told, then with what only goes by the name.
func settleClasses(here []judgedClass, names, classes []string, want []judgedEntry) {
	alike := paired(len(here), len(want), func(i, j int) bool {
		return slices.Contains(want[j].kinds, classes[here[i].was]) && want[j].goesBy(names[i])
	})
	taken := map[int]bool{}
	for _, f := range alike {
		taken[f] = true
	}
	byName := paired(len(here), len(want), func(i, j int) bool { return alike[i] < 0 && !taken[j] && want[j].goesBy(names[i]) })
	for i := range here {
		s := &here[i]
		f := max(alike[i], byName[i])
		if f < 0 {
			s.right = []int{0}
			continue
		}
		for _, kind := range want[f].kinds {
			s.right = append(s.right, slices.Index(classes, kind))
		}
		if want[f].optional {
			s.right = append(s.right, 0)
		}
		if s.is = s.right[0]; alike[i] >= 0 {
			s.is = s.was
		}
	}
}

func rowsOf(all []judgedClass) (out []judgedRow) {
	for _, s := range all {
		out = append(out, s.judgedRow)
	}
	return out
}

// tallyClasses counts those that are right as told, those that are right as weighed, and of
// those that are weighed otherwise how many are better and worse for it.
func tallyClasses(all []judgedClass) (to sums) {
	for _, s := range all {
		was, is := slices.Contains(s.right, s.was), slices.Contains(s.right, s.best)
		to = to.plus(sums{1, bit(was), bit(is), bit(is && !was), bit(was && !is)})
	}
	return to
}

// nameWords gives the words of a name in the singular.
func nameWords(name string) []string {
	f := strings.FieldsFunc(strings.ToLower(name), func(c rune) bool {
		return !(c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c == '.')
	})
	for i, w := range f {
		f[i] = lexicon.Singular(w)
	}
	return f
}

// goesBy tells whether a text has all the words of one of the names.
func (e *judgedEntry) goesBy(text string) bool {
	have := nameWords(text)
	return slices.ContainsFunc(e.names, func(n string) bool {
		for w := range strings.FieldsSeq(n) {
			if !slices.Contains(have, w) {
				return false
			}
		}
		return true
	})
}

// paired pairs as many as can be of two lists, one to one: for each of the first, the place of
// its fellow in the second, -1 where it has none.
func paired(of, with int, fits func(i, j int) bool) []int {
	fellow, owner := make([]int, of), make([]int, with)
	for j := range owner {
		owner[j] = -1
	}
	var seek func(i int, seen []bool) bool
	seek = func(i int, seen []bool) bool {
		for j := range with {
			if seen[j] || !fits(i, j) {
				continue
			}
			seen[j] = true
			if owner[j] < 0 || seek(owner[j], seen) {
				owner[j] = i
				return true
			}
		}
		return false
	}
	for i := range of {
		seek(i, make([]bool, with))
		fellow[i] = -1
	}
	for j, i := range owner {
		if i >= 0 {
			fellow[i] = j
		}
	}
	return fellow
}
