// Package jsonreport writes the documents of sipsum's JSON contract, one schema
// name each ("sipsum.assay/1"): additions are allowed, renames are not.
//
// Units are those of the vocabulary. An unknown is {"mean": null, "state":
// "unknown"}; there is no NaN and no infinity. mean, sd, low and high are of the
// known part; with_bounds is the mean with the unknown parts at their most and is
// null where one has no bound; coverage = mean / with_bounds. up_to stands where
// something is unknown: the upper end, high, with the unknown parts at their most.
//
// A figure of the chemistry that is withheld has mean null and says why; low and
// high still bound it where they are known.
//
// # Limits
//
// Numbers are written with the digits of the calculation, which say nothing of how sure a
// figure is: low and high do. Sentences are those of the sheet, in English.
package jsonreport
