package caution

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// For gives the cautions of a drink in the order of data/cautions.csv, each text
// once.
func For(in Input) []Caution {
	marks := marked(in.Items)
	out := []Caution{}
	for i := range table() {
		r := &table()[i]
		if r.rules != "" && r.rules != in.Rules {
			continue
		}
		if _, excused := r.excuses(in.Name); excused {
			continue
		}
		c, ok := r.judge(in, marks)
		if !ok || slices.ContainsFunc(out, func(have Caution) bool { return have.Text == c.Text }) {
			continue
		}
		out = append(out, c)
	}
	return out
}

// Standing gives a caution by its code, as its row writes it, for a page that proposes
// what it warns of. It panics if there is none.
func Standing(code string) Caution {
	for _, r := range table() {
		if r.code == code {
			return Caution{Code: r.code, Text: r.text, Source: r.source}
		}
	}
	panic("caution: cautions.csv has no row " + code)
}

// marked gives the foods that carry each caution mark.
func marked(items []allergen.Item) map[string][]string {
	foods := map[string][]string{}
	for _, it := range items {
		for _, mark := range allergen.Assess(it).Cautions {
			if name := named(it); !slices.Contains(foods[mark], name) {
				foods[mark] = append(foods[mark], name)
			}
		}
	}
	return foods
}

func named(it allergen.Item) string {
	if it.Name == "" {
		return it.Food.String()
	}
	return it.Name
}

// judge decides whether the row holds for the drink.
func (r *row) judge(in Input, marks map[string][]string) (Caution, bool) {
	c := Caution{Code: r.code, Text: r.text, Source: r.source}
	var ok, certain bool
	foods := []string{}
	switch r.when {
	case byMark:
		ok, certain = true, true
		for mark := range strings.SplitSeq(r.key, "+") {
			ok = ok && len(marks[mark]) > 0
			foods = append(foods, marks[mark]...)
		}
		c.Because = "in it: " + strings.Join(foods, ", ")
	case byGroup:
		for _, it := range in.Items {
			if it.Group == r.key && !slices.Contains(foods, named(it)) {
				foods = append(foods, named(it))
			}
		}
		ok, certain = len(foods) > 0, true
		c.Because = "in it: " + strings.Join(foods, ", ")
	case byStep:
		ok, certain = slices.Contains(in.Steps, r.key), true
		c.Because = "step: " + r.key
	case byUnknown:
		foods = marks[r.basis]
		ok, certain = len(foods) > 0 && !in.Amounts[constituent.ID(r.key)].Complete(), true
		c.Because = "in it: " + strings.Join(foods, ", ")
	case byABV:
		certain = r.exceeds(in.ABV)
		ok = certain || r.exceeds(in.ABVMost)
		c.Because = abvText(in, certain)
	case byAmount:
		ok, certain, c.Because = r.amount(in, marks)
	}
	if !ok {
		return Caution{}, false
	}
	c.Text = r.fill(in, foods, certain)
	if !certain {
		c.Text = "Cannot be ruled out: " + c.Text
	}
	return c, true
}

func (r *row) exceeds(x float64) bool { return x > r.limit || r.atOnce && x == r.limit }

// amount judges an amount as known, at the upper end of its interval, and there with its
// bounds. An amount of which nothing is known, and the part that nothing bounds, are left
// to the row for unknowns.
func (r *row) amount(in Input, marks map[string][]string) (ok, certain bool, because string) {
	a, found := in.per(constituent.ID(r.key), r.basis)
	if !found {
		return false, false, ""
	}
	certain = a.Known && r.exceeds(a.Mean)
	ok = certain || r.exceeds(a.KnownMost()) || a.Bounded() && r.exceeds(a.Most()) && r.plausible(in, marks)
	because = fmt.Sprintf("%s per %s: %s", strings.ToLower(constituent.Must(constituent.ID(r.key)).Name), r.basis, amountText(a, r.unit, certain))
	return ok, certain, because
}

// plausible reports whether more than is known may be there at all: what is only added
// on purpose needs a food that says so, or one of which nobody says what it is.
func (r *row) plausible(in Input, marks map[string][]string) bool {
	unsaid := func(it allergen.Item) bool { return it.Group == "" }
	return r.with == "" || len(marks[r.with]) > 0 || slices.ContainsFunc(in.Items, unsaid)
}

// fill puts the figures of the drink into the text.
func (r *row) fill(in Input, foods []string, certain bool) string {
	pairs := []string{"{abv}", abvText(in, certain), "{foods}", strings.Join(foods, ", ")}
	if r.when == byAmount {
		for _, basis := range []string{"serving", "100 ml", "100 g"} {
			a, _ := in.per(constituent.ID(r.key), basis)
			pairs = append(pairs, "{"+basis+"}", amountText(a, r.unit, certain))
		}
	}
	return strings.NewReplacer(pairs...).Replace(r.text)
}

// abvText prints a strength; of one that is over a limit only at the end of its interval,
// that end.
func abvText(in Input, certain bool) string {
	switch {
	case math.IsNaN(in.ABV):
		return "strength not known"
	case !certain:
		return fmt.Sprintf("about %s, up to %s %% vol", number(in.ABV), number(in.ABVMost))
	}
	return fmt.Sprintf("%.1f %% vol", in.ABV)
}

// amountText prints an amount with what is known of its limits: of one that is over a
// limit only at the end of its interval, that end.
func amountText(a estimate.Amount, unit string, certain bool) string {
	switch {
	case !a.Known && a.Bounded():
		return "up to " + number(a.Most()) + " " + unit
	case !a.Known:
		return "an unknown amount"
	case a.Complete() && !certain:
		return "about " + number(a.Mean) + ", up to " + number(a.Most()) + " " + unit
	case a.Complete():
		return "about " + number(a.Mean) + " " + unit
	case a.Bounded():
		return "between " + number(a.Mean) + " and " + number(a.Most()) + " " + unit
	case !certain:
		return "at least " + number(a.Mean) + " " + unit + ", what is known of it up to " + number(a.KnownMost()) + " " + unit
	}
	return "at least " + number(a.Mean) + " " + unit
}

// number prints two or three digits: more would promise too much.
func number(x float64) string {
	switch {
	case x >= 10:
		return fmt.Sprintf("%.0f", x)
	case x >= 1:
		return fmt.Sprintf("%.1f", x)
	}
	return fmt.Sprintf("%.2g", x)
}
