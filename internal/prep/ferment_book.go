package prep

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// fermenting is the bookkeeping of one ferment, by column.
type fermenting struct {
	pot    *ledger.Pot
	sugars []sugarLeaf
	made   []madeLeaf
	total  []float64 // stated SUGAR per 100 g; nil if not stated
	sugar  bool      // any sugar is stated
	gas    []float64
	gone   []float64 // grams of sugar that ferment
	mass   []float64
	water  []float64

	risen, short, dry float64 // of the last draw: what cannot be
}

// sugarLeaf is a sugar and the share of it that ferments.
type sugarLeaf struct {
	id     constituent.ID
	col    int
	water  float64   // taken up by a gram
	stated []float64 // per 100 g
	grams  []float64
	share  []float64
}

// madeLeaf is a stated product: what is made, or the share that goes.
type madeLeaf struct {
	id     constituent.ID
	col    int
	stated []float64
	grams  []float64
	made   []float64
	share  []float64
	product
}

func newFerment(pot *ledger.Pot, after []Afterwards) *fermenting {
	m := &fermenting{pot: pot, mass: pot.Mass(), water: pot.Total(constituent.Water), gas: make([]float64, pot.N), gone: make([]float64, pot.N)}
	stated := map[constituent.ID][]float64{}
	for _, a := range after {
		stated[a.ID] = a.Per100g
	}
	m.total = stated[constituent.Sugar]
	m.sugar = m.total != nil
	for _, c := range constituent.Sums().Leaves(constituent.Sugar) {
		if col := pot.Columns.At(c.ID); col >= 0 {
			s := sugarLeaf{id: c.ID, col: col, stated: stated[c.ID], grams: pot.Total(c.ID), share: make([]float64, pot.N)}
			if disaccharide := molarMass(constituent.Sucrose); c.Molar == disaccharide {
				s.water = molarMass(constituent.Water) / disaccharide
			}
			m.sugars = append(m.sugars, s)
			m.sugar = m.sugar || s.stated != nil
		}
	}
	for _, a := range after {
		if a.Per100g == nil || isSugar(a.ID) {
			continue
		}
		m.made = append(m.made, madeLeaf{
			id: a.ID, col: pot.Columns.At(a.ID), stated: a.Per100g, grams: pot.Total(a.ID),
			made: make([]float64, pot.N), share: make([]float64, pot.N), product: productOf(a.ID),
		})
	}
	return m
}

// keepsAlcohol holds what is stated of alcohol to what was there: a ferment takes none
// away, but for what acetic bacteria turn into stated acid, mol by mol. That what is stated
// is rounded, or has a ±, is allowed for.
func (m *fermenting) keepsAlcohol() error {
	const acetic = constituent.ID("ACEAC")
	turned := 0.0
	for _, p := range m.made {
		if p.id == acetic && m.mass[0] > 0 {
			turned = max(slices.Max(p.stated)-unit.Hundred*p.grams[0]/m.mass[0], 0) * molarMass(constituent.Alcohol) / molarMass(acetic)
		}
	}
	for _, p := range m.made {
		if p.id != constituent.Alcohol || m.mass[0] <= 0 {
			continue
		}
		before := unit.Hundred * p.grams[0] / m.mass[0]
		// guard: a ferment takes no alcohol away
		if slices.Max(p.stated) < before-turned {
			return unlike("%s g of alcohol in 100 g afterwards, and %s g were there before: a ferment takes none away", p.stated[0], before)
		}
	}
	return nil
}

func isSugar(id constituent.ID) bool {
	return id == constituent.Sugar || constituent.Must(id).Parent == constituent.Sugar
}
