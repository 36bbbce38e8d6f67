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
		if len(t.events) == 0 || neverLoose.has(t.head) || t.splitAway(r) {
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
		root := t.root()
		if all := r.leftAlike(t); all != nil {
			t.id = all.id
			continue
		}
		across := r.doneAcross(t)
		if id, ok := told[root]; ok && !across && sameState(r, root, state) {
			t.id = id
			i, _ := strconv.Atoi(id[1:])
			out[i-1].add(r, t)
			continue
		}
		t.id = "L" + strconv.Itoa(len(out)+1)
		first := t.events[0]
		e := Entry{ID: t.id, Item: shortName(t.called()), Kind: "part", Side: t.side, Place_: t.place, Count: t.count,
			State: state, ValueSaid: value, Locker: "unsaid", Events: []Event{}, Place: r.place(first.lo, first.hi+4).by("the last event tells the state")}
		if t.fastener && takesTorque(t) {
			e.Kind = "fastener"
		}
		e.add(r, t)
		told[root] = t.id
		if across {
			// each side keeps its own
		} else if sameState(r, root, state) && root != t || root == t && hasTwin(r, t) && sameState(r, root, state) {
			e.Side = ""
		}
		if e.Side != "" && !t.fastener && t.count == 2 {
			e.Count = 0 // two in all, one on each side
		}
		if hasWords(t.name, t.place) {
			e.Place_ = "" // the name says it
		}
		e.Inferred, e.NamedAfter, e.Unnamed = t.inferred(state), r.namedAfter(t), t.name == ""
		r.details(t, &e)
		out = append(out, e)
	}
	return out
}

// doneAcross tells whether a fastener that is tightened is one of two of which only one
// side was told in so many words, and the other to be the same: each is to be tightened,
// and nobody has told a value for both.
func (r *reading) doneAcross(t *thing) bool {
	if t.side == "" || !t.fastener || !takesTorque(t) {
		return false
	}
	switch st, _ := t.state(); st {
	case HandTight, Tightened, Torqued:
	default:
		return false
	}
	again := func(o *thing) bool {
		return len(o.events) > 0 && o.events[len(o.events)-1].rule == sameAgain
	}
	if again(t) {
		return true
	}
	for _, o := range r.things {
		if o.root() == t.root() && o != t && o.side == otherOf[t.side] && again(o) {
			return true
		}
	}
	return false
}

// add adds the events of a thing to its entry, in order of time.
func (e *Entry) add(r *reading, t *thing) {
	for _, ev := range t.events {
		e.Events = append(e.Events, Event{Act: ev.action, Place: r.place(ev.lo, ev.hi+3).by(ev.rule)})
		e.OffCamera = e.OffCamera || ev.off
		e.LastAt = max(e.LastAt, round3(r.at(ev.lo)))
	}
	sort.SliceStable(e.Events, func(i, j int) bool {
		a, b := e.Events[i].Place, e.Events[j].Place
		return a.Clip < b.Clip || a.Clip == b.Clip && a.At < b.At
	})
}

// leftAlike gives what a thing was told apart from by its place, where it was left
// as all of that was; else nil.
func (r *reading) leftAlike(t *thing) *thing {
	if t.of == nil || t.of.apart || t.of.id == "" {
		return nil
	}
	state, _ := t.state()
	if st, _ := t.of.state(); st != state {
		return nil
	}
	return t.of
}

// inferences say in plain words why a state stands that nobody said.
var inferences = map[string]string{
	"implied by its fastener": "what holds it was fitted or tightened after it came off",
	inItsTurn:                 "it was named in its turn while other things went back on",
	sameAgain:                 "the same was said to be done on the other side",
}

// inferred tells why a thing is taken to be as it was left, where that was not
// said in so many words; "" where it was.
func (t *thing) inferred(state string) string {
	why, said := "", false
	for _, e := range t.events {
		switch w := inferences[e.rule]; {
		case ledgerActs[e.action] != state:
			said = false
		case e.rule != sameAgain || !said:
			why, said = w, w == ""
		}
	}
	return why
}

// namedAfter gives the part that a fastener is named after, where no sentence
// names the two together: the talk was only about that part.
func (r *reading) namedAfter(t *thing) string {
	if t.owner == nil || t.owner.name == "" {
		return ""
	}
	near := func(cl int) bool {
		for k := max(0, cl-1); k <= min(cl+1, len(r.clauses)-1); k++ {
			if k > cl && r.clauses[k].sentence != r.clauses[cl].sentence {
				continue
			}
			for _, mi := range r.clauses[k].mentions {
				if m := &r.mentions[mi]; m.entry == t.owner || m.entry == t && len(content(m.mods)) > 0 {
					return true
				}
			}
		}
		return false
	}
	for _, mi := range t.mentions {
		if near(r.mentions[mi].cl) {
			return ""
		}
	}
	for _, e := range t.events {
		if near(int(r.toks[e.lo].cl)) {
			return ""
		}
	}
	return lexicon.Singular(t.owner.name)
}

// hasWords tells whether a name has all the words of a phrase, at least one.
func hasWords(name, phrase string) bool {
	f := strings.Fields(phrase)
	for _, w := range f {
		if !strings.Contains(" "+name+" ", " "+w+" ") {
			return false
		}
	}
	return len(f) > 0
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
		if o.root() != root || len(o.events) == 0 || o.splitAway(r) {
			continue
		}
		if st, _ := o.state(); st != state {
			return false
		}
	}
	return true
}

// neverLoose are named as parts and never come off by themselves.
var neverLoose = set("breaker mains main spur isolator supply electricity gas propane tap stopcock power disconnect current feed spline splines thread threads bore hole slot groove face bead lug lip tongue tang dimple notch boss shoulder pole tooth teeth")

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
	if t.many() {
		return lexicon.Plural(t.head)
	}
	return t.head
}

func shortName(s string) string {
	f := strings.Fields(s)
	if len(f) > 8 {
		f = f[len(f)-8:]
	}
	return strings.ReplaceAll(strings.Join(f, " "), " 's", "'s")
}

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
						if cl.mood&negated != 0 && k == c || r.deniedBefore(cl, m.lo) {
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
		if ev.action == "remove" && e.State != Discarded {
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
			e.Lock.State = "reused"
			if t.isNew {
				e.Lock.State = "renewed"
			}
		}
	}
}

// washers gives what the clause says of washers beside a fastener: "one each, under the head".
func (r *reading) washers(c *clause) string {
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.head != "washer" || len(c.mentions) < 2 {
			continue
		}
		goes := m.prep == "with"
		for i := m.hi; i < min(c.hi, m.hi+4); i++ {
			switch r.toks[i].s {
			case "under", "behind", "each", "between", "either", "both":
				goes = true
			}
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

// orientation gives the words that say which way round a thing went, in the clause
// where it was fitted or in the next, where that names nothing else.
func (r *reading) orientation(ci int, t *thing) string {
	for k := ci; k <= min(ci+1, len(r.clauses)-1); k++ {
		c := &r.clauses[k]
		if k > ci && (r.since(r.clauses[ci].lo, c.lo) > 8 || len(c.acts) > 0) {
			break
		}
		for i := c.lo; i < c.hi; i++ {
			w := r.toks[i].s
			if x := r.lastNamed(c, i); x != nil && x != t {
				continue // "the clamps with the dot to the front": not the bar's dot
			}
			if w == "facing" || w == "faces" {
				lo := i
				for lo > c.lo && i-lo < 3 && !stopWords.has(r.toks[lo-1].s) && r.toks[lo-1].brk < brkComma {
					lo--
				}
				return r.phrase(lo, c.hi, i-lo+5)
			}
			if !features.has(w) || i+1 >= c.hi || r.toks[i].brk >= brkComma || r.toks[i].men >= 0 && r.mentions[r.toks[i].men].entry != nil && r.mentions[r.toks[i].men].entry != t {
				continue
			}
			n := r.toks[i+1].s
			if !turned.has(n) {
				continue
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
			for lo > c.lo && i-lo < 2 && !stopWords.has(r.toks[lo-1].s) && r.toks[lo-1].brk < brkComma && (madeSide.has(r.toks[lo-1].s) || !r.isVerbForm(r.toks[lo-1].s)) && (r.toks[lo-1].men < 0 || r.toks[lo-1].men == r.toks[i].men) {
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
var stores = set("tray tub lid box bag jar can cup dish saucer magnet shelf bench pocket cardboard bucket tin drawer pot towel blanket cloth rag fender icebox floor windowsill bed pile")

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
			if lo == c.lo || r.toks[lo-1].s != "in" && r.toks[lo-1].s != "on" && r.toks[lo-1].s != "into" && r.toks[lo-1].s != "onto" || r.toks[i].s == "bench" && r.word(i+1) == "vice" {
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
