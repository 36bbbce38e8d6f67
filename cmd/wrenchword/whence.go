package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"wrenchword/extract"
	"wrenchword/render"
	"wrenchword/render/workdoc"
)

func newWhenceCmd() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "whence FILE [REF]",
		Short: "Show where an item of a document came from",
		Long: `whence shows the words an item was read from, when they were said, what was
read from them, and what the checks said. FILE is a working document or a
transcript; REF is the reference at the end of the item's line, such as
step-undo-the-axle-nut, or an identity of the record, such as L4. Without REF it
lists the references.`,
		Example: "  wrenchword whence job.md torque-axle-nut",
		Args:    cobra.RangeArgs(1, 2),
		RunE: func(cmd *cobra.Command, args []string) error {
			doc, _, err := document(cmd, newSayer(cmd), args[0])
			if err != nil {
				return err
			}
			w := safeWriter{cmd.OutOrStdout()}
			if len(args) == 1 {
				for _, f := range workdoc.Items(doc.Record) {
					fmt.Fprintf(w, "%s\t%s\t%s\n", f.Ref, spoken(doc.Record, f.Place), f.Name)
				}
				return nil
			}
			f, near, ok := workdoc.Find(doc.Record, args[1])
			if !ok {
				hint := "list them with: wrenchword whence " + args[0]
				if len(near) > 0 {
					hint = "perhaps " + strings.Join(near[:min(len(near), 5)], ", ")
				}
				return fmt.Errorf("%s: no item %q; %s", args[0], args[1], hint)
			}
			printWhence(w, doc, f)
			return nil
		},
	}
	return cmd
}

// spoken is when and in which clip something was said.
func spoken(rec *extract.Record, p extract.Place) string {
	s := render.Clock(p.At)
	if !p.AtExact {
		s += " (worked out inside a longer cue)"
	}
	if p.Clip < len(rec.Source) && len(rec.Source) > 1 {
		s = rec.Source[p.Clip].Name + " " + s
	}
	return s
}

func printWhence(w io.Writer, doc *workdoc.Document, f workdoc.Found) {
	fmt.Fprintf(w, "%s (%s)\n", f.Ref, f.Kind)
	fmt.Fprintf(w, "said at    %s\n", spoken(doc.Record, f.Place))
	fmt.Fprintf(w, "words      %q\n", f.Place.Quote)
	if f.Place.Rule != "" {
		fmt.Fprintf(w, "rule       %s\n", f.Place.Rule)
	}
	for _, kv := range f.Fields() {
		fmt.Fprintf(w, "%-10s %s\n", kv[0], kv[1])
	}
	if link := render.VideoLink(doc.Record.Job.VideoURL, f.Place.Clip, f.Place.LinkAt()); link != "" {
		fmt.Fprintf(w, "recording  %s\n", link)
	}
	var findings []extract.Finding
	switch x := f.Item.(type) {
	case extract.Torque:
		findings = x.Findings
	case extract.Open:
		findings = x.Findings
	case extract.Entry:
		for _, e := range x.Events {
			fmt.Fprintf(w, "event      %s at %s: %q (%s)\n", e.Act, spoken(doc.Record, e.Place), e.Quote, e.Rule)
		}
	}
	for _, c := range findings {
		line := c.Why
		if c.Ask != "" {
			line = strings.TrimRight(line, ".") + ". " + c.Ask
		}
		if c.Source != "" {
			line += " (" + c.Source + ")"
		}
		fmt.Fprintf(w, "check      %s\n", line)
	}
	for _, n := range doc.Notes[f.Ref] {
		fmt.Fprintf(w, "your note  %s\n", n)
	}
	if r := doc.Rows[f.Ref]; r.Confirmed != "" {
		fmt.Fprintf(w, "confirmed  %s (%s)\n", r.Confirmed, r.Source)
	}
}
