// Package ingredientlist writes the list of ingredients of a drink: what it is made of, the most
// of it first, with what is declared of allergens emphasised.
//
// # Model
//
// Ingredients stand in descending order of what was weighed in (Regulation (EU) No 1169/2011,
// Article 18(1); 21 CFR 101.4(a)(1)), at central values. Water, melted ice and carbon dioxide
// stand by what is left of them when the component, or the drink, is made (Annex VII, part A, point
// 1): what boils off is no ingredient any more. A component is a compound ingredient, followed in
// brackets by its own ingredients in the same order (Annex VII, part E; 21 CFR 101.4(b)(2)).
// What is poured twice stands once. A garnish that is eaten is an ingredient like any other; one
// that is not is named apart, for it counts for the allergens.
//
// An allergen is emphasised by words that stand out without colour (Article 21(1)): the word of
// the class, or of the cereal or nut where the rules want it named, in the name of the ingredient
// or in brackets behind it. A renderer prints it in capitals or in bold.
//
// The rules of each jurisdiction are rows of data/ingredient_rules.csv with a status.
//
// # Limits
//
// Names are those of the tables and of the drink file; categories of additives ("acid: …"),
// generic names, percentages of what is highlighted and the liberties for herbs, spices and what
// is under 2 % or 5 % are for the designer. An own food stands by its name alone: what it is made
// of nobody has written. What a step takes out again has still been used, and stays listed. The
// list does not say that anything is absent.
package ingredientlist
