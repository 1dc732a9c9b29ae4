package acidity

import (
	"math"
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// Titration is what a bench titration says of a liquid: its buffer spectrum (package
// acid), which stands for all acids and ions of the rows that were titrated.
type Titration struct {
	Of              string
	Lowest, Highest float64        // pH that were titrated
	PerGram         *acid.Solution // sites and strong ions in a gram of the liquid, without its solvent
	Strength        []float64      // by draw: what a gram holds over what it holds at central values
	Shift           []float64      // by draw: mol of strong ion in a gram that moves the pH as the meter may be off
}

// As is what a titrated liquid goes with.
func (*Titration) As() constituent.ID { return Potassium }

// titratedPart is how much of a titrated liquid a pot holds, by draw.
type titratedPart struct {
	*Titration
	grams []float64
}

// pour adds the part to a solution that has its solvent already.
func (t titratedPart) pour(sol *acid.Solution, d int) {
	sol.Pour(t.PerGram, t.grams[d]*t.Strength[d])
	sol.Strong += t.grams[d] * t.Shift[d]
	sol.Background += t.grams[d] * math.Abs(t.Shift[d]) / 2
}

// Titrated reports whether a row's ions come from a titration.
func Titrated(pot *ledger.Pot, row int) bool {
	return slices.ContainsFunc(pot.Traced(row), func(t ledger.Traced) bool {
		_, is := t.Tracer.(*Titration)
		return is
	})
}

func (in *Ions) addTitrated(t *Titration, grams []float64) {
	for i, part := range in.Titrated {
		if part.Titration == t {
			for d := range in.N {
				in.Titrated[i].grams[d] += grams[d]
			}
			return
		}
	}
	in.Titrated = append(in.Titrated, titratedPart{t, slices.Clone(grams[:in.N])})
}

// Span gives the pH between which a curve is drawn: from its own to the end point, and
// where titrations went below its own or end before the end point, as far as each of
// them tells.
func (in Ions) Span(own float64) (first, last float64) {
	lowest, last := 0.0, EndPoints[0]
	beyond := SpanOf("beyond titration").High
	for _, t := range in.Titrated {
		lowest = max(lowest, t.Lowest)
		last = min(last, t.Highest+beyond)
	}
	first = own
	if lowest > 0 && lowest < own-beyond {
		first = lowest
	}
	return first, max(own, last)
}

// Within gives a pH that every titration in the liquid speaks of, else NaN.
func (in Ions) Within(pH float64) float64 {
	beyond := SpanOf("beyond titration").High
	for _, t := range in.Titrated {
		if pH < t.Lowest-beyond || pH > t.Highest+beyond {
			return math.NaN()
		}
	}
	return pH
}
