package claims

import (
	"sipsum/internal/claim"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/note"
	"sipsum/internal/spelling"
)

// askOfPowder puts the question that follows where nobody doubts the figure: why a part of the
// drink brings an acid, if a bar has the acid itself. The answer is what comes with it.
func (g *Glass) askOfPowder(l *Link, c *claim.Claim, v claim.Verdict) *Link {
	of, part, ok := c.Brings()
	if !ok || !v.Firm() || !powdered(of) {
		return l
	}
	sugars := constituent.Must(constituent.Sugar)
	f, err := g.Amount(sugars, part)
	if err != nil || f.Known[0] <= 0 {
		return l
	}
	if l == nil {
		l = &Link{}
	}
	s := estimate.Summarise(f.Known)
	l.Asked, l.Cited, l.Powder = "why not the powder?", "", of.Words()
	l.Answer = "the powder is " + of.Words() + " alone; with " + part.Name + " come " + note.Number(s.Mean) + " g (" + note.Number(s.Low) + " to " + note.Number(s.High) + ") of sugars and its taste"
	return l
}

// powdered tells whether a constituent is an acid that a bar has as such: the core table has it as a chemical.
// Nobody asks a barista why the caffeine is not a powder.
func powdered(c *constituent.Constituent) bool {
	return chemicals()[spelling.Plain(c.Name)] && within(c, constituent.Must(constituent.OrganicAcids))
}
