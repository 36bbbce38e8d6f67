package normalize

import (
	"errors"
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

// ErrBadInput is wrapped by every error about a value that a person typed.
var ErrBadInput = errors.New("bad input")

func bad(format string, args ...any) error {
	return fmt.Errorf("%w: %s", ErrBadInput, fmt.Sprintf(format, args...))
}

const maxTyped = 1_000_000 // larger than any value the sums are for

// ParseValue reads a typed value with its unit, "45 lbf.ft", "3/8 in",
// "1-1/4 in", "300mm", and returns it with the unit's code. The unit must be of
// the kind; the value must be above zero and at most a million. Errors wrap
// ErrBadInput and say what to write instead.
func ParseValue(s string, kind Kind) (*big.Rat, string, error) {
	s = strings.TrimSpace(s)
	i := 0
	for i < len(s) && strings.IndexByte("0123456789./-, +", s[i]) >= 0 {
		i++
	}
	num, tail := strings.TrimSpace(s[:i]), strings.TrimSpace(s[i:])
	v, err := parseNumber(num, s)
	if err != nil {
		return nil, "", err
	}
	if tail == "" {
		return nil, "", bad("%q has no unit; write it as in %q", s, num+" "+exampleUnit(kind))
	}
	if f, ok := factors()[tail]; ok && f.dim == string(kind) {
		return v, tail, nil
	}
	r := newReader()
	defer r.free()
	r.scan(tail)
	n := num1(v)
	if len(r.t) > 0 && r.t[0].w != nil && r.t[0].w.unit != nil {
		if u, j := r.unit(0, n); u != nil && j == len(r.t) {
			if f, ok := factors()[u.code]; ok && f.dim == string(kind) && !u.assumed {
				return v, u.code, nil
			}
		}
	} else if len(r.t) == 1 && r.t[0].mark == '"' && kind == Length {
		return v, "in", nil
	}
	return nil, "", bad("%q: %q is no unit of %s; write it as in %q", s, tail, kind, num+" "+exampleUnit(kind))
}

func num1(*big.Rat) num { return num{v: whole(2), digits: true, frac: true} }

func exampleUnit(k Kind) string {
	switch k {
	case Torque:
		return "N.m"
	case Length:
		return "mm"
	case Speed:
		return "km/h"
	case Angle:
		return "deg"
	}
	return "unit"
}

// ParsePlain reads a typed number without a unit, above zero.
func ParsePlain(s string) (*big.Rat, error) { return parseNumber(strings.TrimSpace(s), s) }

// ParseCount reads a whole number from 1 to max.
func ParseCount(s string, max int) (int, error) {
	v, err := parseNumber(strings.TrimSpace(s), s)
	if err != nil {
		return 0, err
	}
	n, err := strconv.Atoi(strings.TrimSpace(s))
	if err != nil || !v.IsInt() {
		return 0, bad("%q is no whole number", s)
	}
	if n > max {
		return 0, bad("%d is more than %d", n, max)
	}
	return n, nil
}

func parseNumber(num, all string) (*big.Rat, error) {
	switch {
	case num == "":
		return nil, bad("%q does not begin with a number", all)
	case strings.Contains(num, ","):
		return nil, bad("%q has a comma; write the decimal mark as a point, and no thousands marks", all)
	case num[0] == '-':
		return nil, bad("%q is negative; it must be above zero", all)
	case len(num) > 24:
		return nil, bad("%q is too long for a number", all)
	}
	wholePart, part, mixed := strings.Cut(strings.ReplaceAll(num, " ", "-"), "-")
	v, ok := plainRat(wholePart)
	if mixed && ok {
		var p *big.Rat
		if p, ok = plainRat(part); ok && v.IsInt() && strings.Contains(part, "/") && p.Cmp(big.NewRat(1, 1)) < 0 {
			v.Add(v, p)
		} else {
			ok = false
		}
	}
	if !ok {
		return nil, bad("%q is no number; write 45, 22.5, 3/8 or 1-1/4", num)
	}
	if v.Sign() == 0 {
		return nil, bad("%q is zero; it must be above zero", all)
	}
	if v.Cmp(big.NewRat(maxTyped, 1)) > 0 {
		return nil, bad("%q is too large; at most %d", all, maxTyped)
	}
	return v, nil
}

// plainRat takes digits with one point, or a fraction of whole numbers; big.Rat
// itself would also take hexadecimal, underscores and exponents.
func plainRat(s string) (*big.Rat, bool) {
	points, slashes := 0, 0
	for i := range len(s) {
		switch c := s[i]; {
		case c == '.':
			points++
		case c == '/':
			slashes++
		case c < '0' || c > '9':
			return nil, false
		}
	}
	if s == "" || points > 1 || slashes > 1 || points+slashes > 1 {
		return nil, false
	}
	return new(big.Rat).SetString(s)
}
