package sheet

import (
	"cmp"
	"fmt"
	"math"
	"path"
	"slices"

	"sipsum/internal/allergen"
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/contrast"
	"sipsum/internal/food"
)

// Leaf is a comparison on a page: what is otherwise in words, the figures, what makes them, what the
// files say otherwise, what guests have to know.
func (c *Compared) Leaf() *Leaf {
	l := &Leaf{Kind: "compare", Language: English, Label: "compare", Title: c.title()}
	l.Below = []string{"A " + c.called(c.A), "B " + c.called(c.B)}
	l.add(c.first())
	l.add(c.servings(), c.liquids(), c.makers(), c.file())
	l.add(c.allergens())
	l.add(c.undecided(), tooMuchInBoth(c), c.cautions())
	l.Foot = []string{
		fmt.Sprintf("B − A in each of %d draws, seed %d, which both share: what is the same in both goes out, what nobody knows stands at its worst; interval: 90 of 100 draws", c.A.Assay.Draws, c.A.Assay.Seed),
		clean.Name(c.A.Program),
	}
	return l
}

func (c *Compared) title() string {
	a, b := clean.Name(c.A.Assay.Drink.Name), clean.Name(c.B.Assay.Drink.Name)
	if a == b {
		return a
	}
	return b + " against " + a
}

// called names a drink by its file too, for versions have one name; without its folder where that
// tells them apart.
func (c *Compared) called(s *Sheet) string {
	base := func(of *Sheet) string { return path.Base(of.Assay.Drink.File) }
	file := s.Assay.Drink.File
	if base(c.A) != base(c.B) {
		file = base(s)
	}
	return clean.Name(s.Assay.Drink.Name) + " (" + clean.Name(file) + ")"
}

// first is what is said first.
func (c *Compared) first() Block {
	b := Block{Heading: "B against A"}
	about := map[string]bool{}
	for _, w := range c.Words() {
		about[w.About] = true
		b.Lines = append(b.Lines, Line{Text: clean.Prose(w.Text)})
	}
	b.Lines = append(b.Lines, Line{Text: c.Rest()})
	if text := c.Servings(); text != "" {
		b.Lines = append(b.Lines, Line{Text: text})
	}
	for _, x := range []struct {
		about, of string
		contrast.Noticed
	}{{"sweet", "sweetness", c.Sweet}, {"sour", "titratable acidity", c.Sour}} {
		if x.Notice != contrast.Untold && about[x.about] {
			b.Lines = append(b.Lines, Line{Text: band(x.of, x.Noticed), Source: x.Band.Source})
		}
	}
	return b
}

// band says how much of a taste a judge notices, and how much of it the difference is.
func band(of string, n contrast.Noticed) string {
	const percent = 100
	low, high := n.ShareLow*percent, n.ShareHigh*percent
	than := "above"
	if low < 0 {
		low, high, than = -high, -low, "below"
	}
	last := lastPlace(high, low, high)
	text := places(low, last)
	if top := places(high, last); top != text {
		text += " to " + top
	}
	return "In " + of + " B is " + text + " % " + than + " A. " + noticed(n.Band)
}

// comparedHead are the columns of figures side by side.
var comparedHead = []string{"", "A", "B", "B − A", "interval"}

func comparedRow(label string, indent int, unit string, a, b composition.Result, d contrast.Difference) GridRow {
	unit, factor := scaleFor(unit, a.Mean, b.Mean)
	text, interval := differenceText(d, factor)
	return GridRow{Label: clean.Name(label), Indent: indent, Cells: []GridCell{
		{Text: sideText(a, unit, factor)}, {Text: sideText(b, unit, factor)}, {Text: text}, {Text: interval},
	}}
}

// servings are the figures of a serving that differ.
func (c *Compared) servings() Block {
	t := c.Told()
	b := Block{Role: Tabled}
	g := &Grid{Caption: "A serving", Head: comparedHead}
	for _, l := range []struct {
		label string
		contrast.Liquid
	}{{"mass", c.Mass}, {"volume", c.Volume}} {
		if !l.None() && !hardlyLiquid(l.Liquid) {
			g.Rows = append(g.Rows, comparedRow(l.label, 0, l.A.Unit, l.A, l.B, l.Difference))
		}
	}
	for _, f := range t.Told {
		g.Rows = append(g.Rows, comparedRow(WordsFor(f.Constituent), 0, f.Constituent.Unit, f.A, f.B, f.Difference))
	}
	if len(g.Rows) > 0 {
		b.Grid = g
	}
	if len(t.Hardly) > 0 {
		b.Lines = append(b.Lines, Line{Text: "Hardly any difference: " + figureNames(t.Hardly) + "."})
	}
	if len(t.Open) > 0 {
		b.Lines = append(b.Lines, Line{Text: "Nobody can tell how these differ: " + figureNames(t.Open) + "."})
	}
	if at := c.openFoods(t.Told); len(at) > 0 {
		b.Lines = append(b.Lines, Line{Text: "Not all is known of " + clean.Prose(clean.Listed(at)) + ", and there is not as much in both: intervals reach to the worst of it."})
	}
	return b
}

// figureNames lists constituents; energy is named once.
func figureNames(list []contrast.Figure) string {
	var names []string
	for _, f := range list {
		if f.Constituent.ID != constituent.EnergyKcal {
			names = append(names, WordsFor(f.Constituent))
		}
	}
	return clean.Listed(names)
}

// openFoods names the foods of which something is unknown that does not go out, where it tells on an
// interval.
func (c *Compared) openFoods(list []contrast.Figure) []string {
	var names []string
	words := c.foodWords()
	for _, f := range list {
		if f.Low-f.Least+f.Most-f.High < aFiftieth*max(f.A.Mean, f.B.Mean) {
			continue
		}
		for _, of := range f.Open {
			if name := words(of.ID); !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	return names
}

// foodWords gives the words for a food of either drink.
func (c *Compared) foodWords() func(food.ID) string {
	a, b := c.A.words(), c.B.words()
	return func(id food.ID) string { return cmp.Or(a[id], b[id]) }
}

// liquidWords are the figures of a liquid as they are called, and their units.
var liquidWords = map[contrast.Kind]struct{ words, unit string }{
	contrast.PH:      {"pH at 25 °C", ""},
	contrast.Acidity: {"acidity, as citric acid", "%"},
	contrast.Acids:   {"acid molecules", "mmol/l"},
	contrast.Brix:    {"refractometer", "°Bx"},
	contrast.Density: {"density at 20 °C", ""},
	contrast.Gas:     {"carbon dioxide", "g/l"},
}

// liquids are the figures of the liquid that differ, and those that are withheld.
func (c *Compared) liquids() Block {
	b := Block{Role: Tabled}
	g := &Grid{Caption: "The liquid", Head: comparedHead}
	for _, l := range c.told() {
		words := liquidWords[l.Kind]
		switch {
		case l.None(), l.Why == "" && hardlyLiquid(l):
			continue
		case l.Why != "":
			text := words.words + " cannot be compared, " + clean.Prose(l.Why)
			if l.Bounded() && !math.IsInf(l.Least, 0) && !math.IsInf(l.Most, 0) {
				last := lastPlace(l.Most, l.Least, l.Most)
				text += fmt.Sprintf("; the difference is between %s and %s", signed(l.Least, last), signed(l.Most, last))
			}
			b.Lines = append(b.Lines, Line{Text: text + "."})
		default:
			g.Rows = append(g.Rows, comparedRow(words.words, 0, words.unit, l.A, l.B, l.Difference))
		}
	}
	if len(g.Rows) > 0 {
		b.Grid = g
	}
	return b
}

// makers say what brings most of the differences, each with all that it brings most of.
func (c *Compared) makers() Block {
	b := Block{Heading: "What makes most of it"}
	words := c.foodWords()
	var names []string
	of := map[string][]contrast.Figure{}
	for _, f := range c.Told().Told {
		if f.Mostly == nil || f.Sign() == 0 {
			continue
		}
		name := makerWords(f.Mostly, words)
		if len(of[name]) == 0 {
			names = append(names, name)
		}
		of[name] = append(of[name], f)
	}
	for _, name := range names {
		b.Lines = append(b.Lines, Line{Lead: name, Text: figureNames(of[name])})
	}
	return b
}

func makerWords(m *contrast.Bringer, called func(food.ID) string) string {
	name := clean.Name(m.Name)
	switch {
	case m.Food != nil:
		name = called(m.Food.ID) + " in " + name
	case m.Part.Component == "":
		name = called(m.Part.Food)
	}
	switch m.In {
	case [2]bool{true, false}:
		name += ", only in A"
	case [2]bool{false, true}:
		name += ", only in B"
	}
	return name
}

// file says what the files say otherwise.
func (c *Compared) file() Block {
	b := Block{Heading: "In the file"}
	for _, x := range c.Changes {
		b.Lines = append(b.Lines, Line{Lead: clean.Name(x.Where), Text: clean.Prose(ChangeText(x))})
	}
	if len(b.Lines) == 0 {
		b.Lines = []Line{{Text: "Both files say the same of what is in the glass."}}
	}
	return b
}

// ChangeText says a change: "25 g → 20 g core:sugar-white".
func ChangeText(x contrast.Change) string {
	switch {
	case x.What == "" && x.From == "":
		return "only in B: " + x.To
	case x.What == "":
		return "only in A: " + x.From
	case x.From == "" && x.To == "": // a step without words, in one of them
		return "only in one: " + x.What
	case x.From == "":
		return "only in B: " + x.Said(x.To)
	case x.To == "":
		return "only in A: " + x.Said(x.From)
	}
	return x.Said(x.From + " → " + x.To)
}

// stateWords say how a drink stands to a class of allergens; none of them says that it is not there.
var stateWords = map[allergen.State]string{
	allergen.StateContains:   "declared",
	allergen.StateMayContain: "may get in by cross-contact",
	allergen.StateCheck:      "to be checked",
	allergen.StateNoneFound:  "none found of what was assessed",
}

// allergens are the classes that stand otherwise, under each of the rules.
func (c *Compared) allergens() Block {
	b := Block{Heading: "Allergens"}
	for i, rules := range c.A.Rules {
		var lines []Line
		for _, x := range c.Classes(i) {
			text := x.said("in A", "in B")
			if n := len(lines); n > 0 && lines[n-1].Text == text { // a food that nobody has assessed may be of any class
				lines[n-1].Strong += ", " + clean.Name(x.Name)
				continue
			}
			lines = append(lines, Line{Lead: rulesName(rules), Strong: clean.Name(x.Name), Text: text})
		}
		if len(lines) == 0 {
			lines = []Line{{Lead: rulesName(rules), Text: "every class stands alike in both"}}
		}
		b.Lines = append(b.Lines, lines...)
	}
	b.Lines = append(b.Lines, Line{Text: "What is not declared may be there all the same: that is no promise."})
	return b
}

func (c *Compared) undecided() Block {
	u := c.Undecided()
	b := Block{Heading: "To decide"}
	for _, x := range []struct {
		lead string
		list []string
	}{{"A and B", u.Both}, {"A", u.OnlyA}, {"B", u.OnlyB}} {
		for _, text := range x.list {
			b.Lines = append(b.Lines, Line{Lead: x.lead, Text: clean.Prose(text)})
		}
	}
	return b
}

// tooMuchInBoth tells what neither drink may be served with.
func tooMuchInBoth(c *Compared) Block {
	b := Block{Heading: "Too much in both"}
	for _, x := range c.TooMuchInBoth() {
		b.Lines = append(b.Lines, Line{Lead: clean.Name(x.TooMuch), Text: clean.Prose(x.Text), Source: clean.Prose(x.Source)})
	}
	return b
}

func (c *Compared) cautions() Block {
	b := Block{Heading: "Cautions that only one has"}
	a, only := c.NewCautions()
	for _, x := range a {
		b.Lines = append(b.Lines, Line{Lead: "A", Text: clean.Prose(x.Text), Source: clean.Prose(x.Source)})
	}
	for _, x := range only {
		b.Lines = append(b.Lines, Line{Lead: "B", Text: clean.Prose(x.Text), Source: clean.Prose(x.Source)})
	}
	if len(b.Lines) > 0 {
		b.Lines = append(b.Lines, Line{Text: LocalCode})
	}
	return b
}
