package prep

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// Reduce boils water off until the pot weighs to grams (a column), and with it what is as
// volatile (evaporating). It is an error to ask for more than there is, or for less than the
// dry matter; alcohol is none.
func Reduce(pot *ledger.Pot, to []float64, f Factors) (Outcome, error) {
	return evaporating{verb: "reduce", what: "of dry matter", alcohol: "alcohol boils off before the water"}.off(pot, to, f)
}

// reduce boils down, and splits the sucrose that the time and the heat of it split (boil.go).
func (a at) reduce(s *drink.Reduce) (Outcome, error) {
	to, mass := a.reduceTo(s), a.pot.Mass()
	gone := make([]float64, a.pot.N)
	for d := range gone {
		if mass[d] > 0 {
			gone[d] = min(max(1-to[d]/mass[d], 0), 1)
		}
	}
	hot, err := a.boiling(s.Boil, gone)
	if err != nil {
		return Outcome{}, err
	}
	out, err := Reduce(a.pot, to, a.Factors)
	if err != nil {
		return Outcome{}, err
	}
	a.splitHot(hot, &out)
	return out, nil
}

// reduceTo gives the mass to reduce to: stated, or by a share of the pot's.
func (a at) reduceTo(s *drink.Reduce) []float64 {
	if s.To != nil {
		return a.amount(s.To, "to")
	}
	by, to := a.share(s.By, "by"), a.pot.Mass()
	for d := range to {
		to[d] *= 1 - by[d]
	}
	return to
}

// evaporation keeps everything but a share of the water, of the alcohol, of the gas and of
// the acetic acid.
type evaporation struct{ water, alcohol, gas, acid []float64 }

func (m *evaporation) Share(row ledger.Row, c *constituent.Constituent, share []float64) {
	switch {
	case c.ID == constituent.Water:
		copy(share, m.water)
	case c.ID == constituent.Alcohol:
		copy(share, m.alcohol)
	case c.ID == acetic:
		copy(share, m.acid)
	case c.ID == constituent.CarbonDioxide && !isWater(row):
		copy(share, m.gas)
	default:
		estimate.Fill(share, 1)
	}
}

func isWater(row ledger.Row) bool { return row.Profile.Food.Facts().Water }

// sulphurDioxide is the rider that boils off as far as it is free.
const sulphurDioxide constituent.ID = "SO2"

// sulphurDioxideKept is the share that stays, whatever is bound, when a share of the water
// has stayed: all of it goes as a gas does from boiling water (Rayleigh),
//
//	least = water^volatility
func sulphurDioxideKept(water float64) float64 {
	return math.Pow(water, kinetics()["volatility SO2"].value)
}

// doubt makes unknown what may have boiled off of the sulphur dioxide.
func doubt(pot *ledger.Pot, least float64) { doubtOf(pot, sulphurDioxide, least) }

// doubtOf makes unknown what may have gone of a rider: at least a share stays, and all of it
// may, up to the end of its interval.
func doubtOf(pot *ledger.Pot, id constituent.ID, least float64) {
	col := pot.Columns.At(id)
	for row := range pot.Rows {
		if col < 0 || !pot.Has(row, col) {
			continue
		}
		cell := pot.Write(row, col)
		pot.Bounds(row)[constituent.Must(id).Order] += estimate.Summarise(cell).High * (1 - least)
		for d := range cell {
			cell[d] *= least
		}
		ledger.Change(pot, row)
	}
}

// gasOf gives the column of the known carbon dioxide of a pot that boils off.
func gasOf(pot *ledger.Pot) []float64 {
	gas := make([]float64, pot.N)
	for row, r := range pot.Rows {
		if isWater(r) {
			continue
		}
		for d, x := range pot.Of(row, constituent.CarbonDioxide) {
			gas[d] += x
		}
	}
	return gas
}
