package extract

// How tight a thing is found, told while it is undone: "Loose! That's barely finger tight, no
// wonder it leaked." It is nothing that was done, and is not how the thing is left.

// foundSoWords are the words of one who finds a thing so.
var foundSoWords = set("barely hardly already ooh wow blimey crikey scary frightening wonder somebody someone yikes whoa was were")

// keepsSo are the words of one who leaves it so.
var keepsSo = set("leave leaving until till later now tomorrow on back in again")

// looseAsFound takes what is told of how tight a thing is for how it was found, where things are being
// undone and it is told as a surprise, or comes off next.
func (r *reading) looseAsFound() {
	undone := -1  // the act before, where that undid something
	fresh := true // nothing was done yet
	for i := range r.acts {
		a := &r.acts[i]
		state := ledgerActs[a.action.Name]
		if state == "" || !a.happened() {
			continue
		}
		if (fresh || undone >= 0 && r.since(r.acts[undone].lo, a.lo) < 20) && r.saysHowTight(a) && !r.keptSo(a) && (r.surprises(a) || r.comesOffNext(i)) {
			a.mood |= framed
			r.foundAt = append(r.foundAt, a.cl)
			continue
		}
		fresh = false
		if undone = -1; state == Removed || state == Loosened {
			undone = i
		}
	}
}

// saysHowTight tells of "that's finger tight", "this one's loose": no more is told than how it is.
func (r *reading) saysHowTight(a *act) bool {
	switch a.action.Name {
	case "start by hand", "slacken", "tighten":
	default:
		return false
	}
	if a.rule == toldByHand {
		return true
	}
	if !a.subject || a.qty >= 0 {
		return false
	}
	for i := a.lo; i < a.hi; i++ {
		switch r.toks[i].s {
		case "loose", "tight", "slack", "fingers", "hand", "finger":
			return true
		}
	}
	return false
}

// surprises tells whether a state is told as one that nobody expected.
func (r *reading) surprises(a *act) bool {
	lo, hi := r.nearBy(a.cl, 2, 2, 6)
	for k := lo; k <= hi; k++ {
		c := &r.clauses[k]
		if k != a.cl && c.sentence != r.clauses[a.cl].sentence && len(c.acts) > 0 {
			continue
		}
		for i := c.lo; i < c.hi; i++ {
			w := r.toks[i].s
			if foundSoWords.has(w) && (w != "was" && w != "were" || k == a.cl && i < a.hi) || w == "why" && r.prev(i) == "'s" {
				return true
			}
		}
	}
	return false
}

// keptSo tells whether it is told that the thing stays so.
func (r *reading) keptSo(a *act) bool {
	c := &r.clauses[a.cl]
	for i := c.lo; i < c.hi; i++ {
		if keepsSo.has(r.toks[i].s) {
			return true
		}
	}
	return false
}

// comesOffNext tells whether what is done next takes something off, soon.
func (r *reading) comesOffNext(i int) bool {
	for k := i + 1; k < len(r.acts) && r.since(r.acts[i].lo, r.acts[k].lo) < 12; k++ {
		a := &r.acts[k]
		if state := ledgerActs[a.action.Name]; state != "" && a.happened() && !r.saysHowTight(a) {
			return state == Removed
		}
	}
	return false
}

// foundIn tells whether a clause tells how a thing was found, or cries out at it: "Loose!"
func (r *reading) foundIn(ci int) bool {
	for _, k := range r.foundAt {
		if k == ci || k == ci+1 && len(r.clauses[ci].acts) == 0 && len(r.clauses[ci].mentions) == 0 {
			return true
		}
	}
	return false
}
