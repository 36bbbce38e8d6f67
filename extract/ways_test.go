package extract

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

// ways gives the lines "want | talk" of a file of ways of saying one thing. All of
// it is invented talk: what it guards is how people put it, not what is right.
func ways(t *testing.T, file string) [][2]string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("..", "testdata", "ways", file))
	if err != nil {
		t.Fatal(err)
	}
	var out [][2]string
	for line := range strings.Lines(string(b)) {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		want, talk, ok := strings.Cut(line, " | ")
		if !ok {
			t.Fatalf("%s: no \" | \" in %q", file, line)
		}
		out = append(out, [2]string{want, talk})
	}
	return out
}

// eachWay gives the talk of each way of saying a thing.
func eachWay(t *testing.T, do func(*transcript.Talk)) {
	files, err := filepath.Glob(filepath.Join("..", "testdata", "ways", "*.txt"))
	if err != nil || len(files) == 0 {
		t.Fatal("no ways of saying a thing")
	}
	for _, file := range files {
		for _, w := range ways(t, filepath.Base(file)) {
			do(talkOf(t, string(spokenAt(w[1]))))
		}
	}
}

// sentences cuts talk after its stops.
func sentences(talk string) []string {
	var out []string
	for {
		i := strings.IndexAny(talk, ".?!")
		if i < 0 || i+1 == len(talk) {
			return append(out, talk)
		}
		out = append(out, talk[:i+1])
		talk = strings.TrimSpace(talk[i+1:])
	}
}

// left tells how the entries that a name means were left: the item has all its words.
func leftAs(rec *Record, name string) []string {
	var out []string
	for _, e := range rec.Ledger {
		all := true
		for _, w := range strings.Fields(name) {
			all = all && strings.Contains(e.Side+" "+e.Item, w)
		}
		if all {
			out = append(out, e.State)
		}
	}
	return out
}

// checkLeft compares "caliper removed; axle nut tightened", or "cover -" for no
// entry at all, with a record.
func checkLeft(t *testing.T, rec *Record, want, talk string) {
	t.Helper()
	for w := range strings.SplitSeq(want, ";") {
		w = strings.TrimSpace(w)
		i := strings.LastIndexByte(w, ' ')
		name, state := w[:i], w[i+1:]
		got := strings.Join(leftAs(rec, name), ", ")
		if state == "-" && got != "" || state != "-" && !strings.Contains(got, state) {
			t.Errorf("%s\n\tgot %q, want %s", talk, got, w)
		}
	}
}

// TestComesOff has the ways of saying that a thing comes off, told while things come off.
func TestComesOff(t *testing.T) {
	for _, w := range ways(t, "comes-off.txt") {
		rec := record(t, append([]string{"Right, let's have a look at this thing.", "The clip comes off first."}, sentences(w[1])...)...)
		checkLeft(t, rec, w[0], w[1])
	}
}

// TestGoesOn has the ways of saying that a thing goes back on, once others have.
func TestGoesOn(t *testing.T) {
	for _, w := range ways(t, "goes-on.txt") {
		thing := w[0][:strings.LastIndexByte(w[0], ' ')]
		talk := []string{"So the " + thing + " comes off.", "Drum in the bucket, it all needs a clean.", "That takes a while, so I stop the video here.", "The clip goes back in."}
		checkLeft(t, record(t, append(talk, sentences(w[1])...)...), w[0], w[1])
	}
}

// TestFollowed has talk in which pronouns, counts and headings have to be followed.
func TestFollowed(t *testing.T) {
	for _, w := range ways(t, "followed.txt") {
		checkLeft(t, record(t, sentences(w[1])...), w[0], w[1])
	}
}

// TestValuesFindTheirFastener has values told before, after and without the name of
// what they are for.
func TestValuesFindTheirFastener(t *testing.T) {
	for _, w := range ways(t, "values.txt") {
		rec := record(t, sentences(w[1])...)
		var got []string
		for _, q := range rec.Torques {
			of := q.Fastener
			if q.MaybeOf != "" {
				of += " or " + q.MaybeOf
			}
			got = append(got, fmt.Sprintf("%s %v", of, q.Said.Low))
		}
		if s := strings.Join(got, "; "); s != strings.TrimPrefix(w[0], "-") {
			t.Errorf("%s\n\tgot %q, want %q", w[1], s, w[0])
		}
	}
}

// TestLeftOpen has the ways of leaving something open, and talk that leaves nothing so.
func TestLeftOpen(t *testing.T) {
	for _, w := range ways(t, "left-open.txt") {
		kind, words, _ := strings.Cut(w[0], ":")
		rec := record(t, append([]string{"So here we are again with this thing on the bench.", "First the clamp comes off and the bracket comes off."}, sentences(w[1])...)...)
		var got []string
		found := false
		for _, o := range rec.Open {
			if strings.HasPrefix(o.Rule, "ledger") && (o.About == "clamp" || o.About == "bracket") {
				continue
			}
			got = append(got, o.Kind+" "+o.About)
			if o.Kind != kind && !(kind == LockMissing && o.Kind == NotRefitted) {
				continue
			}
			asked := strings.ToLower(o.About + " " + o.Question)
			for word := range strings.SplitSeq(words, ",") {
				found = found || strings.Contains(asked, strings.TrimSpace(word))
			}
		}
		if kind == "none" && len(got) > 0 || kind != "none" && !found {
			t.Errorf("%s\n\tgot %q, want %s", w[1], got, w[0])
		}
	}
}

// TestGathered has the ways in which talk tells what to take care of, what is fitted
// and thrown away, what with, and how big it is.
func TestGathered(t *testing.T) {
	for _, w := range ways(t, "gathered.txt") {
		var b strings.Builder
		for i, s := range append([]string{"So here we are again with this thing on the bench.", "The side panel comes off."}, sentences(w[1])...) {
			b.WriteString("[" + clock(float64(1+3*i)) + "] " + s + "\n")
		}
		rec := Extract(talkOf(t, b.String()), lexicon.Default(), Job{})
		var got []string
		add := func(kind string, words ...string) { got = append(got, kind+": "+strings.Join(words, " ")) }
		for _, x := range rec.Cautions {
			add("caution", strings.ToLower(x.Text))
		}
		for _, x := range rec.Parts {
			add("part", x.Name, x.Disposition)
		}
		for _, x := range rec.Sizes {
			add("size", x.Of, strings.Join(x.Candidates, ", "))
		}
		for _, x := range rec.Tools {
			add("tool", x.Size, x.Name)
		}
		for _, x := range rec.Consumables {
			add("consumable", x.Name)
		}
		kind, words, _ := strings.Cut(w[0], ": ")
		none := kind == "none"
		if none {
			kind, words, _ = strings.Cut(words, " ")
		}
		found := false
		for _, g := range got {
			if k, what, _ := strings.Cut(g, ": "); k == kind {
				all := true
				for word := range strings.FieldsSeq(words) {
					all = all && strings.Contains(what, word)
				}
				found = found || all
			}
		}
		if found == none {
			t.Errorf("%s\n\tgot %q, want %s", w[1], got, w[0])
		}
	}
}

// TestAnyPiece reads what is left of every way of saying something where the talk
// begins or breaks off at any word: nothing looks beyond its ends.
func TestAnyPiece(t *testing.T) {
	for _, file := range []string{"comes-off.txt", "followed.txt", "gathered.txt", "goes-on.txt", "left-open.txt", "steps.txt", "values.txt"} {
		for _, w := range ways(t, file) {
			words := strings.Fields(w[1])
			for i := range words {
				read1(t, strings.Join(words[:i+1], " "))
				read1(t, strings.Join(words[i:], " "))
				read1(t, strings.Join(words[i:min(len(words), i+3)], " "))
			}
		}
	}
}

func read1(t *testing.T, text string) {
	defer func() {
		if err := recover(); err != nil {
			t.Errorf("%q: %v", text, err)
		}
	}()
	clip, err := transcript.Read("x.txt", []byte("[0:01] "+text), transcript.Options{})
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	Extract(transcript.Join(clip), lexicon.Default(), Job{})
}

// TestTold has the ways of saying what is done, each with the steps that it tells: a word
// that the step begins with, and what it has to name. "none" is talk that tells of no work.
func TestTold(t *testing.T) {
	for _, w := range ways(t, "steps.txt") {
		var got []string
		for _, s := range record(t, append([]string{"Right, let's have a look at this thing.", "The clip comes off first."}, sentences(w[1])...)...).Steps {
			if s.Text != "Remove the clip." {
				got = append(got, s.Text)
			}
		}
		if w[0] == "none" {
			if len(got) > 0 {
				t.Errorf("%s\n\tgot %q, want none", w[1], got)
			}
			continue
		}
		for want := range strings.SplitSeq(w[0], ";") {
			verb, thing, ok := strings.Cut(strings.TrimSpace(want), ": ")
			if !ok {
				t.Fatalf("no \": \" in %q", want)
			}
			if !slices.ContainsFunc(got, func(s string) bool { return strings.HasPrefix(s, verb+" ") && strings.Contains(s, thing) }) {
				t.Errorf("%s\n\tgot %q, want %s", w[1], got, want)
			}
		}
	}
}
