package across

import (
	"context"
	"errors"
	"maps"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
	"sipsum/internal/unit"
)

// Foods gives foods of tables that are loaded.
type Foods interface {
	Food(ctx context.Context, id food.ID) (*food.Food, error)
}

// Stay is a food of the drink that a table has no row for.
type Stay struct {
	Food *food.Food
	Why  string // there is a row, and why it is not taken; empty: there is none
}

// Taken is a food of the drink in the place of which a row of the table stands.
type Taken struct {
	Core *food.Food
	By   *food.Food
	Match
}

// Asked is a table that is loaded: under a name that somebody gave it, of a format that the crosswalk knows.
type Asked struct{ ID, Format, Edition string }

// Table is the drink by the table of one agency.
type Table struct {
	Asked
	Assay *assay.Assay // nil: it cannot be made so
	Why   string       // it cannot
	Taken []Taken
	Stays []Stay

	lines map[string]lineOf // of the foods that are taken, by path
}

type lineOf struct{ core, by *food.Profile }

// Across is a drink by the core table and by those of agencies.
type Across struct {
	Core    *assay.Assay
	Tables  []Table
	Figures []Figure
	Most    *Disagreement // of the figures that are worth a word; nil: no two tables tell one
	Unlike  []Unlike      // what of the figures is not defined alike
}

// Run calculates a drink by each table. Errors are *fail.Error.
func Run(ctx context.Context, r *recipe.Recipe, foods Foods, tables []Asked, ens estimate.Ensemble, ids []constituent.ID) (*Across, error) {
	want := assay.Want{Figures: ids, Intervals: true, Draws: true}
	core, err := assay.Prepare(r, ens).Run(ctx, nil, want)
	if err != nil {
		return nil, err
	}
	a := &Across{Core: core}
	for _, asked := range tables {
		t := Table{Asked: asked, lines: map[string]lineOf{}}
		other, err := t.take(ctx, r, foods)
		if err != nil {
			return nil, err
		}
		t.Assay, err = assay.Prepare(other, ens).Run(ctx, nil, want)
		var fault *fail.Error
		switch {
		case err == nil:
		case fail.ExitCode(err) == fail.Wrong && errors.As(err, &fault):
			t.Why = fault.Faults[0].What
		default:
			return nil, err
		}
		a.Tables = append(a.Tables, t)
	}
	for _, id := range ids {
		a.Figures = append(a.Figures, a.figure(constituent.Must(id)))
	}
	a.Unlike = a.unlike()
	a.Most = a.most()
	return a, nil
}

// take gives a recipe with the foods that a table has in the place of those of the drink.
func (t *Table) take(ctx context.Context, r *recipe.Recipe, foods Foods) (*recipe.Recipe, error) {
	by := map[*food.Profile]*food.Profile{}
	for _, p := range r.Profiles {
		if _, brought := r.Brought[p.Food.ID]; brought || p == r.Water { // nobody named it
			continue
		}
		next, err := t.row(ctx, p, foods)
		if err != nil {
			return nil, err
		}
		if next != nil {
			by[p] = next
		}
	}
	other := *r
	other.Called = maps.Clone(r.Called)
	other.Profiles = slices.Clone(r.Profiles)
	for i, p := range r.Profiles {
		if next := by[p]; next != nil {
			other.Profiles[i] = next
			other.Called[recipe.PartID{Food: next.Food.ID}] = r.Called[recipe.PartID{Food: p.Food.ID}]
		}
	}
	other.Lines = maps.Clone(r.Lines)
	for path, in := range r.Lines {
		if next := by[in.Profile]; in.Profile != nil && next != nil {
			t.lines[path] = lineOf{in.Profile, next}
			in.Profile = next
			other.Lines[path] = in
		}
	}
	return &other, nil
}

// row gives the row of a table that is taken for a food; nil if the food stays.
func (t *Table) row(ctx context.Context, p *food.Profile, foods Foods) (*food.Profile, error) {
	stay := func(why string) (*food.Profile, error) {
		t.Stays = append(t.Stays, Stay{p.Food, why})
		return nil, nil
	}
	m, ok := MatchOf(p.Food.ID.Code, t.Format)
	m.ID.Table = t.ID
	switch {
	case p.Food.ID.Table != coreTable || !ok:
		return stay("")
	case p.Lender != nil:
		return stay("the drink lends it figures of " + p.Lender.ID.String())
	case !m.likeEnough():
		return stay("its row " + m.ID.String() + " is a stand-in: " + m.Reason)
	}
	f, err := foods.Food(ctx, m.ID)
	switch {
	case fail.ExitCode(err) == fail.Wrong: // an edition, or an excerpt, without it
		return stay("the release that is loaded has no row " + m.ID.Code)
	case err != nil:
		return nil, err
	}
	for _, v := range f.Values {
		if what := food.Impossible(v, unit.LimitOf("rounding of a label", "share").High); what != "" {
			return stay("its row " + m.ID.String() + " has " + what + ", and that cannot be")
		}
	}
	t.Taken = append(t.Taken, Taken{p.Food, f, m})
	return food.Enter(f, nil), nil
}

const coreTable = "core"
