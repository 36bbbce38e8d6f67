package extract

import (
	"maps"
	"slices"
	"strings"

	"wrenchword/extract/lexicon"
)

// An odd one is one of several that fared otherwise than the rest: "the fourth one snapped",
// "only two, the third's the stripped hole", "the last one's only finger tight".
type oddOne struct {
	t        *thing
	sentence int // the sentence that tells it
}

// faresAs are the words by which one of several fares otherwise than the rest.
var faresAs = map[string]string{
	"snapped": "discard", "sheared": "discard", "broke": "discard", "broken": "discard", "rounded": "discard",
	"bin": "discard", "scrap": "discard", "bits": "discard", "binned": "discard", "rubbish": "discard", "garbage": "discard",
	"missing": "leave off", "gone": "leave off", "lost": "leave off", "vanished": "leave off", "rolled": "leave off",
	"stripped": "", "spinning": "", "spins": "",
}

// faredOtherwise is the rule of what became of it, oneOfThem its place where no word tells which.
const (
	faredOtherwise = "one of them fared otherwise"
	oneOfThem      = "one"
)

// oddOne tells one of several apart from the rest where a clause says how that one fared.
func (s *tracker) oddOne(ci int) {
	r := s.r
	c := &r.clauses[ci]
	if c.mood&(conditional|hypothetical|other|asked|aside|greeting|listing|announced|warned) != 0 {
		return
	}
	which, at, end := r.singles(c)
	if end == 0 {
		return
	}
	if which != oneOfThem {
		s.nth, s.nthAt = which, at
	} else if s.nth != "" && r.since(s.nthAt, at) < 20 {
		which = s.nth // "This last one I can't get at. So that one stays finger tight."
	}
	all := s.severalBefore(c, at)
	if all == nil {
		return
	}
	how, word, lo := "", "", 0
	for i := end; i < len(r.toks) && i < end+14 && r.clauses[r.toks[i].cl].sentence == c.sentence && lo == 0; i++ {
		if m := r.toks[i].men; m >= 0 && r.mentions[m].entry != nil && r.mentions[m].entry != all && r.mentions[m].prep == "" {
			break
		}
		w := r.toks[i].s
		switch p := r.toks[i-1].s; {
		case p == "not" || p == "n't" || p == "nearly" || p == "almost" || p == "until" || p == "'ll" || p == "no":
		case w == "turn" || w == "turned":
			return // "I can turn that one by hand": how it was found
		case handAt(r, i, len(r.toks)) && !r.beyondHand(i, len(r.toks)):
			how, lo = "start by hand", i
		default:
			if h, ok := faresAs[w]; ok && (h != "leave off" || i-end < 4) && (w != "bin" && w != "scrap" || p == "'s" || p == "the" || p == "is" || p == "for") && (w != "rolled" || r.next(i) == "off" || r.next(i) == "away" || r.next(i) == "under") {
				how, word, lo = h, w, i
			}
		}
	}
	if lo == 0 {
		return
	}
	switch st := r.lastState(all); {
	case which == oneOfThem && how != "discard" && (how != "leave off" || word == "gone"):
		return
	case how == "" && word == "stripped" && r.next(lo) == "hole":
		how = "leave off"
	case how == "" && (st == Refitted || st == HandTight || st == Tightened || st == Torqued):
		how = "fit"
	case how == "" || how == "start by hand" && (st == Removed || st == "" || st == Loosened):
		return
	}
	told := event{action: how, act: -1, rule: faredOtherwise, lo: lo, hi: lo + 1}
	for _, t := range s.odds {
		if t.of == all && strings.HasPrefix(t.place, which) && which != oneOfThem {
			t.events = append(t.events, told)
			s.odd = oddOne{t, c.sentence}
			return
		}
	}
	switch word {
	case "snapped", "sheared", "broken", "rounded", "stripped", "missing", "lost":
		which = strings.TrimSpace(which + " " + word)
	}
	t := &thing{name: all.name, head: all.head, mods: maps.Clone(all.mods), owner: all.owner, fastener: all.fastener, side: all.side, place: which, count: 1, first: at, last: lo, of: all}
	t.events = append(t.events, told)
	s.odd = oddOne{t, c.sentence}
	s.odds = append(s.odds, t)
}

// singles gives the word by which a clause tells one of several apart and where that stands:
// "the fourth one", "that one", "one of them"; end is 0 where it tells none apart.
func (r *reading) singles(c *clause) (which string, at, end int) {
	for i := c.lo; i < c.hi; i++ {
		w, n := r.toks[i].s, r.next(i)
		if i+1 >= c.hi {
			return "", 0, 0
		}
		if m := r.toks[i+1].men; m >= 0 {
			k := &r.mentions[m]
			named := k.kind&lexicon.Fastener != 0 && !k.plural && k.count < 2 && k.prep == ""
			if named && r.nth(i) && i > c.lo && r.toks[i-1].is(wDeterminer) {
				return w, i, k.hi
			}
		}
		switch {
		case r.nth(i) && n == "one" && (i > c.lo && r.toks[i-1].is(wDeterminer) || r.beginsPieceAt(c, i)):
			return w, i, i + 2
		case r.nth(i) && w != "last" && w != "first" && i > c.lo && r.toks[i-1].s == "the" && r.toks[i+1].is(wLinking):
			return w, i, i + 1
		case w == "one" && (n == "'s" || n == "is") && r.word(i+2) == "missing" && r.beginsPieceAt(c, i):
			return oneOfThem, i, i + 2 // "and one's missing"
		case (w == "that" || w == "this") && n == "one":
			return oneOfThem, i, i + 2
		case w == "one" && n == "of" && (r.word(i+2) == "them" || r.word(i+2) == "those" || r.word(i+2) == "'em" || r.word(i+2) == "em" || r.word(i+2) == "these"):
			return oneOfThem, i, i + 3
		}
	}
	return "", 0, 0
}

// beginsPieceAt tells whether something of its own begins in a clause at token i.
func (r *reading) beginsPieceAt(c *clause, i int) bool {
	return i == c.lo || r.begins(i) || r.toks[i-1].is(wOpener)
}

// nth tells whether a word tells which in a row: "fourth".
func (r *reading) nth(i int) bool {
	switch r.toks[i].s {
	case "last", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "tenth", "twelfth":
		return true
	}
	return false
}

// severalBefore gives the fasteners of which there are several that were worked on last before
// a token, or nil.
func (s *tracker) severalBefore(c *clause, at int) *thing {
	r := s.r
	for i := len(s.hand) - 1; i >= 0; i-- {
		t := s.hand[i]
		if r.since(t.last, at) > 45 {
			return nil
		}
		if t.fastener && (len(t.events) > 0 || r.doneBefore(c, t, at)) && t.place == "" {
			if t.many() && len(t.split) == 0 {
				return t
			}
			return nil
		}
	}
	return nil
}

// doneBefore tells whether a clause has work done to a thing before a token: "knock the pins
// through, and one of them broke".
func (r *reading) doneBefore(c *clause, t *thing, at int) bool {
	return slices.ContainsFunc(c.mentions, func(mi int) bool {
		return r.mentions[mi].entry == t && r.mentions[mi].lo < at && r.done(c, mi)
	})
}

// notTheOther tells of "one is in and tight, and the other one I'll find tomorrow": what is said of
// one of several, where the other fares otherwise.
func (r *reading) notTheOther(c *clause, a *act) bool {
	i := r.skipped(c)
	if a.verb < 0 || !a.subject || r.word(i) != "one" && !(r.word(i) == "the" && r.next(i) == "one") {
		return false
	}
	for k := a.hi; k < min(len(r.toks), a.hi+18) && r.clauses[r.toks[k].cl].sentence == c.sentence; k++ {
		switch r.toks[k].s {
		case "other", "others", "rest":
			return r.next(k) != "is" || r.word(k+2) != "too"
		}
	}
	return false
}
