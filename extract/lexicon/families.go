package lexicon

import (
	_ "embed"
	"fmt"
	"strings"
	"sync"
)

// Words that are of one kind to the rules of the reading, whatever the trade: who people are,
// where things are put down, what has a plug. data/families.txt tells how a family is written.
//
//go:embed data/families.txt
var familiesText string

// Family gives the words of a family, with blanks between them: those of its own line and of
// the families that it takes in. It panics where there is no such family, since none is asked
// for but by the code; TestFamilies asks for all.
func Family(name string) string {
	var b strings.Builder
	addFamily(&b, name, 0)
	return b.String()
}

func addFamily(b *strings.Builder, name string, depth int) {
	words, ok := families()[name]
	if !ok || depth > 8 {
		panic(fmt.Sprintf("families.txt: no family %q, or one that takes itself in", name))
	}
	for w := range strings.FieldsSeq(words) {
		if of, ok := strings.CutPrefix(w, "+"); ok {
			addFamily(b, strings.ReplaceAll(of, "-", " "), depth+1)
			continue
		}
		if b.Len() > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(w)
	}
}

// Families gives the names of all families.
func Families() []string {
	var names []string
	for n := range families() {
		names = append(names, n)
	}
	return names
}

// families are the lines of families.txt by name.
var families = sync.OnceValue(func() map[string]string {
	all := make(map[string]string, 256)
	for line := range strings.Lines(familiesText) {
		if name, words, ok := strings.Cut(line, ":"); ok && line[0] != '#' {
			all[name] = words
		}
	}
	return all
})
