// Command bench times sipsum beside its peers, in one run, and prints a table of medians and ratios.
//
//	go run ./scripts/bench [--shared DIR] [--runs 5] [--only NAME] [--cpu FILE] [--mem FILE]
//
// # Model
//
// Each row is done --runs times, a row and its peer by turns, so that both see the same machine; what is
// printed is the median, and the ratio of the medians of wall clock and of processor time. Rows whose
// peer's program or table is not there say so and are left out.
//
//   - load: `table load sr` beside the .import of SQLite's own command line: the same foods, names and
//     values, as CSV, into tables with the keys that look-ups need, with the same journal, cache and
//     durability. Before anything is printed what both hold is compared, row by row.
//   - ensemble: sixty foods in twelve parts at 1,000 draws (BenchmarkLarge of internal/assay) beside
//     ensemble.py: as many normal draws, closures, totals, quantiles and shares in numpy.
//   - commands: whole processes, from the first ever to a search that finds nothing.
//
// --cpu and --mem write profiles of the ensemble for go tool pprof; GOGC is the environment's, and is
// printed.
//
//	go run ./scripts/bench release -foods 2000000 -values 25000000 -out DIR
//
// writes an invented release in the shape of FoodData Central for measuring loads: as many foods and
// values as asked for, in the disorder of the published files. The same arguments give the same bytes.
// Foods are labels but for every hundredth, which has the many values of an
// analysed food. Nutrients are shuffled within a food; one food in twenty is in
// two places of food_nutrient.csv; foods do not come in the order of food.csv.
//
// # Limits
//
// A machine that does other work meanwhile makes wall clocks meaningless; ratios suffer less. numpy has one
// core, sipsum all that there are. The texts of an invented release repeat themselves and its amounts are drawn
// evenly, so a file shrinks and sorts better than the agency's; it says how long a load takes, not what is in it.
package main
