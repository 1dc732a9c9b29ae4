package sheet

import (
	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// negligible is the coverage below which limits alone do not count as knowing
// something: our own bound.
const negligible = 0.01

// Hollow reports whether a result is as good as unknown: nothing is known of it,
// or only limits that are lost beside what the unknown parts could be.
func Hollow(r composition.Result) bool {
	return r.Unknown || r.Partial && r.State >= estimate.Trace && r.Coverage < negligible
}

// None reports whether it is known that there is none.
func None(r composition.Result) bool { return !r.Partial && !r.Unknown && r.Mean == 0 && r.High == 0 }

// figured tells which constituents of a serving have a figure.
func figured(a *assay.Assay) func(constituent.ID) bool {
	return func(id constituent.ID) bool {
		f, ok := a.PerServing.Find(id)
		return ok && !Hollow(f.Result) && !None(f.Result)
	}
}
