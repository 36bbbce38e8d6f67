package extract

import (
	"slices"
	"strings"
)

// looksAt are the actions that are done to how a thing is: "check the line's on straight".
var looksAt = map[string]bool{"inspect": true, "test": true, "measure": true, "mark": true}

// ofLast tells whether a "that" at a token tells more of what is named right before it:
// "and the nut, that's spun on for now".
func (r *reading) ofLast(i int) bool {
	return r.word(i) == "that" && i > 0 && r.toks[i-1].men >= 0 && r.toks[i-1].brk < brkSentence
}

// inGeneral are the words that begin what is so in general, and not done now.
var inGeneral = set("usually normally typically generally ordinarily sometimes")

// putOn are the acts by which a thing goes back.
var putOn = map[string]bool{"fit": true, "start by hand": true}

// onDayGone tells whether the day that a cue names is one on which an act was done, and not one
// for which it is put off: "we craned it off on Thursday", "I've tightened them, and tomorrow with
// the value". Of a verb that is the same of yesterday and of tomorrow only "I've" tells.
func (r *reading) onDayGone(c *clause, a *act, q *cue) bool {
	if a.verb < 0 || q.lo <= a.verb {
		return false
	}
	w := r.toks[a.verb].s
	l := r.lemma1(w)
	i := a.verb - 1
	for i > c.lo && r.toks[i].is(wDrop) {
		i--
	}
	if p := r.word(i); i >= c.lo && (p == "'ve" || p == "have" || p == "has" || p == "had" || p == "was" || p == "were") {
		return l != w || alikeInPast.has(w)
	}
	if !days.has(r.toks[q.hi-1].s) || r.toks[q.lo].s != "on" || l == w || strings.HasSuffix(w, "s") || strings.HasSuffix(w, "ing") || alikeInPast.has(w) {
		return false
	}
	if a.subject {
		return len(a.objects) > 0 || a.pronoun != ""
	}
	return i >= c.lo && r.toks[i].is(wSubject)
}

// moodOf tells in what mood an act is spoken of, by the cues before its verb.
func (r *reading) moodOf(ci int, a *act) mood {
	c := &r.clauses[ci]
	var m mood
	v := a.verb
	if v < 0 {
		v = a.lo
	}
	for n, q := range c.cues {
		switch {
		case q.mood&negated != 0 && r.word(q.hi) == "forget" && r.next(q.hi) == "to":
			// "don't forget to put the spacer back": it is to be done
		case q.mood&negated != 0:
			if r.ownVerb(a, q.hi) {
				break // "never touched shifter box slides on": what was not done is another thing
			}
			if q.hi <= v && v-q.lo <= 7 && (a.verb >= 0 || v-q.hi <= 2) {
				m |= negated
			} else if q.lo >= a.lo && q.lo <= a.hi && !(q.lo == a.hi && (a.verb < 0 || fastens[a.action.Name] && a.action.Name != "slacken") && r.toks[a.hi-1].brk >= brkComma) { // not "bolts in, not tight", "run them down snug, not tight"
				m |= negated
			}
		case q.mood&conditional != 0:
			// "if you …" frames what follows it; "otherwise" what follows it
			if q.lo <= v {
				m |= conditional
			}
		case q.mood&hypothetical != 0:
			if q.hi <= v+1 && v-q.lo <= 6 {
				m |= hypothetical
			}
		case q.mood&other != 0:
			if q.hi <= v && v-q.lo <= 8 && !(a.subject && a.pronoun == "it" && q.hi == v && r.toks[q.lo].s == "he") {
				m |= other
			}
		}
		if q.mood&announced != 0 && r.onDayGone(c, a, &q) {
			if days.has(r.toks[q.hi-1].s) && r.toks[q.lo].s == "on" {
				c.own().cues[n].mood = offCamera // done while nobody filmed
				c.mood = c.mood&^announced | offCamera
				m |= offCamera
			}
			continue
		}
		m |= q.mood & (announced | offCamera | aside | greeting | notNeeded)
	}
	if a.verb > c.lo && !a.subject {
		switch p := r.toks[a.verb-1].s; {
		case p == "nearly" || p == "almost":
			m |= negated // "I nearly threw that out"
		case p == "to" && r.word(a.verb-2) == "about" && (r.word(a.verb-3) == "was" || r.word(a.verb-3) == "were"):
			m |= framed // "she was about to bin it"
		}
	}
	if a.verb >= 0 && !a.subject {
		s := r.toks[a.verb].s
		prev := ""
		if a.verb > c.lo {
			prev = r.toks[a.verb-1].s
		}
		lemma := false
		for _, l := range r.lex.Lemmas(s) {
			lemma = lemma || l == s && !(strings.HasSuffix(s, "ing") && len(s) > 5) // "cutting" begins an idiom of its own
		}
		if k := a.verb - 2; k >= c.lo && besides.has(prev) && passiveBe.has(r.toks[k].s) {
			prev = r.toks[k].s // "the cable's still threaded through"
		}
		passive := prev == "'s" && r.word(a.verb-2) != "let" || prev == "is" || prev == "are" || prev == "was" || prev == "were" || prev == "be" || prev == "been" || prev == "'re"
		// "what I do is lean it over" is no passive, "it's set" is
		cleft := lemma && (prev == "is" || prev == "'s" || prev == "was") && r.cleft(c, a.verb)
		switch {
		case cleft:
		case prev == "like" && strings.HasSuffix(s, "ing"):
			m |= framed // "it's like pulling a credit card out of a tight wallet"
		case strings.HasSuffix(s, "ing") && (prev == "wants" || prev == "needs" || prev == "want" || prev == "need"):
			m |= announced // "the oiler wants filling"
		case passive && putOn[a.action.Name] && prev != "was" && prev != "were" && a.hi > a.verb+1 && !r.ofLast(a.verb-2):
			a.ifOff = true // "the plug's screwed back in": done where it had come off, else how it is held
		case passive && a.action.Name == "tighten" && prev != "was" && prev != "were" && a.hi > a.verb+1:
			a.ifOff = true // "they're pinched up": done where they were on and no more, else how they were found
		case passive && a.action.Name == "remove" && prev != "was" && prev != "were" && a.hi > a.verb+1 && r.toks[a.hi-1].is(wOff) && (a.hi == c.hi || r.toks[a.hi-1].brk >= brkComma || r.toks[a.hi].s == "now" || r.toks[a.hi].s == "already" || r.toks[a.hi].s == "and"):
			// "it's knocked out now": done
		case passive && !strings.HasSuffix(s, "ing"):
			m |= framed // "it's cracked", "both are split"
		case lemma:
		case strings.HasSuffix(s, "s"):
			m |= framed // "it holds the crank on": what a thing does, not what is done to it
		case strings.HasSuffix(s, "ing"):
			if passive && !r.cleft(c, a.verb) && !r.personBefore(c, a.verb) {
				m |= framed // "so nothing's rubbing on the deck"
			}
			if a.verb > c.lo && (r.toks[a.verb-1].men >= 0 || prepositions.has(prev) && prev != "by" && prev != "of" || prev == "thing" || prev == "things" || prev == "nothing" || prev == "something" || prev == "everything" || prev == "you" || prev == "about" || prev == "what" || prev == "be" || prev == "been") {
				m |= framed
			}
		case prev == "comes" || prev == "come" || prev == "came":
			m |= framed
		}
	}
	if ci > 0 && r.toks[c.lo].s == "and" && a.verb == c.lo+1 && r.clauses[ci-1].sentence == c.sentence && (r.toks[r.clauses[ci-1].lo].s == "while" || r.toks[r.clauses[ci-1].lo].s == "whilst") {
		m |= framed // "while you slide the body on | and rotate it"
	}
	head := c.lo
	for head+1 < c.hi && (r.toks[head].s == "and" || r.toks[head].s == "so" || r.toks[head].s == "but" || r.toks[head].s == "then") {
		head++ // "and before you go putting four foot of pipe on that"
	}
	switch r.toks[head].s {
	case "while", "whilst":
		if !r.besideIt(ci, head, a) {
			m |= framed
		}
	case "when", "before", "until", "till", "as", "whenever", "where":
		m |= framed
	case "which", "how", "why", "whether":
		if n := r.next(head); r.toks[head].s == "how" && (n == "do" || n == "does" || n == "did" || n == "would") {
			m |= asked // "how do you hold it up, though"
		}
		if head+1 < c.hi && (r.toks[head+1].men >= 0 || r.toks[head+1].s == "one" || r.toks[head+1].s == "way" || r.toks[head+1].s == "side") {
			m |= framed // "which cable goes in front"
		}
	case "once", "after", "since":
		m |= framed
	case "because", "cause", "coz", "cuz":
		if a.subject {
			m |= framed // why, not what
		}
	}
	if a.subject && a.action.Name == "fit" && len(a.objects) > 0 {
		switch r.word(r.mentions[a.objects[0]].from - 1) {
		case "when", "once", "until", "till", "whenever":
			m |= framed // "you do that when the wheel's on"
		}
	}
	if a.verb-2 >= c.lo && !a.subject && r.toks[a.verb-1].s == "should" {
		if w := r.toks[a.verb-2]; w.men >= 0 || w.s == "it" || w.s == "that" || w.s == "they" {
			m |= framed // "the belt should lift about three inches"
		}
	}
	if a.verb > c.lo && a.verb-1 == c.lo && r.toks[c.lo].s == "to" && !a.subject && (c.lo == 0 || r.toks[c.lo-1].brk >= brkSentence) {
		m |= framed // "To get it right out you've got to …"
	}
	if a.verb > c.lo && r.toks[a.verb-1].s == "to" {
		// what something is done for: "to hold the weight"; but "going to", "want to" do it
		switch p := r.word(a.verb - 2); p {
		case "going", "want", "need", "have", "got", "go", "ready", "has", "'d", "like", "about", "able", "remember", "ought", "wanna", "you", "just", "next", "is", "'s", "start", "starting", "begin", "try", "trying", "sure", "wants", "needs", "had", "up", "forget":
			if (p == "wants" || p == "needs") && !a.subject {
				m |= framed
			}
		default:
			if a.verb-2 >= c.lo {
				m |= framed
			}
		}
	}
	if ci < r.toolList[1] && m&offCamera == 0 && !r.madeSafe(c, a) && (ci < r.toolList[0] || !r.partAmong(a.objects)) {
		m |= framed // what the job will be, and what it takes
	}
	// the consequence of a condition, in the same sentence
	for k := ci - 1; k >= 0 && k >= ci-3 && m&conditional == 0 && r.clauses[k].sentence == c.sentence; k-- {
		p := &r.clauses[k]
		if p.mood&conditional != 0 && (r.toks[p.lo].s == "if" || r.namedAndIf(p)) {
			m |= conditional
		}
	}
	if a.verb > c.lo && !a.subject {
		// what others do, what happens to whoever is careless, what a thing has
		p, pp := r.toks[a.verb-1].s, ""
		if a.verb-2 >= c.lo {
			pp = r.toks[a.verb-2].s
		}
		s := r.toks[a.verb].s
		will := p == "'ll" || p == "will" || p == "can" || p == "could" || p == "might" || p == "'d" || p == "would"
		if (p == "that" || p == "which") && r.nounAt(a.verb-2) && (a.verb-1 > c.lo || r.toks[a.verb-2].brk <= brkComma) {
			m |= framed // "two screws that hold the disc on"
		}
		if strings.HasSuffix(s, "ing") && (p == "them" || p == "those" || p == "these" || p == "ones") && pp != "keep" && pp != "am" && pp != "'m" {
			m |= framed // "four of them holding the housing down"
		}
		if s == "flush" && (a.verb+1 >= c.hi || flushWith.has(r.toks[a.verb+1].s)) {
			m |= framed // "a block of wood, flush, and a little grease": no flushing
		}
		if linking.has(p) && itIs.has(pp) && s == r.lemma1(s) && !sameParticiple.has(s) && r.plainVerb(s) {
			m |= framed // "that's thread in there": a name
		}
		if s == "got" && p == "you" && (countOf[r.next(a.verb)] > 0 || r.next(a.verb) == "a" || r.next(a.verb) == "an") {
			m |= framed // "you got one plug on it": what it has
		}
		if s == "got" && a.action.Name == "mark" && (p == "'ve" || p == "have") {
			m |= framed // "I've got a picture"
		}
		if p == "just" && pp == "you" && s != r.lemma1(s) && !strings.HasSuffix(s, "ing") {
			m |= framed // "you just blew the seal out": what comes of doing it wrong
		}
		if p == "they" || (pp == "you" || pp == "it" || pp == "that" || pp == "just") && will && damages.has(r.lemma1(s)) || s == "got" && r.hasGot(c, a.verb) && a.action.Name != "start by hand" {
			m |= framed
		}
	}
	if a.verb-2 >= c.lo && !a.subject {
		// "it'll pull any hill": what the machine does
		if w, will := r.toks[a.verb-2].s, r.toks[a.verb-1].s; (will == "'ll" || will == "will" || will == "would" || will == "can") && (w == "it" || w == "that" || w == "they" || w == "she" || w == "he" || w == "this") {
			m |= framed
		}
	}
	// "you'd pull the lid off, drain the oil": the frame holds while nobody else acts
	if ci > 0 && r.clauses[ci-1].sentence == c.sentence && !a.subject && a.verb >= 0 && (a.verb == c.lo || a.verb == c.lo+1 && (r.toks[c.lo].s == "and" || r.toks[c.lo].s == "then" || r.toks[c.lo].s == "or")) {
		for _, ai := range r.clauses[ci-1].acts {
			m |= r.acts[ai].mood & (hypothetical | conditional)
		}
		for i := r.clauses[ci-1].lo; i+1 < r.clauses[ci-1].hi; i++ {
			if r.toks[i].s == "you" && r.toks[i+1].s == "'d" {
				m |= hypothetical // "you'd drop the drive, split the case"
			}
		}
	}
	if v-3 >= c.lo && r.toks[v-1].s == "to" && r.toks[v-2].s == "had" && r.toks[v-3].s == "you" {
		m |= other // "on the old one you had to take the whole strut off"
	}
	if v-2 >= c.lo && r.toks[v-1].s == "'d" && r.toks[v-2].s == "you" {
		m |= hypothetical
	}
	if c.mood&asked != 0 {
		m |= asked
	}
	if a.subject && a.verb > c.lo && a.action.Name == "fit" {
		if w := r.toks[a.verb-1].s; w == "'ll" || w == "will" || w == "would" || w == "should" || w == "might" {
			m |= framed // "it'll go right through your glove": what would be, not what was done
		}
	}
	if a.subject && a.verb >= 0 && (r.toks[a.verb].s == "coming" || r.toks[a.verb].s == "going") && len(r.acts) == 0 && r.since(0, a.lo) < 30 {
		m |= announced // "so the pump's coming off and it's getting seals": what the job will be
	}
	if a.subject && a.verb > c.lo && r.toks[a.verb].s == "be" && (a.action.Name == "tighten" || a.action.Name == "slacken") && (r.toks[a.verb-1].s == "'ll" || r.toks[a.verb-1].s == "will") {
		m |= framed // "it'll be tight on the bike"
	}
	if a.subject && a.verb > c.lo && r.toks[a.verb].s == "be" && ought.has(r.toks[a.verb-1].s) {
		m |= framed // "they must be loose": how it has to be
	}
	if a.verb > c.lo && !a.subject && stays.has(r.lemma1(r.toks[a.verb].s)) && strings.HasSuffix(r.toks[a.verb].s, "ing") && (passiveBe.has(r.toks[a.verb-1].s) || r.toks[a.verb-1].s == "just") && !(r.word(a.verb-2) == "i") {
		m |= framed // "she's sitting on nothing"
	}
	if a.verb >= 0 && !a.subject && len(a.objects) == 0 && a.verb+2 < c.hi && r.toks[a.verb+1].s == a.pronoun && r.toks[a.verb+1].brk == brkNone && (r.toks[a.verb+2].s == "'s" || r.toks[a.verb+2].s == "is") && !looksAt[a.action.Name] {
		m |= framed // "mate, it's two hours": what is said of it, not what is done to it
	}
	if a.verb >= 0 && !a.subject && r.word(a.hi) == "mine" || a.verb >= 0 && r.says1(c, a.verb, "mine") && r.toks[a.verb].s == "got" {
		m |= framed // "I've got a bungee on mine"
	}
	if a.subject && a.verb >= 0 && (r.word(a.hi) == "on" || r.word(a.hi-1) == "on") {
		for i := a.hi; i < min(c.hi, a.hi+3); i++ {
			if bodily.has(r.toks[i].s) && r.word(i-2) != "with" && (r.toks[i-1].s == "my" || r.toks[i-1].s == "your" || r.toks[i-1].s == "his") {
				m |= framed // "it came down on my neck"; not "on with my fingers"
			}
		}
	}
	if a.verb > c.lo && inGeneral.has(r.toks[c.lo].s) {
		m |= framed // "usually the pulley goes on, then the washer"
	}
	if a.verb > c.lo && (r.toks[a.verb].s == "snapped" || r.toks[a.verb].s == "sheared") {
		switch r.toks[a.verb-1].s {
		case "i", "you", "and", "then", "just", "'ve":
		default:
			m |= framed // "the head snapped clean off it"
		}
	}
	if a.verb > c.lo && r.toks[a.verb-1].s == "i" {
		for i := a.hi; i < min(c.hi+1, a.hi+3); i++ {
			if n := r.next(i); r.word(i) == "once" && (r.toks[i].brk >= brkComma || n == "and") {
				m |= hypothetical // "I put one on backwards once": long ago
			}
		}
	}
	if a.subject && a.verb >= 0 && whichThread.has(r.word(a.hi)) && strings.HasSuffix(r.toks[a.verb].s, "s") && (a.action.Name == "remove" || a.action.Name == "slacken") && (a.pronoun == "one" || a.pronoun == "this") {
		m |= framed // "this one undoes clockwise": which way its thread goes
	}
	if a.subject && a.verb >= 0 && a.pronoun != "" && a.action.Name == "fit" && r.toks[c.lo].s == "so" && c.lo > 0 && r.toks[c.lo-1].brk < brkSentence && a.verb <= c.lo+3 && (r.says1(c, a.verb, "way") || r.says1(c, a.verb, "same") || r.says1(c, a.verb, "where")) {
		m |= framed // "mark it first so it goes back the same way"
	}
	if a.subject && a.verb-2 >= c.lo && a.action.Name == "remove" && r.toks[a.verb-1].s == "to" && (r.toks[a.verb-2].s == "got" || r.toks[a.verb-2].s == "has" || r.toks[a.verb-2].s == "have" || r.toks[a.verb-2].s == "needs") {
		for i := a.verb; i < min(c.hi, a.hi+2); i++ {
			if w := r.toks[i].s; w == "back" || w == "again" {
				m |= announced // "it's got to come back out anyway"
			}
		}
	}
	if w := r.word(a.verb); a.subject && a.verb >= 0 && a.action.Name == "fit" && (w == "going" || w == "goes" || w == "go" || r.next(a.verb) == "going" && w != "was") {
		// "the liner's going in after I've done the light", "the guard goes back on when the clip's in"
		for i := a.hi; i < min(len(r.toks), a.hi+3) && r.toks[i-1].brk <= brkComma; i++ {
			if w, n := r.toks[i].s, r.next(i); (w == "after" || w == "once" || w == "when") && (n == "i" || n == "that" || n == "the" || n == "this" || n == "it") {
				m |= announced
			}
		}
	}
	if a.subject && a.verb >= 0 && a.action.Name == "fit" && (r.toks[a.verb].s == "was" || r.toks[a.verb].s == "were") && a.hi == a.verb+2 {
		m |= framed // "the thick one was on top"
	}
	if a.subject && a.verb > c.lo && r.asItWas(c, a) {
		m |= framed // "same way it came out", "the hole it came out of"
	}
	if m&(negated|conditional|hypothetical|other|asked|aside|greeting|notNeeded|announced|framed) == 0 {
		a.mood = m
		m |= r.mooted(ci, a)
	}
	// "nobody touches the lever, 'cause you'll spit the pistons out"
	if w := r.toks[c.lo].s; (w == "or" || w == "cause" || w == "because" || w == "cuz" || w == "coz" || w == "otherwise" || w == "else") && v > c.lo {
		for i := c.lo + 1; i < v; i++ {
			if r.toks[i].s == "'ll" || r.toks[i].s == "will" || r.toks[i].s == "'d" {
				m |= framed
			}
		}
	}
	if a.verb >= 0 && !a.subject && r.forbiddenNext(ci) || r.outcomeOfYours(ci, a) {
		m |= framed
	}
	if r.onSomeOnly(ci) {
		m |= conditional
	}
	if a.verb >= 0 && !a.subject && (r.wantsRenewing(ci, a) || r.wantedLater(ci, a)) {
		m |= announced
	}
	// "when it's smooth they're finished", "you squeeze on that barrel and it's junk"
	if a.action.Name == "discard" && a.subject && a.pronoun != "" {
		for k := ci; k >= 0 && r.clauses[k].sentence == c.sentence && r.since(r.clauses[k].lo, a.lo) < 8; k-- {
			p := &r.clauses[k]
			for i := p.lo; i < min(p.hi, a.lo) && i < p.lo+2; i++ {
				if w := r.toks[i].s; w == "when" || w == "whenever" || w == "if" || w == "once" || k < ci && w == "you" && i+1 < p.hi && r.isVerbForm(r.toks[i+1].s) && r.toks[i+1].s != "'ve" {
					m |= conditional
				}
			}
		}
	}
	if a.verb >= 0 && !a.subject && r.plainVerb(r.toks[a.verb].s) && r.toldForHarm(ci, a) {
		m |= conditional
	}
	// "don't …, it'll go straight through your hand": what a warning threatens
	if ci > 0 && a.subject && v > c.lo && (r.toks[v-1].s == "'ll" || r.toks[v-1].s == "will") {
		if p := &r.clauses[ci-1]; p.sentence == c.sentence && p.mood&warned != 0 {
			m |= framed
		}
	}
	return m
}

// madeSafe tells whether somebody shut, opened or switched off something before the tools were
// named: "I shut this valve and I opened the tap on the tank". That is done, and no plan.
func (r *reading) madeSafe(c *clause, a *act) bool {
	if a.verb <= c.lo || a.subject || len(a.objects) == 0 || r.toks[a.verb-1].s != "i" && r.toks[a.verb-1].s != "'ve" {
		return false
	}
	switch w := r.toks[a.verb].s; a.action.Name {
	case "switch off", "open", "drain", "disconnect":
		return !r.plainVerb(w) || r.lemma1(w) != w || w == "shut"
	case "fit":
		return w == "shut" || w == "closed"
	}
	return false
}

// besideIt tells whether what is told after "while" is work of its own beside what
// is told before it: "hold that there while I get the caliper over".
func (r *reading) besideIt(ci, head int, a *act) bool {
	if w := r.next(head); ci == 0 || a.verb < 0 || a.subject || left[a.action.Name] == "" || w != "i" || a.verb > head+3 || !r.plainVerb(r.toks[a.verb].s) {
		return false
	}
	p := &r.clauses[ci-1]
	return p.sentence == r.clauses[ci].sentence && slices.ContainsFunc(p.acts, func(ai int) bool {
		return !r.acts[ai].subject && r.acts[ai].happened() || r.acts[ai].action.Name == "support"
	})
}

// toldForHarm tells whether what is told to do is only told for what comes of it: "take
// the cap off hot and it'll have the skin off your hand".
func (r *reading) toldForHarm(ci int, a *act) bool {
	c := &r.clauses[ci]
	for i := a.verb - 2; i >= max(0, a.verb-5) && r.prev(a.verb) == "you" && (r.toks[i].brk < brkSentence || !r.stopHeard(ci)); i-- {
		if r.toks[i].s == "without" {
			return true // "without it you squash the bearings"
		}
	}
	for i := c.lo; i < a.verb; i++ {
		if w := r.toks[i].s; !openers.has(w) && !dropWords.has(w) && w != "and" && w != "you" {
			return false
		}
	}
	told := c.lo < a.verb && r.says1(c, c.lo, "you")
	for i := a.hi; i+3 < len(r.toks) && i < a.hi+12 && r.clauses[r.toks[i].cl].sentence == c.sentence; i++ {
		who := i + 1
		switch n := r.toks[i+2].s; {
		case r.toks[i].s == "and":
			if told && (n == "can't" || n == "won't" || r.toks[who].s == "you" && n == "'ve" && r.toks[i+3].s != "got") {
				return true // "you put a lump on the end and it can't go home", "… and you've just bought a new one"
			}
		case told && r.toks[i-1].brk == brkComma:
			who = i // "you pull the hose off first, you'll stretch it every time"
		default:
			continue
		}
		next := r.toks[who+2]
		switch w := r.toks[who+1].s; {
		case told && (w == "can" || w == "could" || w == "might" || w == "may") && who == i && mayDo.has(next.s):
			return true // "you turn that blade by hand with the wire on, it can start"
		case w != "'ll" && w != "will":
			continue
		}
		switch r.toks[who].s {
		case "you":
			return !rewards.has(next.s)
		case "i":
			return false
		}
		return r.threatens(int(next.cl))
	}
	return false
}

// flushWith are the words before which "flush" tells how a thing sits; itIs those that with "is" tell
// what a thing is, and sameParticiple the verbs whose participle is their plain form.
var (
	flushWith      = set("and with all till until to against on at in or but")
	itIs           = set("it that there this which he she here what")
	sameParticiple = set("set put cut shut hit split let spread burst cast quit shed rid read beat come become run bent")
)

// mayDo are the verbs of what a machine may do to who is not careful.
var mayDo = set("start fire kick bite jump slip drop fall fly catch snap spring crush roll tip go spin move burn shock hurt take")

// forbiddenNext tells whether the sentence after a clause is no more than that it is not to be
// done: "You'll want to hit it harder. Don't."
func (r *reading) forbiddenNext(ci int) bool {
	c := &r.clauses[ci]
	if r.toks[c.hi-1].brk < brkSentence || c.hi >= len(r.toks) || r.kind(c.lo).is(wSubject) && r.toks[c.lo].s == "i" {
		return false
	}
	i := c.hi
	if r.toks[i].s != "don't" && (r.toks[i].s != "do" || r.next(i) != "not") {
		return false
	}
	n := &r.clauses[r.toks[i].cl]
	last := r.toks[n.hi-1].s
	return n.hi-n.lo == 1 || last == "not" && n.hi-n.lo == 2 || r.next(i) == "do" && n.hi-n.lo == 3 && (last == "it" || last == "that")
}

// outcomeOfYours tells whether an act only says what comes of the one before: "you press on the
// outside ring and you've just put the load through the balls".
func (r *reading) outcomeOfYours(ci int, a *act) bool {
	c := &r.clauses[ci]
	i := c.lo
	if r.toks[i].s == "and" {
		i++
	}
	if ci == 0 || a.verb <= i+1 || r.toks[i].s != "you" || r.toks[i+1].s != "'ve" || r.word(i+2) != "just" {
		return false
	}
	p := &r.clauses[ci-1]
	return p.sentence == c.sentence && r.toks[p.lo].s == "you"
}

// wantsRenewing tells whether what I'll put in is what was just said to be due for it: "that wants
// replacing, I'll put a new one in".
func (r *reading) wantsRenewing(ci int, a *act) bool {
	c := &r.clauses[ci]
	if a.action.Name != "fit" && a.action.Name != "replace" || ci == 0 || a.verb < c.lo+2 || r.toks[a.verb-1].s != "'ll" && r.toks[a.verb-1].s != "will" {
		return false
	}
	p := &r.clauses[ci-1]
	for i := p.lo; i+1 < p.hi; i++ {
		if w, n := r.toks[i].s, r.toks[i+1].s; (w == "wants" || w == "needs" || w == "want" || w == "need") && (n == "replacing" || n == "changing" || n == "renewing" || n == "swapping") {
			return r.since(p.lo, a.lo) < 10
		}
	}
	return false
}

// wantedLater tells whether what I want to do waits for something: "that one I want to check
// after it's run".
func (r *reading) wantedLater(ci int, a *act) bool {
	c := &r.clauses[ci]
	if a.verb < c.lo+3 || r.toks[a.verb-1].s != "to" || r.toks[a.verb-2].s != "want" || r.toks[a.verb-3].s != "i" || ci+1 >= len(r.clauses) {
		return false
	}
	n := &r.clauses[ci+1]
	w := r.toks[n.lo].s
	return n.sentence == c.sentence && (w == "after" || w == "once" || w == "when" || days.has(w))
}

// onSomeOnly tells whether a sentence tells of what only some machines have: "some of these have
// a second screw on top, so you take that out first". What I do is done on this one.
func (r *reading) onSomeOnly(ci int) bool {
	c := &r.clauses[ci]
	for i := c.lo; i < min(c.hi, c.lo+4); i++ {
		if w := r.toks[i].s; w == "i" {
			return false
		}
	}
	f := &r.clauses[r.sentenceAround(ci).first]
	i := f.lo
	for i < f.hi && (r.toks[i].is(wOpener) || r.toks[i].s == "and" || r.toks[i].s == "but" || r.toks[i].s == "now") {
		i++
	}
	if w := r.word(i); i+2 >= len(r.toks) || w != "some" && w != "others" && (w != "newer" && w != "older" && w != "later" || r.toks[i+1].s != "ones") {
		return false
	}
	for k := i + 1; k < min(len(r.toks)-1, i+6) && r.toks[k-1].brk < brkSentence; k++ {
		switch r.toks[k].s {
		case "have", "has", "use", "come":
			n := r.nextKind(k)
			return n.is(wDeterminer|wCountOf) || r.toks[k+1].men >= 0 || r.toks[k+1].s == "with" || r.toks[k+1].s == "got"
		case "are", "'re", "were", "is", "'s", "had":
			return false
		}
	}
	return false
}

// rewards are what one will do once something is done right.
var rewards = set("see feel hear find get need notice want be have know end come")

// ownVerb tells whether between token i and the thing that moves by itself there is a
// verb that what stands before i belongs to.
func (r *reading) ownVerb(a *act, i int) bool {
	if !a.subject || len(a.objects) == 0 {
		return false
	}
	for m := &r.mentions[a.objects[0]]; i < m.from; i++ {
		if w := r.toks[i].s; r.isVerbForm(w) && !letting.has(r.lemma1(w)) {
			return true
		}
	}
	return false
}

// letting are the verbs that say that something else moves.
var letting = set("let make have get want see think need like force allow")

// nounAt tells whether a thing is named at token i, by a name or a word that stands for it.
func (r *reading) nounAt(i int) bool {
	if i < 0 {
		return false
	}
	w := r.toks[i].s
	return r.toks[i].men >= 0 || w == "one" || w == "ones" || w == "thing" || w == "bit" || w == "bits" || w == "guy" || w == "fella" || w == "piece"
}

// stays are the verbs for where a thing is.
var stays = set("sit stand lie rest lay hang lean")

// whichThread are the words for the way a thread turns.
var whichThread = set("clockwise anticlockwise counterclockwise backwards lefty righty")

// hasGot tells whether "got" at a verb says what a thing has, and not what somebody
// put there: "they've all got a washer on".
func (r *reading) hasGot(c *clause, verb int) bool {
	i := verb - 1
	for i > c.lo && (r.toks[i].s == "all" || r.toks[i].s == "both" || r.toks[i].s == "each" || r.toks[i].s == "also" || r.toks[i].s == "still" || r.toks[i].s == "only") {
		i--
	}
	if i <= c.lo {
		return false
	}
	switch r.toks[i].s {
	case "'ve", "'s", "have", "has":
		return r.toks[i-1].s != "i"
	}
	return false
}

// ought are the words that say how a thing has to be, not how it is.
var ought = set("to must should would might could can may shouldn't mustn't can't couldn't wouldn't")

// asItWas tells whether an act only tells how, where or when a thing came off before.
func (r *reading) asItWas(c *clause, a *act) bool {
	if a.action.Name == "remove" && a.hi < c.hi && r.toks[a.hi].s == "of" && (a.hi+1 == c.hi || r.toks[a.hi].brk >= brkComma) {
		return true
	}
	k := a.verb - 1
	for k >= c.lo && (r.toks[k].men >= 0 || determiner.has(r.toks[k].s) || pronounsObj.has(r.toks[k].s) || r.toks[k].s == "they" || r.toks[k].s == "she" || r.toks[k].s == "he" || r.toks[k].s == "'d" || r.toks[k].s == "'s" || r.toks[k].s == "had" || r.toks[k].s == "just") {
		k--
	}
	if k < c.lo || k == a.verb-1 {
		return false
	}
	switch r.toks[k].s {
	case "way", "how", "like", "where", "than", "day", "time", "moment":
		return true
	case "as":
		return k == c.lo || r.toks[k-1].s != "far"
	}
	return false
}

// besides are the words that stand between "is" and what a thing is: "they're both cracked".
var besides = set("still only just all now already both badly completely nearly half really pretty well clean")

// damages are what "you'll" do by mistake.
var damages = wordsOf("what one does by mistake")

var passiveBe = set("'s is are was were 're be been")

// personBefore tells whether somebody is what the verb's "is" or "are" is said of.
func (r *reading) personBefore(c *clause, verb int) bool {
	for i := verb - 2; i >= c.lo && i > verb-6; i-- {
		switch r.toks[i].s {
		case "i", "you", "he", "she", "who", "they":
			return true
		}
		if r.toks[i].men >= 0 {
			return false
		}
	}
	return false
}

// cleft tells whether "what … is" leads to the verb.
func (r *reading) cleft(c *clause, verb int) bool {
	for i := verb - 2; i >= c.lo && i > verb-8; i-- {
		if w := r.toks[i].s; w == "what" || w == "all" || w == "do" || w == "done" || w == "thing" || w == "trick" || w == "job" || w == "step" {
			return true
		}
	}
	return false
}

// happened tells whether an act is work of this job, done or being done.
func (a *act) happened() bool {
	return a.mood&notDone == 0
}

// notDone are the moods of what is no work of this job, or not yet.
const notDone = negated | conditional | hypothetical | other | asked | aside | greeting | notNeeded | announced | framed
