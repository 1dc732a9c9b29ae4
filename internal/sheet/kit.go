package sheet

import (
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/burette"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/figure"
	"sipsum/internal/titration"
	"sipsum/internal/unit"
)

// Outlooks gives what a titration of a pot would tell, or a further point of one; of an empty name of
// every pot. The drink itself is called as PotWords has it.
func Outlooks(s *Sheet, pot string) []titration.Outlook {
	if pot == "" {
		return s.Assay.Outlooks
	}
	return slices.DeleteFunc(slices.Clone(s.Assay.Outlooks), func(o titration.Outlook) bool { return o.Of != pot && PotWords(o.Of) != pot })
}

// NextLeaf is a page of what to read next: of a pot what a titration would tell, without one the
// readings too.
func NextLeaf(s *Sheet, pot string) *Leaf {
	l := &Leaf{Kind: "next", Language: English, Label: "next", Title: clean.Name(s.Assay.Drink.Name)}
	if pot == "" {
		l.add(readingsToTake(s))
	}
	l.add(KitBlocks(s, pot)...)
	l.Foot = []string{say("kit.foot", figure.Plain(unit.Hundred*(estimate.HighShare-estimate.LowShare)), figure.Plain(unit.Hundred)), clean.Name(s.Program)}
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
	for _, o := range Outlooks(s, pot) {
		list = append(list, kitBlock(o))
	}
	if pot != "" && len(list) == 0 {
		list = append(list, Block{Lines: textLines([]string{say("kit.none", clean.Name(pot))})})
	}
	return list
}

func kitBlock(o titration.Outlook) Block {
	name := PotWords(o.Of)
	b := Block{Role: Tabled, Heading: say("kit.heading", name)}
	if o.Read > 0 {
		b.Heading = say("kit.heading.begun", strconv.Itoa(o.Read), name)
	}
	var untold []string
	b.Grid = &Grid{Caption: perHundred(), Head: []string{"", say("kit.recipe")}}
	for _, k := range o.Kits {
		b.Grid.Head = append(b.Grid.Head, say(kitKey(k)))
	}
	for i, a := range o.Acids {
		if o.Left(i) > hardlyTold {
			untold = append(untold, clean.Name(a.Name))
			continue
		}
		last := figure.Place(a.Recipe.Mean, a.Recipe.SD, figure.MostDigits)
		row := GridRow{Label: clean.Name(a.Name), Cells: []GridCell{{Text: figure.Rounded(a.Recipe.Mean, last) + " (" + figure.Span(a.Recipe.Low, a.Recipe.High, last) + ")"}}}
		for _, k := range o.Kits {
			row.Cells = append(row.Cells, GridCell{Text: "± " + halfText(k.Half[i])})
		}
		b.Grid.Rows = append(b.Grid.Rows, row)
	}
	if len(b.Grid.Rows) == 0 {
		b.Grid = nil
	}
	var lines []string
	if o.Few > 0 {
		lines = append(lines, say("kit.few", strconv.Itoa(o.Few)))
	} else if len(untold) > 0 {
		lines = append(lines, say("kit.untold", strings.Join(untold, ", ")))
	}
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

// An acid of which a kit leaves more of its interval than hardlyTold is not in the table, and one of
// which it leaves less than wellTold is worth a line in a list: our own bounds.
const (
	hardlyTold = 0.9
	wellTold   = 0.7
)

// perHundred is the unit of all that is told of a titrated liquid.
func perHundred() string { return say("kit.unit", figure.Plain(unit.Hundred)) }

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
	case o.Wrong:
		return []string{say("kit.wrong")}
	case o.Next != nil:
		lines := []string{say("kit.next", figure.Plain(o.Next.Ml), figure.Plain(o.Next.Total), figure.Rounded(o.Next.PH, -1)) + "; " + say("kit.next.write", figure.Plain(o.Next.Total))}
		better := figure.Shortened(unit.Hundred*o.Next.Narrows, 1)
		if len(o.Next.Then) == 0 {
			return append(lines, say("kit.next.alone", better))
		}
		var then []string
		for _, ml := range o.Next.Then {
			then = append(then, figure.Plain(ml))
		}
		return append(lines, say("kit.next.then", strings.Join(then, ", "), better))
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
	return say("kit.proof", figure.Shortened(unit.Hundred*worst, 1), figure.Plain(unit.Hundred*o.Proof.Share), figure.Plain(unit.Hundred), figure.Plain(o.Proof.Grams),
		figure.Plain(burette.EndOfPlan()), figure.Shortened(unit.Kilo*o.Proof.Mol, figure.MostDigits))
}

// KitLines says in a line each what a titration of a pot would tell, for a list of what to read next.
func KitLines(s *Sheet) []string {
	var list []string
	for _, o := range Outlooks(s, "") {
		var known []string
		together := map[int]bool{}
		for _, p := range o.Kits[0].Joined {
			together[p.First], together[p.Second] = true, true
			known = append(known, say("kit.together", clean.Name(o.Acids[p.First].Name), clean.Name(o.Acids[p.Second].Name), halfText(p.Half)))
		}
		for i, a := range o.Acids {
			if o.Left(i) < wellTold && !together[i] {
				known = append(known, say("kit.known", clean.Name(a.Name), halfText(o.Kits[0].Half[i]), halfText((a.Recipe.High-a.Recipe.Low)/2)))
			}
		}
		name := PotWords(o.Of)
		if len(known) == 0 {
			continue
		}
		text := say("kit.would", name, perHundred(), strings.Join(known, ", "))
		if o.Read > 0 {
			text = say("kit.has", name, strconv.Itoa(o.Read), perHundred(), strings.Join(known, ", "))
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

// Through gives the grams of a constituent in a serving that came through a component, as far as they
// are known; of an empty name all of them.
func Through(s *Sheet, component string, id constituent.ID) estimate.Summary {
	pot := s.Assay.Serving
	return estimate.Summarise(pot.Only(func(row int) bool { return component == "" || slices.Contains(pot.Rows[row].Path, component) }).Total(id))
}
