// Package jsonreport writes the documents of sipsum's JSON contract, one schema
// name each ("sipsum.assay/1"): additions are allowed, renames are not.
//
// Units are those of the vocabulary. An unknown is {"mean": null, "state":
// "unknown"}; there is no NaN and no infinity. mean, sd, low and high are of the
// known part; with_bounds is the mean with the unknown parts at their most and is
// null where one has no bound; coverage = mean / with_bounds. up_to stands where
// something is unknown: the upper end, high, with the unknown parts at their most.
//
// A constituent that every food of the drink is known to lack, by analysis or by rule, is
// {"mean": 0, …, "coverage": 1}; one that does not stand in a document is tracked by no food,
// or by some only, and is not zero.
//
// A figure of the chemistry that is withheld has mean null and says why; low and
// high still bound it where they are known.
//
// Every form is written here, and no domain type has one: a field that the domain gets is
// printed when somebody decides so.
//
// Under several sets of rules sipsum.card/1 and sipsum.allergens/1 hold the first card or
// declaration as their own keys, and all of them, in the order asked for and each in the
// same form, as "cards" and as "allergens": the lists of sipsum.sheet/1. "further" is all
// but the first, for who reads that already. "workings" has one list for each of "cards". "yields" of
// sipsum.sheet/1 is what becomes of the mass of each pot, the build last: in, step by step, out.
//
// "ingredients" says which foods bring a constituent, and through which pots: "share" of what is
// known with its low and high end, and "worst", the share in its worst draw with all that the
// others do not know at its most. sipsum.brief/1 has all that a brief has to tell, whether it fits
// a screen or not; the numbers of "say" are those of its sentences.
//
// "foams" stands in sipsum.assay/1 and sipsum.sheet/1 where a step foams: "charge", "dissolved" and "head" are
// grams of gas, closed and at rest, "pressure" is in bar above that of the air, "liquid" and "volume" in ml of all
// that is foamed, as liquid and as foam, "overrun" and "liquid_share" in per cent. Each of "conditions" has its
// "verdict": within, outside, either, not known, or no published range found. What nobody stated is not there.
// "filled" of a serving is its volume with those bubbles; all other figures are by mass or by the liquid.
//
// "minutes" of sipsum.assay/1, and of "assay" in sipsum.sheet/1, is how a glass goes while it stands: each of "axes" has a
// point for each of "at_min", minutes after the pour; one that is withheld says why, and the axis what to "write" in the
// drink file. "clock" counts from the first step of finish that says how long it takes. "rates" are those by which the glass
// was followed, "stated" by the file or with their "source". "ten_minutes" of a brief is a sentence of it.
//
// "titrations" of sipsum.assay/1, and of "assay" in sipsum.sheet/1, has an entry for each titration: what its curve tells
// "of" a component (null: the drink). Of each of "acids" are "expected", by the recipe alone, "read", by the curve beside
// it, and "used", what the drink is calculated with: within the acid's own range ("beyond_its_range" where it was held there), or
// spanning recipe and curve where the curve "contradicts". "serving" is what of it comes through the component. "not_told_apart" are acids of
// which the curve tells the "sum", with the least "correlation" between two of them. "without_a_name" and "strong_ions" are in
// mmol of charge; "zero" is the pH that the meter shows too much at pH 7, "base" what sample and base bring over what is
// written, "scatter" how many times further the points lie from the curve than they should. Where "told" is false the points are too few.
//
// "titrations" of sipsum.next/1 is what a titration that nobody has begun would tell by its "plan", or a further point of one. Each of
// "kits" has "half" of the 90 % interval of each of "acids", in their order, in g in 100 g: by a "burette", a "syringe", a syringe whose base was "proved"
// on a weighed acid, or its "own". "next" is the next point, "then_ml" those worth reading after it,
// "narrows" by how much of themselves the intervals shrink with all of them, in their mean.
//
// "house_rules" stands in sipsum.evidence/1, in "evidence" of sipsum.sheet/1 and in sipsum.brief/1 where a
// file of house rules was read: "rules" says where they stand, and each of "lines" has its "key" of the
// file, the "rule" in words, its "verdict" (pass, fails, cannot tell), "why", and what would "settle" it.
//
// sipsum.speech/1 has a speech for each register that is asked for: "lines" in the order in which they
// are spoken, "words" as they are spoken, "seconds_slow" at the slow end of the rates of "pace". A line
// with a figure has what is said ("said_low" to "said_high") beside what it was rounded from ("low" to
// "high", with all that is unknown at its most). "left_out" is for time, "not_spoken" says why;
// "sources" are numbered from 1.
//
// sipsum.compare/1 sets "b" against "a", two drinks of one ensemble. Each figure of "constituents"
// (of a serving), "mass", "volume" and "chemistry" has those of both and "difference", B less A draw
// by draw, in their unit: mean, sd, low and high of what is known; "least" and "most", the ends with
// what nobody knows at its worst, null where nothing bounds it; "sign" is 1 or -1 where all between
// them is above or below zero, and 0 where nobody can tell; "open" are the foods of which something is
// unknown that does not go out, "mostly_by" is what brings most. Of "sweetness" and "sourness" the
// shares are of A's figure, and "notice" says whether a judge may notice it. "words" is what of it is
// worth a word, "file" what the two files say otherwise, "a" and "b" as written (neither: a step without
// words that only one of them has). "allergens" are the classes that stand otherwise, "cautions_only" the
// cautions of one alone, under "a" and "b".
//
// sipsum.across/1 is one drink by the tables of several agencies. Of each table "taken" are the rows that
// stand for foods of the drink, "not_in_it" the foods that stay. A figure has "core", the central figures
// between which the tables lie that tell it ("low", "high"), and "by": "standing" is told, in part, not in
// this table, as core (no row that is taken brings any) or not made. "value" is null where a table has none.
//
// compare-with may name several components: "compare_with" is the first, of which sentences speak, and
// "compare_with_also" are the others in the order of the file; "alone_also" of a figure of a brief has
// one entry for each of them, null where there is nothing to say.
//
// sipsum.batch/1 has the pots in the order of making; "exact" is without rounding and "rounded" what the
// scale shows, both in "unit" and of one weighing: of a pot that is made as a whole of one brew or
// bottle, of "serve" of one serve or bottle. "weigh_to" is in g or ml. sipsum.tasting/1 is of no drink.
//
// Of many drinks (--format jsonl) each is a line: its sipsum.assay/1, as it is without that, or sipsum.error/1 where it
// is wrong or cannot be read; "file" of both is what was asked for, as a path from where the command stood (what of a name
// is no UTF-8 is written as U+FFFD), and "exit" of an error is what the code of the command would be for it alone.
//
// sipsum.menu/1 is JSON Lines: a drink a line. "leaf" of sipsum.card/1 is the card for guests or
// for the stage in the words that are printed.
//
// sipsum.fit/1 is a drink fitted to its targets. "moves" are amounts in the unit of their line, with the
// ends of their range and the step; "at_its" is "least" or "most" where one stands at an end. "targets"
// tell their first figure in the unit in which the target is written: "before", "after", "limit", and,
// where it is missed, "reaches", how near it comes with all others met, and "gives", by how much its limit
// would have to give; null where there is none. A probability is a share of the draws: low with what is
// unknown at the end that hurts, high at the other. Those of a ready target are of its "change", the share by
// which its figure moves, draw by draw beside the drink as it is written. "proven" says that no other amounts are better.
// "written" stands only where a file was.
//
// sipsum.omit/1 is a drink, "a", and its match without a part, "b", with the plan of a tasting of both:
// "serving" has A before and B after, "targets" what is held equal, "not_matched" what is not, and "differs" what nothing holds. "build" is
// what the file's serves take; "times_the_file" is how often that is made for the glasses. A verdict whose
// "more_than_chance" is false is no proof that the drinks are the same.
//
// "proof" of a document about a drink is the short digest of its proof pack (package proof, sipsum.proof/1).
// sipsum.verify/1 is the check of one: "broken" is what speaks against the file being the one that was written,
// "constants" what of the program's tables is not the pack's (which counts for nothing where "printed_only"
// says that another version made it), "moved" each figure with what the pack says and what follows, and
// "what" of it: printed, mean, sd, low, high, up_to, brought_by, missing or new.
//
// # Limits
//
// Numbers are written with the digits of the calculation, which say nothing of how sure a
// figure is: low and high do. Sentences are those of the sheet, in English.
package jsonreport
