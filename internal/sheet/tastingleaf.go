package sheet

import (
	"strconv"

	"sipsum/internal/clean"
	"sipsum/internal/note"
	"sipsum/internal/tasting"
	"sipsum/internal/unit"
)

// TastingLeaf tells what some tasters can find.
func TastingLeaf(program string, p tasting.Panel) *Leaf {
	n := strconv.Itoa(p.Tasters)
	l := &Leaf{Kind: "tasting", Language: English, Label: say("kind.tasting"), Title: tastersText(p.Tasters), Below: []string{say("tasting." + string(p.Test))}}
	right := []Line{{Text: say("tasting.none")}}
	if p.Right > 0 {
		right = []Line{{Text: say("tasting.right", strconv.Itoa(p.Right), n)}, {Text: say("tasting.alpha", percents(p.Achieved), percents(p.Alpha))}}
	}
	l.lines("", "", append(right, Line{Text: say("tasting.chance", percents(p.Test.Chance()))}))
	g := &Grid{
		Caption: say("tasting.power"),
		Head:    []string{say("tasting.share"), say("tasting.finds"), say("tasting.need", percents(p.Wanted)), say("tasting.steady")},
	}
	var below []Line
	for _, line := range p.Lines {
		first := few(line.First)
		if line.Loses {
			first = say("tasting.loses", first)
			below = []Line{{Text: say("tasting.star")}}
		}
		g.Rows = append(g.Rows, GridRow{Label: say("tasting.cell", percents(line.Share)), Cells: []GridCell{
			{Text: say("tasting.cell", found(line.Power))}, {Text: first}, {Text: few(line.Steady)},
		}})
	}
	l.add(Block{Role: Tabled, Grid: g, Lines: append(below, Line{Text: say("tasting.same")}, Line{Text: say("tasting.order." + string(p.Test))})})
	l.Foot = []string{clean.Name(program)}
	return l
}

// percents writes a share in per cent, with three digits.
func percents(share float64) string { return note.Number(unit.Hundred * share) }

// found writes how often something is found: only what always is is found in 100 %.
func found(share float64) string {
	const nearly = 0.9995 // what three digits would write as all
	if share < 1 && share >= nearly {
		return say("tasting.nearly", "99.9")
	}
	return percents(share)
}

func tastersText(n int) string {
	if n == 1 {
		return say("tasting.title.one")
	}
	return say("tasting.title", strconv.Itoa(n))
}

// few is a number of tasters; 0: more than anybody gathers.
func few(n int) string {
	if n == 0 {
		return say("tasting.more", strconv.Itoa(tasting.Most()))
	}
	return strconv.Itoa(n)
}
