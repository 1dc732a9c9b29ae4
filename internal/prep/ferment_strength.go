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
func (m *fermentRead) strong(abv []float64) (q, made []float64, err error) {
	for range 2 { // the density is that of the pot afterwards
		if q, made, err = m.byDensity(abv); err != nil {
			return nil, nil, err
		}
		tried, err := m.try(m.gone(q, made))
		if err != nil {
			return nil, nil, err
		}
		m.density = estimate.Ratio(tried.Mass(), m.Volume(tried), 1)
	}
	return m.byDensity(abv)
}

// byDensity is strong with the density as it is known so far.
func (m *fermentRead) byDensity(abv []float64) (q, made []float64, err error) {
	made = make([]float64, m.pot.N)
	p := productOf(constituent.Alcohol)
	for d := range made {
		holds := abv[d] / m.density[d] // grams in a gram of the pot afterwards, which is lighter by its gas
		made[d] = max(holds*m.mass[d]-m.alcohol[d], 0) / (1 + holds*p.gas)
		allowed := max(m.hexose[d]-m.acids[d], 0) / p.hexose
		if d == 0 && made[d] > allowed {
			return nil, nil, impossible("%.3g g of alcohol are read afterwards, and all the sugar of the pot makes %.3g g: that takes %.3g g more sugar than goes; read it before too, before: {brix: …}", made[d]+m.alcohol[d], allowed+m.alcohol[d], (made[d]-allowed)*p.hexose)
		}
		made[d] = min(made[d], allowed)
	}
	return m.took(made), made, nil
}

// took gives the share of the sugars that went for so many grams of alcohol, by the yield.
func (m *fermentRead) took(made []float64) []float64 {
	q := make([]float64, len(made))
	for d, grams := range made {
		if m.hexose[d] > 0 {
			q[d] = min((grams*productOf(constituent.Alcohol).hexose/m.share[d]+m.acids[d])/m.hexose[d], 1)
		}
	}
	return q
}

// byStrength follows what was read of the alcohol.
func (m *fermentRead) byStrength() (Outcome, error) {
	q, made, err := m.strong(m.abv)
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

// byBoth makes the alcohol what °Brix tells, as far as the strength allows: both are read of
// one pot, in which what sugar becomes beside alcohol reads as sugar does, so that the alcohol
// made tells °Brix and °Brix the alcohol. It is an error if they do not agree.
func (m *fermentRead) byBoth(s *drink.Ferment) (Outcome, error) {
	q, made, err := m.strong(m.abv)
	if err != nil {
		return Outcome{}, err
	}
	would := estimate.Summarise(m.readsOf(m.gone(q, made)))
	if read, half := s.Brix.Number, s.Brix.Half+kinetics()["refractometer off"].value; read-half > would.High || read+half < would.Low {
		return Outcome{}, impossible("%.3g °Bx and the strength do not go together: with that alcohol the pot would read about %.3g °Bx; leave one of them out, or read it before too, before: {brix: …}", read, would.Mean)
	}
	_, told := m.went(m.asRead())
	weakest, strongest := slices.Min(m.abv), slices.Max(m.abv)
	_, few, err := m.strong(estimate.Constant(m.pot.N, weakest))
	if err != nil {
		return Outcome{}, err
	}
	_, many, err := m.byDensity(estimate.Constant(m.pot.N, strongest))
	if err != nil {
		many = told // all the sugar makes less: no limit
	}
	for d := range told {
		told[d] = min(max(told[d], few[d]), max(many[d], few[d]))
	}
	q = m.took(told)
	reads := m.readsOf(m.gone(q, told))[0]
	out, err := m.strongly(q, told)
	if err == nil {
		out.note("read %.3g °Bx beside the strength: with that alcohol the pot reads %.3g °Bx", s.Brix.Number, reads)
	}
	return out, err
}
