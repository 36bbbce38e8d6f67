package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"
)

// writerEnv names the file that a child of the test writes over and over.
const writerEnv = "WRENCHWORD_TEST_WRITER"

func oldState() []byte { return bytes.Repeat([]byte("the old document\n"), 20_000) }
func newState() []byte { return bytes.Repeat([]byte("the new document!\n"), 30_000) }

// writeForever says that it begins, so that its start does not count as writing.
func writeForever(path string) {
	fmt.Println("writing")
	for i := 0; ; i++ {
		data := oldState()
		if i%2 == 1 {
			data = newState()
		}
		if err := writeFile(path, data); err != nil {
			os.Exit(3)
		}
	}
}

// TestKillWhileWriting ends a writing process at random moments, hundreds of
// times: the file is always one whole state or the other.
func TestKillWhileWriting(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("a write is not atomic there")
	}
	times := 300
	if testing.Short() {
		times = 40
	}
	path := filepath.Join(t.TempDir(), "job.md")
	if err := writeFile(path, oldState()); err != nil {
		t.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(1, 2))
	saw := map[string]int{}
	for i := 0; i < times; i++ {
		cmd := exec.Command(os.Args[0], "-test.run=^$")
		cmd.Env = append(os.Environ(), writerEnv+"="+path)
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		if _, err := out.Read(make([]byte, 1)); err != nil {
			t.Fatalf("the writer did not begin: %v", err)
		}
		time.Sleep(time.Duration(rng.IntN(14000)) * time.Microsecond)
		_ = cmd.Process.Kill()
		_ = cmd.Wait()
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatalf("kill %d: %v", i, err)
		}
		switch {
		case bytes.Equal(data, oldState()):
			saw["old"]++
		case bytes.Equal(data, newState()):
			saw["new"]++
		default:
			t.Fatalf("kill %d left %d bytes that are neither state", i, len(data))
		}
	}
	if saw["old"] == 0 || saw["new"] == 0 {
		t.Errorf("the kills never met a write: %v", saw)
	}
}

// fullEnv names the file that a child of the test writes with no room to do so.
const fullEnv = "WRENCHWORD_TEST_FULL"

// writeWithoutRoom writes under a limit of the size of files, which fails as a
// full disk does. It ends with 0 where the write said that it failed.
func writeWithoutRoom(path string) {
	signal.Ignore(syscall.SIGXFSZ)
	limit := syscall.Rlimit{Cur: 4096, Max: 4096}
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &limit); err != nil {
		os.Exit(4)
	}
	if err := writeFile(path, newState()); err == nil {
		os.Exit(5)
	}
}

// TestFullDisk: a write that cannot be finished leaves the old file and no litter.
func TestFullDisk(t *testing.T) {
	path := filepath.Join(t.TempDir(), "job.md")
	if err := writeFile(path, []byte("mine\n")); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(os.Args[0], "-test.run=^$")
	cmd.Env = append(os.Environ(), fullEnv+"="+path)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("the write did not fail as it should: %v\n%s", err, out)
	}
	if data, _ := os.ReadFile(path); string(data) != "mine\n" {
		t.Errorf("the file now holds %d bytes", len(data))
	}
	if list, _ := os.ReadDir(filepath.Dir(path)); len(list) != 1 {
		t.Errorf("litter was left: %v", list)
	}
}

func TestWriteKeepsLinkAndPermissions(t *testing.T) {
	dir := t.TempDir()
	real, link := filepath.Join(dir, "real.md"), filepath.Join(dir, "link.md")
	if err := os.WriteFile(real, []byte("a"), 0o640); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(real, link); err != nil {
		t.Skip(err)
	}
	if err := writeFile(link, []byte("b")); err != nil {
		t.Fatal(err)
	}
	info, err := os.Lstat(link)
	if err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link became a file: %v %v", info, err)
	}
	if info, _ = os.Stat(real); info.Mode().Perm() != 0o640 {
		t.Errorf("permissions are now %v", info.Mode().Perm())
	}
	if data, _ := os.ReadFile(real); string(data) != "b" {
		t.Errorf("the target holds %q", data)
	}
	if err := writeFile(dir, []byte("b")); err == nil {
		t.Error("a folder was written over")
	}
	dangling := filepath.Join(dir, "dangling.md")
	if err := os.Symlink(filepath.Join(dir, "none", "x"), dangling); err != nil {
		t.Fatal(err)
	}
	if err := writeFile(dangling, []byte("b")); err == nil || !strings.Contains(err.Error(), "does not exist") {
		t.Errorf("a dangling link: %v", err)
	}
}

func TestSecondRunWaits(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	path := filepath.Join(t.TempDir(), "job.md")
	unlock, err := lockFile(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 200*time.Millisecond)
	defer cancel()
	if _, err := lockFile(ctx, path); err == nil || !strings.Contains(err.Error(), "another run") {
		t.Errorf("a second run came in: %v", err)
	}
	unlock()
	unlock, err = lockFile(context.Background(), path)
	if err != nil {
		t.Fatalf("after the first ended: %v", err)
	}
	unlock()
	ctx, cancel = context.WithCancel(context.Background())
	cancel()
	if _, err := lockFile(ctx, path); err != nil && !errors.Is(err, context.Canceled) {
		t.Errorf("a run that was ended: %v", err)
	}
}
