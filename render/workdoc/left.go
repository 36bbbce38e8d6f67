package workdoc

import (
	"strings"

	"wrenchword/extract"
)

// Left says in the trade's words how an entry of the ledger was left, with the
// doubt where that was not said in so many words.
func Left(e extract.Entry) string {
	s := map[string]string{
		extract.Loosened: "slackened", extract.Removed: "off", extract.Refitted: "back on, tightness not said",
		extract.HandTight: "hand-tight", extract.Tightened: "tightened, no value said",
		extract.Torqued: "tightened to a value", extract.Discarded: "thrown away",
	}[e.State]
	if e.State == extract.Refitted && e.Kind == "part" {
		s = "back on"
	}
	if e.State == extract.Torqued && !e.ValueSaid {
		s = "tightened to a value that was not said"
	}
	if e.Inferred != "" {
		s += ", not said in so many words"
	}
	if e.OffCamera {
		s += ", off camera"
	}
	return s
}

// Called names an entry, with the doubt where the talk has only a bare word for it.
func Called(e extract.Entry) string {
	if e.Unnamed && e.Item != "" {
		return e.Item + " (of what was not said)"
	}
	return e.Item
}

// More is what else was said of an entry, in plain words, in one line.
func More(e extract.Entry) string {
	var out []string
	add := func(label, s string) {
		if s != "" {
			out = append(out, label+s)
		}
	}
	add("doubt: ", e.Inferred)
	if e.NamedAfter != "" {
		add("name: ", "taken from the "+e.NamedAfter+" that the talk was about")
	}
	add("washers: ", e.Washers)
	add("way round: ", e.Orientation)
	add("lock: ", strings.TrimSpace(e.Lock.Method+" "+e.Lock.State))
	if e.Locker == "yes" || e.Locker == "no" {
		add("thread locker: ", e.Locker)
	}
	add("reuse: ", e.Reuse)
	add("put: ", e.StoredAt)
	add("replaced by: ", e.ReplacedBy)
	add("waits for: ", e.WaitsOn)
	return strings.Join(out, "; ")
}

// LastHeard is where an entry of the ledger was last heard of.
func LastHeard(e extract.Entry) extract.Place {
	if n := len(e.Events); n > 0 {
		return e.Events[n-1].Place
	}
	last := e.Place
	last.At = e.LastAt
	return last
}
