package render

import (
	"regexp"
	"strings"
)

var inlineMarks = strings.NewReplacer(
	`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "[", `\[`, "]", `\]`,
	"<", `\<`, "&", `\&`, "~", `\~`, "|", `\|`,
)

var (
	lineStartNumber = regexp.MustCompile(`^(\d{1,9})([.)])`)
	bareAddress     = regexp.MustCompile(`(?i)\b(https?|ftp|www|mailto)(:|\.)`)
)

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
	if strings.ContainsAny(s, ":.") {
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
