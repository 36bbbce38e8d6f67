package extract

import "slices"

// Some work is due only when the machine has been used for a while: "after fifty miles I go
// round the nuts again", "once it's run ten hours, change the oil", "retension in a fortnight".

// useUnits are what use is counted in. Of minutes one waits in the same talk.
var useUnits = wordsOf("how long it is used")

// useCounts are the words of how much, beside the numbers.
var useCounts = set("a an the about around roughly say some first next another couple of few hundred dozen odd so or more maybe good every")

// usedWords stand between "once" and how much: "once you've run it ten hours".
var usedWords = set("you i it she he they 've 's 'd have has been run ran had done did used ridden driven turned worked gone")

// afterUseAt tells how many words at a token say after how much use: "after the first fifty
// miles", "in a couple of hundred k's", "once you run it ten hours"; 0 where none do.
func (r *reading) afterUseAt(i, hi int) int {
	k, many := i+1, false
	switch r.toks[i].s {
	case "after", "in", "within", "at":
		if k < hi && (r.toks[k].s == "after" || r.toks[k].s == "only") {
			k++
		}
	case "once", "when":
		for k < hi && usedWords.has(r.toks[k].s) {
			k++
		}
		if k < i+3 {
			return 0
		}
	default:
		return 0
	}
	for from := k; k < min(hi, from+7); k++ {
		switch w := r.toks[k].s; {
		case useUnits.has(w) && k > from:
			hours := w == "hour" || w == "hours"
			if k+1 < hi && r.toks[k+1].s == "'s" {
				k++
			}
			for k+1 < hi && (r.next(k) == "of" || r.next(k) == "or") && (r.word(k+2) == "running" || r.word(k+2) == "use" || r.word(k+2) == "work" || r.word(k+2) == "driving" || r.word(k+2) == "riding" || r.word(k+2) == "so" || r.word(k+2) == "two") {
				many, k = many || r.next(k) == "of", k+2
			}
			if hours && (!many || r.toks[i].s == "in") || r.toks[i].s == "at" && !many {
				return 0 // an hour by the clock
			}
			return k + 1 - i
		case w == "first" || r.toks[k].is(wCounts) && w != "a" && w != "an" && w != "one" || w == "hundred" || w == "couple" || w == "few" || w == "dozen":
			many = true
		case w == "one", useCounts.has(w) && w != "every", len(w) > 0 && w[0] >= '0' && w[0] <= '9':
			many = many || w[0] <= '9'
		default:
			return 0
		}
	}
	return 0
}

// goOver are the works of one who comes back to a machine, over those that say "again" themselves.
var (
	goOver    = set("check inspect measure grease change drain tighten retighten nip adjust look see go come bring do feel listen put")
	anew      = set("recheck retorque retighten retension regrease readjust reset re")
	goingOver = set("checking rechecking retorquing retightening retensioning regreasing greasing changing tightening adjusting looking doing")
)

// usedFirst adds to what is open the work that is due after some use. What is asked of the same
// sentence as work to do is that work.
func (r *reading) usedFirst(ends []*looseEnd) []*looseEnd {
	for _, s := range r.sentences() {
		lo, hi := r.clauses[s.first].lo, r.clauses[s.last].hi
		for i := lo; i < hi; i++ {
			n := r.afterUseAt(i, hi)
			if n == 0 {
				continue
			}
			if verb := r.goesOver(max(lo, i-16), min(hi, i+n+14), i, n); verb >= 0 {
				ends = r.dueAfterUse(ends, i, n, verb)
			}
			i += n - 1
		}
	}
	return ends
}

// goesOver gives the token of what is to be done after some use told at a token, between two
// others; -1 where nothing is, or it was done.
func (r *reading) goesOver(lo, hi, at, n int) int {
	ci := int(r.toks[at].cl)
	if r.clauses[ci].mood&(asked|aside|greeting|storied|hypothetical) != 0 || r.usedTo(&r.clauses[ci]) || r.doneAlready(ci) {
		return -1
	}
	again, verb := false, -1
	for i := lo; i < hi; i++ {
		w, p := r.toks[i].s, r.prev(i)
		switch {
		case i >= at && i < at+n:
		case w == "was" || w == "were" || w == "did" || w == "had" || w == "came" || w == "went" || w == "would" || w == "wouldn't" || w == "never" || w == "if":
			return -1
		case w == "again" || w == "once" && r.next(i) == "more":
			again = true
			if verb < 0 && (i == at-1 || w == "once" && i == at-2) {
				verb = i // "a hundred and ten, and again after fifty"
			}
		case anew.has(w):
			again, verb = true, i
		case goingOver.has(w) && r.saysOneOf(max(lo, i-4), i, "want", "wants", "need", "needs"):
			verb = i
		case goOver.has(w) && r.toks[i].men < 0 && r.tellsTo(i, p, at+n):
			switch next := r.next(i); w {
			case "go":
				if next != "over" && next != "round" && next != "around" && next != "through" {
					continue
				}
			case "come", "bring":
				if next != "back" && r.word(i+2) != "back" {
					continue
				}
			case "do", "see", "put":
				again = again || w == "do" && r.saysOneOf(i+1, hi, "again")
				if !again {
					continue
				}
			}
			if verb < 0 || verb == at-1 {
				verb = i
			}
		}
	}
	lead := r.toks[at].s
	if verb < 0 || r.saysOneOf(max(lo, verb-4), verb, "not", "don't", "won't", "needn't") || !again && lead != "after" && lead != "once" && lead != "when" {
		return -1
	}
	return verb
}

// tellsTo tells whether a verb is of what is still to be done: "I check", "you must change",
// "and measure"; it stands after the time, or in the form that commands.
func (r *reading) tellsTo(i int, before string, after int) bool {
	switch before {
	case "i", "you", "they", "'ll", "will", "to", "must", "should", "gonna", "shall", "can", "and", "then", "gotta", "just", "also", "please", "once":
		return true
	}
	return i == after || i == 0 || r.toks[i-1].brk >= brkComma
}

// dueAfterUse makes the end of a work that is due after the use told at a token.
func (r *reading) dueAfterUse(ends []*looseEnd, at, n, verb int) []*looseEnd {
	ci := int(r.toks[verb].cl)
	for _, e := range ends {
		if e.kind == Unfinished && e.lo >= min(verb, at)-4 && e.hi <= max(verb, at+n)+14 && r.clauses[r.toks[e.lo].cl].sentence == r.clauses[ci].sentence {
			e.before, e.lo, e.hi, e.signal = BeforeLater, at, at+n, "again"
			return ends
		}
	}
	e := &looseEnd{kind: Unfinished, before: BeforeLater, first: min(ci, int(r.toks[at].cl)), last: max(ci, int(r.toks[at+n-1].cl)), lo: at, hi: at + n, topic: -1, noun: -1, signal: "again"}
	r.aim(e, ci, openCue{verb, verb + 1, "again"})
	return append(ends, e)
}

// saysOneOf tells whether one of some words stands between two tokens.
func (r *reading) saysOneOf(lo, hi int, words ...string) bool {
	for i := lo; i < hi; i++ {
		if slices.Contains(words, r.toks[i].s) {
			return true
		}
	}
	return false
}

// aimAgain aims at what is to be gone over again after some use, where the sentence names
// nothing that is: it is what was tightened last.
func (r *reading) aimAgain(e *looseEnd, ci int) bool {
	if e.signal != "again" {
		return false
	}
	for k := ci; k >= e.first && r.clauses[k].sentence == r.clauses[ci].sentence; k-- {
		for _, mi := range r.clauses[k].mentions {
			if m := &r.mentions[mi]; r.topical(m) && (direct(m) || m.prep == "at" || m.prep == "on" || m.prep == "over" || m.prep == "of") && r.prev(m.from) != "a" && r.prev(m.from) != "like" && r.word(m.from-2) != "like" {
				return false
			}
		}
	}
	at, of := -1, (*thing)(nil)
	for i := range r.heard {
		if h := &r.heard[i]; !h.dropped && h.of != nil && r.qtys[h.qty].lo < e.lo && r.qtys[h.qty].lo > at && r.since(r.qtys[h.qty].lo, e.lo) < 60 {
			at, of = r.qtys[h.qty].lo, h.of
		}
	}
	for i := range r.acts {
		a := &r.acts[i]
		if a.lo < e.lo && a.lo > at && (a.action.Name == "tighten" || a.action.Name == "torque") && a.happened() && len(a.things) > 0 && r.since(a.lo, e.lo) < 60 {
			at, of = a.lo, a.things[0]
		}
	}
	if of == nil {
		return false
	}
	for i := len(of.mentions) - 1; i >= 0; i-- {
		if r.mentions[of.mentions[i]].lo < e.lo {
			e.topic, e.sure = of.mentions[i], true
			return true
		}
	}
	return false
}
