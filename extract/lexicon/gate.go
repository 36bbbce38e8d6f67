package lexicon

import (
	"sort"
	"strings"
	"sync"
)

// The gate lets a word that the recogniser got wrong stand for a name of the
// vocabulary, and keeps everyday words out. A word standing free passes where its
// sound key equals that of one term only, at most two letters differ, it has five
// letters or more, and it is no everyday word (innocent.txt). Beside the rest of
// a name of several words ("talk wrench") one differing word passes on its sound
// key, or on one wrong letter. Words of three letters are never repaired.
type gate struct {
	byKey table[[]*Term]  // the terms of one word by their sound keys
	pairs lists[pairTerm] // by the last word of a two-word term: what stands before it
	free  sync.Map        // word -> *Term or nil, remembered
}

type pairTerm struct {
	first ID
	key   string // the sound key of the first word
	term  *Term
}

// hearing is what the gate is made of.
type hearing struct {
	alone map[ID]bool // the words that are a name by themselves
	byKey map[string][]*Term
	pairs []pairTerm
	lasts []ID // the last words of pairs
}

// hear lets words that sound like a term stand for it.
func (c *compiler) hear(t *Term, ids []ID) {
	if t.Misheard || t.Exact {
		return
	}
	h, w := &c.hearing, c.words[ids[0]].text
	switch {
	case len(ids) == 1 && len(w) >= 5 && !h.alone[ids[0]]:
		h.alone[ids[0]] = true
		key := soundKey(w)
		h.byKey[key] = append(h.byKey[key], t)
	case len(ids) == 2 && len(w) >= 4:
		h.pairs, h.lasts = append(h.pairs, pairTerm{ids[0], soundKey(w), t}), append(h.lasts, ids[1])
	}
}

// inName tells whether a word stands in a name of the vocabulary, in its singular or its plural.
func (l *Lexicon) inName(word string) bool {
	if l.words[l.ID(word)].named {
		return true
	}
	var room [32]byte
	// of tells whether one of the words that begin like this one, and end so, has it as its form.
	of := func(cut int, ending string, form func(string) string) bool {
		w := append(append(room[:0], word[:len(word)-cut]...), ending...)
		id := l.ID(string(w))
		return l.words[id].named && form(l.words[id].text) == word
	}
	if strings.HasSuffix(word, "y") && of(1, "ies", singularWord) || of(0, "s", singularWord) || of(0, "es", singularWord) {
		return true
	}
	return strings.HasSuffix(word, "s") && of(1, "", plural) || strings.HasSuffix(word, "es") && of(2, "", plural) || strings.HasSuffix(word, "ies") && of(3, "y", plural)
}

// Repair returns the one term that a misheard word standing free sounds like, or nil.
func (l *Lexicon) Repair(word string) *Term {
	if len(word) < 5 || l.words[l.ID(word)].innocent || len(l.Lemmas(word)) > 0 || l.inName(word) {
		return nil
	}
	if t, ok := l.gate.free.Load(word); ok {
		return t.(*Term)
	}
	t := l.gate.freeStanding(word)
	l.gate.free.Store(word, t)
	return t
}

func (g *gate) freeStanding(word string) *Term {
	base := singularWord(word)
	key := soundKey(base)
	if len(key) < 3 {
		return nil
	}
	var best *Term
	bestEdits := 3
	tie := false
	sounding, _ := g.byKey.get(key)
	for _, t := range sounding {
		e := edits(base, singularWord(t.Said))
		switch {
		case e < bestEdits:
			best, bestEdits, tie = t, e, false
		case e == bestEdits && best != nil && best.Name != t.Name:
			tie = true
		}
	}
	if tie || bestEdits > 2 {
		return nil
	}
	return best
}

// RepairBeside returns the term of two words whose last word is next and whose
// first sounds like word, or nil.
func (l *Lexicon) RepairBeside(word, next string) *Term {
	if len(word) < 4 {
		return nil
	}
	pairs := l.gate.pairs.of(l.ID(next))
	if len(pairs) == 0 {
		return nil
	}
	var best *Term
	key, ownName := soundKey(word), l.inName(word)
	for _, p := range pairs {
		first := l.words[p.first].text
		if word == first {
			return nil // said right
		}
		if ownName {
			continue
		}
		oneWrong, sounds := word[0] == first[0] && max(len(word)-len(first), len(first)-len(word)) <= 1, key == p.key
		if !oneWrong && !sounds {
			continue
		}
		if e := edits(word, first); oneWrong && e <= 1 || sounds && e <= 3 {
			if best != nil && best.Name != p.term.Name {
				return nil
			}
			best = p.term
		}
	}
	return best
}

// soundsAs are the letters that sound as others, the longer before the shorter.
var soundsAs = [...]struct{ letters, sound string }{{"tch", "x"}, {"ch", "x"}, {"sh", "x"}, {"ph", "f"}, {"ck", "k"}, {"gh", ""}, {"kn", "n"}, {"wr", "r"}, {"qu", "k"}, {"dge", "j"}}

// soundKey writes a word by its consonant sounds; an initial vowel is kept as "a".
func soundKey(w string) string {
	var room, key [48]byte
	as := room[:0] // the word with one letter for such as "ch"
	for i := 0; i < len(w); {
		n := 1
		if i+1 < len(w) && leadsSound[w[i]] {
			for _, s := range &soundsAs {
				if strings.HasPrefix(w[i:], s.letters) {
					as, n = append(as, s.sound...), len(s.letters)
					break
				}
			}
		}
		if n == 1 {
			as = append(as, w[i])
		}
		i += n
	}
	out := key[:0]
	last := byte(0)
	for i, c := range as {
		soft := i+1 < len(as) && (as[i+1] == 'e' || as[i+1] == 'i' || as[i+1] == 'y')
		switch c {
		case 'a', 'e', 'i', 'o', 'u', 'y':
			if i == 0 {
				out = append(out, 'a')
			}
			last = 0
			continue
		case 'h', 'w':
			if i > 0 {
				continue
			}
		case 'c':
			c = 'k'
			if soft {
				c = 's'
			}
		case 'q':
			c = 'k'
		case 'z':
			c = 's'
		case 'd':
			c = 't'
		case 'b':
			c = 'p'
		case 'v':
			c = 'f'
		case 'g':
			if soft {
				c = 'j'
			}
		}
		if c == last {
			continue
		}
		out = append(out, c)
		last = c
	}
	return string(out)
}

// leadsSound are the first letters of soundsAs.
var leadsSound = func() (is [256]bool) {
	for _, s := range &soundsAs {
		is[s.letters[0]] = true
	}
	return is
}()

// edits counts the letters to insert, delete, change or swap with a neighbour.
func edits(a, b string) int {
	prev2, prev, cur := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := 1; i <= len(a); i++ {
		cur[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			cur[j] = min(prev[j]+1, cur[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				cur[j] = min(cur[j], prev2[j-2]+1)
			}
		}
		prev2, prev, cur = prev, cur, prev2
	}
	return prev[len(b)]
}

// Guilty returns, of a list of everyday words, those that the gate would take for
// a term: they belong in innocent.txt.
func (l *Lexicon) Guilty(words []string) []string {
	var out []string
	for _, w := range words {
		w = strings.ToLower(w)
		if len(w) >= 5 && !l.inName(w) && len(l.Lemmas(w)) == 0 && l.gate.freeStanding(w) != nil {
			out = append(out, w)
		}
	}
	sort.Strings(out)
	return out
}
