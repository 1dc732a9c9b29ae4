package sheet

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/fit"
	"sipsum/internal/note"
	"sipsum/internal/taste"
	"sipsum/internal/tasting"
	"sipsum/internal/unit"
)

// Omitted is a drink beside its match without a part of it, and the tasting that asks whether anybody
// can tell them apart. The first sheet is that of the drink, A, the second of the match, B.
type Omitted struct {
	A, B *Sheet
	File *Sheet // of the drink with all its readings: of what B changes none is left in A
	*fit.Omission
	Plan    tasting.Plan
	Panel   tasting.Panel
	Verdict *tasting.Verdict // of the answers that were counted; nil: none were
}

// Beside are the figures of a serving of both.
func (o *Omitted) Beside() []FittedFigure { return besides(o.Omission.A, o.After) }

// Cautions are those of either: everybody tastes both.
func (o *Omitted) Cautions() []Cautioned {
	list := o.A.Cautions()
	for _, c := range o.B.Cautions() {
		if !slices.ContainsFunc(list, func(have Cautioned) bool { return have.Code == c.Code && have.Text == c.Text }) {
			list = append(list, c)
		}
	}
	return list
}

// OmittedLeaf is the plan of a tasting of both.
func OmittedLeaf(o *Omitted) *Leaf {
	l := &Leaf{Kind: "omit", Language: English, Label: say("omit.label"), Title: clean.Name(o.A.Assay.Drink.Name)}
	l.Below = []string{say("tasting." + string(o.Plan.Test)), say("omit.a"), say("omit.b", clean.Name(o.Called))}
	l.add(o.tell()...)
	l.add(contradictions(o.File, ""))
	l.add(o.match(), o.pour())
	l.add(o.potBlocks()...)
	l.add(o.count(), o.served(), o.coded())
	var lines []Line
	for _, c := range o.Cautions() {
		lines = append(lines, cautionLine(c))
	}
	l.lines("", say("cautions"), lines)
	l.lines(Small, "", []Line{{Text: Declaring}, {Text: LocalCode}})
	l.foot(o.A)
	return l
}

// tell is what tasters have to know of both glasses before the first.
func (o *Omitted) tell() []Block {
	a, b := o.A.Served().box(o.A.Rules), o.B.Served().box(o.B.Rules)
	if slices.Equal(a.Lines, b.Lines) {
		a.Heading = say("omit.tell")
		return []Block{a}
	}
	a.Heading, b.Heading = say("omit.tell.one", "A"), say("omit.tell.one", "B")
	return []Block{a, b}
}

// match tells how near the two are.
func (o *Omitted) match() Block {
	b := Block{Role: Tabled, Heading: say("omit.matched"), Grid: &Grid{Caption: say("omit.serving"), Head: []string{"", "A", "B"}}}
	for _, f := range o.Beside() {
		in, factor := scaleFor(f.After.Unit, f.Before.Mean, f.After.Mean)
		if in == f.Words { // "pH 4.12 pH" says it twice
			in = ""
		}
		b.Grid.Rows = append(b.Grid.Rows, GridRow{Label: f.Words, Cells: []GridCell{{Text: sideText(f.Before, in, factor)}, {Text: sideText(f.After, in, factor)}}})
	}
	if o.Of != nil {
		b.Lines = append(b.Lines, Line{Text: say("omit.most", clean.UpperFirst(clean.Name(o.Called)), WordsFor(o.Of))})
	}
	within := percents(unit.LimitOf("what is matched of a variant", "share").High - 1)
	switch missed := o.Unmatched(); {
	case len(missed) > 0:
		b.Lines = append(b.Lines, Line{Text: say("omit.missed", clean.Prose(strings.Join(missed, "; ")))})
	case len(o.Fillers) == 0 && o.Close:
		b.Lines = append(b.Lines, Line{Text: say("omit.nothing")})
	}
	switch same := o.matched(); {
	case same == "":
	case o.Close:
		b.Lines = append(b.Lines, Line{Text: say("omit.close", same, within)})
	default:
		b.Lines = append(b.Lines, Line{Text: say("omit.near", same)})
	}
	if sweeter := o.sweeter(); sweeter != 0 {
		key := "omit.sweeter"
		if sweeter < 0 {
			key, sweeter = "omit.lesssweet", -sweeter
		}
		b.Lines = append(b.Lines, Line{Text: say(key, note.Number(math.Round(unit.Hundred*sweeter)))})
	}
	if list := o.Differs(); len(list) > 0 {
		b.Lines = append(b.Lines, Line{Text: say("omit.differs", strings.Join(list, "; "))})
	}
	for _, c := range o.Unread {
		b.Lines = append(b.Lines, Line{Text: say("omit.unread", clean.Name(c))})
	}
	return b
}

// sweeter is by which share B is sweeter than A by its sugars, where a judge may notice it; else 0.
func (o *Omitted) sweeter() float64 {
	a, b := taste.Of(o.Omission.A.Glass()).Sweet, taste.Of(o.After.Glass()).Sweet
	by := b.Mean/a.Mean - 1
	if a.Parts == nil || b.Parts == nil || !(math.Abs(by)*unit.Hundred >= a.Notices.Low) || math.IsInf(by, 0) {
		return 0
	}
	return by
}

// count is what has to be right, and what the count says.
func (o *Omitted) count() Block {
	b := Block{Heading: say("omit.right")}
	for _, text := range o.Verdicts() {
		b.Lines = append(b.Lines, Line{Text: text})
	}
	if o.Panel.Right == 0 {
		b.Lines = append(b.Lines, Line{Text: say("tasting.none")})
		return b
	}
	b.Lines = append(b.Lines, Line{Text: say("tasting.right", strconv.Itoa(o.Panel.Right), strconv.Itoa(o.Panel.Tasters))}, Line{Text: say("tasting.alpha", percents(o.Panel.Achieved), percents(o.Panel.Alpha))})
	var finds []string
	for _, x := range o.Panel.Lines {
		finds = append(finds, say("omit.find", note.Grams(unit.Hundred*x.Share), percents(x.Power)))
	}
	b.Lines = append(b.Lines, Line{Text: say("omit.finds", strings.Join(finds, " · "))}, Line{Text: say("omit.same")})
	return b
}

// Verdicts say what the count says; never that the drinks are the same.
func (o *Omitted) Verdicts() []string {
	v := o.Verdict
	if v == nil {
		return nil
	}
	answers, all := strconv.Itoa(v.Answers), strconv.Itoa(v.Tasters)
	switch {
	case v.Right == 0:
		return []string{say("omit.few", answers, all)}
	case v.More:
		return []string{say("omit.more", answers, all, strconv.Itoa(v.Right), percents(v.ByLuck))}
	}
	return []string{say("omit.notmore", answers, all, strconv.Itoa(v.Right), percents(v.ByLuck))}
}

// Unmatched says which figures are not equal within what a judge does not notice.
func (o *Omitted) Unmatched() []string {
	list := slices.Clone(o.Remarks)
	for _, h := range o.Held {
		if !h.Met {
			list = append(list, say("omit.unreached", h.Says, figureSaid(h.Words, h.After)))
		}
	}
	return list
}

// matched names what is equal.
func (o *Omitted) matched() string {
	var list []string
	for _, h := range o.Held {
		if h.Met && h.Says != "" {
			list = append(list, strings.TrimPrefix(h.Says, "equal "))
		}
	}
	return clean.Listed(list)
}

// served says in which orders.
func (o *Omitted) served() Block {
	var of []string
	for _, order := range o.Plan.Test.Orders() {
		of = append(of, fmt.Sprintf("%s × %d", order, o.Plan.Of[order]))
	}
	text := say("omit.even", strings.Join(of, ", "))
	if !o.Plan.Even {
		text = say("omit.uneven", strconv.Itoa(len(o.Plan.Servings)), strings.Join(of, ", "), strconv.Itoa(o.Plan.A), strconv.Itoa(o.Plan.B), strconv.Itoa(len(of)))
	}
	return Block{Heading: say("omit.serve"), Lines: []Line{{Text: text}, {Text: say("tasting.order." + string(o.Plan.Test))}}}
}

// coded is the plan, a taster a row.
func (o *Omitted) coded() Block {
	g := &Grid{Caption: say("omit.codes"), Head: []string{say("omit.taster"), say("omit.order"), say("omit.code")}}
	for i, s := range o.Plan.Servings {
		g.Rows = append(g.Rows, GridRow{Label: strconv.Itoa(i + 1), Cells: []GridCell{{Text: s.Order}, {Text: strings.Join(s.Codes, " ")}}})
	}
	return Block{Role: Tabled, Heading: say("omit.plan"), Grid: g}
}

// ownedBy names the pot of a line after it.
func ownedBy(l drink.Line) string {
	name := clean.Prose(l.Food)
	if owner := drink.Owner(l.Path); owner != "" && owner != "build" {
		return say("omit.of", name, clean.Name(owner))
	}
	return name
}
