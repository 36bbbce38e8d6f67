package extract

import (
	"fmt"
	"strings"
	"testing"

	"wrenchword/extract/lexicon"
)

// TestFormsOfPuttingBack: whatever the verb and whoever does it, in whatever voice and
// tense, and however long nobody spoke: what came off is back.
func TestFormsOfPuttingBack(t *testing.T) {
	verbs := []struct{ plain, ing, past, done string }{
		{"put", "putting", "put", "put"}, {"push", "pushing", "pushed", "pushed"}, {"slide", "sliding", "slid", "slid"},
		{"screw", "screwing", "screwed", "screwed"}, {"thread", "threading", "threaded", "threaded"}, {"wind", "winding", "wound", "wound"},
		{"run", "running", "ran", "run"}, {"spin", "spinning", "spun", "spun"}, {"knock", "knocking", "knocked", "knocked"},
		{"tap", "tapping", "tapped", "tapped"}, {"press", "pressing", "pressed", "pressed"}, {"drop", "dropping", "dropped", "dropped"},
		{"pop", "popping", "popped", "popped"}, {"slip", "slipping", "slipped", "slipped"}, {"drive", "driving", "drove", "driven"},
		{"shove", "shoving", "shoved", "shoved"}, {"ease", "easing", "eased", "eased"}, {"poke", "poking", "poked", "poked"},
	}
	frames := []string{
		"%[1]s it back in.", "%[1]s the plug back in.", "I %[1]s it back in.", "I'm %[2]s it back in.", "I %[3]s it back in.",
		"I've %[4]s it back in.", "I've just %[4]s it back in.", "It's %[4]s back in.", "That's %[4]s back in now.",
		"The plug gets %[4]s back in.", "You %[1]s it back in.", "We'll %[1]s that back in.", "Let's %[1]s it back in.",
		"I'm going to %[1]s it back in.", "Then %[1]s it back in.", "Now you want to %[1]s it back in.", "Just %[1]s it back in.",
	}
	for _, v := range verbs {
		for _, f := range frames {
			said := fmt.Sprintf(f, v.plain, v.ing, v.past, v.done)
			said = strings.ToUpper(said[:1]) + said[1:]
			checkLeftIn(t, []string{"Take the drain plug out.", "Wipe it with the rag.", said}, "plug", Refitted, HandTight, Tightened)
		}
	}
}

// TestFormsOfTakingOut is the same of what comes off.
func TestFormsOfTakingOut(t *testing.T) {
	frames := []string{
		"%s it out.", "%s the pin out.", "I %s it out.", "Let's %s it out.", "So I %s that out.", "We'll %s this out.",
		"I'm going to %s it out.", "Then %s the pin out.", "You %s it straight out.", "And %s that out.",
	}
	for verb := range strings.FieldsSeq("pull take slide wind screw knock tap pop get draw drive whip prise lever lift hook push spin twist press yank ease wiggle") {
		for _, f := range frames {
			said := fmt.Sprintf(f, verb)
			said = strings.ToUpper(said[:1]) + said[1:]
			checkLeftIn(t, []string{"Undo the clamp bolt on the arm.", "Now the pivot pin.", "Look at the state of it.", said}, "pin", Removed)
		}
	}
}

// TestFormsOfByHand: fasteners that are on by hand are so in whatever words.
func TestFormsOfByHand(t *testing.T) {
	for _, how := range []string{"finger tight", "by hand", "with my fingers", "hand tight", "just by hand", "fingers only", "just with my fingers"} {
		for _, f := range []string{"Bolts in, %s.", "Bolts back in %s.", "I've put the bolts in %s.", "They're in %s.", "All four back in, %s.", "Bolts, %s.", "Put the bolts in %s."} {
			checkLeftIn(t, []string{"Take the cover bolts off.", "Cover back on.", fmt.Sprintf(f, how)}, "bolt", HandTight)
		}
	}
}

// checkLeftIn tells whether the one thing of a name was left in one of some states, with
// long silences between what is said.
func checkLeftIn(t *testing.T, talk []string, name string, states ...string) {
	t.Helper()
	var b strings.Builder
	for i, s := range talk {
		fmt.Fprintf(&b, "[%d:%02d] %s\n", i*20/60, i*20%60, s)
	}
	fmt.Fprintf(&b, "[%d:%02d] Okay.\n", len(talk)*20/60, len(talk)*20%60)
	for _, s := range leftAs(Extract(talkOf(t, b.String()), lexicon.Default(), Job{}), name) {
		for _, want := range states {
			if s == want {
				return
			}
		}
	}
	t.Errorf("%s: not left %s", strings.Join(talk, " "), strings.Join(states, " or "))
}
