package workdoc_test

import (
	"math/big"
	"regexp"
	"strings"
	"testing"

	"wrenchword/extract"
	"wrenchword/normalize"
)

var (
	clock   = regexp.MustCompile(`(?:clip \d+, )?≈?\d+(?::\d\d)+`)
	figures = regexp.MustCompile(`\d+(?:\.\d+)?(?:[-/]\d+)*(?:/\d+)?`)
)

// heardNumbers are all numbers that were said, as figures or as words, with the
// counts that words of pairs and singles give.
func heardNumbers(talk string) map[string]bool {
	out := map[string]bool{"1": true, "2": true} // "the", "a", "both", "other"
	add := func(s string) {
		for _, f := range figures.FindAllString(s, -1) {
			for _, part := range append(strings.Split(f, "-"), strings.FieldsFunc(f, func(r rune) bool { return r == '-' || r == '/' })...) {
				if r, ok := new(big.Rat).SetString(part); ok {
					out[r.RatString()] = true
				}
			}
		}
	}
	add(talk)
	for _, n := range normalize.Numbers(talk) {
		out[n.Low.RatString()], out[n.High.RatString()] = true, true
	}
	for _, q := range normalize.Quantities(talk) {
		add(q.Canonical)
		if q.Kind == normalize.Angle && q.Low != nil {
			if deg, ok := normalize.Convert(q.Low, q.Unit, "deg"); ok {
				out[deg.RatString()] = true
			}
		}
	}
	return out
}

// TestEveryNumberWasHeard: each figure in a document stands in a quote, or its
// line or cell says that it was computed. Times, step numbers, and what is
// counted by the tool itself are the frame, and no claims about the machine.
func TestEveryNumberWasHeard(t *testing.T) {
	list, err := clips()
	if err != nil {
		t.Fatal(err)
	}
	checked := 0
	for _, clip := range list {
		rec := recordOf(clip.Cues, clip)
		heard := map[string]bool{}
		rec.Each(func(_, _ string, p extract.Place) {
			for n := range heardNumbers(p.Quote) {
				heard[n] = true
			}
		})
		bad := 0
		for _, l := range visibleLines(draw(t, rec)) {
			m := refPattern.FindStringSubmatch(l)
			if m == nil || isFrame(m[1]) || strings.HasPrefix(m[1], "usual-") {
				continue
			}
			l = clock.ReplaceAllString(refPattern.ReplaceAllString(l, ""), "")
			l = regexp.MustCompile(`^- \[ \] \d+\. `).ReplaceAllString(l, "")
			l = strings.NewReplacer(`\`, "", "×", " ").Replace(l)
			parts := strings.Split(l, "|")
			if !strings.HasPrefix(l, "|") {
				parts = []string{l}
			} else if isRow(l, m[1]) { // the columns of converted values: each value is marked by itself
				parts = append(append(parts[:6:6], strings.Split(parts[6]+";"+parts[7], ";")...), parts[8:]...)
			}
			for _, cell := range parts {
				if strings.Contains(cell, "computed") {
					continue
				}
				for _, f := range figures.FindAllString(cell, -1) {
					for _, part := range strings.Split(f, "-") {
						r, ok := new(big.Rat).SetString(part)
						checked++
						if ok && !heard[r.RatString()] {
							bad++
							if bad <= 3 {
								t.Errorf("%s: %s was not heard and is not marked as computed: %q", clip.Name, part, strings.TrimSpace(cell))
							}
						}
					}
				}
			}
		}
	}
	if checked < 10*len(list) {
		t.Errorf("only %d figures were looked at", checked)
	}
}
