package textreport

import (
	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/sheet"
)

// inSummary are the constituents that a summary tells, where the drink has them.
var inSummary = []constituent.ID{
	constituent.Energy, constituent.Sugar, constituent.OrganicAcids, constituent.Caffeine, constituent.Alcohol,
}

// summary tells a serving in a few sentences: what is in it, and which component
// leads.
func (p *page) summary(s *sheet.Sheet) string {
	var figures, names []string
	leads := map[string][]string{}
	for _, id := range inSummary {
		f, ok := s.Assay.PerServing.Find(id)
		if !ok || hollow(f.Result) || empty(f.Result) {
			continue
		}
		figures = append(figures, p.sentence(f.Result, wordsFor(f.Constituent)))
		name, share, ok := lead(s.Assay, id)
		if !ok {
			continue
		}
		if leads[name] == nil {
			names = append(names, name)
		}
		of := " of the "
		if f.Partial {
			of = " of the known "
		}
		leads[name] = append(leads[name], mostly(share)+of+wordsFor(f.Constituent))
	}
	if len(figures) == 0 {
		return "Nothing is known of a serving besides its mass and its volume."
	}
	text := "A serving holds " + join(figures) + "."
	for _, name := range names {
		text += " " + upperFirst(name) + " brings " + join(leads[name]) + "."
	}
	return text
}

// mostly writes a share for a sentence.
func mostly(s assay.Share) string {
	if s.Low >= 1 {
		return "all"
	}
	return percent(s)
}

// lead gives the component that brings most of a constituent, if its share is
// known and is more than half.
func lead(a *assay.Assay, id constituent.ID) (name string, share assay.Share, ok bool) {
	const half = 0.5
	known, _ := partsOf(a, id)
	if len(known) == 0 || !hasShare(known[0].Share) || known[0].Share.Mean < half {
		return "", assay.Share{}, false
	}
	return known[0].name, known[0].Share, true
}
