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
// middle 99 % of their own draws before the reading (range.go). What is left over stands as
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
// # Limits
//
// A reading updates the pot that was read and nothing else, so the constants of nature learn
// nothing from it; where they are most of the difference the pot's own figure stays beside
// the reading. What is in some draws and not in others, as a dose that not all of them want
// (prep, adjust), moves by grams and not in logarithms; what such a step brought an acidity to
// is held while the rest is read. Readings with a step between them are of two states: each keeps to the range
// that it finds. A draw that would leave the range stays at its end, so a reading far off
// leaves an interval that is too narrow on that side. Correlations within the noise of the
// draws count as none; with fewer than some hundred draws a reading moves little. A meter
// reads at 25 °C, or compensates.
package reading
