package transcript

import (
	"math"
	"sort"
	"strings"
)

// Plain text with a time before each line or paragraph, or on a line of its own:
//
//	[0:41] text    (1:12:08) text    0:41 text    [0:00 - 0:06] text
//	**[0:41]** text    - 0:41 text    [00:00.000 --> 00:02.500] text

// marker is the time at the start of a line.
type marker struct {
	start, end float64
	open       byte // '[', '(' or 0: the shape, which a file keeps to
	size       int  // bytes of the line up to the text
}

// isPlain asks for a time in brackets, for a bare one above all other text, or
// for two bare ones: "10:30 we met" in the middle of a letter is no transcript.
func isPlain(text string) bool {
	bare, above := 0, true
	return anyLine(text, func(s string) bool {
		m, ok := plainMarker(s)
		if ok && m.open == 0 {
			bare++
		}
		found := ok && (m.open != 0 || above || bare >= 2)
		above = above && (isBlank(s) || isHeading(s))
		return found
	})
}

// isArrowText tells the shape that some recognisers print, with an arrow inside brackets.
func isArrowText(text string) bool {
	return anyLine(text, func(s string) bool {
		m, ok := plainMarker(s)
		return ok && m.open != 0 && strings.Contains(s[:m.size], "-->")
	})
}

func plainMarker(s string) (m marker, ok bool) {
	i := 0
	for i < len(s) && strings.IndexByte(" \t-*>_`", s[i]) >= 0 { // blanks, list marks, emphasis
		i++
	}
	if i >= len(s) {
		return m, false
	}
	if s[i] == '[' || s[i] == '(' {
		m.open = s[i]
		i = skipBlanks(s, i+1)
	}
	start, n := clock(s[i:])
	if n == 0 {
		return m, false
	}
	m.start = start
	i += n
	if j := skipBlanks(s, i); j < len(s) {
		if strings.HasPrefix(s[j:], "--") && !strings.HasPrefix(s[j:], "--> ") {
			return m, false // the times of a broken cue
		}
		for _, dash := range []string{"-->", "->", "-", "–", "—", "to ", "/"} {
			if rest, found := strings.CutPrefix(s[j:], dash); found {
				k := skipBlanks(rest, 0)
				if end, n := clock(rest[k:]); n > 0 {
					m.end = end
					i = len(s) - len(rest) + k + n
				}
				break
			}
		}
	}
	if m.open != 0 {
		i = skipBlanks(s, i)
		if i >= len(s) || s[i] != closing(m.open) {
			return m, false
		}
		i++
	}
	for i < len(s) && (s[i] == '*' || s[i] == '_' || s[i] == '`') {
		i++
	}
	if m.open == 0 && i < len(s) && s[i] == ':' { // "0:41: text"
		i++
	}
	if m.open == 0 && i < len(s) && s[i] != ' ' && s[i] != '\t' {
		return m, false // "10:30am", "0:41th"
	}
	i = skipBlanks(s, i)
	for _, dash := range []string{"- ", "– ", "— "} { // a dash between the time and the text
		if rest, found := strings.CutPrefix(s[i:], dash); found && m.open == 0 {
			i = skipBlanks(s, len(s)-len(rest))
			break
		}
	}
	m.size = i
	return m, true
}

func closing(open byte) byte {
	if open == '[' {
		return ']'
	}
	return ')'
}

func parsePlain(p *parser) error {
	l := lines{s: p.text}
	var cue Cue
	have, blank := false, true
	var open byte
	early := 0 // line of the first text before any time
	lo := 0
	b := &p.builder.text
	done := func() error {
		if !have {
			return nil
		}
		cue.Text = b.String()[lo:]
		return p.add(cue)
	}
	for {
		line, ok := l.next()
		if !ok {
			break
		}
		if isBlank(line) {
			blank = true
			continue
		}
		m, ok := plainMarker(line)
		if ok && have && m.open != open {
			ok = false // a time that was said, not one that marks a line
		}
		switch {
		case ok:
			if err := done(); err != nil {
				return err
			}
			have, open = true, m.open
			cue = Cue{Start: m.start, End: m.end, Line: l.n, Para: blank}
			line = line[m.size:]
			lo = b.Len()
		case blank && isHeading(line):
			continue
		case !have:
			if early == 0 {
				early = l.n
				p.warn(l.n, "text before the first time was left out")
			}
			blank = false
			continue
		}
		blank = false
		if have && b.Len() == lo && l.n == cue.Line+1 && spelledTime(line, cue.Start) {
			continue
		}
		if line = strings.TrimSpace(line); line != "" {
			if b.Len() > lo {
				b.WriteByte('\n')
			}
			b.WriteString(line)
		}
	}
	if err := done(); err != nil {
		return err
	}
	markParagraphs(p.clip.Cues)
	return nil
}

// spelledTime tells a line that says the time above it in words ("1 minute, 12
// seconds"), as panes of transcripts do for those who listen to the screen.
func spelledTime(line string, at float64) bool {
	f := strings.Fields(strings.ReplaceAll(line, ",", " "))
	if len(f) == 0 || len(f)%2 != 0 {
		return false
	}
	sum := 0.0
	for i := 0; i < len(f); i += 2 {
		v, n := digits(f[i])
		if n != len(f[i]) {
			return false
		}
		switch strings.TrimSuffix(f[i+1], "s") {
		case "hour":
			sum += v * 3600
		case "minute":
			sum += v * 60
		case "second":
			sum += v
		default:
			return false
		}
	}
	return sum == math.Trunc(at)
}

// isHeading tells a Markdown heading or rule.
func isHeading(line string) bool {
	t := strings.TrimLeft(line, "#")
	n := len(line) - len(t)
	return n >= 1 && n <= 6 && (t == "" || t[0] == ' ') || strings.Trim(line, "-=* ") == ""
}

// markParagraphs keeps Cue.Para only where the timed pieces are paragraphs and
// not lines cut at a width: most end a sentence, or most are long.
func markParagraphs(cues []Cue) {
	apart, ended := 0, 0
	var sizes []int
	for _, c := range cues {
		if c.Para {
			apart++
		}
		t := strings.TrimRight(c.Text, " \"'”’)]")
		if t != "" && strings.IndexByte(".?!", t[len(t)-1]) >= 0 || strings.HasSuffix(t, "…") {
			ended++
		}
		sizes = append(sizes, len(c.Text))
	}
	sort.Ints(sizes)
	n := len(cues)
	long := n > 0 && sizes[n/2] >= 120
	paragraphs := n > 0 && (ended*10 >= n*9 || long || apart*2 >= n && ended*10 >= n*6)
	for i := range cues {
		cues[i].Para = paragraphs
	}
}
