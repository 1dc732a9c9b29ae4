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
		f.What, f.Do = Clean(f.What, mostProse), cleanLines(f.Do)
		b.WriteString(f.String() + "\n")
	}
	_, _ = io.WriteString(w, b.String())
}

// cleanLines keeps the lines of an advice that shows some to paste. They are set in, so
// that none passes for a fault of its own.
func cleanLines(text string) string {
	const setIn = "\n    "
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		lines[i] = Clean(line, mostProse)
	}
	return strings.Join(lines, setIn)
}
