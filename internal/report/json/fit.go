package jsonreport

import (
	"io"
	"math"

	"sipsum/internal/claim"
	"sipsum/internal/composition"
	"sipsum/internal/fit"
	"sipsum/internal/sheet"
)

// fitDocument is sipsum.fit/1.
type fitDocument struct {
	head
	Line      string       `json:"line"`
	Met       bool         `json:"met"`
	Proven    bool         `json:"proven"`
	Runs      int          `json:"runs"`
	Low       number       `json:"probability_low"`
	High      number       `json:"probability_high"`
	LeastLow  number       `json:"least_movement_probability_low"` // null: the answer is the least movement
	LeastHigh number       `json:"least_movement_probability_high"`
	None      bool         `json:"no_amounts_meet_all"` // and that is proven
	Moves     []fitMove    `json:"moves"`
	Targets   []fitTarget  `json:"targets"`
	Together  []string     `json:"cannot_be_met_together"`
	StoppedBy []string     `json:"stopped_by"`
	Why       []string     `json:"why"`
	Beside    []besideBody `json:"serving"`
	Remarks   []string     `json:"remarks"`
	Cautions  []cautioned  `json:"cautions_moved"`
	Written   string       `json:"written,omitempty"`
}

type fitMove struct {
	Path   string `json:"path"`
	Of     string `json:"of"`
	Name   string `json:"name"`
	Before number `json:"before"`
	After  number `json:"after"`
	Unit   string `json:"unit"`
	From   number `json:"from"`
	To     number `json:"to"`
	Step   number `json:"step"`
	End    string `json:"at_its,omitempty"`
	Usual  bool   `json:"usual_range"`
}

type fitTarget struct {
	Text    string     `json:"target"`
	Says    string     `json:"says,omitempty"`
	Goal    bool       `json:"goal"`
	Met     bool       `json:"met"`
	Low     number     `json:"probability_low"`
	High    number     `json:"probability_high"`
	Figure  string     `json:"figure,omitempty"`
	Unit    string     `json:"unit,omitempty"`
	Before  fitFigure  `json:"before"`
	After   fitFigure  `json:"after"`
	Limit   number     `json:"limit"`
	Reaches number     `json:"reaches"`
	Gives   number     `json:"gives"`
	Settle  *saidGap   `json:"settle,omitempty"`
	Change  *fitChange `json:"change,omitempty"` // of a ready target: its probabilities are of this, draw by draw beside the drink as it is written
}

// fitChange is by what share of itself a figure moved.
type fitChange struct {
	Mean number `json:"mean"`
	Low  number `json:"low"`
	High number `json:"high"`
}

// fitFigure is a figure in the unit beside it; null where it is not known.
type fitFigure struct {
	Mean number `json:"mean"`
	Low  number `json:"low"`
	High number `json:"high"`
	UpTo number `json:"up_to"`
}

type besideBody struct {
	Figure string    `json:"figure"`
	Unit   string    `json:"unit"`
	Before fitFigure `json:"before"`
	After  fitFigure `json:"after"`
}

// Fit writes sipsum.fit/1.
func Fit(w io.Writer, f *sheet.Fitted) error {
	d := fitDocument{
		head: headOf("sipsum.fit/1", f.Sheet), Line: f.Line, Met: f.Met, Proven: f.Proven, Runs: f.Runs, Low: number(f.Sure), High: number(f.May),
		LeastLow: number(f.Least[0]), LeastHigh: number(f.Least[1]), None: f.None,
		Moves: []fitMove{}, Targets: []fitTarget{}, Together: listed(f.Together), StoppedBy: listed(f.StoppedBy), Why: listed(f.Why),
		Beside: []besideBody{}, Remarks: listed(f.Remarks), Written: f.Written,
		Cautions: each(f.Raised, func(x sheet.Cautioned) cautioned { return cautioned(x.Caution) }),
	}
	for _, m := range f.Moves {
		d.Moves = append(d.Moves, fitMove{
			Path: m.Path, Of: m.Of, Name: m.Name, Before: number(m.Written.Number), After: number(m.Move.To), Unit: m.Written.Measure.Name,
			From: number(m.From), To: number(m.Range.To), Step: number(m.Step), End: m.End, Usual: m.Usual,
		})
	}
	for _, h := range f.Held {
		d.Targets = append(d.Targets, targetBody(h))
	}
	for _, b := range f.Beside {
		d.Beside = append(d.Beside, besideBody{b.Words, b.After.Unit, figureBody(b.Before), figureBody(b.After)})
	}
	return write(w, d)
}

func targetBody(h fit.Held) fitTarget {
	t := fitTarget{
		Text: h.Text, Says: h.Says, Goal: h.Goal, Met: h.Met, Low: number(h.Hurt), High: number(h.Help), Figure: h.Words, Unit: h.After.Unit,
		Before: figureBody(h.Before), After: figureBody(h.After), Limit: number(h.Limit), Reaches: number(h.Reaches), Gives: number(h.Gives),
	}
	if h.Settle != nil {
		t.Settle = gapBody(h.Settle)
	}
	if !math.IsNaN(h.Moved.Mean) {
		t.Change = &fitChange{number(h.Moved.Mean), number(h.Moved.Low), number(h.Moved.High)}
	}
	return t
}

func gapBody(g *claim.Gap) *saidGap { return &saidGap{g.What, g.Settle, g.Where} }

func figureBody(r composition.Result) fitFigure {
	return fitFigure{number(r.Mean), number(r.Low), number(r.High), number(r.UpTo)}
}

// listed is a list without elements where there is none, not null.
func listed(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}
