package caution

import (
	"encoding/csv"
	"slices"
	"strconv"
	"strings"
	"sync"

	"sipsum/data"
	"sipsum/internal/constituent"
)

// The triggers of data/cautions.csv.
const (
	byMark    = "mark"
	byGroup   = "group"
	byStep    = "step"
	byAmount  = "amount"
	byABV     = "abv"
	byUnknown = "unknown"
)

// row is one caution and its trigger.
type row struct {
	code   string
	rules  string // empty = any
	when   string
	key    string // mark, group, step or constituent
	basis  string // of an amount; for unknown, the mark that must be there
	atOnce bool   // the limit itself triggers
	limit  float64
	unit   string
	exempt []string // words in the drink's name
	text   string
	source string
}

var table = sync.OnceValue(func() []row {
	file, err := data.FS.Open("cautions.csv")
	if err != nil {
		panic("caution: " + err.Error())
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("caution: cautions.csv: " + err.Error())
	}
	var all []row
	for _, f := range records[1:] {
		r := row{code: f[0], rules: f[1], when: f[2], key: f[3], basis: f[4], atOnce: f[5] == "at least", unit: f[7], text: f[9], source: f[10]}
		if f[6] != "" {
			if r.limit, err = strconv.ParseFloat(f[6], 64); err != nil {
				panic("caution: cautions.csv: " + r.code + ": " + err.Error())
			}
		}
		if f[8] != "" {
			r.exempt = strings.Split(f[8], "|")
		}
		if r.when == byAmount && constituent.Must(constituent.ID(r.key)).Unit != r.unit {
			panic("caution: cautions.csv: " + r.code + ": the limit is not in the unit of " + r.key)
		}
		all = append(all, r)
	}
	return all
})

// excuses reports whether the drink's name holds a word that lifts the caution.
func (r *row) excuses(name string) (word string, found bool) {
	for _, have := range strings.FieldsFunc(strings.ToLower(name), func(c rune) bool { return c < 'a' || c > 'z' }) {
		if slices.Contains(r.exempt, have) {
			return have, true
		}
	}
	return "", false
}
