package extract

import (
	"flag"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

var fitStops = flag.Bool("fit-stops", false, "fit the weights of stops on the talk in testdata/talk and write them to stops.bin")

// A gapHeard is a gap between two words of talk that has its stops: what tells of it, and what ends there.
type gapHeard struct {
	keys          []uint64
	before, after uint8 // the tags of the words beside it
	ends          uint8
}

// gapsHeard gives the gaps of a talk that has its stops, each with what would tell of it
// if there were none after it.
func gapsHeard(t testing.TB, path string, lex *lexicon.Lexicon) []gapHeard {
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	clip, err := transcript.Read("talk.txt", []byte("[0:01] "+strings.Join(strings.Fields(string(data)), " ")), transcript.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r := &reading{talk: transcript.Join(clip), lex: lex}
	r.tokens()
	n := len(r.toks)
	ends := make([]uint8, n)
	for i := range r.toks {
		ends[i] = min(r.toks[i].brk, brkSentence)
		r.toks[i].brk = brkNone
	}
	r.runs()
	g := r.gapsOf(0, n)
	var s since
	s.hear(&g, 0, brkSentence)
	var out []gapHeard
	for i := 1; i < n; i++ {
		out = append(out, gapHeard{g.keys(nil, i, &s), g.tags[i+1], g.tags[i+2], ends[i-1]})
		s.hear(&g, i, ends[i-1])
	}
	return out
}

// talksWithStops gives the talk to fit on and, every eighth, the talk that is kept from it.
func talksWithStops(t testing.TB) (fitted, kept [][]gapHeard) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("testdata/talk/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatal("no talk in testdata/talk")
	}
	for k, f := range files {
		if k%8 == 7 {
			kept = append(kept, gapsHeard(t, f, lex))
		} else if *fitStops {
			fitted = append(fitted, gapsHeard(t, f, lex))
		}
	}
	return fitted, kept
}

// rare is how often a key is to be seen to have a weight.
const rare = 5

// fit gives the weights that tell best what ends in each gap: logistic regression by
// stochastic gradient descent, with a step of its own for each weight.
func fit(heard [][]gapHeard) map[uint64][2]int8 {
	type gap struct {
		at   []int
		ends uint8
	}
	seen := map[uint64]int{}
	for _, talk := range heard {
		for _, h := range talk {
			for _, k := range h.keys {
				seen[k]++
			}
		}
	}
	index := map[uint64]int{}
	var all []gap
	for _, talk := range heard {
		for _, h := range talk {
			g := gap{ends: h.ends}
			for _, k := range h.keys {
				if seen[k] < rare {
					continue
				}
				if _, ok := index[k]; !ok {
					index[k] = len(index)
				}
				g.at = append(g.at, index[k])
			}
			all = append(all, g)
		}
	}
	weight, square := make([][2]float64, len(index)), make([][2]float64, len(index))
	random := rand.New(rand.NewPCG(7, 7))
	for range 8 {
		random.Shuffle(len(all), func(a, b int) { all[a], all[b] = all[b], all[a] })
		for _, g := range all {
			var z [2]float64 // of a comma and of a stop, that of none being 0
			for _, n := range g.at {
				z[0] += weight[n][0]
				z[1] += weight[n][1]
			}
			top := max(0, z[0], z[1])
			e := [2]float64{math.Exp(z[0] - top), math.Exp(z[1] - top)}
			for c, what := range []uint8{brkComma, brkSentence} {
				off := e[c] / (math.Exp(-top) + e[0] + e[1])
				if g.ends == what {
					off--
				}
				for _, n := range g.at {
					d := off + 0.002*weight[n][c] // held small
					square[n][c] += d * d
					weight[n][c] -= 0.2 * d / math.Sqrt(1+square[n][c])
				}
			}
		}
	}
	out := map[uint64][2]int8{}
	for k, n := range index {
		var w [2]int8
		for c := range w {
			if x := weight[n][c]; math.Abs(x) > 0.2 { // less tells next to nothing
				w[c] = int8(math.Round(max(-127, min(127, x*scaled))))
			}
		}
		if w != [2]int8{} {
			out[k] = w
		}
	}
	return out
}

// neverBetween gives the pairs of tags that are seen often and end something in less than
// one of fifty.
func neverBetween(heard [][]gapHeard) (never [32]uint32) {
	var all, ended [32][32]int
	for _, talk := range heard {
		for _, h := range talk {
			all[h.before][h.after]++
			if h.ends > brkNone {
				ended[h.before][h.after]++
			}
		}
	}
	for p := range all {
		for q, n := range all[p] {
			if n >= 60 && ended[p][q]*50 < n {
				never[p] |= 1 << q
			}
		}
	}
	return never
}

// TestStops shows what the weights are worth on talk that they were not fitted on: how
// much of what they put in is there, and how much of what is there they put in.
func TestStops(t *testing.T) {
	fitted, kept := talksWithStops(t)
	if *fitStops {
		of := fit(fitted)
		table := stopTableOf(neverBetween(fitted), of)
		if err := os.WriteFile("stops.bin", table, 0o644); err != nil {
			t.Fatal(err)
		}
		t.Logf("stops.bin: %d weights, fitted on %d talks; build again to have them read", len(of), len(fitted))
		stopWeights = string(table)
	}
	for _, of := range []struct {
		what            string
		counts          func(brk uint8) bool
		precise, recall float64
	}{
		{"anything", func(brk uint8) bool { return brk > brkNone }, 0.78, 0.74},
		{"a stop", func(brk uint8) bool { return brk == brkSentence }, 0.58, 0.40},
	} {
		var right, put, there float64
		for _, talk := range kept {
			for _, h := range talk {
				is := of.counts(h.ends)
				table := stopTable(stopWeights)
				took := !table.never(h.before, h.after) && of.counts(ends(table.sum(h.keys)))
				if took {
					put++
				}
				if is {
					there++
				}
				if is && took {
					right++
				}
			}
		}
		t.Logf("%s: %.3f of those put in are there, %.3f of those there are put in (%.0f)", of.what, right/put, right/there, there)
		if right/put < of.precise || right/there < of.recall {
			t.Errorf("%s: less than %.2f and %.2f", of.what, of.precise, of.recall)
		}
	}
}

// TestStopTable: what is put into a table is found in it, and nothing else.
func TestStopTable(t *testing.T) {
	of := map[uint64][2]int8{}
	random := rand.New(rand.NewPCG(1, 2))
	for range 5000 {
		of[random.Uint64()] = [2]int8{int8(random.IntN(255) - 127), int8(1 + random.IntN(126))}
	}
	table := stopTable(stopTableOf([32]uint32{3: 1 << 17}, of))
	if !table.never(3, 17) || table.never(3, 16) || table.never(17, 3) {
		t.Error("the pairs of tags are read wrong")
	}
	wrong := 0
	for k, w := range of {
		if c, s := table.weights(k); c != int(w[0]) || s != int(w[1]) {
			wrong++
		}
	}
	for range 5000 {
		if c, s := table.weights(random.Uint64()); c != 0 || s != 0 {
			wrong++
		}
	}
	if wrong > 5 { // half of a key is its mark: one in some ten thousand is taken for another
		t.Errorf("%d of 10000 keys read wrong", wrong)
	}
}

// TestStopsPutBack: what is said without stops is cut where its speaker would have ended
// a sentence, and where it has its stops, or is one name or one size, it is left as it is.
func TestStopsPutBack(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ talk, want string }{
		{"run the nut up till it touches you mustn't tighten it yet", "run the nut up till it touches | you mustn't tighten it yet"},
		{"start the bolts by hand don't you dare put a wrench on them", "start the bolts by hand | don't you dare put a wrench on them"},
		{"wheel off caliper off disc off clean it up disc on caliper on", "wheel off | caliper off | disc off | clean it up | disc on | caliper on"},
		{"guard off four clips wipe it out guard on four clips that's that", "guard off | four clips | wipe it out | guard on | four clips | that's that"},
		{"that's half your howl so chuck it and now the next one", "that's half your howl | so chuck it | and now the next one"},
		{"so it's a 9 16 on the head", "so it's a 9 16 on the head"},
		{"now before you touch that belt take a picture", "now before you touch that belt | take a picture"},
		{"never lift the flywheel on your own guard back on top nut on", "never lift the flywheel on your own | guard back on | top nut on"},
		{"seat off battery out old battery in the bin", "seat off | battery out | old battery in the bin"},
		{"the sump plug goes in forty newton metres", "the sump plug goes in | forty newton metres"},
		{"studs in all six thirty-five newton metres", "studs in | all six | thirty-five newton metres"},
		{"off it comes new rotor on line up the holes", "off it comes | new rotor on | line up the holes"},
		{"nip the union up gone", "nip the union up | gone"},
		{"never let it hang off the loom", "never let it hang off the loom"},
		{"six screws hold the plate down", "six screws hold the plate down"},
		{"don't reach under anything that's only on a sling", "don't reach under anything that's only on a sling"},
		{"lever on off a few times", "lever on off a few times"},
		{"mind the arm it's under tension", "mind the arm | it's under tension"},
		{"leave the pinch bolt loose for now", "leave the pinch bolt loose for now"},
		{"jack the old rim off the bead", "jack the old rim off the bead"},
		{"lid on top of the box", "lid on top of the box"},
		{"Right. Cover off then the screws and it comes away in your hand.", "Right. | Cover off then the screws and it comes away in your hand."},
	} {
		clip, err := transcript.Read("talk.txt", []byte("[0:01] "+c.talk), transcript.Options{})
		if err != nil {
			t.Fatal(err)
		}
		r := &reading{talk: transcript.Join(clip), lex: lex}
		r.tokens()
		r.stops(stopTable(stopWeights))
		var b strings.Builder
		for i := range r.toks {
			if w := r.talk.Words[r.toks[i].w]; i == 0 || r.toks[i-1].w != r.toks[i].w {
				b.WriteString(r.talk.Text[w.Lo:w.Hi])
				switch {
				case i+1 == len(r.toks):
				case r.toks[i].brk >= brkComma:
					b.WriteString(" | ")
				default:
					b.WriteString(" ")
				}
			}
		}
		if got := strings.TrimSpace(b.String()); got != c.want {
			t.Errorf("%s\n got %s\nwant %s", c.talk, got, c.want)
		}
	}
}
