package extract

import "testing"

// TestNumbersOfOtherThings: a number that measures or counts something else is no torque.
// The property classes are those of ISO 898-1.
func TestNumbersOfOtherThings(t *testing.T) {
	for _, talk := range []string{
		"New capacitor on. It's twenty-five microfarads.",
		"Wheel nuts on. You just have to trust me on the other seven.",
		"Cog on. So that's the ratio fifty-one fifteen.",
		"New step bolts in, M8 ten-nine.",
		"Strut bolts in. They're twelve-nine.",
		"The spring is eighty-eight mil long. Rod nut on. I wind it in. Ninety-four, ninety, eighty-eight. That's it, eighty-eight.",
	} {
		rec := record(t, append([]string{"Cover bolts, twenty newton metres. Click."}, sentences(talk)...)...)
		if n := len(rec.Torques); n != 1 {
			t.Errorf("%s: %d torques, want 1: the last of %s", talk, n, rec.Torques[n-1].Fastener)
		}
	}
	for talk, want := range map[string]float64{
		"Head bolts in, thirty-five sounds right.":      35,
		"Head bolts in. Thirty-five holds them. Click.": 35,
	} {
		rec := record(t, append([]string{"Cover bolts, twenty newton metres. Click."}, sentences(talk)...)...)
		if n := len(rec.Torques); n != 2 || rec.Torques[1].Said.Low != want {
			t.Errorf("%s: %v", talk, rec.Torques)
		}
	}
}
