// Package render draws a record: as the Markdown working document and as JSON.
// Whatever came from the talk is text in every output; nothing in it acts.
package render
