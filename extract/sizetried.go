package extract

import "wrenchword/normalize"

// Bare numbers that are plainly no torque: the size of what is tried on a fastener and does not
// fit, "a cone of fifteen, no, thirteen, fifteen's too wide", and how many were counted.

// misfits are the words after "too" by which a size does not fit.
var misfits = set("wide big small narrow large little sloppy fat")

// tooBigAt tells whether "is too wide", "too small" stands at a token.
func (r *reading) tooBigAt(i int) bool {
	for most := i + 5; i < min(most, len(r.toks)-1) && (r.toks[i].is(wLinking) || r.toks[i].s == "no" || r.toks[i].s == "nah" || r.toks[i].s == "that" || r.toks[i].s == "it" || r.toks[i].s == "a" || r.toks[i].s == "bit"); {
		i++
	}
	return r.word(i) == "too" && misfits.has(r.next(i))
}

// sizeTried tells whether a number is the size of something that is tried: it is said not to fit,
// it is said in place of one that does not, or one that does not fit follows it.
func (r *reading) sizeTried(f *bareNumber) bool {
	if !spannerSize(f.Low) || f.Low.Cmp(f.High) != 0 {
		return false
	}
	if r.tooBigAt(f.hi) {
		return true
	}
	c := &r.clauses[f.cl]
	if !r.alone(c, f.lo, f.hi) || f.lo == 0 {
		return false
	}
	if r.tooBigLater(f.hi, f.hi) {
		return true // "fifteen. No, thirteen. Fifteen is too wide"
	}
	last := -1 // where the number before ends, that this one is said in place of
	if n := len(r.bare); n > 0 && r.since(r.bare[n-1].hi, f.lo) < 10 && spannerSize(r.bare[n-1].Low) {
		last = r.bare[n-1].hi
		if r.tooBigAt(last) {
			return true // "thirteen. No, too big. Twelve."
		}
	}
	if w := r.prev(f.lo); w != "no" && w != "nah" && w != "nope" && w != "sorry" {
		return false
	}
	if last > 0 && r.bare[len(r.bare)-1].is == turnedBy {
		return true
	}
	if last > 0 && r.tooBigLater(last, f.hi) {
		return true
	}
	for i := f.lo - 2; i >= max(0, f.lo-8); i-- {
		if q := r.toks[i].qty; q >= 0 {
			return r.qtys[q].Kind == normalize.Size && r.since(r.qtys[q].hi, f.lo) < 6
		}
	}
	return false
}

// tooBigLater tells whether the number that ends at hi is said not to fit soon after a token.
func (r *reading) tooBigLater(hi, from int) bool {
	for i := from; i < min(len(r.toks), from+8); i++ {
		if r.toks[i].s == r.toks[hi-1].s && r.tooBigAt(i+1) {
			return true
		}
	}
	return false
}

// justCounted tells whether a number is how many there are, of what was to be counted right
// before or is meant: "I count them. Nine.", "and nine on the other side", "three of them".
func (r *reading) justCounted(f *bareNumber) bool {
	if r.toBeCounted(f.lo) || r.word(f.hi) == "of" && ofThem.has(r.next(f.hi)) {
		return true
	}
	at := f.lo
	for k := len(r.bare) - 1; k >= max(0, len(r.bare)-4) && r.bare[k].is == neither && r.bare[k].Low.Cmp(f.Low) == 0 && r.since(r.bare[k].hi, at) < 6; k-- {
		if at = r.bare[k].lo; r.toBeCounted(at) {
			return true
		}
	}
	return false
}

// ofThem are the words after "three of".
var ofThem = set("them 'em em these those")

// toBeCounted tells whether right before a token something is to be counted.
func (r *reading) toBeCounted(at int) bool {
	for i := at - 1; i >= max(0, at-4); i-- {
		switch w := r.toks[i].s; {
		case w == "count" || w == "counted" || w == "counting":
			return r.since(i, at) < 12
		case r.toks[i].qty >= 0 || r.toks[i].men >= 0 && i < at-2:
			return false
		}
	}
	return false
}
