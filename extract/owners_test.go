package extract

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

var fitOwners = flag.Bool("fit-owners", false, "fit the weights of whose an unnamed fastener is on testdata/judged and write them to owners.bin")

// ownersJudged gives the talk of which it was judged whose the unnamed fasteners are.
func ownersJudged(t *testing.T) []judgedTalk {
	return judgedTalks(t, "own", func(j *judgedTalk, tok int, names string) {
		j.want[tok] = namesOf(names)
	})
}

// plainTalk gives short talk in which nobody can be in doubt whose the fasteners are: each form
// with parts of many trades. P is the part, Q another one, F its fasteners, E those of the other.
func plainTalk(t *testing.T) []judgedTalk {
	var out []judgedTalk
	parts := strings.Split("cover,bracket,pump,housing,caliper,fan,motor,guard,starter,tank,manifold,seat,panel,gearbox,hose,sprocket,pulley,blade,wheel,lid,fender,radiator,bearing cap,stem,brake disc,cable,carburettor,door,arm,sensor,head,bar clamp,drum,plate,mudguard", ",")
	fasteners := strings.Split("two bolts,bolts;four bolts,bolts;one bolt,bolt;one nut,nut;three screws,screws;two nuts,nuts;six screws,screws", ";")
	forms := []string{
		"Q off. P off, N.", "Q off. P off. N.", "Q off. P, N.", "Q off. Then the P, N, and that's them.", "Q out of the way. The P's held by N. Undo them.",
		"Q off, that's that. N holding the P. Undo those.", "Q off. N on the back of the P. Undo them.", "Q off. Now the P. N, that's them out.",
		"Q off, E out. There's N on the P, and they're tight.", "P off, N. Q off, E. Wipe it all down. P back on. F in.", "P off, N. Q off, E. Q back on. P back on, F by hand.",
		"P off, N. Q off, E. P on the Q. F started.", "P off, N. Wipe it with a rag. P back on. Get the F in, leave them slack.", "P off, N. Q off, E. P on, F up tight.",
		"P off, N. Q off, E. Right, the P goes back on, and the F.", "Q off, E. Take the N out of the P. Lift the P away.", "Q off, E. Undo N and the P lifts out.",
		"Q off, E. N, and the P comes away.", "Undo the N on the P. Q off, E. P on. F in and nipped up.", "P off, N. Q off, E. Q on, E in. P on. F in.",
		"P off, N. Q off, E. P back on the Q. F in. The shield's still off.", "P off, N. P back on. F in. Q next.", "P on the Q. F started. The wire's got a little tie up here.",
		"P off, N. Clean it. P on the Q. Washer, F.", "P off, N. P on, belt on it. F. The rod's sticking out there, mind it.", "Q off, E. The P's held by N. P out. New P in. F in.",
		"P off, N. Wipe it. P's on the Q, F through, run down by hand.", "Q off, E. The P first. N off, washer off. A good clean. Then the washer, and the F, finger tight.", "P in with a new seal. F to whatever it is.",
		"Q off, E. P swings down. F in loose.", "N off, washer off, P off. Wipe it. P on, washer, F.", "N out, P off. Q off, E. P, then washer, then F.", "N out, P off. Wipe it. P back on, F in.", "N off. P off. Clean all that. Then the P, and the F, by hand.", "So the P. N off, washer off. Q off as well. That takes a good clean. Then the washer, dished side in, and the F, finger tight.", "P off, N. Q off. Clean all that. Then the washer, and the F, by hand.", "Q off, E. Undo the F that go through the P.", "Q off, E. Undo the F that hold the P on.", "Q on, E. The P goes on, and the F.", "P on the shaft. Grease under the head of the F. That's tight.", "Q off, E. The Q's held by E. P out, N. New P in. F in. The shield's still off.", "P in. F. The Q just clips on.", "P off, N. Q off. Grease on the Q. Then P up, F through, and the washer.", "Q off, E. P next. N. Out they come.",
	}
	k := 0
	for _, form := range forms {
		for range 8 {
			p, q := parts[(k*7)%len(parts)], parts[(k*11+5)%len(parts)]
			if p == q {
				q = "shield"
			}
			n, f, _ := strings.Cut(fasteners[k%len(fasteners)], ",")
			e, _, _ := strings.Cut(fasteners[(k*3+2)%len(fasteners)], ",")
			k++
			j := judgedTalk{name: "plain", want: map[int][][]string{}}
			var b strings.Builder
			b.WriteString("[0:01] Hello, I'm in the shop. ")
			for i := 0; i < len(form); i++ {
				c := form[i]
				alone := i == 0 || form[i-1] == ' '
				w := ""
				if alone && i+1 <= len(form) && (i+1 == len(form) || strings.ContainsRune(" .,'", rune(form[i+1]))) {
					switch c {
					case 'P':
						w = p
					case 'Q':
						w = q
					case 'N':
						w = n
					case 'F':
						w = f
					case 'E':
						w = e
					}
				}
				if w == "" {
					b.WriteByte(c)
					continue
				}
				b.WriteString(w)
				owner := map[byte]string{'N': p, 'F': p, 'E': q}[c]
				if owner != "" {
					at := len(strings.Fields(strings.ReplaceAll(strings.ReplaceAll(b.String(), "'s", " 's"), "'m", " 'm"))) - 2 // the stamp is no token
					name := append(strings.Fields(owner), lexicon.Singular(f))
					if c == 'E' {
						name = append(strings.Fields(owner), "e")
					}
					j.want[at] = [][]string{name}
				}
			}
			clip, err := transcript.Read("talk.txt", []byte(b.String()+"\n[0:40] Okay.\n"), transcript.Options{})
			if err != nil {
				t.Fatal(err)
			}
			j.talk = transcript.Join(clip)
			numbers, want := openedNumbers(j.talk), j.want
			j.want = map[int][][]string{}
			for at, names := range want {
				j.want[numbers[at]] = names
			}
			out = append(out, j)
		}
	}
	return out
}

// spokenAt gives plain talk the times at which it would be said, a line to a sentence:
// 160 words a minute, and a breath.
func spokenAt(text string) []byte {
	var b strings.Builder
	at := 1.0
	var line []string
	for _, w := range strings.Fields(text) {
		line = append(line, w)
		if strings.HasSuffix(w, ".") || strings.HasSuffix(w, "?") || strings.HasSuffix(w, "!") {
			fmt.Fprintf(&b, "[%d:%02d] %s\n", int(at)/60, int(at)%60, strings.Join(line, " "))
			at += float64(len(line))/2.7 + 0.6
			line = line[:0]
		}
	}
	fmt.Fprintf(&b, "[%d:%02d] %s\n", int(at)/60, int(at)%60, strings.Join(line, " "))
	return []byte(b.String())
}

// namedAs tells whether a name shares a word that tells which with one of the names accepted:
// 1 where it does, -1 where it names something else, 0 where it names nothing.
func namedAs(name string, want [][]string) int {
	any := false
	for w := range strings.FieldsSeq(strings.ToLower(name)) {
		w = lexicon.Singular(w)
		if placeWords.has(w) || sideOf[w] != "" || plainWords.has(w) {
			continue
		}
		any = true
		for _, n := range want {
			if slices.Contains(n, w) {
				return 1
			}
		}
	}
	if any {
		return -1
	}
	return 0
}

// plainWords are the words of a fastener's name that do not tell whose it is.
var plainWords = set("nut bolt screw stud fastener plug union nipple cap banjo axle spindle lockring locknut pin setscrew")

// A judgedClaim is a mention with its claims, which of them are right, and which was taken.
type judgedClaim struct {
	fold  int // the part of the talk that it is kept with
	plain bool
	none  bool // it is nothing's
	clues [][]clue
	right []bool
	taken int
	told  []int // of each claim, as namedAs tells
}

// judge follows each judged talk and gives what was to be told in it.
func judge(t *testing.T, lex *lexicon.Lexicon) []judgedClaim {
	var out []judgedClaim
	for k, j := range append(ownersJudged(t), plainTalk(t)...) {
		r := read(j.talk, lex)
		r.claimed = func(mi int, all []claim, best claim) {
			want := j.want[r.mentions[mi].hi-1]
			if want == nil {
				return
			}
			c := judgedClaim{fold: k % folds, plain: j.name == "plain", right: make([]bool, len(all)), told: make([]int, len(all))}
			fastener, any := false, false
			for i, x := range all {
				if x.t == best.t && x.ahead == best.ahead {
					c.taken = i
				}
				c.clues = append(c.clues, x.clues)
				switch {
				case x.ahead >= 0:
					c.told[i] = namedAs(thingName(&r.mentions[x.ahead]), want)
				case x.t != nil:
					c.told[i] = namedAs(x.t.name, want)
				}
				if x.fastener() {
					c.right[i] = c.told[i] == 1
					for _, k := range x.t.mentions { // what it was judged to be last
						if w := j.want[r.mentions[k].hi-1]; w != nil {
							c.right[i] = slices.Equal(w[0], want[0])
						}
					}
					fastener = fastener || c.right[i]
				}
			}
			for i, x := range all { // a new fastener of the part only where it is none of before
				if !x.fastener() {
					c.right[i] = !fastener && c.told[i] == 1
				}
				any = any || c.right[i]
			}
			if !any {
				c.right[len(all)-1] = true // nobody's
			}
			out = append(out, c)
		}
		r.refer()
	}
	return out
}

// fitClaims gives the weights by which the right claims are the heaviest: a conditional logit.
func fitClaims(all []judgedClaim, epochs int, step, shrink float64) string {
	l := newLearner(ownerClues, step, shrink)
	random := rand.New(rand.NewPCG(7, 7))
	for range epochs {
		random.Shuffle(len(all), func(a, b int) { all[a], all[b] = all[b], all[a] })
		for _, c := range all {
			p := make([]float64, len(c.clues))
			for i, clues := range c.clues {
				for _, k := range clues {
					p[i] += l.weight[k]
				}
			}
			most := slices.Max(p)
			sum, right := 0.0, 0.0
			for i := range p {
				p[i] = math.Exp(p[i] - most)
				sum += p[i]
				if c.right[i] {
					right += p[i]
				}
			}
			for i := range p {
				g := p[i] / sum
				if c.right[i] {
					g -= p[i] / right
				}
				if math.Abs(g) < 1e-4 {
					continue
				}
				for _, k := range c.clues[i] {
					l.learn(k, g)
				}
			}
		}
		l.endEpoch(epochs)
	}
	return l.packed(24)
}

// TestOwners judges whose the unnamed fasteners are in the judged talk.
//
//	go test ./extract -run TestOwners -fit-owners -v
//
// fits the weights again: they are used on the talk, and fitted on what that gives. First it
// keeps every eighth talk from the fitting and tells what the weights are worth on those; the
// weights written are fitted on all.
func TestOwners(t *testing.T) {
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	if *fitOwners {
		defer func(w string) { ownerWeights = w }(ownerWeights)
		for _, keep := range []bool{true, false} {
			for range 3 {
				all := slices.DeleteFunc(judge(t, lex), func(c judgedClaim) bool { return keep && c.fold == folds-1 })
				ownerWeights = fitClaims(all, 30, 0.1, 0.0002)
			}
			if keep {
				right, wrong, none := tally(judge(t, lex), true, false)
				t.Logf("kept from the fitting: %d to their part, %d to another, %d to none", right, wrong, none)
			}
		}
		if err := os.WriteFile("owners.bin", []byte(ownerWeights), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	all := judge(t, lex)
	right, wrong, none := tally(all, false, true)
	t.Logf("plain talk: %d to their part, %d to another, %d to none", right, wrong, none)
	right, wrong, none = tally(all, false, false)
	t.Logf("%d to their part, %d to another, %d to none", right, wrong, none)
	if n := right + wrong + none; right*20 < n*13 || wrong*10 > n*3 {
		t.Errorf("of %d unnamed fasteners %d go to their part and %d to another: want thirteen in twenty, and at most three in ten", n, right, wrong)
	}
}

// tally counts the claims taken that tell whose a fastener is rightly, wrongly and not at all.
func tally(all []judgedClaim, kept, plain bool) (right, wrong, none int) {
	for _, c := range all {
		switch {
		case kept && c.fold != folds-1, c.plain != plain:
		case c.told[c.taken] == 1 || c.told[c.taken] == 0 && c.right[c.taken] && c.taken < len(c.told)-1:
			right++
		case c.told[c.taken] == 0:
			none++
		default:
			wrong++
		}
	}
	return right, wrong, none
}

// namesOf reads names with bars between them, each into its words.
func namesOf(names string) [][]string {
	var out [][]string
	for n := range strings.SplitSeq(names, "|") {
		words := strings.Fields(strings.ToLower(n))
		for i, w := range words {
			words[i] = lexicon.Singular(w)
		}
		if len(words) > 0 {
			out = append(out, words)
		}
	}
	return out
}
