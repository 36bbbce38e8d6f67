package extract

import (
	"math/big"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// spannerSizes are the widths across flats, in millimetres, that spanners and sockets are
// sold in for bolts, nuts, plugs and lines (ISO 272, and common practice for 7 to 36).
var spannerSizes = func() (of [51]bool) {
	for _, n := range []int{7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 26, 27, 28, 29, 30, 32, 33, 34, 36, 38, 41, 46, 50} {
		of[n] = true
	}
	return of
}()

// spannerSize tells whether a spanner of so many millimetres is in the drawer.
func spannerSize(v *big.Rat) bool {
	return v.IsInt() && compare(v, 7) >= 0 && compare(v, 50) <= 0 && spannerSizes[v.Num().Int64()]
}

// leadsSize are the words that a size said as a bare number may follow; what counts
// follows others ("there's", "another", "about").
var leadsSize = set("a an single lone 's is are 're be was were takes take took want wants need needs with same both just deep long short thin big little old good usual usually normally mostly probably maybe possibly think believe reckon guess again um uh er i'm my your it um ones one of")

// afterSize are the words that may follow such a size: none of them is counted by it.
var afterSize = set("on for at down each both all either in to head heads headed af and or again this that these up underneath top bottom behind front back i you we they so but it here there just not no maybe might could well with then from too if 's i'd right yeah which same size spanner both the is round will does fits off out")

// isNew tells whether the clause of a number says what the new one is, rather than what
// turns it: "new one's a thirty-two".
func (r *reading) isNew(c *clause, a int) bool {
	for i := a - 1; i >= c.lo && i > a-5; i-- {
		if w := r.toks[i].s; (w == "one" || w == "ones" || w == "un") && r.word(i-1) == "new" {
			return true
		}
	}
	return false
}

// ofTeeth tells whether a clause speaks of how many teeth something has.
func (r *reading) ofTeeth(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		if w := r.toks[i].s; w == "tooth" || w == "teeth" {
			return true
		}
	}
	return false
}

// takesThe are the words before "the" and a size of what is in the drawer.
var takesThe = set("and with need needs use using used grab get take takes want wants try tried got")

// standsAlone tells whether the number at [a,b) is followed by nothing it could count
// or measure, and preceded by what may lead a size.
func (r *reading) standsAlone(c *clause, a, b int) bool {
	switch r.word(b + 1) {
	case "night", "noon", "morning", "evening", "afternoon":
		return false // "it's nine at night"
	}
	if r.word(b+1) == "the" && r.word(b) == "in" && (r.word(b+2) == "morning" || r.word(b+2) == "evening" || r.word(b+2) == "afternoon") {
		return false
	}
	if n := r.word(b + 1); b < c.hi && r.word(b) == "one" && (n == "side" || n == "end") || r.word(b) == "this" && (n == "side" || n == "end") {
		return a == c.lo || r.toks[a-1].brk >= brkPause || r.toks[a-1].is(wOpener) || leadsSize.has(r.toks[a-1].s) // "twenty-four one side, thirty-two the other"
	}
	if b < c.hi && r.toks[b-1].brk < brkPause && (r.toks[b].men >= 0 || r.toks[b].qty >= 0 || !afterSize.has(r.toks[b].s)) {
		return false
	}
	if a == c.lo || r.toks[a-1].brk >= brkPause {
		return true
	}
	p := &r.toks[a-1]
	if p.is(wNumber|wCountOf) || p.s[0] >= '0' && p.s[0] <= '9' {
		return false // "thirty-one eight"
	}
	if p.men >= 0 {
		k := r.mentions[p.men].kind
		return k&(lexicon.Fastener|lexicon.Part) != 0
	}
	switch pp := r.word(a - 2); p.s {
	case "'s", "is", "are", "'re", "was", "were":
		return pp != "there" && pp != "he" && pp != "she" && pp != "here"
	case "of":
		return a-2 >= c.lo && (r.toks[a-2].brk >= brkPause || r.toks[a-2].men >= 0 && r.mentions[r.toks[a-2].men].kind&lexicon.Fastener != 0) || pp == "key" || pp == "spanner" || pp == "allen" || pp == "brugola" || pp == "inbus" || pp == "imbus" || pp == "wrench" || pp == "socket" || pp == "hex" || pp == "head"
	case "one", "it", "ones":
		return true
	case "the": // "we need the eighteen", "half inch bar and the twenty-seven"
		return takesThe.has(pp)
	case "and":
		return r.lastBare > 0 && a-r.lastBare <= 8 // "twelve up top and fourteen down the bottom"
	}
	return leadsSize.has(p.s) || placeWords.has(p.s)
}

// turnedHere tells whether what a spanner or a key turns is spoken of in a clause: named,
// or only counted.
func (r *reading) turnedHere(c *clause, before int) bool {
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.lo >= before {
			break
		}
		if m.kind&lexicon.Fastener != 0 && (alike.has(m.head) || !neverTorqued.has(m.head)) || m.kind&lexicon.Part != 0 && tightens.has(m.head) && m.head != "jet" {
			return true
		}
	}
	return r.countedIn(c, before)
}

// fastenerIn tells whether a fastener is named in a clause before a token.
func (r *reading) fastenerIn(c *clause, before int) bool {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.lo < before && m.kind&lexicon.Fastener != 0 {
			return true
		}
	}
	return false
}

// howMuch tells whether the clause before asks how many or how far.
func (r *reading) howMuch(ci int) bool {
	if ci == 0 {
		return false
	}
	p := &r.clauses[ci-1]
	for i := p.lo; i+1 < p.hi; i++ {
		if r.toks[i].s == "how" {
			switch r.toks[i+1].s {
			case "much", "many", "far", "long", "deep", "tight":
				return true
			}
		}
	}
	return false
}

// turnedNear tells the same of a clause, of those right before it and of the one after:
// "a twelve on these. That's the caliper bolts."
func (r *reading) turnedNear(ci, a int) bool {
	for k := ci; k >= 0 && k >= ci-3 && r.since(r.clauses[k].lo, a) < 10; k-- {
		if r.turnedHere(&r.clauses[k], a) {
			return true
		}
	}
	if ci+1 < len(r.clauses) && r.since(a, r.clauses[ci+1].lo) < 4 {
		n := &r.clauses[ci+1]
		return r.turnedHere(n, min(n.hi, n.lo+6))
	}
	return false
}

// putTogether tells whether what was done last before a token was putting together
// or tightening, or values were told and nothing was taken apart since: a bare number
// there is sooner how tight than how wide.
func (r *reading) putTogether(ci, a int) bool {
	for k := ci; k >= 0 && k >= ci-12 && r.since(r.clauses[k].lo, a) < 45; k-- {
		for _, qi := range r.clauses[k].qtys {
			if r.qtys[qi].Kind == normalize.Torque {
				return true
			}
		}
		acts := r.clauses[k].acts
		for i := len(acts) - 1; i >= 0; i-- {
			if x := &r.acts[acts[i]]; x.lo <= a {
				switch x.action.Name {
				case "fit":
					if x.verb < 0 && r.tellsPlace(x) {
						continue // "the nut on the spring", "a bolt through it"
					}
					return true
				case "tighten", "torque", "start by hand", "apply", "set":
					return true
				case "remove", "slacken", "disconnect", "drain":
					return false
				}
			}
		}
	}
	return r.firstTorque() < a
}

// tellsPlace tells whether what no verb says is done may as well be where a thing is.
func (r *reading) tellsPlace(x *act) bool {
	for _, o := range x.objects {
		switch hi := r.mentions[o].hi; r.word(hi) {
		case "on", "through", "in", "up", "into":
			if w := r.word(hi + 1); determiner.has(w) || w == "it" {
				return true
			}
		}
	}
	return false
}

// firstTorque gives the token of the first torque that is said, or one past the last.
func (r *reading) firstTorque() int {
	if r.torqueAt == 0 {
		r.torqueAt = len(r.toks)
		for i := range r.qtys {
			if r.qtys[i].Kind == normalize.Torque {
				r.torqueAt = min(r.torqueAt, r.qtys[i].lo)
			}
		}
	}
	return r.torqueAt
}

// saidOtherwise tells whether a number was said right before as something else, or is
// said to be a torque around: "Seventeen newton metres. So that's seventeen."
func (r *reading) saidOtherwise(ci, a int, val *big.Rat, again bool) bool {
	for k := max(0, ci-5); k <= min(ci+2, len(r.clauses)-1); k++ {
		for _, qi := range r.clauses[k].qtys {
			if q := &r.qtys[qi]; q.Kind == normalize.Torque && q.Low != nil && (q.Low.Cmp(val) == 0 || q.High.Cmp(val) == 0) {
				return true
			}
		}
	}
	for i := a - 1; i >= max(0, a-30) && !again; i-- {
		if q := r.toks[i].qty; r.toks[i].s == r.toks[a].s && (q < 0 || r.qtys[q].Kind == normalize.Turn) {
			return true
		}
	}
	for i := r.clauses[ci].lo; i < r.clauses[ci].hi; i++ {
		if valueWords.has(r.toks[i].s) {
			return true
		}
	}
	return false
}

var valueWords = set("torque torques torqued newton newtons spec specs tight tighten set setting dial click clicks degrees pounds kilo turns turn count counted many teeth threads")

// sizeSlot tells whether a bare number stands where a size is said, as near any bolt:
// by itself, where something to be turned is in hand, and as a spanner or a key that
// there is.
func (r *reading) sizeSlot(c *clause, a, b int, val *big.Rat, again bool) bool {
	if !r.standsAlone(c, a, b) || r.word(b) != "down" && r.measured(c, a, b) {
		return false
	}
	ci, prev := int(r.toks[c.lo].cl), r.word(a-1)
	art := prev == "a" || prev == "an" || prev == "single" || prev == "lone" || (prev == "your" || prev == "my" || prev == "our") && spannerSize(val)
	if !spannerSize(val) {
		beside := false // "seat clamp, five", but "ten mil bolts, four"
		if a > c.lo && r.toks[a-1].men >= 0 && r.toks[a-1].brk >= brkPause {
			m := &r.mentions[r.toks[a-1].men]
			beside = !m.plural || m.count > 1
		}
		if compare(val, 2) < 0 || compare(val, 6) > 0 || !art && !beside && !r.hexNear(a, b) && !(again && !val.IsInt()) {
			return false
		}
	}
	if r.word(a-2) == "about" {
		return false // "it's about a ten"
	}
	if !art && compare(val, 36) > 0 || r.saidOtherwise(ci, a, val, again) || !art && r.putTogether(ci, a) || r.counting(c) {
		return false
	}
	if r.word(a-1) == "with" && !r.fastenerIn(c, a) || r.howMuch(ci) {
		return false
	}
	if (art || spannerSize(val) && (a == c.lo || r.toks[a-1].brk >= brkPause)) && r.word(b) == "on" && definiteWord.has(r.word(b+1)) {
		if m := r.nameWithin(c, b+1, 4); m >= 0 && r.mentions[m].kind&(lexicon.Part|lexicon.Fastener) != 0 && r.mentions[m].from <= b+1 {
			return true // "a six on the main pivot", "fifteen on the tensioner"
		}
	}
	if art && spannerSize(val) && r.lastBare > 0 && a-r.lastBare < 12 {
		return true // "it's a thirty. No, it isn't, it's a thirty-two"
	}
	return r.turnedNear(ci, a) || r.threadBeside(c, a) || art && spannerSize(val) && r.taken(ci, a) || spannerSize(val) && r.besidePart(c, a, b)
}

// threadBeside tells whether a thread was said right before a token: "they're M8, allen of six".
func (r *reading) threadBeside(c *clause, a int) bool {
	for i := a - 1; i >= max(0, a-8) && r.clauses[r.toks[i].cl].sentence == c.sentence; i-- {
		if q := r.toks[i].qty; q >= 0 {
			return r.qtys[q].Kind == normalize.Thread
		}
	}
	return false
}

// countedOff tells whether the number at [a,b) is one that is counted to, is told again
// as a count, or counts what lies somewhere: "one, two … seven, eight and a half, nine",
// "nine turns. Well, it's nine", "four in the tray, five in the cup".
func (r *reading) countedOff(c *clause, a, b int) bool {
	n := countOf[r.toks[a].s]
	if n == 0 || b-a != 1 {
		return false
	}
	row, least := 0, n
	for i := a - 1; i >= max(0, a-16); i-- {
		t := &r.toks[i]
		if t.qty >= 0 {
			if q := &r.qtys[t.qty]; q.Kind == normalize.Turn && t.s == r.toks[a].s {
				return true
			}
			continue
		}
		if v := countOf[t.s]; v > 0 && v < least && t.brk >= brkPause {
			row, least = row+1, v
		}
		if t.s == r.toks[a].s && counted.has(r.word(i+1)) {
			return true
		}
	}
	if row > 2 && least == 1 {
		return true
	}
	if w := r.word(b + 1); r.word(b) == "in" && (w == "the" || w == "my" || w == "a") {
		for i := a - 1; i > max(c.lo, a-9); i-- {
			if r.word(i) == "in" && countOf[r.toks[i-1].s] > 0 {
				return true
			}
		}
	}
	return false
}

// besidePart tells whether a number stands between commas right behind the name of one
// part: "engine mount, nineteen, and it's tight".
func (r *reading) besidePart(c *clause, a, b int) bool {
	if a == c.lo || r.toks[a-1].brk < brkComma || b < c.hi && r.toks[b-1].brk < brkComma && r.word(b) != "and" && r.word(b) != "up" && r.word(b) != "both" {
		return false
	}
	var of *mention
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.hi <= a && (m.prep == "" || of == nil) {
			of = m
		}
	}
	return of != nil && of.kind == lexicon.Part && !of.plural && !inert(of)
}

// taken tells whether a part was named right before a token, where things are taken
// apart: "Oil filter housing, that's a twenty-seven."
func (r *reading) taken(ci, a int) bool {
	switch r.word(a - 2) {
	case "'s", "is", "are", "'re", "takes", "wants", "needs":
	default:
		return false
	}
	for k := ci; k >= 0 && k >= ci-1 && r.since(r.clauses[k].lo, a) < 6; k-- {
		for _, mi := range r.clauses[k].mentions {
			if m := &r.mentions[mi]; m.lo < a && m.kind == lexicon.Part && m.prep == "" && !unturned.has(m.head) && m.head != "jet" {
				return true
			}
		}
	}
	return false
}

// severalOf tells whether the plural of a size at i is of things to be turned: they
// are counted, or something to be turned is spoken of.
func (r *reading) severalOf(c *clause, i int, size string) bool {
	prev, ci := r.word(i-1), int(r.toks[c.lo].cl)
	if prev == "figure" || prev == "grade" || prev == "class" || prev == "in" || (prev == "the" || ofWhom.has(prev)) && r.word(i-2) == "in" || prev == "all" && size == "4 mm" || prev == "three" && size == "8 mm" || r.word(i+1) == "of" && r.word(i+2) != "them" && r.word(i+2) != "'em" {
		return false
	}
	if size == "4 mm" || size == "5 mm" { // "two fives" may be spacers
		return r.fastenerIn(c, i) || r.hexNear(i, i+1) || countOf[prev] == 0 && r.turnedNear(ci, i)
	}
	if r.turnedNear(ci, i) || r.sizeTalk(c) && len(size) > len("9 mm") {
		return true
	}
	of := countOf[prev] > 1 || prev == "of" && (r.word(i-2) == "couple" || r.word(i-2) == "pair") || prev == "are" || prev == "'re"
	for k := ci; of && k >= 0 && k >= ci-2 && r.since(r.clauses[k].lo, i) < 8; k-- {
		for _, mi := range r.clauses[k].mentions {
			if r.mentions[mi].kind&lexicon.Part != 0 {
				return true
			}
		}
	}
	return false
}

// asksAt tells whether a size is all that is asked: "Eight? A ten?"
func (r *reading) asksAt(c *clause, a, b int) bool {
	if a > c.lo+1 || a > c.lo && r.toks[a-1].s != "a" && r.toks[a-1].s != "an" {
		return false // "is that with the nineteen?"
	}
	end := r.endOf(b)
	return end < len(r.talk.Text) && r.talk.Text[end] == '?' || end > 0 && r.talk.Text[end-1] == '?'
}

// tookFor tells whether the first of two sizes is what was thought or expected, and
// the second how it is: "I thought these were eights but they're tens".
func (r *reading) tookFor(s, t *sized) bool {
	but := r.word(s.lo-1) == "were" || r.word(s.lo-1) == "was" // "I'd have sworn these were eights, they're tens"
	for i := s.hi; i < t.lo; i++ {
		switch r.toks[i].s {
		case "but":
			but = true
		case "could", "might", "may", "or":
			return false // "I think it's a twenty-one, but it could be a twenty-two"
		}
	}
	for i := s.lo - 1; but && i >= max(0, s.lo-7); i-- {
		if expects.has(r.toks[i].s) {
			return true
		}
	}
	return false
}

var expects = set("thought think thinking expect expected expecting sworn guessed reckoned supposed should says said book normally usually meant used")

var headWords = set("head heads headed heid heids af")

// hexNear tells whether a hexagon key is spoken of a word or two from a number.
func (r *reading) hexNear(a, b int) bool {
	for i := max(0, a-3); i < min(len(r.toks), b+3); i++ {
		if hexWords.has(r.toks[i].s) {
			return true
		}
	}
	return false
}

var hexWords = set("allen allens brugola inbus imbus hex key keys")
