// Package constituent is the vocabulary: every chemical part of a food that
// sipsum knows by name, with one fixed unit, and how the parts add up.
//
// # Model
//
// A constituent is one of five kinds. Leaves are the mass-additive parts that
// the ledger carries; a parent is the sum of its parts and nothing else; a rest
// is what remains of a parent when its known parts are taken away, and is
// itself a leaf of the ledger. One tree, rooted at MASS:
//
//	MASS = WATER + PROCNT + FAT + CHOCDF + ALC + ASH + CO2 + MASS-other
//	FAT = FASAT + FAMS + FAPU + FAT-other
//	CHOCDF = CHOAVL + FIBTG + POLYL + OA + CHOCDF-other
//	CHOAVL = SUGAR + STARCH + CHOAVL-other
//
// Riders (minerals, vitamins, xanthines, chlorogenic acids, cholesterol) travel
// with the mass but are never part of a sum of masses. Figures are what a table
// prints besides (its own energy, monosaccharide equivalents): they are kept
// and shown, and only derive rules read them.
//
// Names are INFOODS tagnames where one exists, else our own lower-case ids.
// Molar masses are computed from the formula with the abridged standard atomic
// weights of data/atomic_weights.csv. Phase says how a step that separates
// treats a constituent (data/phases.csv).
//
// # Limits
//
// A column of a table without an id here is kept by the store under
// table:number and never enters a calculation. Individual fatty acids and amino
// acids are such columns.
package constituent
