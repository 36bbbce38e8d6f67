package transcript

import (
	"sort"
	"strings"
)

// A file in which the times begin again holds more than one recording: from
// there on its cues are a run of their own, and are not mixed with those above.
const (
	restartDrop = 60 // seconds the times fall back
	restartCues = 4  // cues that must follow in order below the time reached before
)

// rollBack is how many seconds a rolling cue may start before the one whose last line it
// shows again: where two people talk at once, captions overlap.
const rollBack = 3

// timeOrder gives the places of cues in the order in which they were spoken: by
// their starts, run by run; a cue that rolls on from the one above it stays below it.
// back is the first cue that starts before the one above it all the same, again the
// first that starts a new run, -1 where there is none.
func timeOrder(cues []Cue) (order []int, back, again int) {
	order = make([]int, len(cues))
	back, again = -1, -1
	run, reached := 0, 0.0 // where the run starts, and the latest start in it
	sorted := true
	held := map[int]float64{} // the starts of cues that stay below the one above them
	at := func(i int) float64 {
		if t, ok := held[i]; ok {
			return t
		}
		return cues[i].Start
	}
	finish := func(to int) {
		if part := order[run:to]; !sorted {
			sort.SliceStable(part, func(a, b int) bool { return at(part[a]) < at(part[b]) })
		}
		run, sorted = to, true
	}
	for i := range cues {
		order[i] = i
		switch start := cues[i].Start; {
		case i == run || start >= cues[i-1].Start:
			if i > run && start < at(i-1) {
				held[i] = at(i - 1)
			}
		case at(i-1)-start < rollBack && rollsOn(cues[i-1].Text, cues[i].Text):
			held[i] = at(i - 1)
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

// rollsOn tells whether a cue begins with the last line of the one above it and goes on.
func rollsOn(above, text string) bool {
	line, rest, more := strings.Cut(text, "\n")
	line = strings.TrimSpace(line)
	return more && line != "" && strings.TrimSpace(rest) != "" && strings.TrimSpace(above[strings.LastIndexByte(strings.TrimRight(above, " \n"), '\n')+1:]) == line
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
