package extract

import "strings"

// A wordSet is a set of words that is asked far more often than it holds what is
// asked for: a few bits of each word tell most of what is not in it.
type wordSet struct {
	maybe [4]uint64
	words map[string]bool
}

// set gives the set of the words of s.
func set(s string) wordSet {
	of := wordSet{words: make(map[string]bool, strings.Count(s, " ")+1)}
	for w := range strings.FieldsSeq(s) {
		of.add(w)
	}
	return of
}

// keys gives the set of the words that a map knows.
func keys[T any](of map[string]T) wordSet {
	out := wordSet{words: make(map[string]bool, len(of))}
	for w := range of {
		out.add(w)
	}
	return out
}

// add puts in a word that is not empty.
func (s *wordSet) add(w string) {
	h := trace(w)
	s.maybe[h>>6] |= 1 << (h & 63)
	s.words[w] = true
}

func (s *wordSet) has(w string) bool {
	if w == "" {
		return false
	}
	h := trace(w)
	return s.maybe[h>>6]>>(h&63)&1 != 0 && s.words[w]
}

// trace gives a number that is another for most words. The word is not empty.
func trace(w string) uint8 {
	n := len(w)
	return w[0]*7 ^ w[n-1]*29 ^ w[n>>1]*3 ^ uint8(n)*53
}
