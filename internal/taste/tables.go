package taste

import (
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/source"
)

// factor is how sweet a substance is beside sucrose, by weight.
type factor struct{ value, low, high float64 }

// strength is a factor at a sweetness, in grams of sucrose in 100 g; at means nothing where one
// factor holds at any.
type strength struct {
	at float64
	factor
}

// sweetener is what is published of a substance, by strength.
type sweetener struct {
	constituent *constituent.Constituent
	strengths   []strength // none: no factor was found
	sources     []string
}

var sweeteners = sync.OnceValue(func() []sweetener {
	var list []sweetener
	for _, row := range embedded.Rows("taste_sweetness.csv") {
		c := constituent.Must(constituent.ID(row.Text("constituent")))
		if n := len(list); n == 0 || list[n-1].constituent != c {
			list = append(list, sweetener{constituent: c})
		}
		s := &list[len(list)-1]
		if _, ok := row.Optional("value"); ok && printable(row) {
			at, _ := row.Optional("at")
			s.strengths = append(s.strengths, strength{at, factor{row.Number("value"), row.Number("low"), row.Number("high")}})
			s.sources = appendOnce(s.sources, row.Text("source"))
		}
	}
	return list
})

// printable tells rows that somebody has seen in print, or that are our own and say so: what is
// from memory is kept to be looked up, and never used.
func printable(row embedded.Row) bool {
	return row.Text("read") != source.FromMemory && !source.IsFromMemory(row.Text("source"))
}

func appendOnce(list []string, text string) []string {
	for _, have := range list {
		if have == text {
			return list
		}
	}
	return append(list, text)
}

// at gives the factor at a sweetness, by straight lines between those published and level
// beyond them.
func (s sweetener) at(level float64) factor {
	list := s.strengths
	if level <= list[0].at || len(list) == 1 {
		return list[0].factor
	}
	for i := 1; i < len(list); i++ {
		if a, b := list[i-1], list[i]; level <= b.at {
			t := (level - a.at) / (b.at - a.at)
			between := func(x, y float64) float64 { return x + t*(y-x) }
			return factor{between(a.value, b.value), between(a.low, b.low), between(a.high, b.high)}
		}
	}
	return list[len(list)-1].factor
}

// most gives the highest factor at any strength.
func (s sweetener) most() float64 {
	most := 0.0
	for _, x := range s.strengths {
		most = max(most, x.high)
	}
	return most
}

// least gives the lowest factor at any strength.
func (s sweetener) least() float64 {
	least := s.most()
	for _, x := range s.strengths {
		least = min(least, x.low)
	}
	return least
}

// threshold is what is published of one compound and taste, in mg of the constituent per litre.
type threshold struct {
	taste       Taste
	constituent *constituent.Constituent
	low, high   float64 // 0: none was seen in print
	neutral     bool    // it is published to have no taste
	sources     []string
	why         string // there is none
}

var thresholds = sync.OnceValue(func() []*threshold {
	var list []*threshold
	for _, row := range embedded.Rows("taste_thresholds.csv") {
		c, of := constituent.Must(constituent.ID(row.Text("constituent"))), Taste(row.Text("taste"))
		if n := len(list); n == 0 || list[n-1].constituent != c || list[n-1].taste != of {
			list = append(list, &threshold{taste: of, constituent: c})
		}
		list[len(list)-1].add(row)
	}
	return list
})

// add takes a row in; what nobody has seen in print only says that nobody has.
func (t *threshold) add(row embedded.Row) {
	t.neutral = t.neutral || row.Text("kind") == "neutral"
	share := row.Number("share")
	found := false
	for _, column := range []string{"value", "low", "high"} {
		if x, ok := row.Optional(column); ok && printable(row) {
			x *= share
			if t.low == 0 || x < t.low {
				t.low = x
			}
			t.high, found = max(t.high, x), true
		}
	}
	switch {
	case found:
		t.sources = appendOnce(t.sources, row.Text("source"))
	case !printable(row):
		t.why = "no threshold was seen in print"
	case !t.neutral:
		t.why = row.Text("source")
	default:
		t.sources = appendOnce(t.sources, row.Text("source"))
	}
}

// constant is a row of data/taste_constants.csv.
type constant struct {
	factor
	source string
}

var constants = sync.OnceValue(func() map[string]constant {
	m := map[string]constant{}
	for _, row := range embedded.Rows("taste_constants.csv") {
		low, _ := row.Optional("low")
		high, _ := row.Optional("high")
		m[row.Text("what")] = constant{factor{row.Number("value"), low, high}, row.Text("source")}
	}
	return m
})

// Difference is the least change of a taste that a judge notices, as a share of what is there.
type Difference struct {
	Low, High float64 // %
	How       string  // what it moves with
	Source    string
}

// differences are by taste.
var differences = sync.OnceValue(func() map[Taste]Difference {
	m := map[Taste]Difference{}
	for _, row := range embedded.Rows("taste_differences.csv") {
		m[Taste(row.Text("taste"))] = Difference{row.Number("low"), row.Number("high"), row.Text("how"), row.Text("source")}
	}
	return m
})

// Notices gives the least change of a taste that a judge notices; none of it is published of most.
func Notices(t Taste) Difference { return differences()[t] }
