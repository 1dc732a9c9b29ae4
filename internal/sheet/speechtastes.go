package sheet

import (
	"slices"

	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
	"sipsum/internal/evidence"
	"sipsum/internal/ledger"
	"sipsum/internal/source"
	"sipsum/internal/speech"
	"sipsum/internal/taste"
)

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
		s.sour(c.Name, p.Sour)
	}
	told := map[taste.Taste]bool{}
	for _, place := range []taste.Place{taste.Above, taste.Among} {
		for _, d := range p.Doses {
			works := s.works(s.entry(d.Constituent.ID))
			if d.Place() != place || told[d.Taste] || !has(d.Constituent.ID) || d.Why != "" || d.Neutral || len(works) == 0 {
				continue
			}
			told[d.Taste] = true // one is enough, and what some may find nobody says of what all should
			words := WordsFor(d.Constituent)
			s.tell(overThreshold[place], c.Name, s.late(c), append(works, worded(d.Sources...)...), "words", words, "is", agreed(words, "is", "are"), "taste", string(d.Taste))
		}
	}
}

// overThreshold are the kinds of sentences by where a dose lies.
var overThreshold = map[taste.Place]string{taste.Above: "taste.above", taste.Among: "taste.among"}

// sweet tells the sucrose equivalents, grams in 100 ml as per cent.
func (s *speaker) sweet(category string, x taste.SweetIndex) {
	works := s.works(s.entry(constituent.Sugar))
	if x.Why != "" || x.Unknown || x.High == 0 || len(works) == 0 {
		return
	}
	for _, p := range x.Parts {
		if p.Equivalent >= ledger.Weighty*x.Mean {
			works = append(works, worded(p.Sources...)...)
		}
	}
	up := x.UpTo
	if !x.Partial {
		up = x.High
	}
	s.tell("sweet", category, 0, works).Range = &speech.Range{Low: x.Low, UpTo: up, Unit: "%"}
}

// sour tells whether a panel finds it sour, its pH and its titratable acidity, as far as no constant
// from memory bears them.
func (s *speaker) sour(category string, x taste.SourIndex) {
	s.panel(category, x)
	c := s.Assay.Chemistry
	if c == nil || len(c.Unseen) > 0 || len(c.Acidity) == 0 || len(Contradictions(s.Sheet)) > 0 {
		return
	}
	works := s.acidWorks()
	if len(works) == 0 {
		return
	}
	if e := c.PHMeter; e.Why == "" && e.Unit != "" {
		s.tell("ph", category, 0, works).Range = &speech.Range{Low: e.Low, UpTo: e.High}
	}
	if e := c.Acidity[0].Per100g; e.Why == "" && e.Unit != "" && e.High >= chemistry.HardlySour {
		s.tell("acidity", category, 0, works).Range = &speech.Range{Low: e.Low, UpTo: e.High, Unit: "%"}
	}
}

// panel sets the citric acid of a litre beside what a panel picks out in coffee. It has to be free:
// the drink has a pH of its own, no higher than a brew's, and as many acid molecules with a proton to
// give. The citrate of milk is not sour.
func (s *speaker) panel(category string, x taste.SourIndex) {
	const litre = 1000 // ml
	e, limits, c := s.entry("CITAC"), speech.Limits(), s.Assay.Chemistry
	if c == nil || c.PHMeter.Why != "" || c.PHMeter.Unit == "" || x.Molecules.Why != "" {
		return
	}
	free := c.PHMeter.High <= limits.SourPH.Value && x.Molecules.Low >= limits.Sour.Value/constituent.Must("CITAC").Molar
	works := s.works(e)
	if len(works) == 0 || !free || !(e.Low*litre >= limits.Sour.Value*s.Assay.Volume.High) {
		return
	}
	s.tell("sour.above", category, 0, append(works, worded(limits.Sour.Source, limits.SourPH.Source)...))
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
