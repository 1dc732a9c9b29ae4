package table

import "sipsum/internal/embedded"

// SourceKind is what a publisher's source code says about a value.
type SourceKind struct {
	Analysed bool
	Assumed  bool   // a zero that nobody measured
	Grade    string // of evidence, A to D
	Why      string
}

// SourceKinds reads data/maps/<format>_sources.csv, by code. A code that it lacks
// is a kind that says nothing.
func SourceKinds(format string) map[string]SourceKind {
	kinds := map[string]SourceKind{}
	for _, row := range embedded.Rows("maps/" + format + "_sources.csv") {
		kind := row.Text("kind")
		kinds[row.Text("code")] = SourceKind{
			Analysed: kind == "analysed", Assumed: kind == "assumed zero",
			Grade: row.Text("grade"), Why: row.Text("why"),
		}
	}
	return kinds
}
