package extract

import (
	_ "embed"
	"encoding/binary"
	"math/bits"
)

//go:embed stops.bin
var stopWeights string

// stopTable begins with the pairs of tags between which next to nothing ever ends, 32 bits
// for each first one. Then come the weights by their keys: 4 bytes an entry, its place and
// the high half tell the key, then come those of a comma and of a stop, in sixteenths, signed.
type stopTable string

// tagPairs is how many bytes the pairs take.
const tagPairs = 32 * 4

// never tells whether next to nothing ever ends between words with these tags.
func (t stopTable) never(before, after uint8) bool {
	at := int(before)*4 + int(after)>>3
	return t[at]>>(after&7)&1 != 0
}

// weights gives what a key adds for a comma and for a stop; nothing where it is not in the table.
func (t stopTable) weights(key uint64) (comma, stop int) {
	t = t[tagPairs:]
	mask := uint64(len(t)/4 - 1)
	mark := uint32(key>>48) | 1
	for at := key & mask; ; at = (at + 1) & mask {
		b := t[at*4 : at*4+4]
		e := uint32(b[0]) | uint32(b[1])<<8 | uint32(b[2])<<16 | uint32(b[3])<<24
		if e == 0 {
			return 0, 0
		}
		if e>>16 == mark {
			return int(int8(e >> 8)), int(int8(e))
		}
	}
}

// sum adds up the weights of some keys.
func (t stopTable) sum(keys []uint64) (comma, stop int) {
	for _, k := range keys {
		c, s := t.weights(k)
		comma += c
		stop += s
	}
	return comma, stop
}

// stopTableOf makes the table of the pairs of tags between which nothing ends and of some
// keys with their two weights.
func stopTableOf(never [32]uint32, of map[uint64][2]int8) []byte {
	size := 1 << bits.Len(uint(len(of)*6/5))
	head, out := make([]byte, 0, tagPairs), make([]byte, size*4)
	for _, after := range never {
		head = binary.LittleEndian.AppendUint32(head, after)
	}
	for key, w := range of {
		at := key & uint64(size-1)
		for binary.LittleEndian.Uint32(out[at*4:]) != 0 {
			at = (at + 1) & uint64(size-1)
		}
		binary.LittleEndian.PutUint32(out[at*4:], (uint32(key>>48)|1)<<16|uint32(uint8(w[0]))<<8|uint32(uint8(w[1])))
	}
	return append(head, out...)
}
