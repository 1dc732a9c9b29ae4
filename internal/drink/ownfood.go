package drink

import (
	"strings"
	"unicode"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/embedded"
)

var ownFoodKeys = grammar[OwnFood]{"an own food", []key[OwnFood]{
	text("name", "what it is, in words", true, mostName, func(f *OwnFood) *string { return &f.Name }),
	word("group", "the food group, which selects bounds, a pH and mark rules", false, foodGroups(), func(f *OwnFood) *string { return &f.Group }),
	{"fill", "table:code of the food that lends what is not stated", false, textShape(mostName), func(r *reader, f *OwnFood, n ast.Node) {
		f.FillAt = r.nodeAt(n)
		f.Fill, _ = r.tableCode(n, "fill")
		if strings.HasPrefix(f.Fill, "own:") {
			r.faults.Add(f.FillAt, "name a food of a table", "an own food cannot borrow from another own food")
			f.Fill = ""
		}
	}},
	{"per", "what the values refer to: 100 g or 100 ml", true, amountShape(either), func(r *reader, f *OwnFood, n ast.Node) {
		if a := r.exactAmount(n, "per", either); a != nil {
			f.Per = *a
		}
	}},
	scaled("density", "needed for volumes: 1.03 g/ml", foodDensity, func(f *OwnFood) **Quantity { return &f.Density }),
	word("declared", "the rules by which the pack declares its values: what carbohydrate means, how far a figure may be off; else the drink's first rules", false, ruleWords,
		func(f *OwnFood) *string { return &f.Declared }),
	into("values", "constituents, or the rows of the pack (carbohydrate, sugars, salt), as it states them: 1.5 g, < 0.5 g, trace, unknown", false, mapOf(statedShape),
		(*reader).figures, func(f *OwnFood) *[]Stated { return &f.Values }),
	{"coffee", "of a coffee: what is known of it besides its figures", false, coffeeKeys.shape(), func(r *reader, f *OwnFood, n ast.Node) {
		f.Coffee = r.coffee(n)
	}},
	{"allergens", "leaf codes; [] says none, leaving the key out says nobody looked", false, listOf(textShape(mostName)), func(r *reader, f *OwnFood, n ast.Node) {
		if _, nothing := n.(*ast.NullNode); nothing {
			r.faults.Add(r.nodeAt(n), "write [] if you looked and found none; leave the key out if nobody looked", "allergens has no value")
			return
		}
		f.Allergens = r.words(n, "allergens", nil)
		f.Assessed = f.Allergens != nil
	}},
	text("source", "where the values come from", false, mostProse, func(f *OwnFood) *string { return &f.Source }),
	into("price", "what it costs, and the pack it is sold in: 4.20 EUR per 1 kg", false, textShape(mostName), readPrice, func(f *OwnFood) **Price { return &f.Price }),
	text("lot", "the lot of which its figures and readings are", false, mostName, func(f *OwnFood) *string { return &f.Lot }),
	into("best", "best before: 2027-03-31", false, textShape(mostName), readBest, func(f *OwnFood) *string { return &f.Best }),
}}

// foodGroups are the names of data/groups.csv.
func foodGroups() []string {
	return each(embedded.Rows("groups.csv"), func(row embedded.Row) string { return row.Text("group") })
}

// ownFoods reads foods that the file describes itself into the drink. A food
// with faults is kept with what was understood, so that the lines that use it
// are not told that it does not exist.
func (r *reader) ownFoods(d *Drink, n ast.Node) {
	each := func(e entry) {
		if first, taken := d.OwnFood(e.key); taken {
			r.faults.Add(e.at, "rename one of them", "there is a food %s already, at %s", quoted(e.key), first.Place)
			return
		}
		if strings.Contains(e.key, " ") { // it is kept, so that the lines that pour it are not told that it does not exist
			code := strings.Join(strings.Fields(e.key), "-")
			r.faults.Add(e.at, "write: "+code+":, and in the lines own:"+code, "the food's code %s has a space", quoted(e.key))
		}
		for _, first := range d.Foods {
			twins(r.faults, "food", e, first.Code, first.Place)
		}
		f := OwnFood{Code: e.key, Place: e.at}
		present, ok := ownFoodKeys.read(r, &f, e.value)
		if ok && present.count("values", "fill") == 0 && (f.Coffee == nil || f.Coffee.Lab == nil) && !r.torn {
			r.faults.Add(e.at, "add values: or fill:", "nothing is known of %s", quoted(e.key))
		}
		if ok && present.has("values") && !present.has("source") && !r.torn {
			r.faults.Add(e.at, "add source: with the pack, the page or the laboratory that states the values", "the values of %s have no source", quoted(e.key))
		}
		d.Foods = append(d.Foods, f)
	}
	if list, ok := n.(*ast.SequenceNode); ok {
		r.foodsOfList(list, each)
		return
	}
	r.named(n, "foods", codeFault, each)
}

// foodsOfList reports own foods that stand in a list, each with the code that its name makes, and
// reads them all the same.
func (r *file) foodsOfList(list *ast.SequenceNode, each func(e entry)) {
	for _, item := range list.Values {
		code := "my-food"
		if m, ok := item.(*ast.MappingNode); ok {
			for _, v := range m.Values {
				key, _ := raw(v.Key)
				if name, ok := raw(v.Value); ok && strings.EqualFold(key, "name") {
					code = strings.ToLower(strings.Join(strings.FieldsFunc(name, func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) }), "-"))
				}
			}
		}
		r.faults.Add(r.nodeAt(item), "write each under a code of its own, without the dash: "+clip(code)+": and below it name:, per:, values:, source:", "foods is a list")
		each(entry{key: code, at: r.nodeAt(item), node: item, value: item})
	}
}

// figures reads constituents with what is stated of them.
func (r *values) figures(n ast.Node, what string) []Stated {
	var out []Stated
	r.named(n, what, tagFault, func(e entry) {
		if v, ok := r.stated(e); ok {
			out = append(out, v)
		}
	})
	return out
}
