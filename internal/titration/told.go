package titration

import (
	"fmt"
	"strings"

	"sipsum/internal/acid"
	"sipsum/internal/burette"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/note"
)

// told is what a curve tells of a liquid, to be said.
type told struct {
	kit    *burette.Posterior
	of     *drink.Measured
	liquid burette.Liquid
	is     [][]float64 // mol in the sample, by acid
	per    float64     // from the sample to 100 g
}

// notes says it: the acids, which of them the curve does not tell apart, and what is wrong with
// the instruments.
func (t told) notes() []note.Note {
	where := t.of.What()
	var said []string
	together := burette.Together(t.is)
	joined := map[int]bool{}
	for _, group := range together {
		var names []string
		sum := make([]float64, len(t.is[0]))
		for _, i := range group {
			joined[i] = true
			names = append(names, t.name(i))
			for d, x := range t.grams(t.is[i], i) {
				sum[d] += x
			}
		}
		said = append(said, fmt.Sprintf("%s together %s; which of them, this curve does not tell", listed(names), interval(sum)))
	}
	for i := range t.is {
		if !joined[i] && t.narrows(i) {
			said = append(said, fmt.Sprintf("%s %s (the recipe: %s)", t.name(i), interval(t.grams(t.is[i], i)), interval(t.grams(t.liquid.Acids[i].Mol, i))))
		}
	}
	if len(said) == 0 {
		said = []string{"nothing of its acids that the recipe does not"}
	}
	list := []note.Note{{Kind: "titration acids", Text: fmt.Sprintf("%s: the titration tells of 100 g: %s", where, strings.Join(said, "; "))}}
	if !t.kit.Adjusted {
		zero, slope := estimate.Summarise(t.kit.Zero), estimate.Summarise(t.kit.Slope)
		list = append(list, note.Note{Kind: "titration meter", Text: fmt.Sprintf(
			"%s: only a meter that is off fits these points: at pH 7 it shows %+.2f too much (%+.2f to %+.2f), with %.0f %% of its slope; that is taken away: adjust it with two buffers and titrate again",
			where, zero.Mean, zero.Low, zero.High, 100*slope.Mean)})
	}
	if t.kit.Scatter > 1 {
		list = append(list, note.Note{Kind: "titration scatter", Text: fmt.Sprintf(
			"%s: the points scatter %s times as much as the meter and the volumes should, so all that they tell is that much less sure: wait for each reading, and read the volumes again",
			where, note.Number(t.kit.Scatter))})
	}
	return list
}

// worthTelling is how much of its spread an acid has to lose by a curve to be told: our own bound,
// as for readings that nobody has taken yet is a fiftieth, of a sentence with figures a tenth.
const worthTelling = 0.1

// narrows reports whether the curve tells more of an acid than the recipe does.
func (t told) narrows(i int) bool {
	is, was := estimate.Summarise(t.is[i]), estimate.Summarise(t.liquid.Acids[i].Mol)
	return is.High-is.Low < (1-worthTelling)*(was.High-was.Low)
}

func (t told) name(i int) string {
	return constituent.Must(acid.All()[t.liquid.Acids[i].Acid].Constituent).Name
}

// grams gives an acid in 100 g.
func (t told) grams(mol []float64, i int) []float64 {
	out := make([]float64, len(mol))
	for d, x := range mol {
		out[d] = x * acid.All()[t.liquid.Acids[i].Acid].Molar * t.per
	}
	return out
}

func interval(grams []float64) string {
	s := estimate.Summarise(grams)
	return fmt.Sprintf("%s g (%s–%s)", note.Number(s.Mean), note.Number(s.Low), note.Number(s.High))
}

// listed joins names by commas and an "and".
func listed(names []string) string {
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last]
}
