package sheet

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/fit"
	"sipsum/internal/invent"
	"sipsum/internal/unit"
)

// Invented is what may be put into a drink so that it meets its targets: the sheet is of the drink as it is
// written, and each design has its own.
type Invented struct {
	*Sheet
	*invent.Result
	From          []string // tables
	Sheets        []*Sheet
	Written       string // the file that holds a design; empty: nothing is written
	WrittenDesign int
}

// PartSaid is what is put in, as a recipe says it: "24 g sour cherry juice".
func PartSaid(p invent.Part) string {
	name := invent.Short(p.Food)
	switch {
	case p.By.Pot():
		name = p.Name
	case p.By.Says != "":
		name += ", " + p.By.Says
	}
	return gramsOf(p) + " g " + clean.Name(name)
}

func gramsOf(p invent.Part) string {
	return strconv.FormatFloat(p.Pour.Number, 'f', p.Pour.Decimals, 64)
}

// DesignLine tells a design in a sentence: what is put in, what the targets read then, and how surely.
func (v *Invented) DesignLine(n int) string {
	d := v.Designs[n]
	var reads []string
	for _, h := range d.Held {
		if h.Words != "" && h.Text != fit.TheGlass {
			if said := figureSaid(h.Words, h.After); !slices.Contains(reads, said) {
				reads = append(reads, said)
			}
		}
	}
	text := v.DesignName(n)
	if len(reads) > 0 {
		text += ": " + strings.Join(reads, ", ")
	}
	return text + "; holds in " + Chance(d.Sure, d.May)
}

// DesignName names a design by what is put in.
func (v *Invented) DesignName(n int) string {
	var parts []string
	for _, p := range v.Designs[n].Parts {
		parts = append(parts, PartSaid(p))
	}
	return strings.Join(parts, " + ")
}

// WeakestSaid says by which figure a design is most likely to miss.
func (v *Invented) WeakestSaid(n int) string {
	w := v.Designs[n].Weakest
	if w == nil {
		return ""
	}
	of := "the drink as it is written"
	if w.Of != nil {
		of = invent.Short(w.Of)
	}
	return weakWords(w) + " of " + of + ", for " + w.Target
}

// weakWords name the figure of a weakest.
func weakWords(w *invent.Weakest) string {
	if c := w.Figure.Constituent; c != nil {
		return WordsFor(c)
	}
	return w.Called()
}

// DesignAllergens says what is declared of the foods of a design, and what of them nobody has looked at.
func (v *Invented) DesignAllergens(n int) []string {
	is := func(id string) bool {
		return slices.ContainsFunc(v.Designs[n].Parts, func(p invent.Part) bool { return p.Food.ID.String() == id })
	}
	var list []string
	add := func(text string) {
		if !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	written := v.Allergens()
	for i, d := range v.Sheets[n].Allergens() {
		for _, e := range d.Contains {
			if !slices.ContainsFunc(e.From, is) {
				continue
			}
			text := "contains " + clean.Name(e.Name) + " (" + d.Rules + ")"
			had, _ := written[i].Within(e.Code)
			has, _ := d.Within(e.Code)
			if comes := besideThose(has, had); len(comes) > 0 {
				text += ", new in the drink: " + clean.Prose(strings.Join(comes, ", "))
			}
			add(text)
		}
		for _, c := range d.Check {
			if slices.ContainsFunc(c.Foods, is) {
				add("to decide: " + clean.Prose(c.Short()))
			}
		}
	}
	return list
}

// ServingThen tells the figures of a serving that a design moves, before and after.
func (v *Invented) ServingThen(n int) []string {
	var list []string
	for _, m := range (SwappedFood{Compared: &Compared{A: v.Sheet, B: v.Sheets[n]}}).Moves() {
		list = append(list, m.Words+" "+moved(m.Before, m.After))
	}
	return list
}

// Doses are the cautions of the drink as it is written that tell other figures with a design.
func (v *Invented) Doses(n int) []Cautioned {
	had := v.Cautions()
	return slices.DeleteFunc(v.Sheets[n].Cautions(), func(c Cautioned) bool {
		return !slices.ContainsFunc(had, func(h Cautioned) bool { return h.Code == c.Code && h.Text != c.Text })
	})
}

// nothingDeclared says that no allergen is known of foods, which is no promise.
const nothingDeclared = "none is declared of what is put in; that is no promise: ask who makes it"

// FoodsSaid lists the foods of a design in full, each with its table.
func (v *Invented) FoodsSaid(n int) []string {
	var list []string
	for _, p := range v.Designs[n].Parts {
		text := p.Food.ID.String() + " " + clean.Name(p.Food.Name())
		if p.By.Pot() {
			text += " (" + p.By.Says + ")"
		}
		list = append(list, text)
	}
	return list
}

// UnreadSaid says what of a food to read, and what it would have to be.
func UnreadSaid(u invent.Unread) string {
	text := fmt.Sprintf("%s g of a serving would do for %s", three(u.Grams), u.Target)
	switch {
	case u.Of != nil && !math.IsNaN(u.Least) && u.Least > 0:
		text += fmt.Sprintf(" if 100 g of it held %s %s of %s or more", three(u.Least), u.Of.Unit, WordsFor(u.Of))
	case u.Of != nil && !math.IsNaN(u.Most):
		text += fmt.Sprintf(" if 100 g of it held no more than %s %s of %s", three(u.Most), u.Of.Unit, WordsFor(u.Of))
	case !math.IsNaN(u.Share):
		text += fmt.Sprintf(" if it lay %d %% or more of the way from the least to the most that its bounds allow", max(1, ofHundred(u.Share)))
	}
	text += "; nobody knows " + clean.Prose(u.Gap.What)
	if u.Gap.Settle != "" {
		text += "; read it, and write: " + u.Gap.Settle
	}
	return text
}

// InventedLeft says of the foods that were left out why, with their number.
func (v *Invented) InventedLeft() []string {
	var list []string
	add := func(n int, text string) {
		if n > 0 {
			list = append(list, strconv.Itoa(n)+" "+text)
		}
	}
	p := v.Passed
	add(p.Unpoured, "are nothing that a bar pours, dissolves or presses, or nobody knows what they are")
	add(p.Unwanted, "hold, or may hold, what is not wanted")
	add(p.NotAssessed, "nobody has assessed for what is not wanted")
	add(p.Alcohol, "have alcohol, or may have it, and neither the drink nor a target has any")
	add(p.Salty, "bring much sodium, for which no target asks")
	add(p.Unmade, "cannot be prepared as they would have to be")
	return list
}

// WhyNone says why there is no design.
func (v *Invented) WhyNone() []string {
	var list []string
	for _, u := range v.Unmet {
		switch {
		case u.By == nil && !math.IsNaN(u.Holds):
			list = append(list, u.Target+": holds in "+Chance(u.Holds, u.Holds)+" as it is written, and nothing in these tables makes it surer; what is written would have to change")
		case u.By == nil:
			list = append(list, u.Target+": nothing in these tables does anything for it; what is written would have to change")
		case !u.Can:
			list = append(list, u.Target+": no "+strconv.Itoa(v.most())+" foods of these tables bring it about; "+invent.Short(u.By)+" does most")
		default:
			list = append(list, u.Target+": would be met were there no other target, no glass and no limit to what is put in, best with "+invent.Short(u.By))
		}
	}
	if len(v.Unmet) > 0 && !slices.ContainsFunc(v.Unmet, func(u invent.Unmet) bool { return !u.Can }) {
		list = append(list, "No "+strconv.Itoa(v.most())+" foods that were tried meet all targets at once as surely as in "+Chance(v.Enough, v.Enough)+" draws.")
	}
	for _, name := range v.Stops {
		if glass := v.Assay.Drink.Glass; name == fit.TheGlass && glass != nil {
			name += " (" + glass.String() + ")"
		}
		list = append(list, "What stops it: "+name+". Were that not, there would be designs.")
	}
	for _, m := range v.Missed {
		text := fmt.Sprintf("Of %d sets that were calculated as drinks, %d miss %s or hold it too seldom", v.Calculated, m.Times, m.Target)
		if m.Gap != nil {
			text += ": nobody knows " + clean.Prose(m.Gap.What) + settles(m.Gap.Settle, m.Gap.Where)
		}
		list = append(list, text)
	}
	return list
}

func (v *Invented) most() int { return int(unit.LimitOf("foods of an invention", "").High) }

// Remarks say how designs were looked for.
func (v *Invented) Remarks() []string {
	var list []string
	for _, word := range v.Forbids {
		list = append(list, "Without "+word+": what declares it, may hold it or was looked at by nobody is put into no design. That no target can promise: see what the drink itself declares (sipsum allergens).")
	}
	for _, word := range v.Declared {
		list = append(list, "The drink as it is written declares "+word+", and nothing that is put in takes it away.")
	}
	for _, g := range v.Goals {
		list = append(list, g+" orders nothing here: designs of fewer foods come first, then those that hold more surely. Fit the one you take: sipsum fit.")
	}
	for _, c := range v.Loose {
		list = append(list, c+" was judged of designs that meet the others, and looked for nowhere else: it is no sum of what is poured.")
	}
	if !v.Whole {
		list = append(list, "Of three foods not all were tried together: those that do most for a target.")
	}
	return list
}
