package sheet

import (
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/estimate"
	"sipsum/internal/figure"
	"sipsum/internal/food"
	"sipsum/internal/ingredientlist"
)

// ClaimsAllowed stands before the nutrition claims that the rules allow.
const ClaimsAllowed = "claims that the rules allow, if the authority does on a served drink: "

// NotEatenList stands before what of a list of ingredients nobody eats.
const NotEatenList = "Garnish, not eaten: "

// IngredientsText writes ingredients as a list has them, what names an allergen in capitals.
func IngredientsText(list []ingredientlist.Ingredient) string {
	texts := make([]string, len(list))
	for i, x := range list {
		var text strings.Builder
		for _, part := range x.Name {
			if part.Strong {
				text.WriteString(strings.ToUpper(part.Text))
			} else {
				text.WriteString(part.Text)
			}
		}
		texts[i] = clean.Name(text.String())
		if len(x.Of) > 0 {
			texts[i] += " (" + IngredientsText(x.Of) + ")"
		}
	}
	return strings.Join(texts, ", ")
}

// ingredientLists are the lists of ingredients under each set of rules.
func (p annexed) ingredientLists() Block {
	var b Block
	for _, d := range p.Allergens() {
		l := d.Ingredients
		if len(l.Ingredients) == 0 {
			continue
		}
		b.Lines = append(b.Lines, Line{Lead: rulesName(d.Rules), Text: l.Heading + ": " + IngredientsText(l.Ingredients) + ".", Source: cited(l.Source)})
		if len(l.NotEaten) > 0 {
			b.Lines = append(b.Lines, Line{Text: NotEatenList + IngredientsText(l.NotEaten) + "."})
		}
		if l.Note != "" {
			b.Lines = append(b.Lines, Line{Text: clean.Prose(l.Note)})
		}
	}
	if len(b.Lines) > 0 {
		b.Heading = say("paper.ingredients")
		b.Lines = append(b.Lines, Line{Text: InOrder})
	}
	return b
}

// nutritionClaims names the claims that the rules allow, and those that are near.
func (p annexed) nutritionClaims() Block {
	b := Block{Heading: say("paper.nutritionclaims")}
	for _, c := range p.Cards() {
		allowed, _ := Claims(&c)
		var names []string
		for _, k := range allowed {
			names = append(names, "“"+clean.Name(k.Claim)+"”: "+clean.Prose(k.Why))
		}
		if len(names) > 0 {
			b.Lines = append(b.Lines, Line{Lead: rulesName(c.Rules), Text: ClaimsAllowed + strings.Join(names, " · ")})
		}
	}
	return b
}

// Words tell an aroma: what is smelled, what was done with it, the main volatiles published of it.
func (a Smell) Words() string {
	text := clean.Name(a.Of) + ", " + a.Treatment + ": "
	if a.Note != "" {
		text += "“" + clean.Prose(a.Note) + "”; "
	}
	if len(a.Volatiles) == 0 {
		return text + NoVolatiles
	}
	return text + "main volatiles published of the " + a.PublishedOf + ": " + clean.Listed(a.Volatiles)
}

// smelled says what is only smelled.
func (p annexed) smelled() Block {
	var b Block
	for _, a := range Smells(p.Assay.Drink) {
		text := a.Words()
		if a.Source != "" {
			text += Numbered([]int{p.notes.Number(clean.UpperFirst(a.Source))})
		}
		b.Lines = append(b.Lines, Line{Text: text + "."})
	}
	if len(b.Lines) > 0 {
		b.Lines = append([]Line{{Text: AromaMeans}}, b.Lines...)
	}
	return b
}

// inside says what stands alone where no line of the build pours what the drink is set against.
func (p annexed) inside() Block {
	var b Block
	for _, alone := range p.Inside() {
		mass := Written{Shown: figure.Of(alone.Mass)}
		b.Lines = append(b.Lines, Line{Text: UsedInside(alone.Name, mass.Sentence())})
	}
	return b
}

// UsedInside says of a component that is poured into others alone what its figures beside a drink are of.
func UsedInside(name, mass string) string {
	return clean.UpperFirst(clean.Name(name)) + " is used inside other components. Alone it is what they take for a serving, " + mass + ", as it was made."
}

// howKnown says how a part of a figure is known that nobody measured; empty where somebody did.
func howKnown(r composition.Result) string {
	switch {
	case r.State == estimate.Assumed:
		return AssumedMeans
	case r.State == estimate.Trace:
		return TraceMeans
	case r.State == estimate.Below:
		return BelowMeans
	case r.By == food.ByKin:
		return ByKinMeans
	}
	return ""
}
