package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/assay"
	verdicts "sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
)

// mostLines is how many lines are tried to mend a claim: our own bound, the build's first.
const mostLines = 10

// mendClaim finds the smallest change with which a claim that fails holds. What nobody knows no
// amount mends.
func (p *proposer) mendClaim() (*Change, error) {
	d := p.s.Assay.Drink
	lines := slices.Clone(d.Build)
	for i := range d.Components {
		lines = append(lines, d.Components[i].Ingredients...)
	}
	lines = p.written(lines)
	for i, said := range p.s.Said {
		if !said.Decides() || said.Word == verdicts.Unknown {
			continue
		}
		read, err := verdicts.Parse(said.Check, d.Claims[i].CheckAt)
		if err != nil {
			continue // it was judged, so it can be read
		}
		if c, err := p.mend(said, read, lines[:min(len(lines), mostLines)]); c != nil || err != nil {
			return c, err
		}
	}
	return nil, nil
}

// mend finds the change that mends a claim: the margin has to shift so far that it holds in as many
// draws as a claim has to that holds. A run with the draws says whether it does.
func (p *proposer) mend(said claims.Said, read *verdicts.Claim, lines []drink.Line) (*Change, error) {
	short, ok := shortOf(said.Outcome.Margin)
	if !ok {
		return nil, nil
	}
	moves, err := p.moves(lines, []goal{func(before, after *assay.Assay) (float64, bool) {
		was, known := p.margin(before, read)
		now, ok := p.margin(after, read)
		return now - was - short, ok && known
	}})
	if err != nil {
		return nil, err
	}
	held := 0.0
	holds := func(drawn *assay.Assay) bool {
		v, err := read.Check(claims.NewGlass(drawn, p.declared))
		held = v.P
		return err == nil && v.Holds()
	}
	for _, m := range moves[:min(len(moves), 2)] { // a run with draws takes its time
		b, err := p.reach(m, proof{want: assay.Want{Chemistry: read.OfLiquid(), Draws: true}, holds: holds})
		if err != nil {
			return nil, err
		}
		if b != nil {
			c := p.change(ChangeClaim, m.line, b)
			c.What = fmt.Sprintf("then “%s” holds in %.0f of 100", clean.Prose(strings.TrimSuffix(said.Say, ".")), math.Floor(hundred*held))
			c.Short = fmt.Sprintf("then the claim holds in %.0f of 100", math.Floor(hundred*held))
			return c, nil
		}
	}
	return nil, nil
}

// margin is by how much a claim holds at central values.
func (p *proposer) margin(a *assay.Assay, read *verdicts.Claim) (float64, bool) {
	o, err := read.Evaluate(claims.NewGlass(a, p.declared), nil)
	if err != nil || len(o.Margin) == 0 || math.IsNaN(o.Margin[0]) || math.IsInf(o.Margin[0], 0) {
		return 0, false
	}
	return o.Margin[0], true
}

func (p *proposer) declared(word string) (bool, error) { return declares(p.s.Allergens(), word) }

// shortOf is by how much a margin has to shift for the claim to hold in as many draws as is called
// holding (data/claim_verdicts.csv).
func shortOf(margin []float64) (float64, bool) {
	if len(margin) < 2 || slices.ContainsFunc(margin, func(x float64) bool { return math.IsNaN(x) || math.IsInf(x, 0) }) {
		return 0, false
	}
	from := 1.0
	for _, row := range embedded.Rows("claim_verdicts.csv") {
		if row.Text("side") == "holds" {
			from = min(from, row.Number("from"))
		}
	}
	draws := slices.Sorted(slices.Values(margin[1:]))
	at := int((1 - from) * float64(len(draws)))
	return -draws[min(at, len(draws)-1)], true
}
