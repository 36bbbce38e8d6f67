package render

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"wrenchword/extract"
	"wrenchword/render/workdoc"
)

// Markdown writes the working document of rec: CommonMark with GFM tables and
// task lists, sealed so that package workdoc can read it back and merge it. The
// same record and revisions give the same bytes.
func Markdown(rec *extract.Record, revs []workdoc.Revision) ([]byte, error) {
	if len(revs) == 0 {
		revs = []workdoc.Revision{{N: 1, Date: rec.Job.Date, What: "first written"}}
	}
	d := &drawer{rec: rec, refs: workdoc.RefsOf(rec), revs: revs}
	d.b.Grow(1 << 16) // as much as an hour's takes
	d.head()
	d.safety()
	d.notSettled()
	d.round()
	d.work()
	d.needed()
	d.ledger()
	d.later()
	d.usualChecks()
	d.facts()
	d.claims()
	d.revisions()
	d.making()
	return workdoc.Seal(d.b.String(), rec, revs)
}

// drawer writes one document, line by line. Each line that can change with the
// record ends in its reference; all others are fixed.
type drawer struct {
	b    strings.Builder
	rec  *extract.Record
	refs workdoc.Refs
	revs []workdoc.Revision
}

func (d *drawer) line(format string, a ...any) {
	fmt.Fprintf(&d.b, format, a...)
	d.gap()
}

func (d *drawer) gap() { d.b.WriteByte('\n') }

func (d *drawer) item(ref, format string, a ...any) {
	fmt.Fprintf(&d.b, format, a...)
	d.b.WriteString(" <!-- @" + ref + " -->\n")
}

func (d *drawer) heading(level int, text string) {
	d.gap()
	d.line("%s %s", strings.Repeat("#", level), text)
	d.gap()
}

// none says in a few words that a section is empty.
func (d *drawer) none(ref, text string) { d.item("none-"+ref, "%s", text) }

func (d *drawer) at(p extract.Place) string { return timecode(d.rec, p) }

func quoted(s string) string { return "“" + escapeMarkdown(s) + "”" }

func named(s, otherwise string) string {
	if strings.TrimSpace(s) == "" {
		return otherwise
	}
	return escapeMarkdown(s)
}

func (d *drawer) head() {
	job := d.rec.Job
	d.line("# %s %s", named(job.Title, "Procedure"), workdoc.Mark)
	d.gap()
	for _, f := range []struct{ label, value string }{
		{"Machine", job.Machine}, {"Year", job.Year}, {"Reading", job.Reading}, {"Date", job.Date},
	} {
		d.item("job-"+strings.ToLower(f.label), "%s", strings.TrimSpace("- "+f.label+": "+escapeMarkdown(f.value)))
	}
	rev := d.revs[len(d.revs)-1]
	d.item("job-revision", "- Revision: %d%s", rev.N, prefixed(" of ", escapeMarkdown(rev.Date)))
	for i, s := range d.rec.Source {
		d.item(fmt.Sprintf("job-recording-%d", i+1), "- Recording: %s, %s%s", escapeMarkdown(s.Name), Clock(s.Duration),
			prefixed(", ", bracketed(VideoLink(d.rec.Job.VideoURL, i, 0))))
	}
}

func bracketed(link string) string {
	if link == "" {
		return ""
	}
	return "[from the start](<" + linkMarks.Replace(link) + ">)"
}

func prefixed(prefix, s string) string {
	if s == "" {
		return ""
	}
	return prefix + s
}

func (d *drawer) safety() {
	d.heading(2, "Safety")
	d.line("> %s", strings.Join(notice, "\n>\n> "))
	d.gap()
	n := 0
	for _, i := range usualOf(d.rec, "caution") {
		u := d.rec.Usual[i]
		d.item(d.refs.Usual[i], "- **%s** %s (not heard; %s%s)", named(u.Signal, "NOTICE"), escapeMarkdown(u.Text),
			named(u.Source, "common practice, no source"), prefixed("; because of: ", escapeMarkdown(u.Why)))
		n++
	}
	for i, c := range d.rec.Cautions {
		d.item(d.refs.Cautions[i], "- Said %s: %s", d.at(c.Place), escapeMarkdown(c.Text))
		n++
	}
	if n == 0 {
		d.none("safety", "No warning was heard in the recording.")
	}
}

func (d *drawer) notSettled() {
	d.heading(2, "Not settled")
	order, unasked := workdoc.OpenOrder(d.rec, extract.BeforeUse), workdoc.Unasked(d.rec, d.refs)
	if len(order) == 0 && len(unasked) == 0 {
		d.none("use", "Nothing that was heard is left open before use. That is no inspection.")
	}
	if len(order) > 0 {
		d.item("count-use", "%s before the machine is used, besides the tightening round below, in the order in which it can be done. "+
			"Tick what is settled and write how.", plural(len(order), "question stands open", "questions stand open"))
		d.gap()
		for _, i := range order {
			d.open(i)
		}
	}
	if len(unasked) > 0 {
		var names []string
		for _, i := range unasked {
			e := d.rec.Ledger[i]
			names = append(names, named(workdoc.Called(e), "not named")+" ("+workdoc.Left(e)+", "+d.at(workdoc.LastHeard(e))+")")
		}
		d.gap()
		d.item("unasked", "No question here asks after what else the recording leaves off, slack or by hand: %s. "+
			"See to each, and tick it under “Seen to” in “What came off and how it was left”.", strings.Join(names, ", "))
	}
	if len(d.rec.Doubts) > 0 {
		d.gap()
		d.item("count-doubts", "Words that may leave something open, and that no question asks after; many leave nothing so. Read them, and tick what is in order.")
		d.gap()
		for i, x := range d.rec.Doubts {
			d.item(d.refs.Doubts[i], "- [ ] Heard %s: %s", d.at(x.Place), quoted(x.Quote))
		}
	}
}

func (d *drawer) open(i int) {
	o := d.rec.Open[i]
	times := []string{d.at(o.Place)}
	for _, at := range o.AlsoAt {
		times = append(times, timecodeAt(d.rec, o.Clip, at, at, o.AtExact))
	}
	computed := ""
	if f := findings(o.Findings); strings.Contains(f, "(computed") {
		computed = ", partly computed" // the question holds the check's own figures
	}
	d.item(d.refs.Open[i], "- [ ] %s (%s%s, %s%s)", escapeMarkdown(o.Question), escapeMarkdown(o.Kind), computed,
		strings.Join(times, ", "), prefixed(", due: ", escapeMarkdown(o.Due)))
	if !o.Tells() {
		d.line("  - Heard: %s", quoted(o.Quote))
	}
	if len(o.Findings) > 0 {
		d.line("  - Check: %s", findings(o.Findings))
	}
	if o.Kind == extract.ReplaceLater {
		d.line("  - Joint tightened again after the swap:")
	}
	d.line("  - Answer:")
	d.line("  - Source:")
}

// findings puts what the checks said in a line; computed figures come with their source.
func findings(list []extract.Finding) string {
	var out []string
	for _, f := range list {
		s := escapeMarkdown(f.Why)
		if f.Ask != "" {
			s = strings.TrimRight(s, ".") + ". " + escapeMarkdown(f.Ask)
		}
		if f.What != "nothing-to-check" {
			s += " (computed, " + named(f.Source, "common practice, no source") + ")"
		}
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return strings.Join(out, "; ")
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// phases gives the headings of the work. A phase the talk comes back to gets a
// heading again, as the talk moves on.
var phases = map[string]string{
	"preparing": "Preparing", "taking apart": "Taking apart", "fitting": "Fitting",
	"tightening": "Tightening", "checking": "Checking", "": "Work",
}

func (d *drawer) work() {
	d.heading(2, "The work")
	if len(d.rec.Steps) == 0 {
		d.none("steps", "No step was heard.")
		return
	}
	seen := map[string]int{}
	phase := "\x00"
	for i, s := range d.rec.Steps {
		if s.Phase != phase {
			phase = s.Phase
			title := phases[phase]
			if title == "" {
				title = escapeMarkdown(phase)
			}
			seen[title]++
			if n := seen[title]; n > 1 {
				title = fmt.Sprintf("%s, part %d", title, n)
			}
			if i > 0 {
				d.gap()
			}
			d.line("### %s", title)
			d.gap()
		}
		off := ""
		if s.OffCamera {
			off = ", off camera"
		}
		d.item(d.refs.Steps[i], "- [ ] %d. %s (%s%s)", s.N, escapeMarkdown(s.Text), d.at(s.Place), off)
	}
}

func (d *drawer) needed() {
	d.heading(2, "What is needed")
	d.line("### Tools")
	d.gap()
	for i, t := range d.rec.Tools {
		size := t.Size
		if len(t.SizesAlt) > 0 {
			size = join(size, " or ", strings.Join(t.SizesAlt, " or "))
		}
		remarks := []string{d.at(t.Place)}
		if t.Need != "required" {
			remarks = append(remarks, escapeMarkdown(t.Need))
		}
		switch {
		case t.Need == "not-needed":
		case t.Listed && !t.Used:
			remarks = append(remarks, "listed, not heard in use")
		case t.Used && !t.Listed:
			remarks = append(remarks, "used, not in a spoken list")
		}
		d.item(d.refs.Tools[i], "- [ ] %s%s (%s)", named(t.Name, "a tool that was not named"),
			prefixed(", ", escapeMarkdown(size)), strings.Join(remarks, "; "))
	}
	if len(d.rec.Tools) == 0 {
		d.none("tools", "No tool was heard.")
	}
	d.heading(3, "Parts")
	for i, p := range d.rec.Parts {
		d.item(d.refs.Parts[i], "- [ ] %s%s: %s (%s)", count(p.Count, "× "),
			named(join(p.Side, " ", p.Name), "a part that was not named"), named(disposition(p.Disposition), "not said what becomes of it"), d.at(p.Place))
	}
	if len(d.rec.Parts) == 0 {
		d.none("parts", "No part was heard.")
	}
	d.heading(3, "Used up")
	used := 0
	for i, c := range d.rec.Consumables {
		if workdoc.StandsIn(d.rec, c) {
			continue
		}
		used++
		d.item(d.refs.Consumables[i], "- [ ] %s%s (%s)", named(c.Name, "something that was not named"),
			prefixed(", on ", escapeMarkdown(c.UsedOn)), d.at(c.Place))
	}
	if used == 0 {
		d.none("consumables", "Nothing used up was heard.")
	}
	d.heading(3, "Sizes heard")
	for _, s := range workdoc.SizeLines(d.rec, d.refs) {
		sure := ""
		if !s.Sure {
			sure = ", not sure"
		}
		at := d.at(s.Place)
		for _, p := range s.Also {
			at += ", " + d.at(p)
		}
		d.item(s.Ref, "- %s: %s%s%s (%s)", named(s.Of, "of something not named"),
			escapeMarkdown(strings.Join(s.Candidates, " or ")), dimension(s.Dimension), sure, at)
	}
	if len(d.rec.Sizes) == 0 {
		d.none("sizes", "No size was heard.")
	}
}

func disposition(s string) string {
	if s == "temporary" {
		return "temporary, to be replaced"
	}
	return s
}

func dimension(s string) string {
	if s == "" || s == "unsaid" {
		return ""
	}
	return " " + escapeMarkdown(s)
}

func count(n int, sign string) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n) + sign
}

func join(a, sep, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + sep + b
}

func (d *drawer) ledger() {
	d.heading(2, "What came off and how it was left")
	if len(d.rec.Ledger) == 0 {
		d.none("ledger", "Nothing was heard to come off or go on.")
		return
	}
	d.line("| Item | Count | Where | As the recording leaves it | More that was said | Last heard | Seen to |")
	d.line("| --- | --- | --- | --- | --- | --- | --- |")
	for i, e := range d.rec.Ledger {
		d.line("| %s <!-- @%s --> | %s | %s | %s | %s | %s | [ ] |",
			named(workdoc.Called(e), "not named"), d.refs.Ledger[i], count(e.Count, ""),
			escapeMarkdown(join(join(e.Side, ", ", e.Place_), ", ", e.Position)),
			escapeMarkdown(workdoc.Left(e)), escapeMarkdown(workdoc.More(e)), d.at(workdoc.LastHeard(e)))
	}
}

func (d *drawer) later() {
	for _, part := range []struct{ before, title, none string }{
		{extract.BeforePublishing, "Open before publishing", "Nothing that was heard stands open before publishing."},
		{extract.BeforeLater, "Due later", "Nothing was heard that falls due later."},
	} {
		d.heading(2, part.title)
		order := workdoc.OpenOrder(d.rec, part.before)
		for _, i := range order {
			d.open(i)
		}
		if len(order) == 0 {
			d.none(part.before, part.none)
		}
		if part.before == extract.BeforeLater {
			d.gap()
			d.line("Add a line here for anything else that falls due, for example `- [ ] retorque the clamp bolts, due: after the first use`.")
		}
	}
}

func (d *drawer) usualChecks() {
	d.heading(2, "Usual checks that were not heard")
	list := usualOf(d.rec, "check")
	if len(list) == 0 {
		d.none("usual", "None are known for this work.")
		return
	}
	for _, i := range list {
		u := d.rec.Usual[i]
		d.item(d.refs.Usual[i], "- [ ] %s (not heard; %s%s)", escapeMarkdown(u.Text),
			named(u.Source, "common practice, no source"), prefixed("; because of: ", escapeMarkdown(u.Why)))
	}
}

func (d *drawer) facts() {
	d.heading(2, "Worked out from what was heard")
	for i, f := range d.rec.Facts {
		d.item(d.refs.Facts[i], "- %s: %s, computed from %s (%s, %s)", escapeMarkdown(f.Name), escapeMarkdown(f.Value),
			named(f.From, "what was heard"), named(f.Method, "method not given"), d.at(f.Place))
	}
	if len(d.rec.Facts) == 0 {
		d.none("facts", "Nothing.")
	}
}

func (d *drawer) claims() {
	d.heading(2, "What readers say")
	d.line("A claim settles nothing by itself. Add one a line, for example `- claim: the value is too high; by: a reader; date: 2026-05-01; source: their manual; status: open`.")
}

func (d *drawer) revisions() {
	d.heading(2, "Revisions")
	for _, r := range d.revs {
		d.item(fmt.Sprintf("revision-%d", r.N), "- %d%s: %s", r.N, prefixed(", ", escapeMarkdown(r.Date)), escapeMarkdown(r.What))
	}
}

func (d *drawer) making() {
	d.heading(2, "How this was made")
	d.line("Every line was read by rules from the recording named here and carries the time where it was said; " +
		"≈ before a time says that it was worked out inside a longer cue. What is computed says so. Nothing was looked up.")
	d.gap()
	for i, s := range d.rec.Source {
		d.item(fmt.Sprintf("made-%d", i+1), "- %s: %s, %s, %s, sha256 %s", escapeMarkdown(s.Name), escapeMarkdown(s.Format),
			plural(s.Cues, "cue", "cues"), plural(s.Words, "word", "words"), escapeMarkdown(s.SHA256))
	}
	for i, n := range d.rec.Notes {
		d.item(fmt.Sprintf("note-%d", i+1), "- %s", escapeMarkdown(n.Text))
	}
}
