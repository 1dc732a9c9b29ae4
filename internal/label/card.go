package label

import (
	"fmt"
	"slices"
	"strings"

	"sipsum/internal/fail"
)

// Card is a nutrition declaration.
type Card struct {
	Rules          string
	Title          string // as the rules want it
	Percents       string // head of the column of percentages; a statement explains its *
	Basis          string // "per 100 ml", "per 100 g" or "per serving"
	ServingG       float64
	ServingMl      float64
	ServingsLine   string   // how much a serving is, in the words of the rules
	Columns        []string // the bases, in the order in which the rules print them
	Shape          string   // Vertical or Simplified, of rules that have a short table
	Rows           []Row
	NotSignificant []string // labels of the rows that a simplified table leaves out
	Statements     []Text   // that the rules want beside the card; the first explains the percentages
	Claims         []Claim
	Notes          []Note
	Unverified     []Open // cells of the rules that are to be read in the official text
}

// Row is one line of a card.
type Row struct {
	Key        string
	Label      string
	Indent     int
	Tag        string
	Line       string // the whole line where the rules prescribe its words
	Per100ml   *Cell
	Per100g    *Cell
	Serving    *Cell
	Source     string // the legal reference of the row
	Status     string // the weakest of all that its figures rest on: Verified, Secondary or Unverified
	FromMemory bool   // Unverified: print †
	Incomplete bool   // a note says what is missing of it
	Unknown    bool   // what it prints is no figure; a card for guests leaves it out and says so
	LeftOut    bool   // the simplified table is without it
}

// tellable is how much more than is known may be there before a figure is only a lower limit:
// our own bound, the fifth that an authority accepts of a declared amount (data/tolerances.csv).
const tellable = 1.2

// Open reports whether what a row prints is no more than a lower limit: who does not read the
// notes of the card must not take it for the figure.
func (r *Row) Open() bool {
	c := r.Serving
	switch {
	case r.Unknown || c == nil || c.Value == nil:
		return true
	case !r.Incomplete:
		return false
	}
	return c.Most == nil || *c.Most > tellable**c.Value
}

// Spans reports whether an interval goes so far beyond its figure that a row which prints the figure
// says more than is known.
func Spans(low, figure, high float64) bool {
	return high > tellable*figure || low*tellable < figure
}

// Cell is one figure of a row.
type Cell struct {
	Value      *float64 // unrounded, of the known part; nil = unknown
	Kcal       *float64 // of energy, where Value is kJ
	Most       *float64 // the end of the interval with what is unknown at its most, where that is more
	Printed    string   // as the rules print it
	Reference  string   // % of the reference intake
	DailyValue string
}

// Text is a statement with the rule that asks for it.
type Text struct {
	Text       string
	Source     string
	Status     string
	FromMemory bool
}

// Claim is a nutrition claim and whether the rules allow it (package nutritionclaim).
type Claim struct {
	Claim      string
	Allowed    bool
	Why        string // the deciding number with its unit and limit
	Short      string // the same in a few words
	Verdict    string // in words: more than yes and no
	Near       bool   // not allowed, and not far from it
	Implied    bool   // allowed, and a claim that says more is allowed too
	Disclosure string // to print with it
	Status     string // of its legal reference: "verified", "secondary" or "unverified"
	Source     string
}

// Note is something to know before the card is used: kind "scope", "incomplete",
// "unknown", "stated" or "levels".
type Note struct {
	Kind       string
	Row        string
	Text       string
	Source     string
	Status     string
	FromMemory bool
}

// The bases of a column.
const (
	PerServing = "per serving"
	Per100ml   = "per 100 ml"
	Per100g    = "per 100 g"
)

// Make prints the card of a drink. Unknown rules are an error with exit code 2.
func Make(rules string, f Facts) (Card, error) {
	r, basis, err := prepare(rules, f)
	if err != nil {
		return Card{}, err
	}
	return r.card(rules, basis, f.closed()), nil
}

// card makes the card of facts that are closed.
func (r *ruleset) card(rules, basis string, f Facts) Card {
	c := Card{
		Rules: rules, Title: r.title, Percents: r.percents, Basis: basis, ServingG: f.ServingG, ServingMl: f.ServingMl, Columns: r.columnsOf(basis),
		Rows: []Row{}, Statements: []Text{}, Claims: []Claim{}, Notes: []Note{}, Unverified: r.open,
	}
	c.ServingsLine = r.fill(r.serving, &c, f)
	shape, out := r.shape(f)
	c.Shape = shape
	for _, l := range r.lines {
		row, note, ok := r.row(l, basis, f)
		if !ok {
			continue
		}
		if slices.ContainsFunc(out, func(o line) bool { return o.key == l.key }) {
			row.LeftOut, c.NotSignificant = true, append(c.NotSignificant, l.label)
		}
		c.Rows = append(c.Rows, row)
		if row.Incomplete {
			c.Notes = append(c.Notes, note)
		}
	}
	if note, ok := r.levels(rules, f); ok {
		c.Notes = append(c.Notes, note)
	}
	r.addTexts(&c, f)
	return c
}

// row makes a row of a card, with what is to be said of it; ok false if it does not stand on
// the card.
func (r *ruleset) row(l line, basis string, f Facts) (row Row, note Note, ok bool) {
	serving, first := r.both(l, f, basis)
	if !first.wanted(l, r) {
		return Row{}, Note{}, false
	}
	row = Row{Key: l.key, Label: l.label, Indent: l.indent, Tag: string(l.tag), Source: l.source, Serving: serving.cell(l)}
	row.Status, row.Unknown = worst(append(serving.sources(), first.sources()...)), !serving.number || !first.number
	row.FromMemory = row.Status == Unverified
	if l.template != "" && serving.number {
		row.Line = strings.ReplaceAll(l.template, "{}", serving.text)
	}
	switch basis {
	case Per100ml:
		row.Per100ml = first.cell(l)
	case Per100g:
		row.Per100g = first.cell(l)
	}
	note, row.Incomplete = serving.note(l)
	return row, note, true
}

// columnsOf gives the columns of a card in the order of its rules.
func (r *ruleset) columnsOf(basis string) []string {
	var list []string
	for _, c := range r.columns {
		if c == "serving" {
			list = append(list, PerServing)
		} else {
			list = append(list, basis)
		}
	}
	return list
}

// On gives the cell of a row on a basis; nil if the card has no such column.
func (r *Row) On(basis string) *Cell {
	switch basis {
	case Per100ml:
		return r.Per100ml
	case Per100g:
		return r.Per100g
	}
	return r.Serving
}

// Check reports what stands against a card under some rules: unknown rules, or a drink
// without a serving. If nothing does, Make and Explain give no error.
func Check(rules string, f Facts) error {
	_, _, err := prepare(rules, f)
	return err
}

// prepare finds the rules and the basis that they ask for beside the serving.
func prepare(rules string, f Facts) (*ruleset, string, error) {
	r := rulesets()[rules]
	if r == nil {
		return nil, "", fail.New(fail.Wrong, fmt.Sprintf("no card rules %q", rules), "use one of: "+strings.Join(Rules(), ", "))
	}
	basis, err := r.basis(f)
	return r, basis, err
}

func (r *ruleset) basis(f Facts) (string, error) {
	switch {
	case f.ServingG <= 0:
		return "", fail.New(fail.Wrong, "a card needs a serving of some mass", "put something into the build")
	case r.byServing:
		return PerServing, nil
	case f.ServingMl > 0:
		return Per100ml, nil
	}
	return Per100g, nil
}
