package workdoc

import (
	"sort"

	"wrenchword/extract"
)

// RoundRow is one row of the tightening round: a torque that was heard, or a
// fastener that came off or went on with no value heard.
type RoundRow struct {
	Ref    string
	Name   string          // "" where the talk does not tell
	Place  string          // side and place, "" where not said
	Count  int             // 0 where not said
	Torque *extract.Torque // nil where no value was heard
	Entry  *extract.Entry  // nil where the torque belongs to nothing in the ledger
}

// Round gives the rows of the tightening round, place by place in the order in
// which the places are first heard of, as one would walk round the machine.
func Round(rec *extract.Record) []RoundRow {
	refs := RefsOf(rec)
	entries := map[string]*extract.Entry{}
	for i := range rec.Ledger {
		entries[rec.Ledger[i].ID] = &rec.Ledger[i]
	}
	valued := map[string]bool{}
	var rows []RoundRow
	for i := range rec.Torques {
		t := &rec.Torques[i]
		row := RoundRow{Ref: refs.Torques[i], Name: t.Fastener, Torque: t}
		if e := entries[t.LedgerID]; e != nil && t.LedgerID != "" {
			valued[e.ID] = true
			row.Entry, row.Count, row.Place = e, e.Count, join(e.Side, e.Place_)
			if row.Name == "" {
				row.Name = e.Item
			}
		}
		rows = append(rows, row)
	}
	for i := range rec.Ledger {
		e := &rec.Ledger[i]
		if e.Kind != "fastener" || e.State == extract.Discarded || valued[e.ID] {
			continue
		}
		rows = append(rows, RoundRow{
			Ref: "round-" + refs.Ledger[i], Name: e.Item,
			Place: join(e.Side, e.Place_), Count: e.Count, Entry: e,
		})
	}
	first := map[string]int{}
	for i, r := range rows {
		if _, ok := first[r.Place]; !ok {
			first[r.Place] = i
		}
	}
	sort.SliceStable(rows, func(i, j int) bool { return first[rows[i].Place] < first[rows[j].Place] })
	return rows
}

func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}
