package sheet

import (
	"slices"
	"strings"
	"unicode"

	"sipsum/internal/assay"
	"sipsum/internal/chemistry"
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fit"
	"sipsum/internal/taste"
)

// Fitted is a drink fitted to its targets: the sheet is of the answer.
type Fitted struct {
	*Sheet
	*fit.Result
	Line    string // the answer in a sentence
	Moves   []FittedMove
	Why     []string // what stops it, and by how little it would go
	Beside  []FittedFigure
	Remarks []string
	Written string // the file that holds the answer; empty: nothing is written
	Raised  []Cautioned
}

// Raise notes the cautions that the answer has and the drink as it is written has not, or in other words;
// that a figure in one moved, the figure itself says. Of what there is too much in the answer it is told all the
// same: whoever pours it may not have seen the drink's card.
func (f *Fitted) Raise(written *Sheet) {
	had := written.Cautions()
	for _, c := range f.Cautions() {
		if c.TooMuch != "" || !slices.ContainsFunc(had, func(h Cautioned) bool { return h.Code == c.Code && wordsAlone(h.Text) == wordsAlone(c.Text) }) {
			f.Raised = append(f.Raised, c)
		}
	}
}

// TooMuch reports whether the answer pours more of something than may be served.
func (f *Fitted) TooMuch() bool { return len(overdoses(f.Cautions(), english)) > 0 }

// wordsAlone is a text with its figures left out.
func wordsAlone(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsDigit(r) || r == '.' {
			return -1
		}
		return r
	}, text)
}

// FittedMove is an amount, before and after.
type FittedMove struct {
	fit.Move
	Name string // of what is poured
	End  string // "least" or "most" where it stands at an end of its range; else empty
}

// FittedTarget is a target at the answer.
type FittedTarget = fit.Held

// FittedFigure is a figure of a serving, before and after.
type FittedFigure struct {
	Words         string
	Before, After composition.Result
}

// Fit makes what is printed of a fit, on the sheet of its answer.
func Fit(s *Sheet, res *fit.Result, remarks []string) *Fitted {
	f := &Fitted{Sheet: s, Result: res, Remarks: remarks}
	for _, m := range res.Moves {
		f.Moves = append(f.Moves, FittedMove{Move: m, Name: pouredBy(s.Assay, m), End: endOf(m)})
	}
	shorten(f.Moves)
	f.Beside = besides(res.Before, res.After)
	f.Why = append(whyMissed(res), f.edges()...)
	f.Line = f.line()
	f.remark()
	return f
}

func endOf(m fit.Move) string {
	switch {
	case !m.AtEnd:
		return ""
	case m.To-m.From < m.Range.To-m.To:
		return "least"
	}
	return "most"
}

// pouredBy names an amount: what a line of the build pours, else what of which component.
func pouredBy(a *assay.Assay, m fit.Move) string {
	for _, c := range a.Components {
		if slices.Contains(c.Lines, m.Path) && c.House {
			return c.Name
		}
	}
	name := m.Of
	for _, item := range a.Items {
		if item.Food.ID.String() == m.Of {
			name = item.Food.Name()
		}
	}
	owner, inner, _ := strings.Cut(m.Path, "/")
	switch {
	case owner == "build":
		return clean.LowerFirst(name)
	case strings.Contains(inner, "/") && name == m.Of:
		return drink.Owner(m.Path) + " (" + strings.ReplaceAll(inner, "/", ": ") + ")"
	}
	return clean.LowerFirst(name) + " of " + drink.Owner(m.Path)
}

// shorten leaves out what stands behind the comma of a name, where nothing else is called so.
func shorten(moves []FittedMove) {
	short := func(m FittedMove) string {
		of := " of " + drink.Owner(m.Path)
		name, owned := strings.CutSuffix(m.Name, of)
		if name, _, _ = strings.Cut(name, ","); owned {
			name += of
		}
		return name
	}
	count := map[string]int{}
	for _, m := range moves {
		count[short(m)]++
	}
	for i, m := range moves {
		if count[short(m)] == 1 {
			moves[i].Name = short(m)
		}
	}
}

// besides sets figures of a serving side by side; those of which nothing is known either way are
// left out.
func besides(before, after *assay.Assay) []FittedFigure {
	var list []FittedFigure
	add := func(words string, a, b composition.Result) {
		if !(Hollow(a) && Hollow(b)) {
			list = append(list, FittedFigure{words, a, b})
		}
	}
	add("volume", before.Volume, after.Volume)
	for _, id := range fit.Beside {
		a, okA := before.PerServing.Find(id)
		b, okB := after.PerServing.Find(id)
		if okA && okB {
			add(WordsFor(constituent.Must(id)), a.Result, b.Result)
		}
	}
	if a, b := before.Chemistry, after.Chemistry; a != nil && b != nil {
		estimates := func(words string, a, b chemistry.Estimate) {
			if a.Why == "" && b.Why == "" {
				add(words, a.Result, b.Result)
			}
		}
		estimates("pH", a.PH, b.PH)
		if len(a.Acidity) > 0 && len(b.Acidity) > 0 {
			estimates("acidity", a.Acidity[0].PerLitre, b.Acidity[0].PerLitre)
		}
	}
	if after.Strength.Mean > 0 {
		add("alcohol", before.Strength, after.Strength)
	}
	a, b := taste.Of(before.Glass()).Sweet, taste.Of(after.Glass()).Sweet
	if b.Parts != nil {
		add("sweetness, as sucrose in 100 ml", a.Result, b.Result)
	}
	return list
}
