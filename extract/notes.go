package extract

// notes are the reading's remarks on itself.
func (r *reading) notes(rec *Record) []Note { return []Note{} }

// usual gives the usual checks and cautions that were not heard.
func (r *reading) usual(rec *Record) []Usual { return []Usual{} }
