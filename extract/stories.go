package extract

import (
	"strings"

	"wrenchword/normalize"
)

// stories sets aside what is told of another machine or another time: "I had one
// of these in last winter, I did it up to thirty foot pounds and it cracked". Such
// a story begins with a cue of that mood and goes on while what is told is past.
func (r *reading) stories() {
	for ci := range r.clauses {
		if !r.beginsStory(ci) {
			continue
		}
		first, last := ci, ci
		for first > 0 && r.clauses[first-1].sentence == r.clauses[ci].sentence && r.goesOn(first-1, ci) {
			first--
		}
		for last+1 < len(r.clauses) && r.goesOn(last+1, ci) {
			last++
		}
		for k := first; k <= last; k++ {
			c := &r.clauses[k]
			c.mood |= aside
			c.own().cues = append(c.cues, cue{c.lo, c.lo, aside})
		}
	}
}

// beginsStory tells whether a clause has the cue of a story and tells of the past.
func (r *reading) beginsStory(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&storied == 0 && !r.hadOnce(c) || r.tellsFigure(c) {
		return false
	}
	for k := max(0, ci-1); k <= min(ci+1, len(r.clauses)-1); k++ {
		if r.clauses[k].sentence == c.sentence && r.tense(&r.clauses[k]) == past {
			return true
		}
	}
	return false
}

// hadOnce tells of "I had a planer one time", "we had a van once where the bolt snapped".
func (r *reading) hadOnce(c *clause) bool {
	i := c.lo
	for i+3 < c.hi && (r.toks[i].is(wOpener) || r.toks[i].s == "and" || r.toks[i].s == "but") {
		i++
	}
	if i+2 >= c.hi || r.toks[i].s != "i" || r.toks[i+1].s != "had" || r.toks[i+2].s != "a" && r.toks[i+2].s != "an" && r.toks[i+2].s != "one" {
		return false
	}
	for k := i + 3; k < min(i+9, len(r.toks)-1) && r.toks[k-1].brk < brkSentence; k++ {
		if w := r.toks[k].s; w == "once" && !r.nextKind(k).is(wDeterminer|wSubject|wPronoun) || w == "one" && r.toks[k+1].s == "time" {
			return true
		}
	}
	return false
}

// tellsFigure tells whether a clause gives a value as somebody's word: "the bloke at the tyre
// place said ninety newton metres".
func (r *reading) tellsFigure(c *clause) bool {
	for _, qi := range c.qtys {
		if q := &r.qtys[qi]; q.Kind == normalize.Torque {
			for i := c.lo; i < q.lo; i++ {
				if w := r.toks[i].s; w == "said" || w == "told" || w == "reckoned" {
					return true
				}
			}
		}
	}
	return false
}

// goesOn tells whether clause k still belongs to the story told in clause ci.
func (r *reading) goesOn(k, ci int) bool {
	c, of := &r.clauses[k], &r.clauses[ci]
	if c.sentence != of.sentence && (turnsBack.has(r.toks[c.lo].s) || r.since(of.lo, c.lo) > 40) {
		return false
	}
	switch r.tense(c) {
	case past:
		return true
	case untold:
		return c.sentence == of.sentence || c.hi-c.lo <= 4 && !r.goesBackOn(c) || k > ci && c.sentence == r.clauses[k-1].sentence
	}
	return false
}

// goesBackOn tells of "Battery back in.", which is told of the work at hand.
func (r *reading) goesBackOn(c *clause) bool {
	n := c.hi - 1
	return n-c.lo >= 2 && r.toks[n-1].s == "back" && r.toks[n-2].men >= 0 && (r.toks[n].s == "in" || r.toks[n].s == "on")
}

// turnsBack are the words by which a sentence turns from a story to the work.
var turnsBack = set("anyway anyhow right okay ok now back here there this these look where so then next")

const (
	untold  = iota // no verb says when
	past           // it was
	present        // it is, or is to be
)

// tense tells when what a clause tells takes place, by its first verb that says so.
func (r *reading) tense(c *clause) int {
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		switch {
		case r.toks[i].men >= 0:
		case pastWords.has(w), strings.HasSuffix(w, "ed") && len(w) > 4 && len(r.lex.Lemmas(w)) > 0:
			return past
		case presentWords.has(w) && i+1 < c.hi:
			return present
		}
	}
	return untold
}

var (
	pastWords    = set("was were had did took got came went cracked broke fell ran found said told made bought gave left kept lost hit drove wrote built slid stood sat held brought thought knew used didn't wasn't weren't hadn't couldn't tore bent wore blew sheared")
	presentWords = set("is are 'm 're 've 'll have has will am don't doesn't can won't isn't aren't i'm you're it's that's we're gonna going want need")
)
