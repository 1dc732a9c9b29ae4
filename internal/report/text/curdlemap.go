package textreport

import (
	"fmt"
	"math"

	"sipsum/internal/curdling"
	"sipsum/internal/sheet"
)

// milk prints where a drink with milk stays smooth.
type milk struct{ *page }

// print prints where a drink with milk stays smooth: the verdict and the ways
// out, and if whole the map.
func (p milk) print(c *curdling.Judgement, whole bool) {
	if c == nil {
		return
	}
	p.heading("Where it stays smooth")
	if c.Why != "" {
		p.paragraph(marginWidth, 2, "No estimate: "+Clean(c.Why, mostProse)+".")
		p.paragraph(marginWidth, 2, "Reading to take: "+Clean(c.Do, mostProse)+".")
		return
	}
	p.paragraph(marginWidth, 0, sheet.CurdleStanding(c))
	if whole {
		p.curdleMap(c)
	}
	p.waysOut(c)
	if whole {
		p.paragraph(marginWidth, 2, "pH of curdling: "+Clean(c.Stand.Curdling.Source, mostProse)+".")
	}
	p.paragraph(0, 0, sheet.MilkEstimate)
}

// verdictSign is a verdict in a cell of the map.
var verdictSign = map[curdling.Verdict]string{curdling.Smooth: "·", curdling.Doubtful: "?", curdling.Curdles: "×"}

// The columns of the map.
const (
	timesWidth = 8
	milkWidth  = 15
	doseWidth  = 6
)

// hundredth is as fine as a factor is printed.
const hundredth = 100

// curdleMap prints a sign for each cell, the drink's own in brackets.
func (p milk) curdleMap(c *curdling.Judgement) {
	m := c.Map
	p.gap()
	p.hanging(left("    milk", milkWidth)+"  ", milkWidth+2, fit(Clean(c.Sour, mostName), p.width/2)+", times what the drink holds")
	most := (p.width - milkWidth - 1) / doseWidth
	for from := 0; from < len(m.Doses); from += most {
		p.mapOf(m, from, min(from+most, len(m.Doses)))
	}
	p.paragraph(marginWidth+2, 2, "· smooth, ? doubtful, × curdles, [ ] the drink; shares at its own dose")
	p.gap()
}

// mapOf prints as many doses of a map as stand side by side.
func (p milk) mapOf(m curdling.Map, from, to int) {
	head := left("   times  share", milkWidth+1)
	for _, dose := range m.Doses[from:to] {
		head += right(plain(dose), doseWidth-1) + " "
	}
	p.line(head)
	for i := len(m.Milks) - 1; i >= 0; i-- {
		line := right(plain(math.Round(hundredth*m.Milks[i])/hundredth), timesWidth) + right(fmt.Sprintf("%.0f %%", percentOf*m.Shares[i]), milkWidth-timesWidth) + " "
		for k, cell := range m.Cells[i][from:to] {
			sign := " " + verdictSign[cell.Verdict] + " "
			if m.Milks[i] == 1 && m.Doses[from+k] == 1 {
				sign = "[" + verdictSign[cell.Verdict] + "]"
			}
			line += right(sign, doseWidth)
		}
		p.line(line)
	}
}

// waysOut lists the changes that keep the drink smooth.
func (p milk) waysOut(c *curdling.Judgement) {
	if c.Stand.Verdict == curdling.Smooth {
		return
	}
	if len(c.Ways) == 0 {
		p.paragraph(marginWidth, 2, sheet.NoWayOut)
		return
	}
	p.paragraph(marginWidth, 2, sheet.WaysOut)
	salted := false
	for _, w := range c.Ways {
		salted = salted || w.Kind == curdling.Buffer
		p.hanging("  – ", bulletIndent, sheet.WayWords(c, w))
	}
	if salted {
		p.paragraph(marginWidth, 2, sheet.SaltAdded)
	}
}
