package label

import (
	"fmt"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/source"
)

// Card is a nutrition declaration.
type Card struct {
	Rules      string
	Title      string // as the rules want it
	Percents   string // head of the column of percentages; a statement explains its *
	Basis      string // "per 100 ml", "per 100 g" or "per serving"
	ServingG   float64
	ServingMl  float64
	Columns    []string // the bases, in the order in which the rules print them
	Rows       []Row
	Statements []Text // that the rules want beside the card
	Claims     []Claim
	Notes      []Note
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
	FromMemory bool // rests on a rule entered from memory: print †
	Unknown    bool // what it prints is no figure; a card for guests leaves it out and says so
}

// Cell is one figure of a row.
type Cell struct {
	Value      *float64 // unrounded, of the known part; nil = unknown
	Kcal       *float64 // of energy, where Value is kJ
	Most       *float64 // with the bounds of what is unknown, where that is more
	Printed    string   // as the rules print it
	Reference  string   // % of the reference intake
	DailyValue string
}

// Text is a statement with the rule that asks for it.
type Text struct {
	Text       string
	Source     string
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

// Note is something to know before the card is used: kind "scope", "incomplete"
// or "unknown".
type Note struct {
	Kind       string
	Row        string
	Text       string
	Source     string
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
	c := Card{Rules: rules, Title: r.title, Percents: r.percents, Basis: basis, ServingG: f.ServingG, ServingMl: f.ServingMl, Columns: columnsOf(basis), Rows: []Row{}, Statements: []Text{}, Claims: []Claim{}, Notes: []Note{}}
	for _, l := range r.lines {
		serving := r.column(l, f, PerServing)
		if !serving.wanted(l) {
			continue
		}
		row := Row{Key: l.key, Label: l.label, Indent: l.indent, Tag: string(l.tag), Serving: serving.cell(l)}
		row.FromMemory, row.Unknown = anyFromMemory(serving.sources()), !serving.number
		if l.template != "" && serving.number {
			row.Line = strings.ReplaceAll(l.template, "{}", serving.text)
		}
		switch basis {
		case Per100ml:
			row.Per100ml = r.column(l, f, basis).cell(l)
		case Per100g:
			row.Per100g = r.column(l, f, basis).cell(l)
		}
		c.Rows = append(c.Rows, row)
		if note, ok := serving.note(l); ok {
			c.Notes = append(c.Notes, note)
		}
	}
	r.addTexts(&c, f)
	return c, nil
}

// columnsOf gives the columns of a card whose rules ask for a basis: that one first.
func columnsOf(basis string) []string {
	if basis == PerServing {
		return []string{basis}
	}
	return []string{basis, PerServing}
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
	if r == nil || len(r.lines) == 0 {
		return nil, "", fail.New(fail.Wrong, fmt.Sprintf("no card rules %q", rules), "use one of: "+strings.Join(Rules(), ", "))
	}
	if f.ServingG <= 0 {
		return nil, "", fail.New(fail.Wrong, "a card needs a serving of some mass", "put something into the build")
	}
	switch {
	case r.byServing:
		return r, PerServing, nil
	case f.ServingMl > 0:
		return r, Per100ml, nil
	}
	return r, Per100g, nil
}

func (r *ruleset) addTexts(c *Card, f Facts) {
	alcohol := f.Serving[constituent.Alcohol]
	for _, t := range r.texts {
		holds := t.when == "always" ||
			t.when == "alcohol" && alcohol.Known && alcohol.Mean > 0 ||
			t.when == "no volume" && f.ServingMl <= 0
		if !holds {
			continue
		}
		memory := source.IsFromMemory(t.source)
		if t.kind == "statement" {
			c.Statements = append(c.Statements, Text{Text: t.text, Source: t.source, FromMemory: memory})
		} else {
			c.Notes = append(c.Notes, Note{Kind: "scope", Text: t.text, Source: t.source, FromMemory: memory})
		}
	}
}

func anyFromMemory(sources []string) bool {
	for _, s := range sources {
		if source.IsFromMemory(s) {
			return true
		}
	}
	return false
}
