package main

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
)

// lockName is the lock of the file at the absolute path real: one name for one
// file, in a folder of the user's own.
func lockName(real string) (string, error) {
	dir, err := os.UserCacheDir()
	if err != nil {
		dir = os.TempDir()
	}
	dir = filepath.Join(dir, "wrenchword", "locks")
	if err := os.MkdirAll(dir, 0o700); err != nil {
		// A home that cannot be written to keeps nobody from their work.
		dir = filepath.Join(os.TempDir(), fmt.Sprintf("wrenchword-%d", os.Getuid()), "locks")
		if err := os.MkdirAll(dir, 0o700); err != nil {
			return "", fmt.Errorf("make the folder for locks: %w", err)
		}
	}
	sum := sha256.Sum256([]byte(real))
	return filepath.Join(dir, hex.EncodeToString(sum[:16])+".lock"), nil
}
