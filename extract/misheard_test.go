package extract

import (
	"strings"
	"testing"
)

// TestHeardWrong has trade words as recognisers write them, kept under their right names, and
// everyday words that sound the same.
func TestHeardWrong(t *testing.T) {
	for _, x := range []struct{ talk, left string }{
		{"The oh ring out. New oh ring in.", "o ring"},
		{"Take the caliber off. Bleed nipple off.", "caliper, bleed nipple"},
		{"Wheel off. Clever spin out.", "wheel, clevis pin"},
		{"Pull the caught her pin.", "cotter pin"},
		{"Undo the grubs crew.", "grub screw"},
		{"Take the sea clip off.", "c clip"},
		{"Undo the you bolts. You bolt it down.", "u bolts"},
		{"Undo the jam not. Undo the gland not.", "jam nut, gland nut"},
		{"Take the break shoes off. It'll break the line.", "brake shoes"},
		{"Take the inner raise out of the bearing.", "inner race"},
		{"Take the boat off the trailer. I didn't raise it.", ""},
		{"It'll break. I'm not going to jam it, not today.", ""},
	} {
		var left []string
		for _, e := range record(t, sentences(x.talk)...).Ledger {
			left = append(left, e.Item)
		}
		if got := strings.Join(left, ", "); got != x.left {
			t.Errorf("%s\n\tgot %q, want %q", x.talk, got, x.left)
		}
	}
}
