package normalize

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"
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
	tInchThread
	tCounted
)

// traitNames is the list of the context classes of data/words.txt, in bit order.
var traitNames = []string{"misheard", "second", "ths", "article", "and", "point", "minus", "to", "through", "or",
	"between", "by", "of", "em", "tee", "ee", "number", "per", "drive", "plus", "correct", "weakcorrect", "filler",
	"maybe", "hedge", "hedgeafter", "tighten", "load", "tool", "head", "drivetool", "fastener", "thread", "fluid",
	"gear", "temperature", "engine", "price", "tyre", "gap", "clock", "chain", "cure", "money", "clocktime", "torx",
	"cross", "pozi", "jis", "pronoun", "stopone", "pour", "whole", "p", "over", "interval", "weather", "vague", "machine", "opener", "motorway", "series", "inchthread", "counted"}

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
	word  *word // that leads to it
	next  []*unitNode
	units []*unit // readings of the phrase that ends here, in order
}

// after returns where a word leads, or nil.
func (n *unitNode) after(w *word) *unitNode {
	for _, nx := range n.next {
		if nx.word == w {
			return nx
		}
	}
	return nil
}

const maxWord = 32 // longer words are in no lexicon

// lexicon has the words by their hash; a quarter of the slots is taken.
type lexicon struct {
	slots [1 << 12]*word
	inch  *unit
}

// hashStep is one letter of the hash that the scan takes along.
func hashStep(h uint32, c byte) uint32 { return (h ^ uint32(c)) * 0x01000193 }

// slot gives where a word stands, or would stand, by its letters and their hash.
func (l *lexicon) slot(b []byte, h uint32) **word {
	const last = uint32(len(l.slots) - 1)
	for i := (h ^ h>>15) & last; ; i = (i + 1) & last {
		if w := l.slots[i]; w == nil || w.text == string(b) {
			return &l.slots[i]
		}
	}
}

// find looks up a folded word by its letters and their hash.
func (l *lexicon) find(b []byte, h uint32) *word { return *l.slot(b, h) }

// word looks up a folded word.
func (l *lexicon) word(s string) *word { return *l.slotOf(s) }

func (l *lexicon) slotOf(s string) **word {
	h := uint32(0)
	for i := range len(s) {
		h = hashStep(h, s[i])
	}
	return l.slot([]byte(s), h)
}

// lex is read when it is first needed: a run that reads no talk does without.
var lex = sync.OnceValue(func() *lexicon {
	l := &lexicon{}
	if err := l.readWords(wordsTXT); err != nil {
		panic(err)
	}
	if err := l.readUnits(unitsCSV); err != nil {
		panic(err)
	}
	l.inch = l.word("inch").unit.units[0]
	return l
})

// get returns a word, a new one where there was none.
func (l *lexicon) get(s string) *word {
	at := l.slotOf(s)
	if *at == nil {
		*at = &word{text: s}
	}
	return *at
}

func (l *lexicon) readWords(src string) error {
	i := -1
	for line := range strings.SplitSeq(src, "\n") {
		i++
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
		for f := range strings.FieldsSeq(list) {
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
		for f := range strings.FieldsSeq(row[3]) {
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
		for phrase := range strings.SplitSeq(row[0], "|") {
			var n *unitNode
			for f := range strings.FieldsSeq(phrase) {
				w := l.get(f)
				if n == nil { // the first word
					if w.unit == nil {
						w.unit = &unitNode{word: w}
					}
					n = w.unit
					continue
				}
				nx := n.after(w)
				if nx == nil {
					nx = &unitNode{word: w}
					n.next = append(n.next, nx)
				}
				n = nx
			}
			n.units = append(n.units, u)
		}
	}
	return nil
}
