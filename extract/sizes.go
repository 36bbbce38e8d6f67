package extract

import (
	"math"
	"math/big"
	"slices"
	"sort"
	"strconv"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// sized is a size heard, before it is told whose it is.
type sized struct {
	lo, hi int
	canon  []string
	kind   normalize.Kind
	hedged bool
	cl     int
	tool   int  // mention of the tool it belongs to, or -1
	asked  bool // all that is asked: "Five?"
	gone   bool
	mends  *sized // the size that it corrects, whose owner it has
}

// sizesAndTools reads the sizes said, and the tools with theirs.
func (r *reading) sizesAndTools() ([]Size, []Tool) {
	found := r.findSizes()
	r.sizeTools(found)
	return r.sizes(found), r.tools(found)
}

// sizeTool are the tools that have sizes of their own; the value is the dimension they tell.
var sizeTool = map[string]string{"socket": "across-flats", "spanner": "across-flats", "wrench": "across-flats", "key": "key", "hex": "key", "allen": "key", "brugola": "key", "inbus": "key", "imbus": "key", "bit": "driver",
	"ratchet": "drive", "bar": "drive", "torx": "driver", "driver": "driver", "screwdriver": "driver", "extension": "drive", "ender": "across-flats", "drill": "length", "pipe": "length", "yoke": "key", "sockets": "across-flats", "spanners": "across-flats", "wrenches": "across-flats", "tap": "thread", "punch": "length", "star": "driver", "end": "across-flats", "phillips": "driver", "crosshead": "driver", "pozidriv": "driver", "gun": "drive", "impact": "drive", "handle": "across-flats", "adjustable": "length", "runner": "across-flats", "threaded rod": "thread", "studding": "thread", "die": "thread", "chaser": "thread"}

func (r *reading) findSizes() []sized {
	var out []sized
	for qi := range r.qtys {
		q := &r.qtys[qi]
		switch q.Kind {
		case normalize.Size, normalize.Thread, normalize.Drive, normalize.Driver, normalize.Length:
		default:
			continue
		}
		c := &r.clauses[q.cl]
		if q.Kind == normalize.Length && !r.sizeLike(q) || r.prev(q.lo) == "by" && r.farBy(c, q.lo) && !r.byLength(q.lo) {
			continue // "it's out by two or three mil"
		}
		if c.mood&(aside|greeting) != 0 {
			continue
		}
		kind := q.Kind
		if kind == normalize.Drive && r.word(q.hi) == "square" && r.next(q.hi) == "key" {
			kind = normalize.Size // what locks a wheel on its shaft
		}
		s := sized{lo: q.lo, hi: q.hi, kind: kind, hedged: q.Hedged, cl: q.cl, tool: -1}
		for _, x := range strings.Split(q.Canonical, " | ") {
			f := sizeForm(x)
			if f == "3/4 in" && q.lo > 0 && strings.HasPrefix(strings.ToLower(r.text(q.lo, q.hi)), "three quarter-inch") && r.pluralAfter(q) {
				f = "1/4 in" // "three quarter-inch screws": three of them
			}
			if mm := halfMillimetres[f]; mm != "" && !strings.Contains(strings.ToLower(r.text(q.lo, q.hi)), "in") {
				f = mm // "a two and a half Allen"
			}
			if n, ok := wholeInches(f); ok && n > 3 {
				if len(s.canon) == 0 && !strings.Contains(q.Canonical, " | ") {
					continue // "a twelve inch adjustable": how long it is
				}
				f = strconv.Itoa(n) + " mm" // "a thirteen, might be a half inch"
			}
			if x := slashed[f]; x != "" {
				f, s.hedged = x, true // heard for it; the checks ask
			}
			s.canon = append(s.canon, f)
		}
		if len(s.canon) > 0 {
			out = append(out, s)
		}
	}
	out = append(out, r.bareSizes()...)
	sort.SliceStable(out, func(i, j int) bool { return out[i].lo < out[j].lo })
	for i := range out {
		s := &out[i]
		if x := r.threadOf(s, s.canon[0]); len(s.canon) == 1 && kindOf(s.kind) == normalize.Size && x != "" {
			s.kind, s.canon[0] = normalize.Thread, x
		}
	}
	r.threadLengths(out)
	r.unite(out)
	var kept []sized
	for _, s := range out {
		if !s.gone && !r.refused(&s) {
			kept = append(kept, s)
		}
	}
	return kept
}

// refused tells whether a size is said not to fit: "an eight won't go on", "the ten's too big".
func (r *reading) refused(s *sized) bool {
	for i := s.hi; i < min(s.hi+4, len(r.toks)) && r.toks[i-1].brk < brkComma && !r.toks[i].is(wOpener|wSubject|wPreposition); i++ {
		switch next := r.next(i); r.toks[i].s {
		case "won't", "wouldn't", "doesn't", "don't", "didn't", "n't":
			return next == "go" || next == "fit" || next == "even" || next == "quite"
		case "too", "hair", "bit", "touch", "shade":
			return (next == "big" || next == "small" || next == "loose") && (r.toks[i-1].is(wLinking) || r.toks[i-1].s == "a" && r.word(i-2) != "" && r.toks[i-2].is(wLinking))
		case "was":
			return next == "the" && r.word(i+2) == "old" // "twenty seven was the old one"
		}
	}
	return false
}

// threadLengths gives threads the length that is told of them after: "it's M8, and I think
// it's a twenty long, could be a twenty-five".
func (r *reading) threadLengths(out []sized) {
	for i := range out {
		s := &out[i]
		if s.kind != normalize.Thread || len(s.canon) != 1 || s.canon[0][0] != 'M' || strings.Contains(s.canon[0], "x") {
			continue
		}
		thread := s.canon[0]
		for j := sort.Search(len(r.bare), func(k int) bool { return r.bare[k].lo >= s.hi }); j < len(r.bare); j++ {
			f := &r.bare[j]
			if r.clauses[f.cl].sentence != r.clauses[s.cl].sentence || f.lo-s.hi > 14 {
				break
			}
			if len(s.canon) == 1 && s.canon[0] == thread {
				if r.word(f.hi) == "long" && r.toks[f.hi-1].brk == brkNone && f.is != turnedBy && f.Low.IsInt() && compare(f.Low, 8) >= 0 {
					s.canon[0] = thread + "x" + f.Low.RatString()
					s.hi = f.hi
					s.hedged = s.hedged || f.Hedged
				}
			} else if f.lo-s.hi <= 5 && f.Low.IsInt() && r.eitherOr(s.hi, f.lo) {
				s.canon, s.hi, s.hedged = append(s.canon, thread+"x"+f.Low.RatString()), f.hi, true
				break
			}
		}
	}
}

// eitherOr tells whether what stands between two tokens makes one thing or the other of them.
func (r *reading) eitherOr(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		switch r.toks[i].s {
		case "or", "maybe", "might", "could", "may":
			return true
		}
	}
	return false
}

// timeWords are the words after a number for how long or how often.
var timeWords = wordsOf("times and shares")

// pluralAfter tells whether several things are named right after a quantity.
func (r *reading) pluralAfter(q *quantity) bool {
	for _, mi := range r.clauses[q.cl].mentions {
		if m := &r.mentions[mi]; m.from >= q.hi && m.from-q.hi <= 1 {
			return m.plural && m.kind&lexicon.Fastener != 0
		}
	}
	return false
}

// driveNext tells whether what has a square drive is named at a token.
func (r *reading) driveNext(i int) bool {
	if i >= len(r.toks) || r.toks[i].men < 0 {
		return r.word(i) == "drive"
	}
	m := &r.mentions[r.toks[i].men]
	return m.kind&lexicon.Tool != 0 && sizeTool[m.head] == "drive"
}

// slashed are drives as recognisers write them: "1.2 inch" is no drive.
var slashed = map[string]string{"1.4 in": "1/4 in", "3.8 in": "3/8 in", "1.2 in": "1/2 in", "3.4 in": "3/4 in"}

// halfMillimetres are keys and nuts as they come out where no unit was said: no key
// is so many inches and a half.
var halfMillimetres = map[string]string{"1-1/2 in": "1.5 mm", "2-1/2 in": "2.5 mm", "3-1/2 in": "3.5 mm", "4-1/2 in": "4.5 mm", "5-1/2 in": "5.5 mm"}

func wholeInches(s string) (int, bool) {
	n, err := strconv.Atoi(strings.TrimSuffix(s, " in"))
	return n, err == nil && strings.HasSuffix(s, " in")
}

// sizeForm writes a size in the record's way.
func sizeForm(s string) string {
	s = strings.ReplaceAll(s, " x ", "x")
	if strings.HasPrefix(s, "M") {
		s = strings.TrimSuffix(s, " mm")
	}
	if f := strings.Fields(s); len(f) == 3 && strings.Contains(f[1], "/") {
		s = f[0] + "-" + f[1] + " " + f[2]
	}
	return s
}

// sizeLike tells whether a length is the size of a fastener or of a tool: it
// stands beside one, and is no longer than such sizes are.
func (r *reading) sizeLike(q *quantity) bool {
	if q.Low == nil || q.Unit == "cm" {
		return false
	}
	mm, ok := normalize.Convert(q.Low, q.Unit, "mm")
	if !ok || compare(mm, 65) > 0 || compare(mm, 1) < 0 {
		return false
	}
	c := &r.clauses[q.cl]
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if (m.lo == q.hi || m.from == q.hi) && (m.kind&(lexicon.Fastener) != 0 || sizeTool[m.head] != "" || rigging.has(m.head)) {
			return true
		}
		if m.hi == q.lo && (m.kind&lexicon.Fastener != 0 || m.kind&lexicon.Tool != 0 && sizeTool[m.head] != "") {
			return true
		}
	}
	if w := r.word(q.hi); headWords.has(w) || threadWords.has(w) && r.toks[q.hi-1].brk < brkComma {
		return true
	}
	if r.byLength(q.lo) || keySize(mm) && r.orSize(q.lo) {
		return true
	}
	if n := r.word(q.hi); q.Unit == "mm" && keySize(mm) && (n == "both" || n == "each") && !r.measured(c, q.lo, q.hi) && r.turnedNear(q.cl, q.lo) {
		return true // "thirteen mil both ends"
	}
	if q.Unit == "in" && !q.Low.IsInt() && (q.Low.Denom().Int64() >= 8 || r.turnedNear(q.cl, q.lo)) && r.word(q.hi) == "on" && definiteWord.has(r.next(q.hi)) {
		return true
	}
	// "thirteen mil goes on as well", "it may be inch and a quarter"
	if n := r.word(q.hi); keySize(mm) && compare(mm, 7) >= 0 && r.sizeTalk(c) && (n == "goes" && r.next(q.hi) == "on" || n == "fits" || r.prev(q.lo) == "be" && (r.word(q.lo-2) == "may" || r.word(q.lo-2) == "might" || r.word(q.lo-2) == "could") || r.prev(q.lo) == "either" || r.prev(q.lo) == "tried" || r.prev(q.lo) == "the" && r.word(q.lo-2) == "tried") && !r.measured(c, q.lo, q.hi) {
		return true
	}
	if r.measured(c, q.lo, q.hi) || r.farBy(c, q.lo) || r.isNew(c, q.lo) {
		return false
	}
	if r.word(q.lo-2) == "with" && r.prev(q.lo) == "the" && r.nothingMore(c, q.hi) {
		return true // "I checked every one of them with the half inch"
	}
	// "it's eight mil and you want the long Allen": the tool comes after
	if keySize(mm) && (r.prev(q.lo) == "'s" || r.prev(q.lo) == "are" || r.prev(q.lo) == "'re" || r.prev(q.lo) == "is") && r.toolAfter(q.hi, 8) >= 0 {
		return true
	}
	// alone in its clause after a fastener or a number of them: "Two in this one. Twelve mil."
	if r.told(c, q.lo, q.hi) && keySize(mm) && r.afterFasteners(q.cl, q.lo) {
		return true
	}
	// "battery negative off, ten mil, and tuck it away": between commas, where things are undone or done up
	if n := r.word(q.hi); q.Unit == "mm" && keySize(mm) && (q.lo == c.lo || r.toks[q.lo-1].brk >= brkPause) && (q.hi == c.hi || r.toks[q.hi-1].brk >= brkPause || n == "again" || n == "too" || n == "on" && ofTwo.has(r.next(q.hi))) && r.doneUpNear(q.cl) {
		return true
	}
	if q.Unit == "in" && inchFraction(q.Low) && !r.anInch(q.lo, q.hi) && !r.measuredBefore(q.cl, q.lo) && r.alone(c, q.lo, q.hi) && (r.doneUpNear(q.cl) || r.fastenersNear(q.cl, q.lo)) {
		return true
	}
	// "there's two, ten mil"
	if q.lo > c.lo && r.toks[q.lo-1].brk >= brkPause && keySize(mm) && r.countedIn(c, q.lo) {
		return true
	}
	for _, mi := range c.mentions {
		if r.mentions[mi].kind&lexicon.Fastener != 0 {
			return true
		}
	}
	return false
}

// byLength tells whether a length at a token is how long a screw is whose size was just told,
// or may be: "five sixteenths, by inch and three quarter. Or two inch."
func (r *reading) byLength(lo int) bool {
	if lo < 2 {
		return false
	}
	if q := r.toks[lo-2].qty; r.toks[lo-1].s == "or" && q >= 0 {
		return r.byLength(r.qtys[q].lo)
	}
	return r.toks[lo-1].s == "by" && r.sizeEnds(lo-1)
}

// orSize tells whether a length at a token is the other of two sizes: "seven sixteenths or eleven mil".
func (r *reading) orSize(lo int) bool {
	if lo > 2 && articles.has(r.toks[lo-1].s) {
		lo--
	}
	return lo > 1 && r.toks[lo-1].s == "or" && r.sizeEnds(lo-1)
}

// sizeEnds tells whether a size, with its unit or without, ends at a token.
func (r *reading) sizeEnds(i int) bool {
	if q := r.toks[i-1].qty; q >= 0 {
		k := r.qtys[q].Kind
		return k == normalize.Thread || kindOf(k) == normalize.Size
	}
	j := sort.Search(len(r.bare), func(k int) bool { return r.bare[k].hi >= i })
	return j < len(r.bare) && r.bare[j].hi == i && r.bare[j].is == turnedBy
}

// doneUpNear tells whether something is undone or done up in a clause or beside it.
func (r *reading) doneUpNear(ci int) bool {
	for k := max(ci-1, 0); k <= min(ci+1, len(r.clauses)-1); k++ {
		for _, ai := range r.clauses[k].acts {
			switch r.acts[ai].action.Name {
			case "remove", "disconnect", "slacken", "tighten", "start by hand", "fit":
				return true
			}
		}
	}
	return false
}

// ofTwo are the words for one side or the other.
var ofTwo = set("one the both each this that")

// rigging are the parts that join things as fasteners do and are told by their size.
var rigging = wordsOf("joins as fasteners do")

// toolAfter gives the tool with sizes that is named, without a size of its own,
// within so many tokens of the same sentence, or -1.
func (r *reading) toolAfter(i, n int) int {
	for k := i; k < min(len(r.toks), i+n) && r.toks[k].qty < 0; k++ {
		if m := int(r.toks[k].men); m >= 0 {
			if x := &r.mentions[m]; x.kind&lexicon.Tool != 0 && (sizeTool[x.head] == "across-flats" || sizeTool[x.head] == "key") && !strings.Contains(x.name, "torque") {
				return m
			}
			return -1
		}
		if r.toks[k].brk >= brkSentence {
			return -1
		}
	}
	return -1
}

// farBy tells whether a length is by how much something is out, or only about so much:
// "it's high by, what, four mil", "it's about two mil".
func (r *reading) farBy(c *clause, i int) bool {
	k := i - 1
	for k > c.lo && k > i-4 && (r.toks[k].s == "what" || r.toks[k].s == "like" || r.toks[k].s == "about" || r.toks[k].s == "maybe") {
		k--
	}
	return k >= c.lo && (r.toks[k].s == "by" || r.toks[i-1].s == "about")
}

// measured tells whether what is said around [lo,hi) is how long, thick or far something is.
func (r *reading) measured(c *clause, lo, hi int) bool {
	measures := func(i int) bool {
		if besideMeasure.has(r.toks[i].s) && i != hi && i != lo-1 {
			return false // "ten mil on the screws, from the feel of it"
		}
		return measures.has(r.toks[i].s) && !(r.toks[i].s == "left" && r.next(i) == "hand") && (r.toks[i].men < 0 || r.mentions[r.toks[i].men].kind&lexicon.Tool == 0) // but a long bar is no measure
	}
	for i := lo - 1; i >= max(c.lo, lo-6) && r.toks[i].brk < brkComma; i-- {
		if measures(i) && !(i == lo-1 && (r.toks[i].s == "deep" || r.toks[i].s == "long")) {
			return true
		}
	}
	for i := hi; i < min(c.hi, hi+6) && r.toks[i-1].brk < brkComma; i++ {
		if measures(i) {
			return true
		}
	}
	if w, v := r.prev(lo), r.word(lo-2); lo > c.lo && r.toks[lo-1].brk < brkPause && (w == "back" || w == "to" && v == "down") || w == "out" && (v == "sticks" || v == "sticking") {
		return true // "cut it back twenty mil", "they're down to two mil"
	}
	if hi < c.hi && r.toks[hi-1].brk < brkComma && ofStock.has(r.toks[hi].s) {
		return true // "a quarter inch plate", "an eight mil hole"
	}
	for i := lo - 1; i >= max(0, lo-25) && r.clauses[r.toks[i].cl].sentence == c.sentence; i-- {
		if w := r.toks[i].s; w == "sticking" || w == "sticks" || w == "measuring" || w == "measured" {
			return true // "how much is sticking out, it's thirty four millimetres"
		}
	}
	return false
}

// ofStock are what a size right before them is the thickness or the width of.
var ofStock = wordsOf("stock")

var measures = set("gap stroke play clearance long thick deep level travel down wide proud longer bent taller foot feet away apart high tall further turn turns measure measured measures wear worn slack past from between left")

// besideMeasure are the words of them that are said of much else further off.
var besideMeasure = set("from past between left down away apart")

// keySize tells whether a length in millimetres is the width of a key or a head.
func keySize(mm *big.Rat) bool {
	f, _ := mm.Float64()
	return f >= 1.5 && f <= 50 && !(f > 25.4 && f != math.Trunc(f) && f < 25.5)
}

// told tells whether a clause says the size and no more before it than what is:
// "Twelve mil.", "them's nineteen mil, five of 'em".
func (r *reading) told(c *clause, lo, hi int) bool {
	for i := c.lo; i < hi; i++ {
		if w := r.toks[i].s; i < lo && r.toks[i].qty < 0 && !besideSize.has(w) && !numberWord.has(w) && countOf[w] == 0 && !dropWords.has(w) && !openers.has(w) && !(placeWords.has(w) && i > c.lo) {
			return false
		}
	}
	return hi == c.hi || r.toks[hi-1].brk >= brkPause || besideSize.has(r.toks[hi].s)
}

var besideSize = set("it 's that those these they 're are them is was i think believe reckon say a an the again same both each and all head heads or maybe probably about no yeah yep yes ah oh nope wait sorry what uh um one ones pair hex af point good old trusty usual standard regular ordinary just only")

// afterFasteners tells whether the clauses right before were of fasteners, named or only counted.
func (r *reading) afterFasteners(cl, tok int) bool {
	for k := cl - 1; k >= 0 && k >= cl-3 && r.since(r.clauses[k].lo, tok) < 12; k-- {
		p := &r.clauses[k]
		for _, mi := range p.mentions {
			if m := &r.mentions[mi]; m.kind&lexicon.Fastener != 0 || tightens.has(m.head) {
				return true
			}
		}
		if r.countedIn(p, p.hi) {
			return true
		}
	}
	return false
}

// countedIn tells whether a clause counts things that it does not name: "there's
// two of them", "one through it".
func (r *reading) countedIn(c *clause, before int) bool {
	for i := c.lo; i < before && i < c.hi; i++ {
		if n := countOf[r.toks[i].s]; n == 0 && !numberWord.has(r.toks[i].s) || r.toks[i].qty >= 0 || r.toks[i].men >= 0 {
			continue
		}
		for k := i + 1; k < min(before, i+4); k++ { // "four little ones at the front"
			if w := r.toks[k].s; w == "ones" {
				return true
			} else if !dropAdj.has(w) && !placeWords.has(w) {
				break
			}
		}
		switch w := r.next(i); {
		case r.toks[i].brk >= brkPause, i+1 >= c.hi, w == "of", w == "in", w == "on", w == "through", w == "up", w == "at", w == "along", w == "behind", w == "holding", w == "each", w == "here", w == "there", w == "more", w == "round", w == "for":
			return true
		}
	}
	return false
}

// bareSizes gives the sizes that are said without a unit: "a twelve and a ten", "10 spanner",
// "it's a 13", "two thirteens".
func (r *reading) bareSizes() []sized {
	out := r.crossNumbers()
	for i := range r.bare {
		f := &r.bare[i]
		c := &r.clauses[f.cl]
		s := sized{lo: f.lo, hi: f.hi, kind: normalize.Size, hedged: f.Hedged || f.Alt, cl: f.cl, tool: -1}
		if f.is != turnedBy || slices.ContainsFunc(out, func(o sized) bool { return o.hi == f.hi }) {
			continue
		}
		if f.many && r.prev(f.lo) == "number" && compare(f.Low, 4) < 0 {
			if x := r.crossSaid(c, f.lo, f.hi); x != "" {
				s.lo, s.kind, s.canon = f.lo-1, normalize.Driver, []string{x + f.Low.RatString()} // "two Phillips, number twos"
				out = append(out, s)
				continue
			}
		}
		if f.Low.IsInt() && (r.torxSaid(c, f.lo, f.hi) || r.nextTorx(f) || f.many && r.prev(f.lo) == "e") {
			if s.canon = r.torxSizes(f.Low, f.High, f.lo); s.canon != nil {
				s.kind = normalize.Driver
				out = append(out, s)
				continue
			}
		}
		for _, v := range []*big.Rat{f.Low, f.High} {
			canon := ""
			switch {
			case slashed[v.FloatString(1)+" in"] != "" && r.driveNext(f.hi):
				canon, s.kind, s.hedged = slashed[v.FloatString(1)+" in"], normalize.Drive, true // "the 3.8 ratchet"
			case v.IsInt() && compare(v, 2) >= 0 && compare(v, 60) <= 0:
				canon = v.Num().String() + " mm"
			case inchFraction(v) && (compare(v, 2) < 0 || r.saidAsFraction(f.lo, f.hi) && v.Denom().Int64() > 2):
				canon = inchForm(v)
			case !v.IsInt() && v.Denom().Int64() == 2 && compare(v, 7) < 0:
				canon = v.FloatString(1) + " mm"
			}
			if canon != "" && !slices.Contains(s.canon, canon) {
				s.canon = append(s.canon, canon)
			}
		}
		if len(s.canon) > 0 {
			s.asked = r.asksAt(c, f.lo, f.hi)
			s.hedged = s.hedged || s.asked
			out = append(out, s)
		}
	}
	// "four M10s", "the disc is six T25s"
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if c.mood&(aside|greeting) != 0 {
			continue
		}
		for i := c.lo; i < c.hi; i++ {
			if w := r.toks[i].s; r.toks[i].qty < 0 && len(w) > 2 && w[len(w)-1] == 's' && w[len(w)-2] >= '0' && w[len(w)-2] <= '9' && w[0] >= 'a' {
				for _, q := range normalize.Quantities(strings.ToUpper(w[:len(w)-1])) {
					if q.Kind == normalize.Thread || q.Kind == normalize.Driver {
						out = append(out, sized{lo: i, hi: i + 1, kind: q.Kind, canon: []string{sizeForm(q.Canonical)}, cl: ci, tool: -1})
					}
				}
			}
		}
	}
	return out
}

// torxSaid tells whether the number at [a,b) is of a hexalobular drive: one is named
// shortly before, in this clause or the last.
func (r *reading) torxSaid(c *clause, a, b int) bool {
	for i := a - 1; i >= max(0, a-8) && r.toks[i].qty < 0; i-- {
		switch r.toks[i].s {
		case "torx":
			return true
		case "star":
			return r.toks[i].brk >= brkComma || r.next(i) == "bit" || r.next(i) == "key" || r.next(i) == "type" || r.next(i) == "drive" || r.next(i) == "ones" || r.next(i) == "one" || r.next(i) == "bits" || r.next(i) == "head" || r.next(i) == "heads"
		}
	}
	return false
}

// nextTorx tells whether a number that no spanner has goes on from a hexalobular drive that was
// just told: "it's a T40. No, that's slipping. Forty-five".
func (r *reading) nextTorx(f *bareNumber) bool {
	if !f.Low.IsInt() || compare(f.Low, 20) < 0 || spannerSize(f.Low) {
		return false
	}
	for i := f.lo - 1; i >= max(0, f.lo-16); i-- {
		if q := r.toks[i].qty; q >= 0 {
			return r.qtys[q].Kind == normalize.Driver && r.qtys[q].Canonical[0] == 'T' && len(normalize.CheckSize("T"+f.Low.RatString(), normalize.Driver)) == 0
		}
	}
	return false
}

// torxSizes gives the hexalobular drives of two numbers (ISO 10664 and the sizes sold
// beside them), outside ones where they are said to be: nil where there are none.
func (r *reading) torxSizes(lo, hi *big.Rat, at int) []string {
	letter := "T"
	for i := at - 1; i >= max(0, at-5); i-- {
		switch r.toks[i].s {
		case "e", "female", "external", "inverted", "reverse", "reversed", "outside", "socket":
			letter = "E"
		}
	}
	var out []string
	for _, v := range []*big.Rat{lo, hi} {
		if v == nil || len(out) == 1 && v.Cmp(lo) == 0 {
			continue
		}
		if !v.IsInt() || compare(v, 8) < 0 || len(normalize.CheckSize(letter+v.RatString(), normalize.Driver)) > 0 {
			return nil
		}
		out = append(out, letter+v.RatString())
	}
	return out
}

// pluralSize gives the number that "tens", "13s" or "fives" are all of.
var pluralSize = func() map[string]int {
	of := map[string]int{"ones": 1, "twos": 2, "threes": 3, "fours": 4, "fives": 5, "sixes": 6, "sevens": 7, "eights": 8, "nines": 9, "tens": 10, "elevens": 11, "twelves": 12, "thirteens": 13, "fourteens": 14, "fifteens": 15,
		"sixteens": 16, "seventeens": 17, "eighteens": 18, "nineteens": 19, "twenties": 20, "thirties": 30, "forties": 40, "fifties": 50}
	for n := 4; n <= 60; n++ {
		of[strconv.Itoa(n)+"s"] = n
	}
	return of
}()

var tensOf = map[string]int{"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90}

func isPow2(n *big.Int) bool {
	if !n.IsInt64() {
		return false
	}
	v := n.Int64()
	return v > 1 && v&(v-1) == 0 && v <= 64
}

func inchForm(v *big.Rat) string {
	whole := new(big.Int).Quo(v.Num(), v.Denom())
	rest := new(big.Rat).Sub(v, new(big.Rat).SetInt(whole))
	if whole.Sign() == 0 {
		return rest.RatString() + " in"
	}
	return whole.String() + "-" + rest.RatString() + " in"
}

// crossNumbers gives the drivers that are told by their number: "a number two, Phillips".
func (r *reading) crossNumbers() []sized {
	var out []sized
	for i := range r.toks {
		if r.toks[i].s != "number" || i+1 == len(r.toks) || r.toks[i].cl != r.toks[i+1].cl {
			continue
		}
		ci := int(r.toks[i].cl)
		c := &r.clauses[ci]
		if c.mood&(aside|greeting) != 0 {
			continue
		}
		for _, n := range r.numbersOf(i+1, c.hi) {
			if a, b := i+1, r.tokenAt(int(r.toks[i+1].lo)+n.End-1)+1; n.Start == 0 && n.Low != nil && b <= c.hi && r.toks[a].qty < 0 {
				if canon := r.crossNumber(c, a, b, n.Low); canon != "" {
					out = append(out, sized{lo: i, hi: b, kind: normalize.Driver, canon: []string{canon}, hedged: n.Hedged, cl: ci, tool: -1})
				}
			}
			break
		}
	}
	return out
}

// crossNumber gives the driver that "the number two screwdriver" and "a cross head
// screwdriver, a number two" stand for: numbers are those of cross recesses (ISO 4757
// knows types H and Z; Z where the talk speaks of it).
func (r *reading) crossNumber(c *clause, a, b int, val *big.Rat) string {
	if r.prev(a) != "number" || !val.IsInt() || val.Sign() < 0 || compare(val, 4) > 0 || a-1 < c.lo {
		return ""
	}
	cross := func(m int) bool {
		if m < 0 {
			return false
		}
		switch x := &r.mentions[m]; x.head {
		case "screwdriver", "driver", "bit", "crosshead", "crosspoint", "phillips", "pozidriv", "pozi", "point":
			return x.kind&lexicon.Tool != 0 && !strings.Contains(x.name, "flat") && !strings.Contains(x.name, "drill") && !strings.Contains(x.name, "nut")
		case "head":
			return strings.Contains(x.name, "cross")
		}
		return false
	}
	if kinds := r.crossSaid(c, a, b); kinds != "" {
		return kinds + val.Num().String()
	}
	near := int(r.toks[a-1].men) // "number two screwdriver" may be one name
	if near < 0 {
		near = r.nameWithin(c, b, 1)
	}
	for k := a - 2; near < 0 && k >= max(0, a-5); k-- {
		if near = int(r.toks[k].men); near < 0 && !determiner.has(r.toks[k].s) {
			break
		}
	}
	if !cross(near) {
		return ""
	}
	kind := "PH"
	if n := r.mentions[near].name; strings.Contains(n, "cross") || strings.Contains(n, "phillips") {
		return kind + val.Num().String()
	}
	for _, m := range r.mentions {
		if m.head == "pozidriv" || m.head == "pozi" || m.head == "pozidrive" {
			kind = "PZ"
		}
	}
	return kind + val.Num().String()
}

// crossSaid gives the letters of the cross recess that is named shortly before or right
// after a number, "" where none is.
func (r *reading) crossSaid(c *clause, a, b int) string {
	for i := max(0, a-9); i < min(len(r.toks), b+2); i++ {
		switch w := r.toks[i].s; w {
		case "pozi", "pozidriv", "pozidrive":
			return "PZ"
		case "crosshead", "crosspoint", "phillips", "philips":
			return "PH"
		case "cross":
			if n := r.next(i); n == "head" || n == "heads" || n == "headed" || n == "slot" || n == "recess" || n == "point" || n == "screw" || n == "screws" || r.toks[i].brk >= brkComma {
				return "PH"
			}
		}
	}
	return ""
}

// wide tells whether a number is one that spanners and sockets have and that
// nobody counts to lightly: seven to thirty-six.
func wide(n *big.Rat) bool {
	return n.IsInt() && compare(n, 7) >= 0 && compare(n, 36) <= 0
}

var fractionWord = set("eighth eighths sixteenth sixteenths half quarter quarters seconds thirty-seconds sixty-fourths fourths")

// nameWithin gives the mention that begins within so many tokens, or -1.
func (r *reading) nameWithin(c *clause, i, n int) int {
	for k := i; k < c.hi && k < i+n; k++ {
		if r.toks[k].men >= 0 {
			return int(r.toks[k].men)
		}
	}
	return -1
}

// sizeTalk tells whether the talk around a clause is of fasteners or of tools.
func (r *reading) sizeTalk(c *clause) bool {
	ci := r.toks[c.lo].cl
	for k := max(0, ci-3); k <= ci; k++ {
		if r.since(r.clauses[k].lo, c.lo) > 12 {
			continue
		}
		for _, mi := range r.clauses[k].mentions {
			m := &r.mentions[mi]
			if m.kind&lexicon.Fastener != 0 || m.kind&lexicon.Tool != 0 && sizeTool[m.head] != "" || m.kind&lexicon.Part != 0 && tightens.has(m.head) {
				return true
			}
		}
		for _, ai := range r.clauses[k].acts {
			switch r.acts[ai].action.Name {
			case "slacken", "tighten", "torque", "start by hand":
				return true
			case "remove", "disconnect":
				if k >= ci-1 {
					return true
				}
			}
		}
	}
	return false
}

// kindOf makes one kind of sizes and short lengths, which are said alike.
func kindOf(k normalize.Kind) normalize.Kind {
	if k == normalize.Length {
		return normalize.Size
	}
	return k
}

var corrects = set("no sorry lie wait actually nope nah hang wrong slipping")

// unite makes two candidates of "a 13, might be a 12", and lets a correction stand alone.
func (r *reading) unite(out []sized) {
	for i := range out {
		if out[i].gone {
			continue
		}
		for j := i + 1; j < len(out) && j < i+5; j++ {
			if out[j].gone {
				continue
			}
			if a, b := kindOf(out[i].kind), kindOf(out[j].kind); a != b {
				if (a == normalize.Driver || b == normalize.Driver) && out[j].lo-out[i].hi <= 6 && corrects.has(r.word(out[i].hi)) && r.asksAt(&r.clauses[out[i].cl], out[i].lo, out[i].hi) {
					out[i].gone, out[j].mends = true, &out[i] // "T15? No, it's a four mil"
					break
				}
				continue
			}
			gap := r.since(out[i].lo, out[j].lo)
			if out[j].lo-out[i].hi > 30 || gap > 15 {
				break
			}
			near := out[j].lo-out[i].hi <= 12 && gap <= 12
			if out[j].asked && out[j].lo-out[i].hi <= 1 && !slices.Contains(out[i].canon, out[j].canon[0]) {
				out[i].canon, out[i].hi, out[i].hedged = append(out[i].canon, out[j].canon...), out[j].hi, true
				out[j].gone = true // "It's a six. Five?"
				continue
			}
			if len(out[i].canon) > 1 && len(out[j].canon) == 1 && slices.Contains(out[i].canon, out[j].canon[0]) && gap < 6 && out[j].hedged {
				out[j].gone = true // "Eight or ten? Ten?"
				continue
			}
			if near && r.tookFor(&out[i], &out[j]) {
				out[i].gone = true
				break
			}
			if len(out[i].canon) > 1 && len(out[j].canon) == 1 && slices.Contains(out[i].canon, out[j].canon[0]) && !r.doubted(&out[j]) && r.settles(&out[j]) && !r.ownThing(out[j].cl) {
				out[i].gone, out[j].mends = true, &out[i] // "a ten or a twelve. So it's a ten."
				break
			}
			or, fix, other, andy := false, false, false, false
			for k := out[i].hi; k < out[j].lo; k++ {
				w := r.toks[k].s
				switch {
				case w == "or" || w == "either" || w == "maybe" || w == "might" || w == "could" || w == "may":
					or = true
				case corrects.has(w):
					fix = true
				case w == "and":
					andy = true
				case r.toks[k].men >= 0 && (r.mentions[r.toks[k].men].prep == "for" || r.mentions[r.toks[k].men].prep == "on" && r.mentions[r.toks[k].men].from-out[i].hi <= 1 && r.word(out[j].hi) != "on" || k == out[i].hi && r.mentions[r.toks[k].men].kind == lexicon.Tool):
					// "a seventeen socket for the prop, could be a nineteen": what both are for
				case r.toks[k].men >= 0 && r.mentions[r.toks[k].men].kind&(lexicon.Fastener|lexicon.Part) != 0:
					other = true
				case r.toks[k].men >= 0:
					andy = true
				}
			}
			if fix && slices.ContainsFunc(out[i+1:j], func(o sized) bool { return !o.gone && o.kind == out[j].kind }) {
				continue // "the old one's an M8 by 36, the new one's by 40. No, 42": it mends the last
			}
			one := len(out[i].canon) == 1 && len(out[j].canon) == 1
			same := out[i].canon[0] == out[j].canon[0]
			switch {
			case one && !fix && nextDoor(out[i].canon[0], out[j].canon[0]) && !r.inToolList(&mention{lo: out[i].lo, cl: out[i].cl}) && (or || r.loose(out[i].hi, out[j].hi)):
				// "I have a thirty-two on it, and there's a little shake. It may be inch and a quarter"
				out[i].canon = append(out[i].canon, out[j].canon...)
				out[i].hi = out[j].hi
				out[i].hedged = true
				out[j].gone = true
			case near && or && !fix && !andy && !other && one && !same:
				out[i].canon = append(out[i].canon, out[j].canon...)
				out[i].hi = out[j].hi
				out[i].hedged = true
				out[j].gone = true
			case near && fix && !andy && !other, fix && !other && !same && (r.doubted(&out[i]) || r.told(&r.clauses[out[j].cl], out[j].lo, out[j].hi)), !other && !or && !same && r.doubted(&out[i]) && !r.doubted(&out[j]) && r.told(&r.clauses[out[j].cl], out[j].lo, out[j].hi):
				// "a nineteen, or was it … no, that's a seventeen"
				out[i].gone, out[j].mends = true, &out[i]
			case near && same && one && !andy && !other && gap < 5 && (r.toks[out[i].hi-1].brk < brkSentence || r.word(out[j].hi) == "" || r.toks[out[j].hi].men < 0 || r.mentions[r.toks[out[j].hi].men].kind&lexicon.Tool == 0):
				out[j].gone = true
			case near && same && one && !andy && !other && gap < 8:
				out[i].gone = true // "It's a nine. So, nine mil socket": told with its tool
			}
			if out[i].gone {
				break
			}
		}
	}
}

// settles tells whether a clause says of a size that it is the one, and no more.
func (r *reading) settles(s *sized) bool {
	if !r.told(&r.clauses[s.cl], s.lo, s.hi) {
		return false
	}
	for i := max(s.lo-3, r.clauses[s.cl].lo); i < s.lo; i++ {
		switch r.toks[i].s {
		case "'s", "is", "'re", "are", "so", "yeah", "yep", "yes":
			return true
		}
	}
	return false
}

// nextDoor tells whether one of two widths is in millimetres and the other in inches,
// and no more than a twentieth apart: spanners of both sorts seem to fit.
func nextDoor(a, b string) bool {
	am, amm := widthMM(a)
	bm, bmm := widthMM(b)
	return amm != bmm && am > 0 && bm > 0 && math.Abs(am-bm) <= 0.05*am
}

// widthMM gives a width in millimetres, 0 where the text is none, and whether it was said in them.
func widthMM(s string) (mm float64, metric bool) {
	v, unit, ok := strings.Cut(s, " ")
	if !ok || unit != "mm" && unit != "in" {
		return 0, false
	}
	if whole, frac, mixed := strings.Cut(v, "-"); mixed {
		w, _ := strconv.ParseFloat(whole, 64)
		mm, v = w, frac
	}
	num, den, isFrac := strings.Cut(v, "/")
	n, err := strconv.ParseFloat(num, 64)
	if err != nil {
		return 0, false
	}
	if isFrac {
		d, err := strconv.ParseFloat(den, 64)
		if err != nil || d == 0 {
			return 0, false
		}
		n /= d
	}
	if mm += n; unit == "in" {
		return mm * 25.4, false
	}
	return mm, true
}

// loose tells whether between two tokens a spanner is said to fit badly, or another as well.
func (r *reading) loose(lo, hi int) bool {
	for i := lo; i < min(hi+6, len(r.toks)); i++ {
		switch r.toks[i].s {
		case "slack", "loose", "sloppy", "shake", "shakes", "wobbles", "wobble", "play", "slips", "tight", "close", "near", "well", "both", "either", "might", "may", "could", "maybe", "nearly", "quite", "better", "too", "rounded", "certain", "sure":
			return true
		}
	}
	return false
}

// doubted tells whether a size was said with doubt, or taken back right after.
func (r *reading) doubted(s *sized) bool {
	if s.hedged || r.clauses[s.cl].mood&hedged != 0 {
		return true
	}
	n := 0
	for k := s.hi; k < len(r.toks) && n < 6; k, n = k+1, n+1 {
		if corrects.has(r.toks[k].s) {
			return true
		}
	}
	return false
}

// takesSize tells whether a tool comes in sizes of that kind.
func takesSize(m *mention, s *sized) bool {
	dim := sizeTool[m.head]
	if dim == "" || m.kind&lexicon.Tool == 0 {
		return false
	}
	switch s.kind {
	case normalize.Thread:
		return dim == "thread"
	case normalize.Driver:
		return dim == "driver"
	case normalize.Drive:
		return dim == "drive" || m.head == "socket" || m.head == "wrench"
	}
	if recess.has(m.head) || strings.Contains(m.name, "impact driver") || dim == "thread" && m.head != "tap" {
		return false // "five Phillips": how many screws
	}
	return dim != "drive" || drives[s.canon[0]]
}

// recess are the drives that are told by numbers of their own, never in millimetres.
var recess = set("phillips crosshead crosspoint pozidriv pozi torx star")

var drives = map[string]bool{"1/4 in": true, "3/8 in": true, "1/2 in": true, "3/4 in": true, "1 in": true}

// sizeTools gives each size the tool it was said of: right behind it ("5 mil
// allen key"), before it ("sockets, nineteen mil and seventeen mil"), or the one
// whose list it goes on with.
func (r *reading) sizeTools(found []sized) {
	for i := range found {
		s := &found[i]
		listed := r.toks[s.hi-1].brk >= brkComma && s.kind != normalize.Driver
		for _, mi := range r.clauses[s.cl].mentions {
			m := &r.mentions[mi]
			if listed && m.hi > s.hi {
				break // "thirteen, spanner": two things of a list
			}
			if s.kind == normalize.Driver && m.kind&lexicon.Tool != 0 && m.lo <= s.hi && m.hi >= s.lo {
				s.tool = mi // "phillips number two"
				break
			}
			if (m.lo >= s.hi && m.lo-s.hi <= 1 || m.lo > s.lo && m.hi <= s.hi) && takesSize(m, s) {
				s.tool = mi
				break
			}
		}
	}
	for i := len(found) - 2; i >= 0; i-- {
		s, n := &found[i], &found[i+1]
		if s.tool >= 0 || n.tool < 0 || n.lo-s.hi > 2 || r.toks[s.hi-1].brk >= brkComma || r.mentions[n.tool].lo < n.hi {
			continue
		}
		if w := r.toks[s.hi].s; (w == "and" || w == "or") && takesSize(&r.mentions[n.tool], s) {
			s.tool = n.tool
		}
	}
	for i := range found {
		s := &found[i]
		if s.tool >= 0 {
			continue
		}
		s.tool = r.toolBefore(s)
		if p := r.prev(s.lo); s.tool < 0 && (p == "'s" || p == "are" || p == "'re" || p == "is") && (s.kind == normalize.Size || s.kind == normalize.Length) {
			s.tool = r.toolAfter(s.hi, 8)
		}
		if s.tool < 0 && i > 0 && found[i-1].tool >= 0 && s.lo-found[i-1].hi <= 6 && r.inToolList(&r.mentions[found[i-1].tool]) && takesSize(&r.mentions[found[i-1].tool], s) && s.kind == normalize.Size {
			// "a 30 mil socket …, and a 17 for the wheel bolts"
			if m := &r.mentions[found[i-1].tool]; m.head == "socket" || m.head == "spanner" || m.head == "wrench" {
				s.tool = found[i-1].tool
			}
		}
		if s.tool < 0 && s.kind == normalize.Size && len(s.canon[0]) > 3 {
			s.tool = r.listTool(s)
		}
	}
}

// listTool gives the socket or spanner that a bare size in a tool list stands for.
func (r *reading) listTool(s *sized) int {
	last := -1
	for k := s.cl; k >= 0 && k >= s.cl-3; k-- {
		ms := r.clauses[k].mentions
		for i := len(ms) - 1; i >= 0; i-- {
			m := &r.mentions[ms[i]]
			if m.lo < s.lo && s.lo-m.hi <= 6 && m.kind&lexicon.Tool != 0 && sizeTool[m.head] == "drive" && r.word(m.hi) == "with" {
				return -1 // a ratchet with a ten and a twelve on it
			}
			if m.lo < s.lo && s.lo-m.hi < 25 && m.kind&lexicon.Tool != 0 && (m.head == "socket" || m.head == "spanner" || m.head == "wrench") && !strings.Contains(m.name, "torque") {
				last = ms[i]
				break
			}
		}
		if last >= 0 {
			break
		}
	}
	if last >= 0 && r.inToolList(&mention{lo: s.lo, cl: s.cl}) {
		return last
	}
	return -1
}

var betweenSizes = set("so a an and or in mil the one mostly i 'm using use is 's it size sizes plus also then of uh um that 'll metric deep long")

// toolBefore gives the tool that a size follows, with nothing between but sizes and small words.
func (r *reading) toolBefore(s *sized) int {
	c := &r.clauses[s.cl]
	small, plain := 0, true // plain: "a key, a five and a four" and no more
	for i := s.lo - 1; i >= max(0, s.lo-18); i-- {
		t := &r.toks[i]
		if i < c.lo && t.brk >= brkSentence && s.lo-i > 3 {
			return -1
		}
		if t.men >= 0 {
			m := &r.mentions[t.men]
			if takesSize(m, s) && (small <= 7) {
				if n := m.lo - 1; n >= 0 && r.toks[n].qty >= 0 && m.hi-m.lo > 0 && small > 1 && !m.plural && !(plain && r.inToolList(m)) {
					return -1 // that tool has a size of its own
				}
				return int(t.men)
			}
			return -1
		}
		if t.qty >= 0 {
			continue
		}
		if len(t.s) > 0 && t.s[0] >= '0' && t.s[0] <= '9' || countOf[t.s] > 0 || numberWord.has(t.s) {
			continue
		}
		if !betweenSizes.has(t.s) {
			return -1
		}
		plain = plain && (t.s == "a" || t.s == "an" || t.s == "and" || t.s == "or")
		small++
	}
	return -1
}

var numberWord = set("thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty thirty half quarter eighths sixteenths three")

// sizes tells whose each size is.
func (r *reading) sizes(found []sized) []Size {
	out := []Size{}
	row := map[[2]int]int{} // how many sizes a clause says of a tool
	for i := range found {
		row[[2]int{found[i].cl, found[i].tool}]++
	}
	lastLo, lastHi := 0, 0
	for _, s := range found {
		c := &r.clauses[s.cl]
		if s.tool >= 0 && strings.Contains(r.mentions[s.tool].name, "drill") {
			continue // of the hole
		}
		if s.tool >= 0 && r.drifts(c, &r.mentions[s.tool]) {
			continue // of what it is driven in with
		}
		listed := r.inToolList(&mention{lo: s.lo, cl: s.cl})
		of, t := r.sizeOf(&s, row[[2]int{s.cl, s.tool}] > 2 || listed)
		if of == "" && listed && s.kind != normalize.Thread {
			continue // of a tool that is laid out
		}
		if of == "" && s.tool >= 0 {
			of = lexicon.Singular(r.mentions[s.tool].name)
		} else if of == "" && s.kind != normalize.Thread && c.mood&listing != 0 {
			of = r.turner(&s) // "a quarter inch ratchet with a ten and a twelve"
		}
		dim := "unsaid"
		switch s.kind {
		case normalize.Thread:
			dim = "thread"
		case normalize.Drive:
			if dim = "drive"; t != nil && t.head == "key" {
				dim = "unsaid" // "a new key, half inch square"
			}
		case normalize.Driver:
			dim = "driver"
		default:
			if s.tool >= 0 {
				dim = sizeTool[r.mentions[s.tool].head]
			} else if w := r.word(s.hi); w == "long" && r.toks[s.hi-1].brk < brkPause || s.lo > 0 && r.toks[s.lo-1].s == "by" {
				dim = "length"
			} else if t != nil && takesTorque(t) && w == "by" && strings.HasSuffix(s.canon[0], " in") {
				dim = "thread" // "a three eighths by inch and a quarter"
			} else if headWords.has(w) || t != nil && takesTorque(t) && !r.eitherWay(&s) {
				dim = "across-flats"
			}
		}
		sure := !s.hedged && len(s.canon) == 1 && !r.doubtAt(c, s.lo, s.hi)
		if k := s.cl + 1; sure && k < len(r.clauses) && r.clauses[k].mood&hedged != 0 && r.clauses[k].hi-r.clauses[k].lo <= 7 && len(r.clauses[k].mentions) == 0 && r.at(r.clauses[k].lo)-r.at(s.lo) < 6 {
			sure = false
		}
		if n := len(out) - 1; n >= 0 && out[n].Of == shortName(of) && slices.Equal(out[n].Candidates, s.canon) && r.at(s.lo)-r.at(lastLo) < 6 {
			out[n].Sure = out[n].Sure || sure || r.prev(s.lo) == "yeah" || r.prev(s.lo) == "yep" || r.prev(s.lo) == "yes" // "Sixteen? It's sixteen."
			continue
		}
		lastLo = s.lo
		if n := len(out) - 1; n >= 0 && slices.Equal(out[n].Candidates, s.canon) && r.at(s.lo)-out[n].At < 12 && !r.ownThing(s.cl) && !r.fastenerSince(lastHi, s.lo) && r.alone(c, s.lo, s.hi) && !moreOf.has(r.word(s.hi)) {
			continue // "seven sixteenths. I've got it written on the drawer. Seven sixteenths."
		}
		lastHi = s.hi
		out = append(out, Size{Of: shortName(of), Dimension: dim, Candidates: s.canon, Sure: sure, Place: r.placeAround(max(c.lo, s.lo-5), min(c.hi, s.hi+3), s.lo)})
	}
	return out
}

// drifts tells of "tapping it in with a thirty-two mil socket": what something is driven in
// or out with has the size of a bore or of nothing, and turns no fastener.
func (r *reading) drifts(c *clause, m *mention) bool {
	if m.head == "bit" {
		return r.drillNear(m)
	}
	if m.head != "socket" && m.head != "sockets" && m.head != "spanner" && m.head != "wrench" {
		return false
	}
	for i := c.lo; i < c.hi; i++ {
		if r.toks[i].men < 0 && driving.has(r.toks[i].s) && (r.toks[i].s != "drive" || pronounsObj.has(r.next(i)) || determiner.has(r.next(i))) {
			for k := i + 1; k < m.lo; k++ {
				if w := r.toks[k].s; w == "with" || w == "using" {
					return true
				}
			}
		}
		if w := r.toks[i].s; (w == "as" || w == "for") && i >= m.hi {
			for k := i + 1; k < min(c.hi, i+5); k++ {
				if w := r.toks[k].s; w == "drift" || w == "driver" || w == "mandrel" || w == "pusher" || w == "dolly" || w == "punch" {
					return true
				}
			}
		}
	}
	return false
}

// drillNear tells whether a bit is one of a drill, by what was said right before: "gap it with a
// drill bit, three and a half mil bit in between".
func (r *reading) drillNear(m *mention) bool {
	for i := max(0, m.lo-14); i < m.lo; i++ {
		if w := r.toks[i].s; w == "drill" || w == "drilled" || w == "drilling" {
			return true
		}
	}
	return false
}

var driving = set("tap taps tapping tapped knock knocks knocking knocked drive drives driving drove drift drifts drifting drifted press presses pressing pressed hammer hammering hammered whack whacked pound pounding pounded bash bashed")

// doubtAt tells whether a clause doubts what is said at [lo,hi): it hedges, and not only
// another number ("fifteen, with about two foot of extension"), or the next says that
// it is forgotten or cannot be told.
func (r *reading) doubtAt(c *clause, lo, hi int) bool {
	if c.mood&hedged != 0 {
		for _, q := range c.cues {
			if q.mood&hedged == 0 {
				continue
			}
			if n := q.hi; n > hi && n < c.hi && (r.toks[n].qty >= 0 || r.toks[n].is(wNumber|wCountOf)) {
				continue
			}
			return true
		}
	}
	forgot := false
	for i := hi; i < min(len(r.toks), hi+8); i++ {
		switch w := r.toks[i].s; w {
		case "forget", "forgot", "forgotten", "dunno":
			return true
		case "not", "n't", "can't", "don't", "couldn't", "no":
			forgot = true
		case "remember", "tell", "recall", "idea", "know":
			if forgot {
				return true
			}
		}
		if r.toks[i].brk >= brkSentence {
			break
		}
	}
	return false
}

// sizeOf finds the fastener that a size is of: one named in the clause, else the
// one that the talk has in hand; a part where there is no fastener. One of a row of
// sizes that a tool comes in is of none.
func (r *reading) sizeOf(s *sized, row bool) (string, *thing) {
	if s.mends != nil && s.tool < 0 && !r.ownThing(s.cl) {
		return r.sizeOf(s.mends, row) // "deck screws, two mil. No, two and a half"
	}
	c := &r.clauses[s.cl]
	if of := r.threadedItself(s); of != "" {
		return of, nil
	}
	if s.tool >= 0 {
		if s.kind == normalize.Thread && sizeTool[r.mentions[s.tool].head] == "thread" {
			return "", nil // "M12 threaded rod and two nuts"
		}
		if of := r.toolFor(s); of == "spark plug" {
			if t, _ := r.spokenOf(s.cl, r.mentions[s.tool].lo); t != nil && t.head == "plug" {
				return named(t), t // "undo the sump plug, plug spanner, a twenty-one"
			}
			return of, nil
		} else if of != "" {
			return of, nil
		}
	}
	if s.kind == normalize.Drive && s.tool < 0 && r.toks[s.hi-1].s == "drive" {
		return "drive", nil // "three quarter drive and a pipe on it"
	}
	if row && s.tool < 0 && s.kind != normalize.Thread || s.tool >= 0 && (row || c.mood&listing != 0 || s.kind == normalize.Drive || sizeTool[r.mentions[s.tool].head] == "drive") {
		// a tool list tells what it is for only with "for"
		for _, mi := range c.mentions {
			m := &r.mentions[mi]
			if m.entry != nil && m.prep == "for" && m.from >= s.lo && m.from-s.hi <= 4 && s.kind != normalize.Drive && (m.from-s.hi < 3 || r.toks[s.hi-1].brk < brkComma) {
				return m.entry.name, m.entry // but "four, five, and a six for the axle"
			}
		}
		return "", nil
	}
	headed := headWords.has(r.word(s.hi)) && r.word(s.hi) != "af"
	var best *thing
	dist := 99
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.entry == nil || m.kind == lexicon.Tool || m.prep != "" && (r.word(m.hi) == "side" || r.word(m.hi) == "end") || headed && !takesTorque(m.entry) && m.lo > s.hi {
			continue
		}
		if m.head == "key" && (m.hi == s.lo || m.hi == s.lo-1) {
			continue // "I need key of twenty-two"
		}
		if m.prep == "with" && m.from > s.hi && r.ofThem(c, s.lo) {
			continue // "they're M6, with nuts down below"
		}
		if inert(m) && (m.hi < s.lo || m.prep == "with" && m.from > s.hi || s.kind == normalize.Thread) {
			continue // "bend the tab back, thirty mil", "nine sixteenths, with a lock washer", "M16, new washer"
		}
		d := 0
		if m.lo >= s.hi {
			d = m.from - s.hi
			if r.prev(m.from) == "and" {
				d += 5 // "the cover's off, five T15s, and the gasket tore"
			}
			if m.prep == "on" && d <= 1 {
				d = -1 // "ten on the bracket bolt, thirteen on the mount bolt"
			} else if m.prep == "for" {
				d = max(0, d-3)
			}
		} else {
			d = s.lo - m.hi
		}
		if !m.entry.fastener {
			d += 6
			if m.prep != "" && m.prep != "on" && m.prep != "for" {
				d += 20
			} else if m.prep == "on" && m.hi <= s.lo {
				d += 8 // where it is, rather than what
			}
		}
		if s.tool >= 0 && m.lo >= s.hi && m.prep != "for" && m.prep != "on" && d > 3 || d > 14 && len(c.mentions) > 2 {
			continue
		}
		if d < dist {
			best, dist = m.entry, d
		}
	}
	if s.tool < 0 && s.kind != normalize.Thread && (c.mood&listing != 0 || r.inToolList(&mention{lo: s.lo, cl: s.cl})) {
		for _, mi := range c.mentions {
			if m := &r.mentions[mi]; m.entry != nil && (m.prep == "for" && m.from >= s.lo || m.entry.fastener && dist <= 2 && m.entry == best) {
				return m.entry.name, m.entry
			}
		}
		return "", nil // of a tool in a list
	}
	if best != nil && (best.fastener || dist < 12) {
		return r.whichOne(c, s.lo, best), best
	}
	if s.tool >= 0 && !r.usedHere(c) {
		return "", nil
	}
	if t := r.turnedThen(s); t != nil {
		return named(t), t
	}
	pins := func(t *thing) bool { // no spanner fits them: "split pin out. Right, twenty-one"
		return t != nil && t.head == "pin" && (t.mods["split"] || t.mods["cotter"] || t.mods["roll"]) && wideSize(s.canon[0])
	}
	them := r.ofThem(c, s.lo)
	if n := r.onesBefore(s.cl); them && n != "" {
		return n, nil
	}
	if t, name := r.spokenOf(s.cl, s.lo); t != nil && !pins(t) {
		return r.whichOne(c, s.lo, t), t
	} else if name != "" {
		return name, nil
	}
	if t := r.inHandAt(s.lo, 25); t != nil && !pins(t) && !(them && !t.many()) {
		return r.whichOne(c, s.lo, t), t
	}
	if best == nil {
		if n := r.placeOne(s); n != "" {
			return n, nil
		}
		for k := s.cl - 1; k >= 0 && r.since(r.clauses[k].lo, s.lo) < 30 && best == nil; k-- {
			for _, mi := range r.clauses[k].mentions {
				if m := &r.mentions[mi]; m.entry != nil && m.prep == "" && !inert(m) && !(them && !m.plural && !m.entry.many()) {
					best = m.entry
				}
			}
		}
	}
	if best == nil {
		best = r.toldAfter(s.cl)
	}
	if best == nil && s.tool < 0 {
		best = r.headingOf(s)
	}
	if best == nil {
		return "", nil
	}
	return r.whichOne(c, s.lo, best), best
}

// threaded are the things that have a thread of their own and are bought or taken by it.
var threaded = set("rod studding tap die chaser")

// threadedItself gives what a thread is of that is told right beside it and is no fastener of
// the job: "a length of M10 threaded rod", "threaded rod, M10", "with an M6 tap".
func (r *reading) threadedItself(s *sized) string {
	if s.kind != normalize.Thread {
		return ""
	}
	at := -1
	switch n := s.hi; {
	case r.toks[s.hi-1].brk >= brkComma:
	case threaded.has(r.word(n)):
		at = n
	case r.word(n) == "threaded" && threaded.has(r.next(n)):
		at = n + 1
	}
	if at < 0 && s.lo > 0 && threaded.has(r.toks[s.lo-1].s) && r.toks[s.lo-1].brk < brkSentence {
		at = s.lo - 1
	}
	switch {
	case at < 0:
		return ""
	case r.toks[at].s == "rod":
		if r.prev(at) != "threaded" {
			return "" // one of the machine's
		}
		return "threaded rod"
	}
	return r.toks[at].s
}

// toolFor gives what the tool right beside a size is named after: "a plug spanner, 21", "the
// wheel nut socket".
func (r *reading) toolFor(s *sized) string {
	m := &r.mentions[s.tool]
	if m.from-s.hi > 1 || s.lo-m.hi > 1 {
		return "" // "fifteen cone spanner. Seventeen, ordinary."
	}
	if m.head != "socket" && m.head != "spanner" && m.head != "wrench" || len(m.mods) == 0 {
		return ""
	}
	switch w := m.mods[len(m.mods)-1]; w {
	case "plug":
		return "spark plug"
	case "nut", "bolt", "pedal", "cone":
		return strings.Join(m.mods, " ")
	}
	return ""
}

// ofThem tells whether a clause says of several things spoken of what stands at a token: "and
// they're M6".
func (r *reading) ofThem(c *clause, at int) bool {
	i := r.skipped(c)
	return i+1 < at && at-i <= 6 && (r.toks[i].s == "they" || r.toks[i].s == "these" || r.toks[i].s == "those") && linking.has(r.toks[i+1].s)
}

// ownThing tells whether a fastener or a part is named in a clause.
func (r *reading) ownThing(cl int) bool {
	return slices.ContainsFunc(r.clauses[cl].mentions, func(mi int) bool {
		return r.mentions[mi].kind&(lexicon.Fastener|lexicon.Part) != 0
	})
}

// moreOf tells, after a size, that something else has it as well.
var moreOf = set("too as again also on both each")

// fastenerSince tells whether a fastener is named, or some are counted, between two tokens.
func (r *reading) fastenerSince(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if m := r.toks[i].men; m >= 0 && r.mentions[m].kind&lexicon.Fastener != 0 || countOf[r.toks[i].s] > 1 {
			return true
		}
	}
	return false
}

// headingOf gives what no spanner fits and a sentence with a size is about: "new key, half inch
// square".
func (r *reading) headingOf(s *sized) *thing {
	for k := s.cl; k >= 0 && k >= s.cl-4 && r.since(r.clauses[k].lo, s.lo) < 10; k-- {
		for _, mi := range r.clauses[k].mentions {
			if m := &r.mentions[mi]; m.entry != nil && m.prep == "" && m.lo < s.lo && r.opens(&r.clauses[k], m) {
				return m.entry
			}
		}
	}
	return nil
}

// turnedThen gives the fastener that the rest of a sentence names which begins with what turns
// it: "get the eight mil socket down the hole and undo the clamp bolt".
func (r *reading) turnedThen(s *sized) *thing {
	if s.tool < 0 && r.prev(s.lo) != "with" && r.word(s.lo-2) != "with" {
		return nil
	}
	for i := s.lo - 1; i >= 0 && r.toks[i].brk < brkSentence; i-- {
		if m := r.toks[i].men; m >= 0 && r.mentions[m].kind&(lexicon.Fastener|lexicon.Part) != 0 {
			return nil
		}
	}
	for i := s.hi; i < min(len(r.toks), s.hi+16) && r.toks[i-1].brk < brkSentence; i++ {
		if mi := r.toks[i].men; mi >= 0 {
			if m := &r.mentions[mi]; m.entry != nil && m.entry.fastener && m.prep == "" && alike.has(m.entry.head) {
				return m.entry
			}
		}
	}
	return nil
}

// toldAfter gives the fastener that is told right after its size: "a twelve on these.
// That's the caliper bolts."
func (r *reading) toldAfter(cl int) *thing {
	for k := cl + 1; k < len(r.clauses) && k <= cl+3 && r.since(r.clauses[cl].lo, r.clauses[k].lo) < 8; k++ {
		switch c := &r.clauses[k]; r.toks[c.lo].s {
		case "that", "those", "these", "they", "this", "it":
			for _, mi := range c.mentions {
				if m := &r.mentions[mi]; m.entry != nil && m.entry.fastener && m.from-c.lo <= 3 {
					return m.entry
				}
			}
		}
	}
	return nil
}

// placeOne gives "middle one" or "bottom ones" where the sentence of a size says no
// more of what it is the size of.
func (r *reading) placeOne(s *sized) string {
	for k := s.cl; k >= 0 && r.clauses[k].sentence == r.clauses[s.cl].sentence && r.since(r.clauses[k].lo, s.lo) < 8; k-- {
		for i := min(r.clauses[k].hi, s.lo) - 2; i > r.clauses[k].lo; i-- {
			if w := r.next(i); placeWords.has(r.toks[i].s) && (w == "one" || w == "ones") && definiteWord.has(r.toks[i-1].s) {
				return r.toks[i].s + " " + w
			}
		}
	}
	return ""
}

// onesBefore gives "big ones" where the clause before one says no more of what it is about:
// "Right, the four big ones. They're M10".
func (r *reading) onesBefore(cl int) string {
	if cl == 0 || len(r.clauses[cl-1].mentions) > 0 {
		return ""
	}
	c := &r.clauses[cl-1]
	for i := c.hi - 1; i > c.lo+1; i-- {
		if w := r.toks[i-1].s; r.toks[i].s == "ones" && ofSize.has(w) {
			j := i - 2
			for j > c.lo && (r.toks[j].is(wCountOf) || ofSize.has(r.toks[j].s)) {
				j--
			}
			if definiteWord.has(r.toks[j].s) {
				return w + " ones"
			}
		}
	}
	return ""
}

// ofSize are the words that tell some from others by how big they are.
var ofSize = set("big little small long short fat thin")

// whichOne names a thing, with the place that the clause gives where it says only
// "the front one", "the back pair".
func (r *reading) whichOne(c *clause, before int, t *thing) string {
	name := named(t)
	for i := c.lo + 1; i < before && i+1 < len(r.toks); i++ {
		if w := r.toks[i].s; placeWords.has(w) && r.toks[i].men < 0 && definiteWord.has(r.toks[i-1].s) && sideOf[w] == "" && !strings.Contains(name, w) {
			switch r.next(i) {
			case "one", "ones", "pair", "two":
				return w + " " + name
			}
		}
	}
	return name
}

// spokenOf gives what the clauses right before were about: a fastener named there
// as more than a place, else a part; its name alone where it has no entry.
func (r *reading) spokenOf(cl, tok int) (*thing, string) {
	them := r.ofThem(&r.clauses[cl], tok)
	for k := cl; k >= 0 && k >= cl-4 && r.since(r.clauses[k].lo, tok) < 15; k-- {
		var part *mention
		for _, mi := range r.clauses[k].mentions {
			m := &r.mentions[mi]
			if m.entry != nil && m.lo < tok && r.heldByCounted(&r.clauses[k], m) {
				return m.entry, ""
			}
			if them && k < cl && m.entry != nil && !m.plural && !m.entry.many() {
				continue // "Hinge pin out. The four big ones. They're M10"
			}
			if m.lo >= tok || m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.prep != "" && m.prep != "on" && m.prep != "for" && !(m.prep == "of" && m.of >= 0) && !((m.prep == "with" || m.prep == "by") && m.kind&lexicon.Fastener != 0) || m.ownsNone() && m.kind&lexicon.Fastener == 0 || inert(m) {
				continue // but "it's locked with a grub screw. Three mil."
			}
			if n := r.actOn(k, mi); k < cl && (n == "place" || n == "support" && r.next(m.hi) != "held" || n == "store") {
				continue // "Disc. Lay the wheel flat. There's six of them": the disc's
			}
			if m.entry != nil && m.entry.fastener && alike.has(m.entry.head) {
				return m.entry, ""
			}
			if part == nil || m.entry != nil && (m.prep == "" || part.prep != "") {
				part = m
			}
		}
		if part == nil && k > 0 {
			if h := r.heading(k - 1); h != nil && h.entry != nil && !inert(h) {
				return h.entry, "" // "Then the slide pins. There are two, seven mil."
			}
		}
		for _, ai := range r.clauses[k].acts {
			for _, t := range r.acts[ai].things {
				if t.fastener && r.acts[ai].lo < tok && !inertThings.has(t.head) {
					return t, ""
				}
			}
		}
		if part != nil && part.prep == "on" {
			if t := r.fastenerBefore(k); t != nil {
				return t, "" // "the wheel nuts while it's still on the deck, four of them, 17"
			}
		}
		if part != nil {
			if part.entry == nil && part.kind&lexicon.Tool == 0 {
				return nil, part.name
			}
			if part.entry != nil {
				return part.entry, ""
			}
		}
	}
	return nil, ""
}

// fastenerBefore gives the fastener that is named in a clause before one of the same sentence.
func (r *reading) fastenerBefore(cl int) *thing {
	for k := cl - 1; k >= 0 && r.clauses[k].sentence == r.clauses[cl].sentence; k-- {
		for _, mi := range r.clauses[k].mentions {
			if m := &r.mentions[mi]; m.kind&lexicon.Fastener != 0 && m.entry != nil && m.entry.fastener && alike.has(m.entry.head) {
				return m.entry
			}
		}
	}
	return nil
}

// heldByCounted tells whether things that are only counted are said to hold a part:
// "there's three little ones holding the shield on".
func (r *reading) heldByCounted(c *clause, m *mention) bool {
	return m.from > c.lo+1 && r.holding(m.from-1) && r.countedIn(c, m.from)
}

// heading gives the thing that a clause names and says no more of: "Then the slide pins."
func (r *reading) heading(k int) *mention {
	c := &r.clauses[k]
	if len(c.mentions) != 1 || r.toks[c.hi-1].brk < brkSentence {
		return nil
	}
	m := &r.mentions[c.mentions[0]]
	if m.kind&(lexicon.Part|lexicon.Fastener) == 0 || m.prep != "" {
		return nil
	}
	for i := c.lo; i < c.hi; i++ {
		if (i < m.from || i >= m.hi) && !r.toks[i].is(wOpener|wDeterminer|wDrop) && r.toks[i].s != "and" {
			return nil
		}
	}
	return m
}

// inert tells whether what a mention names has no size that a spanner or a key fits:
// it is bent, pressed or pushed, and lies beside what is turned.
func inert(m *mention) bool {
	switch m.head {
	case "clip", "clips":
		return !anyOf(m.mods, "hose", "jubilee", "worm")
	case "ring", "rings":
		return anyOf(m.mods, "snap", "retaining", "o", "seal", "sealing", "piston", "spring", "drip", "rubber", "dust")
	case "pin", "pins":
		return anyOf(m.mods, "split", "cotter", "roll", "locating", "dowel", "hitch", "r")
	}
	return inertThings.has(m.head)
}

func anyOf(words []string, of ...string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(of, w) })
}

var inertThings = wordsOf("have no thread")

func named(t *thing) string {
	if t.name == "" {
		return t.head
	}
	return t.name
}

// touch is a moment at which a fastener was spoken of or handled.
type touch struct {
	tok int
	of  *thing
}

// inHandAt gives the fastener last named or handled before a token, within so many seconds.
func (r *reading) inHandAt(tok int, within float64) *thing {
	if r.touched == nil {
		r.touched = []touch{}
		for _, t := range r.things {
			if !t.fastener {
				continue
			}
			if inertThings.has(t.head) || t.head == "clip" {
				continue
			}
			for _, mi := range t.mentions {
				r.touched = append(r.touched, touch{r.mentions[mi].lo, t})
			}
			for _, e := range t.events {
				r.touched = append(r.touched, touch{e.lo, t})
			}
		}
		sort.SliceStable(r.touched, func(i, j int) bool { return r.touched[i].tok < r.touched[j].tok })
	}
	i := sort.Search(len(r.touched), func(i int) bool { return r.touched[i].tok >= tok })
	if i > 0 && r.since(r.touched[i-1].tok, tok) <= within {
		return r.touched[i-1].of
	}
	return nil
}

// usedHere tells whether the clause is of work rather than of a list of tools.
func (r *reading) usedHere(c *clause) bool {
	if c.mood&listing != 0 {
		return false
	}
	ci := int(r.toks[c.lo].cl)
	n := 0
	for k := max(0, ci-2); k <= min(ci+1, len(r.clauses)-1); k++ {
		for _, mi := range r.clauses[k].mentions {
			if r.mentions[mi].kind == lexicon.Tool {
				n++
			}
		}
	}
	return n < 4 || slices.ContainsFunc(c.acts, func(a int) bool { return r.acts[a].verb >= 0 })
}

// isNew tells whether the clause of a number says what the new one is, rather than what
// turns it: "new one's a thirty-two".
func (r *reading) isNew(c *clause, a int) bool {
	for i := a - 1; i >= c.lo && i > a-5; i-- {
		if w := r.toks[i].s; (w == "one" || w == "ones" || w == "un") && r.prev(i) == "new" {
			return true
		}
	}
	return false
}

// turnedHere tells whether what a spanner or a key turns is spoken of in a clause: named,
// or only counted.
func (r *reading) turnedHere(c *clause, before int) bool {
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.lo >= before {
			break
		}
		if m.kind&lexicon.Fastener != 0 && (alike.has(m.head) || !neverTorqued.has(m.head)) || m.kind&lexicon.Part != 0 && tightens.has(m.head) && m.head != "jet" {
			return true
		}
	}
	return r.countedIn(c, before)
}

// fastenerIn tells whether a fastener is named in a clause before a token.
func (r *reading) fastenerIn(c *clause, before int) bool {
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.lo < before && m.kind&lexicon.Fastener != 0 {
			return true
		}
	}
	return false
}

// turnedNear tells the same of a clause, of those right before it and of the one after:
// "a twelve on these. That's the caliper bolts."
func (r *reading) turnedNear(ci, a int) bool {
	for k := ci; k >= 0 && k >= ci-3 && r.since(r.clauses[k].lo, a) < 10; k-- {
		if r.turnedHere(&r.clauses[k], a) {
			return true
		}
	}
	if ci+1 < len(r.clauses) && r.since(a, r.clauses[ci+1].lo) < 4 {
		n := &r.clauses[ci+1]
		return r.turnedHere(n, min(n.hi, n.lo+6))
	}
	return false
}

// asksAt tells whether a size is all that is asked: "Eight? A ten?"
func (r *reading) asksAt(c *clause, a, b int) bool {
	if a > c.lo+1 || a > c.lo && r.toks[a-1].s != "a" && r.toks[a-1].s != "an" {
		return false // "is that with the nineteen?"
	}
	end := r.endOf(b)
	return end < len(r.talk.Text) && r.talk.Text[end] == '?' || end > 0 && r.talk.Text[end-1] == '?'
}

// tookFor tells whether the first of two sizes is what was thought or expected, and
// the second how it is: "I thought these were eights but they're tens".
func (r *reading) tookFor(s, t *sized) bool {
	but := r.prev(s.lo) == "were" || r.prev(s.lo) == "was" // "I'd have sworn these were eights, they're tens"
	for i := s.hi; i < t.lo; i++ {
		switch r.toks[i].s {
		case "but":
			but = true
		case "could", "might", "may", "or":
			return false // "I think it's a twenty-one, but it could be a twenty-two"
		}
	}
	for i := s.lo - 1; but && i >= max(0, s.lo-7); i-- {
		if expects.has(r.toks[i].s) {
			return true
		}
	}
	return false
}

var expects = set("thought think thinking expect expected expecting sworn guessed reckoned supposed should says said book normally usually meant used")

var headWords = set("head heads headed heid heids af")
