package transcript

import (
	"fmt"
	"strings"
	"testing"
)

// talkLines is n lines of talk of about eight words, none like the one before.
func talkLines(n int) [][]string {
	vocabulary := strings.Fields(`so now we take the big nut off with a long bar and it comes loose right here on
		this side you can see that one was not very tight at all okay then the washer and spacer go in the tray`)
	lines := make([][]string, n)
	seed := uint32(1)
	for i := range lines {
		for range 6 + i%5 {
			seed = seed*1664525 + 1013904223
			lines[i] = append(lines[i], vocabulary[int(seed>>16)%len(vocabulary)])
		}
	}
	return lines
}

// linesAnHour is about 9,600 words.
const linesAnHour = 1200

func plainTimed(lines [][]string) string {
	var b strings.Builder
	for i, l := range lines {
		fmt.Fprintf(&b, "[%d:%02d] %s\n", i*3/60, i*3%60, strings.Join(l, " "))
	}
	return b.String()
}

func ttmlOf(lines [][]string) string {
	var b strings.Builder
	b.WriteString(`<tt xmlns="http://www.w3.org/ns/ttml"><body><div>`)
	for i, l := range lines {
		fmt.Fprintf(&b, "<p begin=\"%ds\" end=\"%ds\">%s</p>\n", i*3, i*3+3, strings.Join(l, " "))
	}
	b.WriteString(`</div></body></tt>`)
	return b.String()
}

func jsonOf(lines [][]string) string {
	var b strings.Builder
	b.WriteString(`{"segments": [`)
	for i, l := range lines {
		if i > 0 {
			b.WriteString(",\n")
		}
		fmt.Fprintf(&b, `{"start": %d, "end": %d, "text": "%s"}`, i*3, i*3+3, strings.Join(l, " "))
	}
	b.WriteString(`]}`)
	return b.String()
}

// Read and Join together, by form and by length of talk.
func BenchmarkReadAndJoin(b *testing.B) {
	for _, form := range []struct {
		name string
		file func([][]string) string
	}{
		{"rolling", rollingTagged}, {"subrip", blocks}, {"text", plainTimed}, {"ttml", ttmlOf}, {"json", jsonOf},
	} {
		for _, hours := range []int{1, 10, 100} {
			data := []byte(form.file(talkLines(linesAnHour * hours)))
			b.Run(fmt.Sprintf("%s/%dh", form.name, hours), func(b *testing.B) {
				b.SetBytes(int64(len(data)))
				b.ReportAllocs()
				for b.Loop() {
					clip, err := Read("talk", data, Options{MaxWords: 1 << 30})
					if err != nil {
						b.Fatal(err)
					}
					Join(clip)
				}
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(hours)/1e6, "ms/hour")
			})
		}
	}
}

func BenchmarkOverlaps(b *testing.B) {
	clip, err := Read("talk", []byte(blocks(talkLines(linesAnHour))), Options{})
	if err != nil {
		b.Fatal(err)
	}
	talk := Join(clip, clip)
	for b.Loop() {
		Overlaps(talk)
	}
}
