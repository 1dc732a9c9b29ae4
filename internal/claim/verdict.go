package claim

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// Word is a verdict in a word.
type Word string

// Unknown is the verdict that the unknown decides.
const Unknown Word = "unknown"

// Verdict is what the draws say of a claim.
type Verdict struct {
	Word    Word
	P       float64 // the share of the draws in which it holds; NaN where the unknown decides
	Hurt    float64 // with the unknown at the end that hurts
	Help    float64 // and at the end that helps
	Settle  *Gap    // unknown: what would settle it; nil if it is not
	Also    []*Gap  // and what else, where that alone would not
	Outcome Outcome
}

// rung is a row of data/claim_verdicts.csv.
type rung struct {
	word Word
	from float64
	side string
	says string
}

var rungs = sync.OnceValue(func() []rung {
	var list []rung
	for _, row := range embedded.Rows("claim_verdicts.csv") {
		list = append(list, rung{Word(row.Text("verdict")), row.Number("from"), row.Text("side"), row.Text("says")})
	}
	return list
})

func rungOf(p float64) rung {
	list := rungs()
	for _, r := range list {
		if p >= r.from {
			return r
		}
	}
	return list[len(list)-1]
}

// Holds, Fails and Unclear are the sides of a verdict.
func (v Verdict) side() string {
	if v.Word == Unknown {
		return string(Unknown)
	}
	return rungOf(v.P).side
}

// Says is the verdict in the word that every page has for it.
func (v Verdict) Says() string {
	if v.Word == Unknown {
		return string(Unknown)
	}
	return rungOf(v.P).says
}

// Holds reports whether the draws bear the claim.
func (v Verdict) Holds() bool { return v.side() == "holds" }

// Firm reports whether they hardly leave a doubt of it.
func (v Verdict) Firm() bool { return v.Word == rungs()[0].word }

// Sides tells of a share of the draws whether it leaves hardly a doubt that something holds, or that it
// does not.
func Sides(p float64) (holds, fails bool) {
	list := rungs()
	return p >= list[0].from, p < list[len(list)-2].from
}

// SaysNothing reports whether a claim is true of any drink.
func (v Verdict) SaysNothing() bool { return v.Outcome.Logic == Always }

// FirmFrom is the share of the draws from which on hardly a doubt is left of something.
func FirmFrom() float64 { return rungs()[0].from }

// LikelyFrom is the share of the draws from which on something is called likely.
func LikelyFrom() float64 {
	list := rungs()
	return list[slices.IndexFunc(list, func(r rung) bool { return r.side != list[0].side })-1].from
}

// Unclear reports whether the draws leave the claim open.
func (v Verdict) Unclear() bool { return v.side() == "unclear" }

// Decides reports whether something must be done about it before it is said: it fails, or
// something unknown decides it.
func (v Verdict) Decides() bool { return v.side() == "fails" || v.Word == Unknown }

// Check gives the verdict on a claim.
func (c *Claim) Check(env Env) (Verdict, error) {
	o, err := c.Evaluate(env, nil)
	if err != nil {
		return Verdict{}, err
	}
	v := verdictOf(o)
	if v.Word == Unknown {
		v.Settle, v.Also, err = c.settling(env, o)
	}
	return v, err
}

// verdictOf is that of an outcome: of ends that say the same, the one that says it less surely.
func verdictOf(o Outcome) Verdict {
	const half = 0.5
	v := Verdict{P: o.Sure, Hurt: o.Sure, Help: o.May, Outcome: o}
	if math.Abs(o.May-half) < math.Abs(o.Sure-half) {
		v.P = o.May
	}
	v.Word = rungOf(v.P).word
	if apart := unit.LimitOf("what the unknown may shift", "").High; o.May-o.Sure > apart && rungOf(o.Sure).side != rungOf(o.May).side {
		v.Word, v.P = Unknown, math.NaN()
	}
	return v
}

// settling finds the unknown without which the ends come nearest to each other, half of its most standing for
// it, as if it had been read; and those that must be known besides, in that order, until the ends say the same
// whether there is none of them all or their most.
func (c *Claim) settling(env Env, open Outcome) (first *Gap, also []*Gap, err error) {
	const half = 0.5
	list := make([]*Gap, len(open.Gaps))
	apart := map[string]float64{}
	for i := range open.Gaps {
		list[i] = &open.Gaps[i]
		o, err := c.Evaluate(env, read(half, list[i]))
		if err != nil {
			return nil, nil, err
		}
		apart[list[i].Key] = o.May - o.Sure
	}
	if len(list) == 0 {
		return nil, nil, nil
	}
	slices.SortStableFunc(list, func(a, b *Gap) int { return cmp.Compare(apart[a.Key], apart[b.Key]) })
	for n := 1; n < len(list); n++ {
		settled := true
		for _, share := range []float64{0, 1} {
			o, err := c.Evaluate(env, read(share, list[:n]...))
			if err != nil {
				return nil, nil, err
			}
			settled = settled && verdictOf(o).Word != Unknown
		}
		if settled {
			return list[0], list[1:n], nil
		}
	}
	return list[0], list[1:], nil
}

// read sets gaps to a share of their most, as if they had been read; to none where that is nothing that anybody
// would expect.
func read(share float64, list ...*Gap) map[string]float64 {
	at := map[string]float64{}
	for _, g := range list {
		if at[g.Key] = share; g.Loose || math.IsInf(most(g.Most), 1) {
			at[g.Key] = 0
		}
	}
	return at
}

func most(col []float64) float64 {
	m := math.Inf(-1)
	for _, x := range col {
		m = max(m, x)
	}
	return m
}
