package normalize

// span is one value expression: a number, a range or two candidates, with the
// unit that was said and the tokens it covers.
type span struct {
	i, j     int // tokens that were read as the value and its unit
	next     int // where reading goes on
	lo, hi   rat
	alt      bool
	unit     *unit
	n        num // the last number read
	rangeSet bool
}

// expr reads a value with its unit, if one is said; of a spoken correction it
// keeps the last value.
func (r *reader) expr(i int) (span, bool) {
	e, ok := r.single(i)
	if !ok {
		return e, false
	}
	for range 8 { // corrections of corrections; more are no speech
		k, ok := r.correction(e.j)
		if !ok {
			break
		}
		f, ok := r.single(k)
		if !ok {
			break
		}
		if e.unit != nil && f.unit != nil && e.unit.kind != f.unit.kind {
			break
		}
		if p := r.at(f.n.i - 1); f.n.one && f.unit == nil && (p.is(tPronoun) || p.is(tArticle) || !r.stops(f.next)) {
			break // "no, hang on, that's the one with the twin wheels"
		}
		if f.unit == nil && e.unit != nil {
			f.unit = e.unit
		}
		e = f
	}
	return e, true
}

// single reads one value, range or pair of candidates.
func (r *reader) single(i int) (span, bool) {
	var e span
	k := i
	between := r.at(i).is(tBetween)
	if between {
		k = i + 1
		if r.at(k).is(tArticle) && r.at(k+1).class() == cNone {
			k++
		}
	}
	n, ok := r.value(k)
	if ok {
		e = span{i: i, j: n.j, next: n.j, lo: n.v, hi: n.v, n: n}
		if !between {
			e.i = n.i
		}
		// "N and a half" is taken by the number; "an inch and a quarter" below.
		r.unitOf(&e, n)
		if n.split > 0 && r.splits(&e, n) || r.tolerance(&e) {
			return e, true
		}
	} else if e, ok = r.impliedOne(i); ok {
		n = e.n
	} else {
		return e, false
	}
	k, alt, ok := r.joiner(e, between)
	if !ok {
		// Two numbers side by side with one unit after: "eleven twelve newton metres".
		if e.unit == nil {
			if m, ok := r.value(n.j); ok && n.v.less(m.v) && near(n.v, m.v) && !n.frac && !m.frac && !r.at(n.j).is(tArticle) && !r.at(n.j).is(tPoint) {
				f := span{i: e.i, j: m.j, next: m.j, lo: n.v, hi: m.v, n: m, rangeSet: true}
				r.unitOf(&f, m)
				f.alt = r.hesitates(f)
				if f.unit != nil && !(f.unit.kind == Length && r.countBefore(n)) {
					return f, true
				}
			}
		}
		if between {
			e.i = n.i
		}
		return e, true
	}
	m, ok := r.value(k)
	if !ok || m.neg && !n.neg {
		e.i = n.i
		return e, true
	}
	f := span{i: e.i, j: m.j, next: m.j, lo: n.v, hi: m.v, alt: alt, n: m, rangeSet: true}
	r.unitOf(&f, m)
	comma := r.mark(e.j) == ',' && !alt
	switch {
	case e.unit == nil && f.unit == nil:
		// A bare range matters to Numbers only; to Quantities, before a tool.
		if comma || !r.bare && !r.toolNext(f.j) {
			e.i = n.i
			return e, true
		}
	case e.unit == nil && n.inchLike() && f.unit.code == "mm", f.unit == nil && m.inchLike() && e.unit.code == "mm":
		e.i = n.i // "eight mil or five sixteenths": two units, two sizes
		return e, true
	case e.unit == nil: // 20 to 25 newton metres
		if comma && !(n.v.less(m.v) && near(n.v, m.v)) {
			e.i = n.i
			return e, true
		}
		f.alt = alt || comma && r.hesitates(f)
	case f.unit == nil: // 20 newton metres to 25
		if comma || !alt && !n.v.less(m.v) || !r.stops(f.j) {
			e.i = n.i
			return e, true
		}
		f.unit = e.unit
	case e.unit != f.unit || comma:
		e.i = n.i
		return e, true
	}
	if !alt && f.hi.less(f.lo) {
		// "forty to five" is no range; the unit belongs to the last alone.
		e.i = n.i
		if e.unit == nil && f.unit != nil {
			e.next = e.j
		}
		return e, true
	}
	if f.hi.less(f.lo) {
		f.lo, f.hi = f.hi, f.lo
	}
	return f, true
}

// inchLike reports a fraction as only inches are told in.
func (n num) inchLike() bool { return n.frac && n.v.d >= 8 && n.v.less(whole(2)) }

// tolerance reads "plus or minus one" and "±1" after a value into low and high.
func (r *reader) tolerance(e *span) bool {
	k := e.j
	switch {
	case r.mark(k) == '+' && r.mark(k+1) == '/' && r.mark(k+2) == '-':
		k += 3
	case r.mark(k) == '+':
		k++
	case r.at(k).is(tPlus) && r.at(k+1).is(tOr) && r.at(k+2).is(tMinus):
		k += 3
	default:
		return false
	}
	m, ok := r.unsigned(k)
	if !ok || !m.v.less(e.lo) {
		return false
	}
	f := span{n: m, j: m.j}
	r.unitOf(&f, m)
	if e.unit != nil && f.unit != nil && e.unit != f.unit {
		return false
	}
	minus := m.v
	minus.n = -minus.n
	lo, ok1 := e.lo.add(minus)
	hi, ok2 := e.lo.add(m.v)
	if !ok1 || !ok2 || !lo.writable() || !hi.writable() {
		return false
	}
	if e.unit == nil {
		e.unit = f.unit
	}
	e.lo, e.hi, e.j, e.next, e.rangeSet = lo, hi, f.j, f.j, true
	e.n.j = m.j
	return true
}

// countBefore reports a number that counts things rather than measures.
func (r *reader) countBefore(n num) bool { return n.v.between(2, 9) && !n.digits }

// splits resolves "two ten": a count and a size, a range, or one number.
func (r *reader) splits(e *span, n num) bool {
	if e.unit == nil {
		return false
	}
	rangeLike := n.first.less(n.second) && near(n.first, n.second)
	after := r.at(e.j)
	switch {
	case n.first.n <= 9 && (e.unit.code == "mm" || e.unit.code == "in") && (after.is(tTool) || after.is(tFastener) || after.is(tHead)):
		e.i, e.lo, e.hi = n.split, n.second, n.second
		return true
	case n.first.n >= 10 && rangeLike:
		e.lo, e.hi, e.rangeSet = n.first, n.second, true
		return true
	}
	return false
}

// impliedOne reads "an inch and a quarter", "a turn and a half", "a full turn":
// a unit that counts one without saying so.
func (r *reader) impliedOne(i int) (span, bool) {
	k := i
	if r.at(k).is(tArticle) {
		k++
	}
	n := num{v: whole(1), i: i, j: k, frac: true}
	u, j := r.unit(k, n)
	if u == nil || (u.kind != Length && u.kind != Angle && u.kind != Volume) || u.digits || u.code == "deg" {
		return span{}, false
	}
	if f, m, ok := r.part(j + 1); ok && r.at(j).is(tAnd) && r.partEnds(m) {
		v, _ := n.v.add(f)
		n.v, n.j = v, m
		return span{i: i, j: m, next: m, lo: v, hi: v, unit: u, n: n}, true
	}
	if u.code == "turn" && j-k == 2 && k > i {
		return span{i: i, j: j, next: j, lo: n.v, hi: n.v, unit: u, n: num{v: n.v, i: i, j: j}}, true
	}
	return span{}, false
}

// hesitates reports two whole millimetres said side by side: two candidates for
// one tool ("eighteen, nineteen mil") and no range.
func (r *reader) hesitates(e span) bool {
	return e.unit != nil && e.unit.code == "mm" && e.lo.between(4, 46) && e.hi.between(4, 46) && !r.near(e.i, 8, tGap)
}

// near tells two values close enough to be the ends of one range.
func near(a, b rat) bool {
	return a.n > 0 && b.float() <= a.float()*1.5+1
}

// joiner reads what joins two values of one range: "to", "-", "or", "and" after
// "between", "might be a", a comma. It returns where the second one starts.
func (r *reader) joiner(e span, between bool) (k int, alt, ok bool) {
	k = e.j
	t := r.at(k)
	switch {
	case t.mark == '-' || t.mark == '~':
		k++
	case t.mark == '|':
		return k + 1, true, true
	case t.is(tAnd) && between:
		k++
	case t.is(tTo):
		k++
	case t.is(tThrough):
		if t.w.text == "up" {
			return k, false, false
		}
		k++
	case r.text1(k) == "up" && r.at(k+1).is(tTo):
		k += 2
	case t.is(tOr):
		k++
		if r.at(k).is(tMaybe) {
			k++
		}
		alt = true
	case t.mark == ',' && r.at(k+1).is(tOr):
		k += 2
		alt = true
	case t.is(tMaybe), t.mark == ',' && r.at(k+1).is(tMaybe):
		if t.mark == ',' {
			k++
		}
		k++
		if s := r.text1(k); s == "be" || s == "even" {
			k++
		}
		alt = true
	case t.mark == ',' && r.text1(e.i-1) == "not":
		return k, false, false
	case t.mark == ',' && !r.glued(k+1):
		if r.at(k+1).kind != kDigits && r.at(k+1).class() == cNone {
			return k, false, false
		}
		return k + 1, false, true
	default:
		return k, false, false
	}
	for range 2 { // "or a sixteen", "to about 25", "or like ten"
		if u := r.at(k); (u.is(tArticle) && !r.startsNumber(k)) || (u.is(tHedge) && u.class() == cNone) || u.w != nil && u.w.text == "the" || r.text1(k) == "like" {
			k++
		}
	}
	return k, alt, true
}

// other reads the second of two candidates: "or 35", ", or is it 25", "might be a twelve".
func (r *reader) other(e span) (num, bool) {
	k, alt, ok := r.joiner(e, false)
	if !ok || !alt {
		return num{}, false
	}
	if t := r.text1(k); t == "is" || t == "was" {
		if s := r.text1(k + 1); s == "it" || s == "that" {
			k += 2
		}
	} else if t == "it's" || t == "is't" {
		k++
	}
	if r.at(k).is(tArticle) && !r.startsNumber(k) {
		k++
	}
	return r.number(k)
}

// ordered gives two values in their order.
func ordered(a, b rat) (rat, rat) {
	if b.less(a) {
		return b, a
	}
	return a, b
}

// startsNumber reports an article that is part of the number ("a hundred").
func (r *reader) startsNumber(i int) bool {
	c := r.at(i + 1).class()
	return c == cScale || c == cHalf || c == cDenom
}

// stops reports that nothing countable follows: the number before it stands alone.
func (r *reader) stops(i int) bool {
	t := r.at(i)
	return r.end(i) || t.kind == kMark || t.is(tHedgeAfter) || t.is(tFiller) || t.is(tStopOne) || t.is(tAnd) || t.is(tOr)
}

// correction skips ", no, sorry, make that" and the like. It returns where the
// corrected value starts.
func (r *reader) correction(i int) (int, bool) {
	k, weight := i, 0
	for steps := 0; steps < 12 && k < len(r.t); steps++ {
		t := r.at(k)
		switch {
		case t.is(tCorrect):
			weight += 2
		case t.is(tWeakCorrect):
			weight++
		case t.mark == ',' || t.mark == '-' || t.mark == '.' || t.mark == ';':
			if t.mark == '.' && weight == 0 {
				return i, false
			}
		case t.is(tFiller) && (weight > 0 || t.is(tOpener)):
			if t.is(tArticle) && r.startsNumber(k) {
				return k, weight > 0
			}
		case t.is(tOr) && r.text1(k+1) == "rather":
		default:
			return k, weight > 0
		}
		k++
	}
	return i, false
}
