package prep

import (
	"fmt"
	"strconv"

	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// Outcome is what a step did, for the notes and the tests.
type Outcome struct {
	Lost  ledger.Lost
	Added float64  // grams that the step brought (water, gas), central
	Notes []string // what the step assumed or warns of

	Brewed bool     // coffee or tea was extracted
	Parted *Parting // set where acid parted milk
	Dosed  *Dosed   // set where a dose was calculated
	Foamed *Foamed  // set where bubbles were put in
}

func (o *Outcome) note(format string, args ...any) {
	o.Notes = append(o.Notes, fmt.Sprintf(format, shown(args)...))
}

// impossible is the error of a step that asks for what the pot cannot give, at
// central values.
func impossible(format string, args ...any) error { return refuse(fmt.Sprintf(format, shown(args)...)) }

func refuse(what string) error { return fail.New(fail.Wrong, what, "check the amounts") }

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
	return refuse(fmt.Sprintf(format, append([]any{a, b}, more...)...))
}
