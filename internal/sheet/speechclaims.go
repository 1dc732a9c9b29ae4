package sheet

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"sipsum/internal/claims"
	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ladder"
	"sipsum/internal/source"
	"sipsum/internal/speech"
)

// claim tells a claim as far as its verdict bears it, and the question that follows. A guest hears
// none that has a figure, and nobody what no check of a figure decides.
func (s *speaker) claim(c claims.Said, category string) {
	say := clean.Prose(c.Say)
	why := cmp.Or(notBorne(c), doubtedClaim(s, c), speech.Withheld(say), overtaken(c))
	if why == "" && s.register == speech.Guest && speech.SpeaksNumber(say) {
		why = "its figure says nothing to a guest"
	}
	if why != "" {
		s.unspoken = append(s.unspoken, speech.Left{Kind: "claim", Text: say, Why: why})
		return
	}
	works := worded("The check of the drink file: " + c.Check)
	for _, id := range c.Names {
		works = append(works, s.works(s.entry(id))...)
	}
	kind := "claim.likely"
	if c.Firm() {
		kind = "claim.supported"
	}
	s.tell(kind, category, 0, works, "say", say)
	if l := c.Weakest; l != nil && (l.Powder != "" || c.P < 1 && l.Share >= speech.Limits().Question.Value) { // else it is noise
		s.question(l, category, works)
	}
}

// doubtedClaim says why a claim about a figure is not said that hangs on a reading which contradicts its
// recipe: whoever asks hears of that first.
func doubtedClaim(s *speaker, c claims.Said) string {
	for _, id := range c.Names {
		if e := s.entry(id); e != nil && hangs(s.Sheet, id, e.Contributions) {
			return say("contradicted.claim")
		}
	}
	return ""
}

// overtaken says why a claim that speaks a figure is not said: the drink's own was told more sharply
// by far. The limit of a plain check is what its margin and its figure make of it in every draw.
func overtaken(c claims.Said) string {
	if !speech.SpeaksNumber(c.Say) || !strings.Contains(c.Check, "serving(") && !strings.Contains(c.Check, "sweetness(") {
		return ""
	}
	figure, margin := c.Outcome.Figure[0], c.Outcome.Margin
	if least, ok := limit(figure, margin, -1); ok && least < speech.Limits().Weak.Value*c.Figure.Low {
		return "its limit lies far below the figure that the drink has"
	}
	if most, ok := limit(figure, margin, 1); ok && c.UpTo < speech.Limits().Weak.Value*most {
		return "its limit lies far above the figure that the drink has"
	}
	return ""
}

// limit is a figure less or more its margin, if that is the same in every draw.
func limit(figure, margin []float64, sign float64) (float64, bool) {
	if len(figure) == 0 || len(figure) != len(margin) {
		return 0, false
	}
	at := figure[0] + sign*margin[0]
	for d := range figure {
		if x := figure[d] + sign*margin[d]; !(math.Abs(x-at) <= hairOf*math.Abs(at)) {
			return 0, false
		}
	}
	return at, true
}

// hairOf is what arithmetic leaves of a limit, as a share of it.
const hairOf = 1e-6

// question tells what is asked next, and answers without a figure and a work: they stand on the sheet.
// Of a step, an instrument and a constant nobody at a table asks.
func (s *speaker) question(l *claims.Link, category string, works []source.Work) {
	kind, gaps := "asked", []string{"question", clean.UpperFirst(clean.Prose(inOurWords(l))), "answer", clean.UpperFirst(clean.Prose(l.Answer))}
	switch {
	case l.Powder != "" && !soldPure(l.Powder):
		return
	case l.Powder != "":
		kind, gaps = "asked.powder", append(gaps, "acid", l.Powder)
	case l.Cause == estimate.Hand:
		kind, gaps = "asked.hand", append(gaps, "what", s.pouredOf(l))
	case l.Cause != estimate.Tables:
		return
	case l.Cited != "" && l.Rests != "":
		kind, gaps = "asked.rests", append(gaps, "rests", clean.UpperFirst(clean.Prose(l.Rests)))
	case l.Cited != "":
		kind = "asked.source"
	}
	if l.Cited != "" {
		works = append(slices.Clone(works), worded(l.Cited)...)
	}
	if asked := l.Asked + kind; !slices.Contains(s.questions, asked) { // nobody asks the same twice
		s.questions = append(s.questions, asked)
		s.tell(kind, category, 0, works, gaps...).After = true
	}
}

// inOurWords is a question with the words for what it asks of: "sugars not told apart".
func inOurWords(l *claims.Link) string {
	what, _, _ := strings.Cut(l.Input, " of ")
	for _, c := range constituent.All() {
		if c.Name == what {
			return strings.Replace(l.Asked, what, c.Words(), 1)
		}
	}
	return l.Asked
}

// pouredOf names an amount that a line pours: "the amount of lemon juice".
func (s *speaker) pouredOf(l *claims.Link) string {
	last := l.Input[strings.LastIndex(l.Input, "/")+1:]
	if id, ok := food.ParseID(last); ok {
		last = s.wordOf(id)
	}
	return "the amount of " + last
}

// soldPure reports whether somebody could sensibly pour a powder in the place of what brings it: an
// acid or a sugar, and no stimulant.
func soldPure(words string) bool {
	return slices.ContainsFunc(constituent.All(), func(c *constituent.Constituent) bool {
		return c.Words() == words && (c.Parent == constituent.OrganicAcids || c.Parent == constituent.Sugar)
	})
}

// asked is what a judge may ask of the drink as a whole: how its figures are known, and what nobody knows.
func (s *speaker) asked() {
	if s.known != nil {
		works := s.works(s.known)
		s.tell("asked.works", "", 0, works, "words", WordsFor(s.known.Constituent), "works", counted(s.known, works))
	}
	g := s.brief.Gap
	if g == nil || g.In != "" {
		return
	}
	var works []string
	for _, t := range s.Tables {
		if t.ID == g.By.Food.ID.Table {
			works = append(works, strings.TrimSuffix(t.Title+", "+t.Edition, ", "))
		}
	}
	if own, ok := s.Assay.Drink.OwnFood(g.By.Food.ID.Code); ok && own.Source != "" {
		works = append(works, own.Source)
	}
	s.tell("asked.gap", "", 0, worded(works...), "words", WordsFor(g.Constituent), "who", ladder.The(g.By.Word))
}

// smells tells what is there for the nose.
func (s *speaker) smells() {
	for i, x := range s.Assay.Drink.Aroma {
		s.tell("smell", "", i, s.file(), "material", clean.Name(x.Of), "treatment", x.Treatment)
	}
}
