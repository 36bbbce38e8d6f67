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
		{"Undo the two bar nuts. Nineteen. No. Thirteen.", []string{"bar nuts 13 mm"}, []string{"spanner or socket 13 mm"}},
		{"Undo the cap screw, five mil.", []string{"cap screw 5 mm"}, []string{"hex key 5 mm"}},
		{"Undo the nut, it's a five mil nut.", []string{"nut 5 mm"}, []string{"spanner or socket 5 mm"}},
		{"There's a nut under it that holds the wire on. Thirteen.", []string{"wire nut 13 mm"}, []string{"spanner or socket 13 mm"}},
		{"Undo the cover bolts, quarter inch ratchet with a ten on it.", []string{"ratchet 1/4 in", "cover bolts 10 mm"}, []string{"ratchet 1/4 in", "socket 10 mm"}},
		{"Undo the lid screws with a cross head screwdriver, a number two.", []string{"lid screws PH2"}, []string{"cross head screwdriver PH2"}},
		{"Motor hood is five Phillips, number two. Undo the screws.", []string{"motor hood PH2"}, []string{"phillips screwdriver PH2"}},
		{"Undo the hinge nut, nineteen on the nut.", []string{"hinge nut 19 mm"}, []string{"spanner or socket 19 mm"}},
		{"Undo the four bolts. One. Two. Three. Four.", nil, nil},
		{"Undo the arm bolt with the 3.8 ratchet.", []string{"ratchet 3/8 in"}, []string{"ratchet 3/8 in"}},
		{"Ten on the bracket bolt, thirteen on the mount bolt. Undo them.", []string{"bracket bolt 10 mm", "mount bolt 13 mm"}, []string{"spanner or socket 10 mm", "spanner or socket 13 mm"}},
		{"Undo the screws, they're quarter inch hex heads.", []string{"screw 1/4 in"}, []string{"spanner or socket 1/4 in"}},
		{"Undo the blade bolt, fifteen sixteenths socket on the long bar.", []string{"blade bolt 15/16 in"}, []string{"socket 15/16 in", "long bar "}},
		{"Undo the cover screws, T30s.", []string{"cover screws T30"}, []string{"torx bit T30"}},
		{"Undo the motor bolts, they're M8, thirteen mil, on a long T bar.", []string{"motor bolts M8", "motor bolts 13 mm"}, []string{"spanner or socket 13 mm", "long t bar "}},
		{"Undo the clevis pin. It's a sixteen mil pin.", []string{"clevis pin 16 mm"}, nil},
		{"You need sockets, eight, ten, thirteen and eighteen. Undo the cover bolts.", []string{"socket 8 mm", "socket 10 mm", "socket 13 mm", "socket 18 mm"}, []string{"socket 8 mm", "socket 10 mm", "socket 13 mm", "socket 18 mm"}},
		{"I'm going from a fifty to a forty. Undo the stem bolts.", nil, nil},
		{"The cover's off, five T15s, and the gasket tore. Undo the gear.", []string{"cover T15"}, []string{"torx bit T15"}},
		{"Undo the cover. It's a seventeen nut.", []string{"cover nut 17 mm"}, []string{"spanner or socket 17 mm"}},
		{"Undo the drop link nut, sixteen. Hold the pin.", []string{"drop link nut 16 mm"}, []string{"spanner or socket 16 mm"}},
		{"Undo the gib screws with a two and a half Allen.", []string{"gib screws 2.5 mm"}, []string{"hex key 2.5 mm"}},
		{"Undo the panel screws, quarter inch hex, three of them.", []string{"panel screws 1/4 in"}, []string{"hex key 1/4 in"}},
		{"Tools. Spanners, a seventeen socket for the prop, could be a nineteen. Undo the prop.", []string{"prop 17 mm|19 mm"}, []string{"spanner ", "socket 17 mm"}},
		// In inches, with and without the word.
		{"The lathe's tool post. Two set bolts hold it down, and they're seven sixteenths, not eleven mil.", []string{"tool post set bolts 7/16 in"}, []string{"spanner or socket 7/16 in"}},
		{"Swing the anchor winch over. Deck bolts, eleven sixteenths, there you go.", []string{"deck bolts 11/16 in"}, []string{"spanner or socket 11/16 in"}},
		{"Undo the mast step bolts with the half inch.", []string{"mast step bolts 1/2 in"}, []string{"spanner or socket 1/2 in"}},
		{"Undo the flue clamp, half inch, and swing it out.", []string{"flue clamp 1/2 in"}, []string{"spanner or socket 1/2 in"}},
		{"These wee 3/8 dome nuts come off the rail.", []string{"dome nuts 3/8 in"}, []string{"spanner or socket 3/8 in"}},
		{"Undo the pivot. Nineteen mil on one side and three quarter on the other.", []string{"pivot 19 mm", "pivot 3/4 in"}, []string{"spanner or socket 19 mm", "spanner or socket 3/4 in"}},
		{"There's a bolt in the end of the roller, thirteen sixteenths, with a spring washer. Undo it.", []string{"roller bolt 13/16 in"}, []string{"spanner or socket 13/16 in"}},
		// Threads, which no spanner has.
		{"That keel bolt's a five-eighths bolt. Undo it.", []string{"keel bolt 5/8 in"}, nil},
		{"Undo the fence bolts. They're quarter inch Whitworth.", []string{"fence bolts 1/4 in"}, nil},
		{"There's an eight mil stud each side of the carburettor. Wind the nuts off.", []string{"carburettor stud M8"}, nil},
		{"Undo the valve, it's only a ten thread.", []string{"valve M10"}, nil},
		{"Four coach bolts, three eighths by four inch, through the gate hinge. Tighten them.", []string{"coach bolts 3/8 in"}, nil},
		{"Undo the latch. It's on two six mil screws, countersunk.", []string{"latch screws M6"}, nil},
		// What is bought or taken by its thread is no fastener of the job.
		{"Undo the bearing cap bolts. I pull it with a length of M10 threaded rod and two plates.", []string{"threaded rod M10"}, []string{"threaded rod M10"}},
		{"Undo the lid screws. They're M5, with nuts behind.", []string{"lid screws M5"}, nil},
		{"Cotter out, crank pin out. Right, the three big ones. They're M12. Undo them.", []string{"big ones M12"}, nil},
		// Counted, or said not to fit.
		{"Undo the pipe nut. Use two spanners on it, and four wraps of tape after.", nil, []string{"spanner "}},
		{"Undo the hub nut. The fourteen is a bit small. Fifteen.", []string{"hub nut 15 mm"}, []string{"spanner or socket 15 mm"}},
		// Lengths of screws, and two of them.
		{"The stirrup bolts are an M12 by 80, or maybe 90. Fit them.", []string{"stirrup bolts M12x80|M12x90"}, nil},
		{"New bolts for the hinge. They're M10, about a forty long, might be a forty-five.", []string{"hinge bolts M10x40|M10x45"}, nil},
		{"New shear bolts for the auger. Quarter inch Whitworth, by inch and a half, or two inch.", []string{"shear bolts 1/4 in", "shear bolts 1-1/2 in|2 in"}, nil},
		// Two candidates, and what was refused or mended.
		{"Undo the tank strap. It's either a ten or an eleven.", []string{"tank strap 10 mm|11 mm"}, []string{"spanner or socket 10 mm"}},
		{"Undo the feed chain guard, seven sixteenths or eleven mil, whichever you've got.", []string{"feed chain guard 7/16 in|11 mm"}, []string{"spanner or socket 7/16 in"}},
		{"Undo the tie bar nuts. A nineteen won't go on. It's a twenty-two.", []string{"tie bar nuts 22 mm"}, []string{"spanner or socket 22 mm"}},
		{"Undo the rear bolts. Somebody's put an odd one in there, the rest are thirteens.", []string{"rear bolts 13 mm"}, []string{"spanner or socket 13 mm"}},
		{"Hinge screws. Three mil key. No. It's spinning. Two and a half.", []string{"hinge screws 2.5 mm"}, []string{"hex key 2.5 mm"}},
		{"Undo the boot clamp. T15? No, it's a four mil.", []string{"boot clamp 4 mm"}, []string{"hex key 4 mm"}},
		{"Brake pipe nut's three eighths UNF with a seven sixteenths head. Undo it.", []string{"brake pipe nut 3/8 in", "brake pipe nut 7/16 in"}, []string{"spanner or socket 7/16 in"}},
		// The tool that turns it, before and after.
		{"Undo the saddle clamp with a six key.", []string{"saddle clamp 6 mm"}, []string{"hex key 6 mm"}},
		{"Get the eight mil socket down the hole and undo the clamp bolt.", []string{"clamp bolt 8 mm"}, []string{"socket 8 mm"}},
		{"With the ten on the ratchet I slacken both hinge bolts.", []string{"hinge bolts 10 mm"}, []string{"socket 10 mm", "ratchet "}},
		{"Undo the sump plug. Plug spanner, a twenty-one.", []string{"sump plug 21 mm"}, []string{"plug spanner 21 mm"}},
		{"I'll need the fourteen for this. It's the pivot bolt. Undo it.", []string{"pivot bolt 14 mm"}, []string{"spanner or socket 14 mm"}},
		{"Undo the knob, there's a grub screw in it, two and a half.", []string{"knob grub screw 2.5 mm"}, []string{"hex key 2.5 mm"}},
		{"Seat pin out. It's a pin of eight. Put it by.", []string{"pin 8 mm"}, nil},
		{"Undo the drum guard nuts while it's still on the trailer, three of them, 16, and leave them in.", []string{"drum guard nuts 16 mm"}, []string{"spanner or socket 16 mm"}},
		{"Undo the hatch screws. T40. No, hang on, that's slipping. Forty-five.", []string{"hatch screws T45"}, []string{"torx bit T45"}},
		{"Split pin out of the arbor nut, bin it. It's a twenty-one, that nut.", []string{"arbor nut 21 mm"}, []string{"spanner or socket 21 mm"}},
		{"What you need. Hex keys, so four, five and eight. Undo the frame bolts.", nil, []string{"hex key 4 mm", "hex key 5 mm", "hex key 8 mm"}},
		// What is no size.
		{"Take a sixteenth off the shim. Bolt it up.", nil, nil},
		{"The end float's a thirty second. Undo the nut.", nil, nil},
		{"Screw it in an inch and a quarter and stop. Lock nut up.", nil, nil},
		{"Leave a half inch gap under the head and start the bolt.", nil, nil},
		{"Two bolts on the fan, eight mil, and it moves back so much, three centimetres.", []string{"fan bolts 8 mm"}, []string{"spanner or socket 8 mm"}},
		{"Set the roller gap to three sixteenths. Tighten the bolt.", nil, nil},
		{"The belt wants half an inch of slack. Tighten the bolt.", nil, nil},
		{"The press's stroke is one and a quarter. Undo the bolt.", nil, nil},
		{"Turn the adjusting nut three quarters. Then a half.", nil, nil},
		{"Back the nut off an eighth, then nip it.", nil, nil},
		{"The blades sit lower at the front, and it's three eighths. Tighten the bolts.", nil, nil},
		{"The bolt sticks out fifteen mil. Leave it.", nil, nil},
		{"Cut the hose back twenty mil and fit the clip.", nil, nil},
		{"Count the cogs, eleven, twelve, thirteen. Undo the bolt.", nil, nil},
		{"I've got seven good ones and two bent. Undo the bolts.", nil, nil},
		{"There's eight of 'em two a side. Undo the bolts.", nil, nil},
		{"Undo the drum nut, use a six point socket.", nil, []string{"six point socket "}},
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
