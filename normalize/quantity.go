package normalize

import "math/big"

// Kind is the kind of a quantity.
type Kind string

// Kinds of quantity.
const (
	Torque      Kind = "torque"
	Length      Kind = "length"
	Size        Kind = "size"  // a tool's or a head's width, a key's size
	Drive       Kind = "drive" // square drive
	Thread      Kind = "thread"
	Driver      Kind = "driver" // hexalobular, cross-recess
	Angle       Kind = "angle"
	Pressure    Kind = "pressure"
	Volume      Kind = "volume"
	Mass        Kind = "mass"
	Temperature Kind = "temperature"
	Speed       Kind = "speed"
	Distance    Kind = "distance"
	Turn        Kind = "turn"
	Teeth       Kind = "tooth count"
	Chain       Kind = "chain"
	Duration    Kind = "duration"
)

// Quantity is one quantity found in words.
type Quantity struct {
	Start, End int // half-open byte range of the text it was said in
	Kind       Kind
	Low, High  *big.Rat // in Unit; equal where one value was said; nil where the kind has no number of its own; shared, not to be changed
	Unit       string   // "N.m", "lbf.ft", "mm", "in", "deg" …
	Canonical  string   // "45 lbf.ft", "30-35 N.m", "3/8 in", "M10x1.25", "T25"; alternatives as "12 mm | 13 mm"
	Hedged     bool
	Alt        bool     // Low and High are two candidates, not a range
	Assumed    bool     // the unit was not said in full ("pounds" for foot pounds)
	Length     *big.Rat // of a thread said with its length ("M8 by 30"), in mm for metric threads, else in inches; or nil
}

// Number is one number found in words, with no unit asked for.
type Number struct {
	Start, End int
	Low, High  *big.Rat // equal where one value was said; shared, not to be changed
	Hedged     bool
	Alt        bool // Low and High are two candidates ("a 12 or a 13"), not a range
}

// In gives the number as a quantity of a kind, in a unit that was not said with
// it: Assumed tells so. The kind and unit are the caller's to know.
func (n Number) In(kind Kind, unit string) Quantity {
	q := Quantity{Start: n.Start, End: n.End, Kind: kind, Low: n.Low, High: n.High, Unit: unit, Hedged: n.Hedged, Alt: n.Alt, Assumed: true}
	q.Canonical = canonical(q, num{})
	return q
}

// Finding is what a check says: plain, sourced, never "OK". What is one of
// "units-disagree", "no-such-size", "same-screw", "which-thread", "too-much",
// "too-little", "nothing-to-check", "material-changed", "cannot-be-set" and
// "does-not-fit". No finding is no approval.
type Finding struct {
	What   string
	Why    string // one plain sentence with the figures
	Source string
	Ask    string // what to ask, or ""
}
