package extract

import "strings"

// What the weights of the stops can't see, because it takes more than the two words beside
// a gap: that a row begins ("... on your own | blocks back on"), that a value follows the
// thing it tightens ("plug in | twenty newton metres"), or that what stands around the gap
// is one saying ("under tension", "four bolts hold the cover").

// stopTold tells what ends before a token where the words around it leave no doubt: a
// sentence, a clause or nothing. begun is the first token of what goes on here, whole is the token
// up to which what goes on after the gap holds together.
func (r *reading) stopTold(i, begun int) (end uint8, whole int, sure bool) {
	if r.holdsOn(i, begun) {
		return brkNone, 0, true
	}
	if r.wholeBefore(i) {
		if n := r.rowAt(i); n > 0 {
			if r.rowAt(begun) > 0 {
				return brkComma, i + n, true // the row goes on
			}
			return brkSentence, i + n, true
		}
		if r.orderAt(i) {
			return brkSentence, i + 2, true
		}
	}
	if goneWords.has(r.word(i)) && (r.prevKind(i).is(wOff|wOn) || r.prev(i) == "up" || r.prev(i) == "down") {
		return brkSentence, 0, true // "nip the hose up | gone"
	}
	if r.word(i-2) == "all" && countOf[r.prev(i)] > 0 && r.turnedTo(i) {
		return brkSentence, 0, true // "all five | twenty-three newton metres" is not 523
	}
	return brkSentence, 0, beforeOrders.has(r.prev(i)) && r.orderAt(i) || r.prevKind(i).is(wOn) && r.turnedTo(i)
}

// wholeBefore tells whether what stands before a token can be the end of what is said, and
// hardly anything else.
func (r *reading) wholeBefore(i int) bool {
	w, before := r.prev(i), r.word(i-2)
	switch {
	case w == "own":
		return ownOf.has(before) && r.word(i-3) == "on"
	case w == "one" || w == "ones":
		return r.kind(i - 2).is(wDropAdj | wPlace)
	case w == "it" || w == "them" || w == "'em":
		return before != "let" && before != "make" && before != "with" && before != "now" && !r.kind(i-2).is(wLinking) && !strings.HasSuffix(r.word(i), "s") // "it sticks out"
	case before == "it" || before == "they" || before == "she":
		return (w == "come" || w == "comes" || w == "go" || w == "goes") && (r.kind(i-3).is(wOff|wOn) || r.word(i-3) == "up" || r.word(i-3) == "down") // "off they come"
	case r.rowEndsAt(i):
		return true
	}
	return wholeWords.has(w)
}

// rowEndsAt tells whether a thing and where it went stand right before a token: "cover off",
// "blocks back on".
func (r *reading) rowEndsAt(i int) bool {
	if !rowEnds.has(r.prev(i)) {
		return false
	}
	k := i - 2
	if r.word(k) == "back" {
		k--
	}
	return r.kind(k).is(wName) && r.nameAt(k) > 0 || r.word(k) == "one" || r.word(k) == "it"
}

// rowAt gives the length of a thing and where it went at a token, where no more need be
// said: "key in", "new seal back in", "the cover off" not.
func (r *reading) rowAt(i int) int {
	k := i
	for k < i+2 && (r.kind(k).is(wDropAdj|wPlace) || r.word(k) == "other") && r.nameAt(k) == 0 {
		k++
	}
	n := r.nameAt(k)
	if n == 0 && k > i && (r.word(k) == "one" || r.word(k) == "ones") {
		n = 1
	}
	if n == 0 || k == i && r.kind(i).is(wDeterminer) {
		return 0
	}
	k += n
	if r.word(k) == "back" {
		k++
	}
	w := r.word(k)
	if !rowEnds.has(w) || w == "on" && r.next(k) == "top" {
		return 0
	}
	next := r.nextKind(k)
	switch {
	case r.next(k) == "":
	case next.is(wLinking) || r.next(k) == "of":
		return 0
	case (w == "in" || w == "on") && (next.is(wDeterminer|wPronoun) && !next.is(wDropAdj) || r.next(k) == "there"):
		return 0
	}
	return k + 1 - i
}

// orderAt tells whether an order begins at a token: "slack the nut", "take them", but not
// "on charge, that's it" or "in place, the nut is on".
func (r *reading) orderAt(i int) bool {
	if !r.kind(i).is(wVerb) || !r.plainVerb(r.toks[i].s) || !r.takesObject(i) {
		return false
	}
	n := r.nameAt(i)
	return n == 0 && r.toks[i].s != "go" && !r.kind(i).is(wPlace) || n == 1 && !r.prevKind(i).is(wOn)
}

// takesObject tells whether a verb at a token has its thing right after it: what is right
// after it and does something of its own is none.
func (r *reading) takesObject(i int) bool {
	if !objectBegins.has(r.next(i)) {
		return false
	}
	k := i + 2
	if w := r.next(i); w != "it" && w != "them" {
		k += r.nameAt(k)
	}
	return !r.kind(k).is(wLinking) && !(r.kind(k).is(wForm) && strings.HasSuffix(r.word(k), "s") && r.nameAt(k) == 0) // "grease, it swells"
}

// turnedTo tells whether a torque with its unit stands at a token.
func (r *reading) turnedTo(i int) bool {
	k := i
	for k < i+5 && k < len(r.toks) && (numeral(&r.toks[k]) || r.toks[k].s == "and" && k > i) {
		k++
	}
	if k == i {
		return false
	}
	w, next := r.word(k), r.next(k)
	return w == "nm" || (w == "newton" || w == "newtons") || (w == "foot" || w == "ft" || w == "inch") && (next == "pounds" || next == "pound" || next == "lbs")
}

// holdsOn tells whether what stands beside a gap belongs together.
func (r *reading) holdsOn(i, begun int) bool {
	last, w, next := r.prev(i), r.word(i), r.next(i)
	switch {
	case last == "under" && underWhat.has(w), last == "old" && r.nameAt(i) > 0:
		return true
	case r.word(i-2) == "let" && r.prevKind(i).is(wPronoun) && r.kind(i).is(wForm):
		return true // "never let it | hang"
	case (w == "finger" || w == "hand") && next == "tight" && (last == "like" || last == "only" || last == "about" || last == "in"):
		return true // "the bolt's in there like | finger tight"
	case holdFast.has(last) && (w == "hold" || w == "secure" || w == "retain"):
		return true // "four bolts | hold the housing"
	case begun == i-1 && r.prevKind(i).is(wVerb) && r.plainVerb(last) && r.takesObject(i-1):
		return true // "pump | the lever up"
	case begun == i-3 && r.kind(begun).is(wVerb) && r.plainVerb(r.word(begun)) && r.kind(i-2).is(wDeterminer) && r.takesObject(begun) && !r.prevKind(i).is(wName|wVerb|wPlace|wOff|wOn|wInterjection|wNumber) && !whichOne.has(last) && last != "other" && last != "lot" && last != "same" && r.nameAt(i) > 0:
		return true // a word that is not known: "put the transit | bolts back in"
	case begun == i-1 && r.prevKind(i).is(wName) && !r.prevKind(i).is(wPlace) && !smallThings.has(last) && !strings.HasSuffix(last, "s") && r.nameAt(i) > 0 && r.rowAt(i) > 0:
		return true // a name that is not known as one: "terminal | cover off"
	case last == "left" && haves.has(r.word(i-2)) && r.kind(i).is(wDeterminer):
		return true // "i've left | the cover off"
	case last == "on" && w == "off", last == "off" && w == "on":
		return true // "brake on | off a few times"
	case w == "you" && r.prevKind(i).is(wVerb):
		return r.nameAt(i+1) > 0 && !r.nextKind(i).is(wVerb|wForm) // "get somebody to help | you"
	case w == "that" && anythings.has(last):
		return true // "don't get under anything | that's only on a jack"
	case last == "please":
		return r.kind(i).is(wVerb) && r.plainVerb(w)
	case bareStates.has(w) && r.prevKind(i).is(wName):
		return r.nameAt(i+1) == 0 // "leave the nuts | loose till it's set"
	case r.word(begun) == "put" && r.kind(i).is(wPreposition) && !r.prevKind(i).is(wPreposition|wPlace):
		return r.nextKind(i).is(wDeterminer) // "put your thumb | over the bearing"
	case r.nameAt(i) > 0 && (last == "that" || last == "this"):
		k := i + r.nameAt(i)
		return r.word(k) == "on" && ownOf.has(r.next(k)) && r.word(k+2) == "own" // "that | jack on its own"
	case w == "for" && next == "now", w == "next" && spans.has(next):
		return !r.kind(i+2).is(wSubject) && r.word(i+2) != "let" // "that's got three | for now"
	}
	return false
}

var (
	ownOf        = set("your its their my his her")
	rowEnds      = set("off on in out")
	wholeWords   = set("again together yet apart too gone away myself yourself")
	objectBegins = set("the it them those these your my")
	underWhat    = set("tension pressure load power vacuum compression")
	goneWords    = set("gone sorted lovely perfect beautiful sweet bang bingo")
	anythings    = set("anything something nothing everything anyone")
	bareStates   = set("loose tight snug")
	beforeOrders = set("another others tight loose snug flush")
	haves        = set("'ve have i")
	spans        = wordsOf("next ones")
	smallThings  = wordsOf("small things in a row")
	holdFast     = set("bolts screws nuts pins studs clips clamps rivets springs tabs catches")
)

// awaitsWhatThen tells whether what stands from begun up to a token is a thing and an "if" of
// it, so that what is done then comes next: "the transit bolts if you move it | put them back".
func (r *reading) awaitsWhatThen(begun, i int) bool {
	at := -1
	for k := begun; k < i-1 && at < 0; k++ {
		if r.toks[k].s == "if" {
			at = k
		}
	}
	if at < 0 || i-at > 7 || !r.orderAt(i) || r.prev(at) == "as" || r.prev(at) == "even" {
		return false
	}
	for k := at + 2; k < i-1; k++ {
		if r.kind(k).is(wSubject) {
			return false // "if it goes wrong it lands on the wheel"
		}
	}
	if at == begun {
		return i-at > 3 && (r.next(at) == "you" || r.next(at) == "it" || r.next(at) == "they") && !asYouLike.has(r.word(at+2))
	}
	for k := begun; k < at; {
		switch n := r.nameAt(k); {
		case n > 0:
			k += n
		case r.kind(k).is(wOpener|wDrop|wDeterminer|wInterjection) || k+1 < at && r.nameAt(k+1) > 0:
			k++
		default:
			return false
		}
	}
	return r.nameAt(at-1) > 0 || r.prevKind(at).is(wName)
}

// asYouLike are the verbs of an "if" that is said after what it is of: "leave it, if you like".
var asYouLike = set("like want can could need wish prefer see have 've know remember must fancy get got 's is are")
