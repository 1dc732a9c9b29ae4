package sheet

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"sipsum/internal/chemistry"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/evidence"
	"sipsum/internal/ladder"
	"sipsum/internal/ledger"
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

// order puts the sentences of a category into the order in which they are told: first those by which
// somebody leads, and of these those that are about most.
func (s *speaker) order(c *evidence.Category) []ladder.Sentence {
	list := slices.Clone(c.Sentences)
	grams := func(x ladder.Sentence) float64 {
		for _, e := range c.Entries {
			if e.Constituent == x.Constituent {
				return e.Mean / e.Constituent.PerGram
			}
		}
		return 0
	}
	behind := func(x ladder.Sentence) int { return max(x.Rung.Height(), ladder.Lead.Height()) }
	slight := func(x ladder.Sentence) int { // some that is added is no news
		if x.Added && behind(x) > ladder.Lead.Height() {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(list, func(x, y ladder.Sentence) int {
		return cmp.Or(cmp.Compare(behind(x), behind(y)), cmp.Compare(slight(x), slight(y)), cmp.Compare(grams(y), grams(x)))
	})
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
	i := slices.IndexFunc(order, func(x ladder.Sentence) bool {
		return whoBrings[x.Rung] != "" && !x.Added && speech.ForGuests()[x.Constituent.ID] != ""
	})
	if !first || i < 0 {
		return
	}
	words, kind := speech.ForGuests()[order[i].Constituent.ID], "ingredient"
	if order[i].Component != "" {
		kind = "part"
	}
	s.tell(whoBrings[order[i].Rung], c.Name, s.late(c), order[i].Works, "words", words, "come", agreed(words, "comes", "come"), "who", whoOf(order[i]), "kind", kind)
}

// agreed is the verb that goes with the words of a constituent.
func agreed(words, one, many string) string {
	if strings.HasSuffix(words, "s") && !strings.HasSuffix(words, "ss") {
		return many
	}
	return one
}

// share is what a sentence of the ladder ends with.
var share = regexp.MustCompile(`: (at least )?\d[^:]*$`)

// plainly is a sentence as far as its rung says it, without its share, and without a pot whose name
// says who is in it: "the milk of the cardamom milk".
func plainly(said ladder.Sentence) string {
	who := ladder.The(said.Who)
	said.Text = share.ReplaceAllString(said.Text, ".")
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
func (s *speaker) sour(category string) {
	s.panel(category)
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
	if e := c.Acidity[0].Per100g; e.Why == "" && e.Unit != "" && e.High >= chemistry.HardlySour {
		s.tell("acidity", category, 0, works).Range = &speech.Range{Low: e.Low, UpTo: e.High, Unit: "%"}
	}
}

// panel sets the citric acid of a litre beside what a panel picks out in coffee.
func (s *speaker) panel(category string) {
	const litre = 1000 // ml
	e, limit := s.entry("CITAC"), speech.Limits().Sour
	works := s.works(e)
	if len(works) == 0 || !(e.Low*litre >= limit.Value*s.Assay.Volume.High) {
		return
	}
	s.tell("sour.above", category, 0, append(works, worded(limit.Source)...))
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
