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
// The chemistry of the serving and of each house-made component (chemistry.go)
// is solved by package acid for the first 200 draws. A pH needs what tables
// leave out: dissolved phosphate, chloride, sulphate, minor acids and the acid
// that milk protein takes up are drawn within the ranges of
// data/acid_unmeasured.csv (unmeasured.go), the middle being the central value;
// so is an acid that nobody measured, from none to its bound. A pH whose 90 %
// interval is wider than ±0.5, or that rests on a food without potassium, or on
// more than 1.5 g of protein in 100 g, is withheld with its reason and bounds.
// Titratable acidity is simulated at 25 °C without gas.
//
// # Limits
//
// Readings of pH, titratable acidity and titrations do not condition the assay
// yet. Generic minerals make the pH of wines read high.
// Densities of components and drinks come from composition (package solution)
// at 20 °C. Claims, targets and the steps that prep does not know are refused,
// never ignored. Garnish amounts are for all servings together, like the build.
package assay
