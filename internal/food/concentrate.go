package food

import (
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/phrase"
	"sipsum/internal/unit"
)

// concentrate is a row of data/concentrates.csv: a juice that is bought concentrated, and the
// dry matter of that juice at single strength.
type concentrate struct {
	group         string
	words, unless phrase.List
	solids        float64 // share
}

var concentrates = sync.OnceValue(func() []concentrate {
	var list []concentrate
	for _, r := range embedded.Rows("concentrates.csv") {
		list = append(list, concentrate{r.Text("group"), phrase.Read(r.Text("words")), phrase.Read(r.Text("unless")), r.Number("solids") / unit.Hundred})
	}
	return list
})

// waterGone gives the water that a gram of a bought concentrate lacks of single strength, 0 of
// all other foods.
func waterGone(of subject, water Cell) float64 {
	for _, c := range concentrates() {
		if c.group == of.group && of.called(c.words) && !of.called(c.unless) && water.Known {
			return max((whole-water.Amount)*(whole-c.solids)/c.solids-water.Amount, 0)
		}
	}
	return 0
}
