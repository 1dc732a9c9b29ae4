package minutes

import "sipsum/internal/drink"

// Clock is when glasses are ready, in minutes after the first step of finish that says how long it takes.
type Clock struct {
	First, Last float64 // the first glass is ready, and the last
	Stood       float64 // how long the first glass has stood since its pour when the last is ready
	LastStood   float64 // and the last; as long, where a step with all of them is the last
	Over        float64 // by how much that is longer than the drink says it takes; 0 if it is not
	Tasks       []drink.Task
}

// Waited is how long the first glass has waited for the last.
func (c *Clock) Waited() float64 { return c.Stood - c.LastStood }

// clockOf goes through the steps; nil if none says how long it takes.
func clockOf(d *drink.Drink) *Clock {
	if len(d.Tasks) == 0 {
		return nil
	}
	c := &Clock{Tasks: d.Tasks}
	poured := false // a step was done glass by glass: since then they stand
	var first, last float64
	for _, t := range d.Tasks {
		takes, rounds := t.Takes.Number, 1.0
		if t.Each {
			rounds = float64((d.Serves + t.Hands - 1) / t.Hands)
		}
		c.First, c.Last = c.Last+takes, c.Last+takes*rounds
		if t.Each && !poured {
			poured, first, last = true, c.First, c.Last
		}
	}
	if poured {
		c.Stood, c.LastStood = c.Last-first, c.Last-last
	}
	if d.Takes != nil {
		c.Over = max(c.Last-d.Takes.Number-d.Takes.Half, 0)
	}
	return c
}
