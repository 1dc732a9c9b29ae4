package ladder

import (
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// worth is from how much of a constituent in 100 ml on a sentence about it is worth saying, and
// which are never spoken of: data/worth.csv.
type worth struct {
	from   map[constituent.ID]float64
	never  map[constituent.ID]bool
	slight float64 // g: nobody would speak of less of what is counted in grams
	pure   float64 // share of a food from which on it is a constituent itself
}

var worthSaying = sync.OnceValue(func() worth {
	w := worth{from: map[constituent.ID]float64{}, never: map[constituent.ID]bool{}}
	for _, row := range embedded.Rows("worth.csv") {
		switch row.Text("what") {
		case "slight":
			w.slight = row.Number("value")
		case "pure":
			w.pure = row.Number("value") / hundred
		case "say":
			id := constituent.Must(constituent.ID(row.Text("constituent"))).ID
			if least, ok := row.Optional("value"); ok {
				w.from[id] = least
			} else {
				w.never[id] = true
			}
		}
	}
	return w
})

const perVolume = 100 // ml

// Worth reports whether a barista would speak of so much of a constituent in a serving of so many
// ml at all: there is enough of it to matter, and the sentence says more than what the thing is.
// Where no volume is known what is there is enough.
func Worth(c *constituent.Constituent, amount, ml float64) bool {
	w := worthSaying()
	return !w.never[c.ID] && !(amount*perVolume < w.from[c.ID]*ml) && !(c.Unit == "g" && amount < w.slight)
}

// Little reports whether there is so little of a constituent in a serving of so many ml that nobody asks
// for it: less than what is said of it, or of what it is a part of.
func Little(c *constituent.Constituent, amount, ml float64) bool {
	for w := worthSaying(); ; c = constituent.Must(c.Parent) {
		if from, ok := w.from[c.ID]; ok {
			return amount*perVolume < from*ml
		}
		if c.Parent == "" {
			return false
		}
	}
}

// Pure reports whether a food that has so much of a constituent in 100 g is the constituent itself.
func Pure(c *constituent.Constituent, in100g float64) bool {
	return c.PerGram > 0 && in100g/c.PerGram >= hundred*worthSaying().pure
}
