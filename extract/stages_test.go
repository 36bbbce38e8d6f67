package extract

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// TestStages has tightening in more than one go: each go is a value and a step of its
// own, and those of one fastener contradict nothing. That head bolts are tightened in
// goes is common practice, no source; the figures are invented.
func TestStages(t *testing.T) {
	for _, talk := range [][]string{
		{"Head bolts in by hand.", "Step one, fifteen newton metres.", "Step two, thirty.", "Step three, fifty.", "Click."},
		{"Head bolts in by hand.", "Three goes.", "First one's fifteen newton metres.", "Second one, thirty.", "Third one, fifty."},
		{"Head bolts in by hand.", "We go to fifteen newton metres, then thirty, then fifty on the last round."},
	} {
		rec := record(t, talk...)
		var got []float64
		for i, q := range rec.Torques {
			if got = append(got, q.Said.Low); q.Stage != i+1 {
				t.Errorf("%q: %v is told as stage %d, want %d", talk, q.Said.Low, q.Stage, i+1)
			}
			if !slices.ContainsFunc(rec.Steps, func(s Step) bool { return strings.Contains(s.Text, fmt.Sprintf("to %v N", q.Said.Low)) }) {
				t.Errorf("%q: no step tightens to %v", talk, q.Said.Low)
			}
		}
		if want := []float64{15, 30, 50}; !slices.Equal(got, want) {
			t.Errorf("%q: values %v, want %v", talk, got, want)
		}
		if slices.ContainsFunc(rec.Open, func(o Open) bool { return o.Kind == Conflict }) {
			t.Errorf("%q: the goes are taken for values that contradict each other", talk)
		}
	}
}

// TestValueTakenBack has values that the next words take back or doubt.
func TestValueTakenBack(t *testing.T) {
	for _, c := range []struct {
		talk    []string
		applied string
		hedged  bool
	}{
		{[]string{"Axle nut, forty five newton metres. No. Wait. That's the old model."}, "quoted", true},
		{[]string{"Axle nut, forty five newton metres. Hang on, is it? I think so."}, "done", true},
		{[]string{"Axle nut, forty five newton metres. No problem."}, "done", false},
	} {
		rec := record(t, c.talk...)
		if len(rec.Torques) != 1 {
			t.Errorf("%q: %d values, want 1", c.talk, len(rec.Torques))
			continue
		}
		if q := rec.Torques[0]; q.Applied != c.applied || q.Hedged != c.hedged {
			t.Errorf("%q: %s, doubted %v; want %s, %v", c.talk, q.Applied, q.Hedged, c.applied, c.hedged)
		}
		told := slices.ContainsFunc(rec.Steps, func(s Step) bool { return strings.Contains(s.Text, "45") })
		if told != (c.applied == "done") {
			t.Errorf("%q: told as a step: %v", c.talk, told)
		}
	}
}
