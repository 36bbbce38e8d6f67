package extract

import "wrenchword/extract/lexicon"

// What has just come off is put somewhere, and that is not where it goes back: "caliper off, hang
// it on that bungee", "lay it on the tank with a towel", "they go in me pocket".

// laysAside are the verbs of putting what came off somewhere.
var laysAside = set("put lay hang stick set pop chuck throw stand rest lean go pose drop leave prop park sit sling plonk place keep stash")

// onlyLays are those of them by which nothing is fitted but where a part is named.
var onlyLays = set("lay hang rest lean pose prop park sit sling plonk leave keep stash chuck throw")

// layPlaces are where things are laid that came off, beside what holds small parts and where
// things lie.
var layPlaces = wordsOf("where things are laid")

// asideWords are the words after the preposition that are no place yet.
var asideWords = set("me my mine your his her the a an that this these those some old clean dirty nice plastic wooden cardboard wee little big bit piece of back front other same nearest spare kitchen")

// laidAside tells whether an act puts what just came off out of the way. It is asked where the
// rules take it for a fitting.
func (s *tracker) laidAside(c *clause, a *act, t *thing) bool {
	r := s.r
	l := r.lemma1(r.toks[a.verb].s)
	if !laysAside.has(l) || r.ofNew(a) || r.saidBack(a) {
		return false
	}
	place, known := r.laidWhere(c, a)
	last := t.lastBefore(a.lo)
	switch {
	case place == "" || last != nil && r.since(last.lo, a.lo) > 30:
		return false
	case last == nil:
		return known && onlyLays.has(l) && !s.fitting(a.lo)
	}
	return known || onlyLays.has(l) && !s.fitting(a.lo)
}

// saidBack tells whether an act says that its thing goes back.
func (r *reading) saidBack(a *act) bool {
	for i := a.lo; i < min(a.hi+1, len(r.toks)); i++ {
		if w := r.toks[i].s; (w == "back" || w == "again") && r.prev(i) != "the" && r.prev(i) != "my" && r.prev(i) != "your" {
			return true
		}
	}
	return false
}

// laidWhere gives the word for where an act puts its thing, "" where none is told or it is a part
// of the machine; known tells whether things are laid there.
func (r *reading) laidWhere(c *clause, a *act) (place string, known bool) {
	at := -1
	for i := a.verb + 1; i < min(c.hi, a.hi+5); i++ {
		switch r.toks[i].s {
		case "on", "onto", "in", "into", "inside", "over", "under", "by", "against", "to", "beside":
			at = i
		}
		if at >= 0 || i >= a.hi && !betweenKept.has(r.toks[i].s) {
			break
		}
	}
	if at < 0 {
		return "", false
	}
	for i := at + 1; i < min(c.hi, at+6); i++ {
		t := &r.toks[i]
		if t.is(wDeterminer) || asideWords.has(t.s) && !(i+1 >= c.hi || t.brk >= brkComma) {
			continue
		}
		if w := lexicon.Singular(t.s); containers.has(w) || restAt.has(w) || restFar.has(w) || layPlaces.has(w) {
			if t.men < 0 || r.mentions[t.men].hi == i+1 {
				return w, true
			}
		}
		if t.men >= 0 || t.is(wPreposition|wLinking|wPronoun|wVerb) {
			return "", false
		}
		return t.s, false
	}
	return "", false
}
