package assaytest

import (
	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Poured is so much of a food of which everything is known but what is said not to be: what
// it does not hold it is known not to hold. So a figure of it can be worked out on paper.
type Poured struct {
	Code     string
	Grams    float64
	SD       float64                    // of Grams
	Holds    map[constituent.ID]float64 // g in a gram
	Spread   map[constituent.ID]float64 // standard deviation of what it holds, over it
	Most     map[constituent.ID]float64 // unknown: the most that a gram may hold; NaN where nothing bounds it
	Values   []food.Value               // what else its table prints
	Group    string
	Chemical bool // a pure substance
}

// profile is the food as it enters the ledger.
func (p Poured) profile() *food.Profile {
	f := &food.Food{ID: food.ID{Table: "own", Code: p.Code}, Group: p.Group, Values: p.Values, Edible: food.None, Density: food.Density{GramsPerMl: food.None}, Chemical: p.Chemical}
	profile := &food.Profile{Food: f, AddedShare: food.None}
	for _, c := range constituent.All() {
		cell := food.Cell{Known: true, State: estimate.Measured, Bound: food.None, From: f.ID, Row: f.ID.String(), Source: "test:" + string(c.ID)}
		cell.Amount = p.Holds[c.ID]
		cell.SD = cell.Amount * p.Spread[c.ID]
		if most, unknown := p.Most[c.ID]; unknown {
			cell.Known, cell.State, cell.Bound = false, estimate.Unknown, most
		}
		profile.Cells = append(profile.Cells, cell)
	}
	return profile
}

// Pot pours foods together, and gives the laboratory that solves the pot.
func Pot(draws int, list ...Poured) (*ledger.Pot, *acidity.Laboratory) {
	var profiles []*food.Profile
	for _, p := range list {
		profiles = append(profiles, p.profile())
	}
	ens := estimate.Ensemble{Seed: 1, N: draws + 1}
	drawer := ledger.NewDrawer(ens, ledger.NewColumns(profiles))
	pot := drawer.NewPot()
	for i, p := range list {
		grams := ens.Column(estimate.Input{Central: p.Grams, Shape: estimate.Lognormal, SD: p.SD, Stream: ens.Stream("amount", p.Code)})
		pot.Pour(profiles[i], drawer.PerGram(profiles[i]), grams, p.Code)
	}
	return pot, acidity.NewLaboratory(ens, drawer, nil, nil)
}
