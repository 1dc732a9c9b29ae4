package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"sipsum/internal/acidity"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/evidence"
	"sipsum/internal/ladder"
	"sipsum/internal/note"
	"sipsum/internal/source"
	"sipsum/internal/speech"
	"sipsum/internal/taste"
)

// category tells a sensory category: who brings it, how much there is, why it should be tasted,
// and what is claimed of it. The first of its figures is of what its first sentence is about.
func (s *speaker) category(c *evidence.Category) {
	order := s.order(c)
	figures := s.figures(c, order)
	if s.known == nil && len(figures) > 0 {
		s.known = figures[0]
	}
	s.leads(c, order, true)
	s.amounts(c, figures, true)
	s.tastes(c)
	for _, said := range s.Said {
		if s.categoryOf(said.Names) == c.Name {
			s.claim(said, c.Name)
		}
	}
	s.leads(c, order, false)
	s.amounts(c, figures, false)
}

// amounts tells the first figure of a category, or all others.
func (s *speaker) amounts(c *evidence.Category, list []*evidence.Entry, first bool) {
	for i, e := range list {
		kind := "figure.more"
		if i == 0 {
			kind = "figure"
		}
		if first == (i == 0) {
			s.tell(kind, c.Name, s.late(c)+i, s.works(e), "words", WordsFor(e.Constituent)).Range = &speech.Range{Low: e.Low, UpTo: e.UpTo, Unit: e.Unit}
		}
	}
}

// dear is how many categories are told before all that is more of any (our own bound).
const dear = 3

// late is 1 for what is told of a category after the first few.
func (s *speaker) late(c *evidence.Category) int {
	for i := range min(dear, len(s.Evidence.Categories)) {
		if s.Evidence.Categories[i].Name == c.Name {
			return 0
		}
	}
	return 1
}

// order puts the sentences of a category into the order in which it lists what they are about:
// first those by which somebody leads.
func (s *speaker) order(c *evidence.Category) []ladder.Sentence {
	list := slices.Clone(c.Sentences)
	place := func(x ladder.Sentence) int {
		i := slices.IndexFunc(c.Entries, func(e evidence.Entry) bool { return e.Constituent == x.Constituent })
		if x.Rung.Height() > ladder.Lead.Height() {
			i += len(c.Entries)
		}
		return i
	}
	slices.SortStableFunc(list, func(x, y ladder.Sentence) int { return cmp.Compare(place(x), place(y)) })
	return list
}

// figures are those of a category that may be spoken: of what its first sentence is about before the
// others.
func (s *speaker) figures(c *evidence.Category, order []ladder.Sentence) []*evidence.Entry {
	var list []*evidence.Entry
	for i := range c.Entries {
		e := &c.Entries[i]
		spoken := *e
		spoken.Works = s.works(e)
		if !known(e.Result) || !evidence.Speaks(spoken, s.Assay.Volume.Mean) {
			continue
		}
		if len(order) > 0 && e.Constituent == order[0].Constituent {
			list = slices.Insert(list, 0, e)
		} else {
			list = append(list, e)
		}
	}
	return list
}

// counted counts works as they are spoken of.
func counted(works int) string {
	if works == 1 {
		return "one published work"
	}
	return fmt.Sprintf("%d published works", works)
}

// whoBrings are the kinds of a guest's sentences by the rung of the ladder that they stand on.
var whoBrings = map[ladder.Rung]string{ladder.All: "who.all", ladder.NearlyAll: "who.nearly all", ladder.Most: "who.most", ladder.Lead: "who.lead"}

// leads tells who brings what a category is about, first or after all else: a judge by the ladder's
// sentences, a guest the first that somebody leads by its rung alone.
func (s *speaker) leads(c *evidence.Category, order []ladder.Sentence, first bool) {
	for i, said := range order {
		if first == (i == 0) {
			s.tell("lead", c.Name, s.late(c)+i, said.Works, "sentence", plainly(said))
		}
	}
	i := slices.IndexFunc(order, func(x ladder.Sentence) bool { return whoBrings[x.Rung] != "" && !x.Added })
	if !first || i < 0 {
		return
	}
	words, come := WordsFor(order[i].Constituent), "comes"
	if strings.HasSuffix(words, "s") && !strings.HasSuffix(words, "ss") {
		come = "come"
	}
	s.tell(whoBrings[order[i].Rung], c.Name, s.late(c), order[i].Works, "words", words, "come", come, "who", whoOf(order[i]))
}

// plainly is a sentence without a pot whose name says who is in it: "the milk of the cardamom milk".
func plainly(said ladder.Sentence) string {
	who := ladder.The(said.Who)
	for _, pot := range said.Pots {
		if within(said.Who, pot) && len(said.Pots) == 1 {
			long := clean.UpperFirst(who) + " of the " + clean.Name(pot) + " "
			return strings.Replace(said.Text, long, clean.UpperFirst(who)+" ", 1)
		}
	}
	return said.Text
}

// whoOf names who brings something, with the one pot that it comes through.
func whoOf(said ladder.Sentence) string {
	who := ladder.The(said.Who)
	if said.Component != "" {
		who = the(said.Who)
	}
	if len(said.Pots) == 1 && !within(said.Who, said.Pots[0]) {
		who += " of " + the(clean.Name(said.Pots[0]))
	}
	return who
}

// tastes tells why somebody should taste what is in a category.
func (s *speaker) tastes(c *evidence.Category) {
	p := TasteOf(s.Sheet)
	if p.Why != "" {
		return
	}
	has := func(id constituent.ID) bool { return s.categoryOf([]constituent.ID{id}) == c.Name }
	if has(constituent.Sugar) {
		s.sweet(c.Name, p.Sweet)
	}
	if has(constituent.OrganicAcids) {
		s.sour(c.Name)
	}
	for _, d := range p.Doses {
		works := s.works(s.entry(d.Constituent.ID))
		if !has(d.Constituent.ID) || d.Why != "" || d.Neutral || len(works) == 0 {
			continue
		}
		works = append(works, worded(d.Sources...)...)
		switch d.Place() {
		case taste.Above:
			s.tell("taste.above", c.Name, s.late(c), works, "words", WordsFor(d.Constituent), "taste", string(d.Taste))
		case taste.Among:
			s.tell("taste.among", c.Name, s.late(c), works, "words", WordsFor(d.Constituent), "taste", string(d.Taste))
		}
	}
}

// sweet tells the sucrose equivalents.
func (s *speaker) sweet(category string, x taste.SweetIndex) {
	works := s.works(s.entry(constituent.Sugar))
	if x.Why != "" || x.Unknown || x.High == 0 || len(works) == 0 {
		return
	}
	for _, p := range x.Parts {
		works = append(works, worded(p.Sources...)...)
	}
	up := x.UpTo
	if !x.Partial {
		up = x.High
	}
	s.tell("sweet", category, 0, works).Range = &speech.Range{Low: x.Low, UpTo: up, Unit: "g"}
}

// sour tells pH and titratable acidity, as far as no constant from memory bears them.
func (s *speaker) sour(category string) {
	c := s.Assay.Chemistry
	if c == nil || len(c.Unseen) > 0 || len(c.Acidity) == 0 {
		return
	}
	works := s.acidWorks()
	if len(works) == 0 {
		return
	}
	if e := c.PHMeter; e.Why == "" && e.Unit != "" {
		s.tell("ph", category, 0, works, "celsius", note.Number(acidity.MeterCelsius)).Range = &speech.Range{Low: e.Low, UpTo: e.High}
	}
	if e := c.Acidity[0].Per100g; e.Why == "" && e.Unit != "" && !TasteOf(s.Sheet).Sour.Hardly {
		s.tell("sour", category, 0, append(works, worded(TasteOf(s.Sheet).Sour.Notices.Source)...)).Range = &speech.Range{Low: e.Low, UpTo: e.High, Unit: "%"}
	}
}

// acidWorks are those behind the acids and the published pH of what is in the drink.
func (s *speaker) acidWorks() []source.Work {
	var list []source.Work
	for _, c := range s.Evidence.Categories {
		for i := range c.Entries {
			if e := &c.Entries[i]; e.Constituent.Parent == constituent.OrganicAcids {
				list = append(list, s.works(e)...)
			}
		}
	}
	for _, c := range s.Assay.Chemistry.RestsOn {
		list = append(list, s.PHWorks[c.Food]...)
	}
	return slices.Clip(once(list))
}
