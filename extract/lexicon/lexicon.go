// Package lexicon holds what a person who knows the trade may edit: the names of
// tools, fasteners, parts and consumables, the ways of saying what is done, and
// the ways people frame what they say. It is data read from text files; Default
// gives the embedded ones, Load lays a person's own file over them.
package lexicon

import (
	"fmt"
	"iter"
	"os"
	"slices"
	"sort"
	"strings"
	"sync"
)

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
	verb    ID
	last    Last
}

// How many words of the talk may stand between two words of a pattern, and where
// the thing may stand.
const (
	Between  = 1
	GapWords = 7
)

// Usual is a usual check or caution after work on certain things.
type Usual struct {
	Signal       string   // "check", or a signal word of ANSI Z535.6
	When, Unless []string // names worked on; phrases that make it heard
	Text, Source string
}

// Lexicon is a set of terms ready for matching. It may be used by several
// goroutines at once.
type Lexicon struct {
	ids      index
	words    []word      // by ID
	things   trie[int32] // into groups
	groups   [][]*Term   // the terms of one form each; several forms may share one
	moods    trie[[]string]
	fillers  trie[bool]
	said     phrases
	matchers sync.Pool       // of *matcher
	lemmas   lists[string]   // by a form of a verb: its plain forms
	plain    lists[ID]       // the same by their IDs
	patterns lists[*Pattern] // by the plain form, longest first
	lasts    lists[Last]     // their last words
	forms    []form          // what lemmas is made of
	ways     []Pattern       // what patterns is made of
	actions  map[string]*Action
	terms    []*Term
	usual    []Usual
	uses     map[string]Use
	gate     gate
	scratch  []ID
	slab     slab
}

// ID stands for a word of the vocabulary, so that phrases are matched by number.
// 0 stands for every word that is in no phrase. An ID is of its Lexicon only.
type ID int32

// word is what is known of a word of the vocabulary.
type word struct {
	text             string
	plural, singular ID    // of the word as the last of a name, where it is that
	form             int32 // the first of its plain forms as of a verb: one more than its index in Lexicon.forms
	named            bool  // it stands in a name
	alone            bool  // it is a name by itself
	innocent         bool  // it is an everyday word that sounds like a name
}

// form is one form of a verb.
type form struct {
	of    ID
	plain string
	id    ID    // of plain
	next  int32 // the next of the same word, as word.form
}

// slab hands out small lists from large pieces of memory: a vocabulary is made of
// thousands, and all of them stay.
type slab struct {
	terms []Term
	lists []*Term
	texts []string
}

// room returns the list with room for n more, a new one where it is full.
func room[T any](s []T, n int) []T {
	if len(s)+n > cap(s) {
		return make([]T, 0, max(n, 1024))
	}
	return s
}

// ID returns the number of a folded word.
func (l *Lexicon) ID(word string) ID { return *l.ids.place(word, l.words) }

// id returns the number of a word, a new one where it has none.
func (l *Lexicon) id(text string) ID {
	n := l.ids.place(text, l.words)
	if *n == 0 {
		l.words = append(l.words, word{text: text})
		if 2*len(l.words) > len(l.ids) {
			l.ids = newIndex(4*len(l.ids), l.words)
		} else {
			*n = ID(len(l.words) - 1)
		}
		return ID(len(l.words) - 1)
	}
	return *n
}

// idsOf returns the numbers of the words of a text, good until it is called again.
func (l *Lexicon) idsOf(text string) []ID {
	l.scratch = l.scratch[:0]
	for w := range eachWord(text) {
		l.scratch = append(l.scratch, l.id(w))
	}
	return l.scratch
}

// wordsOf returns the words of two texts, to be kept, and how many are of the first.
func (l *Lexicon) wordsOf(before, after string) (words []string, gap int) {
	out := room(l.slab.texts, (len(before)+len(after))/2+2)
	lo := len(out)
	for w := range eachWord(before) {
		out = append(out, w)
	}
	gap = len(out) - lo
	for w := range eachWord(after) {
		out = append(out, w)
	}
	l.slab.texts = out
	return out[lo:len(out):len(out)], gap
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
// verbs, uses, talk, open, inflections, fillers) followed by lines in the form
// of the embedded file of that name. An error names file and line.
func Load(overlay ...string) (*Lexicon, error) {
	// The sizes, about twice what there is, spare them their growing; any would do.
	l := &Lexicon{ids: newIndex(1<<15, nil), words: make([]word, 1, 1<<14), terms: make([]*Term, 0, 1<<14), actions: map[string]*Action{},
		forms: make([]form, 0, 1<<13), ways: make([]Pattern, 0, 1<<13), gate: gate{byKey: make(map[string][]*Term, 1<<10), two: make([]pairTerm, 0, 1<<13)}}
	l.things = trie[int32]{edges: newEdges(1 << 15), nodes: make([]leaf[int32], 1, 1<<15)}
	l.groups = make([][]*Term, 1, 1<<14)
	l.said.signals = make([]signal, 0, 3<<12)
	for _, f := range &files {
		if err := l.read(f.section+".txt", f.section, *f.text, false); err != nil {
			return nil, err
		}
	}
	l.said.fixed = true
	for _, path := range overlay {
		data, err := os.ReadFile(path)
		if err != nil {
			return nil, fmt.Errorf("failed to read vocabulary: %w", err)
		}
		if err := l.read(path, "", string(data), true); err != nil {
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
		"fates":       (*Lexicon).phraseLine,
		"fillers":     (*Lexicon).filler,
		"uses":        (*Lexicon).useLine,
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

func (l *Lexicon) read(file, section, data string, own bool) error {
	data = strings.TrimPrefix(data, "\ufeff")
	i := -1
	var cols []string // of the line under way
	for raw := range strings.SplitSeq(data, "\n") {
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
	for x := range each(s) {
		out = append(out, x)
	}
	return out
}

// each gives what stands between the commas of a list.
func each(s string) iter.Seq[string] {
	return func(yield func(string) bool) {
		for s != "" {
			x, rest, _ := strings.Cut(s, ",")
			if x = strings.TrimSpace(x); x != "" && !yield(x) {
				return
			}
			s = rest
		}
	}
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
	name := cols[0]
	if len(cols) == 1 {
		for n := range each(name) { // a bare line may list several names
			if !l.addTerm(Term{Name: n, Said: n, Kind: kind}) {
				return fmt.Errorf("the name is empty")
			}
		}
		return nil
	}
	if !l.addTerm(Term{Name: name, Said: name, Kind: kind, Note: col(cols, 3)}) {
		return fmt.Errorf("the name is empty")
	}
	for s := range each(col(cols, 1)) {
		// What people call it is its name too: the record says it as it was said.
		s, exact := strings.CutPrefix(s, "=")
		l.addTerm(Term{Name: singular(s), Said: s, Kind: kind, Exact: exact})
	}
	for s := range each(col(cols, 2)) {
		s, weak := strings.CutPrefix(s, "?")
		l.addTerm(Term{Name: name, Said: s, Kind: kind, Misheard: true, Weak: weak})
	}
	return nil
}

// names reads a line of names that are known only where they are said right.
func (l *Lexicon) names(kind Kind, cols []string) error {
	if len(cols) > 1 {
		return fmt.Errorf("want names with commas between")
	}
	for name := range each(cols[0]) {
		name, soft := strings.CutPrefix(name, "~")
		if !l.addTerm(Term{Name: name, Said: name, Kind: kind, Soft: soft, Exact: true}) {
			return fmt.Errorf("the name is empty")
		}
	}
	return nil
}

// addTerm adds a term, unless its name has no words.
func (l *Lexicon) addTerm(term Term) bool {
	ids := l.idsOf(term.Said)
	if len(ids) == 0 {
		return false
	}
	l.slab.terms = append(room(l.slab.terms, 1), term)
	t := &l.slab.terms[len(l.slab.terms)-1]
	l.terms = append(l.terms, t)
	l.gate.add(l, t, ids)
	node := int32(0)
	for i, w := range ids {
		l.words[w].named = true
		if i < len(ids)-1 {
			node = l.things.step(node, w)
		}
	}
	last := ids[len(ids)-1]
	forms := [...]ID{last, 0, 0}
	forms[1], forms[2] = l.numbers(last)
	alone := int32(0) // the group of this term by itself
	for i, form := range forms {
		if i > 0 && form == last {
			continue
		}
		group := l.things.end(l.things.step(node, form))
		if *group != 0 {
			*group = l.join(l.groups[*group], t)
			continue
		}
		if alone == 0 {
			l.slab.lists = append(room(l.slab.lists, 1), t)
			n := len(l.slab.lists)
			alone = l.group(l.slab.lists[n-1 : n : n])
		}
		*group = alone
	}
	return true
}

func (l *Lexicon) group(terms []*Term) int32 {
	l.groups = append(l.groups, terms)
	return int32(len(l.groups) - 1)
}

// join returns the group of some terms and one more. Terms that differ by their
// kinds only are one.
func (l *Lexicon) join(terms []*Term, t *Term) int32 {
	terms = slices.Clone(terms)
	joined := false
	for i, o := range terms {
		if o.Misheard == t.Misheard && o.Weak == t.Weak && o.Soft == t.Soft {
			c := *o
			c.Kind |= t.Kind
			terms[i], joined = &c, true
		}
	}
	if !joined {
		terms = append(terms, t)
	}
	return l.group(terms)
}

// numbers returns the plural and the singular of the last word of a name.
func (l *Lexicon) numbers(w ID) (p, s ID) {
	if l.words[w].plural == 0 {
		text := l.words[w].text
		p, s = l.id(plural(text)), l.id(singularWord(text))
		l.words[w].plural, l.words[w].singular = p, s
	}
	return l.words[w].plural, l.words[w].singular
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
	one := singularWord(s[i:])
	if strings.HasPrefix(s[i:], one) { // nearly always
		return s[:i+len(one)]
	}
	return s[:i] + one
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
	if many := plural(s[i:]); many != s[i:] {
		return s[:i] + many
	}
	return s
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
	for i, said := range [...]string{cols[2], col(cols, 3)} {
		for phrase := range each(said) {
			p := Pattern{Action: a, Subject: i == 1}
			before, after, gap := strings.Cut(phrase, "~")
			p.Words, p.Gap = l.wordsOf(before, after)
			if !gap {
				p.Gap = -1
			}
			if len(p.Words) == 0 {
				return fmt.Errorf("the phrase %q has no verb", phrase)
			}
			if p.Gap == 0 {
				return fmt.Errorf("the phrase %q must begin with its verb", phrase)
			}
			p.verb = l.id(p.Words[0])
			if n := len(p.Words); n > 1 {
				p.last = Last{l.id(p.Words[n-1]), int32((n - 1) * (1 + Between))}
				if gap {
					p.last.Reach += GapWords - Between
				}
			}
			l.addForms(p.Words[0])
			l.ways = append(l.ways, p)
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
		l.addForm(f, w[0])
	}
	return nil
}

// addForm lets a word be a form of a verb.
func (l *Lexicon) addForm(text, plain string) {
	of, id := l.id(text), l.id(plain)
	next := &l.words[of].form
	for *next > 0 {
		if f := &l.forms[*next-1]; f.plain == plain {
			return
		} else {
			next = &f.next
		}
	}
	*next = int32(len(l.forms) + 1)
	l.forms = append(l.forms, form{of: of, plain: plain, id: id})
}

// addForms adds the regular forms of a verb, once, where it has no irregular ones.
func (l *Lexicon) addForms(v string) {
	for i := l.words[l.id(v)].form; i > 0; i = l.forms[i-1].next {
		if l.forms[i-1].plain == v {
			return
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
		l.addForm(f, v)
	}
}

// MoodNames are the moods that talk.txt may name.
var MoodNames = []string{"negated", "conditional", "hypothetical", "announced", "off-camera", "other", "question", "hedge",
	"not-needed", "optional", "ad", "greeting", "list", "prior", "caution", "together", "elsewhere", "passing"}

// mood reads "mood: phrase, phrase".
func (l *Lexicon) mood(cols []string) error {
	label, phrases, ok := strings.Cut(strings.Join(cols, "|"), ":")
	if !ok {
		return fmt.Errorf("want mood: phrase, phrase")
	}
	if label = strings.TrimSpace(label); !slices.Contains(MoodNames, label) {
		return fmt.Errorf("no mood %q; use one of %s", label, strings.Join(MoodNames, ", "))
	}
	for p := range each(phrases) {
		if w := l.idsOf(p); len(w) > 0 {
			labels := l.moods.add(w)
			*labels = append(*labels, label)
		}
	}
	return nil
}

func (l *Lexicon) filler(cols []string) error {
	if w := l.idsOf(cols[0]); len(w) > 0 {
		*l.fillers.add(w) = true
	}
	return nil
}

var signals = map[string]bool{"check": true, "DANGER": true, "WARNING": true, "CAUTION": true, "NOTICE": true}

// A Use is what is done with a tool, or with what is used up, where no verb says it.
type Use struct {
	Action *Action
	Verb   string // how an instruction begins: "Brush"
}

// useLine reads a line of uses.txt. Its actions are read before, with the verbs.
func (l *Lexicon) useLine(cols []string) error {
	if len(cols) != 3 {
		return fmt.Errorf("want action | imperative | tools")
	}
	a := l.actions[cols[0]]
	if a == nil {
		return fmt.Errorf("no action %q among the verbs", cols[0])
	}
	if l.uses == nil {
		l.uses = map[string]Use{}
	}
	for name := range each(cols[2]) {
		l.uses[name] = Use{Action: a, Verb: cols[1]}
	}
	return nil
}

// Use tells what is done with a tool by its name, of which the last words count: "old
// wire brush". The action is nil where that is not known.
func (l *Lexicon) Use(name string) Use {
	for {
		if u, ok := l.uses[name]; ok {
			return u
		}
		_, rest, more := strings.Cut(name, " ")
		if !more {
			return Use{}
		}
		name = rest
	}
}

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
	for w := range each(cols[0]) {
		l.words[l.id(w)].innocent = true
	}
	return nil
}

// finish sorts what was read into lists by word.
func (l *Lexicon) finish() {
	n := len(l.words)
	l.lemmas = listed(n, len(l.forms), func(i int) (ID, string) { return l.forms[i].of, l.forms[i].plain })
	l.plain = listed(n, len(l.forms), func(i int) (ID, ID) { return l.forms[i].of, l.forms[i].id })
	longest := 0
	for i := range l.ways {
		longest = max(longest, len(l.ways[i].Words))
	}
	order := make([]int32, 0, len(l.ways))
	for words := longest; words > 0; words-- { // the earlier line wins a tie
		for i := range l.ways {
			if len(l.ways[i].Words) == words {
				order = append(order, int32(i))
			}
		}
	}
	l.patterns = listed(n, len(order), func(i int) (ID, *Pattern) { p := &l.ways[order[i]]; return p.verb, p })
	l.lasts = listed(n, len(order), func(i int) (ID, Last) { p := &l.ways[order[i]]; return p.verb, p.last })
	l.gate.finish(l.words)
	l.forms, l.ways, l.scratch, l.slab = nil, nil, nil, slab{}
}

// Things returns the terms of the longest name that the words begin with, and
// how many words it has; 0 where none does.
func (l *Lexicon) Things(words []ID) ([]*Term, int) {
	group, n := l.things.longest(words)
	return l.groups[group], n
}

// Begins tells whether a name, or a cue, begins with the word.
func (l *Lexicon) Begins(w ID) (name, cue bool) {
	return w != 0 && l.things.get(0, w) != 0, w != 0 && l.moods.get(0, w) != 0
}

// Moods returns the cue labels of the longest cue that the words begin with.
func (l *Lexicon) Moods(words []ID) ([]string, int) { return l.moods.longest(words) }

// Filler returns how many words of filler the words begin with.
func (l *Lexicon) Filler(words []ID) int {
	_, n := l.fillers.longest(words)
	return n
}

// Lemmas returns the plain forms of the verb that w may be a form of.
func (l *Lexicon) Lemmas(w string) []string { return l.lemmas.of(l.ID(w)) }

// LemmasOf returns the IDs of the plain forms of the verb that a word may be a form of.
func (l *Lexicon) LemmasOf(w ID) []ID { return l.plain.of(w) }

// PatternsOf returns the ways of saying an action with the verb, longest first.
func (l *Lexicon) PatternsOf(verb ID) []*Pattern { return l.patterns.of(verb) }

// Last is the last word of a pattern, 0 for a verb by itself, and how many words
// after the verb it may stand at most. Where it does not, the pattern is not said.
type Last struct {
	Word  ID
	Reach int32
}

// LastsOf returns the last words of PatternsOf.
func (l *Lexicon) LastsOf(verb ID) []Last { return l.lasts.of(verb) }

// Patterns returns the ways of saying an action with the verb, longest first.
func (l *Lexicon) Patterns(verb string) []*Pattern { return l.patterns.of(l.ID(verb)) }

// Action returns the action of that name, or nil.
func (l *Lexicon) Action(name string) *Action { return l.actions[name] }

// Terms returns every term, in the order of the files.
func (l *Lexicon) Terms() []*Term { return l.terms }
