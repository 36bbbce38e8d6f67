package normalize

import (
	"strings"
	"testing"
)

var fuzzSeeds = []string{
	"twenty two foot pounds which is thirty newton meters", "forty, no, sorry, fifty five newton metres", "an M ten by one point two five by thirty",
	"three ate inch drive", "7 8 ths socket", "M8x1.25 x 30 mm", "1-1/4\" and 0.015\"", "½ turn", "#10-32", "between 20 Nm and 25 Nm",
	"an inch and a quarter", "one hundred and three and two thirds", "point point point", "- - 5", "a a a half half", "12 mm | 13 mm",
	"-5 °C to 10 °C", "1,234,567.5 k", "T25 torx 25 tee 25", "m m m 8 by by x x", "999999999999999999999 newton metres", "6' 2\"",
	"no no no sorry 5 sorry no 6 Nm", "\xff\xfe12\x80 mm", "١٢ mm", "12mm–14mm", "thirty second sixty fourths", "five hundred mils of fork oil",
}

// FuzzQuantities holds the law of both readers: spans lie in the text, in order and
// apart, low is not above high.
func FuzzQuantities(f *testing.F) {
	for _, s := range fuzzSeeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		end := 0
		for _, q := range Quantities(text) {
			if q.Start < end || q.End <= q.Start || q.End > len(text) {
				t.Fatalf("%q: span %d:%d after %d", text, q.Start, q.End, end)
			}
			end = q.End
			if q.Low != nil && q.Low.Cmp(q.High) > 0 && !q.Alt {
				t.Fatalf("%q: low %v above high %v", text, q.Low, q.High)
			}
			if q.Canonical == "" || strings.ContainsAny(q.Canonical, "\n") {
				t.Fatalf("%q: canonical %q", text, q.Canonical)
			}
			q.SI()
			sameAgain(t, q)
		}
	})
}

func FuzzNumbers(f *testing.F) {
	for _, s := range fuzzSeeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		end := 0
		for _, n := range Numbers(text) {
			if n.Start < end || n.End <= n.Start || n.End > len(text) {
				t.Fatalf("%q: span %d:%d after %d", text, n.Start, n.End, end)
			}
			end = n.End
			if n.Low == nil || n.High == nil || n.Low.Cmp(n.High) > 0 {
				t.Fatalf("%q: %v to %v", text, n.Low, n.High)
			}
		}
	})
}

// sameAgain reads a canonical form again and wants the same value and unit. The
// kind may differ where words around told it (a size from a length), and chain
// and tooth counts need their context.
func sameAgain(t *testing.T, q Quantity) {
	t.Helper()
	text := q.Canonical
	switch q.Kind {
	case Chain:
		text += " chain"
	case Teeth:
		text += " of the gear"
	case Duration:
		text = "wait " + text
	case Thread:
		text += " thread"
	case Driver:
		text += " bit"
	case Angle, Temperature:
		if q.Unit == "deg" {
			return
		}
	}
	again := Quantities(text)
	if len(again) != 1 {
		t.Fatalf("%q read again as %d quantities: %v", text, len(again), again)
	}
	a := again[0]
	if q.Low != nil && (a.Low == nil || a.Low.Cmp(q.Low) != 0 || a.High.Cmp(q.High) != 0) || a.Unit != q.Unit {
		t.Fatalf("%q read again as %q (%v to %v %s, was %v to %v %s)", text, a.Canonical, a.Low, a.High, a.Unit, q.Low, q.High, q.Unit)
	}
}
