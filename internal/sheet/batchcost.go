package sheet

import (
	"fmt"

	"sipsum/internal/batch"
	"sipsum/internal/clean"
)

// lotOf says of which lot a purchase is, until when it is best, and what another lot asks for.
func lotOf(x batch.Purchase) []Line {
	name := clean.Name(x.Name)
	var lines []Line
	if x.Best != "" {
		lines = append(lines, Line{Text: say("batch.best", name, clean.Name(x.Best))})
	}
	switch {
	case x.Lot == "":
	case len(x.Reread) > 0:
		lines = append(lines, Line{Text: say("batch.lot", name, clean.Name(x.Lot), clean.Listed(cleaned(x.Reread)))})
	default:
		lines = append(lines, Line{Text: say("batch.lot.unread", name, clean.Name(x.Lot))})
	}
	return lines
}

// costs says what a glass costs, and of what nobody states a price. Water, ice and gas are counted
// among these too.
func (p bench) costs() []Line {
	var open []string
	for _, x := range p.batch.Purchases {
		if x.Price == nil {
			open = append(open, clean.Name(x.Name))
		}
	}
	var lines []Line
	for _, c := range p.batch.Costs {
		text := say("batch.cost", money(c.Used/p.batch.Serves, c.Currency), money(c.Outlay, c.Currency))
		if len(open) > 0 {
			text = say("batch.cost.least", money(c.Used/p.batch.Serves, c.Currency), money(c.Outlay, c.Currency), clean.Listed(open))
		}
		lines = append(lines, Line{Text: text})
	}
	return lines
}

func money(x float64, currency string) string { return fmt.Sprintf("%.2f %s", x, currency) }
