// Package acidity tells what a pot holds of acids and ions, draw by draw, and solves it.
//
// # Model
//
// A pH needs what tables leave out: dissolved phosphate, chloride, sulphate, minor acids
// and what milk protein takes up of acid, beside as many acid groups as it has amines, are drawn within the ranges of
// data/acid_unmeasured.csv (unmeasured.go), the middle being the central value; so is an
// acid that nobody measured, from none to its bound (unknownacid.go). Of a food without a
// group, an acid or a salt nothing is assumed beside what is stated; a water's chloride is
// what its metals have beside its bicarbonate. Which groups are assumed to hold more than
// is stated, whose protein takes up acid and between which pH such foods lie are columns of
// data/groups.csv. A published titratable acidity fills no acid of the composition, but
// counts for the pH as a second measurement of all acids, by its spread (moreacid.go); where
// the acids of a food are themselves read out of it (food, kin), it is the only one.
//
// What has been published of a food's pH counts beside what its composition makes of it,
// each by its spread (calibration.go, publishedph.go): each draw carries the weak acid and
// the strong ion that it lacks, its named acids stay as they are; where the two contradict
// each other a note says so. A food without a pH of its own lies between those of its group,
// so none is alkaline for want of an acid in its table. Coffee and tea brewed in a step have
// the pH of such brews, with the step's water; milk that an acid parted is at most at the pH
// at which milk parts (calibrationbrew.go). Of two measurements the weights are those of one
// seed's draws, so that no central value hangs on the seed.
//
// All that is found so is carried by the pot, as tracers whose types say what they are: from
// then on it goes with what is dissolved. Where a reading has spoken of a row, what tables
// left out of it is carried too and not drawn again (settle.go). A titrated liquid is
// carried as grams of it (titration.go). So whoever has a pot can solve it.
//
// # Limits
//
// An anion that no table names is taken for citric acid for the most part; where it is
// another, a blend far from the food's own pH is off by as much as that acid's strength is.
// The range of a group is wide, and a food outside it, such as a salted plum, is drawn into
// it. A brewed coffee of espresso's strength has a pH up to 0.6 above filter coffee's: where
// in between, a meter tells. What ferments or curdles after a titration is not in it:
// titrate afterwards. Generic minerals make the pH of wines read high. Where a calibration
// over more draws cannot be solved, the draws beyond the first keep the pH of their
// composition. A Laboratory serves one run at a time.
package acidity
