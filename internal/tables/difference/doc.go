// Package difference tells what changed from one edition of a table to another:
// foods that came or went, and names and values that are not what they were.
//
// # Model
//
// Both editions give their columns, and their foods in ascending order of code,
// so that one food of each is in memory at a time. Foods are matched by code,
// values by constituent; a column kept under "table:number" is matched by its
// number, whatever id its edition was loaded under. Columns that one edition
// lacks are told once (Columns) and not again at every food.
//
// A value has changed if its state has, or its amount (for trace, below and
// unknown: its limit) by more than rounding. A figure is known to half its last
// digit; two figures agree if they differ by no more than that of the coarser:
//
//	|a − b| ≤ ½ · max(step(a), step(b))
//
// where the step of a figure is one in the last decimal that it has or that its
// column says it prints (food.Column.Decimals), whichever is finer: tables drop
// trailing zeros, and 4 in a column of one decimal is 4.0.
//
// # Limits
//
// Standard deviations, counts, ranges, sources, portions and marks are not
// compared. Figures of a column that does not say its decimals and drops its
// trailing zeros may hide a change of 3.9 to 4.0. Figures that were divided on
// reading (per 100 ml to per 100 g) have no last digit and change by anything.
package difference
