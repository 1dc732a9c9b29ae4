package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// Reduce boils water off until the pot weighs to grams (a column). It is an
// error to ask for more than there is, or for less than the dry matter.
//
// Alcohol stays by a share between the least and the most that the USDA
// retention factors give for simmering and stirring in (codes 5002 to 5009).
func Reduce(pot *ledger.Pot, to []float64, f Factors) (Outcome, error) {
	mass, water, alcohol := pot.Mass(), pot.Total(constituent.Water), pot.Total(constituent.Alcohol)
	if to[0] > mass[0] {
		return Outcome{}, impossible("reduce to %.4g g: the pot holds only %.4g g", to[0], mass[0])
	}
	// guard: not below the dry matter
	if dry := mass[0] - water[0]; to[0] < dry {
		return Outcome{}, impossible("reduce to %.4g g: there are %.4g g of dry matter", to[0], dry)
	}
	var out Outcome
	ethanol := []float64(nil)
	if alcohol[0] > 0 {
		low, high := alcoholKept()
		ethanol = f.Column("alcohol", estimate.Input{Central: (low + high) / 2, Shape: estimate.Uniform, Low: low, High: high})
		out.Notes = append(out.Notes, "alcohol boils off with the water: between the USDA retention factors for stirring in and for long simmering")
	}
	m := &evaporation{water: make([]float64, pot.N), alcohol: ethanol}
	for d := range m.water {
		leave := mass[d] - to[d]
		if ethanol != nil {
			leave -= alcohol[d] * (1 - ethanol[d])
		}
		if water[d] > 0 {
			m.water[d] = min(max(1-leave/water[d], 0), 1)
		}
	}
	out.Lost = pot.Apply(m)
	return out, nil
}

// evaporation keeps everything but a share of the water and of the alcohol.
type evaporation struct{ water, alcohol []float64 }

func (m *evaporation) Share(_ ledger.Row, c *constituent.Constituent, share []float64) {
	switch {
	case c.ID == constituent.Water:
		copy(share, m.water)
	case c.ID == constituent.Alcohol && m.alcohol != nil:
		copy(share, m.alcohol)
	default:
		fill(share, 1)
	}
}
