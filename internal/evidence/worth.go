package evidence

import (
	"sync"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// worth is from how much of a constituent in 100 ml on a sentence about it is worth saying, and
// which are never spoken of: data/worth.csv.
type worth struct {
	from  map[constituent.ID]float64
	never map[constituent.ID]bool
}

var worthSaying = sync.OnceValue(func() worth {
	w := worth{map[constituent.ID]float64{}, map[constituent.ID]bool{}}
	for _, row := range embedded.Rows("worth.csv") {
		if row.Text("what") != "say" {
			continue
		}
		id := constituent.Must(constituent.ID(row.Text("constituent"))).ID
		if least, ok := row.Optional("value"); ok {
			w.from[id] = least
		} else {
			w.never[id] = true
		}
	}
	return w
})

const perVolume = 100 // ml

// Speaks reports whether a barista would speak of a constituent of a serving of so many ml at all:
// there is enough of it to matter, and the sentence says more than what the thing is. Where no
// volume is known what is there is enough.
func Speaks(c *constituent.Constituent, r composition.Result, ml float64) bool {
	w := worthSaying()
	return !w.never[c.ID] && !(r.Mean*perVolume < w.from[c.ID]*ml) && !(r.Unit == "g" && r.Mean < slightGrams)
}
