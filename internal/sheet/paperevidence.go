package sheet

import (
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/evidence"
	"sipsum/internal/figure"
	"sipsum/internal/food"
)

// evidence is the assay by sensory category.
func (p annexed) evidence() []Block {
	var list []Block
	for i := range p.Evidence.Categories {
		c := &p.Evidence.Categories[i]
		b := Block{Role: Tabled, Grid: &Grid{
			Caption: clean.UpperFirst(clean.Name(c.Name)), Head: []string{"", say("paper.serving"), say("paper.between"), say("paper.from")},
		}}
		against := clean.Name(p.Evidence.CompareWith)
		if against != "" {
			b.Grid.Head = append(b.Grid.Head[:3], say("paper.aloneHead", against), b.Grid.Head[3])
		}
		var unknown []string
		for k := range c.Entries {
			e := &c.Entries[k]
			if Hollow(e.Result) {
				unknown = append(unknown, bounded(WordsFor(e.Constituent), e.Result))
				continue
			}
			b.Grid.Rows = append(b.Grid.Rows, p.entry(e, against != ""))
		}
		if len(unknown) > 0 {
			b.Lines = append(b.Lines, Line{Text: say("paper.unmeasured", clean.Listed(unknown))})
		}
		if len(b.Grid.Rows) == 0 {
			b.Grid, b.Role, b.Heading = nil, "", clean.UpperFirst(clean.Name(c.Name))
		}
		list = append(list, b)
	}
	return list
}

// bounded names what nobody has measured, with the most that it can be.
func bounded(words string, r composition.Result) string {
	if most, unit := figure.Bound(r, 0); most != "" {
		words += " (up to " + most + " " + unit + ")"
	}
	return words
}

// entry is a row of the evidence.
func (p annexed) entry(e *evidence.Entry, beside bool) GridRow {
	w := Written{Shown: figure.Of(e.Result)}
	row := GridRow{Label: WordsFor(e.Constituent) + p.notes.Of(e, p.Tables), Cells: []GridCell{
		{Text: w.Bare(), Path: "evidence." + string(e.Constituent.ID) + ".mean"}, {Text: w.Range()},
	}}
	if beside {
		alone := say("paper.none")
		if e.Alone != nil {
			alone = Written{Shown: figure.Of(e.Alone.Result)}.Bare()
		}
		row.Cells = append(row.Cells, GridCell{Text: alone})
	}
	from := broughtBy(BroughtTo(p.Assay, e.Constituent.ID))
	if how := howKnown(e.Result); how != "" {
		from += " · " + how
	}
	row.Cells = append(row.Cells, GridCell{Text: from})
	return row
}

// broughtBy names the parts that bring a constituent, with their shares.
func broughtBy(b Brought) string {
	var list, unknown []string
	for _, k := range b.Named() {
		text := clean.Name(k.Name) + " " + shareText(k.Share)
		if k.By == food.Borrowed {
			text += " (" + BorrowedMeans + ")"
		}
		list = append(list, text)
	}
	for _, u := range b.Unknown {
		unknown = append(unknown, clean.Name(u.Name))
	}
	if len(unknown) > 0 {
		list = append(list, say("paper.unknown", clean.Listed(unknown)))
	}
	return strings.Join(list, " · ")
}

// shareText writes a share with its range.
func shareText(s composition.Share) string {
	const hundred = 100
	text := figure.Percent(s.Mean)
	if in := figure.Span(s.Low*hundred, s.High*hundred, 0); in != "" {
		text += " (" + in + ")"
	}
	return text
}

// further is what the evidence does not tell.
func (p annexed) further() Block {
	g := &Grid{Caption: say("paper.further.head"), Head: []string{"", say("paper.serving"), say("paper.between"), say("paper.in100ml")}}
	for _, r := range p.Further() {
		w := Written{Shown: figure.Of(r.Figure.Result)}
		per := ""
		if f, ok := p.Assay.Per100ml.Find(r.Figure.Constituent.ID); ok && !Hollow(f.Result) {
			of := Written{Shown: figure.Of(f.Result)}
			of.UpTo = ""
			per = of.Bare()
		}
		g.Rows = append(g.Rows, GridRow{Label: r.Words, Cells: []GridCell{
			{Text: w.Bare(), Path: "evidence." + string(r.Figure.Constituent.ID) + ".mean"}, {Text: w.Range()}, {Text: per},
		}})
	}
	if len(g.Rows) == 0 {
		return Block{}
	}
	return Block{Role: Tabled, Grid: g}
}
