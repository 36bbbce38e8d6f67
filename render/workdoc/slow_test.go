package workdoc_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"wrenchword/extract"
	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
	"wrenchword/render"
	"wrenchword/render/workdoc"
)

// wholeJob takes a transcript the whole way: read, joined, extracted, written, read
// back and merged.
func wholeJob(data []byte) error {
	clip, err := transcript.Read("x", data, transcript.Options{})
	if err != nil {
		return nil // refused with a reason is fine
	}
	doc, err := render.Markdown(extract.Extract(transcript.Join(clip), lexicon.Default(), extract.Job{}), nil)
	if err != nil {
		return err
	}
	if _, err := workdoc.Read(doc); err != nil {
		return fmt.Errorf("not read back: %w", err)
	}
	_, _, err = workdoc.Merge(doc, doc)
	return err
}

// shapeSize is the size of the shapes: WRENCHWORD_HOSTILE_KB=1024 makes them a
// megabyte, which takes minutes.
func shapeSize() int {
	if kb, err := strconv.Atoi(os.Getenv("WRENCHWORD_HOSTILE_KB")); err == nil {
		return kb << 10
	}
	if testing.Short() {
		return 1 << 15
	}
	return 1 << 17
}

func fill(s string) string { return strings.Repeat(s, shapeSize()/len(s)) }

func timed(talk string) string { return "1\n00:00:01,000 --> 00:59:00,000\n" + talk + "\n" }

func cues(n int, talk func(i int) string) string {
	var b strings.Builder
	for i := 0; i < n && b.Len() < shapeSize(); i++ {
		fmt.Fprintf(&b, "[%d:%02d:%02d] %s\n", i/3600, i/60%60, i%60, talk(i))
	}
	return b.String()
}

// hostileTalk is talk that some part of the reading might
// dwell on: much of one thing, with no end of sentence, or no other thing between.
var hostileTalk = map[string]func() string{
	"torques in a sentence":      func() string { return timed(fill("the axle nut gets forty newton metres and ")) },
	"torques in sentences":       func() string { return timed(fill("The axle nut gets forty newton metres. ")) },
	"torques without a fastener": func() string { return timed(fill("forty newton metres ")) },
	"corrections":                func() string { return timed(fill("forty no sorry ") + "newton metres") },
	"one number":                 func() string { return timed(fill("hundred thousand ") + "newton metres") },
	"digits run together":        func() string { return timed(fill("@@2\x00")) },
	"digits":                     func() string { return timed(fill("1 ")) },
	"fractions":                  func() string { return timed(fill("3/8 ") + "inch") },
	"ranges":                     func() string { return timed(fill("between 20 and 25 to 30 or ")) },
	"one name":                   func() string { return timed(fill("bolt ")) },
	"one long name":              func() string { return timed("the " + fill("caliper bracket mounting ") + "bolt") },
	"bolts of bolts":             func() string { return timed(fill("the bolt of the bracket of ")) },
	"pronouns":                   func() string { return timed("The wheel. " + fill("take it off and put it on ")) },
	"this one":                   func() string { return timed(fill("This one comes off. ")) },
	"verbs":                      func() string { return timed(fill("remove undo fit tighten ")) },
	"conditions":                 func() string { return timed(fill("if once until when ")) },
	"conjunctions":               func() string { return timed(fill("and then ")) },
	"commas":                     func() string { return timed(fill("bolt, ")) },
	"full stops":                 func() string { return timed(fill("off. ")) },
	"apostrophes":                func() string { return timed(fill("it's'll've' ")) },
	"hedges":                     func() string { return timed(fill("probably maybe about i think ")) },
	"look-ups": func() string {
		return timed(fill("I need to look up the torque for the axle nut later. "))
	},
	"misheard words": func() string { return timed(fill("talk wrench axel knut collar per ")) },
	"no word of ours": func() string {
		return cues(1<<20, func(i int) string { return fmt.Sprintf("qx%dzzyv wob%dgle", i, i*7919) })
	},
	"a thing a word": func() string {
		return cues(1<<20, func(i int) string { return fmt.Sprintf("Undo the b%d bracket bolt.", i) })
	},
	"things left off": func() string {
		return cues(1<<20, func(i int) string { return fmt.Sprintf("Take the model %d cover off.", i) })
	},
	"a tool a word": func() string {
		return cues(1<<20, func(i int) string { return fmt.Sprintf("I use a %d mm spanner.", 1+i) })
	},
	"promises":       func() string { return cues(1<<20, func(i int) string { return "I'll put a link below." }) },
	"one letter":     func() string { return timed(fill("a ")) },
	"one word":       func() string { return timed(fill("a")) },
	"marks":          func() string { return timed("off " + fill("*_`[]()<>|#!")) },
	"pipes":          func() string { return cues(1<<20, func(i int) string { return "Undo the a|b bolt | | |." }) },
	"cues at a time": func() string { return fill("[0:01] undo the axle nut\n") },
}

// hostileDocument is Markdown that a reader might dwell on, written into a
// working document.
var hostileDocument = map[string]func() string{
	"quotes deep":          func() string { return fill(">") },
	"quotes deep, lines":   func() string { return strings.Repeat(strings.Repeat(">", 1000)+"\n", shapeSize()/1001) },
	"lists deep":           func() string { return nested(int(math.Sqrt(float64(shapeSize()))), "- x") },
	"lists in a line":      func() string { return fill("- ") },
	"brackets":             func() string { return fill("[") },
	"links open":           func() string { return fill("[a](") },
	"links nested":         func() string { return strings.Repeat("[", shapeSize()/8) + "a" + strings.Repeat("](b)", shapeSize()/8) },
	"images":               func() string { return fill("![") },
	"stars":                func() string { return fill("*a **a ") },
	"stars and lines":      func() string { return fill("*a_ ") },
	"backticks":            func() string { return ticks() },
	"html open":            func() string { return fill("<!-- ") },
	"html comments":        func() string { return fill("<!-- @step-a -->\n") },
	"html tags":            func() string { return fill("<a ") },
	"declarations":         func() string { return fill("<!A ") },
	"instructions":         func() string { return fill("<?") },
	"character data":       func() string { return fill("<![CDATA[") },
	"entities":             func() string { return fill("&") },
	"backslashes":          func() string { return fill(`\`) },
	"definitions":          func() string { return fill("[a]: b\n") },
	"references":           func() string { return "[a]: b\n\n" + fill("[a] ") },
	"table wide":           func() string { return "|" + fill("a|")[:shapeSize()/2] + "\n|" + fill("-|")[:shapeSize()/2] + "\n" },
	"table tall":           func() string { return "| a |\n| - |\n" + fill("| a |\n") },
	"table rows wide":      func() string { return "| a |\n| - |\n" + fill("|") },
	"headings":             func() string { return fill("# a\n") },
	"rows":                 func() string { return fill("| a <!-- @torque-a --> |\n") },
	"fences":               func() string { return fill("```\n") },
	"blank lines":          func() string { return fill("\n") },
	"tasks":                func() string { return fill("- [ ] x\n") },
	"answers":              func() string { return fill("  - Answer: 5\n") },
	"one line":             func() string { return fill("a") },
	"underlined":           func() string { return fill("a\n") + "===\n" },
	"autolinks":            func() string { return fill("www.a") },
	"addresses":            func() string { return fill("a@b") },
	"zero bytes":           func() string { return fill("\x00") },
	"carriage returns":     func() string { return fill("a\r") },
	"indents":              func() string { return fill("\t") },
	"one item, many times": func() string { return fill("- [ ] Undo the axle nut. <!-- @step-undo-the-axle-nut -->\n") },
}

func nested(depth int, item string) string {
	var b strings.Builder
	for i := range depth {
		b.WriteString(strings.Repeat(" ", 2*i) + item + "\n")
	}
	return b.String()
}

func ticks() string {
	var b strings.Builder
	for i := 1; b.Len() < shapeSize(); i++ {
		b.WriteString(strings.Repeat("`", i%1400+1) + "a")
	}
	return b.String()
}

// bound is wide, for the race detector and a busy machine are slow: plain talk of
// a megabyte takes a quarter of a second, one torque after the other eight
// seconds, and what grows with the square of the size takes hours.
const bound = 30 * time.Second

// TestHostileTalk: talk of any shape is read in bounded time.
func TestHostileTalk(t *testing.T) {
	for name, talk := range hostileTalk {
		t.Run(name, func(t *testing.T) {
			data := []byte(talk())
			start := time.Now()
			if err := wholeJob(data); err != nil {
				t.Error(err)
			}
			took := time.Since(start)
			t.Logf("%v for %d bytes", took, len(data))
			if took > bound {
				t.Errorf("took %v", took)
			}
		})
	}
}

// TestHostileDocument: Markdown of any shape is read back and
// merged in bounded time, or refused.
func TestHostileDocument(t *testing.T) {
	next := draw(t, trike())
	for name, text := range hostileDocument {
		t.Run(name, func(t *testing.T) {
			src := typedInto(next, text())
			start := time.Now()
			_, err := workdoc.Read(src)
			read := time.Since(start)
			_, _, merge := workdoc.Merge(src, next)
			took := time.Since(start)
			t.Logf("%v to read, %v with the merge: %.80v, %.80v", read, took, err, merge)
			if took > bound {
				t.Errorf("took %v", took)
			}
		})
	}
}

// TestHostileSheet: a sheet of any shape is read in bounded time.
func TestHostileSheet(t *testing.T) {
	for name, text := range map[string]func() string{
		"a.csv":  func() string { return "fastener,value\n" + fill("nut,5 N·m\n") },
		"b.csv":  func() string { return "fastener,value\n" + fill(`"`) },
		"c.csv":  func() string { return fill("fastener,value,") },
		"a.yaml": func() string { return "values:\n" + fill("  - fastener: nut\n    value: 5 N·m\n") },
		"b.yaml": func() string { return fill("[") },
		"c.yaml": func() string { return fill("- ") },
		"d.yaml": func() string { return fill("{a: ") },
		"e.yaml": func() string { // each line refers nine times to the one before
			s := "a0: &a0 [x, x, x, x, x, x, x, x, x]\n"
			for i := 1; i < 12; i++ {
				s += fmt.Sprintf("a%d: &a%d [%s]\n", i, i, strings.TrimSuffix(strings.Repeat(fmt.Sprintf("*a%d, ", i-1), 9), ", "))
			}
			return s + "values: *a11\n"
		},
		"f.yaml": func() string { return fill("? ") },
		"a.md":   func() string { return "| fastener | value |\n| - | - |\n" + fill("| nut | 5 N·m |\n") },
		"b.md":   func() string { return fill("[") },
	} {
		t.Run(name, func(t *testing.T) {
			start := time.Now()
			_, err := workdoc.ReadSheet(name, []byte(text()))
			took := time.Since(start)
			t.Logf("%v: %.100v", took, err)
			if took > bound {
				t.Errorf("took %v", took)
			}
		})
	}
}

// typedInto writes a text of the person's under the title of a document.
func typedInto(doc []byte, text string) []byte {
	title, rest, _ := bytes.Cut(doc, []byte("\n"))
	return slices.Concat(title, []byte("\n\n"+text+"\n\n"), rest)
}

// worked is how long this process was at work, however busy the machine is.
func worked() time.Duration {
	var used syscall.Rusage
	_ = syscall.Getrusage(syscall.RUSAGE_SELF, &used)
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// FuzzSlow looks for pieces of talk and of documents whose cost does not grow
// evenly: a piece is said over and over, and four times as much of it may not
// take much more than four times as long.
func FuzzSlow(f *testing.F) {
	for _, s := range []string{"the axle nut gets forty newton metres and ", "take it off. ", "bolt of the ", "forty no sorry ", "> - [a](*_`", "| a ", "[0:01] a\n"} {
		f.Add(s)
	}
	next := draw(f, trike())
	f.Fuzz(func(t *testing.T, piece string) {
		if len(piece) == 0 || len(piece) > 200 {
			return
		}
		cost := func(size int) (talk, doc time.Duration) {
			s := strings.Repeat(piece, size/len(piece))
			start := worked()
			if err := wholeJob([]byte(timed(s))); err != nil {
				t.Fatal(err)
			}
			talk = worked() - start
			src := typedInto(next, s)
			start = worked()
			_, _ = workdoc.Read(src)
			_, _, _ = workdoc.Merge(src, next)
			return talk, worked() - start
		}
		const size = 1 << 14
		for range 3 { // what gathered memory once does not three times
			talk, doc := cost(size)
			talk4, doc4 := cost(4 * size)
			if talk4 < 10*talk+200*time.Millisecond && doc4 < 10*doc+200*time.Millisecond {
				return
			}
			if talk4 < 300*time.Millisecond && doc4 < 300*time.Millisecond {
				return
			}
		}
		t.Fatalf("%q: four times as much of it takes far more than four times as long", piece)
	})
}
