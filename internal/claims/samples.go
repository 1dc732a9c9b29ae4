package claims

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// tableOfSamples is the table whose published figures stand one by one in data/samples.csv.
const tableOfSamples = "core"

// samples are the single figures that are published of a food, by its code and the constituent, in its unit per
// 100 g.
var samples = sync.OnceValue(func() map[[2]string][]float64 {
	list := map[[2]string][]float64{}
	for _, row := range embedded.Rows("samples.csv") {
		key := [2]string{row.Text("code"), string(constituent.Must(constituent.ID(row.Text("constituent"))).ID)}
		list[key] = append(list[key], row.Number("printed")*row.Number("factor"))
	}
	return list
})

// mostShown is how many single figures are shown, so that they can be counted again: our own bound.
const mostShown = 6

// singly gives the figures that are published one by one of a food of the table, the least first.
func singly(f *food.Food, tag string) []float64 {
	if f == nil || f.ID.Table != tableOfSamples {
		return nil
	}
	list := slices.Clone(samples()[[2]string{f.ID.Code, tag}])
	slices.Sort(list)
	return list
}

// sampled says how many of the published figures of a food that stand one by one lie beyond one or at it, on the
// side away from what it is taken to be, and whether the range that is published reaches there without them; empty
// where they are not kept one by one.
func sampled(f *food.Food, tag string, is, to float64) string {
	list := singly(f, tag)
	if len(list) == 0 {
		return ""
	}
	reaches := func(x float64) bool {
		return to < is && !unit.Over(x, to) || to > is && unit.AtLeast(x, to)
	}
	beyond := 0
	for _, x := range list {
		if reaches(x) {
			beyond++
		}
	}
	text := fmt.Sprintf("%d of %d published figures that stand alone %s", beyond, len(list), map[bool]string{true: "is", false: "are"}[beyond == 1])
	if beyond == 0 {
		text = fmt.Sprintf("none of %d published figures that stand alone is", len(list))
	}
	if len(list) <= mostShown {
		words := make([]string, len(list))
		for i, x := range list {
			words[i] = note.Grams(rounded(x))
		}
		text += ": " + strings.Join(words, ", ")
	}
	v, _ := f.Value(constituent.ID(tag))
	switch {
	case beyond > 0:
	case to < is && food.Stated(v.Low) && reaches(v.Low):
		text += "; others reach down to " + note.Grams(rounded(v.Low))
	case to > is && food.Stated(v.High) && reaches(v.High):
		text += "; others reach up to " + note.Grams(rounded(v.High))
	}
	return text
}
