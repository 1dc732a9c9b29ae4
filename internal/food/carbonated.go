package food

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// gasRule is a row of data/carbonated.csv: foods of a group that are sold with their gas,
// by the words of their names. Without words all of the group are.
type gasRule struct {
	group         string
	words, unless []string
}

var gasRules = sync.OnceValue(func() []gasRule {
	list := func(text string) []string {
		return slices.DeleteFunc(strings.Split(text, "|"), func(s string) bool { return s == "" })
	}
	var rules []gasRule
	for _, row := range embedded.Rows("carbonated.csv") {
		rules = append(rules, gasRule{row.Text("group"), list(row.Text("words")), list(row.Text("unless"))})
	}
	return rules
})

// Carbonated reports whether a food is sold with carbon dioxide in it, by its group and
// its names (data/carbonated.csv).
func (f *Food) Carbonated() bool {
	named := func(words []string) bool {
		return slices.ContainsFunc(f.Names, func(n Name) bool {
			name := " " + strings.ToLower(strings.ReplaceAll(n.Text, ",", " ")) + " "
			return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(name, " "+w+" ") })
		})
	}
	return slices.ContainsFunc(gasRules(), func(r gasRule) bool {
		return r.group == f.Group && (len(r.words) == 0 || named(r.words)) && !named(r.unless)
	})
}

// boundGas bounds the unknown gas of a food. One that is sold with it may hold what a bottle
// does: a table weighs what stays when the gas has gone, so neither the balance of the row
// nor that of its charges says how much of it was there. Any other liquid holds no more than
// water does under carbon dioxide alone, however much the balance leaves.
func (e *entry) boundGas() {
	c := constituent.Must(constituent.CarbonDioxide)
	cell := e.cell(c)
	if cell.Known {
		return
	}
	if e.Food.Carbonated() {
		most := unit.LimitOf("gas in a glass", "g/l")
		cell.Bound, cell.Why = most.High/litre, "no more than a closed bottle holds: "+most.Source
		return
	}
	// guard: an open liquid holds little gas
	if pours(e.Profile) {
		most := unit.LimitOf("gas in an open liquid", "g/l")
		(&bounding{entry: e}).limit(c, most.High/litre, "no more than water holds under carbon dioxide alone: "+most.Source)
	}
}

// litre is the mass of a litre of water, in g.
const litre = 1000

// pours reports whether more than half of a food is water: our own bound. A powder may make
// gas of a salt of carbonic acid, which no water has to hold.
func pours(p *Profile) bool {
	const half = whole / 2
	water := p.Cell(constituent.Water)
	return water.Known && water.Amount > half
}
