// Package transcript reads timed text in any of the forms people get it in and
// gives the words with their times. It knows nothing of workshops.
package transcript

import "math"

// Cue is one timed piece of a clip as the file has it, markup removed and
// entities decoded, lines joined with "\n". Rolling captions are joined only
// later, by Join.
type Cue struct {
	Start, End float64 // seconds; End is 0 where the format gives none
	Text       string
	Line       int       // 1-based line of the cue's time in the file, 0 where it has none
	Words      []CueWord // words with times of their own, where the format has them
	Para       bool      // starts a paragraph, in formats that have them
}

// CueWord is one word of a cue with its own time. It is a byte range of Cue.Text.
type CueWord struct {
	Lo, Hi  uint32
	At, End float64
}

// Clip is one file read.
type Clip struct {
	Name     string
	Format   string // "webvtt", "subrip", "sbv", "ttml", "text", "json"
	SHA256   string
	Duration float64
	Cues     []Cue
	Warnings []Warning
}

// Warning is a piece of a file that was skipped or read with doubt.
type Warning struct {
	File string
	Line int
	Text string
}

// Word is one spoken word (with the punctuation that touches it) of a Talk. Its
// numbers are small, for a talk has many.
type Word struct {
	At     float64 // seconds from the start of its clip
	Lo, Hi uint32  // half-open byte range of Talk.Text
	Cue    uint32  // index of the cue it was first heard in; cue ends are weak clause ends
	Clip   uint16  // index into Talk.Clips
	Marks  Mark
}

// Mark is a set of things that can be said of a word.
type Mark uint8

// What can be said of a word.
const (
	Exact Mark = 1 << iota // At was in the file (a word time, or the first word of a cue)
	Para                   // first word of a paragraph or block in formats that have them
	Noise                  // "[Music]", "(laughs)", ">>": kept so that text stays verbatim, never spoken
)

// Is tells whether one of some marks is set.
func (w Word) Is(any Mark) bool { return w.Marks&any != 0 }

// MaxClips is how many clips a talk may have.
const MaxClips = math.MaxUint16

// Talk is the joined text of a job: every word once, blanks single, clips in order.
type Talk struct {
	Text     string
	Words    []Word
	Clips    []Clip
	Warnings []Warning
}
