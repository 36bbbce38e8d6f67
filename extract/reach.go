package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
)

// Of several that are tightened there is often one that the wrench does not get to: "the back
// one I can't reach", "there's no room for the clicker". It is on by feel, whatever the others
// have, unless the talk comes to it.

// outOfReach gives the words of a clause that tell so, -1 where none do.
func (r *reading) outOfReach(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	if c.mood&(conditional|asked|hypothetical|aside|other|storied) != 0 {
		return -1, -1
	}
	for i := c.lo; i < c.hi; i++ {
		w, n1, n2 := r.toks[i].s, r.next(i), r.word(i+2)
		switch {
		case (w == "can't" || w == "couldn't") && (r.ofMe(max(c.lo, i-2), i) || i == c.lo):
			switch {
			case i+1 == c.hi && r.oneOfThem(c): // "the back one I can't"
			case n1 == "reach", n1 == "get" && (n2 == "on" || n2 == "onto" || n2 == "at" || n2 == "to" || n2 == "near" || n2 == "in" || r.wrenchAt(i+2, min(c.hi, i+5)) || r.swingAt(i+2, min(c.hi, i+7))), (n1 == "fit" || n1 == "enter") && r.wrenchAt(i+2, min(c.hi, i+6)):
			default:
				continue
			}
			if !r.oneOfThem(c) && !r.wrenchAt(i, c.hi) {
				continue
			}
		case (w == "won't" || w == "doesn't" || w == "wouldn't") && (n1 == "fit" || n1 == "reach" || n1 == "go" && (n2 == "on" || n2 == "in") || n1 == "get") && i > c.lo && r.wrenchAt(max(c.lo, i-2), i):
			if !r.oneOfThem(c) {
				continue
			}
		case w == "no" && (n1 == "room" || n1 == "space") && r.wrenchAt(i+2, min(c.hi, i+6)):
		default:
			continue
		}
		if r.tighteningAt(i) {
			return i, min(c.hi, i+3)
		}
	}
	return -1, -1
}

// swingAt tells whether it is room to pull that is spoken of: "a straight swing", "a proper pull".
func (r *reading) swingAt(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		switch r.toks[i].s {
		case "swing", "pull", "purchase", "angle":
			return true
		}
	}
	return false
}

// whichOfThem tell one of several from the others.
var whichOfThem = set("last other bottom top back front inner outer rear lower upper inside outside behind left right middle first second third fourth fifth sixth two three")

// oneOfThem tells whether a clause, or the one before it in the sentence, tells one of several
// from the others: "the bottom one", "the other two".
func (r *reading) oneOfThem(c *clause) bool {
	lo := c.lo
	if k := int(r.toks[lo].cl); k > 0 && r.clauses[k-1].sentence == c.sentence {
		lo = max(r.clauses[k-1].lo, lo-8)
	}
	for i := lo; i < c.hi; i++ {
		w := r.toks[i].s
		if (w == "one" || w == "ones") && (whichOfThem.has(r.prev(i)) || r.prev(i) == "that" || r.prev(i) == "this") || w == "one" && r.next(i) == "behind" || whichOfThem.has(w) && (r.prev(i) == "the" || r.prev(i) == "them") && (i+1 >= c.hi || r.toks[i+1].men >= 0 || countOf[r.next(i)] > 0 || countOf[w] > 1) {
			return true
		}
	}
	return false
}

// tighteningAt tells whether it is tightening that the talk is at: the last that was done to a
// fastener before a token, within a minute, or a value that was told.
func (r *reading) tighteningAt(at int) bool {
	for i := len(r.heard) - 1; i >= 0; i-- {
		if q := &r.qtys[r.heard[i].qty]; !r.heard[i].dropped && (q.lo < at && r.since(q.lo, at) < 45 || q.lo >= at && r.since(at, q.lo) < 8) {
			return true
		}
	}
	for i := len(r.acts) - 1; i >= 0; i-- {
		a := &r.acts[i]
		if a.lo >= at && r.since(at, a.lo) > 6 {
			continue
		}
		if a.lo < at && r.since(a.lo, at) > 60 {
			break
		}
		if a.lo >= at && r.saysHowTight(a) {
			continue // "the third one I can't reach, so that's loose still"
		}
		switch ledgerActs[a.action.Name] {
		case Tightened, Torqued, HandTight:
			return true
		case Removed, Loosened:
			return false
		}
	}
	return false
}

// reachedIn tells whether a sentence tells, before a token, of what the wrench does not get to.
func (r *reading) reachedIn(ci, before int) bool {
	for k := ci; k >= 0 && r.clauses[k].sentence == r.clauses[ci].sentence; k-- {
		if lo, _ := r.outOfReach(k); lo >= 0 && lo <= before && before-lo < 20 {
			return true
		}
	}
	return false
}

// aimReach finds of what the one is that is not reached: a fastener named in the clause, or the
// one that the last value was for.
func (r *reading) aimReach(e *looseEnd, ci int) bool {
	for _, mi := range r.clauses[ci].mentions {
		if m := &r.mentions[mi]; r.topical(m) && m.kind&lexicon.Fastener != 0 {
			e.topic, e.sure = mi, true
			return true
		}
	}
	for i := len(r.heard) - 1; i >= 0; i-- {
		h := &r.heard[i]
		q := &r.qtys[h.qty]
		if h.dropped || h.of == nil || q.lo > e.lo || r.since(q.lo, e.lo) > 45 {
			continue
		}
		for _, mi := range slices.Backward(h.of.mentions) {
			if m := &r.mentions[mi]; m.lo < e.lo {
				e.topic, e.sure = mi, true
				return true
			}
		}
	}
	return false
}

// reaching are words of what is moved out of the way, or taken instead, so that it is reached.
var reaching = set("move moved moving shift shifted extension crow's crowfoot crow adaptor adapter longer universal knuckle wobble swap swapped")

// reachedAfter tells whether what was not reached is tightened within the next minute, after
// something was moved or another tool taken.
func (r *reading) reachedAfter(e *looseEnd) bool {
	by := -1
	for k := e.last; k < len(r.clauses) && r.since(e.hi-1, r.clauses[k].lo) < 60; k++ {
		for i := max(r.clauses[k].lo, e.hi); i < r.clauses[k].hi; i++ {
			switch w := r.toks[i].s; {
			case reaching.has(w):
				by = i
			case by >= 0 && (w == "click" || w == "clicked" || w == "clicks"):
				return true
			}
		}
	}
	return false
}

// theOneNotReached names the one that is told from the others in the sentence that it is not
// reached, and not the one that was reached: of "the bottom hose", where it is the top one.
func (r *reading) theOneNotReached(e *looseEnd, name string) string {
	ws := strings.Fields(name)
	if len(ws) < 2 || !whichOfThem.has(ws[0]) {
		return name
	}
	ci := int(r.toks[e.lo].cl)
	for i := e.lo; i >= r.clauses[ci].lo; i-- {
		if w := r.toks[i].s; whichOfThem.has(w) && w != ws[0] && (r.next(i) == "one" || r.next(i) == "ones") {
			return w + " " + strings.Join(ws[1:], " ")
		}
	}
	return name
}
