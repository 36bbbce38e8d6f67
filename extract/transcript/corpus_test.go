package transcript

import (
	"encoding/json"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// shared finds the folder of outside data, or skips the test.
func shared(t testing.TB) string {
	t.Helper()
	if dir := os.Getenv("WRENCHWORD_SHARED"); dir != "" {
		return dir
	}
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "shared", "CONTRACT.md")); err == nil {
			return filepath.Join(dir, "shared")
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Skip("outside data not found: set WRENCHWORD_SHARED to its folder")
		}
		dir = up
	}
}

var (
	scoreToken = regexp.MustCompile(`[a-z0-9]+(?:\.[0-9]+)*`)
	scoreTag   = regexp.MustCompile(`<[^>]*>`)
	scoreTime  = regexp.MustCompile(`^\s*[\[(]?(?:\d+:)?\d{1,2}:\d\d(?:[.,]\d+)?[\])]?\s`)
)

func scoreTokens(s string) []string {
	s = strings.NewReplacer("’", "", "'", "").Replace(strings.ToLower(s))
	return scoreToken.FindAllString(s, -1)
}

// spoken is what the scorer of CONTRACT.md takes as the spoken text of a file
// (score.py, the function of the same name): quotes must be found in it.
func spoken(name, raw string) []string {
	if filepath.Ext(name) == ".json" {
		var d struct {
			Text     string
			Segments []struct{ Text string }
		}
		if json.Unmarshal([]byte(raw), &d) == nil {
			var texts []string
			for _, s := range d.Segments {
				texts = append(texts, s.Text)
			}
			if all := strings.Join(texts, " "); all != "" {
				return scoreTokens(all)
			}
			return scoreTokens(d.Text)
		}
	}
	raw = strings.TrimLeft(raw, "\ufeff")
	raw = strings.ReplaceAll(strings.ReplaceAll(raw, "\r\n", "\n"), "\r", "\n")
	var heard []string
	if strings.Contains(raw, "-->") {
		for _, block := range strings.Split(raw, "\n\n") {
			lines := strings.Split(block, "\n")
			for i, l := range lines {
				if strings.Contains(l, "-->") {
					heard = append(heard, lines[i+1:]...)
				}
			}
		}
	} else {
		for _, l := range strings.Split(raw, "\n") {
			heard = append(heard, scoreTime.ReplaceAllString(l, " "))
		}
	}
	var lines []string
	var last [2]string
	for _, l := range heard {
		l = strings.TrimSpace(html.UnescapeString(scoreTag.ReplaceAllString(l, "")))
		if l != "" && l != last[0] && l != last[1] {
			last = [2]string{last[1], l}
			lines = append(lines, l)
		}
	}
	return scoreTokens(strings.Join(lines, " "))
}

func talkTokens(t *Talk) []string {
	return scoreTokens(t.Text)
}

// corpusFiles are the transcripts of the corpus.
func corpusFiles(t testing.TB) []string {
	all, err := filepath.Glob(filepath.Join(shared(t), "corpus", "*"))
	if err != nil {
		t.Fatal(err)
	}
	var files []string
	for _, f := range all {
		if ext := filepath.Ext(f); ext == ".vtt" || ext == ".srt" || ext == ".txt" || ext == ".ttml" ||
			ext == ".json" && !strings.HasSuffix(f, ".gold.json") {
			files = append(files, f)
		}
	}
	if len(files) == 0 {
		t.Skip("no corpus there")
	}
	return files
}

// A quote is a run of words of the talk; the scorer looks for it in spoken.
// That both are the same words in the same order proves every run.
func TestCorpusIsWhatTheScorerHears(t *testing.T) {
	for _, f := range corpusFiles(t) {
		t.Run(filepath.Base(f), func(t *testing.T) {
			data, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			clip, err := Read(filepath.Base(f), data, Options{})
			if err != nil {
				t.Fatal(err)
			}
			if len(clip.Warnings) > 0 {
				t.Errorf("warnings: %v", clip.Warnings[0])
			}
			talk := Join(clip)
			got, want := talkTokens(talk), spoken(f, string(data))
			for i := range max(len(got), len(want)) {
				if i >= len(got) || i >= len(want) || got[i] != want[i] {
					t.Fatalf("%d words against %d, the first difference at word %d", len(got), len(want), i)
				}
			}
		})
	}
}
