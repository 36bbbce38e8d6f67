package workdoc

import (
	"fmt"
	"reflect"
	"strings"

	"wrenchword/extract"
)

// Found is one item of a record, by its reference.
type Found struct {
	Ref   string
	Kind  string // the record's field: "tools", "steps" …
	ID    string // the record's own, "" where the kind has none
	Name  string // in a few words
	Place extract.Place
	Item  any // the item itself
}

// Items lists every item of a record that has a reference, in the record's order.
func Items(rec *extract.Record) []Found {
	r := RefsOf(rec)
	var out []Found
	add := func(kind, ref, id, name string, p extract.Place, item any) {
		out = append(out, Found{Ref: ref, Kind: kind, ID: id, Name: name, Place: p, Item: item})
	}
	for i, x := range rec.Tools {
		add("tools", r.Tools[i], "", strings.TrimSpace(x.Name+" "+x.Size), x.Place, x)
	}
	for i, x := range rec.Parts {
		add("parts", r.Parts[i], "", x.Name, x.Place, x)
	}
	for i, x := range rec.Consumables {
		add("consumables", r.Consumables[i], "", x.Name, x.Place, x)
	}
	for i, x := range rec.Sizes {
		add("sizes", r.Sizes[i], "", x.Of+" "+strings.Join(x.Candidates, " or "), x.Place, x)
	}
	for i, x := range rec.Torques {
		add("torques", r.Torques[i], x.ID, x.Fastener, x.Place, x)
	}
	for i, x := range rec.Ledger {
		add("ledger", r.Ledger[i], x.ID, x.Item, x.Place, x)
	}
	for i, x := range rec.Cautions {
		add("cautions", r.Cautions[i], "", x.Text, x.Place, x)
	}
	for i, x := range rec.Steps {
		add("steps", r.Steps[i], "", x.Text, x.Place, x)
	}
	for i, x := range rec.Open {
		add("open", r.Open[i], x.ID, x.Question, x.Place, x)
	}
	for i, x := range rec.Doubts {
		add("doubts", r.Doubts[i], "", x.Quote, x.Place, x)
	}
	for i, x := range rec.Facts {
		add("facts", r.Facts[i], "", x.Name, x.Place, x)
	}
	return out
}

// Find gives the item that ref names: a reference, with or without its "@", a
// round's row, or an ID of the record. near lists what ref may have meant where
// there is none.
func Find(rec *extract.Record, ref string) (found Found, near []string, ok bool) {
	ref = strings.TrimPrefix(strings.TrimPrefix(ref, "@"), "round-")
	items := Items(rec)
	for _, f := range items {
		if f.Ref == ref || f.ID != "" && f.ID == ref {
			return f, nil, true
		}
	}
	for _, f := range items {
		if strings.Contains(f.Ref, ref) || shareWord(strings.ReplaceAll(ref, "-", " "), strings.ReplaceAll(f.Ref, "-", " ")) {
			near = append(near, f.Ref)
		}
	}
	return Found{}, near, false
}

// Fields lists what an item says beyond its place, as the record's field names
// and plain values; what is empty is left out.
func (f Found) Fields() [][2]string {
	var out [][2]string
	v := reflect.ValueOf(f.Item)
	for i := 0; i < v.NumField(); i++ {
		sf := v.Type().Field(i)
		name, _, _ := strings.Cut(sf.Tag.Get("json"), ",")
		if sf.Anonymous || name == "" || v.Field(i).IsZero() || name == "events" || name == "findings" {
			continue
		}
		out = append(out, [2]string{name, show(v.Field(i))})
	}
	return out
}

func show(v reflect.Value) string {
	switch v.Kind() {
	case reflect.Pointer:
		return show(v.Elem())
	case reflect.Slice:
		var out []string
		for i := 0; i < v.Len(); i++ {
			out = append(out, show(v.Index(i)))
		}
		return strings.Join(out, ", ")
	case reflect.Struct:
		var out []string
		for i := 0; i < v.NumField(); i++ {
			name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			if name != "" && !v.Field(i).IsZero() {
				out = append(out, name+" "+show(v.Field(i)))
			}
		}
		return strings.Join(out, ", ")
	}
	return fmt.Sprint(v.Interface())
}
