package sheet

import (
	"math"
	"strconv"
	"strings"

	"sipsum/internal/batch"
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// HomeLeaf is the card of a drink for somebody without a scale, on the sheet of the home version:
// what stands in, what goes in, what moved, whether it is the same drink, allergens and cautions.
func HomeLeaf(s *Sheet, h *batch.Home, shifts []batch.Shift) *Leaf {
	l := s.leaf("home")
	l.Below = append(l.Below, say("home.of"))
	l.lines("", say("home.stands"), standLines(s, h))
	for _, c := range h.Recipe.Drink.Components {
		b := homePot(h, c.Name, clean.Name(c.Name), "")
		if ml := h.Mark(s.Assay, c.Name); ml > 0 && len(c.Steps) > 0 {
			b.Lines = append(b.Lines, Line{Text: say("home.mark", homeVolume(ml))})
		}
		l.add(b)
	}
	l.add(homePot(h, "", say("batch.build"), say("home.all")))
	l.add(shiftBlock(shifts))
	l.lines("", say("batch.exact"), sameLines(h))
	l.add(s.box(s.Served()))
	l.warn(s)
	l.foot(s)
	return l
}

// standLines say what stands in the place of what, and why.
func standLines(s *Sheet, h *batch.Home) []Line {
	var lines []Line
	for _, x := range h.Stands {
		lines = append(lines, Line{Text: StandText(s, x)})
	}
	if len(h.Unread) > 0 {
		var names []string
		for _, name := range h.Unread {
			if name == "" {
				name = say("home.the")
			}
			names = append(names, clean.Name(name))
		}
		lines = append(lines, Line{Text: say("home.unread", clean.Listed(names))})
	}
	return lines
}

// StandText says what stands in the place of a food.
func StandText(s *Sheet, x batch.Stood) string {
	source, _, _ := strings.Cut(x.Source, ": ")
	switch {
	case x.From == "carbonate" && x.To == "":
		return say("home.nogas", x.Why)
	case x.From == "carbonate":
		return say("home.gas", clean.Name(foodWords(s, x.To)))
	case x.Spoon != "":
		return say("home.solution", clean.Name(foodWords(s, x.From)), x.Spoon, x.Water)
	}
	text := say("home.stand", clean.Name(foodWords(s, x.From)), clean.Name(foodWords(s, x.To)), source)
	if x.Fitted {
		return text + " " + say("home.fitted")
	}
	return text + " " + say("home.unfitted", clean.Prose(strings.TrimSuffix(x.Why, ".")))
}

// foodWords names a food of the drink; of one that has left it, its code says what it is.
func foodWords(s *Sheet, id string) string {
	for _, item := range s.Assay.Items {
		if item.Food.ID.String() == id {
			return item.Food.Name()
		}
	}
	_, code, _ := strings.Cut(id, ":")
	return strings.ReplaceAll(code, "-", " ")
}

// homePot is what goes into a pot, or into the glasses, and what is done with it.
func homePot(h *batch.Home, pot, heading, caption string) Block {
	g := &Grid{Caption: caption, Head: []string{"", say("home.measure"), say("home.grams"), say("home.scale")}}
	if caption == "" {
		g.Caption = say("home.pot")
	}
	b := Block{Role: Ticked, Heading: heading, Grid: g}
	for _, x := range h.Lines {
		if x.Pot != pot {
			continue
		}
		row := GridRow{Label: tick + clean.Name(x.Name), Cells: []GridCell{{Text: HomeText(x)}, {Text: wholeGrams(x.Grams)}, {}}}
		if x.Weigh != "" {
			row.Cells[2].Text = say("home.weigh")
			why := "home.whynot"
			if isBand(h, x.Weigh) {
				why = "home.why"
			}
			b.Lines = append(b.Lines, Line{Text: say(why, clean.Name(x.Name), bandSaid(x.Weigh))})
		}
		if x.Buy != "" {
			b.Lines = append(b.Lines, Line{Text: say("home.bought", clean.Name(x.Name))})
		}
		g.Rows = append(g.Rows, row)
	}
	for _, m := range h.Moves(pot) {
		b.Lines = append(b.Lines, Line{Text: tick + StepOf(m)})
	}
	return b
}

// HomeText is an amount as it is measured at home.
func HomeText(x batch.Spooned) string {
	if x.Of != "" {
		return note.Grams(x.Count) + " × " + clean.Name(x.Of)
	}
	return homeNumber(x.To) + " " + x.To.Measure.Name
}

// vulgar are the parts of a spoon or cup that are sold.
var vulgar = map[float64]string{0.25: "¼", 0.5: "½", 0.75: "¾"}

// homeNumber writes so many spoons with the fractions that stand on them.
func homeNumber(a unit.Amount) string {
	whole, part := math.Modf(a.Number)
	sign, ok := vulgar[part]
	switch {
	case a.Measure.Spread == 0 || part != 0 && !ok:
		return strconv.FormatFloat(a.Number, 'f', -1, 64)
	case whole == 0:
		return sign
	}
	return strconv.FormatFloat(whole, 'f', -1, 64) + sign
}

// homeVolume is a volume in cups beside millilitres.
func homeVolume(ml float64) string { return volumeText(ml) + " (" + USMeasure(ml) + ")" }

func isBand(h *batch.Home, name string) bool {
	for _, b := range h.Bands {
		if b.Name == name {
			return true
		}
	}
	return false
}

func bandSaid(name string) string {
	if name == batch.Overflow {
		return say("batch.overflow")
	}
	return clean.Prose(name)
}

// shiftBlock is what moved.
func shiftBlock(shifts []batch.Shift) Block {
	var moved []string
	g := &Grid{Caption: say("home.moved.of"), Head: []string{"", say("home.written"), say("home.home")}}
	for _, x := range shifts {
		home := ShiftText(x.Home)
		if x.Moved {
			home = say("home.yes", home)
			moved = append(moved, ShiftName(x))
		}
		g.Rows = append(g.Rows, GridRow{Label: ShiftName(x), Cells: []GridCell{{Text: ShiftText(x.Before)}, {Text: home}}})
	}
	text := say("home.none")
	if len(moved) > 0 {
		text = say("home.some", clean.Listed(moved))
	}
	return Block{Role: Tabled, Heading: say("home.moved"), Grid: g, Lines: []Line{{Text: text}}}
}

// ShiftName names a figure that may have moved.
func ShiftName(x batch.Shift) string {
	if x.Figure != nil {
		return WordsFor(x.Figure)
	}
	return x.Name
}

// ShiftText is a figure with its interval.
func ShiftText(r composition.Result) string {
	if r.Unknown {
		return say("home.unknown")
	}
	text := digits(signless(r.Mean))
	if r.Partial {
		text = "≥ " + text
	}
	if r.Unit != "" && r.Unit != batch.PH {
		text += " " + r.Unit
	}
	return text + " (" + digits(signless(r.Low)) + " to " + digits(signless(r.High)) + ")"
}

// signless takes the sign of a zero, and of the dust of a subtraction.
func signless(x float64) float64 {
	if math.Abs(x) < unit.Closeness {
		return 0
	}
	return x
}

// sameLines say whether it is the same drink.
func sameLines(h *batch.Home) []Line {
	if len(h.Bands) == 0 {
		return []Line{{Text: say("home.nobands")}}
	}
	var held, left []string
	for _, b := range h.Bands {
		held = append(held, bandText(b))
	}
	for _, name := range h.Left {
		left = append(left, bandSaid(name))
	}
	lines := []Line{{Text: say("home.same", joinedBy(held, ", "))}}
	if len(left) > 0 {
		lines[0].Text = say("home.differs", clean.Listed(left), joinedBy(held, ", "))
	}
	if !math.IsNaN(h.Inside) {
		text := say("home.inside", strconv.Itoa(int(math.Floor(unit.Hundred*h.Inside))))
		if h.First != "" {
			text += " " + say("batch.first", bandSaid(h.First))
		}
		lines = append(lines, Line{Text: text})
	}
	return lines
}
