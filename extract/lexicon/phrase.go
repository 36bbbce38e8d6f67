package lexicon

import (
	"fmt"
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
	word, set string
	gap       int
	optional  bool
}

// maxGap is how many words "..." stands for at most.
const maxGap = 6

// phrases are the named patterns of open.txt and the sets they are made of.
type phrases struct {
	sets    map[string][]phrase
	signals []signal
	first   map[string][]int // first word -> signals that may begin with it
}

type signal struct {
	name string
	phrase
}

func parsePhrase(s string) (phrase, error) {
	var p phrase
	for _, f := range strings.Fields(s) {
		e := element{}
		if e.optional = strings.HasSuffix(f, "?"); e.optional {
			f = strings.TrimSuffix(f, "?")
		}
		switch {
		case f == "...":
			e.gap = maxGap
		case strings.HasPrefix(f, "<") && strings.HasSuffix(f, ">"):
			e.set = f
		default:
			ws := Words(f)
			if strings.HasPrefix(f, "'") {
				ws = []string{f} // "'ll": a clitic by itself
			}
			for _, w := range ws {
				p = append(p, element{word: w, optional: e.optional})
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
		p, err := parsePhrase(s)
		if err != nil {
			return err
		}
		if strings.HasPrefix(cols[0], "<") {
			if l.said.sets == nil {
				l.said.sets = map[string][]phrase{}
			}
			l.said.sets[cols[0]] = append(l.said.sets[cols[0]], p)
		} else {
			l.said.signals = append(l.said.signals, signal{cols[0], p})
		}
	}
	return nil
}

// index finds the words that each signal may begin with, and checks that the
// sets exist and are not made of themselves.
func (g *phrases) index() error {
	g.first = map[string][]int{}
	var firsts func(e element, depth int, add func(string)) error
	firsts = func(e element, depth int, add func(string)) error {
		if e.set == "" {
			add(e.word)
			return nil
		}
		if depth > 8 {
			return fmt.Errorf("the set %s is made of itself", e.set)
		}
		if len(g.sets[e.set]) == 0 {
			return fmt.Errorf("no set %s", e.set)
		}
		for _, p := range g.sets[e.set] {
			if err := firsts(p[0], depth+1, add); err != nil {
				return err
			}
			for _, e := range p[1:] {
				if e.set != "" {
					if err := firsts(e, depth+1, func(string) {}); err != nil {
						return err
					}
				}
			}
		}
		return nil
	}
	for i, s := range g.signals {
		seen := map[string]bool{}
		for k, e := range s.phrase {
			if e.gap > 0 {
				continue
			}
			err := firsts(e, 0, func(w string) {
				if k == 0 && !seen[w] {
					seen[w] = true
					g.first[w] = append(g.first[w], i)
				}
			})
			if err != nil {
				return err
			}
		}
	}
	return nil
}

// loose words may stand anywhere inside a phrase.
var loose = map[string]bool{"just": true, "probably": true, "also": true, "still": true, "only": true, "really": true, "honestly": true, "then": true, "maybe": true,
	"uh": true, "um": true, "er": true, "simply": true, "even": true, "actually": true, "definitely": true, "quickly": true, "all": true, "now": true, "eventually": true, "properly": true}

// match calls found with every end that the phrase has when it begins at word i,
// until found returns true.
func (g *phrases) match(p phrase, i int, word func(int) string, found func(end int) bool) bool {
	if len(p) == 0 {
		return found(i)
	}
	e, rest := p[0], p[1:]
	next := func(end int) bool { return g.match(rest, end, word, found) }
	if e.optional && next(i) {
		return true
	}
	if e.gap > 0 {
		for k := 0; k <= e.gap; k++ {
			if next(i + k) {
				return true
			}
			if word(i+k) == "" {
				break
			}
		}
		return false
	}
	for k := 0; k <= 2; k++ {
		if e.set != "" {
			for _, q := range g.sets[e.set] {
				if g.match(q, i+k, word, next) {
					return true
				}
			}
		} else if word(i+k) == e.word && next(i+k+1) {
			return true
		}
		if i+k == 0 || !loose[word(i+k)] {
			break
		}
	}
	return false
}

// Signals returns the signals that the words begin with, each in its longest
// form. word(i) is "" past the end.
func (l *Lexicon) Signals(word func(int) string) []Signal {
	var out []Signal
	for _, k := range l.said.first[word(0)] {
		s := l.said.signals[k]
		best := 0
		l.said.match(s.phrase, 0, word, func(end int) bool {
			best = max(best, end)
			return false
		})
		if best == 0 {
			continue
		}
		known := false
		for i := range out {
			if out[i].Name == s.name {
				out[i].Len = max(out[i].Len, best)
				known = true
			}
		}
		if !known {
			out = append(out, Signal{s.name, best})
		}
	}
	return out
}
