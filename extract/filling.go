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
		switch w := r.toks[i].s; {
		case w == "no":
			// "there's no fluid in that yet", "we've got no grease in there"
			if i > c.lo {
				if p := r.toks[i-1].s; p != "'s" && p != "is" && p != "got" && p != "'ve" && p != "have" && p != "still" {
					continue
				}
			}
			k := r.filling(c, i+1)
			if k < 0 {
				continue
			}
			if n := r.word(k); n == "yet" || r.toks[k-1].s != "water" && (n == "in" || n == "inside") && (r.word(k+1) == "it" || r.word(k+1) == "there" || r.word(k+1) == "that" || r.word(k+1) == "her" || r.word(k+1) == "here" || r.kind(k+1).is(wDeterminer)) {
				return i, k + 1
			}
		case (w == "dry" || w == "empty") && i > c.lo && (r.toks[i].brk != brkNone || i+1 == c.hi || r.word(i+1) == "so" || r.word(i+1) == "at" || r.word(i+1) == "yet" || r.word(i+1) == "now" || r.word(i+1) == "until" || r.word(i+1) == "till"):
			k := i - 1
			for k > c.lo && (r.toks[k].s == "bone" || r.toks[k].s == "completely" || r.toks[k].s == "totally" || r.toks[k].s == "still" || r.toks[k].s == "all" || r.toks[k].s == "currently" || r.toks[k].s == "absolutely") {
				k--
			}
			if s := r.toks[k].s; s != "'s" && s != "is" && s != "are" && s != "'re" && s != "sat" {
				continue
			}
			held := k > c.lo && r.toks[k-1].men >= 0 && runsFull.has(r.mentions[r.toks[k-1].men].head)
			if !held && k-1 >= c.lo && r.toks[k-1].men >= 0 {
				continue // "the rag's dry"
			}
			if r.runsDry(ci) || held && w == "empty" {
				return k, i + 1
			}
		case (w == "wants" || w == "needs" || w == "takes" || w == "want" || w == "need" || w == "take") && i > c.lo && !r.toks[i-1].is(wDeterminer):
			// "it wants half a litre of thirty weight which I don't have"
			if r.toks[i-1].s == "i" || r.toks[i-1].s == "you" || r.toks[i-1].s == "we" || r.toks[i-1].s == "to" {
				continue
			}
			for k := i + 1; k < min(c.hi, i+8); k++ {
				if r.toks[k].s != "of" || k == i+1 {
					continue
				}
				for j := k - 1; j > i; j-- {
					if volumes.has(r.toks[j].s) && r.noneHad(ci, k) {
						return i, k + 1
					}
				}
			}
		}
	}
	return -1, -1
}

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
			if n := r.word(i + 1); r.toks[i].s == "in" && (n == "goes" || n == "it" && r.word(i+2) == "goes") || (r.toks[i].s == "goes" || r.toks[i].s == "going") && n == "in" {
				return true
			}
		}
	}
	return false
}

// noneHad tells whether the talk says from token i on, in the same breath, that there is
// none of it at hand.
func (r *reading) noneHad(ci, i int) bool {
	_, hi := r.nearBy(ci, 0, 2, 8)
	for k := ci; k <= hi; k++ {
		n := &r.clauses[k]
		for j := max(i, n.lo); j < n.hi; j++ {
			switch r.toks[j].s {
			case "haven't", "don't", "hasn't", "ain't":
				if w := r.word(j + 1); w == "got" || w == "have" || w == "any" || w == "bought" || k > ci {
					return true
				}
			case "none", "out", "short", "waiting", "order", "ordered", "tomorrow", "buy":
				if r.toks[j].s != "out" || r.word(j+1) == "of" {
					return true
				}
			}
		}
	}
	return false
}

// volumes are what a filling is measured in.
var volumes = set("litre litres liter liters pint pints quart quarts cc ml mil mils millilitres ounces ounce gallon gallons cup cups")

// runsFull are the parts that run full of something.
var runsFull = set("gearbox sump tank reservoir radiator pump engine crankcase transmission transaxle diff differential case housing oiler bowl caliper system pot tub leg fork cylinder master")
