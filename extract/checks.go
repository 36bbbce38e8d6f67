package extract

import (
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
	out = append(out, r.disagreements(rec)...)
	return out
}

func findings(in []normalize.Finding) []Finding {
	var out []Finding
	for _, f := range in {
		out = append(out, Finding{What: f.What, Why: f.Why, Source: f.Source, Ask: f.Ask})
	}
	return out
}

// valueChecks sets each torque against its pair in another unit and against
// what its thread takes, and finds two values for one fastener.
func (r *reading) valueChecks(rec *Record) []Open {
	var out []Open
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
		if i > 0 && !r.heard[i-1].dropped {
			p := &r.qtys[r.heard[i-1].qty]
			if p.Unit != q.Unit && r.since(p.lo, q.lo) < 12 && (&tracker{r: r}).pairOf(p.hi, q.lo) {
				if fs := findings(normalize.CheckPair(p.Quantity, q.Quantity)); len(fs) > 0 {
					t.Findings = append(t.Findings, fs...)
					suspect(Suspect, fs)
				}
			}
		}
		if h.of == nil || q.Low == nil {
			continue
		}
		ctx := r.torqueContext(h, rec)
		low, ok := normalize.ToNM(q.Low, q.Unit)
		high, ok2 := normalize.ToNM(q.High, q.Unit)
		if !ok || !ok2 {
			continue
		}
		fs := findings(normalize.CheckTorque(low, high, ctx))
		t.Findings = append(t.Findings, fs...)
		for _, f := range fs {
			if f.What == "too-much" || f.What == "too-little" {
				suspect(Suspect, []Finding{f})
			}
		}
	}
	// two values for one fastener, neither of them a correction of the other
	of := map[*thing][]said{}
	for i := range r.heard {
		if h := &r.heard[i]; h.of != nil && !h.dropped {
			of[h.of] = append(of[h.of], r.saidBy(h))
		}
	}
	for i := range r.heard {
		a := &r.heard[i]
		if a.of == nil || a.dropped {
			continue
		}
		mine := of[a.of][0] // those of a thing stand in order
		of[a.of] = of[a.of][1:]
		for _, yours := range of[a.of] {
			b, qa, qb := yours.heard, mine.q, yours.q
			if r.since(qa.lo, qb.lo) > 60 {
				break
			}
			if mine.near(yours) {
				continue
			}
			if a.applied != "quoted" && b.applied != "quoted" {
				continue
			}
			o := Open{Kind: Conflict, Before: BeforeUse, About: torqueName(a.of), LedgerID: a.of.id, Place: r.placeAround(max(r.clauses[qb.cl].lo, qb.lo-8), qb.hi+2, qb.lo), AlsoAt: []float64{round3(r.at(qa.lo))}}
			o.Question = "Which value is right for the " + o.About + ", " + Heard(qa.Canonical) + " or " + Heard(qb.Canonical) + "?"
			out = append(out, o)
			break
		}
	}
	return out
}

// said is a torque that was heard, with its value in N·m; 0 where it has none.
type said struct {
	heard *heard
	q     *quantity
	nm    float64
}

func (r *reading) saidBy(h *heard) said {
	s := said{heard: h, q: &r.qtys[h.qty]}
	if s.q.Low != nil {
		if nm, ok := normalize.ToNM(s.q.Low, s.q.Unit); ok {
			s.nm, _ = nm.Float64()
		}
	}
	return s
}

// near tells whether two torques are one value, within three percent; what has
// no value differs from none.
func (s said) near(o said) bool {
	return s.nm == 0 || o.nm == 0 || s.nm/o.nm > 0.97 && s.nm/o.nm < 1.03
}

// torqueContext gathers what the talk says of the fastener that a torque is for.
func (r *reading) torqueContext(h *heard, rec *Record) normalize.TorqueContext {
	t := h.of
	ctx := normalize.TorqueContext{AxleOrHub: t.head == "axle" || t.head == "spindle" || t.mods["axle"] || t.mods["hub"] || t.mods["spindle"], GeneralValue: h.source.Scope == "general"}
	names := map[string]bool{t.name: true}
	for _, s := range rec.Sizes {
		if s.Of == "" || !names[s.Of] && !sameThingName(s.Of, t) || len(s.Candidates) != 1 {
			continue
		}
		switch s.Dimension {
		case "thread":
			th, _, _ := strings.Cut(s.Candidates[0], "x")
			if pitch := s.Candidates[0]; strings.Contains(pitch, ".") || !strings.Contains(pitch, "x") {
				th = s.Candidates[0]
			}
			ctx.Thread = th
		case "key", "driver":
			ctx.Key = s.Candidates[0]
		case "across-flats":
			ctx.AcrossFlats = s.Candidates[0]
		}
	}
	return ctx
}

// sameThingName tells whether a size's name is a name of the thing.
func sameThingName(of string, t *thing) bool {
	f := strings.Fields(lexicon.Singular(of))
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

// disagreements finds a document that does not match another, or the machine:
// two that "say" unlike things within a few breaths, or one that is contradicted.
func (r *reading) disagreements(rec *Record) []Open {
	var out []Open
	lastAt := -1.0
	for ci := range r.clauses {
		c := &r.clauses[ci]
		if c.mood&(advert|greeting|conditional) != 0 || !r.docSays(c) {
			continue
		}
		if lastAt >= 0 && r.at(c.lo)-lastAt < 25 && r.at(c.lo) >= lastAt {
			continue
		}
		hit := -1
		for k := ci; k < len(r.clauses) && k <= ci+5 && r.since(c.lo, r.clauses[k].lo) < 22; k++ {
			n := &r.clauses[k]
			if k > ci && r.docSays(n) && r.numberIn(n) && r.numberIn(c) && !r.sameNumbers(c, n) {
				hit = k
				break
			}
			if k == ci {
				continue
			}
			if r.numberIn(c) && r.numberIn(n) && !r.sameNumbers(c, n) && r.ofThisMachine(n) {
				hit = k // "the drawing has two, this one has three"
				break
			}
			w := r.toks[n.lo].s
			if w == "but" || w == "and" && k > ci {
				neg := n.mood&negated != 0 && !r.firstNeg(n)
				mine := false
				for i := n.lo; i < n.hi; i++ {
					switch r.toks[i].s {
					case "mine", "this", "machine", "here", "there's", "actually", "got", "one":
						mine = true
					}
				}
				if w == "but" && (neg || mine) || neg && mine {
					hit = k
					break
				}
			}
			for i := n.lo; i < n.hi; i++ {
				if s := r.toks[i].s; s == "wrong" || s == "disagree" || s == "printing" {
					hit = k
				}
			}
			if hit >= 0 {
				break
			}
		}
		if hit < 0 {
			continue
		}
		about := ""
		var id string
		for k := ci; k <= hit && about == ""; k++ {
			for _, mi := range r.clauses[k].mentions {
				m := &r.mentions[mi]
				if m.kind&(lexicon.Part|lexicon.Fastener|lexicon.Consumable) != 0 && !documents[m.head] {
					about = m.name
					if m.entry != nil && m.entry.name != "" {
						about, id = m.entry.name, m.entry.id
					}
					break
				}
			}
		}
		if about == "" {
			e := &looseEnd{kind: Conflict, first: ci, last: hit, topic: -1}
			if r.aim(e, ci, openCue{lo: c.lo, hi: c.lo + 1}); e.topic >= 0 {
				about = r.nameOf(&r.mentions[e.topic])
				if t := r.mentions[e.topic].entry; t != nil {
					id = t.id
				}
			}
		}
		o := Open{Kind: Conflict, Before: BeforeUse, About: shortName(about), LedgerID: id, Place: r.place(c.lo, min(r.clauses[hit].hi, c.lo+38)).by("a document against another, or the machine")}
		o.Question = spokenQuestion(o, about != "")
		out = append(out, o)
		lastAt = r.at(c.lo)
	}
	return out
}

// ofThisMachine tells whether a clause tells what the machine at hand has.
func (r *reading) ofThisMachine(c *clause) bool {
	for i := c.lo; i < c.hi; i++ {
		next := r.word(i + 1)
		switch r.toks[i].s {
		case "this":
			if next == "machine" || next == "one" || next == "bike" || next == "car" || next == "saw" {
				return true
			}
		case "mine", "counted", "measured":
			return true
		case "i":
			if next == "count" || next == "'ve" && (r.word(i+2) == "got" || r.word(i+2) == "counted") || next == "make" || next == "measure" || next == "have" {
				return true
			}
		}
	}
	return false
}

// docSays tells whether a clause tells what a document says.
func (r *reading) docSays(c *clause) bool {
	doc, says := false, false
	for i := c.lo; i < c.hi; i++ {
		w := r.toks[i].s
		if documents[w] || w == "drawing" || w == "photocopy" || w == "bag" || w == "box" && i+1 < c.hi || w == "leaflet" || w == "tag" {
			doc = true
		}
		if w == "says" || w == "said" || w == "shows" || w == "stands" || w == "reckons" || w == "gives" || w == "say" || w == "show" || w == "has" && doc || w == "wants" && doc {
			says = true
		}
	}
	return doc && says
}

func (r *reading) firstNeg(c *clause) bool {
	for i := c.lo; i+1 < c.hi; i++ {
		if r.toks[i].s == "i" && strings.HasSuffix(r.toks[i+1].s, "n't") {
			return true
		}
	}
	return false
}

func (r *reading) numbers(c *clause) []string {
	var out []string
	base := r.toks[c.lo].lo
	end := r.talk.Words[r.toks[c.hi-1].w].Hi
	for _, n := range normalize.Numbers(r.talk.Text[base:end]) {
		if n.Low != nil {
			out = append(out, n.Low.RatString())
		}
	}
	return out
}

func (r *reading) numberIn(c *clause) bool { return len(r.numbers(c)) > 0 }

func (r *reading) sameNumbers(a, b *clause) bool {
	have := map[string]bool{}
	for _, n := range r.numbers(a) {
		have[n] = true
	}
	for _, n := range r.numbers(b) {
		if have[n] {
			return true
		}
	}
	return false
}
