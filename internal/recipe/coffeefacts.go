package recipe

import (
	"math"
	"slices"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// roasted is a row of data/coffee_roasts.csv: a food of the core table by species and roast.
type roasted struct{ food, form, species, roast string }

var roastedFoods = sync.OnceValue(func() []roasted {
	var list []roasted
	for _, r := range embedded.Rows("coffee_roasts.csv") {
		list = append(list, roasted{r.Text("food"), r.Text("form"), r.Text("species"), r.Text("roast")})
	}
	return list
})

// coreTable is the table whose coffees stand in data/coffee_roasts.csv.
const coreTable = "core"

// roastedOf gives the row of a food; ok is false if it is none of these.
func roastedOf(id food.ID) (roasted, bool) {
	return oneRoasted(func(r roasted) bool { return id.Table == coreTable && id.Code == r.food })
}

func oneRoasted(is func(roasted) bool) (roasted, bool) {
	i := slices.IndexFunc(roastedFoods(), is)
	if i < 0 {
		return roasted{}, false
	}
	return roastedFoods()[i], true
}

// at gives the food of the same form at a species and a roast.
func (r roasted) at(species, roast string) (roasted, bool) {
	return oneRoasted(func(x roasted) bool { return x.form == r.form && x.species == species && x.roast == roast })
}

// coffeeFact is a row of data/coffee_facts.csv: what is published of the effect of a fact.
type coffeeFact struct {
	fact, value string
	effect      string // row, position, kept or none
	constituent constituent.ID
	figure, sd  float64
	source      string
}

var coffeeFacts = sync.OnceValue(func() []coffeeFact {
	var list []coffeeFact
	for _, r := range embedded.Rows("coffee_facts.csv") {
		f := coffeeFact{
			fact: r.Text("fact"), value: r.Text("value"), effect: r.Text("effect"), constituent: constituent.ID(r.Text("constituent")), source: r.Text("source"),
		}
		f.figure, _ = r.Optional("figure")
		f.sd, _ = r.Optional("sd")
		list = append(list, f)
	}
	return list
})

// noEffect gives the source that says so, or that nobody agrees; ok is false of what has an effect.
func noEffect(fact string) (source string, ok bool) {
	for _, f := range coffeeFacts() {
		if f.fact == fact && f.effect == "none" {
			return f.source, true
		}
	}
	return "", false
}

// position gives the loss of mass of a roast by its name.
func position(roast string) coffeeFact {
	for _, f := range coffeeFacts() {
		if f.fact == "roast" && f.value == roast && f.effect == "position" {
			return f
		}
	}
	panic("recipe: coffee_facts.csv has no position of " + roast)
}

// keptBy lists the constituents that stay as the mass goes.
func keptBy(fact string) []constituent.ID {
	var list []constituent.ID
	for _, f := range coffeeFacts() {
		if f.fact == fact && f.effect == "kept" {
			list = append(list, f.constituent)
		}
	}
	return list
}

// neighbours gives the roasts between which a loss of mass lies, how far towards the second, and
// the standard deviation of that; beyond the lightest and the darkest, these.
func neighbours(loss float64, names []string) (from, to string, w, sd float64) {
	from = names[0]
	for _, to = range names {
		a, b := position(from), position(to)
		if loss <= b.figure || to == names[len(names)-1] {
			if span := b.figure - a.figure; span > 0 {
				w = min(max((loss-a.figure)/span, 0), 1)
				sd = math.Hypot((1-w)*a.sd, w*b.sd) / span
			}
			return from, to, w, sd
		}
		from = to
	}
	return from, from, 0, 0
}

// plainRoast is the roast of a food whose name says none.
const plainRoast = "medium"

// published gives the loss of mass of the nearest roast that is published: the range of each is
// rectangular (JCGM 100:2008, 4.3.7).
func published(loss float64) float64 {
	light, dark := position(drink.RoastNames[0]), position(drink.RoastNames[len(drink.RoastNames)-1])
	return min(max(loss, light.figure-math.Sqrt(3)*light.sd), dark.figure+math.Sqrt(3)*dark.sd)
}

// grown is by how much the share of what stays grows where the mass lost is loss in place of the
// usual one of a roast, and its standard deviation.
func grown(usual coffeeFact, loss float64) (factor, sd float64) {
	left := 1 - loss/unit.Hundred
	return (1 - usual.figure/unit.Hundred) / left, usual.sd / unit.Hundred / left
}
