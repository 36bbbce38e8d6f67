package main

import (
	"bufio"
	"errors"
	"fmt"
	"os"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"wrenchword/extract"
	"wrenchword/render"
	"wrenchword/render/workdoc"
)

func newSettleCmd() *cobra.Command {
	var from []string
	var replace, otherMachine, template, backup bool
	cmd := &cobra.Command{
		Use:   "settle FILE --from SHEET",
		Short: "Fill in confirmed values from sheets you trust",
		Long: `settle matches the lines of one or more sheets (CSV, YAML or a Markdown table
with the columns fastener, value, source, note) to the rows of the tightening
round, by name and with a size as evidence, and writes the values with their
source. Several sheets are set side by side; where they differ the row stays open
and shows both. What is confirmed already is left as it is without --replace.
A match that is not sure is asked on a terminal and left open otherwise.`,
		Example: "  wrenchword settle job.md --sheet-template > values.csv\n  wrenchword settle job.md --from values.csv",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			say := newSayer(cmd)
			path := args[0]
			if template {
				doc, _, err := document(cmd, say, path)
				if err != nil {
					return err
				}
				_, err = cmd.OutOrStdout().Write(workdoc.SheetTemplate(doc))
				return err
			}
			if len(from) == 0 {
				return errors.New("name a sheet with --from, or get one to fill with --sheet-template")
			}
			sheets, err := readSheets(from)
			if err != nil {
				return err
			}
			return withLock(cmd.Context(), path, func() error {
				return settle(cmd, path, sheets, replace, otherMachine, backup)
			})
		},
	}
	cmd.Flags().StringArrayVar(&from, "from", nil, "a sheet of values (may be repeated)")
	cmd.Flags().BoolVar(&replace, "replace", false, "replace values that are confirmed already")
	cmd.Flags().BoolVar(&otherMachine, "other-machine", false, "use a sheet that is for another machine or year")
	cmd.Flags().BoolVar(&backup, "backup", false, "keep the document as it was beside it, with .bak at its name's end")
	cmd.Flags().BoolVar(&template, "sheet-template", false, "write the sheet to fill and end")
	return cmd
}

func readSheets(names []string) ([]workdoc.Sheet, error) {
	var sheets []workdoc.Sheet
	var faults []error
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			faults = append(faults, fmt.Errorf("read the sheet: %w", err))
			continue
		}
		s, err := workdoc.ReadSheet(name, data)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		sheets = append(sheets, s)
	}
	return sheets, errors.Join(faults...)
}

func settle(cmd *cobra.Command, path string, sheets []workdoc.Sheet, replace, otherMachine, backup bool) error {
	data, err := os.ReadFile(path)
	if err != nil {
		return fmt.Errorf("read the document: %w", err)
	}
	doc, err := workdoc.Read(data)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	clockNote(newSayer(cmd), path, doc.Revisions)
	for _, s := range sheets {
		for _, f := range []struct{ what, sheet, job string }{{"machine", s.Machine, doc.Job.Machine}, {"year", s.Year, doc.Job.Year}} {
			if f.sheet != "" && f.job != "" && !strings.EqualFold(f.sheet, f.job) && !otherMachine {
				return fmt.Errorf("%s: it is for the %s %q and the job is of %q; nothing was changed; give --other-machine if it holds for both", s.File, f.what, f.sheet, f.job)
			}
		}
	}
	fits, left := workdoc.Fit(doc, sheets, replace)
	out := safeWriter{cmd.OutOrStdout()}
	ask := asker(cmd)
	var sets []workdoc.Set
	var superseded []string
	open := 0
	filled := map[string]bool{}
	for _, f := range fits {
		name := f.Row.Name
		if name == "" {
			name = "a fastener that was not named"
		}
		if len(f.Matches) == 0 && len(f.Doubt) > 0 && !f.Held {
			if m, ok := ask(name, f.Doubt, sheets); ok {
				f.Matches = []workdoc.Match{m}
				left = without(left, m)
			}
		}
		switch {
		case f.Held:
			fmt.Fprintf(out, "kept      %s: %s\n", name, doc.Rows[f.Row.Ref].Confirmed)
		case f.Differ:
			open++
			fmt.Fprintf(out, "differ    %s: %s\n", name, f.Describe(sheets))
			sets = append(sets, workdoc.Set{Ref: f.Row.Ref, Source: "sheets differ: " + f.Describe(sheets)})
		case len(f.Matches) > 0:
			m := f.Matches[0]
			from := sheets[m.Sheet].From(m.Line)
			for _, more := range f.Matches[1:] {
				from += "; agrees: " + sheets[more.Sheet].From(more.Line)
			}
			if otherMachine && !strings.EqualFold(sheets[m.Sheet].Machine, doc.Job.Machine) && sheets[m.Sheet].Machine != "" {
				from += " (another machine)"
			}
			fmt.Fprintf(out, "fill      %s: %s\n", name, f.Describe(sheets))
			if was := doc.Rows[f.Row.Ref]; was.Confirmed != "" && was.Confirmed != m.Line.Value {
				superseded = append(superseded, fmt.Sprintf("%s was %s (%s), now %s", name, was.Confirmed, was.Source, m.Line.Value))
			}
			sets = append(sets, workdoc.Set{Ref: f.Row.Ref, Value: m.Line.Value, Source: from})
			filled[f.Row.Ref] = true
			for i, o := range doc.Record.Open {
				if o.Kind == extract.LookUp && f.Row.Entry != nil && o.LedgerID == f.Row.Entry.ID {
					sets = append(sets, workdoc.Set{Ref: doc.Refs.Open[i], Value: m.Line.Value, Source: from, NotWhereFilled: true})
				}
			}
		case len(f.Doubt) > 0:
			open++
			fmt.Fprintf(out, "not sure  %s: %s\n", name, doubts(f.Doubt))
		default:
			open++
			fmt.Fprintf(out, "no line   %s\n", name)
		}
	}
	for _, m := range left {
		open++
		fmt.Fprintf(out, "no row    %s:%d: %s, %s\n", sheets[m.Sheet].File, m.Line.Line, m.Line.Fastener, m.Line.Value)
	}
	now, wrote, err := workdoc.Apply(data, sets)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	if len(wrote) > 0 && len(filled) > 0 {
		what := "settled: " + count(len(filled), "value", "values")
		if len(superseded) > 0 {
			what += "; superseded: " + strings.Join(superseded, "; ")
		}
		fresh, err := render.Markdown(doc.Record, nextRevision(doc.Revisions, what))
		if err != nil {
			return err
		}
		if now, _, err = workdoc.Merge(now, fresh); err != nil {
			return fmt.Errorf("%s: %w", path, err)
		}
	}
	if len(wrote) > 0 {
		if backup {
			if err := writeFile(path+".bak", data); err != nil {
				return err
			}
		}
		if err := writeFile(path, now); err != nil {
			return err
		}
	}
	if open > 0 {
		return errOpen
	}
	return nil
}

func doubts(list []workdoc.Match) string {
	var out []string
	for _, m := range list {
		out = append(out, fmt.Sprintf("%s? %s (line %d)", m.Line.Fastener, m.Line.Value, m.Line.Line))
	}
	return strings.Join(out, "; ")
}

func without(list []workdoc.Match, m workdoc.Match) []workdoc.Match {
	out := list[:0]
	for _, x := range list {
		if x.Sheet != m.Sheet || x.Line.Line != m.Line.Line {
			out = append(out, x)
		}
	}
	return out
}

// asker asks which line is meant, on a terminal; elsewhere nothing is asked and nothing taken.
func asker(cmd *cobra.Command) func(string, []workdoc.Match, []workdoc.Sheet) (workdoc.Match, bool) {
	in, ok := cmd.InOrStdin().(*os.File)
	if !ok || !term.IsTerminal(int(in.Fd())) {
		return func(string, []workdoc.Match, []workdoc.Sheet) (workdoc.Match, bool) { return workdoc.Match{}, false }
	}
	lines := bufio.NewScanner(in)
	return func(name string, list []workdoc.Match, sheets []workdoc.Sheet) (workdoc.Match, bool) {
		w := cmd.ErrOrStderr()
		fmt.Fprintf(w, "which line is for %q?\n", name)
		for i, m := range list {
			fmt.Fprintf(w, "  %d  %s, %s (%s)\n", i+1, m.Line.Fastener, m.Line.Value, sheets[m.Sheet].From(m.Line))
		}
		fmt.Fprint(w, "number, or Enter for none: ")
		if !lines.Scan() {
			return workdoc.Match{}, false
		}
		n, err := strconv.Atoi(strings.TrimSpace(lines.Text()))
		if err != nil || n < 1 || n > len(list) {
			return workdoc.Match{}, false
		}
		return list[n-1], true
	}
}
