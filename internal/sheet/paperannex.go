package sheet

import (
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/evidence"
	"sipsum/internal/figure"
	"sipsum/internal/houserules"
)

// annex is what has no room on the first two pages, in the order of the page: what may be wrong
// first, the sources last. rest is what the second page has no room for.
func (p *printed) annex(rest []Block) []Section {
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
	add("claims", say("paper.claims"), p.claims()...)
	add("house", say("paper.house"), p.house())
	add("said", say("paper.say"), p.allSaid())
	add("evidence", say("evidence"), p.evidence()...)
	add("further", say("paper.further.head"), p.further())
	add("liquids", say("paper.liquids"), p.liquids()...)
	add("milk", say("paper.milk"), p.milk()...)
	flow := p.flow()
	add("flow", say("paper.flow"), Block{Picture: flow})
	add("declarations", say("paper.cardrest"), rest...)
	add("allergens", say("paper.allergens"), p.AllergensLeaf().Blocks...)
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
func (p *printed) worded(texts []string) []string {
	out := make([]string, len(texts))
	for i, t := range texts {
		out[i] = clean.UpperFirst(clean.Prose(p.inWords(t)))
	}
	return out
}

// readings are what was read, each with whether it is believed.
func (p *printed) readings() Block {
	read := p.Read()
	var b Block
	for _, r := range read.Disagree {
		b.Lines = append(b.Lines, Line{Strong: say("paper.contradicts"), Text: ReadingLine(r) + ". " + clean.Prose(r.Advice)})
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
func (p *printed) claims() []Block {
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
func (p *printed) house() Block {
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
func (p *printed) allSaid() Block {
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

// evidence is the assay by sensory category.
func (p *printed) evidence() []Block {
	var list []Block
	for i := range p.Evidence.Categories {
		c := &p.Evidence.Categories[i]
		b := Block{Role: Tabled, Grid: &Grid{
			Caption: clean.UpperFirst(clean.Name(c.Name)), Head: []string{"", say("paper.serving"), say("paper.between"), say("paper.from")},
		}}
		against := clean.Name(p.Evidence.CompareWith)
		if against != "" {
			b.Grid.Head = append(b.Grid.Head[:3], say("paper.aloneHead", against), b.Grid.Head[3])
		}
		var unknown []string
		for k := range c.Entries {
			e := &c.Entries[k]
			if Hollow(e.Result) {
				unknown = append(unknown, bounded(WordsFor(e.Constituent), e.Result))
				continue
			}
			b.Grid.Rows = append(b.Grid.Rows, p.entry(e, against != ""))
		}
		if len(unknown) > 0 {
			b.Lines = append(b.Lines, Line{Text: say("paper.unmeasured", clean.Listed(unknown))})
		}
		if len(b.Grid.Rows) == 0 {
			b.Grid, b.Role, b.Heading = nil, "", clean.UpperFirst(clean.Name(c.Name))
		}
		list = append(list, b)
	}
	return list
}

// bounded names what nobody has measured, with the most that it can be.
func bounded(words string, r composition.Result) string {
	if most, unit := figure.Bound(r, 0); most != "" {
		words += " (up to " + most + " " + unit + ")"
	}
	return words
}

// entry is a row of the evidence.
func (p *printed) entry(e *evidence.Entry, beside bool) GridRow {
	w := Written{Shown: figure.Of(e.Result)}
	row := GridRow{Label: WordsFor(e.Constituent) + p.notes.Of(e, p.Tables), Cells: []GridCell{
		{Text: w.Bare(), Path: "evidence." + string(e.Constituent.ID) + ".mean"}, {Text: w.Range()},
	}}
	if beside {
		alone := say("paper.none")
		if e.Alone != nil {
			alone = Written{Shown: figure.Of(e.Alone.Result)}.Bare()
		}
		row.Cells = append(row.Cells, GridCell{Text: alone})
	}
	row.Cells = append(row.Cells, GridCell{Text: broughtBy(BroughtTo(p.Assay, e.Constituent.ID))})
	return row
}

// broughtBy names the parts that bring a constituent, with their shares.
func broughtBy(b Brought) string {
	var list, unknown []string
	for _, k := range b.Named() {
		list = append(list, clean.Name(k.Name)+" "+shareText(k.Share))
	}
	for _, u := range b.Unknown {
		unknown = append(unknown, clean.Name(u.Name))
	}
	if len(unknown) > 0 {
		list = append(list, say("paper.unknown", clean.Listed(unknown)))
	}
	return strings.Join(list, " · ")
}

// shareText writes a share with its range.
func shareText(s composition.Share) string {
	const hundred = 100
	text := figure.Percent(s.Mean)
	if in := figure.Span(s.Low*hundred, s.High*hundred, 0); in != "" {
		text += " (" + in + ")"
	}
	return text
}

// further is what the evidence does not tell.
func (p *printed) further() Block {
	g := &Grid{Caption: say("paper.further.head"), Head: []string{"", say("paper.serving"), say("paper.between"), say("paper.in100ml")}}
	for _, r := range p.Further() {
		w := Written{Shown: figure.Of(r.Figure.Result)}
		per := ""
		if f, ok := p.Assay.Per100ml.Find(r.Figure.Constituent.ID); ok && !Hollow(f.Result) {
			of := Written{Shown: figure.Of(f.Result)}
			of.UpTo = ""
			per = of.Bare()
		}
		g.Rows = append(g.Rows, GridRow{Label: r.Words, Cells: []GridCell{
			{Text: w.Bare(), Path: "evidence." + string(r.Figure.Constituent.ID) + ".mean"}, {Text: w.Range()}, {Text: per},
		}})
	}
	if len(g.Rows) == 0 {
		return Block{}
	}
	return Block{Role: Tabled, Grid: g}
}

// gapped says, food by food, what is not known of it.
func (p *printed) gapped() Block {
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
func (p *printed) toRead() Block {
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
func (p *printed) sources() []Block {
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
	return []Block{works, tables}
}
