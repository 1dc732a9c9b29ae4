package batch

import (
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// settings are those of data/batch.csv.
type settings struct {
	steps       []float64          // g or ml, the finest first
	share       float64            // of itself, by which no amount is off
	sold        map[string]string  // by group, as it is sold without what nobody eats
	shots       map[string]float64 // g of one, by food: what is pulled with each glass
	noticed     map[string]noticed
	least, most float64         // serves
	mass        float64         // g
	large       []unit.Measure  // US measures of much, the larger last
	largeFrom   float64         // of one, from which on it is used
	divisions   float64         // that a scale has at most
	anew        map[string]bool // steps after which a pot has days of its own
}

// noticed is the least share of a taste that somebody notices.
type noticed struct {
	share  float64
	source string
}

const percent = 0.01

// limits reads data/batch.csv.
var limits = sync.OnceValue(func() settings {
	s := settings{noticed: map[string]noticed{}, anew: map[string]bool{}, sold: map[string]string{}, shots: map[string]float64{}}
	for _, row := range embedded.Rows("batch.csv") {
		value, _ := row.Optional("value")
		switch what := row.Text("what"); what {
		case "step":
			s.steps = append(s.steps, value)
		case "share":
			s.share = value * percent
		case "shot":
			s.shots[row.Text("of")] = value
		case "shelled":
			s.sold[row.Text("of")] = what
		case "noticed":
			s.noticed[row.Text("of")] = noticed{value * percent, row.Text("source")}
		case "serves least":
			s.least = value
		case "serves most":
			s.most = value
		case "large":
			s.large = append(s.large, unit.Measure{Name: row.Text("of"), Kind: unit.Volume, Factor: value})
		case "large from":
			s.largeFrom = value
		case "anew":
			s.anew[row.Text("of")] = true
		case "divisions":
			s.divisions = value
		case "mass most":
			s.mass = value * unit.Kilo
		default:
			row.Fail("no setting %q", what)
		}
	}
	return s
})
