package lexicon

import (
	"iter"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Folded is one word as it is matched: lower case, no punctuation, with the
// half-open byte range it came from.
type Folded struct {
	S      string
	Lo, Hi int
}

// Words folds a text into the words that are matched. Hyphens part words;
// clitics ("'s", "'ll") are words of their own; "don't" stays whole. Where one thing is said
// in two ways it gives one of them: see Joined and Leaning.
func Words(s string) []string { return slices.Collect(eachWord(s)) }

// eachWord gives the words that Words returns.
func eachWord(s string) iter.Seq[string] {
	return func(yield func(string) bool) {
		last, whole := "", ""
		for w := range eachFolded(s) {
			whole = w
			if one, ok := Joined(last, w); ok {
				last = one
				continue
			}
			if last != "" && !yield(Unleaning(last, w)) {
				return
			}
			last = Leaning(last, w)
		}
		if last == "'ve" {
			last = whole // what follows is not known
		}
		if last != "" {
			yield(last)
		}
	}
}

func eachFolded(s string) iter.Seq[string] {
	return func(yield func(string) bool) {
		if !plainWords(s) {
			for _, w := range Fold(nil, s, 0) {
				if !yield(w.S) {
					return
				}
			}
			return
		}
		for s != "" { // nearly all of the vocabulary
			w, rest, _ := strings.Cut(s, " ")
			if w != "" && !yield(alike(w)) {
				return
			}
			s = rest
		}
	}
}

// plainWords tells whether a text is lower-case words and blanks only, which
// fold to themselves.
func plainWords(s string) bool {
	for i := range len(s) {
		if c := s[i]; (c < 'a' || c > 'z') && c != ' ' {
			return false
		}
	}
	return true
}

// Fold appends the folded words of s to dst; byte ranges are counted from base.
func Fold(dst []Folded, s string, base int) []Folded {
	// most words are as they are matched, but for a point or a comma at their end
	plain := 0
	for plain < len(s) && 'a' <= s[plain] && s[plain] <= 'z' {
		plain++
	}
	if plain > 0 && (plain == len(s) || plain == len(s)-1 && (s[plain] == '.' || s[plain] == ',')) {
		return append(dst, Folded{alike(s[:plain]), base, base + plain})
	}
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		if !wordRune(r) {
			i += n
			continue
		}
		j := i
		for j < len(s) {
			r, n := utf8.DecodeRuneInString(s[j:])
			if wordRune(r) {
				j += n
				continue
			}
			// inside a word: an apostrophe, or a point or comma or slash between digits
			if j > i && j+n < len(s) {
				next, _ := utf8.DecodeRuneInString(s[j+n:])
				prev := s[j-1]
				if (r == '\'' || r == '’') && unicode.IsLetter(next) || (r == '.' || r == '/' || r == ',') && isDigit(prev) && next >= '0' && next <= '9' {
					j += n
					continue
				}
			}
			break
		}
		dst = split(dst, s[i:j], base+i)
		i = j
	}
	return dst
}

func wordRune(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '°' || r == '½' || r == '¼' || r == '¾' || unicode.Is(unicode.M, r)
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }

var clitics = []string{"'s", "'m", "'re", "'ve", "'ll", "'d"}

func split(dst []Folded, w string, lo int) []Folded {
	f := strings.ToLower(w)
	if strings.Contains(f, "’") {
		f = strings.ReplaceAll(f, "’", "'")
	}
	if i := strings.LastIndexByte(f, '\''); i > 0 {
		for _, c := range clitics {
			if f[i:] == c {
				cut := len(w) - (len(f) - i)
				if strings.Contains(w, "’") {
					cut = strings.LastIndex(w, "’")
				}
				if cut <= 0 || cut > len(w) {
					break
				}
				dst = append(dst, Folded{alike(f[:i]), lo, lo + cut})
				return append(dst, Folded{Leaning(dst[len(dst)-1].S, c), lo + cut, lo + len(w)})
			}
		}
	}
	return append(dst, Folded{alike(f), lo, lo + len(w)})
}
