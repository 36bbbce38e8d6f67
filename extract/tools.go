package extract

import (
	"slices"
	"sort"
	"strconv"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// everyday are tool words that are said of much else; they count as tools only
// where they are used or listed.
var everyday = wordsOf("tools of every day")

// tools gives one entry for each tool and size.
func (r *reading) tools(found []sized) []Tool {
	out := []Tool{}
	at := map[string]int{}
	sizesOf := map[int][]sized{}
	for _, s := range found {
		if s.tool >= 0 {
			sizesOf[s.tool] = append(sizesOf[s.tool], s)
		}
	}
	add := func(mi int, s *sized) {
		m := &r.mentions[mi]
		c := &r.clauses[m.cl]
		name := lexicon.Singular(m.name)
		if name == "allen" || name == "hex" {
			name = "hex key"
		}
		name = wholeName(name)
		if s == nil && r.setsTorque(m) {
			name = strings.TrimSuffix(name, "wrench") + "torque wrench"
		}
		t := Tool{Name: shortName(r.withoutPlace(name)), SizesAlt: []string{}, Need: r.needOf(c, m), Listed: r.inToolList(m), Place: r.place(m.from, m.hi+3)}
		if s != nil {
			t.Size = s.canon[0]
			t.SizesAlt = append(t.SizesAlt, s.canon[1:]...)
			t.Place = r.place(min(s.lo, m.from), max(s.hi, m.hi)+1)
			if s.lo > m.hi+12 || m.from > s.hi+12 {
				t.Place = r.place(s.lo, s.hi+2)
			}
		}
		t.Used = !t.Listed && t.Need != "not-needed"
		t.Rule = "name in the vocabulary"
		if m.misheard {
			t.Rule = "misheard name in the vocabulary"
		}
		key := t.Name + "|" + t.Size
		if k, ok := at[key]; ok {
			out[k].Listed = out[k].Listed || t.Listed
			out[k].Used = out[k].Used || t.Used
			if out[k].Need == "not-needed" && t.Need == "required" {
				out[k].Need = "required"
			}
			return
		}
		at[key] = len(out)
		out = append(out, t)
	}
	for mi := range r.mentions {
		m := &r.mentions[mi]
		if m.kind&lexicon.Tool == 0 && !(m.prep == "with" && (toolish.has(m.head) || r.measuresWith(m)) && !r.withIt(m)) {
			continue
		}
		listed := r.inToolList(m)
		if everyday.has(m.head) || m.kind&(lexicon.Fastener|lexicon.Part) != 0 {
			listed = listed && r.inSpokenList(m) // several tools near by make no list of what is no tool
		}
		if r.kindOfWork(m) || r.boltedIn(m) || r.noTool(m) {
			continue // "a punch mark", "the coin slot"; the knife of a chipper
		}
		sized := len(sizesOf[mi]) > 0 // "three quarter drive bar", "sixteen plug socket": a tool's own size
		if m.kind&(lexicon.Fastener|lexicon.Part|lexicon.Consumable) != 0 && !sized && !r.usedAsTool(m) && !r.setUnder(m) && !(listed && m.kind&lexicon.Tool != 0) {
			continue
		}
		c := &r.clauses[m.cl]
		if m.kind&lexicon.Part != 0 && !sized && ledgerActs[r.actOn(m.cl, int(r.toks[m.lo].men))] != "" && m.prep != "with" {
			continue // "blade off": it is what is worked on
		}
		if c.mood&(aside|greeting) != 0 || c.mood&(other|asked) != 0 && !listed || m.cl < r.toolList[0] {
			continue
		}
		turnedDown := r.turnedDown(c, m)
		if r.deniedBefore(c, m.lo) && !listed && !turnedDown && c.mood&notNeeded == 0 {
			continue // "don't drop the jack"
		}
		if everyday.has(m.head) && !turnedDown && !r.ownName(m) && len(sizesOf[mi]) == 0 && !r.usedAsTool(m) && !listed && !r.setUnder(m) {
			continue
		}
		if r.likened(c, m) || c.mood&conditional != 0 && r.prev(m.from) == "need" || !listed && r.wouldNeed(c, m) {
			continue // "clicking like a bag of spoons", "if you need puller, something else is wrong"
		}
		if m.head == "meter" && (m.plural || r.word(m.hi) == "of") {
			continue // "45 newton, well, meters of torque"
		}
		if m.head == "grinder" && m.prep == "to" || m.head == "socket" && (m.prep == "at" || r.prev(m.lo) == "mains" || r.prev(m.lo) == "wall") || m.prep == "of" && len(m.mods) == 0 && everyday.has(m.head) {
			continue
		}
		if ss := sizesOf[mi]; len(ss) > 0 {
			for k := range ss {
				add(mi, &ss[k])
			}
			continue
		}
		add(mi, nil)
	}
	// "file the edge", "hacksaw it off": the verb names it
	for ai := range r.acts {
		a := &r.acts[ai]
		if a.verb < 0 || a.subject || !a.happened() || a.mood&(other|asked|aside|greeting) != 0 || r.prev(a.verb) == "'ll" {
			continue // "I'll drill that out when the new one comes"
		}
		for _, l := range r.lex.Lemmas(r.toks[a.verb].s) {
			name := verbTool[l]
			if name == "" || slices.ContainsFunc(out, func(t Tool) bool { return sameTool(t.Name, name) }) {
				continue
			}
			out = append(out, Tool{Name: name, SizesAlt: []string{}, Need: "required", Used: true, Place: r.place(a.lo, a.hi+3).by("named by its verb")})
		}
	}
	// a size said of a fastener is that of what turns it
	for i := range found {
		s := &found[i]
		if name := r.turner(s); name != "" {
			known := false
			for _, t := range out {
				known = known || t.Size == s.canon[0]
			}
			if !known {
				out = append(out, Tool{Name: name, Size: s.canon[0], SizesAlt: append([]string{}, s.canon[1:]...), Need: "required", Used: true,
					Place: r.place(max(r.clauses[s.cl].lo, s.lo-2), s.hi+2).by("size said, tool not named")})
			}
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		return out[i].Clip < out[j].Clip || out[i].Clip == out[j].Clip && out[i].At < out[j].At
	})
	// one tool, called by a shorter name or without its size
	kept := []Tool{}
	for i, t := range out {
		drop := false
		for j, o := range out {
			if i != j && !drop && shorterFor(t, o, i < j) {
				drop = true
				out[j].Used, out[j].Listed = out[j].Used || t.Used, out[j].Listed || t.Listed
			}
		}
		if !drop {
			kept = append(kept, t)
		}
	}
	for i := range kept {
		kept[i].Used = kept[i].Need != "not-needed" && (kept[i].Used || r.usedLater(kept[i], found))
	}
	return kept
}

// filledWith are what is named for what it is filled with: "a tin of grease".
var filledWith = set("tin tub can jar carton box crate pallet")

// wouldNeed tells of what is needed on another sort of machine: "if yours is the sort with loose
// balls, you'd need a press".
func (r *reading) wouldNeed(c *clause, m *mention) bool {
	for i := c.lo; i+1 < m.lo; i++ {
		if r.toks[i].s == "you" && r.next(i) == "'d" && r.word(i+2) == "need" {
			for k := int(r.toks[c.lo].cl); k >= 0 && r.clauses[k].sentence == c.sentence; k-- {
				if r.startsWith(&r.clauses[k], "if") {
					return true
				}
			}
		}
	}
	return false
}

// noTool tells whether what may be a tool is none as it is said: "stand back", "my glasses", in
// which somebody reads, "a tin of grease".
func (r *reading) noTool(m *mention) bool {
	next := r.word(m.hi)
	switch {
	case m.head == "shear" && m.from == m.lo && r.word(m.lo) == "shears":
		return m.lo > 0 && r.toks[m.lo-1].brk < brkComma && r.toks[m.lo-1].men >= 0 // "that key shears"
	case m.head == "stand" && m.from == m.lo:
		return next == "back" || next == "to" || next == "clear" || next == "aside" || next == "well"
	case m.head == "kettle":
		return next == "on" || next == "'s" && r.next(m.hi) == "on" // "with the kettle on"
	case m.head == "pick" && m.from == m.lo:
		return next == "up"
	case m.head == "glasses":
		return r.prev(m.lo) == "my" || r.prev(m.lo) == "reading"
	case filledWith.has(m.head):
		return next == "of" && r.toks[m.hi-1].brk == brkNone
	}
	return false
}

// boltedIn tells whether what may be a tool is a part of the machine in this talk: bolts,
// nuts or screws are named after it.
func (r *reading) boltedIn(m *mention) bool {
	if m.kind != lexicon.Tool || !alsoOfMachine.has(m.head) {
		return false
	}
	for i := range r.mentions {
		if o := &r.mentions[i]; o.kind&lexicon.Fastener != 0 && slices.Contains(o.mods, m.head) {
			return true
		}
	}
	return false
}

// alsoOfMachine are the tools that many machines have for a part.
var alsoOfMachine = wordsOf("tools that are parts of machines")

// verbTool is what the verbs of the workshop are done with.
var verbTool = map[string]string{"file": "file", "vacuum": "vacuum", "hoover": "vacuum", "hacksaw": "hacksaw", "solder": "soldering iron", "jack": "jack", "grind": "grinder", "drill": "drill", "chock": "chock", "hoist": "hoist", "winch": "winch"}

// turner names what turns a fastener whose size was said with no tool, "" where
// the size is no tool's.
func (r *reading) turner(s *sized) string {
	c := &r.clauses[s.cl]
	if s.tool >= 0 || s.kind == normalize.Thread || s.kind == normalize.Drive || c.mood&(other|asked) != 0 {
		return ""
	}
	for i := c.lo; i < c.hi; i++ {
		switch w := r.toks[i].s; {
		case w == "yours", w == "others":
			return "" // another machine's
		}
	}
	if r.word(s.hi) == "ring" && (s.kind == normalize.Size || s.kind == normalize.Length) && (definiteWord.has(r.prev(s.lo)) || r.prev(s.lo) == "a") {
		return "ring spanner" // "the thirteen ring"
	}
	with := r.word(s.lo-2) == "with" || r.prev(s.lo) == "with" // "hold the pin with a fifteen"
	if strings.HasSuffix(s.canon[0], " cm") || tooThin[s.canon[0]] || s.hi < len(r.toks) && r.toks[s.hi-1].brk == brkNone && bored.has(r.toks[s.hi].s) {
		return "" // "an eight mil hole", "up one millimetre"
	}
	if w := r.word(s.hi); w == "by" || r.prev(s.lo) == "by" || w == "long" && r.toks[s.hi-1].brk < brkPause {
		return "" // "three eighths by inch and a quarter": the bolt's own
	}
	if w := r.word(s.hi); w == "bsp" || w == "bspt" || w == "npt" || w == "bspp" {
		return "" // a pipe's thread
	}
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; !with && m.from <= s.hi && s.lo < m.hi && m.kind&(lexicon.Fastener|lexicon.Part) != 0 && !alike.has(m.head) && neverTorqued.has(m.head) {
			return "" // "a 3 mm split pin": nothing turns it
		}
	}
	if _, t := r.sizeOf(s, false); t != nil && !with && s.kind != normalize.Driver && (unturned.has(t.head) || rigging.has(t.head)) && (r.toks[s.lo].qty >= 0 || !wideSize(s.canon[0])) {
		return ""
	}
	for i := max(c.lo, s.lo-3); i < min(c.hi, s.hi+2); i++ {
		switch r.toks[i].s {
		case "hex", "allen", "key", "socket-head":
			if r.toks[i].s == "key" && !r.hexSaid(i) && wideSize(s.canon[0]) {
				return eitherTurns // "key of twenty-two"
			}
			if w := r.next(i); w != "head" && w != "heads" && w != "screw" && w != "screws" && w != "bolt" && w != "bolts" || r.toks[i].s == "allen" {
				return "hex key"
			}
		}
	}
	switch s.kind {
	case normalize.Driver:
		if c := s.canon[0]; c[0] == 'T' {
			return "torx bit"
		} else if strings.HasPrefix(c, "PH") {
			return "phillips screwdriver"
		}
		return "screwdriver"
	case normalize.Size, normalize.Length:
		if name := r.driverNear(s); name != "" {
			return name
		}
		if keySized[s.canon[0]] && !r.headTold(s) {
			return "hex key"
		}
		return eitherTurns
	}
	return ""
}

// eitherTurns is what turns a nut or a head of which no more than its size was said.
const eitherTurns = "spanner or socket"

// tooThin are lengths that no spanner or key has.
var tooThin = map[string]bool{"1 mm": true, "0.5 mm": true}

// bored are what a size before them is the width or the thickness of.
var bored = wordsOf("what is drilled or cut")

// unturned are the things whose size no spanner has: how thick or wide they are.
var unturned = wordsOf("sized by no spanner")

// keySized are the sizes of hexagon keys that hardly any nut or bolt head has: common practice, no source.
var keySized = map[string]bool{"1.5 mm": true, "2 mm": true, "2.5 mm": true, "3 mm": true, "4 mm": true, "5 mm": true, "6 mm": true,
	"5/64 in": true, "3/32 in": true, "7/64 in": true, "1/8 in": true, "9/64 in": true, "5/32 in": true, "3/16 in": true}

// headTold tells whether a size is said of a nut, a head or a flat, which no key turns.
func (r *reading) headTold(s *sized) bool {
	c := &r.clauses[s.cl]
	for i := max(c.lo, s.lo-4); i < min(c.hi, s.hi+4); i++ {
		switch w := r.toks[i].s; w {
		case "nut", "nuts", "locknut", "locknuts", "flat", "flats", "af":
			return true
		case "head", "heads":
			switch r.prev(i) {
			case "cap", "button", "socket", "dome", "pan":
			default:
				return true
			}
		}
	}
	return false
}

// driverNear gives the socket or nut driver that a size said alone goes on: "quarter
// inch ratchet with a ten on it", "same gun, fifteen sixteenths".
func (r *reading) driverNear(s *sized) string {
	if w := r.word(s.lo - 2); r.prev(s.lo) == "a" && (w == "hammered" || w == "knocked" || w == "tapped" || w == "banged" || w == "hammer") {
		return "socket" // on what is rounded off
	}
	for k := min(s.cl+1, len(r.clauses)-1); k >= max(0, s.cl-1); k-- {
		if c := &r.clauses[k]; k > s.cl && c.sentence != r.clauses[s.cl].sentence || k < s.cl && r.since(c.lo, s.lo) >= 8 {
			continue
		}
		for _, mi := range r.clauses[k].mentions {
			m := &r.mentions[mi]
			if m.kind&lexicon.Tool == 0 {
				continue
			}
			switch {
			case strings.HasSuffix(m.name, "nut driver") || strings.HasSuffix(m.name, "nut drivers"):
				return "nut driver"
			case m.head == "socket" && k <= s.cl && m.kind == lexicon.Tool:
				return "socket"
			case m.head == "ratchet" || m.head == "gun" || m.head == "impact" || strings.Contains(m.name, "breaker") || strings.Contains(m.name, "impact"):
				return "socket"
			}
		}
	}
	return ""
}

// usedLater tells whether a listed tool is named again outside the list, or what
// it is for is: a fastener of its size, a value that was set.
func (r *reading) usedLater(t Tool, found []sized) bool {
	for i := range r.mentions {
		m := &r.mentions[i]
		if m.kind&lexicon.Tool != 0 && !r.inToolList(m) && sameTool(lexicon.Singular(m.name), t.Name) && r.clauses[m.cl].mood&(other|hypothetical|aside|greeting) == 0 {
			return true
		}
	}
	if t.Size != "" {
		for _, s := range found {
			if slices.Contains(s.canon, t.Size) && (s.tool < 0 || !r.inToolList(&r.mentions[s.tool])) && r.clauses[s.cl].mood&(listing|other) == 0 && !r.inToolList(&mention{lo: s.lo, cl: s.cl}) {
				return true
			}
		}
	}
	if strings.HasSuffix(t.Name, "torque wrench") {
		for _, h := range r.heard {
			if !h.dropped && h.applied == "done" {
				return true
			}
		}
	}
	return false
}

// wholeTool are words that people leave off the end of a tool's name.
var wholeTool = set("screwdriver key cord strap pliers wrench driver")

// shorterFor tells whether t is the tool o, called by less: without its size, or
// in its size by a shorter name or another word for it; first tells that t was named first.
func shorterFor(t, o Tool, first bool) bool {
	switch {
	case t.Size == "" && o.Size != "":
		return sameTool(o.Name, t.Name)
	case t.Size != o.Size:
		return false
	}
	if rest, is := strings.CutPrefix(o.Name, t.Name+" "); is && wholeTool.has(rest) {
		return true // the cross head is the cross head screwdriver
	}
	if strings.HasSuffix(o.Name, " "+t.Name) || t.Size != "" && !first && t.Name != o.Name && sameTool(o.Name, t.Name) {
		return true
	}
	// "the big screwdriver" is the flat one of the list
	f := strings.Fields(t.Name)
	return !t.Listed && len(f) == 2 && sizeAdjective.has(f[0]) && (strings.HasSuffix(o.Name, " "+f[1]) || o.Name == f[1]) && (o.Listed || !sizeAdjective.has(strings.Fields(o.Name)[0]))
}

var toolAlias = map[string]string{"allen key": "hex key", "allen": "hex key", "brugola": "hex key", "inbus": "hex key", "imbus": "hex key", "inbus key": "hex key", "hex": "hex key", "hex bit": "hex key", "hex socket": "hex key", "allen bit": "hex key", "wrench": "spanner",
	"torx": "torx bit", "torx key": "torx bit", "torx driver": "torx bit", "torx screwdriver": "torx bit", "torx head": "torx bit", "star bit": "torx bit", "star key": "torx bit", "star": "torx bit"}

// driverOf are the names of what a screw's head takes that stand for the screwdriver.
var driverOf = wordsOf("crosshead drivers")

// wholeName gives the whole name of a tool that is called by what it turns: "a cross head".
func wholeName(name string) string {
	f := strings.Fields(lexicon.Singular(name))
	switch last := f[len(f)-1]; {
	case driverOf.has(last), len(f) > 1 && (f[len(f)-2] == "cross" || f[len(f)-2] == "flat") && (last == "head" || last == "point" || last == "blade"):
		return strings.Join(f, " ") + " screwdriver"
	}
	return name
}

var sizeAdjective = set("small big little long short large thin thick same fat tiny")

func sameTool(a, b string) bool {
	if x := toolAlias[a]; x != "" {
		a = x
	}
	if x := toolAlias[b]; x != "" {
		b = x
	}
	return a == b || strings.HasSuffix(a, " "+b) || a == eitherTurns && b == "spanner"
}

// withoutPlace takes off the place that a tool is for: "for the back, phillips".
func (r *reading) withoutPlace(name string) string {
	f := strings.Fields(name)
	for len(f) > 1 && placeWords.has(f[0]) && f[0] != "long" && f[0] != "short" {
		ids := make([]lexicon.ID, len(f))
		for i, w := range f {
			ids[i] = r.lex.ID(w)
		}
		if _, n := r.lex.Things(ids); n == len(f) {
			break // a bottom bracket tool
		}
		f = f[1:]
	}
	return strings.Join(f, " ")
}

// likened tells whether something is only compared with what a mention names.
func (r *reading) likened(c *clause, m *mention) bool {
	for i := m.from - 1; i >= max(c.lo, m.from-3); i-- {
		switch w := r.toks[i].s; {
		case w == "like":
			return true
		case !determiner.has(w) && w != "of" && w != "bag" && w != "bunch" && w != "load":
			return false
		}
	}
	return false
}

func (r *reading) usedAsTool(m *mention) bool {
	if m.head == "phone" && (r.word(m.hi) == "call" || r.word(m.hi) == "box" || r.word(m.hi) == "number") {
		return false
	}
	if m.prep == "with" || m.prep == "using" {
		return true
	}
	if m.kind == lexicon.Tool && m.definite && r.prev(m.from) == "'s" && r.word(m.from-2) == "it" && (m.hi == r.clauses[m.cl].hi || r.toks[m.hi-1].brk >= brkComma) {
		return true // "these have rounded, so it's the grinder"
	}
	lo := max(r.clauses[m.cl].lo, m.from-4)
	if w := r.prev(m.from); m.kind == lexicon.Tool && m.definite && (w == "now" || w == "then") && m.from-1 <= r.clauses[m.cl].lo+1 {
		return true // "and now the puller"
	}
	for i := lo; i < m.from; i++ {
		switch r.toks[i].s {
		case "use", "using", "used", "with", "grab", "need", "needs", "wants", "takes", "wear", "wearing":
			return true
		case "got", "have", "'ve":
			if m.kind&(lexicon.Part|lexicon.Fastener) == 0 {
				return true
			}
		}
	}
	return false
}

// toolish are parts that work is done with as well: "in with the pump".
var toolish = wordsOf("parts that work is done with")

// measuresWith tells whether calipers are what is measured with: "nine point one with the calipers".
func (r *reading) measuresWith(m *mention) bool {
	if m.head != "caliper" && m.head != "calliper" {
		return false
	}
	c := &r.clauses[m.cl]
	return r.saidIn(c, "measured") || r.saidIn(c, "measure") || r.saidIn(c, "check") || r.saidIn(c, "checked")
}

// withIt tells whether "with" only means beside: "comes with the pump", "along with the chain".
func (r *reading) withIt(m *mention) bool {
	for i := max(r.clauses[m.cl].lo, m.from-4); i < m.from; i++ {
		switch r.toks[i].s {
		case "come", "comes", "came", "along", "together", "off", "out", "up":
			return true
		}
	}
	return r.inAct(m.cl, int(r.toks[m.lo].men))
}

// ownName tells whether a tool's name has two words of its own: a paint brush is
// no brush of every day.
func (r *reading) ownName(m *mention) bool {
	if m.hi-m.lo < 2 || m.kind != lexicon.Tool {
		return false
	}
	ts, n := r.lex.Things(r.from(m.hi-2, m.hi))
	return n == 2 && ts[0].Kind == lexicon.Tool
}

// calledFor tells whether somebody is asked for a tool, or it is all that a sentence begins
// with: "pass me the hook", "Grinder. Mind your eyes."
func (r *reading) calledFor(m *mention) bool {
	if w := r.prev(m.from); w == "me" {
		switch r.word(m.from - 2) {
		case "pass", "hand", "give", "get", "fetch", "find", "lend", "throw", "chuck", "bring":
			return true
		}
	}
	c := &r.clauses[m.cl]
	return m.kind == lexicon.Tool && called.has(m.head) && r.clauses[m.cl].mood&(negated|asked|other) == 0 && (c.lo == 0 || r.toks[c.lo-1].brk >= brkSentence) && (m.from == c.lo || m.from == c.lo+1 && r.toks[c.lo].is(wOpener)) && r.toks[m.hi-1].brk >= brkComma
}

// laidHere tells whether a clause begins with a tool and where it is put to use: "Bar under
// the lip", "strap round the drum", "and the magnet in there".
func (r *reading) laidHere(m *mention) bool {
	c := &r.clauses[m.cl]
	if !laidOn.has(m.head) || m.kind&lexicon.Tool == 0 || m.plural || c.mood&(negated|asked|other|conditional) != 0 || !r.opens(c, m) {
		return false
	}
	i := m.hi
	if i+1 >= c.hi || r.toks[i-1].brk >= brkComma || !appliedTo.has(r.toks[i].s) {
		return false
	}
	where := r.toks[i+1].s
	if determiner.has(where) {
		where = r.word(i + 2)
	}
	return !keptAt.has(where)
}

// laidOn are the tools among those of every day that are put where they are used.
var laidOn = wordsOf("tools laid where they are used")

// called are the tools among those of every day that are called for by their name alone.
var called = wordsOf("tools called for by name")

// setUnder tells whether something of every day serves the work here: a tray put
// under it, glasses on, a car up on stands.
func (r *reading) setUnder(m *mention) bool {
	if r.calledFor(m) {
		return true
	}
	if r.laidHere(m) {
		return true
	}
	next := r.word(m.hi)
	prev := r.prev(m.from)
	switch m.head {
	case "glasses", "goggles", "gloves", "mask":
		return next == "on" || prev == "wear" || prev == "your"
	case "tray", "pan", "bowl", "bucket", "tub", "basin", "container", "tin", "jug", "dish", "pail", "jar", "box", "carton":
		if next == "under" || next == "underneath" || next == "below" || prev == "over" || (next == "goes" || next == "'s") && r.next(m.hi) == "under" {
			return true
		}
		if prev == "in" || prev == "into" {
			for _, ai := range r.clauses[m.cl].acts {
				switch r.acts[ai].action.Name {
				case "drain", "clean", "store", "heat", "apply", "fill":
					return true
				}
			}
		}
	case "brick", "bricks", "stand", "stands", "ramp", "ramps", "hoist", "lift", "bench", "vice", "press", "block":
		return prev == "on" && m.head != "bench" && m.head != "block" || next == "under" || next == "underneath" || (prev == "in" && (m.head == "vice" || m.head == "press" || m.head == "stand"))
	case "ladder", "steps":
		return next == "up" || next == "against"
	case "gauge":
		return next == "on" || r.word(m.hi) == "reads" || r.word(m.hi) == "says"
	case "grinder":
		return prev == "on" || prev == "to"
	case "phone", "camera":
		return false
	case "bar", "rope", "hook", "brush", "strap", "straps", "tester", "coin", "stick", "needle":
		for _, ai := range r.clauses[m.cl].acts {
			for _, o := range r.acts[ai].objects {
				if n := r.acts[ai].action.Name; &r.mentions[o] == m && (n == "place" || n == "support" || n == "fit" && m.kind == lexicon.Tool) {
					return true
				}
			}
		}
		return m.head == "brush" && (prev == "a" || m.count == 1 || len(m.mods) > 0)
	}
	return false
}

// needOf tells whether a tool is needed, by the cues of its clause.
func (r *reading) needOf(c *clause, m *mention) string {
	if r.turnedDown(c, m) {
		return "not-needed"
	}
	for _, q := range c.cues {
		if q.mood&notNeeded != 0 && q.lo < m.lo && m.lo-q.hi < 8 {
			return "not-needed"
		}
	}
	for _, q := range c.cues {
		if q.mood&optional != 0 && r.madeOptional(c, m, q.lo, q.hi) {
			return "optional"
		}
	}
	if k := int(r.toks[c.lo].cl) + 1; k < len(r.clauses) {
		n := &r.clauses[k]
		if n.sentence == c.sentence || n.hi-n.lo <= 5 {
			for _, q := range n.cues {
				if q.mood&(optional|notNeeded) != 0 && len(n.mentions) == 0 && q.lo-m.hi < 8 {
					return "optional"
				}
				if w := r.word(q.hi); q.mood&optional != 0 && q.lo-m.hi < 2 && (w == "one" || w == "it" || w == "them") {
					return "optional" // "a bore gauge if you have one, and a funnel"
				}
			}
		}
	}
	return "required"
}

// madeOptional tells whether the words that make a tool optional are of this one: the one after
// "or a" and "if you have a", and else the last one before them.
func (r *reading) madeOptional(c *clause, m *mention, lo, hi int) bool {
	switch w := r.toks[lo].s; {
	case w == "or" && r.next(lo) == "whatever":
		return false
	case w == "or":
		return m.hi > lo && m.lo-hi < 4
	case w == "if" && m.lo >= hi:
		return m.from-hi < 3 && r.toks[hi-1].brk < brkComma && (m.from == hi || r.word(hi) != "one")
	case m.lo >= hi || lo-m.hi > 9:
		return false
	}
	for _, mi := range c.mentions {
		if o := &r.mentions[mi]; o.lo >= m.hi && o.lo < lo && o.kind&lexicon.Tool != 0 {
			return false
		}
	}
	return true
}

// denials are the words that say no to what follows them.
var denials = set("no not never without don't doesn't didn't haven't hasn't needn't won't wouldn't")

// ofUse are the words between a denial and the tool that is not used.
var ofUse = set("use used using go going put take taking get got have has had need needed want any a an the no with by in your my that one them it be need kind sort of at much to over there on")

// worksHard are the tools among those of every day that are told not to be used.
var worksHard = wordsOf("tools that work hard")

// turnedDown tells whether a tool is named only to say that it is not used: "don't use the
// gun", "copper mallet, not a hammer", "never with a chisel", "I haven't got a press".
func (r *reading) turnedDown(c *clause, m *mention) bool {
	if m.kind&lexicon.Tool == 0 || strings.HasSuffix(m.name, "torque wrench") || everyday.has(m.head) && !worksHard.has(m.head) || r.setsTorque(m) {
		return false // one who has no torque wrench should have
	}
	for i := m.from - 1; i >= max(c.lo, m.from-7); i-- {
		w := r.toks[i].s
		switch {
		case r.toks[i].brk >= brkComma, i > 0 && w == "only", r.toks[i].men >= 0 && m.prep != "with":
			return false
		case w == "no" && i < m.from-1 && m.prep != "with":
			return false
		case denials.has(w):
			return w != "without" || !slices.ContainsFunc(r.toks[max(c.lo, i-8):i], func(t tok) bool { return denials.has(t.s) || t.s == "can't" })
		case !ofUse.has(w) && !(m.prep == "with" && i < m.from-1):
			return false
		}
	}
	return false
}

// kindOfWork tells whether a tool's name only says what kind of mark or shape is meant.
func (r *reading) kindOfWork(m *mention) bool {
	if m.hi >= len(r.toks) || r.toks[m.hi-1].brk > brkNone {
		return false
	}
	switch r.toks[m.hi].s {
	case "mark", "marks", "slot", "slots", "taper", "section":
		return true
	}
	return false
}

// inSpokenList tells whether a tool stands in a list that was announced as one, or
// that opens the talk.
func (r *reading) inSpokenList(m *mention) bool {
	if lo, hi := r.toolList[0], r.toolList[1]; hi > 0 && m.cl >= lo && m.cl < hi {
		return true
	}
	for k := max(0, m.cl-3); k <= m.cl; k++ {
		if c := &r.clauses[k]; c.mood&listing != 0 && r.since(c.lo, m.lo) <= 25 {
			return true
		}
	}
	return r.rowOfTools(m)
}

// rowOfTools tells whether at least two more tools, and nothing else, are named with one in a
// clause that says at most that they are there: "got my jack here, bit of wood, long bar".
func (r *reading) rowOfTools(m *mention) bool {
	c := &r.clauses[m.cl]
	tools := 0
	for _, mi := range c.mentions {
		switch o := &r.mentions[mi]; {
		case o == m || o.kind&lexicon.Consumable != 0:
		case o.kind&lexicon.Tool != 0:
			if !everyday.has(o.head) {
				tools++
			}
		case !listedTools.has(o.head):
			return false
		}
	}
	if tools < 2 || len(c.acts) > 0 {
		return false
	}
	for i := c.lo; i < c.hi; i++ {
		if t := &r.toks[i]; t.men < 0 && t.is(wVerb) && !hasThere.has(t.s) {
			return false
		}
	}
	return true
}

// hasThere are the verbs of what is there or wanted.
var hasThere = set("got get have has need use set put want bring grab take")

// inToolList tells whether a tool was named in a spoken list: after words that
// begin one, or among many tools where little is done.
func (r *reading) inToolList(m *mention) bool {
	if lo, hi := r.toolList[0], r.toolList[1]; hi > 0 && m.cl >= lo && m.cl < hi {
		return true
	}
	n, acts := 0, 0
	for k := max(0, m.cl-3); k <= min(m.cl+3, len(r.clauses)-1); k++ {
		c := &r.clauses[k]
		if abs(int(r.since(c.lo, m.lo))) > 25 {
			continue
		}
		if k <= m.cl && c.mood&listing != 0 {
			return true
		}
		for _, mi := range c.mentions {
			if r.mentions[mi].kind&lexicon.Tool != 0 {
				n++
			}
		}
		for _, ai := range c.acts {
			if len(r.acts[ai].objects) > 0 {
				acts++
			}
		}
	}
	return n >= 4 && n > 2*acts && r.toolList[1] == 0
}

// hexSaid tells whether a key at token i is said to be one for hexagon sockets.
func (r *reading) hexSaid(i int) bool {
	for k := max(0, i-2); k < min(len(r.toks), i+3); k++ {
		switch r.toks[k].s {
		case "hex", "allen", "hexagon":
			return true
		}
	}
	return false
}

// wideSize tells whether a size in millimetres is one of spanners that hardly any key has.
func wideSize(canon string) bool {
	n, err := strconv.Atoi(strings.TrimSuffix(canon, " mm"))
	return err == nil && n > 12
}
