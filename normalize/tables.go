package normalize

import (
	_ "embed"
	"math"
	"strconv"
	"strings"
	"sync"
)

//go:embed data/keys.csv
var keysCSV string

//go:embed data/heads.csv
var headsCSV string

//go:embed data/sizes.csv
var sizesCSV string

//go:embed data/strength.csv
var strengthCSV string

//go:embed data/friction.csv
var frictionCSV string

// keyRow says which key or driver a screw of a thread and head style takes.
type keyRow struct{ thread, head, size, source string }

var keyRows = sync.OnceValue(func() []keyRow {
	var out []keyRow
	for r := range table("keys.csv", keysCSV) {
		out = append(out, keyRow{r.get("thread"), r.get("head"), r.get("size"), r.get("source")})
	}
	return out
})

// headRow says which width across flats a head or nut of a thread has.
type headRow struct{ thread, family, size, source string }

var headRows = sync.OnceValue(func() []headRow {
	var out []headRow
	for r := range table("heads.csv", headsCSV) {
		out = append(out, headRow{r.get("thread"), r.get("family"), r.get("size"), r.get("source")})
	}
	return out
})

// sizeRow is one size that exists.
type sizeRow struct{ kind, size, source string }

var sizeRows = sync.OnceValue(func() []sizeRow {
	var out []sizeRow
	for r := range table("sizes.csv", sizesCSV) {
		out = append(out, sizeRow{r.get("kind"), r.get("size"), r.get("source")})
	}
	return out
})

// strength is the stress a property class is held to: proof stress, or the 0.2
// percent strain limit where a standard has no proof stress.
type strength struct {
	class, standard, what string
	dMin, dMax            float64 // mm, dMin exclusive
	mpa                   float64
	source                string
}

var strengths = sync.OnceValue(func() []strength {
	var out []strength
	for r := range table("strength.csv", strengthCSV) {
		out = append(out, strength{class: r.get("class"), standard: r.get("standard"), what: r.get("limit_is"),
			dMin: number(r.get("d_min_mm")), dMax: number(r.get("d_max_mm")), mpa: number(r.get("limit_mpa")), source: r.get("source")})
	}
	return out
})

// friction is the range of K in T = K F d for a stated condition.
type friction struct {
	condition string
	words     []string
	low, high float64
	source    string
}

var frictions = sync.OnceValue(func() []friction {
	var out []friction
	for r := range table("friction.csv", frictionCSV) {
		f := friction{condition: r.get("condition"), low: number(r.get("k_low")), high: number(r.get("k_high")), source: r.get("source")}
		if r.get("words") != "" {
			f.words = strings.Split(r.get("words"), "|")
		}
		out = append(out, f)
	}
	return out
})

// number reads a figure of an embedded table; a bad one is a fault of the build.
func number(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic(err)
	}
	return v
}

// frictionFor finds the range of K for a condition in words; "mu 0.14" is worked
// out by VDI 2230 for the thread.
func frictionFor(condition string, t thread) friction {
	c := strings.ToLower(condition)
	if i := strings.Index(c, "mu "); i >= 0 {
		if f := strings.Fields(c[i+3:]); len(f) > 0 {
			if mu, err := strconv.ParseFloat(f[0], 64); err == nil && mu > 0 && mu < 1 {
				k := NutFactor(t.Major, t.Pitch, mu)
				return friction{condition: condition, low: k, high: k, source: "VDI 2230 from the friction coefficient (formula from memory)"}
			}
		}
	}
	for _, f := range frictions()[1:] { // coatings stand before lubricants in the table
		for _, w := range f.words {
			if i := strings.Index(c, w); i >= 0 && !strings.HasPrefix(c[i+len(w):], "-free") && !strings.HasSuffix(c[:i], "no ") {
				return f
			}
		}
	}
	return frictions()[0]
}

// NutFactor is K in T = K F d of a screw of diameter d and pitch p in mm with
// one friction coefficient mu in thread and under the head: VDI 2230,
// T = F (0.159 P + 0.578 d2 mu + Dkm mu / 2), with Dkm taken as 1.3 d (formula
// from memory).
func NutFactor(d, p, mu float64) float64 {
	d2 := d - 0.6495*p
	return (0.159*p + 0.578*d2*mu + 1.3*d*mu/2) / d
}

// findThreads returns the table's threads of a designation: "M8", "M8x1.25",
// "M8 x 30 mm", "1/4-20"; "1/4" and "#10" stand for every series of that size.
// A metric pitch that is in no table gets its stress area by ISO 898-1.
func findThreads(name string) []thread {
	name = strings.TrimSpace(name)
	if i := strings.Index(name, " x "); i >= 0 {
		name = name[:i]
	}
	name = strings.TrimSuffix(strings.TrimSuffix(name, " in"), "\"")
	var out []thread
	for _, t := range threads() {
		coarse := t.Series == "coarse" && t.Name+"x"+strconv.FormatFloat(t.Pitch, 'g', -1, 64) == name
		if strings.EqualFold(t.Name, name) || coarse {
			return []thread{t}
		}
		if t.TPI > 0 && strings.HasPrefix(t.Name, name+"-") && strings.Count(t.Name, "-") == strings.Count(name, "-")+1 {
			out = append(out, t)
		}
	}
	if len(out) > 0 {
		return out
	}
	if d, p, ok := strings.Cut(strings.TrimPrefix(name, "M"), "x"); ok && strings.HasPrefix(name, "M") {
		df, err1 := strconv.ParseFloat(d, 64)
		pf, err2 := strconv.ParseFloat(p, 64)
		if err1 == nil && err2 == nil && df >= 1 && df <= 200 && pf > 0 && pf <= df/3 {
			return []thread{{Name: name, Series: "fine", Pitch: pf, Major: df,
				Area: math.Pi / 4 * math.Pow(df-0.9382*pf, 2), Source: "ISO 898-1 stress area formula"}}
		}
	}
	return nil
}

// byKey returns the coarse threads whose screws take a key, driver or recess,
// for a head style ("cap", "button", "countersunk", "low cap", "set", "pan"; ""
// for any but set screws), with the standard of each.
func byKey(size, head string) map[string]string {
	out := map[string]string{}
	for _, r := range keyRows() {
		if r.size == size && (r.head == head || head == "" && r.head != "set") {
			if out[r.thread] == "" {
				out[r.thread] = r.source + " " + r.head + " head"
			}
		}
	}
	return out
}

// byFlats returns the threads whose heads or nuts have a width across flats.
func byFlats(size string) map[string]string {
	out := map[string]string{}
	for _, r := range headRows() {
		if r.size == size && out[r.thread] == "" {
			out[r.thread] = r.source
		}
	}
	return out
}
