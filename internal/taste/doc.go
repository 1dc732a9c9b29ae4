// Package taste puts numbers beside the tastes of a liquid: sucrose equivalents, acid in two
// ways, doses over published thresholds, viscosity, gas. They support a design. They do not
// taste.
//
// # Model
//
// Sweet is the sum over sugars, polyols and sweeteners of grams times a factor, in grams of
// sucrose per 100 ml. A factor is a range (data/taste_sweetness.csv): half of the draws lie
// between its low end and its value, half between that and its high end, one draw for each
// substance. Where equally sweet solutions are published by strength (column at, grams of
// sucrose in 100 g) the factor is that at the sweetness of the whole, which is found by
// repetition: glucose and lactose gain on sucrose as a drink gets sweeter. Claims ask for it with the
// unknown apart (sweetrange.go): sugars of which nobody has said which they are between the least and the most
// sweet of those that the food may hold of them, each up to its bound, and nothing of them drawn.
//
// Sour is told twice, since the field disputes what a tongue follows:
//
//	molecules = Σ [acids with a protonated carboxyl group] + [H⁺]   mmol/l
//	titratable = base to pH 8.1                                     mmol/l
//
// The first is the rule of Da Conceicao Neta et al. 2007 (J Food Sci 72:S352): every organic
// acid with a carboxyl group that has its proton is as sour as another by the mole, and H⁺ as
// sour as that. The second is what a burette reads. Acids never add in grams.
//
// Bitter, astringent, salty and sparkling are doses, compound by compound: milligrams in a
// litre over the published thresholds (data/taste_thresholds.csv), from the highest threshold
// to the lowest. No two compounds are summed, for no rule is published. Where no threshold was
// seen in print, that is said.
//
// Body is the viscosity of water at the serving temperature, and what as much sucrose as the sugars,
// the polyols and, by a share, the acids in it adds (Génotelle's equation, data/taste_constants.csv);
// beside it fat and protein. What else thickens makes it "at least".
//
// What is unknown is not zero: its bound (package composition) is in UpTo, and never in the mean.
// The least difference that a judge notices is a range of shares that moves with the mixture
// (data/taste_differences.csv), and no constant.
//
// # Limits
//
// Thresholds are of panels, in water or in one drink; an interaction (sugar hides bitter and
// sour, salt hides bitter, acid hides sweet) is published in words and not applied. Factors of
// strong sweeteners are of faint sweetness and fall as it grows. H⁺ is an activity. Phosphoric
// acid has no carboxyl group and counts only in the second sourness. Grams in 100 ml stand for
// per cent. Temperature moves the viscosity alone. Fat, protein, fibre, starch and gums thicken by
// no rule here. Smell is not calculated at all.
package taste
