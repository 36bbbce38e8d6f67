//go:build unix

package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// outside is a copy of the program that another user may run, in a folder of
// theirs. Whoever may do anything is told "no" by no folder, so that such a run
// is another user's where the tests run as root.
type outside struct {
	t    *testing.T
	dir  string
	cred *syscall.Credential
}

func newOutside(t *testing.T) *outside {
	t.Helper()
	dir, err := os.MkdirTemp("", "wrenchword-test-")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = filepath.WalkDir(dir, func(p string, d os.DirEntry, _ error) error {
			if d != nil && d.IsDir() {
				_ = os.Chmod(p, 0o755)
			}
			return nil
		})
		_ = os.RemoveAll(dir)
	})
	self, err := os.ReadFile(os.Args[0])
	if err != nil {
		t.Fatal(err)
	}
	o := &outside{t: t, dir: dir}
	for name, data := range map[string][]byte{"wrenchword": self, "clip.srt": mustRead(t, "../../testdata/cargo-trike.srt")} {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o755); err != nil {
			t.Fatal(err)
		}
	}
	if os.Getuid() == 0 {
		const nobody = 65534
		o.cred = &syscall.Credential{Uid: nobody, Gid: nobody}
		if err := os.Chown(dir, nobody, nobody); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Chmod(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := o.command("--help").Run(); err != nil {
		t.Skipf("no program of another user can be run here: %v", err)
	}
	return o
}

func mustRead(t *testing.T, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// command is a run of the program in the folder. The name that the test binary
// is run by makes it the program: see TestMain.
func (o *outside) command(args ...string) *exec.Cmd {
	cmd := exec.Command(filepath.Join(o.dir, "wrenchword"), args...)
	cmd.Dir = o.dir
	cmd.Env = append(os.Environ(), "HOME="+o.dir, "XDG_CACHE_HOME="+o.dir+"/.cache", "NO_COLOR=1")
	cmd.SysProcAttr = &syscall.SysProcAttr{Credential: o.cred}
	return cmd
}

// run wants an exit code and gives what was said on both outputs.
func (o *outside) run(code int, args ...string) (stdout, stderr string) {
	o.t.Helper()
	cmd := o.command(args...)
	var out, talk bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &talk
	_ = cmd.Run()
	if got := cmd.ProcessState.ExitCode(); got != code {
		o.t.Errorf("%v: exit code %d, want %d: %s", args, got, code, talk.String())
	}
	return out.String(), talk.String()
}

func (o *outside) chmod(name string, mode os.FileMode) {
	o.t.Helper()
	if err := os.Chmod(filepath.Join(o.dir, name), mode); err != nil {
		o.t.Fatal(err)
	}
}

func (o *outside) read(name string) string {
	o.t.Helper()
	return string(mustRead(o.t, filepath.Join(o.dir, name)))
}

func (o *outside) wants(said string, parts ...string) {
	o.t.Helper()
	for _, p := range parts {
		if !strings.Contains(said, p) {
			o.t.Errorf("said %q, want %q in it", said, p)
		}
	}
}

// litter wants no more files in a folder than it should have.
func (o *outside) litter(dir string, want ...string) {
	o.t.Helper()
	list, err := os.ReadDir(filepath.Join(o.dir, dir))
	if err != nil {
		o.t.Fatal(err)
	}
	var names []string
	for _, e := range list {
		names = append(names, e.Name())
	}
	if strings.Join(names, " ") != strings.Join(want, " ") {
		o.t.Errorf("%s holds %v, want %v", dir, names, want)
	}
}

// mine is a working document with a note of the person's in it.
func (o *outside) mine(name string) string {
	o.t.Helper()
	o.run(0, "procedure", "clip.srt", "-o", name)
	doc := strings.Replace(o.read(name), "## Tightening round\n", "## Tightening round\n\nMy own note.\n", 1)
	f, err := os.OpenFile(filepath.Join(o.dir, name), os.O_WRONLY|os.O_TRUNC, 0)
	if err != nil {
		o.t.Fatal(err)
	}
	defer f.Close()
	if _, err := io.WriteString(f, doc); err != nil || !strings.Contains(doc, "My own note.") {
		o.t.Fatalf("no note in the document: %v", err)
	}
	return doc
}

func (o *outside) mkdir(name string) {
	o.t.Helper()
	p := filepath.Join(o.dir, name)
	if err := os.MkdirAll(p, 0o777); err != nil {
		o.t.Fatal(err)
	}
	if err := os.Chmod(p, 0o777); err != nil {
		o.t.Fatal(err)
	}
}

// TestReadOnlyFolder: what cannot be written is said with what to do, and what
// is there stays.
func TestReadOnlyFolder(t *testing.T) {
	o := newOutside(t)
	o.mkdir("ro")
	doc := o.mine("ro/job.md")
	o.chmod("ro", 0o555)
	for _, args := range [][]string{
		{"procedure", "clip.srt", "-o", "ro/job.md", "--title", "Another"},
		{"procedure", "clip.srt", "-o", "ro/new.md"},
		{"procedure", "clip.srt", "--format", "json", "-o", "ro/new.json"},
		{"publish", "ro/job.md", "--anyway", "--to", "ro/wiki"},
		{"publish", "ro/job.md", "--anyway", "--to", "ro"},
		{"shelf", "ro", "--to", "ro/wiki"},
	} {
		code := exitBad
		if args[len(args)-1] == "ro" {
			code = exitOpen // a page that failed is one of several
		}
		_, said := o.run(code, args...)
		o.wants(said, "ro", "permission denied", "name a place of your own")
	}
	if o.read("ro/job.md") != doc {
		t.Error("the document changed")
	}
	o.litter("ro", "job.md")
}

// TestPermissionDenied: what cannot be read is said with what to do. A cache
// that cannot be written to keeps nobody from their work.
func TestPermissionDenied(t *testing.T) {
	o := newOutside(t)
	o.mine("job.md")
	before := o.read("job.md")
	o.chmod("clip.srt", 0)
	_, said := o.run(exitBad, "procedure", "clip.srt", "-o", "job.md")
	o.wants(said, "clip.srt", "permission denied", "change its permissions")
	o.chmod("clip.srt", 0o644)
	o.chmod("job.md", 0)
	for _, args := range [][]string{{"procedure", "clip.srt", "-o", "job.md"}, {"ready", "job.md"}, {"settle", "job.md", "--sheet-template"}} {
		_, said := o.run(exitBad, args...)
		o.wants(said, "job.md", "permission denied", "change its permissions")
	}
	o.chmod("job.md", 0o644)
	if o.read("job.md") != before {
		t.Error("the document changed")
	}
	// One file of a shelf fails alone.
	o.mkdir("many")
	o.run(0, "procedure", "clip.srt", "-o", "many/good.md")
	o.run(0, "procedure", "clip.srt", "-o", "many/shut.md")
	o.chmod("many/shut.md", 0)
	_, said = o.run(exitOpen, "shelf", "many", "--to", "wiki")
	o.wants(said, "1 job on the shelf", "shut.md", "permission denied", "change its permissions")
	o.chmod(".cache", 0o555)
	if err := os.RemoveAll(filepath.Join(o.dir, ".cache", "wrenchword")); err != nil {
		t.Fatal(err)
	}
	o.run(exitDone, "procedure", "clip.srt", "-o", "job.md")
	o.wants(o.read("job.md"), "My own note.")
}

// TestFolderForFile: a folder where a file is wanted, and the other way round.
func TestFolderForFile(t *testing.T) {
	o := newOutside(t)
	o.mkdir("folder")
	o.mine("job.md")
	for _, args := range [][]string{
		{"procedure", "clip.srt", "-o", "folder"}, {"procedure", "clip.srt", "--format", "json", "-o", "folder"},
		{"ready", "folder"}, {"settle", "job.md", "--from", "folder"},
		{"publish", "job.md", "--to", "clip.srt"}, {"shelf", "folder", "--to", "clip.srt"},
	} {
		_, said := o.run(exitBad, args...)
		o.wants(said, "name a file where a file is wanted, and a folder where a folder is")
	}
	_, said := o.run(exitBad, "procedure", "folder")
	o.wants(said, "folder is a folder: give the files in it")
	o.litter("folder")
}

// TestBrokenPipe: a reader that goes away is said, and keeps no file from being written.
func TestBrokenPipe(t *testing.T) {
	o := newOutside(t)
	o.mine("job.md")
	sheet := "# title: the maker's manual, 2nd edition\nfastener,value\naxle nut,45 N·m\n"
	if err := os.WriteFile(filepath.Join(o.dir, "values.csv"), []byte(sheet), 0o644); err != nil {
		t.Fatal(err)
	}
	gone := func(args ...string) (int, string) {
		t.Helper()
		r, w, err := os.Pipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := r.Close(); err != nil {
			t.Fatal(err)
		}
		defer w.Close()
		cmd := o.command(args...)
		var talk bytes.Buffer
		cmd.Stdout, cmd.Stderr = w, &talk
		_ = cmd.Run()
		return cmd.ProcessState.ExitCode(), talk.String()
	}
	for _, args := range [][]string{{"procedure", "clip.srt"}, {"procedure", "clip.srt", "--format", "json"}, {"shelf", ".", "--format", "jsonl"}} {
		code, said := gone(args...)
		if code != exitBad {
			t.Errorf("%v: exit code %d: %s", args, code, said)
		}
		o.wants(said, "broken pipe", "read it to its end, or write a file")
	}
	gone("settle", "job.md", "--from", "values.csv")
	o.wants(o.read("job.md"), "the maker's manual, 2nd edition", "My own note.")
}

// TestSignal: a run that waits, and one at work on many files, end when they are
// told to, and what they leave is whole: a second run finishes it.
func TestSignal(t *testing.T) {
	o := newOutside(t)
	for _, sig := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM} {
		cmd := o.command("procedure", "-", "-o", "job.md")
		in, err := cmd.StdinPipe()
		if err != nil {
			t.Fatal(err)
		}
		var talk bytes.Buffer
		cmd.Stderr = &talk
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(300 * time.Millisecond)
		if err := cmd.Process.Signal(sig); err != nil {
			t.Fatal(err)
		}
		ended := make(chan struct{})
		go func() { _ = cmd.Wait(); close(ended) }()
		select {
		case <-ended:
		case <-time.After(20 * time.Second):
			_ = cmd.Process.Kill()
			t.Fatalf("%v: it waits for its input still", sig)
		}
		_ = in.Close()
		if code := cmd.ProcessState.ExitCode(); code != exitBad {
			t.Errorf("%v: exit code %d", sig, code)
		}
		o.wants(talk.String(), "ended by a signal", "run it again")
		if _, err := os.Stat(filepath.Join(o.dir, "job.md")); !errors.Is(err, os.ErrNotExist) {
			t.Errorf("%v: a document was written of half an input: %v", sig, err)
		}
	}

	o.mkdir("many")
	clip := o.read("clip.srt")
	const jobs = 60
	for i := range jobs {
		name := filepath.Join(o.dir, "many", string(rune('a'+i/26))+string(rune('a'+i%26))+".srt")
		if err := os.WriteFile(name, []byte(strings.Repeat(clip, 1+i%3)+strings.Repeat("\n", i)), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for wait := time.Duration(0); wait < 12; wait++ {
		cmd := o.command("shelf", "many", "--to", "wiki", "--jobs", "1")
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(wait * 20 * time.Millisecond)
		_ = cmd.Process.Signal(syscall.SIGINT)
		_ = cmd.Wait()
		if pages, err := filepath.Glob(filepath.Join(o.dir, "wiki", "*.html")); err == nil {
			for _, p := range pages {
				if data := mustRead(t, p); !bytes.HasSuffix(bytes.TrimSpace(data), []byte("</html>")) {
					t.Fatalf("%s is half a page", p)
				}
			}
		}
	}
	_, said := o.run(exitDone, "shelf", "many", "--to", "wiki")
	o.wants(said, "60 jobs on the shelf", "0 files failed")
	if list, _ := filepath.Glob(filepath.Join(o.dir, "wiki", "*.html")); len(list) != jobs+3 {
		t.Errorf("%d pages of %d jobs and 3 overviews", len(list), jobs)
	}
	if drafts, _ := filepath.Glob(filepath.Join(o.dir, "wiki", ".*.part")); len(drafts) > 0 {
		t.Errorf("drafts were left: %v", drafts)
	}
}

// TestWrongClock: a clock that is wrong loses nothing, and is said where it can
// be seen to be wrong.
func TestWrongClock(t *testing.T) {
	o := newOutside(t)
	o.mine("job.md")
	at := func(epoch string, args ...string) string {
		t.Helper()
		cmd := o.command(args...)
		cmd.Env = append(cmd.Env, "SOURCE_DATE_EPOCH="+epoch)
		said, _ := cmd.CombinedOutput()
		if code := cmd.ProcessState.ExitCode(); code == exitBad {
			t.Errorf("%v at %s: %s", args, epoch, said)
		}
		return string(said)
	}
	at("1777593600", "procedure", "clip.srt", "-o", "job.md", "--title", "One") // 2026-05-01
	for i, epoch := range []string{"0", "-1", "-99999999999999", "4102444800", "99999999999999", "9223372036854775807", "no number"} {
		said := at(epoch, "procedure", "clip.srt", "-o", "job.md", "--title", strings.Repeat("Two ", i+1))
		at(epoch, "ready", "job.md")
		o.wants(o.read("job.md"), "My own note.")
		if epoch == "0" {
			o.wants(said, "the clock says 1970-01-01", "2026-05-01", "set the clock")
		}
	}
	said := at("1777593600", "procedure", "clip.srt", "-o", "job.md", "--title", "Three")
	o.wants(said, "the clock says 2026-05-01")
	o.wants(o.read("job.md"), "My own note.", "2026-05-01")
}

// TestLocale: the locale, and names that are no UTF-8, change no byte of what is written.
func TestLocale(t *testing.T) {
	o := newOutside(t)
	odd := "caf\xe9 \xff.srt"
	if err := os.WriteFile(filepath.Join(o.dir, odd), []byte(o.read("clip.srt")), 0o644); err != nil {
		t.Skipf("the file system takes no such name: %v", err)
	}
	want := ""
	for _, locale := range []string{"C.UTF-8", "C", "POSIX", "de_DE.ISO-8859-1", "", "no such locale"} {
		cmd := o.command("procedure", odd)
		cmd.Env = append(cmd.Env, "LC_ALL="+locale, "LANG="+locale)
		out, err := cmd.Output()
		if err != nil {
			t.Fatalf("%q: %v", locale, err)
		}
		if want == "" {
			want = string(out)
		}
		if string(out) != want || !strings.Contains(want, "N·m") {
			t.Errorf("%q: another document", locale)
		}
	}
	doc := "caf\xe9.md"
	o.run(exitDone, "procedure", odd, "-o", doc)
	o.run(exitDone, "procedure", odd, "-o", doc, "--title", "Again")
	_, said := o.run(exitDone, "procedure", odd, "-o", doc, "--title", "Again")
	o.wants(said, "nothing changed")
	o.run(exitOpen, "ready", doc)
	o.run(exitDone, "shelf", ".", "--to", "wiki")
}
