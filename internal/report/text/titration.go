package textreport

import (
	"fmt"
	"math"
	"slices"

	"sipsum/internal/chemistry"
)

// The columns of a titration curve and of a table of doses.
const (
	curveName  = 18
	curveCell  = 6
	targetCell = 16
	doseCell   = 15
)

// curve prints a titration curve in two lines: the pH, and the base that takes 100 g
// there (below zero: acid).
func (p solutions) curve(points []chemistry.CurvePoint) {
	for part := range slices.Chunk(p.fewer(points), (p.width-curveName)/curveCell) {
		pH, base := left("  titrated to pH", curveName), left("  mmol in 100 g", curveName)
		for _, c := range part {
			pH += right(fmt.Sprintf("%.1f", c.PH), curveCell)
			base += right(minus(threeDigits(c.Base)), curveCell)
		}
		p.line(pH)
		p.line(base)
	}
}

// fewer leaves the half pH out of a curve that is too long for the page.
func (p solutions) fewer(points []chemistry.CurvePoint) []chemistry.CurvePoint {
	if curveName+len(points)*curveCell <= p.width {
		return points
	}
	var list []chemistry.CurvePoint
	for i, c := range points {
		end := i == 0 || i == len(points)-1
		if end || math.Abs(c.Base) < 1e-9 || c.PH == math.Trunc(c.PH) {
			list = append(list, c)
		}
	}
	return list
}

// threeDigits writes an amount of a table: as good as the eye reads a curve.
func threeDigits(x float64) string {
	const tens, hundreds = 10, 100
	switch size := math.Abs(x); {
	case size < 1e-9:
		return "0"
	case size < tens:
		return rounded(x, -2)
	case size < hundreds:
		return rounded(x, -1)
	}
	return rounded(x, 0)
}

// doses prints, for some acidities above the present one, how much of each stock goes
// into 100 g, and the pH there. Doses stand acid by acid, each with the same targets.
func (p solutions) doses(doses []chemistry.Dose) {
	if len(doses) == 0 {
		return
	}
	p.paragraph(marginWidth, 2, "To a higher titratable acidity: ml of a stock for 100 g, and the pH there")
	var acids []string
	at := map[string][]chemistry.Dose{}
	for _, d := range doses {
		if at[d.Acid] == nil {
			acids = append(acids, d.Acid)
		}
		at[d.Acid] = append(at[d.Acid], d)
	}
	for part := range slices.Chunk(acids, (p.width-targetCell)/doseCell) {
		p.doseTable(part, at)
	}
	if slices.ContainsFunc(doses, func(d chemistry.Dose) bool { return math.IsNaN(d.PH) }) {
		p.line("  ", "–: more acid than was titrated")
	}
}

// doseTable prints the doses of as many stocks as stand side by side.
func (p solutions) doseTable(acids []string, at map[string][]chemistry.Dose) {
	head, strengths := left("  to reach", targetCell), left("", targetCell)
	for _, name := range acids {
		head += right(name, doseCell)
	}
	p.line(head)
	for _, name := range acids {
		strengths += right(fmt.Sprintf("%g %%", at[name][0].Percent), doseCell)
	}
	p.line(strengths)
	last := firstPlace(at[acids[0]][0].Acidity)
	if targets := at[acids[0]]; len(targets) > 1 {
		last = firstPlace(targets[1].Acidity - targets[0].Acidity) // the step
	}
	for i, first := range at[acids[0]] {
		row := left("  "+rounded(first.Acidity, last)+" %", targetCell)
		for _, name := range acids {
			cell := "–"
			if i < len(at[name]) {
				cell = doseWords(at[name][i])
			}
			row += right(cell, doseCell)
		}
		p.line(row)
	}
}

func doseWords(d chemistry.Dose) string {
	if math.IsNaN(d.PH) {
		return threeDigits(d.Ml) + " ml  –  "
	}
	return fmt.Sprintf("%s ml %.2f", threeDigits(d.Ml), d.PH)
}
