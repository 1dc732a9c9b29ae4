package sheet

import (
	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/figure"
)

// Hollow reports whether a result is as good as unknown: nothing is known of it,
// or only limits that are lost beside what the unknown parts could be.
func Hollow(r composition.Result) bool { return figure.Hollow(r) }

// None reports whether it is known that there is none.
func None(r composition.Result) bool { return figure.None(r) }

// figured tells which constituents of a serving have a figure.
func figured(a *assay.Assay) func(constituent.ID) bool {
	return func(id constituent.ID) bool {
		f, ok := a.PerServing.Find(id)
		return ok && !Hollow(f.Result) && !None(f.Result)
	}
}
