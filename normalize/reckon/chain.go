package reckon

import (
	"fmt"
	"math"
)

const lengthSource = "Mott, Machine Elements in Mechanical Design, 4th ed., 7-3; Shigley's Mechanical Engineering Design, chapter 17"

// pitches is the exact chain length in pitches for a centre distance in pitches.
func pitches(n1, n2 int, centre float64) float64 {
	d := float64(n2-n1) / (2 * math.Pi)
	return 2*centre + float64(n1+n2)/2 + d*d/centre
}

// centrePitches is the centre distance in pitches for a chain of links; NaN
// where the chain is too short to go round.
func centrePitches(n1, n2 int, links float64) float64 {
	a := links - float64(n1+n2)/2
	b := float64(n2-n1) / (2 * math.Pi)
	return (a + math.Sqrt(a*a-8*b*b)) / 4
}

// evenUp rounds up to an even count of links; a hair over an even count stays.
func evenUp(l float64) int { return 2 * int(math.Ceil((l-1e-3)/2)) }

// PitchDiameter of a sprocket: p / sin(180/n).
func PitchDiameter(n int, pitch float64) float64 { return pitch / math.Sin(math.Pi/float64(n)) }

// ChainLength gives the links for two tooth counts and a centre distance in mm,
// rounded up to even (an odd count needs an offset link, which costs strength),
// and the centre distance that the even chain has.
func ChainLength(n1, n2 int, centre, pitch float64) (Result, error) {
	in := []Figure{{"teeth", float64(n1), ""}, {"teeth of the other", float64(n2), ""}, {"centre distance", centre, "mm"}, {"pitch", pitch, "mm"}}
	if err := teeth(n1, n2); err != nil {
		return Result{}, err
	}
	if err := above(in[2:]...); err != nil {
		return Result{}, err
	}
	if centre < (PitchDiameter(n1, pitch)+PitchDiameter(n2, pitch))/2 {
		return Result{}, bad("the sprockets would touch: the centre distance is %g mm", centre)
	}
	l := pitches(n1, n2, centre/pitch)
	even := evenUp(l)
	if even > 1000 {
		return Result{}, bad("%d links is no chain of a machine like this", even)
	}
	return Result{Sum: "chain length", Formula: "L = 2C + (n1+n2)/2 + ((n2-n1)/(2 pi))^2 / C, in pitches", Inputs: in,
		Results: []Figure{{"exact length", l, "pitches"}, {"links, even", float64(even), ""}, {"length", float64(even) * pitch, "mm"},
			{"centre distance with that chain", centrePitches(n1, n2, float64(even)) * pitch, "mm"}},
		Notes: []string{"The even count includes the joining link. An odd count would need an offset link."}, Source: lengthSource}, nil
}

// ChainCentre gives the centre distance in mm of a chain of links.
func ChainCentre(n1, n2, links int, pitch float64) (Result, error) {
	in := []Figure{{"teeth", float64(n1), ""}, {"teeth of the other", float64(n2), ""}, {"links", float64(links), ""}, {"pitch", pitch, "mm"}}
	if err := teeth(n1, n2); err != nil {
		return Result{}, err
	}
	if err := above(in[2:]...); err != nil {
		return Result{}, err
	}
	c := centrePitches(n1, n2, float64(links))
	if math.IsNaN(c) || c*pitch < (PitchDiameter(n1, pitch)+PitchDiameter(n2, pitch))/2 {
		return Result{}, bad("a chain of %d links is too short for %d and %d teeth", links, n1, n2)
	}
	r := Result{Sum: "centre distance of a chain", Formula: "C = (a + sqrt(a^2 - 8 b^2)) / 4, a = L - (n1+n2)/2, b = (n2-n1)/(2 pi), in pitches", Inputs: in,
		Results: []Figure{{"centre distance", c, "pitches"}, {"centre distance in mm", c * pitch, "mm"}, {"chain length", float64(links) * pitch, "mm"}},
		Source:  lengthSource}
	if links%2 == 1 {
		r.Notes = append(r.Notes, "An odd count of links needs an offset link, which costs strength.")
	}
	return r, nil
}

// Adjuster is what moves the axle. For a straight slot, Back and Forward are
// the millimetres left each way. For an eccentric, Throw is the distance from
// its centre to the axle in mm, and Angle is where it stands now in degrees, 0 with
// the axle furthest back.
type Adjuster struct {
	Eccentric     bool
	Back, Forward float64
	Throw, Angle  float64
}

// TeethChange says what new tooth counts do to the axle with the chain kept:
// how far it moves, and what of the adjustment is left. adj may be nil.
func TeethChange(n1, n2, new1, new2, links int, pitch float64, adj *Adjuster) (Result, error) {
	was, err := ChainCentre(n1, n2, links, pitch)
	if err != nil {
		return Result{}, err
	}
	now, err := ChainCentre(new1, new2, links, pitch)
	if err != nil {
		return Result{}, err
	}
	c0, c1 := was.Get("centre distance in mm"), now.Get("centre distance in mm")
	move := c1 - c0
	r := Result{Sum: "change of teeth with the same chain", Formula: "axle moves by C(new) - C(old); " + was.Formula,
		Inputs: append(was.Inputs, Figure{"new teeth", float64(new1), ""}, Figure{"new teeth of the other", float64(new2), ""}),
		Results: []Figure{{"chain longer by", float64(new1+new2-n1-n2) / 2, "pitches, roughly"}, {"centre distance now", c0, "mm"},
			{"centre distance then", c1, "mm"}, {"axle moves back by", move, "mm"}},
		Notes: []string{"A negative move is forward, toward the driving sprocket. Both chains are taken as new."}, Source: lengthSource}
	switch {
	case adj == nil:
	case adj.Eccentric:
		if err := above(Figure{Name: "the throw of the eccentric", Value: adj.Throw}); err != nil {
			return Result{}, err
		}
		r.Inputs = append(r.Inputs, Figure{"throw of the eccentric", adj.Throw, "mm"}, Figure{"its angle now", adj.Angle, "deg"})
		r.Formula += "; eccentric: e cos(new angle) = e cos(angle) + move"
		cos := math.Cos(adj.Angle*math.Pi/180) + move/adj.Throw
		if cos > 1 || cos < -1 {
			r.Notes = append(r.Notes, fmt.Sprintf("The eccentric does not reach: it moves the axle %.1f mm at most from where it stands.",
				adj.Throw*math.Max(1-math.Cos(adj.Angle*math.Pi/180), 1+math.Cos(adj.Angle*math.Pi/180))))
			break
		}
		angle := math.Acos(cos) * 180 / math.Pi
		rise := adj.Throw * (math.Sin(angle*math.Pi/180) - math.Sin(adj.Angle*math.Pi/180))
		r.Results = append(r.Results, Figure{"angle then", angle, "deg"}, Figure{"left to go back", adj.Throw * (1 - cos), "mm"},
			Figure{"axle shifts across by", rise, "mm"})
		r.Notes = append(r.Notes, "An eccentric also shifts the axle across the chain line, which changes the ride height.")
	default:
		if adj.Back < 0 || adj.Forward < 0 {
			return Result{}, bad("the adjustment left must not be negative")
		}
		r.Inputs = append(r.Inputs, Figure{"slot left, back", adj.Back, "mm"}, Figure{"slot left, forward", adj.Forward, "mm"})
		back, forward := adj.Back-move, adj.Forward+move
		r.Results = append(r.Results, Figure{"slot left then, back", back, "mm"}, Figure{"slot left then, forward", forward, "mm"})
		if back < 0 || forward < 0 {
			r.Notes = append(r.Notes, "The slot does not reach; the chain needs another count of links.")
		}
	}
	return r, nil
}

// Elongation compares a measured length over n pitches with the nominal, and
// with a limit in percent (0: none). pins tells that pin centres were counted
// and not pitches: n pins span n-1 pitches.
func Elongation(measured float64, n int, pins bool, pitch, limit float64) (Result, error) {
	in := []Figure{{"measured length", measured, "mm"}, {"counted", float64(n), "pitches"}, {"pitch", pitch, "mm"}}
	if pins {
		in[1].Unit = "pins"
		n--
	}
	if n < 1 || n > 1000 {
		return Result{}, bad("count from 1 to 1000 pitches")
	}
	if err := above(in...); err != nil {
		return Result{}, err
	}
	nominal := float64(n) * pitch
	e := (measured/nominal - 1) * 100
	if e < -2 || e > 10 {
		return Result{}, bad("%g mm over %d pitches of %g mm is %.1f percent: check the count (n pins span n-1 pitches)", measured, n, pitch, e)
	}
	r := Result{Sum: "chain wear", Formula: "elongation = (measured / (n * pitch) - 1) * 100", Inputs: in,
		Results: []Figure{{"nominal length", nominal, "mm"}, {"elongation", e, "percent"}},
		Notes:   []string{"Measure under tension, pin centre to pin centre, over as many links as can be reached, at several places."},
		Source:  "chain makers' instructions: 2 percent plain, 1 percent sealed motorcycle chain; 3 percent industrial up to 67 teeth, else 200/N"}
	if limit > 0 {
		r.Inputs = append(r.Inputs, Figure{"wear limit", limit, "percent"})
		r.Results = append(r.Results, Figure{"length at the limit", nominal * (1 + limit/100), "mm"}, Figure{"share of the limit used", 100 * e / limit, "percent"})
		if e >= limit {
			r.Notes = append(r.Notes, "At or past the limit: the chain is worn out. Never join new chain to worn chain.")
		}
	}
	return r, nil
}

// LargeSprocketLimit is the allowable elongation in percent for a driven
// sprocket of n teeth: 3 up to 67 teeth, else 200/n. Source: makers' published
// rule for industrial roller chain.
func LargeSprocketLimit(n int) float64 { return math.Min(3, 200/float64(n)) }

// Slack sets a measured slack beside a range, both in mm; the condition in which
// it was measured (stand, load, place on the chain) must be said, since slack
// without its condition is no specification.
func Slack(measured, low, high float64, condition string) (Result, error) {
	if condition == "" {
		return Result{}, bad("say how the slack was measured: on which stand, with which load, at which place of the chain")
	}
	in := []Figure{{"slack", measured, "mm"}}
	if err := above(in...); err != nil {
		return Result{}, err
	}
	r := Result{Sum: "chain slack", Formula: "slack = highest lift - lowest sag, midway between the sprockets, at the tightest place", Inputs: in,
		Notes:  []string{"Measured " + condition + ".", "Tighten the axle nut first, then measure: clamping changes the tension."},
		Source: "rider training practice (New Zealand ACC Ride Forever, Chain); the machine's handbook decides stand, place and load"}
	if low > 0 || high > 0 {
		if high < low || low < 0 {
			return Result{}, bad("the slack range must go from low to high")
		}
		r.Inputs = append(r.Inputs, Figure{"range, low", low, "mm"}, Figure{"range, high", high, "mm"})
		switch {
		case measured < low:
			r.Results = append(r.Results, Figure{"too tight by", low - measured, "mm"})
		case measured > high:
			r.Results = append(r.Results, Figure{"too loose by", measured - high, "mm"})
		default:
			r.Results = append(r.Results, Figure{"inside the range, room to the tight end", measured - low, "mm"})
		}
	}
	return r, nil
}
