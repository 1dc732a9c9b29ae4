package svgreport

import (
	"fmt"
	"html"

	"sipsum/internal/sheet"
)

// The measures of a curve: what is left of it for the labels of the axis that goes up, per cent,
// and its height.
const (
	curveLeft  = 8.0
	curveWide  = 90.0
	curveTop   = 8.0
	curveTall  = 180.0
	curveBelow = 34.0
)

// Curve draws a titration curve and the drink on it.
func Curve(c *sheet.Curve) string {
	p := piece{axis: c.Across}
	x := func(base float64) float64 { return curveLeft + p.at(base)*curveWide/100 }
	y := func(pH float64) float64 {
		return curveTop + curveTall*(1-(pH-c.Up.From)/(c.Up.To-c.Up.From))
	}
	for _, t := range c.Up.Ticks {
		p.add(`<line x1="%g%%" y1="%.1f" x2="%g%%" y2="%.1f" class="grid"/>`, curveLeft, y(t.At), curveLeft+curveWide, y(t.At))
		p.add(`<text x="%g%%" y="%.1f" class="tick" text-anchor="end">%s</text>`, curveLeft-1, y(t.At)+4, html.EscapeString(t.Text))
	}
	p.add(`<text x="%g%%" y="%.1f" dx="4" class="tick">%s</text>`, curveLeft, curveTop+10, html.EscapeString(c.Up.Unit))
	bottom := curveTop + curveTall
	for i, t := range c.Across.Ticks {
		anchor := "middle"
		if i == len(c.Across.Ticks)-1 {
			anchor = "end"
		}
		p.add(`<line x1="%.2f%%" y1="%g" x2="%.2f%%" y2="%g" class="rule"/>`, x(t.At), bottom, x(t.At), bottom+4)
		p.add(`<text x="%.2f%%" y="%g" class="tick" text-anchor="%s">%s</text>`, x(t.At), bottom+15, anchor, html.EscapeString(t.Text))
	}
	p.add(`<text x="%g%%" y="%g" class="tick" text-anchor="end">%s</text>`, curveLeft+curveWide, bottom+29, html.EscapeString(c.Across.Unit))
	p.add(`<line x1="%g%%" y1="%g" x2="%g%%" y2="%g" class="rule"/>`, curveLeft, bottom, curveLeft+curveWide, bottom)
	for i := 1; i < len(c.Points); i++ {
		from, to := c.Points[i-1], c.Points[i]
		p.add(`<line x1="%.2f%%" y1="%.1f" x2="%.2f%%" y2="%.1f" class="curve"/>`, x(from.Base), y(from.PH), x(to.Base), y(to.PH))
	}
	p.add(`<circle cx="%.2f%%" cy="%.1f" r="4.5" class="dot"/>`, x(c.Own.Base), y(c.Own.PH))
	return p.drawn("titration", bottom+curveBelow)
}

// The measures of a map.
const (
	mapLeft = 16.0 // per cent, for the labels of its rows
	mapRow  = 22.0
)

// Smoothness draws the map of where a drink with milk stays smooth: a sign in each cell, darker as
// it is worse, and a frame round the drink as it stands.
func Smoothness(m *sheet.Smoothness) string {
	var p piece
	wide := (100 - mapLeft) / float64(max(len(m.Heads), 1))
	for i, h := range m.Heads {
		p.add(`<text x="%.2f%%" y="14" class="tick" text-anchor="middle">%s</text>`, mapLeft+wide*(float64(i)+0.5), html.EscapeString(h))
	}
	frame := ""
	for i, r := range m.Rows {
		y := mapRow * float64(i+1)
		p.add(`<text x="%g%%" y="%g" class="tick" text-anchor="end">%s</text>`, mapLeft-2, y+15, html.EscapeString(r.Share))
		for k, c := range r.Cells {
			x := mapLeft + wide*float64(k)
			p.add(`<rect x="%.2f%%" y="%g" width="%.2f%%" height="%g" class="cell v-%s"/>`, x, y, wide, mapRow, html.EscapeString(string(c.Word)))
			p.add(`<text x="%.2f%%" y="%g" class="sign s-%s" text-anchor="middle">%s</text>`, x+wide/2, y+15, html.EscapeString(string(c.Word)), html.EscapeString(c.Sign))
			if c.Own {
				frame = fmt.Sprintf(`<rect x="%.2f%%" y="%g" width="%.2f%%" height="%g" class="own"/>`, x, y, wide, mapRow)
			}
		}
	}
	p.add("%s", frame)
	return p.drawn("smooth", mapRow*float64(len(m.Rows)+1)+2)
}
