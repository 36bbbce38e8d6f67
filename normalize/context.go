package normalize

// near reports a word with one of the traits within d tokens of token i.
func (r *reader) near(i, d int, x trait) bool { return r.within(i-d, i+d+1, x) }

// within reports a word with one of the traits among tokens [i,j).
func (r *reader) within(i, j int, x trait) bool {
	for k := max(0, i); k < min(len(r.t), j); k++ {
		if r.t[k].is(x) {
			return true
		}
	}
	return false
}

// hedged looks for doubt a few words before token i and after token j, within
// the sentence.
func (r *reader) hedged(i, j int) bool {
	for k := i - 1; k >= 0 && k >= i-7; k-- {
		if t := r.at(k); t.is(tHedge) {
			return true
		} else if t.mark == '.' || t.mark == '?' || t.mark == ';' || t.kind == kDigits {
			break
		} else if t.mark == '~' {
			return true
		}
	}
	for k := i; k < j; k++ {
		if r.at(k).is(tMaybe) {
			return true
		}
	}
	for k := j; k < len(r.t) && k < j+3; k++ {
		t := r.at(k)
		if t.is(tHedgeAfter) && (t.w.text != "so" || r.at(k-1).is(tOr)) { // "ten or so", but "it's an M6, so I'll …"
			return true
		}
		if t.mark == '.' || t.kind == kDigits {
			break
		}
	}
	return false
}

// toolNext reports a tool or a drive right after a unit-less value.
func (r *reader) toolNext(i int) bool {
	i = r.hyphen(i)
	return r.at(i).is(tTool | tDrive | tDriveTool)
}
