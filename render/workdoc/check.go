package workdoc

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"wrenchword/extract"
	"wrenchword/normalize"
	"wrenchword/normalize/pattern"
)

// Value is a tightening value that a person wrote: newton metres, an angle, or
// a torque and then an angle. Low and High are equal where one value was written.
type Value struct {
	Low, High *big.Rat // in N·m; nil where only an angle was written
	AngleDeg  *big.Rat // nil where none was written
}

var (
	decimalComma = pattern.Of(`\b(\d{1,4}),(\d{1,2})\b`)
	groupComma   = pattern.Of(`\b\d{1,3},\d{3}\b`)
)

// ParseValue reads a tightening value with its unit. A decimal comma is read
// where it cannot be anything else; "1,200" is refused, since it can.
func ParseValue(s string) (Value, error) {
	if groupComma().MatchString(s) {
		return Value{}, fmt.Errorf("%q: the comma may mark decimals or thousands; write a decimal point", s)
	}
	text := decimalComma().ReplaceAllString(s, "$1.$2")
	var v Value
	for _, q := range normalize.Quantities(text) {
		switch q.Kind {
		case normalize.Torque:
			if v.Low != nil {
				return Value{}, fmt.Errorf("%q holds two torques; write one, or a range", s)
			}
			if q.Assumed {
				return Value{}, fmt.Errorf("%q: write the unit in full, for example %q", s, q.Canonical)
			}
			lo, ok := normalize.ToNM(q.Low, q.Unit)
			hi, ok2 := normalize.ToNM(q.High, q.Unit)
			if !ok || !ok2 {
				return Value{}, fmt.Errorf("%q: unit %q is not known; use N·m, lbf·ft, lbf·in, kgf·m or kgf·cm", s, q.Unit)
			}
			v.Low, v.High = lo, hi
		case normalize.Angle, normalize.Turn:
			if q.Low != nil {
				if deg, ok := normalize.Convert(q.Low, q.Unit, "deg"); ok {
					v.AngleDeg = deg
				}
			}
		}
	}
	if v.Low == nil && v.AngleDeg == nil {
		if strings.ContainsAny(s, "0123456789") {
			return Value{}, fmt.Errorf("%q: its unit is missing or not known; use N·m, lbf·ft, lbf·in, kgf·m, kgf·cm or degrees", s)
		}
		return Value{}, fmt.Errorf(`%q holds no value; write a value with its unit, "n/a, why", or "no value published, how, signed: name"`, s)
	}
	if v.Low != nil && v.Low.Sign() <= 0 || v.AngleDeg != nil && v.AngleDeg.Sign() <= 0 {
		return Value{}, fmt.Errorf("%q is not more than nothing", s)
	}
	return v, nil
}

// CheckConfirmed is the Checker that ready uses. It sets the value against each
// one that was heard (a tenth apart is rounding and unit tables; more is said)
// and against what the fastener's thread takes, where the talk told its size.
func CheckConfirmed(confirmed string, row RoundRow, rec *extract.Record) ([]string, error) {
	v, err := ParseValue(confirmed)
	if err != nil || v.Low == nil {
		return nil, err
	}
	var remarks []string
	lo, _ := v.Low.Float64()
	hi, _ := v.High.Float64()
	for _, t := range row.Torques {
		if len(t.NM) != 2 || t.NM[0] <= 0 || lo <= t.NM[1]*1.1 && hi >= t.NM[0]*0.9 {
			continue
		}
		remarks = append(remarks, fmt.Sprintf("the confirmed value %s is not what was heard of %s: %s N·m; see which one is meant",
			confirmed, orElse(row.Name, "this fastener"), span(t.NM[0], t.NM[1])))
	}
	for _, f := range normalize.CheckTorque(v.Low, v.High, sizesOf(row.Name, rec)) {
		if f.What == "too-much" || f.What == "too-little" {
			remarks = append(remarks, fmt.Sprintf("the confirmed value %s of %s: %s (computed, %s)",
				confirmed, orElse(row.Name, "this fastener"), f.Why, f.Source))
		}
	}
	return remarks, nil
}

// sizesOf gathers what the talk told of a fastener's size. Two sizes for one
// dimension tell nothing, and no size is taken from a name that is only like it.
func sizesOf(name string, rec *extract.Record) normalize.TorqueContext {
	words := nameWords(name)
	ctx := normalize.TorqueContext{AxleOrHub: slices.ContainsFunc(words, func(w string) bool { return w == "axle" || w == "hub" || w == "spindle" })}
	told := map[string]string{}
	for _, s := range rec.Sizes {
		if name == "" || nameScore(s.Of, name) < 0.95 || !s.Sure {
			continue
		}
		if was, ok := told[s.Dimension]; ok && (len(s.Candidates) != 1 || was != s.Candidates[0]) {
			told[s.Dimension] = ""
		} else if len(s.Candidates) == 1 {
			told[s.Dimension] = s.Candidates[0]
		}
	}
	// The length of a screw ("M8x30") says nothing here; its pitch ("M10x1.25") does.
	ctx.Thread = told["thread"]
	if d, rest, ok := strings.Cut(ctx.Thread, "x"); ok && !strings.Contains(rest, ".") && rest != "1" && rest != "2" {
		ctx.Thread = d
	}
	ctx.AcrossFlats = told["across-flats"]
	if ctx.Key = told["key"]; ctx.Key == "" {
		ctx.Key = told["driver"]
	}
	return ctx
}

func span(lo, hi float64) string {
	a, b := fmt.Sprintf("%.3g", lo), fmt.Sprintf("%.3g", hi)
	if a == b {
		return a
	}
	return a + " to " + b
}
