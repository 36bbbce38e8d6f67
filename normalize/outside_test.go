package normalize

import (
	"bufio"
	"encoding/csv"
	"encoding/json"
	"math/big"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// shared finds the folder of outside data and published values, or skips.
func shared(t testing.TB) string {
	t.Helper()
	if d := os.Getenv("WRENCHWORD_SHARED"); d != "" {
		return d
	}
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		d := filepath.Join(dir, "shared")
		if _, err := os.Stat(filepath.Join(d, "CONTRACT.md")); err == nil {
			return d
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Skip("no shared data folder above this one; set WRENCHWORD_SHARED to run this test")
		}
		dir = up
	}
}

func readJSON(t testing.TB, name string, v any) {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(shared(t), name))
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(b, v); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
}

func readRows(t testing.TB, name string, comma rune) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join(shared(t), name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(bufio.NewReader(f))
	r.Comma, r.Comment, r.LazyQuotes = comma, '#', comma == '\t'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	var out []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, h := range rows[0] {
			m[h] = row[i]
		}
		out = append(out, m)
	}
	if len(out) == 0 {
		t.Fatalf("%s: no rows", name)
	}
	return out
}

// TestLabelledUtterances: every labelled utterance, exact in value, unit, kind,
// canonical form and words, and nothing else found.
// Source: outside/quantities (own labels; see its SOURCE.md).
func TestLabelledUtterances(t *testing.T) {
	var cases []struct {
		ID, Family, Text string
		Quantities       []struct {
			Quote, Kind, Unit, Norm string
			NM                      []float64
			Length                  *float64 `json:"length_mm"`
		}
	}
	readJSON(t, "outside/quantities/quantities.json", &cases)
	if len(cases) < 100 {
		t.Fatalf("%d cases, want 100", len(cases))
	}
	for _, c := range cases {
		for _, text := range []string{c.Text, strings.ToLower(c.Text)} {
			got := Quantities(text)
			if len(got) != len(c.Quantities) {
				t.Errorf("%s %s %q: found %d quantities, want %d: %v", c.ID, c.Family, text, len(got), len(c.Quantities), got)
				continue
			}
			for i, w := range c.Quantities {
				q := got[i]
				said := text[q.Start:q.End]
				if q.Canonical != w.Norm || string(q.Kind) != w.Kind || !strings.EqualFold(said, w.Quote) || (w.Unit != "" && q.Unit != w.Unit) {
					t.Errorf("%s %s %q: got %s %q from %q, want %s %q from %q", c.ID, c.Family, text, q.Kind, q.Canonical, said, w.Kind, w.Norm, w.Quote)
				}
				for k, b := range []*big.Rat{q.Low, q.High}[:len(w.NM)] {
					nm, ok := ToNM(b, q.Unit)
					if want := strconv.FormatFloat(w.NM[k], 'f', 2, 64); !ok || nm.FloatString(2) != want {
						t.Errorf("%s %q: %v N.m, want %s", c.ID, text, nm, want)
					}
				}
				if w.Length != nil && (q.Length == nil || q.Length.Cmp(new(big.Rat).SetFloat64(*w.Length)) != 0) {
					t.Errorf("%s %q: length %v, want %v", c.ID, text, q.Length, *w.Length)
				}
			}
		}
	}
}

// TestSpelledNumbers reads the spellings of four spellers back, British and
// American: ICU 72.1, num2words 0.5.10, number-to-words 1.2.4.
func TestSpelledNumbers(t *testing.T) {
	check := func(file, value, words string) {
		want, ok := new(big.Rat).SetString(value)
		if !ok {
			t.Fatalf("%s: %q is no number", file, value)
		}
		got := Numbers(words)
		if len(got) != 1 || got[0].Low.Cmp(want) != 0 || got[0].High.Cmp(want) != 0 || got[0].Start != 0 || got[0].End != len(words) {
			t.Errorf("%s: %q: got %v, want %s", file, words, got, value)
		}
	}
	n := 0
	for _, file := range []string{"icu.tsv", "num2words-number-to-words.tsv"} {
		for _, row := range readRows(t, "outside/number-words/"+file, '\t') {
			check(file, row["n"], row["british"])
			check(file, row["n"], row["american"])
			n++
		}
	}
	for _, row := range readRows(t, "outside/number-words/icu-decimals.tsv", '\t') {
		check("icu-decimals.tsv", row["value"], row["words"])
		n++
	}
	for _, row := range readRows(t, "outside/number-words/icu-ordinals.tsv", '\t') {
		for _, w := range []string{row["american"], row["british"]} {
			for _, x := range Numbers("the " + w + " bolt") {
				if x.Low.RatString() == row["n"] {
					t.Errorf("ordinal %q read as %s", w, row["n"])
				}
			}
		}
		n++
	}
	t.Logf("%d rows", n)
}

// spell writes n below 100,000 in words, with or without the British "and".
func spell(n int, and bool) string {
	small := strings.Fields("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen")
	tens := strings.Fields("_ _ twenty thirty forty fifty sixty seventy eighty ninety")
	join := " "
	if and {
		join = " and "
	}
	switch {
	case n < 20:
		return small[n]
	case n < 100:
		if n%10 == 0 {
			return tens[n/10]
		}
		return tens[n/10] + "-" + small[n%10]
	case n < 1000:
		if n%100 == 0 {
			return small[n/100] + " hundred"
		}
		return small[n/100] + " hundred" + join + spell(n%100, and)
	}
	s := spell(n/1000, and) + " thousand"
	switch {
	case n%1000 == 0:
		return s
	case n%1000 < 100:
		return s + join + spell(n%1000, and)
	}
	return s + " " + spell(n%1000, and)
}

// TestEveryNumber reads each whole number below 100,000 back, spelled by the
// rules that TestSpelledNumbers' spellers follow, alone and with a unit.
func TestEveryNumber(t *testing.T) {
	for n := 0; n < 100_000; n++ {
		for _, and := range []bool{true, false} {
			words := spell(n, and)
			want := int64(n)
			if got := Numbers(words); len(got) != 1 || !got[0].Low.IsInt() || got[0].Low.Num().Int64() != want {
				t.Fatalf("%q: got %v, want %d", words, got, n)
			}
			if n%7 == 0 {
				if got := Quantities(words + " newton metres"); len(got) != 1 || got[0].Low.Num().Int64() != want || got[0].High.Cmp(got[0].Low) != 0 {
					t.Fatalf("%q newton metres: got %v, want %d", words, got, n)
				}
			}
		}
	}
}

// TestConversions against GNU Units 2.22 to nine significant digits.
func TestConversions(t *testing.T) {
	for i, row := range readRows(t, "outside/unit-conversions/conversions.tsv", '\t') {
		v, _ := new(big.Rat).SetString(row["value"])
		got, ok := Convert(v, row["from"], row["to"])
		if !ok {
			t.Errorf("row %d: no conversion from %s to %s", i, row["from"], row["to"])
			continue
		}
		f, _ := got.Float64()
		want, _ := strconv.ParseFloat(row["result"], 64)
		if strconv.FormatFloat(f, 'e', 8, 64) != strconv.FormatFloat(want, 'e', 8, 64) {
			t.Errorf("row %d: %s %s is %.12g %s, want %.12g", i, row["value"], row["from"], f, row["to"], want)
		}
		back, ok := Convert(got, row["to"], row["from"])
		if !ok || back.Cmp(v) != 0 {
			t.Errorf("row %d: there and back is %v, want %v", i, back, v)
		}
	}
}
