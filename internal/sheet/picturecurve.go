package sheet

import (
	"fmt"
	"math"

	"sipsum/internal/chemistry"
	"sipsum/internal/clean"
	"sipsum/internal/curdling"
	"sipsum/internal/figure"
	"sipsum/internal/unit"
)

// Curve is a titration curve: how much base brings 100 g of the drink to a pH.
type Curve struct {
	Title  string
	Across Axis // the base
	Up     Axis // the pH
	Points []CurveMark
	Own    CurveMark // the drink as it stands
	Here   string    // and its words
}

// CurveMark is a point of a curve.
type CurveMark struct{ Base, PH float64 }

// Name says what is drawn.
func (c *Curve) Name() string { return c.Title }

// Table is the curve in numbers.
func (c *Curve) Table() *Grid {
	g := &Grid{Caption: c.Title, Head: []string{c.Up.Unit, c.Across.Unit}}
	for _, m := range c.Points {
		g.Rows = append(g.Rows, GridRow{Label: fmt.Sprintf("%.1f", m.PH), Cells: []GridCell{{Text: baseText(m.Base)}}})
	}
	return g
}

// baseText writes an amount of base as good as the eye reads a curve.
func baseText(x float64) string {
	const nothing = 1e-9
	if math.Abs(x) < nothing {
		return "0"
	}
	return figure.Rounded(x, figure.Place(x, 0, figure.MostDigits))
}

// curveOf is the titration curve of a liquid; nil if there is none.
func curveOf(c *chemistry.Chemistry) *Curve {
	if c == nil || len(c.Curve) < 2 || c.PHMeter.Why != "" {
		return nil
	}
	out := &Curve{Title: say("paper.curve"), Here: say("paper.curve.at"), Own: CurveMark{0, c.PHMeter.Mean}}
	first, last := c.Curve[0], c.Curve[len(c.Curve)-1]
	for _, at := range c.Curve {
		out.Points = append(out.Points, CurveMark{at.Base, at.PH})
	}
	low, high := min(first.Base, last.Base, 0), max(first.Base, last.Base, 0)
	out.Across = axisBetween(low, high, stepOf(high-low), say("paper.curve.axis"))
	out.Up = axisBetween(first.PH, last.PH, scaleBy, unitOfPH)
	return out
}

// Smoothness is the map of where a drink with milk stays smooth.
type Smoothness struct {
	Title string
	Heads []string // of the columns: times the sour part
	Rows  []SmoothRow
	Key   string
}

// SmoothRow is a share of the milk part.
type SmoothRow struct {
	Share string
	Cells []SmoothCell
}

// SmoothCell is a verdict; Own is that of the drink as it stands.
type SmoothCell struct {
	Sign string
	Word curdling.Verdict
	Own  bool
}

// smoothSigns stand for verdicts where there is no room for a word.
var smoothSigns = map[curdling.Verdict]string{curdling.Smooth: "·", curdling.Doubtful: "?", curdling.Curdles: "×"}

// Name says what is drawn.
func (m *Smoothness) Name() string { return m.Title }

// Table is the map in words.
func (m *Smoothness) Table() *Grid {
	g := &Grid{Caption: m.Title, Head: append([]string{say("paper.milk.share")}, m.Heads...)}
	for _, r := range m.Rows {
		row := GridRow{Label: r.Share}
		for _, c := range r.Cells {
			text := string(c.Word)
			if c.Own {
				text = "[" + text + "]"
			}
			row.Cells = append(row.Cells, GridCell{Text: text})
		}
		g.Rows = append(g.Rows, row)
	}
	return g
}

// smoothness draws the map of a judgement, the most milk first; nil if there is none.
func smoothness(c *curdling.Judgement) *Smoothness {
	if c == nil || c.Why != "" || len(c.Map.Cells) == 0 {
		return nil
	}
	m := &Smoothness{Title: say("paper.milk.map", clean.Name(clean.Listed(c.Milk)), clean.Name(c.Sour)), Key: say("paper.milk.key")}
	for _, dose := range c.Map.Doses {
		m.Heads = append(m.Heads, figure.Plain(dose))
	}
	for i := len(c.Map.Milks) - 1; i >= 0; i-- {
		row := SmoothRow{Share: fmt.Sprintf("%.0f %%", unit.Hundred*c.Map.Shares[i])}
		for k, cell := range c.Map.Cells[i] {
			row.Cells = append(row.Cells, SmoothCell{smoothSigns[cell.Verdict], cell.Verdict, c.Map.Milks[i] == 1 && c.Map.Doses[k] == 1})
		}
		m.Rows = append(m.Rows, row)
	}
	return m
}
