package jsonreport

import (
	"sipsum/internal/claims"
	"sipsum/internal/sheet"
)

// saidClaim is a claim of the drink with its verdict.
type saidClaim struct {
	Say     string      `json:"say"`
	Check   string      `json:"check"`
	Verdict string      `json:"verdict"`
	P       number      `json:"probability"` // null where the unknown decides
	Hurt    number      `json:"probability_low"`
	Help    number      `json:"probability_high"`
	Figure  saidFigure  `json:"figure"`
	Line    string      `json:"line"`
	Weakest *saidLink   `json:"weakest,omitempty"`
	Settle  *saidGap    `json:"settle,omitempty"`
	Also    []saidGap   `json:"settle_also,omitempty"` // what else must be known, where that alone does not settle it
	Nearest *saidWorld  `json:"nearest,omitempty"`
	Closes  *saidCloses `json:"closes,omitempty"`
	Remarks []string    `json:"remarks,omitempty"`
	Among   string      `json:"ranked_among,omitempty"`
}

// saidFigure is the first figure of the check, in g, kJ, ml or one.
type saidFigure struct {
	Mean number `json:"mean"`
	Low  number `json:"low"`
	High number `json:"high"`
	UpTo number `json:"up_to"`
}

// saidLink is the weakest link; of a claim that hangs on none, the question alone.
type saidLink struct {
	Name   string `json:"name,omitempty"`
	Input  string `json:"input,omitempty"`
	Cause  string `json:"cause,omitempty"`
	Rests  string `json:"rests_on,omitempty"`
	Share  number `json:"share"`
	Asked  string `json:"asked_next"`
	Answer string `json:"answer"`
}

type saidGap struct {
	What  string `json:"what"`
	Line  string `json:"line"`
	Where string `json:"where"`
}

type saidWorld struct {
	Distance number       `json:"distance_sd"`
	Changes  []saidChange `json:"changes"`
}

type saidChange struct {
	Words  string   `json:"words"`
	Is     number   `json:"is"`
	To     number   `json:"to"`
	Unit   string   `json:"unit"`
	Line   string   `json:"line"`
	Among  string   `json:"published,omitempty"`
	Singly []number `json:"published_figures,omitempty"` // that stand alone
}

type saidCloses struct {
	Of      string `json:"of,omitempty"`
	Reading string `json:"reading"`
	Narrows number `json:"narrows"`
}

func claimsOf(s *sheet.Sheet) []saidClaim {
	list := []saidClaim{}
	for _, c := range s.Said {
		list = append(list, claimBody(c))
	}
	return list
}

func claimBody(c claims.Said) saidClaim {
	out := saidClaim{
		Say: c.Say, Check: c.Check, Verdict: string(c.Word), P: number(c.P), Hurt: number(c.Hurt), Help: number(c.Help),
		Figure: saidFigure{number(c.Figure.Mean), number(c.Figure.Low), number(c.Figure.High), number(c.UpTo)},
		Line:   c.Line(), Remarks: c.Remarks, Among: c.Among,
	}
	if l := c.Weakest; l != nil {
		out.Weakest = &saidLink{l.Name, l.Input, string(l.Cause), l.Rests, number(l.Share), l.Asked, l.Answer}
	}
	if g := c.Settle; g != nil {
		out.Settle = &saidGap{g.What, g.Settle, g.Where}
	}
	for _, g := range c.Also {
		out.Also = append(out.Also, saidGap{g.What, g.Settle, g.Where})
	}
	if w := c.Nearest; w != nil {
		out.Nearest = &saidWorld{Distance: number(w.Distance)}
		for _, x := range w.Changes {
			out.Nearest.Changes = append(out.Nearest.Changes, saidChange{x.Words, number(x.Is), number(x.To), x.Unit, x.Line, x.Among, numbersOf(x.Singly)})
		}
	}
	if r := c.Closes; r != nil {
		out.Closes = &saidCloses{r.Of, r.Reading, number(r.Narrows[0].By)}
	}
	return out
}
