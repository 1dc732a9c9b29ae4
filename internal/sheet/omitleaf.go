package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/fit"
	"sipsum/internal/note"
	"sipsum/internal/tasting"
	"sipsum/internal/unit"
)

// Omitted is a drink beside its match without a part of it, and the tasting that asks whether anybody
// can tell them apart. The first sheet is that of the drink, A, the second of the match, B.
type Omitted struct {
	A, B *Sheet
	*fit.Omission
	Plan    tasting.Plan
	Panel   tasting.Panel
	Verdict *tasting.Verdict // of the answers that were counted; nil: none were
}

// Beside are the figures of a serving of both.
func (o *Omitted) Beside() []FittedFigure { return besides(o.Omission.A, o.After) }

// Rounds is how often the file's drink is made for the glasses of a tasting, of A and of B.
func (o *Omitted) Rounds() (a, b float64) {
	serves := float64(o.A.Assay.Drink.Serves)
	return o.Plan.Each * float64(o.Plan.A) / o.Omission.A.Volume.Mean / serves, o.Plan.Each * float64(o.Plan.B) / o.After.Volume.Mean / serves
}

// Pours lists what goes into the vessel of one of the two, as often as the file makes it.
func (o *Omitted) Pours(match bool) []string {
	lines, changed := o.A.Assay.Drink.Build, map[string]string{}
	if match {
		lines = o.Drink.Build
		for path, x := range o.Amounts() {
			changed[path] = x.String()
		}
	}
	var list []string
	for _, l := range lines {
		text := l.Amount.String()
		if l.Portion != "" {
			text = note.Grams(l.Count) + " × " + l.Portion
		}
		if now := changed[l.Path]; now != "" {
			text = now
		}
		list = append(list, text+" "+l.Food)
	}
	return list
}

// Unmatched says which figures are not equal within what a judge does not notice.
func (o *Omitted) Unmatched() []string {
	list := slices.Clone(o.Remarks)
	for _, h := range o.Held {
		if !h.Met {
			list = append(list, h.Says+" is not reached: "+h.Text)
		}
	}
	return list
}

// Verdicts say what the count says; never that the drinks are the same.
func (o *Omitted) Verdicts() []string {
	v := o.Verdict
	if v == nil {
		return nil
	}
	text := fmt.Sprintf("%d of %d were right: ", v.Answers, v.Tasters)
	switch {
	case v.Right == 0:
		return []string{text + "so few tasters decide nothing, whatever they answer."}
	case v.More:
		text += fmt.Sprintf("more than chance gives (at least %d are). Guesses alone get that far in %s %% of tastings.", v.Right, percents(v.ByLuck))
	default:
		text += fmt.Sprintf("not more than chance may give, which asks for %d. Guesses alone get that far in %s %% of tastings. That is no proof that the drinks are alike.", v.Right, percents(v.ByLuck))
	}
	return []string{text}
}

// OmittedLeaf is the plan of a tasting of both.
func OmittedLeaf(o *Omitted) *Leaf {
	l := &Leaf{Kind: "omit", Language: Language, Label: "matched variants", Title: clean.Name(o.A.Assay.Drink.Name)}
	l.Below = []string{say("tasting." + string(o.Plan.Test)), "A as it is written", "B without " + clean.Name(o.Called)}
	for _, s := range []*Sheet{o.A, o.B} {
		if box := s.box(s.Served()); s == o.A || !slices.Equal(box.Lines, o.A.box(o.A.Served()).Lines) {
			lead := "A"
			if s == o.B {
				lead = "B"
			}
			box.Heading = "Tell every taster before the first glass (" + lead + ")"
			l.add(box)
		}
	}
	l.add(o.match(), o.pour(), o.count(), o.served(), o.coded())
	var lines []Line
	seen := map[string]bool{}
	for _, c := range slices.Concat(o.A.Cautions(), o.B.Cautions()) {
		if x := cautionLine(c); !seen[x.Sentence()] {
			seen[x.Sentence()] = true
			lines = append(lines, x)
		}
	}
	l.lines("", say("cautions"), lines)
	l.lines(Small, "", []Line{{Text: Declaring}, {Text: LocalCode}})
	l.foot(o.A)
	return l
}

// match tells how near the two are.
func (o *Omitted) match() Block {
	b := Block{Role: Tabled, Heading: "What is matched", Grid: &Grid{Caption: "A serving", Head: []string{"", "A", "B"}}}
	for _, f := range o.Beside() {
		in, factor := scaleFor(f.After.Unit, f.Before.Mean, f.After.Mean)
		b.Grid.Rows = append(b.Grid.Rows, GridRow{Label: f.Words, Cells: []GridCell{{Text: sideText(f.Before, in, factor)}, {Text: sideText(f.After, in, factor)}}})
	}
	if o.Of != nil {
		b.Lines = append(b.Lines, Line{Text: clean.UpperFirst(clean.Name(o.Called)) + " brings most of the " + WordsFor(o.Of) + " that is known."})
	}
	within := "sugars, acidity and volume, as far as they are told, within 2 %"
	if !o.Close {
		within = "within what a judge does not notice, as far as is published"
	}
	if missed := o.Unmatched(); len(missed) > 0 {
		b.Lines = append(b.Lines, Line{Text: "Not matched: " + clean.Prose(strings.Join(missed, "; ")) + ". A taster may tell the glasses by that alone."})
	}
	if o.Met {
		b.Lines = append(b.Lines, Line{Text: "Matched: " + within + ". Colour, smell, body, temperature and what else the part brings are not: they may be what is told."})
	}
	for _, c := range o.Unread {
		b.Lines = append(b.Lines, Line{Text: "Read again without it: the readings of " + clean.Name(c) + " were of the drink as written."})
	}
	return b
}

// pour is what goes into each, and how much of it a tasting wants.
func (o *Omitted) pour() Block {
	a, b := o.Rounds()
	block := Block{Role: Ticked, Heading: "What to make"}
	for _, x := range []struct {
		name   string
		rounds float64
		match  bool
		glass  int
	}{{"A", a, false, o.Plan.A}, {"B", b, true, o.Plan.B}} {
		block.Lines = append(block.Lines, Line{Text: fmt.Sprintf("%s, %d glasses of %s ml: %s times what follows (serves %d)", x.name, x.glass, note.Grams(o.Plan.Each), note.Number(x.rounds), o.A.Assay.Drink.Serves)})
		for _, text := range o.Pours(x.match) {
			block.Lines = append(block.Lines, Line{Text: tick + clean.Prose(text)})
		}
	}
	var gone []string
	for _, l := range o.Lines {
		gone = append(gone, l.Food+ownedBy(l))
	}
	block.Lines = append(block.Lines, Line{Text: "In B is left out: " + clean.Prose(strings.Join(gone, ", ")) + ". Components, steps and finish are those of the file otherwise; what is made to a stated mass holds more of the rest."})
	return block
}

func ownedBy(l drink.Line) string {
	if owner := drink.Owner(l.Path); owner != "" && owner != "build" {
		return " of " + owner
	}
	return ""
}

// count is what has to be right, and what the count says.
func (o *Omitted) count() Block {
	b := Block{Heading: "How many have to be right"}
	for _, text := range o.Verdicts() {
		b.Lines = append(b.Lines, Line{Text: text})
	}
	n := strconv.Itoa(o.Panel.Tasters)
	if o.Panel.Right == 0 {
		b.Lines = append(b.Lines, Line{Text: say("tasting.none")})
	} else {
		b.Lines = append(b.Lines, Line{Text: say("tasting.right", strconv.Itoa(o.Panel.Right), n)}, Line{Text: say("tasting.alpha", percents(o.Panel.Achieved), percents(o.Panel.Alpha))})
	}
	var finds []string
	for _, x := range o.Panel.Lines {
		finds = append(finds, note.Grams(unit.Hundred*x.Share)+" % can tell: found in "+percents(x.Power)+" %")
	}
	b.Lines = append(b.Lines, Line{Text: "If so many of them " + strings.Join(finds, " · ")}, Line{Text: say("tasting.same")})
	return b
}

// served says in which orders.
func (o *Omitted) served() Block {
	b := Block{Heading: "How to serve"}
	var of []string
	for _, order := range o.Plan.Test.Orders() {
		of = append(of, fmt.Sprintf("%s × %d", order, o.Plan.Of[order]))
	}
	text := "Equally often: " + strings.Join(of, ", ") + "."
	if !o.Plan.Even {
		text = fmt.Sprintf("As nearly equally often as %d tasters allow: %s. A multiple of %d is served evenly.", len(o.Plan.Servings), strings.Join(of, ", "), len(of))
	}
	b.Lines = append(b.Lines, Line{Text: text}, Line{Text: say("tasting.order." + string(o.Plan.Test))})
	return b
}

// coded is the plan, a taster a row.
func (o *Omitted) coded() Block {
	g := &Grid{Caption: "Codes, from left to right (keep this from the tasters)", Head: []string{"taster", "order", "codes"}}
	for i, s := range o.Plan.Servings {
		g.Rows = append(g.Rows, GridRow{Label: strconv.Itoa(i + 1), Cells: []GridCell{{Text: s.Order}, {Text: strings.Join(s.Codes, " ")}}})
	}
	return Block{Role: Tabled, Heading: "The plan", Grid: g}
}
