package drink

import (
	"strconv"

	"github.com/goccy/go-yaml/ast"
)

// drinkKeys is the top of a drink file. Pantries come first, so that a name that
// is given twice is reported in the drink, where it can be changed.
var drinkKeys = grammar[Drink]{"the drink", append([]key[Drink]{
	{"use", "pantry files, relative to this file", false, listOf(textShape(mostName)), func(r *reader, d *Drink, n ast.Node) {
		r.usePantries(d, n)
	}},
	{"drink", "the drink's name", true, textShape(mostName), func(r *reader, d *Drink, n ast.Node) {
		d.Name, _ = r.text(n, "the drink's name", mostName)
	}},
	{"serves", "how many servings the build makes", true, shape{"type": "integer", "minimum": 1, "maximum": mostServes}, func(r *reader, d *Drink, n ast.Node) {
		d.Serves = r.serves(n)
	}},
	{"glass", "the volume of one serving's glass", false, amountShape(volumeOnly), func(r *reader, d *Drink, n ast.Node) {
		d.Glass = r.exactAmount(n, "glass", volumeOnly)
	}},
	{"at", "the temperature at which it is served", false, quantityShape(temperature), func(r *reader, d *Drink, n ast.Node) {
		d.At = r.quantity(n, "at", temperature)
	}},
	{"scale", "the resolution of the bar's scale", false, amountShape(massOnly), func(r *reader, d *Drink, n ast.Node) {
		d.Scale = r.exactAmount(n, "scale", massOnly)
	}},
	{"rules", "the labelling rules that apply", false, listOf(enumShape(ruleWords)), func(r *reader, d *Drink, n ast.Node) {
		d.Rules = r.words(n, "rules", ruleWords)
	}},
	{"compare-with", "the component that the evidence compares the drink with", false, textShape(mostName), func(r *reader, d *Drink, n ast.Node) {
		d.CompareWith, _ = r.name(n, "compare-with")
		r.compareAt = r.nodeAt(n)
	}},
}, append(pantryKeys.forDrink(),
	key[Drink]{"build", "what goes into the vessel, for all servings together", true, linesShape, func(r *reader, d *Drink, n ast.Node) {
		d.Build = r.lines(n, "build", "build")
	}},
	key[Drink]{"finish", "steps after the build", false, stepsShape, func(r *reader, d *Drink, n ast.Node) {
		d.Finish = r.steps(n, "finish", "finish")
	}},
	key[Drink]{garnish, "what is put on top, for all servings together; not eaten unless a line says eaten: true", false, linesShape, func(r *reader, d *Drink, n ast.Node) {
		d.Garnish = r.lines(n, garnish, garnish)
	}},
	key[Drink]{"may-contain", "allergens that may get in by cross-contact", false, listOf(textShape(mostName)), func(r *reader, d *Drink, n ast.Node) {
		d.MayContain = r.words(n, "may-contain", nil)
	}},
	key[Drink]{"categories", "sensory categories and the constituents that speak for them", false, mapOf(listOf(textShape(mostName))), func(r *reader, d *Drink, n ast.Node) {
		d.Categories = r.categories(n)
	}},
	key[Drink]{"claims", "sentences for the stage, each with the check that decides it", false, listOf(claimKeys.shape()), func(r *reader, d *Drink, n ast.Node) {
		d.Claims = r.claims(n)
	}},
	key[Drink]{"targets", "what fit should reach", false, listOf(textShape(mostProse)), func(r *reader, d *Drink, n ast.Node) {
		d.Targets = r.targets(n)
	}},
	key[Drink]{"vary", "amounts that fit may change", false, listOf(varyKeys.shape()), func(r *reader, d *Drink, n ast.Node) {
		d.Vary = r.vary(n)
	}},
)...)}

// pantryKeys is a pantry file.
var pantryKeys = grammar[Drink]{"a pantry file", []key[Drink]{
	{"foods", "foods that no table has, such as a pack in your fridge", false, mapOf(ownFoodKeys.shape()), func(r *reader, d *Drink, n ast.Node) {
		r.ownFoods(d, n)
	}},
	{"components", "house-made parts", false, mapOf(componentKeys.shape()), func(r *reader, d *Drink, n ast.Node) {
		r.components(d, n)
	}},
}}

// forDrink gives the keys that a drink shares with a pantry.
func (g grammar[T]) forDrink() []key[T] { return append([]key[T]{}, g.keys...) }

var ruleWords = []string{"eu", "uk", "us", "ca", "anz", "codex"}

// serves reads a whole number of servings.
func (r *reader) serves(n ast.Node) int {
	text, ok := r.scalar(n, "serves")
	if !ok {
		return 0
	}
	v, err := strconv.Atoi(text)
	if err != nil || v < 1 || v > mostServes || !onlyDigits(text) {
		r.faults.Add(r.nodeAt(n), "write a whole number from 1 to "+strconv.Itoa(mostServes), "serves is %s", quoted(text))
		return 0
	}
	return v
}
