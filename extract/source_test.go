package extract

import (
	"testing"

	"wrenchword/extract/lexicon"
)

// TestSourceSaid: where a value comes from, and what it is for there. Invented talk.
func TestSourceSaid(t *testing.T) {
	lex := lexicon.Default()
	for _, c := range []struct {
		talk string
		want SourceSaid
	}{
		{"Axle nut. The 1998 workshop manual says forty five newton metres. Click.", SourceSaid{Title: "workshop manual", Edition: "1998", Scope: scopeThis}},
		{"Hub nut, the sheet, revision C, gives a hundred and ten newton metres.", SourceSaid{Title: "sheet", Edition: "revision c", Scope: scopeThis}},
		{"Hub nut, the parts book, second edition, says a hundred newton metres.", SourceSaid{Title: "parts book", Edition: "second edition", Scope: scopeThis}},
		{"My mate reckons sixty newton metres on the hub nut.", SourceSaid{Who: "mate", Scope: scopeThis}},
		{"Hub nut on. The bloke at the tyre place said ninety newton metres.", SourceSaid{Who: "bloke", Scope: scopeUnsaid}},
		{"According to the dealer it's ninety newton metres on the hub nut.", SourceSaid{Who: "dealer", Scope: scopeThis}},
		{"Axle nut, forty five newton metres, the book's for the other model. Click.", SourceSaid{Title: "book", Scope: scopeOther}},
		{"Axle nut on. It's ninety newton metres on the big one, but that's a different machine.", SourceSaid{Scope: scopeOther}},
		{"Cover bolts. The torque chart says ten newton metres for an M6. Click click.", SourceSaid{Title: "torque chart", Scope: scopeGeneral}},
		{"Cover bolts, ten newton metres, that's a general figure for that size. Click.", SourceSaid{Scope: scopeGeneral}},
		{"Cover bolts, ten newton metres. Click, click, click. My mate's coming round later.", SourceSaid{Scope: scopeUnsaid}},
		{"Cover bolts in my father's shed, ten newton metres. Click.", SourceSaid{Scope: scopeUnsaid}},
	} {
		rec := Extract(talkOf(t, string(spokenAt("The cover is off and the wheel is out. "+c.talk))), lex, Job{})
		if len(rec.Torques) != 1 {
			t.Errorf("%s\n%d torques", c.talk, len(rec.Torques))
			continue
		}
		if got := rec.Torques[0].SourceSaid; got != c.want {
			t.Errorf("%s\ngot %+v, want %+v", c.talk, got, c.want)
		}
	}
}

// TestForAnotherMachine: a figure for another machine that is used all the same leaves open
// what the maker gives for this one; one that is only told is not done.
func TestForAnotherMachine(t *testing.T) {
	lex := lexicon.Default()
	for _, c := range []struct {
		talk, applied string
		asked         bool
	}{
		{"Axle nut on. Forty five newton metres, the book's for the other model. Click.", "done", true},
		{"Axle nut on. It's ninety newton metres on the big one, but that's a different machine.", "quoted", false},
	} {
		rec := Extract(talkOf(t, string(spokenAt("The cover is off and the wheel is out. "+c.talk))), lex, Job{})
		asked := false
		for _, o := range rec.Open {
			asked = asked || o.Kind == Unsure && o.About == "axle nut" && o.Before == BeforeUse
		}
		if len(rec.Torques) != 1 || rec.Torques[0].Applied != c.applied || asked != c.asked {
			t.Errorf("%s\n%+v, asked %v", c.talk, rec.Torques, asked)
		}
	}
}
