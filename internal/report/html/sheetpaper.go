package htmlreport

import (
	"fmt"
	"math"
	"slices"
	"unicode/utf8"

	"sipsum/internal/sheet"
)

// sheetType is the size of type of a sheet, in points, and sheetMargin its margin: our own bounds.
const (
	sheetType   = 9.25
	sheetMargin = 34
)

// smallestSheet is how small a page of a sheet is made to stay one page, and sheetStep in what steps:
// our own bounds, of what most can read in a bar.
const (
	smallestSheet = 0.62
	sheetStep     = 0.02
)

// sheetRules give the pages of a sheet their size, and the brief and the card the largest that keeps
// each of them on one page.
func (p paper) sheetRules(s *sheet.Paper) string {
	p.margin = sheetMargin
	card := &sheet.Leaf{Kind: "card", Title: s.Title, Blocks: s.Card}
	first := p.largest(func(by float64) float64 { return p.firstTaken(s, by) })
	second := p.largest(func(by float64) float64 { return p.taken(card, sheetType*by) })
	return fmt.Sprintf("@page { size: %s; margin: %gpt; }\n@media print { html { font-size: %gpt; } .first { zoom: %.2f; } .second { zoom: %.2f; } }\n", p.css, p.margin, sheetType, first, second)
}

// largest is by how much a page is made smaller to hold what it takes.
func (p paper) largest(taken func(by float64) float64) float64 {
	by := 1.0
	for by > smallestSheet && taken(by) > p.height-2*p.margin {
		by -= sheetStep
	}
	return by
}

// How tall things are on the first page beside the size of the type, as sheet.css has them, and what
// is of one size whatever the type; rounded up.
const (
	inPoints   = 0.75 // a pixel of a drawing
	nameTall   = 2.7
	sizeTall   = 2.2 // the line below the name, and the rule
	sensePad   = 0.95
	nameWide   = 5.2
	saysWide   = 11.2
	columnGap  = 1.0
	bigType    = 1.5
	bigLine    = 1.75
	rangeType  = 0.85
	rangeGap   = 0.35
	keyType    = 0.86
	keyGap     = 0.95
	noteType   = 0.84
	noteGap    = 0.2
	patchWide  = 15.0 // pixels
	axisTall   = 22.0
	scaleTall  = 17.0
	wordsAbove = 0.5
	blockGap   = 0.6
	headingAt  = 1.3
	quoteType  = 1.08
	quoteLine  = 1.46
	lineGap    = 0.15
	buildLine  = 1.65
	boxPad     = 1.1
	footTall   = 1.2
	spare      = 0.97 // of what is rounded up in every piece, a part comes back
)

// firstTaken estimates how tall the first page is if all on it is smaller by so much, in points.
func (p paper) firstTaken(s *sheet.Paper, by float64) float64 {
	size := sheetType * by
	w := setting{wide: (p.width - 2*p.margin) / size}
	tall := lines(utf8.RuneCountInString(s.Title), w.wide/(letter*largestTitle))*nameTall + sizeTall
	for i := range s.Senses {
		tall += w.sense(&s.Senses[i])
	}
	half := setting{wide: (w.wide - 2*columnGap) / 2}
	c := columnsOf(s)
	tall += w.blocks(c.Above)
	tall += blockGap + max(half.blocks(c.Left), half.blocks(c.Right))
	for _, b := range c.Wide {
		tall += blockGap + headingAt + math.Ceil(float64(len(b.Lines))/2)*half.line(b.Role, longest(b.Lines))
	}
	tall += footTall + w.text(joined(s.Foot), smallType)
	return tall * size * spare
}

// longest is the longest of some lines.
func longest(list []sheet.Line) sheet.Line {
	return slices.MaxFunc(list, func(a, b sheet.Line) int { return len(a.Text) - len(b.Text) })
}

// columns are the blocks of the first page: what must not be missed stands above the senses, the others
// below them in two columns, and below these what goes over both.
type columns struct{ Above, Left, Right, Wide []sheet.Block }

// mostInColumn is how many lines of a build have room in a column: our own bound.
const mostInColumn = 8

// columnsOf sets a long build over both columns, and the guest's box where there is more room.
func columnsOf(s *sheet.Paper) columns {
	var c columns
	for _, b := range s.Brief {
		if b.Role == sheet.Wrong {
			c.Above = append(c.Above, b)
		} else {
			c.Left = append(c.Left, b)
		}
	}
	if len(s.Build.Lines) > mostInColumn {
		c.Wide = []sheet.Block{s.Build}
	} else {
		c.Right = []sheet.Block{s.Build}
	}
	usual := setting{wide: 30}
	if len(c.Right) > 0 && usual.blocks(c.Right) > usual.blocks(c.Left) {
		c.Left = append(slices.Clone(c.Left), s.Guest...)
		return c
	}
	c.Right = append(c.Right, s.Guest...)
	return c
}

// largestTitle is the size of the name.
const largestTitle = 2.5

// setting is a column; it is as wide as so many times the size of its type.
type setting struct{ wide float64 }

// text is how tall so many letters are in a type that is smaller or larger by so much.
func (w setting) text(letters int, by float64) float64 {
	return lines(letters, w.wide/(letter*by)) * lineTall * by
}

// px is a length of a drawing in the size of the type.
func (w setting) px(n float64) float64 { return n * inPoints / sheetType }

func (w setting) sense(x *sheet.SensePicture) float64 {
	says := setting{saysWide}
	shows := setting{w.wide - nameWide - saysWide - 2*columnGap}
	left := 0.0
	for _, f := range x.Figures {
		left += bigLine
		if float64(utf8.RuneCountInString(f.Lead+f.Number)+3)*bigType*letter+float64(utf8.RuneCountInString(f.Unit+f.Words)+2)*rangeType*letter > saysWide {
			left += lineTall * rangeType * 1.2
		}
		if text := f.Also + f.Range(); text != "" {
			left += says.text(utf8.RuneCountInString(text), rangeType) + rangeGap
		}
	}
	right := 0.0
	for _, b := range x.Pictures {
		right += shows.picture(b)
	}
	if len(x.Further) > 0 {
		n := utf8.RuneCountInString(x.More)
		for _, f := range x.Further {
			n += utf8.RuneCountInString(f.Sentence()) + 3
		}
		right += shows.text(n, noteType) + noteGap
	}
	for _, l := range x.Lines {
		right += shows.text(utf8.RuneCountInString(l), noteType) + noteGap
	}
	return max(left, right, lineTall) + sensePad
}

func (w setting) picture(x *sheet.Bars) float64 {
	tall := noteGap + w.px(axisTall)
	for _, b := range x.Bars {
		if b.Point {
			tall += w.px(scaleTall)
			if b.Against != "" {
				tall += w.key([]string{b.Figure.Bare(), b.Against})
			}
			continue
		}
		if !b.Figure.Leads || len(x.Bars) > 1 {
			tall += w.text(utf8.RuneCountInString(b.Figure.Sentence()), noteType) + wordsAbove
		}
		const bar, withCoffee = 25, 34
		if tall += w.px(bar); !math.IsNaN(b.Alone) {
			tall += w.px(withCoffee - bar)
		}
		var key []string
		for _, s := range b.Segments {
			key = append(key, s.Word+" "+s.Share)
		}
		tall += w.key(append(key, nonEmpty(b.Unknown, b.Against)...))
	}
	return tall
}

func nonEmpty(texts ...string) []string {
	var list []string
	for _, t := range texts {
		if t != "" {
			list = append(list, t)
		}
	}
	return list
}

// key is how tall a legend is whose entries are not broken.
func (w setting) key(entries []string) float64 {
	n, used := 1.0, 0.0
	for _, e := range entries {
		wide := float64(utf8.RuneCountInString(e))*keyType*letter*boldly + w.px(patchWide)
		if used > 0 && used+wide > w.wide {
			n, used = n+1, 0
		}
		n += math.Floor(wide / max(w.wide, 1)) // one that is wider than a line
		used += wide + keyGap
	}
	return n * (keyType*lineTall + 0.05)
}

// boldly is how much wider bold letters are.
const boldly = 1.06

// blocks is how tall a column of blocks is.
func (w setting) blocks(list []sheet.Block) float64 {
	tall := 0.0
	for _, b := range list {
		tall += blockGap
		if b.Heading != "" {
			tall += headingAt
		}
		in := w
		if b.Role == sheet.Boxed {
			tall, in.wide = tall+boxPad, w.wide-2
		}
		for _, l := range b.Lines {
			tall += in.line(b.Role, l)
		}
	}
	return tall
}

func (w setting) line(role sheet.Role, l sheet.Line) float64 {
	n := utf8.RuneCountInString
	switch role {
	case sheet.Built:
		return lines(n(l.Text), (w.wide-6)/letter)*lineTall + buildLine - lineTall
	case sheet.Quoted:
		tall := lineGap
		if l.Text != "" {
			tall += lines(n(l.Text), w.wide/(letter*quoteType)) * quoteLine
		}
		if l.Source != "" {
			tall += w.text(n(l.Source), keyType)
		}
		return tall
	case sheet.Boxed:
		return w.text(n(l.Sentence()), quoteType) + lineGap
	}
	return w.text(n(l.Sentence()), 1) + lineGap
}
