package sheet

import (
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/note"
)

// This file tells what is made of both glasses of a tasting.

// Rounds is how often the file's drink is made for the glasses of a tasting, of A and of B.
func (o *Omitted) Rounds() (a, b float64) {
	serves := float64(o.A.Assay.Drink.Serves)
	return o.Plan.Each * float64(o.Plan.A) / o.Omission.A.Volume.Mean / serves, o.Plan.Each * float64(o.Plan.B) / o.After.Volume.Mean / serves
}

// Pours lists what goes into the vessel of one of the two, as often as the file makes it.
func (o *Omitted) Pours(match bool) []string {
	if match {
		return o.written(o.Drink.Build)
	}
	return o.written(o.A.Assay.Drink.Build)
}

// OmittedPot is what goes into a pot of the match in the place of a line.
type OmittedPot struct {
	Pot, Was string
	By       []string
}

// Pots lists the pots in which something takes the place of what is left out.
func (o *Omitted) Pots() []OmittedPot {
	var list []OmittedPot
	for _, p := range o.Places {
		list = append(list, OmittedPot{p.Pot, o.written([]drink.Line{p.Line})[0], o.written(p.By)})
	}
	return list
}

// written writes lines with their amounts as fitted.
func (o *Omitted) written(lines []drink.Line) []string {
	changed := o.Amounts()
	var list []string
	for _, l := range lines {
		text := l.Amount.String()
		if l.Portion != "" {
			text = note.Grams(l.Count) + " × " + l.Portion
		}
		if now, ok := changed[l.Path]; ok {
			text = now.String()
		}
		list = append(list, text+" "+l.Food)
	}
	return list
}

// pour is what goes into each, and how much of it a tasting wants.
func (o *Omitted) pour() Block {
	a, b := o.Rounds()
	block := Block{Role: Ticked, Heading: say("omit.make")}
	for _, x := range []struct {
		name   string
		rounds float64
		match  bool
		glass  int
	}{{"A", a, false, o.Plan.A}, {"B", b, true, o.Plan.B}} {
		block.Lines = append(block.Lines, Line{Text: say("omit.rounds", x.name, strconv.Itoa(x.glass), note.Grams(o.Plan.Each)+" ml", note.Number(x.rounds), strconv.Itoa(o.A.Assay.Drink.Serves))})
		for _, text := range o.Pours(x.match) {
			block.Lines = append(block.Lines, Line{Text: tick + clean.Prose(text)})
		}
	}
	var gone []string
	for _, l := range o.Lines {
		gone = append(gone, ownedBy(l))
	}
	block.Lines = append(block.Lines, Line{Text: say("omit.gone", strings.Join(gone, ", "))})
	for _, u := range o.Undone {
		text := say("omit.undone.finish", u.Step)
		if u.Pot != "" {
			text = say("omit.undone", u.Step, clean.Name(u.Pot))
		}
		block.Lines = append(block.Lines, Line{Text: text})
	}
	return block
}

// potBlocks are the pots of B that are made otherwise.
func (o *Omitted) potBlocks() []Block {
	var list []Block
	for _, p := range o.Pots() {
		key := "omit.place"
		if len(p.By) == 0 {
			key = "omit.place.none"
		}
		b := Block{Role: Ticked, Heading: say(key, clean.Name(p.Pot), clean.Prose(p.Was))}
		for _, text := range p.By {
			b.Lines = append(b.Lines, Line{Text: tick + clean.Prose(text)})
		}
		list = append(list, b)
	}
	return list
}
