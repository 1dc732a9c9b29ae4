package acidity

import (
	"math"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// titratable is the titratable acidity that has been published of a food.
const titratable constituent.ID = "titratable"

// moreAcid is, draw by draw, how much more acid a food holds than its table names.
type moreAcid struct {
	gain  float64   // the weight of the burette beside the table
	own   bool      // more of its named acids; else citric acid
	share []float64 // of the named acids, below zero less of them; else grams for a gram of what carries it (carrierOf)
}

// moreAcidOf tells how much more acid a food holds than its table names, where somebody
// has titrated it; nil where nobody has.
//
// A published titratable acidity fills no acid of the composition, since it does not
// say which they are. But it measures all of them at once, those that no table names
// too, so it is a second measurement of what decides the pH: the acidity h that the
// food's figures make in a draw becomes
//
//	h′ = h + g·(T − h)     g = var h / (var h + var T)
//
// with T a draw of the published one: each counts by its spread. The acid that is
// missing is taken for more of the named ones unless it is more than all of them.
func (lab *Laboratory) moreAcidOf(profile *food.Profile, n int) *moreAcid {
	n = max(n, min(lab.Ens.N, ChemistryDraws+1)) // the spread is always that of the same draws
	if more, ok := lab.titratedFoods[profile]; ok && (more == nil || len(more.share) >= n) {
		return more
	}
	more := lab.findMoreAcid(profile, n)
	lab.titratedFoods[profile] = more
	return more
}

func (lab *Laboratory) findMoreAcid(profile *food.Profile, n int) *moreAcid {
	published := lab.titratableOf(profile, n)
	if published == nil {
		return nil
	}
	pot := lab.drawer.NewPot()
	pot.Pour(profile, lab.drawer.PerGram(profile), lab.Ens.Of(1), "")
	carrier, named := carrierOf(pot, 0)
	// The table says nothing of acid, or no more than the burette: that does not count twice.
	silent := !named || profile.Cell(constituent.OrganicAcids).By == food.ByKin
	if carrier == nil {
		carrier = pot.Of(0, constituent.Water)
	}
	found, equivalents, err := lab.titrateByName(pot, n)
	if err != nil { // a food without water was not titrated as it is
		return nil
	}
	gain := 1.0
	if scale := lab.scales(); !silent && scale != lab {
		if more := scale.moreAcidOf(profile, 1); more != nil {
			gain = more.gain
		}
	} else if !silent {
		gain = gainOf(found, published)
	}
	more := &moreAcid{gain: gain, own: named && gain*(published[0]-found[0]) <= equivalents[0], share: make([]float64, n)}
	for d := range more.share {
		miss := gain * (published[d] - found[d])
		if more.own {
			more.share[d] = max(miss/equivalents[d], -1)
		} else {
			more.share[d] = AsGrams(max(miss, 0)) / carrier[d]
		}
	}
	return more
}

// titrateByName titrates what is known of the only row of a pot: mol of base to the end
// point, and mol of protons of its organic acids.
func (lab *Laboratory) titrateByName(pot *ledger.Pot, n int) (base, equivalents []float64, err error) {
	in := newIons(n)
	for _, id := range acid.Constituents() {
		copy(in.grams[id], pot.Total(id))
	}
	lab.addIons(&in, pot, 0)
	in.addRest(pot, 0)
	base, equivalents = make([]float64, n), make([]float64, n)
	return base, equivalents, in.Each(func(s *acid.Solver, sol *acid.Solution, _, end acid.State, d int) error {
		state, err := s.Titrate(sol, EndPoints[0], end)
		if err != nil {
			return err
		}
		base[d], equivalents[d] = state.Base*sol.Solvent, equivalentsOf(sol)
		return nil
	})
}

// gainOf gives the weight of a second measurement beside a first, by the variances of
// their draws.
func gainOf(first, second []float64) float64 {
	last := min(len(first), ChemistryDraws+1)
	v, other := stat.Variance(first[1:last], nil), stat.Variance(second[1:last], nil)
	if v+other > 0 {
		return v / (v + other)
	}
	return 1
}

// equivalentsOf gives the protons of a solution's organic acids, in mol.
func equivalentsOf(sol *acid.Solution) float64 {
	sum := 0.0
	for i, a := range acid.All() {
		if IsOrganic(a) {
			sum += sol.Acids[i] * float64(len(a.Steps))
		}
	}
	return sum
}

// titratableOf draws a food's published titratable acidity, in mol of base for a gram
// of it; nil if there is none.
func (lab *Laboratory) titratableOf(profile *food.Profile, n int) []float64 {
	value, ok := profile.Food.Value(titratable)
	if !ok || !food.Stated(value.Amount) {
		return nil
	}
	spread := SpanOf("titratable acidity").High * value.Amount
	if food.Stated(value.SD) {
		spread = max(spread, value.SD)
	}
	spread = max(spread, acidsOfName(profile)*value.Amount)
	id, col := profile.Food.ID, make([]float64, n)
	estimate.Input{
		Central: value.Amount / AsCitric(1), Shape: estimate.Lognormal, SD: spread / AsCitric(1),
		Stream: lab.Ens.Stream("unmeasured", string(titratable), id.Table, id.Code),
	}.Fill(col)
	return col
}

// acidsOfName is how far all acids of a food of this name lie from what a table prints, as a
// share: a titration of one lot tells little more of another than they do. It is 0 of a food
// in hand.
func acidsOfName(profile *food.Profile) float64 {
	sum, variance := 0.0, 0.0
	for _, c := range AcidsOf() {
		if cell := profile.Cells[c.Order]; cell.Known && cell.Tail > 0 {
			sum += cell.Amount
			variance += cell.SD * cell.SD
		}
	}
	if sum == 0 {
		return 0
	}
	return SpanOf("titratable acidity of a name").High * math.Sqrt(variance) / sum
}

// addMore adds the acid that a row holds beside what its table names.
func (in *Ions) addMore(pot *ledger.Pot, row int, more *moreAcid, carrier []float64) {
	if !more.own {
		to := in.grams[Citric]
		for d := range in.N {
			to[d] += more.share[d] * carrier[d]
		}
		return
	}
	for _, c := range AcidsOf() {
		col, to := pot.Of(row, c.ID), in.grams[c.ID]
		for d := range in.N {
			to[d] += more.share[d] * col[d]
		}
	}
	to := in.grams[Citric]
	for d, rest := range pot.Of(row, acidsRest)[:in.N] {
		to[d] += more.share[d] * max(rest, 0)
	}
}
