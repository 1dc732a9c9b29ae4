package sweep_test

import (
	"regexp"
	"strings"

	"sipsum/internal/food"
)

// pouredCode is a food of the core table as a drink file writes it.
var pouredCode = regexp.MustCompile(`core:([a-z0-9-]+)`)

// written lists the foods of the core table that the file of a drink names, wherever it pours them:
// all but those that only lend their figures.
func (s *subject) written() []*food.Food {
	var list []*food.Food
	for line := range strings.Lines(s.text) {
		if strings.Contains(line, "fill:") || strings.HasPrefix(line, "compare-with:") {
			continue
		}
		for _, code := range pouredCode.FindAllStringSubmatch(line, -1) {
			if f, ok := s.kitchen.foods[food.ID{Table: "core", Code: code[1]}]; ok {
				list = append(list, f)
			}
		}
	}
	return list
}

// declarations are those of the document, one for each set of rules.
func (s *subject) declarations() (list []map[string]any) {
	all, _ := s.documents["allergens"]["allergens"].([]any)
	for _, d := range all {
		list = append(list, d.(map[string]any))
	}
	return list
}

// allergenAppears holds every allergen of every food that the file names, at whatever depth
// and through whatever step, against what is printed of it.
func allergenAppears(s *subject, broken say) {
	said := map[string]map[[2]string]bool{}
	for _, d := range s.declarations() {
		rules := d["rules"].(string)
		said[rules] = map[[2]string]bool{}
		for _, key := range []string{"contains", "not_declared", "excepted"} {
			each("", d[key], func(_ string, object map[string]any) {
				food, isFood := object["food"].(string)
				leaf, isLeaf := object["leaf"].(string)
				if isFood && isLeaf {
					said[rules][[2]string{food, leaf}] = true
				}
			})
		}
	}
	if len(said) == 0 {
		broken(1, "no declaration at all")
	}
	for _, f := range s.written() {
		for _, m := range f.Marks {
			if m.Kind != "allergen" || m.Value == "" {
				continue
			}
			for rules := range said {
				if !said[rules][[2]string{f.ID.String(), m.Value}] {
					broken(1, "%s of %s is nowhere under %s", m.Value, f.ID, rules)
				}
			}
		}
	}
}

// ingredientListed holds every food that the file names against the list of ingredients: it is an
// ingredient, or a garnish that is not eaten. Water may have boiled off.
func ingredientListed(s *subject, broken say) {
	for _, d := range s.declarations() {
		listed := map[string]bool{}
		most := map[string]float64{}
		each("", d["ingredients"], func(path string, object map[string]any) {
			if code, ok := object["food"].(string); ok {
				listed[code] = true
			}
			if grams, ok := object["grams"].(float64); ok && strings.HasPrefix(path, ".list") {
				list := path[:strings.LastIndex(path, "[")]
				if before, ok := most[list]; ok && grams > before*(1+rounding) {
					broken(grams-before, "%v g stand below %v g in %s", grams, before, list)
				}
				most[list] = grams
			}
		})
		for _, f := range s.written() {
			if f.Group != "water" && !listed[f.ID.String()] {
				broken(1, "%s is not among the ingredients under %v", f.ID, d["rules"])
			}
		}
	}
}
