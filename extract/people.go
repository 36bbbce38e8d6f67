package extract

// What other people did is no work of the one who talks: "neighbour of mine did this without the
// jack", "one lad pulled the hose off with the pump running".

// persons are the words for somebody.
var persons = wordsOf("people")

// firms are the words for where somebody works, who are meant where they were known: "I knew a shop".
var firms = wordsOf("firms")

// deictic are the words that point at what is there.
var deictic = set("this that these those")

// indefinite are the words before somebody who was not spoken of before.
var indefinite = set("a an one some another")

// people sets aside what somebody else is told to have done. Where it is anyone, not one who is
// known, what goes on as past is set aside with it.
func (r *reading) people() {
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if n := ci + 1; n < len(r.clauses) && r.endsOnThem(c) && r.toks[r.clauses[n].lo].is(wVerb|wForm) && r.toks[r.clauses[n].lo].men < 0 {
			r.tellOf(&r.clauses[n], r.clauses[n].lo) // "people think it's packaging and they | pull it out"
		}
		at, anyone := r.somebody(ci)
		if at < 0 {
			continue
		}
		goesOn := func(k int) bool {
			return k < len(r.clauses) && r.clauses[k].sentence == c.sentence && r.saidOfThem(&r.clauses[k])
		}
		if r.tense(c) != past && !(anyone && r.tense(c) == untold || goesOn(ci+1)) || r.tellsFigure(c) {
			continue
		}
		r.tellOf(c, at)
		for k := ci + 1; k < len(r.clauses) && r.since(c.lo, r.clauses[k].lo) < 30; k++ {
			d := &r.clauses[k]
			if !r.saidOfThem(d) && !(anyone && d.sentence == r.clauses[k-1].sentence && r.tense(d) == past && !r.myDoing(d)) || r.valueBetween(d, d.lo, d.hi) || d.sentence != c.sentence && !anyone {
				break
			}
			r.tellOf(d, d.lo)
		}
	}
}

// myDoing tells whether a clause tells what the speaker did, and not what they had to do about what
// somebody else did: "and we lifted it out", but not "and I had to true the whole wheel".
func (r *reading) myDoing(c *clause) bool {
	for i := c.lo; i+1 < c.hi; i++ {
		if firstPersonOf(r.toks[i].s) {
			return r.toks[i+1].s != "had"
		}
		if r.toks[i].s != "and" && r.toks[i].s != "but" && !r.toks[i].is(wDrop|wOpener) {
			return false
		}
	}
	return false
}

// endsOnThem tells whether a clause breaks off after the word for who does what the next one tells.
func (r *reading) endsOnThem(c *clause) bool {
	w := r.toks[c.hi-1].s
	return (w == "they" || w == "he" || w == "people") && r.toks[c.hi-1].brk < brkSentence && c.hi-c.lo > 1
}

// tellOf frames a clause from a token on as what somebody else did.
func (r *reading) tellOf(c *clause, at int) {
	c.mood |= other
	c.own().cues = append(c.cues, cue{at, at, other})
}

// somebody gives the token at which a clause speaks of somebody who did something, -1 where it does
// not, and whether it is anyone, not one who is known: "a lad", "buddy of mine", "I knew a boy".
func (r *reading) somebody(ci int) (at int, anyone bool) {
	c := &r.clauses[ci]
	for k := c.lo + 1; k+2 < c.hi; k++ {
		if r.toks[k].s == "where" && indefinite.has(r.toks[k+1].s) && persons.has(r.toks[k+2].s) {
			return k + 2, true // "a place up the coast where some bloke had done it up"
		}
	}
	i := r.skipped(c)
	switch r.word(i) {
	case "but", "where", "because", "cause", "when":
		i++
	}
	if i < c.hi && firstPersonOf(r.toks[i].s) && i+1 < c.hi {
		i++
	}
	met := false
	switch r.word(i) {
	case "had", "knew", "met", "watched":
		i, met = i+1, true
	}
	if !met && i > c.lo && firstPersonOf(r.prev(i)) {
		return -1, false
	}
	if i >= c.hi {
		return -1, false
	}
	if w := r.toks[i].s; w == "herself" || w == "himself" {
		return i, false // "herself hit it with the jeep"
	}
	unknown := indefinite.has(r.toks[i].s)
	det := unknown || r.toks[i].is(wDeterminer)
	known := det && !unknown
	if det {
		i++
	}
	for n := 0; n < 2 && i < c.hi && r.toks[i].is(wDropAdj) && r.toks[i].brk == brkNone; n++ {
		i++
	}
	if i >= c.hi || !persons.has(r.toks[i].s) && !(met && det && firms.has(r.toks[i].s)) || r.toks[i].men >= 0 {
		return -1, false
	}
	if det && deictic.has(r.prev(i)) {
		return -1, false // "this guy on the shaft", a thing as often
	}
	ofMine := r.next(i) == "of" && (r.word(i+2) == "mine" || r.word(i+2) == "his")
	if !det && !ofMine || met && known {
		return -1, false
	}
	return i, met || ofMine || !known
}

// saidOfThem tells whether a clause goes on with what somebody did: it has no subject of its own, or
// tells of them by a pronoun.
func (r *reading) saidOfThem(c *clause) bool {
	i := c.lo
	for i < c.hi && (r.toks[i].s == "and" || r.toks[i].s == "then" || r.toks[i].is(wDrop)) {
		i++
	}
	if i >= c.hi {
		return false
	}
	switch w := r.toks[i].s; w {
	case "he", "she", "they":
		return true
	default:
		return r.toks[i].is(wVerb|wForm) && r.toks[i].men < 0 && (r.pastForm(w) || alikeInPast.has(w))
	}
}

// somebodyAt tells whether a token and the next are somebody: "a lad".
func (r *reading) somebodyAt(i int) bool {
	return articles.has(r.word(i)) && persons.has(r.next(i))
}

// someOf tells whether a token and the next tell of how often something was done before: "so many
// of these", "hundreds of them".
func (r *reading) someOf(i int) bool {
	if r.word(i) == "so" && (r.next(i) == "many" || r.next(i) == "much") {
		return r.word(i+2) == "of"
	}
	switch r.word(i) {
	case "hundreds", "dozens", "thousands", "loads", "plenty":
		return r.next(i) == "of" && pronounsObj.has(r.word(i+2))
	}
	return false
}
