package solution

import "sync"

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
	const file = "solution_tcs.csv"
	var cells []holding
	for _, row := range dataRows(file) {
		cells = append(cells, holding{
			packed: row[0] == "A",
			aw:     limit{dataNumber(file, row[1]), row[2] == "yes"}, ph: limit{dataNumber(file, row[3]), row[4] == "yes"},
			assessment: row[5] == "assess", source: row[6],
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
