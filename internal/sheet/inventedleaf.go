package sheet

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/invent"
)

// InventedLeaf is a page of designs: what to put into a drink so that it meets its targets.
func InventedLeaf(v *Invented) *Leaf {
	a := v.Assay
	l := &Leaf{Kind: "invented", Language: English, Label: "fit from " + strings.Join(v.From, ", "), Title: clean.Name(a.Drink.Name)}
	l.Below = []string{inventedBelow(v)}
	l.add(asWritten(v))
	for n := range v.Designs {
		l.add(designBlock(v, n))
	}
	l.lines("", "No design", textLines(noDesign(v)))
	l.lines("", "Would win if read", unreadLines(v))
	l.lines("", "Left out for what may hurt", refusedLines(v))
	l.lines("", "How it was looked for", textLines(howLooked(v)))
	written := "Nothing is written; --write FILE writes a copy of the drink with the first design, --design N with another."
	switch {
	case len(v.Designs) == 0:
		written = "Nothing is written."
	case v.Written != "":
		written = "Design " + strconv.Itoa(v.WrittenDesign) + " is written to " + clean.Name(v.Written) + "."
	}
	l.lines(Small, "", textLines([]string{written}))
	l.Foot = []string{fmt.Sprintf("%d draws, seed %d; a target holds with what nobody knows at the end that hurts", a.Draws, a.Seed), clean.Name(v.Program)}
	return l
}

func inventedBelow(v *Invented) string {
	size := "amounts are for one serving"
	if n := v.Assay.Drink.Serves; n > 1 {
		size = fmt.Sprintf("amounts are for %d servings together", n)
	}
	return size + ", on top of what is written"
}

// asWritten tells of the drink as it is written.
func asWritten(v *Invented) Block {
	b := Block{Heading: "As it is written"}
	for _, h := range v.Before.Held {
		text := h.Text
		if h.Words != "" {
			text = figureSaid(h.Words, h.After) + "; " + text
		}
		lead := "missed"
		if h.Met {
			lead = "met"
			text += " holds in " + Chance(h.Hurt, h.Help)
		}
		b.Lines = append(b.Lines, Line{Lead: lead, Text: clean.Prose(text)})
	}
	if len(v.Still) > 0 {
		b.Lines = append(b.Lines, Line{Lead: "still there", Text: clean.Prose(strings.Join(v.Still, ", ")) + " of the drink holds, or may hold, what is to be left out; nothing that is put in takes it away"})
	}
	if v.Already {
		b.Lines = append(b.Lines, Line{Text: "Every target is met as it is written: nothing need be put in."})
	}
	return b
}

// designBlock tells of a design.
func designBlock(v *Invented, n int) Block {
	d := v.Designs[n]
	b := Block{Heading: strconv.Itoa(n+1) + " · " + clean.UpperFirst(v.DesignName(n))}
	add := func(lead string, list ...string) {
		for _, text := range list {
			if text != "" {
				b.Lines = append(b.Lines, Line{Lead: lead, Text: text})
			}
		}
	}
	_, reads, _ := strings.Cut(v.DesignLine(n), ": ")
	add("", clean.UpperFirst(reads))
	add("a serving then", strings.Join(v.ServingThen(n), ", "))
	add("weakest", v.WeakestSaid(n))
	add("poured", v.FoodsSaid(n)...)
	allergens := v.DesignAllergens(n)
	if len(allergens) == 0 {
		allergens = []string{nothingDeclared}
	}
	add("allergens", strings.Join(allergens, "; "))
	for _, c := range d.Cautions {
		short := inShort(c)
		add("caution", clean.Prose(cmp.Or(short.Short, short.Kitchen)))
	}
	for _, c := range v.Doses(n) {
		add("caution, as it is then", clean.Prose(c.Text))
	}
	return b
}

func noDesign(v *Invented) []string {
	if len(v.Designs) > 0 || v.Already {
		return nil
	}
	return append([]string{fmt.Sprintf("Nothing was found that meets every target in %s draws.", Chance(v.Enough, v.Enough))}, v.WhyNone()...)
}

func unreadLines(v *Invented) []Line {
	var lines []Line
	for _, u := range v.Unread {
		lines = append(lines, Line{Lead: invent.Short(u.Food) + " (" + u.Food.ID.String() + ")", Text: UnreadSaid(u)})
	}
	return lines
}

func refusedLines(v *Invented) []Line {
	var lines []Line
	for _, r := range v.Refused {
		var parts []string
		for _, p := range r.Parts {
			parts = append(parts, PartSaid(p))
		}
		lines = append(lines, Line{Lead: strings.Join(parts, " + "), Text: clean.Prose(r.Why.Text)})
	}
	return lines
}

func howLooked(v *Invented) []string {
	if v.Already {
		return nil
	}
	text := fmt.Sprintf("%d foods of %s, %d of them tried; designs hold in %s draws or more", v.Foods, clean.Listed(v.From), v.Tried, Chance(v.Enough, v.Enough))
	if left := v.InventedLeft(); len(left) > 0 {
		text += "; of the others " + strings.Join(left, ", ")
	}
	return append([]string{text + "."}, v.Remarks()...)
}

func textLines(list []string) []Line {
	lines := make([]Line, len(list))
	for i, text := range list {
		lines[i] = Line{Text: clean.Prose(text)}
	}
	return lines
}
