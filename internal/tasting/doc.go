// Package tasting works out tests of difference between glasses: how many tasters must be right,
// and what so many tasters can find.
//
// # Model
//
// In a triangle test a taster who cannot tell is right in one of three, in a paired test that asks
// which glass has more, one-sided, in one of two (data/tasting.csv). So the number of right answers of n
// tasters who all guess is binomial, and the critical number is the least k with
//
//	P(X ≥ k | n, p₀) ≤ α
//
// The α that it achieves is that probability, which is less than what was asked for, since k is
// whole. If a share d of the tasters can tell (discriminators), an answer is right with
//
//	p = d + (1 − d)·p₀        power = P(X ≥ k | n, p)
//
// The power does not rise with every taster: where the critical number moves by one, more tasters
// have less of it. So Need tells the first number of tasters that reaches a power, the first from
// which on no larger number falls below it, and whether the one after the first does.
//
// A plan (PlanOf) serves the six orders of the triangle, or the two of the pair, in rounds that are shuffled
// by the seed, so that none is served more than once oftener than another; of a round that is not full the
// odd glass is as often A as B, and as often at each place, as it can be. Each glass has a code of its own,
// which hangs on the seed and on what the tasting is of.
//
// # Limits
//
// Tasters answer independently, once each, and are forced to choose. Nothing is said of who has no
// preference. A difference that was not found is not a proof that there is none: the power says
// how often a difference of a size would have been missed.
package tasting
