package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"github.com/gofrs/flock"
	"github.com/google/renameio/v2/maybe"
)

// lockWait is how long a run waits for another run on the same file.
const lockWait = 5 * time.Second

// resolve follows symbolic links, so that a link stays one and its target is
// written. A name that does not exist yet is itself.
func resolve(path string) (string, error) {
	real, err := filepath.EvalSymlinks(path)
	if errors.Is(err, fs.ErrNotExist) {
		if target, linkErr := os.Readlink(path); linkErr == nil {
			return "", fmt.Errorf("write %s: it is a link to %s, which does not exist", path, target)
		}
		return path, nil
	}
	return real, err
}

// lockFile keeps other runs off path until the returned function is called.
// The lock lives beside the user's files in their cache, never in their folder.
func lockFile(ctx context.Context, path string) (unlock func(), err error) {
	real, err := resolve(path)
	if err != nil {
		return nil, err
	}
	if real, err = filepath.Abs(real); err != nil {
		return nil, err
	}
	lockPath, err := lockName(real)
	if err != nil {
		return nil, err
	}
	l := flock.New(lockPath)
	ctx, cancel := context.WithTimeout(ctx, lockWait)
	defer cancel()
	ok, err := l.TryLockContext(ctx, 50*time.Millisecond)
	if errors.Is(err, context.DeadlineExceeded) || err == nil && !ok {
		return nil, fmt.Errorf("%s: another run of wrenchword is at work on it; wait for it to end and try again", path)
	}
	if err != nil {
		return nil, fmt.Errorf("lock %s: %w", path, err)
	}
	return func() { _ = l.Unlock() }, nil
}

// writeFile writes the whole of data to path or leaves what was there. The
// permissions of an existing file stay, and a symbolic link stays a link.
func writeFile(path string, data []byte) error {
	real, err := resolve(path)
	if err != nil {
		return err
	}
	if info, err := os.Stat(real); err == nil && !info.Mode().IsRegular() {
		return fmt.Errorf("write %s: it is not a regular file", path)
	}
	if err := maybe.WriteFile(real, data, 0o644); err != nil {
		return fmt.Errorf("write %s: %w", path, err)
	}
	return nil
}
