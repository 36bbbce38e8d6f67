package extract

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

// sameEitherWay are ways to say the same talk otherwise. What is told must hardly change by them:
// nobody leaves a bolt otherwise because they said "um" before it.
var sameEitherWay = map[string]func(random *rand.Rand, sentence string) string{
	"hesitating": func(random *rand.Rand, s string) string {
		return eachWord(s, func(w string) string {
			if random.IntN(30) == 0 {
				return []string{"um", "uh", "er"}[random.IntN(3)] + " " + w
			}
			return w
		})
	},
	"led in": func(random *rand.Rand, s string) string {
		if random.IntN(3) > 0 || !plainStart.MatchString(s) || opening.MatchString(s) {
			return s
		}
		if !strings.HasPrefix(s, "I ") && !strings.HasPrefix(s, "I'") {
			s = strings.ToLower(s[:1]) + s[1:]
		}
		return []string{"So ", "Now ", "And ", "Okay, ", "And then ", "But ", "Right, ", "All right, so "}[random.IntN(8)] + s
	},
	"in full": func(_ *rand.Rand, s string) string {
		return strings.NewReplacer("I'm ", "I am ", "I'll ", "I will ", "don't ", "do not ", "didn't ", "did not ", "haven't ", "have not ", "can't ", "cannot ",
			"it's ", "it is ", "It's ", "It is ", "that's ", "that is ", "That's ", "That is ", "they're ", "they are ", "you're ", "you are ", "gonna ", "going to ").Replace(s)
	},
	"by several": func(_ *rand.Rand, s string) string {
		return strings.NewReplacer("I'm ", "we're ", "I've ", "we've ", "I'll ", "we'll ", "I am ", "we are ", " I ", " we ", " my ", " our ").Replace(" " + s)[1:]
	},
	"with asides": func(random *rand.Rand, s string) string {
		switch random.IntN(5) {
		case 0:
			return strings.Replace(s, ", ", ", you know, ", 1)
		case 1:
			return "There we go. " + s
		}
		return strings.NewReplacer("going to ", "going to go ahead and ", " I'll ", " I'll go ahead and ").Replace(s)
	},
	"in figures": func(_ *rand.Rand, s string) string {
		return eachWord(s, func(w string) string {
			return strings.NewReplacer("two", "2", "three", "3", "four", "4", "six", "6", "eight", "8").Replace(wholeNumber.FindString(w)) + wholeNumber.ReplaceAllString(w, "")
		})
	},
}

var (
	plainStart  = regexp.MustCompile(`^(I|I'[a-z]+|[A-Z][a-z]+) `)
	opening     = regexp.MustCompile(`^(So|Now|And|Okay|Right|Then|But|Well|All|Anyway)\b`)
	wholeNumber = regexp.MustCompile(`^(two|three|four|six|eight)\b`)
	stamped     = regexp.MustCompile(`^(\[[0-9:]+\] )(.*)$`)
	stop        = regexp.MustCompile(`[.!?] `)
)

func eachWord(s string, say func(string) string) string {
	words := strings.Split(s, " ")
	for i, w := range words {
		words[i] = say(w)
	}
	return strings.Join(words, " ")
}

// saidOtherwise gives a text, a time before each line, with each sentence said otherwise.
func saidOtherwise(text string, say func(string) string) string {
	lines := strings.Split(text, "\n")
	for i, l := range lines {
		m := stamped.FindStringSubmatch(l)
		if m == nil {
			continue
		}
		var b strings.Builder
		b.WriteString(m[1])
		for rest := m[2]; rest != ""; {
			end := len(rest)
			if at := stop.FindStringIndex(rest); at != nil {
				end = at[1]
			}
			b.WriteString(say(rest[:end]))
			rest = rest[end:]
		}
		lines[i] = b.String()
	}
	return strings.Join(lines, "\n")
}

// TestSameEitherWay: of what is told of how things were left, of values and of what is open, at
// least 96 in 100 stay as they are when the talk is said otherwise.
func TestSameEitherWay(t *testing.T) {
	files, err := filepath.Glob("testdata/judged/[a-h]*.txt")
	if err != nil || len(files) < 30 {
		t.Fatal("no judged talk")
	}
	told := func(text string) map[string]int {
		out := map[string]int{}
		rec := Extract(talkOf(t, text), lexicon.Default(), Job{})
		for _, l := range rec.Ledger {
			out[fmt.Sprint("left ", l.Side, l.Item, l.State)]++
		}
		for _, v := range rec.Torques {
			out[fmt.Sprint("value ", v.Fastener, v.Said, v.Applied)]++
		}
		for _, o := range rec.Open {
			out[fmt.Sprint("open ", o.Kind, o.About)]++
		}
		return out
	}
	for way, say := range sameEitherWay {
		all, same := 0, 0
		for _, f := range files {
			data, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			text := string(data)
			if stops := len(stop.FindAllString(text, -1)); stops*25 < len(strings.Fields(text)) {
				continue // where the stops are put back, sentences begin elsewhere
			}
			random := rand.New(rand.NewPCG(1, uint64(len(text))))
			was, is := told(text), told(saidOtherwise(text, func(s string) string { return say(random, s) }))
			for k, n := range was {
				all += n
				same += min(n, is[k])
			}
		}
		t.Logf("%s: %d of %d stay", way, same, all)
		if same*100 < all*96 {
			t.Errorf("%s: only %d of %d stay as they are", way, same, all)
		}
	}
}
