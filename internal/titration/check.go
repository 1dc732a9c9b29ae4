package titration

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// plausible refuses a titration that took more base, up to the end point or to its last
// point, than the sourest liquid (data/limits.csv). solvent is kg of it in a gram.
func plausible(fit acid.Spectrum, solvent float64) error {
	s, err := acid.NewSolver(acidity.MeterCelsius)
	if err != nil {
		return err
	}
	sol := fit.Solution(solvent)
	low, err := s.Base(sol, fit.Lowest, acid.State{})
	if err != nil {
		return err
	}
	high, err := s.Base(sol, min(fit.Highest, acidity.EndPoints[0]), acid.State{})
	if err != nil {
		return err
	}
	const unitAcidity = "g/100 g"
	held := unit.Hundred * acidity.AsGrams((high-low)*solvent)
	// guard: no titration beyond the sourest
	if most := unit.LimitOf("titratable acidity", unitAcidity).High; held > most {
		return fmt.Errorf("the titration says that 100 g hold an acidity of %s g as citric acid, and nothing has more than %s", note.Grams(held), note.Grams(most))
	}
	return nil
}

// compare notes a titration that has little to do with the recipe, such as one whose sample
// was another than is written: the base from its first pH to its last, for a gram of the
// liquid, against what the composition takes. A composition that leaves its acids or its pH
// open cannot disagree.
//
// From three standard deviations on, and wholly from six, the liquid is let be what the recipe
// says in the draws in which that is right (amount.Hand.Sides): then the same curve takes that
// much more or less of base, by b.strength, and starts at the pH that was read. It gives, draw by
// draw, how far the recipe is right against the curve.
func (r *Rig) compare(pot *ledger.Pot, m *drink.Measured, in acidity.Ions, b sampled) (recipe []float64) {
	recipe = make([]float64, pot.N)
	if in.Open() || in.Silent || acidity.Unsolvable(pot) != "" || in.N <= estimate.FewestDraws {
		return recipe
	}
	first, last := b.curve.Points[0], b.curve.Points[len(b.curve.Points)-1]
	mass, expected := pot.Total(constituent.Mass), make([]float64, in.N)
	err := acidity.EachDraw(in.N, func(s *acid.Solver, sol *acid.Solution, from, to int) error {
		for d := from; d < to; d++ {
			in.Fill(sol, d)
			low, err := s.Base(sol, first.PH, acid.State{})
			if err != nil {
				return err
			}
			high, err := s.Base(sol, last.PH, acid.State{})
			if err != nil {
				return err
			}
			expected[d] = (high - low) * sol.Solvent / mass[d]
		}
		return nil
	})
	if err != nil || !estimate.Positive(expected) {
		return recipe
	}
	times := (last.Base - first.Base) / b.grams / expected[0]
	estimate.Logs(expected)
	strength := b.strength[1:in.N]
	off := math.Hypot(stat.StdDev(expected[1:], nil), stat.StdDev(strength, nil)/b.strength[0])
	far := math.Abs(math.Log(times)) / off
	if far <= estimate.Disagreement {
		return recipe
	}
	r.Doubted = true
	r.note(note.Note{Kind: disagrees, Text: fmt.Sprintf(
		"%s: the titration took %s times the base that the recipe tells of, which is more than %d standard deviations off: check the sample, the strength and the recipe",
		note.Place(m.StepPath()), note.Number(times), estimate.Disagreement)})
	read := math.Log((last.Base - first.Base) / b.grams)
	recipe = r.lean(m, far)
	for d := 1; d < len(recipe); d++ {
		b.strength[d] *= math.Exp(recipe[d] * (solvedOf(expected, d) - read))
	}
	return recipe
}

// lean draws how far the recipe is right of a pot against a curve that lies so many standard deviations
// off: in the draws in which it is right, nothing at three and wholly at six.
func (r *Rig) lean(m *drink.Measured, far float64) []float64 {
	share, doubt := slices.Clone(r.sides(m)), min(far/estimate.Disagreement-1, 1)
	for d, side := range share {
		share[d] = doubt * max(-side, 0)
	}
	return share
}

// solvedOf gives what was solved for a draw: the chemistry asks for no more draws than were solved.
func solvedOf(column []float64, d int) float64 { return column[1+(d-1)%(len(column)-1)] }

// begins holds the pH at which a curve begins against that of the recipe, as a pH that was read
// alone is held: a curve begins at the liquid itself. One that the recipe cannot make is said, and
// spans both, in the draws in which the recipe is right. It gives the pH of the liquid, by draw.
func (r *Rig) begins(pot *ledger.Pot, m *drink.Measured, in acidity.Ions, reads []float64) []float64 {
	buffers := acidity.Unsolvable(pot) != "" // what protein makes of a pH is known to so much only as is printed at the widest
	if in.Open() || in.N <= estimate.FewestDraws || (buffers || in.Silent) && !acidity.RestsOnPublished(pot) {
		return reads
	}
	expected := make([]float64, in.N)
	err := in.Each(func(s *acid.Solver, sol *acid.Solution, near, _ acid.State, d int) error {
		state, err := in.Solve(s, sol, near, acidity.MeterCelsius)
		expected[d] = state.PH
		return err
	})
	if err != nil || in.Impossible(expected[0]) != "" {
		return reads
	}
	spread := math.Hypot(math.Hypot(stat.StdDev(expected[1:], nil), stat.StdDev(reads[1:], nil)), acidity.SpanOf("composition").High)
	if buffers {
		spread = math.Hypot(spread, acidity.SpanOf("widest").High)
	}
	far := math.Abs(reads[0]-expected[0]) / spread
	if far <= estimate.Disagreement {
		return reads
	}
	r.Doubted = true
	r.note(note.Note{Kind: disagrees, Text: fmt.Sprintf(
		"%s: the curve begins at pH %.2f, and its recipe makes %.2f: more than %d standard deviations off: check the meter, the liquid and the recipe; until then its pH spans both",
		note.Place(m.StepPath()), reads[0], expected[0], estimate.Disagreement)})
	spanned, recipe := slices.Clone(reads), r.lean(m, far)
	for d := 1; d < len(spanned); d++ {
		spanned[d] += recipe[d] * (solvedOf(expected, d) - spanned[d])
	}
	return spanned
}
