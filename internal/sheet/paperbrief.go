package sheet

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/figure"
	"sipsum/internal/note"
)

// How many sentences and cautions the first page has room for: our own bounds. The annex has all.
const (
	mostSaid     = 3
	mostCautions = 4
)

// briefly are the blocks of the first page beside its pictures.
func (p *printed) briefly() []Block {
	b := p.brief
	var l Leaf
	var lines []Line
	for _, r := range b.Read.Disagree {
		lines = append(lines, Line{Text: ReadingLine(r) + ": " + clean.Prose(r.Advice)})
	}
	for _, text := range b.Read.Notes {
		lines = append(lines, Line{Text: clean.Prose(text)})
	}
	l.lines(Wrong, say("paper.disagree"), lines)
	lines = nil
	for _, text := range b.Mind {
		lines = append(lines, Line{Text: clean.UpperFirst(clean.Prose(text))})
	}
	l.lines(Wrong, say("paper.mind"), lines)
	if b.Goes != "" && WaitsAsStated(p.Assay.Drink) {
		l.lines("", say("paper.minutes"), []Line{{Text: clean.Prose(b.Goes)}})
	}
	l.lines(Quoted, say("paper.say"), p.say())
	if d := b.Dont; d != nil {
		l.lines(Quoted, say("paper.dont"), []Line{{Text: inQuotes(d.Sentence), Source: clean.Prose(d.Why)}})
	}
	if text := HouseInShort(p.Sheet); text != "" {
		l.lines("", say("paper.house"), []Line{{Text: text}})
	}
	l.lines(Softly, say("paper.next"), p.readNext())
	l.lines("", say("paper.unknown.head"), p.unknown())
	if c := b.Change; c != nil {
		l.lines("", say("paper.change"), []Line{{Strong: figure.Plain(c.From) + " → " + figure.Plain(c.To) + " " + c.Unit + " " + clean.Name(c.Of), Text: clean.Prose(c.What)}})
	}
	return l.Blocks
}

func inQuotes(text string) string { return "“" + clean.UpperFirst(clean.Prose(text)) + "”" }

// say gives what may be said: the claims that hold with their odds, then what surely holds.
func (p *printed) say() []Line {
	var lines []Line
	more := 0
	add := func(l Line) {
		if len(lines) < mostSaid {
			lines = append(lines, l)
		} else {
			more++
		}
	}
	for _, c := range p.Said {
		if c.Holds() {
			add(Line{Text: inQuotes(c.Say), Source: clean.Prose(c.InShort())})
		}
	}
	for _, s := range p.brief.Say {
		add(Line{Text: inQuotes(s.Text)})
	}
	switch {
	case len(lines) == 0:
		return []Line{{Source: say("paper.say.none")}}
	case more > 0:
		lines = append(lines, Line{Source: say(p.more, strconv.Itoa(more))})
	}
	return lines
}

// readNext says which reading to take, and the line that it takes.
func (p *printed) readNext() []Line {
	n := p.brief.Next
	if n == nil {
		return nil
	}
	text := ReadingWords(n.Reading) + " of " + PotWords(n.Of)
	switch {
	case n.Why != "":
		text += ": no recipe tells it"
	default:
		var by []string
		for _, x := range n.Narrows[:min(len(n.Narrows), 2)] {
			by = append(by, NarrowsBy(x))
		}
		text += ": narrows " + strings.Join(by, ", ")
	}
	where := "under " + clean.Name(n.Under) + ": "
	if n.Adds {
		where = "add to its measured: "
	}
	return []Line{{Text: clean.UpperFirst(text)}, {Source: where + n.Line}}
}

// unknown says what is unknown that matters most.
func (p *printed) unknown() []Line {
	g := p.brief.Gap
	if g == nil {
		return nil
	}
	text := WordsFor(g.Constituent) + " of " + clean.Name(g.By.The())
	if g.In != "" {
		text += ", as the steps of " + clean.Name(g.In) + " left it"
	}
	if most, unit := figure.Bound(g.Result, 0); most != "" {
		text += ", up to " + most + " " + unit
	}
	return []Line{{Text: clean.UpperFirst(text)}}
}

// build is what goes into the vessel for all servings together, and what finishes it.
func (p *printed) build() Block {
	d := p.Assay.Drink
	head := say("paper.build.one")
	if d.Serves > 1 {
		head = say("paper.build", strconv.Itoa(d.Serves))
	}
	b := Block{Role: Built, Heading: head}
	for _, line := range d.Build {
		b.Lines = append(b.Lines, Line{Lead: writtenAmount(line), Text: p.poured(line)})
	}
	words := map[string]string{}
	for _, step := range d.Finish {
		words[step.StepPath()] = StepWords(step, p.poured)
	}
	for _, y := range p.Assay.Yields {
		if y.Component != "" {
			continue
		}
		for _, s := range y.Steps {
			text := cmp.Or(words[s.Path], clean.Name(s.Kind))
			switch {
			case s.Lost > worthSaying:
				text += ", " + say("paper.flow.lost", wholeGrams(s.Lost))
			case s.Added > worthSaying && !strings.Contains(text, wholeGrams(s.Added)):
				text += ", " + say("paper.flow.added", wholeGrams(s.Added))
			}
			b.Lines = append(b.Lines, Line{Text: text})
		}
	}
	for _, t := range p.brief.Guest.OnTop {
		key := "paper.ontop.not"
		if t.Eaten {
			key = "paper.ontop"
		}
		b.Lines = append(b.Lines, Line{Text: say(key, clean.Name(t.Amount+" "+t.Name))})
	}
	return b
}

// writtenAmount is an amount as the file has it.
func writtenAmount(line drink.Line) string {
	if line.Portion != "" {
		return note.Grams(line.Count) + " × " + clean.Name(line.Portion)
	}
	return line.Amount.String()
}

// poured names what a line of the build pours.
func (p *printed) poured(line drink.Line) string {
	for _, c := range p.Assay.Components {
		if c.House && slices.Contains(c.Lines, line.Path) {
			return clean.Name(c.Name)
		}
	}
	words := p.words()
	for _, r := range p.Assay.Serving.Rows {
		if r.Line == line.Path {
			return clean.Name(words[r.Profile.Food.ID])
		}
	}
	return clean.Name(line.Food)
}

// guestly is the guest's box, and in few words what a guest has to be told besides.
func (p *printed) guestly() []Block {
	var l Leaf
	box := p.Served().box(p.Rules)
	box.Heading = say("paper.guest")
	l.add(box)
	var lines []Line
	more := 0
	for _, c := range p.brief.Guest.Cautions {
		switch text := cmp.Or(c.Words, c.Kitchen); {
		case text == "":
		case c.Words == "" || len(lines) >= mostCautions && c.Rank > deadly:
			more++
		case !slices.Contains(lines, Line{Text: clean.Prose(text)}):
			lines = append(lines, Line{Text: clean.Prose(text)})
		}
	}
	if more > 0 {
		lines = append(lines, Line{Source: say(p.more, strconv.Itoa(more))})
	}
	l.lines(Softly, "", lines)
	return l.Blocks
}

// mostCards is how many declarations the second page has room for: our own bound.
const mostCards = 2

// cards are the blocks of the second page, and those for which it has no room.
func (p *printed) cards() (card, rest []Block) {
	n := 0
	for _, b := range p.CardLeaf().Blocks {
		switch {
		case b.Role == Tabled && n >= mostCards, b.Role == Aside:
			rest = append(rest, b)
			continue
		case b.Role == Tabled:
			n++
		}
		card = append(card, b)
	}
	for i := range rest {
		if rest[i].Role == Aside {
			rest[i].Role = ""
		}
	}
	return card, rest
}
