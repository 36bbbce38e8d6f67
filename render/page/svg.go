package page

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"wrenchword/extract"
	"wrenchword/normalize"
	"wrenchword/render"
	"wrenchword/render/workdoc"
)

// Bar sets the values of a row beside what a thread named for it takes.
type Bar struct {
	Alt, Basis  string
	Low, Wide   float64 // where the thread's span begins and how wide it is, of BarWidth
	Marks       []BarMark
	Least, Most string
}

// BarMark is one value on a bar.
type BarMark struct {
	X    float64
	Text string
}

// BarWidth is a bar's width in its own units.
const BarWidth = 320.0

func (b *builder) bar(r workdoc.RoundRow, row Row) *Bar {
	var values []float64
	add := func(v *Value) {
		if v != nil && v.NM != "" {
			for part := range strings.SplitSeq(v.NM, " to ") {
				if f, err := strconv.ParseFloat(part, 64); err == nil {
					values = append(values, f)
				}
			}
		}
	}
	add(row.Confirmed)
	for i := range row.Heard {
		add(&row.Heard[i])
	}
	if len(values) == 0 {
		return nil
	}
	lim, ok := b.takes(r)
	if !ok || lim.Most <= 0 {
		return nil
	}
	scale := BarWidth / (1.15 * max(lim.Most, slices.Max(values)))
	bar := &Bar{
		Low: lim.Least * scale, Wide: (lim.Most - lim.Least) * scale,
		Least: short(lim.Least), Most: short(lim.Most), Basis: lim.Basis + ". " + lim.Source,
	}
	slices.Sort(values)
	for _, v := range slices.Compact(values) {
		bar.Marks = append(bar.Marks, BarMark{v * scale, short(v)})
	}
	var names []string
	for _, m := range bar.Marks {
		names = append(names, m.Text)
	}
	bar.Alt = fmt.Sprintf("Value %s N·m on a scale where a thread %s of class %s takes up to %s N·m at its proof load.",
		strings.Join(names, " and "), lim.Thread, lim.Class, bar.Most)
	return bar
}

// takes finds a thread that the talk names for the row's fastener.
func (b *builder) takes(r workdoc.RoundRow) (normalize.Limit, bool) {
	if r.Name == "" {
		return normalize.Limit{}, false
	}
	condition := ""
	for _, t := range r.Torques {
		condition = t.Condition
	}
	for _, s := range b.rec.Sizes {
		if s.Dimension == "thread" && s.Of == r.Name && len(s.Candidates) == 1 {
			return normalize.ThreadTakes(normalize.TorqueContext{Thread: s.Candidates[0], Condition: condition})
		}
	}
	return normalize.Limit{}, false
}

func short(f float64) string { return strconv.FormatFloat(f, 'g', 3, 64) }

// Band is the course of one clip, drawn downwards.
type Band struct {
	Name, Alt string
	Height    float64
	Stretches []Stretch
	Minutes   []BandMark
	Marks     []BandMark
}

// Stretch is one stretch of the work.
type Stretch struct {
	Y, H  float64
	Class string
	Title string
}

// BandMark is a mark at its minute, with its label where there is room for it.
type BandMark struct {
	Y, LabelY  float64
	Text, Kind string // "value" or "open"
}

const (
	bandLine  = 17.0 // room for one label
	bandLeast = 240.0
	bandMost  = 1400.0
)

var phaseClass = map[string]string{
	"preparing": "talk", "taking apart": "apart", "fitting": "fit", "tightening": "tight", "checking": "check",
}

func (b *builder) band() {
	for clip, src := range b.rec.Source {
		length := src.Duration
		for _, s := range b.rec.Steps {
			if s.Clip == clip {
				length = max(length, s.At, s.End)
			}
		}
		if length <= 0 || math.IsInf(length, 0) || math.IsNaN(length) {
			continue
		}
		var marks []BandMark
		for i := range b.rec.Torques {
			t := &b.rec.Torques[i]
			if t.Clip != clip {
				continue
			}
			words := "value left out"
			if !b.opt.SettledOnly {
				words = orElse(heard(t).NM, "?") + " N·m"
				if heard(t).NM == "" {
					words = "value"
				}
				words += " heard"
			}
			marks = append(marks, BandMark{Y: t.At, Kind: "value", Text: render.Clock(t.At) + " " + clipped(orElse(t.Fastener, "not named"), 24) + ": " + words})
		}
		for i, o := range b.rec.Open {
			if _, still := b.why[b.doc.Refs.Open[i]]; o.Clip == clip && still {
				marks = append(marks, BandMark{Y: o.At, Kind: "open", Text: render.Clock(o.At) + " open: " + clipped(orElse(o.About, o.Kind), 30)})
			}
		}
		slices.SortStableFunc(marks, func(x, y BandMark) int {
			switch {
			case x.Y < y.Y:
				return -1
			case x.Y > y.Y:
				return 1
			}
			return 0
		})
		h := min(bandMost, max(bandLeast, length/60*14, float64(len(marks)+1)*bandLine))
		h = max(h, float64(len(marks)+1)*bandLine)
		scale := (h - 10) / length
		band := Band{Name: src.Name, Height: h + bandLine}
		labelAt := -bandLine
		for _, m := range marks {
			m.Y = 5 + min(max(0, m.Y), length)*scale
			m.LabelY = max(m.Y, labelAt+bandLine)
			labelAt = m.LabelY
			band.Marks = append(band.Marks, m)
		}
		// Labels pushed past the end are moved up again, from the last one.
		floor := h
		for i := len(band.Marks) - 1; i >= 0 && band.Marks[i].LabelY > floor; i-- {
			band.Marks[i].LabelY = floor
			floor -= bandLine
		}
		var steps []extract.Step
		for _, s := range b.rec.Steps {
			if s.Clip == clip {
				steps = append(steps, s)
			}
		}
		for i, s := range steps {
			end := max(s.End, s.At+5)
			if i+1 < len(steps) && steps[i+1].At-end < 30 {
				end = max(s.At, steps[i+1].At)
			}
			end = min(end, length)
			y, hh := 5+max(0, s.At)*scale, (end-s.At)*scale
			if hh <= 0 {
				continue
			}
			class := orElse(phaseClass[s.Phase], "talk")
			if n := len(band.Stretches); n > 0 && band.Stretches[n-1].Class == class && y-(band.Stretches[n-1].Y+band.Stretches[n-1].H) < 1 {
				band.Stretches[n-1].H = y + hh - band.Stretches[n-1].Y
				continue
			}
			band.Stretches = append(band.Stretches, Stretch{y, hh, class, orElse(s.Phase, "work")})
		}
		every := 1.0
		for _, e := range []float64{1, 2, 5, 10, 20, 60} {
			if every = e; e*60*scale >= 34 {
				break
			}
		}
		for m := 0.0; m*60 <= length; m += every {
			band.Minutes = append(band.Minutes, BandMark{Y: 5 + m*60*scale, Text: render.Clock(m * 60)})
			if len(band.Minutes) > 400 {
				break
			}
		}
		opens := 0
		for _, m := range marks {
			if m.Kind == "open" {
				opens++
			}
		}
		band.Alt = fmt.Sprintf("Course of %s, %s long: %s, %s, %s.", src.Name, render.Clock(length),
			plural(len(band.Stretches), "stretch of work", "stretches of work"),
			plural(len(marks)-opens, "value heard", "values heard"), plural(opens, "open end", "open ends"))
		b.p.Band = append(b.p.Band, band)
	}
}

func clipped(s string, n int) string {
	r := []rune(s)
	if len(r) <= n {
		return s
	}
	return string(r[:n-1]) + "…"
}
