package transcript

import "strings"

// format is one form of timed text. A new one is a file of its own and a row in formats.
type format struct {
	name  string                 // as Clip.Format gives it
	is    func(text string) bool // told from the content alone
	parse func(*parser) error
}

// formats in the order in which they are tried: the surest sign first.
var formats = []format{
	{"webvtt", isVTT, parseVTT},
	{"json", isJSON, parseJSON},
	{"ttml", isTTML, parseTTML},
	{"text", isArrowText, parsePlain},
	{"subrip", isSRT, parseSRT},
	{"sbv", isSBV, parseSBV},
	{"text", isPlain, parsePlain},
}

func detect(text string) *format {
	for i := range formats {
		if formats[i].is(text) {
			return &formats[i]
		}
	}
	return nil
}

// lines walks the lines of a text and knows where it is.
type lines struct {
	s   string
	pos int // start of the next line
	n   int // number of the line last given, from 1
}

func (l *lines) next() (string, bool) {
	if l.pos >= len(l.s) {
		return "", false
	}
	l.n++
	rest := l.s[l.pos:]
	if i := strings.IndexByte(rest, '\n'); i >= 0 {
		l.pos += i + 1
		return rest[:i], true
	}
	l.pos = len(l.s)
	return rest, true
}

// anyLine tells whether one of the lines of text pleases is.
func anyLine(text string, is func(string) bool) bool {
	l := lines{s: text}
	for {
		line, ok := l.next()
		if !ok {
			return false
		}
		if is(line) {
			return true
		}
	}
}

func isBlank(s string) bool { return strings.TrimSpace(s) == "" }
