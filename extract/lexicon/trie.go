package lexicon

import "hash/maphash"

// index finds the ID of a word by its text. Its length is a power of two, at least
// twice the number of words.
type index []ID

var seed = maphash.MakeSeed()

// place gives where the ID of a text stands, or would stand: 0 is in an empty place.
func (x index) place(text string, words []word) *ID {
	mask := uint64(len(x) - 1)
	for i := maphash.String(seed, text) & mask; ; i = (i + 1) & mask {
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

// edges are the ways on from the nodes of a tree of phrases. All stand in one
// table, so that a way is found or added with one look in most cases, however
// many there are. They are small, since a short run pays for each page of memory.
type edges struct {
	table []int32 // the nodes that ways lead to, 0 in an empty place; its length is a power of two, at least twice n
	ways  []way   // by the node that it leads to
	n     int
}

type way struct {
	from int32
	word ID
}

// newEdges returns edges with room for so many before they grow, a power of two.
func newEdges(n int) edges { return edges{table: make([]int32, 2*n), ways: make([]way, 0, n)} }

// place gives where the way from a node by a word stands, or would stand.
func (e *edges) place(by way) *int32 {
	mask := uint32(len(e.table) - 1)
	h := uint32(by.from)*0x9E3779B1 ^ uint32(by.word)*0x85EBCA77
	for i := (h ^ h>>15) & mask; ; i = (i + 1) & mask {
		if to := &e.table[i]; *to == 0 || e.ways[*to] == by {
			return to
		}
	}
}

// get returns where a word leads from a node, 0 where it leads nowhere: no way leads to the root.
func (e *edges) get(from int32, word ID) int32 {
	if e.n == 0 {
		return 0
	}
	return *e.place(way{from, word})
}

// put adds a way that is not there.
func (e *edges) put(from int32, word ID, to int32) {
	if e.n++; 2*e.n > len(e.table) {
		old := e.table
		e.table = make([]int32, max(64, 2*len(old)))
		for _, o := range old {
			if o != 0 {
				*e.place(e.ways[o]) = o
			}
		}
	}
	for int(to) >= len(e.ways) {
		e.ways = append(e.ways, way{from: -1})
	}
	e.ways[to] = way{from, word}
	*e.place(way{from, word}) = to
}

// trie holds phrases by their words, each with a value. Node 0 is the root.
type trie[T any] struct {
	edges
	nodes []leaf[T]
}

type leaf[T any] struct {
	val T
	set bool
}

// step returns the node that a word leads to, a new one where there was none.
func (t *trie[T]) step(from int32, word ID) int32 {
	to := t.get(from, word)
	if to == 0 {
		if len(t.nodes) == 0 {
			t.nodes = append(t.nodes, leaf[T]{})
		}
		to = int32(len(t.nodes))
		t.nodes = append(t.nodes, leaf[T]{})
		t.put(from, word, to)
	}
	return to
}

// add returns the value of a phrase of at least one word, to be set.
func (t *trie[T]) add(words []ID) *T {
	n := int32(0)
	for _, w := range words {
		n = t.step(n, w)
	}
	return t.end(n)
}

// end makes a node the end of a phrase.
func (t *trie[T]) end(node int32) *T {
	l := &t.nodes[node]
	l.set = true
	return &l.val
}

// longest returns the value of the longest phrase that words begin with, and its length.
func (t *trie[T]) longest(words []ID) (val T, length int) {
	n := int32(0)
	for i, w := range words {
		if w == 0 {
			break
		}
		if n = t.get(n, w); n == 0 {
			break
		}
		if l := &t.nodes[n]; l.set {
			val, length = l.val, i+1
		}
	}
	return val, length
}

// lists are lists of things by a word's ID, all in one piece.
type lists[T any] struct {
	all   []T
	start []int32
}

// listed sorts n things into the lists of their words, in the order they come in.
func listed[T any](words, n int, at func(i int) (ID, T)) lists[T] {
	l := lists[T]{all: make([]T, n), start: make([]int32, words+1)}
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
