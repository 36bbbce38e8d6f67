package extract

import (
	"slices"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// whichWrench are the words that only tell one wrench from another.
var whichWrench = set("small big little long short large tiny wee fancy proper good other same smaller bigger longer shorter normal middling titchy digital electronic inch foot pound pounds")

// setsTorque tells whether what is only called a wrench is a torque wrench: it is told with what
// it is set to, reads or does, or the talk has another word for the rest of them.
func (r *reading) setsTorque(m *mention) bool {
	if m.head != "wrench" || slices.ContainsFunc(m.mods, func(w string) bool { return !whichWrench.has(w) }) {
		return false
	}
	c := &r.clauses[m.cl]
	for _, ai := range c.acts {
		switch a := &r.acts[ai]; a.action.Name {
		case "slacken", "remove", "disconnect":
			return false
		}
	}
	if r.saidIn(c, "hold") || r.saidIn(c, "holding") {
		return false // on the other end of the bolt
	}
	for k := max(0, m.cl-1); k <= min(m.cl+1, len(r.clauses)-1); k++ {
		for i := r.clauses[k].lo; i < r.clauses[k].hi; i++ {
			if q := r.toks[i].qty; q >= 0 && r.qtys[q].Kind == normalize.Torque && r.since(min(i, m.lo), max(i, m.lo)) <= 12 {
				return true
			}
			switch r.toks[i].s {
			case "click", "clicks", "clicked", "newton", "newtons", "pound", "pounds":
				if r.since(min(i, m.lo), max(i, m.lo)) <= 8 {
					return true
				}
			}
		}
	}
	if !m.definite || m.plural {
		return false
	}
	named := false
	for i := range r.mentions {
		o := &r.mentions[i]
		if o.kind&lexicon.Tool == 0 {
			continue
		}
		if o.head == "wrench" && !slices.Contains(o.mods, "torque") && len(o.mods) > 0 && !whichWrench.has(o.mods[len(o.mods)-1]) {
			return false // "the crescent wrench"
		}
		named = named || o.head == "spanner"
	}
	return named && slices.ContainsFunc(r.heard, func(h heard) bool { return !h.dropped })
}
