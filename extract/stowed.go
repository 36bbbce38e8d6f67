package extract

import "wrenchword/extract/lexicon"

// smallStores are what small parts are kept in while they are off.
var smallStores = set("tray tub lid jar can bag box bucket tin cup dish saucer bowl drawer pot pocket pouch envelope carton tupperware")

// intoKeep gives the token after "in this tin", "into the ice cream tub" or "in my
// pocket" at k, 0 where no such thing stands there.
func (r *reading) intoKeep(c *clause, k int) int {
	if w := r.word(k); k+1 >= c.hi || w != "in" && w != "into" && w != "inside" {
		return 0
	}
	for i := k + 1; i < min(c.hi, k+7) && r.toks[i-1].brk < brkComma; i++ {
		w := r.toks[i].s
		if smallStores.has(w) && (i+1 >= c.hi || r.toks[i].men < 0 || r.toks[i+1].men != r.toks[i].men) {
			return i + 1
		}
		if r.toks[i].is(wLinking) || prepositions.has(w) || w == "and" {
			return 0
		}
	}
	return 0
}

// betweenKept are the words between things and what they are kept in.
var betweenKept = set("all both everything they they're that's these those go goes going gone straight safe safely together it too also back over away now lot the then and")

// stowed reads "so, screw, nut, catcher, all in this tin" and "bracket, two bolts,
// they're in the tray": what came off and lies somewhere, with no verb that takes it off.
func (r *reading) stowed(ci int) {
	c := &r.clauses[ci]
	if len(c.mentions) == 0 || len(c.acts) > 0 || c.mood&notWork != 0 || ci < r.toolList[1] {
		return
	}
	x := act{action: r.lex.Action("store"), lo: c.lo, verb: -1, subject: true, rule: "thing and where it is kept"}
	named, at := c, c.lo
	if w := r.toks[c.lo].s; ci > 0 && (w == "they" || w == "they're" || w == "all" || w == "that" || w == "that's" || w == "it" || w == "it's") {
		if named = &r.clauses[ci-1]; named.sentence != c.sentence || named.mood&notWork != 0 {
			return
		}
		for _, ai := range named.acts {
			if r.acts[ai].verb >= 0 {
				return
			}
		}
	}
	for _, mi := range named.mentions {
		m := &r.mentions[mi]
		if m.prep == "in" || m.prep == "into" || m.prep == "inside" {
			break
		}
		if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.kind&lexicon.Tool != 0 || m.isNew || m.prep != "" || !r.beginsPiece(named, m) {
			return
		}
		x.objects = append(x.objects, mi)
		if named == c {
			at = m.hi
		}
	}
	if len(x.objects) == 0 {
		return
	}
	for at < c.hi && (betweenKept.has(r.toks[at].s) || at > c.lo && r.toks[at].is(wLinking) && betweenKept.has(r.toks[at-1].s)) {
		at++ // "the screws are in the tub" tells where to find them
	}
	if x.hi = r.intoKeep(c, at); x.hi > 0 {
		r.addAct(ci, x)
	}
}

// keptOff tells whether an act puts something where things are kept that are off: it
// came off, though nobody said so.
func (r *reading) keptOff(a *act) bool {
	if r.ofNew(a) {
		return false
	}
	c := &r.clauses[a.cl]
	for k := a.lo; k < c.hi; k++ {
		if r.intoKeep(c, k) > 0 {
			return true
		}
	}
	return false
}
