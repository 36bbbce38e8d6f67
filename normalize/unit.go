package normalize

import "strings"

// unitOf reads the unit after n into e, and what may follow a unit.
func (r *reader) unitOf(e *span, n num) {
	k := n.j
	if m := r.hyphen(k); r.text1(m) == "ish" { // "thirty-ish newton metres"
		k = m + 1
	}
	// "half a turn", "three eighths of an inch", "half of a thou"
	if n.frac {
		m := k
		if r.at(m).is(tOf) {
			m++
		}
		if r.at(m).is(tArticle) && (n.bare || m > k || n.v.less(whole(1))) || (m > k && r.text1(m) == "the") {
			m++
		}
		if u, j := r.unit(m, n); u != nil && m > k {
			e.unit, e.j, e.next = u, j, j
			return
		}
	}
	u, j := r.unit(k, n)
	if u == nil {
		return
	}
	e.unit, e.j, e.next = u, j, j
	// "an inch and a quarter" is read at its article; "one inch and a quarter" here.
	if (n.v.isInt() || n.frac) && r.at(j).is(tAnd) && u.kind != Torque && !n.frac {
		if f, m, ok := r.part(j + 1); ok && r.partEnds(m) {
			if v, ok := n.v.add(f); ok {
				e.lo, e.hi, e.j, e.next = v, v, m, m
				e.n.frac, e.n.v = true, v
			}
		}
	}
	// "5 feet 2 inches", "5 feet and 2 inches"
	if u.code == "ft" {
		m := j
		if r.at(m).is(tAnd) {
			m++
		}
		if x, ok := r.number(m); ok && x.v.less(whole(12)) && !x.neg {
			v, w := r.unit(x.j, x)
			if v == nil && x.digits && r.text1(x.j) == "in" {
				v, w = lex().inch, x.j+1 // "12 ft 2 in more or less"
			}
			if v != nil && v.code == "in" {
				f, _ := makeRat(x.v.n, x.v.d*12)
				if s, ok := n.v.add(f); ok {
					e.lo, e.hi, e.j, e.next = s, s, w, w
				}
			}
		}
	}
}

// partEnds refuses "one inch and a half inch socket".
func (r *reader) partEnds(i int) bool {
	t := r.at(i)
	return t.w == nil || t.w.unit == nil || t.is(tAnd|tOf|tBy|tTo)
}

// unit finds the longest unit phrase at token k whose context holds.
func (r *reader) unit(k int, n num) (*unit, int) {
	if r.mark(k) == '-' && r.glued(k) && r.glued(k+1) {
		k++
	}
	if m := r.mark(k); (m == '[' || m == '{') && r.at(k+1).word {
		if u, j := r.unit(k+1, n); u != nil && r.mark(j) == m+2 {
			return u, j + 1
		}
		return nil, k
	}
	if m := r.mark(k); (m == '.' || m == ',') && r.at(k+1).word {
		// "Forty-seven. Newton metres, that is."
		if u, j := r.unit(k+1, n); u != nil && u.kind == Torque {
			return u, j
		}
		return nil, k
	}
	t := r.at(k)
	if t.mark == '"' && (n.digits || n.frac) {
		if r.quotes%2 == 1 && !n.frac {
			return nil, k
		}
		return lex().inch, k + 1
	}
	if t.mark == '\'' && r.mark(k+1) == '\'' && r.glued(k+1) && (n.digits || n.frac) {
		return lex().inch, k + 2
	}
	if t.w == nil || t.w.unit == nil {
		return nil, k
	}
	var best *unit
	end := k
	node, j := t.w.unit, k+1
	for {
		for _, u := range node.units {
			if r.unitFits(u, k, j, n) {
				best, end = u, j
				break
			}
		}
		if node.next == nil {
			break
		}
		m := j
		if r.mark(m) == '.' && r.glued(m) && r.mark(m+1) == '-' && r.glued(m+1) {
			m++ // "ft.-lb"
		}
		if c := r.mark(m); (c == '-' || c == '*' || c == '/' || c == '.') && r.glued(m) && r.at(m+1).word && (c == '.' || r.glued(m+1)) {
			m++
		}
		w := r.at(m).w
		if w == nil {
			break
		}
		nx := node.after(w)
		if nx == nil {
			break
		}
		node, j = nx, m+1
	}
	if best != nil && r.glued(end) {
		next := r.at(end + 1)
		switch {
		case r.mark(end) == '/' && next.glued && next.word:
			return nil, k // an unknown unit per something
		case r.at(end).kind == kDigits && !r.at(end).val.is(0) && best.kind != Torque, r.mark(end) == '-' && next.glued && next.kind == kDigits && end-k == 1 && t.end-t.start == 1:
			return nil, k // "km2", "L-202"
		}
	}
	if best != nil && r.at(end).is(tMoney) && best.code == "m" {
		return nil, k // "1.8M dollars"
	}
	return best, end
}

// unitFits checks the context that a reading of a unit needs.
func (r *reader) unitFits(u *unit, k, j int, n num) bool {
	if u.digits && !(n.digits || n.frac) {
		return false
	}
	if u.glued && !r.glued(k) && !(u.code == "t") {
		return false
	}
	if u.inword {
		t := r.at(j)
		if !n.digits || !(r.end(j) || t.kind == kMark || t.is(tDrive) || t.is(tBy) || t.is(tTool) || r.at(k).glued || n.frac || !n.v.isInt() && n.v.less(whole(20)) && !t.is(tArticle) && t.class() == cNone) {
			return false
		}
	}
	switch {
	case u.need == tTighten && u.code == "N.m":
		return !r.pulled(k)
	case u.need == tTighten:
		if r.near(k, 24, tLoad|tMoney) || r.near(k, 10, tPrice) || r.per(j) {
			return false
		}
		return r.within(k-14, k+6, tTighten) || r.within(k-5, k, tFastener)
	case u.need == tTyre:
		return r.near(k, 12, tTyre) && !r.priced(n, j)
	case u.need == tFluid:
		// "ten mil of fork oil"; but the drain plug's seventeen mil is a size.
		return !r.at(j).is(tTool|tFastener|tHead) && (r.at(j).is(tOf) && r.within(j, j+4, tFluid) ||
			!r.at(n.i-1).is(tArticle) && r.within(k-7, k, tPour) && r.near(k, 12, tFluid))
	case u.need == tGear:
		return r.text1(k) == "tooth" || r.near(k, 10, tGear)
	case u.need != 0:
		return r.near(k, 8, u.need)
	case u.code == "lb":
		return !r.priced(n, j) && !r.per(j)
	}
	return true
}

// pulled tells whether newtons at k are those of a pull or a weight: nothing else in a workshop is
// told in newtons but how tight something is (common practice, no source).
func (r *reader) pulled(k int) bool {
	if r.near(k, 8, tLoad) {
		return true
	}
	for i := k - 8; i < k+6; i++ {
		switch strings.TrimSuffix(r.text1(i), "'s") {
		case "force", "forces", "pull", "pulls", "pulling", "push", "spring", "springs", "tension", "tensioned", "spoke", "spokes", "kilonewton", "kilonewtons", "scale":
			return true
		}
	}
	return false
}

func (r *reader) per(j int) bool { return r.at(j).is(tPer) }

// priced tells pounds of money from pounds of weight.
func (r *reader) priced(n num, j int) bool {
	return r.mark(n.i-1) == '$' || r.near(n.i, 8, tPrice) && !r.near(n.i, 8, tTighten)
}
