package htmlreport

import (
	"fmt"
	"math"
	"slices"
	"unicode/utf8"

	"sipsum/internal/sheet"
)

// paper is a sheet to print on, in points (72 to the inch): ISO 216 for A4, A5 and A6, ANSI Y14.1
// for letter. The margin is what every office printer can leave: our own bound.
type paper struct {
	css           string
	width, height float64
	margin        float64
}

var papers = map[string]paper{
	"a6":     {"105mm 148mm", 297.6, 419.5, 12},
	"a5":     {"148mm 210mm", 419.5, 595.3, 26},
	"letter": {"8.5in 11in", 612, 792, 40},
	"a4":     {"210mm 297mm", 595.3, 841.9, 40},
}

// Papers lists the sizes of paper, smallest first.
func Papers() []string { return []string{"a6", "a5", "letter", "a4"} }

// Print is no larger than is calm to read and no smaller than most can read in a bar, in
// points: our own bounds.
const (
	largest  = 10.5
	smallest = 6.0
	step     = 0.25
	bench    = 11.0 // of what is worked from: its smallest print is 9 points, and it may take several pages
)

// benches are the kinds of leaf that are worked from.
var benches = []string{"batch", "home", "omit"}

// rules give the page its size, and its type the largest size that keeps it on one page.
func (p paper) rules(l *sheet.Leaf) string {
	size := largest
	if slices.Contains(benches, l.Kind) {
		size = bench
	}
	for size < bench && size > smallest && p.taken(l, size) > p.height-2*p.margin {
		size -= step
	}
	return fmt.Sprintf("@page { size: %s; margin: %gpt; }\n@media print { html { font-size: %gpt; } }\n", p.css, p.margin, size)
}

// How tall things are beside the size of the type, as style.css has them, and how wide a
// letter is on average; rounded up.
const (
	letter    = 0.56
	lineTall  = 1.32
	smallType = 0.82
	rowTall   = 1.53
	gapTall   = 0.7
	headTall  = 4.2
	bigTall   = 3.3
	boxTall   = 1.0
	tableWide = 20.5
	menuWide  = 30.0 // of a menu, with several drinks in it
	gapWide   = 2.0
	labelWide = 0.4 // of a table, for its labels
	frameTall = 3.6 // of a table in a box: its rules, and the energy in large type
	frameWide = 1.6
)

// taken estimates how tall a leaf is in a size of type, in points.
func (p paper) taken(l *sheet.Leaf, size float64) float64 {
	wide := (p.width - 2*p.margin) / (size * letter)
	tall := headTall + lines(joined(l.Below), wide)*lineTall
	for from := 0; from < len(l.Blocks); {
		row := inOneRow(l, from, wide*letter)
		most := 0.0
		for _, b := range l.Blocks[from : from+row] {
			most = max(most, blockTall(b, (wide-gapWide*float64(row-1))/float64(row)))
		}
		tall += most + gapTall
		from += row
	}
	tall += lines(joined(l.Foot), wide/smallType)*lineTall*smallType + gapTall
	return tall * size
}

// inOneRow is how many of the next blocks stand beside each other: tables do, as far as there
// is room.
func inOneRow(l *sheet.Leaf, from int, room float64) int {
	n := 0
	for from+n < len(l.Blocks) && l.Blocks[from+n].Role == sheet.Tabled {
		n++
	}
	each := tableWide
	if l.Kind == "menu" {
		each = menuWide
	}
	return max(1, min(n, int((room+gapWide)/(each+gapWide))))
}

func blockTall(b sheet.Block, wide float64) float64 {
	scale, tall := 1.0, 0.0
	switch b.Role {
	case sheet.Aside:
		return -gapTall // not printed
	case sheet.Small, sheet.Tabled:
		scale = smallType
	case sheet.Boxed:
		tall, wide = boxTall, wide-boxTall
	case sheet.InLine:
		n := 0
		for _, l := range b.Lines {
			n += utf8.RuneCountInString(l.Text) + 3
		}
		return lines(n, (wide-9)/1.12) * lineTall * 1.12
	}
	if b.Heading != "" {
		tall += 1.3
	}
	if len(b.Figures) > 0 {
		tall += bigTall
	}
	for _, l := range b.Lines {
		n := utf8.RuneCountInString(l.Sentence())
		tall += (lines(n, wide/scale)*lineTall + 0.3) * scale
	}
	if b.Grid != nil {
		tall += gridTall(b.Grid, wide)
	}
	return tall
}

func gridTall(g *sheet.Grid, wide float64) float64 {
	tall, heads := 1.9, 1.0
	if g.Shape != "" {
		tall, wide = tall+frameTall, wide-frameWide
	}
	label := wide * labelWide
	cell := (wide - label) / float64(max(len(g.Head)-1, 1))
	for _, h := range g.Head {
		heads = max(heads, lines(utf8.RuneCountInString(h), cell))
	}
	tall += heads * lineTall
	for _, above := range g.Lead {
		tall += rowTall + (lines(utf8.RuneCountInString(above), wide)-1)*lineTall
	}
	for _, r := range g.Rows {
		most := lines(utf8.RuneCountInString(r.Label), label)
		for _, c := range r.Cells {
			most = max(most, lines(utf8.RuneCountInString(c.Sign+c.Text)+1, cell))
		}
		tall += rowTall + (most-1)*lineTall
	}
	return tall
}

// lines is how many lines so many letters take.
func lines(letters int, wide float64) float64 {
	return max(1, math.Ceil(float64(letters)/max(wide, 1)))
}

func joined(pieces []string) int {
	n := 0
	for _, p := range pieces {
		n += utf8.RuneCountInString(p) + 3
	}
	return n
}
