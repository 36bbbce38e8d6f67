package extract

import (
	"slices"
	"strings"
	"testing"
)

// TestQuestionsQuoteTheirSentence proves that a question quotes the sentence that leaves it open,
// in full and no more, and the one before only where that sentence names nothing.
func TestQuestionsQuoteTheirSentence(t *testing.T) {
	for _, c := range []struct{ name, talk, kind, quote string }{
		{"its own sentence", "Winch bolts in. That's two tight. Other side, same again. The stay bolt at the bow I've left finger tight because the stay has to come off again.",
			NotTorqued, "The stay bolt at the bow I've left finger tight because the stay has to come off again."},
		{"what names it", "Undo the shackle. There's no proper clip here so there's a cable tie on the hose for now. Don't laugh. I'll get a real one tomorrow.",
			ReplaceLater, "There's no proper clip here so there's a cable tie on the hose for now."},
		{"where it was last handled", "Undo the cleat nuts. Cleat back on, and the two cleat nuts, I've given them a good hard pull. Lovely.",
			NotTorqued, "Cleat back on, and the two cleat nuts, I've given them a good hard pull."},
	} {
		var got []string
		for _, o := range record(t, strings.SplitAfter(c.talk, ". ")...).Open {
			if o.Kind == c.kind {
				got = append(got, o.Quote)
			}
		}
		if !slices.Contains(got, c.quote) {
			t.Errorf("%s: got %q, want %q", c.name, got, c.quote)
		}
	}
}
