package extract

import "strings"

// Record is what one job's talk says, the one source of every output. Its JSON
// form is `wrenchword.record/1`. Slices are never nil in a Record made by
// Extract, so they print as [].
type Record struct {
	Schema      string       `json:"schema"`
	Source      []Source     `json:"source"`
	Job         Job          `json:"job"`
	Tools       []Tool       `json:"tools"`
	Parts       []Part       `json:"parts"`
	Consumables []Consumable `json:"consumables"`
	Sizes       []Size       `json:"sizes"`
	Torques     []Torque     `json:"torques"`
	Ledger      []Entry      `json:"ledger"`
	Cautions    []Caution    `json:"cautions"`
	Steps       []Step       `json:"steps"`
	Open        []Open       `json:"open"`
	Doubts      []Doubt      `json:"doubts"`
	Facts       []Fact       `json:"facts"`
	Notes       []Note       `json:"notes"`
	Usual       []Usual      `json:"usual"`
}

// Schema names the record's form.
const Schema = "wrenchword.record/1"

// Place is where an item was heard. Every item of a record has one.
type Place struct {
	Clip    int     `json:"clip"`           // index into Record.Source
	At      float64 `json:"at"`             // seconds from the start of its clip
	AtExact bool    `json:"at_exact"`       // false where the time was worked out inside a longer cue
	CueAt   float64 `json:"cue_at"`         // where the cue it stands in begins
	Quote   string  `json:"quote"`          // a verbatim slice of the talk, at most 40 words
	Rule    string  `json:"rule,omitempty"` // which rule of the reading took it
}

// LinkAt is the second that a link goes to: the time itself where it is known,
// else the start of the cue, so that nothing is missed.
func (p Place) LinkAt() float64 {
	if p.AtExact {
		return p.At
	}
	return min(p.CueAt, p.At)
}

// by gives the place with the rule that took the item.
func (p Place) by(rule string) Place {
	p.Rule = rule
	return p
}

// Source is one clip of the job.
type Source struct {
	Name     string  `json:"name"`
	Format   string  `json:"format"`
	SHA256   string  `json:"sha256"`
	Duration float64 `json:"duration_s"`
	Cues     int     `json:"cues"`
	Words    int     `json:"words"`
}

// Job is what the person says of the job; nothing in it is guessed.
type Job struct {
	Title    string `json:"title"`
	Machine  string `json:"machine"`
	Year     string `json:"year"`
	Reading  string `json:"reading"` // odometer or hour meter, as given
	Date     string `json:"date"`
	VideoURL string `json:"video_url,omitempty"`
}

// Tool is one tool in one size. Need is "required", "optional" or "not-needed".
type Tool struct {
	Name     string   `json:"name"`
	Size     string   `json:"size"`
	SizesAlt []string `json:"sizes_alt"`
	Need     string   `json:"need"`
	Listed   bool     `json:"listed"` // named in a spoken tool list
	Used     bool     `json:"used"`   // heard in use
	Place
}

// Part is a part with its fate: "new", "reused", "kept", "temporary" or "discarded".
type Part struct {
	Name        string `json:"name"`
	Disposition string `json:"disposition"`
	Count       int    `json:"count"` // 0 where not said
	Side        string `json:"side"`
	Place
}

// Consumable is something used up: grease, oil, sealant, wire.
type Consumable struct {
	Name   string `json:"name"`
	UsedOn string `json:"used_on"`
	Place
}

// Size is a size said of a fastener or of what drives it. Dimension is
// "thread", "key", "across-flats", "driver", "drive", "length" or "unsaid".
type Size struct {
	Of         string   `json:"of"`
	Dimension  string   `json:"dimension"`
	Candidates []string `json:"candidates"`
	Sure       bool     `json:"sure"`
	Place
}

// Said is a value as it was heard, in the unit it was heard in. Unit is "N.m",
// "lbf.ft", "lbf.in", "ozf.in", "kgf.m", "kgf.cm", or "" where none was said.
type Said struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
	Unit string  `json:"unit"`
}

// SourceSaid is where the speaker said a value comes from. Scope is
// "this fastener", "general", "other machine" or "unsaid".
type SourceSaid struct {
	Who     string `json:"who"`
	Title   string `json:"title"`
	Edition string `json:"edition"`
	Scope   string `json:"scope"`
}

// Torque is one torque value heard. NM is a pair [low, high] in newton metres,
// or empty where only an angle was said or no unit could be told. Applied is
// "done", "intended" or "quoted".
type Torque struct {
	ID         string     `json:"id"`
	Fastener   string     `json:"fastener"`
	MaybeOf    string     `json:"maybe_of,omitempty"`         // another fastener that it may be for, where the talk names neither with it
	Unnamed    bool       `json:"fastener_unnamed,omitempty"` // the talk names no fastener with the value: it is that of the one spoken of
	LedgerID   string     `json:"ledger_id"`
	Said       Said       `json:"said"`
	NM         []float64  `json:"nm"`
	AngleDeg   *float64   `json:"angle_deg"`
	Applied    string     `json:"applied"`
	Hedged     bool       `json:"hedged"`
	UnitFrom   string     `json:"unit_from,omitempty"` // the value or words heard near it whose unit it is taken to have, where none was said with it
	UnitOr     string     `json:"unit_or,omitempty"`   // another unit that it may as well be in
	Stage      int        `json:"stage"`
	Order      string     `json:"order"`
	Condition  string     `json:"condition"`
	SourceSaid SourceSaid `json:"source_said"`
	Findings   []Finding  `json:"findings,omitempty"`
	Place
}

// Finding is what a check said of a value: never that it is right.
type Finding struct {
	What   string `json:"what"`   // a short code: "too-much", "no-such-size", "units-disagree", "nothing-to-check" …
	Why    string `json:"why"`    // one plain sentence, with the figures
	Source string `json:"source"` // the published source, or "common practice, no source"
	Ask    string `json:"ask"`    // what to ask the person, or ""
}

// Ledger states.
const (
	Loosened  = "loosened"
	Removed   = "removed"
	Refitted  = "refitted"
	HandTight = "hand-tight"
	Tightened = "tightened"
	Torqued   = "torqued"
	Discarded = "discarded"
)

// Entry is one thing loosened, taken off or fitted, and how it was left. Kind is
// "fastener" or "part"; Locker is "yes", "no" or "unsaid".
type Entry struct {
	ID          string  `json:"id"`
	Item        string  `json:"item"`
	Kind        string  `json:"kind"`
	Side        string  `json:"side"`
	Place_      string  `json:"place"`
	Count       int     `json:"count"` // 0 where not said
	Position    string  `json:"position"`
	Washers     string  `json:"washers"`
	Orientation string  `json:"orientation"`
	State       string  `json:"state"`
	ValueSaid   bool    `json:"value_said"`
	Locker      string  `json:"locker"`
	Lock        Lock    `json:"lock"`
	Reuse       string  `json:"reuse"`
	StoredAt    string  `json:"stored_at"`
	ReplacedBy  string  `json:"replaced_by"`
	WaitsOn     string  `json:"waits_on"`
	OffCamera   bool    `json:"off_camera"`
	Inferred    string  `json:"inferred,omitempty"`    // why the state is taken to be so, where it was not said in so many words
	NamedAfter  string  `json:"named_after,omitempty"` // the part it is named after, where the talk was only about that part
	Unnamed     bool    `json:"unnamed,omitempty"`     // Item is only the bare word for it: which one was not said
	Events      []Event `json:"events"`
	LastAt      float64 `json:"last_at"`
	Place
}

// Lock is what secures a fastener. State is "", "removed", "renewed" or "reused".
type Lock struct {
	Method string `json:"method"`
	State  string `json:"state"`
}

// Event is one thing that happened to an entry. Act is one of the workshop
// actions of the lexicon ("remove", "start by hand", "torque" …).
type Event struct {
	Act string `json:"act"`
	Place
}

// Caution is a warning that was spoken.
type Caution struct {
	Text string `json:"text"`
	Place
}

// Step is one instruction, in order.
type Step struct {
	N         int      `json:"n"`
	Text      string   `json:"text"`
	Phase     string   `json:"phase"` // "preparing", "taking apart", "fitting", "tightening", "checking"
	End       float64  `json:"end"`
	OffCamera bool     `json:"off_camera"`
	LedgerIDs []string `json:"ledger_ids"`
	Place
}

// Open question kinds, and the gates they stand before.
const (
	LookUp       = "look-up"
	Unfinished   = "unfinished"
	Unsure       = "unsure"
	Conflict     = "conflict"
	NotRefitted  = "not-refitted"
	NotTorqued   = "not-torqued"
	LockMissing  = "lock-missing"
	Suspect      = "suspect"
	ReplaceLater = "replace-later"
	Promise      = "promise"

	BeforeUse        = "use"
	BeforePublishing = "publishing"
	BeforeLater      = "later"
)

// Open is an open question or loose end.
type Open struct {
	ID       string    `json:"id"`
	Kind     string    `json:"kind"`
	Before   string    `json:"before"`
	Due      string    `json:"due"`
	About    string    `json:"about"`
	Question string    `json:"question"`
	LedgerID string    `json:"ledger_id"`
	AlsoAt   []float64 `json:"also_at"`
	Findings []Finding `json:"findings,omitempty"`
	Place
	shown  *shownAs
	listed bool   // no more than named in a list of what is left
	byTwo  bool   // a conflict of two who give different figures
	figure string // of two values that disagree and are not asked after otherwise, the second as it was heard
}

// Tells tells whether the question holds the words it was raised in.
func (o Open) Tells() bool { return strings.Contains(o.Question, o.Quote) }

// Doubt is a sentence that may leave something open, where no question asks after it: its quote
// is all that is known of it.
type Doubt struct{ Place }

// Fact is computed from what was heard, never heard itself.
type Fact struct {
	Name   string `json:"name"`
	Value  string `json:"value"`
	From   string `json:"from"`
	Method string `json:"method"`
	Place
}

// Note is a remark of the reading on itself: a tool used and not listed, a
// stretch recorded twice. It has no place of its own where it speaks of the whole.
type Note struct {
	Kind string `json:"kind"`
	Text string `json:"text"`
}

// Usual is a usual check after such work, or a usual caution, that was not heard.
type Usual struct {
	Kind   string `json:"kind"`   // "check" or "caution"
	Signal string `json:"signal"` // cautions: "DANGER", "WARNING", "CAUTION", "NOTICE" as ANSI Z535.6 defines them
	Text   string `json:"text"`
	Why    string `json:"why"`    // what in the talk called for it
	Source string `json:"source"` // or "common practice, no source"
}

// Each calls f with every item of the record that has a place: its field, its
// name ("" where it has none) and the place. Events of the ledger come with the
// field "ledger event".
func (r *Record) Each(f func(field, name string, p Place)) {
	for _, x := range r.Tools {
		f("tools", x.Name, x.Place)
	}
	for _, x := range r.Parts {
		f("parts", x.Name, x.Place)
	}
	for _, x := range r.Consumables {
		f("consumables", x.Name, x.Place)
	}
	for _, x := range r.Sizes {
		f("sizes", x.Of, x.Place)
	}
	for _, x := range r.Torques {
		f("torques", x.Fastener, x.Place)
	}
	for _, x := range r.Ledger {
		f("ledger", x.Item, x.Place)
		for _, e := range x.Events {
			f("ledger event", "", e.Place)
		}
	}
	for _, x := range r.Cautions {
		f("cautions", "", x.Place)
	}
	for _, x := range r.Steps {
		f("steps", "", x.Place)
	}
	for _, x := range r.Open {
		f("open", x.About, x.Place)
	}
	for _, x := range r.Doubts {
		f("doubts", "", x.Place)
	}
	for _, x := range r.Facts {
		f("facts", "", x.Place)
	}
}
