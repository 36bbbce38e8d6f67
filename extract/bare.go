package extract

import (
	_ "embed"
	"math/big"
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// What a number is that is said without its unit ("it's a thirteen", "twenty-four on those")
// is weighed: that it tells how tight, that it is a size of what turns something, or neither.
// The weights are fitted on talk that careful readers judged (bare_test.go).

// A meaning is what a bare number is.
type meaning uint8

const (
	neither  meaning = iota // how many, how long, which one: nothing that is kept
	howTight                // a torque
	turnedBy                // the size of a spanner, a socket, a key or a bit
	meanings
)

// bareNumber is a number said without a unit, with what it is taken for.
type bareNumber struct {
	normalize.Number
	lo, hi int // tokens
	cl     int
	is     meaning
	many   bool // said of several: "tens"
}

//go:embed bare.bin
var bareWeights string

// bareClues is how many weights there are.
const bareClues = 1 << 17

// The signs of what a bare number is. Their order is that of the weights: a new one comes
// last, and the weights are to be fitted again.
const (
	worthIs      sign = iota // the number, by classes
	numberIs                 // the number itself
	beforeIs                 // the word before, and how it ends
	beforeThat               // the word before that
	afterIs                  // the word after, and how the number ends
	afterThat                // the word after that
	betweenIs                // the words before and after
	twoBefore                // the two words before
	twoAfter                 // the two words after
	aloneIs                  // how much more its clause holds
	wordInClause             // a word of its clause before it
	wordLater                // a word of its clause after it
	wordShortly              // a word of the talk right before its clause
	nameBefore               // the kind of thing named before it in its clause, and how far off
	nameAfter                // the same after it
	headBefore               // the thing named before
	headAfter                // the thing named after
	shortlyNamed             // the kind of thing named last before its clause
	toolBefore               // the tool named last, and for how long there was talk since
	wrenchBefore             // the torque wrench was named, and how long ago
	unitBefore               // the kind of the last quantity with its unit, and how long ago
	unitSoon                 // the kind of the next one, and how soon
	bareBefore               // what the last bare number is, and how long ago
	bareWorth                // the same, and both numbers by classes
	tightBefore              // how long ago a torque was said, and how this number compares
	tightAlready             // the same number was a torque before
	tightLater               // the same number is a torque, with its unit, later
	_                        // free
	sizeAlready              // the same number was a size before
	saidAlready              // the same number was said shortly before, as what
	doneLast                 // what was done last, and how long ago
	doneHere                 // what is done in its clause
	doneSoon                 // what is done next
	clickSoon                // a click is heard right after
	inRow                    // it stands in a row that is counted
	moodIs                   // how its clause speaks
	partOfTalk               // a torque was said before it, is said after, or never
	isPlural                 // "tens"
	sizedBefore              // by what and how it follows a size with its unit
	worthLast                // the number by classes, and what was done last
	worthBefore              // the number by classes, and the word before
	worthAfter               // the number by classes, and the word after
	worthName                // the number by classes, and the kind of thing named before it
	unitAlone                // the unit is said by itself, so soon
	bareSigns
)

// hint is a sign with its value.
type hint struct {
	sign  sign
	value int
}

// clue gives the place of the weight that a hint has for a meaning that is one to keep.
func (h hint) clue(of meaning) clue {
	return clue((uint32(h.sign+sign(of-1)*bareSigns)<<12 + uint32(h.value)) * 2654435761 >> 15)
}

// wordClue makes a value of a word.
func wordClue(w string) int {
	n := uint32(2166136261)
	for i := range len(w) {
		n = (n ^ uint32(w[i])) * 16777619
	}
	return int(n >> 4)
}

// wordClueAt is wordClue of a token, made once.
func (r *reading) wordClueAt(i int) int {
	if r.wordClues == nil {
		r.wordClues = make([]uint32, len(r.toks))
		for i := range r.toks {
			r.wordClues[i] = uint32(wordClue(r.toks[i].s))
		}
	}
	return int(r.wordClues[i])
}

// spannerSizes are the widths across flats, in millimetres, that spanners and sockets are
// sold in for bolts, nuts, plugs and lines (ISO 272, and common practice for 7 to 36).
var spannerSizes = func() (of [51]bool) {
	for _, n := range []int{7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 26, 27, 28, 29, 30, 32, 33, 34, 36, 38, 41, 46, 50} {
		of[n] = true
	}
	return of
}()

// spannerSize tells whether spanners and sockets are sold in a width.
func spannerSize(v *big.Rat) bool {
	return v.IsInt() && compare(v, 1) >= 0 && compare(v, int64(len(spannerSizes)-1)) <= 0 && spannerSizes[v.Num().Int64()]
}

// worthOf puts a number into classes: few, the widths of spanners, odd ones, round ones.
func worthOf(v *big.Rat) int {
	if !v.IsInt() {
		switch {
		case compare(v, 2) < 0:
			return 20
		case compare(v, 7) < 0:
			return 21
		case compare(v, 20) < 0:
			return 22
		}
		return 23
	}
	n := v.Num().Int64()
	switch {
	case n < 7:
		return int(n)
	case n > 300:
		return 19
	case n > 150:
		return 18
	case n > 99:
		return 17
	case n > 50 && n%10 == 0:
		return 16
	case n > 50 && n%5 == 0:
		return 15
	case n > 50:
		return 14
	case n > 36 && n%5 == 0:
		return 13
	case n > 36:
		return 12
	case !spannerSizes[n]:
		return 11
	case n > 24:
		return 10
	case n == 10 || n == 13 || n == 17 || n == 19:
		return 9
	case n%10 == 0 || n == 15:
		return 8
	}
	return 7
}

// soFar is what was heard before a bare number.
type soFar struct {
	qtys    int            // quantities before it
	tight   int            // the last torque with its unit, -1 where none was
	tights  map[int64]bool // numbers that were a torque
	sizes   map[int64]bool // numbers that were a size
	lastOf  map[int64]int  // where each number is a torque, with its unit, for the last time
	anyUnit bool           // whether there is a torque with its unit at all
	alone   []quantity     // the units said by themselves that are still to come
	forAll  []int          // tokens of those said to be of all values
}

// keyOf tells numbers from each other.
func keyOf(v *big.Rat) int64 { return v.Num().Int64()<<8 + v.Denom().Int64() }

// heardBefore gives what is known before any bare number.
func (r *reading) heardBefore() *soFar {
	h := &soFar{tight: -1, tights: map[int64]bool{}, sizes: map[int64]bool{}, lastOf: map[int64]int{}, alone: r.unitsAlone()}
	for i := range r.qtys {
		if q := &r.qtys[i]; q.Kind == normalize.Torque && q.Low != nil {
			h.lastOf[keyOf(q.Low)], h.anyUnit = q.lo, true
		}
	}
	for _, u := range h.alone {
		if r.ofWholeList(&r.clauses[u.cl], u) {
			h.forAll = append(h.forAll, u.lo)
		}
	}
	return h
}

// before goes on to a token.
func (h *soFar) before(r *reading, lo int) {
	for len(h.alone) > 0 && h.alone[0].lo < lo {
		h.alone = h.alone[1:]
	}
	for ; h.qtys < len(r.qtys) && r.qtys[h.qtys].hi <= lo; h.qtys++ {
		q := &r.qtys[h.qtys]
		switch {
		case q.Low == nil:
		case q.Kind == normalize.Torque:
			h.tight = h.qtys
			h.tights[keyOf(q.Low)] = true
		case q.Kind == normalize.Size || q.Kind == normalize.Driver:
			h.sizes[keyOf(q.Low)] = true
		}
	}
}

// tell adds what a bare number was taken for.
func (h *soFar) tell(f *bareNumber) {
	switch f.is {
	case howTight:
		h.tights[keyOf(f.Low)] = true
	case turnedBy:
		h.sizes[keyOf(f.Low)] = true
	}
}

// bareNumbers finds the bare numbers of the talk, and tells what each is.
func (r *reading) bareNumbers() {
	var row []hint
	heard := r.heardBefore()
	var found []bareNumber
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if c.mood&(aside|greeting) != 0 {
			continue
		}
		found = r.barePlurals(found[:0], ci)
		base := int(r.toks[c.lo].lo)
		for _, n := range r.numbersOf(c.lo, c.hi) {
			lo, hi := r.tokenAt(base+n.Start), r.tokenAt(base+n.End-1)+1
			if n.Low != nil && lo >= c.lo && hi <= c.hi && lo < hi && r.toks[lo].qty < 0 && r.toks[hi-1].qty < 0 && r.mayTell(&n, hi) && !gradeWords.has(r.prev(lo)) {
				found = append(found, bareNumber{Number: n, lo: lo, hi: hi, cl: ci})
			}
		}
		slices.SortStableFunc(found, func(a, b bareNumber) int { return a.lo - b.lo })
		for k, f := range found {
			if n := len(r.bare); n > 0 && r.bare[n-1].hi > f.lo {
				continue // "twenty-ones" is one number
			}
			var next *bareNumber
			if k+1 < len(found) {
				next = &found[k+1]
			}
			heard.before(r, f.lo)
			row = r.hints(row[:0], &f, heard)
			f.is = weighBare(row)
			switch {
			case r.justCounted(&f), r.otherMeasure(&f, next):
				f.is = neither
			case f.is == howTight && r.toolAt(f.hi), f.is != turnedBy && r.sizeTried(&f), f.is != turnedBy && (r.inInches(&f) || r.sizeTold(&f, heard)):
				f.is = turnedBy // "seventeen crow's foot", "a three eighths bolt"
			case f.is != howTight && r.toldTight(&f, heard):
				f.is = howTight
			case f.is == howTight && r.countsThem(&f, heard):
				f.is = neither // "so I went around all eight"
			case f.is == turnedBy && (!f.Low.IsInt() && r.partOfIt(&f) || r.countedOut(&f)):
				f.is = neither // "turn the nut three quarters", "count the teeth, thirteen, fourteen"
			}
			if r.weighed != nil {
				f.is = r.weighed(&f, row)
			}
			heard.tell(&f)
			r.bare = append(r.bare, f)
		}
	}
}

// sizeTold tells whether a number is plainly a size by how it is put: "a pin of six", "that's
// a ten as well" where tens were told before, "a six thread".
func (r *reading) sizeTold(f *bareNumber, heard *soFar) bool {
	switch c := &r.clauses[f.cl]; {
	case r.halfMil(f), r.nextTorx(f) && r.alone(c, f.lo, f.hi):
		return true
	case f.many && spannerSize(f.Low) && r.prevKind(f.lo).is(wLinking), f.Alt && spannerSize(f.Low) && spannerSize(f.High) && (r.prev(f.lo) == "either" || articles.has(r.prev(f.lo)) || articles.has(r.toks[f.lo].s)):
		// "the rest are thirteens", "it's either a ten or an eleven"
		return r.nothingMore(c, f.hi) && !r.measuredBefore(f.cl, f.lo) && (r.fastenersNear(f.cl, f.lo) || r.doneUpNear(f.cl))
	}
	if !f.Low.IsInt() || compare(f.Low, 2) < 0 || compare(f.Low, 41) > 0 || f.lo < 2 {
		return false
	}
	switch w := r.word(f.hi); {
	case r.toks[f.hi-1].brk >= brkComma:
	case w == "number" && compare(f.Low, 5) > 0:
		return !prepositions.has(r.next(f.hi)) // "ten number, both of them"
	case threadWords.has(w) && (r.toks[f.lo-1].s == "a" || r.toks[f.lo-1].s == "an"):
		return true // "it's only a six thread"
	}
	switch r.toks[f.lo-1].s {
	case "of":
		m := r.toks[f.lo-2].men
		return m >= 0 && r.mentions[m].kind&(lexicon.Fastener|lexicon.Tool) != 0 && r.mentions[m].hi == f.lo-1 && r.nothingMore(&r.clauses[f.cl], f.hi)
	case "a", "an":
		return heard.sizes[keyOf(f.Low)] && r.word(f.hi) == "as" && r.next(f.hi) == "well"
	}
	return false
}

// halfMil tells whether a number and a half, said by itself, is the key of a screw that was
// just named, or the next one tried: "there's a grub screw in it, two and a half".
func (r *reading) halfMil(f *bareNumber) bool {
	if f.Low.Denom().Int64() != 2 || compare(f.Low, 6) > 0 || compare(f.Low, 1) < 0 {
		return false
	}
	c := &r.clauses[f.cl]
	if !r.alone(c, f.lo, f.hi) || r.measuredBefore(f.cl, f.lo) || r.ofTurn(c, f.lo) {
		return false
	}
	for i := f.lo - 1; i >= max(0, f.lo-10); i-- {
		if q := r.toks[i].qty; q >= 0 {
			k := &r.qtys[q] // "three mil key. No, it's spinning. Two and a half"
			return k.Kind == normalize.Size && k.Unit == "mm" && compare(k.Low, 7) < 0 && r.since(k.lo, f.lo) < 12
		}
	}
	return slices.ContainsFunc(c.mentions, func(mi int) bool {
		m := &r.mentions[mi]
		return m.head == "screw" && m.hi <= f.lo && f.lo-m.hi < 6
	})
}

// countedOut tells whether a number counts, or stands in a row that is counted: "I've got five
// good ones", "count the teeth, thirteen, fourteen, fifteen".
func (r *reading) countedOut(f *bareNumber) bool {
	if dropAdj.has(r.word(f.hi)) && r.next(f.hi) == "ones" && r.toks[f.hi-1].brk < brkComma {
		return true
	}
	for i := f.lo - 1; i >= max(0, f.lo-12) && r.clauses[r.toks[i].cl].sentence == r.clauses[f.cl].sentence; i-- {
		if w := r.toks[i].s; w == "count" || w == "counting" || w == "counted" {
			for k := f.lo - 3; k < f.hi+3; k++ {
				if n := pluralSize[r.word(k)+"s"]; k >= 0 && n > 0 && (compare(f.Low, int64(n)+1) == 0 || compare(f.Low, int64(n)-1) == 0) {
					return true
				}
			}
		}
	}
	return false
}

// barePlurals adds the numbers of a clause that are said of several: "tens", "13s".
func (r *reading) barePlurals(found []bareNumber, ci int) []bareNumber {
	c := &r.clauses[ci]
	for i := c.lo; i < c.hi; i++ {
		if !r.toks[i].is(wSeldom) || r.toks[i].qty >= 0 {
			continue
		}
		n, lo := pluralSize[r.toks[i].s], i
		if n == 0 {
			continue
		}
		if tens := tensOf[r.prev(i)]; tens > 0 && i > c.lo && n < 10 {
			n, lo = tens+n, i-1 // "twenty-fours"
		} else if n == 1 {
			continue // "the long ones"
		}
		v := new(big.Rat).SetInt64(int64(n))
		found = append(found, bareNumber{Number: normalize.Number{Low: v, High: v}, lo: lo, hi: i + 1, cl: ci, many: true})
	}
	return found
}

// gradeWords are words before a number that tells how strong a bolt is, not how tight.
var gradeWords = set("grade class")

// mayTell tells whether a number at whose end token hi stands may be a torque or a size at
// all: not one of what is counted, or timed, or paid.
func (r *reading) mayTell(n *normalize.Number, hi int) bool {
	if n.Low.IsInt() && compare(n.Low, 2) < 0 || compare(n.High, 700) > 0 || !n.Low.IsInt() && compare(n.Low, 30) > 0 {
		return false
	}
	if hi < len(r.toks) && r.toks[hi-1].brk < brkComma {
		w := r.toks[hi].s
		if timeWords.has(w) || counted.has(w) || coins.has(w) || sided.has(w) {
			return false
		}
		if m := r.toks[hi].men; m >= 0 && r.mentions[m].plural && (r.mentions[m].kind&lexicon.Tool == 0 || compare(n.High, 5) < 0) && !wide(n.Low) && n.Low.IsInt() {
			return false // "three bolts", "always two spanners on brass"
		}
	}
	return true
}

// sided are the words for the shape of a socket or a key that a number before them tells.
var sided = set("point sided cornered corner jaw leg")

// tightAhead is by how much a torque is given more weight than its clues tell: one that is
// missed is lost, one that is none is asked about, since its unit is not its own.
const tightAhead = 8

// weighBare gives the heaviest meaning of a number with these hints.
func weighBare(row []hint) meaning {
	best, most := neither, 0
	for of := howTight; of < meanings; of++ {
		sum := 0
		if of == howTight {
			sum = tightAhead
		}
		for _, h := range row {
			sum += int(int8(bareWeights[h.clue(of)]))
		}
		if sum > most {
			best, most = of, sum
		}
	}
	return best
}

// toolAt tells whether a tool is named right at a token, none that shows how tight it turns.
func (r *reading) toolAt(i int) bool {
	if i >= len(r.toks) || r.toks[i-1].brk >= brkComma || r.toks[i].men < 0 {
		return false
	}
	m := &r.mentions[r.toks[i].men]
	return m.from == i && m.kind == lexicon.Tool && !strings.Contains(m.name, "torque")
}

// torqueWrench is the class of the tools that show how tight they turn.
const torqueWrench = 3

// kindClass puts the kinds of named things into classes.
func (r *reading) kindClass(m *mention) int {
	switch {
	case m.kind&lexicon.Fastener != 0 && m.plural:
		return 1
	case m.kind&lexicon.Fastener != 0:
		return 2
	case m.kind&lexicon.Tool != 0 && strings.Contains(m.name, "torque"):
		return torqueWrench
	case m.kind&lexicon.Tool != 0 && sizeTool[m.head] != "":
		return 4
	case m.kind&lexicon.Tool != 0:
		return 5
	case m.kind&lexicon.Consumable != 0:
		return 6
	case documents.has(m.head):
		return 7
	case m.kind&lexicon.Part != 0:
		return 8
	}
	return 9
}

// unitClass puts quantities into classes.
func unitClass(k normalize.Kind) int {
	switch k {
	case normalize.Torque:
		return 1
	case normalize.Size, normalize.Drive, normalize.Driver:
		return 2
	case normalize.Thread:
		return 3
	case normalize.Length:
		return 4
	case normalize.Turn:
		return 5
	}
	return 6
}

// hints gives all signs of what a bare number is.
func (r *reading) hints(row []hint, f *bareNumber, heard *soFar) []hint {
	c := &r.clauses[f.cl]
	add := func(s sign, value int) { row = append(row, hint{s, value}) }
	word := func(i int) int {
		if i < 0 || i >= len(r.toks) {
			return 0
		}
		return wordClue(r.toks[i].s)
	}
	brk := func(i int) int { // what ends after a token
		if i < 0 || i >= len(r.toks) {
			return brkClass(brkClip)
		}
		return brkClass(r.toks[i].brk)
	}
	worth := worthOf(f.Low)
	start, end := brk(f.lo-1), brk(f.hi-1)
	add(worthIs, worth)
	if f.Low.IsInt() {
		add(numberIs, int(f.Low.Num().Int64()))
	}
	if f.Low.Cmp(f.High) != 0 {
		add(worthIs, 32)
	}
	if f.many {
		add(isPlural, worth)
	}
	add(beforeIs, word(f.lo-1)*4+start)
	add(afterIs, word(f.hi)*4+end)
	add(beforeThat, word(f.lo-2))
	add(afterThat, word(f.hi+1))
	add(betweenIs, word(f.lo-1)*31+word(f.hi)+start*4+end)
	add(betweenIs, 1<<30+start*4+end)
	add(twoBefore, word(f.lo-2)*31+word(f.lo-1))
	add(twoAfter, word(f.hi)*31+word(f.hi+1))
	add(aloneIs, min(f.lo-c.lo, 6)*8+min(c.hi-f.hi, 7))
	add(worthBefore, word(f.lo-1)*32+worth)
	add(worthAfter, word(f.hi)*32+worth)
	for i := max(c.lo, f.lo-12); i < f.lo; i++ {
		add(wordInClause, word(i))
	}
	for i := f.hi; i < min(c.hi, f.hi+8); i++ {
		add(wordLater, word(i))
	}
	for i := max(0, c.lo-14); i < c.lo; i++ {
		add(wordShortly, word(i))
	}
	// what is named around it
	far := func(d int) int { return min(d, 7) }
	named := 0
	for k := len(c.mentions) - 1; k >= 0; k-- {
		if m := &r.mentions[c.mentions[k]]; m.hi <= f.lo {
			named = r.kindClass(m)
			add(nameBefore, named*8+far(f.lo-m.hi))
			add(headBefore, wordClue(m.head))
			break
		}
	}
	add(worthName, named*32+worth)
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.hi > f.hi {
			add(nameAfter, r.kindClass(m)*8+far(max(m.from-f.hi, 0)))
			add(headAfter, wordClue(m.head))
			break
		}
	}
	for k, seen := f.cl-1, 0; k >= max(0, f.cl-4) && seen < 2; k-- {
		for j := len(r.clauses[k].mentions) - 1; j >= 0 && seen < 2; j-- {
			m := &r.mentions[r.clauses[k].mentions[j]]
			add(shortlyNamed, seen*256+r.kindClass(m)*16+min(f.cl-k, 4))
			seen++
		}
	}
	tool, wrench := false, false
	for k := f.cl; k >= max(0, f.cl-12) && !(tool && wrench); k-- {
		for j := len(r.clauses[k].mentions) - 1; j >= 0; j-- {
			m := &r.mentions[r.clauses[k].mentions[j]]
			if m.lo >= f.lo {
				continue
			}
			switch r.kindClass(m) {
			case torqueWrench:
				if !wrench {
					add(wrenchBefore, gapOf(r.since(m.lo, f.lo)))
					wrench = true
				}
			case 4:
				if !tool {
					add(toolBefore, wordClue(m.head)*8+gapOf(r.since(m.lo, f.lo)))
					tool = true
				}
			}
		}
	}
	// the quantities before and after, with their units and without
	before, after := -1, -1
	for i := f.lo - 1; i >= max(0, f.lo-400) && before < 0; i-- {
		before = int(r.toks[i].qty)
	}
	for i := f.hi; i < min(len(r.toks), f.hi+60) && after < 0; i++ {
		after = int(r.toks[i].qty)
	}
	if before >= 0 {
		q := &r.qtys[before]
		add(unitBefore, unitClass(q.Kind)*8+gapOf(r.since(q.hi, f.lo)))
		if q.cl == f.cl || f.lo-q.hi < 6 {
			add(sizedBefore, unitClass(q.Kind)*8+far(f.lo-q.hi))
		}
	}
	if after >= 0 {
		q := &r.qtys[after]
		add(unitSoon, unitClass(q.Kind)*8+gapOf(r.since(f.hi-1, q.lo)))
	}
	if n := len(r.bare); n > 0 {
		g := &r.bare[n-1]
		gap := gapOf(r.since(g.hi, f.lo))
		add(bareBefore, int(g.is)*8+gap)
		add(bareWorth, (int(g.is)*32+worthOf(g.Low))*32+worth)
		if gap < 3 {
			add(bareWorth, 1<<20+(int(g.is)*8+min(f.lo-g.hi, 7))*4+brk(g.hi-1))
		}
		for i := n - 1; i >= max(0, n-6) && r.since(r.bare[i].hi, f.lo) < 30; i-- {
			if g := &r.bare[i]; g.Low.Cmp(f.Low) == 0 {
				add(saidAlready, int(g.is))
			}
		}
	}
	key := keyOf(f.Low)
	both := func(s sign) {
		add(s, 1)
		add(s, 8+worth)
	}
	if heard.tights[key] {
		both(tightAlready)
	}
	if heard.sizes[key] {
		both(sizeAlready)
	}
	if heard.lastOf[key] > f.lo {
		both(tightLater)
	}
	if len(heard.alone) > 0 {
		if u := &heard.alone[0]; r.since(f.lo, u.lo) < 25 {
			add(unitAlone, gapOf(r.since(f.hi-1, u.lo))*8+far(u.lo-f.hi))
			add(unitAlone, 64+far(u.lo-f.hi))
		}
	}
	part := 3
	if heard.tight >= 0 {
		part = 1
		q := &r.qtys[heard.tight]
		gap := gapOf(r.since(q.hi, f.lo))
		add(tightBefore, gap)
		add(tightBefore, 64+(1+f.Low.Cmp(q.Low))*8+gap)
	} else if heard.anyUnit {
		part = 2
	}
	add(partOfTalk, part)
	add(partOfTalk, part*64+worth)
	// what is done
	done := 0
	for k, seen := f.cl, 0; k >= max(0, f.cl-10) && seen < 2; k-- {
		acts := r.clauses[k].acts
		for j := len(acts) - 1; j >= 0 && seen < 2; j-- {
			a := &r.acts[acts[j]]
			if a.lo >= f.lo {
				continue
			}
			d := doingOf(a.action.Name)
			if a.action.Name == "torque" || a.action.Name == "tighten" {
				d = 4
			}
			add(doneLast, (seen*8+d)*8+min(f.cl-k, 7))
			if seen == 0 {
				done = d
			}
			seen++
		}
	}
	add(worthLast, done*32+worth)
	for _, ai := range c.acts {
		add(doneHere, wordClue(r.acts[ai].action.Name))
	}
	for k := f.cl + 1; k < min(len(r.clauses), f.cl+4); k++ {
		if acts := r.clauses[k].acts; len(acts) > 0 {
			add(doneSoon, wordClue(r.acts[acts[0]].action.Name)*4+k-f.cl)
			break
		}
	}
	for i := f.hi; i < min(len(r.toks), f.hi+20); i++ {
		if w := r.toks[i].s; w == "click" || w == "clicks" || w == "clicked" {
			add(clickSoon, min((i-f.hi)/4, 4))
			break
		}
	}
	if n := countOf[r.toks[f.lo].s]; n > 0 && f.hi-f.lo == 1 {
		up := 0
		for i := f.lo - 1; i >= max(0, f.lo-10); i-- {
			if countOf[r.toks[i].s] == n-1 {
				up |= 1
			}
		}
		for i := f.hi; i < min(len(r.toks), f.hi+10); i++ {
			if countOf[r.toks[i].s] == n+1 {
				up |= 2
			}
		}
		if up != 0 {
			add(inRow, up*8+end)
		}
	}
	for b := range 16 {
		if c.mood>>b&1 != 0 {
			add(moodIs, b)
		}
	}
	add(moodIs, 100)
	return row
}
