// Package batch works a drink back: from so many serves, or a mass of the finished drink, through
// what every step keeps, to what is weighed into each pot, when, and what is bought.
//
// # Model
//
// The build is made N/serves times. A component is made as often as what is taken of it wants,
//
//	times = max(1, (taken + spare)/out)
//
// with out what its recipe gives (assay.Yield), or was read to weigh, and spare what the rounding of
// its amounts leaves it short of, if anything; never less than its recipe, since a smaller pot boils and strains otherwise. What pours into other
// pots is taken as often as these are made. All that a pot weighs grows alike, its steps' amounts
// too, so that its composition stays what it was.
//
// A brew and a charged bottle grow by no factor: they are made again, as a whole. One brew serves
// as many whole glasses as it fills; what is left of it waits for nobody. So does a coffee that
// data/batch.csv calls a shot: it is pulled with the glasses.
//
// A purchase is what all pots weigh in of a food, as the card has it, over its edible share where one is
// stated and it is sold with the rest; in pieces where a table weighs one. A pot may be made as long before
// the service as it keeps, or before the pots made of it, as long as these keep; what is only mixed keeps no
// longer than its oldest part (days.go).
//
// Own foods may say how they are sold (price, lot, best): a purchase is then counted in whole packs,
// and a serve costs what of them is used for it, whatever the steps lose (cost.go).
//
// An amount is written by the steps of the bar's scale, of more than it holds by a coarser one's
// (rounding.go): finer where rounding would take more of it than weighing may, coarser in pots where a
// tenth of what weighing may take is coarser. The drink is run with all that is written, and with what the
// scale shows of it, each glass by itself and all in one round, and the figure of a serving that moved most
// is told.
//
// Precision (precision.go) holds a serving to bands: sweet, sour and thick within the least change
// that a judge notices (package taste, and data/batch.csv), the claims and targets that hold, the
// glass. For each amount the coarsest step of a scale is found by which it may be off by half, both
// ways, all others being right, and no more than a share of itself. Then all hands vary at once
// (estimate.Ensemble.Only), tables and factors staying as they are, and the share of servings within
// every band is counted.
//
// # At home
//
// The home version (home.go) is a drink file of its own, made from the text of the first: readings are
// left out, as they are of the bar's pot; powder acids give way to juice or vinegar (data/home.csv), whose
// amount is fitted with sugar and water of its pot until a serving is as sour, as sweet and, where water
// gives way, as large as the recipe makes it without its readings; a powder too small for a spoon is
// dissolved, or pinched; gas is bought with the water. A recipe of a bar's size is made smaller.
//
// A line takes pieces, where a table weighs one and few are counted, else the largest spoon or cup of which
// half a step is within the share of a batch (homemeasure.go). What a step leaves, and the ice that melts, is
// told as a volume by the density of the pot after that step (homesteps.go). A line is judged by its worst,
//
//	half a step + 1.645 sd · amount, both ways,
//
// with sd the published spread of filling that measure: what leaves a band is weighed, and the card says by
// how much a spoon may be off. Then all roundings are tried together. The file states each spoon with its
// sd, so that its figures are as wide as hands make them. What moved is judged by the interval of the drink
// as it is written, figure by figure.
//
// # Limits
//
// How much gas bought water holds no table states. A hand that heaps one spoon heaps them all: spreads do not
// average out over many. Neither do the spreads of a line and of its table's food add up: the second stays as
// it is. How well a mark on a pot is hit nobody has published. Where no table weighs a spoon or a piece only
// a scale does, as of ground coffee.
//
// What clings to vessels, spills and is tasted is not counted: nobody has published it. Bitter, salt
// and smell have no published least difference, so nothing of them is a band. A pot that was read
// (measured:) is held to its reading: its amounts may be as coarse as is told if it is read again. Only
// a mass that was read counts for how much a pot makes; how coarse its amounts may be, and what rounding
// moves, is worked out of the pot as its recipe expects it.
// How the last glass of a bottle differs from the first nobody has published. What a garnish that
// stays behind takes of a component is not made.
package batch
