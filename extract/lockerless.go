package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
)

// What ought to have thread locker on it and went in without: "I haven't used any locker on
// those, I should", "it says put locker on them and I haven't got any". What has none by intent
// ("no locker on these, they're nylocs") leaves nothing open.

// isLocker tells whether a mention is of what is put on a thread to lock it.
func (r *reading) isLocker(m *mention) bool {
	if m.kind&lexicon.Consumable == 0 {
		return false
	}
	n := m.name
	return strings.Contains(n, "lock") && !strings.Contains(n, "wire") || n == "blue stuff" || n == "red stuff" || n == "purple stuff"
}

// withoutLocker finds the words of a clause that say so, -1 where none do.
func (r *reading) withoutLocker(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	if c.mood&(other|conditional|asked|hypothetical|aside|greeting|storied) != 0 || r.saidIn(c, "you") {
		return -1, -1
	}
	denied := -1
	for i := c.lo; i < c.hi; i++ {
		switch w, p := r.toks[i].s, r.prev(i); {
		case w == "haven't", w == "hasn't", w == "didn't", w == "forgot", w == "not" && (p == "'ve" || p == "have"), (w == "no" || w == "none") && (p == "got" || p == "'ve" || p == "have" || p == "had"):
			denied = i
		}
		if denied < 0 || i-denied > 6 {
			continue
		}
		if m := r.toks[i].men; m >= 0 && r.isLocker(&r.mentions[m]) {
			return denied, max(i+1, min(r.mentions[m].hi, c.hi))
		}
		if w := r.toks[i].s; (w == "any" || w == "none") && (i+1 >= c.hi || r.toks[i].brk >= brkComma || r.next(i) == "so" || r.next(i) == "here" || r.next(i) == "left" || r.next(i) == "on") && r.lockerBefore(ci) {
			return denied, i + 1
		}
	}
	return -1, -1
}

// lockerBefore tells whether locker was spoken of right before a clause.
func (r *reading) lockerBefore(ci int) bool {
	lo, _ := r.nearBy(ci, 2, 0, 8)
	for k := lo; k < ci; k++ {
		for _, mi := range r.clauses[k].mentions {
			if r.isLocker(&r.mentions[mi]) {
				return true
			}
		}
	}
	return false
}

// lockedLater tells whether locker is put on after token i.
func (r *reading) lockedLater(i int) bool {
	for ai := range r.acts {
		a := &r.acts[ai]
		if a.lo <= i || !a.happened() {
			continue
		}
		for _, mi := range a.objects {
			if r.isLocker(&r.mentions[mi]) {
				return true
			}
		}
		if a.rule == stuffAndPlace && strings.Contains(r.text(a.lo, a.hi), "lock") {
			return true
		}
	}
	return false
}

// aimUnlocked aims at what has no locker: the fastener of the clause, or the one spoken of last.
func (r *reading) aimUnlocked(e *looseEnd, ci int) {
	for k := ci; k >= 0 && r.since(r.clauses[k].lo, e.lo) < 40; k-- {
		ms := r.clauses[k].mentions
		for i := len(ms) - 1; i >= 0; i-- {
			if m := &r.mentions[ms[i]]; m.kind&lexicon.Fastener != 0 && !r.isLocker(m) {
				e.topic, e.sure = ms[i], true
				return
			}
		}
	}
}
