package burette

import (
	"math"

	"sipsum/internal/acid"
)

// Liquid is what the recipe expects in a sample that is titrated. Columns are draws of the
// ensemble, the central value first.
type Liquid struct {
	// Rest is what is not asked for, at central values: the solvent, ethanol, metals that pair,
	// acids that hardly matter, and the strong ions' Background. Its Strong is not used.
	Rest     *acid.Solution
	Acids    []Amount
	Nameless []float64 // mol of protons of an acid without a name; nil: there is none
	Amines   []float64 // mol of groups that give a proton away beyond pH 8; nil: there are none
	Strong   []float64 // mol of charge on what takes no part: metals less chloride
}

// Amount is how much of an acid there may be.
type Amount struct {
	Acid acid.Index
	Mol  []float64
}

// Kit is what a bench titrates with: columns of the ensemble, the central value first. An
// instrument that reads several liquids brings the same columns to each.
type Kit struct {
	Zero      []float64 // pH that the meter shows too much at pH 7
	Slope     []float64 // of the meter, 1 where it is adjusted
	Factor    []float64 // what the base brings over what is counted, sample and strength together
	Carbonate []float64 // share of the base that is carbonate; nil: an acid titrates
	Noise     float64   // standard deviation of one reading of the meter, pH
}

// place of a quantity in the vector that is solved for; −1: it is not asked for.
type places struct {
	acids                                  []int // by place of Liquid.Acids
	nameless, namelessPK, amines, aminesPK int
	strong, zero, slope, factor, carbonate int
}

// pour fills a solution with the liquid at amounts x, with what a point brings: its water and
// the carbonate of its base.
func (m *model) pour(sol *acid.Solution, x []float64, p Point) {
	sol.Reset(0)
	sol.Pour(m.liquid.Rest, 1)
	sol.Strong = x[m.at.strong]
	sol.Background = max(sol.Background, math.Abs(sol.Strong)/2)
	sol.Solvent += p.Water
	for i, a := range m.liquid.Acids {
		sol.Acids[a.Acid] += x[m.at.acids[i]]
	}
	if m.at.nameless >= 0 {
		addSite(sol, x[m.at.namelessPK], x[m.at.nameless])
	}
	if m.at.amines >= 0 {
		addSite(sol, x[m.at.aminesPK], x[m.at.amines])
	}
	if m.at.carbonate >= 0 {
		const charges = 2
		sol.Acids[carbonic()] += max(x[m.at.carbonate]*p.Base, 0) / charges
	}
}

// carbonic is the acid that carbonate is of.
func carbonic() acid.Index { return acid.Must("carbonic") }

// addSite adds monoprotic groups of any pK, as a mixture of the two nearest sites of package acid.
func addSite(sol *acid.Solution, pk, mol float64) {
	low, high, share := acid.SitesAt(pk)
	sol.Acids[low] += mol * (1 - share)
	sol.Acids[high] += mol * share
}
