package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
)

// Where a torque comes from, as far as the talk tells: who said it, in which document and
// edition of it, and what it is for there. A figure for another machine, or for a size in
// general, is no figure for this fastener.

// Scopes of a figure. What nobody tells is "unsaid".
const (
	scopeThis    = "this fastener"
	scopeGeneral = "general"
	scopeOther   = "other machine"
	scopeUnsaid  = "unsaid"
)

// tellers are who a figure comes from where it is in no document.
var tellers = wordsOf("who may tell")

// telling are the verbs after who tells a figure.
var telling = set("says say said reckons reckon reckoned told tells swears swore uses used does did gives gave quotes quoted puts recommends wants")

// noNameOfIt are words before a document that do not belong to its name.
var noNameOfIt = set("this that these those my your his her their its some any same whole little old new big bloody silly other actual proper one 's")

// sourceOf gives where a torque was said to come from.
func (r *reading) sourceOf(h *heard) SourceSaid {
	q := &r.qtys[h.qty]
	out := SourceSaid{Scope: scopeUnsaid}
	doc := -1
	if h.source.Title != "" {
		doc = r.documentNear(q, h.source.Title)
	}
	if doc >= 0 {
		from := doc
		for from > 0 && doc-from < 3 && r.toks[from-1].brk == brkNone && r.nameOfDocument(from-1) {
			from--
		}
		out.Title = strings.ToLower(r.text(from, doc+1))
		out.Edition = r.editionAt(from, doc+1)
	} else {
		out.Title = h.source.Title
		out.Who = r.tellerOf(q)
	}
	// "forty. Well, it was forty on the other quad" is one value, told twice
	lo, hi := r.clausesAround(q, 2, 3, func(o *quantity) bool { return !o.sameValue(q) })
	for h.applied == "done" && lo < q.cl && r.clauses[lo].sentence != r.clauses[q.cl].sentence {
		lo++ // what was said before is of the value before: "the sheet is for the older trike. I've left it at forty"
	}
	switch {
	case r.heardIn(lo, hi, "other-machine"):
		out.Scope = scopeOther
	case r.heardIn(lo, hi, "by-size") || out.Title != "" && strings.HasSuffix(out.Title, "chart"):
		out.Scope = scopeGeneral
	case (out.Title != "" || out.Who != "") && h.of != nil && toldWith[h.rule]:
		out.Scope = scopeThis
	}
	return out
}

// documentNear gives the token of a document that a value is told from, the nearest in its
// clause or the one before; -1 where it is not found.
func (r *reading) documentNear(q *quantity, title string) int {
	best, far := -1, 1<<30
	for k := max(q.cl-1, 0); k <= q.cl; k++ {
		for i := r.clauses[k].lo; i < r.clauses[k].hi; i++ {
			if d := max(q.lo-i, i-q.hi); r.toks[i].s == title && d < far {
				best, far = i, d
			}
		}
	}
	return best
}

// nameOfDocument tells whether a word belongs to the name of the document after it.
func (r *reading) nameOfDocument(i int) bool {
	t := &r.toks[i]
	return t.qty < 0 && !t.is(wCounts|wNumber|wDeterminer|wPronoun|wSubject|wPreposition|wLinking|wOpener|wStop|wInterjection|wParticle) && !noNameOfIt.has(t.s) && !saying.has(t.s) && (t.men < 0 || r.mentions[t.men].kind&lexicon.Tool == 0)
}

// editionAt gives the edition of a document by its year or number, right before or after its
// name: "the 1998 manual", "manual, second edition", "sheet, revision C".
func (r *reading) editionAt(lo, hi int) string {
	for _, span := range [][2]int{{max(lo-3, 0), lo}, {hi, min(hi+5, len(r.toks))}} {
		for _, n := range r.numbersIn(span[0], span[1]) {
			if len(n) == 4 && (n[:2] == "19" || n[:2] == "20") {
				return n
			}
		}
	}
	for i := hi; i < min(hi+3, len(r.toks)-1); i++ {
		switch w, next := r.toks[i].s, r.toks[i+1].s; w {
		case "revision", "rev", "issue", "version", "edition":
			if r.toks[i+1].is(wCounts) || len(next) == 1 {
				return w + " " + next
			}
		case "first", "second", "third", "fourth", "fifth", "latest":
			if next == "edition" || next == "issue" || next == "revision" {
				return w + " " + next
			}
		}
	}
	return ""
}

// tellerOf gives who a value comes from: "my mate says ninety", "ninety, the dealer told me".
func (r *reading) tellerOf(q *quantity) string {
	lo, hi := r.nearBy(q.cl, 1, 1, 6)
	for i := r.clauses[lo].lo; i < r.clauses[hi].hi; i++ {
		if !tellers.has(r.toks[i].s) || i == 0 || !r.toks[i-1].is(wDeterminer) {
			continue
		}
		next := i + 1
		if r.word(next) == "at" || r.word(next) == "down" || r.word(next) == "from" { // "the bloke at the shop says"
			next = min(next+3, len(r.toks))
		}
		if telling.has(r.word(next)) || telling.has(r.next(next)) && r.toks[next-1].brk == brkNone || r.word(i-2) == "to" && r.word(i-3) == "according" {
			return r.toks[i].s
		}
	}
	return ""
}
