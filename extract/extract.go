package extract

import (
	"wrenchword/extract/lexicon"
	"wrenchword/extract/transcript"
)

// Extract reads a talk into the record of its job. It cannot fail: any talk
// gives a record, an empty one where nothing of a workshop was said. The same
// talk, vocabulary and job give the same record, to the byte. job is carried
// over as the person gave it.
func Extract(talk *transcript.Talk, lex *lexicon.Lexicon, job Job) *Record {
	rec := &Record{Schema: Schema, Job: job,
		Source: []Source{}, Tools: []Tool{}, Parts: []Part{}, Consumables: []Consumable{}, Sizes: []Size{}, Torques: []Torque{},
		Ledger: []Entry{}, Cautions: []Caution{}, Steps: []Step{}, Open: []Open{}, Doubts: []Doubt{}, Facts: []Fact{}, Notes: []Note{}, Usual: []Usual{}}
	words := make([]int, len(talk.Clips))
	for i := range talk.Words {
		if w := &talk.Words[i]; !w.Is(transcript.Noise) {
			words[w.Clip]++
		}
	}
	for i, c := range talk.Clips {
		rec.Source = append(rec.Source, Source{Name: c.Name, Format: c.Format, SHA256: c.SHA256, Duration: round3(c.Duration), Cues: len(c.Cues), Words: words[i]})
	}
	if len(talk.Words) == 0 {
		return rec
	}
	return extract(talk, lex, rec, nil)
}

// extract fills a record; set, where it is one, makes the reading ready to tell what it finds.
func extract(talk *transcript.Talk, lex *lexicon.Lexicon, rec *Record, set func(*reading)) *Record {
	r := readWith(talk, lex, set)
	if len(r.toks) == 0 {
		return rec
	}
	r.refer()
	if !r.ofWork() {
		return rec
	}
	// The order matters where a view needs an earlier one: entries get their
	// numbers first, open questions come last.
	rec.Ledger = r.ledger()
	rec.Sizes, rec.Tools = r.sizesAndTools()
	rec.Torques = r.torques(rec.Ledger)
	rec.Parts = r.weighFates(r.parts())
	r.weighStandings(rec)
	r.renewals(rec)
	rec.Consumables = r.consumables()
	rec.Cautions = r.cautions()
	r.siftCautions(rec)
	rec.Steps = r.steps()
	rec.Facts = r.facts()
	r.open(rec)
	rec.Notes = r.notes(rec)
	rec.Usual = r.usual(rec)
	return rec
}

// ofWork tells whether the talk is of work on a machine at all: something was
// loosened, taken off, fitted or tightened, or several parts are spoken of.
func (r *reading) ofWork() bool {
	names := map[string]bool{}
	for i := range r.mentions {
		if m := &r.mentions[i]; m.kind&(lexicon.Fastener|lexicon.Part) != 0 {
			names[m.head] = true
		}
	}
	for _, t := range r.things {
		if len(t.events) > 0 && len(names) > 1 {
			return true
		}
	}
	return len(names) >= 4 || len(r.heard) > 0 || len(r.things) > 0 && len(r.toks) < 60
}
