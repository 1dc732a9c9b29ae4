package label_test

import (
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/caution"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/label"
	"sipsum/internal/sheet"
	"sipsum/internal/solution"
	"sipsum/internal/source"
)

// published is one row of testdata/label/cases.csv: a case that was published, or one worked
// out by hand from a published rule.
type published struct {
	id, rules, what, key, drink, holds, expected string
	ml                                           float64 // of the serving, of 1 g/ml; 0 where it does not matter
}

func publishedCases(t *testing.T) []published {
	t.Helper()
	file, err := os.Open("../../testdata/label/cases.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Equal(t, strings.Fields("id rules what key drink ml holds expected source"), rows[0])
	var all []published
	for _, r := range rows[1:] {
		c := published{id: r[0], rules: r[1], what: r[2], key: r[3], drink: r[4], holds: r[6], expected: r[7]}
		if r[5] != "" {
			c.ml, err = strconv.ParseFloat(r[5], 64)
			require.NoError(t, err, "%v", r)
		}
		require.NotEmpty(t, r[8], "%v has no source", r)
		require.NotContains(t, r[8], "from memory", "%v", r)
		all = append(all, c)
	}
	return all
}

// Every published case and every case by hand, through the code that a drink goes through.
func TestPublishedCases(t *testing.T) {
	for _, c := range publishedCases(t) {
		got, err := c.try(t)
		is := c.id + " " + c.rules + " " + c.what + " " + c.key + " of " + c.holds
		if assert.NoError(t, err, is) {
			assert.Equal(t, c.expected, got, is)
		}
	}
}

const hundred = 100

var errNone = errors.New("there is none")

// try gives what the program says of a case.
func (c published) try(t *testing.T) (got string, err error) {
	switch c.what {
	case "printed", "percent", "line", "served", "sum", "row", "note", "level":
		return c.onCard()
	case "accepts":
		return c.accepted()
	case "of reference":
		return c.ofReference()
	case "per kg":
		return fmt.Sprintf("%.0f", c.number(c.holds)/c.number(c.key)), nil
	case "holding":
		return c.holding(), nil
	case "added of":
		a := assayed(t, "drink: x\nserves: 1\nbuild: [100 g "+c.key+"]\n")
		return fmt.Sprintf("%g", a.Serving.Central(constituent.AddedSugar)/a.Serving.Central(constituent.Sugar)), nil
	case "kept":
		return c.kept(t), nil
	}
	return c.ofDrink(t)
}

// onCard reads a cell or a note of a card.
func (c published) onCard() (string, error) {
	made, err := label.Make(c.rules, c.facts())
	if err != nil {
		return "", err
	}
	switch c.what {
	case "note":
		return yes(strings.Contains(notes(made), c.key)), nil
	case "level":
		for _, n := range made.Notes {
			if m := regexp.MustCompile(c.key + ` [^;]*?(green|amber|red)`).FindStringSubmatch(n.Text); n.Kind == label.Levels && m != nil {
				return m[1], nil
			}
		}
		return "", errNone
	}
	for _, r := range made.Rows {
		if r.Key != c.key {
			continue
		}
		switch c.what {
		case "row":
			return "yes", nil
		case "line":
			return r.Line, nil
		case "percent":
			return r.Serving.Reference + r.Serving.DailyValue, nil
		case "served":
			return r.Serving.Printed, nil
		case "sum":
			return fmt.Sprintf("%.2f kJ", *r.On(made.Basis).Value), nil
		}
		return r.On(made.Basis).Printed, nil
	}
	return "no", nil
}

// facts sets all that a card reads to a known 0, then to what the case holds.
func (c published) facts() label.Facts {
	amounts := map[constituent.ID]float64{}
	fields := strings.Fields(c.holds)
	for i := 0; i+1 < len(fields); i += 2 {
		amounts[constituent.ID(fields[i])] = c.number(fields[i+1])
	}
	for _, id := range []constituent.ID{"WATER", "ASH", "CO2"} {
		amounts[id] += 0
	}
	water := c.ml // what the other parts of the mass leave
	for _, id := range []constituent.ID{"PROCNT", "FAT", "CHOCDF", "ALC"} {
		water -= amounts[id]
	}
	amounts["WATER"] = max(water, 0)
	f := facts(c.ml, amounts)
	f.ServingG = c.ml
	return f
}

func (c published) number(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(c.id + ": " + err.Error())
	}
	return x
}

func (c published) accepted() (string, error) {
	works, err := label.Explain(c.rules, c.facts())
	if err != nil {
		return "", err
	}
	for _, w := range works {
		if w.Row == c.key && w.Accepted != nil {
			return w.Accepted.Low + " to " + w.Accepted.High, nil
		}
	}
	return "", errNone
}

// ofReference takes the rounding of percentages of the rules to a daily value that no drink
// is under any more: the daily values before 2016, and of constituents without a row.
func (c published) ofReference() (string, error) {
	text, ok := label.WholePercent(c.rules, hundred*c.number(c.key)/c.number(c.holds))
	if !ok {
		return "", errNone
	}
	return text, nil
}

func (c published) holding() string {
	fields := strings.Fields(c.holds)
	if needs, _ := solution.NeedsAssessment(c.number(fields[0]), c.number(fields[1]), c.key == "packed"); needs {
		return "assess"
	}
	return "keeps"
}

// kept heats as much of a constituent as of water, and gives what stays of it in per cent of
// the water.
func (c published) kept(t *testing.T) string {
	a := assayed(t, "drink: x\nserves: 1\nfoods: {x: {name: X, per: 100 g, values: {"+c.holds+": 100 g}, source: invented, allergens: []}}\n"+
		"components: {pan: {ingredients: [50 g core:water-pure, 50 g own:x], steps: [heat: {code: \""+c.key+"\"}]}}\nbuild: [10 g pan]\n")
	return fmt.Sprintf("%.4g", hundred*a.Serving.Central(constituent.ID(c.holds))/a.Serving.Central(constituent.Water))
}

// ofDrink reads what a whole drink declares.
func (c published) ofDrink(t *testing.T) (string, error) {
	a := assayed(t, c.file())
	s, err := sheet.Build("test", a, nil, func(string, string) (source.Work, bool) { return source.Work{}, false }, []string{c.rules})
	if err != nil {
		return "", err
	}
	switch c.what {
	case "caution":
		for _, found := range s.Allergens()[0].Cautions {
			if found.Code == c.key {
				return "yes", nil
			}
		}
		caution.Standing(c.key) // panics if no row warns of it
		return "no", nil
	case "contains":
		codes := []string{}
		for _, e := range s.Allergens()[0].Contains {
			codes = append(codes, e.Code)
		}
		return strings.Join(append(codes, map[bool][]string{true: {"-"}}[len(codes) == 0]...), " "), nil
	case "claim":
		for _, claim := range s.Cards()[0].Claims {
			if strings.EqualFold(claim.Claim, c.key) {
				return yes(claim.Allowed), nil
			}
		}
		return "", errNone
	case "poured", "reduced":
		for _, r := range s.Cards()[0].Rows {
			if r.Key == c.key {
				return strings.TrimSuffix(r.Serving.Printed+", "+r.Serving.DailyValue, ", "), nil
			}
		}
	}
	return "", errNone
}

var poured = regexp.MustCompile(`^([\d.]+) g (core:[\w-]+|[^{]+?)(?: \{(.*)\})?$`)

// file writes the drink of a case: "100 g core:oat-drink + 10 g mussel juice {WATER: 95 g}". Of
// an own food with values nobody says that it holds an allergen, of one without nobody looked.
func (c published) file() string {
	var foods, lines strings.Builder
	for i, part := range strings.Split(c.holds, " + ") {
		m := poured.FindStringSubmatch(part)
		of := m[2]
		if !strings.HasPrefix(of, "core:") {
			code := fmt.Sprintf("f%d", i)
			fmt.Fprintf(&foods, "  %s: {name: %q, per: 100 g, density: 1.00 g/ml, values: {%s}, source: invented%s}\n", code, of, m[3], looked(of))
			of = "own:" + code
		}
		fmt.Fprintf(&lines, "  - %s g %s\n", m[1], of)
	}
	text := fmt.Sprintf("drink: %q\nserves: 1\n", c.drink)
	if foods.Len() > 0 {
		text += "foods:\n" + foods.String()
	}
	if c.what == "reduced" {
		return text + "components:\n  pan:\n    ingredients:\n" + strings.ReplaceAll(lines.String(), "  - ", "    - ") + "    steps: [reduce: {to: 30 g}]\nbuild: [30 g pan]\n"
	}
	return text + "build:\n" + lines.String()
}

// looked says that somebody looked for allergens, but for a food whose name tells of one.
func looked(name string) string {
	if strings.Contains(name, "mussel") {
		return ""
	}
	return ", allergens: []"
}

func assayed(t *testing.T, text string) *assay.Assay {
	t.Helper()
	d, faults := drink.Parse("test", []byte(text), nil)
	a, err := assaytest.Run(context.Background(), d, faults, assaytest.Core(t), assaytest.Options{Seed: 1, Want: assay.Want{Whole: true}})
	if err != nil {
		panic(fmt.Sprintf("%v of\n%s", err, text))
	}
	return a
}

func yes(holds bool) string {
	if holds {
		return "yes"
	}
	return "no"
}
