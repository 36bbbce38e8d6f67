package transcript

import (
	"fmt"
	"strings"
	"testing"
)

// One small file of each shape, from memory of what recognisers write; the
// shapes of the outside sets are checked there.
func TestRecogniserShapes(t *testing.T) {
	for name, c := range map[string]struct{ in, want string }{
		"segments":            {`{"text":" a b","segments":[{"start":1,"end":2.5,"text":" a b"}]}`, "1-2.5 a b"},
		"segments, words":     {`{"segments":[{"start":1,"end":3,"text":" Set it.","words":[{"word":" Set","start":1.1,"end":1.5},{"word":" it.","start":2,"end":2.4}]}]}`, "1-3 Set@1.1 it.@2"},
		"words in two pieces": {`{"segments":[{"start":1,"end":3,"text":"five foot-pounds","words":[{"word":" five","start":1},{"word":" foot","start":2},{"word":"-pounds","start":2.5}]}]}`, "1-3 five@1 foot-pounds@2"},
		"word without a time": {`{"segments":[{"start":1,"end":3,"text":"set 35 now","words":[{"word":"set","start":1,"end":2},{"word":"35"},{"word":"now","start":2.5,"end":3}]}]}`, "1-3 set@1 35 now@2.5"},
		"words beside":        {`{"segments":[{"start":1,"end":2,"text":"a b"},{"start":2,"end":3,"text":"c"}],"words":[{"word":"a","start":1,"end":1.4},{"word":"b","start":1.5,"end":2},{"word":"c","start":2,"end":3}]}`, "1-2 a@1 b@1.5|2-3 c@2"},
		"chunks":              {`{"text":"a","chunks":[{"timestamp":[0,1.5],"text":" a"},{"timestamp":[1.5,null],"text":" b"}]}`, "0-1.5 a|1.5-0 b"},
		"offsets":             {`{"transcription":[{"timestamps":{},"offsets":{"from":1500,"to":2000},"text":" a"}]}`, "1.5-2 a"},
		"running caption": {`{"events":[{"tStartMs":0,"dDurationMs":9000,"id":1},{"tStartMs":1000,"dDurationMs":4000,"segs":[{"utf8":"take"},{"utf8":" it","tOffsetMs":500}]},
			{"tStartMs":2000,"aAppend":1,"segs":[{"utf8":"\n"}]},{"tStartMs":2500,"dDurationMs":3000,"segs":[{"utf8":"off"},{"utf8":" now","tOffsetMs":700}]}]}`, "1-2.5 take@1 it@1.5|2.5-5.5 off@2.5 now@3.2"},
		"channels":         {`{"results":{"channels":[{"alternatives":[{"words":[{"word":"hi","punctuated_word":"Hi.","start":1,"end":2},{"word":"ho","punctuated_word":"Ho","start":2,"end":3}]}]}]}}`, "1-2 Hi.@1|2-3 Ho@2"},
		"items":            {`{"results":{"items":[{"type":"pronunciation","start_time":"1.0","end_time":"1.5","alternatives":[{"content":"Hi"}]},{"type":"punctuation","alternatives":[{"content":","}]},{"type":"pronunciation","start_time":"1.6","end_time":"2.0","alternatives":[{"content":"you"}]}]}}`, "1-2 Hi,@1 you@1.6"},
		"seconds with s":   {`{"results":[{"alternatives":[{"transcript":"a b","words":[{"startTime":"1.500s","endTime":"2s","word":"a"},{"startTime":"2s","endTime":"3s","word":"b"}]}]}]}`, "1.5-3 a@1.5 b@2"},
		"whole ms":         {`{"words":[{"text":"So,","start":100,"end":340},{"text":"off","start":350,"end":700}]}`, "0.1-0.7 So,@0.1 off@0.35"},
		"whole s":          {`{"words":[{"word":"a","start":1,"end":2},{"word":"b","start":2,"end":3}]}`, "1-3 a@1 b@2"},
		"ticks":            {`{"recognizedPhrases":[{"offsetInTicks":10000000,"durationInTicks":5000000,"nBest":[{"display":"Set it.","words":[{"word":"set","offsetInTicks":10000000,"durationInTicks":1}]}]}]}`, "1-1.5 Set it."},
		"triples":          {`{"results":[{"alternatives":[{"transcript":"set it ","timestamps":[["set",1.0,1.2],["it",1.3,1.5]]}]}]}`, "1-1.5 set@1 it@1.3"},
		"elements":         {`{"monologues":[{"speaker":0,"elements":[{"type":"text","value":"Hi","ts":1,"end_ts":1.5},{"type":"punct","value":" "},{"type":"text","value":"you","ts":1.6,"end_ts":2},{"type":"punct","value":"."}]}]}`, "1-2 Hi@1 you.@1.6"},
		"body":             {`{"body":[{"from":1.5,"to":2.5,"content":"a"}]}`, "1.5-2.5 a"},
		"bare list":        {`[{"start":"0:01","end":"0:02","text":"a"},{"start":"00:00:02,500","duration":1,"text":"b"}]`, "1-2 a|2.5-3.5 b"},
		"bare words":       {`[{"word":"a","start":1,"end":2},{"word":"b","start":5,"end":6}]`, "1-2 a@1|5-6 b@5"},
		"results in lines": {"{\"result\":[{\"word\":\"a\",\"start\":1,\"end\":2}],\"text\":\"a\"}\n{\"result\":[{\"word\":\"b\",\"start\":3,\"end\":4}],\"text\":\"b\"}\n{\"text\":\"\"}", "1-2 a@1|3-4 b@3"},
	} {
		clip, err := Read(name, []byte(c.in), Options{})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		var got []string
		for _, cue := range clip.Cues {
			s, pos := fmt.Sprintf("%v-%v ", cue.Start, cue.End), 0
			for _, w := range cue.Words {
				s += cue.Text[pos:w.Hi] + fmt.Sprint("@", w.At)
				pos = int(w.Hi)
			}
			got = append(got, s+cue.Text[pos:])
		}
		if g := strings.Join(got, "|"); g != c.want || clip.Format != "json" {
			t.Errorf("%s (%s): %s\nwant %s", name, clip.Format, g, c.want)
		}
	}
}
