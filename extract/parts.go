package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// parts gives the parts with their fate: said to be new, used again, thrown
// away, or standing in for now.
func (r *reading) parts() []Part {
	out := []Part{}
	seen := map[string]bool{}
	thrown := map[string]int{} // where each is said to be thrown away
	add := func(name, disp string, m *mention, lo, hi int) {
		if m != nil || disp != "temporary" {
			name = lexicon.Singular(name)
		}
		if name == "" || seen[name+"|"+disp] {
			return
		}
		seen[name+"|"+disp] = true
		if disp == "discarded" {
			thrown[name] = lo
		}
		p := Part{Name: shortName(name), Disposition: disp, Place: r.place(lo, hi)}
		if m != nil {
			p.Count, p.Side = m.count, m.side
		}
		out = append(out, p)
	}
	stand := map[int]bool{}
	for _, s := range r.standIns() {
		if s.mention >= 0 {
			stand[s.mention] = true
		} else {
			add(s.name, "temporary", nil, s.lo, s.hi)
		}
	}
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if c.mood&(aside|greeting) != 0 || c.mood&other != 0 && !r.heIsIt(c) && !r.heardIn(ci, ci, "got-one", "made-one") {
			continue
		}
		sure := c.mood&(conditional|negated|hypothetical|optional|asked) == 0
		for k, mi := range c.mentions {
			m := &r.mentions[mi]
			if stand[mi] {
				add(m.name, "temporary", m, m.from, m.hi+4)
				continue
			}
			if m.kind&(lexicon.Fastener|lexicon.Part) == 0 && !(m.isNew && m.kind&lexicon.Tool != 0 && onWords.has(r.word(m.hi))) {
				continue // but "new knife in": it is the machine's
			}
			name := m.name
			if m.entry != nil && m.entry.name != "" {
				name = m.entry.name
				if m.entry.fastener || len(m.mods) > 0 && !subsetOf(m.mods, name) {
					name = saidName(m)
				}
			}
			switch {
			case sure && m.isNew && (r.stillToCome(c, m) || r.newWanted(c, m)):
				m.isNew = false
			case sure && (m.isNew || r.realOne(m) || r.comesWith(c, m) || k > 0 && r.joined(c.mentions[k-1], mi) && r.mentions[c.mentions[k-1]].isNew || r.isNewHere(m)):
				m.isNew = true
				for j := k; j > 0 && r.word(m.hi) == "all" && r.inRow(c.mentions[j-1], c.mentions[j]); j-- {
					o := &r.mentions[c.mentions[j-1]]
					o.isNew = true
					add(o.name, "new", o, o.from, m.hi+2) // "pin, clevis and cotter, all new"
				}
				add(name, "new", m, m.from, m.hi+3)
				if m.entry != nil {
					m.entry.isNew = true
				}
			case sure && r.usedAgain(c, m):
				add(name, "reused", m, m.from, m.hi+6)
			}
		}
		for _, f := range r.fates(ci) {
			name, m, lo := "", f.mention, max(c.lo, f.lo-3)
			if m != nil {
				name = m.name
			}
			if t := f.thing; t != nil && t.name != "" {
				name = t.name
				if t.fastener && m != nil {
					name = saidName(m)
				}
			}
			if f.here {
				lo = f.lo
			} else {
				m = nil
			}
			if (f.disposition == "reused" || f.disposition == "temporary" && !f.another) && f.thing != nil && f.thing.isNew {
				continue
			}
			if f.disposition == "new" && f.thing != nil {
				f.thing.isNew = true
			}
			add(name, f.disposition, m, lo, f.hi+2)
		}
		if i := r.newOne(c); i >= 0 && sure && !r.hasNone(i+2) && !r.owed(c) {
			if row := r.rowRenewed(ci, i); row != nil {
				for _, m := range row {
					m.isNew, m.entry.isNew = true, true
					add(saidName(m), "new", m, m.from, i+4)
				}
			} else if s := r.fateOf(fateTold{ci: ci, lo: i, hi: min(i+2, c.hi), by: tellsNewOne, disposition: "new"}, toldOf(r.oneFor(ci, i), i, i+4)); len(s) > 0 {
				if t := s[0].thing; t == nil {
					add(s[0].mention.name, "new", nil, i, i+4)
				} else if t.head != "fastener" {
					t.isNew = true
					add(t.name, "new", nil, i, i+4)
				}
			}
		}
	}
	// "I'm renewing the seals", "I've changed the filter", "the belt's been replaced"
	for ai := range r.acts {
		a := &r.acts[ai]
		if a.verb < 0 || a.subject || (a.mood|r.clauses[a.cl].mood)&(negated|conditional|hypothetical|other|aside|announced) != 0 {
			continue
		}
		v := r.lemma1(r.toks[a.verb].s)
		out := a.hi > a.verb+1 && (r.toks[a.hi-1].s == "out" || r.word(a.hi) == "out" || r.word(a.hi) == "for")
		if done := strings.HasSuffix(r.toks[a.verb].s, "ed"); v != "renew" && !(done && (v == "change" || v == "replace" || v == "swap" && out)) {
			continue // "we're changing the pump": what the job is, in the widest words
		}
		for _, mi := range a.objects {
			m := &r.mentions[mi]
			add(m.name, "new", m, m.from, a.hi)
		}
		if pronounsObj.has(a.pronoun) && len(a.objects) == 0 && len(a.things) == 1 && a.things[0].name != "" && (a.pronoun == "it" || a.things[0].plural || a.things[0].count > 1) && (v != "replace" || !a.things[0].offBefore(a.lo)) {
			a.things[0].isNew = true
			add(a.things[0].name, "new", nil, a.lo, a.hi) // "the seals were past it so I changed them"
		}
	}
	// "I'm changing the tyres", and they came off and went on
	for ai := range r.acts {
		a := &r.acts[ai]
		if a.action.Name != "replace" || a.subject || (a.mood|r.clauses[a.cl].mood)&(negated|conditional|hypothetical|other|aside|asked) != 0 {
			continue
		}
		for _, mi := range a.objects {
			if t := r.mentions[mi].entry; t != nil && !t.fastener && t.offAndOn(a.lo) {
				t.isNew = true
				add(t.name, "new", &r.mentions[mi], a.lo, a.hi)
			}
		}
	}
	// "swap the lever over", "transfer the clips": what goes from the old to the new
	for ai := range r.acts {
		a := &r.acts[ai]
		if a.verb < 0 || a.mood&(negated|conditional|hypothetical|other|aside) != 0 {
			continue
		}
		v := r.lemma1(r.toks[a.verb].s)
		if v != "transfer" && !((v == "swap" || v == "change") && a.hi > a.verb+1 && (r.toks[a.hi-1].s == "over" || r.toks[a.hi-1].s == "across")) {
			continue
		}
		for _, mi := range a.objects {
			if m := &r.mentions[mi]; m.kind&(lexicon.Part|lexicon.Fastener) != 0 && !m.isNew {
				add(m.name, "reused", m, m.from, a.hi)
			}
		}
		if len(a.objects) == 0 {
			for _, s := range r.toldOfWhat(a.cl, a.lo, a.hi) {
				if s.mention != nil && !s.mention.isNew {
					add(s.mention.name, "reused", nil, a.lo, a.hi+2) // "transfer those over"
				}
			}
		}
	}
	for _, t := range r.things {
		for _, e := range t.events {
			if e.action == "discard" && (e.act < 0 || r.acts[e.act].mood&(conditional|hypothetical) == 0) {
				add(t.name, "discarded", nil, e.lo-3, e.hi+2)
			}
		}
	}
	// "new ring on, old ring's garbage": the one that came off, whatever became of its place
	for ai := range r.acts {
		if a := &r.acts[ai]; a.action.Name == "discard" && (a.mood|r.clauses[a.cl].mood)&notWork == 0 {
			for _, mi := range a.objects {
				if m := &r.mentions[mi]; m.isOld && m.kind&(lexicon.Part|lexicon.Fastener) != 0 {
					add(m.name, "discarded", m, m.from, a.hi)
				}
			}
		}
	}
	r.spoiltForGood(func(t *thing, lo, hi int) {
		if !seen[t.name+"|discarded"] && !seen[t.name+"|reused"] && !seen[t.name+"|temporary"] {
			add(t.name, "discarded", nil, lo, hi)
		}
	})
	back := map[string]bool{}
	for _, t := range r.things {
		if e := t.backOn(r); e != nil && !seen[t.name+"|new"] && e.lo > thrown[t.name] {
			back[t.name] = true
		}
	}
	for _, t := range r.things {
		if e := t.backOn(r); e != nil && wears.has(t.head) && !t.isNew && !seen[t.name+"|new"] && !seen[t.name+"|temporary"] && !seen[t.name+"|discarded"] {
			add(t.name, "reused", nil, e.lo-3, e.hi+2)
		}
	}
	return slices.DeleteFunc(out, func(p Part) bool {
		if p.Disposition == "discarded" && back[p.Name] {
			return true // it is back: something else was thrown away
		}
		// what is used again only for now stands in
		return p.Disposition == "reused" && seen[p.Name+"|temporary"] || slices.ContainsFunc(out, func(o Part) bool {
			return o.Disposition == p.Disposition && o.covers(&p)
		})
	})
}

// subsetOf tells whether a name has all of some words.
func subsetOf(words []string, name string) bool {
	for _, w := range words {
		if !strings.Contains(name, w) {
			return false
		}
	}
	return true
}

// spoiltForGood gives each thing that is found broken or worn, and that a new one is
// put in for; and those that nobody mends, where they came off.
func (r *reading) spoiltForGood(found func(t *thing, lo, hi int)) {
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if c.mood&(notWork|warned) != 0 || r.framesNext(ci) {
			continue
		}
		for i := c.lo; i < c.hi; i++ {
			if !r.toks[i].is(wSeldom) || !damage.has(r.toks[i].s) || r.toks[i].men >= 0 || !r.saysOf(c, i) || r.deniedAround(c, openCue{lo: i, hi: i + 1}) {
				continue
			}
			s := r.toldOfWhat(ci, i, i+1)
			if len(s) == 0 || s[0].thing == nil || s[0].thing.name == "" {
				continue
			}
			t := s[0].thing
			if t.isNew || soft.has(t.head) && t.offBefore(i+20) && !t.offAndOn(-1) {
				found(t, max(c.lo, i-3), i+2)
			}
			break
		}
	}
}

// saysOf tells whether a word for damage at token i is said of a thing: "it's worn through",
// "gasket torn". It is not in "a rotten job", "dead square", "no broken strands".
func (r *reading) saysOf(c *clause, i int) bool {
	if i+1 < c.hi && r.toks[i].brk < brkComma && !r.toks[i+1].is(wPreposition|wOff|wOn|wOpener|wLinking) && !afterDamage.has(r.toks[i+1].s) {
		return false
	}
	k := i - 1
	for k > c.lo && howBadly.has(r.toks[k].s) && r.toks[k-1].brk < brkSentence {
		k--
	}
	switch w := r.toks[max(k, 0)].s; {
	case k < c.lo:
		return true
	case r.toks[k].men >= 0, r.toks[k].brk >= brkComma, r.toks[k].is(wLinking), w == "one", w == "ones":
		return true
	default:
		return w == "'s" || w == "'re" || w == "has" || w == "have" || w == "'ve" || w == "been" || w == "got" || w == "gone" || w == "looks" || w == "look" || w == "came" || w == "being"
	}
}

// afterDamage are the words besides particles that may follow what a thing is found to be.
var afterDamage = set("and too so but as that which or again where anyway look see already underneath inside flat right clean away together")

// howBadly are the words before what a thing is found to be.
var howBadly = set("all completely totally well pretty really so absolutely badly right just clean quite half very too a bit slightly proper properly nearly almost long also both")

// soft are the parts that nobody mends when they are torn, split or bent.
var soft = wordsOf("nobody mends")

// wears are the parts that one asks of whether they were renewed: a wheel that is back is the wheel.
var wears = wordsOf("what is renewed in time")

// backOn gives the event by which a thing that had come off is said to be back.
func (t *thing) backOn(r *reading) *event {
	off := false
	for i := range t.events {
		e := &t.events[i]
		switch ledgerActs[e.action] {
		case Removed:
			off = true
		case Refitted, HandTight, Tightened, Torqued:
			if !off || e.act < 0 {
				continue
			}
			for k := max(r.clauses[r.acts[e.act].cl].lo, e.lo-1); k < min(r.clauses[r.acts[e.act].cl].hi, e.hi+2); k++ {
				if r.toks[k].s == "back" {
					return e
				}
			}
		}
	}
	return nil
}

// covers tells whether a part is the same as another, or includes it: the hub motor
// is the motor, and both bearings are the inner one as well.
func (p *Part) covers(o *Part) bool {
	if more, ok := strings.CutSuffix(p.Name, " "+o.Name); ok {
		return p.At == o.At && p.Disposition == "temporary" || !slices.ContainsFunc(strings.Fields(more), func(w string) bool { return placeWords.has(w) })
	}
	more, ok := strings.CutSuffix(o.Name, " "+p.Name)
	return ok && p.Count > 1 && !slices.ContainsFunc(strings.Fields(more), func(w string) bool { return !placeWords.has(w) })
}

// offAndOn tells whether a thing came off and went on after a token.
func (t *thing) offAndOn(tok int) bool {
	off := false
	for i := range t.events {
		if e := &t.events[i]; e.lo > tok {
			switch ledgerActs[e.action] {
			case Removed, Discarded:
				off = true
			case Refitted, HandTight, Tightened, Torqued:
				if off {
					return true
				}
			}
		}
	}
	return false
}

// offBefore tells whether a thing had come off before a token.
func (t *thing) offBefore(tok int) bool {
	for i := range t.events {
		if t.events[i].lo < tok && ledgerActs[t.events[i].action] == Removed {
			return true
		}
	}
	return false
}

// heIsIt tells whether "he" in a clause is what is worked on: "he's going back in",
// "and he gets a new one", and nobody else is spoken of.
func (r *reading) heIsIt(c *clause) bool {
	is := false
	for _, q := range c.cues {
		if q.mood&other == 0 {
			continue
		}
		if q.hi != q.lo+1 || r.toks[q.lo].s != "he" {
			return false
		}
		switch next := r.word(q.hi); {
		case next == "'s" && (r.next(q.hi) == "in" && bins.has(r.word(q.hi+3)) || r.next(q.hi) == "going" || r.next(q.hi) == "for" || r.next(q.hi) == "scrap" || r.next(q.hi) == "off" || r.next(q.hi) == "out"):
		case next == "goes" || next == "comes" || next == "stays":
		case next == "gets" && (r.next(q.hi) == "a" && r.word(q.hi+2) == "new" || r.next(q.hi) == "new"):
		default:
			return false
		}
		is = true
	}
	return is
}

// joined tells whether two mentions are joined by "and" with nothing of their own between.
func (r *reading) joined(a, b int) bool {
	lo, hi := r.mentions[a].hi, r.mentions[b].lo
	return hi == lo+1 && r.toks[lo].s == "and"
}

// inRow tells whether two mentions follow each other with no more than "and" between.
func (r *reading) inRow(a, b int) bool {
	lo, hi := r.mentions[a].hi, r.mentions[b].from
	return hi == lo || hi == lo+1 && r.toks[lo].s == "and"
}

// isNewHere reads "needle bearing, new" and "the clips are new".
func (r *reading) isNewHere(m *mention) bool {
	c := &r.clauses[m.cl]
	i := m.hi
	if i < c.hi && (r.toks[i].s == "are" || r.toks[i].s == "'re" || r.toks[i].s == "is" || r.toks[i].s == "'s") {
		i++
	}
	if i < c.hi && (r.toks[i].s == "both" || r.toks[i].s == "all") {
		i++ // "bearings, both new"
	}
	if i < c.hi && r.toks[i].s == "brand" {
		i++
	}
	if i >= c.hi || r.toks[i].s != "new" || r.detail(m) != nil {
		return false
	}
	w := r.next(i)
	return i+1 == c.hi || r.toks[i].brk >= brkPause || w == "too" || w == "as" || w == "also"
}

// stillToCome reads "until the new handle comes".
func (r *reading) stillToCome(c *clause, m *mention) bool {
	for i := max(c.lo, m.from-4); i < m.from; i++ {
		switch r.toks[i].s {
		case "until", "till", "unless":
			return true
		case "when", "once": // "when the new hub gets here"
			if comes := r.word(m.hi); m.hi < c.hi && (comes == "comes" || comes == "arrives" || comes == "turns" || comes == "gets" && r.next(m.hi) == "here") {
				return true
			}
		}
	}
	return false
}

// newWanted tells whether something new is only needed, priced or put off: "it needs new
// feet", "a new wheel is three hundred", "a new screw, some day". What then goes on is new.
func (r *reading) newWanted(c *clause, m *mention) bool {
	switch r.prev(m.from) {
	case "need", "needs", "want", "wants", "needing", "wanting":
		return m.from > c.lo && (m.entry == nil || !m.entry.onAfter(m.hi))
	case "ordered":
		return m.entry == nil || !m.entry.onAfter(m.hi) // "I've ordered a new handle"
	case "buy", "order":
		return m.from > c.lo+1 && (r.word(m.from-2) == "to" || r.word(m.from-2) == "'ll" || r.word(m.from-2) == "will")
	}
	switch w := r.word(m.hi); {
	case m.hi >= len(r.toks):
	case (w == "is" || w == "costs") && m.hi+1 < len(r.toks) && (r.toks[m.hi+1].is(wNumber|wCountOf) || r.toks[m.hi+1].qty >= 0) && r.toks[m.hi-1].brk < brkComma:
		return true
	case w == "some" || w == "one" || w == "next" || w == "another":
		switch r.next(m.hi) {
		case "day", "time", "year", "winter", "summer", "season":
			return true
		}
	}
	return false
}

// onAfter tells whether a thing goes on after a token.
func (t *thing) onAfter(tok int) bool {
	return slices.ContainsFunc(t.events, func(e event) bool {
		if e.lo <= tok {
			return false
		}
		if onAgain(ledgerActs[e.action]) {
			return true
		}
		return false
	})
}

// realOne reads "I put a real cotter": in the place of what was none.
func (r *reading) realOne(m *mention) bool {
	if w := r.word(m.from); w != "a" && w != "an" {
		return false
	}
	for i := m.from; i < m.hi; i++ {
		if w := r.toks[i].s; w == "real" || w == "proper" || w == "correct" {
			v := r.prev(m.from)
			return !r.toCome(m.cl) && (v == "put" || v == "fitted" || v == "fit" || r.actOn(m.cl, int(r.toks[m.lo].men)) == "fit")
		}
	}
	return false
}

// toCome tells whether a clause is of what is still to be done.
func (r *reading) toCome(ci int) bool {
	c := &r.clauses[ci]
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "'ll", "will", "when", "until", "till", "tomorrow", "later":
			return true
		}
	}
	return c.mood&announced != 0
}

// lastOf gives the last thing that a clause names.
func (r *reading) lastOf(c *clause) *mention {
	if len(c.mentions) == 0 {
		return nil
	}
	return &r.mentions[c.mentions[len(c.mentions)-1]]
}

// comesWith reads "the new ones come with rubbers and washers", "circlips out of the kit":
// what comes with something new is new itself.
func (r *reading) comesWith(c *clause, m *mention) bool {
	for i := m.from - 1; i >= c.lo && m.from-i < 12; i-- { // "a service kit, diaphragm and valves"
		if w := r.toks[i].s; (w == "kit" || w == "kits") && r.toks[i].brk == brkComma {
			return true
		} else if w != "and" && r.toks[i].men < 0 && !determiner.has(w) {
			break
		}
	}
	if w := r.prev(m.from); (w == "get" || w == "gets" || w == "given") && r.word(m.hi) == "with" && (r.next(m.hi) == "the" || r.next(m.hi) == "it") {
		return true // "you get circlips with the joint"
	}
	if from := r.word(m.hi); from == "from" || from == "in" || from == "out" || from == "outta" {
		for i := m.hi + 1; i < min(c.hi, m.hi+5) && r.toks[i-1].brk == brkNone; i++ {
			switch r.toks[i].s {
			case "kit", "packet", "pack":
				return true
			case "breaker", "breakers", "scrapyard", "junkyard", "dealer", "dealers", "shop", "internet", "donor", "envelope", "parcel":
				return from != "in"
			}
		}
	}
	lo := c.lo
	for k := m.cl - 1; k >= 0 && r.clauses[k].sentence == c.sentence && len(r.clauses[k+1].acts) == 0 && m.from-r.clauses[k].lo < 24; k-- {
		lo = r.clauses[k].lo
	}
	for i := m.from - 1; i > lo; i-- {
		// "the seal kit has the wiper, the rod seal and two rings"
		if w := r.toks[i].s; (r.prev(i) == "kit" || r.word(i-2) == "kit" && r.prev(i) == "'s") && (w == "has" || w == "contains" || w == "includes" || w == "got" || w == "gives") {
			return true
		}
		if r.toks[i].s != "with" {
			if t := r.toks[i].men; t < 0 && prepositions.has(r.toks[i].s) {
				return false
			}
			continue
		}
		if v := r.prev(i); v == "new" && (r.word(i-2) == "comes" || r.word(i-2) == "come" || r.word(i-2) == "came") {
			return true
		} else if v != "comes" && v != "come" && v != "came" {
			return false
		}
		for k := i - 2; k >= 0 && k > i-16 && r.clauses[r.toks[k].cl].sentence == c.sentence; k-- {
			switch r.toks[k].s {
			case "new", "kit", "kits", "packet", "replacement", "replacements":
				return true
			}
		}
		return false
	}
	return false
}

// hasNone tells whether right after token i it is said that there is none: "new one I don't have".
func (r *reading) hasNone(i int) bool {
	for k := i; k < min(len(r.toks), i+5); k++ {
		switch r.toks[k].s {
		case "don't", "haven't", "not", "didn't", "ain't":
			for j := k; j < min(len(r.toks), k+3); j++ {
				if w := r.toks[j].s; w == "have" || w == "got" || w == "get" {
					return true
				}
			}
		}
		if r.toks[k].brk >= brkSentence && k > i {
			break
		}
	}
	return false
}

// owed tells whether a clause says only what should be done: "you're meant to put a new one in".
func (r *reading) owed(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "meant", "supposed", "should", "ought":
			return true
		}
	}
	return false
}

// newOne gives the token of "a new one", -1 where the clause has none.
func (r *reading) newOne(c *clause) int {
	for i := c.lo; i+1 <= c.hi; i++ {
		if r.toks[i].s == "new" && (i+1 == c.hi || r.toks[i].brk >= brkPause) && r.prev(i) == "the" && r.word(i-2) == "with" && r.word(i-3) == "in" {
			return i // "out with the old filter and in with the new"
		}
		if r.toks[i].s == "new" && r.allNew(c, i) {
			return i
		}
		if i+1 == c.hi || r.prev(i) == "the" && (r.word(i-2) == "on" || r.word(i-2) == "onto" || r.word(i-2) == "to") {
			continue // "goes on the new one": where it goes
		}
		if n := r.toks[i+1].s; r.toks[i].s == "new" && (n == "one" || n == "ones" || (n == "piece" || n == "length") && r.word(i+2) != "of" || (n == "set" || n == "pair") && (onWords.has(r.word(i+2)) || r.word(i+2) == "goes" || r.word(i+2) == "go" || i+2 >= c.hi || r.toks[i+1].brk >= brkComma)) && r.toks[i+1].men < 0 && !r.awaited(c, i) {
			return i
		}
	}
	return -1
}

// allNew tells whether a sentence says of what was named before it no more than that it is
// new, or that all of a row is: "Spark plug. New.", "pin, clip, ring, all new".
func (r *reading) allNew(c *clause, i int) bool {
	if i+1 < c.hi && r.toks[i].brk < brkComma {
		return false
	}
	k := i
	for k > c.lo && (r.toks[k-1].s == "brand" || r.toks[k-1].s == "all" || r.toks[k-1].s == "both") {
		k--
	}
	return k == c.lo && r.toks[i].brk >= brkSentence && k > 0 && r.toks[k-1].brk >= brkSentence
}

// rowRenewed gives the parts that are told one after the other right before "new ones" at
// token i, where they are several: "top hose, heater hose, new ones".
func (r *reading) rowRenewed(ci, i int) []*mention {
	if r.next(i) != "ones" && r.word(i) == "new" && i+1 < len(r.toks) && r.toks[i].brk < brkComma {
		return nil
	}
	var row []*mention
	at := i
	for at > 0 && (r.toks[at-1].s == "all" || r.toks[at-1].s == "both") {
		at--
	}
	for k := ci; k >= max(0, ci-3); k-- {
		c := &r.clauses[k]
		for j := len(c.mentions) - 1; j >= 0; j-- {
			m := &r.mentions[c.mentions[j]]
			if m.hi > at {
				continue
			}
			if m.hi != at && !(m.hi == at-1 && len(row) > 0 && r.toks[at-1].s == "and") || m.entry == nil || m.prep != "" || m.kind&(lexicon.Part|lexicon.Fastener) == 0 {
				k = 0
				break
			}
			row = append(row, m)
			at = m.from
		}
	}
	if len(row) < 2 {
		return nil
	}
	slices.Reverse(row)
	return row
}

// awaited tells whether the new one at token i has yet to come: "till the new one comes", "the
// new one comes on Tuesday".
func (r *reading) awaited(c *clause, i int) bool {
	k := i + 2
	if w := r.word(k); w == "'s" || w == "is" || w == "are" || w == "'re" {
		k++
	}
	if k < c.hi && r.toks[i+1].brk < brkComma {
		switch w, next := r.word(k), r.next(k); w {
		case "come", "comes", "coming", "arrive", "arrives", "arriving":
			if next != "in" && next != "with" && next != "from" && next != "out" {
				return true // but not "comes in the kit"
			}
		case "turns", "turn":
			return next == "up"
		case "on":
			return next == "order" || (next == "its" || next == "the" || next == "their") && r.word(k+2) == "way"
		}
	}
	for k = max(c.lo, i-3); k < i; k++ {
		switch r.toks[k].s {
		case "when", "till", "until", "before", "if", "unless", "need", "needs", "needing", "want", "wants":
			return true
		}
	}
	switch r.word(i - 2) {
	case "get", "buy", "order", "fetch", "find": // "I'll get a new one", "till I get a new one", but not "you get a new one in"
		switch r.word(i - 3) {
		case "i", "'ll", "will", "gonna", "to", "must":
			return i-3 >= c.lo
		}
	}
	return false
}

// oneFor gives what "a new one" is one of: what it goes on as, what came off last,
// or what was spoken of last.
func (r *reading) oneFor(ci, tok int) *thing {
	c := &r.clauses[ci]
	many := r.next(tok) == "ones"
	for _, ai := range c.acts {
		if a := &r.acts[ai]; len(a.things) > 0 && (a.pronoun == "one" || a.pronoun == "ones") {
			return a.things[0]
		}
	}
	// "undo the bolt and the old cable pulls out. New one in": what was called old
	for k := ci; k >= 0 && k >= ci-3 && r.since(r.clauses[k].lo, tok) < 15; k-- {
		ms := r.clauses[k].mentions
		for i := len(ms) - 1; i >= 0; i-- {
			if m := &r.mentions[ms[i]]; m.isOld && m.hi <= tok && m.entry != nil && !r.onlyKind(m) && m.kind&(lexicon.Part|lexicon.Fastener) != 0 {
				return m.entry
			}
		}
	}
	// "old ring off, new one in": what the sentence is about
	for k := ci; k >= 0 && r.clauses[k].sentence == c.sentence && r.since(r.clauses[k].lo, tok) < 12; k-- {
		if m := r.toldOf(&r.clauses[k]); m != nil && m.lo < tok && tok-m.hi < 22 && !m.isNew && many == (m.plural || m.count > 1 || many && m.entry.plural) {
			return m.entry
		}
	}
	// "the seal's perished. I've a new one here": what was found spoilt
	if t := r.ruined(ci, tok); t != nil {
		return t
	}
	if t := r.thrownNear(ci, tok); t != nil {
		return t
	}
	// "there's an O ring in the face of it. New one": what was just brought up
	for k := ci; k >= max(0, ci-1) && r.since(r.clauses[k].lo, tok) < 12; k-- {
		if m := r.broughtUp(k); m != nil && m.hi <= tok && !m.isNew && !many && m.kind&(lexicon.Part|lexicon.Fastener) != 0 {
			return m.entry
		}
	}
	// "the filter's black. So that's a new one": what the sentence before says how it is, or that it is off
	for k := ci; k >= max(0, ci-2) && r.since(r.clauses[k].lo, tok) < 10; k-- {
		if m := r.toldOf(&r.clauses[k]); m != nil && m.hi <= tok {
			if !m.isNew && r.onlyLooked(&r.clauses[k]) && many == (m.plural || m.count > 1 || m.entry.plural) {
				return m.entry
			}
			break
		}
	}
	// what came off or was thrown away last, and if it can be no cover or plug
	for _, any := range []bool{false, true} {
		var last *thing
		at := -1
		for _, t := range r.things {
			if (covers.has(t.head) || seatsOfNew.has(t.head)) && !any {
				continue
			}
			for i := len(t.events) - 1; i >= 0; i-- {
				e := &t.events[i]
				if e.lo >= tok {
					continue
				}
				if e.lo <= at || r.since(e.lo, tok) >= 45 {
					break // the latest stand last
				}
				if s := ledgerActs[e.action]; s == Discarded || s == Removed && !t.fastener && t.plural == many {
					last, at = t, e.lo
				}
			}
		}
		if last != nil {
			return last
		}
	}
	for k := ci - 1; k >= max(0, ci-2) && r.since(r.clauses[k].lo, tok) < 12; k-- {
		if m := r.toldOf(&r.clauses[k]); m != nil && r.clauses[k].mood&(other|hypothetical|conditional) == 0 && !m.isNew && !seatsOfNew.has(m.head) && (!many || m.plural || m.count > 1 || m.entry.plural) {
			return m.entry
		}
	}
	return nil
}

// seatsOfNew are what a new one goes in or on, and is itself seldom renewed.
var seatsOfNew = set("bore hole groove seat knuckle flange rim axle shaft thread stud housing casing frame casting mount post face")

// onlyLooked tells whether nothing is done in a clause but looked and taken off.
func (r *reading) onlyLooked(c *clause) bool {
	if c.mood&(other|hypothetical|conditional) != 0 {
		return false
	}
	for _, ai := range c.acts {
		if n := r.acts[ai].action.Name; ledgerActs[n] != Removed && ledgerActs[n] != Discarded && n != "inspect" {
			return false
		}
	}
	return true
}

// covers are what comes off to get at something, and is seldom what is renewed.
var covers = wordsOf("covers that come off")

// thrownNear gives what a clause, or one of the three before it, tells to be thrown
// away or used but once.
func (r *reading) thrownNear(ci, tok int) *thing {
	for k := ci; k >= max(0, ci-3) && r.since(r.clauses[k].lo, tok) < 15; k-- {
		for _, o := range r.clauses[k].opens {
			if f := fates[o.signal]; o.lo >= tok || f.disposition != "discarded" || f.named || r.clauses[k].mood&(conditional|hypothetical|asked) != 0 {
				continue
			}
			if s := r.toldOfWhat(k, o.lo, o.hi); len(s) > 0 && s[0].thing != nil {
				return s[0].thing
			}
		}
	}
	return nil
}

// damage are the words for what is found wrong with a thing that is not used again.
var damage = wordsOf("what is found wrong")

// ruined gives what the clauses right before a token say is damaged, nil where
// they say so of nothing.
func (r *reading) ruined(ci, tok int) *thing {
	for k := ci; k >= max(0, ci-3) && r.since(r.clauses[k].lo, tok) < 15; k-- {
		c := &r.clauses[k]
		hurt := -1
		for i := c.lo; i < min(c.hi, tok); i++ {
			if r.toks[i].is(wSeldom) && damage.has(r.toks[i].s) && r.toks[i].men < 0 && !r.notBadly(c, i) {
				hurt = i
			}
		}
		if hurt < 0 || c.mood&(conditional|hypothetical|negated|other|aside|greeting) != 0 {
			continue
		}
		if m := r.toldOf(c); m != nil && m.lo < tok && (m.lo < hurt || r.toks[hurt].brk < brkComma) {
			return m.entry
		}
		// "this one's in two halves": one of what was spoken of before
		for ; k >= 0 && r.since(r.clauses[k].lo, tok) < 20; k-- {
			ms := r.clauses[k].mentions
			for i := len(ms) - 1; i >= 0; i-- {
				m := &r.mentions[ms[i]]
				if m.lo < hurt && m.entry != nil && !r.onlyPlace(m) && m.kind&(lexicon.Part|lexicon.Fastener) != 0 && !r.onlyKind(m) {
					return m.entry
				}
			}
		}
		return nil
	}
	return nil
}

// notBadly tells whether what is damaged is said to be so by little, or to be good
// enough: "the shaft's a bit worn, but it'll clean up".
func (r *reading) notBadly(c *clause, i int) bool {
	for k := i - 1; k >= c.lo && k >= i-2; k-- {
		switch r.toks[k].s {
		case "bit", "little", "slightly", "touch", "tad", "hardly", "barely", "not", "isn't", "lightly":
			return true
		}
	}
	for k := i + 1; k+1 < len(r.toks) && k < i+14 && (r.toks[k-1].brk < brkSentence || k == i+1 && (r.toks[k].s == "it" || r.toks[k].s == "they")); k++ {
		switch w, next := r.toks[k].s, r.toks[k+1].s; {
		case w == "clean" && next == "up", w == "'ll" && (next == "do" || next == "clean" || next == "polish" || next == "live" || next == "hold" || next == "last" || next == "serve" || next == "go"), w == "good" && next == "enough", w == "within" && next == "limits":
			return true
		}
	}
	return false
}

// inHave tells whether a thing is only told of as what another has: "the regulator's
// got four nuts and a connector", "a cover with two lugs".
func (r *reading) inHave(m *mention) bool {
	c := &r.clauses[m.cl]
	for i := m.from - 1; i > c.lo; i-- {
		switch w := r.toks[i].s; {
		case w == "got" || w == "has" || w == "have":
			p := r.toks[i-1]
			return p.men >= 0 || p.s == "'s" && i > 1 && r.toks[i-2].men >= 0
		case r.toks[i].men < 0 && r.isVerbForm(w):
			return false
		}
	}
	return false
}

// onlyKind tells whether a name only says what kind of thing is meant: "one of them
// spring ones".
func (r *reading) onlyKind(m *mention) bool {
	return !m.plural && m.hi < len(r.toks) && r.toks[m.hi-1].brk == brkNone && (r.toks[m.hi].s == "one" || r.toks[m.hi].s == "ones")
}

// toldOf gives the part or fastener that a clause is about: the first that no
// preposition and no "has" makes a detail of.
func (r *reading) toldOf(c *clause) *mention {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.kind&(lexicon.Fastener|lexicon.Part) != 0 && m.entry != nil && !r.onlyPlace(m) && !r.onlyKind(m) && !r.inHave(m) && !r.tellsWhere(c, m) {
			return m
		}
	}
	return nil
}

// tellsWhere tells whether a mention only tells where: "it's worn where the seal runs".
func (r *reading) tellsWhere(c *clause, m *mention) bool {
	for i := m.from - 1; i >= c.lo && i > m.from-3; i-- {
		if r.toks[i].s == "where" {
			return true
		}
	}
	return false
}

// detail gives what the sentence tells of, where a mention in it is only a place:
// "the worm you pull from the shaft".
func (r *reading) detail(m *mention) *mention {
	if m.prep == "" {
		return nil
	}
	for k := m.cl; k >= max(0, m.cl-2) && r.clauses[k].sentence == r.clauses[m.cl].sentence; k-- {
		if o := r.toldOf(&r.clauses[k]); o != nil && o.lo < m.lo {
			return o
		}
	}
	return nil
}

// untilThen tells whether "yet", "until" or the like stands in the next tokens: what
// waits is not thrown away.
func (r *reading) untilThen(i, hi int) bool {
	for k := i; k < min(len(r.toks), min(hi, i+4)); k++ {
		switch r.toks[k].s {
		case "yet", "till", "until", "before", "now", "tonight", "today":
			return true
		}
	}
	return false
}

// standIn is what is only there for now: a mention, or what no list has a name for.
type standIn struct {
	mention int // or -1
	name    string
	lo, hi  int
}

// standIns gives what is only there for now: what was put there in the clause that
// says so, else what it names, or so in the clauses before where it names nothing.
func (r *reading) standIns() []standIn {
	var out []standIn
	for ci := range r.clauses {
		c := &r.clauses[ci]
		cue := r.standInAt(ci)
		wanting := cue < 0 && r.followsWant(ci)
		if wanting {
			cue = c.hi
		}
		if cue < 0 || c.mood&asked != 0 || r.doneWithout(c, cue) || !r.laying(c) || r.onlyTurned(c, cue) || c.mood&(aside|greeting) != 0 || r.othersBefore(c, cue) {
			continue
		}
		if n := ci + 1; len(c.mentions)+len(c.acts) == 0 && n < len(r.clauses) && r.clauses[n].sentence == c.sentence {
			if s, ok := r.putThere(&r.clauses[n], r.clauses[n].hi); ok {
				out = append(out, s) // "So for now | there's a piece of duct tape"
				continue
			}
		}
		had := len(out)
		for k := ci; k >= max(0, ci-2) && r.since(r.clauses[k].lo, c.lo) < 10; k-- {
			if k < ci && cue == c.lo && c.hi-c.lo > 4 && r.toks[c.lo-1].brk >= brkSentence {
				break // "until then the gate stays shut": told of what it names
			}
			if wanting && k < ci {
				break
			}
			if s, ok := r.putThere(&r.clauses[k], min(cue, r.clauses[k].hi)); ok {
				if wanting && !r.nextBest(s) || k < ci && s.mention >= 0 && r.noneToBeHad(k) && !r.mentions[s.mention].isOld {
					continue
				}
				if s.mention < 0 || r.mentions[s.mention].kind != lexicon.Consumable || !lubricants.has(r.mentions[s.mention].head) {
					out = append(out, s)
				}
				break
			}
		}
		if len(out) == had && r.serves(c) {
			for _, s := range r.toldOfWhat(ci, c.lo+1, c.lo+2) {
				if s.thing != nil && s.thing.name != "" {
					out = append(out, standIn{-1, s.thing.name, c.lo, cue + 2})
				}
			}
		}
	}
	return out
}

// serves tells whether a clause begins by saying of what is spoken of that it serves: "it'll do".
func (r *reading) serves(c *clause) bool {
	i := c.lo
	for i < c.hi && r.toks[i].is(wOpener) {
		i++
	}
	switch r.word(i) {
	case "it", "they", "he", "she":
		if r.next(i) == "'ll" || r.next(i) == "will" || r.next(i) == "should" {
			switch r.word(i + 2) {
			case "do", "hold", "last", "serve", "work", "live":
				return true
			}
		}
	}
	return false
}

// othersBefore tells whether a clause tells of others before a token: not where it
// only names them after it, "till the shop opens".
func (r *reading) othersBefore(c *clause, tok int) bool {
	for _, q := range c.cues {
		if q.mood&other != 0 && q.lo < tok {
			return true
		}
	}
	return false
}

// standInAt gives the token at which a clause says that something is there only for
// now, or that holds only for want of what broke, or -1.
func (r *reading) standInAt(ci int) int {
	c := &r.clauses[ci]
	for _, o := range c.opens {
		if o.signal == "stand-in" || o.signal == "for-now" {
			return o.lo
		}
	}
	if (r.makeshift(c) >= 0 || r.tieFirst(c) || r.heardIn(ci, ci, "makeshift")) && r.spoilt(ci) {
		return c.hi
	}
	return -1
}

// noStandIn tells whether what may say that something is there only for now says something
// else: how far a thing is turned or pushed ("until it comes out"), what it is good for
// ("that'll do for the shed", "good for the season"), or that there is no more of it.
func (r *reading) noStandIn(lo, hi int) bool {
	next := ""
	if hi < len(r.toks) && r.toks[hi-1].brk < brkSentence {
		next = r.toks[hi].s
	}
	switch r.toks[hi-1].s {
	case "comes", "come":
		return next != "" && wayIt.has(next)
	case "for":
		return r.toks[hi-2].s == "do" && articles.has(next) && !spells.has(lexicon.Singular(r.next(hi)))
	case "season", "summer", "winter", "year", "month":
		switch r.prev(lo) {
		case "good", "fine", "ready", "set", "enough", "done":
			return true
		}
	case "got", "have":
		return r.toks[lo].s == "all" && next != "" && r.toks[hi-1].brk < brkComma && !forNow.has(next)
	}
	return false
}

// wayIt are the words after "comes" for the way a thing goes, as no part comes that was ordered.
var wayIt = set("out off on up down round around through free loose away clear level clean tight over apart home against to right straight")

// doneWithout tells whether a clause says that something is short or left out for now, so
// that nothing stands in for it; or only says goodbye.
func (r *reading) doneWithout(c *clause, cue int) bool {
	for i := c.lo; i < cue && i < c.hi; i++ {
		switch r.toks[i].s {
		case "without", "short", "bye", "ta", "cheerio":
			return true
		}
	}
	return false
}

// tieFirst reads "cable tie on there": what holds for want of something better is
// all that a clause begins with.
func (r *reading) tieFirst(c *clause) bool {
	if len(c.mentions) == 0 || c.mood&(negated|conditional|other|asked|listing|aside) != 0 {
		return false
	}
	m := &r.mentions[c.mentions[0]]
	w := r.word(m.hi)
	return makeshifts.has(m.head) && m.kind&lexicon.Consumable != 0 && m.from == c.lo && !m.isOld && !m.isNew && (w == "on" || w == "round" || w == "around" || w == "through" || w == "over")
}

// putThere gives what a clause tells to have been put somewhere, else what it names
// before the token that says it is for now.
func (r *reading) putThere(c *clause, cue int) (standIn, bool) {
	for i := c.lo; i < c.hi; i++ {
		switch w := r.toks[i].s; {
		case w == "there" && (r.next(i) == "'s" || r.next(i) == "is"):
			// "so there's a screwdriver through the hole for now"
			k := i + 2
			if r.word(k) == "just" || r.word(k) == "only" {
				k++
			}
			if k+1 >= c.hi || r.word(k) != "a" && r.word(k) != "an" {
				continue
			}
			if mi := r.nameWithin(c, k+1, 4); mi >= 0 {
				m := &r.mentions[mi]
				if m.hi < c.hi && makeshifts.has(r.toks[m.hi].s) && r.toks[m.hi-1].brk == brkNone {
					return standIn{-1, r.toks[m.hi].s, i, m.hi + 3}, true // "a fence nail"
				}
				return standIn{mi, m.name, i, m.hi + 3}, true
			}
		case w == "old" && r.prev(i) == "the" && r.word(i-2) == "of" && (r.next(i) == "one" || r.next(i) == "ones"):
			if t := r.oneOf(int(r.toks[c.lo].cl), i); t != nil {
				return standIn{-1, lexicon.Singular(t.name), i - 2, i + 4}, true // "number six is one of the old ones"
			}
		case w == "tied" && i > c.lo && (r.toks[i-1].s == "zip" || r.toks[i-1].s == "cable"):
			return standIn{-1, r.toks[i-1].s + " tie", i - 1, i + 3}, true // "zip tied the wires for now"
		case (w == "borrowed" || w == "robbed" || w == "pinched" || w == "nicked" || w == "stole") && (r.next(i) == "one" || r.next(i) == "the" && r.word(i+2) == "one"):
			if t := r.oneOf(int(r.toks[c.lo].cl), i); t != nil {
				return standIn{-1, t.name, i, i + 5}, true // "I've borrowed the one out of the fridge"
			}
		case (w == "made" || w == "cut" || w == "bodged" || w == "rigged" || w == "fashioned" || w == "turned" || w == "printed" || w == "bent" || w == "whittled" || w == "machined") && r.next(i) == "one":
			if t := r.oneOf(int(r.toks[c.lo].cl), i); t != nil {
				return standIn{-1, t.name, i, i + 5}, true // "I've made one out of a cereal box"
			}
		}
	}
	for i := len(c.acts) - 1; i >= 0; i-- {
		a := &r.acts[c.acts[i]]
		if a.verb < 0 || a.mood&(negated|conditional|framed) != 0 || !puts[a.action.Name] || a.mood&announced != 0 && cue == c.hi {
			continue
		}
		if a.pronoun == "one" && len(a.objects) == 0 && r.word(a.hi) != "of" {
			if m := r.partBefore(c, a.lo); m != nil {
				return standIn{-1, m.name, a.lo, a.hi + 2}, true // "the stay's missing a washer, I put a bigger one on for now"
			}
		}
		if len(a.objects) == 0 && len(a.things) == 1 && pronounsObj.has(a.pronoun) && a.pronoun != "one" && a.pronoun != "ones" && a.things[0].name != "" && !r.namesOld(c) {
			for _, mi := range c.mentions {
				if m := &r.mentions[mi]; (r.prev(m.from) == "in" || r.prev(m.from) == "with") && m.kind == lexicon.Consumable && m.from >= a.lo {
					return standIn{mi, m.name, m.from - 1, m.hi + 2}, true // "wrapped it in tape"
				}
			}
			return standIn{-1, a.things[0].name, a.lo, a.hi + 2}, true
		}
		if len(a.objects) > 0 && (a.action.Name != "cut" || !r.mentions[a.objects[0]].definite && r.mentions[a.objects[0]].kind&lexicon.Consumable != 0) {
			m := &r.mentions[a.objects[0]]
			return standIn{a.objects[0], m.name, m.from, m.hi + 4}, true
		}
	}
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.isOld && m.kind&(lexicon.Part|lexicon.Fastener) != 0 && (m.prep == "" || m.prep == "of" && countOf[r.word(m.from-2)] > 0) && m.hi <= cue {
			return standIn{mi, m.name, m.from, m.hi + 4}, true // "the bottom one's got the old gasket back on, for now"
		}
	}
	if s, ok := r.someThing(c, cue); ok {
		return s, true
	}
	for i := c.lo; i < c.hi; i++ {
		if r.toks[i].men < 0 && (damage.has(r.toks[i].s) || gone.has(r.toks[i].s)) {
			return standIn{}, false // "the washer's gone walkabout": it is what is stood in for
		}
	}
	best := -1
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.from >= cue && r.awaits(c, cue) || !m.isOld && m.kind&lexicon.Consumable == 0 && (m.definite || m.count == 0) && !r.oneHere(m, cue) {
			continue // "the hub stays on the pump for now"
		}
		if m.kind&(lexicon.Fastener|lexicon.Part|lexicon.Consumable) != 0 && (m.prep == "" || m.prep == "using" || m.prep == "of" && pieces.has(r.word(m.from-2))) && (best < 0 || m.hi <= cue && !r.inHave(m) && r.toks[m.from-1].brk >= brkComma) {
			best = mi // "new chain round, clip link for the time being"
		}
	}
	if best < 0 {
		return standIn{}, false
	}
	m := &r.mentions[best]
	return standIn{best, m.name, m.from, m.hi + 4}, true
}

// oneHere tells whether what a mention names is what is told to be there for now, right
// after it or as the one in hand: "clip link for now", "the cone's a bodge", "this bolt".
func (r *reading) oneHere(m *mention, cue int) bool {
	for i := m.hi; i < cue; i++ {
		if !r.toks[i].is(wLinking) && !articles.has(r.toks[i].s) && r.toks[i].s != "'s" && r.toks[i].s != "only" && r.toks[i].s != "just" {
			return shown(r.word(m.from))
		}
	}
	return m.hi <= cue || shown(r.word(m.from))
}

// shown tells whether a determiner points at what is in hand.
func shown(w string) bool { return w == "this" || w == "these" }

// partBefore gives the part or fastener that is named last before a token, in its clause or
// the one before.
func (r *reading) partBefore(c *clause, tok int) *mention {
	for k := int(r.toks[c.lo].cl); k >= 0 && k >= int(r.toks[c.lo].cl)-1; k-- {
		ms := r.clauses[k].mentions
		for i := len(ms) - 1; i >= 0; i-- {
			if m := &r.mentions[ms[i]]; m.hi <= tok && m.kind&(lexicon.Part|lexicon.Fastener) != 0 {
				return m
			}
		}
	}
	return nil
}

// namesOld tells whether a clause names an old part: "the bottom one's got the old gasket on".
func (r *reading) namesOld(c *clause) bool {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.isOld && m.kind&(lexicon.Part|lexicon.Fastener) != 0 {
			return true
		}
	}
	return false
}

// oneOf gives what "one" is one of, be it of many: "I've seven springs, so I've
// pinched one".
func (r *reading) oneOf(ci, tok int) *thing {
	for k := ci; k >= max(0, ci-2) && r.since(r.clauses[k].lo, tok) < 8; k-- {
		for i := len(r.clauses[k].mentions) - 1; i >= 0; i-- {
			if m := &r.mentions[r.clauses[k].mentions[i]]; m.hi <= tok && m.count > 1 && m.entry != nil && m.kind&(lexicon.Part|lexicon.Fastener) != 0 {
				return m.entry
			}
		}
	}
	if t := r.oneFor(ci, tok); t != nil {
		return t
	}
	if s := r.toldOfWhat(ci, tok, tok+1); len(s) > 0 {
		return s[0].thing
	}
	return nil
}

// awaits tells whether what stands after a token has yet to come: "until I get a proper stud".
func (r *reading) awaits(c *clause, cue int) bool {
	return cue < c.hi && (r.toks[cue].s == "until" || r.toks[cue].s == "till" || r.toks[cue].s == "when")
}

// gone are the words for what is not there any more.
var gone = set("gone lost missing vanished disappeared walkabout walkies ordered")

// someThing gives what a clause speaks of as one of many and tells to be in a
// place: "a bent nail through there", "it's two turns of tape", "cable tie on there".
func (r *reading) someThing(c *clause, cue int) (s standIn, ok bool) {
	awaits := r.awaits(c, cue)
	for i := c.lo; i < c.hi && !((ok || awaits) && i >= cue); i++ {
		if ok && r.toks[i].s == "with" {
			break // "a longer bolt through with two washers"
		}
		begins := i == c.lo || r.toks[i-1].brk >= brkComma || openers.has(r.toks[i-1].s) && i > c.lo && r.toks[i-1].s != "one"
		w := r.toks[i].s
		j := i
		switch {
		case (w == "a" || w == "an" || w == "some" || countOf[w] > 0 && w != "both" && w != "pair" && w != "one") && i > c.lo && (leadsStandIn.has(r.toks[i-1].s) || r.toks[i-1].is(wForm) || begins || endsForNow.has(r.toks[i-1].s)):
			j++
		case begins && r.toks[i].men >= 0 && r.mentions[r.toks[i].men].from == i && makeshifts.has(r.mentions[r.toks[i].men].head):
			// "cable tie on there today"
		default:
			continue
		}
		for j < c.hi && (dropAdj.has(r.toks[j].s) || w != "a" && countOf[r.toks[j].s] > 0 && j == i) {
			j++
		}
		for j+1 < c.hi && r.toks[j+1].s == "of" && (pieces.has(lexicon.Singular(r.toks[j].s)) || j == i+1) && r.toks[j].brk == brkNone {
			for j += 2; j < c.hi && (dropAdj.has(r.toks[j].s) || articles.has(r.toks[j].s)); j++ {
			}
		}
		if j >= c.hi {
			continue
		}
		if mi := r.toks[j].men; mi >= 0 {
			m := &r.mentions[mi]
			if !m.isNew && !lubricants.has(m.head) && (r.toks[m.hi-1].brk >= brkComma || m.hi >= c.hi || prepositions.has(r.toks[m.hi].s) || forNow.has(r.toks[m.hi].s)) {
				s, ok = standIn{int(mi), m.name, max(c.lo, i-2), m.hi + 3}, true
			}
			continue
		}
		k := j
		for k < c.hi && k < j+3 && r.toks[k].men < 0 && r.toks[k].qty < 0 && !r.toks[k].is(wStop|wPreposition|wPronoun|wDeterminer) {
			k++
			if r.toks[k-1].brk > brkNone {
				break
			}
		}
		if k > j && k+1 < c.hi && r.toks[k].s == "'s" && r.toks[k+1].men >= 0 {
			k++ // "a twist of dressmaker's wire"
		}
		if k < c.hi && r.toks[k].men >= 0 && r.toks[max(j, k-1)].brk == brkNone {
			if m := &r.mentions[r.toks[k].men]; m.lo == k && m.kind&(lexicon.Fastener|lexicon.Part|lexicon.Consumable) != 0 {
				s, ok = standIn{-1, strings.ToLower(r.text(j, m.hi)), max(c.lo, i-2), m.hi + 2}, true // "a bit of fencing wire"
			}
			continue
		}
		for x := j; x < k; x++ {
			if spells.has(lexicon.Singular(r.toks[x].s)) {
				k = j // "two weeks away"
			}
		}
		if k == j || r.toks[k-1].is(wDropAdj) || k < c.hi && r.toks[k-1].brk < brkComma && !prepositions.has(r.toks[k].s) && !forNow.has(r.toks[k].s) {
			continue
		}
		s, ok = standIn{-1, strings.ToLower(r.text(j, k)), max(c.lo, i-2), k + 2}, true
	}
	return s, ok
}

// lubricants are the stuffs that are no part, not even for now.
var lubricants = wordsOf("what runs or is smeared")

// leadsStandIn are the words besides verbs that stand before what stands in.
var leadsStandIn = set("with 's is was are got have 've it's using used stuffed jammed wedged poked shoved")

// endsForNow are the words that end "for now" and the like.
var endsForNow = set("now moment minute being meantime")

// forNow are the words besides prepositions that may follow what stands in.
var forNow = set("now till until instead there here today tonight and which because so off")

// spells are the words that "a" stands before where no thing is meant.
var spells = set("day week weekend month season year minute moment while time ride drive spell hour job fix bodge gap stopgap bit couple look go test run lift trip few lot thing way new proper better right turn quarter half number figure value lash botch work shame pain problem pig bugger nuisance repair joke present season summer winter year night evening trip weekend second third fourth fifth sixth hand hole gap")

// pieces are the words before "of" that say how much of a stuff: "a bit of twine".
var pieces = wordsOf("how much of a stuff")

// puts are the acts by which a stand-in gets where it is.
var puts = map[string]bool{"fit": true, "place": true, "replace": true, "cut": true, "start by hand": true, "cover": true, "apply": true}

// onlyTurned tells whether a clause is of something slackened, set or taken off
// "for now" rather than of something put there.
func (r *reading) onlyTurned(c *clause, cue int) bool {
	turned := false
	for _, ai := range c.acts {
		if r.acts[ai].lo >= cue {
			continue // "until it comes"
		}
		switch r.acts[ai].action.Name {
		case "fit", "apply", "cover", "place", "replace", "cut", "support":
			return false
		case "adjust", "tighten", "torque", "start by hand", "remove", "slacken", "measure", "leave off", "test", "lift":
			turned = true
		}
	}
	return turned
}

// laying tells whether something is in place rather than hand-tight "for now".
func (r *reading) laying(c *clause) bool {
	for _, q := range c.qtys {
		if r.qtys[q].Kind == normalize.Torque {
			return false
		}
	}
	for i := c.lo; i < c.hi; i++ {
		if (r.toks[i].s == "at" || r.toks[i].s == "with") && i+1 < c.hi && r.toks[i+1].s != "" && r.toks[i+1].s[0] >= '0' && r.toks[i+1].s[0] <= '9' {
			return false // "left it at 40 for now", "gone with 26 for now"
		}
		switch r.toks[i].s {
		case "tight":
			if w := r.prev(i); i > c.lo && (w == "too" || w == "not" || w == "so") {
				continue // "cable tie for now, not too tight"
			}
			return false
		case "hand", "finger", "fingers", "loose", "snug":
			return false
		}
	}
	return true
}

// usedAgain reads "that's going back in", "i'm gonna run it again" of a thing.
func (r *reading) usedAgain(c *clause, m *mention) bool {
	if c.mood&negated != 0 || r.onlyKind(m) {
		return false
	}
	for i := max(c.lo, m.from-3); i < m.hi; i++ {
		switch r.toks[i].s {
		case "same":
			if !r.adjectives(i+1, m.lo) {
				continue // "same length, better cover"
			}
			switch r.word(m.hi) {
			case "back", "on", "in", "again", "as":
				return true
			case "way", "side", "size", "hole", "place", "order", "thing":
				return false
			}
			if r.setAgainst(i) || r.word(m.hi) == "only" || r.word(m.hi) == "but" {
				return false // "same body, same hoses": the old one and the new
			}
			return (m.prep == "" || m.prep == "with" && r.toks[m.from-1].s == "with" && i >= m.from) && (m.hi == c.hi || r.toks[m.hi-1].brk >= brkPause || r.word(m.hi) == "obviously" || r.word(m.hi) == "too") || r.actOn(m.cl, int(r.toks[m.lo].men)) != ""
		case "running":
			return m.isOld
		case "using", "use", "used":
			if r.word(m.hi) == "again" {
				return true
			}
		}
	}
	if m.isOld && r.asDriver(c, m) {
		return false
	}
	if a := r.actOn(m.cl, int(r.toks[m.lo].men)); m.isOld && (a == "fit" || a == "start by hand" || a == "tighten") {
		return true
	}
	if r.detail(m) != nil {
		return false // "the worm you pull from the shaft": it is told of the worm
	}
	if i := m.hi; i+3 < c.hi+1 && (r.word(i) == "is" || r.word(i) == "'s" || r.word(i) == "are" || r.word(i) == "'re") && (r.next(i) == "the" || r.next(i) == "still") {
		for k := i + 2; k < min(c.hi, i+4); k++ {
			if w := r.toks[k].s; (w == "old" || w == "original" || w == "same") && (r.next(k) == "one" || r.next(k) == "ones" || lexicon.Singular(r.next(k)) == m.head) {
				return true // "bar is the old one"
			}
		}
	}
	return false
}

// setAgainst tells whether what is the same, told at token i, is only compared: "same body,
// same hoses, same plug".
func (r *reading) setAgainst(i int) bool {
	for k := max(0, i-8); k < min(len(r.toks), i+9); k++ {
		if k != i && r.toks[k].s == "same" {
			return true
		}
	}
	return false
}

// asDriver tells whether an old part only serves to do something with, or is called old
// with what is not said to go on: "the old bearing on top to drive it in", "an old nut".
func (r *reading) asDriver(c *clause, m *mention) bool {
	if r.word(m.from) == "an" {
		return true
	}
	on := false
	for k := m.hi; k < min(c.hi, m.hi+12); k++ {
		switch w := r.toks[k].s; {
		case w == "drift" || w == "driver" || w == "pusher" || w == "upside":
			return true
		case (w == "to" || w == "and") && driven.has(r.next(k)):
			return true
		case w == "top" && r.toks[k-1].s == "on" && k <= m.hi+1:
			return true
		case w == "back" || r.toks[k].is(wOn):
			on = true
		}
	}
	if on {
		return false
	}
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.verb < 0 && slices.Contains(a.objects, int(r.toks[m.lo].men)) {
			return true // "old half moon, old pinion, tube"
		}
	}
	return false
}

// driven is what an old part is used to do.
var driven = set("tap knock press push drive hit save protect pull seat whack drift")

// adjectives tells whether nothing but adjectives and counts stands between two tokens.
func (r *reading) adjectives(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if w := r.toks[i].s; !dropAdj.has(w) && !placeWords.has(w) && countOf[w] == 0 && r.toks[i].men < 0 || r.toks[i].brk >= brkComma {
			return false
		}
	}
	return true
}

// consumables gives what was used up, with what it went on.
func (r *reading) consumables() []Consumable {
	out := []Consumable{}
	seen := map[string]bool{}
	for mi := range r.mentions {
		m := &r.mentions[mi]
		if m.kind&lexicon.Consumable == 0 || m.kind&lexicon.Part != 0 && m.kind&lexicon.Consumable == 0 {
			continue
		}
		c := &r.clauses[m.cl]
		if c.mood&(aside|greeting|other) != 0 || r.deniedBefore(c, m.lo) || m.cl < r.toolList[0] {
			continue
		}
		if stuffs.has(m.name) && !r.putToUse(m) || r.modifies(m) {
			continue
		}
		name := lexicon.Singular(m.name)
		if seen[name] {
			continue
		}
		seen[name] = true
		if k := sameStuff(out, name); k >= 0 {
			// "fork oil" is the oil spoken of before
			if n := shortName(name); len(n) > len(out[k].Name) {
				out[k].Name = n
			}
			continue
		}
		k := Consumable{Name: shortName(name), Place: r.place(m.from, m.hi+4)}
		k.UsedOn = shortName(r.usedOn(c, m))
		out = append(out, k)
	}
	// "the blue stuff" is the thread locker, where that is named
	if slices.ContainsFunc(out, func(k Consumable) bool { return strings.Contains(k.Name, "lock") }) {
		out = slices.DeleteFunc(out, func(k Consumable) bool { return strings.HasSuffix(k.Name, " stuff") })
	}
	// "tape the nipple", "grease it": the verb names it
	for ai := range r.acts {
		a := &r.acts[ai]
		if a.verb < 0 || !a.happened() {
			continue
		}
		for _, l := range r.lex.Lemmas(r.toks[a.verb].s) {
			name := verbStuff[l]
			if name == "" || seen[name] || slices.ContainsFunc(out, func(k Consumable) bool { return k.Name == name || strings.HasSuffix(k.Name, " "+name) }) {
				continue
			}
			seen[name] = true
			k := Consumable{Name: name, Place: r.place(a.lo, a.hi+3)}
			if len(a.objects) > 0 {
				k.UsedOn = shortName(r.mentions[a.objects[0]].name)
			}
			out = append(out, k)
		}
	}
	return out
}

// stuffOf are what a stuff names a kind of: a paint mark is no paint.
var stuffOf = set("mark marks line lines dot pen kit gun can bottle pump filter cooler hose pipe work job tank level")

// modifies tells whether a name only says what kind of thing follows it: "a
// silicone kit", "my paint mark".
func (r *reading) modifies(m *mention) bool {
	return m.hi < len(r.toks) && r.toks[m.hi-1].brk <= brkNone && !m.plural && r.toks[m.hi].men < 0 && stuffOf.has(r.toks[m.hi].s)
}

// usedOn tells what something was used on: what is named after "on", or what gets it.
func (r *reading) usedOn(c *clause, m *mention) string {
	for _, oi := range c.mentions {
		o := &r.mentions[oi]
		switch o.prep {
		case "on", "in", "over", "onto", "round", "around", "to":
			if o.from >= m.hi && o.kind&(lexicon.Part|lexicon.Fastener) != 0 {
				return o.name
			}
		}
	}
	// "grease on the splines", where no vocabulary has the word
	if m.hi+2 < c.hi {
		switch r.toks[m.hi].s {
		case "on", "round", "around", "over", "onto":
			if d := r.toks[m.hi+1].s; d == "the" || d == "both" || d == "each" || d == "its" {
				i := m.hi + 2
				for i < c.hi && i < m.hi+5 && !stopWords.has(r.toks[i].s) && r.toks[i].qty < 0 && (i == m.hi+2 || r.toks[i-1].brk == brkNone) {
					i++
				}
				if i > m.hi+2 {
					return strings.ToLower(r.text(m.hi+2, i))
				}
			}
		}
	}
	// "the pivot bolt gets one drop of thread locker"
	for _, oi := range c.mentions {
		o := &r.mentions[oi]
		if o.hi > m.from || o.kind&(lexicon.Part|lexicon.Fastener) == 0 || o.prep != "" {
			continue
		}
		switch r.word(o.hi) {
		case "gets", "get", "wants", "takes", "take", "needs":
			return o.name
		}
	}
	return ""
}

// verbStuff is what the verbs of the workshop put on things.
var verbStuff = map[string]string{"grease": "grease", "regrease": "grease", "oil": "oil", "tape": "tape", "glue": "glue", "paint": "paint", "solder": "solder"}

// sameStuff gives the consumable that a name is the short or the long form of, or -1.
func sameStuff(have []Consumable, name string) int {
	for i := range have {
		if o := have[i].Name; (stuffs.has(o) || stuffs.has(name)) && (strings.HasSuffix(o, " "+name) || strings.HasSuffix(name, " "+o)) {
			return i
		}
	}
	return -1
}

// stuffs are what is met in machines as often as it is used on them.
var stuffs = wordsOf("what stuff is")

// putToUse tells whether the talk uses the stuff rather than meets it: "a drop of
// oil", "oil on the shaft", "clean it with petrol".
func (r *reading) putToUse(m *mention) bool {
	if w := r.prev(m.lo); w == "litre" || w == "liter" || w == "cylinder" || m.prep == "of" && r.word(m.from-2) == "full" {
		return false // "a two litre diesel", "full of paint"
	}
	if m.prep == "with" || m.prep == "of" || m.prep == "in" || r.inToolList(m) || m.isNew {
		return true
	}
	for i := max(r.clauses[m.cl].lo, m.from-4); i < m.from; i++ {
		switch r.toks[i].s {
		case "use", "using", "used", "some", "bit", "drop", "dab", "smear", "squirt", "coat", "coats", "litre", "litres", "little", "only", "proper":
			return true
		}
	}
	switch r.word(m.hi) {
	case "on", "over", "onto", "round", "around", "inside":
		return true
	}
	for _, ai := range r.clauses[m.cl].acts {
		a := &r.acts[ai]
		switch a.action.Name {
		case "apply", "lubricate", "fill", "cover", "support", "fit", "place":
			for _, o := range a.objects {
				if &r.mentions[o] == m {
					return true
				}
			}
		}
	}
	return false
}

func (r *reading) deniedBefore(c *clause, tok int) bool {
	for i := max(c.lo, tok-5); i < tok; i++ {
		switch r.toks[i].s {
		case "not", "don't", "never", "without":
			if !r.deniedOver(i, tok) {
				return true
			}
		case "no":
			if r.toks[i].brk == brkNone {
				return true // but not in "the twenty one, no, the eighteen"
			}
		}
	}
	return false
}

// deniedOver tells whether a comma and "with" or "but" stand between two tokens, so that what is
// denied before them is over: "new screws as I don't trust these, with thread locker".
func (r *reading) deniedOver(lo, hi int) bool {
	for i := lo; i+1 < hi; i++ {
		if w := r.toks[i+1].s; r.toks[i].brk >= brkComma && (w == "with" || w == "but") {
			return true
		}
	}
	return false
}
