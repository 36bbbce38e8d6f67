package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// thing is one fastener or part of the machine, gathered from all its names.
type thing struct {
	name     string // the fullest name heard, "" where the talk does not tell
	head     string
	mods     map[string]bool
	owner    *thing // the part that a fastener holds, where that is how it was named
	fastener bool
	side     string
	place    string
	count    int
	plural   bool
	first    int // token of its first mention
	last     int // token of its last mention
	events   []event
	left     outcome // how the events leave it
	mentions []int
	isNew    bool
	turned   bool   // something was done to it that is done to fasteners: a collar spun on by hand
	mate     bool   // spoken of in one breath with a fastener of another word: a bolt with its nut
	twin     *thing // the thing this one was told apart from by its side
	id       string
}

// outcome is how the first n events of a thing leave it. Events are added at the
// end, so that only what is new need be followed; what takes one away clears it.
type outcome struct {
	n     int
	state string
	value bool
}

type event struct {
	action string
	act    int // index into acts, or -1 where none says it
	rule   string
	lo, hi int
	off    bool // off camera
	value  bool
}

// nutAndStud tells whether two words are nut and stud: one goes on the other.
func nutAndStud(a, b string) bool { return a == "nut" && b == "stud" || a == "stud" && b == "nut" }

// alike are the fastener words that people swap for one and the same thing.
var alike = set("bolt nut screw stud fastener")

func isLock(t *thing) bool {
	switch t.head {
	case "circlip", "cotter":
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

// beside are the prepositions of a thing that only tells where another is.
var beside = set("by near beside towards toward opposite against past above below across along")

// takesTorque tells whether a thing of that kind is tightened to a value.
func takesTorque(t *thing) bool {
	switch t.head {
	case "plug":
		// a connector's plug is pushed in, and a bare one may be the one in the wall
		return contentCount(t.mods) == 0 && t.tightenedOnce() || t.mods["drain"] || t.mods["filler"] || t.mods["fill"] || t.mods["spark"] || t.mods["sump"] || t.mods["level"] || t.mods["glow"] || t.mods["vent"] || t.mods["oil"] || t.mods["magnetic"] || t.mods["check"]
	case "bolt", "nut", "screw", "stud", "axle", "union", "banjo", "lockring", "locknut", "nipple", "spindle", "nylock", "nyloc", "setscrew", "cup", "fitting":
		return true
	case "cap":
		return t.mods["fork"] || t.mods["top"] || t.mods["preload"]
	case "pin":
		return t.mods["guide"] || t.mods["slide"] || t.mods["slider"] || t.mods["sliding"] || t.mods["caliper"] || t.mods["king"]
	}
	return t.fastener && !isLock(t) && !neverTorqued[t.head]
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
var neverTorqued = set("pin clip key clamp rivet link ring lock skewer wire bolts dowel tab washer hairpin strap tie hook latch")

// refer walks the talk and tells which thing each phrase stands for, and what
// happened to it.
func (r *reading) refer() {
	st := &tracker{r: r}
	for ci := range r.clauses {
		st.clause(ci)
	}
	r.implied()
}

// implied lets a part be back where its own fastener was fitted after it came
// off: bolts are not torqued into thin air.
func (r *reading) implied() {
	byOwner := map[*thing][]*thing{}
	byWord := map[string][]*thing{}
	for _, f := range r.things {
		if !f.fastener {
			continue
		}
		if f.owner != nil {
			byOwner[f.owner] = append(byOwner[f.owner], f)
		}
		for w := range f.mods {
			byWord[w] = append(byWord[w], f)
		}
	}
	for _, t := range r.things {
		if t.fastener || len(t.events) == 0 {
			continue
		}
		if st, _ := t.state(); st != Removed {
			continue
		}
		off := t.events[len(t.events)-1].lo
		for _, f := range append(byOwner[t], byWord[t.head]...) {
			if f.owner != t && !(owns(t, f) && (t.side == "" || f.side == "" || t.side == f.side)) {
				continue
			}
			for _, e := range f.events {
				switch e.action {
				case "fit", "start by hand", "tighten", "torque":
					if e.lo > off {
						t.events = append(t.events, event{action: "fit", act: -1, rule: "implied by its fastener", lo: e.lo, hi: e.hi})
						off = 1 << 30
					}
				}
			}
		}
	}
}

// tracker is what a listener has in mind at one moment of the talk.
type tracker struct {
	r       *reading
	hand    []*thing // things spoken of, the latest last
	topic   *thing   // the part that a clause of its own announced: "Master cylinder.", "Fender back on."
	topicAt int      // token of the clause that announced it
	side    string   // which side the talk is on, "" where not said
	sideAt  int
	fitted  int    // token of the last thing that went back on, 0 before any
	turns   []turn // how things came off and went on of late, the latest last
}

func (s *tracker) clause(ci int) {
	r := s.r
	c := &r.clauses[ci]
	if sd := s.clauseSide(c); sd != "" {
		s.side, s.sideAt = sd, c.lo
	} else if r.since(s.sideAt, c.lo) > 25 {
		s.side = ""
	}
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.kind&lexicon.Tool != 0 && m.kind&(lexicon.Fastener) == 0 && (m.prep == "with" || m.prep == "using") {
			continue
		}
		if m.kind == lexicon.Tool|lexicon.Part && (!r.inAct(ci, mi) || r.actOn(ci, mi) == "place") {
			continue
		}
		if w := r.word(m.hi + 1); m.head == "driver" && r.word(m.hi) == "set" && (w == "at" || w == "to") {
			continue // "I've got the driver set at two": what it is done with
		}
		t := s.resolve(ci, mi)
		if t == nil {
			continue
		}
		m.entry = t
		t.mentions = append(t.mentions, mi)
		t.last = m.lo
		if (!beside[m.prep] || r.inAct(ci, mi)) && !r.heldStill(ci, mi) || t.fastener {
			s.touch(t)
		}
		if t.fastener && alike[t.head] {
			for _, k := range c.mentions {
				if o := r.mentions[k].entry; o != nil && o != t && o.fastener && alike[o.head] && o.head != t.head {
					o.mate, t.mate = true, true
				}
			}
		}
	}
	if c.together && c.mood&(negated|conditional|hypothetical|announced|asked|advert) == 0 && len(c.mentions) == 0 {
		s.fitted = c.lo
		s.turns = append(s.turns, turn{c.lo, false}, turn{c.lo, false}, turn{c.lo, false})
	}
	s.turn(c)
	s.bySize(c)
	s.inTurn(c)
	for _, ai := range c.acts {
		s.apply(ci, ai, &r.acts[ai])
	}
	s.values(ci)
}

// headingOf gives the thing that a clause does nothing but name: "Now the
// fender.", "Master cylinder.", "Drain bolt next."
func (s *tracker) headingOf(c *clause) *thing {
	r := s.r
	if len(c.acts) > 0 || len(c.mentions) != 1 || c.mood&(advert|greeting|listing|negated|asked) != 0 {
		return nil
	}
	m := &r.mentions[c.mentions[0]]
	if m.entry == nil || m.prep != "" && m.prep != "for" {
		return nil
	}
	unknown := 0
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		if r.toks[i].men >= 0 || i >= m.from && i < m.hi || openers[w] || dropWords[w] || placeWords[w] || w == "side" || w == "and" || w == "next" || w == "first" || w == "for" {
			continue
		}
		// "right, different subject, the thermostat housing"
		if unknown++; unknown > 2 || i > m.from || linking[w] || subjects[w] || r.isVerbForm(w) || prepositions[w] || m.count > 0 {
			return nil
		}
	}
	return m.entry
}

// turn follows the talk to the part that it turns to: the one that a clause does
// nothing but name, says is off or back on, or names before all else.
func (s *tracker) turn(c *clause) {
	r := s.r
	t := s.headingOf(c)
	if t == nil && len(c.mentions) == 1 && len(c.acts) == 1 && r.acts[c.acts[0]].verb < 0 && r.acts[c.acts[0]].happened() {
		t = r.mentions[c.mentions[0]].entry
		if o := r.acts[c.acts[0]].objects; len(o) > 0 {
			t = r.mentions[o[0]].entry // "Caliper. Over the disc.": not the disc
		}
	}
	if t == nil {
		t = s.fronted(c)
	}
	if t == nil {
		t = s.ledTo(c)
	}
	if t != nil && t.fastener {
		if t.owner == nil {
			t, s.topic = nil, nil
		} else {
			t = t.owner
		}
	}
	if t != nil && ownsNone(t.head) {
		return // "Chain.": what bolts come next are not the chain's
	}
	if t != nil {
		s.topic, s.topicAt = t, c.lo
	}
}

// fronted gives the thing that a clause names before all else: "Cam chain
// tensioner, two bolts", "thermostat housing i had that off as well".
func (s *tracker) fronted(c *clause) *thing {
	r := s.r
	if len(c.mentions) == 0 || c.mood&(advert|greeting|listing|negated|asked|conditional|hypothetical) != 0 {
		return nil
	}
	m := &r.mentions[c.mentions[0]]
	if m.entry == nil || ownsNone(m.head) || m.hi >= c.hi || !r.opens(c, m) {
		return nil
	}
	switch w := r.toks[m.hi].s; {
	case r.toks[m.hi-1].brk >= brkComma, w == "i" || w == "we" || w == "now":
		return m.entry
	}
	// "This plate on the post, that it was hanging off": where it is, then more of it
	if w := r.toks[m.hi].s; prepositions[w] && r.word(m.hi+1) == "the" && !r.done(c, c.mentions[0]) {
		for i := m.hi + 2; i < min(c.hi, m.hi+5); i++ {
			if r.toks[i].brk >= brkComma {
				return m.entry
			}
		}
	}
	return nil
}

// done tells whether a clause has work done to a mention.
func (r *reading) done(c *clause, mi int) bool {
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.happened() && slices.Contains(a.objects, mi) {
			return true
		}
	}
	return false
}

// ledTo gives the thing that a clause says the work goes on to: "I'll do the dog
// bone then", "on to the back wheel", "let's start with the cover".
func (s *tracker) ledTo(c *clause) *thing {
	r := s.r
	if len(c.mentions) != 1 || c.mood&(advert|greeting|listing|negated|asked|conditional|hypothetical) != 0 {
		return nil
	}
	m := &r.mentions[c.mentions[0]]
	if m.entry == nil || m.count > 0 {
		return nil
	}
	goes := false
	for i := c.lo; i < m.from; i++ {
		w := r.toks[i].s
		goes = goes || movesOn[w]
		if !movesOn[w] && !leadsOn[w] && !openers[w] && !dropWords[w] {
			return nil
		}
	}
	for i := m.hi; i < c.hi; i++ {
		if w := r.toks[i].s; !dropWords[w] && !openers[w] && w != "next" && w != "first" && w != "here" {
			return nil
		}
	}
	if !goes {
		return nil
	}
	return m.entry
}

// movesOn are the words by which talk goes on to another thing, leadsOn those that stand beside them.
var (
	movesOn = set("do doing start starting begin move moving onto tackle tackling turn attack attacking sits lives reach")
	leadsOn = set("i i'll 'll we i'm 'm 're let's let us gonna going go to will can with on over get getting back have a next is 's for then now it time the and crack here there this you")
)

// inTurn lets things that had come off be back where a clause with no verb names
// them in their turn, while other things go back on: "Spacer, washer, and the nut."
// A lock is back only where that is said.
func (s *tracker) inTurn(c *clause) {
	r := s.r
	if len(c.acts) > 0 || len(c.mentions) == 0 || c.mood != 0 {
		return
	}
	for i := c.lo; i < c.hi; i++ {
		if t := r.toks[i]; t.men < 0 && (linking[t.s] || subjects[t.s] && t.s != "that" || offWords[t.s] || t.s == "'s" || t.s == "not" || t.s == "no" || t.s == "later" || t.s == "tomorrow") {
			return
		}
	}
	back := func(m *mention, mi int) {
		x := act2(r.lex.Action("fit"), m.from, m.hi, mi)
		x.rule = inItsTurn
		r.addAct(m.cl, x)
	}
	for k, mi := range c.mentions {
		m := &r.mentions[mi]
		t := m.entry
		if t == nil || isLock(t) || !(r.bareElement(c, mi) || k == 0 && r.opens(c, m)) || r.leadsIn(m) {
			continue
		}
		if len(t.events) == 0 {
			if s.fitting(m.lo) && r.since(t.first, m.lo) > 60 && !turnsWork(r.toks[c.lo:m.from]) {
				back(m, mi)
			}
			continue
		}
		off := t.events[len(t.events)-1].lo
		if st, _ := t.state(); st != Removed && st != Discarded || s.fitted <= off || r.since(off, m.lo) < 15 {
			continue
		}
		back(m, mi)
	}
}

// leadsIn tells whether a mention only leads in what is said of it: "Cable: I had
// slackened the adjuster", "the cable, I haven't touched".
func (r *reading) leadsIn(m *mention) bool {
	if end := int(r.toks[m.hi-1].hi); end < len(r.talk.Text) && r.talk.Text[end] == ':' {
		return true
	}
	if m.hi >= len(r.toks) || r.toks[m.hi-1].brk == brkSentence {
		return false
	}
	if w := r.toks[m.hi].s; w != "i" && w != "we" {
		return false
	}
	for i := m.hi + 1; i < m.hi+4; i++ {
		switch r.word(i) {
		case "haven't", "had", "'d", "didn't", "not", "never", "left", "won't", "can't", "couldn't":
			return true
		}
	}
	return false
}

// turnsWork tells whether words turn to another piece of work: "Now the carburettor."
func turnsWork(toks []tok) bool {
	for i := range toks {
		if w := toks[i].s; w == "now" || w == "next" || w == "first" {
			return true
		}
	}
	return false
}

// inItsTurn is the rule of a thing that is back since it was named in its turn.
const inItsTurn = "named in its turn while things go back on"

// opens tells whether a mention stands before all else in its clause.
func (r *reading) opens(c *clause, m *mention) bool {
	if m.prep != "" {
		return false
	}
	for i := c.lo; i < m.from; i++ {
		if w := r.toks[i].s; !openers[w] && !dropWords[w] && w != "and" && w != "next" {
			return false
		}
	}
	return true
}

// onTopic gives the part that the talk last turned to, while it may still be about it.
func (s *tracker) onTopic(at int) *thing {
	if s.topic == nil || s.r.since(s.topicAt, at) > 45 {
		return nil
	}
	return s.topic
}

// clauseSide gives the side that a clause speaks of, where it names just one.
func (s *tracker) clauseSide(c *clause) string {
	r := s.r
	side := ""
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		if w != "left" && w != "right" && w != "nearside" && w != "offside" && !(w == "near" || w == "off") {
			continue
		}
		next := r.word(i + 1)
		prev := ""
		if i > c.lo {
			prev = r.toks[i-1].s
		}
		if (w == "near" || w == "off") && next != "side" {
			continue
		}
		if w == "right" || w == "left" {
			ok := next == "one" || next == "side" || next == "hand" || next == "ones" || (prev == "the" || prev == "on") && (r.toks[i].brk > brkPause || next == "and" || next == "") || r.toks[i].men >= 0
			if !ok || next == "way" {
				continue
			}
		}
		v := sideOf[w]
		if v == "" {
			v = w + " side"
		}
		if side != "" && side != v {
			return ""
		}
		side = v
	}
	return side
}

func (s *tracker) touch(t *thing) {
	for i, h := range s.hand {
		if h == t {
			s.hand = append(append(s.hand[:i:i], s.hand[i+1:]...), t)
			return
		}
	}
	s.hand = append(s.hand, t)
	if len(s.hand) > 40 {
		s.hand = s.hand[1:]
	}
}

// content gives the words of a mention that tell things apart, places aside.
func content(mods []string) []string {
	var out []string
	for _, w := range mods {
		if !placeWords[w] && w != "hand" && w != "side" && w != "bloody" {
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
		if placeWords[x] && clashes(x, b) {
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
		if !placeWords[w] && w != "hand" && w != "side" && w != "bloody" {
			n++
		}
	}
	return n
}

// resolve tells which thing a mention stands for, or makes a new one.
func (s *tracker) resolve(ci, mi int) *thing {
	r := s.r
	m := &r.mentions[mi]
	fastener := m.kind&lexicon.Fastener != 0
	cont := content(m.mods)
	side := m.side
	bare := len(cont) == 0
	var owner *thing
	if fastener && bare && alike[m.head] {
		owner = s.ownerOf(ci, mi)
		if owner != nil && owner.side != "" && side == "" {
			side = owner.side
		}
	}
	if side == "" && s.side != "" && r.since(s.sideAt, m.lo) < 8 && bare && fastener {
		side = s.side
	}
	// a bare fastener in hand
	if fastener && bare && alike[m.head] {
		if t := s.inHandFastener(mi, owner, side); t != nil {
			t.christen(m)
			if w := whereOf(m); w != "" && t.count > 1 && (m.count == 0 || m.count < t.count) && t.name != "" && !t.mods[w] && !t.mods[canonPlace(w)] {
				return s.placed(t, w, m.plural, m.lo)
			}
			return s.sided(t, m, side)
		}
		name := ""
		t := &thing{head: m.head, mods: map[string]bool{}, fastener: true, plural: m.plural, count: m.count, first: m.lo}
		if owner != nil {
			t.owner = owner
			t.takeWords(owner)
			name = lexicon.Modifier(owner.name) + " "
		}
		var pl []string
		for _, w := range m.mods {
			if placeWords[w] && sideOf[w] == "" {
				pl = append(pl, w)
				t.mods[w] = true
			}
		}
		t.place = strings.Join(pl, " ")
		if owner != nil || len(pl) > 0 {
			t.name = strings.TrimSpace(strings.Join(pl, " ") + " " + name + headName(m))
		}
		t.side = side
		r.addThing(t)
		return t
	}
	// a named thing
	if t := r.shortened(m, fastener); t != nil && !placesClash(m.mods, t.mods) {
		s.enrich(t, m)
		return s.sided(t, m, m.side)
	}
	var best *thing
	bestScore := -5
	only := r.onlyOne(m, fastener)
	if only == nil {
		only = r.onlyLeft(m, fastener, r.actOn(ci, mi))
	}
	like := r.like(m.head, fastener)
	for i := len(like) - 1; i >= 0; i-- {
		t := like[i]
		if t.fastener != fastener && !(t.head == m.head) {
			continue
		}
		if !(t.head == m.head || fastener && alike[t.head] && alike[m.head]) {
			// "the caliper" and "the brake caliper bracket" are not one thing
			continue
		}
		if placesClash(m.mods, t.mods) || nutAndStud(t.head, m.head) {
			continue
		}
		if m.side != "" && t.side != "" && m.side != t.side {
			continue
		}
		if fastener && m.place != "" && t.place == "" && len(t.events) > 0 && r.since(t.last, m.lo) > 20 {
			continue // "the upper pinch bolts" are not the pinch bolt of before
		}
		common, extra := 0, 0
		for _, w := range cont {
			if t.mods[w] {
				common++
			} else {
				extra++
			}
		}
		tc := contentCount(t.mods)
		missing := tc - common
		if extra > 0 && missing > 0 {
			continue
		}
		if fastener && (common == 0 && (len(cont) > 0 && tc > 0)) {
			continue
		}
		if t.head != m.head && (extra+missing > 0 || fastener && (t.plural || t.count > 1) != (m.plural || m.count > 1)) {
			continue // the hub nut is not one of the hub bolts
		}
		if fastener && len(cont) > 0 && tc == 0 && t.name != "" {
			continue
		}
		if common == 0 && (len(cont) > 0 || tc > 0) && t != only {
			// a bare "seal" is the dust seal only while that is being talked of
			if r.since(t.last, m.lo) > 45 || len(cont) == 0 && !m.definite && r.since(t.last, m.lo) > 15 {
				continue
			}
		}
		score := common*4 - extra*2 - missing*2
		if m.place != "" {
			for _, w := range m.mods {
				if placeWords[w] && (t.mods[w] || t.mods[canonPlace(w)]) {
					score += 3
				}
			}
		}
		if r.since(t.last, m.lo) < 60 {
			score += 2
		}
		if side != "" && t.side == side {
			score += 3
		}
		if t.head == m.head {
			score++
		}
		if score > bestScore {
			best, bestScore = t, score
		}
	}
	if best != nil && len(cont) == 0 && contentCount(best.mods) > 0 && r.introduced(m) {
		best = nil // "and there's a little white plug there": not the one of before
	}
	if best != nil && !(best.name == "") {
		s.enrich(best, m)
		return s.sided(best, m, m.side)
	}
	t := &thing{head: m.head, mods: map[string]bool{}, fastener: fastener, plural: m.plural, count: m.count, first: m.lo, name: thingName(m), side: m.side, place: m.place}
	if fastener && alike[m.head] && len(cont) > 0 && generic[cont[len(cont)-1]] {
		// "the pinch bolt for the axle": which pinch bolt it is, the part tells
		if o := s.ownerOf(ci, mi); o != nil && !strings.Contains(t.name, o.head) && r.since(o.last, m.lo) < 12 {
			t.owner = o
			t.name = lexicon.Modifier(o.name) + " " + t.name
			t.takeWords(o)
		}
	}
	for _, w := range m.mods {
		t.mods[w] = true
		t.mods[canonPlace(w)] = true
	}
	t.twin = s.otherSide(t)
	r.addThing(t)
	return t
}

// introduced tells whether a mention is of a thing that the talk comes to for the
// first time: "there's a plug", "you've got another clip".
func (r *reading) introduced(m *mention) bool {
	if m.from < 2 || m.plural || m.count > 1 {
		return false
	}
	article := false
	for i := m.from; i < m.lo; i++ {
		w := r.toks[i].s
		article = article || w == "a" || w == "an" || w == "another"
	}
	if !article {
		return false
	}
	switch r.toks[m.from-1].s {
	case "'s", "is", "got", "have", "find", "see":
		return true
	}
	return false
}

// unnamedOf gives the fasteners of a part that the talk speaks of without their
// name, "those", "all four", as one thing of its own.
func (s *tracker) unnamedOf(part *thing, at int) *thing {
	like := s.r.like("bolt", true)
	for i := len(like) - 1; i >= 0; i-- {
		if f := like[i]; takesTorque(f) && (f.owner == part || owns(part, f)) {
			return f
		}
	}
	t := &thing{name: lexicon.Modifier(part.name) + " fasteners", head: "fastener", mods: map[string]bool{}, owner: part, fastener: true, plural: true, side: part.side, first: at, last: at}
	t.takeWords(part)
	s.r.addThing(t)
	s.touch(t)
	return t
}

// bySize makes a thing of the fasteners that a clause names by their size alone:
// "so the two thirteens".
func (s *tracker) bySize(c *clause) {
	r := s.r
	for i := c.lo + 1; i < c.hi; i++ {
		if pluralSize[r.toks[i].s] == "" || r.toks[i].men >= 0 {
			continue
		}
		p := r.toks[i-1].s
		n := countOf[p]
		if n == 0 && p != "the" && p != "those" && p != "these" {
			continue
		}
		for _, mi := range c.mentions {
			if m := &r.mentions[mi]; m.kind&lexicon.Fastener != 0 {
				return // "bolts, two thirteens": their size
			}
		}
		part := s.partSpokenOf(c)
		if part == nil {
			return
		}
		f := s.unnamedOf(part, i)
		if f.count == 0 && n > 1 {
			f.count = n
		}
		f.last = max(f.last, i)
		s.touch(f)
		return
	}
}

// partSpokenOf gives the part that a clause may speak of the fasteners of: the one
// it names, else the topic, else the one spoken of last.
func (s *tracker) partSpokenOf(c *clause) *thing {
	r := s.r
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.entry != nil && !m.entry.fastener && !ownsNone(m.head) && !wholes[m.head] {
			return m.entry
		}
	}
	for i := len(s.hand) - 1; i >= 0 && r.since(s.hand[i].last, c.lo) < 15; i-- {
		if t := s.hand[i]; !t.fastener && !ownsNone(t.head) && !wholes[t.head] {
			return t
		}
	}
	return s.onTopic(c.lo)
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
	if fastener && alike[head] {
		return "bolt"
	}
	return head[strings.LastIndexByte(head, ' ')+1:]
}

// shortened gives the one thing that a bare head is the last word of: "the arm" is
// the crank arm, where no other arm is spoken of.
func (r *reading) shortened(m *mention, fastener bool) *thing {
	if len(content(m.mods)) > 0 {
		return nil
	}
	var one *thing
	for _, t := range r.like(m.head, fastener) {
		switch {
		case t.head == m.head:
			return nil
		case t.fastener != fastener || t.twin != nil || !strings.HasSuffix(t.head, " "+m.head):
		case one != nil:
			return nil
		default:
			one = t
		}
	}
	return one
}

// onlyOne gives the one thing spoken of with the mention's head, where there is
// just one and the mention says no more than the head.
func (r *reading) onlyOne(m *mention, fastener bool) *thing {
	if len(content(m.mods)) > 0 {
		return nil
	}
	var one *thing
	for _, t := range r.like(m.head, fastener) {
		if t.head == m.head && t.fastener == fastener && t.twin == nil {
			if one != nil {
				return nil
			}
			one = t
		}
	}
	return one
}

// onlyLeft gives the one thing of several with the mention's head that is off when
// one of them is said to go on: "Cover on.", where the other cover is on already.
func (r *reading) onlyLeft(m *mention, fastener bool, act string) *thing {
	if len(content(m.mods)) > 0 || act != "fit" || m.isNew || m.plural {
		return nil
	}
	var one *thing
	for _, t := range r.like(m.head, fastener) {
		if t.head != m.head || t.fastener != fastener {
			continue
		}
		if st, _ := t.state(); st == Removed {
			if one != nil {
				return nil
			}
			one = t
		}
	}
	return one
}

// enrich lets a later, fuller name or a count add to what is known.
func (s *tracker) enrich(t *thing, m *mention) {
	if t.count == 0 && m.count > 1 {
		t.count = m.count
	}
	t.christen(m)
	if n := thingName(m); len(content(m.mods)) > contentCount(t.mods) && t.owner == nil && (t.fastener || len(t.events) == 0) {
		t.name = n
	}
	for _, w := range content(m.mods) {
		t.mods[w] = true
	}
	t.plural = t.plural || m.plural
	if t.place == "" && m.place != "" {
		t.place = m.place
		for _, w := range m.mods {
			if placeWords[w] {
				t.mods[w] = true
				t.mods[canonPlace(w)] = true
			}
		}
		if t.fastener && t.owner == nil && !strings.Contains(t.name, m.place) {
			t.name = strings.TrimSpace(m.place + " " + t.name)
		}
	}
}

// otherSide gives the thing that a new one is the left or right of, told by its name alone.
func (s *tracker) otherSide(t *thing) *thing {
	if t.side == "" {
		return nil
	}
	for _, o := range s.r.like(t.head, t.fastener) {
		if o.head == t.head && o.side != "" && o.side != t.side && o.place == t.place && contentCount(o.mods) == contentCount(t.mods) {
			return o.root()
		}
	}
	return nil
}

// bothSides gives what a plural without a side stands for: the left and the right of it.
func (s *tracker) bothSides(t *thing, m *mention) []*thing {
	if !m.plural && m.count < 2 || m.side != "" || t.side == "" {
		return []*thing{t}
	}
	out := []*thing{t}
	for _, o := range s.r.like(t.head, t.fastener) {
		if o != t && o.root() == t.root() && o.side != "" {
			out = append(out, o)
		}
	}
	return out
}

// root gives the thing that all which were told apart from it by their side come from.
func (t *thing) root() *thing {
	for t.twin != nil {
		t = t.twin
	}
	return t
}

// sided keeps left and right apart: a thing spoken of with another side than its own is its twin.
func (s *tracker) sided(t *thing, m *mention, side string) *thing {
	if side == "" || t.side == side {
		return t
	}
	for _, o := range s.r.like(t.head, t.fastener) {
		if o.twin == t && o.side == side || t.twin != nil && (o.twin == t.twin || o == t.twin) && o.side == side {
			return o
		}
	}
	if t.side == "" {
		if len(t.events) == 0 || m.side == "" {
			if len(t.events) == 0 && m.side != "" {
				t.side = side
			}
			return t
		}
	}
	c := *t
	c.mods = map[string]bool{}
	for k := range t.mods {
		if sideOf[k] == "" {
			c.mods[k] = true
		}
	}
	c.side = side
	c.twin = t
	c.first = m.lo
	c.mentions = nil
	if t.side != "" {
		c.events, c.left = nil, outcome{}
	} else {
		c.events = append([]event{}, t.events...)
	}
	s.r.addThing(&c)
	return &c
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
		if sideOf[w] != "" || (w == "hand" || w == "side") && i > 0 || dropAdj[w] || w == "far" || w == "near" {
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

// ownerOf tells which part an unnamed fastener holds: one named beside it, or what the talk is about.
func (s *tracker) ownerOf(ci, mi int) *thing {
	r := s.r
	m := &r.mentions[mi]
	c := &r.clauses[ci]
	var before, after *mention
	for _, k := range c.mentions {
		o := &r.mentions[k]
		if (o.kind&lexicon.Part == 0 || o.kind&lexicon.Fastener != 0) && !heldByBolts[o.head] || k == mi || ownsNone(o.head) {
			continue
		}
		if o.hi <= m.from {
			if o.prep == "from" || o.prep == "with" || o.prep == "behind" || o.prep == "off" || o.prep == "under" || o.prep == "over" {
				continue
			}
			// "this bracket that holds the hose": the bracket, not the hose
			if before == nil || o.prep == "" && !r.holdsBetween(before.hi, o.from) || before.prep != "" && o.prep == "" {
				before = o
			}
		} else if after == nil && o.from >= m.hi && (o.prep != "" && o.prep != "with" && o.prep != "from" && o.prep != "behind" || r.holdsBetween(m.hi, o.from)) {
			after = o
		}
	}
	if after == nil && c.hi < len(r.toks) {
		// "two nuts | which are holding the risers"
		n := &r.clauses[r.toks[c.hi].cl]
		if w := r.toks[n.lo].s; (w == "which" || w == "that" || w == "holding") && n.sentence == c.sentence && c.hi-m.hi <= 3 {
			for _, k := range n.mentions {
				if o := &r.mentions[k]; o.kind&lexicon.Part != 0 && o.kind&lexicon.Fastener == 0 && r.holdsBetween(n.lo, o.from) {
					if o.entry == nil {
						o.entry = s.resolve(r.toks[n.lo].cl, k)
					}
					return o.entry
				}
			}
		}
	}
	if after != nil && after.from-m.hi <= 6 {
		if after.entry == nil {
			k := r.toks[after.lo].men
			if t := s.resolve(ci, k); t != nil {
				r.mentions[k].entry = t
			}
		}
		return r.mentions[r.toks[after.lo].men].entry
	}
	if before != nil && before.entry != nil {
		return before.entry
	}
	if t := s.onTopic(m.lo); t != nil {
		if o := s.justWorkedOn(ci); o != nil && o != t && r.opens(c, m) {
			return o // "she's moved the latch plate up. Two bolts."
		}
		return t
	}
	// what the talk is about: the latest part that a clause of its own was about
	for pass := 0; pass < 2; pass++ {
		for k := ci - 1; k >= 0 && r.since(r.clauses[k].lo, m.lo) < 40; k-- {
			p := &r.clauses[k]
			if pass == 0 && (subordinate[r.toks[p.lo].s] || p.mood&(warned|other|hypothetical|conditional|advert|greeting|negated) != 0) {
				continue
			}
			for i := len(p.mentions) - 1; i >= 0; i-- {
				o := &r.mentions[p.mentions[i]]
				if o.entry == nil || o.entry.fastener || o.kind&lexicon.Part == 0 || ownsNone(o.head) {
					continue
				}
				if pass == 0 && o.prep != "" && o.prep != "on" && o.prep != "of" && o.prep != "for" && o.prep != "at" {
					continue
				}
				return o.entry
			}
		}
	}
	return nil
}

// justWorkedOn gives the part that the clause before does something to, where the
// talk did not turn to another since.
func (s *tracker) justWorkedOn(ci int) *thing {
	r := s.r
	if ci == 0 || s.topicAt >= r.clauses[ci-1].lo || r.since(r.clauses[ci-1].lo, r.clauses[ci].lo) > 12 {
		return nil
	}
	p := &r.clauses[ci-1]
	if p.mood&(warned|other|hypothetical|conditional|advert|greeting|negated) != 0 {
		return nil
	}
	for _, ai := range p.acts {
		for _, mi := range r.acts[ai].objects {
			if o := &r.mentions[mi]; o.entry != nil && o.kind&lexicon.Part != 0 && o.kind&lexicon.Fastener == 0 && !ownsNone(o.head) && ledgerActs[r.acts[ai].action.Name] == "" {
				return o.entry
			}
		}
	}
	return nil
}

// heldByBolts are fastenings with bolts or screws of their own.
var heldByBolts = set("axle spindle clamp clip")

// ownsNothing are parts that no bolt is named after.
var ownsNothing = set("washer gasket seal shim oil thread splines spline cap collar peg rubber grommet bush bushing sleeve spacer dowel ring o-ring circlip pin key boot lip edge corner end hole slot groove face insert roller ball tie chain belt cable pad shoe tyre tire tube piston wire cord rope race cage needle bulb fuse fluid")

// ownsNone tells whether a thing is one that no bolt is named after.
func ownsNone(head string) bool {
	switch head {
	case "o ring", "snap ring", "piston ring", "spring ring", "retaining ring", "seal ring":
		return true
	}
	return ownsNothing[head]
}

var subordinate = set("while because cause if when before until till otherwise unless whereas")

var holds = set("hold holds holding held secure secures securing retain retains retaining for goes going fasten fastens that")

func (r *reading) holdsBetween(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if holds[r.toks[i].s] {
			return true
		}
	}
	return false
}

// inHandFastener finds the fastener that a bare "the bolts", "two bolts" or
// "that nut" stands for: the likeliest of those spoken of, weighed by how lately
// it was spoken of, whose it is, and whether what is done to it now can follow
// what was done to it last.
func (s *tracker) inHandFastener(mi int, owner *thing, side string) *thing {
	r := s.r
	m := &r.mentions[mi]
	act := r.actOn(m.cl, mi)
	topic := s.onTopic(m.lo)
	same := s.handHas(m)
	var best *thing
	bestScore := 0
	for i := len(s.hand) - 1; i >= 0; i-- {
		t := s.hand[i]
		if !t.fastener || !alike[t.head] || placesClash(m.mods, t.mods) || nutAndStud(t.head, m.head) {
			continue
		}
		gap := r.since(t.last, m.lo)
		if t.head != m.head && (same || r.namedElse(t, m)) {
			continue // "two bolts and two nuts"
		}
		if t.head != m.head && t.head != "fastener" && (gap > 30 || t.owner == nil && contentCount(t.mods) > 0 && t.mods[m.head]) {
			continue
		}
		score := 0
		switch {
		case gap < 12:
			score += 4
		case gap < 30:
			score += 3
		case gap < 60:
			score += 2
		case gap < 240:
			score++
		}
		if t.head == m.head {
			score++
		}
		if owner != nil {
			if t.owner == owner || owns(owner, t) {
				score += 4
			} else if t.owner != nil || contentCount(t.mods) > 0 {
				if score -= 2; owner.last > t.last {
					score--
				} else if t.head == m.head && s.onlyHeard(t, m.lo) {
					score += 3 // "Now bar studs. … So it gets a longer stud."
				}
				if r.toks[owner.last].cl == m.cl {
					score -= 3 // another part is named in the same breath
				}
			}
		}
		if topic != nil && t.last < s.topicAt && t.owner != topic && !owns(topic, t) {
			score -= 2 // the talk has turned to another part since
		}
		st, _ := t.state()
		if n := len(t.events) - 1; st == Removed && t.events[n].act >= 0 && r.acts[t.events[n].act].heads {
			st = Loosened // so far it was only named: now it comes off
		}
		switch act {
		case "fit", "start by hand", "tighten", "torque":
			switch st {
			case Removed, Loosened:
				score += 2
			case HandTight, Refitted:
				score++
			case Torqued:
				score--
			}
		case "remove":
			switch st {
			case Loosened:
				score += 4
			case Removed:
				score -= 2
			}
		case "slacken":
			if st == Removed {
				score--
			}
		}
		if m.count > 1 && t.count > 1 {
			if m.count == t.count {
				score += 2
			} else {
				score -= 3
			}
		}
		if m.definite || m.count == 0 {
			score++
		} else if gap > 60 && st == "" {
			score--
		}
		if side != "" && t.side != "" && side != t.side {
			score -= 2
		}
		if score > bestScore {
			best, bestScore = t, score
		}
	}
	if bestScore >= 5 {
		return best
	}
	if owner != nil {
		like := r.like(m.head, true)
		for i := len(like) - 1; i >= 0; i-- {
			t := like[i]
			if t.fastener && t.head == m.head && (t.owner == owner || owns(owner, t)) && !placesClash(m.mods, t.mods) {
				return t
			}
		}
	}
	return nil
}

// handHas tells whether a fastener of the mention's own word was spoken of lately,
// told apart there from one of another word: a bolt with its nut.
func (s *tracker) handHas(m *mention) bool {
	for i := len(s.hand) - 1; i >= 0; i-- {
		t := s.hand[i]
		if s.r.since(t.last, m.lo) > 90 {
			return false
		}
		if t.fastener && t.head == m.head && t.mate {
			return true
		}
	}
	return false
}

// onlyHeard tells whether no other fastener in hand was called by the same word within a minute.
func (s *tracker) onlyHeard(t *thing, at int) bool {
	for i := len(s.hand) - 1; i >= 0; i-- {
		o := s.hand[i]
		if s.r.since(o.last, at) > 60 {
			break
		}
		if o != t && o.fastener && o.head == t.head {
			return false
		}
	}
	return true
}

// namedElse tells whether a thing was called by another word than the mention's in the same clause.
func (r *reading) namedElse(t *thing, m *mention) bool {
	for k := len(t.mentions) - 1; k >= 0; k-- {
		o := &r.mentions[t.mentions[k]]
		if o.cl != m.cl {
			return false
		}
		if o.head != m.head {
			return true
		}
	}
	return false
}

// actOn gives the name of the first act that has the mention as its object.
func (r *reading) actOn(ci, mi int) string {
	for _, ai := range r.clauses[ci].acts {
		for _, o := range r.acts[ai].objects {
			if o == mi {
				return r.acts[ai].action.Name
			}
		}
	}
	return ""
}

// owns tells whether the fastener is named after the part: "caliper bolt" after "brake caliper".
func owns(owner, t *thing) bool {
	if !t.mods[owner.head] || !owner.mayOwn(t) || t.owner != nil && t.owner != owner && t.owner.head == owner.head && contentCount(owner.mods) > contentCount(t.owner.mods) {
		return false // "plate bolts" are those of the plate on the post, not of the latch plate
	}
	for w := range owner.mods {
		if placeWords[w] && clashes(w, t.mods) {
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
		case placeWords[w] || w == part.head || generic[w]:
		case part.mods[w]:
			return true
		default:
			others = true
		}
	}
	return !others
}

// pronoun tells which thing "it", "them" or "that one" stands for, or nil.
func (s *tracker) pronoun(a *act) *thing {
	r := s.r
	many := r.many(a)
	wantFastener := a.action.Name == "torque" || a.action.Name == "tighten" || a.action.Name == "start by hand" || a.action.Name == "slacken"
	limit := 20.0
	if a.pronoun == "" {
		limit = 8
	}
	fits := func(t *thing, strict bool) bool {
		if strict && t != nil {
			st, _ := t.state()
			switch a.action.Name {
			case "fit", "start by hand":
				if st != Removed && st != Loosened && st != Discarded && !(st == Refitted && a.action.Name == "start by hand") && !(st == "" && a.cl-r.toks[t.last].cl <= 1) {
					return false
				}
			case "remove", "disconnect":
				if st == Removed || st == Discarded {
					return false
				}
			}
		}
		return t != nil && (!wantFastener || t.fastener || t.turned || !strict && tightens[t.head]) && (!strict || !many || t.plural || t.count > 1)
	}
	if a.pronoun == "one" || a.pronoun == "ones" {
		if t := s.placedOne(r.clauses[a.cl].lo, r.clauses[a.cl].hi, nil); t != nil {
			return t
		}
		if i := s.saidNew(a); i >= 0 {
			if t := r.oneFor(a.cl, i); t != nil && fits(t, false) {
				return t
			}
		}
	}
	if a.subject && (a.pronoun == "it" || a.pronoun == "that") && s.toolBefore(a) {
		return nil
	}
	if a.action.Name == "remove" && (a.pronoun == "it" || a.pronoun == "that") {
		if t := s.onPuller(a); t != nil {
			return t
		}
	}
	if a.action.Name == "discard" && a.pronoun != "" {
		if t := r.ruined(a.cl, a.lo); t != nil {
			return t
		}
	}
	if t := s.justNamed(a); t != nil {
		return t
	}
	order := []bool{true, false}
	if (a.pronoun == "one" || a.pronoun == "ones") && s.saidNew(a) >= 0 {
		order = []bool{false} // "the old seal …, new one goes on": what was just spoken of
	}
	for _, strict := range order {
		for k := a.cl; k >= 0 && r.since(r.clauses[k].lo, a.lo) <= limit; k-- {
			c := &r.clauses[k]
			if k < a.cl && (c.mood&(advert|greeting) != 0 || subordinate[r.toks[c.lo].s] && strict) {
				continue
			}
			// what was worked on there, the latest first
			for i := len(c.acts) - 1; i >= 0; i-- {
				o := &r.acts[c.acts[i]]
				if o == a || o.lo >= a.lo || o.mood&(framed|negated|hypothetical|other) != 0 {
					continue
				}
				for j := len(o.things) - 1; j >= 0; j-- {
					if fits(o.things[j], strict) {
						return o.things[j]
					}
				}
			}
			// then what was spoken of there as its subject
			for _, mi := range c.mentions {
				m := &r.mentions[mi]
				if m.lo < a.lo && m.prep == "" && fits(m.entry, strict) {
					return m.entry
				}
			}
			if !strict {
				for _, mi := range c.mentions {
					if m := &r.mentions[mi]; m.lo < a.lo && fits(m.entry, false) && !(many && m.prep != "" && !m.plural) {
						return m.entry
					}
				}
			}
		}
	}
	return nil
}

// justNamed gives the thing that the clause right before an act does nothing but
// name: "and then the collar, and just spin that on by hand".
func (s *tracker) justNamed(a *act) *thing {
	r := s.r
	if a.cl == 0 || a.subject || a.pronoun != "it" && a.pronoun != "that" && a.pronoun != "them" && a.pronoun != "those" {
		return nil
	}
	p := &r.clauses[a.cl-1]
	if len(p.acts) > 0 || p.sentence != r.clauses[a.cl].sentence || r.since(p.lo, a.lo) > 6 {
		return nil
	}
	return s.headingOf(p)
}

// toolBefore tells whether a tool is what the clause before, or the act's own,
// names right before "it": "then the spanner wrench, it goes in the holes".
func (s *tracker) toolBefore(a *act) bool {
	r := s.r
	for k := a.cl; k >= 0 && k >= a.cl-1; k-- {
		c := &r.clauses[k]
		if k < a.cl && (len(c.acts) > 0 || c.sentence != r.clauses[a.cl].sentence) {
			return false
		}
		for i := len(c.mentions) - 1; i >= 0; i-- {
			if m := &r.mentions[c.mentions[i]]; m.lo < a.lo && m.prep == "" {
				return m.entry == nil && m.kind&(lexicon.Tool|lexicon.Fastener|lexicon.Part) == lexicon.Tool
			}
		}
	}
	return false
}

// toolNamed gives the tool that the clause before an act does nothing but name, where
// the act is done to "it" or "this" and is one that is done to tools; or -1.
func (s *tracker) toolNamed(a *act) int {
	r := s.r
	if a.cl == 0 || a.subject || len(a.objects) > 0 || a.pronoun != "it" && a.pronoun != "this" && a.pronoun != "that" {
		return -1
	}
	switch a.action.Name {
	case "fit", "start by hand", "adjust", "place", "support", "press", "hammer", "tighten":
	default:
		return -1
	}
	p := &r.clauses[a.cl-1]
	if len(p.acts) > 0 || len(p.mentions) != 1 || r.since(p.lo, a.lo) > 6 || p.mood&(negated|asked|other|conditional|listing) != 0 {
		return -1
	}
	m := &r.mentions[p.mentions[0]]
	if m.kind != lexicon.Tool || m.prep != "" || a.action.Name == "tighten" && !pullers[m.head] {
		return -1
	}
	if m.hi != p.hi && !(m.hi+1 == p.hi && onWords[r.toks[m.hi].s]) {
		return -1 // "puller on, and wind it up"
	}
	for i := p.lo; i < m.from; i++ {
		if w := r.toks[i].s; !openers[w] && !dropWords[w] && w != "and" {
			return -1
		}
	}
	return p.mentions[0]
}

// pullers are the tools that draw or drive a part off, not a fastener.
var pullers = set("puller extractor drift")

// onPuller gives the part that comes off where a puller was put on right before:
// "puller on and wind it up and it's off".
func (s *tracker) onPuller(a *act) *thing {
	r := s.r
	pulled := false
	for k := a.cl; k >= max(0, a.cl-2) && !pulled && r.clauses[k].sentence == r.clauses[a.cl].sentence; k-- {
		for _, mi := range r.clauses[k].mentions {
			m := &r.mentions[mi]
			if m.entry != nil && m.lo < a.lo {
				return nil // a thing is named that it can be
			}
			pulled = pulled || m.kind&lexicon.Tool != 0 && pullers[m.head]
		}
	}
	if !pulled {
		return nil
	}
	for i := len(s.hand) - 1; i >= 0 && r.since(s.hand[i].last, a.lo) < 40; i-- {
		if t := s.hand[i]; !t.fastener {
			if st, _ := t.state(); st != Removed && st != Discarded {
				return t
			}
		}
	}
	return nil
}

// many tells whether the pronoun of an act stands for more than one.
func (r *reading) many(a *act) bool {
	switch a.pronoun {
	case "them", "'em", "em", "these", "those", "both", "they", "ones", "all":
		return true
	}
	return countOf[a.pronoun] > 1
}

// placedOne gives the fastener that the tokens lo to hi tell by its place alone,
// "the top ones", "the long one", of those in hand; or nil.
func (s *tracker) placedOne(lo, hi int, part *thing) *thing {
	r := s.r
	for i := lo; i+1 < hi; i++ {
		w, n := r.toks[i].s, r.toks[i+1].s
		if !placeWords[w] || sideOf[w] != "" || !(n == "one" || n == "ones" || n == "two" || n == "pair" || n == "guy" || n == "guys") || r.toks[i].men >= 0 {
			continue
		}
		var of *thing
		for k := len(s.hand) - 1; k >= 0; k-- {
			t := s.hand[k]
			near := r.since(t.last, i)
			if near > 60 {
				break
			}
			if !t.fastener || !takesTorque(t) {
				continue
			}
			if t.mods[w] || t.mods[canonPlace(w)] {
				return t
			}
			if of == nil && near < 15 && !clashes(w, t.mods) && (t.plural || t.count > 1) && t.name != "" {
				of = t
			}
		}
		if of == nil && part != nil {
			of = s.unnamedOf(part, i)
		}
		if of == nil {
			return nil
		}
		return s.placed(of, w, n != "one" && n != "guy", i)
	}
	return nil
}

// placed gives those of several fasteners that a word of place tells apart, spoken
// of as one thing until now.
func (s *tracker) placed(of *thing, w string, plural bool, at int) *thing {
	c := *of
	c.mods = map[string]bool{w: true, canonPlace(w): true}
	for k := range of.mods {
		c.mods[k] = true
	}
	c.name, c.place, c.plural, c.count = w+" "+of.name, w, plural, 0
	if !plural {
		c.name = lexicon.Singular(c.name)
	}
	c.events, c.mentions, c.twin, c.first, c.last = append([]event{}, of.events...), nil, nil, at, at
	s.r.addThing(&c)
	s.touch(&c)
	return &c
}

// whereOf gives the word of place that tells a mention apart, "" where none does:
// the long ones and the left ones are told otherwise.
func whereOf(m *mention) string {
	for _, w := range m.mods {
		if opposite[canonPlace(w)] != "" && sideOf[w] == "" && w != "long" && w != "short" {
			return w
		}
	}
	return ""
}

// tightens are the parts that are tightened themselves.
var tightens = set("plug pedal clutch cup clamp adjuster weight switch sensor filter hose mirror fitting pipe line valve adapter freewheel cassette headset chuck handle knob strap lead terminal mech stem post grip lever blade prop")

// saidNew gives the token of "new" where the pronoun of an act is "a new one", else -1.
func (s *tracker) saidNew(a *act) int {
	for i := max(s.r.clauses[a.cl].lo+1, a.lo-8); i < a.hi; i++ {
		if s.r.toks[i].s == a.pronoun && s.r.toks[i-1].s == "new" {
			return i - 1
		}
	}
	return -1
}

// slidBack are the parts that are slid back out of the way of what they hold.
var slidBack = set("clip clamp boot sleeve gaiter")

// screwedOn are the parts that are left hand-tight where they are said to be.
var screwedOn = set("cap ring collar lid knob bung")

// fastens are the acts that are done to fasteners.
var fastens = map[string]bool{"slacken": true, "tighten": true, "torque": true, "start by hand": true}

var ledgerActs = map[string]string{
	"remove": Removed, "disconnect": Removed, "slacken": Loosened, "fit": Refitted, "start by hand": HandTight,
	"tighten": Tightened, "torque": Torqued, "discard": Discarded, "replace": Refitted, "leave off": Removed,
}

// apply lets an act happen to its things.
func (s *tracker) apply(ci, ai int, a *act) {
	r := s.r
	c := &r.clauses[ci]
	var ts []*thing
	for _, mi := range a.objects {
		if t := r.mentions[mi].entry; t != nil {
			ts = append(ts, s.bothSides(t, &r.mentions[mi])...)
		}
	}
	if mi := s.toolNamed(a); mi >= 0 {
		a.objects = []int{mi} // "and now the puller, so you thread this in"
	}
	if len(ts) == 0 && len(a.objects) == 0 && !a.unknown && a.pronoun != "her" && a.pronoun != "him" {
		if t := s.pronoun(a); t != nil && (a.pronoun != "" || ledgerActs[a.action.Name] != "" && !s.objectless(ci, a)) {
			if sd := s.clauseSide(c); sd != "" && (a.pronoun == "one" || a.pronoun == "that") {
				t = s.sided(t, &mention{lo: a.lo, side: sd}, sd)
			}
			ts = append(ts, t)
		}
	}
	if len(a.objects) == 0 && fastens[a.action.Name] {
		for k, t := range ts {
			switch topic := s.onTopic(a.lo); {
			case !t.fastener && !ownsNone(t.head) && (!tightens[t.head] || !t.plural && r.many(a)):
				ts[k] = s.unnamedOf(t, a.lo) // "all four of them just started"
			case a.rule == numberByHand && topic != nil && !t.plural && t.count < 2 && t.owner != topic:
				ts[k] = s.unnamedOf(topic, a.lo)
			}
		}
	}
	a.things = ts
	a.byHand = byHand(r, c, a)
	if a.rule == unplugged {
		return
	}
	name := a.action.Name
	switch {
	case s.leftOff(c, a):
		name = "leave off"
	case !a.happened():
		return
	}
	if a.heads {
		if !s.settle(a) {
			a.mood |= framed
			return
		}
		name = a.action.Name
	}
	wasFitting := s.fitting(a.lo)
	switch left[name] {
	case "off", "loose":
		s.turns = append(s.turns, turn{a.lo, true})
	case "on", "by hand", "tight":
		if a.verb >= 0 && shuts[r.lemma1(r.toks[a.verb].s)] {
			break
		}
		s.turns = append(s.turns, turn{a.lo, false})
	}
	if name == "lift" && len(ts) > 0 && (isLock(ts[0]) || ts[0].head == "pin" || ts[0].head == "clip") && len(a.objects) > 0 {
		name = "remove" // "pull the split pin"
	}
	if ledgerActs[name] == "" {
		return
	}
	if a.byHand && (name == "fit" || name == "tighten" || name == "start by hand") {
		name = "start by hand"
	}
	if name == "fit" && s.tightInClause(c) && len(ts) > 0 && ts[0].fastener {
		name = "tighten"
	}
	idle := len(ts) > 0
	for k, t := range ts {
		n := name
		t.turned = t.turned || fastens[name] && len(a.objects) == 0
		st, _ := t.state()
		if (name == "remove" || name == "disconnect") && (st == Removed || st == Discarded) && isLock(t) && len(a.objects) > 0 && r.since(t.events[len(t.events)-1].lo, a.lo) > 40 {
			// no split pin comes out twice: another of the same name
			t = s.another(t, a)
			ts[k], a.things[k], st = t, t, ""
		}
		if name == "leave off" && st == Discarded {
			continue
		}
		if n == "fit" && slidBack[t.head] && (st == Loosened || st == "") && a.verb >= 0 && r.lemma1(r.toks[a.verb].s) == "slide" && r.word(a.hi-1) == "back" {
			continue // "slacken the clip, slide it back": out of the way
		}
		if a.rule == withOff && st != "" {
			continue
		}
		if n == "remove" && a.verb < 0 && st == Removed && keptIn[r.word(a.hi)] && s.fitting(a.lo) {
			n = "fit" // "spacers off the zip tie": from where they were kept
			a.action = r.lex.Action(n)
		}
		if a.ifOff && st != Removed && st != Loosened && !(a.rule == "thing and place" && st == "" && s.fitted > 0 && r.since(s.fitted, a.lo) < 90) {
			continue
		}
		if n == "fit" && a.verb >= 0 && !t.fastener && st == "" && !s.fitting(a.lo) && !r.fitsNext(ai) && !r.saidNew(a) && !s.fitsBack(c) {
			continue // "stuck a bar through the eye", while things come off: handled, not fitted
		}
		if name == "tighten" && !t.fastener && a.verb >= 0 && r.lemma1(r.toks[a.verb].s) == "go" {
			continue // round a bore with a scuff pad
		}
		if name == "start by hand" && a.subject && a.verb >= 0 && st == "" && !s.fitting(a.lo) && s.apart(a.lo) && !s.fitsBack(c) {
			continue // "the hose on the back, that's just hand tight"
		}
		if name == "tighten" && a.subject && !s.fitsBack(c) && !wasFitting && (st == "" || st == Removed || st == Loosened) {
			continue // how tight it was found, not how it was left
		}
		if !t.fastener {
			if n == "start by hand" && !tightens[t.head] && !(screwedOn[t.head] && a.byHand) {
				n = "fit" // a wheel put on by hand is on
			}
		}
		if n == "fit" || n == "start by hand" {
			s.fitted = a.lo
		}
		idle = false
		t.events = append(t.events, event{action: n, act: ai, rule: a.rule, lo: a.lo, hi: a.hi, off: a.mood&offCamera != 0 && a.mood&announced == 0})
		t.last = max(t.last, a.lo)
		s.touch(t)
	}
	if idle && a.subject && (a.ifOff && (s.fitted == 0 && a.rule != "thing and particle" || a.rule == whereItIs) || name == "start by hand" || name == "tighten" && a.verb >= 0 && !s.fitting(a.lo)) {
		a.mood |= framed // it tells where a thing is or how it was found
	}
}

// fitsNext tells whether the next thing that comes off or goes on after an act goes on.
func (r *reading) fitsNext(ai int) bool {
	for i := ai + 1; i < len(r.acts) && r.since(r.acts[ai].lo, r.acts[i].lo) < 60; i++ {
		if a := &r.acts[i]; a.happened() {
			switch left[a.action.Name] {
			case "on", "by hand":
				return true
			case "off", "loose":
				return false
			}
		}
	}
	return false
}

// saidNew tells whether an object of the act is a new one.
func (r *reading) saidNew(a *act) bool {
	for _, mi := range a.objects {
		if r.mentions[mi].isNew {
			return true
		}
	}
	return a.pronoun == "one" || a.pronoun == "ones"
}

// keptIn are the words that lead from "off" or "out" to where a thing was kept.
var keptIn = set("the my of that this a")

// fitsBack tells whether a clause says that something is back: "the cap is back tight".
func (s *tracker) fitsBack(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		if s.r.toks[i].s == "back" {
			return true
		}
	}
	return false
}

// leftOff tells whether an act says that its thing stays off: "I'm leaving that
// out", "I've not put them back in yet", "the belt's not going on till tomorrow".
func (s *tracker) leftOff(c *clause, a *act) bool {
	if a.mood&(conditional|hypothetical|other|asked|advert|greeting|notNeeded) != 0 {
		return false
	}
	switch a.action.Name {
	case "leave off":
		return a.mood&negated == 0 && a.pronoun != "she" && a.pronoun != "he" // "she's on the bench": all of it
	case "fit", "start by hand":
		if a.mood&negated == 0 {
			return false
		}
	default:
		return false
	}
	// not what will not go on, but what was not put on
	for i := a.lo - 1; i >= c.lo && i > a.lo-6; i-- {
		switch s.r.toks[i].s {
		case "not", "never":
			switch p := s.r.word(i - 1); p {
			case "do", "does", "did", "can", "will", "would", "could":
				return false
			}
			return true
		case "haven't", "hasn't", "isn't", "aren't", "ain't":
			return true
		}
	}
	return false
}

// shuts are the verbs by which nothing goes back on.
var shuts = set("close shut engage latch lock")

// turn is something coming off or going on.
type turn struct {
	at  int
	off bool
}

// fitting tells whether the talk puts things together rather than takes them apart.
func (s *tracker) fitting(tok int) bool {
	on, off := 0, 0
	for i := len(s.turns) - 1; i >= 0 && i >= len(s.turns)-4 && s.r.since(s.turns[i].at, tok) < 120; i-- {
		if s.turns[i].off {
			off++
		} else {
			on++
		}
	}
	return on > off
}

// apart tells whether things have been coming off of late, or nothing was done yet.
func (s *tracker) apart(tok int) bool {
	if len(s.turns) == 0 {
		return true
	}
	last := s.turns[len(s.turns)-1]
	return s.r.since(last.at, tok) < 120
}

// settle tells what is done to a thing that is only named: it comes off while
// things come off, and goes on or is tightened while they go on. False where
// nothing follows.
func (s *tracker) settle(a *act) bool {
	name := ""
	fitting := s.fitting(a.lo)
	for _, t := range a.things {
		st, _ := t.state()
		n := ""
		switch {
		case fitting && (st == Removed || st == Discarded):
			n = "fit"
		case fitting && (st == Refitted || st == HandTight || st == Loosened) && takesTorque(t):
			n = "tighten"
		case !fitting && s.apart(a.lo) && (st == "" || st == Loosened):
			n = "remove"
		}
		if n == "" || name != "" && n != name {
			return false
		}
		name = n
	}
	if name == "" {
		return false
	}
	a.action = s.r.lex.Action(name)
	return true
}

// another makes a second thing of the same name, and lets the act's mention stand for it.
func (s *tracker) another(t *thing, a *act) *thing {
	c := *t
	c.mods = map[string]bool{}
	for w := range t.mods {
		c.mods[w] = true
	}
	c.events, c.left, c.mentions, c.isNew, c.twin = nil, outcome{}, nil, false, nil
	c.first = a.lo
	s.r.addThing(&c)
	for _, mi := range a.objects {
		if m := &s.r.mentions[mi]; m.entry == t {
			m.entry = &c
			c.mentions = append(c.mentions, mi)
		}
	}
	return &c
}

// objectless tells whether an act with neither thing nor pronoun leaves its thing untold on purpose.
func (s *tracker) objectless(ci int, a *act) bool {
	c := &s.r.clauses[ci]
	if a.verb < 0 || c.hi-c.lo > 9 {
		return true
	}
	// "put in the community page": something else is spoken of
	for i := a.hi; i < c.hi; i++ {
		if prepositions[s.r.toks[i].s] && s.r.toks[i].s != "with" && s.r.toks[i].s != "by" {
			return true
		}
	}
	return false
}

func (s *tracker) tightInClause(c *clause) bool {
	for i := c.lo; i+1 < c.hi; i++ {
		if s.r.toks[i].s == "and" && s.r.toks[i+1].s == "tight" || s.r.toks[i].s == "good" && s.r.toks[i+1].s == "tight" {
			return true
		}
	}
	return false
}

var handPhrases = [][]string{{"by", "hand"}, {"finger", "tight"}, {"hand", "tight"}, {"fingers"}, {"loosely"}, {"loose", "for", "now"}, {"snug"}, {"snugged"}, {"just", "nipped"}, {"only", "nipped"}, {"just", "nip"}, {"only", "nip"}, {"finger", "tighten"}, {"just", "started"}, {"with", "hand"}, {"with", "the", "hand"}, {"hand", "only"}}

// byHand tells whether the clause (or the fragment after it) says that the tightening was by hand only.
func byHand(r *reading, c *clause, a *act) bool {
	hi := c.hi
	if hi < len(r.toks) {
		n := &r.clauses[r.toks[hi].cl]
		if n.hi-n.lo <= 5 && len(n.mentions) == 0 && r.since(c.lo, n.lo) < 8 {
			hi = n.hi
		}
	}
	for _, q := range c.qtys {
		if k := r.qtys[q].Kind; k == normalize.Turn || k == normalize.Angle {
			return false // "snug and a quarter turn"
		}
	}
	for i := a.lo; i < hi; i++ {
		if m := r.toks[i].men; m >= 0 && i >= a.hi && r.toks[r.mentions[m].from-min(1, r.mentions[m].from)].brk >= brkComma && r.mentions[m].kind&lexicon.Fastener != 0 && len(a.objects) > 0 && !contains(a.objects, m) {
			break // "plate back on, thumbscrews finger tight"
		}
		if handAt(r, i, hi) {
			return true
		}
	}
	return false
}

var handBy = byFirst(handPhrases)

func contains(ms []int, m int) bool {
	for _, x := range ms {
		if x == m {
			return true
		}
	}
	return false
}

// handAt tells whether words for "by hand only" stand at token i.
func handAt(r *reading, i, hi int) bool {
	for _, p := range handBy[r.toks[i].s] {
		if r.says(i, hi, p) {
			return true
		}
	}
	return false
}

// state follows a thing's events to how it was left.
func (t *thing) state() (state string, value bool) {
	l := &t.left
	for ; l.n < len(t.events); l.n++ {
		e := &t.events[l.n]
		n := ledgerActs[e.action]
		switch n {
		case Loosened:
			if l.state == Removed || l.state == Discarded {
				continue
			}
			l.state, l.value = n, false
		case Refitted:
			// told again after it was tightened: no step back
			if (l.state == Torqued || l.state == Tightened || l.state == HandTight) && e.action == "fit" {
				continue
			}
			l.state = n
		case HandTight:
			if l.state == Torqued {
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
