package page

import (
	"bytes"
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"wrenchword/render/workdoc"
)

// Folder is a folder that pages are written into. Nothing is written outside
// it: neither a name nor a symbolic link leads out.
type Folder struct{ root *os.Root }

// OpenFolder opens a folder and makes it where it is missing.
func OpenFolder(dir string) (*Folder, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, fmt.Errorf("make the folder: %w", err)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, fmt.Errorf("open the folder: %w", err)
	}
	return &Folder{root}, nil
}

// Close lets go of the folder.
func (f *Folder) Close() error { return f.root.Close() }

// Read reads a file of the folder.
func (f *Folder) Read(name string) ([]byte, error) { return f.root.ReadFile(name) }

// Has says whether a file is there.
func (f *Folder) Has(name string) bool {
	_, err := f.root.Stat(name)
	return err == nil
}

// Publish writes a page whole or not at all. A page that somebody edited since,
// or that is not ours, is left as it is without replace: ErrEdited, ErrForeign.
func (f *Folder) Publish(name string, data []byte, replace bool) error {
	old, err := f.root.ReadFile(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return fmt.Errorf("read the page that is there: %w", err)
	case bytes.Equal(old, data):
		return nil
	case bytes.Contains(old, []byte(workdoc.Mark)):
		return fmt.Errorf("%s: a working document is there, which is never written over; name another folder", name)
	case !replace:
		if err := Untouched(old); err != nil {
			return fmt.Errorf("%s: %w; it was left as it is; give --replace to write over it", name, err)
		}
	}
	return f.Write(name, data)
}

// Write writes a file whole or leaves what was there.
func (f *Folder) Write(name string, data []byte) error {
	draft := "." + rand.Text() + ".part"
	if err := f.root.WriteFile(draft, data, 0o644); err != nil {
		_ = f.root.Remove(draft)
		return fmt.Errorf("write %s: %w", name, err)
	}
	if err := f.root.Rename(draft, name); err != nil {
		_ = f.root.Remove(draft)
		return fmt.Errorf("write %s: %w", name, err)
	}
	return nil
}

// Remove removes a page that is as it was published; any other is left.
func (f *Folder) Remove(name string) error {
	old, err := f.root.ReadFile(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err == nil {
		err = Untouched(old)
	}
	if err != nil {
		return fmt.Errorf("%s: %w; it was left", name, err)
	}
	return f.root.Remove(name)
}

// nameMost bounds a name in bytes; file systems allow 255 with the ending.
const nameMost = 80

// SafeName makes a file name without ending of any path: letters and digits of
// any script in lower case with hyphens between, which every file system and
// wiki takes. Names taken already get a number; taken gains the new one.
func SafeName(path string, taken map[string]bool) string {
	base := filepath.Base(strings.ReplaceAll(path, `\`, "/"))
	if ext := filepath.Ext(base); ext != base {
		base = strings.TrimSuffix(base, ext)
	}
	words := strings.FieldsFunc(strings.ToLower(norm.NFC.String(strings.ToValidUTF8(base, "-"))), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	name := strings.Join(words, "-")
	for len(name) > nameMost {
		r := []rune(name)
		name = strings.TrimRight(string(r[:len(r)-1]), "-")
	}
	switch name {
	case "con", "prn", "aux", "nul", "index", "open-ends", "confirmed-values", "":
		name = strings.TrimRight("job-"+name, "-")
	}
	// com1 to lpt9 are devices to one file system.
	if len(name) == 4 && (strings.HasPrefix(name, "com") || strings.HasPrefix(name, "lpt")) {
		name = "job-" + name
	}
	out := name
	for n := 2; taken[out]; n++ {
		out = fmt.Sprintf("%s-%d", name, n)
	}
	taken[out] = true
	return out
}
