package extract

import (
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// unitsJudged gives the talk in which more than one unit of torque is said and of which it was
// judged which one its values without a unit are in: the lines "unit" of NAME.judged hold the first token of each
// value and its unit, more than one where the talk leaves that open.
func unitsJudged(t *testing.T) []judgedTalk {
	return judgedTalks(t, "unit", func(j *judgedTalk, tok int, units string) {
		j.want[tok] = [][]string{strings.Split(units, "/")}
	})
}

// TestUnits judges which units the values in the judged talk are given that were said without
// one.
func TestUnits(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	right, wrong, doubted := 0, 0, 0
	for _, j := range unitsJudged(t) {
		r := read(j.talk, lex)
		for i := range r.qtys {
			q := &r.qtys[i]
			want, ok := j.want[q.lo]
			switch {
			case !ok || q.unitFrom == "":
			case slices.Contains(want[0], q.Unit):
				right++
			default:
				wrong++
				t.Logf("%s %d: %s, want %v", j.name, q.lo, q.Canonical, want[0])
			}
			if ok && q.unitOr != "" {
				doubted++
			}
		}
	}
	t.Logf("%d right, %d wrong, %d in doubt", right, wrong, doubted)
	if all := right + wrong; right*100 < all*95 || doubted*100 > all*8 {
		t.Errorf("of %d values %d have the right unit and %d are in doubt: want 95 in 100, and no more than 8 in doubt", all, right, doubted)
	}
}

func TestUnitOfNumber(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ talk, want string }{
		// the unit that the number was said in
		{"The lid bolts are eighty five inch pounds. The stand bolts get thirty foot pounds. Lid bolts again, eighty five, click.", "85 lbf.in"},
		{"The card gives twenty four foot pounds for the yoke bolts, which is thirty three newton metres. So I set the wrench to thirty three. Click.", "33 N.m"},
		{"The yoke bolts. Card says twenty four foot pounds, that is thirty three newton metres. Right, twenty four, click.", "24 lbf.ft"},
		// what lies near
		{"Hub nut. The old book says 12 kilogram metres, that is about 118 newton metres. I gave it 100, click.", "100 N.m"},
		{"Gland nut. The plate says 4.5 kilogram metres. It is 45, roughly. I put 40 on it.", "45 N.m 40 N.m"},
		{"Gland nut. The plate says 4.5 kilogram metres. So four and a half it is, click.", "4.5 kgf.m"},
		// what it comes to
		{"The rail bolts get sixteen newton metres, and my small wrench is all inch pounds, so that's a hundred and forty two. Click.", "142 lbf.in"},
		{"The lugs. Says fifty foot pounds on the sticker, which is about sixty eight. Click.", "68 N.m"},
		{"Gland nut. The plate says 2.5 kilogram metres. I put 25 on it.", "25 N.m"},
		// said by itself
		{"Stand bolts, thirty five foot pounds. Now the little wrench, this one is inch pounds. Cover screws, fifty.", "50 lbf.in"},
		// the last one, where nothing else speaks
		{"Stand bolts, thirty five foot pounds. Arm bolts, forty.", "40 lbf.ft"},
		{"Motor bolts, nine newton metres. Rail bolts, eleven, all four of them.", "11 N.m"},
	} {
		r := read(talkOf(t, string(spokenAt(c.talk))), lex)
		var got []string
		for i := range r.qtys {
			if q := &r.qtys[i]; q.Kind == normalize.Torque && q.unitFrom != "" {
				got = append(got, q.Canonical)
			}
		}
		if have := strings.Join(got, " "); have != c.want {
			t.Errorf("%s\n\thave %s, want %s", c.talk, have, c.want)
		}
	}
}

func TestUnitInDoubt(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	for talk, doubted := range map[string]bool{
		"Stand bolts, thirty five foot pounds. Arm bolts, forty. Click.":                                                                                                    false,
		"The wheel got eighty foot pounds. The cap screws got sixty inch pounds. Now the stand, the M16 bolts. The tag says ninety. Click. Click.":                          true,
		"Foot bolts. The book says fifty foot pounds, and the sticker says seventy newton metres. Then the arm. I gave the arm bolts sixty. Click.":                         true,
		"Gland nut. The plate says 2.5 kilogram metres. I put 20 on it.":                                                                                                    true,
		"Foot bolts, fifty newton metres, click. Arm bolts, sixty, click. Rail bolts, ten, click.":                                                                          false,
		"Foot bolts. The book says fifty foot pounds, and the sticker says seventy newton metres. I have gone with the sticker. Seventy on the first. Seventy on the rest.": false,
	} {
		r := read(talkOf(t, string(spokenAt(talk))), lex)
		got := slices.ContainsFunc(r.qtys, func(q quantity) bool { return q.unitOr != "" })
		if got != doubted {
			t.Errorf("%s\n\tin doubt: %v", talk, got)
		}
	}
}
