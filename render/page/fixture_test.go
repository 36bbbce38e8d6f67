package page_test

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"wrenchword/extract"
	"wrenchword/render"
	"wrenchword/render/page"
	"wrenchword/render/workdoc"
)

var day = time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC)

func heardAt(at float64, quote string) extract.Place {
	return extract.Place{At: at, AtExact: true, Quote: quote}
}

// trailer is an invented job: the hub bearing of a trailer.
func trailer() *extract.Record {
	ninety := 90.0
	return &extract.Record{
		Schema: extract.Schema,
		Source: []extract.Source{{Name: "hub.vtt", Format: "webvtt", SHA256: strings.Repeat("ab", 32), Duration: 1260, Cues: 300, Words: 2100}},
		Job:    extract.Job{Title: "Trailer hub bearing", Machine: "Box trailer", Year: "2009", Date: "2026-05-01"},
		Tools: []extract.Tool{
			{Name: "socket", Size: "19 mm", Need: "required", Listed: true, Used: true, Place: heardAt(20, "nineteen mil socket")},
			{Name: "torque wrench", Need: "optional", Used: true, Place: heardAt(700, "the torque wrench")},
		},
		Parts:       []extract.Part{{Name: "bearing", Disposition: "new", Count: 2, Place: heardAt(40, "two new bearings")}, {Name: "grease cap", Disposition: "temporary", Place: heardAt(900, "that cap will do for now")}},
		Consumables: []extract.Consumable{{Name: "bearing grease", UsedOn: "bearings", Place: heardAt(600, "pack it with grease")}},
		Sizes:       []extract.Size{{Of: "spring bolts", Dimension: "thread", Candidates: []string{"M10"}, Sure: true, Place: heardAt(80, "the M ten spring bolts")}},
		Torques: []extract.Torque{
			{ID: "T1", Fastener: "wheel bolts", LedgerID: "L1", Said: extract.Said{Low: 90, High: 90, Unit: "N.m"}, NM: []float64{90, 90}, Applied: "done", Hedged: true, Order: "crosswise", Place: heardAt(1000, "about ninety newton metres")},
			{ID: "T2", Fastener: "spring bolts", LedgerID: "L2", Said: extract.Said{Low: 35, High: 35, Unit: "lbf.ft"}, NM: []float64{47.45, 47.45}, Applied: "done", Place: heardAt(1100, "thirty five foot pounds")},
			{ID: "T3", Fastener: "hub nut", LedgerID: "L3", Said: extract.Said{Low: 20, High: 20, Unit: "N.m"}, NM: []float64{20, 20}, AngleDeg: &ninety, Applied: "intended", Place: heardAt(800, "twenty newton metres plus ninety degrees")},
		},
		Ledger: []extract.Entry{
			{ID: "L1", Item: "wheel bolts", Kind: "fastener", Place_: "hub", Count: 4, State: extract.Torqued, ValueSaid: true, Washers: "none", StoredAt: "tin lid", Events: []extract.Event{{Act: "remove", Place: heardAt(100, "off they come")}, {Act: "torque", Place: heardAt(1000, "about ninety newton metres")}}, LastAt: 1000, Place: heardAt(100, "off they come")},
			{ID: "L2", Item: "spring bolts", Kind: "fastener", Place_: "axle", Count: 2, Position: "the long one at the back", State: extract.Torqued, ValueSaid: true, LastAt: 1100, Place: heardAt(120, "spring bolts out")},
			{ID: "L3", Item: "hub nut", Kind: "fastener", Place_: "hub", State: extract.HandTight, Lock: extract.Lock{Method: "split pin", State: "removed"}, LastAt: 780, Place: heardAt(150, "undo the big nut")},
			{ID: "L4", Item: "dust cap", Kind: "part", State: extract.Removed, LastAt: 140, Place: heardAt(140, "tap the cap off")},
		},
		Cautions: []extract.Caution{{Text: "Don't get under it on the jack alone.", Place: heardAt(30, "don't get under it on the jack alone")}},
		Steps: []extract.Step{
			{N: 1, Text: "Chock the other wheel.", Phase: "preparing", End: 60, Place: heardAt(50, "chock the other wheel")},
			{N: 2, Text: "Undo the wheel bolts.", Phase: "taking apart", End: 115, Place: heardAt(100, "off they come")},
			{N: 3, Text: "Tap the dust cap off.", Phase: "taking apart", End: 145, Place: heardAt(140, "tap the cap off")},
			{N: 4, Text: "Pack the bearing with grease.", Phase: "fitting", End: 640, OffCamera: true, Place: heardAt(600, "pack it with grease")},
			{N: 5, Text: "Tighten the wheel bolts to 90 N·m.", Phase: "tightening", End: 1020, LedgerIDs: []string{"L1"}, Place: heardAt(1000, "about ninety newton metres")},
			{N: 6, Text: "Spin the wheel and feel for play.", Phase: "checking", End: 1200, Place: heardAt(1180, "spin it and feel")},
		},
		Open: []extract.Open{
			{ID: "Q1", Kind: extract.LockMissing, Before: extract.BeforeUse, About: "split pin of the hub nut", Question: "Has the split pin of the hub nut been renewed?", LedgerID: "L3", Place: heardAt(152, "pull the pin")},
			{ID: "Q2", Kind: extract.LookUp, Before: extract.BeforeUse, About: "bearing preload", Question: "How much play may the bearing have?", Place: heardAt(820, "I'll look up the play later")},
			{ID: "Q3", Kind: extract.ReplaceLater, Before: extract.BeforeLater, Due: "after the first trip", About: "grease cap", Question: "Has the stand-in grease cap been replaced?", Place: heardAt(900, "that cap will do for now")},
			{ID: "Q4", Kind: extract.Promise, Before: extract.BeforePublishing, About: "part number", Question: "Is the promised part number there?", Place: heardAt(1250, "I'll put the number below")},
		},
		Doubts: []extract.Doubt{{Place: heardAt(700, "the other side I'll see to")}, {Place: heardAt(720, "that one went to thirty five foot or so")}},
		Facts:  []extract.Fact{{Name: "grease", Value: "30 ml", From: "two bearings of 15 ml", Method: "sum", Place: heardAt(610, "fifteen each")}},
		Notes:  []extract.Note{{Kind: "tool", Text: "A torque wrench is used and not in the list."}},
		Usual: []extract.Usual{
			{Kind: "caution", Signal: "WARNING", Text: "A lifted trailer can fall. Use stands.", Why: "the talk lifts the trailer", Source: "common practice, no source"},
			{Kind: "check", Text: "Tighten the wheel bolts again after the first trip.", Why: "wheel bolts", Source: "common practice, no source"},
		},
	}
}

// document makes a working document of rec as a person would have it.
func document(t testing.TB, rec *extract.Record) *workdoc.Document {
	t.Helper()
	data, err := render.Markdown(rec, nil)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := workdoc.Read(data)
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// filled is the trailer job with the spring bolts confirmed, one question answered,
// a reader's claim and a value from a general table, which confirms nothing.
func filled(t testing.TB) *workdoc.Document {
	doc := document(t, trailer())
	doc.Rows["torque-spring-bolts"] = workdoc.Row{Confirmed: "47 N·m", Source: "Axle maker's sheet, 3rd ed., page 12, this axle", Tightened: true, When: "M., 2026-05-02"}
	doc.Rows["torque-hub-nut"] = workdoc.Row{Confirmed: "25 N·m", Source: "general table for the size"}
	doc.Answers["ask-look-up-bearing-preload"] = workdoc.Answer{Text: "*just* felt, 5*6*7 is no emphasis, see [the sheet](https://sheet.example/a)", Source: "the axle maker's sheet, page 14"}
	doc.Claims = []workdoc.Claim{{Who: "a reader", When: "2026-05-03", Text: "90 N·m is too low", Status: "open"}}
	return doc
}

func view(t testing.TB, doc *workdoc.Document, opt page.Options) *page.Page {
	t.Helper()
	if opt.Today.IsZero() {
		opt.Today = day
	}
	return page.New(doc, opt)
}

// payloads are what hostile talk and hostile answers hold.
const payloads = `"><script>window.acted=1</script><img src="https://out.example/x.png" onerror="window.acted=2">` +
	`<svg onload="window.acted=3"><a href="javascript:window.acted=4">x</a> [y](javascript:window.acted=5) ![z](https://out.example/z.png) ` +
	"<style>@import 'https://out.example/s.css'</style> {{.}} ${window.acted=6} `c` | ~~s~~ \u202egnp.exe\u202c '''b''' [[File:Z.png]] {{t}} <nowiki> --> </script> </title> "

// hostile puts payloads into every text of a record but its codes.
func hostile(rec *extract.Record) *extract.Record {
	codes := map[string]bool{"Schema": true, "Unit": true, "Kind": true, "Before": true, "State": true, "ID": true, "LedgerID": true, "Phase": true, "Applied": true, "Scope": true, "Dimension": true, "Need": true, "Signal": true, "SHA256": true, "Format": true, "Locker": true, "Year": true}
	var walk func(v reflect.Value)
	walk = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.Pointer:
			if !v.IsNil() {
				walk(v.Elem())
			}
		case reflect.Slice:
			for i := range v.Len() {
				if v.Index(i).Kind() == reflect.String {
					v.Index(i).SetString(v.Index(i).String() + payloads)
				} else {
					walk(v.Index(i))
				}
			}
		case reflect.Struct:
			for i := range v.NumField() {
				f := v.Field(i)
				if f.Kind() != reflect.String {
					walk(f)
				} else if !codes[v.Type().Field(i).Name] && f.CanSet() {
					f.SetString(f.String() + " " + payloads + strings.Repeat("w", 400))
				}
			}
		}
	}
	walk(reflect.ValueOf(rec))
	rec.Job.VideoURL = ""
	return rec
}
