// Package page publishes a working document: as one self-contained HTML page,
// as Markdown with front matter and as MediaWiki text. Each output is drawn from
// the same view of the document, so all say the same of every value. Whatever
// came from the talk or from a person is text in it, and nothing in it acts.
package page

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"html/template"
	"math"
	"math/big"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"wrenchword/extract"
	"wrenchword/normalize"
	"wrenchword/normalize/pattern"
	"wrenchword/render"
	"wrenchword/render/workdoc"
)

// Words that stand beside a value, on every surface.
const (
	heardOnly = "heard, not confirmed"
	leftOut   = "[value left out: nobody confirmed it]"
)

// Options say how a document is published.
type Options struct {
	SettledOnly bool      // leave out every value that nobody confirmed
	Name        string    // stands for the title of a job that has none
	Today       time.Time // dues are judged by it
	Stills      []Still   // pictures by time, made by Stills or the person's own
}

// Page is what is published of one job. All strings are plain text.
type Page struct {
	ID          string // stays the same while the job and its recordings do
	Title       string
	Facts       []Pair // machine, year, reading, date, revision
	SettledOnly bool
	LeftOut     int // values left out
	TakenOut    int // lines that the person took out of the document's text
	Ready       bool
	Verdict     string
	Notice      []string
	Cautions    []Caution
	Open        []Ask  // in the order in which it can be done
	Doubts      []Item // words that may leave something open, and that no question asks after
	Round       []Place
	Phases      []Phase
	Needed      []List // tools, parts, used up, sizes
	Left        []Left
	Answered    []Ask
	Publishing  []Ask
	Later       []Ask
	Usual       []Item
	Worked      []Item
	Claims      []Claim
	Added       []string // lines the person added
	Revisions   []workdoc.Revision
	Sources     []Source
	Notes       []string
	Players     []Player
	Band        []Band
	Stills      []Still
}

// Pair is a label and what stands beside it.
type Pair struct{ Label, Value string }

// Moment is a time in a recording, as words and as a link where its address is known.
type Moment struct {
	Text   string
	Clip   int
	Second float64
	Href   template.URL // checked by render.VideoLink; "" where none is known
}

// Caution is a warning: a usual one with its signal word, or one that was said.
type Caution struct {
	Signal, Text, From string
	At                 []Moment
}

// Ask is something that stands open, or a question with its answer.
type Ask struct {
	Ref, Text, Kind, Why, Quote, Due string
	Row                              string // the row of the round it is about, "" where it is a question
	Checks                           []string
	Answer, Source                   Rich
	At                               []Moment
	Ticked                           bool
	Notes                            []string // the person's own lines
}

// Place is a stop of the tightening round.
type Place struct {
	Name string
	Rows []Row
}

// Value is a torque in each of the units a reader may choose.
type Value struct {
	Words                                    string // as it was said or written, with its doubts
	NM, LbfFt, LbfIn                         string // "" where it cannot be told
	Then                                     string // the angle that follows, " then 90°"
	NMComputed, LbfFtComputed, LbfInComputed bool
	Quote                                    string
	At                                       Moment
}

// Row is one fastener of the tightening round.
type Row struct {
	Ref, Name, Count string
	Box              string // changes with the value shown, so that a tick never outlives it
	State            string // "confirmed", "signed", "n/a", "heard", "none"
	Words            string // the state in words
	Why              string // what is missing, "" where nothing is
	Heard            []Value
	Confirmed        *Value
	Source           Rich
	Checks           []string
	At               []Moment
	Ticked           bool
	When             string
	Bar              *Bar
	Washers, Order   string
	Put              string
}

// Phase is a stretch of the work.
type Phase struct {
	Title string
	Steps []Step
}

// Step is one instruction.
type Step struct {
	Ref, Text string
	N         int
	OffCamera bool
	Ticked    bool
	At        Moment
	Notes     []string // the person's own lines
}

// List is a named list of things.
type List struct {
	Title, None string
	Items       []Item
}

// Item is one thing with remarks.
type Item struct {
	Ref, Text, Remark string
	At                []Moment
	Ticked, Box       bool
}

// Left is how one thing was left.
type Left struct {
	Name, Count, Where, State, More, Put, Washers, Position string
	Fastener                                                bool
	At                                                      Moment
}

// Claim is a reader's word. It changes nothing by itself.
type Claim struct {
	Who, When, Status string
	Text              Rich
}

// Source is one clip.
type Source struct {
	Name, Length, About string
}

// Player is a recording that the page can play.
type Player struct {
	Clip int
	Src  template.URL
	Name string
}

// New makes the view of a document that Read or render.Markdown made.
func New(doc *workdoc.Document, opt Options) *Page {
	b := &builder{doc: doc, rec: doc.Record, opt: opt, job: doc.Job, noted: map[string]bool{}}
	if b.job.VideoURL == "" {
		b.job.VideoURL = b.rec.Job.VideoURL
	}
	b.judge()
	p := &Page{
		ID: b.id(), Title: orElse(b.job.Title, orElse(opt.Name, "Procedure")), SettledOnly: opt.SettledOnly,
		Notice: render.Notice(), Revisions: doc.Revisions, Stills: opt.Stills,
	}
	b.p = p
	for _, f := range []Pair{{"Machine", b.job.Machine}, {"Year", b.job.Year}, {"Reading", b.job.Reading}, {"Date", b.job.Date}} {
		if f.Value != "" {
			p.Facts = append(p.Facts, f)
		}
	}
	if n := len(doc.Revisions); n > 0 {
		r := doc.Revisions[n-1]
		p.Facts = append(p.Facts, Pair{"Revision", strings.TrimSuffix(fmt.Sprintf("%d of %s", r.N, r.Date), " of ")})
	}
	b.cautions()
	b.round()
	b.open()
	b.steps()
	b.needed()
	b.left()
	b.rest()
	b.band()
	b.verdict()
	return p
}

type builder struct {
	p         *Page
	doc       *workdoc.Document
	rec       *extract.Record
	job       extract.Job
	opt       Options
	use       workdoc.Verdict
	why       map[string]string // what is missing, by reference
	confirmed map[string]bool   // rows whose value is settled, tightened or not
	rows      []workdoc.RoundRow
	noted     map[string]bool // items whose notes stand with them
}

func orElse(s, otherwise string) string {
	if strings.TrimSpace(s) == "" {
		return otherwise
	}
	return s
}

func (b *builder) id() string {
	h := sha256.New()
	fmt.Fprintf(h, "%q", []string{b.job.Title, b.job.Machine, b.job.Year})
	for _, s := range b.rec.Source {
		fmt.Fprintf(h, "%q", s.Name)
	}
	return hex.EncodeToString(h.Sum(nil)[:8])
}

func (b *builder) judge() {
	b.use = workdoc.Ready(b.doc, extract.BeforeUse, workdoc.CheckConfirmed, b.opt.Today)
	b.why = map[string]string{}
	for _, s := range b.use.Open {
		b.why[s.Ref] = s.Why
	}
	for _, s := range workdoc.Ready(b.doc, extract.BeforePublishing, workdoc.CheckConfirmed, b.opt.Today).Open {
		b.why[s.Ref] = s.Why
	}
	// A row whose value is settled lacks at most its tick: judged as if every
	// row were ticked, nothing of it is open.
	ticked := *b.doc
	ticked.Rows = map[string]workdoc.Row{}
	for ref, r := range b.doc.Rows {
		r.Tightened = true
		ticked.Rows[ref] = r
	}
	missing := map[string]bool{}
	for _, s := range workdoc.Ready(&ticked, extract.BeforeUse, workdoc.CheckConfirmed, b.opt.Today).Open {
		missing[s.Ref] = true
	}
	b.rows = workdoc.Round(b.rec, b.doc.Refs)
	b.confirmed = map[string]bool{}
	for _, r := range b.rows {
		b.confirmed[r.Ref] = !missing[r.Ref]
	}
}

func (b *builder) verdict() {
	n := len(b.use.Open)
	b.p.Ready = n == 0
	switch n {
	case 0:
		b.p.Verdict = "Nothing that was heard is left open before use; " +
			plural(b.use.Usual, "usual check is", "usual checks are") + " not confirmed. This is no inspection."
	case 1:
		b.p.Verdict = "Not ready for use: 1 thing stands open."
	default:
		b.p.Verdict = fmt.Sprintf("Not ready for use: %d things stand open.", n)
	}
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

func (b *builder) at(p extract.Place) Moment { return b.moment(p.Clip, p.At, p.LinkAt(), p.AtExact) }

func (b *builder) moment(clip int, at, link float64, exact bool) Moment {
	m := Moment{Text: render.Clock(at), Clip: clip, Second: math.Max(0, link)}
	if !exact {
		m.Text = "≈" + m.Text
	}
	if len(b.rec.Source) > 1 {
		m.Text = fmt.Sprintf("clip %d, %s", clip+1, m.Text)
	}
	m.Href = template.URL(render.VideoLink(b.job.VideoURL, clip, link))
	return m
}

// own gives an item's text: the person's where they wrote their own in its
// place, without the number and the times that the document puts around it.
func (b *builder) own(ref, text string) (s string, edited bool) {
	own, ok := b.doc.Edited[ref]
	if !ok {
		return text, false
	}
	return lineTimes().ReplaceAllString(lineNumber().ReplaceAllString(own, ""), ""), true
}

var (
	saidAt     = pattern.Of(`^Said (?:clip \d+, )?≈?[\d:]+: `)
	lineNumber = pattern.Of(`^\d+\. `)
	lineTimes  = pattern.Of(` \((?:[^()]*[ ;,])?(?:clip \d+, )?≈?\d+:\d\d[^()]*\)$`)
)

// removed says whether the person took an item out of the document's text.
func (b *builder) removed(ref string) bool {
	if !slices.Contains(b.doc.Removed, ref) {
		return false
	}
	b.p.TakenOut++
	return true
}

// notes gives the lines that the person added under an item.
func (b *builder) notes(ref string) []string {
	b.noted[ref] = true
	var out []string
	for _, n := range b.doc.Notes[ref] {
		out = append(out, b.quote(n, nil))
	}
	return out
}

// itemText is the text of an item with each torque in it marked as what it is.
func (b *builder) itemText(ref, text string, p extract.Place) string {
	s, edited := b.own(ref, text)
	if !edited || b.opt.SettledOnly {
		return b.spoken(s, p)
	}
	return b.torques(s, &p, func(q normalize.Quantity, said string) string {
		if b.isConfirmed(q, p) {
			return said
		}
		return said + " [written, not confirmed]"
	})
}

// spoken marks each torque in words of the talk as what it is, or leaves it out.
func (b *builder) spoken(s string, p extract.Place) string {
	return b.torques(s, &p, func(q normalize.Quantity, said string) string {
		if b.opt.SettledOnly {
			b.p.LeftOut++
			return leftOut
		}
		if b.isConfirmed(q, p) {
			return said + " [heard; the confirmed value is in the tightening round]"
		}
		return said + " [" + heardOnly + "]"
	})
}

// quote leaves a quotation of what was said at p, nil where that is not known, word for word, but for
// values that are left out.
func (b *builder) quote(s string, p *extract.Place) string {
	if !b.opt.SettledOnly {
		return s
	}
	return b.torques(s, p, func(normalize.Quantity, string) string { b.p.LeftOut++; return leftOut })
}

// torques puts something in the place of each torque in s, which was said at p, or nowhere where p is
// nil.
func (b *builder) torques(s string, p *extract.Place, put func(normalize.Quantity, string) string) string {
	var out strings.Builder
	last := 0
	found := append(normalize.Quantities(s), b.unitless(s, p)...) // with its unit before the number alone
	slices.SortStableFunc(found, func(x, y normalize.Quantity) int { return x.Start - y.Start })
	for _, q := range found {
		if q.Kind != normalize.Torque || q.Start < last || q.End > len(s) {
			continue
		}
		out.WriteString(s[last:q.Start])
		out.WriteString(put(q, s[q.Start:q.End]))
		last = q.End
	}
	return out.String() + s[last:]
}

// unitless gives the values in s that have no unit there: that of a step or a question that the tool
// wrote, since the talk names none, and where values are left out, numbers that are a value heard
// without its unit: "and forty on those". Away from where it was said, p, a number that counts or
// measures something else is none.
func (b *builder) unitless(s string, p *extract.Place) []normalize.Quantity {
	written := strings.Contains(s, "(unit not said") || strings.HasPrefix(s, "In which unit ")
	if !written && !b.opt.SettledOnly {
		return nil
	}
	var out []normalize.Quantity
	for _, n := range normalize.Numbers(s) {
		if n.Low == nil {
			continue
		}
		if slices.ContainsFunc(b.rec.Torques, func(t extract.Torque) bool {
			if figure(t.Said.Low).Cmp(n.Low) != 0 || figure(t.Said.High).Cmp(n.High) != 0 {
				return false
			}
			if written {
				return t.Said.Unit == ""
			}
			if t.Said.Unit != "" && t.UnitFrom == "" {
				return false
			}
			return p != nil && t.Clip == p.Clip && math.Abs(t.At-p.At) <= near || !counts(s[n.End:])
		}) {
			out = append(out, n.In(normalize.Torque, ""))
		}
	}
	return out
}

// counted are the words for what a number before them counts or measures, and is no torque.
var counted = []string{"year", "kilo", "quid", "odd", "metre", "meter", "k", "euro", "minute", "second", "page", "mil", "mm", "percent", "in", "o'clock"}

// counts tells whether what follows a number is what it counts: "forty years", "thirty miles".
func counts(rest string) bool {
	w := strings.ToLower(strings.TrimLeft(rest, " -"))
	if i := strings.IndexFunc(w, func(r rune) bool { return !unicode.IsLetter(r) && r != '\'' }); i >= 0 {
		w = w[:i]
	}
	return w != "" && rest[0] != ',' && rest[0] != '.' && (slices.Contains(counted, w) || len(w) > 4 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss"))
}

// near is how far from a step a value it repeats was heard, in seconds.
const near = 20

func (b *builder) isConfirmed(q normalize.Quantity, p extract.Place) bool {
	for _, r := range b.rows {
		for _, t := range r.Torques {
			if !b.confirmed[r.Ref] || t.Clip != p.Clip || math.Abs(t.At-p.At) > near {
				continue
			}
			if q.Unit == "" && t.Said.Unit == "" {
				return true
			}
			if len(t.NM) == 2 {
				nm, ok := normalize.ToNM(q.Low, q.Unit)
				if !ok {
					continue
				}
				if v, _ := nm.Float64(); math.Abs(v-t.NM[0]) <= 0.02*v {
					return true
				}
			}
		}
	}
	return false
}

var severity = []string{"DANGER", "WARNING", "CAUTION", "NOTICE"}

func (b *builder) cautions() {
	for _, u := range b.rec.Usual {
		if u.Kind == "caution" {
			from := orElse(u.Source, "common practice, no source")
			if u.Why != "" {
				from += "; because of: " + u.Why
			}
			b.p.Cautions = append(b.p.Cautions, Caution{Signal: orElse(u.Signal, "NOTICE"), Text: u.Text, From: "not heard; " + from})
		}
	}
	slices.SortStableFunc(b.p.Cautions, func(x, y Caution) int {
		return slices.Index(severity, x.Signal) - slices.Index(severity, y.Signal)
	})
	for i, c := range b.rec.Cautions {
		ref := b.doc.Refs.Cautions[i]
		if b.removed(ref) {
			continue
		}
		b.p.Cautions = append(b.p.Cautions, Caution{Signal: "Said", Text: saidAt().ReplaceAllString(b.itemText(ref, c.Text, c.Place), ""), At: []Moment{b.at(c.Place)}})
	}
}

func checks(list []extract.Finding) []string {
	var out []string
	for _, f := range list {
		why := strings.TrimRight(f.Why, ". ") + "."
		out = append(out, strings.TrimSpace(why+" "+f.Ask)+" (computed; "+orElse(f.Source, "common practice, no source")+")")
	}
	return out
}

func (b *builder) round() {
	at := map[string]int{}
	add := func(place string, r Row) {
		place = orElse(place, "Place not said")
		i, ok := at[place]
		if !ok {
			i = len(b.p.Round)
			at[place] = i
			b.p.Round = append(b.p.Round, Place{Name: place})
		}
		b.p.Round[i].Rows = append(b.p.Round[i].Rows, r)
	}
	for _, r := range b.rows {
		row := b.row(r.Ref, orElse(r.Name, "a fastener that was not named"), b.doc.Rows[r.Ref], len(r.Torques) > 0)
		if r.Count > 0 {
			row.Count = strconv.Itoa(r.Count)
		}
		if r.Entry != nil {
			row.Washers, row.Put = r.Entry.Washers, r.Entry.StoredAt
			if len(r.Torques) == 0 {
				row.At = append(row.At, b.at(r.Entry.Place))
				if row.State == "none" {
					row.Words += "; left: " + r.Left()
				}
			}
		}
		shown := !b.opt.SettledOnly
		for _, t := range r.Torques {
			m := b.at(t.Place)
			row.At = append(row.At, m)
			if !shown {
				b.p.LeftOut++
				continue
			}
			v := heard(t)
			v.At, v.Quote = m, t.Quote
			row.Heard = append(row.Heard, v)
			row.Checks = append(row.Checks, checks(t.Findings)...)
		}
		if row.State == "heard" && !shown {
			row.Words = leftOut
		}
		row.Bar = b.bar(r, row)
		row.Box = r.Ref + " " + digest(fmt.Sprint(row.Confirmed, row.Heard))
		add(r.Place, row)
	}
	for i, own := range b.doc.Own {
		row := b.row(fmt.Sprintf("own-%d", i+1), orElse(own.Name, "a row of the person's own"), own.Row, false)
		row.Box = row.Ref + " " + digest(own.Name+fmt.Sprint(row.Confirmed))
		if row.State != "none" {
			for _, s := range b.use.Open {
				if s.Ref == "" && s.Text == "Confirm and tighten: "+own.Name {
					row.Why = s.Why
					if !row.Ticked && s.Why == "not ticked as tightened" {
						continue
					}
					row.State, row.Words = "heard", "written, not confirmed: "+s.Why
				}
			}
		}
		add("Added by hand", row)
	}
}

func digest(s string) string {
	h := sha256.Sum256([]byte(s))
	return hex.EncodeToString(h[:4])
}

// row is a row with what the person put into it.
func (b *builder) row(ref, name string, c workdoc.Row, valued bool) Row {
	row := Row{Ref: ref, Name: name, Why: b.why[ref], Ticked: c.Tightened, When: c.When}
	own := strings.HasPrefix(ref, "own-")
	switch {
	case c.Confirmed != "" && (b.confirmed[ref] || own):
		v := written(c.Confirmed)
		row.Confirmed, row.Source = &v, rich(c.Source)
		low := strings.ToLower(strings.TrimSpace(c.Confirmed))
		switch {
		case strings.HasPrefix(low, "n/a"), strings.HasPrefix(low, "na "), strings.HasPrefix(low, "not applicable"):
			row.State, row.Words = "n/a", "does not apply here, by the person's word"
		case v.NM == "" && !strings.Contains(low, "°") && !strings.Contains(low, "deg"):
			row.State, row.Words = "signed", "no published value; done as the person signed it"
		default:
			row.State, row.Words = "confirmed", "confirmed by a person, with the source they gave"
		}
	case c.Confirmed != "":
		row.State, row.Words = "heard", "written, not confirmed: "+row.Why
		if !b.opt.SettledOnly {
			v := written(c.Confirmed)
			row.Confirmed, row.Source = &v, rich(c.Source)
		} else {
			b.p.LeftOut++
		}
	case valued:
		row.State, row.Words = "heard", heardOnly
	default:
		row.State, row.Words = "none", "no value heard, none confirmed"
	}
	return row
}

func figure(f float64) *big.Rat {
	r, _ := new(big.Rat).SetString(strconv.FormatFloat(f, 'f', -1, 64))
	return r
}

// inUnits fills in the units of a value given in unit.
func (v *Value) inUnits(lo, hi *big.Rat, unit string) {
	if lo == nil || lo.Sign() <= 0 || unit == "" {
		return
	}
	if hi == nil || hi.Sign() <= 0 {
		hi = lo
	}
	in := func(to string) (string, bool) {
		s := strings.TrimSuffix(normalize.RoundedRange(lo, hi, unit, to), " "+to)
		return strings.Replace(s, "-", " to ", 1), to != unit
	}
	v.NM, v.NMComputed = in("N.m")
	v.LbfFt, v.LbfFtComputed = in("lbf.ft")
	v.LbfIn, v.LbfInComputed = in("lbf.in")
}

func heard(t *extract.Torque) Value {
	v := Value{Words: render.SaidTorque(t)}
	v.inUnits(figure(t.Said.Low), figure(t.Said.High), t.Said.Unit)
	if t.AngleDeg != nil {
		v.Then = " then " + strconv.FormatFloat(*t.AngleDeg, 'f', -1, 64) + "°"
	}
	return v
}

// written reads a value that a person wrote.
func written(s string) Value {
	v := Value{Words: s}
	val, err := workdoc.ParseValue(s)
	if err != nil {
		return v
	}
	if val.AngleDeg != nil {
		v.Then = " then " + strings.TrimSuffix(strings.TrimRight(val.AngleDeg.FloatString(1), "0"), ".") + "°"
	}
	for _, q := range normalize.Quantities(s) {
		if q.Kind == normalize.Torque {
			v.inUnits(q.Low, q.High, q.Unit)
			break
		}
	}
	return v
}

func (b *builder) open() {
	asks := map[string]int{}
	for i, ref := range b.doc.Refs.Open {
		asks[ref] = i
	}
	for _, s := range b.use.Open {
		if i, ok := asks[s.Ref]; ok {
			a := b.ask(i)
			a.Why = s.Why
			b.p.Open = append(b.p.Open, a)
			continue
		}
		a := Ask{Ref: s.Ref, Text: s.Text, Why: s.Why}
		for _, r := range b.rows {
			if r.Ref == s.Ref {
				a.Row = s.Ref
			}
		}
		if s.At >= 0 {
			a.At = []Moment{b.moment(s.Clip, s.At, s.At, true)}
		}
		b.p.Open = append(b.p.Open, a)
	}
	for _, s := range b.use.Doubts {
		if b.opt.SettledOnly && len(normalize.Numbers(s.Text)) > 0 {
			continue // it may hold a value in any form
		}
		b.p.Doubts = append(b.p.Doubts, Item{Ref: s.Ref, Text: s.Text, At: []Moment{b.moment(s.Clip, s.At, s.At, true)}})
	}
	for i, o := range b.rec.Open {
		ref := b.doc.Refs.Open[i]
		_, still := b.why[ref]
		switch {
		case o.Before == extract.BeforeUse && still:
		case o.Before == extract.BeforePublishing && still:
			b.p.Publishing = append(b.p.Publishing, b.ask(i))
		case o.Before == extract.BeforeLater && !b.doc.Ticks[ref]:
			b.p.Later = append(b.p.Later, b.ask(i))
		default:
			b.p.Answered = append(b.p.Answered, b.ask(i))
		}
	}
	for _, d := range b.doc.Dues {
		a := Ask{Text: d.Text, Due: d.When, Ticked: d.Done}
		if d.Done {
			b.p.Answered = append(b.p.Answered, a)
		} else {
			b.p.Later = append(b.p.Later, a)
		}
	}
}

// question says once of all values in a question that nobody confirmed them.
func (b *builder) question(s string, p *extract.Place) string {
	had := b.p.LeftOut
	found := false
	out := b.torques(s, p, func(_ normalize.Quantity, said string) string {
		found = true
		if b.opt.SettledOnly {
			b.p.LeftOut = had + 1
			return leftOut
		}
		return said
	})
	if found && !b.opt.SettledOnly {
		out += " [" + heardOnly + "]"
	}
	return out
}

var aboutValues = []string{extract.LookUp, extract.Conflict, extract.Suspect, extract.Unsure, extract.NotTorqued}

func (b *builder) ask(i int) Ask {
	o, ref := b.rec.Open[i], b.doc.Refs.Open[i]
	ans := b.doc.Answers[ref]
	text := o.Question
	hide := b.opt.SettledOnly && slices.Contains(aboutValues, o.Kind) && len(normalize.Numbers(o.Quote)) > 0
	if hide {
		text = strings.ReplaceAll(text, o.Quote, leftOut)
	}
	a := Ask{
		Ref: ref, Text: b.question(text, &o.Place), Kind: o.Kind, Why: b.why[ref], Quote: b.quote(o.Quote, &o.Place), Due: o.Due,
		Answer: rich(ans.Text), Source: rich(ans.Source), Ticked: b.doc.Ticks[ref], At: []Moment{b.at(o.Place)}, Notes: b.notes(ref),
	}
	// Words about a value in doubt hold it in any form, so they go as a whole.
	switch {
	case o.Tells():
		a.Quote = ""
	case hide:
		a.Quote = leftOut
	}
	if b.opt.SettledOnly && a.Why != "" {
		a.Answer = rich(b.quote(ans.Text, &o.Place))
	}
	for _, at := range o.AlsoAt {
		a.At = append(a.At, b.moment(o.Clip, at, at, o.AtExact))
	}
	for _, c := range checks(o.Findings) {
		a.Checks = append(a.Checks, b.quote(c, &o.Place))
	}
	return a
}

var phases = map[string]string{
	"preparing": "Preparing", "taking apart": "Taking apart", "fitting": "Fitting",
	"tightening": "Tightening", "checking": "Checking", "": "Work",
}

func (b *builder) steps() {
	seen := map[string]int{}
	last := "\x00"
	for i, s := range b.rec.Steps {
		ref := b.doc.Refs.Steps[i]
		if b.removed(ref) {
			continue
		}
		if s.Phase != last {
			last = s.Phase
			title := orElse(phases[s.Phase], s.Phase)
			if seen[title]++; seen[title] > 1 {
				title = fmt.Sprintf("%s, part %d", title, seen[title])
			}
			b.p.Phases = append(b.p.Phases, Phase{Title: title})
		}
		ph := &b.p.Phases[len(b.p.Phases)-1]
		ph.Steps = append(ph.Steps, Step{
			Ref: ref, N: s.N, Text: b.itemText(ref, s.Text, s.Place), OffCamera: s.OffCamera,
			Ticked: b.doc.Ticks[ref], At: b.at(s.Place), Notes: b.notes(ref),
		})
	}
}

func (b *builder) needed() {
	tools := List{Title: "Tools", None: "No tool was heard."}
	for i, t := range b.rec.Tools {
		if b.removed(b.doc.Refs.Tools[i]) {
			continue
		}
		size := strings.Join(append(nonEmpty(t.Size), t.SizesAlt...), " or ")
		text := strings.Join(append(nonEmpty(orElse(t.Name, "a tool that was not named")), nonEmpty(size)...), ", ")
		remark := ""
		if t.Need != "required" {
			remark = t.Need
		}
		tools.Items = append(tools.Items, b.thing(b.doc.Refs.Tools[i], text, remark, t.Place))
	}
	parts := List{Title: "Parts", None: "No part was heard."}
	for i, p := range b.rec.Parts {
		if b.removed(b.doc.Refs.Parts[i]) {
			continue
		}
		text := strings.TrimSpace(p.Side + " " + orElse(p.Name, "a part that was not named"))
		if p.Count > 0 {
			text = fmt.Sprintf("%d × %s", p.Count, text)
		}
		fate := orElse(p.Disposition, "not said what becomes of it")
		if fate == "temporary" {
			fate = "temporary, to be replaced"
		}
		parts.Items = append(parts.Items, b.thing(b.doc.Refs.Parts[i], text, fate, p.Place))
	}
	used := List{Title: "Used up", None: "Nothing used up was heard."}
	for i, c := range b.rec.Consumables {
		if b.removed(b.doc.Refs.Consumables[i]) || workdoc.StandsIn(b.rec, c) {
			continue
		}
		on := ""
		if c.UsedOn != "" {
			on = "on " + c.UsedOn
		}
		used.Items = append(used.Items, b.thing(b.doc.Refs.Consumables[i], orElse(c.Name, "something that was not named"), on, c.Place))
	}
	sizes := List{Title: "Sizes heard", None: "No size was heard."}
	for _, s := range workdoc.SizeLines(b.rec, b.doc.Refs) {
		if b.removed(s.Ref) {
			continue
		}
		text := orElse(s.Of, "something not named") + ": " + strings.Join(s.Candidates, " or ")
		if s.Dimension != "unsaid" && s.Dimension != "" {
			text += ", " + s.Dimension
		}
		remark := ""
		if !s.Sure {
			remark = "not sure"
		}
		it := b.thing(s.Ref, text, remark, s.Place)
		it.Box = false
		sizes.Items = append(sizes.Items, it)
	}
	b.p.Needed = []List{tools, parts, used, sizes}
}

func nonEmpty(s string) []string {
	if s == "" {
		return nil
	}
	return []string{s}
}

func (b *builder) thing(ref, text, remark string, p extract.Place) Item {
	text, edited := b.own(ref, text)
	if edited {
		remark = "" // the person's line has it, as far as they kept it
	}
	return Item{Ref: ref, Text: text, Remark: remark, At: []Moment{b.at(p)}, Ticked: b.doc.Ticks[ref], Box: true}
}

func (b *builder) left() {
	for _, e := range b.rec.Ledger {
		last := e.Place
		last.At = e.LastAt
		if n := len(e.Events); n > 0 {
			last = e.Events[n-1].Place
		}
		l := Left{
			Name: orElse(workdoc.Called(e), "not named"), Where: joined(joined(e.Side, e.Place_), e.Position), State: workdoc.Left(e),
			Put: e.StoredAt, Washers: e.Washers, Position: e.Position, Fastener: e.Kind == "fastener", At: b.at(last),
		}
		if e.Count > 0 {
			l.Count = strconv.Itoa(e.Count)
		}
		l.More = b.quote(workdoc.More(e), &e.Place)
		b.p.Left = append(b.p.Left, l)
	}
}

func joined(a, c string) string {
	if a == "" || c == "" {
		return a + c
	}
	return a + ", " + c
}

func (b *builder) rest() {
	p := b.p
	for i, u := range b.rec.Usual {
		if u.Kind == "check" {
			ref := b.doc.Refs.Usual[i]
			from := "not heard; " + orElse(u.Source, "common practice, no source")
			if u.Why != "" {
				from += "; because of: " + u.Why
			}
			text, edited := b.own(ref, u.Text)
			if edited {
				from = ""
			}
			p.Usual = append(p.Usual, Item{Ref: ref, Text: text, Remark: from, Box: true, Ticked: b.doc.Ticks[ref]})
		}
	}
	for i, f := range b.rec.Facts {
		if b.removed(b.doc.Refs.Facts[i]) {
			continue
		}
		p.Worked = append(p.Worked, Item{Text: b.quote(f.Name+": "+f.Value, &f.Place),
			Remark: "computed from " + b.quote(orElse(f.From, "what was heard"), &f.Place) + " (" + orElse(f.Method, "method not given") + ")", At: []Moment{b.at(f.Place)}})
	}
	for _, c := range b.doc.Claims {
		text := c.Text
		if b.opt.SettledOnly {
			text = b.quote(text, nil)
		}
		p.Claims = append(p.Claims, Claim{Who: orElse(c.Who, "a reader who gave no name"), When: c.When, Status: orElse(c.Status, "open"), Text: rich(text)})
	}
	refs := make([]string, 0, len(b.doc.Notes))
	for ref := range b.doc.Notes {
		if !b.noted[ref] {
			refs = append(refs, ref)
		}
	}
	slices.Sort(refs)
	for _, ref := range refs {
		for _, n := range b.doc.Notes[ref] {
			p.Added = append(p.Added, b.quote(n, nil))
		}
	}
	for i, s := range b.rec.Source {
		p.Sources = append(p.Sources, Source{Name: s.Name, Length: render.Clock(s.Duration),
			About: fmt.Sprintf("%s, %s, sha256 %s", plural(s.Cues, "cue", "cues"), plural(s.Words, "word", "words"), s.SHA256)})
		if src := playable(b.job.VideoURL, i); src != "" {
			p.Players = append(p.Players, Player{Clip: i, Src: template.URL(src), Name: s.Name})
		}
	}
	for _, n := range b.rec.Notes {
		p.Notes = append(p.Notes, b.quote(n.Text, nil))
	}
}

// playable gives the address of a clip that a browser can play itself, or "".
func playable(address string, clip int) string {
	if strings.Contains(address, "{t}") || strings.Contains(address, "#") {
		return ""
	}
	bare, _, _ := strings.Cut(render.VideoLink(address, clip, 0), "#")
	path, _, _ := strings.Cut(strings.ToLower(bare), "?")
	for _, ext := range []string{".mp4", ".m4v", ".webm", ".ogv", ".mov"} {
		if strings.HasSuffix(path, ext) {
			return bare
		}
	}
	return ""
}
