package extract

import (
	"slices"

	"wrenchword/extract/lexicon"
)

// What is settled as soon as it is raised, and what would only be: neither stands open. "That has
// to go back on. I'll do it now while I'm here. Clip. Done." "If it's not turning it's not in."

// promptly are the verbs by which one sets to it: "I'll put that on now".
var promptly = set("do put fit get plug tighten nip screw pop stick sort fix hook connect finish bung shove clip push slip fill fasten torque close shut wind")

// itself are the words for what was raised right before.
var itself = set("it that this them those these him her one")

// doneSigns are the words of one who has done it.
var doneSigns = set("done there sorted fixed click clicked finished lovely plugged good")

// doneAtOnce tells whether what an end leaves open is done there and then: somebody sets to it,
// and says within half a minute that it is done.
func (r *reading) doneAtOnce(e *looseEnd) bool {
	switch e.kind {
	case Unfinished, NotRefitted, NotTorqued, LockMissing:
	default:
		return false
	}
	from, k := r.clauses[r.toks[e.lo].cl].lo, r.sentenceOf(int(r.toks[e.hi-1].cl))
	to := r.clauses[r.sentences()[min(k+2, len(r.sentences())-1)].last].hi
	for i := from; i < to && (i < e.hi+24 || r.since(e.hi-1, i) < 9) && r.since(e.hi-1, i) < 30; i++ {
		if n := r.setsTo(i); n > 0 {
			return r.saysDone(i+n, i+n)
		}
	}
	return false
}

// setsTo tells how many words at a token say that one does it now: "I'll do that right now",
// "let me put it on while I'm here"; 0 where they do not.
func (r *reading) setsTo(i int) int {
	if !promptly.has(r.toks[i].s) || !itself.has(r.next(i)) || i == 0 {
		return 0
	}
	for k := max(0, i-5); k < i; k++ {
		switch r.toks[k].s {
		case "not", "n't", "don't", "can't", "won't", "didn't", "couldn't", "never", "you", "if", "to":
			return 0
		}
	}
	switch p := r.prev(i); p {
	case "'ll", "will", "gonna", "me", "lemme", "and", "just", "should", "could", "well", "i", "let's", "'s":
	default:
		return 0
	}
	for k := i + 2; k < min(len(r.toks), i+6); k++ {
		if r.toks[k-1].brk >= brkSentence {
			break
		}
		switch w, n := r.toks[k].s, r.next(k); {
		case w == "now" && r.prev(k) != "for" && r.prev(k) != "until" && r.prev(k) != "till" && n != "that",
			w == "straight" && n == "away", w == "this" && n == "minute",
			(w == "while" || w == "whilst") && (n == "i" || n == "it"):
			return k + 1 - i
		}
	}
	return 0
}

// saysDone tells whether the talk after a token says that what was set to is done, before it
// comes to anything else.
func (r *reading) saysDone(from, at int) bool {
	for i := from; i < len(r.toks) && r.since(at-1, i) < 30; i++ {
		switch w := r.toks[i].s; {
		case doneSigns.has(w):
			p, n := r.prev(i), r.next(i)
			if w == "there" && (n == "is" || n == "'s" || n == "are" || n == "'re" || n == "was") || w == "good" && i > 0 && r.toks[i-1].brk < brkSentence || p == "not" || p == "n't" || p == "be" || p == "get" {
				continue
			}
			return true
		case (w == "'s" || w == "is") && (r.prev(i) == "that" || r.prev(i) == "it") && (r.next(i) == "on" || r.next(i) == "in" || r.next(i) == "back" || r.next(i) == "tight" || r.next(i) == "up"):
			return true
		case w == "not", w == "n't", w == "can't", w == "won't", w == "tomorrow", w == "later":
			return false
		}
	}
	return false
}

// gotIt are the verbs of one who has found what was to be looked up, and figuresFor the words for it.
var (
	gotIt      = set("got found here's looked")
	figuresFor = set("number numbers figure figures spec specs value values torque torques")
)

// foundSince tells whether what an end has to be looked up is found later in the talk: "okay, I
// got the number", with a value for the same thing, or for the first that may be meant.
func (r *reading) foundSince(e *looseEnd) bool {
	if e.kind != LookUp {
		return false
	}
	for i := range r.heard {
		h := &r.heard[i]
		q := &r.qtys[h.qty]
		if h.dropped || h.of == nil || h.hedged || h.source.Scope == scopeOther || q.lo <= e.hi || !r.nowFound(max(e.hi, q.lo-40), q.lo, q.lo) {
			continue
		}
		if (e.topic < 0 || !e.sure && r.mentions[e.topic].kind&lexicon.Fastener == 0) && r.heardIn(e.first, e.last+1, "find") || e.topic >= 0 && r.sameWords(&r.mentions[e.topic], h.of) {
			return true
		}
	}
	return false
}

// sameWords tells whether a mention is of a thing, or has a word of its name in common with it.
func (r *reading) sameWords(m *mention, t *thing) bool {
	return m.entry == t || slices.ContainsFunc(content(m.mods), func(w string) bool { return t.mods[w] && !placesClash(m.mods, t.mods) })
}

// nowFound tells whether, between two tokens and within twenty seconds of a third, a figure is
// said to have been found.
func (r *reading) nowFound(lo, hi, at int) bool {
	for i := lo; i < hi; i++ {
		if !gotIt.has(r.toks[i].s) || r.since(i, at) > 20 || !r.byTeller(i) || r.clauses[r.toks[i].cl].mood&(negated|asked|conditional|other|hypothetical) != 0 {
			continue
		}
		for k := i + 1; k < min(hi, i+5); k++ {
			if r.toks[k-1].brk >= brkSentence {
				break
			}
			if figuresFor.has(r.toks[k].s) && (r.prev(k) == "the" || r.prev(k) == "that" || r.prev(k) == "your" || r.prev(k) == "my") && r.next(k) != "wrench" {
				return true
			}
			if r.toks[k].s == "up" && r.toks[i].s == "looked" {
				return true
			}
		}
	}
	return false
}

// byTeller tells whether a verb is of the one who tells, or has nobody before it: "I got",
// "we've found", "okay, found".
func (r *reading) byTeller(i int) bool {
	switch r.prev(i) {
	case "i", "'ve", "have", "right", "okay", "ok", "so", "and", "just":
		return true
	}
	return r.toks[i].s == "here's" || i == 0 || r.toks[i-1].brk >= brkSentence
}

// seeing are the verbs of "if you look here, it's not in": what is told after them is so.
var seeing = set("look see watch notice remember recall hear listen feel know think mind wonder wondering ask")

// wouldBe tells whether an end says what follows from what an "if" before it supposes, in the
// same sentence.
func (r *reading) wouldBe(e *looseEnd) bool {
	switch e.kind {
	case Unfinished, NotRefitted, NotTorqued, ReplaceLater, LockMissing:
	default:
		return false
	}
	ci := int(r.toks[e.lo].cl)
	c := &r.clauses[ci]
	first := r.skipped(c)
	own := r.word(first) == "i"
	if own && !(r.saidIn(c, "doing") && len(c.mentions) == 0) || r.saidIn(c, "still") || r.saidIn(c, "yet") {
		return false
	}
	for k := ci - 1; k >= 0 && k >= ci-3 && r.clauses[k].sentence == c.sentence && r.since(r.clauses[k].lo, c.lo) < 10; k-- {
		if r.beginsWith(&r.clauses[k+1], "but", "so", "anyway", "now") {
			return false
		}
		p := &r.clauses[k]
		at := p.lo
		for at < p.hi && r.toks[at].s != "if" && (r.toks[at].is(wOpener|wDrop) || r.toks[at].s == "and") {
			at++
		}
		if at >= p.hi || r.toks[at].s != "if" {
			continue
		}
		if n := r.next(at); n == "i" {
			return false
		}
		for i := at; i < p.hi; i++ {
			if seeing.has(r.toks[i].s) {
				return false
			}
		}
		return true
	}
	return false
}
