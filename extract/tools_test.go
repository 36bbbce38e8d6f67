package extract

import "testing"

// Each tool as "need, size, name".
func TestToolNeeds(t *testing.T) {
	for _, c := range []struct {
		talk      string
		has, hasn []string
	}{
		// not used, and told so
		{"Undo the gland nut. Don't use a chisel on it.", []string{"not-needed  chisel"}, nil},
		{"The seal pulls out by hand. You want a soft mallet, not a club hammer.", []string{"required  soft mallet", "not-needed  club hammer"}, nil},
		{"Start the lid screws by hand, never with the drill.", []string{"not-needed  drill"}, nil},
		{"Undo the pulley nut. I haven't got a puller so it's two levers.", []string{"not-needed  puller"}, nil},
		{"No hammer. The drum pulls off by hand.", []string{"not-needed  hammer"}, nil},
		{"Don't use the hammer yet. Tap the pin out with the hammer.", []string{"required  hammer"}, []string{"not-needed  hammer"}},
		{"Don't drop the trolley jack. Undo the sump plug.", nil, []string{"not-needed  trolley jack"}},
		{"Undo the rocker bolts. I haven't got the torque wrench here.", nil, []string{"not-needed  torque wrench"}},
		{"Undo the bung. It's not in the tin.", nil, []string{"not-needed  tin"}},
		// optional: the one that is meant
		{"What you need is a scraper, a borescope if you have one, and a funnel. Undo the drain plug.", []string{"required  scraper", "optional  borescope", "required  funnel"}, nil},
		{"Hook the seal out with a pick or a spudger.", []string{"required  pick", "optional  spudger"}, nil},
		{"If you have a heat gun, warm the sleeve.", []string{"optional  heat gun"}, nil},
		// one tool by several names
		{"Undo the lid, six screws, with the cross head. Cross head again for the clip.", []string{"required  cross head screwdriver"}, []string{"required  cross head"}},
		{"Undo the cowl screws with a pozi. Same screwdriver for the grille.", []string{"required  pozi screwdriver"}, []string{"required  screwdriver"}},
		// a size and no tool
		{"Undo the fan bolts, they're thirteens, all four of them.", []string{"required 13 mm spanner or socket"}, []string{"required 13 mm spanner"}},
		// the wrench that is set
		{"Tighten the hub bolts with the little wrench, twelve newton metres.", []string{"required  torque wrench"}, nil},
		{"Hold the back nut with a wrench. Undo the guard bolt.", []string{"required  wrench"}, []string{"required  torque wrench"}},
		{"Hold the back nut with a wrench and the front one gets forty newton metres.", []string{"required  wrench"}, []string{"required  torque wrench"}},
		{"Loosen the pump bolts with the wrench. They go to forty newton metres.", nil, []string{"required  torque wrench"}},
		// put where it is used, and none at all
		{"Strap round the flywheel and hold it. Undo the nut.", []string{"required  strap"}, nil},
		{"Strap on the wall over there. Undo the nut.", nil, []string{"required  strap"}},
		{"Undo the valve nut. Stand back, it spits.", nil, []string{"required  stand"}},
		{"I need my glasses to read this. Undo the valve nut.", nil, []string{"required  glasses"}},
		{"I've got a tin of grease for the splines.", nil, []string{"required  tin"}},
	} {
		var got []string
		for _, x := range record(t, c.talk).Tools {
			got = append(got, x.Need+" "+x.Size+" "+x.Name)
		}
		wantTools(t, c.talk, got, c.has, c.hasn)
	}
}
