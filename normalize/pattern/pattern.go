// Package pattern keeps regular expressions that most runs do without.
package pattern

import (
	"regexp"
	"sync"
)

// Of gives what compiles the expression when it is first called, and gives it
// again after. It panics there where the expression is none.
func Of(expr string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expr) })
}
