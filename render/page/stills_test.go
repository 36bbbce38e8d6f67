package page_test

import (
	"bytes"
	"context"
	"encoding/base64"
	"errors"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wrenchword/render/page"
)

func decoded(t *testing.T, s page.Still) []byte {
	t.Helper()
	data, err := base64.StdEncoding.DecodeString(strings.TrimPrefix(string(s.Image), "data:image/jpeg;base64,"))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func TestFrames(t *testing.T) {
	doc := filled(t)
	doc.Record.Ledger[0].Events[0].At = 4 // wheel bolts come off
	doc.Record.Ledger[3].Orientation = "rim outwards"
	doc.Record.Ledger[3].At = 500 // long after the end of this recording
	clip := filepath.Join(t.TempDir(), "clip.webm")
	makeClip(t, clip)
	calls := 0
	stills, err := page.Frames(context.Background(), doc, []string{clip}, func(done, total int) {
		if calls++; done != calls || total != 2 {
			t.Errorf("progress says %d of %d at call %d", done, total, calls)
		}
	})
	if err == nil || !strings.Contains(err.Error(), "8:20") {
		t.Errorf("a moment past the end gave %v", err)
	}
	if len(stills) != 1 || stills[0].At != "0:03" || !strings.Contains(stills[0].Alt, "wheel bolts") {
		t.Fatalf("stills: %+v", stills)
	}
	conf, kind, err := image.DecodeConfig(bytes.NewReader(decoded(t, stills[0])))
	if err != nil || kind != "jpeg" || conf.Width != 320 {
		t.Errorf("the frame is %s, %d wide, %v", kind, conf.Width, err)
	}
	out, err := view(t, doc, page.Options{Stills: stills}).HTML()
	if err != nil || !strings.Contains(string(out), `<img src="data:image/jpeg;base64,`) {
		t.Error("the page lacks the still", err)
	}
	t.Setenv("PATH", t.TempDir())
	if _, err := page.Frames(context.Background(), doc, []string{clip}, nil); !errors.Is(err, page.ErrNoFfmpeg) {
		t.Errorf("without ffmpeg: %v", err)
	}
}

// TestPhoto: a photograph loses what the camera wrote and is turned upright.
// Layout of the EXIF part by CIPA DC-008 (tag 0x0112, type SHORT), written from memory.
func TestPhoto(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 2000, 1000))
	for y := range 1000 {
		for x := range 2000 {
			if x < 1000 {
				img.Set(x, y, color.RGBA{255, 0, 0, 255})
			} else {
				img.Set(x, y, color.RGBA{0, 0, 255, 255})
			}
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, nil); err != nil {
		t.Fatal(err)
	}
	exif := "Exif\x00\x00MM\x00\x2a\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01\x00\x06\x00\x00\x00\x00\x00\x00GPS 51.5N 0.1W"
	data := append([]byte{0xff, 0xd8, 0xff, 0xe1, 0, byte(len(exif) + 2)}, exif...)
	data = append(data, b.Bytes()[2:]...)
	path := filepath.Join(t.TempDir(), "mine.jpg")
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	s, err := page.Photo(path)
	if err != nil {
		t.Fatal(err)
	}
	out := decoded(t, s)
	if bytes.Contains(out, []byte("GPS")) || bytes.Contains(out, []byte("Exif")) {
		t.Error("what the camera wrote is still there")
	}
	got, err := jpeg.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	// Orientation 6: the first row is the right-hand side, so left becomes top.
	if got.Bounds().Dx() != 640 || got.Bounds().Dy() != 1280 {
		t.Errorf("it is %v", got.Bounds())
	}
	if r, _, bl, _ := got.At(320, 100).RGBA(); r < bl {
		t.Error("it is not turned upright")
	}
	if err := os.WriteFile(path, []byte("no picture"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := page.Photo(path); err == nil || !strings.Contains(err.Error(), "mine.jpg") {
		t.Errorf("no picture gave %v", err)
	}
}
