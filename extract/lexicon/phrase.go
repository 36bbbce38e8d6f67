package lexicon

import (
	"fmt"
	"math/bits"
	"slices"
	"strings"
)

// Signal is a way of talking that open.txt gives a name to: "doubt", "promise" …
type Signal struct {
	Name string
	Len  int // how many words it takes
}

// phrase is a pattern of words. An element is a word, the name of a set of
// phrases ("<will>"), or a gap of up to so many words ("...").
type phrase []element

type element struct {
	word     ID
	set      int32 // the number of the set, 0 where the element is none
	gap      int8
	optional bool
}

// maxGap is how many words "..." stands for at most.
const maxGap = 6

// phrases are the named patterns of open.txt as they are followed: those that begin
// alike are followed together. What leads to a step of the trie is a word, or below 0
// an element that is none; to node 1, where signals begin, it is 0, and to those after
// it, where the phrases of a set do, the number of the set.
type phrases struct {
	steps   trie[int32]  // what ends at a step: a signal, one more than its place in signals, or 0 for a phrase of a set
	odd     []element    // that are no words; ^i leads to element i
	signals []int32      // by signal: its name
	names   []string     // of the signals
	sets    int          // how many there are; they are numbered from 1
	first   lists[int32] // by the first word: the steps after node 1 that may begin with it
	loose   []bool       // by ID
	opens   []uint64     // by ID: a bit for each set that may begin with the word, shared by few
}

// begins is the node where signals begin; the phrases of set k begin at begins + k.
const begins = 1

// grammar is what phrases are made of.
type grammar struct {
	numbers  map[string]int32 // of the sets
	sets     []set            // by number
	names    []string         // of the signals
	signals  []signal
	elements []element // what phrases are cut from
	fixed    bool      // no signal has a new name: nothing would listen for it
}

func newGrammar() grammar {
	return grammar{numbers: map[string]int32{}, sets: make([]set, 1), signals: make([]signal, 0, 9<<10), elements: make([]element, 0, 48<<10)}
}

type signal struct {
	name int32 // into names
	phrase
}

type set struct {
	name    string
	phrases []phrase
}

func (c *compiler) parsePhrase(s string) (phrase, error) {
	g := &c.grammar
	p, lo := g.elements, len(g.elements)
	for f := range strings.FieldsSeq(s) {
		var e element
		f, e.optional = strings.CutSuffix(f, "?")
		switch {
		case f == "...":
			e.gap = maxGap
		case strings.HasPrefix(f, "<") && strings.HasSuffix(f, ">"):
			e.set = g.set(f)
		case strings.HasPrefix(f, "'"): // "'ll": a clitic by itself
			e.word = c.id(f)
		default:
			for w := range eachWord(f) {
				p = append(p, element{word: c.id(w), optional: e.optional})
			}
			continue
		}
		p = append(p, e)
	}
	g.elements = p
	if p = p[lo:len(p):len(p)]; len(p) == 0 || p[0].gap > 0 || p[0].optional {
		return nil, fmt.Errorf("the phrase %q must begin with a word or a set", s)
	}
	return p, nil
}

// phraseLine reads "name | phrase, phrase"; a name in angle brackets is a set.
func (c *compiler) phraseLine(cols []string) error {
	if len(cols) != 2 || cols[0] == "" {
		return fmt.Errorf("want name | phrases, or <set> | phrases")
	}
	g, name := &c.grammar, cols[0]
	isSet, k := strings.HasPrefix(name, "<"), int32(-1)
	for s := range each(cols[1]) {
		p, err := c.parsePhrase(s)
		if err != nil {
			return err
		}
		if k < 0 { // the first of the line
			if k, err = g.number(name, isSet); err != nil {
				return err
			}
		}
		if isSet {
			g.sets[k].phrases = append(g.sets[k].phrases, p)
		} else {
			g.signals = append(g.signals, signal{k, p})
		}
	}
	return nil
}

// number returns the number of a set or a signal, a new one where it has none yet.
func (g *grammar) number(name string, isSet bool) (int32, error) {
	if isSet {
		return g.set(name), nil
	}
	k := slices.Index(g.names, name)
	if k < 0 {
		if g.fixed {
			return 0, fmt.Errorf("no signal %q; use one of %s", name, strings.Join(g.names, ", "))
		}
		k, g.names = len(g.names), append(g.names, name)
	}
	return int32(k), nil
}

// set returns the number of a set, a new one where it has none yet.
func (g *grammar) set(name string) int32 {
	k, ok := g.numbers[name]
	if !ok {
		k = int32(len(g.sets))
		g.numbers[name] = k
		g.sets = append(g.sets, set{name: name})
	}
	return k
}

// indexPhrases joins the phrases into steps, finds the words that each signal may
// begin with, and checks that the sets exist and are not made of themselves.
func (c *compiler) indexPhrases() error {
	for w := range strings.FieldsSeq(loose) {
		c.id(w)
	}
	n, sets, g := len(c.words), c.grammar.sets, &c.said
	*g = phrases{sets: len(sets) - 1, loose: make([]bool, n), opens: make([]uint64, n)}
	for w := range strings.FieldsSeq(loose) {
		g.loose[c.id(w)] = true
	}

	steps := roomFor[int32](9<<10, 48<<10)
	lead := map[element]ID{} // what leads to the step of an element that is no word
	add := func(from int, p phrase, val int32) {
		path := append(c.scratch[:0], ID(from))
		for _, e := range p {
			w := e.word
			if e != (element{word: w}) {
				if lead[e] == 0 {
					lead[e] = ^ID(len(g.odd))
					g.odd = append(g.odd, e)
				}
				w = lead[e]
			}
			path = append(path, w)
		}
		steps.add(val, path...)
	}

	firsts := make([][]ID, len(sets)) // the words that a set may begin with, each once
	const doing, done = 1, 2
	state := make([]uint8, len(sets))
	taken := make([]int, n) // by word: the last set that took it
	var visit func(k int) error
	visit = func(k int) error {
		switch {
		case state[k] == done:
			return nil
		case state[k] == doing:
			return fmt.Errorf("the set %s is made of itself", sets[k].name)
		case len(sets[k].phrases) == 0:
			return fmt.Errorf("no set %s", sets[k].name)
		}
		state[k] = doing
		for _, p := range sets[k].phrases {
			for _, e := range p {
				if e.set > 0 {
					if err := visit(int(e.set)); err != nil {
						return err
					}
				}
			}
			add(k, p, 0)
		}
		for _, p := range sets[k].phrases {
			words := []ID{p[0].word}
			if p[0].set > 0 {
				words = firsts[p[0].set]
			}
			for _, w := range words {
				if taken[w] != k {
					taken[w] = k
					firsts[k] = append(firsts[k], w)
					g.opens[w] |= 1 << (k % 64)
				}
			}
		}
		state[k] = done
		return nil
	}
	for k := 1; k < len(sets); k++ {
		if err := visit(k); err != nil {
			return err
		}
	}
	g.names = c.grammar.names
	for i, s := range c.grammar.signals {
		add(0, s.phrase, int32(i+1))
		g.signals = append(g.signals, s.name)
	}
	g.steps = steps.trie()

	type first struct {
		word ID
		step int32
	}
	var all []first
	for s := g.steps.after[begins]; s < g.steps.after[begins+1]; s++ {
		w := g.steps.words[s]
		if w > 0 {
			all = append(all, first{w, s})
			continue
		}
		for _, w := range firsts[g.odd[^w].set] {
			all = append(all, first{w, s})
		}
	}
	g.first = listed(n, len(all), func(i int) (ID, int32) { return all[i].word, all[i].step })
	return nil
}

// loose words may stand anywhere inside a phrase.
const loose = "just probably also still only really honestly then maybe uh um er simply even actually definitely quickly all now eventually properly real quite exactly completely entirely altogether either yet ever"

// window is how many words a phrase may reach over; none takes half as many.
const window = 64

// matcher matches phrases against a stretch of words. A set of places in it is a
// bit mask, so that each element of a phrase is looked at once however many ways
// there are to come to it, and what a set matches at a place is found once.
type matcher struct {
	*phrases
	words []ID
	found []found
	next  []reached
	known []uint64 // by set: the places at which ends is known
	ends  []uint64 // by set and place: the places where the set's phrases end
}

// found is a signal with the last place where it ends.
type found struct{ signal, end int }

// reached is a step with the places where its element ends.
type reached struct {
	step int32
	at   uint64
}

// at returns the word at a place, 0 past the end.
func (m *matcher) at(i int) ID {
	if i < len(m.words) {
		return m.words[i]
	}
	return 0
}

// take returns where an element may end when it begins at one of some places.
func (m *matcher) take(e *element, at uint64) (to uint64) {
	if e.optional {
		to = at
	}
	for ; at != 0; at &= at - 1 {
		i := bits.TrailingZeros64(at)
		if e.gap > 0 {
			n := min(int(e.gap), len(m.words)-i) // a gap ends where the words do
			to |= (1<<(n+1) - 1) << i
			continue
		}
		for k := i; k <= i+2 && k < window-1; k++ {
			if e.set > 0 {
				to |= m.set(e.set, k)
			} else if m.at(k) == e.word {
				to |= 1 << (k + 1)
			}
			if k == 0 || !m.loose[m.at(k)] {
				break
			}
		}
	}
	return to
}

// follow goes on from a step whose element ends at some places. It finds the
// signals that end on the way, and returns where the phrases of a set do.
func (m *matcher) follow(n int32, at uint64) (ends uint64) {
	for _, v := range m.steps.vals.of(ID(n)) {
		if v == 0 {
			ends = at
		} else {
			m.found = append(m.found, found{int(v - 1), bits.Len64(at) - 1})
		}
	}
	next, end := m.steps.after[n], m.steps.after[n+1]
	for ; next < end && m.steps.words[next] < 0; next++ {
		if to := m.take(&m.odd[^m.steps.words[next]], at); to != 0 {
			ends |= m.follow(next, to)
		}
	}
	if next == end {
		return ends
	}
	// which words follow is asked of the places, not of each word that might
	lo := len(m.next)
	for ; at != 0; at &= at - 1 {
		i := bits.TrailingZeros64(at)
		for k := i; k <= i+2 && k < len(m.words); k++ {
			w := m.words[k]
			if to := m.steps.get(n, w); to != 0 {
				m.reach(lo, reached{to, 1 << (k + 1)})
			}
			if k == 0 || !m.loose[w] {
				break
			}
		}
	}
	for i, hi := lo, len(m.next); i < hi; i++ {
		ends |= m.follow(m.next[i].step, m.next[i].at)
	}
	m.next = m.next[:lo]
	return ends
}

// reach adds places to those of a step among the steps reached from lo on.
func (m *matcher) reach(lo int, r reached) {
	for i := range m.next[lo:] {
		if n := &m.next[lo+i]; n.step == r.step {
			n.at |= r.at
			return
		}
	}
	m.next = append(m.next, r)
}

// set returns where a phrase of a set may end when it begins at a place.
func (m *matcher) set(k int32, i int) uint64 {
	if w := m.at(i); m.opens[w]>>(k%64)&1 == 0 && (i == 0 || !m.loose[w]) {
		return 0
	}
	at := int(k)*window + i
	if m.known[k]&(1<<i) == 0 {
		m.ends[at] = m.follow(begins+k, 1<<i)
		m.known[k] |= 1 << i
	}
	return m.ends[at]
}

// Signals returns the signals that the words begin with, each in its longest form.
func (l *Lexicon) Signals(words []ID) []Signal {
	if len(words) == 0 {
		return nil
	}
	first := l.said.first.of(words[0])
	if len(first) == 0 {
		return nil
	}
	m, _ := l.matchers.Get().(*matcher)
	if m == nil {
		n := l.said.sets + 1
		m = &matcher{phrases: &l.said, known: make([]uint64, n), ends: make([]uint64, n*window)}
	}
	defer l.matchers.Put(m)
	m.words = words[:min(len(words), window-1)]
	clear(m.known)
	m.found = m.found[:0]
	for _, s := range first {
		to := uint64(1 << 1) // after the first word
		if w := m.steps.words[s]; w < 0 {
			to = m.take(&m.odd[^w], 1)
		}
		if to != 0 {
			m.follow(s, to)
		}
	}
	if len(m.found) == 0 {
		return nil
	}
	slices.SortFunc(m.found, func(a, b found) int { return a.signal - b.signal }) // the order of the file
	var out []Signal
	for _, f := range m.found {
		name := l.said.names[l.said.signals[f.signal]]
		if i := slices.IndexFunc(out, func(s Signal) bool { return s.Name == name }); i >= 0 {
			out[i].Len = max(out[i].Len, f.end)
		} else {
			out = append(out, Signal{name, f.end})
		}
	}
	return out
}
