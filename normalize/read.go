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
