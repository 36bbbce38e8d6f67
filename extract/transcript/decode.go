package transcript

import (
	"bytes"
	"strings"
	"unicode/utf8"
	"unsafe"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

// decode gives data as UTF-8 with "\n" line ends, no byte order mark and no
// NUL (U+FFFD in its place, as WebVTT asks), and a word of doubt where the
// encoding was guessed. The text may share the memory of data.
func decode(data []byte) (text, doubt string) {
	switch {
	case bytes.HasPrefix(data, []byte("\xEF\xBB\xBF")):
		data = data[3:]
	case bytes.HasPrefix(data, []byte("\xFF\xFE")):
		data = from(utf16(unicode.LittleEndian), data[2:])
	case bytes.HasPrefix(data, []byte("\xFE\xFF")):
		data = from(utf16(unicode.BigEndian), data[2:])
	default:
		if order, ok := zeroBytes(data); ok {
			data, doubt = from(utf16(order), data), "no byte order mark; read as UTF-16 by its zero bytes"
		}
	}
	if !utf8.Valid(data) {
		if good, bad := sequences(data); good > bad {
			data = bytes.ToValidUTF8(data, []byte("\uFFFD"))
			doubt = "bytes that are not UTF-8 were replaced by \uFFFD"
		} else {
			data = from(charmap.Windows1252, data)
			doubt = "not UTF-8; read as Windows-1252"
		}
	}
	text = unsafe.String(unsafe.SliceData(data), len(data)) // nobody writes to data any more
	if strings.IndexByte(text, '\r') >= 0 {
		text = strings.ReplaceAll(text, "\r\n", "\n")
		text = strings.ReplaceAll(text, "\r", "\n")
	}
	if strings.IndexByte(text, 0) >= 0 {
		text = strings.ReplaceAll(text, "\x00", "\uFFFD")
	}
	return text, doubt
}

func utf16(order unicode.Endianness) encoding.Encoding {
	return unicode.UTF16(order, unicode.IgnoreBOM)
}

// from decodes with an encoding that has a rune (or U+FFFD) for every input.
func from(e encoding.Encoding, data []byte) []byte {
	out, err := e.NewDecoder().Bytes(data)
	if err != nil { // not reached with the encodings above
		return bytes.ToValidUTF8(data, []byte("\uFFFD"))
	}
	return out
}

// zeroBytes tells UTF-16 of mostly Latin text without a byte order mark: nearly
// every second byte of its start is zero.
func zeroBytes(data []byte) (unicode.Endianness, bool) {
	head := data[:min(len(data), 512)&^1]
	var zero [2]int
	for i, b := range head {
		if b == 0 {
			zero[i&1]++
		}
	}
	half := len(head) / 2
	switch {
	case half < 2:
		return unicode.LittleEndian, false
	case zero[1] > half*3/4 && zero[0] < half/4:
		return unicode.LittleEndian, true
	case zero[0] > half*3/4 && zero[1] < half/4:
		return unicode.BigEndian, true
	}
	return unicode.LittleEndian, false
}

// sequences counts the good many-byte sequences of UTF-8 in data, and the bad bytes.
func sequences(data []byte) (good, bad int) {
	for len(data) > 0 {
		if data[0] < utf8.RuneSelf {
			data = data[1:]
			continue
		}
		r, n := utf8.DecodeRune(data)
		if r == utf8.RuneError && n == 1 {
			bad++
		} else {
			good++
		}
		data = data[n:]
	}
	return good, bad
}
