package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
)

// What is said of a thing beside how it was left: its lock and locker, its washers, which way
// round it went, where it lies, what it waits for, and whether the old one or a new one is on.

// details keeps what was said of a thing beside its state: locker, washers,
// which way round, where it was put, what must come first.
func (r *reading) details(t *thing, e *Entry) {
	for _, ev := range t.events {
		c := int(r.toks[ev.lo].cl)
		for k := max(0, c-2); k <= min(c+2, len(r.clauses)-1); k++ {
			cl := &r.clauses[k]
			for _, mi := range cl.mentions {
				m := &r.mentions[mi]
				if strings.Contains(m.name, "thread lock") || strings.Contains(m.name, "threadlock") || strings.Contains(m.name, "locking compound") {
					if t.fastener && r.nearestFastener(cl, m) == t {
						e.Locker = "yes"
						if cl.mood&negated != 0 && k == c && !slices.ContainsFunc(cl.cues, func(q cue) bool { return q.mood&negated != 0 && r.deniedOver(q.lo, m.lo) }) || r.deniedBefore(cl, m.lo) {
							e.Locker = "no"
						}
					}
				}
			}
		}
		cl := &r.clauses[c]
		if t.fastener {
			if w := r.washersBy(c); w != "" && e.Washers == "" {
				e.Washers = w
			}
			if p := r.position(c, t); p != "" && e.Position == "" {
				e.Position = p
			}
		}
		if ev.act >= 0 && e.ReplacedBy == "" && r.acts[ev.act].action.Name == "replace" {
			e.ReplacedBy = r.replacedBy(cl)
		}
		if ev.action == "fit" || ev.action == "start by hand" {
			if o := r.orientation(c, t); o != "" {
				e.Orientation = o
			}
		}
		if w := r.waitsOn(c); w != "" && (e.State == HandTight || e.State == Loosened) && ledgerActs[ev.action] == e.State {
			e.WaitsOn = w
		}
		if (ev.action == "remove" || ev.action == "store") && e.State != Discarded {
			if p := r.storedAt(c, t); p != "" {
				e.StoredAt = p
			}
		}
	}
	if isLock(t) {
		state := e.State
		e.Lock.Method = lockMethod(t)
		switch state {
		case Removed, Discarded:
			e.Lock.State = "removed"
		default:
			switch off, fresh := r.renewal(t); {
			case fresh:
				e.Lock.State = "renewed"
			case off:
				e.Lock.State = "reused"
			}
		}
	}
}

// renewal tells whether a thing came off in the talk, and whether it was said to be a new one
// that went on.
func (r *reading) renewal(t *thing) (off, fresh bool) {
	fresh = t.isNew
	for _, ev := range t.events {
		switch ledgerActs[ev.action] {
		case Removed, Discarded:
			off = true
		case "":
		default:
			c := &r.clauses[r.toks[ev.lo].cl]
			for i := max(c.lo, ev.lo-4); i < min(c.hi, ev.hi+6); i++ {
				if w := r.toks[i].s; (w == "new" || w == "fresh" || w == "brand") && (r.toks[i].men < 0 || r.mentions[r.toks[i].men].entry == t) {
					if n := r.toks[min(i+1, len(r.toks)-1)]; n.s == "one" || n.s == "ones" || n.s == "new" || n.men >= 0 && r.mentions[n.men].entry == t {
						fresh = true
					}
				}
			}
		}
	}
	return off, fresh
}

// renewals tells of each entry whether the old one or a new one is on, as the parts have it.
func (r *reading) renewals(rec *Record) {
	for i := range rec.Parts {
		p := &rec.Parts[i]
		for k := range rec.Ledger {
			e := &rec.Ledger[k]
			if lexicon.Singular(e.Item) != lexicon.Singular(p.Name) || p.Side != "" && e.Side != "" && p.Side != e.Side {
				continue
			}
			one := "one"
			if e.Count > 1 || lexicon.Singular(e.Item) != e.Item {
				one = "ones"
			}
			switch {
			case p.Disposition == "new" && e.ReplacedBy == "" && cameOff(e):
				e.ReplacedBy = "new " + one
				if one == "one" {
					e.ReplacedBy = "a new one"
				}
			case (p.Disposition == "reused" || p.Disposition == "kept") && e.Reuse == "" && e.ReplacedBy == "" && e.State != Removed && e.State != Discarded:
				e.Reuse = "the old " + one + " again"
			}
		}
	}
}

// cameOff tells whether what is back on was off in the talk. What is still off was replaced by
// nothing, whatever lies ready for it.
func cameOff(e *Entry) bool {
	if e.State == Removed || e.State == Discarded || e.State == Loosened {
		return false
	}
	for i := range e.Events {
		if st := ledgerActs[e.Events[i].Act]; st == Removed || st == Discarded {
			return true
		}
	}
	return false
}

// washersBy gives what is said of washers where a fastener goes on or comes off, or right after.
func (r *reading) washersBy(ci int) string {
	for k := ci; k <= min(ci+1, len(r.clauses)-1) && r.since(r.clauses[ci].lo, r.clauses[k].lo) <= 6; k++ {
		c := &r.clauses[k]
		if k > ci && (len(c.acts) > 0 || r.fastenerNamed(c) != nil) {
			break // of another
		}
		if w := r.washers(c, k == ci); w != "" {
			return w
		}
	}
	return ""
}

// washers gives what the clause says of washers beside a fastener: "one each, under the head".
// Where the fastener is named beside them, they are of that.
func (r *reading) washers(c *clause, beside bool) string {
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.head != "washer" || beside && len(c.mentions) < 2 {
			continue
		}
		goes := m.prep == "with"
		for i := m.hi; i < min(c.hi, m.hi+4); i++ {
			switch r.toks[i].s {
			case "on":
				goes = goes || r.next(i) == "it" || r.next(i) == "this" || r.next(i) == "each"
			case "under", "behind", "each", "between", "either", "both":
				goes = true
			}
		}
		if n := m.hi; n < c.hi && r.toks[n-1].brk == brkNone && r.nameless(n) {
			continue // "with the washer trick"
		}
		if goes {
			return r.phrase(m.from, c.hi, 9)
		}
	}
	return ""
}

// phrase gives the words from lo on, to hi or to the first comma, at most so many,
// and none at its end that no phrase ends with.
func (r *reading) phrase(lo, hi, most int) string {
	i := lo
	for i < hi && i-lo < most {
		i++
		if r.toks[i-1].brk >= brkComma {
			break
		}
	}
	for i > lo && (hanging.has(r.toks[i-1].s) || r.toks[i-1].s == "in" || r.toks[i-1].s == "on") && r.toks[i-1].brk < brkComma && i < hi {
		i--
	}
	return strings.Trim(strings.ToLower(r.text(lo, i)), " ,.;:!?")
}

var lengths = set("long short longer shorter")

// position gives where the long ones and the short ones go, where that was said
// right after: "long ones at the top, short ones at the bottom".
func (r *reading) position(ci int, t *thing) string {
	var out []string
	for k := ci; k <= min(ci+3, len(r.clauses)-1) && r.since(r.clauses[ci].lo, r.clauses[k].lo) <= 12; k++ {
		c := &r.clauses[k]
		if c.mood&(conditional|negated|hypothetical|other|asked) != 0 {
			continue
		}
		for i := c.lo; i < c.hi; i++ {
			if !r.toks[i].is(wSeldom) || !lengths.has(r.toks[i].s) || i+1 < c.hi && r.toks[i+1].s == "side" {
				continue
			}
			if x := r.fastenerNamed(c); x != nil && x != t {
				continue
			}
			// up to the place it goes to, before the next length
			end := -1
			for j := i + 1; j < min(i+9, len(r.toks)) && r.toks[j-1].brk < brkSentence && !lengths.has(r.toks[j].s); j++ {
				if w := r.toks[j].s; placeWords.has(w) && w != "right" && !lengths.has(w) {
					end = j + 1
					if n := r.word(end); r.toks[j].brk < brkComma && (n == "one" || n == "ones" || n == "side" || countOf[n] > 0) {
						end++
					}
					break
				}
			}
			if end > 0 {
				out = append(out, strings.ToLower(r.text(i, end)))
				i = end - 1
			}
		}
	}
	return strings.Join(out, ", ")
}

// replacedBy gives what a thing was swapped for: "swap it for a new one".
func (r *reading) replacedBy(c *clause) string {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; (m.prep == "for" || m.prep == "with") && m.kind&(lexicon.Part|lexicon.Fastener|lexicon.Consumable) != 0 {
			return m.name
		}
	}
	return ""
}

func lockMethod(t *thing) string {
	f := strings.Fields(t.name)
	if len(f) > 3 {
		f = f[len(f)-3:]
	}
	return strings.Join(f, " ")
}

func (r *reading) nearestFastener(c *clause, m *mention) *thing {
	var best *thing
	dist := 1 << 30
	ci := int(r.toks[c.lo].cl)
	for k := max(0, ci-1); k <= min(ci+1, len(r.clauses)-1); k++ {
		for _, mi := range r.clauses[k].mentions {
			o := &r.mentions[mi]
			if o.entry == nil || !o.entry.fastener {
				continue
			}
			d := abs(o.lo - m.lo)
			if d < dist {
				best, dist = o.entry, d
			}
		}
	}
	if best == nil {
		for i := len(r.things) - 1; i >= 0; i-- {
			t := r.things[i]
			if t.fastener && t.last <= m.lo && r.since(t.last, m.lo) < 25 {
				if best == nil || t.last > best.last {
					best = t
				}
			}
		}
	}
	return best
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}

// features are what tells which way round a thing goes.
var features = set("side face lip lips dish taper step arrow mark writing teeth head heads dot shoulder chamfer cup hollow bevel text nose end gap flat recess wing balls step groove notch letters number numbers stamp")

// madeSide are the verb forms that say which side is meant: "cut side down".
var madeSide = set("flat cut closed open sealed marked stamped stepped tapered chamfered dished rolled ground painted coated")

// turned are the words that follow a feature: "lip facing out", "step to the bearing".
var turned = set("to towards toward facing faces out in up down outwards inwards upwards downwards outward inward upward downward forward forwards backwards looks points sits goes")

// The same in a table, which has room for more than a step: "narrow end first", "tang outermost".
var (
	marksOfSide = set("edge lug lugs tab tang slot split opening seam valve hook dome cone logo label line")
	kindsOfSide = set("thick thin narrow wide rubber felt shiny smooth rough sharp rounded small big short long plain")
	comesFirst  = set("first outermost uppermost pointing")
)

// facing are the words after "facing" by which it tells which way.
var facing = set("the that this in out up down inwards outwards upwards downwards inward outward forward forwards back backwards rearward rearwards to towards toward away me you left right")

// orientation gives the words that say which way round a thing went, in the clause
// where it was fitted or in the next, where that names nothing else.
func (r *reading) orientation(ci int, t *thing) string {
	from := r.clauses[ci].lo
	if after := r.otherWayAfter(from); after > 0 && after < len(r.toks) {
		ci, from = int(r.toks[after].cl), after
	}
	for k := ci; k <= min(ci+1, len(r.clauses)-1); k++ {
		c := &r.clauses[k]
		if k > ci && (r.since(r.clauses[ci].lo, c.lo) > 8 || len(c.acts) > 0) {
			break
		}
		for i := max(c.lo, from); i < c.hi; i++ {
			w := r.toks[i].s
			if x := r.lastNamed(c, i); x != nil && x != t {
				continue // "the clamps with the dot to the front": not the bar's dot
			}
			if (w == "facing" || w == "faces") && i+1 < c.hi && facing.has(r.toks[i+1].s) {
				lo := i
				for lo > c.lo && i-lo < 3 && !stopWords.has(r.toks[lo-1].s) && r.toks[lo-1].brk < brkComma {
					lo--
				}
				return r.phrase(lo, c.hi, i-lo+5)
			}
			if !features.has(w) && !marksOfSide.has(w) || i+1 >= c.hi || r.toks[i].brk >= brkComma || r.toks[i].men >= 0 && r.mentions[r.toks[i].men].entry != nil && r.mentions[r.toks[i].men].entry != t {
				continue
			}
			n := r.toks[i+1].s
			if !turned.has(n) && !comesFirst.has(n) || n == "to" && r.word(i+2) == w {
				continue // "side to side"
			}
			if (n == "in" || n == "out" || n == "up" || n == "down") && i+2 < c.hi && r.toks[i+1].brk < brkComma && r.toks[i+2].s != "and" {
				continue // "the end out of the hub" is where, not which way
			}
			if n == "goes" || n == "sits" || n == "looks" || n == "points" {
				if w := r.word(i + 2); w != "to" && w != "towards" && w != "up" && w != "down" && w != "out" && w != "forward" {
					continue // "the lip goes on the left"
				}
			}
			lo := i
			for lo > c.lo && i-lo < 2 && !stopWords.has(r.toks[lo-1].s) && r.toks[lo-1].brk < brkComma && (madeSide.has(r.toks[lo-1].s) || kindsOfSide.has(r.toks[lo-1].s) || !r.isVerbForm(r.toks[lo-1].s)) && (r.toks[lo-1].men < 0 || r.toks[lo-1].men == r.toks[i].men) {
				lo--
			}
			end := i + 5
			if n == "in" || n == "out" || n == "up" || n == "down" || n != "toward" && n != "towards" && (strings.HasSuffix(n, "ward") || strings.HasSuffix(n, "wards")) {
				end = i + 2
			}
			return r.phrase(lo, min(c.hi, end), end-lo)
		}
	}
	return ""
}

// fastenerNamed gives the fastener that a clause names, or nil.
func (r *reading) fastenerNamed(c *clause) *thing {
	for _, mi := range c.mentions {
		if t := r.mentions[mi].entry; t != nil && t.fastener {
			return t
		}
	}
	return nil
}

// lastNamed gives the thing that a clause named last before a token, or nil.
func (r *reading) lastNamed(c *clause, tok int) *thing {
	var last *thing
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.entry != nil && m.hi <= tok {
			last = m.entry
		}
	}
	return last
}

// waitsOn gives what must come first, in the clause or in the rest of its
// sentence: "until it's on the ground".
func (r *reading) waitsOn(ci int) string {
	for k := ci; k <= min(ci+2, len(r.clauses)-1); k++ {
		n := &r.clauses[k]
		if n.sentence != r.clauses[ci].sentence || r.since(r.clauses[ci].lo, n.lo) > 8 {
			break
		}
		for i := n.lo; i+2 < n.hi; i++ {
			switch r.toks[i].s {
			case "until", "till", "once":
				if i > n.lo && k > ci {
					continue
				}
				return r.phrase(i+1, n.hi, 12)
			}
		}
	}
	return ""
}

// stores are what people put things down in or on.
var stores = wordsOf("where things are put down")

// storedAt gives where a thing was put down: in the clause where it came off, or
// in one right after that names nothing else.
func (r *reading) storedAt(ci int, t *thing) string {
	for k := ci; k <= min(ci+2, len(r.clauses)-1) && r.since(r.clauses[ci].lo, r.clauses[k].lo) <= 12; k++ {
		c := &r.clauses[k]
		if c.mood&(conditional|hypothetical|other|asked|negated|aside|greeting) != 0 {
			return ""
		}
		if k > ci {
			for _, mi := range c.mentions {
				if m := &r.mentions[mi]; m.entry != nil && m.entry != t && !stores.has(m.head) {
					return ""
				}
			}
			for _, ai := range c.acts {
				if x := &r.acts[ai]; len(x.things) > 0 && x.things[0] != t || x.action.Name == "fit" || x.action.Name == "discard" {
					return ""
				}
			}
		}
		for i := c.lo + 1; i < c.hi; i++ {
			if !stores.has(r.toks[i].s) {
				continue
			}
			lo := i
			for lo > c.lo && i-lo < 3 && !prepositions.has(r.toks[lo-1].s) && r.toks[lo-1].brk < brkComma {
				lo--
			}
			if lo == c.lo || r.toks[lo-1].s != "in" && r.toks[lo-1].s != "on" && r.toks[lo-1].s != "into" && r.toks[lo-1].s != "onto" || r.toks[i].s == "bench" && r.next(i) == "vice" {
				continue
			}
			for lo < i && determiner.has(r.toks[lo].s) && r.toks[lo].s != "my" && r.toks[lo].s != "your" {
				lo++
			}
			return strings.ToLower(r.text(lo, i+1))
		}
	}
	return ""
}
