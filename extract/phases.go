package extract

import "math"

// phases are how a job moves, in that order.
var phases = [...]string{"preparing", "taking apart", "fitting", "tightening", "checking"}

// phaseOf tells of which phase an act is; one that has none is of any.
var phaseOf = map[string]string{
	"support": "preparing",
	"remove":  "taking apart", "disconnect": "taking apart", "slacken": "taking apart", "drain": "taking apart", "cut": "taking apart", "discard": "taking apart",
	"fit": "fitting", "start by hand": "fitting", "replace": "fitting", "fill": "fitting", "lubricate": "fitting",
	"lock": "tightening", "tighten": "tightening", "torque": "tightening",
	"test": "checking", "bleed": "checking",
}

// misplaced is what it costs that a step of one phase stands among those of another, and
// goesOver what it costs to go from one to another: who fits a wheel takes a rag off it too, and
// tightens a nut here and there, but a job goes from phase to phase.
var (
	misplaced = [len(phases)][len(phases)]float64{
		{0, 0.5, 0.5, 0.5, 0.5},
		{2, 0, 1.2, 1.2, 1.2},
		{2, 1, 0, 0.8, 1},
		{2, 1, 0.8, 0, 0.8},
		{2, 0.6, 0.8, 0.8, 0},
	}
	goesOver = [len(phases)][len(phases)]float64{
		{0, 0.5, 0.5, 1, 1},
		{9, 0, 1.1, 1.4, 1.4},
		{9, 1.4, 0, 0.8, 0.8},
		{9, 1.4, 1, 0, 0.8},
		{9, 1.4, 1.4, 1.4, 0},
	}
)

// settlePhases gives each step the phase that the job is in, where it has that of its act: the
// cheapest way through the phases.
func settlePhases(steps []Step) {
	of := map[string]int{}
	for i, p := range phases {
		of[p] = i
	}
	from := make([][len(phases)]int, len(steps))
	var cost [len(phases)]float64
	for i := range steps {
		var next [len(phases)]float64
		for p := range phases {
			next[p] = math.Inf(1)
			for q := range phases {
				if c := cost[q] + goesOver[q][p]; i == 0 && q == p {
					next[p] = 0
				} else if i > 0 && c < next[p] {
					next[p], from[i][p] = c, q
				}
			}
			if is, ok := of[steps[i].Phase]; ok {
				next[p] += misplaced[is][p]
			}
		}
		cost = next
	}
	p := 0
	for q := range phases {
		if cost[q] < cost[p] {
			p = q
		}
	}
	for i := len(steps) - 1; i >= 0; i-- {
		steps[i].Phase = phases[p]
		p = from[i][p]
	}
}
