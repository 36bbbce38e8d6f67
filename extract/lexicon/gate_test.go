package lexicon

import (
	"bufio"
	"flag"
	"os"
	"slices"
	"strings"
	"testing"
)

var wordList = flag.String("wordlist", "", "a list of everyday words, one a line: write innocent.txt anew from it")

// TestGate: what recognisers make of trade words, and everyday words that sound
// like them. The words are made up here; no list of real mishearings is copied.
func TestGate(t *testing.T) {
	lex := Default()
	for heard, want := range map[string]string{
		"gaskit": "gasket", "caliperr": "caliper", "rachet": "ratchet", "sprokket": "sprocket",
		"derailer": "derailleur", "thermostatt": "thermostat", "impeler": "impeller", "solvant": "solvent",
	} {
		got := lex.Repair(heard)
		if got == nil || got.Name != want {
			t.Errorf("%q gave %v, want %q", heard, got, want)
		}
	}
	for pair, want := range map[[2]string]string{{"torq", "wrench"}: "torque wrench", {"brale", "hose"}: "brake hose", {"trolly", "jack"}: "trolley jack"} {
		if got := lex.RepairBeside(pair[0], pair[1]); got == nil || got.Name != want {
			t.Errorf("%q gave %v, want %q", pair, got, want)
		}
	}
	for _, innocent := range strings.Fields("because people should something really minute before nothing weather friend garden kitchen window paper number summer winter morning evening bottle water dinner doctor letter bread bring better matter pretty money market picture simple single circle people table hammered") {
		if got := lex.Repair(innocent); got != nil {
			t.Errorf("the everyday word %q was taken for %q", innocent, got.Name)
		}
	}
	for _, pair := range [][2]string{{"last", "bolt"}, {"same", "nut"}, {"other", "wheel"}, {"real", "jack"}} {
		if got := lex.RepairBeside(pair[0], pair[1]); got != nil {
			t.Errorf("%q was taken for %q", pair, got.Name)
		}
	}
}

// TestInnocents writes innocent.txt anew when -wordlist names a list of everyday words.
func TestInnocents(t *testing.T) {
	if *wordList == "" {
		t.Skip("give -wordlist FILE to write data/innocent.txt anew")
	}
	f, err := os.Open(*wordList)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var words []string
	for sc := bufio.NewScanner(f); sc.Scan(); {
		w := sc.Text()
		if w == strings.ToLower(w) && !strings.ContainsAny(w, "'.") {
			words = append(words, w)
		}
	}
	words = append(words, strings.Fields("chatter clack clomp clompy klick plink plinks plinky plonk plunk plunky posher sproing")...) // sounds that few lists have
	slices.Sort(words)
	guilty := Default().Guilty(slices.Compact(words))
	head := "# Everyday words that sound like a term and are not one: the gate never repairs them.\n# Written by: go test ./extract/lexicon -run Innocents -wordlist FILE\n"
	if err := os.WriteFile("data/innocent.txt", []byte(head+strings.Join(guilty, "\n")+"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
}

func TestLinesThatCannotBeRead(t *testing.T) {
	for text, want := range map[string]string{
		"spanner":                       "own.txt:1: a line before any section",
		"[spanners]":                    "own.txt:1: no section \"spanners\"",
		"[tools]\n | x":                 "own.txt:2: the name is empty",
		"[verbs]\nremove":               "own.txt:2: want action | imperative",
		"[open]\nlook-up | use | x":     "own.txt:2: want name | phrases, or <set> | phrases",
		"[talk]\nno label here":         "own.txt:2: want mood: phrase",
		"[talk]\n\nhegde: no doubt":     "own.txt:3: no mood \"hegde\"; use one of negated, ",
		"[open]\nlook-up | i wonder":    "own.txt:2: no signal \"look-up\"; use one of ",
		"[place]\nside: left":           "own.txt:1: no section \"place\"",
		"[inflections]\nrun":            "own.txt:2: want the plain form",
		"[usual]\nNOTE | a | b | c | d": "own.txt:2: \"NOTE\" is neither check nor a signal word",
	} {
		dir := t.TempDir()
		if err := os.WriteFile(dir+"/own.txt", []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		_, err := Load(dir + "/own.txt")
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want %q", text, err, want)
		}
	}
}

// TestEveryFileIsRead: a file of data/ that is not among those read would be of no use.
func TestEveryFileIsRead(t *testing.T) {
	entries, err := os.ReadDir("data")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		text, err := os.ReadFile("data/" + e.Name())
		if err != nil {
			t.Fatal(err)
		}
		if e.Name() == "families.txt" && familiesText == string(text) {
			continue // asked for by name
		}
		if !slices.ContainsFunc(files[:], func(f struct {
			section string
			text    *string
		}) bool {
			return f.section+".txt" == e.Name() && *f.text == string(text)
		}) {
			t.Errorf("data/%s is not among the files that are read", e.Name())
		}
	}
}

// TestSoundKey: letters that sound alike are one, and two that are one sound are too.
func TestSoundKey(t *testing.T) {
	for word, want := range map[string]string{"ratchet": "rxt", "rachet": "rxt", "wrench": "rnx", "knuckle": "nkl", "bracket": "prkt", "bridge": "prj",
		"quick": "kk", "phillips": "flps", "filips": "flps", "gauge": "gj", "cylinder": "slntr", "throttle": "trtl", "axle": "axl", "clutch": "klx", "": ""} {
		if got := soundKey(word); got != want {
			t.Errorf("%q sounds as %q, want %q", word, got, want)
		}
	}
}
