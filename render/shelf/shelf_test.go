package shelf_test

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"wrenchword/extract"
	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
	"wrenchword/render"
	"wrenchword/render/page"
	"wrenchword/render/shelf"
	"wrenchword/render/workdoc"
)

// talk is an invented transcript; n makes each its own.
func talk(n int) string {
	return fmt.Sprintf(`WEBVTT

00:00:01.000 --> 00:00:05.000
right so today the drain plug on mower number %d

00:00:06.000 --> 00:00:12.000
you want a 17 mil socket and the torque wrench

00:00:14.000 --> 00:00:20.000
take the drain plug out and let it run

00:00:40.000 --> 00:00:47.000
put the drain plug back in and that gets %d newton metres

00:00:50.000 --> 00:00:55.000
I'll look up the value for the cover bolts later
`, n, 18+n%20)
}

func load(path string) (*workdoc.Document, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	if doc, err := workdoc.Read(data); err == nil {
		return doc, nil
	}
	clip, err := transcript.Read(filepath.Base(path), data, transcript.Options{})
	if err != nil {
		return nil, err
	}
	return shelf.Bare(extract.Extract(transcript.Join(clip), lexicon.Default(), extract.Job{})), nil
}

type bench struct {
	from, to string
	opt      shelf.Options
	loads    atomic.Int64
}

func newBench(t testing.TB) *bench {
	b := &bench{from: t.TempDir(), to: filepath.Join(t.TempDir(), "wiki")}
	b.opt = shelf.Options{From: b.from, Not: b.to, Key: "1",
		Page: page.Options{Today: time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC)},
		Load: func(path string) (*workdoc.Document, error) { b.loads.Add(1); return load(path) }}
	return b
}

func (b *bench) put(t testing.TB, name, text string) {
	t.Helper()
	path := filepath.Join(b.from, name)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func (b *bench) build(t testing.TB) shelf.Result {
	t.Helper()
	f, err := page.OpenFolder(b.to)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	res, err := shelf.Build(context.Background(), f, b.opt)
	if err != nil {
		t.Fatal(err)
	}
	return res
}

func (b *bench) page(t testing.TB, name string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(b.to, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func TestOnlyWhatChangedIsBuiltAgain(t *testing.T) {
	b := newBench(t)
	for n := range 5 {
		b.put(t, fmt.Sprintf("year/job %d.vtt", n), talk(n))
	}
	if res := b.build(t); res.Built != 5 || res.Jobs != 5 || len(res.Faults) != 0 {
		t.Fatalf("first: %+v", res)
	}
	b.loads.Store(0)
	if res := b.build(t); res.Built != 0 || b.loads.Load() != 0 || res.Jobs != 5 {
		t.Errorf("nothing changed: %+v, %d loads", res, b.loads.Load())
	}
	index := b.page(t, "index.html")
	b.put(t, "year/job 3.vtt", talk(33))
	if res := b.build(t); res.Built != 1 || b.loads.Load() != 1 {
		t.Errorf("one changed: %+v, %d loads", res, b.loads.Load())
	}
	if !strings.Contains(b.page(t, "job-3.html"), "31 N·m") {
		t.Error("the changed page says the old value")
	}
	if b.page(t, "index.html") == "" || index == "" {
		t.Error("no index")
	}
	if err := os.Remove(filepath.Join(b.to, "job-2.html")); err != nil {
		t.Fatal(err)
	}
	if res := b.build(t); res.Built != 1 {
		t.Errorf("a page that is gone: %+v", res)
	}
	b.opt.Key = "2"
	if res := b.build(t); res.Built != 5 {
		t.Errorf("another program: %+v", res)
	}
	if err := os.Remove(filepath.Join(b.from, "year/job 0.vtt")); err != nil {
		t.Fatal(err)
	}
	if res := b.build(t); res.Jobs != 4 {
		t.Errorf("a recording that is gone: %+v", res)
	}
	if _, err := os.Stat(filepath.Join(b.to, "job-0.html")); err == nil {
		t.Error("its page is still there")
	}
	// What cannot be read of what was remembered costs a full build, nothing else.
	if err := os.WriteFile(filepath.Join(b.to, ".wrenchword-shelf.json"), []byte(`{"jobs":{"x":{"name":"../../out"`), 0o644); err != nil {
		t.Fatal(err)
	}
	if res := b.build(t); res.Built != 4 || len(res.Faults) != 0 {
		t.Errorf("a broken memory: %+v", res)
	}
}

func TestOneBadFileFailsAlone(t *testing.T) {
	b := newBench(t)
	b.put(t, "good.vtt", talk(1))
	b.put(t, "bad.vtt", "no times here")
	b.put(t, "worse.vtt", talk(2))
	b.put(t, "readme.md", "just a note")
	b.put(t, ".hidden.vtt", talk(3))
	inner := b.opt.Load
	b.opt.Load = func(path string) (*workdoc.Document, error) {
		if strings.Contains(path, "worse") {
			panic("broken reader")
		}
		return inner(path)
	}
	res := b.build(t)
	if res.Jobs != 1 || len(res.Faults) != 2 || res.Faults[0].Path != "bad.vtt" || res.Faults[1].Path != "worse.vtt" {
		t.Fatalf("%+v", res)
	}
	if s := b.page(t, "index.html"); !strings.Contains(s, "bad.vtt") || !strings.Contains(s, "good.html") {
		t.Error("the index does not name both")
	}
}

func TestAnEditedPageIsLeft(t *testing.T) {
	b := newBench(t)
	b.put(t, "a.vtt", talk(1))
	b.build(t)
	edited := strings.Replace(b.page(t, "a.html"), "drain plug", "oil drain plug", 1)
	if err := os.WriteFile(filepath.Join(b.to, "a.html"), []byte(edited), 0o644); err != nil {
		t.Fatal(err)
	}
	b.put(t, "a.vtt", talk(2))
	res := b.build(t)
	if len(res.Faults) != 1 || !errors.Is(res.Faults[0].Err, page.ErrEdited) || b.page(t, "a.html") != edited {
		t.Errorf("%+v", res)
	}
	b.opt.Replace = true
	if res := b.build(t); len(res.Faults) != 0 || b.page(t, "a.html") == edited {
		t.Errorf("%+v", res)
	}
}

// A working document stands for the transcript it was made from; its confirmed
// values stand under its machine and year, and nobody else's.
func TestConfirmedValuesByMachineAndYear(t *testing.T) {
	b := newBench(t)
	for n, job := range []extract.Job{{Title: "Plug A", Machine: "Mower", Year: "2001"}, {Title: "Plug B", Machine: "Mower", Year: "2015"}, {Title: "Plug C"}} {
		text := talk(n)
		clip, err := transcript.Read("t.vtt", []byte(text), transcript.Options{})
		if err != nil {
			t.Fatal(err)
		}
		rec := extract.Extract(transcript.Join(clip), lexicon.Default(), job)
		md, err := render.Markdown(rec, nil)
		if err != nil {
			t.Fatal(err)
		}
		if n < 2 {
			// The last three cells of the row are the person's.
			lines := strings.Split(string(md), "\n")
			for i, l := range lines {
				if strings.HasPrefix(l, "| drain plug") && strings.HasSuffix(l, "|  |  | [ ] |") {
					lines[i] = strings.TrimSuffix(l, "|  |  | [ ] |") + fmt.Sprintf("| %d N·m | maker's sheet %d, page 3 | [x] |", 40+n, n)
					break
				}
			}
			md = []byte(strings.Join(lines, "\n"))
		}
		b.put(t, fmt.Sprintf("%d/clip.vtt", n), text)
		b.put(t, fmt.Sprintf("%d/plug-%c.md", n, 'a'+n), string(md))
	}
	if res := b.build(t); res.Jobs != 3 || len(res.Faults) != 0 {
		t.Fatalf("%+v", res)
	}
	s := b.page(t, "confirmed-values.html")
	first, second := strings.Index(s, "Mower, 2001"), strings.Index(s, "Mower, 2015")
	if first < 0 || second < first || strings.Contains(s, "Plug C") {
		t.Fatalf("groups at %d, %d", first, second)
	}
	if !strings.Contains(s[first:second], "40 N·m") || strings.Contains(s[first:second], "41 N·m") || !strings.Contains(s[second:], "41 N·m") {
		t.Error("the values stand under the wrong year")
	}
	for _, want := range []string{"Using a value again needs confirming again", "sheet 1, page 3", "plug-b.html#"} {
		if !strings.Contains(s, want) {
			t.Errorf("lacks %q", want)
		}
	}
	if s := b.page(t, "open-ends.html"); strings.Count(s, "cover bolts") < 3 {
		t.Error("the open ends of all jobs are not on one page")
	}
	n := 0
	faults, err := shelf.Records(context.Background(), b.opt, func(path string, rec *extract.Record) error {
		n++
		if !strings.HasSuffix(path, ".md") {
			t.Errorf("%s is streamed beside its document", path)
		}
		return nil
	})
	if err != nil || len(faults) != 0 || n != 3 {
		t.Errorf("%d records, %v, %v", n, faults, err)
	}
}

func TestNamesStayInside(t *testing.T) {
	b := newBench(t)
	for i, name := range []string{"a/b...vtt", "CON.vtt", "x/index.vtt", "y/index.vtt", "<img onerror=x>.vtt", "a'b\"c.vtt", strings.Repeat("long", 50) + ".vtt"} {
		b.put(t, name, talk(i))
	}
	if err := os.Symlink("/etc/passwd", filepath.Join(b.from, "link.txt")); err != nil {
		t.Skip("no symbolic links here")
	}
	res := b.build(t)
	if len(res.Faults) != 0 || res.Jobs != 7 {
		t.Fatalf("%+v", res)
	}
	beside, _ := os.ReadDir(filepath.Dir(b.to))
	inside, _ := os.ReadDir(b.to)
	if len(beside) != 1 || len(inside) != 7+4 {
		t.Errorf("%d beside, %d inside", len(beside), len(inside))
	}
	for _, e := range inside {
		if strings.ContainsAny(e.Name(), `<>"'/\ `) || len(e.Name()) > 100 {
			t.Errorf("unsafe name %q", e.Name())
		}
	}
	if res := b.build(t); res.Built != 0 {
		t.Errorf("names do not stay: %+v", res)
	}
}

// A bare record's page is the one that its working document gives.
func TestBare(t *testing.T) {
	clip, err := transcript.Read("t.vtt", []byte(talk(4)), transcript.Options{})
	if err != nil {
		t.Fatal(err)
	}
	rec := extract.Extract(transcript.Join(clip), lexicon.Default(), extract.Job{Title: "Plug", Date: "2026-05-01"})
	md, err := render.Markdown(rec, nil)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := workdoc.Read(md)
	if err != nil {
		t.Fatal(err)
	}
	opt := page.Options{Today: time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC)}
	a, err := page.New(doc, opt).HTML()
	if err != nil {
		t.Fatal(err)
	}
	b, err := page.New(shelf.Bare(rec), opt).HTML()
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(strings.Split(string(a), "\n"), strings.Split(string(b), "\n")); d != "" {
		t.Error(d)
	}
}

// BenchmarkShelf builds a shelf of 1,000 recordings, and then again with one changed.
func BenchmarkShelf(b *testing.B) {
	x := newBench(b)
	for n := range 1000 {
		x.put(b, fmt.Sprintf("%d/clip-%d.vtt", n%20, n), talk(n))
	}
	b.Run("all", func(b *testing.B) {
		for b.Loop() {
			if err := os.RemoveAll(x.to); err != nil {
				b.Fatal(err)
			}
			if res := x.build(b); res.Built != 1000 {
				b.Fatalf("%+v", res)
			}
		}
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		b.ReportMetric(float64(m.HeapSys)/(1<<20), "MiB-heap")
	})
	n := 0
	b.Run("one changed", func(b *testing.B) {
		for b.Loop() {
			n++
			x.put(b, "7/clip-7.vtt", talk(1000+n))
			if res := x.build(b); res.Built != 1 {
				b.Fatalf("%+v", res)
			}
		}
	})
}
