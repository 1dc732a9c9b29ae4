package prep

import (
	"fmt"
	"strconv"

	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// Outcome is what a step did, for the notes and the tests.
type Outcome struct {
	Lost  ledger.Lost
	Added float64  // grams that the step brought (water, gas), central
	Notes []string // what the step assumed or warns of

	Parted *Parting // set where acid parted milk
}

func (o *Outcome) note(format string, args ...any) {
	o.Notes = append(o.Notes, fmt.Sprintf(format, shown(args)...))
}

// impossible is the error of a step that asks for what the pot cannot give, at
// central values.
func impossible(format string, args ...any) error { return fmt.Errorf(format, shown(args)...) }

// shown makes figures ones of a sentence.
func shown(args []any) []any {
	for i, arg := range args {
		if x, ok := arg.(float64); ok {
			args[i] = unit.Shown(x)
		}
	}
	return args
}

// unlike is the same of two masses in grams, which it writes with as many digits as tell
// them apart.
func unlike(format string, asked, there float64, more ...any) error {
	const few, many = 4, 12
	a, b := "", ""
	for digits := few; a == b && digits <= many; digits++ {
		a, b = strconv.FormatFloat(asked, 'g', digits, 64), strconv.FormatFloat(there, 'g', digits, 64)
	}
	return fmt.Errorf(format, append([]any{a, b}, more...)...)
}
