package workdoc

import (
	"strings"

	"wrenchword/extract"
)

// danger grades open questions where their order is free: what may come apart first.
var danger = map[string]int{
	extract.NotRefitted: 0, extract.LockMissing: 0, extract.Suspect: 0, extract.Conflict: 0,
	extract.NotTorqued: 1, extract.Unfinished: 1,
	extract.LookUp: 2, extract.Unsure: 2, extract.ReplaceLater: 3, extract.Promise: 3,
}

// stage is the order of work on one thing: its value must be known before it is
// tightened, it must be on before that, and it is locked last.
var stage = map[string]int{
	extract.LookUp: 0, extract.Unsure: 0, extract.Conflict: 0, extract.Suspect: 0,
	extract.NotRefitted: 1, extract.Unfinished: 2, extract.NotTorqued: 3, extract.LockMissing: 4,
}

// OpenOrder gives the indexes of rec's open questions of one gate ("use",
// "publishing", "later") in the order in which they can be done: what waits on
// something comes after it, and the dangerous come first where order is free.
func OpenOrder(rec *extract.Record, before string) []int {
	entry := map[string]*extract.Entry{}
	for i := range rec.Ledger {
		entry[rec.Ledger[i].ID] = &rec.Ledger[i]
	}
	var list []int
	for i, o := range rec.Open {
		if o.Before == before {
			list = append(list, i)
		}
	}
	after := func(a, b extract.Open) bool { // a can be done only after b
		if a.LedgerID != "" && a.LedgerID == b.LedgerID {
			return stage[a.Kind] > stage[b.Kind]
		}
		e := entry[a.LedgerID]
		if e == nil || e.WaitsOn == "" || stage[a.Kind] == 0 {
			return false
		}
		return shareWord(e.WaitsOn, b.About) && stage[b.Kind] > 0
	}
	done := make([]bool, len(list))
	out := make([]int, 0, len(list))
	for len(out) < len(list) {
		best := -1
		for pass := 0; pass < 2 && best < 0; pass++ {
			for i, oi := range list {
				if done[i] || best >= 0 && danger[rec.Open[list[best]].Kind] <= danger[rec.Open[oi].Kind] {
					continue
				}
				waits := false
				for j, oj := range list {
					waits = waits || !done[j] && i != j && after(rec.Open[oi], rec.Open[oj])
				}
				// A ring of things that wait on each other has no order: the second pass breaks it.
				if !waits || pass == 1 {
					best = i
				}
			}
		}
		done[best] = true
		out = append(out, list[best])
	}
	return out
}

// shareWord says whether two phrases name one thing: a word of four letters or more is in both.
func shareWord(a, b string) bool {
	for _, w := range strings.Fields(strings.ToLower(a)) {
		if len(w) < 4 {
			continue
		}
		for _, v := range strings.Fields(strings.ToLower(b)) {
			if strings.TrimSuffix(v, "s") == strings.TrimSuffix(w, "s") {
				return true
			}
		}
	}
	return false
}
