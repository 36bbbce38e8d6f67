package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
)

// How a loose end is asked after: one plain question that names the thing.

// askOf makes the question of an end.
func (r *reading) askOf(e *looseEnd, rec *Record) Open {
	if e.kind == Unfinished && r.partToCome(e) {
		e.kind, e.before = ReplaceLater, BeforeLater
	}
	if e.kind == Unfinished && e.before == BeforeUse && r.farTime(e) {
		e.before = BeforeLater
	}
	o := Open{Kind: e.kind, Before: e.before, byTwo: e.byTwo}
	if e.kind != Promise || e.signal == "next" {
		o.Due = r.dueOf(int(r.toks[e.lo].cl))
	}
	if e.kind == Unfinished && (o.Due == "tomorrow" || o.Due == "in the morning") {
		o.Before = BeforeUse // the machine is not used before
	}
	for k := e.first; k <= e.last && o.Before == BeforeLater; k++ {
		if r.heardIn(k, k+1, "before-use") {
			o.Before = BeforeUse
		}
	}
	if e.kind == Unsure && !(e.sure && e.topic >= 0) || e.signal == "misprint" || e.signal == "unlikely" || e.signal == "to-check" {
		if name, id := r.valueOf(e, rec); name != "" {
			o.About, o.LedgerID, e.sure = shortName(name), id, true
		}
	}
	if e.kind == Conflict && !(e.sure && e.topic >= 0 && r.tightenable(&r.mentions[e.topic])) {
		if name, id := r.tornBetween(e, rec); name != "" {
			o.About, o.LedgerID, e.sure = shortName(name), id, true
		}
	}
	lo, hi := r.clauses[e.first].lo, r.clauses[e.last].hi
	for k := e.first; hi-lo > 38 && lo < e.lo && k < int(r.toks[e.lo].cl); k++ {
		lo = r.clauses[k+1].lo
	}
	if e.topic >= 0 {
		m := &r.mentions[e.topic]
		if m.lo < lo && e.lo-m.lo <= 26 {
			lo = r.clauses[m.cl].lo
		}
		if e.signal == "short" {
			o.About = shortName(m.name) // no one of those that came off can be told to be it
		} else if e.signal == "lacking" {
			o.About = shortName(strings.ToLower(r.text(e.lo+1, e.hi))) // as it is called where it is lacking
		} else if e.sure && o.About == "" {
			o.About = shortName(r.nameOf(m))
			if m.entry != nil {
				o.LedgerID = m.entry.id
			}
		}
	}
	if e.noun >= 0 && namesNoMatter.has(lexicon.Singular(r.toks[e.noun].s)) {
		e.noun = -1
	}
	if e.noun >= 0 {
		from := r.phraseFrom(e.noun)
		if r.prev(e.noun) == "other" {
			from = min(from, e.noun-1) // "the other side"
		}
		o.About, e.sure = strings.ToLower(r.text(from, e.noun+1)), true
		lo = from
	}
	if e.kind == Promise {
		// "the routing photo also | I'll put in the community page"
		for k := r.toks[lo].cl - 1; k >= 0 && r.clauses[k].sentence == r.clauses[e.first].sentence && hi-r.clauses[k].lo <= 24 && len(r.clauses[e.first].mentions) == 0 && !r.promises(int(k)); k-- {
			lo = r.clauses[k].lo
		}
	}
	if !e.sure && e.last+1 < len(r.clauses) && hi-lo < 20 && e.signal != "unrun" && e.signal != "closing" && e.signal != "weighed" && (e.kind == LookUp || e.kind == Unsure || e.kind == Unfinished) {
		if n := &r.clauses[e.last+1]; n.hi-lo <= 34 && r.since(r.clauses[e.last].lo, n.lo) < 8 {
			hi = n.hi
		}
	}
	for k := r.toks[lo].cl - 1; !e.sure && e.kind != Promise && k >= 0 && e.signal != "unrun" && e.signal != "closing" && e.signal != "weighed" && hi-r.clauses[k].lo <= 36 && r.since(r.clauses[k].lo, e.lo) < 12 && r.clauses[k].mood&(aside|greeting) == 0; k-- {
		if r.clauses[k].sentence != r.clauses[k+1].sentence && e.lo-lo >= 16 {
			break // enough to tell what it is of
		}
		lo = r.clauses[k].lo
	}
	if hi-lo > 38 {
		lo, hi = max(lo, e.lo-16), min(hi, e.hi+18)
	}
	lo, hi = r.wholeSentences(lo, hi, e)
	from := lo
	lo, hi = r.briefly(lo, hi, e)
	if o.About == "" && e.topic >= 0 {
		o.About = shortName(r.nameOf(&r.mentions[e.topic]))
	}
	if o.About == "" {
		o.About = r.saidWords(e)
	}
	for _, k := range e.also {
		o.AlsoAt = append(o.AlsoAt, round3(r.at(k)))
	}
	r.wordEnd(&o, e, from, lo, hi)
	if a, b := r.inItsSentence(lo, hi, e); a != lo || b != hi {
		shown := o
		r.wordEnd(&shown, e, from, a, b)
		o.shown = &shownAs{shown.Quote, o.Question, shown.Question}
	}
	return o
}

// wordEnd words the question of an end, with the words from lo to hi quoted of it.
func (r *reading) wordEnd(o *Open, e *looseEnd, from, lo, hi int) {
	o.Place = r.placeAround(lo, hi, e.lo).by("said: " + r.text(e.lo, e.hi))
	o.listed = e.signal == "recap" || e.signal == "closing" && r.onlyLists(e)
	if e.signal == "recap" {
		o.Rule = "recap: " + r.text(e.lo, e.hi)
	}
	o.Question = spokenQuestion(*o, e.sure && o.About != "" && (e.topic >= 0 || e.noun >= 0 || o.LedgerID != "" || e.kind == Unsure), r.perhapsOf(from, lo, hi, e))
	if e.signal == "lack" && e.topic >= 0 && r.mentions[e.topic].lo >= e.hi-1 && r.mentions[e.topic].from-e.hi < 4 {
		o.Question = spokenQuestion(*o, false, "") // "I'd no pins left, so …": it is not the pins that stand in
	}
	if e.signal == "recap" && e.noun >= 0 && len(r.lex.Lemmas(r.toks[e.noun].s)) > 0 {
		o.Question = spokenQuestion(*o, false, "") // "bleed it": what is to be done, of no thing
	}
	if e.signal == "again" && o.Before == BeforeLater && o.Due != "" {
		of := ""
		if o.About != "" && (e.topic >= 0 || e.noun >= 0) {
			of = " (the " + o.About + ")"
		}
		o.Question = "Has this been done" + of + ", " + o.Due + ": “" + o.Quote + "”?"
	}
	if e.signal == "no-locker" {
		of := "it"
		if o.About != "" {
			of = "the " + o.About
		}
		o.Question = "Has thread locker been put on " + of + " since: “" + o.Quote + "”?"
	}
	if e.signal == "out-of-reach" && o.About != "" {
		o.About = r.theOneNotReached(e, o.About)
		o.Question = "Is the one tight that the wrench did not reach (the " + o.About + "): “" + o.Quote + "”?"
	}
	if e.signal == "misfit" || e.signal == "unfitting" {
		what := "what is fitted"
		if e.sure && o.About != "" {
			what = "the " + o.About
		}
		o.Question = "Is " + what + " the right size and kind for this machine: “" + o.Quote + "”?"
	}
}

// perhapsOf names what an end that names no thing may be of, where the words quoted no
// longer do: what was taken for it, and what else was named right before.
func (r *reading) perhapsOf(from, lo, hi int, e *looseEnd) string {
	if e.sure || e.kind == Promise {
		return ""
	}
	var names, heads []string
	add := func(m *mention) {
		if len(names) == 2 || m.lo >= lo && m.lo < hi {
			return
		}
		for _, h := range heads {
			if h == m.head {
				return
			}
		}
		names, heads = append(names, shortName(r.nameOf(m))), append(heads, m.head)
	}
	if e.topic >= 0 {
		add(&r.mentions[e.topic])
	}
	for k := int(r.toks[lo].cl) - 1; k >= 0 && r.clauses[k].lo >= from; k-- {
		for _, mi := range slices.Backward(r.clauses[k].mentions) {
			if m := &r.mentions[mi]; r.topical(m) {
				add(m)
			}
		}
	}
	return strings.Join(names, ", or the ")
}

// briefly draws the words that are quoted of an end in, where they are many, to the clauses
// that leave it open: those of the cue and of the thing, what they hang on and what hangs
// on them, and as much of the talk before them as there is room for where no thing is sure.
func (r *reading) briefly(lo, hi int, e *looseEnd) (int, int) {
	plenty := 24
	if !e.sure {
		plenty = 30 // what no name is quoted for wants the talk around it
	}
	if hi-lo <= plenty {
		return lo, hi
	}
	from, to := int(r.toks[e.lo].cl), int(r.toks[e.hi-1].cl)
	if e.kind == Conflict {
		from, to = min(from, e.first), max(to, e.last)
	}
	for _, at := range e.also {
		if k := int(r.toks[at].cl); k > to && r.clauses[k].hi <= hi && r.clauses[k].hi-r.clauses[from].lo <= plenty {
			to = k
		}
	}
	if e.topic >= 0 {
		if k := r.mentions[e.topic].cl; k < from && r.clauses[k].lo >= lo && r.clauses[to].hi-r.clauses[k].lo <= plenty+6 {
			from = k
		} else if k > to && r.clauses[k].hi <= hi {
			to = k
		}
	}
	if e.noun >= 0 {
		from = min(from, int(r.toks[e.noun].cl))
	}
	one := func(a, b int) bool { return r.clauses[a].sentence == r.clauses[b].sentence }
	size := func() int { return r.clauses[to].hi - r.clauses[from].lo }
	if r.toks[r.clauses[from].lo].s == "what" && !e.sure { // "What I've not done. The earth test."
		for to+1 < len(r.clauses) && r.clauses[to+1].hi <= hi && r.clauses[to+1].hi-r.clauses[from].lo <= plenty {
			to++
		}
	}
	for from > 0 && one(from-1, from) && r.clauses[from-1].lo >= lo && (r.dependent(from) || !e.sure || size() < 6) && r.clauses[to].hi-r.clauses[from-1].lo <= min(plenty+6, 32) {
		from--
	}
	for to+1 < len(r.clauses) && one(to, to+1) && r.clauses[to+1].hi <= hi && (r.dependent(to+1) || len(r.clauses[to+1].opens) > 0) && r.clauses[to+1].hi-r.clauses[from].lo <= plenty+8 {
		to++
	}
	for to+1 < len(r.clauses) && one(to, to+1) && r.clauses[to+1].hi <= hi && r.clauses[to+1].hi-r.clauses[from].lo <= plenty {
		to++
	}
	if !e.sure || size() < 6 { // whole sentences before it, as many as there is room for
		for k := from - 1; k >= 0 && r.clauses[k].lo >= lo && r.clauses[to].hi-r.clauses[k].lo <= plenty; k-- {
			if k == 0 || !one(k-1, k) {
				from = k
			}
		}
	}
	for to+1 < len(r.clauses) && r.clauses[to+1].hi-r.clauses[from].lo <= plenty+8 && dangling.has(r.toks[r.clauses[to].hi-1].s) {
		to++ // a stop was put where none is
	}
	if size() >= hi-lo || size() < 3 {
		return lo, hi
	}
	return r.clauses[from].lo, r.clauses[to].hi
}

// dangling are words that end nothing.
var dangling = set("what how to the a an my of for and or but because which whether if when")

// dependent tells whether a clause says nothing without the one before it, or that one
// nothing without it: "when it's back in the hole", "I want to see it | run first".
func (r *reading) dependent(ci int) bool {
	first := &r.toks[r.clauses[ci].lo]
	switch first.s {
	case "when", "once", "before", "until", "till", "if", "because", "cause", "which", "that", "to", "who", "where", "after", "than", "or", "unless", "while", "as", "how", "what", "whether":
		return true
	}
	if ci == 0 {
		return false
	}
	last := &r.toks[r.clauses[ci].lo-1]
	return last.brk < brkComma && (first.is(wForm|wVerb|wParticle|wPreposition|wLinking) || last.is(wDeterminer|wPreposition|wLinking) || last.s == "what" || last.s == "how" || last.s == "to" || last.s == "and")
}

// valueOf gives what the value is of that an end doubts: the fastener of a torque
// or the thing of a size that was said there.
func (r *reading) valueOf(e *looseEnd, rec *Record) (name, id string) {
	at := r.at(e.lo)
	clip := int(r.talk.Words[r.toks[e.lo].w].Clip)
	for _, t := range rec.Torques {
		if t.Clip == clip && t.At > at-6 && t.At < at+4 {
			return t.Fastener, t.LedgerID
		}
	}
	for _, s := range rec.Sizes {
		if s.Clip == clip && s.At > at-6 && s.At < at+4 && !s.Sure {
			return s.Of, ""
		}
	}
	return "", ""
}

// tornBetween gives the fastener of which the sources of a conflict give values.
func (r *reading) tornBetween(e *looseEnd, rec *Record) (name, id string) {
	lo, hi := r.at(r.clauses[e.first].lo), r.at(max(e.hi, r.clauses[e.last].hi)-1)
	clip := int(r.talk.Words[r.toks[e.lo].w].Clip)
	for _, t := range rec.Torques {
		if t.Clip == clip && t.At >= lo-1 && t.At <= hi+1 && t.Fastener != "" {
			return t.Fastener, t.LedgerID
		}
	}
	return "", ""
}

// nameOf gives the fullest name of what a mention stands for.
func (r *reading) nameOf(m *mention) string {
	name := m.name
	if t := m.entry; t != nil && t.name != "" && (t.fastener || len(t.name) > len(name)) {
		name = t.name
		if t.side != "" && m.side != "" {
			name = t.side + " " + name
		}
	}
	return name
}

// namesNoMatter are words that stand where a matter does in talk of what is to be done, and name
// none: when it is done, and how good it is.
var namesNoMatter = set("second minute hour day night morning evening afternoon week weekend month year while time mile kilometre kilometer whenever wherever whatever yet soon later today tomorrow then now again enough grand fine good great okay lovely nice well hard easy same done")

// saidWords names an end by the speaker's own words where no thing is certain.
func (r *reading) saidWords(e *looseEnd) string {
	var words []string
	c := &r.clauses[r.toks[e.lo].cl]
	for i := c.lo; i < c.hi && len(words) < 6; i++ {
		if w := r.toks[i].s; !stopWords.has(w) && !dropWords.has(w) && !pronounsObj.has(w) && (i < e.lo || i >= e.hi) {
			words = append(words, w)
		}
	}
	if len(words) == 0 && e.topic >= 0 {
		return shortName(r.nameOf(&r.mentions[e.topic]))
	}
	return strings.Join(words, " ")
}

// unworked are the names of what is looked at, called or bought, and no work is done on.
var unworked = wordsOf("what nobody works on")

// spokenQuestion words what was left open in the talk: with the thing where it is
// certain or, as a perhaps, where it was named some way before; and always in the
// speaker's own words.
func spokenQuestion(o Open, sure bool, perhaps string) string {
	said := "“" + o.Quote + "”"
	of := ""
	if sure {
		of = " for the " + o.About
	}
	maybe := ""
	if perhaps != "" {
		maybe = " (the " + perhaps + ", perhaps)"
	}
	switch o.Kind {
	case LookUp:
		if sure {
			return "What is the value for the " + o.About + ", and which source gives it: " + said + "?"
		}
		return "Which value is meant here" + maybe + ", and which source gives it: " + said + "?"
	case Unfinished:
		if sure && !unworked.has(o.About[strings.LastIndexByte(o.About, ' ')+1:]) {
			return "Is the work on the " + o.About + " finished: " + said + "?"
		}
		return "Is this done since" + maybe + ": " + said + "?"
	case Unsure:
		return "What is right" + of + maybe + "? The recording is not sure: " + said + "."
	case Suspect:
		if sure {
			return "Can the value heard for the " + o.About + " be right: " + said + "?"
		}
		return "Can the value heard here be right" + maybe + ": " + said + "?"
	case Conflict:
		if sure {
			return "Which is right for the " + o.About + " of this machine: " + said + "?"
		}
		return "Which is right for this machine" + maybe + ": " + said + "?"
	case ReplaceLater:
		if sure {
			return "Has what stands in for now (the " + o.About + ") been replaced by the proper part: " + said + "?"
		}
		return "Has this been put right since" + maybe + ": " + said + "?"
	case NotTorqued:
		if sure {
			have := "Has"
			if isMany(o.About) {
				have = "Have"
			}
			return have + " the " + o.About + " been tightened for good since: " + said + "?"
		}
		return "Has this been tightened for good since" + maybe + ": " + said + "?"
	case NotRefitted, LockMissing:
		if sure {
			is := "Is"
			if isMany(o.About) {
				is = "Are"
			}
			return is + " the " + o.About + " in place now: " + said + "?"
		}
		return "Is it back on" + maybe + ": " + said + "?"
	case Promise:
		return "Is what was promised to viewers ready: " + said + "?"
	}
	return question(o)
}
