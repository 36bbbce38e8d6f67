package extract

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// checkOpen runs the checks of normalize over what was heard and asks after what
// fails. A check never says that a value is right.
func (r *reading) checkOpen(rec *Record) []Open {
	var out []Open
	out = append(out, r.valueChecks(rec)...)
	out = append(out, r.sizeChecks(rec)...)
	return out
}

func findings(in []normalize.Finding) []Finding {
	var out []Finding
	for _, f := range in {
		out = append(out, Finding{What: f.What, Why: Heard(f.Why), Source: f.Source, Ask: Heard(f.Ask)})
	}
	return out
}

// valueChecks sets each torque against its pair in another unit and against
// what its thread takes, and finds two values for one fastener.
func (r *reading) valueChecks(rec *Record) []Open {
	var out []Open
	suspected := map[*heard]bool{}
	k := 0
	for i := range r.heard {
		h := &r.heard[i]
		if h.dropped {
			continue
		}
		if k >= len(rec.Torques) {
			break
		}
		t := &rec.Torques[k]
		k++
		q := &r.qtys[h.qty]
		about := t.Fastener
		if about == "" {
			about = "value of " + Heard(q.Canonical)
		}
		suspect := func(kind string, fs []Finding) {
			o := Open{Kind: kind, Before: BeforeUse, About: shortName(about), LedgerID: t.LedgerID, Place: t.Place.by("check of the value"), Findings: fs}
			o.Question = question(o)
			if len(fs) > 0 && fs[0].Ask != "" {
				o.Question = strings.TrimSuffix(question(o), "?") + "? " + fs[0].Why + "."
				o.Question = strings.ReplaceAll(o.Question, "..", ".")
			}
			out = append(out, o)
		}
		if q.unitOr != "" && h.of != nil {
			o := Open{Kind: Unsure, Before: BeforeUse, About: shortName(about), LedgerID: t.LedgerID, Place: t.Place.by("unit of the value")}
			o.Question = "Is the " + strings.TrimSuffix(q.Canonical, " "+q.Unit) + " of the " + shortName(about) + " in " + Heard(q.Unit) + " or in " + Heard(q.unitOr) + "? The recording does not tell."
			out = append(out, o)
		}
		if t.SourceSaid.Scope == scopeOther && h.of != nil && (h.applied != "quoted" || r.usedSince(i)) {
			o := Open{Kind: Unsure, Before: BeforeUse, About: shortName(about), LedgerID: t.LedgerID, Place: t.Place.by("what the value was said to be for")}
			o.Question = "What does the maker give for the " + shortName(about) + " of this machine? The value heard was said to be for another."
			out = append(out, o)
		}
		if h.of == nil || q.Low == nil {
			continue
		}
		ctx := r.torqueContext(h, rec)
		ctx.Condition = t.Condition
		low, ok := normalize.ToNM(q.Low, q.Unit)
		high, ok2 := normalize.ToNM(q.High, q.Unit)
		if !ok || !ok2 {
			continue
		}
		fs := findings(normalize.CheckTorque(low, high, ctx))
		t.Findings = append(t.Findings, fs...)
		for _, f := range fs {
			if (f.What == "too-much" || f.What == "too-little") && t.UnitFrom == "" { // of 20 values without their unit one was in doubt
				suspect(Suspect, []Finding{f})
				suspected[h] = true
			}
		}
	}
	out = append(out, r.pairChecks(rec)...)
	// two values for one fastener, neither of them a correction of the other
	of := map[*thing][]said{}
	for i := range r.heard {
		if h := &r.heard[i]; h.of != nil && !h.dropped {
			of[h.of] = append(of[h.of], r.saidBy(h))
		}
	}
	ranges := map[*thing][]said{} // those of each thing that are ranges
	for t, all := range of {
		for _, x := range all {
			if x.most > x.nm {
				ranges[t] = append(ranges[t], x)
			}
		}
	}
	for i := range r.heard {
		a := &r.heard[i]
		if a.of == nil || a.dropped {
			continue
		}
		mine := of[a.of][0] // those of a thing stand in order
		of[a.of] = of[a.of][1:]
		if a.rule == inAnotherUnit || suspected[a] {
			continue // it is set beside the one that it says again, or asked after already
		}
		for _, yours := range of[a.of] {
			b, qa, qb := yours.heard, mine.q, yours.q
			if r.since(qa.lo, qb.lo) > 60 {
				break
			}
			if b.rule == inAnotherUnit || suspected[b] {
				continue
			}
			if mine.near(yours) || mine.within(yours) || yours.within(mine) || a.stage != b.stage && b.stage > 0 {
				continue
			}
			if a.source.Scope == "other machine" || b.source.Scope == "other machine" {
				continue
			}
			if slices.ContainsFunc(ranges[a.of], func(x said) bool { return mine.within(x) && yours.within(x) }) {
				continue // "twenty two, well, it says twenty two to twenty six, I went twenty four"
			}
			if r.warnedOff(qa) || r.warnedOff(qb) || a.of.undoneBetween(qa.hi, qb.lo) {
				continue // one not to go to; one to seat it, and one after it was backed off
			}
			if a.applied != "quoted" && b.applied != "quoted" || qa.Unit != qb.Unit && r.toks[qa.hi-1].cl == r.toks[qb.lo].cl {
				continue
			}
			o := Open{Kind: Conflict, Before: BeforeUse, About: torqueName(a.of), LedgerID: a.of.id, Place: r.placeAround(max(r.clauses[qb.cl].lo, qb.lo-8), qb.hi+2, qb.lo), AlsoAt: []float64{round3(r.at(qa.lo))}}
			o.figure = r.text(qb.lo, qb.hi)
			o.Question = "Which value is right for the " + o.About + ", " + Heard(qa.Canonical) + " or " + Heard(qb.Canonical) + "?"
			out = append(out, o)
			break
		}
	}
	return append(out, r.exchangedOpen()...)
}

// usedSince tells whether a value that was only quoted was set later on the same thing.
func (r *reading) usedSince(i int) bool {
	h := &r.heard[i]
	q := &r.qtys[h.qty]
	for k := i + 1; k < len(r.heard); k++ {
		x := &r.heard[k]
		if p := &r.qtys[x.qty]; x.of == h.of && !x.dropped && x.applied == "done" && p.sameValue(q) {
			return true
		}
	}
	return false
}

// said is a torque that was heard, with its value in N·m; 0 where it has none.
type said struct {
	heard *heard
	q     *quantity
	nm    float64
	most  float64 // where it is a range, its upper end
}

func (r *reading) saidBy(h *heard) said {
	s := saidOf(&r.qtys[h.qty])
	s.heard = h
	return s
}

func saidOf(q *quantity) said {
	s := said{q: q}
	if s.q.Low != nil {
		if nm, ok := normalize.ToNM(s.q.Low, s.q.Unit); ok {
			s.nm, _ = nm.Float64()
		}
	}
	if s.q.High != nil {
		if nm, ok := normalize.ToNM(s.q.High, s.q.Unit); ok {
			s.most, _ = nm.Float64()
		}
	}
	return s
}

// within tells whether a torque lies in the range that another gives: who goes for a hundred
// and seventy where the sticker has a hundred and sixty to eighty does as it says.
func (s said) within(o said) bool {
	return s.nm > 0 && o.most > o.nm && s.nm >= 0.97*o.nm && s.most <= 1.03*o.most
}

// near tells whether two torques are one value, within three percent; what has
// no value differs from none.
func (s said) near(o said) bool {
	return s.nm == 0 || o.nm == 0 || s.nm/o.nm > 0.97 && s.nm/o.nm < 1.03
}

// pairChecks sets two values that stand side by side in two units against each
// other: "240 newton metres, which is 77 foot pounds".
func (r *reading) pairChecks(rec *Record) []Open {
	var out []Open
	for i := 1; i < len(r.qtys); i++ {
		p, q := &r.qtys[i-1], &r.qtys[i]
		if p.Kind != q.Kind || p.Unit == q.Unit || !r.besideEachOther(p.hi, q.lo) {
			continue
		}
		fs := findings(normalize.CheckPair(p.Quantity, q.Quantity))
		if len(fs) == 0 {
			continue
		}
		e := &looseEnd{kind: Suspect, before: BeforeUse, first: p.cl, last: q.cl, lo: p.lo, hi: q.hi, topic: -1, noun: -1, signal: "pair"}
		r.aim(e, p.cl, openCue{lo: p.lo, hi: q.hi})
		o := r.askOf(e, rec)
		o.Rule = "check of the value"
		for k := range rec.Torques {
			if t := &rec.Torques[k]; t.Clip == o.Clip && t.Fastener != "" && (t.At == round3(r.at(p.lo)) || t.At == round3(r.at(q.lo))) {
				o.About, o.LedgerID = shortName(t.Fastener), t.LedgerID
				t.Findings = append(t.Findings, fs...)
			}
		}
		o.Findings = fs
		o.Question = strings.ReplaceAll(question(o)+" "+fs[0].Why+".", "..", ".")
		out = append(out, o)
	}
	return out
}

// besideEachOther tells whether two values stand side by side as one: no more
// than a few small words between them.
func (r *reading) besideEachOther(lo, hi int) bool {
	if hi-lo > 5 || hi < lo || r.since(max(lo-1, 0), hi) > 8 {
		return false
	}
	for i := lo; i < hi; i++ {
		switch r.toks[i].s {
		case "which", "that", "or", "about", "is", "what", "like", "'s", "so", "and", "in", "bracket", "brackets", "call", "it", "roughly", "around":
		default:
			return false
		}
	}
	return true
}

// torqueContext gathers what the talk says of the fastener that a torque is for.
func (r *reading) torqueContext(h *heard, rec *Record) normalize.TorqueContext {
	t := h.of
	ctx := normalize.TorqueContext{AxleOrHub: t.head == "axle" || t.head == "spindle" || t.mods["axle"] || t.mods["hub"] || t.mods["spindle"], GeneralValue: h.source.Scope == scopeGeneral}
	if t.mods["grub"] || t.head == "grub" || t.mods["set"] && t.head == "screw" {
		ctx.HeadStyle = "set"
	}
	names := map[string]bool{t.name: true}
	for _, s := range rec.Sizes {
		if s.Of == "" || !names[s.Of] && !sameThingName(s.Of, t) || len(s.Candidates) != 1 && threadIn(s) == "" {
			continue
		}
		switch s.Dimension {
		case "thread":
			ctx.Thread = threadIn(s)
		case "key", "driver":
			ctx.Key = thickerKey(ctx.Key, s.Candidates[0], ctx.HeadStyle)
		case "across-flats":
			// no common head is narrower: such a width is a key's (common practice)
			if w, ok := strings.CutSuffix(s.Candidates[0], " mm"); !ok || len(w) > 1 || w >= "7" {
				ctx.AcrossFlats = s.Candidates[0]
			}
		}
	}
	return ctx
}

// thickerKey gives the one of two keys that turns the thicker screws: a bit that is hammered
// into what a key has rounded tells of no thread.
func thickerKey(a, b, head string) string {
	thickest := func(key string) (most float64) {
		for name := range normalize.KeyThreads(key, head) {
			for _, th := range normalize.Threads(name) {
				most = max(most, th.Major)
			}
		}
		return most
	}
	if a != "" && thickest(a) > thickest(b) {
		return a
	}
	return b
}

// threadIn gives the thread of a size without its length, "" where its candidates have not all the same.
func threadIn(s Size) string {
	of := ""
	for i, c := range s.Candidates {
		th, _, _ := strings.Cut(c, "x")
		if strings.Contains(c, ".") {
			th = c // its pitch
		}
		if i > 0 && th != of || s.Dimension != "thread" {
			return ""
		}
		of = th
	}
	return of
}

// sameThingName tells whether a size's name is a name of the thing.
func sameThingName(of string, t *thing) bool {
	of = lexicon.Singular(of)
	if !strings.HasSuffix(of, t.head) {
		return false // nearly always
	}
	f := strings.Fields(of)
	if len(f) == 0 || f[len(f)-1] != t.head {
		return false
	}
	for _, w := range f[:len(f)-1] {
		if !t.mods[w] {
			return false
		}
	}
	return len(f) > 1
}

// sizeChecks asks after sizes that no standard has.
func (r *reading) sizeChecks(rec *Record) []Open {
	var out []Open
	for _, s := range rec.Sizes {
		kind := normalize.Size
		switch s.Dimension {
		case "thread":
			kind = normalize.Thread
		case "drive":
			kind = normalize.Drive
		case "driver":
			kind = normalize.Driver
			if !strings.HasPrefix(s.Candidates[0], "T") && !strings.HasPrefix(s.Candidates[0], "PH") && !strings.HasPrefix(s.Candidates[0], "E") && !strings.HasPrefix(s.Candidates[0], "PZ") {
				continue // a drill bit, or a blade's width
			}
		case "length", "unsaid":
			continue
		}
		for _, c := range s.Candidates {
			form := c
			if kind == normalize.Thread && strings.Count(c, "x") == 1 && !strings.Contains(c[strings.Index(c, "x"):], ".") {
				form, _, _ = strings.Cut(c, "x") // M8x30: the 30 is a length
			}
			fs := findings(normalize.CheckSize(form, kind))
			if len(fs) == 0 {
				continue
			}
			o := Open{Kind: Suspect, Before: BeforeUse, About: shortName(s.Of + " " + c), Place: s.Place.by("check of the size"), Findings: fs}
			o.Question = "Is the size " + c + " (" + s.Of + ") right? " + strings.TrimSuffix(fs[0].Why, ".") + "."
			if kind == normalize.Drive {
				continue // the tool's list shows the repair; nothing on the machine hangs on it
			}
			out = append(out, o)
		}
	}
	return out
}

// statement is what a source, or the machine itself, says in a clause.
type statement struct {
	ci      int
	source  bool
	numbers []string
}

// statementIn reads the statement that a clause makes, if it makes one. What a
// source says often ends in the clause after the one that names it.
func (r *reading) statementIn(ci int) (statement, bool) {
	c := &r.clauses[ci]
	st := statement{ci: ci}
	found := false
	if c.mood&(aside|greeting|conditional|asked) != 0 {
		return st, false
	}
	for _, o := range c.opens {
		switch o.signal {
		case "source":
			if !r.overlaps(c, o, "unknown") { // "that's in the other manual"
				st.source, found = true, true
			}
		case "here":
			found = true
		}
	}
	if !found && r.said(c) {
		st.source, found = true, true
	}
	if !found {
		return st, false
	}
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "limit", "minimum", "maximum", "least", "most", "wear":
			return st, false // how far it may wear, not what it is
		}
	}
	st.numbers = r.numbers(c)
	if n := ci + 1; len(st.numbers) == 0 && n < len(r.clauses) && r.clauses[n].sentence == c.sentence && !r.heardIn(n, n, "source", "here") {
		st.numbers = r.numbers(&r.clauses[n])
	}
	return st, true
}

// overlaps tells whether a cue shares words with one of some signal.
func (r *reading) overlaps(c *clause, oc openCue, signal string) bool {
	for _, o := range c.opens {
		if o.signal == signal && o.lo < oc.hi && oc.lo < o.hi {
			return true
		}
	}
	return false
}

// said tells whether somebody who is neither speaker nor listener is said to
// give a figure: "some people say thirty, one says fifty".
func (r *reading) said(c *clause) bool {
	for i := c.lo + 1; i < c.hi; i++ {
		switch r.toks[i].s {
		case "says", "say", "reckons", "reckon", "recommends":
			if p := r.toks[i-1].s; p != "i" && p != "you" && p != "to" && p != "'d" && p != "'ll" && p != "shall" && len(r.numbers(c)) > 0 {
				return true
			}
		}
	}
	return false
}

// statements gives the statements of the clauses from lo to hi, no more than so
// many seconds after the first.
func (r *reading) statements(lo, hi int, seconds float64) []statement {
	var out []statement
	for k := max(lo, 0); k <= min(hi, len(r.clauses)-1); k++ {
		if r.since(r.clauses[max(lo, 0)].lo, r.clauses[k].lo) > seconds {
			break
		}
		if st, ok := r.statementIn(k); ok {
			out = append(out, st)
		}
	}
	return out
}

// belied gives the clause whose statement the statement of clause ci does not
// agree with: a document against another, or against the machine; -1 where none.
func (r *reading) belied(ci int) int {
	b, ok := r.statementIn(ci)
	if !ok {
		return -1
	}
	for _, a := range r.statements(ci-7, ci-1, 1e6) {
		if r.since(r.clauses[a.ci].lo, r.clauses[ci].lo) < 25 && (a.source || b.source) && r.atOdds(a, b) {
			return a.ci
		}
	}
	return -1
}

// selfOdds tells whether a clause has two sources give two figures in one breath:
// "the cap says ten and the leaflet says fifteen".
func (r *reading) selfOdds(ci int) bool {
	c := &r.clauses[ci]
	if c.mood&(aside|greeting|conditional|asked) != 0 {
		return false
	}
	var ends []openCue
	for _, o := range c.opens {
		if (o.signal == "source" || o.signal == "here") && (len(ends) == 0 || o.lo > ends[len(ends)-1].lo+2) {
			ends = append(ends, o)
		}
	}
	if len(ends) < 2 || ends[0].signal != "source" && ends[1].signal != "source" {
		return false
	}
	a, b := r.numbersIn(ends[0].lo, ends[1].lo), r.numbersIn(min(ends[1].hi, c.hi), c.hi)
	for _, qa := range c.qtys {
		for _, qb := range c.qtys {
			x, y := &r.qtys[qa], &r.qtys[qb]
			if x.hi <= ends[1].lo && y.lo >= ends[1].hi && (x.Kind != y.Kind || x.Kind == normalize.Torque && saidOf(x).near(saidOf(y))) {
				return false
			}
		}
	}
	for i := 0; i < min(len(a), len(b)); i++ {
		if a[i] != b[i] {
			return true
		}
	}
	return false
}

// atOdds tells whether two statements of one matter cannot both be right.
func (r *reading) atOdds(a, b statement) bool {
	ca, cb := &r.clauses[a.ci], &r.clauses[b.ci]
	for _, qa := range ca.qtys {
		for _, qb := range cb.qtys {
			x, y := &r.qtys[qa], &r.qtys[qb]
			if x.Kind == normalize.Torque && y.Kind == normalize.Torque && saidOf(x).near(saidOf(y)) {
				return false // one value in two units
			}
		}
	}
	if len(ca.qtys) > 0 && len(cb.qtys) > 0 {
		alike := false
		for _, qa := range ca.qtys {
			for _, qb := range cb.qtys {
				alike = alike || r.qtys[qa].Kind == r.qtys[qb].Kind
			}
		}
		if !alike {
			return false // a torque and a height
		}
	}
	if cb.mood&other != 0 && !b.source || a.source && !b.source && len(cb.qtys) == 0 && r.onlyTorques(ca) {
		return false // a torque, and how many of them there are
	}
	if len(a.numbers) > 0 && len(b.numbers) > 0 {
		same := 0
		for _, x := range a.numbers {
			for _, y := range b.numbers {
				if x == y {
					same++
				}
			}
		}
		if same > 0 && !(same < len(a.numbers) && len(a.numbers) == len(b.numbers) && a.source && b.source && inStep(a.numbers, b.numbers)) {
			return false
		}
		return r.oneThing(ca, cb)
	}
	if a.source && b.source && r.opposed(ca, cb) {
		return r.oneThing(ca, cb)
	}
	if a.source == b.source {
		return false
	}
	// a document and the machine, without figures: one denies the other
	first := r.toks[cb.lo].s
	if (first == "but" || first == "and") && (cb.mood&negated != 0 || first == "but") || r.opposed(ca, cb) {
		return true
	}
	return a.source && (r.saidIn(cb, "only") || cb.mood&negated != 0) && len(ca.mentions) > 0 && r.oneThing(ca, cb)
}

// onlyTorques tells whether a clause gives torques and no other quantities.
func (r *reading) onlyTorques(c *clause) bool {
	for _, q := range c.qtys {
		if r.qtys[q].Kind != normalize.Torque {
			return false
		}
	}
	return len(c.qtys) > 0
}

// inStep tells whether two rows of figures differ at some places and are the same
// at others: "ten w forty" and "fifteen w forty".
func inStep(a, b []string) bool {
	for i := range a {
		if a[i] == b[i] {
			return true
		}
	}
	return false
}

// oneThing tells whether two clauses may speak of one thing: they name none in
// common only where one of them names none at all.
func (r *reading) oneThing(a, b *clause) bool {
	var as, bs []string
	for _, mi := range a.mentions {
		if m := &r.mentions[mi]; r.topical(m) {
			as = append(as, strings.TrimSuffix(m.head, "s"))
		}
	}
	for _, mi := range b.mentions {
		if m := &r.mentions[mi]; r.topical(m) {
			bs = append(bs, strings.TrimSuffix(m.head, "s"))
		}
	}
	if len(as) == 0 || len(bs) == 0 {
		return true
	}
	for _, x := range as {
		for _, y := range bs {
			if x == y {
				return true
			}
		}
	}
	return false
}

// opposed tells whether two clauses say opposite places: "on the inside", "drawn on the outside".
func (r *reading) opposed(a, b *clause) bool {
	for i := a.lo; i < a.hi; i++ {
		for k := b.lo; k < b.hi; k++ {
			if o := opposite[canonPlace(r.toks[i].s)]; o != "" && o == canonPlace(r.toks[k].s) {
				return true
			}
		}
	}
	return false
}

// parts of a whole stand for a figure: "the manual says a sixteenth".
var parts = set("half third quarter fifth sixth eighth tenth sixteenth thirtysecond hundredth thou")

// numbers gives the numbers of a clause, as they are compared.
func (r *reading) numbers(c *clause) []string {
	return r.numbersIn(c.lo, c.hi)
}

// numbersIn gives the numbers between two tokens.
func (r *reading) numbersIn(lo, hi int) []string {
	var out []string
	if lo >= hi {
		return nil
	}
	for _, n := range r.numbersOf(lo, hi) {
		if n.Low != nil {
			out = append(out, n.Low.RatString())
		}
	}
	for i := lo; i+1 < hi && len(out) == 0; i++ {
		if w := r.toks[i+1].s; (r.toks[i].s == "a" || r.toks[i].s == "an") && parts.has(w) {
			out = append(out, w)
		}
	}
	return out
}

// besideSuspect leaves out of what disagrees that of which a value is asked after already because
// it cannot be right: of one figure there is one question. Two who give different figures are asked of
// beside that.
func besideSuspect(in []Open) []Open {
	var out []Open
	for _, o := range in {
		if o.Kind == Conflict && !o.byTwo && o.figure == "" && slices.ContainsFunc(in, func(p Open) bool {
			if p.Kind != Suspect || p.Clip != o.Clip || p.About != o.About && (p.LedgerID == "" || p.LedgerID != o.LedgerID) {
				return false
			}
			return slices.ContainsFunc(append(o.AlsoAt, o.At), func(at float64) bool { return math.Abs(at-p.At) < 12 })
		}) {
			continue
		}
		out = append(out, o)
	}
	return out
}

// unitsWanting asks for the unit of the values that have none, since the talk names none, and which
// no other question is about: once for all of them, since who leaves it unsaid means the same one.
func (r *reading) unitsWanting(torques []Torque, said []Open) []Open {
	var o Open
	var values []string
	for i := range torques {
		t := &torques[i]
		if t.Said.Unit != "" || t.Said.Low == 0 || t.SourceSaid.Scope == scopeOther {
			continue
		}
		value := strconv.FormatFloat(t.Said.Low, 'f', -1, 64)
		if t.Said.High != t.Said.Low {
			value += " to " + strconv.FormatFloat(t.Said.High, 'f', -1, 64)
		}
		if t.Fastener != "" {
			value += " of the " + shortName(t.Fastener)
		}
		if slices.Contains(values, value) || slices.ContainsFunc(said, func(p Open) bool {
			return (p.Kind == LookUp || p.Kind == Conflict || p.Kind == Unsure || p.Kind == Suspect) && p.Clip == t.Clip && math.Abs(p.At-t.At) < 12
		}) {
			continue
		}
		if values = append(values, value); len(values) > 1 {
			if o.About, o.LedgerID = "the unit", ""; t.Clip == o.Clip {
				o.AlsoAt = append(o.AlsoAt, t.At)
			}
			continue
		}
		o = Open{Kind: LookUp, Before: BeforeUse, About: "the unit", Place: t.Place.by(noUnit)}
		if t.Fastener != "" {
			o.About, o.LedgerID = shortName(t.Fastener), t.LedgerID
		}
	}
	switch len(values) {
	case 0:
		return nil
	case 1:
		o.Question = unitAsked + "is the value " + values[0] + ", which the recording does not say, and which source gives it?"
	default:
		o.Question = unitAsked + "are the values that the recording gives without one, and which source gives it: " + strings.Join(values, "; ") + "?"
	}
	return []Open{o}
}

// unitAsked is how a question for a unit begins, noUnit the rule of one that the whole talk leaves open.
const (
	unitAsked = "In which unit "
	noUnit    = "how tight, and no unit in the talk"
)

// undoneBetween tells whether a thing is slackened or taken off between two tokens.
func (t *thing) undoneBetween(lo, hi int) bool {
	return slices.ContainsFunc(t.events, func(e event) bool {
		state := ledgerActs[e.action]
		return e.lo >= lo && e.lo < hi && (state == Loosened || state == Removed)
	})
}

// agreed leaves out the conflicts of what is set and what it is said to be, where both are the
// same or one lies within the other and nothing else is said: "twelve it says on it, so I've done
// it to twelve", "I do that to ten. The sheet says eight to twelve newton metres."
func (r *reading) agreed(in []Open, torques []Torque) []Open {
	return slices.DeleteFunc(in, func(o Open) bool {
		if o.Kind != Conflict || len(o.Findings) > 0 {
			return false
		}
		low, high, set, quoted := 0.0, math.Inf(1), false, false
		told := map[string]bool{}
		for i := range torques {
			t := &torques[i]
			if t.Clip != o.Clip || math.Abs(t.At-o.At) > 12 || o.LedgerID != "" && t.LedgerID != o.LedgerID {
				continue
			}
			if len(t.NM) != 2 || t.Hedged || t.SourceSaid.Scope == "general" || t.SourceSaid.Scope == "other machine" {
				return false
			}
			low, high = max(low, t.NM[0]), min(high, t.NM[1])
			set = set || t.Applied == "done"
			quoted = quoted || t.Applied != "done" || t.SourceSaid.Who+t.SourceSaid.Title != ""
			for _, v := range []float64{t.Said.Low, t.Said.High} {
				told[strconv.FormatFloat(v, 'f', -1, 64)] = true
			}
		}
		if !set || !quoted || low > high {
			return false
		}
		for _, n := range normalize.Numbers(o.Quote) {
			if n.Low == nil || !told[n.Low.RatString()] || !told[n.High.RatString()] {
				return false // another figure, or one of another thing
			}
		}
		lo, hi := r.nearBy(int(r.toks[r.tokenOf(o.Place)].cl), 4, 6, 12)
		return !r.heardIn(lo, hi, "wrong", "odds", "gainsaid", "misprint", "misgiving", "undecided", "undone", "look-up", "other-machine", "by-size", "doubt")
	})
}
