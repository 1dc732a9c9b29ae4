// Package meter tells how far an instrument of the bar is off, from what it showed of what is known.
//
// # Model
//
// An instrument that was checked showed shown_ij of the standard known_i, in repeats j: it was off by
// d_ij = shown_ij − known_i. Of two standards or more the ordinary least squares of JCGM 100:2008, H.3 give
//
//	off(x) = y1 + y2·(x − x̄),   s² = Σ(d − off)²/(N − p),   u²(y1) = s²/N,   u²(y2) = s²/Σ(x − x̄)²
//
// with p = 2; of one standard alone p = 1. That is the evaluation of Type A. What is known of the kind counts beside it
// (data/meter_kinds.csv): its scatter as so many repeats more (data/meter_rules.csv), pooled, and a slope that is none
// within its standard deviation, joined with the one that was found as two measurements of one thing are. As s has ν
// degrees of freedom, the standard uncertainties are widened by t95(ν)/t95(∞) of Student (JCGM 100:2008, G.3), so that a
// normal of that width has their 90 % interval. Beside it stand, of Type B, what each standard may be off by
// (rectangular within its ±, JCGM 100:2008, 4.3.7) and half of a step of the display, each shared by all repeats of the
// standard and carried into y1 and y2 by the same least squares (5.1.2).
//
// An instrument that nobody is said to have checked is right on average, within what its kind has. A reading was
// taken some days after the check: what it is off by has walked since, at random,
//
//	u(walk) = zero of its kind / √3 · √(days / due)
//
// so that an instrument that was never looked at again is trusted the less. A reading without a day counts as taken
// when the next check is due. A single reading scatters by s, never by less than a step of the display /√12.
//
// All readings that one instrument took share what it is off by (Run): one draw of y1, y2 and the walk. Where it
// took several the pots tell it too (find.go): with the innovations v = z + ε − off − h of all its readings,
//
//	θ′ = θ + cov(θ, H)·(cov(H) + R)⁻¹·v,   H = h + off,   θ = (y1, y2, walk)
//
// draw by draw. In a linear model with normal spreads each pot that is then conditioned on z + ε − off(θ′) is as in the
// joint update of all pots and instruments; whatever weight a pot gives its reading, its draws err as its central value does.
//
// What is out of tolerance (data/meter_limits.csv) is said before its reading is believed, and is read wider: as far as it
// was found to be off itself, since what has left its tolerance need not have stayed where it was; an electrode beyond its
// slope or its zero as one that nobody adjusted (data/burette.csv).
//
// # Limits
//
// What an instrument is off by is a line. The standards' errors are independent of each other. A
// junction of a pH electrode that meets a drink otherwise than a buffer is in no figure. A thermometer is checked and told,
// and no reading of a drink is taken with it yet. A reading that contradicts its recipe says little of its instrument:
// beyond two standard deviations it counts as so much coarser.
package meter
