package transcript

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// checkTalk fails unless a talk keeps what the types promise.
func checkTalk(t interface{ Fatalf(string, ...any) }, talk *Talk) {
	var b strings.Builder
	clip, cue := 0, -1
	for i, w := range talk.Words {
		if w.Hi <= w.Lo || int(w.Hi) > len(talk.Text) {
			t.Fatalf("word %d is at %d:%d", i, w.Lo, w.Hi)
		}
		if i > 0 {
			b.WriteByte(' ')
		}
		if b.Len() != int(w.Lo) {
			t.Fatalf("word %d is not one blank behind the last", i)
		}
		word := talk.Text[w.Lo:w.Hi]
		if len(strings.Fields(word)) != 1 || strings.TrimSpace(word) != word {
			t.Fatalf("word %d is %q", i, word)
		}
		b.WriteString(word)
		if math.IsNaN(w.At) || w.At < 0 {
			t.Fatalf("word %d %q is heard at %v", i, word, w.At)
		}
		if int(w.Clip) < clip || int(w.Clip) >= len(talk.Clips) {
			t.Fatalf("word %d is of clip %d", i, w.Clip)
		}
		c := &talk.Clips[w.Clip]
		if int(w.Cue) >= len(c.Cues) {
			t.Fatalf("word %d is of cue %d", i, w.Cue)
		}
		if int(w.Clip) == clip && int(w.Cue) == cue && w.At < talk.Words[i-1].At {
			t.Fatalf("time runs back inside a cue at word %d", i)
		}
		if w.At > c.Duration {
			t.Fatalf("word %d at %v lies beyond the clip's %v", i, w.At, c.Duration)
		}
		clip, cue = int(w.Clip), int(w.Cue)
	}
	if b.String() != talk.Text {
		t.Fatalf("text and words differ")
	}
}

// How a talk is shown by the kinds of captions there are. Lines are what is
// said; each function gives the file.

func stamp(ms int) string {
	return fmt.Sprintf("%02d:%02d:%02d.%03d", ms/3600000, ms/60000%60, ms/1000%60, ms%1000)
}

// rollingTagged: a line is kept above the new one, whose words carry times;
// between them the new line alone is held for 10 ms.
func rollingTagged(lines [][]string) string {
	var b strings.Builder
	b.WriteString("WEBVTT\nKind: captions\n\n")
	ms, above := 0, " "
	for _, l := range lines {
		fmt.Fprintf(&b, "%s --> %s align:start position:0%%\n%s\n", stamp(ms), stamp(ms+200*len(l)), above)
		for i, w := range l {
			if i == 0 {
				b.WriteString(w)
			} else {
				fmt.Fprintf(&b, "<%s><c> %s</c>", stamp(ms+200*i), w)
			}
		}
		ms += 200 * len(l)
		above = strings.Join(l, " ")
		fmt.Fprintf(&b, "\n\n%s --> %s align:start position:0%%\n%s\n \n\n", stamp(ms), stamp(ms+10), above)
		ms += 10
	}
	return b.String()
}

// rollingHeld is rollingTagged without its tags, as converters write it.
func rollingHeld(lines [][]string) string {
	return regexp.MustCompile(`<[^>]*>`).ReplaceAllString(rollingTagged(lines), "")
}

// rollingPlain: the last rows lines stand on the screen, the new one lowest.
func rollingPlain(lines [][]string, rows int) string {
	var b strings.Builder
	for i := range lines {
		fmt.Fprintf(&b, "%d\n%s --> %s\n", i+1, strings.Replace(stamp(i*2000), ".", ",", 1), strings.Replace(stamp(i*2000+2000), ".", ",", 1))
		for _, l := range lines[max(0, i-rows+1) : i+1] {
			b.WriteString(strings.Join(l, " ") + "\n")
		}
		b.WriteString("\n")
	}
	return b.String()
}

// growing: the line grows by a word at a time and is then taken off.
func growing(lines [][]string) string {
	var b strings.Builder
	b.WriteString("WEBVTT\n\n")
	ms := 0
	for _, l := range lines {
		for i := range l {
			fmt.Fprintf(&b, "%s --> %s\n%s\n\n", stamp(ms), stamp(ms+300), strings.Join(l[:i+1], " "))
			ms += 300
		}
	}
	return b.String()
}

// blocks: subtitles that show each line once.
func blocks(lines [][]string) string {
	var b strings.Builder
	for i, l := range lines {
		fmt.Fprintf(&b, "%d\n%s --> %s\n%s\n\n", i+1, strings.Replace(stamp(i*2000), ".", ",", 1), strings.Replace(stamp(i*2000+1900), ".", ",", 1), strings.Join(l, " "))
	}
	return b.String()
}

func said(lines [][]string) string {
	var all []string
	for _, l := range lines {
		all = append(all, l...)
	}
	return strings.Join(all, " ")
}

func joined(t interface{ Fatalf(string, ...any) }, file string) *Talk {
	clip, err := Read("talk", []byte(file), Options{})
	if err != nil {
		t.Fatalf("%v", err)
	}
	talk := Join(clip)
	checkTalk(t, talk)
	return talk
}

// Words in are words out, whatever is repeated in the talk itself.
func TestJoinGivesEveryWordOnce(t *testing.T) {
	// Ten words, so that most lines repeat something. Subtitles that show each line
	// once are drawn from more: with so few, chance makes them look as if they grew.
	few := rapid.SampledFrom([]string{"tap", "the", "bolt", "okay", "out", "eight", "mil", "so", "it", "comes"})
	line := rapid.SliceOfN(few, 1, 7)
	talk := rapid.SliceOfN(line, 8, 40)
	many := rapid.OneOf(rapid.SampledFrom(talkLines(100)), rapid.SampledFrom(words("okay/tap tap tap/yes/and again/right")))
	for name, c := range map[string]struct {
		talk *rapid.Generator[[][]string]
		show func([][]string) string
	}{
		"blocks":         {rapid.SliceOfN(many, 8, 40), blocks},
		"rolling tagged": {talk, rollingTagged},
		"rolling held":   {talk, rollingHeld},
	} {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			lines := c.talk.Draw(t, "lines")
			if got, want := joined(t, c.show(lines)).Text, said(lines); got != want {
				t.Fatalf("got  %s\nwant %s", got, want)
			}
		}))
	}
	// Without word times some repetition cannot be told from rolling (a cue that
	// says the same words as the one before), so here the lines all differ.
	numbered := func(lines [][]string) [][]string {
		lines = slices.Clone(lines)
		for i := range lines {
			lines[i] = append([]string{fmt.Sprint("n", i)}, lines[i]...)
		}
		return lines
	}
	for name, show := range map[string]func([][]string) string{
		"two rows":   func(l [][]string) string { return rollingPlain(l, 2) },
		"three rows": func(l [][]string) string { return rollingPlain(l, 3) },
		"growing":    growing,
	} {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			lines := numbered(talk.Draw(t, "lines"))
			if got, want := joined(t, show(lines)).Text, said(lines); got != want {
				t.Fatalf("got  %s\nwant %s", got, want)
			}
		}))
	}
}

func words(s string) [][]string {
	var out [][]string
	for _, l := range strings.Split(s, "/") {
		out = append(out, strings.Fields(l))
	}
	return out
}

// What is said twice stays said twice.
func TestJoinKeepsRepeatedSpeech(t *testing.T) {
	lines := words("tap tap tap/tap tap tap/and again/and again/okay/okay/okay/done")
	for name, file := range map[string]string{
		"blocks": blocks(lines), "rolling with word times": rollingTagged(lines),
	} {
		if got, want := joined(t, file).Text, said(lines); got != want {
			t.Errorf("%s: %s", name, got)
		}
	}
	once := words("set the wrench/to thirty/to thirty/no wait/forty/forty/newton metres/and click/next one/is the same")
	if got, want := joined(t, rollingPlain(once, 2)).Text, said(once); got != want {
		t.Errorf("two rows: %s\nwant %s", got, want)
	}
}

func TestJoinTimes(t *testing.T) {
	talk := joined(t, rollingTagged(words("now the axle nut/comes off with a thirty two")))
	for i, want := range []float64{0, .2, .4, .6, .81, 1.01, 1.21, 1.41, 1.61, 1.81} {
		if w := talk.Words[i]; !w.Is(Exact) || math.Abs(w.At-want) > 1e-9 {
			t.Errorf("word %d at %v (exact: %v), want %v", i, w.At, w.Is(Exact), want)
		}
	}
	talk = joined(t, "1\n00:00:10,000 --> 00:00:20,000\nab cd\nefgh\n")
	for i, want := range []struct {
		at    float64
		exact bool
	}{{10, true}, {13, false}, {16, false}} {
		if w := talk.Words[i]; w.At != want.at || w.Is(Exact) != want.exact {
			t.Errorf("word %d: %+v, want %+v", i, w, want)
		}
	}
	if d := talk.Clips[0].Duration; d != 20 {
		t.Errorf("the last word ends at %v, want 20", d)
	}
}

func TestJoinMarks(t *testing.T) {
	file := "WEBVTT\n\n00:01.000 --> 00:02.000\n[upbeat music] hello (laughs)\n\n" +
		"00:02.000 --> 00:05.000\n>> right (about ten) then [10 mm]\n- Me now\n-And you\nfive -\n\n" +
		"00:05.000 --> 00:06.000\n<v Ann>♪ la ♪ minus -5\n\n00:06.000 --> 00:07.000\n>>\n\n00:07.000 --> 00:08.000\n(door bangs) # 3\n"
	talk := joined(t, file)
	var noise, para []string
	for _, w := range talk.Words {
		if w.Is(Noise) {
			noise = append(noise, talk.Text[w.Lo:w.Hi])
		}
		if w.Is(Para) {
			para = append(para, talk.Text[w.Lo:w.Hi])
		}
	}
	if got := strings.Join(noise, "|"); got != "[upbeat|music]|(laughs)|>>|-|♪|♪|>>|(door|bangs)" {
		t.Errorf("noise: %s", got)
	}
	if got := strings.Join(para, "|"); got != "right|Me|-And|#" {
		t.Errorf("paragraphs: %s", got)
	}
	if want := "[upbeat music] hello (laughs) >> right (about ten) then [10 mm] - Me now -And you five - ♪ la ♪ minus -5 >> (door bangs) # 3"; talk.Text != want {
		t.Errorf("text: %s", talk.Text)
	}
}

func TestJoinClips(t *testing.T) {
	a, _ := Read("a.srt", []byte(blocks(words("one two/three"))), Options{})
	b, _ := Read("b.txt", []byte("[0:05] Four five.\n\n[0:09] Six.\n"), Options{})
	talk := Join(a, b)
	checkTalk(t, talk)
	if talk.Text != "one two three Four five. Six." {
		t.Error(talk.Text)
	}
	if w := talk.Words[3]; w.Clip != 1 || w.At != 5 || !w.Is(Exact) || !w.Is(Para) {
		t.Errorf("%+v", w)
	}
	if empty := Join(); empty.Text != "" || len(empty.Words) != 0 {
		t.Error("a talk of nothing has words")
	}
}

// Cues out of order are put in order; a second recording in the same file is not mixed with the first.
func TestJoinOrder(t *testing.T) {
	for name, c := range map[string]struct {
		in, want string
		lines    []int
	}{
		"swapped":     {"[0:01] a\n[0:09] c\n[0:05] b\n[0:12] d", "a b c d", []int{3}},
		"far away":    {"[0:01] a\n[5:00] c\n[9:00] d\n[0:05] b", "a b c d", []int{4}},
		"two clips":   {"[0:01] a\n[1:01] b\n[2:00] c\n\n# Next\n\n[0:02] d\n[0:30] e\n[1:00] f\n[1:30] g\n[4:00] h", "a b c d e f g h", []int{7}},
		"both":        {"[2:00] b\n[1:59] a\n[2:01] c\n[0:02] d\n[0:30] e\n[1:00] f\n[1:30] g\n[1:29] x", "a b c d e f x g", []int{2, 4}},
		"at one time": {"[0:01] a\n[0:01] b\n[0:01] c", "a b c", nil},
	} {
		clip, err := Read("x", []byte(c.in), Options{})
		if err != nil {
			t.Fatal(err)
		}
		talk := Join(clip)
		checkTalk(t, talk)
		var lines []int
		for _, w := range clip.Warnings {
			lines = append(lines, w.Line)
		}
		if talk.Text != c.want || !slices.Equal(lines, c.lines) {
			t.Errorf("%s: %s %+v", name, talk.Text, clip.Warnings)
		}
	}
}

func TestOverlaps(t *testing.T) {
	var lines [][]string
	for i := range 60 {
		lines = append(lines, words(fmt.Sprintf("here is line %d of the talk", i))...)
	}
	a, _ := Read("a.srt", []byte(blocks(lines[:40])), Options{})
	b, _ := Read("b.srt", []byte(strings.ToUpper(blocks(lines[30:]))), Options{})
	c, _ := Read("c.srt", []byte(blocks(words("here is line 3 of the talk/and something else"))), Options{})
	talk := Join(a, b, c)
	got := Overlaps(talk)
	if len(got) != 1 {
		t.Fatalf("%d overlaps: %+v", len(got), got)
	}
	o := got[0]
	if o.A != 0 || o.B != 1 || o.AFrom != 30*7 || o.ATo != 40*7 || o.BFrom != 40*7 || o.BTo != 50*7 || o.AStart != 60 || o.BStart != 0 {
		t.Errorf("%+v", o)
	}
	misheard, _ := Read("d.srt", []byte(strings.Replace(blocks(lines[30:]), "line 34", "lime thirty four", 1)), Options{})
	if got := Overlaps(Join(a, misheard)); len(got) != 1 || got[0].AFrom != 30*7 || got[0].ATo != 40*7 || got[0].BTo != 50*7+1 {
		t.Errorf("with a word misheard: %+v", got)
	}
	if n := len(Overlaps(Join(a, c))); n != 0 {
		t.Errorf("a short phrase said twice gave %d overlaps", n)
	}
}

// Where two people talk at once, a rolling caption starts before the one whose line it
// shows again: every word stands once all the same, in the order of the file.
func TestRollingOverlap(t *testing.T) {
	vtt := "WEBVTT\n\n" +
		"00:00:01.000 --> 00:00:04.000\n \nhold<00:00:01.500><c> the</c><00:00:02.000><c> bolt</c>\n\n" +
		"00:00:04.000 --> 00:00:04.010\nhold the bolt\n \n\n" +
		"00:00:04.010 --> 00:00:08.000\nhold the bolt\nand<00:00:04.500><c> turn</c><00:00:05.000><c> the</c><00:00:05.500><c> nut</c>\n\n" +
		"00:00:08.000 --> 00:00:08.010\nand turn the nut\n \n\n" +
		"00:00:07.200 --> 00:00:11.000\nand turn the nut\nwhich<00:00:07.600><c> way</c><00:00:08.000><c> round</c>\n\n" +
		"00:00:11.000 --> 00:00:11.010\nwhich way round\n \n\n" +
		"00:00:11.010 --> 00:00:14.000\nwhich way round\nto<00:00:11.500><c> the</c><00:00:12.000><c> left</c>\n"
	clip, err := Read("x.vtt", []byte(vtt), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(clip.Warnings) > 0 {
		t.Errorf("warned of %v", clip.Warnings)
	}
	if got, want := Join(clip).Text, "hold the bolt and turn the nut which way round to the left"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
