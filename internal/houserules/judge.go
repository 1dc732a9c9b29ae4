package houserules

import (
	"context"
	"errors"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// Case is a drink as house rules ask of it.
type Case struct {
	Assay        *assay.Assay // run with draws and chemistry
	Bench        claims.Bench
	Declarations []allergen.Declaration // under each of the drink's rules
}

// Judge answers rules that were read and checked.
func (c Case) Judge(ctx context.Context, h *drink.HouseRules) (*Answer, error) {
	a := &Answer{Rules: h}
	poured := c.poured()
	for _, w := range h.Forbidden.Ingredients {
		a.Lines = append(a.Lines, c.ingredient(w.Text, poured))
	}
	for _, w := range h.Forbidden.Kinds {
		a.Lines = append(a.Lines, c.kind(w.Text, poured))
	}
	for _, w := range h.Forbidden.Constituents {
		l, err := c.constituent(ctx, w.Text)
		if err != nil {
			return nil, err
		}
		a.Lines = append(a.Lines, l)
	}
	for _, w := range h.Forbidden.Allergens {
		a.Lines = append(a.Lines, c.allergen(w.Text))
	}
	for _, l := range h.Limits {
		line, err := c.limit(ctx, l)
		if err != nil {
			return nil, err
		}
		a.Lines = append(a.Lines, line)
	}
	a.Lines = append(a.Lines, c.serving(h)...)
	for _, w := range h.HandOver {
		a.Lines = append(a.Lines, handOver(w.Text))
	}
	if len(h.Forbidden.Ingredients)+len(h.Forbidden.Kinds) > 0 {
		a.Remarks = remarks(poured)
	}
	return a, nil
}

// limit judges an expression. One that asks of a part which this drink does not have cannot be told.
func (c Case) limit(ctx context.Context, of drink.Claim) (Line, error) {
	l := Line{Key: "limits", Rule: of.Say}
	said, err := c.Bench.Weigh(ctx, of)
	var wrong *fail.Error
	if errors.As(err, &wrong) && wrong.Exit == fail.Wrong {
		l.Verdict, l.Why, l.Settle = CannotTell, wrong.Faults[0].What, []string{wrong.Faults[0].Do}
		return l, nil
	}
	if err != nil {
		return l, err
	}
	l.answer(said)
	return l, nil
}

// answer takes the verdict of a claim over, and what would settle it.
func (l *Line) answer(said claims.Said) {
	l.Verdict, l.Why = CannotTell, strings.TrimPrefix(said.InShort(), "fails: ")
	switch holds, fails := claim.Sides(said.P); {
	case holds:
		l.Verdict, l.Settle = Pass, said.Remarks
		return
	case fails:
		l.Verdict = Fails
	}
	if l.Settle = said.Lines(); len(l.Settle) > 0 || l.Verdict == Fails {
		return
	}
	clear := "change an amount, so that the drink is clear of the limit"
	if w := said.Weakest; w != nil && w.Name != "" {
		clear = "it hangs most on " + w.Name + ": find out yours and state it, or " + clear
	}
	l.Settle = []string{clear}
}
