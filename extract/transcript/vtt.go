package transcript

import (
	"html"
	"slices"
	"strings"
)

// WebVTT as "WebVTT: The Web Video Text Tracks Format" (W3C) has it parsed:
// sections 6.1 (blocks), 6.3 (timings) and 6.4 (cue text).

func isVTT(text string) bool {
	rest, ok := strings.CutPrefix(text, "WEBVTT")
	return ok && (rest == "" || rest[0] == ' ' || rest[0] == '\t' || rest[0] == '\n')
}

func parseVTT(p *parser) error {
	if err := vttBlocks(p, vttTimings); err != nil || len(p.clip.Cues) > 0 {
		return err
	}
	// Not one cue has times as the standard wants them. Rather than to lose the
	// whole file, they are read as SubRip's are, if that makes sense of most.
	strict, unsaid := p.clip.Warnings, p.unsaid
	p.clip.Warnings, p.unsaid = nil, 0
	broken := 0
	err := vttBlocks(p, func(line string) (float64, float64, bool) {
		start, end, kind := srtTimings(line)
		if kind != timesGood {
			broken++
		}
		return start, end, kind == timesGood
	})
	if n := len(p.clip.Cues); n < 2 || n < broken {
		p.clip.Cues, p.clip.Warnings, p.unsaid = nil, strict, unsaid
		return err
	}
	p.warn(p.clip.Cues[0].Line, "the times are not as WebVTT has them (00:01:02.345); they were read all the same")
	return err
}

func vttBlocks(p *parser, timings func(string) (float64, float64, bool)) error {
	cues := min(strings.Count(p.text, "-->"), p.opt.MaxCues)
	p.clip.Cues = slices.Grow(p.clip.Cues, cues)
	if timed := strings.Count(p.text, "<") / 3; timed > 0 { // a time and a pair of tags a word; a third of such a file is text
		p.builder.words = slices.Grow(p.builder.words, min(timed+cues, len(p.text)/8))
		p.builder.text.Grow(len(p.text) / 3)
	}
	l := lines{s: p.text}
	l.next()
	header := true // whatever stands right under the first line belongs to the header
	for l.pos < len(l.s) {
		if !header && l.s[l.pos] == '\n' {
			l.next()
			continue
		}
		if err := vttBlock(p, &l, header, timings); err != nil {
			return err
		}
		header = false
	}
	return nil
}

// vttBlock reads one block: a cue, or a note, a style, a region or a header,
// which are passed over.
func vttBlock(p *parser, l *lines, header bool, timings func(string) (float64, float64, bool)) error {
	var cue Cue
	var arrow, good bool
	from, to := 0, 0 // the text of the cue
	first, firstLine := "", 0
	for count := 1; ; count++ {
		before := *l
		line, ok := l.next()
		if !ok || line == "" {
			break
		}
		if strings.Contains(line, "-->") {
			if header || arrow || count > 2 {
				*l = before // it starts the next block
				break
			}
			arrow = true
			from, to = l.pos, l.pos
			cue.Line = l.n
			if cue.Start, cue.End, good = timings(line); !good {
				p.warn(l.n, "the cue was skipped: its times cannot be read: %s", excerpt(line))
			}
			continue
		}
		if to = before.pos + len(line); count == 1 {
			first, firstLine = line, l.n
		}
	}
	if !good {
		if !arrow && !header && !vttAside(first) {
			p.warn(firstLine, "text without times was left out: %s", excerpt(first))
		}
		return nil
	}
	cue.Text, cue.Words = p.builder.vtt(p.text[from:max(from, to)], cue.Start, cue.End)
	return p.add(cue)
}

// vttAside tells the first line of a block that is no cue and not meant as one.
func vttAside(line string) bool {
	for _, s := range []string{"NOTE", "STYLE", "REGION", "Region:"} {
		if strings.HasPrefix(line, s) {
			return true
		}
	}
	return false
}

func vttTimings(line string) (start, end float64, ok bool) {
	i := skipBlanks(line, 0)
	start, n := vttClock(line[i:])
	if n == 0 {
		return 0, 0, false
	}
	i = skipBlanks(line, i+n)
	if !strings.HasPrefix(line[i:], "-->") {
		return 0, 0, false
	}
	i = skipBlanks(line, i+3)
	end, n = vttClock(line[i:])
	return start, end, n > 0
}

// vttClock is the specification's "collect a WebVTT timestamp": stricter than clock.
func vttClock(s string) (sec float64, n int) {
	if s == "" || !isDigit(s[0]) {
		return 0, 0
	}
	if len(s) >= 12 && s[2] == ':' && s[5] == ':' && s[8] == '.' && (len(s) == 12 || !isDigit(s[12])) { // nearly all
		h, m, sec, ms := twoDigits(s), twoDigits(s[3:]), twoDigits(s[6:]), 10*twoDigits(s[9:])+int(s[11]-'0')
		if h >= 0 && 0 <= m && m <= 59 && 0 <= sec && sec <= 59 && ms >= 0 && isDigit(s[11]) {
			return float64(h*3600+m*60+sec) + float64(ms)/1000, 12
		}
		return 0, 0
	}
	v1, w := digits(s)
	if w == 0 || w > 9 {
		return 0, 0
	}
	hours := w != 2 || v1 > 59
	n = w
	two := func() (float64, bool) {
		if n >= len(s) || s[n] != ':' {
			return 0, false
		}
		v, w := digits(s[n+1:])
		n += 1 + w
		return v, w == 2 && v <= 59
	}
	v2, ok := two()
	if !ok {
		return 0, 0
	}
	v3 := v2
	if hours || n < len(s) && s[n] == ':' {
		if v3, ok = two(); !ok {
			return 0, 0
		}
	} else {
		v1, v2 = 0, v1
	}
	if n >= len(s) || s[n] != '.' {
		return 0, 0
	}
	v4, w := digits(s[n+1:])
	if w != 3 {
		return 0, 0
	}
	return v1*3600 + v2*60 + v3 + v4/1000, n + 4
}

// twoDigits is the number that s begins with in two digits, far below 0 where it does not.
func twoDigits(s string) int {
	if isDigit(s[0]) && isDigit(s[1]) {
		return int(s[0]-'0')*10 + int(s[1]-'0')
	}
	return -1000
}

// textBuilder makes the plain texts and the timed words of all cues of a file
// in two growing pieces of memory.
type textBuilder struct {
	text  strings.Builder
	words []CueWord
}

// vtt takes the markup out of a WebVTT cue text, resolves its entities and
// keeps the times that stand inside it.
func (b *textBuilder) vtt(raw string, start, end float64) (string, []CueWord) {
	if strings.IndexByte(raw, '<') < 0 {
		return unescape(raw), nil
	}
	lo := b.text.Len()
	firstWord := len(b.words)
	pending, last := -1.0, start // time of the next word; time of the one before
	lineFirst, tagged := -1, false
	inside := false
	for len(raw) > 0 {
		if raw[0] == '<' {
			i := strings.IndexByte(raw, '>')
			tag := raw[1:]
			if i >= 0 {
				tag, raw = raw[1:i], raw[i+1:]
			} else {
				raw = ""
			}
			if at, n := vttClock(tag); n > 0 && n == len(tag) {
				if at >= last && (end <= start || at <= end) {
					pending, last = at, at
					if !tagged {
						tagged = true
						if lineFirst >= 0 {
							b.words = append(b.words, CueWord{Lo: uint32(lineFirst), At: start})
						}
					}
				}
			}
			continue
		}
		i := strings.IndexByte(raw, '<')
		if i < 0 {
			i = len(raw)
		}
		run := unescape(raw[:i])
		raw = raw[i:]
		base := b.text.Len() - lo
		b.text.WriteString(run)
		for j := 0; j < len(run); j++ {
			switch run[j] {
			case '\n':
				if !tagged {
					lineFirst = -1
				}
				inside = false
			case ' ', '\t', '\f':
				inside = false
			default:
				if inside {
					pending = -1 // a time inside a word says nothing of the next one
					continue
				}
				inside = true
				if lineFirst < 0 {
					lineFirst = base + j
				}
				if pending >= 0 {
					b.words = append(b.words, CueWord{Lo: uint32(base + j), At: pending})
					pending = -1
				}
			}
		}
	}
	text := b.text.String()[lo:]
	return text, closeWords(text, b.words[firstWord:len(b.words):len(b.words)], end)
}

// closeWords sets where each timed word ends, in the text and in time.
func closeWords(text string, words []CueWord, end float64) []CueWord {
	if len(words) == 0 {
		return nil
	}
	for i := range words {
		w := &words[i]
		w.Hi = w.Lo + uint32(wordLen(text[w.Lo:]))
		if i+1 < len(words) {
			w.End = words[i+1].At
		} else {
			w.End = max(end, w.At)
		}
	}
	return words
}

func wordLen(s string) int {
	for i := 0; i < len(s); i++ {
		if class[s[i]] == isSpace {
			return i
		}
	}
	return len(s)
}

func unescape(s string) string {
	if strings.IndexByte(s, '&') < 0 {
		return s
	}
	return html.UnescapeString(s)
}

// excerpt is a piece of a line fit for a message.
func excerpt(s string) string {
	s = strings.ToValidUTF8(strings.TrimSpace(s), "\uFFFD")
	if r := []rune(s[:min(len(s), 240)]); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}
