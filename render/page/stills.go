package page

import (
	"bytes"
	"context"
	"encoding/base64"
	"errors"
	"fmt"
	"html/template"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"wrenchword/extract"
	"wrenchword/render"
	"wrenchword/render/workdoc"
)

// Still is one picture by time: a frame of the recording or the person's own.
type Still struct {
	At    string // as a clock shows it, "" for the person's own photograph
	Alt   string
	Why   string
	Image template.URL // a data: address
}

// ErrNoFfmpeg says that frames cannot be taken on this machine.
var ErrNoFfmpeg = errors.New("ffmpeg is not installed, so no frames were taken")

const (
	stillsMost = 24  // a strip, not an album
	stillsGap  = 8   // seconds between two frames
	stillWide  = 720 // px, for a phone
	stillWait  = 30 * time.Second
)

// moment is where a frame helps.
type stillMoment struct {
	clip int
	at   float64
	why  string
}

// moments picks where a frame helps most: just before something comes off, and
// where it was said which way round something goes. Of too many, every so many
// is taken, so that the whole recording is covered.
func moments(rec *extract.Record) []stillMoment {
	var out []stillMoment
	for _, e := range rec.Ledger {
		name := orElse(e.Item, "something not named")
		off := false
		for _, ev := range e.Events {
			if ev.Act == "remove" && !off {
				off = true
				out = append(out, stillMoment{ev.Clip, max(0, ev.At-1), "just before the " + name + " comes off"})
			}
		}
		if e.Orientation != "" {
			last := e.Place
			if n := len(e.Events); n > 0 {
				last = e.Events[n-1].Place
			}
			out = append(out, stillMoment{last.Clip, last.At, "which way round: " + name + ", " + e.Orientation})
		}
	}
	slices.SortStableFunc(out, func(a, b stillMoment) int {
		if a.clip != b.clip {
			return a.clip - b.clip
		}
		switch {
		case a.at < b.at:
			return -1
		case a.at > b.at:
			return 1
		}
		return 0
	})
	var apart []stillMoment
	for _, m := range out {
		if n := len(apart); n > 0 && apart[n-1].clip == m.clip && m.at-apart[n-1].at < stillsGap {
			apart[n-1].why += "; " + m.why
			continue
		}
		apart = append(apart, m)
	}
	if len(apart) <= stillsMost {
		return apart
	}
	out = out[:0]
	for i := range stillsMost {
		out = append(out, apart[i*len(apart)/stillsMost])
	}
	return out
}

// Frames takes stills from the videos, one a clip in the clips' order, through
// ffmpeg: no wider than a phone needs and without any metadata. What could not
// be taken is in the error, beside the stills that could; ErrNoFfmpeg is among
// its causes where the program is missing.
func Frames(ctx context.Context, doc *workdoc.Document, videos []string, progress func(done, total int)) ([]Still, error) {
	program, err := exec.LookPath("ffmpeg")
	if err != nil {
		return nil, ErrNoFfmpeg
	}
	var list []stillMoment
	for _, m := range moments(doc.Record) {
		if m.clip < len(videos) {
			list = append(list, m)
		}
	}
	stills, faults := make([]Still, len(list)), make([]error, len(list))
	var wg sync.WaitGroup
	var mu sync.Mutex
	done := 0
	turn := make(chan struct{}, 2)
	for i, m := range list {
		wg.Go(func() {
			turn <- struct{}{}
			defer func() { <-turn }()
			clock := render.Clock(m.at)
			if data, err := frame(ctx, program, videos[m.clip], m.at); err != nil {
				faults[i] = fmt.Errorf("frame at %s: %w", clock, err)
			} else {
				stills[i] = Still{At: clock, Why: m.why, Alt: "Frame of the recording at " + clock + ", " + m.why, Image: dataAddress("image/jpeg", data)}
			}
			mu.Lock()
			defer mu.Unlock()
			if done++; progress != nil {
				progress(done, len(list))
			}
		})
	}
	wg.Wait()
	return slices.DeleteFunc(stills, func(s Still) bool { return s.Image == "" }), errors.Join(faults...)
}

func dataAddress(kind string, data []byte) template.URL {
	return template.URL("data:" + kind + ";base64," + base64.StdEncoding.EncodeToString(data))
}

func frame(ctx context.Context, program, video string, at float64) ([]byte, error) {
	ctx, cancel := context.WithTimeout(ctx, stillWait)
	defer cancel()
	full, err := filepath.Abs(video)
	if err != nil {
		return nil, err
	}
	// A name is given as a file's, and nothing but files may be opened: a
	// playlist in the recording's place asks for nothing.
	cmd := exec.CommandContext(ctx, program, "-nostdin", "-v", "error", "-protocol_whitelist", "file,pipe",
		"-ss", fmt.Sprintf("%.2f", at), "-i", "file:"+full, "-frames:v", "1", "-an", "-sn",
		"-vf", fmt.Sprintf("scale='min(%d,iw)':-2", stillWide), "-map_metadata", "-1",
		"-c:v", "mjpeg", "-q:v", "5", "-f", "image2pipe", "pipe:1")
	var out, talk bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &talk
	if err := cmd.Run(); err != nil {
		first, _, _ := strings.Cut(strings.TrimSpace(talk.String()), "\n")
		return nil, fmt.Errorf("ffmpeg: %w: %s", err, first)
	}
	// Past the end it ends well and writes nothing.
	if out.Len() == 0 {
		return nil, errors.New("the recording has no picture there")
	}
	return out.Bytes(), nil
}
