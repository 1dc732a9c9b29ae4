package sheet

import (
	"fmt"
	"slices"
	
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/evidence"
	"sipsum/internal/ladder"
	"sipsum/internal/source"
	"sipsum/internal/speech"
	"sipsum/internal/taste"
)

// category tells a sensory category: who brings it, how much there is, why it should be tasted,
// and what is claimed of it.
func (s *speaker) category(c *evidence.Category) {
	s.leads(c)
	var first *evidence.Entry
	rank := 0
	for i := range c.Entries {
		e := &c.Entries[i]
		works := s.works(e)
		spoken := *e
		spoken.Works = works
		if !known(e.Result) || !evidence.Speaks(spoken, s.Assay.Volume.Mean) {
			continue
		}
		kind := "figure.more"
		if first == nil {
			kind, first = "figure", e
		}
		s.tell(kind, c.Name, rank, works, "words", WordsFor(e.Constituent)).Range = &speech.Range{Low: e.Low, UpTo: e.UpTo, Unit: e.Unit}
		rank++
	}
	s.tastes(c)
	for _, said := range s.Said {
		if s.categoryOf(said.Names) == c.Name {
			s.claim(said, c.Name)
		}
	}
	if first != nil {
		works := s.works(first)
		s.tell("asked.works", c.Name, 0, works, "words", WordsFor(first.Constituent), "works", counted(len(works)))
	}
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

// leads tells who brings what a category is about: a judge by the ladder's sentence, a guest by
// its rung alone.
func (s *speaker) leads(c *evidence.Category) {
	for rank, said := range c.Sentences {
		works := once(said.Works)
		s.tell("lead", c.Name, rank, works, "sentence", said.Text)
		if kind, ok := whoBrings[said.Rung]; ok && !said.Added {
			s.tell(kind, c.Name, rank, works, "words", WordsFor(said.Constituent), "who", whoOf(said))
		}
	}
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
			s.tell("taste.above", c.Name, 0, works, "words", WordsFor(d.Constituent), "taste", string(d.Taste))
		case taste.Among:
			s.tell("taste.among", c.Name, 0, works, "words", WordsFor(d.Constituent), "taste", string(d.Taste))
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
		s.tell("ph", category, 0, works).Range = &speech.Range{Low: e.Low, UpTo: e.High}
	}
	if e := c.Acidity[0].Per100g; e.Why == "" && e.Unit != "" && TasteOf(s.Sheet).Sour.Hardly == false {
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
