package extract

import "wrenchword/extract/lexicon"

// smallStores are what small parts are kept in while they are off.
var smallStores = wordsOf("what small parts are kept in")

// intoKeep gives the token after "in this tin", "into the ice cream tub" or "in my
// pocket" at k, 0 where no such thing stands there.
func (r *reading) intoKeep(c *clause, k int) int {
	if w := r.word(k); k+1 >= c.hi || w != "in" && w != "into" && w != "inside" {
		return 0
	}
	for i := k + 1; i < min(c.hi, k+7) && r.toks[i-1].brk < brkComma; i++ {
		w := r.toks[i].s
		if smallStores.has(w) && (i+1 >= c.hi || r.toks[i].men < 0 || r.toks[i+1].men != r.toks[i].men) {
			return i + 1
		}
		if r.toks[i].is(wLinking) || prepositions.has(w) || w == "and" {
			return 0
		}
	}
	return 0
}

// betweenKept are the words between things and what they are kept in.
var betweenKept = set("all both everything they they're that's these those go goes going gone straight safe safely together it too also back over away now lot the then and")

// stowed reads "so, screw, nut, catcher, all in this tin" and "bracket, two bolts,
// they're in the tray": what came off and lies somewhere, with no verb that takes it off.
func (r *reading) stowed(ci int) {
	c := &r.clauses[ci]
	if len(c.mentions) == 0 || len(c.acts) > 0 || c.mood&notWork != 0 || ci < r.toolList[1] {
		return
	}
	x := act{action: r.lex.Action("store"), lo: c.lo, verb: -1, subject: true, rule: "thing and where it is kept"}
	named, at := c, c.lo
	if w := r.toks[c.lo].s; ci > 0 && (w == "they" || w == "they're" || w == "all" || w == "that" || w == "that's" || w == "it" || w == "it's") {
		if named = &r.clauses[ci-1]; named.sentence != c.sentence || named.mood&notWork != 0 {
			return
		}
		for _, ai := range named.acts {
			if r.acts[ai].verb >= 0 {
				return
			}
		}
	}
	for _, mi := range named.mentions {
		m := &r.mentions[mi]
		if m.prep == "in" || m.prep == "into" || m.prep == "inside" {
			break
		}
		if m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.kind&lexicon.Tool != 0 || m.isNew || m.prep != "" || !r.beginsPiece(named, m) {
			return
		}
		x.objects = append(x.objects, mi)
		if named == c {
			at = m.hi
		}
	}
	if len(x.objects) == 0 {
		return
	}
	for at < c.hi && (betweenKept.has(r.toks[at].s) || at > c.lo && r.toks[at].is(wLinking) && betweenKept.has(r.toks[at-1].s)) {
		at++ // "the screws are in the tub" tells where to find them
	}
	if x.hi = r.intoKeep(c, at); x.hi > 0 {
		r.addAct(ci, x)
	}
}

// keptOff tells whether an act puts something where things are kept that are off: it
// came off, though nobody said so.
func (r *reading) keptOff(a *act) bool {
	if r.ofNew(a) {
		return false
	}
	c := &r.clauses[a.cl]
	for k := a.lo; k < c.hi; k++ {
		if r.intoKeep(c, k) > 0 {
			return true
		}
	}
	return false
}

// restAt are where things lie that are off, and where nothing of a machine is.
var restAt = wordsOf("where nothing of a machine is")

// restFar are the same only where a thing is said to be there still, or away from the work, or
// of the seat in a car.
var restFar = wordsOf("where things are away from the work")

// liesVerbs are the verbs of what lies somewhere.
var liesVerbs = set("'s is are 're stays stay sits sit lies lie stands lives")

// liesAway reads "the guard, that orange thing, that's still over there under the bench" and
// "Panel's on the back seat": what lies where nothing of the machine is came off, though
// nobody said so.
func (r *reading) liesAway(ci int) {
	c := &r.clauses[ci]
	if c.mood&(notWork|announced) != 0 || ci < r.toolList[1] || len(c.acts) > 0 {
		return
	}
	for v := c.lo; v < c.hi; v++ {
		if !liesVerbs.has(r.toks[v].s) || r.toks[v].brk >= brkComma {
			continue
		}
		end := r.restsAt(c, v+1)
		if end == 0 {
			continue
		}
		if mi := r.whatLies(ci, v); mi >= 0 {
			x := act2(r.lex.Action("leave off"), c.lo, end, mi)
			x.rule = "thing and where it lies"
			r.addAct(ci, x)
		}
		return
	}
}

// restsAt gives the token after "still over there under the bench" at i, 0 where no such
// thing stands there.
func (r *reading) restsAt(c *clause, i int) int {
	away := false
	for i < c.hi {
		switch w := r.toks[i].s; w {
		case "now", "all", "both", "just", "here":
		case "still", "already", "over", "there", "back", "out", "sitting", "lying", "laying":
			away = true
		case "on", "in", "under":
			for k := i + 1; k < min(c.hi, i+5) && r.toks[k-1].brk < brkComma; k++ {
				w := r.toks[k].s
				switch {
				case restAt.has(w) && !(k+1 < c.hi && r.toks[k].brk < brkComma && (r.toks[k+1].men >= 0 && r.toks[k+1].men == r.toks[k].men || r.next(k) == "vice" || r.next(k) == "vise")):
					return k + 1
				case restFar.has(w):
					if away || w == "floor" && r.prev(k) == "the" && r.toks[i].s == "on" || w == "seat" && (r.toks[k-1].s == "back" || r.toks[k-1].s == "front" || r.toks[k-1].s == "passenger") {
						return k + 1
					}
					return 0
				case r.toks[k].is(wLinking) || prepositions.has(w) || w == "and":
					return 0
				}
			}
			return 0
		default:
			return 0
		}
		i++
	}
	return 0
}

// whatLies gives what is said to lie somewhere by a verb at v: what stands right before it, or
// "that" or "it" after the only thing named in the sentence so far; -1 where it is not known.
func (r *reading) whatLies(ci, v int) int {
	c := &r.clauses[ci]
	named := c.mentions
	pron := v > c.lo && r.toks[v-1].men < 0
	if pron {
		switch w := r.toks[v-1].s; w {
		case "that", "it", "they", "those", "these":
		default:
			return -1
		}
		if v-1 == c.lo && ci > 0 {
			if p := &r.clauses[ci-1]; p.sentence == c.sentence && len(p.acts) == 0 && p.mood&notWork == 0 {
				c, named = p, p.mentions
			}
		}
	}
	if len(named) == 0 {
		return -1
	}
	m := &r.mentions[named[0]]
	if m.from >= v || m.kind&(lexicon.Fastener|lexicon.Part) == 0 || m.isNew || m.head == unsaid || m.head == "key" || wholes.has(m.head) || !r.opens(c, m) || !pron && m.hi != v {
		return -1
	}
	return named[0]
}
