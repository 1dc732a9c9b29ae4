package drink

import (
	"slices"
	"strconv"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// drinkKeys is the top of a drink file. Pantries come first, so that a name that
// is given twice is reported in the drink, where it can be changed.
var drinkKeys = grammar[Drink]{"the drink", append([]key[Drink]{
	{"use", "shelves: files of foods and components that drinks share, relative to this file", false, listOf(textShape(mostName)), func(r *reader, d *Drink, n ast.Node) {
		r.usePantries(d, n)
	}},
	{"drink", "the drink's name", true, textShape(mostName), func(r *reader, d *Drink, n ast.Node) {
		d.Name, _ = r.text(n, "the drink's name", mostName)
	}},
	into("serves", "how many servings the build makes", true, shape{"type": "integer", "minimum": 1, "maximum": mostServes},
		(*reader).serves, func(d *Drink) *int { return &d.Serves }),
	exact("glass", "the volume of one serving's glass, 160 ml: what overflows is told", volumeOnly, func(d *Drink) **unit.Amount { return &d.Glass }),
	vesselKey("it is served in", func(d *Drink) *string { return &d.Vessel }),
	scaled("at", "the temperature at which it is served: 6 °C", served, func(d *Drink) **Quantity { return &d.At }),
	lasting("takes", "how long it takes to make and serve before guests or judges: 9 min ± 1 min", func(d *Drink) **Quantity { return &d.Takes }),
	into("stands", "how a glass stands once it is poured: {room: 22 °C, ice: 60 g}; it is told over ten minutes", false, standsKeys.shape(),
		readStands, func(d *Drink) **Stands { return &d.Stands }),
	exact("scale", "what the bar's scale shows, 0.1 g: how sure a line without ± is", massOnly, func(d *Drink) **unit.Amount { return &d.Scale }),
	{"meters", "the shelf of meters that took the readings, relative to this file; meters.yaml beside it counts unasked", false, textShape(mostName), metersNamed},
	words("rules", "whose rules the cards and allergens follow: [eu, us]", ruleWords, func(d *Drink) *[]Word { return &d.Rules }),
	{"compare-with", "the component that the evidence compares the drink with, or several: [espresso, filter]; sentences speak of the first", false, anyOf(textShape(mostName), listOf(textShape(mostName))), readCompared},
}, append(slices.Clone(pantryKeys.keys),
	key[Drink]{"build", "what goes into the vessel, for all servings together", true, linesShape, func(r *reader, d *Drink, n ast.Node) {
		d.Build = r.lines(n, "build", "build")
	}},
	key[Drink]{finish, "steps on the whole drink, after the build", false, finishShape, func(r *reader, d *Drink, n ast.Node) {
		d.Finish = r.steps(n, finish, finish)
		d.Tasks = r.tasks
	}},
	key[Drink]{"measured", "readings of the drink as it is served, after the last step of finish", false, measuredShape, func(r *reader, d *Drink, n ast.Node) {
		head := Head{Word: "measured", Place: r.nodeAt(n), Path: "finish/end/measured"}
		if m, ok := readMeasured(r, head, n); ok {
			d.Finish = append(d.Finish, m)
		}
	}},
	key[Drink]{garnish, "what is put on top, for all servings together; not eaten unless a line says eaten: true", false, linesShape, func(r *reader, d *Drink, n ast.Node) {
		d.Garnish = r.lines(n, garnish, garnish)
	}},
	into("aroma", "what is only smelled: of which material, expressed, flamed or infused; nothing of it is calculated", false, listOf(aromaKeys.shape()),
		(*reader).aromas, func(d *Drink) *[]Aroma { return &d.Aroma }),
	words("may-contain", "allergens that may get in at your bar by cross-contact: [almond]", nil, func(d *Drink) *[]Word { return &d.MayContain }),
	into("categories", "sensory categories and the constituents that speak for them", false, mapOf(listOf(textShape(mostName))),
		(*reader).categories, func(d *Drink) *[]Category { return &d.Categories }),
	into("claims", "sentences for the stage, each with the check that decides it", false, listOf(claimKeys.shape()),
		(*reader).claims, func(d *Drink) *[]Claim { return &d.Claims }),
	into("targets", "what fit should reach", false, listOf(textShape(mostProse)), (*reader).targets, func(d *Drink) *[]Target { return &d.Targets }),
	into("vary", "amounts that fit may change", false, listOf(varyKeys.shape()), (*reader).vary, func(d *Drink) *[]Vary { return &d.Vary }),
	text("note", "a remark", false, mostProse, func(d *Drink) *string { return &d.Note }),
)...)}

// pantryKeys is a pantry file.
var pantryKeys = grammar[Drink]{"a shelf", []key[Drink]{
	{"foods", "foods that no table has, by the code that a line pours: 20 g own:CODE", false, mapOf(ownFoodKeys.shape()), func(r *reader, d *Drink, n ast.Node) {
		r.ownFoods(d, n)
	}},
	{"components", "house-made parts by name: what goes in, what is done, what is read", false, mapOf(componentKeys.shape()), func(r *reader, d *Drink, n ast.Node) {
		r.components(d, n)
	}},
}}

// finish is the list of what is done with the whole drink.
const finish = "finish"

var ruleWords = []string{"eu", "uk", "us", "ca", "anz", "codex"}

// readCompared reads the name of a component, or a list of them.
func readCompared(r *reader, d *Drink, n ast.Node) {
	if _, several := n.(*ast.SequenceNode); several {
		r.compared = r.words(n, "compare-with", nil)
	} else if name, ok := r.name(n, "compare-with"); ok {
		r.compared = []Word{{r.nodeAt(n), name}}
	}
	if r.compared != nil && len(r.compared) == 0 {
		r.faults.Add(r.nodeAt(n), "name a component, or take the key out", "compare-with is empty")
	}
	d.setCompared(r.compared)
}

// setCompared keeps the names of what a drink is compared with.
func (d *Drink) setCompared(list []Word) {
	d.CompareWith, d.CompareAlso = "", nil
	if len(list) > 0 {
		d.CompareWith, d.CompareAlso = list[0].Text, each(list[1:], func(w Word) string { return w.Text })
	}
}

// Compared lists the components that a drink is compared with, in the order of the file.
func (d *Drink) Compared() []string {
	if d.CompareWith == "" {
		return nil
	}
	return append([]string{d.CompareWith}, d.CompareAlso...)
}

// serves reads a whole number of servings.
func (r *reader) serves(n ast.Node, what string) int {
	text, ok := r.scalar(n, what)
	if !ok {
		return 0
	}
	v, err := strconv.Atoi(text)
	if err != nil || v < 1 || v > mostServes || !onlyDigits(text) {
		do := "write a whole number from 1 to " + strconv.Itoa(mostServes)
		if asked := servesAndGlass(text); asked != text && err != nil {
			do = "write: serves: " + asked
		}
		r.faults.Add(r.nodeAt(n), do, "serves is %s", quoted(text))
		return 0
	}
	return v
}
