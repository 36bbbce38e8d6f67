// Package reckon does the workshop's sums: a torque wrench with an adapter,
// preload from torque and back, gearing, and chains. Each sum is a pure function
// that returns its formula, its inputs with units, its results and its source.
//
// A computed value is no specification. The maker's manual stands above it.
package reckon

import (
	"fmt"
	"math"

	"wrenchword/normalize"
)

// Caution is printed with every result.
const Caution = "A computed value is no specification; the maker's manual stands above it."

// Figure is one named value of a sum.
type Figure struct {
	Name  string  `json:"name"`
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
}

// Result is a sum done: what went in, what came out, by which formula and on
// whose authority.
type Result struct {
	Sum     string   `json:"sum"`
	Formula string   `json:"formula"`
	Inputs  []Figure `json:"inputs"`
	Results []Figure `json:"results"`
	Notes   []string `json:"notes"`
	Source  string   `json:"source"`
}

// Get returns the named result, or NaN.
func (r Result) Get(name string) float64 {
	for _, f := range r.Results {
		if f.Name == name {
			return f.Value
		}
	}
	return math.NaN()
}

func bad(format string, args ...any) error {
	return fmt.Errorf("%w: %s", normalize.ErrBadInput, fmt.Sprintf(format, args...))
}

// above wants each value to be a finite number above zero.
func above(vs ...Figure) error {
	for _, v := range vs {
		if !(v.Value > 0) || math.IsInf(v.Value, 0) {
			return bad("%s must be above zero", v.Name)
		}
	}
	return nil
}

// Wrench gives the setting of a torque wrench with an adapter. arm is from the
// middle of the grip to the square, adapter from the square to the fastener, both
// in lengthUnit; angle is 0 straight out, 90 across, 180 back toward the hand, in
// degrees. The setting is in the unit of the torque.
// Source: US Navy NAVEDTRA 14315 and 14008, TM 9-254 (angled adapter: formula
// only; no printed answer between 0 and 180 degrees is known).
func Wrench(torque float64, torqueUnit string, arm, adapter float64, lengthUnit string, angle float64) (Result, error) {
	in := []Figure{{"torque at the fastener", torque, torqueUnit}, {"arm, grip to square", arm, lengthUnit},
		{"adapter, square to fastener", adapter, lengthUnit}, {"angle", angle, "deg"}}
	if err := above(in[:3]...); err != nil {
		return Result{}, err
	}
	if !(angle >= 0 && angle <= 360) {
		return Result{}, bad("the angle must be from 0 to 360 degrees")
	}
	eff := arm + adapter*math.Cos(angle*math.Pi/180)
	if eff <= arm/10 {
		return Result{}, bad("the adapter reaches back to the hand: arm %g and adapter %g %s at %g degrees leave no lever", arm, adapter, lengthUnit, angle)
	}
	r := Result{Sum: "torque wrench with an adapter", Formula: "setting = torque * arm / (arm + adapter * cos(angle))", Inputs: in,
		Results: []Figure{{"setting", torque * arm / eff, torqueUnit}},
		Notes:   []string{"Hold the wrench at the middle of its grip; at 90 degrees the setting does not change."},
		Source:  "US Navy training manuals NAVEDTRA 14315 and 14008; TM 9-254 paragraph 4-1"}
	return r, nil
}

// Prevailing adds the running torque of a locknut to a seating torque, both in
// one unit. Source: TB 43-0218 paragraph 7c.
func Prevailing(seat, prevailing float64, unit string) (Result, error) {
	in := []Figure{{"seating torque", seat, unit}, {"prevailing torque", prevailing, unit}}
	if err := above(in...); err != nil {
		return Result{}, err
	}
	r := Result{Sum: "locknut with prevailing torque", Formula: "wrench = seat + prevailing, where prevailing is a third of seat or more", Inputs: in,
		Source: "US Army TB 43-0218 paragraph 7c"}
	v := seat
	if prevailing*3 >= seat {
		v += prevailing
	} else {
		r.Notes = append(r.Notes, "The prevailing torque is under a third of the seating torque and is left out.")
	}
	r.Results = []Figure{{"wrench", v, unit}}
	return r, nil
}

// Screw is a thread with its stress area and the load its class is held to.
type Screw struct {
	Name      string
	Diameter  float64 // mm
	Area      float64 // stress area, mm2
	ProofMPa  float64 // 0 where the class is not known
	Class     string
	SourceRef string
}

// Preload gives the preload in kN of a torque in N.m, and its share of the proof
// load, by T = K F d with K from kLow to kHigh. Source: Shigley's Mechanical
// Engineering Design, chapter 8.
func Preload(torque float64, s Screw, kLow, kHigh float64) (Result, error) {
	in := []Figure{{"torque", torque, "N.m"}, {"diameter " + s.Name, s.Diameter, "mm"}, {"K, lowest", kLow, ""}, {"K, highest", kHigh, ""}}
	if err := above(in...); err != nil {
		return Result{}, err
	}
	if kLow > kHigh {
		return Result{}, bad("the lowest K is above the highest")
	}
	r := Result{Sum: "preload from torque", Formula: "F = T / (K * d)", Inputs: in,
		Results: []Figure{{"preload, least", torque / (kHigh * s.Diameter), "kN"}, {"preload, most", torque / (kLow * s.Diameter), "kN"}},
		Notes:   []string{"A torque without its lubrication fixes the preload only to a factor of two or three."},
		Source:  "Shigley's Mechanical Engineering Design, chapter 8 (T = K F d)"}
	r.share(s)
	return r, nil
}

// Torque gives the torque in N.m for a preload in kN, the other way round.
func Torque(preload float64, s Screw, kLow, kHigh float64) (Result, error) {
	in := []Figure{{"preload", preload, "kN"}, {"diameter " + s.Name, s.Diameter, "mm"}, {"K, lowest", kLow, ""}, {"K, highest", kHigh, ""}}
	if err := above(in...); err != nil {
		return Result{}, err
	}
	if kLow > kHigh {
		return Result{}, bad("the lowest K is above the highest")
	}
	r := Result{Sum: "torque from preload", Formula: "T = K * F * d", Inputs: in,
		Results: []Figure{{"torque, least", kLow * preload * s.Diameter, "N.m"}, {"torque, most", kHigh * preload * s.Diameter, "N.m"}},
		Source:  "Shigley's Mechanical Engineering Design, chapter 8 (T = K F d)"}
	if s.ProofMPa > 0 {
		r.proof(s)
		r.Results = append(r.Results, Figure{"share of proof load", 100 * preload / (s.Area * s.ProofMPa / 1000), "percent"})
	}
	return r, nil
}

// ProofLoad is a share (0 to 1) of the proof load in kN.
func ProofLoad(s Screw, share float64) float64 { return share * s.Area * s.ProofMPa / 1000 }

func (r *Result) proof(s Screw) {
	r.Inputs = append(r.Inputs, Figure{"stress area", s.Area, "mm2"}, Figure{"proof stress, class " + s.Class, s.ProofMPa, "MPa"})
	r.Results = append(r.Results, Figure{"proof load", ProofLoad(s, 1), "kN"})
	if s.SourceRef != "" {
		r.Source += "; " + s.SourceRef
	}
}

func (r *Result) share(s Screw) {
	if s.ProofMPa <= 0 {
		r.Notes = append(r.Notes, "No class was given, so there is no proof load to compare with.")
		return
	}
	least, most := r.Results[0].Value, r.Results[1].Value
	r.proof(s)
	p := ProofLoad(s, 1)
	r.Results = append(r.Results, Figure{"share of proof load, least", 100 * least / p, "percent"}, Figure{"share of proof load, most", 100 * most / p, "percent"})
	if least > p {
		r.Notes = append(r.Notes, "Even with the highest friction this is beyond the proof load.")
	} else if most > p {
		r.Notes = append(r.Notes, "With the lowest friction this is beyond the proof load.")
	}
}
