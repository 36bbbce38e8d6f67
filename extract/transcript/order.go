package transcript

import "sort"

// A file in which the times begin again holds more than one recording: from
// there on its cues are a run of their own, and are not mixed with those above.
const (
	restartDrop = 60 // seconds the times fall back
	restartCues = 4  // cues that must follow in order below the time reached before
)

// timeOrder gives the places of cues in the order in which they were spoken: by
// their starts, run by run. back is the first cue that starts before the one
// above it, again the first that starts a new run, -1 where there is none.
func timeOrder(cues []Cue) (order []int, back, again int) {
	order = make([]int, len(cues))
	back, again = -1, -1
	run, reached := 0, 0.0 // where the run starts, and the latest start in it
	sorted := true
	finish := func(to int) {
		if part := order[run:to]; !sorted {
			sort.SliceStable(part, func(a, b int) bool { return cues[part[a]].Start < cues[part[b]].Start })
		}
		run, sorted = to, true
	}
	for i := range cues {
		order[i] = i
		switch start := cues[i].Start; {
		case i == run || start >= cues[i-1].Start:
		case startsAgain(cues[i:], reached):
			if again < 0 {
				again = i
			}
			finish(i)
			reached = 0
		default:
			if back < 0 {
				back = i
			}
			sorted = false
		}
		reached = max(reached, cues[i].Start)
	}
	finish(len(cues))
	return order, back, again
}

func startsAgain(cues []Cue, reached float64) bool {
	if len(cues) < restartCues || reached-cues[0].Start < restartDrop {
		return false
	}
	for i := 1; i < restartCues; i++ {
		if cues[i].Start < cues[i-1].Start || cues[i].Start >= reached {
			return false
		}
	}
	return true
}

// warnOfOrder says where the times of a file are out of order.
func (p *parser) warnOfOrder() {
	_, back, again := timeOrder(p.clip.Cues)
	if back >= 0 {
		p.warn(p.clip.Cues[back].Line, "the times run back here; the cues are taken in the order of their times")
	}
	if again >= 0 {
		p.warn(p.clip.Cues[again].Line, "the times begin again here; if this is another recording, give it as a file of its own")
	}
}
