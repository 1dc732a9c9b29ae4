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
// by halving, since °Brix falls as sugar leaves. e is the share of what went that became
// alcohol (data/kinetics.csv, alcohol of a ferment); where all sugar would not be enough, e
// is as much more, up to 1. A strength that was read is what the pot holds of alcohol
// afterwards, by its density then, and q follows from it and e. With both °Brix has to agree
// (byBoth). What is left over has no name and may be acid (Ferment).
//
// Valid for a refractometer: it reads alcohol too, by data/refraction.csv. Limits: it is taken
// for a yeast's; a purely lactic ferment makes no alcohol: state its acid.
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
	m.share = a.draw("alcohol of a ferment", kinetics()["alcohol of a ferment"])
	if s.ABV != nil {
		perMl := 1 / solution.ABV(1, 1)
		m.abv = a.figure(s.ABV, perMl, "abv")
		volume := a.Volume(a.pot)
		m.density = estimate.Ratio(m.mass, volume, 1)
		if before := estimate.Summarise(estimate.Ratio(m.alcohol, volume, 1/perMl)); s.ABV.Number+s.ABV.Half < before.Low {
			return Outcome{}, impossible("%.3g %% vol afterwards: %.3g %% vol are there before, and a ferment of sugar takes none away (of a vinegar state what it made, after: {ACEAC: … g, ALC: … g}, because: …)", s.ABV.Number, before.Mean)
		}
	}
	if err := m.statedToo(); err != nil {
		return Outcome{}, err
	}
	switch {
	case s.ABV == nil:
		return m.byBrix(s)
	case s.Brix == nil:
		return m.byStrength()
	}
	return m.byBoth(s)
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

// byBrix looks for the share of the sugars that has gone.
func (m *fermentRead) byBrix(s *drink.Ferment) (Outcome, error) {
	none, all := m.reads(0), m.reads(wholly)
	if math.IsInf(all[0], 1) { // what is stated takes more than all its sugar
		q, made := m.went(estimate.Constant(m.pot.N, wholly))
		_, err := m.try(m.gone(q, made))
		return Outcome{}, err
	}
	read := s.Brix.Number
	// guard: no ferment raises what it reads
	if read-s.Brix.Half > none[0] {
		return Outcome{}, impossible("%.3g °Bx afterwards: the pot reads about %.3g °Bx before, and a ferment only takes sugar: read it before too, before: {brix: …}", read, none[0])
	}
	if least := slices.Min(all); read+s.Brix.Half+kinetics()["refractometer off"].value < least {
		return Outcome{}, impossible("%.3g °Bx afterwards: with all its sugar gone a refractometer would still read about %.3g °Bx, since it reads alcohol too; what a hydrometer reads is lower and no °Brix of this kind: write abv:, or read it before too, before: {brix: …}", read, all[0])
	}
	q, made := m.went(m.asRead())
	out, err := Ferment(m.pot, m.gone(q, made), m.unnamed)
	if err == nil {
		went := estimate.Summarise(q)
		out.note("read %.3g °Bx: about %.0f %% of the sugars have gone (%.0f to %.0f %%), if it is a yeast's ferment: state the acids that bacteria made", s.Brix.Number, unit.Hundred*went.Mean, unit.Hundred*went.Low, unit.Hundred*went.High)
	}
	return out, err
}

// wholly is as far as a ferment can go (went).
const wholly = 2.0

// went tells how far a ferment has gone, as the share of the sugars that has and the grams of
// alcohol made: up to 1 sugar goes, and from there to 2 more of what went became alcohol.
func (m *fermentRead) went(t []float64) (q, made []float64) {
	q, made = make([]float64, m.pot.N), make([]float64, m.pot.N)
	for d, x := range t {
		q[d] = min(x, 1)
		share := m.share[d] + max(x-1, 0)*(1-m.share[d])
		made[d] = share * max(q[d]*m.hexose[d]-m.acids[d], 0) / productOf(constituent.Alcohol).hexose
	}
	return q, made
}

// reads gives what the pot reads once a ferment has gone as far everywhere.
func (m *fermentRead) reads(t float64) []float64 {
	return m.readsOf(m.gone(m.went(estimate.Constant(m.pot.N, t))))
}

// asRead looks, draw by draw, for how far a ferment has gone that reads as was read.
func (m *fermentRead) asRead() []float64 {
	const halvings = 20
	low, high, t := make([]float64, m.pot.N), estimate.Constant(m.pot.N, wholly), make([]float64, m.pot.N)
	for range halvings {
		for d := range t {
			t[d] = (low[d] + high[d]) / 2
		}
		for d, x := range m.readsOf(m.gone(m.went(t))) {
			if x > m.brix[d] {
				low[d] = t[d]
			} else {
				high[d] = t[d]
			}
		}
	}
	return t
}

// readsOf gives what the pot reads of a ferment, nothing it could read where that cannot be.
func (m *fermentRead) readsOf(after []Afterwards) []float64 {
	tried, err := m.try(after)
	if err != nil {
		return slices.Repeat([]float64{math.Inf(1)}, m.pot.N) // too little sugar has gone for what is stated
	}
	return estimate.Ratio(m.Refracted(tried), tried.Mass(), unit.Hundred)
}

// try ferments a copy of the pot.
func (m *fermentRead) try(after []Afterwards) (*ledger.Pot, error) {
	tried := m.pot.Copy()
	_, err := Ferment(tried, after, m.unnamed)
	return tried, err
}

// gone gives what 100 g hold afterwards if a share of the sugars has gone and so many grams of
// alcohol are made.
func (m *fermentRead) gone(q, made []float64) []Afterwards {
	sugar, alcohol := make([]float64, m.pot.N), make([]float64, m.pot.N)
	for d := range sugar {
		left := m.mass[d] - productOf(constituent.Alcohol).gas*made[d]
		sugar[d], alcohol[d] = unit.Hundred*m.sugar[d]*(1-q[d])/left, unit.Hundred*(m.alcohol[d]+made[d])/left
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
