package acidity

import (
	"math"
	"slices"
	"strings"

	"sipsum/internal/amount"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/source"
)

// What tables say of pH: of a food, and of what is brewed from a dry one.
const (
	publishedPH constituent.ID = "PH"
	brewedPH    constituent.ID = "pH-brewed"
)

// Calibration is a published pH on which a pH rests: of a food, or of what is known of
// its group.
type Calibration struct {
	Food      food.ID
	Group     string  // where nobody has published one of the food itself
	Brewed    bool    // of what is brewed from the food
	Parted    bool    // the pH at which the food parts, which it has: it lies at it or below
	Moved     bool    // the pH of the composition lies outside what is known of the group
	Low, High float64 // of what has been published, with what instruments and laboratories are off by
	Source    string  // ids of the food's table's works, separated by spaces
}

// evidence is what has been published of a pH.
type evidence struct {
	central, low, high float64
	group              string // of a group only
	brewed             bool
	atMost             []float64 // an upper limit and no more: what parted milk says
	source             string
}

// evidenceOf tells what is known of a food's pH: what is published of itself, else of
// what is brewed from it, else of its group.
func evidenceOf(f *food.Food) (evidence, bool) {
	for _, id := range []constituent.ID{publishedPH, brewedPH} {
		value, ok := f.Value(id)
		if !ok || !food.Stated(value.Amount) || source.IsFromMemory(value.Source) {
			continue
		}
		e := evidence{central: value.Amount, brewed: id == brewedPH, source: value.Source}
		e.low, e.high = publishedRange(value)
		e.central = inside(e.low, e.high, e.central)
		return e, true
	}
	const middle = 0.5
	if f.Group == "" && !f.Chemical && !statesIons(f) {
		any := SpanOf("a food of no group")
		return evidence{central: middle * (any.Low + any.High), low: any.Low, high: any.High, group: noGroup}, true
	}
	group, ok := food.GroupOf(f.Group)
	if !ok || group.PHHigh == 0 {
		return evidence{}, false
	}
	return evidence{central: middle * (group.PHLow + group.PHHigh), low: group.PHLow, high: group.PHHigh, group: f.Group, source: group.PHSource}, true
}

// inside brings a central value within the 10 and 90 % of a rectangular range, so that it
// lies in its own interval, and beside another measurement too.
func inside(low, high, central float64) float64 {
	const tail = 0.1
	edge := tail * (high - low)
	return min(max(central, low+edge), high-edge)
}

// noGroup is what a food is that nobody has put into a group.
const noGroup = "food"

// statesIons reports whether somebody has stated all that decides a food's pH: its
// potassium, its chloride and its acids, none included.
func statesIons(f *food.Food) bool {
	return !slices.ContainsFunc([]constituent.ID{Potassium, Chloride, constituent.OrganicAcids}, func(id constituent.ID) bool {
		value, ok := f.Value(id)
		return !ok || !food.Stated(value.Amount)
	})
}

func (e evidence) calibration(id food.ID) Calibration {
	return Calibration{Food: id, Group: e.group, Brewed: e.brewed, Parted: e.atMost != nil, Low: e.low, High: e.high, Source: e.source}
}

// ofEspresso is the evidence for a brew as strong as espresso, which reads higher than
// filter coffee of the same bean. Of a group it holds as it stands.
func (e evidence) ofEspresso() evidence {
	if e.group == "" {
		const middle = 0.5
		over := SpanOf("espresso over filter")
		e.low, e.high, e.central = e.low+over.Low, e.high+over.High, e.central+middle*(over.Low+over.High)
	}
	return e
}

// hundredth rounds a pH as it is published.
func hundredth(pH float64) float64 {
	const digits = 100
	return math.Round(digits*pH) / digits
}

// draw draws the pH anywhere within the range.
func (e evidence) draw(ens estimate.Ensemble, id food.ID) []float64 {
	if e.atMost != nil {
		return e.atMost
	}
	col := ens.Column(estimate.Input{
		Central: e.central, Shape: estimate.Uniform, Low: e.low, High: e.high,
		Stream: ens.Stream("unmeasured", string(publishedPH), id.Table, id.Code),
	})
	ens.Journal.Write(estimate.Tables, "published pH of "+id.String(), col)
	return col
}

// target gives the pH that a food has in each draw, by what its composition makes of it
// and what is published, which counts by gain; bare: its acids do not bound it, since
// nobody has stated what they are neutral by.
func (e evidence) target(own, published []float64, gain float64, bare bool) []float64 {
	target := make([]float64, len(own))
	outside := bare || own[0] < e.low || own[0] > e.high
	for d, h := range own {
		switch {
		case e.atMost != nil:
			target[d] = min(h, e.atMost[d])
		case e.group == "":
			target[d] = h + gain*(published[d]-h)
		case outside:
			target[d] = published[d]
		default:
			target[d] = min(max(h, e.low), e.high)
		}
	}
	return target
}

// publishedRange gives where the pH of a food may lie: as published, with what a meter is
// off by. One work says nothing of other laboratories and crops, so the range is at least
// what such works differ by; of several the mean is known better by as many times.
func publishedRange(value food.Value) (low, high float64) {
	low, high = value.Amount, value.Amount
	if food.Stated(value.Low) && food.Stated(value.High) {
		low, high = value.Low, value.High
	}
	works := len(strings.Fields(value.Source))
	meter, apart := amount.MustInstrument(amount.ReadPH).Half, SpanOf("pH from one work")
	if works > 1 {
		low, high = low-meter, high+meter
	}
	times := float64(max(works, 1))
	return hundredth(min(low, value.Amount+apart.Low/times)), hundredth(max(high, value.Amount+apart.High/times))
}
