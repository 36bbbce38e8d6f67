package extract

import (
	"cmp"
	"slices"
	"strings"
)

// weakActs are done to so much else that without a named thing they are no step.
var weakActs = set("adjust test inspect press hammer wait store apply cover support cut drill measure cool heat switch mark repeat discard clean fill drain lubricate")

// steps turns what happened into instructions, one an act; what is told again is told once.
func (r *reading) steps() []Step {
	out := []Step{}
	type told struct {
		key      string
		at       int
		k        int
		explicit bool
		named    bool   // nothing was said but the thing
		of       *thing // where it is of one
	}
	var recent []told
	last := map[*thing]lastTold{}
	var before *act          // the last step with a thing
	unsure := map[int]*act{} // steps whose thing is only the likeliest of several
	valueAt := map[int]*heard{}
	either := map[*heard]*heard{} // "five newton metres, I think it was, or eight"
	for i := range r.heard {
		if h := &r.heard[i]; !h.dropped && !r.setInstead(i) { // what was taken back is no instruction
			if first := valueAt[r.qtys[h.qty].cl]; first != nil && first.of == h.of && h.rule == inAnotherUnit && first.applied == h.applied {
				continue // "ten newton metres, or eighty nine inch pounds": as it was said first
			}
			if i > 0 && r.oneOrTheOther(&r.heard[i-1], h) {
				either[h] = &r.heard[i-1]
				delete(valueAt, r.qtys[r.heard[i-1].qty].cl)
			}
			valueAt[r.qtys[h.qty].cl] = h
		}
	}
	emit := func(text, key, action, rule string, ts []*thing, lo, hi int, off, explicit, again, named, guessed bool) int {
		if text == "" {
			return -1
		}
		if n := len(recent) - 1; n >= 0 && recent[n].named && !named && explicit && len(ts) == 1 && recent[n].of == ts[0] && r.since(recent[n].at, lo) < 15 && left[action] != "" && !again {
			// it was only named before: now it is told what is done
			old := &out[recent[n].k]
			if with := parenthesis(old.Text); with != "" && !strings.Contains(text, with) && !strings.Contains(text, "(") && len(strings.Fields(text)) < 14 {
				text = strings.TrimSuffix(text, ".") + " " + with + "."
			}
			old.Text, old.End = text, round3(r.at(hi-1))
			recent[n] = told{key: key, at: lo, k: recent[n].k, explicit: true, of: ts[0]}
			return recent[n].k
		}
		for i := len(recent) - 1; i >= 0; i-- {
			if i < len(recent)-40 {
				break // long ago
			}
			if recent[i].key == key && otherValue(text, out[recent[i].k].Text) && r.since(recent[i].at, lo) >= 10 {
				continue // in a second stage
			}
			if (recent[i].key == key || out[recent[i].k].Text == text && r.since(recent[i].at, lo) < 6) && r.since(recent[i].at, lo) < 20 && !(explicit && recent[i].explicit && !hasValue(text) && !hasValue(out[recent[i].k].Text) && (!sameVerb(text, out[recent[i].k].Text) || otherWay(text, out[recent[i].k].Text))) {
				// told again: the fuller telling stays
				recent[i].at = lo
				old := &out[recent[i].k]
				if hasValue(text) && hasValue(old.Text) {
					// the first value stays: it is the one that is quoted
				} else if guessed && !strings.Contains(text, " with ") {
					// what moved by itself and was not named: it tells no more of it
				} else if hasValue(text) != hasValue(old.Text) && !hasValue(old.Text) || hasValue(text) == hasValue(old.Text) && len(strings.Fields(text)) > len(strings.Fields(old.Text)) && len(strings.Fields(text)) <= 20 {
					old.Text = text
				}
				if recent[i].named && !named && r.at(lo)-old.At < 12 {
					old.Place = r.place(lo, hi).by(rule)
				}
				recent[i].named = recent[i].named && named
				recent[i].explicit = recent[i].explicit || explicit
				out[recent[i].k].End = round3(r.at(hi - 1))
				return recent[i].k
			}
		}
		if again {
			return -1
		}
		phase := phaseOf[action]
		if action == "test" && handled.has(strings.ToLower(firstWord(text))) {
			phase = ""
		}
		st := Step{N: len(out) + 1, Text: text, Phase: phase, Place: r.place(lo, hi).by(rule), End: round3(r.at(hi - 1)), OffCamera: off, LedgerIDs: []string{}}
		for _, t := range ts {
			if t.id != "" {
				st.LedgerIDs = append(st.LedgerIDs, t.id)
			}
		}
		t := told{key: key, at: lo, k: len(out), explicit: explicit, named: named}
		if len(ts) == 1 {
			t.of = ts[0]
		}
		recent = append(recent, t)
		out = append(out, st)
		return len(out) - 1
	}
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if c.chatter || r.promises(ci) {
			continue
		}
		done := false
		acts := slices.Clone(c.acts)
		slices.SortStableFunc(acts, func(x, y int) int { return cmp.Compare(r.startOf(&r.acts[x]), r.startOf(&r.acts[y])) })
		for _, ai := range acts {
			a := &r.acts[ai]
			if r.noStep(c, a) {
				continue
			}
			hi := c.hi
			for _, oi := range c.acts {
				if lo := r.startOf(&r.acts[oi]); oi != ai && lo > a.lo && lo >= a.hi && lo < hi {
					hi = lo
				}
			}
			text := r.stepText(c, a, hi)
			if h, named := valueAt[ci], r.wordsFor(c, a); h != nil && h.applied == "done" {
				if !named {
					continue // what was set is told by its value
				}
			} else if !r.tells(ai, text, named) {
				continue
			}
			again := r.retold(a, last)
			text = r.onWhat(text, a, before)
			for _, w := range []string{" on.", " in."} {
				if t, ok := strings.CutSuffix(text, w); ok && a.action.Name == "inspect" && !strings.Contains(t, " with ") {
					text = t + "." // "look at the wear on that"
				}
			}
			if a.verb >= 0 && !a.subject && hi == c.hi {
				text = r.withEnd(text, ci)
			}
			if text != "" && a.action.Name == "fit" && len(a.things) == 1 && len(strings.Fields(text)) < 16 && !endsUnnamed(text) {
				if o := strings.ToLower(r.orientation(ci, a.things[0])); tellsTurned(o) && !strings.HasPrefix(o, a.things[0].head) && !tellsWay(text, o) {
					text = trimStep(strings.TrimSuffix(text, ".")+", "+o) + "."
				}
			}
			text = fluent(r.turnedRound(text, c, a))
			if len(a.things) > 0 {
				before = a
			}
			h := valueAt[ci]
			if h != nil && a.action.Name == "start by hand" && (!slices.Contains(a.things, h.of) || a.byHand && r.lemma1(r.toks[max(a.verb, 0)].s) != "snug") {
				h = nil
			}
			if h != nil && h.of != nil && (a.action.Name == "torque" || a.action.Name == "tighten" || a.action.Name == "adjust" || a.action.Name == "start by hand" || (a.action.Name == "fit" || a.action.Name == "lift") && (len(a.things) == 0 || slices.Contains(a.things, h.of))) {
				if h.applied == "done" {
					text = r.torqueText(h, either[h])
					done = true
				}
			}
			key := a.action.Name
			switch key {
			case "disconnect":
				key = "remove"
			case "torque":
				key = "tighten"
			}
			for _, t := range a.things {
				key += "|" + t.name + t.side
			}
			if len(a.things) == 0 {
				key += "|" + strings.ToLower(text)
			}
			if r.toMachine(c, a) {
				key, again = a.action.Name+"|the machine", false
			}
			if done && h != nil {
				key = r.tightenKey(h)
			}
			next := len(out)
			switch k := emit(text, key, a.action.Name, a.rule, a.things, a.lo, max(a.hi, min(hi, a.lo+14)), a.mood&offCamera != 0, a.verb >= 0 && !a.subject, again, a.heads, a.subject && len(a.objects) == 0); {
			case k == next && a.unsure && !done:
				unsure[k] = a
			case k >= 0 && !a.unsure:
				delete(unsure, k) // it was named
			}
		}
		if h := valueAt[ci]; h != nil && !done && h.of != nil && h.applied == "done" {
			q := &r.qtys[h.qty]
			emit(r.torqueText(h, either[h]), r.tightenKey(h), "torque", "value set, no verb", []*thing{h.of}, max(c.lo, q.lo-6), q.hi, false, false, false, false, false)
		}
	}
	for k, a := range unsure {
		out[k].Text = r.doubting(out[k].Text, a)
	}
	slices.SortStableFunc(out, func(a, b Step) int {
		return cmp.Or(cmp.Compare(a.Clip, b.Clip), cmp.Compare(a.At, b.At))
	})
	for i := range out {
		out[i].N = i + 1
	}
	settlePhases(out)
	return out
}

// tightenKey tells a tightening from others of the same thing: each go of one in stages
// is a step of its own.
func (r *reading) tightenKey(h *heard) string {
	key := "tighten|" + h.of.name + h.of.side
	if q := &r.qtys[h.qty]; h.stage > 1 && q.Low != nil {
		key += "|" + q.Low.RatString() + q.Unit
	}
	return key
}

// onWhat names what "it" at the end of a step is, where the step before was done
// to one thing in the same breath: "clean the shaft and put one drop of oil on it".
func (r *reading) onWhat(text string, a, before *act) string {
	s, ok := strings.CutSuffix(text, " it.")
	if !ok || before == nil || len(a.objects) == 0 || len(before.things) != 1 || r.clauses[before.cl].sentence != r.clauses[a.cl].sentence || r.since(before.lo, a.lo) > 8 {
		return text
	}
	t := before.things[0]
	if w := s[strings.LastIndexByte(s, ' ')+1:]; !prepositions.has(w) || t.plural || t.name == "" || t.fastener && (w == "in" || w == "into") || slices.Contains(a.things, t) {
		return text
	}
	return s + " the " + t.name + "."
}

// tellsTurned tells whether words say which feature of a thing is turned where: "lip facing
// out", and no more than "side up".
func tellsTurned(way string) bool {
	f := strings.Fields(way)
	return len(f) > 1 && f[0] != "side" && slices.ContainsFunc(f[1:], turned.has)
}

// tellsWay tells whether a step says already which way round its thing goes.
func tellsWay(text, way string) bool {
	n := 0
	f := strings.Fields(way)
	for _, w := range f {
		if strings.Contains(text, w) {
			n++
		}
	}
	return 2*n > len(f)
}

// withEnd adds to a step how its end is known, where the next words say so: "until
// it drags".
func (r *reading) withEnd(text string, ci int) string {
	if text == "" || ci+1 >= len(r.clauses) {
		return text
	}
	n := &r.clauses[ci+1]
	if w := r.toks[n.lo].s; w != "until" && w != "till" && w != "til" && w != "if" || n.hi-n.lo < 3 || n.hi-n.lo > 12 || r.toks[n.lo-1].brk >= brkSentence || n.sentence != r.clauses[ci].sentence || len(strings.Fields(text)) > 14 || endsUnnamed(text) || strings.HasSuffix(text, "by hand only.") || n.mood&notWork != 0 {
		return text
	}
	for i := n.lo; i < n.hi; i++ {
		if s := r.toks[i].s; s == "i" || s == "i'm" || s == "my" || s == "me" || s == "and" || s == "but" {
			return text
		}
	}
	if l := r.toks[n.hi-1]; l.brk < brkComma && danglers.has(l.s) && l.s != "it" {
		return text // "until the van just |"
	}
	return strings.TrimSuffix(text, ".") + " " + strings.TrimRight(strings.ToLower(r.text(n.lo, n.hi)), ",.;: ") + "."
}

// parenthesis gives what stands in parentheses at the end of a step, with them.
func parenthesis(text string) string {
	if i := strings.LastIndexByte(text, '('); i > 0 && strings.HasSuffix(text, ").") {
		return strings.TrimSuffix(text[i:], ".")
	}
	return ""
}

// handled are the verbs of trying a thing that are as often part of other work.
var handled = set("squeeze wiggle rock shake tug pull pump")

func firstWord(s string) string {
	w, _, _ := strings.Cut(s, " ")
	return w
}

// otherValue tells whether two steps say how tight in one unit and differ.
func otherValue(a, b string) bool {
	value := func(s string) (string, string) {
		for _, u := range []string{"N·m", "lbf·ft", "lbf·in", "kgf·m", "kgf·cm"} {
			if i := strings.Index(s, " "+u); i > 0 {
				return s[strings.LastIndexByte(s[:i], ' ')+1 : i], u
			}
		}
		return "", ""
	}
	na, ua := value(a)
	nb, ub := value(b)
	return ua != "" && ua == ub && na != nb
}

// hasValue tells whether a step says how tight.
func hasValue(s string) bool {
	return strings.Contains(s, "·") || strings.Contains(s, "degrees further")
}

// otherWay tells whether two tellings send a thing different ways: "slide the fan
// down", "slide the fan up into the spigot".
func otherWay(a, b string) bool {
	way := func(s string) string {
		for _, w := range strings.Fields(strings.TrimSuffix(s, ".")) {
			switch w {
			case "up", "in", "on", "back", "into", "onto":
				return "to"
			case "down", "out", "off", "away", "forward":
				return "from"
			}
		}
		return ""
	}
	return way(a) != "" && way(b) != "" && way(a) != way(b)
}

func sameVerb(a, b string) bool {
	return firstWord(a) == firstWord(b)
}

// left is how an action leaves a thing, as far as telling it again goes.
var left = map[string]string{"remove": "off", "disconnect": "off", "slacken": "loose", "fit": "on", "replace": "on", "start by hand": "by hand", "tighten": "tight", "torque": "tight", "discard": "gone"}

// leads are the ways of leaving a thing that make telling another of it idle:
// what is off is no longer told to be loose.
var idle = map[string]string{"loose": "off", "on": "by hand tight", "by hand": "tight", "off": "gone"}

// lastTold is how a thing was left when a step last told of it.
type lastTold struct {
	left string
	at   int
}

// retold tells whether an act only says of its things how they were left shortly
// before: "the wheel's off". last is brought up to date.
func (r *reading) retold(a *act, last map[*thing]lastTold) bool {
	now := left[a.action.Name]
	if now == "" || len(a.things) == 0 {
		return false
	}
	again := a.subject
	for _, t := range a.things {
		was := last[t]
		again = again && was.left != "" && (was.left == now || strings.Contains(idle[now], was.left)) && r.since(was.at, a.lo) < 10
		last[t] = lastTold{now, a.lo}
	}
	return again
}

// startOf is the token at which an act begins, the thing before its verb included.
func (r *reading) startOf(a *act) int {
	lo := a.lo
	if a.subject {
		for _, mi := range a.objects {
			lo = min(lo, r.mentions[mi].from)
		}
	}
	return lo
}

// promises tells whether a clause promises something to viewers.
func (r *reading) promises(ci int) bool {
	for _, o := range r.clauses[ci].opens {
		if o.signal == "promise" && !r.physical(ci, o) {
			return true
		}
	}
	return false
}
