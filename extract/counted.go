package extract

import "wrenchword/extract/lexicon"

// countedWith is the rule of fasteners that are counted right after what they hold moved.
const countedWith = "counted with what they hold"

// countedHold reads "I had the guard off last night, two screws" and "Seat's off, that was
// four bolts": what held a thing is told by no more than how many there are, after it came off
// or went on, and went the same way.
func (r *reading) countedHold(ci int) {
	c := &r.clauses[ci]
	if c.mood&notWork != 0 || ci < r.toolList[1] {
		return
	}
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&lexicon.Fastener == 0 || m.kind&lexicon.Tool != 0 || m.count == 0 || m.prep != "" || m.isNew || m.definite || r.inAct(ci, mi) || isLockName(m) {
			continue
		}
		a := r.movedBefore(c, m)
		if a == nil {
			continue
		}
		x := act2(a.action, m.from, m.hi, mi)
		x.rule, x.mood = countedWith, a.mood&offCamera
		r.addAct(ci, x)
		return
	}
}

// movedBefore gives the act by which a part came off or went on right before a mention, with no
// more than "that's" or a comma between; else nil.
func (r *reading) movedBefore(c *clause, m *mention) *act {
	ci := int(r.toks[c.lo].cl)
	from := m.from
	counted := false // "that's four bolts"
	for from > c.lo && r.toks[from-1].brk < brkComma {
		switch w := r.toks[from-1].s; {
		case w == "'s" || w == "is" || w == "was":
			counted = true
		case w == "that" || w == "it" || w == "and" || w == "just" || w == "only" || w == "about" || w == "so":
		default:
			return nil
		}
		from--
	}
	if w := r.toks[from].s; counted && w != "that" && w != "it" && w != "and" && w != "so" || !counted && from != m.from {
		return nil
	}
	n := c
	if from == c.lo {
		if ci == 0 || len(c.acts) > 0 && r.acts[c.acts[0]].verb >= 0 && r.acts[c.acts[0]].lo < m.hi+2 {
			return nil
		}
		if n = &r.clauses[ci-1]; n.sentence != c.sentence && !counted {
			return nil
		}
	}
	var a *act
	for _, ai := range n.acts {
		if o := &r.acts[ai]; o.lo < m.from {
			a = o
		}
	}
	if a == nil || !a.happened() || a.action.Name != "remove" && a.action.Name != "fit" || a.hi > m.from || r.since(a.hi, m.from) > 6 {
		return nil
	}
	for _, o := range a.objects {
		if r.mentions[o].kind&lexicon.Fastener != 0 || r.mentions[o].ownsNone() {
			return nil
		}
	}
	for _, o := range n.mentions {
		if k := &r.mentions[o]; k.from >= a.hi && k.hi <= m.from && k.kind&(lexicon.Fastener|lexicon.Part) != 0 && k != m {
			return nil // something else was named since
		}
	}
	if len(a.objects) == 0 && a.pronoun == "" {
		return nil
	}
	return a
}
