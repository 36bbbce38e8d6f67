package workdoc

import (
	"sort"

	"wrenchword/extract"
)

// RoundRow is one row of the tightening round: a fastener with all the values
// that were heard of it, or one that came off or went on with no value heard.
type RoundRow struct {
	Ref     string
	Name    string            // "" where the talk does not tell
	Place   string            // side and place, "" where not said
	Count   int               // 0 where not said
	Torques []*extract.Torque // in the order heard; none where no value was heard
	Entry   *extract.Entry    // nil where the values belong to nothing in the ledger
}

// Round gives the rows of the tightening round, place by place in the order in
// which the places are first heard of, as one would walk round the machine.
// Values of one ledger entry, or of one name where there is none, share a row;
// a value whose fastener the talk does not tell has a row of its own. refs are
// what RefsOf gives for rec.
func Round(rec *extract.Record, refs Refs) []RoundRow {
	entries := map[string]*extract.Entry{}
	for i := range rec.Ledger {
		entries[rec.Ledger[i].ID] = &rec.Ledger[i]
	}
	valued := map[string]bool{}
	rowOf := map[string]int{}
	var rows []RoundRow
	for i := range rec.Torques {
		t := &rec.Torques[i]
		e := entries[t.LedgerID]
		key := "name " + t.Fastener
		if e != nil {
			key = "entry " + e.ID
		}
		if at, ok := rowOf[key]; ok && key != "name " {
			rows[at].Torques = append(rows[at].Torques, t)
			continue
		}
		rowOf[key] = len(rows)
		row := RoundRow{Ref: refs.Torques[i], Name: t.Fastener, Torques: []*extract.Torque{t}}
		if e != nil {
			valued[e.ID] = true
			row.Entry, row.Count, row.Place = e, e.Count, join(e.Side, e.Place_)
			if row.Name == "" {
				row.Name = Called(*e)
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
			Ref: "round-" + refs.Ledger[i], Name: Called(*e),
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

// Left says how a fastener without a value was left: what is hand-tight must not
// be missed on the way round. "" where a value was heard, or nothing is known.
func (r RoundRow) Left() string {
	if len(r.Torques) > 0 || r.Entry == nil {
		return ""
	}
	return Left(*r.Entry)
}

// Heard says where a row was first heard of.
func (r RoundRow) Heard() extract.Place {
	if len(r.Torques) > 0 {
		return r.Torques[0].Place
	}
	if r.Entry != nil {
		return r.Entry.Place
	}
	return extract.Place{}
}

func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}
