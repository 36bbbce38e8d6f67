package workdoc

import (
	"fmt"
	"math/big"
	"regexp"
	"strings"

	"wrenchword/extract"
	"wrenchword/normalize"
)

// Value is a tightening value that a person wrote: newton metres, an angle, or
// a torque and then an angle. Low and High are equal where one value was written.
type Value struct {
	Low, High *big.Rat // in N·m; nil where only an angle was written
	AngleDeg  *big.Rat // nil where none was written
}

var (
	decimalComma = regexp.MustCompile(`\b(\d{1,4}),(\d{1,2})\b`)
	groupComma   = regexp.MustCompile(`\b\d{1,3},\d{3}\b`)
)

// ParseValue reads a tightening value with its unit. A decimal comma is read
// where it cannot be anything else; "1,200" is refused, since it can.
func ParseValue(s string) (Value, error) {
	if groupComma.MatchString(s) {
		return Value{}, fmt.Errorf("%q: the comma may mark decimals or thousands; write a decimal point", s)
	}
	text := decimalComma.ReplaceAllString(s, "$1.$2")
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

// CheckConfirmed is the Checker that ready uses: it reads the value and sets it
// against each value that was heard. A tenth apart is rounding and unit tables;
// more is said.
func CheckConfirmed(confirmed string, heard []*extract.Torque) ([]string, error) {
	v, err := ParseValue(confirmed)
	if err != nil || v.Low == nil {
		return nil, err
	}
	var remarks []string
	lo, _ := v.Low.Float64()
	hi, _ := v.High.Float64()
	for _, t := range heard {
		if len(t.NM) != 2 || t.NM[0] <= 0 || lo <= t.NM[1]*1.1 && hi >= t.NM[0]*0.9 {
			continue
		}
		remarks = append(remarks, fmt.Sprintf("the confirmed value %s is not what was heard of %s: %s N·m; see which one is meant",
			confirmed, orElse(t.Fastener, "this fastener"), span(t.NM[0], t.NM[1])))
	}
	return remarks, nil
}

func span(lo, hi float64) string {
	a, b := fmt.Sprintf("%.3g", lo), fmt.Sprintf("%.3g", hi)
	if a == b {
		return a
	}
	return a + " to " + b
}
