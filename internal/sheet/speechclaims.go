package sheet

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"sipsum/internal/claims"
	"sipsum/internal/clean"
	"sipsum/internal/estimate"
	"sipsum/internal/ladder"
	"sipsum/internal/source"
	"sipsum/internal/speech"
)

// claim tells a claim as far as its verdict bears it, and the question that follows. A guest hears
// none that has a figure, and nobody what no check of a figure decides.
func (s *speaker) claim(c claims.Said, category string) {
	say := clean.Prose(c.Say)
	why := cmp.Or(notBorne(c), speech.Withheld(say))
	if why == "" && s.register == speech.Guest && strings.ContainsFunc(say, unicode.IsDigit) {
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
	if c.Weakest != nil {
		s.question(c.Weakest, category, works)
	}
}

// question tells what is asked next, and answers without a figure and a work: they stand on the sheet.
func (s *speaker) question(l *claims.Link, category string, works []source.Work) {
	kind, gaps := "asked", []string{"question", clean.UpperFirst(clean.Prose(l.Asked)), "answer", clean.UpperFirst(clean.Prose(l.Answer))}
	switch {
	case l.Powder != "":
		kind, gaps = "asked.powder", append(gaps, "acid", l.Powder)
	case l.Cause == estimate.Hand:
		kind = "asked.hand"
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

// asked is what a judge may ask of the drink as a whole: how its figures are known, and what nobody knows.
func (s *speaker) asked() {
	if s.known != nil {
		works := s.works(s.known)
		s.tell("asked.works", "", 0, works, "words", WordsFor(s.known.Constituent), "works", counted(len(works)))
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
