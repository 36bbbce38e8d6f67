package normalize

// Quantities returns every quantity said in text, in order, with spans as byte
// offsets into text. Text is one utterance (a sentence or a few, punctuated or
// not, in any case); cost is linear in its length. What only looks like a
// quantity (prices, years, an engine's torque, video times) is not taken. Of a
// spoken correction only the last value stands. It never panics, whatever the
// bytes; nil means nothing was found.
func Quantities(text string) []Quantity {
	r := newReader()
	defer r.free()
	if !r.scan(text) {
		return nil
	}
	var out []Quantity
	for i := 0; i < len(r.t); {
		if !r.starts(i) {
			i++
			continue
		}
		q, j, ok := r.next(i)
		if ok {
			out = append(out, q)
		}
		i = max(j, i+1)
	}
	return out
}

// Numbers returns the bare numbers said in text, and the ranges and pairs of
// candidates among them, whether or not a unit follows. "One" as a pronoun,
// ordinals, and figures inside words ("M8", "T25") are not taken. Cost, spans
// and corrections are as for Quantities.
func Numbers(text string) []Number {
	r := newReader()
	defer r.free()
	if !r.scan(text) {
		return nil
	}
	var out []Number
	r.bare = true
	for i := 0; i < len(r.t); {
		if !r.starts(i) {
			i++
			continue
		}
		if _, j, ok := r.designation(i); ok {
			i = j
			continue
		}
		e, ok := r.expr(i)
		if !ok {
			i = r.skip(i)
			continue
		}
		if _, j, ok := r.unThread(e.i); ok {
			i = j
			continue
		}
		i = e.next
		if e.unit == nil && (e.n.bare || e.n.one && !e.rangeSet && !r.countsOne(e.n)) {
			continue
		}
		out = append(out, Number{Start: r.at(e.i).start, End: r.at(e.n.j - 1).end,
			Low: e.lo.big(), High: e.hi.big(), Hedged: r.hedged(e.i, e.j), Alt: e.alt})
	}
	return out
}

func newReader() *reader { return &reader{tokens: *tokenPool.Get().(*tokens)} }

func (r *reader) free() {
	const keep = 1 << 16 // tokens; a huge text's slice is not worth keeping
	if cap(r.t) <= keep {
		tokenPool.Put(&tokens{t: r.t[:0]})
	}
}

// starts reports cheaply whether a number, a quantity or a designation may start
// at token i; most words of talk cannot.
func (r *reader) starts(i int) bool {
	t := &r.t[i]
	switch {
	case t.kind == kMark:
		return t.mark == '-' || t.mark == '#' || t.mark == '"'
	case t.kind != kWord:
		return true
	case t.w == nil:
		return false
	case t.w.class != cNone || t.w.traits&starters != 0:
		return true
	case t.w.traits&tArticle != 0:
		w := r.at(i + 1).w
		return w != nil && (w.unit != nil || w.traits&tWhole != 0 || w.class != cNone)
	}
	return t.w.unit != nil && (r.at(i+1).is(tAnd) || t.w.traits&tWhole != 0)
}

const starters = tPoint | tMinus | tBetween | tEm | tTee | tEe | tNumber | tCross | tPozi | tJIS | tTorx | tP

// skip steps over what cannot start a number, a word with figures in it at once.
func (r *reader) skip(i int) int {
	t := r.at(i)
	if t.mark == '"' && !(i > 0 && r.at(i-1).kind == kDigits) {
		r.quotes++
	}
	j := i + 1
	if t.word || t.kind == kDigits {
		for j < len(r.t) && r.t[j].glued && ((r.t[j].word && r.t[j-1].kind == kDigits) || r.t[j].kind == kDigits) {
			j++
		}
	}
	return j
}

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

// next reads the quantity that starts at token i, if one does.
func (r *reader) next(i int) (Quantity, int, bool) {
	if q, j, ok := r.designation(i); ok {
		return q, j, true
	}
	e, ok := r.expr(i)
	if !ok {
		return Quantity{}, r.skip(i), false
	}
	if q, j, ok := r.unThread(e.i); ok {
		return q, j, true
	}
	if q, j, ok := r.bareMetric(e); ok {
		return q, j, true
	}
	if e.unit == nil {
		if q, j, ok := r.unitless(e); ok {
			return q, j, true
		}
		// Nothing came of it. A range may still hold a designation or a better start.
		return Quantity{}, max(i+1, e.next), false
	}
	q, ok := r.quantity(e)
	return q, e.next, ok
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
	if !ok {
		return r.impliedOne(i)
	}
	e = span{i: i, j: n.j, next: n.j, lo: n.v, hi: n.v, n: n}
	if !between {
		e.i = n.i
	}
	// "N and a half" is taken by the number; "an inch and a quarter" here.
	r.unitOf(&e, n)
	if n.split > 0 && r.splits(&e, n) {
		return e, true
	}
	if r.tolerance(&e) {
		return e, true
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
	if !ok1 || !ok2 {
		return false
	}
	if e.unit == nil {
		e.unit = f.unit
	}
	e.lo, e.hi, e.j, e.next, e.rangeSet = lo, hi, f.j, f.j, true
	e.n.j = m.j
	return true
}

// value reads a number, refusing what is none in talk.
func (r *reader) value(i int) (num, bool) {
	t := r.at(i)
	if t.glued && i > 0 && t.kind == kDigits && r.at(i-1).word && !r.at(i-1).is(tBy) {
		return num{}, false // figures inside a word: "A4", "scp173"
	}
	if t.kind == kDigits && t.glued && r.mark(i-1) == '-' && r.glued(i-1) && i > 1 {
		if u := r.at(i - 2); u.word && u.class() == cNone && !(u.glued && u.unit() && r.at(i-3).kind == kDigits) || u.kind == kDigits && u.glued && r.at(i-3).word {
			return num{}, false // "L-202", "scp2-173"
		}
	}
	if t.mark == '-' && t.glued && i > 0 && r.at(i-1).word {
		return num{}, false
	}
	n, ok := r.number(i)
	if !ok {
		return n, false
	}
	if i > 0 && r.mark(i-1) == '$' {
		return n, false
	}
	last := r.at(n.j)
	if n.digits && last.glued && last.word && r.at(n.j-1).kind == kDigits && (last.w == nil || (last.w.unit == nil && last.w.traits == 0)) {
		return n, false // "13F", "24703L202"
	}
	if n.digits && last.glued && last.word && r.glued(n.j+1) && r.at(n.j+1).kind == kDigits && !last.is(tBy) {
		return n, false
	}
	if last.mark == '%' || (last.mark == '\'' && last.glued && r.at(n.j+1).w != nil && r.at(n.j+1).w.text == "s") {
		return n, false
	}
	if r.mark(n.j) == ':' && r.glued(n.j) && r.glued(n.j+1) && r.at(n.j+1).kind == kDigits {
		return n, false // a time
	}
	if r.mark(i-1) == ':' && r.glued(i) && i > 1 && r.at(i-2).kind == kDigits {
		return n, false
	}
	if last.is(tThs) && last.glued && n.digits {
		return n, false // an ordinal
	}
	return n, true
}

// countsOne tells a counted or measured "one" from the pronoun.
func (r *reader) countsOne(n num) bool {
	i := n.i
	if r.at(i).kind == kDigits || i == 0 && r.end(n.j) {
		return true // the whole text, an answer
	}
	prev, nxt := r.at(i-1), r.at(n.j)
	if prev.is(tOr) || prev.is(tTo) || prev.is(tNumber) || nxt.is(tOr) {
		return nxt.is(tOr) || prev.is(tNumber) || r.at(i-2).class() != cNone
	}
	if prev.is(tPronoun) || r.end(n.j) || nxt.kind == kMark && nxt.mark != '-' || nxt.is(tStopOne) {
		return false
	}
	return nxt.word
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
	for range 2 { // "or a sixteen", "to about 25"
		if u := r.at(k); (u.is(tArticle) && !r.startsNumber(k)) || (u.is(tHedge) && u.class() == cNone) || u.w != nil && u.w.text == "the" {
			k++
		}
	}
	return k, alt, true
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
		case t.is(tFiller) && (weight > 0 || t.w.text == "oh" || t.w.text == "uh" || t.w.text == "um" || t.w.text == "i" || t.w.text == "make" || t.w.text == "or" || t.w.text == "er"):
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
				v, w = inchUnit, x.j+1 // "12 ft 2 in more or less"
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
	t := r.at(k)
	if t.mark == '"' && (n.digits || n.frac) {
		if r.quotes%2 == 1 && !n.frac {
			return nil, k
		}
		return inchUnit, k + 1
	}
	if t.mark == '\'' && r.mark(k+1) == '\'' && r.glued(k+1) && (n.digits || n.frac) {
		return inchUnit, k + 2
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
		nx := node.next[w]
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

var inchUnit = func() *unit { return lex.words["inch"].unit.units[0] }()

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

func (r *reader) per(j int) bool { return r.at(j).is(tPer) }

// priced tells pounds of money from pounds of weight.
func (r *reader) priced(n num, j int) bool {
	return r.mark(n.i-1) == '$' || r.near(n.i, 8, tPrice) && !r.near(n.i, 8, tTighten)
}

// near reports a word with one of the traits within d tokens of token i.
func (r *reader) near(i, d int, x trait) bool { return r.within(i-d, i+d+1, x) }

// within reports a word with one of the traits among tokens [i,j).
func (r *reader) within(i, j int, x trait) bool {
	for k := max(0, i); k < min(len(r.t), j); k++ {
		if r.t[k].is(x) {
			return true
		}
	}
	return false
}

// hedged looks for doubt a few words before token i and after token j, within
// the sentence.
func (r *reader) hedged(i, j int) bool {
	for k := i - 1; k >= 0 && k >= i-7; k-- {
		if t := r.at(k); t.is(tHedge) {
			return true
		} else if t.mark == '.' || t.mark == '?' || t.mark == ';' || t.kind == kDigits {
			break
		} else if t.mark == '~' {
			return true
		}
	}
	for k := i; k < j; k++ {
		if r.at(k).is(tMaybe) {
			return true
		}
	}
	for k := j; k < len(r.t) && k < j+3; k++ {
		t := r.at(k)
		if t.is(tHedgeAfter) {
			return true
		}
		if t.mark == '.' || t.kind == kDigits {
			break
		}
	}
	return false
}

// toolNext reports a tool or a drive right after a unit-less value.
func (r *reader) toolNext(i int) bool {
	i = r.hyphen(i)
	return r.at(i).is(tTool | tDrive | tDriveTool)
}
