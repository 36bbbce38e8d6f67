package normalize

import (
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"iter"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
)

//go:embed data/threads.csv
var threadsCSV string

//go:embed data/chains.csv
var chainsCSV string

// row is a row of an embedded table.
type row struct{ columns, cells []string }

// get returns what the row has in a column. There must be one of that name.
func (r row) get(column string) string { return r.cells[slices.Index(r.columns, column)] }

// table gives the rows of an embedded CSV file, each till the next is asked for. The tables
// are part of the program, so a fault in one is a fault of the build.
func table(name, src string) iter.Seq[row] {
	return func(yield func(row) bool) {
		in := csv.NewReader(strings.NewReader(src))
		columns, err := in.Read()
		in.ReuseRecord = true
		for err == nil {
			var cells []string
			if cells, err = in.Read(); err == nil && !yield(row{columns, cells}) {
				return
			}
		}
		if !errors.Is(err, io.EOF) {
			panic(fmt.Sprintf("%s: %v", name, err))
		}
	}
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
	for row := range table("threads.csv", threadsCSV) {
		t := thread{Name: row.get("thread"), Series: row.get("series"), Source: row.get("source")}
		t.Pitch, _ = strconv.ParseFloat(row.get("pitch_mm"), 64)
		t.TPI, _ = strconv.ParseFloat(row.get("tpi"), 64)
		t.Major, _ = strconv.ParseFloat(row.get("major_mm"), 64)
		t.Area, _ = strconv.ParseFloat(row.get("area_mm2"), 64)
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
