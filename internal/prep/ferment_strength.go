package prep

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

// strong gives the grams of alcohol that a strength says were made, and the share of the
// sugars that went for it, by the yield of each draw. It is an error if all of the sugar makes
// less.
func (m *fermentRead) strong() (q, made []float64, err error) {
	for range 2 { // the density is that of the pot afterwards
		if q, made, err = m.byDensity(); err != nil {
			return nil, nil, err
		}
		tried, err := m.try(m.gone(q, made))
		if err != nil {
			return nil, nil, err
		}
		m.density = estimate.Ratio(tried.Mass(), m.Volume(tried), 1)
	}
	return m.byDensity()
}

// byDensity is strong with the density as it is known so far.
func (m *fermentRead) byDensity() (q, made []float64, err error) {
	q, made = make([]float64, m.pot.N), make([]float64, m.pot.N)
	p := productOf(constituent.Alcohol)
	for d := range q {
		holds := m.abv[d] / m.density[d] // grams in a gram of the pot afterwards, which is lighter by its gas
		made[d] = max(holds*m.mass[d]-m.alcohol[d], 0) / (1 + holds*p.gas)
		allowed := max(m.hexose[d]-m.acids[d], 0) / p.hexose
		if d == 0 && made[d] > allowed {
			return nil, nil, impossible("%.3g g of alcohol are read afterwards, and all the sugar of the pot makes %.3g g: that takes %.3g g more sugar than goes; read it before too, before: {brix: …}", made[d]+m.alcohol[d], allowed+m.alcohol[d], (made[d]-allowed)*p.hexose)
		}
		made[d] = min(made[d], allowed)
		if m.hexose[d] > 0 {
			q[d] = min((made[d]*p.hexose/m.share[d]+m.acids[d])/m.hexose[d], 1)
		}
	}
	return q, made, nil
}

// byStrength follows what was read of the alcohol.
func (m *fermentRead) byStrength() (Outcome, error) {
	q, made, err := m.strong()
	if err != nil {
		return Outcome{}, err
	}
	return m.strongly(q, made)
}

func (m *fermentRead) strongly(q, made []float64) (Outcome, error) {
	out, err := Ferment(m.pot, m.gone(q, made), m.unnamed)
	if went := estimate.Summarise(q); err == nil {
		out.note("by its strength about %.0f %% of the sugars have gone (%.0f to %.0f %%)", unit.Hundred*went.Mean, unit.Hundred*went.Low, unit.Hundred*went.High)
	}
	return out, err
}

// byBoth holds the alcohol to the strength. How much sugar went for it is then what °Brix
// says, from just enough to all; where it reads alike whatever of the sugar became something
// else, it cannot tell, and the yield does. It is an error if the pot would read another
// °Brix than was read: what both are read of is one pot.
func (m *fermentRead) byBoth(s *drink.Ferment) (Outcome, error) {
	q, made, err := m.strong()
	if err != nil {
		return Outcome{}, err
	}
	least, all := make([]float64, m.pot.N), estimate.Constant(m.pot.N, 1)
	for d, grams := range made {
		if m.hexose[d] > 0 {
			least[d] = min((grams*productOf(constituent.Alcohol).hexose+m.acids[d])/m.hexose[d], 1)
		}
	}
	reads := func(q []float64) []float64 { return m.readsOf(m.gone(q, made)) }
	off := kinetics()["brix beside the calculated"].value
	told := halved(m.brix, least, all, reads)
	few, much := reads(least), reads(all)
	for d := range q {
		if few[d]-much[d] > off {
			q[d] = told[d]
		}
	}
	would := reads(q)
	if read, half := s.Brix.Number, s.Brix.Half; read-half-off > slices.Max(would) || read+half+off < slices.Min(would) {
		return Outcome{}, impossible("%.3g °Bx does not go together with the strength: with that alcohol the pot would read about %.3g °Bx; leave one of them out, or read it before too, before: {brix: …}", read, would[0])
	}
	out, err := m.strongly(q, made)
	if err == nil {
		out.note("read %.3g °Bx beside the strength: with that alcohol the pot reads about %.3g °Bx", s.Brix.Number, would[0])
	}
	return out, err
}
