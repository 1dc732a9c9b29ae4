// Package houserules answers the rules of a competition or a bar, as somebody typed them in from the
// paper where they stand, line by line: the drink keeps it, fails it, or nobody can tell.
//
// # Model
//
// A line passes when hardly a doubt is left (the first rung of data/claim_verdicts.csv: 95 of 100
// draws, whatever is unknown), fails when hardly a doubt is left that it does not hold, or what it
// forbids is there; all else cannot be told, and the line says what would settle it.
//
// An ingredient is every food that a file pours: through components, in steps that take it out again,
// what a step brings by itself (melted ice), on top without being eaten. It is a forbidden one if it
// bears the name (its own, or what stands before its first comma) or has the code; a name that is a
// substance is any food that is hardly anything else (data/limits.csv). It may be one, and cannot be
// told, if the name stands within its own, if it borrows its figures from one, if it shares the name
// of a forbidden code, or if it is an own food of which neither a kind nor a lender is told. So is a
// name that no core food bears: whoever wrote it may have meant something else. What is smelled
// (aroma) and what a technique names (treat) is asked too.
//
// A kind is a food group that has all its words, as claims have it.
//
// A constituent is forbidden in a serving, as it is drunk: it is there if a food that holds more than
// a trace has it; a trace, or less than could be found, cannot be told; else the claim "no more than
// zero" decides, with every unknown at its most.
//
// An allergen fails if it is declared under any of the drink's rules, passes only where every food is
// assessed and none has it, and is no promise to a guest even then. Limits are claims (package claims).
// Servings, temperature and minutes are held against what the file states, the volume against its draws.
//
// # Limits
//
// The words are the reader's: whether the paper says so, and what its jury takes it to mean, nobody here
// knows. A food is what it is called; the ingredient list of a bought food is not read. A garnish that
// is not eaten counts as an ingredient and not for constituents. The volume is that of the liquid by its
// density: no foam, no ice. What is handed over is only named with the command that prints it.
package houserules
