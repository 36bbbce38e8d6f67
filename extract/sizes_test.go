package extract

import (
	"slices"
	"strings"
	"testing"
)

// TestSizesAndWhatTurnsThem proves what counts as a size, what it is the size of,
// and which tool a size said alone stands for. That hexagon keys have the small
// sizes and heads the large ones is common practice, no source.
func TestSizesAndWhatTurnsThem(t *testing.T) {
	for _, c := range []struct {
		talk  string
		sizes []string
		tools []string
	}{
		{"Undo the two bar nuts. Nineteen. No. Thirteen.", []string{"bar nuts 13 mm"}, []string{"spanner 13 mm"}},
		{"Undo the cap screw, five mil.", []string{"cap screw 5 mm"}, []string{"hex key 5 mm"}},
		{"Undo the nut, it's a five mil nut.", []string{"nut 5 mm"}, []string{"spanner 5 mm"}},
		{"There's a nut under it that holds the wire on. Thirteen.", []string{"wire nut 13 mm"}, []string{"spanner 13 mm"}},
		{"Undo the cover bolts, quarter inch ratchet with a ten on it.", []string{"ratchet 1/4 in", "cover bolts 10 mm"}, []string{"ratchet 1/4 in", "socket 10 mm"}},
		{"Undo the lid screws with a cross head screwdriver, a number two.", []string{"lid screws PH2"}, []string{"cross head screwdriver PH2"}},
		{"Motor hood is five Phillips, number two. Undo the screws.", []string{"motor hood PH2"}, []string{"phillips PH2"}},
		{"Undo the hinge nut, nineteen on the nut.", []string{"hinge nut 19 mm"}, []string{"spanner 19 mm"}},
		{"Undo the four bolts. One. Two. Three. Four.", nil, nil},
		{"Undo the arm bolt with the 3.8 ratchet.", []string{"ratchet 3/8 in"}, []string{"ratchet 3/8 in"}},
		{"Ten on the bracket bolt, thirteen on the mount bolt. Undo them.", []string{"bracket bolt 10 mm", "mount bolt 13 mm"}, []string{"spanner 10 mm", "spanner 13 mm"}},
		{"Undo the screws, they're quarter inch hex heads.", []string{"screw 1/4 in"}, []string{"spanner 1/4 in"}},
		{"Undo the blade bolt, fifteen sixteenths socket on the long bar.", []string{"blade bolt 15/16 in"}, []string{"socket 15/16 in", "long bar "}},
		{"Undo the cover screws, T30s.", []string{"cover screws T30"}, []string{"torx bit T30"}},
		{"Undo the motor bolts, they're M8, thirteen mil, on a long T bar.", []string{"motor bolts M8", "motor bolts 13 mm"}, []string{"spanner 13 mm", "long t bar "}},
		{"Undo the clevis pin. It's a sixteen mil pin.", []string{"clevis pin 16 mm"}, nil},
		{"You need sockets, eight, ten, thirteen and eighteen. Undo the cover bolts.", []string{"socket 8 mm", "socket 10 mm", "socket 13 mm", "socket 18 mm"}, []string{"socket 8 mm", "socket 10 mm", "socket 13 mm", "socket 18 mm"}},
		{"I'm going from a fifty to a forty. Undo the stem bolts.", nil, nil},
		{"The cover's off, five T15s, and the gasket tore. Undo the gear.", []string{"cover T15"}, []string{"torx bit T15"}},
		{"Undo the cover. It's a seventeen nut.", []string{"cover nut 17 mm"}, []string{"spanner 17 mm"}},
		{"Undo the drop link nut, sixteen. Hold the pin.", []string{"drop link nut 16 mm"}, []string{"spanner 16 mm"}},
		{"Undo the gib screws with a two and a half Allen.", []string{"gib screws 2.5 mm"}, []string{"hex key 2.5 mm"}},
		{"Undo the panel screws, quarter inch hex, three of them.", []string{"panel screws 1/4 in"}, []string{"hex key 1/4 in"}},
		{"Tools. Spanners, a seventeen socket for the prop, could be a nineteen. Undo the prop.", []string{"prop 17 mm|19 mm"}, []string{"spanner ", "socket 17 mm"}},
	} {
		rec := record(t, c.talk)
		var sizes, tools []string
		for _, s := range rec.Sizes {
			sizes = append(sizes, s.Of+" "+strings.Join(s.Candidates, "|"))
		}
		for _, x := range rec.Tools {
			tools = append(tools, x.Name+" "+x.Size)
		}
		if !slices.Equal(sizes, c.sizes) {
			t.Errorf("%q: sizes %q, want %q", c.talk, sizes, c.sizes)
		}
		if !slices.Equal(tools, c.tools) {
			t.Errorf("%q: tools %q, want %q", c.talk, tools, c.tools)
		}
	}
}
