package normalize

import (
	"encoding/csv"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// TestTablesAgainstReference sets the embedded tables beside the published
// readings of reference/*.csv (sources there, row by row). Where readings
// disagree, a row counts as met when the table has its value from any standard
// of the same kind; the ones that are met by none are listed and may be 3 percent.
func TestTablesAgainstReference(t *testing.T) {
	share := func(what string, met, all int, misses []string) {
		t.Logf("%s: %d of %d", what, met, all)
		if all < 20 || float64(met) < 0.97*float64(all) {
			t.Errorf("%s: %d of %d rows met:\n%s", what, met, all, strings.Join(misses, "\n"))
		}
	}
	bare := regexp.MustCompile(`x[\d.]+$`)
	var misses []string
	met, all := 0, 0
	for _, r := range readRows(t, "reference/hex_keys.csv", ',') {
		if strings.Contains(r["note"], "PRINTED ERROR") || strings.Contains(r["note"], "DISAGREES") {
			continue
		}
		all++
		size := r["size"]
		switch r["unit"] {
		case "T number":
			size = "T" + strings.TrimPrefix(size, "T")
		default:
			size += " " + r["unit"]
		}
		head := ""
		if strings.HasPrefix(r["screw_type"], "set screw") {
			head = "set"
		}
		th := bare.ReplaceAllString(r["thread"], "")
		if KeyThreads(size, head)[th] != "" {
			met++
		} else {
			misses = append(misses, th+" "+r["screw_type"]+" "+size)
		}
	}
	share("keys", met, all, misses)

	misses, met, all = nil, 0, 0
	for _, r := range readRows(t, "reference/hex_heads.csv", ',') {
		if strings.Contains(r["item"], "square") || strings.Contains(r["note"], "PRINTED ERROR") {
			continue
		}
		all++
		th := bare.ReplaceAllString(r["thread"], "")
		if FlatsThreads(r["across_flats"] + " " + r["unit"])[th] != "" {
			met++
		} else {
			misses = append(misses, th+" "+r["standard"]+" "+r["across_flats"])
		}
	}
	share("heads", met, all, misses)

	misses, met, all = nil, 0, 0
	for _, r := range readRows(t, "reference/threads.csv", ',') {
		want, err := strconv.ParseFloat(r["stress_area"], 64)
		if err != nil {
			continue
		}
		if r["area_unit"] == "in2" {
			want *= 645.16
		}
		all++
		if ts := Threads(r["thread"]); len(ts) == 1 && math.Abs(ts[0].Area-want) < 0.01*want {
			met++
		} else {
			misses = append(misses, r["thread"])
		}
	}
	share("stress areas", met, all, misses)

	misses, met, all = nil, 0, 0
	kinds := map[string]Kind{"hex key": Size, "hexalobular internal": Driver, "hexalobular external": Driver, "square drive": Drive,
		"width across flats": Size, "socket sold": Size, "inch wrench opening": Size}
	for _, r := range readRows(t, "reference/standard_sizes.csv", ',') {
		k, ok := kinds[r["kind"]]
		if !ok || k == Drive && r["unit"] != "in" || strings.Contains(r["exists_as"], "obsolete") {
			continue
		}
		if strings.HasPrefix(r["exists_as"], "absent from ISO 2936") {
			continue // no key, but a socket of that size may be on sale
		}
		all++
		missing := len(CheckSize(r["designation"], k)) > 0
		if missing == strings.HasPrefix(r["exists_as"], "absent from both") {
			met++
		} else {
			misses = append(misses, r["kind"]+" "+r["designation"]+" ("+r["exists_as"]+")")
		}
	}
	share("sizes", met, all, misses)

	misses, met, all = nil, 0, 0
	for _, r := range readRows(t, "reference/strength.csv", ',') {
		if strings.Contains(r["note"], "PRINTED ERROR") || r["proof_stress"] == "" {
			continue
		}
		want, _ := strconv.ParseFloat(r["proof_stress"], 64)
		switch r["unit"] {
		case "psi":
			want *= 0.00689475729
		case "ksi":
			want *= 6.89475729
		}
		d := 12.0
		if regexp.MustCompile(`> 16|17 to|16 to 72`).MatchString(r["size_range"]) {
			d = 20
		}
		if regexp.MustCompile(`over 3/4|0\.875 to`).MatchString(r["size_range"]) {
			d = 25
		}
		if regexp.MustCompile(`over 1 to|1\.125`).MatchString(r["size_range"]) {
			d = 30
		}
		all++
		if mpa, _, _, ok := ProofStress(r["grade"], d); ok && math.Abs(mpa-want) < 0.01*want {
			met++
		} else {
			misses = append(misses, r["grade"]+" "+r["size_range"])
		}
	}
	share("proof stresses", met, all, misses)
}

func TestChains(t *testing.T) {
	met, all := 0, 0
	for _, r := range readRows(t, "reference/chains.csv", ',') {
		want, err := strconv.ParseFloat(r["pitch_mm"], 64)
		if err != nil {
			continue
		}
		all++
		if c, ok := FindChain(r["designation"]); ok && math.Abs(c.Pitch-want) < 0.011 {
			met++
		} else {
			t.Logf("%s: %v, reference %v", r["designation"], c.Pitch, want)
		}
	}
	if all < 30 || met < all-1 {
		t.Errorf("%d of %d pitches met", met, all)
	}
	for _, c := range []struct{ a, b, want string }{
		{"520", "520", ""}, {"520", "525", "does-not-fit"}, {"530", "50", ""}, {"428", "520", "does-not-fit"}, {"999", "520", "nothing-to-check"},
	} {
		if got := findings(CheckChain(c.a, c.b)); got != c.want {
			t.Errorf("%s on %s: %q, want %q", c.a, c.b, got, c.want)
		}
	}
}

func TestParseValue(t *testing.T) {
	for _, c := range []struct {
		s    string
		kind Kind
		want string // value and unit, or "" for an error
	}{
		{"45 N.m", Torque, "45 N.m"}, {"45Nm", Torque, "45 N.m"}, {"40 lbf.ft", Torque, "40 lbf.ft"}, {"40 foot pounds", Torque, "40 lbf.ft"}, {"3/8 in", Length, "3/8 in"},
		{"1-1/4 in", Length, "5/4 in"}, {"1 1/4\"", Length, "5/4 in"}, {"0.5 m", Length, "1/2 m"}, {"100 km/h", Speed, "100 km/h"}, {"6 kgf.m", Torque, "6 kgf.m"},
		{"", Torque, ""}, {"45", Torque, ""}, {"4,5 N.m", Torque, ""}, {"0 N.m", Torque, ""}, {"-3 N.m", Torque, ""}, {"1e9 N.m", Torque, ""}, {"9999999 N.m", Torque, ""},
		{"abc", Torque, ""}, {"45 mm", Torque, ""}, {"45 pounds", Torque, ""}, {"0x10 mm", Length, ""}, {"1_000 mm", Length, ""}, {"1/0 in", Length, ""}, {"4..5 mm", Length, ""},
		{"1/2/3 mm", Length, ""}, {strings.Repeat("9", 100) + " mm", Length, ""},
	} {
		v, u, err := ParseValue(c.s, c.kind)
		got := ""
		if err == nil {
			got = v.RatString() + " " + u
		}
		if got != c.want {
			t.Errorf("%q: got %q (%v), want %q", c.s, got, err, c.want)
		}
	}
}

// TestUnitsReadAgain: a value written with the sign of its unit, as the record
// writes it, is read back, for every unit that needs no context.
func TestUnitsReadAgain(t *testing.T) {
	r := csv.NewReader(strings.NewReader(unitsCSV))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		code, kind := row[1], row[2]
		if kind == "duration" || kind == "chain" || kind == "tooth count" {
			continue
		}
		if q := Quantities("5 " + code); len(q) != 1 || q[0].Unit != code {
			t.Errorf("5 %s is read as %v", code, q)
		}
	}
}
