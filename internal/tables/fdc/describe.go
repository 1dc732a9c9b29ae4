package fdc

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/food"
)

// The columns of branded_food.csv and food_portion.csv that are kept, the food
// first.
var (
	brandColumns = [...]string{
		"fdc_id", "brand_owner", "brand_name", "subbrand_name", "gtin_upc", "ingredients", "not_a_significant_source_of", "serving_size",
		"serving_size_unit", "household_serving_fulltext", "branded_food_category", "market_country", "discontinued_date", "preparation_state_code",
		"short_description",
	}
	portionColumns = [...]string{"fdc_id", "amount", "measure_unit_id", "portion_description", "modifier", "gram_weight"}
)

// brand is a slip of branded_food.csv.
type brand struct {
	owner, name, sub, gtin, ingredients, insignificant, size, sizeUnit, household, category, market, discontinued, preparation, short string
}

func brandOf(body []byte) brand {
	t := strings.Split(string(body), "\x00")
	return brand{
		owner: t[0], name: t[1], sub: t[2], gtin: t[3], ingredients: t[4], insignificant: t[5], size: t[6], sizeUnit: t[7], household: t[8],
		category: t[9], market: t[10], discontinued: t[11], preparation: t[12], short: t[13],
	}
}

// called names a food that only the branded list knows.
func (b brand) called() string {
	names := slices.DeleteFunc([]string{b.name, b.sub, b.short}, func(s string) bool { return s == "" })
	if len(names) == 0 {
		return b.owner
	}
	return strings.Join(names, ", ")
}

// tell adds what the label says to a food and to its notes.
func (b brand) tell(f *food.Food, n *notes) {
	if b.category != "" {
		f.PublisherGroup = b.category
	}
	f.Article, f.Declared = gtin(b.gtin), cut(b.ingredients, "ingredients:")
	serving := ""
	if b.size != "" {
		serving = strings.TrimSpace(strings.TrimSuffix(b.size, ".0") + " " + b.sizeUnit)
		if b.household != "" {
			serving += " (" + b.household + ")"
		}
	}
	for _, line := range [][2]string{
		{"Brand", strings.TrimPrefix(b.name+", "+b.sub, ", ")}, {"Brand owner", b.owner}, {"GTIN", f.Article}, {"Market", b.market}, {"Discontinued", b.discontinued},
		{"State", b.preparation}, {"Serving", serving}, {"Not a significant source of", cut(b.insignificant, "not a significant source of")},
		{"Ingredients", f.Declared},
	} {
		if text := strings.TrimSuffix(line[1], ", "); text != "" {
			n.add(line[0], ": ", text)
		}
	}
	if isMl(b.sizeUnit) {
		n.add("The serving is a volume: the amounts may be per 100 ml, not per 100 g.")
	}
	if grams, err := strconv.ParseFloat(b.size, 64); err == nil && grams > 0 && isGram(b.sizeUnit) {
		portion(f, food.Portion{Name: first(b.household, "serving"), Grams: grams, SD: food.None})
	}
}

// isMl knows the ways in which labels write the millilitre.
func isMl(unit string) bool { return unit == "ml" || unit == "MLT" }

// isGram knows the ways in which labels write the gram. Millilitres say nothing
// about mass, and MG stands beside sizes that cannot be milligrams.
func isGram(unit string) bool {
	return unit == "g" || unit == "GRM" || unit == "GM"
}

// gtin restores the leading zeros of an article number: fourteen digits.
func gtin(code string) string {
	if code == "" || len(code) >= 14 || strings.Trim(code, "0123456789") != "" {
		return code
	}
	return strings.Repeat("0", 14-len(code)) + code
}

// cut removes a heading that the text may bring itself.
func cut(text, heading string) string {
	if len(text) >= len(heading) && strings.EqualFold(text[:len(heading)], heading) {
		return strings.TrimSpace(text[len(heading):])
	}
	return text
}

func first(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// notes gathers the lines of a food's note.
type notes struct{ strings.Builder }

func (n *notes) add(parts ...string) {
	if n.Len() > 0 {
		n.WriteByte('\n')
	}
	for _, p := range parts {
		n.WriteString(p)
	}
}

// measure adds a slip of food_portion.csv: the amount, the unit, what it is of,
// and the modifier, which is only a code where the portion is described in full.
func (r *reader) measure(f *food.Food, body []byte) {
	t := strings.Split(string(body), "\x00")
	amount, unit, described, modifier, weight := strings.TrimSuffix(t[0], ".0"), r.units.rows[t[1]], t[2], t[3], t[4]
	grams, err := strconv.ParseFloat(weight, 64)
	if err != nil {
		return // no weight is given
	}
	var words []string
	if amount != "1" {
		words = append(words, amount)
	}
	if len(unit) > 0 && unit[0] != "undetermined" {
		words = append(words, unit[0])
	}
	words = append(words, described)
	if described == "" || strings.Trim(modifier, "0123456789") != "" {
		words = append(words, modifier)
	}
	words = slices.DeleteFunc(words, func(s string) bool { return s == "" })
	portion(f, food.Portion{Name: first(strings.Join(words, " "), "portion"), Grams: grams, SD: food.None})
}

// portion adds a portion; one that has the name of another with another mass
// gets a name of its own.
func portion(f *food.Food, p food.Portion) {
	plain := p.Name
	for n := 2; slices.ContainsFunc(f.Portions, func(o food.Portion) bool { return o.Name == p.Name }); n++ {
		p.Name = fmt.Sprintf("%s~%d", plain, n)
	}
	f.Portions = append(f.Portions, p)
}
