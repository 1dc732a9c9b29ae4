package label

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// amountServed is a row of data/reference_amounts.csv: how much of a kind of drink the rules
// take as customarily served.
type amountServed struct {
	category string
	ml       float64
	flOz     float64
	cited
}

func readAmount(r embedded.Row) amountServed {
	return amountServed{r.Text("category"), r.Number("ml"), r.Number("fl_oz"), citedBy(r)}
}

// addTexts adds what the rules want said beside the table, and what is to be known before it
// is used.
func (r *ruleset) addTexts(c *Card, f Facts) {
	for _, t := range r.texts {
		if !r.hold(t.when, f) {
			continue
		}
		said := r.fill(t.text, c, f)
		memory := t.status == Unverified
		if t.kind == "statement" {
			c.Statements = append(c.Statements, Text{Text: said, Source: t.source, Status: t.status, FromMemory: memory})
		} else {
			c.Notes = append(c.Notes, Note{Kind: "scope", Text: said, Source: t.source, Status: t.status, FromMemory: memory})
		}
	}
	for i, a := range r.amounts {
		if i == 0 {
			c.Notes = append(c.Notes, Note{Kind: "scope", Text: "Reference amounts customarily consumed: " + r.served() + ".", Source: a.source, Status: a.status})
		}
	}
	if n, differs := f.statedDiffers(); differs {
		c.Notes = append(c.Notes, n)
	}
}

// served lists the reference amounts.
func (r *ruleset) served() string {
	var list []string
	for _, a := range r.amounts {
		list = append(list, fmt.Sprintf("%s %g %s (%g fl oz)", a.category, a.ml, r.ml, a.flOz))
	}
	return strings.Join(list, "; ")
}

// fill puts figures of the drink into the {places} of a text.
func (r *ruleset) fill(text string, c *Card, f Facts) string {
	if !strings.Contains(text, "{") {
		return text
	}
	size := whole(f.ServingG) + " g"
	cup := size // by a household measure
	if f.ServingMl > 0 {
		size = whole(f.ServingMl) + " " + r.ml
		if len(r.amounts) > 0 {
			cup = tenth(f.ServingMl*r.amounts[0].flOz/r.amounts[0].ml) + " fl oz (" + size + ")"
		}
	}
	servings := "1"
	if f.Serves > 0 {
		servings = strconv.Itoa(f.Serves)
	}
	abv, _ := f.abv()
	put := []string{"{size}", size, "{cup}", cup, "{servings}", servings, "{abv}", tenth(abv), "{abv most}", tenthUp(f.abvMost())}
	if each, ok := r.references["standard-drink"]; ok {
		put = append(put, "{standard drinks}", tenth(f.of(constituent.Alcohol, 1).Mean/each.value))
	}
	for i := range c.Rows {
		if c.Rows[i].Tag == string(constituent.Energy) && c.Basis != PerServing {
			put = append(put, "{energy serving}", c.Rows[i].Serving.Printed, "{energy 100}", c.Rows[i].On(c.Basis).Printed)
		}
	}
	return strings.NewReplacer(put...).Replace(text)
}

func whole(x float64) string { return strconv.FormatFloat(math.Round(x), 'f', -1, 64) }

// tenth writes a figure to the tenth, halves up, without a zero behind the point.
func tenth(x float64) string {
	const tenth = 0.1
	return strings.TrimSuffix(strconv.FormatFloat(nearest(x, tenth), 'f', 1, 64), ".0")
}

// tenthUp writes a figure to the tenth above it: "not more than".
func tenthUp(x float64) string {
	const tenths = 10
	return tenth(math.Ceil(x*tenths-unit.Closeness) / tenths)
}

// statedDiffers says where the energy that packs and tables print themselves lies outside the
// interval of ours.
func (f Facts) statedDiffers() (Note, bool) {
	s := f.Stated
	if s.Amount <= 0 || s.Amount >= s.Low && !(s.Amount > s.High) {
		return Note{}, false
	}
	ours := fmt.Sprintf("between %.3g and %.3g %s", s.Low, s.High, s.Unit)
	if math.IsNaN(s.High) {
		ours = fmt.Sprintf("%.3g %s or more", s.Low, s.Unit)
	}
	return Note{Kind: "stated", Text: fmt.Sprintf("Energy: the packs and tables of its parts state %.3g %s per serving themselves; calculated from what they hold it is %s.", s.Amount, s.Unit, ours)}, true
}
