package extract

import (
	"slices"
	"sort"
	"strings"
	"unicode/utf8"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
	"wrenchword/normalize"
)

// tok is one folded word of the talk. lo and hi are bytes of the talk's text. A talk
// has many: it is kept small.
type tok struct {
	s string
	class
	lo, hi uint32
	w      uint32 // index into talk.Words
	cl     int32  // clause
	men    int32  // mention it belongs to, or -1
	qty    int32  // quantity it belongs to, or -1
	brk    uint8  // what ends after it
	run    uint8  // how many words there are from it on to the next comma, at most far
	line   uint8  // the same to where its sentence ends
	name   uint8  // one more than nameAt gives, once it was asked
}

// far is more words than a name has, or any phrase that is looked for.
const far = 255

// What ends after a token.
const (
	brkNone  uint8 = iota
	brkPause       // a pause: clauses may be cut there, names may run on
	brkComma
	brkLine // the end of a line of talk without stops that is broken where its speaker breathes
	brkSentence
	brkClip
)

type mood uint32

const (
	negated mood = 1 << iota
	conditional
	hypothetical
	announced
	offCamera
	other
	asked
	hedged
	notNeeded
	optional
	aside // an advertisement, a story of another machine
	greeting
	listing
	prior
	warned
	framed   // "once it's off", "while you hold it": frames the work told beside it
	together // things go back on from here
	storied  // of another machine or time
	passing  // told beside the work in hand: put off, done before, kept somewhere, only to be minded

	moods = 19 // so many

	// what is told in one of these is no work of this job
	notWork = negated | conditional | hypothetical | other | asked | aside | greeting | listing
)

var moodOf = map[string]mood{
	"negated": negated, "conditional": conditional, "hypothetical": hypothetical, "announced": announced,
	"off-camera": offCamera, "other": other, "question": asked, "hedge": hedged, "not-needed": notNeeded,
	"optional": optional, "ad": aside, "greeting": greeting, "list": listing, "prior": prior, "caution": warned,
	"together": together, "elsewhere": storied, "passing": passing,
}

// cue is a way of framing: a half-open token range with its mood.
type cue struct {
	lo, hi int
	mood   mood
}

// openCue is a signal that something is left open: what it says, and where.
type openCue struct {
	lo, hi int
	signal string
}

// clause is the least piece of talk that can have a mood of its own.
type clause struct {
	lo, hi   int // tokens
	sentence int // clauses with one number stand in one sentence, or in one breath
	mood     mood
	chatter  bool
	together bool // says that things go back on from here
	passing  bool // is told beside the work in hand
	*found
}

// found is what was found in a clause. Talk can be cut into very many clauses that
// hold nothing: they share nothing, and only one that is to hold something has its own.
type found struct {
	cues     []cue
	opens    []openCue
	mentions []int
	acts     []int
	qtys     []int
}

var nothing found

// own gives the clause's own room for what is found in it.
func (c *clause) own() *found {
	if c.found == &nothing {
		c.found = new(found)
	}
	return c.found
}

// mention is a phrase that names a thing.
type mention struct {
	lo, hi   int // tokens, determiners left out
	from     int // first token, determiners and counts included
	cl       int
	kind     lexicon.Kind
	head     string   // the head word, singular: "bolt"
	mods     []string // words before it: "upper", "pinch"
	name     string   // as said, repaired
	side     string
	place    string
	count    int
	definite bool // "the", "this", "those", "my"
	plural   bool
	isNew    bool
	isOld    bool
	prep     string // preposition right before it
	of       int    // mention it belongs to ("the bolt of the bracket"), or -1
	entry    *thing // what it stands for, set by refer
	misheard bool
	byPlace  bool // the place is all that was said: "the top one"
	counted  bool // the count is said as well: "the two at the back"
}

// act is something done, said to be done, or spoken of as being done.
type act struct {
	action    *lexicon.Action
	lo, hi    int // tokens of the verb phrase, the thing included where it stands inside
	verb      int // token of the verb, -1 where there is none ("wheel off")
	cl        int
	objects   []int  // mentions
	pronoun   string // "it", "them", "this" … where no mention is the object
	subject   bool   // the thing is the subject
	mood      mood
	things    []*thing // set by refer
	maybe     *thing   // where it has no thing: the likeliest of those spoken of
	unsure    bool     // its thing is only the likeliest of several
	qty       int      // torque or angle that belongs to it, or -1
	byHand    bool
	unknown   bool   // its thing is named by a word that no list has
	bare      bool   // and that word has no determiner: "stone cold" is as likely as "scrape rust"
	ifOff     bool   // counts as fitting only where the thing had come off
	there     *thing // what "it" or "them" stands for in where it is done: "put grease on it"
	thereSure bool   // and nothing else can be meant
	heads     bool   // nothing is said but the thing, and how many or with what: "axle nuts, eighteen mil"
	rule      string
}

// known is what is known of a word wherever it stands.
type known struct {
	id lexicon.ID
	class
}

// reading is the one reading of a talk that every field is a view of.
type reading struct {
	counts       map[int64]bool                        // how many fasteners are spoken of, each time; made when first asked
	calledSo     map[[2]string]bool                    // words of no list that told a name apart, each with its head
	namesOf      map[string]map[string]bool            // by a part's word, the fasteners that the talk names after it; made when first asked
	claimed      func(mi int, all []claim, best claim) // told of each claim weighed, where the weights are fitted
	talk         *transcript.Talk
	spoken       string // its text with blanks for what is no word of it: hesitations, and what is said twice looking for the next word
	blanked      []byte // the same while it is made, where there is any
	lex          *lexicon.Lexicon
	toks         []tok
	words        map[string]known // each once
	ids          []lexicon.ID     // of the tokens' words
	talked       []float64        // at each token: for how long there was talk, in seconds
	clauses      []clause
	mentions     []mention
	acts         []act
	qtys         []quantity
	antecedents  func(a *act, ruled *thing, all []claim, best claim)                        // told of each act that names no thing while weights are fitted
	leftOut      [siftLists][]string                                                        // what was left out of each list
	wordClues    []uint32                                                                   // of the tokens; made when first asked
	hintRow      []hint                                                                     // room for the hints of what is weighed
	siftTold     func(it *item, hints []hint, struck bool) bool                             // told of each item while weights are fitted, and whether it goes
	standingTold func(e *Entry, hints []hint, was, best int) int                            // told of each entry while weights are fitted, and how it was left
	warnedTold   func(s sentence, hints []hint, warns bool)                                 // told of each sentence weighed while weights are fitted, and whether it warns
	fatedTold    func(p *Part, hints []hint, was, best int) int                             // told of each part while weights are fitted, and what becomes of it
	owedTold     func(e *Entry, t *thing, said []Open, hints []hint, ruled, asks bool) bool // told of each entry that may be open while weights are fitted, and whether it is asked after
	raisedTold   func(s sentence, hints []hint, kind int)                                   // told of each sentence weighed while weights are fitted, and of the kind of what it leaves open
	laidToRest   []int                                                                      // tokens of what was left open and settled since
	spans        []sentence                                                                 // made when first asked
	deedTold     func(a *act, hints []hint, sum int) bool                                   // told of each act while weights are fitted, and gives whether it is work done
	toldTold     func(a *act, hints []hint, ruled, tells bool)                              // told of each act that happened and has words for a step while weights are fitted
	deedDone     []bool                                                                     // of each act: whether it is work done, as weighed
	fits         []int                                                                      // where something was fitted or tightened, in order, once asked for
	heads        map[string][]int                                                           // mentions by their heads, once asked for
	valueClaimed func(q *quantity, ruled *thing, all []claim, best claim)                   // told of each value while weights are fitted
	appliedTold  func(q *quantity, hints []hint, was, best int) int                         // told of each value while weights are fitted, and gives what was done with it
	fateMeant    func(q *fateTold, all []fateClaim, was, best int)                          // told of each fate while weights are fitted, with what the rules take and what is taken
	lengths      map[string]int                                                             // of each number of millimetres, the token where it was told first; made when first asked
	bare         []bareNumber                                                               // numbers without a unit, in order
	weighed      func(f *bareNumber, hints []hint) meaning                                  // told of each while weights are fitted, and what it is
	timed        []bool                                                                     // of each clip: whether its words have times of their own
	idle         map[[2]int]bool                                                            // a clause and a mention that it says nothing is done with
	toldWeak     map[string]bool                                                            // misheard words that are real words and were a thing once in this talk
	leftTold     int8                                                                       // 2 where the talk speaks of a left, 1 where it does not, 0 before it was asked
	hexKeys      bool                                                                       // a key with a size was named: "the same key" is one as well
	toldSoft     map[string]bool                                                            // names of much else that were a part once in this talk
	namedSoft    map[string]bool                                                            // those that were one where something was done with it
	named        map[string]bool                                                            // names of parts that no list has, singular, told by how they are handled
	things       []*thing
	byHead       map[string][]*thing // things by their head, in order
	touched      []touch             // when each fastener was spoken of or handled, in order
	heard        []heard
	nums         map[[2]int][]normalize.Number // by the tokens that were asked for their numbers
	toolList     [2]int                        // the clauses of the spoken tool list that opens the talk, half-open
	odds         map[int]int                   // clauses that give another figure than an earlier one, with that one
	dayRows      []rowOfDay                    // what is told off for another day
	foundAt      []int                         // clauses that tell how a thing was found
}

// quantity is a quantity in the talk with the tokens it stands on.
type quantity struct {
	normalize.Quantity
	lo, hi   int // tokens
	cl       int
	unitFrom string // the value or words heard near it whose unit it takes, "" where its own was said
	unitOr   string // another unit that it may as well be in
}

// sameValue tells whether two quantities are of the same figures, whatever their units.
func (q *quantity) sameValue(o *quantity) bool {
	return q.Low != nil && o.Low != nil && q.Low.Cmp(o.Low) == 0 && q.High.Cmp(o.High) == 0
}

func read(talk *transcript.Talk, lex *lexicon.Lexicon) *reading { return readWith(talk, lex, nil) }

// readWith reads a talk; set, where it is one, makes the reading ready to tell what it finds.
func readWith(talk *transcript.Talk, lex *lexicon.Lexicon, set func(*reading)) *reading {
	r := &reading{talk: talk, lex: lex, nums: map[[2]int][]normalize.Number{}, idle: map[[2]int]bool{}}
	if set != nil {
		set(r)
	}
	r.tokens()
	// room for as many as an hour of talk has; they grow beyond it
	n := min(len(r.toks), 1<<14)
	r.mentions, r.acts = make([]mention, 0, n/10+8), make([]act, 0, n/14+8)
	r.stops(stopTable(stopWeights))
	r.openings()
	r.quantities()
	r.cut()
	r.mark()
	r.learnNames()
	r.findMentions()
	r.opening()
	r.laidOut()
	r.people()
	r.stories()
	r.findActs()
	r.deeds()
	r.otherDays()
	r.looseAsFound()
	r.bareNumbers()
	r.unitless()
	r.chatter()
	return r
}

// roomFor gives a slice that is full room for as many more as the rest of the talk will
// bring, going by what came before token at: so that what is large is copied once.
func roomFor[T any](s []T, at, toks int) []T {
	if len(s) == cap(s) {
		s = slices.Grow(s, 1+len(s)*(toks-at)/max(at, 1))
	}
	return s
}

// tokens folds the words of the talk. Noise is left out, and so are hesitations.
func (r *reading) tokens() {
	more := 16 // than the words: those that fold in two, "it's" and "five-eighths"
	for _, mark := range []string{"'", "’", "-"} {
		more += strings.Count(r.talk.Text, mark)
	}
	r.toks = make([]tok, 0, len(r.talk.Words)+more)
	r.timed = r.wordTimed()
	var buf []lexicon.Folded
	hesitated, para := false, false // since the last token: somebody hesitated, a paragraph began
	for wi, w := range r.talk.Words {
		if w.Is(transcript.Noise) {
			continue
		}
		s := r.talk.Text[w.Lo:w.Hi]
		buf = lexicon.Fold(buf[:0], s, int(w.Lo))
		if len(buf) == 0 {
			if n := len(r.toks); n > 0 && strings.ContainsAny(s, "-–—") {
				r.toks[n-1].brk = max(r.toks[n-1].brk, brkComma)
			}
			continue
		}
		if len(buf) == 1 && r.hesitates(buf[0].S, w) {
			hesitated = true
			para = para || w.Is(transcript.Para)
			continue
		}
		r.endBefore(w, hesitated, para)
		if len(buf) == 1 && r.foldedInto(&buf[0], w) {
			buf = buf[:0]
		}
		for _, f := range buf {
			r.toks = append(r.toks, tok{s: f.S, lo: uint32(f.Lo), hi: uint32(f.Hi), w: uint32(wi), men: -1, qty: -1})
		}
		if r.youKnow(w) {
			continue
		}
		hesitated, para = false, false
		r.unstutter()
		r.unframe()
		last := &r.toks[len(r.toks)-1]
		tail := r.talk.Text[last.hi:w.Hi]
		switch {
		case strings.ContainsAny(tail, ".?!"):
			last.brk = brkSentence
		case strings.ContainsAny(tail, ",;:–—"):
			last.brk = brkComma
		}
	}
	if n := len(r.toks); n > 0 {
		r.toks[n-1].brk = brkClip
	}
	if r.spoken = r.talk.Text; r.blanked != nil {
		r.spoken, r.blanked = string(r.blanked), nil
	}
	r.number()
	r.runs()
	r.addTalked()
}

// endBefore tells what ends between the last token and the next word, by how the talk is written and
// how long nobody spoke.
func (r *reading) endBefore(w transcript.Word, hesitated, para bool) {
	n := len(r.toks)
	if n == 0 {
		return
	}
	last := &r.toks[n-1]
	switch p := r.talk.Words[last.w]; {
	case p.Clip != w.Clip:
		last.brk = brkClip
	case para || w.Is(transcript.Para):
		last.brk = max(last.brk, brkSentence)
	case w.Cue != p.Cue && !r.timed[w.Clip]:
		// people who write captions break them where they would breathe
		if !(last.s == "no" && n > 1 && r.toks[n-2].brk >= brkComma) { // "… please. No | compressed air": who writes stops would have written one
			last.brk = max(last.brk, brkPause)
		}
	case w.Is(transcript.Exact) && p.Is(transcript.Exact):
		// how long the word took beyond what a word of its length takes
		rest := w.At - p.At - 0.07*float64(p.Hi-p.Lo)
		if hesitated {
			rest-- // which took its time
		}
		if rest > 2.2 {
			last.brk = max(last.brk, brkSentence)
		} else if rest > 0.6 {
			last.brk = max(last.brk, brkPause)
		}
	}
}

// foldedInto folds a word further by the words before it, and tells whether it is one word with the
// last token, which then has it.
func (r *reading) foldedInto(f *lexicon.Folded, w transcript.Word) bool {
	n := len(r.toks)
	before := func(k int) string { // the k-th token before
		if n < k {
			return ""
		}
		return r.toks[n-k].s
	}
	last := before(1)
	switch {
	case (f.S == "un" || f.S == "uns") && (whichOne.has(last) || last == "good" || last == "bad" || last == "wrong"):
		f.S = "one" + strings.TrimPrefix(f.S, "un") // "the new un", "three little uns"
	case f.S == "snug" && last == "and" && (before(2) == "good" || before(2) == "nice"):
		f.S = "tight" // "good and snug" is more than by hand
	}
	f.S = spelled(f.S)
	if n == 0 || r.toks[n-1].brk != brkNone {
		return false
	}
	t := &r.toks[n-1]
	if word, ok := lexicon.Joined(t.s, f.S); ok {
		t.s, t.hi = word, uint32(f.Hi)
		return true
	}
	if t.s = lexicon.Unleaning(t.s, f.S); f.Hi == int(w.Hi) { // "I have." is whole
		f.S = lexicon.Leaning(t.s, f.S)
	}
	return false
}

// number gives each token the number of its word, and the sets that this is in.
func (r *reading) number() {
	r.ids = make([]lexicon.ID, len(r.toks))
	r.words = make(map[string]known, 1<<10)
	for i := range r.toks {
		t := &r.toks[i]
		k, ok := r.words[t.s]
		if !ok {
			k.id = r.lex.ID(t.s)
			k.class = classIn(r.lex, t.s, k.id)
			r.words[t.s] = k
		}
		t.class, r.ids[i] = k.class, k.id
	}
}

// addTalked adds up how long there was talk up to each token, silences left out.
func (r *reading) addTalked() {
	r.talked = make([]float64, len(r.toks))
	for i := 1; i < len(r.toks); i++ {
		took := r.talk.Words[r.toks[i].w].At - r.talk.Words[r.toks[i-1].w].At
		if took < 0 || took > silence {
			took = silence
		}
		r.talked[i] = r.talked[i-1] + took
	}
}

// silence is as long, in seconds, as a silence counts at most: nothing else is in hand
// when somebody has worked for a minute without a word.
const silence = 6

// runs counts how far each word is from what ends after it. A name that was found is
// looked for again where it would run on over a comma.
func (r *reading) runs() {
	run, line := 0, 0
	for i := len(r.toks) - 1; i >= 0; i-- {
		t := &r.toks[i]
		if t.brk > brkPause {
			run = 0
		}
		if t.brk >= brkSentence {
			line = 0
		}
		run, line = min(run+1, far), min(line+1, far)
		t.run, t.line = uint8(run), uint8(line)
		if int(t.name)-1 > run {
			t.name = 0
		}
	}
}

// wordTimed tells of each clip whether its words have times of their own: then
// pauses are known, and the ends of cues mean nothing.
func (r *reading) wordTimed() []bool {
	exact := make([]int, len(r.talk.Clips))
	all := make([]int, len(r.talk.Clips))
	for _, w := range r.talk.Words {
		all[w.Clip]++
		if w.Is(transcript.Exact) {
			exact[w.Clip]++
		}
	}
	out := make([]bool, len(all))
	for i := range out {
		out[i] = exact[i]*2 > all[i]
	}
	return out
}

// word returns the folded word at i, or "" past the end or across a hard break from start.
func (r *reading) word(i int) string {
	if i < 0 || i >= len(r.toks) {
		return ""
	}
	return r.toks[i].s
}

// following gives the token after i, -1 where its sentence ends with it.
func (r *reading) following(i int) int {
	if i < 0 || i+1 >= len(r.toks) || r.toks[i].brk >= brkSentence {
		return -1
	}
	return i + 1
}

// preceding gives the token before i, -1 where its sentence begins with it.
func (r *reading) preceding(i int) int {
	if i < 1 || i > len(r.toks) || r.toks[i-1].brk >= brkSentence {
		return -1
	}
	return i - 1
}

// next and prev return the folded word after a token and before it, "" where its sentence ends or begins with it.
func (r *reading) next(i int) string { return r.word(r.following(i)) }
func (r *reading) prev(i int) string { return r.word(r.preceding(i)) }

// nextKind and prevKind give the classes of these words, none where there is none.
func (r *reading) nextKind(i int) class { return r.kind(r.following(i)) }
func (r *reading) prevKind(i int) class { return r.kind(r.preceding(i)) }

// from gives the words from token i on, stopping at limit. A name never runs
// across a full stop or a comma.
func (r *reading) from(i, limit int) []lexicon.ID {
	if i >= len(r.toks) {
		return nil
	}
	return r.ids[i:max(i, min(limit, i+int(r.toks[i].run)))]
}

// nameAt gives how many words the longest name has that begins at token i.
func (r *reading) nameAt(i int) int {
	if !r.kind(i).is(wName) {
		return 0
	}
	t := &r.toks[i]
	if t.name == 0 {
		_, n := r.lex.Things(r.from(i, len(r.toks)))
		t.name = uint8(min(n+1, far))
	}
	return int(t.name) - 1
}

// within gives the words from token i on to the end of its sentence, or as many as matter.
func (r *reading) within(i int) []lexicon.ID { return r.ids[i : i+int(r.toks[i].line)] }

// says tells whether the phrase stands at token i, before hi.
func (r *reading) says(i, hi int, phrase []string) bool {
	if i+len(phrase) > hi {
		return false
	}
	for k, w := range phrase {
		if r.toks[i+k].s != w {
			return false
		}
	}
	return true
}

// byFirst sorts phrases by their first words: most words of the talk begin none.
func byFirst(phrases [][]string) map[string][][]string {
	by := map[string][][]string{}
	for _, p := range phrases {
		by[p[0]] = append(by[p[0]], p)
	}
	return by
}

// endOf gives where the text of the tokens before hi ends: at the end of the last
// one's word, or at its own where the word goes on.
func (r *reading) endOf(hi int) int {
	last := &r.toks[hi-1]
	if hi < len(r.toks) && r.toks[hi].w == last.w {
		return int(last.hi)
	}
	return int(r.talk.Words[r.lastWord(hi-1)].Hi)
}

// lastWord gives the word that a token ends in: "do not" is one token.
func (r *reading) lastWord(i int) uint32 {
	w := r.toks[i].w
	if r.toks[i].hi > r.talk.Words[w].Hi {
		w++
	}
	return w
}

// numbersOf gives the numbers said between two tokens, their places counted from the first one's first byte.
func (r *reading) numbersOf(lo, hi int) []normalize.Number {
	if hi <= lo {
		return nil
	}
	text := r.spoken[r.toks[lo].lo:r.endOf(hi)]
	counts := false
	for i := lo; i < hi && !counts; i++ {
		counts = r.toks[i].is(wCounts)
	}
	if !counts && isASCII(text) {
		return nil
	}
	n, ok := r.nums[[2]int{lo, hi}]
	if !ok {
		n = normalize.Numbers(text)
		r.nums[[2]int{lo, hi}] = n
	}
	return n
}

func isASCII(s string) bool {
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

func (r *reading) tokenAt(b int) int {
	return sort.Search(len(r.toks), func(i int) bool { return int(r.toks[i].hi) > b })
}

// quantities reads the quantities, a stretch between hard breaks at a time.
// barNames are what a bar, no pressure, has.
var barNames = set("nut nuts bolt bolts clamp clamps end ends stud studs grip grips mount mounts cover weight weights oil")

func (r *reading) quantities() {
	for lo := 0; lo < len(r.toks); {
		hi := lo
		for hi < len(r.toks) && r.toks[hi].brk < brkClip && !(r.toks[hi].brk == brkSentence && hi-lo > 40) && hi-lo < 400 {
			hi++
		}
		hi = min(hi+1, len(r.toks))
		base := int(r.toks[lo].lo)
		end := r.endOf(hi)
		for _, q := range normalize.Quantities(r.spoken[base:end]) {
			q.Start += base
			q.End += base
			a, b := r.tokenAt(q.Start), r.tokenAt(q.End-1)+1
			if a >= b || b > len(r.toks) {
				continue
			}
			if q.Kind == normalize.Torque && r.toks[a].s == "one" && r.toks[a].brk >= brkSentence {
				continue // "it says eighty, for that one. Inch pounds."
			}
			if q.Kind == normalize.Torque && r.toks[a].s == "one" && r.next(a) == "to" && aThingIfOne.has(r.prev(a)) && q.Low.Cmp(q.High) != 0 {
				// "I'll set this little one to sixty-five inch pounds"
				q.Canonical = strings.TrimPrefix(q.Canonical, q.Low.RatString()+"-")
				q.Low, a = q.High, a+2
				q.Start = int(r.toks[a].lo)
			}
			if q.Unit == "bar" && r.toks[b-1].s == "bar" && r.toks[b-1].brk == brkNone && barNames.has(r.word(b)) {
				continue // "the two bar nuts"
			}
			for i := a; i < b; i++ {
				r.toks[i].qty = int32(len(r.qtys))
			}
			r.qtys = append(r.qtys, quantity{Quantity: q, lo: a, hi: b})
		}
		lo = hi
	}
}

// aThingIfOne are words before "one" by which it is a thing, no number.
var aThingIfOne = set("this that the other little small wee big large short long red blue new old last first next right left same each every")

var openers = set("so then now meanwhile but because cause cuz coz okay ok right anyway alright if unless once until till when while before after although though otherwise whereas finally next first")
var subjects = set("i you he she they it that this these those there here who what everybody somebody someone nobody people")
var pronounsObj = set("it them that this these those 'em em both one ones")
var linking = set("'s is are was were 'm 're 've 'll 'd am has have had will would can could do does did don't doesn't didn't won't can't goes go gets get comes come wants want needs need")
var holdsClause = set("think say says said reckon guess know mean means believe sure see hope if that when once until till because what where why how which who like as than so before after while and but or unless told tell remember where's how's make sure to")

// longest is more words than anybody says in one clause. Text that goes on
// beyond it is no talk, and is cut so that its cost stays even.
const longest = 120

// cut cuts the talk into clauses: by punctuation where there is any, by pauses,
// and by the ways people start a clause where there is none.
func (r *reading) cut() {
	start, n := 0, int32(0) // of the clause under way, and its number
	for i := range r.toks {
		t := &r.toks[i]
		if i > start && (i-start >= longest || r.startsClause(start, i)) {
			start, n = i, n+1
		}
		t.cl = n
		if t.brk >= brkLine {
			start, n = i+1, n+1
		}
	}
	if start < len(r.toks) {
		n++
	}
	// now that they are counted they take no more room than they need
	r.clauses = make([]clause, n)
	sentence := 0
	for i := range r.toks {
		t := &r.toks[i]
		c := &r.clauses[t.cl]
		if c.hi == 0 {
			c.lo, c.sentence, c.found = i, sentence, &nothing
		}
		c.hi = i + 1
		if t.brk >= brkSentence {
			sentence++
		}
	}
}

// startsClause tells whether a new clause begins at token i, the clause before having begun at start.
func (r *reading) startsClause(start, i int) bool {
	if r.toks[i-1].s == "still" && i-2 >= start && r.toks[i-1].brk < brkComma {
		switch r.toks[i-2].s {
		case "must", "should", "will", "'ll", "to", "can", "could", "might", "would", "'d", "may":
			return false // "I must still grease the shaft"
		}
	}
	if w, n := r.toks[i].s, r.next(i); (w == "it" || w == "they" || w == "she" || w == "he") && (n == "comes" || n == "come" || n == "goes" || n == "go") && r.toks[i-1].brk <= brkPause && (i-1 == start || r.toks[i-2].brk >= brkComma) {
		switch r.toks[i-1].s {
		case "off", "out", "on", "in", "up", "down", "away":
			return false // "four bolts on the cover, out they come"
		}
	}
	t, p := r.toks[i].s, r.toks[i-1].s
	tk, pk := r.toks[i].class, r.toks[i-1].class
	if r.toks[i].qty >= 0 && r.toks[i].qty == r.toks[i-1].qty || r.toks[i-1].brk <= brkPause && (numeral(&r.toks[i-1]) || pk.is(wCountOf)) && fractionWord.has(t) {
		return false // "it's a five | eighths"
	}
	comma := r.toks[i-1].brk >= brkPause
	n := i - start
	if t == "i" {
		if (p == "was" || p == "were") && r.word(i-2) == "where" {
			return false
		}
	}
	if p == "i" && i-3 >= start && r.toks[i-3].s == "where" && (r.toks[i-2].s == "was" || r.toks[i-2].s == "were") {
		return true // "anyway where was I | wire brush on the hub"
	}
	if r.toks[i-1].brk <= brkPause && (pk.is(wLeadsName) || pk.is(wDropAdj) && i-2 >= start && articles.has(r.toks[i-2].s) || pk.is(wDropAdj) && i-2 >= start && (r.toks[i-2].s == "this" || r.toks[i-2].s == "that")) {
		return false // "crack the | wheel bolts": a breath, no end; "this little | clip that holds"
	}
	if p == "then" && i-2 >= start && (r.toks[i-2].s == "till" || r.toks[i-2].s == "until") && t != "the" {
		return true // "stays out till then | hoses on"
	}
	if r.toks[i-1].brk <= brkPause && pk.is(wPlace) && tk.is(wName) && i-2 >= start && (articles.has(r.toks[i-2].s) || r.toks[i-2].s == "that" || r.toks[i-2].s == "this") && !r.kind(i-3).is(wPreposition) {
		return false // "when the back | nut's on"
	}
	if r.toks[i-1].brk <= brkPause && (neverEnds.has(p) && !tk.is(wOpener|wSubject) || (p == "finger" || p == "hand") && t == "tight") {
		return false // "a length of | wire", "just finger | tight"
	}
	if r.toks[i-1].brk <= brkPause && (strings.HasSuffix(p, "n't") && t == "you" || (t == "it" || t == "them") && r.plainVerb(p) && particle.has(r.next(i)) && (i-2 < start || r.toks[i-2].is(wLeadsVerb|wSubject))) {
		return false // "don't | you back it off", "you just hook | it out"
	}
	if r.toks[i-1].brk <= brkPause && r.awaitsVerb(start, i) {
		return false // "that would | pull the stud out", "don't let it | hang off the hose"
	}
	if r.toks[i-1].brk <= brkPause {
		// a name is never cut: "motor clamp | bolt"
		for k := max(start, i-3); k < i; k++ {
			if m := r.nameAt(k); k+m > i {
				return false
			}
		}
	}
	next, nk, nk2 := "", class(0), class(0)
	if r.toks[i].brk <= brkPause {
		next, nk = r.next(i), r.nextKind(i)
		if next != "" && r.toks[i+1].brk <= brkPause {
			nk2 = r.kind(i + 2)
		}
	}
	// "it", "that" and their kin are as often what is worked on as who does it
	subj := func(a string, ak, bk class) bool {
		if !ak.is(wSubject) {
			return false
		}
		if ak.is(wPronoun) || a == "there" || a == "here" {
			return bk.is(wLinking)
		}
		return bk.is(wLinking | wForm)
	}
	switch {
	case t == "and" || t == "or":
		if n < 2 && !comma {
			return false
		}
		if subj(next, nk, nk2) || nk.is(wOpener) || next == "then" {
			return true
		}
		if r.imperativeAt(i+1) && p != "nice" && p != "good" { // "get it nice and warm"
			return true
		}
		if t == "and" && n >= 2 && r.thenMoves(i+1) && r.hasVerb(start, i) && !r.onlyNames(start, i) {
			moves := false
			for k := start; k < i && !moves; k++ {
				moves = comesAway.has(r.toks[k].s)
			}
			return !moves // "take that out | and the idler comes off"
		}
		if comma && n >= 3 {
			return r.hasVerbSoon(i + 1)
		}
		return false
	case tk.is(wOpener) && !pk.is(wHoldsClause) && p != "the" && p != "a" && p != "and" && p != "just" && p != "right" && p != "only" && p != "little" && p != "good" && p != "for" && p != "not":
		if t == "right" || t == "first" || t == "next" || t == "after" || t == "before" || t == "till" || t == "here" {
			// they are also plain words
			if t == "right" && !(comma || next == "so" || next == "then" || next == "now") {
				return false
			}
			if (t == "first" || t == "next") && !(comma && (next == "is" || next == "'s" || next == "the" || next == "i" || next == "thing" || next == "step" || next == "up")) {
				return false
			}
		}
		if t == "so" && (next == "that" || next == "far" || next == "much" || next == "many" || p == "or" || p == "not") {
			return n > 4 && next == "that"
		}
		if t == "then" && n < 2 {
			return false
		}
		if t == "now" && !comma && n < 3 {
			return false
		}
		return true
	case subj(t, tk, nk) && !pk.is(wHoldsClause) && (!tk.is(wPronoun) || comma || !pk.is(wPreposition|wVerb)) && !(p == "do" || p == "all" || p == "way" || p == "thing" || p == "one" || p == "bit" || p == "time"):
		if t == "there" && next != "'s" && next != "is" && next != "was" && next != "are" && next != "'re" || t == "here" {
			return comma
		}
		return n >= 2 || comma
	case t == "you" && (next == "just" || next == "only" || next == "then") && n >= 3 && !pk.is(wHoldsClause):
		return true
	case t == "don't" && n >= 2 && !pk.is(wSubject) && p != "and" && p != "just":
		return true
	case (t == "never" || t == "make" && next == "sure" || t == "mind" && (next == "the" || next == "your" || next == "you")) && n >= 3 && !pk.is(wSubject):
		return true
	case t == "both" && n >= 2 && (next == "of" || nk.is(wLinking)) && r.hasVerb(start, i) && !pk.is(wPreposition):
		return true
	case (t == "hold" || t == "keep") && isThingWord(r, i-1) && lexicon.Singular(p) != p:
		return false // "two long bolts hold it"
	case n >= 3 && !comma && p != "already" && !strings.HasSuffix(p, "ly") && !strings.HasSuffix(p, "n't") && r.imperativeAt(i) && nk.is(wDeterminer|wPronoun) && r.hasVerb(start, i) && !pk.is(wLeadsVerb|wSubject|wPreposition|wLinking|wDeterminer) && !(pk.is(wVerb) && r.twoWordVerb(i-1)):
		return true // "… in the same way | hook all the clips out"
	case n >= 3 && pk.is(wParticle) && r.hasVerb(start, i) && !(p == "back" && r.toks[i-2].is(wLeadsVerb|wSubject)) && !((p == "on" || p == "in") && isNoun(r, i-2) && !r.hasVerb(start, i-2)) && (t == "the" || t == "this" || t == "these" || t == "those" || t == "your") && !papers.has(next) && r.verbFollows(i+1):
		return true // "both come out | the bottom pin's got a sleeve"
	case n >= 2 && (p == "this" || p == "that" || p == "both" || p == "all" || p == "one") && r.toks[i-1].brk == brkNone && r.toks[i-2].brk == brkNone && r.toks[i-2].is(wVerb) && r.plainVerb(r.toks[i-2].s) && isNoun(r, i):
		return false // "I need to pull this bush out"
	case n >= 2 && (pk.is(wEndsPhrase) || r.toks[i-1].brk >= brkPause) && !pk.is(wHoldsClause) && !tk.is(wOff|wOn) && t != "back" && !(!comma && r.subjectAt(start, i)) && !(p == "it" && r.toks[i-2].s == "and" && strings.HasSuffix(t, "s") && (next == "back" || nk.is(wOn|wOff|wReturning))) && r.thingThenVerb(i) && (r.hasVerb(start, i) || pk.is(wParticle)):
		return true // "… done | wheel back on"
	case n >= 2 && (p == "in" || p == "on") && isNoun(r, i) && r.goesBack(i):
		return true // "… fresh ones go in | hanger back in the pivot"
	case (t == "new" || t == "fresh") && n >= 3 && !pk.is(wDeterminer|wPreposition|wDropAdj|wLinking|wInUse) && p != "and" && p != "of" && (r.thingThenVerb(i) || r.thingThenPlace(i)):
		return true // "… with your thumb | new clip in the groove"
	case r.toks[i-1].brk == brkPause && n >= 3 && r.turnsTo(i):
		return true // "… that one and that one | pulley now three little ones"
	case r.toks[i-1].brk == brkPause && isNoun(r, i) && isNoun(r, i-1) && !nk.is(wParticle):
		return false
	case comma && n >= 2 && !tk.is(wOff|wOn) && t != "up" && t != "down" && t != "back":
		if t == "which" || t == "who" {
			return true
		}
		return r.imperativeAt(i) || r.hasVerbSoon(i) && r.hasVerb(start, i)
	}
	return false
}

var interjections = set("yeah yep yup nope click clicks lovely beautiful perfect gorgeous cheers oh hello sorry blimey bugger magic brilliant sweet bingo god gosh jeez crikey christ heavens")

// awaitsVerb tells whether the words before token i wait for the verb there: a breath between
// ends nothing, else the bare order is read of what was denied or only supposed.
func (r *reading) awaitsVerb(start, i int) bool {
	if !r.toks[i].is(wVerb) {
		return false
	}
	if i-2 >= start && doers.has(r.toks[i-1].s) && hangs.has(r.toks[i-2].s) {
		return true // "it'll turn round when you | tighten it"
	}
	for k := i - 1; k >= max(start, i-4); k-- {
		switch w := r.toks[k].s; {
		case helps.has(w) && k == i-1 && !(k > start && (r.toks[k-1].s == "i")), w == "not" && k > start && (denied.has(r.toks[k-1].s) || helps.has(r.toks[k-1].s)), w == "never", strings.HasSuffix(w, "n't"):
			return true // "I'm not going to | cut the case"
		case !waits.has(w):
			return false
		}
	}
	return false
}

// helps are the verbs that wait for another ("I'll" tells what is done now), denied are the words
// before a "not" that waits for one, waits are those that may come between.
var helps = set("would could might must may will 'll 'd")
var denied = set("do does did is am are 's 'm 're to")
var waits = set("to going gonna have need want let it them you ever even")

// hangs are the words that tie what somebody does to something else, doers who does it.
var hangs = set("when whenever if unless until till before")
var doers = set("you i they he she")

// neverEnds are the words that never end what somebody says.
var neverEnds = set("of into onto between behind under")

var leadsName = set("the a an my your his its their")

// plainVerb tells whether w is the plain form of a verb of the workshop.
func (r *reading) plainVerb(w string) bool { return len(r.lex.Patterns(w)) > 0 }

// imperativeAt tells whether a verb of the workshop in its plain form stands at i, able to start a clause.
func (r *reading) imperativeAt(i int) bool {
	w := r.word(i)
	if w == "" || i > 0 && (r.toks[i-1].s == "the" || r.toks[i-1].s == "a") {
		return false
	}
	if !r.toks[i].is(wVerb) || w == "be" || w == "go" || !slices.Contains(r.lex.LemmasOf(r.ids[i]), r.ids[i]) {
		return false
	}
	n := r.nameAt(i)
	// "clip", "washer", "spring": more likely the thing; "flat side to the drum"
	return n == 0 && w != "flat" || n <= 1 && r.nextKind(i).is(wDeterminer|wPronoun)
}

// turnsTo tells whether a thing named at i is what the talk turns to: a subject or "now" follows it.
func (r *reading) turnsTo(i int) bool {
	n := r.nameAt(i)
	if n == 0 {
		return false
	}
	w := r.word(i + n)
	return w == "now" || w == "i" || w == "you"
}

// isNoun tells whether a name begins at the word.
func isNoun(r *reading, i int) bool {
	n := r.nameAt(i)
	return n > 0
}

var endsPhrase = set("off out up down back apart together away again there here it them now then first tight too well done loose enough already that this one ones mm hand fingers both sides side good fine lot all")

// subjectAt tells whether the words from start to i are "the pinch bolt on": a thing by
// its article, and where it is, so that what follows belongs to its name.
func (r *reading) subjectAt(start, i int) bool {
	for start < i && (r.toks[start].is(wOpener) || r.toks[start].s == "and") {
		start++
	}
	if r.toks[start].s != "the" || !r.toks[i].is(wDeterminer) {
		return false
	}
	k := start + 1
	for names := 0; k < i-1 && names < 3; names++ {
		n := r.nameAt(k)
		if n == 0 {
			return false
		}
		k += n
	}
	return k == i-1 && (r.toks[k].s == "on" || r.toks[k].s == "in")
}

// thingThenVerb tells whether a name begins at i that moves or is moved: followed
// by a particle or a verb of its own.
func (r *reading) thingThenVerb(i int) bool {
	k := i
	for k < i+4 && r.kind(k).is(wDeterminer|wPlace|wDropAdj) {
		if k++; r.toks[k-1].brk >= brkSentence {
			return false
		}
	}
	names := 0
	for names < 3 {
		n := r.nameAt(k)
		if n == 0 {
			break
		}
		names++
		if k += n; r.toks[k-1].brk >= brkSentence {
			return false // "the back hose. Front hose back on": that one
		}
	}
	if names == 0 || k >= len(r.toks) {
		return false
	}
	switch r.word(k) {
	case "off", "out", "'s", "is", "are", "'re", "goes", "go", "comes", "come", "gets", "get", "wants", "takes", "was", "were":
		return true
	case "on", "in", "back":
		w := r.next(k)
		return w == "" || w == "on" || w == "in" || w == "up" || w == "by" || w == "then" || w == "and" || w == "first" || w == "with" || w == "now" || w == "again" || w == "so" || w == "finger" || w == "just" || w == "together"
	}
	return false
}

// thenMoves tells whether a thing with its article is named at i and a verb follows by
// which it moves: "the idler comes off".
func (r *reading) thenMoves(i int) bool {
	if !r.kind(i).is(wDeterminer) {
		return false
	}
	k := i + 1
	for k < i+3 && r.kind(k).is(wPlace|wDropAdj) {
		k++
	}
	n := r.nameAt(k)
	if n == 0 || r.toks[k+n-1].brk >= brkComma {
		return false
	}
	if w := k + n; r.word(w) == "just" {
		n++
	}
	return comesAway.has(r.word(k + n))
}

// comesAway are the verbs by which a thing comes off by itself.
var comesAway = set("comes come came slides slid drops dropped falls fell pops popped lifts swings pulls slips")

// goesBack tells whether a thing named at i, with no article, is said right after to
// go back or to be off: no preposition before it means that thing then.
func (r *reading) goesBack(i int) bool {
	k := i
	for n := r.nameAt(k); n > 0 && k < i+4; n = r.nameAt(k) {
		k += n
	}
	w, next := r.word(k), r.next(k)
	return w == "back" && (onWords.has(next) || placing.has(next) || returning.has(next)) || w == "off" || w == "comes" || w == "goes"
}

// thingThenPlace tells whether a thing named at i is followed by where it goes: "new clip in the groove".
func (r *reading) thingThenPlace(i int) bool {
	k := i
	for k < i+4 && r.kind(k).is(wDeterminer|wPlace|wDropAdj) {
		k++
	}
	n := r.nameAt(k)
	return n > 0 && placing.has(r.word(k+n)) && r.kind(k+n+1).is(wDeterminer)
}

var leadsVerb = set("to and or just then don't never ever dare not can will would could should must 'll gonna wanna let help please always only simply carefully gently also")
var particle = set("off out on in up down back apart together away again there here it them")

// verbFollows tells whether a noun phrase at i is followed by a verb of its own.
func (r *reading) verbFollows(i int) bool {
	for k := i; k < i+4 && k < len(r.toks); k++ {
		s := r.toks[k].s
		if s == "'s" || s == "is" || s == "are" || s == "'re" || s == "goes" || s == "comes" || s == "has" || s == "come" || s == "go" {
			return k > i
		}
		if r.toks[k].brk >= brkComma || prepositions.has(s) || openers.has(s) || s == "and" || subjects.has(s) {
			return false
		}
	}
	return false
}

func (r *reading) hasVerb(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if r.toks[i].is(wLinking | wForm) {
			return true
		}
	}
	return false
}

// onlyNames tells whether there is nothing between two tokens but a name with its article:
// "the bolt and the collar come off".
func (r *reading) onlyNames(lo, hi int) bool {
	for lo < hi && r.toks[lo].is(wOpener) {
		lo++
	}
	return lo+1 < hi && articles.has(r.toks[lo].s) && lo+1+r.nameAt(lo+1) == hi
}

func (r *reading) hasVerbSoon(i int) bool {
	end := min(i+6, len(r.toks))
	for k := i; k < end; k++ {
		if r.toks[k].is(wLinking) && r.toks[k].s != "do" {
			return true
		}
		if r.toks[k].s == "off" || r.toks[k].s == "out" {
			return true
		}
		if r.toks[k].brk > brkPause {
			break
		}
	}
	return false
}

// mark finds the cues that frame each clause.
func (r *reading) mark() {
	for ci := range r.clauses {
		c := &r.clauses[ci]
		for i := c.lo; i < c.hi; i++ {
			var labels []string
			n := 0
			if r.toks[i].is(wCue) {
				labels, n = r.lex.Moods(r.from(i, len(r.toks)))
			}
			if n > 0 {
				var m mood
				for _, l := range labels {
					m |= moodOf[l]
				}
				if m == hypothetical && r.toks[i].s == "you" && r.next(i) == "can" && r.saidNow(c, i) {
					continue // "now you can get the cover off"
				}
				if w := r.prev(i); m == other && i > c.lo && (w == "from" || w == "off") && !r.subjectAfter(c, i+n) {
					continue // "a new pin from the dealer": who sold it, not who does it
				}
				if m == together {
					c.together = true // a turn of the work, no frame of what is told
					continue
				}
				c.own().cues = append(c.cues, cue{i, i + n, m})
				c.mood |= m &^ passing
				c.passing = c.passing || m&passing != 0
			}
			for _, s := range r.lex.Signals(r.within(i)) {
				if (s.Name == "stand-in" || s.Name == "for-now") && r.noStandIn(i, i+s.Len) {
					continue
				}
				c.own().opens = append(c.opens, openCue{i, i + s.Len, s.Name})
			}
		}
		if strings.HasSuffix(strings.TrimRight(r.talk.Text[r.toks[c.lo].lo:r.endOf(c.hi)], "\"'”’»)"), "?") {
			c.mood |= asked
		}
	}
	for ci := range r.clauses {
		c := &r.clauses[ci]
		for _, o := range c.opens {
			if o.signal == "later" && r.intends(ci, o) {
				c.own().cues = append(c.cues, cue{o.lo, o.hi, announced}) // what is put off does not happen here
				break
			}
		}
	}
	for qi := range r.qtys {
		q := &r.qtys[qi]
		q.cl = int(r.toks[q.lo].cl)
		c := r.clauses[q.cl].own()
		c.qtys = append(c.qtys, qi)
	}
}

// subjectAfter tells whether what follows a token in its clause has a verb to itself, as in
// "from what the dealer says".
func (r *reading) subjectAfter(c *clause, i int) bool {
	return i < c.hi && (r.toks[i].is(wVerb|wForm) || r.toks[i].s == "'s" || r.toks[i].s == "has" || r.toks[i].s == "had") && r.toks[i-1].brk < brkPause
}

// saidNow tells whether "now" opens a clause before token i.
func (r *reading) saidNow(c *clause, i int) bool {
	if r.ledBy(c.lo, "now") {
		return true
	}
	for k := c.lo; k < i; k++ {
		switch w := r.toks[k].s; {
		case w == "now":
			return true
		case !openers.has(w) && w != "and" && w != "so" && w != "then":
			return false
		}
	}
	return false
}

// opening finds the spoken tool list near the start of the talk. What is said
// before it tells what the job will be; in it nothing is done yet.
func (r *reading) opening() {
	tools := func(ci int) (n int) {
		for _, mi := range r.clauses[ci].mentions {
			if r.mentions[mi].kind&lexicon.Tool != 0 {
				n++
			}
		}
		return n
	}
	work := func(ci int) bool {
		c := &r.clauses[ci]
		parts := 0
		for _, mi := range c.mentions {
			if m := &r.mentions[mi]; m.kind&(lexicon.Part|lexicon.Fastener) != 0 && m.kind&lexicon.Tool == 0 && m.prep != "for" && m.prep != "of" {
				parts++
			}
		}
		if parts <= tools(ci) {
			return false
		}
		for i := c.lo; i < c.hi; i++ {
			if w := r.toks[i].s; r.toks[i].men < 0 && (w == "off" || w == "out" || r.plainVerb(w) && w != "need" && w != "get" && w != "have" && !placeWords.has(w)) {
				return true
			}
		}
		return false
	}
	done := 0 // clauses in which something already came off
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if c.lo > len(r.toks)/3 || r.since(0, c.lo) > 300 || done > 1 {
			return
		}
		if ci > 0 && work(ci-1) && r.tookOff(ci-1) {
			done++
		}
		n, end := tools(ci), ci+1
		if c.mood&listing == 0 && n < 2 && !r.layOut(c) {
			continue
		}
		for k := ci + 1; k < len(r.clauses) && k-end < 4 && r.since(c.lo, r.clauses[k].lo) < 120 && !work(k); k++ {
			if t := tools(k); t > 0 {
				n, end = n+t, k+1
			}
		}
		if c.mood&listing != 0 && n >= 3 || r.layOut(c) || n >= 6 && n >= end-ci {
			r.toolList = [2]int{ci, end}
			return
		}
	}
}

// layOut tells whether a clause does nothing but name three tools or more in a row, as there
// or as wanted: "so you want a 10 mil socket, a T25 and a puller".
func (r *reading) layOut(c *clause) bool {
	if c.mood&(negated|conditional|asked) != 0 {
		return false
	}
	n, last := 0, -1
	for i := c.lo; i < c.hi; i++ {
		t := &r.toks[i]
		switch {
		case t.men >= 0:
			m := &r.mentions[t.men]
			if m.kind&(lexicon.Tool|lexicon.Consumable) == 0 && !listedTools.has(m.head) {
				return false
			}
			if m.kind&lexicon.Consumable == 0 {
				n++
			}
			i, last = m.hi-1, i
		case t.qty >= 0:
			q := &r.qtys[t.qty]
			if q.Kind != normalize.Size && q.Kind != normalize.Driver && q.Kind != normalize.Drive {
				return false
			}
			if q.Kind == normalize.Driver && (q.hi >= c.hi || r.toks[q.hi].men < 0 || r.toks[q.hi-1].brk >= brkComma) {
				n++ // "a T25"
			}
			i, last = q.hi-1, i
		case last < 0:
			if t.is(wVerb) && !hasThere.has(t.s) {
				return false
			}
		case t.s != "and" && !t.is(wDeterminer|wDropAdj|wNumber) && t.s != "some" && t.s != "my" && t.s != "your" && t.s != "of" && t.s != "bit" && t.s != "piece" && r.toks[i-1].brk < brkComma:
			return n >= 3 && i > c.lo && !t.is(wVerb|wPreposition)
		}
	}
	return n >= 3
}

// laidOut takes what is named in a spoken list of tools, and may be a part of a machine as
// well, for the tool: "two seventeens, a calliper, a mirror".
func (r *reading) laidOut() {
	for mi := range r.mentions {
		m := &r.mentions[mi]
		if m.kind&lexicon.Tool != 0 || !listedTools.has(m.head) || m.of >= 0 || m.isNew || !r.inSpokenList(m) || m.prep != "" && m.prep != "with" && m.prep != "and" {
			continue
		}
		beside := false
		for k := max(0, m.cl-1); k <= min(m.cl+1, len(r.clauses)-1); k++ {
			for _, o := range r.clauses[k].mentions {
				beside = beside || o != mi && r.mentions[o].kind&lexicon.Tool != 0
			}
		}
		if beside && (!m.definite || len(m.mods) == 0) {
			m.kind = lexicon.Tool
		}
	}
}

// listedTools are the tools that are also names of parts.
var listedTools = wordsOf("tools that are names of parts")

// tookOff tells whether a clause says that something is off or out, and not that it will be.
func (r *reading) tookOff(ci int) bool {
	c := &r.clauses[ci]
	off := false
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "gonna", "going", "'ll", "will", "today", "want", "need", "why", "was", "been":
			return false
		case "off", "out":
			off = true
		}
	}
	return off
}

// text returns the talk from token lo to hi, verbatim.
func (r *reading) text(lo, hi int) string {
	if lo >= hi {
		return ""
	}
	return closeUp(r.spoken[r.toks[lo].lo:r.toks[hi-1].hi])
}

// closeUp makes one blank of the blanks that stand for what was left out.
func closeUp(s string) string {
	if strings.Contains(s, "  ") {
		return strings.Join(strings.Fields(s), " ")
	}
	return s
}

// place gives the place of the tokens: at most 40 words, from lo on.
func (r *reading) place(lo, hi int) Place {
	lo = min(max(lo, 0), len(r.toks)-1)
	hi = min(max(hi, lo+1), len(r.toks))
	first := r.talk.Words[r.toks[lo].w]
	for hi > lo+1 && r.talk.Words[r.toks[hi-1].w].Clip != first.Clip {
		hi--
	}
	_, a := r.ledWords(lo)
	b := r.lastWord(hi - 1)
	// hyphens make several counted words of one: count as a reader would
	n := 0
	for w := a; w <= b; w++ {
		n += max(1, wordCount(r.talk.Text[r.talk.Words[w].Lo:r.talk.Words[w].Hi]))
		if n > 40 {
			b = max(a+1, w) - 1
			break
		}
	}
	return Place{Clip: int(first.Clip), At: round3(first.At), AtExact: first.Is(transcript.Exact), CueAt: r.cueAt(first), Quote: r.talk.Text[r.talk.Words[a].Lo:r.talk.Words[b].Hi]}
}

// cueAt is where the cue begins that a word was first heard in.
func (r *reading) cueAt(w transcript.Word) float64 {
	if cues := r.talk.Clips[w.Clip].Cues; int(w.Cue) < len(cues) {
		return round3(cues[w.Cue].Start)
	}
	return round3(w.At)
}

func wordCount(s string) int {
	n, in := 0, false
	for i := 0; i < len(s); i++ {
		c := s[i] | 0x20
		w := c >= 'a' && c <= 'z' || s[i] >= '0' && s[i] <= '9' || s[i] >= 0x80 || s[i] == '\'' || s[i] == '.'
		if w && !in {
			n++
		}
		in = w
	}
	return n
}

func round3(f float64) float64 { return float64(int64(f*1000+0.5)) / 1000 }

func (r *reading) at(tok int) float64 { return r.talk.Words[r.toks[tok].w].At }

// farWords is more words than the longest time asked for holds. Times can be no
// measure of how near things are: all the text of a file may stand at one second.
const farWords = 2000

// since tells for how many seconds there was talk between two tokens, silences being short;
// a clip's end is far.
func (r *reading) since(a, b int) float64 {
	if r.talk.Words[r.toks[a].w].Clip != r.talk.Words[r.toks[b].w].Clip || b-a > farWords {
		return 1e9
	}
	return r.talked[b] - r.talked[a]
}
