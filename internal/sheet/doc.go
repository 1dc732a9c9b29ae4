// Package sheet is the one model of everything printable about a drink:
// the assay, the evidence, the cards, the allergens and cautions, the tables
// that stand behind it. Every renderer (text, JSON, and later others) reads this
// model and adds nothing but form.
//
// # Limits
//
// A sheet is complete when it is built: renderers calculate nothing. Claims are
// not part of it yet.
package sheet
