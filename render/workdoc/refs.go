package workdoc

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"wrenchword/extract"
)

// Refs are the references of a record's items, each slice parallel to the
// record's own. A reference is made from what an item is (its kind and its
// name) and not from its time or place in a list, so that a corrected cue or an
// added step elsewhere leaves it alone. Items alike in both are numbered.
type Refs struct {
	Tools, Parts, Consumables, Sizes, Torques, Ledger,
	Cautions, Steps, Open, Doubts, Facts, Usual []string
}

// Prefixes of references by kind of item.
const (
	refTool       = "tool"
	refPart       = "part"
	refConsumable = "use"
	refSize       = "size"
	refTorque     = "torque"
	refLedger     = "item"
	refCaution    = "care"
	refStep       = "step"
	refOpen       = "ask"
	refDoubt      = "doubt"
	refFact       = "sum"
	refUsual      = "usual"
)

// RefsOf gives the references of rec's items. No two are equal.
func RefsOf(rec *extract.Record) Refs {
	seen := map[string]int{}
	name := func(kind string, parts ...string) string {
		ref := kind + "-" + slug(strings.Join(parts, " "))
		seen[ref]++
		if n := seen[ref]; n > 1 {
			// A full stop cannot come out of slug, so a numbered
			// reference is never the name of another item.
			ref = fmt.Sprintf("%s.%d", ref, n)
		}
		return ref
	}
	var r Refs
	for _, t := range rec.Tools {
		r.Tools = append(r.Tools, name(refTool, t.Name, t.Size))
	}
	for _, p := range rec.Parts {
		r.Parts = append(r.Parts, name(refPart, p.Side, p.Name))
	}
	for _, c := range rec.Consumables {
		r.Consumables = append(r.Consumables, name(refConsumable, c.Name))
	}
	for _, s := range rec.Sizes {
		r.Sizes = append(r.Sizes, name(refSize, s.Of, s.Dimension))
	}
	for _, t := range rec.Torques {
		r.Torques = append(r.Torques, name(refTorque, t.Fastener))
	}
	for _, e := range rec.Ledger {
		r.Ledger = append(r.Ledger, name(refLedger, e.Side, e.Item))
	}
	for _, c := range rec.Cautions {
		r.Cautions = append(r.Cautions, name(refCaution, c.Text))
	}
	for _, s := range rec.Steps {
		r.Steps = append(r.Steps, name(refStep, s.Text))
	}
	for _, o := range rec.Open {
		r.Open = append(r.Open, name(refOpen, o.Kind, o.About))
	}
	for _, x := range rec.Doubts {
		r.Doubts = append(r.Doubts, name(refDoubt, x.Quote))
	}
	for _, f := range rec.Facts {
		r.Facts = append(r.Facts, name(refFact, f.Name))
	}
	for _, u := range rec.Usual {
		r.Usual = append(r.Usual, name(refUsual, u.Kind, u.Text))
	}
	return r
}

// slugWords bounds a reference's length: enough words to tell items apart.
const slugWords = 7

// slug folds text to lower-case letters and digits of any script, with single
// hyphens between words. Text with no such word gives "unnamed".
func slug(text string) string {
	out := make([]byte, 0, 64)
	words, inWord := 0, false
	for _, r := range text {
		if r < utf8.RuneSelf {
			if 'A' <= r && r <= 'Z' {
				r += 'a' - 'A'
			} else if (r < 'a' || 'z' < r) && (r < '0' || '9' < r) {
				inWord = false
				continue
			}
		} else if r = unicode.ToLower(r); !unicode.IsLetter(r) && !unicode.IsDigit(r) {
			inWord = false
			continue
		}
		if !inWord {
			if words == slugWords {
				break
			}
			if words > 0 {
				out = append(out, '-')
			}
			words, inWord = words+1, true
		}
		out = utf8.AppendRune(out, r)
	}
	if words == 0 {
		return "unnamed"
	}
	return string(out)
}
