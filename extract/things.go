package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
)

// thing is one fastener or part of the machine, gathered from all its names.
type thing struct {
	name     string // the fullest name heard, "" where the talk does not tell
	head     string
	mods     map[string]bool
	owner    *thing // the part that a fastener holds, where that is how it was named
	or       *thing // another that it may as well be, or the part that it may as well hold
	fastener bool
	side     string
	place    string
	count    int
	plural   bool
	first    int // token of its first mention
	last     int // token of its last mention
	worked   int // token after which it was last spoken of for itself, not in passing; 0 where it never was
	events   []event
	left     outcome // how the events leave it
	mentions []int
	isNew    bool
	turned   bool     // something was done to it that is done to fasteners: a collar spun on by hand
	mate     bool     // spoken of in one breath with a fastener of another word: a bolt with its nut
	twin     *thing   // the thing this one was told apart from by its side
	split    []*thing // those of it that were told apart by their places
	of       *thing   // what it was told apart from by its place
	apart    bool     // nothing is left of it but those told apart
	deferred int      // token at which its going back was put off, 0 where it never was
	id       string
}

// outcome is how the first n events of a thing leave it. Events are added at the
// end, so that only what is new need be followed; what takes one away clears it.
type outcome struct {
	n      int
	state  string
	value  bool
	backed bool // it was turned back on purpose since
}

// backedOff is the event of a fastener that is turned back by so much: seated to a value,
// then let go again.
const backedOff = "back off"

type event struct {
	action string
	act    int // index into acts, or -1 where none says it
	rule   string
	lo, hi int
	off    bool // off camera
	value  bool
}

// lastBefore gives what happened last to a thing before a token, nil where nothing did.
func (t *thing) lastBefore(tok int) (last *event) {
	for i := range t.events {
		if e := &t.events[i]; e.lo < tok {
			last = e
		}
	}
	return last
}

// onlyNamed tells whether nobody said that the thing came off: it was named with what
// turns it.
func (e *event) onlyNamed() bool {
	return e.rule == namedWithTool || e.rule == toolThenName || e.rule == inARow
}

// nutAndBolt tells whether one of two words is nut and the other a bolt, screw or stud: one
// goes on the other, and nobody calls them by each other's name.
func nutAndBolt(a, b string) bool {
	return (a == "nut") != (b == "nut") && a != "fastener" && b != "fastener"
}

// alike are the fastener words that people swap for one and the same thing.
var alike = set("bolt nut screw stud fastener")

// traverses are the words that make of a screw or a nut a moving part of the machine.
var traverses = set("lead feed jack vice vise elevating cross acme half quill ball raising traverse")

// works tells whether a thing is a screw or a nut that moves a machine, and holds nothing.
func (t *thing) works() bool {
	if t.head == "screw" || t.head == "nut" {
		for w := range t.mods {
			if traverses.has(w) {
				return true
			}
		}
	}
	return false
}

// meters tells whether a thing is a screw that is set by how far it is turned, and not tightened.
func (t *thing) meters() bool {
	return t.head == "screw" && (t.mods["air"] || t.mods["mixture"] || t.mods["idle"] || t.mods["tickover"] || t.mods["pilot"] || t.mods["volume"])
}

func isLock(t *thing) bool {
	switch t.head {
	case "circlip", "cotter", "snap ring", "retaining ring":
		return true
	case "pin", "key":
		return t.mods["split"] || t.mods["cotter"] || t.mods["roll"] || t.mods["lock"] || t.mods["linch"] || t.mods["lynch"] || t.mods["retaining"] || t.mods["hitch"] || t.mods["pad"] || t.mods["clevis"]
	case "clip":
		return t.mods["r"] || t.mods["spring"] || t.mods["retaining"] || t.mods["e"] || t.mods["c"] || t.mods["wire"] || t.mods["lock"] || t.mods["hairpin"]
	case "wire":
		return t.mods["lock"] || t.mods["safety"] || t.mods["locking"]
	case "lockwire":
		return true
	case "tab", "washer", "plate":
		return t.mods["lock"] || t.mods["tab"] || t.mods["locking"]
	case "ring":
		return t.mods["snap"] || t.mods["retaining"]
	}
	return false
}

// onlyLocks tells whether a thing keeps another where it is and has no thread: a split pin is
// never tightened, a pad pin may be.
func (t *thing) onlyLocks() bool {
	return isLock(t) && !takesTorque(t) && !t.mods["pad"] && !t.mods["retaining"]
}

// takesTorque tells whether a thing of that kind is tightened to a value.
func takesTorque(t *thing) bool {
	switch t.head {
	case "plug":
		// a connector's plug is pushed in, and a bare one may be the one in the wall
		return contentCount(t.mods) == 0 && t.tightenedOnce() || t.mods["drain"] || t.mods["filler"] || t.mods["fill"] || t.mods["spark"] || t.mods["sump"] || t.mods["level"] || t.mods["glow"] || t.mods["vent"] || t.mods["oil"] || t.mods["magnetic"] || t.mods["check"]
	case "screw", "nut":
		return !t.works() && !t.meters()
	case "spindle":
		return t.tightenedOnce() || t.mods["wheel"] // not that of a drill or a lathe
	case "bolt", "stud", "axle", "union", "banjo", "lockring", "locknut", "nipple", "nylock", "nyloc", "setscrew", "cup", "fitting":
		return true
	case "cap":
		return t.mods["fork"] || t.mods["top"] || t.mods["preload"]
	case "pin":
		return t.mods["guide"] || t.mods["slide"] || t.mods["slider"] || t.mods["sliding"] || t.mods["caliper"] || t.mods["king"]
	}
	return t.fastener && !isLock(t) && !neverTorqued.has(t.head)
}

// tightenedOnce tells whether a thing was turned tight or loose at any time.
func (t *thing) tightenedOnce() bool {
	for _, e := range t.events {
		switch e.action {
		case "tighten", "torque", "start by hand", "slacken":
			return true
		}
	}
	return false
}

// neverTorqued are the fastenings that are not tightened to a value.
var neverTorqued = wordsOf("never tightened to a value")

// among lets words be looked up.
func among(words []string) map[string]bool {
	of := make(map[string]bool, len(words))
	for _, w := range words {
		of[w] = true
	}
	return of
}

// content gives the words of a mention that tell things apart, places aside.
func content(mods []string) []string {
	var out []string
	for _, w := range mods {
		if !placeWords.has(w) && w != "hand" && w != "side" && w != "bloody" {
			out = append(out, w)
		}
	}
	return out
}

var placeTwin = map[string]string{"top": "upper", "bottom": "lower", "back": "rear", "inside": "inner", "outside": "outer", "nearside": "left", "offside": "right"}
var opposite = map[string]string{"upper": "lower", "lower": "upper", "front": "rear", "rear": "front", "inner": "outer", "outer": "inner", "left": "right", "right": "left", "long": "short", "short": "long"}

func canonPlace(w string) string {
	if c := placeTwin[w]; c != "" {
		return c
	}
	return w
}

func placesClash(a []string, b map[string]bool) bool {
	for _, x := range a {
		if placeWords.has(x) && clashes(x, b) {
			return true
		}
	}
	return false
}

// clashes tells whether a word of place and the words of a thing exclude each other.
func clashes(x string, b map[string]bool) bool {
	o := opposite[canonPlace(x)]
	if o == "" {
		return false
	}
	if b[o] {
		return true
	}
	for said, canon := range placeTwin {
		if canon == o && b[said] {
			return true
		}
	}
	return false
}

// contentCount counts the words of a thing that tell it apart, places aside.
func contentCount(m map[string]bool) int {
	n := 0
	for w := range m {
		if !placeWords.has(w) && w != "hand" && w != "side" && w != "bloody" {
			n++
		}
	}
	return n
}

// takeWords lets a fastener be known by the words of the part that it holds.
func (t *thing) takeWords(part *thing) {
	for w := range part.mods {
		t.mods[w] = true
	}
	for _, w := range strings.Fields(part.head) {
		t.mods[w] = true
	}
}

// christen lets fasteners spoken of without a name have the one that is said at last.
func (t *thing) christen(m *mention) {
	if t.head == "fastener" && m.head != "fastener" && t.owner != nil {
		t.head, t.name = m.head, lexicon.Modifier(t.owner.name)+" "+headName(m)
	}
}

// generic words say what a fastener does, not which one it is.
var generic = set("pinch clamp mounting retaining securing fixing adjusting adjuster adjustment tension locking lock split drain jam cover stop grub set flange cap dome stiff")

// lookBack bounds how many things of one kind are looked back at: beyond that,
// nobody means them by a word.
const lookBack = 60

// addThing adds a thing to those spoken of.
func (r *reading) addThing(t *thing) {
	r.things = append(r.things, t)
	if r.byHead == nil {
		r.byHead = map[string][]*thing{}
	}
	k := headKey(t.head, t.fastener)
	r.byHead[k] = append(r.byHead[k], t)
}

// like gives the latest things that a head may stand for, the latest last.
func (r *reading) like(head string, fastener bool) []*thing {
	l := r.byHead[headKey(head, fastener)]
	return l[max(0, len(l)-lookBack):]
}

// headKey is one for all the fastener words that people swap, and the last word
// of a head of two.
func headKey(head string, fastener bool) string {
	if fastener && alike.has(head) {
		return "bolt"
	}
	return head[strings.LastIndexByte(head, ' ')+1:]
}

// root gives the thing that all which were told apart from it by their side come from.
func (t *thing) root() *thing {
	for t.twin != nil {
		t = t.twin
	}
	return t
}

func headName(m *mention) string {
	if m.plural {
		return lexicon.Plural(m.head)
	}
	return m.head
}

// thingName is the name of a mention without its side.
func thingName(m *mention) string {
	var keep []string
	for i, w := range m.mods {
		if sideOf[w] != "" || (w == "hand" || w == "side") && i > 0 || dropAdj.has(w) || w == "far" || w == "near" {
			continue
		}
		keep = append(keep, w)
	}
	n := strings.Fields(strings.Join(append(keep, headName(m)), " "))
	if len(n) > 6 {
		n = n[len(n)-6:]
	}
	return strings.Join(n, " ")
}

// ownsNothing are parts that no bolt is named after.
var ownsNothing = wordsOf("what no bolt is named after")

// ownsNone tells whether a head is one that no bolt is named after.
func ownsNone(head string) bool {
	switch head {
	case "push rod", "o ring", "snap ring", "piston ring", "spring ring", "retaining ring", "seal ring":
		return true
	}
	return ownsNothing.has(head)
}

// ownsNone tells whether a thing is one that no bolt is named after. The cap of a
// bearing has bolts, no other cap has.
func (t *thing) ownsNone() bool {
	return ownsNone(t.head) && !(t.head == "cap" && (t.mods["cam"] || t.mods["bearing"] || t.mods["main"] || t.mods["journal"]))
}

// ownsNone is the same of what is named.
func (m *mention) ownsNone() bool {
	if m.head == "cap" {
		for _, w := range m.mods {
			if w == "cam" || w == "bearing" || w == "main" || w == "journal" {
				return false
			}
		}
	}
	return ownsNone(m.head)
}

// owns tells whether the fastener is named after the part: "caliper bolt" after "brake caliper".
func owns(owner, t *thing) bool {
	if owner.head == "wheel" && t.mods["lug"] {
		return true // what holds a wheel on has a name of its own
	}
	if !t.mods[owner.head] || !owner.mayOwn(t) || t.owner != nil && t.owner != owner && t.owner.head == owner.head && contentCount(owner.mods) > contentCount(t.owner.mods) {
		return false // "plate bolts" are those of the plate on the post, not of the latch plate
	}
	for w := range owner.mods {
		if placeWords.has(w) && clashes(w, t.mods) {
			return false
		}
	}
	return true
}

// mayOwn tells whether the words that tell a part apart allow that a fastener's
// words mean it: the bolts of the water pump cover are not the clutch cover's.
func (part *thing) mayOwn(t *thing) bool {
	if contentCount(part.mods) == 0 || part.mods[part.head] {
		return true
	}
	others := false
	for w := range t.mods {
		switch {
		case placeWords.has(w) || w == part.head || generic.has(w):
		case part.mods[w]:
			return true
		default:
			others = true
		}
	}
	return !others
}

// tightens are the parts that are tightened themselves.
var tightens = wordsOf("tightened themselves")

// slidBack are the parts that are slid back out of the way of what they hold.
var slidBack = wordsOf("slid back")

// screwedOn are the parts that are left hand-tight where they are said to be.
var screwedOn = wordsOf("left by hand as caps are")

// fastens are the acts that are done to fasteners.
var fastens = map[string]bool{"slacken": true, "tighten": true, "torque": true, "start by hand": true}

var ledgerActs = map[string]string{
	"remove": Removed, "disconnect": Removed, "slacken": Loosened, "fit": Refitted, "start by hand": HandTight,
	"tighten": Tightened, "torque": Torqued, "discard": Discarded, "replace": Refitted, "leave off": Removed,
}

// state follows a thing's events to how it was left.
func (t *thing) state() (state string, value bool) {
	l := &t.left
	for ; l.n < len(t.events); l.n++ {
		e := &t.events[l.n]
		if e.action == backedOff {
			l.backed = true
			continue
		}
		n := ledgerActs[e.action]
		switch n {
		case Loosened:
			if l.state == Removed && !(l.n > 0 && t.events[l.n-1].onlyNamed()) || l.state == Discarded {
				continue
			}
			if l.state == Refitted || l.state == HandTight {
				n = HandTight // put on and left slack
			}
			l.state, l.value = n, false
		case Refitted:
			// told again after it was tightened: no step back
			if (l.state == Torqued || l.state == Tightened || l.state == HandTight) && e.action == "fit" {
				continue
			}
			l.state = n
		case HandTight:
			if l.state == Torqued && !l.backed {
				continue
			}
			l.state, l.value = n, false
		case Torqued:
			l.state = n
			l.value = l.value || e.value
		case Tightened:
			if l.state == Torqued {
				continue
			}
			l.state = n
		default:
			l.state, l.value = n, false
		}
	}
	return l.state, l.value
}
