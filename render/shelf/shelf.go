// Package shelf publishes a folder of jobs: a page each, an index, the open ends
// of all and the confirmed values by machine and year. Only what changed is
// built again, and a file that cannot be read fails alone.
package shelf

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"time"

	"wrenchword/extract"
	"wrenchword/render/page"
	"wrenchword/render/workdoc"
)

// Options say what is built, and how.
type Options struct {
	From string // the folder that is read, with all below it
	Not  string // a folder below it that is not read, "" for none
	// Load makes the document of a file: a working document, or a bare transcript
	// read as one. It is called from several goroutines.
	Load     func(path string) (*workdoc.Document, error)
	Page     page.Options
	Key      string // changes when anything else does that pages depend on
	Replace  bool   // write over pages that were edited since
	Workers  int    // 0 for one a processor
	Progress func(done, total int)
}

// Fault is a file that failed, and why.
type Fault struct {
	Path string
	Err  error
}

// Result says what Build did.
type Result struct {
	Jobs, Built int // jobs on the shelf, pages built in this run
	Faults      []Fault
}

// manifestName is the file that remembers what was built from what.
const manifestName = ".wrenchword-shelf.json"

// fileMost bounds what is read of one file.
const fileMost = 256 << 20

type manifest struct {
	Key  string           `json:"key"`
	Jobs map[string]built `json:"jobs"` // by path below From, with slashes
}

// built is what is remembered of a job's page.
type built struct {
	SHA256 string   `json:"sha256"`
	Name   string   `json:"name"` // of the page, without ending
	Day    string   `json:"day"`  // it was built on, where dues may change it; else ""
	Covers []string `json:"covers"`
	Job    Job      `json:"job"`
}

// Job is what the index, the open ends and the values show of a job.
type Job struct {
	Path    string  `json:"path"`
	Page    string  `json:"page"`
	Title   string  `json:"title"`
	Machine string  `json:"machine"`
	Year    string  `json:"year"`
	Date    string  `json:"date"`
	Ready   bool    `json:"ready"`
	Verdict string  `json:"verdict"`
	Open    []End   `json:"open"`
	Later   []End   `json:"later"`
	Values  []Value `json:"values"`
}

// End is one open or due end.
type End struct {
	Text string `json:"text"`
	Why  string `json:"why"`
	Due  string `json:"due"`
	Ref  string `json:"ref"`
	At   string `json:"at"`
}

// Value is one confirmed value, or one signed where none is published.
type Value struct {
	Fastener string      `json:"fastener"`
	Count    string      `json:"count"`
	Place    string      `json:"place"`
	Ref      string      `json:"ref"`
	State    string      `json:"state"`
	Source   string      `json:"source"`
	Value    *page.Value `json:"value"`
}

// Build brings the shelf in the folder to up to date with opt.From. It fails as
// a whole only where the folders cannot be read or written.
func Build(ctx context.Context, to *page.Folder, opt Options) (Result, error) {
	paths, err := files(opt)
	if err != nil {
		return Result{}, err
	}
	old := manifest{Jobs: map[string]built{}}
	if data, err := to.Read(manifestName); err == nil {
		// One that cannot be read costs a full build and nothing else.
		if json.Unmarshal(data, &old) != nil || old.Key != opt.Key {
			for p, b := range old.Jobs {
				b.SHA256 = ""
				old.Jobs[p] = b
			}
		}
		if old.Jobs == nil {
			old.Jobs = map[string]built{}
		}
	}
	b := &build{to: to, opt: opt, old: old.Jobs, now: map[string]built{}, taken: map[string]bool{}, names: map[string]string{}, total: len(paths)}
	for _, p := range paths {
		if was, ok := old.Jobs[p]; ok && safe(was.Name) && !b.taken[was.Name] {
			b.names[p] = was.Name
			b.taken[was.Name] = true
		}
	}
	for _, p := range paths {
		if b.names[p] == "" {
			b.names[p] = page.SafeName(p, b.taken)
		}
	}
	// Working documents first: a transcript that one of them was made from is
	// on the shelf through it.
	b.run(ctx, paths, true)
	covered := map[string]bool{}
	for _, j := range b.now {
		for _, sum := range j.Covers {
			covered[sum] = true
		}
	}
	b.covered = covered
	b.run(ctx, paths, false)
	if err := ctx.Err(); err != nil {
		return b.res, err
	}
	failed := map[string]bool{} // what failed keeps the page it had
	for _, f := range b.res.Faults {
		failed[f.Path] = true
	}
	for p, was := range old.Jobs {
		if _, ok := b.now[p]; !ok && !failed[p] && safe(was.Name) && !b.usesName(was.Name) {
			if err := to.Remove(was.Name + ".html"); err != nil {
				b.fault(p, err)
			}
		}
	}
	slices.SortFunc(b.res.Faults, func(x, y Fault) int { return strings.Compare(x.Path, y.Path) })
	b.res.Jobs = len(b.now)
	if err := b.overview(); err != nil {
		return b.res, err
	}
	data, err := json.Marshal(manifest{Key: opt.Key, Jobs: b.now})
	if err != nil {
		return b.res, err
	}
	return b.res, to.Write(manifestName, data)
}

// safe says whether a remembered name is one that page.SafeName makes.
func safe(name string) bool {
	return name != "" && page.SafeName(name, map[string]bool{}) == name
}

type build struct {
	to      *page.Folder
	opt     Options
	old     map[string]built
	names   map[string]string
	taken   map[string]bool
	covered map[string]bool

	mu    sync.Mutex
	now   map[string]built
	res   Result
	done  int
	total int
}

func (b *build) usesName(name string) bool {
	for _, j := range b.now {
		if j.Name == name {
			return true
		}
	}
	return false
}

func (b *build) fault(path string, err error) {
	// Readers begin with the file's name, which stands before the fault already.
	if rest, ok := strings.CutPrefix(err.Error(), filepath.Base(path)+": "); ok {
		err = fmt.Errorf("%s", rest)
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	b.res.Faults = append(b.res.Faults, Fault{path, err})
}

// run builds the working documents, or all else.
func (b *build) run(ctx context.Context, paths []string, documents bool) {
	each(ctx, b.opt.Workers, len(paths), func(i int) {
		p := paths[i]
		if isDocumentName(p) != documents {
			return
		}
		err := guard(func() error { return b.one(p) })
		if err != nil {
			b.fault(p, err)
		}
		b.mu.Lock()
		b.done++
		done := b.done
		b.mu.Unlock()
		if b.opt.Progress != nil {
			b.opt.Progress(done, b.total)
		}
	})
}

// each calls do for 0 to n-1 from several goroutines and waits for all.
func each(ctx context.Context, workers, n int, do func(int)) {
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	next := make(chan int)
	var wg sync.WaitGroup
	for range min(workers, n) {
		wg.Go(func() {
			for i := range next {
				do(i)
			}
		})
	}
	for i := range n {
		if ctx.Err() != nil {
			break
		}
		next <- i
	}
	close(next)
	wg.Wait()
}

// guard makes an error of a panic: a file that breaks the reading fails alone.
func guard(do func() error) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("the reading broke off: %v", r)
		}
	}()
	return do()
}

func (b *build) one(p string) error {
	full := filepath.Join(b.opt.From, filepath.FromSlash(p))
	data, err := readFile(full)
	if err != nil {
		return err
	}
	if isDocumentName(p) && !isDocument(data) {
		return nil // some other note that lies there
	}
	sum := hexSum(data)
	if b.covered[sum] {
		return nil
	}
	name := b.names[p]
	day := b.opt.Page.Today.Format(time.DateOnly)
	if was, ok := b.old[p]; ok && was.SHA256 == sum && was.Name == name && (was.Day == "" || was.Day == day) && b.to.Has(name+".html") {
		b.keep(p, was, false)
		return nil
	}
	doc, err := b.opt.Load(full)
	if err != nil {
		return err
	}
	opt := b.opt.Page
	opt.Name = strings.TrimSuffix(filepath.Base(full), filepath.Ext(full))
	view := page.New(doc, opt)
	out, err := view.HTML()
	if err != nil {
		return fmt.Errorf("draw the page: %w", err)
	}
	if err := b.to.Publish(name+".html", out, b.opt.Replace); err != nil {
		return err
	}
	now := built{SHA256: sum, Name: name, Job: summary(p, name+".html", doc, view)}
	if len(doc.Dues) > 0 || len(view.Later) > 0 {
		now.Day = day
	}
	if isDocumentName(p) {
		for _, s := range doc.Record.Source {
			now.Covers = append(now.Covers, s.SHA256)
		}
	}
	b.keep(p, now, true)
	return nil
}

func (b *build) keep(p string, j built, fresh bool) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.now[p] = j
	if fresh {
		b.res.Built++
	}
}

func hexSum(data []byte) string {
	h := sha256.Sum256(data)
	return hex.EncodeToString(h[:])
}

func readFile(name string) ([]byte, error) {
	info, err := os.Stat(name)
	if err != nil {
		return nil, err
	}
	if info.Size() > fileMost {
		return nil, fmt.Errorf("%d bytes are too many for a transcript", info.Size())
	}
	return os.ReadFile(name)
}

func summary(path, file string, doc *workdoc.Document, v *page.Page) Job {
	j := Job{
		Path: path, Page: file, Title: v.Title, Machine: doc.Job.Machine, Year: doc.Job.Year, Date: doc.Job.Date,
		Ready: v.Ready, Verdict: v.Verdict, Open: ends(v.Open), Later: ends(v.Later),
	}
	for _, place := range v.Round {
		for _, r := range place.Rows {
			if r.Confirmed != nil && (r.State == "confirmed" || r.State == "signed") {
				j.Values = append(j.Values, Value{Fastener: r.Name, Count: r.Count, Place: place.Name, Ref: r.Ref, State: r.State, Source: r.Source.Text, Value: r.Confirmed})
			}
		}
	}
	return j
}

// Bare is the document of a record to which nobody has added a word: what
// reading back the Markdown of rec would give, without the way through text.
func Bare(rec *extract.Record) *workdoc.Document {
	return &workdoc.Document{
		Record: rec, Refs: workdoc.RefsOf(rec), Job: rec.Job,
		Revisions: []workdoc.Revision{{N: 1, Date: rec.Job.Date, What: "first written"}},
	}
}

func ends(list []page.Ask) []End {
	var out []End
	for _, a := range list {
		e := End{Text: a.Text, Why: a.Why, Due: a.Due, Ref: a.Ref}
		if a.Row != "" {
			e.Ref = a.Row
		}
		if len(a.At) > 0 {
			e.At = a.At[0].Text
		}
		out = append(out, e)
	}
	return out
}

// endings are the names that transcripts and working documents go by.
var endings = map[string]bool{
	".vtt": true, ".srt": true, ".ttml": true, ".dfxp": true, ".xml": true, ".txt": true, ".json": true, ".md": true, ".markdown": true,
}

func isDocumentName(p string) bool {
	switch strings.ToLower(filepath.Ext(p)) {
	case ".md", ".markdown":
		return true
	}
	return false
}

// files lists what may be a job, in order of path, with slashes. Hidden names
// and what is no regular file are passed over.
func files(opt Options) ([]string, error) {
	var not os.FileInfo
	if opt.Not != "" {
		not, _ = os.Stat(opt.Not)
	}
	var out []string
	err := filepath.WalkDir(opt.From, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			if path == opt.From {
				return err
			}
			return nil
		}
		if path != opt.From && strings.HasPrefix(d.Name(), ".") {
			if d.IsDir() {
				return fs.SkipDir
			}
			return nil
		}
		if d.IsDir() {
			if info, err := d.Info(); err == nil && not != nil && os.SameFile(info, not) && path != opt.From {
				return fs.SkipDir
			}
			return nil
		}
		if !d.Type().IsRegular() || !endings[strings.ToLower(filepath.Ext(path))] {
			return nil
		}
		rel, err := filepath.Rel(opt.From, path)
		if err != nil {
			return err
		}
		out = append(out, filepath.ToSlash(rel))
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("read the folder: %w", err)
	}
	slices.Sort(out)
	return out, nil
}

func isDocument(data []byte) bool { return bytes.Contains(data, []byte(workdoc.Mark)) }

// coveredBy gives the digests of the transcripts that working documents were made from.
func coveredBy(ctx context.Context, paths []string, opt Options) (map[string]bool, error) {
	covered := map[string]bool{}
	var mu sync.Mutex
	each(ctx, opt.Workers, len(paths), func(i int) {
		full := filepath.Join(opt.From, filepath.FromSlash(paths[i]))
		if !isDocumentName(full) {
			return
		}
		// What fails here fails again, and is told, when its record is read.
		_ = guard(func() error {
			data, err := readFile(full)
			if err != nil || !isDocument(data) {
				return err
			}
			doc, err := workdoc.Read(data)
			if err != nil {
				return err
			}
			mu.Lock()
			defer mu.Unlock()
			for _, s := range doc.Record.Source {
				covered[s.SHA256] = true
			}
			return nil
		})
	})
	return covered, ctx.Err()
}

// Records gives the record of every job to do, in order of path, as they are
// read; a few at a time are held. It ends with the first error of do.
func Records(ctx context.Context, opt Options, do func(path string, rec *extract.Record) error) ([]Fault, error) {
	paths, err := files(opt)
	if err != nil {
		return nil, err
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	covered, err := coveredBy(ctx, paths, opt)
	if err != nil {
		return nil, err
	}
	type result struct {
		rec *extract.Record
		err error
	}
	results := make([]chan result, len(paths))
	for i := range results {
		results[i] = make(chan result, 1)
	}
	window := make(chan struct{}, 4*runtime.GOMAXPROCS(0)) // how far reading may run ahead
	go func() {
		each(ctx, opt.Workers, len(paths), func(i int) {
			select {
			case window <- struct{}{}:
			case <-ctx.Done():
				return
			}
			var r result
			r.err = guard(func() error {
				full := filepath.Join(opt.From, filepath.FromSlash(paths[i]))
				data, err := readFile(full)
				if err != nil || covered[hexSum(data)] || isDocumentName(full) && !isDocument(data) {
					return err
				}
				doc, err := opt.Load(full)
				if err == nil {
					r.rec = doc.Record
				}
				return err
			})
			results[i] <- r
		})
	}()
	var faults []Fault
	for i, p := range paths {
		select {
		case r := <-results[i]:
			<-window
			if r.err != nil {
				faults = append(faults, Fault{p, r.err})
			} else if r.rec != nil {
				if err := do(p, r.rec); err != nil {
					return faults, err
				}
			}
		case <-ctx.Done():
			return faults, ctx.Err()
		}
	}
	return faults, nil
}
