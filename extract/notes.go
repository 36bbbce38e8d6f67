package extract

import (
	"fmt"
	"strings"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

// notes are the reading's remarks on itself: tools used and not listed, listed
// and not used, a torque with no torque wrench, a stretch recorded twice.
func (r *reading) notes(rec *Record) []Note {
	out := []Note{}
	listed := false
	wrench := false
	for _, t := range rec.Tools {
		listed = listed || t.Listed
		if strings.Contains(t.Name, "torque wrench") || strings.Contains(t.Name, "torque driver") {
			wrench = true
		}
	}
	if listed {
		var missing, idle []string
		for _, t := range rec.Tools {
			n := strings.TrimSpace(t.Size + " " + t.Name)
			switch {
			case t.Need == "not-needed":
			case !t.Listed:
				missing = append(missing, n)
			case !t.Used && !r.usedLater(t):
				idle = append(idle, n)
			}
		}
		if len(missing) > 0 {
			out = append(out, Note{"tool-not-listed", "Used but not in the spoken tool list: " + strings.Join(missing, ", ") + "."})
		}
		if len(idle) > 0 {
			out = append(out, Note{"tool-not-used", "In the spoken tool list, not heard in use: " + strings.Join(idle, ", ") + "."})
		}
	}
	if !wrench {
		for _, t := range rec.Torques {
			if t.Applied == "done" {
				out = append(out, Note{"no-torque-wrench", "A torque value is told as set, and no torque wrench is named."})
				break
			}
		}
	}
	for _, o := range transcript.Overlaps(r.talk) {
		out = append(out, Note{"recorded-twice", fmt.Sprintf("The same words stand in %s from %s and in %s from %s: one stretch recorded twice?",
			r.talk.Clips[o.A].Name, clock(o.AStart), r.talk.Clips[o.B].Name, clock(o.BStart))})
	}
	return out
}

// usedLater tells whether a listed tool is named again outside the list.
func (r *reading) usedLater(t Tool) bool {
	for i := range r.mentions {
		m := &r.mentions[i]
		if m.kind&lexicon.Tool != 0 && sameTool(lexicon.Singular(m.name), t.Name) && !r.inToolList(m) {
			return true
		}
	}
	return false
}

// usual gives the usual checks and cautions after such work that were not heard.
func (r *reading) usual(rec *Record) []Usual {
	out := []Usual{}
	if len(rec.Ledger) == 0 && len(rec.Steps) == 0 {
		return out
	}
	worked := map[string]bool{}
	add := func(name string) {
		f := strings.Fields(lexicon.Singular(name))
		for i := range f {
			for j := i + 1; j <= len(f); j++ {
				worked[strings.Join(f[i:j], " ")] = true
			}
		}
	}
	for _, e := range rec.Ledger {
		add(e.Item)
	}
	for _, c := range rec.Consumables {
		add(c.Name)
	}
	for _, t := range rec.Tools {
		if t.Need != "not-needed" {
			add(t.Name)
		}
	}
	var b strings.Builder
	b.WriteByte(' ')
	for i := range r.toks {
		b.WriteString(r.toks[i].s)
		b.WriteByte(' ')
	}
	said := b.String()
	for _, u := range r.lex.Usual() {
		why := ""
		for _, w := range u.When {
			if worked[w] {
				why = w
				break
			}
		}
		if why == "" {
			continue
		}
		heard := false
		for _, w := range u.Unless {
			if strings.Contains(said, " "+w+" ") {
				heard = true
				break
			}
		}
		if heard {
			continue
		}
		n := Usual{Kind: "caution", Signal: u.Signal, Text: u.Text, Why: why, Source: u.Source}
		if u.Signal == "check" {
			n.Kind, n.Signal = "check", ""
		}
		out = append(out, n)
	}
	return out
}

func clock(s float64) string {
	n := int(s)
	if n >= 3600 {
		return fmt.Sprintf("%d:%02d:%02d", n/3600, n/60%60, n%60)
	}
	return fmt.Sprintf("%d:%02d", n/60, n%60)
}
