package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
)

// What a loose end is of: the thing that is named with it, was spoken of last or comes next.

// aimFrom finds the thing that the sources of a conflict speak of, the first first.
func (r *reading) aimFrom(e *looseEnd) bool {
	best := 0
	for k := e.first; k <= e.last; k++ {
		for _, mi := range r.clauses[k].mentions {
			m := &r.mentions[mi]
			if !r.topical(m) {
				continue
			}
			rank := 1 // where it stands written, perhaps
			switch {
			case direct(m):
				rank = 3
			case m.prep == "for" || m.prep == "of":
				rank = 2
			}
			if rank > best {
				best, e.topic, e.sure = rank, mi, true
			}
		}
		if best > 1 {
			break
		}
	}
	if c := &r.clauses[e.last]; best == 0 && (r.saidIn(c, "poured") || r.saidIn(c, "filled") || r.saidIn(c, "bottle") || r.saidIn(&r.clauses[e.first], "poured")) {
		for k := e.first - 1; k >= 0 && k > e.first-40 && r.since(r.clauses[k].lo, r.clauses[e.first].lo) < 90; k-- {
			for _, mi := range r.clauses[k].mentions {
				if fluids.has(r.mentions[mi].head) {
					e.topic, e.sure = mi, true
					return true
				}
			}
		}
	}
	return best > 0
}

// headingBefore gives the one word of a sentence that does no more than say what comes
// next, and that no list of parts has: "So, indexing."; -1 where there is none.
func (r *reading) headingBefore(ci int) int {
	if ci == 0 {
		return -1
	}
	p := &r.clauses[ci-1]
	if p.sentence == r.clauses[ci].sentence || p.hi-p.lo > 3 || len(p.mentions) > 0 || len(p.acts) > 1 || r.since(p.lo, r.clauses[ci].lo) > 6 || p.mood&(asked|other|greeting) != 0 {
		return -1
	}
	at := -1
	for i := p.lo; i < p.hi; i++ {
		if w := r.toks[i].s; !openers.has(w) && !stopWords.has(w) && !interjections.has(w) && !dropWords.has(w) {
			if at >= 0 {
				return -1
			}
			at = i
		} else if subjects.has(w) || linking.has(w) {
			return -1
		}
	}
	if at < 0 || !strings.HasSuffix(r.toks[at].s, "ing") && !strings.HasSuffix(r.toks[at].s, "s") || len(r.toks[at].s) < 4 {
		return -1
	}
	return at
}

// aim finds the thing that an end is about: one of its own clause, else the one
// spoken of just before.
func (r *reading) aim(e *looseEnd, ci int, oc openCue) {
	c := &r.clauses[ci]
	if n := r.toks[oc.hi-1]; n.s == "with" && oc.hi < c.hi && e.kind == NotRefitted {
		for _, mi := range c.mentions {
			if m := &r.mentions[mi]; m.lo >= oc.hi && m.from <= oc.hi+1 && m.kind&(lexicon.Part|lexicon.Fastener) != 0 {
				e.topic, e.sure = mi, true // "not bothering with the tray"
				return
			}
		}
	}
	if e.signal == "unfit" && (r.hasWord(oc, "tag") || r.hasWord(oc, "padlock") || r.hasWord(oc, "stays")) {
		return // "so the padlock stays on": the whole job
	}
	if e.signal == "none" || e.signal == "lacking" {
		for _, mi := range c.mentions {
			if r.mentions[mi].hi == oc.hi {
				e.topic, e.sure = mi, true // what is lacking itself
				return
			}
		}
	}
	if n := oc.hi - 2; e.signal == "undone" && r.wants(oc) && n == oc.lo+2 && (determiner.has(r.toks[n-1].s) || ofWhom.has(r.toks[n-1].s)) && r.gerund(oc.hi-1) && r.toks[n].men < 0 {
		e.noun, e.sure = n, true // "she'll want her tracking doing"
		return
	}
	toDo := e.signal == "undone" && r.toks[oc.lo].s == "still" && r.toks[oc.hi-1].s == "do" && !(oc.lo == c.lo && (ci == 0 || r.stopHeard(ci)))
	if e.signal == "undone" && (r.wants(oc) || toDo && oc.lo > c.lo) {
		switch mi, named := r.subjectOf(c, oc.lo); {
		case mi >= 0 && r.topical(&r.mentions[mi]):
			e.topic, e.sure = mi, true
			return
		case named:
			e.noun = r.nounBefore(c, oc.lo)
			return // "the tracking needs doing": of what no list has
		}
	}
	if e.signal == "no-locker" {
		r.aimUnlocked(e, ci)
		return
	}
	if r.aimFronted(e, ci) || e.signal == "out-of-reach" && r.aimReach(e, ci) || r.aimAhead(e, ci, oc) || r.aimMade(e, ci) || r.aimFigure(e, ci) || r.aimStandIn(e, ci, oc) || r.aimAgain(e, ci) || r.aimOtherSide(e, ci) || r.aimHeading(e, ci) {
		return
	}
	if e.kind == Promise {
		for _, mi := range c.mentions {
			if m := &r.mentions[mi]; m.kind&lexicon.Tool != 0 && (m.prep == "" || m.prep == "for" || m.prep == "of") {
				e.topic, e.sure = mi, true // "where I got the puller from"
				return
			}
		}
	}
	if r.opensDay(c, oc) {
		if last := r.sentenceAround(ci).last; !r.pronounIn(oc.hi+1, r.clauses[last].hi) {
			e.topic = r.topicIn(ci, last+1) // of what it says itself, and not of what was spoken of before
			e.sure = e.topic >= 0
			return
		}
	}
	if k := r.headingBefore(ci); k >= 0 && e.kind == Unfinished && len(c.mentions) == 0 {
		e.noun, e.first = k, ci-1 // "So, indexing. Tomorrow as well."
		return
	}
	// what is asked of tightness is asked of something that is tightened
	lo, hi := r.nearBy(ci, 3, 1, 10)
	tight := e.kind == NotTorqued || e.kind == LookUp && !r.ofFilling(c, oc) && r.ofTightness(r.clauses[lo].lo, r.clauses[hi].hi)
	best, score := -1, -1<<30
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if (e.signal == "still-off" && m.hi == oc.lo || e.signal == "absent") && containers.has(m.head) && m.prep == "" {
			e.topic, e.sure = mi, true // "the tray's not on"
			return
		}
		if !r.topical(m) && !(tight && m.prep == "with" && r.tightenable(m)) || m.lo >= oc.hi && (e.signal == "later" && r.pronounIn(c.lo, oc.lo+1) || e.signal == "elsewhere" || e.signal == "find" && r.pronounIn(oc.lo, oc.hi) || e.signal == "unfit" || e.signal == "undone" && (toDo || r.wants(oc) || r.hasWord(oc, "those") || r.hasWord(oc, "them") || r.pronounIn(oc.lo, oc.hi) && r.saysOneOf(oc.hi, m.lo, "and", "so"))) {
			continue
		}
		if tight && !r.tightenable(m) || e.kind == LookUp && smeared.has(m.head) {
			continue
		}
		s := 0
		if m.kind&(lexicon.Fastener|lexicon.Part) != 0 {
			s += 6
		}
		if m.kind&lexicon.Fastener != 0 && (e.kind == LookUp || e.kind == Unsure) {
			s += 4
		}
		if direct(m) || m.prep == "for" || m.prep == "of" {
			s += 8
		} else if m.prep == "on" || m.prep == "in" {
			s += 3
		}
		if m.lo >= oc.hi {
			s -= (m.lo - oc.hi) / 2
		} else if m.hi <= oc.lo {
			s -= (oc.lo - m.hi) / 2
		}
		if e.kind == ReplaceLater && m.prep == "" {
			s += 4 + (c.hi-m.lo)/3 // what stands in comes first; what it holds comes after
		}
		if s > score {
			best, score = mi, s
		}
	}
	// "The oil level | you check once it's been run": the thing put first
	if h := ci - 1; h >= 0 && (best < 0 || !direct(&r.mentions[best])) && r.fronted(h, ci) {
		if mi := r.clauses[h].mentions[0]; r.topical(&r.mentions[mi]) && (!tight || r.tightenable(&r.mentions[mi])) {
			e.topic, e.sure, e.first = mi, true, min(e.first, h)
			return
		}
	}
	if best >= 0 && !(e.kind == LookUp && r.mentions[best].kind&lexicon.Fastener == 0 && r.pronounBefore(c, oc)) {
		m := &r.mentions[best]
		e.topic, e.sure = best, direct(m) || m.prep == "for" || m.prep == "of" || m.prep == "on" && m.lo >= oc.hi
		return
	}
	if e.signal == "unrun" || e.signal == "next" {
		return
	}
	if w := r.toks[oc.hi-1]; w.brk < brkSentence && oc.hi == c.hi && ci+1 < len(r.clauses) && e.kind == Unfinished && !(toDo && oc.lo > c.lo) {
		if n := &r.clauses[ci+1]; n.sentence == c.sentence {
			for _, mi := range n.mentions {
				if r.topical(&r.mentions[mi]) && r.mentions[mi].prep == "" {
					e.topic, e.sure, e.last = mi, true, ci+1
					return
				}
			}
		}
	}
	for k := ci - 1; k >= 0 && k >= ci-14 && r.since(r.clauses[k].lo, c.lo) < 25; k-- {
		p := &r.clauses[k]
		if p.mood&(aside|greeting) != 0 {
			continue
		}
		n, score := 0, -1
		value := e.kind == LookUp || e.kind == Unsure
		for _, mi := range p.mentions {
			if m := &r.mentions[mi]; value && !tight && r.topical(m) && m.kind&lexicon.Fastener != 0 {
				n++
			}
		}
		fasteners := n
		for _, mi := range p.mentions {
			m := &r.mentions[mi]
			if !r.topical(m) || tight && !r.tightenable(m) || e.kind == LookUp && smeared.has(m.head) {
				continue
			}
			if fasteners == 0 {
				n++
			}
			s := 0
			if m.prep == "" {
				s = 2
			}
			if value && m.kind&lexicon.Fastener != 0 {
				s += 3
			}
			if s > score {
				best, score = mi, s
			}
		}
		if best >= 0 {
			if h := k - 1; h >= 0 && !direct(&r.mentions[best]) && r.fronted(h, k) && r.topical(&r.mentions[r.clauses[h].mentions[0]]) {
				best, k = r.clauses[h].mentions[0], h
			}
			e.topic = best
			if e.kind != Conflict && e.kind != Promise {
				e.first = min(e.first, k)
			}
			e.sure = e.kind != NotRefitted && !(e.signal == "later" && r.pronounIn(c.lo, oc.lo+1)) && n == 1 && ci-k <= 2 && r.since(p.lo, c.lo) < 8 && !(e.kind == LookUp && !tight && r.inIt(c))
			return
		}
	}
	if tight { // nothing that is tightened was named: the part it holds, perhaps
		for k := ci - 1; k >= 0 && k >= ci-7 && r.since(r.clauses[k].lo, c.lo) < 13; k-- {
			for _, mi := range r.clauses[k].mentions {
				if r.topical(&r.mentions[mi]) {
					e.topic, e.first = mi, min(e.first, k)
					return
				}
			}
		}
	}
}

// aimAhead aims at what a question asked right after the cue names: "I'll need to find
// out | what oil it takes".
func (r *reading) aimAhead(e *looseEnd, ci int, oc openCue) bool {
	c := &r.clauses[ci]
	if e.kind != LookUp || oc.hi < c.hi || ci+1 >= len(r.clauses) || r.clauses[ci+1].sentence != c.sentence {
		return false
	}
	n := &r.clauses[ci+1]
	if w := r.toks[n.lo].s; w != "what" && w != "which" && w != "how" {
		return false
	}
	for _, mi := range n.mentions {
		if m := &r.mentions[mi]; r.topical(m) && (m.prep == "" || m.prep == "for" || m.prep == "of") {
			e.topic, e.sure, e.last = mi, true, ci+1
			return true
		}
	}
	return false
}

// aimMade aims at what was made or put in place of what is missing: "the gasket was
// torn, so I've cut one out of card" is of the gasket, not of the card.
func (r *reading) aimMade(e *looseEnd, ci int) bool {
	if e.kind != ReplaceLater {
		return false
	}
	at := -1
	for k := ci; at < 0 && k >= max(0, ci-3) && r.since(r.clauses[k].lo, r.clauses[ci].lo) < 10; k-- {
		at = r.madeOf(k)
	}
	if at < 0 {
		return false
	}
	cl := int(r.toks[at].cl)
	for k := cl; k >= 0 && k >= cl-4 && r.since(r.clauses[k].lo, at) < 16; k-- {
		ms := r.clauses[k].mentions
		for j := len(ms) - 1; j >= 0; j-- {
			if m := &r.mentions[ms[j]]; m.hi <= at && r.topical(m) && direct(m) && m.kind&(lexicon.Part|lexicon.Fastener) != 0 {
				e.topic, e.sure, e.first = ms[j], true, min(e.first, k)
				return true
			}
		}
	}
	return false
}

// madeOf gives the token of "one" in "I've cut one out of card", -1 where there is none.
func (r *reading) madeOf(ci int) int {
	c := &r.clauses[ci]
	for i := c.lo + 1; i+2 < c.hi; i++ {
		if r.toks[i].s == "one" && makes.has(r.toks[i-1].s) && (r.toks[i+1].s == "out" && r.toks[i+2].s == "of" || r.toks[i+1].s == "from") {
			return i
		}
	}
	return -1
}

// adjusted are what is set to a value and is no part: "the gap", "the toe".
var adjusted = wordsOf("what is set to a figure")

// aimFigure aims at what is set, where a value of it is asked for and no fastener is
// named: "the gap, I haven't the gauge here".
func (r *reading) aimFigure(e *looseEnd, ci int) bool {
	if e.kind != LookUp && e.kind != Unsure {
		return false
	}
	lo := ci
	if ci > 0 && r.clauses[ci-1].sentence == r.clauses[ci].sentence && r.clauses[ci-1].hi-r.clauses[ci-1].lo <= 4 {
		lo = ci - 1
	}
	if p := max(ci-1, 0); lo == ci && p < ci && r.clauses[p].sentence == r.clauses[ci].sentence && r.saidIn(&r.clauses[p], "what") {
		lo = p // "what the sag should be, I don't know, I'll look in the book"
	}
	at := -1
	for k := lo; k <= ci; k++ {
		c := &r.clauses[k]
		for _, mi := range c.mentions {
			if r.mentions[mi].kind&lexicon.Fastener != 0 && direct(&r.mentions[mi]) {
				return false
			}
		}
		for i := c.lo; i < c.hi && at < 0; i++ {
			if adjusted.has(r.toks[i].s) && r.toks[i].men < 0 && (i > c.lo && (determiner.has(r.toks[i-1].s) || r.toks[i-1].men >= 0) || i == c.lo) {
				at = i
			}
		}
	}
	if at < 0 {
		return false
	}
	e.noun, e.first = at, min(e.first, int(r.toks[at].cl))
	return true
}

// smeared are what goes on a thread or a face: no figure is looked up for them.
var smeared = wordsOf("what is put on thick")

// tightenable tells whether a mention is of something that is tightened.
func (r *reading) tightenable(m *mention) bool {
	switch m.head {
	case "washer", "gasket", "ring", "shim", "collar", "spacer", "pin", "circlip":
		return false
	case "cap":
		return true
	}
	if tightens.has(m.head) {
		return true
	}
	if t := m.entry; t != nil && t.fastener {
		return takesTorque(t)
	}
	return m.kind&lexicon.Fastener != 0
}

// ofFilling tells of what is measured in litres, bars or gaps: no torque answers that.
func (r *reading) ofFilling(c *clause, oc openCue) bool {
	for i := max(c.lo, oc.lo-6); i < min(c.hi, oc.hi+6); i++ {
		if k := r.toks[i].men; k >= 0 && r.mentions[k].head != r.toks[i].s {
			continue // "grease valve cap"
		}
		switch r.toks[i].s {
		case "oil", "fluid", "coolant", "water", "grease", "gas", "refrigerant", "pressure", "gap", "preload", "capacity", "clearance", "level", "backlash":
			return true
		}
	}
	return false
}

// ofTightness tells whether torque or tightness is spoken of between two tokens.
func (r *reading) ofTightness(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		switch r.toks[i].s {
		case "torque", "tight", "newton", "newtons", "tightness", "nipped", "tighten", "tightened":
			return true
		}
	}
	return false
}

// pronounIn tells whether "it", "that" or "them" stands between two tokens.
func (r *reading) pronounIn(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if pronounsObj.has(r.toks[i].s) && r.toks[i].men < 0 && r.toks[i].s != "one" {
			return true
		}
	}
	return false
}

// inIt tells of "what goes in it": a question of what holds it, not of what was named last.
func (r *reading) inIt(c *clause) bool {
	for i := c.lo + 1; i < c.hi; i++ {
		if r.toks[i].s == "it" && (r.toks[i-1].s == "in" || r.toks[i-1].s == "into") {
			return true
		}
	}
	return false
}

// direct tells whether a mention stands as what is done or spoken of, not as a
// place; "look up the torque" has only the particle of its verb before it.
func direct(m *mention) bool {
	return m.prep == "" || m.prep == "up" || m.prep == "out" || m.prep == "down" || m.prep == "off"
}

// fronted tells whether clause h does no more than name what clause ci is about.
func (r *reading) fronted(h, ci int) bool {
	p := &r.clauses[h]
	if p.sentence != r.clauses[ci].sentence || p.hi-p.lo > 5 || len(p.mentions) != 1 {
		return false
	}
	m := &r.mentions[p.mentions[0]]
	if m.hi < p.hi-1 || m.prep != "" {
		return false
	}
	for i := p.lo; i < m.lo; i++ {
		if w := r.toks[i].s; !determiner.has(w) && !openers.has(w) && w != "and" && !placeWords.has(w) {
			return false
		}
	}
	return true
}

// pronounBefore is for "the torque for that": what is asked of is not what stands beside it.
func (r *reading) pronounBefore(c *clause, oc openCue) bool {
	for i := oc.lo; i < oc.hi; i++ {
		if r.toks[i].s == "for" && pronounsObj.has(r.next(i)) {
			return true
		}
	}
	return false
}

// topical tells whether a mention may be what a question is about.
func (r *reading) topical(m *mention) bool {
	if m.prep != "" && m.from >= 2 && documents.has(r.toks[m.from-2].s) {
		return false // "the sticker on the swingarm says"
	}
	if m.hi-m.lo == 1 && m.hi < len(r.toks) && r.toks[m.hi-1].brk == brkNone && (r.toks[m.hi].s == "you" || r.toks[m.hi].s == "me") && m.from == m.lo && r.isVerbForm(m.head) {
		return false // "I'll not bore you"
	}
	if m.head == "barrel" && m.entry != nil && (m.entry.mods["burn"] || m.entry.mods["trash"]) {
		return false // where it is thrown
	}
	if m.head == "fence" && m.prep == "on" && r.word(m.hi) == "about" || m.head == "shade" && strings.HasSuffix(r.word(m.hi), "er") {
		return false // "I'm on the fence about it", "a shade longer"
	}
	if m.head == "foot" && strings.HasPrefix(r.word(m.hi), "pound") {
		return false
	}
	if strings.TrimSuffix(m.head, "s") == "minute" || documents.has(m.head) && !(m.head == "plate" && m.kind&lexicon.Part != 0 && m.mods != nil && !writtenPlate.has(m.mods[0])) || containers.has(m.head) || bins.has(m.head) || m.kind&(lexicon.Part|lexicon.Fastener|lexicon.Consumable) == 0 {
		return false
	}
	if m.from > 0 && r.toks[m.from-1].s == "per" {
		return false
	}
	return m.prep != "with" && m.prep != "using" && m.prep != "by"
}

// writtenPlate are the plates that say something: any other with a name of its own is a part.
var writtenPlate = set("name rating data type number maker's makers spec serial")
