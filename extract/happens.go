package extract

import (
	"slices"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// What happens to a thing when the walk through the talk comes to an act.

func (s *tracker) touch(t *thing) {
	t.worked = max(t.worked, t.last+1)
	if t.of != nil {
		t.of.last = max(t.of.last, t.last)
		s.touch(t.of)
	}
	for i, h := range s.hand {
		if h == t {
			copy(s.hand[i:], s.hand[i+1:])
			s.hand[len(s.hand)-1] = t
			return
		}
	}
	s.hand = append(s.hand, t)
	if len(s.hand) > 40 {
		s.hand = s.hand[1:]
	}
}

// offAcross tells whether an act takes off the one of the other side of what has gone back on, which
// is then the one of this side: "that's the right one back. I had the left one off as well".
func (s *tracker) offAcross(a *act, t *thing, side string) bool {
	if a.action.Name != "remove" || otherOf[side] == "" || t.side != "" && t.side != otherOf[side] {
		return false
	}
	if !onAgain(s.r.lastState(t)) {
		return false
	}
	for i := a.lo; i+1 < a.hi; i++ {
		if sideOf[s.r.toks[i].s] == side && s.r.toks[i+1].s == "one" {
			t.side = otherOf[side]
			return true
		}
	}
	return false
}

// pluggedIn puts what was unplugged back with its plug: "the opener's unplugged … plug back in".
func (s *tracker) pluggedIn(ai int, a *act) {
	for _, t := range s.hand {
		n := len(t.events) - 1
		if n < 0 || unplugs.has(t.head) || t.head == "plug" || t.events[n].act < 0 || t.events[n].action != "remove" && t.events[n].action != "disconnect" {
			continue
		}
		if s.r.cutOff(&s.r.acts[t.events[n].act]) {
			t.events = append(t.events, event{action: "fit", act: ai, rule: "its plug is back in", lo: a.lo, hi: a.hi})
		}
	}
}

// apply lets an act happen to its things.
func (s *tracker) apply(ci, ai int, a *act) {
	r := s.r
	c := &r.clauses[ci]
	var ts []*thing
	if n := len(a.objects); n > 0 {
		a.objects = slices.DeleteFunc(a.objects, func(mi int) bool { return r.mentions[mi].kind == 0 })
		if len(a.objects) == 0 {
			a.pronoun = unsaid
		}
	}
	for _, mi := range a.objects {
		if t := r.mentions[mi].entry; t != nil {
			ts = append(ts, s.together(t, &r.mentions[mi], a.action.Name)...)
		}
	}
	if mi := s.toolNamed(a); mi >= 0 {
		a.objects = []int{mi} // "and now the puller, so you thread this in"
	}
	if len(ts) == 0 && len(a.objects) == 0 && !a.unknown && (a.pronoun != "her" || left[a.action.Name] != "") {
		if a.pronoun != "" || ledgerActs[a.action.Name] != "" && !s.objectless(ci, a) {
			if t := s.antecedent(ci, a); t != nil {
				if sd := s.clauseSide(c); sd != "" && (s.offAcross(a, t, sd) || a.pronoun == "one" || a.pronoun == "that") {
					t = s.sided(t, &mention{lo: a.lo, side: sd}, sd)
				}
				ts = append(ts, t)
			}
		}
	}
	if len(ts) == 0 && len(a.objects) == 0 && a.subject && (a.pronoun == "it" || a.pronoun == "she") && r.cutOff(a) {
		a.action, a.rule = r.lex.Action("switch off"), machineUnplugged // "it's unplugged"
		return
	}
	if o := s.odd.t; o != nil && s.odd.sentence == c.sentence && len(ts) == 1 && ts[0] == o.of && a.lo > o.first && !r.many(a) {
		ts[0] = o
	}
	if len(ts) == 0 && (a.rule == numberByHand || countOf[a.pronoun] > 2 && fastens[a.action.Name]) {
		if part := s.justFitted(a.lo); part != nil {
			ts = append(ts, s.unnamedOf(part, a.lo, 0)) // "On with the cover. All four with the fingers."
		}
	}
	past := false
	a.byHand, past = byHand(r, c, a)
	if len(a.objects) == 0 && (fastens[a.action.Name] || a.byHand && a.action.Name == "fit" && r.many(a)) {
		for k, t := range ts {
			switch topic := s.onTopic(a.lo); {
			case !t.fastener && !t.ownsNone() && (!tightens.has(t.head) || !t.plural && r.many(a)):
				ts[k] = s.unnamedOf(t, a.lo, 0) // "all four of them just started"
			case a.rule == numberByHand && topic != nil && !t.many() && t.owner != topic:
				ts[k] = s.unnamedOf(topic, a.lo, 0)
			}
		}
	}
	if len(ts) == 1 && ts[0].of != nil && ts[0].fastener && len(a.objects) == 0 && r.allOfThem(c, a, ts[0].count) {
		ts[0] = ts[0].of // "the outer ones first. […] Start all fourteen by hand"
	}
	for k := len(ts) - 1; k >= 0; k-- {
		if all := ts[k]; len(all.split) > 0 {
			ts = slices.Replace(ts, k, k+1, all.each()...)
			defer s.touch(all) // spoken of last, after those told apart from it
		}
	}
	a.things = ts
	if a.rule == unplugged {
		return
	}
	name := a.action.Name
	switch {
	case name == "repeat" && a.happened():
		s.again(ai)
		return
	case s.leftOff(c, a):
		name = "leave off"
	case !a.happened():
		if name == "fit" && r.deferred(a) {
			for _, t := range ts {
				t.deferred = a.lo
			}
			return
		}
		if !s.comesTrue(a) {
			return
		}
	}
	if a.heads {
		if !s.settle(a) {
			a.mood |= framed
			return
		}
		name, ts = a.action.Name, a.things
	}
	wasFitting := s.fitting(a.lo)
	takingApart := !wasFitting && len(s.turns) > 0 && s.turns[len(s.turns)-1].off
	switch left[name] {
	case "off", "loose":
		s.turns = append(s.turns, turn{a.lo, true})
	case "on", "by hand", "tight":
		if a.verb >= 0 && shuts.has(r.lemma1(r.toks[a.verb].s)) {
			break
		}
		s.turns = append(s.turns, turn{a.lo, false})
	}
	if name == "lift" && len(ts) > 0 && (isLock(ts[0]) || ts[0].head == "pin" || ts[0].head == "clip") && len(a.objects) > 0 {
		name = "remove" // "pull the split pin"
	}
	if name == "remove" && len(ts) > 0 && a.verb >= 0 && r.drivenThrough(a) && (r.lastState(ts[0]) == Removed || wasFitting && r.lastState(ts[0]) == "") {
		name = "fit" // "the pin, push it through from the left"
		a.action = r.lex.Action(name)
	}
	if name == "tighten" && a.verb >= 0 && !wasFitting && len(ts) > 0 && ts[0].fastener && r.lastState(ts[0]) == "" && r.lemma1(r.toks[a.verb].s) == "give" && r.toks[a.hi-1].s == "turn" {
		name = "slacken" // "give it half a turn", of what nobody put on
		a.action = r.lex.Action(name)
	}
	if a.rule == soMuchTurn {
		st := ""
		if len(ts) > 0 && takesTorque(ts[0]) {
			st = r.lastState(ts[0])
		} else {
			a.mood |= framed
			return
		}
		switch {
		case st == HandTight || st == Refitted:
		case (st == "" || st == Loosened) && !wasFitting && ts[0].fastener:
			name = "slacken" // "wheel nuts, half a turn on each while she's down"
			a.action = r.lex.Action(name)
		default:
			a.mood |= framed
			return
		}
	}
	if name == "lift" && len(ts) == 1 && len(a.objects) == 1 && s.letGo(c, a, ts[0]) {
		name = "remove"
		a.action = r.lex.Action(name)
		s.turns = append(s.turns, turn{a.lo, true})
	}
	kept := name == "store" && r.keptOff(a)
	if kept {
		name = "remove"
	}
	if name == "adjust" && a.verb >= 0 && !a.subject && r.lemma1(r.toks[a.verb].s) == "back" {
		for _, t := range ts {
			if t.fastener && len(t.events) > 0 {
				t.events = append(t.events, event{action: backedOff, act: ai, rule: a.rule, lo: a.lo, hi: a.hi})
			}
		}
	}
	if name == "test" && a.byHand && len(ts) > 0 && ts[0].fastener && !isLock(ts[0]) && takesTorque(ts[0]) && r.lemma1(r.word(a.verb)) == "spin" && r.word(a.hi-1) == "up" {
		name = "start by hand" // "I've just spun it up with my fingers"
		a.action = r.lex.Action(name)
	}
	if ledgerActs[name] == "" || name == "remove" && !a.subject && r.getsNew(a) {
		return
	}
	if (name == "fit" || name == "start by hand") && len(ts) > 0 && ts[0].fastener && r.parked(a) {
		a.action = r.lex.Action("store") // it is still off
		return
	}
	if name == "start by hand" && !a.byHand && a.verb >= 0 && r.snugHard(a.verb) {
		name = "tighten"
		a.action = r.lex.Action(name)
	}
	if a.byHand && (name == "fit" || name == "tighten" || name == "start by hand") {
		name = "start by hand"
	}
	if name == "start by hand" && len(ts) == 1 && isLock(ts[0]) {
		name = "fit" // a circlip or a split pin is in or out
	}
	if past && (name == "fit" || name == "start by hand") && len(ts) > 0 && ts[0].fastener {
		name = "tighten"
	}
	if name == "fit" && s.tightInClause(c, a) && len(ts) > 0 && (ts[0].fastener || takesTorque(ts[0]) || tightens.has(ts[0].head)) {
		name = "tighten"
	}
	idle := len(ts) > 0
	for k, t := range ts {
		if kept && (t.isNew || len(t.events) > 0) {
			continue
		}
		n := name
		t.turned = t.turned || fastens[name] && len(a.objects) == 0
		st, _ := t.state()
		if (name == "remove" || name == "disconnect") && (st == Removed || st == Discarded) && isLock(t) && len(a.objects) > 0 && r.since(t.events[len(t.events)-1].lo, a.lo) > 40 {
			// no split pin comes out twice: another of the same name
			t = s.another(t, a)
			ts[k], a.things[k], st = t, t, ""
		}
		if name == "discard" && k < len(a.objects) && r.mentions[a.objects[k]].isOld && r.renewedLast(t) {
			continue // "new ring on. Old ring's garbage": the one that came off
		}
		if a.pronoun == "one" && t.many() && (left[n] == "on" || left[n] == "tight" || left[n] == "by hand") && r.notTheOther(c, a) {
			a.mood |= framed
			continue // how all of them are is not told by that
		}
		if name == "leave off" && st == Discarded {
			continue
		}
		if n == "fit" && catches.has(t.head) && len(a.objects) == 0 && a.verb >= 0 && !a.subject && presses.has(r.lemma1(r.toks[a.verb].s)) && (r.word(a.hi-1) == "down" || r.word(a.hi-1) == "in") {
			a.action = r.lex.Action("press") // "there's a tab, push that down": to let go of what it holds
			continue
		}
		if n == "tighten" && st == Loosened && !wasFitting && a.verb >= 0 && r.lemma1(r.toks[a.verb].s) == "go" {
			continue // "half a turn each, go round, another half": undone by and by
		}
		if n == "fit" && slidBack.has(t.head) && (st == Loosened || st == "") && a.verb >= 0 && r.lemma1(r.toks[a.verb].s) == "slide" && r.word(a.hi-1) == "back" {
			continue // "slacken the clip, slide it back": out of the way
		}
		if name == "slacken" && a.subject && st == "" && !t.fastener && !takesTorque(t) && !tightens.has(t.head) && !slackens.has(t.head) && len(a.objects) > 0 && a.verb >= 0 && r.toks[a.verb].is(wLinking) {
			continue // "the pulley's loose on the shaft": how it was found
		}
		if n := len(t.events); name == "remove" && a.verb < 0 && a.pronoun != "" && n > 0 && left[t.events[n-1].action] == "on" && r.since(min(t.events[n-1].hi, a.lo), a.lo) < 4 {
			continue // "Plug in. Off she goes.": it runs
		}
		if a.rule == withOff && st != "" {
			continue
		}
		if a.rule == toldByHand && heldBy.has(t.head) {
			continue // "the handle hits it, leave it with the fingers"
		}
		if a.rule == thereAgain && !wasFitting {
			a.mood |= framed
			continue // where it was found
		}
		if n == "remove" && a.verb < 0 && st == Removed && keptIn.has(r.word(a.hi)) && s.fitting(a.lo) {
			n = "fit" // "spacers off the zip tie": from where they were kept
			a.action = r.lex.Action(n)
		}
		if n == "tighten" && a.subject && a.verb >= 0 && r.toks[a.verb].s != "get" && a.hi == a.verb+2 && r.toks[a.hi-1].s == "tight" && s.foundTight(t, a) {
			a.mood |= framed
			continue
		}
		if a.ifOff && n == "tighten" {
			if st != Refitted && st != HandTight && st != Removed {
				continue
			}
		} else if a.ifOff && st != Removed && st != Loosened && !(a.byHand && t.fastener && r.withMine(c, a.hi)) && !(r.word(a.hi) == "top" && wasFitting) && !(st == "" && wasFitting && s.returnsUnseen(t, a)) && !(st == "" && (a.rule == "thing and place" || a.rule == "thing and particle" && r.word(a.hi-1) == "through") && s.fitted > 0 && r.since(s.fitted, a.lo) < 90) {
			continue
		}
		if n == "fit" && a.verb >= 0 && !a.subject && r.word(a.hi-1) == "through" && r.lemma1(r.toks[a.verb].s) == "push" && st != Removed && !s.fitting(a.lo) && !r.ofNew(a) && !r.fitsNext(ai) {
			n = "remove" // "undo the nut and push the axle through"
			a.action = r.lex.Action(n)
		}
		if n == "fit" && a.verb >= 0 && !t.fastener && st == "" && (!s.fitting(a.lo) && !r.fitsBack(c) || !wasFitting && r.movedAside(a)) && !r.fitsNext(ai) && !r.ofNew(a) {
			continue // "stuck a bar through the eye", while things come off: handled, not fitted
		}
		if n == "fit" && a.subject && a.verb >= 0 && st == "" && takingApart && r.lies(c, a) && !r.fitsBack(c) && !r.fitsNext(ai) && !r.ofNew(a) {
			continue // "the pin, it goes through the arm", while things come off: how it sits
		}
		if n == "fit" && (st == Removed || st == "") && a.verb >= 0 && s.laidAside(c, a, t) {
			a.action = r.lex.Action("store")
			if n := len(s.turns) - 1; n >= 0 && s.turns[n].at == a.lo {
				s.turns = s.turns[:n]
			}
			idle = false
			continue // it is still off
		}
		if n == "fit" && t.fastener && st == Loosened && a.verb >= 0 && !a.subject && r.lemma1(r.toks[a.verb].s) == "slide" {
			continue // "slide the nut up the hose": out of the way
		}
		if n == "fit" && st != Removed && r.bearsOn(a) && !r.ofNew(a) {
			continue // "push on the outer ring": where it is pushed
		}
		if n == "tighten" && !t.fastener && !takesTorque(t) && !tightens.has(t.head) && !screwedOn.has(t.head) && !t.turned {
			if st == Removed {
				n = "fit" // "seat on and tight"
			} else if len(a.objects) == 0 || a.verb >= 0 && draws.has(r.lemma1(r.toks[a.verb].s)) {
				continue // "wind the table down", "pull the arm up"
			}
		}
		if (n == "tighten" || n == "torque") && t.onlyLocks() {
			continue // what it locks is tightened
		}
		if name == "tighten" && !t.fastener && a.verb >= 0 && r.lemma1(r.toks[a.verb].s) == "go" {
			continue // round a bore with a scuff pad
		}
		if name == "start by hand" && a.subject && st == "" && r.foundByHand(c, a) || n == "fit" && a.verb < 0 && r.lacksIt(c, a, t) {
			a.mood |= framed
			continue
		}
		if name == "start by hand" && a.subject && (a.verb >= 0 || a.rule == toldByHand) && st == "" && !s.fitting(a.lo) && s.apart(a.lo) && !r.fitsBack(c) && !r.withMine(c, a.hi) {
			continue // "the hose on the back, that's just hand tight"
		}
		if name == "tighten" && a.subject && !past && !r.fitsBack(c) && !r.wasDoneUp(c, a) && !(a.verb < 0 && st == Loosened && r.says1(c, a.lo, "again")) && !wasFitting && (st == "" || st == Removed && s.fitted < t.events[len(t.events)-1].lo || st == Loosened) {
			continue // how tight it was found, not how it was left
		}
		if !t.fastener {
			if n == "start by hand" && !tightens.has(t.head) && !(screwedOn.has(t.head) && a.byHand) {
				n = "fit" // a wheel put on by hand is on
			}
		}
		if n == "fit" || n == "start by hand" {
			s.fitted = a.lo
			if st == Removed {
				s.back = a.lo
			}
		}
		idle = false
		t.events = append(t.events, event{action: n, act: ai, rule: a.rule, lo: a.lo, hi: a.hi, off: a.mood&offCamera != 0 && a.mood&announced == 0})
		t.last = max(t.last, a.lo)
		s.touch(t)
		if n == "fit" {
			switch t.name { // no drain plug, and no spark plug
			case "plug", "mains plug", "wall plug", "power plug", "motor plug":
				s.pluggedIn(ai, a)
			}
		}
	}
	if w := r.toks[a.hi-1].s; idle && a.ifOff && a.rule == "thing and particle" && name == "fit" && (w == "up" || w == "down") && !ts[0].fastener && !small.has(ts[0].head) && (a.hi == c.hi || r.toks[a.hi].s != "through") {
		// no more than the way it moves: "Engine down."; or how it lies: "in the vice, keel down"
		switch p := a.lo - 1; {
		case !wasFitting && p >= 0 && r.clauses[r.toks[p].cl].sentence == c.sentence && r.toks[p].brk < brkSentence && !r.toks[p].is(wOpener|wDrop):
			a.mood |= framed
		case w == "up":
			a.action = r.lex.Action("lift")
		default:
			a.action = r.lex.Action("lower")
		}
		if n := len(s.turns) - 1; n >= 0 && s.turns[n].at == a.lo {
			s.turns = s.turns[:n]
		}
	} else if idle && name == "fit" && takingApart && (a.subject && a.verb >= 0 && r.lies(c, a) || a.ifOff && a.rule == "thing and particle" && (w == "up" || w == "down")) {
		a.mood |= framed // it tells where a thing goes
		if n := len(s.turns) - 1; n >= 0 && s.turns[n].at == a.lo {
			s.turns = s.turns[:n]
		}
	}
	if (idle || len(ts) == 0) && a.ifOff && a.verb >= 0 && !a.subject {
		a.mood |= framed // "the lead's clipped in at the back": how it is held
	}
	if idle && a.subject && (a.ifOff && (s.fitted == 0 && a.rule != "thing and particle" || a.rule == whereItIs) || name == "start by hand" || name == "tighten" && a.verb >= 0 && !s.fitting(a.lo)) {
		a.mood |= framed // it tells where a thing is or how it was found
	}
}

// allOfThem tells whether an act is of all there are, of which so many were told apart: "all
// fourteen", "they're scrap, every one".
func (r *reading) allOfThem(c *clause, a *act, apart int) bool {
	if n := countOf[a.pronoun]; n > 2 && n != apart {
		for i := a.lo; i+1 < min(a.hi+1, c.hi); i++ {
			if r.toks[i].s == "all" && r.toks[i+1].s == a.pronoun {
				return true
			}
		}
	}
	for i := a.hi; i+1 < c.hi; i++ {
		if w := r.toks[i+1].s; r.toks[i].s == "every" && (w == "one" || w == "last" || w == "single") {
			return true
		}
	}
	return false
}

// foundByHand tells of "loose! that's only finger tight", "it was no more than finger tight":
// how a fastener was found, and not how it was left.
func (r *reading) foundByHand(c *clause, a *act) bool {
	if r.fitsBack(c) || !r.saidIn(c, "tight") {
		return false
	}
	for i := c.lo; i < a.hi; i++ {
		if w := r.toks[i].s; w == "i" || w == "leave" || w == "left" {
			return false
		} else if (w == "was" || w == "were") && (r.next(i) == "only" || r.next(i) == "no" || r.next(i) == "barely") {
			return true
		}
	}
	at := int(r.toks[a.lo].cl)
	lo, hi := r.nearBy(at, 1, 1, 6)
	for i := r.clauses[lo].lo; i < r.clauses[hi].hi; i++ {
		if w := r.toks[i].s; w == "loose" && r.toks[i].men < 0 && r.prev(i) != "leave" && r.prev(i) != "it" || w == "wonder" && r.prev(i) == "no" {
			return true
		}
	}
	return false
}

// lacksIt tells of "pin in, clip... I've no clip the right size": that a thing is named in its
// turn and not there.
func (r *reading) lacksIt(c *clause, a *act, t *thing) bool {
	_, last := r.nearBy(int(r.toks[a.lo].cl), 0, 2, 5)
	for i := a.hi; i < r.clauses[last].hi; i++ {
		mi := r.toks[i].men
		if mi < 0 || r.mentions[mi].head != t.head || r.mentions[mi].lo < a.hi {
			continue
		}
		m := &r.mentions[mi]
		if slices.Contains(m.mods, "spare") || slices.Contains(m.mods, "other") {
			return false
		}
		switch r.prev(m.lo) {
		case "no":
			w := r.word(m.lo - 2)
			return w == "'ve" || w == "have" || w == "got" || w == "'s" || w == "there's"
		case "a", "any", "the", "another":
			w := r.word(m.lo - 2)
			return w == "have" && negates.has(r.word(m.lo-3)) || w == "got" && negates.has(r.word(m.lo-3)) || w == "haven't" || w == "find" && negates.has(r.word(m.lo-3))
		}
		return false
	}
	return false
}

var negates = set("don't haven't can't not didn't never")

// comesTrue tells whether an act that only frames another is done when that one is: "once
// those bolts are out the cover lifts off".
func (s *tracker) comesTrue(a *act) bool {
	r := s.r
	c := &r.clauses[a.cl]
	if w := r.toks[c.lo].s; w != "once" && !(w == "after" || (w == "so" || w == "and" || w == "now" || w == "then") && r.next(c.lo) == "once") {
		return false
	}
	if a.mood&^framed&^(offCamera|prior|hedged) != 0 || !a.subject || left[a.action.Name] != "off" || len(a.objects) == 0 {
		return false
	}
	for k := a.cl; k < len(r.clauses) && k <= a.cl+1 && r.clauses[k].sentence == c.sentence; k++ {
		for _, ai := range r.clauses[k].acts {
			if o := &r.acts[ai]; o.lo > a.lo && o.happened() {
				return true
			}
		}
	}
	return false
}

// parked tells whether the words after an act say that its fasteners are only put where
// they will not get lost: "thread them back in the holes so I don't lose them".
func (r *reading) parked(a *act) bool {
	sentence := r.clauses[a.cl].sentence
	for i := a.hi; i < min(len(r.toks), a.hi+16) && r.clauses[r.toks[i].cl].sentence == sentence; i++ {
		switch w := r.toks[i].s; w {
		case "lose", "lost", "losing", "missing", "walkabout", "astray", "muddled", "mixed":
			for k := i - 1; k > a.hi && k > i-5; k-- {
				switch r.toks[k].s {
				case "don't", "not", "never", "won't", "can't", "doesn't", "avoid", "stop", "without":
					return true
				}
			}
		case "safekeeping":
			return true
		case "keeping":
			if r.toks[i-1].s == "safe" {
				return true
			}
		case "safe":
			if p := r.word(i - 2); p == "keep" || p == "keeps" || p == "kept" || r.toks[i-1].s == "stay" {
				return true
			}
		case "where":
			if r.toks[i-1].s == "know" && i-2 > a.hi && r.word(i-2) == "i" {
				return true
			}
		case "track":
			if p := r.toks[i-1].s; p == "keep" || p == "lose" {
				return true
			}
		}
	}
	return false
}

// withMine tells whether a clause says from token i on that the speaker's own hand did it:
// "that's on with my fingers" tells no state in which a thing was found.
func (r *reading) withMine(c *clause, i int) bool {
	for ; i+2 < c.hi; i++ {
		if r.toks[i].s == "with" && r.toks[i+1].s == "my" {
			return true
		}
	}
	return false
}

// justFitted gives the part that went back on last, shortly before a token.
func (s *tracker) justFitted(at int) *thing {
	for i := len(s.hand) - 1; i >= 0 && s.r.since(s.hand[i].last, at) < 30; i-- {
		if t := s.hand[i]; !t.fastener && !t.ownsNone() {
			if st, _ := t.state(); st == Refitted {
				return t
			}
		}
	}
	return nil
}

// fitsNext tells whether the next thing that comes off or goes on after an act goes on.
func (r *reading) fitsNext(ai int) bool {
	for i := ai + 1; i < len(r.acts) && r.since(r.acts[ai].lo, r.acts[i].lo) < 60; i++ {
		if a := &r.acts[i]; a.happened() && !r.liesThere(a) {
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

// keptIn are the words that lead from "off" or "out" to where a thing was kept.
var keptIn = set("the my of that this a")

// fitsBack tells whether a clause says that something is back: "the cap is back tight".
func (r *reading) fitsBack(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		if r.toks[i].s == "back" && (i == 0 || r.toks[i-1].s != "the") {
			return true
		}
	}
	return false
}

// drivenThrough tells whether a thing is pushed or knocked through, which takes it out or in.
func (r *reading) drivenThrough(a *act) bool {
	switch r.lemma1(r.toks[a.verb].s) {
	case "push", "tap", "knock", "drive", "slide", "poke", "punch":
	default:
		return false
	}
	for i := a.verb + 1; i < min(len(r.toks), a.hi+1); i++ {
		if r.toks[i].s == "through" {
			return true
		}
	}
	return false
}

// letGo tells whether a part that is lifted or pulled comes off by that: what held it has
// just come off, and no more is said of it.
func (s *tracker) letGo(c *clause, a *act, t *thing) bool {
	r := s.r
	if t.fastener || a.verb < 0 || a.subject {
		return false
	}
	if l := r.lemma1(r.toks[a.verb].s); l != "pull" && l != "lift" {
		return false
	}
	if m := &r.mentions[a.objects[0]]; m.lo < a.verb || m.hi < c.hi && r.toks[m.hi-1].brk < brkComma && r.toks[m.hi].s != "and" {
		return false
	}
	if st := r.lastState(t); st == Removed || st == Discarded {
		return false
	}
	for i := len(s.hand) - 1; i >= 0 && r.since(s.hand[i].last, a.lo) < 60; i-- {
		if f := s.hand[i]; f.fastener && (f.owner == t || owns(t, f)) && r.lastState(f) == Removed {
			return true
		}
	}
	return false
}

// wasDoneUp tells whether a thing is said to have been tightened, and not how tight it is:
// "the bolts are done up tight", "that's nipped up".
func (r *reading) wasDoneUp(c *clause, a *act) bool {
	if a.verb < 0 || r.toks[a.verb].s == "was" || r.toks[a.verb].s == "were" {
		return false
	}
	for i := a.verb; i < min(c.hi, a.hi+1); i++ {
		switch r.toks[i].s {
		case "too", "so", "really", "way", "only":
			return false
		case "done", "tightened", "nipped", "pulled", "torqued", "cranked", "pinched":
			return i > a.verb
		}
	}
	return false
}

// getsNew tells whether an act is of getting a new one from where it was kept: "I got a
// new one out of the assortment".
func (r *reading) getsNew(a *act) bool {
	for i := a.lo; i < min(a.hi, len(r.toks)); i++ {
		if r.toks[i].s == "new" && (a.pronoun == "one" || a.pronoun == "ones" || len(a.objects) > 0 && r.mentions[a.objects[0]].isNew) {
			return r.word(a.hi) == "of" || r.word(a.hi-1) == "of"
		}
	}
	return false
}

// renewedLast tells whether a new one of a thing went in last.
func (r *reading) renewedLast(t *thing) bool {
	n := len(t.events) - 1
	return n >= 0 && t.events[n].action == "fit" && t.events[n].act >= 0 && r.ofNew(&r.acts[t.events[n].act])
}

// bearsOn tells whether an act says where something is pushed or struck: "push on the
// rim", "tap on the ear of it".
func (r *reading) bearsOn(a *act) bool {
	if a.subject || a.verb < 0 || len(a.objects) == 0 || r.next(a.verb) != "on" || r.mentions[a.objects[0]].from != a.verb+2 || !r.mentions[a.objects[0]].definite {
		return false
	}
	switch r.lemma1(r.toks[a.verb].s) {
	case "push", "press", "tap", "knock", "pull", "lean", "hit":
		return true
	}
	return false
}

// liesThere tells whether an act is told the way people tell how a thing lies: "the
// bolt goes through the shank", "a cable runs round it".
func (r *reading) liesThere(a *act) bool {
	if !a.subject || a.verb < 0 || r.fitsBack(&r.clauses[a.cl]) {
		return false
	}
	switch r.lemma1(r.toks[a.verb].s) {
	case "run", "pass", "sit":
		return true
	case "go", "screw", "thread", "bolt":
		for i := a.verb + 1; i < min(a.verb+4, len(r.toks)); i++ {
			if w := r.toks[i].s; w == "through" || w == "into" {
				return true
			}
		}
	}
	return false
}

// lies tells whether an act may tell how a thing sits, and not that it was put there: not
// "they're in.", "it went down".
func (r *reading) lies(c *clause, a *act) bool {
	switch w := r.toks[a.verb].s; {
	case w == "went":
		return false
	case passiveBe.has(w):
		return a.hi < c.hi && r.toks[a.hi-1].brk < brkComma
	}
	return true
}

// movedAside tells whether an act only moves its thing back out of the way: "slide the
// cover back", which nobody says of what goes back on.
func (r *reading) movedAside(a *act) bool {
	back := r.word(a.hi-1) == "back" || r.word(a.hi) == "back"
	for _, mi := range a.objects {
		back = back || r.word(r.mentions[mi].hi) == "back"
	}
	if a.verb < 0 || a.subject || !back {
		return false
	}
	switch r.lemma1(r.toks[a.verb].s) {
	case "slide", "slip", "pull", "push", "fold", "peel", "roll", "tip", "swing", "flip", "bend", "tuck", "hinge":
		return true
	}
	return false
}

// leftOff tells whether an act says that its thing stays off: "I'm leaving that
// out", "I've not put them back in yet", "the belt's not going on till tomorrow".
func (s *tracker) leftOff(c *clause, a *act) bool {
	if a.mood&(conditional|hypothetical|other|asked|aside|greeting|notNeeded) != 0 {
		return false
	}
	switch a.action.Name {
	case "leave off":
		return a.mood&negated == 0 && a.pronoun != "she" && a.pronoun != "he" && s.r.toks[c.lo].s != "while" && s.r.prev(a.lo) != "while" // "she's on the bench": all of it
	case "fit", "start by hand":
		if a.mood&negated == 0 || s.r.bearsOn(a) || s.r.saysHowWell(a) {
			return false
		}
	default:
		return false
	}
	// not what will not go on, but what was not put on
	for i := a.lo - 1; i >= c.lo && i > a.lo-6; i-- {
		switch s.r.toks[i].s {
		case "not", "never":
			switch p := s.r.prev(i); p {
			case "do", "does", "did", "can", "will", "'ll", "would", "could":
				return false
			}
			return true
		case "haven't", "hasn't", "isn't", "aren't", "ain't":
			return true
		}
	}
	return false
}

// saysHowWell tells whether what is not put on is only not there, or does not go on well: "I
// haven't got a hose in here", "the bolt's not going in properly".
func (r *reading) saysHowWell(a *act) bool {
	if a.verb >= 0 {
		switch r.lemma1(r.toks[a.verb].s) {
		case "get", "run":
			return true
		}
	}
	switch r.word(a.hi) {
	case "properly", "right", "straight", "square", "far", "easily", "nicely", "fully", "quite", "as", "well", "enough":
		return true
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
		} else if on++; on == 2 && off == 0 {
			return true // whatever came off before
		}
	}
	return on > off
}

// foundTight tells whether that a thing is tight says how it was met: nothing was done to it,
// or it was just being undone, while things come off.
func (s *tracker) foundTight(t *thing, a *act) bool {
	switch s.r.word(a.hi) {
	case "in", "under", "behind", "round", "around", "down":
		return true // "it's tight in there": no room
	}
	if k := len(t.events) - 1; k >= 0 && (left[t.events[k].action] != "off" && left[t.events[k].action] != "loose" || s.r.since(min(t.events[k].hi, a.lo), a.lo) > 20) {
		return false
	}
	turns := s.turns
	if k := len(turns) - 1; k >= 0 && turns[k].at == a.lo {
		s.turns = turns[:k]
	}
	defer func() { s.turns = turns }()
	return !s.fitting(a.lo)
}

// lastOn tells whether what was done last put back what had come off, shortly before.
func (s *tracker) lastOn(tok int) bool {
	n := len(s.turns)
	return n > 0 && s.back > 0 && s.back >= s.turns[n-1].at && s.r.since(s.back, tok) < 40
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
		if len(a.objects) == 0 && !t.fastener && !takesTorque(t) {
			return false // "socket on it, mallet": on the bearing
		}
	}
	if a.rule == inARow && (len(s.turns) == 0 || s.r.says1(&s.r.clauses[a.cl], s.r.clauses[a.cl].lo, "there")) {
		return false // "rack and pinion", before anything came off; "there's a strip and two screws" in the tray
	}
	if fitting && len(a.things) > 1 && len(a.things) == len(a.objects) {
		// "handle, screw, cap": of a row, what is known to be off
		var ts []*thing
		var os []int
		for k, t := range a.things {
			if st, _ := t.state(); st != "" || k > 0 && t.fastener {
				ts, os = append(ts, t), append(os, a.objects[k])
			}
		}
		if len(ts) > 0 {
			a.things, a.objects = ts, os
		}
	}
	for k, t := range a.things {
		st, _ := t.state()
		n := ""
		switch {
		case (fitting || s.lastOn(a.lo)) && (st == Removed || st == Discarded):
			n = "fit"
		case fitting && (st == Refitted || st == HandTight || st == Loosened) && takesTorque(t):
			n = "tighten"
		case !fitting && !s.lastOn(a.lo) && s.apart(a.lo) && (st == "" || st == Loosened):
			n = "remove"
		case fitting && st == "" && k > 0 && name == "fit" && t.fastener:
			n = "fit" // "flange, nut": the nut goes the way of the flange
		}
		if n == "" || name != "" && n != name || n == "fit" && k < len(a.objects) && s.r.goneWhenNamed(&s.r.clauses[a.cl], &s.r.mentions[a.objects[k]]) {
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

// objectless tells whether an act with neither thing nor pronoun leaves its thing untold on purpose.
func (s *tracker) objectless(ci int, a *act) bool {
	c := &s.r.clauses[ci]
	if a.verb < 0 || c.hi-c.lo > 9 {
		return true
	}
	// "put in the community page": something else is spoken of
	for i := a.hi; i < c.hi; i++ {
		if prepositions.has(s.r.toks[i].s) && s.r.toks[i].s != "with" && s.r.toks[i].s != "by" {
			return true
		}
	}
	return false
}

// tightInClause tells whether the clause of an act says that its thing is in and tight.
func (s *tracker) tightInClause(c *clause, a *act) bool {
	r := s.r
	hi := c.hi
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.from >= a.hi && m.from < hi && m.kind&(lexicon.Fastener|lexicon.Part) != 0 && m.prep == "" && !slices.Contains(a.objects, mi) && r.toks[m.from-1].brk >= brkComma {
			hi = m.from // "bolt through, nut on, done up tight": the nut; "clamp on, belt good and tight": the belt
		}
	}
	for i := c.lo; i+1 < hi; i++ {
		if r.toks[i+1].s != "tight" || r.word(i+2) == "as" {
			continue
		}
		switch r.toks[i].s {
		case "and", "good", "in", "on", "up", "down", "nice":
			return true // "in and tight", "back in tight"
		}
	}
	return false
}

var handPhrases = [][]string{{"by", "hand"}, {"finger", "tight"}, {"hand", "tight"}, {"with", "fingers"}, {"my", "fingers"}, {"your", "fingers"}, {"the", "fingers"}, {"two", "fingers"}, {"just", "fingers"}, {"only", "fingers"}, {"fingers", "only"}, {"loosely"}, {"loose", "for", "now"}, {"snug"}, {"snugged"}, {"just", "nipped"}, {"only", "nipped"}, {"just", "nip"}, {"only", "nip"}, {"finger", "tighten"}, {"just", "started"}, {"with", "hand"}, {"with", "the", "hand"}, {"hand", "only"}, {"finger", "and", "thumb"}, {"fingers", "and", "thumb"}, {"thumb", "tight"}, {"a", "few", "threads"}, {"couple", "of", "threads"}, {"two", "threads"}, {"three", "threads"}, {"thread", "or", "two"}, {"not", "tight"}, {"nothing", "tight"}, {"on", "loose"}, {"in", "loose"}, {"in", "slack"}, {"on", "slack"}, {"by", "fingers"}, {"by", "a", "thread"}, {"just", "caught"}, {"only", "caught"}}

// byHand tells whether the clause (or the fragment after it) says that the tightening was by hand only.
func byHand(r *reading, c *clause, a *act) (by, past bool) {
	hi := c.hi
	if hi < len(r.toks) {
		n := &r.clauses[r.toks[hi].cl]
		verb := slices.ContainsFunc(n.acts, func(ai int) bool { return r.acts[ai].verb >= 0 && r.acts[ai].pronoun != "" })
		if n.hi-n.lo <= 5 && len(n.mentions) == 0 && !verb && r.since(c.lo, n.lo) < 8 {
			hi = n.hi
		}
	}
	for _, q := range c.qtys {
		if k := r.qtys[q].Kind; k == normalize.Turn || k == normalize.Angle {
			return false, r.turnedPast(a, &r.qtys[q]) // "snug and a quarter turn"
		}
	}
	for _, ai := range c.acts {
		if o := &r.acts[ai]; o.verb < 0 && o.lo >= a.hi && o.lo < hi && len(a.objects) > 0 && len(o.objects) > 0 && !slices.Contains(a.objects, o.objects[0]) {
			hi = o.lo // "wheel on and the nuts on with the fingers"
		} else if o.verb >= a.hi && o.verb < hi && len(a.objects)+len(a.pronoun) > 0 && !slices.ContainsFunc(o.objects, func(mi int) bool { return slices.Contains(a.objects, mi) }) && o.pronoun+a.pronoun != "" {
			hi = o.verb // "link back on and pull it tight by hand"
		}
	}
	if r.fewTurns(a, hi) {
		return true, false
	}
	lo := a.lo
	if lo > c.lo && (r.toks[lo-1].s == "just" || r.toks[lo-1].s == "only") {
		lo-- // "just nipped up for now"
	}
	for i := lo; i < hi; i++ {
		if m := int(r.toks[i].men); m >= 0 && i >= a.hi && r.mentions[m].kind&lexicon.Fastener != 0 && !slices.Contains(a.objects, m) && len(a.objects) > 0 && r.afterAnd(m) {
			break // "link back on and all the bolts just nipped up"
		}
		if w := r.word(i + 2); i >= a.hi && r.toks[i].s == "and" && (w == "it" || w == "them") && r.toks[i+1].men < 0 && !prepositions.has(r.toks[i+1].s) {
			break // "chain back on and pedal it by hand"
		}
		if m := int(r.toks[i].men); m >= 0 && i >= a.hi && r.begins(r.mentions[m].from) && r.mentions[m].kind&lexicon.Fastener != 0 && len(a.objects) > 0 && !slices.Contains(a.objects, m) {
			break // "plate back on, thumbscrews finger tight"
		}
		if handAt(r, i, hi) {
			past = r.beyondHand(i, len(r.toks))
			return !past, past
		}
	}
	return false, false
}

// fewTurns tells whether a thing is only caught on its thread: "wind them in a few turns".
func (r *reading) fewTurns(a *act, hi int) bool {
	if a.verb < 0 || a.subject {
		return false
	}
	switch r.lemma1(r.toks[a.verb].s) {
	case "thread", "wind", "spin", "screw", "start":
	default:
		return false
	}
	for i := a.hi; i < min(hi, a.hi+5); i++ {
		if w := r.toks[i].s; (w == "turns" || w == "threads") && (r.toks[i-1].s == "few" || r.toks[i-1].s == "couple" || r.toks[i-1].s == "of") {
			return true
		}
	}
	return false
}

// turnedPast tells whether an act leaves a thing tight by hand and goes on to how far it is
// turned past that: "snug, and then an eighth of a turn".
func (r *reading) turnedPast(a *act, q *quantity) bool {
	for i := a.lo; i < q.lo && q.lo-a.lo < 14; i++ {
		if !handAt(r, i, q.lo) && !(i == a.verb && r.lemma1(r.toks[i].s) == "snug") {
			continue
		}
		for k := i; k < q.lo; k++ {
			switch r.toks[k].s {
			case "and", "then", "plus", "past", "after", "another":
				return true
			}
		}
		return r.toks[i].s == "snug"
	}
	return false
}

// beyondHand tells whether words for "by hand" at token i go on to say how far it is
// turned past that: "finger tight and an eighth", "hand and a half turn".
func (r *reading) beyondHand(i, hi int) bool {
	for k := i + 1; k < min(hi-2, i+4) && r.toks[k-1].brk < brkSentence; k++ {
		if w := r.toks[k+1].s; (r.toks[k].s == "and" || r.toks[k].s == "then") && (w == "a" || w == "an" || w == "half") {
			n := r.toks[k+2].s
			return fractionWord.has(n) || w == "half" || n == "bit" || n == "touch" || n == "nip" || n == "tweak" || n == "smidge" || n == "fraction" || n == "tad"
		}
	}
	return false
}

// begins tells whether something of its own begins at token i: after a comma, or "and".
func (r *reading) begins(i int) bool {
	return i == 0 || r.toks[i-1].brk >= brkComma || r.toks[i-1].s == "and" && (i == 1 || r.toks[i-2].brk >= brkComma)
}

// afterAnd tells whether "and" leads to a mention.
func (r *reading) afterAnd(mi int) bool {
	i := r.mentions[mi].from - 1
	for i > 0 && (r.toks[i].s == "all" || r.toks[i].s == "both") {
		i--
	}
	return i >= 0 && r.toks[i].s == "and"
}

var handBy = byFirst(handPhrases)

// handAt tells whether words for "by hand only" stand at token i.
func handAt(r *reading, i, hi int) bool {
	if !r.toks[i].is(wSeldom) {
		return false
	}
	for _, p := range handBy[r.toks[i].s] {
		if r.says(i, hi, p) {
			return !r.snugHard(i)
		}
	}
	return false
}
