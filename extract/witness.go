package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// Who says what: papers, people, marks and the machine itself give figures, and
// where two of them give different ones for one thing, that is a conflict.

// witness is who or what gives a figure: where it is named, and by what name it is
// told from others.
type witness struct {
	lo, hi  int
	id      string
	machine bool
	paper   bool // written somewhere, not told by somebody
	filled  bool // what the speaker put in: a figure without a unit may be any
}

// account is what one witness says: its figures, or the way round it gives.
type account struct {
	witness
	first, last int // clauses
	figures     []given
}

// given is a number as it is compared: of which kind, and what is counted.
type given struct {
	at, hi int
	kind   normalize.Kind
	value  string
	nm     said
	noun   string
}

// printed are what figures are written in or on; a box or a bag is one only where it
// is said to say something.
var printed = set(documentWords + " invoice placard picture schematic catalogue catalog plate decal bulletin brochure data scan stamp receipt photo view fiche logbook printout advert packaging literature card bible guide")

// states are verbs of what is written, printed or told.
var states = set("says say said reads reckons reckon recommends states shows lists list gives quotes told tells swears specifies prints insists suggests sold sell sells drawn supply supplied")

// writtenBy are how a figure stands on a part.
var writtenBy = set("marked stamped printed written engraved rated embossed moulded molded labelled labeled stencilled")

// introduces are the other words that one may begin with who gives a figure.
var introduces = set("according in out new number figure writing stamp code mine this the old these i there's 's")

// finds are what a person does who finds a figure on the machine.
var finds = set("counted count measured measure found make see poured fitted")

// disagreements gives, by the clause where the second of them speaks, the clause
// where the first did, for each two witnesses who give different figures of one thing.
func (r *reading) disagreements() map[int]int {
	out := map[int]int{}
	var heard []account
	for lo := 0; lo < len(r.clauses); {
		hi := lo + 1
		for hi < len(r.clauses) && r.clauses[hi].sentence == r.clauses[lo].sentence && r.clauses[hi].hi-r.clauses[lo].lo <= 60 {
			hi++
		}
		for _, b := range r.accounts(lo, hi, heard) {
			for i := len(heard) - 1; i >= 0 && i >= len(heard)-4; i-- {
				a := &heard[i]
				if r.since(a.lo, b.lo) > 25 || a.machine && b.machine || a.id == b.id {
					continue
				}
				if r.differ(a, &b) {
					out[b.first] = a.first
					break
				}
			}
			heard = append(heard, b)
		}
		lo = hi
	}
	return out
}

// accounts reads what the witnesses of a sentence say. A figure belongs to the
// witness that stands nearest to it; a witness without one takes the next sentence's.
func (r *reading) accounts(lo, hi int, before []account) []account {
	from, to := r.clauses[lo].lo, r.clauses[hi-1].hi
	for k := lo; k < hi; k++ {
		if r.clauses[k].mood&(aside|greeting|asked) != 0 || r.clauses[k].mood&conditional != 0 && !r.goesBy(&r.clauses[k]) {
			return nil
		}
	}
	fs := append(r.figures(lo, hi), r.ways(from, to)...)
	for i := from; i < to; i++ {
		switch r.toks[i].s {
		case "limit", "minimum", "maximum", "chuck", "worn", "wear", "scrap", "bin":
			return nil // how far it may wear, not what it is
		}
	}
	ws := r.witnesses(from, to, fs)
	if len(ws) == 0 && len(before) > 0 {
		// "It's a ten, says the box. There's a twenty in it."
		if a := &before[len(before)-1]; a.paper && r.since(a.hi, from) < 8 && len(fs) > 0 && to-from <= 14 {
			if w := r.word(from); (w == "there's" || w == "it's" || w == "there" || w == "it" || w == "that" || w == "these" || w == "they") && int(r.toks[fs[0].at].cl) == lo {
				ws = append(ws, witness{lo: from, hi: from + 1, id: "here", machine: true})
			}
		}
	}
	if len(ws) < 2 {
		if p := r.placements(fs, to); len(p) > 1 {
			ws = p
		}
	}
	if len(ws) == 0 {
		return nil
	}
	for k := lo; k < hi; k++ {
		if r.ofMoney(k) {
			return nil // "you can get them for six quid each"
		}
	}
	if !ws[0].machine {
		for _, f := range fs { // "dot three on the cap, and the book has four"
			if w := r.word(f.hi); (w == "on" || w == "under" || w == "inside") && f.hi+1 < to && (r.next(f.hi) == "the" || r.next(f.hi) == "my") {
				if id := r.nounNear(f.hi+1, to); id != "" && len(ws) == 1 && ws[0].id != id && !strings.HasSuffix(ws[0].id, " "+id) && r.apart(f, ws[0]) > 8 {
					ws = append(ws, witness{lo: f.hi, hi: f.hi + 1, id: id, paper: true})
				}
			}
		}
	}
	var out []account
	for _, w := range ws {
		out = append(out, account{witness: w, first: int(r.toks[w.lo].cl), last: int(r.toks[w.hi-1].cl)})
	}
	if len(fs) == 0 && hi < len(r.clauses) && len(ws) == 1 && r.since(to-1, r.clauses[hi].lo) < 5 {
		n := hi + 1
		for n < len(r.clauses) && r.clauses[n].sentence == r.clauses[hi].sentence && r.clauses[n].hi-r.clauses[hi].lo <= 20 {
			n++
		}
		if next := r.clauses[hi].lo; len(r.witnesses(next, r.clauses[n-1].hi, nil)) == 0 && (r.word(next) == "it" || r.word(next) == "they" || r.word(next) == "he" || r.word(next) == "she") {
			fs = r.figures(hi, n)
			out[0].last = n - 1
		}
	}
	for _, f := range fs {
		best := 0
		for k := 1; k < len(out); k++ {
			if r.apart(f, out[k].witness) < r.apart(f, out[best].witness) {
				best = k
			}
		}
		if r.apart(f, out[best].witness) > 12 {
			continue
		}
		out[best].figures = append(out[best].figures, f)
		out[best].last = max(out[best].last, int(r.toks[f.at].cl))
		out[best].first = min(out[best].first, int(r.toks[f.at].cl))
	}
	n := 0
	for _, a := range out {
		if len(a.figures) > 0 {
			out[n] = a
			n++
		}
	}
	return out[:n]
}

// apart tells how far a figure stands from a witness; a comma or an "and" between
// them counts for more than words.
func (r *reading) apart(f given, w witness) int {
	lo, hi := f.hi, w.lo
	if w.lo < f.at {
		lo, hi = w.hi, f.at
	}
	n := max(0, hi-lo)
	for i := lo; i < hi; i++ {
		if s := r.toks[i].s; s == "and" || s == "but" || s == "while" || s == "whereas" {
			n += 12
		}
		if r.toks[i].brk >= brkComma {
			n += 4
		}
	}
	return n
}

// witnesses finds who or what is said to say something between two tokens.
func (r *reading) witnesses(lo, hi int, figures []given) []witness {
	var out []witness
	add := func(w witness) {
		if n := len(out); n > 0 && (out[n-1].id == w.id && w.lo-out[n-1].hi < 8 || w.lo < out[n-1].hi) {
			return
		}
		if n := len(out); w.machine && n > 0 && !out[n-1].machine && !r.turnsBetween(out[n-1].hi, w.lo) {
			// "the diagram says there's one": what a paper says is there is no machine's
			told := false
			for _, f := range figures {
				told = told || f.at >= out[n-1].hi-1 && f.at < w.lo
			}
			if !told {
				return
			}
		}
		out = append(out, w)
	}
	for i := lo; i < hi; i++ {
		if !r.toks[i].is(wWitness | wCounts) {
			continue // every word that a case below begins with is marked in classes.go
		}
		w, prev, next := r.toks[i].s, "", ""
		if i > lo {
			prev = r.toks[i-1].s
		}
		if i+1 < hi {
			next = r.toks[i+1].s
		}
		switch {
		case (w == "says" || w == "say") && next == "the" && i > lo && (r.toks[i-1].qty >= 0 || r.toks[i-1].is(wCounts)):
			if id := r.nounNear(i+1, hi); id != "" {
				add(witness{lo: i, hi: i + 2, id: id})
			}
		case printed.has(w) && (r.givesAfter(i, hi) || documents.has(w) && (r.isOn(lo, i) || i-lo <= 2 && hi-lo <= 12 && !r.finite(i+1, hi))):
			id := w
			if p := r.toks[max(lo, i-1)].s; i > lo && !determiner.has(p) && !stopWords.has(p) || contrast.has(p) {
				id = p + " " + w
			}
			add(witness{lo: i, hi: i + 1, id: id, paper: true})
		case states.has(w) && i > lo && prev != "i" && prev != "you" && prev != "to" && prev != "'ll" && prev != "'d" && (prev != "people" || i-2 >= lo && (r.toks[i-2].men >= 0 || determiner.has(r.toks[i-2].s))) && prev != "let's" && !(w == "list" && prev != "they") && !(w == "count" || w == "make"):
			id := prev
			if prev == "he" || prev == "she" {
				id = prev
			} else if prev == "it" || prev == "that" || prev == "this" || prev == "which" {
				id = r.writtenOn(i, lo, hi)
			} else if k := r.subjectHead(lo, i); k >= 0 {
				id = r.toks[k].s
				if k > lo && contrast.has(r.toks[k-1].s) {
					id = r.toks[k-1].s + " " + id
				}
			}
			for k := i - 1; k >= max(lo, i-4); k-- {
				if printed.has(r.toks[k].s) {
					id = r.toks[k].s // "the sheet here says"
				}
			}
			if w == "said" && id == "it" || prev == "doesn't" || prev == "didn't" || prev == "don't" || w == "told" && next != "me" {
				continue
			}
			add(witness{lo: i, hi: i + 1, id: id, paper: w != "said" && w != "told" && prev != "they"})
		case w == "according" && next == "to":
			add(witness{lo: i, hi: i + 2, id: "according", paper: true})
		case w == "in" && (next == "here" || next == "there") && len(out) == 0 && (r.word(i+2) == "is" || r.word(i+2) == "'s" || r.kind(i+2).is(wCounts)),
			w == "in" && next == "the" && i <= lo+1 && r.linkedSoon(i+3, min(hi, i+5)) && !printed.has(r.word(i+2)),
			w == "this" && (next == "wants" || next == "takes" || next == "has" || next == "needs"),
			w == "out" && (next == "'s" || next == "is" || next == "was") && (prev == "came" || prev == "took"):
			add(witness{lo: i, hi: i + 2, id: "here", machine: true})
		case contrast.has(w) && len(out) > 0 && !out[len(out)-1].machine && (next == "one" || next == "lot" || next == "says" || next == "say"):
			add(witness{lo: i, hi: i + 1, id: w})
		case (w == "number" || w == "figure" || w == "writing" || w == "stamp" || w == "code") && (next == "on" || next == "in") && r.linkedSoon(i+2, hi):
			add(witness{lo: i, hi: i + 1, id: "here", machine: true})
		case writtenBy.has(w) && (prev == "'s" || prev == "is") && (next == "on" || next == "in") && (r.word(i+2) == "it" || r.word(i+2) == "there" || r.word(i+2) == "here") && (r.word(i+3) == "is" || r.word(i+3) == "'s"):
			add(witness{lo: i, hi: i + 1, id: "on it", paper: true}) // "what's written on it is a thirty three"
		case writtenBy.has(w) && (prev == "'s" || prev == "is" || prev == "are" || prev == "'re" || prev == "was" || prev == "it's"):
			id := r.nounNear(i+1, hi)
			if k := r.subjectHead(lo, i-1); k >= 0 {
				id = r.toks[k].s
			}
			if id != "" && id != "right" && id != "there" && id != "here" && (r.nextKind(i).is(wCounts) || r.toks[min(i+1, hi-1)].qty >= 0 || r.kind(i+2).is(wCounts)) {
				add(witness{lo: i, hi: i + 1, id: id, paper: true})
			}
		case w == "mine" && (next == "'s" || next == "is" || next == "has" || next == "measures"),
			(w == "this" || w == "the") && next == "one" && (linking.has(r.word(i+2)) || r.word(i+2) == "measures"),
			w == "old" && (next == "one" || next == "ones") && (linking.has(r.word(i+2)) || r.word(i+2) == "measures"),
			w == "these" && (next == "are" || next == "have" || next == "'re"):
			add(witness{lo: i, hi: i + 2, id: "here", machine: true})
		case w == "the" && (next == "one" || next == "ones") && (r.word(i+2) == "i" || r.word(i+2) == "that"):
			add(witness{lo: i, hi: i + 3, id: "here", machine: true})
		case w == "i" && r.findsAt(i+1, hi):
			add(witness{lo: i, hi: i + 2, id: "here", machine: true, filled: r.fills(i, hi)})
		case r.toks[i].is(wCounts) && (next == "out" && r.word(i+2) == "of" && (r.word(i+3) == "here" || r.word(i+3) == "it" || r.word(i+3) == "mine") || next == "came" && (r.word(i+2) == "out" || r.word(i+2) == "off")):
			add(witness{lo: i, hi: i + 2, id: "here", machine: true})
		case w == "there's" && r.nextKind(i).is(wCounts) || w == "'s" && prev == "there" && (r.nextKind(i).is(wCounts) || (next == "a" || next == "only") && r.kind(i+2).is(wCounts)):
			add(witness{lo: i, hi: i + 1, id: "here", machine: true})
		}
	}
	return out
}

// placements gives the places where figures are said to stand, where one of them is a
// place for writing: "thirty two on the sidewall and thirty six on the door".
func (r *reading) placements(fs []given, to int) []witness {
	var out []witness
	source := false
	for _, f := range fs {
		if w := r.word(f.hi); f.kind != way && (w == "on" || w == "under" || w == "inside" || w == "in") && f.hi+1 < to && (r.next(f.hi) == "the" || r.next(f.hi) == "my") {
			id := r.nounNear(f.hi+1, to)
			if id == "" || len(out) > 0 && out[len(out)-1].id == id {
				continue
			}
			source = source || printed.has(id) || writable.has(id)
			out = append(out, witness{lo: f.hi, hi: f.hi + 1, id: id, paper: true})
		}
	}
	if !source {
		return nil
	}
	return out
}

// writable are parts of a machine that figures are printed on.
var writable = wordsOf("on what a figure is written")

// goesBy tells of "if you believe the book": no condition.
func (r *reading) goesBy(c *clause) bool {
	for i := c.lo; i+2 < c.hi; i++ {
		if r.toks[i].s == "if" && r.toks[i+1].s == "you" {
			switch r.toks[i+2].s {
			case "believe", "go", "trust", "read", "ask", "look":
				return true
			}
		}
	}
	return false
}

// turnsBetween tells whether the talk turns between two tokens: "but", "and".
func (r *reading) turnsBetween(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		switch r.toks[i].s {
		case "and", "but", "only", "whereas", "while", "though", "well", "except":
			return true
		}
	}
	return false
}

// contrast are words that set two papers or two people of one name apart.
var contrast = set("one another other old new older newer first second online")

// givesAfter tells whether the paper at token i gives something: "the manual has it at".
func (r *reading) givesAfter(i, hi int) bool {
	for k := i + 1; k < min(hi, i+7); k++ {
		w := r.toks[k].s
		if states.has(w) || w == "has" || w == "gives" || w == "have" || w == "got" || w == "wants" || w == "calls" || w == "puts" || w == "goes" || w == "asks" || w == "drawn" {
			return true
		}
		if w == "with" && (r.nextKind(k).is(wCounts) || r.toks[k].qty >= 0) {
			return true // "a sticker with sixty five on it"
		}
		if r.toks[k].brk >= brkComma || w == "i" || w == "you" || w == "off" {
			return false
		}
	}
	return false
}

// finite tells whether a verb that makes a sentence stands between two tokens.
func (r *reading) finite(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if w := r.toks[i].s; linking.has(w) || subjects.has(w) || states.has(w) {
			return true
		}
	}
	return false
}

// linkedSoon tells of "is", "says" a few words on.
func (r *reading) linkedSoon(i, hi int) bool {
	for k := i; k < min(hi, i+5, len(r.toks)); k++ {
		if w := r.toks[k].s; w == "is" || w == "'s" || w == "says" || w == "reads" || w == "was" {
			return true
		}
	}
	return false
}

// isOn tells whether the paper at token i is where a figure stands: "on the sticker".
func (r *reading) isOn(lo, i int) bool {
	for k := i - 1; k >= max(lo, i-5); k-- {
		switch w := r.toks[k].s; w {
		case "believe", "trust":
			return true
		case "on", "in", "inside", "under", "per", "by", "to":
			if w == "to" && r.prev(k) != "according" || w == "by" && r.prev(k) != "go" && r.prev(k) != "going" {
				return false
			}
			return true
		case "and", "is", "'s", "of":
			return false
		}
	}
	return false
}

// findsAt tells of "'ve counted", "count", "'m looking at", "'ve got two".
func (r *reading) findsAt(i, hi int) bool {
	for k := i; k < min(hi, i+3); k++ {
		w := r.toks[k].s
		switch {
		case w == "'ve" || w == "have" && !r.nextKind(k).is(wCounts) || w == "'m" || w == "only" || w == "just":
			continue
		case w == "looking":
			return r.next(k) == "at"
		case w == "got" || w == "put" || w == "had" || w == "took" || w == "have":
			return r.nextKind(k).is(wCounts) || k > i && (r.next(k) == "only" || r.next(k) == "a")
		}
		return finds.has(w)
	}
	return false
}

// fills tells of "I've put in two", "I've poured sixty eight".
func (r *reading) fills(i, hi int) bool {
	for k := i; k < min(hi, i+9); k++ {
		switch r.toks[k].s {
		case "put", "poured", "filled", "in":
			return true
		}
	}
	return false
}

// writtenOn gives what "it says" is read from: the paper named before it, or what it
// is said to stand on.
func (r *reading) writtenOn(i, lo, hi int) string {
	for k := i - 1; k > max(0, i-20); k-- {
		if printed.has(r.toks[k].s) {
			return r.toks[k].s
		}
	}
	if w := r.next(i); w == "on" || w == "in" || w == "under" || w == "inside" || w == "here" || w == "there" {
		if id := r.nounNear(i+2, hi); id != "" {
			return id
		}
	}
	return "it"
}

// subjectHead gives the last word of the name that stands as subject before a verb.
func (r *reading) subjectHead(lo, verb int) int {
	for k := verb - 1; k >= max(lo, verb-5); k-- {
		w := r.toks[k].s
		if r.toks[k].brk >= brkComma {
			return -1
		}
		if !stopWords.has(w) && !linking.has(w) && !dropWords.has(w) {
			return k
		}
	}
	return -1
}

// nounNear gives the first word after a token that may be a name.
func (r *reading) nounNear(i, hi int) string {
	for k := i; k < min(hi, i+5); k++ {
		if w := r.toks[k].s; (determiner.has(w) || w == "on" || w == "in" || w == "under" || w == "inside" || stopWords.has(w)) && !r.toks[k].is(wCounts) {
			continue
		} else if r.toks[k].is(wCounts) || r.toks[k].qty >= 0 {
			return ""
		} else {
			return w
		}
	}
	return ""
}

// figures gives the numbers of the clauses lo to hi that may be of the machine.
func (r *reading) figures(lo, hi int) []given {
	var out []given
	for k := lo; k < hi; k++ {
		c := &r.clauses[k]
		base := int(r.toks[c.lo].lo)
		for _, n := range r.numbersOf(c.lo, c.hi) {
			if n.Low == nil {
				continue
			}
			a, b := r.tokenAt(base+n.Start), r.tokenAt(base+n.End-1)+1
			if a >= c.hi || ordinals.has(r.toks[a].s) || b-a == 1 && r.toks[a].s == "one" && r.toks[a].qty < 0 && (b >= c.hi || stopWords.has(r.word(b)) && !((r.word(b) == "off" || r.word(b) == "out") && (r.prev(a) == "took" || r.prev(a) == "got")) || r.toks[b-1].brk >= brkComma) || a > c.lo && (r.toks[a-1].s == "this" || r.toks[a-1].s == "that" || r.toks[a-1].s == "other") {
				continue // "this one", "the old one"
			}
			if w := r.prev(a); (w == "at" || w == "to" || w == "from") && a-2 >= c.lo && wrenchEnds.has(r.toks[a-2].s) && r.ofWrench(k) {
				continue // "my torque driver stops at six"
			}
			if notOurs.has(r.word(b)) || a > c.lo && numbered.has(r.toks[a-1].s) || b < len(r.toks) && r.toks[b].qty >= 0 && r.toks[b].qty != r.toks[a].qty && !ours(r.qtys[r.toks[b].qty].Kind) {
				continue
			}
			f := given{at: a, hi: b, value: n.Low.RatString()}
			if qi := r.toks[a].qty; qi >= 0 {
				if q := &r.qtys[qi]; !ours(q.Kind) {
					continue
				} else {
					f.kind, f.hi, f.nm = q.Kind, q.hi, saidOf(q)
				}
			} else if b < c.hi && r.toks[b-1].brk <= brkPause {
				if m := r.toks[b].men; m >= 0 {
					f.noun = strings.TrimSuffix(lexicon.Singular(r.mentions[m].head), "s")
				}
			}
			out = append(out, f)
		}
	}
	return out
}

// notOurs are what is counted of life, not of a machine.
var notOurs = set("year years season seasons buck bucks dollars euro euros quid pounds pence minute minutes hour hours day days week weeks month months times people videos miles percent knots hundred k")

// numbered are what has a number for a name: "page six".
var numbered = set("page step chapter figure fig clip part section stage type grade size model")

// ordinals count in order, and are no figures.
var ordinals = set("first second third fourth last once twice")

// ways gives the ways round and the sides that stand between two tokens, each with
// what is the opposite of it.
func (r *reading) ways(lo, hi int) []given {
	var out []given
	for i := lo; i < hi; i++ {
		if !r.toks[i].is(wSeldom) || !sides.has(r.toks[i].s) {
			continue
		}
		w := canonPlace(r.toks[i].s)
		if next := r.next(i); next == "one" || next == "ones" || i+1 < hi && r.toks[i].brk < brkComma && !stopWords.has(next) && next != "hand" && next != "side" || w == "right" && r.next(i) != "hand" && r.prev(i) != "the" || r.toks[i].men >= 0 && r.mentions[r.toks[i].men].head != r.toks[i].s && i > lo && r.prev(i) != "the" {
			continue
		}
		if opposite[w] != "" {
			out = append(out, given{at: i, hi: i + 1, kind: way, value: w})
		}
	}
	return out
}

// sides are the words for where a thing faces or stands that are nothing else.
var sides = set("left right inside outside inwards outwards inward outward clockwise anticlockwise counterclockwise upwards downwards")

// way is the kind of what is no figure but a side or a way round.
const way normalize.Kind = "way"

// differ tells whether two accounts give different figures of one thing.
func (r *reading) differ(a, b *account) bool {
	alike, inRow := false, len(a.figures) == len(b.figures) && len(a.figures) > 1
	for i := range a.figures {
		for j := range b.figures {
			x, y := &a.figures[i], &b.figures[j]
			if x.at == y.at {
				return false
			}
			if x.kind == "" && y.kind != "" && a.machine && !a.filled || y.kind == "" && x.kind != "" && b.machine && !b.filled {
				continue // "I've two of them" against a torque
			}
			if x.kind != y.kind && x.kind != "" && y.kind != "" || x.noun != y.noun && x.noun != "" && y.noun != "" || x.noun != "" && y.kind != "" || y.noun != "" && x.kind != "" {
				continue
			}
			if inRow && i != j && x.kind != way {
				continue // "ten w thirty" and "ten w forty": as they stand in the row
			}
			if inRow && x.value == y.value {
				continue
			}
			if x.kind == way && y.kind == way {
				if x.value == y.value {
					return false
				}
				alike = alike || opposite[x.value] == y.value
				continue
			}
			if x.value == y.value || x.kind == normalize.Torque && y.kind == normalize.Torque && x.nm.near(y.nm) {
				return false
			}
			alike = true
		}
	}
	if (a.id == "he" || a.id == "she") && !b.paper || (b.id == "he" || b.id == "she") && !a.paper {
		return false
	}
	if !alike || r.bareWord(a, b) || r.bareWord(b, a) {
		return false
	}
	return r.oneMatterOf(a, b)
}

// bareWord tells whether a is no more than somebody's number, of which nothing tells
// that it is what b is of: "his cousin said forty".
func (r *reading) bareWord(a, b *account) bool {
	if a.machine || a.paper || b.paper && r.since(min(a.lo, b.lo), max(a.hi, b.hi)-1) < 14 {
		return false
	}
	for _, f := range a.figures {
		if f.kind != "" || f.noun != "" {
			return false
		}
	}
	return len(r.namedBy(a, b)) == 0
}

// oneMatterOf tells whether two accounts may be of one thing: they name none in
// common only where one of them names none at all.
func (r *reading) oneMatterOf(a, b *account) bool {
	for k := a.last + 1; k < b.first; k++ {
		for _, mi := range r.clauses[k].mentions {
			if m := &r.mentions[mi]; r.topical(m) && direct(m) && m.kind&lexicon.Fastener != 0 && !r.namedBy(a, b)[strings.TrimSuffix(lexicon.Singular(m.head), "s")] {
				return false // the talk has gone on to another one
			}
		}
	}
	x, y := r.namedBy(a, b), r.namedBy(b, a)
	if len(x) == 0 || len(y) == 0 {
		return true
	}
	for w := range x {
		if y[w] {
			return true
		}
	}
	return false
}

// namedBy gives the heads of what an account is of: not of where it stands written.
func (r *reading) namedBy(a, other *account) map[string]bool {
	out := map[string]bool{}
	for k := a.first; k <= a.last; k++ {
		for _, mi := range r.clauses[k].mentions {
			m := &r.mentions[mi]
			if !r.topical(m) || m.prep == "on" || m.prep == "under" || m.prep == "in" || m.prep == "inside" || m.hi > a.lo && m.lo < a.hi || m.hi == a.lo || other.lo >= m.lo && other.lo < m.hi {
				continue
			}
			out[strings.TrimSuffix(lexicon.Singular(m.head), "s")] = true
		}
	}
	return out
}

// denied tells whether a clause denies what a paper or somebody was said to say
// right before it: "The book says it's left hand. It isn't.", "Mine hasn't."
func (r *reading) denied(ci int) bool {
	c := &r.clauses[ci]
	if c.hi-c.lo > 9 || ci == 0 || c.mood&(asked|conditional|aside|greeting) != 0 {
		return false
	}
	i := c.lo
	for i < c.hi && (openers.has(r.toks[i].s) || denier.has(r.toks[i].s)) {
		i++
	}
	switch r.word(i) {
	case "it", "that", "they", "these", "those", "mine", "there", "she", "it's", "that's":
	default:
		return false
	}
	w, next := r.next(i), r.word(i+2)
	no := w == "isn't" || w == "aren't" || w == "ain't" || w == "doesn't" || w == "don't" || w == "hasn't" || w == "haven't" || (w == "'s" || w == "is" || w == "are" || w == "'re" || w == "does" || w == "do" || w == "has") && next == "not" || next == "no" && w == "'s"
	if !no || c.hi-i > 6 && w != "'s" {
		return false
	}
	for k := i + 2; k < c.hi; k++ {
		if w := r.toks[k].s; w == "on" || w == "in" || w == "the" || w == "going" || w == "much" || w == "yet" || printed.has(w) {
			return false // "it's not on the drawing": nobody's word is denied
		}
	}
	return r.claims(ci - 1)
}

// denier are words that lead to a denial.
var denier = set("well only except no which and but")

// vendors are who tells what a part is or fits.
var vendors = wordsOf("who tells of a part")

// claims tells whether a clause, or the one it goes on with, says how something is by
// a paper, by somebody, or as it is meant to be.
func (r *reading) claims(ci int) bool {
	for k := ci; k >= 0 && k >= ci-1 && r.since(r.clauses[k].lo, r.clauses[ci].hi-1) < 10; k-- {
		c := &r.clauses[k]
		if c.mood&(asked|conditional|aside|greeting) != 0 || r.saidIn(c, "people") {
			continue
		}
		for _, w := range r.witnesses(c.lo, c.hi, nil) {
			if id := w.id[strings.LastIndexByte(w.id, ' ')+1:]; !w.machine && (printed.has(id) || writable.has(id) || vendors.has(id) || (id != "he" && id != "she" && (len(r.numbers(c)) > 0 || r.saysWay(c)))) {
				return true // but not "Jean says the left wheel wobbles"
			}
		}
		for i := c.lo + 1; i < c.hi; i++ {
			if writtenBy.has(r.toks[i].s) && (r.toks[i-1].s == "'s" || r.toks[i-1].s == "is") {
				return true
			}
		}
	}
	return false
}

// otherWay tells whether the machine is said to have it the other way round from
// what a paper or somebody says: "mine faces the other way".
func (r *reading) otherWay(ci int) bool {
	c := &r.clauses[ci]
	for i := c.lo; i+1 < c.hi; i++ {
		w, next := r.toks[i].s, r.toks[i+1].s
		if !(w == "other" && (next == "way" || next == "side") || w == "opposite" || w == "wrong" && next == "way" || w == "reversed" || w == "backwards" || w == "upside") || r.ofMe(c.lo, i) && w != "other" || c.mood&(conditional|asked|other) != 0 {
			continue
		}
		if len(r.witnesses(c.lo, i, nil)) > 0 && r.claims(ci-1) {
			return true
		}
		// both in one breath
		n := 0
		for _, x := range r.witnesses(c.lo, c.hi, nil) {
			if !x.machine {
				n++
			}
		}
		if n > 0 && r.saidIn(c, "one") && r.saidIn(c, "way") {
			return true
		}
	}
	return false
}
