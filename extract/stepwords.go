package extract

import (
	"slices"
	"strconv"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// How a step is worded: an instruction, with what it is done to named.

// doneToWhat names what a participle that stands alone was done to: "bolts in, done up"
// is "do the bolts up".
func (r *reading) doneToWhat(s string, a *act) string {
	v := r.toks[a.verb].s
	name := ""
	switch {
	case len(a.objects) == 1 && r.mentions[a.objects[0]].hi <= a.verb:
		name = r.calledIn(&r.mentions[a.objects[0]])
	case len(a.objects) == 0 && len(a.things) == 1:
		name = shortName(a.things[0].name)
	}
	if name == "" || strings.Contains(s, name) || a.unknown || r.plainVerb(v) || strings.HasSuffix(v, "ing") || !r.toks[a.verb].is(wForm) {
		return s
	}
	first, rest, ok := strings.Cut(s, " ")
	if !ok || !particle.has(strings.TrimRight(firstWord(rest), ",.")) {
		return s
	}
	return first + " the " + name + " " + rest
}

// oneOrTheOther tells whether of two values the second is told as what it may be instead.
func (r *reading) oneOrTheOther(a, b *heard) bool {
	p, q := &r.qtys[a.qty], &r.qtys[b.qty]
	if a.of != b.of || a.dropped || a.applied != "done" && b.applied != "done" || !b.hedged || p.Kind != normalize.Torque || q.Kind != normalize.Torque || p.Unit != q.Unit || q.lo-p.hi > 10 || p.Low.Cmp(p.High) != 0 {
		return false
	}
	for i := p.hi; i < q.lo; i++ {
		if r.toks[i].s == "or" {
			return true
		}
	}
	return false
}

// torqueText words a value that was set, as it was heard, with the one that it may be instead.
func (r *reading) torqueText(h, or *heard) string {
	q := &r.qtys[h.qty]
	s := "Tighten the " + torqueName(h.of)
	var doubts []string
	if q.Kind == normalize.Torque && q.Unit == "" {
		doubts = append(doubts, "unit not said")
	}
	if h.hedged {
		doubts = append(doubts, "said with doubt")
	}
	if or := h.maybeOf(); or != "" {
		doubts = append(doubts, "or the "+or+": not said which")
	}
	switch further := " degrees further"; {
	case or != nil:
		s += " to " + r.qtys[or.qty].Low.RatString() + " or " + Heard(q.Canonical)
	case q.Kind != normalize.Torque:
		s += " " + h.angle.RatString() + further
	case h.angle != nil:
		s += " to " + Heard(q.Canonical) + ", then " + h.angle.RatString() + further
	default:
		s += " to " + Heard(q.Canonical)
	}
	if len(doubts) > 0 {
		s += " (" + strings.Join(doubts, "; ") + ")"
	}
	return s + "."
}

// Heard writes a quantity's canonical form for a person: "45 lbf·ft", "30 to 35 N·m".
func Heard(canon string) string { return unitDots.Replace(canon) }

var unitDots = strings.NewReplacer("N.m", "N·m", "lbf.", "lbf·", "kgf.", "kgf·", "ozf.", "ozf·")

// beginsAnew are the words on which somebody breaks off to begin the phrase anew.
var beginsAnew = set("the a an this that these those my your its to of in on off with behind under over into onto from for at through by and")

// fluent takes out of a step what was begun and said anew, "behind the, behind the bracket"; what
// breaks off without being said anew is no step.
func fluent(text string) string {
	w := strings.Fields(text)
	bare := func(i int) string { return strings.ToLower(strings.TrimRight(w[i], ",.")) }
	for n := 3; n > 0; n-- {
		for i := 0; i+2*n <= len(w); i++ {
			same := beginsAnew.has(bare(i+n-1)) && (n > 1 || bare(i) != "that")
			for k := i; k < i+n && same; k++ {
				same = bare(k) == bare(k+n) || k == i+n-1 && n > 1 && determiner.has(bare(k)) && determiner.has(bare(k+n))
			}
			if same {
				w = slices.Delete(w, i, i+n)
				i--
			}
		}
	}
	if n := len(w); n > 0 && articles.has(bare(n-1)) {
		return ""
	}
	return strings.Join(w, " ")
}

// beginsOther tells whether something else begins at a token in the words of an act: "or the whole
// thing spins", "take the racks out | these just lift", "pull that | the other end's an idler".
func (r *reading) beginsOther(i int) bool {
	n := r.next(i)
	switch w := r.toks[i].s; w {
	case "or":
		if n != "the" && n != "it" && n != "you" && n != "they" && n != "she" && n != "he" && n != "your" {
			return false
		}
		for k := i + 2; k < min(len(r.toks), i+7) && r.toks[k-1].brk < brkSentence; k++ {
			if s := r.toks[k].s; s == "'ll" || s == "will" || s == "can" || r.toks[k].men < 0 && len(s) > 3 && strings.HasSuffix(s, "s") && !strings.HasSuffix(s, "ss") && len(r.lex.Lemmas(s)) > 0 {
				return true
			}
		}
	case "these", "those":
		return r.toks[i].men < 0 && particle.has(r.prev(i)) && (n == "just" || n == "only" || n == "are" || n == "'re" || n == "all" || r.plainVerb(n))
	case "the":
		return pronounsObj.has(r.prev(i)) && r.linkedSoon(i+2, i+5)
	case "and":
		if n != "the" {
			return false
		}
		for k := i + 2; k < min(len(r.toks), i+5); k++ {
			if s := r.toks[k].s; s == "lets" || s == "makes" || s == "gives" || s == "keeps" {
				return true
			}
		}
	}
	return false
}

// stepText words an act as an instruction: the person's own words from the verb
// on where the talk has them in order, else the action and the thing.
func (r *reading) stepText(c *clause, a *act, hi int) string {
	names := r.objectNames(a)
	if len(a.objects) == 0 && len(a.things) == 1 && (a.action.Name == "bleed" || a.action.Name == "fill") && (a.things[0].fastener || small.has(a.things[0].head)) {
		names = "" // "clamp off, bleed it through": no clamp
	}
	switch a.rule {
	case sameAgain:
		if side, ok := r.repeatedOn(a); ok && a.verb < 0 {
			if side == "" {
				side = "other"
			}
			return "Do the same on the " + strings.TrimSuffix(side, " side") + " side."
		}
	case machineUnplugged:
		if r.toks[a.hi-1].s == "isolated" {
			return "Isolate the machine."
		}
		return "Unplug the machine."
	case inTheBath:
		what := "everything"
		if len(a.objects) > 0 || names != "" && a.pronoun != "all" {
			what = "the " + names
		}
		m := &r.mentions[r.toks[a.hi-1].men]
		return "Clean " + what + " in the " + m.name + "."
	case machineUp:
		return "Raise the machine."
	case machineDown:
		return "Lower the machine."
	case "verb support":
		if a.subject && names != "" && r.lemma1(r.toks[max(a.verb, 0)].s) == "be" && r.says1(c, a.verb, "off") {
			return "Raise the " + names + " off the ground."
		}
	case onItsSide:
		return trimStep("Put the "+strings.ToLower(r.text(a.lo, a.hi))) + "."
	case "picture":
		if names != "" {
			return "Take a photo of the " + names + "."
		}
		return "Take a photo."
	case "heat and place":
		if names == "" {
			return "Heat this" + perhaps(a) + "."
		}
		return "Heat the " + names + "."
	case toolInUse:
		return r.usedText(c, a, hi, names)
	case "turn and thing":
		lo := a.lo
		for lo < a.hi-1 && (openers.has(r.toks[lo].s) || dropWords.has(r.toks[lo].s) || r.toks[lo].s == "and") {
			lo++
		}
		turn := strings.ToLower(r.text(lo, a.hi))
		if w := r.toks[lo].s; fractionWord.has(w) && w != "half" {
			turn = "a " + turn
		}
		return trimStep("Turn the "+names+" "+turn) + "."
	case "blow":
		tool := &r.mentions[a.objects[len(a.objects)-1]]
		on := ""
		if len(a.objects) > 1 {
			on = " the " + r.calledIn(&r.mentions[a.objects[0]])
		}
		return trimStep("Tap"+on+" with the "+tool.name) + "."
	case stuffAndPlace:
		if a.action.Name == "apply" {
			return r.dosed(c, a, hi)
		}
	case "thing gets":
		if len(a.objects) < 2 {
			break
		}
		m, o := &r.mentions[a.objects[0]], &r.mentions[a.objects[1]]
		dose := m.hi
		for dose < o.lo && !measured.has(r.toks[dose].s) && !determiner.has(r.toks[dose].s) {
			dose++
		}
		what := strings.ToLower(r.text(dose, o.hi))
		if what == "" {
			what = o.name
		}
		return trimStep("Put "+what+" on the "+r.calledIn(m)+r.tail(c, o.hi, hi)) + "."
	}
	handed := a.byHand && (a.action.Name == "fit" || a.action.Name == "start by hand" || a.action.Name == "tighten")
	if a.verb >= 0 && !a.subject {
		if s := r.ownWords(c, a, hi, names); s != "" && (!handed || tellsByHand(s) && (!strings.HasPrefix(s, "Do ") || strings.Contains(s, " up "))) {
			if s == noStep {
				return ""
			}
			if s = r.doneToWhat(s, a); a.action.Name == "start by hand" && len(strings.Fields(s)) <= 8 && strings.HasPrefix(s, "Start ") && !tellsByHand(s) && !endsUnnamed(s) {
				return strings.TrimSuffix(s, ".") + " by hand."
			}
			return s
		}
	}
	if names == "" && a.unknown && a.subject && a.verb > a.lo {
		hi := a.verb
		for r.toks[hi-1].s == "just" || r.toks[hi-1].s == "then" || r.toks[hi-1].s == "now" {
			hi--
		}
		lo := a.lo
		if definiteWord.has(r.toks[lo].s) && lo < hi-1 {
			lo++
		}
		names = strings.ToLower(r.text(lo, hi))
	}
	if names == "" {
		return ""
	}
	if w := r.toks[a.hi-1].s; (w == "unplugged" || w == "isolated") && a.subject && len(a.objects) == 0 && len(a.things) > 0 && !wired.has(a.things[0].head) {
		names = "machine" // "I'm changing the wheel, and it's unplugged"
	}
	s := a.action.Imperative + " the " + names
	if v, particle := r.doneTo(a); v != "" {
		s = v + " the " + names + particle
	} else if a.action.Name == "start by hand" {
		s = "Start the " + names + " by hand"
	}
	if a.heads && a.action.Name == "remove" && (r.fastenersOnly(a) || len(a.objects) == 0) {
		s = "Undo the " + names
	}
	if a.heads {
		with, on := "", a.hi-1
		if len(a.objects) > 0 {
			on = r.mentions[a.objects[0]].from
		}
		if a.rule == toolThenName {
			lo := a.lo
			for lo < on-2 && (openers.has(r.toks[lo].s) || dropWords.has(r.toks[lo].s) || r.toks[lo].s == "and" || r.toks[lo].s == "a" || r.toks[lo].s == "an" || r.toks[lo].s == "the") {
				lo++
			}
			with = strings.ToLower(r.text(lo, on-1))
		} else {
			with = r.drivenBy(c, a)
		}
		if with != "" {
			s += " (" + with + ")"
		}
	} else if handed {
		s = "Start the " + names + " by hand"
		if len(a.things) > 0 && !a.things[0].fastener || len(a.objects) > 0 && r.mentions[a.objects[0]].kind == lexicon.Tool {
			s = "Fit the " + names + ", by hand only"
		}
	} else if a.subject {
		from := a.hi
		if a.verb >= 0 && from > a.verb+1 && leadsWhere.has(r.toks[from-1].s) || r.placeAt(c, a, from) {
			from-- // "goes under the rail", "comes off with the pliers": where it goes, and with what
		}
		t := r.tail(c, from, hi)
		switch {
		case a.rule == stuffAndPlace && a.action.Name == "clean":
			return r.cleanedWith(c, a, hi)
		}
		if a.action.Name == "place" && t == "" {
			return ""
		}
		if (a.action.Name == "remove" || a.action.Name == "disconnect") && t != "" && r.toks[a.hi-1].brk >= brkComma {
			t = thenKept(t, len(a.things) > 0 && a.things[0].plural)
		}
		s += t
	}
	return trimStep(s) + "."
}

// thenKept gives the words for where what has come off goes then: "key out, in your pocket",
// "the hose is out, in the bin". What else is told after a breath is no place to take it off from.
func thenKept(tail string, plural bool) string {
	it := " it"
	if plural {
		it = " them"
	}
	f := strings.Fields(tail)
	if f[0] != "in" && f[0] != "into" && f[0] != "on" && f[0] != "onto" {
		return tail
	}
	for i, w := range f[1:] {
		switch w = strings.Trim(w, ",."); {
		case bins.has(w):
			return " and discard" + it
		case containers.has(w) || stands.has(w) || w == "pocket" || w == "rack":
			end := i + 2
			for end < len(f) && !strings.HasSuffix(f[end-1], ",") && (containers.has(strings.Trim(f[end], ",.")) || w == "lid") {
				end++ // "the egg cup", "the lid of the tub"
			}
			return " and put" + it + " " + strings.TrimRight(strings.Join(f[:min(end, len(f))], " "), ",")
		case strings.HasSuffix(f[i+1], ","):
			return ""
		}
	}
	return ""
}

// tellsByHand tells whether a step says that it is done with no more than the fingers.
func tellsByHand(s string) bool {
	s = strings.ToLower(s)
	for _, w := range []string{"by hand", "finger", "hand tight", "snug", "loose", "slack"} {
		if strings.Contains(s, w) {
			return true
		}
	}
	return false
}

// placeAt tells whether the particle that an act without a verb ends on leads to
// where its thing goes: "hub back on the stub".
func (r *reading) placeAt(c *clause, a *act, from int) bool {
	if a.verb >= 0 || a.action.Name != "fit" || from <= a.lo || from >= c.hi || !onWords.has(r.toks[from-1].s) || r.toks[from-1].brk >= brkComma || !articles.has(r.toks[from].s) && !definiteWord.has(r.toks[from].s) {
		return false
	}
	ci := r.toks[c.lo].cl
	for _, mi := range c.mentions {
		if m := &r.mentions[mi]; m.from == from {
			return !r.inAct(int(ci), mi) && m.kind&(lexicon.Part|lexicon.Fastener) != 0
		}
	}
	return false
}

// dosed words "smear of grease on the axle": how much of what goes where.
func (r *reading) dosed(c *clause, a *act, hi int) string {
	m := &r.mentions[a.objects[0]]
	var w []string
	for i := a.lo; i < max(m.lo, m.hi-len(strings.Fields(m.name))); i++ {
		if s := r.toks[i].s; (r.toks[i].men < 0 || measured.has(s)) && !newly.has(s) && !dropWords.has(s) && !openers.has(s) && s != "and" && s != "the" && firstPerson[s] == "" && !(len(w) == 0 && (s == "of" || s == "that" || s == "this" || s == "then")) {
			w = append(w, s)
		}
	}
	if n := len(w); n > 0 && doses.has(w[n-1]) {
		w = append(w, "of") // "a drop of the blue"
	}
	if m.isNew {
		w = append(w, "new")
	}
	what := strings.Join(append(w, m.name), " ")
	if len(w) > 0 && single.has(w[0]) {
		what = "a " + what
	}
	if where := r.tail(c, a.hi, hi); where != "" {
		return trimStep("Put "+what+where) + "."
	}
	if it := r.next(a.hi); a.there != nil && a.hi+1 < hi && r.endsOnPronoun(a.hi+1, hi) {
		if a.thereSure {
			return trimStep("Put "+what+" "+r.word(a.hi)+" the "+a.there.name) + "."
		}
		return trimStep("Put "+what+" "+r.word(a.hi)+" "+itOrThem(it)) + thatMaybe(a.there) + "."
	}
	if n := r.next(a.hi); r.word(a.hi) == "on" && (n == "each" || n == "both") {
		return trimStep("Put "+what+" on "+n) + "."
	}
	if a.hi < hi && r.toks[a.hi-1].brk == brkComma && (r.next(a.hi) == "only" || a.hi+1 == hi) && (r.toks[a.hi].men >= 0 && r.mentions[r.toks[a.hi].men].kind&lexicon.Tool == 0 || takesThings.has(r.word(a.hi))) {
		return trimStep("Put "+what+" on the "+r.word(a.hi)) + "." // "smear of grease, threads only"
	}
	return trimStep("Apply "+what) + "."
}

// doseAt tells whether at token i begins how much of some stuff that an act is not done with.
func (r *reading) doseAt(i, end int, a *act) bool {
	if p := r.toks[i-1].s; prepositions.has(p) || p == "and" || articles.has(p) || measured.has(p) || doses.has(p) {
		return false
	}
	dosed := false
	for k := i; k < min(end, i+6); k++ {
		if mi := int(r.toks[k].men); mi >= 0 {
			return dosed && r.mentions[mi].kind&lexicon.Consumable != 0 && !slices.Contains(a.objects, mi)
		}
		switch w := r.toks[k].s; {
		case doses.has(w) || w == "bit":
			dosed = true
		case !articles.has(w) && !measured.has(w) && w != "of":
			return false
		}
	}
	return false
}

// single are the words for a dose that want an article.
var single = set("drop dab smear squirt touch blob wipe lick spot bead film wrap dash shot bit coat layer light thin small tiny little")

// cleanedWith words "brake cleaner both sides of the disc": what is cleaned, and with what.
func (r *reading) cleanedWith(c *clause, a *act, hi int) string {
	where := strings.TrimSpace(r.tail(c, a.hi, hi))
	for _, p := range []string{"all ", "on ", "over ", "in ", "round ", "around ", "through ", "down "} {
		where = strings.TrimPrefix(where, p)
	}
	if where != "" {
		where += " "
	}
	return trimStep("Clean "+where+"with "+r.mentions[a.objects[0]].name) + "."
}

// endsTail are the words that begin something of its own after a comma.
var endsTail = set("bit quite couple loads plenty lots only just not no about thank so like which look easy nice lovely")

// doneTo gives the verb of "is chocked", "are getting pressed out" as an
// instruction has it, and the particle that goes with it; "" where there is none.
func (r *reading) doneTo(a *act) (verb, particle string) {
	if !a.subject || a.verb < 0 || a.heads || a.byHand {
		return "", ""
	}
	switch a.action.Name {
	case "support", "remove", "fit", "lubricate", "clean", "switch off", "slacken", "disconnect":
	default:
		return "", ""
	}
	if l := r.lemma1(r.toks[a.verb].s); l != "be" && l != "get" {
		return "", ""
	}
	for i := a.verb + 1; i < a.hi; i++ {
		w := r.toks[i].s
		if !strings.HasSuffix(w, "ed") {
			continue
		}
		for _, l := range r.lex.Lemmas(w) {
			if n := r.next(i); i+1 < a.hi && (offWords.has(n) || onWords.has(n) || n == "up") {
				particle = " " + n
			}
			return strings.ToUpper(l[:1]) + l[1:], particle
		}
	}
	return "", ""
}

// leadsWhere are the words of an act that lead to what is told with it.
var leadsWhere = set("under underneath behind between across with into onto over through against round around")

func (r *reading) fastenersOnly(a *act) bool {
	for _, mi := range a.objects {
		if r.mentions[mi].kind&lexicon.Fastener == 0 {
			return false
		}
	}
	return len(a.objects) > 0
}

// drivenBy gives the words for what turns a thing that is only named: "eighteen mil
// spanner", said in its clause or the next.
func (r *reading) drivenBy(c *clause, a *act) string {
	from := a.lo
	if n := len(a.objects); n > 0 {
		from = r.mentions[a.objects[n-1]].hi
	}
	for k := int(r.toks[c.lo].cl); k < min(len(r.clauses), int(r.toks[c.lo].cl)+2); k++ {
		n := &r.clauses[k]
		lo, hi := -1, -1
		for i := max(n.lo, from); i < n.hi; i++ {
			t := r.toks[i].men
			if sized := r.toks[i].qty >= 0 && r.qtys[r.toks[i].qty].Kind != normalize.Duration; sized || t >= 0 && r.mentions[t].kind&(lexicon.Tool|lexicon.Part) == lexicon.Tool {
				if lo < 0 {
					lo = i
				}
				hi = i + 1
			} else if lo >= 0 {
				break
			}
		}
		for lo > n.lo && lo > from && r.toks[lo-1].men < 0 && (numberWord.has(r.toks[lo-1].s) || countOf[r.toks[lo-1].s] > 1 || r.toks[lo-1].s[0] >= '0' && r.toks[lo-1].s[0] <= '9') {
			lo-- // "seventeen ring spanner"
		}
		for lo >= 0 && lo < hi-1 && articles.has(r.toks[lo].s) {
			lo++
		}
		if lo >= 0 && hi-lo <= 6 {
			for i := hi - 2; i >= lo; i-- {
				if r.toks[i].brk >= brkComma && r.toks[i].qty < 0 && r.toks[i].men < 0 {
					lo = i + 1 // "there's three, allen of three": no count
					break
				}
			}
			return strings.ToLower(r.text(lo, hi))
		}
		if next := k + 1; next < len(r.clauses) && !r.fastenersOnly(a) && r.fastenerIn(&r.clauses[next], r.clauses[next].hi) {
			break // "Pulley next. There's a grub screw, three mil key": the screw's
		}
		if len(n.acts) > 1 || k > int(r.toks[c.lo].cl) && len(n.acts) > 0 {
			break
		}
	}
	return ""
}

// objectNames lists the things of an act: "seal, washer and bushing".
func (r *reading) objectNames(a *act) string {
	var ns []string
	seen := map[string]bool{}
	put := func(n string) {
		if n != "" && !seen[n] {
			seen[n] = true
			ns = append(ns, n)
		}
	}
	objs := append([]int{}, a.objects...)
	if len(objs) > 1 && objs[0] > objs[1] { // joined subjects were found backwards
		for i, j := 0, len(objs)-1; i < j; i, j = i+1, j-1 {
			objs[i], objs[j] = objs[j], objs[i]
		}
	}
	for _, mi := range objs {
		put(r.calledIn(&r.mentions[mi]))
	}
	if len(ns) == 0 {
		for _, t := range a.things {
			n := t.name
			if n == "" && t.fastener && alike.has(t.head) {
				n = t.called()
			}
			if t.side != "" && !strings.Contains(n, t.side) {
				n = t.side + " " + n
			}
			put(n)
		}
	}
	ns = slices.DeleteFunc(ns, func(n string) bool {
		return slices.ContainsFunc(ns, func(o string) bool { return o != n && lexicon.Singular(n) != lexicon.Singular(o) && oneOf(n, o) })
	})
	switch len(ns) {
	case 0:
		return ""
	case 1:
		return ns[0]
	}
	return strings.Join(ns[:len(ns)-1], ", ") + " and " + ns[len(ns)-1]
}

// oneOf tells whether a name is of one of those that another names: the "bottom cover bolt" is
// one of the "cover bolts".
func oneOf(one, all string) bool {
	rest, ok := strings.CutSuffix(lexicon.Singular(one), lexicon.Singular(all))
	return ok && lexicon.Singular(all) != all && lexicon.Singular(one) == one && strings.Contains(all, " ") && strings.HasSuffix(rest, " ")
}

// exclaims are the words of somebody content with what was just done.
var exclaims = set("gone sorted bosh lovely grand mint sound sweet beautiful perfect cracking")

// calledIn is what a step calls a thing, by the way it was called.
func (r *reading) calledIn(m *mention) string {
	n := m.name
	if m.entry != nil && m.entry.name != "" && len(content(m.mods)) == 0 && m.entry.fastener {
		n = saidName(m)
	}
	if m.side != "" && !strings.Contains(n, m.side) && !strings.Contains(n, strings.Replace(m.side, " ", "", 1)) {
		n = m.side + " " + n
	}
	if m.count > 1 && m.plural {
		n = countWord(m.count) + " " + n
	}
	return n
}

// saidName is the full name of what a bare mention stands for, with the word it
// was called by: a nut stays a nut where the talk called it a bolt before.
func saidName(m *mention) string {
	n := lexicon.Singular(m.entry.name)
	if alike.has(m.head) {
		if i := strings.LastIndexByte(n, ' ') + 1; alike.has(n[i:]) {
			n = n[:i] + m.head
		}
	}
	if m.plural {
		n = lexicon.Plural(n)
	}
	return n
}

func countWord(n int) string {
	words := []string{"", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n < len(words) {
		return words[n]
	}
	return ""
}

// notNamed ends a step whose thing only the picture shows.
const notNamed = " (not named)"

// perhaps ends a step whose thing is not named by what it is likeliest to be.
func perhaps(a *act) string {
	if a.maybe == nil || a.maybe.name == "" {
		return notNamed
	}
	return thatMaybe(a.maybe)
}

// doubting words a step so that it shows that its thing is only the likeliest of several:
// "Slide this out (the spacer, perhaps)."
func (r *reading) doubting(text string, a *act) string {
	name := r.objectNames(a)
	before, after, ok := strings.Cut(text, "the "+name)
	if name == "" || !ok || len(a.things) != 1 || len(a.objects) > 0 || endsUnnamed(text) || hasValue(text) || after == "" || after[0] >= 'a' {
		return text
	}
	this := "this"
	if w := name[strings.LastIndexByte(name, ' ')+1:]; lexicon.Singular(w) != w {
		this = "these"
	}
	text = strings.TrimSuffix(before+this+after, ".")
	if t, ok := strings.CutSuffix(text, ")"); ok {
		return t + "; the " + name + doubted + "." // "Undo this (13 mm; the clip, perhaps)."
	}
	return text + " (the " + name + doubted + "."
}

func thatMaybe(t *thing) string { return " (the " + shortName(t.called()) + doubted }

const doubted = ", perhaps)"

// endsUnnamed tells whether a step ends so.
func endsUnnamed(text string) bool {
	return strings.HasSuffix(text, notNamed+".") || strings.HasSuffix(text, doubted+".")
}

// standIn words what a pronoun stands for where no thing is known: as it was
// called shortly before, "the middle one", "the two on the side", else "this".
func (r *reading) standIn(a *act) string {
	many := r.many(a)
	if p := r.actBefore(a); p != nil && (a.pronoun == "it" || a.pronoun == "that" || a.pronoun == "them") && !p.subject {
		if len(p.things) == 1 && !p.things[0].fastener && p.things[0].plural == many && p.things[0].name != "" {
			return "the " + p.things[0].name // in the same breath
		}
		if s := r.unlistedName(p); s != "" {
			return "the " + s
		}
	}
	for i := a.lo - 1; i > 0 && i > a.lo-30 && r.since(i, a.lo) < 12; i-- {
		if k := int(r.toks[i].cl); k != a.cl && slices.ContainsFunc(r.clauses[k].acts, func(ai int) bool { return len(r.acts[ai].things) > 0 }) {
			break
		}
		w := r.toks[i].s
		lo := i
		switch {
		case r.toks[i].men >= 0:
			continue
		case w == "one" && !many, (w == "ones" || w == "pair") && many:
			for lo > 0 && r.toks[lo-1].brk <= brkPause && (placeWords.has(r.toks[lo-1].s) || whichOne.has(r.toks[lo-1].s)) {
				lo--
			}
			if lo == i {
				continue
			}
		case countOf[w] > 1 && many && r.toks[i].qty < 0:
			if p := r.prev(i); p != "these" && p != "those" && p != "the" && p != "other" {
				continue
			}
		default:
			continue
		}
		hi := i + 1
		if p := r.word(hi); (p == "on" || p == "at" || p == "in") && r.toks[i].brk <= brkPause && r.next(hi) == "the" && (aSpot.has(r.word(hi+2)) || r.toks[min(hi+2, len(r.toks)-1)].men >= 0) {
			hi += 3
		}
		return "the " + strings.ToLower(r.text(lo, hi))
	}
	switch {
	case many:
		return "these"
	case a.pronoun == "one":
		return "this one"
	}
	return "this"
}

// itOrThem is how a step has a word that stands for a thing.
func itOrThem(w string) string {
	if w == "it" || w == "that" || w == "this" {
		return "it"
	}
	return "them"
}

// unlistedName gives the words for what an act is done to that no list knows: "whole
// assembly", or "".
func (r *reading) unlistedName(a *act) string {
	if !a.unknown || a.verb < 0 || len(a.objects) > 0 {
		return ""
	}
	i := a.verb + 1
	for i < len(r.toks)-1 && (particle.has(r.toks[i].s) && r.toks[i].s != "it" || prepositions.has(r.toks[i].s)) {
		i++
	}
	if !articles.has(r.toks[i].s) && !definiteWord.has(r.toks[i].s) || r.toks[i].brk >= brkComma {
		return ""
	}
	lo := i + 1
	hi := lo
	for hi < len(r.toks) && hi < lo+4 && r.toks[hi].men < 0 && r.toks[hi].qty < 0 && !prepositions.has(r.toks[hi].s) && !particle.has(r.toks[hi].s) && (!stopWords.has(r.toks[hi].s) || r.toks[hi].s == "whole") && !r.toks[hi].is(wLinking|wSubject|wPronoun) {
		hi++
		if r.toks[hi-1].brk >= brkComma {
			break
		}
	}
	if hi > lo && (noName.has(r.toks[hi-1].s) || bodily.has(r.toks[hi-1].s)) {
		return ""
	}
	if hi == lo || hi-lo > 3 || hi < len(r.toks) && r.toks[hi-1].brk < brkComma && !particle.has(r.toks[hi].s) && !prepositions.has(r.toks[hi].s) && r.toks[hi].s != "and" {
		return ""
	}
	return strings.ToLower(strings.TrimRight(r.text(lo, hi), ",.;:"))
}

// noName are words that count or measure and name nothing.
var noName = set("times turns minutes seconds hours days way bit lot couple few")

// whichOne are words that tell one from others of its kind.
var whichOne = set("first second third fourth fifth last other next big small little large long short thick thin old new")

var dropWords = set("just then now so well basically actually really literally here simply you know um uh er erm like okay ok right alright obviously again though anyway please kindly yeah yes there")
var firstPerson = map[string]string{"my": "the", "your": "the", "me": "", "myself": "", "yourself": "", "i": "", "you": ""}

// ownWords takes the clause from the verb on: plain form of the verb, the words
// after it, first and second person gone, the pronoun replaced by what it stands for.
func (r *reading) ownWords(c *clause, a *act, hi int, names string) string {
	var w []string
	verb := r.imperative(a)
	if a.action.Name == "repeat" && (verb == "Same" || verb == "Ditto" || verb == "Likewise") {
		w = append(w, "Do", "the")
		verb = "same"
	}
	done := r.gotDone(a)
	if done > 0 {
		l := r.lemma1(r.toks[done].s)
		verb = strings.ToUpper(l[:1]) + l[1:] // "get it jacked up"
	}
	if verb == "Do" && a.action.Name == "tighten" && r.toks[a.hi-1].s == "tight" && !slices.ContainsFunc(r.toks[a.verb:a.hi], func(t tok) bool { return t.s == "up" || t.s == "and" }) {
		verb, done = a.action.Imperative, a.hi-1 // "do them tight"
	}
	w = append(w, verb)
	objPlaced := false
	tail := ""
	end := hi
	first := a.verb + 1
	if a.action.Name == "tighten" && verb == "Tighten" && r.word(first) == "on" {
		first++ // "reef on the nut"
	}
	if len(a.objects) > 0 && a.hi == first && r.toks[a.verb].brk >= brkComma && int(r.toks[a.verb-min(a.verb, 1)].men) == a.objects[0] {
		end = a.hi // "cable unhooked, arms wide open"
	}
	with := "" // what turns it
	for i := first; i < end; i++ {
		t := &r.toks[i]
		s := r.talk.Text[t.lo:t.hi]
		if i > first && r.toks[i-1].brk == brkComma && len(w) > 1 {
			hi := r.phraseEnd(i, end)
			if objPlaced || a.unknown {
				if !r.belongs(a, i, hi) {
					if with != "" || slices.Contains(w, "with") {
						break
					}
					if with = r.drivenWith(a, i, hi); with == "" {
						break
					}
					i = hi - 1
					continue
				}
			}
			if !particle.has(t.s) && !((prepositions.has(t.s) || t.s == "and") && len(w) <= 3 && !slices.ContainsFunc(w[1:], prepositions.has)) {
				w[len(w)-1] = strings.TrimRight(w[len(w)-1], ",") + ","
			}
		}
		if mi := int(t.men); mi >= 0 {
			m := &r.mentions[mi]
			for _, o := range a.objects {
				objPlaced = objPlaced || o == mi
			}
			n := m.name
			if i == m.lo {
				if m.kind == lexicon.Fastener && m.entry != nil && len(content(m.mods)) == 0 && m.entry.name != "" && !r.placeFollows(m, end) {
					n = saidName(m)
				}
				n = r.sizedName(m, n)
				if m.isNew {
					n = "new " + n
				} else if m.isOld {
					n = "old " + n
				}
				if m.side != "" && !strings.Contains(n, m.side) {
					n = m.side + " " + n
				}
				if r.word(m.hi) == "first" && m.from == m.lo && i > first && onWords.has(r.toks[i-1].s) && m.kind&lexicon.Fastener != 0 && len(w) > 1 {
					w[len(w)-1] += "," // "put the shock back in | lower bolt first"
				} else if len(w) > 0 && r.needsThe(i, m) {
					w = append(w, "the")
				}
				w = append(w, n)
			}
			continue
		}
		if i == done && done > 0 || i == first && t.s == "also" {
			continue
		}
		if (t.s == "it" || t.s == "them") && i == first && len(a.objects) == 1 && r.mentions[a.objects[0]].hi < a.verb && t.men < 0 {
			if names != "" {
				w, objPlaced = append(w, "the "+names), true // "the rear one, I pull it"
			}
			continue
		}
		if t.s == "that" && r.next(i) == "way" {
			w = append(w, s)
			continue
		}
		if (t.s == "this" || t.s == "that" || t.s == "these" || t.s == "those") && t.brk == brkNone && (r.leadsMention(c, i) || i+1 < end && r.toks[i+1].men < 0 && !stopWords.has(r.next(i)) && !particle.has(r.next(i)) && !r.isVerbForm(r.next(i)) && !dropWords.has(r.next(i)) && r.toks[i+1].qty < 0 && !manner.has(r.next(i)) && !turned.has(r.next(i)) && !bothOf.has(r.next(i)) && r.next(i) != "time") {
			w = append(w, "the") // "pull this bush out"
			continue
		}
		if (t.s == "that" || t.s == "this") && t.men < 0 && i > first && r.toks[i-1].s == "like" {
			continue // how, which the picture shows
		}
		if t.s == "all" && a.pronoun == "all" && !objPlaced {
			objPlaced = true
			if names != "" {
				w = append(w, "all of the "+names)
			} else {
				w, tail = append(w, "all of this"), perhaps(a)
			}
			for i+1 < end && (r.toks[i+1].s == "of" || pronounsObj.has(r.toks[i+1].s)) {
				i++
			}
			continue
		}
		if a.there != nil && r.endsOnPronoun(i, end) && i > first && r.toks[i-1].is(wPreposition) && (objPlaced || a.unknown) {
			objPlaced = true
			if a.thereSure {
				w = append(w, "the "+a.there.name) // "put a cloth in it"
			} else if w = append(w, itOrThem(t.s)); tail == "" {
				tail = thatMaybe(a.there)
			}
			continue
		}
		if t.s == "it" && a.unknown && !objPlaced && i > first && prepositions.has(r.toks[i-1].s) {
			w, objPlaced = append(w, s), true // "run a shot through it"
			continue
		}
		if (t.s == "it" || t.s == "he" || t.s == "she" || t.s == "they") && objPlaced && i >= a.hi && i+1 < end && (r.toks[i-1].men >= 0 || r.toks[i-1].brk >= brkComma) {
			if n := r.toks[i+1].s; strings.HasSuffix(n, "s") && len(n) > 3 && n != "this" && !r.plainVerb(n) {
				break // "turn it, it stops in the middle"
			}
		}
		if t.s == "all" && countOf[a.pronoun] > 1 && !objPlaced && names != "" && r.next(i) == a.pronoun && r.toks[i+1].men < 0 {
			for _, n := range []string{a.pronoun, strconv.Itoa(countOf[a.pronoun])} {
				names = strings.TrimPrefix(names, n+" ")
			}
			if !strings.HasSuffix(names, " it") { // but not "five holding it"
				names = lexicon.Plural(lexicon.Singular(names))
			}
			w, objPlaced = append(w, "all "+a.pronoun+" "+names), true // "flip all four"
			i++
			continue
		}
		if t.s == a.pronoun && !objPlaced && (pronounsObj.has(t.s) || t.s == "her" || t.s == "him") {
			objPlaced = true
			if t.s == "one" || t.s == "ones" {
				w = append(w, t.s) // "the inner one" says which
				continue
			}
			if n := r.next(i); (n == "one" || n == "ones") && t.s != "it" && t.s != "them" {
				i++ // "unhook that one": which is told by the name
				if n == "one" && len(a.things) == 1 && a.things[0].plural && names != "" {
					w = append(w, "one of the "+lexicon.Plural(lexicon.Singular(names)))
					continue
				}
			}
			if r.toMachine(c, a) || a.action.Name == "switch off" && len(a.objects) == 0 && !(len(a.things) > 0 && switched.has(a.things[0].head)) {
				w = append(w, "the machine") // "lower it and shut it down"
				continue
			}
			if a.action.Name == "mark" && noting.has(r.lemma1(r.toks[a.verb].s)) {
				w = append(w, "it") // "measure it, and write it down"
				continue
			}
			if (t.s == "those" || t.s == "these" || t.s == "them") && i+1 < end && t.brk < brkComma && countOf[r.next(i)] > 1 && r.toks[i+1].men < 0 && r.toks[i+1].qty < 0 {
				i++ // "those two"
			}
			if names != "" && r.isPlaceToo(a, i, end) {
				names = "" // "slide it back down the hose": no hose
			}
			if names != "" {
				if r.next(i) == "all" && t.brk < brkComma && r.word(i+2) != "the" && len(a.things) > 0 && a.things[0].plural {
					w = append(w, "all") // "undo them all"
					i++
				}
				w = append(w, "the "+names)
				if n := r.word(i + 2); t.s == "both" && r.next(i) == "of" && (n == "them" || n == "those" || n == "these" || n == "'em") && r.toks[i+2].men < 0 {
					i += 2 // "take both of those out"
				}
				if (r.next(i) == "both" && r.word(i+2) != "ways" || r.next(i) == "all" && r.word(i+2) != "the") && !(len(a.things) > 0 && a.things[0].plural) {
					i++
				}
				continue
			}
			if n := r.next(i); a.action.Name == "fill" && (n == "with" || n == "to" || n == "up" || n == "till" || n == "until") {
				continue // "fill with …"
			}
			if t.s == "her" {
				w = append(w, "the machine")
				continue
			}
			named := r.standIn(a)
			if named == "this" || named == "these" || named == "this one" {
				tail = perhaps(a)
			}
			w = append(w, named)
			continue
		}
		if t.s == "it" && !objPlaced && i < a.hi && a.action.Name == "test" && a.pronoun == "" && len(a.objects) == 0 {
			w, objPlaced = append(w, "the machine"), true // "start it up"
			continue
		}
		if t.s == "him" && r.pronounAt(c, i) {
			w, objPlaced = append(w, "it"), true
			continue
		}
		if t.s == "her" && r.pronounAt(c, i) || t.s == "she" && i == first {
			w, objPlaced = append(w, "the machine"), true
			continue
		}
		if t.s == "her" || t.s == "his" {
			w = append(w, "its")
			continue
		}
		if x, ok := firstPerson[t.s]; ok {
			if t.s == "you" && i > 0 && (r.toks[i-1].s == "towards" || r.toks[i-1].s == "toward") {
				w = append(w, s) // "swing it towards you"
				continue
			}
			if n := r.next(i); x == "" && i+2 < end && t.is(wSubject) && (objPlaced || a.unknown) && leadsClause.has(r.toks[i-1].s) && r.isVerbForm(n) && n != "have" && n != "had" && n[0] != '\'' {
				w = append(w, "you") // "turn it as I push it down"
				continue
			}
			if x != "" && bodily.has(r.next(i)) {
				x = "your"
			}
			if x != "" {
				w = append(w, x)
			} else if i > a.hi {
				if n := len(w); n > 3 && w[n-2] == "to" {
					w = w[:n-2] // "to give | myself some room"
				}
				break
			}
			continue
		}
		if i >= a.hi && (t.s == "that" || t.s == "it" || t.s == "there" || t.s == "they" || t.s == "which") && i+1 < end && (linking.has(r.next(i)) || r.next(i) == "should" || r.next(i) == "must") {
			break
		}
		if t.s == "that" && objPlaced && i >= a.hi && i+1 < end {
			k := i + 1
			if n := r.word(k); n == "just" || n == "only" {
				k++
			}
			if s := r.word(k); strings.HasSuffix(s, "s") && len(s) > 3 && !r.plainVerb(s) && (s == "gives" || s == "lets" || s == "makes" || s == "takes" || r.isVerbForm(s) && r.toks[k].men < 0) {
				break // "that just gives you some slack"
			}
		}
		if objPlaced && i >= a.hi && (t.s == "where" || t.s == "how" || t.s == "what" || t.s == "and") {
			if n := r.nextKind(i); r.toks[i].brk < brkComma && (asksNext.has(r.next(i)) || t.s == "how" && (r.next(i) == "much" || r.next(i) == "many") || (t.s == "how" || t.s == "what") && n.is(wSubject)) {
				break // "pull it out where | do I", "and would you believe it", "and them two …"
			}
		}
		if t.s == "the" && i+2 < end && r.next(i) == "both" && r.word(i+2) == "of" {
			continue // "the both of them"
		}
		if t.s == "of" && objPlaced && i > first && r.toks[i-1].s == "both" && pronounsObj.has(r.next(i)) {
			i++
			continue
		}
		if objPlaced && (t.s == "an" || t.s == "and") && r.next(i) == "all" && (i+2 >= end || r.word(i+2) == "on" || r.toks[i+1].brk >= brkComma) {
			i++
			continue // "tie that up an' all"
		}
		if objPlaced && len(w) >= 6 && (t.s == "where" || t.s == "so" || t.s == "which" || t.s == "although" || t.s == "because") && i >= a.hi {
			break // an explanation
		}
		if t.s == "them" && t.men < 0 && i+1 < end && r.leadsMention(c, i) {
			w = append(w, "the") // "wipe them splines"
			continue
		}
		if r.cueAtTok(c, i, offCamera) {
			continue
		}
		if objPlaced && i >= a.hi && i > first && r.doseAt(i, end, a) {
			break // "run the axle through | a little bit of grease on that"
		}
		if t.s == "as" && r.next(i) == "well" && r.word(i+2) != "as" {
			i++ // "take that off as well"
			continue
		}
		if i >= a.hi && objPlaced && i > first && t.men < 0 && exclaims.has(t.s) && (i+1 == end || t.s == "gone" && particle.has(r.toks[i-1].s)) {
			break // "nip the hose up gone"
		}
		if i > a.hi && objPlaced && (t.s == "call" && (r.next(i) == "it" || r.next(i) == "that") || t.s == "doing" || t.s == "done" && i+1 == end) {
			break // "back it off a flat, call it a flat"
		}
		if t.s == "not" && i >= a.hi && objPlaced && len(w) > 3 && !linking.has(r.toks[i-1].s) {
			break
		}
		if n := r.next(i); t.s == "over" && i > first && (n == "there" || n == "here") && i+1 < end {
			continue // "hang it over there"
		}
		if asides.has(t.s) && (i+1 == end || t.brk >= brkComma) {
			continue
		}
		if t.s == "like" && i >= a.hi && r.next(i) == "the" {
			if k := r.saidAfter(i+2, end); k > 0 {
				i = k // "just like the sticker says"
				continue
			}
		}
		if minds.has(t.s) && i >= a.hi && objPlaced && (r.next(i) == "your" || r.next(i) == "the" || r.next(i) == "out" || r.next(i) == "you") {
			break // "slip the belt off | watch your fingers"
		}
		if n := r.next(i); t.s == "like" && objPlaced && i >= a.hi && n != "so" && n != "that" && n != "this" && n != "a" && n != "an" && n != "the" {
			break // "like peas in a pie"
		}
		if t.s == "now" && len(w) > 0 && w[len(w)-1] == "for" {
			w = append(w, s) // "set it at three for now"
			continue
		}
		if objPlaced && i >= a.hi && i > first && r.beginsOther(i) {
			break
		}
		if t.s == "way" && objPlaced && (r.next(i) == "she" || r.next(i) == "it") && i+2 < len(r.toks) && len(r.lex.Lemmas(r.word(i+2))) > 0 {
			w = append(w, "way it "+r.word(i+2)) // "twist it the way she turns"
			break
		}
		if dropWords.has(t.s) && t.qty < 0 && !(i > 0 && articles.has(r.toks[i-1].s)) && !(t.s == "like" && (r.next(i) == "a" || r.next(i) == "an")) && !(t.s == "right" && r.next(i) == "side") {
			continue
		}
		if (t.s == "and" || t.s == "which" || t.s == "because" || t.s == "but" || t.s == "or" && t.men < 0) && i >= a.hi && r.clauseBreak(i, end) {
			break
		}
		if t.s == "or" && i >= a.hi && objPlaced && r.willSoon(i+1, end) {
			break // "unplug it or your foot will find the pedal"
		}
		if t.s == "and" && i >= a.hi && objPlaced {
			if o := r.nameWithin(c, i+1, 4); o >= 0 && r.mentions[o].hi < c.hi && r.movesOff(r.mentions[o].hi) {
				break // "pull the last bolt | and the gearbox slid back"
			}
		}
		if t.s == "and" && i >= a.hi && objPlaced && (articles.has(r.next(i)) || definiteWord.has(r.next(i))) && r.linkedSoon(i+2, min(end, i+6)) {
			break // "shim it to the middle | and my shims are in the other box"
		}
		if t.s == "and" && i >= a.hi && a.pronoun != "" && objPlaced && r.toks[i-1].brk >= brkComma && (r.next(i) == "a" || r.next(i) == "an" || countOf[r.next(i)] > 0) {
			break // "pop that, and a 17 mil nut"
		}
		if t.s == "and" && objPlaced && i >= a.hi && r.pastForm(r.next(i)) && !strings.HasSuffix(r.toks[a.verb].s, "ing") {
			break // "pulled the wheel and dropped the chain off"
		}
		if strings.HasPrefix(t.s, "'") {
			if len(w) > 0 && i > 0 && !(firstPersonOf(r.toks[i-1].s) && !strings.EqualFold(w[len(w)-1], r.toks[i-1].s)) {
				w[len(w)-1] += s
			}
			continue
		}
		w = append(w, s)
		if len(w) > 24 {
			break
		}
	}
	if with != "" {
		with = " (" + with + ")"
	}
	if !objPlaced && len(w) >= 2 && names == "" && (a.action.Name == "mark" || a.action.Name == "repeat" || a.action.Name == "test") {
		objPlaced = true // "take a photo": it has its object in itself
	}
	if !objPlaced && names == "" && strings.EqualFold(w[0], "power") {
		if len(w) > 1 && (w[1] == "on" || w[1] == "up") {
			return "Switch the power on."
		}
		return "Switch the power off."
	}
	if len(w) > 1 && w[1] == "and" || !objPlaced && names == "" && len(w) > 2 && w[2] == "and" && particle.has(w[1]) {
		return "" // "pulling up and taking in"
	}
	if tail == notNamed && a.pronoun != "all" && !r.toldWhere(a, end) {
		return "" // "hold it dead still": what, only the picture shows
	}
	if !objPlaced && a.unknown {
		if len(w) < 2 || w[1] == "with" || w[1] == "using" || w[1] == "from" || w[1] == "by" {
			return ""
		}
		if len(w) == 4 && (w[1] == "in" || w[1] == "into" || w[1] == "through" || w[1] == "under") && definiteWord.has(w[2]) && ledgerActs[a.action.Name] != "" {
			return "" // "drop in that hole": where, and what nobody said
		}
		if !slices.ContainsFunc(w[1:], func(s string) bool {
			s = strings.ToLower(strings.Trim(s, ",."))
			return articles.has(s) || !particle.has(s) && !prepositions.has(s) && !stopWords.has(s) && !returning.has(s)
		}) {
			return "" // "take out", "spin round": what, nobody said
		}
		objPlaced = true
	}
	if len(w) > 1 && r.onlyWhereTo(w, a) {
		switch {
		case thingless.has(a.action.Name) || bearing.has(r.lemma1(r.toks[a.verb].s)) && w[1] != "with" && (len(w) < 3 || w[2] != "of"):
		case names != "" && !strings.Contains(strings.Join(w, " "), names):
			objPlaced = false // "pressed in by thumb": the bush that was named before
		default:
			m := r.justDone(c, a)
			if m == nil {
				return noStep // "the ring turned in the housing", "I got on it"
			}
			names, objPlaced = r.calledIn(m), false // "shaft clamped in the vice"
		}
	}
	if !objPlaced {
		if names == "" {
			return ""
		}
		// the thing was named before the verb: put it where it belongs
		if k, many := onlyCounts(w[1:]); k > 0 { // "loosen two", "crack them all", "take the two out"
			names = strings.TrimPrefix(names, many+" ")
			w = append(append(w[:1], many, lexicon.Plural(lexicon.Singular(names))), w[1+k:]...)
			return trimStep(strings.Join(w, " ")) + with + tail + "."
		}
		if p := strings.Fields(strings.Join(w[1:], " ")); len(p) > 2 && p[0] == "the" && (p[2] == "one" || p[2] == "ones") { // "take the left one off"
			if !slices.Contains(strings.Fields(names), p[1]) {
				names = p[1] + " " + names
			}
			w = append(w[:1], p[3:]...)
		}
		w = append(w[:1], append([]string{"the " + names}, w[1:]...)...)
	}
	return trimStep(strings.Join(w, " ")) + with + tail + "."
}

// noting are the verbs of putting a figure on paper.
var noting = set("write note jot")

// onlyCounts tells how many words at the beginning of some only count what is named before
// them, and how a step says that: "the two of them" is "the two".
func onlyCounts(w []string) (k int, many string) {
	if len(w) > 3 && w[0] == "the" && w[2] == "of" && pronounsObj.has(strings.TrimRight(w[3], ",")) {
		switch w[1] {
		case "pair":
			return 4, "both the"
		case "lot":
			return 4, "all the"
		}
	}
	if len(w) > 0 && w[0] == "the" {
		k, many = 1, "the "
	}
	if k >= len(w) {
		return 0, ""
	}
	switch n := strings.ToLower(strings.TrimRight(w[k], ",")); {
	case n == "all" || n == "both":
		many = n + " the"
	case countOf[n] > 1 && n != "pair":
		many += n
	default:
		return 0, ""
	}
	if k++; k+1 < len(w) && w[k] == "of" && pronounsObj.has(strings.TrimRight(w[k+1], ",")) {
		k += 2
	}
	if k < len(w) && !prepositions.has(w[k]) && !particle.has(strings.TrimRight(w[k], ",")) && w[k] != "first" {
		return 0, "" // "pull two, three times", "put two good ones in"
	}
	return k, many
}

// thingless are the actions that need no thing of their own, bearing the verbs that tell
// where one pushes or holds.
var (
	thingless = set("inspect test measure hammer press wait repeat mark fill")
	bearing   = set("push pull press lean tap knock hit go brush rub slide hold power")
)

// noStep is what ownWords gives for words that are no instruction at all.
const noStep = "-"

// justDone gives what a participle is said of that stands right after it with no article:
// "shaft clamped in the vice", "long leg bent up over the end".
func (r *reading) justDone(c *clause, a *act) *mention {
	k := a.verb - 1
	if k < c.lo || r.plainVerb(r.toks[a.verb].s) || strings.HasSuffix(r.toks[a.verb].s, "ing") || r.toks[k].men < 0 || r.toks[k].brk >= brkComma {
		return nil
	}
	m := &r.mentions[r.toks[k].men]
	if m.kind&(lexicon.Part|lexicon.Fastener) == 0 || m.prep != "" || m.from > c.lo && !r.toks[m.from-1].is(wOpener|wDrop) && r.toks[m.from-1].s != "and" && r.toks[m.from-1].brk < brkComma || articles.has(r.toks[m.from].s) || definiteWord.has(r.toks[m.from].s) {
		return nil
	}
	return m
}

// onlyWhereTo tells whether the words of a step tell where something goes or how, and not
// what: "press in by thumb".
func (r *reading) onlyWhereTo(w []string, a *act) bool {
	first := strings.ToLower(w[1])
	if len(a.objects) > 0 && a.hi > a.verb+1 && r.mentions[a.objects[0]].from == a.hi && !particle.has(r.toks[a.hi-1].s) {
		return false // "cut through the strap"
	}
	if !prepositions.has(first) && !particle.has(first) && first != "with" && first != "by" && first != "as" && first != "like" {
		return false
	}
	if l := r.lemma1(r.toks[a.verb].s); l == "get" && a.pronoun != "" && len(a.objects) == 0 && r.word(a.verb+2) == a.pronoun && first != "off" && first != "out" {
		return true // "get on it"
	}
	if len(w) == 2 {
		return a.action.Name != "fill" && a.action.Name != "switch off"
	}
	next := strings.ToLower(strings.TrimRight(w[2], ","))
	if particle.has(first) {
		if first != "back" && len(w) > 3 && (offWords.has(next) || onWords.has(next)) && articles.has(w[3]) {
			return true // "hang down off the arm"
		}
		if next == "of" || articles.has(next) && len(w) == 4 && stands.has(strings.TrimRight(w[3], ",.")) && a.action.Name != "remove" {
			return true // "slide off of the shaft", "put on the bench"
		}
		if past := !r.plainVerb(r.toks[a.verb].s) && !strings.HasSuffix(r.toks[a.verb].s, "ing"); past && a.verb > r.clauses[a.cl].lo && (first == "on" || first == "in" || first == "over") && articles.has(next) && (len(a.objects) > 0 || r.toks[a.verb-1].men >= 0) {
			// "tissue tied on it", "a plate, screwed on the frame": not "I clipped on the lid"
			p := r.toks[a.verb-1]
			return !p.is(wSubject|wOpener|wDrop) && p.s != "and" && p.s != "'ve" && p.s != "have"
		}
		return prepositions.has(next) && !particle.has(next) || next == "by" || next == "with" || next == "till" || next == "until" || next == "like"
	}
	return true
}

// stands are where things stand and what they lie on, and nobody puts on or in.
var stands = wordsOf("what things stand or lie on")

// toldWhere tells whether the words of an act say with an article where or with what it is done.
func (r *reading) toldWhere(a *act, end int) bool {
	for i := a.verb + 1; i+1 < end; i++ {
		if prepositions.has(r.toks[i].s) && (r.toks[i+1].is(wDeterminer) || r.toks[i+1].men >= 0) {
			return true
		}
	}
	return false
}

// willSoon tells whether the next few words say what will be.
func (r *reading) willSoon(i, end int) bool {
	for k := i; k < min(end, i+4); k++ {
		if w := r.toks[k].s; w == "will" || w == "'ll" {
			return true
		}
	}
	return false
}

// saidAfter gives the token of "says", "shows" or "was" soon after a token, or 0.
func (r *reading) saidAfter(i, end int) int {
	for k := i; k < min(end, i+4); k++ {
		switch r.toks[k].s {
		case "says", "said", "shows", "showed", "was", "is", "'s", "does", "did", "had":
			return k
		}
	}
	return 0
}

// placeFollows tells whether the words after a mention say where it is: "the nut on the shoe".
func (r *reading) placeFollows(m *mention, end int) bool {
	if m.hi+2 >= end || r.toks[m.hi-1].brk >= brkComma {
		return false
	}
	switch r.toks[m.hi].s {
	case "on", "of", "in", "at", "behind", "under":
		mi := r.toks[m.hi+2].men
		return r.toks[m.hi+1].s == "the" && mi >= 0 && r.mentions[mi].kind&lexicon.Part != 0
	}
	return false
}

// gotDone gives the token of what somebody gets done: "get it jacked up", "get those
// cleaned", or 0.
func (r *reading) gotDone(a *act) int {
	if l := r.lemma1(r.toks[a.verb].s); l != "get" && l != "have" {
		return 0
	}
	for i := a.verb + 2; i < min(a.hi+1, len(r.toks)); i++ {
		if w := r.toks[i].s; r.toks[i].men < 0 && strings.HasSuffix(w, "ed") && r.toks[i-1].brk < brkComma {
			if l := r.lemma1(w); l != w && r.plainVerb(l) && !strings.HasSuffix(l, "ed") {
				return i
			}
		}
	}
	return 0
}

// isPlaceToo tells whether what "it" was taken for is named between a token and end:
// then it is something else.
func (r *reading) isPlaceToo(a *act, i, end int) bool {
	for ; i < end; i++ {
		if m := int(r.toks[i].men); m >= 0 && r.mentions[m].entry != nil && len(a.things) == 1 && r.mentions[m].entry == a.things[0] && (r.mentions[m].prep == "down" || r.mentions[m].prep == "on" || r.mentions[m].prep == "onto" || r.mentions[m].prep == "into" || r.mentions[m].prep == "off" || r.mentions[m].prep == "along") {
			return true
		}
	}
	return false
}

// sizedName puts before a name the words that tell its thing from others, or stuff
// by how much, and are no part of the name: "the big pulley", "a little oil".
func (r *reading) sizedName(m *mention, n string) string {
	for i := m.hi - len(strings.Fields(m.name)) - 1; i >= m.lo; i-- {
		w := r.toks[i].s
		if !sizedBy.has(w) && !(ordinal.has(w) && !m.plural) && !(w == "little" && m.kind&lexicon.Consumable != 0) || strings.Contains(n, w) {
			break
		}
		n = w + " " + n
	}
	return n
}

// sizedBy are the words that tell a thing from others of its name.
var sizedBy = set("big small large long short thick thin wide narrow")

// asksNext are the words that begin another clause after "and" and "where".
var asksNext = set("would could should do does did shall")

// minds are the words that begin a warning.
var minds = set("wear mind watch don't never careful keep")

// ontoProps tells whether the sentence of an act names, before it, the stands or the jack on which
// a machine comes down.
func (r *reading) ontoProps(c *clause, a *act) bool {
	for i := a.lo - 1; i >= 0 && i > a.lo-16 && r.clauses[r.toks[i].cl].sentence == c.sentence; i-- {
		if w := r.toks[i].s; propsUnder.has(w) || lifters.has(w) || w == "stand" {
			return true
		}
	}
	return false
}

// toMachine tells whether an act that is done to "it", and to nothing that can be
// meant by that, is done to the machine: "unplug it", "tip it on its side", "fire it up".
func (r *reading) toMachine(c *clause, a *act) bool {
	switch a.pronoun {
	case "it", "this", "that", "her", "him":
	default:
		return false
	}
	if a.verb < 0 || a.subject || len(a.objects) > 0 {
		return false
	}
	if r.word(a.verb+2) == "in" || r.word(a.verb+2) == "into" {
		switch r.word(a.verb + 3) {
		case "gear", "neutral", "reverse", "park":
			return true
		}
	}
	starts := false
	switch v := r.lemma1(r.toks[a.verb].s); v {
	case "start", "fire", "switch", "power":
		starts = a.action.Name == "test" || a.action.Name == "switch off"
	case "unplug", "isolate":
		return len(a.things) == 0 || !a.things[0].fastener && (v == "isolate" || !wired.has(a.things[0].head)) || r.says1(c, a.verb, "wall") || r.says1(c, a.verb, "mains") || r.says1(c, a.verb, "socket")
	}
	if l := r.lemma1(r.toks[a.verb].s); len(a.things) > 0 && (flat.has(a.things[0].head) && (l == "tip" || l == "tilt" || l == "lay" || l == "roll") && r.says1(c, a.verb, "its") || small.has(a.things[0].head) && l == "stand" && (r.word(a.verb+2) == "up" || r.word(a.verb+2) == "back") || a.action.Name == "lower" && (a.things[0].head == "wheel" || a.things[0].head == "tyre" || a.things[0].head == "tire" || r.ontoProps(c, a))) {
		return true // "tip it on its back", "wheel on, let it down", "stands under, and let it down on to them"
	}
	if len(a.things) > 0 && !a.things[0].fastener && !(small.has(a.things[0].head) && a.action.Name != "fit" && a.action.Name != "remove") && !(a.things[0].plural && !r.many(a)) && !(starts && !switched.has(a.things[0].head)) {
		return false
	}
	if starts {
		return true
	}
	switch a.action.Name {
	case "place", "support", "lower", "switch off", "adjust", "lift", "remove", "disconnect", "fit":
	default:
		return false
	}
	switch r.lemma1(r.toks[a.verb].s) {
	case "tip", "tilt", "jack", "chock", "hoist", "winch", "plug":
		return true
	case "lay", "lean", "stand", "roll", "wheel", "pull", "push", "drag", "slide", "turn", "get", "have", "put", "set", "lift", "lower", "let", "drop", "prop", "raise", "flip":
	default:
		return false
	}
	for i := a.verb + 2; i < c.hi; i++ {
		if w := r.toks[i].s; standsAt.has(w) || r.toks[i-1].s == "its" && (w == "side" || w == "back" || w == "front" || w == "end" || w == "nose" || w == "wheels" || w == "feet") {
			return true
		}
	}
	return false
}

// wired are the parts that are unplugged by themselves.
var wired = wordsOf("what has a plug")

// small are parts that nobody stands up, lays on their side, fills or bleeds.
var small = wordsOf("small parts")

// flat are parts that come off and that nobody tips over.
var flat = wordsOf("nobody tips over")

// standsAt are the words for where whole machines stand.
var standsAt = wordsOf("where machines stand")

func (r *reading) needsThe(i int, m *mention) bool {
	if m.from < m.lo {
		// its own determiner was written already, unless it was left out as filler
		return false
	}
	if i > 0 {
		// "a 19 mil socket", "the half clamp": it has one
		p := r.toks[i-1].s
		for k := i - 1; k > 0 && k > i-4 && r.toks[k].men < 0 && (!stopWords.has(r.toks[k].s) || dropAdj.has(r.toks[k].s)) && r.toks[k].brk <= brkPause; k-- {
			if determiner.has(r.toks[k-1].s) || r.toks[k-1].s == "of" {
				return false // "the little safety plate", "a bit of scuff pad"
			}
		}
		if r.toks[i-1].qty >= 0 || determiner.has(p) || !stopWords.has(p) && r.toks[i-1].men < 0 && !r.isVerbForm(p) || dropAdj.has(p) || countOf[p] > 0 {
			return false
		}
	}
	return !m.plural && m.kind&lexicon.Consumable == 0 && m.prep == ""
}

// cueAtTok tells whether a token belongs to a cue of that mood.
func (r *reading) cueAtTok(c *clause, i int, m mood) bool {
	for _, q := range c.cues {
		if q.mood&m != 0 && i >= q.lo && i < q.hi {
			return true
		}
	}
	return false
}

// pastForm tells whether a word is the past of a verb of the workshop and nothing else.
func (r *reading) pastForm(w string) bool {
	for _, v := range r.lex.Lemmas(w) {
		if v != w && strings.HasSuffix(w, "ed") && len(r.lex.Patterns(v)) > 0 {
			return true
		}
	}
	return false
}

// asides are small words that end a phrase and say nothing of the work.
var asides = set("mind mate eh lads folks guys friends see look myself yourself though anyway altogether always")

// clauseBreak tells whether what follows a joining word is talk of its own rather than more of the thing.
func (r *reading) clauseBreak(i, end int) bool {
	next := r.next(i)
	if subjects.has(next) && next != "that" && next != "this" && next != "these" && next != "those" {
		return true
	}
	if r.toks[i].s == "and" {
		// "and all the oil runs away"
		k := i + 1
		for k < end && (determiner.has(r.toks[k].s) || dropAdj.has(r.toks[k].s) || r.toks[k].men >= 0) {
			k++
		}
		if k > i+1 && k < end && r.toks[k-1].men >= 0 && strings.HasSuffix(r.toks[k].s, "s") && r.isVerbForm(r.toks[k].s) && !r.plainVerb(r.toks[k].s) {
			return true
		}
	}
	return r.toks[i].s == "because" || r.toks[i].s == "but" || r.toks[i].s == "which"
}

// imperative is the plain form of the act's verb, capital first.
func (r *reading) imperative(a *act) string {
	v := r.toks[a.verb].s
	for _, l := range r.lex.Lemmas(v) {
		for _, p := range r.lex.Patterns(l) {
			if p.Action == a.action && !p.Subject {
				if plain, ok := plainly[a.action.Name]; ok && plain.loose.has(l) && !(l == "get" && prepositions.has(r.next(a.verb)) && !particle.has(r.next(a.verb))) {
					return plain.word // but "get behind it with the puller"
				}
				return strings.ToUpper(l[:1]) + l[1:]
			}
		}
	}
	if a.action.Name == "store" {
		return "Put" // "pop the screws in the tray": the tray tells it, and not the verb
	}
	return a.action.Imperative
}

// plainly are the verbs that people use for nearly anything, by what they mean,
// and the word of an instruction for each.
var plainly = map[string]struct {
	word  string
	loose *wordSet
}{
	"remove":        {"Take", set("get whip zip buzz have lose rattle grab bring fetch whizz gun")},
	"fit":           {"Put", set("get whip bung stick chuck whack bang throw lob shove slap plonk sling dump pop")},
	"place":         {"Put", set("get bung stick chuck whack shove slap plonk sling dump pop throw")},
	"start by hand": {"Put", set("get")},
	"store":         {"Put", set("get bung stick chuck shove slap plonk sling dump pop throw")},
	"tighten":       {"Tighten", set("buzz zip rattle gun grunt nail hammer whizz get swing reef lean")},
}

// tail gives the words after a thing that moves by itself: where it goes.
func (r *reading) tail(c *clause, lo, hi int) string {
	for _, p := range manners {
		if r.says(lo, hi, p) {
			return ", " + strings.Join(p, " ")
		}
	}
	var w []string
	between := false
	for i := lo; i < hi && len(w) < 12; i++ {
		t := &r.toks[i]
		if n := r.next(i); i == lo && !prepositions.has(t.s) && !((t.s == "both" || t.s == "all") && (n == "sides" || n == "faces" || n == "ends" || n == "over" || n == "round" || n == "around")) {
			return ""
		}
		if i == lo && (t.s == "through" || t.s == "over") && i+1 < hi {
			if n := r.next(i); n == "from" || n == "into" || n == "onto" || n == "to" {
				continue // "goes through from the drive side"
			}
			if r.toks[i+1].qty >= 0 {
				return ""
			}
		}
		if i == lo && t.s == "out" && r.next(i) == "of" && r.word(i+2) != "course" && i+2 < hi {
			w = append(w, "from") // "drops down out of the carrier"
			i++
			continue
		}
		if t.s == "of" && r.next(i) == "course" {
			break
		}
		if i == lo && t.s == "of" {
			if r.prev(i) != "out" {
				return "" // "o-rings on the caps, bit of grease"
			}
			w = append(w, "from") // "out of the carrier"
			continue
		}
		if t.s == "and" && between && i+1 < hi && (determiner.has(r.toks[i+1].s) || r.toks[i+1].men >= 0) {
			w, between = append(w, "and"), false
			continue
		}
		between = between || t.s == "between"
		if t.s == "where" {
			if n := len(w) - 1; n >= 0 && prepositions.has(w[n]) {
				w = append(w, strings.ToLower(r.text(i, min(c.hi, i+5)))) // "behind where the arm goes"
			}
			break
		}
		if n := r.next(i); t.s == "for" && (n == "now" || n == "the" && (r.word(i+2) == "time" || r.word(i+2) == "moment" || r.word(i+2) == "minute")) {
			break
		}
		if h := r.word(i + 2); (t.s == "in" || t.s == "into") && (r.next(i) == "your" || r.next(i) == "my") && (h == "hand" || h == "hands") {
			break // "the bearing falls out in your hand"
		}
		if i > lo && (t.s == "it" || t.s == "that" || t.s == "there") && (i+1 == hi || t.brk > brkPause) && r.toks[i-1].s == "under" {
			w[len(w)-1] = "underneath"
			return " " + strings.Join(w, " ")
		}
		if subjects.has(t.s) && t.men < 0 && t.s != "the" && t.s != "this" && t.s != "that" || t.s == "and" || t.s == "because" || t.s == "but" || t.s == "not" {
			break
		}
		if x, ok := firstPerson[t.s]; ok {
			if t.s == "you" && i > lo && (r.toks[i-1].s == "towards" || r.toks[i-1].s == "toward") {
				x = "you"
			} else if x != "" && bodily.has(r.next(i)) {
				x = "your"
			}
			if x != "" {
				w = append(w, x)
			}
			continue
		}
		if dropWords.has(t.s) && t.s != "right" && !(i > lo && articles.has(r.toks[i-1].s)) {
			continue
		}
		if t.men >= 0 && r.mentions[t.men].misheard {
			if m := &r.mentions[t.men]; i == m.lo {
				w = append(w, m.name)
			}
			continue
		}
		w = append(w, r.talk.Text[t.lo:t.hi])
		if t.brk >= brkComma && i+1 < hi && len(w) > 1 && (r.toks[i+1].men >= 0 || endsTail.has(r.toks[i+1].s) || countOf[r.toks[i+1].s] > 1 || r.toks[i+1].s == "other" || articles.has(r.toks[i+1].s) && measured.has(r.word(i+2))) {
			break // "lube on the o ring, lid on"
		}
		if t.brk == brkComma && i+1 < hi {
			w[len(w)-1] += ","
		}
	}
	for n := len(w); n > 0 && !(n > 2 && (w[n-1] == "ones" || w[n-1] == "one") && !articles.has(w[n-2]) && !prepositions.has(w[n-2])) && (stopWords.has(strings.ToLower(w[n-1])) || prepositions.has(strings.ToLower(w[n-1]))) && !(n > 1 && (w[n-2] == "facing" || w[n-2] == "pointing" || n > 2 && features.has(strings.ToLower(w[n-2])) && turned.has(strings.ToLower(w[n-1])))); n-- {
		w = w[:n-1]
	}
	if len(w) < 2 {
		return ""
	}
	w[0] = strings.ToLower(w[0])
	return " " + strings.Join(w, " ")
}

var danglers = set("earlier early beforehand til once hmm hm um uh er ah oh eh not just don't where they she he it's now and or but so the a an to of with for from as because if then than that which in into on at by towards toward is was are i you 's it's just would could how why come no yes yeah och honestly look innit cos coz while when till until would could should must might else yet its")

// trimStep cuts a step to size and takes off what dangles.
func trimStep(s string) string {
	f := strings.Fields(s)
	if len(f) > 26 {
		f = f[:26]
	}
	f = slices.CompactFunc(f, func(a, b string) bool { return (len(a) > 3 || a == "the") && a == b && a[0] >= 'a' }) // "little little"
	for i := 0; i+1 < len(f); i++ {
		// the word between may have gone: "a tiny o ring"
		switch c := f[i+1][0]; {
		case f[i] == "a" && strings.IndexByte("aeio", c) >= 0 && !strings.HasPrefix(f[i+1], "one"):
			f[i] = "an"
		case f[i] == "an" && strings.IndexByte("bcdgjkpqtvwyz", c) >= 0:
			f[i] = "a"
		}
	}
	if n := len(f); n > 5 && f[n-1] == "ago" && f[n-3] == "a" {
		f = f[:n-3] // "a minute ago"
	}
	f = noAfter(f)
	for n := len(f); n > 4 && f[n-2] == "and" && (particle.has(f[n-1]) || f[n-1] == "over" || f[n-1] == "through" || f[n-1] == "round" || f[n-1] == "behind" || f[n-1] == "underneath") && (!particle.has(f[n-3]) || f[n-4] == "and"); n = len(f) {
		f = f[:n-2] // "stretch the spring and over"
	}
	if n := len(f); n > 4 && f[n-3] == "with" && f[n-2] == "its" && countOf[f[n-1]] > 1 {
		f = f[:n-3] // "the guard with its two"
	}
	for len(f) > 2 {
		l := strings.ToLower(strings.Trim(f[len(f)-1], ",.;:"))
		if p := f[len(f)-2]; l == "you" && (p == "towards" || p == "toward") {
			break
		}
		if (l == "was" || l == "were") && slices.ContainsFunc(f[max(0, len(f)-6):], func(w string) bool { return w == "way" || w == "as" || w == "where" || w == "how" }) {
			break // "the way the old one was"
		}
		if p := f[len(f)-2]; len(f) > 3 && (l == "it" || l == "they" || l == "you") && leadsClause.has(p) {
			f = f[:len(f)-2] // "with the bar as it"
			continue
		}
		if p := f[len(f)-2]; (p == "facing" || p == "pointing") && particle.has(l) {
			break
		}
		if !danglers.has(l) || (l == "in" || l == "on") && len(f) < 12 {
			break
		}
		f = f[:len(f)-1]
	}
	return strings.TrimRight(strings.Join(noAfter(f), " "), ",.;: ")
}

// leadsClause are the words that lead to what somebody does or a thing does meanwhile.
var leadsClause = set("as while when where until till before after once what how")

// noAfter takes off a last "and see", "to let" of which the rest has gone.
func noAfter(f []string) []string {
	if n := len(f); n > 3 && (f[n-2] == "and" && cutAfterAnd.has(f[n-1]) || f[n-2] == "to" && (f[n-1] == "let" || f[n-1] == "have")) {
		return f[:n-2]
	}
	return f
}

var cutAfterAnd = set("gone see begin go try look looky quick quickly then honestly hopefully aye yeah yep ah oh")
