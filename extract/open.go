package extract

import (
	"sort"
	"strings"

	"wrenchword/extract/lexicon"
)

// open gives the open questions: what people said they leave open, what the
// ledger shows was left open, and what fails a check.
func (r *reading) open(rec *Record) []Open {
	var out []Open
	out = append(out, r.spokenOpen(rec)...)
	out = append(out, r.ledgerOpen(rec)...)
	out = append(out, r.checkOpen(rec)...)
	out = mergeOpen(out)
	sort.SliceStable(out, func(i, j int) bool {
		if out[i].Clip != out[j].Clip {
			return out[i].Clip < out[j].Clip
		}
		return out[i].At < out[j].At
	})
	ids := map[string]int{}
	for i := range out {
		out[i].ID = openID(out[i], ids)
		if out[i].AlsoAt == nil {
			out[i].AlsoAt = []float64{}
		}
	}
	if out == nil {
		out = []Open{}
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
		return base + "-" + string(rune('0'+n%10))
	}
	return base
}

// spokenOpen reads what people say when they leave something open.
func (r *reading) spokenOpen(rec *Record) []Open {
	var out []Open
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if len(c.opens) == 0 || c.mood&greeting != 0 {
			continue
		}
		used := map[string]bool{}
		for _, oc := range c.opens {
			k := oc.kinds[0]
			if used[k.Kind] || !r.reallyOpen(ci, oc, k.Kind) {
				continue
			}
			used[k.Kind] = true
			o := r.askAt(ci, oc, k.Kind, k.Before)
			out = append(out, o)
		}
	}
	out = append(out, r.notYet()...)
	out = append(out, r.unknownValues()...)
	// work announced and never done
	for ci := range r.clauses {
		c := &r.clauses[ci]
		for _, ai := range c.acts {
			a := &r.acts[ai]
			if a.mood&announced == 0 || a.mood&(conditional|hypothetical|other|asked|advert) != 0 || len(a.things) == 0 {
				continue
			}
			t := a.things[0]
			if t.name == "" || r.doneAfter(t, a) || len(c.opens) > 0 {
				continue
			}
			if !r.future(c, a) {
				continue
			}
			o := Open{Kind: Unfinished, Before: BeforeUse, About: shortName(t.name), LedgerID: t.id, Place: r.placeAround(max(c.lo, a.lo-8), c.hi, a.lo).by("announced, not heard done")}
			o.Due = r.dueOf(ci)
			if o.Due != "" && r.after(ci) {
				o.Before = BeforeLater
			}
			o.Question = question(o)
			out = append(out, o)
		}
	}
	return out
}

// notYet reads "I haven't … yet" and kin, which no list of phrases can hold.
func (r *reading) notYet() []Open {
	var out []Open
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if c.mood&(advert|greeting|asked|other) != 0 || len(c.opens) > 0 {
			continue
		}
		have, yet := -1, false
		for i := c.lo; i < c.hi; i++ {
			switch r.toks[i].s {
			case "haven't", "hasn't", "ain't":
				have = i
			case "not":
				if i > c.lo && (r.toks[i-1].s == "have" || r.toks[i-1].s == "'ve" || r.toks[i-1].s == "has") {
					have = i
				}
			case "yet":
				yet = true
			}
		}
		if have < 0 || !yet {
			continue
		}
		out = append(out, r.askAt(ci, openCue{have, have + 1, []lexicon.OpenCue{{Kind: Unfinished, Before: BeforeUse}}}, Unfinished, BeforeUse))
	}
	return out
}

var valueWord = set("torque newton newtons figure figures number spec setting value pressure clearance gap")
var unknowing = [][]string{{"don't", "know"}, {"no", "idea"}, {"do", "not", "know"}, {"haven't", "a", "clue"}, {"not", "sure"}, {"i", "forget"}, {"don't", "remember"}, {"can't", "remember"}, {"haven't", "got"}, {"don't", "have"}, {"not", "got"}}

// unknownValues reads a value that the speaker says they do not know: the word
// for a value and the not knowing within one breath.
func (r *reading) unknownValues() []Open {
	var out []Open
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if c.mood&(advert|greeting|asked) != 0 || len(c.opens) > 0 {
			continue
		}
		at := -1
		for i := c.lo; i < c.hi && at < 0; i++ {
			for _, p := range unknowing {
				if r.says(i, len(r.toks), p) {
					at = i
					break
				}
			}
		}
		if at < 0 {
			continue
		}
		found := false
		for k := max(0, ci-1); k <= min(ci+1, len(r.clauses)-1) && !found; k++ {
			n := &r.clauses[k]
			if k > ci && r.toks[c.hi-1].brk >= brkSentence || abs(int(r.since(n.lo, c.lo))) > 8 {
				continue
			}
			for i := n.lo; i < n.hi; i++ {
				if valueWord[r.toks[i].s] && r.toks[i].men < 0 && r.toks[i].qty < 0 {
					found = true
				}
			}
		}
		if found {
			out = append(out, r.askAt(ci, openCue{at, at + 2, []lexicon.OpenCue{{Kind: LookUp, Before: BeforeUse}}}, LookUp, BeforeUse))
		}
	}
	return out
}

// askAt makes the question of a cue.
func (r *reading) askAt(ci int, oc openCue, kind, before string) Open {
	c := &r.clauses[ci]
	about, t, sure := r.aboutOf(ci, oc)
	o := Open{Kind: kind, Before: before, About: shortName(about), Due: r.dueOf(ci), Place: r.placeAround(max(c.lo, oc.lo-10), min(c.hi, oc.hi+14), oc.lo)}
	rule := "said: " + r.text(oc.lo, oc.hi)
	if sure {
		if t != nil {
			o.LedgerID = t.id
		}
		o.Question = question(o)
		o.Place = o.Place.by(rule)
		return o
	}
	// what it is about is not certain: ask in the speaker's words, name nothing
	o.Place = r.placeAround(r.around(ci, oc.lo, -1), r.around(ci, oc.hi, 1), oc.lo).by(rule)
	o.Question = asking[kind] + ": “" + o.Quote + "”?"
	return o
}

// asking words a question by what was said, where its thing is not certain.
var asking = map[string]string{
	LookUp:       "Which value is meant here, and which source gives it",
	Unfinished:   "Is this finished",
	Unsure:       "What is right here",
	Conflict:     "Which is right for this machine",
	ReplaceLater: "Has this been put right since",
	Promise:      "Is this ready for the viewers",
}

// around gives a token up to twelve words before or after tok, within the
// neighbouring clauses, so that words said in one breath can be read together.
func (r *reading) around(ci, tok, dir int) int {
	if dir < 0 {
		lo := r.clauses[ci].lo
		for k := ci - 1; k >= 0 && tok-r.clauses[k].lo <= 14 && r.since(r.clauses[k].lo, tok) < 10; k-- {
			lo = r.clauses[k].lo
		}
		return max(lo, tok-16)
	}
	hi := r.clauses[ci].hi
	for k := ci + 1; k < len(r.clauses) && r.clauses[k].hi-tok <= 12 && r.since(tok-1, r.clauses[k].lo) < 10; k++ {
		hi = r.clauses[k].hi
	}
	return min(hi, tok+16)
}

func (r *reading) future(c *clause, a *act) bool {
	for i := c.lo; i < a.lo; i++ {
		switch r.toks[i].s {
		case "'ll", "will", "going", "gonna", "need", "have", "got", "want", "gotta":
			return true
		}
	}
	return false
}

func (r *reading) after(ci int) bool {
	c := &r.clauses[ci]
	for i := c.lo; i < c.hi; i++ {
		if r.toks[i].s == "after" {
			return true
		}
	}
	return false
}

// doneAfter tells whether the announced act was done later in the talk.
func (r *reading) doneAfter(t *thing, a *act) bool {
	for _, e := range t.events {
		if e.lo > a.lo && (e.action == a.action.Name || e.action == "torque" || a.action.Name == "fit" && e.action == "start by hand") {
			return true
		}
	}
	return false
}

// reallyOpen declines cues that leave nothing open where they stand.
func (r *reading) reallyOpen(ci int, oc openCue, kind string) bool {
	c := &r.clauses[ci]
	switch kind {
	case Promise:
		// a promise needs someone who will do it
		for i := max(c.lo-6, 0); i < c.hi; i++ {
			switch r.toks[i].s {
			case "'ll", "will", "gonna", "going", "i'd", "do", "put":
				return true
			}
		}
		return false
	case ReplaceLater:
		// "hand tight for now" is how tight it is, not a stand-in
		return r.laying(c)
	case Conflict:
		return true
	}
	return c.mood&(advert|other) == 0 || kind == LookUp
}

// aboutOf tells what an open end is about: a thing of the clause, or the one
// spoken of just before. sure is false where that is only likely; the name is
// then made of the speaker's own words.
func (r *reading) aboutOf(ci int, oc openCue) (about string, t *thing, sure bool) {
	c := &r.clauses[ci]
	best, dist := -1, 1<<30
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		d := abs(m.lo - oc.lo)
		if m.kind&(lexicon.Fastener|lexicon.Part|lexicon.Consumable) == 0 {
			d += 20
		}
		if d < dist {
			best, dist = mi, d
		}
	}
	if best >= 0 && len(oc.kinds) > 0 && oc.kinds[0].Kind == ReplaceLater {
		// what stands in comes first; what it holds comes after
		for _, mi := range c.mentions {
			if m := &r.mentions[mi]; m.prep == "" && m.kind&lexicon.Tool == 0 {
				best = mi
				break
			}
		}
	}
	sure = best >= 0
	for k := ci - 1; best < 0 && k >= 0 && k >= ci-3 && r.since(r.clauses[k].lo, c.lo) < 12; k-- {
		n := 0
		for _, mi := range r.clauses[k].mentions {
			if m := &r.mentions[mi]; m.kind&(lexicon.Fastener|lexicon.Part|lexicon.Consumable) != 0 {
				best = mi
				n++
			}
		}
		sure = n == 1 && k >= ci-2 && r.since(r.clauses[k].lo, c.lo) < 7
	}
	if best >= 0 {
		m := &r.mentions[best]
		name := m.name
		if m.entry != nil && m.entry.name != "" && (m.entry.fastener || len(m.entry.name) > len(name)) {
			name = m.entry.name
			if m.entry.side != "" && m.side != "" {
				name = m.entry.side + " " + name
			}
		}
		if sure {
			return name, m.entry, true
		}
		t = m.entry
	}
	var words []string
	for i := c.lo; i < c.hi && len(words) < 6; i++ {
		if w := r.toks[i].s; !stopWords[w] && !dropWords[w] && !pronounsObj[w] && (i < oc.lo || i >= oc.hi) {
			words = append(words, w)
		}
	}
	return strings.Join(words, " "), t, false
}

var dueWords = [][]string{{"tomorrow"}, {"on", "monday"}, {"on", "tuesday"}, {"on", "wednesday"}, {"on", "thursday"}, {"on", "friday"}, {"on", "saturday"}, {"on", "sunday"}, {"next", "week"}, {"next", "time"}, {"next", "month"}, {"at", "the", "weekend"}, {"next", "weekend"}, {"in", "the", "morning"}}

// dueOf gives when something is to be done, where that was said.
func (r *reading) dueOf(ci int) string {
	for k := ci; k <= min(ci+1, len(r.clauses)-1); k++ {
		c := &r.clauses[k]
		for i := c.lo; i < c.hi; i++ {
			for _, p := range dueWords {
				if r.says(i, c.hi, p) {
					return strings.ToLower(r.text(i, i+len(p)))
				}
			}
			if r.toks[i].s == "after" && i+2 < c.hi {
				for j := i + 1; j < min(c.hi, i+6); j++ {
					switch r.toks[j].s {
					case "miles", "mile", "kilometers", "kilometres", "hours", "hour", "ride", "drive", "k", "days", "runs":
						return strings.ToLower(r.text(i, j+1))
					}
				}
			}
		}
	}
	return ""
}

// ledgerOpen asks after whatever the ledger shows was left open.
func (r *reading) ledgerOpen(rec *Record) []Open {
	var out []Open
	byID := map[string]*thing{}
	for _, t := range r.things {
		if t.id != "" {
			byID[t.id] = t
		}
	}
	for _, e := range rec.Ledger {
		t := byID[e.ID]
		if t == nil {
			continue
		}
		kind := ""
		switch e.State {
		case Removed:
			kind = NotRefitted
			if isLock(t) {
				kind = LockMissing
			}
			if t.owner != nil {
				if st, _ := t.owner.state(); st == Removed {
					continue // asked with the part it holds
				}
			}
			if r.consumed(t) {
				continue
			}
		case Discarded:
			if isLock(t) {
				kind = LockMissing
			}
		case Loosened, HandTight, Tightened, Refitted:
			if !takesTorque(t) {
				if e.State == Loosened && e.Kind == "fastener" || e.State == HandTight {
					kind = NotTorqued
				}
				break
			}
			kind = NotTorqued
			if e.State == Refitted && e.Kind != "fastener" {
				kind = ""
			}
		}
		if kind == "" {
			continue
		}
		last := t.events[len(t.events)-1]
		o := Open{Kind: kind, Before: BeforeUse, About: torqueName(t), LedgerID: e.ID, Place: r.placeAround(max(0, last.lo-3), last.hi+5, last.lo).by("ledger: left " + e.State)}
		if o.About == "" {
			o.About = e.Kind
		}
		for _, ev := range t.events {
			if ev.lo != last.lo && ledgerActs[ev.action] != "" {
				o.AlsoAt = append(o.AlsoAt, round3(r.at(ev.lo)))
			}
		}
		o.Question = question(o)
		out = append(out, o)
	}
	return out
}

// consumed tells whether a removed thing is one that was never to come back:
// it was replaced by a new one of another name, or it is what stood in the way.
func (r *reading) consumed(t *thing) bool {
	return t.mods["old"] || strings.HasPrefix(t.name, "old ")
}

// question words what is open as one plain sentence that a person can answer.
func question(o Open) string {
	thing := o.About
	if thing == "" {
		thing = "this part"
	} else {
		thing = "the " + thing
	}
	plural := strings.HasSuffix(thing, "s") && !strings.HasSuffix(thing, "ss")
	is, was, has := "is", "was", "Has"
	if plural {
		is, was, has = "are", "were", "Have"
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
		return has + " " + thing + " been put back? The recording takes it off and never says so."
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
				if o.At < p.At {
					p.Place, p.Question, p.About, p.LedgerID = o.Place, o.Question, o.About, o.LedgerID
				}
				p.AlsoAt = append(p.AlsoAt, o.AlsoAt...)
				merged = true
				break
			}
			if p.Kind == o.Kind && p.Before == o.Before && (p.About == o.About || p.LedgerID != "" && p.LedgerID == o.LedgerID && p.Kind != Promise) && p.Clip == o.Clip {
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
