package ladder

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"sipsum/internal/embedded"
)

// Rung is a word for how much of a whole a part is: a row of data/ladder.csv.
type Rung string

// The rungs, the highest first.
const (
	All       Rung = "all"
	NearlyAll Rung = "nearly all"
	Most      Rung = "most"
	Lead      Rung = "more than any other"
	Half      Rung = "about half"
	Third     Rung = "a third" // at least, as the two below it
	Quarter   Rung = "a quarter"
	Fifth     Rung = "a fifth"
	Some      Rung = "some"
)

// step is a rung with what it wants and how it is said.
type step struct {
	rung          Rung
	least, most   float64 // of the share; most is 0 where nothing limits it
	leads         bool
	brings, added string // with gaps for {what} and so on
}

// rungs are the steps of the ladder, the highest first.
var rungs = sync.OnceValue(func() []step {
	var list []step
	for _, row := range embedded.Rows("ladder.csv") {
		s := step{rung: Rung(row.Text("rung")), least: row.Number("least"), leads: row.Text("leads") == "yes", brings: row.Text("brings"), added: row.Text("added")}
		s.most, _ = row.Optional("most")
		list = append(list, s)
	}
	return list
})

// Height orders rungs: 0 is the highest.
func (r Rung) Height() int {
	return slices.IndexFunc(rungs(), func(s step) bool { return s.rung == r })
}

// Least is the least share of whoever stands on a rung.
func (r Rung) Least() float64 { return rungs()[r.Height()].least }

// dust is what arithmetic may leave of a whole.
const dust = 1e-9

// bears reports whether a standing reaches a rung. Of what is not known at all nothing is said.
func (s step) bears(of Standing) bool {
	return of.Least >= s.least-dust && (s.most == 0 || of.Most <= s.most+dust) && (of.Leads || !s.leads)
}

// highest gives the highest rung that a standing reaches.
func highest(of Standing) (step, bool) {
	for _, s := range rungs() {
		if s.bears(of) {
			return s, true
		}
	}
	return step{}, false
}

const hundred = 100

// said fills the gaps of a sentence. Shares are rounded away from what is claimed.
func said(words string, of Standing, fill ...string) string {
	least, most := math.Floor(hundred*(of.Least+dust)), math.Ceil(hundred*(of.Most-dust))
	if least == most {
		words = strings.ReplaceAll(words, "{least} to {most}", "{least}")
	}
	gaps := append(fill, "{least}", whole(least), "{most}", whole(most))
	return strings.NewReplacer(gaps...).Replace(words)
}

func whole(x float64) string { return strconv.FormatFloat(x, 'f', 0, 64) }
