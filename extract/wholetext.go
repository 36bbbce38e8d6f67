package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
)

// What is quoted of a talk to a reader is quoted in whole sentences, where the talk is written
// in sentences: half of one says something else, and six of them say nothing.

// longestQuote is how many words are quoted at most.
const longestQuote = 38

// A shownAs is what is shown of an open question once it is weighed, which goes by more words
// than a reader wants.
type shownAs struct{ quote, asked, question string }

// endsAsWritten tells whether a sentence ends with a token because a stop is written there.
// The stops that were put back into captions are none: they may stand in the wrong place.
func (r *reading) endsAsWritten(i int) bool {
	if i < 0 || i+1 >= len(r.toks) || r.toks[i].brk >= brkClip {
		return true
	}
	t, next := &r.toks[i], &r.toks[i+1]
	return t.brk >= brkSentence && t.hi <= next.lo && strings.ContainsAny(r.talk.Text[t.hi:next.lo], ".!?")
}

// writtenAround gives the written sentences that some tokens are in; ok where they are no
// more than may be quoted.
func (r *reading) writtenAround(lo, hi int) (from, to int, ok bool) {
	for from = lo; !r.endsAsWritten(from - 1); from-- {
		if hi-from >= longestQuote {
			return lo, hi, false
		}
	}
	for to = hi; !r.endsAsWritten(to - 1); to++ {
		if to-from >= longestQuote {
			return lo, hi, false
		}
	}
	return from, to, true
}

// inItsSentence draws the words that are quoted of an end in to the sentence that leaves it
// open, where that is written as one; those before it are quoted only where it names nothing.
func (r *reading) inItsSentence(lo, hi int, e *looseEnd) (int, int) {
	from, to, ok := r.writtenAround(e.lo, e.hi)
	if !ok || e.kind == Conflict || r.toks[from].s == "what" {
		return lo, hi // "What I've not done. The earth test."
	}
	if e.topic >= 0 && r.mentions[e.topic].lo >= to {
		if _, to, ok = r.writtenAround(from, r.mentions[e.topic].hi); !ok {
			return lo, hi
		}
	}
	for more := 3; more > 0 && (to-from < 5 || !r.namesMatter(from, to, e)); more-- {
		p, _, ok := r.writtenAround(max(from-1, 0), to)
		if !ok || from == 0 || !e.sure && p < lo || r.since(p, e.lo) > 15 {
			break
		}
		if from = p; e.sure {
			break // its name is told beside the quote
		}
	}
	if to-from < 4 || !e.sure && to-from < 8 && !r.namesMatter(from, to, e) {
		return lo, hi
	}
	return from, to
}

// namesMatter tells whether the words between two tokens name what an end is of, or anything
// that it may be of.
func (r *reading) namesMatter(lo, hi int, e *looseEnd) bool {
	if e.noun >= lo && e.noun < hi || e.topic >= 0 && r.mentions[e.topic].lo >= lo && r.mentions[e.topic].lo < hi {
		return true
	}
	return r.partBetween(lo, hi)
}

// partBetween tells whether a part, a fastener or a stuff is named between two tokens.
func (r *reading) partBetween(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if mi := r.toks[i].men; mi >= 0 && r.mentions[mi].kind&(lexicon.Part|lexicon.Fastener|lexicon.Consumable) != 0 && r.topical(&r.mentions[mi]) {
			return true
		}
	}
	return false
}

// heardAround gives the words to quote of what some tokens tell: their sentence where one is
// written, else their clause, and what stands around them where that is short.
func (r *reading) heardAround(lo, hi int) (int, int) {
	if from, to, ok := r.writtenAround(lo, hi); ok && to-from >= 3 {
		return from, to
	}
	from, to := r.clauses[r.toks[lo].cl].lo, r.clauses[r.toks[hi-1].cl].hi
	if to-from < 5 || to-from > longestQuote {
		return max(0, lo-3), min(len(r.toks), hi+5)
	}
	return from, to
}

// inSentences draws a warning to whole sentences, where they are written: one that begins in
// the middle of the sentence before takes all of it, where there is room, and one of which the
// speaker goes on with his own work ends before that. What warns stands at a token and ends
// before another.
func (r *reading) inSentences(lo, hi, at, told int) (int, int) {
	if from, to, ok := r.writtenAround(at, max(told, at+1)); ok && to < len(r.toks) && !r.partBetween(from, to) {
		_, end, ok := r.writtenAround(from, to+1)
		for k := int(r.toks[min(to, len(r.toks)-1)].cl); ok && k < len(r.clauses) && r.clauses[k].lo < end; k++ {
			if r.threatens(k) {
				return from, end // "Now careful with the next bit. There's a spring and it goes for your eye."
			}
		}
	}
	if from, to, ok := r.writtenAround(lo, hi); ok {
		lo, hi = from, to
	} else if from, _, ok := r.writtenAround(at, max(hi, at+1)); ok && lo < from {
		lo = from
	}
	for !r.endsAsWritten(lo-1) && leansOn.has(r.toks[lo].s) && lo == r.clauses[r.toks[lo].cl].lo {
		k := int(r.toks[lo].cl)
		if k == 0 || r.clauses[k-1].sentence != r.clauses[k].sentence || r.clauses[k].hi < hi || hi-r.clauses[k-1].lo > longestWarning {
			break
		}
		lo = r.clauses[k-1].lo // "take your props out | before you hand it back"
	}
	for i := told; i+2 < hi; i++ {
		if r.toks[i].s == "and" && i > lo && r.toks[i-1].brk >= brkComma && r.toks[i-1].brk < brkSentence && r.next(i) == "i" && !r.threatens(int(r.toks[i+1].cl)) && r.clauses[r.toks[i+1].cl].mood&(warned|negated) == 0 {
			hi = i // "lip to the oil, and I'm tapping it in"
			break
		}
	}
	if elliptic.has(r.toks[hi-1].s) && lo > 0 && r.endsAsWritten(hi-1) {
		if from, _, ok := r.writtenAround(lo-1, hi); ok {
			lo = from // "Don't run it till that's in. Lead's off, so nobody can."
		}
	}
	return lo, hi
}

// leansOn are the words that begin what is said of the clause before.
var leansOn = set("before until till because cause cuz otherwise or unless so")

// elliptic are the words at the end of a sentence that stand for what was said before.
var elliptic = set("can could will would does did should must may might")
