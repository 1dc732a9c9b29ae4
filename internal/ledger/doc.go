// Package ledger is the book of a pot: rows are ingredient occurrences, columns
// are constituents, and every entry is a column of draws in grams.
//
// # Model
//
// A Pot holds the cells of its rows: n numbers for each column of which the row
// has anything, with draw 0 the central value. A cell that a row lacks takes no
// memory and no time. Only leaves, rests and riders of the vocabulary
// have columns; a parent is always the sum of its leaves, so parents equal
// their parts after any sequence of steps by construction. Rows keep the path
// of components through which an ingredient came, so contributions are sums of
// rows.
//
// Beside the numbers every row keeps, at central values only, the most that
// each unknown constituent could be (in grams; NaN where nothing is known). A
// step treats a bound as it treats the constituent itself.
//
// A row may also carry tracers (tracer.go): what is dissolved and no constituent, such
// as a charge that a meter found. They go with the constituent that each names, and are
// in no mass, total or contribution.
//
// A Drawer draws the cells of a food each by itself, scales the parts of published
// totals (food.Profile.Totals) to a draw of the total, and then closes the mass. Of a food in
// hand what its designer states holds: the rest of a total is what its other parts leave, and
// 100 g are made up by what is of no known kind, then by what nobody stated as one and by what
// is stated, each by its variance; ± 0 stays (yield.go).
//
// A separating step is a Model: which share of a constituent of a row stays.
// Apply multiplies; what does not stay is returned as lost, so mass closes.
//
// A step that turns a constituent into others is a Reaction. React moves mass
// between the columns of a row and takes the water that it needs out of the whole
// pot, so the mass of the pot stays; the bound of what is unknown moves with it.
// Forget turns a rider of a row from known into unknown, bounded by what was known.
//
// # Limits
//
// Central values of bounds ignore the spread of the steps they pass. A draw in
// which a reaction lacks water turns only as much as its water allows.
package ledger
