package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// Which loose ends are one matter, and which were settled since they were raised.

// joins adds an end to one already being spoken of, where they are one matter.
func (r *reading) joins(ends []*looseEnd, e *looseEnd) bool {
	for k := len(ends) - 1; k >= 0 && k >= len(ends)-6; k-- {
		p := ends[k]
		last := max(p.hi, r.clauses[p.last].hi) - 1
		if p.kind != Conflict {
			last = p.hi - 1
		}
		if len(p.also) > 0 {
			last = max(last, p.also[len(p.also)-1])
		}
		gap := r.since(last, e.lo)
		if gap > 25 {
			break
		}
		same := !e.sure || !e.fronted && (!p.sure || p.fronted) || r.sameTopic(e.topic, p.topic)
		if !r.oneMatter(p, e, gap, same) {
			continue
		}
		p.last = max(p.last, e.last)
		p.first = min(p.first, e.first)
		p.byTwo = p.byTwo || e.byTwo
		if e.lo > last {
			p.also = append(p.also, e.lo)
		}
		if !p.sure && e.sure && e.kind == p.kind || p.signal == "ordered" && e.signal == "stand-in" {
			p.topic, p.sure, p.signal = e.topic, e.sure, e.signal
		}
		return true
	}
	return false
}

// ownTopic tells whether an end names its thing in its own clause.
func (r *reading) ownTopic(e *looseEnd) bool {
	return e.topic >= 0 && r.mentions[e.topic].cl == int(r.toks[e.lo].cl)
}

// oneMatter tells whether e, heard so many seconds after p, belongs to it; where
// it says more of the same matter, p takes the kind that asks for more.
func (r *reading) oneMatter(p, e *looseEnd, gap float64, same bool) bool {
	if (p.kind == Promise) != (e.kind == Promise) || e.signal == "unrun" && p.signal != "unrun" {
		return false
	}
	if e.signal == "unfit" {
		if gap < 25 && p.before == BeforeLater {
			p.before = BeforeUse
		}
		return gap < 25 && p.kind != Promise
	}
	if (e.signal == "watch") != (p.signal == "watch") && p.signal != "unrun" && e.signal != "unrun" {
		return false // a trial is a matter of its own
	}
	if e.signal == "duty" && gap < 12 && p.kind != Promise {
		return true
	}
	if e.signal == "elsewhere" && gap < 9 && p.kind != Promise && (same || r.clauses[r.toks[e.lo].cl].sentence == r.clauses[r.toks[p.lo].cl].sentence) {
		if p.kind == Unfinished {
			p.kind = e.kind
		}
		return true // why it is not done
	}
	if p.signal == "damage" && gap < 12 && (e.signal == "stand-in" || e.signal == "makeshift" || e.signal == "ordered" || e.signal == "later" || e.signal == "undone" && !e.sure) {
		if c := &r.clauses[r.toks[e.lo].cl]; e.kind == ReplaceLater && !r.saidIn(c, "live") && !r.saidIn(c, "leave") && !r.saidIn(c, "leaving") {
			p.kind, p.before = ReplaceLater, BeforeLater // something holds it for now
		}
		return true // how it is put up with
	}
	if p.signal == "unrun" && e.signal != "unrun" {
		return e.kind == Unfinished && !e.sure && gap < 12 // "that's tomorrow's job"
	}
	if p.kind == LookUp && gap < 8 && (e.kind == LookUp && r.toks[e.lo].cl == r.toks[p.lo].cl || e.signal == "later" && !e.sure && len(r.clauses[r.toks[e.lo].cl].acts) == 0 && e.lo-p.hi < 24 && !r.tightens(&r.clauses[r.toks[e.lo].cl], openCue{e.lo, e.hi, e.signal})) {
		return true // where, and when, it will be looked up
	}
	switch {
	case p.kind == Promise:
		return e.lo < p.hi && !(e.byMe(r) && e.lo > p.lo+1) || gap < 7 && (r.toks[e.lo].s == "it" || gap < 3 && !e.byMe(r)) && e.signal != "next" && !r.saidIn(&r.clauses[r.toks[e.lo].cl], "and")
	case p.signal == "later" && p.kind == Unfinished && e.kind == ReplaceLater && r.toks[p.lo].cl == r.toks[e.lo].cl:
		p.kind, p.before, p.topic, p.sure = ReplaceLater, e.before, e.topic, e.sure
		return true
	case p.kind == ReplaceLater && e.kind == ReplaceLater && gap < 9, p.kind == ReplaceLater && e.signal == "later" && gap < 14,
		p.kind == ReplaceLater && e.signal == "ordered", p.signal == "ordered" && e.signal == "stand-in":
		return gap < 25
	case p.kind == Conflict && (e.kind == Conflict && gap < 12 || e.signal == "find" && gap < 20 && !r.valueNamed(int(r.toks[e.lo].cl))):
		return true
	case !same:
		return p.kind == Unsure && e.kind == Unsure && gap < 6
	case p.kind == Conflict:
		ec := int(r.toks[e.lo].cl)
		switch {
		case e.signal == "unknown":
			return false // "I need to look up the torque for this year": which value, not which source
		case e.kind == Unsure && (e.signal == "doubt" || len(r.numbers(&r.clauses[ec])) > 0):
			return false // a doubt of its own
		}
		return gap < 20 && (e.kind == Unsure || e.kind == LookUp || e.kind == "" || e.kind == Conflict || e.signal == "stand-in" || e.signal == "later" || e.signal == "back-to")
	case e.kind == "":
		return gap < 14
	case e.kind == Conflict && (p.kind == Unsure || p.kind == LookUp) && gap < 10:
		p.kind = Conflict
		if e.lo < p.lo { // it begins with the first of the two sources
			p.lo, p.hi, p.topic, p.sure = e.lo, e.hi, e.topic, e.sure
		}
		return true
	case p.kind == Unsure && e.kind == LookUp && gap < 12:
		p.kind = LookUp
		return true
	case p.kind == LookUp && e.kind == Unsure, p.kind == LookUp && e.kind == NotTorqued && !e.sure && r.toks[e.lo].s != "put" && !r.saidIn(&r.clauses[r.toks[e.lo].cl], "one") && !r.saidIn(&r.clauses[r.toks[e.lo].cl], "other"):
		return gap < 12
	case p.kind == e.kind:
		if p.kind == ReplaceLater || p.kind == Unfinished && (e.signal == "remember" || e.signal == "later" && !e.sure) {
			return gap < 20
		}
		return gap < 12
	case p.kind == ReplaceLater && e.kind == Unfinished:
		return gap < 14 && (e.signal == "later" || e.signal == "undone" && !r.wants(openCue{e.lo, e.hi, e.signal}))
	case p.kind == NotTorqued && e.signal == "stand-in" && gap < 5:
		return true // "only pinched up for now"
	case p.kind == NotTorqued && e.kind == Unfinished:
		return gap < 3 && r.clauses[r.toks[e.lo].cl].sentence == r.clauses[r.toks[p.lo].cl].sentence && !e.sure || gap < 12 && (e.signal == "later" || r.toks[e.lo].s == "on" || r.saidIn(&r.clauses[r.toks[e.lo].cl], "back"))
	case p.kind == NotRefitted && e.kind == Unfinished:
		return p.before == e.before && gap < 10 && (e.signal != "undone" || e.sure) || p.sure && e.sure && r.sameTopic(e.topic, p.topic)
	case p.signal == "lost" && e.kind == ReplaceLater && gap < 6:
		p.kind, p.before = ReplaceLater, e.before // short of one, and something stands in for it
		return true
	case p.kind == Unfinished && e.kind == NotRefitted && e.signal != "lying" && (!p.sure || e.sure && e.topic >= 0 && r.mentions[e.topic].kind&lexicon.Consumable == 0) && p.before == e.before && gap < 10:
		p.kind = NotRefitted
		return true
	}
	return false
}

// byMe tells whether the cue of an end names who will do it: "I'll put a link".
// fluids are what a machine is filled with.
var fluids = wordsOf("fuels and coolants")

func (e *looseEnd) byMe(r *reading) bool {
	w := r.toks[e.lo].s
	return w == "i" || w == "'ll"
}

// sameTopic tells whether two mentions stand for one thing, or have one name.
func (r *reading) sameTopic(a, b int) bool {
	if a < 0 || b < 0 {
		return false
	}
	x, y := &r.mentions[a], &r.mentions[b]
	return a == b || x.entry != nil && x.entry == y.entry || lexicon.Singular(x.name) == lexicon.Singular(y.name) || x.head == y.head
}

// settled tells whether later talk answers what an end leaves open.
func (r *reading) settled(e *looseEnd, rec *Record) bool {
	if r.doneAtOnce(e) || r.foundSince(e) || r.wouldBe(e) {
		return true
	}
	switch e.kind {
	case ReplaceLater:
		return (e.signal == "makeshift" || e.signal == "for-want") && makeshifts.has(r.toks[e.hi-1].s) && r.takenOffAgain(e)
	case NotTorqued:
		if e.signal == "out-of-reach" {
			return r.reachedAfter(e)
		}
		return e.topic >= 0 && (r.doneLater(e) || r.valueLater(e, rec)) || e.signal == "two-light" && r.tightenedNext(e)
	case Unsure:
		return r.torqueIn(e) && r.valueLater(e, rec)
	case LookUp:
		return e.signal != "find" && r.valueLater(e, rec)
	case Unfinished:
		switch e.signal {
		case "unrun", "again":
			return false
		case "back-to":
			// no promise to come back is kept or broken that names nothing
			return !e.sure || r.mentions[e.topic].entry == nil || r.againAfter(r.mentions[e.topic].entry, r.clauses[e.last].hi, 8)
		}
		if e.signal == "due" {
			return false // looked after where it was found
		}
		if e.sure && (e.topic >= 0 || e.noun >= 0) && r.comesUp(e, r.dueVerb(e), r.onADay(e) || e.signal != "later" && e.signal != "remember" && !(e.signal == "undone" && r.hasWord(openCue{e.lo, e.hi, e.signal}, "to"))) {
			return true
		}
		if e.signal == "later" && r.onADay(e) || e.signal == "undone" && r.saidIn(&r.clauses[r.toks[e.lo].cl], "today") {
			return false // another day is not in this recording
		}
		return e.topic >= 0 && r.doneLater(e)
	}
	return false
}

// takenOffAgain tells whether what held something up for the work comes off later on: "strap off",
// "cut the twine off now".
func (r *reading) takenOffAgain(e *looseEnd) bool {
	for k := int(r.toks[e.hi-1].cl) + 1; k < len(r.clauses); k++ {
		c := &r.clauses[k]
		if c.mood&(negated|asked|conditional|hypothetical) != 0 || r.saidIn(c, "till") || r.saidIn(c, "until") || r.dayIn(c) {
			continue
		}
		for i := c.lo; i < c.hi; i++ {
			if r.toks[i].s == r.toks[e.hi-1].s && r.saysOneOf(i+1, min(c.hi, i+5), "off", "out", "away") || (r.toks[i].s == "off" || r.toks[i].s == "undo" || r.toks[i].s == "cut") && r.saysOneOf(i+1, min(c.hi, i+3), r.toks[e.hi-1].s) {
				return true
			}
		}
	}
	return false
}

// frontedFastener tells whether the clause before, in the sentence, ends in what is
// tightened: "that lock nut | I've just spun it up with my fingers".
func (r *reading) frontedFastener(ci int) bool {
	if ci == 0 || r.since(r.clauses[ci-1].lo, r.clauses[ci].lo) > 8 {
		return false
	}
	p := &r.clauses[ci-1]
	for _, mi := range p.mentions {
		if m := &r.mentions[mi]; m.hi == p.hi && m.kind&lexicon.Fastener != 0 && r.tightenable(m) {
			return true
		}
	}
	return false
}

// undoes tells whether a clause is of what comes loose or off, and of nothing that goes on.
func (r *reading) undoes(c *clause) bool {
	off := false
	for _, ai := range c.acts {
		switch ledgerActs[r.acts[ai].action.Name] {
		case Removed, Loosened:
			off = true
		case "":
		default:
			return false
		}
	}
	return off
}

// tightenedNext tells whether what was left light is tightened, or comes off again, within
// the next minute: by a value or an act of what has no name, or may well be the same.
func (r *reading) tightenedNext(e *looseEnd) bool {
	may := func(t *thing, at int) bool {
		if t == nil || e.topic < 0 || r.mentions[e.topic].entry == nil {
			return true
		}
		m := &r.mentions[e.topic]
		return t == m.entry || r.sameFastener(e, m, m.entry, t, at)
	}
	for i := range r.heard {
		if h := &r.heard[i]; !h.dropped && h.applied == "done" && r.qtys[h.qty].lo > e.hi && r.since(e.hi, r.qtys[h.qty].lo) < 75 && may(h.of, r.qtys[h.qty].lo) {
			return true
		}
	}
	for i := range r.acts {
		a := &r.acts[i]
		if a.lo <= e.hi || a.action.Name != "tighten" && a.action.Name != "torque" && ledgerActs[a.action.Name] != Removed || !a.happened() || r.since(e.hi, a.lo) > 75 {
			continue
		}
		if len(a.things) == 0 {
			return true
		}
		for _, t := range a.things {
			if may(t, a.lo) {
				return true
			}
		}
	}
	return false
}

// onADay tells whether an end is put off to another day.
func (r *reading) onADay(e *looseEnd) bool {
	for i := e.lo; i < e.hi; i++ {
		switch w := r.toks[i].s; w {
		case "tomorrow", "tonight", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "weekend", "week", "morrow":
			return true
		}
	}
	return false
}

// torqueIn tells whether an end is about a torque.
func (r *reading) torqueIn(e *looseEnd) bool {
	for k := e.first; k <= e.last; k++ {
		for _, q := range r.clauses[k].qtys {
			if r.qtys[q].Kind == normalize.Torque {
				return true
			}
		}
	}
	return false
}

// valueLater tells whether the thing of an end gets a value, said without doubt, later on.
func (r *reading) valueLater(e *looseEnd, rec *Record) bool {
	if e.topic < 0 {
		return false
	}
	t := r.mentions[e.topic].entry
	if t == nil {
		return false
	}
	for i := e.lo; i < e.hi; i++ {
		switch r.toks[i].s {
		case "long", "size", "big", "thick", "deep", "far", "high":
			return false // no torque answers that
		}
	}
	m := &r.mentions[e.topic]
	for i := range r.heard {
		h := &r.heard[i]
		q := &r.qtys[h.qty]
		if h.dropped || h.of == nil || q.lo <= e.hi || h.source.Scope == scopeOther || h.of != t && (e.kind != NotTorqued || !r.sameFastener(e, m, t, h.of, q.lo)) {
			continue
		}
		if e.kind == NotTorqued {
			if h.applied == "done" {
				return true
			}
			continue
		}
		if h.hedged || r.doubtedNear(q.cl) || e.kind == Unsure && r.sameFigure(e, q) && h.source.Title == "" && !r.confirmed(q.cl) {
			continue
		}
		return true
	}
	return false
}

// sameFigure tells whether a torque is one of those in doubt: to set what one was not sure of
// makes it no surer.
func (r *reading) sameFigure(e *looseEnd, q *quantity) bool {
	for i := range r.heard {
		if o := &r.qtys[r.heard[i].qty]; o.cl >= e.first && o.cl <= e.last && o.sameValue(q) {
			return true
		}
	}
	return false
}

// confirmed tells whether a clause, or the one before it, says that a figure was found to be so.
func (r *reading) confirmed(ci int) bool {
	for k := max(ci-1, 0); k <= ci; k++ {
		for i := r.clauses[k].lo; i < r.clauses[k].hi; i++ {
			if confirming.has(r.toks[i].s) {
				return true
			}
		}
	}
	return false
}

// confirming are the words by which a figure in doubt is found to be so: "it is forty five".
var confirming = set("is was says said checked confirmed correct yes yep found looked sure certain")

// doubtedNear tells whether the talk around a clause doubts what it says.
func (r *reading) doubtedNear(ci int) bool {
	_, hi := r.nearBy(ci, 0, 3, 12)
	return r.heardIn(ci-1, hi, "doubt", "undecided", "unknown")
}

// sameFastener tells whether a later thing is what was spoken of by another name:
// one that has a word in common with it, or, where it had no name of its own, with
// what was named beside it.
func (r *reading) sameFastener(e *looseEnd, m *mention, t, later *thing, at int) bool {
	has := func(w string) bool { return later.mods[w] || strings.TrimSuffix(later.head, "s") == w }
	if own := content(m.mods); len(own) > 0 {
		for _, w := range own {
			if has(w) {
				return !placesClash(m.mods, later.mods)
			}
		}
		return false
	}
	for w := range t.mods {
		if !placeWords.has(w) && has(w) && headKey(later.head, later.fastener) == headKey(t.head, t.fastener) {
			return !placesClash(m.mods, later.mods)
		}
	}
	if r.since(m.lo, at) < 60 && headKey(later.head, later.fastener) == headKey(t.head, t.fastener) || has(strings.TrimSuffix(m.head, "s")) && !alike.has(m.head) {
		return true
	}
	for k := e.first; k <= e.last && r.since(m.lo, at) < 150; k++ {
		for _, mi := range r.clauses[k].mentions {
			if o := &r.mentions[mi]; mi != e.topic && o.kind&(lexicon.Part|lexicon.Fastener) != 0 && !alike.has(o.head) && has(strings.TrimSuffix(o.head, "s")) {
				return true
			}
		}
	}
	return false
}

// doneLater tells whether what was to be done was done later on.
func (r *reading) doneLater(e *looseEnd) bool {
	t := r.mentions[e.topic].entry
	if t == nil {
		return false
	}
	after := r.clauses[e.last].hi
	for _, ev := range t.events {
		if ev.lo > after && ledgerActs[ev.action] != Removed && ledgerActs[ev.action] != Loosened && ev.action != "heat" && ev.action != "wait" && (e.kind != NotTorqued || ev.action == "tighten" || ev.action == "torque") {
			return true
		}
	}
	return false
}
