package textreport

import (
	"io"
	"math"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/sheet"
)

// fitPage is the page of a fit.
type fitPage struct{ *page }

// Fit prints what a drink has to be poured of to meet its targets.
func Fit(w io.Writer, f *sheet.Fitted, st Style) error {
	p := fitPage{newPage(st)}
	p.title(Clean(f.Assay.Drink.Name, mostName), "fit")
	p.paragraph(0, 2, clean.UpperFirst(Clean(f.Line, mostProse))+".")
	for _, why := range f.Why {
		p.hanging("  – ", bulletIndent, clean.UpperFirst(Clean(why, mostProse))+".")
	}
	contradicting(p.page, f.Sheet)
	p.heading("Amounts")
	for _, m := range f.Moves {
		p.move(m)
	}
	p.heading("Targets")
	for _, h := range f.Held {
		p.held(h)
	}
	p.beside(f)
	p.raised(f)
	p.gap()
	for _, r := range f.Remarks {
		p.paragraph(0, 2, Clean(r, mostProse))
	}
	written := "Nothing is written; --write FILE writes a copy of the drink with these amounts."
	if f.Written != "" {
		written = Clean(f.Written, mostName) + " written."
	}
	p.paragraph(0, 2, written)
	foot(p.page, f.Sheet)
	return p.write(w)
}

// move prints an amount before and after.
func (p fitPage) move(m sheet.FittedMove) {
	text := Clean(m.Name, mostName) + " " + m.Told()
	switch {
	case !m.Changed():
		text += " stays"
	case m.End != "":
		text += ", the " + m.End + " it may be"
	}
	p.hanging("  – ", bulletIndent, text)
}

// The words before a target, as wide as the longest.
var (
	metWords    = left("met", markWidth)
	missedWords = left("missed", markWidth)
	goalWords   = left("goal", markWidth)
)

const markWidth = 10

// held prints a target: met or not, its figure before and after, and how often it holds.
func (p fitPage) held(h sheet.FittedTarget) {
	lead := metWords
	switch {
	case h.Goal:
		lead = goalWords
	case !h.Met:
		lead = missedWords
	}
	text := Clean(h.Text, mostProse)
	if h.Says != "" {
		text = Clean(h.Says, mostProse) + ": " + text
	}
	p.hanging("  "+lead, 2+markWidth, text)
	told := ""
	if h.Words != "" {
		told = p.beforeAfter(h.Before, h.After)
	}
	holds := sheet.Changed(h)
	if holds == "" && !math.IsNaN(h.Hurt) && !h.Goal {
		holds = "holds in " + sheet.Chance(h.Hurt, h.Help)
	}
	if told != "" && holds != "" {
		told += "; "
	}
	told += holds
	p.paragraph(2+markWidth, 2, told)
}

// beforeAfter tells a figure of the drink as it is written and of the answer.
func (p fitPage) beforeAfter(before, after composition.Result) string {
	if after.Unit == "pH" { // the word stands before it
		before.Unit, after.Unit = "", ""
	}
	return p.show(before).number + " → " + p.sentence(after, "")
}

// raised prints the cautions that the answer makes new, or other, and what is too much in it.
func (p fitPage) raised(f *sheet.Fitted) {
	if len(f.Raised) == 0 {
		return
	}
	p.heading("Cautions that moved with it, and what is too much")
	for _, c := range f.Raised {
		p.hanging("  – ", bulletIndent, Clean(c.Text, mostProse))
	}
}

// beside prints what else of a serving moves.
func (p fitPage) beside(f *sheet.Fitted) {
	var lines []string
	for _, b := range f.Beside {
		if was, is := p.show(b.Before), p.show(b.After); was.number != is.number {
			lines = append(lines, Clean(b.Words, mostName)+" "+p.beforeAfter(b.Before, b.After))
		}
	}
	if len(lines) == 0 {
		return
	}
	p.heading("A serving then")
	for _, l := range lines {
		p.hanging("  – ", bulletIndent, l)
	}
}
