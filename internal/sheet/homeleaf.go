package sheet

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/batch"
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/figure"
	"sipsum/internal/ladder"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// HomeLeaf is the card of a drink for somebody without a scale, on the sheet of the home version beside
// that of the drink as it is written: what stands in, what goes in, what moved, whether it is the same
// drink, allergens and cautions.
func HomeLeaf(was, s *Sheet, h *batch.Home, shifts []batch.Shift) *Leaf {
	l := s.leaf("home")
	l.Below = append(l.Below, legend())
	l.add(contradictions(was, ""))
	l.lines("", say("home.stands"), standLines(s, h))
	cold := colds(s)
	for _, c := range h.Recipe.Drink.Components {
		b := homePot(h, c.Name, clean.Name(c.Name), "")
		if pot, ok := h.Pots[c.Name]; ok {
			b.Grid.Caption = when(pot, cold[c.Name])
			b.Lines = append(b.Lines, keepingLines(pot)...)
		}
		if n := h.Times[c.Name]; n > 1 {
			b.Grid.Lead = []string{say("home.times", note.Grams(n))}
		}
		if ml := h.Makes[c.Name]; ml > 0 && len(c.Steps) > 0 {
			b.Lines = append(b.Lines, Line{Text: say("home.mark", homeVolume(ml))})
		}
		if slices.Contains(h.Less, c.Name) {
			b.Lines = append(b.Lines, Line{Text: say("home.less")})
		}
		l.add(b)
	}
	l.add(homePot(h, "", say("batch.build"), say("home.all")))
	l.add(shiftBlock(shifts, s.Assay.Volume.Mean))
	l.lines("", say("batch.exact"), sameLines(h))
	l.add(s.Served().box(s.Rules))
	l.warn(s)
	l.foot(s)
	return l
}

// legend says what the spoons and cups hold.
func legend() string {
	var holds []string
	for _, name := range []string{"tsp", "tbsp", "cup"} {
		m, _ := unit.FindMeasure(name)
		holds = append(holds, name+" "+note.Number(m.Factor)+" ml")
	}
	return say("home.of", joinedBy(holds, ", "))
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
		name := clean.Name(x.Name)
		if x.Garnish {
			name = say("home.garnish", name)
		}
		label := name
		if x.Later {
			label = say("home.later", name)
		}
		if !x.Step {
			row := GridRow{Label: tick + label, Cells: []GridCell{{Text: HomeText(x)}, {Text: homeGrams(x)}, {}}}
			if x.Weigh != "" {
				row.Cells[2].Text = amountText(x.Scale)
			}
			g.Rows = append(g.Rows, row)
		}
		if why := WeighText(h, x); why != "" {
			b.Lines = append(b.Lines, Line{Text: why})
		}
		if x.Buy != "" {
			b.Lines = append(b.Lines, Line{Text: say("home.bought", name)})
		}
	}
	for _, m := range h.Moves(pot) {
		text := StepOf(m)
		b.Lines = append(b.Lines, Line{Text: tick + text})
		if batch.Beyond(text) {
			b.Lines = append(b.Lines, Line{Text: say("home.nobody")})
		}
	}
	return b
}

// WeighText says why something is weighed, and what a spoon would cost; empty if nothing is.
func WeighText(h *batch.Home, x batch.Spooned) string {
	name := clean.Name(x.Name)
	if x.Step {
		name = stepAmount(name)
	}
	switch i := slices.IndexFunc(h.Bands, func(b batch.Band) bool { return b.Name == x.Weigh }); {
	case x.Weigh == "":
		return ""
	case i < 0:
		return say("home.whynot", name, amountText(x.Scale), x.Weigh)
	case h.Bands[i].Share > 0:
		return say("home.why", name, amountText(x.Scale), HomeText(x), x.Weigh, upTo(unit.Hundred*x.Off), note.Grams(unit.Hundred*h.Bands[i].Share))
	default:
		return say("home.whyband", name, amountText(x.Scale), HomeText(x), bandSaid(x.Weigh))
	}
}

// stepAmount names an amount of a step.
func stepAmount(parameter string) string {
	switch parameter {
	case "melt":
		return say("home.melt")
	case "out":
		return say("home.out")
	}
	return say("home.left")
}

// homeGrams is what a measure weighs, for who has a scale; nothing of what only a scale measures.
func homeGrams(x batch.Spooned) string {
	if x.Grams == 0 || math.IsNaN(x.Grams) {
		return ""
	}
	return wholeGrams(x.Grams)
}

// HomeText is an amount as it is measured at home; empty where nothing but a scale does.
func HomeText(x batch.Spooned) string {
	var text string
	switch {
	case x.Count > 0:
		return homeNumber(x.Count) + " × " + clean.Name(x.Of)
	case x.To.Measure.Name == "" && x.Garnish:
		return say("home.little")
	case x.To.Measure.Name == "":
		return ""
	case x.To.Measure.Spread == 0:
		return amountText(x.To)
	default:
		text = SpoonsText(x.To)
	}
	if x.Of != "" {
		text += ", " + clean.Name(x.Of)
	}
	return text
}

// SpoonsText writes spoons and cups as a kitchen pours them: ½ cup + 1½ tbsp.
func SpoonsText(a unit.Amount) string {
	var parts []string
	for _, p := range batch.Spoons(a) {
		word := p.Measure.Name
		if word == "cup" && p.Number > 1 {
			word = "cups"
		}
		parts = append(parts, homeNumber(p.Number)+" "+word)
	}
	if len(parts) == 0 {
		return homeNumber(a.Number) + " " + a.Measure.Name
	}
	return strings.Join(parts, " + ")
}

// vulgar are the parts of a spoon or cup that are sold.
var vulgar = map[float64]string{0.25: "¼", 0.5: "½", 0.75: "¾"}

// homeNumber writes so many spoons with the fractions that stand on them.
func homeNumber(n float64) string {
	const parts, dust = 4, 1e-3 // quarters; a cup is sixteen tablespoons but for its last digit
	near := math.Round(n*parts) / parts
	if math.Abs(near-n) > dust {
		return note.Grams(n)
	}
	whole, part := math.Modf(near)
	switch {
	case part == 0:
		return note.Grams(whole)
	case whole == 0:
		return vulgar[part]
	}
	return note.Grams(whole) + vulgar[part]
}

// homeVolume is a volume in cups beside millilitres.
func homeVolume(ml float64) string { return USMeasure(ml) + " (" + volumeText(ml) + ")" }

func bandSaid(name string) string {
	if name == batch.Overflow {
		return say("batch.overflow")
	}
	return clean.Prose(name)
}

// shiftBlock is what moved.
func shiftBlock(shifts []batch.Shift, ml float64) Block {
	var moved, little []string
	g := &Grid{Caption: say("home.moved.of"), Head: []string{"", say("home.written"), say("home.home")}}
	for _, x := range shifts {
		if !x.Always && !ShiftMoved(x) {
			continue
		}
		if !x.Always && shiftIsLittle(x, ml) {
			little = append(little, ShiftName(x))
			continue
		}
		name := ShiftName(x)
		if ShiftMoved(x) {
			name = say("home.yes", name)
			moved = append(moved, ShiftName(x))
		}
		g.Rows = append(g.Rows, GridRow{Label: name, Cells: []GridCell{{Text: ShiftText(x.Before)}, {Text: ShiftText(x.Home)}}})
	}
	var lines []Line
	switch {
	case len(moved) > 0:
		lines = append(lines, Line{Text: say("home.some", clean.Listed(moved))})
	case len(little) == 0:
		lines = append(lines, Line{Text: say("home.none")})
	}
	if len(little) > 0 {
		key := "home.some.little"
		if len(moved) == 0 {
			key = "home.some"
		}
		lines = append(lines, Line{Text: say(key, clean.Listed(little))})
	}
	return Block{Role: Tabled, Heading: say("home.moved"), Grid: g, Lines: lines}
}

// shiftIsLittle reports whether a figure is named alone: it is counted in milligrams and no figure that is
// always told, or there is so little of it in either serving that nobody asks for it.
func shiftIsLittle(x batch.Shift, ml float64) bool {
	most := 0.0
	for _, r := range []composition.Result{x.Before, x.Home} {
		if !r.Unknown {
			most = max(most, r.High)
		}
	}
	return x.Figure.Unit != "g" || !ladder.Worth(x.Figure, most, ml)
}

// ShiftMoved reports whether a figure moved as it is printed: what rounds to the same has not, nor what
// stays in its interval and of which less is known.
func ShiftMoved(x batch.Shift) bool {
	if x.Before.Unknown || x.Home.Unknown {
		return x.Moved
	}
	inside := x.Home.Mean >= x.Before.Low && x.Home.Mean <= x.Before.High
	return x.Moved && !inside && homeFigure(signless(x.Before.Mean)) != homeFigure(signless(x.Home.Mean))
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
	text := homeFigure(signless(r.Mean))
	if r.Partial {
		text = "≥ " + text
	}
	if r.Unit != "" && r.Unit != batch.PH {
		text += " " + r.Unit
	}
	return text + " (" + homeFigure(signless(r.Low)) + "–" + homeFigure(signless(r.High)) + ")"
}

// figure writes a number with three digits, from a hundred on whole.
func homeFigure(x float64) string {
	const most = 4
	if x == 0 {
		return "0"
	}
	return figure.Rounded(x, max(min(figure.FirstPlace(x)-figure.MostDigits+1, 0), -most))
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
	if len(h.Bands) == 0 && len(h.Untold) == 0 {
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
	if len(h.Untold) > 0 {
		lines = append(lines, Line{Text: say("home.untold", clean.Listed(h.Untold))})
	}
	if len(h.Unread) > 0 {
		lines = append(lines, Line{Text: say("home.held.unread")})
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
