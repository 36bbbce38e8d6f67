package extract

import "wrenchword/extract/lexicon"

// dryYet finds what is told to hold none of what it runs in: "there's no oil in it",
// "the gearbox is empty, don't start it", "it takes half a litre of oil, which I
// haven't got". What is filled soon after is not left.
func (r *reading) dryYet(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	if c.mood&(leavesNothing|asked|hypothetical) != 0 {
		return -1, -1
	}
	if lo, hi = r.drySaid(ci); lo >= 0 && (r.pastTold(c) || r.filledSoon(ci) || r.goesIn(ci)) {
		return -1, -1
	}
	return lo, hi
}

// drySaid is dryYet for what is said, whatever comes after.
func (r *reading) drySaid(ci int) (lo, hi int) {
	c := &r.clauses[ci]
	for i := c.lo; i < c.hi; i++ {
		hi := -1
		switch r.toks[i].s {
		case "no":
			hi = r.noneIn(c, i)
		case "dry", "empty":
			hi = r.isDry(ci, i)
		}
		if hi >= 0 {
			return i, hi
		}
	}
	return -1, -1
}

// noneIn reads "there's no fluid in that yet", "we've got no grease in there" at the word
// "no", and gives the token where it ends; -1 where it is not said.
func (r *reading) noneIn(c *clause, i int) int {
	if i > c.lo {
		switch r.toks[i-1].s {
		case "'s", "is", "got", "'ve", "have", "still":
		default:
			return -1
		}
	}
	k := r.filling(c, i+1)
	if k < 0 {
		return -1
	}
	switch r.word(k) {
	case "yet":
		return k + 1
	case "in", "inside":
		if w := r.next(k); r.toks[k-1].s != "water" && (itsPlace.has(w) || r.nextKind(k).is(wDeterminer)) {
			return k + 1
		}
	}
	return -1
}

// itsPlace are the words for where a filling is, but for its name.
var itsPlace = set("it there that her here")

// isDry reads "it's bone dry", "the gearbox is empty" at the last word.
func (r *reading) isDry(ci, i int) int {
	c := &r.clauses[ci]
	if i+1 < c.hi && r.toks[i].brk == brkNone && !goesOnDry.has(r.toks[i+1].s) {
		return -1 // "dry bearings", "empty the tray"
	}
	k := i - 1
	for k > c.lo && quiteDry.has(r.toks[k].s) {
		k--
	}
	if k <= c.lo {
		return -1
	}
	switch r.toks[k].s {
	case "'s", "is", "are", "'re", "sat":
	default:
		return -1
	}
	m := r.toks[k-1].men
	held := m >= 0 && runsFull.has(r.mentions[m].head)
	if m >= 0 && !held {
		return -1 // "the rag's dry"
	}
	if r.runsDry(ci) || held && r.toks[i].s == "empty" {
		return i + 1
	}
	return -1
}

// goesOnDry are the words that what is said of a state goes on with, quiteDry those that
// stand before it.
var goesOnDry, quiteDry = set("so at yet now until till and"), set("bone completely totally still all currently absolutely")

// filling gives the token after the name of what a machine is filled with, where one
// stands at token i or after a word that says which; -1 where none does.
func (r *reading) filling(c *clause, i int) int {
	for k := i; k < min(c.hi, i+3); k++ {
		if m := r.toks[k].men; m >= 0 && (r.mentions[m].kind&lexicon.Consumable != 0 && r.mentions[m].kind&lexicon.Part == 0 || fluids.has(r.mentions[m].head)) {
			return r.mentions[m].hi
		}
		if fluids.has(r.toks[k].s) || r.toks[k].s == "grease" {
			return k + 1
		}
	}
	return -1
}

// runsDry tells whether the talk around a clause says that the machine is not to run
// like that, or what it is to be filled with.
func (r *reading) runsDry(ci int) bool {
	lo, hi := r.nearBy(ci, 2, 3, 10)
	for k := lo; k <= hi; k++ {
		c := &r.clauses[k]
		for i := c.lo; i < c.hi; i++ {
			switch r.lemma1(r.toks[i].s) {
			case "start", "run", "turn", "fire", "switch":
				if c.mood&(negated|warned) != 0 || r.saidIn(c, "before") || r.saidIn(c, "until") || r.saidIn(c, "till") {
					return true
				}
			case "fill", "top":
				return c.mood&negated == 0
			}
			if w := r.toks[i].s; w != "water" && fluids.has(w) && (i == c.lo || r.toks[i-1].s != "the") {
				return true
			}
		}
	}
	return false
}

// goesIn tells whether something goes in in the same breath: "no oil in it, so in goes
// two litres".
func (r *reading) goesIn(ci int) bool {
	_, hi := r.nearBy(ci, 0, 2, 8)
	for k := ci; k <= hi; k++ {
		for i := r.clauses[k].lo; i < r.clauses[k].hi; i++ {
			if n := r.next(i); r.toks[i].s == "in" && (n == "goes" || n == "it" && r.word(i+2) == "goes") || (r.toks[i].s == "goes" || r.toks[i].s == "going") && n == "in" {
				return true
			}
		}
	}
	return false
}

// runsFull are the parts that run full of something.
var runsFull = wordsOf("runs full")
