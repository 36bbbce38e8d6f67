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
	rows := workdoc.Round(d.rec)
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
		heard, nm, lbfft, check := "no value heard", "", "", "no value to check"
		place := extract.Place{}
		if r.Entry != nil {
			place = r.Entry.Place
		}
		if t := r.Torque; t != nil {
			place = t.Place
			heard = escapeMarkdown(SaidTorque(t))
			nm, lbfft = inUnits(t)
			check = unconfirmed + "; "
			if len(t.Findings) > 0 {
				check += findings(t.Findings)
			} else {
				check += "nothing to check it against"
			}
		}
		d.line("| %s <!-- @%s --> | %s | %s | %s | %s | %s | %s | %s |  |  | [ ] |",
			named(r.Name, "not named"), r.Ref, count(r.Count, ""), escapeMarkdown(r.Place),
			heard, d.at(place), nm, lbfft, check)
	}
	first := true
	for _, r := range rows {
		if r.Torque == nil || r.Torque.Quote == "" {
			continue
		}
		if first {
			d.gap()
			d.line("Word for word:")
			d.gap()
			first = false
		}
		d.item("words-"+r.Ref, "- %s, %s: %s", named(r.Name, "not named"), d.at(r.Torque.Place), quoted(r.Torque.Quote))
	}
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
		s += ", unit taken from “" + t.UnitFrom + "”"
	}
	if t.Hedged {
		s += ", not sure"
	}
	if t.Stage > 0 {
		s += ", stage " + strconv.Itoa(t.Stage)
	}
	for _, more := range []string{t.Order, t.Condition} {
		if more != "" {
			s += ", " + more
		}
	}
	switch t.Applied {
	case "intended":
		s += ", still to be done when it was said"
	case "quoted":
		s += ", somebody else's or a document's figure"
	}
	switch t.SourceSaid.Scope {
	case "general":
		s += ", general for the size"
	case "other machine":
		s += ", for another machine"
	}
	if from := join(t.SourceSaid.Who, ", ", t.SourceSaid.Title); from != "" {
		s += ", said to be from " + join(from, ", ", t.SourceSaid.Edition)
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
