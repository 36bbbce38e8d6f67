package workdoc_test

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"wrenchword/extract"
	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
	"wrenchword/render"
	"wrenchword/render/workdoc"
)

var cueClock = regexp.MustCompile(`(\d\d):(\d\d):(\d\d\.\d\d\d)`)

// captions is so many hours of rolling automatic captions: the demo over and over.
func captions(b *testing.B, hours float64) []byte {
	b.Helper()
	data, err := os.ReadFile("../../testdata/bench-drill.vtt")
	if err != nil {
		b.Fatal(err)
	}
	head, body, _ := strings.Cut(string(data), "\n\n")
	const length = 328.0 // seconds of the demo and a pause
	var out strings.Builder
	out.WriteString(head + "\n\n")
	for at := 0.0; at < hours*3600; at += length {
		out.WriteString(cueClock.ReplaceAllStringFunc(body, func(m string) string {
			f := cueClock.FindStringSubmatch(m)
			h, _ := strconv.Atoi(f[1])
			min, _ := strconv.Atoi(f[2])
			s, _ := strconv.ParseFloat(f[3], 64)
			s += float64(h*3600+min*60) + at
			return fmt.Sprintf("%02d:%02d:%06.3f", int(s)/3600, int(s)/60%60, s-float64(int(s)/60*60))
		}))
		out.WriteString("\n\n")
	}
	return []byte(out.String())
}

// BenchmarkJob takes captions to a finished document, stage by stage and whole,
// at one, ten and a hundred times six minutes.
func BenchmarkJob(b *testing.B) {
	lex := lexicon.Default()
	opt := transcript.Options{MaxWords: 1 << 30}
	for _, hours := range []float64{0.1, 1, 10} {
		data := captions(b, hours)
		clip, err := transcript.Read("x.vtt", data, opt)
		if err != nil {
			b.Fatal(err)
		}
		talk := transcript.Join(clip)
		rec := extract.Extract(talk, lex, extract.Job{})
		doc := draw(b, rec)
		for _, stage := range []struct {
			name string
			do   func() error
		}{
			{"read", func() error { _, err := transcript.Read("x.vtt", data, opt); return err }},
			{"join", func() error { transcript.Join(clip); return nil }},
			{"extract", func() error { extract.Extract(talk, lex, extract.Job{}); return nil }},
			{"draw", func() error { _, err := render.Markdown(rec, nil); return err }},
			{"read back", func() error { _, err := workdoc.Read(doc); return err }},
			{"merge", func() error { _, _, err := workdoc.Merge(doc, doc); return err }},
			{"whole", func() error {
				clip, err := transcript.Read("x.vtt", data, opt)
				if err != nil {
					return err
				}
				_, err = render.Markdown(extract.Extract(transcript.Join(clip), lex, extract.Job{}), nil)
				return err
			}},
		} {
			b.Run(fmt.Sprintf("%s/%gh", stage.name, hours), func(b *testing.B) {
				b.SetBytes(int64(len(data)))
				b.ReportAllocs()
				least := time.Duration(math.MaxInt64) // what the work takes where nothing else runs meanwhile
				for b.Loop() {
					start := time.Now()
					if err := stage.do(); err != nil {
						b.Fatal(err)
					}
					least = min(least, time.Since(start))
				}
				b.ReportMetric(least.Seconds()*1e3, "least-ms")
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/hours/1e6, "ms/hour")
			})
		}
	}
}

func BenchmarkVocabulary(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := lexicon.Load(); err != nil {
			b.Fatal(err)
		}
	}
}
