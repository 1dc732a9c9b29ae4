package sweep_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/contrast"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/recipe"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// everyNthPair is how many drinks lie between two that are compared in the sample.
const everyNthPair = 9

// compare sets the drink of a text against that of another, as the command does; nil where one of
// them is refused.
func (k *kitchen) compare(t *testing.T, texts ...string) *sheet.Compared {
	t.Helper()
	var found []*recipe.Recipe
	var heard []amount.Written
	for _, text := range texts {
		d, faults := drink.Parse("swept.drink.yaml", []byte(text), nil)
		r, err := recipe.Find(t.Context(), d, faults, k)
		if err != nil {
			return nil
		}
		w, err := contrast.Written(t.Context(), r)
		if err != nil {
			return nil
		}
		found, heard = append(found, r), append(heard, w)
	}
	var streams [2]amount.Streams
	streams[0], streams[1] = contrast.Streams(heard[0], heard[1])
	var both [2]*sheet.Sheet
	for i, r := range found {
		p := assay.Prepare(r, estimate.Ensemble{Seed: 1, N: draws + 1})
		p.Follow(streams[i])
		a, err := p.Run(t.Context(), nil, assay.Want{Figures: sheet.ComparedFigures(found[0].Drink, found[1].Drink), Intervals: true, Chemistry: true, Draws: true})
		if err != nil {
			return nil
		}
		if both[i], err = sheet.Build("sipsum", a, []source.Table{k.table}, k.work, []string{"eu", "us"}); err != nil {
			return nil
		}
	}
	return sheet.Compare(both[0], both[1])
}

// A random drink against itself is nothing, in zero intervals. Against another it is the opposite of
// the other against it, every word has a sign that the whole interval bears, and no page promises
// that something is not there.
func TestRandomDrinksCompared(t *testing.T) {
	k := newKitchen(t)
	const apart = 7 // a pair costs what some ten drinks do
	var numbers []int
	for i := 0; i < randomDrinks; i += apart {
		numbers = append(numbers, i)
	}
	before, compared := "", 0
	for _, number := range sample(numbers, everyNthPair) {
		text, _ := random(k, number)
		c := k.compare(t, text, text)
		if c == nil {
			continue
		}
		compared++
		for _, f := range c.Figures {
			if !f.None() {
				t.Errorf("drink %d against itself: %s: %+v\n%s", number, f.Constituent.ID, f.Difference, text)
			}
		}
		for _, l := range append(c.Liquids, c.Mass, c.Volume) {
			if !l.None() || l.Low != 0 || l.High != 0 {
				t.Errorf("drink %d against itself: %s: %+v\n%s", number, l.Kind, l.Difference, text)
			}
		}
		if !c.Same() || len(c.Words()) > 0 || len(c.Changes) > 0 {
			t.Errorf("drink %d is not the same as itself: %v %v", number, c.Words(), c.Changes)
		}
		if before != "" {
			wellSaid(t, k, before, text)
		}
		before = text
	}
	if compared < 10 {
		t.Errorf("%d drinks compared", compared)
	}
}

func wellSaid(t *testing.T, k *kitchen, a, b string) {
	t.Helper()
	ab, ba := k.compare(t, a, b), k.compare(t, b, a)
	for _, c := range []*sheet.Compared{ab, ba} {
		for _, w := range c.Words() {
			if strings.Contains(w.Text, "NaN") || strings.Contains(w.Text, "Inf") {
				t.Errorf("%s\n%s\n%s", w.Text, a, b)
			}
		}
	}
	for i, f := range ab.Figures {
		other := ba.Figures[i]
		if math.Abs(f.Mean+other.Mean) > rounding*(1+math.Abs(f.Mean)) || f.Sign() != -other.Sign() {
			t.Errorf("%s: %+v is not the opposite of %+v\n%s\n%s", f.Constituent.ID, f.Difference, other.Difference, a, b)
		}
		if f.Least > f.Low || f.Low > f.Mean || f.Mean > f.High || f.High > f.Most {
			t.Errorf("%s: out of order: %+v", f.Constituent.ID, f.Difference)
		}
	}
	for _, w := range ab.Words() {
		if sign := signOf(w.Text); sign == 0 || !bears(ab, w.About, sign) {
			t.Errorf("no interval bears %q\n%s\n%s", w.Text, a, b)
		}
	}
	for _, block := range ab.Leaf().Blocks {
		for _, line := range block.Lines {
			if strings.Contains(strings.ToLower(line.Sentence()), "free from") {
				t.Errorf("promises: %s", line.Sentence())
			}
		}
	}
}

// signOf reads which way a word goes.
func signOf(text string) int {
	text, _, _ = strings.Cut(text, ", less than a judge")
	for _, x := range []struct {
		word string
		sign int
	}{{"less sweet ", -1}, {" less ", -1}, {" lower", -1}, {"sweeter ", 1}, {" more ", 1}, {" higher", 1}} {
		if strings.Contains(text, x.word) {
			return x.sign
		}
	}
	return 0
}

// bears reports whether the whole interval of what a word is about has a sign.
func bears(c *sheet.Compared, about string, sign int) bool {
	of := func(d contrast.Difference) bool { return d.Least*float64(sign) > 0 && d.Most*float64(sign) > 0 }
	f, ok := c.Find(constituent.ID(about))
	switch about {
	case "sweet":
		return of(c.Sweet.Index)
	case "sour":
		about = string(contrast.Acidity)
	case "CO2":
		about, ok = string(contrast.Gas), false
	}
	if ok {
		return of(f.Difference)
	}
	return slices.ContainsFunc(c.Liquids, func(l contrast.Liquid) bool { return string(l.Kind) == about && of(l.Difference) })
}
