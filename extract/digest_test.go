package extract

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

var (
	digests = flag.String("digests", "", "file of record digests: written where it is missing, compared with where it is there")
	talkIn  = flag.String("talk", "../testdata", "folders of transcripts for -digests, with commas between")
)

// TestDigests compares the records of every transcript at hand with what they
// were, for a change that must not change them:
//
//	go test ./extract -run Digests -digests FILE -talk DIR,DIR
//
// before it (which writes FILE) and after it.
func TestDigests(t *testing.T) {
	if *digests == "" {
		t.Skip("give -digests FILE to write or to compare")
	}
	var now bytes.Buffer
	for dir := range strings.SplitSeq(*talkIn, ",") {
		err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			data, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			clip, err := transcript.Read(filepath.Base(path), data, transcript.Options{})
			if err != nil {
				return nil // no transcript
			}
			rec, err := json.Marshal(Extract(transcript.Join(clip), lexicon.Default(), Job{}))
			if err != nil {
				return err
			}
			fmt.Fprintf(&now, "%x  %s\n", sha256.Sum256(rec), path)
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	was, err := os.ReadFile(*digests)
	if errors.Is(err, fs.ErrNotExist) {
		if err := os.WriteFile(*digests, now.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		t.Logf("%d records written", bytes.Count(now.Bytes(), []byte("\n")))
		return
	}
	if err != nil {
		t.Fatal(err)
	}
	old := map[string]bool{}
	for l := range strings.Lines(string(was)) {
		old[l] = true
	}
	n := 0
	for l := range strings.Lines(now.String()) {
		if !old[l] {
			t.Errorf("another record: %s", strings.TrimSpace(l[66:]))
		}
		n++
	}
	t.Logf("%d records compared", n)
}
