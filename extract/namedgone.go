package extract

import "wrenchword/extract/lexicon"

// A thing may be named right before it is said that it is not to be had, that it stays off, or that
// it goes on another day: "and a clip I don't have", "the shield, I'm leaving that off tonight",
// "Gaiter. Friday.", "Cap. It's rolled off under the bench". Named like that it is not back in its
// turn, whatever goes back on around it.

// goneWhenNamed tells whether a clause names a thing, and says in the same breath that it is
// wanting, lost or left off.
func (r *reading) goneWhenNamed(c *clause, m *mention) bool {
	ci := int(r.toks[c.lo].cl)
	for k, mi := range c.mentions {
		if &r.mentions[mi] == m && k+1 < len(c.mentions) && r.word(m.hi) == "and" && r.mentions[c.mentions[k+1]].from == m.hi+1 {
			return r.goneWhenNamed(c, &r.mentions[c.mentions[k+1]]) // "the gears and the banjo I leave off"
		}
	}
	for n, i := ci, m.hi; n < min(len(r.clauses), ci+3); n++ {
		k := &r.clauses[n]
		if i = max(i, k.lo); r.since(m.hi-1, k.lo) > 8 || n > ci && r.toks[k.lo-1].brk >= brkSentence && !r.goesOnOf(k) {
			return false
		}
		hi := k.hi
		for _, o := range k.mentions {
			if t := &r.mentions[o]; t.lo >= i && t.head != m.head && t.kind&(lexicon.Fastener|lexicon.Part) != 0 {
				hi = t.from // what follows is of another thing
				break
			}
		}
		for _, o := range k.opens {
			if o.lo >= i && o.hi <= hi && (o.signal == "still-off" || o.signal == "lost") {
				return true
			}
		}
		for ; i < hi; i++ {
			if r.wantingAt(i, k.hi) || r.willThen(i) || (i == m.hi || i == k.lo) && toCome.has(r.toks[i].s) && (i+1 >= k.hi || r.toks[i].brk >= brkComma) {
				return true
			}
		}
		if hi < k.hi {
			return false
		}
	}
	return false
}

// frontedLeft gives an act that leaves something off what is named before it, where nothing is named
// in it: "the gears and the banjo I leave off", "the lid, I'll leave off, and the kick panel, I'll
// leave off".
func (r *reading) frontedLeft(ci int, a *act) {
	c := &r.clauses[ci]
	if len(a.objects) > 1 || len(a.objects) == 1 && (r.mentions[a.objects[0]].from <= a.verb || r.toks[r.mentions[a.objects[0]].from-1].brk < brkComma && r.word(r.mentions[a.objects[0]].from-1) != "and") {
		return
	}
	if w := r.toks[c.lo].s; w != "i" || a.pronoun != "" || ci == 0 || r.toks[c.lo-1].brk >= brkSentence {
		return
	}
	p := &r.clauses[ci-1]
	if k := len(p.mentions) - 1; k >= 0 && r.mentions[p.mentions[k]].hi == p.hi && r.mentions[p.mentions[k]].prep == "" && r.mentions[p.mentions[k]].kind&(lexicon.Part|lexicon.Fastener) != 0 {
		a.objects = []int{p.mentions[k]}
		if from := r.mentions[p.mentions[k]].from; k > 0 && r.prev(from) == "and" && r.mentions[p.mentions[k-1]].hi == from-1 {
			a.objects = []int{p.mentions[k-1], p.mentions[k]}
		}
	}
}

// goesOnOf tells whether a clause goes on of what the sentence before it only names: "Cap. It's
// rolled under the bench", "Split pin. And now where."
func (r *reading) goesOnOf(c *clause) bool {
	switch r.word(r.skipped(c)) {
	case "it", "they", "that", "those", "this", "where", "i", "don't", "haven't", "can't", "leave", "nah", "no", "one":
		return true
	}
	return toCome.has(r.toks[c.lo].s)
}

// wantingAt tells of "I don't have", "haven't got one", "where is it", "leave it for now", "you
// don't use again" at a token, of a thing named before.
func (r *reading) wantingAt(i, hi int) bool {
	next, k := r.next(i), i+2
	switch r.toks[i].s {
	case "where":
		return next == "is" || next == "'s" || next == "are" || next == "'re" || next == "did" && r.word(k) != "i" || i+1 >= hi && r.prev(i) == "now"
	case "comes", "come":
		return next == "last" || next == "later"
	case "gone":
		return next == "under" || next == "behind" || next == "missing" || next == "walkabout" || next == "astray"
	case "'ll", "will":
		return next == "find"
	case "leave", "leaving", "left":
		switch next {
		case "off", "out":
			return k >= hi || r.toks[k-1].brk >= brkComma
		case "it", "that", "them", "those":
			w := r.word(k)
			return w == "off" || w == "out" || w == "because" || w == "until" || w == "till" || w == "for"
		}
		return false
	case "don't", "haven't", "can't", "couldn't", "never", "not", "won't":
	default:
		return false
	}
	switch {
	case next == "use", next == "reuse":
		return k >= hi || r.word(k) == "again" || pronounsObj.has(r.word(k))
	case next == "put", next == "fit":
		return pronounsObj.has(r.word(k)) || r.word(k) == "that"
	case next != "have" && next != "got" && next != "find":
		return false
	}
	w := r.word(k)
	return k >= hi || r.toks[k-1].brk >= brkComma || pronounsObj.has(w) || w == "one" || w == "any" || w == "that" || w == "yet"
}

// toCome are the days that, told right after a thing, are when it goes on: "gaiter, Friday".
var toCome = wordsOf("days to come")

// willThen tells of "the heat shield I'll hang after it's run": what is named first and told for later.
func (r *reading) willThen(i int) bool {
	if w := r.next(i); r.toks[i].s != "i" || w != "'ll" && w != "will" {
		return false
	}
	for k := i + 2; k < min(len(r.toks), i+9) && r.toks[k-1].brk < brkSentence; k++ {
		if w := r.toks[k].s; toCome.has(w) || w == "after" || w == "afterwards" || w == "when" || w == "once" {
			return true
		}
	}
	return false
}

// speaks tells whether what is named before a token says something, as a paper does: "sheet in the
// kit says eight".
func (r *reading) speaks(i, hi int) bool {
	for ; i < hi && r.toks[i-1].brk < brkComma; i++ {
		switch r.toks[i].s {
		case "says", "said", "say", "reads", "shows":
			return true
		}
	}
	return false
}

// restOfName tells whether what stands after a name that opens a clause tells no more than where
// or how it goes. What goes on otherwise says something of it, or names another thing: "the cap
// says three", "the belt must be over", "bolt holes".
func (r *reading) restOfName(c *clause, m *mention) bool {
	i := m.hi
	if r.toks[i-1].brk >= brkComma || i >= len(r.toks) {
		return true
	}
	if i == c.hi {
		return r.clauses[r.toks[i].cl].sentence != r.clauses[r.toks[c.lo].cl].sentence || !r.toks[i].is(wLinking) || r.toks[i].s == "goes" || r.toks[i].s == "go" // "brake hose | is clear of the tyre"
	}
	if r.toks[i].is(wPreposition|wPlace) || r.clips(m) {
		return !r.speaks(i, c.hi)
	}
	switch r.toks[i].s {
	case "and", "then", "again", "next", "first", "last", "a", "all", "both", "each", "once", "now", "too", "as", "time", "assembly", "that", "the", "underneath":
		return true
	}
	return false
}
