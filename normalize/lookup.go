package normalize

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"
)

// ThreadData is one thread of the tables, or one worked out by ISO 898-1.
type ThreadData struct {
	Name   string
	Major  float64 // mm
	Pitch  float64 // mm
	Area   float64 // stress area, mm2
	Source string
}

// Threads returns what a designation may stand for: one for "M8", "M10x1.25" or
// "1/4-20"; every series of the size for "1/4" or "#10"; none if unknown.
func Threads(designation string) []ThreadData {
	var out []ThreadData
	for _, t := range findThreads(designation) {
		out = append(out, ThreadData{t.Name, t.Major, t.Pitch, t.Area, t.Source})
	}
	return out
}

// ProofStress returns the stress in MPa that a property class is held to at a
// diameter in mm, what that stress is, and its source; ok is false for a class
// with no published strength.
func ProofStress(class string, d float64) (mpa float64, what, source string, ok bool) {
	s, ok := classStrength(class, d)
	return s.mpa, s.what, s.source, ok
}

// Friction returns the range of K in T = K F d for a condition in words ("dry",
// "oiled", "anti-seize", "mu 0.14"; "" for unstated) on a thread.
func Friction(condition string, t ThreadData) (low, high float64, source string) {
	f := frictionFor(condition, thread{Major: t.Major, Pitch: t.Pitch})
	return f.low, f.high, f.source
}

// KeyThreads returns the threads whose screws take a key or driver size for a
// head style ("" for any but set screws), with the standard of each.
func KeyThreads(size, head string) map[string]string { return byKey(size, headStyle(head)) }

// FlatsThreads returns the threads whose heads or nuts have a width across
// flats, with the standard of each. It says nothing of axle and hub nuts.
func FlatsThreads(size string) map[string]string { return byFlats(size) }

// ChainData is one chain size.
type ChainData struct {
	Designation string
	Pitch       float64 // mm
	InnerWidth  float64 // mm between the inner plates, 0 unknown
	Roller      float64 // mm, 0 unknown
	Source      string
}

var chains = sync.OnceValue(func() []ChainData {
	var out []ChainData
	for r := range table("chains.csv", chainsCSV) {
		c := ChainData{Designation: r.get("designation"), Source: r.get("source")}
		c.Pitch, _ = strconv.ParseFloat(r.get("pitch_mm"), 64)
		c.InnerWidth, _ = strconv.ParseFloat(r.get("inner_width_mm"), 64)
		c.Roller, _ = strconv.ParseFloat(r.get("roller_mm"), 64)
		out = append(out, c)
	}
	return out
})

// FindChain decodes a chain designation from the tables ("520", "50", "08B-1").
// One that is not in them is not guessed by the naming rule, which fails for
// 428 and 532.
func FindChain(designation string) (ChainData, bool) {
	d := strings.TrimPrefix(strings.TrimSpace(designation), "#")
	for _, c := range chains() {
		if strings.EqualFold(c.Designation, d) {
			return c, true
		}
	}
	return ChainData{}, false
}

// CheckChain says whether a chain fits sprockets of another designation: pitch,
// inner width and roller must all agree. Finding "does-not-fit", or
// "nothing-to-check" where one is in no table.
func CheckChain(chain, sprocket string) []Finding {
	a, ok1 := FindChain(chain)
	b, ok2 := FindChain(sprocket)
	if !ok1 || !ok2 {
		missing := chain
		if ok1 {
			missing = sprocket
		}
		return []Finding{{What: "nothing-to-check", Why: fmt.Sprintf("nothing to check against: %s is in no chain table", missing), Ask: "What is stamped on the chain and the sprockets?"}}
	}
	var differ []string
	note := func(what string, x, y float64) {
		if x > 0 && y > 0 && math.Abs(x-y) > 0.2 {
			differ = append(differ, fmt.Sprintf("%s %s against %s mm", what, trimFloat(x), trimFloat(y)))
		}
	}
	note("pitch", a.Pitch, b.Pitch)
	note("inner width", a.InnerWidth, b.InnerWidth)
	note("roller", a.Roller, b.Roller)
	if len(differ) == 0 {
		return nil
	}
	return []Finding{{What: "does-not-fit", Source: a.Source + "; " + b.Source,
		Why: fmt.Sprintf("a %s chain does not fit %s sprockets: %s", chain, sprocket, strings.Join(differ, ", ")),
		Ask: "Which chain size do both sprockets have?"}}
}
