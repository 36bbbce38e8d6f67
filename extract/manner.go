package extract

import (
	"slices"
	"strings"

	"wrenchword/normalize"
)

// orders are the ways of going round fasteners of which one is tightened after another; the
// manners of tightening (verbless.go) have them and those of how much at a time.
var orders = append([][]string{
	{"crisscross"}, {"criss", "cross"}, {"criss-cross"}, {"crosswise"}, {"cross", "wise"}, {"diagonally"}, {"diagonal"}, {"diagonals"},
	{"from", "the", "middle", "out"}, {"from", "the", "centre", "out"}, {"from", "the", "center", "out"}, {"middle", "outwards"}, {"centre", "out"}, {"center", "out"},
	{"opposite", "one"}, {"opposite", "each", "other"}, {"alternately"}, {"round", "in", "a", "star"}, {"in", "order"}, {"in", "sequence"},
}, manners...)

// orderOf gives the order in which a value is set on several fasteners, as it was said:
// "in a star", "corner to corner".
func (r *reading) orderOf(q *quantity) string {
	lo, hi := r.around(q, 1)
	if before := r.clauses[q.cl].lo; lo < before && r.clauses[r.toks[lo].cl].sentence != r.clauses[q.cl].sentence {
		lo = before
	}
	for i := lo; i < hi; i++ {
		for _, p := range orders {
			if r.says(i, hi, p) {
				return strings.Join(p, " ")
			}
		}
	}
	return ""
}

// slippery are the words for a thread that is wet with something, and how the tables call it.
var slippery = map[string]string{"oiled": "oiled", "greased": "greased", "lubricated": "lubricated", "lubed": "lubricated", "waxed": "waxed", "dry": "dry"}

// onThreads are where what is smeared counts for a torque.
var onThreads = set("thread threads heads washers")

// conditionOf gives what a value holds for, as it was said right around it: "dry", "oil on the
// threads". How slippery a thread is makes a torque more or less than it is in a dry one.
func (r *reading) conditionOf(q *quantity) string {
	lo, hi := r.around(q, 3)
	for i := lo; i < hi; i++ {
		w := r.toks[i].s
		if !onThreads.has(w) {
			if w == "dry" && r.word(i-1) == "for" && figures.has(r.word(i-3)) {
				return "dry" // "that figure is for dry"
			}
			continue
		}
		for k := max(lo, i-3); k < min(hi, i+4); k++ {
			if c := slippery[r.toks[k].s]; c != "" && strings.HasPrefix(w, "thread") && !isNot(r.word(k-1)) {
				return c + " threads"
			}
		}
		if p := r.word(i - 2); r.word(i-1) != "the" || p != "on" && p != "under" {
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
	first, last := r.nearBy(q.cl, back, 2, 10)
	torque := func(k int) bool {
		for _, qi := range r.clauses[k].qtys {
			if p := &r.qtys[qi]; p != q && p.Kind == normalize.Torque {
				return true
			}
		}
		return false
	}
	for k := q.cl - 1; k >= first; k-- {
		if torque(k) {
			first = k + 1
		}
	}
	for k := q.cl + 1; k <= last; k++ {
		if torque(k) {
			last = k - 1
		}
	}
	return r.clauses[first].lo, r.clauses[last].hi
}
