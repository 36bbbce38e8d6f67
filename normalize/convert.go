package normalize

import (
	_ "embed"
	"fmt"
	"math/big"
	"strings"
	"sync"
)

//go:embed data/factors.csv
var factorsCSV string

// factor takes a value of a unit to the base unit of its dimension:
// base = value*mul + add, exactly.
type factor struct {
	dim, si  string
	mul, add *big.Rat
}

var factors = sync.OnceValue(func() map[string]factor {
	m := map[string]factor{}
	for row := range table("factors.csv", factorsCSV) {
		mul, err := product(row.get("factor"))
		if err != nil {
			panic(err)
		}
		add, err := product(row.get("offset"))
		if err != nil {
			panic(err)
		}
		m[row.get("unit")] = factor{dim: row.get("kind"), si: row.get("si"), mul: mul, add: add}
	}
	return m
})

// product reads "0.3048*0.45359237/16" exactly.
func product(s string) (*big.Rat, error) {
	out := big.NewRat(1, 1)
	op := byte('*')
	for s != "" {
		k := strings.IndexAny(s, "*/")
		part, next := s, byte(0)
		if k >= 0 {
			part, next, s = s[:k], s[k], s[k+1:]
		} else {
			s = ""
		}
		v, ok := new(big.Rat).SetString(part)
		if !ok {
			return nil, fmt.Errorf("factors.csv: %q is no number", part)
		}
		if op == '*' {
			out.Mul(out, v)
		} else {
			out.Quo(out, v)
		}
		op = next
	}
	return out, nil
}

// Convert takes v from one unit to another of the same dimension, exactly; ok
// is false where either unit is unknown or the dimensions differ. Units are
// those a Quantity carries, and cN.m, kN.m, kgf/cm2 and Pa. Factors: NIST SP 811.
func Convert(v *big.Rat, from, to string) (*big.Rat, bool) {
	f, ok1 := factors()[from]
	t, ok2 := factors()[to]
	if !ok1 || !ok2 || f.dim != t.dim || v == nil {
		return nil, false
	}
	if from == to {
		return new(big.Rat).Set(v), true
	}
	x := new(big.Rat).Mul(v, f.mul)
	if f.add.Cmp(t.add) != 0 { // of temperatures
		x.Add(x, f.add).Sub(x, t.add)
	}
	return x.Quo(x, t.mul), true
}

// ToNM converts a torque to newton metres, exactly; ok is false where unit is
// not a unit of torque.
func ToNM(v *big.Rat, unit string) (*big.Rat, bool) {
	if f, ok := factors()[unit]; !ok || f.dim != string(Torque) {
		return nil, false
	}
	return Convert(v, unit, "N.m")
}

// SI returns low and high in the base unit of the dimension (N.m, mm, deg, kPa,
// mL, g, degC, m/s, s), or nils and "" for a kind that has none.
func (q Quantity) SI() (low, high *big.Rat, unit string) {
	f, ok := factors()[q.Unit]
	if !ok || q.Low == nil {
		return nil, nil, ""
	}
	low, _ = Convert(q.Low, q.Unit, f.si)
	high, _ = Convert(q.High, q.Unit, f.si)
	return low, high, f.si
}

// Rounded writes a converted value for a person, the way manuals print dual
// units: to a step no finer than the value as said allows. said, in saidUnit,
// is taken as exact to its last figure (10, 22.5, 3/8); the result has as many
// significant figures as were said, never fewer than two and never so many
// that its step is finer than a tenth of what the said step is worth. Halves
// round away from zero. It returns the value with its unit, "" where the units
// do not convert.
func Rounded(said *big.Rat, saidUnit, toUnit string) string {
	v, ok := Convert(said, saidUnit, toUnit)
	if !ok {
		return ""
	}
	if saidUnit == toUnit {
		return decimal(said) + " " + toUnit
	}
	return v.FloatString(places(said, saidUnit, v, toUnit)) + " " + toUnit
}

// RoundedRange is Rounded for both ends of a range, with one step for both.
func RoundedRange(low, high *big.Rat, saidUnit, toUnit string) string {
	if low.Cmp(high) == 0 {
		return Rounded(low, saidUnit, toUnit)
	}
	a, ok1 := Convert(low, saidUnit, toUnit)
	b, ok2 := Convert(high, saidUnit, toUnit)
	if !ok1 || !ok2 {
		return ""
	}
	if saidUnit == toUnit {
		return decimal(low) + "-" + decimal(high) + " " + toUnit
	}
	p := max(0, min(places(low, saidUnit, a, toUnit), places(high, saidUnit, b, toUnit)))
	return a.FloatString(p) + "-" + b.FloatString(p) + " " + toUnit
}

// places is the number of decimals to print a converted value with.
func places(said *big.Rat, saidUnit string, v *big.Rat, toUnit string) int {
	sig := max(figures(said), 2)
	p := sig - 1 - exponent(v)
	// No finer than a tenth of the said step, in the new unit.
	step := big.NewRat(1, 1)
	for range decimals(said) {
		step.Quo(step, big.NewRat(10, 1))
	}
	if f, t := factors()[saidUnit], factors()[toUnit]; f.mul != nil && t.mul != nil {
		step.Mul(step, f.mul).Quo(step, t.mul)
	}
	if q := -exponent(step); p > q+1 {
		p = q + 1
	}
	return min(max(p, 0), 4)
}

// exponent is the power of ten of v's first figure; 0 for zero.
func exponent(v *big.Rat) int {
	if v.Sign() == 0 {
		return 0
	}
	a := new(big.Rat).Abs(v)
	e := 0
	ten, one := big.NewRat(10, 1), big.NewRat(1, 1)
	for a.Cmp(ten) >= 0 && e < 400 {
		a.Quo(a, ten)
		e++
	}
	for a.Cmp(one) < 0 && e > -400 {
		a.Mul(a, ten)
		e--
	}
	return e
}

// decimals counts the figures after the point that v needs, at most 4 (a third
// counts as 2).
func decimals(v *big.Rat) int {
	d := v.Denom()
	scale := big.NewInt(1)
	for n := range 5 {
		if new(big.Int).Mod(scale, d).Sign() == 0 {
			return n
		}
		scale.Mul(scale, big.NewInt(10))
	}
	return 2
}

// figures counts the significant figures v was said with; 100 counts 3, since
// nobody says which zeros they mean.
func figures(v *big.Rat) int {
	s := strings.TrimLeft(strings.ReplaceAll(new(big.Rat).Abs(v).FloatString(decimals(v)), ".", ""), "0")
	return len(s)
}

// decimal writes v as it was said: no more decimals than it needs, at most 4.
func decimal(v *big.Rat) string { return v.FloatString(decimals(v)) }
