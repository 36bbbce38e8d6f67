package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// Fasteners told by no more than how many there are and where they are: "the two at the back,
// just loosen those", "One underneath, a seventeen."

// placesAt are the places at a thing that a count may be told with: what a name takes of them, ""
// where a name takes none.
var placesAt = map[string]string{"top": "top", "bottom": "bottom", "back": "back", "front": "front", "rear": "rear", "left": "left", "right": "right", "middle": "middle",
	"inside": "inner", "outside": "outer", "side": "", "end": "", "edge": "", "corner": "", "sides": "", "ends": "", "corners": "", "underside": ""}

// beforeCount are the words that may stand before a count that stands for fasteners.
var beforeCount = set("undo loosen slacken tighten nip crack unscrew leave left only just other last all my them")

// countedWhere reads at token i a count that tells things by where they are and leaves their name
// unsaid: "the two at the back", "one underneath". end is 0 where none begins.
func (r *reading) countedWhere(ci, i int) (m mention, end int) {
	c := &r.clauses[ci]
	n, ok := oneWords[r.toks[i].s]
	if w := r.toks[i].s; !ok && countOf[w] > 4 && countOf[w] < 13 && !(w[0] >= '0' && w[0] <= '9') {
		n, ok = countOf[w], true
	}
	if !ok || n == 0 || i+1 >= c.hi || r.toks[i].qty >= 0 || r.toks[i].men >= 0 || r.toks[i].brk >= brkComma {
		return m, 0
	}
	first := i == r.skipped(c)
	if p := r.prev(i); !first && !(i > c.lo && r.toks[i-1].brk < brkComma && r.toks[i-1].men < 0 && (definiteWord.has(p) || beforeCount.has(p) && n > 1)) {
		return m, 0
	}
	k := i + 1
	for k < c.hi && r.toks[k].is(wDropAdj) && r.toks[k].brk < brkPause {
		k++
	}
	if k < c.hi && r.toks[k].s == "ones" {
		k++ // "the two big ones at the back"
	} else {
		k = i + 1
	}
	place, end := r.spotAfter(c, k)
	holds := end == 0 && k > i+1 && k < c.hi && r.toks[k-1].brk < brkComma && r.holdsNext(k)
	if holds {
		end = k // "these two tiny ones that hold the hanger"
	}
	if end == 0 || !holds && !r.turnedBeside(i, end) || r.fastenersLately(i) || first && n == 1 && r.toks[end-1].brk < brkComma {
		return m, 0
	}
	m = mention{lo: i, hi: end, cl: ci, kind: lexicon.Fastener | lexicon.Part, of: -1, head: unsaid, name: r.toks[i].s, plural: n != 1, byPlace: true, counted: true}
	if n > 1 {
		m.count = n
	}
	if place != "" {
		m.mods = []string{place}
	}
	return m, end
}

// spotAfter reads at token i where something is, with no part named: "at the back", "up top", "down
// here", "each end"; end is 0 where it does not say so.
func (r *reading) spotAfter(c *clause, i int) (place string, end int) {
	if i >= c.hi {
		return "", 0
	}
	at := func(k int) string {
		if k >= c.hi || r.toks[k].men >= 0 || r.toks[k].qty >= 0 || r.toks[k-1].brk >= brkPause {
			return ""
		}
		return r.toks[k].s
	}
	k := i
	switch w := at(i); w {
	case "underneath":
		return "", i + 1
	case "up", "down", "in", "back", "over", "out":
		if n := at(i + 1); n == "here" || n == "there" || w == "up" && n == "top" {
			return placesAt[n], i + 2
		}
		if w != "in" {
			return "", 0
		}
		k++
	case "at", "on", "round", "around":
		k++
	case "each", "either":
	default:
		return "", 0
	}
	if w := at(k); definiteWord.has(w) || w == "each" || w == "either" {
		k++
	} else if k > i && w != "top" {
		return "", 0
	}
	if w := at(k); (w == "far" || w == "near" || w == "very" || w == "other") && k > i {
		k++
	}
	w := at(k)
	place, ok := placesAt[w]
	if !ok || k+1 < c.hi && r.toks[k].brk < brkComma && (isNoun(r, k+1) && !r.isVerbForm(r.toks[k+1].s) || r.toks[k+1].men >= 0 && r.mentions[r.toks[k+1].men].kind != 0) {
		return "", 0 // "on the top plate"
	}
	return place, k + 1
}

// countedThing gives what a count by itself stands for: fasteners of the part that is spoken of,
// those of one place apart from the others.
func (s *tracker) countedThing(ci, mi int) *thing {
	r := s.r
	m := &r.mentions[mi]
	var f *thing
	if part := s.partSpokenOf(&r.clauses[ci]); part != nil {
		f = s.unnamedOf(part, m.lo, m.count)
	} else {
		name := "fasteners"
		if w := r.heldWord(m.hi); w != "" {
			name = w + " fasteners"
		} else if len(m.mods) == 0 {
			name = strings.ToLower(r.text(m.lo, m.hi)) // "two on the side"
		}
		f = &thing{name: name, head: "fastener", mods: map[string]bool{}, fastener: true, plural: true, first: m.lo, last: m.lo}
		r.addThing(f)
		s.touch(f)
	}
	if len(m.mods) > 0 && !f.mods[m.mods[0]] && f.place != m.mods[0] {
		if f.first == m.lo && !placesClash(m.mods, f.mods) {
			f.place, f.name = m.mods[0], m.mods[0]+" "+f.name
			f.mods[m.mods[0]] = true
		} else {
			f = s.placed(f, m.mods[0], m.plural, m.lo)
		}
	}
	if f.count == 0 {
		f.count = m.count
	}
	if f.plural = m.plural; !f.plural && len(m.mods) > 0 {
		f.name = lexicon.Singular(f.name)
	}
	return f
}

// heldWord gives the word that no list has for what fasteners are told to hold at token i, "" where
// none is told: "that hold the hanger".
func (r *reading) heldWord(i int) string {
	if !r.holdsNext(i) {
		return ""
	}
	for i++; i < len(r.toks) && r.toks[i-1].brk < brkComma; i++ {
		if r.toks[i].is(wDeterminer) && i+1 < len(r.toks) && len(r.next(i)) > 3 && !r.toks[i+1].is(wStop|wNumber|wPronoun|wVerb) {
			return r.next(i)
		}
	}
	return ""
}

// undoing are the verbs of what is only done to fasteners, snugly the words for how one is left.
var (
	undoing = set("undo unscrew unbolt loosen slacken crack nip tighten snug torque")
	snugly  = set("loose tight snug slack fingers")
)

// turnedBeside tells whether the words around a count, at the tokens lo to hi, undo what is
// counted, do it up, or tell the size of what turns it.
func (r *reading) turnedBeside(lo, hi int) bool {
	for i := max(0, lo-4); i < min(len(r.toks), hi+10); i++ {
		if i > hi && r.since(hi, i) > 6 {
			break
		}
		if i >= lo && i < hi || r.toks[i].men >= 0 {
			continue
		}
		w := r.toks[i].s
		if undoing.has(r.lemma1(w)) || snugly.has(w) || handAt(r, i, min(len(r.toks), i+3)) {
			return true
		}
		if q := r.toks[i].qty; q >= 0 && i > hi {
			if k := r.qtys[q].Kind; k == normalize.Size || k == normalize.Driver || k == normalize.Torque {
				return true
			}
		}
		if countOf[w] >= 7 || pluralSize[w] >= 7 || w == "thirteen" || w == "seventeen" || w == "nineteen" || w == "sixteenths" || w == "eighths" {
			return true
		}
	}
	return false
}

// fastenersLately tells whether fasteners were named shortly before a token or are right after: a
// count is of those then.
func (r *reading) fastenersLately(i int) bool {
	for k := len(r.mentions) - 1; k >= 0; k-- {
		m := &r.mentions[k]
		if m.lo >= i {
			continue
		}
		if r.since(m.lo, i) > 25 {
			break
		}
		if m.kind&lexicon.Fastener != 0 && !m.counted && (m.plural || m.count > 1 || r.since(m.lo, i) < 8) {
			return true
		}
	}
	for k := i + 1; k < min(len(r.toks), i+14); k++ {
		if r.toks[k-1].brk >= brkSentence {
			break
		}
		if t, n := r.lex.Things(r.from(k, len(r.toks))); n > 0 && slices.ContainsFunc(t, func(t *lexicon.Term) bool { return t.Kind&lexicon.Fastener != 0 }) {
			return true
		}
	}
	return false
}

// saidToBe tells whether a clause says at token i that a part is so many, that is held by so many,
// and tells some of them by their place: "Bracket is four, and I'm only taking the top two out".
func (r *reading) saidToBe(c *clause, i int) bool {
	if i-2 < c.lo || !linking.has(r.toks[i-1].s) || r.toks[i-2].men < 0 || i+1 < len(r.toks) && r.toks[i].brk < brkComma && r.next(i) != "and" {
		return false
	}
	for k := i + 1; k < min(len(r.toks), i+16) && r.toks[k-1].brk < brkSentence; k++ {
		if m := r.toks[k].men; m >= 0 && r.mentions[m].byPlace && r.mentions[m].count > 0 {
			return true
		}
	}
	return false
}

// theyHold tells what "they" or "these four" are told to hold: "First job is these two. They hold the
// caliper on." They are its fasteners then, where none were named of late.
func (s *tracker) theyHold(c *clause) {
	r := s.r
	at, n := r.holdAt(c)
	if at < 0 {
		return
	}
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.lo < at || m.entry == nil || m.entry.fastener || m.kind&lexicon.Tool != 0 || r.fastenersLately(c.lo) {
			continue
		}
		f := s.unnamedOf(m.entry, at, n)
		if f.count == 0 && n > 1 {
			f.count = n
		}
		f.last = max(f.last, at)
		s.touch(f)
		s.sized, s.sizedAt = f, int(r.toks[c.lo].cl)
		return
	}
}

// holdAt gives the token at which a clause says what "they" or "these four" hold, and how many they
// are, 0 where that is not told; -1 where it does not.
func (r *reading) holdAt(c *clause) (at, n int) {
	for i := c.lo + 1; i < c.hi; i++ {
		if r.toks[i].s != "hold" || r.toks[i].men >= 0 {
			continue
		}
		switch w := r.toks[i-1].s; {
		case w == "they" || w == "these" || w == "those":
			for k := c.lo - 1; k > c.lo-5 && k > 0 && n == 0; k-- {
				if p := r.toks[k-1].s; p == "these" || p == "those" {
					n = countOf[r.toks[k].s]
				}
			}
			return i, n
		case countOf[w] > 1 && i-2 >= c.lo && (r.toks[i-2].s == "these" || r.toks[i-2].s == "those" || r.toks[i-2].s == "the"):
			return i, countOf[w]
		}
		return -1, 0
	}
	return -1, 0
}
