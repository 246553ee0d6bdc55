package marksfile

import "fmt"

// Refusal is what is wrong with a marks file: the field by its path, such as
// webs[0].seeds[2] or joints.middle.pip (empty for the file as a whole), what is
// wrong with it and how to mend it.
type Refusal struct{ Field, Problem, Mend string }

// Error is the refusal in one line.
func (r *Refusal) Error() string {
	text := r.Problem + "; " + r.Mend
	if r.Field == "" {
		return text
	}
	return fmt.Sprintf("%s: %s", r.Field, text)
}
