package fit

import (
	"context"
	"errors"
	"math"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/composition"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/optimise"
	"sipsum/internal/unit"
)

// Bench is what a drink is fitted with.
type Bench struct {
	Central  *assay.Plan // at central values alone
	Drawn    *assay.Plan // with the draws by which an answer is judged
	Drink    *drink.Drink
	Declared claims.Declared
	Still    bool         // no amount moves that vary does not name
	Beside   *assay.Assay // with draws: what ready targets are judged beside; nil: the drink as it is written
}

// Aim is a target with its text.
type Aim struct {
	*claim.Target
	Place fail.Place
	Ready
}

// Ready is what a target is for that nobody wrote. It is judged draw by draw beside the drink as it
// is written, for whatever is uncertain of a food is so in both.
type Ready struct {
	Says        string  // empty: somebody wrote it
	Kept        bool    // it keeps what nobody wants moved
	Least, Most float64 // shares of the figure as it is written
	Change      bool    // it is met by its share of what was, whatever is unknown, and not by the number that is told
}

// Read reads the targets of a drink; what is wrong with them joins the faults.
func Read(d *drink.Drink, faults *fail.List) []Aim {
	var list []Aim
	goals := 0
	for _, target := range d.Targets {
		read, err := claim.ParseTarget(target.Check, target.Place)
		if err != nil {
			faults.Join(target.Place, err)
			continue
		}
		if read.Goal != nil {
			if goals++; goals > 1 {
				faults.Add(target.Place, "keep the one that matters, and write the others as limits: serving(SUGAR) <= 10 g", "a drink has one goal that is least or most, and this is another")
			}
		}
		list = append(list, Aim{Target: read, Place: target.Place})
	}
	return list
}

// Move is an amount of the answer.
type Move struct {
	Range
	To    float64
	AtEnd bool // of its range
}

// Changed reports whether the answer changes the amount.
func (m Move) Changed() bool { return m.leaves(m.To) }

// Held is a target at the answer.
type Held struct {
	Text string
	Ready
	Met  bool    // at central values, with what is unknown at the end that hurts
	Hurt float64 // the share of the draws in which it holds with the unknown at that end
	Help float64 // and at the other; of a goal both are NaN
	Goal bool    // it is least or most, and no condition
	Told
	Settle *claim.Gap // missed, or not sure: what would settle it; nil if nothing of it is unknown
}

// Told is the figure that a target is about, in the unit in which the target is written.
type Told struct {
	Words         string             // names it; empty: the target asks for no figure
	Before, After composition.Result // of the drink as it is written, and of the answer
	Limit         float64            // that it is held to; NaN where that is no number
	Reaches       float64            // missed: how near it could come with all others met; NaN: even then they are not, or nothing is missed
	Gives         float64            // by how much its limit would have to give for that
	Moved         estimate.Summary   // of a ready target that asks for one: by what share it moved, with what is unknown at either end; NaN: none is told
}

// Result is what a fit has found.
type Result struct {
	Moves  []Move
	Held   []Held
	Met    bool // every condition is
	Proven bool // nothing is better on the steps of the scale: with all met, nothing moves less
	Beside bool // nothing is better a step of one amount away, or of two
	None   bool // no amounts meet every target
	Runs   int

	Before, After *assay.Assay // with draws
	Sure, May     float64      // the share of the draws in which all conditions hold, with the unknown at either end
	Least         [2]float64   // those shares of the least movement, where the answer moves a little more to hold more surely; NaN: it is the least
	Together      []string     // conditions that cannot be met together
	Alone         bool         // it is one, missed whatever the others are
	StoppedBy     []string     // conditions without which the goal would be better
	Edges         []Edge       // steps beside the answer that cannot be made
	Open          bool         // targets that nothing decides were left out of the search
}

// Edge is a step of one amount that cannot be made.
type Edge struct {
	Move int // whose
	More bool
	Why  string
}

// TheGlass is the condition that a stated glass makes.
const TheGlass = "the glass"

// Fit finds the amounts. Errors are *fail.Error.
func (b Bench) Fit(ctx context.Context, aims []Aim) (*Result, error) {
	if _, err := b.Central.Run(ctx, nil, assay.Want{Draws: true}); err != nil {
		return nil, err
	}
	faults := &fail.List{}
	var ranges []Range
	if !b.Still || len(b.Drink.Vary) > 0 {
		ranges = Ranges(b.Drink, b.Central.Written(), faults)
	}
	if err := faults.Err(fail.Wrong); err != nil {
		return nil, err
	}
	j := newJudge(b, aims, ranges)
	if err := begin(ctx, j); err != nil {
		return nil, err
	}
	p := optimise.Problem{Eval: j.point, Scales: j.scales(), Most: mostRuns(b.Drink)}
	for _, r := range ranges {
		p.Variables = append(p.Variables, optimise.Variable{From: r.From, To: r.To, Step: r.Step, Start: r.Written.Number})
	}
	if _, err := j.with(ctx, j.Central, startOf(ranges)); err != nil { // what is wrong with the targets
		return nil, err
	}
	p, found, err := j.agreed(ctx, p)
	if errors.Is(err, optimise.ErrNoAmount) {
		return nil, fail.New(fail.Wrong, "no amount of vary is a multiple of the scale's step between its ends", "widen from and to, or state a finer scale")
	}
	if err != nil {
		return nil, err
	}
	res := &Result{Least: [2]float64{math.NaN(), math.NaN()}}
	if found, err = j.centred(ctx, p, found, res); err != nil {
		return nil, err
	}
	res.Met, res.Proven, res.Beside, res.None, res.Open, res.Runs = found.Met, found.Proven, found.Beside, found.None, j.open, found.Runs
	if found, err = j.surer(ctx, p, found, res); err != nil {
		return nil, err
	}
	for i, r := range ranges {
		x := found.At[i]
		res.Moves = append(res.Moves, Move{Range: r, To: x, AtEnd: x-r.From < r.Step || r.To-x < r.Step})
	}
	if err := j.judge(ctx, res, found); err != nil {
		return nil, err
	}
	if err := j.edges(ctx, res); err != nil {
		return nil, err
	}
	return res, j.stops(ctx, p, found, res)
}

// mostRuns is how many points a search may calculate of a drink.
func mostRuns(d *drink.Drink) int {
	l := unit.LimitOf("parts that a search of amounts calculates", "")
	return int(min(l.Low, l.High/float64(max(d.Parts(), 1))))
}

// Judge tells of a drink as it is written which targets it meets, and how surely. Errors are *fail.Error.
func (b Bench) Judge(ctx context.Context, aims []Aim) (*Result, error) {
	j := newJudge(b, aims, nil)
	if err := begin(ctx, j); err != nil {
		return nil, err
	}
	pt, err := j.with(ctx, b.Drawn, nil)
	if err != nil {
		return nil, err
	}
	res := &Result{Met: met(pt), Proven: true, Runs: 1}
	return res, j.judge(ctx, res, optimise.Solution{Point: pt})
}

func startOf(ranges []Range) []float64 {
	at := make([]float64, len(ranges))
	for i, r := range ranges {
		at[i] = r.Written.Number
	}
	return at
}

// Amounts gives what the answer pours, by path, where it differs from what is written.
func (r *Result) Amounts() amount.Amounts {
	other := amount.Amounts{}
	for _, m := range r.Moves {
		if m.Changed() {
			other[m.Path] = m.at(m.To)
		}
	}
	return other
}
