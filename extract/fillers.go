package extract

import (
	"slices"
	"strconv"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

// hesitations are sounds that are made while a word is looked for.
var hesitations = set("um umm ummm uh uhh uhhh uhm er erm ehm")

// stutters are words that are said again while the next one is looked for ("the, the bolt").
// "It", "that", "you" and "in" are not among them: they end one clause as well as they begin the next
// ("hold it, it drops").
var stutters = set("the a an and to of i my your their his her this these those so with for at but or if when as was he she they there there's don't")

// stuttered are what else is said again together with other words ("it's, it's").
var stuttered = set("it that you in on is 's 'm 're 've 'll 'd it's that's going gonna then not what here")

// stutter is as many words as are said again at most, looking for the next.
const stutter = 4

// hesitates tells whether a word of the talk is no more than a sound made while another is looked
// for. What it ends is ended by the word before it: a comma that only sets the sound apart is none.
func (r *reading) hesitates(folded string, w transcript.Word) bool {
	if !hesitations.has(folded) {
		return false
	}
	lo := w.Lo
	if n := len(r.toks); n > 0 {
		last := &r.toks[n-1]
		if end := r.talk.Text[w.Hi-1]; end == '.' || end == '?' || end == '!' {
			last.brk = max(last.brk, brkSentence)
		} else if last.brk == brkComma && last.leadsOn() {
			last.brk, lo = brkNone, last.hi
		}
	}
	r.leaveOut(lo, w.Hi)
	return true
}

// leadsOn tells whether no phrase ends with a word, whatever comma stands after it.
func (t *tok) leadsOn() bool {
	return determiner.has(t.s) || prepositions.has(t.s) || stutters.has(t.s)
}

// unstutter leaves out what was just said twice over, the first time.
func (r *reading) unstutter() {
	n := len(r.toks)
	for k := 1; k <= stutter && 2*k <= n; k++ {
		if a, b := r.toks[n-2*k:n-k], r.toks[n-k:]; saidTwice(a, b) {
			r.leaveOut(a[0].lo, b[0].lo)
			copy(a, b)
			r.toks = r.toks[:n-k]
			return
		}
	}
}

// saidTwice tells whether words are those before them, said again.
func saidTwice(a, b []tok) bool {
	for i := range a {
		again := stutters.has(a[i].s) || len(a) > 1 && stuttered.has(a[i].s)
		if !again || a[i].s != b[i].s || a[i].brk >= brkLine || i < len(a)-1 && (a[i].brk != brkNone || b[i].brk != brkNone) {
			return false
		}
	}
	return true
}

// goAhead are words before a verb that say no more than it does.
var goAhead = []string{"go", "ahead", "and"}

// unframe leaves out what was said before the last token and says nothing: "go ahead and undo it".
func (r *reading) unframe() {
	n, k := len(r.toks)-1, len(goAhead)
	if n < k || r.toks[n-1].s != goAhead[k-1] {
		return
	}
	for i, w := range goAhead {
		if t := &r.toks[n-k+i]; t.s != w || t.brk >= brkComma {
			return
		}
	}
	r.leaveOut(r.toks[n-k].lo, r.toks[n].lo)
	r.toks[n-k] = r.toks[n]
	r.toks = r.toks[:n-k+1]
}

// youKnow leaves out a "you know" that commas set apart, of which a word of the talk is the last.
func (r *reading) youKnow(w transcript.Word) bool {
	n := len(r.toks) - 2
	if n < 0 || r.toks[n+1].s != "know" || r.toks[n].s != "you" || r.toks[n].brk >= brkComma || r.talk.Text[w.Hi-1] != ',' {
		return false
	}
	if n > 0 {
		last := &r.toks[n-1]
		switch {
		case last.brk < brkComma && !last.leadsOn():
			return false // "so that you know, it's on"
		case last.brk == brkComma && last.leadsOn():
			last.brk = brkNone
		}
	}
	r.leaveOut(r.toks[n].lo, w.Hi)
	r.toks = r.toks[:n]
	return true
}

// leaveOut blanks what is no word of the talk in the text that names, numbers and sentences are taken from.
func (r *reading) leaveOut(lo, hi uint32) {
	if r.blanked == nil {
		r.blanked = []byte(r.talk.Text)
	}
	for i := lo; i < hi; i++ {
		r.blanked[i] = ' '
	}
}

// markers are words that begin a sentence and say no more than that it begins.
var markers = set("and but then so now okay ok okey alright well right anyway anyways")

// meantSo are words after which "so" and "now" say something: "so far", "so is the other one", "now that it's off".
var meantSo = set("that far much many few little long big small tight loose hard close near bad good is are was were does do did has have will would can could")

// openings leaves out what only begins a sentence: "so", "okay", "right,".
func (r *reading) openings() {
	out, starts := 0, true
	for i := 0; i < len(r.toks); i++ {
		n := 0
		if starts {
			if k := r.saysNothing(i); k > 0 && i+k < len(r.toks) && r.toks[i+k-1].brk < brkClip {
				i += k - 1
				continue
			}
			n = r.markersAt(i)
		}
		i += n
		r.toks[out], r.ids[out], r.talked[out] = r.toks[i], r.ids[i], r.talked[i]
		out++
		starts = r.toks[i].brk >= brkSentence
	}
	if out < len(r.toks) {
		r.toks, r.ids, r.talked = r.toks[:out], r.ids[:out], r.talked[:out]
		r.runs()
	}
}

// ledIn is as many words as lead in what begins at a token, at most.
const ledIn = 8

// ledWords gives the words before token i that were left out as markers, where a sentence begins
// with it, and the first word of what they lead in.
func (r *reading) ledWords(i int) (words []string, from uint32) {
	first := r.toks[i].w
	if i > 0 && r.toks[i-1].brk < brkSentence {
		return nil, first
	}
	if i > 0 {
		from = r.lastWord(i-1) + 1
	}
	if first > ledIn {
		from = max(from, first-ledIn)
	}
	for k := from; k < first; k++ {
		w := &r.talk.Words[k]
		if w.Clip != r.talk.Words[first].Clip || strings.ContainsAny(r.talk.Text[w.Lo:w.Hi], ".?!") {
			words, from = words[:0], k+1 // a sentence that says nothing
			continue
		}
		words = append(words, lexicon.Words(r.talk.Text[w.Lo:w.Hi])...)
	}
	return words, min(from, first)
}

// ledBy tells whether what begins at token i was led in by one of some markers.
func (r *reading) ledBy(i int, markers ...string) bool {
	if i >= len(r.toks) {
		return false
	}
	words, _ := r.ledWords(i)
	return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(markers, w) })
}

// beginsWith tells whether a clause begins with one of some words, or was led in by one.
func (r *reading) beginsWith(c *clause, words ...string) bool {
	return slices.Contains(words, r.toks[c.lo].s) || r.ledBy(c.lo, words...)
}

// markersAt tells how many words from token i on, where a sentence begins, are markers, and not all of it.
func (r *reading) markersAt(i int) int {
	n := 0
	for {
		k := i + n
		t := &r.toks[k]
		more := 1
		if t.s == "all" && t.brk == brkNone && r.next(k) == "right" {
			more = 2
		}
		last := &r.toks[k+more-1]
		if more == 1 && !markers.has(t.s) || last.brk >= brkSentence || k+more >= len(r.toks) {
			return n
		}
		next := r.toks[k+more].s
		switch t.s {
		case "so", "now":
			if last.brk < brkComma && meantSo.has(next) {
				return n
			}
		case "right", "well":
			if last.brk < brkComma && !markers.has(next) && next != "then" {
				return n
			}
		}
		n += more
	}
}

// Numbers as they are spoken.
var (
	upToTwenty = [...]string{2: "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
		"thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"}
	tens = [...]string{2: "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"}
)

// spelled gives a number as it is spoken, where that is one word: a recogniser that writes figures
// says no other thing. Any other word it gives back.
func spelled(w string) string {
	switch w {
	case "1st":
		return "first"
	case "2nd":
		return "second"
	case "3rd":
		return "third"
	case "4th":
		return "fourth"
	}
	if len(w) > 2 || w[0] < '1' || w[0] > '9' {
		return w
	}
	switch n, err := strconv.Atoi(w); {
	case err != nil || n < 2:
		return w
	case n < len(upToTwenty):
		return upToTwenty[n]
	case n%10 == 0:
		return tens[n/10]
	}
	return w
}

// saysNothing tells of how many words the sentence is that begins at token i and says nothing; 0
// where it says something.
func (r *reading) saysNothing(i int) int {
	n := 1
	for n < longestNothing && i+n < len(r.toks) && r.toks[i+n-1].brk < brkSentence {
		n++
	}
	if r.toks[i+n-1].brk >= brkSentence && r.lex.SaysNothing(r.ids[i:i+n]) {
		return n
	}
	return 0
}

// longestNothing is more words than a sentence has that says nothing.
const longestNothing = 6
