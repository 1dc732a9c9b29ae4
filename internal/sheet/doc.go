// Package sheet is the one model of everything printable about a drink:
// the assay, the evidence, the cards, the allergens and cautions, the tables
// that stand behind it. Every renderer (text, JSON, and later others) reads this
// model and adds nothing but form.
//
// # Model
//
// What is decided here, once for all forms: which parts a page has and in which order
// (page.go); which constituents are shown, in which groups, by which words (groups.csv);
// what counts as unknown and what as none (known.go); what is listed, named or only counted
// (brought.go, questions.go); the lines of the summary; what must be read first
// (notices.go); what of a liquid is told and what is withheld, with the reading that would
// help (liquid.go); the sentences that keep somebody safe (sentences.go); and what a drink
// file asks in vain (check.go).
//
// Cards, their workings and the declarations are made when they are asked for, and once.
//
// # Limits
//
// Renderers calculate nothing. How a number is rounded, a line broken and a state named is
// theirs; so is the prose of a page that decides nothing. Claims are not part of a sheet yet.
package sheet
