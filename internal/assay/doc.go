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
// leaves by data/energy_factors.csv; the tables' own figures are followed beside
// it (tableenergy.go) and go into nothing. Where a food's published parts exceed
// their total both stand (package food); a negative rest is printed as 0, and
// what a card is made of is never less than its parts (shown.go).
//
// Readings of mass, °Brix, soluble solids, density and alcoholic strength update
// the pot together (reading.go, readingupdate.go): each entry moves, in
// logarithms, by its covariance with what was read, so the least certain moves
// most. Instruments have the spread that is stated, else that of
// data/instruments.csv. A refractometer and a scale for soluble solids read what
// data/refraction.csv says of each part; volumes are those of package solution.
//
// Asked why (driver.go), a run keeps the draws of its inputs and regresses the
// ranks of a figure on theirs: the shares of hand, tables, steps, constants and
// readings in its spread. Asked what next (next.go), it ranks the readings not
// yet taken by the variance that each would take from the wanted constituents.
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
// A reading updates the pot that was read and nothing else, so the constants of
// nature learn nothing from it. Correlations within the noise of the draws count
// as none; with fewer than some hundred draws a reading moves little. Shares of a
// spread are of ranks: a product of inputs loses a few per cent to "together".
// Readings of pH, titratable acidity and titrations do not condition the assay
// yet. Generic minerals make the pH of wines read high.
// Densities of components and drinks come from composition (package solution)
// at 20 °C. Claims, targets and the steps that prep does not know are refused,
// never ignored. Garnish amounts are for all servings together, like the build.
package assay
