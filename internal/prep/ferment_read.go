package prep

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
)

// A ferment that was read and not analysed. What is looked for, draw by draw, is the share q
// of the sugars that has gone, so that the pot then reads what was read:
//
//	alcohol made = e · (q · hexose − hexose of the acids that are stated) / hexose per alcohol
//	°Brix(q) = read
//
// by halving, since °Brix falls as sugar leaves. A strength that was read is what the pot
// holds of alcohol afterwards, by its density then; otherwise e is the share of what went that
// became alcohol (data/kinetics.csv, alcohol of a ferment). What is left over has no name
// and may be acid (Ferment).
//
// Valid for a refractometer: it reads alcohol too, by data/refraction.csv. Limits: which
// microbes worked nobody said; a purely lactic ferment makes no alcohol: state its acid.
type fermentRead struct {
	at
	after   []Afterwards
	unnamed Unnamed
	brix    []float64 // read, °Brix
	abv     []float64 // read, g of alcohol in a ml; nil if not read
	share   []float64 // e
	hexose  []float64 // of all sugars, grams
	sugar   []float64 // grams
	alcohol []float64 // grams before
	mass    []float64
	acids   []float64 // hexose that the stated acids take
	density []float64 // of the pot afterwards, g/ml
}

// fermentRead makes the pot hold what was read of it, and what is stated.
func (a at) fermentRead(s *drink.Ferment, after []Afterwards, unnamed Unnamed) (Outcome, error) {
	m := &fermentRead{
		at: a, after: after, unnamed: unnamed, brix: a.figure(s.Brix, 1, "brix"),
		sugar: a.pot.Total(constituent.Sugar), alcohol: a.pot.Total(constituent.Alcohol), mass: a.pot.Mass(),
	}
	m.hexose = slices.Clone(m.sugar)
	for _, c := range constituent.Sums().Leaves(constituent.Sugar) {
		if c.Molar == molarMass(constituent.Sucrose) {
			for d, x := range a.pot.Total(c.ID) {
				m.hexose[d] += x * molarMass(constituent.Water) / c.Molar
			}
		}
	}
	m.acids = m.acidsTake()
	if s.ABV != nil {
		perMl := 1 / solution.ABV(1, 1)
		m.abv = a.figure(s.ABV, perMl, "abv")
		m.density = estimate.Ratio(m.mass, a.Volume(a.pot), 1)
	} else {
		m.share = a.draw("alcohol of a ferment", kinetics()["alcohol of a ferment"])
	}
	if err := m.statedToo(); err != nil {
		return Outcome{}, err
	}
	if s.Brix == nil {
		return m.byStrength()
	}
	return m.byBrix(s)
}

// statedToo refuses sugar or alcohol that is both read and stated.
func (m *fermentRead) statedToo() error {
	for _, a := range m.after {
		if m.brix != nil && isSugar(a.ID) || a.ID == constituent.Alcohol {
			return impossible("%s is stated and read: keep one of them", string(a.ID))
		}
	}
	return nil
}

// byStrength leaves it to the equations how much sugar went.
func (m *fermentRead) byStrength() (Outcome, error) {
	for range 2 { // the density is that of the pot afterwards
		tried, err := m.try(append(slices.Clone(m.after), Afterwards{ID: constituent.Alcohol, Per100g: m.strength()}))
		if err != nil {
			return Outcome{}, err
		}
		m.density = estimate.Ratio(tried.Mass(), m.Volume(tried), 1)
	}
	return Ferment(m.pot, append(m.after, Afterwards{ID: constituent.Alcohol, Per100g: m.strength()}), m.unnamed)
}

// strength gives what 100 g hold of alcohol by what was read.
func (m *fermentRead) strength() []float64 {
	per := make([]float64, m.pot.N)
	for d := range per {
		per[d] = unit.Hundred * m.abv[d] / m.density[d]
	}
	return per
}

// byBrix looks for the share of the sugars that has gone.
func (m *fermentRead) byBrix(s *drink.Ferment) (Outcome, error) {
	const halvings = 20
	none, all := m.reads(0), m.reads(1)
	// guard: no ferment raises what it reads
	if read := s.Brix.Number; read-s.Brix.Half > none {
		return Outcome{}, impossible("%.3g °Bx afterwards: the pot reads about %.3g °Bx before, and a ferment only takes sugar: read it before too, before: {brix: …}", read, none)
	} else if read+s.Brix.Half < all {
		return Outcome{}, impossible("%.3g °Bx afterwards: with all its sugar gone a refractometer would still read about %.3g °Bx, since it reads alcohol too; a hydrometer's reading is another: write density:", read, all)
	}
	low, high, q := make([]float64, m.pot.N), make([]float64, m.pot.N), make([]float64, m.pot.N)
	for d := range high {
		high[d] = 1
	}
	for range halvings {
		for d := range q {
			q[d] = (low[d] + high[d]) / 2
		}
		reads := m.readsOf(q)
		for d, x := range reads {
			if x > m.brix[d] {
				low[d] = q[d]
			} else {
				high[d] = q[d]
			}
		}
	}
	out, err := Ferment(m.pot, m.gone(q), m.unnamed)
	if err == nil {
		went := estimate.Summarise(q)
		out.note("read %.3g °Bx: about %.0f %% of the sugars have gone (%.0f to %.0f %%)", s.Brix.Number, unit.Hundred*went.Mean, unit.Hundred*went.Low, unit.Hundred*went.High)
	}
	return out, err
}

// reads gives what the pot reads at central values once a share of its sugars has gone.
func (m *fermentRead) reads(share float64) float64 {
	q := make([]float64, m.pot.N)
	for d := range q {
		q[d] = share
	}
	return m.readsOf(q)[0]
}

// readsOf gives what the pot reads once a share of its sugars has gone; as before where
// the ferment cannot be.
func (m *fermentRead) readsOf(q []float64) []float64 {
	tried, err := m.try(m.gone(q))
	if err != nil {
		return slices.Repeat([]float64{math.Inf(1)}, m.pot.N) // too little sugar has gone for what is stated
	}
	if m.abv != nil {
		m.density = estimate.Ratio(tried.Mass(), m.Volume(tried), 1)
	}
	return estimate.Ratio(m.Refracted(tried), tried.Mass(), unit.Hundred)
}

// try ferments a copy of the pot.
func (m *fermentRead) try(after []Afterwards) (*ledger.Pot, error) {
	tried := m.pot.Copy()
	_, err := Ferment(tried, after, m.unnamed)
	return tried, err
}

// gone gives what 100 g hold afterwards if a share of the sugars has gone.
func (m *fermentRead) gone(q []float64) []Afterwards {
	sugar, alcohol := make([]float64, m.pot.N), make([]float64, m.pot.N)
	p := productOf(constituent.Alcohol)
	for d := range sugar {
		went := q[d] * m.hexose[d]
		made := max(went-m.acids[d], 0) / p.hexose
		if m.abv == nil {
			made *= m.share[d]
		} else {
			holds := m.abv[d] / m.density[d] // grams in a gram of the pot afterwards, which is lighter by its gas
			made = min(made, max(holds*m.mass[d]-m.alcohol[d], 0)/(1+holds*p.gas))
		}
		left := m.mass[d] - p.gas*made
		sugar[d], alcohol[d] = unit.Hundred*m.sugar[d]*(1-q[d])/left, unit.Hundred*(m.alcohol[d]+made)/left
	}
	return append(slices.Clone(m.after), Afterwards{ID: constituent.Sugar, Per100g: sugar}, Afterwards{ID: constituent.Alcohol, Per100g: alcohol})
}

// acidsTake gives the hexose that what else is stated takes, a little more at most.
func (m *fermentRead) acidsTake() []float64 {
	need := make([]float64, m.pot.N)
	for _, a := range m.after {
		if a.Per100g == nil || isSugar(a.ID) {
			continue
		}
		for d, before := range m.pot.Total(a.ID) {
			need[d] += productOf(a.ID).hexose * max(a.Per100g[d]*m.mass[d]/unit.Hundred-before, 0)
		}
	}
	return need
}
