package extract

import (
	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// parts gives the parts with their fate: said to be new, used again, thrown
// away, or standing in for now.
func (r *reading) parts() []Part {
	out := []Part{}
	seen := map[string]bool{}
	add := func(name, disp string, m *mention, lo, hi int) {
		if name == "" || seen[name+"|"+disp] {
			return
		}
		seen[name+"|"+disp] = true
		p := Part{Name: shortName(name), Disposition: disp, Place: r.place(lo, hi)}
		if m != nil {
			p.Count, p.Side = m.count, m.side
		}
		out = append(out, p)
	}
	stand := r.standIns()
	for mi := range r.mentions {
		m := &r.mentions[mi]
		if m.kind&(lexicon.Fastener|lexicon.Part) == 0 && !stand[mi] && !(m.kind&lexicon.Consumable != 0 && (m.head == "tie")) {
			continue
		}
		c := &r.clauses[m.cl]
		if c.mood&(advert|greeting|other) != 0 {
			continue
		}
		if stand[mi] {
			add(lexicon.Singular(m.name), "temporary", m, m.from, m.hi+4)
			continue
		}
		if m.kind&(lexicon.Fastener|lexicon.Part) == 0 {
			continue
		}
		name := lexicon.Singular(m.name)
		if m.entry != nil && m.entry.name != "" {
			name = lexicon.Singular(m.entry.name)
		}
		switch {
		case m.isNew && c.mood&(conditional|negated) == 0:
			add(name, "new", m, m.from, m.hi+3)
			if m.entry != nil {
				m.entry.isNew = true
			}
		case r.newOne(c, m):
			add(name, "new", m, m.from, m.hi+6)
		case r.usedAgain(c, m):
			add(name, "reused", m, m.from, m.hi+6)
		}
	}
	for _, t := range r.things {
		for _, e := range t.events {
			if e.action == "discard" {
				add(lexicon.Singular(t.name), "discarded", nil, e.lo-3, e.hi+2)
			}
		}
	}
	return out
}

// standIns gives the mentions of what is only there for now: the first thing of
// the clause that says so, or of the clause before where it names nothing.
func (r *reading) standIns() map[int]bool {
	out := map[int]bool{}
	for ci := range r.clauses {
		c := &r.clauses[ci]
		temporary := false
		for _, o := range c.opens {
			temporary = temporary || o.signal == "stand-in"
		}
		if !temporary || !r.laying(c) || c.mood&(advert|greeting|other) != 0 {
			continue
		}
		for k := ci; k >= max(0, ci-2) && r.since(r.clauses[k].lo, c.lo) < 10; k-- {
			found := -1
			for _, mi := range r.clauses[k].mentions {
				m := &r.mentions[mi]
				if m.kind&(lexicon.Fastener|lexicon.Part|lexicon.Consumable) != 0 && m.prep == "" {
					found = mi
					break
				}
			}
			if found >= 0 {
				out[found] = true
				break
			}
		}
	}
	return out
}

// laying tells whether something is in place rather than hand-tight "for now".
func (r *reading) laying(c *clause) bool {
	for _, q := range c.qtys {
		if r.qtys[q].Kind == normalize.Torque {
			return false
		}
	}
	for i := c.lo; i < c.hi; i++ {
		if (r.toks[i].s == "at" || r.toks[i].s == "with") && i+1 < c.hi && r.toks[i+1].s != "" && r.toks[i+1].s[0] >= '0' && r.toks[i+1].s[0] <= '9' {
			return false // "left it at 40 for now", "gone with 26 for now"
		}
		switch r.toks[i].s {
		case "hand", "finger", "loose", "snug", "tight":
			return false
		}
	}
	return true
}

// newOne reads "it gets a new one", "there's a new one in the kit" right after a thing.
func (r *reading) newOne(c *clause, m *mention) bool {
	if r.word(m.hi) == "new" && m.hi == c.hi-1 {
		return true // "needle bearing, new"
	}
	for i := m.hi; i+1 < len(r.toks) && i < m.hi+22; i++ {
		if r.toks[i].men >= 0 && r.toks[i].men != r.toks[m.lo].men && r.mentions[r.toks[i].men].kind&(lexicon.Fastener|lexicon.Part) != 0 {
			return false
		}
		if r.toks[i].s == "new" && (r.toks[i+1].s == "one" || r.toks[i+1].s == "ones") {
			return true
		}
	}
	return false
}

var againPhrases = [][]string{{"going", "back"}, {"run", "it", "again"}, {"reuse"}, {"reusing"}, {"use", "it", "again"}, {"use", "them", "again"}, {"going", "in", "again"}, {"still", "good"}, {"goes", "back", "in"}, {"goes", "back", "on"}, {"re", "use"}, {"used", "again"}, {"go", "again"}, {"same", "one"}, {"perfectly", "good"}, {"as", "good", "as", "new"}}

// usedAgain reads "that's going back in", "i'm gonna run it again" of a thing.
func (r *reading) usedAgain(c *clause, m *mention) bool {
	if c.mood&negated != 0 {
		return false
	}
	hi := min(len(r.toks), m.hi+18)
	for i := m.hi; i < hi; i++ {
		if r.toks[i].men >= 0 && i > m.hi+1 && r.mentions[r.toks[i].men].kind&(lexicon.Fastener|lexicon.Part) != 0 {
			return false
		}
		if r.toks[i].s == "not" || r.toks[i].s == "never" {
			return false
		}
		for _, p := range againPhrases {
			if r.says(i, hi, p) {
				return true
			}
		}
	}
	return false
}

// consumables gives what was used up, with what it went on.
func (r *reading) consumables() []Consumable {
	out := []Consumable{}
	seen := map[string]bool{}
	for mi := range r.mentions {
		m := &r.mentions[mi]
		if m.kind&lexicon.Consumable == 0 || m.kind&lexicon.Part != 0 && m.kind&lexicon.Consumable == 0 {
			continue
		}
		c := &r.clauses[m.cl]
		if c.mood&(advert|greeting|other) != 0 || r.deniedBefore(c, m.lo) {
			continue
		}
		name := lexicon.Singular(m.name)
		if seen[name] {
			continue
		}
		seen[name] = true
		k := Consumable{Name: shortName(name), Place: r.place(m.from, m.hi+4)}
		for _, oi := range c.mentions {
			o := &r.mentions[oi]
			if o.from >= m.hi && (o.prep == "on" || o.prep == "in" || o.prep == "over" || o.prep == "onto" || o.prep == "round" || o.prep == "around" || o.prep == "to") && o.kind&(lexicon.Part|lexicon.Fastener) != 0 {
				k.UsedOn = shortName(o.name)
				break
			}
		}
		out = append(out, k)
	}
	return out
}

func (r *reading) deniedBefore(c *clause, tok int) bool {
	for i := max(c.lo, tok-5); i < tok; i++ {
		switch r.toks[i].s {
		case "no", "not", "don't", "never", "without":
			return true
		}
	}
	return false
}
