// Package typeset says how wide a text is on a terminal, and where a line of it may end:
// at a space, but never within a figure. "0.56–0.83 g", "up to 2.29", "57 % (55–59)" and
// "pH 4.1" are read in one glance or not at all, so each stays on one line.
//
// # Limits
//
// Columns are counted by East Asian width as far as a short table of ranges goes, so emoji
// sequences and rare scripts may shift a column by a cell. A figure is known by its signs
// and by a list of units; one that is longer than the line is broken all the same, and so is
// a word that has no space where the line ends.
package typeset
