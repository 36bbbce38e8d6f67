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
var neverLoose = wordsOf("what never comes off by itself")

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
