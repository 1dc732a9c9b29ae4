package sheet

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/evidence"
	"sipsum/internal/ladder"
	"sipsum/internal/recipe"
	"sipsum/internal/source"
	"sipsum/internal/speech"
	"sipsum/internal/taste"
)

// category tells a sensory category: who brings it, how much there is, why it should be tasted,
// and what is claimed of it. Where the first sentence is not about the first figure it follows it.
func (s *speaker) category(c *evidence.Category) {
	order := s.order(c)
	figures := s.figures(c)
	if s.known == nil && len(figures) > 0 {
		s.known = figures[0]
	}
	agree := len(order) > 0 && len(figures) > 0 && order[0].Constituent == figures[0].Constituent
	if agree {
		s.leads(c, order, true)
	}
	s.amounts(c, figures, true)
	s.tastes(c)
	if !agree {
		s.leads(c, order, true)
	}
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

// order puts the sentences of a category into the order in which they are told: by what matters most
// for the sense, and of one thing the highest rung first. Of who brings a little of something, and of
// a pot that is the whole drink, nothing is told.
func (s *speaker) order(c *evidence.Category) []ladder.Sentence {
	whole := wholePot(s.Assay)
	list := slices.DeleteFunc(slices.Clone(c.Sentences), func(x ladder.Sentence) bool {
		return x.Component != "" && x.Component == whole || x.Rung == ladder.Some && speech.AtLeast(x.Least) == ""
	})
	matters := mattersIn(s.Sheet, c)
	slices.SortStableFunc(list, func(x, y ladder.Sentence) int {
		return cmp.Or(matters(x.Constituent, y.Constituent), cmp.Compare(x.Rung.Height(), y.Rung.Height()))
	})
	return list
}

// mattersIn orders the constituents of a category by what a tongue has of them: by their dose over its
// thresholds where one is over them, else by grams. Last is what says little of a sense
// (data/speech_last.csv), and what may be none.
func mattersIn(s *Sheet, c *evidence.Category) func(x, y *constituent.Constituent) int {
	dose := map[constituent.ID]float64{}
	if p := TasteOf(s); p.Why == "" {
		for _, d := range p.Doses {
			if place := d.Place(); place == taste.Above || place == taste.Among {
				dose[d.Constituent.ID] = max(dose[d.Constituent.ID], d.Times.Low)
			}
		}
	}
	last, grams := map[constituent.ID]int{}, map[constituent.ID]float64{}
	for _, e := range c.Entries {
		id := e.Constituent.ID
		grams[id] = e.Mean / e.Constituent.PerGram
		r := speech.Range{Low: e.Low, UpTo: e.UpTo, Unit: e.Unit}
		switch {
		case !known(e.Result) || r.MayBeNone():
			last[id] = 2
		case speech.Last(id):
			last[id] = 1
		}
	}
	return func(x, y *constituent.Constituent) int {
		return cmp.Or(cmp.Compare(last[x.ID], last[y.ID]), cmp.Compare(dose[y.ID], dose[x.ID]), cmp.Compare(grams[y.ID], grams[x.ID]))
	}
}

// wholePot names the pot that is the whole drink but for its water: it brings everything.
func wholePot(a *assay.Assay) string {
	var names []string
	for _, c := range a.Components {
		poured := slices.ContainsFunc(a.Drink.Build, func(l drink.Line) bool { return slices.Contains(c.Lines, l.Path) })
		water := slices.ContainsFunc(a.Items, func(it recipe.Item) bool { return it.Food.ID == c.ID.Food && it.Food.Facts().Water })
		if c.House || poured && !water {
			names = append(names, c.ID.Component)
		}
	}
	if len(names) != 1 {
		return ""
	}
	return names[0]
}

// figures are those of a category that may be spoken, what matters most first.
func (s *speaker) figures(c *evidence.Category) []*evidence.Entry {
	var list []*evidence.Entry
	for i := range c.Entries {
		e := &c.Entries[i]
		spoken := *e
		spoken.Works = s.works(e)
		if known(e.Result) && evidence.Speaks(spoken, s.Assay.Volume.Mean) {
			list = append(list, e)
		}
	}
	matters := mattersIn(s.Sheet, c)
	slices.SortStableFunc(list, func(x, y *evidence.Entry) int { return matters(x.Constituent, y.Constituent) })
	return list
}

// counted counts the published works behind a figure as they are spoken of. What whoever made a food
// of the drink file says of it is nobody's publication.
func counted(e *evidence.Entry, works []source.Work) string {
	published := slices.DeleteFunc(slices.Clone(works), func(w source.Work) bool {
		return w.Note == evidence.OwnSource || !slices.ContainsFunc(e.Works, func(x source.Work) bool { return x.Citation == w.Citation })
	})
	text := fmt.Sprintf("%d published works", len(published))
	switch {
	case len(published) == 0:
		return "the maker's own figures"
	case len(published) == 1:
		text = "one published work"
	}
	if len(published) < len(works) {
		text += " and the maker's own figures"
	}
	return text
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
	switch {
	case said.Rung == ladder.Some:
		least := speech.AtLeast(said.Least)
		said.Text = strings.Replace(said.Text, " some of ", " "+least+" of ", 1)
		if rest, ok := strings.CutPrefix(said.Text, "Some of "); ok {
			said.Text = clean.UpperFirst(least) + " of " + rest
		}
	case said.Rung == ladder.Lead && said.Added:
		said.Text = "The added " + clean.LowerFirst(said.Who) + " brings more of the " + said.Constituent.Words() + " than any other ingredient."
	}
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
