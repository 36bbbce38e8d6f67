package normalize

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

//go:embed data/words.txt
var wordsTXT string

//go:embed data/units.csv
var unitsCSV string

// class is what a word is to the number grammar; exactly one a word.
type class uint8

const (
	cNone class = iota
	cUnit
	cTeen
	cTens
	cScale
	cDenom
	cDenoms
	cHalf
	cDigits // a token of digits, never a word
)

// trait is a set of the other roles a word may have.
type trait uint64

const (
	tMisheard trait = 1 << iota
	tSecond
	tThs
	tArticle
	tAnd
	tPoint
	tMinus
	tTo
	tThrough
	tOr
	tBetween
	tBy
	tOf
	tEm
	tTee
	tEe
	tNumber
	tPer
	tDrive
	tPlus
	tCorrect
	tWeakCorrect
	tFiller
	tMaybe
	tHedge
	tHedgeAfter
	tTighten
	tLoad
	tTool
	tHead
	tDriveTool
	tFastener
	tThread
	tFluid
	tGear
	tTemperature
	tEngine
	tPrice
	tTyre
	tGap
	tClock
	tChain
	tCure
	tMoney
	tClockTime
	tTorx
	tCross
	tPozi
	tJIS
	tPronoun
	tStopOne
	tPour
	tWhole
	tP
	tOver
	tInterval
	tWeather
	tVague
	tMachine
	tOpener
	tMotorway
	tSeries
)

// traitNames is the list of the context classes of data/words.txt, in bit order.
var traitNames = []string{"misheard", "second", "ths", "article", "and", "point", "minus", "to", "through", "or",
	"between", "by", "of", "em", "tee", "ee", "number", "per", "drive", "plus", "correct", "weakcorrect", "filler",
	"maybe", "hedge", "hedgeafter", "tighten", "load", "tool", "head", "drivetool", "fastener", "thread", "fluid",
	"gear", "temperature", "engine", "price", "tyre", "gap", "clock", "chain", "cure", "money", "clocktime", "torx",
	"cross", "pozi", "jis", "pronoun", "stopone", "pour", "whole", "p", "over", "interval", "weather", "vague", "machine", "opener", "motorway", "series"}

var classNames = map[string]class{"unit": cUnit, "teen": cTeen, "tens": cTens, "scale": cScale,
	"denom": cDenom, "denoms": cDenoms, "half": cHalf}

// word is what the lexicon knows of one word.
type word struct {
	text   string
	class  class
	value  int64
	traits trait
	unit   *unitNode // set where the word starts a unit phrase
}

// unit is one reading of a unit phrase.
type unit struct {
	code string
	kind Kind
	need trait // context that must be near, or 0
	// digits: only after a number in digits; glued: only without a space;
	// inword: also a common word; mil, kilo: see reader.
	digits, glued, inword, mil, kilo bool
	assumed                          bool
}

// unitNode is a node of the trie of unit phrases over words.
type unitNode struct {
	next  map[*word]*unitNode
	units []*unit // readings of the phrase that ends here, in order
}

const maxWord = 32 // longer words are in no lexicon

type lexicon struct {
	words map[string]*word
	slots [1 << 13]*word // the same words by hash, for the scan
}

// hashStep is one letter of the hash that the scan takes along.
func hashStep(h uint32, c byte) uint32 { return (h ^ uint32(c)) * 0x01000193 }

func slot(h uint32) uint32 { return (h ^ h>>15) & (1<<13 - 1) }

// find looks up a folded word by its letters and their hash.
func (l *lexicon) find(b []byte, h uint32) *word {
	for i := slot(h); l.slots[i] != nil; i = (i + 1) & (1<<13 - 1) {
		if l.slots[i].text == string(b) {
			return l.slots[i]
		}
	}
	return nil
}

var lex = mustLexicon()

func mustLexicon() *lexicon {
	l := &lexicon{words: map[string]*word{}}
	if err := l.readWords(wordsTXT); err != nil {
		panic(err)
	}
	if err := l.readUnits(unitsCSV); err != nil {
		panic(err)
	}
	for text, w := range l.words {
		h := uint32(0)
		for i := range len(text) {
			h = hashStep(h, text[i])
		}
		i := slot(h)
		for l.slots[i] != nil {
			i = (i + 1) & (1<<13 - 1)
		}
		l.slots[i] = w
	}
	return l
}

func (l *lexicon) get(s string) *word {
	w := l.words[s]
	if w == nil {
		w = &word{text: s}
		l.words[s] = w
	}
	return w
}

func (l *lexicon) readWords(src string) error {
	for i, line := range strings.Split(src, "\n") {
		line, _, _ = strings.Cut(line, "#")
		if line = strings.TrimSpace(line); line == "" {
			continue
		}
		name, list, ok := strings.Cut(line, ":")
		if !ok {
			return fmt.Errorf("words.txt:%d: want \"class: words\"", i+1)
		}
		cls, isClass := classNames[name]
		var bit trait
		for b, n := range traitNames {
			if n == name {
				bit = 1 << b
			}
		}
		if !isClass && bit == 0 {
			return fmt.Errorf("words.txt:%d: no such class %q", i+1, name)
		}
		for _, f := range strings.Fields(list) {
			text, val, hasVal := strings.Cut(f, "=")
			w := l.get(text)
			w.traits |= bit
			if isClass {
				if w.class != cNone {
					return fmt.Errorf("words.txt:%d: %q is in two number classes", i+1, text)
				}
				w.class = cls
			}
			if hasVal {
				v, err := strconv.ParseInt(val, 10, 64)
				if err != nil {
					return fmt.Errorf("words.txt:%d: %w", i+1, err)
				}
				w.value = v
			}
		}
	}
	return nil
}

func (l *lexicon) readUnits(src string) error {
	r := csv.NewReader(strings.NewReader(src))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		return fmt.Errorf("units.csv: %w", err)
	}
	for i, row := range rows[1:] {
		u := &unit{code: row[1], kind: Kind(row[2])}
		for _, f := range strings.Fields(row[3]) {
			switch f {
			case "tight":
				u.need, u.assumed = tTighten, true
			case "tyre":
				u.need, u.assumed = tTyre, true
			case "fluid":
				u.need = tFluid
			case "gear":
				u.need = tGear
			case "warm":
				u.need = tTemperature
			case "chain":
				u.need = tChain
			case "cure":
				u.need = tCure
			case "digits":
				u.digits = true
			case "glued":
				u.glued = true
			case "inword":
				u.inword = true
			case "mil":
				u.mil = true
			case "kilo":
				u.kilo = true
			default:
				return fmt.Errorf("units.csv:%d: no such flag %q", i+2, f)
			}
		}
		for _, phrase := range strings.Split(row[0], "|") {
			fields := strings.Fields(phrase)
			w := l.get(fields[0])
			if w.unit == nil {
				w.unit = &unitNode{}
			}
			n := w.unit
			for _, f := range fields[1:] {
				if n.next == nil {
					n.next = map[*word]*unitNode{}
				}
				if n.next[l.get(f)] == nil {
					n.next[l.get(f)] = &unitNode{}
				}
				n = n.next[l.get(f)]
			}
			n.units = append(n.units, u)
		}
	}
	return nil
}
