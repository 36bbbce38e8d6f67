package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"wrenchword/normalize"
	"wrenchword/normalize/reckon"
)

func newReckonCmd() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "reckon",
		Short: "Do a workshop sum: wrench, preload, gearing, chain",
		Long: `reckon does one of the workshop's sums and prints its formula, its inputs with
units, the result and the source. A computed value is no specification; the
maker's manual stands above it. Values carry their unit: "45 N.m", "300 mm",
"3/8 in"; the decimal mark is a point.`,
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return fmt.Errorf("%w: name the sum: reckon wrench, preload, gearing or chain", normalize.ErrBadInput)
		},
	}
	cmd.PersistentFlags().String("format", "text", "text or json")
	cmd.AddCommand(newReckonWrenchCmd(), newReckonPreloadCmd(), newReckonGearingCmd(), newReckonChainCmd())
	return cmd
}

// printSum writes a result the way --format asks for.
func printSum(cmd *cobra.Command, r reckon.Result, findings ...normalize.Finding) error {
	format, err := cmd.Flags().GetString("format")
	if err != nil {
		return err
	}
	for _, f := range findings {
		r.Notes = append(r.Notes, f.Why+".")
	}
	switch format {
	case "json":
		enc := json.NewEncoder(cmd.OutOrStdout())
		enc.SetEscapeHTML(false)
		enc.SetIndent("", "  ")
		if r.Notes == nil {
			r.Notes = []string{}
		}
		return enc.Encode(struct {
			reckon.Result
			Caution string `json:"caution"`
		}{r, reckon.Caution})
	case "text":
		return printSumText(cmd.OutOrStdout(), r)
	}
	return fmt.Errorf("%w: --format is text or json, not %q", normalize.ErrBadInput, format)
}

func printSumText(out io.Writer, r reckon.Result) error {
	w := tabwriter.NewWriter(out, 0, 8, 2, ' ', 0)
	fmt.Fprintf(w, "%s\n", r.Sum)
	fmt.Fprintf(w, "formula\t%s\n", r.Formula)
	for _, f := range r.Inputs {
		fmt.Fprintf(w, "given\t%s\t%s\n", f.Name, figure(f, 6))
	}
	for _, f := range r.Results {
		fmt.Fprintf(w, "result\t%s\t%s\n", f.Name, figure(f, 4))
	}
	for _, n := range r.Notes {
		fmt.Fprintf(w, "note\t%s\n", n)
	}
	fmt.Fprintf(w, "source\t%s\n", r.Source)
	fmt.Fprintf(w, "caution\t%s\n", reckon.Caution)
	return w.Flush()
}

// figure prints a value with so many significant figures, whole from a thousand on.
func figure(f reckon.Figure, digits int) string {
	s := strconv.FormatFloat(f.Value, 'g', digits, 64)
	if f.Value >= 1000 || f.Value <= -1000 || strings.Contains(s, "e") {
		v, err := strconv.ParseFloat(s, 64)
		if err == nil {
			s = strconv.FormatFloat(v, 'f', -1, 64)
		}
	}
	return strings.TrimSpace(s + " " + f.Unit)
}

// typed collects the first fault of several typed values.
type typed struct{ err error }

func (t *typed) fail(flag string, err error) {
	if t.err == nil && err != nil {
		t.err = fmt.Errorf("--%s: %w", flag, err)
	}
}

// value reads a flag's value and converts it; "" gives 0.
func (t *typed) value(flag, s string, kind normalize.Kind, unit string) float64 {
	if s == "" {
		return 0
	}
	v, u, err := normalize.ParseValue(s, kind)
	if err != nil {
		t.fail(flag, err)
		return 0
	}
	c, ok := normalize.Convert(v, u, unit)
	if !ok {
		t.fail(flag, fmt.Errorf("%w: %s is no unit of %s", normalize.ErrBadInput, u, kind))
		return 0
	}
	f, _ := c.Float64()
	return f
}

// valueOrZero is value where nothing left ("0 mm") is an answer too.
func (t *typed) valueOrZero(flag, s string, kind normalize.Kind, unit string) float64 {
	if num, _, _ := strings.Cut(strings.TrimSpace(s), " "); num == "0" {
		return 0
	}
	return t.value(flag, s, kind, unit)
}

// same reads a flag's value and its unit as typed.
func (t *typed) same(flag, s string, kind normalize.Kind) (float64, string) {
	v, u, err := normalize.ParseValue(s, kind)
	if err != nil {
		t.fail(flag, err)
		return 0, ""
	}
	f, _ := v.Float64()
	return f, u
}

// plain reads a number without a unit; "" gives def.
func (t *typed) plain(flag, s string, def float64) float64 {
	if s == "" {
		return def
	}
	v, err := normalize.ParsePlain(s)
	if err != nil {
		t.fail(flag, err)
		return def
	}
	f, _ := v.Float64()
	return f
}

// count reads a whole number; "" gives 0.
func (t *typed) count(flag, s string) int {
	if s == "" {
		return 0
	}
	n, err := normalize.ParseCount(s, 100_000)
	t.fail(flag, err)
	return n
}

// angle reads degrees with or without their unit; zero is allowed.
func (t *typed) angle(flag, s string) float64 {
	s = strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(strings.TrimSpace(s), "deg"), "°"))
	if f, err := strconv.ParseFloat(s, 64); err == nil && f == 0 {
		return 0
	}
	return t.plain(flag, s, 0)
}

func (t *typed) need(cmd *cobra.Command, flags ...string) {
	for _, f := range flags {
		if fl := cmd.Flags().Lookup(f); fl == nil || fl.Value.String() == "" {
			t.fail(f, fmt.Errorf("%w: it is needed", normalize.ErrBadInput))
		}
	}
}

func newReckonWrenchCmd() *cobra.Command {
	var torque, arm, adapter, angle, prevailing string
	cmd := &cobra.Command{
		Use:     "wrench",
		Short:   "What to set a torque wrench to with an adapter on it",
		Example: "  wrenchword reckon wrench --torque \"40 lbf.ft\" --arm \"12 in\" --adapter \"4 in\" --angle 0",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			var t typed
			t.need(cmd, "torque")
			if t.err != nil {
				return t.err
			}
			v, unit := t.same("torque", torque, normalize.Torque)
			if prevailing != "" {
				p := t.value("prevailing", prevailing, normalize.Torque, unit)
				if t.err != nil {
					return t.err
				}
				r, err := reckon.Prevailing(v, p, unit)
				if err != nil {
					return err
				}
				if arm == "" && adapter == "" {
					return printSum(cmd, r)
				}
				v = r.Get("wrench")
			}
			t.need(cmd, "arm", "adapter")
			if t.err != nil {
				return t.err
			}
			a, lengthUnit := t.same("arm", arm, normalize.Length)
			d := t.value("adapter", adapter, normalize.Length, lengthUnit)
			deg := t.angle("angle", angle)
			if t.err != nil {
				return t.err
			}
			r, err := reckon.Wrench(v, unit, a, d, lengthUnit, deg)
			if err != nil {
				return err
			}
			return printSum(cmd, r)
		},
	}
	f := cmd.Flags()
	f.StringVar(&torque, "torque", "", "torque wanted at the fastener, with its unit")
	f.StringVar(&arm, "arm", "", "middle of the grip to the square, with its unit")
	f.StringVar(&adapter, "adapter", "", "square to the fastener, with its unit")
	f.StringVar(&angle, "angle", "0", "0 straight out, 90 across, 180 back toward the hand")
	f.StringVar(&prevailing, "prevailing", "", "running torque of a locknut, to be added")
	return cmd
}

func newReckonPreloadCmd() *cobra.Command {
	var torque, preload, thread, class, condition, k string
	cmd := &cobra.Command{
		Use:     "preload",
		Short:   "Preload from torque, or torque from preload, and the share of proof load",
		Example: "  wrenchword reckon preload --thread M8 --class 8.8 --torque \"25 N.m\" --condition dry",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			var t typed
			t.need(cmd, "thread")
			if (torque == "") == (preload == "") {
				t.fail("torque", fmt.Errorf("%w: give either --torque or --preload", normalize.ErrBadInput))
			}
			if t.err != nil {
				return t.err
			}
			ts := normalize.Threads(thread)
			if len(ts) == 0 {
				return fmt.Errorf("--thread: %w: %q is no thread that is known; write it as in M8, M10x1.25 or 1/4-20", normalize.ErrBadInput, thread)
			}
			if len(ts) > 1 {
				return fmt.Errorf("--thread: %w: %q can be %s or %s; say which", normalize.ErrBadInput, thread, ts[0].Name, ts[1].Name)
			}
			s := reckon.Screw{Name: ts[0].Name, Diameter: ts[0].Major, Area: ts[0].Area, Class: class}
			if class != "" {
				mpa, what, source, ok := normalize.ProofStress(class, s.Diameter)
				if !ok {
					return fmt.Errorf("--class: %w: %q has no published strength at this size; write it as in 8.8, \"grade 5\" or A2-70", normalize.ErrBadInput, class)
				}
				s.ProofMPa, s.SourceRef = mpa, source+" ("+what+"); "+ts[0].Source
			}
			low, high, from := normalize.Friction(condition, ts[0])
			if k != "" {
				low = t.plain("k", k, 0)
				high, from = low, "K as given"
			}
			if t.err == nil && (low < 0.03 || high > 1) {
				t.fail("k", fmt.Errorf("%w: K goes from 0.03 to 1, usually 0.1 to 0.3", normalize.ErrBadInput))
			}
			var r reckon.Result
			var err error
			if torque != "" {
				nm := t.value("torque", torque, normalize.Torque, "N.m")
				if t.err != nil {
					return t.err
				}
				r, err = reckon.Preload(nm, s, low, high)
			} else {
				kn := t.force("preload", preload)
				if t.err != nil {
					return t.err
				}
				r, err = reckon.Torque(kn, s, low, high)
			}
			if err != nil {
				return err
			}
			r.Source += "; K: " + from
			return printSum(cmd, r)
		},
	}
	f := cmd.Flags()
	f.StringVar(&torque, "torque", "", "torque, with its unit")
	f.StringVar(&preload, "preload", "", "preload, in kN, N or lbf")
	f.StringVar(&thread, "thread", "", "thread: M8, M10x1.25, 1/4-20")
	f.StringVar(&class, "class", "", "property class: 8.8, \"grade 5\", A2-70")
	f.StringVar(&condition, "condition", "", "dry, oiled, zinc, anti-seize, \"mu 0.14\"")
	f.StringVar(&k, "k", "", "nut factor K, instead of the condition")
	return cmd
}

// force reads a force and gives kN. NIST SP 811: 1 lbf = 4.4482216152605 N.
func (t *typed) force(flag, s string) float64 {
	for _, u := range []struct {
		name string
		kn   float64
	}{{"kN", 1}, {"lbf", 4.4482216152605e-3}, {"N", 1e-3}} {
		if num, ok := strings.CutSuffix(strings.TrimSpace(s), u.name); ok {
			return t.plain(flag, strings.TrimSpace(num), 0) * u.kn
		}
	}
	t.fail(flag, fmt.Errorf("%w: %q has no unit of force; write it as in \"15 kN\"", normalize.ErrBadInput, s))
	return 0
}

func newReckonGearingCmd() *cobra.Command {
	var driving, driven, newDriving, newDriven, speed string
	cmd := &cobra.Command{
		Use:     "gearing",
		Short:   "Ratio of a tooth pair, and what another pair does to ratio and road speed",
		Example: "  wrenchword reckon gearing --driving 15 --driven 45 --new-driving 14 --speed \"100 km/h\"",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			var t typed
			t.need(cmd, "driving", "driven")
			a, b := t.count("driving", driving), t.count("driven", driven)
			na, nb := t.count("new-driving", newDriving), t.count("new-driven", newDriven)
			if t.err != nil {
				return t.err
			}
			if na == 0 && nb == 0 {
				if speed != "" {
					return fmt.Errorf("--speed: %w: it needs --new-driving or --new-driven", normalize.ErrBadInput)
				}
				r, err := reckon.Gearing(a, b)
				if err != nil {
					return err
				}
				return printSum(cmd, r)
			}
			if na == 0 {
				na = a
			}
			if nb == 0 {
				nb = b
			}
			v, unit := 0.0, ""
			if speed != "" {
				v, unit = t.same("speed", speed, normalize.Speed)
			}
			if t.err != nil {
				return t.err
			}
			r, err := reckon.GearingChange(a, b, na, nb, v, unit)
			if err != nil {
				return err
			}
			return printSum(cmd, r)
		},
	}
	f := cmd.Flags()
	f.StringVar(&driving, "driving", "", "teeth of the driving sprocket")
	f.StringVar(&driven, "driven", "", "teeth of the driven sprocket")
	f.StringVar(&newDriving, "new-driving", "", "its teeth afterwards")
	f.StringVar(&newDriven, "new-driven", "", "its teeth afterwards")
	f.StringVar(&speed, "speed", "", "a road speed to compare, with its unit")
	return cmd
}

// chainFlags are the inputs of the chain sums.
type chainFlags struct {
	chain, pitch, driving, driven, newDriving, newDriven, links, centre string
	slotBack, slotForward, throw, throwAngle                            string
	measured, pitches, pins, limit                                      string
	sprocket                                                            string
	slack, slackLow, slackHigh, how                                     string
}

func newReckonChainCmd() *cobra.Command {
	var c chainFlags
	cmd := &cobra.Command{
		Use:   "chain",
		Short: "Chain length, axle position, fit, wear and slack",
		Long: `chain does the sum that its flags ask for:

  --driving --driven --centre        links for a centre distance, rounded up to even
  --driving --driven --links         centre distance of a chain
    … --new-driving and/or --new-driven   how far the axle moves, and with
      --slot-back --slot-forward (a straight slot) or --throw --throw-angle (an
      eccentric) what is left of the adjustment
  --measured with --pitches or --pins     elongation, with --limit against its limit
  --sprocket SIZE                    whether the chain size fits the sprockets' size
  --slack --how TEXT                 slack, with the condition it was measured in`,
		Example: "  wrenchword reckon chain --chain 520 --driving 15 --driven 45 --centre \"600 mm\"\n  wrenchword reckon chain --chain 520 --measured \"257 mm\" --pitches 16 --limit 1",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			r, findings, err := c.sum(cmd)
			if err != nil {
				return err
			}
			return printSum(cmd, r, findings...)
		},
	}
	f := cmd.Flags()
	f.StringVar(&c.chain, "chain", "", "chain size: 520, 428, 50, 08B-1")
	f.StringVar(&c.pitch, "pitch", "", "pitch with its unit, instead of --chain")
	f.StringVar(&c.driving, "driving", "", "teeth of the driving sprocket")
	f.StringVar(&c.driven, "driven", "", "teeth of the driven sprocket")
	f.StringVar(&c.newDriving, "new-driving", "", "its teeth afterwards")
	f.StringVar(&c.newDriven, "new-driven", "", "its teeth afterwards")
	f.StringVar(&c.links, "links", "", "links of the chain, the joining link counted")
	f.StringVar(&c.centre, "centre", "", "centre distance with its unit")
	f.StringVar(&c.slotBack, "slot-back", "", "way left in the slot toward the back, with its unit")
	f.StringVar(&c.slotForward, "slot-forward", "", "way left toward the front, with its unit")
	f.StringVar(&c.throw, "throw", "", "eccentric adjuster: its centre to the axle, with its unit")
	f.StringVar(&c.throwAngle, "throw-angle", "0", "eccentric: where it stands, 0 with the axle furthest back")
	f.StringVar(&c.measured, "measured", "", "length measured under tension, with its unit")
	f.StringVar(&c.pitches, "pitches", "", "pitches measured over")
	f.StringVar(&c.pins, "pins", "", "pins measured over, both end pins counted (n pins span n-1 pitches)")
	f.StringVar(&c.limit, "limit", "", "wear limit in percent, from the maker of the chain")
	f.StringVar(&c.sprocket, "sprocket", "", "size that the sprockets are for")
	f.StringVar(&c.slack, "slack", "", "slack measured, with its unit")
	f.StringVar(&c.slackLow, "slack-low", "", "least slack by the handbook")
	f.StringVar(&c.slackHigh, "slack-high", "", "most slack by the handbook")
	f.StringVar(&c.how, "how", "", "how the slack was measured: stand, load, place")
	return cmd
}

// sum does the one sum that the flags ask for.
func (c chainFlags) sum(cmd *cobra.Command) (reckon.Result, []normalize.Finding, error) {
	var t typed
	none := reckon.Result{}
	if c.slack != "" {
		s := t.value("slack", c.slack, normalize.Length, "mm")
		lo, hi := t.value("slack-low", c.slackLow, normalize.Length, "mm"), t.value("slack-high", c.slackHigh, normalize.Length, "mm")
		if t.err != nil {
			return none, nil, t.err
		}
		r, err := reckon.Slack(s, lo, hi, c.how)
		return r, nil, err
	}
	pitch := 0.0
	var source string
	if c.chain != "" {
		d, ok := normalize.FindChain(c.chain)
		if !ok {
			return none, nil, fmt.Errorf("--chain: %w: %q is in no chain table; give --pitch instead", normalize.ErrBadInput, c.chain)
		}
		pitch, source = d.Pitch, d.Source
		if c.sprocket != "" {
			e, ok := normalize.FindChain(c.sprocket)
			if !ok {
				return none, nil, fmt.Errorf("--sprocket: %w: %q is in no chain table", normalize.ErrBadInput, c.sprocket)
			}
			fs := normalize.CheckChain(c.chain, c.sprocket)
			r := reckon.Result{Sum: "fit of a chain", Formula: "pitch, inner width and roller must agree",
				Inputs: []reckon.Figure{{Name: "chain " + c.chain + ", pitch", Value: d.Pitch, Unit: "mm"}, {Name: "chain " + c.chain + ", inner width", Value: d.InnerWidth, Unit: "mm"},
					{Name: "sprocket " + c.sprocket + ", pitch", Value: e.Pitch, Unit: "mm"}, {Name: "sprocket " + c.sprocket + ", inner width", Value: e.InnerWidth, Unit: "mm"}},
				Source: d.Source + "; " + e.Source}
			if len(fs) == 0 {
				r.Notes = []string{"Nothing in the tables speaks against the fit; the stamps on chain and sprockets decide."}
			}
			return r, fs, nil
		}
	} else if c.pitch != "" {
		pitch, source = t.value("pitch", c.pitch, normalize.Length, "mm"), "pitch as given"
	} else {
		t.fail("chain", fmt.Errorf("%w: give --chain or --pitch", normalize.ErrBadInput))
	}
	if t.err != nil {
		return none, nil, t.err
	}
	r, err := c.lengthOrWear(cmd, &t, pitch)
	if err != nil {
		return none, nil, err
	}
	r.Source += "; pitch: " + source
	return r, nil, nil
}

func (c chainFlags) lengthOrWear(cmd *cobra.Command, t *typed, pitch float64) (reckon.Result, error) {
	if c.measured != "" {
		mm := t.value("measured", c.measured, normalize.Length, "mm")
		n, pins := t.count("pitches", c.pitches), false
		if c.pins != "" {
			n, pins = t.count("pins", c.pins), true
		}
		if (c.pins == "") == (c.pitches == "") {
			t.fail("pitches", fmt.Errorf("%w: give --pitches or --pins", normalize.ErrBadInput))
		}
		limit := t.plain("limit", c.limit, 0)
		if t.err != nil {
			return reckon.Result{}, t.err
		}
		return reckon.Elongation(mm, n, pins, pitch, limit)
	}
	t.need(cmd, "driving", "driven")
	a, b := t.count("driving", c.driving), t.count("driven", c.driven)
	if t.err != nil {
		return reckon.Result{}, t.err
	}
	if c.centre != "" {
		mm := t.value("centre", c.centre, normalize.Length, "mm")
		if t.err != nil {
			return reckon.Result{}, t.err
		}
		return reckon.ChainLength(a, b, mm, pitch)
	}
	t.need(cmd, "links")
	links := t.count("links", c.links)
	na, nb := t.count("new-driving", c.newDriving), t.count("new-driven", c.newDriven)
	if t.err != nil {
		return reckon.Result{}, t.err
	}
	if na == 0 && nb == 0 {
		return reckon.ChainCentre(a, b, links, pitch)
	}
	if na == 0 {
		na = a
	}
	if nb == 0 {
		nb = b
	}
	var adj *reckon.Adjuster
	switch {
	case c.throw != "":
		adj = &reckon.Adjuster{Eccentric: true, Throw: t.value("throw", c.throw, normalize.Length, "mm"), Angle: t.angle("throw-angle", c.throwAngle)}
	case c.slotBack != "" || c.slotForward != "":
		adj = &reckon.Adjuster{Back: t.valueOrZero("slot-back", c.slotBack, normalize.Length, "mm"), Forward: t.valueOrZero("slot-forward", c.slotForward, normalize.Length, "mm")}
	}
	if t.err != nil {
		return reckon.Result{}, t.err
	}
	return reckon.TeethChange(a, b, na, nb, links, pitch, adj)
}
