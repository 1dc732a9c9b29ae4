// Package source says where a figure comes from.
//
// A Table is one release of a published table; a Work is a publication, an
// agency's page or a rule that a single row cites. Grades run from A (several
// independent measurements, or an agency's analytical data) to D (an estimate
// or one unclear source).
//
// # Limits
//
// The package only carries citations: whether a licence allows
// redistribution is decided by the audit of data/licence_deny.csv.
package source
