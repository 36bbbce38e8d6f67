package extract

import "wrenchword/extract/lexicon"

// What is put first as a heading, "The brake fluid.", is what the sentence after it is of: "It
// came over the top, want to check that."

// headedBy gives the mention that is the heading of the sentence of a clause, -1 where it has none.
func (r *reading) headedBy(ci int) int {
	k := ci
	for k > 0 && r.clauses[k-1].sentence == r.clauses[ci].sentence {
		k--
	}
	if k--; k < 0 || k > 0 && r.clauses[k-1].sentence == r.clauses[k].sentence || r.since(r.clauses[k].lo, r.clauses[ci].lo) > 14 {
		return -1
	}
	p := &r.clauses[k]
	if len(p.mentions) != 1 || p.hi-p.lo > 5 || p.mood&(asked|negated|greeting|aside) != 0 {
		return -1
	}
	m := &r.mentions[p.mentions[0]]
	if m.hi != p.hi || m.prep != "" || m.from > r.skipped(p)+1 || m.kind&lexicon.Tool != 0 && m.kind&(lexicon.Part|lexicon.Fastener) == 0 {
		return -1
	}
	return p.mentions[0]
}

// aimHeading aims at the heading, where what leaves something open names nothing itself.
func (r *reading) aimHeading(e *looseEnd, ci int) bool {
	switch e.kind {
	case Unfinished, NotRefitted, ReplaceLater:
	default:
		return false
	}
	for k := ci; k >= 0 && r.clauses[k].sentence == r.clauses[ci].sentence; k-- {
		if w := r.toks[r.clauses[k].lo].s; k < ci && (w == "when" || w == "as" || w == "because" || w == "while") {
			continue // "when I pushed the piston back"
		}
		for _, mi := range r.clauses[k].mentions {
			if m := &r.mentions[mi]; r.topical(m) && (k == ci || m.prep == "") {
				return false
			}
		}
	}
	h := r.headedBy(ci)
	if h < 0 {
		return false
	}
	e.topic, e.sure, e.first = h, true, min(e.first, r.mentions[h].cl)
	return true
}

// aimOtherSide aims at "the other side", which is no part of a list: "other side's the same but
// I've not touched it yet".
func (r *reading) aimOtherSide(e *looseEnd, ci int) bool {
	if e.kind != Unfinished {
		return false
	}
	for i := r.clauses[ci].lo; i+1 < e.lo; i++ {
		if w := &r.toks[i+1]; r.toks[i].s == "other" && (w.s == "side" || w.s == "end") && w.men < 0 {
			e.noun, e.sure = i+1, true
			return true
		}
	}
	return false
}
