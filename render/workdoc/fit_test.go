package workdoc_test

import (
	"testing"

	"wrenchword/extract"
	"wrenchword/render/workdoc"
)

// TestFitTellsApart: a size that was heard, and a word of place, tell lines of
// like names apart; what nothing tells apart stays a doubt.
func TestFitTellsApart(t *testing.T) {
	rec := trike()
	rec.Sizes = []extract.Size{{Of: "axle nut", Dimension: "thread", Candidates: []string{"M10"}, Sure: true, Place: at(40, "axle nut off")}}
	for _, tt := range []struct {
		name, sheet, want string // the value taken for the axle nut, "" for none
		doubt             int
	}{
		{"the size heard", "axle nut,M10x1.25,45 N·m\naxle nut thin,M12,60 N·m\n", "45 N·m", 0},
		{"another size than heard", "axle nut cover,M12,60 N·m\n", "", 1},
		{"no size in the sheet", "axle nut,,45 N·m\n", "45 N·m", 0},
		{"two of one name", "axle nut front,,45 N·m\naxle nut rear,,50 N·m\n", "", 2},
	} {
		t.Run(tt.name, func(t *testing.T) {
			doc, err := workdoc.Read(draw(t, rec))
			if err != nil {
				t.Fatal(err)
			}
			s, err := workdoc.ReadSheet("s.csv", []byte("# title: shop sheet\nfastener,size,value\n"+tt.sheet))
			if err != nil {
				t.Fatal(err)
			}
			fits, _ := workdoc.Fit(doc, []workdoc.Sheet{s}, false)
			for _, f := range fits {
				if f.Row.Name != "axle nut" {
					continue
				}
				got := ""
				if len(f.Matches) > 0 {
					got = f.Matches[0].Line.Value
				}
				if got != tt.want || len(f.Doubt) != tt.doubt {
					t.Errorf("took %q with %d in doubt (%+v), want %q and %d", got, len(f.Doubt), f.Doubt, tt.want, tt.doubt)
				}
				return
			}
			t.Fatal("no row for the axle nut")
		})
	}
	// The upper and the lower of two are never one.
	rec.Torques[0].Fastener, rec.Ledger[0].Item = "upper axle nut", "upper axle nut"
	doc, err := workdoc.Read(draw(t, rec))
	if err != nil {
		t.Fatal(err)
	}
	s, err := workdoc.ReadSheet("s.csv", []byte("# title: shop sheet\nfastener,value\nlower axle nut,45 N·m\n"))
	if err != nil {
		t.Fatal(err)
	}
	fits, left := workdoc.Fit(doc, []workdoc.Sheet{s}, false)
	for _, f := range fits {
		if len(f.Matches)+len(f.Doubt) > 0 {
			t.Errorf("the lower nut's value is put to %q", f.Row.Name)
		}
	}
	if len(left) != 1 {
		t.Errorf("%d lines are left over, want the one", len(left))
	}
}
