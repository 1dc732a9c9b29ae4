package nutritionclaim

import (
	"slices"
	"strconv"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// The bases of a condition.
const (
	ofDrink       = "the drink"
	ofIngredients = "ingredients"
	ofEnergy      = "energy"
	per100ml      = "100 ml"
	per100g       = "100 g"
	per100kcal    = "100 kcal"
	perRACC       = "RACC"
	perBoth       = "RACC and serving"
)

// every is the claim whose conditions are those of all.
const every = "*"

// condition is a row of data/nutrition_claims.csv.
type condition struct {
	of      []constituent.ID // of a figure
	foods   string           // of ingredients: the condition of data/claim_foods.csv
	within  constituent.ID
	word    string
	unit    string
	against float64 // 0 if there is nothing
	in      string  // the unit of against
	basis   string
	is      string
	limit   float64
	written string // the limit as the rules write it
	way     string
	mark    string // what a named ingredient asks for
	status  string
	source  string
}

// claim is a claim with its conditions.
type claim struct {
	name       string
	stronger   string // the claim that says more
	provided   string // what only the maker knows
	disclosure string // to print with it
	disclose   string // when: always, "if TAG" or "unless CLAIM"
	conditions []condition
}

// reference is a row of data/claim_references.csv.
type reference struct {
	of             constituent.ID
	word           string
	amount         float64
	unit           string
	status, source string
}

// ruleset is what one set of rules says of claims, in the order of the files.
type ruleset struct {
	always []condition
	claims []*claim
}

var rulesets = sync.OnceValue(func() map[string]*ruleset {
	references := map[string][]reference{}
	for _, r := range embedded.Rows("claim_references.csv") {
		for rules := range strings.FieldsSeq(r.Text("rules")) {
			references[rules] = append(references[rules], reference{
				of: constituent.Must(constituent.ID(r.Text("of"))).ID, word: r.Text("word"), amount: r.Number("amount"), unit: r.Text("unit"),
				status: r.Text("status"), source: r.Text("source"),
			})
		}
	}
	all := map[string]*ruleset{}
	for _, r := range embedded.Rows("nutrition_claims.csv") {
		for rules := range strings.FieldsSeq(r.Text("rules")) {
			if all[rules] == nil {
				all[rules] = &ruleset{}
			}
			all[rules].read(r, references[rules])
		}
	}
	return all
})

// read adds a row, as often as its claim has names.
func (s *ruleset) read(r embedded.Row, references []reference) {
	c := conditionOf(r)
	switch {
	case r.Text("claim") == every:
		s.always = append(s.always, c)
	case r.Text("of") == "reference":
		for _, ref := range references {
			one := c
			one.of, one.word, one.against, one.in = []constituent.ID{ref.of}, ref.word, ref.amount, ref.unit
			one.status, one.source = worse(c.status, ref.status), c.source+"; "+ref.source
			s.add(r, ref.word, one)
		}
	default:
		s.add(r, "", c)
	}
}

// add puts a condition to its claim.
func (s *ruleset) add(r embedded.Row, word string, c condition) {
	name := strings.ReplaceAll(r.Text("claim"), "{}", word)
	i := slices.IndexFunc(s.claims, func(have *claim) bool { return have.name == name })
	if i < 0 {
		i = len(s.claims)
		s.claims = append(s.claims, &claim{
			name: name, stronger: strings.ReplaceAll(r.Text("stronger"), "{}", word), provided: r.Text("provided"),
			disclosure: r.Text("disclosure"), disclose: r.Text("disclose"),
		})
	}
	s.claims[i].conditions = append(s.claims[i].conditions, c)
}

func conditionOf(r embedded.Row) condition {
	c := condition{
		within: constituent.ID(r.Text("within")), word: r.Text("word"), unit: r.Text("unit"), basis: r.Text("basis"), is: r.Text("is"),
		written: r.Text("limit"), way: r.Text("way"), status: r.Text("status"), source: r.Text("source"),
	}
	if r.Text("against") != "" {
		number, in, _ := strings.Cut(r.Text("against"), " ")
		c.against, c.in = parsed(r, number), in
	}
	switch {
	case c.basis == ofIngredients:
		c.foods = r.Text("of")
		if c.is == asNamed {
			c.mark = r.Text("disclosure")
		}
		return c
	case c.basis != ofDrink && r.Text("of") != "reference":
		for id := range strings.FieldsSeq(r.Text("of")) {
			c.of = append(c.of, constituent.Must(constituent.ID(id)).ID)
		}
	}
	c.limit = r.Number("limit")
	return c
}

// parsed reads a number that stands before its unit.
func parsed(r embedded.Row, text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		r.Fail("against: %q is not a number and a unit", r.Text("against"))
	}
	return x
}

// statuses of a legal reference, the best first.
var statuses = []string{"verified", "secondary", "unverified"}

// worse gives the worse of two.
func worse(a, b string) string {
	if slices.Index(statuses, b) > slices.Index(statuses, a) {
		return b
	}
	return a
}

// Constituents lists what claims are made of, energy apart: the amounts to be given.
func Constituents() []constituent.ID {
	var all []constituent.ID
	add := func(ids ...constituent.ID) {
		for _, id := range ids {
			if id != "" && id != constituent.Energy && id != constituent.EnergyKcal && !slices.Contains(all, id) {
				all = append(all, id)
			}
		}
	}
	for _, s := range rulesets() {
		for _, k := range s.claims {
			for _, c := range k.conditions {
				add(c.of...)
				add(c.within)
			}
		}
	}
	slices.Sort(all)
	return all
}

// Whole gives the total that the rules hold a constituent to be within; empty if none.
func Whole(id constituent.ID) constituent.ID {
	for _, s := range rulesets() {
		for _, k := range s.claims {
			for _, c := range k.conditions {
				if c.within != "" && slices.Contains(c.of, id) {
					return c.within
				}
			}
		}
	}
	return ""
}
