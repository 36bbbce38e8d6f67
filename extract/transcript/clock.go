package transcript

// clock reads a time of one of the forms 0:41, 00:41, 1:12:08, each with an
// optional fraction after "." or ",", at the start of s. It gives seconds and
// the number of bytes read, 0 where there is no such time.
func clock(s string) (sec float64, n int) { return clockOf(s, 2, 2) }

// clockOf is clock with seconds of minWidth to maxWidth digits.
func clockOf(s string, minWidth, maxWidth int) (sec float64, n int) {
	var part [3]float64
	var width [3]int
	count := 0
	for {
		v, w := digits(s[n:])
		if w == 0 || w > 6 {
			return 0, 0
		}
		part[count], width[count] = v, w
		count++
		n += w
		if count == 3 || n+1 >= len(s) || s[n] != ':' || !isDigit(s[n+1]) {
			break
		}
		n++
	}
	if count < 2 || width[count-1] < minWidth || width[count-1] > maxWidth || part[count-1] >= 60 {
		return 0, 0
	}
	if count == 3 && (width[1] > maxWidth || part[1] >= 60) {
		return 0, 0
	}
	for _, v := range part[:count] {
		sec = sec*60 + v
	}
	if n+1 < len(s) && (s[n] == '.' || s[n] == ',') {
		if v, w := digits(s[n+1:]); w > 0 && w <= 9 {
			sec += v / pow10(w)
			n += 1 + w
		}
	}
	return sec, n
}

// digits reads the decimal digits at the start of s, as a value and a width.
func digits(s string) (v float64, n int) {
	for n < len(s) && s[n]-'0' < 10 {
		v = v*10 + float64(s[n]-'0')
		n++
	}
	return v, n
}

func pow10(n int) float64 {
	p := 1.0
	for ; n > 0; n-- {
		p *= 10
	}
	return p
}

func isDigit(c byte) bool { return c-'0' < 10 }

func skipBlanks(s string, i int) int {
	for i < len(s) && (s[i] == ' ' || s[i] == '\t' || s[i] == '\f') {
		i++
	}
	return i
}
