package extract

import "wrenchword/normalize"

// Two values that were told the wrong way round: "the top one got forty, the bottom one
// forty-five. No, wait, other way around."

// exchanged is the rule of a value that went to the other of two things when it was said that
// they were told the wrong way round.
const exchanged = "told the wrong way round"

// exchange looks in the tokens lo to hi for words by which the last two values are told the
// wrong way round, and gives each to the thing of the other; where it is only asked whether they
// are, both are in doubt. Either way somebody has to look.
func (s *tracker) exchange(lo, hi int) {
	r := s.r
	for i := lo; i < hi; i++ {
		var first int
		switch w := r.toks[i].s; {
		case w == "way" && (r.prev(i) == "other" || r.prev(i) == "wrong"):
			if next := r.next(i); next != "round" && next != "around" && next != "about" {
				continue
			}
			first = i - 1
		case w == "versa":
			first = i - 1
		case w == "backwards" || w == "mixed" && r.next(i) == "up":
			first = i
		default:
			continue
		}
		a, b := s.lastTwo(first)
		if a == nil {
			continue
		}
		switch s.toldWrong(first) {
		case -1:
			a.hedged, b.hedged = true, true
		case 1:
			for _, h := range []*heard{a, b} {
				for _, t := range h.of.each() {
					t.forget(r.qtys[h.qty].lo)
				}
			}
			a.of, b.of = b.of, a.of
			for _, h := range []*heard{a, b} {
				h.rule, h.hedged, h.stage, h.orOf = exchanged, true, 0, nil
				s.torqued(h, r.qtys[h.qty].lo, r.qtys[h.qty].hi)
			}
			s.exchangedAt = i
		}
	}
}

// lastTwo gives the last two values before a token, where they are two for two things.
func (s *tracker) lastTwo(at int) (a, b *heard) {
	r := s.r
	for n := len(r.heard) - 1; n >= 0; n-- {
		h := &r.heard[n]
		q := &r.qtys[h.qty]
		if r.since(q.lo, at) > 20 {
			break
		}
		if h.dropped || h.of == nil || q.Kind != normalize.Torque {
			continue
		}
		if b == nil {
			b = h
			continue
		}
		if h.of != b.of && q.Low.Cmp(r.qtys[b.qty].Low) != 0 && q.Unit == r.qtys[b.qty].Unit {
			return h, b
		}
		if h.of != b.of {
			break
		}
	}
	return nil, nil
}

// toldWrong tells how "the other way round" is put: 1 where it says that the values were told
// wrong, -1 where it asks, 0 where it is of something else.
func (s *tracker) toldWrong(at int) int {
	r := s.r
	c := &r.clauses[r.toks[at].cl]
	said := 0
	for i := at - 1; i >= max(0, at-7); i-- {
		if r.toks[i].qty >= 0 {
			break
		}
		switch w := r.toks[i].s; w {
		case "or", "is", "unless", "if", "might", "may", "could":
			if w != "is" || r.next(i) == "it" || r.next(i) == "that" {
				return -1
			}
		case "no", "wait", "sorry", "actually", "hang", "tell", "mean", "scratch", "nope", "oops", "it's", "that's", "them", "those", "'s":
			said = 1
		case "that", "it":
			if at-i <= 2 {
				said = 1
			}
		case "not", "n't", "never", "don't":
			return 0
		}
		if r.toks[i].men >= 0 && i >= c.lo {
			return 0 // "the washer goes on the other way round"
		}
	}
	if said == 0 && at-c.lo <= 2 && r.toks[max(c.lo-1, 0)].brk >= brkComma {
		said = 1 // "Other way round."
	}
	return said
}

// ofExchanged gives what a value is for that is told again once two were exchanged: "forty-five
// on the top".
func (s *tracker) ofExchanged(q *quantity) *heard {
	r := s.r
	if s.exchangedAt == 0 || r.since(s.exchangedAt, q.lo) > 8 {
		return nil
	}
	for n := len(r.heard) - 1; n >= max(0, len(r.heard)-3); n-- {
		h := &r.heard[n]
		if p := &r.qtys[h.qty]; h.rule == exchanged && p.Low.Cmp(q.Low) == 0 {
			return h
		}
	}
	return nil
}

// exchangedOpen asks which way round two values are that were told the wrong way round: the
// speaker has mixed them up once.
func (r *reading) exchangedOpen() (out []Open) {
	for i := 1; i < len(r.heard); i++ {
		a, b := &r.heard[i-1], &r.heard[i]
		if a.rule != exchanged || b.rule != exchanged || a.dropped || b.dropped || a.of == nil || b.of == nil || a.of == b.of {
			continue
		}
		qa, qb := &r.qtys[a.qty], &r.qtys[b.qty]
		if r.since(qa.hi, qb.lo) > 20 {
			continue
		}
		end := min(r.clauses[min(qb.cl+2, len(r.clauses)-1)].hi, qb.hi+20)
		o := Open{Kind: Conflict, Before: BeforeUse, About: torqueName(b.of), LedgerID: b.of.id, Place: r.placeAround(max(r.clauses[qa.cl].lo, qb.lo-20), end, qb.lo), AlsoAt: []float64{round3(r.at(qa.lo))}}
		o.Question = "Is it " + Heard(qb.Canonical) + " for the " + torqueName(b.of) + " and " + Heard(qa.Canonical) + " for the " + torqueName(a.of) + "? The recording has them both ways round."
		out = append(out, o)
		i++
	}
	return out
}
