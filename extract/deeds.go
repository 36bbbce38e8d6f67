package extract

import (
	_ "embed"
	"sort"
)

// Whether an act is work of this job, done or being done, or only spoken of (a story, a
// warning, how a thing is held, what others do) is weighed with all that stands around it;
// what the rules take it for is one clue. The weights are fitted on talk in which careful
// readers judged every act (deeds_test.go).

//go:embed deeds.bin
var deedWeights string

// deedClues is how many weights there are.
const deedClues = 1 << 18

// The signs of an act that is work done. Their order is that of the weights: a new one comes
// last, and the weights are to be fitted again.
const (
	deedMood     sign = iota // how the rules take it
	deedKind                 // what is done
	deedRule                 // by which rule it was found
	deedVerb                 // the verb as it stands
	deedForm                 // how the verb ends, and what is done
	deedLeads                // the words right before it
	deedFollows              // the words right after it
	deedPair                 // two words beside each other
	deedBefore               // a word of the clause before it
	deedAfter                // a word of the clause after it
	deedOpens                // the first words of the clause
	deedSentence             // the first words of the sentence
	deedLast                 // a word of the clause before
	deedNext                 // a word of the clause after
	deedWho                  // who does it
	deedAround               // the moods of the clauses around it
	deedPast                 // how the acts before it were taken
	deedAhead                // how the rules take the acts after it
	deedThing                // what it is done to
	deedNaming               // how that is named
	deedOften                // how often that is spoken of
	deedEnds                 // what ends before and after it
	deedLong                 // how long its clause and its sentence are
	deedWhere                // how far the talk is
	deedMany                 // how many acts stand close to it
	deedTense                // when what is told beside it takes place
	deedSigns
)

// deedHints gives all signs of the act k. done tells how those before it were weighed.
func (r *reading) deedHints(row []hint, k int, done []bool) []hint {
	add := func(s sign, value int) { row = append(row, hint{s, value}) }
	a := &r.acts[k]
	c := &r.clauses[a.cl]
	kind := wordClue(a.action.Name)
	ruled := bit(a.happened())
	add(deedMood, ruled)
	add(deedMood, 2+ruled+kind)
	for b := range moods {
		if a.mood>>b&1 != 0 {
			add(deedMood, 64+b)
			add(deedMood, 64+b+kind)
		}
	}
	add(deedRule, wordClue(a.rule)+ruled)
	add(deedKind, kind)
	start, verb, form := a.lo, 0, 7
	if a.verb >= 0 {
		start = a.verb
		said := r.toks[start].s
		verb, form = wordClue(said), verbForm(said)
		if r.lemma1(said) == said {
			form += 8
		}
		if a.subject {
			form += 16
		}
		add(deedVerb, verb)
		add(deedVerb, 1<<28+verb+ruled)
		add(deedForm, 1<<27+form*2+ruled)
	}
	add(deedForm, form)
	add(deedForm, form+kind)
	row = r.deedWords(row, a, start, verb, form)
	row = r.deedClauses(row, a, form)
	// who does it
	who, far := "", 0
	for i := start - 1; i >= c.lo && i > start-10 && who == ""; i-- {
		switch {
		case r.toks[i].is(wSubject | wPronoun):
			who, far = r.toks[i].s, start-i
		case r.toks[i].men >= 0:
			who, far = "thing", start-i
		}
	}
	w := wordClue(who)
	add(deedWho, w)
	add(deedWho, w+min(far, 5)*2+1)
	add(deedWho, 1<<28+w+form)
	add(deedWho, 1<<27+w*31+kind)
	// what it is done to
	add(deedNaming, 64+wordClue(a.pronoun)+form)
	how := bitsOf(a.subject, a.unknown, a.bare, a.heads, a.byHand, a.ifOff, len(a.objects) > 0)
	add(deedNaming, 1024+how)
	add(deedNaming, 2048+how+kind)
	if len(a.objects) == 0 {
		add(deedThing, 1)
	} else {
		m := &r.mentions[a.objects[0]]
		how := bitsOf(m.definite, m.plural, m.isNew, m.isOld, m.count > 0, m.prep != "", m.from < m.lo)
		add(deedNaming, how)
		add(deedNaming, 256+how*32+form)
		if m.from < m.lo {
			add(deedNaming, 1<<28+r.wordClueAt(m.from))
		}
		head := wordClue(m.head)
		add(deedThing, head)
		add(deedThing, head+kind)
		add(deedThing, 1<<28+int(m.kind))
		all := r.namedAt(m.head)
		before := sort.Search(len(all), func(i int) bool { return r.mentions[all[i]].lo >= m.lo })
		add(deedOften, min(before, 4)*8+min(len(all)-before-1, 4))
		add(deedOften, 64+min(len(all), 6))
	}
	return r.deedActs(row, k, done, kind)
}

// deedWords adds the signs of the words around an act.
func (r *reading) deedWords(row []hint, a *act, start, verb, form int) []hint {
	add := func(s sign, value int) { row = append(row, hint{s, value}) }
	c := &r.clauses[a.cl]
	word := func(i int) int {
		if i < c.lo || i >= c.hi {
			return 1
		}
		return r.wordClueAt(i)
	}
	for d := 1; d <= 4; d++ {
		add(deedLeads, word(start-d)+d)
		if d <= 2 {
			add(deedLeads, 1<<28+word(start-d)+d+form)
		}
		add(deedFollows, word(a.hi-1+d)+d)
	}
	add(deedPair, word(start-1)*31+word(start-2))
	add(deedPair, 1<<28+word(start-1)*31+verb)
	add(deedPair, 1<<27+word(a.hi)*31+word(a.hi+1))
	add(deedPair, 1<<26+word(a.hi)*31+verb)
	add(deedPair, 1<<25+word(a.hi-1)*31+verb)
	for i := max(c.lo, start-12); i < start; i++ {
		add(deedBefore, word(i))
	}
	for i := start + 1; i < min(c.hi, start+14); i++ {
		add(deedAfter, word(i))
	}
	add(deedOpens, word(c.lo))
	add(deedOpens, word(c.lo)*31+word(c.lo+1)+1)
	add(deedEnds, int(r.toks[max(c.lo-1, 0)].brk)*8+int(r.toks[c.hi-1].brk))
	add(deedEnds, 64+int(r.toks[min(a.hi, len(r.toks))-1].brk)*8+form)
	add(deedLong, min(c.hi-c.lo, 20))
	add(deedLong, 32+min(start-c.lo, 12))
	add(deedLong, 64+min(c.hi-a.hi, 12))
	return row
}

// deedClauses adds the signs of the clauses around an act.
func (r *reading) deedClauses(row []hint, a *act, form int) []hint {
	add := func(s sign, value int) { row = append(row, hint{s, value}) }
	c := &r.clauses[a.cl]
	first := a.cl
	for first > 0 && a.cl-first < 12 && r.clauses[first-1].sentence == c.sentence {
		first--
	}
	if f := r.clauses[first].lo; f < c.lo {
		add(deedSentence, r.wordClueAt(f))
		add(deedSentence, r.wordClueAt(f)*31+r.wordClueAt(f+1))
	}
	tenses := 0
	for d := -4; d <= 4; d++ {
		k := a.cl + d
		if k < 0 || k >= len(r.clauses) {
			continue
		}
		b := &r.clauses[k]
		same := bit(b.sentence == c.sentence)
		switch d {
		case -2, -1:
			for i := max(b.lo, b.hi-10); i < b.hi; i++ {
				add(deedLast, r.wordClueAt(i)-d*2+same)
			}
		case 1, 2:
			for i := b.lo; i < min(b.hi, b.lo+8); i++ {
				add(deedNext, r.wordClueAt(i)+d*2+same)
			}
		}
		for m := range moods {
			if b.mood>>m&1 != 0 {
				add(deedAround, (d+4)*32+m)
				if d == 0 {
					add(deedAround, 512+m+form*32)
				}
			}
		}
		t := r.tense(b)
		add(deedTense, (d+4)*4+t)
		tenses = tenses*3 + t
	}
	add(deedTense, 1<<16+r.tense(c)*32+form)
	add(deedTense, 1<<20+tenses)
	add(deedWhere, a.lo*10/len(r.toks))
	return row
}

// deedActs adds the signs of the acts before and after the act k.
func (r *reading) deedActs(row []hint, k int, done []bool, kind int) []hint {
	add := func(s sign, value int) { row = append(row, hint{s, value}) }
	a := &r.acts[k]
	near := func(o *act) int {
		switch {
		case o.cl == a.cl:
			return 2
		case r.clauses[o.cl].sentence == r.clauses[a.cl].sentence:
			return 1
		}
		return 0
	}
	before := 0
	for n := 1; n <= 6 && n <= k; n++ {
		o, d := &r.acts[k-n], bit(done[k-n])
		if n <= 3 {
			add(deedPast, n*8+near(o)*2+d)
			add(deedPast, 64+n*64+d*32+gapOf(r.since(o.lo, a.lo)))
		}
		if n == 1 {
			add(deedPast, 1<<28+d+wordClue(o.action.Name)*31+kind)
		}
		before += d
	}
	add(deedPast, 512+before)
	after := 0
	for i := k + 1; i < min(len(r.acts), k+5); i++ {
		o := &r.acts[i]
		d := bit(o.happened())
		if i == k+1 {
			add(deedAhead, d*64+near(o)*8+gapOf(r.since(a.lo, o.lo)))
			add(deedAhead, 1<<28+d+wordClue(o.action.Name)*31+kind)
		}
		after += d
	}
	add(deedAhead, 512+after)
	many := 0
	for i := max(0, k-5); i < min(len(r.acts), k+6); i++ {
		many += bit(i != k && r.since(min(a.lo, r.acts[i].lo), max(a.lo, r.acts[i].lo)) < 12)
	}
	add(deedMany, many)
	return row
}

// bit gives 1 for what is so.
func bit(so bool) int {
	if so {
		return 1
	}
	return 0
}

// bitsOf gives a number of which each bit tells whether one is so.
func bitsOf(all ...bool) int {
	n := 0
	for _, so := range all {
		n = n*2 + bit(so)
	}
	return n
}

// verbForm tells how a verb ends.
func verbForm(s string) int {
	n := len(s)
	switch {
	case n > 4 && s[n-3:] == "ing":
		return 1
	case n > 3 && s[n-2:] == "ed":
		return 2
	case n > 3 && s[n-2:] == "en":
		return 3
	case n > 2 && s[n-1] == 's':
		return 4
	}
	return 0
}

// deed gives the place of the weight that a hint has for an act.
func (h hint) deed() clue {
	return clue((uint32(h.sign)<<12 + uint32(h.value)) * 2654435761 >> 14)
}

// deedWeight adds up what the signs of an act weigh.
func deedWeight(row []hint, weights string) (sum int) {
	for _, h := range row {
		sum += int(int8(weights[h.deed()]))
	}
	return sum
}

// ruledDone is by how much an act that the rules take for work done is given more weight than
// its clues tell: plain talk is what they are made for.
const ruledDone = 12

// deeds weighs for each act that the rules take for work done whether it is. What they do not
// take for it stays so: it is often still to do.
func (r *reading) deeds() {
	done := make([]bool, len(r.acts))
	var none []*act
	for k := range r.acts {
		a := &r.acts[k]
		r.hintRow = r.deedHints(r.hintRow[:0], k, done)
		sum := deedWeight(r.hintRow, deedWeights)
		if done[k] = sum > 0; r.deedTold != nil {
			done[k] = r.deedTold(a, r.hintRow, sum)
		}
		if sum+ruledDone < 0 && a.happened() && !(a.verb >= 0 && !a.subject && r.toks[a.verb].s == "check") && !r.plainlyBack(a) {
			none = append(none, a) // a check too many does no harm
		}
	}
	r.deedDone = done
	for _, a := range none { // only now: how the rules take an act tells of those around it
		a.mood |= framed
	}
}

// plainlyBack tells of a thing that is named and said to be back in its place ("the cable's back
// on"): nothing around it makes that a story.
func (r *reading) plainlyBack(a *act) bool {
	if a.action.Name != "fit" || a.mood != 0 || len(a.objects) == 0 {
		return false
	}
	i := r.mentions[a.objects[0]].hi
	if w := r.word(i); w != "'s" && w != "is" && w != "'re" && w != "are" {
		return false
	}
	on := r.word(i + 2)
	return r.word(i+1) == "back" && (on == "on" || on == "in") && i+2 < r.clauses[a.cl].hi
}
