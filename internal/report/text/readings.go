package textreport

import (
	"math"

	"sipsum/internal/reading"
	"sipsum/internal/sheet"
)

// readings prints what was read, what the recipe expects and what is used, the readings
// that do not agree with the recipe first.
func (p view) readings() {
	read := p.s.Read()
	if read.None() {
		return
	}
	p.heading("Readings")
	for _, r := range read.Disagree {
		p.hanging("  ! ", bulletIndent, readingLine(r)+" – recipe and reading disagree: "+Clean(r.Advice, mostProse))
	}
	for _, text := range read.Notes {
		p.hanging("  ! ", bulletIndent, Clean(text, mostProse))
	}
	for _, r := range read.Agree {
		p.hanging("  – ", bulletIndent, readingLine(r))
	}
}

// contradicting says which readings contradict their recipe, on a page that tells no others.
func contradicting(p *page, s *sheet.Sheet) {
	lines := sheet.Contradictions(s)
	if len(lines) > 0 {
		p.gap()
	}
	for _, text := range lines {
		p.hanging("  ! ", bulletIndent, Clean(text, mostProse))
	}
}

// readingNames name readings in a list.
var readingNames = map[string]string{"mass": "mass", "brix": "°Brix", "tds": "dissolved solids", "density": "density", "abv": "strength", "ph": "pH", "ta": "titratable acidity"}

func readingLine(r reading.Reading) string {
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
func readingNumber(r reading.Reading, x float64) string {
	digits := mostDigits
	if r.Kind == "density" {
		digits = densityDigits
	}
	return rounded(x, min(firstPlace(x)-digits+1, 0))
}

// toWrite is the line that a reading takes in the drink file, to stand beside what is
// withheld; of is the component, or empty: the drink.
func toWrite(of string, w sheet.Withheld) string {
	if w.Reading == "" {
		return ""
	}
	return ". " + w.Who + ": write " + lineFor(of, w.Reading)
}

// lineFor says under what the line of a reading is written, and how it begins.
func lineFor(of, reading string) string {
	line := "measured:" + glue + "{" + reading + ":" + glue + "…}"
	if of == "" {
		return "under finish: -" + glue + line
	}
	return "under " + Clean(of, mostName) + ": " + line
}
