package constituent

import (
	"sync"

	"sipsum/internal/embedded"
)

// EnergyFactor is the energy of one gram of a constituent and all below it under one set of
// label rules: a row of data/energy_factors.csv.
type EnergyFactor struct {
	Rules   string
	Of      ID
	PerGram map[string]float64 // by unit: kJ, kcal; a unit that the rules do not use is missing, and without any the rules have no factor for it
	Own     bool               // the energy that an assay computes, whatever the card, takes it
	Source  string
	Status  string // of the source: verified, secondary or unverified
}

// EnergyFactors gives all factors in the order of their file.
var EnergyFactors = sync.OnceValue(func() []EnergyFactor { return ReadEnergyFactors(embedded.Rows("energy_factors.csv")) })

// ReadEnergyFactors reads rows of such a file.
func ReadEnergyFactors(rows []embedded.Row) []EnergyFactor {
	var all []EnergyFactor
	for _, r := range rows {
		f := EnergyFactor{
			Rules: r.Text("rules"), Of: Must(ID(r.Text("constituent"))).ID, PerGram: map[string]float64{},
			Own: r.Text("own") == "yes", Source: r.Text("source"), Status: r.Text("status"),
		}
		for unit, column := range map[string]string{"kJ": "kj_per_g", "kcal": "kcal_per_g"} {
			if x, ok := r.Optional(column); ok {
				f.PerGram[unit] = x
			}
		}
		if f.Own && len(f.PerGram) < 2 {
			r.Fail("an assay prints kJ and kcal: %s lacks one", f.Of)
		}
		all = append(all, f)
	}
	return all
}
