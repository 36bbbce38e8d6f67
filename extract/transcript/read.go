package transcript

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"time"
)

// Options sets the limits of reading. The zero value gives sane ones.
type Options struct {
	MaxBytes int64 // largest text read, in bytes; 0 means 64 MiB (some 150 hours of captions), and 2 GiB is the most
	MaxCues  int   // most cues of one clip; 0 means 2,000,000
	MaxWords int   // most words of one clip, those that a caption shows again counted once; 0 means 150,000 (some sixteen hours of talk)
	MaxDepth int   // deepest nesting of TTML elements and JSON values; 0 means 200

	Stdin   io.Reader     // what ReadFile reads for "-"; nil means os.Stdin
	FFmpeg  string        // the program that takes the subtitle track out of a video; "" means "ffmpeg"
	Timeout time.Duration // how long that program may run; 0 means two minutes
}

func (o Options) withDefaults() Options {
	if o.MaxBytes <= 0 {
		o.MaxBytes = 64 << 20
	}
	o.MaxBytes = min(o.MaxBytes, math.MaxInt32) // offsets are kept in 32 bits
	if o.MaxCues <= 0 {
		o.MaxCues = 2_000_000
	}
	if o.MaxWords <= 0 {
		o.MaxWords = 150_000
	}
	if o.MaxDepth <= 0 {
		o.MaxDepth = 200
	}
	if o.FFmpeg == "" {
		o.FFmpeg = "ffmpeg"
	}
	if o.Timeout <= 0 {
		o.Timeout = 2 * time.Minute
	}
	return o
}

// ErrNoTimedText is wrapped by the error for a file that holds no text with
// times in any form known here.
var ErrNoTimedText = errors.New("no timed text")

// ErrLimit is wrapped by every LimitError.
var ErrLimit = errors.New("over the limit")

// LimitError says which limit a file broke.
type LimitError struct {
	File  string
	What  string // "bytes", "cues", "words", "levels of nesting"
	Limit int64
}

func (e *LimitError) Error() string {
	return fmt.Sprintf("%s: more than %d %s: cut the file into parts, or raise the limit if you trust it", e.File, e.Limit, e.What)
}

// Unwrap lets errors.Is find ErrLimit.
func (e *LimitError) Unwrap() error { return ErrLimit }

func noTimedText(name, what, todo string) error {
	return fmt.Errorf("%s: %w: %s; %s", name, ErrNoTimedText, what, todo)
}

const saveWithTimes = "save the transcript with its times (WebVTT, SubRip, TTML, recogniser JSON, or text with a time before each line)"

// Read decodes data, tells its format from its content and gives its cues in
// file order. The clip may share the memory of data, which must not be written to
// any more. name is used in messages only. Broken cues are skipped with a
// warning. The error wraps ErrNoTimedText where nothing timed is found, and is
// a *LimitError where a limit of opt is broken.
func Read(name string, data []byte, opt Options) (*Clip, error) {
	opt = opt.withDefaults()
	if int64(len(data)) > opt.MaxBytes {
		return nil, &LimitError{File: name, What: "bytes", Limit: opt.MaxBytes}
	}
	sum := sha256.Sum256(data)
	p := &parser{name: name, opt: opt, clip: &Clip{Name: name, SHA256: hex.EncodeToString(sum[:])}}
	text, doubt := decode(data)
	if doubt != "" {
		p.warn(0, "%s", doubt)
	}
	p.text = text
	f := detect(text)
	if f == nil {
		what := "the file is empty"
		if len(text) > 0 {
			what = "no times were found in it"
		}
		return nil, noTimedText(name, what, saveWithTimes)
	}
	p.clip.Format = f.name
	if err := f.parse(p); err != nil {
		return nil, err
	}
	p.warnOfOrder()
	p.closeWarnings()
	if !p.hasText() {
		what := "it has times but no words"
		if len(p.clip.Cues) == 0 {
			what = "it looks like " + f.name + ", but no cue in it could be read"
			for _, w := range p.clip.Warnings {
				if w.Line > 0 {
					what += fmt.Sprintf(" (line %d: %s)", w.Line, w.Text)
					break
				}
			}
		}
		return nil, noTimedText(name, what, saveWithTimes)
	}
	if p.tooManyWords() {
		return nil, &LimitError{File: name, What: "words", Limit: int64(opt.MaxWords)}
	}
	for _, c := range p.clip.Cues {
		p.clip.Duration = max(p.clip.Duration, c.Start, c.End)
		for _, w := range c.Words {
			p.clip.Duration = max(p.clip.Duration, w.At, w.End)
		}
	}
	return p.clip, nil
}

// parser is what the readers of the formats share.
type parser struct {
	name    string
	text    string // decoded, lines ended by "\n" alone
	opt     Options
	clip    *Clip
	unsaid  int // warnings beyond maxWarnings
	builder textBuilder
}

// maxWarnings keeps a file of nothing but broken cues from drowning the rest.
const maxWarnings = 100

func (p *parser) warn(line int, format string, args ...any) {
	if len(p.clip.Warnings) >= maxWarnings {
		p.unsaid++
		return
	}
	p.clip.Warnings = append(p.clip.Warnings, Warning{File: p.name, Line: line, Text: fmt.Sprintf(format, args...)})
}

func (p *parser) closeWarnings() {
	if p.unsaid > 0 {
		p.clip.Warnings = append(p.clip.Warnings, Warning{File: p.name, Text: fmt.Sprintf("and %d more like these", p.unsaid)})
	}
}

func (p *parser) add(c Cue) error {
	if len(p.clip.Cues) >= p.opt.MaxCues {
		return &LimitError{File: p.name, What: "cues", Limit: int64(p.opt.MaxCues)}
	}
	p.clip.Cues = append(p.clip.Cues, c)
	return nil
}

// tooManyWords tells whether the cues hold more words than are allowed, lines
// that the cue before shows too left out.
func (p *parser) tooManyWords() bool {
	n := 0
	var before string
	for i := range p.clip.Cues {
		text := p.clip.Cues[i].Text
		if n += len(text) / 2; n > p.opt.MaxWords { // only then is it worth counting
			break
		}
	}
	if n <= p.opt.MaxWords {
		return false
	}
	n = 0
	for i := range p.clip.Cues {
		text := p.clip.Cues[i].Text
		for line := range strings.SplitSeq(text, "\n") {
			if len(before) < len(line) || !strings.Contains(before, line) {
				n += wordCount(line)
			}
		}
		if n > p.opt.MaxWords {
			return true
		}
		before = text
	}
	return false
}

// wordCount counts the words of a text as tokenize cuts them.
func wordCount(s string) int {
	n := 0
	inside := false
	for i := 0; i < len(s); i++ {
		if class[s[i]] != inWord {
			if k := blankAt(s, i); k > 0 {
				inside = false
				i += k - 1
				continue
			}
		}
		if !inside {
			n++
		}
		inside = true
	}
	return n
}

func (p *parser) hasText() bool {
	for _, c := range p.clip.Cues {
		if !isBlank(c.Text) {
			return true
		}
	}
	return false
}
