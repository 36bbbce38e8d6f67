package extract

import "testing"

// TestStoriesAreSetAside: what was done to another machine at another time leaves no
// trace in the record. Invented talk.
func TestStoriesAreSetAside(t *testing.T) {
	work := []string{"Right, so the cover comes off, four bolts.", "The belt's shot, so that's in the bin."}
	for _, story := range []string{
		"I had a vacuum pump off a milking shed on this bench, the winter of the flood. I took the end plate off, slid all four vanes out, new vanes in, put the plate back on, and I did it up to thirty foot pounds. And it cracked clean across. Thirty foot pounds.",
		"A mate of mine did that on a big trailer, two of the bolts at fifty newton metres and the casing like a broken plate.",
		"I had that apart on the kitchen floor on Easter Sunday, took out eleven screws and a hose clip.",
		"When I worked on the boats we had one of these in, and we torqued the flange to ninety newton metres and it leaked.",
	} {
		rec := record(t, append(append([]string{}, work...), append(sentences(story), "Anyway. New belt on.", "Cover back on with its four bolts.")...)...)
		if n := len(rec.Torques); n > 0 {
			t.Errorf("%s\n\t%d values, the first %v of %s", story, n, rec.Torques[0].NM, rec.Torques[0].Fastener)
		}
		for _, e := range rec.Ledger {
			switch e.Item {
			case "cover", "cover bolts", "belt":
			default:
				t.Errorf("%s\n\tgot %s %s", story, e.Item, e.State)
			}
		}
	}
	// what was done to this machine, before the camera ran, is work
	rec := record(t, "I did the tray last night, so that's already off, six screws.", "The drain plug I did up to thirty newton metres yesterday.")
	if len(rec.Torques) != 1 {
		t.Errorf("work done off camera: %d values, want 1", len(rec.Torques))
	}
}
