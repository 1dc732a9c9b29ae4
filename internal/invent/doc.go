// Package invent finds what to put into a drink so that it meets its targets: which foods of some tables, at
// most three, how prepared, and how much of each.
//
// # Model
//
// The drink stays as it is written; what is found is poured on top of it. What may be poured is a row of
// data/poured.csv: the foods of a group, as they are, dissolved, or made into something first
// (data/preparations.csv), from so many grams of a serving to so many. What brings alcohol into a drink
// without any, or much sodium, is let in by a target that asks for it. The rows are our judgement of what bars
// do, and what keeps powders, reagents, raw vegetables and vinegar by the glass out.
//
// A condition is taken as a sum of what adds up when liquids are poured together (claim.Form): grams of a
// constituent, mass, volume, and of what the drink is as a solution the base that brings it to the pH of the
// limit, or to the end point of a titration. So a gram of each food is measured once, in a cup of water, with
// the draws that it has in every drink, and the rest is arithmetic (pool.go):
//
//	of the drink + grams × of a gram  ≥  0      in each draw, for each condition, with what nobody knows at
//	                                            the end that hurts
//
// A set of foods is an answer at amounts at which every condition holds at central values and all together in
// as many of the draws as a verdict calls likely (data/claim_verdicts.csv). Fewer foods come first, then what
// holds in more draws until hardly a doubt is left, then as few as do beside sugar, acids and water (but one at
// least), then what pours less. Sets of one and of two are all tried, on some ten amounts of each; of three
// those that do most for a condition where the tables are large. A set of which a part is an answer by itself
// is none, and so is one that pours two of a kind. The hand that pours is off as it is in the drink.
//
// An answer is then calculated as the drink that it makes (packages assay, fit): its chemistry is the
// drink's, amounts move on the steps of the bar's scale if it misses, and it is dropped if it still misses or
// holds less surely than likely. So is one that may kill by data/cautions.csv; what else may hurt is told
// beside it. Answers that are called alike count once, sugar, acids and water aside. The weakest figure of a
// design is that with the largest part in the variance of the condition that holds by the fewest standard
// deviations.
//
// A food of which nobody knows what decides is in no design. It is told apart where it would be one by itself
// at the end that helps, with what to read: first those of which the least part of what it could be would do.
//
// # Limits
//
// Nothing is said of taste, colour or price: a design meets figures, and a barista tries it. Activities of
// salts, gas and the protein of milk do not add up; what the sums miss by them is found where a design is
// calculated, and what they would have to be otherwise is not looked for. Steps that bring the whole drink to
// something (dilute to a mass, ice by heat) bend the sums likewise. Names that are alike are found by their
// words. No allergen is ever told to be absent.
package invent
