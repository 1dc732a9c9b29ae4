package assay

import "slices"

// Cause is where a spread comes from.
type Cause string

// The causes.
const (
	Hand      Cause = "hand"      // amounts, and the shares that the designer states
	Tables    Cause = "tables"    // values, densities and portions of foods
	Steps     Cause = "steps"     // factors of preparation steps
	Constants Cause = "constants" // constants of nature
	Readings  Cause = "readings"  // the instruments of readings taken
)

// Causes lists the causes in the order of printing.
var Causes = []Cause{Hand, Tables, Steps, Constants, Readings}

// journal keeps the draws of every uncertain input of a run, so that results
// can be traced to them. A nil journal keeps nothing: a run that nobody asks
// why needs none.
type journal struct {
	entries []entry
	seen    map[string]bool
}

type entry struct {
	cause  Cause
	name   string // unique within the run
	column []float64
}

// write keeps a copy of an input's column, unless it has no spread or was
// written before.
func (j *journal) write(cause Cause, name string, col []float64) {
	if j == nil || j.seen[name] || constant(col) {
		return
	}
	j.seen[name] = true
	j.entries = append(j.entries, entry{cause, name, slices.Clone(col)})
}

func constant(col []float64) bool {
	return !slices.ContainsFunc(col[1:], func(x float64) bool { return x != col[1] })
}
