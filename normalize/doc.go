// Package normalize knows numbers, units and sizes as they are said and written
// in a workshop, and what steel can take. It knows no transcript.
//
//	Numbers("a twelve and a ten")                 12, 10
//	Quantities("thirty to thirty five foot pounds")  30-35 lbf.ft
//	Quantities("an M ten by one point two five")  M10x1.25
//	Quantities("forty, no, sorry, fifty five newton metres")  55 N.m
//
// Everything found carries the half-open byte range of the text it was read
// from. Values are exact rationals; a unit that was not said is never invented,
// with three exceptions that the Quantity marks as Assumed: "pounds", "kilos" and
// a bare socket number. No check in this package can make a heard value right.
package normalize
