package sheet

import (
	"strings"
	"unicode"

	"sipsum/internal/claims"
	"sipsum/internal/clean"
	"sipsum/internal/speech"
)

// claim tells a claim as far as its verdict bears it, and the question that follows. A guest hears
// none that has a figure.
func (s *speaker) claim(c claims.Said, category string) {
	say := clean.Prose(c.Say)
	why := notBorne(c)
	if why == "" && s.register == speech.Guest && strings.ContainsFunc(say, unicode.IsDigit) {
		why = "its figure says nothing to a guest"
	}
	if why != "" {
		s.unspoken = append(s.unspoken, speech.Left{Text: say, Why: why})
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
	if l := c.Weakest; l != nil {
		question := clean.UpperFirst(clean.Prose(l.Asked))
		switch {
		case l.Cited == "":
			s.tell("asked", category, 0, works, "question", question, "answer", clean.UpperFirst(clean.Prose(l.Answer)))
		case l.Rests == "":
			s.tell("asked.source", category, 0, append(works, worded(l.Cited)...), "question", question)
		default:
			s.tell("asked.rests", category, 0, append(works, worded(l.Cited)...), "question", question, "rests", clean.UpperFirst(clean.Prose(l.Rests)))
		}
	}
}

// asked is what a judge may ask of the drink as a whole: what nobody knows.
func (s *speaker) asked() {
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
	s.tell("asked.gap", "", 0, worded(works...), "words", WordsFor(g.Constituent), "who", bare(g.By.Word))
}

// smells tells what is there for the nose.
func (s *speaker) smells() {
	for i, x := range s.Assay.Drink.Aroma {
		s.tell("smell", "", i, s.file(), "material", clean.Name(x.Of), "treatment", x.Treatment)
	}
}
