package extract

import (
	"math/bits"
	"strings"
	"sync/atomic"

	"wrenchword/extract/lexicon"
)

// A wordSet is a set of words that is asked far more often than it holds what is
// asked for. It is made when it is first asked, so that a run pays for those alone
// that it comes to; until then it is its text.
type wordSet struct {
	text   string
	family string // of lexicon/data/families.txt, in place of the text
	made   atomic.Pointer[places]
}

// places are where the words of a text stand, by their hash.
type places struct {
	text  string
	maybe [16]uint64 // a few bits of each word tell most of what is not among them
	at    []uint16   // one more than where a word begins, 0 in an empty place; its length is a power of two
}

// set gives the set of the words of s, fewer than 64 KB of them.
func set(s string) *wordSet { return &wordSet{text: s} }

// wordsOf gives the set of the words of a family of lexicon/data/families.txt.
func wordsOf(name string) *wordSet { return &wordSet{family: name} }

// words gives the words of the set with blanks between them.
func (s *wordSet) words() string {
	if s.family != "" {
		return lexicon.Family(s.family)
	}
	return s.text
}

func (s *wordSet) make() *places {
	text := s.words()
	n := strings.Count(text, " ") + 1
	p := &places{text: text, at: make([]uint16, 1<<bits.Len(uint(2*n)))}
	lo := 0
	for w := range strings.FieldsSeq(text) {
		h := trace(w)
		p.maybe[h>>6] |= 1 << (h & 63)
		lo += strings.Index(text[lo:], w)
		*p.place(w) = uint16(lo + 1)
		lo += len(w)
	}
	s.made.Store(p)
	return p
}

// place gives where the place of a word in the text is kept, or would be.
func (p *places) place(w string) *uint16 {
	h := uint32(len(w))
	for i := range len(w) {
		h = h*31 + uint32(w[i])
	}
	for i := (h ^ h>>15) & uint32(len(p.at)-1); ; i = (i + 1) & uint32(len(p.at)-1) {
		at := &p.at[i]
		if *at == 0 {
			return at
		}
		if rest := p.text[*at-1:]; strings.HasPrefix(rest, w) && (len(rest) == len(w) || rest[len(w)] <= ' ') {
			return at
		}
	}
}

func (s *wordSet) has(w string) bool {
	if w == "" {
		return false
	}
	p := s.made.Load()
	if p == nil {
		p = s.make()
	}
	h := trace(w)
	return p.maybe[h>>6]>>(h&63)&1 != 0 && *p.place(w) != 0
}

// trace gives a number that is another for most words. The word is not empty.
func trace(w string) uint {
	n := uint(len(w))
	return (uint(w[0])*7 ^ uint(w[n-1])*29 ^ uint(w[n>>1])*113 ^ n*203) & 1023
}
