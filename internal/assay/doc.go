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
// stay its own. A serving's parts are what the build pours, a component or a food,
// whatever it is called (parts.go); what the evidence is set against is the part that
// is poured of it, or, of what is only used inside others, as much as they take, as it
// was made (alone.go). Coverage of a constituent is
//
//	known / (known + the most that the unknown parts could be)
//
// and is null where an unknown part has no bound. Energy is recomputed from the
// leaves by data/energy_factors.csv; the tables' own figures are followed beside
// it (tableenergy.go) and go into nothing. What is not known is followed as the most
// that it could be (upto.go): a figure's "up to" is the upper end of its interval with
// every unknown part at its most, never above that of the totals that it is part of.
//
// Readings of mass, °Brix, soluble solids, density and alcoholic strength update
// the pot together (reading.go, readingupdate.go): each entry moves, in
// logarithms, by its covariance with what was read, so the least certain moves
// most. A sample of draws shows a covariance between everything; only readings that have
// more than that to do with an entry count for it, and what the update leaves of a mass
// is shared among what is uncertain (readingmass.go). A gas that is stated stays as it
// is (readinggas.go). Instruments have the spread that is stated, else that of
// data/instruments.csv. A refractometer and a scale for soluble solids read what
// data/refraction.csv says of each part; volumes are those of package solution, but a
// food of the drink file that states its density has it (stateddensity.go).
//
// A reading that contradicts its recipe says something that the recipe does not know.
// Within a number of standard deviations (data/reading_limits.csv) the joint update stands.
// Beyond it the reading counts as the nearest that the recipe explains (readingupdate.go),
// so that what is dissolved grows with a reading and stays where it was at that limit, as
// uncertain as it had been. The rest is water that boiled away, melted or was poured
// (readingwater.go), between half and twice of what is there, until the instrument reads
// what was read. No water has gone where the mass of the pot is stated (brew out, reduce,
// strain, curdle …); a mass that was read says how much there is, and where the other
// readings tell that no water went, what is missing is lost of all. An instrument that
// hardly notices water says nothing of it. What an acidity was not explained by is acid or
// base without a name. Whatever was read, the grams in the pot of each constituent and of
// each sum, but for water, stay within the middle 99 % of their own draws before the
// reading (readingrange.go). What is left over stands as read, expected and used
// (readingresult.go), and readings of one state count the same in any order.
//
// A reading is of what its instrument reads. Of what water draws from coffee and tea all
// that dries counts as dissolved, and the brewing water's own minerals do not: that is the
// strength of a brew. A refractometer sees a coffee's solids as one thing. How much they
// refract is a constant of nature, and takes its share of the difference.
//
// Readings of pH and of titratable acidity take part in that update as they stand
// (readingacid.go): with them moves what tables leave out, which the pot carries from
// then on (settle.go) and does not draw again. What the update leaves is closed in
// every draw (readingclose.go): the acidity by acid without a name, the pH by the
// strong ion that is missing. So a pot reads what was read, as sure as the instrument,
// and blends and later steps pool these ions with the others. A bench titration
// (titration.go) takes the place of all that the composition says of acids and ions:
// package acid fits its buffer spectrum, of which the rows carry so many grams;
// readings that follow one another are of one state, so one with base and one with acid
// are two ends of one curve. Protein does not matter there; beyond the pH that was
// titrated a liquid's pH is withheld and bounded.
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
// so is an acid that nobody measured, from none to its bound, and pH and acidity then
// reach from those of none to those of the most (unknownacid.go). Of a food without a group, an
// acid or a salt nothing is assumed beside what is stated; a water's chloride is what its
// metals have beside its bicarbonate. Which groups are assumed to hold more than is stated,
// whose protein takes up acid and between which pH such foods lie are columns of
// data/groups.csv. A published titratable acidity fills no acid of the
// composition, but counts for the pH as a second measurement of all acids, by its spread
// (moreacid.go). A pH whose 90 % interval is wider than ±0.6, or that rests on more than
// 1.5 g of protein in 100 g, or that no drink of foods has, or of a liquid that hardly
// buffers, or of one whose gas nobody has stated, is withheld with its reason and bounds. House-made components that are
// kept, and syrups, get their water activity, the point at which ice forms and what the
// Food Code's table asks of them (keeping.go). A density and a °Brix are of liquids:
// what holds too little water has none (liquid.go).
//
// What has been published of a food's pH counts beside what its composition makes of it,
// each by its spread (calibration.go, publishedph.go): each draw carries the weak acid and
// the strong ion that it lacks, its named acids stay as they are, and the result says on
// which foods the pH rests; where the two contradict each other a note says so. A food
// without a pH of its own lies between those of its group, so none is alkaline for want of
// an acid in its table. Coffee and tea brewed in a step have the pH of such brews, with the
// step's water; milk that an acid parted is at most at the pH at which milk parts. A
// reading takes the place of all that. Where a row has a published pH of its own and stands
// alone, protein does not matter: it has that pH. Of two measurements the weights are those
// of one seed's draws, so that no central value hangs on the seed.
//
// The chemistry of a serving is of what is liquid in it: a garnish that is eaten counts in
// every figure of composition and in none of the solution.
//
// Titratable acidity is simulated at 25 °C without gas. Buffer capacity and strong ions
// are of the draws, the titration curve and the doses (buffer.go, dosing.go) of central
// values. The pH is of a closed bottle; degassed.go gives that of an open glass.
//
// Whether a drink with milk or a plant drink stays smooth (curdlemap.go) is judged by
// package curdling on a hundred draws. The lines of the build that hold what curdles
// are its milk part; of the others the one that needs the most base to come to the pH
// of curdling is its sour part. The milk part must have been titrated over the whole
// range in which it may curdle, and the drink's pH be known to ± 0.5: else there is no
// estimate, and the reading is named.
//
// An own food is held to what a food can be (ownsound.go): no more than 100 g of anything
// in 100 g, no parts beyond what they are part of, all together no more than the whole,
// each within the rounding of what is written and two standard deviations of what is
// stated (data/limits.csv). A row of a table that prints more than the whole is refused
// where a line uses it.
//
// # Limits
//
// A reading updates the pot that was read and nothing else, so the constants of
// nature learn nothing from it; where they are most of the difference the pot's own
// figure stays beside the reading. Readings with a step between them are of two states:
// each keeps to the range that it finds. A draw that would leave the range stays at its
// end, so a reading far off leaves an interval that is too narrow on that side. Correlations within the noise of the draws count
// as none; with fewer than some hundred draws a reading moves little. Shares of a
// spread are of ranks: a product of inputs loses a few per cent to "together".
// A meter reads at 25 °C, or compensates. An anion that no table names is taken for citric
// acid for the most part; where it is another, a blend far from the food's own pH is off by
// as much as that acid's strength is. The range of a group is wide, and a food outside it,
// such as a salted plum, is drawn into it. A brewed coffee of espresso's strength has a pH
// up to 0.6 above filter coffee's: where in between, a meter tells. What
// ferments or curdles after a titration is not in it: titrate afterwards. Generic minerals make the pH of wines read high.
// Densities of components and drinks come from composition (package solution)
// at 20 °C; a food whose stated density is that of a foam keeps its air through steps. Claims, targets and the steps that prep does not know are refused,
// never ignored. Garnish amounts are for all servings together, like the build; a
// garnish that is not eaten is named (garnish.go) and counts for the allergens only.
package assay
