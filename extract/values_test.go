package extract

import (
	"slices"
	"testing"

	"wrenchword/extract/lexicon"
)

// TestWhoseValue judges which fasteners the values in the judged talk go to: NAME.val holds the
// first token of each value and the names that its fastener may have, "-" where it is for none.
func TestWhoseValue(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	talks := judgedTalks(t, ".val", func(j *judgedTalk, tok int, names string) {
		j.want[tok] = [][]string{}
		if names != "-" {
			j.want[tok] = namesOf(names)
		}
	})
	right, wrong, missed := 0, 0, 0
	for _, j := range talks {
		r := read(j.talk, lex)
		r.refer()
		for i := range r.heard {
			h := &r.heard[i]
			want, ok := j.want[r.qtys[h.qty].lo]
			switch {
			case !ok:
			case h.of == nil && len(want) > 0:
				missed++
			case h.of == nil:
				right++ // nothing's
			case namedAs(h.of.name, want) == 1, namedAs(h.of.name, want) == 0 && slices.ContainsFunc(want, func(n []string) bool { return n[len(n)-1] == h.of.head }):
				right++
			default:
				wrong++
			}
		}
	}
	t.Logf("%d to what they are for, %d to another, %d to nothing", right, wrong, missed)
	if all := right + wrong + missed; right*100 < all*62 {
		t.Errorf("of %d values %d go to what they are for: want 62 in 100", all, right)
	}
}
