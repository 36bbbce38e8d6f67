package workdoc

import (
	"fmt"
	"strings"
	"time"

	"wrenchword/extract"
	"wrenchword/normalize/pattern"
)

// Still is one thing that still stands open.
type Still struct {
	Ref  string // "" for a line of the person's own
	Text string
	Why  string // what is missing
	Clip int
	At   float64 // seconds; -1 where it was not heard
}

// Verdict is what stands between a job and its gate.
type Verdict struct {
	Open    []Still  // in the order in which it can be done
	Due     []Still  // what falls due later, and what is due already
	Usual   int      // usual checks that nobody has ticked
	Doubts  []Still  // words that may leave something open, that nobody asks after and nobody ticked: they close or open nothing
	Remarks []string // disagreements and doubts that close or open nothing
}

// Checker checks a value that a person confirmed against what the record has of
// the fastener in the row: plain sentences, none where nothing is to be said. It
// fails where the value cannot be read.
type Checker func(confirmed string, row RoundRow, rec *extract.Record) (remarks []string, err error)

// Ready judges a document for one gate, extract.BeforeUse or
// extract.BeforePublishing. today decides what is overdue. What a person struck
// out of the text is still open: only an answer, a value with its source, or a
// tick closes anything.
func Ready(d *Document, before string, check Checker, today time.Time) Verdict {
	j := &judge{d: d, check: check, closed: map[string]bool{}}
	var open []Still
	var tasks []task
	add := func(s Still, t task) { open, tasks = append(open, s), append(tasks, t) }
	inRound := map[string]bool{} // entries whose row asks for their value
	for _, r := range Round(d.Record, d.Refs) {
		why := j.row(r)
		if r.Entry != nil {
			j.closed[r.Entry.ID] = why == ""
			inRound[r.Entry.ID] = why != "" && before == extract.BeforeUse
		}
		if why == "" || before != extract.BeforeUse {
			continue
		}
		p := r.Heard()
		add(Still{Ref: r.Ref, Text: "Confirm and tighten: " + orElse(r.Name, "a fastener that was not named"), Why: why, Clip: p.Clip, At: p.At},
			task{entry: r.Entry, about: r.Name, stage: stage[extract.NotTorqued], danger: danger[extract.NotTorqued]})
	}
	for i, o := range d.Record.Open {
		if o.Before != before || o.Kind == extract.NotTorqued && inRound[o.LedgerID] {
			continue
		}
		if s, ok := j.question(o, d.Refs.Open[i]); ok {
			add(s, taskOf(d.Record, o))
		}
	}
	if before == extract.BeforeUse {
		for _, i := range Unasked(d.Record, d.Refs) {
			if s, ok := j.unseen(i); ok {
				e := &d.Record.Ledger[i]
				add(s, task{entry: e, about: e.Item, stage: stage[extract.NotRefitted], danger: danger[extract.NotRefitted]})
			}
		}
		for _, s := range j.reopened() {
			add(s, task{about: s.Text, stage: stage[extract.NotTorqued], danger: danger[extract.NotRefitted]})
		}
		for _, own := range d.Own {
			if why := j.cells(own.Row, RoundRow{Name: own.Name}); why != "" {
				add(Still{Text: "Confirm and tighten: " + orElse(own.Name, "a row of your own"), Why: why, At: -1},
					task{about: own.Name, stage: stage[extract.NotTorqued], danger: danger[extract.NotTorqued]})
			}
		}
	}
	v := Verdict{}
	for _, i := range inOrder(tasks) {
		v.Open = append(v.Open, open[i])
	}
	v.Due = j.due(today)
	for _, s := range v.Due {
		if before == extract.BeforeUse && strings.HasPrefix(s.Why, "due since") {
			v.Open = append(v.Open, s)
		}
	}
	for i, u := range d.Record.Usual {
		if u.Kind == "check" && !d.Ticks[d.Refs.Usual[i]] {
			v.Usual++
		}
	}
	v.Remarks = j.remarks
	if before == extract.BeforeUse {
		for i, x := range d.Record.Doubts {
			if !d.Ticks[d.Refs.Doubts[i]] {
				v.Doubts = append(v.Doubts, Still{Ref: d.Refs.Doubts[i], Text: x.Quote, Clip: x.Clip, At: x.At})
			}
		}
	}
	for _, c := range d.Claims {
		if c.Status == "open" {
			v.Remarks = append(v.Remarks, fmt.Sprintf("line %d: a claim by %s is open: %s", c.Line, orElse(c.Who, "somebody"), c.Text))
		}
	}
	return v
}

type judge struct {
	d       *Document
	check   Checker
	closed  map[string]bool // ledger entries whose rows are all settled
	remarks []string
}

func orElse(s, otherwise string) string {
	if strings.TrimSpace(s) == "" {
		return otherwise
	}
	return s
}

// row says why a row of the round is not settled, or "".
func (j *judge) row(r RoundRow) string {
	return j.cells(j.d.Rows[r.Ref], r)
}

// cells says why the person's cells do not settle a row, or "".
func (j *judge) cells(c Row, row RoundRow) string {
	switch {
	case c.Confirmed == "" && c.Tightened:
		return "ticked as tightened, but no value is confirmed"
	case c.Confirmed == "":
		return "no confirmed value"
	case isNotApplicable(c.Confirmed):
		if notApplicableReason(c.Confirmed) == "" && c.Source == "" {
			return `"n/a" needs a reason, for example "n/a, replaced by a clip"`
		}
		return ""
	case unpublished().MatchString(c.Confirmed):
		if !signed().MatchString(c.Confirmed + " " + c.Source) {
			return `where no value is published, say how it was tightened and sign it: "no value published, by feel, signed: name, date"`
		}
		if !c.Tightened {
			return "not ticked as tightened"
		}
		return ""
	}
	remarks, err := j.check(c.Confirmed, row, j.d.Record)
	if err != nil {
		return err.Error()
	}
	for _, r := range remarks {
		r = fmt.Sprintf("line %d: %s", c.Line, r)
		if !contains(j.remarks, r) {
			j.remarks = append(j.remarks, r)
		}
	}
	switch {
	case strings.TrimSpace(c.Source) == "":
		return "the confirmed value has no source"
	case weakSource().MatchString(c.Source):
		return "its source is general, for another machine, or a claim: that alone confirms nothing"
	case !c.Tightened:
		return "not ticked as tightened"
	}
	return ""
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

var (
	notApplicable = pattern.Of(`(?i)^\s*(n/?a|not applicable)\b[\s,;:.\-–—(]*`)
	unpublished   = pattern.Of(`(?i)\b(no (value|torque|figure)( is)? published|not published|by feel|to the mark|(quarter|half|third)[ -](of a )?turn)\b`)
	signed        = pattern.Of(`(?i)\bsigned\b[:,\s]+\pL`)
	weakSource    = pattern.Of(`(?i)\b(general (value|table|chart|figure)s?|(value|table|chart)s? (by|for (the|this)) size|bolt size chart|by size|(an)?other (machine|model)|different (machine|model)|reader('s)? claim|claim|heard in the recording|the recording|the video|this transcript)\b|^\s*general\b`)
)

func isNotApplicable(s string) bool { return notApplicable().MatchString(s) }
func notApplicableReason(s string) string {
	return strings.TrimRight(notApplicable().ReplaceAllString(s, ""), " ).")
}

// question says whether an open question still is one, and why.
func (j *judge) question(o extract.Open, ref string) (Still, bool) {
	why := j.unanswered(o, ref)
	if why == "" {
		return Still{}, false
	}
	return Still{Ref: ref, Text: o.Question, Why: j.orRemoved(why, ref), Clip: o.Clip, At: o.At}, true
}

// unseen says whether a thing that the recording leaves off, and that no question asks after,
// still is to be seen to.
func (j *judge) unseen(i int) (Still, bool) {
	ref := j.d.Refs.Ledger[i]
	if j.d.Ticks[ref] {
		return Still{}, false
	}
	e := j.d.Record.Ledger[i]
	last := LastHeard(e)
	return Still{Ref: ref, Text: "See to it: " + orElse(Called(e), "something that was not named") + ", " + Left(e) + " when last heard of",
		Why: j.orRemoved(`not ticked under "Seen to"`, ref), Clip: last.Clip, At: last.At}, true
}

// orRemoved adds to what is missing that a person took it out of the text.
func (j *judge) orRemoved(why, ref string) string {
	if contains(j.d.Removed, ref) {
		why += "; it was taken out of the text, which settles nothing"
	}
	return why
}

// unanswered says what an open question still lacks, or "".
func (j *judge) unanswered(o extract.Open, ref string) string {
	a, ticked := j.d.Answers[ref], j.d.Ticks[ref]
	switch o.Kind {
	case extract.LookUp, extract.Conflict, extract.Suspect, extract.Unsure:
		if o.LedgerID != "" && j.closed[o.LedgerID] {
			return "" // the round has the value, with its source
		}
		switch {
		case strings.TrimSpace(a.Text) == "" && ticked:
			return "ticked, but with no answer"
		case strings.TrimSpace(a.Text) == "":
			return "no answer"
		case isNotApplicable(a.Text) && notApplicableReason(a.Text) == "":
			return `"n/a" needs a reason`
		case isNotApplicable(a.Text):
			return ""
		case strings.TrimSpace(a.Source) == "":
			return "the answer has no source"
		case weakSource().MatchString(a.Source):
			return "its source is general, for another machine, or a claim: that alone settles nothing"
		}
		return ""
	case extract.NotTorqued:
		if ticked || o.LedgerID != "" && j.closed[o.LedgerID] {
			return ""
		}
	}
	if ticked {
		return ""
	}
	if a.Text != "" {
		return "answered, but not ticked"
	}
	return "not ticked"
}

// reopened are the joints that a swap of a stand-in part took apart again.
func (j *judge) reopened() []Still {
	var out []Still
	for i, o := range j.d.Record.Open {
		ref := j.d.Refs.Open[i]
		if o.Kind == extract.ReplaceLater && j.d.Ticks[ref] && !j.d.Answers[ref].Again {
			out = append(out, Still{Ref: ref, Text: "Tighten the joint of the " + orElse(o.About, "swapped part") + " again",
				Why: "the stand-in part was swapped, which opens its joint", Clip: o.Clip, At: o.At})
		}
	}
	return out
}

func (j *judge) due(today time.Time) []Still {
	var out []Still
	why := func(when string) string {
		if t, err := time.Parse("2006-01-02", strings.TrimSpace(when)); err == nil && !t.After(today) {
			return "due since " + when
		}
		return "due: " + orElse(when, "no time given")
	}
	for i, o := range j.d.Record.Open {
		if ref := j.d.Refs.Open[i]; o.Before == extract.BeforeLater && !j.d.Ticks[ref] {
			out = append(out, Still{Ref: ref, Text: o.Question, Why: why(o.Due), Clip: o.Clip, At: o.At})
		}
	}
	for _, d := range j.d.Dues {
		if !d.Done {
			out = append(out, Still{Text: d.Text, Why: why(d.When), At: -1})
		}
	}
	return out
}
