package prep

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// BurntSugarAcids is the acid that burnt sugar brings, a food like any other. Which
// acids they are is not known.
func BurntSugarAcids() *food.Food {
	f := &food.Food{
		ID:       food.ID{Code: "acids of burnt sugar"},
		Names:    []food.Name{{Language: "en", Text: "Acids of burnt sugar"}},
		Group:    "acid",
		Chemical: true,
		Density:  food.Density{GramsPerMl: food.None, SD: food.None},
		Edible:   food.None,
		Marks:    []food.Mark{{Kind: "allergen", Source: "made of sugar by heat"}},
	}
	f.Values = []food.Value{{
		Constituent: constituent.OrganicAcids, Amount: 100, SD: 0, Low: food.None, High: food.None, Limit: food.None,
		State: estimate.Calculated, Source: "caramel-acid", Ref: "data/kinetics.csv",
	}}
	return f
}

// Burning is what caramelise needs: the share of every sugar that burns (a column) and
// BurntSugarAcids, entered and drawn.
type Burning struct {
	Loss    []float64
	Acids   *food.Profile
	PerGram ledger.Cells
}

// Caramelise turns a share of every sugar into what it becomes when it burns. The mass
// stays, as carbohydrate without a name (CHOCDF-other): what caramel consists of cannot
// be calculated, so that any of it may be available carbohydrate, and any of it fibre. A small part of it is acid,
//
//	acid = burnt · middle · (most/least)^(u − ½)     u rectangular from 0 to 1
//
// as citric acid by equivalents (data/kinetics.csv, caramel acid: what lies between the
// least and the most is equally likely on a scale of powers). It stands in a row of its own, so that nothing is said of the acids of the sugar's food; its formic, acetic
// and lactic acid are unknown, each up to all of it. Where little burns little changes.
//
// Sulphur dioxide may boil off as if as much water did as sugar burns.
//
// Limits: the water and the vapours that leave are not known and stay in the mass, unless
// the pot was weighed afterwards (caramelise.to). Soda makes more acid than is counted here
// and binds it. The sugar that is left counts as unburnt and unsplit, so sucrose is the most
// that it can be; a note says what a simmer alone would split.
func Caramelise(pot *ledger.Pot, b Burning, f Factors) Outcome {
	of := make([][]float64, len(pot.Rows)) // grams of known sugar that burn
	all, unknown := make([]float64, pot.N), 0.0
	KeepAdded(pot, func() {
		for row := range pot.Rows {
			of[row] = pot.Of(row, constituent.Sugar)
			for d := range of[row] {
				of[row][d] *= b.Loss[d]
				all[d] += of[row][d]
			}
			unknown += unknownSugar(pot, row) * b.Loss[0]
		}
		for _, sugar := range constituent.Sums().Leaves(constituent.Sugar) {
			pot.React(ledger.Reaction{From: sugar.ID, Into: []ledger.Part{{ID: burnt, Grams: 1}}}, b.Loss)
		}
	})
	for row := range pot.Rows {
		unnamed(pot, row)
		for _, id := range []constituent.ID{constituent.Available, fibre} { // what of the caramel the body takes up nobody knows
			pot.Bounds(row)[constituent.Must(id).Order] += of[row][0]
		}
	}
	doubt(pot, sulphurDioxideKept(1-b.Loss[0]))
	acids := pot.Central(constituent.OrganicAcids)
	share := f.caramelAcid()
	grams := takeAcid(pot, of, share)
	pot.Pour(b.Acids, b.PerGram, grams, f.Path)
	bounds, most := pot.Bounds(len(pot.Rows)-1), kinetics()["caramel acid"].high
	for _, id := range burntAcids {
		bounds[constituent.Must(id).Order] = most * (all[0] + unknown)
	}
	bounds[constituent.Must(constituent.OrganicAcids).Order] = most * unknown

	var out Outcome
	out.note("%.3g g of sugar become caramel, whose parts are not known: they count as carbohydrate without a name", all[0])
	out.tellAcid(estimate.Summarise(grams), acids)
	return out
}

// caramelAcid draws the acid of a gram of burnt sugar.
func (f Factors) caramelAcid() []float64 {
	const half = 0.5
	acid := kinetics()["caramel acid"]
	col := f.draw("caramel acid", factor{half, 0, 1})
	for d, u := range col {
		col[d] = acid.value * math.Pow(acid.high/acid.low, u-half)
	}
	return col
}

// unknownSugar gives the most sugar that is unknown of a row: its bound, else all that
// the row weighs.
func unknownSugar(pot *ledger.Pot, row int) float64 {
	if b := pot.Bounds(row)[constituent.Must(constituent.Sugar).Order]; !math.IsNaN(b) {
		return b
	}
	return pot.CentralOf(row, constituent.Mass)
}

// takeAcid takes the acid out of the burnt sugar of each row and gives how much it is.
func takeAcid(pot *ledger.Pot, of [][]float64, share []float64) []float64 {
	grams, col := make([]float64, pot.N), pot.Columns.At(burnt)
	for row := range of {
		if !pot.Has(row, col) {
			continue
		}
		cell := pot.Write(row, col)
		for d, x := range of[row] {
			acid := max(x, 0) * share[d]
			cell[d] -= acid
			grams[d] += acid
		}
	}
	return grams
}

// tellAcid says how much acid was made, and that it matters where it may be more than a
// part of the acids that were there.
func (o *Outcome) tellAcid(made estimate.Summary, before float64) {
	const noticed = 0.05
	if made.High <= noticed*before {
		return
	}
	o.note("the acids that form are %.2g g (%.2g to %.2g g, as citric acid) beside the %.2g g in the pot: they lower the pH; read it", made.Mean, made.Low, made.High, before)
}

const fibre constituent.ID = "FIBTG"

// burnt is where burnt sugar goes; burntAcids are the acids that have been named of
// heated sugar (J Med Food 2011, 14:167: formic, lactic, levulinic) and of caramel.
var (
	burnt      = constituent.RestOf(constituent.Carbohydrate)
	burntAcids = []constituent.ID{"FORAC", "ACEAC", "LACAC"}
)

// unnamed drops the bound of a rest: rests have none, their mass is known or
// bounded under the total they belong to.
func unnamed(pot *ledger.Pot, row int) { pot.Bounds(row)[constituent.Must(burnt).Order] = 0 }
