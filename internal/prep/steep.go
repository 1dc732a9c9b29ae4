package prep

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Steeping is how something is steeped, in columns: the time in min, the
// temperature at which the water is poured in °C and the mass of the liquor. nil
// is what was not stated.
type Steeping struct{ Minutes, Celsius, Collect []float64 }

// Steep lays ingredients (a pot of their own) into the pot and takes them out
// again. What they give is by data/extraction.csv: coffee and tea by their
// entries, what dissolves or mixes wholly all it has, anything else by wide common
// practice. The caffeine of tea follows time
// and temperature (InfusedShare, data/kinetics.csv), that of coffee the yield of
// an immersion. If the liquor was not weighed the pot loses nothing to what is
// taken out, which is said.
//
// It is an error to collect more than there is.
//
// Valid for tea from 3 min (green tea 5, gyokuro 2) in water poured at 95 °C or
// hotter, where the interval of caffeine is at most ± 40 % (the least times and
// the least temperature of data/kinetics.csv), and for ground coffee that has had
// its time: some 4 min hot, a night cold. A tea that is steeped shorter or cooler
// gets a wider interval and a note.
//
// What is taken out before that (before the shortest steep of data/kinetics.csv, of what
// is neither) gives a part of its shares that goes to nothing with the time: of tea by the
// kinetics of its caffeine, of the rest in proportion, which no source tells and a note
// says.
//
// Limits: of tea that had its time, time and temperature move caffeine and theobromine only. The
// half-time is that of the kind of leaf: it covers bag and leaf, stirred or not;
// a green tea may be rolled, in bags or steamed needle leaf, so its range covers
// all. Aroma is not modelled. A ferment that starts is not seen.
func Steep(pot, steeped *ledger.Pot, s Steeping, f Factors) (Outcome, error) {
	m := &infusion{
		extraction: newExtraction(filterStyle, f, func(of *food.Food) []float64 { return immersed(of, s, f) }),
		water:      make([]float64, pot.N), part: estimate.Constant(pot.N, 1), short: map[string][]float64{},
	}
	out := Outcome{Brewed: true}
	for _, row := range steeped.Rows {
		m.warn(&out, row.Profile.Food, s)
		m.hurry(&out, row, s)
	}
	if s.Collect == nil {
		out.note("the liquid that the solids hold back was not weighed and is not taken off: give collect")
		out.Lost = m.join(pot, steeped)
		return out, nil
	}
	m.water = estimate.Constant(pot.N, 1)
	liquor := passing(steeped, m)
	for d, x := range pot.Mass() {
		liquor[d] += x
	}
	if s.Collect[0] > liquor[0] {
		return Outcome{}, unlike("collect %s g: pot and extract weigh about %s g", s.Collect[0], liquor[0])
	}
	m.part = partOf(s.Collect, liquor)
	m.water = m.part
	out.Lost = m.join(pot, steeped)
	return out, nil
}

// immersed gives the share of a food's small solutes that dissolves.
func immersed(of *food.Food, s Steeping, f Factors) []float64 {
	group := of.Group
	if isLeaf(of) {
		return f.infused(of, s)
	}
	plenty := make([]float64, f.N)
	estimate.Fill(plenty, math.Inf(1)) // water that stays washes out nothing: only the yield tells
	return f.washed(of, plenty, f.draw("yield/"+group, extractions()[extractKey{group, "*", yieldEntry}].factor))
}

// infusion keeps what the steeped ingredients give; of the liquor, part is
// collected.
type infusion struct {
	extraction
	water []float64
	part  []float64
	short map[string][]float64 // by leafKind, of what had less time than it takes
}

func (m *infusion) join(pot, steeped *ledger.Pot) ledger.Lost {
	lost := apply(steeped, m).Plus(apply(pot, evenly(m.part)))
	for row := range steeped.Rows {
		m.nameCarbohydrate(steeped, row)
		ledger.Extract(steeped, row)
	}
	pot.Join(steeped)
	return lost
}

func (m *infusion) Share(row ledger.Row, c *constituent.Constituent, share []float64) {
	if mixes(row) {
		copy(share, m.part)
		return
	}
	if c.ID == constituent.Water {
		copy(share, m.water)
		return
	}
	by, short := m.given(row, c), m.shortOf(row, c)
	for d := range share {
		share[d] = by[d] * m.part[d]
		if short != nil {
			share[d] *= short[d]
		}
	}
}

// mixes reports whether what is laid into a pot cannot be taken out again: sugar, salt and
// other things that dissolve wholly, and liquids of more water than fat.
func mixes(row ledger.Row) bool {
	group := row.Profile.Food.Group
	if rule, ok := phases()[passedKey{"suspended", group, "*"}]; ok && rule.low == 1 {
		return true
	}
	if !row.Profile.Food.Facts().Liquid {
		return false
	}
	cell := func(id constituent.ID) float64 { return row.Profile.Cells[constituent.Must(id).Order].Amount }
	return cell(constituent.Water) > cell(constituent.Fat)
}

// evenly keeps one share of everything.
type evenly []float64

func (m evenly) Share(_ ledger.Row, _ *constituent.Constituent, share []float64) { copy(share, m) }
