package transcript

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"
)

// addSeeds gives a fuzzer the shortest files at hand of some endings, and the
// pieces given.
func addSeeds(f *testing.F, endings string, pieces ...string) {
	for _, s := range pieces {
		f.Add([]byte(s))
	}
	dir := os.Getenv("WRENCHWORD_SHARED")
	if dir == "" {
		dir = filepath.Join("..", "..", "..", "shared")
	}
	_ = filepath.WalkDir(filepath.Join(dir, "outside"), func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.Contains(endings, filepath.Ext(path)) || filepath.Ext(path) == "" || d.Name() == "expected.json" {
			return nil
		}
		if info, err := d.Info(); err == nil && info.Size() < 4000 {
			if data, err := os.ReadFile(path); err == nil {
				f.Add(data)
			}
		}
		return nil
	})
}

// checkRead reads any bytes as any form and fails unless all promises hold.
func checkRead(t *testing.T, data []byte) {
	start := time.Now()
	clip, err := Read("x", data, Options{MaxDepth: 50})
	if err != nil {
		if clip != nil || !errors.Is(err, ErrNoTimedText) && !errors.Is(err, ErrLimit) {
			t.Fatalf("error %v", err)
		}
		return
	}
	heard := 0
	for _, c := range clip.Cues {
		if !utf8.ValidString(c.Text) || strings.ContainsAny(c.Text, "\r\x00") && clip.Format != "json" && !strings.Contains(string(data), "&") {
			t.Fatalf("text %q", c.Text)
		}
		if !(c.Start >= 0) || !(c.End >= 0) || math.IsInf(c.Start, 0) || math.IsInf(c.End, 0) || c.Line < 0 {
			t.Fatalf("cue %+v", c)
		}
		last := uint32(0)
		for _, w := range c.Words {
			if w.Lo < last || w.Hi <= w.Lo || int(w.Hi) > len(c.Text) || !(w.At >= 0) || math.IsInf(w.At, 0) {
				t.Fatalf("word %+v of %+v", w, c)
			}
			last = w.Hi
		}
		heard += len(strings.Fields(c.Text))
	}
	talk := Join(clip)
	checkTalk(t, talk)
	if len(talk.Words) > heard {
		t.Fatalf("%d words out of %d", len(talk.Words), heard)
	}
	r := &roller{cues: clip.Cues}
	r.order, _, _ = timeOrder(clip.Cues)
	if how, _ := r.detect(); how == rollsNot && len(talk.Words) != heard {
		t.Fatalf("%d words of %d, in a file that does not roll", len(talk.Words), heard)
	}
	Overlaps(Join(clip, clip))
	if d := time.Since(start); d > 5*time.Second {
		t.Fatalf("%d bytes took %v", len(data), d)
	}
}

func FuzzVTT(f *testing.F) {
	addSeeds(f, ".vtt", rollingTagged(words("one two/three four/five six")))
	f.Fuzz(func(t *testing.T, data []byte) {
		checkRead(t, append([]byte("WEBVTT\n\n"), data...))
		checkRead(t, data)
	})
}

func FuzzSRT(f *testing.F) {
	addSeeds(f, ".srt .sbv", "1\n00:00:01,000 --> 00:00:02,000\n{\\an8}<i>a</i> <b\n\n2\nno times\n\n3\n0:1:2 --> 3")
	f.Fuzz(func(t *testing.T, data []byte) { checkRead(t, data) })
}

func FuzzTTML(f *testing.F) {
	addSeeds(f, ".ttml .dfxp", "<tt><body><div timeContainer='seq'><p begin='1s'><span begin='1s'>a</span> b</p></div>")
	f.Fuzz(func(t *testing.T, data []byte) { checkRead(t, data) })
}

func FuzzPlain(f *testing.F) {
	addSeeds(f, ".txt .lrc", "# t\n\n[0:41] one\n(0:42) two\n0:43\n43 seconds\n[0:44 - 0:45] x")
	f.Fuzz(func(t *testing.T, data []byte) { checkRead(t, data) })
}

func FuzzJSON(f *testing.F) {
	addSeeds(f, ".json", `{"segments":[{"start":1,"end":2,"text":" a b","words":[{"word":" a","start":1,"end":1.5}]}]}`,
		`{"events":[{"tStartMs":1,"segs":[{"utf8":"a"},{"utf8":" b","tOffsetMs":4}]}]}`)
	f.Fuzz(func(t *testing.T, data []byte) { checkRead(t, data) })
}

func FuzzDecode(f *testing.F) {
	for _, s := range []string{"a\r\nb", "\xFF\xFEa\x00", "\xFE\xFF\x00a", "a\x00b\x00", "\xB0 60", "\xEF\xBB\xBFx"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		text, _ := decode(data)
		if !utf8.ValidString(text) || strings.ContainsAny(text, "\r\x00") {
			t.Fatalf("%q", text)
		}
	})
}

// FuzzJoin shows any talk in rolling captions: words in, words out.
func FuzzJoin(f *testing.F) {
	f.Add("tap tap tap/tap tap/so it comes out/tap/okay/okay/right then/next one")
	f.Fuzz(func(t *testing.T, talk string) {
		var lines [][]string
		for _, l := range words(talk) {
			var line []string
			for _, w := range l {
				if w = strings.Map(plainLetter, w); w != "" {
					line = append(line, w)
				}
			}
			if len(line) > 0 {
				lines = append(lines, line)
			}
		}
		if len(lines) < 4 {
			return
		}
		if got, want := joined(t, rollingTagged(lines)).Text, said(lines); got != want {
			t.Fatalf("got  %s\nwant %s", got, want)
		}
	})
}

func plainLetter(r rune) rune {
	if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r > 0xFF && r < 0x2000 && !strings.ContainsRune("\u1680", r) {
		return r
	}
	return -1
}
