package extract

import (
	"testing"

	"wrenchword/extract/lexicon"
)

// TestDetails: what is said of a thing beside how it was left. Invented talk.
func TestDetails(t *testing.T) {
	lex := lexicon.Default()
	for _, c := range []struct{ talk, item, field, want string }{
		{"Split pin out. Castle nut off. Hub off. Hub back on. Castle nut up by hand. New split pin through, legs bent over.", "split pin", "lock", "renewed"},
		{"Split pin out. Castle nut off. Hub off. Hub back on. Castle nut up by hand. Same split pin through, legs bent over.", "split pin", "lock", "reused"},
		{"Nut's on. Split pin in, legs bent over.", "split pin", "lock", ""},
		{"Old gasket off. Clean the face. New gasket on. Cover back on.", "gasket", "replaced by", "a new one"},
		{"Old gasket off. In the bin. New gasket's here in the bag, that goes on tomorrow.", "gasket", "replaced by", ""},
		{"Four cover bolts out. Cover off. Cover on. The cover bolts, I'm using the same ones again, all four in.", "cover bolts", "replaced by", ""},
		{"Drain plug out. Drain plug back in, new copper washer on it.", "drain plug", "washers", "new copper washer on it"},
		{"Pivot bolt in. A plain washer under the head. Nut on.", "pivot bolt", "washers", "a plain washer under the head"},
		{"Old seal out. New seal in, hollow side to the oil. Tapped home.", "seal", "way round", "hollow side to the oil"},
		{"Old seal out. New seal in, lip facing out. Circlip in.", "seal", "way round", "lip facing out"},
		{"Cover bolts on, and rock it side to side. Good.", "guard cover bolts", "way round", ""},
		{"Lever spring off, that goes in the egg box. Lever off.", "lever spring", "put", "egg box"},
	} {
		rec := Extract(talkOf(t, string(spokenAt("The guard is off and the wheel is out. "+c.talk))), lex, Job{})
		got, found := "", false
		for i := range rec.Ledger {
			if e := &rec.Ledger[i]; e.Item == c.item {
				found = true
				switch c.field {
				case "lock":
					got = e.Lock.State
				case "replaced by":
					got = e.ReplacedBy
				case "washers":
					got = e.Washers
				case "way round":
					got = e.Orientation
				case "put":
					got = e.StoredAt
				}
			}
		}
		if !found || got != c.want {
			t.Errorf("%s\n%s of %s: %q, want %q", c.talk, c.field, c.item, got, c.want)
		}
	}
}

// TestMannerOfTightening: the order in which a value is set, and what it holds for. Invented talk.
func TestMannerOfTightening(t *testing.T) {
	lex := lexicon.Default()
	for _, c := range []struct{ talk, order, condition string }{
		{"Six cover bolts in. In a star, twelve newton metres.", "in a star", ""},
		{"Six cover bolts in. Twelve newton metres, corner to corner.", "corner to corner", ""},
		{"Six cover bolts in. Twelve newton metres from the middle out.", "from the middle out", ""},
		{"Six cover bolts in. The threads are dry. Twelve newton metres.", "", "dry threads"},
		{"Six cover bolts in. Drop of oil on the threads. Twelve newton metres.", "", "oil on the threads"},
		{"Six cover bolts in. No oil on the threads. Twelve newton metres.", "", ""},
		{"Six cover bolts in. Twelve newton metres. The floor's dry at last.", "", ""},
	} {
		rec := Extract(talkOf(t, string(spokenAt("The guard is off and the wheel is out. "+c.talk))), lex, Job{})
		if len(rec.Torques) != 1 || rec.Torques[0].Order != c.order || rec.Torques[0].Condition != c.condition {
			t.Errorf("%s\n%+v, want %q, %q", c.talk, rec.Torques, c.order, c.condition)
		}
	}
}
