package extract

// checkOpen runs the checks of normalize over what was heard and asks after what fails.
func (r *reading) checkOpen(rec *Record) []Open { return nil }
