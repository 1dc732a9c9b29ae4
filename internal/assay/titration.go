package assay

import (
	"math"
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// titration is what a bench titration says of a liquid: its buffer spectrum (package
// acid), which stands for all acids and ions of the rows that were titrated.
type titration struct {
	of              string
	lowest, highest float64        // pH that were titrated
	perGram         *acid.Solution // sites and strong ions in a gram of the liquid, without its solvent
	strength        []float64      // by draw: what a gram holds over what it holds at central values
	shift           []float64      // by draw: mol of strong ion in a gram that moves the pH as the meter may be off
}

// As is what a titrated liquid goes with.
func (*titration) As() constituent.ID { return potassium }

// titratedPart is how much of a titrated liquid a pot holds, by draw.
type titratedPart struct {
	*titration
	grams []float64
}

// pour adds the part to a solution that has its solvent already.
func (t titratedPart) pour(sol *acid.Solution, d int) {
	sol.Pour(t.perGram, t.grams[d]*t.strength[d])
	sol.Strong += t.grams[d] * t.shift[d]
	sol.Background += t.grams[d] * math.Abs(t.shift[d]) / 2
}

// titrated reports whether a row's ions come from a titration.
func titrated(pot *ledger.Pot, row int) bool {
	return slices.ContainsFunc(pot.Traced(row), func(t ledger.Traced) bool {
		_, is := t.Tracer.(*titration)
		return is
	})
}

func (in *ions) addTitrated(t *titration, grams []float64) {
	for i, part := range in.titrated {
		if part.titration == t {
			for d := range in.n {
				in.titrated[i].grams[d] += grams[d]
			}
			return
		}
	}
	in.titrated = append(in.titrated, titratedPart{t, slices.Clone(grams[:in.n])})
}

// span gives the pH between which a curve is drawn: from its own to the end point, and
// where titrations went below its own or end before the end point, as far as each of
// them tells.
func (in ions) span(own float64) (first, last float64) {
	lowest, last := 0.0, endPoints[0]
	beyond := spanOf("beyond titration").high
	for _, t := range in.titrated {
		lowest = max(lowest, t.lowest)
		last = min(last, t.highest+beyond)
	}
	first = own
	if lowest > 0 && lowest < own-beyond {
		first = lowest
	}
	return first, max(own, last)
}

// within gives a pH that every titration in the liquid speaks of, else NaN.
func (in ions) within(pH float64) float64 {
	beyond := spanOf("beyond titration").high
	for _, t := range in.titrated {
		if pH < t.lowest-beyond || pH > t.highest+beyond {
			return math.NaN()
		}
	}
	return pH
}
