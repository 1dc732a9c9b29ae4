package sheet

import (
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/houserules"
)

// annexed is the annex of a sheet that is being set on paper.
type annexed struct{ *printed }

// annex is what has no room on the first two pages, in the order of the page: what may be wrong
// first, the sources last. rest is what the second page has no room for.
func (p annexed) annex(rest []Block) []Section {
	var list []Section
	add := func(id, heading string, blocks ...Block) {
		var l Leaf
		for _, b := range blocks {
			if b.Picture != nil {
				l.Blocks = append(l.Blocks, b)
				continue
			}
			l.add(b)
		}
		if len(l.Blocks) > 0 {
			list = append(list, Section{id, heading, l.Blocks})
		}
	}
	add("readings", say("paper.read"), p.readings())
	add("smelled", say("paper.smelled"), p.smelled())
	add("claims", say("paper.claims"), p.claims()...)
	add("house", say("paper.house"), p.house())
	add("said", say("paper.say"), p.allSaid())
	add("evidence", say("evidence"), append([]Block{p.inside()}, p.evidence()...)...)
	add("further", say("paper.further.head"), p.further())
	add("liquids", say("paper.liquids"), p.liquids()...)
	add("minutes", MinutesHead(), p.overTime()...)
	add("milk", say("paper.milk"), p.milk()...)
	add("foam", say("paper.foam"), p.foams()...)
	flow := p.flow()
	add("flow", say("paper.flow"), Block{Picture: flow})
	add("declarations", say("paper.cardrest"), append(rest, p.nutritionClaims())...)
	add("allergens", say("paper.allergens"), append(p.AllergensLeaf().Blocks, p.ingredientLists())...)
	notes, more := p.Notes(false)
	lines := plainLines(p.worded(notes))
	if more > 0 {
		lines = append(lines, Line{Text: say("paper.notes.more", strconv.Itoa(more))})
	}
	add("notes", say("paper.notes"), Block{Lines: lines})
	add("gaps", say("paper.gaps"), p.gapped())
	add("next", say("paper.nextlist"), p.toRead())
	add("reading", say("paper.howto"), p.howTo())
	add("sources", say("paper.sources"), p.sources()...)
	return list
}

// worded puts words in the place of codes.
func (p annexed) worded(texts []string) []string {
	out := make([]string, len(texts))
	for i, t := range texts {
		out[i] = clean.UpperFirst(clean.Prose(p.inWords(t)))
	}
	return out
}

// readings are what was read, each with whether it is believed.
func (p annexed) readings() Block {
	read := p.Read()
	var b Block
	for _, r := range read.Disagree {
		b.Lines = append(b.Lines, Line{Strong: say("paper.contradicts"), Text: ReadingLine(r) + ". " + clean.UpperFirst(clean.Prose(r.Advice))})
	}
	for _, text := range read.Notes {
		b.Lines = append(b.Lines, Line{Strong: say("paper.contradicts"), Text: clean.Prose(text)})
	}
	for _, r := range read.Agree {
		b.Lines = append(b.Lines, Line{Text: ReadingLine(r) + " · " + say("paper.agrees")})
	}
	return b
}

// claims are the claims of the drink: each with its verdict, its weakest link and in which world
// it would be false.
func (p annexed) claims() []Block {
	var list []Block
	for _, c := range p.Said {
		b := Block{Role: Quoted, Lines: []Line{{Text: inQuotes(c.Say), Source: say("paper.checked", clean.Prose(c.Check))}, {Source: clean.Prose(c.Line())}}}
		for _, text := range c.Lines() {
			b.Lines = append(b.Lines, Line{Source: clean.Prose(text)})
		}
		list = append(list, b)
	}
	return list
}

// house are the answers to house rules.
func (p annexed) house() Block {
	if p.House == nil {
		return Block{}
	}
	b := Block{Lines: []Line{{Text: clean.Prose(p.House.Rules.From) + " (" + clean.Name(p.House.Rules.File) + ")"}}}
	for _, l := range p.House.Lines {
		line := Line{Strong: string(l.Verdict), Text: clean.Prose(joined(append([]string{l.Rule + "."}, texted(l)...)...))}
		b.Lines = append(b.Lines, line)
	}
	b.Lines = append(b.Lines, plainLines(p.worded(p.House.Remarks))...)
	return b
}

// texted is why a rule is answered so, and what would settle it.
func texted(l houserules.Line) []string {
	var list []string
	for _, text := range append([]string{l.Why}, l.Settle...) {
		if text != "" {
			list = append(list, text)
		}
	}
	return list
}

// allSaid is what surely holds, as far as the first page has no room for it.
func (p annexed) allSaid() Block {
	b := Block{Role: Quoted}
	if len(p.brief.Say) <= mostSaid {
		return b
	}
	for _, s := range p.brief.Say {
		var numbers []int
		for _, w := range s.Works {
			numbers = append(numbers, p.notes.Number(Citation(w)))
		}
		b.Lines = append(b.Lines, Line{Text: inQuotes(s.Text) + Numbered(numbers)})
	}
	return b
}

// gapped says, food by food, what is not known of it.
func (p annexed) gapped() Block {
	var b Block
	for _, g := range p.Gaps() {
		words := make([]string, len(g.Missing))
		for i, c := range g.Missing {
			words[i] = WordsFor(c)
		}
		b.Lines = append(b.Lines, Line{Strong: p.worded([]string{g.Food})[0], Text: strings.Join(words, ", ")})
	}
	return b
}

// toRead lists the readings not yet taken, the most useful first.
func (p annexed) toRead() Block {
	b := Block{Role: Softly}
	for _, g := range p.Suggestions() {
		var by []string
		for _, n := range g.Narrows {
			by = append(by, NarrowsBy(n))
		}
		text := Expectation(g)
		if len(by) > 0 {
			text += "; narrows " + strings.Join(by, ", ")
		}
		b.Lines = append(b.Lines, Line{Strong: clean.UpperFirst(ReadingWords(g.Reading)) + " of " + PotWords(g.Of), Text: text, Source: LineFor(g.Of, g.Reading)})
	}
	if len(b.Lines) == 0 {
		b.Lines = []Line{{Text: say("paper.nextlist.none")}}
	}
	return b
}

// sources are the works that were cited, the tables, and what made the page.
func (p annexed) sources() []Block {
	var works, tables Block
	for i, text := range p.notes.Texts {
		works.Lines = append(works.Lines, Line{Lead: "[" + strconv.Itoa(i+1) + "]", Text: text})
	}
	tables.Heading = say("paper.tables")
	for _, t := range p.Tables {
		name := Sentences(t.Title)
		if t.Edition != "" {
			name = strings.TrimSuffix(name, ".") + ", edition " + clean.Name(t.Edition) + "."
		}
		tables.Lines = append(tables.Lines, Line{Strong: clean.Name(t.ID), Text: name})
	}
	works.Role = Cited
	tables.Lines = append(tables.Lines, Line{Text: say("paper.run", clean.Name(p.Program), strconv.FormatUint(p.Assay.Seed, 10), strconv.Itoa(p.Assay.Draws))})
	if p.Proof != "" {
		tables.Lines = append(tables.Lines, Line{Text: say("paper.proof", p.Proof)})
	}
	return []Block{works, tables}
}
