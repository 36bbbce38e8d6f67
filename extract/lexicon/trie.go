package lexicon

import (
	"slices"
	"strings"
)

// index finds the ID of a word by its text. Its length is a power of two, at least
// twice the number of words.
type index []ID

// place gives where the ID of a text stands, or would stand: 0 is in an empty place.
func (x index) place(text string, words []word) *ID {
	h := uint32(2166136261) // FNV-1a: the same in every run, as what was compiled must find its words
	for i := range len(text) {
		h = (h ^ uint32(text[i])) * 16777619
	}
	mask := uint32(len(x) - 1)
	for i := h & mask; ; i = (i + 1) & mask {
		if id := &x[i]; *id == 0 || words[*id].text == text {
			return id
		}
	}
}

// newIndex returns an index of n places with the words in it; word 0 stands for every other.
func newIndex(n int, words []word) index {
	x := make(index, n)
	for i := 1; i < len(words); i++ {
		*x.place(words[i].text, words) = ID(i)
	}
	return x
}

// trie holds phrases by their words, each with what is kept of it. Node 0 is the
// root. The nodes that follow one stand together, in the order of their words.
type trie[T any] struct {
	words []ID     // by node: what leads to it
	after []int32  // by node: the first that follows it; the last is before the first of the next node
	vals  lists[T] // by node: what is kept of the phrases that end there
}

// phrasesOf are phrases with what is kept of each.
type phrasesOf[T any] struct {
	ids  []ID // of all, one after the other
	ends []int32
	vals []T
}

func roomFor[T any](phrases, words int) phrasesOf[T] {
	return phrasesOf[T]{make([]ID, 0, words), make([]int32, 0, phrases), make([]T, 0, phrases)}
}

func (p *phrasesOf[T]) add(val T, ids ...ID) {
	p.ids, p.vals = append(p.ids, ids...), append(p.vals, val)
	p.ends = append(p.ends, int32(len(p.ids)))
}

// trie returns the trie of the phrases. Of one phrase several things may be kept.
func (p *phrasesOf[T]) trie() trie[T] {
	n := len(p.ids) + 1 // nodes at most
	t := trie[T]{words: make([]ID, 1, n), after: make([]int32, 0, n+1)}
	next, ends := make([]int32, len(p.ends)), make([]ID, len(p.ends))
	most := ID(0)
	for i := range next {
		if i > 0 {
			next[i] = p.ends[i-1] // the first word that no node has taken
		}
		most = max(most, p.ids[next[i]])
	}
	// in the order of their first words, so that the most that there is to sort is sorted
	order := listed(int(most)+1, len(next), func(i int) (ID, int32) { return p.ids[next[i]], int32(i) }).all
	type stretch struct{ lo, hi int32 } // of order: the phrases that go through a node
	nodes := make([]stretch, 1, n)
	nodes[0].hi = int32(len(order))
	var keys []int64 // of those that go on: the next word, and which phrase it is
	for n := 0; n < len(nodes); n++ {
		t.after = append(t.after, int32(len(nodes)))
		keys = keys[:0]
		for _, i := range order[nodes[n].lo:nodes[n].hi] {
			if next[i] == p.ends[i] {
				ends[i] = ID(n)
			} else {
				keys = append(keys, int64(p.ids[next[i]])<<32|int64(i))
				next[i]++
			}
		}
		slices.Sort(keys)
		lo := nodes[n].hi - int32(len(keys))
		for k, key := range keys {
			order[lo+int32(k)] = int32(key)
			if w := ID(key >> 32); k == 0 || w != t.words[len(t.words)-1] {
				t.words, nodes = append(t.words, w), append(nodes, stretch{lo: lo + int32(k)})
			}
			nodes[len(nodes)-1].hi = lo + int32(k) + 1
		}
	}
	t.after = append(t.after, int32(len(nodes)))
	t.vals = listed(len(nodes), len(p.vals), func(i int) (ID, T) { return ends[i], p.vals[i] })
	return t
}

// get returns where a word leads from a node, 0 where it leads nowhere.
func (t *trie[T]) get(from int32, word ID) int32 {
	lo, end := t.after[from], t.after[from+1]
	for hi := end; lo < hi; {
		if mid := (lo + hi) / 2; t.words[mid] < word {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	if lo < end && t.words[lo] == word {
		return lo
	}
	return 0
}

// longest returns what is kept of the longest phrase that words begin with, and its length.
func (t *trie[T]) longest(words []ID) (vals []T, length int) {
	n := int32(0)
	for i, w := range words {
		if w == 0 {
			break
		}
		if n = t.get(n, w); n == 0 {
			break
		}
		if v := t.vals.of(ID(n)); len(v) > 0 {
			vals, length = v, i+1
		}
	}
	return vals, length
}

// lists are lists of things by the ID of a word, or by a node, all in one piece.
type lists[T any] struct {
	all   []T
	start []int32
}

// listed sorts n things into the lists of their numbers, in the order they come in.
func listed[T any](numbers, n int, at func(i int) (ID, T)) lists[T] {
	l := lists[T]{all: make([]T, n), start: make([]int32, numbers+1)}
	for i := range n {
		w, _ := at(i)
		l.start[w]++
	}
	end := int32(0)
	for w, k := range l.start {
		end += k
		l.start[w] = end
	}
	for i := n - 1; i >= 0; i-- {
		w, x := at(i)
		l.start[w]--
		l.all[l.start[w]] = x
	}
	return l
}

func (l *lists[T]) of(w ID) []T {
	a, b := l.start[w], l.start[w+1]
	return l.all[a:b:b]
}

// table is a map by name that needs no making: it is sorted.
type table[T any] []entry[T]

type entry[T any] struct {
	name string
	val  T
}

func tableOf[T any](m map[string]T) table[T] {
	t := make(table[T], 0, len(m))
	for name, val := range m {
		t = append(t, entry[T]{name, val})
	}
	slices.SortFunc(t, func(a, b entry[T]) int { return strings.Compare(a.name, b.name) })
	return t
}

// get returns what has the name.
func (t table[T]) get(name string) (val T, ok bool) {
	i, ok := slices.BinarySearchFunc(t, name, func(e entry[T], name string) int { return strings.Compare(e.name, name) })
	if ok {
		val = t[i].val
	}
	return val, ok
}
