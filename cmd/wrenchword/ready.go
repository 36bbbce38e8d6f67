package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"wrenchword/extract"
	"wrenchword/render"
	"wrenchword/render/workdoc"
)

func newReadyCmd() *cobra.Command {
	var before, wrenchFile string
	cmd := &cobra.Command{
		Use:   "ready FILE",
		Short: "Say what is still open before the machine is used",
		Long: `ready reads a working document and says in one line whether anything that was
heard still stands open, then what, in the order in which it can be done. A row
of the tightening round is settled only by a confirmed value with its source and
a tick, or by a signed statement that none is published. On a bare transcript
nothing is confirmed yet.

Exit code 0 says that nothing that was heard is left open. It is no inspection.`,
		Example: "  wrenchword ready job.md\n  wrenchword ready job.md --before publishing\n  wrenchword ready job.md --wrenches mine.csv",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			say := newSayer(cmd)
			if before != extract.BeforeUse && before != extract.BeforePublishing {
				return fmt.Errorf("--before %s is not known; use use or publishing", before)
			}
			var wrenches []workdoc.Wrench
			if wrenchFile != "" {
				data, err := os.ReadFile(wrenchFile)
				if err != nil {
					return fmt.Errorf("read the wrenches: %w", err)
				}
				if wrenches, err = workdoc.ReadWrenches(wrenchFile, data); err != nil {
					return err
				}
			}
			doc, bare, err := document(cmd, say, args[0])
			if err != nil {
				return err
			}
			v := workdoc.Ready(doc, before, workdoc.CheckConfirmed, today())
			printVerdict(safeWriter{cmd.OutOrStdout()}, doc, v, before, bare, wrenches)
			if len(v.Open) > 0 || bare {
				return errOpen
			}
			return nil
		},
	}
	cmd.Flags().StringVar(&before, "before", extract.BeforeUse, "the gate: use or publishing")
	cmd.Flags().StringVar(&wrenchFile, "wrenches", "", "file of the torque wrenches you own: name, unit, low, high, step (CSV)")
	return cmd
}

// document reads a working document, or makes one in memory of a bare transcript.
func document(cmd *cobra.Command, say sayer, path string) (doc *workdoc.Document, bare bool, err error) {
	if path != "-" {
		data, err := os.ReadFile(path)
		if err != nil {
			return nil, false, fmt.Errorf("read the document: %w", err)
		}
		doc, err := workdoc.Read(data)
		if err == nil {
			for _, w := range doc.Warnings {
				say.warning("%s:%d: %s", path, w.Line, w.Text)
			}
			return doc, false, nil
		}
		if errors.Is(err, workdoc.ErrSeal) {
			return nil, false, fmt.Errorf("%s: %w; run \"procedure\" with its transcript and -o %s again", path, err, path)
		}
		if !errors.Is(err, workdoc.ErrNotDocument) {
			return nil, false, fmt.Errorf("%s: %w", path, err)
		}
	}
	rec, err := (&jobFlags{}).record(cmd.Context(), cmd, say, []string{path})
	if err != nil {
		return nil, false, fmt.Errorf("%w (and it is no working document)", err)
	}
	data, err := render.Markdown(rec, nil)
	if err != nil {
		return nil, false, err
	}
	doc, err = workdoc.Read(data)
	return doc, true, err
}

func printVerdict(w io.Writer, doc *workdoc.Document, v workdoc.Verdict, before string, bare bool, wrenches []workdoc.Wrench) {
	gate := "before the machine is used"
	if before == extract.BeforePublishing {
		gate = "before publishing"
	}
	switch {
	case len(v.Open) > 0:
		fmt.Fprintf(w, "not ready: %s %s\n", count(len(v.Open), "thing stands open", "things stand open"), gate)
	case bare:
		fmt.Fprintf(w, "not ready: nothing that was heard is left open %s, and nothing is confirmed\n", gate)
	default:
		fmt.Fprintf(w, "nothing that was heard is left open %s; %s not confirmed; this is no inspection\n",
			gate, count(v.Usual, "usual check is", "usual checks are"))
	}
	if bare {
		fmt.Fprintln(w, "this is a bare transcript: nothing is confirmed yet")
	}
	for i, s := range v.Open {
		fmt.Fprintf(w, "%3d. %s%s\n       %s\n", i+1, stamp(doc, s), s.Text, s.Why)
	}
	section(w, "due", len(v.Due))
	for _, s := range v.Due {
		fmt.Fprintf(w, "  - %s%s (%s)\n", stamp(doc, s), s.Text, s.Why)
	}
	section(w, "heard, and perhaps open", len(v.Doubts))
	for _, s := range v.Doubts {
		fmt.Fprintf(w, "  - %s“%s”\n", stamp(doc, s), s.Text)
	}
	section(w, "to look at", len(v.Remarks))
	for _, r := range v.Remarks {
		fmt.Fprintf(w, "  - %s\n", r)
	}
	if len(wrenches) > 0 {
		lines := workdoc.Settings(doc, wrenches)
		section(w, "wrench settings", len(lines))
		for _, l := range lines {
			fmt.Fprintf(w, "  - %s\n", l)
		}
	}
}

func section(w io.Writer, title string, n int) {
	if n > 0 {
		fmt.Fprintf(w, "%s:\n", title)
	}
}

func stamp(doc *workdoc.Document, s workdoc.Still) string {
	if s.At < 0 {
		return ""
	}
	clip := ""
	if len(doc.Record.Source) > 1 {
		clip = fmt.Sprintf("clip %d, ", s.Clip+1)
	}
	return strings.TrimSpace("["+clip+render.Clock(s.At)+"]") + " "
}
