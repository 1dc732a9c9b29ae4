package prep

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// Afterwards is what 100 g of the pot hold of a constituent when the ferment is
// stopped: a column in grams, nil if it is not known.
type Afterwards struct {
	ID      constituent.ID
	Per100g []float64
}

// Ferment makes the pot hold what is stated of it afterwards. What is made takes
// sugar by its equation (data/fermentation.csv); the gas leaves:
//
//	m′ = m − Σ gas_j·Δ_j,   Δ_j = m′·stated_j/100 − m_j
//
// If no sugar is stated, all sugars go in one proportion, as much as the products
// take. If sugars are stated, what goes beyond the products is kept as mass
// without a name, and what it may be is unknown: alcohol, lactic, acetic or gluconic acid,
// each up to what all of it makes by its equation, but nothing that is stated, and no acid
// where one is. An acid that is stated lower than before feeds the products
// too. A row's sugar makes that row's products. Disaccharides take up water.
//
// It is an error if the sugar that goes is too little for what is stated, if more
// sugar or less alcohol is stated than there was, or if the pot is too dry.
//
// Limits: what is not stated is taken as unchanged, except the sugars: glycerol,
// esters, vitamins and what yeast and bacteria consist of are not known. Gas that
// stays dissolved is stated with carbonate.
func Ferment(pot *ledger.Pot, after []Afterwards, unnamed Unnamed) (Outcome, error) {
	m := newFerment(pot, after)
	if err := m.keepsAlcohol(); err != nil {
		return Outcome{}, err
	}
	for d := range pot.N {
		m.draw(d)
		if d > 0 {
			continue
		}
		const slack = 1e-9
		if m.risen > slack {
			return Outcome{}, impossible("%.3g g more sugar afterwards than before", m.risen)
		}
		if m.dry > slack {
			return Outcome{}, impossible("the sugars take up %.3g g more water than the pot holds", m.dry)
		}
		if m.short > slack {
			return Outcome{}, impossible("what is stated takes %.3g g more sugar than goes", m.short)
		}
	}
	gas := m.gas[0]
	KeepAdded(pot, m.write)
	m.knowWhatIsStated(after)
	out := Outcome{Lost: ledger.Lost{Grams: make([]float64, len(constituent.All()))}}
	out.Lost.Grams[constituent.Must(constituent.CarbonDioxide).Order] = gas
	out.note("%.3g g of sugar ferment, %.3g g leave as gas; what is not stated is taken as unchanged", m.gone[0], gas)
	if rest := m.unnamedMass(0); rest > 0 {
		unnamed.bound(pot, after, rest)
		out.note("%.3g g of what the sugar became are not stated and count as mass without a name: acid and alcohol of it are unknown; state them, or read pH and strength", rest)
	}
	return out, nil
}

// draw solves one draw: the mass afterwards by iteration, which gains two digits
// and more a round since the gas is a small part of the mass.
func (m *fermenting) draw(d int) {
	const rounds = 12
	after := m.mass[d]
	for range rounds {
		gas := 0.0
		for i := range m.made {
			p := &m.made[i]
			change := p.stated[d]*after/unit.Hundred - p.grams[d]
			p.made[d], p.share[d] = max(change, 0), 0
			if change < 0 {
				p.share[d] = -change / p.grams[d]
			}
			gas += p.gas * p.made[d]
		}
		after = m.mass[d] - gas
	}
	need, fed := 0.0, 0.0
	for i := range m.made {
		need += m.made[i].hexose * m.made[i].made[d]
		fed += m.made[i].share[d] * m.made[i].grams[d]
	}
	m.consume(d, max(need-fed, 0), after/unit.Hundred)
	m.wet(d)
	hexose := fed
	m.gone[d] = 0
	for _, s := range m.sugars {
		hexose += s.share[d] * s.grams[d] * (1 + s.water)
		m.gone[d] += s.share[d] * s.grams[d]
	}
	m.short = max(need-hexose, 0)
	if need > hexose { // a draw makes no more than its sugar allows
		for i := range m.made {
			m.made[i].made[d] *= hexose / need
		}
	}
	m.gas[d] = 0
	for i := range m.made {
		m.gas[d] += m.made[i].gas * m.made[i].made[d]
	}
}

// consume finds the share of each sugar that ferments: by what is stated, else
// enough hexose for the need. Scale turns a figure per 100 g into grams.
func (m *fermenting) consume(d int, need, scale float64) {
	m.risen = 0
	open, hexose, stated := 0.0, 0.0, 0.0
	for i := range m.sugars {
		s := &m.sugars[i]
		s.share[d] = 0
		if s.stated == nil {
			open += s.grams[d]
			hexose += s.grams[d] * (1 + s.water)
			continue
		}
		left := s.stated[d] * scale
		stated += left
		m.risen += max(left-s.grams[d], 0)
		if s.grams[d] > 0 {
			s.share[d] = max(1-left/s.grams[d], 0)
		}
	}
	share := 0.0
	switch {
	case m.total != nil && open > 0:
		left := max(m.total[d]*scale-stated, 0)
		m.risen += max(left-open, 0)
		share = max(1-left/open, 0)
	case !m.sugar && hexose > 0:
		share = min(need/hexose, 1)
	}
	for i := range m.sugars {
		if s := &m.sugars[i]; s.stated == nil {
			s.share[d] = share
		}
	}
}

// wet keeps disaccharides from taking up more water than there is.
func (m *fermenting) wet(d int) {
	uptake := 0.0
	for _, s := range m.sugars {
		uptake += s.share[d] * s.grams[d] * s.water
	}
	m.dry = max(uptake-m.water[d], 0)
	for i := range m.sugars {
		if s := &m.sugars[i]; m.dry > 0 && s.water > 0 {
			s.share[d] *= m.water[d] / uptake
		}
	}
}

// unnamedMass gives what the consumed became beyond the products, in grams.
func (m *fermenting) unnamedMass(d int) float64 {
	rest := 0.0
	for _, s := range m.sugars {
		rest += s.share[d] * s.grams[d] * (1 + s.water)
	}
	for _, p := range m.made {
		rest += p.share[d]*p.grams[d] - p.hexose*p.made[d]
	}
	const slack = 1e-9
	if math.Abs(rest) <= slack*m.mass[d] {
		return 0
	}
	return max(rest, 0)
}
