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
	set      int32 // into phrases.sets, -1 where the element is none
	gap      int8
	optional bool
}

// maxGap is how many words "..." stands for at most.
const maxGap = 6

// phrases are the named patterns of open.txt and the sets they are made of.
type phrases struct {
	names    map[string]int32 // of the sets, into sets
	sets     []set
	signals  []signal
	elements []element // what phrases are cut from
	fixed    bool      // no signal has a new name: nothing would listen for it

	// what they are followed with
	ways  edges        // from a step by the words that may come next
	steps []step       // 0 is where signals begin, 1 + k where the phrases of set k do
	first lists[int32] // by the first word: the steps after 0 that may begin with it
	loose []bool       // by ID
	opens []uint64     // by ID: a bit for each set that may begin with the word, shared by few
}

// step is an element of phrases with what may follow it: phrases that begin alike
// are followed together. What may follow as a plain word stands in ways.
type step struct {
	element
	words    uint64 // a bit for each word that may follow, shared by few; 0 where none may
	other    int32  // the first of the sets, gaps and optional elements that may follow
	sibling  int32  // the next of those that may follow the same step
	signal   int32  // one more than the first signal that ends here
	endsASet bool
}

// then returns the step after another that takes an element.
func (g *phrases) then(from int32, e element) int32 {
	plain := e.set < 0 && e.gap == 0 && !e.optional
	if plain {
		if to := g.ways.get(from, e.word); to != 0 {
			return to
		}
	}
	last := &g.steps[from].other
	for !plain && *last != 0 {
		if g.steps[*last].element == e {
			return *last
		}
		last = &g.steps[*last].sibling
	}
	to := int32(len(g.steps))
	if plain {
		g.steps[from].words |= 1 << (e.word % 64)
		g.ways.put(from, e.word, to)
	} else {
		*last = to
	}
	g.steps = append(g.steps, step{element: e})
	return to
}

type set struct {
	name    string
	phrases []phrase
}

type signal struct {
	name string
	phrase
	next int32 // the next signal that ends at the same step, as step.signal
}

func (l *Lexicon) parsePhrase(s string) (phrase, error) {
	p := room(l.said.elements, strings.Count(s, " ")+strings.Count(s, "'")+strings.Count(s, "-")+1)
	lo := len(p)
	for f := range strings.FieldsSeq(s) {
		e := element{set: -1}
		f, e.optional = strings.CutSuffix(f, "?")
		switch {
		case f == "...":
			e.gap = maxGap
		case strings.HasPrefix(f, "<") && strings.HasSuffix(f, ">"):
			e.set = l.said.set(f)
		case strings.HasPrefix(f, "'"): // "'ll": a clitic by itself
			e.word = l.id(f)
		default:
			for w := range eachWord(f) {
				p = append(p, element{word: l.id(w), set: -1, optional: e.optional})
			}
			continue
		}
		p = append(p, e)
	}
	l.said.elements = p
	if p = p[lo:len(p):len(p)]; len(p) == 0 || p[0].gap > 0 || p[0].optional {
		return nil, fmt.Errorf("the phrase %q must begin with a word or a set", s)
	}
	return p, nil
}

// phraseLine reads "name | phrase, phrase"; a name in angle brackets is a set.
func (l *Lexicon) phraseLine(cols []string) error {
	if len(cols) != 2 || cols[0] == "" {
		return fmt.Errorf("want name | phrases, or <set> | phrases")
	}
	for s := range each(cols[1]) {
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
			l.said.signals = append(l.said.signals, signal{name: cols[0], phrase: p})
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
func (g *phrases) set(name string) int32 {
	k, ok := g.names[name]
	if !ok {
		if g.names == nil {
			g.names = map[string]int32{}
		}
		k = int32(len(g.sets))
		g.names[name] = k
		g.sets = append(g.sets, set{name: name})
	}
	return k
}

// indexPhrases joins the phrases into steps, finds the words that each signal may
// begin with, and checks that the sets exist and are not made of themselves.
func (l *Lexicon) indexPhrases() error {
	g := &l.said
	for w := range loose {
		l.id(w)
	}
	g.loose = make([]bool, len(l.words))
	for w := range loose {
		g.loose[l.id(w)] = true
	}
	g.ways = newEdges(1 << 15)
	g.steps = make([]step, 1+len(g.sets), 3<<13)

	firsts := make([][]ID, len(g.sets)) // the words that a set may begin with, each once
	const doing, done = 1, 2
	g.opens = make([]uint64, len(l.words))
	state := make([]uint8, len(g.sets))
	taken := make([]int32, len(l.words)) // by word: one more than the last set that took it
	var visit func(k int32) error
	visit = func(k int32) error {
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
			at := 1 + k
			for _, e := range p {
				if e.set >= 0 {
					if err := visit(e.set); err != nil {
						return err
					}
				}
				at = g.then(at, e)
			}
			g.steps[at].endsASet = true
		}
		for _, p := range g.sets[k].phrases {
			one := [1]ID{p[0].word}
			words := one[:]
			if p[0].set >= 0 {
				words = firsts[p[0].set]
			}
			for _, w := range words {
				if taken[w] != k+1 {
					taken[w] = k + 1
					firsts[k] = append(firsts[k], w)
					g.opens[w] |= 1 << (k % 64)
				}
			}
		}
		state[k] = done
		return nil
	}
	for k := range g.sets {
		if err := visit(int32(k)); err != nil {
			return err
		}
	}
	for i := range g.signals {
		at := int32(0)
		for _, e := range g.signals[i].phrase {
			at = g.then(at, e)
		}
		g.signals[i].next, g.steps[at].signal = g.steps[at].signal, int32(i+1)
	}
	type begin struct {
		word ID
		step int32
	}
	var begins []begin
	for to, w := range g.ways.ways {
		if w.from == 0 && w.word != 0 {
			begins = append(begins, begin{w.word, int32(to)})
		}
	}
	for s := g.steps[0].other; s != 0; s = g.steps[s].sibling {
		for _, w := range firsts[g.steps[s].set] {
			begins = append(begins, begin{w, s})
		}
	}
	g.first = listed(len(l.words), len(begins), func(i int) (ID, int32) { return begins[i].word, begins[i].step })
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

// follow goes on from a step whose element ends at some places. It finds the
// signals that end on the way, and returns where the phrases of a set do.
func (m *matcher) follow(n int32, at uint64) (ends uint64) {
	s := &m.steps[n]
	if s.endsASet {
		ends = at
	}
	for k := s.signal; k > 0; k = m.signals[k-1].next {
		m.found = append(m.found, found{int(k - 1), bits.Len64(at) - 1})
	}
	for o := s.other; o != 0; o = m.steps[o].sibling {
		if to := m.take(&m.steps[o].element, at); to != 0 {
			ends |= m.follow(o, to)
		}
	}
	if s.words == 0 {
		return ends
	}
	// which words follow is asked of the places, not of each word that might
	lo := len(m.next)
	for ; at != 0; at &= at - 1 {
		i := bits.TrailingZeros64(at)
		for k := i; k <= i+2 && k < len(m.words); k++ {
			w := m.words[k]
			if s.words>>(w%64)&1 != 0 {
				if to := m.ways.get(n, w); to != 0 {
					m.reach(lo, reached{to, 1 << (k + 1)})
				}
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
		m.ends[at] = m.follow(1+k, 1<<i)
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
		m = &matcher{phrases: &l.said, known: make([]uint64, len(l.said.sets)), ends: make([]uint64, len(l.said.sets)*window)}
	}
	defer l.matchers.Put(m)
	m.words = words[:min(len(words), window-1)]
	clear(m.known)
	m.found = m.found[:0]
	for _, s := range first {
		if to := m.take(&m.steps[s].element, 1); to != 0 {
			m.follow(s, to)
		}
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
