package transcript

import (
	"encoding/json"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
)

// Recognisers' JSON. Each shape is told by its keys; times come in seconds, in
// milliseconds or as strings.

type object = map[string]any

// spokenWord is a word of a recogniser with its times in seconds.
type spokenWord struct {
	text    string
	at, end float64
	mark    bool // punctuation: it is not spoken, and its times say nothing
	glued   bool // no blank stands before it
	opens   bool // no blank stands after it
}

func (w *spokenWord) middle() float64 { return (w.at + max(w.at, w.end)) / 2 }

// spokenPiece is a stretch of talk: its text, or its words, or both.
type spokenPiece struct {
	start, end float64
	text       string
	words      []spokenWord
}

func isJSON(text string) bool {
	s := strings.TrimSpace(text)
	if s == "" || s[0] != '{' && s[0] != '[' {
		return false
	}
	s = strings.TrimSpace(s[1:])
	return s != "" && (strings.IndexByte(`"{[}]`, s[0]) >= 0)
}

func parseJSON(p *parser) error {
	if deeper(p.text, p.opt.MaxDepth) {
		return &LimitError{File: p.name, What: "levels of nesting", Limit: int64(p.opt.MaxDepth)}
	}
	d := json.NewDecoder(strings.NewReader(p.text))
	found := false
	for { // one value, or one a line
		var v any
		err := d.Decode(&v)
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			if found {
				rest := strings.TrimLeft(p.text[d.InputOffset():], " \t\n")
				p.warn(1+strings.Count(p.text[:len(p.text)-len(rest)], "\n"), "the rest was not read: %v", err)
				break
			}
			return noTimedText(p.name, "it looks like JSON but is broken: "+err.Error(), saveWithTimes)
		}
		pieces := piecesOf(v)
		found = found || len(pieces) > 0
		for _, s := range pieces {
			if err := p.addPiece(s); err != nil {
				return err
			}
		}
	}
	return nil
}

// deeper tells whether brackets nest more than limit deep.
func deeper(s string, limit int) bool {
	depth, quoted := 0, false
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case quoted && c == '\\':
			i++
		case c == '"':
			quoted = !quoted
		case quoted:
		case c == '{' || c == '[':
			if depth++; depth > limit {
				return true
			}
		case c == '}' || c == ']':
			depth--
		}
	}
	return false
}

func piecesOf(v any) []spokenPiece {
	switch v := v.(type) {
	case []any:
		return piecesOfList(v)
	case object:
		return piecesOfObject(v)
	}
	return nil
}

func piecesOfList(list []any) []spokenPiece {
	var out []spokenPiece
	var loose []spokenWord
	for _, e := range list {
		o, ok := e.(object)
		if !ok {
			continue
		}
		if w, single := looseWord(o); single {
			loose = append(loose, w)
			continue
		}
		if s, ok := segment(o, 1); ok {
			out = append(out, s)
			continue
		}
		out = append(out, piecesOfObject(o)...)
	}
	if len(loose) > 0 && len(out) == 0 {
		return group(loose)
	}
	return out
}

// looseWord tells an element of a bare list that is one word.
func looseWord(o object) (spokenWord, bool) {
	if _, ok := o["word"].(string); !ok {
		return spokenWord{}, false
	}
	return wordOf(o, 1)
}

func piecesOfObject(o object) []spokenPiece {
	if ev := list(o, "events"); ev != nil {
		return timedTextEvents(ev)
	}
	if tr := list(o, "transcription"); tr != nil {
		return offsets(tr)
	}
	if tr := list(o, "Transcript"); tr != nil {
		return segments(tr, 1000)
	}
	if res, ok := o["results"].(object); ok {
		if ch := list(res, "channels"); ch != nil {
			return channels(res, ch)
		}
		if items := list(res, "items"); items != nil {
			return group(itemWords(items))
		}
		return piecesOfObject(res)
	}
	if res := list(o, "results"); res != nil {
		return results(res)
	}
	if res := list(o, "result"); res != nil {
		return oneOf(textOf(o), wordsOf(res, 1))
	}
	if ph := list(o, "recognizedPhrases"); ph != nil {
		return phrases(ph)
	}
	if ch := list(o, "chunks"); ch != nil {
		return segments(ch, 1)
	}
	if seg := list(o, "segments"); seg != nil {
		if out := segments(seg, 1); len(out) > 0 {
			return withWords(out, wordsOf(list(o, "words"), 1))
		}
	}
	per := 1.0
	if inMilliseconds(o) {
		per = 1000
	}
	if u := list(o, "utterances"); u != nil {
		if out := segments(u, per); len(out) > 0 {
			return withWords(out, wordsOf(list(o, "words"), per))
		}
	}
	if w := list(o, "words"); w != nil {
		return group(wordsOf(w, per))
	}
	if w := list(o, "word_segments"); w != nil {
		return group(wordsOf(w, per))
	}
	if s, ok := segment(o, 1); ok {
		return []spokenPiece{s}
	}
	if el := list(o, "elements"); el != nil {
		return group(elements(el))
	}
	for _, key := range []string{"cues", "captions", "subtitles", "sentences", "paragraphs", "transcript", "items", "data", "body", "monologues"} {
		switch v := o[key].(type) {
		case []any:
			if out := piecesOfList(v); len(out) > 0 {
				return out
			}
		case object:
			if out := piecesOfObject(v); len(out) > 0 {
				return out
			}
		}
	}
	return nil
}

// inMilliseconds tells the shape whose word times are whole milliseconds: every
// time is whole, and a word would otherwise last minutes.
func inMilliseconds(o object) bool {
	ws := list(o, "words")
	if len(ws) == 0 {
		ws = list(o, "utterances")
	}
	long := 0
	for _, e := range ws {
		w, ok := e.(object)
		if !ok {
			return false
		}
		a, ok1 := number(w, "start")
		b, ok2 := number(w, "end")
		if !ok1 || !ok2 || a != math.Trunc(a) || b != math.Trunc(b) {
			return false
		}
		if b-a >= 20 {
			long++
		}
	}
	return len(ws) > 0 && long*2 > len(ws)
}

// timedTextEvents reads events with tStartMs, dDurationMs and segs.
func timedTextEvents(events []any) []spokenPiece {
	var out []spokenPiece
	for _, e := range events {
		o, ok := e.(object)
		if !ok {
			continue
		}
		start, ok := number(o, "tStartMs")
		if !ok {
			continue
		}
		dur, _ := number(o, "dDurationMs")
		s := spokenPiece{start: start / 1000}
		if dur > 0 {
			s.end = (start + dur) / 1000
		}
		var b strings.Builder
		for i, g := range list(o, "segs") {
			seg, ok := g.(object)
			if !ok {
				continue
			}
			text, _ := seg["utf8"].(string)
			b.WriteString(text)
			off, timed := number(seg, "tOffsetMs")
			if word := strings.TrimSpace(text); word != "" && (timed || i == 0 && len(list(o, "segs")) > 1) {
				s.words = append(s.words, spokenWord{text: word, at: (start + off) / 1000})
			}
		}
		s.text = b.String()
		if !isBlank(s.text) {
			out = append(out, s)
		}
	}
	// Events of a running caption last until they leave the screen, long after
	// the next has begun: what is said ends there.
	for i := range out {
		if len(out[i].words) > 1 && i+1 < len(out) && out[i+1].start > out[i].start {
			out[i].end = min(out[i].end, out[i+1].start)
		}
	}
	return out
}

// offsets reads segments with offsets {from, to} in milliseconds.
func offsets(list []any) []spokenPiece {
	var out []spokenPiece
	for _, e := range list {
		o, ok := e.(object)
		if !ok {
			continue
		}
		off, ok := o["offsets"].(object)
		if !ok {
			continue
		}
		from, ok1 := number(off, "from")
		to, _ := number(off, "to")
		if !ok1 {
			continue
		}
		out = append(out, spokenPiece{start: from / 1000, end: to / 1000, text: textOf(o)})
	}
	return out
}

func segments(list []any, per float64) []spokenPiece {
	var out []spokenPiece
	for _, e := range list {
		if o, ok := e.(object); ok {
			if s, ok := segment(o, per); ok {
				out = append(out, s)
			}
		}
	}
	return out
}

// segment reads an object with a start and a text.
func segment(o object, per float64) (s spokenPiece, ok bool) {
	s.text = textOf(o)
	if w := list(o, "words"); w != nil {
		s.words = wordsOf(w, per)
	} else if w := list(o, "Items"); w != nil {
		s.words = wordsOf(w, per)
	}
	start, end, ok := span(o, per)
	if !ok && len(s.words) > 0 {
		start, end, ok = s.words[0].at, s.words[len(s.words)-1].end, true
	}
	s.start, s.end = start, end
	return s, ok && (s.text != "" || len(s.words) > 0)
}

// withWords gives stretches that came without their words those of a list whose
// middle lies in their time.
func withWords(pieces []spokenPiece, words []spokenWord) []spokenPiece {
	k := 0
	for i := range pieces {
		s := &pieces[i]
		for k < len(words) && words[k].middle() < s.start {
			k++
		}
		from := k
		for k < len(words) && words[k].middle() <= s.end {
			k++
		}
		if len(s.words) == 0 {
			s.words = words[from:k]
		}
	}
	return pieces
}

// channels reads results with channels, and utterances where the whole was cut into them.
func channels(res object, ch []any) []spokenPiece {
	var words []spokenWord
	for _, c := range ch {
		o, _ := c.(object)
		if alt := first(o); alt != nil {
			words = append(words, wordsOf(list(alt, "words"), 1)...)
		}
	}
	if out := segments(list(res, "utterances"), 1); len(out) > 0 {
		return withWords(out, words)
	}
	return group(words)
}

// results reads a list of alternatives: of stretches with words, or of single words.
func results(res []any) []spokenPiece {
	var out []spokenPiece
	var words []spokenWord
	for _, e := range res {
		o, ok := e.(object)
		if !ok {
			continue
		}
		alt := first(o)
		if alt == nil {
			continue
		}
		if w := list(alt, "words"); w != nil {
			out = append(out, oneOf(textOf(alt), wordsOf(w, 1))...)
			continue
		}
		if w := list(alt, "timestamps"); w != nil {
			out = append(out, oneOf(textOf(alt), pairs(w))...)
			continue
		}
		content, _ := alt["content"].(string)
		start, end, ok := span(o, 1)
		kind, _ := o["type"].(string)
		attaches, _ := o["attaches_to"].(string)
		if content != "" && ok {
			mark := kind == "punctuation"
			words = append(words, spokenWord{text: content, at: start, end: end, mark: mark,
				glued: mark && attaches != "next", opens: attaches == "next" || attaches == "both"})
		}
	}
	return append(out, group(words)...)
}

// phrases reads phrases with times in ticks of 100 ns and the best of several readings.
func phrases(list []any) []spokenPiece {
	const tick = 1e-7
	ticks := func(o object) (start, end float64, ok bool) {
		start, ok = number(o, "offsetInTicks")
		length, _ := number(o, "durationInTicks")
		return start * tick, (start + length) * tick, ok
	}
	var out []spokenPiece
	for _, e := range list {
		o, ok := e.(object)
		if !ok {
			continue
		}
		best, _ := o["nBest"].([]any)
		if len(best) == 0 {
			continue
		}
		alt, ok := best[0].(object)
		if !ok {
			continue
		}
		var s spokenPiece
		if s.start, s.end, ok = ticks(o); !ok {
			continue
		}
		s.text, _ = alt["display"].(string)
		words, _ := alt["words"].([]any)
		for _, e := range words {
			w, ok := e.(object)
			if !ok {
				continue
			}
			text, _ := w["word"].(string)
			if at, end, ok := ticks(w); ok && text != "" {
				s.words = append(s.words, spokenWord{text: text, at: at, end: end})
			}
		}
		out = append(out, s)
	}
	return out
}

// pairs reads words given as [text, start, end].
func pairs(list []any) []spokenWord {
	var out []spokenWord
	for _, e := range list {
		w, ok := e.([]any)
		if !ok || len(w) != 3 {
			continue
		}
		text, ok1 := w[0].(string)
		at, ok2 := w[1].(float64)
		end, ok3 := w[2].(float64)
		if ok1 && ok2 && ok3 {
			out = append(out, spokenWord{text: text, at: at, end: end})
		}
	}
	return out
}

// elements reads the words and the punctuation of a speaker's turn.
func elements(list []any) []spokenWord {
	var words []spokenWord
	for _, e := range list {
		o, ok := e.(object)
		if !ok {
			continue
		}
		value, _ := o["value"].(string)
		if value = strings.TrimSpace(value); value == "" {
			continue
		}
		start, ok := number(o, "ts")
		end, _ := number(o, "end_ts")
		words = append(words, spokenWord{text: value, at: start, end: end, mark: !ok, glued: !ok})
	}
	return words
}

// itemWords reads items of type pronunciation and punctuation.
func itemWords(items []any) []spokenWord {
	var words []spokenWord
	for _, e := range items {
		o, ok := e.(object)
		if !ok {
			continue
		}
		alt := first(o)
		if alt == nil {
			continue
		}
		content, _ := alt["content"].(string)
		if content == "" {
			continue
		}
		start, end, timed := span(o, 1)
		if kind, _ := o["type"].(string); kind == "punctuation" {
			words = append(words, spokenWord{text: content, mark: true, glued: true})
		} else if timed {
			words = append(words, spokenWord{text: content, at: start, end: end})
		}
	}
	return words
}

func wordsOf(list []any, per float64) []spokenWord {
	words := make([]spokenWord, 0, len(list))
	for _, e := range list {
		if o, ok := e.(object); ok {
			if w, ok := wordOf(o, per); ok {
				words = append(words, w)
			}
		}
	}
	return words
}

func wordOf(o object, per float64) (spokenWord, bool) {
	var text string
	for _, key := range []string{"punctuated_word", "word", "text", "Content", "content"} {
		if s, ok := o[key].(string); ok && strings.TrimSpace(s) != "" {
			text = strings.TrimSpace(s)
			break
		}
	}
	if text == "" {
		return spokenWord{}, false
	}
	kind, _ := o["Type"].(string)
	if kind == "" {
		kind, _ = o["type"].(string)
	}
	start, end, ok := span(o, per)
	mark := kind == "punctuation"
	return spokenWord{text: text, at: start, end: end, mark: mark, glued: mark}, ok || mark
}

// oneOf is one stretch made of words, or none.
func oneOf(text string, words []spokenWord) []spokenPiece {
	if len(words) == 0 {
		return nil
	}
	return []spokenPiece{{start: words[0].at, end: words[len(words)-1].end, text: text, words: words}}
}

// group cuts a run of words into stretches: after a sentence, at a pause, or
// when a stretch grows too long.
func group(words []spokenWord) []spokenPiece {
	var out []spokenPiece
	from := 0
	for i, w := range words {
		if i+1 < len(words) {
			next := words[i+1]
			if next.glued {
				continue
			}
			ends := strings.HasSuffix(w.text, ".") || strings.HasSuffix(w.text, "?") || strings.HasSuffix(w.text, "!")
			last := w.end
			if w.mark && i > 0 {
				last = max(last, words[i-1].end)
			}
			pause := next.at - last
			if !ends && pause < 0.6 && (i-from < 24 || pause < 0.2) && i-from < 60 {
				continue
			}
		}
		s := spokenPiece{start: -1, words: words[from : i+1]}
		for _, w := range s.words {
			if s.start < 0 && !w.mark {
				s.start = w.at
			}
			s.end = max(s.end, w.end)
		}
		out = append(out, s)
		from = i + 1
	}
	return out
}

// addPiece makes a cue of a stretch, its words found in its text.
func (p *parser) addPiece(s spokenPiece) error {
	if math.IsNaN(s.start) || s.start < 0 || s.start > 1e7 || s.end > 1e7 {
		p.warn(0, "a piece was skipped: its time is out of range: %s", excerpt(s.text))
		return nil
	}
	text := strings.TrimSpace(s.text)
	if text == "" {
		var b strings.Builder
		glue := true
		for _, w := range s.words {
			if !glue && !w.glued {
				b.WriteByte(' ')
			}
			b.WriteString(w.text)
			glue = w.opens
		}
		text = b.String()
	}
	if text == "" {
		return nil
	}
	c := Cue{Start: s.start, End: max(s.end, 0), Text: text}
	// A word's time may lie a little before that of its stretch, which was rounded.
	pos, last := 0, s.start-0.02
	token := 0 // where the word that holds pos starts
	for _, w := range s.words {
		if w.mark || w.text == "" {
			continue
		}
		window := text[pos:min(len(text), pos+len(w.text)+64)]
		i := strings.Index(window, w.text)
		if i < 0 {
			continue
		}
		from, lo := pos, pos+i
		pos = lo + len(w.text)
		if k := strings.LastIndexAny(text[from:lo], " \t\n"); k >= 0 {
			token = from + k + 1
		}
		lo = token
		if n := len(c.Words); n > 0 && c.Words[n-1].Lo == uint32(lo) || w.at < last {
			continue // the rest of a word that was begun, or a time that runs back
		}
		last = w.at
		c.Words = append(c.Words, CueWord{Lo: uint32(lo), Hi: uint32(lo + wordLen(text[lo:])), At: max(w.at, 0), End: w.end})
	}
	return p.add(c)
}

func list(o object, key string) []any {
	l, _ := o[key].([]any)
	return l
}

// first is the best of the alternatives.
func first(o object) object {
	if a := list(o, "alternatives"); len(a) > 0 {
		alt, _ := a[0].(object)
		return alt
	}
	return nil
}

func textOf(o object) string {
	for _, key := range []string{"text", "body", "transcript", "Content", "content", "sentence", "utf8"} {
		if s, ok := o[key].(string); ok && strings.TrimSpace(s) != "" {
			return strings.TrimSpace(s)
		}
	}
	return ""
}

// span gives the start and end of an object, under any of the names in use, in
// seconds out of units of which per make one.
func span(o object, per float64) (start, end float64, ok bool) {
	if ts := list(o, "timestamp"); len(ts) == 2 {
		a, ok := ts[0].(float64)
		b, _ := ts[1].(float64)
		return a, b, ok
	}
	start, ok = number(o, "start", "startTime", "start_time", "begin", "BeginOffsetMillis", "startSeconds", "from")
	end, _ = number(o, "end", "endTime", "end_time", "EndOffsetMillis", "endSeconds", "to")
	if d, found := number(o, "duration", "dur"); found && end == 0 {
		end = start + d
	}
	return start / per, end / per, ok
}

// number reads a number, a string with one ("0.50", "1.250s") or a clock time.
func number(o object, keys ...string) (float64, bool) {
	for _, key := range keys {
		switch v := o[key].(type) {
		case float64:
			return v, true
		case string:
			v = strings.TrimSpace(v)
			if f, err := strconv.ParseFloat(strings.TrimSuffix(v, "s"), 64); err == nil && !math.IsNaN(f) && !math.IsInf(f, 0) {
				return f, true
			}
			if sec, n := clock(v); n > 0 && n == len(v) {
				return sec, true
			}
		}
	}
	return 0, false
}
