package render

import (
	"bytes"
	"encoding/json"
	"fmt"

	"wrenchword/extract"
)

// JSON writes the record, indented, with a line feed at its end.
func JSON(rec *extract.Record) ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(rec); err != nil {
		return nil, fmt.Errorf("write the record: %w", err)
	}
	return b.Bytes(), nil
}
