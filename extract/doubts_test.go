package extract

import (
	"testing"

	"wrenchword/extract/lexicon"
)

// TestDoubts: where no question is near, one in four of the sentences that are told as perhaps open
// leaves open what careful readers of the talk found, and there are few of them.
func TestDoubts(t *testing.T) {
	lex := lexicon.Default()
	talks, told, right := 0, 0, 0
	for _, j := range judgedTalks(t, "open", func(*judgedTalk, int, string) {}) {
		want := judgedList(t, j.name, "open")
		var r *reading
		rec := extract(j.talk, lex, &Record{}, func(x *reading) { r = x })
		if len(r.toks) == 0 {
			continue
		}
		open := make(marks, len(r.sentences()))
		for i := range want {
			for _, tok := range want[i].toks {
				open.around(r.sentenceOf(int(r.toks[tok].cl)))
			}
		}
		asked := r.askedNear(rec.Open)
		talks++
		for _, d := range rec.Doubts {
			k := r.sentenceAt(d.Place)
			if told++; open[k] {
				right++
			}
			if asked[k] {
				t.Errorf("%s: %q is told beside what asks after it", j.name, d.Quote)
			}
		}
	}
	t.Logf("%d sentences in %d talks, %d of them rightly", told, talks, right)
	if told == 0 || right*4 < told || told > 8*talks {
		t.Errorf("%d sentences in %d talks, %d of them rightly: want one in four right and at most eight a talk", told, talks, right)
	}
}
