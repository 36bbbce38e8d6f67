package render

import (
	"strings"
	"unicode"

	"wrenchword/normalize/pattern"
)

var inlineMarks = strings.NewReplacer(
	`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "[", `\[`, "]", `\]`,
	"<", `\<`, "&", `\&`, "~", `\~`, "|", `\|`,
)

var bareAddress = pattern.Of(`(?i)\b(https?|ftp|www|mailto)(:|\.)`)

// isPlain tells whether s is ASCII without a mark or a white space that
// escapeMarkdown would change: nearly all that is said.
func isPlain(s string) bool {
	blank := true
	for i := range len(s) {
		switch c := s[i]; {
		case c < ' ' || c >= 0x7f || c == ' ' && blank:
			return false
		case c == '\\' || c == '`' || c == '*' || c == '_' || c == '[' || c == ']' || c == '<' || c == '&' || c == '~' || c == '|':
			return false
		default:
			blank = c == ' '
		}
	}
	return !blank
}

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
	if !isPlain(s) {
		s = foldAndMark(s)
	}
	// A viewer that makes links of bare addresses must not make one here.
	if mayHoldAddress(s) {
		s = bareAddress().ReplaceAllStringFunc(s, func(m string) string {
			return m[:len(m)-1] + `\` + m[len(m)-1:]
		})
	}
	if s == "" {
		return s
	}
	if strings.IndexByte("#+->=", s[0]) >= 0 {
		return `\` + s
	}
	// A number with a point or a bracket would begin a list.
	n := 0
	for n < len(s) && n < 9 && '0' <= s[n] && s[n] <= '9' {
		n++
	}
	if n > 0 && n < len(s) && (s[n] == '.' || s[n] == ')') {
		return s[:n] + `\` + s[n:]
	}
	return s
}

// foldAndMark folds white space, drops control characters and marks what would be
// markup wherever it stands.
func foldAndMark(s string) string {
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
	return inlineMarks.Replace(strings.Join(strings.Fields(s), " "))
}
