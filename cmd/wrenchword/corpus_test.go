package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// sharedFolder finds the annotated talk and its scorer beside the project, or skips.
func sharedFolder(t *testing.T) string {
	t.Helper()
	if p := os.Getenv("WRENCHWORD_SHARED"); p != "" {
		return p
	}
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for d := dir; d != filepath.Dir(d); d = filepath.Dir(d) {
		if _, err := os.Stat(filepath.Join(d, "shared", "score", "score.py")); err == nil {
			return filepath.Join(d, "shared")
		}
	}
	t.Skip("no annotated talk beside the project; set WRENCHWORD_SHARED to its folder")
	return ""
}

type scores struct {
	Categories map[string]struct{ Precision, Recall, F1 float64 } `json:"categories"`
	Macro      float64                                            `json:"macro_f1"`
	Failed     []string                                           `json:"failed"`
	Invalid    int                                                `json:"invalid"`
	Dangerous  int                                                `json:"dangerous"`
}

// TestAnnotatedTalk scores the reading against annotated talk, as it is and with
// its punctuation and capitals taken away. The floors guard what was reached; they
// are no aim. No item may be invalid.
func TestAnnotatedTalk(t *testing.T) {
	folder := sharedFolder(t)
	python, err := exec.LookPath("python3")
	if err != nil {
		t.Skip("the scorer needs python3")
	}
	tool := filepath.Join(t.TempDir(), "wrenchword")
	if out, err := exec.Command("go", "build", "-o", tool, ".").CombinedOutput(); err != nil {
		t.Fatalf("build: %v\n%s", err, out)
	}
	score := func(dir string) (s scores) {
		out, err := exec.Command(python, filepath.Join(folder, "score", "score.py"), "--json", "--tool", tool+" procedure --format json", dir).Output()
		if err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(out, &s); err != nil {
			t.Fatal(err)
		}
		return s
	}
	full := score(filepath.Join(folder, "corpus"))
	bare := score(stripped(t, filepath.Join(folder, "corpus")))
	t.Logf("macro F1 %.3f, %.3f without punctuation and capitals; dangerous misses %d, %d", full.Macro, bare.Macro, full.Dangerous, bare.Dangerous)
	for name, s := range map[string]scores{"as it is": full, "without punctuation": bare} {
		if len(s.Failed) > 0 || s.Invalid > 0 {
			t.Errorf("%s: failed %v, %d invalid items", name, s.Failed, s.Invalid)
		}
	}
	if full.Macro < 0.86 {
		t.Errorf("macro F1 fell to %.3f", full.Macro)
	}
	if full.Macro-bare.Macro > 0.05 {
		t.Errorf("without punctuation the macro F1 falls from %.3f to %.3f", full.Macro, bare.Macro)
	}
	if f, b := full.Categories["torque_value"].Recall, bare.Categories["torque_value"].Recall; f-b > 0.04 {
		t.Errorf("without punctuation torque values are lost: recall %.3f, %.3f", f, b)
	}
}

var (
	marks = regexp.MustCompile(`[.,?!;:"“”—–]+(\s|$)`)
	timed = regexp.MustCompile(`^(\s*[\[(]?[\d:.]+[\])]?\s)(.*)$`)
)

// stripped copies annotated talk with the punctuation and capitals of what is said taken away.
func stripped(t *testing.T, dir string) string {
	t.Helper()
	to := t.TempDir()
	bare := func(s string) string { return marks.ReplaceAllString(strings.ToLower(s), "$1") }
	files, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		data, err := os.ReadFile(filepath.Join(dir, f.Name()))
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case strings.HasSuffix(f.Name(), ".gold.json"):
		case strings.HasSuffix(f.Name(), ".json"):
			var doc map[string]any
			if err := json.Unmarshal(data, &doc); err != nil {
				t.Fatal(err)
			}
			stripJSON(doc, bare)
			if data, err = json.Marshal(doc); err != nil {
				t.Fatal(err)
			}
		default:
			lines := strings.Split(string(data), "\n")
			for i, l := range lines {
				switch {
				case strings.Contains(l, "-->") || strings.HasPrefix(l, "WEBVTT") || strings.HasPrefix(l, "Kind:") || strings.HasPrefix(l, "Language:"):
				case strings.HasSuffix(f.Name(), ".txt"):
					if m := timed.FindStringSubmatch(l); m != nil {
						lines[i] = m[1] + bare(m[2])
					} else {
						lines[i] = bare(l)
					}
				default:
					lines[i] = bare(l)
				}
			}
			data = []byte(strings.Join(lines, "\n"))
		}
		if err := os.WriteFile(filepath.Join(to, f.Name()), data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return to
}

func stripJSON(v any, bare func(string) string) {
	switch v := v.(type) {
	case map[string]any:
		for k, x := range v {
			if s, ok := x.(string); ok && (k == "text" || k == "word") {
				v[k] = bare(s)
			} else {
				stripJSON(x, bare)
			}
		}
	case []any:
		for _, x := range v {
			stripJSON(x, bare)
		}
	}
}
