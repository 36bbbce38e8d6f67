package normalize

import (
	"math/big"
	"strconv"
	"strings"
)

// printRat writes a value as a decimal when it ends within nine places, else as
// a fraction. Both read back as the same value.
func printRat(v rat) string {
	if v.d == 1 {
		return strconv.FormatInt(v.n, 10)
	}
	d, places := v.d, 0
	scale := int64(1)
	for ; places < 9 && scale%d != 0; places++ {
		scale *= 10
	}
	if scale%d != 0 {
		return printFraction(v, " ")
	}
	neg := ""
	n := v.n
	if n < 0 {
		neg, n = "-", -n
	}
	whole := n / d
	frac := strconv.FormatInt((n%d)*(scale/d), 10)
	return neg + strconv.FormatInt(whole, 10) + "." + strings.Repeat("0", places-len(frac)) + frac
}

// printFraction writes 3/8, 1-1/4 or 3 1/4, with sep between whole and part.
func printFraction(v rat, sep string) string {
	if v.d == 1 {
		return strconv.FormatInt(v.n, 10)
	}
	neg, n := "", v.n
	if n < 0 {
		neg, n = "-", -n
	}
	f := strconv.FormatInt(n%v.d, 10) + "/" + strconv.FormatInt(v.d, 10)
	if w := n / v.d; w > 0 {
		return neg + strconv.FormatInt(w, 10) + sep + f
	}
	return neg + f
}

func fromBig(v *big.Rat) (rat, bool) {
	if v == nil || !v.Num().IsInt64() || !v.Denom().IsInt64() {
		return rat{}, false
	}
	return rat{v.Num().Int64(), v.Denom().Int64()}, true
}

// canonical writes q the contract's way.
func canonical(q Quantity, n num) string {
	show := func(b *big.Rat) string {
		v, ok := fromBig(b)
		if !ok {
			return b.RatString()
		}
		if q.Unit == "in" && (n.frac || n.v.isInt()) && v.d <= 64 && v.d&(v.d-1) == 0 {
			if q.Kind == Length {
				return printFraction(v, " ")
			}
			return printFraction(v, "-")
		}
		return printRat(v)
	}
	lo := show(q.Low)
	unit := q.Unit
	if q.Low.Cmp(q.High) == 0 {
		return lo + " " + unit
	}
	hi := show(q.High)
	if q.Alt {
		return lo + " " + unit + " | " + hi + " " + unit
	}
	if q.Low.Sign() < 0 || strings.Contains(lo+hi, "/") {
		return lo + " to " + hi + " " + unit
	}
	return lo + "-" + hi + " " + unit
}
