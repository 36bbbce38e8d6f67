package extract

import (
	_ "embed"
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
)

// What becomes of a part (a new one, the old one again, thrown away) is told by the words on
// it; whether it is so, otherwise or not told at all is weighed once more with all that stands
// around it. The weights are fitted on lists of careful readers (fated_test.go).

//go:embed fated.bin
var fatedWeights string

// fatedClues is how many weights there are.
const fatedClues = 1 << 16

// fateKinds are what can become of a part, none first. Their order is that of the weights.
var fateKinds = [...]string{"", "new", "reused", "kept", "temporary", "discarded"}

// The signs of what becomes of a part, beside those of any item of a list.
const (
	fateLike   sign = iota + sifSigns // what becomes of others of its name
	fateLater                         // what is done later where its word is said
	fateBefore                        // the same before
	fateLeft                          // how the thing was left
	fateWord                          // a word of the talk where it is named
	fateSigns
)

func (h hint) fate(of int) clue {
	return clue((uint32(h.sign+sign(of)*fateSigns)<<12 + uint32(h.value)) * 2654435761 >> 16)
}

// fatedAhead is how much heavier than as it was told another fate must be.
const (
	fatedScale = 16
	fatedAhead = 6
)

// weighFates weighs what becomes of each part.
func (r *reading) weighFates(parts []Part) []Part {
	if len(parts) < 4 {
		return parts // too few to tell what belongs together
	}
	at := make([]int, len(parts))
	for i := range parts {
		at[i] = r.tokenOf(parts[i].Place)
	}
	sorted := slices.Sorted(slices.Values(at))
	var kept []Part
	for i := range parts {
		p := parts[i]
		r.hintRow = r.fateHints(r.hintRow[:0], parts, i, at[i], sorted)
		was := max(0, slices.Index(fateKinds[:], p.Disposition))
		best := likeliestClass(r.hintRow, fatedWeights, len(fateKinds), was, fatedAhead, hint.fate)
		if r.fatedTold != nil {
			best = r.fatedTold(&p, r.hintRow, was, best)
		}
		if best == 0 {
			r.leave(siftParts, p.Name+", "+p.Disposition, p.At)
			continue
		}
		p.Disposition = fateKinds[best]
		kept = append(kept, p)
	}
	return append([]Part{}, kept...)
}

// likeliestClass gives the class that some hints weigh most for, or the one that was told where it is
// not so much heavier. Class 0 has no weights; clue gives the place of the weight for any other.
func likeliestClass(row []hint, weights string, classes, was, ahead int, clue func(h hint, of int) clue) int {
	told, best, most := 0, 0, 0
	for of := 1; of < classes; of++ {
		sum := 0
		for _, h := range row {
			sum += int(int8(weights[clue(h, of)]))
		}
		if of == was {
			told = sum
		}
		if sum > most {
			best, most = of, sum
		}
	}
	if most-told < ahead {
		return was
	}
	return best
}

// fateHints gives all signs of what becomes of a part.
func (r *reading) fateHints(row []hint, parts []Part, i, at int, sorted []int) []hint {
	p := &parts[i]
	it := item{kind: p.Disposition, rule: p.Rule, name: p.Name, text: p.Name, quote: p.Quote, at: at, known: bitsOf(p.Count > 1, p.Side != "")}
	row = r.siftHints(row, &it, sorted)
	kind := wordClue(p.Disposition)
	both := func(s sign, value int) { row = append(row, hint{s, value}, hint{s, value + kind}) }
	head := lexicon.Singular(lastOf(p.Name))
	for k := range parts {
		if o := &parts[k]; k != i && lexicon.Singular(lastOf(o.Name)) == head {
			both(fateLike, wordClue(o.Disposition)+bit(k < i))
		}
	}
	n := 0
	for _, mi := range r.namedAt(head) {
		m := &r.mentions[mi]
		if n++; n > 16 {
			break
		}
		sgn := fateLater
		if m.lo < at {
			sgn = fateBefore
		}
		if m.entry != nil {
			st, _ := m.entry.state()
			both(fateLeft, stateOf(st))
		}
		c := &r.clauses[m.cl]
		for _, ai := range c.acts {
			both(sgn, wordClue(r.acts[ai].action.Name)+bit(r.acts[ai].happened()))
		}
		both(fateWord, bitsOf(m.isNew, m.isOld, m.plural))
		for k := max(c.lo, m.from-4); k < min(c.hi, m.hi+6); k++ {
			row = append(row, hint{fateWord, r.wordClueAt(k) + int(sgn)})
		}
	}
	return row
}

// lastOf gives the last word of a name.
func lastOf(name string) string { return name[strings.LastIndexByte(name, ' ')+1:] }
