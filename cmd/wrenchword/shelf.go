package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"time"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"wrenchword/extract"
	"wrenchword/render/page"
	"wrenchword/render/shelf"
	"wrenchword/render/workdoc"
)

func newShelfCmd() *cobra.Command {
	var to, format string
	var settledOnly, replace bool
	var jobs int
	cmd := &cobra.Command{
		Use:   "shelf DIR --to DIR",
		Short: "Publish a whole folder of jobs with an index and all open ends",
		Long: `shelf makes a page of every working document and every bare transcript under a
folder, an index that can be searched and sorted, one page with the open ends of
all jobs and one with the confirmed values by machine and year. Only what changed
is built again. A file that cannot be read is named and fails alone.

A transcript that a working document was made from is on the shelf through that
document. With --format jsonl the records are written to standard output instead,
one a line.`,
		Example: "  wrenchword shelf recordings --to wiki\n  wrenchword shelf recordings --format jsonl > records.jsonl",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			say := newSayer(cmd)
			bar := newBar(cmd, say)
			say.w = bar // messages and the bar share one line of a terminal
			opt := shelf.Options{
				From: args[0], Not: to, Replace: replace, Workers: jobs,
				Page:     page.Options{SettledOnly: settledOnly, Today: today()},
				Progress: bar.set,
				Load:     func(path string) (*workdoc.Document, error) { return shelved(cmd, say, path) },
			}
			var faults []shelf.Fault
			switch format {
			case "jsonl":
				out := json.NewEncoder(cmd.OutOrStdout())
				out.SetEscapeHTML(false)
				var err error
				faults, err = shelf.Records(cmd.Context(), opt, func(_ string, rec *extract.Record) error { return out.Encode(rec) })
				if err != nil {
					return err
				}
			case "html":
				if to == "" {
					return errors.New("name the folder to write into with --to")
				}
				folder, err := page.OpenFolder(to)
				if err != nil {
					return err
				}
				defer folder.Close()
				opt.Key = buildKey(settledOnly)
				start := time.Now()
				err = withLock(cmd.Context(), to, func() error {
					res, err := shelf.Build(cmd.Context(), folder, opt)
					faults = res.Faults
					bar.end()
					if err == nil {
						say.note("%s on the shelf, %s built again, %s failed, in %.1f s",
							count(res.Jobs, "job", "jobs"), count(res.Built, "page", "pages"), count(len(faults), "file", "files"), time.Since(start).Seconds())
					}
					return err
				})
				if err != nil {
					return err
				}
			default:
				return fmt.Errorf("--format %s is not known; use html or jsonl", format)
			}
			for _, f := range faults {
				say.quiet = false // a failure is said even when quiet
				say.warning("%s: %v", f.Path, advised(f.Err))
			}
			if len(faults) > 0 {
				return errOpen
			}
			return nil
		},
	}
	addLarge(cmd)
	fs := cmd.Flags()
	fs.StringVar(&to, "to", "", "folder to write into")
	fs.StringVar(&format, "format", "html", "html, the pages, or jsonl, the records on standard output")
	fs.BoolVar(&settledOnly, "settled-only", false, "leave out every value that nobody confirmed, and say so")
	fs.BoolVar(&replace, "replace", false, "write over pages that were edited since they were published")
	fs.IntVar(&jobs, "jobs", 0, "files read at the same time (one a processor if not given)")
	return cmd
}

// shelved is the document of one file of a shelf. A bare transcript needs no way
// through the text of a working document, which a thousand of them would pay for.
func shelved(cmd *cobra.Command, say sayer, path string) (*workdoc.Document, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	if bytes.Contains(data, []byte(workdoc.Mark)) {
		doc, _, err := document(cmd, say, path)
		return doc, err
	}
	rec, err := (&jobFlags{}).record(cmd.Context(), cmd, say, []string{path})
	if err != nil {
		return nil, err
	}
	return shelf.Bare(rec), nil
}

// buildKey changes with the program and with the flags that change pages.
func buildKey(settledOnly bool) string {
	h := sha256.New()
	fmt.Fprintln(h, settledOnly)
	if name, err := os.Executable(); err == nil {
		if f, err := os.Open(name); err == nil {
			defer f.Close()
			if _, err := io.Copy(h, f); err != nil {
				return "" // an unknown program builds all again once
			}
		}
	}
	return hex.EncodeToString(h.Sum(nil))
}

// bar draws how far a run is, on a terminal only and only from a second on. It
// is the writer of the messages too, so that the two do not mix.
type bar struct {
	mu    sync.Mutex
	w     io.Writer
	on    bool
	start time.Time
	last  time.Time
	drawn bool
}

func newBar(cmd *cobra.Command, say sayer) *bar {
	b := &bar{w: cmd.ErrOrStderr(), start: time.Now()}
	if f, ok := b.w.(*os.File); ok && !say.quiet {
		b.on = term.IsTerminal(int(f.Fd()))
	}
	return b
}

func (b *bar) Write(p []byte) (int, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.wipe()
	return b.w.Write(p)
}

func (b *bar) set(done, total int) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if !b.on || time.Since(b.start) < time.Second || time.Since(b.last) < 100*time.Millisecond {
		return
	}
	b.last = time.Now()
	const width = 30
	full := width * done / max(1, total)
	fmt.Fprintf(b.w, "\r[%s%s] %d of %d", strings.Repeat("=", full), strings.Repeat(" ", width-full), done, total)
	b.drawn = true
}

func (b *bar) end() {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.wipe()
}

func (b *bar) wipe() {
	if b.drawn {
		fmt.Fprint(b.w, "\r\x1b[K")
		b.drawn = false
	}
}
