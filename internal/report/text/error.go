package textreport

import (
	"io"
	"strings"

	"sipsum/internal/fail"
)

// Error prints what went wrong, a line for each fault: "place: what (what to
// do)". Nothing can be done about an error of w.
func Error(w io.Writer, e *fail.Error) {
	var b strings.Builder
	for _, f := range e.Faults {
		f.File = Clean(f.File, mostProse)
		f.What, f.Do = Clean(f.What, mostProse), Clean(f.Do, mostProse)
		b.WriteString(f.String() + "\n")
	}
	_, _ = io.WriteString(w, b.String())
}
