package reckon

import "fmt"

// maxTeeth bounds a tooth count; larger ones are slips of the finger.
const maxTeeth = 400

func teeth(ns ...int) error {
	for _, n := range ns {
		if n < 5 || n > maxTeeth {
			return bad("a sprocket has from 5 to %d teeth, not %d", maxTeeth, n)
		}
	}
	return nil
}

// Gearing gives the ratio of a tooth pair, driven over driving: turns of the
// driving sprocket for one of the driven.
func Gearing(driving, driven int) (Result, error) {
	if err := teeth(driving, driven); err != nil {
		return Result{}, err
	}
	return Result{Sum: "gear ratio", Formula: "ratio = driven / driving",
		Inputs:  []Figure{{"driving teeth", float64(driving), ""}, {"driven teeth", float64(driven), ""}},
		Results: []Figure{{"ratio", float64(driven) / float64(driving), ""}},
		Source:  "by definition"}, nil
}

// GearingChange compares two tooth pairs: the change of ratio in percent, and
// what a road speed becomes at the same engine speed (speed 0: left out).
func GearingChange(driving, driven, newDriving, newDriven int, speed float64, unit string) (Result, error) {
	if err := teeth(driving, driven, newDriving, newDriven); err != nil {
		return Result{}, err
	}
	old := float64(driven) / float64(driving)
	now := float64(newDriven) / float64(newDriving)
	r := Result{Sum: "change of gearing", Formula: "change = (new / old - 1) * 100; speed at the same engine speed = speed * old / new",
		Inputs: []Figure{{"driving teeth", float64(driving), ""}, {"driven teeth", float64(driven), ""},
			{"new driving teeth", float64(newDriving), ""}, {"new driven teeth", float64(newDriven), ""}},
		Results: []Figure{{"ratio", old, ""}, {"new ratio", now, ""}, {"change of ratio", (now/old - 1) * 100, "percent"},
			{"change of road speed", (old/now - 1) * 100, "percent"}},
		Source: "by definition"}
	switch {
	case now > old:
		r.Notes = append(r.Notes, "Shorter gearing: more pull, less speed at the same engine speed.")
	case now < old:
		r.Notes = append(r.Notes, "Taller gearing: less pull, more speed at the same engine speed.")
	}
	if speed > 0 {
		r.Inputs = append(r.Inputs, Figure{"road speed", speed, unit})
		r.Results = append(r.Results, Figure{"road speed with the new pair", speed * old / now, unit})
	}
	r.Notes = append(r.Notes, fmt.Sprintf("Where the speedometer is driven from the gearbox it now reads %.1f percent off.", (now/old-1)*100))
	return r, nil
}
