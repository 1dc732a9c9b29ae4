package textreport

import (
	"math"
	"slices"
	"strings"

	"sipsum/internal/assay"
)

// noteDisagrees is the kind of the notes that say which reading and recipe disagree.
const noteDisagrees = "reading disagrees"

// readings prints what was read, what the recipe expects and what is used, the readings
// that do not agree with the recipe first.
func (p *page) readings(a *assay.Assay) {
	others := disagreements(a)
	if len(a.Readings) == 0 && len(others) == 0 {
		return
	}
	p.heading("Readings")
	for _, r := range a.Readings {
		if !r.Agrees {
			p.hanging("  ! ", bulletIndent, readingLine(r)+" – recipe and reading disagree: "+Clean(r.Advice, mostProse))
		}
	}
	for _, text := range others {
		p.hanging("  ! ", bulletIndent, Clean(text, mostProse))
	}
	for _, r := range a.Readings {
		if r.Agrees {
			p.hanging("  – ", bulletIndent, readingLine(r))
		}
	}
}

// disagreements are the notes of readings that are not figures, such as titrations.
func disagreements(a *assay.Assay) []string {
	var list []string
	for _, n := range a.Notes {
		told := func(r assay.Reading) bool { return r.Note() == n.Text }
		if n.Kind == noteDisagrees && !slices.ContainsFunc(a.Readings, told) {
			list = append(list, n.Text)
		}
	}
	return list
}

// readingNames name readings in a list.
var readingNames = map[string]string{"mass": "mass", "brix": "°Brix", "tds": "dissolved solids", "density": "density", "abv": "strength", "ph": "pH", "ta": "titratable acidity"}

func readingLine(r assay.Reading) string {
	unit := ""
	if r.Kind != "ph" && r.Kind != "brix" { // the name stands before it
		unit = glue + Clean(r.Unit, mostName)
	}
	of := ""
	if len(r.Path) > 0 {
		of = r.Path[len(r.Path)-1]
	}
	expected := "expected " + readingNumber(r, r.Expected)
	if math.IsNaN(r.Expected) {
		expected = "the recipe does not tell"
	}
	return potWords(of) + ", " + readingNames[r.Kind] + ": read" + glue + plain(r.Read) + " · " + expected + " · used" + glue + readingNumber(r, r.Used) + unit
}

// readingNumber writes what a recipe expects to the place that an instrument shows.
func readingNumber(r assay.Reading, x float64) string {
	digits := mostDigits
	if r.Kind == "density" {
		digits = densityDigits
	}
	return rounded(x, min(firstPlace(x)-digits+1, 0))
}

// toWrite is the line that a reading takes in the drink file, to stand beside what is
// withheld; of is the component, or empty: the drink. It is empty where a reading is no
// help: of what has been titrated the titration tells, and of what is dry nothing.
func toWrite(of, why, who, reading string) string {
	if strings.Contains(why, "was titrated") || strings.Contains(why, "no water") {
		return ""
	}
	line := "measured:" + glue + "{" + reading + ":" + glue + "…}"
	if of == "" {
		return ". " + who + ": write under finish:  -" + glue + line
	}
	return ". " + who + ": write under " + Clean(of, mostName) + ":  " + line
}
