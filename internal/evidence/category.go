package evidence

import (
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
)

// plan is a category and its constituents, before any figure.
type plan struct {
	name string
	ids  []constituent.ID
}

var standard = sync.OnceValue(func() []plan {
	var plans []plan
	for _, row := range embedded.Rows("categories.csv") {
		p := plan{name: row.Text("category")}
		for tag := range strings.FieldsSeq(row.Text("constituents")) {
			p.ids = append(p.ids, constituent.Must(constituent.ID(tag)).ID)
		}
		plans = append(plans, p)
	}
	return plans
})

// plans gives the drink's own categories, or the standard ones.
func plans(d *drink.Drink) []plan {
	if len(d.Categories) == 0 {
		return standard()
	}
	own := make([]plan, len(d.Categories))
	for i, c := range d.Categories {
		own[i].name = c.Name
		for _, tag := range c.Tags {
			if k, ok := constituent.Find(tag); ok { // the parser refuses unknown tags
				own[i].ids = append(own[i].ids, k.ID)
			}
		}
	}
	return own
}

// Constituents lists what the evidence of a drink asks for.
func Constituents(d *drink.Drink) []constituent.ID {
	var ids []constituent.ID
	for _, p := range plans(d) {
		ids = append(ids, p.ids...)
	}
	return ids
}
