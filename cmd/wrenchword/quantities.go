package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"math/big"
	"strings"
	"text/tabwriter"
	"unicode"

	"github.com/spf13/cobra"

	"wrenchword/normalize"
)

func newQuantitiesCmd() *cobra.Command {
	var format string
	cmd := &cobra.Command{
		Use:   "quantities [TEXT|-]",
		Short: "List every quantity in the words, normalised",
		Long: `quantities lists every torque, size, length, angle, pressure, volume … that is
said in TEXT, or in each line of standard input, with its value, its canonical
form and its value in SI units. What only looks like a quantity (a price, a year,
an engine's torque) is not taken. A correction ("forty, no, fifty") leaves only
the last value.

In JSON lines start and end are byte offsets in the line, and text is what was
said there. No check can make a heard value right.`,
		Example: "  wrenchword quantities \"thirty to thirty five foot pounds\"\n  wrenchword quantities --format jsonl < talk.txt",
		Args:    cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			var write func(line int, text string) error
			out := bufio.NewWriter(cmd.OutOrStdout())
			tab := tabwriter.NewWriter(out, 0, 8, 2, ' ', 0)
			switch format {
			case "jsonl":
				enc := json.NewEncoder(out)
				enc.SetEscapeHTML(false)
				write = func(line int, text string) error { return writeQuantityJSON(enc, line, text) }
			case "table":
				fmt.Fprintln(tab, "line\tkind\tcanonical\tSI\thedged\tsaid")
				write = func(line int, text string) error { return writeQuantityRow(tab, line, text) }
			default:
				return fmt.Errorf("--format is table or jsonl, not %q", format)
			}
			if len(args) == 1 && args[0] != "-" {
				if err := checkTyped(args[0]); err != nil {
					return err
				}
				if err := write(1, args[0]); err != nil {
					return err
				}
			} else if err := eachLine(cmd.InOrStdin(), write); err != nil {
				return err
			}
			if err := tab.Flush(); err != nil {
				return err
			}
			return out.Flush()
		},
	}
	cmd.Flags().StringVar(&format, "format", "table", "table or jsonl")
	return cmd
}

// maxLine is the longest line that is read; longer ones are no lines of talk.
const maxLine = 64 << 20

func eachLine(r io.Reader, write func(int, string) error) error {
	s := bufio.NewScanner(r)
	s.Buffer(make([]byte, 64<<10), maxLine)
	n := 0
	for s.Scan() {
		n++
		if err := write(n, s.Text()); err != nil {
			return err
		}
	}
	if err := s.Err(); err != nil {
		return fmt.Errorf("read line %d of standard input: %w", n+1, err)
	}
	return nil
}

// checkTyped refuses a lone value that cannot be read as it was meant: talk is
// read as it comes, but a typed "45" or "1,25 mm" is a slip to be told.
func checkTyped(text string) error {
	s := strings.TrimSpace(text)
	if s == "" {
		return fmt.Errorf("%w: the text is empty", normalize.ErrBadInput)
	}
	i := strings.IndexFunc(s, func(r rune) bool { return !strings.ContainsRune("+-0123456789.,/ ", r) })
	tail := ""
	if i >= 0 {
		s, tail = s[:i], s[i:]
	}
	if !strings.ContainsAny(s, "0123456789") || strings.ContainsFunc(strings.TrimSpace(tail), unicode.IsSpace) || strings.ContainsAny(tail, "0123456789") {
		return nil // talk, or a designation
	}
	qs := normalize.Quantities(text)
	if len(qs) == 1 && (qs[0].Kind == normalize.Temperature || qs[0].Low != nil && qs[0].Low.Cmp(qs[0].High) != 0) {
		return nil
	}
	if _, err := normalize.ParsePlain(s); err != nil {
		return err
	}
	if len(qs) == 0 {
		if tail == "" {
			return fmt.Errorf("%w: %q has no unit; write it as in \"%s N.m\"", normalize.ErrBadInput, text, strings.TrimSpace(s))
		}
		return fmt.Errorf("%w: %q: %q is no unit that is known", normalize.ErrBadInput, text, tail)
	}
	return nil
}

// quantityLine is one JSON line.
type quantityLine struct {
	Line      int            `json:"line"`
	Text      string         `json:"text"`
	Kind      normalize.Kind `json:"kind"`
	Low       *float64       `json:"low"`
	High      *float64       `json:"high"`
	Unit      string         `json:"unit"`
	SILow     *float64       `json:"si_low"`
	SIHigh    *float64       `json:"si_high"`
	SIUnit    string         `json:"si_unit"`
	Canonical string         `json:"canonical"`
	Hedged    bool           `json:"hedged"`
	Assumed   bool           `json:"assumed"` // the unit was not said in full
	LengthMM  *float64       `json:"length_mm,omitempty"`
	Start     int            `json:"start"`
	End       int            `json:"end"`
}

func float(r *big.Rat) *float64 {
	if r == nil {
		return nil
	}
	f, _ := r.Float64()
	return &f
}

func writeQuantityJSON(enc *json.Encoder, line int, text string) error {
	for _, q := range normalize.Quantities(text) {
		lo, hi, unit := q.SI()
		v := quantityLine{Line: line, Text: text[q.Start:q.End], Kind: q.Kind, Low: float(q.Low), High: float(q.High), Unit: q.Unit,
			SILow: float(lo), SIHigh: float(hi), SIUnit: unit, Canonical: q.Canonical, Hedged: q.Hedged, Assumed: q.Assumed, Start: q.Start, End: q.End}
		if strings.HasPrefix(q.Canonical, "M") {
			v.LengthMM = float(q.Length)
		}
		if err := enc.Encode(v); err != nil {
			return err
		}
	}
	return nil
}

func writeQuantityRow(w io.Writer, line int, text string) error {
	for _, q := range normalize.Quantities(text) {
		si := ""
		if _, _, unit := q.SI(); unit != "" && unit != q.Unit {
			si = normalize.RoundedRange(q.Low, q.High, q.Unit, unit)
		}
		hedged := ""
		if q.Hedged {
			hedged = "yes"
		}
		if _, err := fmt.Fprintf(w, "%d\t%s\t%s\t%s\t%s\t%s\n", line, q.Kind, q.Canonical, si, hedged, plainText(text[q.Start:q.End])); err != nil {
			return err
		}
	}
	return nil
}

// plainText keeps control characters and tabs of a heard text out of a table.
func plainText(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "\uFFFD"))
}
