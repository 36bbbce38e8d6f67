package workdoc

import (
	"testing"

	"wrenchword/extract"
)

// TestLeftShowsDoubt proves that a state nobody said in so many words is told
// with that doubt, and that a thing without a name is called what it was called.
func TestLeftShowsDoubt(t *testing.T) {
	for _, c := range []struct {
		e                  extract.Entry
		left, more, called string
	}{
		{extract.Entry{Item: "cover", Kind: "part", State: extract.Refitted}, "back on", "", "cover"},
		{extract.Entry{Item: "cover bolts", Kind: "fastener", State: extract.Refitted}, "back on, tightness not said", "", "cover bolts"},
		{extract.Entry{Item: "cover", Kind: "part", State: extract.Refitted, Inferred: "it was named in its turn"},
			"back on, not said in so many words", "doubt: it was named in its turn", "cover"},
		{extract.Entry{Item: "bolts", Unnamed: true, Kind: "fastener", State: extract.HandTight, StoredAt: "jam lid"}, "hand-tight", "put: jam lid", "bolts (of what was not said)"},
		{extract.Entry{Item: "cover bolts", Kind: "fastener", State: extract.Torqued, NamedAfter: "cover"},
			"tightened to a value that was not said", "name: taken from the cover that the talk was about", "cover bolts"},
	} {
		if got := Left(c.e); got != c.left {
			t.Errorf("%+v: left %q, want %q", c.e, got, c.left)
		}
		if got := More(c.e); got != c.more {
			t.Errorf("%+v: more %q, want %q", c.e, got, c.more)
		}
		if got := Called(c.e); got != c.called {
			t.Errorf("%+v: called %q, want %q", c.e, got, c.called)
		}
	}
}
