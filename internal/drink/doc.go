// Package drink is the drink file: its types, a parser that knows where
// everything stands, and a JSON Schema for editors. It computes nothing.
//
// # Model
//
// A drink file is YAML and is read as tokens, not as decoded values, so that
// every fault has file:line:col and a code stays as written: 0304, 1e3, yes and
// null are text where text is meant. All faults of a file, and of the pantry
// files it uses, are reported at once; lines, steps and entries at fault are
// left out of the Drink and the rest is kept. What foods exist, what a
// constituent is called and whether a volume has a density is the business of
// the caller, who adds faults of their own to the same list.
//
// The grammar is one table of keys (grammar.go, component.go, ownfood.go, coffee.go,
// line.go, steps_grammar.go, measured.go, intent.go). The parser reads by it and
// Schema shows it. It reads in four layers: the text of a file and where everything stands
// in it (file.go), the values of its nodes (node.go), the parts of a drink (reader, in
// parse.go), and what only the whole tells (whole.go).
//
// # Grammar
//
// The top of a file; drink, serves and build are needed, the rest is optional:
//
//	use           pantry files by path, as seen from the drink; they hold foods and components only
//	drink         name
//	serves        whole number, 1 to 10,000
//	glass         volume per serving
//	vessel        of what the glass, mug or cup is: copper
//	at            temperature, −40 to 130 °C
//	scale         mass: the resolution of the bar's scale
//	rules         list of eu uk us ca anz codex
//	compare-with  a component
//	foods         code → name, group, fill, per, density, declared, values, coffee, allergens, source
//	  coffee      species, process, roast {loss | called, colour, scale}, origin, altitude, lab {values, source}
//	components    name → ingredients, steps, measured, keeps, vessel
//	build         lines
//	finish        steps
//	garnish       lines; none is eaten unless it says eaten: true
//	may-contain   list of allergens
//	categories    name → list of constituents
//	claims        list of {say, check}; check is an expression of package claim
//	targets       list of expressions
//	vary          list of {of, from, to}
//
// A line is "AMOUNT FOOD" or {food, amount | portion and count, as, fill, note,
// eaten}. FOOD is everything after the amount, verbatim: a component by its exact
// name, table:code, or the exact name of a food.
//
//	AMOUNT   = NUMBER UNIT [ "±" NUMBER UNIT [ "sd" ] ]     units of data/units.csv
//	NUMBER   = digits with a decimal point, or a fraction 1/2
//	QUANTITY = [ "-" ] NUMBER [ UNIT ] [ "±" NUMBER [ UNIT ] [ "sd" ] ]
//	FIGURE   = QUANTITY | "<" QUANTITY | "trace" | "unknown"     g mg µg kJ kcal
//	KEEPS    = NUMBER ("days" | "day" | "h") [ "at" NUMBER "°C" ]
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
//	reduce {to | by}            strain, press {collect, through}   curdle {collect, by, at}
//	brew {out strength yield}   steep {ingredients, at, for, collect}
//	add: line or lines          chill {melt}                       dilute {to | brix}
//	invert {share | ph at for}  hydrolyse {lactose}                ferment {after, at, for, because}
//	caramelise {loss}           concentrate {by, to}               wash {fat, collect}
//	heat {code}                 split {keep, collect, because}     carbonate {bottle charge at | left}
//	treat: a technique in words, which changes no figure
//	measured {mass brix tds ph ta titration base acid sample density abv}
//
// brew takes two of its three. titration is [[0 ml, 3.42], [2 ml, 3.70], …], at
// least three points from 0 ml on, with base (or acid, and then the pH falls), and with sample unless it is usual.
// ferment states under after what 100 g of the pot hold afterwards.
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
//   - a number stands alone where a line, a food or a check was meant.
//
// A line that YAML cannot read at all is reported and, if it stands alone, set
// aside, so that the faults of the others show; what then seems missing is not
// reported. Inside { } a colon without a space after it belongs to the text, as
// in YAML 1.2 (rejoin.go).
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
// not equal the letter with the accent. No-break spaces in lines and names are
// read as spaces. The text of a food that " # " has cut, with a space after the
// #, cannot be told from a line with a comment. Expressions in claims and targets
// are kept verbatim and not checked here (package claim has their grammar). The schema checks the form of values
// and keys; what goes together only the parser knows.
package drink
