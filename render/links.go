package render

import (
	"fmt"
	"net/url"
	"strconv"
	"strings"

	"wrenchword/extract"
)

// Clock writes seconds as m:ss, or h:mm:ss from an hour on.
func Clock(seconds float64) string {
	if seconds < 0 || seconds != seconds || seconds > 1e9 {
		seconds = 0
	}
	s := int(seconds)
	if s >= 3600 {
		return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
	}
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

// CheckVideoURL says whether address may be linked to: http, https, file, or a
// relative path. {t} and {clip} in it stand for the second and the clip's number.
func CheckVideoURL(address string) error {
	u, err := url.Parse(strings.NewReplacer("{t}", "0", "{clip}", "1").Replace(address))
	if err != nil {
		return fmt.Errorf("read the video address: %w", err)
	}
	switch strings.ToLower(u.Scheme) {
	case "", "http", "https", "file":
		return nil
	}
	return fmt.Errorf("video address %q: give an http, https or file address, or a file name", address)
}

// VideoLink is the address of one second of one clip (from 0), or "" where no
// address is known or it must not be linked to. Without {t} in the address the
// second is added as a media fragment (W3C Media Fragments URI 1.0).
func VideoLink(address string, clip int, at float64) string {
	if address == "" || CheckVideoURL(address) != nil {
		return ""
	}
	// One address without {clip} is the address of the first clip only.
	if clip > 0 && !strings.Contains(address, "{clip}") {
		return ""
	}
	second := strconv.Itoa(max(0, int(at)))
	if !strings.Contains(address, "{t}") {
		address += "#t={t}"
	}
	return strings.NewReplacer("{t}", second, "{clip}", strconv.Itoa(clip+1)).Replace(address)
}

// timecode writes where p was heard, as a link where the recording's address is known.
func timecode(rec *extract.Record, p extract.Place) string {
	return timecodeAt(rec, p.Clip, p.At, p.LinkAt(), p.AtExact)
}

// timecodeAt writes one time; its link goes to the second link.
func timecodeAt(rec *extract.Record, clip int, at, link float64, exact bool) string {
	code := Clock(at)
	if !exact {
		code = "≈" + code
	}
	if len(rec.Source) > 1 {
		code = fmt.Sprintf("clip %d, %s", clip+1, code)
	}
	if address := VideoLink(rec.Job.VideoURL, clip, link); address != "" {
		return "[" + code + "](<" + linkMarks.Replace(address) + ">)"
	}
	return code
}

// linkMarks keeps a link inside its angle brackets, its cell and its line.
var linkMarks = strings.NewReplacer("<", "%3C", ">", "%3E", `\`, "%5C", "|", "%7C", "\n", "", "\r", "", "&", "&amp;")
