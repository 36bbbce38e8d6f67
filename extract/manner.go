package extract

import (
	"slices"
	"strings"

	"wrenchword/normalize"
)

// orders are the ways of going round fasteners of which one is tightened after another, beside
// the manners of tightening (verbless.go).
var orders = [][]string{
	{"crisscross"}, {"criss", "cross"}, {"criss-cross"}, {"crosswise"}, {"cross", "wise"}, {"diagonally"}, {"diagonal"}, {"diagonals"},
	{"from", "the", "middle", "out"}, {"from", "the", "centre", "out"}, {"from", "the", "center", "out"}, {"middle", "outwards"}, {"centre", "out"}, {"center", "out"},
	{"opposite", "one"}, {"opposite", "each", "other"}, {"alternately"}, {"round", "in", "a", "star"}, {"in", "order"}, {"in", "sequence"},
}

// orderOf gives the order in which a value is set on several fasteners, as it was said:
// "in a star", "corner to corner".
func (r *reading) orderOf(q *quantity) string {
	lo, hi := r.around(q, 1)
	if before := r.clauses[q.cl].lo; lo < before && r.clauses[r.toks[lo].cl].sentence != r.clauses[q.cl].sentence {
		lo = before
	}
	for i := lo; i < hi; i++ {
		for _, ways := range [...][][]string{orders, manners} {
			for _, p := range ways {
				if r.says(i, hi, p) {
					return strings.Join(p, " ")
				}
			}
		}
	}
	return ""
}

// slippery are the words for how a thread is; the table of friction has them, too.
var slippery = set("oiled greased lubricated lubed waxed dry")

// onThreads are where what is smeared counts for a torque.
var onThreads = set("thread threads heads washers")

// NotToSet is the condition of a value that is told as one not to go to.
const NotToSet = "told as a value not to set"

// conditionOf gives what a value holds for, as it was said right around it: "dry", "oil on the
// threads". How slippery a thread is makes a torque more or less than it is in a dry one.
func (r *reading) conditionOf(q *quantity) string {
	lo, hi := r.around(q, 3)
	for i := lo; i < hi; i++ {
		w := r.toks[i].s
		if !onThreads.has(w) {
			if w == "dry" && r.prev(i) == "for" && figures.has(r.word(i-3)) {
				return "dry" // "that figure is for dry"
			}
			continue
		}
		for k := max(lo, i-3); k < min(hi, i+4); k++ {
			if c := r.toks[k].s; slippery.has(c) && strings.HasPrefix(w, "thread") && !isNot(r.prev(k)) {
				return c + " threads"
			}
		}
		if p := r.word(i - 2); r.prev(i) != "the" || p != "on" && p != "under" {
			continue
		}
		for k := i - 3; k >= max(lo, i-8); k-- {
			if m := r.toks[k].men; m >= 0 && (lubricants.has(r.mentions[m].head) || smeared.has(r.mentions[m].head)) && !slices.ContainsFunc(r.toks[max(lo, k-3):k], func(t tok) bool { return isNot(t.s) }) {
				return r.mentions[m].name + " " + r.word(i-2) + " the " + w
			}
		}
	}
	return ""
}

// isNot tells whether a word says that there is none.
func isNot(w string) bool { return w == "no" || w == "not" || w == "without" || w == "never" }

// around gives the tokens of the clauses right around a value in which no other one stands.
func (r *reading) around(q *quantity, back int) (lo, hi int) {
	first, last := r.clausesAround(q, back, 2, func(p *quantity) bool { return p.Kind == normalize.Torque })
	return r.clauses[first].lo, r.clauses[last].hi
}

// clausesAround gives the clauses within so many of a value and ten seconds, up to those that
// have another of which what stands there may be said.
func (r *reading) clausesAround(q *quantity, back, ahead int, other func(*quantity) bool) (first, last int) {
	first, last = r.nearBy(q.cl, back, ahead, 10)
	ends := func(k int) bool {
		for _, qi := range r.clauses[k].qtys {
			if p := &r.qtys[qi]; p != q && other(p) {
				return true
			}
		}
		return false
	}
	for k := q.cl - 1; k >= first; k-- {
		if ends(k) {
			first = k + 1
		}
	}
	for k := q.cl + 1; k <= last; k++ {
		if ends(k) {
			last = k - 1
		}
	}
	return first, last
}
