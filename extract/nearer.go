package extract

import "wrenchword/extract/lexicon"

// namedLast is the rule of a value that is told for what was named right before, and is pointed at.
const namedLast = "named right before and pointed at"

// nearerOne looks at a value that goes, by what was spoken of, to a thing that has had its value,
// or was named before, while another was named since: where that is pointed at it is for that ("slider pins. Now those
// are a twelve socket, eighteen").
func (s *tracker) nearerOne(ci int, q *quantity, h *heard) {
	r := s.r
	if h.of == nil || h.rule != weighed && h.rule != "fastener in hand" && !guesses[h.rule] || h.stage > 1 {
		return
	}
	last, had := -1, false
	for i := len(r.heard) - 1; i >= 0 && last < 0; i-- {
		if b := &r.heard[i]; b.of == h.of && !b.dropped {
			p := &r.qtys[b.qty]
			if p.Low.Cmp(q.Low) == 0 || p.Unit != q.Unit {
				return // the same again
			}
			last, had = p.hi, true
		}
	}
	for i := len(h.of.mentions) - 1; i >= 0; i-- {
		if m := &r.mentions[h.of.mentions[i]]; m.hi <= q.lo {
			last = max(last, m.hi)
			break
		}
	}
	if last < 0 {
		return
	}
	for k := ci; k >= max(0, ci-2) && r.since(r.clauses[k].lo, q.lo) < 10; k-- {
		p := &r.clauses[k]
		for i := len(p.mentions) - 1; i >= 0; i-- {
			m := &r.mentions[p.mentions[i]]
			t := m.entry
			if m.hi > q.lo || m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.kind&lexicon.Tool != 0 || documents.has(m.head) || m.head == "washer" {
				continue
			}
			if m.lo < last || t == nil || t == h.of || h.of.owner == t || t.owner == h.of {
				return
			}
			if m.prep != "" || (!had || t.ownsNone()) && !takesValue(t) {
				continue
			}
			t = s.fastened(t)
			if k < ci && takesValue(t) && m.hi == p.hi && r.pointsFrom(&r.clauses[k+1], m.plural) {
				h.of, h.rule, h.spoken = t, namedLast, false
			}
			return
		}
	}
}

// pointsFrom tells whether a clause begins by pointing at what was just named: "those are",
// "now that one's".
func (r *reading) pointsFrom(c *clause, plural bool) bool {
	i := c.lo
	for i < c.hi-1 && (r.toks[i].is(wOpener) || r.toks[i].s == "now" || r.toks[i].s == "and") {
		i++
	}
	switch r.toks[i].s {
	case "those", "these", "they":
		return plural
	case "that", "this", "it":
		return !plural
	}
	return false
}
