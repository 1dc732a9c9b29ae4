// Package claim decides whether the figures of a drink bear a sentence: it reads the expression
// that checks it, evaluates it over the draws, and finds the nearest world in which it is false.
//
// # Grammar
//
//	claim     = either .
//	either    = both { "or" both } .
//	both      = denied { "and" denied } .
//	denied    = "not" denied | condition .
//	condition = contains
//	          | sum order sum { order sum }                 chained: 1 g <= serving(SUGAR) < 5 g
//	          | sum "between" sum "and" sum                 ends included
//	          | "(" either ")" .
//	order     = "<" | "<=" | ">" | ">=" | "≤" | "≥" .
//	sum       = product { ( "+" | "-" ) product } .
//	product   = factor { ( "*" | "/" ) factor } .
//	factor    = [ "-" ] ( number | figure | "(" sum ")" ) .
//	number    = digits [ "." digits ] [ unit ] .
//	unit      = "g" | "kg" | "mg" | "µg" | "ml" | "cl" | "l" | "kJ" | "kcal" | "%" | "% vol" | "°Bx"
//	          | mass "/" ( "l" | "ml" | "100 ml" ) .
//	figure    = "serving(" TAG ")" | "per100g(" TAG ")" | "per100ml(" TAG ")"
//	          | "component(" part "," TAG ")" | "share(" TAG "," part ")" | "ratio(" TAG "," TAG ")"
//	          | "mass()" | "volume()" | "ph()" | "ta()" | "brix()" | "brix_acid()" | "alcohol_abv()"
//	          | "sweetness()" | "food_rank(" TAG "," food ")" .
//	contains  = "contains(" text ")" .
//	part      = [ "component" | "ingredient" | "kind" ] text .
//	food      = text .                                    of a table: its code, or its whole name
//	text      = '"' characters '"' .
//	TAG       = a tagname, or the words of a constituent: MALAC, malic acid, "malic acid" .
//
// A mass is grams whatever the unit of the table; per100g and per100ml are the amount in 100 g
// and in 100 ml; mass() and volume() are of a serving; ta() is titratable acidity as citric acid in g/l; brix() and ph() are compared
// with a number alone. sweetness() is the sucrose that makes a drink as sweet, and is compared with
// per cent or with a mass in a volume: 9 % are 9 g in 100 ml are 90 g/l. It is a measure of its own, and is not added to
// anything that is weighed or titrated. food_rank() is the place of a food among the foods of its table by what
// 100 g hold, 1 with the most; it is compared with a number alone. Unlike things are not compared or added: the parser says in what each side is.
//
// # Model
//
// Every figure is two columns (package estimate): with every unknown part at zero and with every
// one at its most. Arithmetic is that of intervals, draw by draw; share and ratio take the ends
// that help and hurt. A condition is then sure, possible or neither in each draw, and a verdict
// (verdict.go) has two probabilities: the share of draws in which it is sure, and in which it is
// possible. Where both say the same it is given, by the end that is nearer to a toss-up, so that it
// is never said more surely than the bounds allow; else it is unknown, and the one unknown without
// which the ends would agree is named. The limits between verdicts are rows of data/claim_verdicts.csv.
//
// The weakest link is the input whose draws go most with the margin by which the claim holds
// (largest squared correlation, more than the noise of the draws). Where a claim holds in all draws, or in none, and
// would if they spread twice as far (Beyond), none decides it.
//
// The nearest world (nearest.go) is x with the least (x − x₀)ᵀ Σ⁻¹ (x − x₀) for which the margin
// g(x) is no more than zero, each input within its range; Σ is the covariance of the draws. For a
// linear margin g₀ + aᵀ(x − x₀) and without a range that binds it is
//
//	x = x₀ − Σa · g₀ / (aᵀΣa)        at the distance  g₀ / √(aᵀΣa)
//
// (Hasofer and Lind 1974, J. Eng. Mech. Div. ASCE 100:111). Any other is made linear at the point
// last found and solved again (Rackwitz and Fiessler 1978, Comput. Struct. 9:489), and then walked
// out from x₀ until the margin itself says that the claim is false.
//
// A comparison of sums and ratios is a sum itself that is nothing or more where it holds (form.go): of what is
// asked less the limit times what it is of. Its terms add up when liquids are poured together.
//
// # Limits
//
// A figure that stands twice in an expression counts its unknown part twice: the ends lie no nearer
// than they should, and may lie further apart. contains() never denies: what nobody has declared is not known to be absent, so that
// "not contains" is unknown at best. The nearest world moves a few inputs, one point of several may
// be as near, and the iteration finds a near point, not provably the nearest, of a margin that bends
// back. A claim has at most 60 terms (data/limits.csv).
package claim
