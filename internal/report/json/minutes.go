package jsonreport

import (
	"math"

	"sipsum/internal/minutes"
)

// minutesForm is how a glass goes while it stands. Why is there where it is no liquid; then there is nothing else but
// the clock.
type minutesForm struct {
	Why   string        `json:"why,omitempty"`
	AtMin []number      `json:"at_min,omitempty"` // minutes after the pour
	Axes  []minutesAxis `json:"axes,omitempty"`
	Clock *clockForm    `json:"clock,omitempty"`
	Rates []rateForm    `json:"rates,omitempty"`

	// More ice is stated to melt than the heat of drink and room can melt, and less does.
	Unpaid bool `json:"melts_less_than_stated,omitempty"`
}

// minutesAxis is a figure at each of the times.
type minutesAxis struct {
	Key    string     `json:"key"` // temperature, co2, brix, titratable_acidity, ph, melted
	Unit   string     `json:"unit"`
	Points []interval `json:"points"`
	Write  string     `json:"write,omitempty"` // in the drink file, where a point is withheld for want of it
}

// clockForm is when the glasses are ready, in minutes after the first step of finish that says how long it takes.
type clockForm struct {
	First     number `json:"first_min"`
	Last      number `json:"last_min"`
	Stood     number `json:"first_stood_min"`
	LastStood number `json:"last_stood_min"`
	Over      number `json:"over_takes_min"`
}

// rateForm is something by which the glass was followed.
type rateForm struct {
	Name string `json:"name"`
	interval
	Stated bool   `json:"stated"`
	Source string `json:"source,omitempty"`
}

func minutesOf(c *minutes.Course) *minutesForm {
	if c == nil {
		return nil
	}
	out := &minutesForm{Why: c.Why, Unpaid: c.Unpaid}
	if k := c.Clock; k != nil {
		out.Clock = &clockForm{number(k.First), number(k.Last), number(k.Stood), number(k.LastStood), number(k.Over)}
	}
	for _, t := range c.Times {
		out.AtMin = append(out.AtMin, number(t))
	}
	for _, a := range c.Axes {
		axis := minutesAxis{Key: a.Key, Unit: minutes.Units[a.Key], Write: a.Write}
		for _, p := range a.Points {
			point := intervalOf(p.Result)
			if p.Why != "" { // what bounds it is no interval
				none := number(math.NaN())
				point = interval{Mean: none, SD: none, Low: none, High: none, Why: p.Why}
			}
			point.Unit = axis.Unit
			axis.Points = append(axis.Points, point)
		}
		out.Axes = append(out.Axes, axis)
	}
	for _, r := range c.Rates {
		out.Rates = append(out.Rates, rateForm{r.Name, intervalOf(r.Result), r.Stated, r.Source})
	}
	return out
}
