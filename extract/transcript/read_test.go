package transcript

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
	u16 "unicode/utf16"
)

func TestDecode(t *testing.T) {
	utf16Bytes := func(s string, little, mark bool) []byte {
		var out []byte
		put := func(u uint16) {
			if little {
				out = append(out, byte(u), byte(u>>8))
			} else {
				out = append(out, byte(u>>8), byte(u))
			}
		}
		if mark {
			put(0xFEFF)
		}
		for _, u := range u16.Encode([]rune(s)) {
			put(u)
		}
		return out
	}
	const long = "1\n00:00:01,000 --> 00:00:02,000\nwarm it to 60 °C, then “stop” 🔧\n"
	for name, c := range map[string]struct {
		in    []byte
		want  string
		doubt bool
	}{
		"utf-8":               {[]byte(long), long, false},
		"byte order mark":     {[]byte("\uFEFF" + long), long, false},
		"utf-16 le, mark":     {utf16Bytes(long, true, true), long, false},
		"utf-16 be, mark":     {utf16Bytes(long, false, true), long, false},
		"utf-16 le, no mark":  {utf16Bytes(long, true, false), long, true},
		"utf-16 be, no mark":  {utf16Bytes(long, false, false), long, true},
		"half a pair":         {[]byte{0xFF, 0xFE, 'a', 0, 0x3D, 0xD8, 'b', 0}, "a\uFFFDb", false},
		"odd byte at the end": {[]byte{0xFF, 0xFE, 'a', 0, 'b'}, "a\uFFFD", false},
		"windows-1252":        {[]byte("60 \xB0C \x93ok\x94 \xBD"), "60 °C “ok” ½", true},
		"one bad byte":        {[]byte("60 °C and ½ in \xFF"), "60 °C and ½ in \uFFFD", true},
		"late degree sign":    {[]byte(strings.Repeat("a", 3000) + "°"), strings.Repeat("a", 3000) + "°", false},
		"crlf":                {[]byte("a\r\nb\r\n"), "a\nb\n", false},
		"cr":                  {[]byte("a\rb\r"), "a\nb\n", false},
		"mixed":               {[]byte("a\r\r\nb\n\rc"), "a\n\nb\n\nc", false},
		"nul":                 {[]byte("a\x00b"), "a\uFFFDb", false},
		"empty":               {nil, "", false},
	} {
		got, doubt := decode(c.in)
		if got != c.want || (doubt != "") != c.doubt {
			t.Errorf("%s: %.80q (doubt: %q)", name, got, doubt)
		}
	}
}

// The shapes of timed plain text of DESIGN §4, and some more that people paste.
func TestPlainText(t *testing.T) {
	for name, c := range map[string]struct {
		in, want string
		warnings int
	}{
		"brackets":       {"[0:41] one\n[1:12:08] two", "41:one|4328:two", 0},
		"round":          {"(0:41) one\n(1:12:08) two", "41:one|4328:two", 0},
		"bare":           {"0:41 one\n00:42 two\n0:00:43 three\n1:00:00 four", "41:one|42:two|43:three|3600:four", 0},
		"fraction":       {"[0:41.5] one\n[00:00:42,250] two", "41.5:one|42.25:two", 0},
		"heading":        {"# A talk\n\nAbout a pump.\n\n[0:01] one", "1:one", 1},
		"heading only":   {"# A talk\n\n[0:01] one\n\n## Part two\n\n[0:09] two", "1:one|9:two", 0},
		"rule":           {"title\n---\n\n0:01 one\n0:05 two", "1:one|5:two", 1},
		"own line":       {"0:41\none\ntwo\n0:45\nthree", "41:one\ntwo|45:three", 0},
		"spelled out":    {"0:41\n41 seconds\none\n1:05\n1 minute, 5 seconds\n6 seconds later", "41:one|65:6 seconds later", 0},
		"own line, gap":  {"[0:41]\n\none\n\n[0:45]\n\ntwo", "41:one|45:two", 0},
		"wrapped":        {"[0:41] one\ntwo\n\nthree\n[0:45] four", "41:one\ntwo\nthree|45:four", 0},
		"range":          {"[0:41 - 0:44] one\n[0:44 – 0:50] two", "41-44:one|44-50:two", 0},
		"bare range":     {"0:41 - 0:44 one\n0:44-0:50 two", "41-44:one|44-50:two", 0},
		"arrow":          {"[00:00.000 --> 00:02.500]  one\n[00:02.500 --> 01:00:04.000]  two", "0-2.5:one|2.5-3604:two", 0},
		"bold":           {"**[0:41]** one\n\n**[0:45]** two", "41:one|45:two", 0},
		"list":           {"- 0:41 one\n- 0:45 two", "41:one|45:two", 0},
		"dash":           {"0:41 - one\n0:45 – two", "41:one|45:two", 0},
		"colon":          {"0:41: one\n0:45: two", "41:one|45:two", 0},
		"said times":     {"[0:41] we met at\n10:30 in the morning\n[0:45] two", "41:we met at\n10:30 in the morning|45:two", 0},
		"glued":          {"0:41 it is\n10:30am now\n0:45 two", "41:it is\n10:30am now|45:two", 0},
		"ratio in text":  {"[0:01] mix it 1:50 with oil", "1:mix it 1:50 with oil", 0},
		"offset comment": {"[ti:a title]\n[00:12.00]one\n[00:15.30]two", "12:one|15.3:two", 1},
	} {
		clip, err := Read(name, []byte(c.in), Options{})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		var got []string
		for _, cue := range clip.Cues {
			s := fmt.Sprint(cue.Start)
			if cue.End > 0 {
				s += fmt.Sprint("-", cue.End)
			}
			got = append(got, s+":"+cue.Text)
		}
		if g := strings.Join(got, "|"); g != c.want || clip.Format != "text" || len(clip.Warnings) != c.warnings {
			t.Errorf("%s: %s %q %v", name, clip.Format, g, clip.Warnings)
		}
	}
}

func TestParagraphs(t *testing.T) {
	para := func(in string) (got []bool) {
		clip, err := Read("", []byte(in), Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range clip.Cues {
			got = append(got, c.Para)
		}
		return got
	}
	if got := para("[0:00] One is here. Two is here.\n\n[0:09] Three is.\n\n[0:12] Four is"); !got[0] || !got[2] {
		t.Error("paragraphs not seen")
	}
	if got := para("(0:03) so today we\n(0:05) take the wheel off.\n(0:08) it is\n(0:09) not heavy"); got[0] || got[1] {
		t.Error("lines cut at a width taken for paragraphs")
	}
}

// A broken cue is skipped with its line; the rest is read.
func TestBrokenCues(t *testing.T) {
	for name, c := range map[string]struct {
		in, want string
		lines    []int
	}{
		"webvtt":       {"WEBVTT\n\n00:01.000 --> 00:02.000\none\n\n00:0x.000 --> 00:03.000\ntwo\n\n00:04.000 --> 00:05.000\nthree\n", "one three", []int{6}},
		"webvtt comma": {"WEBVTT\n\n00:01.000 --> 00:02.000\none\n\n00:02,000 --> 00:03,000\ntwo\n", "one", []int{6}},
		"all commas":   {"WEBVTT\n\n00:01,000 --> 00:02,000\none\n\n00:02,000 --> 00:03,000\ntwo\n", "one two", []int{3}},
		"stray text":   {"WEBVTT\n\n00:01.000 --> 00:02.000\none\n\ntwo\n\n00:04.000 --> 00:05.000\nthree\n", "one three", []int{6}},
		"subrip":       {"1\n00:00:01,000 --> 00:00:02,000\none\n\n2\n00:00:0x,000 --> 00:00:03,000\ntwo\n\n3\n00:00:04,000 --> 00:00:05,000\nthree\n", "one three", []int{6}},
		"no times":     {"1\n00:00:01,000 --> 00:00:02,000\none\n\n2\ntwo\n\n3\n00:00:04,000 --> 00:00:05,000\nthree\n", "one three", []int{5}},
		"sbv":          {"0:00:01.000,0:00:02.000\none\n\n0:00:0x.000,0:00:03.000\ntwo\n\n0:00:04.000,0:00:05.000\nthree\n", "one three", []int{4}},
		"arrow said":   {"1\n00:00:01,000 --> 00:00:02,000\nturn it --> left\n", "turn it --> left", nil},
		"ttml":         {"<tt><body>\n<p begin='1s'>one</p>\n<p begin='x'>two</p>\n<p begin='4s'>three</p></body></tt>", "one three", []int{3}},
		"ttml cut off": {"<tt><body>\n<p begin='1s'>one</p>\n<p begin='2s'>two", "one two", []int{3}},
		"json lines":   {"{\"start\":1,\"text\":\"one\"}\n{\"segments\":[{\"start\":2,\"end\":3,\"text\":\"two\"}]}\n{broken", "one two", []int{3}},
	} {
		t.Run(name, func(t *testing.T) {
			clip, err := Read("x", []byte(c.in), Options{})
			if err != nil {
				t.Fatal(err)
			}
			if got := Join(clip).Text; got != c.want {
				t.Errorf("%q", got)
			}
			var lines []int
			for _, w := range clip.Warnings {
				if w.File != "x" || w.Text == "" {
					t.Errorf("%+v", w)
				}
				lines = append(lines, w.Line)
			}
			if fmt.Sprint(lines) != fmt.Sprint(c.lines) {
				t.Errorf("%+v, want lines %v", clip.Warnings, c.lines)
			}
		})
	}
}

func TestNoTimedText(t *testing.T) {
	for name, in := range map[string]string{
		"a time in a letter": "Dear all,\n10:30 is when we meet.\nBye\n", "empty": "", "blank": " \n\n", "prose": "we took the wheel off\n", "webvtt": "WEBVTT\n\n",
		"webvtt without words": "WEBVTT\n\n00:01.000 --> 00:02.000\n\n",
		"other json":           `{"name": "x"}`, "broken json": `{"segments": [`, "list": `[]`,
		"other xml": "<html><p>0</p></html>", "ttml": "<tt/>", "bytes": "\x7fELF\x01\x02", "number": "12",
	} {
		_, err := Read("talk.vtt", []byte(in), Options{})
		if !errors.Is(err, ErrNoTimedText) {
			t.Errorf("%s: %v", name, err)
		} else if s := err.Error(); !strings.HasPrefix(s, "talk.vtt: ") || !strings.Contains(s, "save the transcript") {
			t.Errorf("%s: the message names no file or no way out: %s", name, s)
		}
	}
}

func TestLimits(t *testing.T) {
	two := "1\n00:00:01,000 --> 00:00:02,000\none\n\n2\n00:00:02,000 --> 00:00:03,000\ntwo\n"
	deepXML := "<tt><body>" + strings.Repeat("<div>", 300) + "<p begin='1s'>x</p>"
	deepJSON := strings.Repeat(`{"data":[`, 150) + `{"start":1,"text":"x"}` + strings.Repeat("]}", 150)
	for name, c := range map[string]struct {
		in   string
		opt  Options
		what string
	}{
		"bytes": {two, Options{MaxBytes: 10}, "bytes"},
		"cues":  {two, Options{MaxCues: 1}, "cues"},
		"ttml":  {deepXML, Options{}, "levels of nesting"},
		"json":  {deepJSON, Options{}, "levels of nesting"},
	} {
		_, err := Read("big.srt", []byte(c.in), c.opt)
		var limit *LimitError
		if !errors.As(err, &limit) || limit.What != c.what || limit.File != "big.srt" || !errors.Is(err, ErrLimit) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, c := range map[string]struct {
		in  string
		opt Options
	}{
		"exactly":  {two, Options{MaxBytes: int64(len(two)), MaxCues: 2}},
		"ttml":     {deepXML, Options{MaxDepth: 400}},
		"json":     {deepJSON, Options{MaxDepth: 400}},
		"negative": {two, Options{MaxBytes: -1, MaxCues: -1, MaxDepth: -1}},
	} {
		if _, err := Read("big.srt", []byte(c.in), c.opt); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A file of nothing but faults does not drown the reader in warnings.
func TestWarningsAreFew(t *testing.T) {
	in := "WEBVTT\n\n00:00.000 --> 00:01.000\nok\n\n" + strings.Repeat("00:x --> 1\nbad\n\n", 5000)
	clip, err := Read("x", []byte(in), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if n := len(clip.Warnings); n != maxWarnings+1 || clip.Warnings[n-1].Text != "and 4900 more like these" {
		t.Errorf("%d warnings, the last %q", n, clip.Warnings[n-1].Text)
	}
}

func TestReadFile(t *testing.T) {
	dir := t.TempDir()
	ctx := context.Background()
	good := "WEBVTT\n\n00:01.000 --> 00:02.000\none\n"
	write := func(name, text string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	clip, err := ReadFile(ctx, write("a.vtt", good), Options{})
	if err != nil || clip.Name != "a.vtt" || clip.Format != "webvtt" || clip.Duration != 2 || len(clip.SHA256) != 64 {
		t.Errorf("%+v %v", clip, err)
	}
	clip, err = ReadFile(ctx, "-", Options{Stdin: strings.NewReader(good)})
	if err != nil || clip.Name != "standard input" {
		t.Errorf("%+v %v", clip, err)
	}
	if clip, err := ReadFile(ctx, write("short", "1"), Options{}); !errors.Is(err, ErrNoTimedText) {
		t.Errorf("%+v %v", clip, err)
	}
	for name, c := range map[string]struct {
		path string
		opt  Options
		want string
	}{
		"missing":       {filepath.Join(dir, "none.vtt"), Options{}, "no such file"},
		"folder":        {dir, Options{}, "is a folder"},
		"large":         {write("b.vtt", good), Options{MaxBytes: 9}, "more than 9 bytes"},
		"large input":   {"-", Options{MaxBytes: 9, Stdin: strings.NewReader(good)}, "more than 9 bytes"},
		"video in pipe": {"-", Options{Stdin: strings.NewReader("\x1A\x45\xDF\xA3 …")}, "cannot be read from a pipe"},
		"no program":    {write("c.mkv", "\x1A\x45\xDF\xA3…"), Options{FFmpeg: filepath.Join(dir, "nothing")}, "install it, or give the subtitles"},
	} {
		if _, err := ReadFile(ctx, c.path, c.opt); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The program is a stand-in that shows how it was called: no shell, the name
// as file:…, protocols limited, and stopped when it takes too long.
func TestVideo(t *testing.T) {
	dir := t.TempDir()
	program := func(body string) string {
		path := filepath.Join(t.TempDir(), "ffmpeg")
		if err := os.WriteFile(path, []byte("#!/bin/sh\n"+body), 0o700); err != nil {
			t.Fatal(err)
		}
		return path
	}
	video := func(name, head string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(head), 0o600); err != nil {
			t.Skip(err) // a file system without such names
		}
		return path
	}
	mkv, mp4 := "\x1A\x45\xDF\xA3rest", "\x00\x00\x00\x20ftypisom"
	good := program(`printf 'WEBVTT\n\n00:01.000 --> 00:02.000\n'; for a; do printf '%s ' "$a" | tr '\n' '~'; done; printf '\n'`)
	t.Chdir(dir)
	for name, head := range map[string]string{"-i evil.mkv": mkv, "a\nb$(id).mp4": mp4, "http:x.mkv": mkv} {
		video(name, head)
		clip, err := ReadFile(context.Background(), name, Options{FFmpeg: good})
		if err != nil {
			t.Errorf("%q: %v", name, err)
			continue
		}
		args := clip.Cues[0].Text
		if want := "-protocol_whitelist file,pipe -i file:" + strings.ReplaceAll(name, "\n", "~") + " -map 0:s:0"; !strings.Contains(args, want) {
			t.Errorf("called with %q", args)
		}
		if clip.Format != "webvtt" || clip.Name != filepath.Base(name) {
			t.Errorf("%+v", clip)
		}
	}
	path := video("clip.mkv", mkv)
	for name, c := range map[string]struct {
		body, want string
		opt        Options
	}{
		"no track": {"echo \"Stream map '0:s:0' matches no streams.\" >&2; exit 1", "the video has no subtitle track", Options{}},
		"broken":   {"echo 'Invalid data found' >&2; exit 1", "Invalid data found", Options{}},
		"hangs":    {"exec sleep 60", "did not finish within 50ms", Options{Timeout: 50 * time.Millisecond}},
		"floods":   {"exec yes", "more than 1000 bytes", Options{MaxBytes: 1000}},
		"nothing":  {"exit 0", "the file is empty", Options{}},
	} {
		start := time.Now()
		c.opt.FFmpeg = program(c.body)
		if _, err := ReadFile(context.Background(), path, c.opt); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", name, err)
		}
		if d := time.Since(start); d > 10*time.Second {
			t.Errorf("%s: took %v", name, d)
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := ReadFile(ctx, path, Options{FFmpeg: good}); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped by the caller: %v", err)
	}
}

// The real program, where it is installed: what goes into a video comes out.
func TestVideoWithFFmpeg(t *testing.T) {
	if _, err := exec.LookPath("ffmpeg"); err != nil {
		t.Skip("ffmpeg is not installed")
	}
	dir := t.TempDir()
	lines := words("take the nut off/with a long bar/and set it & aside")
	srt := filepath.Join(dir, "in.srt")
	if err := os.WriteFile(srt, []byte(blocks(lines)), 0o600); err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir)
	for name, codec := range map[string]string{"-clip one.mkv": "srt", "b.mp4": "mov_text", "c\nd.mkv": "webvtt"} {
		out, err := exec.Command("ffmpeg", "-nostdin", "-loglevel", "error", "-f", "lavfi", "-i", "color=size=16x16:duration=7:rate=5",
			"-i", srt, "-c:v", "mpeg4", "-c:s", codec, "file:"+name).CombinedOutput()
		if err != nil {
			t.Skipf("ffmpeg cannot make %s here: %v %s", codec, err, out)
		}
		clip, err := ReadFile(context.Background(), name, Options{})
		if err != nil {
			t.Errorf("%q: %v", name, err)
			continue
		}
		want := []expCue{}
		for i, l := range lines {
			start, end := float64(i*2), float64(i*2)+1.9
			want = append(want, expCue{&start, &end, strings.Join(l, " ")})
		}
		if d := sameCues(clip.Cues, want); d != "" {
			t.Errorf("%q: %s", name, d)
		}
	}
	out, err := exec.Command("ffmpeg", "-nostdin", "-loglevel", "error", "-f", "lavfi", "-i", "color=size=16x16:duration=1:rate=5", "-c:v", "mpeg4", "file:bare.mkv").CombinedOutput()
	if err != nil {
		t.Skipf("%v %s", err, out)
	}
	if _, err := ReadFile(context.Background(), "bare.mkv", Options{}); !errors.Is(err, ErrNoTimedText) || !strings.Contains(err.Error(), "no subtitle track") {
		t.Errorf("a video without subtitles: %v", err)
	}
	if err := os.WriteFile("broken.mkv", []byte("\x1A\x45\xDF\xA3 not a video"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := ReadFile(context.Background(), "broken.mkv", Options{}); err == nil || !strings.Contains(err.Error(), "ffmpeg could not read") {
		t.Errorf("a broken video: %v", err)
	}
}
