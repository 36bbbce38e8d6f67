package extract

import (
	"math"
	"math/bits"
	"strings"
)

// Automatic captions often come without a stop or a comma, and where a sentence ends
// tells what belongs together: "chuck it | idler pulley now | give it a spin". stops puts
// them back, by what stands around each gap between two words: the words themselves, what
// kind of word each is, and what was heard since the last stop. How much each of these
// tells is a table of weights, fitted on invented talk that has its stops (testdata/talk);
// TestStops shows what it is worth on talk it was not fitted on, and fits it again with
// the flag -fit-stops.

// What kind of word a word is. The weights know the kinds by their numbers: to change
// these is to fit again. There is room for 31.
const (
	_ uint8 = iota // past the ends of a talk
	tagAnd
	tagBe // is, are, was
	tagTo
	tagPerson // i, we, you
	tagIt
	tagThis
	tagThere   // there, here
	tagArticle // the, a, my, each
	tagNot
	tagOpener     // so, then, now, because
	tagDeterminer // other determiners
	tagNumber
	tagParticle // on, off, in, out
	tagPreposition
	tagLinking
	tagPlace // left, top, front
	tagInterjection
	tagSubject
	tagNameOrVerb // a name begins here that may be a verb: clip, plug
	tagName
	tagVerb  // the plain form of a verb of the workshop
	tagInUse // any other form of one
	tagIng   // other words by their ends
	tagEd
	tagLy
	tagPlural
	tagOther
)

// wordTag is what kind of word a word is, as far as the vocabulary and a few sets know.
func (r *reading) wordTag(i int) uint8 {
	k, s := r.toks[i].class, r.toks[i].s
	switch s {
	case "and", "or":
		return tagAnd
	case "'s", "'re", "'m", "is", "are", "was", "were":
		return tagBe
	case "to":
		return tagTo
	case "i", "you", "he", "she", "they":
		return tagPerson
	case "it", "them", "'em":
		return tagIt
	case "this", "that", "these", "those":
		return tagThis
	case "there", "here":
		return tagThere
	case "the", "a", "an", "my", "your", "his", "its", "their", "another", "each", "every":
		return tagArticle
	case "not", "never":
		return tagNot
	}
	switch {
	case k.is(wOpener):
		return tagOpener
	case k.is(wDeterminer):
		return tagDeterminer
	case strings.HasSuffix(s, "n't"):
		return tagNot
	case k.is(wNumber) || s[0] >= '0' && s[0] <= '9':
		return tagNumber
	case k.is(wOff | wOn):
		return tagParticle
	case k.is(wPreposition):
		return tagPreposition
	case k.is(wLinking):
		return tagLinking
	case k.is(wPlace):
		return tagPlace
	case k.is(wInterjection):
		return tagInterjection
	case k.is(wSubject):
		return tagSubject
	case k.is(wName) && r.nameAt(i) > 0:
		if k.is(wVerb) {
			return tagNameOrVerb
		}
		return tagName
	case k.is(wVerb):
		return tagVerb
	case k.is(wInUse):
		return tagInUse
	case strings.HasSuffix(s, "ing"):
		return tagIng
	case strings.HasSuffix(s, "ed"):
		return tagEd
	case strings.HasSuffix(s, "ly"):
		return tagLy
	case strings.HasSuffix(s, "s"):
		return tagPlural
	}
	return 27
}

// gaps holds what is asked of the gaps between the words of a talk.
type gaps struct {
	words []uint32 // a number for each word, two past each end
	tags  []uint8  // its tag, likewise
	names []uint8  // 1 where a name runs on over the gap before it
	again []uint8  // how often it stands in the talk right after the word before it, at most three
	verbs []bool   // whether it is a verb
}

func (r *reading) gapsOf(lo, hi int) gaps {
	n := hi - lo
	g := gaps{make([]uint32, n+4), make([]uint8, n+4), make([]uint8, n), make([]uint8, n), make([]bool, n)}
	for i := lo; i < hi; i++ {
		h := uint32(2166136261)
		for _, b := range []byte(r.toks[i].s) {
			h = (h ^ uint32(b)) * 16777619
		}
		g.words[i-lo+2], g.tags[i-lo+2] = h, r.wordTag(i)
		g.verbs[i-lo] = r.toks[i].is(wLinking | wForm)
		for k := i + 1; k < min(i+r.nameAt(i), hi); k++ {
			g.names[k-lo] = 1
		}
	}
	g.count()
	return g
}

// count fills in how often each word stands right after the one before it.
func (g *gaps) count() {
	n := len(g.again)
	firsts := make([]int32, 1<<bits.Len(uint(2*n))) // by a number made of a pair: one more than where it stands first
	first := func(i int) int {
		pair := g.pair(i)
		for h := pair * 0x9E3779B97F4A7C15 >> 32; ; h++ {
			at := &firsts[h&uint64(len(firsts)-1)]
			if *at == 0 {
				*at = int32(i + 1)
			}
			if k := int(*at) - 1; g.pair(k) == pair {
				return k
			}
		}
	}
	for i := range n {
		k := first(i)
		g.again[k] = min(g.again[k]+1, 3)
	}
	for i := range n {
		g.again[i] = g.again[first(i)]
	}
}

// pair gives a number for a word with the one before it.
func (g *gaps) pair(i int) uint64 { return uint64(g.words[i+1])<<32 | uint64(g.words[i+2]) }

// since is what was heard since the last stop or comma.
type since struct {
	words, verbs, names int
	sentence            int // words since the last stop
}

// hear goes on over word i, with what ended before it.
func (s *since) hear(g *gaps, i int, brk uint8) {
	if brk >= brkComma {
		s.words, s.verbs, s.names = 0, 0, 0
	}
	if brk >= brkSentence {
		s.sentence = 0
	}
	s.words++
	s.sentence++
	if g.verbs[i] {
		s.verbs++
	}
	if t := g.tags[i+2]; t == tagNameOrVerb || t == tagName {
		s.names++
	}
}

// long gives a number of words by how long a stretch it is.
func long(n int) uint32 {
	switch {
	case n <= 6:
		return uint32(n)
	case n <= 8:
		return 8
	case n <= 11:
		return 11
	case n <= 16:
		return 16
	case n <= 25:
		return 25
	}
	return 99
}

// keys gives what tells of a stop before word i, as keys of the table.
func (g *gaps) keys(out []uint64, i int, s *since) []uint64 {
	pp, p, t, n := g.words[i], g.words[i+1], g.words[i+2], g.words[i+3]
	PP, P, T, N := uint32(g.tags[i]), uint32(g.tags[i+1]), uint32(g.tags[i+2]), uint32(g.tags[i+3])
	NN := uint32(0)
	if i+4 < len(g.tags) {
		NN = uint32(g.tags[i+4])
	}
	v := uint32(min(s.verbs, 1))
	PT := P<<5 | T
	k := uint64(0)
	add := func(a, b uint32) {
		k++
		h := (uint64(a)<<32 | uint64(b)) + k*0x9E3779B97F4A7C15
		h = (h ^ h>>30) * 0xBF58476D1CE4E5B9
		h = (h ^ h>>27) * 0x94D049BB133111EB
		out = append(out, h^h>>31)
	}
	add(0, 0)
	add(p, 0)
	add(t, 0)
	add(n, 0)
	add(pp, 0)
	add(p, t)
	add(t, n)
	add(0, PT)
	add(PP, PT)
	add(PT, N)
	add(PP<<5|N, PT)
	add(T<<5|N, NN)
	add(p, T)
	add(p, T<<5|N)
	add(t, P)
	add(t, N)
	add(t, P<<5|N)
	add(long(s.words)<<1|v, 0)
	add(v, T)
	add(v, t)
	add(long(s.words), T)
	add(uint32(min(s.names, 2))<<1|v, T)
	add(long(s.sentence), 0)
	add(long(s.words), P)
	add(uint32(min(s.words, 4))<<1|v, PT)
	add(uint32(g.names[i]), PT)
	add(uint32(g.again[i]), PT)
	add(uint32(g.again[i]), 0)
	return out
}

// What decides, beside the weights. The first two are common practice, no source: talk
// with both stops and times of its words is rare.
const (
	scaled     = 16         // what one is in the weights
	pauseStop  = 3 * scaled // a pause of the voice adds to a stop,
	pauseComma = pauseStop / 2
	likelier   = 1.3    // so much more than none has a stop or a comma to be
	stopAhead  = scaled // and so far ahead of a comma a stop: a sentence cut in two loses more than two in one
)

// stops puts stops and commas into the clips that came without them.
func (r *reading) stops(table stopTable) {
	bare := r.unpunctuated()
	r.breaths(bare)
	for lo := 0; lo < len(r.toks); {
		clip := r.talk.Words[r.toks[lo].w].Clip
		hi := lo
		for hi < len(r.toks) && r.talk.Words[r.toks[hi].w].Clip == clip {
			hi++
		}
		if bare[clip] {
			r.stopsIn(table, lo, hi, r.timed[clip])
		}
		lo = hi
	}
	r.runs()
}

// stopsIn does so between two tokens of one clip.
func (r *reading) stopsIn(table stopTable, lo, hi int, timed bool) {
	g := r.gapsOf(lo, hi)
	var s since
	var keys []uint64
	s.hear(&g, 0, brkSentence)
	whole := 0
	for i := 1; i < hi-lo; i++ {
		t, last := &r.toks[lo+i], &r.toks[lo+i-1]
		if last.brk < brkSentence && lo+i >= whole && g.names[i] == 0 && !endsNothing.has(last.s) && !table.never(g.tags[i+1], g.tags[i+2]) && !(numeral(last) && fraction.has(t.s)) && !(numeral(t) && last.is(wLinking)) && !r.hundreds(lo+i) && !r.toldNot(lo+i) {
			keys = g.keys(keys[:0], i, &s)
			comma, stop := table.sum(keys)
			if timed && last.brk == brkPause || last.brk == brkLine {
				comma += pauseComma
				stop += pauseStop
			}
			end := ends(comma, stop)
			if told, to, sure := r.stopTold(lo+i, lo+i-s.words); sure {
				end, whole = told, to
			}
			if end == brkSentence && (s.sentence == s.words && r.framed(lo+i-s.sentence) || r.awaitsWhatThen(lo+i-s.words, lo+i)) {
				end = brkComma // "before you touch that belt, take a picture"
			}
			last.brk = max(last.brk, end)
		}
		s.hear(&g, i, last.brk)
	}
}

// withStops gives the words between two tokens with commas where stops and commas were
// put back, and without hesitations: a stop in the wrong place could say the contrary. What is to be word for word
// is never given so.
func (r *reading) withStops(lo, hi int) string {
	var b strings.Builder
	from := int(r.toks[lo].lo)
	for i := lo; i < hi-1; i++ {
		t, next := &r.toks[i], &r.toks[i+1]
		if t.brk < brkComma || t.w == next.w || strings.TrimSpace(r.spoken[t.hi:next.lo]) != "" {
			continue
		}
		b.WriteString(r.spoken[from:t.hi])
		b.WriteString(", ")
		from = int(next.lo)
	}
	b.WriteString(r.spoken[from:r.toks[hi-1].hi])
	return closeUp(b.String())
}

// ends tells what ends where the weights of a comma and of a stop are these.
func ends(comma, stop int) uint8 {
	switch {
	case max(comma, stop) < -scaled:
		return brkNone
	case math.Exp(float64(comma)/scaled)+math.Exp(float64(stop)/scaled) < likelier:
		return brkNone
	case stop > comma+stopAhead:
		return brkSentence
	}
	return brkComma
}

// endsNothing are the words after which less than one in a hundred clauses of the talk
// with stops ends.
var endsNothing = set("a an the my your its of and or but because if as when than till i 's 'm 've 'll 're let's let newton very just put into")

// framed tells whether what begins at a token only frames what is told after it.
func (r *reading) framed(i int) bool {
	if w := r.toks[i].s; (w == "now" || w == "so" || w == "and" || w == "but" || w == "right" || w == "ok" || w == "okay") && i+1 < len(r.toks) {
		i++
	}
	return frames.has(r.toks[i].s)
}

// frames are the words that begin what is said of something told after it.
var frames = set("before if when once while until till unless after")

// numeral tells whether a word is a number.
func numeral(t *tok) bool { return t.is(wNumber) || t.s[0] >= '0' && t.s[0] <= '9' }

// fraction are the words by which a number before them becomes a part of an inch: "9 16".
var fraction = set("2 4 8 16 32 64 half quarter quarters eighth eighths sixteenth sixteenths sixteen eight thirty-second thirty-seconds thirty-two")

// hundreds tells whether a token goes on with a number whose hundred is left unsaid: "one
// forty", but not "this one, forty".
func (r *reading) hundreds(i int) bool {
	n := countOf[r.toks[i-1].s]
	return n > 0 && n < 10 && (tensOf[r.toks[i].s] > 0 || r.toks[i].s == "ten") && !whichOne.has(r.word(i-2)) && !r.kind(i-2).is(wDeterminer|wPlace|wDropAdj)
}

// toldNot tells whether the verb at a token is what is forbidden right before it: "you mustn't
// tighten it yet", "don't you dare put a spanner on that".
func (r *reading) toldNot(i int) bool {
	w := r.toks[i-1].s
	not := strings.HasSuffix(w, "n't") || w == "not" && ought.has(r.word(i-2)) || w == "ever" && strings.HasSuffix(r.word(i-2), "n't") || w == "dare"
	return not && r.toks[i].is(wVerb) && r.plainVerb(r.toks[i].s)
}

// unpunctuated tells of each clip whether its words come with next to no full stops and
// commas: talk that has them has one in some six words.
func (r *reading) unpunctuated() []bool {
	stops := make([]int, len(r.talk.Clips))
	all := make([]int, len(r.talk.Clips))
	for _, w := range r.talk.Words {
		all[w.Clip]++
		if s := r.talk.Text[w.Lo:w.Hi]; strings.HasSuffix(s, ".") || strings.HasSuffix(s, ",") || strings.HasSuffix(s, "?") || strings.HasSuffix(s, "!") {
			stops[w.Clip]++
		}
	}
	out := make([]bool, len(all))
	for i := range out {
		out[i] = stops[i]*25 < all[i]
	}
	return out
}

// breaths marks the ends of the lines of talk without stops, or with none at the end of
// any line, where lines do not end anywhere: not on a word that no phrase ends on.
func (r *reading) breaths(bare []bool) {
	type ends struct{ lines, hanging, stopped, words int }
	of := make([]ends, len(bare))
	last := func(i int) bool {
		w := &r.talk.Words[r.toks[i].w]
		if i+1 == len(r.toks) {
			return true
		}
		n := &r.talk.Words[r.toks[i+1].w]
		return n.Cue != w.Cue || n.Clip != w.Clip
	}
	for i := range r.toks {
		e := &of[r.talk.Words[r.toks[i].w].Clip]
		e.words++
		if last(i) {
			e.lines++
			if w := r.toks[i].s; hanging.has(w) || w == "i" {
				e.hanging++
			}
			if r.toks[i].brk >= brkComma && i+1 < len(r.toks) {
				e.stopped++
			}
		}
	}
	for i := range r.toks {
		clip := r.talk.Words[r.toks[i].w].Clip
		e := of[clip]
		if r.timed[clip] || e.lines <= 2 || e.words < 6*e.lines || e.hanging*50 > e.lines-1 || !last(i) {
			continue
		}
		switch {
		case bare[clip]:
			r.toks[i].brk = max(r.toks[i].brk, brkLine)
		case e.lines > 8 && e.stopped == 0:
			r.toks[i].brk = max(r.toks[i].brk, brkSentence) // stops are written within a line only
		}
	}
}
