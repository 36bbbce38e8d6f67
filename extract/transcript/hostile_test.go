package transcript

import (
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
	for name, in := range map[string]string{
		"cues at one second":   fill("00:01.000 --> 00:02.000\na\n\n"),
		"vtt at one second":    "WEBVTT\n\n" + fill("00:01.000 --> 00:02.000\na b\n\n"),
		"text at one second":   fill("[0:01] a\n"),
		"times without text":   fill("0:01\n"),
		"cues backwards":       backwards(size / 40),
		"one line":             srt + fill("a"),
		"one line of words":    srt + fill("a "),
		"one line twice":       "WEBVTT\n\n00:01.000 --> 00:02.000\n" + fill("a ")[:size/2] + "\n\n00:02.000 --> 00:03.000\n" + fill("a ")[:size/2] + "\n\n00:03.000 --> 00:04.000\n" + fill("a b "),
		"open tags":            vtt + fill("<c"),
		"nested tags":          vtt + fill("<c.x><v y><i>a"),
		"time tags":            vtt + fill("<00:01.500>a "),
		"time tags in a word":  vtt + fill("<00:01.500>a"),
		"open tags, subrip":    srt + fill("<a"),
		"open braces, subrip":  srt + fill("{\\a"),
		"entities":             vtt + fill("&amp"),
		"open entities":        srt + fill("&"),
		"brackets":             srt + fill("[a "),
		"brackets shut":        srt + fill("(") + fill(") "),
		"arrows":               fill("-->\n"),
		"arrows in one line":   vtt + fill("-->"),
		"broken times":         "WEBVTT\n\n" + fill("00:0x.000 --> 00:01.000\na\n\n"),
		"digits":               fill("1"),
		"colons":               fill("1:"),
		"numbers":              srt + fill("1\n\n"),
		"blank lines":          srt + "a" + fill("\n"),
		"carriage returns":     srt + fill("a\r"),
		"dashes":               "[0:01] x\n" + fill("- "),
		"headings":             "[0:01] x\n\n" + fill("# \n\n"),
		"ttml deep":            "<tt><body>" + fill("<div>"),
		"ttml wide":            "<tt><body>" + fill("<p begin='1s'>a</p>"),
		"ttml spans":           "<tt><body><p begin='1s'>" + fill("<span begin='1s'>a</span>"),
		"ttml breaks":          "<tt><body><p begin='1s'>" + fill("<br/>"),
		"ttml ends":            "<tt><body>" + fill("</p>"),
		"ttml attributes":      "<tt><body><p begin='1s' " + fill("a='b' ") + ">x</p>",
		"ttml comment":         "<tt><!--" + fill("-"),
		"comments before ttml": fill("<!---->"),
		"json deep":            fill("["),
		"json deep objects":    fill(`{"data":`),
		"json wide":            `{"segments":[` + fill(`{"start":1,"text":"a"},`) + `{}]}`,
		"json words":           `{"words":[` + fill(`{"start":1,"end":1,"word":"a"},`) + `{}]}`,
		"json glued":           `{"segments":[{"start":1,"end":2,"text":"` + fill("a") + `","words":[` + fill(`{"start":1,"end":1,"word":"a"},`) + `{}]}]}`,
		"json lines":           fill(`{"start":1,"text":"a"}` + "\n"),
		"json utterances":      `{"utterances":[` + fill(`{"start":1,"end":2,"transcript":"a"},`) + `{}],"words":[` + fill(`{"start":1,"end":1,"word":"a"},`) + `{}]}`,
		"json backslashes":     `{"text":"` + fill(`\\`),
		"zero bytes":           fill("\x00a"),
		"high bytes":           srt + fill("\xFF"),
		"wide blanks":          srt + fill("\u2003a"),
		"growing":              "WEBVTT\n\n" + growing([][]string{strings.Fields(strings.Repeat("a ", 1000))}),
	} {
		t.Run(name, func(t *testing.T) {
			start := time.Now()
			clip, err := Read("x", []byte(in), Options{})
			if err == nil {
				talk := Join(clip)
				checkTalk(t, talk)
				Overlaps(Join(clip, clip))
			}
			took := time.Since(start)
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
