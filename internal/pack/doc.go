// Package pack is what a figure of a pack means: which constituent a word of a nutrition
// declaration stands for under each set of rules, to what it is rounded, and how far it may
// be off before an authority objects.
//
// # Model
//
// A row of data/card_rows.csv names the constituent: carbohydrate is what is available (eu, uk,
// anz, codex; polyols belong to it in the eu) or what the others leave of the mass, fibre
// included (us, ca); salt is sodium × 2.5. A figure is rounded to the step of
// data/card_rounding.csv where it lies on that grid, else to its own last digit.
//
// A 0 is rounded too, and not none: it is less than the limit that a band of data/card_rounding.csv
// lets be printed so (0.5 g of fat in 100 g by the eu, 0.5 g in a serving by the us), and where rules
// name none, than half of their step or of the last digit that is written. It earns no claim that
// this limit does not bear out.
//
// data/tolerances.csv is what the content may be around a declared figure: both ways (eu, uk),
// or one way only, at least 80 % of what is good to have and at most 120 % of what is not (us,
// ca). It is widened by the rounding, as the guidance of the Commission does.
//
// # From a tolerance to a spread
//
// A tolerance is a limit of the law and no standard deviation. How many packs keep within it has
// been looked at: of 1010 foods of Canadian shops 83.3 % did (data/declared.csv). The spread is
// that of a normal distribution with this share inside,
//
//	sd = (less + more) / 2 / z,   z = √2 · erf⁻¹(0.833) = 1.38
//
// a little wider than a rectangle over the tolerance would have it (√3). Less is no more than
// the figure itself, and more no more than a food can hold. The side that no rule limits is as
// wide as the class of the food has it: nothing is known there but that.
//
// # Limits
//
// The survey found all that lay outside above the limit; the spread is taken for both sides
// alike. What is added to a food must be there to 100 % in the us and in ca: nobody says what was
// added, so that it counts as what is there by nature. Of what a set of rules says nothing (salt,
// vitamins and minerals of the eu, whose table nobody of us has read; all of anz and codex) the
// class stands. A figure that was brought from a serving to 100 g before it was written keeps the
// limits of what is written: write per: as the pack has it.
package pack
