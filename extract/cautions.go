package extract

import (
	"sort"
	"strings"

	"wrenchword/extract/lexicon"
)

var notWarning = set("laugh cry panic ask judge write quote blame tell hold one never know think have need worry care remember believe mind want recall see say blame fancy do get like often bother trust really even usually own love like look looking exist agree weigh ring phone email film")

// cautions gives the warnings that were spoken, each with what it rests on.
func (r *reading) cautions() []Caution {
	out := []Caution{}
	began, told := 0, 0 // where the last warning begins and ends
	last := -99         // the clause of the last warning
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if c.mood&(aside|greeting|asked) != 0 || c.hi-c.lo < 2 {
			continue
		}
		lo, hi, kind := r.warning(ci)
		if kind == "" || c.lo < told && kind != "told" {
			continue // told already, with the warning before
		}
		if kind == "told" && lo < told && c.lo >= told && hi-began > longestWarning {
			lo = c.lo // too long to be told with the warning before
		}
		if n := len(out); n > 0 && (lo < told || r.restsOn(last, ci, kind)) {
			// it goes on with the warning before, and is told with it
			if hi > told && hi-began <= longestWarning {
				out[n-1].Text, told = sentenceCase(r.plain(began, hi)), hi
			}
			if lo < told {
				last = ci
				continue
			}
		}
		began, last = lo, ci
		out = append(out, Caution{Text: sentenceCase(r.plain(lo, hi)), Place: r.placeAround(lo, hi, c.lo).by("warning: " + kind)})
		told = hi
	}
	out = append(out, r.warnedToo(out)...)
	sort.SliceStable(out, func(i, j int) bool {
		return out[i].Clip < out[j].Clip || out[i].Clip == out[j].Clip && out[i].At < out[j].At
	})
	return out
}

// restsOn tells whether a warning names nothing and only drives home the one right before it.
func (r *reading) restsOn(last, ci int, kind string) bool {
	if last < 0 || ci-last > 2 || r.since(r.clauses[last].lo, r.clauses[ci].lo) > 7 {
		return false
	}
	return kind == "emphasis" || kind == "fragile" || kind == "threat" && len(r.clauses[ci].mentions) == 0
}

// warning tells whether a clause warns, by what, and from where to where it runs:
// a warning takes along what it was said of and what it threatens with.
func (r *reading) warning(ci int) (lo, hi int, kind string) {
	c := &r.clauses[ci]
	lo, hi = c.lo, c.hi
	told := c.hi // the end of what tells that it warns
	for _, q := range c.cues {
		if q.mood&warned != 0 && r.warns(c, q) {
			kind, told = "told", q.hi
			if w := r.toks[q.lo].s; (w == "dangerous" || w == "danger") && len(c.mentions) == 0 {
				kind = "emphasis"
			}
			if q.lo-c.lo > 8 {
				lo = q.lo
			}
			if end := r.toks[c.hi-1]; max(q.hi, c.hi) < len(r.toks) && (q.hi >= c.hi && (end.brk < brkSentence || len(c.mentions) == 0 && c.hi-c.lo <= 4) || q.hi >= c.hi-1 && (hanging.has(end.s) || end.s == "ever")) {
				hi = r.clauses[r.toks[max(q.hi, c.hi)].cl].hi // "be | careful you don't go in too far", "don't ever | get under it"
			}
			break
		}
	}
	switch {
	case kind != "":
	case r.wear(c):
		kind = "wear"
	case r.tagged(c):
		kind = "told"
	case r.nobodyDoes(c):
		kind = "first"
	case r.orThen(ci), r.becauseOf(ci):
		kind = "threat"
	case r.notThere(c), r.gently(c):
		kind = "careless"
	case r.soAsNot(c), r.checksNot(c):
		kind = "protect"
	case r.stopIf(ci):
		kind = "stop"
	case r.harms(ci) || r.theyHarm(ci) || r.orElse(ci) || r.mightHarm(ci):
		kind = "threat"
	case r.fragile(ci):
		kind = "fragile"
	default:
		for _, o := range c.opens {
			switch o.signal {
			case "protect", "wrong-way", "stop", "careless":
				if o.signal == "stop" && r.toks[o.lo].men >= 0 {
					continue // a piston stop
				}
				if p := r.prev(o.lo); r.toks[o.lo].s == "mind" && (p == "never" || p == "don't" || p == "i" || p == "to" || p == "'d") {
					continue // "never mind that"
				}
				if o.signal == "careless" && r.toks[o.lo].s == "not" && o.lo > c.lo && r.toks[o.lo-1].is(wLinking) {
					continue // "it's not oil, it's chocolate"
				}
				if r.toks[o.lo].s == "unplug" && o.lo > c.lo && !openers.has(r.toks[o.lo-1].s) && r.toks[o.lo-1].brk < brkComma {
					continue // "you have to unplug it": a plug of the work
				}
				if (c.mood&(other|hypothetical) == 0 || c.mood&conditional != 0) && !r.pastTold(c) && !r.ofMe(c.lo, o.lo) {
					kind = o.signal
				}
			case "first":
				if c.mood&other == 0 || r.toks[o.lo].s != "before" {
					kind = o.signal
				}
			case "own":
				if !r.pastTold(c) || r.toks[o.lo].s != "i" {
					kind = o.signal
				}
			case "emphasis":
				kind = o.signal
			case "deadly":
				if !r.handled(ci, o) && c.mood&other == 0 && !r.pastTold(c) {
					kind = "threat"
				}
			}
			if kind == "" {
				continue
			}
			told = o.hi
			if o.lo-c.lo > 8 {
				lo = r.phraseStart(c, o.lo)
			}
			if n := int(r.toks[o.hi-1].cl) + 1; o.hi >= c.hi-2 && n < len(r.clauses) && r.clauses[n-1].sentence == r.clauses[n].sentence && o.signal != "emphasis" {
				for n+1 < len(r.clauses) && !r.namesThing(o.hi, r.clauses[n].hi) && len(r.clauses[n+1].mentions) > 0 && r.clauses[n+1].sentence == c.sentence && r.toks[r.clauses[n+1].lo].s == "and" {
					n++ // "before you go anywhere | get in | and pump the pedal"
				}
				hi = r.clauses[n].hi // "keep an eye on the | fluid"
			}
			break
		}
		if kind == "" && r.forbids(c) {
			kind = "careless"
		}
	}
	if kind == "" {
		return lo, hi, ""
	}
	from, to := r.warningAt(ci)
	if from < c.lo || lo == c.lo {
		lo = from
	}
	hi = max(hi, to)
	if k := r.toks[lo].cl; k > 0 && lo == r.clauses[k].lo && hi-r.clauses[k-1].lo <= longestWarning && r.since(r.clauses[k-1].lo, c.lo) < 10 && r.clauses[k-1].mood&(aside|greeting) == 0 {
		first := r.toks[lo].s
		if kind == "emphasis" || kind == "stop" || r.clauses[k-1].sentence == c.sentence && (kind == "threat" || first == "so" || first == "and" || first == "or" || first == "otherwise") {
			lo = r.clauses[k-1].lo
		}
	}
	lo, hi = r.inSentences(lo, hi, c.lo, max(told, lo+1))
	return lo, hi, kind
}

// ofMe tells whether the speaker is named between two tokens.
func (r *reading) ofMe(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if w := r.toks[i].s; w == "i" {
			return true
		}
	}
	return false
}

// orElse reads "overfill it and it blows the seals", "thumb over the clip, or it's in the
// garden", "go the other way and you've bent it": do this, and that is what comes of it.
func (r *reading) orElse(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&(other|asked) != 0 {
		return false
	}
	at, lo := c.lo, c.lo // where what is threatened begins, and what threatens it
	if w := r.toks[c.lo].s; (w == "and" || w == "or" || w == "then" || r.asideOf(ci)) && ci > 0 && r.clauses[ci-1].sentence == c.sentence && r.clauses[ci-1].mood&(other|asked|hypothetical) == 0 {
		lo = r.clauses[ci-1].lo
	} else if at = r.thenAt(c); at < 0 {
		return false
	}
	for lo < at && openers.has(r.toks[lo].s) && r.toks[lo].men < 0 {
		lo++
	}
	if !r.supposes(lo, at) || r.ofMe(lo, at) {
		return false
	}
	if w := r.toks[c.lo].s; at == c.lo && w != "and" && w != "or" && w != "then" {
		at-- // "you hone it, you've got a paperweight": nothing stands between
	}
	w := r.word(at + 2)
	if d := r.next(at); d == "the" || d == "your" {
		if next := r.word(at + 3); next == "'ll" || next == "will" || next == "would" {
			w = next // "and the thread'll come out"
		}
	}
	ahead := w == "'ll" || w == "'d" || w == "would" || w == "'ve" || w == "'re" || w == "'s" || w == "will"
	if across := at <= c.lo || r.toks[at].brk == brkComma; !ahead && (across && (at == c.lo || w != "goes" && w != "falls" && w != "drops" && !soiling.has(w)) || r.toks[lo].s == "you" && !soiling.has(w) && w != "goes" && w != "falls" && w != "drops") {
		return false
	}
	if r.toks[lo].s == "you" && linking.has(r.next(lo)) {
		return false
	}
	for i := at + 3; ahead && i < c.hi; i++ {
		if r.toks[i].is(wSeldom) && damage.has(r.toks[i].s) && r.toks[i].men < 0 {
			return true // "and that's the bearing wrecked"
		}
	}
	for _, o := range c.opens {
		if o.lo > at && r.ofHarm(o) && (ahead || !gives.has(r.toks[o.lo].s)) {
			return true
		}
	}
	return false
}

// mightHarm reads "you turn that blade by hand with the wire on, it can start": what one might
// do, and what the machine may do then.
func (r *reading) mightHarm(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&(other|asked) != 0 || r.toks[c.lo].s != "you" || !r.plainVerb(r.next(c.lo)) || r.toks[c.hi-1].brk >= brkSentence || c.hi+3 > len(r.toks) {
		return false
	}
	switch r.toks[c.hi].s {
	case "it", "that", "they", "she", "he":
	default:
		return false
	}
	switch r.toks[c.hi+1].s {
	case "can", "could", "might", "may":
		return mayDo.has(r.toks[c.hi+2].s)
	}
	return false
}

// gives are the words of harm that also say that a thing comes as it should: "twist
// that and it pops out".
var gives = set("pops pop drops falls slips slip jumps springs spring spins lets come comes snaps fall drop")

// onlyGives tells whether all harm that a clause tells of is that something comes out or off, which is
// what was wanted: "push it down, and the ball joint pops out".
func (r *reading) onlyGives(ci int) bool {
	for _, o := range r.clauses[ci].opens {
		if r.ofHarm(o) && !gives.has(r.toks[o.lo].s) {
			return false
		}
	}
	return true
}

// asideOf tells whether a clause follows what one might do with nothing but a comma:
// "you leave that in there, it goes straight down the hole".
func (r *reading) asideOf(ci int) bool {
	c := &r.clauses[ci]
	if ci == 0 || r.clauses[ci-1].sentence != c.sentence || r.toks[c.lo-1].brk != brkComma || c.hi-c.lo < 3 {
		return false
	}
	switch r.toks[c.lo].s {
	case "you", "it", "they", "that":
	default:
		return false
	}
	p := &r.clauses[ci-1]
	first, second := r.toks[p.lo].s, r.next(p.lo)
	return first == "you" && !linking.has(second) && r.plainVerb(second) || first == "it" && (second == "goes" || second == "drops" || second == "falls")
}

// thenAt gives the token of the "and", "or" or "then" within a clause that what comes of
// it follows, -1 where there is none.
func (r *reading) thenAt(c *clause) int {
	told := r.toks[c.lo].s == "you" && !linking.has(r.next(c.lo)) && r.plainVerb(r.next(c.lo))
	for i := c.lo + 1; i+2 < c.hi; i++ {
		if w := r.toks[i].s; w != "and" && w != "or" && w != "then" && !(told && r.toks[i].brk == brkComma && r.toks[i+1].s != "the" && r.toks[i+1].s != "your") {
			continue
		}
		switch r.toks[i+1].s {
		case "it", "you", "they", "that", "the", "she", "your", "its", "then":
			return i
		}
	}
	return -1
}

// supposes tells whether the words from lo on say what one might do: "overfill it",
// "you spin it dry", "anything goes down there", "one drop on the disc".
func (r *reading) supposes(lo, at int) bool {
	if lo >= at {
		return false
	}
	switch r.toks[lo].s {
	case "it":
		return r.next(lo) == "goes" || r.next(lo) == "drops" || r.next(lo) == "falls"
	case "either":
		return false
	case "you", "no", "one", "any", "anything", "too":
		w := r.next(lo)
		return w != "'s" && w != "see" && w != "know" && w != "hear" && w != "feel" && w != "notice"
	}
	first := r.toks[lo].s
	bare := !stopWords.has(first) && !prepositions.has(first) && !placeWords.has(first) && r.toks[lo].men < 0 && r.toks[lo].qty < 0 && (pronounsObj.has(r.next(lo)) || r.next(lo) == "the" || r.next(lo) == "a" || r.next(lo) == "your") // "overfill it"
	return bare || first == "go" || first == "get" || first == "let" || first == "leave" || r.imperativeAt(lo)
}

// phraseStart goes back from a cue to where what it is said of begins: a warning
// begins with no "'s live".
func (r *reading) phraseStart(c *clause, at int) int {
	if w := r.toks[at].s; !strings.HasPrefix(w, "'") && !linking.has(w) && w != "under" && w != "full" && w != "stays" {
		return at
	}
	for i := at - 1; i > max(c.lo, at-9); i-- {
		if w := r.toks[i].s; openers.has(w) || w == "and" || w == "there's" || r.toks[i-1].brk >= brkComma {
			return i
		}
	}
	return max(c.lo, at-9)
}

// theyHarm tells whether a clause tells what harm comes of what some people do:
// "people take a screwdriver to it and score it", "the other stuff rots the rubber".
func (r *reading) theyHarm(ci int) bool {
	c := &r.clauses[ci]
	if !r.threatens(ci) || r.pastTold(c) || r.ofMe(c.lo, c.hi) {
		return false
	}
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "ordinary", "stuff", "cheap", "anything":
			return true
		}
	}
	if r.soils(c) {
		return true
	}
	lo := ci
	switch r.toks[c.lo].s {
	case "then", "and", "it", "they", "which", "that":
		lo, _ = r.nearBy(ci, 1, 0, 8)
	}
	for i := r.clauses[lo].lo; i < c.hi; i++ {
		switch w := r.toks[i].s; w {
		case "people", "folk", "folks", "lads", "some", "everybody", "everyone":
			if next := r.next(i); i == r.clauses[lo].lo || r.toks[i-1].s == "and" || r.toks[i-1].s == "some" || r.toks[i-1].s == "but" || next == "people" {
				if second := r.word(i + 2); next == "say" || next == "tell" || next == "ask" || next == "think" || next == "reckon" || second == "tell" || second == "say" || second == "ask" {
					return false
				}
				return w != "some" || next == "people" || r.plainVerb(next)
			}
		}
	}
	return false
}

// fragile tells whether a clause tells of what takes no force, where it is worked on.
func (r *reading) fragile(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&(asked|aside|other) != 0 || r.pastTold(c) || r.ofMe(c.lo, c.hi) || !r.heardIn(ci, ci, "fragile") {
		return false
	}
	lo, hi := r.nearBy(ci, 2, 1, 9)
	for k := lo; k <= hi; k++ {
		for _, ai := range r.clauses[k].acts {
			switch r.acts[ai].action.Name {
			case "tighten", "torque", "start by hand", "hammer":
				return true
			}
		}
		for i := r.clauses[k].lo; i < r.clauses[k].hi; i++ {
			switch r.toks[i].s {
			case "gentle", "gently", "easy", "careful", "hard", "tight", "firm", "mad", "slow", "slowly", "force", "snug":
				return true
			}
		}
	}
	return false
}

// forbids reads "no grease", "no screwdrivers": a clause that lets a thing not be used.
func (r *reading) forbids(c *clause) bool {
	for i := c.lo; i < c.hi-1; i++ {
		if r.toks[i].s != "no" || i > c.lo && !openers.has(r.toks[i-1].s) && r.toks[i-1].s != "and" && r.toks[i-1].brk < brkComma {
			continue
		}
		if k := r.toks[i+1].men; k >= 0 && r.mentions[k].kind&(lexicon.Tool|lexicon.Consumable) != 0 && r.mentions[k].kind&lexicon.Part == 0 && c.hi-i <= 7 {
			return true
		}
	}
	return false
}

// ofHarm tells whether a cue tells of harm, which "those can go in the scrap" does not.
func (r *reading) ofHarm(o openCue) bool {
	if o.signal != "harm" || r.toks[o.lo].men >= 0 {
		return false
	}
	switch r.toks[o.hi-1].s {
	case "scrap", "junk":
		return r.prev(o.lo) != "the" && r.prev(o.lo) != "for" && r.prev(o.lo) != "to"
	}
	return true
}

// threatens tells whether a clause tells of harm.
func (r *reading) threatens(ci int) bool {
	for _, o := range r.clauses[ci].opens {
		if !r.ofHarm(o) || r.prev(o.lo) == "no" && o.lo > r.clauses[ci].lo || r.goneBy(ci, o) || r.handled(ci, o) {
			continue
		}
		if next := r.word(o.hi); next != "about" && !(o.hi < len(r.toks) && r.toks[o.hi].qty >= 0) {
			return true // but "you'll lose about half a litre" threatens with nothing
		}
	}
	return false
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

var hanging = set("a an the my your his her its their to of with and or but so because cause if when than as at from for otherwise be is are was 's don't not no never too very just some any which who that's there's holds keeps needs wants makes takes gives")

// hangs tells whether a clause stops where no sentence can.
func (r *reading) hangs(ci int) bool {
	t := r.toks[r.clauses[ci].hi-1]
	if t.brk >= brkSentence {
		return false
	}
	w := r.toks[r.clauses[ci].lo].s
	if n := r.word(r.clauses[ci].lo + 1); n == "if" && (w == "because" || w == "cause" || w == "and" || w == "so" || w == "but") {
		w = n // "because if that rod drops off, | the brakes get no pressure"
	}
	return hanging.has(t.s) || w == "if" || w == "before" || w == "unless" || w == "until" || w == "till"
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
	if w := r.next(i); w != "'ll" && w != "will" {
		return false
	}
	return r.threatens(ci)
}

// harms tells whether a clause warns by its consequence: "if …", "or", "because
// it'll", "… and they grab", followed by what breaks or hurts.
func (r *reading) harms(ci int) bool {
	c := &r.clauses[ci]
	if !r.threatens(ci) {
		return false
	}
	first := r.toks[c.lo].s
	second := r.next(c.lo)
	if k := c.lo + bit(first == "and" || first == "or" || first == "no"); r.word(k) == "you" && (r.next(k) == "'d" || r.next(k) == "would") {
		return c.mood&asked == 0 // "you'd have the head off"
	}
	if c.mood&(other|hypothetical) != 0 && c.mood&conditional == 0 {
		return false
	}
	if r.ifYou(ci) {
		return true
	}
	if (first == "a" || first == "an" || first == "any") && (r.saidIn(c, "'ll") || r.saidIn(c, "will")) {
		return true // "a loose spade'll burn"
	}
	if first == "i" || second == "i" && first != "if" || r.pastTold(c) {
		return false
	}
	var p *clause
	if ci > 0 && r.clauses[ci-1].sentence == c.sentence && r.since(r.clauses[ci-1].lo, c.lo) < 10 {
		p = &r.clauses[ci-1]
	}
	after := p != nil && (r.startsWith(p, "if") || r.startsWith(p, "unless"))
	will := false
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "'ll", "will", "gonna", "can", "could", "wants", "want", "going":
			will = true
		}
	}
	switch first {
	case "if", "otherwise", "or", "else", "unless":
		return true
	case "because", "cause", "cuz":
		return will || p == nil || !r.weDo(p) // "we're pulling the pulley because it wobbles": why, and no harm to come
	case "and", "then", "so":
		// "take it off hot and it'll have the skin off your hand", "fit them dry and they grab"
		if first != "so" && p != nil && (will || r.imperativeAt(p.lo)) && (second == "it" || second == "they" || second == "you" || second == "that" || second == "the" || second == "then") {
			return will || r.imperativeAt(p.lo) && (!r.onlyGives(ci) || r.saidIn(p, "too") || r.saidIn(p, "without"))
		}
		return after || first == "then" && !will && c.mood&negated == 0 && ci > 0 && r.clauses[ci-1].mood&other != 0
	case "it", "that", "you", "they", "she", "those", "this":
		return after || will && (second == "'ll" || second == "will" || second == "can")
	}
	if n := ci + 1; will && n < len(r.clauses) && r.clauses[n].sentence == c.sentence && r.toks[r.clauses[n].lo].s == "so" && c.mood&negated == 0 {
		return true // "the gate will fall, so somebody holds it"
	}
	return after
}

// goneBy tells whether a harm is no more than that something is gone: "and it's gone",
// "the blue stuff's gone off them".
func (r *reading) goneBy(ci int, o openCue) bool {
	if r.toks[o.lo].s != "gone" || r.toks[r.clauses[ci].lo].s == "or" {
		return false
	}
	switch r.prev(o.lo) {
	case "'s", "is", "are", "just", "'ve", "have", "has", "'re":
		return true
	}
	return false
}

// handled tells whether what a harm says of hands and fingers is that they hold or feel:
// "it comes off in your hand", "a bit of give with your thumb".
func (r *reading) handled(ci int, o openCue) bool {
	at := -1
	for i := o.lo; i < o.hi; i++ {
		if r.toks[i].s == "your" {
			at = i
		}
	}
	if at < 0 {
		return false
	}
	switch r.next(at) {
	case "hand", "hands", "finger", "fingers", "thumb", "thumbs", "arm", "palm":
	default:
		return false
	}
	if p := r.prev(at); p == "with" || p == "by" || p == "get" || p == "using" {
		return true
	}
	c := &r.clauses[ci]
	for i := max(c.lo, at-7); i < at; i++ {
		switch r.toks[i].s {
		case "come", "comes", "drops", "hold", "write", "catch", "feel", "sits":
			return r.prev(at) != "off" && r.toks[i].s != "drops" || r.prev(at) == "in" || r.prev(at) == "into"
		}
	}
	return false
}

// ifYou tells of "cross-threads if you breathe on it": the harm before its cause.
func (r *reading) ifYou(ci int) bool {
	c := &r.clauses[ci]
	at := -1
	for _, o := range c.opens {
		if r.ofHarm(o) {
			at = o.lo
		}
	}
	if at < 0 || r.ofMe(c.lo, c.hi) || r.pastTold(c) {
		return false
	}
	n := ci + 1
	return n < len(r.clauses) && r.clauses[n].sentence == c.sentence && r.toks[r.clauses[n].lo].s == "if" && r.word(r.clauses[n].lo+1) == "you"
}

// soils tells of "brake fluid eats paint": what comes on a machine and harms it.
func (r *reading) soils(c *clause) bool {
	i := c.lo
	if determiner.has(r.toks[i].s) {
		i++
	}
	k := r.toks[min(i, c.hi-1)].men
	if k < 0 || r.mentions[k].kind&lexicon.Consumable == 0 || r.mentions[k].kind&(lexicon.Part|lexicon.Fastener) != 0 || r.mentions[k].prep != "" {
		return false
	}
	for _, o := range c.opens {
		if o.signal == "harm" && soiling.has(r.toks[o.lo].s) && o.lo >= r.mentions[k].hi && o.lo <= r.mentions[k].hi+3 && r.toks[r.mentions[k].hi-1].brk < brkComma && r.toks[o.lo-1].brk < brkComma {
			return true
		}
	}
	return false
}

// soiling are verbs of what oil, grease and cleaners do to what they come on.
var soiling = wordsOf("what oil and cleaners do to things")

// tagged tells of "key all the way in, mind": told to take heed.
func (r *reading) tagged(c *clause) bool {
	n := c.hi - 1
	return n > c.lo+1 && r.toks[n].s == "mind" && r.toks[n].men < 0 && r.toks[n-1].brk == brkComma && c.mood&(asked|other) == 0 && !r.ofMe(c.lo, n)
}

// nobodyDoes tells of "until the new one's in, nobody turns that crank".
func (r *reading) nobodyDoes(c *clause) bool {
	for i := c.lo; i+2 < c.hi; i++ {
		w := r.toks[i].s
		if w != "nobody" && w != "no-one" {
			continue
		}
		if v := r.toks[i+1].s; r.plainVerb(v) && v != "put" && v != "cut" && v != "set" && v != "hit" && v != "let" && v != "read" {
			return determiner.has(r.toks[i+2].s) || pronounsObj.has(r.toks[i+2].s)
		}
		if v := r.toks[i+1].s; strings.HasSuffix(v, "s") && r.toks[i+1].is(wForm) && !strings.HasPrefix(v, "'") && !stopWords.has(v) && v != "knows" && v != "likes" && v != "wants" && v != "needs" && v != "makes" && v != "gives" && v != "uses" && v != "finds" && v != "tells" && v != "sees" {
			return (determiner.has(r.toks[i+2].s) || pronounsObj.has(r.toks[i+2].s)) && !r.saidIn(c, "why")
		}
	}
	return false
}

// orThen reads "wedge it, or she's over the side": what one is told to do, and what
// comes of not doing it. "It's a twelve or it's a ten" tells of two things that may be.
func (r *reading) orThen(ci int) bool {
	c := &r.clauses[ci]
	if ci == 0 || r.toks[c.lo].s != "or" || c.hi-c.lo < 3 || c.mood&(asked|other) != 0 || r.clauses[ci-1].sentence != c.sentence || !r.orders(ci-1) {
		return false
	}
	switch r.next(c.lo) {
	case "you", "it", "they", "she", "he", "that":
	default:
		return false
	}
	switch w := r.word(c.lo + 2); w {
	case "can", "could", "may", "might", "want", "need", "don't", "have", "would", "just", "take", "use", "do":
		return false
	case "'s", "'re":
		n := r.word(c.lo + 3)
		return n != "a" && n != "an" && n != "the" && n != "just" && n != "not" && r.toks[c.lo+2].qty < 0 && (c.lo+3 >= c.hi || r.toks[c.lo+3].qty < 0)
	default:
		return r.toks[c.lo+2].is(wForm|wVerb) || w == "'ll" || w == "will"
	}
}

// becauseOf reads "keep your hand under it because it'll just drop": a reason that
// lies ahead, for what one is told to do.
func (r *reading) becauseOf(ci int) bool {
	c := &r.clauses[ci]
	if ci == 0 || c.hi-c.lo < 4 || c.mood&(asked|other|negated) != 0 || r.clauses[ci-1].sentence != c.sentence || !r.orders(ci-1) {
		return false
	}
	if w := r.toks[c.lo].s; w != "because" && w != "'cause" && w != "cause" && w != "cuz" && w != "cos" {
		return false
	}
	switch r.next(c.lo) {
	case "you", "it", "they", "she", "he", "that", "these", "those":
		w := r.word(c.lo + 2)
		return w == "'ll" || w == "will"
	}
	return false
}

// weDo tells whether a clause says what is done in this job, and by whom: "I'm changing the
// pump", "it's getting a belt".
func (r *reading) weDo(c *clause) bool {
	for i := c.lo; i < min(c.hi, c.lo+5); i++ {
		switch r.toks[i].s {
		case "i", "getting":
			return true
		}
	}
	return false
}

// orders tells whether a clause tells one to do something.
func (r *reading) orders(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&(asked|other|hypothetical) != 0 || r.ofMe(c.lo, c.hi) || r.pastTold(c) {
		return false
	}
	if len(c.acts) > 0 && c.mood&notWork == 0 && r.acts[c.acts[0]].verb >= 0 {
		return true // "it goes in by hand"
	}
	for i := c.lo; i < min(c.hi, c.lo+3); i++ {
		if r.imperativeAt(i) {
			return true
		}
		if !r.toks[i].is(wOpener) && r.toks[i].s != "and" && r.toks[i].s != "so" && r.toks[i].s != "then" {
			break
		}
	}
	for i := c.lo; i+1 < c.hi; i++ {
		switch w, next := r.toks[i].s, r.toks[i+1].s; {
		case w == "must", w == "gotta", w == "got" && next == "to", w == "need" && next == "to", w == "want" && next == "to", w == "have" && next == "to", w == "needs" && next == "to", w == "has" && next == "to", w == "wants" && next == "to":
			return true
		}
	}
	return false
}

// notThere reads "not under the spring", "on the plug, not the wires": where hands and
// tools have no business, said by itself or against where they have.
func (r *reading) notThere(c *clause) bool {
	if c.mood&(asked|other) != 0 {
		return false
	}
	for i := c.lo; i+1 < c.hi; i++ {
		if r.toks[i].s != "not" || i > c.lo && r.toks[i-1].brk < brkComma && r.toks[i-1].s != "and" && r.toks[i-1].s != "but" && r.toks[i-1].s != "so" && r.toks[i-1].men < 0 {
			continue
		}
		n := int(r.toks[c.lo].cl) + 1
		if i == c.lo && determiner.has(r.toks[i+1].s) && c.hi-c.lo > 4 && r.threatens(n-1) && (r.saidIn(c, "'ll") || r.saidIn(c, "will")) {
			return true // "Not the steel one, you'll gouge it."
		}
		if i == c.lo && determiner.has(r.toks[i+1].s) && n < len(r.clauses) && r.clauses[n].sentence == c.sentence && r.consequence(n) {
			return true
		}
		near := nearness.has(r.toks[i+1].s)
		if !near && (i == 0 || !r.forced(i)) {
			continue
		}
		if near && i+3 < c.hi && touching.has(r.toks[i+1].s) && determiner.has(r.toks[i+2].s) && r.toks[i+2].s != "this" && r.toks[i+2].s != "these" && !papers.has(r.toks[i+3].s) && !noPlace.has(r.toks[i+3].s) && c.hi-i <= 7 {
			return true
		}
		for k := i + 1; k < min(c.hi, i+5); k++ {
			if mi := r.toks[k].men; mi >= 0 {
				return r.toks[k-1].s != "this" && r.toks[k-1].s != "these" && (r.word(r.mentions[mi].hi) != "yet" && r.mentions[mi].kind != lexicon.Consumable || near)
			}
		}
	}
	return false
}

var nearness = set("under underneath near on against by through over into onto inside between behind beside past at with next round around")

// noPlace are the words after "at the" and "on the" that tell of no place on a machine.
var noPlace = set("moment minute time weekend price end start list road day way look same other one ones internet phone telly")

// touching are the ways of being near that are said of a place and of little else.
var touching = set("under underneath near on against into onto round around at by")

// forced tells whether right before a token the sentence tells to use force on something.
func (r *reading) forced(i int) bool {
	for k := i - 1; k >= 0 && k > i-10 && r.toks[k].brk < brkSentence; k-- {
		if r.toks[k].men < 0 && forces.has(r.toks[k].s) {
			return k == 0 || r.toks[k-1].brk >= brkSentence || !r.toks[k-1].is(wSubject) || r.toks[k-1].s == "you"
		}
	}
	return false
}

var forces = set("pull push hold hit tap lift pry prise lever press grip squeeze knock drive hammer clamp wipe heat strike lean drag yank tug jack support twist")

// gently reads "slowly, because there's a wire": what is done with care for a reason.
func (r *reading) gently(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		if !softly.has(r.toks[i].s) || i > 0 && linking.has(r.toks[i-1].s) || r.pastTold(c) {
			continue
		}
		for k := i + 1; k < min(len(r.toks), i+4) && r.toks[k-1].brk < brkSentence && !r.toks[k].is(wSubject|wLinking); k++ {
			if w := r.toks[k].s; w == "because" || w == "'cause" || w == "cuz" || w == "or" && r.next(k) != "not" {
				return true
			}
		}
	}
	return false
}

var softly = set("slowly slow gently gentle steady steadily easy carefully softly")

// checksNot reads "check the key is not in the chuck", "see that the loom isn't under it".
func (r *reading) checksNot(c *clause) bool {
	if c.mood&negated == 0 || c.mood&(asked|other) != 0 {
		return false
	}
	i := c.lo
	for i+3 < c.hi && (r.toks[i].is(wOpener) || r.toks[i].s == "and" || r.toks[i].s == "just" || r.toks[i].s == "to") {
		i++
	}
	if w := r.toks[i].s; w != "check" && (w != "see" || r.next(i) != "that") {
		return false
	}
	for i++; i+1 < c.hi; i++ {
		if w := r.toks[i].s; w == "if" || w == "how" || w == "whether" || w == "where" {
			return false
		} else if w == "not" || w == "isn't" || w == "aren't" || w == "hasn't" || w == "nothing" {
			return true
		}
	}
	return false
}

// soAsNot reads "so it doesn't cut", "so that the pipe can't twist": what keeps from harm.
func (r *reading) soAsNot(c *clause) bool {
	if c.mood&(asked|other|aside) != 0 || c.mood&negated == 0 {
		return false
	}
	for i := c.lo; i+2 < c.hi; i++ {
		if r.toks[i].s != "so" {
			continue
		}
		for k := i + 1; k < min(c.hi-1, i+7); k++ {
			if !refuses.has(r.toks[k].s) || r.toks[k-1].s == "i" {
				continue
			}
			for _, o := range c.opens {
				if o.lo > k && o.lo <= k+4 && r.ofHarm(o) {
					return true
				}
			}
			for n := k + 1; n < min(c.hi, k+4); n++ {
				if w := r.toks[n].s; w == "cut" || w == "tip" || w == "topple" || w == "roll" || w == "mar" || w == "nick" {
					return true
				}
			}
			return false
		}
	}
	return false
}

var refuses = set("doesn't don't won't can't ain't never")

// stopIf reads "if it tightens, I'll stop": when to go no further.
func (r *reading) stopIf(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&(asked|other) != 0 || c.hi-c.lo > 12 {
		return false
	}
	for i := c.lo; i < c.hi; i++ {
		if r.toks[i].s == "stop" && r.toks[i].men < 0 && (i == c.lo || r.toks[i-1].s == "'ll" || r.toks[i-1].s == "you" || r.toks[i-1].s == "and" || r.toks[i-1].s == "then" || r.toks[i-1].brk >= brkComma) {
			return r.startsWith(c, "if") || ci > 0 && r.clauses[ci-1].sentence == c.sentence && r.startsWith(&r.clauses[ci-1], "if")
		}
	}
	return false
}

// laterNext tells whether the clause after one says "later".
func (r *reading) laterNext(c *clause) bool {
	n := int(r.toks[c.lo].cl) + 1
	return n < len(r.clauses) && r.saidIn(&r.clauses[n], "later")
}

// startsWith tells whether a clause begins with a word, an opener before it aside.
func (r *reading) startsWith(c *clause, w string) bool {
	for i := c.lo; i < min(c.lo+3, c.hi); i++ {
		if r.toks[i].s == w {
			return true
		}
	}
	return false
}

// pastTold tells whether a clause tells what happened, not what may.
func (r *reading) pastTold(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "was", "were", "had", "did", "didn't", "came", "went", "'ve":
			return r.toks[c.lo].s != "if"
		}
	}
	return false
}

// wear reads "gloves on", "safety glasses on", "goggles".
func (r *reading) wear(c *clause) bool {
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		switch m.head {
		case "glove", "gloves", "glasses", "goggles", "goggle", "respirator", "mask", "protection":
			if w := r.word(m.hi); r.isTold(c, m) || r.prev(m.from) == "of" || w == "off" && r.toks[m.hi-1].brk < brkComma {
				continue // "that dog has got a glove", "when I've counted it with my glasses on"
			}
			if c.hi-c.lo <= 3 && m.head != "protection" && m.prep == "" && c.mood&(negated|asked) == 0 && int(r.toks[c.lo].cl) >= r.toolList[1] && r.toks[c.hi-1].brk >= brkSentence && m.lo <= c.lo+1 && r.prev(m.lo) != "reading" {
				return true // "Glasses, please."
			}
			if c.hi-c.lo <= 6 && (m.head == "glove" || m.head == "gloves" || m.head == "goggles") && c.mood&negated == 0 || m.hi < len(r.toks) && r.toks[m.hi].s == "on" || m.lo > c.lo && (r.toks[m.lo-1].s == "wear" || r.toks[m.lo-1].s == "your" || r.toks[m.lo-1].s == "with") {
				return true
			}
		}
	}
	return false
}

// isTold tells whether a thing is told of, by what is said to be or to have it, rather
// than asked for.
func (r *reading) isTold(c *clause, m *mention) bool {
	for i := c.lo; i < m.from; i++ {
		switch r.toks[i].s {
		case "'s", "is", "are", "'re", "was", "has", "had", "that's", "where", "these", "those", "when", "once", "till", "until":
			return r.toks[i].men < 0
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
		if w == "never" && (r.pastAt(q.hi) || next == "find" || next == "know" || next == "seize" || next == "seen") || next == "be" && r.next(q.hi) == "that" {
			return false
		}
		if prev == "i" || prev == "they" || prev == "it" || prev == "'ve" || prev == "have" || prev == "that" || prev == "who" || prev == "people" || prev == "he" || prev == "'s" || prev == "she" {
			return false
		}
		if w == "don't" && prev == "you" && (q.hi >= c.hi || r.onlyDoes(c, q.hi)) {
			return false // "how do you hold it? You don't.", "you don't take them out, you just slacken them"
		}
		if prev == "why" || q.hi-q.lo == 1 && (subjects.has(next) && !pronounsObj.has(next) && next != "you" || next == "'s") {
			return false
		}
		if w == "don't" && prev == "you" && r.beginsWith(c, "so") && !r.threatens(int(r.toks[c.lo].cl)) {
			return false // "that centres it, so you don't get it binding": what it is for
		}
		if q.hi-q.lo == 1 && notWarning.has(next) && !(next == "get" || next == "do") {
			return false
		}
		return w != "do" || q.hi-q.lo > 1
	case "hot", "sharp":
		return false
	case "careful", "watch", "mind":
		if prev == "'m" || prev == "was" || prev == "were" || prev == "me" || prev == "to" && w == "watch" || prev == "been" {
			return false // "I'm careful to use the same screws", "let me watch the light"
		}
		return !animals.has(next) && !animals.has(r.next(q.hi)) // "mind the dog"
	case "you":
		// "you'll lose about half a litre" threatens with nothing
		return next != "about" && !(q.hi < len(r.toks) && r.toks[q.hi].qty >= 0)
	case "too":
		return len(c.mentions) > 0 || r.saidIn(c, "you")
	case "wear":
		if next == "ring" || next == "rings" || next == "plate" || next == "plates" || next == "strip" || next == "strips" || next == "pad" || next == "pads" || next == "indicator" || next == "mark" || next == "limit" {
			return false // a part by that name
		}
		return prev == "" || prev == "and" || prev == "so" || prev == "you"
	case "remember":
		return !r.saidIn(c, "later") && (r.toks[min(q.hi, len(r.toks)-1)].cl != r.toks[q.lo].cl || !r.laterNext(c)) && (prev == "" || prev == "and" || prev == "so" || prev == "you")
	case "make":
		return prev != "i" && prev != "to"
	case "otherwise":
		return next != "i" && r.next(q.hi) != "i" && !strings.HasSuffix(next, "ly")
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

// animals are who is minded in jokes.
var animals = wordsOf("animals")

// onlyDoes tells whether what one is told not to do from a token on is only more than what one
// does: "you just slacken them".
func (r *reading) onlyDoes(c *clause, at int) bool {
	for i := at; i+2 < len(r.toks) && i < at+9 && r.clauses[r.toks[i].cl].sentence == c.sentence; i++ {
		if r.toks[i].s == "you" && (r.toks[i+1].s == "just" || r.toks[i+1].s == "only") {
			return !r.threatens(int(r.toks[i].cl))
		}
	}
	return false
}

// plain gives the words from lo to hi without what carries nothing.
func (r *reading) plain(lo, hi int) string {
	for lo < hi {
		n := r.lex.Filler(r.from(lo, hi))
		w := r.toks[lo].s
		if next := r.word(lo + n); w == "too" || strings.HasPrefix(next, "'") || linking.has(next) || next == "side" || next == "hand" {
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
	return strings.TrimRight(r.withStops(lo, hi), " ,.;:")
}

func sentenceCase(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:] + "."
}
