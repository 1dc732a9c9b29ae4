package sheet

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/figure"
	"sipsum/internal/foaming"
)

// Foam is a foam of a drink as pages tell it: figures, how it stands to each condition that is
// published of such foams, and of which nothing is.
type Foam struct {
	Name       string // "foam of veil"
	Path       string // where the documents have it
	Rows       []LiquidRow
	Remark     string // beside the overrun; empty: none
	Conditions []FoamLine
	NoRange    string // a sentence; empty: there is one for each
}

// FoamLine is one condition in words, with the works that it comes from.
type FoamLine struct{ Text, Source string }

// The sentences about foams that stand once, below all of them.
const (
	FoamMeans = "Within or outside is where a figure lies beside what was published of such foods alone, at its whole interval. Whether a foam forms, and how long it stands, is never predicted: whip a little and look."
	FoamCards = "Figures of a serving are by mass, and those of 100 ml and of cards by the liquid: no rule was found that counts the gas of a foam."
	airedFoam = "The overrun holds more gas than the charge has: air is in it, or the reading is off."
	noKind    = "No food in it is one of whose foams a condition was found in print: its protein, fat, pH and alcohol stand in its composition."
)

// Foamy tells that bubbles of a foam stand in a serving.
func Foamy(a *assay.Assay) bool { return NoLiquid(a) == "" && a.Filled.Mean > a.Volume.Mean }

// FoamsOf lists the foams of a drink.
func FoamsOf(a *assay.Assay) []Foam {
	var list []Foam
	for i := range a.Foams {
		list = append(list, foamOf(&a.Foams[i], a.Drink.Serves, a.Want.Chemistry))
	}
	return list
}

func foamOf(f *assay.Foam, serves int, judged bool) Foam {
	name := "the drink"
	if serves > 1 {
		name = fmt.Sprintf("the drink, all %d servings", serves)
	}
	if f.Component != "" {
		name = f.Component
	}
	out := Foam{Name: "foam of " + name, Path: "foam." + f.Path}
	add := func(name string, r composition.Result, form Form) {
		if r.Unit != "" {
			out.Rows = append(out.Rows, LiquidRow{Name: name, Form: form, Result: r})
		}
	}
	add(f.Gas+", charged", f.Charge, Metered)
	add("  in the liquid, closed", f.Dissolved, Metered)
	add("  above it", f.Head, Metered)
	add("pressure above the air's", f.Pressure, Metered)
	add("as liquid", f.Liquid, Metered)
	add("overrun, as read", f.Overrun, Metered)
	add("  liquid, by volume", f.Fraction, Metered)
	add("  as foam", f.Volume, Metered)
	add("  density as foam", f.Density, Metered)
	if f.Aired {
		out.Remark = airedFoam
	}
	if !judged {
		return out
	}
	var none []string
	for _, c := range f.Conditions {
		if c.Verdict == foaming.NoRange {
			none = append(none, FoamWord(c)+" of "+c.Kind)
			continue
		}
		out.Conditions = append(out.Conditions, foamLine(c))
	}
	if len(f.Conditions) == 0 {
		out.NoRange = noKind
	} else if len(none) > 0 {
		out.NoRange = "No published range was found for " + clean.Listed(none) + "."
	}
	return out
}

// FoamWord is what a condition is of.
func FoamWord(c foaming.Condition) string {
	switch c.Of {
	case foaming.Celsius:
		return "temperature"
	case foaming.Share:
		return "amount"
	case foaming.PH, foaming.Alcohol, foaming.Overrun:
		return c.Of
	}
	return strings.ToLower(constituent.Must(constituent.ID(c.Of)).Name)
}

// foamLine says how a figure stands to what is published.
func foamLine(c foaming.Condition) FoamLine {
	read := "not known (" + c.Why + ")"
	if c.Why == "" {
		s := figure.Of(c.Figure)
		read = strings.TrimSpace(s.Number + glue + s.Unit)
		if c.Of == foaming.PH { // it is its own unit
			read = s.Number
		}
		if s.Low != "" {
			read += " (" + s.Low + "–" + s.High + ")"
		}
	}
	ranges, sources := make([]string, len(c.Ranges)), make([]string, len(c.Ranges))
	for i, r := range c.Ranges {
		ranges[i], sources[i] = foamRange(r, c.Unit)+" ("+r.Says+")", r.Source
		if r.Read != "seen" {
			sources[i] += ", read " + r.Read
		}
	}
	verdict := map[foaming.Verdict]string{
		foaming.Within: ", within ", foaming.Outside: ", outside ", foaming.Either: ", within or outside ", foaming.NotKnown: "; published: ",
	}[c.Verdict]
	return FoamLine{
		Text:   c.Kind + ", " + FoamWord(c) + " " + read + verdict + strings.Join(ranges, " or ") + ".",
		Source: clean.UpperFirst(strings.Join(sources, "; ")),
	}
}

// foamRange writes a range as a person reads it.
func foamRange(r foaming.Range, unit string) string {
	low, high := figure.Plain(r.From), figure.Plain(r.To)
	switch {
	case math.IsInf(r.From, -1):
		return strings.TrimSpace(fmt.Sprintf("up to %s%s%s", high, glue, unit))
	case math.IsInf(r.To, 1):
		return strings.TrimSpace(fmt.Sprintf("%s%s%s and more", low, glue, unit))
	}
	return strings.TrimSpace(fmt.Sprintf("%s to %s%s%s", low, high, glue, unit))
}
