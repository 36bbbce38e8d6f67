package page

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	_ "image/png" // photographs come as PNG too
	"io"
	"os"
	"path/filepath"
)

const (
	photoBytes  = 64 << 20
	photoPixels = 120e6
	photoWide   = 1280 // px of the longer side
)

// Photo makes a still of the person's own photograph, JPEG or PNG. It is drawn
// anew, the right way up and sized for a phone, so that nothing the camera wrote
// into the file, the place among it, is passed on.
func Photo(path string) (Still, error) {
	f, err := os.Open(path)
	if err != nil {
		return Still{}, fmt.Errorf("open the photograph: %w", err)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, photoBytes+1))
	if err != nil {
		return Still{}, fmt.Errorf("read the photograph: %w", err)
	}
	if len(data) > photoBytes {
		return Still{}, fmt.Errorf("%s: the photograph is larger than %d MiB", path, photoBytes>>20)
	}
	conf, _, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return Still{}, fmt.Errorf("%s: read the photograph (JPEG or PNG): %w", path, err)
	}
	if float64(conf.Width)*float64(conf.Height) > photoPixels {
		return Still{}, fmt.Errorf("%s: %d by %d points are too many", path, conf.Width, conf.Height)
	}
	img, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return Still{}, fmt.Errorf("%s: read the photograph: %w", path, err)
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, redrawn(img, orientation(data)), &jpeg.Options{Quality: 82}); err != nil {
		return Still{}, err
	}
	name := filepath.Base(path)
	return Still{Why: name, Alt: "Photograph " + name, Image: dataAddress("image/jpeg", out.Bytes())}, nil
}

// redrawn shrinks a picture by the mean of the points that fall together, and
// turns it as EXIF orientation turn (1 to 8) asks.
func redrawn(img image.Image, turn int) image.Image {
	b := img.Bounds()
	w, h := b.Dx(), b.Dy()
	step := max(1, float64(max(w, h))/photoWide)
	nw, nh := max(1, int(float64(w)/step)), max(1, int(float64(h)/step))
	outW, outH := nw, nh
	if turn >= 5 {
		outW, outH = nh, nw
	}
	out := image.NewRGBA(image.Rect(0, 0, outW, outH))
	for y := range nh {
		y0, y1 := y*h/nh, max(y*h/nh+1, (y+1)*h/nh)
		for x := range nw {
			x0, x1 := x*w/nw, max(x*w/nw+1, (x+1)*w/nw)
			var r, g, bl, n uint64
			for sy := y0; sy < y1; sy++ {
				for sx := x0; sx < x1; sx++ {
					cr, cg, cb, _ := img.At(b.Min.X+sx, b.Min.Y+sy).RGBA()
					r, g, bl, n = r+uint64(cr), g+uint64(cg), bl+uint64(cb), n+1
				}
			}
			tx, ty := x, y
			switch turn {
			case 2:
				tx = nw - 1 - x
			case 3:
				tx, ty = nw-1-x, nh-1-y
			case 4:
				ty = nh - 1 - y
			case 5:
				tx, ty = y, x
			case 6:
				tx, ty = nh-1-y, x
			case 7:
				tx, ty = nh-1-y, nw-1-x
			case 8:
				tx, ty = y, nw-1-x
			}
			out.SetRGBA(tx, ty, color.RGBA{uint8(r / n >> 8), uint8(g / n >> 8), uint8(bl / n >> 8), 255})
		}
	}
	return out
}

var errNoExif = errors.New("no orientation")

// orientation reads tag 0x0112 of the first directory of a JPEG's EXIF part
// (CIPA DC-008); 1, upright, where there is none.
func orientation(data []byte) int {
	n, err := exifOrientation(data)
	if err != nil || n < 1 || n > 8 {
		return 1
	}
	return n
}

func exifOrientation(data []byte) (int, error) {
	if len(data) < 4 || data[0] != 0xff || data[1] != 0xd8 {
		return 0, errNoExif
	}
	for p := 2; p+4 <= len(data) && data[p] == 0xff && data[p+1] != 0xda; {
		size := int(binary.BigEndian.Uint16(data[p+2:]))
		if size < 2 || p+2+size > len(data) {
			return 0, errNoExif
		}
		part := data[p+4 : p+2+size]
		if data[p+1] == 0xe1 && bytes.HasPrefix(part, []byte("Exif\x00\x00")) {
			return tiffOrientation(part[6:])
		}
		p += 2 + size
	}
	return 0, errNoExif
}

func tiffOrientation(t []byte) (int, error) {
	if len(t) < 8 {
		return 0, errNoExif
	}
	var order binary.ByteOrder = binary.BigEndian
	if t[0] == 'I' {
		order = binary.LittleEndian
	}
	at := int64(order.Uint32(t[4:]))
	if at+2 > int64(len(t)) {
		return 0, errNoExif
	}
	for i := range int64(order.Uint16(t[at:])) {
		e := at + 2 + 12*i
		if e+12 > int64(len(t)) {
			break
		}
		if order.Uint16(t[e:]) == 0x0112 {
			return int(order.Uint16(t[e+8:])), nil
		}
	}
	return 0, errNoExif
}
