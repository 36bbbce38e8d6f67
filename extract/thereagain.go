package extract

import "wrenchword/extract/lexicon"

// thereAgain is the rule of a thing that is told to be in or on its place: back where it had come
// off, while things go on.
const thereAgain = "told to be in its place"

// seats are the places of a machine that a thing is told to sit in.
var seats = set("slot groove hole seat place pocket bore keyway channel recess socket bracket holder stud studs pegs posts hooks spigot shaft taper spline splines")

// sitsThere reads "the drive key's in its slot", "the gasket's on there, dry", "motor in its place".
func (r *reading) sitsThere(ci int) {
	c := &r.clauses[ci]
	if c.mood&(notWork|announced) != 0 || ci < r.toolList[1] {
		return
	}
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.prep != "" || m.hi+1 >= c.hi || r.toks[m.hi-1].brk > brkPause || r.inAct(ci, mi) || !r.opens(c, m) && !r.begins(m.from) {
			continue
		}
		i := m.hi
		is := r.toks[i].is(wLinking)
		for i < c.hi && (r.toks[i].is(wLinking) && i == m.hi || is && sitsSo.has(r.toks[i].s)) {
			i++
		}
		if i+1 >= c.hi || !r.sitsAt(c, i, is) || r.intoContainer(ci, i+1) != "" {
			continue
		}
		x := act2(r.lex.Action("fit"), m.from, i+2, mi)
		x.rule, x.ifOff = thereAgain, true
		r.addAct(ci, x)
		return
	}
}

// sitsSo may stand before where a thing is told to be.
var sitsSo = set("both all just now nicely right down sitting sat seated well")

// sitsAt tells whether a place on the machine is told at token i: "in its slot", "on there".
func (r *reading) sitsAt(c *clause, i int, is bool) bool {
	switch r.toks[i].s {
	case "in", "on", "into", "onto":
	default:
		return false
	}
	n := i + 1
	switch w := r.toks[n].s; w {
	case "there":
		return is && (n+1 == c.hi || r.toks[n].brk >= brkComma || thereEnds.has(r.toks[n+1].s))
	case "its", "their":
	case "the":
		if !is {
			return false // "motor in the bracket": told by other rules
		}
	default:
		return false
	}
	for k := n + 1; k < min(c.hi, n+4) && r.toks[k-1].brk < brkComma; k++ {
		if seats.has(r.toks[k].s) {
			return true
		}
	}
	return false
}

// thereEnds may follow "there" where no more is told of where a thing is.
var thereEnds = set("finger hand dry by with and again now properly tight nice square snug")
