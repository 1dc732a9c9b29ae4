// Package reading conditions a pot on what instruments read of it.
//
// # Model
//
// Readings of mass, °Brix, soluble solids, density and alcoholic strength update the pot
// together (take.go, update.go): each entry moves, in logarithms, by its covariance with
// what was read, so the least certain moves most. A sample of draws shows a covariance
// between everything; only readings that have more than that to do with an entry count for
// it (gain.go), and what the update leaves of a mass is shared among what is uncertain
// (mass.go). A gas that is stated stays as it is (gas.go).
//
// A reading that contradicts its recipe says something that the recipe does not know.
// Within a number of standard deviations (data/reading_limits.csv) the joint update stands.
// Beyond it the reading counts as the nearest that the recipe explains (update.go), so that
// what is dissolved grows with a reading and stays where it was at that limit, as uncertain
// as it had been. The rest is water that boiled away, melted or was poured (water.go),
// between half and twice of what is there, until the instrument reads what was read. No
// water has gone where the mass of the pot is stated; a mass that was read says how much
// there is, and where the other readings tell that no water went, what is missing is lost of
// all. An instrument that hardly notices water says nothing of it. Whatever was read, the
// grams in the pot of each constituent and of each sum, but for water, stay within the
// middle 99 % of their own draws before the reading (range.go), but for the worlds in which the
// recipe is wrong (below). What is left over stands as
// read, expected and used (result.go), and readings of one state count the same in any order.
//
// Where nobody has stated how much of a pot is water, the first °Brix, else the first density, tells it
// (open.go), and nothing more.
//
// A strength that was read beyond what the vapour of a pot explains says that alcohol stayed, and
// below what was hot that some of it went (alcohol.go): both are taken before water is.
//
// Readings of pH and of titratable acidity take part in that update as they stand: with them
// moves what tables leave out, which the pot carries from then on. What the update leaves is
// closed in every draw (meet.go): the acidity by acid without a name, the pH by the strong
// ion that is missing. So a pot reads what was read, as sure as the instrument, and blends
// and later steps pool these ions with the others. A pH that was read takes the place of
// those that have been published.
//
// # What contradicts
//
// Where recipe and reading are many standard deviations apart the normal update is surer than
// either: it excludes both. Then a mixture takes its place (doubt.go, worlds.go). In a third of
// the draws the reading is wrong, and the pot is what its recipe and the readings that agree make
// of it; in a third it is right: water as far as it takes, and where the mass is known less or
// more of the rest, of an acidity the named acids; the other draws lie evenly between the two.
// So nine in ten draws reach both, whatever hangs on the pot, and the central value stays what
// is used. How far a draw goes to its end is its doubt, 0 where a reading agrees and growing with
// it, so that no interval jumps: from three standard deviations on and half of the way of what
// water can explain, to where somebody has to decide. Water that two instruments tell is no
// doubt; of several readings that contradict each has its part, and the recipe's worlds are
// without the most doubted first. Which is right is an input like any other (--why names it).
//
// # Limits
//
// That recipe and reading are as likely wrong is our own bound: nothing tells which. The bounds
// of what is unknown are those of what is used. An instrument that hardly notices water gives no
// world of its own. A reading updates the pot that was read and nothing else, so the constants
// of nature learn nothing from it; where they are most of the difference the pot's own figure
// stays beside the reading. What is in some draws and not in others, as a dose that not all of
// them want (prep, adjust), moves by grams and not in logarithms; what such a step brought an
// acidity to is held while the rest is read. Readings with a step between them are of two
// states: each keeps to the range that it finds. Correlations within the noise of the draws
// count as none; with fewer than some hundred draws a reading moves little. A meter reads at
// 25 °C, or compensates.
package reading
