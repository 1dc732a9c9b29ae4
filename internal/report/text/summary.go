package textreport

import (
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/sheet"
)

// summary tells a serving in a few sentences: what is in it, and which component
// leads.
func summary(p *page, s sheet.Summary) string {
	if len(s.Figures) == 0 {
		return sheet.NothingKnown
	}
	var figures []string
	for _, f := range s.Figures {
		figures = append(figures, p.sentence(f.Result, sheet.WordsFor(f.Constituent)))
	}
	text := "A serving holds " + clean.Listed(figures) + "."
	for _, leader := range s.Leaders {
		var leads []string
		for _, led := range leader.Of {
			of := " of the "
			if led.Figure.Partial {
				of = " of the known "
			}
			leads = append(leads, mostly(led.Share)+of+sheet.WordsFor(led.Figure.Constituent))
		}
		text += " " + clean.UpperFirst(cleanPart(leader.ID, leader.Name)) + " brings " + clean.Listed(leads) + "."
	}
	return text
}

// mostly writes a share for a sentence.
func mostly(s composition.Share) string {
	if s.Low >= 1 {
		return "all"
	}
	return percent(s)
}
