package extract

import (
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"

	"wrenchword/extract/lexicon"
)

// open asks the open questions: what people said they leave open, what the
// ledger shows was left open, and what fails a check.
func (r *reading) open(rec *Record) {
	out := r.spokenOpen(rec)
	out = append(out, r.ledgerOpen(rec, out)...)
	out = append(out, r.checkOpen(rec)...)
	out = append(out, r.unitsWanting(rec.Torques, out)...)
	out = append(out, r.raisedOpen(rec, out)...)
	out = foldRecap(besideSuspect(r.agreed(mergeOpen(out), rec.Torques)))
	sort.SliceStable(out, func(i, j int) bool {
		if out[i].Clip != out[j].Clip {
			return out[i].Clip < out[j].Clip
		}
		return out[i].At < out[j].At
	})
	rec.Open = append([]Open{}, out...)
	r.siftOpen(rec)
	rec.Doubts = r.mayBeOpen(rec.Open)
	r.heldSomehow(rec)
	ids := map[string]int{}
	for i := range rec.Open {
		o := &rec.Open[i]
		if o.shown != nil {
			if o.Quote = o.shown.quote; o.shown.asked == o.Question {
				o.Question = o.shown.question
			}
			o.shown = nil
		}
		o.ID = openID(*o, ids)
		o.AlsoAt = otherTimes(o.At, o.AlsoAt)
	}
}

// otherTimes gives the times that a reader can tell from the first one and from
// one another, in order: two in one breath are one. It is never nil.
func otherTimes(at float64, also []float64) []float64 {
	out := []float64{}
	slices.Sort(also)
	for _, t := range also {
		if math.Abs(t-at) >= 2 && (len(out) == 0 || t-out[len(out)-1] >= 2) {
			out = append(out, t)
		}
	}
	return out
}

// openID names a question by its kind and its thing, so that it stays the same
// when other parts of the talk change.
func openID(o Open, ids map[string]int) string {
	base := o.Kind
	if o.About != "" {
		base += "-" + strings.ReplaceAll(o.About, " ", "-")
	}
	ids[base]++
	if n := ids[base]; n > 1 {
		return base + "-" + strconv.Itoa(n)
	}
	return base
}

var dueWords = [][]string{{"tomorrow"}, {"on", "monday"}, {"on", "tuesday"}, {"on", "wednesday"}, {"on", "thursday"}, {"on", "friday"}, {"on", "saturday"}, {"on", "sunday"}, {"next", "week"}, {"next", "time"}, {"next", "month"}, {"at", "the", "weekend"}, {"next", "weekend"}, {"in", "the", "morning"}}
var dueBy = byFirst(dueWords)

// dueOf gives when something is to be done, where that was said.
func (r *reading) dueOf(ci int) string {
	lo := ci
	if ci > 0 && r.clauses[ci-1].sentence == r.clauses[ci].sentence && r.clauses[ci-1].hi-r.clauses[ci-1].lo <= 6 {
		lo = ci - 1 // "After the first ride, | check …"
	}
	for k := lo; k <= min(ci+1, len(r.clauses)-1); k++ {
		c := &r.clauses[k]
		for i := c.lo; i < c.hi; i++ {
			for _, p := range dueBy[r.toks[i].s] {
				if r.says(i, c.hi, p) {
					return strings.ToLower(r.text(i, i+len(p)))
				}
			}
			if n := r.afterUseAt(i, c.hi); n > 0 {
				return strings.ToLower(r.text(i, i+n))
			}
		}
	}
	return ""
}

// ledgerOpen asks after whatever the ledger shows was left open.
// What the talk itself already asks of the same thing is not asked twice.
func (r *reading) ledgerOpen(rec *Record, said []Open) []Open {
	var out []Open
	byID := map[string]*thing{}
	for _, t := range r.things {
		if t.id != "" {
			byID[t.id] = t
		}
	}
	s := r.standingTalk(rec)
	for i := range rec.Ledger {
		e := &rec.Ledger[i]
		t := byID[e.ID]
		if t == nil {
			continue
		}
		kind := mayLack(t, e.State)
		if kind == "" || asksAlready(said, kind, e, torqueName(t)) {
			continue
		}
		if why := r.notOpen(t, e.State, rec); len(rec.Ledger) < weighable && why != "" || len(rec.Ledger) >= weighable && !r.surelyOff(t) && !r.owes(e, t, kind, why, said, &s, len(rec.Ledger)) {
			continue
		}
		last := t.events[len(t.events)-1]
		o := Open{Kind: kind, Before: BeforeUse, About: torqueName(t), LedgerID: e.ID, Place: r.placeAround(max(0, last.lo-3), last.hi+5, last.lo).by("ledger: left " + e.State)}
		if o.About == "" {
			o.About = e.Kind
		}
		if e.Side != "" && !strings.Contains(o.About, e.Side) {
			o.About = shortName(e.Side + " " + o.About) // the other one is not open, or not so
		}
		for _, ev := range t.events {
			if ev.lo != last.lo && ledgerActs[ev.action] != "" {
				o.AlsoAt = append(o.AlsoAt, round3(r.at(ev.lo)))
			}
		}
		o.Question = question(o)
		shown := o.Question
		if e.State == Loosened {
			shown = tightAgain(o.About)
		}
		o.shown = &shownAs{r.place(r.heardAround(last.lo, last.hi)).Quote, o.Question, shown}
		out = append(out, o)
	}
	return out
}

// isMany tells whether a name is that of several, by its end: "clips", but not "brass".
func isMany(name string) bool {
	first, _, _ := strings.Cut(name, " ") // "two on the side"
	return countOf[first] > 1 || strings.HasSuffix(name, "s") && !strings.HasSuffix(name, "ss")
}

// tightAgain asks of what was slackened, of which nobody said that it was tightened.
func tightAgain(about string) string {
	have, it := "Has", "it"
	if isMany(about) {
		have, it = "Have", "them"
	}
	return have + " the " + about + " been tightened again? The recording slackens " + it + " and never says so."
}

// heldSomehow asks of what no spanner makes fast for no torque: of a pin what holds it, of a belt
// or a seal only where what is told of it leaves something open.
func (r *reading) heldSomehow(rec *Record) {
	all := rec.Open
	rec.Open = rec.Open[:0]
	for _, o := range all {
		if head := lexicon.Singular(lastOf(o.About)); o.Kind == NotTorqued && (o.Rule == "ledger: left "+Refitted || o.Rule == "ledger: left "+HandTight) && heldOtherwise.has(head) {
			o.Question = "What holds the " + o.About + " in place? The recording puts it on and does not say."
			switch head {
			case "pin":
				o.Kind = LockMissing
			case "wire", "clip", "circlip":
				o.Kind = Unfinished // they lock something, and nothing holds them
				o.Question = "Is the " + o.About + " home in its place? The recording puts it on and does not say."
				if isMany(o.About) {
					o.Question = "Are the " + o.About + " home in their places? The recording puts them on and does not say."
				}
			default:
				if o.Kind = Unfinished; !r.openAround(r.sentenceAt(o.Place)) {
					continue
				}
			}
		}
		rec.Open = append(rec.Open, o)
	}
	rec.Open = append([]Open{}, mergeOpen(rec.Open)...)
}

// openAround tells whether a sentence, or the one after it, is likely to leave something open.
func (r *reading) openAround(k int) bool {
	return r.weigh(k).open > raisedAhead || k+1 < len(r.sentences()) && r.weigh(k+1).open > raisedAhead
}

// heldOtherwise are the parts that no spanner makes fast: what holds them is asked, no torque.
var heldOtherwise = wordsOf("made fast by no spanner")

// madeDead tells of "it's unplugged", "unplug it": the machine is cut off from its
// current, whatever it was that was named before.
func (r *reading) madeDead(at int) bool {
	c := &r.clauses[r.toks[at].cl]
	for i := c.lo; i < c.hi; i++ {
		switch w := r.toks[i].s; {
		case w == "unplug" && r.next(i) == "it", w == "unplugged" && (r.prev(i) == "it's" || r.prev(i) == "she's" || (r.prev(i) == "'s" || r.prev(i) == "is") && (r.word(i-2) == "it" || r.word(i-2) == "she")):
			return abs(at-i) <= 3
		}
	}
	return false
}

// propped are what held a part up or out of the way for the work.
var propped = wordsOf("what holds a part up for the work")

// goesWith tells whether a part came off in the same breath as a fastener: the
// part is asked after, and its fasteners with it.
func (r *reading) goesWith(t *thing, rec *Record) bool {
	at := t.events[len(t.events)-1].lo
	for _, p := range r.partsOff(at) {
		if st, _ := p.state(); p != t && st == Removed {
			return true
		}
	}
	return false
}

// partsOff gives the parts, no fasteners, that came off within a few seconds of a token.
func (r *reading) partsOff(at int) []*thing {
	var out []*thing
	for i := sort.Search(len(r.acts), func(i int) bool { return r.acts[i].lo >= at-30 }); i < len(r.acts) && r.acts[i].lo <= at+30; i++ {
		a := &r.acts[i]
		if a.action.Name != "remove" || r.since(min(a.lo, at), max(a.lo, at)) > 9 {
			continue
		}
		for _, t := range a.things {
			if !t.fastener && len(t.events) > 0 && t.events[len(t.events)-1].lo == a.lo {
				out = append(out, t)
			}
		}
	}
	return out
}

// asksAlready tells whether what is missing for an entry is asked by an end that
// was heard: a nut that is tight and lacks nothing but its value, and the value
// is to be looked up.
func asksAlready(said []Open, kind string, e *Entry, name string) bool {
	for _, o := range said {
		if kind == NotTorqued && o.Kind == NotTorqued && o.Clip == e.Clip && o.At-e.LastAt < 10 && e.LastAt-o.At < 10 {
			return true // said of it in the same breath
		}
		if o.LedgerID != e.ID && o.About != name {
			continue
		}
		if kind == NotRefitted && o.Kind == ReplaceLater || kind == o.Kind && (kind == NotRefitted || kind == LockMissing) {
			return true // the old one is back on, or it is said to be off
		}
		if kind == NotTorqued && o.Kind == LookUp && e.State == Tightened || kind == NotTorqued && o.Kind == NotTorqued {
			return true
		}
	}
	return false
}

// mayLack gives the kind of loose end that a thing may be that was left in a state, "" where
// it can be none.
func mayLack(t *thing, state string) string {
	switch state {
	case Removed, Discarded:
		if isLock(t) {
			return LockMissing
		}
		return NotRefitted
	case HandTight, Tightened:
		if t.byFingers() {
			return ""
		}
		return NotTorqued
	case Refitted, Loosened:
		return NotTorqued
	}
	return ""
}

// byFingers tells whether a fastener is made to be turned without a tool.
func (t *thing) byFingers() bool {
	return t.fastener && (t.mods["wing"] || t.mods["thumb"] || t.mods["butterfly"] || t.mods["knurled"] || t.head == "thumbscrew" || t.head == "wingnut")
}

// notOpen tells in a word what speaks against asking after a thing that was left in a state,
// "" where nothing does.
func (r *reading) notOpen(t *thing, state string, rec *Record) string {
	last := t.events[len(t.events)-1]
	switch state {
	case Removed:
		switch {
		case isLock(t) && r.lockedAgain(t):
			return "again"
		case isLock(t):
			return ""
		case r.madeDead(last.lo):
			return "dead"
		case r.surelyOff(t):
			return "" // "I had the left one off as well", and only the right one was told to be back
		case t.owner != nil && r.lastState(t.owner) == Removed:
			return "owner" // asked with the part it holds
		case t.owner != nil && t.fastener && r.spokenOfLater(t.owner, last.hi):
			return "holds" // what it holds is in place
		case lentWhile.has(t.head) && ledgerActs[t.events[0].action] == Refitted:
			return "lent" // "clamp on the hose, … clamp off the hose": put there for the job only
		case propped.has(t.head), t.mods["broom"], isolates.has(t.head) && contentCount(t.mods) == 0, t.head == "ring" && t.plural && contentCount(t.mods) == 0:
			return "propped"
		case t.fastener && r.goesWith(t, rec):
			return "with"
		case comesApart.has(t.head):
			return "apart"
		case t.mods["old"]:
			return "old"
		case r.spokenOfAsBack(t):
			return "back"
		case r.thrownAway(t):
			return "thrown"
		case t.fastener:
			return "fastener" // it was put in under another name (22 of 24)
		case len(t.events) > 2:
			return "often" // handled more than twice, as what is back (21 of 22)
		case r.fitsBefore(last.lo) >= 4:
			return "late" // four things had gone on already (74 of 82)
		}
		return ""
	case Discarded:
		if isLock(t) {
			return ""
		}
	case Refitted:
		if t.fastener && takesTorque(t) && t.wasOff() && !r.tightenedSoonAfter(t) {
			return ""
		}
	case HandTight, Tightened:
		if takesTorque(t) || state == HandTight && (t.fastener && !t.meters() || tightens.has(t.head) || screwedOn.has(t.head) && !t.plural) {
			return ""
		}
	case Loosened:
		if t.fastener && t.name != "" && !r.thrownAway(t) {
			return ""
		}
	}
	return "state"
}

// surelyOff tells whether a thing is off whatever weighs for its being back: its going back was denied
// its time, or it was told to be off and no more, and the one of the other side is back.
func (r *reading) surelyOff(t *thing) bool {
	if n := len(t.events); n > 0 && t.deferred > t.events[n-1].lo && r.lastState(t) == Removed {
		return true
	}
	return len(t.events) == 1 && t.twin != nil && t.twin.side == otherOf[t.side] && r.lastState(t) == Removed && onAgain(r.lastState(t.twin))
}

// onAgain tells whether a state is that of what is back on, be it by hand.
func onAgain(state string) bool {
	switch state {
	case Refitted, HandTight, Tightened, Torqued:
		return true
	}
	return false
}

// comesApart are the parts that come off in pieces, and do not go back.
var comesApart = wordsOf("comes apart")

// fitsBefore tells how often something was fitted or tightened before a token.
func (r *reading) fitsBefore(at int) int {
	if r.fits == nil {
		r.fits = []int{}
		for _, t := range r.things {
			for _, e := range t.events {
				if onAgain(ledgerActs[e.action]) {
					r.fits = append(r.fits, e.lo)
				}
			}
		}
		slices.Sort(r.fits)
	}
	n, _ := slices.BinarySearch(r.fits, at)
	return n
}

// wasOff tells whether a thing was seen to come off or loose before it was fitted.
func (t *thing) wasOff() bool {
	for _, e := range t.events {
		if st := ledgerActs[e.action]; st == Removed || st == Loosened {
			return true
		}
	}
	return false
}

// spokenOfAsBack tells whether a thing that came off is spoken of again later on,
// as part of the machine: the putting back was not heard as such, and to ask
// after it would bury what is really missing.
func (r *reading) spokenOfAsBack(t *thing) bool {
	off := t.events[len(t.events)-1]
	return r.againAfter(t, off.hi, 8)
}

// spokenOfLater tells whether a thing is spoken of as in place or worked on, well
// after a token.
func (r *reading) spokenOfLater(t *thing, after int) bool { return r.againAfter(t, after, 20) }

// againAfter is spokenOfLater for what is named so many seconds after a token.
func (r *reading) againAfter(t *thing, after int, seconds float64) bool {
	return r.heardOfAfter(after, seconds, func(m *mention) bool { return m.entry == t || r.mayName(m, t) })
}

// heardOfAfter is againAfter for whatever is told by its mention.
func (r *reading) heardOfAfter(after int, seconds float64, names func(*mention) bool) bool {
	for mi := range r.mentions {
		m := &r.mentions[mi]
		if m.lo <= after || r.since(after-1, m.lo) < seconds || !names(m) {
			continue
		}
		c := &r.clauses[m.cl]
		if seconds < 20 && r.since(after-1, m.lo) < 20 && !r.putBack(c) {
			continue // still spoken of as it lies there
		}
		if c.mood&(other|hypothetical|conditional|aside|asked|greeting) != 0 || r.leavesOpen(c) || m.isOld || r.heardIn(m.cl-1, m.cl+1, "still-off", "undone") {
			continue
		}
		return true
	}
	return false
}

// putBack tells whether a clause has a word of those that go with what is put on.
func (r *reading) putBack(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "on", "back", "in", "over", "through", "into", "onto", "up", "home", "new":
			return true
		}
	}
	return false
}

// leavesOpen tells whether a clause speaks of what is still to come.
func (r *reading) leavesOpen(c *clause) bool {
	for _, o := range c.opens {
		switch o.signal {
		case "unknown", "ask", "find", "undone", "unrun", "remember", "later", "back-to", "before-use", "stand-in", "old-back", "ordered", "still-off", "promise", "next":
			return true
		}
	}
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "will", "'ll", "gonna":
			return true
		}
	}
	return false
}

// mayName tells whether a mention could be of the thing: the same head, and no
// word that would set them apart.
func (r *reading) mayName(m *mention, t *thing) bool {
	if strings.TrimSuffix(m.head, "s") != strings.TrimSuffix(t.head, "s") || placesClash(m.mods, t.mods) || m.side != "" && t.side != "" && m.side != t.side {
		return false
	}
	words := content(m.mods)
	if len(words) == 0 && t.fastener && (t.owner != nil || contentCount(t.mods) == 0) && m.entry != nil && m.entry != t && m.entry.first >= m.lo {
		return true // "the screws: two short, the long one front": no others were spoken of
	}
	if len(words) == 0 {
		return m.entry == nil || m.entry == t || contentCount(t.mods) == 0
	}
	for _, w := range words {
		if t.mods[w] {
			return true
		}
	}
	return contentCount(t.mods) == 0
}

// lockedAgain tells whether a lock of that name, or one called no more than
// "the clip", goes in later on.
func (r *reading) lockedAgain(t *thing) bool {
	off := t.events[len(t.events)-1]
	for i := range r.acts {
		a := &r.acts[i]
		if a.lo <= off.lo || !a.happened() || a.action.Name != "fit" && a.action.Name != "lock" {
			continue
		}
		for _, mi := range a.objects {
			if m := &r.mentions[mi]; m.entry == t || m.head == t.head && (len(content(m.mods)) == 0 || r.mayName(m, t)) {
				return true
			}
		}
	}
	return false
}

// thrownAway tells whether what came off is said, in the same breath, to be for the bin.
func (r *reading) thrownAway(t *thing) bool {
	off := t.events[len(t.events)-1]
	ci := int(r.toks[off.lo].cl)
	lo, hi := r.nearBy(ci, 1, 3, 12)
	for k := lo; k <= hi; k++ {
		c := &r.clauses[k]
		for i := c.lo; i < c.hi; i++ {
			if bins.has(r.toks[i].s) && !r.onlyOthers(c, t) {
				return true
			}
		}
	}
	return false
}

// onlyOthers tells whether a clause names things, and none of them may be this one:
// "old filter in the bin" throws no cover away.
func (r *reading) onlyOthers(c *clause, t *thing) bool {
	named := false
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if !r.topical(m) {
			continue
		}
		if m.entry == t || m.head == t.head || r.mayName(m, t) {
			return false
		}
		named = true
	}
	return named
}

// tightenedSoonAfter tells whether, right after a fastener went in, something was
// tightened that is not known from before: most likely this one, by another name.
func (r *reading) tightenedSoonAfter(t *thing) bool {
	in := t.events[len(t.events)-1]
	known := func(o *thing) bool { return o != nil && o != t && len(o.events) > 0 && o.events[0].lo < in.lo }
	for i := range r.heard {
		if h := &r.heard[i]; !h.dropped && !known(h.of) && r.qtys[h.qty].lo > in.lo && r.since(in.lo, r.qtys[h.qty].lo) < 60 {
			return true
		}
	}
	for i := range r.acts {
		a := &r.acts[i]
		if a.lo > in.lo && r.since(in.lo, a.lo) < 60 && (a.action.Name == "tighten" || a.action.Name == "torque") && a.happened() && (len(a.things) == 0 || !known(a.things[0])) {
			return true
		}
	}
	return false
}

// question words what is open as one plain sentence that a person can answer.
func question(o Open) string {
	thing := o.About
	if thing == "" {
		thing = "this part"
	} else {
		thing = "the " + thing
	}
	plural := isMany(thing)
	is, was, has, it := "is", "was", "Has", "it"
	if plural {
		is, was, has, it = "are", "were", "Have", "them"
	}
	switch o.Kind {
	case LookUp:
		return "What is the value for " + thing + ", and which source gives it?"
	case Unfinished:
		return "Is the work on " + thing + " finished?"
	case Unsure:
		return "What " + is + " " + thing + " for certain? The recording is not sure."
	case Conflict:
		return "Two sources disagree about " + thing + ": which one is right for this machine?"
	case NotRefitted:
		return has + " " + thing + " been put back? The recording takes " + it + " off and never says so."
	case NotTorqued:
		return "To what value " + was + " " + thing + " tightened? The recording gives none."
	case LockMissing:
		return has + " " + thing + " been renewed? The recording takes it out and never puts one back."
	case Suspect:
		return "Can the value heard for " + thing + " be right?"
	case ReplaceLater:
		return "Has what stands in for now (" + o.About + ") been replaced by the proper part?"
	case Promise:
		return "Something was promised to viewers (" + o.About + "): is it ready?"
	}
	return ""
}

// mergeOpen asks once what was raised twice, with both times.
func mergeOpen(in []Open) []Open {
	var out []Open
	for _, o := range in {
		merged := false
		for i := range out {
			p := &out[i]
			if p.Kind == Conflict && o.Kind == Conflict && p.Clip == o.Clip && p.At-o.At < 20 && o.At-p.At < 20 {
				// one disagreement, noticed twice: the telling that shows both sides stays
				if o.figure != "" && p.figure == "" && !strings.Contains(p.Quote, o.figure) || (p.figure == "" || strings.Contains(o.Quote, p.figure)) && o.At < p.At {
					p.AlsoAt = append(p.AlsoAt, p.At)
					p.Place, p.Question, p.About, p.LedgerID = o.Place, o.Question, o.About, o.LedgerID
				}
				p.AlsoAt = append(p.AlsoAt, o.AlsoAt...)
				p.figure = max(p.figure, o.figure)
				merged = true
				break
			}
			if p.Kind == o.Kind && p.Before == o.Before && p.Clip == o.Clip && (p.About != "" && p.About == o.About && p.Kind != Promise || p.asksSame(&o)) {
				p.AlsoAt = append(p.AlsoAt, o.At)
				p.AlsoAt = append(p.AlsoAt, o.AlsoAt...)
				p.Findings = append(p.Findings, o.Findings...)
				merged = true
				break
			}
		}
		if !merged {
			out = append(out, o)
		}
	}
	return out
}

// asksSame tells whether a question reads as another does, or quotes no more than a part of what
// the other quotes there.
func (o *Open) asksSame(p *Open) bool {
	return o.Due == p.Due && (o.Question == p.Question || o.About == p.About && math.Abs(o.At-p.At) < 15 && o.Tells() && p.Tells() &&
		(strings.Contains(o.Quote, p.Quote) || strings.Contains(p.Quote, o.Quote)))
}

// lentWhile are the things that are put on or in for as long as the work takes.
var lentWhile = wordsOf("what is lent while the work goes on")
