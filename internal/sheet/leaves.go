package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/label"
)

// CardLeaf is the declaration of a drink under each of its rules, with what else stands on
// its card. What nobody has determined stands there too.
func (s *Sheet) CardLeaf() *Leaf {
	v := s.Served()
	l := s.leaf("card")
	l.add(parts(v)...)
	cards := s.Cards()
	for i := range cards {
		l.add(declarationOf(&cards[i]))
	}
	l.add(v.box(s.Rules), advice(v))
	var short []string
	notes := plainLines(Contradictions(s))
	for i := range cards {
		if rows := NotComplete(&cards[i]); len(rows) > 0 {
			short = append(short, say("incomplete", rulesName(cards[i].Rules), clean.Prose(strings.Join(rows, ", "))))
		}
		notes = append(notes, notesOf(&cards[i])...)
	}
	if len(short) > 0 {
		l.lines(Small, "", []Line{{Text: strings.Join(short, " ")}})
	}
	l.lines(Aside, say("know"), notes)
	l.foot(s)
	return l
}

// GuestLeaf is the card beside a drink: what is not known is left out, and says "ask us".
func (s *Sheet) GuestLeaf() *Leaf { return s.GuestLeafIn(English) }

// GuestLeafIn is the card in a language of Languages; names of foods and components are as they are written.
func (s *Sheet) GuestLeafIn(language string) *Leaf {
	t := teller{s, tongueOf(language)}
	v := t.served()
	l := t.leaf("guest")
	l.add(parts(v)...)
	l.add(v.box(s.Rules), advice(v), v.declaration())
	l.ask(v)
	l.add(contradictions(s, Aside))
	l.foot(s)
	return l
}

// StageLeaf is the card for who presents the drink: the same, and the evidence in one line
// for each sensory category.
func (s *Sheet) StageLeaf() *Leaf {
	v := s.Served()
	l := s.leaf("stage")
	l.add(parts(v)...)
	var lines []Line
	for _, c := range s.Evidence.Categories {
		for i, said := range c.Sentences { // the strongest, and who brings what a guest may have to leave
			if i == 0 || s.cautioned(string(quinine)) && said.Constituent.ID == quinine {
				lines = append(lines, Line{Lead: clean.Name(c.Name), Text: "“" + clean.UpperFirst(clean.Prose(said.Text)) + "”"})
			}
		}
	}
	l.lines(Spoken, say("evidence"), lines)
	l.add(v.box(s.Rules), advice(v))
	l.ask(v)
	l.add(contradictions(s, Aside))
	l.foot(s)
	return l
}

// leaf begins a leaf about one drink.
func (s *Sheet) leaf(kind string) *Leaf { return teller{s, english}.leaf(kind) }

func (s teller) leaf(kind string) *Leaf {
	a, in := s.Assay, s.in
	l := &Leaf{Kind: kind, Language: string(in), Label: in.say("kind." + kind), Title: clean.Name(a.Drink.Name)}
	size := in.say("serving")
	if a.Drink.Serves > 1 {
		size = in.say("serving.of", strconv.Itoa(a.Drink.Serves))
	}
	l.Below = append(l.Below, size, whole(a.Mass.Mean, "g"))
	if ml := servingMl(a); ml > 0 {
		l.Below = append(l.Below, whole(ml, "ml"))
	}
	if at := a.Drink.At; at != nil {
		l.Below = append(l.Below, in.say("at", fmt.Sprintf("%g %s", at.Number, clean.Name(at.Unit))))
	}
	return l
}

func whole(x float64, unit string) string { return fmt.Sprintf("%.0f %s", x, unit) }

// add puts blocks on a leaf, those that say nothing left out.
func (l *Leaf) add(blocks ...Block) {
	for _, b := range blocks {
		if len(b.Figures)+len(b.Lines) > 0 || b.Grid != nil {
			l.Blocks = append(l.Blocks, b)
		}
	}
}

func (l *Leaf) lines(role Role, heading string, lines []Line) {
	l.add(Block{Role: role, Heading: heading, Lines: lines})
}

func (l *Leaf) ask(v Served) {
	if len(v.Ask) > 0 {
		l.lines("", "", []Line{{Text: v.in.say("ask", strings.Join(v.Ask, ", "))}})
	}
}

// parts are the first blocks of a card: what is in the drink, and its figures.
func parts(v Served) []Block {
	return []Block{
		{Role: InLine, Heading: v.in.say("in"), Lines: plainLines(v.In)},
		{Role: InLine, Heading: v.in.say("on"), Lines: plainLines(v.On)},
		{Figures: v.Figures},
	}
}

func plainLines(texts []string) []Line {
	lines := make([]Line, len(texts))
	for i, t := range texts {
		lines[i] = Line{Text: t}
	}
	return lines
}

// box is the guest's box: allergens, and whose rules name them.
func (v Served) box(under []string) Block {
	var rules []string
	for _, r := range under {
		rules = append(rules, v.in.named(rulesName(r)))
	}
	return Block{Role: Boxed, Lines: append(slices.Clone(v.Allergens), Line{Text: v.in.say("rules", v.in.listed(rules))})}
}

func advice(v Served) Block { return Block{Heading: v.in.say("advice"), Lines: plainLines(v.Advice)} }

// rulesName writes a set of rules as a card does.
func rulesName(rules string) string { return strings.ToUpper(clean.Name(rules)) }

// warn adds the cautions of a drink, and what declarations and cautions are worth.
func (l *Leaf) warn(s *Sheet) {
	var lines []Line
	for _, c := range s.Cautions() {
		lines = append(lines, cautionLine(c))
	}
	l.lines("", say("cautions"), lines)
	below := []Line{{Text: Declaring}}
	if len(lines) > 0 {
		below = append([]Line{{Text: LocalCode}}, below...)
	}
	l.lines(Small, "", below)
}

// foot says how the figures came about, and what the signs on the leaf mean.
func (l *Leaf) foot(s *Sheet) {
	in := tongueOf(l.Language)
	l.Foot = append(l.Foot, in.say("calculated"))
	var hatched, memory bool
	for _, b := range l.Blocks {
		hatched = hatched || b.Grid != nil && b.Grid.hatched()
		memory = memory || b.hasDagger()
	}
	if hatched {
		l.Foot = append(l.Foot, in.say("unmeasured"))
	}
	if memory {
		l.Foot = append(l.Foot, in.say("memory"))
	}
	l.Foot = append(append(l.Foot, clean.Name(s.Program)), proven(s)...)
}

// proven is the digest of a drink's proof pack, as a page bears it; nothing of what is no file.
func proven(s *Sheet) []string {
	if s.Proof == "" {
		return nil
	}
	return []string{say("proof", s.Proof)}
}

// dagger marks what rests on a rule entered from memory.
const dagger = " †"

func daggered(text string, is bool) string {
	if is {
		return text + dagger
	}
	return text
}

func (b *Block) hasDagger() bool {
	marked := func(text string) bool { return strings.HasSuffix(text, dagger) }
	return slices.ContainsFunc(b.Lines, func(l Line) bool { return marked(l.Text) }) ||
		b.Grid != nil && slices.ContainsFunc(b.Grid.Rows, func(r GridRow) bool { return marked(r.Label) })
}

func (g *Grid) hatched() bool {
	return slices.ContainsFunc(g.Rows, func(r GridRow) bool {
		return slices.ContainsFunc(r.Cells, func(c GridCell) bool { return c.Unknown })
	})
}

// declarationOf is the table of a card with its statements.
func declarationOf(c *label.Card) Block {
	return Block{Role: Tabled, Grid: gridOf(c), Lines: statements(c)}
}

// OtherLeaf is what is called, in the language of the guest's card or the allergens, the other of them.
func OtherLeaf(l *Leaf) string {
	in := tongueOf(l.Language)
	if l.Kind == "guest" {
		return in.say("other.allergens")
	}
	return in.say("other.guest")
}

// declaration is the table of the card in the language of the guest, where it has a word for every row;
// else it stands as its rules print it.
func (v Served) declaration() Block {
	b := declarationOf(&v.Card)
	texts := []string{v.Card.Title, v.Card.Percents}
	for _, r := range b.Grid.Rows {
		texts = append(texts, r.Label)
	}
	for _, l := range b.Lines {
		texts = append(texts, strings.TrimPrefix(l.Text, "* "))
	}
	if v.in == english || slices.ContainsFunc(texts, func(text string) bool { return !v.in.knows(text) }) {
		return b
	}
	b.Grid.Caption = v.in.say("figures", v.in.named(v.Card.Title), v.in.named(rulesName(v.Card.Rules)))
	for i, head := range b.Grid.Head {
		b.Grid.Head[i] = v.in.named(head)
		if size, serving := strings.CutPrefix(head, say("size")+", "); serving {
			b.Grid.Head[i] = v.in.say("figures", v.in.say("size"), size)
		}
	}
	for i, r := range b.Grid.Rows {
		b.Grid.Rows[i].Label = v.in.named(r.Label)
		for k, c := range r.Cells {
			if c.Text == say("missing") {
				b.Grid.Rows[i].Cells[k].Text = v.in.say("missing")
			}
		}
	}
	for i, l := range b.Lines {
		text, starred := strings.CutPrefix(l.Text, "* ")
		if b.Lines[i].Text = v.in.named(text); starred {
			b.Lines[i].Text = "* " + b.Lines[i].Text
		}
	}
	return b
}

// statements are what the rules want beside the card.
func statements(c *label.Card) []Line {
	var lines []Line
	if len(c.NotSignificant) > 0 {
		lines = append(lines, Line{Text: NotSignificant(c)})
	}
	for i, t := range c.Statements {
		text := strings.TrimPrefix(clean.Prose(t.Text), "*")
		if i == 0 { // it explains the percentages
			text = "* " + text
		}
		lines = append(lines, Line{Text: daggered(text, t.FromMemory)})
	}
	return lines
}

// notesOf are what who makes the card has to know: of its figures, and when it is wanted.
func notesOf(c *label.Card) []Line {
	var lines []Line
	for _, n := range c.Notes {
		lines = append(lines, Line{Lead: rulesName(c.Rules), Text: daggered(clean.Prose(n.Text), n.FromMemory)})
	}
	return lines
}
