package prep

import (
	"fmt"

	"sipsum/internal/ledger"
)

// Outcome is what a step did, for the notes and the tests.
type Outcome struct {
	Lost  ledger.Lost
	Added float64  // grams that the step brought (water, gas), central
	Notes []string // what the step assumed or warns of
}

func (o *Outcome) note(format string, args ...any) {
	o.Notes = append(o.Notes, fmt.Sprintf(format, args...))
}

// impossible is the error of a step that asks for what the pot cannot give, at
// central values.
func impossible(format string, args ...any) error { return fmt.Errorf(format, args...) }
