package estimate

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
	Doubts    Cause = "doubts"    // which of recipe and reading is right, where they contradict one another
)

// Causes lists the causes in the order of printing.
var Causes = []Cause{Hand, Tables, Steps, Constants, Readings, Doubts}

// Journal keeps the draws of every uncertain input of a run, so that results can be traced
// to them. A nil Journal keeps nothing: a run that nobody asks why needs none.
type Journal struct {
	entries []Entry
	seen    map[string]bool // by name
}

// Entry is an input of a run and its draws.
type Entry struct {
	Cause  Cause
	Name   string // unique within the run
	Column []float64
}

// Write keeps a copy of an input's column, unless it has no spread or was written before.
func (j *Journal) Write(cause Cause, name string, col []float64) {
	if j == nil || j.seen[name] || Certain(col) {
		return
	}
	if j.seen == nil {
		j.seen = map[string]bool{}
	}
	j.seen[name] = true
	j.entries = append(j.entries, Entry{cause, name, slices.Clone(col)})
}

// Entries gives what was written, in the order in which it was first.
func (j *Journal) Entries() []Entry {
	if j == nil {
		return nil
	}
	return j.entries
}

// Certain reports whether a column has no spread.
func Certain(col []float64) bool {
	return !slices.ContainsFunc(col[1:], func(x float64) bool { return x != col[1] })
}
