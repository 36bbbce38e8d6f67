package extract

import (
	"strings"

	"wrenchword/extract/lexicon"
)

// everyday are tool words that are said of much else; they count as tools only
// where they are used or listed.
var everyday = set("bench stand stands blade square scale rope mirror bucket basin container pan phone camera hook bit bits meter oven kettle press clamp hoist lift bar ramp ramps die square rule glasses hose scoop ladder tray impact hex")

// tools gives one entry for each tool and size.
func (r *reading) tools(found []sized) []Tool {
	out := []Tool{}
	at := map[string]int{}
	sizesOf := map[int][]sized{}
	for _, s := range found {
		if s.tool >= 0 {
			sizesOf[s.tool] = append(sizesOf[s.tool], s)
		}
	}
	add := func(mi int, s *sized) {
		m := &r.mentions[mi]
		c := &r.clauses[m.cl]
		name := lexicon.Singular(m.name)
		t := Tool{Name: shortName(name), SizesAlt: []string{}, Need: r.needOf(c, m), Listed: r.inToolList(m), Place: r.place(m.from, m.hi+3)}
		if s != nil {
			t.Size = s.canon[0]
			t.SizesAlt = append(t.SizesAlt, s.canon[1:]...)
			t.Place = r.place(min(s.lo, m.from), max(s.hi, m.hi)+1)
			if s.lo > m.hi+12 || m.from > s.hi+12 {
				t.Place = r.place(s.lo, s.hi+2)
			}
		}
		t.Used = !t.Listed
		t.Rule = "name in the vocabulary"
		if m.misheard {
			t.Rule = "misheard name in the vocabulary"
		}
		key := t.Name + "|" + t.Size
		if k, ok := at[key]; ok {
			out[k].Listed = out[k].Listed || t.Listed
			out[k].Used = out[k].Used || t.Used
			if out[k].Need == "not-needed" && t.Need == "required" {
				out[k].Need = "required"
			}
			return
		}
		at[key] = len(out)
		out = append(out, t)
	}
	for mi := range r.mentions {
		m := &r.mentions[mi]
		if m.kind&lexicon.Tool == 0 || m.kind&(lexicon.Fastener|lexicon.Part|lexicon.Consumable) != 0 && !r.usedAsTool(m) {
			continue
		}
		c := &r.clauses[m.cl]
		if c.mood&(advert|greeting) != 0 || c.mood&(other|asked) != 0 && !r.inToolList(m) {
			continue
		}
		if r.deniedBefore(c, m.lo) && !r.inToolList(m) && c.mood&notNeeded == 0 {
			continue // "you don't use the windy gun on it"
		}
		if everyday[m.head] && !r.usedAsTool(m) && !r.inToolList(m) {
			continue
		}
		if m.prep == "of" && len(m.mods) == 0 && everyday[m.head] {
			continue
		}
		if ss := sizesOf[mi]; len(ss) > 0 {
			for k := range ss {
				add(mi, &ss[k])
			}
			continue
		}
		add(mi, nil)
	}
	// a tool named without its size is the one named with it
	var kept []Tool
	for i, t := range out {
		drop := false
		if t.Size == "" {
			for j, o := range out {
				if i != j && o.Size != "" && sameTool(o.Name, t.Name) {
					drop = true
					out[j].Used = out[j].Used || t.Used
				}
				if i != j && o.Size == "" && len(o.Name) > len(t.Name) && strings.HasSuffix(o.Name, " "+t.Name) {
					drop = true
				}
			}
		}
		if !drop {
			kept = append(kept, t)
		}
	}
	if kept == nil {
		kept = []Tool{}
	}
	return kept
}

var toolAlias = map[string]string{"allen key": "hex key", "allen": "hex key", "hex": "hex key", "hex bit": "hex key", "hex socket": "hex key", "allen bit": "hex key", "wrench": "spanner"}

func sameTool(a, b string) bool {
	if x := toolAlias[a]; x != "" {
		a = x
	}
	if x := toolAlias[b]; x != "" {
		b = x
	}
	return a == b || strings.HasSuffix(a, " "+b)
}

func (r *reading) usedAsTool(m *mention) bool {
	if m.prep == "with" || m.prep == "using" {
		return true
	}
	lo := max(0, m.from-4)
	for i := lo; i < m.from; i++ {
		switch r.toks[i].s {
		case "use", "using", "used", "with", "grab", "need", "got":
			return true
		}
	}
	return false
}

// needOf tells whether a tool is needed, by the cues of its clause.
func (r *reading) needOf(c *clause, m *mention) string {
	for _, q := range c.cues {
		if q.mood&notNeeded != 0 && q.lo < m.lo && m.lo-q.hi < 8 {
			return "not-needed"
		}
	}
	for _, q := range c.cues {
		if q.mood&optional != 0 && abs(q.lo-m.lo) < 9 {
			return "optional"
		}
	}
	if k := r.toks[c.lo].cl + 1; k < len(r.clauses) {
		n := &r.clauses[k]
		if n.sentence == c.sentence || n.hi-n.lo <= 5 {
			for _, q := range n.cues {
				if q.mood&(optional|notNeeded) != 0 && len(n.mentions) == 0 && q.lo-m.hi < 8 {
					return "optional"
				}
			}
		}
	}
	return "required"
}

// inToolList tells whether a tool was named in a spoken list: after words that
// begin one, or among many tools where little is done.
func (r *reading) inToolList(m *mention) bool {
	n, acts := 0, 0
	for k := max(0, m.cl-3); k <= min(m.cl+3, len(r.clauses)-1); k++ {
		c := &r.clauses[k]
		if abs(int(r.since(c.lo, m.lo))) > 25 {
			continue
		}
		if k <= m.cl && c.mood&listing != 0 {
			return true
		}
		for _, mi := range c.mentions {
			if r.mentions[mi].kind&lexicon.Tool != 0 {
				n++
			}
		}
		for _, ai := range c.acts {
			if len(r.acts[ai].objects) > 0 {
				acts++
			}
		}
	}
	return n >= 4 && n > 2*acts && m.cl >= r.toolList[1] == (r.toolList[1] == 0)
}
