package extract

import (
	"sort"
	"strings"
)

var notWarning = set("laugh cry panic ask judge write quote blame know think have need worry care remember believe mind want recall see say blame fancy do get like often bother trust really even usually own")

// cautions gives the warnings that were spoken, a clause each with what it rests on.
func (r *reading) cautions() []Caution {
	out := []Caution{}
	began, told := 0, 0 // where the last warning begins and ends
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
		if !ok || c.lo < told {
			continue // told already, with the warning before
		}
		lo, hi := r.warningAt(ci)
		if n := len(out); lo < told {
			// it goes on with the warning before, and is told with it
			if hi-began <= longestWarning {
				out[n-1].Text, told = sentenceCase(r.plain(began, hi)), hi
			}
			continue
		}
		began = lo
		out = append(out, Caution{Text: sentenceCase(r.plain(lo, hi)), Place: r.placeAround(lo, hi, c.lo).by("words of warning")})
		told = hi
	}
	sort.SliceStable(out, func(i, j int) bool {
		return out[i].Clip < out[j].Clip || out[i].Clip == out[j].Clip && out[i].At < out[j].At
	})
	return out
}

// longestWarning is how many words a warning has at most: more is no warning any more.
const longestWarning = 36

// warningAt gives the words that tell the warning of a clause: its whole sentence
// where that is short, else as many clauses as make sense by themselves; what it
// is about, where it names nothing; and what happens to who does not heed it.
func (r *reading) warningAt(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	a, b := ci, ci
	for a > 0 && r.clauses[a-1].sentence == c.sentence && c.hi-r.clauses[a-1].lo <= longestWarning {
		a--
	}
	for b+1 < len(r.clauses) && r.clauses[b+1].sentence == c.sentence && r.clauses[b+1].hi-c.lo <= longestWarning {
		b++
	}
	whole := (a == 0 || r.clauses[a-1].sentence != c.sentence) && (b+1 == len(r.clauses) || r.clauses[b+1].sentence != c.sentence)
	if whole = whole && r.clauses[b].hi-r.clauses[a].lo <= longestWarning && r.punctuated(a, b); !whole {
		for b = ci; b+1 < len(r.clauses) && r.clauses[b+1].hi-c.lo <= longestWarning && r.clauses[b+1].sentence == c.sentence && (r.hangs(b) || r.follows(b+1)); {
			b++
		}
		for a = ci; a > 0 && r.clauses[b].hi-r.clauses[a-1].lo <= longestWarning && r.clauses[a-1].sentence == c.sentence && (r.hangs(a-1) || r.follows(a)); {
			a--
		}
	}
	// a warning that names nothing takes what was said right before it along
	if k := a; !r.namesThing(r.clauses[a].lo, r.clauses[b].hi) {
		for k > 0 && ci-k < 3 && !r.namesThing(r.clauses[k].lo, r.clauses[a].hi) && r.clauses[b].hi-r.clauses[k-1].lo <= 30 && r.since(r.clauses[k-1].lo, c.lo) < 9 {
			k--
		}
		if r.namesThing(r.clauses[k].lo, r.clauses[a].hi) {
			a = k
		} else if k < a {
			a--
		}
	}
	// "Do not go anywhere with no pin in it. You'll lose the lot."
	if b+1 < len(r.clauses) && r.clauses[b+1].hi-r.clauses[a].lo <= longestWarning && r.consequence(b+1) {
		b++
	}
	return r.clauses[a].lo, r.clauses[b].hi
}

// punctuated tells whether the clauses a to b are one sentence that was written as
// one, rather than a stretch of talk with no marks in it.
func (r *reading) punctuated(a, b int) bool {
	return a == b || r.toks[r.clauses[b].hi-1].brk >= brkSentence && (a == 0 || r.toks[r.clauses[a].lo-1].brk >= brkSentence)
}

var hanging = set("a an the my your our his her its their to of with and or but so because cause if when than as at from for otherwise be is are was 's don't not no never too very just some any which who that's there's")

// hangs tells whether a clause stops where no sentence can.
func (r *reading) hangs(ci int) bool {
	t := r.toks[r.clauses[ci].hi-1]
	if t.brk >= brkSentence {
		return false
	}
	w := r.toks[r.clauses[ci].lo].s
	return hanging[t.s] || w == "if" || w == "before" || w == "unless" || w == "until" || w == "till"
}

// follows tells whether a clause only goes on with what the one before began.
func (r *reading) follows(ci int) bool {
	c := &r.clauses[ci]
	switch w := r.toks[c.lo].s; w {
	case "because", "cause", "cuz", "or", "otherwise", "until", "till":
		return true
	case "so":
		return c.mood&negated != 0
	}
	return r.consequence(ci)
}

// consequence tells whether a clause tells what will happen: "you'll lose the lot".
func (r *reading) consequence(ci int) bool {
	c := &r.clauses[ci]
	if c.hi-c.lo < 3 {
		return false
	}
	i := c.lo
	if w := r.toks[i].s; w == "or" || w == "and" || w == "because" || w == "'cause" || w == "cause" {
		i++
	}
	switch r.word(i) {
	case "you", "it", "they", "that", "she", "he":
	default:
		return false
	}
	if w := r.word(i + 1); w != "'ll" && w != "will" {
		return false
	}
	for k := i; k < c.hi; k++ {
		if harmful[r.toks[k].s] && r.toks[k].men < 0 {
			return true
		}
	}
	return false
}

var harmful = set("strip strips snap snaps crack cracks break breaks broken bend bends tear tears ruin ruins wreck damage damages jam jams leak leaks slip slips spit kill kills burn burns weld explode twist twisted jump jumps fly flies shatter crush pinch scratch score gouge seize stick sticks stuck fall falls drop drops squash hurt bite bites rust rots rot eat eats overheat lose round rounds crossed cross grab glaze split splits mushroom stretch stretched wobble sparks spin spins loose poison skew chew chews shear shears swell swells stab spill squirt sideways hot hole fire shock stall lock locks")

// meant are the harms that may as well be the work: "you spin the gland", "through the hole".
var meant = set("spin drop stick lock hole jump")

// harms tells whether a clause warns by its consequence: "if …", "or", "because
// it'll", "so it doesn't", followed by what breaks or hurts.
func (r *reading) harms(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&(other|hypothetical) != 0 && c.mood&conditional == 0 {
		return false
	}
	harm := false
	for i := c.lo; i < c.hi; i++ {
		if harmful[r.toks[i].s] && r.toks[i].men < 0 && !(meant[r.toks[i].s] && i > c.lo && (r.toks[i-1].s == "you" || r.toks[i-1].s == "the")) {
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
	return strings.HasSuffix(w, "ed") || w == "met" || w == "did" || w == "had" || w == "cost" || w == "seen" || w == "been" || w == "good" || w == "seems" || w == "does" || w == "goes" || w == "comes" || w == "once" || w == "done" || w == "got"
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
		if prev == "or" && (q.hi >= c.hi || subjects[next]) {
			return false // "hit the bell or don't"
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
	case "away":
		// "cut away from your hand" warns, "the oil runs away from the clutch" does not
		for i := max(c.lo, q.lo-4); i < min(c.hi, q.hi+3); i++ {
			switch r.toks[i].s {
			case "keep", "keeps", "stay", "cut", "hold", "point", "blow", "turn", "you", "your", "yourself", "hands", "fingers", "flame", "sparks":
				return true
			}
		}
		return false
	}
	return true
}

// plain gives the words from lo to hi without what carries nothing.
func (r *reading) plain(lo, hi int) string {
	for lo < hi {
		n := r.lex.Filler(r.from(lo, hi))
		w := r.toks[lo].s
		if next := r.word(lo + n); strings.HasPrefix(next, "'") || linking[next] || next == "side" || next == "hand" {
			break // "there's a washer behind it", "right side goes on first"
		}
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
