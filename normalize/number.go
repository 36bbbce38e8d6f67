package normalize

import "strings"

// num is one number read from tokens [i,j).
type num struct {
	v         rat
	i, j      int
	digits    bool // a token of digits is part of it
	frac      bool // said as a fraction or a mixed number
	bare      bool // "half" or "quarter" with no article before it
	one       bool // only the word "one"
	neg       bool
	split     int // "two ten": index of the second number's token, or 0
	first     rat // … and the two numbers it may also be
	second    rat
	wordPoint bool // decimals after a spoken "point"
}

// reader walks the tokens of one text.
type reader struct {
	tokens
	quotes int  // quotation marks seen so far that are not inch marks
	bare   bool // bare numbers are wanted too
}

func (r *reader) at(i int) *token {
	if i < 0 || i >= len(r.t) {
		return &endToken
	}
	return &r.t[i]
}

var endToken = token{kind: kMark}

func (t *token) class() class {
	if t.kind == kDigits {
		return cDigits
	}
	if t.w == nil {
		return cNone
	}
	return t.w.class
}

func (t *token) is(x trait) bool   { return t.w != nil && t.w.traits&x != 0 }
func (t *token) value() int64      { return t.w.value }
func (r *reader) end(i int) bool   { return i >= len(r.t) }
func (r *reader) mark(i int) byte  { return r.at(i).mark }
func (r *reader) glued(i int) bool { return i < len(r.t) && r.t[i].glued }
func (t *token) intDigits() bool   { return t.kind == kDigits && !t.grouped && !t.huge }

// text1 is the token in lower case.
func (r *reader) text1(i int) string {
	t := r.at(i)
	if t.w != nil {
		return t.w.text
	}
	return strings.ToLower(r.text[t.start:t.end])
}

// hyphen skips one hyphen that joins two words.
func (r *reader) hyphen(i int) int {
	if r.mark(i) == '-' && r.glued(i) && r.glued(i+1) {
		return i + 1
	}
	return i
}

// small reads 0 to 99 in words.
func (r *reader) small(i int) (v int64, j int, ok bool) {
	t := r.at(i)
	switch t.class() {
	case cUnit:
		return t.value(), i + 1, true
	case cTeen:
		return t.value(), i + 1, true
	case cTens:
		j = i + 1
		k := r.hyphen(j)
		if r.mark(j) == '-' { // also "fifty - two"
			k = j + 1
		}
		if u := r.at(k); u.class() == cUnit && u.value() > 0 && u.w.text != "oh" {
			// "thirty five", but not the 32 of "thirty two eighths" alone: both read alike.
			return t.value() + u.value(), k + 1, true
		} else if u.is(tMisheard) && u.w.text == "eight's" {
			return t.value() + 8, k + 1, true // "thirty-eight's about right": nobody says thirty eighths
		}
		return t.value(), j, true
	}
	return 0, i, false
}

// number reads the number that starts at token i, signs included.
func (r *reader) number(i int) (num, bool) {
	k, neg := i, false
	t := r.at(i)
	if t.mark == '-' && !(t.glued && i > 0 && (r.at(i-1).kind == kDigits || r.at(i-1).word)) && r.at(i+1).kind == kDigits {
		k, neg = i+1, true
	} else if t.is(tMinus) && (r.at(i+1).kind == kDigits || r.at(i+1).class() != cNone) {
		k, neg = i+1, true
	}
	n, ok := r.unsigned(k)
	if !ok {
		return n, false
	}
	if neg {
		n.v.n, n.neg, n.i = -n.v.n, true, i
	}
	return n, true
}

func (r *reader) unsigned(i int) (num, bool) {
	t := r.at(i)
	switch {
	case t.kind == kVulgar:
		return num{v: t.val, i: i, j: i + 1, digits: true, frac: true}, true
	case t.is(tArticle):
		u := r.at(i + 1)
		switch u.class() {
		case cScale:
			if u.w.text == "k" || u.value() == 12 && u.w.text != "dozen" {
				return num{}, false
			}
			if u.value() == 12 {
				return num{v: whole(12), i: i, j: i + 2}, true
			}
			n, ok := r.cardinal(i + 1)
			n.i = i
			return n, ok
		case cHalf:
			if u.w.text == "half" && (r.at(i+2).is(tArticle) && r.at(i+3).class() == cScale) {
				return num{}, false
			}
			if r.at(i+2).class() == cScale {
				if v, ok := (rat{1, u.value()}).mul(whole(r.at(i + 2).value())); ok {
					return num{v: v, i: i, j: i + 3, frac: true}, true
				}
			}
			if u.w.text == "half" || u.w.text == "quarter" {
				return num{v: rat{1, u.value()}, i: i, j: i + 2, frac: true}, true
			}
		case cDenom:
			// "a third of a turn", "an eighth inch"; not "a third bolt".
			if r.at(i+2).is(tOf) || r.end(i+2) || r.inchNext(i+2) || (r.at(i+2).w != nil && r.at(i+2).w.unit != nil && !r.at(i+2).is(tOf)) {
				return num{v: rat{1, u.value()}, i: i, j: i + 2, frac: true}, true
			}
		case cTens:
			if den, j, ok := r.denom(i+1, 1, false); ok {
				return num{v: rat{1, den}, i: i, j: j, frac: true}, true
			}
		}
		return num{}, false
	case t.class() == cHalf:
		if t.w.text != "half" && t.w.text != "quarter" {
			return num{}, false
		}
		if r.at(i+1).is(tArticle) && r.at(i+2).class() == cScale && r.at(i+2).w.text != "k" {
			v, ok := (rat{1, t.value()}).mul(whole(r.at(i + 2).value()))
			return num{v: v, i: i, j: i + 3, frac: true}, ok
		}
		if s := r.at(i + 1); s.class() == cScale && s.value() >= 1000 && s.w.text != "k" {
			v, ok := (rat{1, t.value()}).mul(whole(s.value()))
			return num{v: v, i: i, j: i + 2, frac: true}, ok
		}
		return num{v: rat{1, t.value()}, i: i, j: i + 1, frac: true, bare: true}, true
	case t.class() == cDenom && (t.value() == 8 || t.value() == 16) && r.inchNext(i+1):
		// "eighth inch hex": a size, as said by those who leave the article out
		return num{v: rat{1, t.value()}, i: i, j: i + 1, frac: true}, true
	case t.is(tPoint):
		if p := r.at(i - 1); i > 0 && (p.is(tPronoun) || p.is(tArticle) || p.is(tOf)) && !p.is(tNumber) {
			return num{}, false
		}
		if v, j, ok := r.decimals(i+1, whole(0)); ok {
			return num{v: v, i: i, j: j, wordPoint: true}, true
		}
		return num{}, false
	}
	return r.cardinal(i)
}

// cardinal reads a whole, decimal, fractional or mixed number without sign.
func (r *reader) cardinal(i int) (num, bool) {
	n := num{i: i}
	j := i
	have, scaled, lastScale := false, false, int64(1)<<62
	for {
		g, ok := r.group(j)
		if !ok {
			break
		}
		if have && g.digits && !scaled {
			break
		}
		k := g.j
		s := r.at(k)
		if s.class() == cScale && s.value() >= 1000 && s.value() < lastScale && (s.w.text != "k" || (g.digits && !g.wordPoint)) {
			v, ok := g.v.mul(whole(s.value()))
			if !ok {
				return n, false
			}
			if n.v, ok = n.addTo(v, have); !ok {
				return n, false
			}
			n.digits = n.digits || g.digits
			have, scaled, lastScale = true, true, s.value()
			k++
			n.j = k
			// What follows a scale goes on with the same number.
			m := k
			if r.mark(m) == ',' && r.at(m+1).class() != cDigits {
				m++
			}
			if r.at(m).is(tAnd) && r.at(m+1).class() != cNone && r.at(m+1).class() != cHalf && r.at(m+1).class() != cDigits {
				m++
			}
			if g2, ok := r.group(m); ok && !(g2.digits && m != k) && s.w.text != "k" {
				if _, _, isDen := r.denomAny(g2.j, g2); isDen && m != k {
					break
				}
				j = m
				continue
			}
			break
		}
		var ok2 bool
		if scaled && (!g.v.isInt() || g.v.n >= lastScale) {
			break
		}
		if n.v, ok2 = n.addTo(g.v, have); !ok2 {
			return n, false
		}
		have = true
		n.j, n.digits, n.wordPoint = k, n.digits || g.digits, g.wordPoint
		if !scaled {
			n.split, n.first, n.second = g.split, g.first, g.second
			n.one = g.one
		}
		break
	}
	if !have {
		return n, false
	}
	return r.fraction(n), true
}

func (n *num) addTo(v rat, have bool) (rat, bool) {
	if !have {
		return v, true
	}
	return n.v.add(v)
}

// group reads what a scale word may multiply: 0 to 999 in words, "two thirty",
// "one oh five", digits, and decimals after "point".
func (r *reader) group(i int) (num, bool) {
	t := r.at(i)
	n := num{i: i}
	switch t.class() {
	case cDigits:
		if t.huge {
			return n, false
		}
		n.v, n.j, n.digits = t.val, i+1, true
		if s := r.at(i + 1); s.class() == cScale && s.value() <= 100 {
			return r.hundreds(n)
		}
		if t.intDigits() && r.at(i+1).is(tPoint) {
			if v, j, ok := r.decimals(i+2, n.v); ok {
				n.v, n.j, n.wordPoint = v, j, true
			}
		}
		return n, true
	case cScale:
		if p := r.at(i - 1); i > 0 && (p.is(tVague) || p.is(tOf) && r.at(i-2).is(tVague)) {
			return n, false // "a couple of hundred" is no number
		}
		if t.w.text == "k" || t.value() == 12 || t.w.text[len(t.w.text)-1] == 's' {
			return n, false
		}
		n.v, n.j = whole(1), i
		if t.value() == 100 {
			return r.hundreds(n)
		}
		return n, true // the caller takes the scale
	case cUnit, cTeen, cTens:
		if t.w.text == "oh" {
			return n, false
		}
	default:
		return n, false
	}
	v, j, _ := r.small(i)
	n.v, n.j = whole(v), j
	n.one = v == 1
	if s := r.at(j); s.class() == cScale && s.value() <= 100 {
		return r.hundreds(n)
	}
	// Two numbers in a breath: "one oh five", "two thirty", "nineteen eighty four".
	k := r.hyphen(j)
	u := r.at(k)
	isOh := u.class() == cUnit && u.value() == 0 && u.w.text == "oh"
	if v >= 1 && isOh && r.at(k+1).class() == cUnit && r.at(k+1).w.text != "oh" {
		n.v, n.j, n.one = whole(v*100+r.at(k+1).value()), k+2, false
	} else if w, m, ok := r.small(k); ok && !isOh && v >= 1 && w >= 10 && !(v == 1 && r.thatOne(i)) && r.pairs(v, w, j, m) {
		n.split, n.first, n.second = k, whole(v), whole(w)
		n.v, n.j, n.one = whole(v*100+w), m, false
	}
	if r.at(n.j).is(tPoint) {
		if d, m, ok := r.decimals(n.j+1, n.v); ok {
			n.v, n.j, n.wordPoint, n.one = d, m, true, false
			n.split = 0
		}
	}
	return n, true
}

// pairs decides whether v then w (10 to 99) are one number said short.
func (r *reader) pairs(v, w int64, i, m int) bool {
	if _, _, ok := r.denom(m, w, true); ok {
		return false // "two fifteen sixteenths"
	}
	if den, _, ok := r.denom(i, v, true); ok && den > 0 {
		return false // "one thirty second"
	}
	if s := r.at(m); s.class() == cScale && s.value() < 1000 {
		return false
	}
	if v <= 9 {
		return !r.at(i-2).is(tSeries) && !(v > 1 && r.at(i-2).is(tCounted)) // "stage one forty newton metres", "all five twenty newton metres"
	}
	return v >= 18 && v <= 20 && !(w > v && w <= v+10)
}

// hundreds goes on after "two" in "two hundred and five", and reads dozens.
func (r *reader) hundreds(n num) (num, bool) {
	s := r.at(n.j)
	v, ok := n.v.mul(whole(s.value()))
	if !ok {
		return n, false
	}
	n.v, n.one = v, false
	n.j++
	if s.value() != 100 {
		return n, true
	}
	k := n.j
	if r.at(k).is(tAnd) {
		k++
	}
	if t := r.at(k); t.intDigits() && t.val.between(1, 99) && k > n.j {
		if x, ok := n.v.add(t.val); ok && r.mark(k+1) != '/' {
			n.v, n.j, n.digits = x, k+1, true
		}
		return n, true
	}
	if w, m, ok := r.small(k); ok && r.at(k).w.text != "oh" {
		if _, _, isDen := r.denom(m, w, true); isDen && k > n.j {
			return n, true // "two hundred and three quarters"
		}
		if x, ok := n.v.add(whole(w)); ok {
			n.v, n.j = x, m
		}
	}
	if d := r.at(n.j); d.class() == cScale && d.value() == 12 {
		// "three hundred and two dozens" stays a sum.
		if w := n.v.n % 100; w > 0 && w < 20 {
			n.v, n.j = whole(n.v.n-w+12*w), n.j+1
		}
	}
	if r.at(n.j).is(tPoint) {
		if d, m, ok := r.decimals(n.j+1, n.v); ok {
			n.v, n.j, n.wordPoint = d, m, true
		}
	}
	return n, true
}

// thatOne tells whether "one" at i stands for a thing: "the outer one sixteen newton
// metres" is sixteen, not a hundred and sixteen.
func (r *reader) thatOne(i int) bool {
	p := r.at(i - 1)
	if i == 0 || !p.is(tPronoun) {
		return false
	}
	switch p.w.text {
	case "no", "good", "wrong", "only", "same", "some", "any":
		return false // "no, one twenty"
	}
	return true
}

// decimals reads what follows a spoken "point": single figures, or one number
// below a hundred taken as two.
func (r *reader) decimals(i int, v rat) (rat, int, bool) {
	j, d := i, int64(1)
	for d < 1e9 {
		t := r.at(j)
		var x, w int64
		switch {
		case t.class() == cUnit:
			x, w = t.value(), 10
			j++
		case t.class() == cTeen, t.class() == cTens && j > i, t.class() == cTens:
			y, k, _ := r.small(j)
			x, w = y, 100
			j = k
		case t.intDigits() && t.end-t.start <= 6:
			x, w = t.val.n, 1
			for k := t.start; k < t.end; k++ {
				w *= 10
			}
			j++
		default:
			return v, j, j > i
		}
		d *= w
		var ok bool
		if v, ok = v.add(rat{x, d}); !ok {
			return v, j, false
		}
		if g := gcd(v.n, v.d); g > 1 {
			v.n, v.d = v.n/g, v.d/g
		}
		if w == 100 {
			return v, j, true
		}
	}
	return v, j, true
}

// fraction takes the lower part, a mixed part and a trailing "k" of n.
func (r *reader) fraction(n num) num {
	last := r.at(n.j - 1)
	// 3/8, 1 1/4, 1-1/4, 1½
	if last.kind == kDigits && n.v.isInt() && last.intDigits() && !n.wordPoint {
		if d, ok := r.slash(n.j, last); ok && n.j == n.i+1 {
			v, ok := makeRat(n.v.n, d.n)
			if ok {
				n.v, n.frac, n.j = v, true, n.j+2
				if r.at(n.j).is(tThs) {
					n.j++
				}
				return n
			}
		}
		k := n.j
		if r.mark(k) == '-' && r.glued(k) && r.glued(k+1) {
			k++
		}
		if u := r.at(k); u.intDigits() && (k > n.j || !u.glued) && u.val.n > 0 {
			if d, ok := r.slash(k+1, u); ok && u.val.less(d) {
				f, _ := makeRat(u.val.n, d.n)
				if v, ok := n.v.add(f); ok {
					n.v, n.frac, n.j = v, true, k+3
					return n
				}
			}
		}
		if u := r.at(n.j); u.kind == kVulgar {
			if v, ok := n.v.add(u.val); ok {
				n.v, n.frac, n.j = v, true, n.j+1
				return n
			}
		}
	}
	if n.v.isInt() && n.v.n > 0 && !n.wordPoint {
		if den, j, ok := r.denomAny(n.j, n); ok {
			if v, ok := makeRat(n.v.n, den); ok {
				n.v, n.j, n.frac, n.one, n.split = v, j, true, false, 0
				return n
			}
		}
	}
	if r.at(n.j).is(tOver) && n.v.isInt() && !n.wordPoint && r.mark(n.i-1) != '$' {
		if d, ok := r.group(n.j + 1); ok && d.v.between(2, 999) && (r.end(d.j) || r.at(d.j).kind == kMark) {
			if v, ok := makeRat(n.v.n, d.v.n); ok {
				n.v, n.j, n.frac, n.one, n.split = v, d.j, true, false, 0
				return n
			}
		}
	}
	return r.mixed(n)
}

// slash reads "/ D" after a numerator; a second slash makes it a date.
func (r *reader) slash(i int, numer *token) (rat, bool) {
	d := r.at(i + 1)
	if r.mark(i) != '/' || !d.intDigits() || !d.val.between(2, 128) || (r.mark(i+2) == '/' && r.at(i+3).kind == kDigits) {
		return rat{}, false
	}
	return d.val, true
}

// mixed takes "and a half", "and three eighths", "and 5/8" after n.
func (r *reader) mixed(n num) num {
	if !r.at(n.j).is(tAnd) || n.neg || n.wordPoint {
		return n
	}
	if f, j, ok := r.part(n.j + 1); ok {
		if v, ok := n.v.add(f); ok {
			n.v, n.j, n.frac, n.one, n.split = v, j, true, false, 0
		}
	}
	return n
}

// part reads a proper fraction after "and".
func (r *reader) part(i int) (rat, int, bool) {
	t := r.at(i)
	k := i
	num := int64(1)
	switch {
	case t.kind == kVulgar:
		return t.val, i + 1, true
	case t.is(tArticle):
		k = i + 1
		if u := r.at(k); u.class() == cDenom {
			return rat{1, u.value()}, k + 1, true
		}
	case t.class() == cHalf && t.w.text == "half":
	case t.intDigits():
		if d, ok := r.slash(i+1, t); ok && t.val.less(d) {
			v, ok := makeRat(t.val.n, d.n)
			return v, i + 3, ok
		}
		num, k = t.val.n, i+1
	default:
		v, j, ok := r.small(i)
		if !ok || v == 0 || t.w.text == "oh" {
			return rat{}, i, false
		}
		num, k = v, j
	}
	den, j, ok := r.denom(k, num, false)
	if !ok || num >= den {
		return rat{}, i, false
	}
	v, ok := makeRat(num, den)
	return v, j, ok
}

func (r *reader) denomAny(i int, n num) (int64, int, bool) {
	if !n.v.isInt() || n.split > 0 {
		return 0, i, false
	}
	return r.denom(i, n.v.n, false)
}

// inchAround reports that two figures side by side, the second at token i, stand as a
// size does: after an article, or before a head, a fastener or "on".
func (r *reader) inchAround(i int) bool {
	next := r.at(i + 1)
	if r.at(i-1).kind != kDigits || next.kind == kDigits || next.unit() {
		return false
	}
	return r.at(i-2).is(tArticle) || r.text1(i-2) == "the" || next.is(tHead|tFastener) || r.text1(i+1) == "on"
}

// denom reads the lower part of a fraction whose upper part is v. A singular
// ordinal needs 1 above it, or an inch, a drive or a tool after it, since
// "three fifth bolts" is no fraction. strict refuses misheard forms.
func (r *reader) denom(i int, v int64, strict bool) (den int64, j int, ok bool) {
	if r.mark(i) == '-' && r.at(i+1).word { // "five-eighths", "five - eighths"
		i++
	}
	t := r.at(i)
	switch t.class() {
	case cHalf:
		switch t.w.text {
		case "half":
			return 2, i + 1, v == 1
		case "quarter":
			return 4, i + 1, v == 1 || v == 3
		}
		return t.value(), i + 1, v >= 1
	case cDenoms:
		return t.value(), i + 1, v >= 1
	case cDenom:
		odd := v%2 == 1 && (t.value() == 8 || t.value() == 16) // "seven sixteenth", as many say it
		return t.value(), i + 1, v == 1 || (v < t.value() && (odd || r.inchNext(i+1) || r.at(i+1).is(tOf)))
	case cTens:
		k := r.hyphen(i + 1)
		u := r.at(k)
		switch {
		case t.value() == 30 && u.is(tSecond):
			den = 32
		case t.value() == 60 && (u.class() == cDenom || u.class() == cDenoms) && u.value() == 4:
			den = 64
		default:
			return 0, i, false
		}
		plural := u.w.text[len(u.w.text)-1] == 's'
		return den, k + 1, v < den && ((plural && v > 1) || r.inchNext(k+1) || r.at(k+1).is(tOf))
	case cDigits:
		if u := r.at(i + 1); t.intDigits() && u.is(tThs) && t.val.n > v && t.val.n <= 128 {
			return t.val.n, i + 2, true
		}
		// "3 8 inch drive", "a 9 16", "15 16 on the bolt"
		if d := t.val.n; t.intDigits() && !strict && v%2 == 1 && v < d && (d == 8 || d == 16 || d == 32) && (r.inchNext(i+1) || v > 1 && r.inchAround(i)) {
			return d, i + 1, true
		}
		return 0, i, false
	}
	if strict {
		return 0, i, false
	}
	if v%2 == 1 {
		switch {
		case t.is(tMisheard):
			return t.value(), i + 1, v < t.value() && r.inchNext(i+1)
		case (t.class() == cUnit && t.value() == 8) || (t.class() == cTeen && t.value() == 16):
			return t.value(), i + 1, v < t.value() && r.inchNext(i+1)
		}
	}
	return 0, i, false
}

// inchNext reports an inch, a drive or a tool at token i.
func (r *reader) inchNext(i int) bool {
	i = r.hyphen(i)
	t := r.at(i)
	if t.mark == '"' {
		return true
	}
	if t.w == nil {
		return false
	}
	switch t.w.text {
	case "inch", "inches", "drive", "square", "ratchet", "breaker", "extension":
		return true
	}
	return t.is(tTool)
}
