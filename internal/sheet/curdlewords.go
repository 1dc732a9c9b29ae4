package sheet

import (
	"fmt"
	"math"

	"sipsum/internal/clean"
	"sipsum/internal/curdling"
	"sipsum/internal/figure"
	"sipsum/internal/unit"
)

// CurdleStanding says where a drink with milk stands.
func CurdleStanding(c *curdling.Judgement) string {
	band := c.Stand.Curdling
	at := figure.Plain(c.Celsius) + glue + "°C"
	if c.Assumed {
		at += " (assumed: the drink names no temperature)"
	}
	s := figure.Of(c.PH)
	pH := s.Number
	if s.Low != "" {
		pH += " (" + s.Low + "–" + s.High + ")"
	}
	return fmt.Sprintf("The %s begins to curdle at pH%s%s at %s. The drink stands at pH%s%s, with %.0f%s%% of %s: %s, smooth in %.0f%s%% of the draws.",
		clean.Name(c.Protein), glue, figure.Span(band.Low, band.High, phPlace), at, glue, pH, unit.Hundred*c.Stand.MilkShare, glue,
		clean.Name(clean.Listed(c.Milk)), c.Stand.Verdict, unit.Hundred*c.Stand.Smooth, glue)
}

// phPlace: a published pH of curdling is good to a tenth.
const phPlace = -1

// WayWords says a change that keeps a drink smooth; amounts are rounded to the safe side.
func WayWords(c *curdling.Judgement, w curdling.Way) string {
	grams := figure.Upward(w.Grams, figure.FirstPlace(w.Grams)-1) + glue + "g"
	switch w.Kind {
	case curdling.LessSour:
		grams += " less of " + clean.Name(c.Sour)
	case curdling.MoreMilk:
		grams += " more of " + clean.Name(clean.Listed(c.Milk))
	case curdling.Cooler:
		grams = "poured at " + figure.Plain(math.Floor(w.Celsius)) + glue + "°C or cooler"
	default:
		grams += " " + w.Salt.Name + " (" + w.Salt.Additive + "), dissolved in the milk first"
	}
	return fmt.Sprintf("%s: pH%s%s", grams, glue, figure.Rounded(w.PH, phPlace-1))
}

// The sentences about milk that stand where it is judged.
const (
	NoWayOut = "No single change within reach keeps it smooth."
	WaysOut  = "Ways out, the smallest change first (suggestions, each alone, a serving):"
)
