package sheet

import (
	"math"
	"slices"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/taste"
	"sipsum/internal/unit"
)

// Differs names what of a match is not like the drink, by more than is noticed, of what no filler holds: pH, what is
// bitter or salty, alcohol. How sweet the sugars are stands apart (sweeter).
func (o *Omitted) Differs() []string {
	var list []string
	a, b := o.Omission.A, o.After
	if x, y := a.Chemistry, b.Chemistry; x != nil && y != nil && x.PH.Why == "" && y.PH.Why == "" {
		const printed = 100 // to a hundredth, as it stands beside
		was, is := math.Round(printed*x.PH.Mean)/printed, math.Round(printed*y.PH.Mean)/printed
		if math.Abs(is-was) > unit.LimitOf("what two glasses differ by in pH before it is told", "").High+unit.Closeness {
			list = append(list, figureSaid("pH", x.PH.Result)+" → "+figureSaid("pH", y.PH.Result)[len("pH "):])
		}
	}
	list = append(list, tasted(taste.Of(a.Glass()).Doses, taste.Of(b.Glass()).Doses)...)
	if text := told(constituent.Must(constituent.Alcohol).Words(), a.Strength, b.Strength); text != "" {
		list = append(list, text)
	}
	return list
}

// tasted tells of bitter and salty substances that are above their lowest threshold in one of two glasses; what is no
// dose of a glass is not in it.
func tasted(a, b []taste.Dose) []string {
	same := func(of []taste.Dose, d taste.Dose) int {
		return slices.IndexFunc(of, func(x taste.Dose) bool { return x.Constituent == d.Constituent && x.Taste == d.Taste })
	}
	var list []string
	tell := func(d taste.Dose, was, is composition.Result) {
		if text := told(d.Constituent.Words(), was, is); text != "" {
			list = append(list, text+" in a litre")
		}
	}
	there := func(d taste.Dose) bool {
		return (d.Taste == taste.Bitter || d.Taste == taste.Salty) && d.High > 0 && d.Place() != taste.Below && d.Why == ""
	}
	for _, d := range a {
		switch at := same(b, d); {
		case at < 0 && there(d):
			tell(d, d.Amount, composition.Result{Unit: d.Amount.Unit})
		case at >= 0 && (there(d) || there(b[at])):
			tell(d, d.Amount, b[at].Amount)
		}
	}
	for _, d := range b {
		if there(d) && same(a, d) < 0 {
			tell(d, composition.Result{Unit: d.Amount.Unit}, d.Amount)
		}
	}
	return list
}

// told tells of a figure in two glasses, if it differs by more than is kept of a taste; else empty.
func told(words string, a, b composition.Result) string {
	kept := unit.LimitOf("what is kept of a taste", "share")
	if math.IsNaN(a.Mean) || math.IsNaN(b.Mean) || a.Mean == b.Mean || b.Mean >= kept.Low*a.Mean && b.Mean <= kept.High*a.Mean {
		return ""
	}
	text := words + " " + three(a.Mean) + " → " + three(b.Mean) + " " + b.Unit
	if a.Mean > 0 && b.Mean > 0 {
		text += " (" + inPercent(b.Mean/a.Mean-1) + " %)"
	}
	return text
}
