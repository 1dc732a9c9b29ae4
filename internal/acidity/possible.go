package acidity

import (
	"fmt"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// Unsolvable tells why a pot can have no pH from its composition, if so. The protein of
// what was titrated is in its titration.
func Unsolvable(pot *ledger.Pot) string {
	mass, protein := pot.Central(constituent.Mass), 0.0
	for row := range pot.Rows {
		if !Titrated(pot, row) {
			protein += pot.CentralOf(row, constituent.Protein)
		}
	}
	switch limit := SpanOf("protein").High; {
	case mass <= 0 || pot.Central(constituent.Water) <= 0:
		return "there is no water in it"
	// guard: protein buffers
	case unit.Hundred*protein/mass > limit:
		return fmt.Sprintf("%.1f g of protein in 100 g buffer as its acids do: no pH from composition above %g g; titrate it", unit.Hundred*protein/mass, limit)
	}
	return ""
}

// Surely is what was read of a pot as it stands, and whether its recipe contradicts it.
type Surely struct{ PH, Acidity, Doubted bool }

// Impossible tells why a pH cannot be: a drink of foods is neither alkaline nor more acid
// than any food acid makes it, so an anion or a cation is missing from the tables.
func (in Ions) Impossible(pH float64) string {
	lowest, highest := SpanOf("possible").Low, max(SpanOf("possible").High, in.highest)
	switch {
	case len(in.Titrated) > 0: // the titration says between which pH it tells
	case !in.Plain && pH > highest:
		return "there are more metals than acids to go with them: an acid is missing from the tables; measure the pH"
	case !in.Plain && pH < lowest:
		return "there are more acids than any drink holds: a metal is missing from the tables; measure the pH"
	}
	return ""
}

// Unseen lists what a pH rests on that nobody has seen in print: acids from memory
// that make up at least 5 % of the acid, by equivalents at central values, and
// the uptake of protein.
func (in Ions) Unseen() []string {
	const weighty = 0.05
	total, names := 0.0, []string(nil)
	equivalents := func(a acid.Acid) float64 {
		if a.Constituent == "" {
			return 0
		}
		return in.grams[a.Constituent][0] / a.Equivalent()
	}
	for _, a := range acid.All() {
		total += equivalents(a)
	}
	for _, a := range acid.All() {
		if a.FromMemory() && equivalents(a) >= weighty*total && total > 0 {
			names = append(names, a.Name)
		}
	}
	if in.protein {
		names = append(names, "milk protein")
	}
	return names
}
