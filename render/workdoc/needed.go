package workdoc

import (
	"slices"

	"wrenchword/extract"
)

// A SizeLine tells a size of a thing, however often it was said.
type SizeLine struct {
	extract.Size
	Ref  string
	Also []extract.Place // where it was said again
}

// SizeLines gives one line for each size of each thing. A key is told by the tool, across
// flats often only by the fastener: of one size of one thing it is the key.
func SizeLines(rec *extract.Record, refs Refs) []SizeLine {
	var out []SizeLine
	for i, s := range rec.Sizes {
		k := slices.IndexFunc(out, func(l SizeLine) bool {
			return s.Of != "" && l.Of == s.Of && slices.Equal(l.Candidates, s.Candidates) &&
				(l.Dimension == s.Dimension || turned[l.Dimension] && turned[s.Dimension])
		})
		if k < 0 {
			out = append(out, SizeLine{Size: s, Ref: refs.Sizes[i]})
			continue
		}
		l := &out[k]
		l.Also, l.Sure = append(l.Also, s.Place), l.Sure || s.Sure
		if s.Dimension == "key" || l.Dimension == "unsaid" {
			l.Dimension = s.Dimension
		}
	}
	return out
}

// turned are the dimensions of what a fastener is turned by.
var turned = map[string]bool{"key": true, "across-flats": true, "unsaid": true}

// StandsIn tells whether what is used up stands in for a part: it is told among the parts, as
// what is to be replaced, and not again.
func StandsIn(rec *extract.Record, c extract.Consumable) bool {
	return slices.ContainsFunc(rec.Parts, func(p extract.Part) bool {
		return p.Disposition == "temporary" && p.Name == c.Name && c.Name != ""
	})
}
