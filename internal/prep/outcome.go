package prep

import (
	"fmt"

	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// Factors draws the uncertain factors of a step: each has a stream of its own
// under the step's path.
type Factors struct {
	Seed uint64
	N    int    // length of a column
	Path string // the step's stable path
}

// Column draws one factor.
func (f Factors) Column(name string, in estimate.Input) []float64 {
	in.Stream = estimate.KeyOf(f.Seed, "step", f.Path, name)
	col := make([]float64, f.N)
	in.Fill(col)
	return col
}

// Outcome is what a step did, for the notes and the tests.
type Outcome struct {
	Lost  ledger.Lost
	Added float64  // grams of water that the step brought, central
	Notes []string // what the step assumed that the user should know
}

// impossible is the error of a step that asks for what the pot cannot give, at
// central values.
func impossible(format string, args ...any) error { return fmt.Errorf(format, args...) }
