package render

// EscapeMarkdown makes s plain text anywhere in a CommonMark document with GFM
// tables; its white space is folded and its control characters are gone.
func EscapeMarkdown(s string) string { return escapeMarkdown(s) }
