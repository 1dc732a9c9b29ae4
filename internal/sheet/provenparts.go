package sheet

import (
	"fmt"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/figure"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/proof"
)

// parts are what brings a figure of a serving: through which pots, of which row, and which of its values
// the figure rests on.
func (p *proving) parts(f *composition.Figure) []proof.Part {
	var list []proof.Part
	for _, c := range f.Contributions {
		part := proof.Part{Through: c.Path, Food: c.Food, Name: c.Food, State: c.State.String(), Why: c.SourceNote}
		if c.Unknown {
			part.Most = number(c.Bound)
			part.Printed = "unknown"
			if part.Most != nil {
				part.Printed += ", at most " + figure.Shortened(c.Bound, figure.MostDigits) + " " + f.Unit
			}
		} else {
			part.Mean = number(c.Mean)
			part.Printed = figure.Shortened(c.Mean, figure.MostDigits) + " " + f.Unit
			if c.Share.Mean > 0 {
				part.Printed += ", " + figure.Percent(c.Share.Mean)
			}
		}
		if row := p.row(c.Food); row != nil {
			part.Name = row.Profile.Food.Name()
			part.Tags = tagsOf(f.Constituent, row.Profile.Food)
			if lender := row.Profile.Lender; len(part.Tags) == 0 && lender != nil {
				part.Lender, part.Tags = lender.ID.String(), tagsOf(f.Constituent, lender)
			}
		}
		part.At = p.written(c.Food)
		list = append(list, part)
	}
	return list
}

// row finds the row of a serving that is a food.
func (p *proving) row(id string) *ledger.Row {
	for i := range p.Assay.Serving.Rows {
		if row := &p.Assay.Serving.Rows[i]; row.Profile.Food.ID.String() == id {
			return row
		}
	}
	return nil
}

// tagsOf lists which values of a food stand behind a figure: its own, and else those of its parts.
func tagsOf(of *constituent.Constituent, f *food.Food) []string {
	if _, ok := f.Value(of.ID); ok {
		return []string{string(of.ID)}
	}
	var tags []string
	for _, leaf := range constituent.Sums().Leaves(of.ID) {
		if _, ok := f.Value(leaf.ID); ok {
			tags = append(tags, string(leaf.ID))
		}
	}
	return tags
}

// written says where the drink file describes a food; empty if a table does.
func (p *proving) written(id string) string {
	for _, o := range p.Assay.Drink.Foods {
		if food.Own+":"+o.Code == id {
			return fmt.Sprintf("%s:%d", o.Place.File, o.Place.Line)
		}
	}
	return ""
}
