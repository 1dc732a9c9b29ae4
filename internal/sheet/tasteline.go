package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/taste"
)

// TasteLine is a category of the evidence by the numbers beside its taste, in one line.
type TasteLine struct {
	Says    string
	Sources []string
}

// TasteLimit is what must be said of such lines, once a page.
const TasteLimit = "The lines on taste support a design; they do not taste."

// TasteLineOf gives the line of a category; false where nothing is calculated of it, as of a drink's own category
// that no taste has the name of.
func TasteLineOf(s *Sheet, category string) (TasteLine, bool) {
	p := TasteOf(s)
	if p.Why != "" {
		return TasteLine{}, false
	}
	switch strings.ToLower(category) {
	case "sweet", "sweetness":
		return sweetLine(p.Sweet, s.Assay.Glass().Volume[0])
	case "acid", "acidity", "sour", "sourness":
		return sourLine(p.Sour)
	case "bitter", "bitterness":
		return doseLine(p.Doses, taste.Bitter, taste.Astringent)
	case "salty", "salt":
		return doseLine(p.Doses, taste.Salty)
	case "sparkle", "sparkling":
		return doseLine(p.Doses, taste.Sparkling)
	case "body", "thick":
		return bodyLine(p.Body)
	}
	return TasteLine{}, false
}

// indexed is a figure of an index with its interval.
func indexed(x taste.Index, unit string) string {
	text := about(x.Mean) + unit
	if x.Partial {
		text = "at least " + text
	}
	var ends []string // as far as their digits tell them apart
	if low, high := about(x.Low), about(x.High); low != high {
		ends = append(ends, low+"–"+high)
	}
	if x.Partial && !math.IsNaN(x.UpTo) && about(x.UpTo) != about(x.High) && x.UpTo > x.High {
		ends = append(ends, "up to "+about(x.UpTo))
	}
	if len(ends) == 0 {
		return text
	}
	return text + " (" + strings.Join(ends, ", ") + ")"
}

// sweetLine counts what a judge notices in grams of sucrose in the glass.
func sweetLine(s taste.SweetIndex, ml float64) (TasteLine, bool) {
	if s.Why != "" || s.High == 0 && !s.Partial {
		return TasteLine{}, false
	}
	line := TasteLine{Says: "sweet as " + indexed(s.Index, " % sucrose"), Sources: []string{s.Notices.Source}}
	for _, part := range s.Parts {
		if part.Equivalent < ledger.Weighty*s.Mean || part.Constituent.ID == constituent.Sucrose { // which is the measure
			continue
		}
		for _, text := range part.Sources {
			if !slices.Contains(line.Sources, text) {
				line.Sources = append(line.Sources, text)
			}
		}
	}
	if len(s.Without) > 0 {
		line.Says += ", " + words(s.Without) + " not counted, for no factor was found"
	}
	const percent = 100
	if grams := s.Mean * ml / percent; grams > 0 {
		line.Says += fmt.Sprintf("; a judge notices %s to %s g more or less of it in this glass", about(grams*s.Notices.Low/percent), about(grams*s.Notices.High/percent))
	}
	return line, true
}

func sourLine(s taste.SourIndex) (TasteLine, bool) {
	if s.Hardly || s.Titratable.Why != "" && s.Molecules.Why != "" {
		return TasteLine{}, false
	}
	var parts []string
	line := TasteLine{Sources: []string{s.Notices.Source}}
	if s.Titratable.Why == "" {
		parts = append(parts, indexed(s.Titratable, " mmol")+" that base takes off")
	}
	if s.Molecules.Why == "" {
		parts = append(parts, indexed(s.Molecules, " mmol")+" of acid molecules with a proton to give")
		line.Sources = append(line.Sources, moleculesRule)
	}
	line.Says = "sour by " + strings.Join(parts, " or ") + " in a litre"
	if len(parts) > 1 {
		line.Says += ": the field disputes which"
	}
	line.Says += "; a judge notices " + about(s.Notices.Low) + " to " + about(s.Notices.High) + " % more or less"
	return line, true
}

// doseLine sets each compound of a taste beside its thresholds; none are added up.
func doseLine(doses []taste.Dose, of ...taste.Taste) (TasteLine, bool) {
	var line TasteLine
	var parts, silent []string
	for _, d := range doses {
		switch {
		case !slices.Contains(of, d.Taste) || d.Neutral:
		case d.High == 0 || d.Why != "":
			if name := WordsFor(d.Constituent); d.Amount.Mean > 0 && !slices.Contains(silent, name) {
				silent = append(silent, name)
			}
		case d.Amount.Unknown && d.Place() != taste.Below: // nothing is known of it
		default:
			said := doseSaid(d)
			if d.Amount.Unknown {
				said = "at most " + about(d.Times.UpTo) + " times its published " + thresholdsOf(d) + placeSaid[taste.Below]
			}
			parts = append(parts, WordsFor(d.Constituent)+" "+strings.TrimSuffix(said, "."))
			line.Sources = append(line.Sources, d.Sources...)
		}
	}
	if len(silent) > 0 {
		parts = append(parts, "no threshold was seen in print for "+clean.Listed(silent))
	}
	line.Says = strings.Join(parts, "; ")
	return line, len(parts) > 0
}

func bodyLine(b taste.Body) (TasteLine, bool) {
	if b.Viscosity.Why != "" {
		return TasteLine{}, false
	}
	return TasteLine{
		Says:    fmt.Sprintf("thick as %s mPa·s of sugars in their water at %s °C; a judge notices about %s %% more or less, %s", indexed(b.Viscosity, ""), note.Number(b.Celsius), note.Number(b.Notices.Low), b.Notices.How),
		Sources: []string{b.Source, b.Notices.Source},
	}, true
}
