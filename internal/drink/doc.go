// Package drink is the drink file: its types, a parser that knows where
// everything stands, and a JSON Schema for editors. It computes nothing.
//
// # Model
//
// A drink file is YAML and is read as tokens, not as decoded values, so that
// every fault has file:line:col and a code stays as written: 0304, 1e3, yes and
// null are text where text is meant. All faults of a file, and of the pantry
// files it uses, are reported at once; lines, steps and entries at fault are
// left out of the Drink and the rest is kept, and what they name is kept beside it
// (mention.go). What foods exist, what the words of a pack mean and whether a volume
// has a density is the business of the caller, who adds faults of their own to the
// same list. What categories, split and ferment call constituents, in words or by
// tagname, is read here (constituents.go).
//
// The grammar is one table of keys (grammar.go, component.go, ownfood.go, coffee.go,
// line.go, steps_grammar.go, measured.go, intent.go, houserules.go). The parser reads by it and
// Schema shows it. It reads in four layers: the text of a file and where everything stands
// in it (file.go), the values of its nodes (node.go), the parts of a drink (reader, in
// parse.go), and what only the whole tells (whole.go).
//
// # Grammar
//
// The top of a file; drink, serves and build are needed, the rest is optional:
//
//	use           shelves by path, as seen from the drink; they hold foods and components only
//	drink         name
//	serves        whole number, 1 to 10,000
//	glass         volume per serving
//	vessel        of what the glass, mug or cup is: copper
//	at            temperature, −40 to 130 °C
//	takes         time: how long it takes before guests or judges
//	stands        {room, ice, melts, loses}: how a glass stands once it is poured
//	scale         mass: the resolution of the bar's scale
//	rules         list of eu uk us ca anz codex
//	compare-with  a component
//	foods         code → name, group, fill, per, density, declared, values, coffee, allergens, source
//	  coffee      species, process, roast {loss | called, colour, scale}, origin, altitude, lab {values, source}
//	components    name → ingredients, steps, measured, keeps, vessel, note
//	build         lines
//	finish        steps; beside a step may stand takes: 40 s, of all glasses together, or takes: 10 s a glass, and hands
//	garnish       lines; none is eaten unless it says eaten: true
//	aroma         list of {of, treatment: expressed | flamed | infused, note}; smelled, never calculated
//	may-contain   list of allergens
//	categories    name → list of constituents
//	claims        list of {say, check}; check is an expression of package claim
//	targets       list of expressions
//	vary          list of {of, from, to}
//	measured      readings of the drink as it is served
//	note          a remark
//
// A line is "AMOUNT FOOD", "COUNT FOOD" or {food, amount | portion and count, as, fill, note,
// eaten}. FOOD is everything after the amount and an "of", verbatim: a component by its exact
// name, table:code, or the exact name of a food.
//
//	AMOUNT   = NUMBER UNIT [ "±" NUMBER UNIT [ "sd" ] ]     units of data/units.csv
//	COUNT    = NUMBER [ WORD ]     words of data/portion_words.csv; none only before table:code
//	NUMBER   = digits with a decimal point, or a fraction: 1/2, ½, 1 1/2
//	QUANTITY = [ "-" ] NUMBER [ UNIT ] [ "±" NUMBER [ UNIT ] [ "sd" ] ]
//	FIGURE   = QUANTITY | "<" QUANTITY | "trace" | "unknown"     g mg µg kJ kcal
//	KEEPS    = NUMBER ("days" | "day" | "h") [ "at" NUMBER "°C" ]
//
// That is the form in which sipsum writes. It reads more: units in any usual case and form
// (data/unit_words.csv), "+-" and "+/-" for ±, a range "36-40 g" or "36 g to 40 g" as the ± that
// it is, a unit that stands once for both numbers, "± 5 %" of an amount as a share of it; keys, steps
// and the table of table:code in any letters. What is not safe to guess (1,000 g; 2 oz; 12,5 g) is
// refused with the line as it should be: an error of package unit carries the text (unit.Misread), and
// what stands before it in the file, the dash or the key, comes from misread.go.
//
// A range or a standard deviation beyond the figure itself is refused, as is a reading
// that no drink can have (data/limits.csv). "p %" as the amount of a line is a share
// of the mass of the other lines of the same list, at least one of which has a mass, a
// volume or a portion. Quantities are temperatures (°C), shares (%), densities (g/ml),
// dissolved gas (g/l), titratable acidity (g/l, g/100 g, g/100 ml, %), base (mol/l),
// times (s min h day days, kept in minutes); °Brix and pH have no unit.
//
// A step is a map with one key:
//
//	reduce {to | by, at, for}   strain, press {collect, through}   curdle {collect, by, at}
//	clarify {by, with, collect, at}                                convert {starch, to}
//	brew {out strength yield, at, for}   steep {ingredients, at, for, collect}
//	add: line or lines          chill {melt | from to ice}         dilute {to | brix}
//	cool {to}
//	invert {share | ph at for}  hydrolyse {lactose}                ferment {before, after, at, for, because}
//	caramelise {loss, to}       concentrate {by, to}               wash {fat, collect}
//	heat {code | at for}        split {keep, collect, because}     carbonate {bottle charge at | left}
//	adjust {ph | ta | brix, with: a food or component, whose dose is calculated}
//	treat: a technique in words, which changes no figure
//	measured {mass brix tds ph ta titration base acid sample density abv}
//
// brew takes two of its three. titration is [[0 ml, 3.42], [2 ml, 3.70], …], at
// least three points from 0 ml on, with base (or acid, and then the pH falls), and with sample unless it is usual.
// ferment has under after what 100 g of the pot hold afterwards, stated, and what was read then
// (brix abv ph ta density), and under before any reading; readings that do not say what was
// made stand beside the step as a measured of their own. Each step has an example, one line as
// it stands under steps: (Steps).
//
// at and for of brew, convert and concentrate are told and change no figure (told.go); a step that
// lacks something is shown as it should be, with what was given of it (step_line.go).
//
// Words of the kitchen (boil, filter, infuse, shake, agar, smoke; data/step_words.csv) are read
// as their step, and the sheet says so where that matters. One whose parameters do not give
// what the step needs is answered with the line as it should be. The schema shows the steps
// alone.
//
// # Slips
//
// YAML has its own reading of some lines of a recipe. Each of these is recognised
// and answered with how to write it:
//
//   - "20 g foo: bar" becomes a map, "[18 g coffee, roasted]" two entries,
//     "{food: a, b}" a key without a value, "[12,5 g rum]" two numbers;
//   - "20 g rum #2" loses its tail. A comment that begins with a letter or a
//     digit right after the # is taken for a cut text; "# text", with a space,
//     stays a comment;
//   - a line without its dash runs on into the line above;
//   - a number stands alone where a line, a food or a check was meant;
//   - "serves:1" and "-36 g espresso" want a space (glued.go), "espresso: 36 g" the amount first
//     (counted.go), and a word of the trade its key (elsewhere.go).
//
// A line that YAML cannot read at all is reported and, if it stands alone, set
// aside, so that the faults of the others show; what then seems missing is not
// reported. Inside { } a colon without a space after it belongs to the text, as
// in YAML 1.2 (rejoin.go).
//
// # House rules
//
// A file of house rules (houserules.go) is read in the same way; rules is needed:
//
//	rules         where they stand, and when they were read
//	forbidden     ingredients, kinds, constituents, allergens: a list each
//	limits        list of {say, check}
//	servings, volume, temperature, minutes
//	              WITHIN
//	hand-over     list of what is handed over on paper
//
//	WITHIN = END " to " END | "at least" END | ("at most" | "up to") END | END
//
// END alone is a number of servings, or the most minutes.
//
// # Paths
//
// Each line and step has a path that does not depend on its position: owner,
// name, and the occurrence if the list has the name more than once: "cherry
// syrup/core:citric-acid", "cherry syrup/strain~2", "build/espresso",
// "cherry syrup/add/core:salt". "/" and "~" in names are written "~s" and "~t".
// The random draws of an amount are seeded by it, so a line that is added or
// moved changes no other line's draws. Among lines with the same food in one
// list, the order counts.
//
// # Limits
//
// All limits are rows of data/limits.csv with their reasons: file 256 KiB, name 200
// runes, prose 2,000 runes, depth 32, 100,000 tokens, 2,000 keys in a map, 100 empty
// lines in a row, 20 pantries, 1,000 ingredient lines as written (the drink and its
// pantries together), amounts up to ten tonnes. Written out, every component replaced
// by its ingredients wherever it is used, a drink comes to at most 100 lines, and
// its lines, components, steps and readings together to no more than can be
// calculated in 3 s and 500 MB (size.go). Beyond either it is refused before any
// food is looked up. All categories together name at most 250 constituents.
//
// No anchors, aliases, tags, merge keys, complex keys, directives or second
// documents; no control characters, no marks that reorder text (UAX #9), no tabs
// in the indentation. A text block (| or >) is read as one line.
//
// Names are compared byte by byte: an accent written as a letter and a mark does
// not equal the letter with the accent. Two that only case and spaces tell apart are
// an error. A file under use: that holds anything but foods and components is refused
// without showing any of it; of one that does, a message may quote what is wrong.
// No-break, thin and other such spaces are read as
// spaces everywhere; zero-width characters and soft hyphens are refused, but for the joiners
// between the letters of scripts that need them. The text of a food that " # " has cut, with a space after the
// #, cannot be told from a line with a comment. Expressions in claims and targets
// are kept verbatim and not checked here (package claim has their grammar). The schema checks the form of values
// and keys; what goes together only the parser knows.
package drink
