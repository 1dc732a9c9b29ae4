package prep

import (
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
)

// Clarifying is how a liquid is made clear.
type Clarifying struct {
	By      string    // milk, egg white, gelatine, agar or centrifuge
	Collect []float64 // grams of the clear liquid
	Celsius float64   // NaN if not stated; milk asks for it
}

// Clarify takes out what makes a pot cloudy and collects grams of what is clear. The agent
// is a pot of its own.
//
// Milk is stirred in and curdles with the acid of the pot (Curdle). All else holds back what
// is not dissolved, by data/phases.csv as a filter does: egg white in its raft, gelatine and
// agar in their gel, a centrifuge by weight. Of the agent most stays behind with it (group
// agent of that table); its water and what that has dissolved go with the liquid:
//
//	kept = passed·x·collect / Σ passed·x     over the pot and its agent
//
// Valid for juices, brews and mixes of a bar that are clear afterwards. Limits: nobody has
// measured these shares for a bar's liquids, so their ranges are wide. Egg white and gelatine
// bind tannins and bitter substances, as curd does: what they lose is unknown. The agent
// stays an ingredient, with its allergens and cautions. It is an error to collect more than
// passes.
func Clarify(pot, agent *ledger.Pot, c Clarifying, f Factors) (Outcome, error) {
	if c.By == drink.ByMilk {
		both := pot.Copy()
		both.Join(agent)
		out, err := Curdle(both, c.Collect, "acid", c.Celsius, f)
		if err == nil {
			*pot = *both
		}
		return out, err
	}
	m := newFilter(c.By, f)
	of := &filter{extraction: m.extraction, through: c.By, agent: true, passed: m.passed, part: m.part}
	liquor := passing(pot, m)
	for d, x := range passing(agent, of) {
		liquor[d] += x
	}
	// guard: no more than is clear
	if c.Collect[0] > liquor[0] {
		return Outcome{}, unlike("collect %s g: only about %s g are clear after %s", c.Collect[0], liquor[0], c.By)
	}
	m.part = partOf(c.Collect, liquor)
	of.part = m.part
	out := Outcome{Lost: apply(pot, m).Plus(apply(agent, of))}
	m.extracted(pot)
	pot.Join(agent)
	if bindsTannin[c.By] {
		forgetBound(pot)
		out.note("%s binds tannins and bitter substances: how much of them is left is not known", c.By)
	}
	return out, nil
}

// bindsTannin are the agents of protein.
var bindsTannin = map[string]bool{"egg white": true, "gelatine": true}

// forgetBound makes unknown what proteins bind (data/partition.csv, others).
func forgetBound(pot *ledger.Pot) {
	for row := range pot.Rows {
		forgetOf(pot, row, "others")
	}
}
