package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
)

// learnNames finds the names of parts that no list has, by how they are handled: "pull the
// wibbler off", "the wibbler comes off", "wibbler back on". From then on the word names
// a part in this talk, as those of the vocabulary do.
func (r *reading) learnNames() {
	var seen map[string]int // how often each word was handled
	for i := 1; i < len(r.toks); i++ {
		k, sure := -1, false
		switch t := &r.toks[i]; {
		case t.is(wOff|wOn) || t.s == "back":
			k, sure = r.handledAt(i)
		case t.is(wForm) && i+2 < len(r.toks) && worksOn.has(t.s) && t.brk == brkNone && articles.has(r.toks[i+1].s) && r.toks[i+1].brk == brkNone && r.mayBePart(i+2):
			k, sure = i+2, t.s != "hold" && t.s != "holds" && t.s != "fit" // "fit the bill"
			if next := r.nextKind(k); next.is(wName|wForm) && r.toks[k].brk == brkNone && !next.is(wStop) || k+1 < len(r.toks) && r.toks[k].brk == brkNone && !next.is(wStop|wPreposition|wOff|wOn|wOpener) && r.toks[k+1].s != "and" && r.toks[k+1].s != "back" {
				k = -1 // "remove the battery terminal": what stands before a name
			}
		}
		if k < 0 {
			continue
		}
		if seen == nil {
			seen = map[string]int{}
		}
		w := lexicon.Singular(r.toks[k].s)
		if seen[w]++; sure {
			seen[w]++
		}
	}
	for w, n := range seen {
		if n >= 2 {
			if r.named == nil {
				r.named = map[string]bool{}
			}
			r.named[w] = true
		}
	}
}

// handledAt gives the token of the unlisted word that is told to come off or to go on
// where token i says off, out, on, in or back; -1 where there is none. It is sure of a
// word that takes a verb of the workshop to get there.
func (r *reading) handledAt(i int) (k int, sure bool) {
	k = i - 1
	for k > 0 && i-k <= 3 && r.toks[k].brk == brkNone && (r.toks[k].s == "back" || r.toks[k].s == "straight" || r.toks[k].s == "right" || r.toks[k].s == "just") {
		k--
	}
	verb := r.toks[k].s
	moved := moves.has(verb) || verb == "'s" || verb == "is"
	if moved && k > 0 && r.toks[k-1].brk == brkNone {
		k--
	}
	if r.toks[i-1].brk >= brkComma || !r.mayBePart(k) {
		return -1, false
	}
	// what stands before it
	j := k - 1
	for j >= 0 && k-j <= 3 && r.toks[j].brk == brkNone && r.toks[j].is(wDropAdj|wPlace) {
		j--
	}
	ends := r.toks[i].brk >= brkComma || i+1 < len(r.toks) && (r.toks[i+1].s == "and" || r.toks[i+1].s == "then" || r.toks[i+1].s == "first" || r.toks[i+1].s == "next")
	starts := j < 0 || r.toks[j].brk >= brkComma || r.toks[j].is(wOpener) && r.toks[j].brk < brkComma || r.toks[j].s == "and"
	switch {
	case moved:
		said := j >= 0 && articles.has(r.toks[j].s) && r.toks[j].brk == brkNone
		if !said && !starts || verb == "'s" && !ends {
			return -1, false
		}
		return k, said && verb != "'s" && verb != "is" && (verb != "comes" && verb != "goes" && verb != "falls" || r.toks[i].s == "off" && verb == "comes")
	case starts && ends:
		return k, false
	case j > 0 && r.toks[j].brk == brkNone && articles.has(r.toks[j].s) && r.toks[j].s != "a" && r.toks[j].s != "an":
		v := r.toks[j-1]
		if v.brk != brkNone || !v.is(wForm) {
			return -1, false
		}
		for _, l := range r.lex.Lemmas(v.s) {
			for _, p := range r.lex.Patterns(l) {
				if s := ledgerActs[p.Action.Name]; (s == Removed || s == Refitted) && len(p.Words) > 1 && p.Words[len(p.Words)-1] == r.toks[i].s {
					return k, handles.has(l)
				}
			}
		}
	}
	return -1, false
}

// handles are the verbs of hands and tools that are said of little but parts.
var handles = set("pull pop prise pry lift slide slip lever hook unhook unscrew unbolt unclip unplug undo tap knock drive press push screw bolt clip wiggle twist ease work fish tease")

// worksOn are the verbs of what is done to parts that need no word for whence or where to.
var worksOn = set("remove removing refit refitting install installing reinstall unscrew unbolt unclip unhook undo disconnect dismantle unplug unthread hold holds fit fitting withdraw extract")

// mayBePart tells whether a word that no list has may name a part.
func (r *reading) mayBePart(k int) bool {
	t := &r.toks[k]
	if k < 0 || len(t.s) < 4 || t.qty >= 0 || t.is(wName|wForm|wVerb|wStop|wDropAdj|wPlace|wNumber|wPreposition|wPronoun|wSubject|wDeterminer|wLinking|wOpener|wInterjection|wCountOf|wDrop|wCounts) {
		return false
	}
	for i := 0; i < len(t.s); i++ {
		if t.s[i] < 'a' || t.s[i] > 'z' {
			return false
		}
	}
	return !noPart.has(lexicon.Singular(t.s)) && !damage.has(t.s) && !strings.HasSuffix(t.s, "ly") && !strings.HasSuffix(t.s, "ing") && !strings.HasSuffix(t.s, "ed") && r.lex.Repair(t.s) == nil
}

// noPart are the words for what comes out, goes on and is taken off, and is no part.
var noPart = wordsOf("what is spoken of and is no part")

// toldName reads the name that the talk itself has taught at token i.
func (r *reading) toldName(ci, i int) (m mention, end int) {
	w := r.toks[i].s
	one := lexicon.Singular(w)
	return mention{lo: i, hi: i + 1, cl: ci, kind: lexicon.Part, of: -1, head: one, name: w, plural: one != w}, i + 1
}
