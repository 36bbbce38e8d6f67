package render

import (
	"regexp"
	"strings"
	"unicode"
)

var inlineMarks = strings.NewReplacer(
	`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "[", `\[`, "]", `\]`,
	"<", `\<`, "&", `\&`, "~", `\~`, "|", `\|`,
)

var (
	lineStartNumber = regexp.MustCompile(`^(\d{1,9})([.)])`)
	bareAddress     = regexp.MustCompile(`(?i)\b(https?|ftp|www|mailto)(:|\.)`)
)

// mayHoldAddress tells cheaply whether there may be a bare address in s: before a
// colon or a point stands what an address begins with, or no ASCII.
func mayHoldAddress(s string) bool {
	for i := range len(s) {
		if s[i] != ':' && s[i] != '.' || i < 3 {
			continue
		}
		before := strings.ToLower(s[max(0, i-6):i])
		for _, end := range []string{"http", "https", "ftp", "www", "mailto"} {
			if strings.HasSuffix(before, end) {
				return true
			}
		}
		if strings.IndexFunc(before, func(r rune) bool { return r > unicode.MaxASCII }) >= 0 {
			return true
		}
	}
	return false
}

// escapeMarkdown makes s plain text anywhere in a CommonMark document with GFM
// tables, at the start of a line and in a cell included: read back, it is s
// with its white space folded and its control characters gone.
func escapeMarkdown(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n' || r == '\r' || r == '\u0085' || r == '\u2028' || r == '\u2029':
			return ' '
		case r < ' ' || r == 0x7f:
			return -1
		// Direction marks could make a line read otherwise than it is written.
		case r >= '\u202a' && r <= '\u202e', r >= '\u2066' && r <= '\u2069':
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, "\ufffd"))
	s = inlineMarks.Replace(strings.Join(strings.Fields(s), " "))
	// A viewer that makes links of bare addresses must not make one here.
	if mayHoldAddress(s) {
		s = bareAddress.ReplaceAllStringFunc(s, func(m string) string {
			return m[:len(m)-1] + `\` + m[len(m)-1:]
		})
	}
	switch {
	case s == "":
	case strings.IndexByte("#+->=", s[0]) >= 0:
		s = `\` + s
	case s[0] >= '0' && s[0] <= '9':
		s = lineStartNumber.ReplaceAllString(s, `$1\$2`)
	}
	return s
}
