package page

var (
	EscapeMediaWiki = escapeMediaWiki
	Clean           = clean
	RichHTML        = func(s string) string { return string(rich(s).HTML) }
)
