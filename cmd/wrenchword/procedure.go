package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/rogpeppe/go-internal/diff"
	"github.com/spf13/cobra"

	"wrenchword/extract"
	"wrenchword/render"
	"wrenchword/render/page"
	"wrenchword/render/workdoc"
)

func newProcedureCmd() *cobra.Command {
	var f jobFlags
	var out, format string
	var dryRun, other, backup bool
	cmd := &cobra.Command{
		Use:   "procedure TRANSCRIPT… [-o FILE]",
		Short: "Write the working document of a job from its transcript",
		Long: `procedure reads the transcript of a job (WebVTT, SubRip, TTML, timed text, a
recogniser's JSON, or the subtitle track of a video) and writes the working
document, or the record that it is drawn from. Several files are the clips of
one job, in the order given; "-" is standard input.

Run again over a document that is there, it changes its own lines only: what you
typed and ticked stays (see "wrenchword help document"). A file that is no
working document is never written over.`,
		Example: "  wrenchword procedure clip.vtt -o job.md\n  wrenchword procedure part-1.srt part-2.srt --title 'Hub bearing' -o hub.md\n  wrenchword procedure clip.vtt --format json",
		Args:    cobra.MinimumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			say := newSayer(cmd)
			if formats[format] == nil {
				return fmt.Errorf("--format %s is not known; use md, json, html or wiki", format)
			}
			if dryRun && (out == "" || format != "md") {
				return errors.New("--dry-run shows the change to a document: name it with -o")
			}
			if err := notAnInput(out, args); err != nil {
				return err
			}
			if out == "" || format != "md" {
				return fresh(cmd, say, &f, args, out, format)
			}
			return again(cmd, say, &f, args, out, dryRun, other, backup)
		},
	}
	f.add(cmd)
	addLarge(cmd)
	cmd.Flags().StringVarP(&out, "output", "o", "", "file to write or to bring up to date (standard output if not given)")
	cmd.Flags().StringVar(&format, "format", "md", "md, the working document; json, the record; html or wiki (MediaWiki), a page of what was heard")
	cmd.Flags().BoolVar(&dryRun, "dry-run", false, "show what would change in the document, and change nothing")
	cmd.Flags().BoolVar(&other, "other-recording", false, "bring the document up to date although it was made from another recording")
	cmd.Flags().BoolVar(&backup, "backup", false, "keep the document as it was beside it, with .bak at its name's end")
	return cmd
}

// formats are the outputs of procedure by name. None knows the day, so that the
// same transcript gives the same bytes.
var formats = map[string]func(*extract.Record) ([]byte, error){
	"json": render.JSON,
	"md":   func(rec *extract.Record) ([]byte, error) { return render.Markdown(rec, nil) },
	"html": asPage((*page.Page).HTML),
	"wiki": asPage((*page.Page).MediaWiki),
}

// asPage draws a record in which nothing is confirmed yet.
func asPage(draw func(*page.Page) ([]byte, error)) func(*extract.Record) ([]byte, error) {
	return func(rec *extract.Record) ([]byte, error) {
		md, err := render.Markdown(rec, nil)
		if err != nil {
			return nil, err
		}
		doc, err := workdoc.Read(md)
		if err != nil {
			return nil, err
		}
		return draw(page.New(doc, page.Options{}))
	}
}

// notAnInput refuses to write over a transcript, by whatever name.
func notAnInput(out string, inputs []string) error {
	if out == "" {
		return nil
	}
	target, err := os.Stat(out)
	if err != nil {
		return nil // it is not there yet, or reading it will say what is wrong
	}
	for _, in := range inputs {
		if info, err := os.Stat(in); err == nil && os.SameFile(info, target) {
			return fmt.Errorf("-o %s is the transcript %s itself; name another file", out, in)
		}
	}
	return nil
}

// fresh writes a document or a record as if there were none.
func fresh(cmd *cobra.Command, say sayer, f *jobFlags, args []string, out, format string) error {
	rec, err := f.record(cmd.Context(), cmd, say, args)
	if err != nil {
		return err
	}
	data, err := formats[format](rec)
	if err != nil {
		return err
	}
	if out == "" {
		_, err = cmd.OutOrStdout().Write(data)
		return err
	}
	return withLock(cmd.Context(), out, func() error {
		if err := ownOutput(out, format); err != nil {
			return err
		}
		return writeFile(out, data)
	})
}

// ownOutput refuses to write over what is not this tool's own output in that
// form, untouched: a person's file is never replaced.
func ownOutput(out, format string) error {
	old, err := os.ReadFile(out)
	if errors.Is(err, fs.ErrNotExist) || err == nil && len(old) == 0 {
		return nil
	}
	if err != nil {
		return fmt.Errorf("read what is at -o: %w", err)
	}
	if format == "json" {
		var was struct {
			Schema string `json:"schema"`
		}
		if err := json.Unmarshal(old, &was); err == nil && was.Schema == extract.Schema {
			return nil
		}
		return fmt.Errorf("%s: there is a file that is no record; nothing was written; name another file with -o", out)
	}
	if err := page.Untouched(old); err != nil {
		return fmt.Errorf("%s: %w; nothing was written; name another file with -o", out, err)
	}
	return nil
}

// again writes the document, or brings the one that is there up to date.
func again(cmd *cobra.Command, say sayer, f *jobFlags, args []string, out string, dryRun, other, backup bool) error {
	return withLock(cmd.Context(), out, func() error {
		old, err := os.ReadFile(out)
		if errors.Is(err, fs.ErrNotExist) {
			old, err = nil, nil
		}
		if err != nil {
			return fmt.Errorf("read the document: %w", err)
		}
		var doc *workdoc.Document
		if len(old) > 0 {
			doc, err = workdoc.Read(old)
			switch {
			case errors.Is(err, workdoc.ErrSeal):
				say.warning("%s: %v; what is not word for word the tool's own is kept as yours", out, err)
			case errors.Is(err, workdoc.ErrNotDocument):
				return fmt.Errorf("%s: %w: nothing was written; name another file with -o", out, err)
			case err != nil:
				return fmt.Errorf("%s: %w", out, err)
			}
		}
		revs := []workdoc.Revision{}
		if doc != nil {
			f.inherit(doc.Record.Job)
			revs = doc.Revisions
			clockNote(say, out, revs)
		}
		rec, err := f.record(cmd.Context(), cmd, say, args)
		if err != nil {
			return err
		}
		if doc != nil && !other {
			if err := sameRecording(out, doc.Record, rec); err != nil {
				return err
			}
		}
		now, report, err := revised(old, rec, revs)
		if err != nil {
			return fmt.Errorf("%s: %w", out, err)
		}
		for _, l := range report.Both {
			say.note("%s: you and the new reading both changed this; yours is kept beside it: %s", out, l)
		}
		for _, l := range report.Moved {
			say.note("%s: its item is gone; moved to %q: %s", out, strings.TrimPrefix(workdoc.KeptHeading, "## "), l)
		}
		if dryRun {
			_, err := cmd.OutOrStdout().Write(diff.Diff(out, withoutSeal(old), out+" (new)", withoutSeal(now)))
			return err
		}
		if string(now) == string(old) {
			say.note("%s: nothing changed", out)
			return nil
		}
		if backup && len(old) > 0 {
			if err := writeFile(out+".bak", old); err != nil {
				return err
			}
		}
		return writeFile(out, now)
	})
}

// revised merges a record into old, as a new revision where anything changed.
func revised(old []byte, rec *extract.Record, revs []workdoc.Revision) ([]byte, workdoc.MergeReport, error) {
	if len(old) == 0 {
		data, err := render.Markdown(rec, nil)
		return data, workdoc.MergeReport{Changed: true}, err
	}
	same, err := render.Markdown(rec, revs)
	if err != nil {
		return nil, workdoc.MergeReport{}, err
	}
	_, report, err := workdoc.Merge(old, same)
	if err != nil || !report.Changed {
		return old, report, err
	}
	what := "read again: words changed"
	if report.Added+report.Gone > 0 {
		what = fmt.Sprintf("read again: %s, %s", count(report.Added, "line new", "lines new"), count(report.Gone, "line gone", "lines gone"))
	}
	fresh, err := render.Markdown(rec, nextRevision(revs, what))
	if err != nil {
		return nil, report, err
	}
	return workdoc.Merge(old, fresh)
}

// nextRevision adds a revision of today.
func nextRevision(revs []workdoc.Revision, what string) []workdoc.Revision {
	n := 1
	if len(revs) > 0 {
		n = revs[len(revs)-1].N
	}
	return append(slices.Clone(revs), workdoc.Revision{N: n + 1, Date: today().Format(time.DateOnly), What: what})
}

// clockNote says where the clock stands before what was written already.
func clockNote(say sayer, path string, revs []workdoc.Revision) {
	now := today().Format(time.DateOnly)
	for _, r := range slices.Backward(revs) {
		if _, err := time.Parse(time.DateOnly, r.Date); err == nil && r.Date > now {
			say.warning("%s: the clock says %s, and revision %d is of %s: set the clock if it is wrong", path, now, r.N, r.Date)
			return
		}
	}
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// inherit takes from the document what no flag says.
func (f *jobFlags) inherit(job extract.Job) {
	for _, p := range []struct{ mine, old *string }{
		{&f.job.Title, &job.Title}, {&f.job.Machine, &job.Machine}, {&f.job.Year, &job.Year},
		{&f.job.Reading, &job.Reading}, {&f.job.Date, &job.Date}, {&f.job.VideoURL, &job.VideoURL},
	} {
		if *p.mine == "" {
			*p.mine = *p.old
		}
	}
}

// sameRecording refuses a document that was made from other clips: no clip has
// a name or a content in common and hardly a step is the same, or clips are missing.
func sameRecording(out string, old, now *extract.Record) error {
	hint := fmt.Sprintf("it was made from %s; name the same clips in order, or give --other-recording", strings.Join(workdoc.ClipNames(old), ", "))
	if len(now.Source) < len(old.Source) {
		return fmt.Errorf("%s: %s for a document of %s: %s", out,
			count(len(now.Source), "clip was given", "clips were given"), count(len(old.Source), "clip", "clips"), hint)
	}
	for _, a := range old.Source {
		for _, b := range now.Source {
			if a.SHA256 == b.SHA256 || filepath.Base(a.Name) == filepath.Base(b.Name) {
				return nil
			}
		}
	}
	have := map[string]bool{}
	steps := workdoc.RefsOf(old).Steps
	for _, r := range steps {
		have[r] = true
	}
	same := 0
	for _, r := range workdoc.RefsOf(now).Steps {
		if have[r] {
			same++
		}
	}
	if 2*same < len(steps) || len(steps) == 0 {
		return fmt.Errorf("%s: this looks like another recording: %s", out, hint)
	}
	return nil
}

func withLock(ctx context.Context, path string, do func() error) error {
	unlock, err := lockFile(ctx, path)
	if err != nil {
		return err
	}
	defer unlock()
	return do()
}

// withoutSeal drops the end block, which says nothing to a reader of a change.
func withoutSeal(doc []byte) []byte {
	return workdoc.Visible(doc)
}

// today is the date that revisions carry and dues are judged by. SOURCE_DATE_EPOCH sets it for reproducible runs.
func today() time.Time {
	if s := os.Getenv("SOURCE_DATE_EPOCH"); s != "" {
		var sec int64
		if _, err := fmt.Sscan(s, &sec); err == nil {
			return time.Unix(sec, 0).UTC()
		}
	}
	return time.Now()
}
