package transcript

import (
	"hash/maphash"
	"strings"
)

// Overlap is the same stretch of talk found in two clips.
type Overlap struct {
	A, B       int // clips, A before B
	AFrom, ATo int // words of the talk in A, half-open
	BFrom, BTo int // the same words in B
	AStart     float64
	BStart     float64
}

// A shingle of this many words is the shortest stretch looked for, and a found
// stretch must be at least minOverlap words long: short phrases do come twice.
const (
	shingle    = 8
	minOverlap = 16
)

// near tells whether a stretch goes on soon after the last one ended: some
// words between were heard otherwise the second time.
func near(from, to int) bool { return from >= to && from-to <= 30 }

// Overlaps finds stretches of 16 words or more that stand in two clips, case
// and punctuation apart, in the order of the later clip. Stretches parted by a
// few other words are one.
func Overlaps(t *Talk) []Overlap {
	if len(t.Clips) < 2 {
		return nil
	}
	seed := maphash.MakeSeed()
	var place []int // of the words that count
	var sum []uint64
	for i, w := range t.Words {
		if w.Is(Noise) {
			continue
		}
		if s := strings.ToLower(strings.Trim(t.Text[w.Lo:w.Hi], `.,;:!?"'()[]-–—…`)); s != "" {
			place = append(place, i)
			sum = append(sum, maphash.String(seed, s))
		}
	}
	const factor = 0x9E3779B97F4A7C15
	top := uint64(1)
	for range shingle - 1 {
		top *= factor
	}
	seen := map[uint64]int{} // shingle to where it first began
	var out []Overlap
	covered := 0 // shingles that begin before are part of the last overlap
	var roll uint64
	clip := func(k int) int { return int(t.Words[place[k]].Clip) }
	for end := range sum {
		if end >= shingle {
			roll -= sum[end-shingle] * top
		}
		roll = roll*factor + sum[end]
		k := end - shingle + 1
		if k < 0 || clip(k) != clip(end) {
			continue
		}
		a, ok := seen[roll]
		if !ok {
			seen[roll] = k
			continue
		}
		if clip(a) == clip(k) || k < covered {
			continue
		}
		n := 0
		for k+n < len(sum) && a+n < k && sum[a+n] == sum[k+n] && clip(a+n) == clip(a) && clip(k+n) == clip(k) {
			n++
		}
		if n < minOverlap {
			continue
		}
		covered = k + n
		if len(out) > 0 {
			o := &out[len(out)-1]
			if o.A == clip(a) && o.B == clip(k) && near(place[a], o.ATo) && near(place[k], o.BTo) {
				o.ATo, o.BTo = place[a+n-1]+1, place[k+n-1]+1
				continue
			}
		}
		first, again := t.Words[place[a]], t.Words[place[k]]
		out = append(out, Overlap{A: int(first.Clip), B: int(again.Clip),
			AFrom: place[a], ATo: place[a+n-1] + 1, BFrom: place[k], BTo: place[k+n-1] + 1,
			AStart: first.At, BStart: again.At})
	}
	return out
}
