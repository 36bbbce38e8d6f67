package transcript

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// ReadFile reads the transcript at path, or opt.Stdin where path is "-". The
// first subtitle track of a Matroska or MP4 file (told from its first bytes) is
// taken out with ffmpeg. Errors are those of Read and of the file system.
func ReadFile(ctx context.Context, path string, opt Options) (*Clip, error) {
	opt = opt.withDefaults()
	if path == "-" {
		in := opt.Stdin
		if in == nil {
			in = os.Stdin
		}
		const name = "standard input"
		data, err := readAll(name, in, 0, opt)
		if err != nil {
			return nil, err
		}
		if isMedia(data) {
			return nil, fmt.Errorf("%s: a video cannot be read from a pipe: save it and give the name of the file", name)
		}
		return Read(name, data, opt)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("read transcript: %w", err)
	}
	defer f.Close()
	size := int64(0)
	if st, err := f.Stat(); err == nil && st.IsDir() {
		return nil, fmt.Errorf("read transcript: %s is a folder: give the files in it", path)
	} else if err == nil {
		size = st.Size()
	}
	head := make([]byte, 16)
	n, err := io.ReadFull(f, head)
	if err != nil && !errors.Is(err, io.EOF) && !errors.Is(err, io.ErrUnexpectedEOF) {
		return nil, fmt.Errorf("read transcript: %w", err)
	}
	whole := io.MultiReader(bytes.NewReader(head[:n]), f)
	name := filepath.Base(path)
	if isMedia(head[:n]) {
		return readMedia(ctx, name, path, whole, opt)
	}
	data, err := readAll(name, whole, size, opt)
	if err != nil {
		return nil, err
	}
	return Read(name, data, opt)
}

// readAll reads to the end, which is probably after size bytes.
func readAll(name string, r io.Reader, size int64, opt Options) ([]byte, error) {
	var data bytes.Buffer
	data.Grow(int(min(max(size, 0), opt.MaxBytes)) + bytes.MinRead)
	if _, err := data.ReadFrom(io.LimitReader(r, opt.MaxBytes+1)); err != nil {
		return nil, fmt.Errorf("read transcript: %s: %w", name, err)
	}
	if int64(data.Len()) > opt.MaxBytes {
		return nil, &LimitError{File: name, What: "bytes", Limit: opt.MaxBytes}
	}
	return data.Bytes(), nil
}

// isMedia tells Matroska (EBML) and MP4 (ISO base media) by their first bytes.
func isMedia(head []byte) bool {
	return bytes.HasPrefix(head, []byte("\x1A\x45\xDF\xA3")) || len(head) >= 8 && string(head[4:8]) == "ftyp"
}

// readMedia has ffmpeg write the first subtitle track as WebVTT. The name goes
// to it as file:…, so that no name can be taken for an option or an address.
func readMedia(ctx context.Context, name, path string, whole io.Reader, opt Options) (*Clip, error) {
	program, err := exec.LookPath(opt.FFmpeg)
	if err != nil {
		return nil, fmt.Errorf("%s: reading the subtitles of a video needs ffmpeg, which was not found: install it, or give the subtitles as a file of their own: %w", name, err)
	}
	ctx, cancel := context.WithTimeout(ctx, opt.Timeout)
	defer cancel()
	cmd := exec.CommandContext(ctx, program, "-nostdin", "-hide_banner", "-loglevel", "error",
		"-protocol_whitelist", "file,pipe", "-i", "file:"+path, "-map", "0:s:0", "-f", "webvtt", "pipe:1")
	out := &limited{max: opt.MaxBytes}
	var talk limited
	talk.max = 64 << 10
	cmd.WaitDelay = time.Second
	cmd.Stdout, cmd.Stderr = out, &talk
	err = cmd.Run()
	switch {
	case errors.Is(ctx.Err(), context.DeadlineExceeded):
		return nil, fmt.Errorf("%s: ffmpeg did not finish within %v: give the subtitles as a file of their own", name, opt.Timeout)
	case ctx.Err() != nil:
		return nil, fmt.Errorf("%s: ffmpeg was stopped: %w", name, ctx.Err())
	case out.over:
		return nil, &LimitError{File: name, What: "bytes", Limit: opt.MaxBytes}
	case err != nil && strings.Contains(talk.buf.String(), "matches no streams"):
		return nil, noTimedText(name, "the video has no subtitle track", saveWithTimes)
	case err != nil:
		return nil, fmt.Errorf("%s: ffmpeg could not read the subtitles (%w): %s", name, err, excerpt(talk.buf.String()))
	}
	sum := sha256.New()
	if _, err := io.Copy(sum, whole); err != nil {
		return nil, fmt.Errorf("read video: %w", err)
	}
	clip, err := Read(name, out.buf.Bytes(), opt)
	if err != nil {
		return nil, err
	}
	clip.SHA256 = hex.EncodeToString(sum.Sum(nil))
	return clip, nil
}

// limited keeps what is written to it up to max bytes, and then fails.
type limited struct {
	buf  bytes.Buffer
	max  int64
	over bool
}

func (l *limited) Write(b []byte) (int, error) {
	if int64(l.buf.Len()+len(b)) > l.max {
		l.over = true
		return 0, ErrLimit
	}
	return l.buf.Write(b)
}
