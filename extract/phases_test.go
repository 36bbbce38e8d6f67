package extract

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// TestPhases: a job goes from phase to phase, and a step or two of another do not make one.
// Common practice, no source.
func TestPhases(t *testing.T) {
	step := map[rune]string{'p': "preparing", 'a': "taking apart", 'f': "fitting", 't': "tightening", 'c': "checking", '-': ""}
	for _, c := range [][2]string{
		{"", ""},
		{"-", "preparing"},
		{"paaa", "preparing,taking apart,taking apart,taking apart"},
		{"aafaa", "taking apart,taking apart,taking apart,taking apart,taking apart"}, // the rag goes in the hole
		{"aaafffftttt", "taking apart*3,fitting*4,tightening*4"},
		{"fffftff", "fitting*7"}, // a nut is nipped on the way
		{"aaaaffffaaaaffff", "taking apart*4,fitting*4,taking apart*4,fitting*4"}, // two jobs
		{"aaffffttcc", "taking apart*2,fitting*4,tightening*2,checking*2"},
		{"aa-a-ff-f", "taking apart*5,fitting*4"},
		{"aaapaaa", "taking apart*7"}, // the stand is moved
	} {
		var steps []Step
		for _, l := range c[0] {
			steps = append(steps, Step{Phase: step[l]})
		}
		settlePhases(steps)
		var want, got []string
		for w := range strings.SplitSeq(c[1], ",") {
			name, times, _ := strings.Cut(w, "*")
			n, err := strconv.Atoi(times)
			if err != nil {
				n = 1
			}
			want = append(want, slices.Repeat([]string{name}, n)...)
		}
		for _, s := range steps {
			got = append(got, s.Phase)
		}
		if len(steps) > 0 && !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", c[0], got, want)
		}
	}
}

// TestPhasesCheapest: no other way through the phases costs less.
func TestPhasesCheapest(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	cost := func(acts, way []int) float64 {
		sum := 0.0
		for i, p := range way {
			if i > 0 {
				sum += goesOver[way[i-1]][p]
			}
			if acts[i] >= 0 {
				sum += misplaced[acts[i]][p]
			}
		}
		return sum
	}
	for range 300 {
		acts := make([]int, 5)
		steps := make([]Step, len(acts))
		for i := range acts {
			if acts[i] = random.IntN(len(phases)+1) - 1; acts[i] >= 0 {
				steps[i].Phase = phases[acts[i]]
			}
		}
		settlePhases(steps)
		way := make([]int, len(acts))
		for i, s := range steps {
			way[i] = slices.Index(phases[:], s.Phase)
		}
		got := cost(acts, way)
		for other := range 3125 { // 5 to the 5
			for i := range way {
				way[i] = other % len(phases)
				other /= len(phases)
			}
			if c := cost(acts, way); c < got-1e-9 {
				t.Fatalf("%v costs %g in %v: the way taken costs %g", acts, c, way, got)
			}
		}
	}
}
