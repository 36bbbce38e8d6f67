package extract

import (
	"slices"

	"wrenchword/extract/lexicon"
)

// How tight a thing is left is mostly told with no verb that says so: "the nut's only on there
// finger tight", "the lever bolt, I just put with the fingers", "main jet, firm, not stupid".

// handed is the rule of a thing that is told to be on by hand, tightly that of one told to be tight.
const (
	handed  = "thing and by hand"
	tightly = "thing, and that it is tight"
)

// leftTight reads them once no verb has told it.
func (r *reading) leftTight(ci int) {
	c := &r.clauses[ci]
	if len(c.acts) == 0 && len(c.mentions) == 0 && ci == 0 || c.mood&(notWork&^negated|announced) != 0 || ci < r.toolList[1] {
		return
	}
	for i := c.lo; i < c.hi; i++ {
		if !r.toks[i].is(wSeldom) {
			continue
		}
		if c.mood&negated == 0 && handAt(r, i, c.hi) {
			r.onByHand(ci, i)
			return
		}
		if lo, ok := r.tightTold(c, i); ok && r.madeTight(ci, lo, i+1) {
			return
		}
	}
}

// onByHand gives what is told at token i to be on by hand to what is named before it in the
// clause, or alone in the one before.
func (r *reading) onByHand(ci, i int) {
	c := &r.clauses[ci]
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.action.Name != "support" { // "it's only holding by a thread"
			return
		}
	}
	mi, from := -1, c.lo
	for _, k := range c.mentions {
		m := &r.mentions[k]
		if m.hi > i {
			break
		}
		if m.prep == "" {
			mi, from = k, m.hi
		}
	}
	if mi < 0 {
		if mi = r.headed(ci); mi < 0 {
			return
		}
	} else if m := &r.mentions[mi]; !r.opens(c, m) && !r.begins(m.from) {
		return
	}
	if m := &r.mentions[mi]; !m.turnsOn() || i-from > 9 {
		return
	}
	for k := from; k < i; k++ {
		if notLeftSo.has(r.toks[k].s) {
			return
		}
	}
	x := act2(r.lex.Action("start by hand"), min(r.mentions[mi].from, c.lo), i+1, mi)
	x.lo, x.rule = max(c.lo, r.mentions[mi].from), handed
	r.addAct(ci, x)
}

// headed gives what the clause before does no more than name, as a heading of this one in the
// same sentence: "the lever bolt, I just put with the fingers"; or -1.
func (r *reading) headed(ci int) int {
	if ci == 0 || r.clauses[ci-1].sentence != r.clauses[ci].sentence {
		return -1
	}
	p := &r.clauses[ci-1]
	if len(p.acts) > 0 || len(p.mentions) != 1 || p.mood&notWork != 0 {
		return -1
	}
	if m := &r.mentions[p.mentions[0]]; m.hi < p.hi-3 || !r.opens(p, m) {
		return -1
	}
	return p.mentions[0]
}

// turnsOn tells whether what is named is turned to be on: a bolt, a cap.
func (m *mention) turnsOn() bool {
	return m.kind&lexicon.Fastener != 0 && !neverTorqued.has(m.head) || tightens.has(m.head) || screwedOn.has(m.head) || m.head == "plug"
}

// notLeftSo are the words by which it is told how a thing was met, ought to be or is got off.
var notLeftSo = set("was were been had if when off out away could can can't should must want wants need needs undo unscrew unscrewed loosen turn turned turns until before after than comes come came never get gets")

// tightTold tells whether token i tells that something is tight, and from which token on: no
// more than that is said between commas, or after "and".
func (r *reading) tightTold(c *clause, i int) (lo int, ok bool) {
	if !tightWords.has(r.toks[i].s) || r.toks[i].s == "up" && (i == c.lo || !upTight.has(r.toks[i-1].s)) || i+1 < c.hi && r.toks[i].brk < brkComma && !afterTight.has(r.toks[i+1].s) {
		return 0, false
	}
	lo = i
	for lo > c.lo && r.toks[lo-1].brk < brkComma && (beforeTight.has(r.toks[lo-1].s) || tightWords.has(r.toks[lo-1].s)) {
		lo--
	}
	// "done up, not mad tight": what is denied is how tight
	for k := c.lo; k < lo; k++ {
		if c.mood&negated != 0 && (r.toks[k].s == "not" || r.toks[k].s == "n't" || r.toks[k].s == "never" || r.toks[k].s == "no") {
			return 0, false
		}
	}
	return lo, lo > c.lo && (r.toks[lo-1].brk >= brkComma || r.toks[lo].s == "and")
}

// tightWords tell that a thing is tight, "up" only after one of upTight; beforeTight may stand
// before them, afterTight after.
var (
	upTight     = set("done nipped pulled cinched pinched")
	tightWords  = set("tight firm firmly up")
	beforeTight = set("nice good and up done nipped pulled cinched pinched all both just proper properly really now then nicely well pretty")
	afterTight  = set("with by again now too and")
)

// madeTight gives what is told to be tight to the last thing before it that can be.
func (r *reading) madeTight(ci, lo, hi int) bool {
	c := &r.clauses[ci]
	of := -1
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.hi <= lo && (m.prep == "" || m.prep == "with") && (m.turnsOn() || m.head == "clip" || m.head == "clamp") && !heldBy.has(m.head) {
			of = mi
		}
	}
	if of < 0 && !slices.ContainsFunc(c.mentions, func(mi int) bool { return r.mentions[mi].kind != lexicon.Tool }) {
		of = r.headed(ci) // "line nut, crow's foot, good and tight"
	}
	if of < 0 || !r.mentions[of].turnsOn() && !slices.Contains(c.mentions, of) {
		return false
	}
	var told *act
	for _, ai := range c.acts {
		a := &r.acts[ai]
		switch left[a.action.Name] {
		case "off", "loose", "gone":
			return false // how it was met
		case "tight", "by hand":
			if a.lo < lo || a.hi > hi || len(a.objects) > 0 || a.pronoun != "" {
				return false
			}
			told = a
		}
	}
	if told == nil {
		x := act2(r.lex.Action("tighten"), lo, hi, of)
		x.rule = tightly
		r.addAct(ci, x)
		told = &r.acts[len(r.acts)-1]
	}
	told.objects, told.subject = []int{of}, true
	told.mood &^= negated
	return true
}

// heldBy are what something is held or worked by: nobody says of one that it is tight, or by hand.
var heldBy = set("handle lever strap")
