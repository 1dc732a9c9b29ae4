// Package afcd reads the workbooks of the Australian Food Composition Database of
// Food Standards Australia New Zealand.
//
// # Model
//
// The nutrients are a workbook with two sheets: all foods per 100 g, and those of
// them that have a specific gravity per 100 mL. Beside it may lie the other files
// of the release: food details, measures and recipes. Every sheet begins with a
// row that names its columns, the first of them "Public Food Key"; sheets are
// recognised by their columns, not by their names (but the one per 100 mL) or those
// of their files. The second row of the sheet per 100 mL says "per 100 mL" and is
// passed over. The names of columns hold line breaks and end with their unit: g, mg,
// ug, kJ, %T (share of all fatty acids), mg/gN (per gram of nitrogen).
// data/maps/afcd.csv maps the columns, data/maps/afcd_columns.csv has their
// headings, units and last digits; a column that is not there is an error. The index
// names the edition, else the name of the file does.
//
// Figures are per 100 g edible part. An empty cell is no value. A figure above zero
// is calculated: the workbook does not tell which figures were analysed, borrowed
// or calculated from recipes. What a 0 means is judged by column (zero and found_in
// in data/maps/afcd_columns.csv):
//
//	below       too little to print: less than half of the last digit
//	assumed     0, where the constituent does not belong: groups that are not in
//	            found_in, or stand there after a "-" (caffeine in fruit, acids in
//	            water). The publisher fills these columns for every food.
//	calculated  0, a sum (added and free sugars)
//	unknown     fatty acids, if the food has fat and all three classes of fatty
//	            acids are printed as 0: a fat without any cannot be
//
// The last digit of a column is the coarsest in which a fifth of its figures above
// zero end, and not fewer than five: trailing zeros, which the workbook drops, make a
// tenth end one place earlier. For the acids it is 0.1 g, so that their 0 is less
// than 50 mg.
//
// The density is the ratio of the masses on the two sheets. Each column bounds it by
// its rounding: ρ lies in [(v − h)/(m + h), (v + h)/(m − h)] for a figure v per 100 mL
// and m per 100 g with half a last digit h. The range that the most columns share is
// taken, if nine tenths of them share it; the others are told in the note. The
// publisher's own specific gravity has two decimals, so the one in that range is the
// density, and the spread is that of the range and of the second decimal, both
// rectangular. The food details state it, if they are there. A density more than 5 %
// above that of the food's own water and solids is left out (canned fruit in a syrup
// of 1.39 g/ml that is three quarters water), and so is one 3 % below it of a food
// that is nearly all water (kombucha of 0.95).
//
// Food details give other names, the edible share ("80% (flesh and skin)"), and for
// the note derivation, factors of nitrogen and fat, description and samples; measures
// become portions; recipes are told in the note.
//
// # Energy
//
// Both columns of energy are kept under afcd: and never mapped. The publisher
// counts 16 kJ for a gram of sugars, 10 for citric and malic acid and none for
// tartaric acid: they are no check of what a label's rules give.
//
// # Source
//
// Food Standards Australia New Zealand (2022) Australian Food Composition Database,
// Release 2. The agency's data user licence is based on CC BY-SA 3.0 Australia: the
// table is loaded from the user's own copy; none of it is in this repository but
// single figures, each cited. No open address of the files is known:
// scripts/download names the agency's page.
//
// # Limits
//
// The names of the columns of food details are those of the agency's page about the
// files, read in an excerpt that breaks off after the sampling details; the files
// themselves, and the columns of measures and recipes, were not seen. They are found
// by words ("weight", "ingredient name"), and what is not found is left out. Groups
// are numbers; their names are in the food details alone. Two of 189 foods have one
// figure that disagrees about the density. Fluoride is kept apart: the unit printed
// cannot be right for all of its figures. The vitamin E of tahini (211 mg) rests on a
// gamma-tocopherol of 2110 mg and is given as printed. Acids are printed to 0.1 g, so
// a figure of 0.1 g is uncertain by half, which its spread has to hold; some figures
// cannot be (espresso with 290 mg caffeine in 100 g is another drink than most).
package afcd
