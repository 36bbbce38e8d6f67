package normalize

import (
	"fmt"
	"math"
	"math/big"
	"slices"
	"sort"
	"strconv"
	"strings"
	"sync"

	"wrenchword/normalize/pattern"
)

// CheckPair compares two values that were said for one thing in two units. It
// returns a "units-disagree" finding where they differ by more than the last
// figure said of each allows, or 5 percent if that is more (in 149 printed pairs
// of public manuals every pair beyond 5 percent and its rounding was a misprint
// or a tolerance converted alone). Other kinds, and equal units, give nothing.
func CheckPair(a, b Quantity) []Finding {
	if a.Kind != b.Kind || a.Unit == b.Unit || a.Low == nil || b.Low == nil {
		return nil
	}
	differ := func(x, y *big.Rat) (string, bool) {
		c, ok := Convert(y, b.Unit, a.Unit)
		if !ok {
			return "", false
		}
		stepB, _ := Convert(halfStep(y), b.Unit, a.Unit)
		if a.Kind == Temperature { // a step has no offset
			zero, _ := Convert(new(big.Rat), b.Unit, a.Unit)
			stepB.Sub(stepB, zero)
		}
		room := new(big.Rat).Add(halfStep(x), stepB)
		five := new(big.Rat).Mul(new(big.Rat).Abs(c), big.NewRat(5, 100))
		if five.Cmp(room) > 0 {
			room = five
		}
		d := new(big.Rat).Sub(x, c)
		return Rounded(y, b.Unit, a.Unit), d.Abs(d).Cmp(room) > 0
	}
	s1, bad1 := differ(a.Low, b.Low)
	s2, bad2 := differ(a.High, b.High)
	if !bad1 && !bad2 {
		return nil
	}
	if !bad1 {
		s1 = s2
	}
	return []Finding{{What: "units-disagree",
		Why:    fmt.Sprintf("%s and %s were said for one value, but %s is %s", a.Canonical, b.Canonical, b.Canonical, s1),
		Source: "NIST SP 811 conversion factors",
		Ask:    fmt.Sprintf("Which of the two is right, %s or %s?", a.Canonical, b.Canonical)}}
}

// halfStep is half of the last figure that v was said with; a fraction counts
// as said exactly.
func halfStep(v *big.Rat) *big.Rat {
	s := big.NewRat(1, 2)
	for range decimals(v) {
		s.Quo(s, big.NewRat(10, 1))
	}
	return s
}

// CheckSize reports a size that is in no published series of its kind (Size,
// Drive, Thread or Driver), with the one that sounds most like it. Alternatives
// ("12 mm | 13 mm") are checked one by one. Nothing is ever changed: a finding
// "no-such-size" asks.
func CheckSize(canonical string, kind Kind) []Finding {
	var out []Finding
	for _, c := range strings.Split(canonical, " | ") {
		if f, bad := checkSize(strings.TrimSpace(c), kind); bad {
			out = append(out, f)
		}
	}
	return out
}

func checkSize(c string, kind Kind) (Finding, bool) {
	var series []string
	var name, source string
	switch kind {
	case Drive:
		series, source = sizesOf("drive"), "ISO 1174-1 and the hand socket drives on sale"
		name = "square drive"
	case Size:
		series, source = sizesOf("key or socket"), "ISO 2936, ISO 272, ASME B18.3 and B18.2.2, and sockets on sale"
		name = "key or socket"
	case Driver:
		group := "cross recess"
		name, source = "cross-recess driver", "ISO 4757 and driver sizes on sale"
		if strings.HasPrefix(c, "T") {
			group, name, source = "hexalobular", "hexalobular driver", "ISO 10664 and the sizes sold beside it"
		} else if strings.HasPrefix(c, "E") {
			group, name, source = "external hexalobular", "external hexalobular socket", "E sizes on sale"
		}
		series = sizesOf(group)
	case Thread:
		if i := strings.Index(c, " x "); i >= 0 {
			c = c[:i]
		}
		if strings.HasSuffix(c, " in") && len(findThreads(c)) > 0 {
			return Finding{}, false // "a three eighths bolt": coarse or fine was not said
		}
		source, name = "ISO 261 and 262, ASME B1.1", "thread"
		for _, t := range threads() {
			if t.Name == c || t.Series == "coarse" && t.Name+"x"+trimFloat(t.Pitch) == c {
				return Finding{}, false
			}
			if (t.TPI > 0) == !strings.HasPrefix(c, "M") {
				series = append(series, t.Name)
				if t.Series == "coarse" && strings.Contains(c, "x") {
					series = append(series, t.Name+"x"+trimFloat(t.Pitch))
				}
			}
		}
	default:
		return Finding{}, false
	}
	if inSeries(c, series) {
		return Finding{}, false
	}
	near := soundsLike(c, series)
	f := Finding{What: "no-such-size", Source: source,
		Why: fmt.Sprintf("there is no %s of %s in the published series", name, c)}
	if near != "" {
		f.Why += fmt.Sprintf("; %s sounds most like it", near)
		f.Ask = fmt.Sprintf("Was %s meant, where %s was heard?", near, c)
	} else {
		f.Ask = fmt.Sprintf("What size was meant, where %s was heard?", c)
	}
	return f, true
}

func sizesOf(kind string) []string { return sizesByKind()[kind] }

var sizesByKind = sync.OnceValue(func() map[string][]string {
	out := map[string][]string{}
	for _, r := range sizeRows() {
		out[r.kind] = append(out[r.kind], r.size)
	}
	out["key or socket"] = slices.Concat(out["key"], out["socket"])
	return out
})

func trimFloat(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// inSeries tells whether a size is one of a series by its value: "0.5 in" is "1/2 in".
func inSeries(c string, series []string) bool {
	if slices.Contains(series, c) {
		return true
	}
	v, unit, ok := sizeValue(c)
	if !ok {
		return false
	}
	for _, s := range series {
		if !strings.HasSuffix(s, unit) {
			continue
		}
		if w, u, ok := sizeValue(s); ok && u == unit && w.Cmp(v) == 0 {
			return true
		}
	}
	return false
}

// sizeValue reads "3/8 in", "1-1/4 in", "1 1/4 in", "8 mm".
func sizeValue(s string) (*big.Rat, string, bool) {
	i := strings.LastIndexByte(s, ' ')
	if i < 0 {
		return nil, "", false
	}
	num, unit := s[:i], s[i+1:]
	whole, part, mixed := strings.Cut(strings.ReplaceAll(num, " ", "-"), "-")
	v, ok := new(big.Rat).SetString(whole)
	if !ok || len(whole) > 12 {
		return nil, "", false
	}
	if mixed {
		p, ok := new(big.Rat).SetString(part)
		if !ok || len(part) > 12 {
			return nil, "", false
		}
		v.Add(v, p)
	}
	return v, unit, true
}

// soundsLike returns the member of series that sounds most like what was heard,
// or "" where nothing comes close.
func soundsLike(heard string, series []string) string {
	best, cost := "", math.Inf(1)
	for _, s := range series {
		if c := soundDistance(heard, s); c < cost {
			best, cost = s, c
		}
	}
	if cost > 0.5*float64(len(spoken(heard)))+1 {
		return ""
	}
	return best
}

// sizeMarks takes from a size all that is no figure.
var sizeMarks = strings.NewReplacer("/", "", ".", "", "-", "", " ", "")

// soundDistance is small for what is confused in speech: "3.8" for 3/8, thirty
// for thirteen, five for nine, a count run into a size ("214" for two 14).
func soundDistance(heard, real string) float64 {
	hn, hu := splitUnit(heard)
	rn, ru := splitUnit(real)
	d := 0.0
	if hu != ru {
		d += 3
	}
	if sizeMarks.Replace(hn) == sizeMarks.Replace(rn) {
		return d + 0.25 // the same figures, another mark between them
	}
	if v, err := strconv.Atoi(hn); err == nil && v > 100 {
		if w, err := strconv.Atoi(rn); err == nil && w >= 10 && v%100 == w {
			return d + 0.5
		}
	}
	return d + edits(spoken(hn), spoken(rn))
}

func splitUnit(s string) (num, unit string) {
	if i := strings.LastIndexByte(s, ' '); i >= 0 {
		return s[:i], s[i+1:]
	}
	for i := range len(s) {
		if s[i] >= '0' && s[i] <= '9' {
			return s[i:], s[:i]
		}
	}
	return s, ""
}

// spoken spells a size roughly as it sounds, one letter a sound where it
// matters: "teen" and "ty" are one step apart.
func spoken(s string) string {
	var b strings.Builder
	for len(s) > 0 {
		n := 0
		for n < len(s) && s[n] >= '0' && s[n] <= '9' {
			n++
		}
		if n == 0 {
			switch s[0] {
			case '.':
				b.WriteString("poynt")
			case '/':
				b.WriteString("over")
			case 'x':
				b.WriteString("bay")
			}
			s = s[1:]
			continue
		}
		v, _ := strconv.Atoi(s[:min(n, 6)])
		b.WriteString(sounds(v))
		s = s[n:]
	}
	return b.String()
}

// sounds spells a number below a million by sound. T stands for "teen", Y for "ty".
func sounds(n int) string {
	small := [...]string{"ow", "wan", "tu", "Tri", "for", "fayv", "siks", "sevn", "eyt", "nayn", "ten", "ilevn", "twelv"}
	stem := [...]string{"", "", "twen", "Ter", "for", "fif", "siks", "sevn", "eyt", "nayn"}
	switch {
	case n <= 12:
		return small[n]
	case n < 20:
		return stem[n-10] + "T"
	case n < 100:
		s := stem[n/10] + "Y"
		if n%10 > 0 {
			s += small[n%10]
		}
		return s
	case n < 1000:
		s := small[n/100] + "hndrd"
		if n%100 > 0 {
			s += sounds(n % 100)
		}
		return s
	}
	return sounds(n/1000) + "Tausnd" + sounds(n%1000)
}

// edits is the edit distance of two short spellings; a change between like
// sounds (vowels, or "teen" and "ty") costs half.
func edits(a, b string) float64 {
	prev := make([]float64, len(b)+1)
	for j := range prev {
		prev[j] = float64(j)
	}
	for i := 1; i <= len(a); i++ {
		cur := make([]float64, len(b)+1)
		cur[0] = float64(i)
		for j := 1; j <= len(b); j++ {
			sub := 1.0
			x, y := a[i-1], b[j-1]
			switch {
			case x == y:
				sub = 0
			case strings.IndexByte("aeiouyw", x) >= 0 && strings.IndexByte("aeiouyw", y) >= 0, x == 'T' && y == 'Y', x == 'Y' && y == 'T',
				x == 'f' && y == 'n', x == 'n' && y == 'f', x == 'v' && y == 'n', x == 'n' && y == 'v':
				sub = 0.5
			}
			cur[j] = min(prev[j]+1, cur[j-1]+1, prev[j-1]+sub)
		}
		prev = cur
	}
	return prev[len(b)]
}

// CheckSameScrew says which of the sizes said of one fastener can be the thread
// and the key, driver or head of one and the same screw. Finding "same-screw";
// it is to be made before two sizes are called a conflict.
func CheckSameScrew(sizes []string) []Finding {
	var out []Finding
	for _, th := range sizes {
		ts := findThreads(th)
		if len(ts) == 0 {
			continue
		}
		size := nominal(ts[0])
		for _, other := range sizes {
			if other == th || len(findThreads(other)) > 0 && !strings.HasSuffix(other, " in") {
				continue
			}
			var how, source string
			for _, r := range keyRows() {
				if sameThread(r.thread, size) && r.size == other {
					how, source = fmt.Sprintf("its key: a %s %s-head screw takes %s", size, r.head, other), r.source
					break
				}
			}
			if how == "" {
				for _, r := range headRows() {
					if sameThread(r.thread, size) && r.size == other {
						how, source = fmt.Sprintf("its head or nut: %s across flats goes with %s", other, size), r.source
						break
					}
				}
			}
			if how != "" {
				out = append(out, Finding{What: "same-screw", Source: source,
					Why: fmt.Sprintf("%s and %s may well be one screw, %s being the thread and %s %s", th, other, th, other, how),
					Ask: fmt.Sprintf("Are %s and %s the thread and the tool size of the same screw?", th, other)})
			}
		}
	}
	return out
}

// nominal is the thread size without pitch: "M8", "1/4", "#10".
func nominal(t thread) string {
	if t.TPI > 0 {
		return t.Name[:strings.LastIndexByte(t.Name, '-')]
	}
	n, _, _ := strings.Cut(t.Name, "x")
	return n
}

func sameThread(row, size string) bool { return row == size }

// TorqueContext is what is known of the fastener a torque was said for. Sizes
// are canonical; anything may be empty.
type TorqueContext struct {
	Thread       string // "M8", "M10x1.25", "1/4-20"
	Key          string // hex key or hexalobular driver: "6 mm", "T30"
	AcrossFlats  string // "13 mm", "9/16 in"
	HeadStyle    string // "cap", "button", "countersunk", "low cap", "set", "pan", "hex"; "" unknown
	Class        string // "8.8", "10.9", "grade 5", "A2-70", or a stress as "40000 psi"
	Material     string // "steel", "stainless", "titanium", "aluminium" (what the screw goes into)
	Condition    string // "dry", "oiled", "anti-seize", "mu 0.14"
	Changed      string // what is no longer as the value supposes: "titanium bolt", "anti-seize"
	AxleOrHub    bool   // an axle, spindle or hub nut: its width across flats says nothing of its thread
	GeneralValue bool   // a value given for a thread size in general, not for this fastener
}

// CheckTorque sets a torque in newton metres against what the candidate threads
// take by T = K F d, F being the stress area times the proof stress (or the 0.2
// percent strain limit) of the class. Findings: "too-much" when even the highest
// friction of the condition leaves the screw beyond that load for every
// candidate; "too-little" when the load is under a tenth of it for the weakest
// common class at the lowest friction; "which-thread" for a general value and a
// screw known only by its key or head; "nothing-to-check" where no thread can be
// told or its class has no published strength; "material-changed". A value
// between the limits gives no finding, which is no approval: a computed value is
// no specification, and the maker's manual stands above it.
func CheckTorque(low, high *big.Rat, c TorqueContext) []Finding {
	var out []Finding
	if low == nil || high == nil || low.Sign() <= 0 || high.Cmp(low) < 0 {
		return []Finding{{What: "nothing-to-check", Why: "no torque above zero was heard", Ask: "What is the torque?"}}
	}
	lo, _ := low.Float64()
	hi, _ := high.Float64()
	if c.Changed != "" {
		out = append(out, Finding{What: "material-changed", Source: "common practice, no source",
			Why: fmt.Sprintf("the value supposes the original screw and condition, and there is now %s; nothing was rescaled", c.Changed),
			Ask: fmt.Sprintf("What torque does the maker give with %s?", c.Changed)})
	}
	names, basis := c.candidates()
	if c.GeneralValue && c.Thread == "" && (c.Key != "" || c.AcrossFlats != "") && !c.AxleOrHub {
		size := c.Key
		if size == "" {
			size = c.AcrossFlats
		}
		f := Finding{What: "which-thread", Source: basis,
			Why: fmt.Sprintf("the value is a general one for a thread size, and the screw is known only by its %s", size),
			Ask: "Which thread does this screw have?"}
		if len(names) > 0 {
			f.Why += fmt.Sprintf(", which goes with %s", strings.Join(names, ", "))
		}
		out = append(out, f)
	}
	if len(names) == 0 {
		why := "no thread is known for this fastener"
		switch {
		case c.AxleOrHub && c.AcrossFlats != "" && c.Thread == "":
			why = fmt.Sprintf("the width of an axle or hub nut (%s) says nothing of its thread", c.AcrossFlats)
		case c.Thread != "":
			why = fmt.Sprintf("%s is in no thread table", c.Thread)
		case c.Key != "" || c.AcrossFlats != "":
			why = fmt.Sprintf("no screw in the tables takes %s", strings.TrimSpace(c.Key+" "+c.AcrossFlats))
		}
		return append(out, Finding{What: "nothing-to-check", Why: "nothing to check against: " + why, Ask: "What is the thread, and what does the maker give for it?"})
	}
	var most, least *Limit
	for _, n := range names {
		for _, t := range findThreads(n) {
			l, ok := c.limit(t)
			if !ok {
				return append(out, Finding{What: "nothing-to-check",
					Why: fmt.Sprintf("nothing to check against: no published strength for class %q", c.Class), Ask: "What does the maker give?"})
			}
			if most == nil || l.Most > most.Most {
				most = &l
			}
			if least == nil || l.Least < least.Least {
				least = &l
			}
		}
	}
	if hi > most.Most {
		out = append(out, Finding{What: "too-much", Source: most.Source,
			Why: fmt.Sprintf("%s N.m is more than %s takes: %s", tidy(hi), most.Thread, most.Basis),
			Ask: "Is the value, its unit and the fastener right?"})
	}
	if lo < least.Least {
		out = append(out, Finding{What: "too-little", Source: least.Source,
			Why: fmt.Sprintf("%s N.m leaves %s under a tenth of the proof load of even class %s: that takes %s N.m at K %.2f", tidy(lo), least.Thread, least.WeakClass, tidy(least.Least), least.KLow),
			Ask: "Is the value, its unit and the fastener right?"})
	}
	if isAluminium(c.Material) && len(out) == 0 {
		out = append(out, Finding{What: "nothing-to-check", Source: "published tables for screws into cast aluminium (30 percent and more below steel)",
			Why: "nothing to check against: the tapped aluminium sets the torque, not the screw",
			Ask: "What does the maker give for this screw into aluminium?"})
	}
	return out
}

func isAluminium(m string) bool {
	m = strings.ToLower(m)
	return strings.Contains(m, "alumin") || strings.Contains(m, "alloy") || strings.Contains(m, "magnes")
}

// candidates lists the threads a fastener may have, and why.
func (c TorqueContext) candidates() (names []string, source string) {
	if c.Thread != "" {
		for _, t := range findThreads(c.Thread) {
			names = append(names, t.Name)
		}
		return names, "as said"
	}
	var m map[string]string
	switch {
	case c.Key != "":
		m = byKey(c.Key, headStyle(c.HeadStyle))
	case c.AcrossFlats != "" && !c.AxleOrHub:
		m = byFlats(c.AcrossFlats)
	}
	sources := map[string]bool{}
	for n, s := range m {
		names = append(names, n)
		sources[s] = true
	}
	sort.Slice(names, func(i, j int) bool { return findMajor(names[i]) < findMajor(names[j]) })
	return names, strings.Join(sortedKeys(sources), "; ")
}

func findMajor(n string) float64 {
	if t := findThreads(n); len(t) > 0 {
		return t[0].Major
	}
	return 0
}

func sortedKeys(m map[string]bool) []string {
	var out []string
	for k := range m {
		out = append(out, k)
	}
	sort.Strings(out)
	return out
}

// headStyle maps the trade's names of a head to the table's.
func headStyle(s string) string {
	s = strings.ToLower(s)
	switch {
	case strings.Contains(s, "low"):
		return "low cap"
	case strings.Contains(s, "button"), strings.Contains(s, "dome"):
		return "button"
	case strings.Contains(s, "countersunk"), strings.Contains(s, "flat"):
		return "countersunk"
	case strings.Contains(s, "set"), strings.Contains(s, "grub"):
		return "set"
	case strings.Contains(s, "cap"):
		return "cap"
	case strings.Contains(s, "pan"):
		return "pan"
	}
	return ""
}

// Limit is what a thread takes, by T = K F d.
type Limit struct {
	Thread    string
	Class     string  // property class the limit supposes
	WeakClass string  // class that Least supposes
	Load      float64 // kN at the proof stress
	KLow      float64
	KHigh     float64
	Most      float64 // N.m at KHigh and the proof load
	Least     float64 // N.m at KLow and a tenth of WeakClass's proof load
	Basis     string  // the sum in words, with K, F, d and class
	Source    string
}

// ThreadTakes returns what the thread of c takes, for showing beside a torque;
// ok is false where the thread or the strength of its class is not known.
func ThreadTakes(c TorqueContext) (Limit, bool) {
	for _, t := range findThreads(c.Thread) {
		return c.limit(t)
	}
	return Limit{}, false
}

func (c TorqueContext) limit(t thread) (Limit, bool) {
	s, ok := c.strength(t)
	if !ok {
		return Limit{}, false
	}
	k := frictionFor(c.Condition, t)
	load := t.Area * s.mpa / 1000
	weak := s
	if c.Class == "" {
		weak, _ = classStrength("4.6", t.Major)
	}
	l := Limit{Thread: t.Name, Class: s.class, WeakClass: weak.class, Load: load, KLow: k.low, KHigh: k.high,
		Most: k.high * load * t.Major, Least: k.low * t.Area * weak.mpa / 1000 * t.Major / 10}
	assumed := ""
	if c.Class == "" {
		assumed = " (class assumed)"
	}
	l.Basis = fmt.Sprintf("at K %.2f, F %.1f kN (%s %s, %.1f mm2 at %.0f MPa), d %s mm, class %s%s, T = K F d is %s N.m",
		l.KHigh, load, s.standard, s.what, t.Area, s.mpa, trimFloat(math.Round(t.Major*1000)/1000), s.class, assumed, tidy(l.Most))
	l.Source = s.source + "; " + t.Source + "; K: " + k.source
	return l, true
}

// strength picks the class that was said, the material's, or the strongest
// common one for the head style.
func (c TorqueContext) strength(t thread) (strength, bool) {
	if c.Class != "" {
		return classStrength(c.Class, t.Major)
	}
	m := strings.ToLower(c.Material)
	switch {
	case strings.Contains(m, "stainless"):
		return classStrength("A2-80", t.Major)
	case strings.Contains(m, "titan"):
		return classStrength("titanium", t.Major)
	}
	if t.TPI > 0 && c.Key == "" {
		return classStrength("Grade 8", t.Major)
	}
	if headStyle(c.HeadStyle) == "cap" || c.Key != "" {
		return classStrength("12.9", t.Major)
	}
	return classStrength("10.9", t.Major)
}

var (
	isoClass  = pattern.Of(`\b(\d{1,2}\.\d)\b`)
	saeGrade  = pattern.Of(`(?i)\bgrade\s+(\d)(?:\s+or\s+(\d))?`)
	inoxClass = pattern.Of(`(?i)\bA\d(?:/A\d)*-(\d0)\b`)
	jisClass  = pattern.Of(`\b([479]T)\b`)
	psiStress = pattern.Of(`\b(\d{4,6}) psi\b`)
)

// classStrength finds the strength of a class as people and tables write it. Of
// several named ("8.8 or 9.8") the strongest counts.
func classStrength(class string, d float64) (strength, bool) {
	names := []string{class}
	if !slices.ContainsFunc(strengths(), func(s strength) bool { return s.class == class }) {
		if m := psiStress().FindStringSubmatch(class); m != nil {
			v, _ := strconv.ParseFloat(m[1], 64)
			// A stated working stress is a mean, not a limit: preloads by torque wrench
			// scatter about it with a standard deviation of 14 percent (Shigley, unlubricated
			// bolts, 4.91 kN at 34.3 kN; from memory).
			return strength{class: m[0], standard: "stated", what: "stress and 14 percent scatter", mpa: 1.14 * v * 0.00689475729, dMax: 1000, source: "the stress stated with the value"}, true
		}
		names = classesIn(class)
	}
	var best strength
	for _, n := range names {
		for _, s := range strengths() {
			if s.class == n && d > s.dMin && d <= s.dMax && s.mpa > best.mpa {
				best = s
			}
		}
	}
	return best, best.mpa > 0
}

// classesIn gives the classes that some words name, as the table has them.
func classesIn(class string) (names []string) {
	for _, m := range isoClass().FindAllStringSubmatch(class, -1) {
		names = append(names, m[1])
	}
	for _, m := range saeGrade().FindAllStringSubmatch(class, -1) {
		names = append(names, "Grade "+m[1])
		if m[2] != "" {
			names = append(names, "Grade "+m[2])
		}
	}
	for _, m := range inoxClass().FindAllStringSubmatch(class, -1) {
		names = append(names, "A2-"+m[1])
	}
	for _, m := range jisClass().FindAllStringSubmatch(class, -1) {
		names = append(names, m[1])
	}
	if strings.Contains(strings.ToLower(class), "titan") {
		names = append(names, "titanium")
	}
	return names
}

// tidy prints a computed torque with three figures.
func tidy(v float64) string {
	switch {
	case v >= 100:
		return strconv.FormatFloat(v, 'f', 0, 64)
	case v >= 10:
		return strconv.FormatFloat(v, 'f', 1, 64)
	}
	return strconv.FormatFloat(v, 'f', 2, 64)
}

// Wrench is a torque wrench: its range and step in one unit.
type Wrench struct {
	Name            string
	Unit            string // "N.m", "lbf.ft", "lbf.in", "kgf.cm" …
	Low, High, Step *big.Rat
}

// CheckWrenchReading says whether a torque can be set on a wrench: in its unit,
// inside its range, on its step. Findings are "cannot-be-set"; below a fifth of
// the range it says that no accuracy is required there (4 percent of reading from
// 20 percent of scale up: TM 9-243 class of wrenches, as tabulated).
func CheckWrenchReading(q Quantity, w Wrench) []Finding {
	if q.Kind != Torque || w.High == nil {
		return nil
	}
	v, ok := Convert(q.High, q.Unit, w.Unit)
	if !ok {
		return []Finding{{What: "cannot-be-set", Why: fmt.Sprintf("%s cannot be read on a wrench in %s", q.Canonical, w.Unit)}}
	}
	lowest, _ := Convert(q.Low, q.Unit, w.Unit)
	said := Rounded(q.High, q.Unit, w.Unit)
	name := w.Name
	if name == "" {
		name = "this wrench"
	}
	switch {
	case v.Cmp(w.High) > 0 || w.Low != nil && lowest.Cmp(w.Low) < 0:
		lo := "0"
		if w.Low != nil {
			lo = decimal(w.Low)
		}
		return []Finding{{What: "cannot-be-set", Why: fmt.Sprintf("%s is %s, and %s goes from %s to %s %s", q.Canonical, said, name, lo, decimal(w.High), w.Unit), Ask: "Which wrench reaches it?"}}
	case w.Step != nil && w.Step.Sign() > 0 && q.Unit == w.Unit && !new(big.Rat).Quo(v, w.Step).IsInt():
		return []Finding{{What: "cannot-be-set", Why: fmt.Sprintf("%s is no mark of %s, whose step is %s %s", q.Canonical, name, decimal(w.Step), w.Unit), Ask: "Was the reading heard right?"}}
	case lowest.Cmp(new(big.Rat).Mul(w.High, big.NewRat(1, 5))) < 0:
		return []Finding{{What: "cannot-be-set", Why: fmt.Sprintf("%s is below a fifth of the range of %s, where no accuracy is required of it", q.Canonical, name),
			Source: "accuracy limit from 20 percent of scale up, torque wrench calibration practice", Ask: "Is there a smaller wrench?"}}
	}
	return nil
}
