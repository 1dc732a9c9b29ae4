package claims

import (
	"context"
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/claim"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/drivers"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// Said is a claim of a drink file with its verdict.
type Said struct {
	Say, Check string
	claim.Verdict
	Figure   estimate.Summary // of the first figure of the check, with what is unknown at its least
	UpTo     float64          // its upper end with it at its most; NaN where nothing bounds it
	Weakest  *Link            // nil if the unknown decides it or nothing does, or no input has a share worth a word; nameless if only a question follows
	Remarks  []string
	Sought   bool                // its nearest world was looked for: it holds
	Searched bool                // its nearest world was looked for to the end
	Nearest  *World              // in which it is false; nil if it does not hold, or none is within range
	Closes   *drivers.Suggestion // the reading that narrows the margin most; nil if none does
	Names    []constituent.ID    // that it asks of
	Among    string              // among how many foods one was ranked; empty if none was
}

// Again calculates a drink at central values, with other figures of its foods, and its chemistry
// if a claim asks for it.
type Again func(ctx context.Context, d *drink.Drink, chemistry bool) (*assay.Assay, error)

// Bench is what claims are judged with.
type Bench struct {
	Assay    *assay.Assay // run with draws, chemistry and a journal
	Declared Declared
	Works    Works
	Again    Again // nil: no nearest world is looked for
	Shelf    Shelf // nil: no food is ranked

	runs *budget
}

// Read reads the expressions of a drink; what is wrong with them joins the faults.
func Read(d *drink.Drink, faults *fail.List) []*claim.Claim {
	list := make([]*claim.Claim, len(d.Claims))
	if most := int(unit.LimitOf("claims of a drink", "").High); len(list) > most {
		faults.Add(d.Claims[most].Place, "keep those that you will say", "the drink has %d claims, at most %d are judged", len(list), most)
		return nil
	}
	for i, c := range d.Claims {
		read, err := claim.Parse(c.Check, c.CheckAt)
		faults.Join(c.Place, err)
		list[i] = read
	}
	return list
}

// Constituents lists what the claims of a drink ask of.
func Constituents(d *drink.Drink) []constituent.ID {
	var ids []constituent.ID
	for _, c := range d.Claims {
		if read, err := claim.Parse(c.Check, c.CheckAt); err == nil {
			ids = append(ids, read.Constituents()...)
		}
	}
	return ids
}

// Judge judges the claims of a drink, in their order. All that is wrong is told at once.
func (b Bench) Judge(ctx context.Context) ([]Said, error) {
	faults := &fail.List{}
	b.runs = newBudget()
	d := b.Assay.Drink
	g := NewGlass(b.Assay, b.Declared).RankBy(b.Shelf)
	var list []Said
	for i, c := range Read(d, faults) {
		if c == nil {
			continue
		}
		s, err := b.judge(ctx, g, c, d.Claims[i])
		if err != nil {
			if fail.ExitCode(err) != fail.Wrong {
				return nil, err
			}
			faults.Join(d.Claims[i].Place, err)
			continue
		}
		list = append(list, s)
	}
	return list, faults.Err(fail.Wrong)
}

func (b Bench) judge(ctx context.Context, g *Glass, c *claim.Claim, of drink.Claim) (Said, error) {
	g.among, g.drawn = "", nil
	v, err := c.Check(g)
	if err != nil {
		return Said{}, err
	}
	s := Said{Say: of.Say, Check: of.Check, Verdict: v, Remarks: g.Remarks(), Names: c.Constituents(), Among: g.among}
	s.Figure, s.UpTo = printed(v.Outcome)
	if v.Outcome.Logic != claim.Open { // no input and no reading decides it
		return s, nil
	}
	margin := v.Outcome.Margin
	open := v.Word != claim.Unknown && !claim.Beyond(v.Outcome) // else no input decides it
	if open {
		inputs := b.inputs(g, c)
		if at, share := claim.Weakest(margin, inputs); at >= 0 && share >= leastShare() {
			s.Weakest = g.linkOf(inputs[at], share, b.Works)
		}
	}
	s.Weakest = g.askOfPowder(s.Weakest, c, v)
	if some, _ := c.OfTables(); some { // no reading and no figure of this drink moves a food in its table
		return s, nil
	}
	if open {
		s.Closes = closing(b.Assay, margin)
	}
	if v.Holds() && b.Again != nil {
		s.Sought = true
		s.Nearest, s.Searched, err = b.nearest(ctx, g, c, margin)
	}
	return s, err
}

// leastShare is what share of the variance of a margin goes with an input that is worth a word.
func leastShare() float64 { return unit.LimitOf("share of a weakest link", "").Low }

// closing is the reading that narrows a margin most; nil if none is worth taking for it.
func closing(a *assay.Assay, margin []float64) *drivers.Suggestion {
	if list := a.Closing(margin); len(list) > 0 && len(list[0].Narrows) > 0 && list[0].Narrows[0].By >= drivers.Worth() {
		return &list[0]
	}
	return nil
}

// inputs are all that a claim may hang on: those of the run, how sweet things are, and what a ranked food
// holds, which alone moves the place of a food.
func (b Bench) inputs(g *Glass, c *claim.Claim) []estimate.Entry {
	var ranked []estimate.Entry
	for _, p := range g.drawn {
		ranked = append(ranked, p.own)
	}
	if _, all := c.OfTables(); all {
		return ranked
	}
	return slices.Concat(b.Assay.Inputs, g.factors, ranked)
}

// printed summarises the first figure of a claim.
func printed(o claim.Outcome) (estimate.Summary, float64) {
	none := math.NaN()
	s := estimate.Summary{Mean: none, SD: none, Low: none, High: none}
	if len(o.Figure[0]) == 0 {
		return s, none
	}
	s = estimate.Summarise(o.Figure[0])
	loose := slices.ContainsFunc(o.Gaps, func(g claim.Gap) bool { return g.Loose })
	if loose || slices.ContainsFunc(o.Figure[1], func(x float64) bool { return math.IsInf(x, 0) || math.IsNaN(x) }) {
		return s, none
	}
	return s, max(s.High, estimate.Summarise(o.Figure[1]).High)
}
