package drink

import (
	"math"
	"strings"
	"unicode"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// This file reads house rules: what a competition or a bar wants of a drink, as somebody typed it in
// from the paper where it stands. Whether a drink keeps them is the business of package houserules.

// HouseRules are the rules of a competition or a bar. What is not limited is nil.
type HouseRules struct {
	File        string
	From        string // where they stand, and when they were read
	Forbidden   Forbidden
	Limits      []Claim
	Servings    *Within
	Volume      *Within // ml of a serving
	Temperature *Within // °C, as served
	Minutes     *Within // of the performance
	HandOver    []Word
}

// Forbidden is what must not be in a drink, each told apart by its key.
type Forbidden struct {
	Ingredients  []Word // table:code, or the name of a food
	Kinds        []Word // words of a food group
	Constituents []Word // ids, once they are read
	Allergens    []Word
}

// Within is what lies between two ends, both included; an end that is not set is infinite.
type Within struct {
	Place     fail.Place
	Text      string // as it is written
	Low, High float64
}

// beginsHouseRules is how a file of house rules begins.
const beginsHouseRules = `begin with rules: "where they stand, and when you read them"`

var houseKeys = grammar[HouseRules]{"a file of house rules", []key[HouseRules]{
	text("rules", "where the rules stand and when you read them; it is printed with the answer", true, mostProse, func(h *HouseRules) *string { return &h.From }),
	into("forbidden", "what must not be in the drink: ingredients, kinds, constituents, allergens", false, forbiddenKeys.shape(),
		readForbidden, func(h *HouseRules) *Forbidden { return &h.Forbidden }),
	into("limits", "what the figures must keep to: a sentence, and the check that decides it", false, listOf(claimKeys.shape()),
		(*reader).claims, func(h *HouseRules) *[]Claim { return &h.Limits }),
	between("servings", "how many servings: 4, or 2 to 4", servingsOf, func(h *HouseRules) **Within { return &h.Servings }),
	between("volume", "of one serving: 60 ml to 240 ml, at most 240 ml", volumeOf, func(h *HouseRules) **Within { return &h.Volume }),
	between("temperature", "as served: 55 °C to 70 °C", celsiusOf, func(h *HouseRules) **Within { return &h.Temperature }),
	between("minutes", "of the whole performance: 15, which is the most", clockOf, func(h *HouseRules) **Within { return &h.Minutes }),
	words("hand-over", "what you hand over on paper: [list of ingredients, allergens]", nil, func(h *HouseRules) *[]Word { return &h.HandOver }),
}}

var forbiddenKeys = grammar[Forbidden]{"forbidden", []key[Forbidden]{
	words("ingredients", "foods by name or code: [lemon juice, core:citric-acid]", nil, func(f *Forbidden) *[]Word { return &f.Ingredients }),
	words("kinds", "food groups: [spirit, citrus]", nil, func(f *Forbidden) *[]Word { return &f.Kinds }),
	words("constituents", "what no serving may hold any of: [alcohol]", nil, func(f *Forbidden) *[]Word { return &f.Constituents }),
	words("allergens", "by the words of sipsum allergens: [milk, almond]", nil, func(f *Forbidden) *[]Word { return &f.Allergens }),
}}

// ParseHouseRules reads a file of house rules; all that is wrong with it is told at once.
func ParseHouseRules(name string, text []byte) (*HouseRules, *fail.List) {
	h, faults := &HouseRules{File: name}, &fail.List{}
	r := &reader{values: values{file{path: name, faults: faults, begins: beginsHouseRules}}, open: nothingElse, count: new(int), seen: &Reading{}, top: houseKeys.names()}
	if root := r.document(text); root != nil {
		houseKeys.read(r, h, root)
	}
	return h, faults
}

// readForbidden reads what must not be in a drink; constituents become their ids.
func readForbidden(r *reader, n ast.Node, _ string) Forbidden {
	var f Forbidden
	forbiddenKeys.read(r, &f, n)
	named := tags{r.faults, constituent.OfDrinks, map[constituent.ID]string{}}
	for i := range f.Constituents {
		named.read(&f.Constituents[i].Text, f.Constituents[i].Place)
	}
	return f
}

// measurement reads a figure or a range of a key of house rules.
type measurement struct {
	read  func(text string) (Quantity, error)
	alone string // what a figure alone means: "exactly", "at most"; empty: nothing
}

var (
	servingsOf = measurement{wholeServings.Parse, "exactly"}
	volumeOf   = measurement{read: millilitres}
	celsiusOf  = measurement{read: temperature.Parse}
	clockOf    = measurement{inMinutes, "at most"}
)

var wholeServings = unit.Scale{What: "a number of servings", Units: []string{""}, Low: 1, High: float64(mostServes), Example: "4"}

// millilitres reads a kitchen measure of volume.
func millilitres(text string) (Quantity, error) {
	a, rest, err := unit.ParseAmount(unit.PlainSpaces(text))
	switch {
	case err != nil:
		return Quantity{}, err
	case rest != "" || a.Measure.Kind != unit.Volume:
		return Quantity{}, fail.New(fail.Wrong, quoted(text)+" is not a volume", "write it like 60 ml to 240 ml")
	}
	return Quantity{Number: a.Base(), Half: a.Half * a.Measure.Factor, Unit: "ml"}, nil
}

// inMinutes reads a time; figures alone are minutes: 9, 9 to 10.
func inMinutes(text string) (Quantity, error) {
	if !strings.ContainsFunc(strings.Replace(text, " to ", " ", 1), unicode.IsLetter) {
		text += " min"
	}
	q, err := duration.Parse(text)
	q.Number, q.Half = q.Number*minutes[q.Unit], q.Half*minutes[q.Unit]
	return q, err
}

// between is a key whose value lies between two ends.
func between(name, doc string, m measurement, field func(*HouseRules) **Within) key[HouseRules] {
	return into(name, doc, false, anyOf(shape{"type": "number"}, textShape(mostName)),
		func(r *reader, n ast.Node, name string) *Within { return within(r, n, name, m) }, field)
}

// oneEnd are the words that leave the other end open.
var oneEnd = []struct{ word, means string }{{"at least ", "least"}, {"at most ", "most"}, {"up to ", "most"}, {"no more than ", "most"}}

// within reads "at least 60 ml", "60 ml to 240 ml" or, where that says something, a figure alone.
func within(r *reader, n ast.Node, what string, m measurement) *Within {
	text, ok := r.text(n, what, mostName)
	if !ok {
		return nil
	}
	w := &Within{Place: r.nodeAt(n), Text: text, Low: math.Inf(-1), High: math.Inf(1)}
	end, figure := "", text
	for _, o := range oneEnd {
		if rest, found := strings.CutPrefix(text, o.word); found {
			end, figure = o.means, rest
		}
	}
	q, err := m.read(figure)
	if err != nil {
		r.misread(r.nodeAt(n), err)
		return nil
	}
	ranged := isRange(figure)
	switch {
	case ranged && end == "":
		w.Low, w.High = q.Number-q.Half, q.Number+q.Half
	case ranged:
		r.faults.Add(r.nodeAt(n), "write one end, or the range alone", "%s has an end and a range", quoted(text))
		return nil
	case end == "least":
		w.Low = q.Number
	case end == "most" || m.alone == "at most":
		w.High = q.Number
	case m.alone == "exactly":
		w.Low, w.High = q.Number, q.Number
	default:
		r.faults.Add(r.nodeAt(n), "write: "+what+": at most "+text+", or: "+what+": at least "+text+", or both ends with to between them", "%s says %s, and not whether that is the least or the most", what, quoted(text))
		return nil
	}
	return w
}

// isRange tells whether a text has two ends, or a ±.
func isRange(text string) bool {
	return unit.StatesSpread(text) || strings.Contains(text, " to ") || strings.ContainsAny(strings.TrimLeft(text, "-−"), "-−–—")
}
