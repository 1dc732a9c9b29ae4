package sheet

import (
	"fmt"
	"math"

	"sipsum/internal/batch"
	"sipsum/internal/clean"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// lotOf says of which lot a purchase is, until when it is best, and what another lot asks for.
func lotOf(x batch.Purchase) []Line {
	name := clean.Name(x.Name)
	var lines []Line
	switch {
	case x.Past:
		lines = append(lines, Line{Text: say("batch.past", name, clean.Name(x.Best))})
	case x.Best != "" && len(x.Late) == 0:
		lines = append(lines, Line{Text: say("batch.best", name, clean.Name(x.Best))})
	}
	for _, l := range x.Late {
		lines = append(lines, Line{Text: say("batch.late", name, clean.Name(x.Best), clean.Name(l.Pot), note.Grams(l.UseUp))})
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
	var open, serve, least, packs []string
	var lines []Line
	for _, x := range p.batch.Purchases {
		if x.Price == nil {
			open = append(open, clean.Name(x.Name))
		}
		if x.Unpriced != nil {
			lines = append(lines, Line{Text: say("batch.unpriced", clean.Name(x.Name), x.Unpriced.Per.String())})
		}
	}
	for _, c := range p.batch.Costs { // several currencies make one price
		serve = append(serve, money(c.Used/p.batch.Serves)+" "+c.Currency)
		least = append(least, leastMoney(c.Used/p.batch.Serves)+" "+c.Currency)
		packs = append(packs, money(c.Outlay)+" "+c.Currency)
	}
	switch {
	case len(serve) == 0:
		return lines
	case len(open) > 0:
		return append(lines, Line{Text: say("batch.cost.least", clean.Listed(least), clean.Listed(packs), clean.Listed(open))})
	}
	return append(lines, Line{Text: say("batch.cost", clean.Listed(serve), clean.Listed(packs))})
}

const cents = 100

// money writes a price; one that is known is not nothing.
func money(x float64) string {
	if x > 0 && x < 0.5/cents {
		return "< 0.01"
	}
	return fmt.Sprintf("%.2f", x)
}

// leastMoney writes the least that something costs, rounded down: of less than a cent two digits.
func leastMoney(x float64) string {
	scale := float64(cents)
	for x > 0 && x*scale < 1 {
		scale *= cents
	}
	down := math.Floor(x*scale+unit.Closeness) / scale
	if scale > cents {
		return unit.Number(down)
	}
	return fmt.Sprintf("%.2f", down)
}
