package transcript

import (
	_ "embed"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// Rolling captions show the line before again under which the new one appears,
// or grow word by word, so that a file holds its words several times. A cue
// repeats what it carries over at its start: the longest run of words that ends
// the cue before and begins this one. Whether a file rolls is told from all its
// cues together, so that what was truly said twice stays said twice.

// token is a word of a cue.
type token struct {
	lo, hi int32 // bytes of Cue.Text
	line   int32 // counted from 0
	timed  int32 // index into Cue.Words, or -1
}

// tokenize cuts a cue into words, into a slice that is used again.
func tokenize(toks []token, c *Cue) []token {
	toks = toks[:0]
	s := c.Text
	if len(s) > 4*cap(toks) { // a cue is seldom long; what is may be all of a file
		toks = slices.Grow(toks, wordsIn(s))
	}
	line, timed := int32(0), 0
	for i := 0; i < len(s); {
		if k := class[s[i]]; k != inWord {
			if s[i] == '\n' {
				line++
			}
			if n := blankAt(s, i); n > 0 {
				i += n
				continue
			}
		}
		t := token{lo: int32(i), line: line, timed: -1}
		for i++; i < len(s); i++ {
			if k := class[s[i]]; k == isSpace || k == mayBeSpace && blankAt(s, i) > 0 {
				break
			}
		}
		t.hi = int32(i)
		for timed < len(c.Words) && c.Words[timed].Lo < uint32(t.lo) {
			timed++
		}
		if timed < len(c.Words) && c.Words[timed].Lo < uint32(t.hi) {
			t.timed = int32(timed)
			timed++
		}
		toks = append(toks, t)
	}
	return toks
}

// wordsIn counts the words of a text.
func wordsIn(s string) (n int) {
	blank := true
	for i := 0; i < len(s); i++ {
		is := class[s[i]] != inWord && blankAt(s, i) > 0
		if blank && !is {
			n++
		}
		blank = is
	}
	return n
}

// Bytes by what they can be the start of.
const (
	inWord = iota
	isSpace
	mayBeSpace // the first byte of a white-space character beyond ASCII, or of many others
)

var class = func() (c [256]uint8) {
	for _, b := range " \t\n\v\f\r" {
		c[b] = isSpace
	}
	for _, r := range []rune{0x85, 0xA0, 0x1680, 0x2000, 0x2028, 0x202F, 0x205F, 0x3000} {
		c[string(r)[0]] = mayBeSpace
	}
	return c
}()

// blankAt is the size of the white-space character at s[i], 0 where there is another.
func blankAt(s string, i int) int {
	switch class[s[i]] {
	case isSpace:
		return 1
	case mayBeSpace:
		if r, n := utf8.DecodeRuneInString(s[i:]); unicode.IsSpace(r) {
			return n
		}
	}
	return 0
}

// rolling is how a clip repeats itself.
type rolling int

const (
	rollsNot   rolling = iota
	rollsLines         // whole lines are carried over
	rollsWords         // cues grow, or overlap by some words
)

// hold is the longest a cue lasts that only keeps a line on screen between two others, in seconds.
const hold = 0.1

// roller finds what each cue of a clip repeats of the one before.
type roller struct {
	cues      []Cue
	order     []int // of cues in time
	prev, cur []token
	prevText  string
	fail      []int32 // prefix function of cur
	borders   []int   // lengths of carried runs that are possible, longest first
	usual     int     // lines carried most often
}

// reset starts again at the first cue.
func (r *roller) reset() {
	if cap(r.prev) > cap(r.cur) {
		r.next()
	}
	r.prev, r.prevText = r.prev[:0], ""
}

// step takes up cue i and finds borders.
func (r *roller) step(i int) *Cue {
	c := &r.cues[i]
	r.cur = tokenize(r.cur, c)
	r.borders = r.borders[:0]
	// a word with a time of its own is heard now and carries nothing over
	n := len(r.cur)
	for k, t := range r.cur {
		if t.timed >= 0 && k > 0 {
			n = k
			break
		}
		if t.timed >= 0 {
			n = 0
			break
		}
	}
	if n == 0 || len(r.prev) == 0 {
		return c
	}
	same := func(a string, x token, b string, y token) bool { return a[x.lo:x.hi] == b[y.lo:y.hi] }
	if cap(r.fail) < n {
		r.fail = make([]int32, n)
	}
	fail := r.fail[:n]
	fail[0] = 0
	for i, k := 1, int32(0); i < n; i++ {
		for k > 0 && !same(c.Text, r.cur[i], c.Text, r.cur[k]) {
			k = fail[k-1]
		}
		if same(c.Text, r.cur[i], c.Text, r.cur[k]) {
			k++
		}
		fail[i] = k
	}
	k := int32(0)
	for i := max(0, len(r.prev)-n); i < len(r.prev); i++ {
		for k > 0 && !same(r.prevText, r.prev[i], c.Text, r.cur[k]) {
			k = fail[k-1]
		}
		if same(r.prevText, r.prev[i], c.Text, r.cur[k]) {
			k++
		}
	}
	for ; k > 0; k = fail[k-1] {
		r.borders = append(r.borders, int(k))
	}
	return c
}

func (r *roller) next() {
	r.prev, r.cur = r.cur, r.prev
}

// wholeLines tells whether a carried run of k words is whole lines in both cues.
func (r *roller) wholeLines(k int) bool {
	if k < len(r.cur) && r.cur[k].line == r.cur[k-1].line {
		return false
	}
	i := len(r.prev) - k
	return i == 0 || r.prev[i].line != r.prev[i-1].line
}

func (r *roller) linesIn(k int) int { return int(r.cur[k-1].line-r.cur[0].line) + 1 }

// A long clip is told by runs of cues taken from all over it.
const (
	sampled   = 512 // cues looked at
	sampleRun = 32  // cues in a row
)

// detect tells how the clip rolls and about how many words its cues hold.
func (r *roller) detect() (how rolling, total int) {
	r.reset()
	steps, lines, words := 0, 0, 0
	usual := map[int]int{}
	seen, skip := 0, 0
	if len(r.order) > 2*sampled {
		skip = len(r.order)/(sampled/sampleRun) - sampleRun
	}
	for at := 0; at < len(r.order); at++ {
		if seen > 0 && seen%sampleRun == 0 && skip > 0 {
			if at += skip; at >= len(r.order) {
				break
			}
			r.reset()
		}
		seen++
		c := r.step(r.order[at])
		total += len(r.cur)
		if len(r.cur) > 0 && len(r.prev) > 0 {
			steps++
			held := c.End > c.Start && c.End-c.Start < hold
			for _, k := range r.borders {
				part := k < len(r.cur)
				switch {
				case r.wholeLines(k) && (part || held):
					lines++
					if part {
						usual[r.linesIn(k)]++
					}
				case part && (k == len(r.prev) || k >= 3):
					words++
				default:
					continue
				}
				break
			}
		}
		r.prevText = c.Text
		r.next()
	}
	if seen < len(r.order) {
		total = int(1.05 * float64(total) * float64(len(r.order)) / float64(seen))
	}
	for n, count := range usual {
		if count > usual[r.usual] || count == usual[r.usual] && n < r.usual {
			r.usual = n
		}
	}
	switch {
	case lines+words >= 2 && (lines+words)*10 >= steps*3 && lines >= words:
		return rollsLines, total
	case lines+words >= 5 && (lines+words)*2 >= steps: // weaker signs, so more of them
		return rollsWords, total
	}
	return rollsNot, total
}

// carried is the number of words at the start of the current cue that the one before has shown.
func (r *roller) carried(c *Cue, how rolling) int {
	if how == rollsNot {
		return 0
	}
	best := 0
	for _, k := range r.borders {
		whole := r.wholeLines(k)
		if how == rollsLines && !whole {
			continue
		}
		if how == rollsWords && !whole && k != len(r.prev) && k < 2 {
			continue
		}
		if best == 0 {
			best = k
		}
		held := c.End > c.Start && c.End-c.Start < hold
		if how == rollsLines && !held && r.linesIn(k) == r.usual {
			return k // of several readings the one the file is used to
		}
	}
	return best
}

// Join makes one talk of clips in the order given: every word once, in order,
// parted by single blanks, each with its time. Cues of a clip are taken in the
// order of their starts; where its times begin again, a new run of them starts. Times that no file gave are spread over a cue by
// characters and not Exact. There are at most MaxClips.
func Join(clips ...*Clip) *Talk {
	t := &Talk{}
	size := 0
	for _, c := range clips {
		for i := range c.Cues {
			size += len(c.Cues[i].Text) + 1
		}
	}
	j := joiner{talk: t}
	j.text.Grow(size)
	for n, c := range clips {
		t.Clips = append(t.Clips, *c)
		t.Warnings = append(t.Warnings, c.Warnings...)
		j.clip(n, c)
	}
	t.Text = j.text.String()
	return t
}

type joiner struct {
	talk *Talk
	text strings.Builder
	para bool // the next spoken word starts a paragraph
}

func (j *joiner) clip(n int, clip *Clip) {
	r := &roller{cues: clip.Cues}
	r.order, _, _ = timeOrder(clip.Cues)
	how, total := r.detect()
	if how != rollsNot {
		total /= 2
	}
	j.talk.Words = slices.Grow(j.talk.Words, total)
	over := ends(clip.Cues, r.order)
	duration := &j.talk.Clips[n].Duration
	r.reset()
	j.para = false
	for at, i := range r.order {
		c := r.step(i)
		k := r.carried(c, how)
		if k < len(r.cur) {
			*duration = max(*duration, j.cue(n, i, c, r.cur[k:], over(at)))
		}
		r.prevText = c.Text
		r.next()
	}
}

// Talk runs at about 15 characters a second; one slower than slow is taken to pause.
const (
	usualPace = 15.0
	slowPace  = 8.0
)

// ends tells when the cue at a place of order is over, where the file does not
// say it: at the next one, but not long after its words can have been spoken.
// It is asked from the first place to the last.
func ends(cues []Cue, order []int) func(at int) float64 {
	next := 0 // the first place with another start
	return func(at int) float64 {
		c := &cues[order[at]]
		if c.End > c.Start {
			return c.End
		}
		for next = max(next, at+1); next < len(order) && cues[order[next]].Start == c.Start; next++ {
		}
		if next < len(order) && cues[order[next]].Start > c.Start {
			return min(cues[order[next]].Start, c.Start+max(1, float64(len(c.Text))/slowPace))
		}
		return c.Start + max(0.2, float64(len(c.Text))/usualPace)
	}
}

// cue writes the new words of a cue, and tells when the last of them ends.
func (j *joiner) cue(clip, index int, c *Cue, toks []token, end float64) float64 {
	from := len(j.talk.Words)
	for i, t := range toks {
		if j.text.Len() > 0 {
			j.text.WriteByte(' ')
		}
		w := Word{Lo: uint32(j.text.Len()), Clip: uint16(clip), Cue: uint32(index), At: -1}
		if i == 0 && c.Para {
			w.Marks = Para
		}
		word := c.Text[t.lo:t.hi]
		j.text.WriteString(word)
		w.Hi = uint32(j.text.Len())
		if t.timed >= 0 {
			w.At = c.Words[t.timed].At
			w.Marks |= Exact
		} else if i == 0 {
			w.At = c.Start
			w.Marks |= Exact
		}
		if !isLetter(word[0]) {
			startsLine := i == 0 || toks[i-1].line != t.line
			switch {
			case isSpeakerMark(word, startsLine):
				w.Marks |= Noise | Para
			case strings.Trim(word, "♪♫♬") == "":
				w.Marks |= Noise
			case startsLine && len(word) > 1 && word[0] == '-' && isLetter(word[1]):
				w.Marks |= Para
			}
		}
		j.talk.Words = append(j.talk.Words, w)
	}
	words := j.talk.Words[from:]
	markNoise(c.Text, toks, words)
	for i := range words { // what starts at a noise starts at the word behind it
		w := &words[i]
		j.para = j.para || w.Is(Para)
		w.Marks &^= Para
		if j.para && !w.Is(Noise) {
			w.Marks |= Para
			j.para = false
		}
	}
	return spread(words, toks, c, end)
}

// isSpeakerMark tells the signs that another person speaks: ">>", and a dash that begins a line.
func isSpeakerMark(word string, startsLine bool) bool {
	if len(word) >= 2 && strings.Trim(word, ">") == "" {
		return true
	}
	return startsLine && (word == "-" || word == "–" || word == "—")
}

// spread gives times to the words of a cue without one, by characters between those
// that have them, and tells when the last word ends.
func spread(words []Word, toks []token, c *Cue, end float64) (over float64) {
	for i := 0; i < len(words); {
		j := i + 1
		for j < len(words) && words[j].At < 0 {
			j++
		}
		from, lo := words[i].At, words[i].Lo
		own := 0.0 // where the file says that this word ends
		if t := toks[i].timed; t >= 0 {
			own = c.Words[t].End
		}
		to, hi := max(end, from), words[len(words)-1].Hi
		if j < len(words) {
			to, hi = max(words[j].At, from), words[j].Lo
		} else if j-i > 1 {
			to = max(to, own)
		}
		for k := i + 1; k < j; k++ {
			words[k].At = from + (to-from)*float64(words[k].Lo-lo)/float64(hi-lo)
		}
		over = to
		if j-i == 1 && own > from {
			over = min(to, own)
		}
		i = j
	}
	return over
}

// markNoise marks what stands in brackets and was not spoken.
func markNoise(text string, toks []token, words []Word) {
	for i := 0; i < len(toks); i++ {
		t := text[toks[i].lo:toks[i].hi]
		var shut byte
		switch t[0] {
		case '[':
			shut = ']'
		case '(':
			shut = ')'
		default:
			continue
		}
		for j := i; j < len(toks) && j < i+8; j++ {
			u := strings.TrimRight(text[toks[j].lo:toks[j].hi], ".,!?;:")
			if u == "" || u[len(u)-1] != shut {
				continue
			}
			inside := strings.ToLower(text[toks[i].lo+1 : int(toks[j].lo)+len(u)-1])
			if !strings.ContainsAny(inside, "0123456789") && (shut == ']' || isSound(inside)) {
				for k := i; k <= j; k++ {
					words[k].Marks |= Noise
				}
			}
			i = j
			break
		}
	}
}

// isSound tells a sound or a remark of the captioner in round brackets from an
// aside of the speaker, by its first or last word.
func isSound(s string) bool {
	f := strings.Fields(s)
	if len(f) == 0 {
		return true
	}
	return len(f) <= 5 && (sounds()[f[0]] || sounds()[f[len(f)-1]])
}

//go:embed sounds.txt
var soundList string

var sounds = sync.OnceValue(func() map[string]bool {
	m := map[string]bool{}
	for line := range strings.Lines(soundList) {
		if line = strings.TrimSpace(line); line != "" && line[0] != '#' {
			m[line] = true
		}
	}
	return m
})
