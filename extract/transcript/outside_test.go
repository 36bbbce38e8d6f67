package transcript

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"path/filepath"
	"slices"
	"sort"
	"strings"
	"testing"
)

// expCue is a cue of the outside sets' expected.json.
type expCue struct {
	Start, End *float64
	Text       string
}

func readSet(t *testing.T, set string, into any) string {
	t.Helper()
	dir := filepath.Join(shared(t), "outside", set)
	data, err := os.ReadFile(filepath.Join(dir, "expected.json"))
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, into); err != nil {
		t.Fatal(err)
	}
	return dir
}

func readData(t *testing.T, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func squash(s string) string { return strings.Join(strings.Fields(s), " ") }

// sameCues compares to 1 ms, texts with white space made one blank; cues
// without text are left out on both sides.
func sameCues(got []Cue, want []expCue) string {
	var g []Cue
	for _, c := range got {
		if squash(c.Text) != "" {
			g = append(g, c)
		}
	}
	want = slices.DeleteFunc(slices.Clone(want), func(c expCue) bool { return squash(c.Text) == "" })
	for i := range max(len(g), len(want)) {
		switch {
		case i >= len(g):
			return "missing: " + squash(want[i].Text)
		case i >= len(want):
			return "too much: " + squash(g[i].Text)
		case squash(g[i].Text) != squash(want[i].Text):
			return "text " + squash(g[i].Text) + " | want " + squash(want[i].Text)
		case want[i].Start != nil && math.Abs(*want[i].Start-g[i].Start) > 0.001:
			return "start of " + squash(g[i].Text)
		case want[i].End != nil && math.Abs(*want[i].End-g[i].End) > 0.001:
			return "end of " + squash(g[i].Text)
		}
	}
	return ""
}

func inTime(cues []Cue) []Cue {
	cues = slices.Clone(cues)
	sort.SliceStable(cues, func(a, b int) bool { return cues[a].Start < cues[b].Start })
	return cues
}

// onPurpose are the files of the outside sets that are read otherwise than
// their expectation has it. Each must differ, or it leaves the list.
var onPurpose = map[string]string{
	"webvtt-vttjs/file-layout__bom-garbage-data.vtt":      "no WebVTT by its first line, but the cues are good: they are read as SubRip",
	"webvtt-vttjs/file-layout__newline-before-webvtt.vtt": "as bom-garbage-data.vtt",
	"subs-androidx/srt/typical_bad_timestamps.srt":        "fractions of two or four digits are read (the set calls this lenient)",
	"subs-androidx/vtt/typical_with_bad_timestamps.vtt":   "no cue of the file has good times: those that can be understood are read, with a warning; they are four of six",
	"subs-astisub/example-in-merging-style.ttml":          "a line break between text and span is a blank (XML white space in mixed content; the library loses it)",
	"asr-json/speechmatics__punctuation.json":             "words tied by a hyphen or a sign that attaches to both sides are one word of the talk",
}

// report fails on a difference that is not on purpose, and on one that is but is gone.
func report(t *testing.T, file, diff string) {
	t.Helper()
	switch why, listed := onPurpose[file]; {
	case diff != "" && !listed:
		t.Error(diff)
	case diff == "" && listed:
		t.Errorf("no longer read otherwise (%s): take it off the list", why)
	}
}

// sameWords compares the words with times of their own with those and their words by a recogniser, or by construction.
func sameWords(t *Talk, want []expCue) string {
	var got []Word
	for _, w := range t.Words {
		if w.Is(Exact) {
			got = append(got, w)
		}
	}
	for i, w := range want {
		if i >= len(got) {
			return "missing: " + w.Text
		}
		text := t.Text[got[i].Lo:got[i].Hi]
		if text != w.Text && strings.Trim(text, ".,?!*") != strings.Trim(w.Text, ".,?!*") {
			return "word " + text + " | want " + w.Text
		}
		if math.Abs(got[i].At-*w.Start) > 0.001 {
			return "time of " + text
		}
	}
	return ""
}

func TestOwnTranscripts(t *testing.T) {
	var want map[string]struct {
		Cues   []expCue
		Words  []expCue
		Spoken []expCue
		Note   string
	}
	dir := readSet(t, "own-transcripts", &want)
	for name, w := range want {
		t.Run(name, func(t *testing.T) {
			clip, err := Read(name, readData(t, filepath.Join(dir, name)), Options{})
			if w.Cues == nil && w.Words == nil || len(w.Cues) > 0 && w.Cues[0].Start == nil {
				if !errors.Is(err, ErrNoTimedText) {
					t.Fatalf("not refused: %v", err)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			talk := Join(clip)
			if w.Words != nil {
				if d := sameWords(talk, w.Words); d != "" {
					t.Error(d)
				}
				return
			}
			if d := sameCues(inTime(clip.Cues), w.Cues); d != "" {
				t.Errorf("%s (note: %s) %v", d, w.Note, clip.Warnings)
			}
			if w.Spoken == nil {
				w.Spoken = w.Cues
			}
			var all []string
			for _, c := range w.Spoken {
				all = append(all, squash(c.Text))
			}
			if want := squash(strings.Join(all, " ")); talk.Text != want {
				t.Errorf("talk %s\nwant %s", talk.Text, want)
			}
		})
	}
}

func TestWebVTTSets(t *testing.T) {
	for _, set := range []string{"webvtt-wpt", "webvtt-spec", "webvtt-vttjs"} {
		var want map[string][]expCue
		dir := readSet(t, set, &want)
		files, _ := filepath.Glob(filepath.Join(dir, "*.vtt"))
		for _, f := range files {
			name := filepath.Base(f)
			t.Run(set+"/"+name, func(t *testing.T) { checkVTT(t, set, name, readData(t, f), want) })
		}
	}
}

// checkVTT compares with cues whose text is raw.
func checkVTT(t *testing.T, set, name string, data []byte, all map[string][]expCue) {
	want, listed := all[name]
	clip, err := Read(name, data, Options{})
	if err != nil && !errors.Is(err, ErrNoTimedText) {
		t.Fatal(err)
	}
	if !listed {
		return
	}
	if want == nil { // not WebVTT
		if err == nil && clip.Format == "webvtt" {
			t.Error("read as WebVTT")
		}
		return
	}
	plainText(want)
	var got []Cue
	if clip != nil {
		got = clip.Cues
	}
	report(t, set+"/"+name, sameCues(got, want))
}

// plainText takes the markup out of cues of a set that keeps it; how that is
// done is tested by TestWebVTTCueText.
func plainText(cues []expCue) {
	for i := range cues {
		var b textBuilder
		cues[i].Text, _ = b.vtt(cues[i].Text, *cues[i].Start, *cues[i].End)
	}
}

func TestWebVTTCueText(t *testing.T) {
	var cases []struct{ From, Input, Text string }
	path := filepath.Join(shared(t), "outside", "webvtt-cuetext", "cases.json")
	if err := json.Unmarshal(readData(t, path), &cases); err != nil {
		t.Fatal(err)
	}
	for _, c := range cases {
		p := &parser{text: "WEBVTT\n\n00:00.000 --> 16:40.000\n" + strings.ReplaceAll(c.Input, "\x00", "\uFFFD"), clip: &Clip{}}
		p.opt = p.opt.withDefaults()
		if err := parseVTT(p); err != nil {
			t.Fatal(err)
		}
		got := p.clip.Cues[0].Text
		if got != c.Text {
			t.Errorf("%s: %q gave %q, want %q", c.From, c.Input, got, c.Text)
		}
	}
}

func TestSubtitleSets(t *testing.T) {
	type exp struct {
		Cues       []expCue
		AlsoRight  []expCue `json:"also_right"`
		Paragraphs []expCue
		Lenient    bool
		RawText    bool `json:"raw_text"`
	}
	for _, set := range []string{"subs-androidx", "subs-astisub", "subs-npm", "ttml-imsc"} {
		var want map[string]exp
		dir := readSet(t, set, &want)
		_ = filepath.WalkDir(dir, func(f string, d os.DirEntry, err error) error {
			if err != nil || d.IsDir() || strings.Contains(f, "expected.json") || strings.HasSuffix(f, ".md") || strings.HasSuffix(f, "LICENSE.txt") {
				return nil
			}
			name, _ := filepath.Rel(dir, f)
			t.Run(set+"/"+name, func(t *testing.T) {
				clip, err := Read(name, readData(t, f), Options{})
				if err != nil && !errors.Is(err, ErrNoTimedText) {
					t.Fatal(err)
				}
				var got []Cue
				if clip != nil {
					got = clip.Cues
				}
				w, ok := want[name]
				if !ok {
					return
				}
				cues := w.Cues
				if cues == nil {
					cues = w.Paragraphs
				}
				if w.RawText {
					plainText(cues)
				}
				diff := sameCues(got, cues)
				if diff != "" && w.AlsoRight != nil && sameCues(got, w.AlsoRight) == "" {
					diff = ""
				}
				report(t, set+"/"+filepath.ToSlash(name), diff)
			})
			return nil
		})
	}
}

func TestWebVTTPySet(t *testing.T) {
	var set map[string]*struct{ Cues []expCue }
	dir := readSet(t, "subs-webvtt-py", &set)
	want := map[string][]expCue{}
	for name, w := range set {
		if want[name] = nil; w != nil {
			want[name] = w.Cues
		}
	}
	files, _ := filepath.Glob(filepath.Join(dir, "*.*"))
	for _, f := range files {
		name := filepath.Base(f)
		if ext := filepath.Ext(name); ext != ".vtt" && ext != ".srt" && ext != ".sbv" {
			continue
		}
		t.Run(name, func(t *testing.T) { checkVTT(t, "subs-webvtt-py", name, readData(t, f), want) })
	}
}

func TestRecogniserSet(t *testing.T) {
	var want map[string]struct{ Words, Segments []expCue }
	dir := readSet(t, "asr-json", &want)
	for name, w := range want {
		t.Run(name, func(t *testing.T) {
			clip, err := Read(name, readData(t, filepath.Join(dir, name)), Options{})
			if len(w.Words) == 0 && len(w.Segments) == 0 {
				if !errors.Is(err, ErrNoTimedText) {
					t.Fatalf("not refused: %v", err)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if w.Segments != nil {
				if d := sameCues(clip.Cues, w.Segments); d != "" {
					t.Error(d)
				}
			}
			if w.Words != nil {
				report(t, "asr-json/"+name, sameWords(Join(clip), w.Words))
			}
		})
	}
}
