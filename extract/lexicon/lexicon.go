// Package lexicon holds what a person who knows the trade may edit: the names of
// tools, fasteners, parts and consumables, the ways of saying what is done, and
// the ways people frame what they say. It is data read from text files; Default
// gives the embedded ones, Load lays a person's own file over them.
package lexicon

import (
	"bytes"
	"cmp"
	"embed"
	"fmt"
	"os"
	"slices"
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
	// Soft is a name of much else besides: it counts where the words beside it say
	// which one it is, or that it is worked on.
	Soft bool
	// Exact names are known where they are said right, and no misheard word stands for them.
	Exact bool
	Note  string
	words []string // of Said, folded
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
	Last    ID   // of the last of Words: where it is not said the pattern is not
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
	ids      map[string]ID
	things   trie[[]*Term]
	moods    trie[[]string]
	said     phrases
	matchers sync.Pool // of *matcher
	fillers  trie[bool]
	lemma    map[string][]string  // a form of a verb -> plain forms
	verbs    map[string][]Pattern // plain form -> patterns, longest first
	actions  map[string]*Action
	terms    []*Term
	usual    []Usual
	innocent map[string]bool
	gate     *gate
	weight   int // patterns read so far, for their order
}

// ID stands for a word of the vocabulary, so that phrases are matched by number.
// 0 stands for every word that is in no phrase. An ID is of its Lexicon only.
type ID int32

// ID returns the number of a folded word.
func (l *Lexicon) ID(word string) ID { return l.ids[word] }

// id returns the number of a word, a new one where it has none.
func (l *Lexicon) id(word string) ID {
	n, ok := l.ids[word]
	if !ok {
		n = ID(len(l.ids) + 1)
		l.ids[word] = n
	}
	return n
}

func (l *Lexicon) idsOf(words []string) []ID {
	out := make([]ID, len(words))
	for i, w := range words {
		out[i] = l.id(w)
	}
	return out
}

// trie holds phrases by their words.
type trie[T any] struct{ first []*node[T] } // by the ID of the first word

type node[T any] struct {
	next []child[T]
	val  T
	set  bool
}

type child[T any] struct {
	word ID
	node *node[T]
}

// add returns the node of a phrase of at least one word.
func (t *trie[T]) add(words []ID) *node[T] {
	w := int(words[0])
	if w >= len(t.first) {
		t.first = append(t.first, make([]*node[T], w+1-len(t.first))...)
	}
	n := t.first[w]
	if n == nil {
		n = &node[T]{}
		t.first[w] = n
	}
	for _, w := range words[1:] {
		c := n.child(w)
		if c == nil {
			c = &node[T]{}
			n.next = append(n.next, child[T]{w, c})
		}
		n = c
	}
	n.set = true
	return n
}

func (n *node[T]) child(w ID) *node[T] {
	for i := range n.next {
		if n.next[i].word == w {
			return n.next[i].node
		}
	}
	return nil
}

// longest returns the value of the longest phrase that words begin with, and its length.
func (t *trie[T]) longest(words []ID) (val T, length int) {
	if len(words) == 0 || int(words[0]) >= len(t.first) {
		return val, 0
	}
	n := t.first[words[0]]
	for i := 1; n != nil; i++ {
		if n.set {
			val, length = n.val, i
		}
		if i == len(words) {
			break
		}
		n = n.child(words[i])
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
// An own file has sections: a line "[tools]" (or fasteners, parts, partnames, consumables,
// verbs, talk, open, inflections, fillers) followed by lines in the form
// of the embedded file of that name. An error names file and line.
func Load(overlay ...string) (*Lexicon, error) {
	// The sizes spare the maps their growing; any would do.
	l := &Lexicon{ids: make(map[string]ID, 1<<13), innocent: make(map[string]bool, 1<<12), lemma: make(map[string][]string, 1<<11),
		verbs: make(map[string][]Pattern, 1<<9), actions: map[string]*Action{}}
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
	l.said.fixed = true
	for _, path := range overlay {
		data, err := os.ReadFile(path)
		if err != nil {
			return nil, fmt.Errorf("failed to read vocabulary: %w", err)
		}
		if err := l.read(path, "", data, true); err != nil {
			return nil, err
		}
	}
	if err := l.indexPhrases(); err != nil {
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
		"partnames":   func(l *Lexicon, c []string) error { return l.names(Part, c) },
		"consumables": func(l *Lexicon, c []string) error { return l.term(Consumable, c) },
		"verbs":       (*Lexicon).verb,
		"inflections": (*Lexicon).inflect,
		"talk":        (*Lexicon).mood,
		"open":        (*Lexicon).phraseLine,
		"warn":        (*Lexicon).phraseLine,
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
	i := -1
	var cols []string // of the line under way
	for raw := range strings.SplitSeq(string(data), "\n") {
		i++
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
		cols = cols[:0]
		for c := range strings.SplitSeq(line, "|") {
			cols = append(cols, strings.TrimSpace(c))
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
	if s == "" {
		return nil
	}
	out := make([]string, 0, strings.Count(s, ",")+1)
	for x := range strings.SplitSeq(s, ",") {
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
		if !l.addTerm(&Term{Name: name, Said: name, Kind: kind, Note: col(cols, 3)}) {
			return fmt.Errorf("the name is empty")
		}
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

// names reads a line of names that are known only where they are said right.
func (l *Lexicon) names(kind Kind, cols []string) error {
	if len(cols) > 1 {
		return fmt.Errorf("want names with commas between")
	}
	for _, name := range list(cols[0]) {
		soft := strings.HasPrefix(name, "~")
		name = strings.TrimPrefix(name, "~")
		if !l.addTerm(&Term{Name: name, Said: name, Kind: kind, Soft: soft, Exact: true}) {
			return fmt.Errorf("the name is empty")
		}
	}
	return nil
}

// addTerm adds a term, unless its name has no words.
func (l *Lexicon) addTerm(t *Term) bool {
	words := Words(t.Said)
	if len(words) == 0 {
		return false
	}
	t.words = words
	l.terms = append(l.terms, t)
	ids := l.idsOf(words)
	last := words[len(words)-1]
	for i, form := range [...]string{last, plural(last), singularWord(last)} {
		if i > 0 && form == last {
			continue
		}
		ids[len(ids)-1] = l.id(form)
		n := l.things.add(ids)
		merged := false
		for i, o := range n.val {
			if o.Misheard == t.Misheard && o.Weak == t.Weak && o.Soft == t.Soft {
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
	return true
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
	"gloves": true, "jaws": true, "scissors": true, "tweezers": true, "verniers": true, "gas": true, "lens": true,
	"abs": true, "bars": true, "brushes": true, "wipes": true, "weights": true, "phillips": true, "stilsons": true, "locks": true, "tongs": true}

func singular(s string) string {
	i := strings.LastIndexByte(s, ' ') + 1
	return s[:i] + singularWord(s[i:])
}

// Singular returns the name with its last word in the singular.
func Singular(s string) string { return singular(s) }

// Modifier returns the name as it stands before another: "bar end weights" hold by
// a bar end weight screw.
func Modifier(s string) string {
	s = singular(s)
	if i := strings.LastIndexByte(s, ' ') + 1; notPlural[s[i:]] && modified[s[i:]] {
		return s[:len(s)-1]
	}
	return s
}

// modified are the plurals that lose their ending before another name.
var modified = map[string]bool{"weights": true, "bars": true, "grips": true, "jaws": true}

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
			before, after, gap := strings.Cut(phrase, "~")
			p.Words = Words(before)
			if gap {
				p.Gap = len(p.Words)
				p.Words = append(p.Words, Words(after)...)
			}
			if len(p.Words) == 0 {
				return fmt.Errorf("the phrase %q has no verb", phrase)
			}
			if p.Gap == 0 {
				return fmt.Errorf("the phrase %q must begin with its verb", phrase)
			}
			p.Last = l.id(p.Words[len(p.Words)-1])
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

// MoodNames are the moods that talk.txt may name.
var MoodNames = []string{"negated", "conditional", "hypothetical", "announced", "off-camera", "other", "question", "hedge",
	"not-needed", "optional", "ad", "greeting", "list", "prior", "caution", "together"}

// mood reads "mood: phrase, phrase".
func (l *Lexicon) mood(cols []string) error {
	label, phrases, ok := strings.Cut(strings.Join(cols, "|"), ":")
	if !ok {
		return fmt.Errorf("want mood: phrase, phrase")
	}
	if label = strings.TrimSpace(label); !slices.Contains(MoodNames, label) {
		return fmt.Errorf("no mood %q; use one of %s", label, strings.Join(MoodNames, ", "))
	}
	for _, p := range list(phrases) {
		if w := Words(p); len(w) > 0 {
			n := l.moods.add(l.idsOf(w))
			n.val = append(n.val, label)
		}
	}
	return nil
}

func (l *Lexicon) filler(cols []string) error {
	if w := Words(cols[0]); len(w) > 0 {
		l.fillers.add(l.idsOf(w)).val = true
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
		slices.SortStableFunc(ps, func(a, b Pattern) int {
			return cmp.Or(cmp.Compare(len(b.Words), len(a.Words)), cmp.Compare(a.rank, b.rank))
		})
	}
}

// Things returns the terms of the longest name that the words begin with, and
// how many words it has; 0 where none does.
func (l *Lexicon) Things(words []ID) ([]*Term, int) { return l.things.longest(words) }

// Moods returns the cue labels of the longest cue that the words begin with.
func (l *Lexicon) Moods(words []ID) ([]string, int) { return l.moods.longest(words) }

// Filler returns how many words of filler the words begin with.
func (l *Lexicon) Filler(words []ID) int {
	_, n := l.fillers.longest(words)
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
