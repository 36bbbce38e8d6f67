package normalize

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"
)

//go:embed data/threads.csv
var threadsCSV string

//go:embed data/chains.csv
var chainsCSV string

// table reads an embedded CSV file into rows by column name. The tables are
// part of the program, so a fault in one is a fault of the build.
func table(name, src string) []map[string]string {
	r := csv.NewReader(strings.NewReader(src))
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		panic(fmt.Sprintf("%s: %v, %d rows", name, err, len(rows)))
	}
	out := make([]map[string]string, 0, len(rows)-1)
	for _, row := range rows[1:] {
		m := make(map[string]string, len(row))
		for i, h := range rows[0] {
			m[h] = row[i]
		}
		out = append(out, m)
	}
	return out
}

// unifiedNames are the unified threads of the table, "1/4-20", "#10-32".
var unifiedNames = sync.OnceValue(func() map[string]bool {
	m := map[string]bool{}
	for _, t := range threads() {
		if t.TPI > 0 {
			m[t.Name] = true
		}
	}
	return m
})

// chainNumbers are the designations of the chain table.
var chainNumbers = sync.OnceValue(func() map[string]bool {
	m := map[string]bool{}
	for _, c := range chains() {
		m[c.Designation] = true
	}
	return m
})

// thread is one row of the thread table.
type thread struct {
	Name   string
	Series string
	Pitch  float64 // mm
	TPI    float64 // threads an inch, 0 for metric
	Major  float64 // mm
	Area   float64 // stress area, mm2
	Source string
}

var threads = sync.OnceValue(func() []thread {
	var out []thread
	for _, row := range table("threads.csv", threadsCSV) {
		t := thread{Name: row["thread"], Series: row["series"], Source: row["source"]}
		t.Pitch, _ = strconv.ParseFloat(row["pitch_mm"], 64)
		t.TPI, _ = strconv.ParseFloat(row["tpi"], 64)
		t.Major, _ = strconv.ParseFloat(row["major_mm"], 64)
		t.Area, _ = strconv.ParseFloat(row["area_mm2"], 64)
		if t.TPI > 0 {
			t.Pitch = 25.4 / t.TPI
		}
		if t.Area == 0 { // ISO 898-1 stress area
			t.Area = math.Pi / 4 * math.Pow(t.Major-0.9382*t.Pitch, 2)
		}
		out = append(out, t)
	}
	return out
})
