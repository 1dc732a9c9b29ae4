package fail

import (
	"errors"
	"fmt"
	"strings"
)

// Place is a position in a file. Line and Col count from 1; 0 means unknown.
type Place struct {
	File string
	Line int
	Col  int
}

// String gives file:line:col without the parts that are unknown.
func (p Place) String() string {
	switch {
	case p.File == "" && p.Line == 0:
		return ""
	case p.Line == 0:
		return p.File
	case p.Col == 0:
		return fmt.Sprintf("%s:%d", p.File, p.Line)
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Col)
}

// Fault is one thing that is wrong.
type Fault struct {
	Place
	What string // what is wrong
	Do   string // what to do next; may be empty
}

// String gives "place: what (do)".
func (f Fault) String() string {
	var b strings.Builder
	if at := f.Place.String(); at != "" {
		b.WriteString(at + ": ")
	}
	b.WriteString(f.What)
	if f.Do != "" {
		b.WriteString(" (" + f.Do + ")")
	}
	return b.String()
}

// Error is what people see when a command cannot do what was asked.
type Error struct {
	Exit   Code
	Faults []Fault // at least one
	Cause  error   // what the library or system said, if anything
}

// Error gives one line per fault.
func (e *Error) Error() string {
	lines := make([]string, len(e.Faults))
	for i, f := range e.Faults {
		lines[i] = f.String()
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives the cause.
func (e *Error) Unwrap() error { return e.Cause }

// New makes an error of one fault without a place.
func New(exit Code, what, do string) *Error {
	return &Error{Exit: exit, Faults: []Fault{{What: what, Do: do}}}
}

// At makes an error of one fault at a place.
func At(exit Code, at Place, what, do string) *Error {
	return &Error{Exit: exit, Faults: []Fault{{Place: at, What: what, Do: do}}}
}

// Because makes an error of one fault that another error caused. The cause's
// text is shown after the sentence.
func Because(exit Code, cause error, what, do string) *Error {
	return &Error{Exit: exit, Faults: []Fault{{What: what + ": " + cause.Error(), Do: do}}, Cause: cause}
}

// ExitCode gives the exit code of an error: its own if it is a *Error, Failed
// for any other, OK for nil.
func ExitCode(err error) Code {
	var e *Error
	switch {
	case err == nil:
		return OK
	case errors.As(err, &e):
		return e.Exit
	}
	return Failed
}
