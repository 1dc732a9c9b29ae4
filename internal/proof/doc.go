// Package proof is the proof pack of a drink: all that its figures were calculated from, and the
// figures, in one value that is written to a file and checked where no table is.
//
// # Model
//
// A pack (sipsum.proof/1) states what a run was given (Inputs) and what it gave (Figures):
//
//	schema, program        the form of the pack, and what made it
//	short                  the first 12 hexadecimal digits of the digest that a card bears (Short)
//	drink, files           the name; the text of the drink file and of its shelves, as written
//	seed, draws, rules     of the ensemble; the rules of the cards
//	unproven               claims of the drink that need a whole table, and are left out
//	names                  what the drink calls a row that is not its code: a name, a code in other letters
//	tables                 the releases of the rows: edition, publisher, licence, and the hash of the release
//	rows                   each row of a table that was used: its values per 100 g with state, spread, source
//	works                  what the values cite
//	constants              each table of the program, with its hash; those with figures and rules whole
//	figures                as printed and as calculated, each with what brings it
//	sha256                 the seal
//
// A row of a table whose licence forbids handing it on (data/licence_deny.csv) is withheld: its
// place and its digest stand there, and who checks the pack needs the table.
//
// # Digests
//
// A digest of a value is the SHA-256 (FIPS 180-4) of its JSON as package encoding/json writes it
// without spaces: members in the order of the types here, numbers with the fewest digits that come back the
// same (IEEE 754 binary64). Nothing in it is a map. The short digest is that of the program, the texts, seed and
// draws, and the digests of the rows in the order of their codes; the rules and the form of output
// are no part of it. The seal of a file is the SHA-256 of its bytes with the seal's own digits as
// zeros; in a page it stands at the end, and seals all of the page.
//
// # Checking
//
// Read trusts nothing: a file beyond data/size_limits.csv is not read, members that are not known
// are refused, a row holds only what a row can, and nothing in a pack is run or opened. A check calculates
// the figures anew from the inputs alone and compares (Compare): what is printed letter by letter, what is stored
// to 1e-9 of itself, which is far below what any spread bears and above what the order of
// additions does on another processor. Who alters a row and seals the pack anew is found by that. A
// constant that differs from the program's is named by file and line (Constants.Differ).
//
// # Limits
//
// A pack proves that figures follow from what is in it, by this program; not that a table is right,
// nor who made the pack: it bears no signature. Another program's version is told, and then only what is printed is
// compared. The constants of a pack are compared with the program's and not calculated with. Claims that rank a food among its table are left
// out. A row keeps the table, its release and its code; the line of the publisher's file is not kept.
package proof
