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

// A task is one thing to do, with what its order hangs on.
type task struct {
	entry         *extract.Entry // what it is done to; nil where that is not known
	about         string
	stage, danger int
}

// after says whether t can be done only once u is done.
func (t task) after(u task) bool {
	if t.entry != nil && t.entry == u.entry {
		return t.stage > u.stage
	}
	// Values may be looked up at any time; only work waits, and only on work.
	if t.entry == nil || t.entry.WaitsOn == "" || t.stage == 0 || u.stage == 0 {
		return false
	}
	return shareWord(t.entry.WaitsOn, u.about)
}

// inOrder gives the indexes of tasks in the order in which they can be done:
// what waits on something comes after it, and the dangerous come first where
// order is free.
func inOrder(tasks []task) []int {
	done := make([]bool, len(tasks))
	out := make([]int, 0, len(tasks))
	for len(out) < len(tasks) {
		best := -1
		// A ring of things that wait on each other has no order: the second pass breaks it.
		for pass := 0; pass < 2 && best < 0; pass++ {
			for i, t := range tasks {
				if done[i] || best >= 0 && tasks[best].danger <= t.danger {
					continue
				}
				waits := false
				for j, u := range tasks {
					waits = waits || !done[j] && i != j && t.after(u)
				}
				if !waits || pass == 1 {
					best = i
				}
			}
		}
		done[best] = true
		out = append(out, best)
	}
	return out
}

func taskOf(rec *extract.Record, o extract.Open) task {
	t := task{about: o.About, stage: stage[o.Kind], danger: danger[o.Kind]}
	for i := range rec.Ledger {
		if o.LedgerID != "" && rec.Ledger[i].ID == o.LedgerID {
			t.entry = &rec.Ledger[i]
		}
	}
	return t
}

// OpenOrder gives the indexes of rec's open questions of one gate ("use",
// "publishing", "later") in the order in which they can be done: what waits on
// something comes after it, and the dangerous come first where order is free.
func OpenOrder(rec *extract.Record, before string) []int {
	var list []int
	var tasks []task
	for i, o := range rec.Open {
		if o.Before == before {
			list = append(list, i)
			tasks = append(tasks, taskOf(rec, o))
		}
	}
	out := inOrder(tasks)
	for i, k := range out {
		out[i] = list[k]
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
