package sheet

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/chemistry"
	"sipsum/internal/clean"
	"sipsum/internal/curdling"
	"sipsum/internal/figure"
)

// liquids are the drink and its house-made components as solutions.
func (p annexed) liquids() []Block {
	a := p.Assay
	if a.Chemistry == nil {
		return nil
	}
	list := []Block{p.liquid("", a.Chemistry)}
	if text := p.restsOn(a.Chemistry); text != "" {
		list[0].Lines = append(list[0].Lines, Line{Text: text})
	}
	if c := curveOf(a.Chemistry); c != nil {
		list = append(list, Block{Picture: c})
	}
	dosed := false
	for _, c := range a.Components {
		if c.Chemistry == nil {
			continue
		}
		list = append(list, p.liquid(c.Name, c.Chemistry))
		if g := dosesOf(clean.Name(c.Name), c.Chemistry.Doses); g != nil {
			dosed = true
			list = append(list, Block{Role: Tabled, Grid: g})
		}
	}
	last := Block{Role: Small, Lines: []Line{{Text: AcidityMeans}}}
	if dosed {
		last.Lines = append(last.Lines, Line{Text: clean.Prose(Doses())})
	}
	return append(list, last)
}

// liquid is one liquid, a component or the drink.
func (p annexed) liquid(of string, c *chemistry.Chemistry) Block {
	l := LiquidOf(c, of == "")
	name, path := clean.Name(of), "liquid."+of
	if of == "" {
		name = say("paper.liquid")
	}
	b := Block{Role: Tabled}
	g := &Grid{Caption: clean.UpperFirst(name), Head: []string{"", "", say("paper.between")}}
	for _, r := range append(l.Rows, l.More...) {
		w := Written{Shown: shortly(r.Result)}
		switch r.Form {
		case Densely:
			last := figure.Place(r.Result.Mean, r.Result.SD, figure.DensityDigits)
			w.Shown = figure.Shown{Number: figure.Rounded(r.Result.Mean, last), Unit: r.Result.Unit, Low: figure.Rounded(r.Result.Low, last), High: figure.Rounded(r.Result.High, last)}
		case HardlyThere:
			w.Shown = figure.Shown{Number: fmt.Sprintf("< %g", chemistry.HardlySour), Unit: "%"}
		case Estimated:
			if _, short := ShortUnits[r.Result.Unit]; !short {
				w.Unit = ""
			}
		}
		indent := 0
		if strings.HasPrefix(r.Name, " ") { // it belongs to the row above
			indent = 1
		}
		g.Rows = append(g.Rows, GridRow{Label: daggered(strings.TrimSpace(r.Name), r.FromMemory), Indent: indent, Cells: []GridCell{
			{Text: w.Bare(), Path: path + "." + strings.TrimSpace(r.Name)}, {Text: w.Range()},
		}})
	}
	if len(g.Rows) > 0 {
		b.Grid = g
	} else {
		b.Heading = clean.UpperFirst(name)
	}
	for _, w := range l.Withheld {
		b.Lines = append(b.Lines, Line{Text: clean.Prose(p.inWords(w.What+": "+w.Why)+w.Bounds) + ToWrite(of, w)})
	}
	b.Lines = append(b.Lines, keptLines(c.Keeping)...)
	return b
}

// keptLines say how a house-made component keeps.
func keptLines(k *chemistry.Keeping) []Line {
	if k == nil {
		return nil
	}
	var lines []Line
	if k.WaterActivity.Why == "" {
		w := Written{Shown: figure.Of(k.WaterActivity.Result)}
		w.Unit = ""
		lines = append(lines, Line{Text: daggered("water activity "+w.Sentence(), k.FromMemory)})
	}
	if f := k.Freezing; Freezes(k) {
		lines = append(lines, Line{Text: fmt.Sprintf("Ice begins to form at %s °C (%s to %s).", degrees(f.Mean), degrees(f.Low), degrees(f.High))})
	}
	if k.Holding != nil {
		lines = append(lines, Line{Text: Holding(k.Holding)})
	}
	return lines
}

// degrees writes a temperature with a proper minus.
func degrees(celsius float64) string {
	return strings.Replace(fmt.Sprintf("%.1f", celsius), "-", "−", 1)
}

// restsOn says on whose published pH a pH rests that is printed.
func (p annexed) restsOn(c *chemistry.Chemistry) string {
	if !PHStands(c) {
		return ""
	}
	var foods []string
	for _, r := range c.RestsOn {
		var numbers []int
		for _, w := range p.PHWorks[r.Food] {
			numbers = append(numbers, p.notes.Number(Citation(w)))
		}
		foods = append(foods, fmt.Sprintf("%s%s, %.2f to %.2f%s", clean.Name(p.inWords(r.Food.String())), RestsAs(r), r.Low, r.High, Numbered(numbers)))
	}
	return "The pH rests on composition and on the published pH of " + clean.Listed(foods) + "."
}

// dosesOf is how much of each stock brings a component to a higher acidity; nil if nothing was titrated.
func dosesOf(of string, doses []chemistry.Dose) *Grid {
	if len(doses) == 0 {
		return nil
	}
	g := &Grid{Caption: say("paper.doses", of), Head: []string{"%"}}
	rows := map[string]int{}
	column := map[string]int{}
	for _, d := range doses {
		if _, ok := column[d.Acid]; !ok {
			column[d.Acid] = len(g.Head) - 1
			g.Head = append(g.Head, fmt.Sprintf("%s, %g %%", d.Acid, d.Percent))
		}
	}
	for _, d := range doses {
		at := fmt.Sprintf("%.2f", d.Acidity)
		if _, ok := rows[at]; !ok {
			rows[at] = len(g.Rows)
			row := GridRow{Label: at, Cells: make([]GridCell, len(g.Head)-1)}
			for i := range row.Cells {
				row.Cells[i].Text = "–"
			}
			g.Rows = append(g.Rows, row)
		}
		text := baseText(d.Ml) + " ml"
		if !math.IsNaN(d.PH) {
			text += fmt.Sprintf(", pH %.2f", d.PH)
		}
		g.Rows[rows[at]].Cells[column[d.Acid]].Text = text
	}
	return g
}

// milk is where a drink with milk stays smooth.
func (p annexed) milk() []Block {
	c := p.Assay.Curdling
	if c == nil {
		return nil
	}
	var first, last Block
	if c.Why != "" {
		first.Lines = []Line{{Text: "No estimate: " + clean.Prose(c.Why) + "."}, {Text: "Reading to take: " + clean.Prose(c.Do) + "."}}
		return []Block{first}
	}
	first.Lines = []Line{{Text: CurdleStanding(c)}}
	if c.Stand.Verdict != curdling.Smooth {
		last.Lines = p.waysOut(c)
	}
	last.Lines = append(last.Lines, Line{Text: "pH of curdling: " + clean.Prose(c.Stand.Curdling.Source) + "."}, Line{Text: MilkEstimate})
	list := []Block{first}
	if m := smoothness(c); m != nil {
		list = append(list, Block{Picture: m})
	}
	return append(list, last)
}

// waysOut lists the changes that keep a drink smooth.
func (p annexed) waysOut(c *curdling.Judgement) []Line {
	if len(c.Ways) == 0 {
		return []Line{{Text: NoWayOut}}
	}
	lines, salted := []Line{{Text: WaysOut}}, false
	for _, w := range c.Ways {
		salted = salted || w.Kind == curdling.Buffer
		lines = append(lines, Line{Text: WayWords(c, w)})
	}
	if salted {
		lines = append(lines, Line{Text: SaltAdded})
	}
	return lines
}
