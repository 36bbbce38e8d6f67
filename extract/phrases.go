package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// What follows a comma in talk may be more of the step, "two turns", "with the pick", "lip
// facing out", or what turns it, "ten mil spanner", or talk that a step must not hold: "hold
// it, oak, clamp". Only what is known to belong is taken.

// phraseEnd gives the token after the phrase that begins at i.
func (r *reading) phraseEnd(i, end int) int {
	for i++; i < end && r.toks[i-1].brk < brkComma; i++ {
	}
	return i
}

// belongs tells whether the phrase of tokens i to hi, which a comma parts from what an act is
// done to, is more of the same step.
func (r *reading) belongs(a *act, i, hi int) bool {
	for i < hi-1 && (softens.has(r.toks[i].s) || r.toks[i].is(wDrop) && !articles.has(r.toks[i].s)) {
		i++ // "about two turns"
	}
	w, next := r.toks[i].s, r.next(i)
	if i+1 >= hi {
		next = ""
	}
	for k := i; k < hi; k++ {
		mi := int(r.toks[k].men)
		if mi < 0 || !slices.Contains(a.objects, mi) {
			continue
		}
		switch m := &r.mentions[mi]; {
		case m.lo < i || m.kind&lexicon.Tool != 0 && !m.definite: // "snip the tie, side cutters"
		case w == "and" && m.kind&lexicon.Consumable != 0: // "wipe the shaft, and some grease on the lip"
			return false
		case m.isNew && phaseOf[a.action.Name] != "fitting":
			return false // "clean the seat, new gasket"
		default:
			return w != "and" || m.hi == hi || prepositions.has(r.word(m.hi))
		}
	}
	switch {
	case w == "and" && slices.ContainsFunc(r.toks[max(a.verb, a.lo):i], func(t tok) bool { return t.s == "between" }):
		return true // "between the joint, and the box"
	case w == "and" || w == "or" || w == "plus":
		return r.another(a, i, hi)
	case w == "until" || w == "till" || w == "til":
		return true
	case w == "no":
		return hi <= i+3 && !r.saysMore(i+1, hi) && (r.toks[hi-1].men >= 0 || strings.HasSuffix(r.toks[hi-1].s, "s")) // "no grease", "no hammers"
	case w == "of" || w == "like" || w == "not" || w == "back" || w == "off" || w == "on" && hi == i+1:
		return false
	case manner.has(w), manner.has(r.toks[hi-1].s) && hi-i <= 4 && r.namesNone(i, hi), strings.HasSuffix(w, "ly") && len(w) > 4, strings.HasSuffix(w, "wise") && len(w) > 4:
		return true
	case prepositions.has(w):
		return hi > i+1 && !(next == "it" && hi == i+2) && !r.saysMore(i+1, hi)
	case w == "both" || w == "each" || w == "all" || w == "either" || w == "one" && bothOf.has(next):
		return bothOf.has(r.toks[hi-1].s) || bothOf.has(next) || prepositions.has(next) || r.word(i+2) == "way" && hi > i+2
	case features.has(w) || madeSide.has(w) || bothOf.has(next) && r.toks[i].qty < 0:
		return r.turnedIn(i, hi)
	}
	if r.extent(i, hi) {
		return true
	}
	if r.turnedIn(i, hi) && r.namesFeature(i, hi) {
		return true // "flat side down", "small end up"
	}
	if measurable.has(a.action.Name) && r.toks[i].qty >= 0 {
		return r.namesNone(i, hi)
	}
	return false
}

// softens are the words before an amount or a manner that make no difference to what it is.
var softens = set("about around maybe roughly nice nearly almost say just only dead good nice really very")

// manner are the words that say how work is done.
var manner = set("gently slowly easy slow tight straight square flush hard softly loosely evenly crosswise crossways clockwise anticlockwise counterclockwise level star criss diagonally only first together lightly firmly carefully squarely sideways upright loose")

// bothOf are what the work is done on both of.
var bothOf = set("side sides end ends face faces way ways round over corners edges")

// measurable are the actions that are told by how much.
var measurable = set("cut drill measure adjust press lower lift fill drain apply lubricate place")

// extent tells whether a phrase says how far or how long: "quarter of a turn", "two pumps",
// "a minute on each".
func (r *reading) extent(i, hi int) bool {
	if hi-i > 7 {
		return false
	}
	counted := false
	for k := i; k < hi; k++ {
		s := r.toks[k].s
		if (counted || k == i) && extents.has(s) {
			return true
		}
		counted = counted || countOf[s] > 0 || numberWord.has(s) || fractionWord.has(s) || articles.has(s) || s == "couple" || s == "few" || s == "full" || r.toks[k].qty >= 0 || s[0] >= '0' && s[0] <= '9'
		if !counted {
			return false
		}
	}
	return false
}

var extents = set("turn turns notch notches flat flats click clicks pump pumps stroke strokes time times degree degrees minute minutes second seconds bit bits go goes pass passes round rounds drop drops layer layers coat coats wrap wraps")

// turnedIn tells whether a phrase says which way something is turned or where it is.
func (r *reading) turnedIn(i, hi int) bool {
	return slices.ContainsFunc(r.toks[i+1:max(hi, i+1)], func(t tok) bool { return turned.has(t.s) || t.is(wPreposition) })
}

// namesFeature tells whether a phrase begins with what of a thing is turned.
func (r *reading) namesFeature(i, hi int) bool {
	for k := i; k < min(hi-1, i+3); k++ {
		if features.has(r.toks[k].s) {
			return turned.has(r.next(k))
		}
	}
	return false
}

// namesNone tells whether no thing is named from token i to hi.
func (r *reading) namesNone(i, hi int) bool {
	return !slices.ContainsFunc(r.toks[i:hi], func(t tok) bool { return t.men >= 0 })
}

// saysMore tells whether somebody does something else in a phrase: "so I can see it".
func (r *reading) saysMore(i, hi int) bool {
	for k := i; k < hi; k++ {
		if t := &r.toks[k]; t.is(wSubject) && t.men < 0 && !t.is(wDeterminer) && firstPerson[t.s] == "" && !pronounsObj.has(t.s) || linking.has(t.s) {
			return true
		}
	}
	return false
}

// another tells whether what "and" leads to is only another thing that the same is done to:
// "take out the seal, and the washer".
func (r *reading) another(a *act, i, hi int) bool {
	switch a.action.Name {
	case "remove", "disconnect", "pull", "inspect", "clean", "replace", "discard", "slacken", "lubricate", "drain":
	default:
		return false
	}
	k := i + 1
	for k < hi && r.toks[k].men < 0 && (determiner.has(r.toks[k].s) || dropAdj.has(r.toks[k].s)) {
		k++
	}
	if k >= hi || r.toks[k].men < 0 {
		return false
	}
	m := &r.mentions[r.toks[k].men]
	end := i - 1
	for end >= a.hi && r.toks[end].is(wDrop|wParticle) && r.toks[end].men < 0 {
		end-- // "check the hub nut again, and the strut bolts"
	}
	last := int(r.toks[end].men)
	return m.hi == hi && m.kind&(lexicon.Part|lexicon.Fastener) != 0 && (slices.Contains(a.objects, last) || end < a.hi)
}

// drivenWith gives the words of a phrase that is only what turns the fastener an act is done to,
// its size or its tool: "ten mil spanner", or "".
func (r *reading) drivenWith(a *act, i, hi int) string {
	bare := false // a size alone tells what turns it
	switch a.action.Name {
	case "slacken", "tighten":
		bare = true
	case "remove", "disconnect", "start by hand", "fit":
		bare = slices.ContainsFunc(a.things, func(t *thing) bool { return t.fastener })
	case "support", "cut", "clean":
	default:
		return ""
	}
	for i < hi-1 && (articles.has(r.toks[i].s) || r.toks[i].s == "that's" || r.toks[i].is(wDrop)) {
		i++
	}
	tool, size := false, false
	for k := i; k < hi; k++ {
		t := &r.toks[k]
		switch {
		case t.men >= 0 && r.mentions[t.men].kind&(lexicon.Tool|lexicon.Consumable) == lexicon.Tool:
			tool = true
		case t.qty >= 0 && r.qtys[t.qty].Kind != normalize.Duration, keyShape.has(t.s), t.men < 0 && fractionWord.has(t.s) && t.s != "half" && t.s != "quarter":
			size = true
		case t.men < 0 && (numberWord.has(t.s) || countOf[t.s] > 1 || t.s[0] >= '0' && t.s[0] <= '9'):
		default:
			return ""
		}
	}
	if hi-i > 6 || !tool && !(size && bare) || size && corrects.has(r.word(hi)) {
		return "" // "Five mil. No, it's a four."
	}
	return strings.ToLower(strings.TrimRight(r.text(i, hi), ",.;: "))
}

// keyShape are the words for how a head is driven.
var keyShape = set("hex allen torx pozi phillips flathead")
