package extract

import (
	"sort"
	"strconv"
	"strings"

	"wrenchword/extract/lexicon"
)

// ledger gives an entry for every thing that something happened to, in the
// order in which they were first handled.
func (r *reading) ledger() []Entry {
	out := []Entry{}
	var ts []*thing
	for _, t := range r.things {
		if len(t.events) == 0 || neverLoose[t.head] || t.splitAway(r) {
			continue
		}
		ts = append(ts, t)
	}
	sort.SliceStable(ts, func(i, j int) bool { return ts[i].events[0].lo < ts[j].events[0].lo })
	told := map[*thing]string{}
	for _, t := range ts {
		state, value := t.state()
		if state == "" {
			continue
		}
		// left and right that were left alike are one entry
		root := t
		for root.twin != nil {
			root = root.twin
		}
		if id, ok := told[root]; ok && sameState(r, root, state) {
			t.id = id
			continue
		}
		t.id = "L" + strconv.Itoa(len(out)+1)
		first, last := t.events[0], t.events[len(t.events)-1]
		e := Entry{ID: t.id, Item: shortName(t.called()), Kind: "part", Side: t.side, Place_: t.place, Count: t.count,
			State: state, ValueSaid: value, Locker: "unsaid", Events: []Event{}, Place: r.place(first.lo, first.hi+4).by("the last event tells the state")}
		if t.fastener && takesTorque(t) {
			e.Kind = "fastener"
		}
		for _, ev := range t.events {
			rule := ev.rule
			if ev.act >= 0 {
				rule = r.acts[ev.act].rule
			}
			e.Events = append(e.Events, Event{Act: ev.action, Place: r.place(ev.lo, ev.hi+3).by(rule)})
			e.OffCamera = e.OffCamera || ev.off
		}
		told[root] = t.id
		if sameState(r, root, state) && root != t || root == t && hasTwin(r, t) && sameState(r, root, state) {
			e.Side = ""
		}
		e.LastAt = round3(r.at(last.lo))
		r.details(t, &e)
		out = append(out, e)
	}
	return out
}

func hasTwin(r *reading, t *thing) bool {
	for _, o := range r.things {
		if o.twin == t && len(o.events) > 0 {
			return true
		}
	}
	return false
}

// sameState tells whether a thing and all that was told apart from it were left alike.
func sameState(r *reading, root *thing, state string) bool {
	for _, o := range r.things {
		top := o
		for top.twin != nil {
			top = top.twin
		}
		if top != root || len(o.events) == 0 || o.splitAway(r) {
			continue
		}
		if st, _ := o.state(); st != state {
			return false
		}
	}
	return true
}

// neverLoose are named as parts and never come off by themselves.
var neverLoose = set("spline splines thread threads bore hole slot groove face flange")

// splitAway tells whether a thing was told apart into its left and its right,
// and nothing happened to it as a whole since.
func (t *thing) splitAway(r *reading) bool {
	if t.side != "" {
		return false
	}
	for _, o := range r.things {
		if o.twin == t && len(o.events) > 0 && t.events[len(t.events)-1].lo < o.events[len(o.events)-1].lo {
			return true
		}
	}
	return false
}

// called gives the name of a thing, or the bare word that was said for it: "nuts".
func (t *thing) called() string {
	if t.name != "" {
		return t.name
	}
	if t.plural || t.count > 1 {
		return lexicon.Plural(t.head)
	}
	return t.head
}

func shortName(s string) string {
	f := strings.Fields(s)
	if len(f) > 8 {
		f = f[len(f)-8:]
	}
	return strings.Join(f, " ")
}

// details keeps what was said of a thing beside its state: locker, washers,
// which way round, where it was put, what must come first.
func (r *reading) details(t *thing, e *Entry) {
	for _, ev := range t.events {
		c := r.toks[ev.lo].cl
		for k := max(0, c-2); k <= min(c+2, len(r.clauses)-1); k++ {
			cl := &r.clauses[k]
			for _, mi := range cl.mentions {
				m := &r.mentions[mi]
				if strings.Contains(m.name, "thread lock") || strings.Contains(m.name, "threadlock") || strings.Contains(m.name, "locking compound") {
					if t.fastener && r.nearestFastener(cl, m) == t {
						e.Locker = "yes"
						if cl.mood&negated != 0 && k == c {
							e.Locker = "no"
						}
					}
				}
			}
		}
		cl := &r.clauses[c]
		if t.fastener {
			if w := r.washers(cl); w != "" && e.Washers == "" {
				e.Washers = w
			}
			if p := r.position(c); p != "" && e.Position == "" {
				e.Position = p
			}
		}
		if ev.act >= 0 && e.ReplacedBy == "" && r.acts[ev.act].action.Name == "replace" {
			e.ReplacedBy = r.replacedBy(cl)
		}
		if ev.action == "fit" || ev.action == "start by hand" {
			if o := r.orientation(cl); o != "" {
				e.Orientation = o
			}
		}
		if w := r.waitsOn(cl); w != "" && ev.action == "start by hand" {
			e.WaitsOn = w
		}
		if ev.action == "remove" {
			if p := r.storedAt(c); p != "" {
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
			e.Lock.State = "reused"
			if t.isNew {
				e.Lock.State = "renewed"
			}
		}
	}
}

// washers gives what the clause says of washers beside a fastener.
func (r *reading) washers(c *clause) string {
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.head == "washer" && len(c.mentions) > 1 {
			return strings.ToLower(r.text(m.from, min(c.hi, m.hi+4)))
		}
	}
	return ""
}

// position gives which ones are long and which short, where that was said right after.
func (r *reading) position(ci int) string {
	for k := ci; k <= min(ci+2, len(r.clauses)-1); k++ {
		c := &r.clauses[k]
		if r.since(r.clauses[ci].lo, c.lo) > 12 {
			break
		}
		for i := c.lo; i < c.hi; i++ {
			w := r.toks[i].s
			if (w == "long" || w == "short" || w == "longer" || w == "shorter") && (r.word(i+1) == "one" || r.word(i+1) == "ones" || r.word(i+1) == "bolt" || r.word(i+1) == "bolts" || r.word(i+1) == "screw" || r.word(i+1) == "screws") {
				return strings.ToLower(r.text(c.lo, min(c.hi, c.lo+14)))
			}
		}
	}
	return ""
}

// replacedBy gives what a thing was swapped for: "swap it for a new one".
func (r *reading) replacedBy(c *clause) string {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.prep == "for" || m.prep == "with" {
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
	ci := r.toks[c.lo].cl
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

// orientation gives the words that say which way round, where the clause has them.
func (r *reading) orientation(c *clause) string {
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		if w == "facing" || w == "outwards" || w == "inwards" || w == "upwards" || w == "downwards" || w == "towards" {
			lo := max(c.lo, i-4)
			hi := min(c.hi, i+4)
			return strings.ToLower(r.text(lo, hi))
		}
	}
	return ""
}

// waitsOn gives what must come first: "once it's on the ground".
func (r *reading) waitsOn(c *clause) string {
	ci := r.toks[c.lo].cl
	for k := ci; k <= min(ci+1, len(r.clauses)-1); k++ {
		n := &r.clauses[k]
		for i := n.lo; i < n.hi; i++ {
			w := r.toks[i].s
			if w == "until" || w == "till" || w == "once" || w == "when" {
				if i+1 < n.hi {
					return strings.ToLower(r.text(i+1, min(n.hi, i+9)))
				}
			}
		}
	}
	return ""
}

var stores = set("tray tub lid box bag jar cup dish magnet egg shelf bench pocket cardboard bucket bin")

// storedAt gives where a thing was put down.
func (r *reading) storedAt(ci int) string {
	for k := ci; k <= min(ci+2, len(r.clauses)-1); k++ {
		c := &r.clauses[k]
		for i := c.lo; i < c.hi; i++ {
			if stores[r.toks[i].s] && i-2 >= c.lo && (r.toks[i-2].s == "in" || r.toks[i-2].s == "on") {
				return r.text(i-1, i+1)
			}
		}
	}
	return ""
}
