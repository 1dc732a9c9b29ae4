package evidence

import (
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
)

// Still reports whether the gas of a serving is too little to sparkle (data/worth.csv), as what water
// brings from the ground, and no food is sold with gas of which nobody has stated how much: what nobody
// says of the gas of a juice is no sparkle.
func Still(a *assay.Assay, gas composition.Result) bool { return Faint(a, gas) && !openGas(a, gas) }

// Faint reports whether what is known of the gas of a serving is too little to sparkle.
func Faint(a *assay.Assay, gas composition.Result) bool {
	known := max(gas.Mean, gas.High) / constituent.Must(constituent.CarbonDioxide).PerGram
	return gas.Unknown || liquid.Still(known, a.Mass.Mean)
}

// openGas reports whether nobody has stated the gas of a food that is sold with it.
func openGas(a *assay.Assay, gas composition.Result) bool {
	return (gas.Partial || gas.Unknown) && a.Serving != nil &&
		slices.ContainsFunc(a.Serving.Rows, func(r ledger.Row) bool { return r.Profile.Food.Carbonated() })
}
