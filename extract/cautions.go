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
		if c.mood&(advert|greeting|asked) != 0 || c.hi-c.lo < 2 {
			continue
		}
		ok := r.harms(ci) || r.wear(c)
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
		// a warning that names nothing takes what was said right before it along
		for k := r.toks[lo].cl; k > 0 && !r.namesThing(lo, hi) && hi-r.clauses[k-1].lo <= 30 && r.since(r.clauses[k-1].lo, c.lo) < 9 && r.toks[r.clauses[k].lo].cl-ci >= -1; k-- {
			lo = r.clauses[k-1].lo
		}
		if hi < len(r.toks) {
			n := &r.clauses[r.toks[hi].cl]
			if w := r.toks[n.lo].s; n.sentence == c.sentence && (w == "because" || w == "cause" || w == "or" || w == "otherwise" || w == "so") && n.hi-lo <= 34 {
				hi = n.hi
			}
		}
		out = append(out, Caution{Text: sentenceCase(r.plain(lo, hi)), Place: r.placeAround(lo, hi, c.lo).by("words of warning")})
		last = ci
	}
	sort.SliceStable(out, func(i, j int) bool {
		return out[i].Clip < out[j].Clip || out[i].Clip == out[j].Clip && out[i].At < out[j].At
	})
	return out
}

var harmful = set("strip strips snap snaps crack cracks break breaks broken bend bends tear tears ruin ruins wreck damage damages jam jams leak leaks slip slips spit kill kills burn burns weld explode twist twisted jump jumps fly flies shatter crush pinch scratch score gouge seize stick sticks stuck fall falls drop drops squash hurt bite bites rust rots rot eat eats overheat lose round rounds crossed cross grab glaze split splits mushroom stretch stretched wobble sparks spin spins loose poison skew chew chews shear shears swell swells stab spill squirt sideways hot hole fire shock stall lock locks")

// harms tells whether a clause warns by its consequence: "if …", "or", "because
// it'll", "so it doesn't", followed by what breaks or hurts.
func (r *reading) harms(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&(other|hypothetical) != 0 && c.mood&conditional == 0 {
		return false
	}
	harm := false
	for i := c.lo; i < c.hi; i++ {
		if harmful[r.toks[i].s] && r.toks[i].men < 0 {
			harm = true
		}
	}
	first := r.toks[c.lo].s
	if !harm {
		// the condition stands in the clause before, the harm in this one
		return false
	}
	switch first {
	case "or", "otherwise", "cause", "cuz", "because", "else":
		for i := c.lo; i < min(c.lo+4, c.hi); i++ {
			switch r.toks[i].s {
			case "you", "it", "they", "'ll", "that", "otherwise", "there":
				for k := i; k < min(i+4, c.hi); k++ {
					if s := r.toks[k].s; s == "'ll" || s == "will" || s == "gonna" || s == "can" || s == "going" || s == "don't" {
						return true
					}
				}
			}
		}
	case "it", "that", "you", "they", "and", "then", "so":
		// "if …, it'll crack"
		if ci > 0 {
			p := &r.clauses[ci-1]
			if r.toks[p.lo].s == "if" || p.hi-p.lo > 1 && r.toks[p.lo+1].s == "if" {
				return p.sentence == c.sentence && r.since(p.lo, c.lo) < 10
			}
		}
		if first == "so" && c.mood&negated != 0 {
			return true
		}
		if i := c.lo + 1; i < c.hi && (first == "it" || first == "you" || first == "they" || first == "that") && (r.toks[i].s == "'ll" || r.toks[i].s == "will") {
			return true
		}
	case "if":
		return true
	}
	return false
}

// wear reads "gloves on", "safety glasses on", "goggles".
func (r *reading) wear(c *clause) bool {
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		switch m.head {
		case "glove", "gloves", "glasses", "goggles", "goggle", "respirator", "mask", "protection":
			if m.hi < len(r.toks) && r.toks[m.hi].s == "on" || m.lo > c.lo && (r.toks[m.lo-1].s == "wear" || r.toks[m.lo-1].s == "your" || r.toks[m.lo-1].s == "with") {
				return true
			}
		}
	}
	return false
}

// pastAt tells whether a past form follows: "never touched it" warns of nothing.
func (r *reading) pastAt(i int) bool {
	w := r.word(i)
	return strings.HasSuffix(w, "ed") || w == "met" || w == "did" || w == "had" || w == "cost" || w == "seen" || w == "been" || w == "good" || w == "seems" || w == "does" || w == "goes" || w == "comes" || w == "once"
}

// namesThing tells whether anything is named between two tokens.
func (r *reading) namesThing(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if r.toks[i].men >= 0 {
			return true
		}
	}
	return false
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
		if w == "never" && r.pastAt(q.hi) || next == "be" && r.word(q.hi+1) == "that" {
			return false
		}
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
