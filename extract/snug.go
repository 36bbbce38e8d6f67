package extract

import "wrenchword/extract/lexicon"

// "Snug" by itself is by hand, "good and snug" is read as tight (tokens). "I got them down snug"
// says it of what is named before.

// snugHard tells whether a "snug" is told as tight: "snug them down good".
func (r *reading) snugHard(i int) bool {
	switch r.toks[i].s {
	case "snug", "snugged", "snugging":
	default:
		return false
	}
	for k := i + 1; k < min(len(r.toks), i+7) && r.toks[k-1].brk < brkComma; k++ {
		switch w := r.toks[k].s; w {
		case "good", "tight", "hard":
			return r.next(k) != "enough" && r.prev(k) != "not"
		case "up", "down":
		default:
			if !pronounsObj.has(w) && w != "those" && w != "that" && r.toks[k].men < 0 && !r.toks[k].is(wDeterminer) {
				return false
			}
		}
	}
	return false
}

// leftSnug gives an act that only says "snug" the thing that its clause says is so: "I got them
// down snug", "run the two bolts in just snug".
func (r *reading) leftSnug(ci int, a *act) {
	c := &r.clauses[ci]
	if l := r.lemma1(r.toks[a.verb].s); l != "snug" {
		return
	}
	for i := a.verb - 1; i >= c.lo && i > a.verb-7 && r.toks[i].brk < brkComma; i-- {
		if mi := int(r.toks[i].men); mi >= 0 {
			if m := &r.mentions[mi]; m.prep == "" && m.kind&lexicon.Fastener != 0 && i > c.lo {
				a.objects = []int{mi}
			}
			return
		}
		switch w := r.toks[i].s; {
		case w == "it" || w == "them" || w == "em" || w == "those" || w == "these":
			if a.pronoun = w; w == "em" {
				a.pronoun = "them"
			}
			return
		case w != "just" && w != "only" && w != "down" && w != "in" && w != "up" && w != "on":
			return
		}
	}
}
