package extract

import (
	"sort"
	"strings"
)

var notWarning = set("know think have need worry care remember believe mind want recall see say blame fancy do get like often bother trust really even usually own")

// cautions gives the warnings that were spoken, a clause each with what it rests on.
func (r *reading) cautions() []Caution {
	out := []Caution{}
	last := -99
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if c.mood&warned == 0 || c.mood&(advert|greeting|asked) != 0 || c.hi-c.lo < 2 {
			continue
		}
		ok := false
		for _, q := range c.cues {
			if q.mood&warned == 0 {
				continue
			}
			if r.warns(c, q) {
				ok = true
			}
		}
		if !ok || ci-last <= 1 && r.clauses[ci].sentence == r.clauses[last].sentence {
			continue
		}
		lo, hi := c.lo, c.hi
		if w := r.toks[c.lo].s; (w == "otherwise" || w == "or" || w == "because") && ci > 0 && r.clauses[ci-1].sentence == c.sentence {
			lo = r.clauses[ci-1].lo
		}
		if hi < len(r.toks) {
			n := &r.clauses[r.toks[hi].cl]
			if w := r.toks[n.lo].s; n.sentence == c.sentence && (w == "because" || w == "cause" || w == "or" || w == "otherwise" || w == "so") && n.hi-lo <= 34 {
				hi = n.hi
			}
		}
		out = append(out, Caution{Text: sentenceCase(r.plain(lo, hi)), Place: r.placeAround(lo, hi, lo)})
		last = ci
	}
	sort.SliceStable(out, func(i, j int) bool {
		return out[i].Clip < out[j].Clip || out[i].Clip == out[j].Clip && out[i].At < out[j].At
	})
	return out
}

// warns tells whether a cue warns the listener, rather than being said of the speaker.
func (r *reading) warns(c *clause, q cue) bool {
	w := r.toks[q.lo].s
	next := r.word(q.hi)
	prev := ""
	if q.lo > c.lo {
		prev = r.toks[q.lo-1].s
	}
	switch w {
	case "don't", "do", "never":
		if prev == "i" || prev == "we" || prev == "they" || prev == "it" || prev == "'ve" || prev == "have" || prev == "that" || prev == "who" || prev == "people" || prev == "he" || prev == "'s" || prev == "she" {
			return false
		}
		if q.hi-q.lo == 1 && notWarning[next] && !(next == "get" || next == "do") {
			return false
		}
		return w != "do" || q.hi-q.lo > 1
	case "hot", "sharp":
		return false
	case "remember", "wear":
		return prev == "" || prev == "and" || prev == "so" || prev == "you"
	case "otherwise":
		return true
	}
	return true
}

// plain gives the words from lo to hi without what carries nothing.
func (r *reading) plain(lo, hi int) string {
	for lo < hi {
		n := r.lex.Filler(r.from(lo, hi))
		w := r.toks[lo].s
		if n == 0 && (w == "and" || w == "but" || w == "because") {
			n = 1
		}
		if n == 0 {
			break
		}
		lo += n
	}
	if lo >= hi {
		return ""
	}
	return strings.TrimRight(r.talk.Text[r.toks[lo].lo:r.toks[hi-1].hi], " ,.;:")
}

func sentenceCase(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:] + "."
}
