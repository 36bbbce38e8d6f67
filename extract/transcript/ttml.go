package transcript

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
)

// TTML and IMSC text, by "Timed Text Markup Language 2" (W3C), chapter 12
// (timing): nested begins, dur, par and seq, clock and offset times.

func isTTML(text string) bool {
	s := strings.TrimSpace(text)
	for strings.HasPrefix(s, "<?") || strings.HasPrefix(s, "<!") {
		end := ">"
		if strings.HasPrefix(s, "<!--") {
			end = "-->"
		}
		i := strings.Index(s, end)
		if i < 0 {
			return false
		}
		s = strings.TrimSpace(s[i+len(end):])
	}
	if !strings.HasPrefix(s, "<") {
		return false
	}
	name := s[1:]
	if i := strings.IndexAny(name, " \t\n/>"); i >= 0 {
		name = name[:i]
	}
	return name == "tt" || strings.HasSuffix(name, ":tt")
}

// timed is an open element.
type timed struct {
	begin, end float64 // absolute; end is +Inf where it is not said
	seq        bool    // its children follow one another
	cursor     float64 // where the last child ended
	kind       string
	mute       bool // its text is not shown
}

func (e *timed) timeable() bool {
	return e.kind == "body" || e.kind == "div" || e.kind == "p" || e.kind == "span"
}

const defaultFrameRate = 30 // where a file says none

type ttmlReader struct {
	*parser
	frameRate, tickRate float64
	stack               []timed
	cue                 Cue
	lo                  int // start of the cue's text in the builder
	firstWord           int
	inP                 bool
	pending             float64 // begin of the timed span whose first word comes next, or -1
	space               bool    // a blank is due before the next word
}

func parseTTML(p *parser) error {
	r := &ttmlReader{parser: p, frameRate: defaultFrameRate, tickRate: 1, pending: -1}
	d := xml.NewDecoder(strings.NewReader(p.text))
	d.Strict = false
	d.Entity = xml.HTMLEntity
	d.CharsetReader = func(_ string, in io.Reader) (io.Reader, error) { return in, nil } // decoded already
	for {
		t, err := d.RawToken()
		if err != nil {
			line, _ := d.InputPos()
			switch {
			case errors.Is(err, io.EOF) && len(r.stack) > 0:
				p.warn(line, "the file breaks off inside <%s>", r.stack[len(r.stack)-1].kind)
			case !errors.Is(err, io.EOF):
				p.warn(line, "the rest was not read: %v", err)
			}
			break
		}
		line, _ := d.InputPos()
		switch t := t.(type) {
		case xml.StartElement:
			if len(r.stack) >= p.opt.MaxDepth {
				return &LimitError{File: p.name, What: "levels of nesting", Limit: int64(p.opt.MaxDepth)}
			}
			r.open(t, line)
		case xml.EndElement:
			if err := r.close(t.Name.Local); err != nil {
				return err
			}
		case xml.CharData:
			if r.inP && !r.stack[len(r.stack)-1].mute {
				r.text(string(t))
			}
		}
	}
	for len(r.stack) > 0 { // cut off in the middle
		if err := r.pop(); err != nil {
			return err
		}
	}
	return nil
}

func (r *ttmlReader) open(t xml.StartElement, line int) {
	e := timed{end: math.Inf(1), kind: t.Name.Local}
	ref := 0.0
	if n := len(r.stack); n > 0 {
		up := &r.stack[n-1]
		ref, e.end, e.mute = up.begin, up.end, up.mute
		if up.seq {
			ref = up.cursor
		}
	}
	e.begin = ref
	var attr struct{ begin, end, dur string }
	hasTimes, frames, ticks := false, 0.0, false
	for _, a := range t.Attr {
		switch a.Name.Local {
		case "begin":
			attr.begin, hasTimes = a.Value, true
		case "end":
			attr.end, hasTimes = a.Value, true
		case "dur":
			attr.dur, hasTimes = a.Value, true
		case "timeContainer":
			e.seq = a.Value == "seq"
		case "frameRate":
			if v, err := strconv.ParseFloat(a.Value, 64); err == nil && v >= 1 && v <= 1e6 && e.kind == "tt" {
				frames = v
			}
		case "frameRateMultiplier":
			f := strings.Fields(strings.ReplaceAll(a.Value, ":", " "))
			if len(f) == 2 && e.kind == "tt" {
				num, err1 := strconv.ParseFloat(f[0], 64)
				den, err2 := strconv.ParseFloat(f[1], 64)
				if err1 == nil && err2 == nil && num >= 1 && num <= 1e6 && den >= 1 && den <= 1e6 {
					r.frameRate *= num / den
				}
			}
		case "tickRate":
			if v, err := strconv.ParseFloat(a.Value, 64); err == nil && v >= 1 && v <= 1e12 && e.kind == "tt" {
				r.tickRate, ticks = v, true
			}
		}
	}
	if frames > 0 {
		r.frameRate *= frames / defaultFrameRate
		if !ticks { // ttp:tickRate: ticks are frames where frames are said and ticks are not
			r.tickRate = frames
		}
	}
	if hasTimes && e.timeable() {
		e.begin, e.end = r.times(ref, e.end, attr.begin, attr.end, attr.dur, line, &e.mute)
	}
	e.cursor = e.begin
	switch e.kind {
	case "p":
		if !r.inP {
			r.inP = true
			r.cue = Cue{Start: e.begin, Line: line}
			r.lo, r.firstWord = r.builder.text.Len(), len(r.builder.words)
			r.pending, r.space = -1, false
		}
	case "span":
		if r.inP && attr.begin != "" && !e.mute {
			r.pending = e.begin
		}
	case "br":
		if r.inP && !e.mute {
			r.builder.text.WriteByte('\n')
			r.space = false
		}
	default:
		if r.inP { // metadata and what else is not spoken
			e.mute = true
		}
	}
	r.stack = append(r.stack, e)
}

// times gives the absolute begin and end of an element whose times count from ref.
func (r *ttmlReader) times(ref, limit float64, begin, end, dur string, line int, mute *bool) (from, to float64) {
	from, to = ref, limit // a parent that ends sooner does not cut its children short: they were spoken
	read := func(s string) (float64, bool) {
		v, ok := r.time(strings.TrimSpace(s))
		if !ok {
			r.warn(line, "a piece was skipped: its time cannot be read: %s", excerpt(s))
			*mute = true
		}
		return v, ok
	}
	if begin != "" {
		if v, ok := read(begin); ok {
			from = ref + v
		}
	}
	if end != "" {
		if v, ok := read(end); ok {
			to = ref + v
		}
	}
	if end != "" {
		limit = to
	}
	if dur != "" {
		if v, ok := read(dur); ok {
			if to = from + v; end != "" {
				to = min(to, limit)
			}
		}
	}
	return from, to
}

// time reads a clock time (hh:mm:ss, with a fraction or frames) or an offset (12.5s).
func (r *ttmlReader) time(s string) (float64, bool) {
	if !strings.Contains(s, ":") {
		n := 0
		for n < len(s) && (isDigit(s[n]) || s[n] == '.') {
			n++
		}
		v, err := strconv.ParseFloat(s[:n], 64)
		if err != nil || v > 1e12 {
			return 0, false
		}
		switch s[n:] {
		case "h":
			return v * 3600, true
		case "m":
			return v * 60, true
		case "s":
			return v, true
		case "ms":
			return v / 1000, true
		case "f":
			return v / r.frameRate, true
		case "t":
			return v / r.tickRate, true
		}
		return 0, false
	}
	v, n := clock(s)
	if n == 0 {
		return 0, false
	}
	if n == len(s) {
		return v, true
	}
	if s[n] != ':' {
		return 0, false
	}
	f, err := strconv.ParseFloat(s[n+1:], 64)
	if err != nil || !(f >= 0 && f <= 1e6) {
		return 0, false
	}
	return v + f/r.frameRate, true
}

func (r *ttmlReader) close(name string) error {
	for i := len(r.stack) - 1; i >= 0; i-- {
		if r.stack[i].kind == name {
			for len(r.stack) > i {
				if err := r.pop(); err != nil {
					return err
				}
			}
			return nil
		}
	}
	return nil // an end without a start
}

func (r *ttmlReader) pop() error {
	n := len(r.stack) - 1
	e := r.stack[n]
	r.stack = r.stack[:n]
	if e.seq && math.IsInf(e.end, 1) && e.cursor > e.begin {
		e.end = e.cursor
	}
	if n > 0 && e.timeable() && !math.IsInf(e.end, 1) {
		r.stack[n-1].cursor = max(r.stack[n-1].cursor, e.end)
	}
	if e.kind != "p" || !r.inP {
		return nil
	}
	r.inP = false
	r.cue.Text = r.builder.text.String()[r.lo:]
	if isBlank(r.cue.Text) {
		return nil
	}
	if !math.IsInf(e.end, 1) {
		r.cue.End = e.end
	}
	w := r.builder.words
	r.cue.Words = closeWords(r.cue.Text, w[r.firstWord:len(w):len(w)], r.cue.End)
	return r.add(r.cue)
}

// word keeps a timed word unless its time runs back.
func (r *ttmlReader) word(w CueWord) {
	last := r.cue.Start
	if n := len(r.builder.words); n > r.firstWord {
		last = r.builder.words[n-1].At
	}
	if w.At >= last {
		r.builder.words = append(r.builder.words, w)
	}
}

// text adds characters to the cue with white space made one blank.
func (r *ttmlReader) text(s string) {
	b := &r.builder.text
	for len(s) > 0 {
		n := wordLen(s)
		if n == 0 {
			r.space = true
			s = s[1:]
			continue
		}
		fresh := b.Len() == r.lo || r.space || strings.HasSuffix(b.String(), "\n")
		if r.space && b.Len() > r.lo && !strings.HasSuffix(b.String(), "\n") {
			b.WriteByte(' ')
		}
		r.space = false
		if fresh && r.pending >= 0 {
			r.word(CueWord{Lo: uint32(b.Len() - r.lo), At: r.pending})
		}
		r.pending = -1
		b.WriteString(s[:n])
		s = s[n:]
	}
}
