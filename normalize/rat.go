package normalize

import (
	"math/big"
	"math/bits"
	"sync"
)

// rat is a small exact fraction, d > 0. The reader works in it so that talk
// costs no allocation; big.Rat is made only for what is returned.
type rat struct{ n, d int64 }

const ratMax = int64(1) << 53 // beyond this a spoken number is no workshop value

func whole(n int64) rat { return rat{n, 1} }

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	if a < 0 {
		return -a
	}
	return a
}

func mulOK(a, b int64) (int64, bool) {
	neg := (a < 0) != (b < 0)
	ua, ub := uint64(a), uint64(b)
	if a < 0 {
		ua = uint64(-a)
	}
	if b < 0 {
		ub = uint64(-b)
	}
	hi, lo := bits.Mul64(ua, ub)
	if hi != 0 || lo > uint64(ratMax) {
		return 0, false
	}
	if neg {
		return -int64(lo), true
	}
	return int64(lo), true
}

func makeRat(n, d int64) (rat, bool) {
	if d == 0 {
		return rat{}, false
	}
	if g := gcd(n, d); g > 1 {
		n, d = n/g, d/g
	}
	return rat{n, d}, n <= ratMax && n >= -ratMax && d <= ratMax
}

func (a rat) add(b rat) (rat, bool) {
	x, ok1 := mulOK(a.n, b.d)
	y, ok2 := mulOK(b.n, a.d)
	d, ok3 := mulOK(a.d, b.d)
	if !ok1 || !ok2 || !ok3 {
		return rat{}, false
	}
	return makeRat(x+y, d)
}

func (a rat) mul(b rat) (rat, bool) {
	n, ok1 := mulOK(a.n, b.n)
	d, ok2 := mulOK(a.d, b.d)
	if !ok1 || !ok2 {
		return rat{}, false
	}
	return makeRat(n, d)
}

// less compares exactly.
func (a rat) less(b rat) bool {
	if a.d == b.d {
		return a.n < b.n
	}
	return new(big.Int).Mul(big.NewInt(a.n), big.NewInt(b.d)).Cmp(new(big.Int).Mul(big.NewInt(b.n), big.NewInt(a.d))) < 0
}

// big returns the fraction for callers outside; most are whole, which is cheap.
func (a rat) big() *big.Rat {
	if a.d == 1 && a.n >= 0 && a.n < int64(len(wholes())) {
		return &wholes()[a.n]
	}
	return big.NewRat(a.n, a.d)
}

// wholes are the small whole numbers, which are most of what people say. They
// are shared, and cost nothing each time one is said.
var wholes = sync.OnceValue(func() *[256]big.Rat {
	var of [256]big.Rat
	for n := range of {
		of[n].SetInt64(int64(n))
	}
	return &of
})

// writable tells whether a value can be written as people write one: as a decimal, or
// with a fraction that is read again.
func (a rat) writable() bool { return a.d <= 128 || 1_000_000_000%a.d == 0 }

func (a rat) isInt() bool     { return a.d == 1 }
func (a rat) float() float64  { return float64(a.n) / float64(a.d) }
func (a rat) is(n int64) bool { return a.d == 1 && a.n == n }
func (a rat) between(lo, hi int64) bool {
	return a.d == 1 && a.n >= lo && a.n <= hi
}
