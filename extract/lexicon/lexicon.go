// Package lexicon holds what a person who knows the trade may edit: the names of
// tools, fasteners, parts and consumables, the ways of saying what is done, and
// the ways people frame what they say. It is data read from text files; Default
// gives the embedded ones, Load lays a person's own file over them.
package lexicon

import (
	"slices"
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
	words    []word // by ID
	terms    []*Term
	things   trie[*Term]
	moods    trie[string]
	fillers  trie[bool] // true for a sentence that says nothing
	said     phrases
	matchers sync.Pool       // of *matcher
	lemmas   lists[string]   // by a form of a verb: its plain forms
	plain    lists[ID]       // the same by their IDs
	patterns lists[*Pattern] // by the plain form, longest first
	lasts    lists[Last]     // their last words
	actions  table[*Action]
	uses     table[Use]
	usual    []Usual
	gate     gate
}

// ID stands for a word of the vocabulary, so that phrases are matched by number.
// 0 stands for every word that is in no phrase. An ID is of its Lexicon only.
type ID int32

// word is what is known of a word of the vocabulary.
type word struct {
	text     string
	named    bool // it stands in a name
	innocent bool // it is an everyday word that sounds like a name
}

// ID returns the number of a folded word.
func (l *Lexicon) ID(word string) ID { return *l.ids.place(word, l.words) }

var (
	defaultOnce sync.Once
	defaultLex  *Lexicon
)

// Default returns the embedded vocabulary, as it was compiled where it still is what
// the files say. The embedded files are known to be good, so it cannot fail.
func Default() *Lexicon {
	defaultOnce.Do(func() {
		if compiled != nil && compiledOf == sum() {
			defaultLex = compiled
			return
		}
		lex, err := Load()
		if err != nil {
			panic(err) // a broken embedded file is a broken build
		}
		defaultLex = lex
	})
	return defaultLex
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

// A Use is what is done with a tool, or with what is used up, where no verb says it.
type Use struct {
	Action *Action
	Verb   string // how an instruction begins: "Brush"
}

// Use tells what is done with a tool by its name, of which the last words count: "old
// wire brush". The action is nil where that is not known.
func (l *Lexicon) Use(name string) Use {
	for {
		if u, ok := l.uses.get(name); ok {
			return u
		}
		_, rest, more := strings.Cut(name, " ")
		if !more {
			return Use{}
		}
		name = rest
	}
}

// Usual returns the usual checks and cautions, in the order of the file.
func (l *Lexicon) Usual() []Usual { return l.usual }

// Things returns the terms of the longest name that the words begin with, and
// how many words it has; 0 where none does.
func (l *Lexicon) Things(words []ID) ([]*Term, int) { return l.things.longest(words) }

// Begins tells whether a name, or a cue, begins with the word.
func (l *Lexicon) Begins(w ID) (name, cue bool) {
	return w != 0 && l.things.get(0, w) != 0, w != 0 && l.moods.get(0, w) != 0
}

// Moods returns the cue labels of the longest cue that the words begin with.
func (l *Lexicon) Moods(words []ID) ([]string, int) { return l.moods.longest(words) }

// Filler returns how many words of filler the words begin with.
func (l *Lexicon) Filler(words []ID) int {
	whole, n := l.fillers.longest(words)
	for n > 0 && !slices.Contains(whole, false) { // what is filler only as a sentence
		whole, n = l.fillers.longest(words[:n-1])
	}
	return n
}

// SaysNothing tells whether the words are a sentence that says nothing: "hang on".
func (l *Lexicon) SaysNothing(sentence []ID) bool {
	whole, n := l.fillers.longest(sentence)
	return n == len(sentence) && slices.Contains(whole, true)
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
func (l *Lexicon) Action(name string) *Action {
	a, _ := l.actions.get(name)
	return a
}

// Terms returns every term, in the order of the files.
func (l *Lexicon) Terms() []*Term { return l.terms }
