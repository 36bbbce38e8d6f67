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
	listed := 0
	wrench := false
	for _, t := range rec.Tools {
		if t.Listed {
			listed++
		}
		if strings.Contains(t.Name, "torque wrench") || strings.Contains(t.Name, "torque driver") {
			wrench = true
		}
	}
	if listed >= 3 { // two tools in one breath are no list
		var missing, idle []string
		for _, t := range rec.Tools {
			n := strings.TrimSpace(t.Size + " " + t.Name)
			switch {
			case t.Need == "not-needed":
			case !t.Listed:
				missing = append(missing, n)
			case !t.Used:
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
	for list, of := range leftOutOf {
		if what := r.leftOut[list]; len(what) > 0 {
			out = append(out, Note{"left-out", "Heard, and left out of " + of + ": " + strings.Join(what, "; ") + "."})
		}
	}
	for _, o := range transcript.Overlaps(r.talk) {
		out = append(out, Note{"recorded-twice", fmt.Sprintf("The same words stand in %s from %s and in %s from %s: one stretch recorded twice?",
			r.talk.Clips[o.A].Name, clock(o.AStart), r.talk.Clips[o.B].Name, clock(o.BStart))})
	}
	return out
}

// usual gives the usual checks and cautions after such work that were not heard.
func (r *reading) usual(rec *Record) []Usual {
	out := []Usual{}
	if len(rec.Ledger) == 0 && len(rec.Steps) == 0 {
		return out
	}
	w := r.workedOn(rec)
	for _, u := range r.lex.Usual() {
		why := ""
		for _, when := range u.When {
			if why = w.why(when); why != "" {
				break
			}
		}
		if why == "" {
			continue
		}
		heard := false
		for _, phrase := range u.Unless {
			if w.heard(phrase) {
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

// worked is what the talk worked on, for the choice of the usual checks.
type worked struct {
	things, fresh, tools map[string]bool
	said                 string
	words                map[string]known // of said
}

// holders are the words at the end of a name that leave what it belongs to: who
// turned the caliper bracket bolts had the caliper in hand.
var holders = wordsOf("what has fasteners")

// workedOn gathers what was worked on, by each ending of its name: a brake caliper
// is a caliper, and a chain brake is no chain.
func (r *reading) workedOn(rec *Record) *worked {
	w := &worked{words: r.words, things: map[string]bool{}, fresh: map[string]bool{}, tools: map[string]bool{}}
	add := func(to map[string]bool, name string) {
		f := strings.Fields(lexicon.Singular(name))
		for {
			for i := range f {
				to[strings.Join(f[i:], " ")] = true
			}
			if len(f) < 2 || !holders.has(f[len(f)-1]) {
				return
			}
			f = f[:len(f)-1]
			f[len(f)-1] = lexicon.Singular(f[len(f)-1])
		}
	}
	for _, e := range rec.Ledger {
		add(w.things, e.Item)
	}
	for _, c := range rec.Consumables {
		add(w.things, c.Name)
	}
	for _, p := range rec.Parts {
		if p.Disposition == "new" {
			add(w.fresh, p.Name)
		}
	}
	for _, t := range rec.Tools {
		if t.Need != "not-needed" {
			add(w.tools, t.Name)
		}
	}
	var b strings.Builder
	b.Grow(len(r.talk.Text) + len(r.toks) + 1)
	b.WriteByte(' ')
	for i := range r.toks {
		b.WriteString(r.toks[i].s)
		b.WriteByte(' ')
	}
	w.said = b.String()
	return w
}

func (w *worked) heard(phrase string) bool {
	words := lexicon.Words(phrase)
	for _, word := range words {
		if _, said := w.words[word]; !said {
			return false // nor is the phrase
		}
	}
	return strings.Contains(w.said, " "+strings.Join(words, " ")+" ")
}

// why gives what called for a usual check, or "" where nothing did.
func (w *worked) why(when string) string {
	var out []string
	for _, part := range strings.Split(when, "&") {
		part = strings.TrimSpace(part)
		name, ok := part, false
		if n, is := strings.CutPrefix(part, "new "); is {
			name, ok = part, w.fresh[n]
		} else if n, is := strings.CutPrefix(part, "tool "); is {
			name, ok = n, w.tools[n]
		} else if strings.HasPrefix(part, "'") {
			name = strings.Trim(part, "'")
			ok = w.heard(name)
		} else {
			ok = w.things[part]
		}
		if !ok {
			return ""
		}
		out = append(out, name)
	}
	return strings.Join(out, " and ")
}

func clock(s float64) string {
	n := int(s)
	if n >= 3600 {
		return fmt.Sprintf("%d:%02d:%02d", n/3600, n/60%60, n%60)
	}
	return fmt.Sprintf("%d:%02d", n/60, n%60)
}
