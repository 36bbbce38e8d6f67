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
	if len(p.mentions) != 1 || p.hi-p.lo > 5 && !r.oneMore(p) || p.mood&(asked|negated|greeting|aside) != 0 {
		return -1
	}
	m := &r.mentions[p.mentions[0]]
	if m.hi != p.hi || m.prep != "" || m.from > r.skipped(p)+1 && !r.oneMore(p) || m.kind&lexicon.Tool != 0 && m.kind&(lexicon.Part|lexicon.Fastener) == 0 {
		return -1
	}
	return p.mentions[0]
}

// oneMore tells of "and one more thing, the reservoir".
func (r *reading) oneMore(p *clause) bool {
	for i := p.lo; i+1 < min(p.hi, p.lo+5); i++ {
		if w := r.toks[i+1].s; (w == "thing" || w == "job" || w == "bit") && p.hi-i <= 6 && (r.toks[i].s == "more" || r.toks[i].s == "last" || r.toks[i].s == "other" || r.toks[i].s == "next" || r.toks[i].s == "another") {
			return true
		}
	}
	return false
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

// aimFronted aims at what stands before the one who does it: "the lid I'll leave off, because I
// want to get at the hose", "the tray we're leaving out".
func (r *reading) aimFronted(e *looseEnd, ci int) bool {
	switch e.kind {
	case NotRefitted, Unfinished, NotTorqued, ReplaceLater:
	default:
		return false
	}
	c := &r.clauses[ci]
	at := c.lo
	if p := max(ci-1, 0); p < ci && r.clauses[p].sentence == c.sentence && r.clauses[p].hi-r.clauses[p].lo <= 3 && (r.toks[r.clauses[p].lo].s == "i") {
		at = r.clauses[p].lo // cut after "I'm" by captions
	}
	for at <= e.lo && at < c.hi && r.toks[at].s != "i" {
		at++
	}
	if at > e.lo || at >= c.hi || at == 0 || r.toks[at-1].brk >= brkSentence && (at != c.lo || r.stopHeard(ci)) {
		return false
	}
	if w := r.word(at + 2); w == "that" || w == "those" {
		return false // "cap nut I cracked that"
	}
	for _, k := range c.mentions {
		if o := &r.mentions[k]; o.lo > at && o.hi <= e.hi && o.prep == "" && r.topical(o) {
			return false // "the lid I put on the box"
		}
	}
	if mi := int(r.toks[at-1].men); mi >= 0 {
		m := &r.mentions[mi]
		if m.hi != at || m.prep != "" || m.kind&lexicon.Consumable != 0 || !r.opensHere(m.from) || !r.topical(m) && !(containers.has(m.head) && m.from < m.lo) {
			return false
		}
		e.topic, e.first = mi, min(e.first, m.cl)
	} else {
		from := at - 2
		if from > 0 && !ofOne.has(r.toks[from].s) {
			from--
		}
		if e.kind != NotRefitted || from < 0 || !ofOne.has(r.toks[from].s) || !r.opensHere(from) || stopWords.has(r.toks[at-1].s) || r.toks[at-1].is(wCounts|wLinking) || r.toks[at-1].s == "one" {
			return false
		}
		e.noun, e.first = at-1, min(e.first, int(r.toks[from].cl))
	}
	e.sure, e.fronted = true, true
	return true
}

// ofOne are the words before what is named as one that is known.
var ofOne = set("the my that this his her their")

// opensHere tells whether a token begins its clause, or what follows an "and" in it.
func (r *reading) opensHere(i int) bool {
	for k := i - 1; k >= r.clauses[r.toks[i].cl].lo; k-- {
		if r.toks[k].s == "and" {
			return true
		}
		if !r.toks[k].is(wOpener | wDrop) {
			return false
		}
	}
	return true
}
