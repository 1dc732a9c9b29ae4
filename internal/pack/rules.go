package pack

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/spelling"
	"sipsum/internal/unit"
)

// Rules are those by which a pack declares its figures.
type Rules struct {
	Name    string
	Factors []constituent.EnergyFactor // of what has one

	like  string
	usual bool
	rows  []Row
	steps map[string][]step
	zeros map[string][]zero
}

// Row is a row of a declaration.
type Row struct {
	Word  string         // "carbohydrate"
	Of    constituent.ID // what it is of
	Times float64        // the row is so many times its constituent: 2.5 of salt
	Also  []constituent.ID
	Unit  string // in which its figures are

	rounding string
	said     []string // what it is called, plain
}

// step is what figures from a limit on are rounded to.
type step struct {
	from      float64
	including bool
	step      float64
}

var all = sync.OnceValue(func() map[string]*Rules {
	rules := map[string]*Rules{}
	for _, r := range embedded.Rows("card_rules.csv") {
		rules[r.Text("rules")] = &Rules{Name: r.Text("rules"), like: r.Text("like"), usual: r.Text("usual") == "yes", steps: map[string][]step{}, zeros: map[string][]zero{}}
	}
	for _, r := range embedded.Rows("card_rows.csv") {
		of := rules[r.Text("rules")]
		of.rows = append(of.rows, readRow(r))
	}
	for _, r := range embedded.Rows("card_rounding.csv") {
		if size, ok := r.Optional("step"); ok && r.Text("when") == "" {
			of, band := rules[r.Text("rules")], r.Text("band")
			of.steps[band] = append(of.steps[band], step{r.Number("from"), r.Text("including") == "yes", size})
		}
	}
	readZeros(rules)
	for _, f := range constituent.EnergyFactors() {
		rules[f.Rules].Factors = append(rules[f.Rules].Factors, f)
	}
	for _, of := range rules {
		if model := rules[of.like]; model != nil && len(of.rows) == 0 {
			of.rows, of.steps, of.zeros, of.Factors = model.rows, model.steps, model.zeros, model.Factors
		}
	}
	return rules
})

// readRow reads what a row is of: its own constituent, and what else the rules count to it.
func readRow(r embedded.Row) Row {
	row := Row{Word: r.Text("key"), Of: constituent.ID(r.Text("tag")), Times: 1, Unit: strings.Fields(r.Text("unit"))[0], rounding: r.Text("rounding")}
	for _, word := range []string{row.Word, r.Text("label")} {
		row.said = append(row.said, plain(word))
	}
	terms := strings.Fields(r.Text("terms"))
	if terms[0] == string(constituent.Mass) || terms[0] == "energy" {
		return row // what the others leave, or what all of them make: the constituent is as the row is
	}
	for _, term := range terms {
		id, times, multiplied := strings.Cut(term, "*")
		c := constituent.Must(constituent.ID(id))
		switch {
		case c.ID == row.Of && multiplied:
			x, err := strconv.ParseFloat(times, 64)
			if err != nil {
				r.Fail("terms: %v", err)
			}
			row.Times = x
		case c.ID != row.Of && c.Kind != constituent.Rest:
			row.Also = append(row.Also, c.ID)
		}
	}
	return row
}

// Of gives a set of rules by name.
func Of(name string) (*Rules, bool) {
	r, ok := all()[name]
	return r, ok
}

// Usual gives the rules of a pack where nobody names any.
func Usual() *Rules {
	for _, name := range Names() {
		if r := all()[name]; r.usual {
			return r
		}
	}
	panic("pack: card_rules.csv has no usual rules")
}

// Names gives the sets of rules, sorted.
func Names() []string {
	var names []string
	for name := range all() {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// plain is what of a word or a label tells rows apart: its words, and not what sets it below another.
func plain(label string) string { return spelling.Plain(constituent.CardWord(label)) }

// Row gives the row of a word, its key or its label in any case: that of these rules, else that
// of the same constituent, else of any that know the word.
func (r *Rules) Row(word string) (Row, bool) {
	said := plain(word)
	called := func(row Row) bool { return slices.Contains(row.said, said) }
	if row, ok := r.find(called); ok {
		return row, true
	}
	for _, name := range Names() {
		row, ok := all()[name].find(called)
		if !ok {
			continue
		}
		if own, ok := r.RowOf(row.Of); ok && own.Times == row.Times {
			return own, true // called otherwise here: fiber, fibre
		}
		return row, true
	}
	return Row{}, false
}

// RowOf gives the row of a constituent; of energy in a unit that has no row of its own, the
// other's.
func (r *Rules) RowOf(id constituent.ID) (Row, bool) {
	row, ok := r.find(func(row Row) bool { return row.Of == id })
	if !ok && (id == constituent.Energy || id == constituent.EnergyKcal) {
		return r.find(func(row Row) bool { return row.Of == constituent.Energy || row.Of == constituent.EnergyKcal })
	}
	return row, ok
}

func (r *Rules) find(is func(Row) bool) (Row, bool) {
	i := slices.IndexFunc(r.rows, is)
	if i < 0 {
		return Row{}, false
	}
	return r.rows[i], true
}

// Rounding is by how much a figure of a row may have been rounded: half of the step that the
// rules have there, if it lies on that grid, else half of its own last digit.
func (r *Rules) Rounding(row Row, x float64, decimals int) float64 {
	digit := math.Pow10(-decimals) / 2
	for _, s := range r.steps[row.rounding] {
		if s.including && !unit.AtLeast(x, s.from) || !s.including && !unit.Over(x, s.from) {
			continue
		}
		const dust = 1e-9
		if off := math.Abs(x/s.step - math.Round(x/s.step)); off < dust {
			return max(digit, s.step/2)
		}
		break
	}
	return digit
}
