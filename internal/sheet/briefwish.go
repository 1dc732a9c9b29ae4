package sheet

import (
	"math"
	"slices"
	"strings"

	"sipsum/internal/assay"
	verdicts "sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/houserules"
)

// wish is something that is to hold of a drink: a claim of its file, a house rule, that it fits its glass.
type wish struct {
	kind   string
	quote  string                           // as it is spoken of
	margin func(a *assay.Assay) []float64   // by how much it holds, at central values and in each draw; nil: nobody can tell
	share  func(drawn *assay.Assay) float64 // of the draws in which it holds, whatever is unknown; NaN: nobody can tell
	from   float64                          // of them on it holds
	liquid bool                             // it asks of the liquid
}

func (w wish) holds(drawn *assay.Assay) bool { return w.share(drawn) >= w.from }

// wishes lists what is to hold: what does not, in the order in which it is mended, and what does and is
// to be kept.
func (p *proposer) wishes() (mend, keep []wish) {
	var open []wish // what something unknown decides: perhaps an amount makes it too little to matter
	sort := func(w wish, holds, fails bool) {
		switch {
		case holds:
			keep = append(keep, w)
		case fails:
			mend = append(mend, w)
		default:
			open = append(open, w)
		}
	}
	for i, said := range p.s.Said {
		read, err := verdicts.Parse(said.Check, p.s.Assay.Drink.Claims[i].CheckAt)
		if err != nil || ranks(read) || said.Unclear() {
			continue
		}
		sort(p.claimed(ChangeClaim, said.Say, read, holding(verdicts.Verdict.Holds)), said.Holds(), said.Word != verdicts.Unknown)
	}
	p.rules(sort)
	if g := p.s.Assay.Drink.Glass; g != nil {
		sort(wish{
			kind: ChangeGlass, quote: "the glass of " + g.String(), from: 1,
			margin: func(a *assay.Assay) []float64 { return []float64{g.Base() - a.Filled.Mean} },
			share: func(a *assay.Assay) float64 {
				if fits(a) {
					return 1
				}
				return 0
			},
		}, fits(p.s.Assay), true)
	}
	return append(mend, open...), keep
}

// rules are the lines of house rules that an amount can move: limits, and the volume of a serving.
func (p *proposer) rules(sort func(w wish, holds, fails bool)) {
	if p.s.House == nil {
		return
	}
	limits := p.s.House.Rules.Limits
	for _, l := range p.s.House.Lines {
		var w wish
		switch {
		case l.Key == "limits" && len(limits) > 0:
			of := limits[0]
			limits = limits[1:]
			read, err := verdicts.Parse(of.Check, of.CheckAt)
			if err != nil || ranks(read) {
				continue
			}
			w = p.claimed(ChangeRule, l.Rule, read, holding(verdicts.Verdict.Firm))
		case l.Key == "volume":
			w = volumeWithin(l.Rule, p.s.House.Rules.Volume)
		default:
			continue
		}
		sort(w, l.Verdict == houserules.Pass, l.Verdict == houserules.Fails)
	}
}

// volumeWithin is the wish that the volume of a serving lies between two ends.
func volumeWithin(rule string, ends *drink.Within) wish {
	inside := func(a *assay.Assay) []float64 {
		var list []float64
		for _, x := range columnOf(a) {
			list = append(list, min(x-ends.Low, ends.High-x))
		}
		return list
	}
	return wish{kind: ChangeRule, quote: quoted(rule), from: holding(verdicts.Verdict.Firm), margin: inside, share: func(a *assay.Assay) float64 {
		n, draws := 0.0, inside(a)[1:]
		for _, x := range draws {
			if x >= 0 {
				n++
			}
		}
		return n / float64(len(draws))
	}}
}

func columnOf(a *assay.Assay) []float64 {
	return slices.Concat([]float64{a.Volume.Mean}, a.Volume.Draws)
}

// claimed is the wish that an expression holds.
func (p *proposer) claimed(kind, say string, read *verdicts.Claim, from float64) wish {
	return wish{
		kind: kind, quote: quoted(say), from: from, liquid: read.OfLiquid(),
		margin: func(a *assay.Assay) []float64 {
			o, err := read.Evaluate(claims.NewGlass(a, p.declared), nil)
			if err != nil || slices.ContainsFunc(o.Margin, func(x float64) bool { return math.IsNaN(x) || math.IsInf(x, 0) }) {
				return nil
			}
			return o.Margin
		},
		share: func(a *assay.Assay) float64 {
			v, err := read.Check(claims.NewGlass(a, p.declared))
			if err != nil {
				return math.NaN()
			}
			return v.P
		},
	}
}

// ranks reports whether a claim asks of a table, in which no amount of a drink moves a food.
func ranks(read *verdicts.Claim) bool {
	some, _ := read.OfTables()
	return some
}

func (p *proposer) declared(word string) (bool, error) { return declares(p.s.Allergens(), word) }

// holding is the least share of the draws of which verdicts (data/claim_verdicts.csv) say something.
func holding(says func(verdicts.Verdict) bool) float64 {
	from := 1.0
	for _, row := range embedded.Rows("claim_verdicts.csv") {
		if says(verdicts.Verdict{Word: verdicts.Word(row.Text("verdict")), P: row.Number("from")}) {
			from = min(from, row.Number("from"))
		}
	}
	return from
}

// short is by how much a margin has to shift for a wish to hold in as many draws as it has to.
func (w wish) short(margin []float64) float64 {
	if len(margin) < 2 {
		return -margin[0]
	}
	draws := slices.Sorted(slices.Values(margin[1:]))
	at := int((1 - w.from) * float64(len(draws)))
	return -draws[min(at, len(draws)-1)]
}

// mostQuoted is how much of a sentence is said where another speaks of it: our own bound.
const mostQuoted = 36

// quoted is what is said of a sentence: its beginning, to the end of a word.
func quoted(say string) string {
	say = clean.Prose(strings.TrimSuffix(strings.TrimSpace(say), "."))
	if letters := []rune(say); len(letters) > mostQuoted {
		say = string(letters[:mostQuoted])
		if at := strings.LastIndex(say, " "); at > 0 {
			say = say[:at]
		}
		say = strings.TrimRight(say, " ,;:") + " …"
	}
	return "“" + say + "”"
}
