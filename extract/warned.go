package extract

import _ "embed"

// Of what is to be minded much is said in words that no rule knows. So each sentence that the
// rules do not take for a warning is weighed, where no warning is near: whether it is one. The
// weights are fitted on lists of the warnings that careful readers found (warned_test.go).

//go:embed warned.bin
var warnedWeights string

// warnedAhead is how heavy it must be that a sentence warns, in parts of a logit as the
// weights have them: a little below even, where as much is told too much as is missed, for who
// reads a warning too many is not hurt by it.
const warnedAhead = -6

// warnedToo gives the warnings among the sentences that none of some warnings is in.
func (r *reading) warnedToo(told []Caution) []Caution {
	var out []Caution
	all := r.sentences()
	if len(all) < 20 {
		return nil // too little to weigh
	}
	near := make(marks, len(all))
	for i := range told {
		near.around(r.sentenceAt(told[i].Place))
	}
	for k, s := range all {
		c := &r.clauses[s.first]
		if near[k] && r.warnedTold == nil || c.chatter || c.mood&(aside|greeting) != 0 {
			continue
		}
		warns := r.weigh(k).warns > warnedAhead && !near[k] && !(r.toks[c.lo].s == "never" && r.pastAt(c.lo+1)) // "never been told a number for that"
		if r.warnedTold != nil {
			r.warnedTold(s, r.hintRow, warns)
		}
		if !warns {
			continue
		}
		near.around(k)
		last := s.first
		for last < s.last && r.clauses[last+1].hi-c.lo <= longestWarning {
			last++
		}
		lo, hi := c.lo, r.clauses[last].hi
		if hi-lo <= 8 && k > 0 && !r.namesThing(lo, hi) {
			// "Not mega tight." warns only with what it is said of
			if p := r.clauses[all[k-1].first].lo; lo-p <= 16 && r.namesThing(p, lo) && r.since(p, lo) < 9 {
				lo = p
			}
		}
		out = append(out, Caution{Text: sentenceCase(r.plain(lo, hi)), Place: r.placeAround(lo, hi, c.lo).by("weighed: likely a warning")})
	}
	return out
}
