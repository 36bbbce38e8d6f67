package page_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	gmhtml "github.com/yuin/goldmark/renderer/html"
	"go.yaml.in/yaml/v3"

	"wrenchword/extract"
	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
	"wrenchword/render"
	"wrenchword/render/page"
	"wrenchword/render/workdoc"
)

var forms = map[string]func(*page.Page) ([]byte, error){
	"html": (*page.Page).HTML, "markdown": (*page.Page).Markdown, "mediawiki": (*page.Page).MediaWiki,
}

// Every form says of each value in words what it is, and claims change nothing.
func TestEveryFormSaysWhatAValueIs(t *testing.T) {
	p := view(t, filled(t), page.Options{})
	for name, draw := range forms {
		out, err := draw(p)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		s := strings.NewReplacer("\\[", "[", "\\]", "]", "&#91;", "[", "&#93;", "]").Replace(string(out))
		for _, want := range []string{
			"heard, not confirmed", "confirmed by a person, with the source they gave", "page 12, this axle",
			"90 N·m [heard, not confirmed]", "written, not confirmed: its source is general",
			"20 N·m, then turn by 90°", "Not ready for use", "A claim settles nothing by itself", "90 N·m is too low",
			"first written",
		} {
			if !strings.Contains(s, want) {
				t.Errorf("%s lacks %q", name, want)
			}
		}
		if err := page.Untouched(out); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, place := range p.Round {
		for _, r := range place.Rows {
			// NIST SP 811: 1 lbf·ft is 1.355 818 N·m, 1 lbf·in 0.112 984 8 N·m; printed no finer than said.
			if v := r.Confirmed; r.Name == "spring bolts" && (v.NM != "47" || v.LbfFt != "35" || v.LbfIn != "416" || v.NMComputed || !v.LbfInComputed) {
				t.Errorf("47 N·m is shown as %+v", *v)
			}
			if r.Name == "hub nut" && r.Heard[0].Then != " then 90°" {
				t.Errorf("the angle is lost: %+v", r.Heard[0])
			}
			if r.Name == "hub nut" && r.State != "heard" {
				t.Errorf("a value from a general table counts as %q", r.State)
			}
		}
	}
}

// What the person wrote in place of the tool's words, added, or took out counts.
func TestThePersonsWords(t *testing.T) {
	md, err := render.Markdown(trailer(), nil)
	if err != nil {
		t.Fatal(err)
	}
	s := string(md)
	for _, c := range [][2]string{
		{"- [ ] 2. Undo the wheel bolts. (1:40)", "- [x] 2. Undo the four wheel bolts crosswise. (1:40)"},
		{"- [ ] socket, 19 mm (0:20", "- [ ] deep socket, 19 mm (0:20"},
		{"Tighten the wheel bolts to 90 N·m. (16:40)", "Tighten the wheel bolts to 95 N·m. (16:40)"},
	} {
		if !strings.Contains(s, c[0]) {
			t.Fatalf("the document lacks %q", c[0])
		}
		s = strings.Replace(s, c[0], c[1], 1)
	}
	lines := strings.Split(s, "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, "- [ ] 3. Tap the dust cap off.") {
			lines = slices.Delete(lines, i, i+1)
			break
		}
	}
	for i, l := range lines {
		if strings.HasPrefix(l, "- [ ] 1. Chock") {
			lines = slices.Insert(lines, i+1, "  - use the big chock")
			break
		}
	}
	doc, err := workdoc.Read([]byte(strings.Join(lines, "\n")))
	if err != nil {
		t.Fatal(err)
	}
	for name, draw := range forms {
		out, err := draw(view(t, doc, page.Options{}))
		if err != nil {
			t.Fatal(err)
		}
		s := strings.NewReplacer("\\[", "[", "\\]", "]", "&#91;", "[", "&#93;", "]", "2\\.", "2.", "<span class=\"n\">", "", "</span>", "").Replace(string(out))
		for _, want := range []string{"2. Undo the four wheel bolts crosswise.", "deep socket, 19 mm", "95 N·m [written, not confirmed]", "use the big chock", "took out: 1"} {
			if !strings.Contains(s, want) {
				t.Errorf("%s lacks %q", name, want)
			}
		}
		for _, gone := range []string{"2. 2.", "crosswise. (1:40) (", "Tap the dust cap off"} {
			if strings.Contains(s, gone) {
				t.Errorf("%s says %q", name, gone)
			}
		}
	}
}

// The order is that of the working document: what is not settled comes first.
func TestOrder(t *testing.T) {
	p := view(t, filled(t), page.Options{})
	for name, draw := range forms {
		out, _ := draw(p)
		s := string(out)
		if i := strings.Index(s, "<main>"); i > 0 {
			s = s[i:]
		}
		last := -1
		for _, h := range []string{"Before you rely on this", "Not settled", "Tightening round", "The work", "What is needed", "What came off", "How this was made", "Revisions"} {
			at := strings.Index(s, h)
			if at <= last {
				t.Errorf("%s: %q stands at %d, after %d was expected", name, h, at, last)
			}
			last = at
		}
	}
}

func TestSettledOnlyLeavesOutWhatNobodyConfirmed(t *testing.T) {
	p := view(t, filled(t), page.Options{SettledOnly: true})
	for name, draw := range forms {
		out, err := draw(p)
		if err != nil {
			t.Fatal(err)
		}
		s := string(out)
		// In figures, in units, in words, written from a weak source, and in a claim.
		for _, gone := range []string{"90 N·m", "66.4", "ninety newton", "20 N·m", "twenty newton", "25 N·m", "18.4", "thirty five foot"} {
			if strings.Contains(s, gone) {
				t.Errorf("%s still says %q", name, gone)
			}
		}
		for _, kept := range []string{"47 N·m", "left out", "Left out does not mean not needed"} {
			if !strings.Contains(s, kept) {
				t.Errorf("%s lacks %q", name, kept)
			}
		}
	}
}

func TestAnswersAreDrawnAndActNot(t *testing.T) {
	doc := filled(t)
	out, err := view(t, doc, page.Options{}).HTML()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"<em>just</em> felt, 5*6*7 is no emphasis", `href="https://sheet.example/a"`} {
		if !strings.Contains(string(out), want) {
			t.Errorf("lacks %q", want)
		}
	}
	a := doc.Answers["ask-look-up-bearing-preload"]
	a.Text = "[a](javascript:alert(1)) [b](data:text/html,x) ![c](https://out.example/c.png) <b onclick=x>d</b> # e"
	doc.Answers["ask-look-up-bearing-preload"] = a
	out, _ = view(t, doc, page.Options{}).HTML()
	for _, never := range []string{"javascript:alert", "data:text", "<img", "<b onclick", "out.example"} {
		if strings.Contains(string(out), never) {
			t.Errorf("holds %q", never)
		}
	}
}

func TestFolderKeepsWhatPeopleWrote(t *testing.T) {
	dir := t.TempDir()
	f, err := page.OpenFolder(filepath.Join(dir, "wiki"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	p := view(t, filled(t), page.Options{})
	for name, draw := range forms {
		out, _ := draw(p)
		if err := f.Publish(name, out, false); err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(dir, "wiki", name)
		// A wiki that saves with other line ends has edited nothing.
		if err := os.WriteFile(path, []byte(strings.ReplaceAll(string(out), "\n", "\r\n")), 0o644); err != nil {
			t.Fatal(err)
		}
		if err := f.Publish(name, out, false); err != nil {
			t.Errorf("%s with other line ends: %v", name, err)
		}
		edited := strings.Replace(string(out), "Chock", "Always chock", 1)
		if err := os.WriteFile(path, []byte(edited), 0o644); err != nil {
			t.Fatal(err)
		}
		if err := f.Publish(name, out, false); !errors.Is(err, page.ErrEdited) {
			t.Errorf("%s: an edited page gave %v", name, err)
		}
		if got, _ := os.ReadFile(path); string(got) != edited {
			t.Errorf("%s: the edit is gone", name)
		}
		if err := f.Publish(name, out, true); err != nil {
			t.Error(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "wiki", "mine"), []byte("my own"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := f.Publish("mine", []byte("x"), false); !errors.Is(err, page.ErrForeign) {
		t.Errorf("a foreign page gave %v", err)
	}
	for _, bad := range []string{"../out.html", "/tmp/out.html", "a/../../out.html"} {
		if err := f.Publish(bad, []byte("x"), true); err == nil {
			t.Errorf("%s was written", bad)
		}
	}
	if err := os.Symlink(filepath.Join(dir, "secret"), filepath.Join(dir, "wiki", "link.html")); err == nil {
		_ = f.Publish("link.html", []byte("x"), true)
		if _, err := os.Stat(filepath.Join(dir, "secret")); err == nil {
			t.Error("a link led out of the folder")
		}
	}
	doc := []byte("# T <!-- @document -->\n")
	if err := os.WriteFile(filepath.Join(dir, "wiki", "job.md"), doc, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := f.Publish("job.md", []byte("x"), true); err == nil {
		t.Error("a working document was written over")
	}
	left, _ := os.ReadDir(dir)
	if len(left) != 1 {
		t.Errorf("something was written beside the folder: %v", left)
	}
}

func TestSafeName(t *testing.T) {
	taken := map[string]bool{}
	for _, c := range []struct{ path, want string }{
		{"a/Hub Job.vtt", "hub-job"}, {"b/hub_job.srt", "hub-job-2"}, {`..\..\evil.txt`, "evil"}, {"../../..", "job"},
		{"CON.vtt", "job-con"}, {"lpt1.md", "job-lpt1"}, {"index.md", "job-index"}, {"Öl & Fett.md", "öl-fett"},
		{"...", "job-2"}, {"<script>.vtt", "script"}, {"", "job-3"}, {strings.Repeat("é", 300) + ".md", strings.Repeat("é", 40)},
	} {
		if got := page.SafeName(c.path, taken); got != c.want {
			t.Errorf("SafeName(%q) = %q, want %q", c.path, got, c.want)
		}
	}
}

// The front matter is read by a YAML library and holds the texts as they were.
func TestFrontMatter(t *testing.T) {
	doc := filled(t)
	doc.Job.Title, doc.Job.Year = "a: \"b\"\n--- # 'c'", "010"
	out, err := view(t, doc, page.Options{}).Markdown()
	if err != nil {
		t.Fatal(err)
	}
	parts := strings.SplitN(string(out), "---\n", 3)
	var front map[string]any
	if err := yaml.Unmarshal([]byte(parts[1]), &front); err != nil {
		t.Fatal(err)
	}
	if front["title"] != `a: "b" --- # 'c'` || front["year"] != "010" {
		t.Errorf("front matter reads as %v", front)
	}
}

// Hostile text stays text in the Markdown page, read by a parser that lets raw
// HTML through, and no form keeps a mark that turns the direction of a line.
func TestHostileText(t *testing.T) {
	calm := view(t, document(t, trailer()), page.Options{})
	p := view(t, hostileDocument(t), page.Options{})
	for name, draw := range forms {
		out, err := draw(p)
		if err != nil {
			t.Fatal(err)
		}
		if strings.ContainsAny(string(out), "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069") {
			t.Errorf("%s keeps a direction mark", name)
		}
	}
	read := func(p *page.Page) string {
		out, err := p.Markdown()
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		md := goldmark.New(goldmark.WithExtensions(extension.GFM), goldmark.WithRendererOptions(gmhtml.WithUnsafe()))
		if err := md.Convert([]byte(strings.SplitN(string(out), "---\n", 3)[2]), &b); err != nil {
			t.Fatal(err)
		}
		return b.String()
	}
	evil := hostileDocument(t)
	evil.Own = nil // it would have a table of its own
	got, want := read(view(t, evil, page.Options{})), read(calm)
	for _, tag := range []string{"<script", "<img", "<svg", "<style", "<a ", "<a>", "<code", "<del", "</script", "<nowiki"} {
		if strings.Contains(got, tag) {
			t.Errorf("the Markdown page draws %s", tag)
		}
	}
	for _, tag := range []string{"<h1", "<h2", "<table"} {
		if strings.Count(got, tag) != strings.Count(want, tag) {
			t.Errorf("%d of %s, want %d", strings.Count(got, tag), tag, strings.Count(want, tag))
		}
	}
}

// TestDoubtsAreDrawn: words that may leave something open stand in each form, until they are ticked;
// those with a figure in them are left out with the values.
func TestDoubtsAreDrawn(t *testing.T) {
	doc := document(t, trailer())
	for _, c := range []struct {
		settled, ticked bool
		want            int
	}{{false, false, 2}, {true, false, 1}, {false, true, 1}} {
		doc.Ticks[doc.Refs.Doubts[0]] = c.ticked
		p := view(t, doc, page.Options{SettledOnly: c.settled})
		if len(p.Doubts) != c.want {
			t.Errorf("%+v: %d doubts", c, len(p.Doubts))
		}
		for name, draw := range forms {
			out, err := draw(p)
			if err != nil {
				t.Fatal(err)
			}
			if got := strings.Contains(string(out), "the other side I"); got == c.ticked || !strings.Contains(string(out), "may leave something open") {
				t.Errorf("%s, %+v: the doubt is drawn: %v", name, c, got)
			}
		}
	}
}

// modules is the folder of the npm packages that some checks need, given by
// WRENCHWORD_NODE_MODULES; without it, or without the package, the test is skipped.
func modules(t *testing.T, name string) string {
	t.Helper()
	dir := os.Getenv("WRENCHWORD_NODE_MODULES")
	if dir == "" {
		t.Skipf("WRENCHWORD_NODE_MODULES is not set: no check with %s", name)
	}
	if _, err := os.Stat(filepath.Join(dir, name)); err != nil {
		t.Skipf("%s is not in WRENCHWORD_NODE_MODULES", name)
	}
	return dir
}

// A parser of MediaWiki's markup (wtf_wikipedia, from the npm registry) finds no
// template, file, link or tag in hostile text, and all the sections and rows.
func TestMediaWikiReadByAParser(t *testing.T) {
	dir := modules(t, "wtf_wikipedia")
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("node is not installed: no check of the MediaWiki markup by a parser")
	}
	script := `const wtf = require(process.argv[1] + "/wtf_wikipedia"); const read = wtf.default || wtf;
let s = ""; process.stdin.on("data", d => s += d).on("end", () => {
  const d = read(s);
  console.log(JSON.stringify({sections: d.sections().map(x => x.title()), templates: d.templates().length, images: d.images().length,
    links: d.links().map(l => l.href()), bold: d.sentences().flatMap(x => x.bolds()), tables: d.tables().map(x => x.json().length), text: d.text()}));
});`
	read := func(in []byte) (out struct {
		Sections  []string
		Templates int
		Images    int
		Links     []string
		Tables    []int
		Text      string
	}) {
		cmd := exec.Command(node, "-e", script, dir)
		cmd.Stdin = strings.NewReader(string(in))
		data, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("%v: %s", err, data)
		}
		if err := json.Unmarshal(data, &out); err != nil {
			t.Fatalf("%v: %s", err, data)
		}
		return out
	}
	doc := filled(t)
	doc.Record.Job.VideoURL = "https://clips.example/hub?t={t}"
	plain, err := view(t, doc, page.Options{}).MediaWiki()
	if err != nil {
		t.Fatal(err)
	}
	got := read(plain)
	for _, want := range []string{"Not settled", "Tightening round", "The work", "Taking apart", "What is needed", "Revisions"} {
		found := false
		for _, s := range got.Sections {
			found = found || s == want
		}
		if !found {
			t.Errorf("the parser finds no section %q in %q", want, got.Sections)
		}
	}
	rows := 0
	for _, n := range got.Tables {
		rows += n
	}
	if rows != 5 {
		t.Errorf("the parser finds %d rows of the tightening round in %d tables, want 5", rows, len(got.Tables))
	}
	if len(got.Links) == 0 || got.Templates+got.Images != 0 {
		t.Errorf("links %d, templates %d, images %d", len(got.Links), got.Templates, got.Images)
	}
	bad, err := view(t, document(t, hostile(trailer())), page.Options{}).MediaWiki()
	if err != nil {
		t.Fatal(err)
	}
	worse := read(bad)
	if worse.Templates+worse.Images+len(worse.Links) != 0 {
		t.Errorf("hostile text acts: %d templates, %d images, links %q", worse.Templates, worse.Images, worse.Links)
	}
	calm, err := view(t, document(t, trailer()), page.Options{}).MediaWiki()
	if err != nil {
		t.Fatal(err)
	}
	// That parser takes no heading of more than 200 characters, so the two places
	// of the round, which are hostile here, are left to its text.
	var want []string
	for _, s := range read(calm).Sections {
		if s != "hub" && s != "axle" {
			want = append(want, s)
		}
	}
	if strings.Join(worse.Sections, "|") != strings.Join(want, "|") {
		t.Errorf("hostile text makes the sections %.3000q, want %q", worse.Sections, want)
	}
	if !strings.Contains(worse.Text, "Undo the wheel bolts") {
		t.Error("the text is gone")
	}
}

// A value is left out like any other where its unit was not said with it, or nowhere in the talk:
// in the round, the steps, the questions and what is quoted.
func TestSettledOnlyLeavesOutAValueWithoutUnit(t *testing.T) {
	for _, x := range []struct{ talk, value, word string }{
		{"[0:00] The blanket is off.\n\n[0:06] Bar back on its hook, two bar bolts in. Torque wrench on those, thirty-seven. Click.\n\n[0:20] Pawl in. Guard on.\n", "37", "thirty-seven"},
		{"[0:00] Axle nut, ninety-one newton metres. Click.\n\n[0:08] Caliper on. Caliper bolts in, and forty on those, never more than that or they snap.\n\n[0:16] I have forty on the top one, and the bottom one I've only nipped by hand, so that's still to do.\n", "40", "forty"},
	} {
		clip, err := transcript.Read("bar.txt", []byte(x.talk), transcript.Options{})
		if err != nil {
			t.Fatal(err)
		}
		rec := extract.Extract(transcript.Join(clip), lexicon.Default(), extract.Job{})
		if !slices.ContainsFunc(rec.Torques, func(q extract.Torque) bool {
			return fmt.Sprint(q.Said.Low) == x.value && (q.Said.Unit == "" || q.UnitFrom != "")
		}) {
			t.Fatalf("heard %+v", rec.Torques)
		}
		doc := document(t, rec)
		says := regexp.MustCompile(`(?i)[ >]` + x.value + `[ ,<.]|` + x.word) // not as part of a sum
		for name, draw := range forms {
			for settled, want := range map[bool]bool{false: true, true: false} {
				out, err := draw(view(t, doc, page.Options{SettledOnly: settled}))
				if err != nil {
					t.Fatal(err)
				}
				if settled && regexp.MustCompile(`confirmed it(]|\\\\]|&#93;) N`).Match(out) {
					t.Errorf("%s: a unit is left where its value was", name)
				}
				if got := says.Match(out); got != want {
					t.Errorf("%s, settled only %v: says %s %v: %s", name, settled, x.value, got, says.Find(out))
				}
			}
		}
	}
}
