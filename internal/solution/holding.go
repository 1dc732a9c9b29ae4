package solution

import (
	"sync"

	"sipsum/internal/embedded"
)

// holding is a cell of the Food Code's interaction tables.
type holding struct {
	packed     bool // table A: heated to destroy vegetative cells, then packaged
	aw, ph     limit
	assessment bool
	source     string
}

type limit struct {
	upTo     float64
	included bool
}

func (l limit) holds(x float64) bool { return x < l.upTo || l.included && x == l.upTo }

var holdings = sync.OnceValue(func() []holding {
	var cells []holding
	for _, row := range embedded.Rows("solution_tcs.csv") {
		cells = append(cells, holding{
			packed: row.Text("table") == "A",
			aw:     limit{row.Number("aw_up_to"), row.Text("aw_included") == "yes"}, ph: limit{row.Number("ph_up_to"), row.Text("ph_included") == "yes"},
			assessment: row.Text("time_temperature_control") == "assess", source: row.Text("source"),
		})
	}
	return cells
})

// NeedsAssessment tells whether a food of a water activity and a pH needs a
// product assessment under the FDA Food Code before it may be held without time
// or temperature control; until then it is kept cold. packed means that it was
// heated to destroy vegetative cells and packaged after that: at a bar it
// seldom was. The tables do not lift what the Code names outright (animal
// foods, cut melons, tomatoes and greens, sprouts, garlic in oil); local codes
// come first. Give the highest pH and water activity that the food may have.
func NeedsAssessment(aw, pH float64, packed bool) (needs bool, source string) {
	for _, cell := range holdings() { // in order: the first cell that holds both is the narrowest
		if cell.packed == packed && cell.aw.holds(aw) && cell.ph.holds(pH) {
			return cell.assessment, cell.source
		}
	}
	return true, ""
}
