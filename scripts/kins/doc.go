// Program kins derives data/kin_shares.csv from the rows that data/kins.csv names.
//
// # Model
//
// A kin is foods whose single acids resemble each other. Of each of its rows the share of
// an acid is its amount over all that the row has of acids; where a table prints to a tenth
// of a gram, half of its last place stands beside them for the acids that it printed as
// nothing. The shares of a kin are the means over the rows that looked for the acid, brought
// to a sum of at most one.
//
// How far a food of the kin may lie from them is one number for all acids of a kin, f, the
// spread of shares that add up to one (Dirichlet):
//
//	var(share) = share · (1 − share) · f     f = Σ (var x − var rounding) ÷ Σ share · (1 − share)
//
// A kin's own f counts by its degrees of freedom, and the median of the kins with three rows
// and more by three; a kin with one row has the widest f that its class shows (that any class
// shows, where its own has no kin with three). A further food lies √(1 + 1/n) times as far
// as a row does. low and high are the 5 and 95 % limits of the draws that the ledger makes
// of it. An acid that no row of a kin holds has no share but a most: that of the middle row.
//
// # Limits
//
// The rows of the tables are printed to 50 mg, so a kin of little acid has wide shares. A
// row is a lot, a cultivar or a tin; what differs between countries is in f only where rows
// of two countries stand beside each other.
package main
