package extract

import "wrenchword/extract/transcript"

// hesitations are sounds that are made while a word is looked for.
var hesitations = set("um umm ummm uh uhh uhhh uhm er erm ehm")

// stutters are words that are said again while the next one is looked for ("the, the bolt").
// "It", "that", "you" and "in" are not among them: they end one clause as well as they begin the next
// ("hold it, it drops").
var stutters = set("the a an and to of i we my your our their his her this these those so with for at but or if when as was he she they there there's")

// stuttered are what else is said again together with other words ("it's, it's").
var stuttered = set("the a an and to of i we my your our their his her this these those so with for at but or if when as was he she they there it that you in on is 's 'm 're 've 'll 'd it's that's going gonna then not don't what here")

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
		} else if last.brk == brkComma && (determiner.has(last.s) || prepositions.has(last.s) || stutters.has(last.s)) {
			last.brk, lo = brkNone, last.hi
		}
	}
	r.leaveOut(lo, w.Hi)
	return true
}

// unstutter leaves out what was just said twice over.
func (r *reading) unstutter() {
	n := len(r.toks)
	for k := 1; k <= stutter && 2*k <= n; k++ {
		if a, b := r.toks[n-2*k:n-k], r.toks[n-k:]; saidTwice(a, b) {
			r.leaveOut(a[k-1].hi, b[k-1].hi)
			a[k-1].brk = brkNone
			r.toks = r.toks[:n-k]
			return
		}
	}
}

// saidTwice tells whether words are those before them, said again.
func saidTwice(a, b []tok) bool {
	again := stuttered
	if len(a) == 1 {
		again = stutters
	}
	for i := range a {
		if a[i].s != b[i].s || a[i].brk >= brkLine || i < len(a)-1 && (a[i].brk != brkNone || b[i].brk != brkNone) || !again.has(a[i].s) {
			return false
		}
	}
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
