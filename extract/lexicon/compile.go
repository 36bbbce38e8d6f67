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

// A compiler makes a Lexicon of the text that people edit. It holds what is needed
// for that alone.
type compiler struct {
	*Lexicon
	called  phrasesOf[*Term] // in every number
	numbers map[ID][2]ID     // by the last word of a name: its plural and its singular
	moods   phrasesOf[string]
	fillers phrasesOf[bool]
	forms   []form // of verbs, each once
	known   map[form]bool
	ways    []saying
	texts   []string // their words
	actions map[string]*Action
	uses    map[string]Use
	hearing hearing
	grammar grammar
	scratch []ID
}

// form is a form of a verb with its plain form.
type form struct{ of, plain ID }

// saying is a pattern with its first and its last word.
type saying struct {
	Pattern
	verb ID
	last Last
}

// id returns the number of a word, a new one where it has none.
func (c *compiler) id(text string) ID {
	n := c.ids.place(text, c.words)
	if *n == 0 {
		c.words = append(c.words, word{text: text})
		if 2*len(c.words) > len(c.ids) {
			c.ids = newIndex(4*len(c.ids), c.words)
		} else {
			*n = ID(len(c.words) - 1)
		}
		return ID(len(c.words) - 1)
	}
	return *n
}

// idsOf returns the numbers of the words of a text, good until it is called again.
func (c *compiler) idsOf(text string) []ID {
	c.scratch = c.scratch[:0]
	for w := range eachWord(text) {
		c.scratch = append(c.scratch, c.id(w))
	}
	return c.scratch
}

// Load returns the embedded vocabulary with the person's own files laid over it, all of
// it compiled anew. An own file has sections: a line "[tools]" (or fasteners, parts, partnames,
// consumables, verbs, uses, talk, open, inflections, fillers) followed by lines in the form
// of the embedded file of that name. An error names file and line.
func Load(overlay ...string) (*Lexicon, error) {
	c, err := compile(overlay)
	if err != nil {
		return nil, err
	}
	return c.Lexicon, nil
}

func compile(overlay []string) (*compiler, error) {
	// The sizes, about what there is, spare the lists their growing; any would do.
	c := &compiler{Lexicon: &Lexicon{ids: newIndex(1<<15, nil), words: make([]word, 1, 9<<10), terms: make([]*Term, 0, 9<<10)},
		called: roomFor[*Term](18<<10, 40<<10), numbers: make(map[ID][2]ID, 1<<12), forms: make([]form, 0, 1<<12), known: make(map[form]bool, 1<<12), ways: make([]saying, 0, 5<<10), texts: make([]string, 0, 12<<10),
		actions: map[string]*Action{}, uses: map[string]Use{}, hearing: hearing{alone: map[ID]bool{}, byKey: map[string][]*Term{}}, grammar: newGrammar()}
	for _, f := range &files {
		if err := c.read(f.section+".txt", f.section, *f.text, false); err != nil {
			return nil, err
		}
	}
	c.grammar.fixed = true
	for _, path := range overlay {
		data, err := os.ReadFile(path)
		if err != nil {
			return nil, fmt.Errorf("failed to read vocabulary: %w", err)
		}
		if err := c.read(path, "", string(data), true); err != nil {
			return nil, err
		}
	}
	var names sync.WaitGroup
	names.Go(func() {
		c.things = c.called.trie()
		c.things.vals = joined(c.things.vals)
	})
	err := c.indexPhrases()
	names.Wait()
	if err != nil {
		return nil, fmt.Errorf("open phrases: %w", err)
	}
	c.finish()
	return c, nil
}

// sections maps a section's name to what reads one of its lines.
var sections map[string]func(c *compiler, cols []string) error

func init() {
	sections = map[string]func(*compiler, []string) error{
		"tools":       func(c *compiler, cols []string) error { return c.term(Tool, cols) },
		"fasteners":   func(c *compiler, cols []string) error { return c.term(Fastener, cols) },
		"parts":       func(c *compiler, cols []string) error { return c.term(Part, cols) },
		"partnames":   func(c *compiler, cols []string) error { return c.names(Part, cols) },
		"consumables": func(c *compiler, cols []string) error { return c.term(Consumable, cols) },
		"verbs":       (*compiler).verb,
		"inflections": (*compiler).inflect,
		"talk":        (*compiler).mood,
		"open":        (*compiler).phraseLine,
		"warn":        (*compiler).phraseLine,
		"fates":       (*compiler).phraseLine,
		"fillers":     (*compiler).filler,
		"uses":        (*compiler).useLine,
		"usual":       (*compiler).usualLine,
		"innocent":    (*compiler).innocentWord,
	}
}

// LineError is a line of a vocabulary file that cannot be read.
type LineError struct {
	File string
	Line int
	Msg  string
}

func (e *LineError) Error() string { return fmt.Sprintf("%s:%d: %s", e.File, e.Line, e.Msg) }

func (c *compiler) read(file, section, data string, own bool) error {
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
		for col := range strings.SplitSeq(line, "|") {
			cols = append(cols, strings.TrimSpace(col))
		}
		if err := read(c, cols); err != nil {
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

func (c *compiler) term(kind Kind, cols []string) error {
	if len(cols) > 4 {
		return fmt.Errorf("too many columns: want name | also said | misheard | note")
	}
	name := cols[0]
	if len(cols) == 1 {
		for n := range each(name) { // a bare line may list several names
			if !c.addTerm(Term{Name: n, Said: n, Kind: kind}) {
				return fmt.Errorf("the name is empty")
			}
		}
		return nil
	}
	if !c.addTerm(Term{Name: name, Said: name, Kind: kind, Note: col(cols, 3)}) {
		return fmt.Errorf("the name is empty")
	}
	for s := range each(col(cols, 1)) {
		// What people call it is its name too: the record says it as it was said.
		s, exact := strings.CutPrefix(s, "=")
		c.addTerm(Term{Name: singular(s), Said: s, Kind: kind, Exact: exact})
	}
	for s := range each(col(cols, 2)) {
		s, weak := strings.CutPrefix(s, "?")
		c.addTerm(Term{Name: name, Said: s, Kind: kind, Misheard: true, Weak: weak})
	}
	return nil
}

// names reads a line of names that are known only where they are said right.
func (c *compiler) names(kind Kind, cols []string) error {
	if len(cols) > 1 {
		return fmt.Errorf("want names with commas between")
	}
	for name := range each(cols[0]) {
		name, soft := strings.CutPrefix(name, "~")
		if !c.addTerm(Term{Name: name, Said: name, Kind: kind, Soft: soft, Exact: true}) {
			return fmt.Errorf("the name is empty")
		}
	}
	return nil
}

// addTerm adds a term, unless its name has no words.
func (c *compiler) addTerm(term Term) bool {
	ids := c.idsOf(term.Said)
	if len(ids) == 0 {
		return false
	}
	t := &term
	c.terms = append(c.terms, t)
	c.hear(t, ids)
	for _, w := range ids {
		c.words[w].named = true
	}
	c.called.add(t, ids...)
	end := len(ids) - 1
	last := ids[end]
	numbers, known := c.numbers[last]
	if !known {
		text := c.words[last].text
		numbers = [2]ID{c.id(plural(text)), c.id(singularWord(text))}
		c.numbers[last] = numbers
	}
	for _, ids[end] = range numbers {
		if ids[end] != last {
			c.called.add(t, ids...)
		}
	}
	return true
}

// joined returns the terms of each phrase with those made one that differ by their kinds only.
func joined(terms lists[*Term]) lists[*Term] {
	out := lists[*Term]{make([]*Term, 0, len(terms.all)), make([]int32, 0, len(terms.start))}
	for n := range len(terms.start) - 1 {
		out.start = append(out.start, int32(len(out.all)))
	each:
		for _, t := range terms.of(ID(n)) {
			for i, o := range out.all[out.start[n]:] {
				if o.Misheard == t.Misheard && o.Weak == t.Weak && o.Soft == t.Soft {
					both := *o
					both.Kind |= t.Kind
					out.all[int(out.start[n])+i] = &both
					continue each
				}
			}
			out.all = append(out.all, t)
		}
	}
	out.start = append(out.start, int32(len(out.all)))
	return out
}

func (c *compiler) verb(cols []string) error {
	if len(cols) < 3 || len(cols) > 4 {
		return fmt.Errorf("want action | imperative | with the thing as object | with the thing as subject")
	}
	a := c.actions[cols[0]]
	if a == nil {
		a = &Action{Name: cols[0], Imperative: cols[1]}
		c.actions[cols[0]] = a
	}
	for i, said := range [...]string{cols[2], col(cols, 3)} {
		for phrase := range each(said) {
			p := saying{Pattern: Pattern{Action: a, Subject: i == 1, Gap: -1}}
			before, after, gap := strings.Cut(phrase, "~")
			lo := len(c.texts)
			c.texts = slices.AppendSeq(c.texts, eachWord(before))
			if gap {
				p.Gap = len(c.texts) - lo
				c.texts = slices.AppendSeq(c.texts, eachWord(after))
			}
			p.Words = c.texts[lo:len(c.texts):len(c.texts)]
			if len(p.Words) == 0 {
				return fmt.Errorf("the phrase %q has no verb", phrase)
			}
			if p.Gap == 0 {
				return fmt.Errorf("the phrase %q must begin with its verb", phrase)
			}
			p.verb = c.id(p.Words[0])
			if n := len(p.Words); n > 1 {
				p.last = Last{c.id(p.Words[n-1]), int32((n - 1) * (1 + Between))}
				if gap {
					p.last.Reach += GapWords - Between
				}
			}
			c.addForms(p.Words[0])
			c.ways = append(c.ways, p)
		}
	}
	return nil
}

func (c *compiler) inflect(cols []string) error {
	w := strings.Fields(cols[0])
	if len(w) < 2 {
		return fmt.Errorf("want the plain form and at least one other form")
	}
	for _, f := range w {
		c.addForm(f, w[0])
	}
	return nil
}

// addForm lets a word be a form of a verb.
func (c *compiler) addForm(text, plain string) {
	f := form{c.id(text), c.id(plain)}
	if !c.known[f] {
		c.known[f] = true
		c.forms = append(c.forms, f)
	}
}

// addForms adds the regular forms of a verb, once, where it has no irregular ones.
func (c *compiler) addForms(v string) {
	if id := c.id(v); c.known[form{id, id}] {
		return
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
		c.addForm(f, v)
	}
}

// MoodNames are the moods that talk.txt may name.
var MoodNames = []string{"negated", "conditional", "hypothetical", "announced", "off-camera", "other", "question", "hedge",
	"not-needed", "optional", "ad", "greeting", "list", "prior", "caution", "together", "elsewhere", "passing"}

// mood reads "mood: phrase, phrase".
func (c *compiler) mood(cols []string) error {
	label, phrases, ok := strings.Cut(strings.Join(cols, "|"), ":")
	if !ok {
		return fmt.Errorf("want mood: phrase, phrase")
	}
	if label = strings.TrimSpace(label); !slices.Contains(MoodNames, label) {
		return fmt.Errorf("no mood %q; use one of %s", label, strings.Join(MoodNames, ", "))
	}
	for p := range each(phrases) {
		if w := c.idsOf(p); len(w) > 0 {
			c.moods.add(label, w...)
		}
	}
	return nil
}

func (c *compiler) filler(cols []string) error {
	if w := c.idsOf(cols[0]); len(w) > 0 {
		c.fillers.add(strings.HasSuffix(cols[0], "."), w...)
	}
	return nil
}

var signals = map[string]bool{"check": true, "DANGER": true, "WARNING": true, "CAUTION": true, "NOTICE": true}

// useLine reads a line of uses.txt. Its actions are read before, with the verbs.
func (c *compiler) useLine(cols []string) error {
	if len(cols) != 3 {
		return fmt.Errorf("want action | imperative | tools")
	}
	a := c.actions[cols[0]]
	if a == nil {
		return fmt.Errorf("no action %q among the verbs", cols[0])
	}
	for name := range each(cols[2]) {
		c.uses[name] = Use{Action: a, Verb: cols[1]}
	}
	return nil
}

func (c *compiler) usualLine(cols []string) error {
	if len(cols) != 5 {
		return fmt.Errorf("want check or signal word | when | unless heard | text | source")
	}
	if !signals[cols[0]] {
		return fmt.Errorf("%q is neither check nor a signal word (DANGER, WARNING, CAUTION, NOTICE)", cols[0])
	}
	c.usual = append(c.usual, Usual{Signal: cols[0], When: list(cols[1]), Unless: list(cols[2]), Text: cols[3], Source: cols[4]})
	return nil
}

func (c *compiler) innocentWord(cols []string) error {
	for w := range each(cols[0]) {
		c.words[c.id(w)].innocent = true
	}
	return nil
}

// finish sorts what was read into lists by word and tables by name.
func (c *compiler) finish() {
	l, n := c.Lexicon, len(c.words)
	l.moods, l.fillers = c.moods.trie(), c.fillers.trie()
	l.lemmas = listed(n, len(c.forms), func(i int) (ID, string) { return c.forms[i].of, c.words[c.forms[i].plain].text })
	l.plain = listed(n, len(c.forms), func(i int) (ID, ID) { return c.forms[i].of, c.forms[i].plain })
	slices.SortStableFunc(c.ways, func(a, b saying) int { return len(b.Words) - len(a.Words) }) // the earlier line wins a tie
	l.patterns = listed(n, len(c.ways), func(i int) (ID, *Pattern) { return c.ways[i].verb, &c.ways[i].Pattern })
	l.lasts = listed(n, len(c.ways), func(i int) (ID, Last) { return c.ways[i].verb, c.ways[i].last })
	l.actions, l.uses = tableOf(c.actions), tableOf(c.uses)
	l.gate.byKey = tableOf(c.hearing.byKey)
	l.gate.pairs = listed(n, len(c.hearing.pairs), func(i int) (ID, pairTerm) { return c.hearing.lasts[i], c.hearing.pairs[i] })
}
