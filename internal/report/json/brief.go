package jsonreport

import (
	"io"

	"sipsum/internal/constituent"
	"sipsum/internal/drivers"
	"sipsum/internal/reading"
	"sipsum/internal/sheet"
)

// senseFigure is a figure of a sense. alone is that of what the drink is set against, null where
// there is nothing to say.
type senseFigure struct {
	Key         string            `json:"key"` // the constituent, or solids, ph, titratable_acidity, brix, co2
	Words       string            `json:"words"`
	Also        string            `json:"also,omitempty"` // the same in another measure
	Leads       bool              `json:"leads"`
	Serving     any               `json:"serving"`
	Alone       any               `json:"alone"`
	AloneAlso   []any             `json:"alone_also,omitempty"` // of each of compare_with_also
	Ingredients []ingredientShare `json:"ingredients"`
}

type withheldForm struct {
	What    string `json:"what"`
	Why     string `json:"why"`
	Reading string `json:"reading,omitempty"`
}

type senseForm struct {
	Name        string         `json:"name"`
	Figures     []senseFigure  `json:"figures"`
	NotMeasured []string       `json:"not_measured"`
	Withheld    []withheldForm `json:"withheld"`
	None        string         `json:"none,omitempty"`
}

// contradiction is a reading that does not agree with its recipe.
type contradiction struct {
	readingForm
	Advice string `json:"advice"`
}

// saidForm is a sentence that holds in every draw, with all that is unknown at its most against it.
type saidForm struct {
	Text        string         `json:"text"`
	Kind        string         `json:"kind"` // ingredient, component, against, most
	Constituent constituent.ID `json:"constituent"`
	Number      number         `json:"number"` // a share, a ratio, or an amount in the constituent's unit
	Food        string         `json:"food,omitempty"`
	Component   string         `json:"component,omitempty"`
	Rung        string         `json:"rung,omitempty"` // of who brings something: data/ladder.csv
	Sources     []string       `json:"sources"`        // ids of works
}

// dontForm is the most tempting sentence that the numbers do not bear.
type dontForm struct {
	Sentence    string         `json:"sentence"`
	Why         string         `json:"why"`
	Kind        string         `json:"kind"`        // claim, name, most
	Probability number         `json:"probability"` // that it holds; null where something unknown decides, and of a name
	Constituent constituent.ID `json:"constituent,omitempty"`
	Food        string         `json:"food,omitempty"` // whom the sentence credits
}

// changeForm is the one change of a written amount that mends something, borne out by a run.
type changeForm struct {
	Kind    string       `json:"kind"` // what it mends: claim, rule, glass
	Line    string       `json:"line"` // its path
	Of      string       `json:"of"`
	From    number       `json:"from"`
	To      number       `json:"to"`
	Unit    string       `json:"unit"`
	What    string       `json:"what"`
	Mends   string       `json:"mends"`
	Breaks  []string     `json:"breaks"`  // what holds as the drink is written, and then does not
	Shrinks []shrinkForm `json:"shrinks"` // by more than goes without saying
	Effects []effectForm `json:"effects"` // at central values
}

type shrinkForm struct {
	What string `json:"what"` // serving, coffee
	By   number `json:"by"`   // a share
}

type effectForm struct {
	Key  string `json:"key"` // a constituent of a serving, ph, or volume
	From number `json:"from"`
	To   number `json:"to"`
	Unit string `json:"unit,omitempty"`
}

type nextForm struct {
	Of      *string     `json:"of"` // null: the finished drink
	Reading string      `json:"reading"`
	Expect  interval    `json:"expect"` // null where the recipe does not tell
	Narrows []narrowing `json:"narrows"`
	Without string      `json:"without,omitempty"` // what is withheld without it
	Line    string      `json:"line"`
	Under   string      `json:"under"`
	Adds    bool        `json:"adds_to_readings"`
	More    int         `json:"more"`
}

type gapForm struct {
	Constituent constituent.ID `json:"constituent"`
	Food        string         `json:"food"`
	Name        string         `json:"name"`
	UpTo        number         `json:"up_to"` // null: nothing bounds it
	Unit        string         `json:"unit"`
	In          string         `json:"in,omitempty"` // the component whose steps made it unknown
}

type topping struct {
	Name      string   `json:"name"`
	Food      string   `json:"food,omitempty"`
	Amount    string   `json:"amount"`
	Eaten     bool     `json:"eaten"`
	Allergens []string `json:"allergens"`
}

type briefCaution struct {
	Code  string `json:"code"`
	Rank  int    `json:"rank"`
	Words string `json:"words"` // for a guest; empty: it is for the kitchen
	Text  string `json:"text"`
	// what the screen of a terminal has room for, and what the kitchen is told; empty: a guest is
	Short   string `json:"short,omitempty"`
	Kitchen string `json:"kitchen,omitempty"`
}

type briefGuest struct {
	Rules      []string       `json:"rules"` // all that the drink names, held alike
	Contains   []string       `json:"contains"`
	MayContain []string       `json:"may_contain"`
	Check      []string       `json:"check"`
	Garnish    []topping      `json:"garnish"`
	Cautions   []briefCaution `json:"cautions"`
}

type briefSize struct {
	Mass   interval `json:"mass"`
	Volume interval `json:"volume"`
	At     *atForm  `json:"at"` // null: the file does not say
}

type atForm struct {
	Number number `json:"number"`
	Unit   string `json:"unit"`
}

type briefBody struct {
	Size           briefSize       `json:"serving"`
	CompareWith    string          `json:"compare_with,omitempty"`
	CompareAlso    []string        `json:"compare_with_also,omitempty"` // further ones, in the order of the file
	Senses         []senseForm     `json:"senses"`
	Contradictions []contradiction `json:"contradictions"`
	Notes          []string        `json:"contradicting_notes"`
	Say            []saidForm      `json:"say"`
	DontSay        *dontForm       `json:"dont_say"`  // null: nothing tempting is wrong
	Change         *changeForm     `json:"change"`    // null: none is worth making
	ReadNext       *nextForm       `json:"read_next"` // null: no reading would narrow anything
	Unknown        *gapForm        `json:"unknown"`   // the one that matters most; null: all is known
	Mind           []string        `json:"mind"`      // a glass that overflows, milk that curdles, what is kept too long
	TenMinutes     string          `json:"ten_minutes,omitempty"`
	Guest          briefGuest      `json:"guest"`
	House          *houseForm      `json:"house_rules,omitempty"`
}

// Brief writes sipsum.brief/1: a drink on one screen, and all that has no room there.
func Brief(w io.Writer, s *sheet.Sheet) error {
	return write(w, struct {
		head
		briefBody
	}{headOf("sipsum.brief/1", s), briefOf(s)})
}

func briefOf(s *sheet.Sheet) briefBody {
	b := sheet.BriefOf(s)
	return briefBody{
		Size: briefSizeOf(s), CompareWith: b.Against, CompareAlso: b.Also, Senses: each(b.Senses, senseOf),
		Contradictions: each(b.Read.Disagree, func(r reading.Reading) contradiction {
			return contradiction{readingsOf([]reading.Reading{r})[0], r.Advice}
		}),
		Notes: append([]string{}, b.Read.Notes...), Say: each(b.Say, saidOf), DontSay: dontOf(b.Dont), Change: changeOf(b.Change), ReadNext: nextOf(b.Next), Unknown: gapOf(b.Gap), Mind: append([]string{}, b.Mind...), TenMinutes: b.Goes, Guest: briefGuestOf(&b.Guest), House: houseOf(s),
	}
}

func briefSizeOf(s *sheet.Sheet) briefSize {
	size := briefSize{intervalOf(s.Assay.Mass), intervalOf(volumeOf(s.Assay)), nil}
	if at := s.Assay.Drink.At; at != nil {
		size.At = &atForm{number(at.Number), at.Unit}
	}
	return size
}

func senseOf(x sheet.Sense) senseForm {
	return senseForm{
		x.Name,
		each(x.Figures, func(f sheet.SenseFigure) senseFigure {
			out := senseFigure{f.Key, f.Words, f.Also, f.Leads, figureOf(f.Result), nil, nil, ingredientShares("", f.By)}
			if f.Alone != nil {
				out.Alone = figureOf(*f.Alone)
			}
			for _, r := range f.Further {
				if r == nil {
					out.AloneAlso = append(out.AloneAlso, nil)
					continue
				}
				out.AloneAlso = append(out.AloneAlso, figureOf(*r))
			}
			return out
		}),
		append([]string{}, x.Unmeasured...),
		each(x.Withheld, func(w sheet.Withheld) withheldForm { return withheldForm{w.What, w.Why, w.Reading} }),
		x.None,
	}
}

func saidOf(s sheet.Said) saidForm {
	out := saidForm{Text: s.Text, Kind: s.Kind, Constituent: s.Constituent.ID, Number: number(s.Number), Component: s.Component, Rung: string(s.Rung), Sources: idsOf(s.Works)}
	if s.Kind == sheet.SayIngredient {
		out.Food = s.Food.String()
	}
	return out
}

func dontOf(d *sheet.DontSay) *dontForm {
	if d == nil {
		return nil
	}
	out := &dontForm{Sentence: d.Sentence, Why: d.Why, Kind: d.Kind, Probability: number(d.P)}
	if d.Constituent != nil {
		out.Constituent, out.Food = d.Constituent.ID, d.Food.String()
	}
	return out
}

func changeOf(c *sheet.Change) *changeForm {
	if c == nil {
		return nil
	}
	shrinks := each(c.Shrinks, func(s sheet.Shrinks) shrinkForm { return shrinkForm{s.What, number(s.By)} })
	return &changeForm{c.Kind, c.Path, c.Of, number(c.From), number(c.To), c.Unit, c.What, c.Mends, append([]string{}, c.Breaks...), shrinks, each(c.Effects, func(e sheet.Effect) effectForm {
		return effectForm{e.Key, number(e.From), number(e.To), e.Unit}
	})}
}

func nextOf(n *sheet.Next) *nextForm {
	if n == nil {
		return nil
	}
	out := &nextForm{
		Reading: n.Reading, Without: n.Why, Line: n.Line, Under: n.Under, Adds: n.Adds, More: n.More,
		Expect:  interval{number(n.Expect.Mean), number(n.Expect.SD), number(n.Expect.Low), number(n.Expect.High), n.Unit, ""},
		Narrows: each(n.Narrows, func(x drivers.Narrowing) narrowing { return narrowing{x.Constituent.ID, number(x.By)} }),
	}
	if n.Of != "" {
		out.Of = &n.Of
	}
	return out
}

func gapOf(g *sheet.Gapping) *gapForm {
	if g == nil {
		return nil
	}
	return &gapForm{g.Constituent.ID, g.By.Food.ID.String(), g.By.Name, number(g.Result.UpTo), g.Result.Unit, g.In}
}

func briefGuestOf(g *sheet.BriefGuest) briefGuest {
	return briefGuest{
		append([]string{}, g.Rules...), append([]string{}, g.Contains...), append([]string{}, g.MayContain...), append([]string{}, g.Check...),
		each(g.OnTop, func(t sheet.Topping) topping {
			return topping{t.Name, foodOf(t.PartID), t.Amount, t.Eaten, append([]string{}, t.Allergens...)}
		}),
		each(g.Cautions, func(c sheet.BriefCaution) briefCaution {
			return briefCaution{c.Code, c.Rank, c.Words, c.Text, c.Short, c.Kitchen}
		}),
	}
}
