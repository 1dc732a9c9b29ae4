package textreport

import (
	"io"
	"math"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/estimate"
	"sipsum/internal/sheet"
)

// causeWords says what stands behind a cause of spread.
var causeWords = map[estimate.Cause]string{
	estimate.Hand:      "amounts, and shares you state",
	estimate.Tables:    "values and densities of foods",
	estimate.Steps:     "factors of preparation steps",
	estimate.Constants: "constants of nature",
	estimate.Readings:  "instruments of readings taken",
	estimate.Doubts:    "readings that contradict their recipe",
}

const (
	causeWidth = 10
	driverBar  = 20
)

// Why prints what the spread of a figure of the serving comes from.
func Why(w io.Writer, s *sheet.Sheet, st Style) error {
	p, d := newPage(st), s.Assay.Drivers
	p.title(Clean(s.Assay.Drink.Name, mostName), "why")
	p.paragraph(0, 2, clean.UpperFirst(sheet.WordsFor(d.Figure.Constituent))+" of a serving: "+p.sentence(d.Figure.Result, "")+".")
	if len(d.Inputs) == 0 {
		p.gap()
		p.paragraph(0, 0, "No single input moves it: it is exact, or many small things share its spread.")
		foot(p, s)
		return p.write(w)
	}
	p.heading("Where its spread comes from")
	causes, rest := sheet.Causes(d)
	for _, c := range causes {
		printShare(p, string(c.Cause), causeWords[c.Cause], c.Share)
	}
	if rest > 0 {
		printShare(p, "together", "what no single input explains", rest)
	}
	p.heading("The inputs behind it")
	inputs, more := sheet.Drivers(d)
	for _, in := range inputs {
		way := "more of it, less of this"
		if in.Raises {
			way = "more of it, more of this"
		}
		p.hanging("  "+right(wholePercent(in.Share), 5)+"  "+left(string(in.Cause), causeWidth), 2+5+2+causeWidth, Clean(pathWords(in.Name), mostProse)+" ("+way+")")
	}
	if more > 0 {
		p.line("  and ", grouped(more), " under 1 %")
	}
	if kin := d.Figure.ByKin(); len(kin) > 0 {
		p.heading("What nobody measured")
		for _, c := range kin {
			p.hanging("  ", 4, Clean(c.Food, mostName)+" "+kinWords(c.SourceNote))
		}
	}
	foot(p, s)
	return p.write(w)
}

// printShare prints the share of a spread.
func printShare(p *page, name, words string, share float64) {
	bar := strings.Repeat("█", int(math.Round(min(max(share, 0), 1)*driverBar)))
	p.tabled(tableLine{
		margin: "  " + left(name, causeWidth), name: words, number: right(wholePercent(share), 6),
		columns: []column{{text: " " + bar, width: 1 + driverBar}},
	})
}

func wholePercent(share float64) string { return rounded(share*percentOf, 0) + glue + "%" }

// pathWords writes the path of a line as the designer named its parts.
func pathWords(path string) string {
	return strings.NewReplacer("~s", "/", "~t", "~").Replace(path)
}
