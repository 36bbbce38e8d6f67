package extract

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

// talkOf reads lines of timed plain text as a talk.
func talkOf(t testing.TB, text string) *transcript.Talk {
	t.Helper()
	clip, err := transcript.Read("talk.txt", []byte(text), transcript.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return transcript.Join(clip)
}

// lines puts one sentence a line, ten seconds apart, under a time each.
func lines(sentences ...string) string {
	var b strings.Builder
	for i, s := range sentences {
		b.WriteString("[" + clock(float64(10*(i+1))) + "] " + s + "\n\n")
	}
	return b.String()
}

func record(t testing.TB, sentences ...string) *Record {
	t.Helper()
	return Extract(talkOf(t, lines(sentences...)), lexicon.Default(), Job{})
}

// talks gives every transcript at hand: the demos, and the annotated talk where it is there.
func talks(t *testing.T) map[string]*transcript.Talk {
	t.Helper()
	var files []string
	for _, g := range []string{"../testdata/*.vtt", "../testdata/*.srt", "../testdata/notwork/*.txt"} {
		m, _ := filepath.Glob(g)
		files = append(files, m...)
	}
	if len(files) == 0 {
		t.Fatal("no demo transcripts found")
	}
	if p := os.Getenv("WRENCHWORD_SHARED"); p != "" {
		m, _ := filepath.Glob(filepath.Join(p, "corpus", "*"))
		files = append(files, m...)
	} else if m, _ := filepath.Glob("../../shared/corpus/*"); len(m) > 0 {
		files = append(files, m...)
	}
	out := map[string]*transcript.Talk{}
	for _, f := range files {
		if strings.HasSuffix(f, ".gold.json") {
			continue
		}
		clip, err := transcript.ReadFile(context.Background(), f, transcript.Options{})
		if err != nil {
			t.Fatal(err)
		}
		out[filepath.Base(f)] = transcript.Join(clip)
	}
	return out
}

// TestNothingInvented proves of every transcript at hand that each item's quote
// stands in the talk, word for word and in at most 40 words, that its time lies
// in the recording, and that each name was said or is the vocabulary's word.
func TestNothingInvented(t *testing.T) {
	lex := lexicon.Default()
	known := map[string]bool{}
	for _, term := range lex.Terms() {
		for _, w := range lexicon.Words(lexicon.Singular(term.Name)) {
			known[w] = true
		}
	}
	n := 0
	for name, talk := range talks(t) {
		rec := Extract(talk, lex, Job{})
		said := map[string]bool{}
		for _, w := range lexicon.Words(talk.Text) {
			said[w] = true
			said[lexicon.Singular(w)] = true
			said[lexicon.Plural(w)] = true
		}
		rec.Each(func(field, item string, p Place) {
			n++
			if p.Quote == "" || !strings.Contains(talk.Text, p.Quote) {
				t.Errorf("%s: %s: the quote is not in the talk: %q", name, field, p.Quote)
			}
			if k := wordCount(p.Quote); k > 40 {
				t.Errorf("%s: %s: the quote has %d words: %q", name, field, k, p.Quote)
			}
			if p.At < 0 || p.At > talk.Clips[p.Clip].Duration+1 {
				t.Errorf("%s: %s: time %.1f is outside the recording", name, field, p.At)
			}
			if len(strings.Fields(item)) > 8 {
				t.Errorf("%s: %s: the name %q is over eight words", name, field, item)
			}
			for _, w := range lexicon.Words(item) {
				if w == "fasteners" {
					continue // what holds a part, where the talk says only "those" or "all four"
				}
				if len(w) > 1 && field != "open" && !said[w] && !known[w] && !known[lexicon.Singular(w)] {
					t.Errorf("%s: %s: %q in the name %q was not said", name, field, w, item)
				}
			}
		})
		for _, v := range rec.Torques {
			byTurn := v.AngleDeg != nil && len(v.NM) == 0 && strings.Contains(v.Quote, "turn")
			if !strings.ContainsAny(v.Quote, "0123456789") && !numberSaid(v.Quote) && !byTurn {
				t.Errorf("%s: the torque %v has no number in its quote %q", name, v.Said, v.Quote)
			}
		}
		for _, s := range rec.Steps {
			if len(strings.Fields(s.Text)) > 30 {
				t.Errorf("%s: a step of over 30 words: %q", name, s.Text)
			}
		}
	}
	if n < 120 {
		t.Fatalf("only %d items were looked at", n)
	}
}

var numberWords = regexp.MustCompile(`(?i)\b(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|teen|\w+teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|nought)`)

func numberSaid(s string) bool { return numberWords.MatchString(s) }

func TestNoWorkGivesNoWork(t *testing.T) {
	files, _ := filepath.Glob("../testdata/notwork/*.txt")
	if len(files) < 3 {
		t.Fatalf("want three pieces of talk that is no work, have %d", len(files))
	}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		rec := Extract(talkOf(t, string(data)), lexicon.Default(), Job{})
		if len(rec.Torques) > 0 || len(rec.Ledger) > 0 || len(rec.Open) > 0 || len(rec.Steps) > 2 {
			b, _ := json.MarshalIndent(map[string]any{"torques": rec.Torques, "ledger": rec.Ledger, "open": rec.Open, "steps": rec.Steps}, "", " ")
			t.Errorf("%s: %s", f, b)
		}
	}
}

func TestSameTalkSameRecord(t *testing.T) {
	for name, talk := range talks(t) {
		a, _ := json.Marshal(Extract(talk, lexicon.Default(), Job{}))
		b, _ := json.Marshal(Extract(talk, lexicon.Default(), Job{}))
		if string(a) != string(b) {
			t.Errorf("%s: two runs differ", name)
		}
	}
}

// TestLedger: how things were left, each case with what must not be concluded.
func TestLedger(t *testing.T) {
	tests := []struct {
		name  string
		talk  []string
		item  string // "" where the ledger must be empty
		state string
	}{
		{"off and never back", []string{"Take the mudguard off and put it over there."}, "mudguard", Removed},
		{"off and back on", []string{"Take the fender off.", "Okay, fender back on."}, "fender", Refitted},
		{"comes off by itself", []string{"And the caliper comes off."}, "caliper", Removed},
		{"by hand", []string{"Then the drain plug goes in by hand."}, "drain plug", HandTight},
		{"finger tight in a fragment", []string{"Put the axle nut back on. Just finger tight."}, "axle nut", HandTight},
		{"value", []string{"The axle nut gets ninety newton metres."}, "axle nut", Torqued},
		{"tight, no value", []string{"Tighten the clamp bolt up."}, "clamp bolt", Tightened},
		{"no punctuation", []string{"so now take the wheel off and then pull the axle out"}, "wheel", Removed},
		{"thrown away", []string{"The old gasket goes in the bin."}, "gasket", Discarded},
		{"cracked only", []string{"Crack the wheel nuts while it's on the ground."}, "wheel nuts", Loosened},
		{"negated", []string{"Don't take the drain plug out."}, "", ""},
		{"conditional", []string{"If yours has a lock tab, bend the lock tab back."}, "", ""},
		{"somebody else", []string{"Some people take the whole fork out for this."}, "", ""},
		{"left for later", []string{"I'll take the mudguard off next week."}, "", ""},
		{"a threat is no work", []string{"Don't crack a hose with it loaded, it'll go straight through your hand."}, "", ""},
		{"power is switched off", []string{"Right, the engine's off."}, "", ""},
		{"left off", []string{"Take the splash guard off.", "And the splash guard I'm leaving off for now."}, "splash guard", Removed},
		{"not put back", []string{"Take the belt cover off.", "Tighten the motor clamp bolt.", "I've not put the belt cover back on yet."}, "belt cover", Removed},
		{"told in a row", []string{"Pulley off, washer off, spacer off.", "Now then, washer on, spacer, pulley, and the nut by hand."}, "spacer", Refitted},
		{"named in its turn", []string{"Take the drum out.", "Lift the brake shoe out.", "Clean it all up, that takes a while.", "Brake shoe back in.", "And then the drum."}, "drum", Refitted},
		{"going back together", []string{"The float comes off.", "The needle comes out.", "Clean it all, every hole of it.", "So, going back together.", "Needle, float."}, "float", Refitted},
		{"a heading is no fitting", []string{"Slacken the cable.", "Take the drum out.", "Clean it all up, that takes a while.", "Drum back in.", "Cable: I had slackened the adjuster."}, "cable", Loosened},
		{"nipped up", []string{"Motor bolts in, and nip them up."}, "motor bolts", Tightened},
		{"just nipped up", []string{"Motor bolts in, just nipped up for now."}, "motor bolts", HandTight},
		{"a lock is back only where that is said", []string{"Pull the split pin out.", "Take the nut off.", "Clean the thread, all of it.", "Nut back on.", "Now the split pin."}, "split pin", Removed},
		{"tight, told after it", []string{"Gearbox mount bolts in.", "And that's them tight."}, "gearbox mount bolts", Tightened},
		{"out with it", []string{"So, out with the impeller."}, "impeller", Removed},
		{"back tight", []string{"Take the filler cap off.", "The filler cap is back tight."}, "filler cap", Tightened},
		{"what it has is not what was fitted", []string{"There's a nut back in here on the plate."}, "", ""},
		{"where they are is not where they went", []string{"There are three valves in here.", "Three valves in here, and a seat."}, "", ""},
		{"what would be", []string{"Don't stand there. It'll go right through the guard."}, "", ""},
		{"before it is done", []string{"And before you go putting a bearing in, look at this."}, "", ""},
		{"tight once things go on", []string{"Carb off the boot.", "Clean the jets, all of them.", "Carb back on, and the choke cable.", "The drain screw is tight."}, "carb drain screw", Tightened},
		{"then on by hand", []string{"Cap off, cable nut off.", "So, going back together.", "Cable nut. On by hand, for now, and I leave it at that until tomorrow."}, "cable nut", HandTight},
		{"tight is how it was found", []string{"The axle nut is tight."}, "", ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rec := record(t, tt.talk...)
			if tt.item == "" {
				for _, e := range rec.Ledger {
					t.Errorf("%q was left %s by %q", e.Item, e.State, e.Quote)
				}
				return
			}
			for _, e := range rec.Ledger {
				if e.Item == tt.item {
					if e.State != tt.state {
						t.Errorf("%s was left %s, want %s", e.Item, e.State, tt.state)
					}
					return
				}
			}
			t.Errorf("no entry %q in %v", tt.item, rec.Ledger)
		})
	}
}

func TestTorques(t *testing.T) {
	tests := []struct {
		name, talk string
		fastener   string
		nm         float64
		applied    string
	}{
		{"plain", "Torque the caliper bolts to thirty newton metres.", "caliper bolts", 30, "done"},
		{"named before", "Now the pivot bolt. That gets forty five newton metres.", "pivot bolt", 45, "done"},
		{"corrected", "The axle nut gets forty newton metres. No, sorry. Fifty five newton metres.", "axle nut", 55, "done"},
		{"a document's", "The handbook says twenty newton metres for the sump plug.", "sump plug", 20, "quoted"},
		{"fasteners without a name", "Thermostat cover. Nine newton metres.", "thermostat cover fasteners", 9, "done"},
		{"still to do", "The axle nut will want ninety newton metres when it's on the ground.", "axle nut", 90, "intended"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rec := record(t, tt.talk)
			if len(rec.Torques) != 1 {
				t.Fatalf("%d torques, want one: %+v", len(rec.Torques), rec.Torques)
			}
			got := rec.Torques[0]
			if got.Fastener != tt.fastener || len(got.NM) != 2 || got.NM[0] != tt.nm || got.Applied != tt.applied {
				t.Errorf("got %q %v %s, want %q %v %s", got.Fastener, got.NM, got.Applied, tt.fastener, tt.nm, tt.applied)
			}
		})
	}
	for _, none := range []string{
		"This engine makes about ninety newton metres.",
		"Somebody asked what sort of torque this engine makes. It's three hundred and forty newton metres.",
		"The kit was thirty four pounds.",
		"And the engine is giving about thirty newton metres.",
		"It's got like four hundred newton metres.",
		"It took two hundred and ten people.",
	} {
		if rec := record(t, none); len(rec.Torques) > 0 {
			t.Errorf("%q gave %+v", none, rec.Torques)
		}
	}
}

// TestTorquesWithoutUnit has values said bare after one with its unit, and bare
// numbers that are none.
func TestTorquesWithoutUnit(t *testing.T) {
	tests := []struct {
		name string
		talk []string
		want string // the values, each with what it is for
	}{
		{"another thing", []string{"The bracket bolts get sixty newton metres.", "And the guide bolt, twenty five on that."}, "bracket bolts 60; guide bolt 25"},
		{"told before", []string{"The rotor bolts are eighty foot pounds.", "And those flange nuts I did before, those were a hundred."}, "rotor bolts 108.465; flange nuts 135.582"},
		{"set on the wrench", []string{"The cover bolts take ten newton metres.", "Wheel nuts now, and I've got the torque wrench set to ninety."}, "cover bolts 10; wheel nuts 90"},
		{"told again is one value", []string{"The drain plug gets forty newton metres.", "I believe it was forty."}, "drain plug 40"},
		{"taken back without its unit", []string{"The drain plug gets forty newton metres.", "No, sorry. It's thirty five."}, "drain plug 35"},
		{"a document takes nothing back", []string{"I torque the axle nut to forty newton metres.", "Sorry, I said forty. The sheet says thirty five."}, "axle nut 40; axle nut 35"},
		{"the unit comes after", []string{"I torqued the link nut already, it's fifty two.", "Yes. Newton metres."}, "link nut 52"},
		{"the unit in a sentence of its own", []string{"The long bolts are forty-seven. Newton metres, that is."}, "long bolts 47"},
		{"a unit with its number lends none", []string{"I torqued the link nut already, it's fifty two.", "It makes forty four foot pounds of torque."}, "link nut 52?"},
		{"one end of a range", []string{"The axle nuts get thirty five to forty newton metres.", "I do thirty five."}, "axle nuts 35; axle nuts 35"},
		{"on to the next part", []string{"The pivot bolts get sixty newton metres.", "I'll do the dog bone then.", "It's thirty eight."}, "pivot bolts 60; dog bone fasteners 38"},
		{"a row of values", []string{"Bracket to engine, sixty foot pounds.", "Caliper to bracket, that's eighteen."}, "bracket fasteners 81.349; caliper fasteners 24.405"},
		{"an age is no value", []string{"The lid bolts go in. He's six, that dog.", "Nine newton metres."}, "lid bolts 9"},
		{"what it costs is no value", []string{"The boot bolts get ten newton metres.", "The kit was four hundred rupees and the boot was three fifty."}, "boot bolts 10"},
		{"how far it is out is no value", []string{"The flange nut gets fifty newton metres.", "It's out about eight thousandths. It was three when I started."}, "flange nut 50"},
		{"counting is no value", []string{"The cover bolts take ten newton metres.", "That's one. And that's two. And that's three."}, "cover bolts 10"},
		{"a size is no value", []string{"The cover bolts take ten newton metres.", "The next ones take a thirteen."}, "cover bolts 10"},
		{"no unit in the talk", []string{"And the wheel nuts are ninety."}, "wheel nuts 90?"},
		{"what a wrench can do", []string{"You can't trust a torque wrench under ten newton metres."}, ""},
		{"named when it was done", []string{"Housing on.", "And then it's ten newton metres.", "So that's the housing bolts done."}, "housing bolts 10"},
		{"named right after", []string{"Nine newton metres, that's the belt cover bolts."}, "belt cover bolts 9"},
		{"they are not what comes next", []string{"So the caliper bolts are in.", "And they're thirty newton metres, bleeder eight newton metres."}, "caliper bolts 30; bleeder 8"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var got []string
			for _, q := range record(t, tt.talk...).Torques {
				if len(q.NM) == 0 {
					got = append(got, fmt.Sprintf("%s %v?", q.Fastener, q.Said.Low))
					continue
				}
				got = append(got, fmt.Sprintf("%s %v", q.Fastener, q.NM[0]))
				if said := strings.Contains(strings.ToLower(q.Quote), "newton") || strings.Contains(q.Quote, "foot"); said == (q.UnitFrom != "") {
					t.Errorf("%s: unit said %v, and told as that of %q", q.Quote, said, q.UnitFrom)
				}
			}
			if s := strings.Join(got, "; "); s != tt.want {
				t.Errorf("got %q, want %q", s, tt.want)
			}
		})
	}
}

// TestBareTalkIsCut has talk with neither stops nor commas: where one thing ends and the next begins.
func TestBareTalkIsCut(t *testing.T) {
	const talk = "so take the cover off and put it there now the two nuts come off with a spanner and the washer comes away push the seal in with your thumb new clip in the groove make sure it sits all the way round yeah that one and that one"
	rec := record(t, talk)
	left := map[string]string{}
	for _, e := range rec.Ledger {
		left[e.Item] = e.State
	}
	for item, state := range map[string]string{"cover": Removed, "washer": Removed, "seal": Refitted, "clip": Refitted} {
		if left[item] != state {
			t.Errorf("the %s was left %q, want %q; ledger %v", item, left[item], state, left)
		}
	}
}

func TestOpen(t *testing.T) {
	tests := []struct {
		name string
		talk []string
		kind string
		in   string // words that the question or its thing must hold
	}{
		{"look-up", []string{"Now the axle nut. I don't have that in front of me, I'll look it up."}, LookUp, "axle nut"},
		{"not refitted", []string{"Take the side panel off."}, NotRefitted, "panel"},
		{"not torqued", []string{"Start the axle nut by hand."}, NotTorqued, "axle nut"},
		{"lock missing", []string{"Pull the split pin out and throw it over there.", "The castle nut gets ninety newton metres."}, LockMissing, "split pin"},
		{"one split pin of two", []string{"There's a split pin through the ram pin. Pull the split pin out, that's going in the bin.", "Now the wheel.", "Wheel off.", "The brake shoes look all right, so they stay where they are.", "Dust cap off.", "Under there is the castle nut.", "Pull the split pin and the castle nut comes off.", "Castle nut back on, and a new split pin goes in."}, LockMissing, "split pin"},
		{"stands in", []string{"There's a cable tie on the hose for now."}, ReplaceLater, "cable tie"},
		{"promise", []string{"I'll put a link to the gasket kit down below."}, Promise, "gasket"},
		{"a misprint", []string{"New pads in. Pad pin, and I'm reading it to you, 180 newton metres.", "Somebody lost a dot somewhere, so I do it by feel."}, Suspect, "pad pin"},
		{"what a sticker is on", []string{"Now the axle nut. The sticker on the swingarm says 100 newton metres. The booklet says 125."}, Conflict, "axle nut"},
		{"units disagree", []string{"The hub nut is 240 newton metres, which is 77 foot pounds."}, Suspect, "hub nut"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rec := record(t, tt.talk...)
			for _, o := range rec.Open {
				if o.Kind == tt.kind && strings.Contains(strings.ToLower(o.About+" "+o.Question), tt.in) {
					return
				}
			}
			t.Errorf("no %s about %q in %+v", tt.kind, tt.in, rec.Open)
		})
	}
}

// TestLinkAt: a time worked out inside a longer cue links to the start of the cue.
func TestLinkAt(t *testing.T) {
	rec := record(t, "So we are here in the shed again and it is raining, and then take the mudguard off.")
	if len(rec.Ledger) != 1 {
		t.Fatalf("ledger %+v", rec.Ledger)
	}
	p := rec.Ledger[0].Place
	if p.AtExact || p.At <= 10 || p.LinkAt() != 10 {
		t.Errorf("said at %.1f (exact %v), links to %.1f; want the cue's start, 10", p.At, p.AtExact, p.LinkAt())
	}
}

// TestFacts: what is computed says from what. Chain 520 is 15.875 mm pitch and
// 6.35 mm wide in published motorcycle chain charts.
func TestFacts(t *testing.T) {
	rec := record(t, "It's a fifteen tooth sprocket on the front and a forty five tooth on the back.", "And it takes a 520 chain.")
	want := map[string]string{"gear ratio": "3.000 to 1", "chain size": "520: pitch 15.875 mm, 6.35 mm between the inner plates"}
	for _, f := range rec.Facts {
		if want[f.Name] != f.Value {
			t.Errorf("%s is %q, want %q", f.Name, f.Value, want[f.Name])
		}
		if f.From == "" || f.Method == "" {
			t.Errorf("%+v does not say from what and how", f)
		}
		delete(want, f.Name)
	}
	if len(want) > 0 {
		t.Errorf("not computed: %v", want)
	}
	if rec := record(t, "The kids are fifteen and forty five minutes late."); len(rec.Facts) > 0 {
		t.Errorf("facts of no machine: %+v", rec.Facts)
	}
}

// TestOwnWords: a vocabulary file alone adds a tool, a mishearing, a hedge and a verb of another trade.
func TestOwnWords(t *testing.T) {
	own := filepath.Join(t.TempDir(), "own.txt")
	if err := os.WriteFile(own, []byte(`[tools]
bowl gouge | | bowel gouge
[parts]
faceplate
[verbs]
remove | Remove | unchuck ~ |
[talk]
hedge: by the look of it
`), 0o644); err != nil {
		t.Fatal(err)
	}
	lex, err := lexicon.Load(own)
	if err != nil {
		t.Fatal(err)
	}
	talk := talkOf(t, lines("Unchuck the faceplate with the bowel gouge.", "The drive bolt is forty newton metres by the look of it."))
	rec := Extract(talk, lex, Job{})
	if len(rec.Tools) != 1 || rec.Tools[0].Name != "bowl gouge" || !strings.Contains(rec.Tools[0].Quote, "bowel gouge") {
		t.Errorf("tools %+v", rec.Tools)
	}
	if len(rec.Ledger) == 0 || rec.Ledger[0].Item != "faceplate" || rec.Ledger[0].State != Removed {
		t.Errorf("ledger %+v", rec.Ledger)
	}
	if len(rec.Torques) != 1 || !rec.Torques[0].Hedged {
		t.Errorf("torques %+v", rec.Torques)
	}
	if rec := Extract(talk, lexicon.Default(), Job{}); len(rec.Tools) > 0 && rec.Tools[0].Name == "bowl gouge" {
		t.Error("the own word is in the vocabulary already: the test proves nothing")
	}
}

func FuzzExtract(f *testing.F) {
	f.Add("Take the wheel off. Torque the axle nut to ninety newton metres, no, sorry, fifty.")
	f.Add("so now crack the nut and it's a 13 might be a 12 and those come out")
	f.Add("’s ’ll — [Music] 3/8 \xff M8x30 one two all three out")
	f.Fuzz(func(t *testing.T, text string) {
		clip, err := transcript.Read("f.txt", []byte("[0:01] "+text), transcript.Options{})
		if err != nil {
			return
		}
		talk := transcript.Join(clip)
		rec := Extract(talk, lexicon.Default(), Job{})
		rec.Each(func(field, _ string, p Place) {
			if !strings.Contains(talk.Text, p.Quote) {
				t.Errorf("%s: quote %q is not in %q", field, p.Quote, talk.Text)
			}
		})
	})
}

// BenchmarkExtract extracts the demo captions, as is and repeated, so that cost
// beyond the length of the talk shows.
func BenchmarkExtract(b *testing.B) {
	data, err := os.ReadFile("../testdata/cargo-trike.srt")
	if err != nil {
		b.Fatal(err)
	}
	clip, err := transcript.Read("demo.srt", data, transcript.Options{})
	if err != nil {
		b.Fatal(err)
	}
	lex := lexicon.Default()
	for _, n := range []int{1, 10, 100} {
		clips := make([]*transcript.Clip, n)
		for i := range clips {
			clips[i] = clip
		}
		talk := transcript.Join(clips...)
		b.Run(map[int]string{1: "1x", 10: "10x", 100: "100x"}[n], func(b *testing.B) {
			b.SetBytes(int64(len(talk.Text)))
			b.ReportAllocs()
			for b.Loop() {
				Extract(talk, lex, Job{})
			}
		})
	}
}

// TestMoodsAreRead: every mood that the vocabulary may name means something to the reading.
func TestMoodsAreRead(t *testing.T) {
	for _, name := range lexicon.MoodNames {
		if moodOf[name] == 0 {
			t.Errorf("nothing reads the mood %q", name)
		}
	}
	if len(moodOf) != len(lexicon.MoodNames) {
		t.Errorf("%d moods are read, %d may be named", len(moodOf), len(lexicon.MoodNames))
	}
}

// TestSidesStayApart has a left and a right, named by their sides alone, that were left differently.
func TestSidesStayApart(t *testing.T) {
	rec := record(t, "The right-hand pedal comes off.", "The left-hand pedal comes off.", "Now I clean the threads, all of it.",
		"Right-hand pedal in, thirty five newton metres.", "And the left one goes in, and I spin that in with my fingers.")
	got := map[string]string{}
	for _, e := range rec.Ledger {
		got[e.Side] = e.State
	}
	if got["right"] != Torqued || got["left"] != HandTight {
		t.Errorf("left %q, right %q; ledger %v", got["left"], got["right"], got)
	}
}
