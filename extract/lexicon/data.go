package lexicon

import (
	_ "embed"
	"hash/crc32"
)

// The vocabulary as people edit it, one file a section.
var (
	//go:embed data/inflections.txt
	inflectionsText string
	//go:embed data/consumables.txt
	consumablesText string
	//go:embed data/fasteners.txt
	fastenersText string
	//go:embed data/fates.txt
	fatesText string
	//go:embed data/fillers.txt
	fillersText string
	//go:embed data/innocent.txt
	innocentText string
	//go:embed data/open.txt
	openText string
	//go:embed data/partnames.txt
	partnamesText string
	//go:embed data/parts.txt
	partsText string
	//go:embed data/talk.txt
	talkText string
	//go:embed data/tools.txt
	toolsText string
	//go:embed data/uses.txt
	usesText string
	//go:embed data/usual.txt
	usualText string
	//go:embed data/verbs.txt
	verbsText string
	//go:embed data/warn.txt
	warnText string
)

// files are the files of data/ in the order they are read in. Inflections come
// first: verbs are read in all their forms.
var files = [...]struct {
	section string
	text    *string
}{
	{"inflections", &inflectionsText},
	{"consumables", &consumablesText},
	{"fasteners", &fastenersText},
	{"fates", &fatesText},
	{"fillers", &fillersText},
	{"innocent", &innocentText},
	{"open", &openText},
	{"partnames", &partnamesText},
	{"parts", &partsText},
	{"talk", &talkText},
	{"tools", &toolsText},
	{"usual", &usualText},
	{"verbs", &verbsText},
	{"uses", &usesText}, // of the actions of the verbs
	{"warn", &warnText},
}

// What compiled.go has: the files as they were compiled, and their sum at that time.
//
//go:generate go test . -run Compiled -update -tags uncompiled
var (
	compiled   *Lexicon
	compiledOf uint32
)

// sum tells the text of the files from any other.
func sum() (sum uint32) {
	piece := make([]byte, 4<<10) // a string as bytes would be a copy of it all
	for _, f := range &files {
		for rest := *f.text; rest != ""; {
			n := copy(piece, rest)
			sum, rest = crc32.Update(sum, crc32.IEEETable, piece[:n]), rest[n:]
		}
	}
	return sum
}
