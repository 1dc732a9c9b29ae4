package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/taste"
)

// TasteRow is a number beside a taste, and what must be said of it. A withheld one says why in
// Said, and has no result to print.
type TasteRow struct {
	Name     string
	Result   composition.Result
	Withheld bool
	Said     string
	Sources  []string
}

// TasteMeans says what the numbers are for.
const TasteMeans = "These numbers support a design; they do not taste. Thresholds are other people's tongues in water or in one drink, compounds are not added up, " +
	"and what sugar, salt and acid hide of each other is not worked in. Smell is not calculated."

// TasteOf gives the numbers beside the tastes of a drink; of a sheet without an assay's liquid
// there are none.
func TasteOf(s *Sheet) taste.Profile {
	if s.tastes == nil {
		return taste.Profile{Why: "nothing of it is liquid"}
	}
	return s.tastes()
}

// TasteRows lists the numbers beside the tastes of a drink.
func TasteRows(p taste.Profile) []TasteRow {
	if p.Why != "" {
		return nil
	}
	rows := append([]TasteRow{sweetRow(p.Sweet)}, sourRows(p.Sour)...)
	for _, d := range p.Doses {
		rows = append(rows, doseRow(d))
	}
	return append(rows, bodyRow(p.Body))
}

func indexRow(name string, x taste.Index, said string, sources ...string) TasteRow {
	if x.Why != "" {
		return TasteRow{Name: name, Withheld: true, Said: x.Why}
	}
	return TasteRow{name, x.Result, false, said, sources}
}

// leastTold is a figure that no sentence about a taste needs to be told closer (our own bound).
const leastTold = 0.001

// about writes a figure in running text as far as it is known: two digits, and no exponent.
func about(x float64) string {
	const digits = 2
	if x > 0 && x < leastTold {
		return "less than 0.001"
	}
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', digits, 64), 64)
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

func sweetRow(s taste.SweetIndex) TasteRow {
	if s.Why == "" && !s.Partial && s.High == 0 {
		return TasteRow{Name: "sweet", Withheld: true, Said: "it holds no sugar, no polyol and no sweetener"}
	}
	var parts, sources []string
	few := false
	for _, p := range s.Parts {
		if p.Equivalent < ledger.Weighty*s.Mean {
			few = true
			continue
		}
		text := WordsFor(p.Constituent) + " × " + about(p.Factor)
		if p.Low < p.High {
			text += fmt.Sprintf(" (%s to %s)", about(p.Low), about(p.High))
		}
		parts = append(parts, text)
		sources = append(sources, p.Sources...)
	}
	said := ""
	if few {
		parts = append(parts, "and what brings less than a twentieth")
	}
	if len(parts) > 0 {
		said = "By weight: " + strings.Join(parts, ", ") + ". "
	}
	if len(s.Without) > 0 {
		said += "No factor was found for " + words(s.Without) + ". "
	}
	return indexRow("sweet, as sucrose in 100 ml", s.Index, said+noticed(s.Notices), append(sources, s.Notices.Source)...)
}

// noticed says which change a judge notices; no one share, since it moves with the mixture.
func noticed(d taste.Difference) string {
	share := note.Number(d.Low) + " to " + note.Number(d.High) + " %"
	if d.Low == d.High {
		share = note.Number(d.Low) + " %"
	}
	return "A judge notices a change of about " + share + " (" + d.How + ")."
}

// moleculesRule is where the rule of acid molecules stands.
const moleculesRule = "Da Conceicao Neta ER, Johanningsmeier SD, Drake MA and McFeeters RF 2007, J Food Sci 72:S352"

func sourRows(s taste.SourIndex) []TasteRow {
	if s.Hardly {
		return []TasteRow{{Name: "sour", Withheld: true, Said: "it takes less base than a burette reads"}}
	}
	said := "Organic acids that have a proton to give, each as sour as another by the mole, and H⁺"
	if s.Hydrogen.Why == "" {
		said += " (" + about(s.Hydrogen.Mean) + " mmol)"
	}
	return []TasteRow{
		indexRow("sour, acid molecules in a litre", s.Molecules, said+".", moleculesRule),
		indexRow("sour, titratable in a litre", s.Titratable,
			fmt.Sprintf("Protons that base takes off on the way to pH %.1f. The field disputes which of the two a tongue follows. %s", s.EndPoint, noticed(s.Notices)), s.Notices.Source),
	}
}

func doseRow(d taste.Dose) TasteRow {
	row := TasteRow{Name: string(d.Taste) + ", " + WordsFor(d.Constituent) + " in a litre", Result: d.Amount, Sources: d.Sources}
	switch {
	case d.Taste == taste.Sparkling && d.Why != "":
		row.Withheld, row.Said = true, d.Why
	case d.Neutral:
		row.Said = "Published as without taste."
	case d.Why != "":
		row.Said = clean.UpperFirst(d.Why) + "."
	default:
		row.Said = doseSaid(d)
	}
	return row
}

// doseSaid sets a dose beside its thresholds.
func doseSaid(d taste.Dose) string {
	thresholds := thresholdsOf(d)
	if d.Amount.Unknown && d.Place() == taste.Below {
		return "Not known, and at most " + about(d.Times.UpTo) + " times its published " + thresholds + placeSaid[taste.Below]
	}
	if d.Amount.Unknown {
		return "How much is in it is not known, beside its published " + thresholds + "."
	}
	said := about(d.Times.Low)
	if high := about(d.Times.High); high != said {
		said += " to " + high
	}
	said += " times its published " + thresholds
	switch {
	case d.Amount.Partial && math.IsNaN(d.Times.UpTo):
		said += ", or more: not all of it is known"
	case d.Amount.Partial:
		said += ", up to " + about(d.Times.UpTo) + " with what is not known"
	}
	return said + placeSaid[d.Place()]
}

func thresholdsOf(d taste.Dose) string {
	if d.Low < d.High {
		return "thresholds (" + about(d.Low) + " to " + about(d.High) + " mg)"
	}
	return "threshold (" + about(d.Low) + " mg)"
}

// placeSaid ends the sentence about a dose.
var placeSaid = map[taste.Place]string{
	taste.Unplaced: ".",
	taste.Below:    ": below what a panel tells.",
	taste.Among:    ": it depends on the tongue, and on what else is in the drink.",
	taste.Above:    ": above what a panel tells.",
}

func bodyRow(b taste.Body) TasteRow {
	var beside []string
	for _, x := range []struct {
		name string
		composition.Result
	}{{"fat", b.Fat}, {"protein", b.Protein}} {
		switch {
		case x.Unknown, x.Partial && x.Mean < leastTold:
			beside = append(beside, x.name+" not known")
		case x.Partial:
			beside = append(beside, "at least "+about(x.Mean)+" g of "+x.name)
		case x.Mean >= leastTold:
			beside = append(beside, about(x.Mean)+" g of "+x.name)
		}
	}
	said := "As if the sugars and acids in their water were sucrose. "
	if len(beside) > 0 {
		said += "Beside them in 100 ml: " + clean.Listed(beside) + ", which thicken by no rule here. "
	}
	said += "Creaminess follows fat only above about " + about(b.Creamy) + " %. " + noticed(b.Notices)
	viscosity := b.Viscosity
	viscosity.Unit = "" // its name says it: the column is for short ones
	return indexRow(fmt.Sprintf("thick, viscosity at %g °C in %s", b.Celsius, b.Viscosity.Unit), viscosity, said, b.Source, b.CreamySource, b.Notices.Source)
}

func words(list []*constituent.Constituent) string {
	var names []string
	for _, c := range list {
		names = append(names, WordsFor(c))
	}
	return clean.Listed(names)
}
