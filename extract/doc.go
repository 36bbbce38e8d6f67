// Package extract turns timed talk into the record of a job.
//
// The talk is read once (reading.go): words become clauses, clauses hold
// mentions of things, quantities and cues, and what is done is read into acts
// with their mood. refer.go says which thing a phrase stands for and follows
// each thing through its events. Every field of the record is then a view of
// that one reading, one file a field.
//
// Nothing is invented: each item carries its place in the talk and a verbatim
// quote; what the talk does not tell stays empty.
package extract
