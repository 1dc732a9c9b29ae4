// Package nutritionclaim says which nutrition claims the rules of a card allow a drink to
// bear: "low sugars", "source of potassium", "sodium free".
//
// # Model
//
// All rules are data. A row of data/nutrition_claims.csv is one condition of one claim; a
// claim is allowed when all of its conditions hold. Rows that share a number in way belong
// together, and one way is enough; rows of the claim "*" are conditions of every claim. A
// condition is of
//
//   - a figure: a sum of constituents (no more than the constituent in within) in 100 ml, in
//     100 g, in 100 kcal, in a serving, or in the reference amount (RACC), below, at most or
//     at least a limit. With the unit % it is a share of the amount in against; on the basis
//     energy a share of the drink's energy, against kcal per gram;
//   - the strength of the drink;
//   - its ingredients: data/claim_foods.csv lists by group, by words of the name, or by what
//     was done to it, which foods stand against the condition (yes), which the maker has to
//     judge (ask), and which only have to be marked (named).
//
// {} stands for every vitamin and mineral of data/claim_references.csv.
//
// A figure is judged before it is rounded, and at the end of its interval with every unknown
// part at its most (where the condition is "at least": with every unknown part at nothing):
//
//	allowed          the condition holds at that end
//	not allowed yet  it holds at the central value, not at that end: a measurement decides
//	cannot be decided  an unknown part decides, or the maker must
//	not allowed      it does not hold at the central value
//
// A share of energy is taken between the ends that help and hurt. Where a drink may be of
// several categories with reference amounts of their own (data/claim_servings.csv), a
// claim must hold at each of them. Why names the deciding number with its unit and limit.
//
// # Limits
//
// Rules that compare with another food (reduced, light, more, increased) need that food and
// are left out, as are natural(ly), the fatty acids omega-3 and unsaturated, protein of us
// (its digestibility is not known), the exception for semi-skimmed milk and that for natural
// mineral waters, amounts of 50 g for small reference amounts, and the amounts of fat,
// saturated fat, cholesterol and sodium above which us wants a disclosure beside any claim
// (21 CFR 101.13(h)): read it there. Health claims are no nutrition claims.
//
// The ends of a sum are the sums of the ends, and those of a share lie as far apart as the
// ends of both: wider than the drink is, so that a claim may have to wait for a measurement
// that it would pass. Vitamins count as far as the vocabulary has them, never more than the
// rules count. Which foods sweeten, and which fruits are dried, is read from groups and
// English names; what a name does not say is asked or missed, and so is an enzyme that makes
// sugars in the drink. That eu's figures in kJ and in kcal must both be kept is our own
// reading, the stricter one. Whether a claim may stand on a menu is for the authority: claims
// bind packed and advertised food first. Rules without rows (ca, anz, codex) judge nothing,
// and say so.
package nutritionclaim
