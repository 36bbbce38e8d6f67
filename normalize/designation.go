package normalize

import (
	"strconv"
	"strings"
)

// designation reads a size that is written as letters and figures: metric
// threads, hexalobular and cross-recess drivers.
func (r *reader) designation(i int) (Quantity, int, bool) {
	t := r.at(i)
	if !t.word || t.w == nil || (t.glued && i > 0 && (r.at(i-1).kind == kDigits || r.at(i-1).word)) {
		if t.mark == '#' {
			return r.numberDriver(i)
		}
		if t.kind != kDigits {
			return Quantity{}, i, false
		}
	}
	switch {
	case t.is(tEm):
		return r.metric(i)
	case t.is(tTorx):
		k := i + 1
		if r.at(k).is(tTee) || r.at(k).is(tEe) {
			k++
		}
		letter, lo, hi := "T", int64(1), int64(100)
		if r.at(i+1).is(tEe) || t.w.text == "etorx" {
			letter, lo, hi = "E", 4, 32
		}
		if n, ok := r.plainInt(k, lo, hi); ok && r.at(n.j).unitless() && r.text1(k) != "one" { // "the star one"
			return r.driver(i, n.j, letter, n.v.n), n.j, true
		}
	case t.is(tTee):
		k := r.hyphen(i + 1)
		if n, ok := r.plainInt(k, 1, 100); ok && r.at(n.j).unitless() &&
			(hexalobular[n.v.n] && (n.v.n >= 5 || r.glued(k)) || r.glued(k) && n.v.n >= 6 || r.near(i, 4, tTorx) || r.at(n.j).is(tTool)) &&
			!r.at(i-1).is(tSeries) {
			j := n.j
			if r.at(j).is(tTorx) {
				j++
			}
			return r.driver(i, j, "T", n.v.n), j, true
		}
	case t.is(tEe) && !t.is(tArticle):
		if n, ok := r.plainInt(i+1, 4, 32); ok && (r.at(n.j).is(tTool|tTorx) || r.near(i, 4, tTorx)) {
			return r.driver(i, n.j, "E", n.v.n), n.j, true
		}
	case t.is(tCross | tPozi | tJIS):
		k := i + 1
		if r.mark(k) == '#' || r.at(k).is(tNumber) {
			k++
			if r.mark(k) == '.' && r.glued(k) {
				k++
			}
		} else if t := r.text1(k); t == "size" {
			k++
		} else if r.mark(k) == '-' {
			k++
		}
		if n, ok := r.plainInt(k, 0, crossMost); ok && r.at(n.j).unitless() {
			return r.driver(i, n.j, crossLetters(t), n.v.n), n.j, true
		}
	case t.is(tP):
		// "p h two"
		if r.text1(i+1) == "h" || r.text1(i+1) == "H" {
			if n, ok := r.plainInt(i+2, 0, crossMost); ok {
				return r.driver(i, n.j, "PH", n.v.n), n.j, true
			}
		}
	case t.is(tNumber):
		return r.numberDriver(i)
	}
	return Quantity{}, i, false
}

// crossMost is the largest number taken for a cross-recess driver; ISO 4757 ends at 4.
const crossMost = 5

func crossLetters(t *token) string {
	switch {
	case t.is(tPozi):
		return "PZ"
	case t.is(tJIS):
		return "JIS"
	}
	return "PH"
}

// unitless reports that the token is no unit, so the figure before it is a
// designation and no measure.
func (t *token) unitless() bool {
	return t.w == nil || t.w.unit == nil || t.is(tTo|tOf|tBy|tTool|tDrive) || t.w.text == "in" || t.w.text == "bar"
}

// plainInt reads a whole number in lo..hi with no fraction.
func (r *reader) plainInt(i int, lo, hi int64) (num, bool) {
	if r.at(i).is(tArticle) || r.at(i).is(tMinus) || r.mark(i) == '-' {
		return num{}, false
	}
	n, ok := r.number(i)
	if !ok {
		return n, false
	}
	if n.split > 0 { // "torx two ten mil": only the first belongs here
		n.v, n.j, n.split = n.first, n.split, 0
	}
	return n, !n.frac && n.v.between(lo, hi)
}

// numberDriver reads "number two phillips", "#2 pozi", and "#10-32".
func (r *reader) numberDriver(i int) (Quantity, int, bool) {
	k := i + 1
	if r.mark(k) == '.' && r.glued(k) {
		k++
	}
	n, ok := r.plainInt(k, 0, 12)
	if !ok {
		return Quantity{}, i, false
	}
	if u := r.at(n.j); u.is(tCross|tPozi|tJIS) && n.v.between(0, crossMost) {
		return r.driver(i, n.j+1, crossLetters(u), n.v.n), n.j + 1, true
	}
	if q, j, ok := r.unThread(k); ok {
		q.Start = r.at(i).start
		return q, j, true
	}
	return Quantity{}, i, false
}

func (r *reader) driver(i, j int, letters string, n int64) Quantity {
	return Quantity{Start: r.at(i).start, End: r.at(j - 1).end, Kind: Driver,
		Canonical: letters + strconv.FormatInt(n, 10), Hedged: r.hedged(i, j)}
}

// hexalobular are the sizes of ISO 10664 and those sold beside them; a bare "T"
// with another number is taken only near a word for the drive.
var hexalobular = map[int64]bool{1: true, 2: true, 3: true, 4: true, 5: true, 6: true, 7: true, 8: true, 9: true,
	10: true, 15: true, 20: true, 25: true, 27: true, 30: true, 35: true, 40: true, 45: true, 47: true, 50: true,
	55: true, 60: true, 70: true, 80: true, 90: true, 100: true}

// metric reads one thread, two candidates ("an M6 or an M8"), and of spoken
// corrections ("M8, no, M10") the last.
func (r *reader) metric(i int) (Quantity, int, bool) {
	q, j, ok := r.oneMetric(i)
	if !ok {
		return q, j, false
	}
	for range 8 {
		m, ok := r.correction(j)
		if !ok || !r.at(m).is(tEm) {
			break
		}
		q2, j2, ok := r.oneMetric(m)
		if !ok {
			break
		}
		q, j = q2, j2
	}
	if r.at(j).is(tOr) && !q.Alt {
		m := j + 1
		if r.at(m).is(tArticle) {
			m++
		}
		if r.at(m).is(tEm) {
			if q2, j2, ok := r.oneMetric(m); ok {
				q.Canonical += " | " + q2.Canonical
				q.Alt, q.End = true, q2.End
				j = j2
			}
		}
	}
	return q, j, true
}

// oneMetric reads "M8", "em eight", "M ten by one point two five by thirty".
func (r *reader) oneMetric(i int) (Quantity, int, bool) {
	// "5 m 8 bolts": a metre, not an M8.
	if i > 0 && r.at(i-1).kind == kDigits && !r.glued(i+1) && r.at(i).w.text == "m" {
		return Quantity{}, i, false
	}
	k := r.hyphen(i + 1)
	t := r.at(k)
	if t.is(tArticle) || t.is(tMinus) || t.mark == '-' || t.is(tPoint) || t.class() == cScale {
		return Quantity{}, i, false
	}
	n, ok := r.number(k)
	if !ok || n.frac {
		return Quantity{}, i, false
	}
	if n.split > 0 {
		n.v, n.j = n.first, n.split
	}
	d := n.v
	f := d.float()
	if f < 1 || f > 68 || (d.d != 1 && d.d != 2 && d.d != 5) || (d.d != 1 && f > 5) {
		return Quantity{}, i, false
	}
	j := n.j
	if r.at(j).is(tMotorway) || (r.at(j).glued && r.at(j).word && r.at(j-1).kind == kDigits && !r.at(j).is(tBy)) {
		return Quantity{}, i, false
	}
	if r.text1(i) == "em" && (r.short(i) || !r.near(i, 12, tFastener|tThread|tTool|tHead|tBy) && i > 0 && !r.at(i-1).is(tArticle)) {
		return Quantity{}, i, false
	}
	q := Quantity{Start: r.at(i).start, Kind: Thread}
	pitch, length, j := r.pitchLength(d, j)
	q.Canonical = "M" + printRat(d)
	if pitch.n > 0 {
		q.Canonical += "x" + printRat(pitch)
	}
	if length.n > 0 {
		q.Canonical += " x " + printRat(length) + " mm"
		q.Length = length.big()
	}
	// "M8 by 30 or 35", "M6 by 20, or is it 25"
	if x, ok := r.other(span{i: i, j: j}); ok && length.n > 0 && x.v.isInt() && x.v.n >= 3 && near(ordered(length, x.v)) {
		e := span{}
		if r.unitOf(&e, x); e.unit == nil || e.unit.code == "mm" {
			q.Canonical += " | " + strings.Replace(q.Canonical, " x "+printRat(length), " x "+printRat(x.v), 1)
			q.Alt, j = true, max(x.j, e.j)
		}
	}
	q.End, q.Hedged = r.at(j-1).end, r.hedged(i, j)
	return q, j, true
}

// short reports "em" said for "them": "there's five of 'em two on each side".
func (r *reader) short(i int) bool {
	return r.mark(i-1) == '\'' || r.at(i-1).is(tOf) || i > 0 && r.at(i-1).word && r.at(i-1).w == nil && !r.within(i, i+5, tFastener|tThread|tTool)
}

// pitchLength reads "by one point two five by thirty" after a metric thread of
// diameter d: what can be its pitch is the pitch, what cannot is the length.
func (r *reader) pitchLength(d rat, j int) (pitch, length rat, end int) {
	if x, ok := r.number(j); ok && x.i == j && !x.v.isInt() && !x.frac { // "M8 1.25"
		if p, e, ok := r.pitch(d, x, false); ok && knownPitches[p] && !r.at(e).unit() {
			pitch, j = p, e
		}
	}
	for range 2 {
		m := j
		dash := r.mark(m) == '-' && r.glued(m) && r.glued(m+1)
		if !r.at(m).is(tBy) && r.mark(m) != '*' && !dash {
			break
		}
		m++
		if r.at(m).is(tArticle) && !r.startsNumber(m) {
			break
		}
		x, ok := r.number(m)
		if !ok || x.neg || x.v.n == 0 {
			break
		}
		if pitch.n == 0 && length.n == 0 {
			if p, e, ok := r.pitch(d, x, dash); ok {
				pitch, j = p, e
				if u, e := r.unit(j, x); u != nil && u.code == "mm" {
					j = e
				}
				if r.text1(j) == "pitch" {
					j++
				}
				continue
			}
		}
		if x.split > 0 {
			x.v, x.j = x.first, x.split
		}
		if dash || x.v.float() > 1000 || !x.v.isInt() && x.v.d != 2 || x.v.float() < 3 {
			break
		}
		length, j = x.v, x.j
		if u, e := r.unit(j, x); u != nil && u.code == "mm" {
			j = e
		}
		break
	}
	return pitch, length, j
}

// pitch reads x as a thread's pitch: "1.25", and "one twenty five" or "one two
// five" said for it. A pitch is never more than a quarter of the diameter.
func (r *reader) pitch(d rat, x num, dash bool) (rat, int, bool) {
	fits := func(p rat) bool { return p.n > 0 && p.float() <= 6 && p.float() <= d.float()*0.25+0.01 }
	switch {
	case x.split > 0 && x.first.n <= 9: // "one twenty five"
		if p, _ := makeRat(x.v.n, 100); fits(p) && knownPitches[p] {
			return p, x.j, true
		}
		return rat{}, 0, false
	case x.v.between(1, 2) && !x.digits: // "one two five", "one five"
		n, scale, j := x.v.n, int64(1), x.j
		for r.at(j).class() == cUnit && scale < 100 {
			n, scale = n*10+r.at(j).value(), scale*10
			j++
		}
		if p, _ := makeRat(n, scale); scale > 1 && fits(p) && knownPitches[p] {
			return p, j, true
		}
	}
	if x.split > 0 || dash && !knownPitches[x.v] {
		return rat{}, 0, false
	}
	return x.v, x.j, fits(x.v) && (!x.frac || x.v.d <= 4)
}

// knownPitches are the pitches of ISO 261.
var knownPitches = map[rat]bool{{1, 4}: true, {7, 20}: true, {2, 5}: true, {9, 20}: true, {1, 2}: true, {3, 5}: true,
	{7, 10}: true, {3, 4}: true, {4, 5}: true, {1, 1}: true, {5, 4}: true, {3, 2}: true, {7, 4}: true, {2, 1}: true,
	{5, 2}: true, {3, 1}: true, {7, 2}: true, {4, 1}: true, {9, 2}: true, {5, 1}: true, {11, 2}: true, {6, 1}: true}

// bareMetric reads a thread said without its M near a word for threads: "the
// thread is ten by one two five", "six by thirty bolts".
func (r *reader) bareMetric(e span) (Quantity, int, bool) {
	d := e.lo
	if e.rangeSet || !d.between(3, 48) || e.n.split > 0 || !r.at(e.n.j).is(tBy) {
		return Quantity{}, 0, false
	}
	pitch, length, j := r.pitchLength(d, e.n.j)
	if j == e.n.j || length.n > 0 && (length.float() < 10 || length.float() < d.float()) {
		return Quantity{}, 0, false
	}
	if pitch.n > 0 && knownPitches[pitch] && r.near(e.i, 8, tThread|tFastener) || length.n > 0 && r.at(j).is(tFastener) && d.n <= 20 {
		q := Quantity{Start: r.at(e.i).start, End: r.at(j - 1).end, Kind: Thread,
			Canonical: "M" + printRat(d), Hedged: r.hedged(e.i, j), Assumed: true}
		if pitch.n > 0 {
			q.Canonical += "x" + printRat(pitch)
		}
		if length.n > 0 {
			q.Canonical += " x " + printRat(length) + " mm"
			q.Length = length.big()
		}
		return q, j, true
	}
	return Quantity{}, 0, false
}

func (t *token) unit() bool { return t.w != nil && t.w.unit != nil }

// unThread reads "quarter twenty", "5/16-18", "ten thirty two" at token i, where
// the pair exists in the unified series.
func (r *reader) unThread(i int) (Quantity, int, bool) {
	n, ok := r.number(i)
	if !ok || n.neg || n.v.n == 0 {
		return Quantity{}, i, false
	}
	major, k := "", n.j
	var tpi num
	switch {
	case n.frac && !n.v.isInt() && n.v.less(whole(2)):
		if u, j := r.unit(k, n); u != nil && u.code == "in" {
			k = j
		}
		if r.mark(k) == '-' || r.at(k).is(tBy) && r.at(k).w.text == "x" {
			k++
		}
		if r.mark(k) == '-' || r.at(k).is(tArticle) {
			return Quantity{}, i, false
		}
		if tpi, ok = r.number(k); !ok || !tpi.v.isInt() || tpi.frac {
			return Quantity{}, i, false
		}
		major = printFraction(n.v, "-")
	case n.split > 0 && n.first.n <= 12: // "ten" cannot split, "eight thirty two" can
		n.v, tpi = n.first, num{v: n.second, j: n.j}
		major = "#" + printRat(n.v)
	case n.v.between(0, 12) && !n.frac:
		glue := r.mark(k) == '-' && r.glued(k) && r.glued(k+1)
		if glue {
			k++
		}
		if tpi, ok = r.number(k); !ok || !tpi.v.isInt() || tpi.frac || tpi.i != k {
			return Quantity{}, i, false
		}
		major = "#" + printRat(n.v)
	default:
		return Quantity{}, i, false
	}
	name := major + "-" + printRat(tpi.v)
	if !unifiedNames()[name] {
		return Quantity{}, i, false
	}
	j := tpi.j
	if r.at(j).unit() && !r.at(j).unitless() && !r.at(j).is(tThread) || r.at(j).is(tTool) && !r.at(j).is(tThread) {
		return Quantity{}, i, false // "a half twenty mil", "bar, half inch, thirteen socket"
	}
	hash := i > 0 && (r.mark(i-1) == '#' || r.at(i-1).is(tNumber))
	if major[0] == '#' && !hash && !r.near(i, 8, tThread|tFastener) {
		return Quantity{}, i, false
	}
	if r.at(n.i).is(tArticle) {
		n.i++ // "a half thirteen": the article is the thread's, not the number's
	}
	q := Quantity{Start: r.at(n.i).start, Kind: Thread, Canonical: name}
	if r.at(j).is(tBy) {
		if x, ok := r.number(j + 1); ok && x.v.n > 0 && !x.neg {
			q.Length = x.v.big()
			j = x.j
			if u, e := r.unit(j, x); u != nil && u.code == "in" {
				j = e
			}
			q.Canonical += " x " + printFraction(x.v, " ") + " in"
		}
	}
	q.End, q.Hedged = r.at(j-1).end, r.hedged(n.i, j)
	return q, j, true
}

// unitless reads what is a size though no unit was said: "three eighths drive",
// "the 7 8 ths socket", "a ten socket", "a 520 chain".
func (r *reader) unitless(e span) (Quantity, int, bool) {
	k := r.hyphen(e.j)
	t := r.at(k)
	n := e.n
	q := Quantity{Start: r.at(e.i).start, Low: e.lo.big(), High: e.hi.big(), Alt: e.alt, Hedged: r.hedged(e.i, e.j)}
	switch {
	case n.frac && e.lo.less(whole(2)) && (t.is(tDrive) || (t.is(tDriveTool) && driveSize(e.lo))):
		q.Kind, q.Unit = Drive, "in"
	case n.frac && e.lo.less(whole(4)) && e.lo.d >= 2 && e.lo.d <= 64 && (t.is(tTool) || t.is(tHead) && t.w.text == "head"):
		if n.bare && !(t.w.text == "socket" || t.w.text == "spanner" || t.w.text == "wrench" || t.w.text == "ratchet") {
			return q, 0, false
		}
		q.Kind, q.Unit = Size, "in"
	case n.frac && e.lo.less(whole(2)) && t.is(tInchThread): // "quarter Whitworth"
		q.Unit = "in"
		return r.inchThread(q, e, k), k + 1, true
	case r.text1(k) == "chain" && e.lo.isInt() && chainNumbers()[printRat(e.lo)] && !e.rangeSet:
		q.Kind, q.Canonical = Chain, printRat(e.lo)
		q.Low, q.High = nil, nil
		q.End = r.at(e.j - 1).end
		return q, e.j, true
	case t.is(tTorx) && n.v.isInt() && hexalobular[n.v.n] && n.v.n >= 6 && !e.rangeSet && n.split == 0: // "a 25 torx"
		return r.driver(e.i, k+1, "T", n.v.n), k + 1, true
	case !n.frac && e.lo.between(4, 46) && e.hi.between(4, 46) && singularTool(t) && r.determined(e.i):
		if n.split > 0 {
			return q, 0, false
		}
		q.Kind, q.Unit, q.Assumed = Size, "mm", true
	default:
		return q, 0, false
	}
	end := e.j
	if q.Kind == Drive && t.is(tDrive) {
		end = k + 1
	}
	q.End = r.at(end - 1).end
	q.Canonical = canonical(q, n)
	return q, end, true
}

// inchThread makes a thread of a size in inches whose series is named at token k, or the
// size of a spanner that is told by it: "a three eighths Whitworth spanner".
func (r *reader) inchThread(q Quantity, e span, k int) Quantity {
	q.Kind, q.End = Size, r.at(k).end
	q.Canonical = canonical(q, e.n)
	if !r.at(k + 1).is(tTool) {
		q.Kind, q.Low, q.High, q.Unit = Thread, nil, nil, ""
	}
	return q
}

func driveSize(v rat) bool {
	return v == rat{1, 4} || v == rat{3, 8} || v == rat{1, 2} || v == rat{3, 4} || v == rat{1, 1}
}

func singularTool(t *token) bool {
	if t.w == nil {
		return false
	}
	switch t.w.text {
	case "socket", "spanner", "wrench", "hex", "allen":
		return true
	}
	return false
}

func (r *reader) determined(i int) bool {
	t := r.at(i - 1)
	if i == 0 || t.w == nil {
		return false
	}
	switch t.w.text {
	case "a", "an", "the", "your", "my", "this", "that":
		return true
	}
	return false
}

// quantity makes the quantity of a value with a unit, or refuses what is none.
func (r *reader) quantity(e span) (Quantity, bool) {
	q := Quantity{Start: r.at(e.i).start, End: r.at(e.j - 1).end, Kind: e.unit.kind, Unit: e.unit.code,
		Low: e.lo.big(), High: e.hi.big(), Alt: e.alt, Assumed: e.unit.assumed}
	k := r.hyphen(e.j)
	after := r.at(k)
	if q.Unit == "in" && after.is(tInchThread) {
		return r.inchThread(q, e, k), true
	}
	if e.lo.n < 0 && q.Kind != Temperature && q.Kind != Angle {
		return q, false
	}
	switch q.Kind {
	case Torque:
		if (r.ofEngine(e.i) || r.within(e.i, e.i+13, tEngine)) && !r.at(e.i-1).is(tTo) || r.powers(e) {
			return q, false
		}
		if e.unit.kilo && e.hi.float() > 40 {
			q.Unit = "kgf.cm"
		}
	case Length:
		if q.Unit == "mm" || q.Unit == "in" {
			q.Kind = r.lengthKind(e, after)
			if q.Kind == Drive && after.is(tDrive) {
				q.End = after.end
			}
		}
	case Volume:
		if after.is(tMachine) || after.is(tArticle) && r.at(k+1).is(tMachine) {
			return q, false // a 450 cc engine
		}
	case Distance:
		if r.near(e.j, 5, tClock) || e.lo.float() >= 1500 && !r.within(e.i-4, e.i, tInterval) || e.lo.float() >= 20000 {
			return q, false // a mileage
		}
	case Angle:
		if q.Unit == "deg" {
			if r.near(e.i, 8, tTemperature) || r.within(e.j, e.j+3, tWeather) {
				q.Kind = Temperature
			} else if e.hi.float() > 720 {
				return q, false
			}
		} else if q.Unit == "turn" && e.n.one && r.text1(e.j-1) == "turns" {
			return q, false
		}
	case Duration:
		if r.near(e.i, 6, tSeries) || e.n.one {
			return q, false
		}
	}
	if q.Kind != Size && q.Kind != Drive && q.Kind != Length {
		q.Alt = false
	}
	q.Hedged = r.hedged(e.i, e.j)
	q.Canonical = canonical(q, e.n)
	return q, true
}

// ofEngine reports a word of what an engine puts out shortly before token i: "it makes", but
// of a sentence before only "they asked what it makes", not "I don't know who makes these up".
func (r *reader) ofEngine(i int) bool {
	same := true
	for k := i - 1; k >= max(0, i-12); k-- {
		t := r.at(k)
		if t.is(tEngine) && (same || t.w.text != "makes" || r.at(k+1).kind == kMark) {
			return true
		}
		same = same && t.mark != '.' && t.mark != '?'
	}
	return false
}

// powers reports a motor's torque: "it's got 250 newton metres of torque", "they
// put eighty newton metres through it".
func (r *reader) powers(e span) bool {
	for k := e.i - 4; k < e.i; k++ {
		switch r.text1(max(k, 0)) {
		case "got", "has", "have", "puts", "put", "with":
			return r.at(e.j).is(tOf) && r.text1(e.j+1) == "torque" || r.text1(e.j) == "through"
		}
	}
	return false
}

// lengthKind tells a tool's or a head's size and a square drive from a length.
func (r *reader) lengthKind(e span, after *token) Kind {
	if after.is(tDrive) {
		return Drive
	}
	if r.text1(e.j) == "square" && r.at(e.j+1).is(tDrive) {
		return Drive
	}
	// 1.2 inch before a drive tool is no drive that exists: CheckSize asks.
	if e.unit.code == "in" && (driveSize(e.lo) || !e.n.frac && !e.lo.isInt() && e.lo.less(whole(10))) && after.is(tDriveTool) && !(after.w.text == "impact" && r.at(e.j+1).is(tTool)) {
		return Drive
	}
	if e.hi.float() > 80 {
		return Length
	}
	if after.is(tTool) || after.is(tFastener) && e.hi.float() <= 46 && r.text1(e.j+1) != "long" || after.is(tHead) {
		return Size
	}
	for k := e.j; k < e.j+3; k++ { // "ten mil deep socket", "24 mil ring end"
		t := r.at(k)
		if t.kind == kMark || t.is(tGap) || t.is(tAnd) {
			break
		}
		if t.is(tTool) && !t.is(tGap) {
			return Size
		}
	}
	if r.near(e.i, 10, tGap) {
		return Length
	}
	if e.alt && (e.unit.mil || r.at(e.i-1).is(tArticle)) {
		return Size
	}
	if e.unit.code == "mm" && (r.determined(e.i) || r.at(e.i-1).is(tMaybe)) && r.stops(e.j) && e.lo.float() >= 2 {
		return Size
	}
	if e.unit.code == "mm" && e.hi.between(2, 46) && !r.at(e.i-1).is(tBy) && r.within(e.i-6, e.i, tFastener) {
		return Size // "four bolts, ten mil"
	}
	for k := e.i - 1; k >= max(0, e.i-4); k-- { // "socket, ten mil", "hex key is a 6 mm"
		t := r.at(k)
		if t.is(tTool) {
			return Size
		}
		if t.mark == '.' || t.kind == kDigits {
			break
		}
	}
	return Length
}
