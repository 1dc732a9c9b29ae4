package claim

import (
	"math"
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
	Outcome Outcome
}

// rung is a row of data/claim_verdicts.csv.
type rung struct {
	word Word
	from float64
	side string
}

var rungs = sync.OnceValue(func() []rung {
	var list []rung
	for _, row := range embedded.Rows("claim_verdicts.csv") {
		list = append(list, rung{Word(row.Text("verdict")), row.Number("from"), row.Text("side")})
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
		v.Settle, err = c.settling(env, o)
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

// settling finds the unknown without which the ends come nearest to each other. Half of its most
// stands for it, as if it had been read.
func (c *Claim) settling(env Env, open Outcome) (*Gap, error) {
	const asRead = 0.5
	var best *Gap
	least := math.Inf(1)
	for i, g := range open.Gaps {
		share := asRead
		if g.Loose || math.IsInf(most(g.Most), 1) {
			share = 0
		}
		o, err := c.Evaluate(env, map[string]float64{g.Key: share})
		if err != nil {
			return nil, err
		}
		if apart := o.May - o.Sure; apart < least {
			least, best = apart, &open.Gaps[i]
		}
	}
	return best, nil
}

func most(col []float64) float64 {
	m := math.Inf(-1)
	for _, x := range col {
		m = max(m, x)
	}
	return m
}
