package workdoc_test

import (
	"strings"
	"testing"
	"time"

	"wrenchword/extract"
	"wrenchword/render/workdoc"
)

var may = time.Date(2026, 5, 10, 12, 0, 0, 0, time.UTC)

func ready(t *testing.T, doc []byte, before string) (open []string, v workdoc.Verdict) {
	t.Helper()
	d, err := workdoc.Read(doc)
	if err != nil {
		t.Fatal(err)
	}
	v = workdoc.Ready(d, before, workdoc.CheckConfirmed, may)
	for _, s := range v.Open {
		open = append(open, s.Text+" | "+s.Why)
	}
	return open, v
}

const lastCell = "|  |  | [ ] |"

// settled is the trike's document with all that stands before use settled.
func settled(t *testing.T) []byte {
	return edit(t, draw(t, trike()),
		"nothing to check it against "+lastCell, "nothing to check it against | 45 N·m | manual, p. 3 | [x] |",
		"no value to check "+lastCell, "no value to check | no value published, by feel, signed: A. B. | | x |",
		"- [ ] Are the two", "- [x] Are the two")
}

func TestReadySettled(t *testing.T) {
	open, v := ready(t, settled(t), extract.BeforeUse)
	if len(open) != 0 || v.Usual != 1 || len(v.Due) != 1 || len(v.Remarks) != 0 {
		t.Errorf("open %q, %+v", open, v)
	}
}

// TestReadyRows: what closes a row of the round, and what does not.
func TestReadyRows(t *testing.T) {
	for _, c := range []struct {
		name, cells, why string // why "" where the row is settled
	}{
		{"nothing", "|  |  | [ ] |", "no confirmed value"},
		{"a tick alone", "|  |  | [x] |", "ticked as tightened, but no value is confirmed"},
		{"no source", "| 45 N·m |  | [x] |", "no source"},
		{"no tick", "| 45 N·m | manual | [ ] |", "not ticked"},
		{"no unit", "| 45 | manual | [x] |", "unit is missing"},
		{"a unit nobody knows", "| 45 stones | manual | [x] |", "unit is missing or not known"},
		{"words", "| as before | manual | [x] |", "holds no value"},
		{"general", "| 45 N·m | general value for the size | [x] |", "general"},
		{"another machine", "| 45 N·m | manual of another machine | [x] |", "another machine"},
		{"a claim", "| 45 N·m | a reader's claim | [x] |", "a claim"},
		{"the recording", "| 45 N·m | the recording | [x] |", "confirms nothing"},
		{"n/a alone", "| n/a |  |  |", "needs a reason"},
		{"N/A with a dash", "| N/A - |  |  |", "needs a reason"},
		{"by feel, unsigned", "| no value published, by feel |  | x |", "sign it"},
		{"by feel, not ticked", "| no value published, by feel, signed: A. B. |  |  |", "not ticked"},
		{"two values", "| 45 N·m or 60 lbf·ft | manual | x |", "two torques"},

		{"a value", "| 45 N·m | manual, p. 3 | [x] |", ""},
		{"a range", "| 40-45 N·m | manual | x |", ""},
		{"other ways to write it", "| 33 ft-lb | manual | done |", ""},
		{"run together", "| 45Nm | manual | yes |", ""},
		{"with an angle", "| 20 N·m + 90° | manual | 2026-05-01 |", ""},
		{"a decimal comma", "| 45,5 N·m | manual | X |", ""},
		{"n/a", "| n/a, replaced by a clip |  |  |", ""},
		{"to the mark", "| to the mark, signed: A. B., 2026-05-01 |  | ✓ |", ""},
	} {
		doc := edit(t, settled(t), "| 45 N·m | manual, p. 3 | [x] |", c.cells)
		open, _ := ready(t, doc, extract.BeforeUse)
		got := strings.Join(open, "\n")
		if c.why == "" && strings.Contains(got, "Confirm and tighten") {
			t.Errorf("%s (%s): still open: %s", c.name, c.cells, got)
		} else if c.why != "" && !strings.Contains(got, c.why) {
			t.Errorf("%s (%s): want %q, got %q", c.name, c.cells, c.why, got)
		}
	}
}

func TestReadyOrder(t *testing.T) {
	open, _ := ready(t, draw(t, trike()), extract.BeforeUse)
	if len(open) != 4 || !strings.HasPrefix(open[0], "Are the two mudguard") {
		t.Errorf("order: %q", open)
	}
	rec := trike()
	rec.Open = append(rec.Open, extract.Open{ID: "O9", Kind: extract.NotTorqued, Before: extract.BeforeUse, About: "axle nut", LedgerID: "L1", Question: "Torqued?"},
		extract.Open{ID: "O8", Kind: extract.LockMissing, Before: extract.BeforeUse, About: "split pin", LedgerID: "L1", Question: "Pin?"})
	var kinds []string
	for _, i := range workdoc.OpenOrder(rec, extract.BeforeUse) {
		kinds = append(kinds, rec.Open[i].Kind)
	}
	// The pin is the more dangerous, and yet comes after the nut that it locks.
	if got := strings.Join(kinds, " "); got != "not-refitted look-up not-torqued lock-missing" {
		t.Errorf("order: %s", got)
	}
	// What waits on something comes after it; a ring of waits still ends.
	rec.Ledger[1].WaitsOn = "the axle nut"
	rec.Ledger[0].WaitsOn = "mudguard screws"
	if n := len(workdoc.OpenOrder(rec, extract.BeforeUse)); n != 4 {
		t.Errorf("%d of 4 in a ring of waits", n)
	}
}

func TestReadyStruckOutIsStillOpen(t *testing.T) {
	doc := edit(t, settled(t), "- [x] Are the two mudguard screws back in? (not-refitted, 0:50) <!-- @ask-not-refitted-mudguard-screws -->\n", "")
	open, _ := ready(t, doc, extract.BeforeUse)
	if len(open) != 1 || !strings.Contains(open[0], "taken out of the text, which settles nothing") {
		t.Errorf("open: %q", open)
	}
}

func TestReadySwapReopensTheJoint(t *testing.T) {
	doc := edit(t, settled(t), "- [ ] When is the axle washer", "- [x] When is the axle washer")
	open, _ := ready(t, doc, extract.BeforeUse)
	if len(open) != 1 || !strings.Contains(open[0], "Tighten the joint of the axle washer again") {
		t.Errorf("open: %q", open)
	}
	doc = edit(t, doc, "after the swap:", "after the swap: yes, 2026-05-09")
	if open, _ = ready(t, doc, extract.BeforeUse); len(open) != 0 {
		t.Errorf("open: %q", open)
	}
}

func TestReadyDuesAndClaims(t *testing.T) {
	doc := edit(t, settled(t), "## Usual checks", "- [ ] look at the chain, due: 2026-06-01\n- [ ] retorque the axle nut, due: 2026-05-01\n- [x] done before, due: 2026-04-01\n\n## Usual checks",
		"## Revisions", "- claim: 45 is too little; by: a reader; status: open\n- claim: nonsense; by: another; status: refused\n\n## Revisions")
	open, v := ready(t, doc, extract.BeforeUse)
	if len(open) != 1 || !strings.Contains(open[0], "retorque the axle nut | due since 2026-05-01") {
		t.Errorf("open: %q", open)
	}
	if len(v.Due) != 3 {
		t.Errorf("due: %+v", v.Due)
	}
	if len(v.Remarks) != 1 || !strings.Contains(v.Remarks[0], "a claim by a reader is open: 45 is too little") {
		t.Errorf("remarks: %q", v.Remarks)
	}
}

func TestReadySaysWhatDisagrees(t *testing.T) {
	doc := edit(t, settled(t), "| 45 N·m | manual", "| 80 N·m | manual")
	open, v := ready(t, doc, extract.BeforeUse)
	if len(open) != 0 || len(v.Remarks) != 1 || !strings.Contains(v.Remarks[0], "80 N·m is not what was heard of axle nut: 45 N·m") {
		t.Errorf("open %q, remarks %q", open, v.Remarks)
	}
}

// TestReadyChecksTheThread: 45 N·m is far beyond an M5 screw of any class
// (ISO 898-1 proof load, T = K F d), and a size of another thing says nothing.
func TestReadyChecksTheThread(t *testing.T) {
	for of, want := range map[string]int{"axle nut": 1, "mudguard nut": 0, "": 0} {
		rec := trike()
		rec.Sizes = []extract.Size{{Of: of, Dimension: "thread", Candidates: []string{"M5"}, Sure: true, Place: at(10, "an M five")}}
		doc := edit(t, draw(t, rec), "nothing to check it against "+lastCell, "nothing to check it against | 45 N·m | manual, p. 3 | [x] |")
		_, v := ready(t, doc, extract.BeforeUse)
		n := 0
		for _, r := range v.Remarks {
			if strings.Contains(r, "takes") && strings.Contains(r, "ISO 898-1") {
				n++
			}
		}
		if n != want {
			t.Errorf("M5 said of %q: remarks %q", of, v.Remarks)
		}
	}
}

// TestAnswerOnTheNextBullet: people type below the label as well as behind it.
func TestAnswerOnTheNextBullet(t *testing.T) {
	doc := edit(t, draw(t, trike()), "think”\n  - Answer:\n", "think”\n  - Answer:\n    - 45 N·m\n", "  - Source:\n\n## Tight", "  - Source: \n  the manual\n\n## Tight")
	d, err := workdoc.Read(doc)
	if err != nil {
		t.Fatal(err)
	}
	if a := d.Answers["ask-look-up-axle-nut"]; a.Text != "45 N·m" || a.Source != "the manual" {
		t.Errorf("answer %+v", a)
	}
}

// TestReadyUnasked: what the recording leaves off, slack or by hand, and nobody asks after, stands
// open until it is ticked as seen to.
func TestReadyUnasked(t *testing.T) {
	rec := trike()
	entry := func(id, item, kind, state string) extract.Entry {
		p := extract.Place{At: 60, AtExact: true, Quote: item, Rule: "test"}
		return extract.Entry{ID: id, Item: item, Kind: kind, State: state, LastAt: 70, Place: p}
	}
	rec.Ledger = append(rec.Ledger,
		entry("L3", "lower split pin", "part", extract.Removed),
		entry("L4", "chain guard", "part", extract.Loosened),
		entry("L5", "bell", "part", extract.HandTight),
		entry("L6", "old bearing", "part", extract.Discarded),
		entry("L7", "basket", "part", extract.Refitted),
		entry("L8", "lamp", "part", extract.Removed))
	rec.Open = append(rec.Open, extract.Open{ID: "O9", Kind: extract.NotRefitted, Before: extract.BeforeUse, About: "lamp", LedgerID: "L8", Question: "Is the lamp back?", Place: rec.Ledger[0].Place})
	doc := string(edit(t, draw(t, rec),
		"nothing to check it against "+lastCell, "nothing to check it against | 45 N·m | manual, p. 3 | [x] |",
		"no value to check "+lastCell, "no value to check | no value published, by feel, signed: A. B. | | x |",
		"- [ ] Are the two", "- [x] Are the two", "- [ ] Is the lamp", "- [x] Is the lamp"))
	if want := "off, slack or by hand: lower split pin (off, 1:10), chain guard (slackened, 1:10), bell (hand-tight, 1:10)."; !strings.Contains(doc, want) {
		t.Errorf("the document lacks %q", want)
	}
	want := []string{"lower split pin, off", "chain guard, slackened", "bell, hand-tight"}
	open, _ := ready(t, []byte(doc), extract.BeforeUse)
	if len(open) != len(want) {
		t.Fatalf("open: %q", open)
	}
	lines := strings.Split(doc, "\n")
	for i, w := range want {
		if open[i] != "See to it: "+w+` when last heard of | not ticked under "Seen to"` {
			t.Errorf("open: %q, want %s", open[i], w)
		}
		name, _, _ := strings.Cut(w, ",")
		for k, l := range lines {
			if strings.HasPrefix(l, "| "+name) {
				lines[k] = strings.Replace(l, "[ ] |", "[x] |", 1)
			}
		}
	}
	if open, _ = ready(t, []byte(strings.Join(lines, "\n")), extract.BeforeUse); len(open) != 0 {
		t.Errorf("all ticked, and open: %q", open)
	}
	if open, _ = ready(t, []byte(doc), extract.BeforePublishing); len(open) != 0 {
		t.Errorf("open before publishing: %q", open)
	}
}

// TestReadyDoubts: words that may leave something open are shown until they are ticked, and stand
// between nobody and a ride.
func TestReadyDoubts(t *testing.T) {
	rec := trike()
	for _, q := range []string{"the other one I'll see to", "so it's low"} {
		rec.Doubts = append(rec.Doubts, extract.Doubt{Place: extract.Place{At: 75, AtExact: true, Quote: q, Rule: "test"}})
	}
	doc := draw(t, rec)
	_, before := ready(t, draw(t, trike()), extract.BeforeUse)
	_, v := ready(t, doc, extract.BeforeUse)
	if len(v.Open) != len(before.Open) || len(v.Doubts) != 2 || v.Doubts[1].Text != "so it's low" {
		t.Errorf("%d open, doubts %+v", len(v.Open), v.Doubts)
	}
	_, v = ready(t, edit(t, doc, "- [ ] Heard 1:15: “the other one", "- [x] Heard 1:15: “the other one"), extract.BeforeUse)
	if len(v.Doubts) != 1 || v.Doubts[0].Text != "so it's low" {
		t.Errorf("one ticked: %+v", v.Doubts)
	}
	if _, v = ready(t, doc, extract.BeforePublishing); len(v.Doubts) != 0 {
		t.Errorf("before publishing: %+v", v.Doubts)
	}
}
