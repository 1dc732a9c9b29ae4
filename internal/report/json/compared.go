package jsonreport

import (
	"io"

	"sipsum/internal/allergen"
	"sipsum/internal/constituent"
	"sipsum/internal/contrast"
	"sipsum/internal/food"
	"sipsum/internal/sheet"
)

// comparedDrink is one of two drinks.
type comparedDrink struct {
	Name   string   `json:"name"`
	File   string   `json:"file"`
	Serves int      `json:"serves"`
	Mass   interval `json:"mass"`
	Volume interval `json:"volume"`
}

// comparedDifference is B less A, in the unit of the figures beside it.
type comparedDifference struct {
	Mean  number   `json:"mean"` // of what is known; null: withheld
	SD    number   `json:"sd"`
	Low   number   `json:"low"`
	High  number   `json:"high"`
	Least number   `json:"least"` // the ends with what nobody knows at its worst; null where nothing bounds it
	Most  number   `json:"most"`
	Sign  int      `json:"sign"`           // 1: surely more in B, -1: surely less, 0: nobody can tell
	Open  []string `json:"open,omitempty"` // foods of which something is unknown that does not go out
	Why   string   `json:"why,omitempty"`
}

type mostlyBy struct {
	Part string `json:"part"`
	Food string `json:"food,omitempty"` // of the part, or poured as it is
	Mean number `json:"mean"`
	InA  bool   `json:"in_a"`
	InB  bool   `json:"in_b"`
}

type comparedFigure struct {
	A          any                `json:"a"`
	B          any                `json:"b"`
	Difference comparedDifference `json:"difference"`
	MostlyBy   *mostlyBy          `json:"mostly_by,omitempty"`
}

type noticedForm struct {
	Difference comparedDifference `json:"difference"`
	ShareLow   number             `json:"share_low"` // of the figure of A
	ShareHigh  number             `json:"share_high"`
	Notice     string             `json:"notice"` // "may", "smaller", or "" where nobody can tell
	BandLow    number             `json:"noticed_from_percent"`
	BandHigh   number             `json:"noticed_surely_from_percent"`
	MovesWith  string             `json:"moves_with,omitempty"`
	Source     string             `json:"source,omitempty"`
}

type comparedChange struct {
	Where string `json:"where"`
	What  string `json:"what,omitempty"`
	A     string `json:"a,omitempty"`
	B     string `json:"b,omitempty"`
}

type comparedClass struct {
	Code string         `json:"code"`
	Name string         `json:"name"`
	A    allergen.State `json:"a"`
	B    allergen.State `json:"b"`

	OnlyA    []string `json:"only_in_a,omitempty"` // what of the class only one contains: "pecans"
	OnlyB    []string `json:"only_in_b,omitempty"`
	MayOnlyA []string `json:"may_contain_only_in_a,omitempty"`
	MayOnlyB []string `json:"may_contain_only_in_b,omitempty"`
}

type comparedRules struct {
	Rules   string          `json:"rules"`
	Classes []comparedClass `json:"classes"` // that stand otherwise in the two, or of which they hold another
}

type partedForm struct {
	Both  []string `json:"both"`
	OnlyA []string `json:"only_a"`
	OnlyB []string `json:"only_b"`
}

type saidWord struct {
	Text    string `json:"text"`
	About   string `json:"about"`
	Smaller bool   `json:"smaller_than_noticed"`
}

type comparedDocument struct {
	Schema       string                            `json:"schema"`
	Program      string                            `json:"program"`
	Seed         uint64                            `json:"seed"`
	Draws        int                               `json:"draws"`
	A            comparedDrink                     `json:"a"`
	B            comparedDrink                     `json:"b"`
	Same         bool                              `json:"same"`
	Words        []saidWord                        `json:"words"`
	Rest         string                            `json:"rest"`
	Servings     string                            `json:"servings,omitempty"`
	Mass         comparedFigure                    `json:"mass"`
	Volume       comparedFigure                    `json:"volume"`
	Constituents map[constituent.ID]comparedFigure `json:"constituents"`
	Chemistry    map[contrast.Kind]comparedFigure  `json:"chemistry"`
	Sweetness    noticedForm                       `json:"sweetness"` // as sucrose, g in 100 ml
	Sourness     noticedForm                       `json:"sourness"`  // titratable, g as citric acid in a litre
	File         []comparedChange                  `json:"file"`
	Allergens    []comparedRules                   `json:"allergens"`
	ToDecide     partedForm                        `json:"to_decide"`
	CautionsOnly map[string][]cautioned            `json:"cautions_only"`
}

// Compared writes sipsum.compare/1.
func Compared(w io.Writer, c *sheet.Compared) error {
	a := c.A.Assay
	document := comparedDocument{
		Schema: "sipsum.compare/1", Program: c.A.Program, Seed: a.Seed, Draws: a.Draws,
		A: comparedDrinkOf(c.A), B: comparedDrinkOf(c.B), Same: c.Same(),
		Words: each(c.Words(), func(x sheet.Word) saidWord { return saidWord{x.Text, x.About, x.Smaller} }),
		Rest:  c.Rest(), Servings: c.Servings(), Mass: liquidFigure(c.Mass), Volume: liquidFigure(c.Volume),
		Constituents: map[constituent.ID]comparedFigure{}, Chemistry: map[contrast.Kind]comparedFigure{},
		Sweetness: noticedOf(c.Sweet), Sourness: noticedOf(c.Sour),
		File:      each(c.Changes, func(x contrast.Change) comparedChange { return comparedChange{x.Where, x.What, x.From, x.To} }),
		Allergens: []comparedRules{},
	}
	for _, f := range c.Figures {
		document.Constituents[f.Constituent.ID] = comparedFigure{figureOf(f.A), figureOf(f.B), lessOf(f.Difference), mostlyOf(f.Mostly)}
	}
	for _, l := range c.Liquids {
		document.Chemistry[l.Kind] = liquidFigure(l)
	}
	for i, rules := range c.A.Rules {
		document.Allergens = append(document.Allergens, comparedRules{rules, each(c.Classes(i), func(x sheet.ClassChange) comparedClass { return comparedClass(x) })})
	}
	u := c.Undecided()
	document.ToDecide = partedForm{append([]string{}, u.Both...), append([]string{}, u.OnlyA...), append([]string{}, u.OnlyB...)}
	onlyA, onlyB := c.NewCautions()
	form := func(x sheet.Cautioned) cautioned { return cautioned(x.Caution) }
	document.CautionsOnly = map[string][]cautioned{"a": each(onlyA, form), "b": each(onlyB, form)}
	if both := c.TooMuchInBoth(); len(both) > 0 {
		document.CautionsOnly["too_much_in_both"] = each(both, form)
	}
	return write(w, document)
}

func comparedDrinkOf(s *sheet.Sheet) comparedDrink {
	d := s.Assay.Drink
	return comparedDrink{d.Name, d.File, d.Serves, intervalOf(s.Assay.Mass), intervalOf(s.Assay.Volume)}
}

func liquidFigure(l contrast.Liquid) comparedFigure {
	return comparedFigure{A: intervalOf(l.A), B: intervalOf(l.B), Difference: lessOf(l.Difference)}
}

func lessOf(d contrast.Difference) comparedDifference {
	return comparedDifference{number(d.Mean), number(d.SD), number(d.Low), number(d.High), number(d.Least), number(d.Most), d.Sign(), foodIDs(d.Open), d.Why}
}

func foodIDs(list []*food.Food) []string {
	return each(list, func(f *food.Food) string { return f.ID.String() })
}

func mostlyOf(m *contrast.Bringer) *mostlyBy {
	if m == nil {
		return nil
	}
	out := &mostlyBy{Part: m.Name, Food: foodOf(m.Part), Mean: number(m.Mean), InA: m.In[0], InB: m.In[1]}
	if m.Food != nil {
		out.Food = m.Food.ID.String()
	}
	return out
}

func noticedOf(n contrast.Noticed) noticedForm {
	return noticedForm{lessOf(n.Index), number(n.ShareLow), number(n.ShareHigh), string(n.Notice), number(n.Band.Low), number(n.Band.High), n.Band.How, n.Band.Source}
}
