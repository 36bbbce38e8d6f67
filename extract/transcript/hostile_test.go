package transcript

import (
	"errors"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"
)

// Files of bad shapes, each large: the time must stay near that of plain ones.
// The bound is wide (the race detector and a busy machine are slow); anything
// that grows with the square of the size would take hours.
func TestHostileShapes(t *testing.T) {
	const bound = 30 * time.Second
	size := 1 << 19
	if mb, err := strconv.Atoi(os.Getenv("WRENCHWORD_HOSTILE_MB")); err == nil {
		size = mb << 20 // by hand: 50 takes a few minutes
	}
	fill := func(s string) string { return strings.Repeat(s, size/len(s)) }
	const srt = "1\n00:00:01,000 --> 00:00:02,000\n"
	const vtt = "WEBVTT\n\n00:01.000 --> 00:02.000\n"
	for name, file := range map[string]func() string{
		"cues at one second": func() string { return fill("00:01.000 --> 00:02.000\na\n\n") },
		"vtt at one second":  func() string { return "WEBVTT\n\n" + fill("00:01.000 --> 00:02.000\na b\n\n") },
		"text at one second": func() string { return fill("[0:01] a\n") },
		"times without text": func() string { return fill("0:01\n") },
		"cues backwards":     func() string { return backwards(size / 40) },
		"one line":           func() string { return srt + fill("a") },
		"one line of words":  func() string { return srt + fill("a ") },
		"one line twice": func() string {
			return "WEBVTT\n\n00:01.000 --> 00:02.000\n" + fill("a ")[:size/2] + "\n\n00:02.000 --> 00:03.000\n" + fill("a ")[:size/2] + "\n\n00:03.000 --> 00:04.000\n" + fill("a b ")
		},
		"open tags":            func() string { return vtt + fill("<c") },
		"nested tags":          func() string { return vtt + fill("<c.x><v y><i>a") },
		"time tags":            func() string { return vtt + fill("<00:01.500>a ") },
		"time tags in a word":  func() string { return vtt + fill("<00:01.500>a") },
		"open tags, subrip":    func() string { return srt + fill("<a") },
		"open braces, subrip":  func() string { return srt + fill("{\\a") },
		"entities":             func() string { return vtt + fill("&amp") },
		"open entities":        func() string { return srt + fill("&") },
		"brackets":             func() string { return srt + fill("[a ") },
		"brackets shut":        func() string { return srt + fill("(") + fill(") ") },
		"arrows":               func() string { return fill("-->\n") },
		"arrows in one line":   func() string { return vtt + fill("-->") },
		"broken times":         func() string { return "WEBVTT\n\n" + fill("00:0x.000 --> 00:01.000\na\n\n") },
		"digits":               func() string { return fill("1") },
		"colons":               func() string { return fill("1:") },
		"numbers":              func() string { return srt + fill("1\n\n") },
		"blank lines":          func() string { return srt + "a" + fill("\n") },
		"carriage returns":     func() string { return srt + fill("a\r") },
		"dashes":               func() string { return "[0:01] x\n" + fill("- ") },
		"headings":             func() string { return "[0:01] x\n\n" + fill("# \n\n") },
		"ttml deep":            func() string { return "<tt><body>" + fill("<div>") },
		"ttml wide":            func() string { return "<tt><body>" + fill("<p begin='1s'>a</p>") },
		"ttml spans":           func() string { return "<tt><body><p begin='1s'>" + fill("<span begin='1s'>a</span>") },
		"ttml breaks":          func() string { return "<tt><body><p begin='1s'>" + fill("<br/>") },
		"ttml ends":            func() string { return "<tt><body>" + fill("</p>") },
		"ttml attributes":      func() string { return "<tt><body><p begin='1s' " + fill("a='b' ") + ">x</p>" },
		"ttml comment":         func() string { return "<tt><!--" + fill("-") },
		"comments before ttml": func() string { return fill("<!---->") },
		"json deep":            func() string { return fill("[") },
		"json deep objects":    func() string { return fill(`{"data":`) },
		"json wide":            func() string { return `{"segments":[` + fill(`{"start":1,"text":"a"},`) + `{}]}` },
		"json words":           func() string { return `{"words":[` + fill(`{"start":1,"end":1,"word":"a"},`) + `{}]}` },
		"json glued": func() string {
			return `{"segments":[{"start":1,"end":2,"text":"` + fill("a") + `","words":[` + fill(`{"start":1,"end":1,"word":"a"},`) + `{}]}]}`
		},
		"json lines": func() string { return fill(`{"start":1,"text":"a"}` + "\n") },
		"json utterances": func() string {
			return `{"utterances":[` + fill(`{"start":1,"end":2,"transcript":"a"},`) + `{}],"words":[` + fill(`{"start":1,"end":1,"word":"a"},`) + `{}]}`
		},
		"json backslashes": func() string { return `{"text":"` + fill(`\\`) },
		"zero bytes":       func() string { return fill("\x00a") },
		"high bytes":       func() string { return srt + fill("\xFF") },
		"wide blanks":      func() string { return srt + fill("\u2003a") },
		"growing":          func() string { return "WEBVTT\n\n" + growing([][]string{strings.Fields(strings.Repeat("a ", 1000))}) },
	} {
		t.Run(name, func(t *testing.T) {
			data := []byte(file())
			start := time.Now()
			clip, err := Read("x", data, Options{MaxWords: 1 << 30})
			var talk *Talk
			if err == nil {
				talk = Join(clip)
			}
			took := time.Since(start)
			if talk != nil && size < 4<<20 {
				checkTalk(t, talk)
				Overlaps(Join(clip, clip))
			}
			t.Logf("%v, error: %.100v", took, err)
			if took > bound {
				t.Errorf("took %v", took)
			}
		})
	}
}

func backwards(n int) string {
	var b strings.Builder
	b.WriteString("WEBVTT\n\n")
	for i := n; i > 0; i-- {
		fmt.Fprintf(&b, "%s --> %s\na\n\n", stamp(i*10), stamp(i*10+10))
	}
	return b.String()
}

// TestWordLimit: a file of more words than a recording holds is refused, and the
// limit can be raised. What rolling captions show again is counted once.
func TestWordLimit(t *testing.T) {
	talk := "[0:01] " + strings.Repeat("a ", 300_000)
	_, err := Read("x.txt", []byte(talk), Options{})
	var limit *LimitError
	if !errors.As(err, &limit) || limit.What != "words" {
		t.Fatalf("300,000 words: %v", err)
	}
	if _, err := Read("x.txt", []byte(talk), Options{MaxWords: 300_000}); err != nil {
		t.Errorf("with the limit raised: %v", err)
	}
	const said = 1000
	var lines [][]string
	for i := range said / 5 {
		lines = append(lines, strings.Fields(fmt.Sprintf("a%d b%d c%d d%d e%d", i, i, i, i, i)))
	}
	if _, err := Read("x.vtt", []byte(rollingTagged(lines)), Options{MaxWords: said}); err != nil {
		t.Errorf("%d words, each shown more than once: %v", said, err)
	}
	if _, err := Read("x.vtt", []byte(rollingTagged(lines)), Options{MaxWords: said - 1}); err == nil {
		t.Errorf("%d words are let through where %d are allowed", said, said-1)
	}
}
