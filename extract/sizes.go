package extract

import (
	"math/big"
	"sort"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// sized is a size heard, before it is told whose it is.
type sized struct {
	lo, hi int
	canon  []string
	kind   normalize.Kind
	hedged bool
	cl     int
	tool   int // mention of the tool it belongs to, or -1
	gone   bool
}

// sizesAndTools reads the sizes said, and the tools with theirs.
func (r *reading) sizesAndTools() ([]Size, []Tool) {
	found := r.findSizes()
	r.sizeTools(found)
	return r.sizes(found), r.tools(found)
}

// sizeTool are the tools that have sizes of their own; the value is the dimension they tell.
var sizeTool = map[string]string{"socket": "across-flats", "spanner": "across-flats", "wrench": "across-flats", "key": "key", "hex": "key", "allen": "key", "bit": "driver",
	"ratchet": "drive", "bar": "drive", "torx": "driver", "driver": "driver", "screwdriver": "driver", "extension": "drive", "ender": "across-flats", "drill": "length", "pipe": "length", "yoke": "key", "sockets": "across-flats", "spanners": "across-flats", "wrenches": "across-flats", "tap": "thread", "punch": "length", "star": "driver", "end": "across-flats"}

func (r *reading) findSizes() []sized {
	var out []sized
	for qi := range r.qtys {
		q := &r.qtys[qi]
		switch q.Kind {
		case normalize.Size, normalize.Thread, normalize.Drive, normalize.Driver, normalize.Length:
		default:
			continue
		}
		if q.Kind == normalize.Length && !r.sizeLike(q) {
			continue
		}
		c := &r.clauses[q.cl]
		if c.mood&(advert|greeting) != 0 {
			continue
		}
		s := sized{lo: q.lo, hi: q.hi, kind: q.Kind, hedged: q.Hedged, cl: q.cl, tool: -1}
		for _, x := range strings.Split(q.Canonical, " | ") {
			s.canon = append(s.canon, sizeForm(x))
		}
		out = append(out, s)
	}
	for ci := range r.clauses {
		out = append(out, r.bareSizes(ci)...)
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].lo < out[j].lo })
	r.unite(out)
	var kept []sized
	for _, s := range out {
		if !s.gone {
			kept = append(kept, s)
		}
	}
	return kept
}

// sizeForm writes a size in the record's way.
func sizeForm(s string) string {
	s = strings.ReplaceAll(s, " x ", "x")
	if strings.HasPrefix(s, "M") {
		s = strings.TrimSuffix(s, " mm")
	}
	if f := strings.Fields(s); len(f) == 3 && strings.Contains(f[1], "/") {
		s = f[0] + "-" + f[1] + " " + f[2]
	}
	return s
}

// sizeLike tells whether a length is the size of a fastener or of a tool: it
// stands beside one, and is no longer than such sizes are.
func (r *reading) sizeLike(q *quantity) bool {
	if q.Low == nil {
		return false
	}
	mm, ok := normalize.Convert(q.Low, q.Unit, "mm")
	if !ok || mm.Cmp(big.NewRat(65, 1)) > 0 || mm.Cmp(big.NewRat(1, 1)) < 0 {
		return false
	}
	c := &r.clauses[q.cl]
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if (m.lo == q.hi || m.from == q.hi) && (m.kind&(lexicon.Fastener) != 0 || sizeTool[m.head] != "") {
			return true
		}
		if m.hi == q.lo && (m.kind&lexicon.Fastener != 0 || m.kind&lexicon.Tool != 0 && sizeTool[m.head] != "") {
			return true
		}
	}
	if n := r.word(q.hi); n == "head" || n == "af" {
		return true
	}
	// alone in its clause after a fastener: "Two bolts. Twelve millimeter."
	if c.hi-c.lo <= 4 && len(c.mentions) == 0 {
		for k := q.cl - 1; k >= 0 && k >= q.cl-3; k-- {
			for _, mi := range r.clauses[k].mentions {
				if r.mentions[mi].kind&lexicon.Fastener != 0 {
					return true
				}
			}
		}
	}
	for i := c.lo; i < c.hi; i++ {
		switch r.toks[i].s {
		case "gap", "play", "clearance", "long", "thick", "deep", "level", "travel", "down", "wide", "proud", "longer", "bent", "taller", "foot", "feet", "away":
			return false
		}
	}
	for _, mi := range c.mentions {
		if r.mentions[mi].kind&lexicon.Fastener != 0 {
			return true
		}
	}
	return false
}

// bareSizes reads sizes said without a unit: "a twelve and a ten", "10 spanner", "it's a 13".
func (r *reading) bareSizes(ci int) []sized {
	c := &r.clauses[ci]
	var out []sized
	if c.mood&(advert|greeting) != 0 {
		return nil
	}
	base := r.toks[c.lo].lo
	end := r.talk.Words[r.toks[c.hi-1].w].Hi
	for _, n := range normalize.Numbers(r.talk.Text[base:end]) {
		a, b := r.tokenAt(n.Start+base), r.tokenAt(n.End+base-1)+1
		if a < c.lo || b > c.hi || a >= b || r.toks[a].qty >= 0 || r.toks[b-1].qty >= 0 || n.Low == nil {
			continue
		}
		if !r.sizePosition(c, a, b) {
			continue
		}
		vals := []*big.Rat{n.Low}
		if n.High != nil && n.High.Cmp(n.Low) != 0 {
			vals = append(vals, n.High)
		}
		s := sized{lo: a, hi: b, kind: normalize.Size, hedged: n.Hedged || n.Alt, cl: ci, tool: -1}
		ok := true
		for _, v := range vals {
			switch {
			case v.IsInt() && v.Cmp(big.NewRat(2, 1)) >= 0 && v.Cmp(big.NewRat(50, 1)) <= 0:
				s.canon = append(s.canon, v.Num().String()+" mm")
			case !v.IsInt() && v.Cmp(big.NewRat(2, 1)) < 0 && isPow2(v.Denom()):
				s.canon = append(s.canon, inchForm(v))
			case v.Cmp(big.NewRat(5, 2)) == 0 || v.Cmp(big.NewRat(3, 2)) == 0:
				s.canon = append(s.canon, v.FloatString(1)+" mm")
			default:
				ok = false
			}
		}
		if ok && len(s.canon) > 0 {
			out = append(out, s)
		}
	}
	return out
}

func isPow2(n *big.Int) bool {
	if !n.IsInt64() {
		return false
	}
	v := n.Int64()
	return v > 1 && v&(v-1) == 0 && v <= 64
}

func inchForm(v *big.Rat) string {
	whole := new(big.Int).Quo(v.Num(), v.Denom())
	rest := new(big.Rat).Sub(v, new(big.Rat).SetInt(whole))
	if whole.Sign() == 0 {
		return rest.RatString() + " in"
	}
	return whole.String() + "-" + rest.RatString() + " in"
}

// sizePosition tells whether a bare number stands where a size does.
func (r *reading) sizePosition(c *clause, a, b int) bool {
	prev, next := "", ""
	if a > c.lo {
		prev = r.toks[a-1].s
	}
	if b < c.hi {
		next = r.toks[b].s
	}
	// right before or after a tool that has sizes
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.kind&lexicon.Tool == 0 || sizeTool[m.head] == "" {
			continue
		}
		if m.lo == b && (m.count == 0 || prev == "a" || prev == "the" || !m.plural) && r.toks[b-1].brk <= brkPause {
			return !(m.plural && prev != "a")
		}
		if m.hi == a && r.toks[a-1].brk != brkSentence && (b == c.hi || r.toks[b].men < 0) {
			return true
		}
	}
	// "a twelve": a number with an article, and no noun after it
	if (prev == "a" || prev == "an") && (b == c.hi || r.toks[b-1].brk > brkPause || next == "and" || next == "or" || next == "for" || next == "on" || next == "a" || next == "mil" || next == "to" || next == "as" || next == "but" || next == "in" || next == "head" || next == "thread" || next == "that" || next == "so" || next == "maybe" || next == "might" || next == "then" || next == "here" || next == "again") {
		return r.sizeTalk(c)
	}
	// "they're an eight", "the cap is, uh, twenty four"
	if (prev == "is" || prev == "'s" || prev == "are" || prev == "'re" || prev == "uh" || prev == "um") && (b == c.hi || r.toks[b-1].brk > brkPause) {
		for _, mi := range c.mentions {
			if m := &r.mentions[mi]; m.kind&lexicon.Fastener != 0 && m.hi <= a && a-m.hi <= 3 {
				return true
			}
		}
	}
	// "Nineteen." alone, right after a fastener
	if c.hi-c.lo == b-a && r.toks[c.hi-1].brk >= brkSentence {
		if k := r.toks[c.lo].cl - 1; k >= 0 && r.clauses[k].hi-r.clauses[k].lo <= 8 {
			for _, mi := range r.clauses[k].mentions {
				if r.mentions[mi].kind&lexicon.Fastener != 0 {
					return true
				}
			}
		}
	}
	// "Thirteen." alone, after a size or a fastener
	if c.hi-c.lo <= 3 && a-c.lo <= 1 && len(c.mentions) == 0 && c.hi-b == 0 {
		for k := r.toks[c.lo].cl - 1; k >= 0 && k >= r.toks[c.lo].cl-2; k-- {
			p := &r.clauses[k]
			for _, qi := range p.qtys {
				if r.qtys[qi].Kind == normalize.Size {
					return true
				}
			}
		}
	}
	return false
}

// sizeTalk tells whether the talk around a clause is of fasteners or of tools.
func (r *reading) sizeTalk(c *clause) bool {
	ci := r.toks[c.lo].cl
	for k := max(0, ci-2); k <= ci; k++ {
		for _, mi := range r.clauses[k].mentions {
			m := &r.mentions[mi]
			if m.kind&lexicon.Fastener != 0 || m.kind&lexicon.Tool != 0 && sizeTool[m.head] != "" {
				return true
			}
		}
	}
	return false
}

// kindOf makes one kind of sizes and short lengths, which are said alike.
func kindOf(k normalize.Kind) normalize.Kind {
	if k == normalize.Length {
		return normalize.Size
	}
	return k
}

var corrects = set("no sorry lie wait actually nope hang wrong")

// unite makes two candidates of "a 13, might be a 12", and lets a correction stand alone.
func (r *reading) unite(out []sized) {
	for i := range out {
		if out[i].gone {
			continue
		}
		for j := i + 1; j < len(out) && j < i+4; j++ {
			if out[j].gone || kindOf(out[i].kind) != kindOf(out[j].kind) {
				continue
			}
			if out[j].lo-out[i].hi > 9 || r.since(out[i].lo, out[j].lo) > 12 {
				break
			}
			or, fix, andy := false, false, false
			for k := out[i].hi; k < out[j].lo; k++ {
				w := r.toks[k].s
				switch {
				case w == "or" || w == "either" || w == "maybe" || w == "might" || w == "could":
					or = true
				case corrects[w]:
					fix = true
				case w == "and" || r.toks[k].men >= 0:
					andy = true
				}
			}
			if or && !fix && !andy && len(out[i].canon) == 1 && len(out[j].canon) == 1 && out[i].canon[0] != out[j].canon[0] {
				out[i].canon = append(out[i].canon, out[j].canon...)
				out[i].hi = out[j].hi
				out[i].hedged = true
				out[j].gone = true
			} else if fix && !andy {
				out[i].gone = true
				break
			} else if out[i].canon[0] == out[j].canon[0] && len(out[i].canon) == 1 && len(out[j].canon) == 1 && !andy && r.since(out[i].lo, out[j].lo) < 5 {
				out[j].gone = true
			}
		}
	}
}

// takesSize tells whether a tool comes in sizes of that kind.
func takesSize(m *mention, s *sized) bool {
	dim := sizeTool[m.head]
	if dim == "" || m.kind&lexicon.Tool == 0 {
		return false
	}
	switch s.kind {
	case normalize.Thread:
		return dim == "thread"
	case normalize.Driver:
		return dim == "driver" || m.head == "key" && !strings.Contains(m.name, "allen") && !strings.Contains(m.name, "hex")
	case normalize.Drive:
		return dim == "drive" || m.head == "socket" || m.head == "wrench"
	}
	return dim != "drive" || m.head != "ratchet"
}

// sizeTools gives each size the tool it was said of: right behind it ("5 mil
// allen key"), before it ("sockets, nineteen mil and seventeen mil"), or the one
// whose list it goes on with.
func (r *reading) sizeTools(found []sized) {
	for i := range found {
		s := &found[i]
		if r.toks[s.hi-1].brk >= brkComma {
			continue
		}
		for _, mi := range r.clauses[s.cl].mentions {
			m := &r.mentions[mi]
			if m.lo >= s.hi && m.lo-s.hi <= 1 && takesSize(m, s) {
				s.tool = mi
				break
			}
		}
	}
	for i := len(found) - 2; i >= 0; i-- {
		s, n := &found[i], &found[i+1]
		if s.tool >= 0 || n.tool < 0 || n.lo-s.hi > 2 || r.toks[s.hi-1].brk >= brkComma || r.mentions[n.tool].lo < n.hi {
			continue
		}
		if w := r.toks[s.hi].s; (w == "and" || w == "or") && takesSize(&r.mentions[n.tool], s) {
			s.tool = n.tool
		}
	}
	for i := range found {
		s := &found[i]
		if s.tool >= 0 {
			continue
		}
		s.tool = r.toolBefore(s)
		if s.tool < 0 && i > 0 && found[i-1].tool >= 0 && s.lo-found[i-1].hi <= 6 && r.inToolList(&r.mentions[found[i-1].tool]) && takesSize(&r.mentions[found[i-1].tool], s) && s.kind == normalize.Size {
			// "a 30 mil socket …, and a 17 for the wheel bolts"
			if m := &r.mentions[found[i-1].tool]; m.head == "socket" || m.head == "spanner" || m.head == "wrench" {
				s.tool = found[i-1].tool
			}
		}
		if s.tool < 0 && s.kind == normalize.Size && len(s.canon[0]) > 3 {
			s.tool = r.listTool(s)
		}
	}
}

// listTool gives the socket or spanner that a bare size in a tool list stands for.
func (r *reading) listTool(s *sized) int {
	last := -1
	for k := s.cl; k >= 0 && k >= s.cl-3; k-- {
		ms := r.clauses[k].mentions
		for i := len(ms) - 1; i >= 0; i-- {
			m := &r.mentions[ms[i]]
			if m.lo < s.lo && s.lo-m.hi < 25 && m.kind&lexicon.Tool != 0 && (m.head == "socket" || m.head == "spanner" || m.head == "wrench") && !strings.Contains(m.name, "torque") {
				last = ms[i]
				break
			}
		}
		if last >= 0 {
			break
		}
	}
	if last >= 0 && r.inToolList(&mention{lo: s.lo, cl: s.cl}) {
		return last
	}
	return -1
}

var betweenSizes = set("a an and or in mil the one mostly i 'm using use is 's it size sizes plus also then of uh um that 'll metric deep long")

// toolBefore gives the tool that a size follows, with nothing between but sizes and small words.
func (r *reading) toolBefore(s *sized) int {
	c := &r.clauses[s.cl]
	small := 0
	for i := s.lo - 1; i >= max(0, s.lo-18); i-- {
		t := &r.toks[i]
		if i < c.lo && t.brk >= brkSentence && s.lo-i > 3 {
			return -1
		}
		if t.men >= 0 {
			m := &r.mentions[t.men]
			if takesSize(m, s) && (small <= 7) {
				if n := m.lo - 1; n >= 0 && r.toks[n].qty >= 0 && m.hi-m.lo > 0 && small > 1 && !m.plural {
					return -1 // that tool has a size of its own
				}
				return t.men
			}
			return -1
		}
		if t.qty >= 0 {
			continue
		}
		if len(t.s) > 0 && t.s[0] >= '0' && t.s[0] <= '9' || countOf[t.s] > 0 || numberWord[t.s] {
			continue
		}
		if !betweenSizes[t.s] {
			return -1
		}
		small++
	}
	return -1
}

var numberWord = set("thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty thirty half quarter eighths sixteenths three")

// sizes tells whose each size is.
func (r *reading) sizes(found []sized) []Size {
	out := []Size{}
	for _, s := range found {
		c := &r.clauses[s.cl]
		of, t := r.sizeOf(&s)
		if of == "" && s.tool >= 0 {
			of = lexicon.Singular(r.mentions[s.tool].name)
		}
		dim := "unsaid"
		switch s.kind {
		case normalize.Thread:
			dim = "thread"
		case normalize.Drive:
			dim = "drive"
		case normalize.Driver:
			dim = "driver"
		default:
			if s.tool >= 0 {
				dim = sizeTool[r.mentions[s.tool].head]
			} else if r.word(s.hi) == "head" || r.word(s.hi) == "af" || t != nil && takesTorque(t) {
				dim = "across-flats"
			}
		}
		sure := !s.hedged && len(s.canon) == 1 && c.mood&hedged == 0
		if k := s.cl + 1; sure && k < len(r.clauses) && r.clauses[k].mood&hedged != 0 && r.clauses[k].hi-r.clauses[k].lo <= 7 && len(r.clauses[k].mentions) == 0 && r.at(r.clauses[k].lo)-r.at(s.lo) < 6 {
			sure = false
		}
		out = append(out, Size{Of: shortName(of), Dimension: dim, Candidates: s.canon, Sure: sure, Place: r.placeAround(max(c.lo, s.lo-5), min(c.hi, s.hi+3), s.lo)})
	}
	return out
}

// sizeOf finds the fastener that a size is of: one named in the clause, else the
// one that the talk has in hand; a part where there is no fastener.
func (r *reading) sizeOf(s *sized) (string, *thing) {
	c := &r.clauses[s.cl]
	if s.tool >= 0 && (c.mood&listing != 0 || r.inToolList(&r.mentions[s.tool]) || s.kind == normalize.Drive || sizeTool[r.mentions[s.tool].head] == "drive") {
		// a tool list tells what it is for only with "for"
		for _, mi := range c.mentions {
			m := &r.mentions[mi]
			if m.entry != nil && m.prep == "for" && m.from >= s.hi && m.from-s.hi <= 4 && s.kind != normalize.Drive {
				return m.entry.name, m.entry
			}
		}
		return "", nil
	}
	var best *thing
	dist := 99
	for _, mi := range c.mentions {
		m := &r.mentions[mi]
		if m.entry == nil {
			continue
		}
		d := 0
		if m.lo >= s.hi {
			d = m.from - s.hi
			if m.prep == "for" {
				d = max(0, d-3)
			}
		} else {
			d = s.lo - m.hi
		}
		if !m.entry.fastener {
			d += 6
			if m.prep != "" && m.prep != "on" && m.prep != "for" {
				d += 20
			}
		}
		if s.tool >= 0 && m.lo >= s.hi && m.prep != "for" && m.prep != "on" && d > 3 || d > 14 && len(c.mentions) > 2 {
			continue
		}
		if d < dist {
			best, dist = m.entry, d
		}
	}
	if best != nil && (best.fastener || dist < 12) {
		return named(best), best
	}
	if s.tool >= 0 && !r.usedHere(c) {
		return "", nil
	}
	if t := r.spokenOf(s.cl, s.lo); t != nil {
		return named(t), t
	}
	if t := r.inHandAt(s.lo, 25); t != nil {
		return named(t), t
	}
	if best == nil {
		for k := s.cl - 1; k >= 0 && k >= s.cl-2 && r.since(r.clauses[k].lo, s.lo) < 15; k-- {
			for _, mi := range r.clauses[k].mentions {
				if t := r.mentions[mi].entry; t != nil {
					best = t
				}
			}
			if best != nil {
				break
			}
		}
	}
	if best == nil {
		return "", nil
	}
	return named(best), best
}

// spokenOf gives what the clauses right before were about: a fastener named there
// as more than a place, else a part.
func (r *reading) spokenOf(cl, tok int) *thing {
	for k := cl; k >= 0 && k >= cl-3 && r.since(r.clauses[k].lo, tok) < 15; k-- {
		var part *thing
		for _, mi := range r.clauses[k].mentions {
			m := &r.mentions[mi]
			if m.entry == nil || m.lo >= tok || m.prep != "" && m.prep != "on" && m.prep != "of" && m.prep != "for" {
				continue
			}
			if m.entry.fastener && alike[m.entry.head] {
				return m.entry
			}
			if part == nil {
				part = m.entry
			}
		}
		for _, ai := range r.clauses[k].acts {
			for _, t := range r.acts[ai].things {
				if t.fastener && r.acts[ai].lo < tok {
					return t
				}
			}
		}
		if part != nil {
			return part
		}
	}
	return nil
}

func named(t *thing) string {
	if t.name == "" {
		return t.head
	}
	return t.name
}

// touch is a moment at which a fastener was spoken of or handled.
type touch struct {
	tok int
	of  *thing
}

// inHandAt gives the fastener last named or handled before a token, within so many seconds.
func (r *reading) inHandAt(tok int, within float64) *thing {
	if r.touched == nil {
		r.touched = []touch{}
		for _, t := range r.things {
			if !t.fastener {
				continue
			}
			for _, mi := range t.mentions {
				r.touched = append(r.touched, touch{r.mentions[mi].lo, t})
			}
			for _, e := range t.events {
				r.touched = append(r.touched, touch{e.lo, t})
			}
		}
		sort.SliceStable(r.touched, func(i, j int) bool { return r.touched[i].tok < r.touched[j].tok })
	}
	i := sort.Search(len(r.touched), func(i int) bool { return r.touched[i].tok >= tok })
	if i > 0 && r.since(r.touched[i-1].tok, tok) <= within {
		return r.touched[i-1].of
	}
	return nil
}

// usedHere tells whether the clause is of work rather than of a list of tools.
func (r *reading) usedHere(c *clause) bool {
	if c.mood&listing != 0 {
		return false
	}
	ci := r.toks[c.lo].cl
	n := 0
	for k := max(0, ci-2); k <= min(ci+1, len(r.clauses)-1); k++ {
		for _, mi := range r.clauses[k].mentions {
			if r.mentions[mi].kind == lexicon.Tool {
				n++
			}
		}
	}
	return n < 4
}
