package normalize

import (
	"strconv"
	"strings"
	"testing"
)

// talk is what the benchmark reads: invented shop talk, one value in some thirty
// words, about as dense as an annotated recording.
const talk = `okay so the next thing we're gonna do is get the housing back on there and make sure that the gasket sits right
because if it doesn't you're gonna have a leak and nobody wants that so slide it over the two dowels like so and then start all four
bolts by hand before you put a wrench anywhere near it so these are M8 by 30 and they take a six millimeter hex key and I'm going to
bring them up in a cross pattern first to about fifteen newton metres and then to twenty two newton metres which the book says is sixteen
foot pounds or so and once that is done we can wipe off what came out and leave it alone while we look at the other side because that is
where the trouble was last time I remember that the little spring flew off and we never found it again so keep your hand on it right here
and let it come up slowly that is all there is to it now the cable goes on there and you want about three millimetres of play at the lever `

func benchmarkTalk(b *testing.B, n int) {
	text := strings.Repeat(talk, n)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if got := len(Quantities(text)); got < 5*n {
			b.Fatalf("found %d", got)
		}
	}
}

func BenchmarkQuantities(b *testing.B) {
	for _, n := range []int{1, 10, 100} {
		b.Run(strconv.Itoa(n)+"x", func(b *testing.B) { benchmarkTalk(b, n) })
	}
}

func BenchmarkNumbers(b *testing.B) {
	text := strings.Repeat(talk, 10)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		Numbers(text)
	}
}

// BenchmarkHostile reads a text of nothing but numbers and corrections.
func BenchmarkHostile(b *testing.B) {
	for _, n := range []int{1000, 10000} {
		text := strings.Repeat("twenty no sorry thirty to 40 or 50, ", n)
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			for b.Loop() {
				Quantities(text)
			}
		})
	}
}
