// Package assay calculates a drink: it finds the foods that the file names,
// walks components, steps, build and finish through the ledger, takes readings
// into account, and gives the composition of a serving with intervals,
// contributions, coverage and notes.
//
// # Model
//
// Everything is a column of draws (package estimate). Written amounts are
// rectangular on the stated range, else on half a unit of the last digit
// written or of the bar's scale; volumes become masses by the food's density.
// A component is made once and each use is a share of it, so that its draws
// stay its own. Coverage of a constituent is
//
//	known / (known + the most that the unknown parts could be)
//
// and is null where an unknown part has no bound. Energy is recomputed from the
// leaves by data/energy_factors.csv; the table's own figure is never summed.
//
// A reading of the mass updates the pot (reading.go): each entry moves by its
// covariance with the mass, so the least certain moves most.
//
// # Limits
//
// Densities of components and drinks come from composition (package solution)
// at 20 °C. Claims, targets and the steps that prep does not know are refused,
// never ignored. Garnish amounts are for all servings together, like the build.
package assay
