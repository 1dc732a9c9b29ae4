// Package estimate is the ensemble: a quantity is a column of numbers, the
// central value first and then one number for each seeded draw of all the
// inputs that are not certain. Intervals, shares and verdicts are read from
// such columns; nothing in sipsum adds variances by hand.
//
// # Model
//
// An Input has a central value and a distribution. Positive quantities are
// lognormal by moments: for mean m and standard deviation s,
//
//	σ² = ln(1 + (s/m)²)    x = m · exp(σ·z − σ²/2),   z ~ N(0, 1)
//
// so the mean and the standard deviation of x are m and s and x is never below
// zero. With a tail t (tail.go) z gives way to a number whose middle is narrower and whose
// ends are wider, with the same 5 and 95 % limits and the same mean. A range is uniform (rectangular: JCGM 100:2008, 4.3.7). A value below a
// limit L is uniform on [0, L] with central value L/2.
//
// Every input has a stream of its own, seeded by a hash of the run's seed and
// of what the input is (kind, table, food, constituent, or the path of a line).
// The same input therefore has the same draws in every drink, in any order and
// on any number of cores; adding a line changes no draw of the others; and
// fewer draws are the first ones of more. Inputs may share a part of their
// randomness: z = √ρ·z_shared + √(1−ρ)·z_own.
//
// Standard normal draws come from a ziggurat of 128 strips (Marsaglia and Tsang
// 2000, J. Stat. Softw. 5(8)) with Marsaglia's tail of 1964: it is exact, and takes
// half the time of the inverse normal distribution. A draw takes one number of the
// stream, seldom more, so draws stay in order. The method is written out here and
// math/rand/v2's NormFloat64 is not used: Go's authors guard its sequence by a test
// and decline to promise it (golang/go issue 14416), and its tables have single
// precision. The generator below it is a published algorithm; a test holds Go's to it.
//
// The spread of a published value is its standard deviation, else its range
// divided by d₂(n), the expected range of n normal values in standard
// deviations, else a class default (package food decides).
//
// # Limits
//
// Streams use PCG-DXSM and a ziggurat of our own, so results do not depend on the
// random numbers of a platform or of an edition of Go; they do depend on the number
// of draws: with 1,000 draws a 5 % quantile wanders by about 3 % of the interval's
// width from seed to seed. Correlations other than shared inputs and the stated
// ρ are not modelled.
package estimate
