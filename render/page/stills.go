package page

import "html/template"

// Still is one picture by time.
type Still struct {
	At    string // as a clock shows it, "" for the person's own photograph
	Alt   string
	Why   string
	Image template.URL // a data: address
}
