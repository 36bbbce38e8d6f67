package transcript

import (
	"fmt"
	"testing"
)

// The form is told from the content, whatever the name.
func TestDetect(t *testing.T) {
	for in, want := range map[string]string{
		"WEBVTT": "webvtt",
		"WEBVTT - title\n\n00:01.000 --> 00:02.000\na": "webvtt",
		"WEBVTTX\n\n00:01.000 --> 00:02.000\na":        "subrip",
		"1\n00:00:01,000 --> 00:00:02,000\na":          "subrip",
		"0:00:01.000,0:00:02.000\na":                   "sbv",
		"\n <?xml version='1.0'?><!-- x --><tt/>":      "ttml",
		"<t:tt xmlns:t='http://www.w3.org/ns/ttml'>":   "ttml",
		"{\"a\": 1}":                  "json",
		"[{}]":                        "json",
		"[0:01] a":                    "text",
		"[00:01.000 --> 00:02.000] a": "text",
		"[00:01.000 --> 00:02.000] a\n[00:02.000 --> 00:03.000] b\n": "text",
		"0:01 a --> b": "text",
		"just words":   "",
		"<html>":       "",
		"":             "",
	} {
		got := ""
		if f := detect(in); f != nil {
			got = f.name
		}
		if got != want {
			t.Errorf("%q: %s, want %s", in, got, want)
		}
	}
}

// Times of words inside a cue.
func TestWordTimes(t *testing.T) {
	vtt := func(s string) string { return "WEBVTT\n\n00:01.000 --> 00:05.000\n" + s }
	ttml := func(s string) string { return "<tt><body><p begin='1s' end='5s'>" + s + "</p></body></tt>" }
	for name, c := range map[string]struct{ in, want string }{
		"tags":             {vtt("so<00:02.000><c> it</c><00:03.000><c> goes</c>"), "so@1-2 it@2-3 goes@3-5"},
		"second line":      {vtt("above\nso<00:02.000> it"), "so@1-2 it@2-5"},
		"two tagged lines": {vtt("a<00:02.000> b\nc<00:03.000> d"), "a@1-2 b@2-3 d@3-5"},
		"first word":       {vtt("<00:02.000>so it<00:03.000> goes"), "so@2-3 goes@3-5"},
		"inside a word":    {vtt("so<00:02.000>me thing"), "some@1-5"},
		"running back":     {vtt("a<00:03.000> b<00:02.000> c<00:04.000> d"), "a@1-3 b@3-4 d@4-5"},
		"outside the cue":  {vtt("a<00:09.000> b"), ""},
		"no times":         {vtt("a <b>b</b>"), ""},
		"spans":            {ttml("<span begin='0s'>so</span> <span begin='1s'>it</span> <span begin='2s'>goes on</span>"), "so@1-2 it@2-3 goes@3-5"},
		"spans in seq":     {"<tt><body><p begin='1s' end='5s' timeContainer='seq'><span dur='1s' begin='0s'>so</span> <span begin='0.5s' dur='1s'>it</span></p></body></tt>", "so@1-2.5 it@2.5-5"},
		"span in a word":   {ttml("so<span begin='1s'>me</span>"), ""},
	} {
		clip, err := Read(name, []byte(c.in), Options{})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		got := ""
		for _, w := range clip.Cues[0].Words {
			if got != "" {
				got += " "
			}
			got += fmt.Sprintf("%s@%v-%v", clip.Cues[0].Text[w.Lo:w.Hi], w.At, w.End)
		}
		if got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}
