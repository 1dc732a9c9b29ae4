package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"sipsum/internal/batch"
	"sipsum/internal/clean"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// WeighedText is an amount as it is weighed.
func WeighedText(w batch.Weighed) string {
	switch {
	case w.Home != nil:
		return homeAmount(*w.Home)
	case w.Dosed:
		return say("batch.about", massText(w.Grams))
	case w.Portion != "":
		return note.Grams(w.Count) + " × " + clean.Name(w.Portion)
	case w.Amount.Measure.Spread > 0 && w.Grams > 0: // many dashes are weighed
		return amountText(w.Rounded) + " = " + wholeGrams(w.Grams)
	}
	return amountText(w.Rounded)
}

// homeAmount is an amount of a step as it is measured at home, with what a scale would show where one is
// needed, or may help.
func homeAmount(x batch.Spooned) string {
	text := HomeText(x)
	switch {
	case text == "":
		return amountText(x.Scale)
	case x.Weigh != "":
		return text + " (" + say("home.better", amountText(x.Scale)) + ")"
	case x.Step:
		return text + " (" + wholeGrams(x.Grams) + ")"
	}
	return text
}

// StepText is how finely an amount has to be weighed; empty where nobody weighs it.
func StepText(w batch.Weighed) string {
	in := " g"
	if w.Amount.Measure.Kind == unit.Volume {
		in = " ml"
	}
	switch {
	case w.Step.Base > 0:
		return unit.Number(w.Step.Base) + in
	case w.Step.Finer:
		return say("batch.finer")
	}
	return ""
}

// amountText writes a rounded amount with the digits that the scale shows, less than a kilogram in grams.
func amountText(a unit.Amount) string {
	if g, ok := unit.FindMeasure("g"); ok && a.Measure.Name == "kg" && a.Number < 1 {
		a.Number, a.Measure, a.Decimals = a.Base(), g, max(a.Decimals-kiloDigits, 0)
	}
	return strconv.FormatFloat(a.Number, 'f', a.Decimals, 64) + " " + a.Measure.Name
}

// kiloDigits is how many decimals a kilogram has more than its grams.
const kiloDigits = 3

// massText writes grams for a list: three digits, from a kilogram on in kilograms.
func massText(g float64) string {
	if math.IsNaN(g) {
		return ""
	}
	if g >= unit.Kilo {
		return digits(g/unit.Kilo) + " kg"
	}
	return digits(g) + " g"
}

// wholeGrams writes what is made, used and left in grams, as a scale shows it.
func wholeGrams(g float64) string {
	if g >= unit.Hundred {
		return fmt.Sprintf("%.0f g", g)
	}
	return note.Number(g) + " g"
}

func volumeText(ml float64) string {
	if ml >= unit.Kilo {
		return digits(ml/unit.Kilo) + " l"
	}
	return digits(ml) + " ml"
}

// digits writes a number with three digits, from a hundred on whole, of the least the first, and never
// rounds down what has to be bought.
func digits(x float64) string {
	places := 0
	for limit := float64(unit.Hundred); places < 2 && x < limit; limit /= 10 {
		places++
	}
	const least = 6 // finer than any scale
	for x > 0 && places < least && x*math.Pow(10, float64(places)) < 1 {
		places++
	}
	scale := math.Pow(10, float64(places))
	return unit.Number(math.Ceil(x*scale-unit.Closeness*scale) / scale)
}

// servesText counts serves.
func servesText(n float64) string {
	if pieces(n) == "1" {
		return say("batch.serves.one")
	}
	return say("batch.serves", pieces(n))
}

// formOf says in which form something is bought, and what of it is weighed in.
func formOf(x batch.Purchase) []Line {
	name := clean.Name(x.Name)
	switch {
	case x.Shot > 0:
		return []Line{{Text: say("batch.pulled", name, note.Grams(x.Shot))}}
	case x.Form != "":
		return []Line{{Text: say("batch.shelled", name, massText(x.Whole))}}
	case !math.IsNaN(x.Edible):
		return []Line{{Text: say("batch.edible", name, note.Grams(unit.Hundred*x.Edible), massText(x.Weighed))}}
	}
	return nil
}

// pieces writes a count, whole where it is.
func pieces(x float64) string { return strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64) }

// upTo rounds a figure up to two digits, so that nothing moves more than it says.
func upTo(x float64) string {
	if x <= 0 {
		return "0"
	}
	scale := math.Pow(10, 1-math.Floor(math.Log10(x)))
	return strconv.FormatFloat(math.Ceil(x*scale)/scale, 'f', -1, 64)
}

func joinedBy(list []string, with string) string { return strings.Join(list, with) }

// USMeasure writes a volume as a US kitchen measures it: level spoons and cups, the nearest that are
// sold; much of it in quarts and gallons. Empty where there is none.
func USMeasure(ml float64) string {
	if math.IsNaN(ml) || ml <= 0 {
		return ""
	}
	if n, word := batch.Large(ml); word != "" {
		return homeFigure(n) + " " + word
	}
	if a, ok := batch.Nearest(ml); ok {
		return SpoonsText(a)
	}
	return ""
}
