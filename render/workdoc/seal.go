package workdoc

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"

	"wrenchword/extract"
)

// Errors of reading a document back. They are wrapped with line and cure.
var (
	// ErrNotDocument: the file is none of this tool's documents.
	ErrNotDocument = errors.New("not a working document")
	// ErrSeal: the block at the end, by which the tool tells its own words from
	// the person's, was changed, cut off or lost.
	ErrSeal = errors.New("the block at the end of the document is damaged")
	// ErrReference: a reference was edited or stands twice.
	ErrReference = errors.New("a reference was changed")
)

// Mark stands on the first line of every working document.
const Mark = "<!-- @document -->"

const (
	sealOpen  = "<!-- What this tool wrote is kept here, to tell your words from its own. Please leave it alone."
	sealClose = "-->"
	sealForm  = 1
	sealWidth = 100
	// maxKept bounds what an unpacked block may hold.
	maxKept = 64 << 20
)

// kept is what a document carries of its own making: the text as the tool wrote
// it, before any person touched it, and the record it was written from.
type kept struct {
	Form      int             `json:"form"`
	Text      string          `json:"text"`
	Record    *extract.Record `json:"record"`
	Revisions []Revision      `json:"revisions"`
}

// Seal ends the written text of a document with the block that lets Read and
// Merge tell it from what a person adds later. The text must not hold a line
// like the block's first.
func Seal(text string, rec *extract.Record, revs []Revision) ([]byte, error) {
	return seal(text, kept{Form: sealForm, Text: text, Record: rec, Revisions: revs})
}

func seal(visible string, k kept) ([]byte, error) {
	var packed bytes.Buffer
	z, err := gzip.NewWriterLevel(&packed, gzip.BestSpeed) // others gain a tenth at most, and touch much memory
	if err != nil {
		return nil, err
	}
	enc := json.NewEncoder(z)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(k); err != nil {
		return nil, fmt.Errorf("pack the document's own text: %w", err)
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	code := base64.StdEncoding.EncodeToString(packed.Bytes())
	var b bytes.Buffer
	b.Grow(len(visible) + len(code) + len(code)/sealWidth + 4*sealWidth)
	b.WriteString(strings.TrimRight(visible, "\n"))
	fmt.Fprintf(&b, "\n\n%s\nsha256 %s\n", sealOpen, sumOf(packed.Bytes()))
	for code != "" {
		n := min(len(code), sealWidth)
		b.WriteString(code[:n])
		b.WriteByte('\n')
		code = code[n:]
	}
	b.WriteString(sealClose + "\n")
	return b.Bytes(), nil
}

// unseal parts a document into what a person sees and what the tool kept. Text
// below the block (a person wrote there) is joined to the visible text. A file
// without the document's mark and without a block gives ErrNotDocument.
func unseal(src []byte) (visible string, k kept, err error) {
	text := strings.TrimPrefix(string(src), "\ufeff")
	lines := splitLines(text)
	start := -1
	for i, l := range lines {
		if strings.TrimSpace(l) == sealOpen {
			start = i
		}
	}
	if start < 0 {
		if strings.Contains(text, Mark) {
			return text, k, fmt.Errorf("line %d: %w: it is missing", len(lines), ErrSeal)
		}
		return "", k, ErrNotDocument
	}
	end := start + 1
	for end < len(lines) && strings.TrimSpace(lines[end]) != sealClose {
		end++
	}
	sum, code, foreign := sealLines(lines[start+1 : end])
	// What somebody typed into the block or below it is theirs.
	below := foreign
	if end+1 < len(lines) {
		below = append(below, lines[end+1:]...)
	}
	visible = strings.TrimRight(strings.Join(lines[:start], "\n"), "\n") + "\n"
	if text := strings.Trim(strings.Join(below, "\n"), "\n"); strings.TrimSpace(text) != "" {
		visible += "\n" + text + "\n"
	}
	fail := func(why error) (string, kept, error) {
		return visible, kept{}, fmt.Errorf("line %d: %w: %v", start+1, ErrSeal, why)
	}
	packed, err := base64.StdEncoding.DecodeString(code)
	if err != nil {
		return fail(err)
	}
	if sumOf(packed) != sum {
		return fail(errors.New("its check sum differs"))
	}
	z, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		return fail(err)
	}
	plain, err := io.ReadAll(io.LimitReader(z, maxKept))
	if err != nil {
		return fail(err)
	}
	if err := json.Unmarshal(plain, &k); err != nil {
		return fail(err)
	}
	if k.Form != sealForm || k.Record == nil {
		return fail(fmt.Errorf("it was written by another version of this tool (form %d)", k.Form))
	}
	return visible, k, nil
}

// sealLines parts the inside of an end block into its check sum, its code, and
// lines that are neither.
func sealLines(lines []string) (sum, code string, foreign []string) {
	last := -1 // the last line of full width: one shorter line may follow it
	for i, l := range lines {
		if l = strings.TrimSpace(l); len(l) == sealWidth && isCode(l) {
			last = i
		}
	}
	var b strings.Builder
	var tails []int // lines of foreign that may be the code's short last line
	for i, l := range lines {
		t := strings.TrimSpace(l)
		switch s, isSum := strings.CutPrefix(t, "sha256 "); {
		case t == "":
		case isSum && sum == "" && len(s) == 2*sha256.Size:
			sum = s
		case len(t) == sealWidth && isCode(t):
			b.WriteString(t)
		default:
			if i > last && isCode(t) {
				tails = append(tails, len(foreign))
			}
			foreign = append(foreign, l)
		}
	}
	code = b.String()
	for _, i := range tails {
		whole := code + strings.TrimSpace(foreign[i])
		if packed, err := base64.StdEncoding.DecodeString(whole); err == nil && sumOf(packed) == sum {
			return sum, whole, append(foreign[:i:i], foreign[i+1:]...)
		}
	}
	return sum, code, foreign
}

func sumOf(packed []byte) string {
	sum := sha256.Sum256(packed)
	return hex.EncodeToString(sum[:])
}

func isCode(s string) bool {
	return strings.Trim(s, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/=") == ""
}

// splitLines cuts text at LF, CRLF and CR. Blanks at line ends are the caller's matter.
func splitLines(text string) []string {
	text = strings.ReplaceAll(text, "\r\n", "\n")
	return strings.Split(strings.ReplaceAll(text, "\r", "\n"), "\n")
}

// Visible is what a person sees of a document: all but the block at its end.
func Visible(doc []byte) []byte {
	if len(doc) == 0 {
		return nil
	}
	text, _, err := unseal(doc)
	if err != nil && !errors.Is(err, ErrSeal) {
		return doc
	}
	return []byte(text)
}
