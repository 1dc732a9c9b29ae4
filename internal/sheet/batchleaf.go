package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/batch"
	"sipsum/internal/clean"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// tick stands before what is done and ticked off.
const tick = "☐ "

// BatchLeaf is the bench card of a batch in the order of work: what is bought, the pots with the
// earliest first, the build; with what it is held to, allergens and cautions. With kitchen the
// measures of a US kitchen stand beside the grams.
func BatchLeaf(s *Sheet, b *batch.Batch, kitchen bool) *Leaf {
	p := bench{Sheet: s, batch: b, kitchen: kitchen, cold: colds(s)}
	l := s.leaf("batch")
	l.Below = []string{servesText(b.Serves), massText(b.Serves * b.Grams), say("batch.each", note.Grams(b.Grams))}
	l.add(contradictions(s, ""))
	l.add(p.buy())
	for _, pot := range EarliestFirst(b.Pots) {
		l.add(p.pot(pot))
	}
	l.add(p.build())
	l.lines("", say("batch.exact"), p.exact())
	l.add(s.Served().box(s.Rules))
	l.warn(s)
	l.foot(s)
	return l
}

func glassesText(n float64) string {
	if n == 1 {
		return say("batch.fills.one")
	}
	return say("batch.fills", pieces(n))
}

// EarliestFirst gives pots by the day on which they can be made, else in the order of making.
func EarliestFirst(pots []batch.Pot) []batch.Pot {
	pots = slices.Clone(pots)
	slices.SortStableFunc(pots, func(a, b batch.Pot) int {
		if a.Glass != b.Glass {
			return cmp.Compare(b2i(a.Glass), b2i(b.Glass))
		}
		return cmp.Compare(b.Ahead, a.Ahead)
	})
	return pots
}

func b2i(is bool) int {
	if is {
		return 1
	}
	return 0
}

// bench writes a batch.
type bench struct {
	*Sheet
	batch   *batch.Batch
	kitchen bool
	cold    map[string]float64 // °C at which a pot is kept, as its file says and a code allows; 0: nobody says
}

// buy is the shopping list.
func (p bench) buy() Block {
	g := &Grid{Caption: say("batch.buy.of", servesText(p.batch.Serves)), Head: []string{"", say("batch.mass"), say("batch.shop")}}
	if p.kitchen {
		g.Head = append(g.Head, say("batch.us"))
	}
	var lines []Line
	for _, x := range p.batch.Purchases {
		name := clean.Name(x.Name)
		row := GridRow{Label: tick + name, Cells: []GridCell{{Text: massText(x.Bought)}, {Text: shopUnits(x)}}}
		if p.kitchen {
			row.Cells = append(row.Cells, GridCell{Text: USMeasure(x.Millilitres)})
		}
		g.Rows = append(g.Rows, row)
		lines = append(lines, formOf(x)...)
		lines = append(lines, lotOf(x)...)
	}
	for _, x := range p.batch.Purchases {
		if x.Melts {
			lines = append(lines, Line{Text: say("batch.ice")})
		}
	}
	lines = append(lines, p.costs()...)
	if len(p.batch.Unmade) > 0 {
		lines = append(lines, Line{Text: say("batch.unmade", clean.Listed(cleaned(p.batch.Unmade)))})
	}
	return Block{Role: Tabled, Heading: say("batch.buy"), Grid: g, Lines: lines}
}

// shopUnits are pieces, charges, or the volume of what has a density.
func shopUnits(x batch.Purchase) string {
	piece, _, _ := strings.Cut(x.Piece, " (") // without its size
	switch {
	case x.Price != nil:
		return pieces(x.Packs) + " × " + x.Price.Per.String()
	case x.Shot > 0:
		return say("batch.shots", pieces(x.Pieces))
	case x.Gas:
		return say("batch.charges", pieces(x.Pieces))
	case !math.IsNaN(x.Pieces):
		return fmt.Sprintf("%.0f × %s", math.Ceil(x.Pieces-unit.Closeness), clean.Name(piece))
	case !math.IsNaN(x.Millilitres) && x.Food.Group != "sugar":
		return volumeText(x.Millilitres)
	}
	return ""
}

// pot is a component: what goes in, what is done, what comes out.
func (p bench) pot(pot batch.Pot) Block {
	name := clean.Name(pot.Name)
	b := Block{Role: Ticked, Heading: name}
	if pot.Shot != nil { // the machine weighs it
		b.Grid = &Grid{Caption: when(pot, 0), Lead: []string{shotText(*pot.Shot)}, Head: []string{""}}
		return b
	}
	b.Grid = p.grid(when(pot, p.cold[pot.Name]), say("batch.amount"), pot.Lines)
	b.Grid.Lead = []string{potCaption(pot)}
	b.Lines = p.moves(pot.Moves)
	last := say("batch.out", wholeGrams(pot.Out), wholeGrams(pot.Needed))
	if left := pot.Left(); left >= worthSaying {
		last = say("batch.left", wholeGrams(pot.Out), wholeGrams(pot.Needed), wholeGrams(left))
	}
	b.Lines = append(b.Lines, Line{Text: last})
	b.Lines = append(b.Lines, keepingLines(pot)...)
	if pot.Note != "" {
		b.Lines = append(b.Lines, Line{Text: clean.Prose(pot.Note)})
	}
	return b
}

// grid sets amounts beside how finely each has to be weighed.
func (p bench) grid(caption, head string, list []batch.Weighed) *Grid {
	g := &Grid{Caption: caption, Head: []string{"", head, say("batch.to")}}
	if p.kitchen {
		g.Head = append(g.Head, say("batch.us"))
	}
	for _, w := range list {
		row := GridRow{Label: tick + clean.Name(w.Name), Cells: []GridCell{{Text: WeighedText(w)}, {Text: StepText(w)}}}
		if p.kitchen {
			row.Cells = append(row.Cells, GridCell{Text: USMeasure(w.Millilitres)})
		}
		g.Rows = append(g.Rows, row)
	}
	return g
}

// build is what goes into one glass, into all of them, and what finishes it.
func (p bench) build() Block {
	all := pieces(p.batch.Rounds * float64(p.Assay.Drink.Serves))
	one := say("batch.one")
	if p.batch.Whole {
		one = say("batch.one.bottle", pieces(float64(p.Assay.Drink.Serves)))
	}
	g := &Grid{Caption: say("batch.build.of"), Head: []string{"", one, say("batch.to"), say("batch.all", all)}}
	if p.kitchen {
		g.Head = append(g.Head, say("batch.us"))
	}
	for _, x := range slices.Concat(p.batch.Build, p.batch.Garnish) {
		row := GridRow{Label: tick + clean.Name(x.Name), Cells: []GridCell{{Text: WeighedText(x.Weighed)}, {Text: StepText(x.Weighed)}, {Text: WeighedText(x.All)}}}
		if p.kitchen {
			row.Cells = append(row.Cells, GridCell{Text: USMeasure(x.Millilitres)})
		}
		g.Rows = append(g.Rows, row)
	}
	b := Block{Role: Ticked, Heading: say("batch.build"), Grid: g, Lines: p.moves(p.batch.Finish)}
	for _, n := range p.Assay.Notes {
		if n.Kind == noteGlass {
			b.Lines = append(b.Lines, Line{Text: clean.Prose(n.Text)})
		}
	}
	for _, c := range p.batch.Charges() {
		b.Lines = append(b.Lines, Line{Text: say("batch.bottles", pieces(c.Count), c.Bottle.String(), joined(c.Gas.String(), "of", c.Of), glassesText(c.Glasses))})
	}
	if len(p.batch.Charges()) > 0 {
		b.Lines = append(b.Lines, Line{Text: say("batch.last")})
	}
	return b
}

func (p bench) moves(list []batch.Move) []Line {
	var lines []Line
	for _, m := range list {
		lines = append(lines, Line{Text: tick + StepOf(m)})
	}
	return lines
}
