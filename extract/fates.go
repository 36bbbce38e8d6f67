package extract

import (
	"wrenchword/extract/lexicon"
)

// fate is what a signal of fates.txt tells to become of a part.
type fate struct {
	disposition string
	named       bool // of what is named right after it, not of what is spoken of
	ends        bool // nothing more may follow: "keep that beside you" says where
	off         bool // only of what had come off
	another     bool // of the one that takes its place
	close       bool // only where the part is named right before it: "that's good" is said of much
}

var fates = map[string]fate{
	"thrown": {disposition: "discarded"}, "throw": {disposition: "discarded", named: true}, "once": {disposition: "discarded", off: true},
	"kept": {disposition: "reused"}, "keep": {disposition: "reused", named: true}, "save": {disposition: "reused", named: true, ends: true}, "stays": {disposition: "reused", ends: true},
	"sound":    {disposition: "reused", ends: true, close: true},
	"fronted":  {disposition: "reused", close: true},
	"came-new": {disposition: "new"}, "got-one": {disposition: "new", another: true}, "old-one": {disposition: "reused", another: true}, "bought": {disposition: "new", named: true},
	"made-one":    {disposition: "new", another: true},
	"fronted-new": {disposition: "new", close: true}, "same-fate": {named: true},
}

// told is a part with what the talk says becomes of it.
type told struct {
	thing   *thing   // nil where nothing was gathered for it
	mention *mention // nil where it is known only from what was done to it
	fate
	here   bool // the mention is what the clause itself says, and no pronoun stands for it
	lo, hi int
}

// fates gives what a clause tells to become of parts, by the phrases of fates.txt.
func (r *reading) fates(ci int) []told {
	c := &r.clauses[ci]
	var out []told
	for _, o := range c.opens {
		f, ok := fates[o.signal]
		if !ok || r.framedBy(ci) || c.mood&(conditional|hypothetical|asked|optional) != 0 || r.deniedAround(c, o) || r.untilThen(o.hi, c.hi) && !(f.disposition == "reused" && r.onlyForNow(ci)) || f.disposition == "new" && r.owed(c) {
			continue
		}
		if f.ends && !f.named && o.hi < c.hi && r.toks[o.hi-1].brk < brkComma && !(o.signal == "sound" && r.oldBefore(c, o.lo)) {
			continue
		}
		if o.signal == "stays" && r.staysPut(c, o) {
			continue
		}
		if p := r.prev(o.lo); o.lo > c.lo && (p == "you" && r.toks[o.lo].s == "leave" || p == "since" || p == "when" || r.word(o.lo-2) == "since" || r.word(o.lo-2) == "when" || p == "got" && r.word(o.lo-2) == "'ve" && r.word(o.lo-3) == "you" || p == "a" && r.word(o.lo-4) == "you" && r.word(o.lo-2) == "got") {
			continue // "you leave that in there, it goes straight down", "since she was new", "you've got a paperweight"
		}
		if f.named {
			if f.disposition == "" {
				if f = r.lastFate(ci, o.lo, out); f.disposition == "" {
					continue
				}
			}
			if next := r.partAt(c, o.hi); next != nil && f.disposition == "reused" && next.isOld && r.asDriver(c, next) {
				continue
			}
			if next := r.partAt(c, o.hi); next != nil && f.disposition == "reused" && next.hi < c.hi && r.toks[next.hi-1].brk < brkComma && asTool.has(r.toks[next.hi].s) {
				continue // "use the old bearing to tap it home"
			}
			if m := r.partAt(c, o.hi); m != nil && (!f.ends || m.hi == c.hi || r.toks[m.hi-1].brk >= brkComma) {
				out = append(out, told{m.entry, m, f, true, o.lo, m.hi})
				for _, n := range r.rowAfter(c, m) {
					out = append(out, told{n.entry, n, f, true, n.from, n.hi})
				}
			}
			continue
		}
		if f.disposition == "reused" && o.hi < c.hi && r.toks[o.hi-1].brk < brkComma && r.intoContainer(ci, o.hi) != "" {
			continue // "the old one goes back in the box"
		}
		if f.disposition == "reused" && r.untilNew(ci) {
			f.disposition = "temporary" // "the old one's going back in till Friday"
		}
		if f.another {
			if w := r.word(o.hi); o.signal == "made-one" && o.hi < c.hi && r.toks[o.hi-1].brk < brkComma && r.toks[o.hi-1].s == "one" && !prepositions.has(w) && w != "and" && w != "myself" {
				continue // "I cut one metre twenty"
			}
			if o.signal == "made-one" && r.standsInNear(ci) {
				continue
			}
			t := r.oneFor(ci, o.lo)
			if w := r.toks[o.lo].s; (o.signal == "got-one" || o.signal == "made-one") && (w == "i" || w == "bought" || w == "just" || w == "got") {
				// "the valve was just dirt. I'd bought one": what was spoken of, before what came off last
				if s := r.toldOfWhat(ci, o.lo, o.hi); len(s) > 0 && s[0].thing != nil && !s[0].thing.isNew && r.ruined(ci, o.lo) == nil && r.thrownNear(ci, o.lo) == nil {
					t = s[0].thing
				}
			}
			of := toldOf(t, o.lo, o.hi)
			if f.disposition == "new" {
				of = r.fateOf(fateTold{ci: ci, lo: o.lo, hi: o.hi, by: o.signal, disposition: f.disposition}, of)
			}
			for _, s := range of {
				s.fate = f
				out = append(out, s)
			}
			continue
		}
		if f.disposition == "discarded" {
			if t := r.ruined(ci, o.lo); t != nil && !f.off {
				for _, s := range r.fateOf(fateTold{ci: ci, lo: o.lo, hi: o.hi, by: o.signal, disposition: f.disposition}, toldOf(t, o.lo, o.hi)) {
					s.fate = f
					out = append(out, s)
				}
				continue
			}
		}
		if (o.signal == "back" || o.signal == "kept") && o.hi < c.hi && r.toks[o.hi-1].s == "back" && r.toks[o.hi-1].brk < brkComma && elsewhere.has(r.toks[o.hi].s) {
			continue // "go back and forth", "go back to seven"
		}
		if o.signal == "came-new" && o.hi < c.hi && r.toks[o.hi].men >= 0 && r.toks[o.hi-1].s == "new" && r.toks[o.hi-1].brk < brkComma {
			continue // "brand new clutch": told of what it names
		}
		if in := r.partIn(c, o.lo, o.hi); in != nil && !containers.has(in.head) {
			out = append(out, told{in.entry, in, f, true, in.from, o.hi}) // "leave the bearings alone"
			continue
		}
		if o.hi < c.hi && r.toks[o.hi].men >= 0 && r.toks[o.hi-1].brk == brkNone && definiteWord.has(r.toks[o.hi-1].s) {
			if m := r.partAt(c, o.hi); m != nil {
				out = append(out, told{m.entry, m, f, true, o.lo, m.hi}) // "that's the end of that screw"
				continue
			}
		}
		of := r.toldOfWhat(ci, o.lo, o.hi)
		if !f.close && f.disposition != "reused" && f.disposition != "temporary" {
			of = r.fateOf(fateTold{ci: ci, lo: o.lo, hi: o.hi, by: o.signal, disposition: f.disposition}, of)
		}
		for _, s := range of {
			if f.close && (s.mention == nil || s.mention.hi != o.lo || r.toks[o.lo-1].brk >= brkSentence) && !(o.signal == "sound" && !s.here && r.ofHeading(ci, o.lo, s.thing)) {
				continue
			}
			if f.off && (s.thing == nil || !s.thing.offBefore(o.hi)) && !(o.signal == "back" && !s.here && r.saysThat(c, o.lo)) {
				continue
			}
			s.fate = f
			out = append(out, s)
		}
	}
	if len(out) == 0 && r.onlyBin(c) {
		if s := r.fateOf(fateTold{ci: ci, lo: c.hi - 1, hi: c.hi, by: tellsBin, disposition: "discarded"}, r.toldOfWhat(ci, c.hi-1, c.hi)); len(s) > 0 {
			s[0].fate = fates["thrown"]
			out = append(out, s[0])
		}
	}
	return out
}

// oldBefore tells whether an old part is named right before a token: "the old bolt's all right".
func (r *reading) oldBefore(c *clause, tok int) bool {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.hi == tok && m.isOld {
			return true
		}
	}
	return false
}

// onlyBin tells whether a clause says no more than where a thing goes that is done
// with: "Dustbin.", "So, skip.", "Straight in the bin."
func (r *reading) onlyBin(c *clause) bool {
	n := c.hi - 1
	if n-c.lo > 4 || !r.toks[n].is(wSeldom) || !bins.has(r.toks[n].s) || r.toks[n].brk < brkComma || c.mood&(asked|negated|other|conditional) != 0 {
		return false
	}
	for i := c.lo; i < n; i++ {
		switch r.toks[i].s {
		case "in", "the", "straight", "so", "and", "then", "right", "for", "to", "off", "out", "scrap", "metal", "well", "yeah", "okay":
		default:
			return false
		}
	}
	for _, ai := range c.acts {
		if len(r.acts[ai].things) > 0 {
			return false
		}
	}
	return true
}

// onlyForNow tells whether a clause, or what follows it in its sentence, says that
// something is there only till something better comes.
func (r *reading) onlyForNow(ci int) bool {
	for k := ci; k < min(len(r.clauses), ci+3) && r.clauses[k].sentence == r.clauses[ci].sentence; k++ {
		if r.heardIn(k, k, "stand-in", "for-now") {
			return true
		}
	}
	return false
}

// partIn gives the part that is named between two tokens.
func (r *reading) partIn(c *clause, lo, hi int) *mention {
	for i := lo; i < hi; i++ {
		if mi := r.toks[i].men; mi >= 0 {
			if m := &r.mentions[mi]; m.kind&(lexicon.Fastener|lexicon.Part) != 0 && m.from > lo {
				return m
			}
			return nil
		}
	}
	return nil
}

// elsewhere are the words after "back" by which nothing goes back where it was.
var elsewhere = set("and to a an over through round up the for now later down until till from")

// rowAfter gives the parts that are named in a row after one: "a belt, an idler and a spring".
func (r *reading) rowAfter(c *clause, m *mention) []*mention {
	var out []*mention
	for _, mi := range c.mentions {
		n := &r.mentions[mi]
		if n.from < m.hi {
			continue
		}
		if n.from > m.hi+1 || n.from == m.hi+1 && r.toks[m.hi].s != "and" || n.kind&(lexicon.Fastener|lexicon.Part) == 0 {
			break
		}
		out = append(out, n)
		m = n
	}
	return out
}

// saysThat tells whether "that", "those" or "they" is what a token is told of.
func (r *reading) saysThat(c *clause, tok int) bool {
	for i := tok - 1; i >= max(c.lo, tok-3); i-- {
		switch r.toks[i].s {
		case "that", "those", "they":
			return true
		}
	}
	return false
}

// asTool are the words after what is only used to do something with.
var asTool = set("to and as")

// lastFate gives the fate told last before a token: in the same clause, or in the one before.
func (r *reading) lastFate(ci, tok int, here []told) fate {
	if len(here) > 0 {
		return fate{disposition: here[len(here)-1].disposition, named: true}
	}
	for k := ci; k >= max(0, ci-1); k-- {
		for _, ai := range r.clauses[k].acts {
			if a := &r.acts[ai]; a.lo < tok && a.action.Name == "discard" && a.happened() {
				return fate{disposition: "discarded", named: true}
			}
		}
		for i := len(r.clauses[k].opens) - 1; i >= 0 && k < ci; i-- {
			if f := fates[r.clauses[k].opens[i].signal]; f.disposition != "" {
				return fate{disposition: f.disposition, named: true}
			}
		}
	}
	return fate{}
}

// standsInNear tells whether a clause or one of the next two says that it is only for now.
func (r *reading) standsInNear(ci int) bool {
	for k := ci; k < min(len(r.clauses), ci+3); k++ {
		if r.standInAt(k) >= 0 {
			return true
		}
	}
	return false
}

// framedBy tells whether a clause, or one before it in its sentence, begins by saying when
// what is told is so: "if it's chipped it isn't dressed, it goes in the bin".
func (r *reading) framedBy(ci int) bool {
	for k := ci; k >= max(0, ci-3) && r.clauses[k].sentence == r.clauses[ci].sentence; k-- {
		if r.framesNext(k) {
			return true
		}
	}
	return false
}

// framesNext tells whether a clause begins by saying when what it tells is so: "when it's worn".
func (r *reading) framesNext(ci int) bool {
	c := &r.clauses[ci]
	for i := c.lo; i < c.hi; i++ {
		switch w := r.toks[i].s; {
		case w == "when" || w == "if" || w == "whenever":
			return true
		case !r.toks[i].is(wOpener | wDrop):
			return false
		}
	}
	return false
}

// deniedAround tells whether a clause denies what a signal in it says, by words
// that are not the signal's own.
func (r *reading) deniedAround(c *clause, o openCue) bool {
	for _, q := range c.cues {
		if q.mood&negated != 0 && q.hi <= o.lo && o.lo-q.hi < 6 {
			return true
		}
	}
	for i := max(c.lo, o.lo-3); i < o.lo; i++ {
		switch r.toks[i].s {
		case "not", "never", "ain't", "isn't", "aren't", "nothing", "none", "when", "until", "till", "before", "no", "hope", "hopefully", "nearly", "almost":
			return true
		}
	}
	return false
}

// staysPut tells whether "it stays" says where or how a thing stays once it is let go,
// rather than that it is used again: "that's how it stays", "push it, it stays".
func (r *reading) staysPut(c *clause, o openCue) bool {
	if r.toks[o.lo].s != "it" || r.toks[o.hi-1].s != "stays" {
		return false
	}
	if p := r.prev(o.lo); o.lo == c.lo || p != "so" && p != "then" && p != "but" {
		return true
	}
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.verb >= 0 && a.lo < o.lo {
			return true // "I put a wire round so it stays"
		}
	}
	return false
}

// partAt gives the part that is named right at a token.
func (r *reading) partAt(c *clause, i int) *mention {
	for k := i; k < min(c.hi, i+4); k++ {
		if mi := r.toks[k].men; mi >= 0 {
			m := &r.mentions[mi]
			if m.kind&(lexicon.Fastener|lexicon.Part) != 0 && m.from <= i {
				return m
			}
			return nil
		}
		if w := r.toks[k].s; !dropAdj.has(w) && !determiner.has(w) && !placeWords.has(w) {
			return nil
		}
	}
	return nil
}

// toldOfWhat gives the parts that what stands at the tokens from lo to hi is told of: those the clause
// names before it, else those that a pronoun there, or nothing, stands for.
func (r *reading) toldOfWhat(ci, lo, hi int) []told {
	c := &r.clauses[ci]
	if r.unknownBefore(c, lo) {
		return nil
	}
	for i := len(c.mentions) - 1; i >= 0; i-- {
		m := &r.mentions[c.mentions[i]]
		if m.hi > lo || !r.subjectLike(m) || m.entry == nil && m.kind&lexicon.Tool != 0 && m.hi < lo && !r.inAct(ci, c.mentions[i]) {
			continue
		}
		out := []told{{thing: m.entry, mention: m, here: true, lo: m.from, hi: hi}}
		for ; i > 0 && r.joined(c.mentions[i-1], c.mentions[i]); i-- {
			p := &r.mentions[c.mentions[i-1]]
			out = append(out, told{thing: p.entry, mention: p, here: true, lo: p.from, hi: hi})
		}
		return out
	}
	many, one, every := false, false, false
	for i := max(c.lo, lo-6); i < hi; i++ {
		switch r.toks[i].s {
		case "all", "lot", "everything":
			many, every = true, true
		case "they", "them", "those", "these", "both", "'em", "em":
			many = true
		case "it", "that", "this", "he", "she", "him":
			one = true
		}
	}
	for _, strict := range []bool{true, false} {
		if !strict && r.prev(lo) == "both" {
			break // "both in the bin": two of one kind
		}
		for k := ci - 1; k >= max(0, ci-8) && r.since(r.clauses[k].lo, lo) < 16; k-- {
			p := &r.clauses[k]
			if p.mood&(aside|greeting|other) != 0 {
				continue
			}
			if m := r.broughtUp(k); m != nil && !many && m.kind&(lexicon.Part|lexicon.Fastener) != 0 && m.entry != nil && r.subjectLike(m) {
				return []told{{thing: m.entry, mention: m, lo: lo, hi: hi}}
			}
			agrees := func(t *thing, plural bool) bool {
				return !strict || many == one || many == (plural || t != nil && t.count > 1)
			}
			if several := r.severalIn(p, lo, hi, every); strict && many && !one && len(several) > 1 && several[len(several)-1].mention.hi == r.lastOf(p).hi {
				return several
			}
			for i := len(p.mentions) - 1; i >= 0; i-- {
				m := &r.mentions[p.mentions[i]]
				if (m.entry != nil || m.kind&lexicon.Tool != 0 && !r.inAct(k, p.mentions[i])) && r.subjectLike(m) && agrees(m.entry, m.plural || m.count > 1 || r.eachSide(m)) {
					return []told{{thing: m.entry, mention: m, lo: lo, hi: hi}}
				}
			}
			for i := len(p.acts) - 1; i >= 0; i-- {
				a := &r.acts[p.acts[i]]
				if a.mood&other != 0 || len(a.objects) > 0 {
					continue
				}
				for j := len(a.things) - 1; j >= 0; j-- {
					if t := a.things[j]; agrees(t, t.plural) {
						return []told{{thing: t, lo: lo, hi: hi}}
					}
				}
			}
		}
	}
	return nil
}

// broughtUp gives the thing that a clause brings up: "there's a wee brush down here",
// "And the snap ring."
func (r *reading) broughtUp(ci int) *mention {
	c := &r.clauses[ci]
	if len(c.mentions) == 0 || c.mood&(negated|conditional|hypothetical|other|asked) != 0 {
		return nil
	}
	m := &r.mentions[c.mentions[0]]
	if m.entry == nil || m.plural {
		return nil
	}
	i := c.lo
	for i < m.from && (r.toks[i].is(wOpener) || r.toks[i].s == "and" || r.toks[i].s == "then") {
		i++
	}
	if i == m.from && m.hi == c.hi && r.toks[m.hi-1].brk >= brkComma {
		return m
	}
	if r.word(i) == "there" && (r.next(i) == "'s" || r.next(i) == "is") && i+2 == m.from && m.hi-m.from <= 6 {
		if w := r.word(m.from); w == "a" || w == "an" || w == "one" {
			return m
		}
	}
	return nil
}

// ofHeading tells whether a clause says no more than what the part is like that its
// sentence began by naming: "the flap, give it a wash, it's grand".
func (r *reading) ofHeading(ci, tok int, t *thing) bool {
	c := &r.clauses[ci]
	k := ci
	for k > 0 && r.clauses[k-1].sentence == c.sentence {
		k--
	}
	first := &r.clauses[k]
	m := r.lastOf(first)
	if t == nil || k == ci || tok == c.lo || m == nil || m.entry != t || m.hi < first.hi || r.toks[m.hi-1].brk < brkComma || len(first.acts) > 0 {
		return false
	}
	for i := c.lo; i < tok; i++ {
		switch r.toks[i].s {
		case "it", "they", "that", "those", "and", "but", "so", "'s":
		default:
			return false
		}
	}
	return true
}

// severalIn gives the parts that a clause names one by one, none of them of many:
// what "both of those" stands for; or every one, where it is "all" or "the lot".
func (r *reading) severalIn(c *clause, lo, hi int, every bool) []told {
	var out []told
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.entry == nil || !r.subjectLike(m) {
			continue
		}
		if m.plural && !every {
			return nil
		}
		out = append(out, told{thing: m.entry, mention: m, lo: lo, hi: hi})
	}
	return out
}

// unknownBefore tells whether what is told at a token is told of something that no
// list has a name for: "that hole is toast", "the sheet that came with it".
func (r *reading) unknownBefore(c *clause, lo int) bool {
	i := lo - 1
	for i >= c.lo && (r.toks[i].is(wBetween) || dropWords.has(r.toks[i].s) || linking.has(r.toks[i].s) || r.toks[i].s == "that" && i > c.lo && r.toks[i-1].men < 0 || r.toks[i].s == "which") && r.toks[i].brk < brkComma {
		i--
	}
	if i < c.lo || r.toks[i].brk >= brkComma {
		return false
	}
	w := r.toks[i]
	return !w.is(wStop|wDropAdj|wPlace|wNumber|wPreposition|wSubject|wPronoun|wDeterminer) && w.men < 0 && w.qty < 0 && i > c.lo && (articles.has(r.toks[i-1].s) || r.toks[i-1].s == "that" || r.toks[i-1].s == "this" || r.toks[i-1].s == "those")
}

// subjectLike tells whether a mention is what a clause may be about: no place, no
// detail of another thing, and not what it is only said to be.
func (r *reading) subjectLike(m *mention) bool {
	if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || r.onlyKind(m) || r.inHave(m) {
		return false
	}
	if r.onlyPlace(m) {
		return false
	}
	if be := r.prev(m.from); (be == "'s" || be == "is" || be == "are" || be == "'re" || be == "was") && subjects.has(r.word(m.from-2)) && r.word(m.from-2) != "there" && (r.word(m.from) == "a" || r.word(m.from) == "an") {
		return false // "it's a spring"
	}
	return true
}

// onlyPlace tells whether a preposition makes of a mention a place or a detail of another
// thing: not where it only says how many, or who looks at it.
func (r *reading) onlyPlace(m *mention) bool {
	switch w := r.word(m.from - 2); m.prep {
	case "":
		p := m.from - 1
		return m.definite && p > r.clauses[m.cl].lo && r.toks[p].s == "off" && r.toks[p].brk == brkNone && r.toks[p-1].men >= 0 // "chain off the sprocket"
	case "of":
		return !many.has(w) && countOf[w] == 0
	case "at":
		return w != "look" && w != "looking"
	}
	return true
}

// eachSide tells whether one is named of several: "a washer either side".
func (r *reading) eachSide(m *mention) bool {
	w, next := r.word(m.hi), r.next(m.hi)
	return w == "either" || w == "each" || w == "on" && (next == "each" || next == "either")
}

// many are the words before "of" that tell how many of the things named after it are meant.
var many = set("both all each some most none one half couple pair rest")
