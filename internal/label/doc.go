// Package label prints the nutrition declaration of a drink, the card, under
// one set of rules: eu (Regulation (EU) No 1169/2011) or us (21 CFR 101.9).
//
// # Model
//
// All rules are data: data/card_rules.csv (head and basis), data/card_rows.csv (rows, their order, their sums),
// data/energy_factors.csv, data/card_rounding.csv (bands of rounding),
// data/daily_values.csv (reference intakes and daily values) and
// data/card_texts.csv. A row is a sum of constituents, each in the unit of the
// row; "NA*2.5" is salt from sodium. Per 100 ml is the serving times 100/ml and
// never a rounded value times anything: every printed figure is rounded once,
// halves up.
//
// Energy, in each of its units by that unit's own factors, never one from the
// other:
//
//	E = Σ factor · (amount − amounts of its parts that have factors of their own)
//
// A factor stands for a constituent and everything below it in the vocabulary:
// in eu, polyols count 10 kJ/g and the erythritol among them 0. Carbohydrate of
// eu is what can be used by the body, polyols included, organic acids and fibre
// not; carbohydrate by difference that nobody has told apart counts as usable.
// In us it is carbohydrate by difference, acids and fibre included, and calories
// follow method (C) of 101.9(c)(1)(i): 4 for carbohydrate less fibre and sugar
// alcohols, 2 for fibre, sugar alcohols by kind, 4 protein, 9 fat, 7 alcohol.
//
// An official card has no sign for "at least". An amount of which nothing is
// known is printed "unknown" ("not declared" for added sugars) and never 0. An
// amount of which a part is unknown is printed as far as it is known, with a
// note that says so and how much it can be at most; no note where the missing
// part does not change what is printed.
//
// A row that rests on a rule entered from memory says so (FromMemory); it is
// printed with a dagger and is to be read in the regulation before use.
//
// # Limits
//
// Claims are not computed: the list is empty. Vitamins and minerals of eu,
// mono- and polyunsaturates, starch, the shortened us format, "not a significant
// source of", salt "due to naturally occurring sodium", dual columns, serving
// reference amounts and type sizes are not covered. Percentages of us are taken
// of the unrounded amount. Fibre's solubility is not known, so us calories take
// all of it as soluble, the most that method (C) gives. Polyols whose kind is
// not known count as carbohydrate in us. Protein is the table's own factor times
// nitrogen where the table does not give 6.25. Tolerances are not applied: the
// card prints what was calculated, and whoever sells the drink answers for it.
package label
