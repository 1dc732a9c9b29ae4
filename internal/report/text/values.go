package textreport

import (
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// values prints the values of one food.
type values struct {
	*page
	food  *food.Food
	notes *footnotes
	works func(id string) (source.Work, bool)
	used  [estimate.Unknown + 1]bool

	kin     bool     // a figure is known by kin
	lenders []string // foods of the table that a figure is borrowed from
}

// byGroup prints the values that the vocabulary knows.
func (v *values) byGroup() {
	for _, g := range sheet.Groups() {
		begun := false
		for _, l := range g.Lines {
			value, ok := v.food.Value(l.ID)
			if !ok {
				continue
			}
			if !begun {
				v.head(g.Name)
				begun = true
			}
			c := constituent.Must(l.ID)
			v.value(strings.Repeat("  ", g.Depth(l.ID, v.has))+sheet.WordsFor(c), c.Unit, value)
		}
	}
}

func (v *values) has(id constituent.ID) bool {
	_, ok := v.food.Value(id)
	return ok
}

// others prints the values of columns that the vocabulary does not know.
func (v *values) others(columns []food.Column) {
	begun := false
	for _, value := range v.food.Values {
		if _, known := constituent.Find(string(value.Constituent)); known {
			continue
		}
		if !begun {
			v.head("Other columns of the table")
			begun = true
		}
		name, unit := string(value.Constituent), ""
		for _, c := range columns {
			if c.ID == value.Constituent {
				name, unit = c.Name, c.Unit
			}
		}
		v.value(Clean(name, mostName), Clean(unit, mostName), value)
	}
}

// The columns of a value.
const (
	amountWidth = 11
	rangeWidth  = 15
	samples     = 6
	stateWidth  = 10
)

func (v *values) head(name string) {
	names, n := v.beside(marginWidth+amountWidth+unitWidth, rangeWidth, samples, stateWidth)
	heads, _ := fold([]column{{text: "found", width: rangeWidth}, {text: "n", width: samples}, {text: "known as", width: stateWidth}}[:n], n)
	v.gap()
	v.line(v.bold(v.accent(left(name, marginWidth+names))), right("in 100 g", amountWidth), left("", unitWidth), heads)
}

// value prints one value: amount, range found, number of samples, state and
// source.
func (v *values) value(name, unit string, x food.Value) {
	v.used[x.State] = true
	signs := v.cite(x)
	amount := plain(x.Amount)
	switch {
	case x.State == estimate.Unknown, x.State == estimate.Trace, x.State == estimate.Below, !food.Stated(x.Amount):
		amount, unit = limitOf(x, unit)
	}
	found := ""
	switch {
	case x.State >= estimate.Trace: // the limit stands in its own column
	case food.Stated(x.Low) && food.Stated(x.High):
		found = plain(x.Low) + "–" + plain(x.High)
	case food.Stated(x.SD) && x.SD > 0:
		found = "sd " + plainSpread(x.SD)
	}
	known := x.State.String()
	if lender, lent := food.LenderOf(v.food, x); lent {
		known = food.Borrowed
		if !slices.Contains(v.lenders, lender) {
			v.lenders = append(v.lenders, lender)
		}
	}
	if x.By == food.ByKin {
		known, v.kin = "by "+food.ByKin, true
	}
	if unit == name {
		unit = "" // "pH 2.25"
	}
	n, nBelow := "", ""
	if x.N > 0 {
		n = strconv.Itoa(x.N)
		nBelow = "n " + n
	}
	v.tabled(tableLine{
		margin: left("", marginWidth), name: name, signs: signs, number: right(amount, amountWidth), unit: left(" "+unit, unitWidth),
		columns: []column{{text: found, width: rangeWidth}, {text: n, width: samples, below: nBelow}, {text: known, width: stateWidth}},
	})
}

// limitOf writes a value without an amount: its limit, or that there is none.
func limitOf(x food.Value, unit string) (amount, unitOf string) {
	switch {
	case !food.Stated(x.Limit):
		return "–", ""
	case x.State == estimate.Unknown:
		return "≤ " + plain(x.Limit), unit
	}
	return "< " + plain(x.Limit), unit
}

// cite gives the footnotes of a value: works of the table, else the table's own
// code.
func (v *values) cite(x food.Value) string {
	var numbers []int
	dagger := ""
	if x.By == food.ByKin {
		text := clean.UpperFirst(kinWords(x.Ref)) + "."
		if rows := kinRows(x.Ref); rows != "" {
			text += " Rows: " + rows + "."
		}
		numbers = append(numbers, v.notes.Number(text))
	}
	for id := range strings.FieldsSeq(x.Source) {
		w, ok := v.works(id)
		switch {
		case !ok:
			numbers = append(numbers, v.notes.Number("Source "+Clean(id, mostName)+" of the table "+Clean(v.food.ID.Table, mostName)+"."))
		case source.IsFromMemory(w.Citation):
			dagger = v.memory(true)
		default:
			numbers = append(numbers, v.notes.Number(citation(w)))
		}
	}
	return signs(numbers) + dagger
}

// states explains the states that stand on the page.
func (v *values) states() {
	meaning := map[estimate.State]string{
		estimate.Assumed: "assumed: taken to be so by rule or by the publisher",
		estimate.Trace:   "trace: there, too little to state",
		estimate.Below:   "below: looked for, and less than the limit",
		estimate.Unknown: "unknown: nobody has said; ≤ stands before the most that it can be",
	}
	var list []string
	for s := estimate.Assumed; s <= estimate.Unknown; s++ {
		if v.used[s] {
			list = append(list, meaning[s])
		}
	}
	if len(v.lenders) > 0 {
		list = append(list, food.Borrowed+": nobody has measured this food's own; the figure of "+Clean(strings.Join(v.lenders, ", "), mostProse))
	}
	if v.kin {
		list = append(list, byKinText)
	}
	if text := v.daggerText(); text != "" {
		list = append(list, "† "+text)
	}
	if len(list) > 0 {
		v.gap()
		v.paragraph(0, 0, strings.Join(list, " · ")+".")
	}
}
