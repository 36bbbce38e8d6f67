package transcript

import (
	"slices"
	"strings"
)

// SubRip has no standard; it is read by what its times say. SBV, the plainer
// form with "start,end" over each cue, is read the same way.

func isSRT(text string) bool {
	return anyLine(text, func(s string) bool { _, _, k := srtTimings(s); return k == timesGood })
}

func isSBV(text string) bool {
	return anyLine(text, func(s string) bool { _, _, k := sbvTimings(s); return k == timesGood })
}

type timesKind int

const (
	timesNone   timesKind = iota // a line of text
	timesGood                    // the times of a cue
	timesBroken                  // meant as times, but not readable
)

func srtTimings(line string) (start, end float64, kind timesKind) {
	at := strings.Index(line, "-->")
	if at < 0 {
		return 0, 0, timesNone
	}
	left, right := strings.TrimSpace(line[:at]), strings.TrimSpace(line[at+3:])
	start, n := srtClock(left)
	end, m := srtClock(right)
	switch {
	case n > 0 && n == len(left) && m > 0 && (m == len(right) || right[m] == ' ' || right[m] == '\t'):
		return start, end, timesGood
	case left == "" && right == "", left != "" && (isDigit(left[0]) || left[0] == '-'), left == "" && m > 0:
		return 0, 0, timesBroken
	}
	return 0, 0, timesNone // an arrow somebody wrote in the text
}

// srtClock also takes seconds of one or three digits.
func srtClock(s string) (float64, int) { return clockOf(s, 1, 3) }

func sbvTimings(line string) (start, end float64, kind timesKind) {
	line = strings.TrimSpace(line)
	if line == "" || !isDigit(line[0]) {
		return 0, 0, timesNone
	}
	a, b, ok := strings.Cut(line, ",")
	if !ok || strings.ContainsAny(line, " \t") || strings.Count(a, ":") == 0 {
		return 0, 0, timesNone
	}
	start, n := clock(a)
	end, m := clock(b)
	if n == len(a) && m == len(b) && n > 0 && m > 0 && strings.IndexByte(a, '.') > 0 {
		return start, end, timesGood
	}
	if strings.Count(b, ":") == 0 {
		return 0, 0, timesNone
	}
	return 0, 0, timesBroken
}

func parseSRT(p *parser) error { return parseBlocks(p, srtTimings, true) }
func parseSBV(p *parser) error { return parseBlocks(p, sbvTimings, false) }

// parseBlocks reads cues that each stand under a line of times and reach to the next one.
func parseBlocks(p *parser, timings func(string) (float64, float64, timesKind), numbered bool) error {
	if numbered {
		p.clip.Cues = slices.Grow(p.clip.Cues, min(strings.Count(p.text, "-->"), p.opt.MaxCues))
	}
	l := lines{s: p.text}
	var cue Cue
	var kind timesKind // of the times last seen
	var body []string  // the lines under them
	number := 0        // of the cue under way, where its line has one
	done := func() error {
		if kind != timesGood {
			return nil
		}
		cue.Text = p.srtBody(body, cue.Line, number)
		return p.add(cue)
	}
	for {
		line, ok := l.next()
		if !ok {
			break
		}
		start, end, k := timings(line)
		if k == timesNone {
			body = append(body, line)
			continue
		}
		next := 0
		if numbered {
			body, next = cutNumber(body, number)
		}
		if err := done(); err != nil {
			return err
		}
		if k == timesBroken {
			p.warn(l.n, "the cue was skipped: its times cannot be read: %s", excerpt(line))
		}
		cue = Cue{Start: start, End: end, Line: l.n}
		kind, body, number = k, body[:0], next
	}
	if numbered && number > 0 {
		if cut, next := cutNumber(body, number); next == number+1 {
			body = cut // the file breaks off after a number
		}
	}
	return done()
}

// cutNumber takes the number of the next cue off the end of body: a line of
// digits under a blank line, or (where blank lines were lost) the number that
// comes next.
func cutNumber(body []string, number int) ([]string, int) {
	n := len(body)
	for n > 0 && isBlank(body[n-1]) {
		n--
	}
	if n == 0 {
		return body, 0
	}
	v, ok := wholeNumber(body[n-1])
	if ok && (n == 1 && number == 0 || n > 1 && isBlank(body[n-2]) || n > 1 && v == number+1) {
		return body[:n-1], v
	}
	if ok && n == 1 {
		return body[:0], v
	}
	return body, 0
}

func wholeNumber(s string) (int, bool) {
	s = strings.TrimSpace(s)
	v, n := digits(s)
	return int(min(v, 1e9)), n > 0 && n == len(s)
}

// srtBody joins the lines of a cue without its blank ones. A block that carries
// the next cue's number but no times is left out with a warning.
func (p *parser) srtBody(body []string, line, number int) string {
	lo := p.builder.text.Len()
	blank := false
	for i, s := range body {
		if isBlank(s) {
			blank = i > 0
			continue
		}
		if v, ok := wholeNumber(s); blank && ok && number > 0 && v == number+1 && i+1 < len(body) {
			p.warn(line+1+i, "cue %d has no times; its text was skipped", v)
			break
		}
		blank = false
		if p.builder.text.Len() > lo {
			p.builder.text.WriteByte('\n')
		}
		p.builder.text.WriteString(stripTags(s))
	}
	return p.builder.text.String()[lo:]
}

// stripTags takes HTML-like tags, {\an8} and [br] out of a line and resolves entities.
func stripTags(s string) string {
	if !strings.ContainsAny(s, "<{&[") {
		return s
	}
	var b strings.Builder
	closed := func(i int, end byte) int { return strings.IndexByte(s[i:], end) }
	angle, brace := closed(0, '>') >= 0, closed(0, '}') >= 0 // one may follow
	for i := 0; i < len(s); {
		switch {
		case angle && s[i] == '<' && i+1 < len(s) && (s[i+1] == '/' || isLetter(s[i+1]) || isTimeTag(s[i:])):
			j := closed(i, '>')
			if angle = j > 0; angle {
				i += j + 1
				continue
			}
		case brace && strings.HasPrefix(s[i:], `{\`):
			j := closed(i, '}')
			if brace = j > 0; brace {
				i += j + 1
				continue
			}
		case strings.HasPrefix(s[i:], "[br]"):
			b.WriteByte('\n')
			i += 4
			continue
		}
		b.WriteByte(s[i])
		i++
	}
	return unescape(b.String())
}

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

func isTimeTag(s string) bool {
	_, n := clock(s[1:])
	return n > 0 && 1+n < len(s) && s[1+n] == '>'
}
