package prep

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// Retention is one code of the USDA table of nutrient retention factors.
type Retention struct {
	Code    string
	Name    string
	Factors map[constituent.ID]float64 // share kept, 0..1
}

// roundedTo is the step of the published factors: they are multiples of 5 %.
const roundedTo = 0.05

var retentions = sync.OnceValue(func() map[string]Retention {
	table := map[string]Retention{}
	for _, row := range embedded.Rows("retention.csv") {
		r := Retention{Code: row.Text("code"), Name: row.Text("name"), Factors: map[constituent.ID]float64{}}
		for _, column := range row.Columns() {
			c, ok := constituent.Find(column)
			if !ok {
				continue // the code, the name, the source
			}
			if percent, stated := row.Optional(column); stated {
				r.Factors[c.ID] = percent / unit.Hundred
			}
		}
		table[r.Code] = r
	}
	return table
})

// FindRetention gives a code of the retention table; zeros in front may be left
// out.
func FindRetention(code string) (Retention, bool) {
	const digits = 4
	if pad := digits - len(code); pad > 0 {
		code = strings.Repeat("0", pad) + code
	}
	r, ok := retentions()[code]
	return r, ok
}

func (a at) heat(s *drink.Heat) (Outcome, error) {
	retention, ok := FindRetention(s.Code)
	if !ok && s.Code != "" {
		return Outcome{}, fail.New(fail.Wrong, `unknown retention code "`+s.Code+`"`, "use a code of the USDA retention table, such as 2151")
	}
	var out Outcome
	if !s.Stated() {
		out = Heat(a.pot, retention, a.Factors)
		a.warnSplit(&out)
		return out, nil
	}
	hot, err := a.boiling(s.Boil, nil)
	if err != nil {
		return out, err
	}
	if ok {
		out = Heat(a.pot, retention, a.Factors)
	} else {
		hot.fade(a.pot, &out)
	}
	if !ok {
		warmAlcohol(a.pot, &out)
	}
	a.splitHot(hot, &out)
	return out, nil
}

// warmAlcohol says that alcohol goes in the heat, by how much nobody has said; a reading tells.
func warmAlcohol(pot *ledger.Pot, out *Outcome) {
	const some = 0.004 // of the mass: half a per cent by volume, our own bound of what is worth a word
	if pot.Central(constituent.Alcohol) < some*pot.Central(constituent.Mass) {
		return
	}
	for row := range pot.Rows {
		ledger.Warm(pot, row)
	}
	out.note("alcohol leaves a hot pot, and none of it counts as gone here: of what was stirred in and simmered 15 min about 40 %% stay (USDA retention factors, code 5004: heat: {code: \"5004\"}); - measured: {abv: …} behind this step tells it")
}

// heated is what heat may make: a code says nothing of sugars.
func heated(s *drink.Heat) []constituent.ID {
	if s.Stated() {
		return slices.Clone(invertSugar)
	}
	return nil
}

// Heat keeps what the published factors of a code say. Nothing evaporates: the
// yield of a recipe is its own step. No code has a factor of sulphur dioxide: it becomes
// unknown.
func Heat(pot *ledger.Pot, retention Retention, f Factors) Outcome {
	out := Outcome{Lost: apply(pot, &heating{retention, f, map[constituent.ID][]float64{}})}
	doubt(pot, 0)
	return out
}

type heating struct {
	retention Retention
	factors   Factors
	drawn     map[constituent.ID][]float64
}

func (m *heating) Share(_ ledger.Row, c *constituent.Constituent, share []float64) {
	factor, ok := m.retention.Factors[c.ID]
	if !ok || factor == 1 {
		estimate.Fill(share, 1)
		return
	}
	col, ok := m.drawn[c.ID]
	if !ok {
		low, high := max(factor-roundedTo/2, 0), min(factor+roundedTo/2, 1)
		col = m.factors.Factor(string(c.ID), estimate.Input{Central: factor, Shape: estimate.Uniform, Low: low, High: high})
		m.drawn[c.ID] = col
	}
	copy(share, col)
}
