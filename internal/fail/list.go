package fail

import (
	"cmp"
	"fmt"
	"slices"
)

// List collects faults while a file is read. The zero value is ready to use.
type List struct {
	faults []Fault
}

// Add notes a fault.
func (l *List) Add(at Place, do, format string, args ...any) {
	l.faults = append(l.faults, Fault{Place: at, What: fmt.Sprintf(format, args...), Do: do})
}

// Join takes over the faults of an error; an error that is not a *Error becomes
// a fault with its text. Nil does nothing.
func (l *List) Join(at Place, err error) {
	switch e := err.(type) {
	case nil:
	case *Error:
		for _, f := range e.Faults {
			if f.Place == (Place{}) {
				f.Place = at
			}
			l.faults = append(l.faults, f)
		}
	default:
		l.faults = append(l.faults, Fault{Place: at, What: err.Error()})
	}
}

// Take takes over the faults of another list.
func (l *List) Take(other *List) { l.faults = append(l.faults, other.faults...) }

// Len gives the number of faults.
func (l *List) Len() int { return len(l.faults) }

// Err gives the faults as one error with the given exit code, in order of
// place and without repetitions; nil if there is none.
func (l *List) Err(exit Code) error {
	if len(l.faults) == 0 {
		return nil
	}
	sorted := slices.Clone(l.faults)
	slices.SortStableFunc(sorted, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Col, b.Col))
	})
	return &Error{Exit: exit, Faults: slices.Compact(sorted)}
}
