package page

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"

	"wrenchword/normalize/pattern"
)

// A published page carries a digest of itself, so that an edit made to it since
// is seen before it is written over.

// Faults of a page that is there already.
var (
	ErrEdited  = errors.New("it was edited since it was published")
	ErrForeign = errors.New("it is not a page that wrenchword published")
)

const sealBlank = "wrenchword-seal-0000000000000000000000000000000000000000000000000000000000000000"

var sealMark = pattern.Of(`wrenchword-seal-[0-9a-f]{64}`)

func sealSum(page []byte) string {
	page = bytes.TrimRight(bytes.ReplaceAll(page, []byte("\r\n"), []byte("\n")), "\n ")
	h := sha256.Sum256(page)
	return "wrenchword-seal-" + hex.EncodeToString(h[:])
}

// sealed puts the digest in the place of the first blank one.
func sealed(page []byte) []byte {
	return bytes.Replace(page, []byte(sealBlank), []byte(sealSum(page)), 1)
}

// Untouched says whether a page on disk is just as it was published: nil,
// ErrEdited or ErrForeign.
func Untouched(page []byte) error {
	at := sealMark().FindIndex(page)
	if at == nil {
		return ErrForeign
	}
	blank := bytes.Clone(page)
	copy(blank[at[0]:at[1]], sealBlank)
	if sealSum(blank) != string(page[at[0]:at[1]]) {
		return ErrEdited
	}
	return nil
}
