// Package workdoc is the working document as a person's own file: it tells
// their words from the tool's, reads their answers and ticks back, merges a new
// record into the file without losing one of them, and says what still stands
// open. It draws nothing; package render does that, from the types here.
package workdoc

import "wrenchword/extract"

// Document is a working document read back: what the talk said, and what the
// person has said since. Keys of the maps are references, as RefsOf gives them.
// Text in it is plain: Markdown escapes are undone and nothing in it is markup.
type Document struct {
	Record *extract.Record
	Refs   Refs
	Job    extract.Job // as it stands in the document, the person's edits included

	Rows    map[string]Row      // the person's cells of the tightening round, by row
	Answers map[string]Answer   // answers under open questions
	Ticks   map[string]bool     // boxes ticked, of any item
	Notes   map[string][]string // lines the person added under an item; "" holds those under no item
	Edited  map[string]string   // text the person wrote in place of the tool's
	Removed []string            // items the person deleted from the text

	Own  []OwnRow // rows the person added to the tightening round
	Kept []string // what belonged to items that are gone

	Claims    []Claim
	Dues      []Due
	Revisions []Revision // oldest first
	Warnings  []Warning  // what could not be understood; it stays in the file
}

// Row is what a person put into one row of the tightening round.
type Row struct {
	Confirmed string // a value with its unit, "n/a, why", or a signed statement
	Source    string // who or what, title, edition, page, which machine
	Tightened bool
	When      string // what stands beside the tick: a name, a date, or ""
	Line      int    // in the file, from 1
}

// OwnRow is a row of the tightening round that the person added.
type OwnRow struct {
	Name string
	Row
}

// Answer is what a person put under an open question.
type Answer struct {
	Text, Source string
	Again        bool // a swapped part's joint was tightened again
	Line         int
}

// Claim is a reader's word that something is wrong. It settles nothing.
type Claim struct {
	Who, When, Text, Status string
	Line                    int
}

// Due is something the person wrote down as falling due.
type Due struct {
	Text, When string
	Done       bool
	Line       int
}

// Revision is one state of the document.
type Revision struct {
	N    int    `json:"n"`
	Date string `json:"date"` // as given, or ""
	What string `json:"what"`
}

// Warning is a line that could not be understood.
type Warning struct {
	Line int
	Text string
}
