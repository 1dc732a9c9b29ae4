package sheet

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/evidence"
	"sipsum/internal/ladder"
	"sipsum/internal/source"
	"sipsum/internal/speech"
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

// counted counts the published works behind a figure as they are spoken of. What whoever made a food
// of the drink file says of it is nobody's publication.
func (s *speaker) counted(e *evidence.Entry, works []source.Work) string {
	published := slices.DeleteFunc(slices.Clone(works), func(w source.Work) bool {
		return !slices.ContainsFunc(e.Works, func(x source.Work) bool { return x.Citation == w.Citation })
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
