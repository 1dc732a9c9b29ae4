package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/across"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// AcrossLeaf is a drink by the tables of several agencies on a page.
func AcrossLeaf(program string, a *across.Across) *Leaf {
	l := &Leaf{Kind: "across", Language: English, Label: "compare across", Title: clean.Name(a.Core.Drink.Name)}
	var ids []string
	for _, t := range a.Tables {
		ids = append(ids, t.ID)
	}
	l.Below = []string{"a serving by core and by " + clean.Listed(ids)}
	l.add(acrossFirst(a), acrossGrid(a), acrossUnlike(a), acrossAbsent(a), acrossFoods(a))
	l.Foot = []string{
		fmt.Sprintf("%d draws, seed %d, which all share; interval: 90 of 100 draws; low and high: central figures of the tables that tell it", a.Core.Draws, a.Core.Seed),
		clean.Name(program),
	}
	return l
}

// acrossFirst says where the tables lie outside of the interval, and in which food they differ most.
func acrossFirst(a *across.Across) Block {
	b := Block{Heading: "Between the tables"}
	if d := a.Most; d != nil {
		b.Lines = append(b.Lines, Line{Lead: "They disagree most on", Strong: clean.Name(d.Food.Name()), Text: acrossDistance(d)})
	} else {
		b.Lines = append(b.Lines, Line{Text: "No two of them tell of one food what is worth a word."})
	}
	var beyond, unlike, within, mostly []string
	for _, f := range a.Figures {
		words := WordsFor(f.Constituent)
		switch {
		case f.Tables < 2 || Hollow(f.Core) || f.Constituent.ID == constituent.EnergyKcal:
		case f.Beyond() && a.Marked(f):
			unlike = append(unlike, words)
		case f.Beyond():
			beyond = append(beyond, words)
		case f.Speak < 2:
			mostly = append(mostly, words)
		default:
			within = append(within, words)
		}
	}
	for _, x := range []struct {
		says string
		list []string
	}{
		{"A table lies outside of the interval of: %s.", beyond},
		{"Outside too, but not defined alike, so that it need be no disagreement: %s.", unlike},
		{"All that tell it lie within the interval of: %s.", within},
		{"Within it too, but most of it stands as core has it, so that nothing follows from it: %s.", mostly},
	} {
		if len(x.list) > 0 {
			b.Lines = append(b.Lines, Line{Text: fmt.Sprintf(x.says, clean.Listed(x.list))})
		}
	}
	if slices.ContainsFunc(a.Tables, func(t across.Table) bool { return t.Origin() }) {
		b.Lines = append(b.Lines, Line{Text: "Most figures of core are those of sr: it is no second opinion."})
	}
	return b
}

// acrossDistance says how far two tables lie apart in a food.
func acrossDistance(d *across.Disagreement) string {
	in, factor := scaleFor(d.Constituent.Unit, d.High)
	last := lastPlace(d.High*factor, d.Low*factor, d.High*factor)
	return fmt.Sprintf("%s %s %s by %s, %s %s by %s, apart by %s %% of what a serving holds",
		WordsFor(d.Constituent), places(d.Low*factor, last), in, d.LowBy, places(d.High*factor, last), in, d.HighBy, three(unit.Hundred*d.Share))
}

// acrossGrid sets the figures side by side. What no table tells has no row.
func acrossGrid(a *across.Across) Block {
	g := &Grid{Caption: "A serving", Head: []string{"", "core", "interval", "low–high"}}
	for _, t := range a.Tables {
		g.Head = append(g.Head, t.ID)
	}
	for _, f := range a.Figures {
		if Hollow(f.Core) || !slices.ContainsFunc(f.Voices, func(v across.Voice) bool { return v.Standing == across.Told || v.Standing == across.Partly }) {
			continue
		}
		in, factor := scaleFor(f.Constituent.Unit, f.Core.Mean, f.High)
		last := lastPlace(f.Core.Mean*factor, f.Core.Low*factor, f.Core.High*factor)
		label := clean.Name(WordsFor(f.Constituent))
		if a.Marked(f) {
			label += " *"
		}
		row := GridRow{Label: label, Cells: []GridCell{
			{Text: sideText(f.Core, in, factor)}, {Text: span(f.Core.Low*factor, f.Core.High*factor, last)}, {Text: spread(f, factor, last)},
		}}
		for _, v := range f.Voices {
			row.Cells = append(row.Cells, GridCell{Text: voiceText(v, factor, last)})
		}
		g.Rows = append(g.Rows, row)
	}
	b := Block{Role: Tabled, Lines: []Line{{Text: "= no food of the table brings any, the figure is that of core · ( ) more than half of it is of foods that the table has not, as core has them · ≥ not all that bring it are known · ~ a step makes of it what hangs on other figures, such as the pH: no opinion of the table · – not in this table, or not made by it · * not defined alike"}}}
	if len(g.Rows) > 0 {
		b.Grid = g
	}
	return b
}

func span(low, high float64, last int) string {
	if math.IsNaN(low) || math.IsNaN(high) {
		return ""
	}
	a, b := places(low, last), places(high, last)
	if a == b {
		return a
	}
	return a + "–" + b
}

// spread is that between tables; of one it is no spread.
func spread(f across.Figure, factor float64, last int) string {
	switch f.Tables {
	case 0:
		return "none tells"
	case 1:
		return "one tells"
	}
	text := span(f.Low*factor, f.High*factor, last)
	if f.Beyond() && !Hollow(f.Core) {
		text += " !"
	}
	return text
}

func voiceText(v across.Voice, factor float64, last int) string {
	switch v.Standing {
	case across.AsCore:
		return "="
	case across.Told:
		if !v.Speaks() {
			return "(" + places(v.Mean*factor, last) + ")"
		}
		return places(v.Mean*factor, last)
	case across.Turned:
		return "~ " + places(v.Mean*factor, last)
	case across.Partly:
		return "≥ " + places(v.Mean*factor, last)
	}
	return "–"
}

// acrossUnlike says what the tables do not mean alike, and what was done about it.
func acrossUnlike(a *across.Across) Block {
	b := Block{Heading: "Not defined alike"}
	for _, u := range a.Unlike {
		lead := WordsFor(u.Constituent)
		if !u.Converted {
			lead += " *"
		}
		if u.Constituent.ID != constituent.EnergyKcal {
			b.Lines = append(b.Lines, Line{Lead: lead, Text: clean.Prose(u.Says), Source: cited(u.Source)})
		}
	}
	return b
}

// acrossAbsent says what each table does not know, or why the drink cannot be made by it.
func acrossAbsent(a *across.Across) Block {
	b := Block{Heading: "Not in this table"}
	for i, t := range a.Tables {
		if t.Assay == nil {
			b.Lines = append(b.Lines, Line{Lead: t.ID, Text: "the drink cannot be made by it: " + clean.Prose(t.Why)})
			continue
		}
		var absent, partly []string
		for _, f := range a.Figures {
			switch v := f.Voices[i]; v.Standing {
			case across.Absent:
				absent = append(absent, WordsFor(f.Constituent))
			case across.Partly:
				partly = append(partly, WordsFor(f.Constituent)+" ("+foodNames(v.Lacks)+")")
			}
		}
		if len(absent) > 0 {
			b.Lines = append(b.Lines, Line{Lead: t.ID, Text: clean.Listed(absent)})
		}
		if len(partly) > 0 {
			b.Lines = append(b.Lines, Line{Lead: t.ID + ", in part", Text: clean.Listed(partly)})
		}
	}
	if len(b.Lines) == 0 {
		b.Lines = []Line{{Text: "Every table tells every figure of what it has."}}
	}
	return b
}

// acrossFoods says which rows stand for which food, and which foods stay.
func acrossFoods(a *across.Across) Block {
	b := Block{Heading: "Foods"}
	for _, t := range a.Tables {
		if judged := t.Judged(); judged != "" && judged != t.Edition {
			b.Lines = append(b.Lines, Line{Lead: t.ID, Text: "is edition " + clean.Name(t.Edition) + " here, and its foods were judged in " + judged + ": see by their names whether they are still the same"})
		}
		var taken []string
		for _, x := range t.Taken {
			text := clean.Name(x.Core.Name()) + " by " + x.By.ID.String() + ", " + clean.Name(x.By.Name())
			if x.Reason != "" {
				text += " (" + clean.Prose(x.Reason) + ")"
			}
			taken = append(taken, text)
		}
		if len(taken) == 0 {
			taken = []string{"none"}
		}
		b.Lines = append(b.Lines, Line{Lead: "from " + t.ID, Text: strings.Join(taken, " · ")})
		var stays []string
		for _, x := range t.Stays {
			text := clean.Name(x.Food.Name())
			if x.Why != "" {
				text += " (" + clean.Prose(x.Why) + ")"
			}
			stays = append(stays, text)
		}
		if len(stays) > 0 {
			b.Lines = append(b.Lines, Line{Lead: "not in " + t.ID, Text: strings.Join(stays, " · ") + ": as in the drink"})
		}
	}
	return b
}

func foodNames(list []*food.Food) string {
	var names []string
	for _, f := range list {
		names = append(names, clean.Name(f.Name()))
	}
	return strings.Join(names, "; ")
}
