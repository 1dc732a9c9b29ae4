// Package jsonreport writes the documents of sipsum's JSON contract, one schema
// name each ("sipsum.assay/1"): additions are allowed, renames are not.
//
// Units are those of the vocabulary. An unknown is {"mean": null, "state":
// "unknown"}; there is no NaN and no infinity. mean, sd, low and high are of the
// known part; with_bounds adds what the unknown parts could be at most and is
// null where one has no bound; coverage = mean / with_bounds.
//
// # Limits
//
// Chemistry (pH, titratable acidity, Brix, gas) is not in the documents until it
// is computed; density is.
package jsonreport
