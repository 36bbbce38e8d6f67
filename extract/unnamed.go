package extract

import (
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// The ways of saying how a thing was left that neither name it nor have a verb:
// "Back in the tank.", "that's just fingers", "Tight."

// skipped gives the first token of a clause that is no more than a way of opening it.
func (r *reading) skipped(c *clause) int {
	i := c.lo
	for i < c.hi && (r.toks[i].is(wOpener|wDrop) || r.toks[i].s == "and") && r.toks[i].s != "there" && r.toks[i].s != "now" {
		i++
	}
	return i
}

// offAndBack reads "the plug's out and back in with a new washer", "wheel off and back on": what
// came off is back in the same breath.
func (r *reading) offAndBack(ci int) {
	c := &r.clauses[ci]
	for i := c.lo; i+2 < c.hi; i++ {
		if r.toks[i].s != "and" || r.toks[i+1].s != "back" || !r.toks[i+2].is(wOn) || i == 0 || r.toks[i-1].brk >= brkSentence {
			continue
		}
		k := i + 3
		if w := r.next(k); w == "road" || w == "job" || w == "market" || r.intoContainer(ci, k) != "" {
			return
		}
		from := c
		if i == c.lo && ci > 0 {
			from = &r.clauses[ci-1]
		}
		for _, ai := range from.acts {
			if a := &r.acts[ai]; a.hi == i && a.action.Name == "remove" && (r.toks[i-1].is(wOff) || r.toks[i-1].men >= 0) && len(a.objects)+len(a.pronoun) > 0 {
				r.addAct(ci, act{action: r.lex.Action("fit"), lo: i + 1, hi: k, verb: -1, pronoun: a.pronoun, objects: slices.Clone(a.objects), subject: true, rule: "off and back"})
				return
			}
		}
	}
}

// backAlone reads "back on the bar, arrow up", "Back in.": what went back is what
// was spoken of, if it had come off.
func (r *reading) backAlone(ci int) {
	c := &r.clauses[ci]
	if len(c.acts) > 0 || c.mood&(notWork|announced) != 0 || ci < r.toolList[1] {
		return
	}
	i := r.skipped(c)
	if i+1 >= c.hi || r.toks[i].s != "back" || r.toks[i].men >= 0 || r.toks[i].brk >= brkComma {
		return
	}
	k := i + 1
	w := r.toks[k].s
	if !onWords.has(w) && !returning.has(w) && !placing.has(w) || w == "to" {
		return
	}
	if k+1 < c.hi && r.toks[k].brk < brkComma {
		// where it goes has to be a part, and all that is said
		m := r.nameWithin(c, k+1, 4)
		if m < 0 || r.mentions[m].prep != w || r.mentions[m].kind&(lexicon.Part|lexicon.Fastener) == 0 || r.intoContainer(ci, k) != "" {
			return
		}
		k = r.mentions[m].hi - 1
	}
	for j := k + 1; j < c.hi && r.toks[j-1].brk < brkComma; j++ {
		if s := r.toks[j].s; linking.has(s) || subjects.has(s) {
			return
		}
	}
	r.addAct(ci, act{action: r.lex.Action("fit"), lo: i, hi: i + 2, verb: -1, pronoun: "it", subject: true, ifOff: true, rule: "back, and where"})
}

// sayingSo are the words that may lead to how a thing is on: "I've left those on with the fingers".
var sayingSo = set("'s 're is are of in on for with my the one stays at new also so now and i 'm 've have put putting leave leaving left run as there back by")

// toldByHand is the rule of what is only said to be by hand.
const toldByHand = "only by hand, it is said"

// byFingers reads "that's just fingers", "only finger tight, those", "just by hand
// for now" of the fasteners spoken of.
func (r *reading) byFingers(ci int) {
	c := &r.clauses[ci]
	if len(c.acts) == 1 && c.acts[0] == len(r.acts)-1 && len(c.mentions) == 0 && c.mood&(notWork|announced) == 0 {
		// "four bolts, snug and then an eighth of a turn"
		a := &r.acts[c.acts[0]]
		if i := r.skipped(c); a.verb == i && r.toks[i].s == "snug" && len(a.objects) == 0 && a.pronoun == "" && ci > 0 && r.clauses[ci-1].sentence == c.sentence {
			a.pronoun, a.subject, a.verb, a.rule = "that", true, -1, toldByHand
			for _, q := range c.qtys {
				if k := r.qtys[q].Kind; k == normalize.Turn || k == normalize.Angle {
					a.action, a.rule = r.lex.Action("tighten"), "snug, and a turn"
				}
			}
		}
		return
	}
	if len(c.acts) > 0 || len(c.mentions) > 0 || c.mood&(notWork|announced) != 0 || c.hi-c.lo > 9 {
		return
	}
	pron, only := "", false
	i := r.skipped(c)
	for ; i < c.hi; i++ {
		if handAt(r, i, c.hi) || r.toks[i].s == "fingers" && pron != "" {
			break
		}
		if r.toks[i].s == "hand" && only && (i+1 == c.hi || r.toks[i].brk >= brkComma || r.toks[i+1].s == "for") {
			break // "so only hand for these"
		}
		switch w := r.toks[i].s; {
		case w == "that" || w == "it" || w == "this" || w == "she":
			pron = "it"
		case w == "they" || w == "those" || w == "them" || w == "these" || w == "both" || w == "all" || countOf[w] > 1:
			pron = "them"
		case w == "only" || w == "just" || w == "all" || w == "far":
			only = true
		case !sayingSo.has(w):
			return
		}
	}
	if i >= c.hi {
		return
	}
	for k := c.lo; k < c.hi; k++ {
		only = only || r.toks[k].s == "only" || r.toks[k].s == "just"
		if w := r.toks[k].s; pron == "" && k > i && (w == "those" || w == "them" || w == "both" || w == "they" || w == "these") {
			pron = "them"
		}
	}
	if pron == "" && !only {
		return
	}
	if pron == "" {
		pron = "that"
	}
	r.addAct(ci, act{action: r.lex.Action("start by hand"), lo: c.lo, hi: min(c.hi, i+2), verb: -1, pronoun: pron, subject: true, rule: toldByHand})
}

// tightNoMore is the rule of what is said to be tight by no more than that.
const tightNoMore = "tight, and no more"

// tightAlone reads "Tight.", "Nipped up.", "Nice and tight." after what went on.
func (r *reading) tightAlone(ci int) {
	c := &r.clauses[ci]
	if ci == 0 || len(c.acts) > 0 || len(c.mentions) > 0 || len(c.qtys) > 0 || c.mood&(notWork|announced) != 0 || c.hi-c.lo > 6 || r.since(r.clauses[ci-1].lo, c.lo) > 12 {
		return
	}
	tight, pron := false, "that"
	i := r.skipped(c)
	for ; i < c.hi && !(tight && r.toks[i-1].brk >= brkComma); i++ {
		switch r.toks[i].s {
		case "tight", "done", "nipped", "tightened", "firm", "firmly":
			tight = true
		case "pull", "heave", "lean", "grunt":
			if w := r.prev(i); w != "good" && w != "proper" && w != "decent" && w != "big" && w != "hard" {
				return
			}
			tight = true // "nineteen, and a good pull"
		case "nip", "tweak", "pinch":
			if r.prev(i) != "a" {
				return
			}
			tight = true // "that's only a nip"
		case "that", "'s", "only", "a", "it", "they", "'re", "gets", "get", "little", "wee", "quick":
		case "nice", "and", "good", "up", "just", "proper", "properly", "the", "of", "them", "those", "now", "back", "in", "on", "big", "decent", "hard":
		case "all", "both", "lot":
			pron = "them"
		default:
			n := countOf[r.toks[i].s]
			if n < 2 && !r.toks[i].is(wNumber) {
				return
			}
			if n > 1 && !r.prevKind(i).is(wNumber) {
				pron = "them"
			}
		}
	}
	if !tight || c.hi-c.lo == 1 && r.toks[c.lo].s == "done" || r.toks[c.hi-1].s == "done" {
		return
	}
	r.addAct(ci, act{action: r.lex.Action("tighten"), lo: c.lo, hi: c.hi, verb: -1, pronoun: pron, subject: true, rule: tightNoMore})
}

// asTightAs reads "the pivot bolt, that's as tight as I can get it", "tight as it'll
// go": tightened by feel, be it by the fingers alone.
func (r *reading) asTightAs(ci int) {
	c := &r.clauses[ci]
	if c.mood&(notWork|announced) != 0 || c.hi-c.lo > 24 {
		return
	}
	at := -1
	for i := c.lo; i+2 < c.hi; i++ {
		if r.toks[i].s == "tight" && r.toks[i+1].s == "as" {
			at = i
			break
		}
		if w := r.toks[i].s; w == "was" || w == "were" || w == "too" || w == "not" {
			return
		}
	}
	if at < 0 {
		return
	}
	name := ""
	for i := at + 2; i < min(c.hi, at+10); i++ {
		switch r.toks[i].s {
		case "i", "you", "it'll", "'ll", "will", "possible", "she'll", "dare", "can", "arm", "arms", "wrist", "get":
			name = "tighten"
		case "fingers", "finger", "hand", "thumb":
			name = "start by hand"
		}
		if name == "start by hand" {
			break
		}
	}
	if name == "" {
		return // "tight as a drum": how it was found
	}
	for _, ai := range c.acts {
		if a := &r.acts[ai]; a.lo < at && (a.verb >= 0 && a.action.Name != "fit" || a.hi > at) {
			return // "do it up as tight as I can": said with its verb
		}
	}
	x := act{action: r.lex.Action(name), lo: at, hi: at + 2, verb: -1, pronoun: "that", subject: true, rule: "tight as can be"}
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.hi <= at && m.prep == "" && m.kind&lexicon.Fastener != 0 {
			x.objects, x.pronoun = []int{mi}, ""
		}
	}
	r.addAct(ci, x)
}

// rubbish are the words that alone throw away what was just taken off or found spoilt.
var rubbish = set("rubbish junk garbage trash landfill")

// binAlone reads "In five pieces. Rubbish.", "Straight in the bin.", "in the scrap bucket
// with that": what was just taken off or spoken of, and no more than where it goes.
func (r *reading) binAlone(ci int) {
	c := &r.clauses[ci]
	if ci == 0 || len(c.acts) > 0 || len(c.mentions) > 1 || c.hi-c.lo > 9 || c.mood&notWork != 0 || r.since(r.clauses[ci-1].lo, c.lo) > 25 {
		return
	}
	if len(c.mentions) == 1 && !containers.has(r.mentions[c.mentions[0]].head) {
		return
	}
	i := r.skipped(c)
	if i >= c.hi {
		return
	}
	if i+1 == c.hi && (rubbish.has(r.toks[i].s) || r.toks[i].s == "bin") {
		r.addAct(ci, act{action: r.lex.Action("discard"), lo: c.lo, hi: c.hi, verb: -1, pronoun: "that", subject: true, rule: "rubbish, and no more"})
		return
	}
	if w := r.toks[i].s; w == "straight" || w == "right" || w == "off" {
		i++
	}
	if w := r.word(i); w != "in" && w != "into" && w != "to" || i+1 >= c.hi || !r.toks[i+1].is(wDeterminer) {
		return
	}
	i += 2
	bin := i
	for bin < min(c.hi, i+2) && !bins.has(r.toks[bin].s) {
		bin++
	}
	pron := "that"
	for k := bin + 1; k < c.hi; k++ {
		switch w := r.toks[k].s; w {
		case "with", "bucket", "man", "pile", "box", "bin", "heap", "tin", "bag", "now", "then", "lot", "the", "all", "of":
		case "that", "it", "this", "them", "those", "these":
			pron = w
		default:
			return
		}
	}
	if bin < min(c.hi, i+2) {
		r.addAct(ci, act{action: r.lex.Action("discard"), lo: c.lo, hi: c.hi, verb: -1, pronoun: pron, subject: true, rule: "bin, and no more"})
	}
}

// notBack is the rule of what is thrown away since it is said not to go back.
const notBack = "not going back"

// notGoingBack reads "that's not going back in", "not having that back": what came off is
// thrown away, where no more is said than that it will not go back.
func (r *reading) notGoingBack(ci int) {
	c := &r.clauses[ci]
	if ci == 0 || c.mood&negated == 0 || c.mood&^(negated|hedged) != 0 || len(c.mentions) > 0 || c.hi-c.lo > 9 || c.hi < len(r.toks) && r.toks[c.hi-1].brk < brkSentence {
		return
	}
	end := c.hi
	for end > c.lo && (r.toks[end-1].is(wOn) || r.toks[end-1].s == "there" || r.toks[end-1].s == "again") {
		end--
	}
	if end-2 < c.lo || r.toks[end-1].s != "back" {
		return
	}
	pron, goes := "", false
	for i := c.lo; i < end; i++ {
		switch w := r.toks[i].s; w {
		case "that", "it", "this", "them", "those", "these", "they":
			pron = w
		case "having", "putting", "going", "go", "fitting", "using":
			goes = true
		}
	}
	if pron == "" || !goes {
		return
	}
	for _, ai := range c.acts {
		r.acts[ai].mood |= framed
	}
	r.addAct(ci, act{action: r.lex.Action("discard"), lo: c.lo, hi: c.hi, verb: -1, pronoun: pron, subject: true, rule: notBack})
	r.acts[len(r.acts)-1].mood &^= negated
}

// doneAlone reads "Just spun on for now.", "Nipped up with the short key.": what was done
// to the thing spoken of, told with no more than the participle.
func (r *reading) doneAlone(ci int) {
	c := &r.clauses[ci]
	if ci == 0 || len(c.acts) != 1 || c.acts[0] != len(r.acts)-1 || c.mood&(notWork|announced) != 0 || r.since(r.clauses[ci-1].lo, c.lo) > 12 {
		return
	}
	a := &r.acts[c.acts[0]]
	if a.verb < 0 || a.subject || len(a.objects) > 0 || a.pronoun != "" || a.unknown || !fastens[a.action.Name] || a.action.Name == "torque" {
		return
	}
	i := r.skipped(c)
	many := false
	if r.word(i) == "that" && r.next(i) == "'s" {
		i += 2 // "that's all four nipped up"
	}
	for w := r.word(i); i < a.verb && (w == "all" || w == "both" || w == "only" || w == "the" || w == "of" || countOf[w] > 1 || many && r.toks[i].is(wPronoun)); w = r.word(i) {
		many = many || w != "only" && w != "the"
		i++
	}
	w := r.toks[a.verb].s
	if i != a.verb || r.plainVerb(w) || !strings.HasSuffix(w, "ed") && !irregular.has(w) && w != "done" {
		return
	}
	for _, mi := range c.mentions {
		if r.mentions[mi].kind&lexicon.Tool == 0 {
			return
		}
	}
	a.pronoun, a.subject = "that", true
	if w := r.prev(a.lo); a.lo > c.lo && (w == "just" || w == "only") {
		a.lo-- // "just nipped up" is no more than by hand
	}
	if many {
		a.pronoun = "them"
	}
}

// soMuchTurn is the rule of what is only said to be turned so far.
const soMuchTurn = "so much of a turn, and no more"

// thenTurn reads "then half a turn with the spanner", "quarter turn on each": how far
// what was spoken of is turned, with no verb. Which way, its state tells (refer).
func (r *reading) thenTurn(ci int) {
	c := &r.clauses[ci]
	if ci == 0 || len(c.acts) > 0 || c.hi-c.lo > 14 || c.mood&(notWork|announced) != 0 || r.since(r.clauses[ci-1].lo, c.lo) > 10 {
		return
	}
	at := r.skipped(c)
	said := false
	for at < c.hi && r.toks[at].s != "turn" && r.toks[at].s != "turns" {
		w := r.toks[at].s
		if !fractionWord.has(w) && countOf[w] == 0 && w != "a" && w != "an" && w != "of" && w != "another" && w != "full" && w != "more" && w != "just" && w != "about" {
			return
		}
		said = true
		at++
	}
	if at >= c.hi || !said {
		return
	}
	end := at + 1
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.kind != lexicon.Tool {
			return
		}
	}
	for i := end; i < min(c.hi, end+3); i++ {
		if w := r.toks[i].s; w == "back" || w == "out" || w == "off" || w == "from" {
			return // an adjuster
		}
	}
	r.addAct(ci, act{action: r.lex.Action("tighten"), lo: c.lo, hi: end, verb: -1, pronoun: "that", subject: true, rule: soMuchTurn})
}

// outAlone reads "Out, and out.", "In, in and in.": what was counted right before comes
// off or goes on.
func (r *reading) outAlone(ci int) {
	c := &r.clauses[ci]
	if ci == 0 || len(c.acts) > 0 || len(c.mentions) > 0 || len(c.qtys) > 0 || c.hi-c.lo > 6 || c.mood != 0 || r.since(r.clauses[ci-1].lo, c.lo) > 10 {
		return
	}
	n, last := 0, ""
	for i := c.lo; i < c.hi; i++ {
		switch w := r.toks[i].s; {
		case r.toks[i].is(wOff | wOn):
			if last != "" && w != last {
				return
			}
			n, last = n+1, w
		case w == "and" || w == "then" || r.toks[i].is(wInterjection):
		default:
			return
		}
	}
	if n < 2 {
		return // "Off.": the cat, as likely
	}
	x := act{action: r.lex.Action("fit"), lo: c.lo, hi: c.hi, verb: -1, pronoun: "them", subject: true, ifOff: last == "in" || last == "on", rule: "particle, and no more"}
	if offWords.has(last) {
		x.action = r.lex.Action("remove")
	}
	r.addAct(ci, x)
}
