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
	set      int // into phrases.sets, -1 where the element is none
	gap      int
	optional bool
}

// maxGap is how many words "..." stands for at most.
const maxGap = 6

// phrases are the named patterns of open.txt and the sets they are made of.
type phrases struct {
	names   map[string]int // of the sets, into sets
	sets    []set
	signals []signal
	first   [][]*step // by the ID of the first word: the steps that may begin with it
	loose   []bool    // by ID
	fixed   bool      // no signal has a new name: nothing would listen for it
}

// step is an element of signals with what may follow it: signals that begin
// alike are followed together.
type step struct {
	element
	next []*step
	ends []int // the signals that end here
}

// then returns the step after another that takes an element.
func then(steps *[]*step, e element) *step {
	for _, s := range *steps {
		if s.element == e {
			return s
		}
	}
	s := &step{element: e}
	*steps = append(*steps, s)
	return s
}

type set struct {
	name    string
	phrases []phrase
}

type signal struct {
	name string
	phrase
}

func (l *Lexicon) parsePhrase(s string) (phrase, error) {
	var p phrase
	for _, f := range strings.Fields(s) {
		e := element{set: -1}
		if e.optional = strings.HasSuffix(f, "?"); e.optional {
			f = strings.TrimSuffix(f, "?")
		}
		switch {
		case f == "...":
			e.gap = maxGap
		case strings.HasPrefix(f, "<") && strings.HasSuffix(f, ">"):
			e.set = l.said.set(f)
		default:
			ws := Words(f)
			if strings.HasPrefix(f, "'") {
				ws = []string{f} // "'ll": a clitic by itself
			}
			for _, w := range ws {
				p = append(p, element{word: l.id(w), set: -1, optional: e.optional})
			}
			continue
		}
		p = append(p, e)
	}
	if len(p) == 0 || p[0].gap > 0 || p[0].optional {
		return nil, fmt.Errorf("the phrase %q must begin with a word or a set", s)
	}
	return p, nil
}

// phraseLine reads "name | phrase, phrase"; a name in angle brackets is a set.
func (l *Lexicon) phraseLine(cols []string) error {
	if len(cols) != 2 || cols[0] == "" {
		return fmt.Errorf("want name | phrases, or <set> | phrases")
	}
	for _, s := range list(cols[1]) {
		p, err := l.parsePhrase(s)
		if err != nil {
			return err
		}
		if strings.HasPrefix(cols[0], "<") {
			k := l.said.set(cols[0])
			l.said.sets[k].phrases = append(l.said.sets[k].phrases, p)
		} else if l.said.fixed && !slices.ContainsFunc(l.said.signals, func(s signal) bool { return s.name == cols[0] }) {
			return fmt.Errorf("no signal %q; use one of %s", cols[0], strings.Join(l.said.signalNames(), ", "))
		} else {
			l.said.signals = append(l.said.signals, signal{cols[0], p})
		}
	}
	return nil
}

func (g *phrases) signalNames() []string {
	var names []string
	for _, s := range g.signals {
		if !slices.Contains(names, s.name) {
			names = append(names, s.name)
		}
	}
	return names
}

// set returns the number of a set, a new one where it has none yet.
func (g *phrases) set(name string) int {
	k, ok := g.names[name]
	if !ok {
		if g.names == nil {
			g.names = map[string]int{}
		}
		k = len(g.sets)
		g.names[name] = k
		g.sets = append(g.sets, set{name: name})
	}
	return k
}

// index finds the words that each signal may begin with, and checks that the
// sets exist and are not made of themselves.
func (l *Lexicon) indexPhrases() error {
	g := &l.said
	firsts := make([][]ID, len(g.sets)) // the words that a set may begin with, each once
	const doing, done = 1, 2
	state := make([]uint8, len(g.sets))
	var visit func(k int) error
	visit = func(k int) error {
		switch {
		case state[k] == done:
			return nil
		case state[k] == doing:
			return fmt.Errorf("the set %s is made of itself", g.sets[k].name)
		case len(g.sets[k].phrases) == 0:
			return fmt.Errorf("no set %s", g.sets[k].name)
		}
		state[k] = doing
		for _, p := range g.sets[k].phrases {
			for i, e := range p {
				if e.set >= 0 {
					if err := visit(e.set); err != nil {
						return err
					}
				}
				switch {
				case i > 0:
				case e.set >= 0:
					firsts[k] = append(firsts[k], firsts[e.set]...)
				default:
					firsts[k] = append(firsts[k], e.word)
				}
			}
		}
		slices.Sort(firsts[k])
		firsts[k] = slices.Compact(firsts[k])
		state[k] = done
		return nil
	}
	for k := range g.sets {
		if err := visit(k); err != nil {
			return err
		}
	}
	for w := range loose {
		l.id(w)
	}
	g.loose = make([]bool, len(l.ids)+1)
	for w := range loose {
		g.loose[l.id(w)] = true
	}
	var roots []*step
	for i, s := range g.signals {
		at := then(&roots, s.phrase[0])
		for _, e := range s.phrase[1:] {
			at = then(&at.next, e)
		}
		at.ends = append(at.ends, i)
	}
	g.first = make([][]*step, len(l.ids)+1)
	for _, s := range roots {
		if s.set < 0 {
			g.first[s.word] = append(g.first[s.word], s)
			continue
		}
		for _, w := range firsts[s.set] {
			g.first[w] = append(g.first[w], s)
		}
	}
	return nil
}

// loose words may stand anywhere inside a phrase.
var loose = map[string]bool{"just": true, "probably": true, "also": true, "still": true, "only": true, "really": true, "honestly": true, "then": true, "maybe": true,
	"uh": true, "um": true, "er": true, "simply": true, "even": true, "actually": true, "definitely": true, "quickly": true, "all": true, "now": true, "eventually": true, "properly": true, "real": true, "quite": true, "exactly": true, "completely": true, "entirely": true, "altogether": true, "either": true, "yet": true, "ever": true}

// window is how many words a phrase may reach over; none takes half as many.
const window = 64

// matcher matches phrases against a stretch of words. A set of places in it is a
// bit mask, so that each element of a phrase is looked at once however many ways
// there are to come to it, and what a set matches at a place is found once.
type matcher struct {
	*phrases
	words []ID
	found []found
	known []uint64 // by set: the places at which ends is known
	ends  []uint64 // by set and place: the places where the set's phrases end
}

// found is a signal with the last place where it ends.
type found struct{ signal, end int }

// at returns the word at a place, 0 past the end.
func (m *matcher) at(i int) ID {
	if i < len(m.words) {
		return m.words[i]
	}
	return 0
}

// take returns where an element may end when it begins at one of some places.
func (m *matcher) take(e element, at uint64) (to uint64) {
	if e.optional {
		to = at
	}
	for ; at != 0; at &= at - 1 {
		i := bits.TrailingZeros64(at)
		if e.gap > 0 {
			n := min(e.gap, len(m.words)-i) // a gap ends where the words do
			to |= (1<<(n+1) - 1) << i
			continue
		}
		for k := i; k <= i+2 && k < window-1; k++ {
			if e.set >= 0 {
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

// match returns where a phrase may end when it begins at a place.
func (m *matcher) match(p phrase, i int) uint64 {
	at := uint64(1) << i
	for _, e := range p {
		if at = m.take(e, at); at == 0 {
			break
		}
	}
	return at
}

// follow finds the signals that go on with a step from one of some places.
func (m *matcher) follow(s *step, at uint64) {
	if at = m.take(s.element, at); at == 0 {
		return
	}
	for _, k := range s.ends {
		m.found = append(m.found, found{k, bits.Len64(at) - 1})
	}
	for _, n := range s.next {
		m.follow(n, at)
	}
}

// set returns where a phrase of a set may end when it begins at a place.
func (m *matcher) set(k, i int) uint64 {
	if m.known[k]&(1<<i) == 0 {
		var to uint64
		for _, p := range m.sets[k].phrases {
			// most phrases begin with a word, and most words are others
			if e := p[0]; e.set < 0 && e.word != m.at(i) && !m.loose[m.at(i)] {
				continue
			}
			to |= m.match(p, i)
		}
		m.ends[k*window+i] = to
		m.known[k] |= 1 << i
	}
	return m.ends[k*window+i]
}

// Signals returns the signals that the words begin with, each in its longest form.
func (l *Lexicon) Signals(words []ID) []Signal {
	if len(words) == 0 || len(l.said.first[words[0]]) == 0 {
		return nil
	}
	m, _ := l.matchers.Get().(*matcher)
	if m == nil {
		m = &matcher{phrases: &l.said, known: make([]uint64, len(l.said.sets)), ends: make([]uint64, len(l.said.sets)*window)}
	}
	defer l.matchers.Put(m)
	m.words = words[:min(len(words), window-1)]
	clear(m.known)
	m.found = m.found[:0]
	for _, s := range l.said.first[words[0]] {
		m.follow(s, 1)
	}
	if len(m.found) == 0 {
		return nil
	}
	slices.SortFunc(m.found, func(a, b found) int { return a.signal - b.signal }) // the order of the file
	var out []Signal
	for _, f := range m.found {
		name := l.said.signals[f.signal].name
		if i := slices.IndexFunc(out, func(s Signal) bool { return s.Name == name }); i >= 0 {
			out[i].Len = max(out[i].Len, f.end)
		} else {
			out = append(out, Signal{name, f.end})
		}
	}
	return out
}
