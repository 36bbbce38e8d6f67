package page

var (
	EscapeMediaWiki = escapeMediaWiki
	Clean           = clean
)
