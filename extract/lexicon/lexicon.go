// Package lexicon holds what a person who knows the trade may edit: the names of
// tools, fasteners, parts and consumables, the ways of saying what is done, and
// the ways people frame what they say. It is data read from text files; Default
// gives the embedded ones, Load lays a person's own file over them.
package lexicon

import (
	"bytes"
	"embed"
	"fmt"
	"os"
	"sort"
	"strings"
	"sync"
)

//go:embed data/*.txt
var files embed.FS

// Kind is what a term names. A term may be of several kinds at once.
type Kind uint8

// Kinds of term.
const (
	Tool Kind = 1 << iota
	Fastener
	Part
	Consumable
)

// String names the kind as the data files do.
func (k Kind) String() string {
	var s []string
	for _, n := range kindNames {
		if k&n.kind != 0 {
			s = append(s, n.name)
		}
	}
	return strings.Join(s, "+")
}

var kindNames = []struct {
	kind Kind
	name string
}{{Tool, "tool"}, {Fastener, "fastener"}, {Part, "part"}, {Consumable, "consumable"}}

// Term is one name for a thing.
type Term struct {
	Name string // the plain word for it
	Said string // the form this entry matches
	Kind Kind
	// Misheard is set where Said is a recogniser's mistake for Name.
	Misheard bool
	// Weak is a misheard form that is a real word: it counts only beside another sure hit.
	Weak bool
	Note string
}

// Action is one of the workshop actions.
type Action struct {
	Name       string // "remove", "start by hand" …
	Imperative string // "Remove"
}

// Pattern is one way of saying an action. Words follow the verb; Gap is the
// index in Words before which the thing may stand (-1 where it may not).
type Pattern struct {
	Action  *Action
	Words   []string
	Gap     int
	Subject bool // the thing is the subject: "comes off"
	rank    int
}

// Usual is a usual check or caution after work on certain things.
type Usual struct {
	Signal       string   // "check", or a signal word of ANSI Z535.6
	When, Unless []string // names worked on; phrases that make it heard
	Text, Source string
}

// Lexicon is a set of terms ready for matching. It may be used by several
// goroutines at once.
type Lexicon struct {
	things   node[[]*Term]
	moods    node[[]string]
	said     phrases
	places   node[[]string]
	fillers  node[bool]
	lemma    map[string][]string  // a form of a verb -> plain forms
	verbs    map[string][]Pattern // plain form -> patterns, longest first
	actions  map[string]*Action
	terms    []*Term
	usual    []Usual
	innocent map[string]bool
	gate     *gate
	weight   int // patterns read so far, for their order
}

type node[T any] struct {
	next map[string]*node[T]
	val  T
	set  bool
}

func (n *node[T]) add(words []string) *node[T] {
	for _, w := range words {
		if n.next == nil {
			n.next = map[string]*node[T]{}
		}
		c := n.next[w]
		if c == nil {
			c = &node[T]{}
			n.next[w] = c
		}
		n = c
	}
	n.set = true
	return n
}

// longest returns the value of the longest entry that words begin with, and its length.
func (n *node[T]) longest(words func(int) string) (val T, length int) {
	for i := 0; n.next != nil; i++ {
		w := words(i)
		if w == "" {
			break
		}
		if n = n.next[w]; n == nil {
			break
		}
		if n.set {
			val, length = n.val, i+1
		}
	}
	return val, length
}

var (
	defaultOnce sync.Once
	defaultLex  *Lexicon
)

// Default returns the embedded vocabulary. The embedded files are known to be
// good, so it cannot fail.
func Default() *Lexicon {
	defaultOnce.Do(func() {
		lex, err := Load()
		if err != nil {
			panic(err) // a broken embedded file is a broken build
		}
		defaultLex = lex
	})
	return defaultLex
}

// Load returns the embedded vocabulary with the person's own files laid over it.
// An own file has sections: a line "[tools]" (or fasteners, parts, consumables,
// verbs, talk, open, inflections, fillers, place) followed by lines in the form
// of the embedded file of that name. An error names file and line.
func Load(overlay ...string) (*Lexicon, error) {
	l := &Lexicon{innocent: map[string]bool{}, lemma: map[string][]string{}, verbs: map[string][]Pattern{}, actions: map[string]*Action{}}
	entries, err := files.ReadDir("data")
	if err != nil {
		return nil, err
	}
	// Inflections come first: verbs are read in all their forms.
	for _, first := range []bool{true, false} {
		for _, e := range entries {
			name := strings.TrimSuffix(e.Name(), ".txt")
			if _, ok := sections[name]; !ok || (name == "inflections") != first {
				continue
			}
			data, err := files.ReadFile("data/" + e.Name())
			if err != nil {
				return nil, err
			}
			if err := l.read(e.Name(), name, data, false); err != nil {
				return nil, err
			}
		}
	}
	for _, path := range overlay {
		data, err := os.ReadFile(path)
		if err != nil {
			return nil, fmt.Errorf("failed to read vocabulary: %w", err)
		}
		if err := l.read(path, "", data, true); err != nil {
			return nil, err
		}
	}
	if err := l.said.index(); err != nil {
		return nil, fmt.Errorf("open phrases: %w", err)
	}
	l.finish()
	return l, nil
}

// sections maps a section's name to what reads one of its lines.
var sections map[string]func(l *Lexicon, cols []string) error

func init() {
	sections = map[string]func(*Lexicon, []string) error{
		"tools":       func(l *Lexicon, c []string) error { return l.term(Tool, c) },
		"fasteners":   func(l *Lexicon, c []string) error { return l.term(Fastener, c) },
		"parts":       func(l *Lexicon, c []string) error { return l.term(Part, c) },
		"consumables": func(l *Lexicon, c []string) error { return l.term(Consumable, c) },
		"verbs":       (*Lexicon).verb,
		"inflections": (*Lexicon).inflect,
		"talk":        (*Lexicon).mood,
		"open":        (*Lexicon).phraseLine,
		"place":       (*Lexicon).place,
		"fillers":     (*Lexicon).filler,
		"usual":       (*Lexicon).usualLine,
		"innocent":    (*Lexicon).innocentWord,
	}
}

// LineError is a line of a vocabulary file that cannot be read.
type LineError struct {
	File string
	Line int
	Msg  string
}

func (e *LineError) Error() string { return fmt.Sprintf("%s:%d: %s", e.File, e.Line, e.Msg) }

func (l *Lexicon) read(file, section string, data []byte, own bool) error {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	for i, raw := range strings.Split(string(data), "\n") {
		line := strings.TrimSpace(raw)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		if own && strings.HasPrefix(line, "[") && strings.HasSuffix(line, "]") {
			section = strings.ToLower(strings.TrimSpace(line[1 : len(line)-1]))
			if sections[section] == nil {
				return &LineError{file, i + 1, fmt.Sprintf("no section %q; use one of %s", section, strings.Join(sectionNames(), ", "))}
			}
			continue
		}
		read := sections[section]
		if read == nil {
			return &LineError{file, i + 1, "a line before any section; begin with [tools], [parts] or another of " + strings.Join(sectionNames(), ", ")}
		}
		cols := strings.Split(line, "|")
		for k := range cols {
			cols[k] = strings.TrimSpace(cols[k])
		}
		if err := read(l, cols); err != nil {
			return &LineError{file, i + 1, err.Error()}
		}
	}
	return nil
}

func sectionNames() []string {
	var names []string
	for n := range sections {
		names = append(names, n)
	}
	sort.Strings(names)
	return names
}

func list(s string) []string {
	var out []string
	for _, x := range strings.Split(s, ",") {
		if x = strings.TrimSpace(x); x != "" {
			out = append(out, x)
		}
	}
	return out
}

func col(cols []string, i int) string {
	if i < len(cols) {
		return cols[i]
	}
	return ""
}

func (l *Lexicon) term(kind Kind, cols []string) error {
	if len(cols) > 4 {
		return fmt.Errorf("too many columns: want name | also said | misheard | note")
	}
	names := []string{cols[0]}
	if len(cols) == 1 {
		names = list(cols[0]) // a bare line may list several names
	}
	for _, name := range names {
		if len(Words(name)) == 0 {
			return fmt.Errorf("the name is empty")
		}
		l.addTerm(&Term{Name: name, Said: name, Kind: kind, Note: col(cols, 3)})
	}
	for _, s := range list(col(cols, 1)) {
		// What people call it is its name too: the record says it as it was said.
		l.addTerm(&Term{Name: singular(s), Said: s, Kind: kind})
	}
	for _, s := range list(col(cols, 2)) {
		weak := strings.HasPrefix(s, "?")
		l.addTerm(&Term{Name: names[0], Said: strings.TrimPrefix(s, "?"), Kind: kind, Misheard: true, Weak: weak})
	}
	return nil
}

func (l *Lexicon) addTerm(t *Term) {
	words := Words(t.Said)
	if len(words) == 0 {
		return
	}
	l.terms = append(l.terms, t)
	for _, form := range plurals(words) {
		n := l.things.add(form)
		merged := false
		for i, o := range n.val {
			if o.Misheard == t.Misheard && o.Weak == t.Weak {
				c := *o
				c.Kind |= t.Kind
				n.val[i] = &c
				merged = true
			}
		}
		if !merged {
			n.val = append(n.val, t)
		}
	}
}

// plurals gives a name as it is and with its last word in the plural and in the singular.
func plurals(words []string) [][]string {
	last := words[len(words)-1]
	forms := [][]string{words}
	for _, p := range []string{plural(last), singularWord(last)} {
		if p != last {
			forms = append(forms, append(append([]string{}, words[:len(words)-1]...), p))
		}
	}
	return forms
}

func plural(w string) string {
	switch {
	case w == "" || strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss"):
		return w
	case strings.HasSuffix(w, "ss") || strings.HasSuffix(w, "sh") || strings.HasSuffix(w, "ch") || strings.HasSuffix(w, "x"):
		return w + "es"
	case strings.HasSuffix(w, "y") && len(w) > 2 && !strings.ContainsRune("aeiou", rune(w[len(w)-2])):
		return w[:len(w)-1] + "ies"
	}
	return w + "s"
}

// singularWord takes a plural ending off a word, where it has one.
func singularWord(w string) string {
	switch {
	case len(w) < 4 || strings.HasSuffix(w, "ss") || !strings.HasSuffix(w, "s") || strings.HasSuffix(w, "us") || strings.HasSuffix(w, "is") || notPlural[w]:
		return w
	case strings.HasSuffix(w, "ies") && len(w) > 4:
		return w[:len(w)-3] + "y"
	case strings.HasSuffix(w, "sses"), strings.HasSuffix(w, "shes"), strings.HasSuffix(w, "ches"), strings.HasSuffix(w, "xes"):
		return w[:len(w)-2]
	}
	return w[:len(w)-1]
}

var notPlural = map[string]bool{"pliers": true, "glasses": true, "snips": true, "cutters": true, "goggles": true,
	"gloves": true, "jaws": true, "scissors": true, "tweezers": true, "verniers": true, "calipers": true, "gas": true, "lens": true,
	"abs": true, "grips": true, "bars": true, "brushes": true, "wipes": true, "weights": true}

func singular(s string) string {
	i := strings.LastIndexByte(s, ' ') + 1
	return s[:i] + singularWord(s[i:])
}

// Singular returns the name with its last word in the singular.
func Singular(s string) string { return singular(s) }

// Plural returns the name with its last word in the plural.
func Plural(s string) string {
	i := strings.LastIndexByte(s, ' ') + 1
	return s[:i] + plural(s[i:])
}

func (l *Lexicon) verb(cols []string) error {
	if len(cols) < 3 || len(cols) > 4 {
		return fmt.Errorf("want action | imperative | with the thing as object | with the thing as subject")
	}
	a := l.actions[cols[0]]
	if a == nil {
		a = &Action{Name: cols[0], Imperative: cols[1]}
		l.actions[cols[0]] = a
	}
	for i, said := range []string{cols[2], col(cols, 3)} {
		for _, phrase := range list(said) {
			p := Pattern{Action: a, Gap: -1, Subject: i == 1, rank: l.weight}
			l.weight++
			for _, w := range strings.Fields(phrase) {
				if w == "~" {
					p.Gap = len(p.Words)
					continue
				}
				p.Words = append(p.Words, Words(w)...)
			}
			if len(p.Words) == 0 {
				return fmt.Errorf("the phrase %q has no verb", phrase)
			}
			if p.Gap == 0 {
				return fmt.Errorf("the phrase %q must begin with its verb", phrase)
			}
			v := p.Words[0]
			if l.verbs[v] == nil {
				l.addForms(v)
			}
			l.verbs[v] = append(l.verbs[v], p)
		}
	}
	return nil
}

func (l *Lexicon) inflect(cols []string) error {
	w := strings.Fields(cols[0])
	if len(w) < 2 {
		return fmt.Errorf("want the plain form and at least one other form")
	}
	for _, f := range w {
		l.addLemma(f, w[0])
	}
	return nil
}

func (l *Lexicon) addLemma(form, verb string) {
	for _, v := range l.lemma[form] {
		if v == verb {
			return
		}
	}
	l.lemma[form] = append(l.lemma[form], verb)
}

// addForms adds the regular forms of a verb that has no irregular ones.
func (l *Lexicon) addForms(v string) {
	if len(l.lemma[v]) > 0 {
		for _, w := range l.lemma[v] {
			if w == v {
				return
			}
		}
	}
	forms := []string{v, v + "s", v + "ing", v + "ed"}
	n := len(v)
	isV := func(b byte) bool { return strings.IndexByte("aeiou", b) >= 0 }
	switch {
	case strings.HasSuffix(v, "e"):
		forms = []string{v, v + "s", v[:n-1] + "ing", v + "d"}
	case strings.HasSuffix(v, "y") && n > 1 && !isV(v[n-2]):
		forms = []string{v, v[:n-1] + "ies", v + "ing", v[:n-1] + "ied"}
	case n > 2 && !isV(v[n-1]) && isV(v[n-2]) && !isV(v[n-3]) && v[n-1] != 'w' && v[n-1] != 'x':
		forms = append(forms, v+v[n-1:]+"ing", v+v[n-1:]+"ed")
	}
	if strings.HasSuffix(v, "sh") || strings.HasSuffix(v, "ch") || strings.HasSuffix(v, "ss") || strings.HasSuffix(v, "x") {
		forms = append(forms, v+"es")
	}
	for _, f := range forms {
		l.addLemma(f, v)
	}
}

// labelled reads "label: phrase, phrase" lines.
func labelled(cols []string) (label string, phrases []string, err error) {
	label, rest, ok := strings.Cut(strings.Join(cols, "|"), ":")
	if !ok {
		return "", nil, fmt.Errorf("want label: phrase, phrase")
	}
	return strings.TrimSpace(label), list(rest), nil
}

func (l *Lexicon) mood(cols []string) error {
	label, phrases, err := labelled(cols)
	for _, p := range phrases {
		if w := Words(p); len(w) > 0 {
			n := l.moods.add(w)
			n.val = append(n.val, label)
		}
	}
	return err
}

func (l *Lexicon) place(cols []string) error {
	label, phrases, err := labelled(cols)
	for _, p := range phrases {
		if w := Words(p); len(w) > 0 {
			n := l.places.add(w)
			n.val = append(n.val, label)
		}
	}
	return err
}

func (l *Lexicon) filler(cols []string) error {
	if w := Words(cols[0]); len(w) > 0 {
		l.fillers.add(w).val = true
	}
	return nil
}

var signals = map[string]bool{"check": true, "DANGER": true, "WARNING": true, "CAUTION": true, "NOTICE": true}

func (l *Lexicon) usualLine(cols []string) error {
	if len(cols) != 5 {
		return fmt.Errorf("want check or signal word | when | unless heard | text | source")
	}
	if !signals[cols[0]] {
		return fmt.Errorf("%q is neither check nor a signal word (DANGER, WARNING, CAUTION, NOTICE)", cols[0])
	}
	l.usual = append(l.usual, Usual{Signal: cols[0], When: list(cols[1]), Unless: list(cols[2]), Text: cols[3], Source: cols[4]})
	return nil
}

// Usual returns the usual checks and cautions, in the order of the file.
func (l *Lexicon) Usual() []Usual { return l.usual }

func (l *Lexicon) innocentWord(cols []string) error {
	for _, w := range list(cols[0]) {
		l.innocent[w] = true
	}
	return nil
}

func (l *Lexicon) finish() {
	l.buildGate()
	for _, ps := range l.verbs {
		sort.SliceStable(ps, func(i, j int) bool {
			if len(ps[i].Words) != len(ps[j].Words) {
				return len(ps[i].Words) > len(ps[j].Words)
			}
			return ps[i].rank < ps[j].rank
		})
	}
}

// Things returns the terms of the longest name that the words begin with, and
// how many words it has; 0 where none does. word(i) is "" past the end.
func (l *Lexicon) Things(word func(int) string) ([]*Term, int) { return l.things.longest(word) }

// Moods returns the cue labels of the longest cue that the words begin with.
func (l *Lexicon) Moods(word func(int) string) ([]string, int) { return l.moods.longest(word) }

// PlaceWord tells whether the words begin with a word of place: its labels and its length.
func (l *Lexicon) PlaceWord(word func(int) string) ([]string, int) { return l.places.longest(word) }

// Filler returns how many words of filler the words begin with.
func (l *Lexicon) Filler(word func(int) string) int {
	_, n := l.fillers.longest(word)
	return n
}

// Lemmas returns the plain forms of the verb that w may be a form of.
func (l *Lexicon) Lemmas(w string) []string { return l.lemma[w] }

// Patterns returns the ways of saying an action with the verb, longest first.
func (l *Lexicon) Patterns(verb string) []Pattern { return l.verbs[verb] }

// Action returns the action of that name, or nil.
func (l *Lexicon) Action(name string) *Action { return l.actions[name] }

// Terms returns every term, in the order of the files.
func (l *Lexicon) Terms() []*Term { return l.terms }
