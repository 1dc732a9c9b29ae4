package sheet

import (
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/burette"
	"sipsum/internal/clean"
	"sipsum/internal/figure"
	"sipsum/internal/titration"
	"sipsum/internal/unit"
)

// Outlooks gives what a titration of a pot would tell, or a further point of one; of an empty name of
// every pot. The drink itself is called as PotWords has it.
func (s *Sheet) Outlooks(pot string) []titration.Outlook {
	if pot == "" {
		return s.Assay.Outlooks
	}
	return slices.DeleteFunc(slices.Clone(s.Assay.Outlooks), func(o titration.Outlook) bool { return potOf(o) != pot && PotWords(potOf(o)) != pot })
}

// potOf names the pot of an outlook; empty: the finished drink.
func potOf(o titration.Outlook) string {
	if len(o.Path) > 0 {
		return o.Path[0]
	}
	return ""
}

// NextLeaf is a page of what to read next: of a pot what a titration would tell, without one the
// readings too.
func NextLeaf(s *Sheet, pot string) *Leaf {
	l := &Leaf{Kind: "next", Language: English, Label: "next", Title: clean.Name(s.Assay.Drink.Name)}
	if pot == "" {
		l.add(readingsToTake(s))
	}
	l.add(KitBlocks(s, pot)...)
	l.Foot = []string{say("kit.foot"), clean.Name(s.Program)}
	return l
}

// readingsToTake lists them as they are worth it.
func readingsToTake(s *Sheet) Block {
	b := Block{Heading: say("paper.nextlist")}
	for _, g := range s.Suggestions() {
		b.Lines = append(b.Lines, Line{
			Strong: clean.UpperFirst(ReadingWords(g.Reading)) + " of " + PotWords(g.Of), Text: Expectation(g) + "; " + LineFor(g.Of, g.Reading),
		})
	}
	if len(b.Lines) == 0 {
		b.Lines = textLines([]string{say("paper.nextlist.none")})
	}
	return b
}

// KitBlocks tells in full what a titration of a pot would tell, or its next point; of an empty name of
// every pot.
func KitBlocks(s *Sheet, pot string) []Block {
	var list []Block
	for _, o := range s.Outlooks(pot) {
		list = append(list, kitBlock(o))
	}
	if pot != "" && len(list) == 0 {
		list = append(list, Block{Lines: textLines([]string{say("kit.none", clean.Name(pot))})})
	}
	return list
}

func kitBlock(o titration.Outlook) Block {
	name := PotWords(potOf(o))
	b := Block{Role: Tabled, Heading: say("kit.heading", name)}
	if o.Read > 0 {
		b.Heading = say("kit.heading.begun", strconv.Itoa(o.Read), name)
	}
	b.Grid = &Grid{Caption: say("kit.unit"), Head: []string{"", say("kit.recipe")}}
	for _, k := range o.Kits {
		b.Grid.Head = append(b.Grid.Head, say(kitKey(k)))
	}
	for i, a := range o.Acids {
		last := figure.Place(a.Recipe.Mean, a.Recipe.SD, figure.MostDigits)
		row := GridRow{Label: clean.Name(a.Name), Cells: []GridCell{{Text: figure.Rounded(a.Recipe.Mean, last) + " (" + figure.Span(a.Recipe.Low, a.Recipe.High, last) + ")"}}}
		for _, k := range o.Kits {
			row.Cells = append(row.Cells, GridCell{Text: "± " + halfText(k.Half[i])})
		}
		b.Grid.Rows = append(b.Grid.Rows, row)
	}
	var lines []string
	if o.Read == 0 {
		lines = append(lines, say("kit.plan", figure.Plain(o.Plan.Grams), figure.Plain(o.Plan.Molarity), strconv.Itoa(o.Plan.Points), figure.Plain(o.Plan.End), figure.Shortened(o.Ml, 2)))
	}
	for _, p := range o.Kits[0].Joined {
		lines = append(lines, say("kit.joined", o.Acids[p.First].Name, o.Acids[p.Second].Name, figure.Shortened(p.Correlation, 2), halfText(p.Half)))
	}
	lines = append(lines, nextWords(o)...)
	if o.Proof != nil {
		lines = append(lines, proofWords(o))
	}
	if o.Read == 0 || o.Next != nil {
		lines = append(lines, say("kit.caution"))
	}
	b.Lines = textLines(lines)
	return b
}

// kitKey is the key of what base is measured with.
func kitKey(k titration.Kit) string {
	if k.Name == "" {
		return "kit.own"
	}
	return "kit." + k.Name
}

// halfText writes half of an interval: to two digits.
func halfText(x float64) string { return figure.Shortened(x, 2) }

// nextWords says which point comes next.
func nextWords(o titration.Outlook) []string {
	switch {
	case o.Read == 0:
		return nil
	case o.Next != nil:
		return []string{
			say("kit.next", figure.Plain(o.Next.Ml), figure.Plain(o.Next.Total), figure.Rounded(o.Next.PH, -1), figure.Shortened(unit.Hundred*o.Next.Narrows, 1)),
			say("kit.next.write", figure.Plain(o.Next.Total)),
		}
	case o.Done:
		return []string{say("kit.next.done")}
	}
	return []string{say("kit.next.none")}
}

// proofWords says how to prove the base; its ± is that of the kit which is known least.
func proofWords(o titration.Outlook) string {
	worst := 0.0
	for _, k := range o.Kits {
		worst = max(worst, k.Base)
	}
	return say("kit.proof", figure.Shortened(unit.Hundred*worst, 1), figure.Plain(unit.Hundred*o.Proof.Share), figure.Plain(o.Proof.Grams),
		figure.Plain(burette.EndOfPlan()), figure.Shortened(unit.Kilo*o.Proof.Mol, figure.MostDigits))
}

// KitLines says in a line each what a titration of a pot would tell, for a list of what to read next.
func KitLines(s *Sheet) []string {
	var list []string
	for _, o := range s.Outlooks("") {
		var known []string
		for i, a := range o.Acids {
			if was := (a.Recipe.High - a.Recipe.Low) / 2; o.Kits[0].Half[i] < was/2 {
				known = append(known, say("kit.known", clean.Name(a.Name), halfText(o.Kits[0].Half[i]), halfText(was)))
			}
		}
		name := PotWords(potOf(o))
		if len(known) == 0 {
			continue
		}
		text := say("kit.would", name, strings.Join(known, ", "))
		if o.Read > 0 {
			text = say("kit.has", name, strconv.Itoa(o.Read), strings.Join(known, ", "))
		}
		list = append(list, text+"; "+say("kit.see", typed(name)))
	}
	return list
}

// typed quotes a name for a command line where it has to be.
func typed(name string) string {
	if strings.ContainsAny(name, " '\"") {
		return strconv.Quote(name)
	}
	return name
}
