package svgreport

import (
	"fmt"

	"sipsum/internal/sheet"
)

// The measures of a flow, in parts of a row: a bar, and below it what leads to the next.
const (
	flowRow  = 100.0
	flowBar  = 56.0
	flowWide = 1000.0
)

// FlowRow is how tall a row is, in the size of the type of the page (rem): that of the words beside it.
const FlowRow = 2.5

// FlowPot draws what becomes of the mass of a pot: a bar for each stage as long as it weighs, and
// between two of them how it narrows or widens. It stretches to the rows of words beside it.
func FlowPot(a sheet.Axis, pot sheet.FlowPot) string {
	p := piece{axis: a}
	x := func(g float64) float64 { return p.at(g) * flowWide / 100 }
	for i, s := range pot.Stages {
		y := flowRow * float64(i)
		if i > 0 {
			before := pot.Stages[i-1]
			p.add(`<path d="M0 %.0fH%.1fL%.1f %.0fH0Z" class="flowing"/>`, y-flowRow+flowBar, x(before.Grams), x(s.Grams), y)
		}
		from := 0.0
		for _, part := range s.Segments {
			p.add(`<rect x="%.1f" y="%.0f" width="%.1f" height="%.0f" class="k-%s seam" vector-effect="non-scaling-stroke"/>`, x(from), y, x(part.Amount), flowBar, part.Hue)
			from += part.Amount
		}
		if len(s.Segments) == 0 {
			p.add(`<rect x="0" y="%.0f" width="%.1f" height="%.0f" class="k-%s"/>`, y, x(s.Grams), flowBar, s.Hue)
		}
	}
	return fmt.Sprintf(`<svg class="flow" width="100%%" style="height:%grem" viewBox="0 0 %.0f %.0f" preserveAspectRatio="none" aria-hidden="true">%s</svg>`,
		FlowRow*float64(len(pot.Stages)), flowWide, flowRow*float64(len(pot.Stages)), p.String())
}
