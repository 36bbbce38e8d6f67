package render

import (
	"sort"

	"wrenchword/extract"
)

// notice opens every document. It says what no check of this tool can.
var notice = []string{
	"A value heard in a recording is not a specification, and no check here can make a heard value right. " +
		"The maker's manual for this machine and local rules stand above everything on this page.",
	"Brakes, steering, wheels, springs and anything under pressure belong to a licensed technician wherever there is doubt. " +
		"This page is no inspection.",
}

// Notice is the safety notice, one paragraph an element.
func Notice() []string { return append([]string(nil), notice...) }

// severity orders the signal words as ANSI Z535.6 grades them.
var severity = map[string]int{"DANGER": 0, "WARNING": 1, "CAUTION": 2, "NOTICE": 3}

// usualOf gives the indexes of rec's usual items of one kind, cautions the gravest first.
func usualOf(rec *extract.Record, kind string) []int {
	var list []int
	for i, u := range rec.Usual {
		if u.Kind == kind {
			list = append(list, i)
		}
	}
	grade := func(i int) int {
		if g, ok := severity[rec.Usual[i].Signal]; ok {
			return g
		}
		return len(severity)
	}
	sort.SliceStable(list, func(a, b int) bool { return grade(list[a]) < grade(list[b]) })
	return list
}
