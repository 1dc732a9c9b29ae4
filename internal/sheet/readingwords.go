package sheet

import (
	"math"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/drivers"
	"sipsum/internal/figure"
	"sipsum/internal/reading"
)

// glue joins words that must not be parted at the end of a line.
const glue = "\u00a0"

// readingWords name readings in a sentence.
var readingWords = map[string]string{"mass": "the mass", "brix": "°Brix", "tds": "dissolved solids", "density": "the density", "abv": "the strength", "ph": "the pH", "ta": "the titratable acidity"}

// ReadingWords names a reading in a sentence.
func ReadingWords(kind string) string { return readingWords[kind] }

// ReadingLine says what was read, what the recipe expects and what is used.
func ReadingLine(r reading.Reading) string {
	of := ""
	if len(r.Path) > 0 {
		of = r.Path[len(r.Path)-1]
	}
	expected := "expected " + readingNumber(r, r.Expected)
	if math.IsNaN(r.Expected) {
		expected = "the recipe does not tell"
	}
	return PotWords(of) + ", " + readingName(r) + ": read" + glue + figure.Plain(r.Read) + takenBy(r) + " · " + expected + " · used" + glue + strings.TrimSpace(readingNumber(r, r.Used)+glue+unitBeside(r))
}

// takenBy says which instrument of the shelf took a reading, and what it shows too much, give or take its
// standard deviation.
func takenBy(r reading.Reading) string {
	if r.By.Meter == "" {
		return ""
	}
	more := "too much"
	if r.By.Off < 0 {
		more = "too little"
	}
	place := min(figure.FirstPlace(r.By.OffU)-1, 0)
	return " by " + clean.Name(r.By.Meter) + ", which shows" + glue + figure.Rounded(math.Abs(r.By.Off), place) + " ±" + glue + figure.Rounded(r.By.OffU, place) + " " + more
}

// readingName names a reading in a list.
func readingName(r reading.Reading) string { return say("read." + r.Kind) }

// unitBeside is the unit of a reading where its name does not say it.
func unitBeside(r reading.Reading) string {
	if r.Kind == "ph" || r.Kind == "brix" {
		return ""
	}
	return clean.Name(r.Unit)
}

// readingNumber writes what a recipe expects to the place that an instrument shows.
func readingNumber(r reading.Reading, x float64) string {
	return figure.Rounded(x, min(figure.FirstPlace(x)-readingDigits(r)+1, 0))
}

// readingDigits is how many digits an instrument shows.
func readingDigits(r reading.Reading) int {
	if r.Kind == "density" {
		return figure.DensityDigits
	}
	return figure.MostDigits
}

// PotWords names a component, or the drink where there is none.
func PotWords(of string) string {
	if of == "" {
		return "the finished drink"
	}
	return clean.Name(of)
}

// ToWrite is the line that a reading takes in the drink file, to stand beside what is
// withheld; of is the component, or empty: the drink.
func ToWrite(of string, w Withheld) string {
	if w.Reading == "" {
		return ""
	}
	return ". " + w.Who + ": write " + LineFor(of, w.Reading)
}

// LineFor says under what the line of a reading is written, and how it begins.
func LineFor(of, reading string) string {
	line := "measured:" + glue + "{" + reading + ":" + glue + "…}"
	if of == "" {
		return "under finish: -" + glue + line
	}
	return "under " + clean.Name(of) + ": " + line
}

// Expectation says what the recipe expects the instrument to show.
func Expectation(g drivers.Suggestion) string {
	last := figure.Place(g.Expect.Mean, g.Expect.SD, figure.DensityDigits)
	text := "the recipe expects " + figure.Rounded(g.Expect.Mean, last)
	if g.Unit != "pH" { // the word stands before it
		text += glue + g.Unit
	}
	if in := figure.Span(g.Expect.Low, g.Expect.High, last); in != "" {
		text += " (" + in + ")"
	}
	return text
}

// NarrowsBy writes by how much a reading narrows a figure.
func NarrowsBy(n drivers.Narrowing) string {
	const hundred = 100
	return WordsFor(n.Constituent) + glue + "by" + glue + figure.Rounded(n.By*hundred, 0) + glue + "%"
}
