package render

import (
	"math/big"
	"strconv"
	"strings"

	"wrenchword/extract"
	"wrenchword/normalize"
	"wrenchword/render/workdoc"
)

// unconfirmed stands wherever a value does that nobody has confirmed.
const unconfirmed = "heard, not confirmed"

func (d *drawer) round() {
	d.heading(2, "Tightening round")
	rows := workdoc.Round(d.rec, d.refs)
	if len(rows) == 0 {
		d.none("round", "No fastener and no tightening value was heard.")
		return
	}
	d.line("Every value here is only **" + unconfirmed + "** until you write the confirmed value with its unit *and* its source " +
		"(who or what, title, edition, page, which machine). Tick the last column when it is tightened. " +
		"Where no value is published, say how it was tightened and sign it: `no value published, by feel, signed: …`.")
	d.gap()
	d.line("| Fastener | Count | Place | As heard | At | N·m | lbf·ft | Check | Confirmed | Source | Tightened |")
	d.line("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |")
	for _, r := range rows {
		heard, times, check := []string{join("no value heard", "; left: ", escapeMarkdown(r.Left()))}, []string{d.at(r.Heard())}, "no value to check"
		var nm, lbfft []string
		if len(r.Torques) > 0 {
			heard, times = nil, nil
			var found []extract.Finding
			for _, t := range r.Torques {
				heard = append(heard, escapeMarkdown(SaidTorque(t)))
				times = append(times, d.at(t.Place))
				n, l := inUnits(t)
				nm, lbfft = addNew(nm, n), addNew(lbfft, l)
				found = append(found, t.Findings...)
			}
			check = unconfirmed + "; " + named(findings(found), "nothing to check it against")
		}
		d.line("| %s <!-- @%s --> | %s | %s | %s | %s | %s | %s | %s |  |  | [ ] |",
			named(r.Name, "not named"), r.Ref, count(r.Count, ""), escapeMarkdown(r.Place),
			strings.Join(heard, "; "), strings.Join(times, "; "), strings.Join(nm, "; "), strings.Join(lbfft, "; "), check)
	}
	first := true
	for i, t := range d.rec.Torques {
		if t.Quote == "" {
			continue
		}
		if first {
			d.gap()
			d.line("Word for word:")
			d.gap()
			first = false
		}
		d.item("words-"+d.refs.Torques[i], "- %s, %s: %s", named(t.Fastener, "not named"), d.at(t.Place), quoted(t.Quote))
	}
}

// addNew adds s unless it is empty or there already, computed or not.
func addNew(list []string, s string) []string {
	for i, x := range list {
		if strings.TrimSuffix(x, ", computed") == strings.TrimSuffix(s, ", computed") {
			if len(s) < len(x) {
				list[i] = s // the heard one stands for both
			}
			return list
		}
	}
	if s == "" {
		return list
	}
	return append(list, s)
}

var unitSigns = strings.NewReplacer(".", "·")

// SaidTorque writes a torque as it was said, with the doubts that were heard.
func SaidTorque(t *extract.Torque) string {
	var out []string
	if t.Said.Low != 0 || t.Said.High != 0 {
		s := figure(t.Said.Low)
		if t.Said.High != t.Said.Low && t.Said.High != 0 {
			s += " to " + figure(t.Said.High)
		}
		if t.Said.Unit == "" {
			s += ", unit not said"
		} else {
			s += " " + unitSigns.Replace(t.Said.Unit)
		}
		out = append(out, s)
	}
	if t.AngleDeg != nil {
		out = append(out, "turn by "+figure(*t.AngleDeg)+"°")
	}
	s := strings.Join(out, ", then ")
	if t.UnitFrom != "" {
		s += ", unit not said with it: taken from " + t.UnitFrom
		if t.UnitOr != "" {
			s += ", but it may be " + unitSigns.Replace(t.UnitOr)
		}
	}
	if t.Unnamed {
		s += ", no fastener named with it"
	}
	if t.MaybeOf != "" {
		s += ", or for the " + t.MaybeOf + ": the talk names neither with it"
	}
	if t.Hedged {
		s += ", not sure"
	}
	if t.Stage > 1 {
		s += ", stage " + strconv.Itoa(t.Stage)
	}
	for _, more := range []string{t.Order, t.Condition} {
		if more != "" {
			s += ", " + more
		}
	}
	from := join(t.SourceSaid.Who, ", ", t.SourceSaid.Title)
	switch {
	case t.Applied == "intended":
		s += ", still to be done when it was said"
	case t.Applied == "quoted" && from == "" && t.Condition != extract.NotToSet:
		s += ", somebody else's or a document's figure"
	}
	switch t.SourceSaid.Scope {
	case "general":
		s += ", general for the size"
	case "other machine":
		s += ", for another machine"
	}
	if from != "" {
		s += ", the figure of the " + join(from, ", ", t.SourceSaid.Edition) + " as quoted"
	}
	return s
}

func figure(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }

// inUnits gives a torque in N·m and in lbf·ft, each marked as computed where it
// was not said in that unit. Both are empty where the unit is not known.
func inUnits(t *extract.Torque) (nm, lbfft string) {
	lo, ok := new(big.Rat).SetString(figure(t.Said.Low))
	hi, ok2 := new(big.Rat).SetString(figure(t.Said.High))
	if !ok || !ok2 || t.Said.Unit == "" || lo.Sign() <= 0 {
		return "", ""
	}
	if hi.Sign() <= 0 {
		hi = lo
	}
	in := func(unit string) string {
		s := strings.TrimSuffix(normalize.RoundedRange(lo, hi, t.Said.Unit, unit), " "+unit)
		s = strings.Replace(s, "-", " to ", 1)
		if s != "" && unit != t.Said.Unit {
			s += ", computed"
		}
		return s
	}
	return in("N.m"), in("lbf.ft")
}
