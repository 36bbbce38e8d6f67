package workdoc_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"wrenchword/extract"
	"wrenchword/render"
	"wrenchword/render/workdoc"
)

func at(seconds float64, quote string) extract.Place {
	return extract.Place{At: seconds, AtExact: true, Quote: quote}
}

// trike is the record of an invented job: the hub of a cargo trike.
func trike() *extract.Record {
	ft := 45.0
	return &extract.Record{
		Schema: extract.Schema,
		Source: []extract.Source{{Name: "trike.srt", Format: "subrip", SHA256: "00", Duration: 372, Cues: 40, Words: 800}},
		Job:    extract.Job{Title: "Trike hub"},
		Tools:  []extract.Tool{{Name: "ring spanner", Size: "17 mm", Need: "required", Used: true, Place: at(20, "the 17 ring spanner")}},
		Parts:  []extract.Part{{Name: "hub bearing", Disposition: "new", Count: 2, Place: at(30, "two new bearings")}},
		Torques: []extract.Torque{{ID: "T1", Fastener: "axle nut", LedgerID: "L1", Said: extract.Said{Low: ft, High: ft, Unit: "N.m"},
			NM: []float64{45, 45}, Applied: "intended", Hedged: true, Place: at(200, "forty five newton metres I think")}},
		Ledger: []extract.Entry{
			{ID: "L1", Item: "axle nut", Kind: "fastener", State: extract.HandTight, Count: 1, LastAt: 190,
				Events: []extract.Event{{Act: "remove", Place: at(40, "axle nut off")}}, Place: at(40, "axle nut off")},
			{ID: "L2", Item: "mudguard screws", Kind: "fastener", State: extract.Removed, Count: 2, LastAt: 50, Place: at(50, "the two mudguard screws")},
		},
		Steps: []extract.Step{
			{N: 1, Text: "Undo the axle nut.", Phase: "taking apart", Place: at(40, "axle nut off")},
			{N: 2, Text: "Take out the two mudguard screws.", Phase: "taking apart", Place: at(50, "the two mudguard screws")},
			{N: 3, Text: "Press in the new bearings.", Phase: "fitting", Place: at(120, "press them in")},
			{N: 4, Text: "Start the axle nut by hand.", Phase: "fitting", Place: at(190, "just by hand for now")},
		},
		Open: []extract.Open{
			{ID: "O1", Kind: extract.LookUp, Before: extract.BeforeUse, About: "axle nut", LedgerID: "L1",
				Question: "What is the tightening torque of the axle nut?", Place: at(200, "forty five newton metres I think")},
			{ID: "O2", Kind: extract.NotRefitted, Before: extract.BeforeUse, About: "mudguard screws", LedgerID: "L2",
				Question: "Are the two mudguard screws back in?", Place: at(50, "the two mudguard screws")},
			{ID: "O3", Kind: extract.ReplaceLater, Before: extract.BeforeLater, About: "axle washer",
				Question: "When is the axle washer, which stands in for now, replaced?", Due: "when the right one comes", Place: at(220, "this washer will do for now")},
		},
		Usual: []extract.Usual{{Kind: "check", Text: "Spin the wheel and listen.", Why: "hub bearing", Source: "common practice, no source"}},
	}
}

func draw(t interface {
	Helper()
	Fatal(...any)
}, rec *extract.Record) []byte {
	t.Helper()
	doc, err := render.Markdown(rec, nil)
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func edit(t *testing.T, doc []byte, pairs ...string) []byte {
	t.Helper()
	s := string(doc)
	for i := 0; i < len(pairs); i += 2 {
		if strings.Count(s, pairs[i]) < 1 {
			t.Fatalf("the document has no %q:\n%s", pairs[i], s)
		}
		s = strings.Replace(s, pairs[i], pairs[i+1], 1)
	}
	return []byte(s)
}

func merge(t *testing.T, mine, fresh []byte) (string, workdoc.MergeReport) {
	t.Helper()
	out, report, err := workdoc.Merge(mine, fresh)
	if err != nil {
		t.Fatal(err)
	}
	again, _, err := workdoc.Merge(out, fresh)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(string(out), string(again)); d != "" {
		t.Errorf("a second merge is not the same as the first:\n%s", d)
	}
	if _, err := workdoc.Read(out); err != nil {
		t.Errorf("the merged document is not read back: %v", err)
	}
	return string(out), report
}

func visible(doc string) string {
	v, _, _ := strings.Cut(doc, "<!-- What this tool wrote")
	return v
}

// lineWith gives the number of the line that holds s, or fails.
func lineWith(t *testing.T, doc, s string) int {
	t.Helper()
	for i, l := range strings.Split(doc, "\n") {
		if strings.Contains(l, s) {
			return i
		}
	}
	t.Fatalf("no line holds %q in:\n%s", s, visible(doc))
	return 0
}

func TestReadUntouched(t *testing.T) {
	d, err := workdoc.Read(draw(t, trike()))
	if err != nil {
		t.Fatal(err)
	}
	if d.Job.Title != "Trike hub" {
		t.Errorf("title: %q", d.Job.Title)
	}
	if len(d.Ticks)+len(d.Notes)+len(d.Edited)+len(d.Removed)+len(d.Warnings)+len(d.Dues)+len(d.Claims)+len(d.Own) != 0 {
		t.Errorf("an untouched document reads as touched: %+v", d)
	}
	if d := cmp.Diff(trike().Ledger, d.Record.Ledger); d != "" {
		t.Errorf("the record came back changed:\n%s", d)
	}
}

func TestReadAnswers(t *testing.T) {
	doc := edit(t, draw(t, trike()),
		"- [ ] What is the tightening", "- [x] What is the tightening",
		"  - Answer:", "  - Answer: 50 N·m, see\n    page 5*6*7",
		"  - Source:", "  - Source: the maker’s manual, 3rd edition",
		"nothing to check it against |  |  | [ ] |", "nothing to check it against | 50 N·m | manual, p. 12 | [x] 2026-05-01 |",
		"- Machine:", "- Machine: cargo trike \\*two\\*",
		"# Trike hub", "# Front hub of the trike",
		"- [ ] 3. Press", "- [X] 3. Press",
		"(0:40) <!-- @step-undo-the-axle-nut -->", "(0:40) <!-- @step-undo-the-axle-nut -->\n  left-hand thread!",
		"## What readers say\n", "## What readers say\n\n- claim: too tight; by: A. Reader; date: 2026-05-02; status: open\n",
	)
	doc = edit(t, doc, "## Usual checks", "- [ ] look again, due: 2026-06-01\n\n## Usual checks")
	d, err := workdoc.Read(doc)
	if err != nil {
		t.Fatal(err)
	}
	ask := d.Answers["ask-not-refitted-mudguard-screws"]
	if ask.Text == "" { // the first in order
		ask = d.Answers["ask-look-up-axle-nut"]
	}
	if ask.Text != "50 N·m, see\npage 5*6*7" || ask.Source != "the maker’s manual, 3rd edition" {
		t.Errorf("answer: %+v", ask)
	}
	if got := d.Rows["torque-axle-nut"]; got.Confirmed != "50 N·m" || got.Source != "manual, p. 12" || !got.Tightened || got.When != "2026-05-01" {
		t.Errorf("row: %+v", got)
	}
	if d.Job.Title != "Front hub of the trike" {
		t.Errorf("title: %q", d.Job.Title)
	}
	if d.Job.Machine != "cargo trike *two*" {
		t.Errorf("machine: %q", d.Job.Machine)
	}
	if !d.Ticks["step-press-in-the-new-bearings"] || !d.Ticks["ask-look-up-axle-nut"] || d.Ticks["step-undo-the-axle-nut"] {
		t.Errorf("ticks: %v", d.Ticks)
	}
	if got := d.Notes["step-undo-the-axle-nut"]; len(got) != 1 || got[0] != "left-hand thread!" {
		t.Errorf("notes: %q", d.Notes)
	}
	if len(d.Claims) != 1 || d.Claims[0].Who != "A. Reader" || d.Claims[0].Text != "too tight" {
		t.Errorf("claims: %+v", d.Claims)
	}
	if len(d.Dues) != 1 || d.Dues[0].When != "2026-06-01" || d.Dues[0].Text != "look again" {
		t.Errorf("dues: %+v", d.Dues)
	}
}

func TestMergeUnchangedIsByteForByte(t *testing.T) {
	fresh := draw(t, trike())
	mine := []byte("\ufeff" + strings.ReplaceAll(string(edit(t, fresh, "- [ ] 1.", "* [x]  1.", "## Safety", "## Safety first  ")), "\n", "\r\n"))
	out, report, err := workdoc.Merge(mine, fresh)
	if err != nil || report.Changed || string(out) != string(mine) {
		t.Errorf("changed=%v err=%v", report.Changed, err)
	}
}

func TestMergeKeepsAndMoves(t *testing.T) {
	mine := edit(t, draw(t, trike()),
		"- [ ] 2. Take out", "- [x] 2. Take out",
		"screws. (0:50) <!--", "screws. (0:50) put in the tin <!--",
		"- [ ] 4. Start", "- [x] 4. Start",
		"- [ ] 3. Press in the new bearings. (2:00)", "- [ ] 3. Press in the new bearings with the long sleeve. (2:00)",
		"nothing to check it against |  |  | [ ] |", "nothing to check it against | 50 N·m | manual | yes |",
		"### Tools", "### Tools (borrow)",
		"## The work\n", "## The work\n\nMy own remark.\n",
	)
	now := trike()
	now.Steps = []extract.Step{
		{N: 1, Text: "Lift the frame.", Phase: "preparing", Place: at(10, "lift it")},
		{N: 2, Text: "Undo the axle nut.", Phase: "taking apart", Place: at(40, "axle nut off")},
		{N: 3, Text: "Press in the new bearings.", Phase: "fitting", Place: at(120, "press them in")},
		{N: 4, Text: "Start the axle nut by hand again.", Phase: "fitting", Place: at(190, "just by hand for now")},
	}
	now.Torques[0].Said.Unit = "lbf.ft"
	out, report := merge(t, mine, draw(t, now))
	for _, want := range []string{
		"- [x] 4. Start the axle nut by hand again.",
		"Press in the new bearings with the long sleeve.",
		"| 50 N·m | manual | yes |", "45 lbf·ft, not sure",
		"### Tools (borrow)", "My own remark.", "- [ ] 1. Lift the frame.",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("lost or not updated: %q in\n%s", want, visible(out))
		}
	}
	kept := lineWith(t, out, workdoc.KeptHeading)
	if l := lineWith(t, out, "put in the tin"); l < kept {
		t.Errorf("the gone step's words stand at line %d, before the section for them at %d", l, kept)
	}
	if lineWith(t, out, "Lift the frame") > lineWith(t, out, "Undo the axle nut. (0:40)") {
		t.Error("the new step does not stand where it belongs")
	}
	if len(report.Moved) != 1 {
		t.Errorf("moved: %q", report.Moved)
	}
}

func TestMergeTableWithOwnColumnsAndRows(t *testing.T) {
	var out []string
	for _, l := range strings.Split(string(draw(t, trike())), "\n") {
		switch {
		case strings.HasPrefix(l, "| Fastener"):
			l = "| Who " + l
		case strings.HasPrefix(l, "| --- ") && strings.HasPrefix(out[len(out)-1], "| Who"):
			l = "|---" + l
		case strings.Contains(l, "@torque-axle-nut"):
			l = "| me " + l + "\n| me | drawbar pin | 1 | | | | | | | 30 N·m | my manual | x |"
		case strings.Contains(l, "@round-item-mudguard"):
			l = "| you " + l
		}
		out = append(out, l)
	}
	now := trike()
	now.Torques[0].Said.High = 50
	now.Ledger = append(now.Ledger, extract.Entry{ID: "L3", Item: "brake arm bolt", Kind: "fastener", State: extract.Tightened, Place: at(210, "nip that up")})
	got, _ := merge(t, []byte(strings.Join(out, "\n")), draw(t, now))
	for _, want := range []string{"| me | axle nut <!-- @torque-axle-nut --> | 1 |  | 45 to 50 N·m", "| me | drawbar pin | 1 |", "|  | brake arm bolt <!-- @round-item-brake-arm-bolt -->"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, visible(got))
		}
	}
	d, err := workdoc.Read([]byte(got))
	if err != nil {
		t.Fatal(err)
	}
	if len(d.Own) != 1 || d.Own[0].Confirmed != "30 N·m" || !d.Own[0].Tightened {
		t.Errorf("own rows: %+v", d.Own)
	}
	if n := d.Notes["torque-axle-nut"]; len(n) != 1 || n[0] != "Who: me" {
		t.Errorf("notes: %q", d.Notes)
	}
}

func TestWrappedAndLostReferences(t *testing.T) {
	mine := edit(t, draw(t, trike()),
		"- [ ] 1. Undo the axle nut. (0:40) <!-- @step-undo-the-axle-nut -->", "- [x] 1. Undo the\n  axle nut. (0:40) <!--\n  @step-undo-the-axle-nut -->",
		"- [ ] 3. Press in the new bearings. (2:00) <!-- @step-press-in-the-new-bearings -->", "- [x] 3. Press in the new bearings. (2:00)")
	d, err := workdoc.Read(mine)
	if err != nil {
		t.Fatal(err)
	}
	if !d.Ticks["step-undo-the-axle-nut"] || !d.Ticks["step-press-in-the-new-bearings"] || len(d.Removed) > 0 {
		t.Errorf("ticks %v removed %v edited %v notes %v", d.Ticks, d.Removed, d.Edited, d.Notes)
	}
	now := trike()
	now.Steps = append([]extract.Step{{N: 0, Text: "Sweep the floor.", Phase: "taking apart", Place: at(5, "sweep")}}, now.Steps...)
	for i := range now.Steps {
		now.Steps[i].N = i + 1
	}
	out, _ := merge(t, mine, draw(t, now))
	for _, want := range []string{"- [x] 2. Undo the axle nut. (0:40) <!-- @step-undo-the-axle-nut -->", "- [x] 4. Press in"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in\n%s", want, visible(out))
		}
	}
}

func TestCorrectedWordKeepsTheTick(t *testing.T) {
	mine := edit(t, draw(t, trike()), "- [ ] 1. Undo the axle", "- [x] 1. Undo the axle")
	now := trike()
	now.Steps[0].Text = "Undo the large axle nut."
	out, report := merge(t, mine, draw(t, now))
	if !strings.Contains(out, "- [x] 1. Undo the large axle nut.") || len(report.Moved) > 0 {
		t.Errorf("moved %q\n%s", report.Moved, visible(out))
	}
	now.Steps[0].Text = "Undo the left axle nut."
	out, report = merge(t, mine, draw(t, now))
	if strings.Contains(out, "- [x] 1. Undo the left axle nut.") || len(report.Moved) != 1 {
		t.Errorf("a tick moved to another side's nut: %q\n%s", report.Moved, visible(out))
	}
}

func TestBadReferences(t *testing.T) {
	doc := draw(t, trike())
	line := "- [ ] 1. Undo the axle nut. (0:40) <!-- @step-undo-the-axle-nut -->"
	for name, bad := range map[string][]byte{
		"edited":  edit(t, doc, "@step-undo-the-axle-nut", "@step-undo-the-axle-nuts"),
		"doubled": edit(t, doc, line, line+"\n"+line),
	} {
		if _, err := workdoc.Read(bad); err == nil || !strings.Contains(err.Error(), "line ") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := workdoc.Read([]byte("# A page of mine\n")); err == nil {
		t.Error("any page is taken for a working document")
	}
}

func TestDamagedBlockLosesNothing(t *testing.T) {
	doc := string(edit(t, draw(t, trike()), "- [ ] 1. Undo", "- [x] 1. Undo", "## The work\n", "## The work\n\nMy own remark.\n",
		"nothing to check it against |  |  | [ ] |", "nothing to check it against | 50 N·m | manual | yes |"))
	cut, _, _ := strings.Cut(doc, "\nsha256 ")
	for name, bad := range map[string]string{"cut": cut, "lost": visible(doc), "changed": strings.Replace(doc, "\nsha256 ", "\nsha256 1", 1)} {
		now := trike()
		now.Steps[3].Text = "Start the axle nut by hand again."
		out, _, err := workdoc.Merge([]byte(bad), draw(t, now))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, want := range []string{"- [x] 1. Undo", "My own remark.", "| 50 N·m | manual | yes |", "by hand again"} {
			if !strings.Contains(string(out), want) {
				t.Errorf("%s: no %q in\n%s", name, want, visible(string(out)))
			}
		}
	}
}

// TestWordsInTheEndBlock: what is typed among the packed lines is found, at any
// of them, and the block is read all the same.
func TestWordsInTheEndBlock(t *testing.T) {
	doc := draw(t, trike())
	seal := strings.Split(strings.TrimRight(string(doc[len(workdoc.Visible(doc)):]), "\n"), "\n")
	for _, typed := range []string{"hello", "see page 5", strings.Repeat("a", 99), "sha256 of what?"} {
		for at := 2; at < len(seal); at++ {
			lines := append(append(append([]string{}, seal[:at]...), typed), seal[at:]...)
			mine := string(workdoc.Visible(doc)) + strings.Join(lines, "\n") + "\n"
			d, err := workdoc.Read([]byte(mine))
			if err != nil {
				t.Fatalf("%q at %d: %v", typed, at, err)
			}
			if got := strings.Join(d.Notes[""], " "); got != typed {
				t.Fatalf("%q at %d is read as %q", typed, at, got)
			}
		}
	}
}
