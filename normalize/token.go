package normalize

import (
	"sync"
	"unicode/utf8"
)

// token is a word, a run of digits, or one mark. Spaces are not tokens.
type token struct {
	start, end int
	w          *word // nil for marks, digits and words the lexicon does not know
	val        rat   // of digits; a vulgar fraction has class cHalf's value here too
	kind       tokKind
	glued      bool // no space before it
	grouped    bool // digits with a point or a group comma in them
	huge       bool // digits beyond any workshop value
	word       bool // letters, known or not
	mark       byte // for marks: '-', ',', '.', '/', '"', '\'', '#', '$', '~', '(' …; 0 for others
}

type tokKind uint8

const (
	kWord tokKind = iota
	kDigits
	kVulgar // ½
	kMark
)

type tokens struct {
	text string
	t    []token
}

var tokenPool = sync.Pool{New: func() any { return &tokens{t: make([]token, 0, 256)} }}

// vulgar are the single-character fractions of Unicode.
var vulgar = map[rune]rat{'½': {1, 2}, '⅓': {1, 3}, '⅔': {2, 3}, '¼': {1, 4}, '¾': {3, 4}, '⅕': {1, 5}, '⅖': {2, 5},
	'⅗': {3, 5}, '⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8}, '⅑': {1, 9}, '⅒': {1, 10}}

// letterBytes marks ASCII letters; the fast path of the scan.
var letterBytes, digitBytes, spaceBytes [256]bool

func init() {
	for c := 'a'; c <= 'z'; c++ {
		letterBytes[c], letterBytes[c-32] = true, true
	}
	for c := '0'; c <= '9'; c++ {
		digitBytes[c] = true
	}
	for _, c := range " \t\n\r\v\f" {
		spaceBytes[c] = true
	}
}

// runsOn tells whether a number that the last token belongs to may go on with the next: "thirty-",
// "a hundred and".
func runsOn(t []token) bool {
	n := len(t) - 1
	switch {
	case n > 0 && t[n].mark == '-' && t[n].glued:
		n--
	case n > 0 && t[n].w != nil && t[n].w.traits&tAnd != 0:
		return t[n-1].w != nil && t[n-1].w.text == "hundred" // not "a seventeen and one's gone"
	}
	return n >= 0 && t[n].w != nil && t[n].w.class != cNone
}

// counts tells whether a number or a quantity may begin with the word.
func (w *word) counts() bool {
	return w != nil && (w.class != cNone || w.traits&(starters|tWhole) != 0)
}

// Counts tells whether a word, in lower case, may begin a number or a quantity.
// ASCII text without such a word has none.
func Counts(w string) bool {
	h := uint32(0)
	for i := range len(w) {
		if digitBytes[w[i]] || w[i] >= utf8.RuneSelf {
			return true
		}
		h = hashStep(h, w[i])
	}
	return lex().find([]byte(w), h).counts()
}

// scan cuts text into tokens and says whether any of them can start a
// quantity or a number. One pass, no allocation beyond the pooled slice.
func (ts *tokens) scan(text string) bool {
	ts.text = text
	lex, t := lex(), ts.t[:0]
	any := false
	glued := false
	var buf [maxWord]byte
	for i := 0; i < len(text); {
		c := text[i]
		switch {
		case spaceBytes[c]:
			glued = false
			i++
			continue
		case letterBytes[c]:
			j, n, h := i, 0, uint32(0)
			for j < len(text) && n < maxWord {
				c := text[j]
				if !letterBytes[c] && (c != '\'' || j+1 >= len(text) || !letterBytes[text[j+1]]) {
					break
				}
				c |= 0x20 // an apostrophe, 0x27, stays
				buf[n] = c
				h = hashStep(h, c)
				n++
				j++
			}
			if n == maxWord { // in no lexicon
				n++
				for j < len(text) && letterBytes[text[j]] {
					j++
				}
			}
			// A letter outside ASCII goes on with the word.
			if j < len(text) && text[j] >= utf8.RuneSelf {
				if r, _ := utf8.DecodeRuneInString(text[j:]); foreignLetter(r) {
					n = maxWord + 1
					for j < len(text) {
						r, sz := utf8.DecodeRuneInString(text[j:])
						if !foreignLetter(r) && !(r < utf8.RuneSelf && letterBytes[byte(r)]) {
							break
						}
						j += sz
					}
				} else if r == '’' && j+3 < len(text) && letterBytes[text[j+3]] {
					put := func(c byte) {
						if n < maxWord {
							buf[n] = c
							h = hashStep(h, c)
						}
						n++
					}
					put('\'')
					for j += 3; j < len(text) && letterBytes[text[j]]; j++ {
						put(text[j] | 0x20)
					}
				}
			}
			var w *word
			if n <= maxWord {
				w = lex.find(buf[:n], h)
			}
			if w == nil && n > 2 && n <= maxWord && buf[n-2] == '\'' && buf[n-1] == 's' && runsOn(t) {
				w = lex.word(string(buf[:n-2])) // "thirty-eight's about right" is no thirty
			}
			any = any || w.counts()
			t = append(t, token{start: i, end: j, w: w, glued: glued, word: true})
			i = j
		case digitBytes[c] || (c == '.' && i+1 < len(text) && digitBytes[text[i+1]] && (i == 0 || !digitBytes[text[i-1]])):
			tok := scanDigits(text, i)
			tok.glued = glued
			any = true
			t = append(t, tok)
			i = tok.end
		case c < utf8.RuneSelf:
			t = append(t, token{start: i, end: i + 1, kind: kMark, mark: c, glued: glued})
			i++
		default:
			r, sz := utf8.DecodeRuneInString(text[i:])
			tok := token{start: i, end: i + sz, kind: kMark, glued: glued}
			switch r {
			case '–', '—', '−', '‐', '‑', '‒':
				tok.mark = '-'
			case '″', '”', '“':
				tok.mark = '"'
			case '′', '’', '‘':
				tok.mark = '\''
			case '⁄', '∕':
				tok.mark = '/'
			case '·', '⋅', '∙', '•', '×', '°', 'º', 'µ', 'μ', '℃', '℉', '±', '£', '€', '≈':
				tok.mark = markOf(r)
				switch r {
				case '×':
					tok.kind, tok.word, tok.w = kWord, true, lex.word("×")
				case '°', 'º':
					tok.kind, tok.word, tok.w = kWord, true, lex.word("°")
				case '℃':
					tok.kind, tok.word, tok.w = kWord, true, lex.word("℃")
				case '℉':
					tok.kind, tok.word, tok.w = kWord, true, lex.word("℉")
				case 'µ', 'μ':
					tok.kind, tok.word = kWord, true
					for tok.end < len(text) && letterBytes[text[tok.end]] {
						tok.end++
					}
					tok.w = lex.word(text[tok.start:tok.end])
				}
			case '\u00a0', '\u2009', '\u202f', '\u2007', '\u3000':
				glued = false
				i += sz
				continue
			default:
				if v, ok := vulgar[r]; ok {
					tok.kind, tok.val = kVulgar, v
					any = true
				} else if foreignLetter(r) {
					for tok.end < len(text) {
						r, sz := utf8.DecodeRuneInString(text[tok.end:])
						if !foreignLetter(r) && !(r < utf8.RuneSelf && letterBytes[byte(r)]) {
							break
						}
						tok.end += sz
					}
					tok.kind, tok.word = kWord, true
				}
			}
			t = append(t, tok)
			i = tok.end
		}
		glued = true
	}
	ts.t = t
	return any
}

func markOf(r rune) byte {
	switch r {
	case '·', '⋅', '∙', '•':
		return '*'
	case '±':
		return '+'
	case '£', '€':
		return '$'
	case '≈':
		return '~'
	}
	return 0
}

// foreignLetter reports letters outside ASCII that belong to a word.
func foreignLetter(r rune) bool {
	return r >= 0xC0 && r != '×' && r != '÷' && (r < 0x2000 || r > 0x2BFF) && r != utf8.RuneError && r != 'µ' && r != 'μ' && r != '\u3000'
}

// scanDigits reads 45, 1,234, 0.25, .015, 1,25 (a decimal comma). A comma
// followed by exactly three digits groups; by one or two, it is a decimal mark.
func scanDigits(text string, i int) token {
	tok := token{start: i, kind: kDigits}
	var n, d int64 = 0, 1
	digits := 0
	put := func(c byte) {
		if n != 0 || c != '0' {
			digits++
		}
		if digits > 15 {
			tok.huge = true
			return
		}
		n = n*10 + int64(c-'0')
	}
	j := i
	for j < len(text) && digitBytes[text[j]] {
		put(text[j])
		j++
	}
	lead := j - i
	run := func(k int) int {
		m := k
		for m < len(text) && digitBytes[text[m]] {
			m++
		}
		return m - k
	}
	// Groups: 1,234,567.
	if lead >= 1 && lead <= 3 && j < len(text) && text[j] == ',' && run(j+1) == 3 {
		for j < len(text) && text[j] == ',' && run(j+1) == 3 {
			for k := 1; k <= 3; k++ {
				put(text[j+k])
			}
			j += 4
		}
		tok.grouped = true
	} else if lead >= 1 && j < len(text) && text[j] == ',' && run(j+1) >= 1 && run(j+1) <= 2 && (j+1+run(j+1) >= len(text) || text[j+1+run(j+1)] != ',') {
		for m := run(j + 1); m > 0; m-- {
			j++
			put(text[j])
			d *= 10
		}
		j++
		tok.grouped = true
		n, d = reduce(n, d)
		tok.val, tok.end = rat{n, d}, j
		return tok
	}
	if j < len(text) && text[j] == '.' && run(j+1) >= 1 {
		m := run(j + 1)
		// 1.2.3 is a version or a date, not a value: take it whole and call it huge.
		if k := j + 1 + m; k < len(text) && text[k] == '.' && run(k+1) >= 1 {
			for k < len(text) && (digitBytes[text[k]] || (text[k] == '.' && run(k+1) >= 1)) {
				k++
			}
			tok.huge, tok.end = true, k
			return tok
		}
		if m > 9 {
			tok.huge = true // finer than anything is measured or printed
		}
		for ; m > 0; m-- {
			j++
			if d < 1e12 {
				put(text[j])
				d *= 10
			}
		}
		j++
		tok.grouped = true
	}
	n, d = reduce(n, d)
	tok.val, tok.end = rat{n, d}, j
	return tok
}

func reduce(n, d int64) (int64, int64) {
	if g := gcd(n, d); g > 1 {
		return n / g, d / g
	}
	return n, d
}
