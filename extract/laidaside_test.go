package extract

import (
	"strings"
	"testing"
)

// TestLaidAside: what came off and is put out of the way is still off.
func TestLaidAside(t *testing.T) {
	for _, c := range []struct{ talk, want string }{
		{"Caliper comes off, and hang it on that bungee.", "caliper removed"},
		{"The belt rolls off. Hang it on the nail.", "belt removed"},
		{"Spring off, and I put it on the paper.", "spring removed"},
		{"Shims out. I put them on a nail so they stay in order.", "shims removed"},
		{"Wheel off, and that's going on the back seat.", "wheel removed"},
		{"Two cover bolts out. They go in me pocket.", "cover bolts removed"},
		{"The cover comes away, and I lay it on a bit of carpet.", "cover removed"},
		// where it goes on
		{"Bearing off, put it on the new shaft.", "bearing refitted"},
		{"Cap off, and put it back on the tank.", "cap refitted"},
		{"Chain off. Oil on it. Put it on the sprocket.", "chain refitted"},
	} {
		rec := record(t, append([]string{"Right then."}, append(sentences(c.talk), "Now a bit of cleaning.")...)...)
		i := strings.LastIndexByte(c.want, ' ')
		if got := strings.Join(leftAs(rec, c.want[:i]), ", "); got != c.want[i+1:] {
			t.Errorf("%s\n\tgot %q, want %s", c.talk, got, c.want)
		}
	}
}
