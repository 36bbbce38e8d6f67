package page_test

import (
	"bytes"
	"context"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"wrenchword/render/page"
	"wrenchword/render/shelf"
	"wrenchword/render/workdoc"
)

// tab is one tab of a real headless Chromium with what it asked for and complained of.
type tab struct {
	t   *testing.T
	ctx context.Context
	mu  sync.Mutex
	// requests are the addresses asked for but the page's own; faults what the
	// console and the content policy said.
	requests, faults []string
}

// browser starts Chromium once for all subtests, or skips where there is none.
func browser(t *testing.T) context.Context {
	t.Helper()
	path := os.Getenv("WRENCHWORD_CHROMIUM")
	for _, name := range []string{"chromium", "chromium-browser"} {
		if path == "" {
			path, _ = exec.LookPath(name)
		}
	}
	if path == "" {
		t.Skip("no Chromium is installed: the page is not checked in a browser")
	}
	opts := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox,
		chromedp.Flag("disable-gpu", true), chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.UserDataDir(t.TempDir()))
	ctx, cancel := chromedp.NewExecAllocator(context.Background(), opts...)
	t.Cleanup(cancel)
	ctx, cancel = context.WithTimeout(ctx, 2*time.Minute)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	if err := chromedp.Do(ctx); err != nil {
		t.Skipf("Chromium does not start: %v", err)
	}
	return ctx
}

func open(t *testing.T, browser context.Context, path string) *tab {
	t.Helper()
	ctx, cancel := chromedp.NewContext(browser)
	t.Cleanup(cancel)
	b := &tab{t: t, ctx: ctx}
	err := chromedp.Listen(ctx, func(ev any) {
		b.mu.Lock()
		defer b.mu.Unlock()
		switch e := ev.(type) {
		case *network.EventRequestWillBeSent:
			if !strings.HasPrefix(e.Request.URL, "data:") && !strings.HasSuffix(strings.Split(e.Request.URL, "#")[0], ".html") {
				b.requests = append(b.requests, e.Request.URL)
			}
		case *runtime.EventExceptionThrown:
			b.faults = append(b.faults, e.ExceptionDetails.Text)
		case *runtime.EventConsoleAPICalled:
			b.faults = append(b.faults, fmt.Sprintf("console %s", e.Type))
		case *log.EventEntryAdded:
			b.faults = append(b.faults, e.Entry.Text)
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	b.do(chromedp.Func(func(ctx context.Context, x *chromedp.Target) error {
		if _, err := cdp.Call(ctx, x, network.Enable, network.EnableParams{}); err != nil {
			return err
		}
		_, err := cdp.Call(ctx, x, log.Enable, cdp.Empty{})
		return err
	}))
	b.do(chromedp.Navigate((&url.URL{Scheme: "file", Path: path}).String()))
	return b
}

func (b *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	if err := chromedp.Do(b.ctx, steps...); err != nil {
		b.t.Fatal(err)
	}
}

func eval[T any](b *tab, js string) T {
	b.t.Helper()
	v, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](js, chromedp.EvalAwaitPromise))
	if err != nil {
		b.t.Fatalf("%s: %v", js, err)
	}
	return v
}

func (b *tab) theme(scheme string, width int64) {
	b.t.Helper()
	b.do(chromedp.EmulateViewport(width, 900), chromedp.Func(func(ctx context.Context, x *chromedp.Target) error {
		_, err := cdp.Call(ctx, x, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
		return err
	}))
}

// quiet fails where the page asked for anything, or the console spoke.
func (b *tab) quiet() {
	b.t.Helper()
	b.mu.Lock()
	defer b.mu.Unlock()
	if len(b.requests) > 0 {
		b.t.Errorf("the page asked for %q", b.requests)
	}
	if len(b.faults) > 0 {
		b.t.Errorf("the console says %q", b.faults)
	}
}

// write publishes the view into a folder and gives the page's path.
func write(t *testing.T, dir, name string, p *page.Page) string {
	t.Helper()
	data, err := p.HTML()
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, name)
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestInABrowser(t *testing.T) {
	if testing.Short() {
		t.Skip("the browser is left out of a short run")
	}
	root := browser(t)
	dir := t.TempDir()
	plain := write(t, dir, "plain.html", view(t, filled(t), page.Options{}))
	settled := write(t, dir, "settled.html", view(t, filled(t), page.Options{SettledOnly: true}))
	evil := hostileDocument(t)
	bad := write(t, dir, "bad.html", view(t, evil, page.Options{}))
	lib := buildShelf(t, map[string]*workdoc.Document{"hub.md": filled(t), "evil.md": evil, "again.md": document(t, trailer())})

	t.Run("boxes are remembered", func(t *testing.T) {
		b := open(t, root, plain)
		const box = `document.querySelector('.steps input')`
		b.do(chromedp.Click(chromedp.CSS(".steps label")))
		if !eval[bool](b, box+".checked") {
			t.Fatal("the box does not tick")
		}
		b.do(chromedp.Reload())
		if !eval[bool](b, box+".checked") {
			t.Error("the tick is forgotten")
		}
		other := open(t, root, bad)
		if eval[bool](other, box+".checked") {
			t.Error("another job's page has the tick")
		}
		// The size that gloves need: 24 CSS px is what WCAG 2.2 (2.5.8) asks for.
		if h := eval[float64](b, box+".getBoundingClientRect().height"); h < 32 {
			t.Errorf("a box is %v px high", h)
		}
		b.do(chromedp.Click(chromedp.CSS("#forget")), chromedp.Reload())
		if eval[bool](b, box+".checked") {
			t.Error("the boxes are not as published")
		}
		b.quiet()
	})
	t.Run("units switch and are remembered", func(t *testing.T) {
		b := open(t, root, plain)
		shown := `[...document.querySelectorAll('[id="torque-spring-bolts"] .figure.confirmed .unit')].filter(e => e.offsetParent !== null && getComputedStyle(e).display !== 'none').map(e => e.textContent).join()`
		for _, c := range []struct{ unit, want string }{{"lbfft", "35 lbf·ft computed"}, {"lbfin", "416 lbf·in computed"}, {"nm", "47 N·m"}, {"lbfft", "35 lbf·ft computed"}} {
			b.do(chromedp.Click(chromedp.CSS("input[name=unit][value=" + c.unit + "]")))
			if got := eval[string](b, shown); got != c.want {
				t.Errorf("%s shows %q, want %q", c.unit, got, c.want)
			}
		}
		b.do(chromedp.Reload())
		if got := eval[string](b, shown); got != "35 lbf·ft computed" {
			t.Errorf("after a reload %q is shown", got)
		}
		// The angle of a value stays with it in every unit.
		if got := eval[string](b, `[...document.querySelectorAll('[id="torque-hub-nut"] .heard .unit')].map(e => e.textContent).join()`); strings.Count(got, "then 90°") != 3 {
			t.Errorf("the angle is not in every unit: %q", got)
		}
		b.quiet()
	})
	t.Run("keys alone", func(t *testing.T) {
		b := open(t, root, plain)
		b.do(chromedp.KeyEvent("\t"))
		if got := eval[string](b, "document.activeElement.className"); got != "skip" {
			t.Errorf("the first stop is %q", got)
		}
		b.do(chromedp.KeyEvent("\r"))
		if got := eval[string](b, "document.activeElement.id"); got != "open" {
			t.Errorf("the skip link leads to %q", got)
		}
		b.do(run(`document.querySelector('.steps input').focus()`), chromedp.KeyEvent(" "))
		if !eval[bool](b, "document.activeElement.checked") {
			t.Error("the space bar does not tick")
		}
	})
	t.Run("times seek the recording", func(t *testing.T) {
		clip := filepath.Join(dir, "clip.webm")
		makeClip(t, clip)
		doc := filled(t)
		doc.Job.VideoURL, doc.Record.Job.VideoURL = "clip.webm", "clip.webm"
		for i := range doc.Record.Steps {
			doc.Record.Steps[i].At = float64(i) + 0.5
		}
		b := open(t, root, write(t, dir, "video.html", view(t, doc, page.Options{})))
		b.quiet() // nothing is asked for before a time is pressed
		b.do(chromedp.Click(chromedp.CSS(".steps li:nth-child(2) a.at")))
		at := 0.0
		for range 50 {
			if at = eval[float64](b, "document.querySelector('video').currentTime"); at > 0 {
				break
			}
			time.Sleep(100 * time.Millisecond)
		}
		if at < 2.4 || at > 2.6 {
			t.Errorf("the recording stands at %v, want 2.5", at)
		}
	})
	t.Run("hostile content does nothing", func(t *testing.T) {
		for _, path := range []string{bad, filepath.Join(lib, "evil.html"), filepath.Join(lib, "index.html"), filepath.Join(lib, "open-ends.html"), filepath.Join(lib, "confirmed-values.html")} {
			b := open(t, root, path)
			b.theme("light", 360)
			// Everything that can be pressed is pressed, links to the web aside.
			eval[int](b, `(document.querySelectorAll('label,button,summary,a:not([href^=http])').forEach(e => e.click()), 1)`)
			time.Sleep(200 * time.Millisecond)
			if eval[bool](b, `window.acted !== undefined || document.querySelector('img, iframe, object, embed, a[href^="javascript:" i]') !== null`) {
				t.Errorf("%s: something acts", path)
			}
			if n := eval[int](b, `[...document.querySelectorAll('*')].filter(e => [...e.attributes].some(a => a.name.startsWith('on'))).length`); n > 0 {
				t.Errorf("%s: %d event handlers", path, n)
			}
			if w := eval[int](b, "document.documentElement.scrollWidth"); w > 360 {
				t.Errorf("%s: %d px wide at 360 px", path, w)
			}
			b.quiet()
		}
	})
	t.Run("the shelf is searched and sorted", func(t *testing.T) {
		b := open(t, root, filepath.Join(lib, "index.html"))
		names := `[...document.querySelectorAll('tbody tr')].filter(r => !r.hidden).map(r => r.querySelector('small').textContent).join()`
		b.do(chromedp.Focus(chromedp.CSS("#seek")), chromedp.KeyEvent("AGAIN"))
		if got := eval[string](b, names); got != "again.md" {
			t.Errorf("looking for AGAIN shows %q", got)
		}
		if got := eval[string](b, "document.getElementById('shown').textContent"); got != "1 of 3 shown" {
			t.Errorf("it says %q", got)
		}
		b.do(run(`(document.getElementById('seek').value = '', document.getElementById('seek').dispatchEvent(new Event('input')))`))
		b.do(chromedp.Click(chromedp.CSS("th:nth-child(6) button")))
		if got := eval[string](b, names); got != "evil.md,hub.md,again.md" {
			t.Errorf("sorted by open ends: %q", got)
		}
		if got := eval[string](b, `document.querySelector('[aria-sort]').textContent`); got != "Open ends" {
			t.Errorf("the sorted heading is %q", got)
		}
		b.do(chromedp.Click(chromedp.CSS(`tbody a[href="hub.html"]`)))
		b.do(chromedp.WaitReady(chromedp.CSS("#round")))
		b.quiet()
	})
	t.Run("print has every step", func(t *testing.T) {
		if _, err := exec.LookPath("pdftotext"); err != nil {
			t.Skip("pdftotext is not installed: the printed text is not read")
		}
		for name, paper := range map[string]chromedp.PaperSize{"A4": chromedp.PaperA4, "Letter": chromedp.PaperLetter} {
			b := open(t, root, plain)
			pdf, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPaper(paper)))
			if err != nil {
				t.Fatal(err)
			}
			cmd := exec.Command("pdftotext", "-layout", "-", "-")
			cmd.Stdin = bytes.NewReader(pdf)
			text, err := cmd.Output()
			if err != nil {
				t.Fatal(err)
			}
			got := strings.Join(strings.Fields(string(text)), " ")
			for _, s := range trailer().Steps {
				if !strings.Contains(got, s.Text[:len(s.Text)-8]) {
					t.Errorf("%s lacks step %q", name, s.Text)
				}
			}
			for _, want := range []string{"Not ready for use", "Not confirmed", "Fastener map", "open: split pin"} {
				if !strings.Contains(got, want) {
					t.Errorf("%s lacks %q", name, want)
				}
			}
		}
	})
	t.Run("audit", func(t *testing.T) {
		src, err := os.ReadFile(filepath.Join(modules(t, "axe-core"), "axe-core", "axe.min.js"))
		if err != nil {
			t.Fatal(err)
		}
		doc := filled(t)
		doc.Job.VideoURL = "clip.webm"
		media := write(t, dir, "media.html", view(t, doc, page.Options{Stills: []page.Still{{At: "1:39", Why: "just before the cap comes off", Alt: "Frame at 1:39", Image: "data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAA="}}}))
		for _, path := range []string{plain, settled, media, filepath.Join(lib, "index.html"), filepath.Join(lib, "open-ends.html"), filepath.Join(lib, "confirmed-values.html")} {
			b := open(t, root, path)
			eval[int](b, string(src)+"\n;1")
			for _, scheme := range []string{"light", "dark"} {
				for _, width := range []int64{360, 768, 1280} {
					b.theme(scheme, width)
					got := eval[audited](b, `axe.run(document, {runOnly: ['wcag2a','wcag2aa','wcag21a','wcag21aa','wcag22aa','best-practice']}).then(r => ({passes: r.passes.length,
						violations: r.violations.map(v => v.id + ': ' + v.nodes.slice(0, 3).map(n => n.html + ' ' + n.failureSummary).join(' / '))}))`)
					for _, v := range got.Violations {
						t.Errorf("%s, %s, %d px: %s", filepath.Base(path), scheme, width, v)
					}
					if got.Passes < 15 {
						t.Errorf("only %d checks passed: the audit did not look", got.Passes)
					}
					if w := eval[int64](b, "document.documentElement.scrollWidth"); w > width {
						t.Errorf("%s: %d px wide at %d px", filepath.Base(path), w, width)
					}
				}
			}
		}
	})
	if out := os.Getenv("WRENCHWORD_SHOTS"); out != "" {
		shots(t, root, out, map[string]string{"page": plain, "settled": settled, "bad": bad,
			"index": filepath.Join(lib, "index.html"), "open": filepath.Join(lib, "open-ends.html"), "values": filepath.Join(lib, "confirmed-values.html")})
	}
}

// audited is what the accessibility audit says of a page.
type audited struct {
	Passes     int      `json:"passes"`
	Violations []string `json:"violations"`
}

// shots writes pictures of each page for a person to look at.
func shots(t *testing.T, root context.Context, out string, pages map[string]string) {
	for name, path := range pages {
		b := open(t, root, path)
		for _, scheme := range []string{"light", "dark"} {
			for _, width := range []int64{360, 1280} {
				b.theme(scheme, width)
				png, err := chromedp.Run(b.ctx, chromedp.FullScreenshot(100))
				if err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(filepath.Join(out, fmt.Sprintf("%s-%s-%d.png", name, scheme, width)), png, 0o644); err != nil {
					t.Fatal(err)
				}
			}
		}
	}
}

// hostileDocument holds payloads in what was heard and in what the person wrote.
func hostileDocument(t *testing.T) *workdoc.Document {
	doc := document(t, hostile(trailer()))
	for _, ref := range doc.Refs.Open {
		doc.Answers[ref] = workdoc.Answer{Text: payloads, Source: payloads}
	}
	for _, r := range workdoc.Round(doc.Record, doc.Refs) {
		doc.Rows[r.Ref] = workdoc.Row{Confirmed: "12 N·m " + payloads, Source: payloads, Tightened: true, When: payloads}
	}
	doc.Own = []workdoc.OwnRow{{Name: payloads, Row: workdoc.Row{Confirmed: "12 N·m", Source: payloads}}}
	doc.Claims = []workdoc.Claim{{Who: payloads, When: payloads, Text: payloads, Status: payloads}}
	doc.Revisions = []workdoc.Revision{{N: 1, Date: payloads, What: payloads}}
	doc.Notes = map[string][]string{"": {payloads}}
	return doc
}

// makeClip makes a recording of eight seconds, or skips where there is no ffmpeg.
func makeClip(t *testing.T, path string) {
	t.Helper()
	if _, err := exec.LookPath("ffmpeg"); err != nil {
		t.Skip("ffmpeg is not installed: no recording is made")
	}
	out, err := exec.Command("ffmpeg", "-v", "error", "-y", "-f", "lavfi", "-i", "testsrc=duration=8:size=320x180:rate=10",
		"-c:v", "libvpx", "-g", "10", "-b:v", "200k", path).CombinedOutput()
	if err != nil {
		t.Fatalf("make a recording: %v: %s", err, out)
	}
}

// buildShelf builds a shelf of documents by file name and gives its folder.
func buildShelf(t testing.TB, docs map[string]*workdoc.Document) string {
	t.Helper()
	from, to := t.TempDir(), t.TempDir()
	for name := range docs {
		// What a file holds is the loader's affair; the shelf asks for the mark.
		if err := os.WriteFile(filepath.Join(from, name), []byte("# "+name+" "+workdoc.Mark+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	f, err := page.OpenFolder(to)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	res, err := shelf.Build(context.Background(), f, shelf.Options{
		From: from, Page: page.Options{Today: day},
		Load: func(path string) (*workdoc.Document, error) { return docs[filepath.Base(path)], nil },
	})
	if err != nil || len(res.Faults) > 0 {
		t.Fatal(err, res.Faults)
	}
	return to
}

// run runs a script for what it does.
func run(js string) chromedp.Action[chromedp.Void] {
	return func(ctx context.Context, x *chromedp.Target) (chromedp.Void, error) {
		_, err := chromedp.Evaluate[int]("("+js+", 1)")(ctx, x)
		return chromedp.Void{}, err
	}
}
