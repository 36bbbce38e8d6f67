package workdoc

import "wrenchword/extract"

// asksBack are the kinds of question that whoever answers must look for the thing itself.
var asksBack = map[string]bool{
	extract.NotRefitted: true, extract.LockMissing: true, extract.Unfinished: true,
	extract.NotTorqued: true, extract.ReplaceLater: true,
}

// Unasked gives the indexes of the ledger's entries that the recording leaves off, slack or by
// hand, that no question asks after and that have no row in the tightening round: their box
// "Seen to" alone settles them. refs are what RefsOf gives for rec.
func Unasked(rec *extract.Record, refs Refs) []int {
	asked := map[string]bool{}
	for _, o := range rec.Open {
		asked[o.LedgerID] = asked[o.LedgerID] || asksBack[o.Kind]
	}
	inRound := map[string]bool{}
	for _, r := range Round(rec, refs) {
		if r.Entry != nil {
			inRound[r.Entry.ID] = true
		}
	}
	var out []int
	for i := range rec.Ledger {
		switch e := &rec.Ledger[i]; e.State {
		case extract.Removed, extract.Loosened, extract.HandTight:
			if !asked[e.ID] && !inRound[e.ID] {
				out = append(out, i)
			}
		}
	}
	return out
}
