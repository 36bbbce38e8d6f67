package extract

import (
	"fmt"

	"wrenchword/normalize"
	"wrenchword/normalize/reckon"
)

// facts computes what the talk has the numbers for: the ratio of a tooth pair and
// its change, and what a chain number stands for. A computed value is no
// specification; each says what it was computed from and how.
func (r *reading) facts() []Fact {
	out := []Fact{}
	seen := map[string]bool{}
	var pairs [][2]int
	last := -1 // the tooth count waiting for its partner
	for qi := range r.qtys {
		q := &r.qtys[qi]
		c := &r.clauses[q.cl]
		if c.mood&(aside|greeting|other) != 0 {
			continue
		}
		switch q.Kind {
		case normalize.Chain:
			d, ok := normalize.FindChain(q.Canonical)
			if !ok || seen[q.Canonical] {
				continue
			}
			seen[q.Canonical] = true
			out = append(out, Fact{Name: "chain size", Value: fmt.Sprintf("%s: pitch %s mm, %s mm between the inner plates", q.Canonical, figure(d.Pitch), figure(d.InnerWidth)),
				From: r.text(q.lo, q.hi), Method: "table: " + d.Source, Place: r.placeAround(max(c.lo, q.lo-4), min(c.hi, q.hi+4), q.lo)})
		case normalize.Teeth:
			if q.Low == nil || !q.Low.IsInt() || q.Low.Cmp(q.High) != 0 {
				continue
			}
			if last < 0 || r.since(r.qtys[last].lo, q.lo) > 30 {
				last = qi
				continue
			}
			a, b := int(r.qtys[last].Low.Num().Int64()), int(q.Low.Num().Int64())
			front, rear := min(a, b), max(a, b)
			if 2*rear < 3*front { // two counts of one end: a change, not a pair
				last = qi
				continue
			}
			lo := r.qtys[last].lo
			last = -1
			key := fmt.Sprint(front, "/", rear)
			res, err := reckon.Gearing(front, rear)
			if err != nil || seen[key] {
				continue
			}
			seen[key] = true
			from := fmt.Sprintf("%d and %d teeth", front, rear)
			out = append(out, Fact{Name: "gear ratio", Value: fmt.Sprintf("%.3f to 1", res.Get("ratio")), From: from, Method: res.Formula + " (" + res.Source + ")", Place: r.place(lo, q.hi)})
			if n := len(pairs); n > 0 {
				p := pairs[n-1]
				if ch, err := reckon.GearingChange(p[0], p[1], front, rear, 0, ""); err == nil {
					for _, f := range ch.Results {
						if f.Unit == "%" {
							out = append(out, Fact{Name: f.Name, Value: fmt.Sprintf("%+.1f %%", f.Value), From: fmt.Sprintf("%d/%d and %d/%d teeth", p[0], p[1], front, rear), Method: ch.Formula + " (" + ch.Source + ")", Place: r.place(lo, q.hi)})
						}
					}
				}
			}
			pairs = append(pairs, [2]int{front, rear})
		}
	}
	return out
}

func figure(v float64) string { return fmt.Sprintf("%g", v) }
