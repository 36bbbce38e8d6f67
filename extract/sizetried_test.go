package extract

import "testing"

// Sizes that are tried and things that are counted are no torque.
func TestSizeTried(t *testing.T) {
	for _, c := range [][2]string{
		{"Rack bolts, six newton metres. Then a locknut of eighteen, and a jam nut of, where is it, fourteen. No, thirteen. Fourteen is too wide for the flats. Slacken the jam nut.", "rack bolts 6 done"},
		{"Rail bolts, twenty newton metres. Then the pivot nut. Thirteen. No, too big. Twelve. Undo it.", "rail bolts 20 done"},
		{"Rail bolts, twenty newton metres. Rollers out. Count them. Nine. And nine on the other side. Pivot nut off.", "rail bolts 20 done"},
		{"Rail bolts. The card says twenty newton metres, that's too much. So I go fifteen with the torque wrench. Click.", "rail bolts 20 quoted; rail bolts 15 done"},
	} {
		if got := toldValues(t, c[0]); got != c[1] {
			t.Errorf("%s\n\tgot %s", c[0], got)
		}
	}
}

// Of a value in doubt the step tells what was set in the end.
func TestSetInstead(t *testing.T) {
	got := stepsOfTalk(t, "Bracket on, two bolts. It's around nine newton metres, could be ten, but I gave it nine. Lid on.")
	if want := "Fit the bracket. Fit the two bracket bolts. Tighten the bracket bolts to 9 N·m. Fit the lid."; got != want {
		t.Errorf("got %s", got)
	}
}
