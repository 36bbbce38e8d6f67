package extract

import (
	"strings"
	"sync"

	"wrenchword/extract/lexicon"
	"wrenchword/normalize"
)

// class is a set of sets of words: which of the sets that the reading asks for at
// every word a token's word is in. It is looked up once a token. More than 32 would
// make every token larger: sets that few words are in share wSeldom.
type class uint32

const (
	wOpener class = 1 << iota
	wSubject
	wPronoun
	wLinking
	wHoldsClause
	wDeterminer
	wPreposition
	wDropAdj
	wPlace
	wLeadsName
	wInterjection
	wEndsPhrase
	wLeadsVerb
	wParticle
	wOff
	wOn
	wReturning
	wStop
	wDrop
	wNumber
	wBetween
	wCountOf // tells how many there are: countOf has it
	wWitness // may begin what tells of one who gives a figure
	wSeldom  // in one of the sets that are marked so below, which is asked for itself then
	wCounts  // a number or a quantity may begin with it
	wName    // a name may begin with it
	wCue     // a cue may begin with it
	wForm    // a form of a verb, as the vocabulary knows it
	wVerb    // a verb of the workshop in its plain form
	wInUse   // what isVerbForm tells
)

// classOf gives the class of a word by the sets it is in.
var classOf = sync.OnceValue(func() map[string]class {
	of := make(map[string]class, 1<<10)
	for _, s := range []struct {
		class
		words *wordSet
	}{
		{wOpener, openers}, {wSubject, subjects}, {wPronoun, pronounsObj}, {wLinking, linking}, {wHoldsClause, holdsClause},
		{wDeterminer, determiner}, {wPreposition, prepositions}, {wDropAdj, dropAdj}, {wPlace, placeWords}, {wLeadsName, leadsName},
		{wInterjection, interjections}, {wEndsPhrase, endsPhrase}, {wLeadsVerb, leadsVerb}, {wParticle, particle},
		{wOff, offWords}, {wOn, onWords}, {wReturning, returning}, {wStop, stopWords}, {wDrop, dropWords}, {wNumber, numberWord}, {wBetween, between},
		{wSeldom, makeshifts}, {wSeldom, bins}, {wSeldom, leadsUnit}, {wSeldom, blow}, {wSeldom, theOnes},
		{wSeldom, figures}, {wSeldom, amounts}, {wSeldom, adjusted}, {wSeldom, askedOf}, {wSeldom, wanted}, {wSeldom, lent}, {wSeldom, set("from off")}, {wSeldom, scraps}, {wSeldom, leadsWant}, {wSeldom, sides}, {wSeldom, damage}, {wSeldom, leverage}, {wSeldom, lengths}, {wSeldom, tightWords}, {wWitness, printed}, {wWitness, states}, {wWitness, contrast}, {wWitness, writtenBy}, {wWitness, introduces},
	} {
		for w := range strings.FieldsSeq(s.words.words()) {
			of[w] |= s.class
		}
	}
	for w := range pluralSize {
		of[w] |= wSeldom
	}
	for w := range handBy {
		of[w] |= wSeldom
	}
	for w := range countOf {
		of[w] |= wCountOf
	}
	return of
})

// is tells whether the word is in any of some sets.
func (c class) is(any class) bool { return c&any != 0 }

// classIn gives the class of a word by the sets it is in and by what the vocabulary knows.
func classIn(lex *lexicon.Lexicon, word string, id lexicon.ID) class {
	c := classOf()[word]
	if normalize.Counts(word) {
		c |= wCounts
	}
	if id == 0 {
		return c
	}
	name, cue := lex.Begins(id)
	if name {
		c |= wName
	}
	if cue {
		c |= wCue
	}
	if len(lex.PatternsOf(id)) > 0 {
		c |= wVerb
	}
	for _, plain := range lex.LemmasOf(id) {
		c |= wForm
		if plain != id || len(lex.PatternsOf(plain)) > 0 {
			c |= wInUse
		}
	}
	return c
}

// kind gives the class of the word at token i, none past the ends.
func (r *reading) kind(i int) class {
	if i < 0 || i >= len(r.toks) {
		return 0
	}
	return r.toks[i].class
}
