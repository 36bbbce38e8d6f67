package workdoc

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"math/big"
	"strings"

	"wrenchword/normalize"
)

// Wrench is a torque wrench that a person owns, with its scale.
type Wrench struct {
	Name            string
	Unit            string   // as normalize writes it: "N.m", "lbf.ft" …
	Low, High, Step *big.Rat // in Unit
}

// ReadWrenches reads a CSV file with the columns name, unit, low, high, step.
func ReadWrenches(name string, src []byte) ([]Wrench, error) {
	r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(src, []byte("\ufeff"))))
	r.Comment, r.TrimLeadingSpace, r.FieldsPerRecord = '#', true, -1
	var out []Wrench
	for first := true; ; first = false {
		rec, err := r.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("%s: read the wrenches: %w", name, err)
		}
		line, _ := r.FieldPos(0)
		if first && strings.EqualFold(rec[0], "name") {
			continue
		}
		if len(rec) != 5 {
			return nil, fmt.Errorf("%s:%d: a wrench has name, unit, low, high, step", name, line)
		}
		w := Wrench{Name: rec[0]}
		// The unit is read the way a value's is, so that "foot pounds" will do.
		for _, q := range normalize.Quantities("10 " + rec[1]) {
			if q.Kind == normalize.Torque && !q.Assumed {
				w.Unit = q.Unit
			}
		}
		if w.Unit == "" {
			return nil, fmt.Errorf("%s:%d: unit %q is not known; use N·m, lbf·ft, lbf·in, kgf·m or kgf·cm", name, line, rec[1])
		}
		for i, to := range []**big.Rat{&w.Low, &w.High, &w.Step} {
			s := strings.TrimSpace(rec[2+i])
			v, ok := new(big.Rat).SetString(s)
			if !ok || strings.Trim(s, "0123456789.") != "" || v.Sign() <= 0 && i > 0 {
				return nil, fmt.Errorf("%s:%d: %q is not a number above nothing", name, line, s)
			}
			*to = v
		}
		if w.Low.Cmp(w.High) >= 0 {
			return nil, fmt.Errorf("%s:%d: the scale ends at %s, below where it begins", name, line, rec[3])
		}
		out = append(out, w)
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("%s: no wrench in it", name)
	}
	return out, nil
}

// Settings says for each confirmed value of a document how to set the wrenches:
// the mark of the scale nearest to it, or that none of them reaches it. A value
// that was only heard is never turned into a setting.
func Settings(d *Document, wrenches []Wrench) []string {
	var out []string
	for _, row := range Round(d.Record, d.Refs) {
		c := d.Rows[row.Ref].Confirmed
		if c == "" || isNotApplicable(c) {
			continue
		}
		v, err := ParseValue(c)
		if err != nil || v.Low == nil {
			continue
		}
		name := orElse(row.Name, "a fastener that was not named")
		reached := false
		for _, w := range wrenches {
			if s, ok := w.setting(v); ok {
				reached = true
				out = append(out, fmt.Sprintf("%s, %s: set %s to %s (computed)", name, c, w.Name, s))
			}
		}
		if !reached {
			out = append(out, fmt.Sprintf("%s, %s: none of your wrenches reaches it", name, c))
		}
	}
	return out
}

// setting gives the mark nearest to v's middle. It must lie on the scale, and
// within v where v is a range.
func (w Wrench) setting(v Value) (string, bool) {
	mid := new(big.Rat).Add(v.Low, v.High)
	mid.Quo(mid, big.NewRat(2, 1))
	in, ok := normalize.Convert(mid, "N.m", w.Unit)
	if !ok || in.Cmp(w.Low) < 0 || in.Cmp(w.High) > 0 {
		return "", false
	}
	steps := new(big.Rat).Sub(in, w.Low)
	steps.Quo(steps, w.Step)
	// The nearest whole step: half is added and the rest dropped.
	n := new(big.Int).Div(
		new(big.Int).Add(new(big.Int).Mul(steps.Num(), big.NewInt(2)), steps.Denom()),
		new(big.Int).Mul(steps.Denom(), big.NewInt(2)))
	mark := new(big.Rat).Add(w.Low, new(big.Rat).Mul(w.Step, new(big.Rat).SetInt(n)))
	s := strings.TrimRight(strings.TrimRight(mark.FloatString(3), "0"), ".")
	return s + " " + strings.ReplaceAll(w.Unit, ".", "·"), true
}
