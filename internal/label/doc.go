// Package label prints the nutrition declaration of a drink, the card, under
// one set of rules: eu (Regulation (EU) No 1169/2011), uk (the same as retained, and its
// own texts), us (21 CFR 101.9), anz (Standard 1.2.8 of the Food Standards Code of Australia
// and New Zealand), ca (Food and Drug Regulations of Canada, B.01.401), codex (CXG 2-1985).
//
// # Model
//
// All rules are data, and a further jurisdiction is rows alone: data/card_rules.csv (head,
// basis, columns, how a serving is written, units of energy), data/card_rows.csv (rows, their
// order, their sums), data/energy_factors.csv, data/card_rounding.csv (bands of rounding),
// data/daily_values.csv (reference intakes and daily values), data/card_texts.csv and
// data/reference_amounts.csv. Rules may be like others: uk has the rows of eu. Each row of these
// names its legal reference and how well it is known: verified (an official text was read),
// secondary (a copy or a quotation of it), unverified (neither). A row of a card has the weakest
// status of all that it rests on; what is unverified is printed with a dagger, and every
// unverified cell of the rules is listed beside the card (Card.Unverified).
//
// A row is a sum of constituents, each in the unit of the row; "NA*2.5" is salt from sodium.
// Per 100 ml is the serving times 100/ml and never a rounded value times anything: every
// printed figure is rounded once, halves up, to a step or to so many significant figures, or
// is a text of the rules ("<0.5", "less than 1"). A band may have conditions: the strength in
// % vol (the steps of the TTB for US drinks with alcohol), an amount, or that another row prints
// 0. What is no liquid is declared per 100 g.
//
// Carbohydrate of us and ca is by difference,
//
//	mass − water − protein − fat − ash − alcohol − carbon dioxide
//
// of what the tables publish (package composition), where water, protein, fat and ash are all
// known, else what is known of it; it is no less than the rows of its parts. Elsewhere it is what
// can be used by the body (polyols included in eu, uk and codex), organic acids and fibre not;
// carbohydrate by difference that nobody has told apart counts as usable.
//
// Energy, in each of its units by that unit's own factors:
//
//	E = Σ factor · (amount − amounts of its parts that have factors of their own)
//
// or, where the rules convert, in one unit and times or by theirs: kcal = kJ/4.18 in anz, kJ =
// kcal · 4.184 in ca. A factor stands for a constituent and everything below it in the
// vocabulary: in eu, polyols count 10 kJ/g and the erythritol among them 0. Calories of us follow
// method (C) of 101.9(c)(1)(i). A polyol without a factor counts nothing, and the energy is at
// least what is printed.
//
// No parent is below its known parts: what is known of a part is known of its whole. An amount
// of which nothing is known is printed "not determined" and never 0. An amount of which a part
// is unknown is printed as far as it is known, with a note that says "at least" and how much it
// can be at most, the end of the interval; no note where the missing part does not change what
// is printed. "0" and the small-amount texts say something of all that is in the drink: with a
// part unknown they stand only where the end of the interval prints the same. A row may be
// bounded by what holds it: no trans fat without fat.
//
// The short table of us and ca is allowed from so many insignificant rows on (Card.Shape); the
// rows that it leaves out are marked, not dropped.
//
// Beside a figure per 100 ml or 100 g the working says what an authority accepts around it
// (data/tolerances.csv), and a uk card has a note that grades the drink by the levels for the
// front of a pack (data/colours.csv), each colour with its word and the limit that decides it.
//
// # Limits
//
// Claims are not computed here: the list is empty. "Contains negligible amounts of" (eu), salt
// "due to naturally occurring sodium" beyond a note, dual columns, the per cent of protein,
// type sizes and the formats for small packs are not covered. "Less than" texts of anz are not
// printed: they are allowed, and the rule was not read. Percentages of us are taken of the
// unrounded amount, which the rules leave open. Fibre's solubility is not known, so us calories
// take all of it as soluble, the most that method (C) gives. Zeros of ca that hang on a claim
// "free of" are judged by the serving alone. Protein is the table's own factor times nitrogen
// where the table does not give 6.25. Vitamins and minerals of eu are what the tables have:
// vitamin A as retinol activity, E as alpha-tocopherol, niacin without what tryptophan makes;
// they are voluntary and stand only where nothing is missing that would print otherwise. What
// alcohol nobody has stated counts for no condition. Tolerances change no figure: the card
// prints what was calculated, and whoever sells the drink answers for it. Those of salt, sodium
// and vitamins, and the limits by the portion of fat, saturates and salt, were not seen in print
// and are left out.
package label
